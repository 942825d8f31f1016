package fits

import (
	"testing"

	"centrepop/parts/golden"
)

// The tables whole: what of them was looked up and what not, testdata/reference/tables.csv
// says row by row.
func TestTables(t *testing.T) {
	t.Parallel()
	golden.Held(t, "ISO 2768-1 lengths: to, f, m, c, v, mm", generalLinear[:])
	golden.Held(t, "ISO 2768-1 chamfers: to, f, m, c, v, mm", generalChamfer[:])
	golden.Held(t, "ISO 2768-1 angles: leg to, mm, f, m, c, v, minutes", generalAngle[:])
	golden.Held(t, "tube outside: to, share, least, most, mm", tubeRules)
}
