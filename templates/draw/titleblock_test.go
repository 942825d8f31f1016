package draw

import (
	"math"
	"strings"
	"testing"
)

// A field takes the room it lacks from those that have some to spare, and the
// row stays as wide as it was.
func TestTitleWidths(t *testing.T) {
	row := []titleCell{{"Job", "Pug mill", 30}, {"Part", "Barrel tube", 34}, {"Sheet", "Saddle cut: back end, branch Ø139.7, tile A1", 36}}
	const total = 194.0
	sum := 0.0
	for i, w := range titleWidths(row, total) {
		if need := TextWidth(row[i].value, titleValueMm, true) + 2*titlePadMm; w < need {
			t.Errorf("%s has %.1f mm of %.1f", row[i].label, w, need)
		}
		sum += w
	}
	if math.Abs(sum-total) > 1e-9 {
		t.Errorf("the fields are %.3f mm wide together, want %.1f", sum, total)
	}
	short := []titleCell{{"Job", "Jack", 40}, {"Part", "Nut", 60}}
	if w := titleWidths(short, 100); w[0] != 40 || w[1] != 60 {
		t.Errorf("fields with room enough are %v wide, want their shares", w)
	}
}

// A value that even small letters cannot set in one line is set in two, whole,
// inside its field and clear of its label.
func TestTitleCellBreaksLongValues(t *testing.T) {
	value := "Wrap template: outside, Ø168.3, tile A1"
	var d Drawing
	titleCell{"Page", value, 0}.draw(&d, 20, 30, 45)
	var lines []string
	var rooms []Rect
	for _, item := range d.Items {
		text, ok := item.(Text)
		if !ok {
			continue
		}
		r := TextRect(text)
		if !(Rect{20, 30, 65, 30 + TitleRowMm}).Holds(r) || text.SizeMm < SmallMm {
			t.Errorf("%q, em %.2f mm, lies at %.2f", text.Content, text.SizeMm, r)
		}
		for _, q := range rooms {
			if r.Meets(q) {
				t.Errorf("%q at %.2f meets %.2f", text.Content, r, q)
			}
		}
		rooms = append(rooms, r)
		if text.Bold {
			lines = append(lines, text.Content)
		}
	}
	if len(lines) != 2 || strings.Join(lines, " ") != value {
		t.Errorf("set as %q", lines)
	}
}

// All sheets of a part that is not released say so, inside the paper, and those
// of other parts do not.
func TestBindStampsHeldParts(t *testing.T) {
	t.Parallel()
	frame := Frame{WidthMm: 210, HeightMm: 297}
	var chapters []Chapter
	for _, part := range []string{"Lid", "Box"} {
		chapters = append(chapters, Chapter{Part: part, Sheets: []*Sheet{{Frame: frame, Part: part}, {Frame: frame.Turned(), Part: part}}})
	}
	chapters = append(chapters, Chapter{Sheets: []*Sheet{{Frame: frame, Part: "Lid, Box", Parts: []string{"Lid", "Box"}, Close: func(page, total int) {}}}})
	chapters = append(chapters, Chapter{Sheets: []*Sheet{{Frame: frame, All: true}, {Frame: frame}}})
	for _, p := range Bind(Job{}, chapters[3:], "").Pages {
		for _, item := range p.Drawing.Items {
			if text, ok := item.(Text); ok && strings.HasPrefix(text.Content, NotReleased) {
				t.Errorf("with no part held page %s is stamped", p.Label)
			}
		}
	}
	chapters[3].Sheets[0].Draw, chapters[3].Sheets[1].Draw = Drawing{}, Drawing{}
	doc := Bind(Job{Held: []string{"Box"}}, chapters, "")
	for i, want := range []int{0, 0, 2, 2, 2, 2, 0} {
		p, got := doc.Pages[i], 0
		for _, item := range p.Drawing.Items {
			text, ok := item.(Text)
			if !ok || !strings.HasPrefix(text.Content, NotReleased) {
				continue
			}
			got++
			long := TextWidth(text.Content, text.SizeMm, true)
			x, y := text.XMm+long/2, text.YMm
			if text.RotateDeg == 90 {
				x, y = text.XMm, text.YMm+long/2
			}
			if top := text.RotateDeg == 0; top && (math.Abs(x-p.WidthMm/2) > 1e-9 || y <= p.HeightMm-MarginMm || y+text.SizeMm > p.HeightMm) ||
				!top && (math.Abs(y-p.HeightMm/2) > 1e-9 || x >= MarginMm || x-text.SizeMm < 0) {
				t.Errorf("page %d: the stamp lies at %.1f, %.1f of %.0f × %.0f", i+1, x, y, p.WidthMm, p.HeightMm)
			}
		}
		if got != want {
			t.Errorf("page %d has %d stamps, want %d", i+1, got, want)
		}
	}
}
