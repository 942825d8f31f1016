package machine_test

import (
	"fmt"

	"centrepop/layout"
	"centrepop/parts/read"
)

// How far the gate jack's bodies reach, all together, in its own frame.
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
	m := work.Machine()
	low, high := m.Bodies[0].Box().Low, m.Bodies[0].Box().High
	for _, b := range m.Bodies {
		box := b.Box()
		low.X, low.Y, low.Z = min(low.X, box.Low.X), min(low.Y, box.Low.Y), min(low.Z, box.Low.Z)
		high.X, high.Y, high.Z = max(high.X, box.High.X), max(high.Y, box.High.Y), max(high.Z, box.High.Z)
	}
	fmt.Printf("%.1f × %.1f × %.1f in\n", (high.X-low.X)/25.4, (high.Y-low.Y)/25.4, (high.Z-low.Z)/25.4)
	// Output: 16.0 × 14.9 × 42.0 in
}
