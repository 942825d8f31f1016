package templates

import (
	"path/filepath"
	"testing"

	"centrepop/layout"
	"centrepop/layout/review"
	"centrepop/parts"
	"centrepop/parts/read"
	"centrepop/templates/draw"
	"centrepop/templates/sheettest"

	"github.com/tdewolff/canvas"
)

// TestNoLineThroughAText: on no page of a demonstration job, on either paper, does
// a line run through a text.
func TestNoLineThroughAText(t *testing.T) {
	t.Parallel()
	for _, name := range []string{"pugmill", "gatejack"} {
		job, err := read.Load(filepath.Join("..", "testdata", name, "job.yaml"))
		if err != nil {
			t.Fatal(err)
		}
		worked, err := layout.Resolve(job)
		if err != nil {
			t.Fatal(err)
		}
		worked.Arrange()
		findings := review.Review(worked)
		for _, paper := range []parts.Paper{sheettest.A4, sheettest.Letter} {
			doc, err := Packet(worked.Plan, Options{Paper: paper, Findings: findings})
			if err != nil {
				t.Fatal(err)
			}
			for i := range doc.Pages {
				for _, crossed := range sheettest.Crossed(&doc.Pages[i]) {
					t.Errorf("%s on %s, page %d: a line through %s", name, paper.Name, i+1, crossed)
				}
			}
		}
	}
}

// TestCrossed: a line through a text is found wherever it comes from; one that
// passes it, is hidden by paper or cut off by a clip is not.
func TestCrossed(t *testing.T) {
	t.Parallel()
	text := draw.Text{XMm: 10, YMm: 10, SizeMm: 5, Content: "WIDE TEXT"}
	line := func(y float64) draw.Shape { return draw.Segment(0, y, 100, y, 0.2) }
	group := func(m canvas.Matrix, clip *canvas.Path, items ...draw.Item) draw.Group {
		return draw.Group{Drawing: &draw.Drawing{Items: items}, Transform: m, Clip: clip}
	}
	turned := text
	turned.RotateDeg = 90
	for name, c := range map[string]struct {
		items   []draw.Item
		crossed bool
	}{
		"through":        {[]draw.Item{line(12), text}, true},
		"drawn later":    {[]draw.Item{text, line(12)}, true},
		"under":          {[]draw.Item{line(9.5), text}, false},
		"above":          {[]draw.Item{line(14), text}, false},
		"on paper":       {append([]draw.Item{line(12)}, draw.Over(text)...), false},
		"over the paper": {append(draw.Over(text), line(12)), true},
		"clipped":        {[]draw.Item{text, group(canvas.Identity, draw.R(0, 0, 9, 20).Path(), line(12))}, false},
		"in the clip":    {[]draw.Item{text, group(canvas.Identity, draw.R(0, 0, 30, 20).Path(), line(12))}, true},
		"moved":          {[]draw.Item{text, group(canvas.Identity.Translate(0, 7), nil, line(5))}, true},
		"moved off":      {[]draw.Item{text, group(canvas.Identity.Translate(0, 7), nil, line(12))}, false},
		"turned text":    {[]draw.Item{turned, line(12)}, true},
		"beside it":      {[]draw.Item{turned, draw.Segment(0, 12, 5, 12, 0.2)}, false},
		"black fill":     {[]draw.Item{text, draw.Shape{Path: draw.R(12, 11, 13, 12).Path(), Fill: draw.Black}}, true},
	} {
		page := &draw.Page{Drawing: draw.Drawing{Items: c.items}}
		if got := sheettest.Crossed(page); (len(got) > 0) != c.crossed {
			t.Errorf("%s: %v", name, got)
		}
	}
}
