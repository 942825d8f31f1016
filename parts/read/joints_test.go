package read

import (
	"errors"
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"centrepop/parts"
)

const jointParts = `part: plate
kind: plate
quantity: 2
material: S235
outline: {circle: 100}
thickness: 10
bore: {diameter: 40}
holes:
  - {name: bolts, circle: {pcd: 80, count: 4}, size: M8 clearance}
`

const jointTube = `part: tube
kind: tube
material: S235
tube: {outside: 40, wall: 4, length: 100}
radial:
  - {name: window, clock: [0, 120], axial: 50, from: front, size: 8, depth: through}
`

func loadJoints(t *testing.T, joints string) (*parts.Job, error) {
	t.Helper()
	dir := t.TempDir()
	for name, text := range map[string]string{
		"plate.yaml": jointParts, "tube.yaml": jointTube,
		"job.yaml": "job: J\nunits: mm\nparts: [plate.yaml, tube.yaml]\njoints:\n" + joints,
	} {
		if err := os.WriteFile(filepath.Join(dir, name), []byte(text), 0o600); err != nil {
			t.Fatal(err)
		}
	}
	return Load(filepath.Join(dir, "job.yaml"))
}

func TestJoints(t *testing.T) {
	j, err := loadJoints(t, `
  - name: one
    press: {shaft: tube.outside, bore: plate#2.bore, fit: H7/p6, friction: 0.12, method: heat, clearance: 0.05}
    level: back-with-front
    below: 1
    rotate: -30
    in-line: [[tube.window-2, plate#2.top], [tube.window, up]]
  - name: two
    bolt: {through: plate#1.bolts, into: plate#2.bolts, bolt: 5/16-18 UNC grade 5, head: socket, washer: yes, nut: yes}
    face: front-on-back
    before: one
  - {name: three, weld: {part: plate.outline, to: tube.outside, type: bevel, length: 50, sides: 2}, after: [one, two], other-way-round: yes}
  - {name: four, bearing: {bearing: "30208", cup: plate.bore, cone: tube.outside, rotating: outer, bore: 20, outside: 40, width: 15, end-float: [-0.02, 0.01]}}
`)
	if err != nil {
		t.Fatal(err)
	}
	one, two, three, four := j.Joints[0], j.Joints[1], j.Joints[2], j.Joints[3]
	if p := one.Press; p.Bore != (parts.JointRef{Part: "plate", Copy: 2, Feature: "bore", Pos: p.Bore.Pos}) || p.Fit.Value != "H7/p6" || p.Method != "heat" || p.Friction.Value != 0.12 || p.Clearance.Mm != 0.05 {
		t.Errorf("press %+v", p)
	}
	if m := one.Meet; !m.Level || m.First != parts.Back || m.Second != parts.Front || m.Below.Mm != 1 || one.Rotate.Deg != -30 {
		t.Errorf("meeting %+v, rotate %v", m, one.Rotate.Deg)
	}
	if a := one.InLine; len(a) != 2 || a[0].Refs[0].Feature != "window-2" || a[0].Up || !a[1].Up || len(a[1].Refs) != 1 {
		t.Errorf("in line %+v", a)
	}
	if b := two.Bolt; b.Size != "5/16-18 UNC" || b.Class != "grade 5" || b.Head != "socket" || !b.Washer || !b.Nut || two.Before[0].Value != "one" {
		t.Errorf("bolt %+v", b)
	}
	if w := three.Weld; w.Type != "bevel" || w.Process != "MAG" || w.Sides != 2 || w.Length.Mm != 50 || len(three.After) != 2 || !three.OtherWay {
		t.Errorf("weld %+v", w)
	}
	if b := four.Bearing; b.Rotating != "outer" || b.Load != "normal" || len(b.EndFloat) != 2 || b.EndFloat[0].Mm != -0.02 {
		t.Errorf("bearing %+v", b)
	}
}

// Two parts that are bolted once more meet as they met, the faces changed over where the other is named first; another copy,
// and what says its own faces or "other-way-round", do not follow.
func TestBoltedOnceMore(t *testing.T) {
	t.Parallel()
	const more = ", bolt: {through: plate#%s.bolts, into: plate#%s.bolts, bolt: M8 8.8, nut: yes}%s}\n"
	text := "\n  - {name: first" + fmt.Sprintf(more, "1", "2", ", face: front-on-back")
	for i, c := range [][3]string{{"1", "2", ""}, {"2", "1", ""}, {"1", "2", ", face: back-on-back"}, {"1", "2", ", other-way-round: yes"}} {
		text += fmt.Sprintf("  - {name: more-%d", i) + fmt.Sprintf(more, c[0], c[1], c[2])
	}
	j, err := loadJoints(t, text)
	if err != nil {
		t.Fatal(err)
	}
	for i, want := range []string{"front on back", "front on back", "back on front", "back on back", " on "} {
		if m := j.Joints[i].Meet; string(m.First)+" on "+string(m.Second) != want {
			t.Errorf("%s: %+v, want %s", j.Joints[i].Name.Value, m, want)
		}
	}
}

func TestJointFaults(t *testing.T) {
	const press = "press: {shaft: tube.outside, bore: plate.bore}"
	const welded = "weld: {part: tube.outside, to: plate.bore, type: fillet}"
	const bolted = "bolt: {through: plate.bolts, into: plate#2.bolts, bolt: M8 8.8}"
	for _, c := range []struct{ joint, what string }{
		{"{name: a, " + press + ", place: {on: front, with: back, at: [0, 0]}}", "place beside press"},
		{"{name: a, " + bolted + ", face: front-on-back, place: {on: front, with: back, at: [0, 0]}}", "face beside the place of a bolted part"},
		{"{name: a, " + bolted + ", place: {on: left, with: back, at: [0, 0]}}", "a bolted part stands on the left"},
		{"{name: a, " + bolted + ", place: {on: above, with: back, at: [0, 0]}}", "on is"},
		{"{name: a, " + bolted + ", place: {on: front, with: back, from-left: 10}}", "from-left in the place of a bolted part"},
		{"{name: a, " + bolted + ", place: {on: front, with: back, at: [0, 0], gap: 1}}", "gap in the place of a bolted part"},
		{"{name: a, screw: {screw: tube.outside, nut: plate.bore}, rotate: 90}", "rotate beside screw"},
		{"{name: a, screw: {screw: tube.outside}}", "lacks the key nut"},
		{"{" + press + "}", "lacks the key name"},
		{"{name: a}", "has none of the keys press"},
		{"{name: a, " + press + ", weld: {part: plate.bore, to: tube.outside, type: fillet}}", "both press and weld"},
		{"{name: a, press: {shaft: tube.outside}}", "lacks the key bore"},
		{"{name: a, press: {shaft: tub.outside, bore: plate.bore}}", "perhaps tube is meant"},
		{"{name: a, press: {shaft: tube.outsid, bore: plate.bore}}", "perhaps outside is meant"},
		{"{name: a, press: {shaft: tube.outside, bore: plate#3.bore}}", "plate#3 is asked for and 2 is made"},
		{"{name: a, press: {shaft: plate.outline, bore: plate.bore}}", "to itself"},
		{"{name: a, press: {shaft: tube.outside, bore: plate.bore, fit: p6/H7}}", `the fit is "p6/H7"`},
		{"{name: a, press: {shaft: tube.outside, bore: plate.bore, method: hammer}}", "which is not known"},
		{"{name: a, press: {shaft: tube.outside, bore: plate.bore, friction: 2}}", "friction is"},
		{"{name: a, " + press + ", face: front-on-side}", "face is"},
		{"{name: a, " + press + ", face: front-on-back, level: front-with-front}", "face and level"},
		{"{name: a, " + press + ", face: front-on-back, below: 1}", "below goes with level"},
		{"{name: a, " + press + ", below: 1}", "below needs level"},
		{"{name: a, " + press + ", face: front-on-back, other-way-round: yes}", "other-way-round beside face"},
		{"{name: a, " + press + ", flush: front-with-front}", "flush of earlier versions is now level"},
		{"{name: a, " + press + ", align: [tube.window, up]}", "align of earlier versions is now in-line"},
		{"{name: a, " + press + ", flip: yes}", "flip of earlier versions is now other-way-round"},
		{"{name: a, " + welded + ", place: {on: front}}", "lacks the key with"},
		{"{name: a, " + welded + ", place: {on: above, with: back}}", "on is"},
		{"{name: a, " + welded + ", place: {on: front, with: back, at: [0, 0], from-left: 1}}", "at and from-left"},
		{"{name: a, " + welded + ", place: {on: front, with: back, from-left: 2, from-right: 1}}", "from-left and from-right"},
		{"{name: a, " + welded + ", place: {on: front, with: back, from-top: 2, from-bottom: 1}}", "from-bottom and from-top"},
		{"{name: a, " + welded + ", place: {on: front, with: back, front: up}}", "its front cannot point along it"},
		{"{name: a, " + welded + ", place: {on: front, with: left, top: up}}", "its top cannot point along it"},
		{"{name: a, " + welded + ", place: {on: front, with: left, front: north}}", "front is"},
		{"{name: a, " + press + ", rotate: 400}", "rotate is"},
		{"{name: a, " + press + ", in-line: [tube.window]}", "in-line has 1 entry"},
		{"{name: a, " + press + ", in-line: [tube.window-3, up]}", "no feature window-3"},
		{"{name: a, " + press + ", before: b}", "no joint b"},
		{"{name: a, " + press + ", after: a}", "names itself"},
		{"{name: a, bolt: {through: plate.bolts, into: plate#2.bolts, bolt: M8}}", "lacks its strength class"},
		{"{name: a, bolt: {through: plate.bolts, into: plate#2.bolts, bolt: big}}", `the bolt is "big"`},
		{"{name: a, bolt: {through: plate.bolts, into: plate#2.bolts, bolt: M8 8.8, washer: maybe}}", "washer is"},
		{"{name: a, bolt: {through: plate.bolts, into: plate#2.bolts, bolt: M8, stud: rod}}", "no part rod"},
		{"{name: a, bolt: {through: plate.bolts, into: plate#2.bolts, bolt: M8 8.8, stud: plate}}", "has a class, and plate is as strong as its own metal"},
		{"{name: a, bearing: {bearing: x, cup: plate.bore, cone: tube.outside, rotating: inner, bore: 50, outside: 40, width: 10}}", "not smaller than its outside"},
		{"{name: a, bearing: {bearing: x, cup: plate.bore, cone: tube.outside, rotating: inner, bore: 20, outside: 40, width: 10, end-float: [0.1, 0]}}", "least end float"},
		{"{name: a, weld: {part: plate.bore, to: tube.outside, type: fillet, sides: 3}}", "sides is"},
		{"{name: a, weld: {part: plate.bore, to: tube.outside, type: fillet, ground: inside}}", "a fillet is ground flush"},
	} {
		_, err := loadJoints(t, "  - "+c.joint+"\n")
		var faults parts.Errors
		if !errors.As(err, &faults) {
			t.Errorf("%s: %v", c.joint, err)
			continue
		}
		if f := faults[0]; len(faults) != 1 || !strings.Contains(f.What, c.what) || f.Line != 5 || f.Right == "" {
			t.Errorf("%s: want one fault with %q in line 5\n%v", c.joint, c.what, faults)
		}
	}
	_, err := loadJoints(t, "  - {name: a, "+press+"}\n  - {name: a, "+press+"}\n")
	if err == nil || !strings.Contains(err.Error(), "already in line 5") {
		t.Errorf("two joints of one name: %v", err)
	}
}
