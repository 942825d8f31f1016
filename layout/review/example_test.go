package review_test

import (
	"fmt"

	"centrepop/layout/review"
	"centrepop/parts"
)

// What would spoil a part of the pug mill.
func ExampleJob() {
	job, err := parts.Load("../../testdata/pugmill/job.yaml")
	if err != nil {
		fmt.Println(err)
		return
	}
	findings, _, err := review.Job(job)
	if err != nil {
		fmt.Println(err)
		return
	}
	n := review.Summary(findings)
	fmt.Println("open findings:", n.Open())
	// Output: open findings: 0
}
