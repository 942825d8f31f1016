package bolts

import (
	"cmp"
	"fmt"
	"math"
	"slices"

	"centrepop/layout/threads"
)

// Find returns the bolt of a size: M3 to M36, or 1/4 to 1 in UNC or UNF. The
// size is a designation of package threads; fine metric pitches are taken
// too. It is an error for pipe threads, the UN and UNS series, unknown threads, and sizes
// without a row here.
func Find(size string) (Bolt, error) {
	t, err := threads.Parse(size)
	if err != nil {
		return Bolt{}, err
	}
	return of(t)
}

// of is the bolt of a thread, as Find has it.
func of(t threads.Thread) (Bolt, error) {
	switch t.Series {
	case threads.MetricCoarse, threads.MetricFine:
		for i, row := range metricBolts {
			if row.d == t.MajorMm {
				return metricBolt(t, i), nil
			}
		}
		return Bolt{}, fmt.Errorf("bolts: no bolt %s: sizes are M3, M4, M5, M6, M8 to M24 in steps of 2, M27, M30, M33, M36", t.Designation)
	case threads.UnifiedUNC, threads.UnifiedUNF:
		for i, row := range inchBolts {
			if math.Abs(row.d*inch-t.MajorMm) < 1e-3 {
				return inchBolt(t, i), nil
			}
		}
		return Bolt{}, fmt.Errorf("bolts: no bolt %s: inch sizes are #6, #8, #10 and 1/4 to 1 in", t.Designation)
	}
	return Bolt{}, fmt.Errorf("bolts: %s is not the thread of a bolt", t.Designation)
}

// Coarse are the bolts of the coarse threads that hexagon nuts go on, the thinnest first: M3 to M36, or
// 1/4 to 1 in UNC.
func Coarse(inches bool) (out []Bolt) {
	series := threads.MetricCoarse
	if inches {
		series = threads.UnifiedUNC
	}
	for _, t := range threads.All() {
		if t.Series != series {
			continue
		}
		if b, err := of(t); err == nil && b.AcrossFlatsMm > 0 {
			out = append(out, b)
		}
	}
	slices.SortFunc(out, func(a, b Bolt) int { return cmp.Compare(a.Thread.MajorMm, b.Thread.MajorMm) })
	return out
}
