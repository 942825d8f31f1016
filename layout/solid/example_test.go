package solid_test

import (
	"fmt"

	"centrepop/layout/part"
	"centrepop/layout/solid"
	"centrepop/parts/read"
)

// How large the first part of the gate jack is, and what it weighs in steel.
func ExampleOf() {
	job, err := read.Load("../../testdata/gatejack/job.yaml")
	if err != nil {
		fmt.Println(err)
		return
	}
	m := part.Work(job, job.Parts[0])
	s := solid.Of(m)
	size := s.Box().Size()
	fmt.Printf("%s: %.2f × %.2f × %.2f in, %.2f kg\n", m.Out.Title, size.X/25.4, size.Y/25.4, size.Z/25.4, s.Bulk().VolumeMm3*7850/1e9)
	// Output: Thrust housing: 7.00 × 7.00 × 2.81 in, 5.48 kg
}
