package picture_test

import (
	"math"
	"os"
	"slices"
	"strings"
	"testing"

	"centrepop/layout/layouttest"
	"centrepop/layout/picture"
	"centrepop/layout/plan"
	"centrepop/layout/words"
)

// shapes counts what a picture shows, by kind, and of what is new.
func shapes(p *plan.Picture) (all, fresh map[plan.ShapeKind]int, titles map[string]bool) {
	all, fresh, titles = map[plan.ShapeKind]int{}, map[plan.ShapeKind]int{}, map[string]bool{}
	for _, s := range p.Shapes {
		titles[s.Title] = true
		n := 1
		if s.Kind == plan.ShapeBead {
			n = len(s.Loops)
		}
		all[s.Kind] += n
		if s.New {
			fresh[s.Kind] += n
		}
	}
	return all, fresh, titles
}

// Each step shows what stands by then and nothing later, what is new as such,
// in sections that show its seam.
func TestPictures(t *testing.T) {
	t.Parallel()
	of, _ := pictured(t, "pugmill")
	for _, c := range []struct {
		joint       string
		cuts        []plan.CutKind
		in, not     string
		kind        plan.ShapeKind // how many of these are new in the last picture
		fresh       int
		dirX, dirY  float64 // of the first arrow
		arrows, new int     // parts that are new in the first picture
	}{
		{"front-flange", []plan.CutKind{plan.CutAxis}, "Barrel tube", "Barrel flange 2", plan.ShapeBead, 0, 1, 0, 1, 1},
		{"front-flange-weld", []plan.CutKind{plan.CutAxis}, "Barrel flange 1", "Barrel flange 2", plan.ShapeBead, 1, 0, 0, 0, 0},
		{"inlet-stub", []plan.CutKind{plan.CutLength, plan.CutAcross}, "Inlet flange", "Die ring", plan.ShapeBead, 2, 0, -1, 1, 1},
		{"delivery-die", []plan.CutKind{plan.CutAxis}, "Barrel flange 1", "Barrel end", plan.ShapeScrew, 1, 1, 0, 1, 1},
		{"front-bearing", []plan.CutKind{plan.CutAxis}, "Auger shaft", "Gland ring", plan.ShapeRoller, 1, 1, 0, 3, 0},
		{"rear-bearing", []plan.CutKind{plan.CutAxis}, "Bearing housing", "Rear cover", plan.ShapeCone, 1, -1, 0, 1, 0}, // its cup went in at the step before,
		{"upright", []plan.CutKind{plan.CutAcross, plan.CutLength}, "Base plate", "Gusset 1", plan.ShapeBead, 2, 0, -1, 1, 1},
		{"gusset-2", []plan.CutKind{plan.CutLength, plan.CutLevel}, "Housing plate", "Gusset 3", plan.ShapeBead, 1, 1, 0, 1, 1}, // flush with the edge: no corner there,
		{"gusset-4", []plan.CutKind{plan.CutLength, plan.CutLevel}, "Gusset 1", "Bearing housing", plan.ShapeBead, 1, -1, 0, 1, 1},
		{"motor", []plan.CutKind{plan.CutBolt, plan.CutLength}, "Pillar", "Barrel flange 1", plan.ShapePart, 1, -1, 0, 1, 1}, // the link alone in the last,
		{"base-far", []plan.CutKind{plan.CutLength}, "Stand rail 2", "Pillar", plan.ShapeScrew, 3, 0, -1, 1, 1},
		{"base-near", []plan.CutKind{plan.CutLength}, "Stand rail 1", "Pillar", plan.ShapeScrew, 3, 0, 0, 0, 0}, // hangs on it already
		{"hopper-throat", []plan.CutKind{plan.CutLength}, "Hopper", "Lantern", plan.ShapePart, 1, 0, -1, 1, 1},
	} {
		j := of[c.joint]
		if j == nil {
			t.Fatalf("no joint %s", c.joint)
		}
		if len(j.Pictures) != len(c.cuts) {
			t.Errorf("%s: %d pictures, want %d", c.joint, len(j.Pictures), len(c.cuts))
			continue
		}
		for i, cut := range c.cuts {
			if j.Pictures[i].Cut != cut {
				t.Errorf("%s: picture %d is cut %s, want %s", c.joint, i, j.Pictures[i].Cut, cut)
			}
		}
		first, last := &j.Pictures[0], &j.Pictures[len(j.Pictures)-1]
		_, fresh, titles := shapes(first)
		if !titles[c.in] || titles[c.not] || fresh[plan.ShapePart] != c.new {
			t.Errorf("%s: shows %v, %d of them new", c.joint, titles, fresh[plan.ShapePart])
		}
		if _, fresh, _ = shapes(last); fresh[c.kind] != c.fresh {
			t.Errorf("%s: %d new of %s, want %d", c.joint, fresh[c.kind], c.kind, c.fresh)
		}
		if len(first.Arrows) != c.arrows {
			t.Errorf("%s: %d arrows, want %d", c.joint, len(first.Arrows), c.arrows)
		} else if c.arrows > 0 && (first.Arrows[0].Dir.XMm != c.dirX || first.Arrows[0].Dir.YMm != c.dirY) {
			t.Errorf("%s: comes along %v", c.joint, first.Arrows[0].Dir)
		}
	}
}

// The pug mill as a whole: 1508 over all (the die nut 13 out, the back of the motor adapter 975 behind the front of the barrel end, the
// motor 520 from there), 430 wide over the feet, from 640 below its axis to
// the top of the hopper throat at 526.3.
func TestArrangement(t *testing.T) {
	t.Parallel()
	joints, a := pictured(t, "pugmill")
	for name, c := range map[string]struct {
		v    *plan.View
		w, h float64
	}{"front": {&a.Front, 1508, 1166.27}, "end": {&a.End, 430, 1166.27}, "top": {&a.Top, 1508, 430}} {
		if w, h := c.v.MaxMm.XMm-c.v.MinMm.XMm, c.v.MaxMm.YMm-c.v.MinMm.YMm; math.Abs(w-c.w) > 0.01 || math.Abs(h-c.h) > 0.01 {
			t.Errorf("%s: %g × %g, want %g × %g", name, w, h, c.w, c.h)
		}
		low, high := c.v.MaxMm, c.v.MinMm
		for _, l := range c.v.Lines {
			for _, p := range l {
				low = plan.XY{XMm: min(low.XMm, p.XMm), YMm: min(low.YMm, p.YMm)}
				high = plan.XY{XMm: max(high.XMm, p.XMm), YMm: max(high.YMm, p.YMm)}
			}
		}
		// What is cut reaches further than what is seen behind.
		if out := min(low.XMm-c.v.MinMm.XMm, low.YMm-c.v.MinMm.YMm, c.v.MaxMm.XMm-high.XMm, c.v.MaxMm.YMm-high.YMm); out < -0.01 {
			t.Errorf("%s: edges from %v to %v", name, low, high)
		}
		if name != "front" && (math.Abs(high.XMm-low.XMm-c.w) > 0.01 || math.Abs(high.YMm-low.YMm-c.h) > 0.01) {
			t.Errorf("%s: edges from %v to %v, want %g × %g", name, low, high, c.w, c.h)
		}
	}
	kinds := map[plan.ShapeKind]int{}
	for _, s := range a.Front.Shapes {
		kinds[s.Kind]++
		if s.New {
			t.Errorf("%s is new", s.Title)
		}
		if (s.Kind == plan.ShapeBar) != (s.Title == "Auger shaft") {
			t.Errorf("%s is drawn as a %s", s.Title, s.Kind)
		}
	}
	// Of each ring of screws two, of a row beside the axis one, the nut of the hub, two keys, seal and O-ring with a ring each, coupling and motor; no stud out
	// of its place, and none of the stand, which the plane does not cut.
	screws := 1 + 2 + 4 + 2
	for _, j := range joints {
		if j.Bolt != nil && j.Bolt.Class != "" && !strings.Contains(j.A.Part+j.B.Part, "stand-") {
			screws += 2
		}
		if j.Beside != nil && j.Kind == "bolt" && !strings.Contains(j.A.Part+j.B.Part, "stand-") {
			screws--
		}
	}
	if kinds[plan.ShapeRoller] != 2 || kinds[plan.ShapeScrew] != screws || kinds[plan.ShapeBar] != 1 {
		t.Errorf("kinds %v, %d screws", kinds, screws)
	}
	if !slices.Equal(a.Beside, []string{"Pillar", "Stand rail", "Stand leg", "Stand foot", "Gusset", "Cable bracket"}) || len(a.Front.Behind) != 5 {
		t.Errorf("beside %v at %v", a.Beside, a.Front.Behind)
	}
}

// TestScrewsOfFlangesStandInTheirHoles: two M6 × 12 through a flange of 1.5 on the front of
// the plate of 15: 10.5 in the plate, the head of 4 (ISO 4017) on the flange, one before the
// other; so with two M8 × 16 on its back, head 5.3, through 2, on a washer of 1.6.
func TestScrewsOfFlangesStandInTheirHoles(t *testing.T) {
	t.Parallel()
	joints, _ := pictured(t, "pugmill")
	for name, want := range map[string][2]float64{"coupling-guard": {-1.5 - 4, 10.5}, "switch-bracket": {15 - 12.4, 15 + 2 + 1.6 + 5.3}} {
		var plate float64
		var screws [][2]float64
		pictures := joints[name].Pictures
		for _, s := range pictures[len(pictures)-1].Shapes {
			low, high := math.Inf(1), math.Inf(-1)
			for _, loop := range s.Loops {
				for _, p := range loop {
					low, high = min(low, p.XMm), max(high, p.XMm)
				}
			}
			if s.Title == "Housing plate" {
				plate = low
			}
			if s.Kind == plan.ShapeScrew && s.New && s.Title == "" { // no key, no motor
				screws = append(screws, [2]float64{low, high})
			}
		}
		if len(screws) != 1 || math.Abs(screws[0][0]-plate-want[0]) > 0.05 || math.Abs(screws[0][1]-plate-want[1]) > 0.05 {
			t.Errorf("%s: screws %v, the front of the plate at %v, want one %v from it", name, screws, plate, want)
		}
	}
}

// The holes for anchors in the view from above: of the mill's feet, 25 from their ends, of what is
// 430 wide; of the jack's rails, 1-1/4 in from the edges of a frame of 10-1/2 in, four from 2-3/4 in
// on every 3-1/2 in of 16 in, on both sides of the axis. Nothing that has screws in it is one.
func TestAnchorsFromAbove(t *testing.T) {
	t.Parallel()
	for name, want := range map[string]struct {
		n        int
		across   float64
		along    []float64
		diameter float64
		y        func(plan.XY) float64
	}{
		"pugmill":  {n: 4, across: 430.0/2 - 25, diameter: 14.5, y: func(p plan.XY) float64 { return p.YMm }},
		"gatejack": {n: 8, across: (10.5/2 - 1.25) * 25.4, along: []float64{1.75 * 25.4, 5.25 * 25.4}, diameter: 13.0 / 32 * 25.4, y: func(p plan.XY) float64 { return p.XMm }},
	} {
		_, a := pictured(t, name)
		if len(a.Anchors) != want.n {
			t.Errorf("%s: %d anchors", name, len(a.Anchors))
		}
		for _, at := range a.Anchors {
			if off := want.y(at.FromMm); math.Abs(off-want.across) > 1e-6 || math.Abs(at.DiameterMm-want.diameter) > 0.01 {
				t.Errorf("%s: %+v", name, at)
			}
			if want.along != nil && !slices.ContainsFunc(want.along, func(mm float64) bool { return math.Abs(at.FromMm.YMm-mm) < 1e-6 }) {
				t.Errorf("%s: %+v", name, at)
			}
		}
	}
}

// The bolts, nuts and screws of a step are whole in its pictures; and where a picture of what is put in
// by hand has room for more than it shows, its window is no larger.
func TestWindowHoldsScrews(t *testing.T) {
	t.Parallel()
	for _, job := range []string{"gatejack", "pugmill"} {
		joints, _ := pictured(t, job)
		n := 0
		for name, j := range joints {
			for i, p := range j.Pictures {
				low, high := math.Inf(1), math.Inf(-1)
				for _, s := range p.Shapes {
					for _, q := range slices.Concat(s.Loops...) {
						low, high = min(low, q.YMm), max(high, q.YMm)
						if at := min(q.XMm-p.MinMm.XMm, p.MaxMm.XMm-q.XMm, q.YMm-p.MinMm.YMm, p.MaxMm.YMm-q.YMm); at < 1e-3 && s.New && s.Item == 0 && s.Kind == plan.ShapeScrew {
							t.Fatalf("%s %s, picture %d: a screw is cut off at %v", job, name, i+1, q)
						}
					}
					if s.New && s.Item == 0 && s.Kind == plan.ShapeScrew {
						n++
					}
				}
				if wide := p.MaxMm.YMm - p.MinMm.YMm; name == "housing" && i == 1 && high-low < 0.9*wide {
					t.Errorf("%s: the picture of the hub is %v high, what it shows %v", job, wide, high-low)
				}
			}
		}
		if n < 6 {
			t.Errorf("%s: %d screws", job, n)
		}
	}
}

// Of a machine that stands with its front up no section is seen from above that is seen from its TOP.
func TestSeenFromItsTop(t *testing.T) {
	t.Parallel()
	for _, name := range []string{"barrel", "frame", "screw"} {
		path := layouttest.Small(t, name)
		cuts := func() (level, top int) {
			m, p := layouttest.Load(t, path)
			picture.Draw(m)
			for _, j := range p.Joints {
				for _, c := range j.Pictures {
					level, top = level+words.Either(c.Cut == plan.CutLevel, 1, 0), top+words.Either(c.Cut == plan.CutTop, 1, 0)
				}
			}
			return level, top
		}
		level, top := cuts()
		text, err := os.ReadFile(path)
		if err != nil {
			t.Fatal(err)
		}
		if err := os.WriteFile(path, append([]byte("up: front\n"), text...), 0o600); err != nil {
			t.Fatal(err)
		}
		if l, n := cuts(); level == 0 || top != 0 || l != 0 || n == 0 {
			t.Errorf("%s: %d level and %d from its top, with its front up %d and %d", name, level, top, l, n)
		}
	}
}
