package review

import (
	"math"
	"regexp"

	"centrepop/layout/assembly"
)

// guardWords are in the title of what keeps hands off.
var guardWords = regexp.MustCompile(`(?i)\b(guard|hood)\b`)

// openMm is the widest slot beside a guard that the fingers do not get through to what turns
// well behind it. ISO 13857 table 4, from memory: slots to 20 mm at 120 mm off and more.
const openMm = 20.0

// guards looks for folded guards that leave open what turns: between their end and the plate
// that they close against, or on one side of the two.
func guards(r *reviewer) {
	m := r.job.Motor
	if m == nil || !m.Drives.Set() {
		return
	}
	machine := r.machine()
	var shaft *assembly.Body
	for i := range machine.Bodies {
		if of := machine.Of[machine.Bodies[i].ID]; of.Part == m.Drives.Part && of.Copy == max(1, m.Drives.Copy) {
			shaft = &machine.Bodies[i]
		}
	}
	for i := range machine.Bodies {
		b := &machine.Bodies[i]
		v := r.viewOf(machine.Of[b.ID].Part)
		if shaft == nil || v == nil || v.p.Bends == nil || !guardWords.MatchString(v.p.Title.Value) {
			continue
		}
		g := guardOn{r, v, b, shaft}
		g.ends(machine.Bodies)
		g.sides()
	}
}

// guardOn is a guard on the shaft that turns.
type guardOn struct {
	r           *reviewer
	v           *view
	body, shaft *assembly.Body
}

// along is where a body begins and ends along the shaft, and whether the shaft's line goes
// through the box round it.
func (g *guardOn) along(b *assembly.Body) (from, to float64, through bool) {
	box := b.Box().Moved(g.shaft.Pose.Inverse())
	return box.Low.Z, box.High.Z, box.Low.X < 0 && box.High.X > 0 && box.Low.Y < 0 && box.High.Y > 0
}

// ends looks for the gap between an end of the guard and the next plate.
func (g *guardOn) ends(bodies []assembly.Body) {
	from, to, _ := g.along(g.body)
	for _, way := range []float64{-1, 1} {
		gap, plate := math.Inf(1), ""
		for i := range bodies {
			low, high, through := g.along(&bodies[i])
			of, made := g.r.machine().Of[bodies[i].ID]
			if o := g.r.viewOf(of.Part); !made || o == nil || o.p.Outline == nil || o.p.Bends != nil || !through {
				continue
			}
			end, face := to, low
			if way < 0 {
				end, face = from, high
			}
			if way*(low+high-from-to) < 0 {
				continue // it lies the other way
			}
			if d := way * (face - end); d < gap {
				gap, plate = d, g.r.pl.Part(of.Part).Title
			}
		}
		if gap > openMm && gap < to-from {
			g.open("leaves a gap to "+plate, g.r.mm(gap)+", wanted at most "+g.r.mm(openMm), over(gap))
		}
	}
}

// sides looks whether the guard stands on both sides of the shaft, where it does on one.
func (g *guardOn) sides() {
	from, to, _ := g.along(g.body)
	seen := map[float64]bool{}
	for _, way := range []float64{-1, 1} {
		o := assembly.Opening{
			At: g.shaft.Pose.Apply(assembly.Vec{Z: (from + to) / 2}), Along: g.shaft.Pose.Turn(assembly.Vec{X: way}), RadiusMm: 1, ReachMm: 1000,
		}
		_, covers := o.Look([]assembly.Body{*g.body})
		seen[way] = len(covers) > 0
	}
	if seen[1] != seen[-1] {
		g.open("leaves one side open at the height of the shaft", "", nil)
	}
}

func (g *guardOn) open(what, numbers string, overMm *float64) {
	g.r.add(Finding{
		Severity: Check, Part: g.v.p.Name.Value, Pos: g.v.p.Name.Pos, What: g.v.p.Title.Value + " " + what, Numbers: numbers, OverMm: overMm,
		Rule: "a guard keeps hands off what turns", Source: "ISO 13857, from memory", Fix: "a guard that reaches from plate to plate, and below the shaft on both sides",
	})
}
