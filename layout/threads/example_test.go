package threads_test

import (
	"fmt"

	"centrepop/layout/threads"
)

func ExampleParse() {
	t, err := threads.Parse("M10")
	if err != nil {
		fmt.Println(err)
		return
	}
	hole, err := t.ClearanceMm("medium")
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf("%s: pitch %g, tap drill %g, clearance hole %g\n", t.Designation, t.PitchMm, t.TapDrillMm, hole)
	// Output: M10: pitch 1.5, tap drill 8.5, clearance hole 11
}
