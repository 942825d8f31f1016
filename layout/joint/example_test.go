package joint_test

import (
	"fmt"

	"centrepop/layout"
	"centrepop/parts/read"
)

// The order of work of the demo job, which this package fills into the plan.
func Example() {
	job, err := read.Load("../../testdata/pugmill/job.yaml")
	if err != nil {
		fmt.Println(err)
		return
	}
	worked, err := layout.Resolve(job)
	if err != nil {
		fmt.Println(err)
		return
	}
	plan := worked.Plan
	for i, j := range plan.Joints[:3] {
		fmt.Printf("%d. %s: %s\n", i+1, j.Kind, j.Name)
	}
	// Output:
	// 1. press: front-flange
	// 2. weld: front-flange-weld
	// 3. press: rear-flange
}
