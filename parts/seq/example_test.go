package seq_test

import (
	"fmt"

	"centrepop/parts/seq"
)

// The thick ones of three plates, in words.
func Example() {
	plates := []float64{8, 12, 20}
	thick := seq.Keep(plates, func(mm float64) bool { return mm > 10 })
	fmt.Println(seq.Map(thick, func(mm float64) string { return fmt.Sprintf("%g mm", mm) }))
	// Output: [12 mm 20 mm]
}
