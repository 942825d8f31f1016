package joint

import (
	"slices"
	"strconv"

	"centrepop/layout/bolts"
	"centrepop/layout/lookup"
	"centrepop/layout/part"
	"centrepop/layout/plan"
	"centrepop/layout/words"
	"centrepop/parts"
	"centrepop/parts/geom"
	"centrepop/parts/seq"
)

// A made stud as it stands in its joint.
type studded struct {
	r         *part.Model
	ends      [2]*part.Step // that through part A, and that through part B or screwed into it
	back      bool          // the back one goes through A
	spacer    bool          // A lies on a shoulder of it
	shoulder  *part.Step    // up to which it is screwed in; nil without one
	tipMm     float64       // of it beyond the face by which A meets it or B
	standsMm  float64       // of it out of the tapped hole of B
	engagedMm float64       // of full thread in that
	apartMm   float64       // how far it holds the faces of A and B apart
}

// nutMm is what a nut wants of thread beyond the plate: washer, nut and two pitches; and its washer alone.
func (t *joint) nutMm() (mm, washerMm float64) {
	if t.in.Bolt.Washer {
		washerMm = t.bolt.WasherThicknessMm
	}
	return washerMm + t.bolt.NutHeightMm + 2*t.bolt.Thread.PitchMm, washerMm
}

// engaging is the engagement that a joint's tapped hole wants of a stud, and what is wrong with the hole.
func (t *joint) engaging() bolts.Choice {
	choice, _ := t.bolt.ChooseLength(bolts.Joint{GripMm: 1, Hole: t.tappedHole()})
	return choice
}

// studded is the made stud of a joint as it stands: the longer thread goes where more is wanted of it.
// A body wider than the holes holds the parts apart. Into a tapped hole a stud goes up to a shoulder, or
// as far as its thread and the hole's allow, a pitch short of the bottom.
func (j *shop) studded(t *joint) studded {
	r := j.model(t.in.Stud())
	outside, _ := r.Sides()
	last := len(outside) - 1
	s := studded{r: r, ends: [2]*part.Step{outside[0], outside[last]}}
	hole, widest := t.tappedHole(), t.a.group.Size.FinishedMm
	_, thickA, _ := t.a.plane(t.meeting().First)
	_, thickB, _ := t.b.plane(t.meeting().Second)
	nut, _ := t.nutMm()
	want := [2]float64{thickA + nut, thickB + nut}
	if hole != nil {
		want[1] = t.engaging().NeedMm
	} else {
		widest = max(widest, t.b.group.Size.FinishedMm)
	}
	if s.back = (want[0]-want[1])*(s.ends[0].LengthMm()-s.ends[1].LengthMm()) < 0; s.back {
		slices.Reverse(s.ends[:])
	}
	s.tipMm = s.ends[0].LengthMm()
	wide := seq.Keep(outside[min(1, last):max(1, last)], func(o *part.Step) bool { return o.Size.NominalMm > widest && o.Size.Thread == nil })
	if s.spacer = len(wide) > 0; s.spacer {
		from, to := wide[0].FromMm, wide[len(wide)-1].ToMm
		s.apartMm, s.tipMm = to-from, from
		if s.back {
			s.tipMm = r.LengthMm() - to
		}
	}
	if hole != nil {
		s.screwed(t, hole, outside)
	}
	return s
}

// screwed works out how far a stud stands out of its tapped hole.
func (s *studded) screwed(t *joint, hole *bolts.TappedHole, outside []*part.Step) {
	e, beside := s.ends[1], min(1, len(outside)-1)
	if !s.back {
		beside = max(0, len(outside)-2)
	}
	in, bare := e.LengthMm(), s.bareMm(1)
	if e.Undercut == nil || outside[beside].Size.NominalMm <= t.boltMm {
		in, bare = in-bare, 0
	}
	if o := outside[beside]; o != e && o.Size.NominalMm > t.boltMm {
		s.shoulder = o
	} else if in = min(in, hole.ThreadMm); !hole.Through {
		in = min(in, hole.ThreadMm-t.bolt.Thread.PitchMm)
	}
	s.engagedMm = min(in, hole.ThreadMm) - bare
	s.standsMm = s.r.LengthMm() - in
	if !s.spacer {
		s.tipMm = s.standsMm
	}
	s.apartMm = s.standsMm - s.tipMm
}

// spacerMm is how far a made stud holds the parts apart.
func (j *shop) spacerMm(t *joint) float64 {
	if t.in.Stud() == "" || t.bolt == nil || t.a.group == nil || t.b.group == nil {
		return 0
	}
	return geom.Clean(j.studded(t).apartMm)
}

// bareMm is how much of an end's thread is not full beside what follows it: its undercut or run-out.
func (s *studded) bareMm(end int) float64 {
	if u := s.ends[end].Undercut; u != nil {
		return u.WidthMm
	}
	return s.r.FullThreadMm(s.ends[end], s.back == (end == 1))
}

// stud checks a made stud: an end with a nut must hold washer, nut and two pitches beyond what it
// clamps, and its full thread begin within that; one that is screwed in must engage enough.
func (j *making) stud(t *joint, p *plan.BoltPlan) {
	s := j.studded(t)
	title := s.r.Out.Title
	p.Ordered, p.LengthMm, p.Spacer = title, s.r.LengthMm(), s.spacer
	p.StudTipMm, p.StudBack, p.StudStandsMm = geom.Clean(s.tipMm), s.back, geom.Clean(s.standsMm)
	if have, want := s.r.Part.Quantity, j.job.StudsBefore(t.in)+p.Count; have < want {
		t.problem(plan.StudsMissing, plan.Of(plan.Number, float64(want)), plan.Of(plan.Number, float64(have)), plan.Named(title))
	}
	plates, goes := []plan.GripRow{p.Grip[0], p.Grip[len(p.Grip)-1]}, "through "
	if s.standsMm > 0 {
		plates[1].What, goes = t.b.title(), "into "
		if !s.spacer {
			plates[0].ThickMm = p.GripMm
		}
	}
	if long := [2]float64{s.ends[0].LengthMm(), s.ends[1].LengthMm()}; !geom.Alike(long[0], long[1]) {
		t.ends = words.Capital(words.Spaced(s.ends[0].Name)) + ", " + j.w.Size(long[0]) + " long, through " + plates[0].What + "; " +
			words.Spaced(s.ends[1].Name) + ", " + j.w.Size(long[1]) + " long, " + goes + plates[1].What + "."
	}
	p.NeedMm = words.Round(t.bolt.NutHeightMm, 2)
	p.EngagementMm = p.NeedMm
	tips := [2]float64{s.tipMm, s.ends[1].LengthMm()}
	for k, e := range s.ends {
		switch {
		case e.Size.Thread == nil || e.Size.Thread.Designation != p.Size:
			t.problem(plan.StudThread, plan.Named(words.Spaced(e.Name)), plan.Named(title), plan.Named(p.Size))
		case k == 1 && s.standsMm > 0:
			s.engages(t, p)
		default:
			j.nutEnd(t, e, plates[k], s.bareMm(k), tips[k])
		}
	}
	if s.spacer {
		p.GripMm = plates[0].ThickMm // each end holds its own plate
		if s.standsMm == 0 {
			p.GripMm = max(p.GripMm, plates[1].ThickMm)
		}
	}
	t.studTorque(p, s.r)
}

// nutEnd checks the end of a stud that stands so far through a plate, and ends in so much of bare thread.
func (j *making) nutEnd(t *joint, e *part.Step, plate plan.GripRow, bareMm, tipMm float64) {
	r, name := j.model(t.in.Stud()), words.Spaced(e.Name)
	nut, washer := t.nutMm()
	need := plate.ThickMm + nut
	t.figure(plate.What+" on "+name, j.w.Size(geom.Clean(tipMm))+" stands through, "+j.w.Size(need)+" needed", "plate, washer, nut, two pitches")
	if short := max(need-tipMm, tipMm-e.LengthMm()+bareMm-plate.ThickMm-washer); geom.Over(short, 0) {
		t.problem(plan.StudShort, plan.Named(name), plan.Named(r.Out.Title), plan.Of(plan.Mm, short))
	}
	t.rely(relied{what: "the thread " + name + " of " + r.Out.Title, mm: geom.Clean(tipMm), less: lessMm(r, false, e.FromMm, e.ToMm), wantMm: need, of: name})
}

// engages checks how a stud sits in its tapped hole.
func (s *studded) engages(t *joint, p *plan.BoltPlan) {
	choice := t.engaging()
	for _, pr := range choice.HoleProblems {
		t.add(boltProblem(pr))
	}
	p.NeedMm, p.EngagementMm = words.Round(choice.NeedMm, 2), words.Round(s.engagedMm, 2)
	if geom.Over(choice.NeedMm, s.engagedMm) {
		t.add(boltProblem(bolts.Problem{Kind: bolts.ShortEngagement, Mm: []float64{s.engagedMm, choice.NeedMm}}))
	}
	hole := t.tappedHole()
	if over := s.ends[1].LengthMm() - hole.ThreadMm; s.shoulder != nil && !hole.Through && geom.Over(over, 0) {
		t.add(boltProblem(bolts.Problem{Kind: bolts.BottomsOut, Mm: []float64{over}}))
	}
	if off := s.r.LengthMm() - s.standsMm - s.ends[1].LengthMm(); s.shoulder != nil && geom.Over(0, off) {
		t.problem(plan.StudOff, plan.Named(words.Spaced(s.shoulder.Name)), plan.Of(plan.Mm, geom.Clean(-off)), plan.Named(t.b.text()))
	}
}

// flats are those for a spanner on what stands out; nil without any.
func (s *studded) flats() *part.Flats {
	return seq.At(s.r.Flats, func(f *part.Flats) bool {
		return f.In.Sides.Value > 1 && f.In.Sides.Value < 8 && f.In.In.Value != s.ends[1].Name
	})
}

// holds is what keeps a stud from turning under its nuts: a bar in a hole across its body, a spanner on its flats, or a strap.
func (s *studded) holds(w words.Writer) string {
	across := seq.At(s.r.Radials, func(m *part.Radial) bool {
		return m.In.Shape == parts.RadialHole && m.Size.Thread == nil && m.In.Fitted.Value == "" && m.In.For != parts.Pins
	})
	if across != nil {
		return "a bar in its " + words.Spaced(across.In.Name.Value) + ", " + w.Dia(across.Size.FinishedMm)
	}
	if f := s.flats(); f != nil {
		return "a spanner " + w.Size(f.In.Across.Mm) + " on " + words.Spaced(f.In.Name.Value)
	}
	return "a strap wrench on its body"
}

// screwIn says how the studs go into their tapped holes, before part A comes, and how far they may
// stand out where no shoulder sets it.
func (j *making) screwIn(t *joint, p *plan.BoltPlan) {
	s, out := j.studded(t), t.w.Size(p.StudStandsMm)
	all := "All " + strconv.Itoa(p.Count) + " into " + t.b.title() + ", oiled, "
	if s.shoulder != nil {
		all += "up to the shoulder of " + words.Spaced(s.shoulder.Name) + "."
	} else {
		all += "until they stand out of it by " + out + ": no tighter, and not on the bottom of the hole."
	}
	turn := "Two nuts locked against each other on its other end turn each: no pliers on a thread."
	if f := s.flats(); f != nil {
		turn = "A spanner " + t.w.Size(f.In.Across.Mm) + " on " + words.Spaced(f.In.Name.Value) + " turns each: no pliers on a thread."
	}
	t.step("Screw in the studs", all, t.ends, turn).Hold = "Each stands out of " + t.b.title() + " by " + out + "."
	nut, washer := t.nutMm()
	least, most := p.GripMm+nut, min(p.LengthMm-p.NeedMm, p.GripMm+washer+s.ends[0].LengthMm()-s.bareMm(0))
	if s.shoulder == nil && least <= p.StudStandsMm && p.StudStandsMm <= most {
		t.out.Checks = append(t.out.Checks, plan.Check{
			What: "studs out of " + t.b.title(), Wanted: out, Limits: t.w.Limits(least, most), MinMm: least, MaxMm: most, Gauge: "depth gauge",
			Source: lookup.Told("nut and two pitches beyond the plates, thread engaged below"),
		})
	}
}
