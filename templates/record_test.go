package templates

import (
	"fmt"
	"path/filepath"
	"strings"
	"testing"

	"centrepop/parts"
	"centrepop/parts/golden"
)

// record writes a document as text, a line for each item in drawing order:
// texts with their place, shapes with their extent.
func record(t *testing.T, doc *Document) string {
	var b strings.Builder
	fmt.Fprintf(&b, "document %q subject %q language %s date %s\n", doc.Title, doc.Subject, doc.Language, doc.Date)
	for i := range doc.Pages {
		page := &doc.Pages[i]
		fmt.Fprintf(&b, "page %s %.1f x %.1f\n", page.Label, page.WidthMm, page.HeightMm)
		for _, m := range page.Bookmarks {
			fmt.Fprintf(&b, "  bookmark %d %s\n", m.Level, m.Title)
		}
		for _, p := range flatten(t, &page.Drawing, 0, 0, nil) {
			switch item := p.item.(type) {
			case Text:
				weight := ""
				if item.Bold {
					weight = " bold"
				}
				fmt.Fprintf(&b, "  text %.1f %.1f size %.1f%s %q\n", item.XMm+p.dx, item.YMm+p.dy, item.SizeMm, weight, item.Content)
			case Shape:
				r := p.room()
				fmt.Fprintf(&b, "  shape %.1f %.1f to %.1f %.1f line %.2f fill %d dash %v\n", r.x0, r.y0, r.x1, r.y1, item.WidthMm, item.Fill, item.DashMm)
			}
		}
	}
	return b.String()
}

func TestRecordedPacket(t *testing.T) {
	plan := jobOf("Pug mill", parts.Millimetres, flangePart())
	doc, err := Packet(plan, Options{Paper: a4})
	if err != nil {
		t.Fatal(err)
	}
	got := record(t, doc)
	again, err := Packet(plan, Options{Paper: a4})
	if err != nil {
		t.Fatal(err)
	}
	if record(t, again) != got {
		t.Error("a second drawing differs from the first")
	}
	golden.Compare(t, filepath.Join("testdata", "flange-a4.txt"), []byte(got))
}
