package sheets_test

import (
	"fmt"

	"centrepop/parts"
	"centrepop/templates/draw"
	"centrepop/templates/sheets"
	"centrepop/templates/sheettest"
)

// The operation sheet of a flange.
func ExampleOperations() {
	flange := sheettest.FlangePart()
	for _, s := range sheets.Operations(sheettest.JobOf("Pug mill", parts.Millimetres, flange), flange, draw.Frame{WidthMm: 297, HeightMm: 420, Name: "A3"}) {
		fmt.Println(s.Part, "–", s.Name)
	}
	// Output:
	// Barrel flange – Operation sheet
	// Barrel flange – Operation sheet
}
