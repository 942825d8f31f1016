package review

import (
	"fmt"
	"math"
	"reflect"
	"testing"

	"centrepop/layout/assembly"
	"centrepop/layout/plan"
	"centrepop/layout/stand"
	"centrepop/layout/threads"
	"centrepop/parts"
	"centrepop/parts/geom"
)

// TestSmallGeometry: what the rules measure with, by hand.
func TestSmallGeometry(t *testing.T) {
	t.Parallel()
	p := func(x, y float64) plan.XY { return plan.XY{XMm: x, YMm: y} }
	lengths := func(mm ...float64) (out []parts.Length) {
		for _, v := range mm {
			out = append(out, parts.Length{Mm: v, Pos: parts.Pos{Line: 1}})
		}
		return out
	}
	class := func(c string) parts.Fit { return parts.Fit{Class: parts.Text{Value: c}} }
	within := func(mm float64) parts.Fit { return parts.Fit{PlusMinus: lengths(mm)[0]} }
	limits := func(lo, hi float64) parts.Fit { return parts.Fit{Limits: lengths(lo, hi)} }
	fits := func(by func(parts.Fit) bool, list ...parts.Fit) (out []bool) {
		for _, f := range list {
			out = append(out, by(f))
		}
		return out
	}
	limit := func(f parts.Fit) [3]any {
		lo, hi, ok := limitsOf(parts.Size{Fit: f, Nominal: parts.Length{Mm: 20}})
		return [3]any{math.Round(lo*1e6) / 1e6, math.Round(hi*1e6) / 1e6, ok}
	}
	six := func(f parts.Fit) bool { return fine(f, 6) }
	steps := sideBy(false, cyl("", 0, 20, 60, parts.Step{}), cyl("", 20, 50, 40, parts.Step{}))
	radii := func(zs ...float64) (out []float64) {
		for _, z := range zs {
			out = append(out, radiusAt(steps, z))
		}
		return out
	}
	way := func(radius float64, inside bool) float64 {
		c := cyl("", 50, 60, 2*radius, parts.Step{})
		c.Inside, c.before = inside, steps
		return mostMm(c.inTheWay())
	}
	ring := func(degs ...float64) (out []place) {
		for _, d := range degs {
			out = append(out, place{radiusMm: 50, deg: d})
		}
		return out
	}
	row := plan.RadialRow{ClockDeg: 350, AxialMm: 30, OutsideMm: 120, AlongMm: 10, AroundMm: 8}
	grid := func(r plan.RadialRow) [4]plan.XY { // at 0°, 90°, 180° and 270°
		e := edgeOfOpening(r)
		var out [4]plan.XY
		for i := range out {
			q := e[i*len(e)/4]
			out[i] = p(math.Round(math.Abs(q.XMm)*1e6)/1e6, math.Round(math.Abs(q.YMm)*1e6)/1e6)
		}
		return out
	}
	round := func(v float64) float64 { return math.Round(v*1e6) / 1e6 }
	clock := func(h hole) float64 { return geom.ClockDeg(h.middle()) }
	pin := func(note string) [2]float64 {
		a, b := (&reviewer{job: &parts.Job{Units: parts.Millimetres}}).pinOf(note, false)
		return [2]float64{a, b}
	}
	outline := func(shape parts.OutlineShape, sides int, turns ...float64) (out []bool) {
		v := &view{p: &parts.Part{Outline: &parts.Outline{Shape: shape, Sides: sides}}}
		for _, deg := range turns {
			out = append(out, v.outlineTurns(deg))
		}
		return out
	}
	nearRound := func(x, y, wanted float64) float64 {
		v := &view{inside: sideBy(true, cyl("", 0, 10, 40, parts.Step{}), cyl("", 10, 20, 50, parts.Step{})), holes: []hole{{a: p(30, 0), radiusMm: 6, group: &parts.HoleGroup{}}, {a: p(0, 20), radiusMm: 6}}}
		mm, _ := v.roundAt(p(x, y), wanted)
		return mm
	}
	mm := func(v float64) parts.Length { return parts.Length{Mm: v} }
	ofForm := func(of parts.Part) []float64 {
		return (&view{reviewer: &reviewer{job: &parts.Job{}}, p: &of, q: &plan.PartPlan{}}).diameters()
	}
	nearest := func(x, y, z float64) assembly.Vec {
		s := swept{farMm: 50, lowMm: -30, highMm: -10, shaft: assembly.Move(assembly.Vec{X: 100})}
		return s.nearest(assembly.Vec{X: 100 + x, Y: y, Z: z}).Sub(assembly.Vec{X: 100})
	}
	for _, c := range []struct {
		what      string
		got, want any
	}{
		{"the round about a place nearest to a size, of two steps and a hole", []float64{nearRound(0, 0, 44), nearRound(0, 0, 46), nearRound(30, 0, 50), nearRound(30.6, 0, 50), nearRound(0, 20, 50)}, []float64{40, 50, 12, 0, 0}},
		{"diameters of a cone, outside and inside, and of a transition", [][]float64{ofForm(parts.Part{Kind: parts.Cone, Frustum: &parts.Frustum{Large: mm(200), Small: mm(100), Formed: parts.Formed{Thickness: mm(3)}}}), ofForm(parts.Part{Kind: parts.TransitionPiece, Transition: &parts.Transition{Diameter: mm(150)}})}, [][]float64{{200, 100, 194, 94}, {150}}},
		{"turns of a circle, of a square, of a rectangle, of a slot, of a hexagon, of a free shape", [][]bool{outline(parts.CircleOutline, 0, 17), outline(parts.SquareOutline, 0, 90, 270, 45), outline(parts.RectangleOutline, 0, 180, 90), outline(parts.SlotOutline, 0, 180, 90), outline("regular", 6, 60, 180, 90, 59.9), outline("polygon", 0, 180, 360)}, [][]bool{{true}, {true, true, false}, {true, false}, {true, false}, {true, true, false, false}, {false, true}}},
		{"next to a round of 50 from 10 to 30 behind the front", []assembly.Vec{nearest(60, 80, 0), nearest(-3, 4, -20), nearest(0, -100, -40)}, []assembly.Vec{{X: 30, Y: 40, Z: -10}, {X: -3, Y: 4, Z: -20}, {Y: -50, Z: -30}}},
		{"two lines: crossing, beside, end on, one at the other's end", []float64{geom.Apart(p(0, 0), p(10, 0), p(5, -5), p(5, 5)), geom.Apart(p(0, 0), p(10, 0), p(2, 4), p(8, 4)), geom.Apart(p(0, 0), p(10, 0), p(13, 4), p(20, 4)), geom.Apart(p(0, 0), p(10, 0), p(5, 2), p(5, 9)), geom.Apart(p(5, 2), p(5, 9), p(0, 0), p(10, 0)), geom.Apart(p(0, 0), p(10, 0), p(10, 0), p(20, 5))}, []float64{0, 4, 5, 2, 2, 0}},
		{"an outline that is closed, and one that is not", [][]plan.XY{polyline("M0 0H10V5Z"), polyline("M0 0H10V5"), polyline("")}, [][]plan.XY{{p(0, 0), p(10, 0), p(10, 5), p(0, 0)}, {p(0, 0), p(10, 0), p(10, 5), p(0, 0)}, nil}},
		{"greatest divisors", []int{geom.Common(12, 18), geom.Common(18, 12), geom.Common(7, 5), geom.Common(4, 0)}, []int{6, 6, 1, 4}},
		{"the radius at places of an axis", radii(-0.1, 0, 10, 20, 20.1, 50, 50.1), []float64{0, 30, 30, 30, 20, 20, 0}},
		{"what is larger or smaller by more than 0.05", []float64{way(29.948, false), way(29.951, false), way(10, false), way(20.052, true), way(20.049, true), way(40, true)}, []float64{30, 0, 30, 20, 0, 30}},
		{"a ring that looks alike so often", []bool{repeats(ring(0, 90, 180, 270), 4), repeats(ring(0, 90, 180, 270), 2), repeats(ring(0, 80, 180, 260), 2), repeats(ring(0, 80, 180, 260), 4), repeats(ring(10, 130, 250), 3), repeats(ring(10, 130, 251), 3), repeats(ring(0, 90.01, 180, 270), 4), repeats(ring(0, 90.02, 180, 270), 4)}, []bool{true, true, true, false, true, false, true, false}},
		{"on one place to 0.01 mm: 0.0114° of 50", []bool{onOne(0.0114, 50), onOne(-0.0114, 50), onOne(0.0115, 50), onOne(0.0057, 100), onOne(0.0058, 100)}, []bool{true, true, false, true, false}},
		{"the height of a nut: KM8, one of no series", []float64{lockNutOf(threads.Thread{MajorMm: 40, PitchMm: 1.5}).highMm, lockNutOf(threads.Thread{MajorMm: 40, PitchMm: 3}).highMm}, []float64{9, 9}},
		{"the outside of a nut of no series: 1.3 × 38.1", func() float64 { mm, _ := (&reviewer{job: &parts.Job{}}).nutOver("1-1/2-12 UNF"); return round(mm) }(), 49.53},
		{"the wall of a tube", []float64{leastWallMm(60), leastWallMm(75), leastWallMm(200)}, []float64{1.5, 1.5, 4}},
		{"few of many", []string{few([]string{"a", "b", "c", "d"}), few([]string{"a", "b", "c", "d", "e"}), few([]string{"a", "b", "c", "d", "e", "f"}), few([]string{"a"})}, []string{"a, b, c, d", "a, b, c, d and 1 more", "a, b, c, d and 2 more", "a"}},
		{"and more of the same", []string{same(0), same(1), same(2), same(3), same(12)}, []string{"", "", " (and one more)", " (and 2 more)", " (and 11 more)"}},
		{"clocks of slots", []float64{clock(hole{a: p(0, 10), b: p(0, 30)}), clock(hole{a: p(10, -5), b: p(10, 5)}), clock(hole{a: p(-4, 0), b: p(0, -4)}), clock(hole{a: p(3, 3), b: p(5, 5)})}, []float64{0, 90, 225, 45}},
		{"fits to turn", fits(func(f parts.Fit) bool { return (&view{p: &parts.Part{Stock: parts.Stock{Cut: "laser"}}}).toTurn(f, 20) }, class("H7"), parts.Fit{}, limits(20, 20.19), limits(20, 20.2), within(0.09), within(0.1)), []bool{true, false, true, false, true, false}},
		{"fine fits", fits(six, class("k6"), class("H7"), class("h5"), class(""), limits(20, 20.03), limits(20, 20.031), within(0.015), within(0.0151)), []bool{true, false, true, false, true, false, true, false}},
		{"limits of a step of 20", [][3]any{limit(limits(19.9, 20.2)), limit(within(0.05)), limit(class("H7")), limit(parts.Fit{})}, [][3]any{{19.9, 20.2, true}, {19.95, 20.05, true}, {20.0, 20.021, true}, {0.0, 0.0, false}}}, // ISO 286-2
		{"where no joint stands", (&reviewer{job: &parts.Job{File: "job.yaml"}}).jointPos("none"), parts.Pos{File: "job.yaml", Line: 1, Column: 1}},
		{"pressed fits", []bool{pressed(cyl("", 0, 0, 0, parts.Step{Size: parts.Size{Fit: class("j6")}})), pressed(cyl("", 0, 0, 0, parts.Step{Size: parts.Size{Fit: class("H7")}})), pressed(cyl("", 0, 0, 0, parts.Step{Size: parts.Size{Fit: class("js6")}})), pressed(cyl("", 0, 0, 0, parts.Step{Size: parts.Size{Fit: class("k6")}}))}, []bool{true, false, true, true}},
		// 10° of Ø120 are 10.472 round: off by that, 30 mm along by 10 and 30.
		{"off the axis of a branch", []float64{round(offBranch(row, 30, 0, 20)), round(offBranch(row, 30, 350, 20)), round(offBranch(row, 40, 350, 20)), offBranch(row, 75, 350, 20), offBranch(row, 75.1, 350, 20)}, []float64{10.471976, 0, 10, 45, math.Inf(1)}},
		{"edge of a window", grid(plan.RadialRow{AroundMm: 20, AlongMm: 12, CornerMm: 2}), [4]plan.XY{p(10, 4), p(8, 6), p(10, 4), p(8, 6)}},
		{"edge of a hole", grid(plan.RadialRow{Shape: "hole", DiameterMm: 12}), [4]plan.XY{p(6, 0), p(0, 6), p(6, 0), p(0, 6)}},
		{"edge of a slot", grid(plan.RadialRow{Shape: "slot", AroundMm: 8, AlongMm: 30}), [4]plan.XY{p(4, 11), p(0, 15), p(4, 11), p(0, 15)}},
		{"lengths in words", []float64{noteMm("12", "mm"), noteMm("0.5", "in"), noteMm("3", "ells")}, []float64{12, 12.7, 0}},
		{"no pin in words", pin("as it is"), [2]float64{}},
	} {
		if !reflect.DeepEqual(c.got, c.want) {
			t.Errorf("%s: %v, want %v", c.what, c.got, c.want)
		}
	}
}

// TestWeldCorners: where a fillet round a joint of radius 30 at its upper end lies: from
// inside or outside, on the end that is over the other by more than 0.5, at a shoulder that
// is over 0.3 larger; a bevel or a bore wider than 0.3 makes it the last choice. Its corner
// reaches from end to end, at a shoulder as far as one likes.
func TestWeldCorners(t *testing.T) {
	t.Parallel()
	stands := func(inner, outer [2]float64, from, to float64) stand.OnAxis { // radii below, and above the joint's end
		line := func(r [2]float64) []plan.XY {
			return []plan.XY{{XMm: from, YMm: r[0]}, {XMm: 100, YMm: r[0]}, {XMm: 100.001, YMm: r[1]}, {XMm: to, YMm: r[1]}}
		}
		return along("ring", 0, &plan.Section{LengthMm: to, Inner: line(inner), Outer: line(outer)})
	}
	for _, c := range []struct {
		name         string
		outer, inner surfaceEnd
		dir          float64
		want         weldEnd
	}{
		{"flush", surfaceEnd{stands([2]float64{30, 30}, [2]float64{40, 40}, 0, 100), 100}, surfaceEnd{stands([2]float64{20, 20}, [2]float64{30, 30}, 0, 100), 100}, 1, weldEnd{z: 100, r: 30, dir: 1, sides: []float64{1, -1}}},
		{"0.5 over", surfaceEnd{stands([2]float64{30, 30}, [2]float64{40, 40}, 0, 100), 100}, surfaceEnd{stands([2]float64{20, 20}, [2]float64{30, 30}, 0, 100.5), 100.5}, 1, weldEnd{z: 100, r: 30, dir: 1, sides: []float64{1, -1}, cornerMm: 0.5}},
		{"17/32 over", surfaceEnd{stands([2]float64{30, 30}, [2]float64{40, 40}, 0, 100), 100}, surfaceEnd{stands([2]float64{20, 20}, [2]float64{30, 30}, 0, 100.53125), 100.53125}, 1, weldEnd{z: 100, r: 30, dir: 1, rank: 1, sides: []float64{1}, cornerMm: 0.53125}},
		{"more over", surfaceEnd{stands([2]float64{30, 30}, [2]float64{40, 40}, 0, 100), 100}, surfaceEnd{stands([2]float64{20, 20}, [2]float64{30, 30}, 0, 130), 130}, 1, weldEnd{z: 100, r: 30, dir: 1, rank: 1, sides: []float64{1}, cornerMm: 30}},
		{"0.5 under", surfaceEnd{stands([2]float64{30, 30}, [2]float64{40, 40}, 0, 100.5), 100.5}, surfaceEnd{stands([2]float64{20, 20}, [2]float64{30, 30}, 0, 100), 100}, 1, weldEnd{z: 100.5, r: 30, dir: 1, sides: []float64{1, -1}, cornerMm: 0.5}},
		{"more under", surfaceEnd{stands([2]float64{30, 30}, [2]float64{40, 40}, 0, 112), 112}, surfaceEnd{stands([2]float64{20, 20}, [2]float64{30, 30}, 0, 100), 100}, 1, weldEnd{z: 100, r: 30, dir: 1, depthMm: 12, sides: []float64{-1}, cornerMm: 12}},
		{"a shoulder", surfaceEnd{stands([2]float64{30, 30}, [2]float64{40, 40}, 0, 100), 100}, surfaceEnd{stands([2]float64{20, 20}, [2]float64{30, 35}, 0, 130), 130}, 1, weldEnd{z: 100, r: 35, dir: 1, rank: 1, sides: []float64{1}, cornerMm: math.Inf(1)}},
		{"hardly one", surfaceEnd{stands([2]float64{30, 30}, [2]float64{40, 40}, 0, 100), 100}, surfaceEnd{stands([2]float64{20, 20}, [2]float64{30, 30.29}, 0, 130), 130}, 1, weldEnd{z: 100, r: 30, dir: 1, rank: 1, sides: []float64{1}, cornerMm: 30}},
		{"a wider bore", surfaceEnd{stands([2]float64{30.31, 30}, [2]float64{40, 40}, 0, 100), 100}, surfaceEnd{stands([2]float64{20, 20}, [2]float64{30, 30}, 0, 100), 100}, 1, weldEnd{z: 100, r: 30, dir: 1, rank: 2, sides: []float64{1, -1}}},
		{"hardly wider", surfaceEnd{stands([2]float64{30.29, 30}, [2]float64{40, 40}, 0, 100), 100}, surfaceEnd{stands([2]float64{20, 20}, [2]float64{30, 30}, 0, 100), 100}, 1, weldEnd{z: 100, r: 30, dir: 1, sides: []float64{1, -1}}},
		{"a bevel", surfaceEnd{stands([2]float64{30, 30}, [2]float64{40, 40}, 0, 100), 100}, surfaceEnd{stands([2]float64{20, 20}, [2]float64{29.69, 29.69}, 0, 100), 100}, 1, weldEnd{z: 100, r: 30, dir: 1, rank: 2, sides: []float64{1, -1}}},
		{"hardly one", surfaceEnd{stands([2]float64{30, 30}, [2]float64{40, 40}, 0, 100), 100}, surfaceEnd{stands([2]float64{20, 20}, [2]float64{29.71, 29.71}, 0, 100), 100}, 1, weldEnd{z: 100, r: 30, dir: 1, sides: []float64{1, -1}}},
		{"over at the lower end", surfaceEnd{stands([2]float64{30, 30}, [2]float64{40, 40}, 10, 100), 10}, surfaceEnd{stands([2]float64{20, 20}, [2]float64{30, 30}, 0, 100), 0}, -1, weldEnd{z: 10, r: 30, dir: -1, rank: 1, sides: []float64{1}, cornerMm: 10}},
		{"under at the lower end", surfaceEnd{stands([2]float64{30, 30}, [2]float64{40, 40}, 0, 100), 0}, surfaceEnd{stands([2]float64{20, 20}, [2]float64{30, 30}, 10, 100), 10}, -1, weldEnd{z: 10, r: 30, dir: -1, depthMm: 10, sides: []float64{-1}, cornerMm: 10}},
	} {
		if got := newWeldEnd(c.dir, 30, c.outer, c.inner); !reflect.DeepEqual(got, c.want) {
			t.Errorf("%s: %+v, want %+v", c.name, got, c.want)
		}
	}
}

// A neighbour is a bolt of the same size in the same flange: of a part with two, 127 apart, each has its own.
func TestNeighbourInItsFlange(t *testing.T) {
	t.Parallel()
	m10 := &parts.HoleGroup{Size: parts.HoleSize{Make: parts.ClearanceHole, Thread: "M10"}}
	at := func(x, from, to float64) hole {
		return hole{group: m10, a: plan.XY{XMm: x}, b: plan.XY{XMm: x}, fromMm: from, toMm: to}
	}
	for _, c := range []struct{ from, want float64 }{{0, 5}, {12, 5}, {13, 60}, {127, 60}} {
		v := &view{holes: []hole{at(0, 0, 12), at(5, c.from, c.from+12), at(60, 0, 12)}}
		if got := v.neighbourMm(&v.holes[0]); got != c.want {
			t.Errorf("from %v: %v, want %v", c.from, got, c.want)
		}
	}
}

// TestTooRarely: bolts and wear are looked at once in five years at the least, or 60 months, 260 weeks, 2000 days, 10 seasons or
// 10 000 hours, and grease is put in after two fifths of that, of hours after all. What is no time says nothing.
func TestTooRarely(t *testing.T) {
	t.Parallel()
	said := func(up parts.Upkeep) int {
		r := &reviewer{job: &parts.Job{Upkeep: &up}}
		r.tooRarely()
		return len(r.found)
	}
	for unit, most := range map[string][2]int{"years": {5, 2}, "months": {60, 24}, "weeks": {260, 104}, "days": {2000, 800}, "seasons": {10, 4}, "h": {10_000, 10_000}, "hours": {10_000, 10_000}, "turns": {1 << 20, 1 << 20}} {
		for over := range 2 {
			wears, grease := parts.Text{Value: fmt.Sprintf("%d %s", most[0]+over, unit)}, parts.Text{Value: fmt.Sprintf("%d %s", most[1]+over, unit)}
			want := over
			if unit == "turns" {
				want = 0
			}
			if got := [3]int{said(parts.Upkeep{Ports: []parts.Port{{Every: grease}}}), said(parts.Upkeep{Bolts: []parts.Retighten{{Every: wears}}}), said(parts.Upkeep{Wear: []parts.Wear{{Every: wears}}})}; got != [3]int{want, want, want} {
				t.Errorf("%q and %q: %v, want %d", grease.Value, wears.Value, got, want)
			}
		}
	}
}

// TestSaidSide: heads are sunk in the back, or holes are blind from there, and words let the screws in from the front.
func TestSaidSide(t *testing.T) {
	t.Parallel()
	for _, c := range []struct {
		name, said string
		g          parts.HoleGroup
		want       bool
	}{
		{"countersunk", "screws of the cover from the front", parts.HoleGroup{FaceGroup: parts.FaceGroup{Through: true}, Countersink: &parts.Countersink{}}, true},
		{"counterbored", "screws of the cover from the front", parts.HoleGroup{FaceGroup: parts.FaceGroup{Through: true}, Counterbore: &parts.Counterbore{}}, true},
		{"blind", "screws of the cover from the front", parts.HoleGroup{}, true},
		{"from where they are", "screws of the cover from the back", parts.HoleGroup{}, false},
		{"plain", "screws of the cover from the front", parts.HoleGroup{FaceGroup: parts.FaceGroup{Through: true}}, false},
		{"of others", "screws of the lid from the front", parts.HoleGroup{}, false},
		{"no screws", "light for the cover from the front", parts.HoleGroup{}, false},
		{"blind, screwed to it", "cover screwed to the front with screws", parts.HoleGroup{}, true},
		{"through, screwed to it", "cover screwed to the front with screws", parts.HoleGroup{FaceGroup: parts.FaceGroup{Through: true}, Countersink: &parts.Countersink{}}, false},
	} {
		c.g.Name, c.g.Face = parts.Text{Value: "cover"}, parts.Back
		r := &reviewer{job: &parts.Job{}}
		v := &view{reviewer: r, p: &parts.Part{}}
		if got := v.saidSide(&c.g, parts.Text{Value: c.said}); got != c.want || len(r.found) > 0 != c.want {
			t.Errorf("%s: %v, %d found", c.name, got, len(r.found))
		}
	}
}

// TestOnPlate: a figure of a motor is that of its plate within six hundredths, as makers round theirs; a plate without one says nothing.
func TestOnPlate(t *testing.T) {
	t.Parallel()
	number := func(v float64) parts.Number { return parts.Number{Value: v} }
	kw, hp := &parts.Motor{KW: number(10), Hz: number(50), RPM: number(1500), OutRPM: number(30)}, &parts.Motor{HP: number(2)}
	for _, c := range []struct {
		m            *parts.Motor
		figure, unit string
		want         bool
	}{
		{kw, "10.5", "kW", true}, {kw, "10.7", "kW", false}, {kw, "9.4", "kW", true}, {kw, "9.3", "kW", false}, {kw, "13.4", "HP", true}, {kw, "10", "hp", false},
		{kw, "50", "Hz", true}, {kw, "60", "Hz", false}, {kw, "1430", "rev/min", true}, {kw, "31", "rpm", true}, {kw, "300", "rpm", false},
		{hp, "1.5", "kW", true}, {hp, "2.2", "kW", false}, {hp, "2", "hp", true}, {hp, "60", "Hz", true},
	} {
		if got := onPlate(c.m, []string{"", c.figure, c.unit, "", ""}); got != c.want {
			t.Errorf("%s %s: %v", c.figure, c.unit, got)
		}
	}
}

// TestHolesForAScrew: a screw goes into the tapped holes of its own thread that nothing moves in, and passes through
// clearance holes of its own alone.
func TestHolesForAScrew(t *testing.T) {
	t.Parallel()
	m8, err := threads.Parse("M8")
	if err != nil {
		t.Fatal(err)
	}
	group := func(make parts.HoleMake, thread string) parts.HoleGroup {
		return parts.HoleGroup{Size: parts.HoleSize{Make: make, Thread: thread}}
	}
	for want, holes := range map[string][]parts.HoleGroup{
		"2 1 false": {group(parts.TappedHole, "M8"), group(parts.TappedHole, "M6"), group(parts.TappedHole, "M8"), group(parts.ClearanceHole, "M10")},
		"0 0 true":  {group(parts.ClearanceHole, "M8"), {Size: parts.HoleSize{Make: parts.PlainHole}}},
		"0 1 false": {group(parts.TappedHole, "M8x1")},
	} {
		own, others, passes := (&view{p: &parts.Part{Holes: holes}}).forScrew(m8)
		if got := fmt.Sprint(len(own), others, passes); got != want {
			t.Errorf("%s, want %s", got, want)
		}
	}
}
