package draw

import "testing"

// flowed sets pieces of text on a sheet of 100 × 200 mm with its title block.
func flowed(texts ...string) *Sheet {
	f := NewFlow(func(int) (*Sheet, Piece) { return &Sheet{Frame: Frame{WidthMm: 140, HeightMm: 200}}, Piece{} })
	for _, text := range texts {
		f.Add(Stack(Paragraph("", text, 3, false, f.Width())...))
	}
	return f.Sheets[0]
}

// bars are the lower and upper ends of the bars on a sheet, from its head down.
func bars(s *Sheet) (out [][2]float64) {
	for _, item := range s.Draw.Items {
		if shape, ok := item.(Shape); ok && shape.Fill == Black && shape.Stroke == None {
			if b := shape.Path.Bounds(); b.X0 == MarginMm-barGapMm && b.W() < barGapMm {
				out = append(out, [2]float64{b.Y0, b.Y1})
			}
		}
	}
	return out
}

// TestRevise: a bar stands beside the piece that reads otherwise, for its whole
// height, wherever it and the others have moved to.
func TestRevise(t *testing.T) {
	t.Parallel()
	const note = "Takes the place of the sheet of A."
	for _, c := range []struct {
		name     string
		was, now []string
		bars     [][2]float64
		note     string
	}{
		{"the same", []string{"one", "two"}, []string{"one", "two"}, nil, note},
		{"one differs", []string{"one", "two"}, []string{"one", "too"}, [][2]float64{{192 - 6*Leading, 192 - 3*Leading}}, note + " A bar at the left marks what differs."},
		{"one more", []string{"two"}, []string{"one", "two"}, [][2]float64{{192 - 3*Leading, 192}}, note + " A bar at the left marks what differs."},
		{"one fewer", []string{"one", "two"}, []string{"two"}, nil, note},
		{"turned round", []string{"one", "two"}, []string{"two", "one"}, nil, note},
		{"a new sheet", nil, []string{"one"}, nil, "New since A."},
	} {
		now := flowed(c.now...)
		var was []*Sheet
		if c.was != nil {
			was = append(was, flowed(c.was...))
		}
		other := Revise([]*Sheet{now}, was, "A")
		if same := c.name == "the same"; same != (len(other) == 0) {
			t.Errorf("%s: %d sheets read otherwise", c.name, len(other))
		}
		if now.Revision != c.note {
			t.Errorf("%s: %q, want %q", c.name, now.Revision, c.note)
		}
		got := bars(now)
		if len(got) != len(c.bars) {
			t.Errorf("%s: bars %v, want %v", c.name, got, c.bars)
			continue
		}
		for i, bar := range c.bars {
			if !near(got[i][0], bar[0]) || !near(got[i][1], bar[1]) {
				t.Errorf("%s: bar %v, want %v", c.name, got[i], bar)
			}
		}
	}
}

func near(a, b float64) bool { return a-b < 1e-9 && b-a < 1e-9 }

// TestRevisePicture: a picture that is drawn otherwise has a bar, though its words
// are the same and wherever it stands; the lines of a table say nothing.
func TestRevisePicture(t *testing.T) {
	t.Parallel()
	sheet := func(head string, shapes ...Shape) *Sheet {
		f := NewFlow(func(int) (*Sheet, Piece) { return &Sheet{Frame: Frame{WidthMm: 140, HeightMm: 200}}, Piece{} })
		f.Add(Stack(Paragraph("", head, 3, false, f.Width())...))
		p := Piece{Height: 20}
		for _, s := range shapes {
			p.Draw.Add(s)
		}
		p.Draw.Add(Text{SizeMm: 3, Content: "PCD 140"})
		f.Add(p)
		return f.Sheets[0]
	}
	for _, c := range []struct {
		name     string
		was, now *Sheet
		bars     int
	}{
		{"the same", sheet("one", Ring(5, 5, 3, 0.3)), sheet("one", Ring(5, 5, 3, 0.3)), 0},
		{"moved on the sheet", sheet("one", Ring(5, 5, 3, 0.3)), sheet("one one one one one one one one one one one one one one one one one one one one", Ring(5, 5, 3, 0.3)), 1},
		{"a larger ring", sheet("one", Ring(5, 5, 3, 0.3)), sheet("one", Ring(5, 5, 3.1, 0.3)), 1},
		{"a line that leans", sheet("one", Segment(0, 0, 5, 5, 0.3)), sheet("one", Segment(0, 0, 5, 6, 0.3)), 1},
		{"the rules of a table", sheet("one", Segment(0, 0, 5, 0, 0.3)), sheet("one", Segment(0, 0, 6, 0, 0.3)), 0},
	} {
		other := Revise([]*Sheet{c.now}, []*Sheet{c.was}, "A")
		if got := bars(c.now); len(got) != c.bars || len(other) != c.bars {
			t.Errorf("%s: bars %v, %d sheets differ", c.name, got, len(other))
		}
	}
}

// TestReviseDrawn: a sheet that is not set in pieces differs by a hundredth of a
// millimetre, and has one bar up all of it.
func TestReviseDrawn(t *testing.T) {
	t.Parallel()
	sheet := func(x float64) *Sheet {
		s := &Sheet{Frame: Frame{WidthMm: 140, HeightMm: 200}}
		inner := &Drawing{Items: []Item{PopCross(x, 50)}}
		s.Draw.Place(inner, 1, 2)
		return s
	}
	if other := Revise([]*Sheet{sheet(40)}, []*Sheet{sheet(40)}, "A"); len(other) != 0 {
		t.Error("equal sheets differ")
	}
	now := sheet(40.01)
	if other := Revise([]*Sheet{now}, []*Sheet{sheet(40)}, "A"); len(other) != 1 {
		t.Error("a moved cross does not differ")
	}
	if got := bars(now); len(got) != 1 || got[0] != [2]float64{MarginMm, 200 - MarginMm} {
		t.Errorf("bars %v", got)
	}
	// The note stands below the title block, and the stamp clear of the bar.
	before := len(now.Draw.Items)
	noteRevision(now)
	stamp(now)
	note, up := now.Draw.Items[before].(Text), now.Draw.Items[before+2].(Text)
	if note.Content != now.Revision || note.YMm+note.SizeMm*0.75 > MarginMm || note.YMm-note.SizeMm*0.25 < 5 || TextRect(note).X1 > 140-MarginMm {
		t.Errorf("note %+v", note)
	}
	if up.XMm > MarginMm-barGapMm {
		t.Errorf("the stamp at %.2f lies on the bar at %.2f", up.XMm, MarginMm-barGapMm)
	}
}
