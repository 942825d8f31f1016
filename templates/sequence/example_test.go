package sequence_test

import (
	"fmt"

	"centrepop/templates/draw"
	"centrepop/templates/sequence"
	"centrepop/templates/sheettest"
)

// The order in which a flange and a sleeve are joined.
func ExampleChapters() {
	for _, c := range sequence.Chapters(sheettest.JoinedPlan(), draw.Frame{WidthMm: 297, HeightMm: 420, Name: "A3"}) {
		fmt.Println(c.Part, "–", c.Name)
	}
	// Output:
	// Assembly – Order of assembly
	// Assembly – Step 1: Press Barrel flange 1 on Sleeve
	// Assembly – Step 3: Bolt Barrel flange 2 to Barrel flange 1
	// Assembly – Step 5: Weld Sleeve to Barrel flange 1
}
