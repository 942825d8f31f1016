package draw

import (
	"reflect"
	"testing"

	"centrepop/parts/geom"
)

// Rows in blocks are read downwards, and what lacks at the end is empty.
func TestAbreast(t *testing.T) {
	t.Parallel()
	rows := [][]string{{"a", "1"}, {"b", "2"}, {"c", "3"}, {"d", "4"}, {"e", "5"}}
	want := [][]string{{"a", "1", "c", "3", "e", "5"}, {"b", "2", "d", "4", "", ""}}
	if got := Abreast(rows, 3); !reflect.DeepEqual(got, want) {
		t.Errorf("got %q", got)
	}
	if got := Abreast(nil, 3); got != nil {
		t.Errorf("of nothing: %q", got)
	}
}

// The first sheet of a flow keeps its scale; each has a head and things of its own.
func TestPages(t *testing.T) {
	t.Parallel()
	pages := Pages(Sheet{Frame: Frame{WidthMm: 210, HeightMm: 297}, Name: "Cover", Scale: "rules 1:1 only"}, Piece{Height: 30}, "Job", "continued")
	first, head := pages(0)
	second, running := pages(1)
	if first.Scale != "rules 1:1 only" || head.Height != 30 || second.Scale != "not to scale" || running.Height != 10 || first.Name != second.Name || first == second {
		t.Errorf("%+v under %g mm, %+v under %g mm", first, head.Height, second, running.Height)
	}
	if plain, _ := Pages(Sheet{}, Piece{}, "", "")(0); plain.Scale != "not to scale" {
		t.Errorf("scale %q", plain.Scale)
	}
}

// A loop is the line with its ends joined.
func TestLine(t *testing.T) {
	t.Parallel()
	at := func(p geom.Point) (x, y float64) { return 2 * p.XMm, -p.YMm }
	points := []geom.Point{{}, {XMm: 5}, {XMm: 5, YMm: 3}}
	if got := Line(points, at).ToSVG(); got != "M0 0H10V-3" {
		t.Errorf("line %s", got)
	}
	if got := Loop(points, at).ToSVG(); got != "M0 0H10V-3z" {
		t.Errorf("loop %s", got)
	}
}
