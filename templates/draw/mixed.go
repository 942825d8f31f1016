package draw

import "strings"

// BoldMark in a line of a cell begins bold text, and the next one ends it.
const BoldMark = "\x01"

// Bold is a text set bold within a line of a cell; nothing where it is empty.
func Bold(text string) string {
	if text == "" {
		return ""
	}
	return BoldMark + text + BoldMark
}

func mixedWidth(line string, sizeMm float64, bold bool) float64 {
	var w float64
	var heavy bool
	for run := range strings.SplitSeq(line, BoldMark) {
		w += TextWidth(run, sizeMm, bold || heavy)
		heavy = !heavy
	}
	return w
}

// wrapMixed is Wrap for a line with marks: a break inside bold text ends it and
// begins it again.
func wrapMixed(text string, sizeMm float64, bold bool, widthMm float64) []string {
	if !strings.Contains(text, BoldMark) {
		return Wrap(text, sizeMm, bold, widthMm)
	}
	l := mixedLines{widthMm: widthMm}
	heavy := false
	for run := range strings.SplitSeq(text, BoldMark) {
		thick := bold || heavy
		for word := range strings.FieldsSeq(run) {
			for _, piece := range Wrap(word, sizeMm, thick, widthMm) {
				l.add(piece, heavy, TextWidth(" ", sizeMm, thick), TextWidth(piece, sizeMm, thick))
			}
		}
		heavy = !heavy
	}
	l.end()
	return l.done
}

// mixedLines are lines being filled with words.
type mixedLines struct {
	widthMm float64
	done    []string
	line    []byte // the line being filled
	lineMm  float64
	heavy   bool // it ends in bold text, whose closing mark is not yet set
}

// add sets a word where there is room, as bold text or not.
func (l *mixedLines) add(word string, heavy bool, spaceMm, wordMm float64) {
	if len(l.line) > 0 && l.lineMm+spaceMm+wordMm > l.widthMm {
		l.end()
	}
	if l.heavy && !heavy {
		l.line = append(l.line, BoldMark...)
	}
	if len(l.line) > 0 {
		l.line = append(l.line, ' ')
		l.lineMm += spaceMm
	}
	if heavy && !l.heavy {
		l.line = append(l.line, BoldMark...)
	}
	l.line = append(l.line, word...)
	l.lineMm += wordMm
	l.heavy = heavy
}

func (l *mixedLines) end() {
	if l.heavy {
		l.line = append(l.line, BoldMark...)
	}
	l.done = append(l.done, string(l.line))
	l.line, l.lineMm, l.heavy = l.line[:0], 0, false
}

// addMixed draws a line with marks; one without them as it is.
func addMixed(d *Drawing, t Text) {
	if !strings.Contains(t.Content, BoldMark) {
		if t.Content != "" {
			d.Add(t)
		}
		return
	}
	if t.Align != Left {
		w := mixedWidth(t.Content, t.SizeMm, t.Bold)
		if t.Align == Centre {
			w /= 2
		}
		t.XMm, t.Align = t.XMm-w, Left
	}
	whole, heavy := t.Bold, true
	for run := range strings.SplitSeq(t.Content, BoldMark) {
		heavy = !heavy
		if t.Bold = whole || heavy; run == "" {
			continue
		}
		t.Content = run
		d.Add(t)
		t.XMm += TextWidth(run, t.SizeMm, t.Bold)
	}
}
