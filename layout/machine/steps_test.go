package machine_test

import (
	"math"
	"slices"
	"strings"
	"testing"

	"centrepop/layout"
	"centrepop/layout/plan"
	"centrepop/parts"
)

func pictured(t *testing.T, name string) (map[string]*plan.JointPlan, *plan.Arrangement) {
	t.Helper()
	job, err := parts.Load("../../testdata/" + name + "/job.yaml")
	if err != nil {
		t.Fatal(err)
	}
	w, err := layout.Work(job)
	if err != nil {
		t.Fatal(err)
	}
	w.Arrange()
	out := map[string]*plan.JointPlan{}
	for _, j := range w.Plan.Joints {
		out[j.Name] = j
	}
	return out, w.Plan.Arrangement
}

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
		{"front-flange-weld", []plan.CutKind{plan.CutAxis}, "Barrel flange 1", "Barrel flange 2", plan.ShapeBead, 1, 0, 0, 0, 1},
		{"inlet-stub", []plan.CutKind{plan.CutLength, plan.CutAcross}, "Inlet flange", "Die ring", plan.ShapeBead, 2, 0, -1, 1, 1},
		{"delivery-die", []plan.CutKind{plan.CutAxis}, "Barrel flange 1", "Barrel end", plan.ShapeScrew, 1, 1, 0, 1, 1},
		{"front-bearing", []plan.CutKind{plan.CutAxis}, "Auger shaft", "Gland ring", plan.ShapeRoller, 1, 1, 0, 4, 0},
		{"rear-bearing", []plan.CutKind{plan.CutAxis}, "Bearing housing", "Rear cover", plan.ShapeCup, 1, -1, 0, 4, 0},
		{"upright", []plan.CutKind{plan.CutAcross, plan.CutLength}, "Base plate", "Gusset 1", plan.ShapeBead, 2, 0, -1, 1, 1},
		{"gusset-2", []plan.CutKind{plan.CutLength, plan.CutLevel}, "Housing plate", "Gusset 3", plan.ShapeBead, 1, 1, 0, 1, 1}, // flush with the edge: no corner there,
		{"gusset-4", []plan.CutKind{plan.CutLength, plan.CutLevel}, "Gusset 1", "Bearing housing", plan.ShapeBead, 1, -1, 0, 1, 1},
		{"motor", []plan.CutKind{plan.CutBolt}, "Pillar", "Barrel flange 1", plan.ShapeBar, 1, -1, 0, 1, 1},
		{"base-far", []plan.CutKind{plan.CutLength}, "Stand rail 2", "Pillar", plan.ShapeScrew, 3, 0, -1, 1, 1},
		{"base-near", []plan.CutKind{plan.CutLength}, "Stand rail 1", "Pillar", plan.ShapeScrew, 3, 0, 0, 0, 1}, // hangs on it already
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

// The pug mill as a whole: 1180 over all, 430 wide over the feet, from 640 below its axis to
// the top of the hopper throat at 518.3.
func TestArrangement(t *testing.T) {
	t.Parallel()
	joints, a := pictured(t, "pugmill")
	for name, c := range map[string]struct {
		v    *plan.View
		w, h float64
	}{"front": {&a.Front, 1180, 1158.27}, "end": {&a.End, 430, 1158.27}, "top": {&a.Top, 1180, 430}} {
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
	// Of each ring of screws two, and the nut of the hub; no stud out of its place, and none of
	// the stand, whose bolts lie beside the axis.
	screws := 1
	for _, j := range joints {
		if j.Bolt != nil && j.Bolt.Class != "" && !strings.Contains(j.A.Part+j.B.Part, "stand-") {
			screws += 2
		}
	}
	if kinds[plan.ShapeRoller] != 2 || kinds[plan.ShapeScrew] != screws || kinds[plan.ShapeBar] != 1 {
		t.Errorf("kinds %v, %d screws", kinds, screws)
	}
	if !slices.Equal(a.Beside, []string{"Pillar", "Stand rail", "Stand leg", "Stand foot", "Gusset", "Guard bracket"}) || len(a.Front.Behind) != 5 {
		t.Errorf("beside %v at %v", a.Beside, a.Front.Behind)
	}
}
