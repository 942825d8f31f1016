package machine_test

import (
	"cmp"
	"os"
	"slices"
	"strings"
	"testing"

	"centrepop/layout/assembly"
	"centrepop/layout/plan"
	"centrepop/layout/words"
)

// edited is a demo job with texts of its files replaced.
func edited(t *testing.T, job string, edits ...[3]string) string {
	t.Helper()
	dir := t.TempDir()
	if err := os.CopyFS(dir, os.DirFS("../../testdata/"+job)); err != nil {
		t.Fatal(err)
	}
	for _, e := range edits {
		src, err := os.ReadFile(dir + "/" + e[0])
		if err != nil {
			t.Fatal(err)
		}
		if !strings.Contains(string(src), e[1]) {
			t.Fatalf("%s has no %q", e[0], e[1])
		}
		if err := os.WriteFile(dir+"/"+e[0], []byte(strings.Replace(string(src), e[1], e[2], 1)), 0o600); err != nil {
			t.Fatal(err)
		}
	}
	return dir + "/job.yaml"
}

// The loose parts of the jack, by hand from its drawings in inches. The tube's front lies 1/32
// under the flange's, at z = -1/32, its back 24 on: the key bar 20-1/2 deep ends there and is
// 2-1/2 long, its upper edge 0.22 under the tube's outside of 1-3/4; one stop collar ends 18
// deep, the other begins 7-1/4 under the tube; the stem of 37-3/4 begins 27 over its back. The
// hub of 1 lies on the collar of 7/8, whose back lies 2.092 behind the nut's front, and the
// cone 3/8 over the hub with its large end down.
func TestLoosePartsLie(t *testing.T) {
	t.Parallel()
	const mm, tube = 25.4, -1.0 / 32
	m, _ := load(t, "../../testdata/gatejack/job.yaml")
	at := func(id string, x, y [2]float64, z [2]float64) {
		boxed(t, m, id, assembly.Vec{X: mm * x[0], Y: mm * y[0], Z: mm * z[0]}, assembly.Vec{X: mm * x[1], Y: mm * y[1], Z: mm * z[1]})
	}
	round := func(id string, r, low, long float64) {
		at(id, [2]float64{-r, r}, [2]float64{-r, r}, [2]float64{low, low + long})
	}
	at("key-bar#1", [2]float64{-0.125, 0.125}, [2]float64{1.53 - 1.125, 1.53}, [2]float64{tube - 20.5, tube - 18})
	round("stop-collar#1", 1.46875, tube-18, 0.5)
	round("stop-collar#2", 1.46875, tube-24-7.25-0.5, 0.5)
	round("stem#1", 0.5, tube-24+27-37.75, 37.75)
	front := body(t, m, "drive-nut#1").Box().High.Z / mm
	round("lock-collar#1", 1, front-2.092, 0.875)
	round("handwheel-hub#1", 2, front-2.092+0.875, 1)
	round("rain-cone#1", 3.5, front-2.092+0.875+1+0.375, 2.5)
	if b := body(t, m, "rain-cone#1"); b.Pose.Z != assembly.AxisZ.Times(-1) {
		t.Errorf("the cone looks to %v", b.Pose.Z)
	}
}

// A stop collar of 2-3/4 by 1/2 goes on edge through a window of 1-1/2 by 4 and turns in a bore
// of 3.068; not without the window, and not one of 7/8 thick, whose corners are 2.88 apart but
// which is no way in A key bar that reaches through the tube lies in it. What
// a collar lies on comes first. What comes off again is not in the way of what comes later, here the guard, and is held against what
// stands then.
func TestLoosePartsComeIn(t *testing.T) {
	t.Parallel()
	const window, slot = "{name: sight, clock: [90, 270], axial: 12, from: front, window: {around: 1-1/2, along: 4, corner: 1/2}}", "window: {around: 1-1/2"
	for _, c := range []struct {
		job  string
		edit [3]string
		want plan.ProblemKind
	}{
		{"gatejack", [3]string{"guide-tube.yaml", window, "{name: sight, clock: [90, 270], axial: 12, from: front, size: 1/4, depth: through}"}, plan.PathBlocked},
		{"gatejack", [3]string{"guide-tube.yaml", slot, "window: {around: 0.45, along: 4, corner: 0.1}} # "}, plan.PathBlocked},
		{"gatejack", [3]string{"guide-tube.yaml", slot, "window: {around: 1"}, ""},
		{"gatejack", [3]string{"job.yaml", "from-top: 0.22", "from-top: 0"}, plan.PartsOverlap},
		{"gatejack", [3]string{"job.yaml", "until the end float is set.\", after: upper-bearing", "until the end float is set.\", after: stay"}, plan.LaidEarly},
		{"pugmill", [3]string{"job.yaml", "lies: [{on: motor-adapter.back, with: back, at: [-100, 200]", "lies: [{on: motor-adapter.back, with: back, gap: -4, at: [-100, 200]"}, plan.PartsOverlap},
	} {
		m, _ := load(t, edited(t, c.job, c.edit))
		m.Review()
		got := plan.ProblemKind("")
		for _, p := range m.Problems {
			if p.Kind == plan.PathBlocked || p.Kind == plan.PartsOverlap || p.Kind == plan.LaidEarly {
				got = p.Kind
			}
		}
		if got != c.want {
			t.Errorf("%v: %q, want %q", c.edit, got, c.want)
		}
	}
}

// A lid laid on a rib comes after the joint that brings the rib: of two, welded on by the first and the
// second joint.
func TestLaidEarly(t *testing.T) {
	t.Parallel()
	place := func(bottom string) string {
		return ", place: {on: front, with: bottom, from-left: 30, from-bottom: " + bottom + ", front: down}}\n"
	}
	joints := ribWeld + place("20") + strings.ReplaceAll(strings.ReplaceAll(ribWeld, "name: rib", "name: other"), "rib.outline", "rib#2.outline") + place("80")
	for _, c := range []struct{ after, on, want string }{
		{"rib", "rib#1", ""}, {"other", "rib#1", ""}, {"other", "rib#2", ""}, {"rib", "rib#2", "laid-early lid rib rib 2 other"}, {"rib", "base", ""},
	} {
		m, _ := load(t, write(t, map[string]string{"base.yaml": basePart, "rib.yaml": ribPart, "lid.yaml": "part: lid\nkind: plate\nquantity: 1\nmaterial: S235\nstock: {plate: 5 mm}\noutline: {rectangle: [20, 10]}\n",
			"job.yaml": strings.Replace(ribJob, "rib.yaml", "rib.yaml, lid.yaml", 1) + joints + "loose:\n  - {part: lid, how: laid on, after: " + c.after + ", lies: [{on: " + c.on + ".front, with: back}]}\n"}))
		if got := argued(m, plan.LaidEarly); got != c.want {
			t.Errorf("after %s on %s: %q, want %q", c.after, c.on, got, c.want)
		}
	}
}

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
	a := m.Pictures()
	if a.Stands != plan.ThirdAngle {
		t.Errorf("stands in %q", a.Stands)
	}
	w, h := a.Front.MaxMm.XMm-a.Front.MinMm.XMm, a.Front.MaxMm.YMm-a.Front.MinMm.YMm
	if h < 2*w || a.End.MinMm.YMm > -8*25.4+0.01 || a.Front.MinMm.XMm > -9*25.4 {
		t.Errorf("%.0f wide, %.0f high; plan from %v", w, h, a.End.MinMm)
	}
	lying, _ := load(t, edited(t, "gatejack", [3]string{"job.yaml", "up: front\n", ""}))
	if b := lying.Pictures(); b.Stands != "" || b.Front.MaxMm.XMm-b.Front.MinMm.XMm != h {
		t.Errorf("lies in %q", b.Stands)
	}
	metric, _ := load(t, edited(t, "pugmill", [3]string{"job.yaml", "tolerance: m\n", "tolerance: m\nup: front\n"}))
	if b := metric.Pictures(); b.Stands != plan.FirstAngle {
		t.Errorf("stands in %q", b.Stands)
	}
}

// A nut 16 high on a thread of 20: three quarters of its own are 12, less than 0.8 of the diameter. On another pitch it is a stop.
func TestNutsEngage(t *testing.T) {
	t.Parallel()
	for _, c := range []struct{ thread, gap, want string }{
		{"M30", "-16", ""},
		{"M30", "-11.8", ""},
		{"M30", "-5", "nut-hangs Nut Pin end 5 12"},
		{"M30x2", "-16", "nut-pitch Nut Pin end M30x2 M30"},
		{"M36", "-16", ""}, // over it, and not on it
	} {
		got := found(t, map[string]string{
			"job.yaml": "job: J\nunits: mm\ntolerance: m\nparts: [plate.yaml, pin.yaml, nut.yaml]\njoints:\n  - {name: pin, press: {shaft: pin.seat, bore: plate.bore}, level: front-with-front}\n" +
				"loose:\n  - {part: nut, how: screwed on by hand, after: pin, lies: [{on: pin.back, with: front, gap: " + c.gap + "}]}\n",
			"plate.yaml": "part: plate\ntitle: Plate\nkind: plate\nmaterial: S235\nstock: {plate: 20, cut: laser}\noutline: {square: 120}\nbore: {diameter: 32, fit: H7, leave: 2}\n",
			"pin.yaml":   "part: pin\ntitle: Pin\nkind: turned\nmaterial: C45\nstock: {round: 36, length: 44}\nprofile:\n  outside: [{name: seat, diameter: 32, fit: s6, length: 20}, {name: end, thread: M30, length: 20}]\nchamfers: [{edge: seat-front, size: 1, angle: 15, for: lead-in}]\n",
			"nut.yaml":   "part: nut\ntitle: Nut\nkind: turned\nmaterial: C45\nstock: {round: 60, length: 20}\nprofile:\n  outside: [{name: body, diameter: 55, length: 16}]\n  inside: [{name: thread, thread: " + c.thread + ", length: 16}]\n",
		}, plan.NutHangs, plan.NutPitch)
		if got != c.want {
			t.Errorf("%s, %s: %q, want %q", c.thread, c.gap, got, c.want)
		}
	}
}

// The jack's stem, by hand: its lower collar begins 7-1/4 under the tube, the yoke plate of 3/4
// ends 1/32 + 3/4 under it: 6.469 in. Its keyway of 10-1/4 has its middle 25-3/8 from its front,
// 27 over the tube's back: it ends 3-1/2 under that back end, whose key bar ends 3-1/2 over it,
// 7 free; one of 8-1/4 ends 1 earlier, 152 mm. A tenth of the way is looked for what stops it.
func TestInUse(t *testing.T) {
	t.Parallel()
	const way = "travels: {front: 6-1/4, with: [stop-collar]}"
	for _, c := range []struct{ file, from, to, want string }{
		{"", "", "", ""},
		{"job.yaml", way, "travels: {front: 6.47, with: [stop-collar]}", ""}, // within what two bodies may touch
		{"job.yaml", way, "travels: {front: 6.5, with: [stop-collar]}", "travel-strikes Stop collar 2, Yoke plate, 164, 165, front"},
		{"job.yaml", way, "travels: {back: 0.5, with: [stop-collar]}", "travel-runs Stem, 6, 0, front; travel-strikes Stop collar 1, Key bar, 0, 13, back"},
		{"job.yaml", way, "travels: {front: 5.5, with: [stop-collar]}", "travel-runs Stem, 14, 140, front"},
		{"stem.yaml", "along: 10-1/4", "along: 8-1/4", "travel-strikes Stem, Key bar, 152, 159, front"},
	} {
		var edits [][3]string
		if c.file != "" {
			edits = append(edits, [3]string{c.file, c.from, c.to})
		}
		m, _ := load(t, edited(t, "gatejack", edits...))
		var got []string
		for _, p := range m.Problems {
			if p.Kind == plan.TravelStrikes || p.Kind == plan.TravelRuns {
				var args []string
				for _, a := range p.Args {
					args = append(args, cmp.Or(a.Text, words.Trim(a.Value, 0)))
				}
				got = append(got, string(p.Kind)+" "+strings.Join(args, ", "))
			}
		}
		if strings.Join(got, "; ") != c.want {
			t.Errorf("%s %q: %q, want %q", c.file, c.to, got, c.want)
		}
	}
}

// A screw of M16x1.5 lies in its tapped hole, 14.5 drilled, by its flank, 0.75, and in a hole of another pitch or
// beside its axis it is in the way. Its end, 22 deep in a plate of 20, is in what that lies on by 2.
func TestScrewInItsTap(t *testing.T) {
	t.Parallel()
	for _, c := range []struct{ thread, x, gap, want string }{
		{"M16x1.5", "-30", "-19", ""},
		{"M16x1.5", "-30", "-22", "parts-overlap Base Screw 2"},
		{"M16x1.5", "-29", "-19", "parts-overlap Plate Screw 1.75"},
		{"M16", "-30", "-19", "parts-overlap Plate Screw 0.75"},
	} {
		got := found(t, map[string]string{
			"job.yaml": "job: J\nunits: mm\ntolerance: m\nparts: [base.yaml, plate.yaml, screw.yaml]\njoints:\n" +
				"  - {name: plate, weld: {part: plate.outline, to: base.outline, type: fillet, size: 5}, place: {on: front, with: back, at: [0, 0], top: up}}\n" +
				"loose:\n  - {part: screw, how: screwed down, after: plate, lies: [{on: plate.front, with: back, at: [" + c.x + ", 0], gap: " + c.gap + "}]}\n",
			"base.yaml":  "part: base\ntitle: Base\nkind: plate\nmaterial: S235\nstock: {plate: 20, cut: laser}\noutline: {square: 120}\n",
			"plate.yaml": "part: plate\ntitle: Plate\nkind: plate\nmaterial: S235\nstock: {plate: 20, cut: laser}\noutline: {square: 100}\nholes: [{name: screw, at: [[-30, 0]], size: M16x1.5 tap}]\n",
			"screw.yaml": "part: screw\ntitle: Screw\nkind: turned\nmaterial: C45\nstock: {round: 40, length: 90}\nprofile:\n  outside: [{name: head, diameter: 38, length: 20}, {name: thread, thread: " + c.thread + ", length: 55}]\n",
		}, plan.PartsOverlap)
		if got != c.want {
			t.Errorf("%s at %s, %s: %q, want %q", c.thread, c.x, c.gap, got, c.want)
		}
	}
}

// A pin of 90 with its head of 36 goes into the hole of 22 of a wall from between that and another one, 150 off;
// from between walls 80 apart it does not, and from outside its head, 60 behind the wall's face, does not pass.
func TestFromBetween(t *testing.T) {
	t.Parallel()
	for right, want := range map[string]string{"240": "", "170": "path-blocked Pin Wall 1 60"} {
		wall := func(n, left string) string {
			return "  - {name: w" + n + ", weld: {part: wall#" + n + ".outline, to: base.outline, type: fillet, size: 5}, place: {on: front, with: bottom, from-left: " + left + ", from-bottom: 20, front: left}}\n"
		}
		got := found(t, map[string]string{
			"job.yaml":  "job: J\nunits: mm\ntolerance: m\nparts: [base.yaml, wall.yaml, pin.yaml]\njoints:\n" + wall("1", "80") + wall("2", right) + "loose:\n  - {part: pin, how: put in by hand, after: w2, lies: [{on: wall#1.front, with: back, at: [20, 20], gap: -60}]}\n",
			"base.yaml": "part: base\ntitle: Base\nkind: plate\nmaterial: S235\nstock: {plate: 20, cut: laser}\noutline: {rectangle: [400, 300]}\n",
			"wall.yaml": "part: wall\ntitle: Wall\nkind: plate\nquantity: 2\nmaterial: S235\nstock: {plate: 10, cut: laser}\noutline: {rectangle: [200, 200]}\nholes: [{name: pin, at: [[20, 20]], size: 22}]\n",
			"pin.yaml":  "part: pin\ntitle: Pin\nkind: turned\nmaterial: C45\nstock: {round: 40, length: 100}\nprofile:\n  outside: [{name: body, diameter: 20, length: 70}, {name: head, diameter: 36, length: 20}]\n",
		}, plan.PathBlocked)
		if got != want {
			t.Errorf("%s from the left: %q, want %q", right, got, want)
		}
	}
}

// A knob with a blind tapped hole goes on a stud that a press holds by 15, as deep as its flank (M16: 0.92); one
// of another pitch lies in it, and its hole is shut.
func TestKnobOnItsStud(t *testing.T) {
	t.Parallel()
	for thread, want := range map[string]string{"M16": "", "M16x1.5": "parts-overlap Stud Knob 0.75; hole-dead-end hole Knob Stud"} {
		got := found(t, map[string]string{
			"job.yaml": "job: J\nunits: mm\ntolerance: m\nparts: [plate.yaml, stud.yaml, knob.yaml]\njoints:\n  - {name: stud, press: {shaft: stud.seat, bore: plate.bore}, level: front-with-front}\n" +
				"loose:\n  - {part: knob, how: screwed on, after: stud, lies: [{on: stud.back, with: front, gap: -15}]}\n",
			"plate.yaml": "part: plate\ntitle: Plate\nkind: plate\nmaterial: S235\nstock: {plate: 20, cut: laser}\noutline: {square: 120}\nbore: {diameter: 32, fit: H7, leave: 2}\n",
			"stud.yaml":  "part: stud\ntitle: Stud\nkind: turned\nmaterial: C45\nstock: {round: 36, length: 44}\nprofile:\n  outside: [{name: seat, diameter: 32, fit: s6, length: 20}, {name: end, thread: M16, length: 20}]\nchamfers: [{edge: seat-front, size: 1, angle: 15, for: lead-in}]\n",
			"knob.yaml":  "part: knob\ntitle: Knob\nkind: turned\nmaterial: C45\nstock: {round: 60, length: 34}\nprofile:\n  outside: [{name: body, diameter: 55, length: 30}]\nholes: [{name: hole, face: front, at: [[0, 0]], size: " + thread + " tap, depth: 18}]\n",
		}, plan.PartsOverlap, plan.HoleDeadEnd)
		if got != want {
			t.Errorf("%s: %q, want %q", thread, got, want)
		}
	}
}
