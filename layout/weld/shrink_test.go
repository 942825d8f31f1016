package weld

import (
	"math"
	"testing"
)

// By hand: √(100 × 10) = 31.62, 3 × 0.91 = 2.73, its fourth root 1.2854, so π × 31.62/1.2854 = 77.29.
func TestPull(t *testing.T) {
	t.Parallel()
	if got := PullMm(100, 10); math.Abs(got-77.29) > 0.01 {
		t.Error(got)
	}
}
