package review

import (
	"slices"
	"testing"

	"pgregory.net/rapid"
)

// around is a ring of n places from a clock angle, on a radius.
func around(n int, firstDeg, radiusMm, zMm float64) []place {
	var out []place
	for i := range n {
		out = append(out, place{firstDeg + 360*float64(i)/float64(n), radiusMm, zMm})
	}
	return out
}

// The turns that bring a pattern onto itself, counted by hand.
func TestOrder(t *testing.T) {
	t.Parallel()
	for name, c := range map[string]struct {
		places []place
		want   int
	}{
		"one hole":                     {around(1, 30, 50, 0), 1},
		"six on a circle":              {around(6, 30, 50, 0), 6},
		"given beyond a turn":          {[]place{{-30, 50, 0}, {450, 50, 0}, {210, 50, 0}}, 3},
		"one of six missing":           {around(6, 0, 50, 0)[1:], 1},
		"two of six missing, opposite": {slices.Delete(slices.Delete(around(6, 0, 50, 0), 3, 4), 0, 1), 2},
		"six and four":                 {append(around(6, 0, 50, 0), around(4, 10, 80, 0)...), 2},
		"equal radius, other height":   {append(around(6, 0, 50, 0), around(9, 7, 50, 20)...), 3},
		"within 0.01 mm":               {[]place{{0, 50, 0}, {180.011, 50, 0}}, 2},
		"out by 0.02 mm":               {[]place{{0, 50, 0}, {180.023, 50, 0}}, 1},
		"radius out by 0.02 mm":        {[]place{{0, 50, 0}, {180, 50.02, 0}}, 1},
		"one place twice":              {append(around(3, 0, 50, 0), place{360 - 1e-9, 50, 0}), 3},
		"five thousand":                {around(5000, 1, 9000, 0), 5000},
	} {
		if got := (&pattern{places: c.places}).order(); got != c.want {
			t.Errorf("%s: order %d, want %d", name, got, c.want)
		}
	}
}

// A six-hole and a four-hole circle share the half turn alone.
func TestRightTurns(t *testing.T) {
	t.Parallel()
	common, wrong := rightTurns([]*pattern{{around(6, 0, 50, 0)}, {around(4, 0, 80, 0)}})
	if want := []float64{0, 180}; !slices.Equal(common, want) {
		t.Errorf("common turns %v, want %v", common, want)
	}
	if want := []float64{60, 90, 120, 240, 270, 300}; !slices.Equal(wrong, want) {
		t.Errorf("turns of one alone %v, want %v", wrong, want)
	}
}

// The sweep finds the pairs that a comparison of all with all finds.
func TestMeeting(t *testing.T) {
	t.Parallel()
	side := rapid.Float64Range(0, 30)
	rapid.Check(t, func(t *rapid.T) {
		var boxes []box
		for range rapid.IntRange(0, 15).Draw(t, "boxes") {
			x, y := rapid.Float64Range(0, 100).Draw(t, "x"), rapid.Float64Range(0, 100).Draw(t, "y")
			boxes = append(boxes, box{rapid.IntRange(0, 8).Draw(t, "n"), x, y, x + side.Draw(t, "w"), y + side.Draw(t, "h")})
		}
		want := map[[2]int]bool{}
		for _, a := range boxes {
			for _, b := range boxes {
				if a.n < b.n && a.x0 <= b.x1 && b.x0 <= a.x1 && a.y0 <= b.y1 && b.y0 <= a.y1 {
					want[[2]int{a.n, b.n}] = true
				}
			}
		}
		got := meeting(slices.Clone(boxes))
		for _, pair := range got {
			if !want[pair] {
				t.Fatalf("%v do not meet", pair)
			}
		}
		if len(got) != len(want) || !slices.IsSortedFunc(got, func(a, b [2]int) int { return slices.Compare(a[:], b[:]) }) {
			t.Fatalf("found %v, want %v", got, want)
		}
	})
}
