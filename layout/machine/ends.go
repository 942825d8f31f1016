package machine

import (
	"math"
	"slices"

	"centrepop/layout/assembly"
	"centrepop/layout/plan"
	"centrepop/layout/solid"
	"centrepop/layout/stand"
	"centrepop/layout/words"
	"centrepop/parts"
	"centrepop/parts/geom"
	"centrepop/parts/seq"
)

// wrongWays has a joint looked at for them before it is made: each look writes its
// own entry.
func (s *soFar) wrongWays(n int, j *plan.JointPlan) {
	look := func(f *fitting, ways func() []plan.Trap) {
		if m := s.m; f != nil {
			s.looks = append(s.looks, func() []plan.Problem {
				m.ways[n] = ways()
				return nil
			})
		}
	}
	if j.Kind == parts.BoltKind {
		f := s.fitting(j)
		look(f, f.ways)
		return
	}
	f := s.seated(j)
	look(f, func() []plan.Trap {
		ways := f.otherEnds()
		if f.other != nil {
			ways = append(ways, f.other.onFace()...)
		}
		return ways
	})
	if f != nil {
		f.other = s.otherBar(j)
	}
}

// seated is a pressed, slid, welded or bearing joint about to be made: the shorter of
// its two parts on their axis, or the part that is set on a face, a round or another's
// cut, with all that hangs on it. It is nil where nothing comes, or a key or the joint itself tells the ways.
func (s *soFar) seated(j *plan.JointPlan) *fitting {
	ia, ib := j.A.Instance(), j.B.Instance()
	comes, stands := s.of[ia.ID()], s.of[ib.ID()]
	if comes == nil || stands == nil || comes == stands || j.Slide != nil && j.Slide.Key != "" {
		return nil
	}
	m, in := s.m, s.m.Joint(j.Name)
	a, b := m.Standing(ia), m.Standing(ib)
	if len(j.Placed) > 0 && m.Model(j.B.Part).LengthMm() < m.Model(j.A.Part).LengthMm() {
		a, b, comes, stands = b, a, stands, comes
	}
	f := m.fits(j, *comes, *stands)
	f.turns, f.holds = a, b
	switch place, round := m.onRound(ia, ib); {
	case len(j.Placed) > 0:
		f.frame = ownFrame(a, assembly.AxisZ)
	case in.Kind != parts.WeldKind:
		return nil
	case in.Place != nil && m.Mitred(ia, in.Place.With):
		return f.atCorner(ia, in.Place.With)
	case in.Place != nil:
		f.frame = ownFrame(a, solid.OutOf(in.Place.With))
		box := a.Solid.Box().Moved(f.frame.Inverse().Of(a.Pose))
		f.seatAt(f.frame.Of(assembly.Move(assembly.Vec{X: box.Low.X, Y: box.Low.Y, Z: box.High.Z})), box.High.Sub(box.Low))
	case round:
		f.frame = b.Pose.Of(assembly.Frame(assembly.Vec{Z: -place.AxialMm(m.Model(j.B.Part).LengthMm())}, assembly.ClockWay(place.Clock.Deg), assembly.AxisZ))
	default:
		return f.atCorner(ia, j.A.Feature)
	}
	return f
}

// ownFrame is a frame in the middle of a body with z along one of its own directions.
func ownFrame(b *assembly.Body, z assembly.Vec) assembly.Pose {
	y := words.Either(z.Y != 0, b.Pose.Z, b.Pose.Y)
	return assembly.Frame(b.Pose.Apply(b.Solid.Box().Centre()), b.Pose.Turn(z), y)
}

// atCorner is the fitting of a bar that meets another with its mitred end; nil for another part.
func (f *fitting) atCorner(i parts.Instance, end string) *fitting {
	cut, size, ok := f.m.CutOf(i, end)
	if !ok {
		return nil
	}
	f.frame = ownFrame(f.turns, assembly.AxisX)
	f.seatAt(f.turns.Pose.Of(cut), size)
	return f
}

// otherBar is the fitting of the bar that a mitred one comes to: either may lie the wrong way.
func (s *soFar) otherBar(j *plan.JointPlan) *fitting {
	ia, ib := j.A.Instance(), j.B.Instance()
	if _, _, mitred := s.m.CutOf(ia, j.A.Feature); !mitred {
		return nil
	}
	f := s.m.fits(j, *s.of[ib.ID()], *s.of[ia.ID()])
	f.turns, f.holds = s.m.Standing(ib), s.m.Standing(ia)
	return f.atCorner(ib, j.B.Feature)
}

// onRound is the place on a round of a tube with a saddle or a bar with a cope.
func (m *Machine) onRound(a, b parts.Instance) (*parts.EndPlace, bool) {
	if e := m.Saddle(a, b); e != nil {
		return e.Place, true
	}
	if e := m.Cope(a, b); e != nil {
		return e.Place, true
	}
	return nil, false
}

// otherEnds are the ways in which it also goes to its seat.
func (f *fitting) otherEnds() []plan.Trap {
	if len(f.j.Placed) > 0 {
		return append(f.endForEnd(), f.otherCopies()...)
	}
	return slices.Concat(f.onFace(), f.onEdges(), f.otherCopies())
}

// seatAt says where the part that turns lies on the one at its seat: in a plane from its
// corner, with z into what it lies on. The places looked at there are as close as finds both.
func (f *fitting) seatAt(plane assembly.Pose, size assembly.Vec) {
	f.plane, f.size, f.rows = plane, size, 6
	if _, on := f.lies(f.turns); on == 0 { // a thin wall between the places
		f.rows = 24
	}
}

// lies counts, of places in rows on the plane of the seat, where a body has metal just
// before it, and where what it is set on then is just behind.
func (f *fitting) lies(b *assembly.Body) (own, on int) {
	const deepMm = 0.5
	mine, other := b.Pose.Inverse().Of(f.plane), f.holds.Pose.Inverse().Of(f.plane)
	for i := range f.rows {
		for k := range f.rows {
			p := assembly.Vec{X: f.size.X * (float64(i) + 0.5) / float64(f.rows), Y: f.size.Y * (float64(k) + 0.5) / float64(f.rows)}
			in := assembly.Vec{Z: deepMm}
			if b.Solid.Dist(mine.Apply(p.Sub(in))) < 0 {
				if own++; f.holds.Solid.Dist(other.Apply(p.Add(in))) < 0 {
					on++
				}
			}
		}
	}
	return own, on
}

// onFace turns what is set on a face or a cut, and turns it over, as its box allows; what
// sits on a round only half round, as its saddle or cope allows.
func (f *fitting) onFace() (traps []plan.Trap) {
	box, round := f.turns.Box().Moved(f.frame.Inverse()), f.rows == 0
	_, seat := f.lies(f.turns)
	for _, over := range []bool{false, true} {
		for turn := 0.0; turn < 360; turn += 90 {
			g := f.inFrame(motion(over, turn))
			turned := *f.turns
			turned.Pose = g.Of(f.turns.Pose)
			at := turned.Box().Moved(f.frame.Inverse())
			switch _, on := f.lies(&turned); {
			case !over && turn == 0, round && (over || turn != 180):
				continue
			case !round && (seat == 0 || on < seat || at.Low.Sub(box.Low).Len()+at.High.Sub(box.High).Len() > 1):
				continue
			}
			if moved, out := f.wrong(g); f.room(moved) && f.comes(moved) {
				traps = append(traps, plan.Trap{TurnDeg: turn, OtherWay: over, Out: out})
			}
		}
	}
	return traps
}

// onEdges sets a plate that stands on an edge on its other edges, and a bar on its other
// sides: into a corner of the room that it fills, touching all that it touches. The face
// opposite its own is for onFace.
func (f *fitting) onEdges() (traps []plan.Trap) {
	place := f.m.Joint(f.j.Name).Place
	if place == nil {
		return nil
	}
	own := f.turns.Pose.Inverse()
	z := own.Turn(f.frame.Z) // out of the face that it lies on
	kept := words.Either(f.m.FormOf(f.turns.ID) == parts.BarPart, assembly.AxisX, assembly.AxisZ)
	if along(z, kept) {
		return nil // it stands on end, or lies flat
	}
	mine, seat := f.lies(f.turns)
	for _, face := range solid.Faces {
		to := solid.OutOf(face)
		if along(to, z) || along(to, kept) {
			continue
		}
		var at []assembly.Pose
		for _, way := range []float64{1, -1} { // what is kept stays, or lies the other way
			turn := assembly.Frame(assembly.Vec{}, z, kept).Of(assembly.Frame(assembly.Vec{}, to, kept.Times(way)).Inverse())
			at = append(at, f.inCorners(f.turns.Pose.Of(turn), mine, seat)...)
		}
		if t, fits := f.oneOf(at); fits {
			t.Face = face
			traps = append(traps, t)
		}
	}
	return traps
}

// along tells whether one axis of a body, of length 1, is another, either way.
func along(a, b assembly.Vec) bool { return math.Abs(a.Dot(b)) > Steep }

// oneOf is what comes of some motions: nothing wrong if one of them changes nothing, as the
// look of the part says which is meant, else what the first that there is room for does.
func (f *fitting) oneOf(motions []assembly.Pose) (t plan.Trap, fits bool) {
	moved, out := make([][]assembly.Body, len(motions)), make([][]plan.Out, len(motions))
	for i, g := range motions {
		if moved[i], out[i] = f.wrong(g); len(moved[i]) == 0 {
			return t, true
		}
	}
	for i := range motions {
		if f.room(moved[i]) && f.comes(moved[i]) {
			return plan.Trap{Out: out[i]}, true
		}
	}
	return t, false
}

// inCorners are the motions that bring the part that turns, turned already, into a corner of
// the room that it has when it is right: as much of what it then shows its seat lies on it,
// and half as much in all.
func (f *fitting) inCorners(pose assembly.Pose, mine, seat int) (motions []assembly.Pose) {
	into := f.plane.Inverse()
	box, turned := f.turns.Box().Moved(into), *f.turns
	turned.Pose = pose
	at := turned.Box().Moved(into)
	for _, high := range []bool{false, true} { // along what is kept it fills its room
		shift := assembly.Vec{X: box.Low.X - at.Low.X, Y: box.Low.Y - at.Low.Y, Z: box.High.Z - at.High.Z}
		if high {
			shift.X, shift.Y = box.High.X-at.High.X, box.High.Y-at.High.Y
		}
		turned.Pose = pose.Shifted(f.plane.Turn(shift))
		if own, on := f.lies(&turned); 2*on >= seat && on*mine >= seat*own && f.touchesAll(&turned) {
			motions = append(motions, turned.Pose.Of(f.turns.Pose.Inverse()))
		}
	}
	return motions
}

// touchesAll tells whether a body touches all that the part that turns touches.
func (f *fitting) touchesAll(b *assembly.Body) bool {
	return !slices.ContainsFunc(f.fixed, func(o assembly.Body) bool {
		return o.Box().Meets(f.turns.Box(), StandsMm) && assembly.Near(f.turns, &o, StandsMm, seamFinestMm) && !assembly.Near(b, &o, StandsMm, seamFinestMm)
	})
}

// otherCopies bring, to what stands, another copy in what comes, or take what comes to
// another copy in what stands.
func (f *fitting) otherCopies() (traps []plan.Trap) {
	for k, list := range [][]assembly.Body{f.movers, f.fixed} {
		at := []*assembly.Body{f.turns, f.holds}[k]
		for b := range seq.Refs(list) {
			if b.ID == at.ID || f.m.Of[b.ID].Part != f.m.Of[at.ID].Part {
				continue
			}
			g := at.Pose.Of(b.Pose.Inverse())
			if k == 1 {
				g = g.Inverse()
			}
			moved, out := f.wrong(g)
			another := func(o assembly.Body) bool { return alike(f.m.Bodies, o, o.Pose) } // like it goes there
			if slices.ContainsFunc(moved, func(o assembly.Body) bool { return !another(o) }) && f.room(moved) && f.comes(moved) {
				traps = append(traps, plan.Trap{Instead: f.m.Title(b.ID), Out: out})
			}
		}
	}
	return traps
}

// seat is a stretch of the frame's axis on which the two parts hold one another.
type seat struct {
	geom.Span
	holds string // the bearing, if it is one
}

// seats are those of all joints of the two parts; none where one has none, so
// that it decides itself which way they go together.
func (f *fitting) seats() (out []seat) {
	for _, j := range f.m.Joints {
		ends := stand.EndsOf(j)
		if !slices.Contains(ends, f.turns.ID) || !slices.Contains(ends, f.holds.ID) {
			continue
		}
		a, okA := f.stretch(&j.A)
		b, okB := f.stretch(&j.B)
		if !okA || !okB || j.Kind == parts.BoltKind {
			return nil
		}
		s := seat{Span: geom.Span{FromMm: math.Max(a.FromMm, b.FromMm), ToMm: math.Min(a.ToMm, b.ToMm)}}
		if j.Bearing != nil {
			s.holds = j.Bearing.Bearing
		}
		out = append(out, s)
	}
	return out
}

// stretch is where a joint's step lies on the frame's axis.
func (f *fitting) stretch(e *plan.JointEnd) (on geom.Span, ok bool) {
	r, b := f.m.Model(e.Part), f.m.At(*e)
	st := r.StepNamed(e.Feature)
	if st == nil || b == nil {
		return on, false
	}
	on = stand.On(f.frame, b, r).Span(st.Span())
	return geom.Between(-on.FromMm, -on.ToMm), true
}

// endForEnd turns the shorter part end for end about its own middle, and about that of
// its seats, whichever finds room: wrong unless it, or what stands, looks the same so
// turned at one of the clock angles of its features.
func (f *fitting) endForEnd() []plan.Trap {
	seats := f.seats()
	if len(seats) == 0 || f.j.Bearing != nil && len(seats) == 1 && f.j.Bearing.LargeEnd != "" {
		return nil
	}
	for _, turn := range f.clocks() {
		if moved, _ := f.wrong(f.inFrame(motion(true, turn))); len(moved) == 0 {
			return []plan.Trap{{OtherWay: true}}
		}
	}
	low, high := seats[0].MidMm(), seats[0].MidMm()
	for _, s := range seats {
		low, high = math.Min(low, s.MidMm()), math.Max(high, s.MidMm())
	}
	for _, centre := range []float64{0, (low + high) / 2} {
		g := assembly.Move(assembly.Vec{Z: 2 * centre}).Of(motion(true, 0))
		if !f.carried(seats, 2*centre) {
			continue
		}
		moved, out := f.wrong(f.inFrame(g))
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
			return o.holds == s.holds && o.OnMm(geom.Between(sum-s.FromMm, sum-s.ToMm)) >= s.LengthMm()/2
		})
	})
}

// clocks are the turns at which a part turned end for end can look the same: those that
// bring its first hole or opening to one of the others.
func (f *fitting) clocks() []float64 {
	r := f.m.PartOf(f.turns.ID)
	var at []float64
	for i := range r.Groups {
		at = append(at, seq.Map(r.Groups[i].Points, geom.ClockDeg)...)
	}
	for f := range seq.Refs(r.Radials) {
		at = append(at, seq.Map(f.Rows, func(row plan.RadialRow) float64 { return row.ClockDeg })...)
	}
	turns := []float64{0}
	for _, deg := range at {
		turns = seq.Add(turns, math.Mod(at[0]+deg, 360))
	}
	return turns
}
