package truesize

import (
	"fmt"
	"slices"
	"strconv"
	"strings"

	"centrepop/layout/words"
	"centrepop/templates/draw"
)

// The least width of a caption, and how far it is clear of the rule's line, in millimetres.
const (
	captionLeastMm = 40.0
	captionPadMm   = 1.2
)

// caption names what stands over a tile: all that the words depend on.
type caption struct {
	n, count int
	part     bool
	widthMm  float64
}

// captionLines are what stands over a template that shares its sheet. Packing asks
// for them again and again.
func (one *tile) captionLines() []string {
	key := caption{n: one.n, part: one.part, widthMm: max(one.window.Width(), captionLeastMm) - captionPadMm}
	if one.n > 0 {
		key.count = one.grid.count()
	}
	if lines, done := one.of.captions[key]; done {
		return lines
	}
	if one.of.captions == nil {
		one.of.captions = map[caption][]string{}
	}
	one.of.captions[key] = one.captionFor(key)
	return one.of.captions[key]
}

func (one *tile) captionFor(key caption) (lines []string) {
	for i, text := range one.captionTexts() {
		size := draw.SmallMm
		if i == 0 {
			size = draw.TextMm
		}
		for _, line := range draw.Wrap(text, size, i == 0, key.widthMm) {
			lines = append(lines, strings.Trim(line, " ·"))
		}
	}
	return lines
}

// captionTexts are the heading of a tile and, on the first, how tiles are joined and
// the legend.
func (one *tile) captionTexts() []string {
	t := one.of
	count, name := "", ""
	if one.n > 0 {
		count = fmt.Sprintf("tile %d of %d", one.n, one.grid.count())
	}
	if t.exact {
		name = t.name
	}
	head := words.Join(" · ", t.part.Title, name, count, t.side)
	if at := t.topMm; at != nil && !one.window.HasPoint(at.XMm, at.YMm) {
		head += ", TOP ↑"
	}
	head += words.When(t.part.Quantity > 1, " · make "+strconv.Itoa(t.part.Quantity)+", print as often")
	if one.n > 1 {
		return []string{head}
	}
	return slices.DeleteFunc(append([]string{head, words.Join(" ", one.joining(), one.partial())}, t.legend...), func(text string) bool { return text == "" })
}

// captionedMm is the height of a tile with its caption.
func (one *tile) captionedMm() float64 {
	return one.window.Height() + (float64(len(one.captionLines()))*draw.TextMm*1.25 + 1.5)
}

// joining says how tiles are put together, and how to check them.
func (one *tile) joining() string {
	return words.Either(one.n == 0, one.of.dividers, words.Join(" ", "Cut on dashes, lay on chain lines, letters together.", one.of.dividers))
}
