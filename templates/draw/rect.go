package draw

import "github.com/tdewolff/canvas"

// Rect is an upright rectangle in millimetres.
type Rect struct{ X0, Y0, X1, Y1 float64 }

// R is the rectangle from its lower left to its upper right corner.
func R(x0, y0, x1, y1 float64) Rect { return Rect{x0, y0, x1, y1} }

// Width is the level side, in millimetres.
func (r Rect) Width() float64 { return r.X1 - r.X0 }

// Height is the upright side, in millimetres.
func (r Rect) Height() float64 { return r.Y1 - r.Y0 }

// Grown is r with d added on every side.
func (r Rect) Grown(d float64) Rect { return Rect{r.X0 - d, r.Y0 - d, r.X1 + d, r.Y1 + d} }

// Moved is r moved by so many millimetres.
func (r Rect) Moved(dx, dy float64) Rect { return Rect{r.X0 + dx, r.Y0 + dy, r.X1 + dx, r.Y1 + dy} }

// With is the rectangle about r and s.
func (r Rect) With(s Rect) Rect {
	return Rect{min(r.X0, s.X0), min(r.Y0, s.Y0), max(r.X1, s.X1), max(r.Y1, s.Y1)}
}

// Within is what r and s have in common, inside out where that is nothing.
func (r Rect) Within(s Rect) Rect {
	return Rect{max(r.X0, s.X0), max(r.Y0, s.Y0), min(r.X1, s.X1), min(r.Y1, s.Y1)}
}

// Meets tells whether the rectangles have more than an edge in common.
func (r Rect) Meets(s Rect) bool { return r.X0 < s.X1 && s.X0 < r.X1 && r.Y0 < s.Y1 && s.Y0 < r.Y1 }

// Holds tells whether s lies in r, edges included.
func (r Rect) Holds(s Rect) bool { return r.X0 <= s.X0 && s.X1 <= r.X1 && r.Y0 <= s.Y0 && s.Y1 <= r.Y1 }

// HasPoint tells whether a point lies in r, edges included.
func (r Rect) HasPoint(x, y float64) bool { return r.X0 <= x && x <= r.X1 && r.Y0 <= y && y <= r.Y1 }

// Path is the rectangle as a closed path.
func (r Rect) Path() *canvas.Path {
	w, h := r.Width(), r.Height()
	if canvas.Equal(w, 0) || canvas.Equal(h, 0) {
		return &canvas.Path{}
	}
	p := pathOf(5)
	p.MoveTo(r.X0, r.Y0)
	p.LineTo(w+r.X0, r.Y0)
	p.LineTo(w+r.X0, h+r.Y0)
	p.LineTo(r.X0, h+r.Y0)
	p.Close()
	return p
}

// pathOf is an empty path with room for so many straight pieces.
func pathOf(pieces int) *canvas.Path {
	const numbers = 4 // of a piece
	return canvas.NewPathFromData(make([]float64, 0, numbers*max(0, pieces)))
}
