package fits

import (
	"fmt"
	"math"
	"strings"
)

// TubeTolerance is how far the outside of a tube as bought may lie from its
// nominal diameter; out of round counts in.
type TubeTolerance struct {
	PlusMinusMm float64
	Source      string // standard and table, with its state in words
}

// tubeRule is the rule of one standard over a range of diameters: a share of the
// diameter, not under leastMm and not over mostMm.
type tubeRule struct {
	standard        string
	upToMm          float64
	share           float64
	leastMm, mostMm float64
	table           string
}

// tubeRules in order of diameter for each standard: EN 10210-2 as tatasteelbluebook.com
// prints it ("Hot finished CHS"), EN 10219-2 as nkcelik.com.tr and ASTM A500 as embosal.com
// do; of the others testdata/reference/tables.csv says what was looked up.
var tubeRules = []tubeRule{
	{"EN 10210-2", math.MaxFloat64, 0.01, 0.5, 10, "Table 2"},
	{"EN 10219-2", math.MaxFloat64, 0.01, 0.5, 10, "Table 2"},
	{"EN 10216-1", math.MaxFloat64, 0.01, 0.5, math.MaxFloat64, "Table 7"},
	{"EN 10217-1", 219.1, 0.01, 0.5, math.MaxFloat64, "Table 8"},
	{"EN 10217-1", math.MaxFloat64, 0.0075, 0, 6, "Table 8"},
	{"ASTM A53", 48.3, 0, 0.4, 0.4, "clause 13, 1/64 in to 1 1/2 nominal"},
	{"ASTM A53", math.MaxFloat64, 0.01, 0, math.MaxFloat64, "clause 13"},
	{"ASTM A500", 48.3, 0.005, 0, math.MaxFloat64, "clause 11, to 1.900 in"},
	{"ASTM A500", math.MaxFloat64, 0.0075, 0, math.MaxFloat64, "clause 11"},
}

// checkedTubes are the standards whose rules were looked up.
const checkedTubes = "EN 10210-2, EN 10219-2, ASTM A500"

// TubeOutside returns the tolerance on the outside diameter outsideMm (mm) of a tube
// bought to a standard: EN 10210-2 (hot finished), EN 10219-2 (cold formed), EN
// 10216-1 (seamless), EN 10217-1 (welded, for pressure), ASTM A53 or A500. It errs
// for another standard, which may be much closer (precision tube of EN 10305).
func TubeOutside(standard string, outsideMm float64) (TubeTolerance, error) {
	for _, r := range tubeRules {
		if r.standard == standard && outsideMm <= r.upToMm {
			source := r.standard + " " + r.table
			if !strings.Contains(checkedTubes, standard) {
				source += " (from memory)"
			}
			return TubeTolerance{math.Min(math.Max(r.share*outsideMm, r.leastMm), r.mostMm), source}, nil
		}
	}
	return TubeTolerance{}, fmt.Errorf("fits: no tube standard %q: known are EN 10210-2, EN 10219-2, EN 10216-1, EN 10217-1, ASTM A53, ASTM A500", standard)
}

// TubeStandard returns the standard that tube of a grade is usually bought to: P
// grades EN 10217-1 (the same on outside diameters to 219.1 mm as seamless EN
// 10216-1), A53 and A106, A500, and other structural grades EN 10219-2. Empty for
// precision tube (E grades, A513), whose tolerances are close and its own.
func TubeStandard(grade string) string {
	switch {
	case strings.HasPrefix(grade, "P"):
		return "EN 10217-1"
	case strings.HasPrefix(grade, "A53"):
		return "ASTM A53"
	case strings.HasPrefix(grade, "A500"):
		return "ASTM A500"
	case strings.HasPrefix(grade, "S"):
		return "EN 10219-2"
	}
	return ""
}
