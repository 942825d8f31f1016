package typeface_test

import (
	"fmt"

	"centrepop/templates/typeface"
)

func ExampleWidthMm() {
	fmt.Printf("%.2f mm\n", typeface.WidthMm("Ø165 H7", 4, false))
	// Output: 15.84 mm
}
