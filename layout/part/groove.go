package part

import (
	"errors"
	"math"
	"slices"

	"centrepop/layout/fits"
	"centrepop/layout/grooves"
	"centrepop/layout/lookup"
	"centrepop/layout/plan"
	"centrepop/layout/words"
	"centrepop/parts"
	"centrepop/parts/geom"
	"centrepop/parts/seq"
)

// Groove is a groove worked out: in a round, or of an O-ring in an end face.
type Groove struct {
	In    *parts.Groove
	Row   plan.GrooveRow
	kind  grooveKind
	step  *Step // nil in a face
	floor Sized // diameter of the floor; in a face the depth
	width Sized
	wall  Sized // diameter of the wall that holds the ring, in a face
}

// grooveKind is what differs between grooves.
type grooveKind interface {
	size(z *sizer, g *Groove) bool            // floor and width; false after a fault
	purpose(w words.Writer) string            // what it is for
	lines(w words.Writer, g *Groove) []string // what is done after it is cut
	bought(w words.Writer) string             // what lies in it, as it is ordered
	gauge() string                            // of the width
}

// grooves works out the grooves in the order of the drawing.
func (z *sizer) grooves() {
	for i := range z.Part.Grooves {
		g := Groove{In: &z.Part.Grooves[i]}
		switch g.In.Kind {
		case parts.RingGroove:
			g.kind = &ringGroove{}
		case parts.ORingGroove:
			g.kind = &oringGroove{}
		default:
			g.kind = plainGroove{g.In}
		}
		g.Row = plan.GrooveRow{Name: g.In.Name.Value, Kind: string(g.In.Kind), In: g.In.In.Value, Face: g.In.Face()}
		if g.step = z.StepNamed(g.In.In.Value); g.step != nil {
			g.Row.Inside, g.Row.DiameterMm = g.step.Inside, geom.Clean(g.step.Size.NominalMm)
		}
		if (g.step != nil || g.Row.Face != "") && g.kind.size(z, &g) && z.groovePlace(&g) {
			z.Grooves = append(z.Grooves, g)
		}
	}
}

// groovePlace works out where a groove lies; false after a fault.
func (z *sizer) groovePlace(g *Groove) bool {
	r := &g.Row
	r.WidthMm, r.FloorMm = geom.Clean(g.width.NominalMm), geom.Clean(g.floor.NominalMm)
	if r.Face != "" {
		return z.onFace(g)
	}
	r.DepthMm = geom.Clean(math.Abs(r.DiameterMm-r.FloorMm) / 2)
	r.FromMm, r.ToMm = g.In.StretchMm(r.WidthMm, z.LengthMm())
	if r.FromMm < g.step.FromMm-geom.CloseMm || r.ToMm > g.step.ToMm+geom.CloseMm {
		z.fault(g.In.Axial.Pos, r.Name+" is "+z.W.Size(r.WidthMm)+" wide and does not lie in "+g.step.Name, "a groove within its step")
		return false
	}
	return true
}

// onFace places a groove in an end face, or in a shoulder that looks the same
// way; false after a fault.
func (z *sizer) onFace(g *Groove) bool {
	r := &g.Row
	r.FloorMm, r.DepthMm = 0, geom.Clean(g.floor.NominalMm)
	ring := g.wallsMm()
	inner, _, ok := z.Plane(r.Face, ring.Min/2+geom.CloseMm)
	outer, _, all := z.Plane(r.Face, ring.Max/2-geom.CloseMm)
	if !ok || !all || math.Abs(inner-outer) > geom.CloseMm {
		cross, fix := "", "an O-ring that lies on the face"
		for _, s := range slices.Concat(z.Side(false), z.Side(true)) {
			if d := s.Size.NominalMm; cross == "" && d > ring.Min && d < ring.Max {
				cross, fix = ": "+s.Name+" ends in it at "+z.W.Dia(d), fix+", or another size of "+s.Name
			}
		}
		z.fault(g.In.In.Pos, "the groove, from "+z.W.Dia(ring.Min)+" to "+z.W.Dia(ring.Max)+" at its limits, does not lie on one level of the "+string(r.Face)+" face"+cross, fix)
		return false
	}
	from := parts.At(r.Face, inner, inner-r.DepthMm)
	r.FromMm, r.ToMm = geom.Clean(from), geom.Clean(from+r.DepthMm)
	return true
}

// wallsMm are the smallest inner and the largest outer diameter of a groove in a face: one
// wall by its own limits, the other a width from it.
func (g *Groove) wallsMm() plan.Range {
	out := plan.Range{Min: g.wall.MinMm, Max: g.wall.MaxMm}
	if g.In.PressureOutside {
		out.Max = geom.Clean(out.Max + 2*g.width.MaxMm)
	} else {
		out.Min = geom.Clean(out.Min - 2*g.width.MaxMm)
	}
	return out
}

func limited(l fits.Limits, source lookup.Source) Sized {
	return Sized{NominalMm: l.NominalMm, MinMm: l.MinMm, MaxMm: l.MaxMm, Limited: true, Class: l.Class, Source: source}
}

// ringGroove is that of a retaining ring.
type ringGroove struct{ ring grooves.Ring }

// Ring is the retaining ring of a groove as it is ordered and its thickness in
// mm; false for another groove.
func (g *Groove) Ring(w words.Writer) (item string, thickMm float64, ok bool) {
	k, ok := g.kind.(*ringGroove)
	if !ok {
		return "", 0, false
	}
	return k.bought(w), k.ring.ThicknessMm, true
}

// ToWallMm is how far the wall of a groove behind it lies from a place in front of it, or with back
// false the wall before it from a place behind it, inside the limits of the lengths, of the groove's
// place and of its width.
func (s *Sizes) ToWallMm(g *Groove, atMm float64, back bool) plan.Range {
	at, fromBack := s.General(geom.Clean(g.In.Axial.Mm)), g.In.From == parts.Back
	end := s.BetweenMm(g.Row.Inside, 0, atMm) // to the end that the groove is measured from
	if fromBack {
		end = s.BetweenMm(g.Row.Inside, atMm, s.LengthMm())
	}
	if fromBack == back { // of its walls the one that is measured
		return plan.Range{Min: geom.Clean(end.Min - at.MaxMm), Max: geom.Clean(end.Max - at.MinMm)}
	}
	return plan.Range{Min: geom.Clean(at.MinMm + g.width.MinMm - end.Max), Max: geom.Clean(at.MaxMm + g.width.MaxMm - end.Min)}
}

// WallsApartMm is how far a wall of groove b, its back or its front one, lies behind one of a, inside the limits of the
// places and the widths of both and, where they are measured from different ends, of the length of the part.
func (s *Sizes) WallsApartMm(a *Groove, aBack bool, b *Groove, bBack bool) plan.Range {
	from, ofLength := s.wallMm(a, aBack)
	to, length := s.wallMm(b, bBack)
	whole := s.whole()
	out := plan.Range{Min: to.Min - from.Max, Max: to.Max - from.Min}
	switch {
	case length && !ofLength:
		out.Min, out.Max = out.Min+whole.MinMm, out.Max+whole.MaxMm
	case ofLength && !length:
		out.Min, out.Max = out.Min-whole.MaxMm, out.Max-whole.MinMm
	}
	return plan.Range{Min: geom.Clean(out.Min), Max: geom.Clean(out.Max)}
}

// wallMm is where a wall of a groove lies behind the front of its part; ofLength tells that the length of the part is to be
// added, from whose end it is measured.
func (s *Sizes) wallMm(g *Groove, back bool) (mm plan.Range, ofLength bool) {
	at := s.General(geom.Clean(g.In.Axial.Mm))
	mm = plan.Range{Min: at.MinMm, Max: at.MaxMm}
	if ofLength = g.In.From == parts.Back; ofLength != back { // the other wall than the one that is measured
		mm.Min, mm.Max = mm.Min+g.width.MinMm, mm.Max+g.width.MaxMm
	}
	if ofLength {
		mm = plan.Range{Min: -mm.Max, Max: -mm.Min}
	}
	return mm, ofLength
}

func (k *ringGroove) size(z *sizer, g *Groove) bool {
	ring, err := grooves.RingFor(g.Row.DiameterMm, g.Row.Inside)
	if err != nil {
		right := "a diameter that has a ring"
		if near := (*grooves.RingError)(nil); errors.As(err, &near) {
			right = z.W.Dia(near.BelowMm) + " or " + z.W.Dia(near.AboveMm) + parts.By(z.W.Units, "", ", for rings of "+words.Trim(near.BelowMm, 2)+" or "+words.Trim(near.AboveMm, 2)+" mm")
		}
		z.fault(g.In.In.Pos, "no standard retaining ring is for "+z.W.Dia(g.Row.DiameterMm), right)
		return false
	}
	k.ring = ring
	g.floor, g.width = limited(ring.Groove, ring.Source), limited(ring.Width, ring.Source)
	g.Row.EdgeMm, g.Row.ClearMm = geom.Clean(ring.EdgeMm), geom.Clean(ring.ClearMm)
	return true
}

func (k *ringGroove) purpose(w words.Writer) string { return "for " + words.Lower(k.bought(w)) }

// bought is the ring as its standard names it, in millimetres in a job in inches too.
func (k *ringGroove) bought(w words.Writer) string {
	return "Retaining ring " + k.ring.Standard + " " + words.Trim(k.ring.NominalMm, 2) + " × " + words.Trim(k.ring.ThicknessMm, 2) + parts.By(w.Units, "", " mm")
}

func (k *ringGroove) gauge() string { return "gauge blocks, or the ring itself" }

func (k *ringGroove) lines(w words.Writer, g *Groove) []string {
	return []string{"Sharp corners at the floor, no burr at the edge. Try the ring with its pliers, eyes protected: it springs to the floor and turns by hand."}
}

// plainGroove is for grease, for a tool to run out, or for what its name says.
type plainGroove struct{ in *parts.Groove }

func (k plainGroove) size(z *sizer, g *Groove) bool {
	toward := -2.0
	if g.Row.Inside {
		toward = 2
	}
	g.floor, g.width = z.General(geom.Clean(g.Row.DiameterMm+toward*k.in.Depth.Mm)), z.General(k.in.Width.Mm)
	return true
}

func (k plainGroove) purpose(words.Writer) string {
	switch k.in.Kind {
	case parts.GreaseGroove:
		return "for grease"
	case parts.ReliefGroove:
		return "for the tool to run out"
	}
	return ""
}

func (k plainGroove) bought(words.Writer) string { return "" }
func (k plainGroove) gauge() string              { return "calipers" }

func (k plainGroove) lines(w words.Writer, g *Groove) []string {
	if k.in.Kind == parts.GreaseGroove {
		return []string{"Round its edges: a sharp edge wipes the grease off."}
	}
	return nil
}

func (g *Groove) sizeText(w words.Writer) string {
	if g.Row.Face != "" {
		return w.Dia(g.Row.InnerMm) + " to " + w.Dia(g.Row.OuterMm) + " × " + g.floor.aim(w) + " deep"
	}
	return words.Join(" ", "Ø"+g.floor.aim(w), g.floor.Class) + " × " + words.Join(" ", g.width.aim(w), g.width.Class)
}

// placeText says where a groove lies.
func (s *Sizes) placeText(g *Groove) string {
	w, off := s.W, parts.At(g.Row.Face, g.Row.FromMm, geom.Clean(s.LengthMm()-g.Row.ToMm))
	switch {
	case g.Row.Face != "" && off > geom.CloseMm:
		return "in the shoulder " + w.Size(off) + " from the " + string(g.Row.Face) + " face"
	case g.Row.Face != "":
		return "in the " + string(g.Row.Face) + " face"
	}
	return w.Size(g.In.Axial.Mm) + " from the " + string(g.In.From) + " face to its nearer side"
}

func (g *Groove) feature(n *Numbered) plan.Feature {
	f := plan.Feature{
		Kind: plan.GrooveFeature, Name: words.Spaced(g.Row.Name), Size: "groove " + g.sizeText(n.W), Limits: n.limitsText(g.floor),
		Note:    words.Join("; ", g.kind.purpose(n.W), n.placeText(g), "in "+words.Spaced(g.Row.In)),
		Balloon: plan.XY{XMm: geom.Clean((g.Row.FromMm + g.Row.ToMm) / 2), YMm: geom.Clean(g.Row.FloorMm / 2)},
	}
	if g.Row.Face != "" {
		f.Note = words.Join("; ", g.kind.purpose(n.W), n.placeText(g))
		f.Balloon.YMm = geom.Clean((g.Row.InnerMm + g.Row.OuterMm) / 4)
	}
	return f
}

// operations: a groove is cut with its step or its face.
func (g *Groove) operations(*bench) {}

func (g *Groove) line(b *bench) []string {
	w := b.W
	text := words.Join(" ", words.Capital(words.Spaced(g.Row.Name)), g.kind.purpose(w)) + ": groove " + g.sizeText(w) + ", " + b.placeText(g)
	if g.Row.Face != "" {
		return append([]string{text + ". Trepan with a tool ground to clear the outer wall, then each wall to its diameter."}, g.kind.lines(w, g)...)
	}
	tool := words.Either(g.width.Limited, "a grooving tool narrower than "+w.Size(g.width.MinMm), "a grooving tool no wider than "+w.Size(g.Row.WidthMm))
	feed := words.Either(g.Row.Inside, "feed out "+w.Size(g.Row.DepthMm)+" from the bore", "feed in "+w.Size(g.Row.DepthMm)+" from the outside")
	return append([]string{text + ". Plunge with " + tool + ", " + feed + ", then each side to the width."}, g.kind.lines(w, g)...)
}

// grooveLines cut the grooves that are wanted.
func (b *bench) grooveLines(wanted func(*Groove) bool) (do, limits []string, refs []int) {
	for g := range seq.Refs(b.Grooves) {
		if !wanted(g) {
			continue
		}
		do, refs = append(do, g.line(b)...), append(refs, b.ref(g))
		for _, q := range g.limits() {
			limits = append(limits, b.limits(words.Spaced(g.Row.Name)+" "+q.what, q.size)...)
		}
	}
	return do, limits, refs
}

type namedSize struct {
	what, gauge string
	size        Sized
	mark        string // before the size: "Ø" or none
}

func (g *Groove) limits() []namedSize {
	if g.Row.Face != "" {
		wall := words.Either(g.In.PressureOutside, "inner wall", "outer wall")
		return []namedSize{{wall, "calipers", g.wall, "Ø"}, {"depth", "depth gauge", g.floor, ""}, {"width", g.kind.gauge(), g.width, ""}}
	}
	gauge := words.Either(g.Row.Inside, "inside groove callipers", "calipers with thin jaws")
	return []namedSize{{"floor", gauge, g.floor, "Ø"}, {"width", g.kind.gauge(), g.width, ""}}
}

// Bought is what lies in the groove, as it is ordered; empty for a plain groove.
func (g *Groove) Bought(w words.Writer) string { return g.kind.bought(w) }

// at tells whether a groove is cut in a setting: with its step, or with its face.
func (g *Groove) at(set setting) bool {
	if g.Row.Face != "" {
		return g.Row.Face == set.face
	}
	return slices.ContainsFunc(set.steps, func(s *Step) bool { return s == g.step })
}

func (g *Groove) checks(r *record) {
	name := words.Spaced(g.Row.Name)
	add := func(what, wanted, gauge string, s Sized) {
		r.sized(plan.Check{Ref: r.ref(g), What: name + " " + what, Wanted: wanted, Gauge: gauge}, s)
	}
	for _, q := range g.limits() {
		add(q.what, q.mark+words.Join(" ", q.size.aim(r.W), q.size.Class), q.gauge, q.size)
	}
	if g.Row.Face == "" {
		add("place", r.placeText(g), "calipers", r.General(geom.Clean(g.In.Axial.Mm)))
	}
}

// grooved is a contour of a step with its grooves.
func (s *Sizes) grooved(st *Step, line []plan.XY) []plan.XY {
	for g := range seq.Refs(s.Grooves) {
		if g.step != nil && g.step.Name == st.Name {
			line = g.cut(line)
		}
	}
	return line
}

// cut takes a groove out of a contour that runs from front to back.
func (g *Groove) cut(line []plan.XY) []plan.XY {
	from, to, floor := g.Row.FromMm, g.Row.ToMm, geom.Clean(g.Row.FloorMm/2)
	out := []plan.XY{}
	out = append(out, seq.Keep(line, func(p plan.XY) bool { return p.XMm < from-geom.CloseMm })...)
	out = append(out, plan.XY{XMm: from, YMm: radiusOn(line, from)}, plan.XY{XMm: from, YMm: floor}, plan.XY{XMm: to, YMm: floor}, plan.XY{XMm: to, YMm: radiusOn(line, to)})
	out = append(out, seq.Keep(line, func(p plan.XY) bool { return p.XMm > to+geom.CloseMm })...)
	return out
}

// radiusOn is the radius of a contour at a place on the axis.
func radiusOn(line []plan.XY, z float64) float64 {
	for i := 0; i+1 < len(line); i++ {
		a, b := line[i], line[i+1]
		if a.XMm-geom.CloseMm <= z && z <= b.XMm+geom.CloseMm && b.XMm > a.XMm {
			return geom.Clean(a.YMm + (b.YMm-a.YMm)*(z-a.XMm)/(b.XMm-a.XMm))
		}
	}
	return line[len(line)-1].YMm
}
