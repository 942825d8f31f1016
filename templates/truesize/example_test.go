package truesize_test

import (
	"fmt"

	"centrepop/parts"
	"centrepop/templates/draw"
	"centrepop/templates/sheettest"
	"centrepop/templates/truesize"
)

// A ring of 620 mm on A4: its tiles, each naming what begins on it.
func ExampleChoice_Sheets() {
	job := sheettest.JobOf("Pug mill", parts.Millimetres, sheettest.RingPart(620))
	choice, err := truesize.Choose(job, job.Parts, draw.Frame{WidthMm: 210, HeightMm: 297, Name: "A4"}, truesize.Useful)
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, c := range choice.Sheets(nil) {
		fmt.Println(c.Name, "–", len(c.Sheets), "sheets")
		fmt.Println(c.Sheets[0].Starts[0], c.Sheets[0].Scale)
	}
	// Output:
	// Templates, 1:1 – 7 sheets
	// Base ring: Punch template, FRONT face 1:1
}
