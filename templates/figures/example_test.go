package figures_test

import (
	"fmt"

	"centrepop/parts"
	"centrepop/templates/figures"
)

func ExampleFixed() {
	fmt.Println(figures.Fixed(44.45, parts.Millimetres), figures.Fixed(44.45, parts.Inches), figures.Degrees(30), figures.Mass(12.345))
	// Output: 44.45 1.750 30° 12.3 kg
}
