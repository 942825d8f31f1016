package changes

import (
	"testing"

	"centrepop/layout/part"
	"centrepop/layout/threads"
)

func round(minMm, maxMm float64) part.Sized { return part.Sized{MinMm: minMm, MaxMm: maxMm} }

func thread(t *testing.T, name string) part.Sized {
	t.Helper()
	th, err := threads.Parse(name)
	if err != nil {
		t.Fatal(err)
	}
	return part.Sized{MinMm: th.MajorMm, MaxMm: th.MajorMm, Thread: &th}
}

// TestStepUse: M30x2 has pitch diameter 28.701 and minor diameter 27.835 (ISO
// 724); the root of its bolt is 27.546 by ISO 68-1, and 27.439 is taken.
func TestStepUse(t *testing.T) {
	t.Parallel()
	m30 := thread(t, "M30x2")
	for _, c := range []struct {
		name    string
		was, is part.Sized
		inside  bool
		want    Use
	}{
		{"same limits", round(20, 20.1), round(20, 20.1), false, AsIs},
		{"wider limits", round(20, 20.1), round(19.9, 20.1), false, AsIs},
		{"shaft, limits overlap", round(20, 20.1), round(19.9, 20.05), false, Measure},
		{"shaft smaller", round(20, 20.1), round(19.9, 20), false, Rework},
		{"shaft larger", round(20, 20.1), round(20.1, 20.2), false, Scrap},
		{"bore larger", round(20, 20.1), round(20.1, 20.2), true, Rework},
		{"bore smaller", round(20, 20.1), round(19.9, 20), true, Scrap},
		{"same thread", m30, m30, false, AsIs},
		{"bolt turned off to its root", m30, round(27.43, 27.6), false, Rework},
		{"bolt whose root would show", m30, round(27.45, 27.6), false, Scrap},
		{"nut bored out", m30, round(30, 30.1), true, Rework},
		{"nut bored to its root", m30, round(29.9, 30.1), true, Rework},
		{"nut bored to less", m30, round(29.8, 29.9), true, Scrap},
		{"thread on a larger round", round(30, 30.2), m30, false, Rework},
		{"thread on a round about its size", round(29.8, 30.2), m30, false, Measure},
		{"thread on a round under its pitch diameter", round(28.5, 28.7), m30, false, Scrap},
		{"thread in a smaller bore", round(27, 27.835), m30, true, Rework},
		{"thread in a bore about its size", round(27.8, 28.8), m30, true, Measure},
		{"thread in a bore over its pitch diameter", round(28.71, 29), m30, true, Scrap},
	} {
		if got := stepUse(c.was, c.is, c.inside); got != c.want {
			t.Errorf("%s: %q, want %q", c.name, got, c.want)
		}
	}
}

// TestWorse: the uses have one order.
func TestWorse(t *testing.T) {
	t.Parallel()
	for i, a := range uses {
		for k, b := range uses {
			if got := worse(a, b); got != uses[max(i, k)] {
				t.Errorf("of %q and %q: %q", a, b, got)
			}
		}
		if a != NoMetal && useWords[a] == "" {
			t.Errorf("no words for %q", a)
		}
	}
}
