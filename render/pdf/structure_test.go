package pdf

import (
	"bytes"
	"regexp"
	"strings"
	"testing"

	"github.com/tdewolff/canvas"

	"centrepop/templates/draw"
)

// A heading is a part of its own, what lies between headings another; a drawing
// that was taken over brings its parts along, and the page goes on counting.
func TestTags(t *testing.T) {
	t.Parallel()
	says := func(text string, heading uint8) draw.Text {
		return draw.Text{XMm: 10, YMm: 10, SizeMm: 5, Content: text, Heading: heading}
	}
	line := lined("M0 0L10 10")
	var press Press
	taken, err := press.Take(&draw.Drawing{Items: []draw.Item{line, says("a", 1), line, says("b", 0), says("c", 0), says("d", 2), says("e", 2)}})
	if err != nil {
		t.Fatal(err)
	}
	got := content(t, draw.Group{Drawing: &draw.Drawing{Items: []draw.Item{taken}}, Transform: canvas.Identity}, line, says("f", 0))
	var marks []string
	for _, m := range regexp.MustCompile(`/\w+ <</MCID \d+>> BDC|EMC| S\n|Tj`).FindAllString(got, -1) {
		marks = append(marks, strings.Trim(m, "/ \n"))
	}
	const want = "S, H1 <</MCID 0>> BDC, Tj, EMC, S, P <</MCID 1>> BDC, Tj, Tj, EMC, H2 <</MCID 2>> BDC, Tj, EMC, H2 <</MCID 3>> BDC, Tj, EMC, S, P <</MCID 4>> BDC, Tj, EMC"
	if text := strings.Join(marks, ", "); text != want {
		t.Errorf("got\n%s, want\n%s", text, want)
	}
	doc := &draw.Document{Pages: []draw.Page{
		{WidthMm: 100, HeightMm: 100, Drawing: draw.Drawing{Items: []draw.Item{line}}},
		{WidthMm: 100, HeightMm: 100, Drawing: draw.Drawing{Items: []draw.Item{taken, says("f", 0)}}},
	}}
	var b bytes.Buffer
	if err := press.Write(&b, doc); err != nil {
		t.Fatal(err)
	}
	var kinds []string
	for _, m := range regexp.MustCompile(`/S /(\w+) /P \d+ 0 R /Pg \d+ 0 R /K (\d)>>`).FindAllStringSubmatch(b.String(), -1) {
		kinds = append(kinds, m[1]+m[2])
	}
	if text := strings.Join(kinds, " "); text != "H10 P1 H22 H23 P4" {
		t.Errorf("parts %q", text)
	}
	if !regexp.MustCompile(`<</Nums \[0 \[\]\n1 \[(\d+ 0 R ){5}\]\n\]>>`).Match(b.Bytes()) || !strings.Contains(b.String(), "/MarkInfo <</Marked true>>") || !strings.Contains(b.String(), "/StructParents 1") {
		t.Error("the pages do not lead back to their parts")
	}
	// The parts of two drawings would have the same numbers.
	doc.Pages[0].Drawing.Add(taken, taken)
	if err := press.Write(&b, doc); err == nil {
		t.Error("two drawings were taken over for one page")
	}
}
