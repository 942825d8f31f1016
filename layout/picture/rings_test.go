package picture_test

import (
	"fmt"
	"math"
	"slices"
	"strings"
	"testing"

	"centrepop/layout/picture"
	"centrepop/layout/plan"
	"centrepop/parts/geom"
)

// A tapered roller bearing is drawn as its rings (the section of ISO 355), alike on both sides
// of the axis where both show; the cup of its outside, thick at its back on the housing's shoulder (26 and
// 94 behind the housing's front, itself 592 behind the front flange's), its raceway opening away
// from there; the cone on its bore with the large rib on the open side; rollers thicker there,
// leaning out, against the raceway of the cup.
func TestBearingsAreDrawnAsRings(t *testing.T) {
	t.Parallel()
	joints, _ := pictured(t, "pugmill")
	for name, c := range map[string]struct{ back, dir, bore, outside float64 }{"front-bearing": {592 + 26, -1, 50, 90}, "rear-bearing": {592 + 94, 1, 40, 80}} {
		rings := map[plan.ShapeKind][]plan.XY{}
		for _, s := range joints[name].Pictures[0].Shapes {
			if s.Kind != plan.ShapeCup && s.Kind != plan.ShapeCone && s.Kind != plan.ShapeRoller || s.Title != joints[name].Bearing.Bearing {
				continue
			}
			if len(s.Loops) == 0 || rings[s.Kind] != nil {
				t.Fatalf("%s: %s of %d loops", name, s.Kind, len(s.Loops))
			}
			for i, p := range s.Loops[0] { // as distance from the cup's back and radius
				if q := s.Loops[len(s.Loops)-1][i]; len(s.Loops) == 2 && (q.XMm != p.XMm || q.YMm != -p.YMm) {
					t.Errorf("%s: %s at %v on one side, %v on the other", name, s.Kind, p, q)
				}
				rings[s.Kind] = append(rings[s.Kind], plan.XY{XMm: (p.XMm - c.back) * c.dir, YMm: math.Abs(p.YMm)})
			}
		}
		cup, cone, roller := rings[plan.ShapeCup], rings[plan.ShapeCone], rings[plan.ShapeRoller]
		backLow, backHigh := radii(cup, false)
		openLow, openHigh := radii(cup, true)
		if first, last := along(cup); math.Abs(first) > 1e-9 || last < 15 || backHigh != c.outside/2 || openHigh != c.outside/2 || openLow < backLow+3 {
			t.Errorf("%s: cup from %v to %v, %v to %v at its back, %v to %v open", name, first, last, backLow, backHigh, openLow, openHigh)
		}
		smallLow, smallHigh := radii(cone, false)
		largeLow, largeHigh := radii(cone, true)
		if smallLow != c.bore/2 || largeLow != c.bore/2 || largeHigh < smallHigh+2 {
			t.Errorf("%s: cone %v to %v, at its large end %v to %v", name, smallLow, smallHigh, largeLow, largeHigh)
		}
		in, out := [2]plan.XY{roller[3], roller[0]}, [2]plan.XY{roller[2], roller[1]} // from the small end to the large
		raceway := func(x float64) float64 {
			_, open := along(cup)
			return backLow + (openLow-backLow)*x/open
		}
		if in[1].YMm < in[0].YMm+2 || out[1].YMm-in[1].YMm < out[0].YMm-in[0].YMm+1 || in[0].XMm > in[1].XMm || math.Abs(out[0].YMm-raceway(out[0].XMm)) > 0.1 || math.Abs(out[1].YMm-raceway(out[1].XMm)) > 0.1 {
			t.Errorf("%s: roller %v", name, roller)
		}
	}
}

// The picture of a step in which rings go on shows these: it is no wider than a few of them, the rest
// of a long shaft is left out.
func TestRingsAreLarge(t *testing.T) {
	t.Parallel()
	for name, bearing := range map[string][]string{"pugmill": {"front-bearing", "rear-bearing"}, "gatejack": {"lower-bearing", "upper-bearing"}} {
		joints, _ := pictured(t, name)
		for _, j := range bearing {
			p := joints[j].Pictures[0]
			if wide := max(p.MaxMm.XMm-p.MinMm.XMm, p.MaxMm.YMm-p.MinMm.YMm); wide > map[string]float64{"pugmill": 9, "gatejack": 6}[name]*joints[j].Bearing.WidthMm {
				t.Errorf("%s: %v wide, a ring %v", j, wide, joints[j].Bearing.WidthMm)
			}
		}
	}
}

// A ball bearing of 25 × 52 × 15 stands from 5 to 20 behind the front of its housing, in a bore with its only shoulder there: a shaft whose
// head of 60 does not pass the lip of 44 comes from the front before it, and the bearing from the back last; one of 40 brings it from there.
func TestBallBearingIsDrawn(t *testing.T) {
	t.Parallel()
	for head, want := range map[string]string{"60": "6205-2RS {-1 0}, shaft {1 0}", "40": "shaft {-1 0}"} {
		m, pl := load(t, write(t, map[string]string{
			"housing.yaml": "part: housing\nkind: bearing-housing\nmaterial: EN-GJL-250\nstock: {round: 85, length: 44, cut: saw}\nprofile:\n  outside: [{name: body, diameter: 80, length: 40}]\n  inside: [{name: lip, diameter: 44, length: 5}, {name: bore, diameter: 52, fit: H7, length: 35}]\n",
			"shaft.yaml":   "part: shaft\nkind: shaft\nmaterial: C45\nstock: {round: 65, length: 84, cut: saw}\nprofile:\n  outside: [{name: head, diameter: " + head + ", length: 15}, {name: neck, diameter: 31, length: 20}, {name: seat, diameter: 25, fit: k6, length: 45}]\ngrooves: [{name: clip, in: seat, axial: 50.1, for: retaining-ring}]\n",
			"job.yaml":     "job: J\nunits: mm\ntolerance: m\nparts: [housing.yaml, shaft.yaml]\njoints:\n  - {name: one, ball-bearing: {bearing: 6205-2RS, housing: housing.bore, shaft: shaft.seat, rotating: inner}}\n",
		}))
		picture.Draw(m)
		pic := &pl.Joints[0].Pictures[0]
		var got []string
		for _, a := range pic.Arrows {
			got = append(got, fmt.Sprint(a.Of, " ", a.Dir))
		}
		if slices.Sort(got); strings.Join(got, ", ") != want {
			t.Errorf("head %s: %s, want %s", head, strings.Join(got, ", "), want)
		}
		for _, s := range pic.Shapes {
			ring := s.Kind == plan.ShapeCup || s.Kind == plan.ShapeCone
			if first, last := along(slices.Concat(s.Loops...)); ring && (first != 5 || last != 20 || !s.New || s.Title != "6205-2RS") {
				t.Errorf("head %s: %s of %s from %g to %g, new %v", head, s.Kind, s.Title, first, last, s.New)
			}
			for _, p := range s.Loops[0] { // the rings are square, and the balls alike all ways
				middle := plan.XY{XMm: 12.5, YMm: math.Copysign(geom.Mean(s.Loops[0]).YMm, p.YMm)}
				if turned := p.Minus(middle).Times(-1).Plus(middle); !slices.ContainsFunc(s.Loops[0], func(q plan.XY) bool { return geom.Distance(q, turned) < 1e-9 }) && (ring || s.Kind == plan.ShapeRoller) {
					t.Errorf("head %s: %s of %v", head, s.Kind, s.Loops[0])
				}
			}
		}
	}
}

// along is from where to where a loop reaches along its axis.
func along(loop []plan.XY) (first, last float64) {
	first, last = math.Inf(1), math.Inf(-1)
	for _, p := range loop {
		first, last = math.Min(first, p.XMm), math.Max(last, p.XMm)
	}
	return first, last
}

// radii are the least and the greatest radius of a loop at its first or last end.
func radii(loop []plan.XY, atLast bool) (low, high float64) {
	first, end := along(loop)
	if !atLast {
		end = first
	}
	low, high = math.Inf(1), math.Inf(-1)
	for _, p := range loop {
		if math.Abs(p.XMm-end) < 1e-9 {
			low, high = math.Min(low, p.YMm), math.Max(high, p.YMm)
		}
	}
	return low, high
}
