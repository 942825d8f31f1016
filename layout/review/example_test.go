package review_test

import (
	"fmt"

	"centrepop/layout"
	"centrepop/layout/review"
	"centrepop/parts/read"
)

// What would spoil a part of the pug mill.
func ExampleReview() {
	job, err := read.Load("../../testdata/pugmill/job.yaml")
	if err != nil {
		fmt.Println(err)
		return
	}
	w, err := layout.Work(job)
	if err != nil {
		fmt.Println(err)
		return
	}
	findings := review.Review(w)
	n := review.Summary(findings)
	fmt.Println("open findings:", n.Open())
	// Output: open findings: 0
}
