package draw

import (
	"encoding/binary"
	"hash/fnv"
	"math"
	"strconv"
	"strings"

	"github.com/tdewolff/canvas"
)

// Block is a piece as it was set on a sheet: its upper left corner and height.
type Block struct {
	XMm, TopMm, HeightMm float64
	Draw                 *Drawing
}

// The bar beside what has changed: its distance from the piece, and its width.
const (
	barGapMm   = 1.6
	barWidthMm = 0.8
)

// Revise marks on the sheets of a chapter what the earlier sheets of the same
// did not say, and notes on each that it takes the place of one of the state
// named, such as "revision A". Pieces go by their words, in whatever lines, and a
// picture by its lines too, so that one drawn to another size counts as another;
// sheets that are not set in pieces, as those at 1:1, go by all that is drawn.
// Where there were no earlier sheets all are new, and no bar is drawn. It
// returns the sheets that read otherwise than one of before.
func Revise(now, was []*Sheet, state string) (other []*Sheet) {
	before, whole := map[string]bool{}, map[string]bool{}
	for _, s := range was {
		whole[said(s)] = true
		for _, b := range s.Blocks {
			before[says(b.Draw)] = true
		}
	}
	for _, s := range now {
		s.Revision = "New since " + state + "."
		if len(was) > 0 {
			s.Revision = "Takes the place of the sheet of " + state + "."
		}
		if whole[said(s)] {
			continue
		}
		other = append(other, s)
		if len(was) > 0 && s.mark(before) {
			s.Revision += " A bar at the left marks what differs."
		}
	}
	return other
}

// mark draws a bar beside each piece that says what is not among those of before,
// beside the whole sheet if it is not set in pieces. It tells whether there is any.
func (s *Sheet) mark(before map[string]bool) bool {
	bars := &Drawing{}
	bar := func(x, low, high float64) {
		bars.Add(Shape{Path: R(x-barGapMm, low, x-barGapMm+barWidthMm, high).Path(), Fill: Black})
	}
	if len(s.Blocks) == 0 {
		bar(MarginMm, MarginMm, s.Frame.HeightMm-MarginMm)
	}
	for _, b := range s.Blocks {
		if text := says(b.Draw); text != "" && !before[text] {
			bar(b.XMm, b.TopMm-b.HeightMm, b.TopMm)
		}
	}
	s.Draw.Add(bars.Items...)
	return len(bars.Items) > 0
}

// said is what a sheet says: the words of its pieces in their order, or all
// that is drawn on it.
func said(s *Sheet) string {
	if len(s.Blocks) == 0 {
		return strconv.FormatUint(Sum(&s.Draw), 36)
	}
	var b strings.Builder
	for _, block := range s.Blocks {
		b.WriteString(says(block.Draw))
		b.WriteByte('\n')
	}
	return b.String()
}

// says is what a piece says: its words, and of a picture its lines.
func says(d *Drawing) string {
	text := words(d)
	if sum, ok := pictured(d); ok {
		text += " #" + strconv.FormatUint(sum, 36)
	}
	return text
}

// pictured is a number of the lines of a picture, to a hundredth of a millimetre.
// A drawing with upright and level lines alone is a table, and is none.
func pictured(d *Drawing) (sum uint64, ok bool) {
	h := fnv.New64a()
	var b []byte
	each(d, func(item Item) {
		shape, is := item.(Shape)
		if !is || shape.Path == nil {
			return
		}
		for scan := shape.Path.Scanner(); scan.Scan(); {
			from, to := scan.Start(), scan.End()
			level := math.Abs(to.X-from.X) < 1e-6 || math.Abs(to.Y-from.Y) < 1e-6
			ok = ok || scan.Cmd() != canvas.MoveToCmd && (!level || scan.Cmd() != canvas.LineToCmd && scan.Cmd() != canvas.CloseCmd)
			b = append(b[:0], byte(scan.Cmd()), byte(shape.Fill), byte(shape.Stroke))
			for _, v := range []float64{to.X, to.Y} {
				b = binary.LittleEndian.AppendUint64(b, uint64(int64(math.Round(v*100))))
			}
			_, _ = h.Write(b) // a hash takes every write
		}
	})
	return h.Sum64(), ok
}

// words are the texts of a drawing one after the other, however they were
// broken into lines.
func words(d *Drawing) string {
	var b strings.Builder
	each(d, func(item Item) {
		if t, ok := item.(Text); ok {
			b.WriteString(t.Content)
			b.WriteByte(' ')
		}
	})
	return strings.TrimSpace(b.String())
}

// Sum is a number of all that is drawn: equal drawings have the same, others
// all but surely another. Numbers count as they are, without rounding.
func Sum(d *Drawing) uint64 {
	h := fnv.New64a()
	var b []byte
	each(d, func(item Item) {
		b = b[:0]
		numbers := func(list ...float64) {
			for _, v := range list {
				b = binary.LittleEndian.AppendUint64(b, math.Float64bits(v))
			}
		}
		switch it := item.(type) {
		case Shape:
			b = append(b, 's', byte(it.Fill), byte(it.Stroke))
			numbers(it.Path.Data()...)
			numbers(it.DashMm...)
			numbers(it.WidthMm)
		case Text:
			b = append(append(b, 't', byte(it.Align), byte(it.Tone)), it.Content...)
			numbers(it.XMm, it.YMm, it.SizeMm, it.RotateDeg)
			if it.Bold {
				b = append(b, 'b')
			}
		case Link:
			b = append(append(b, 'l'), it.To...)
			numbers(it.Path.Data()...)
		case Group:
			b = append(b, 'g')
			numbers(it.Transform[0][:]...)
			numbers(it.Transform[1][:]...)
			if it.Clip != nil {
				numbers(it.Clip.Data()...)
			}
		}
		_, _ = h.Write(b) // a hash takes every write
	})
	return h.Sum64()
}

// each visits the items of a drawing, a group before what is in it.
func each(d *Drawing, visit func(Item)) {
	for _, item := range d.Items {
		visit(item)
		if g, ok := item.(Group); ok {
			each(g.Drawing, visit)
		}
	}
}

// noteRevision writes the note on a revision under the title block.
func noteRevision(s *Sheet) {
	s.Draw.Add(Text{XMm: MarginMm, YMm: MarginMm - 2.3, SizeMm: SmallMm, Bold: true, Content: s.Revision}.Within(s.Frame.WidthMm - 2*MarginMm))
}
