package card_test

import (
	"fmt"

	"centrepop/layout"
	"centrepop/parts/read"
)

// The stages of the pug mill's first run. layout.Resolve has called Fill.
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
	for _, s := range plan.FirstRun.Stages {
		fmt.Println(s.Title)
	}
	// Output:
	// What to look at
	// Oil and grease
	// Free by hand
	// Guards
	// Direction
	// Idle
	// Under load
	// After the first 8 h
}
