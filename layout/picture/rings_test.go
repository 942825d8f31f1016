package picture_test

import (
	"math"
	"testing"

	"centrepop/layout/plan"
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
