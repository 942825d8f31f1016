package part

import (
	"math"

	"github.com/tdewolff/canvas"

	"centrepop/layout/develop"
	"centrepop/layout/plan"
	"centrepop/layout/words"
	"centrepop/parts"
	"centrepop/parts/geom"
	"centrepop/parts/seq"
)

// facets is how many flats a faceted round end has.
const facets = 16

// transition is a square-to-round of sheet, the rectangle in front.
type transition struct {
	usual
	in *parts.Transition
}

func (t *transition) lengthMm() float64 { return t.in.Height.Mm }

func (t *transition) wallMm(*Sizes, float64) float64 { return t.in.Thickness.Mm }

func (t *transition) roundMm(feature string) float64 {
	if feature == "round-end" {
		return t.in.Diameter.Mm
	}
	return 0
}

func (t *transition) outline(*Sizes) *canvas.Path {
	return geom.Rectangle(t.in.Width.Mm, t.in.Depth.Mm, 0)
}

func (t *transition) overall(s *Sizes) string {
	return s.W.Size(t.in.Width.Mm) + " × " + s.W.Size(t.in.Depth.Mm) + " to " + s.W.Dia(t.in.Diameter.Mm) + " × " + s.W.Size(t.in.Height.Mm) + " high"
}

// leans is how far the round end stands off to TOP, or where it stands there to 3 o'clock alone, and that; the rectangle is so high in the cut.
func (t *transition) leans() (offMm, acrossMm float64, up string) {
	if x := t.in.Offset.X.Mm; x != 0 && t.in.Offset.Y.Mm == 0 {
		return x, t.in.Width.Mm, "3 o'clock"
	}
	return t.in.Offset.Y.Mm, t.in.Depth.Mm, ""
}

// section is cut from 6 o'clock to TOP, through the middle of the round end, or from 9 to 3 o'clock where that shows how it leans; its half
// has the ends on one axis.
func (t *transition) section(*Sizes) *plan.Section {
	off, across, up := t.leans()
	front, back := across/2, t.in.Diameter.Mm/2
	if t.in.Inside {
		front, back = front+t.in.Thickness.Mm, back+t.in.Thickness.Mm
	}
	s := leaning(sheetSection(front, back, t.in.Height.Mm, t.in.Thickness.Mm), off)
	s.Up = up
	return s
}

func (t *transition) volumeMm3(g *Shape) float64 { return g.developedMm3(t.in.Thickness.Mm) }

// seamMm is up the middle of the side that the seam lies on.
func (t *transition) seamMm() float64 {
	half := t.in.Depth.Mm
	if math.Mod(t.in.Seam.Deg, 180) != 0 {
		half = t.in.Width.Mm
	}
	return sideMm(&t.in.Formed, (half-t.in.Diameter.Mm)/2, t.in.Offset.X.Mm, t.in.Offset.Y.Mm)
}

// developments make the flat blank.
func (t *transition) developments(d *shaper) {
	in := t.in
	off, _, _ := t.leans()
	d.offset(off)
	s := develop.Transition{
		WidthMm: in.Width.Mm, DepthMm: in.Depth.Mm, DiameterMm: in.Diameter.Mm,
		Forming: develop.Forming{
			HeightMm: in.Height.Mm, OffsetTopMm: in.Offset.Y.Mm, OffsetRightMm: in.Offset.X.Mm, ThicknessMm: in.Thickness.Mm, Inside: in.Inside,
			Faceted: in.Faceted, OverlapMm: in.Overlap.Mm, SeamDeg: in.Seam.Deg, Divisions: facets, SheetWidthMm: in.SheetWidth.Mm,
			SheetHeightMm: in.SheetHeight.Mm,
		},
	}
	p, err := s.Develop()
	if err != nil {
		d.fault(in.Pos, "the transition cannot be developed: "+d.W.Refused(err), "other sizes, or a larger sheet")
		return
	}
	pieces := d.pieces(plan.TransitionPattern, "Square to round", p.Pieces, in.Seam.Deg)
	bends := plan.PatternTable{Title: "Lines, true lengths and turns", Heads: []string{"Line", "true length", "turn to the next"}}
	if in.Faceted {
		bends.Title, bends.Heads[2] = "Lines, true lengths and bends", "bend at the line"
	}
	text := map[string]string{}
	for _, l := range p.Lines {
		bend := words.Trim(l.BendDeg, 1) + "°"
		bends.Rows = append(bends.Rows, []string{l.Label, d.exact(l.TrueMm), bend})
		text[l.Label] = "true length " + d.exact(l.TrueMm)
		text["fold "+l.Label] = text[l.Label] + ", bend " + bend
	}
	for _, piece := range pieces {
		for l := range seq.Refs(piece.Lines) {
			name := l.Name
			if l.Role == "fold" {
				name = "fold " + name
			}
			l.Text = text[name]
		}
	}
	pieces[0].Tables = append([]plan.PatternTable{bends}, pieces[0].Tables...)
}

// onFace draws the round end behind the rectangle, and the sides of the flats.
func (t *transition) onFace(w words.Writer, out *plan.Face) {
	out.NoTemplate = "its flat pattern is the template"
	at, r := plan.XY{XMm: t.in.Offset.X.Mm, YMm: t.in.Offset.Y.Mm}, t.in.Diameter.Mm/2
	out.MinMm = plan.XY{XMm: min(-t.in.Width.Mm/2, at.XMm-r), YMm: min(-t.in.Depth.Mm/2, at.YMm-r)}
	out.MaxMm = plan.XY{XMm: max(t.in.Width.Mm/2, at.XMm+r), YMm: max(t.in.Depth.Mm/2, at.YMm+r)}
	out.Circles = append(out.Circles, plan.Circle{Label: w.Dia(2*r) + " round end", DiameterMm: 2 * r, CentreMm: at})
	wide, deep := t.in.Width.Mm/2, t.in.Depth.Mm/2
	for i, corner := range []plan.XY{{XMm: wide, YMm: deep}, {XMm: wide, YMm: -deep}, {XMm: -wide, YMm: -deep}, {XMm: -wide, YMm: deep}} {
		for k := range 2 {
			top := geom.Clock(r, 90*float64(i+k))
			out.Hidden = append(out.Hidden, []plan.XY{corner, {XMm: geom.Clean(at.XMm + top.XMm), YMm: geom.Clean(at.YMm + top.YMm)}})
		}
	}
}

func (t *transition) features(n *Numbered) {
	at, line := words.Either(t.in.Inside, " inside", " outside"), n.Section.Outer
	off, axis := t.in.Offset, ""
	if off.X.Mm == 0 && off.Y.Mm == 0 {
		axis = "on the rectangle's axis"
	}
	wide, deep := n.limitsText(n.General(t.in.Width.Mm)), n.limitsText(n.General(t.in.Depth.Mm))
	n.add(plan.Feature{Kind: plan.EndFeature, Name: "rectangle", Size: n.W.Size(t.in.Width.Mm) + " × " + n.W.Size(t.in.Depth.Mm) + at, Limits: words.Join(" × ", wide, deep),
		Note: "front face; width from 9 to 3 o'clock", Balloon: line[0]})
	n.add(plan.Feature{Kind: plan.EndFeature, Name: "round end", Size: n.W.Dia(t.in.Diameter.Mm) + at, Limits: n.limitsText(n.General(t.in.Diameter.Mm)), Note: axis, Balloon: line[1]})
	n.offsetFeature("round end", off.Y.Mm, "TOP", "6 o'clock")
	n.offsetFeature("round end", off.X.Mm, "3 o'clock", "9 o'clock")
	n.seamFeature(t.in.Seam.Deg, t.in.Overlap.Mm)
	n.lengthFeature(plan.HeightFeature)
}

func (t *transition) operations(b *bench) {
	b.op(warn(plan.Operation{Machine: plan.Cutter, Title: "Cut the flat blank", Do: []string{
		b.setOut() + "; scribe every line and its number on the outside.",
		"Check two true lengths of the table before cutting.", "Deburr the edges."},
		Refs: b.refs(plan.EndFeature, plan.HeightFeature)}, sheetEdges))
	bend := plan.Operation{Machine: plan.Press, Title: "Bend at every line", Do: []string{
		"Bend each line by the angle of the table, away from the marks, a little at a time and from both seam edges inward.",
		"Try against a template of the round end after each corner."},
		Gauge: "protractor, round gauge"}
	if !t.in.Faceted {
		bend.Machine, bend.Title = plan.Roll, "Form the corners, keep the flats"
		bend.Do = []string{"Form each corner over a bar or in the rolls, round from line to line by the turn of the table, the flats left flat.",
			"Try against a template of the round end after each corner."}
		b.op(warn(bend, rolls))
	} else {
		bend.Do[1] = "Try the round end after each corner: " + words.Trim(facets, 0) + " flats, their middles " + b.W.Taped(FlatsShortMm(t.in)) + " inside the round."
		b.op(warn(bend, pressBrake))
	}
	b.op(warn(plan.Operation{Machine: plan.Weld, Title: "Close the seam", Do: []string{
		"Tack the seam at clock " + words.Angle(t.in.Seam.Deg) + " at both ends, check the diagonals of the rectangle and the round end, then weld: " + b.seamText()},
		Gauge: "tape: both diagonals alike; round end by tape round it " + b.W.Taped(t.roundEndMm(b.Section.Outer[1].YMm)),
		Refs:  b.refs(plan.SeamFeature)}, welding))
}

// roundEndMm is what a tape reads round the outside of the round end, of
// outside radius r. Bends at the middle of the plate keep its length there; a
// plate of thickness t round any convex figure adds π·t to the girth at its middle.
func (t *transition) roundEndMm(r float64) float64 {
	if !t.in.Faceted {
		return 2 * math.Pi * r
	}
	thick := t.in.Thickness.Mm
	return 2*facets*(r-thick/2)*math.Sin(math.Pi/facets) + math.Pi*thick
}

// FlatsShortMm is how far the middles of the flats of a faceted round end lie
// inside the round, in mm; 0 where it is rolled. The bends lie on the round at
// the middle of the plate.
func FlatsShortMm(t *parts.Transition) float64 {
	if !t.Faceted {
		return 0
	}
	middle := (t.Diameter.Mm - t.Thickness.Mm) / 2
	if t.Inside {
		middle += t.Thickness.Mm
	}
	return middle * (1 - math.Cos(math.Pi/facets))
}

func (t *transition) cutFile(k *cutter) (*plan.Profile, error) { return k.blank(t.in.Thickness.Mm) }
