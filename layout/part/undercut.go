package part

import (
	"errors"
	"math"
	"slices"
	"strings"

	"centrepop/layout/fits"
	"centrepop/layout/grooves"
	"centrepop/layout/lookup"
	"centrepop/layout/plan"
	"centrepop/layout/threads"
	"centrepop/layout/words"
	"centrepop/parts"
	"centrepop/parts/geom"
	"centrepop/parts/seq"
)

// Undercut is the relief at the inner corner of a step.
type Undercut struct {
	Name             string  // "DIN 509-F 0.6x0.3", or empty for one with sizes of its own
	WidthMm, DepthMm float64 // along the axis; on one side
	radiusMm         float64 // of its corners, 0 if not said
	runoutDeg        float64 // of its flank back to the cylinder, 90 for a square one
	faceMm, faceUpMm float64 // into the shoulder, and how far up it from the floor; 0 but for form F
	faceDeg          float64 // of the slope back to the shoulder's plane; 0 but for form F
	floor            fits.Limits
	MateMm           float64       // what sits there needs a chamfer over this
	source           lookup.Source // of its table
	pos              parts.Pos
}

// UndercutOf is the undercut of a step, nil without one. It errs for a
// designation that its tables do not have.
func UndercutOf(in *parts.Step, inside bool) (*Undercut, error) {
	u := in.Undercut
	switch {
	case u == nil:
		return nil, nil
	case u.Named == "":
		return &Undercut{WidthMm: u.Width.Mm, DepthMm: u.Depth.Mm, runoutDeg: 90}, nil
	case u.Named == parts.ThreadUndercut:
		return threadUndercut(in, inside)
	}
	form := grooves.Form(u.Form)
	r, err := grooves.ReliefFor(in.Size.Nominal.Mm, form, false)
	if u.Radius != 0 {
		r, err = grooves.ReliefSized(u.Radius, u.Deep, form)
	}
	if err != nil {
		return nil, err
	}
	return &Undercut{
		Name: r.Designation, WidthMm: r.WidthMm, DepthMm: r.DepthMm, radiusMm: r.RadiusMm, runoutDeg: r.RunoutDeg,
		faceMm: r.FaceDepthMm, faceUpMm: r.FaceWidthMm, faceDeg: r.FaceRunoutDeg, MateMm: r.ChamferMm, source: r.Source, pos: u.Pos,
	}, nil
}

// threadUndercut is that of DIN 76-1 behind a thread: A and C regular, B and D
// short, the first two outside.
func threadUndercut(in *parts.Step, inside bool) (*Undercut, error) {
	form := in.Undercut.Form
	t, err := threads.Parse(in.Size.Thread.Value)
	if err != nil {
		return nil, err
	}
	if t.Lead != nil {
		return nil, &lookup.UnknownError{
			What: "undercut", Value: "DIN 76-" + form + " of " + t.Designation,
			Known: []string{"its own {width, depth}, two pitches wide and deeper than the thread: DIN 76-1 is of threads that hold"},
		}
	}
	known := []string{"DIN 76-A", "DIN 76-B"}
	if inside {
		known = []string{"DIN 76-C", "DIN 76-D"}
	}
	if !strings.HasSuffix(known[0], form) && !strings.HasSuffix(known[1], form) {
		return nil, &lookup.UnknownError{What: "undercut", Value: "DIN 76-" + form, Known: known}
	}
	e, err := grooves.ThreadEndFor(t.MajorMm, t.PitchMm, inside, form == "B" || form == "D")
	if err != nil {
		return nil, err
	}
	drawn := t.MajorMm
	if inside {
		drawn = t.MinorMm
	}
	return &Undercut{
		Name: "DIN 76-" + form, WidthMm: e.MostMm, DepthMm: geom.Clean(math.Abs(drawn-e.FloorMm) / 2), radiusMm: e.RadiusMm, runoutDeg: e.AngleDeg, floor: e.Floor, source: e.Source,
	}, nil
}

// undercutOf is the undercut of a step; nil, with a fault, for one that no table
// has or that the step has no room for.
func (z *sizer) undercutOf(in *parts.Step, inside bool) *Undercut {
	u, err := UndercutOf(in, inside)
	var unknown *lookup.UnknownError
	switch {
	case err == nil && u != nil && u.WidthMm >= in.Length.Mm:
		z.fault(in.Undercut.Pos, "the undercut is "+z.W.Size(u.WidthMm)+" wide and the step "+z.W.Size(in.Length.Mm)+" long", "an undercut narrower than the step")
	case errors.As(err, &unknown):
		z.fault(in.Undercut.Pos, "no undercut is named "+unknown.Value+" here", strings.Join(unknown.Known, ", "))
	case err != nil:
		z.fault(in.Undercut.Pos, "no undercut is known for this step", "{width: 3, depth: 0.3}, or another form")
	default:
		return u
	}
	return nil
}

// shoulderMm is how high the shoulder of a step stands over it, endless for the floor of a
// blind bore.
func (s *Sizes) shoulderMm(st *Step) float64 {
	if s.blind(st) {
		return math.Inf(1)
	}
	return geom.Clean(seq.Max(0, s.beside(st), func(o *Step) float64 { return st.side() * (o.RadiusMm() - st.RadiusMm()) }))
}

// blind tells whether a step is the last of a bore that does not go through.
func (s *Sizes) blind(st *Step) bool {
	_, after := s.neighbours(st)
	return st.Inside && after == nil && st.ToMm < s.LengthMm()-geom.CloseMm
}

// upMm is how far an undercut of form F goes up its shoulder from the cylinder.
func (u *Undercut) upMm() float64 { return geom.Clean(u.faceUpMm - u.DepthMm) }

// undercutProblems are the undercuts that run out over their shoulder.
func (n *Numbered) undercutProblems() []plan.Problem {
	var out []plan.Problem
	for st := range seq.Refs(n.Steps) {
		u, high := st.Undercut, n.shoulderMm(st)
		if u == nil || u.faceMm == 0 || u.upMm() <= high+geom.CloseMm {
			continue
		}
		out = append(out, plan.Problem{Kind: plan.UndercutOver, Pos: u.pos, Feature: st.Name, Args: []plan.Arg{
			plan.Named(words.Spaced(st.Name)), plan.Of(plan.Mm, u.upMm()), plan.Of(plan.Mm, high), plan.Of(plan.Mm, geom.Clean(u.upMm()-high)),
		}})
	}
	return out
}

// undercut is a relief groove at the step's inner corner.
type undercut struct {
	bare
	*Undercut
}

func (u undercut) words(w words.Writer) string {
	return words.Either(u.Name != "", "undercut "+u.Name, "undercut "+w.Size(u.WidthMm)+" wide × "+w.Size(u.DepthMm)+" deep")
}

// dimension has the size of the step point beside its undercut.
func (u undercut) dimension(s *Sizes, st *Step, d *plan.Dimension) []plan.Dimension {
	if s.UndercutAtBack(st) {
		d.ToMm = geom.Clean(d.ToMm - u.WidthMm)
	} else {
		d.FromMm = geom.Clean(d.FromMm + u.WidthMm)
	}
	return nil
}

// UndercutAtBack tells whether the shoulder of a step, with the undercut beside it, lies at its
// back end: the neighbour that is larger outside, smaller inside.
func (s *Sizes) UndercutAtBack(st *Step) bool {
	before, after := s.neighbours(st)
	base := st.Size.NominalMm
	if t := st.Size.Thread; t != nil && !st.Inside && before != nil { // what stands over its root, the larger
		base = t.RootMm()
		if after != nil && before.Size.NominalMm > after.Size.NominalMm {
			after = nil
		}
	}
	beyond := func(o *Step) bool { return o != nil && st.side()*(o.Size.NominalMm-base) > 0 }
	switch {
	case beyond(after):
		return true
	case beyond(before):
		return false
	}
	return before == nil || after != nil // a blind bore's floor is a shoulder too
}

func (u undercut) note(w words.Writer) string { return u.words(w) }

// clause is of one without a name, which has no line of its own.
func (u undercut) clause(w words.Writer) string {
	if u.Name != "" {
		return ""
	}
	return ", " + u.words(w) + " at the shoulder"
}

// after says what the name stands for.
func (u undercut) after(b *bench, st *Step) (int, string) {
	w := b.W
	line := "Undercut of " + words.Spaced(st.Name) + ", " + u.Name + ": "
	switch {
	case u.Name == "":
		return undercutPhase, ""
	case u.floor.NominalMm != 0:
		return undercutPhase, line + "floor " + w.Dia(u.floor.NominalMm) + " " + u.floor.Class + ", " + w.Size(u.WidthMm) +
			" at most from the shoulder, corners R" + w.Size(u.radiusMm) + ", flank " + words.Trim(u.runoutDeg, 0) + "° on the thread's side."
	}
	line += w.Size(u.WidthMm) + " wide, " + w.Size(u.DepthMm) + " deep, R" + w.Size(u.radiusMm) + ", out at " + words.Trim(u.runoutDeg, 0) + "°"
	line += words.When(u.faceMm != 0, "; and "+w.Size(u.faceMm)+" into the shoulder, as far as "+w.Size(u.faceUpMm)+" up from the floor")
	line += words.When(u.MateMm != 0, "; what sits here needs a chamfer over "+w.Size(u.MateMm))
	return undercutPhase, line + "."
}

// more measures what the name stands for.
func (u undercut) more(r *record, st *Step) {
	what := words.Spaced(st.Name) + " undercut"
	switch {
	case u.Name == "":
	case u.floor.NominalMm != 0:
		s := limited(u.floor, u.source)
		r.sized(plan.Check{Ref: r.ref(st), What: what, Wanted: r.W.Dia(s.NominalMm) + " " + s.Class, Gauge: "calipers with thin jaws"}, s)
	default:
		s := spread(u.DepthMm, 0, 0.1, u.source)
		r.add(plan.Check{Ref: r.ref(st), What: what, Wanted: u.Name, Limits: "depth " + r.limitsText(s), MinMm: s.MinMm, MaxMm: s.MaxMm, Gauge: "profile gauge, or by the tool", Source: s.Source})
	}
}

// contour takes the recess out of the cylinder, and that of form F out of a shoulder
// that is high enough: into it with the slope of its table, and back to the plane up it.
func (u undercut) contour(s *Sizes, st *Step, line []plan.XY) []plan.XY {
	radius, atBack := st.RadiusMm(), s.UndercutAtBack(st)
	groove, slope := geom.Clean(radius-st.side()*u.DepthMm), 0.0
	if u.runoutDeg < 90 {
		slope = math.Min(u.WidthMm/2, u.DepthMm/math.Tan(u.runoutDeg*math.Pi/180))
	}
	shoulder, into := st.FromMm, -1.0
	if atBack {
		shoulder, into = st.ToMm, 1
	}
	z := geom.Clean(shoulder - into*u.WidthMm)
	recess := []plan.XY{{XMm: z, YMm: radius}, {XMm: geom.Clean(z + into*slope), YMm: groove}}
	if u.faceMm != 0 && u.upMm() <= s.shoulderMm(st)+geom.CloseMm {
		floor, top := geom.Clean(shoulder+into*u.faceMm), groove+st.side()*u.faceUpMm
		up := u.faceMm / math.Tan(u.faceDeg*math.Pi/180)
		recess = append(recess, plan.XY{XMm: floor, YMm: groove}, plan.XY{XMm: floor, YMm: geom.Clean(top - st.side()*up)}, plan.XY{XMm: shoulder, YMm: geom.Clean(top)})
	} else {
		recess = append(recess, plan.XY{XMm: shoulder, YMm: groove})
	}
	if atBack {
		return append(line[:len(line)-1:len(line)-1], recess...)
	}
	slices.Reverse(recess)
	return append(recess, line[1:]...)
}
