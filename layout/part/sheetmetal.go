package part

import (
	"math"
	"strconv"

	"centrepop/layout/develop"
	"centrepop/layout/plan"
	"centrepop/layout/words"
	"centrepop/parts"
	"centrepop/parts/geom"
)

// coneDivisions is the number of lines of a leaning cone.
const coneDivisions = 24

// cone makes the flat blank of a rolled cone: an exact sector, or a
// triangulated pattern where the ends are not on one axis. It is cut in gores
// where the stock sheet is too small for one piece.
func (r *Model) cone(f *parts.Frustum) {
	measured := develop.Outside
	if f.Inside {
		measured = develop.Inside
	}
	sheetW, sheetH := f.SheetWidth.Mm, f.SheetHeight.Mm
	if f.Offset.Mm > 0 {
		p, err := develop.Oblique{
			BaseDiameterMm: f.Large.Mm, TopDiameterMm: f.Small.Mm, Measured: measured, HeightMm: f.Height.Mm,
			OffsetTopMm: f.Offset.Mm, ThicknessMm: f.Thickness.Mm, OverlapMm: f.Overlap.Mm, SeamDeg: f.Seam.Deg,
			Divisions: coneDivisions, SheetWidthMm: sheetW, SheetHeightMm: sheetH,
		}.Develop()
		if err != nil {
			r.fault(f.Pos, "the cone cannot be developed: "+patternFault(err), "other sizes, or a larger sheet")
			return
		}
		r.pieces("cone", plan.ConePattern, "Leaning cone", p.Pieces, f.Seam.Deg)
		for i := len(r.Out.Developments) - len(p.Pieces); i < len(r.Out.Developments); i++ {
			d := &r.Out.Developments[i]
			d.Notes = append(d.Notes, r.lineWords(f, coneDivisions)+" The small end leans towards TOP.")
		}
		return
	}
	p, err := develop.Frustum{
		LargeDiameterMm: f.Large.Mm, SmallDiameterMm: f.Small.Mm, Measured: measured, HeightMm: f.Height.Mm,
		ThicknessMm: f.Thickness.Mm, OverlapMm: f.Overlap.Mm, SheetWidthMm: sheetW, SheetHeightMm: sheetH,
	}.Develop()
	if err != nil {
		r.fault(f.Pos, "the cone cannot be developed: "+patternFault(err), "other sizes, or a larger sheet")
		return
	}
	r.pieces("cone", plan.ConePattern, "Cone", []develop.Development{p.Piece}, f.Seam.Deg)
	out := &r.Out.Developments[len(r.Out.Developments)-1]
	out.Copies = p.Gores
	if p.Gores == 1 {
		out.Notes = append(out.Notes, r.lineWords(f, develop.DefaultDivisions))
	} else {
		out.Title += ", one of " + strconv.Itoa(p.Gores) + " equal gores"
	}
}

// transition makes the flat blank of a square-to-round.
func (r *Model) transition(t *parts.Transition) {
	d := develop.Transition{
		WidthMm: t.Width.Mm, DepthMm: t.Depth.Mm, DiameterMm: t.Diameter.Mm, HeightMm: t.Height.Mm,
		OffsetTopMm: t.Offset.Y.Mm, OffsetRightMm: t.Offset.X.Mm, ThicknessMm: t.Thickness.Mm,
		OverlapMm: t.Overlap.Mm, SeamDeg: t.Seam.Deg, Divisions: 16,
		SheetWidthMm: t.SheetWidth.Mm, SheetHeightMm: t.SheetHeight.Mm,
	}
	if t.Inside {
		d.Measured = develop.Inside
	}
	if t.Faceted {
		d.Bend = develop.Faceted
	}
	p, err := d.Develop()
	if err != nil {
		r.fault(t.Pos, "the transition cannot be developed: "+patternFault(err), "other sizes, or a larger sheet")
		return
	}
	r.pieces("transition", plan.TransitionPattern, "Square to round", p.Pieces, t.Seam.Deg)
	bends := plan.PatternTable{Title: "Lines, true lengths and bends", Heads: []string{"Line", "true length", "bend"}}
	for _, l := range p.Lines {
		bends.Rows = append(bends.Rows, []string{l.Label, r.exact(l.TrueMm), words.Trim(l.BendDeg, 1) + "°"})
	}
	first := len(r.Out.Developments) - len(p.Pieces)
	for i := first; i < len(r.Out.Developments); i++ {
		lines := r.Out.Developments[i].Lines
		for j := range lines {
			for _, l := range p.Lines {
				if l.Label == lines[j].Name {
					lines[j].Text = "true length " + r.exact(l.TrueMm)
					if lines[j].Role == "fold" {
						lines[j].Text += ", bend " + words.Trim(l.BendDeg, 1) + "°"
					}
				}
			}
		}
	}
	r.Out.Developments[first].Tables = append([]plan.PatternTable{bends}, r.Out.Developments[first].Tables...)
}

// transitionSection is cut from 6 o'clock to TOP and drawn as if the ends were
// on one axis.
func (r *Model) transitionSection(t *parts.Transition, s *plan.Section) {
	front, back, wall := t.Depth.Mm/2, t.Diameter.Mm/2, t.Thickness.Mm
	if t.Inside {
		front, back = front+wall, back+wall
	}
	s.MaxMm = math.Max(front, back)
	s.Outer = []plan.XY{{XMm: 0, YMm: geom.Clean(front)}, {XMm: s.LengthMm, YMm: geom.Clean(back)}}
	wall *= math.Hypot(t.Height.Mm, front-back) / t.Height.Mm
	s.Inner = []plan.XY{{XMm: 0, YMm: geom.Clean(front - wall)}, {XMm: s.LengthMm, YMm: geom.Clean(back - wall)}}
}

func (r *Model) transitionFeatures(t *parts.Transition) {
	at := "outside"
	if t.Inside {
		at = "inside"
	}
	line := r.Out.Section.Outer
	r.add(plan.Feature{Name: "rectangle", Size: r.W.Size(t.Width.Mm) + " × " + r.W.Size(t.Depth.Mm) + " " + at,
		Limits: "", Note: "front face; width from 9 to 3 o'clock", Balloon: line[0]})
	r.add(plan.Feature{Name: "round end", Size: r.W.Dia(t.Diameter.Mm) + " " + at, Limits: r.limitsText(r.length(t.Diameter.Mm)), Note: r.offsetWords(t), Balloon: line[1]})
	size := "clock " + words.Trim(t.Seam.Deg, 2) + "°"
	if t.Overlap.Mm > 0 {
		size += ", overlap " + r.W.Size(t.Overlap.Mm)
	}
	r.add(plan.Feature{Name: "seam", Size: size, Balloon: plan.XY{XMm: t.Height.Mm / 2, YMm: geom.Clean((line[0].YMm + line[1].YMm) / 2)}})
}

// offsetWords says how far the round end is off the rectangle's axis.
func (r *Model) offsetWords(t *parts.Transition) string {
	side := func(mm float64, plus, minus string) string {
		switch {
		case mm > 0:
			return r.W.Size(mm) + " to " + plus
		case mm < 0:
			return r.W.Size(-mm) + " to " + minus
		}
		return ""
	}
	s := words.Join(", ", side(t.Offset.Y.Mm, "TOP", "6 o'clock"), side(t.Offset.X.Mm, "3 o'clock", "9 o'clock"))
	if s == "" {
		return "on the rectangle's axis"
	}
	return "centre " + s + " of the rectangle's"
}

// foldOperations makes a square-to-round from flat sheet.
func (r *Model) foldOperations() {
	t := r.Part.Transition
	r.op(plan.Operation{Machine: "Cutter", Title: "Cut the flat blank", Do: []string{
		"Mark the development on " + r.Out.StockText + " from the 1:1 template and cut; scribe every bend line and its number on the outside.",
		"Check two true lengths of the table before cutting.", "Deburr the edges."},
		Caution: "Sheet edges cut: gloves.", Refs: r.refs("rectangle", "round end", "height")})
	bend := plan.Operation{Machine: "Press", Title: "Bend at every line", Do: []string{
		"Bend each line by the angle of the table, away from the marks, a little at a time and from both seam edges inward.",
		"Try against a template of the round end after each corner."},
		Gauge: "protractor, round gauge", Caution: "Keep fingers out of the press brake; two people on a long blank, one at the pedal."}
	if !t.Faceted {
		bend.Machine, bend.Title = "Roll", "Form the corners, keep the flats"
		bend.Do = []string{"Form each corner over a bar or in the rolls, from line to line, the flats left flat.", "Try against a template of the round end after each corner."}
		bend.Caution = "Rolls pull fingers in."
	}
	r.op(bend)
	r.op(plan.Operation{Machine: "Weld", Title: "Close the seam", Do: []string{
		"Tack the seam at clock " + words.Trim(t.Seam.Deg, 2) + "° at both ends, check the diagonals of the rectangle and the round end, then weld."},
		Gauge:   "tape: both diagonals alike; round end by tape round it " + r.W.Size(words.Round(math.Pi*2*r.Out.Section.Outer[1].YMm, 1)),
		Caution: "Welding: screen, ventilation, hot parts; by a qualified welder under local rules.", Refs: r.refs("seam")})
}

// lineWords says at which clock angle each numbered line lies.
func (r *Model) lineWords(f *parts.Frustum, divisions int) string {
	return "Line 0 is the seam, at clock " + words.Trim(f.Seam.Deg, 2) + "°; each number is " + words.Trim(360/float64(divisions), 2) + "° further clockwise, seen from the large end."
}

// pieces takes over the flat pieces of a rolled or folded part.
func (r *Model) pieces(name string, kind plan.DevelopmentKind, title string, list []develop.Development, seamDeg float64) {
	for i, d := range list {
		out := r.pattern(name, kind, d)
		out.Title = title + " development"
		if len(list) > 1 {
			out.Name += "-" + strconv.Itoa(i+1)
			out.Title += ", piece " + strconv.Itoa(i+1) + " of " + strconv.Itoa(len(list))
		}
		if r.Part.Stock.Form != "" {
			out.On = r.Out.StockText
		}
		out.SeamDeg = seamDeg
		out.Sizes = append(r.values(d.Inputs), r.values(d.Results)...)
		out.Tables = r.tables(d.Tables)
		out.Notes = append(d.Notes, "Edges are those of the metal, at the middle of its thickness. The seam closes at clock "+words.Trim(seamDeg, 2)+"°.")
		r.Out.Developments = append(r.Out.Developments, out)
	}
}

// developedMassKg is the mass of what is cut from sheet: flat area times
// thickness, laps left out.
func (r *Model) developedMassKg(thicknessMm float64) float64 {
	if r.Material == nil {
		return 0
	}
	area := 0.0
	for _, d := range r.Out.Developments {
		if d.Kind == plan.ConePattern || d.Kind == plan.TransitionPattern {
			area += d.AreaMm2 * float64(d.Copies)
		}
	}
	return geom.Clean(area * thicknessMm * 1e-9 * r.Material.DensityKgM3)
}
