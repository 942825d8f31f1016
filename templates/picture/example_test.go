package picture_test

import (
	"fmt"

	"centrepop/templates/picture"
	"centrepop/templates/sheettest"
)

// A face is as wide as it is high, whatever the picture's size.
func ExampleAspect() {
	fmt.Printf("%.2f\n", picture.Aspect(sheettest.FlangePart().Faces[0]))
	// Output: 1.00
}
