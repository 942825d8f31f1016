package stand_test

import (
	"fmt"

	"centrepop/layout"
	"centrepop/parts/read"
)

// Where a screw of the gate jack sits: the middle under its head, and the way out of it.
func Example() {
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
	m := work.Machine().Stand
	for _, b := range m.Bodies {
		if b.ID == "yoke-near screw 1" {
			fmt.Printf("%s at %.2f, %.2f, %.2f in, out along %.0f\n", m.Title(b.ID), b.Pose.At.X/25.4, b.Pose.At.Y/25.4, b.Pose.At.Z/25.4, b.Pose.Z)
			break
		}
	}
	// Output: yoke-near screw 1 at -3.50, -4.00, -24.06 in, out along {0 0 1}
}
