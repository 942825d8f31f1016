package machine_test

import (
	"strings"
	"testing"

	"centrepop/layout/plan"
)

// A gasket of 200 between a cover and a flange whose opening is 100 wide ends at that opening, or 1 mm over it at the
// most. A neck of 80 inside in that opening bears it where it ends up to 10 mm under the flange; and so does the step of
// a cover's pocket, but no cover with a window.
func TestGasketReachesIn(t *testing.T) {
	t.Parallel()
	const job = "job: j\nunits: mm\ntolerance: m\nup: front\nparts: [cover.yaml, ring.yaml, flange.yaml, neck.yaml]\njoints:\n" +
		"  - name: neck\n    weld: {part: neck.outside, to: flange.bore, type: fillet, size: 3}\n    level: front-with-front\n    below: 3\n" +
		"  - name: door\n    bolt: {through: cover.bolts, stack: [ring.bolts], into: flange.bolts, bolt: M10 8.8, nut: yes}\n    face: back-on-front\n"
	flat := func(name, thick, bore, more string) string {
		return "part: " + name + "\nkind: plate\ntop: punch\nmaterial: S235\nstock: {plate: " + thick + ", cut: laser}\noutline: {circle: 200}\nholes:\n  - {name: bolts, circle: {pcd: 160, count: 4}, size: 11}\n" + bore + more
	}
	bore := func(mm string) string { return "bore: {diameter: " + mm + "}\n" }
	const neck = "part: neck\nkind: tube\ntop: punch\nmaterial: S235\nstock: {tube: 100, wall: 10, length: 60, cut: saw}\ntube: {outside: 100, wall: 10, length: 50}\n"
	for _, c := range []struct{ gasket, cover, below, title, want string }{
		{"100", "", "3", "Gasket", ""},
		{"80", "", "3", "Gasket", ""},
		{"78", "", "3", "Gasket", ""},
		{"77.8", "", "3", "Gasket", "gasket-in Gasket 1.1 80"},
		{"60", "", "3", "Gasket", "gasket-in Gasket 10 80"},
		{"60", "", "3", "Spacer", ""},
		{"", "", "3", "Gasket", ""}, // a blind one
		{"100", "", "11", "Gasket", ""},
		{"90", "", "9.9", "Gasket", ""},
		{"90", "", "10.1", "Gasket", "gasket-in Gasket 5.3 101"}, // to the flange, 100.5,
		{"100", "110", "3", "Gasket", "gasket-in Gasket 5 110"},
		{"100", "140", "3", "Gasket", "gasket-in Gasket 20 140"},
		{"110", "110", "3", "Gasket", ""},
		{"100", "140", "3", "Gasket strip", "gasket-in Gasket strip 15 130"}, // 130 high, it lies in the window above and below
		{"100", "", "30", "Gasket with a notch", ""},                         // over two of the rays, 15° apart, that it is looked at
		{"100", "", "30", "Gasket with a wide notch", "gasket-in Gasket with a wide notch 6.4 113"},
	} {
		cover, ring := "", ""
		if c.cover != "" {
			cover = bore(c.cover)
		}
		if c.gasket != "" {
			ring = bore(c.gasket)
		}
		files := map[string]string{"job.yaml": strings.Replace(job, "below: 3", "below: "+c.below, 1), "neck.yaml": neck, "cover.yaml": flat("cover", "10", cover, ""), "ring.yaml": flat("ring", "3", ring, "title: "+c.title+"\n"), "flange.yaml": flat("flange", "20", bore("100.5"), "")}
		if strings.HasSuffix(c.title, "notch") { // a hole of 22 about 51 from the axis, at 7.5°
			at := "[[6.657, 50.564]], size: 22"
			if strings.Contains(c.title, "wide") { // over three
				at = "[[0, 51]], size: 30"
			}
			files["flange.yaml"] = strings.Replace(files["flange.yaml"], "bore:", "  - {name: notch, at: "+at+"}\nbore:", 1)
		}
		if strings.HasSuffix(c.title, "strip") {
			for name, text := range files {
				files[name] = strings.NewReplacer("circle: {pcd: 160, count: 4}", "at: [[-80, 0], [80, 0]]").Replace(text)
			}
			files["ring.yaml"] = strings.Replace(files["ring.yaml"], "circle: 200", "rectangle: [200, 130]", 1)
		}
		if got := found(t, files, plan.GasketIn); got != c.want {
			t.Errorf("%s in the gasket, %q in the cover, the neck %s below, %s: %q, want %q", c.gasket, c.cover, c.below, c.title, got, c.want)
		}
	}
}
