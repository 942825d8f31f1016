package draw

import (
	"slices"
	"testing"

	"github.com/tdewolff/canvas"
	"pgregory.net/rapid"
)

// The grid of occupied answers as a comparison with everything it was given
// does, also after texts were taken back.
func TestOccupiedFindsAllThatMeets(t *testing.T) {
	t.Parallel()
	at := rapid.Float64Range(-30, 130)
	side := rapid.Float64Range(0.1, 40)
	drawRect := func(t *rapid.T) Rect {
		x, y := at.Draw(t, "x"), at.Draw(t, "y")
		return Rect{x, y, x + side.Draw(t, "width"), y + side.Draw(t, "height")}
	}
	rapid.Check(t, func(t *rapid.T) {
		window := Rect{0, 0, 100, 80}
		room := NewOccupied(window)
		var texts []Rect
		var points []canvas.Point
		for range rapid.IntRange(0, 12).Draw(t, "texts") {
			r := drawRect(t)
			room.AddText(r)
			texts = append(texts, r)
		}
		for range rapid.IntRange(0, 12).Draw(t, "points") {
			p := canvas.Point{X: at.Draw(t, "px"), Y: at.Draw(t, "py")}
			room.addPoint(p.X, p.Y)
			if window.HasPoint(p.X, p.Y) {
				points = append(points, p)
			}
		}
		kept := rapid.IntRange(0, len(texts)).Draw(t, "kept")
		room.undo(kept)
		for range 20 {
			r := drawRect(t)
			g := r.Grown(0.5)
			clear := window.Holds(r) && !slices.ContainsFunc(texts[:kept], g.Meets)
			free := clear && !slices.ContainsFunc(points, func(p canvas.Point) bool { return g.HasPoint(p.X, p.Y) })
			if got := room.ClearOfTexts(r); got != clear {
				t.Fatalf("clearOfTexts(%v) = %v", r, got)
			}
			if got := room.Free(r); got != free {
				t.Fatalf("free(%v) = %v", r, got)
			}
		}
	})
}

// TestRects: a rectangle moved, that about two, and what two have in common.
func TestRects(t *testing.T) {
	t.Parallel()
	r := R(1, 2, 5, 9)
	if got := r.Moved(10, -20); got != R(11, -18, 15, -11) {
		t.Errorf("moved: %v", got)
	}
	for s, want := range map[Rect]Rect{R(2, 3, 4, 5): r, R(0, 3, 4, 5): R(0, 2, 5, 9), R(2, 0, 4, 5): R(1, 0, 5, 9), R(2, 3, 7, 5): R(1, 2, 7, 9), R(2, 3, 4, 12): R(1, 2, 5, 12), R(20, 30, 40, 50): R(1, 2, 40, 50)} {
		if got := r.With(s); got != want || s.With(r) != want {
			t.Errorf("with %v: %v, want %v", s, got, want)
		}
	}
	for s, want := range map[Rect]Rect{R(2, 3, 4, 5): R(2, 3, 4, 5), R(0, 3, 4, 5): R(1, 3, 4, 5), R(2, 0, 4, 5): R(2, 2, 4, 5), R(2, 3, 7, 5): R(2, 3, 5, 5), R(2, 3, 4, 12): R(2, 3, 4, 9), R(6, 3, 7, 5): R(6, 3, 5, 5)} {
		if got := r.Within(s); got != want || s.Within(r) != want {
			t.Errorf("within %v: %v, want %v", s, got, want)
		}
	}
}

// TestOnlyMoves: a transform moves alone wherever it moves to, and not where any of its other numbers is another.
func TestOnlyMoves(t *testing.T) {
	t.Parallel()
	for _, moved := range []canvas.Matrix{canvas.Identity, canvas.Identity.Translate(3, 0), canvas.Identity.Translate(-3, 7)} {
		if !OnlyMoves(moved) {
			t.Errorf("%v does more than move", moved)
		}
		for i := range 2 {
			for k := range 2 {
				other := moved
				if other[i][k] += 0.5; OnlyMoves(other) {
					t.Errorf("%v only moves", other)
				}
			}
		}
	}
}
