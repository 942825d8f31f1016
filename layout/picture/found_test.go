package picture_test

import (
	"fmt"
	"strings"
	"testing"

	"centrepop/layout/assembly"
	"centrepop/layout/picture"
	"centrepop/layout/plan"
)

// A block of 60 × 40 × 10 that is laid beside a rib on a base has a picture of its own, level
// through its middle: 0.6 of its 60 further than it is cut, from 36 beyond its 60, but along its
// thickness only 0.02 of 60 beyond the 10 of the block and the 20 of the base under it. One whose
// middle lies 50 beside the base would show no more than 16 of that, a scrap: it is drawn 1.5 of its
// 60 further, 90 to the base and 0.02 to where nothing is.
func TestLaidPicture(t *testing.T) {
	t.Parallel()
	for _, c := range []struct {
		at, from, to float64
	}{{130, -66, 66}, {250, -31.2, 120}} {
		laidPicture(t, c.at, c.from, c.to)
	}
}

func laidPicture(t *testing.T, at, from, to float64) {
	t.Helper()
	m, pl := load(t, write(t, map[string]string{"base.yaml": basePart, "rib.yaml": strings.Replace(ribPart, "quantity: 2", "quantity: 1", 1),
		"block.yaml": "part: block\nkind: plate\nmaterial: S235\nstock: {plate: 10 mm}\noutline: {rectangle: [60, 40]}\n",
		"job.yaml": strings.Replace(ribJob, "rib.yaml", "rib.yaml, block.yaml", 1) + ribWeld + ", place: {on: front, with: bottom, from-left: 30, from-bottom: 20, front: down}}\n" +
			"loose:\n  - {part: block, how: laid on it, after: rib, lies: [{on: base.front, with: back, at: [" + fmt.Sprint(at) + ", 50], top: up}]}\n"}))
	picture.Draw(m)
	boxed(t, m, "block#1", assembly.Vec{X: at - 30, Y: 30}, assembly.Vec{X: at + 30, Y: 70, Z: 10})
	all := pl.Joints[0].Pictures
	p := all[len(all)-1]
	if low, high := (plan.XY{XMm: -6.2, YMm: from}), (plan.XY{XMm: 26.2, YMm: to}); p.Cut != plan.CutLevel || p.MinMm != low || p.MaxMm != high {
		t.Errorf("%s from %v to %v, want %v to %v", p.Cut, p.MinMm, p.MaxMm, low, high)
	}
	for _, s := range p.Shapes { // what is put in alone is new and has a number
		if own := s.Title == "block"; s.New != own || s.Named != own {
			t.Errorf("%+v", s)
		}
	}
	if len(p.Arrows) != 1 || p.Arrows[0].Of != "block" {
		t.Errorf("%+v", p.Arrows)
	}
}
