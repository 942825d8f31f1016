package geom_test

import (
	"fmt"

	"centrepop/parts/geom"
)

// Four places on a pitch circle, numbered clockwise from TOP, and how much
// metal a hole of 10 at each leaves to the edge of a disc of 100.
func Example() {
	disc := geom.NewContour(geom.Circle(100))
	for i, at := range (geom.Ring{PCDMm: 80, Count: 4, FirstDeg: 45}).Places(geom.Box{}) {
		fmt.Printf("%d: %.3f, %.3f, %.0f to the edge\n", i+1, at.XMm, at.YMm, disc.DepthMm(at)-5)
	}
	// Output:
	// 1: 28.284, 28.284, 5 to the edge
	// 2: 28.284, -28.284, 5 to the edge
	// 3: -28.284, -28.284, 5 to the edge
	// 4: -28.284, 28.284, 5 to the edge
}
