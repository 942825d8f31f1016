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
	worked.Arrange()
	for _, s := range worked.Plan.FirstRun.Stages {
		fmt.Println(s.Title)
	}
	// Output:
	// Look at
	// Oil, grease
	// By hand
	// Guards
	// Direction
	// Idle
	// Under load
	// After 8 h
}
