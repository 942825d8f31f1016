package layout_test

import (
	"fmt"

	"centrepop/layout"
	"centrepop/parts/read"
)

// From the job file to the numbers of one hole.
func Example() {
	job, err := read.Load("../testdata/pugmill/job.yaml")
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
	face := plan.Part("barrel-flange").Faces[0]
	hole := face.Holes[0]
	fmt.Printf("%s, hole %d of %s: x %.3f, y %.3f, %.0f° from TOP on a circle of %.0f\n", plan.Job, hole.N, hole.Group, hole.XMm, hole.YMm, hole.AngleDeg, 2*hole.RadiusMm)
	// Output: Pug mill, hole 1 of bolts: x 55.000, y 95.263, 30° from TOP on a circle of 220
}
