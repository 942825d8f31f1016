package truesize

import "centrepop/templates/draw"

// notes are texts to write where there is room, the first of them as a heading.
func notes(texts []string, head bool) (out []draw.Text) {
	for i, text := range texts {
		out = append(out, draw.Text{SizeMm: draw.HoleSizeMm, Bold: head && i == 0, Content: text})
	}
	return out
}

// note writes texts where the drawing leaves room for them, or else beside it: as many
// together as fit, in the widest form. It returns what finds no room, which stands on
// the part's own sheet.
func note(s *draw.Sheet, rooms []*draw.Occupied, texts []draw.Text) (left []draw.Text) {
	for len(texts) > 0 {
		n := len(texts)
		for n > 0 && !noted(s, rooms, texts[:n]) {
			n--
		}
		if n == 0 {
			left, n = append(left, texts[0]), 1
		}
		texts = texts[n:]
	}
	return left
}

// headUpright writes upwards, as high as there is room, what a tile is that is too
// narrow for its heading.
func headUpright(s *draw.Sheet, room *draw.Occupied, text string) {
	drop := draw.DropMm * draw.SmallMm
	long, high := draw.TextWidth(text, draw.SmallMm, true), draw.AscentMm*draw.SmallMm+drop
	if r, ok := placeFor(room, high, long); ok {
		room.AddText(r)
		s.Draw.Add(draw.Text{XMm: r.X1 - drop, YMm: r.Y0, SizeMm: draw.SmallMm, Bold: true, RotateDeg: 90, Content: text})
	}
}

// noted writes texts as one block in the first room, or else in that of the others which
// takes them in the widest form, and tells whether one has a place.
func noted(s *draw.Sheet, rooms []*draw.Occupied, texts []draw.Text) bool {
	const step = draw.HoleSizeMm * 1.3
	for _, some := range [][]*draw.Occupied{rooms[:1], rooms[1:]} {
		for _, width := range []float64{90, 70, 55, 42, 30} {
			lines := wrapped(texts, width)
			for _, room := range some {
				r, ok := placeFor(room, width, float64(len(lines))*step)
				if !ok {
					continue
				}
				room.AddText(r)
				for i, line := range lines {
					line.XMm, line.YMm = r.X0, r.Y1-float64(i+1)*step+0.9
					s.Draw.Add(line)
				}
				return true
			}
		}
	}
	return false
}

func wrapped(texts []draw.Text, widthMm float64) (lines []draw.Text) {
	for _, text := range texts {
		for _, line := range draw.Wrap(text.Content, text.SizeMm, text.Bold, widthMm) {
			text.Content = line
			lines = append(lines, text)
		}
	}
	return lines
}

// noteClearMm is round a note, so that it is not read with a hole's label.
const noteClearMm = 1.5

// placeFor looks for a free place of a size, from the upper left on.
func placeFor(room *draw.Occupied, width, height float64) (draw.Rect, bool) {
	w := room.Window
	for y := w.Y1 - noteClearMm; y-height > w.Y0+noteClearMm; y -= 3 {
		for x := w.X0 + noteClearMm; x+width < w.X1-noteClearMm; x += 4 {
			if r := draw.R(x, y-height, x+width, y); room.Free(r.Grown(noteClearMm)) {
				return r, true
			}
		}
	}
	return draw.Rect{}, false
}
