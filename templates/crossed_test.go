package templates

import (
	"path/filepath"
	"testing"

	"centrepop/layout"
	"centrepop/layout/review"
	"centrepop/parts"
	"centrepop/parts/golden"
	"centrepop/parts/read"
	"centrepop/templates/draw"
	"centrepop/templates/sheettest"

	"github.com/tdewolff/canvas"
)

// TestNoLineThroughAText: on no page of a demonstration job, on either paper, does
// a line run through a text, or a text break a leader, an extension line or a dimension line by its paper.
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
				for _, broken := range sheettest.Broken(&doc.Pages[i]) {
					t.Errorf("%s on %s, page %d: a line is broken by %s", name, paper.Name, i+1, broken)
				}
				for _, crossed := range sheettest.Crossed(&doc.Pages[i]) {
					t.Errorf("%s on %s, page %d: a line through %s", name, paper.Name, i+1, crossed)
				}
			}
		}
	}
}

// TestNoTextOverAText: on no page of a demonstration job or of the small jobs with every kind of part and joint, whatever
// the paper, does a text lie over another.
func TestNoTextOverAText(t *testing.T) {
	t.Parallel()
	files := []string{filepath.Join("..", "testdata", "pugmill", "job.yaml"), filepath.Join("..", "testdata", "gatejack", "job.yaml")}
	for _, of := range []string{"part", "joint"} {
		small, err := filepath.Glob(filepath.Join("..", "layout", of, "testdata", "worked", "*.yaml"))
		if err != nil || len(small) < 3 {
			t.Fatal(small, err)
		}
		files = append(files, small...)
	}
	for _, file := range files {
		t.Run(file, func(t *testing.T) {
			t.Parallel()
			if filepath.Base(file) != "job.yaml" {
				file = golden.Job(t, file)
			}
			job, err := read.Load(file)
			if err != nil {
				t.Fatal(err)
			}
			worked, err := layout.Work(job)
			if err != nil {
				t.Fatal(err)
			}
			worked.Arrange()
			for _, paper := range []parts.Paper{sheettest.A4, sheettest.Letter, {Name: "A3", WidthMm: 297, HeightMm: 420}} {
				doc, err := Packet(worked.Plan, Options{Paper: paper})
				if err != nil {
					t.Fatal(err)
				}
				for i := range doc.Pages {
					for _, over := range sheettest.Overlaid(&doc.Pages[i]) {
						t.Errorf("on %s, page %d: %s", paper.Name, i+1, over)
					}
				}
			}
		})
	}
}

// TestOverlaid: a text over another is found in groups and turned; one that only grazes it, or that paper hides, is not.
func TestOverlaid(t *testing.T) {
	t.Parallel()
	text := draw.Text{XMm: 10, YMm: 10, SizeMm: 5, Content: "WIDE TEXT"}
	beside := func(x, y, deg float64) draw.Text {
		return draw.Text{XMm: x, YMm: y, SizeMm: 5, Content: "8", RotateDeg: deg}
	}
	patch := draw.Shape{Path: draw.R(0, 0, 60, 30).Path(), Fill: draw.White}
	for name, c := range map[string]struct {
		items []draw.Item
		over  bool
	}{
		"over it": {[]draw.Item{text, beside(12, 12, 0)}, true}, "under it": {[]draw.Item{text, beside(12, 5, 0)}, false}, "grazing": {[]draw.Item{text, beside(12, 15.2, 0)}, false},
		"upright": {[]draw.Item{text, beside(16, 8, 90)}, true}, "hidden": {[]draw.Item{text, patch, beside(12, 12, 0)}, false},
		"in a group": {[]draw.Item{text, draw.Group{Drawing: &draw.Drawing{Items: []draw.Item{beside(2, 2, 0)}}, Transform: canvas.Identity.Translate(10, 10)}}, true},
	} {
		if got := sheettest.Overlaid(&draw.Page{Drawing: draw.Drawing{Items: c.items}}); (len(got) > 0) != c.over {
			t.Errorf("%s: %q", name, got)
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
