package part

import (
	"math"
	"testing"

	"centrepop/layout/plan"
)

// The half section has the holes on the axis of a turned part: M12, thread 28 deep from the back, drilled 10.2 to
// 28 + 8.3 (DIN 76-1) with a point of 118°, 5.1 / tan 59° long; a plain one through with a counterbore from the
// front; none of those on a circle.
func TestHolesOnTheAxisAreCut(t *testing.T) {
	t.Parallel()
	const shaft = "part: p\nkind: shaft\nmaterial: C45\nstock: {round: 40 mm}\nprofile:\n  outside: [{name: body, diameter: 38, length: 100}]\nholes:\n"
	xy := func(z, r float64) plan.XY { return plan.XY{XMm: z, YMm: r} }
	point := 5.1 / math.Tan(59*math.Pi/180)
	for _, c := range []struct {
		hole   string
		line   []plan.XY
		thread *plan.ThreadLine
	}{
		{"{name: draw, face: back, at: [[0, 0]], size: M12 tap, depth: 28 mm}",
			[]plan.XY{xy(100, 5.1), xy(100-36.3, 5.1), xy(100-36.3-point, 0)}, &plan.ThreadLine{FromMm: 100, ToMm: 72, RadiusMm: 6, CrestMm: 5.053, Inside: true}},
		{"{name: oil, at: [[0, 0]], size: 9, depth: through, counterbore: {diameter: 15, depth: 8.6}}",
			[]plan.XY{xy(0, 7.5), xy(8.6, 7.5), xy(8.6, 4.5), xy(100, 4.5)}, nil},
		{"{name: oil, at: [[0, 0]], size: 10.2, depth: 20, countersink: {diameter: 14.2, angle: 90}}",
			[]plan.XY{xy(0, 7.1), xy(2, 5.1), xy(20, 5.1), xy(20+point, 0)}, nil},
		{"{name: pins, circle: {pcd: 20, count: 2, first: 0}, size: 4, depth: 20}", nil, nil},
	} {
		got := work(t, "mm", shaft+"  - "+c.hole+"\n").Section.OnAxis
		if c.line == nil {
			if len(got) != 0 {
				t.Errorf("%s: %v", c.hole, got)
			}
			continue
		}
		if len(got) != 1 || len(got[0].Line) != len(c.line) || (got[0].Thread == nil) != (c.thread == nil) {
			t.Errorf("%s: %v", c.hole, got)
			continue
		}
		for i, q := range got[0].Line {
			if math.Hypot(q.XMm-c.line[i].XMm, q.YMm-c.line[i].YMm) > 1e-6 {
				t.Errorf("%s: %v, want %v", c.hole, got[0].Line, c.line)
			}
		}
		if h := got[0].Thread; h != nil && (h.FromMm != c.thread.FromMm || h.ToMm != c.thread.ToMm || math.Abs(h.RadiusMm-c.thread.RadiusMm) > 1e-3 || math.Abs(h.CrestMm-c.thread.CrestMm) > 1e-3 || !h.Inside) {
			t.Errorf("%s: thread %+v, want %+v", c.hole, h, c.thread)
		}
	}
}
