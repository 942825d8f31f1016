package parts

import (
	"math"
	"strings"
	"testing"
)

func TestPathCrossing(t *testing.T) {
	for _, c := range []struct{ path, want string }{
		{"M0 0 L100 0 L100 50 L0 50 Z", ""},
		{"M0 0 L100 0 L100 50 L0 50 L0 0 Z", ""},                                             // closed twice
		{"m0 0 l.1 0 .1 0 .1 0 0 .1 0 .1 0 .1 -.3 0 z", ""},                                  // rounding at the end
		{"M-50 0 A50 50 0 0 1 50 0 A50 50 0 0 1 -50 0 Z", ""},                                // a circle
		{"M0 0 H60 V40 H0 V30 H50 V10 H0 Z", ""},                                             // a hook
		{"M0 0 L50 50 L100 0 L100 100 L50 50 L0 100 Z", ""},                                  // touches itself in a point
		{"M-90 -90 L90 90 L90 -90 L-60 90 Z", "it crosses itself near x 8.182, y 8.182 mm"},  // y = x meets y = −90 − 1.2(x − 90)
		{"M0 0 C300 300 -200 300 100 0 Z", "crosses itself"},                                 // a loop
		{"M0 0 L100 0 L100 100 L0 100 L50 -10 Z", "it crosses itself near x 45.455, y 0 mm"}, // the side to 50, −10 is 10/11 down
		{"M0 0 V1000 H10 V-1 H20 V1000 H30 V500 H-5 Z", "crosses itself"},                    // higher than wide
	} {
		corners, wrong := parsePath(c.path)
		if wrong != "" {
			t.Fatalf("%s: %s", c.path, wrong)
		}
		if got := pathCrossing(corners); got != c.want && (c.want == "" || !strings.Contains(got, c.want)) {
			t.Errorf("%s: %q, want %q", c.path, got, c.want)
		}
	}
}

// TestPathCrossingIsBounded: pieces that all lie side by side are given up
// before they cost seconds.
func TestPathCrossingIsBounded(t *testing.T) {
	var c []xy
	for i := range 60_000 {
		c = append(c, xy{float64(i) / 60, 1e4 * float64(i%2)})
	}
	if got := pathCrossing(c); !strings.Contains(got, "too intricate") {
		t.Errorf("%q", got)
	}
}

// FuzzPath: a contour within bounds or a reason, never both; a contour that
// does not cross itself turned about is still one that does not.
func FuzzPath(f *testing.F) {
	for _, seed := range []string{"M0 0 L100 0 L100 50 Z", "m0-1-1-1c0 0 1 1 2 2s3 3 4 4q1 1 2 2t3 3a5 5 0 01 6 6h1v1z", "M-50 0 A50 50 0 0 1 50 0 A50 50 0 0 1 -50 0 Z",
		"M-90 -90 L90 90 L90 -90 L-60 90 Z", "M0 0", "", "Z", "M1e9 0", "MNaN 0Z", "M0 0 A0 0 0 0 0 1 1 Z", "M0 0 A1e-9 1 0 1 1 1 1 Z", "M0 0 a.0000001 9999 45 1 0 9 9z"} {
		f.Add(seed)
	}
	f.Fuzz(func(t *testing.T, text string) {
		corners, wrong := parsePath(text)
		if wrong != "" {
			if corners != nil {
				t.Fatalf("%q: both a contour and %q", text, wrong)
			}
			return
		}
		for _, c := range corners {
			if math.IsNaN(c.x) || math.IsNaN(c.y) {
				t.Fatalf("%q: the contour has %v", text, c)
			}
		}
		if a := area(corners); math.IsNaN(a) {
			t.Fatalf("%q: area %v", text, a)
		}
		turned := make([]xy, len(corners))
		for i, c := range corners {
			turned[i] = xy{-c.x, -c.y}
		}
		if got, again := pathCrossing(corners), pathCrossing(turned); (got == "") != (again == "") {
			t.Fatalf("%q: %q, and turned half round %q", text, got, again)
		}
	})
}
