package part

import (
	"math"

	"github.com/tdewolff/canvas"

	"centrepop/layout/plan"
	"centrepop/parts"
	"centrepop/parts/geom"
)

// discLeaveMm is what is left on the diameters of a disc that is cut from plate to be turned, by
// what cuts it. Common practice, no source.
var discLeaveMm = map[string]float64{"laser": 2, "waterjet": 2, "plasma": 4, "flame": 6}

// sawnLeaveMm is that of a square that a saw makes of plate. Common practice, no source.
const sawnLeaveMm = 5.0

// asCut is the disc that a turned part is made from, with its bore where the cutter makes one that
// leaves metal in it; a square where a saw cuts it. Other stock is not cut from plate.
func (t *turned) asCut(s *Sizes, cut string) asCut {
	if !s.Part.Stock.ByArea() || s.Part.Kind == parts.Tube {
		return asCut{}
	}
	leave, follows := discLeaveMm[cut]
	if !follows {
		leave = sawnLeaveMm
	}
	if s.W.Units == parts.Inches {
		leave = math.Ceil(leave*16/geom.MmPerInch) * geom.MmPerInch / 16
	}
	wide := geom.Clean(s.OutlinePath().Bounds().W() + leave)
	if !follows {
		return asCut{outline: canvas.Rectangle(wide, wide).Translate(-wide/2, -wide/2), size: s.W.Size(wide) + " × " + s.W.Size(wide)}
	}
	a := asCut{outline: canvas.Circle(wide / 2), round: true, size: s.W.Dia(wide)}
	a.text = a.size + " as cut, " + s.W.Size(leave) + " left over its size"
	bore := s.BoreMm()
	if bore == 0 {
		return a
	}
	dia := geom.Clean(bore - leave)
	if why := tooSmall(s, dia, cut); why != "" {
		a.marks = append(a.marks, plan.CutMark{Name: boreStep, DrillMm: math.Max(0, dia), Why: why})
		return a
	}
	a.bore, a.boreCut = s.W.Dia(dia)+": "+s.W.Size(leave)+" left on diameter for the lathe.", true
	a.openings = append(a.openings, opening{name: boreStep, shape: "bore", text: s.W.Dia(dia) + " as cut, " + s.W.Size(leave) + " left for " + s.W.Dia(bore), radius: dia / 2, pos: s.Part.Stock.Pos})
	return a
}

// cutDisc is the operation that cuts it.
func (t *turned) cutDisc(b *bench) {
	o := plan.Operation{Machine: plan.Saw, Title: "Cut the blank", Gauge: "tape, calipers",
		Do: []string{"Cut from " + b.StockText() + ": " + b.cut.size + " × " + b.W.Size(b.plateMm()) + " thick. Finished " + b.W.Said(b.LengthMm()) + "; the rest is to face both ends."}}
	if b.cut.boreCut {
		o.Do = append(o.Do, "Bore as cut "+b.cut.bore)
	}
	if !b.byCutter(&o) {
		o = warn(o, clampStock)
	}
	b.op(o)
}

// byCutter makes an operation that of the cutter of the stock, with its edges; false where that
// follows no file.
func (b *bench) byCutter(o *plan.Operation) bool {
	cut := b.Part.Stock.Cut
	if _, _, follows := LeastHoleMm(cut, b.plateMm()); !follows {
		return false
	}
	o.Machine, o.Tool = plan.Cutter, cut
	*o = warn(*o, b.cutEdges())
	return true
}

// RoundBlank tells whether it is a circle.
func (s *Shape) RoundBlank() bool {
	_, disc := discLeaveMm[s.Part.Stock.Cut]
	return s.form.round() && (disc || !s.Part.Turned())
}
