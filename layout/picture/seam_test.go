package picture

import (
	"testing"

	"centrepop/layout/machine"
	"centrepop/layout/part"
	"centrepop/layout/plan"
	"centrepop/parts"
)

// TestOnlyLies: a lid that its words have held by its weight alone lies on what hangs together with a body once its step is
// made, whether that is the first or a later one.
func TestOnlyLies(t *testing.T) {
	t.Parallel()
	end := func(part string) plan.JointEnd { return plan.JointEnd{Part: part, Copy: 1} }
	lid := &part.Model{Out: &plan.PartPlan{Title: "Lid"}, Numbered: &part.Numbered{Shape: &part.Shape{Sizes: &part.Sizes{Part: &parts.Part{Name: parts.Text{Value: "lid"}}}}}}
	for _, c := range []struct {
		after, part, how string
		off              bool
		n                int
		id, want         string
	}{
		{"one", "lid", "lies by its weight", false, 1, "x#1", "Lid"}, {"one", "lid", "lies by its weight", false, 1, "y#1", "Lid"}, {"one", "lid", "lies by its weight", false, 1, "z#1", ""}, {"one", "lid", "lies by its weight", false, 2, "z#1", "Lid"}, {"one", "lid", "lies by its weight", false, 0, "x#1", ""},
		{"two", "lid", "lies by its weight", false, 1, "x#1", ""}, {"two", "lid", "lies by its weight", false, 2, "x#1", "Lid"}, {"none", "lid", "lies by its weight", false, 2, "x#1", ""},
		{"one", "lid", "clamped", false, 2, "x#1", ""}, {"one", "lid", "lies by its weight", true, 2, "x#1", ""}, {"one", "", "lies by its weight", false, 2, "x#1", ""},
	} {
		m := machine.Of(&parts.Job{
			Loose:  []parts.Loose{{After: parts.Text{Value: c.after}, Part: parts.Text{Value: c.part}, How: parts.Text{Value: c.how}, Held: parts.HeldBy(c.how), Off: c.off}},
			Joints: []*parts.Joint{{Name: parts.Text{Value: "one"}}, {Name: parts.Text{Value: "two"}}},
		}, []*part.Model{lid}, nil)
		m.Joints = []*plan.JointPlan{{Name: "one", N: 1, A: end("x"), B: end("y")}, {Name: "two", N: 2, A: end("z"), B: end("x")}}
		if got := (&viewed{drawing: &drawing{Stage: m.Stage()}}).onlyLies(c.n, c.id); got != c.want {
			t.Errorf("%+v: %q", c, got)
		}
	}
}
