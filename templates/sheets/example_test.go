package sheets_test

import (
	"fmt"

	"centrepop/parts"
	"centrepop/templates/draw"
	"centrepop/templates/sheets"
	"centrepop/templates/sheettest"
)

// The operations and the record of a flange, on one page of A3.
func ExampleParts() {
	job := sheettest.JobOf("Pug mill", parts.Millimetres, sheettest.FlangePart())
	for _, s := range sheets.Parts(job, job.Parts, draw.Frame{WidthMm: 297, HeightMm: 420, Name: "A3"}, nil, nil) {
		fmt.Println(s.Part, "–", s.Name)
	}
	// Output:
	// Barrel flange – Operations and record
}
