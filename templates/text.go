package templates

import (
	"strings"

	"centrepop/templates/typeface"
)

// The text sizes, em in millimetres.
const (
	smallMm    = 2.6 // the least: labels, numbers at rules
	textMm     = 3.4 // running text
	ruleTextMm = 3.0 // the formulae a table was worked out by
	limitMm    = 4.4 // limits to machine to
	headMm     = 4.6 // heads of tables and operations
	titleMm    = 7.5 // part title
	leading    = 1.36
	ascentMm   = 0.76 // of the em: height of capitals and figures, with accents cut off
	dropMm     = 0.24 // of the em, below the baseline
)

// textWidth is the printed width of a line, in millimetres.
func textWidth(s string, sizeMm float64, bold bool) float64 {
	return typeface.WidthMm(s, sizeMm, bold)
}

// wrap breaks a text into lines no wider than widthMm; at least one.
func wrap(s string, sizeMm float64, bold bool, widthMm float64) []string {
	return typeface.Wrap(s, sizeMm, max(widthMm, 1), bold)
}

// shrink makes a line fit a width: first by a smaller size, not below
// smallMm, then by cutting it with an ellipsis.
func shrink(s string, sizeMm float64, bold bool, widthMm float64) (string, float64) {
	if w := textWidth(s, sizeMm, bold); w > widthMm {
		sizeMm = max(smallMm, sizeMm*widthMm/w)
	}
	if textWidth(s, sizeMm, bold) <= widthMm+1e-9 {
		return s, sizeMm
	}
	runes := []rune(s)
	for n := len(runes) - 1; n > 0; n-- {
		cut := strings.TrimRight(string(runes[:n]), " ") + "…"
		if textWidth(cut, sizeMm, bold) <= widthMm {
			return cut, sizeMm
		}
	}
	return "…", sizeMm
}

// dropOf is how far a text reaches below its baseline, as a part of the em:
// figures and capitals stand on it.
func dropOf(s string) float64 {
	if strings.ContainsAny(s, "gjpqyQ,;()[]{}|_/") {
		return dropMm
	}
	return 0.02
}

// textRect is the room a line of text takes, before it is turned.
func textRect(t Text) rect {
	w := textWidth(t.Content, t.SizeMm, t.Bold)
	x := t.XMm
	switch t.Align {
	case Centre:
		x -= w / 2
	case Right:
		x -= w
	}
	return rect{x, t.YMm - dropOf(t.Content)*t.SizeMm, x + w, t.YMm + ascentMm*t.SizeMm}
}
