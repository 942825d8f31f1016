package joint_test

import (
	"slices"
	"strings"
	"testing"

	"centrepop/layout/plan"
)

// The branch of the barrel is welded before anything is bolted to the flanges at
// its ends, unless the job wants it otherwise; that is a flaw then.
func TestWeldBeforeBolting(t *testing.T) {
	t.Parallel()
	const was = "after: [inlet-flange-weld, front-flange-weld, rear-flange-weld]"
	for _, c := range []struct {
		after string
		late  bool // after the first bolted joint of the barrel
	}{{was, false}, {"after: hopper-cone", false}, {"after: barrel", true}} {
		p, err := draft(editedDemo(t, "pugmill", "job.yaml", was, c.after))
		if err != nil {
			t.Fatal(err)
		}
		weld := jointNamed(t, p, "inlet-stub")
		if got := slices.ContainsFunc(weld.Problems, func(p plan.Problem) bool { return p.Kind == plan.WeldLate && p.Args[0].Text == "barrel" }); got != c.late {
			t.Errorf("%s: %v", c.after, weld.Problems)
		}
		for _, bolt := range []string{"delivery-die", "hopper"} {
			if n := jointNamed(t, p, bolt).N; n < weld.N {
				t.Errorf("%s: %s is joint %d, the weld %d", c.after, bolt, n, weld.N)
			}
		}
	}
}

// What is clamped between two bolted parts is bolted too: a weld to what it stands on comes before
// the bolts (common practice), as it is where the job does not say otherwise.
func TestWeldBeforeClamping(t *testing.T) {
	t.Parallel()
	const joints = "{name: bolts, bolt: {through: a.bolts, stack: [wall.bolts], into: b.bolts, bolt: M10 8.8}, face: back-on-front}\n" +
		"  - {name: wall-weld, weld: {part: wall.outline, to: base.outline, type: fillet, size: 4, sides: 2}, place: {on: front, with: bottom, from-left: 100, from-bottom: 20, front: left}}\n" +
		"  - {name: rib-weld, weld: {part: rib.outline, to: base.outline, type: fillet, size: 4, sides: 2}, place: {on: front, with: bottom, from-left: 20, from-bottom: 20, front: left}}"
	plate := func(name, outline, size string) string {
		text := "part: " + name + "\nkind: plate\nmaterial: S235\nstock: {plate: 10, cut: laser}\noutline: {rectangle: " + outline + "}\n"
		if size != "" {
			text += "holes: [{name: bolts, at: [[0, 30]], size: " + size + "}]\n"
		}
		return text
	}
	p, err := draft(jobOf(t, joints, plate("base", "[200, 160]", ""), plate("wall", "[120, 120]", "M10 clearance"), plate("rib", "[60, 60]", ""),
		plate("a", "[80, 100]", "M10 clearance"), plate("b", "[80, 100]", "M10 tap")))
	if err != nil {
		t.Fatal(err)
	}
	if bolts, rib := jointNamed(t, p, "bolts").N, jointNamed(t, p, "rib-weld").N; rib > bolts {
		t.Errorf("the weld is joint %d, the bolts %d", rib, bolts)
	}
}

// The cone of the rear bearing has its back 1.5 mm beyond the seat of 18 mm: the
// nut reaches it until the seat is 1 mm, the recess of a nut, longer than that.
func TestNutReachesTheCone(t *testing.T) {
	t.Parallel()
	p, err := draft(editedDemo(t, "pugmill", "auger-shaft.yaml", "fit: k6, length: 18", "fit: k6, length: 20.4"))
	if err != nil {
		t.Fatal(err)
	}
	if j := jointNamed(t, p, "rear-bearing"); slices.ContainsFunc(j.Problems, func(p plan.Problem) bool { return p.Kind == plan.NutStops }) {
		t.Errorf("%v", j.Problems)
	}
}

// A part that no joint fastens comes with the step that it is said after.
func TestLoose(t *testing.T) {
	t.Parallel()
	p := demoPlan(t, "gatejack")
	j := jointNamed(t, p, "yoke")
	steps := j.Steps
	var last []string
	for i, s := range steps[len(steps)-4:] {
		if s.Title != "Put in" || s.N != len(steps)-3+i {
			t.Errorf("step %d: %q", s.N, s.Title)
		}
		name, _, _ := strings.Cut(s.Do[0], ": ")
		last = append(last, name)
	}
	if want := []string{"2 × Stop collar", "Stem", "Rain cone", "Rod 1/2-13 UNC x 36 in, nuts, wall plate"}; !slices.Equal(last, want) || len(j.PutIn) != 4 || j.PutIn[2] != "Rain cone" {
		t.Errorf("%q and %q, want %q", last, j.PutIn, want)
	}
}

// The collar that adjusts the upper cone goes on before the end float is set by it.
func TestLooseNutBeforeItIsSet(t *testing.T) {
	t.Parallel()
	var titles []string
	for i, s := range jointNamed(t, demoPlan(t, "gatejack"), "upper-bearing").Steps {
		if s.N != i+1 {
			t.Errorf("step %d has number %d", i+1, s.N)
		}
		titles = append(titles, s.Title)
	}
	if want := []string{"Grease", "Cone of upper bearing", "Put in", "Set the end float"}; !slices.Equal(titles, want) {
		t.Errorf("%q, want %q", titles, want)
	}
}

// What keeps a hub at the end of its shaft goes on after the hub, however the job lists them (common practice).
func TestHubBeforeItsKeeper(t *testing.T) {
	t.Parallel()
	const joints = "{name: cap, bolt: {through: plate.screw, into: axle.tap, bolt: M6 8.8}, face: back-on-front}\n" +
		"  - {name: hub, slide: {hub: wheel.bore, on: axle.seat, kept-by: axle.tap}}"
	p := filed(t, joints,
		"part: axle\nkind: shaft\nmaterial: C45\nstock: {round: 35 mm}\nprofile: {outside: [{name: seat, diameter: 20, fit: h6, length: 40}, {name: body, diameter: 30, length: 60}]}\nholes: [{name: tap, at: [[0, 0]], size: M6 tap, depth: 16}]\nkeyways: [{name: key, in: seat, length: 30}]\n",
		"part: wheel\nkind: turned\nmaterial: C45\nstock: {round: 85 mm}\nprofile: {outside: [{diameter: 80, length: 40.5}], inside: [{name: bore, diameter: 20, fit: H7, length: 40.5}]}\nkeyways: [{name: key, in: bore}]\n",
		"part: plate\nkind: turned\nmaterial: C45\nstock: {round: 35 mm}\nprofile: {outside: [{diameter: 32, length: 6}]}\nholes: [{name: screw, at: [[0, 0]], size: M6 clearance}]\n")
	if hub, keeper := jointNamed(t, p, "hub").N, jointNamed(t, p, "cap").N; hub > keeper {
		t.Errorf("the hub is joint %d, its end plate %d", hub, keeper)
	}
}
