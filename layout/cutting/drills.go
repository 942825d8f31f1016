package cutting

import (
	"fmt"
	"math"
	"sort"
	"sync"

	"centrepop/layout/lookup"
	"centrepop/layout/threads"
	"centrepop/parts/geom"
)

// DrillSize is one twist drill of a stock series.
type DrillSize struct {
	DiaMm float64 // diameter, mm
	Name  string  // as stamped: "8.5", "27/64 in", "#7", "F"
}

// System says which series of drills or bars a shop keeps.
type System int

// The two systems.
const (
	Metric System = iota // millimetre sizes
	Inch                 // fractional inch; for drills also number and letter
)

// maxInchDrillIn is the largest inch drill kept in the series, in.
const maxInchDrillIn = 2

// numberDrills are the diameters in inches of number drills 1 to 80, and
// letterDrills those of A to Z. ASME B94.11M, each compared with a published table or chart.
var numberDrills = [...]float64{
	0.2280, 0.2210, 0.2130, 0.2090, 0.2055, 0.2040, 0.2010, 0.1990, 0.1960, 0.1935,
	0.1910, 0.1890, 0.1850, 0.1820, 0.1800, 0.1770, 0.1730, 0.1695, 0.1660, 0.1610,
	0.1590, 0.1570, 0.1540, 0.1520, 0.1495, 0.1470, 0.1440, 0.1405, 0.1360, 0.1285,
	0.1200, 0.1160, 0.1130, 0.1110, 0.1100, 0.1065, 0.1040, 0.1015, 0.0995, 0.0980,
	0.0960, 0.0935, 0.0890, 0.0860, 0.0820, 0.0810, 0.0785, 0.0760, 0.0730, 0.0700,
	0.0670, 0.0635, 0.0595, 0.0550, 0.0520, 0.0465, 0.0430, 0.0420, 0.0410, 0.0400,
	0.0390, 0.0380, 0.0370, 0.0360, 0.0350, 0.0330, 0.0320, 0.0310, 0.0292, 0.0280,
	0.0260, 0.0250, 0.0240, 0.0225, 0.0210, 0.0200, 0.0180, 0.0160, 0.0145, 0.0135,
}

var letterDrills = [...]float64{
	0.234, 0.238, 0.242, 0.246, 0.250, 0.257, 0.261, 0.266, 0.272, 0.277, 0.281, 0.290, 0.295,
	0.302, 0.316, 0.323, 0.332, 0.339, 0.348, 0.358, 0.368, 0.377, 0.386, 0.397, 0.404, 0.413,
}

// StockDrills returns the drills of a system in rising order.
//
// Metric: 0.3 to 14.0 by 0.1 with the quarter sizes from 3.25, to 32 by 0.25, to
// 50 by 0.5. The sizes are in ISO 235 and DIN 338/345 (from memory); which of
// them a shop keeps is common practice. Inch: 1/32 to 1 by 1/64, to 2 by 1/32,
// number drills 1 to 80 and letters A to Z (ASME B94.11M).
//
// The list is the same each time and must not be written to.
func StockDrills(s System) []DrillSize {
	if s == Inch {
		return inchDrills()
	}
	return metricDrills()
}

var (
	metricDrills = sync.OnceValue(func() []DrillSize { return listed(Metric) })
	inchDrills   = sync.OnceValue(func() []DrillSize { return listed(Inch) })
)

func listed(s System) []DrillSize {
	var out []DrillSize
	if s == Inch {
		for n, d := range numberDrills {
			out = append(out, DrillSize{d * geom.MmPerInch, fmt.Sprintf("#%d", n+1)})
		}
		for n, d := range letterDrills {
			if d != 0.25 { // E is 1/4 in
				out = append(out, DrillSize{d * geom.MmPerInch, string(rune('A' + n))})
			}
		}
		for n := 2; n <= 64*maxInchDrillIn; n++ {
			if n > 64 && n%2 != 0 {
				continue
			}
			out = append(out, DrillSize{float64(n) / 64 * geom.MmPerInch, threads.Fraction(n, 64, "-") + " in"})
		}
	} else {
		for n := 30; n <= 5000; n++ { // hundredths
			switch {
			case n <= 1400 && n%10 == 0, n >= 325 && n <= 3200 && n%25 == 0, n%50 == 0 && n > 3200:
				out = append(out, metricDrill(n))
			}
		}
	}
	sort.Slice(out, func(i, j int) bool { return out[i].DiaMm < out[j].DiaMm })
	return out
}

// metricDrill returns the drill of n hundredths of a millimetre.
func metricDrill(n int) DrillSize {
	d := float64(n) / 100
	name := fmt.Sprintf("%.1f", d)
	if n%10 != 0 {
		name = fmt.Sprintf("%.2f", d)
	}
	return DrillSize{d, name}
}

// Rounding says to which side a size may be moved to meet a stock size.
type Rounding int

// The ways to round.
const (
	Nearest Rounding = iota // closest, the smaller when equally close
	Down                    // largest that is not above: before a boring bar
	Up                      // smallest that is not below: for clearance
)

// StockDrill returns the stock drill for a wanted diameter in mm. It errs if
// the diameter is not positive and finite, or no stock drill lies on the asked
// side (metric 1 to 50 mm, inch #60 to 2 in).
func StockDrill(dMm float64, s System, r Rounding) (DrillSize, error) {
	if !positive(dMm) {
		return DrillSize{}, fmt.Errorf("cutting: drill diameter %v mm is not a positive number", dMm)
	}
	all := StockDrills(s)
	const same = 1e-6 // mm; below any printed digit
	i := sort.Search(len(all), func(i int) bool { return all[i].DiaMm >= dMm-same })
	if i < len(all) && math.Abs(all[i].DiaMm-dMm) <= same {
		return all[i], nil
	}
	below, above := i > 0, i < len(all)
	switch {
	case r == Down && below:
		return all[i-1], nil
	case r == Up && above:
		return all[i], nil
	case r == Nearest && below && above:
		if all[i].DiaMm-dMm < dMm-all[i-1].DiaMm {
			return all[i], nil
		}
		return all[i-1], nil
	}
	return DrillSize{}, lookup.Refuse("cutting: no stock drill for %v: the series runs from %s to %s", lookup.Mm(dMm), all[0].Name, all[len(all)-1].Name)
}
