package machine_test

import (
	"strconv"
	"strings"
	"testing"

	"centrepop/layout/assembly"
	"centrepop/layout/plan"
)

// A bar laid on a face of another says to which side its right end lies: the one that its place
// in space shows, whatever faces meet and wherever it looks.
func TestSaidWayOfABar(t *testing.T) {
	t.Parallel()
	sides := map[string]assembly.Vec{
		"right": assembly.AxisX, "left": assembly.AxisX.Times(-1), "top": assembly.AxisY, "bottom": assembly.AxisY.Times(-1), "front": assembly.AxisZ, "back": assembly.AxisZ.Times(-1),
	}
	bar := func(name string) string {
		return "part: " + name + "\nkind: bar\nquantity: 1\nmaterial: S235\nbar: {flat: [60, 40], length: 300}\n"
	}
	for on := range sides {
		for _, with := range []string{"front", "back", "top", "bottom"} {
			for _, looks := range []string{"up", "down", "left", "right"} {
				m, pl := load(t, write(t, map[string]string{"post.yaml": bar("post"), "foot.yaml": bar("foot"),
					"job.yaml": "job: Foot\nunits: mm\nparts: [post.yaml, foot.yaml]\njoints:\n  - {name: foot, weld: {part: foot." + with + ", to: post." + on +
						", type: fillet, length: 100}, place: {on: " + on + ", with: " + with + ", at: [0, 0], " + map[bool]string{true: "top", false: "front"}[with == "front" || with == "back"] + ": " + looks + "}}\n"}))
				how := pl.Joints[0].How
				own := body(t, m, "post#1").Pose.Inverse().Of(body(t, m, "foot#1").Pose)
				pointer := own.Y
				if with == "top" || with == "bottom" {
					pointer = own.Z
				}
				for before, way := range map[string]assembly.Vec{", its right end to the ": own.X, map[bool]string{true: ", TOP to the ", false: ", front to the "}[pointer == own.Y]: pointer} {
					if way == pointer && (on == "front" || on == "back") { // said as seen on the face
						continue
					}
					_, to, found := strings.Cut(how, before)
					to, _, _ = strings.Cut(to, " of post")
					if !found || way.Sub(sides[to]).Len() > 1e-9 {
						t.Errorf("%s on %s, %s: %q, but %q lies to %+v", with, on, looks, how, before, way)
					}
				}
			}
		}
	}
}

// A plate on legs is welded as it lies best until all its feet are there: with four legs under
// its corners nothing tips, with the two at its left it does, when the second is on.
func TestTipsWithItsFeet(t *testing.T) {
	t.Parallel()
	for legs, want := range map[int]string{4: "", 2: "leg-2"} {
		job := "job: Table\nunits: mm\nup: front\nparts: [top.yaml, leg.yaml]\njoints:\n"
		for n, at := range []string{"from-left: 10, from-bottom: 10", "from-left: 10, from-top: 10", "from-right: 10, from-bottom: 10", "from-right: 10, from-top: 10"}[:legs] {
			k := strconv.Itoa(n + 1)
			job += "  - {name: leg-" + k + ", weld: {part: leg#" + k + ".left, to: top.outline, type: fillet}, place: {on: back, with: left, " + at + ", front: down}}\n"
		}
		m, _ := load(t, write(t, map[string]string{
			"top.yaml": "part: top\nkind: plate\nmaterial: S235\nstock: {plate: 12}\noutline: {rectangle: [600, 400]}\n",
			"leg.yaml": "part: leg\nkind: bar\nquantity: " + strconv.Itoa(legs) + "\nmaterial: S235\nbar: {square: 40, wall: 3, length: 700}\n", "job.yaml": job,
		}))
		got := ""
		for _, p := range m.Problems {
			if p.Kind == plan.WouldTip {
				got += p.Joint
			}
		}
		if got != want {
			t.Errorf("%d legs: tips at %q, want %q", legs, got, want)
		}
	}
}

// A bar that lies across a plate of 400 × 200, its middle 10 beyond the edge, is said to reach over it by half its length and that,
// where it is no longer than the plate: a longer one lies under it.
func TestBarOverAPlate(t *testing.T) {
	t.Parallel()
	for _, c := range []struct{ long, top, at, want string }{
		{"300", "right", "0, 90", ""}, {"300.12", "right", "0, 110", "overhangs bar base 160.1"}, {"398", "right", "0, 110", "overhangs bar base 209"}, {"402", "right", "0, 110", ""},
		{"300", "up", "210, 0", "overhangs bar base 160"}, {"402", "up", "210, 0", ""},
	} {
		if got := found(t, map[string]string{"base.yaml": basePart, "bar.yaml": "part: bar\nkind: bar\nmaterial: S235\nbar: {flat: [60, 20], length: " + c.long + "}\n",
			"job.yaml": "job: J\nunits: mm\nparts: [base.yaml, bar.yaml]\njoints:\n  - {name: bar, weld: {part: bar.back, to: base.outline, type: fillet, size: 5}, place: {on: front, with: back, at: [" + c.at + "], top: " + c.top + "}}\n"},
			plan.Overhangs); got != c.want {
			t.Errorf("%s long, %s at %s: %q, want %q", c.long, c.top, c.at, got, c.want)
		}
	}
}

// Of rails with their long points on two sides the last corner of a frame does not close: that they are skew is said, and
// not besides that what is welded there stands apart.
func TestSkewFrame(t *testing.T) {
	t.Parallel()
	// What lies in two of them is said all the same, of each.
	lug := func(n string) string {
		return "  - {name: lug-" + n + ", weld: {part: lug#" + n + ".outline, to: rail#" + n + ".front, type: fillet, size: 3}, place: {on: front, with: back, at: [0, 0], top: up, gap: -6}}\n"
	}
	for long, want := range map[string]string{"bottom": "", "top": "frame-skew c4 rail", "top with a lug": "frame-skew c4 railparts-overlap lug-1parts-overlap lug-2"} {
		long, lugs, _ := strings.Cut(long, " with a ")
		job := "job: J\nunits: mm\nparts: [rail.yaml, end.yaml" + map[bool]string{true: ", lug.yaml"}[lugs != ""] + "]\njoints:\n"
		for i, j := range []string{"end#1.left, to: rail#1.right", "end#1.right, to: rail#2.left", "end#2.left, to: rail#2.right", "end#2.right, to: rail#1.left"} {
			job += "  - {name: c" + strconv.Itoa(i+1) + ", weld: {part: " + j + ", type: square, process: MAG}}\n"
		}
		if lugs != "" {
			job += lug("1") + lug("2")
		}
		m, _ := load(t, write(t, map[string]string{"job.yaml": job, "lug.yaml": "part: lug\nkind: plate\nquantity: 2\nmaterial: S235\nstock: {plate: 12}\noutline: {square: 40}\n",
			"rail.yaml": "part: rail\nkind: bar\nquantity: 2\nmaterial: S235\nbar: {square: 50, wall: 4, length: 600, left: {mitre: 45, long: bottom}, right: {mitre: 45, long: " + long + "}}\n",
			"end.yaml":  "part: end\nkind: bar\nquantity: 2\nmaterial: S235\nbar: {square: 50, wall: 4, length: 400, left: {mitre: 45, long: bottom}, right: {mitre: 45, long: bottom}}\n"}))
		got := ""
		for _, p := range m.Problems {
			got += string(p.Kind) + " " + p.Joint
			if p.Kind == plan.FrameSkew {
				got += " " + p.Args[3].Text
			}
		}
		if got != want {
			t.Errorf("long at the %s: %q, want %q: %s", long, got, want, argued(m))
		}
	}
}
