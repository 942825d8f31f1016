package review

import (
	"maps"
	"math"
	"slices"
	"strings"

	"centrepop/layout/assembly"
	"centrepop/layout/words"
	"centrepop/parts"
	"centrepop/parts/geom"
	"centrepop/parts/seq"
)

// openMm is the widest slot beside a guard that the fingers do not get through to what turns
// well behind it. ISO 13857 table 4: slots to 20 mm at 120 mm off and more.
const openMm = 20.0

// reaches are how far off what turns an opening has to be by its least width, as a slot, as a
// short slot or square and as a round hole, in mm. ISO 13857 table 4, as zt-grassberger.at
// prints it; over the last it is no guard.
var reaches = []struct{ widthMm, slot, square, round float64 }{
	{4, 2, 2, 2}, {6, 10, 5, 5}, {8, 20, 15, 5}, {10, 80, 25, 20}, {12, 100, 80, 80}, {20, 120, 120, 120},
	{30, 850, 120, 120}, {40, 850, 200, 120}, {120, 850, 850, 850},
}

// shortMm is the longest slot over 20 mm wide in which the thumb stops the hand, as in a square.
const shortMm = 65.0

// standOffMm is how far off what turns an opening of a width and a length has to be.
func standOffMm(width, length float64, round bool) float64 {
	for _, r := range reaches {
		switch {
		case width > r.widthMm:
		case round:
			return r.round
		case !geom.Over(length, width) || width > openMm && length <= shortMm:
			return r.square
		default:
			return r.slot
		}
	}
	return endless
}

// turnsWith are a shaft, all that turns with it, and what lies on these and turns with that.
func (r *reviewer) turnsWith(shaft parts.Instance) map[parts.Instance]bool {
	turns := r.job.Turning(shaft)
	for n := 0; n < len(turns); {
		n = len(turns)
		for _, l := range r.job.Laid() {
			if turns[l.On] && !l.Loose.Off {
				maps.Copy(turns, r.job.Turning(l.Instance))
			}
		}
	}
	return turns
}

// tooOpen is the finding of an opening, leastMm wide, that is too near, offMm, to what turns.
func (r *reviewer) tooOpen(leastMm float64, what, open string, offMm float64, fix string) Finding {
	through := words.Either(leastMm <= openMm, "a finger", "a hand")
	return Finding{
		What: through + " gets through " + what, Numbers: open + " open, " + r.mm(offMm) + " off", LeftMm: left(offMm),
		Rule: "an opening is as narrow as what turns is near", Source: "ISO 13857 table 4", Fix: fix,
	}
}

// grilles looks at grilles that are bought for a made part: a hand is not to get through their
// holes from its far side to the shaft or its flight.
func (r *reviewer) grilles(shaft *assembly.Body) {
	m, into, turning := r.machine(), shaft.Pose.Inverse(), 0.0
	for b := range m.Parts() {
		if b.ID == shaft.ID || m.FormOf(b.ID) == parts.FlightPart {
			turning = max(turning, b.Box().Moved(into).High.X)
		}
	}
	for e := range seq.Refs(r.job.Loose) {
		said := grilleHoles().FindStringSubmatch(e.Item.Value)
		off, on := 0.0, ""
		for b, of := range m.Parts() {
			if said == nil || !of.Part.NamedIn(e.How.Value) {
				continue
			}
			box := b.Box().Moved(into)
			if far := max(-box.Low.X, -box.Low.Y, box.High.X, box.High.Y) - turning; far > off {
				off, on = far, of.Part.Title.Value
			}
		}
		if on == "" {
			continue
		}
		if wide := r.itemMm(said[1]); off < standOffMm(wide, wide, true) {
			f := r.tooOpen(wide, "the holes of the grille on "+on+" to what turns", r.mm(wide), off, "smaller holes, or the grille farther off")
			f.Severity, f.Pos = Check, e.Item.Pos
			r.add(f)
		}
	}
}

// guardOn is a guard on the shaft that turns.
type guardOn struct {
	v           *view
	body, shaft *assembly.Body
}

// along is where a body begins and ends along the shaft, and whether the shaft's line goes
// through the box round it.
func (g *guardOn) along(b *assembly.Body) (from, to float64, through bool) {
	box := b.Box().Moved(g.shaft.Pose.Inverse())
	return box.Low.Z, box.High.Z, box.Low.X < 0 && box.High.X > 0 && box.Low.Y < 0 && box.High.Y > 0
}

// away tells whether a guard whose title names what sits on the driven step does not reach over
// any of it, and says so.
func (g *guardOn) away(drives parts.JointRef) bool {
	shaft := g.v.viewOf(drives.Part)
	if shaft == nil {
		return false
	}
	c := named(shaft.outside, drives.Feature)
	if c == nil || c.Seat == "" || !strings.Contains(parts.Bare(g.v.p.Title.Value), parts.Bare(c.Seat)) {
		return false
	}
	from, to, _ := g.along(g.body)
	if from < -c.FromMm && to > -c.ToMm {
		return false
	}
	g.open("does not stand over the "+c.Seat+" that it is for: a flange of it is bent to the other side, or it hangs the wrong way", "", nil)
	return true
}

// beside tells whether neither a guard of the belt nor another of its title stands round the line of the shaft that the
// belt turns, and says so.
func (g *guardOn) beside(bodies []assembly.Body) bool {
	if !overBelt().MatchString(g.v.p.Title.Value) || slices.ContainsFunc(bodies, func(b assembly.Body) bool {
		v := g.v.viewOf(g.v.machine().Of[b.ID].Part)
		_, _, through := g.along(&b)
		return through && v != nil && v.p.For == parts.Guarding && overBelt().MatchString(v.p.Title.Value)
	}) {
		return false
	}
	g.open("stands beside the shaft that the belt turns, not over it: it hangs the wrong way, or its holes are at another edge", "", nil)
	return true
}

// ends looks for the gap between an end of the guard and the next plate, where what turns with the shaft reaches into
// it or it is shorter than the guard: what is left open beyond that is not what the guard closes.
func (g *guardOn) ends(bodies []assembly.Body) {
	from, to, _ := g.along(g.body)
	for _, way := range []float64{-1, 1} {
		gap, plate, end := endless, "", map[float64]float64{-1: from, 1: to}[way]
		for b, of := range g.v.machine().Parts() {
			low, high, through := g.along(b)
			if !of.Part.Flat() || of.Part.Kind == parts.Folded || !through {
				continue
			}
			face := map[float64]float64{-1: high, 1: low}[way]
			if way*(low+high-from-to) < 0 {
				continue // it lies the other way
			}
			if d := way * (face - end); d < gap {
				gap, plate = d, of.Part.Title.Value
			}
		}
		if plate != "" && gap > openMm && (gap < to-from || g.turning(bodies, end, way*gap)) {
			g.open("leaves a gap to "+plate, g.v.mm(gap)+", wanted at most "+g.v.mm(openMm), over(gap))
		}
	}
}

// turning tells whether what turns with the shaft, beside it, reaches into a stretch of its axis that begins at a place
// and is so long, to the front where that is below 0.
func (g *guardOn) turning(bodies []assembly.Body, atMm, longMm float64) bool {
	of := g.v.machine().Of
	turns := g.v.turnsWith(of[g.shaft.ID])
	low, high := min(atMm, atMm+longMm)+geom.CloseMm, max(atMm, atMm+longMm)-geom.CloseMm
	return seq.At(bodies, func(b *assembly.Body) bool {
		from, to, _ := g.along(b)
		return b.ID != g.shaft.ID && (turns[of[b.ID]] || g.v.machine().Roles[b.ID].Runs) && from < high && to > low
	}) != nil
}

// sides looks whether the guard stands on both sides of the shaft, where it does on one.
func (g *guardOn) sides() {
	from, to, _ := g.along(g.body)
	seen := map[float64]bool{}
	for _, way := range []float64{-1, 1} {
		for _, share := range []float64{0.5, 0.25, 0.75} { // one may look through a hole
			o := assembly.Opening{At: g.shaft.Pose.Apply(assembly.Vec{Z: from + share*(to-from)}), Along: g.shaft.Pose.Turn(assembly.Vec{X: way}), RadiusMm: 1, ReachMm: 1000}
			_, covers := o.Look([]assembly.Body{*g.body})
			seen[way] = seen[way] || len(covers) > 0
		}
	}
	floor := assembly.Crossings([]assembly.Body{*g.body}, g.shaft.Pose.Apply(assembly.Vec{Z: (from + to) / 2}), g.shaft.Pose.Turn(assembly.AxisY.Reversed()))
	for _, way := range []float64{-1, 1} {
		if len(floor) > 0 {
			break // it is closed below the shaft itself
		}
		if gap, on := g.under(way, (from+to)/2); seen[way] && gap > openMm {
			g.open("leaves a gap over "+on+" on one side", g.v.mm(gap)+", wanted at most "+g.v.mm(openMm), over(gap))
		}
	}
	switch {
	case seen[1] != seen[-1]:
		g.sideOpen(words.Either(seen[1], -1.0, 1), from, to)
	case !seen[1] && g.overEnd():
		g.open("leaves both sides open at the height of the shaft: its flanges end before it, or stand away from it", "", nil)
	}
}

// armMm is the reach of an arm (ISO 13857 table 4).
const armMm = 850.0

// sideOpen says that a guard leaves open one side of the shaft, as far as an arm or the next part that stands still, where no
// other guard stands there.
func (g *guardOn) sideOpen(way, from, to float64) {
	m, far, next := g.v.machine(), armMm, ""
	turns, along := g.v.turnsWith(m.Of[g.shaft.ID]), g.shaft.Pose.Turn(assembly.Vec{X: way})
	for _, share := range []float64{0.5, 0.25, 0.75} {
		for _, c := range assembly.Crossings(m.Bodies, g.shaft.Pose.Apply(assembly.Vec{Z: from + share*(to-from)}), along) {
			of, made := m.Of[c.ID]
			if v := g.v.viewOf(of.Part); made && v != nil && v.p.For == parts.Guarding && c.FromMm < armMm {
				return
			}
			if made && !turns[of] && c.FromMm < far {
				far, next = c.FromMm, ", as far as "+m.Title(c.ID)
			}
		}
	}
	side := g.body.Pose.Inverse().Turn(along)
	name := words.Either(math.Abs(side.X) > math.Abs(side.Y), words.Either(side.X > 0, "right", "left"), words.Either(side.Y > 0, "top", "bottom"))
	g.open("leaves one side open at the height of the shaft: to its "+name+next, g.v.mm(words.Round(far, 0))+" open, wanted at most "+g.v.mm(openMm), over(far))
}

// under is the gap between the lower edge of the guard on one side, at a place along the shaft,
// and the made part that lies under it; 0 where nothing does.
func (g *guardOn) under(way, z float64) (mm float64, on string) {
	const inMm = 0.5 // into its sheet
	box := g.body.Box().Moved(g.shaft.Pose.Inverse())
	edge := assembly.Vec{X: box.High.X - inMm, Z: z}
	if way < 0 {
		edge.X = box.Low.X + inMm
	}
	m, down := g.v.machine(), g.shaft.Pose.Turn(assembly.AxisY.Reversed())
	others := seq.Keep(m.Bodies, func(b assembly.Body) bool { _, made := m.Of[b.ID]; return made && b.ID != g.body.ID })
	own, next := assembly.Crossings([]assembly.Body{*g.body}, g.shaft.Pose.Apply(edge), down), assembly.Crossings(others, g.shaft.Pose.Apply(edge), down)
	if len(own) == 0 || len(next) == 0 {
		return 0, ""
	}
	return next[0].FromMm - own[len(own)-1].ToMm, g.v.pl.Part(m.Of[next[0].ID].Part).Title
}

// saidUnder compares the notes of the guard with the gaps under its two sides.
func (g *guardOn) saidUnder() {
	from, to, _ := g.along(g.body)
	for note, m := range saying(g.v.p.Notes, endsOver) {
		said := g.v.itemMm(m[1] + " " + m[2])
		for _, way := range []float64{-1, 1} {
			if gap, on := g.under(way, (from+to)/2); on != "" && gap > 0 && math.Abs(gap-said) > endsOffMm {
				g.v.unlike(note.Pos, "", "a note of "+g.v.p.Title.Value+" says otherwise how far its sides end over "+on, strings.TrimSpace(m[0])+"; drawn: "+g.v.mm(gap), "the note, or what is drawn")
				return
			}
		}
	}
}

// endsOffMm is how far a gap may differ from its words: what rounding and bending leave.
// Common practice, no source.
const endsOffMm = 1.0

// overEnd tells whether the guard has two flanges that face one another, on either side of
// the shaft, and an end of the shaft lies between its own ends.
func (g *guardOn) overEnd() bool {
	box := g.body.Box().Moved(g.shaft.Pose.Inverse())
	on := func(side parts.Side) bool {
		return slices.ContainsFunc(g.v.p.Bends.Flanges, func(f parts.Flap) bool { return f.Side == side })
	}
	facing := on(parts.LeftEnd) && on(parts.RightEnd) || on(parts.TopSide) && on(parts.BottomSide)
	own := g.shaft.Solid.Box()
	ends := box.Low.Z < own.Low.Z && own.Low.Z < box.High.Z || box.Low.Z < own.High.Z && own.High.Z < box.High.Z
	return facing && ends && box.Low.X < 0 && box.High.X > 0
}

func (g *guardOn) open(what, numbers string, overMm *float64) {
	g.v.add(Finding{
		Part: g.v.p.Name.Value, Pos: g.v.p.Name.Pos, What: g.v.p.Title.Value + " " + what, Numbers: numbers, OverMm: overMm,
		Rule: "a guard keeps hands off what turns", Source: "ISO 13857, from memory", Fix: "a guard that reaches from plate to plate, and below the shaft on both sides",
	})
}
