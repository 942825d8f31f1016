package words_test

import (
	"fmt"

	"centrepop/layout/words"
	"centrepop/parts"
)

// The same limits for a metric and an inch job, rounded inward: a part inside
// what is printed is inside the true limits.
func ExampleWriter_Limits() {
	for _, units := range []parts.Units{parts.Millimetres, parts.Inches} {
		fmt.Println(words.Writer{Units: units}.Limits(90.0004, 90.0351))
	}
	// Output:
	// 90.001 – 90.035
	// 3.5434 – 3.5446 in
}
