package joint_test

import (
	"math"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"centrepop/layout/plan"
	"centrepop/layout/words"
	"centrepop/parts/read"
)

// framed is the plan of a job of bars with edits of its files, "file|old|new" each.
func framed(t *testing.T, edits ...string) *plan.Plan {
	t.Helper()
	corner := func(n, a, b string) string {
		return "  - {name: corner-" + n + ", weld: {part: " + a + ", to: " + b + ", type: fillet, length: 150, process: MAG}}\n"
	}
	files := map[string]string{
		"job.yaml": "job: Frame\nunits: mm\ntolerance: m\nparts: [rail.yaml, end.yaml]\njoints:\n" +
			corner("1", "end#1.left", "rail#1.right") + corner("2", "end#1.right", "rail#2.left") + corner("3", "end#2.left", "rail#2.right") + corner("4", "end#2.right", "rail#1.left"),
		"rail.yaml": "part: rail\nkind: bar\nquantity: 2\nmaterial: S235\nbar: {square: 50, wall: 4, length: 600, left: {mitre: 45, long: bottom}, right: {mitre: 45, long: bottom}}\n",
		"end.yaml":  "part: end\nkind: bar\nquantity: 2\nmaterial: S235\nbar: {square: 50, wall: 4, length: 450, left: {mitre: 45, long: bottom}, right: {mitre: 45, long: bottom}}\n",
	}
	files["plate.yaml"] = "part: plate\nkind: plate\nmaterial: S235\nstock: {plate: 10, cut: saw}\noutline: {rectangle: [200, 200]}\n"
	for _, e := range edits {
		f := strings.Split(e, "|")
		if !strings.Contains(files[f[0]], f[1]) {
			t.Fatalf("%s has no %q", f[0], f[1])
		}
		files[f[0]] = strings.ReplaceAll(files[f[0]], f[1], f[2])
	}
	dir := t.TempDir()
	for name, text := range files {
		if err := os.WriteFile(filepath.Join(dir, name), []byte(text), 0o600); err != nil {
			t.Fatal(err)
		}
	}
	job, err := read.Load(filepath.Join(dir, "job.yaml"))
	if err != nil {
		t.Fatal(err)
	}
	return planned(t, job)
}

// Angles of 60 × 60 × 6 that lie fronts up stand on the edges of their other legs and tip: 60 − 6 of packing goes under
// each; tubes stand by themselves.
func TestAnglesArePacked(t *testing.T) {
	t.Parallel()
	const packing = "fronts up, packing 54 high under the front leg of each angle"
	says(t, jointNamed(t, framed(t, "rail.yaml|square: 50, wall: 4|angle: [60, 60], wall: 6", "end.yaml|square: 50, wall: 4|angle: [60, 60], wall: 6"), "corner-1"), []string{packing}, nil)
	says(t, jointNamed(t, framed(t), "corner-1"), []string{"fronts up; shim"}, []string{"packing"})
}

// Three corners are only tacked; with the fourth the frame is checked and welded. Its
// diagonals are those of 600 × 450: 750.
func TestFrame(t *testing.T) {
	t.Parallel()
	p := framed(t)
	for _, name := range []string{"corner-1", "corner-2", "corner-3"} {
		j := jointNamed(t, p, name)
		if len(j.Steps) != 2 || len(j.Checks) != 0 || j.Frame != "corner-4" || len(j.Problems) > 0 {
			t.Errorf("%s: %d steps, %d checks, frame %q, %v", name, len(j.Steps), len(j.Checks), j.Frame, j.Problems)
		}
		says(t, j, []string{"No weld yet", "cut to cut"}, []string{"diagonals"})
	}
	j := jointNamed(t, p, "corner-4")
	says(t, j, []string{
		"Measure both diagonals over the outer corners, 750 by the drawing", "Diagonals alike, and the outside 600 × 450, within 1.",
		"opposite corners in turn: corner 4, corner 2, corner 3, corner 1.", "on a flat plate",
	}, []string{"Grind", "off each cut"})
	figures := map[string]string{}
	for _, f := range j.Figures {
		figures[f.Label] = f.Value
	}
	if figures["diagonals"] != "750" || figures["diagonals equal within"] != "1" {
		t.Errorf("%v", figures)
	}
	if c := j.Checks[0]; c.MaxMm != 1 || c.Limits != "0 to 1" || !slices.Equal(c.Boxes, []string{"1–3", "2–4"}) || len(j.Checks) != 2 {
		t.Errorf("%+v", j.Checks)
	}
	if j.How != "right end of end 2 to the left end of rail 1, cut to cut, long points outside, fronts level" {
		t.Error(j.How)
	}
}

// A thousandth of a long diagonal, and inches in an inch job: 2500 × 1875 has 3125.
func TestFrameTolerance(t *testing.T) {
	t.Parallel()
	says(t, jointNamed(t, framed(t, "rail.yaml|length: 600|length: 2500", "end.yaml|length: 450|length: 1875"), "corner-4"), []string{"within 3.13."}, nil)
	inch := framed(t, "job.yaml|units: mm|units: in", "job.yaml|length: 150|length: 6", "rail.yaml|square: 50, wall: 4, length: 600|square: 2, wall: 1/8, length: 24", "end.yaml|square: 50, wall: 4, length: 450|square: 2, wall: 1/8, length: 18")
	says(t, jointNamed(t, inch, "corner-4"), []string{"corners, 30 in by the drawing", "within 0.039 in."}, []string{"mm"})
	odd := framed(t, "job.yaml|units: mm|units: in", "job.yaml|length: 150|length: 6", "rail.yaml|square: 50, wall: 4, length: 600|square: 2, wall: 1/8, length: 24", "end.yaml|square: 50, wall: 4, length: 450|square: 2, wall: 1/8, length: 18.25")
	says(t, jointNamed(t, odd, "corner-4"), []string{"the outside 24 in × 18.25 in"}, nil) // 463.55 mm
}

// The gaps do not make a frame larger: each bar is sawn shorter by half of the gap, which
// along a mitre of 45° is √2 of it, and its sheet has that length and the holes from there;
// the nest too. Where a plate lies on it the seams are ground level, and on no other side.
func TestFrameGap(t *testing.T) {
	t.Parallel()
	square := []string{"job.yaml|parts: [rail.yaml, end.yaml]|parts: [rail.yaml, end.yaml, plate.yaml]",
		"job.yaml|joints:\n|joints:\n  - {name: lid, weld: {part: plate.outline, to: rail#1.front, type: fillet, length: 100, process: MAG}, place: {on: front, with: back, at: [-200, 0], top: up}}\n",
		"job.yaml|type: fillet, length: 150|type: square, length: 150",
		"rail.yaml|long: bottom}}\n|long: bottom}}\nholes: [{name: a, along: {from: left, first: 90, pitch: 30, count: 2}, size: 9}, {name: b, face: back, along: {from: right, first: 80, pitch: 30, count: 2}, size: 9}]\n"}
	p := framed(t, square...)
	j := jointNamed(t, p, "corner-4")
	says(t, j, []string{"The bars are sawn for the gap: each cut 2 short of the middle of it.", "Grind the seams level on the front where plate lies.", "outside 600 × 450"}, []string{"level on the back", "off each cut"})
	square[1] = strings.Replace(square[1], "at: [-200, 0]", "at: [-149, 0]", 1) // its edge 51 from the end, past the cut of 50
	says(t, jointNamed(t, framed(t, square...), "corner-4"), nil, []string{"Grind the seams level"})
	// Bolted over two holes in whose middle it has its own, 105 from the end of the rail: corners 54.9 off that lie 50.1 from
	// the end, past the cut of 50, corners 55.2 off do not.
	lid := "job.yaml|joints:\n|joints:\n  - {name: lid, bolt: {through: plate.h, into: rail#1.a, bolt: M8 8.8, nut: yes}, face: back-on-front}\n"
	for size, grinds := range map[string]bool{"[76, 79.3]": false, "[76, 80]": true} {
		want, not := []string{"Grind the seams level on the front where plate lies."}, []string(nil)
		if !grinds {
			want, not = nil, []string{"Grind the seams level"}
		}
		bolted := append(slices.Clone(square), "plate.yaml|rectangle: [200, 200]}|rectangle: "+size+"}\nholes: [{name: h, at: [[-15, 0], [15, 0]], size: 9}]")
		bolted[1] = lid
		says(t, jointNamed(t, framed(t, bolted...), "corner-4"), want, not)
	}
	if j.Weld.GapMm != 4 {
		t.Errorf("gap %v", j.Weld.GapMm)
	}
	rail := p.Parts[0].Bar
	if rail.Length != "594.4" || rail.Bottom != "594.4" || rail.Top != "494.4" || rail.Short != "Sawn 2.8 short at each end, for the welds: 600 with them." || rail.Holes[0].From != "87.2 from L" || rail.Holes[2].From != "77.2 from R" {
		t.Errorf("%+v", rail)
	}
	if m := rail.Measures[0]; m.Wanted != "87.2, 117.2; Ø9" || rail.Limits != "593.6 – 595.2" {
		t.Errorf("%+v, %s", m, rail.Limits)
	}
	if got := p.Bars[0].Bars[0].Cuts[0].LengthMm; math.Abs(got-594.4) > 1e-6 {
		t.Errorf("nested %v long", got)
	}
	// A bar of which one copy is in no frame is sawn as drawn, and its partner for the gap.
	alone := framed(t, append(square, "rail.yaml|quantity: 2|quantity: 3")...)
	says(t, jointNamed(t, alone, "corner-4"), []string{"rail is sawn without the gap: take 2 off its cut."}, []string{"end is sawn without"})
	if got := alone.Parts[0].Bar; got.Length != "600" || got.Short != "" || alone.Parts[1].Bar.Length != "444.4" {
		t.Errorf("%s, %s", got.Length, alone.Parts[1].Bar.Length)
	}
	inch := framed(t, "job.yaml|units: mm|units: in", "job.yaml|type: fillet, length: 150|type: square, length: 6", "rail.yaml|square: 50, wall: 4, length: 600|square: 2, wall: 1/8, length: 24", "end.yaml|square: 50, wall: 4, length: 450|square: 2, wall: 1/8, length: 18")
	if got := inch.Parts[0].Bar; got.Length != "23.824 in" || !strings.Contains(got.Short, "0.088 in short") { // 1/16·√2
		t.Errorf("%s, %s", got.Length, got.Short)
	}
}

// Thick walls are ground; a chain that does not close is welded corner by corner.
func TestFrameEdges(t *testing.T) {
	t.Parallel()
	thick := jointNamed(t, framed(t, "job.yaml|type: fillet|type: v", "rail.yaml|wall: 4|wall: 6", "end.yaml|wall: 4|wall: 6"), "corner-1")
	says(t, thick, []string{"Grind both edges of each cut to 30° with a root face of"}, nil)
	for _, p := range thick.Problems {
		t.Errorf("%s", p.What)
	}
	const chain = "job.yaml|part: end#2.right, to: rail#1.left|part: end#2.front, to: rail#1.left"
	open := framed(t, chain)
	if j := jointNamed(t, open, "corner-3"); j.Frame != "" || len(j.Checks) != 1 {
		t.Errorf("%+v", j)
	}
	// A hollow section is welded round, 4 × 52 of its middle line at 45° on two sides; the mitre of a flat, 50·√2, is one seam, also from both sides.
	const last = "job.yaml|to: rail#1.left, type: fillet|to: rail#1.left, type: fillet, length: 50"
	for _, c := range []struct{ weld, bar, tack, weldText string }{
		{"type: fillet", "square: 50, wall: 4", "Tack the middle of two opposite sides of the section, then of the other two, each tack 8 long.", "Each side of the section from its middle outward"},
		{"type: v", "flat: [50, 6]", "Tack 2 × 12 long: both ends.", "From the middle outward."},
		{"type: v, sides: 2", "flat: [50, 6]", "Tack each seam 2 × 12 long: both ends; one tack on each seam in turn", "From the middle outward, turn and turn about on the two sides."},
		{"type: v", "angle: [50, 50], wall: 6", "Tack 2 × 18 long: both ends.", "From the middle outward."},
	} {
		edits := []string{chain, "job.yaml|, length: 150|", last, "job.yaml|type: fillet|" + c.weld, "rail.yaml|square: 50, wall: 4|" + c.bar, "end.yaml|square: 50, wall: 4|" + c.bar}
		says(t, jointNamed(t, framed(t, edits...), "corner-3"), []string{c.tack, c.weldText}, nil)
	}
}

// A V draws in 1.5 to 3 across (TWI), of the gap of 2 at 45°: each end is sawn 0.125·√2, 0.2 to
// a tape, longer, and the frame is tacked 2.25·√2 = 3.2 larger, its diagonals hypot(603.2, 453.2).
// Afterwards each side may be off by 0.75·√2 more than the 1 of the tacked frame.
func TestFrameDrawsIn(t *testing.T) {
	t.Parallel()
	v := []string{"job.yaml|type: fillet|type: v", "rail.yaml|wall: 4|wall: 6", "end.yaml|wall: 4|wall: 6"}
	p := framed(t, v...)
	j := jointNamed(t, p, "corner-4")
	says(t, j, []string{"what the welds draw in: until then the frame is larger", "754.5 until the welds draw it in", "the outside 603.2 × 453.2, within 1.", "sides set larger by: 3.2 × 3.2"}, []string{"short of the middle"})
	if rail := p.Parts[0].Bar; rail.Length != "600.4" || rail.Short != "Sawn 0.2 long at each end, for the welds: 600 with them." {
		t.Errorf("%+v", rail)
	}
	if c := j.Checks[len(j.Checks)-1]; c.What != "outside after the weld, cold" || c.Wanted != "600 × 450" || c.Limits != "each within 2.06" {
		t.Errorf("%+v", c)
	}
	says(t, jointNamed(t, framed(t, append(v, "rail.yaml|quantity: 2|quantity: 3")...), "corner-4"), []string{"rail is sawn without what the weld draws in: its end comes out 0.13 short."}, nil)
	inch := framed(t, append(v, "job.yaml|units: mm|units: in", "job.yaml|type: v, length: 150|type: v, length: 6", "rail.yaml|square: 50, wall: 6, length: 600|square: 2, wall: 1/4, length: 24", "end.yaml|square: 50, wall: 6, length: 450|square: 2, wall: 1/4, length: 18")...)
	says(t, jointNamed(t, inch, "corner-4"), []string{"the outside 24.125 in × 18.125 in, within 0.039 in."}, []string{"mm"})
	says(t, jointNamed(t, crossed(t, "job.yaml|type: fillet|type: v", "rail.yaml|wall: 4|wall: 6", "end.yaml|wall: 4|wall: 6"), "corner-4"), []string{"the opening 360 × 304.5, within 1."}, nil)
	// What is bolted to two of the bars measures by the holes: 400 apart and 9 through, half of
	// the play of 8 in 9 and 9 for the bars.
	holes := []string{"job.yaml|parts: [rail.yaml, end.yaml]|parts: [rail.yaml, end.yaml, plate.yaml]", "rail.yaml|square: 50, wall: 6|angle: [50, 50], wall: 6", "end.yaml|square: 50, wall: 6|angle: [50, 50], wall: 6",
		"rail.yaml|long: bottom}}\n|long: bottom}}\nholes: [{name: a, along: {from: left, first: 200, pitch: 200, count: 2}, size: 9}]\n",
		"plate.yaml|[200, 200]}\n|[600, 450]}\nholes:\n  - {name: n, face: front, at: [[-100, -200], [100, -200]], size: 9}\n  - {name: f, face: front, at: [[-100, 200], [100, 200]], size: 9}\n",
		"job.yaml|joints:\n|joints:\n  - {name: near, bolt: {through: plate.n, into: rail#1.a, bolt: M8 8.8, nut: yes}, face: back-on-front}\n  - {name: far, bolt: {through: plate.f, into: rail#2.a, bolt: M8 8.8, nut: yes}, face: back-on-front, after: near}\n"}
	j = jointNamed(t, framed(t, append(v, holes...)...), "corner-4")
	if c := j.Checks[len(j.Checks)-1]; c.What != "holes, rail 1 to rail 2, cold" || c.Wanted != "409 over pins Ø9" || c.Limits != "408.0 – 410.0" || len(j.Checks) != 3 {
		t.Errorf("%+v", j.Checks)
	}
}

// The mitre of an angle of 50 × 50 × 6 is one seam along the middle of its legs, 47·√2 + 47 =
// 113; its groove opens to the outside of the angle, whose second leg lies on the side away
// from or towards the long points. A channel has 44·√2 + 2·47, a flat 50·√2 across its front;
// a tube of middle radii of 9 has 26·√2·2 + 2·26 and an ellipse of 9 by 12.73, 68.8, all round.
func TestFrameSeam(t *testing.T) {
	t.Parallel()
	for _, c := range []struct {
		bar, cut, sides, groove string
		mm                      float64
		checked                 string
		says                    string
	}{
		{"angle: [50, 50], wall: 6", "top", "1", " The groove opens to the front and the inner edge.", 113, "each corner, front and the inner edge", "First the seams of the front all round; the inner edges last."},
		{"angle: [50, 50], wall: 6", "bottom", "1", " The groove opens to the front and the outer edge.", 113, "each corner, front and the outer edge", "First the seams of the front all round; the outer edges last."},
		{"channel: [50, 50], wall: 6, flange: 6, open: front", "top", "1", " The groove opens to the back and both edges.", 156, "each corner, back and both edges", "First the seams of the back all round; the inner, then the outer edges last."},
		{"flat: [50, 6]", "top", "1", " The groove opens to the front.", 71, "each corner, front", "The seams of the front all round."},
		{"flat: [50, 6]", "top", "2", "", 71, "each corner, both sides", "First the seams of one side all round, then turn it over."},
		{"square: 50, wall: 6", "top", "1", " The groove opens to the outside, all round.", 194, "each corner, outside, all round", "First the seams of the front all round, then turn it over; the inner, then the outer edges last."},
	} {
		edits := []string{"job.yaml|type: fillet, length: 150|type: v, sides: " + c.sides}
		for _, f := range []string{"rail", "end"} {
			edits = append(edits, f+".yaml|square: 50, wall: 4|"+c.bar, f+".yaml|long: bottom|long: "+c.cut)
		}
		p := framed(t, edits...)
		j := jointNamed(t, p, "corner-4")
		if filled := j.Checks[1].Wanted; j.Weld.LengthMm != c.mm || filled != c.checked {
			t.Errorf("%s: %v long, %q", c.bar, j.Weld.LengthMm, filled)
		}
		says(t, j, []string{c.says}, nil)
		if c.groove != "" {
			says(t, j, []string{"root face of 1.5." + c.groove}, nil)
		}
	}
}

// crossed are two ends of 300 that stand square between two rails of 460, flush with their
// ends; the last corner closes by itself.
func crossed(t *testing.T, edits ...string) *plan.Plan {
	t.Helper()
	all := []string{"rail.yaml|length: 600, left: {mitre: 45, long: bottom}, right: {mitre: 45, long: bottom}|length: 460", "end.yaml|length: 450, left: {mitre: 45, long: bottom}, right: {mitre: 45, long: bottom}|length: 300"}
	for _, c := range [][3]string{
		{"end#1.left, to: rail#1.right", "end#1.left, to: rail#1.bottom", "{on: bottom, with: left, at: [-205, 0], front: up}"},
		{"end#1.right, to: rail#2.left", "end#2.left, to: rail#1.bottom", "{on: bottom, with: left, from-right: 0, from-top: 0, front: up}"},
		{"end#2.left, to: rail#2.right", "end#1.right, to: rail#2.top", "{on: top, with: right, from-left: 0, from-bottom: 0, front: down}"},
		{"end#2.right, to: rail#1.left", "end#2.right, to: rail#2.top", ""},
	} {
		const weld = ", type: fillet, length: 150, process: MAG}"
		place := ""
		if c[2] != "" {
			place = ", place: " + c[2]
		}
		all = append(all, "job.yaml|"+c[0]+weld+"|"+c[1]+weld+place)
	}
	return framed(t, append(all, edits...)...)
}

// Two bars that stand between two others leave an opening of 460 − 2 × 50 by 300, across it
// √(360² + 300²); all are tacked before one is welded.
func TestSquareFrame(t *testing.T) {
	t.Parallel()
	p := crossed(t)
	for _, name := range []string{"corner-1", "corner-2", "corner-3"} {
		if j := jointNamed(t, p, name); len(j.Steps) != 2 || j.Frame != "corner-4" {
			t.Errorf("%s: %d steps, frame %q", name, len(j.Steps), j.Frame)
		}
	}
	says(t, jointNamed(t, p, "corner-4"), []string{"across the opening, from corner to corner, 468.6 by the drawing", "Diagonals alike, and the opening 360 × 300, within 1.", "opposite corners in turn: corner 2, corner 3, corner 4, corner 1.", "diagonals: 468.6"},
		[]string{"outer", "off each cut"})
	inch := crossed(t, "job.yaml|units: mm|units: in", "job.yaml|length: 150|length: 6", "job.yaml|-205|-8", "rail.yaml|square: 50, wall: 4, length: 460|square: 2, wall: 1/8, length: 18", "end.yaml|square: 50, wall: 4, length: 300|square: 2, wall: 1/8, length: 12")
	says(t, jointNamed(t, inch, "corner-4"), []string{"corner to corner, 18.439 in by", "14 in × 12 in, within 0.039 in"}, []string{"mm"}) // √(14² + 12²)
	gap := jointNamed(t, crossed(t, "job.yaml|type: fillet|type: square"), "corner-4")
	says(t, gap, []string{"The bars are sawn for the gap: each end that stands on another " + words.Trim(gap.Weld.GapMm, 3) + " short."}, nil)
	if b := crossed(t, "job.yaml|type: fillet|type: square").Parts[1].Bar; b.Length != words.Trim(300-2*gap.Weld.GapMm, 2) {
		t.Errorf("%s with gaps of %v", b.Length, gap.Weld.GapMm)
	}
	// Rails that a plate holds already are not laid down; one that lies on an end alone changes nothing.
	for to, built := range map[string]bool{"rail#2": true, "": false} {
		tie := "joints:\n  - {name: tie, weld: {part: plate.outline, to: rail#1.back, type: fillet, length: 40}, place: {on: back, with: front, at: [0, 175], top: up}, before: corner-1}\n"
		if to != "" {
			tie += "  - {name: tie-2, weld: {part: plate.outline, to: rail#2.back, type: fillet, length: 40}, before: corner-1}\n"
		}
		p := crossed(t, "job.yaml|end.yaml]|end.yaml, plate.yaml]", "job.yaml|joints:\n|"+tie, "plate.yaml|[200, 200]|[200, 400]")
		laid, clamped := []string{"Lay the bars on a flat plate", "one side all round, then turn it over", "before it leaves the plate"}, []string{"built in already stay where they stand: clamp", "one side all round, then those of the other side", "before the clamps come off"}
		if built {
			laid, clamped = clamped, laid
		}
		says(t, jointNamed(t, p, "corner-4"), laid, clamped)
	}
	// Bars of another depth lie level where all four places say so by the edge of the front.
	const last, placed = "end#2.right, to: rail#2.top, type: fillet, length: 150, process: MAG}", ", place: {on: top, with: right, from-right: 0, from-bottom: 0, front: down}"
	for edge, frame := range map[string]string{"from-bottom": "corner-4", "from-top": ""} {
		deep := crossed(t, "rail.yaml|square: 50|rectangle: [50, 60]", "job.yaml|"+last+"|"+last+strings.Replace(placed, "from-bottom", edge, 1))
		if j := jointNamed(t, deep, "corner-1"); j.Frame != frame {
			t.Errorf("deeper rails, %s: frame %q", edge, j.Frame)
		}
	}
	// What is no rectangle of level bars has no diagonals.
	for what, edit := range map[string]string{
		"turned over":      "job.yaml|front: down|front: up",
		"not level":        "job.yaml|from-bottom: 0|from-bottom: 5",
		"clear of it":      "job.yaml|from-bottom: 0|gap: 2, from-bottom: 0",
		"at another place": "job.yaml|with: left, at: [-205, 0], front: up|with: left, front: up, at: [205, 0]",
		"another depth":    "rail.yaml|square: 50|rectangle: [50, 60]",
		"a mitred rail":    "rail.yaml|length: 460|length: 460, left: {mitre: 10, long: top}",
		"a cope":           "end.yaml|length: 300|length: 300, left: {onto: {diameter: 60}}",
		"places disagree":  "job.yaml|part: end#2.right, to: rail#2.top, type: fillet, length: 150, process: MAG}|part: end#2.right, to: rail#2.top, type: fillet, length: 150, process: MAG}, place: {on: top, with: right, from-right: 10, from-bottom: 0, front: down}",
	} {
		if j := jointNamed(t, crossed(t, edit), "corner-1"); j.Frame != "" {
			t.Errorf("%s: frame %q", what, j.Frame)
		}
	}
}

// A corner of bars of 50 and 40 at 45° each: the cuts are 70.7 and 56.6 long. By the widths
// the mitres are atan(40/50) = 38.66° on the wider bar and 51.34° on the other.
func TestCornerUnlike(t *testing.T) {
	t.Parallel()
	p := framed(t, "end.yaml|square: 50, wall: 4|square: 40, wall: 4")
	found := false
	for _, q := range jointNamed(t, p, "corner-1").Problems {
		if q.Kind == plan.CornerSections {
			found = q.Args[5].Value == 40 && q.Args[6].Value == 50
			if math.Abs(q.Args[2].Value-14.14) > 0.005 || math.Abs(q.Args[3].Value-51.3402) > 0.001 || math.Abs(q.Args[4].Value-38.6598) > 0.001 {
				t.Errorf("%+v", q.Args)
			}
		}
	}
	if !found {
		t.Error("unlike cuts are not found")
	}
	right := framed(t, "end.yaml|square: 50, wall: 4|square: 40, wall: 4", "end.yaml|mitre: 45|mitre: 51.340191746", "rail.yaml|mitre: 45|mitre: 38.659808254")
	if q := jointNamed(t, right, "corner-1").Problems; len(q) > 0 {
		t.Errorf("%+v", q)
	}
}

// Bars are sawn from bars of 6 m, or what fills less than half of one from a length to the next 10 mm, turned over so that
// mitres share a cut: two of 600 and two of 450, each but the first of a pair on one cut with the one before it.
func TestBarStock(t *testing.T) {
	t.Parallel()
	p := framed(t)
	if len(p.Bars) != 1 || p.Bars[0].Section != "square tube 50 × 50 × 4" || p.Bars[0].BarMm != 1980 || len(p.Bars[0].Bars) != 1 || len(p.Cuts) != 0 {
		t.Fatalf("%+v", p.Bars)
	}
	cuts := p.Bars[0].Bars[0].Cuts
	for i, want := range []plan.StockCut{
		{Part: "rail", Name: "rail", FromMm: 10, LengthMm: 600, StartDeg: -45, EndDeg: -45},
		{Part: "rail", Name: "rail", FromMm: 10 + 550 + 2*math.Sqrt2, LengthMm: 600, StartDeg: 45, EndDeg: 45, Turned: true, Shared: true},
		{Part: "end", Name: "end", FromMm: 10 + 2*(550+2*math.Sqrt2), LengthMm: 450, StartDeg: -45, EndDeg: -45, Shared: true},
		{Part: "end", Name: "end", FromMm: 10 + 2*(550+2*math.Sqrt2) + 400 + 2*math.Sqrt2, LengthMm: 450, StartDeg: 45, EndDeg: 45, Turned: true, Shared: true},
	} {
		got := cuts[i]
		if math.Abs(got.FromMm-want.FromMm) > 1e-6 || math.Abs(got.LengthMm-want.LengthMm) > 1e-6 {
			t.Errorf("piece %d: %+v, want %+v", i, got, want)
		}
		if got.FromMm, got.LengthMm = want.FromMm, want.LengthMm; got != want {
			t.Errorf("piece %d: %+v, want %+v", i, got, want)
		}
	}
	long := framed(t, "rail.yaml|length: 600|length: 6100")
	if r := long.Bars[0]; len(r.Bars) != 0 || !strings.Contains(r.Source, "order to length") {
		t.Errorf("%+v", r)
	}
}

// TestCornerEnds: each corner is judged by the ends that meet there. With the right end
// of the short bars at 30° those corners' cuts are 57.74 and 70.71 long, and the left
// corners, 45° on 45°, fit as before. The cure is the mitre of the other ends.
func TestCornerEnds(t *testing.T) {
	t.Parallel()
	p := framed(t, "end.yaml|right: {mitre: 45|right: {mitre: 30")
	for name, missMm := range map[string]float64{"corner-1": 0, "corner-2": 12.98, "corner-3": 0, "corner-4": 12.98} {
		got := 0.0
		for _, q := range jointNamed(t, p, name).Problems {
			if q.Kind == plan.CornerUnlike {
				if got = q.Args[2].Value; math.Abs(q.Args[3].Value-45) > 1e-9 || math.Abs(q.Args[4].Value-45) > 1e-9 {
					t.Errorf("%s: cure %v", name, q.Args)
				}
			}
		}
		if math.Abs(got-missMm) > 0.006 {
			t.Errorf("%s: cuts differ by %v, want %v", name, got, missMm)
		}
	}
}

// TestDiagonals: √(600² + 455²) = 753.01, to be read off a tape to a tenth.
func TestDiagonals(t *testing.T) {
	t.Parallel()
	p := framed(t, "end.yaml|length: 450|length: 455")
	got := ""
	for _, f := range jointNamed(t, p, "corner-4").Figures {
		if f.Label == "diagonals" {
			got = f.Value
		}
	}
	if got != "753" {
		t.Errorf("diagonals %q", got)
	}
}
