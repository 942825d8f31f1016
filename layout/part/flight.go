package part

import (
	"math"
	"strconv"

	"github.com/tdewolff/canvas"

	"centrepop/layout/flight"
	"centrepop/layout/plan"
	"centrepop/layout/weld"
	"centrepop/layout/words"
	"centrepop/parts"
	"centrepop/parts/geom"
)

// helix is the flights of an auger, pulled from flat rings.
type helix struct {
	usual
	in    *parts.Flight
	blank flight.Blank
	run   flight.Run
	err   error
}

func newHelix(in *parts.Flight) *helix {
	f := flight.Flight{ShaftMm: in.Shaft.Mm, OutsideMm: in.Outside.Mm, PitchMm: in.Pitch.Mm, ThicknessMm: in.Thickness.Mm}
	h := &helix{in: in}
	if h.blank, h.err = f.Blank(); h.err == nil {
		h.run, h.err = f.For(in.Length.Mm)
	}
	return h
}

// HelixMm is the length of the seam along the inside of an auger flight on one
// side, and its number of turns; 0 for another part.
func (s *Sizes) HelixMm() (seamMm, turns float64) {
	if h, ok := s.form.(*helix); ok {
		return h.run.SeamMm, h.run.Turns
	}
	return 0, 0
}

func (h *helix) lengthMm() float64              { return h.in.Length.Mm }
func (h *helix) round() bool                    { return true }
func (h *helix) outline(*Sizes) *canvas.Path    { return geom.Circle(h.in.Outside.Mm) }
func (h *helix) wallMm(*Sizes, float64) float64 { return h.in.Thickness.Mm }
func (h *helix) volumeMm3(*Shape) float64       { return h.run.VolumeMm3 }

func (h *helix) steps(z *sizer) []Step {
	if h.err != nil {
		z.sizeFault(h.in.Pos, "the flight cannot be made: its ", h.err)
	}
	return nil
}

func (h *helix) roundMm(feature string) float64 {
	if feature == "inside" {
		return h.in.Shaft.Mm
	}
	return 0
}

func (h *helix) overall(s *Sizes) string {
	return s.W.Dia(h.in.Outside.Mm) + " on " + s.W.Dia(h.in.Shaft.Mm) + ", pitch " + s.W.Size(h.in.Pitch.Mm) + ", " + s.W.Size(h.in.Length.Mm) + " long"
}

// section is the room that the flights take.
func (h *helix) section(*Sizes) *plan.Section {
	l, r, i := h.in.Length.Mm, h.in.Outside.Mm/2, h.in.Shaft.Mm/2
	return &plan.Section{LengthMm: l, MaxMm: r, Outer: []plan.XY{{YMm: r}, {XMm: l, YMm: r}}, Inner: []plan.XY{{YMm: i}, {XMm: l, YMm: i}}}
}

// hand names the way it winds.
func (h *helix) hand() string { return words.Either(h.in.Left, "left-hand", "right-hand") }

// developments make the flat ring of a turn.
func (h *helix) developments(d *shaper) {
	if h.err != nil {
		return
	}
	b := h.blank
	edge := ring(b.InsideMm/2, b.OutsideMm/2, b.GapDeg)
	out := plan.Development{
		Name: string(plan.FlightPattern), Kind: plan.FlightPattern, Title: "Flat ring of one turn", Copies: h.run.Blanks, AreaMm2: geom.Clean(b.AreaMm2),
		Blank: plan.Contour(edge.ToSVG()), Lines: []plan.PatternLine{{Name: "edge", Role: "edge", Path: plan.Contour(edge.ToSVG())}},
		Sizes: []plan.PatternValue{
			{Name: "inside diameter", Text: d.exact(b.InsideMm)}, {Name: "outside diameter", Text: d.exact(b.OutsideMm)},
			{Name: "gap", Text: words.Angle(b.GapDeg)}, {Name: "gap across the inside", Text: d.exact(b.InsideGapMm)},
			{Name: "gap across the outside", Text: d.exact(b.OutsideGapMm)}, {Name: "inside edge", Text: d.exact(b.InsideHelixMm)},
			{Name: "outside edge", Text: d.exact(b.OutsideHelixMm)},
			{Name: words.Either(b.MidStrain < 0, "the middle is upset by", "the middle stretches by"), Text: words.Trim(100*math.Abs(b.MidStrain), 1) + " %"},
		},
		Rules: []string{"both edges as long as the helices they become, the width kept"},
	}
	box := geom.Bounds(canvas.MustParseSVGPath(string(out.Lines[0].Path)))
	out.MinMm, out.MaxMm = box.Min, box.Max
	if d.Part.Stock.Form != "" {
		out.On = d.StockText()
	}
	if whole := 360 - b.GapDeg; h.run.LastDeg < whole-0.01 {
		at := func(radius float64) plan.XY { return geom.Clock(radius, b.GapDeg/2+h.run.LastDeg) }
		out.Lines = append(out.Lines, plan.PatternLine{Name: "last", Role: "division", Path: lineOf(at(b.InsideMm/2), at(b.OutsideMm/2)), Text: "the last ring ends here"})
		out.Labels = append(out.Labels, plan.PatternLabel{Text: "last of " + strconv.Itoa(h.run.Blanks) + ": cut here", AtMm: at((b.InsideMm + b.OutsideMm) / 4)})
		out.Notes = []string{"The last ring is cut to " + words.Trim(h.run.LastDeg, 1) + "° from the gap's right edge, clockwise."}
	}
	d.Developments = append(d.Developments, out)
}

func (h *helix) needless(*shaper) string {
	return words.When(h.blank.OutsideMm > largeBlankMm, "two circles and two radii: trammel and chord set it out better than joined paper")
}

// metalAt: somewhere round, its blade is there.
func (h *helix) metalAt(s *Sizes, radiusMm float64) []geom.Span {
	if radiusMm < h.in.Shaft.Mm/2 || radiusMm > h.in.Outside.Mm/2 {
		return nil
	}
	return []geom.Span{{ToMm: s.LengthMm()}}
}

// seamMm is across the blade, where a turn is joined to the next.
func (h *helix) seamMm() float64 { return (h.in.Outside.Mm - h.in.Shaft.Mm) / 2 }

// ring is a flat ring with a gap at TOP.
func ring(inside, outside, gapDeg float64) *canvas.Path {
	p := &canvas.Path{}
	to := func(radius, deg float64, arc int) {
		q := geom.Clock(radius, deg)
		switch arc {
		case 0:
			p.LineTo(q.XMm, q.YMm)
		default: // clockwise 1, back −1
			p.ArcTo(radius, radius, 0, false, arc < 0, q.XMm, q.YMm)
		}
	}
	from, half := gapDeg/2, (360-gapDeg)/2
	start := geom.Clock(outside, from)
	p.MoveTo(start.XMm, start.YMm)
	to(outside, from+half, 1)
	to(outside, from+2*half, 1)
	to(inside, from+2*half, 0)
	to(inside, from+half, -1)
	to(inside, from, -1)
	p.Close()
	return p
}

func (h *helix) features(n *Numbered) {
	z := h.in.Length.Mm / 2
	n.add(plan.Feature{Kind: plan.EndFeature, Name: "outside", Size: n.W.Dia(h.in.Outside.Mm), Limits: n.limitsText(formed(h.in.Outside.Mm)), Balloon: plan.XY{XMm: z, YMm: h.in.Outside.Mm / 2}})
	n.add(plan.Feature{
		Kind: plan.EndFeature, Name: "inside", Size: n.W.Dia(h.in.Shaft.Mm) + " as what it goes round", Note: "lies on that all round",
		Balloon: plan.XY{XMm: z, YMm: h.in.Shaft.Mm / 2},
	})
	n.add(plan.Feature{
		Kind: plan.EndFeature, Name: "pitch", Size: n.W.Size(h.in.Pitch.Mm) + " " + h.hand(), Limits: n.limitsText(formed(h.in.Pitch.Mm)),
		Balloon: plan.XY{XMm: 0, YMm: h.in.Outside.Mm / 2},
	})
	n.add(plan.Feature{
		Kind: plan.LengthFeature, Name: string(plan.LengthFeature), Size: n.W.Size(h.in.Length.Mm), Limits: n.limitsText(formed(h.in.Length.Mm)),
		Balloon: plan.XY{XMm: h.in.Length.Mm, YMm: n.Section.MaxMm * 0.9},
	})
}

func (h *helix) operations(b *bench) {
	rings := words.Either(h.run.Blanks > 1, strconv.Itoa(h.run.Blanks)+" flat rings", "the flat ring")
	cut := plan.Operation{Machine: plan.Cutter, Title: "Cut " + rings, Do: []string{b.setOut() + "; edges deburred."}, Refs: b.refs(plan.EndFeature)}
	if h.run.LastDeg < 360-h.blank.GapDeg-0.01 {
		cut.Do = append(cut.Do, "The last ring is cut to "+words.Trim(h.run.LastDeg, 1)+"°.")
	}
	b.op(warn(cut, sheetEdges))
	towards := words.Either(h.in.Left, "away from you", "towards you")
	b.op(warn(plan.Operation{Machine: plan.Bench, Title: "Pull each ring to the pitch, " + h.hand(), Do: []string{
		"Hold the edge on the left of the gap, gap up, and pull the edge on its right " + towards + " until the edges stand " + b.W.Size(h.in.Pitch.Mm) + " apart along the axis.",
		"Try it on what it goes round, " + b.W.Dia(h.in.Shaft.Mm) + ": the inside edge lies on it all round, and it stands square to it."},
		Holding: "one edge clamped to the bench, the other drawn by a chain hoist or pushed in a press, nobody in line",
		Gauge:   "spacer of the pitch, what it goes round", Refs: b.refs(plan.EndFeature)}, springsBack))
	if h.run.Blanks > 1 {
		b.op(warn(plan.Operation{
			Machine: plan.Weld, Title: "Join the turns end to end",
			Do: []string{"On what it goes round, the edges of one turn against the next; tack, then weld: " + b.seamText(), "Grind it flush on the conveying side."},
		}, welding))
	}
}

func (h *helix) cutFile(k *cutter) (*plan.Profile, error) { return k.blank(h.in.Thickness.Mm) }

// check measures what is formed as welded things are measured.
func (h *helix) check(r *record, f plan.Feature) {
	if f.Kind == plan.LengthFeature {
		r.sized(plan.Check{Ref: f.N, What: f.Name, Wanted: r.W.Size(h.in.Length.Mm), Gauge: "calipers"}, formed(h.in.Length.Mm))
		return
	}
	r.checkSaid(f, weld.PlaceSource, usualGauge)
}

// show is the cut along the axis: every half turn the flight crosses it, above
// and below.
func (h *helix) show(n *Numbered, out *plan.PartPlan) {
	out.Dimensions, out.Profiles = nil, []plan.FoldView{h.view(n.Sizes)}
}

func (h *helix) view(s *Sizes) plan.FoldView {
	in := h.in
	v := plan.FoldView{Name: "cut along the axis, front at the left, " + h.hand()}
	r, i, l := in.Outside.Mm/2, in.Shaft.Mm/2, in.Length.Mm
	var above []float64
	for k := 0; ; k++ {
		z, side := float64(k)*in.Pitch.Mm/2, 1.0
		if k%2 == 1 {
			side = -1
		}
		if geom.Over(z, l) {
			break
		}
		if side > 0 {
			above = append(above, z)
		}
		w := math.Min(in.Thickness.Mm, l) / 2
		mid := math.Min(math.Max(z, w), l-w)
		addMetal(&v, geom.Polygon([]plan.XY{{XMm: mid - w, YMm: side * i}, {XMm: mid + w, YMm: side * i}, {XMm: mid + w, YMm: side * r}, {XMm: mid - w, YMm: side * r}}))
	}
	v.MinMm, v.MaxMm = plan.XY{YMm: -r}, plan.XY{XMm: l, YMm: r}
	length := formed(l)
	v.Dims = append(v.Dims,
		plan.FoldLength{FromMm: plan.XY{YMm: r}, ToMm: plan.XY{XMm: l, YMm: r}, Out: plan.XY{YMm: 1}, Text: s.W.Size(l), Limits: s.limitsText(length)},
		plan.FoldLength{FromMm: plan.XY{YMm: -r}, ToMm: plan.XY{YMm: r}, Out: plan.XY{XMm: -1}, Text: s.W.Dia(in.Outside.Mm), Limits: s.limitsText(formed(in.Outside.Mm))},
		plan.FoldLength{FromMm: plan.XY{XMm: l, YMm: -i}, ToMm: plan.XY{XMm: l, YMm: i}, Out: plan.XY{XMm: 1}, Text: s.W.Dia(in.Shaft.Mm)})
	if len(above) > 1 {
		v.Dims = append(v.Dims, plan.FoldLength{
			FromMm: plan.XY{XMm: above[0], YMm: -r}, ToMm: plan.XY{XMm: above[1], YMm: -r}, Out: plan.XY{YMm: -1}, Text: "pitch " + s.W.Size(in.Pitch.Mm),
			Limits: s.limitsText(formed(in.Pitch.Mm)),
		})
	}
	return v
}
