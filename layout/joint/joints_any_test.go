package joint_test

import (
	"encoding/json"
	"strings"
	"testing"

	"centrepop/layout/joint"
	"centrepop/layout/part"
	"centrepop/layout/plan"
	"centrepop/layout/stand"
	"centrepop/parts"
)

// Any two features joined in any way give a plan or a located fault, never a
// panic, and a plan's numbers are finite: JSON holds no others.
func TestAnyJoint(t *testing.T) {
	job, err := small(t, "  []\n")
	if err != nil {
		t.Fatal(err)
	}
	bare := planned(t, job)
	var rs []*part.Model // worked out once
	for _, p := range job.Parts {
		r := part.Work(job, p)
		rs = append(rs, r)
	}
	at := parts.Pos{File: "job.yaml", Line: 3, Column: 1}
	var refs []parts.JointRef
	for _, p := range job.Parts {
		for _, name := range p.FeatureNames() {
			refs = append(refs, parts.JointRef{Part: p.Name.Value, Copy: 1, Feature: name, Pos: at})
		}
	}
	meetings := []parts.Meeting{
		{},
		{Pos: at, First: parts.Front, Second: parts.Back},
		{Pos: at, First: parts.Back, Second: parts.Back},
		{Pos: at, First: parts.Front, Second: parts.Front, Level: true, Below: parts.Length{Mm: 1, Pos: at}},
	}
	planned, refused := 0, 0
	try := func(j *parts.Joint) {
		job.Joints = []*parts.Joint{j}
		pl := &plan.Plan{Units: bare.Units, Parts: bare.Parts}
		faults := joint.Resolve(pl, job, rs, stand.NewSeams(job, rs))
		switch {
		case len(faults) == 0:
			planned++
			if len(pl.Joints) != 1 || len(pl.Joints[0].Steps) == 0 {
				t.Fatalf("%s of %v: no steps", j.Kind, j)
			}
			if _, err := json.Marshal(pl.Joints); err != nil {
				t.Fatalf("%s of %v: %v", j.Kind, j, err)
			}
		default:
			refused++
			if f := faults[0]; f.Pos.Line == 0 || f.What == "" || strings.Contains(f.What, "NaN") {
				t.Fatalf("%s: fault without a place: %v", j.Kind, f)
			}
		}
	}
	name := parts.Text{Value: "a", Pos: at}
	mm := func(v float64) parts.Length { return parts.Length{Mm: v, Text: "x", Pos: at} }
	for i, a := range refs {
		for k, b := range refs {
			if a.Part == b.Part {
				continue
			}
			base := parts.Joint{Pos: at, Name: name, Meet: meetings[(i+k)%len(meetings)], OtherWay: i%2 == 0,
				InLine: []parts.LineRule{{Pos: at, Refs: []parts.JointRef{a, b}, Up: k%2 == 0}}}
			if (i+k)%3 != 0 {
				base.InLine = nil
			}
			j := base
			j.Kind, j.Bolt = parts.BoltKind, &parts.BoltJoint{Through: a, Into: b, Size: "M8", Class: "8.8", Pos: at, Head: []string{"hex", "socket"}[k%2], Nut: i%2 == 0, Washer: k%3 == 0}
			try(&j)
			j = base
			j.Kind, j.Weld = parts.WeldKind, &parts.WeldJoint{Part: a, To: b, Type: []string{"fillet", "fillet", "v", "bevel", "square"}[(i+k)%5], Process: "MMA", Sides: 1 + i%2}
			try(&j)
			j = base
			j.Kind, j.Press = parts.PressKind, &parts.PressJoint{Shaft: a, Bore: b, Fit: parts.Text{Value: "H7/s6", Pos: at}, Method: []string{"press", "heat", "cool"}[k%3]}
			try(&j)
			j = base
			j.Kind, j.Bearing = parts.BearingKind, &parts.BearingJoint{Bearing: name, Cone: a, Cup: b, Rotating: "inner", Load: "heavy", Bore: mm(40), Outside: mm(80), Width: mm(20)}
			try(&j)
		}
	}
	if planned < 40 || refused < 40 {
		t.Errorf("%d planned and %d refused: the pairs do not try both", planned, refused)
	}
	t.Logf("%d planned, %d refused", planned, refused)
}
