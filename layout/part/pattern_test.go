package part_test

import (
	"math"
	"os"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"centrepop/layout/part"
)

// TestCircleFactors checks hole coordinates per unit diameter, hole 1 at top,
// with the factors of Machinery's Handbook, 23rd ed., Jig Boring, p. 950 ff
// (type A), as listed in testdata/reference/worked_examples.md (a).
func TestCircleFactors(t *testing.T) {
	text, err := os.ReadFile("../../testdata/reference/worked_examples.md")
	if err != nil {
		t.Fatal(err)
	}
	row := regexp.MustCompile(`(?m)^\| (\d+) \| (0\.\d{5}) \| ([-0-9.,; ]+) \|$`)
	rows := row.FindAllStringSubmatch(string(text), -1)
	if len(rows) < 5 {
		t.Fatalf("found %d rows of factors", len(rows))
	}
	for _, r := range rows {
		n, _ := strconv.Atoi(r[1])
		chord, _ := strconv.ParseFloat(r[2], 64)
		c, err := part.NewBoltCircle(1, n, 0)
		if err != nil {
			t.Fatal(err)
		}
		if math.Abs(c.ChordMm-chord) > 0.6e-5 {
			t.Errorf("%d holes: chord %v, want %v", n, c.ChordMm, chord)
		}
		pairs := strings.Split(r[3], ";")
		if len(pairs) != n {
			t.Fatalf("%d holes: %d coordinates", n, len(pairs))
		}
		for i, pair := range pairs {
			xy := strings.Split(pair, ",")
			x, _ := strconv.ParseFloat(strings.TrimSpace(xy[0]), 64)
			y, _ := strconv.ParseFloat(strings.TrimSpace(xy[1]), 64)
			if h := c.Holes[i]; math.Abs(h.XMm-x) > 0.6e-5 || math.Abs(h.YMm-y) > 0.6e-5 || h.N != i+1 {
				t.Errorf("%d holes: hole %d at (%v, %v), want (%v, %v)", n, i+1, h.XMm, h.YMm, x, y)
			}
		}
	}
}

// TestCircleHandbookChecks holds single published answers.
func TestCircleHandbookChecks(t *testing.T) {
	// Three holes in the circumscribing square, origin at the upper left
	// corner, y down (Machinery's Handbook, type A; from memory).
	c, err := part.NewBoltCircle(1, 3, 0)
	if err != nil {
		t.Fatal(err)
	}
	for i, want := range [][2]float64{{0.5, 0}, {0.93301, 0.75}, {0.06699, 0.75}} {
		if x, y := c.Holes[i].XMm+0.5, 0.5-c.Holes[i].YMm; math.Abs(x-want[0]) > 1e-5 || math.Abs(y-want[1]) > 1e-5 {
			t.Errorf("hole %d at (%v, %v), want %v", i+1, x, y, want)
		}
	}
	// Twelve holes straddling the centre line on 8 in: 1.03528 and 3.86370
	// (workshop text: 4 sin 15°, 4 cos 15°).
	c, err = part.NewBoltCircle(8, 12, 15)
	if err != nil {
		t.Fatal(err)
	}
	if h := c.Holes[0]; math.Abs(h.XMm-1.03528) > 1e-5 || math.Abs(h.YMm-3.86370) > 1e-5 {
		t.Errorf("first hole at (%v, %v)", h.XMm, h.YMm)
	}
}

func TestCircleRefusals(t *testing.T) {
	for _, c := range []struct {
		pcd   float64
		count int
		first float64
	}{{0, 4, 0}, {-1, 4, 0}, {math.NaN(), 4, 0}, {math.Inf(1), 4, 0}, {10001, 4, 0}, {10, 0, 0}, {10, 1001, 0}, {10, 4, math.NaN()}, {10, 4, 361}} {
		if got, err := part.NewBoltCircle(c.pcd, c.count, c.first); err == nil || got != nil {
			t.Errorf("%v: got %v, %v", c, got, err)
		}
	}
}

// TestCircleProperties: every hole on the pitch circle, neighbours one chord
// apart, hole 1 the first at or after TOP.
func TestCircleProperties(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		pcd := rapid.Float64Range(1, 5000).Draw(t, "pcd")
		count := rapid.IntRange(2, 60).Draw(t, "count")
		first := rapid.Float64Range(-360, 360).Draw(t, "first")
		c, err := part.NewBoltCircle(pcd, count, first)
		if err != nil {
			t.Fatal(err)
		}
		across := 0.0
		for i, h := range c.Holes {
			across = max(across, math.Hypot(h.XMm-c.Holes[0].XMm, h.YMm-c.Holes[0].YMm))
			if math.Abs(math.Hypot(h.XMm, h.YMm)-pcd/2) > 1e-6 {
				t.Fatalf("hole %d is off the circle", h.N)
			}
			next := c.Holes[(i+1)%count]
			if d := math.Hypot(h.XMm-next.XMm, h.YMm-next.YMm); math.Abs(d-c.ChordMm) > 1e-6 {
				t.Fatalf("holes %d and %d are %v apart, chord %v", h.N, next.N, d, c.ChordMm)
			}
			if h.AngleDeg < 0 || h.AngleDeg >= 360 || (i > 0 && h.AngleDeg <= c.Holes[i-1].AngleDeg) {
				t.Fatalf("angle %v out of order", h.AngleDeg)
			}
		}
		if math.Abs(c.AcrossMm-across) > 1e-6 {
			t.Fatalf("%v across, of all holes %v", c.AcrossMm, across)
		}
		if c.Holes[0].AngleDeg > 360/float64(count)+1e-6 {
			t.Fatalf("hole 1 at %v is not the first after TOP", c.Holes[0].AngleDeg)
		}
	})
}

// TestCircleBounds: what a pitch circle can be, at its bounds.
func TestCircleBounds(t *testing.T) {
	t.Parallel()
	for _, c := range []struct {
		pcdMm    float64
		count    int
		firstDeg float64
		ok       bool
	}{
		{100, 1, 0, true}, {100, 0, 0, false}, {100, 1000, 0, true}, {100, 1001, 0, false}, {0.1, 4, 360, true}, {0, 4, 0, false}, {10_000, 4, -360, true}, {10_000.1, 4, 0, false},
		{100, 4, 360.1, false}, {100, 4, -360.1, false}, {math.NaN(), 4, 0, false}, {100, 4, math.NaN(), false},
	} {
		if got, err := part.NewBoltCircle(c.pcdMm, c.count, c.firstDeg); (err == nil) != c.ok || c.ok && len(got.Holes) != c.count {
			t.Errorf("%+v: %v", c, err)
		}
	}
}
