package png_test

import (
	"bytes"
	"fmt"
	stdpng "image/png"

	"centrepop/render/png"
	"centrepop/templates/draw"
)

// A page of an inch and a half by one at 100 dots to the inch.
func ExampleWrite() {
	page := draw.Page{WidthMm: 38.1, HeightMm: 25.4}
	page.Drawing.Add(draw.Segment(5, 5, 30, 20, 0.5))
	var b bytes.Buffer
	if err := png.Write(&b, &page, 100); err != nil {
		fmt.Println(err)
		return
	}
	picture, err := stdpng.Decode(&b)
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println(picture.Bounds().Size())
	// Output: (150,100)
}
