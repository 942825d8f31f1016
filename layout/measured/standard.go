package measured

import (
	"fmt"
	"math"
	"slices"
)

// Standard is a motor flange of IEC 60072-1, or the same flange of a gearbox
// made to take such a motor.
type Standard struct {
	Name           string  `json:"name"` // FF265, FT130
	PitchMm        float64 `json:"pitch_circle_mm"`
	SpigotMm       float64 `json:"spigot_mm"`
	SpigotClass    string  `json:"spigot_class"` // j6 up to 230 mm, h6 above
	SpigotUpperUm  float64 `json:"spigot_upper_um"`
	SpigotLowerUm  float64 `json:"spigot_lower_um"`
	OutsideMm      float64 `json:"outside_mm"`
	SpigotHeightMm float64 `json:"spigot_height_mm"` // the most it may be
	Holes          int     `json:"holes"`
	HoleMm         float64 `json:"hole_mm,omitempty"` // FF: free holes
	Thread         string  `json:"thread"`            // FT: the tapped hole; FF: the bolt
	Tapped         bool    `json:"tapped"`
}

// StandardSource says where the table of standard flanges comes from.
const StandardSource = "IEC 60072-1, flanges FF and FT; from memory"

// sizes is the table of IEC 60072-1 (from memory): pitch circle M, spigot N,
// outside P, free hole S, spigot height T at most, number of holes, thread.
// The free holes are the coarse series of ISO 273 for the thread; older
// editions and castings have 9, 15 and 19 mm for 10, 14.5 and 18.5.
var sizes = []struct {
	m, n, p, s, t float64
	holes         int
	thread        string
}{
	{55, 40, 70, 5.8, 2.5, 4, "M5"},
	{65, 50, 80, 5.8, 2.5, 4, "M5"},
	{75, 60, 90, 5.8, 2.5, 4, "M5"},
	{85, 70, 105, 7, 2.5, 4, "M6"},
	{100, 80, 120, 7, 3, 4, "M6"},
	{115, 95, 140, 10, 3, 4, "M8"},
	{130, 110, 160, 10, 3.5, 4, "M8"},
	{165, 130, 200, 12, 3.5, 4, "M10"},
	{215, 180, 250, 14.5, 4, 4, "M12"},
	{265, 230, 300, 14.5, 4, 4, "M12"},
	{300, 250, 350, 18.5, 5, 4, "M16"},
	{350, 300, 400, 18.5, 5, 4, "M16"},
	{400, 350, 450, 18.5, 5, 8, "M16"},
	{500, 450, 550, 18.5, 5, 8, "M16"},
	{600, 550, 660, 24, 6, 8, "M20"},
	{740, 680, 800, 24, 6, 8, "M20"},
	{940, 880, 1000, 28, 6, 8, "M24"},
	{1080, 1000, 1150, 28, 6, 8, "M24"},
}

// spigotLimits are the limits of the spigot in µm: ISO 286-2 class j6 for
// spigots up to 230 mm and h6 above (the choice of class from memory).
var spigotLimits = []struct {
	toMm         float64
	class        string
	upper, lower float64
}{
	{50, "j6", 11, -5},
	{80, "j6", 12, -7},
	{120, "j6", 13, -9},
	{180, "j6", 14, -11},
	{230, "j6", 16, -13},
	{250, "h6", 0, -29},
	{315, "h6", 0, -32},
	{400, "h6", 0, -36},
	{500, "h6", 0, -40},
	{630, "h6", 0, -44},
	{800, "h6", 0, -50},
	{1000, "h6", 0, -56},
}

// Standards lists every flange: the FF series, then the FT series.
func Standards() []Standard {
	var out []Standard
	for _, tapped := range []bool{false, true} {
		for _, z := range sizes {
			f := Standard{
				Name: fmt.Sprintf("FF%g", z.m), PitchMm: z.m, SpigotMm: z.n, OutsideMm: z.p,
				SpigotHeightMm: z.t, Holes: z.holes, HoleMm: z.s, Thread: z.thread,
			}
			if tapped {
				f.Name, f.HoleMm, f.Tapped = fmt.Sprintf("FT%g", z.m), 0, true
			}
			for _, l := range spigotLimits {
				if z.n <= l.toMm {
					f.SpigotClass, f.SpigotUpperUm, f.SpigotLowerUm = l.class, l.upper, l.lower
					break
				}
			}
			out = append(out, f)
		}
	}
	return out
}

// Match is the standard flange nearest to a measured one. The offs are
// measured − standard.
type Match struct {
	Standard
	PitchOffMm  float64  `json:"pitch_off_mm"`
	SpigotOffMm float64  `json:"spigot_off_mm"`
	HoleOffMm   float64  `json:"hole_off_mm"` // largest, of free holes
	Matches     bool     `json:"matches"`
	Against     []string `json:"against"` // what speaks against it, in words; empty where it matches
	Source      string   `json:"source"`
}

// Tolerances of the match where the standard's own limits are finer than a
// caliper (common practice, no source).
const (
	pitchMatchMm = 0.5
	holeMatchMm  = 0.6
	farOff       = 0.05 // of the pitch circle: further off is another flange
)

// Nearest names the standard flange most like the measured one: of the FT
// series if its holes are tapped, else of FF. It reports false where even the
// nearest pitch circle is more than 5 % off.
func (r *Result) Nearest(tapped bool) (Match, bool) {
	cost := func(s Standard) float64 {
		c := math.Abs(r.PCDMm - s.PitchMm)
		if r.SpigotMm > 0 {
			c += math.Abs(r.SpigotMm - s.SpigotMm)
		}
		if len(r.Holes) != s.Holes {
			c += 5
		}
		return c
	}
	all := slices.DeleteFunc(Standards(), func(s Standard) bool { return s.Tapped != tapped })
	best := slices.MinFunc(all, func(a, b Standard) int {
		switch ca, cb := cost(a), cost(b); {
		case ca < cb:
			return -1
		case ca > cb:
			return 1
		}
		return 0
	})
	m := Match{Standard: best, PitchOffMm: r.PCDMm - best.PitchMm, Against: []string{}, Source: StandardSource}
	if math.Abs(m.PitchOffMm) > farOff*best.PitchMm {
		return m, false
	}
	against := func(format string, args ...any) { m.Against = append(m.Against, fmt.Sprintf(format, args...)) }
	if off := math.Abs(m.PitchOffMm); off > math.Max(pitchMatchMm, CoverageFactor*r.PCDUMm) {
		against("the pitch circle is %+.2f mm off", m.PitchOffMm)
	}
	if len(r.Holes) != best.Holes {
		against("it has %d holes, not %d", len(r.Holes), best.Holes)
	}
	if !r.Equal {
		against("the holes are not equally spaced: hole %d is %.2f mm off", r.EqualHole, math.Abs(r.EqualOffMm))
	}
	if r.SpigotMm > 0 {
		m.SpigotOffMm = r.SpigotMm - best.SpigotMm
		u := CoverageFactor * r.SpigotUMm
		if m.SpigotOffMm > best.SpigotUpperUm/1000+u || m.SpigotOffMm < best.SpigotLowerUm/1000-u {
			against("the spigot is %+.3f mm off Ø%g %s", m.SpigotOffMm, best.SpigotMm, best.SpigotClass)
		}
	}
	if !tapped {
		for _, h := range r.Holes {
			if off := h.DiameterMm - best.HoleMm; math.Abs(off) > math.Abs(m.HoleOffMm) {
				m.HoleOffMm = off
			}
		}
		if m.HoleOffMm < -holeMatchMm || m.HoleOffMm > holeMatchMm {
			against("its holes are %+.2f mm off Ø%g", m.HoleOffMm, best.HoleMm)
		}
	}
	m.Matches = len(m.Against) == 0
	return m, true
}
