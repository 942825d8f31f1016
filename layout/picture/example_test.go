package picture_test

import (
	"fmt"

	"centrepop/layout"
	"centrepop/layout/picture"
	"centrepop/parts/read"
)

// What is drawn of the gate jack: the views of the whole, and the sections of its first step.
func ExampleDraw() {
	job, err := read.Load("../../testdata/gatejack/job.yaml")
	if err != nil {
		fmt.Println(err)
		return
	}
	work, err := layout.Work(job)
	if err != nil {
		fmt.Println(err)
		return
	}
	all := picture.Draw(work.Machine())
	high := all.Front.MaxMm.YMm - all.Front.MinMm.YMm
	fmt.Printf("%.1f in high; ", high/25.4)
	first := work.Plan.Joints[0]
	fmt.Printf("%s in %d section\n", first.Name, len(first.Pictures))
	// Output: 42.0 in high; top-flange in 1 section
}
