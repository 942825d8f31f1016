package keys

import (
	"math"
	"strconv"

	"centrepop/layout/fits"
	"centrepop/layout/lookup"
	"centrepop/parts/seq"
)

// Woodruff is a disc key: a segment of a disc in a pocket that a cutter of the
// same diameter sinks.
type Woodruff struct {
	Designation  string        `json:"designation"` // "5x6.5", or the inch key number "808"
	WidthMm      float64       `json:"width_mm"`
	HeightMm     float64       `json:"height_mm"`
	DiscMm       float64       `json:"disc_mm"`        // diameter of the disc and of the cutter
	LengthMm     float64       `json:"length_mm"`      // of the key at its flat, by geometry
	ShaftDepthMm float64       `json:"shaft_depth_mm"` // how deep the cutter is sunk from the crown
	HubDepthMm   float64       `json:"hub_depth_mm"`   // hub keyway from the crown of the bore
	OverMm       [2]float64    `json:"over_mm"`        // shaft diameters it is for, above the first, up to the second, where it drives alone
	Standard     string        `json:"-"`
	Source       lookup.Source `json:"source"`
}

type discRow struct {
	over, upTo, width, height, disc, shaft, hub float64
	state                                       lookup.State
}

// din6888 is DIN 6888:1956, shaft diameters of allocation I (the key drives
// alone), hub depth of series A. Up to a width of 4 mm as the standard's page on
// scribd.com (385356821) reads, the rest from memory.
var din6888 = []discRow{
	{3, 4, 1, 1.4, 4, 1, 0.6, lookup.Checked},
	{4, 6, 1.5, 2.6, 7, 2, 0.8, lookup.Checked},
	{6, 8, 2, 2.6, 7, 1.8, 1, lookup.Checked},
	{6, 8, 2, 3.7, 10, 2.9, 1, lookup.Checked},
	{8, 10, 3, 3.7, 10, 2.5, 1.4, lookup.Checked},
	{8, 10, 3, 5, 13, 3.8, 1.4, lookup.Checked},
	{8, 10, 3, 6.5, 16, 5.3, 1.4, lookup.Checked},
	{10, 12, 4, 5, 13, 3.5, 1.7, lookup.Checked},
	{10, 12, 4, 6.5, 16, 5, 1.7, lookup.Checked},
	{10, 12, 4, 7.5, 19, 6, 1.7, lookup.Checked},
	{12, 17, 5, 6.5, 16, 4.5, 2.2, lookup.FromMemory},
	{12, 17, 5, 7.5, 19, 5.5, 2.2, lookup.FromMemory},
	{12, 17, 5, 9, 22, 7, 2.2, lookup.FromMemory},
	{17, 22, 6, 7.5, 19, 5.1, 2.6, lookup.FromMemory},
	{17, 22, 6, 9, 22, 6.6, 2.6, lookup.FromMemory},
	{17, 22, 6, 11, 28, 8.6, 2.6, lookup.FromMemory},
	{22, 30, 8, 9, 22, 6.2, 3, lookup.FromMemory},
	{22, 30, 8, 11, 28, 8.2, 3, lookup.FromMemory},
	{22, 30, 8, 13, 32, 10.2, 3, lookup.FromMemory},
	{30, 38, 10, 11, 28, 7.8, 3.4, lookup.FromMemory},
	{30, 38, 10, 13, 32, 9.8, 3.4, lookup.FromMemory},
	{30, 38, 10, 16, 45, 12.8, 3.4, lookup.FromMemory},
}

// asmeB172 is ASME B17.2-1967 in inches: Shigley, Mechanical Engineering Design,
// 9th edition, Tables 7-7 (sizes) and 7-8 (shaft diameters).
var asmeB172 = []discRow{
	{5.0 / 16, 1.0 / 2, 1.0 / 16, 0.109, 1.0 / 4, 0.0728, 0.0372, lookup.Checked},
	{5.0 / 16, 1.0 / 2, 1.0 / 16, 0.172, 3.0 / 8, 0.1358, 0.0372, lookup.Checked},
	{3.0 / 8, 7.0 / 8, 3.0 / 32, 0.172, 3.0 / 8, 0.1202, 0.0529, lookup.Checked},
	{3.0 / 8, 7.0 / 8, 3.0 / 32, 0.203, 1.0 / 2, 0.1511, 0.0529, lookup.Checked},
	{3.0 / 8, 7.0 / 8, 3.0 / 32, 0.250, 5.0 / 8, 0.1981, 0.0529, lookup.Checked},
	{3.0 / 8, 1.5, 1.0 / 8, 0.203, 1.0 / 2, 0.1355, 0.0685, lookup.Checked},
	{3.0 / 8, 1.5, 1.0 / 8, 0.250, 5.0 / 8, 0.1825, 0.0685, lookup.Checked},
	{3.0 / 8, 1.5, 1.0 / 8, 0.313, 3.0 / 4, 0.2455, 0.0685, lookup.Checked},
	{1.0 / 2, 1.625, 5.0 / 32, 0.250, 5.0 / 8, 0.1669, 0.0841, lookup.Checked},
	{1.0 / 2, 1.625, 5.0 / 32, 0.313, 3.0 / 4, 0.2299, 0.0841, lookup.Checked},
	{1.0 / 2, 1.625, 5.0 / 32, 0.375, 7.0 / 8, 0.2919, 0.0841, lookup.Checked},
	{9.0 / 16, 2, 3.0 / 16, 0.313, 3.0 / 4, 0.2143, 0.0997, lookup.Checked},
	{9.0 / 16, 2, 3.0 / 16, 0.375, 7.0 / 8, 0.2763, 0.0997, lookup.Checked},
	{9.0 / 16, 2, 3.0 / 16, 0.438, 1, 0.3393, 0.0997, lookup.Checked},
	{11.0 / 16, 2.25, 1.0 / 4, 0.375, 7.0 / 8, 0.2450, 0.1310, lookup.Checked},
	{11.0 / 16, 2.25, 1.0 / 4, 0.438, 1, 0.3080, 0.1310, lookup.Checked},
	{11.0 / 16, 2.25, 1.0 / 4, 0.547, 1.25, 0.4170, 0.1310, lookup.Checked},
	{3.0 / 4, 2.375, 5.0 / 16, 0.438, 1, 0.2768, 0.1622, lookup.Checked},
	{3.0 / 4, 2.375, 5.0 / 16, 0.547, 1.25, 0.3858, 0.1622, lookup.Checked},
	{3.0 / 4, 2.375, 5.0 / 16, 0.641, 1.5, 0.4798, 0.1622, lookup.Checked},
	{1, 2.625, 3.0 / 8, 0.547, 1.25, 0.3545, 0.1935, lookup.Checked},
	{1, 2.625, 3.0 / 8, 0.641, 1.5, 0.4485, 0.1935, lookup.Checked},
}

// discTable is a standard of Woodruff keys: its rows in a unit of so many millimetres, and
// how a key is named.
type discTable struct {
	standard string
	rows     []discRow
	unitMm   float64
	name     func(discRow) string
}

var metricTable = discTable{metricDiscs, din6888, 1, func(r discRow) string {
	return strconv.FormatFloat(r.width, 'g', -1, 64) + "x" + strconv.FormatFloat(r.height, 'g', -1, 64)
}}

var inchTable = discTable{inchDiscs, asmeB172, mmPerInch, func(r discRow) string {
	return strconv.Itoa(int(math.Round(r.width*32))*100 + int(math.Round(r.disc*8)))
}}

// WoodruffFor returns the metric Woodruff keys for a shaft diameter above 3 and
// up to 38 mm, narrowest and lowest first, else a *lookup.RangeError.
func WoodruffFor(shaftMm float64) ([]Woodruff, error) { return metricTable.on(shaftMm) }

// WoodruffForInch returns the inch Woodruff keys for a shaft diameter in mm,
// above 5/16 in up to 2-5/8 in, narrowest and lowest first, else a *lookup.RangeError.
// The number names the key: its last two digits are the disc in eighths of an
// inch, those before them the width in thirty-seconds.
func WoodruffForInch(shaftMm float64) ([]Woodruff, error) { return inchTable.on(shaftMm) }

// WoodruffNamed returns the Woodruff key of a size of DIN 6888, such as "5x6.5", or a
// number of ASME B17.2, such as "608", else a *lookup.UnknownError.
func WoodruffNamed(designation string) (Woodruff, error) {
	e := &lookup.UnknownError{What: "Woodruff key", Value: designation}
	for _, t := range []discTable{metricTable, inchTable} {
		for _, r := range t.rows {
			name := t.name(r)
			if name == designation {
				return t.key(r), nil
			}
			e.Known = seq.Add(e.Known, name)
		}
	}
	return Woodruff{}, e
}

// In is the key with its keyways in a diameter in mm, and how much deeper they may be:
// of an inch key ASME B17.2; of a metric one common practice.
func (w Woodruff) In(diameterMm float64) Parallel {
	p := Parallel{
		OverMm: w.OverMm, WidthMm: w.WidthMm, HeightMm: w.HeightMm,
		ShaftDepthMm: w.ShaftDepthMm, HubDepthMm: w.HubDepthMm,
		ShaftAcrossMm: diameterMm - w.ShaftDepthMm, HubAcrossMm: diameterMm + w.HubDepthMm,
		ShaftDeeperMm: 0.1, HubDeeperMm: 0.1, Standard: w.Standard, Source: w.Source,
		ToleranceSource: lookup.Source{State: lookup.Practice},
	}
	if w.Standard == inchDiscs {
		p.ShaftDeeperMm, p.HubDeeperMm = 0.005*mmPerInch, 0.005*mmPerInch
		p.ToleranceSource = lookup.Source{Name: inchDiscs, State: lookup.Checked}
	}
	return p
}

// The standards of Woodruff keys.
const (
	metricDiscs = "DIN 6888"
	inchDiscs   = "ASME B17.2"
)

// inchSeats are the widths of keyways by the width of an inch Woodruff key, inches:
// of the shaft least and most, of the hub least; that may be 0.002 wider. ASME B17.2,
// Table 10 as a public data file prints it.
var inchSeats = []struct{ key, shaftMin, shaftMax, hubMin float64 }{
	{1.0 / 16, 0.0615, 0.0630, 0.0635},
	{3.0 / 32, 0.0928, 0.0943, 0.0948},
	{1.0 / 8, 0.1240, 0.1255, 0.1260},
	{5.0 / 32, 0.1553, 0.1568, 0.1573},
	{3.0 / 16, 0.1863, 0.1880, 0.1885},
	{1.0 / 4, 0.2487, 0.2505, 0.2510},
	{5.0 / 16, 0.3111, 0.3130, 0.3135},
	{3.0 / 8, 0.3735, 0.3755, 0.3760},
}

// closeMm is how near two sizes of a key count as one.
const closeMm = 1e-6

// inchSeat are the limits of a keyway for an inch Woodruff key.
func inchSeat(widthMm float64, hub bool) (fits.Limits, lookup.Source, error) {
	source := lookup.Source{Name: inchDiscs, State: lookup.Checked}
	for _, s := range inchSeats {
		if math.Abs(s.key*mmPerInch-widthMm) > closeMm {
			continue
		}
		least, most := s.shaftMin, s.shaftMax
		if hub {
			least, most = s.hubMin, s.hubMin+0.002
		}
		l := fits.Limits{NominalMm: widthMm, MinMm: least * mmPerInch, MaxMm: most * mmPerInch, Hole: true}
		l.LowerUm, l.UpperUm = (l.MinMm-widthMm)*1000, (l.MaxMm-widthMm)*1000
		return l, source, nil
	}
	return fits.Limits{}, source, &lookup.UnknownError{What: "key width", Value: "not of " + inchDiscs}
}

func (t discTable) on(shaftMm float64) ([]Woodruff, error) {
	var out []Woodruff
	least, most := math.Inf(1), 0.0
	for _, r := range t.rows {
		least, most = math.Min(least, r.over*t.unitMm), math.Max(most, r.upTo*t.unitMm)
		if d := shaftMm / t.unitMm; d > r.over && d <= r.upTo+1e-9 {
			out = append(out, t.key(r))
		}
	}
	if out == nil {
		return nil, lookup.Length("shaft diameter", shaftMm, least, most)
	}
	return out, nil
}

func (t discTable) key(r discRow) Woodruff {
	return Woodruff{
		Designation: t.name(r), OverMm: [2]float64{r.over * t.unitMm, r.upTo * t.unitMm},
		WidthMm: r.width * t.unitMm, HeightMm: r.height * t.unitMm, DiscMm: r.disc * t.unitMm,
		LengthMm:     2 * math.Sqrt(r.height*(r.disc-r.height)) * t.unitMm,
		ShaftDepthMm: r.shaft * t.unitMm, HubDepthMm: r.hub * t.unitMm,
		Standard: t.standard, Source: lookup.Source{Name: t.standard, State: r.state},
	}
}
