package machine

import (
	"math"
	"slices"

	"centrepop/layout/assembly"
	"centrepop/layout/plan"
	"centrepop/parts/geom"
)

// seated is a pressed, slid, welded or bearing joint about to be made: the shorter of
// its two parts on their axis, or the part that is set on a face, with all that hangs
// on it. It is nil where nothing comes, or a key or the joint itself tells the ways.
func (s *soFar) seated(j *plan.JointPlan) *fitting {
	idA, idB := Instance{j.A.Part, j.A.Copy}.id(), Instance{j.B.Part, j.B.Copy}.id()
	comes, stands := s.of[idA], s.of[idB]
	if comes == nil || stands == nil || comes == stands || j.Slide != nil && j.Slide.Key != "" {
		return nil
	}
	m, in := s.m, s.m.joint(j.Name)
	a, b := m.standing(Instance{j.A.Part, j.A.Copy}), m.standing(Instance{j.B.Part, j.B.Copy})
	z := assembly.AxisZ
	switch {
	case len(j.Placed) > 0:
		if m.model(j.B.Part).LengthMm() < m.model(j.A.Part).LengthMm() {
			a, b, comes, stands = b, a, stands, comes
		}
	case j.Weld == nil:
		return nil
	case in.Place != nil:
		z = faceFrame(in.Place.With, a.Solid.Box()).Z
	default:
		if _, branch := m.branch(Instance{j.A.Part, j.A.Copy}, Instance{j.B.Part, j.B.Copy}); !branch {
			return nil
		}
	}
	f := m.fits(j, *comes, *stands)
	f.turns, f.holds = a, b
	y := a.Pose.Y
	if z.Y != 0 {
		y = a.Pose.Z
	}
	f.frame = assembly.Frame(a.Pose.Apply(a.Solid.Box().Centre()), a.Pose.Turn(z), y)
	return f
}

// otherEnds are the ways in which it also goes to its seat.
func (f *fitting) otherEnds() []plan.Trap {
	if len(f.j.Placed) > 0 {
		return f.endForEnd()
	}
	return f.onFace()
}

// onFace turns what is set on a face, and turns it over, as its box allows; a branch
// only half round its axis, as its saddle allows.
func (f *fitting) onFace() (traps []plan.Trap) {
	own := f.frame.Inverse()
	box, branch := f.turns.Box().Moved(own), f.m.joint(f.j.Name).Place == nil
	rows := 6
	seat := f.seatOf(f.turns, box, rows)
	if seat == 0 { // a thin wall between the places
		rows = 24
		seat = f.seatOf(f.turns, box, rows)
	}
	for _, round := range []bool{false, true} {
		for turn := 0.0; turn < 360; turn += 90 {
			g := motion(round, turn)
			turned := *f.turns
			turned.Pose = f.frame.Of(g).Of(own).Of(f.turns.Pose)
			at := turned.Box().Moved(own)
			switch {
			case !round && turn == 0, branch && (round || turn != 180), at.Low.Sub(box.Low).Len()+at.High.Sub(box.High).Len() > 1:
				continue
			case !branch && (seat == 0 || f.seatOf(&turned, box, rows) < seat):
				continue
			}
			if moved, out := f.wrong(g); f.room(moved) && f.comes(moved) {
				traps = append(traps, plan.Trap{TurnDeg: turn, OtherWay: round, Out: out})
			}
		}
	}
	return traps
}

// seatOf counts, of rows by rows places on the far face of a box in the frame, where a body has metal
// just before it and what it is set on just behind.
func (f *fitting) seatOf(b *assembly.Body, box assembly.Box, rows int) (n int) {
	const deepMm = 0.5
	size := box.High.Sub(box.Low)
	own, other := b.Pose.Inverse().Of(f.frame), f.holds.Pose.Inverse().Of(f.frame)
	for i := range rows {
		for k := range rows {
			p := box.Low.Add(assembly.Vec{X: size.X * (float64(i) + 0.5) / float64(rows), Y: size.Y * (float64(k) + 0.5) / float64(rows), Z: size.Z})
			in := assembly.Vec{Z: deepMm}
			if b.Solid.Dist(own.Apply(p.Sub(in))) < 0 && f.holds.Solid.Dist(other.Apply(p.Add(in))) < 0 {
				n++
			}
		}
	}
	return n
}

// wrong is what a motion in the frame brings elsewhere: nothing where all that stands
// looks the same after it.
func (f *fitting) wrong(g assembly.Pose) (moved []assembly.Body, out []string) {
	g = f.frame.Of(g).Of(f.frame.Inverse())
	moved, out = f.elsewhere(g)
	if !slices.ContainsFunc(f.fixed, func(b assembly.Body) bool { return !alike(f.fixed, b, g.Of(b.Pose)) }) {
		return nil, nil
	}
	return moved, out
}

// seat is a stretch of the frame's axis on which the two parts hold one another.
type seat struct {
	low, high float64
	holds     string // the bearing, if it is one
}

func (s *seat) middle() float64 { return (s.low + s.high) / 2 }

// seats are those of all joints of the two parts; ok is false where one has none, so
// that it decides itself which way they go together.
func (f *fitting) seats() (out []seat, ok bool) {
	for _, j := range f.m.joints {
		ends := []string{Instance{j.A.Part, j.A.Copy}.id(), Instance{j.B.Part, j.B.Copy}.id()}
		if !slices.Contains(ends, f.turns.ID) || !slices.Contains(ends, f.holds.ID) {
			continue
		}
		a, okA := f.stretch(&j.A)
		b, okB := f.stretch(&j.B)
		if !okA || !okB || j.Bolt != nil {
			return nil, false
		}
		s := seat{low: math.Max(a[0], b[0]), high: math.Min(a[1], b[1])}
		if j.Bearing != nil {
			s.holds = j.Bearing.Bearing
		}
		out = append(out, s)
	}
	return out, true
}

// stretch is where a joint's step lies on the frame's axis.
func (f *fitting) stretch(e *plan.JointEnd) (low [2]float64, ok bool) {
	r, b := f.m.model(e.Part), f.m.standing(Instance{e.Part, e.Copy})
	st := r.StepNamed(e.Feature)
	if st == nil || b == nil {
		return low, false
	}
	into := f.frame.Inverse().Of(b.Pose)
	x, y := into.Apply(assembly.Vec{Z: -st.FromMm}).Z, into.Apply(assembly.Vec{Z: -st.ToMm}).Z
	return [2]float64{math.Min(x, y), math.Max(x, y)}, true
}

// endForEnd turns the shorter part end for end about its own middle, and about that of
// its seats, whichever finds room: wrong unless it, or what stands, looks the same so
// turned at one of the clock angles of its features.
func (f *fitting) endForEnd() []plan.Trap {
	seats, ok := f.seats()
	if !ok || len(seats) == 0 || f.j.Bearing != nil && len(seats) == 1 && f.j.Bearing.LargeEnd != "" {
		return nil
	}
	for _, turn := range f.clocks() {
		if moved, _ := f.wrong(motion(true, turn)); len(moved) == 0 {
			return []plan.Trap{{OtherWay: true}}
		}
	}
	low, high := seats[0].middle(), seats[0].middle()
	for _, s := range seats {
		low, high = math.Min(low, s.middle()), math.Max(high, s.middle())
	}
	for _, centre := range []float64{0, (low + high) / 2} {
		g := assembly.Move(assembly.Vec{Z: 2 * centre}).Of(motion(true, 0))
		if !f.carried(seats, 2*centre) {
			continue
		}
		moved, out := f.wrong(g)
		if len(out) > 0 && f.room(moved) && f.comes(moved) {
			return []plan.Trap{{OtherWay: true, Out: out}}
		}
	}
	return nil
}

// carried tells whether each seat comes to lie on at least half of one like it when z
// becomes sum − z.
func (f *fitting) carried(seats []seat, sum float64) bool {
	return !slices.ContainsFunc(seats, func(s seat) bool {
		return !slices.ContainsFunc(seats, func(o seat) bool {
			return o.holds == s.holds && math.Min(sum-s.low, o.high)-math.Max(sum-s.high, o.low) >= (s.high-s.low)/2
		})
	})
}

// clocks are the turns at which a part turned end for end can look the same: those that
// bring its first hole or opening to one of the others.
func (f *fitting) clocks() []float64 {
	r := f.m.model(f.m.Of[f.turns.ID].Part)
	var at []float64
	for i := range r.Groups {
		for _, q := range r.Groups[i].Points {
			at = append(at, geom.ClockDeg(q))
		}
	}
	for i := range r.Radials {
		for _, row := range r.Radials[i].Rows {
			at = append(at, row.ClockDeg)
		}
	}
	turns := []float64{0}
	for _, deg := range at {
		if turn := math.Mod(at[0]+deg, 360); !slices.Contains(turns, turn) {
			turns = append(turns, turn)
		}
	}
	return turns
}
