package part_test

import (
	"fmt"

	"centrepop/layout/part"
)

func ExampleNewBoltCircle() {
	c, err := part.NewBoltCircle(140, 6, 30)
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, h := range c.Holes[:2] {
		fmt.Printf("hole %d: x %.3f, y %.3f\n", h.N, h.XMm, h.YMm)
	}
	// Output:
	// hole 1: x 35.000, y 60.622
	// hole 2: x 70.000, y 0.000
}
