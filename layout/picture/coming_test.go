package picture_test

import (
	"fmt"
	"math"
	"slices"
	"testing"

	"centrepop/layout/picture"
	"centrepop/layout/plan"
)

// ways are the directions in which what comes goes to its place, in the pictures as they lie: of
// both demos by hand from their drawings and from how each step says that it is done.
var wayTo = map[string]map[string]plan.XY{
	"pugmill": {
		"front-flange Barrel flange 1": right, "rear-flange Barrel flange 2": left, "inlet-flange Inlet flange": right, "inlet-stub Inlet stub": down,
		"delivery-die Die ring": right, "nozzle Barrel end": right,
		// Each cup to its shoulder, the shaft with its cone from the open side of the cup; the cone that the nut holds last.
		"front-bearing 30210 cup": right, "front-bearing 30208 cup": left, "front-bearing Auger shaft": right, "rear-bearing 30208 cone": left,
		"auger-flight Auger flight": right, "auger Auger hub": right, "gland Gland ring": right, "rear-cover Rear cover": left, "lantern Lantern": right,
		"barrel Barrel flange 2": right, "upright Housing plate": down, "gusset-1 Gusset 1": right, "gusset-2 Gusset 2": right, "gusset-3 Gusset 3": left, "gusset-4 Gusset 4": left,
		"stand-leg-1 Stand leg 1": up, "stand-leg-2 Stand leg 2": up, "stand-leg-3 Stand leg 3": up, "stand-leg-4 Stand leg 4": up,
		"stand-foot-1 Stand leg 1": down, "stand-foot-2 Stand foot 2": up, "stand-foot-3 Stand foot 3": up, "stand-foot-4 Stand foot 4": up, // the first foot stands on the floor
		"base-far Base plate": down, "guard-bracket-1 Cable bracket 1": left, "guard-bracket-2 Cable bracket 2": left, "housing Bearing housing": right, "switch-bracket Switch bracket": left,
		"motor Motor adapter": left, "motor Lifting link 1": left,
		// The flanges of the guard lie before the plate and behind the adapter.
		"coupling-guard Coupling guard": down, "coupling-guard Flexible coupling": left, "coupling-guard Gear motor 2.2 kW": left,
		"hopper-cone Hopper": down, "hopper-throat Hopper throat": down, "hopper Hopper ring": down, "hopper Water funnel": down, "die-nut Die nut": right,
	},
	"gatejack": {
		"top-flange Pedestal flange 1": right, "foot-flange Pedestal flange 2": left, "yoke-near Yoke plate": right, "stay Stay": up, "stay Key bar": left, "oil-spout Oil spout": {}, // leaning in one picture, from its clock in the other
		"lower-bearing LM48548/LM48510 cup": {}, "lower-bearing Drive nut": left, "upper-bearing LM48548/LM48510 cone": right, "upper-bearing Lock collar": right, // both cups, each its way
		"cap Cap ring": right, "housing Thrust housing": right, "housing Handwheel hub": right, "yoke Pedestal flange 2": right,
		"yoke-far Drip ring": right, "yoke Rain cone": right, "yoke Stem": left, "yoke Stop collar 2": left, "yoke Stop collar 1": {}, // through a window before or behind the picture
		"arm-post Yoke plate": left, "arm-bush Arm bush": left, "sheave-axle Cord arm": left, "sheave-lower 6001-2RS": {}, "sheave-lower Sheave axle": left, "arm Arm bush": right, // both bearings, each its way
	},
}

var (
	right, left = plan.XY{XMm: 1}, plan.XY{XMm: -1}
	up, down    = plan.XY{YMm: 1}, plan.XY{YMm: -1}
)

// In every step of both demos what comes has an arrow along its way, and nothing else; what is
// heavy comes, and what comes and has a number is heavy.
func TestEveryArrow(t *testing.T) {
	t.Parallel()
	with := []string{"Pillar", "Pillar 1", "Hopper spacer", "Auger lock plate", "Lifting link 2"} // with what their joint brings, or as its copy before
	for job, want := range wayTo {
		joints, _ := pictured(t, job)
		got := map[string]bool{}
		for name, j := range joints {
			var arrows []plan.Arrow
			for _, p := range j.Pictures {
				arrows = append(arrows, p.Arrows...)
			}
			for _, a := range arrows {
				key := fmt.Sprint(name, " ", a.Of)
				got[key] = true
				if dir, known := want[key]; !known || a.Dir != dir && (dir != plan.XY{} || len(arrows) == 1) {
					t.Errorf("%s: %s comes along %v, want %v", job, key, a.Dir, want[key])
				}
			}
			for _, p := range j.Pictures {
				for _, s := range p.Shapes {
					comes := slices.Contains(with, s.Title) || slices.ContainsFunc(arrows, func(a plan.Arrow) bool { return a.Of == s.Title })
					if s.Item > 0 && j.Frame == "" && s.New && !comes {
						t.Errorf("%s %s: no arrow of %s", job, name, s.Title)
					}
				}
			}
		}
		for key := range want {
			if !got[key] {
				t.Errorf("%s: no arrow of %s", job, key)
			}
		}
	}
}

// A block comes onto a base from its front; under the roof that the joint before it sets over that place it comes from below, from
// where nothing stands. One laid on the base beside a rib of 60 comes onto the face that it lies on, though beside the base it would be free after 45.
func TestComesAsItIsFree(t *testing.T) {
	t.Parallel()
	plate := func(name, thick, size string) string {
		return "part: " + name + "\nkind: plate\nmaterial: S235\nstock: {plate: " + thick + "}\noutline: {rectangle: [" + size + "]}\n"
	}
	weld := func(a, b, place, after string) string {
		return "  - {name: " + a + ", weld: {part: " + a + ".outline, to: " + b + ".outline, type: fillet, size: 4, length: 40}, place: {" + place + "}" + after + "}\n"
	}
	const laid = "loose:\n  - {part: chip, how: laid on it, after: wall, lies: [{on: base.front, with: back, at: [185, 50], top: up}]}\n"
	for _, c := range []struct {
		roof, block string // what they come after
		want        plan.XY
	}{{"block", "wall", right}, {"wall", "roof", up}} {
		m, pl := load(t, write(t, map[string]string{"base.yaml": plate("base", "20", "400, 200"), "wall.yaml": plate("wall", "10", "200, 100"), "roof.yaml": plate("roof", "10", "200, 150"), "block.yaml": plate("block", "30", "60, 60"), "chip.yaml": plate("chip", "10", "60, 40"),
			"job.yaml": "job: J\nunits: mm\nparts: [base.yaml, wall.yaml, roof.yaml, block.yaml, chip.yaml]\njoints:\n" + weld("wall", "base", "on: front, with: bottom, at: [0, 60], front: up", "") +
				weld("roof", "wall", "on: top, with: back, at: [0, -60], top: right", ", after: "+c.roof) + weld("block", "base", "on: front, with: back, at: [0, 0], top: up", ", after: "+c.block) + laid}))
		picture.Draw(m)
		got := map[string]plan.XY{}
		for _, j := range pl.Joints {
			for _, p := range j.Pictures {
				for _, a := range p.Arrows {
					got[a.Of] = a.Dir
				}
			}
		}
		if got["block"] != c.want || got["chip"] != right {
			t.Errorf("the roof after %s: %v", c.roof, got)
		}
	}
}

// Of the jack with its windows up and down, in the plane of its pictures, the upper stop collar comes in by the one above, 12 in behind the
// front of the guide tube, which lies 1/32 behind that of the frame.
func TestComesInTurned(t *testing.T) {
	t.Parallel()
	m, pl := load(t, edited(t, "gatejack", [3]string{"guide-tube.yaml", "{name: sight, clock: [90, 270]", "{name: sight, clock: [0, 180]"}))
	picture.Draw(m)
	for _, j := range pl.Joints {
		for _, p := range j.Pictures {
			for _, a := range p.Arrows {
				if a.Of == "Stop collar 1" && (a.Dir != down || math.Abs(a.AtMm.XMm-12.03125*25.4) > 1e-6 || a.AtMm.YMm != 0) {
					t.Errorf("%s: %+v", j.Name, a)
				} else if a.Of == "Stop collar 1" {
					return
				}
			}
		}
	}
	t.Error("no arrow of the stop collar")
}
