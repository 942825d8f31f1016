package sheettest

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"centrepop/templates/draw"

	"github.com/tdewolff/canvas"
)

// TextsOf are the texts of a page in drawing order.
func TextsOf(t testing.TB, page *draw.Page) []string {
	var out []string
	for _, p := range Flatten(t, &page.Drawing, 0, 0, nil) {
		if text, ok := p.Item.(draw.Text); ok {
			out = append(out, text.Content)
		}
	}
	return out
}

// Placed is an item of a page with its place on paper.
type Placed struct {
	Item   draw.Item
	DX, DY float64
	Clip   *draw.Rect // nil: not clipped
}

// Flatten lists the items of a drawing with the groups resolved. It refuses
// any transform other than a move: nothing on a sheet is scaled.
func Flatten(t testing.TB, d *draw.Drawing, dx, dy float64, clip *draw.Rect) []Placed {
	t.Helper()
	var all []Placed
	for _, item := range d.Items {
		g, ok := item.(draw.Group)
		if !ok {
			all = append(all, Placed{item, dx, dy, clip})
			continue
		}
		m := g.Transform
		if !draw.OnlyMoves(m) {
			t.Fatalf("a group is scaled or turned: %v", m)
		}
		inner := clip
		if g.Clip != nil {
			b := g.Clip.Bounds()
			shown := draw.R(b.X0, b.Y0, b.X1, b.Y1).Moved(dx, dy)
			inner = &shown
		}
		all = append(all, Flatten(t, g.Drawing, dx+m[0][2], dy+m[1][2], inner)...)
	}
	return all
}

// Room is the rectangle an item covers on paper; it is turned inside out
// where nothing of the item is left by the clip.
func (p Placed) Room() draw.Rect {
	var r draw.Rect
	switch item := p.Item.(type) {
	case draw.Shape:
		b := item.Path.Bounds()
		r = draw.R(b.X0, b.Y0, b.X1, b.Y1).Grown(item.WidthMm / 2)
	case draw.Text:
		r = corners(item, 0).box()
	}
	r = r.Moved(p.DX, p.DY)
	if p.Clip != nil {
		r = r.Within(*p.Clip)
	}
	return r
}

// Overlap tells whether two texts, at any angles, lie over each other.
func Overlap(p, q Placed) bool {
	a, b := corners(p.Item.(draw.Text), touchMm), corners(q.Item.(draw.Text), touchMm)
	for i := range b {
		b[i] = b[i].Add(canvas.Point{X: q.DX - p.DX, Y: q.DY - p.DY})
	}
	return a.meets(b)
}

// CheckPage tests what holds for every page: items inside the margins, text
// large enough, no text over another.
func CheckPage(t testing.TB, name string, page *draw.Page) {
	t.Helper()
	const edge = draw.MarginMm - 0.6 // half a thick line
	inside := draw.R(edge, edge, page.WidthMm-edge, page.HeightMm-edge)
	texts := 0
	for _, p := range Flatten(t, &page.Drawing, 0, 0, nil) {
		r := p.Room()
		text, isText := p.Item.(draw.Text)
		if r.X0 > r.X1 || r.Y0 > r.Y1 {
			continue // clipped away
		}
		if !inside.Holds(r) {
			t.Errorf("%s page %s: %s lies outside the margins: %.1f", name, page.Label, describe(p.Item), r)
		}
		if !isText {
			continue
		}
		if text.SizeMm < draw.SmallMm-1e-9 {
			t.Errorf("%s page %s: %q is only %.2f mm", name, page.Label, text.Content, text.SizeMm)
		}
		if strings.TrimSpace(text.Content) == "" {
			t.Errorf("%s page %s: an empty text", name, page.Label)
		}
		texts++
	}
	for _, over := range Overlaid(page) {
		t.Errorf("%s page %s: %s", name, page.Label, over)
	}
	if texts < 10 {
		t.Errorf("%s page %s: only %d texts", name, page.Label, texts)
	}
}

func describe(item draw.Item) string {
	if text, ok := item.(draw.Text); ok {
		return fmt.Sprintf("%q", text.Content)
	}
	return "a shape"
}

// CrossAt returns the centre of a shape that is a centre-pop cross.
func CrossAt(s draw.Shape) (x, y float64, ok bool) {
	want := draw.PopCross(0, 0).Path
	if s.Path.Len() != want.Len() {
		return 0, 0, false
	}
	b := s.Path.Bounds()
	x, y = (b.X0+b.X1)/2, (b.Y0+b.Y1)/2
	coords, wanted := s.Path.Coords(), want.Coords()
	for i := range coords {
		if math.Hypot(coords[i].X-x-wanted[i].X, coords[i].Y-y-wanted[i].Y) > 1e-9 {
			return 0, 0, false
		}
	}
	return x, y, true
}
