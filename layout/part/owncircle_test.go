package part

import (
	"slices"
	"strings"
	"testing"

	"centrepop/layout/plan"
	"centrepop/parts/geom"
	"centrepop/parts/golden"
	"centrepop/parts/read"
)

// A pitch circle about a point of its own is drawn there, on the other face the other way; its holes are measured from
// edges, for no round of the part is about it. By hand: 1 of 4 at 45° on PCD 100√2 lies 50 right and 50 up of 30, -20.
func TestCircleOfItsOwn(t *testing.T) {
	t.Parallel()
	job, err := read.Load(golden.Job(t, "testdata/own-circle.yaml"))
	if err != nil {
		t.Fatal(err)
	}
	out := Work(job, job.Parts[0]).Out
	for i, want := range [][]plan.XY{{{XMm: 30, YMm: -20}}, {{XMm: -25, YMm: 10}, {XMm: -30, YMm: -20}}} {
		var about []plan.XY
		circles := out.Faces[i].Circles
		if c := out.Faces[i].Carried; c != nil {
			circles = slices.Concat(circles, c.Circles)
		}
		for _, c := range circles {
			if c.Pitch {
				about = append(about, c.CentreMm)
			}
		}
		if !slices.Equal(about, want) {
			t.Errorf("%s: circles about %v, want %v", out.Faces[i].Face, about, want)
		}
	}
	if h := out.Faces[0].Holes[0]; geom.Distance(plan.XY{XMm: h.XMm, YMm: h.YMm}, plan.XY{XMm: 80, YMm: 30}) > 1e-3 {
		t.Errorf("hole 1 at %v", h)
	}
	var said []string
	for _, f := range out.Features {
		said = append(said, f.Note)
	}
	if text := strings.Join(said, "; "); !strings.Contains(text, "PCD 141.42 about x 30, y -20, hole 1 at 45°, front face") {
		t.Error(text)
	}
	if !slices.ContainsFunc(out.Checks, func(c plan.Check) bool {
		return c.What == "own 1, left and bottom edge to pin" && c.Wanted == "225.5, 125.5"
	}) {
		t.Errorf("not from the edges: %+v", out.Checks)
	}
}
