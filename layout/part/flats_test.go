package part

import (
	"math"
	"strings"
	"testing"

	"centrepop/layout/plan"
	"centrepop/parts"
	"centrepop/parts/geom"

	"github.com/tdewolff/canvas"
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

// Flats show on the faces of a turned part: along all of the widest step they are the outline, which from the front ends at 60 to the
// right for 122 of Ø124 at clock 90° and at 62 to the left, on the back the other way round; of a hexagon 100 across with a flat at TOP the outline
// is 100 high, and 57.74 = 50/cos 30° to its corners, or 55 where they stay round on Ø110. Shorter ones and those of another step are
// lines: seen on the face that they reach, else dashed.
func TestFlatsOnFaces(t *testing.T) {
	t.Parallel()
	const text = "part: p\nkind: turned\nmaterial: S355\ntop: punch\nstock: {round: 130, length: 70, cut: saw}\nprofile:\n  outside: [{name: flange, diameter: WIDE, length: 20}, {name: boss, diameter: 80, length: 40}]\n" +
		"holes:\n  - {name: f, face: front, circle: {pcd: 60, count: 4}, size: 8, depth: 10}\n  - {name: b, face: back, circle: {pcd: 60, count: 3}, size: 6, depth: 10}\nflats:\n  - {name: flat, FLATS}\n"
	for _, c := range []struct {
		wide, flats              string
		right, top               float64 // of the outline from the front
		lines, seen, far, dashed int     // on the front and the back
	}{
		{"124", "in: flange, sides: 1, across: 122, clock: 90", 60, 62, 0, 0, 0, 0},
		{"110", "in: flange, sides: 6, across: 100, clock: 0", 55, 50, 0, 0, 0, 0},
		{"124", "in: flange, sides: 6, across: 100, clock: 0", 57.735, 50, 0, 0, 0, 0},
		{"124", "in: flange, sides: 1, across: 122, clock: 90, length: 8, from: front", 62, 62, 1, 0, 0, 1},
		{"124", "in: boss, sides: 2, across: 70, clock: 90", 62, 62, 0, 2, 2, 0},
		{"124", "in: boss, sides: 2, across: 70, clock: 90, length: 12, from: back", 62, 62, 0, 2, 2, 0},
	} {
		m := work(t, "mm", strings.NewReplacer("WIDE", c.wide, "FLATS", c.flats).Replace(text))
		for _, f := range m.Out.Faces {
			path, err := canvas.ParseSVGPath(string(f.Outline))
			if err != nil {
				t.Fatal(err)
			}
			box, lines, dashed := geom.Bounds(path), c.lines, c.seen
			right, other := box.Max.XMm, -box.Min.XMm
			if f.Face == parts.Back {
				right, other, lines, dashed = other, right, c.far, c.dashed
			}
			if math.Abs(right-c.right) > 0.01 || math.Abs(box.Max.YMm-c.top) > 0.01 || math.Abs(other-max(c.right, c.top)) > 0.01 && c.right < c.top {
				t.Errorf("%s, %s: from %.2f to %.2f, %.2f high", c.flats, f.Face, box.Min.XMm, box.Max.XMm, box.Max.YMm)
			}
			if len(f.Notches) != lines || len(f.Hidden) != dashed {
				t.Errorf("%s, %s: %d lines, %d dashed", c.flats, f.Face, len(f.Notches), len(f.Hidden))
			}
		}
	}
}
