package stand_test

import (
	"cmp"
	"fmt"
	"math"
	"testing"

	"centrepop/layout/assembly"
	"centrepop/layout/layouttest"
	"centrepop/layout/machine"
	"centrepop/layout/part"
	"centrepop/layout/plan"
	"centrepop/layout/stand"
	"centrepop/parts"
)

// A seal 60 x 80 x 8 stands in its bore as a ring from 70, halfway to the lip, to 80, up to
// the shoulder behind it and with its part: a collar of 72 reaches 1 into it, one of 69 does
// not, and one of 72 beyond it is in its way. The bore 80 is 8 long, the cap 20.
func TestSeals(t *testing.T) {
	t.Parallel()
	const (
		pin = "part: pin\ntitle: Pin\nkind: turned\nmaterial: C45\nstock: {round: 130 mm, length: 150 mm}\nprofile:\n  outside:\n    - {name: nose, diameter: 40, length: 10}\n    - {name: collar, diameter: %g, length: %g}\n    - {name: land, diameter: 60, length: %g}\n    - {name: flange, diameter: 120, length: 20}\nholes:\n  - {name: taps, face: front, circle: {pcd: 100, count: 4, first: 0}, size: M6 tap, depth: 15 mm}\n"
		lid = "part: cap\ntitle: Cap\nkind: turned\nmaterial: S235\nstock: {round: 130 mm, length: 30 mm}\nprofile:\n  outside: [{name: rim, diameter: 120, length: 20}]\n  inside: [{name: register, diameter: 80, fit: H8, length: 8, seat: \"seal 60x80x8, lip front\"}, {name: bore, diameter: 74, length: 12}]\nholes:\n  - {name: screws, face: front, circle: {pcd: 100, count: 4, first: 0}, size: M6 clearance}\n"
		job = "job: J\nunits: mm\nparts: [pin.yaml, cap.yaml]\njoints:\n  - {name: b, bolt: {through: cap.screws, into: pin.taps, bolt: M6 8.8}, face: back-on-front}\n"
	)
	for _, c := range []struct {
		collar, collarLong, landLong float64
		want                         string
	}{
		{69, 20, 30, ""}, // the cap's front lies 20 before the flange
		{72, 35, 15, "parts-overlap 1"},
		{72, 20, 30, "path-blocked"},
	} {
		m, _ := load(t, write(t, map[string]string{"pin.yaml": fmt.Sprintf(pin, c.collar, c.collarLong, c.landLong), "cap.yaml": lid, "job.yaml": job}))
		got := ""
		for _, p := range m.Problems {
			if p.Kind == plan.PartsOverlap {
				got = fmt.Sprint(p.Kind, " ", p.Args[2].Value)
			} else if p.Kind == plan.PathBlocked {
				got = string(p.Kind)
			}
			if got != "" && p.Args[0].Text != "seal of Cap" && p.Args[1].Text != "seal of Cap" {
				t.Errorf("%+v", p.Args)
			}
		}
		if got != c.want {
			t.Errorf("collar %v, %v long: %q, want %q: %+v", c.collar, c.collarLong, got, c.want, m.Problems)
		}
		seal := body(t, m, "seal of cap#1")
		if low := seal.Solid.Box().Low; math.Abs(low.Z+8) > 1e-9 || math.Abs(low.X+40) > 1e-9 || seal.Solid.Dist(assembly.Vec{X: 34.9, Z: -4}) < 0 || seal.Solid.Dist(assembly.Vec{X: 35.1, Z: -4}) > 0 {
			t.Errorf("%+v", low)
		}
	}
}

// What lies in grooves of the mill stands there: the ring of DIN 472 for a bore of 80 is 2.5 thick
// on a floor of 83.5 and keeps the seal, behind it, at the groove's front wall; that of DIN 471 for
// a shaft of 35 is 1.5 thick on a floor of 33, at the wall away from the coupling, and comes with
// it. The O-ring 92 × 1.5 in the back of the gland ring is flush with the rim's, 21 behind the front, against the outer
// wall, and no smaller than it was: π/4 · 1.5² of rubber.
func TestRingsInGrooves(t *testing.T) {
	t.Parallel()
	m, _ := load(t, "../../testdata/pugmill/job.yaml")
	box := func(part, id string) (on, ring assembly.Box) {
		return body(t, m, part).Solid.Box(), body(t, m, id).Solid.Box()
	}
	near := func(what string, got, want, within float64) {
		t.Helper()
		if math.Abs(got-want) > within {
			t.Errorf("%s: %v, want %v", what, got, want)
		}
	}
	gland, inside := box("gland-ring#1", "retaining ring of gland-ring#1")
	near("thickness", inside.Size().Z, 2.5, 1e-9)
	near("floor", inside.High.X, 83.5/2, 1e-9)
	near("front wall", gland.High.Z-inside.High.Z, 6.4, 1e-9)
	shaft, outside := box("auger-shaft#1", "coupling-guard ring")
	near("thickness", outside.Size().Z, 1.5, 1e-9)
	near("away from the coupling", outside.Low.Z-shaft.Low.Z, 6, 1e-9)
	if d := body(t, m, "coupling-guard ring").Solid; d.Dist(assembly.Vec{X: 16.4, Z: (outside.Low.Z + outside.High.Z) / 2}) < 0 || d.Dist(assembly.Vec{X: 16.6, Z: (outside.Low.Z + outside.High.Z) / 2}) > 0 {
		t.Error("its floor is not at 33")
	}
	_, rubber := box("gland-ring#1", "O-ring of gland-ring#1 face-seal")
	near("flush", rubber.Low.Z, -21, 1e-9)
	mean := rubber.High.X - math.Pi/4*1.5*1.5/rubber.Size().Z/2
	near("section", body(t, m, "O-ring of gland-ring#1 face-seal").Solid.Bulk().VolumeMm3/(2*math.Pi*mean), math.Pi/4*1.5*1.5, 0.02)
}

// A retaining ring keeps a seal of 80 in its bore, from 14 to 30 behind the front, where it is in that bore: by DIN 472 2.5 thick, at the
// wall of its groove away from the seal, which lies against the shoulder behind. In a groove of another bore, or round the
// outside, it keeps none.
func TestRingOfASeal(t *testing.T) {
	t.Parallel()
	for _, c := range []struct {
		groove      string
		front, back float64 // of the ring
	}{
		{"in: house, axial: 18", 18, 20.5}, {"in: wide, axial: 5", 0, 0}, {"in: neck, axial: 30", 0, 0},
	} {
		cap := layouttest.Model(t, "part: cap\nkind: turned\nmaterial: S235\nstock: {round: 130 mm, length: 60 mm}\nprofile:\n  outside: [{name: rim, diameter: 120, length: 20}, {name: neck, diameter: 110, length: 30}]\n"+
			"  inside: [{name: wide, diameter: 90, length: 14}, {name: house, diameter: 80, fit: H8, length: 16, seat: \"seal 60x80x8, lip front\"}, {name: bore, diameter: 74, length: 20}]\n"+
			"grooves:\n  - {name: ring, "+c.groove+", from: front, for: retaining-ring}\n")
		pin := layouttest.Model(t, "part: pin\nkind: shaft\nmaterial: C45\nstock: {round: 60, length: 40}\nprofile:\n  outside: [{name: body, diameter: 40, length: 20}]\n")
		m := stand.Of(&parts.Job{Joints: []*parts.Joint{{Name: parts.Text{Value: "j"}}}}, []*part.Model{cap, pin}, []*plan.JointPlan{{Name: "j", Placed: []plan.Placed{{Part: "cap", Copy: 1}, {Part: "pin", Copy: 1}}}})
		var front, back float64
		for _, b := range m.Bodies {
			if b.ID == "retaining ring of cap#1" {
				front, back = -b.Box().High.Z, -b.Box().Low.Z
			}
		}
		if math.Abs(front-c.front)+math.Abs(back-c.back) > 1e-9 {
			t.Errorf("%s: from %g to %g", c.groove, front, back)
		}
	}
}

// TestRingKeepsAHub: the ring of a shaft of 35 (DIN 471: 1.5 in a groove of 1.6) keeps a hub that came on from its front at the front wall of the groove that
// is named, else at the back one.
func TestRingKeepsAHub(t *testing.T) {
	t.Parallel()
	shaft := layouttest.Model(t, "part: shaft\nkind: shaft\nmaterial: C45\nstock: {round: 50, length: 110}\nprofile:\n  outside: [{name: seat, diameter: 35, length: 100}]\ngrooves:\n  - {name: other, in: seat, axial: 80, from: front, for: retaining-ring}\n  - {name: own, in: seat, axial: 40, from: front, for: retaining-ring}\n")
	hub := layouttest.Model(t, "part: hub\nkind: turned\nmaterial: C45\nstock: {round: 80, length: 60}\nprofile:\n  outside: [{name: rim, diameter: 70, length: 30}]\n  inside: [{name: bore, diameter: 35, length: 30}]\n")
	for from, front := range map[string]float64{"front": 40, "back": 40.1} {
		in := &parts.Joint{Name: parts.Text{Value: "j"}, Kind: parts.SlideKind, Slide: &parts.SlideJoint{KeptBy: parts.JointRef{Part: "shaft", Copy: 1, Feature: "own"}}}
		m := stand.Of(&parts.Job{Joints: []*parts.Joint{in}}, []*part.Model{shaft, hub}, []*plan.JointPlan{{
			Name: "j", Kind: parts.SlideKind, A: plan.JointEnd{Part: "hub", Copy: 1, Feature: "bore"}, B: plan.JointEnd{Part: "shaft", Copy: 1, Feature: "seat"},
			Placed: []plan.Placed{{Part: "shaft", Copy: 1}, {Part: "hub", Copy: 1, FrontMm: 10}}, Slide: &plan.SlidePlan{Ring: true, From: from},
		}})
		var at []float64
		for i := range m.Bodies {
			if b := &m.Bodies[i]; m.Roles[b.ID].Kind == stand.Ring {
				at = append(at, -b.Box().High.Z, -b.Box().Low.Z)
			}
		}
		if len(at) != 2 || math.Abs(at[0]-front)+math.Abs(at[1]-front-1.5) > 1e-9 {
			t.Errorf("from the %s: rings at %v", from, at)
		}
	}
}

// TestBearingRings: of a bearing 50 × 90 × 21.75 the cup is eight tenths as wide and the cone 20, each from its back inwards, its rings a tenth of what is between the
// two apart: 33 and 37. The rollers lie where both do. Both rings of a ball bearing are as wide as that.
func TestBearingRings(t *testing.T) {
	t.Parallel()
	length := func(mm float64) parts.Length { return parts.Length{Mm: mm, Pos: parts.Pos{Line: 1}} }
	in := &parts.Joint{Name: parts.Text{Value: "j"}, Kind: parts.BearingKind, Bearing: &parts.BearingJoint{Bore: length(50), Outside: length(90), Width: length(21.75)}}
	pin := layouttest.Model(t, "part: pin\nkind: shaft\nquantity: 2\nmaterial: C45\nstock: {round: 60, length: 70}\nprofile:\n  outside: [{name: seat, diameter: 50, length: 60}]\n")
	standing := func(b plan.BearingPlan) *machine.Machine {
		return &machine.Machine{Stand: stand.Of(&parts.Job{Joints: []*parts.Joint{in}}, []*part.Model{pin}, []*plan.JointPlan{{
			Name: "j", Kind: parts.BearingKind, A: plan.JointEnd{Part: "pin", Copy: 1}, B: plan.JointEnd{Part: "pin", Copy: 2},
			Placed: []plan.Placed{{Part: "pin", Copy: 1}, {Part: "pin", Copy: 2, FrontMm: 200}}, Bearing: &b,
		}})}
	}
	ball := plan.BearingPlan{CupBackMm: 10, LargeEndMm: 31.75, LargeEndDir: 1}
	ball.Ball, in.Bearing.Ball = true, true
	for _, id := range []string{"j outer ring", "j inner ring"} {
		if box := body(t, standing(ball), id).Box(); math.Abs(box.Low.Z+31.75) > 1e-9 || math.Abs(box.High.Z+10) > 1e-9 {
			t.Errorf("%s of a ball bearing: %+v", id, box)
		}
	}
	in.Bearing.Ball = false
	for _, wide := range []float64{20, 0} { // the cone's own width, or that of both
		all := standing(plan.BearingPlan{CupBackMm: 10, LargeEndMm: 31.75, LargeEndDir: 1, ConeWidthMm: wide})
		cup, cone, inner := body(t, all, "j cup"), body(t, all, "j cone"), 31.75-cmp.Or(wide, 21.75)
		for _, c := range []struct {
			of     *assembly.Body
			at, mm float64 // off the axis, from the front
			metal  bool
		}{
			{cup, 44.9, 20, true}, {cup, 45.1, 20, false}, {cup, 37.1, 20, true}, {cup, 36.9, 20, false}, {cup, 40, 10.1, true}, {cup, 40, 9.9, false}, {cup, 40, 27.3, true}, {cup, 40, 27.5, false},
			{cone, 25.1, 30, true}, {cone, 24.9, 30, false}, {cone, 32.9, 30, true}, {cone, 33.1, 30, false}, {cone, 30, 31.7, true}, {cone, 30, 31.8, false}, {cone, 30, inner + 0.1, true}, {cone, 30, inner - 0.1, false},
			{cone, 36.9, 20, true}, {cone, 37.1, 20, false}, {cone, 35, 27.3, true}, {cone, 35, 27.5, false}, {cone, 35, inner + 0.1, true}, {cone, 35, inner - 0.1, false},
		} {
			if d := c.of.Dist(assembly.Vec{X: c.at, Z: -c.mm}); d < 0 != c.metal {
				t.Errorf("%s, a cone of %g: %g at %g off, %g from the front", c.of.ID, wide, d, c.at, c.mm)
			}
		}
	}
}
