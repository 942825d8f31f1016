package seq_test

import (
	"math"
	"slices"
	"sync/atomic"
	"testing"

	"centrepop/parts/seq"
)

func TestSeq(t *testing.T) {
	odd := func(v int) bool { return v%2 == 1 }
	oddAt := func(v *int) bool { return odd(*v) }
	xs := []int{2, 3, 5}
	if got := seq.Map(xs, func(v int) string { return string(rune('a' + v)) }); !slices.Equal(got, []string{"c", "d", "f"}) {
		t.Error(got)
	}
	if got := seq.Flat(xs, func(v int) []int { return xs[:v-2] }); !slices.Equal(got, []int{2, 2, 3, 5}) || seq.Flat(xs[:1], func(int) []int { return nil }) != nil {
		t.Error(got)
	}
	if got := seq.Keep(xs, odd); !slices.Equal(got, []int{3, 5}) {
		t.Error(got)
	}
	if v, is := seq.Find(xs, odd); v != 3 || !is || seq.First(xs, odd) != 3 || seq.At(xs, oddAt) != &xs[1] {
		t.Error(v, is)
	}
	if got := seq.Add(xs, 5, 7, 2, 7); !slices.Equal(got, []int{2, 3, 5, 7}) || seq.Add[int](nil) != nil {
		t.Error(got)
	}
	double := func(v int) int { return 2 * v }
	if seq.Sum(xs, double) != 20 || seq.Max(7, xs, double) != 10 || seq.Max(11, xs, double) != 11 || seq.Min(7, xs, double) != 4 || seq.Least(xs, func(x int) float64 { return float64(-x) }) != -5 || !math.IsInf(seq.Least(nil, math.Abs), 1) || seq.Sum(nil, double) != 0 {
		t.Error("sum, largest or smallest")
	}
	for v := range seq.Refs(xs) {
		if *v++; *v == 4 {
			break
		}
	}
	if !slices.Equal(xs, []int{3, 4, 5}) {
		t.Error(xs)
	}
	if seq.Map(nil, odd) != nil || seq.Keep(nil, odd) != nil || seq.At(nil, oddAt) != nil || seq.First([]int{2}, odd) != 0 {
		t.Error("nothing gives something")
	}
}

// TestOnAll: every number once, also with fewer of them than processors, and none of none.
func TestOnAll(t *testing.T) {
	t.Parallel()
	for _, n := range []int{0, 1, 3, 500} {
		var times [500]atomic.Int32
		seq.OnAll(n, func(i int) { times[i].Add(1) })
		for i := range times {
			if got := times[i].Load(); got == 1 != (i < n) || got > 1 {
				t.Errorf("of %d, %d is done %d times", n, i, got)
			}
		}
	}
}
