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

// mixedWidth is the width of a line with marks.
func mixedWidth(line string, sizeMm float64, bold bool) float64 {
	w, heavy := 0.0, false
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
	var lines []string
	line, lineMm := "", 0.0
	for i, run := range strings.Split(text, BoldMark) {
		heavy := i%2 == 1
		space := TextWidth(" ", sizeMm, bold || heavy)
		for _, word := range divided(strings.Fields(run), sizeMm, bold || heavy, widthMm) {
			w := TextWidth(word, sizeMm, bold || heavy)
			if line != "" && lineMm+space+w > widthMm {
				lines, line = append(lines, line), ""
			}
			if heavy {
				word = Bold(word)
			}
			if line == "" {
				line, lineMm = word, w
				continue
			}
			line, lineMm = line+" "+word, lineMm+space+w
		}
	}
	lines = append(lines, line)
	for i := range lines { // bold words that follow each other are one text
		lines[i] = strings.ReplaceAll(lines[i], BoldMark+" "+BoldMark, " ")
	}
	return lines
}

// divided are the words, those wider than a line in pieces.
func divided(words []string, sizeMm float64, bold bool, widthMm float64) []string {
	var out []string
	for _, w := range words {
		if TextWidth(w, sizeMm, bold) > widthMm {
			out = append(out, Wrap(w, sizeMm, bold, widthMm)...)
		} else {
			out = append(out, w)
		}
	}
	return out
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
