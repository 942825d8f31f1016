package picture_test

import (
	"math"
	"testing"

	"centrepop/layout/picture"
	"centrepop/layout/plan"
)

// The last corner of a frame shows it cut through the middle, every bar's two walls, with
// both diagonals.
func TestFramePicture(t *testing.T) {
	t.Parallel()
	joints, _ := pictured(t, "pugmill")
	p := joints["stand-corner-4"].Pictures
	if len(p) != 1 || p[0].Cut != plan.CutFrame || len(p[0].Centres) != 2 {
		t.Fatalf("%d pictures, %+v", len(p), p)
	}
	want := math.Hypot(460, 310)
	for _, c := range p[0].Centres {
		if d := math.Hypot(c[1].XMm-c[0].XMm, c[1].YMm-c[0].YMm); math.Abs(d-want) > 1e-6 {
			t.Errorf("diagonal %v, want %v", d, want)
		}
	}
	// Corner 1 is that of the right end of rail 1, which lies below; the others follow round.
	mid := p[0].MinMm.Plus(p[0].MaxMm).Times(0.5)
	for i, side := range [][2]float64{{1, -1}, {1, 1}, {-1, 1}, {-1, -1}} {
		if c := p[0].Corners[i]; (c.XMm-mid.XMm)*side[0] < 200 || (c.YMm-mid.YMm)*side[1] < 150 {
			t.Errorf("corner %d at %v of %v", i+1, c, mid)
		}
	}
	bars := 0
	for _, s := range p[0].Shapes {
		if s.Kind == plan.ShapePart {
			if bars++; len(s.Loops) != 2 {
				t.Errorf("%s: %d walls", s.Title, len(s.Loops))
			}
		}
	}
	if bars != 4 {
		t.Errorf("%d bars", bars)
	}
}

// The diagonals of bars that stand between two others go over the opening they leave; the last
// corner needs no place, since the others have put both its bars.
func TestOpeningPicture(t *testing.T) {
	t.Parallel()
	weld := func(n, a, b, place string) string {
		return "  - {name: c" + n + ", weld: {part: cross#" + a + ", to: rail#" + b + ", type: fillet, length: 50, process: MAG}" + place + "}\n"
	}
	m, pl := load(t, write(t, map[string]string{
		"job.yaml": "job: A\nunits: mm\ntolerance: m\nparts: [rail.yaml, cross.yaml]\njoints:\n" +
			weld("1", "1.left", "1.bottom", ", place: {on: bottom, with: left, at: [-150, 0], front: up}") + weld("2", "2.left", "1.bottom", ", place: {on: bottom, with: left, at: [205, 0], front: up}") +
			weld("3", "1.right", "2.top", ", place: {on: top, with: right, at: [-150, 0], front: down}") + weld("4", "2.right", "2.top", ""),
		"rail.yaml":  "part: rail\nkind: bar\nquantity: 2\nmaterial: S235\nbar: {square: 50, wall: 4, length: 460}\n",
		"cross.yaml": "part: cross\nkind: bar\nquantity: 2\nmaterial: S235\nbar: {square: 50, wall: 4, length: 300}\n",
	}))
	for _, p := range m.Problems {
		t.Errorf("%s: %s", p.Kind, p.What)
	}
	picture.Draw(m)
	p := pl.Joints[3].Pictures
	if len(p) != 1 || p[0].Cut != plan.CutFrame || len(p[0].Centres) != 2 {
		t.Fatalf("%+v", p)
	}
	for _, c := range p[0].Centres {
		if d := math.Hypot(c[1].XMm-c[0].XMm, c[1].YMm-c[0].YMm); math.Abs(d-math.Hypot(355-50, 300)) > 1e-6 {
			t.Errorf("diagonal %v", d)
		}
	}
}

// A third cross goes between the two rails of such a frame, which carries a mast of 300 above or below: upright or upside down the frame lies flat and nothing
// is held while its second end is welded, though it would fall over with that end up.
func TestNothingHeldInAFrame(t *testing.T) {
	t.Parallel()
	weld := func(n, a, b, place string) string {
		return "  - {name: c" + n + ", weld: {part: cross#" + a + ", to: rail#" + b + ", type: fillet, length: 50, process: MAG}" + place + "}\n"
	}
	for _, side := range []string{"front", "back"} {
		m, pl := load(t, write(t, map[string]string{
			"job.yaml": "job: A\nunits: mm\ntolerance: m\nup: front\nparts: [rail.yaml, cross.yaml]\njoints:\n" +
				weld("1", "1.left", "1.bottom", ", place: {on: bottom, with: left, at: [-150, 0], front: up}") + weld("2", "2.left", "1.bottom", ", place: {on: bottom, with: left, at: [205, 0], front: up}") +
				weld("3", "1.right", "2.top", ", place: {on: top, with: right, at: [-150, 0], front: down}") + weld("4", "2.right", "2.top", "") +
				weld("5", "4.left", "1."+side, ", place: {on: "+side+", with: left, at: [0, 0], front: up}") +
				weld("6", "3.left", "1.bottom", ", place: {on: bottom, with: left, at: [30, 0], front: up}") + weld("7", "3.right", "2.top", ""),
			"rail.yaml":  "part: rail\nkind: bar\nquantity: 2\nmaterial: S235\nbar: {square: 50, wall: 4, length: 460}\n",
			"cross.yaml": "part: cross\nkind: bar\nquantity: 4\nmaterial: S235\nbar: {square: 50, wall: 4, length: 300}\n",
		}))
		for _, p := range m.Problems {
			t.Errorf("%s: %s", p.Kind, p.What)
		}
		picture.Draw(m)
		if j := pl.Joints[6]; j.Name != "c7" || j.Hold != nil {
			t.Errorf("mast on the %s, %s: %+v", side, j.Name, j.Hold)
		}
	}
}
