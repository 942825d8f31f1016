package layouttest_test

import (
	"fmt"

	"centrepop/layout/layouttest"
	"centrepop/layout/machine"
	"centrepop/layout/plan"
	"centrepop/layout/stand"
)

// What is found in a machine, as the tests of a room compare it: of the kinds that a test is about.
func ExampleArgued() {
	m := &machine.Machine{Stand: &stand.Stand{}}
	m.Problems = []plan.Problem{
		{Kind: plan.WeldApart, Joint: "foot", Args: []plan.Arg{plan.Named("Leg"), plan.Of(plan.Mm, 4)}},
		{Kind: plan.PlaceMisses, Joint: "head"},
	}
	fmt.Println(layouttest.Argued(m, plan.WeldApart))
	// Output: weld-apart Leg 4
}
