package picture_test

import (
	"fmt"
	"slices"
	"testing"

	"centrepop/layout/layouttest"
	"centrepop/layout/picture"
	"centrepop/layout/plan"
)

// At its step a loose part is in the picture and new; what no section of the joint shows has
// one of its own. What comes off again is in the picture of its step, and in no other.
func TestLoosePartsAreDrawn(t *testing.T) {
	t.Parallel()
	for job, want := range map[string]map[string][]string{
		"gatejack": {"upper-bearing": {"Lock collar"}, "housing": {"Handwheel hub"}, "stay": {"Key bar"}, "yoke": {"Stem", "Rain cone", "Stop collar 1", "Stop collar 2"}},
		"pugmill":  {"motor": {"Lifting link 1"}, "hopper": {"Water funnel"}},
	} {
		joints, whole := pictured(t, job)
		if drawn := slices.ContainsFunc(whole.Front.Shapes, func(s plan.Shape) bool { return s.Title == "Water funnel" }); drawn || job == "pugmill" && !slices.Contains(whole.Passing, "Water funnel") {
			t.Errorf("%s: the funnel is drawn in the whole machine, or not told of: %v", job, whole.Passing)
		}
		for name, titles := range want {
			for _, title := range titles {
				if !shown(joints[name], title, true) {
					t.Errorf("%s: no new %s", name, title)
				}
			}
		}
		if job == "pugmill" && shown(joints["hopper"], "Lifting link 1", false) {
			t.Error("a lifting link is there after it came off")
		}
	}
}

// shown tells whether a picture of a step has a part.
func shown(j *plan.JointPlan, title string, isNew bool) bool {
	return slices.ContainsFunc(j.Pictures, func(p plan.Picture) bool {
		return slices.ContainsFunc(p.Shapes, func(s plan.Shape) bool { return s.Title == title && s.New == isNew })
	})
}

// A machine stands on its lowest part that carries, whichever way is up; what hangs below it
// loose is none: the jack on its frame, 2-1/2 high, with its stem in the pit.
func TestFrontUp(t *testing.T) {
	t.Parallel()
	m, _ := load(t, "../../testdata/gatejack/job.yaml")
	a := picture.Draw(m)
	if a.Stands != plan.ThirdAngle {
		t.Errorf("stands in %q", a.Stands)
	}
	w, h := a.Front.MaxMm.XMm-a.Front.MinMm.XMm, a.Front.MaxMm.YMm-a.Front.MinMm.YMm
	if h < 2*w || a.End.MinMm.YMm > -8*25.4+0.01 || a.Front.MinMm.XMm > -9*25.4 {
		t.Errorf("%.0f wide, %.0f high; plan from %v", w, h, a.End.MinMm)
	}
	lying, _ := load(t, edited(t, "gatejack", [3]string{"job.yaml", "up: front\n", ""}))
	if b := picture.Draw(lying); b.Stands != "" || b.Front.MaxMm.XMm-b.Front.MinMm.XMm != h {
		t.Errorf("lies in %q", b.Stands)
	}
	metric, _ := load(t, edited(t, "pugmill", [3]string{"job.yaml", "tolerance: m\n", "tolerance: m\nup: front\n"}))
	if b := picture.Draw(metric); b.Stands != plan.FirstAngle {
		t.Errorf("stands in %q", b.Stands)
	}
}

// No picture of a step is empty: of what lies on another assembly than that of its step there is none.
func TestNoPictureIsEmpty(t *testing.T) {
	t.Parallel()
	m, _ := load(t, edited(t, "pugmill", [3]string{"job.yaml", "grille by hand to pour water; out before clay goes in.\", after: hopper, off: yes", "grille by hand to pour water.\", after: front-flange-weld"}))
	picture.Draw(m)
	for _, j := range m.Joints {
		for i, p := range j.Pictures {
			if len(p.Shapes) == 0 {
				t.Errorf("%s: picture %d shows nothing", j.Name, i+1)
			}
		}
	}
}

// A press joint that cannot be made, for nothing says what its shaft is of, is in no step: what lies on one of its parts is drawn
// nowhere, and there is no machine to draw.
func TestNothingStands(t *testing.T) {
	t.Parallel()
	const round = "part: %s\nkind: turned\n%sprofile:\n  outside: [{name: out, diameter: %d, fit: s6, length: 20}]\n%s"
	for material, drawn := range map[string]bool{"material: S355\n": true, "": false} {
		m, _ := layouttest.Load(t, layouttest.Write(t, map[string]string{
			"job.yaml": "job: J\nunits: mm\ntolerance: m\nparts: [hub.yaml, pin.yaml, lid.yaml]\njoints:\n  - {name: pin, press: {shaft: pin.out, bore: hub.bore}, level: front-with-front}\n" +
				"loose:\n  - {part: lid, how: laid on, after: pin, lies: [{on: hub.front, with: back}]}\n",
			"hub.yaml": fmt.Sprintf(round, "hub", "material: S355\n", 60, "  inside: [{name: bore, diameter: 30, fit: H7, length: 20}]\n"),
			"pin.yaml": fmt.Sprintf(round, "pin", material, 30, ""),
			"lid.yaml": fmt.Sprintf(round, "lid", "material: S355\n", 50, ""),
		}))
		if got := picture.Draw(m); (got != nil) != drawn || (len(m.Joints) > 0) != drawn || len(m.Bodies) < 2 {
			t.Errorf("%q: drawn %v, %d joints, %d bodies", material, got != nil, len(m.Joints), len(m.Bodies))
		}
	}
}
