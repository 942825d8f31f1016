package draw_test

import (
	"fmt"

	"centrepop/templates/draw"
)

// Text is broken at words to a width in millimetres, measured in the typeface
// of the sheets.
func ExampleWrap() {
	for _, line := range draw.Wrap("Break all sharp edges unless a sheet says otherwise.", 4, false, 50) {
		fmt.Println(line)
	}
	// Output:
	// Break all sharp edges
	// unless a sheet says
	// otherwise.
}
