package measured

import (
	"cmp"
	"fmt"
	"math"
	"regexp"
	"slices"
	"strings"

	"centrepop/layout/fits"
	"centrepop/parts/geom"
	"centrepop/parts/seq"
)

// Standard is a motor flange of IEC 60072-1 or a face of NEMA MG 1, or the same flange
// of a gearbox made to take such a motor.
type Standard struct {
	Name     string  `json:"name"` // FF265, FT130, NEMA 42C, 48C
	PitchMm  float64 `json:"pitch_circle_mm"`
	SpigotMm float64 `json:"spigot_mm"`
	// Spigots are the classes in use, the standard's own first: j6 up to
	// 250 mm and h6 above; from 250 to 500 mm both are met.
	Spigots        []SpigotClass `json:"spigots"`
	OutsideMm      float64       `json:"outside_mm"`
	SpigotHeightMm float64       `json:"spigot_height_mm"` // the most it may be
	Holes          int           `json:"holes"`
	HoleMm         float64       `json:"hole_mm,omitempty"` // FF: free holes
	Thread         string        `json:"thread"`            // FT: the tapped hole; FF: the bolt
	Tapped         bool          `json:"tapped"`
	DeepMm         float64       `json:"screw_depth_mm,omitempty"` // the most that a screw may come into a tapped hole; 0 where no standard says it
}

// SpigotClass is a tolerance class of ISO 286-2 with its limits.
type SpigotClass struct {
	Class string  `json:"class"`
	MaxMm float64 `json:"max_mm"`
	MinMm float64 `json:"min_mm"`
}

// StandardSource says where the table of standard flanges comes from.
const StandardSource = "IEC 60072-1, flanges FF and FT; 55 and the free holes to 85 from memory"

// sizes is the table of IEC 60072-1: pitch circle M, spigot N, outside P, free hole S,
// spigot height T at most, number of holes, thread; as public copies of a maker's
// catalogue print it, but for 55 and the free holes of 65, 75 and 85, from memory.
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

// spigots are the classes of a spigot: IEC 60072-1, C.1.7, as tabled in EASA
// AR100-2020, table 2-10; that makers use the other one too from 250 mm up is
// common practice, no source. ISO 286 has no j6 over 500 mm.
func spigots(mm float64) []SpigotClass {
	classes := []string{"h6", "j6"}
	switch {
	case mm < 250:
		classes = []string{"j6"}
	case mm == 250:
		classes = []string{"j6", "h6"}
	case mm > 500:
		classes = []string{"h6"}
	}
	var out []SpigotClass
	for _, class := range classes {
		if l, err := fits.Limit(mm, class); err == nil {
			out = append(out, SpigotClass{class, l.MaxMm, l.MinMm})
		}
	}
	return out
}

// Standards lists every flange: the FF series, then the FT series.
func Standards() []Standard {
	var out []Standard
	for _, tapped := range []bool{false, true} {
		for _, z := range sizes {
			f := Standard{
				Name: fmt.Sprintf("FF%g", z.m), PitchMm: z.m, SpigotMm: z.n, Spigots: spigots(z.n), OutsideMm: z.p,
				SpigotHeightMm: z.t, Holes: z.holes, HoleMm: z.s, Thread: z.thread,
			}
			if tapped {
				f.Name, f.HoleMm, f.Tapped = fmt.Sprintf("FT%g", z.m), 0, true
			}
			out = append(out, f)
		}
	}
	return out
}

// nemaFaces are the faces of NEMA MG 1 as standards, FaceSource says where from. A spigot
// may be 0.003 in under its size, from 12 in 0.005 in.
func nemaFaces() (out []Standard) {
	for _, f := range cFaces {
		under, class := 0.003*geom.MmPerInch, "0/−0.003 in"
		if f.spigotMm >= 12*geom.MmPerInch {
			under, class = 0.005*geom.MmPerInch, "0/−0.005 in"
		}
		out = append(out, Standard{
			Name: "NEMA " + f.frames, PitchMm: f.pitchMm, SpigotMm: f.spigotMm, Spigots: []SpigotClass{{class, f.spigotMm, f.spigotMm - under}},
			OutsideMm: f.outsideMm, SpigotHeightMm: f.spigotHeightMm, Holes: 4, Thread: f.thread, Tapped: true, DeepMm: f.deepMm,
		})
	}
	return out
}

// FaceSource says where the faces of NEMA come from.
const FaceSource = "NEMA MG 1, faces by makers' tables; threads of 3 3/4 and 9 in from memory"

// The codes of a Difference.
const (
	PitchDiffers   Code = "pitch-circle"
	CountDiffers   Code = "hole-count"
	SpacingDiffers Code = "spacing"    // Hole is OffMm from equal spacing
	CircleDiffers  Code = "off-circle" // Hole is OffMm outside the circle
	SpigotDiffers  Code = "spigot"
	HolesDiffer    Code = "hole-size"
)

// Difference is what speaks against a standard flange.
type Difference struct {
	Code  Code    `json:"code"`
	Hole  int     `json:"hole,omitempty"`
	OffMm float64 `json:"off_mm"` // measured − standard
}

// Match is the standard flange nearest to a measured one. The offs are
// measured − standard.
type Match struct {
	Standard
	PitchOffMm  float64 `json:"pitch_off_mm"`
	SpigotOffMm float64 `json:"spigot_off_mm"`
	// SpigotClasses are the classes that the spigot may be of.
	SpigotClasses []string     `json:"spigot_may_be"`
	HoleOffMm     float64      `json:"hole_off_mm"` // largest, of free holes
	Matches       bool         `json:"matches"`
	Against       []Difference `json:"against"` // empty where it matches
	Source        string       `json:"source"`
}

// Tolerances of the match where the standard's own limits are finer than a
// caliper (common practice, no source).
const (
	pitchMatchMm = 0.5
	placeMatchMm = 0.5 // of a hole, along and across the circle
	holeMatchMm  = 0.6
	farOff       = 0.05 // of the pitch circle: further off is another flange
	otherCount   = 5.0  // another number of holes is as bad as so many mm
)

// Nearest names the standard flange most like the measured one: of the FT
// series if its holes are tapped, else of FF, or a face of NEMA, whose counterpart has
// free holes. It reports false where even the
// nearest pitch circle is more than 5 % off.
func (r *Result) Nearest(tapped bool) (Match, bool) {
	cost := func(s Standard) float64 {
		c := math.Abs(r.PCDMm - s.PitchMm)
		if r.SpigotMm > 0 {
			c += math.Abs(r.SpigotMm - s.SpigotMm)
		}
		if len(r.Holes) != s.Holes {
			c += otherCount
		}
		return c
	}
	all := append(slices.DeleteFunc(Standards(), func(s Standard) bool { return s.Tapped != tapped }), nemaFaces()...)
	best := slices.MinFunc(all, func(a, b Standard) int { return cmp.Compare(cost(a), cost(b)) })
	m := Match{Standard: best, PitchOffMm: r.PCDMm - best.PitchMm, Against: []Difference{}, SpigotClasses: []string{}, Source: StandardSource}
	if strings.HasPrefix(best.Name, "NEMA") {
		m.Source = FaceSource
	}
	if math.Abs(m.PitchOffMm) > farOff*best.PitchMm {
		return m, false
	}
	m.pattern(r)
	if r.SpigotMm > 0 {
		m.spigot(r)
	}
	if m.HoleMm > 0 {
		m.holes(r)
	}
	m.Matches = len(m.Against) == 0
	return m, true
}

func (m *Match) against(code Code, hole int, off float64) {
	m.Against = append(m.Against, Difference{code, hole, off})
}

// pattern compares the circle, the count and the places of the holes.
func (m *Match) pattern(r *Result) {
	if math.Abs(m.PitchOffMm) > math.Max(pitchMatchMm, CoverageFactor*r.PCDUMm) {
		m.against(PitchDiffers, 0, m.PitchOffMm)
	}
	if off := len(r.Holes) - m.Standard.Holes; off != 0 {
		m.against(CountDiffers, 0, float64(off))
	}
	if !r.Equal && math.Abs(r.EqualOffMm) > placeMatchMm {
		m.against(SpacingDiffers, r.EqualHole, r.EqualOffMm)
	}
	if !r.OneCircle && math.Abs(r.CircleOffMm) > placeMatchMm {
		m.against(CircleDiffers, r.CircleHole, r.CircleOffMm)
	}
}

func (m *Match) spigot(r *Result) {
	m.SpigotOffMm = r.SpigotMm - m.SpigotMm
	u := CoverageFactor * r.SpigotUMm
	for _, l := range m.Spigots {
		if r.SpigotMm <= l.MaxMm+u && r.SpigotMm >= l.MinMm-u {
			m.SpigotClasses = append(m.SpigotClasses, l.Class)
		}
	}
	if len(m.SpigotClasses) == 0 {
		m.against(SpigotDiffers, 0, m.SpigotOffMm)
	}
}

// holes compares the free holes with the standard's.
func (m *Match) holes(r *Result) {
	hole := 0
	for _, h := range r.Holes {
		if off := h.DiameterMm - m.HoleMm; math.Abs(off) > math.Abs(m.HoleOffMm) {
			m.HoleOffMm, hole = off, h.N
		}
	}
	if math.Abs(m.HoleOffMm) > holeMatchMm {
		m.against(HolesDiffer, hole, m.HoleOffMm)
	}
}

// Transition tells whether a spigot of this flange in a bore from minMm up is
// a fit that is meant to be tight or loose by a little: the bore is not under
// the nominal size, and the spigot may be of a class in use.
func (m Match) Transition(boreMinMm float64) bool {
	return len(m.SpigotClasses) > 0 && boreMinMm >= m.SpigotMm
}

// FaceOf is the mounting face with a bolt circle and a spigot for a bore, both within
// 0.5 mm, of IEC 60072-1 or NEMA MG 1; ok is false where there is none.
func FaceOf(pitchMm, boreMm float64) (face Standard, ok bool) {
	return seq.Find(append(Standards(), nemaFaces()...), func(s Standard) bool {
		return math.Abs(s.PitchMm-pitchMm) < pitchMatchMm && math.Abs(s.SpigotMm-boreMm) < pitchMatchMm
	})
}

// flangeName is a standard flange in words: of IEC, or a frame of NEMA that has a face.
var flangeName = regexp.MustCompile(`(?i)\b(?:F[FT] ?\d{2,4}|\d{2,3}T?C)\b`)

// Named are the flanges of IEC 60072-1 and the faces of NEMA MG 1 that words name, such as FF165, 56C or
// 184TC, in their order, each by that name.
func Named(words string) (out []Standard) {
	for _, name := range flangeName.FindAllString(words, -1) {
		name = strings.ToUpper(strings.ReplaceAll(name, " ", ""))
		for _, s := range append(Standards(), nemaFaces()...) {
			if s.Name == name || slices.Contains(strings.FieldsFunc(s.Name, func(r rune) bool { return r == ' ' || r == ',' }), name) {
				s.Name = name
				out = append(out, s)
			}
		}
	}
	return out
}
