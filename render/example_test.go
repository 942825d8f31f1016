package render_test

import (
	"fmt"

	"centrepop/render"
)

// Numbers are written the same way on every device: rounded, without an
// exponent, zeros at the end or minus zero.
func ExampleDecimal() {
	fmt.Println(render.Decimal(25.4, 3), render.Decimal(-0.0001, 3), render.Decimal(2.0/3, 4))
	// Output: 25.4 0 0.6667
}
