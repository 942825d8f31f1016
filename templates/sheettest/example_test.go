package sheettest_test

import (
	"fmt"

	"centrepop/templates/sheettest"
)

// The plans that every kind of sheet is tried with.
func ExampleSamples() {
	for _, s := range sheettest.Samples() {
		fmt.Println(s.Name, s.Paper.Name, len(s.Plan.Parts))
	}
	// Output:
	// pug-a4 A4 3
	// pug-a3 A3 3
	// pug-least custom 3
	// jack-letter Letter 2
	// jack-tabloid Tabloid 2
}
