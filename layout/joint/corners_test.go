package joint_test

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"centrepop/layout/plan"
)

// A fillet lies where one part ends and the other goes on, and nowhere else. The gusset is
// 110 × 140 with a corner of 15 off, so 125 stand on the upright and 95 on the base; flush
// with the upright's edge it has one corner there, set in both. A tube of 50 has corners of
// radius 8 (EN 10219-2), so that its foot has 4 × 34 + 2π × 8 = 186 of corner round it, and
// stands flush on two sides of a rail of its own width. Where sides are not said, the fillet goes round both
// ends of 10 as well, but not into the notch. The upright of 320 has corners of 12,
// within a quarter of a millimetre of its edge for 2.4 more at each end. What is welded to the
// gusset before it stands changes nothing.
func TestFilletsLieInCorners(t *testing.T) {
	t.Parallel()
	const place = "type: fillet, sides: 2, process: MAG}\n    place: {on: front, with: left, from-left: 0 mm"
	const of4 = "gusset#4.outline, to: housing-plate.outline, type: fillet, sides: 2, process: MAG}\n    place: {on: back, with: left, from-right: 0 mm, from-bottom: 0 mm, front: left}\n    after: gusset-3"
	for _, c := range []struct {
		joint, old, now, flush string
		sides                  map[string]float64 // by side and what it lies along
		mm                     float64
	}{
		{"gusset-1", "", "", "front", map[string]float64{"back Housing plate": 125, "front Base plate": 95, "back Base plate": 95}, 315},
		{"gusset-2", "", "", "back", map[string]float64{"front Housing plate": 125, "front Base plate": 95, "back Base plate": 95}, 315},
		{"gusset-1", place, strings.Replace(place, "left: 0", "left: 4", 1), "", map[string]float64{"back Housing plate": 125, "front Housing plate": 125, "front Base plate": 95, "back Base plate": 95}, 440},
		{"gusset-1", place, strings.Replace(place, "left: 0", "left: 3", 1), "front", map[string]float64{"back Housing plate": 125, "front Base plate": 95, "back Base plate": 95}, 315},
		{"gusset-1", place, strings.Replace(place, "sides: 2, ", "", 1), "front", map[string]float64{"back Housing plate": 125, "front Base plate": 95, "back Base plate": 95, "top Housing plate": 10, "right Base plate": 10}, 335},
		{"gusset-1", place, strings.Replace(place, "sides: 2", "sides: 1", 1), "", map[string]float64{"back Housing plate": 125, "back Base plate": 95}, 220},
		{"gusset-1", of4, "gusset#4.outline, to: gusset#1.outline, type: fillet, process: MAG}\n    place: {on: front, with: back, at: [40, 60], top: up}\n    before: gusset-1", "front", map[string]float64{"back Housing plate": 125, "front Base plate": 95, "back Base plate": 95}, 315},
		{"upright", "", "", "", map[string]float64{"front Base plate": 301, "back Base plate": 301}, 602},
		{"stand-leg-1", "", "", "top front", map[string]float64{"bottom Stand rail 1": 38, "back Stand end 1": 38}, 76},
		{"stand-foot-1", "", "", "", map[string]float64{"front Stand foot 1": 46.5, "back Stand foot 1": 46.5, "top Stand foot 1": 46.5, "bottom Stand foot 1": 46.5}, 186},
	} {
		p := demoPlan(t, "pugmill")
		if c.old != "" {
			var err error
			if p, err = draft(editedDemo(t, "pugmill", "job.yaml", c.old, c.now)); err != nil {
				t.Fatal(err)
			}
		}
		w := jointNamed(t, p, c.joint).Weld
		got := map[string]float64{}
		for _, o := range w.Corners {
			got[o.Side+" "+o.Along] += o.LengthMm
		}
		bad := len(got) != len(c.sides) || math.Abs(w.LengthMm-c.mm) > 2 || strings.Join(w.Flush, " ") != c.flush
		for side, mm := range c.sides {
			bad = bad || math.Abs(got[side]-mm) > 1
		}
		if bad {
			t.Errorf("%s %s: %v, %v long, flush %v", c.joint, c.now, got, w.LengthMm, w.Flush)
		}
	}
}

// A length said that has no corner is found: 2 × 230, and 315 have one; 2 × 157 are there.
func TestFilletWithoutACorner(t *testing.T) {
	t.Parallel()
	const weld = "weld: {part: gusset#1.outline, to: housing-plate.outline, type: fillet,"
	for _, c := range []struct{ mm, want string }{
		{"230", "fillet-no-corner 460 315 front Gusset 1"},
		{"161.1", "fillet-no-corner 322.2 315 front Gusset 1"},
		{"160.9", ""},
	} {
		p, err := draft(editedDemo(t, "pugmill", "job.yaml", weld, weld+" length: "+c.mm+" mm,"))
		if err != nil {
			t.Fatal(err)
		}
		j, got := jointNamed(t, p, "gusset-1"), ""
		for _, q := range j.Problems {
			if q.Kind == plan.FilletNoCorner {
				got = fmt.Sprint(q.Kind, " ", q.Args[0].Value, " ", q.Args[1].Value, " ", q.Args[2].Text, " ", q.Args[3].Text)
			}
		}
		if got != c.want || j.Weld.LengthMm >= 300 {
			t.Errorf("%s: %q, want %q; %v long", c.mm, got, c.want, j.Weld.LengthMm)
		}
	}
}

// The wire of a fillet is for the corners there are: 7²/2 with the cap of the rule over 315,
// of which that set in by 4, with 440, takes 440/315; so does what it carries, each run less
// a throat of 4.95 at both ends (EN 1993-1-8 clause 4.5.1): 3 runs against 4.
func TestWireAndForceFollowTheCorners(t *testing.T) {
	t.Parallel()
	const place = "type: fillet, sides: 2, process: MAG}\n    place: {on: front, with: left, from-left: 0 mm"
	in, err := draft(editedDemo(t, "pugmill", "job.yaml", place, strings.Replace(place, "left: 0", "left: 4", 1)))
	if err != nil {
		t.Fatal(err)
	}
	flush, set := jointNamed(t, demoPlan(t, "pugmill"), "gusset-1"), jointNamed(t, in, "gusset-1")
	if got, want := set.Weld.DepositedKg/flush.Weld.DepositedKg, 440.0/315; math.Abs(got-want) > 0.02 {
		t.Errorf("wire %.3f times, want %.3f", got, want)
	}
	carries := func(j *plan.JointPlan) (kN float64) {
		for _, f := range j.Figures {
			if f.Label == "carries by design" {
				_, _ = fmt.Sscanf(f.Value, "%f", &kN)
			}
		}
		return kN
	}
	a := 2 * flush.Weld.ThroatMm
	if got, want := carries(set)/carries(flush), (440-4*a)/(315-3*a); math.Abs(got-want) > 0.02 {
		t.Errorf("carries %.3f times, want %.3f", got, want)
	}
}

// The seam round a mitre of a tube of 50 × 50 × 4 is 210 long in the middle of its wall: 34
// twice and 48.1 twice, and four quarters of ellipses of 8 and 4, stretched by √2, together
// 46; not the 170 of a square cut.
func TestSeamRoundAMitre(t *testing.T) {
	t.Parallel()
	if w := jointNamed(t, demoPlan(t, "pugmill"), "stand-corner-1").Weld; w.LengthMm != 210 {
		t.Errorf("%v", w.LengthMm)
	}
}

// A plate that lies flat on another is welded round its edge: it is set by its place, has no sides to be square
// on, and its tacks are said by its edges. One that stands is a tee.
func TestLapLiesFlat(t *testing.T) {
	t.Parallel()
	const flat = "gusset#1.outline, to: housing-plate.outline, type: fillet, sides: 2, process: MAG}\n    place: {on: front, with: left, from-left: 0 mm, from-bottom: 0 mm, front: left}"
	for with, want := range map[string]string{"with: back, at: [0, 0], top: up": "lies flat", "with: left, from-left: 10 mm, from-bottom: 0 mm, front: left": "square on both sides"} {
		p, err := draft(editedDemo(t, "pugmill", "job.yaml", flat, "gusset#1.outline, to: housing-plate.outline, type: fillet, process: MAG}\n    place: {on: front, "+with+"}"))
		if err != nil {
			t.Fatal(err)
		}
		j := jointNamed(t, p, "gusset-1")
		for _, s := range j.Steps {
			if s.Title == "Tack" && (!strings.Contains(s.Hold, want) || j.Weld.Lap != (want == "lies flat") || j.Weld.Lap == strings.Contains(s.Do[0], "long on front")) {
				t.Errorf("%s: %q %q", with, s.Hold, s.Do)
			}
		}
	}
}

// What a weld is set by says one gap in both its sentences, which part goes over the other, and that a thin wall
// is not bevelled where the job asks for it.
func TestSetAsItLies(t *testing.T) {
	t.Parallel()
	for _, c := range []struct{ joint, file, old, now, want string }{
		{"hopper-throat", "job.yaml", "top: up, gap: -0.5 mm", "top: up, gap: 0.4 mm", "0.4 clear of it. Gap 0.4."},
		{"hopper-throat", "hopper-throat.yaml", "diameter: 295.3", "diameter: 304", "0.5 over it"},
		{"hopper-throat", "", "", "", "0.5 inside it"},
		{"stand-corner-1", "job.yaml", "stand-rail#1.right, type: square", "stand-rail#1.right, type: v", "No v as the job says: 4 is welded square"},
	} {
		p := demoPlan(t, "pugmill")
		if c.old != "" {
			var err error
			if p, err = draft(wholeDemo(t, "pugmill", [3]string{c.file, c.old, c.now})); err != nil {
				t.Fatal(err)
			}
		}
		got := strings.Join(jointNamed(t, p, c.joint).Cautions, " ")
		for _, s := range jointNamed(t, p, c.joint).Steps {
			got += strings.Join(s.Do, " ")
		}
		if !strings.Contains(got, c.want) {
			t.Errorf("%s %s: %q", c.joint, c.now, got)
		}
	}
}

// A lug of 33 × 15 on a face is welded in all its corners where sides are not said: flush with an edge of the
// plate along its back and both ends, else all round. By EN 1993-1-8 clause 4.5.1(1) returned ends make that one
// run, so the z6 in S235 carries 360/(√3 · 0.8 · 1.25) = 207.8 N/mm² on 4.24 over 63 less two throats, 48.1 kN,
// and all round over 96, 84.7 kN. Said sides, or a length, leave out the ends; what is there is known all the same.
func TestLugRoundItsEnds(t *testing.T) {
	t.Parallel()
	plates := []string{
		"part: plate\nkind: plate\nmaterial: S235\nstock: {plate: 20 mm, cut: laser}\noutline: {rectangle: [150, 230]}\n",
		"part: lug\nkind: plate\nmaterial: S235\nstock: {plate: 15 mm, cut: laser}\noutline: {rectangle: [33, 40]}\n",
	}
	for _, c := range []struct {
		weld, top string
		mm, there float64
		round     bool
		says      []string
		carries   string
	}{
		{"", "0", 63, 63, true, []string{"on its back (33) and left (15) and right (15)", "No weld where it stands flush", "round the corners without a stop"}, "48 kN"},
		{"", "30", 96, 96, true, []string{"front (33)", "back (33)", "until both meet"}, "85 kN"},
		{", sides: 2", "30", 66, 66, false, []string{"turn and turn about on the two sides"}, ""},
		{", sides: 1", "0", 33, 33, false, []string{"From the middle outward."}, ""},
		{", length: 20", "0", 20, 63, false, []string{"z6, 20 long. From the middle outward."}, ""},
		{", sides: 2, length: 20", "30", 20, 66, false, []string{"z6, 20 long on each side. "}, ""},
	} {
		p := filed(t, "{name: j, weld: {part: lug.outline, to: plate.outline, type: fillet, size: 6"+c.weld+"}, place: {on: front, with: bottom, from-left: 12, from-top: "+c.top+", front: up}}", plates...)
		w := p.Joints[0].Weld
		got := p.Joints[0].How
		for _, s := range p.Joints[0].Steps {
			got += strings.Join(s.Do, " ")
		}
		carries := ""
		for _, f := range p.Joints[0].Figures {
			if f.Label == "carries by design" {
				carries = f.Value
			}
		}
		if w.LengthMm != c.mm || w.CornerMm != c.there || w.Round != c.round || !strings.HasPrefix(carries, c.carries) || c.carries == "" && carries != "" {
			t.Errorf("%s %s: %v of %v, round %v, carries %q", c.weld, c.top, w.LengthMm, w.CornerMm, w.Round, carries)
		}
		for _, want := range c.says {
			if !strings.Contains(got, want) {
				t.Errorf("%s %s: no %q in %q", c.weld, c.top, want, got)
			}
		}
	}
}

// A hub whose spigot of 36 goes through an arm of 12 and whose shoulder of 45 lies against its back has two corners,
// π · 36 = 113.1 and π · 45 = 141.4. From one side the first is meant, and the words say on which face; from both
// the two make 254.5. One that ends level in front has only that of its shoulder, also where the weld alone sets it so;
// without a shoulder both are alike.
func TestCornersOfABore(t *testing.T) {
	t.Parallel()
	hub := func(spigot, body float64) string {
		return fmt.Sprintf("part: hub\nkind: turned\nmaterial: S235\nstock: {round: 50, length: 40}\nprofile:\n  outside:\n    - {name: spigot, diameter: 36, length: %g}\n    - {name: body, diameter: %g, length: 15}\n", spigot, body)
	}
	const arm = "part: arm\nkind: plate\nmaterial: S235\nstock: {plate: 12, cut: laser}\noutline: {square: 100}\nbore: {diameter: 36, fit: H8}\n"
	const out = "}, place: {on: front, with: back, at: [0, 0], gap: -27}"
	for _, c := range []struct {
		spigot, body float64
		said         string
		mm, dia      float64
		says         string
	}{
		{20, 45, out, 113.1, 36, "On the front (113.1) of arm alone."},
		{20, 45, ", sides: 2" + out, 254.5, 36, "On the front (113.1) and back (141.37) of arm. "},
		{12, 45, out, 141.37, 45, "On the back (141.37) of arm alone."},
		{12, 45, "}, level: front-with-front", 141.37, 45, "On the back (141.37) of arm alone."},
		{20, 36, out, 113.1, 36, "On the front (113.1) of arm alone."},
		{20, 36, ", sides: 2" + out, 113.1, 36, "Weld on the front and the back of arm"},
	} {
		j := filed(t, "{name: j, weld: {part: hub.spigot, to: arm.bore, type: fillet, size: 5"+c.said+"}", hub(c.spigot, c.body), arm).Joints[0]
		got := ""
		for _, s := range j.Steps {
			got += strings.Join(s.Do, " ")
		}
		if math.Abs(j.Weld.LengthMm-c.mm) > 0.06 || j.Weld.DiameterMm != c.dia || !strings.Contains(got, c.says) {
			t.Errorf("%v %v%s: %v long round %v, %q", c.spigot, c.body, c.said, j.Weld.LengthMm, j.Weld.DiameterMm, got)
		}
	}
}

// A flat bar of 40 × 6 stands with its end on the face of a round disc: a fillet lies round that end, 2 × (40 + 6).
func TestWeldOnTheFaceOfARound(t *testing.T) {
	t.Parallel()
	const (
		disc = "part: disc\nkind: flange\nmaterial: S235\nstock: {plate: 10 mm, cut: laser}\noutline: {circle: 200}\nbore: {diameter: 40}\n"
		bar  = "part: bar\nkind: bar\nmaterial: S235\nbar: {flat: [40, 6], length: 150}\n"
	)
	j := filed(t, "{name: w, weld: {part: bar.left, to: disc.outline, type: fillet, size: 4}, place: {on: back, with: left, at: [0, 60], front: up}}", disc, bar).Joints[0]
	if j.Weld == nil || math.Abs(j.Weld.LengthMm-92) > 0.01 {
		t.Errorf("%+v, %v", j.Weld, j.Problems)
	}
}

// The mouth of a transition, 200 × 160 outside, on the back of a plate has a fillet all round it, 2 × (200 + 160).
func TestWeldOfAMouth(t *testing.T) {
	t.Parallel()
	const (
		plate  = "part: plate\nkind: plate\nmaterial: S235\nstock: {plate: 6 mm, cut: laser}\noutline: {rectangle: [260, 220]}\nbore: {diameter: 120}\n"
		hopper = "part: hopper\nkind: transition\nmaterial: S235\nstock: {sheet: 2, cut: laser}\ntransition: {width: 200, depth: 160, diameter: 120, height: 150, thickness: 2}\n"
	)
	j := filed(t, "{name: w, weld: {part: hopper.mouth, to: plate.outline, type: fillet, size: 2}, place: {on: back, with: front, at: [0, 0], top: up}}", plate, hopper).Joints[0]
	if len(j.Problems) > 0 || j.Weld == nil || math.Abs(j.Weld.LengthMm-720) > 0.01 {
		t.Errorf("%+v, %v", j.Weld, j.Problems)
	}
}

// Two posts of 40 stand on a rail, 250 between them. A cross bar of 244.96 that is welded to the first is 5 short of the
// second, one of 249.1 is welded there but has no corner, one of 250 has its corners there; of a post that stands nowhere nothing is known.
func TestWeldOfAShortBar(t *testing.T) {
	t.Parallel()
	const post = "{name: %s, weld: {part: post#%d.left, to: rail.front, type: fillet}, place: {on: front, with: left, from-left: %d, from-bottom: 0, front: left}}\n  - "
	const cross = "{name: near, weld: {part: cross.left, to: post#1.back, type: fillet}, place: {on: back, with: left, from-left: 100, from-bottom: 0, front: up}}\n  - {name: far, weld: {part: cross.right, to: post#2.front, type: fillet}}"
	for _, c := range []struct {
		long float64
		two  bool
		want plan.ProblemKind
		mm   float64
	}{{244.96, true, plan.WeldApart, 5}, {248.9, true, plan.WeldApart, 1.1}, {249.1, true, plan.WeldNoLength, 0}, {250, true, "", 0}, {250, false, plan.WeldUnplaced, 0}} {
		joints := fmt.Sprintf(post, "one", 1, 10)
		if c.two {
			joints += fmt.Sprintf(post, "two", 2, 300)
		}
		p, err := draft(jobOf(t, joints+cross, "part: rail\nkind: bar\nmaterial: S235\nbar: {square: 40, wall: 3, length: 400}\n", "part: post\nkind: bar\nquantity: 2\nmaterial: S235\nbar: {square: 40, wall: 3, length: 200}\n",
			fmt.Sprintf("part: cross\nkind: bar\nmaterial: S235\nbar: {square: 40, wall: 3, length: %g}\n", c.long)))
		if err != nil {
			t.Fatal(err)
		}
		kind, mm := plan.ProblemKind(""), 0.0
		for _, q := range p.Faults {
			if kind = q.Kind; kind == plan.WeldApart {
				mm = q.Args[2].Value
			}
		}
		if kind != c.want || mm != c.mm {
			t.Errorf("%+v: %v", c, p.Faults)
		}
	}
}
