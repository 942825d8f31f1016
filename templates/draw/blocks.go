package draw

import "centrepop/parts/seq"

// Labelled is a value after its label; empty without a value.
func Labelled(label, value string) string {
	if value == "" {
		return ""
	}
	return label + ": " + value
}

// The em of the facts under a title, and the least to keep them on a line.
const (
	FactsMm      = 3.8
	leastFactsMm = 3.4
)

// factGap stands between facts.
const factGap = " · "

// WrapFacts sets facts in lines of a width, none broken that fits on a line; empty ones
// are left out.
func WrapFacts(facts []string, sizeMm, widthMm float64) (lines []string) {
	for _, fact := range facts {
		if n := len(lines) - 1; fact == "" {
			continue
		} else if n >= 0 && TextWidth(lines[n]+factGap+fact, sizeMm, false) <= widthMm {
			lines[n] += factGap + fact
			continue
		}
		lines = append(lines, Wrap(fact, sizeMm, false, widthMm)...)
	}
	return lines
}

// Facts closes a sheet's head: the facts under its title, and a rule.
func (p *Piece) Facts(width float64, facts ...string) {
	y, size, lines := -9.0, FactsMm, WrapFacts(facts, FactsMm, width)
	if close := WrapFacts(facts, leastFactsMm, width); len(close) == 1 { // as large as they stay on it
		lines = close
		_, size = Shrink(close[0], FactsMm, false, width)
	}
	for _, line := range lines {
		y -= FactsMm * Leading
		p.Draw.Add(Text{YMm: y + 1.2, SizeMm: size, Content: line})
	}
	y -= 1
	p.Draw.Add(Segment(0, y, width, y, ThickMm))
	p.Height = -y + 2.4
}

// Notes sets a list of texts under a heading; none if there are none.
func Notes(title string, texts []string, width float64) []Piece {
	if len(texts) == 0 {
		return nil
	}
	pieces := []Piece{Heading(title, width)}
	pieces = append(pieces, seq.Flat(texts, func(t string) []Piece { return Paragraph("–", t, TextMm, false, width) })...)
	return append(pieces, Space(4))
}

// CautionBox is a framed warning in a size of text.
func CautionBox(text string, sizeMm, width float64) Piece {
	k := sizeMm / 3.8
	lines := Stack(Paragraph("", text, sizeMm, true, width-17*k)...)
	p := Piece{Height: max(10*k, lines.Height+3*k)}
	p.Draw.Add(Box(Rect{0, -p.Height, width, 0}, 0.5))
	p.Draw.Add(Warning(2.5*k, -p.Height/2-3.7*k, 8.5*k)...)
	p.Draw.Place(&lines.Draw, 14*k, -(p.Height-lines.Height)/2)
	return p
}

// Numbered is a text hung in from bold numbers.
func Numbered(numbers, text string, width float64) Piece {
	indent := max(13, TextWidth(numbers, 3.8, true)+2)
	body := Stack(Paragraph("", text, 3.8, false, width-indent)...)
	p := Piece{Height: body.Height + 0.8}
	p.Draw.Add(Text{YMm: -3.8, SizeMm: 3.8, Bold: true, Content: numbers})
	p.Draw.Place(&body.Draw, indent, 0)
	return p
}
