package stand_test

import (
	"fmt"
	"maps"
	"strings"
	"testing"

	"centrepop/layout/layouttest"
	"centrepop/layout/plan"
	"centrepop/parts/seq"
)

// A gusset of 60 × 60 × 6 with a corner of 10 off stands on a base and against an upright: 50 of each edge in two corners, and
// round its ends of 6 where sides are not said, but not into the notch. A strip that it bears already fills no corner of its
// own, nor does a tile on the strip, and one on the base that stands in a corner takes its 20 from that, and has its own over them. A plate that lies has a corner all round.
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
		{strip + "gusset.outline, type: fillet, size: 3}, place: {on: front, with: back, at: [-10, -20], top: up}}\n  - {name: tile, weld: {part: tile.outline, to: strip.outline, type: fillet, size: 3}, place: {on: right, with: left, from-left: 0, from-bottom: 0, front: left}}\n  - {name: last, weld: " + gusset + ", sides: 2" + stands, both},
		{strip + "base.outline, type: fillet, size: 3}, place: {on: front, with: back, from-left: 103, from-bottom: 120, top: up}}\n  - {name: last, weld: " + gusset + ", sides: 2" + stands,
			with(map[string]float64{"front Gusset Base": 30, "front Strip Gusset": 20})},
		{"  - {name: last, weld: {part: strip.outline, to: base.outline, type: fillet, size: 3, sides: 1}, place: {on: front, with: back, at: [50, -50], top: up}}\n",
			map[string]float64{"left Strip Base": 20, "right Strip Base": 20, "top Strip Base": 20, "bottom Strip Base": 20}},
		// Face to face with the upright, 8 before it and 13 before it: between the two no torch comes down.
		{"  - {name: last, weld: " + gusset + ", sides: 2}, place: {on: front, with: bottom, from-left: 60, from-bottom: 108, front: up}}\n", map[string]float64{"front Gusset Base": 50}},
		{"  - {name: last, weld: " + gusset + ", sides: 2}, place: {on: front, with: bottom, from-left: 60, from-bottom: 113, front: up}}\n", map[string]float64{"front Gusset Base": 50, "back Gusset Base": 50}},
		// Beside a cover that is bolted on it is welded to the base alone.
		{"  - {name: cover, bolt: {through: cover.lid, into: base.lid, bolt: M6 8.8, nut: yes}, face: back-on-front}\n  - {name: last, weld: {part: strip.outline, to: base.outline, type: fillet, size: 3, sides: 1}, place: {on: front, with: back, at: [-30, -60], top: up}, after: cover}\n",
			map[string]float64{"left Strip Base": 20, "right Strip Base": 20, "top Strip Base": 20, "bottom Strip Base": 20}},
	} {
		plate := func(name, thick, outline string) string {
			return "part: " + name + "\ntitle: " + map[string]string{"base": "Base", "upright": "Upright", "gusset": "Gusset", "strip": "Strip", "tile": "Tile", "cover": "Cover"}[name] + "\nkind: plate\nmaterial: S235\nstock: {plate: " + thick + "}\noutline: {" + outline + "}\n"
		}
		_, pl := layouttest.Stood(t, layouttest.Write(t, map[string]string{
			"base.yaml":  plate("base", "10", "square: 200") + "holes: [{name: lid, at: [[-60, -70], [-60, -50]], size: M6 clearance}]\n",
			"cover.yaml": plate("cover", "5", "rectangle: [40, 60]") + "holes: [{name: lid, at: [[0, -10], [0, 10]], size: M6 clearance}]\n", "upright.yaml": plate("upright", "10", "rectangle: [200, 100]"), "strip.yaml": plate("strip", "5", "square: 20"), "tile.yaml": plate("tile", "5", "square: 20"),
			"gusset.yaml": plate("gusset", "6", "polygon: {points: [[-20, -30], [30, -30], [30, 30], [-30, 30], [-30, -20]]}"),
			"job.yaml": "job: Gusset\nunits: mm\nparts: [base.yaml, upright.yaml, gusset.yaml, strip.yaml, cover.yaml, tile.yaml]\njoints:\n" +
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

// A post stands on a rail of 50 and goes up level with its sides, or stands back from them by so much: along a side that stands back
// is a corner, along one that is level none, and it is flush. Tube of 50 × 4 has edges of 8 round (EN 10219-2, from memory), which
// lie 0.25 deep at 6 from the side: over the round of its wall a post is flush there, and touches only what lies between;
// where the middle of a fillet of 3 would lie over the round it has no corner either. Tube of 100 × 8 has 20 round: its side is looked for 12 deep,
// where the round stands back 1.67, a quarter of a millimetre within the post.
func TestFlushOnARound(t *testing.T) {
	t.Parallel()
	for _, c := range []struct{ rail, post, from, flush, corners string }{
		{"square: 50", "50", "0", "front back", "bottom 50, top 50"}, {"square: 50", "40", "0", "front", "bottom 40, top 40, back 40"},
		{"square: 50", "40", "5", "", "bottom 40, top 40, front 40, back 40"},
		{"square: 50, wall: 4", "50", "0", "front back", "bottom 38, top 38"}, {"square: 50, wall: 4", "40", "1", "front", "back 40, bottom 35, top 35"},
		{"square: 50, wall: 4", "40", "3.7", "front back", "bottom 38, top 38"}, {"square: 50, wall: 4", "40", "5", "", "bottom 38, top 38"},
		{"square: 50, wall: 4", "32", "9", "", "bottom 32, top 32, front 32, back 32"},
		{"square: 50, wall: 4", "32", "7.4", "", "bottom 32, top 32, front 32, back 32"}, {"square: 50, wall: 4", "32", "7.33", "front", "bottom 32, top 32, back 32"}, // 6.02 + 0.45 × 3
		{"square: 100, wall: 8", "50", "1.2", "", "back 50, bottom 34, top 34"}, {"square: 100, wall: 8", "50", "1.6", "front", "back 50, bottom 35, top 35"},
	} {
		_, pl := layouttest.Stood(t, layouttest.Write(t, map[string]string{
			"rail.yaml": "part: rail\nkind: bar\nmaterial: S235\nbar: {" + c.rail + ", length: 400}\n",
			"post.yaml": "part: post\nkind: bar\nmaterial: S235\nbar: {square: " + c.post + ", length: 200}\n",
			"job.yaml": "job: Post\nunits: mm\nparts: [rail.yaml, post.yaml]\njoints:\n" +
				"  - {name: foot, weld: {part: post.left, to: rail.top, type: fillet, size: 3}, place: {on: top, with: left, from-left: 100, from-bottom: " + c.from + ", front: down}}\n"}))
		w := pl.Joints[0].Weld
		corners := strings.Join(seq.Map(w.Corners, func(o plan.Corner) string { return fmt.Sprint(o.Side, " ", o.LengthMm) }), ", ")
		if flush := strings.Join(w.Flush, " "); flush != c.flush || corners != c.corners {
			t.Errorf("%+v: flush %s, corners %s", c, flush, corners)
		}
	}
}

// A post of 50 stands on a plate with its front on the plate's edge, which has a step there: a side is flush where more than twice as much of it
// has no corner as has one.
func TestFlushInPart(t *testing.T) {
	t.Parallel()
	for step, want := range map[string]string{"11": "front: bottom 50, top 50, back 50, front 14", "9": ": bottom 50, top 50, back 50, front 16"} {
		_, pl := layouttest.Stood(t, layouttest.Write(t, map[string]string{
			"base.yaml": "part: base\nkind: plate\nmaterial: S235\nstock: {plate: 20}\noutline: {polygon: {points: [[-100, -100], [" + step + ", -100], [" + step + ", -120], [100, -120], [100, 100], [-100, 100]]}}\n",
			"post.yaml": "part: post\nkind: bar\nmaterial: S235\nbar: {square: 50, length: 100}\n",
			"job.yaml":  "job: Post\nunits: mm\nparts: [base.yaml, post.yaml]\njoints:\n  - {name: foot, weld: {part: post.left, to: base.outline, type: fillet, size: 3}, place: {on: front, with: left, from-left: 75, from-bottom: 20, front: down}}\n"}))
		w := pl.Joints[0].Weld
		got := strings.Join(w.Flush, " ") + ": " + strings.Join(seq.Map(w.Corners, func(o plan.Corner) string { return fmt.Sprint(o.Side, " ", o.LengthMm) }), ", ")
		if got != want {
			t.Errorf("a step at %s: %s, want %s", step, got, want)
		}
	}
}
