package joint_test

import (
	"fmt"
	"maps"
	"math/rand/v2"
	"slices"
	"testing"

	"centrepop/layout"
	"centrepop/layout/plan"
	"centrepop/parts"
	"centrepop/parts/geom"
	"centrepop/parts/read"
	"centrepop/parts/seq"
)

// relations are how the first part of each joint stands to its second, in that one's frame: along the axis, by the clock, and which
// way it looks; or where the holes put it beside.
func relations(t *testing.T, job *parts.Job) map[string]string {
	t.Helper()
	w, err := layout.Work(job)
	if err != nil {
		t.Fatal(err)
	}
	out := map[string]string{}
	for _, j := range w.Plan.Joints {
		of := func(e plan.JointEnd) (p plan.Placed, way float64) {
			p = *seq.At(j.Placed, func(p *plan.Placed) bool { return p.Instance() == e.Instance() })
			return p, map[bool]float64{true: -1, false: 1}[p.OtherWay]
		}
		switch {
		case j.Beside != nil:
			out[j.Name] = fmt.Sprintf("%.6v", *j.Beside)
		case len(j.Placed) > 0:
			a, wayA := of(j.A)
			b, wayB := of(j.B)
			out[j.Name] = fmt.Sprintf("%.3f %.3f %v", geom.Clean(wayB*(a.FrontMm-b.FrontMm)), geom.OnClock(wayB*(a.TurnDeg-b.TurnDeg)), wayA*wayB)
		}
	}
	return out
}

// A part has one place, in whatever order the joints are written.
func TestPlacesInAnyOrder(t *testing.T) {
	t.Parallel()
	for _, demo := range []string{"pugmill", "gatejack"} {
		load := func() *parts.Job {
			job, err := read.Load("../../testdata/" + demo + "/job.yaml")
			if err != nil {
				t.Fatal(err)
			}
			return job
		}
		want := relations(t, load())
		for seed := range uint64(4) {
			job := load()
			if slices.Reverse(job.Joints); seed > 0 {
				rand.New(rand.NewPCG(seed, 0)).Shuffle(len(job.Joints), func(i, k int) { job.Joints[i], job.Joints[k] = job.Joints[k], job.Joints[i] })
			}
			if got := relations(t, job); !maps.Equal(got, want) {
				for name, at := range want {
					if got[name] != at {
						t.Errorf("%s, order %d: %s stands %q, wanted %q", demo, seed, name, got[name], at)
					}
				}
			}
		}
	}
}
