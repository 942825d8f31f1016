package draw

import (
	"github.com/tdewolff/canvas"

	"strings"

	"centrepop/templates/typeface"
)

// The text sizes, em in millimetres.
const (
	SmallMm  = 2.6 // the least: labels, numbers at rules
	TextMm   = 3.4 // running text
	HeadMm   = 4.6 // heads of tables and operations
	TitleMm  = 7.5 // part title
	Leading  = 1.36
	AscentMm = 0.76 // of the em: height of capitals and figures, with accents cut off
	DropMm   = 0.24 // of the em, below the baseline
)

// TextWidth is the printed width of a line, in millimetres.
func TextWidth(s string, sizeMm float64, bold bool) float64 { return typeface.WidthMm(s, sizeMm, bold) }

// Wrap breaks a text into lines no wider than widthMm; at least one.
func Wrap(s string, sizeMm float64, bold bool, widthMm float64) []string {
	return typeface.Wrap(s, sizeMm, max(widthMm, 1), bold)
}

// Shrink makes a line fit a width: first by a smaller size, not below
// smallMm, then by cutting it with an ellipsis.
func Shrink(s string, sizeMm float64, bold bool, widthMm float64) (string, float64) {
	if w := TextWidth(s, sizeMm, bold); w > widthMm {
		sizeMm = max(SmallMm, sizeMm*widthMm/w)
	}
	if TextWidth(s, sizeMm, bold) <= widthMm+1e-9 {
		return s, sizeMm
	}
	runes := []rune(s)
	for n := len(runes) - 1; n > 0; n-- {
		cut := strings.TrimRight(string(runes[:n]), " ") + "…"
		if TextWidth(cut, sizeMm, bold) <= widthMm {
			return cut, sizeMm
		}
	}
	return "…", sizeMm
}

// Within returns the text as it fits into a width, smaller or cut short (see Shrink).
func (t Text) Within(widthMm float64) Text {
	t.Content, t.SizeMm = Shrink(t.Content, t.SizeMm, t.Bold, widthMm)
	return t
}

// DropOf is how far a text reaches below its baseline, as a part of the em:
// figures and capitals stand on it.
func DropOf(s string) float64 {
	if strings.ContainsAny(s, "gjpqyQ,;()[]{}|_/") {
		return DropMm
	}
	return 0.02
}

// TextRect is the room a line of text takes, before it is turned.
func TextRect(t Text) Rect {
	w := TextWidth(t.Content, t.SizeMm, t.Bold)
	x := t.XMm
	switch t.Align {
	case Centre:
		x -= w / 2
	case Right:
		x -= w
	}
	return Rect{x, t.YMm - DropOf(t.Content)*t.SizeMm, x + w, t.YMm + AscentMm*t.SizeMm}
}

// Over is a text on a patch of paper, which interrupts the lines drawn under it
// (ISO 129-1: no line may cross a dimension). The patch leaves out the room for
// tails below the baseline where the text has none.
func Over(t Text) []Item {
	r := TextRect(t)
	turn := canvas.Identity.RotateAbout(t.RotateDeg, t.XMm, t.YMm)
	patch := Rect{r.X0 - overMm, r.Y0 - 0.1, r.X1 + overMm, r.Y1 + 0.1}.Path().Transform(turn)
	return []Item{Shape{Path: patch, Fill: White}, t}
}

// overMm is the patch beside a text.
const overMm = 0.4
