package truesize

import (
	"centrepop/parts"
	"centrepop/templates/draw"
	"centrepop/templates/sheettest"
	"testing"

	"github.com/tdewolff/canvas"
)

// TestMatchMarksMeet finds each numbered mark on exactly two tiles, at the
// same place of the face, on a cut line of both.
func TestMatchMarksMeet(t *testing.T) {
	pl := sheettest.JobOf("tiles", parts.Millimetres, sheettest.RingPart(620))
	face := pl.Parts[0].Faces[0]
	outline, err := canvas.ParseSVGPath(string(face.Outline))
	if err != nil {
		t.Fatal(err)
	}
	p := &punch{pl: pl, part: pl.Parts[0], face: face, outline: outline, bounds: draw.R(-315, -315, 315, 319)}
	tiles := p.tile(draw.Frame{WidthMm: 210, HeightMm: 297, Name: "A4"})
	if len(tiles.marks) < 20 {
		t.Fatalf("only %d match marks", len(tiles.marks))
	}
	for _, m := range tiles.marks {
		on := 0
		for row := range tiles.rows.from {
			for col := range tiles.cols.from {
				if !tiles.empty[row][col] && tiles.window(p, col, row).Holds(draw.R(m.x, m.y, m.x, m.y).Grown(3.5)) {
					on++
				}
			}
		}
		if on != 2 {
			t.Errorf("mark %d at %.1f, %.1f is whole on %d tiles", m.n, m.x, m.y, on)
		}
	}
}

func TestTileNames(t *testing.T) {
	for _, c := range []struct{ got, want string }{
		{tileName(0, 0), "A1"}, {tileName(2, 25), "Z3"}, {tileName(0, 26), "AA1"}, {tileName(0, 701), "ZZ1"},
	} {
		if c.got != c.want {
			t.Errorf("got %q, want %q", c.got, c.want)
		}
	}
}

func TestDivideCoversAndKeepsSpansWhole(t *testing.T) {
	spans := [][2]float64{{-300, -290}, {-125, -95}, {-120, -80}, {-90, -60}, {40, 75}, {74, 96}, {95, 120}, {200, 380}}
	s := divide(-310, 400, 190, spans)
	for i := range s.cut {
		overlap := s.from[i] + s.size - s.from[i+1]
		if overlap < overlapMm-1e-9 {
			t.Errorf("strips %d and %d overlap by %g", i, i+1, overlap)
		}
		if s.cut[i] < s.from[i+1]+overlapMm/2-1e-9 || s.cut[i] > s.from[i]+s.size-overlapMm/2+1e-9 {
			t.Errorf("cut %d at %g is too near an edge", i, s.cut[i])
		}
	}
	if last := s.from[len(s.from)-1] + s.size; last < 400 {
		t.Errorf("covered only up to %g", last)
	}
	for _, sp := range spans {
		whole := false
		for _, from := range s.from {
			whole = whole || (from <= sp[0] && sp[1] <= from+s.size)
		}
		if !whole {
			t.Errorf("span %v is whole on no strip", sp)
		}
	}
}

func TestCutsKeepClearOfHolesWhereTheyCan(t *testing.T) {
	var spans [][2]float64
	for i := range 40 {
		at := float64(i) * 20
		spans = append(spans, [2]float64{at, at + 16}) // gaps of 4
	}
	s := divide(-5, 800, 190, spans)
	if len(s.cut) < 4 {
		t.Fatalf("%d cuts", len(s.cut))
	}
	for _, cut := range s.cut {
		for _, sp := range spans {
			if sp[0] < cut && cut < sp[1] {
				t.Errorf("the cut at %g goes through %v", cut, sp)
			}
		}
	}
}
