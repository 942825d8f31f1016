package part

import (
	"cmp"
	"errors"
	"slices"
	"strings"

	"centrepop/layout/lookup"
	"centrepop/layout/plan"
	"centrepop/layout/tapers"
	"centrepop/layout/words"
	"centrepop/parts"
	"centrepop/parts/geom"
	"centrepop/parts/seq"
)

// tapered is a step that is a cone: its diameter is that of the large end.
type tapered struct {
	bare
	tapers.Taper
	large, small parts.Face
	bevels       []parts.Chamfer // of the part
}

// taperOf is the taper of a step, nil without one.
func (z *sizer) taperOf(in *parts.Step) *tapered {
	t := in.Taper
	if t == nil {
		return nil
	}
	cone, err := tapers.New(in.Size.Nominal.Mm, t.SmallMm(in.Size.Nominal.Mm, in.Length.Mm), in.Length.Mm)
	if err != nil || cone.SmallMm < geom.CloseMm {
		z.fault(t.Pos, "the taper comes to a point within its step", "a smaller angle, or a shorter step")
		return nil
	}
	small := cmp.Or(t.Toward, parts.Back)
	return &tapered{Taper: cone, large: small.Other(), small: small, bevels: z.Part.Chamfers}
}

// largeAt tells whether the large end is at that end of the step.
func (t *tapered) largeAt(back bool) bool { return (t.large == parts.Back) == back }

// taper is the taper of a step, nil without one.
func (s *Step) taper() *tapered {
	t, _ := detailOf[*tapered](s)
	return t
}

// Cone is x of 1:x of a step that is a cone and whether its small end is at the back; 0 of another.
func (s *Step) Cone() (ratio float64, smallBack bool) {
	if t := s.taper(); t != nil {
		return t.Ratio(), t.small == parts.Back
	}
	return 0, false
}

// diameterAt is the step's diameter at a place along the axis.
func (s *Step) diameterAt(zMm float64) float64 {
	t := s.taper()
	if t == nil {
		return s.Size.NominalMm
	}
	off := parts.At(t.large, zMm-s.FromMm, s.ToMm-zMm)
	return t.LargeMm - off/t.Ratio()
}

func (t *tapered) note(w words.Writer) string {
	return "taper 1:" + words.Trim(t.Ratio(), 3) + " to " + w.Dia(geom.Clean(t.SmallMm)) + " at the " + string(t.small) + " end"
}

func (t *tapered) contour(_ *Sizes, st *Step, line []plan.XY) []plan.XY {
	return seq.Map(line, func(p plan.XY) plan.XY {
		return plan.XY{XMm: p.XMm, YMm: geom.Clean(p.YMm - (t.LargeMm-st.diameterAt(p.XMm))/2)}
	})
}

// dimension sets the large diameter at its end, and adds the small one.
func (t *tapered) dimension(s *Sizes, st *Step, d *plan.Dimension) []plan.Dimension {
	third := st.LengthMm() / 3
	front, back := [2]float64{st.FromMm, geom.Clean(st.FromMm + third)}, [2]float64{geom.Clean(st.ToMm - third), st.ToMm}
	large, small := front, back
	if t.large == parts.Back {
		large, small = back, front
	}
	less := (t.LargeMm - t.SmallMm) / 12 // half of a third, on one side
	narrow := plan.Dimension{
		Kind: plan.DiameterDim, FromMm: small[0], ToMm: small[1], RadiusMm: geom.Clean(t.SmallMm/2 + less), Inside: d.Inside,
		Text: s.W.Dia(geom.Clean(t.SmallMm)), Limits: s.limitsText(s.General(geom.Clean(t.SmallMm))),
	}
	d.FromMm, d.ToMm, d.RadiusMm = large[0], large[1], geom.Clean(t.LargeMm/2-less)
	return []plan.Dimension{narrow}
}

// gaugedRatio is x of 1:x of the steepest taper that is tried with a ring or a plug gauge. Common practice, no source.
const gaugedRatio = 3.0

// after is the work of a taper once its step is turned.
func (t *tapered) after(b *bench, st *Step) (int, string) {
	w, sets := b.W, b.W.Step(0.1, 0.001)
	gauge := "."
	if t.AdvanceMm(sets) >= gaugedRatio*sets {
		gauge = ". Gauge plane is the large end: " + w.Said(sets) + " on the diameter moves the gauge " + w.Read(t.AdvanceMm(sets)) + parts.By(w.Units, " mm", "") + " along."
	}
	for i, face := range []parts.Face{t.large, t.small} {
		if t.bevelled(st.Name, face) {
			gauge += " Measure " + w.Dia([]float64{st.Size.NominalMm, geom.Clean(t.SmallMm)}[i]) + " and write it down before its chamfer takes it away."
		}
	}
	return taperPhase, "Taper " + words.Spaced(st.Name) + " 1:" + words.Trim(t.Ratio(), 3) + ": top slide set " + words.Trim(t.TopSlideDeg(), 2) +
		"° from the axis (included " + words.Angle(t.IncludedDeg()) + "), " +
		w.Dia(st.Size.NominalMm) + " at the " + string(t.large) + " end, " + w.Dia(geom.Clean(t.SmallMm)) + " at the " + string(t.small) +
		" end; the slide travels " + w.Said(parts.By(w.Units, words.Round(t.FlankMm(), 1), t.FlankMm())) + gauge
}

// fitted tells whether a taper seats in a mate: steep, and with limits of its own at its large end. That end is sharp and
// takes no gauge, and an angle of the general tolerance would bear on one edge: the mate measures both.
func (t *tapered) fitted(st *Step) bool { return st.Size.Fitted() && t.Ratio() >= gaugedRatio }

func (t *tapered) check(st *Step, c *plan.Check) {
	c.What += t.end(st.Name, t.large)
	if t.fitted(st) {
		c.Gauge = words.Either(st.Inside, "two balls and a depth micrometer, or its mate", "micrometer over rollers at two heights, or its mate")
	}
}

// blueShare of a seated taper bears, at the least. Common practice, no source.
const blueShare = 0.75

// end names an end to be measured.
func (t *tapered) end(step string, face parts.Face) string {
	return " at the " + string(face) + " end" + words.When(t.bevelled(step, face), ", before its chamfer")
}

// bevelled tells whether a chamfer takes an end away.
func (t *tapered) bevelled(step string, face parts.Face) bool {
	return slices.ContainsFunc(t.bevels, func(c parts.Chamfer) bool { return c.Edge.Value == step+"-"+string(face) })
}

// more measures the small end and the angle.
func (t *tapered) more(r *record, st *Step) {
	name := words.Spaced(st.Name)
	if t.fitted(st) {
		alongMm := t.AdvanceMm(st.Size.MaxMm-st.Size.MinMm) / 2
		r.add(plan.Check{
			Ref: r.ref(st), What: name + " on its mate", Wanted: "blue all round, on " + r.W.Read(blueShare*st.LengthMm()) + " along or more; no rock",
			Limits: "within " + r.W.Near(alongMm) + " along of its place", Gauge: "marking blue, its mate", Source: lookup.NoSource,
		})
		return
	}
	s := r.General(geom.Clean(t.SmallMm))
	r.sized(plan.Check{Ref: r.ref(st), What: name + t.end(st.Name, t.small), Wanted: r.W.Dia(s.NominalMm), Gauge: "calipers"}, s)
	angle := plan.Check{Ref: r.ref(st), What: name + " taper", Wanted: words.Angle(t.TopSlideDeg()) + " from the axis", Gauge: "bevel protractor, or marking blue and its mate"}
	angle.Limits, angle.Source = r.angleLimits(st.LengthMm())
	r.add(angle)
}

// knurled is a step with a knurl of DIN 82.
type knurled struct {
	bare
	in   *parts.Knurl
	work tapers.Knurled
}

// knurlOf is the knurl of a step, nil without one.
func (z *sizer) knurlOf(in *parts.Step) *knurled {
	k := in.Knurl
	if k == nil {
		return nil
	}
	work, err := tapers.Knurl{Type: k.Type, PitchMm: k.PitchMm}.Work(in.Size.Nominal.Mm)
	var unknown *lookup.UnknownError
	switch {
	case errors.As(err, &unknown):
		z.fault(k.Pos, "no knurl is of the type "+k.Type, strings.Join(unknown.Known, ", "))
	case err != nil:
		z.fault(k.Pos, "no knurl has this pitch on "+z.W.Dia(in.Size.Nominal.Mm), "a pitch of 0.5, 0.6, 0.8, 1, 1.2 or 1.6 mm, and a diameter above ten of them")
	default:
		return &knurled{in: k, work: work}
	}
	return nil
}

func (k *knurled) name() string {
	return "knurl DIN 82-" + k.in.Type + " " + words.Trim(k.in.PitchMm, 2)
}
func (k *knurled) note(words.Writer) string { return k.name() + ", " + k.work.Name }

func (k *knurled) dimension(_ *Sizes, _ *Step, d *plan.Dimension) []plan.Dimension {
	d.Text += " " + k.in.Type + " " + words.Trim(k.in.PitchMm, 2)
	return nil
}

func (k *knurled) after(b *bench, st *Step) (int, string) {
	return knurlPhase, words.Capital(k.name()) + " (" + k.work.Name + ") on " + words.Spaced(st.Name) +
		": slow, with oil, until the points are full; it grows from " + b.W.Dia(k.work.TurnMm) + " to about " + b.W.Dia(st.Size.NominalMm) + " (" +
		k.work.Source.String() + "); how far depends on the metal."
}

func (k *knurled) check(_ *Step, c *plan.Check) {
	c.Wanted, c.Limits, c.MinMm, c.MaxMm, c.Source = c.Wanted+" over the points", "points full, not flaking", 0, 0, k.work.Source
}

// shapes are a step's taper and knurl, and what it is turned to before them.
func (z *sizer) shapes(in *parts.Step, st *Step) {
	if t := z.taperOf(in); t != nil {
		st.details = append(st.details, t)
		if st.Inside {
			st.firstMm, st.firstFor = geom.Clean(t.SmallMm), "the small end of its taper"
		}
	}
	if k := z.knurlOf(in); k != nil {
		st.details = append(st.details, k)
		st.firstMm, st.firstFor = geom.Clean(k.work.TurnMm), "for the knurl"
	}
}
