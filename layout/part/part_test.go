package part

import (
	"math"
	"strings"
	"testing"

	"centrepop/layout/lookup"
	"centrepop/layout/plan"
	"centrepop/layout/words"
	"centrepop/parts"
	"centrepop/parts/geom"
)

// TestPatternWords: every pattern there is has words of its own, but for
// listed points, which the hole table shows.
func TestPatternWords(t *testing.T) {
	t.Parallel()
	want := []string{
		"PCD 100, hole 1 at 30°, front face", "PCD 100, hole 1 at 30°, front face", "PCD 100, hole 1 at 0°, front face",
		"3 × 2 at 40 × 30, front face", "3 × 3 at 40 × 30, every second row one less and half a pitch in, front face",
		"2 at 40, the first 30 from the left edge, front face", "see the hole table, front face",
	}
	if len(want) != len(geom.Patterns) {
		t.Fatalf("%d patterns, words for %d", len(geom.Patterns), len(want))
	}
	n := &Numbered{Shape: &Shape{Sizes: &Sizes{W: words.Writer{Units: parts.Millimetres}}}}
	for i, p := range geom.Patterns {
		m := &Group{FaceGroup: parts.FaceGroup{Face: parts.Front, Pattern: parts.Pattern{Shape: p, PCD: parts.Length{Mm: 100}}}, Group: &plan.Group{First: 1}, Points: p.Places(geom.Box{})}
		if got := (usual{}).where(n, m); got != want[i] {
			t.Errorf("%T: %s, want %s", p, got, want[i])
		}
	}
}

// TestOverPins: over two pins is the centre distance and one pin, between them
// is one pin less (geometry).
func TestOverPins(t *testing.T) {
	pts := []plan.XY{{XMm: 0, YMm: 50}, {XMm: 50, YMm: 0}, {XMm: 0, YMm: -50}, {XMm: -50, YMm: 0}}
	got := chords(geom.Ring{}, pts, 1, 10)
	if len(got) != 2 || got[0].Kind != "neighbours" || got[1].Kind != "across" {
		t.Fatalf("got %v", got)
	}
	if math.Abs(got[0].CentreMm-70.710678119) > 1e-9 || math.Abs(got[0].OverMm-80.710678119) > 1e-9 || got[1].BetweenMm != 90 {
		t.Errorf("got %v", got)
	}
}

func TestSegmentDistance(t *testing.T) {
	for _, c := range []struct {
		a, b, c, d plan.XY
		want       float64
	}{
		{plan.XY{XMm: 0, YMm: 0}, plan.XY{XMm: 10, YMm: 0}, plan.XY{XMm: 5, YMm: 3}, plan.XY{XMm: 5, YMm: 9}, 3},
		{plan.XY{XMm: 0, YMm: 0}, plan.XY{XMm: 10, YMm: 0}, plan.XY{XMm: 5, YMm: -3}, plan.XY{XMm: 5, YMm: 9}, 0},
		{plan.XY{XMm: 0, YMm: 0}, plan.XY{XMm: 10, YMm: 0}, plan.XY{XMm: 13, YMm: 4}, plan.XY{XMm: 13, YMm: 4}, 5},
		{plan.XY{XMm: 1, YMm: 1}, plan.XY{XMm: 1, YMm: 1}, plan.XY{XMm: 4, YMm: 5}, plan.XY{XMm: 4, YMm: 5}, 5},
		{plan.XY{XMm: 0, YMm: 0}, plan.XY{XMm: 10, YMm: 0}, plan.XY{XMm: 0, YMm: 2}, plan.XY{XMm: 10, YMm: 2}, 2},
		{plan.XY{XMm: 0, YMm: 0}, plan.XY{XMm: 1, YMm: 0}, plan.XY{XMm: 0.5, YMm: 0.1}, plan.XY{XMm: 0.5, YMm: 0.9}, 0.1}, // one towards the other
		{plan.XY{XMm: 0, YMm: 0}, plan.XY{XMm: 1, YMm: 0}, plan.XY{XMm: 0.5, YMm: -0.1}, plan.XY{XMm: 0.5, YMm: -0.9}, 0.1},
	} {
		if got := geom.Apart(c.a, c.b, c.c, c.d); math.Abs(got-c.want) > 1e-12 {
			t.Errorf("distance %v, want %v", got, c.want)
		}
		if got := geom.Apart(c.c, c.d, c.a, c.b); math.Abs(got-c.want) > 1e-12 {
			t.Errorf("distance, turned round %v, want %v", got, c.want)
		}
	}
}

// TestCutLimits: ISO 2768-m gives Ø38 ±0.3, and a flame holds ±1 (common practice): a
// bore left as cut has the wider limits, one with stock or limits of its own has not.
func TestCutLimits(t *testing.T) {
	t.Parallel()
	const plate = "part: p\nkind: plate\nmaterial: S275\nstock: {plate: 20 mm, cut: CUT}\noutline: {rectangle: [200, 200]}\nbore: {diameter: 38MORE}\n"
	for _, c := range [][3]string{{"flame", "", "36.2 – 39.8"}, {"plasma", "", "36.2 – 39.8"}, {"laser", "", "37.7 – 38.3"}, {"flame", ", fit: {plus-minus: 0.3}", "37.7 – 38.3"}, {"flame", ", leave: 3", "37.7 – 38.3"}, {"saw", "", "37.7 – 38.3"}} {
		m := work(t, "mm", strings.NewReplacer("CUT", c[0], "MORE", c[1]).Replace(plate))
		w := check(m, "bore")
		if w == nil || w.Limits != c[2] || strings.Contains(w.Source.String(), "ISO 9013") != (c[2] == "36.2 – 39.8") {
			t.Errorf("%s%s: %+v, want %s", c[0], c[1], w, c[2])
		}
	}
}

func TestCutterHolds(t *testing.T) {
	for _, c := range []struct {
		cut  string
		want float64
	}{{"laser", 0.2}, {"waterjet", 0.2}, {"plasma", 2.6}, {"flame", 2.6}, {"saw", 0}} { // ISO 9013 class 2: ±1.3 over 35 in 8 mm
		if got, source := CutterHolds(c.cut, 40, 8); got != c.want || (source == (lookup.Source{})) != (c.want == 0) {
			t.Errorf("%s holds %g mm by %q, want %g", c.cut, got, source, c.want)
		}
	}
}

// A square cut outline is measured both ways, within ISO 2768-m (over 120 to 400:
// ±0.5) or what its cutter holds (a flame ±2.3 over 315, ±1.9 over 125, ISO 9013 class 2); the plate is as thick as
// it is bought.
func TestOutlineIsMeasured(t *testing.T) {
	t.Parallel()
	plate := func(stock string) string {
		return "part: p\nkind: plate\nmaterial: S235\n" + stock + "\noutline: {rectangle: [400, 260], corner: 10}\n"
	}
	for stock, want := range map[string][3]string{
		"stock: {plate: 20 mm, cut: flame}": {"397.7 – 402.3 × 258.1 – 261.9", "as bought", "ISO 9013 class 2"},
		"stock: {plate: 20 mm, cut: saw}":   {"399.5 – 400.5 × 259.5 – 260.5", "as bought", "ISO 2768-m"},
		"thickness: 20":                     {"399.5 – 400.5 × 259.5 – 260.5", "19.8 – 20.2", "ISO 2768-m"},
	} {
		m := work(t, "mm", plate(stock))
		o, thick := check(m, "outline"), check(m, "thickness")
		if o == nil || thick == nil || o.Limits != want[0] || thick.Limits != want[1] || !strings.HasPrefix(o.Source.String(), want[2]) {
			t.Errorf("%s: %+v, %+v", stock, o, thick)
		}
	}
}
