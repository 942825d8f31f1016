package part

import (
	"math"
	"strconv"

	"github.com/tdewolff/canvas"

	"centrepop/layout/develop"
	"centrepop/layout/plan"
	"centrepop/layout/words"
	"centrepop/parts"
	"centrepop/parts/geom"
)

// cone is rolled from sheet, the large end in front.
type cone struct {
	usual
	in *parts.Frustum
}

// coneDivisions is the number of lines of a leaning cone.
const coneDivisions = 24

func (c *cone) lengthMm() float64           { return c.in.Height.Mm }
func (c *cone) round() bool                 { return true }
func (c *cone) outline(*Sizes) *canvas.Path { return geom.Circle(c.in.Large.Mm) }

func (c *cone) wallMm(*Sizes, float64) float64 { return c.in.Thickness.Mm }

func (c *cone) roundMm(feature string) float64 {
	switch feature {
	case "large-end":
		return c.in.Large.Mm
	case "small-end":
		return c.in.Small.Mm
	}
	return 0
}

func (c *cone) overall(s *Sizes) string {
	return s.W.Dia(c.in.Large.Mm) + " to " + s.W.Dia(c.in.Small.Mm) + " × " + s.W.Size(c.in.Height.Mm) + " high"
}

func (c *cone) section(*Sizes) *plan.Section {
	large, small := c.in.Large.Mm/2, c.in.Small.Mm/2
	if c.in.Inside {
		large, small = large+c.in.Thickness.Mm, small+c.in.Thickness.Mm
	}
	return leaning(sheetSection(large, small, c.in.Height.Mm, c.in.Thickness.Mm), c.in.Offset.Mm)
}

func (c *cone) volumeMm3(g *Shape) float64 { return g.developedMm3(c.in.Thickness.Mm) }

// developments make the flat blank: an exact sector, or a triangulated pattern
// where the ends are not on one axis. It is cut in gores where the stock sheet
// is too small for one piece.
func (c *cone) developments(d *shaper) {
	f := c.in
	d.offset(f.Offset.Mm)
	if f.Offset.Mm > 0 {
		p, err := develop.Oblique{
			BaseDiameterMm: f.Large.Mm, TopDiameterMm: f.Small.Mm,
			Forming: develop.Forming{
				Inside: f.Inside, HeightMm: f.Height.Mm, OffsetTopMm: f.Offset.Mm, ThicknessMm: f.Thickness.Mm, OverlapMm: f.Overlap.Mm, SeamDeg: f.Seam.Deg,
				Divisions: coneDivisions, SheetWidthMm: f.SheetWidth.Mm, SheetHeightMm: f.SheetHeight.Mm,
			},
		}.Develop()
		if err != nil {
			d.fault(f.Pos, "the cone cannot be developed: "+d.W.Refused(err), "other sizes, or another sheet")
			return
		}
		pieces := d.pieces(plan.ConePattern, "Leaning cone", p.Pieces, f.Seam.Deg)
		for i := range pieces {
			pieces[i].Notes = append(pieces[i].Notes, c.lineWords(coneDivisions)+" The small end leans towards TOP.")
		}
		return
	}
	p, err := develop.Frustum{
		LargeDiameterMm: f.Large.Mm, SmallDiameterMm: f.Small.Mm, Inside: f.Inside, HeightMm: f.Height.Mm,
		ThicknessMm: f.Thickness.Mm, OverlapMm: f.Overlap.Mm, SheetWidthMm: f.SheetWidth.Mm, SheetHeightMm: f.SheetHeight.Mm,
	}.Develop()
	if err != nil {
		d.fault(f.Pos, "the cone cannot be developed: "+d.W.Refused(err), "other sizes, or another sheet")
		return
	}
	out := &d.pieces(plan.ConePattern, "Cone", []develop.Development{p.Piece}, f.Seam.Deg)[0]
	out.Copies = p.Gores
	if p.Gores == 1 {
		out.Notes = append(out.Notes, c.lineWords(develop.DefaultDivisions))
	} else {
		out.Title += ", one of " + strconv.Itoa(p.Gores) + " equal gores"
	}
}

func (c *cone) needless(d *shaper) string {
	straight := c.in.Offset.Mm == 0 && len(d.Developments) > 0 // all of its pieces are alike
	if p := d.Developments; straight && max(p[0].MaxMm.XMm-p[0].MinMm.XMm, p[0].MaxMm.YMm-p[0].MinMm.YMm) > largeBlankMm {
		return "a straight cone: its two radii and the chord set it out better than joined paper"
	}
	return ""
}

// seamMm is along the side that the seam lies on.
func (c *cone) seamMm() float64 {
	return sideMm(&c.in.Formed, (c.in.Large.Mm-c.in.Small.Mm)/2, 0, c.in.Offset.Mm)
}

// check measures the height of a straight cone over its edges, which are cut square to the sheet.
func (c *cone) check(r *record, f plan.Feature) {
	if f.Kind != plan.HeightFeature || c.in.Offset.Mm != 0 {
		c.usual.check(r, f)
		return
	}
	mm := geom.Clean(c.in.Height.Mm + c.edgesMm())
	r.sized(plan.Check{Ref: f.N, What: f.Name + " over its square-cut edges", Wanted: r.W.Read(mm), Gauge: usualGauge}, r.shaped(mm))
}

// show has the height in brackets: it is measured over the square edges.
func (c *cone) show(_ *Numbered, out *plan.PartPlan) {
	height := &out.Dimensions[len(out.Dimensions)-1]
	height.Text, height.Limits = "("+height.Text+")", ""
}

// lineWords says at which clock angle each numbered line lies.
func (c *cone) lineWords(divisions int) string {
	return "Line 0 is the seam, at clock " + words.Angle(c.in.Seam.Deg) + "; each number is " + words.Angle(360/float64(divisions)) + " further clockwise, seen from the large end."
}

// edgesMm is how much higher a straight cone stands than between its sizes: its edges
// are cut square to the sheet, so one corner lies beyond at each end.
func (c *cone) edgesMm() float64 {
	half := math.Atan2((c.in.Large.Mm-c.in.Small.Mm)/2, c.in.Height.Mm)
	return c.in.Thickness.Mm * math.Sin(half)
}

func (c *cone) features(n *Numbered) {
	f := c.in
	at := words.Either(f.Inside, " inside", " outside")
	for i, mm := range []float64{f.Large.Mm, f.Small.Mm} {
		n.add(plan.Feature{Kind: plan.EndFeature, Name: words.Either(i == 0, "large end", "small end"), Size: n.W.Dia(mm) + at, Limits: n.limitsText(n.General(mm)), Balloon: n.Section.Outer[i]})
	}
	n.offsetFeature("small end", f.Offset.Mm, "TOP", "")
	n.seamFeature(f.Seam.Deg, f.Overlap.Mm)
	n.lengthFeature(plan.HeightFeature)
	if h := &n.Features[len(n.Features)-1]; f.Offset.Mm == 0 { // what is measured is the height over its edges
		h.Size, h.Limits = "("+h.Size+")", ""
	}
}

func (c *cone) operations(b *bench) {
	f := c.in
	b.op(warn(plan.Operation{Machine: plan.Cutter, Title: "Cut the flat blank", Do: []string{b.setOut() + "; cut edges deburred."},
		Refs: b.refs(plan.EndFeature, plan.HeightFeature)}, sheetEdges))
	b.op(warn(plan.Operation{Machine: plan.Roll, Title: "Roll and close the seam",
		Do: []string{"Pre-bend the seam edges, roll to " + b.W.Dia(f.Large.Mm) + " and " + b.W.Dia(f.Small.Mm) + ".",
			"Tack the seam at clock " + words.Angle(f.Seam.Deg) + ", check both ends round, weld: " + b.seamText()},
		Gauge: "tape round both ends: " + c.girth(b.Sizes, f.Large.Mm) + " and " + c.girth(b.Sizes, f.Small.Mm) + lapWord(f.Overlap.Mm),
		Refs:  b.refs(plan.SeamFeature)}, rolls, welding))
}

func (c *cone) cutFile(k *cutter) (*plan.Profile, error) { return k.blank(c.in.Thickness.Mm) }

// edgeMm is how much larger than the size drawn the outside edges of the cone are.
func (c *cone) edgeMm() float64 { return words.Either(c.in.Inside, 2*c.sheetMm(), 0) }

// sheetMm is how thick the sheet is across the axis where it ends: it is cut square, and leans.
func (c *cone) sheetMm() float64 {
	return c.in.Thickness.Mm * c.in.Height.Mm / math.Hypot(c.in.Height.Mm, (c.in.Large.Mm-c.in.Small.Mm)/2)
}

// girth is what a tape reads round an end of a diameter.
func (c *cone) girth(s *Sizes, mm float64) string {
	z, edge := s.General(mm), c.edgeMm()
	z.NominalMm, z.MinMm, z.MaxMm = z.NominalMm+edge, z.MinMm+edge, z.MaxMm+edge
	return s.girthLimits(z, c.sheetMm(), c.in.Overlap.Mm)
}
