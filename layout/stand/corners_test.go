package stand_test

import (
	"maps"
	"testing"

	"centrepop/layout/layouttest"
)

// A gusset of 60 × 60 × 6 with a corner of 10 off stands on a base and against an upright: 50 of each edge in two corners, and
// round its ends of 6 where sides are not said, but not into the notch. A strip that it bears already fills no corner of its
// own, and one on the base that stands in a corner takes its 20 from that, and has its own over them. A plate that lies has a corner all round.
func TestCornersOfSheet(t *testing.T) {
	t.Parallel()
	const gusset = "{part: gusset.outline, to: base.outline, type: fillet, size: 5"
	const stands = "}, place: {on: front, with: bottom, from-left: 97, from-bottom: 100, front: right}}\n"
	const strip = "  - {name: strip, weld: {part: strip.outline, to: "
	both := map[string]float64{"front Gusset Base": 50, "back Gusset Base": 50, "front Gusset Upright": 50, "back Gusset Upright": 50}
	with := func(more map[string]float64) map[string]float64 {
		all := maps.Clone(both)
		maps.Copy(all, more)
		return all
	}
	for _, c := range []struct {
		joints string // after the upright is welded to the base
		want   map[string]float64
	}{
		{"  - {name: last, weld: " + gusset + ", sides: 2" + stands, both},
		{"  - {name: last, weld: " + gusset + stands, with(map[string]float64{"right Gusset Base": 6, "top Gusset Upright": 6})},
		{strip + "gusset.outline, type: fillet, size: 3}, place: {on: front, with: back, at: [5, -20], top: up}}\n  - {name: last, weld: " + gusset + ", sides: 2" + stands, both},
		{strip + "base.outline, type: fillet, size: 3}, place: {on: front, with: back, from-left: 103, from-bottom: 120, top: up}}\n  - {name: last, weld: " + gusset + ", sides: 2" + stands,
			with(map[string]float64{"front Gusset Base": 30, "front Strip Gusset": 20})},
		{"  - {name: last, weld: {part: strip.outline, to: base.outline, type: fillet, size: 3, sides: 1}, place: {on: front, with: back, at: [50, -50], top: up}}\n",
			map[string]float64{"left Strip Base": 20, "right Strip Base": 20, "top Strip Base": 20, "bottom Strip Base": 20}},
	} {
		plate := func(name, thick, outline string) string {
			return "part: " + name + "\ntitle: " + map[string]string{"base": "Base", "upright": "Upright", "gusset": "Gusset", "strip": "Strip"}[name] + "\nkind: plate\nmaterial: S235\nstock: {plate: " + thick + "}\noutline: {" + outline + "}\n"
		}
		_, pl := layouttest.Load(t, layouttest.Write(t, map[string]string{
			"base.yaml": plate("base", "10", "square: 200"), "upright.yaml": plate("upright", "10", "rectangle: [200, 100]"), "strip.yaml": plate("strip", "5", "square: 20"),
			"gusset.yaml": plate("gusset", "6", "polygon: {points: [[-20, -30], [30, -30], [30, 30], [-30, 30], [-30, -20]]}"),
			"job.yaml": "job: Gusset\nunits: mm\nparts: [base.yaml, upright.yaml, gusset.yaml, strip.yaml]\njoints:\n" +
				"  - {name: upright, weld: {part: upright.outline, to: base.outline, type: fillet, size: 5, sides: 2}, place: {on: front, with: bottom, at: [0, 0], front: up}}\n" + c.joints}))
		got := map[string]float64{}
		for _, o := range pl.Joints[len(pl.Joints)-1].Weld.Corners {
			got[o.Side+" "+o.Of+" "+o.Along] = o.LengthMm
		}
		if !maps.Equal(got, c.want) {
			t.Errorf("%s\n%v, want\n%v", c.joints, got, c.want)
		}
	}
}
