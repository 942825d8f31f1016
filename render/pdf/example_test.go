package pdf_test

import (
	"bytes"
	"fmt"

	"centrepop/render/pdf"
	"centrepop/templates/draw"
)

func ExampleWrite() {
	page := draw.Page{WidthMm: 210, HeightMm: 297}
	page.Drawing.Add(draw.Segment(20, 20, 120, 20, 0.35), draw.Text{XMm: 20, YMm: 24, SizeMm: 4, Content: "100 mm"})
	var b bytes.Buffer
	err := pdf.Write(&b, &draw.Document{Title: "A line", Language: "en", Date: "2025-03-14", Pages: []draw.Page{page}})
	fmt.Printf("%.8s %v\n", b.String(), err)
	// Output: %PDF-1.7 <nil>
}
