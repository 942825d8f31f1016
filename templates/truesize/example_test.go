package truesize_test

import (
	"fmt"

	"centrepop/parts"
	"centrepop/templates/draw"
	"centrepop/templates/sheettest"
	"centrepop/templates/truesize"
)

// A ring of 620 mm on A4: a key sheet and its tiles.
func ExampleChapters() {
	ring := sheettest.RingPart(620)
	chapters, err := truesize.Chapters(sheettest.JobOf("Pug mill", parts.Millimetres, ring), ring, draw.Frame{WidthMm: 210, HeightMm: 297, Name: "A4"})
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, c := range chapters {
		fmt.Println(c.Part, "–", c.Name)
		for _, s := range c.Sheets[:2] {
			fmt.Println(s.Name, s.Scale)
		}
	}
	// Output:
	// Base ring – Punch template, FRONT face
	// Punch template, FRONT, key not to scale
	// Punch template, FRONT, tile A1 1:1
}
