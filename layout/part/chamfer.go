package part

import (
	"errors"
	"math"
	"slices"

	"centrepop/layout/fits"
	"centrepop/layout/plan"
	"centrepop/layout/words"
	"centrepop/parts"
	"centrepop/parts/geom"
	"centrepop/parts/seq"
)

// chamfer is a bevel or a rounding on the edge of a step, or of an outline that is not round.
type chamfer struct {
	parts.Chamfer
	step  *Step   // nil on an outline that is not round
	back  bool    // at the step's back end
	diaMm float64 // at the face: larger than a bore, smaller than an outside
}

// chamfers lists the bevels in the order of the drawing.
func (s *Sizes) chamfers() []*chamfer {
	var out []*chamfer
	for _, in := range s.Part.Chamfers {
		name, end := in.On()
		back := end == parts.Back
		c := &chamfer{Chamfer: in, step: s.StepNamed(name), back: back}
		if c.step != nil {
			round := c.step.RadiusMm()
			if c.step.Inside && c.step.Size.Thread != nil {
				round = c.step.leastMm() / 2
			}
			c.diaMm = geom.Clean(2 * (round + c.step.bevelMm(back, in.Size.Mm, in.Angle.Deg) - c.step.fallMm(back)))
		}
		out = append(out, c)
	}
	return out
}

// Mirrored tells whether the part has a chamfer like one of its own where that comes to lie when it is
// turned end for end.
func (s *Sizes) Mirrored(edge string) bool {
	all := s.chamfers()
	at := func(c *chamfer) float64 {
		if c.back {
			return c.step.ToMm
		}
		return c.step.FromMm
	}
	one := seq.First(all, func(c *chamfer) bool { return c.Edge.Value == edge && c.step != nil })
	return one != nil && slices.ContainsFunc(all, func(o *chamfer) bool {
		return o.step != nil && o.back != one.back && o.step.Inside == one.step.Inside && math.Abs(at(o)+at(one)-s.LengthMm()) < geom.CloseMm &&
			math.Abs(o.diaMm-one.diaMm) < geom.CloseMm && o.Size.Mm == one.Size.Mm && o.Radius.Mm == one.Radius.Mm && o.For == one.For
	})
}

// EndForEnd tells whether the section of the part is the same when it is turned end for end.
func (s *Shape) EndForEnd() bool {
	if s.Section == nil {
		return false
	}
	same := func(line []plan.XY) bool {
		for i, q := range line {
			if o := line[len(line)-1-i]; math.Abs(q.XMm+o.XMm-s.LengthMm()) > geom.CloseMm || math.Abs(q.YMm-o.YMm) > geom.CloseMm {
				return false
			}
		}
		return true
	}
	return same(s.Section.Outer) && same(s.Section.Inner)
}

// bevelMm is how far the radius at a face lies over that of the step, with a
// chamfer of that length along the axis. On a taper the chamfer starts where the
// cone is at its inner end.
func (s *Step) bevelMm(back bool, longMm, deg float64) float64 {
	up := longMm * tanDeg(deg)
	if !s.Inside {
		up = -up
	}
	t := s.taper()
	switch {
	case t == nil:
		return up
	case t.largeAt(back):
		return up - longMm/t.Ratio()/2
	}
	return up + longMm/t.Ratio()/2
}

// fallMm is how far the radius at an end lies under the large one of a taper.
func (s *Step) fallMm(back bool) float64 {
	if t := s.taper(); t != nil && !t.largeAt(back) {
		return (t.LargeMm - t.SmallMm) / 2
	}
	return 0
}

// edge is a straight stretch of contour with the chamfers at its two ends.
func (s *Sizes) edge(st Step, radius float64) []plan.XY {
	line := []plan.XY{{XMm: st.FromMm, YMm: radius}, {XMm: st.ToMm, YMm: radius}}
	for c := range seq.Refs(s.Part.Chamfers) {
		switch c.Edge.Value {
		case st.Name + "-front":
			rim := st.rim(c, radius, false)
			for i := range rim {
				rim[i].XMm = geom.Clean(st.FromMm + rim[i].XMm)
			}
			line = append(rim, line[1:]...)
		case st.Name + "-back":
			rim := st.rim(c, radius, true)
			slices.Reverse(rim)
			for i := range rim {
				rim[i].XMm = geom.Clean(st.ToMm - rim[i].XMm)
			}
			line = append(line[:len(line)-1], rim...)
		}
	}
	return line
}

// rim is what a bevel or a rounding makes of an edge: how far from the face and
// the radius there, from the face on.
func (s *Step) rim(c *parts.Chamfer, radius float64, back bool) []plan.XY {
	if c.Radius.Set() {
		return arc(c, radius, s.Inside)
	}
	return []plan.XY{{YMm: geom.Clean(radius + s.bevelMm(back, c.Size.Mm, c.Angle.Deg))}, {XMm: c.Size.Mm, YMm: radius}}
}

func tanDeg(deg float64) float64 { return math.Tan(deg * math.Pi / 180) }

func (c *chamfer) feature(n *Numbered) plan.Feature {
	f := plan.Feature{
		Kind: plan.ChamferFeature, Name: c.name(), Size: c.sizeText(n.W),
		Balloon: plan.XY{XMm: n.LengthMm() / 2, YMm: n.Section.MaxMm},
	}
	if c.step != nil {
		f.Size += words.When(!c.Sphere, ": "+c.faceText(n.W)+" at the face")
		f.Balloon = plan.XY{XMm: c.step.FromMm, YMm: c.step.RadiusMm()}
		if c.back {
			f.Balloon.XMm = c.step.ToMm
		}
	}
	if c.For != "" {
		f.Note = "for " + c.For
	}
	return f
}

// face is that of the part on whose side its edge is.
func (c *chamfer) face() parts.Face {
	if c.back {
		return parts.Back
	}
	return parts.Front
}

func (c *chamfer) name() string { return c.Word() + " " + words.Spaced(c.Edge.Value) }

// operations: a chamfer is cut with its step or its plate.
func (c *chamfer) operations(*bench) {}

func (c *chamfer) checks(r *record) {
	if c.step == nil {
		return
	}
	if c.Radius.Set() {
		r.add(c.roundCheck(r))
		return
	}
	check := plan.Check{Ref: r.ref(c), What: c.name(), Wanted: r.W.Read(c.offMm(c.Size.Mm)) + c.beside(), Limits: words.OrNone(""), Gauge: "calipers"}
	if pm, ok := r.chamferPm(c.Size.Mm, &check); ok {
		check.Limits = r.W.Limits(c.offMm(c.Size.Mm-pm), c.offMm(c.Size.Mm+pm))
		check.Source = generalBy(r.Job.Tolerance.Value, " (chamfers)")
		if deg, err := fits.GeneralAngle(c.Size.Mm*min(1, tanDeg(c.Angle.Deg)), r.Job.Tolerance.Value); err == nil && c.Size.Mm >= protractorMm {
			check.Limits += ", " + words.Trim(c.Angle.Deg, 1) + "° ±" + words.Angle(deg)
			check.Gauge += ", bevel protractor"
		}
	}
	r.add(check)
}

// roundCheck is a rounded end in the record. ISO 2768-1 gives external radii with
// the heights of chamfers.
func (c *chamfer) roundCheck(r *record) plan.Check {
	check := plan.Check{Ref: r.ref(c), What: c.name(), Wanted: c.sizeText(r.W), Limits: words.OrNone(""), Gauge: c.gauge()}
	if pm, ok := r.chamferPm(c.Radius.Mm, &check); ok && pm < c.Radius.Mm {
		check.MinMm, check.MaxMm = geom.Clean(c.Radius.Mm-pm), geom.Clean(c.Radius.Mm+pm)
		check.Limits = r.W.Limits(check.MinMm, check.MaxMm)
		check.Source = generalBy(r.Job.Tolerance.Value, " (radii)")
	}
	return check
}

// protractorMm is the shortest chamfer that the blade of a bevel protractor lies on. Common practice, no source.
const protractorMm = 5.0

// offMm is how far the diameter at the face lies from that of the step, with a chamfer of that length.
func (c *chamfer) offMm(longMm float64) float64 {
	return geom.Clean(2 * math.Abs(c.step.bevelMm(c.back, longMm, c.Angle.Deg)))
}

// beside says which side of the diameter of the step that at the face lies on.
func (c *chamfer) beside() string {
	return words.Either(c.step.Inside, " over its Ø", " under its Ø")
}

// faceText is the diameter at the face: where that of the step is known only once it is measured, from there.
func (c *chamfer) faceText(w words.Writer) string {
	z, done := c.step.Size, words.Either(c.step.Inside, "bored", "turned")
	if !z.AsBought && !z.Measured() && !z.Press.Set() {
		return "Ø" + w.Read(c.diaMm)
	}
	return w.Read(c.offMm(c.Size.Mm)) + c.beside() + " as " + words.Either(z.AsBought, "measured", done)
}

// chamferPm is the general tolerance of a chamfer or a radius, plus and minus mm; false where there is
// none. An edge smaller than the tables go is held to what is seen.
func (r *record) chamferPm(mm float64, check *plan.Check) (pm float64, ok bool) {
	pm, err := fits.GeneralChamfer(mm, r.Job.Tolerance.Value)
	if errors.Is(err, fits.ErrNotDefined) {
		check.Limits = "even all round, no burr"
	}
	return pm, err == nil
}

// line cuts a chamfer, with the top slide where it is known that the lathe does.
func (c *chamfer) line(w words.Writer, lathe bool) string {
	if c.Radius.Set() {
		return c.roundLine(w)
	}
	line := "Chamfer " + words.Spaced(c.Edge.Value) + " " + c.sizeText(w)
	if c.step != nil {
		line += ": to " + c.faceText(w) + " at the face"
		if c.Angle.Deg != 45 {
			slide := words.Either(lathe, ", top slide set ", ", ")
			line += slide + words.Trim(c.Angle.Deg, 1) + "° from the axis"
		}
	}
	line += words.When(c.For != "", " ("+c.For+")")
	return line + "."
}

// chamferLines cut the chamfers that are wanted.
func (b *bench) chamferLines(wanted func(*chamfer) bool) (do []string, refs []int) {
	for _, c := range b.bevels {
		if wanted(c) {
			do = append(do, c.line(b.W, !b.later && !b.form.onMill(b.Sizes)))
			refs = append(refs, b.ref(c))
		}
	}
	return do, refs
}

// How far a bore is opened at a face for the chamfer of its edge, before it is bored from the other: less
// than its diameter, and deeper than the chamfer. Common practice, no source.
const (
	rimUnderMm  = 1.0
	rimBeyondMm = 1.0
)

// rimLines open at the face in front what is bored later, from the other: the chamfer of its edge can be cut there now
// alone, and has metal to cut round a smaller drilled hole that it does not reach.
func (b *bench) rimLines(set setting) (do []string) {
	for _, c := range b.bevels {
		if c.step == nil || !c.step.Inside || !set.first() || !b.reached(c, set) || slices.Contains(set.steps, c.step) {
			continue
		}
		if open := c.step.leastMm() - rimUnderMm; b.holeMm != 0 && b.holeMm < open {
			deep := math.Min(c.deepMm()+rimBeyondMm, c.step.LengthMm())
			do = append(do, "Open "+words.Spaced(c.step.Name)+" at the face to "+b.W.Dia(b.W.Even(open, 0.1, 0.01))+", "+b.W.Said(deep)+
				" deep: the rest is bored later, from the back; its edge is cut now.")
		}
	}
	return do
}

// reached tells whether a chamfer is cut in a setting: those of the end faces
// with the face, the others with their step.
func (b *bench) reached(c *chamfer, set setting) bool {
	switch face := c.face(); {
	case c.step == nil:
		return true
	case b.atFace(c.step, face):
		return set.face == face
	}
	return slices.Contains(set.steps, c.step)
}

// deepMm is how far from the face it goes.
func (c *chamfer) deepMm() float64 {
	if c.Radius.Set() {
		return c.Radius.Mm
	}
	return c.Size.Mm
}
