package svg_test

import (
	"fmt"
	"os"

	"centrepop/render/svg"
	"centrepop/templates/draw"
)

// A square of 10 mm, to be cut.
func ExampleWrite() {
	var d draw.Drawing
	d.Add(draw.Shape{Path: draw.Polygon(1, 1, 11, 1, 11, 11, 1, 11), Stroke: draw.Black, WidthMm: 0.1, Layer: draw.LayerCut})
	if err := svg.Write(os.Stdout, &d, 12, 12); err != nil {
		fmt.Println(err)
	}
	// Output:
	// <?xml version="1.0" encoding="UTF-8"?>
	// <svg xmlns="http://www.w3.org/2000/svg" version="1.1" width="12mm" height="12mm" viewBox="0 0 12 12">
	// <g id="cut">
	// <path d="M1 11L11 11L11 1L1 1Z" fill="none" stroke="#000000" stroke-width="0.1" stroke-miterlimit="10"/>
	// </g>
	// </svg>
}
