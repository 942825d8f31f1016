package part

import (
	"math"
	"slices"
	"strings"
	"testing"

	"centrepop/layout/plan"
	"centrepop/parts"
)

// lipped is a hat: a base with two flanges, and one turned out on each of them.
const lipped = `part: hat
kind: folded
material: S235
top: scribe
stock: {sheet: 2, cut: laser}
outline: {rectangle: [200, 60]}
bends:
  radius: 2
  flanges:
    - {side: top, height: 40}
    - {side: bottom, height: 40}
    - {side: top-2, height: 25, toward: front, left: 10}
    - {side: bottom-2, height: 25, toward: front, angle: 80}
holes:
  - {name: feet, on: top-2, at: [[-60, 14], [60, 14]], size: 6.6 mm}
  - {name: cord, on: top, at: [[0, 20]], size: 9 mm}
`

// A square bend of 2 mm and R2 is shorter by 3.8374: from the middle to a hole 14 up the
// second flange it is 30 + 40 + 14 less two of them.
func TestLipped(t *testing.T) {
	t.Parallel()
	m := work(t, "mm", lipped)
	b := m.Bounds()
	slant := 2*4*math.Tan(40*math.Pi/180) - 80*math.Pi/180*2.65 // what the bend of 80° takes
	if high := b.Max.YMm - b.Min.YMm; math.Abs(high-(60+2*40+2*25-3*3.83739-slant)) > 1e-4 {
		t.Errorf("blank %v high", high)
	}
	if q := m.Groups[0].Points[0]; q.XMm != -60 || math.Abs(q.YMm-(30+40+14-2*3.83739)) > 1e-4 {
		t.Errorf("feet at %v", q)
	}
	var text []string
	for _, o := range m.Out.Operations {
		if o.Machine == "Press" {
			text = append(text, o.Title+": "+strings.Join(o.Do, " "))
		}
	}
	for i, want := range []string{
		"Front face up, back stop 23.08 from the free edge", "Fold 2: bottom 2 flange 80°: Front face up, back stop 23.49 from the free edge",
		"Fold 3: top flange 90°: Back face up, back stop 38.08 from the outside of the top 2 flange to the fold line", "Fold 4: bottom flange 90°: Back face up, laid by its scribed line",
	} {
		if len(text) != 4 || !strings.Contains(text[i], want) {
			t.Errorf("%q lacks %q", text, want)
		}
	}
	if c := m.Out.Checks; !slices.ContainsFunc(c, func(c plan.Check) bool { return strings.Contains(c.Gauge, "over the outside of the flange it is on") }) {
		t.Errorf("no check of the feet over the flange: %+v", c)
	}
}

func TestLippedRefused(t *testing.T) {
	t.Parallel()
	for _, c := range []struct{ was, is, what string }{
		{"[60, 14]", "[60, 5.5]", ""},
		{"[60, 14]", "[60, 3.9]", "lies in a bend"},
		{"[[0, 20]]", "[[0, 36.5]]", "lies in a bend"}, // of the flange on it
		{"side: top, height: 40", "side: top, height: 15.4", "hangs 11.5 mm from the fold line meets the die when the top flange is folded"},
		{"side: top, height: 40", "side: top, height: 16", ""},
		{"side: top-2, height: 25, toward: front", "side: top-2, height: 8, toward: front", "slips into a die"},
		{"side: top, height: 40", "side: top, height: 7.9", "flange height is 7.9 mm"},
	} {
		text := strings.Replace(lipped, c.was, c.is, 1)
		if strings.HasPrefix(c.was, "side") {
			text, _, _ = strings.Cut(text, "holes:")
		}
		job := load(t, "mm", text)
		errs := Work(job, job.Parts[0]).Errs
		if c.what == "" && len(errs) > 0 || c.what != "" && !slices.ContainsFunc(errs, func(e *parts.Error) bool { return strings.Contains(e.What, c.what) }) {
			t.Errorf("%s: %v, want %q", c.is, errs, c.what)
		}
	}
}
