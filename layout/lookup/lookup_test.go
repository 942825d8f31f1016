package lookup

import (
	"errors"
	"fmt"
	"math"
	"strconv"
	"testing"
)

func TestRange(t *testing.T) {
	t.Parallel()
	for _, c := range []struct {
		v    float64
		fine bool
	}{
		{2, false}, {2.001, true}, {5, true}, {5.001, false},
		{math.NaN(), false}, {math.Inf(1), false}, {math.Inf(-1), false},
	} {
		err := Length("length", c.v, 2, 5)
		var r *RangeError
		if (err == nil) != c.fine || (err != nil && (!errors.As(err, &r) || r.Unit != "mm" || r.Above != 2 || r.UpTo != 5)) {
			t.Errorf("%v: %v", c.v, err)
		}
	}
	for _, c := range []struct {
		v, above, upTo float64
		fine           bool
	}{{0, Under(0), 5, true}, {math.Nextafter(0, -1), Under(0), 5, false}, {5, 0, Under(5), false}, {math.Nextafter(5, 0), 0, Under(5), true}, {-5, Under(-5), 0, true}} {
		if err := Length("length", c.v, c.above, c.upTo); (err == nil) != c.fine {
			t.Errorf("%v over %v up to %v: %v", c.v, c.above, c.upTo, err)
		}
	}
	if err := Length("length", math.Inf(1), 0, math.Inf(1)); err == nil {
		t.Error("an infinite length is accepted")
	}
	var r *RangeError
	if errors.As(Angle("turn", 400, 0, 360), &r); r == nil || r.Unit != "deg" {
		t.Error("an angle is not in degrees")
	}
	if r = nil; errors.As(Number("count", 0, 0, 9), &r) && r.Unit != "" {
		t.Error("a count has a unit")
	}
}

func TestWords(t *testing.T) {
	t.Parallel()
	for _, c := range []struct {
		s    Source
		want string
	}{
		{Source{Name: "ISO 286-1", State: Checked}, "ISO 286-1"},
		{Source{Name: "DIN 6888", State: FromMemory}, "DIN 6888, from memory"},
		{Source{Name: "", State: Practice}, "common practice, no source"},
		{Source{Name: "DIN 509", State: Unchecked}, "DIN 509, unchecked"},
		{Source{Name: "ISO 2768-m", Of: " (radii)", State: Checked}, "ISO 2768-m (radii)"},
		{Source{}, ""}, {NoSource, "common practice, no source"}, {Standard("ISO 261"), "ISO 261"}, {Told("drawing"), "drawing"},
	} {
		if text, err := c.s.MarshalText(); err != nil || c.s.String() != c.want || string(text) != c.want {
			t.Errorf("%q, %q, %v, want %q", c.s, text, err, c.want)
		}
	}
	if got := (&UnknownError{"form", "C", []string{"A", "B"}}).Error(); got != `form "C" is not known, only [A B]` {
		t.Error(got)
	}
}

// TestRefusal: a refusal is written in mm for a log and as asked for a sheet, what it wraps too.
func TestRefusal(t *testing.T) {
	t.Parallel()
	cause := errors.New("not defined")
	inner := Refuse("wall of %v: %w", Mm(3.00049), cause)
	err := Refuse("weld: %v in a %w, %d times", Mm(4.5), inner, 2)
	if got := err.Error(); got != "weld: 4.5 mm in a wall of 3 mm: not defined, 2 times" {
		t.Error(got)
	}
	var r *Refusal
	if !errors.Is(err, cause) || !errors.As(err, &r) {
		t.Fatalf("%v does not wrap its cause", err)
	}
	if got := r.In(func(mm float64) string { return strconv.FormatFloat(mm*2, 'f', 2, 64) }); got != "weld: 9.00 in a wall of 6.00: not defined, 2 times" {
		t.Error(got)
	}
}

func ExampleLength() {
	err := Length("shaft diameter", 700, 6, 500)
	var r *RangeError
	if errors.As(err, &r) {
		fmt.Println(r.What, "above", r.Above, "and up to", r.UpTo)
	}
	// Output: shaft diameter above 6 and up to 500
}
