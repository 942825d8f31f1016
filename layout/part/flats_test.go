package part

import (
	"strings"
	"testing"

	"centrepop/layout/plan"
)

const flatsShaft = `part: bolt
kind: turned
material: C45
stock: {round: 35 mm, length: 100 mm, cut: saw}
profile:
  outside:
    - {name: head, diameter: 30, length: 40}
    - {name: shank, diameter: 20, length: 50}
flats:
  - {name: key, in: head, FLATS}
`

// A hexagon 24 across on 30: 3 deep, sides 24 / √3 = 13.86 wide, corners 27.71
// sharp; on 27 the corners stay round and the flats are 2 · √(1.5 · 25.5) =
// 12.37 wide. A 40:1 head turns 6 and 4 of 6 = 2 of 3 for six sides.
func TestFlats(t *testing.T) {
	t.Parallel()
	for _, c := range []struct {
		flats, size, line, index string
		from, to                 float64
		full                     bool
	}{
		{"sides: 6, across: 24", "hexagon 24 across flats on Ø30", "feed down 3; each flat comes out 13.86 wide", "Index 60° from flat to flat: on a 40:1 head 6 turns and 2 of 3.", 0, 40, true},
		{"sides: 4, across: 24, length: 15", "square 24 across flats on Ø30", "feed down 3; each flat comes out 18 wide", "Index 90° from flat to flat: on a 40:1 head 10 turns.", 0, 15, false},
		{"across: 24, length: 15, from: back, clock: -90", "2 flats 24 across flats on Ø30", "Clock 270° up, 25 to 40 from the front face", "Index 180° from flat to flat: on a 40:1 head 20 turns.", 25, 40, false},
		{"sides: 1, across: 27", "flat 27 to the far side on Ø30", "feed down 3", "", 0, 40, false},
	} {
		m := work(t, "mm", strings.Replace(flatsShaft, "FLATS", c.flats, 1))
		f := feature(m, "key")
		if f.Kind != plan.FlatsFeature || f.Size != c.size || strings.Contains(f.Note, "corners stay round") != (c.flats[:8] == "sides: 4") {
			t.Errorf("%s: %+v", c.flats, f)
		}
		row := m.Out.Flats[0]
		if row.FromMm != c.from || row.ToMm != c.to || row.Full != c.full {
			t.Errorf("%s: %+v", c.flats, row)
		}
		has(t, m, c.line, c.index)
		if w := check(m, "key"); w == nil || w.MinMm >= w.MaxMm || !strings.Contains(c.size, w.Wanted) {
			t.Errorf("%s: check %v", c.flats, w)
		}
		if d := m.Out.Dimensions[len(m.Out.Dimensions)-2]; d.Text != strings.TrimSuffix(c.size, " on Ø30") || d.FromMm != c.from || d.RadiusMm != 15 {
			t.Errorf("%s: dimension %+v", c.flats, d)
		}
		op := m.Out.Operations[len(m.Out.Operations)-2]
		if op.Machine != "Mill" || op.Refs[0] != f.N || strings.Contains(strings.Join(op.Do, " "), "Index") != (c.index != "") {
			t.Errorf("%s: %+v", c.flats, op)
		}
	}
}
