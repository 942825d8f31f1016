package measure_test

import (
	"fmt"

	"centrepop/render/measure"
)

// The length of a quarter of a circle of 10 mm as PDF draws it, by a cubic.
func ExampleSeg_Length() {
	const k = 5.522847498
	s := measure.Seg{Kind: measure.Curve, Start: measure.Point{X: 10}, C1: measure.Point{X: 10, Y: k}, C2: measure.Point{X: k, Y: 10}, End: measure.Point{Y: 10}}
	fmt.Printf("%.2f\n", s.Length())
	// Output: 15.71
}
