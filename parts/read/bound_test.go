package read

import (
	"errors"
	"fmt"
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
	"testing"

	"github.com/goccy/go-yaml/lexer"

	"centrepop/parts"
	"centrepop/parts/golden"
)

var lineNumber = regexp.MustCompile(`line \d+`)

// faultsOf is all that is found wrong with a part, without places.
func faultsOf(text string) (out []string) {
	_, err := ParsePart("p.yaml", []byte(text), parts.Millimetres)
	var all parts.Errors
	errors.As(err, &all)
	for _, e := range all {
		out = append(out, lineNumber.ReplaceAllString(e.What, "line"))
	}
	return out
}

// TestOnTheBound: what lies just on a bound passes, and what goes beyond is refused with one fault
// and no other that follows from it. A cone of 1000 to 998 comes to its apex 500 times its height on.
func TestOnTheBound(t *testing.T) {
	t.Parallel()
	const (
		plate = "part: p\nkind: plate\nmaterial: S235\nstock: {plate: 8 mm}\n"
		cone  = "part: p\nkind: cone\ncone: {large: 1000, small: 998, height: %s, thickness: 2}\n"
		lean  = "part: p\nkind: cone\ncone: {large: 10000, small: 9000, height: 1000, thickness: 2, offset: %s}\n"
		shaft = "part: p\nkind: shaft\nstock: {round: 60 mm, length: 105 mm}\nprofile:\n  outside: [{name: a, diameter: 50, %s}, {name: b, diameter: 40, %s}]\n"
		key   = "part: p\nkind: shaft\nstock: {round: 60 mm, length: 105 mm}\nprofile:\n  outside: [{name: a, diameter: 50, length: 100}]\nkeyways: [{name: k, in: a, key: 14x9, depth: 6, clock: 0, axial: 50, length: 30, cutter: %s}]\n"
		tube  = "part: p\nkind: tube\nstock: {tube: 100 mm, wall: 5 mm, length: 210 mm}\ntube: {outside: %s, wall: %s, length: 200}\n"
		bore  = plate + "outline: {circle: 165}\nbore: {diameter: 90, fit: {limits: [%s]}}\n"
		arc   = plate + "outline: {circle: 165}\nholes: [{name: h, arc: {pcd: 120, count: 3, first: %s}, size: 5 mm}]\n"
		rim   = plate + "outline: {rectangle: [100, 60], corner: %s}\n"
		disc  = plate + "outline: {circle: 165}\n"
		hole  = disc + "bore: {diameter: 90}\nholes: [{name: h, at: [[%s, 0]], size: 5 mm}]\n"
		deep  = disc + "holes: [{name: h, at: [[30, 0]], size: 5 mm, %s}]\n"
		slot  = disc + "slots: [{name: s, at: [[30, 0]], width: 5, length: 9, depth: %s}]\n"
		round = "part: p\nkind: shaft\nprofile:\n  outside: [{name: a, diameter: 50, length: 50}, {name: b, diameter: 40, length: 50}]\n"
		sunk  = round + "keyways: [{name: k, in: a, key: 14x9, depth: %s, clock: 0, axial: %s, length: %s}]\n"
		bored = "part: p\nkind: turned\nprofile:\n  outside: [{name: a, diameter: 50, length: 50}, {name: b, diameter: 40, length: 50}]\n  inside: [{name: c, diameter: %s, length: %s}]\n"
		ring  = "part: p\nkind: turned\nprofile:\n  outside: [{name: a, diameter: 50, length: 20}]\n  inside: [{name: c, diameter: 30, length: 20}]\nclamp: {in: c, slot: 2, at: 20, screw: M5 8.8, clock: 0, axial: %s, from: front}\n"
		sides = round + "flats: [{name: f, in: b, sides: %s, across: %s, clock: 0, from: back, length: %s}]\n"
		cut   = round + "grooves: [{name: g, in: a, for: relief, axial: %s, width: %s, depth: %s, from: front}]\n"
		port  = round + "radial: [{name: r, clock: 0, axial: %s, from: front, %s}]\n"
		edge  = round + "chamfers: [{edge: %s}]\n"
		fold  = "part: p\nkind: folded\nstock: {sheet: 2 mm}\noutline: {rectangle: [200, 120]}\nbends:\n  radius: 2\n  flanges: [{side: top, height: 40, left: 10, right: 10}, {side: top-2, height: 20, left: %s, right: %s}]\nholes: [{name: h, on: top, at: [[%s, %s]], size: 4 mm}]\n"
		bar   = "part: p\nkind: bar\nbar: {rectangle: [60, 40], wall: 4, length: 500, left: {mitre: 45, long: top}}\nholes: [{name: h, %s, at: [[%s, %s]], size: 5 mm}]\n"
		mitre = "part: p\nkind: bar\nbar: {square: 50, wall: 4, length: %s, left: {mitre: 45, long: top}, right: {mitre: 45, long: top}}\n"
		frame = "part: p\nkind: bar\nbar: {%s, wall: %s, length: 500}\n"
	)
	for _, c := range []struct{ text, on, beyond, says string }{
		{cone, "199", "201", "its pattern has a radius of 101 m"},
		{lean, "9440", "9460", "radius of 100 m"}, // √(1000² + 9940²) · 10 is 99.9 m, √(1000² + 9960²) · 10 is 100.1
		{key, "12.1", "12", "a cutter of 12 does not reach 6"},
		{key, "17.9", "11", "a cutter of 11 does not reach 6"},
		{rim, "30", "30.1", "the corner radius 30.1 does not fit"},
		{rim, "20.1", "60", "the corner radius 60 does not fit"},
		{fmt.Sprintf(tube, "100", "%s"), "49", "x", "wall"}, {fmt.Sprintf(tube, "%s", "5"), "100", "x", "outside"},
		{bore, "89.5, 90.5", "x, 90.5", "x"}, {bore, "89.99, 90", "90, 89.99", "is not below the upper limit"}, {bore, "81, 99", "89.5, x", "x"}, {bore, "81, 90", "80.9, 90", "far from the size"}, {bore, "90, 99", "90, 99.1", "far from the size"},
		{arc, "0, last: 359", "0, last: 360", "the same place"}, {arc, "90, last: 89", "90, last: 90", "the same place"},
		{fmt.Sprintf(shaft, "length: 50, length-limits: [49.9, 50.1]", "%s"), "length: 50", "length: 50, length-limits: [49.9, 50.1]", "every step has limits"},
		{hole, "82.499", "82.5", "on the outline or outside it"},
		{hole, "-82.499", "-82.5", "on the outline or outside it"},
		{hole, "45", "44.999", "in the bore of 90"},
		{deep, "depth: 7.999", "depth: 8", "8 deep in a part of 8 mm"},
		{strings.Replace(deep, "8 mm", "0.8 mm", 1), "depth: 0.799", "depth: 0.8", "0.8 deep in a part of 0.8 mm"},
		{deep, "counterbore: {diameter: 9, depth: 7.999}", "counterbore: {diameter: 9, depth: 8}", "the counterbore is 8 deep"},
		{slot, "7.999", "8", "the slot is 8 deep"},
		{disc + "bore: {diameter: %s}\n", "164.999", "165", "as large as the outline"},
		{disc + "bore: {diameter: 90, fit: {plus-minus: %s}}\n", "9", "9.1", "absurd for the size 90"},
		{fmt.Sprintf(sunk, "%s", "25", "40"), "24.999", "25", "25 deep in a diameter of 50"},
		{fmt.Sprintf(sunk, "5", "%s", "40"), "30", "30.001", "k runs from 10.001 to 50.001 mm"},
		{fmt.Sprintf(sunk, "5", "%s", "40"), "20", "19.999", "k runs from -0.001 to 39.999 mm"},
		{fmt.Sprintf(sunk, "5", "25", "%s"), "14.001", "14", "14 long and 14 wide"},
		{strings.Replace(round, "length: 50}", "length: 60}", 1) + "keyways: [{name: k, in: a, key: %sx9, depth: 5, clock: 0, axial: 30, length: 55}]\n", "49.9", "50", "50 wide in a diameter of 50"},
		{fmt.Sprintf(bored, "%s", "50"), "49.999", "50", "leaves no wall in the outside step a"},
		{fmt.Sprintf(bored, "%s", "50.001"), "39.999", "40", "leaves no wall in the outside step b"},
		{fmt.Sprintf(bored, "20", "%s"), "100", "100.001", "ends 100.001 mm from the front"},
		{ring, "19.999", "20", "the screw lies 20 from the face of a part 20 mm long"},
		{fmt.Sprintf(sides, "2", "%s", "20"), "39.999", "40", "across is 40 on a round of 40 mm"},
		{fmt.Sprintf(sides, "1", "%s", "20"), "20.001", "20", "across is 20 on a round of 40 mm"},
		{fmt.Sprintf(sides, "1", "%s", "20"), "39.999", "40", "across is 40"},
		{fmt.Sprintf(sides, "2", "30", "%s"), "50", "50.001", "50.001 long and b only 50"},
		{fmt.Sprintf(cut, "%s", "5", "2"), "45", "45.001", "g runs from 45.001 to 50.001 mm"},
		{fmt.Sprintf(cut, "45", "%s", "2"), "5", "5.001", "g runs from 45 to 50.001 mm"},
		{fmt.Sprintf(cut, "5", "5", "%s"), "24.999", "25", "25 deep at a diameter of 50"},
		{strings.ReplaceAll(fmt.Sprintf(cut, "%s", "5", "2"), "in: a", "in: b"), "50", "49.999", "g runs from 49.999 to 54.999 mm"},
		{strings.ReplaceAll(fmt.Sprintf(cut, "%s", "5", "2"), "in: a", "in: b"), "95", "95.001", "g runs from 95.001 to 100.001 mm"},
		{fmt.Sprintf(port, "%s", "size: 5 mm"), "100", "100.001", "r is centred 100.001"},
		{fmt.Sprintf(port, "50", "window: {around: 10, along: %s}"), "100", "100.001", "100.001 long in a part of 100 mm"},
		{fmt.Sprintf(port, "50", "window: {along: 10, around: %s}"), "157.079", "157.08", "a circumference of 157.08 mm"},
		{fmt.Sprintf(port, "50", "size: 5 mm, depth: %s"), "49.999", "50", "50 deep in a diameter of 50 mm"},
		{edge, "a-front, size: 50", "a-front, size: 50.001", "the chamfer of 50.001 is longer than its edge is deep"},
		{edge, "a-front, sphere: 25", "a-front, sphere: 24.999", "does not reach over the diameter of a"},
		{edge, "b-back, sphere: 20", "a-back, sphere: 25", "a-back is no end of the part"},
		{edge, "a-front, sphere: 25", "b-front, sphere: 20", "b-front is no end of the part"},
		{fmt.Sprintf(fold, "%s", "10", "0", "10"), "10", "9.999", "longer than the one it is on"},
		{fmt.Sprintf(fold, "10", "%s", "0", "10"), "10", "9.999", "longer than the one it is on"},
		{fmt.Sprintf(fold, "10", "10", "%s", "10"), "89.999", "90", "not on the flange"},
		{fmt.Sprintf(fold, "10", "10", "%s", "10"), "-89.999", "-90", "not on the flange"},
		{fmt.Sprintf(fold, "10", "10", "0", "%s"), "0.001", "0", "not on the flange"},
		{fmt.Sprintf(fold, "10", "10", "0", "%s"), "39.999", "40", "not on the flange"},
		{fmt.Sprintf(bar, "face: front", "0", "%s"), "29.999", "30", "not on the side front"},
		{fmt.Sprintf(bar, "face: front", "0", "%s"), "-29.999", "-30", "not on the side front"},
		{fmt.Sprintf(bar, "face: front", "%s", "0"), "249.999", "250", "not on the side front"},
		{fmt.Sprintf(bar, "face: front", "%s", "0"), "-219.999", "-220", "not on the side front"},
		{fmt.Sprintf(bar, "face: back", "%s", "0"), "219.999", "220", "not on the side back"},
		{fmt.Sprintf(bar, "face: back", "%s", "0"), "-249.999", "-250", "not on the side back"},
		{fmt.Sprintf(bar, "on: top", "%s", "0"), "-249.999", "-250", "not on the side top"},
		{fmt.Sprintf(bar, "on: bottom", "%s", "0"), "-189.999", "-190", "not on the side bottom"},
		{fmt.Sprintf(bar, "on: top", "0", "%s"), "19.999", "20", "not on the side top"},
		{mitre, "100.001", "100", "the mitres leave nothing of the bottom"},
		{fmt.Sprintf(frame, "square: 50", "%s"), "24.999", "25", "leaves no room in a square of 50 mm"},
		{fmt.Sprintf(frame, "rectangle: [60, 40]", "%s"), "19.999", "20", "leaves no room in a rectangle of 40 mm"},
		{fmt.Sprintf(frame, "angle: [60, 40]", "%s"), "39.999", "40", "leaves no room in a angle of 40 mm"},
		{fmt.Sprintf(frame, "square: 50, corner: %s", "4"), "25", "25.001", "the corner radius 25.001 does not fit"},
		{disc + "title: %s\n", strings.Repeat("é", 200), strings.Repeat("é", 201), "longer than 200 characters"},
		{disc + "notes: [%s]\n", strings.Repeat("é", 2000), strings.Repeat("é", 2001), "longer than 2000 characters"},
		{disc + "holes: [{name: %s, at: [[0, 0]], size: 5 mm}]\n", strings.Repeat("a", 60), strings.Repeat("a", 61), "longer than 60 characters"},
		{disc + "holes: [{name: a, at: [[0, 0]], size: %s mm}]\n", "0.001", "0.0009", "less than 0.001 mm"},
		{disc + "title: %s\n", "\"\\u00A0.\"", "\"\\u009F\"", "cannot be printed"},
		{disc + "title: %s\n", "\"~\"", "\"\\x7F\"", "cannot be printed"},
		{disc + "title: %s\n", "\"a\\u2029b\"", "\"\\u202A\"", "cannot be printed"},
		{disc + "title: %s\n", "\"a\\u202Fb\"", "\"\\u202E\"", "cannot be printed"},
		{disc + "title: %s\n", "\"a\\u2065b\"", "\"\\u2066\"", "cannot be printed"},
		{disc + "title: %s\n", "\"a\\u206Ab\"", "\"\\u2069\"", "cannot be printed"},
		{disc + "title: %s\n", "\"a b\"", "\"a\\x1Fb\"", "cannot be printed"},
		{disc + "title: %s\n", "x", "\"a\\nb\"", "a line end or a character"},
		{"part: p\nkind: turned\nstock: {tube: 60, wall: %s}\nprofile: {outside: [{name: a, diameter: 50, length: 20}]}\n", "29.999", "30", "leaves no bore in a tube of 60"},
		{round + "require: [{is: %s}]\n", "squareness, within: 0.1, of: front, to: a", "squareness, within: 0.1, of: front", "squareness needs a datum"},
		{round + "require: [{is: %s}]\n", "flatness, within: 0.1, of: front", "flatness, within: 0.1, of: front, to: a", "flatness has no datum"},
		{round + "require: [{is: %s}]\n", "parallelism, within: 0.1, of: front, to: back", "parallelism, within: 0.1, of: front, to: front", "measured from itself"},
		{round + "require: [{is: equal, within: 0.1, of: %s}]\n", "length", "front", "there is no front on the part"},
		{round + "require: [{is: flatness, within: 0.1, of: %s}]\n", "front", "length", "there is no length on the part"},
		{round + "grooves: [{name: g, for: o-ring, %s, pressure: outside}]\n", "in: front, o-ring: 20x2", "in: a, axial: 10, o-ring: 45x3", "pressure"},
		{round + "grooves: [{name: g, for: %s}]\n", "o-ring, in: front, o-ring: 20x2", "relief, in: a, axial: 10, width: 3, depth: 1, pressure: outside", "pressure"},
		{disc + "holes: [{name: h, size: 5 mm, at: [[0, 40], %s]}]\n", "[0, -40]", "[-0, 40]", "listed twice"},
		{"part: p\nkind: transition\ntransition: {width: 100, depth: 80, diameter: 60, height: 100, thickness: %s}\n", "29.99", "30", "leaves no opening"},
		{disc + "thickness: %s\n", "8", "8.001", "8.001 thick and its plate only 8 mm"},
	} {
		if got := faultsOf(fmt.Sprintf(c.text, c.on)); got != nil {
			t.Errorf("%s: %q", c.on, got)
		}
		if got := faultsOf(fmt.Sprintf(c.text, c.beyond)); len(got) != 1 || !strings.Contains(got[0], c.says) {
			t.Errorf("%s: %q, want %q alone", c.beyond, got, c.says)
		}
	}
}

// TestCountedOnTheBound: as many places, keys and words as may be pass, and one more does not; what
// stands in one entry of a list does not count for the next.
func TestCountedOnTheBound(t *testing.T) {
	t.Parallel()
	for n, want := range map[int]int{maxPlaces: 0, maxPlaces + 1: 1} {
		r := &reader{source: &source{}}
		p := &parts.Part{Holes: []parts.HoleGroup{{FaceGroup: parts.FaceGroup{Pattern: parts.Pattern{Count: 7}}}, {FaceGroup: parts.FaceGroup{Pattern: parts.Pattern{Count: n - 12}}}}, Slots: []parts.FaceSlot{{FaceGroup: parts.FaceGroup{Pattern: parts.Pattern{Count: 3}}}}, Radials: []parts.Radial{{Clock: make([]parts.Angle, 2)}}}
		if ok := r.fewPlaces(p); ok != (want == 0) || len(r.errs) != want {
			t.Errorf("%d places: %v, %v", n, ok, r.errs)
		}
	}
	entry := "- a: 1\n  b: [1, 2]\n"
	for _, c := range []struct {
		text string
		few  bool
	}{
		{strings.Repeat("a: 1\n", maxKeys), true}, {strings.Repeat("a: 1\n", maxKeys+1), false},
		{strings.Repeat(entry, maxKeys), true}, {"x:\n" + strings.Repeat(entry, maxKeys), true}, {"x:\n- a: 1\n" + strings.Repeat("  b: 1\n", maxKeys), false},
		{"x: {" + strings.Repeat("a: 1,\n", maxKeys) + "}\n", true}, {"x: {" + strings.Repeat("a: 1,\n", maxKeys+1) + "}\n", false},
		{"x: [" + strings.Repeat("{a: 1},\n", maxKeys+1) + "]\n", true},
		{strings.Repeat("a:\n    b: 1\n", maxKeys), true},
	} {
		s := &source{}
		if few := s.checkTokens(lexer.Tokenize(c.text)); few != c.few || !few && !strings.Contains(s.errs[0].Error(), "keys stand in one place") {
			t.Errorf("%.20q, %d long: %v", c.text, len(c.text), s.errs)
		}
	}
	for text, sound := range map[string]bool{
		"a: 1\n": true, "--- # first\na: 1\n...\n": true, "a: 1\n---\nb: 1\n": false, "a: 1\n...\nb: 1\n": false, "a: &x 1\n": false, "a: !x 1\n": false,
		strings.Repeat("[", 2*maxNesting-1): true, strings.Repeat("[", 2*maxNesting+1): false, strings.Repeat("- ", 2*maxNesting) + "x\n": true, strings.Repeat("- ", 2*maxNesting+1) + "x\n": false,
		strings.Repeat("a: [[1], [2]]\n", maxNesting): true, strings.Repeat("- - - a: 1\n", maxNesting): true,
	} {
		s := &source{}
		if got := s.checkTokens(lexer.Tokenize(text)); got != sound || (len(s.errs) == 0) != sound {
			t.Errorf("%.30q: %v, %v", text, got, s.errs)
		}
	}
}

// inFlow is a text of maps and lists in blocks with brackets instead, in one line; ok is false where
// there is anything else in it.
func inFlow(lines []string) (text string, ok bool) {
	var items []string
	for i, next := 0, 0; i < len(lines); i = next {
		for next = i + 1; next < len(lines) && (lines[next] == "" || lines[next][0] == ' '); next++ {
		}
		head, below := lines[i], slices.Clone(lines[i+1:next])
		inner, listed := strings.CutPrefix(head, "- ")
		depth := 2
		if !listed && len(below) > 0 {
			depth = len(below[0]) - len(strings.TrimLeft(below[0], " "))
		}
		for k, l := range below {
			if len(l) < depth || strings.TrimSpace(l[:depth]) != "" {
				return "", false
			}
			below[k] = l[depth:]
		}
		switch bare := strings.ContainsAny(head, "#|>\t\r\x00") || strings.ContainsAny(head[:min(1, len(head))], "&*!?%\"'{["); {
		case bare, head == "", inner == "", !listed && len(below) > 0 != strings.HasSuffix(head, ":"), !listed && len(below) == 0 && !strings.Contains(head, ": "):
			return "", false
		case listed && len(below) == 0 && (strings.ContainsAny(inner[:1], "{[") || !strings.Contains(inner, ": ")):
			head = inner
		case listed:
			head, ok = inFlow(append([]string{inner}, below...))
		case len(below) > 0:
			inner, ok = inFlow(below)
			head += " " + inner
		}
		if len(below) > 0 && !ok {
			return "", false
		}
		items = append(items, head)
	}
	if all := strings.Join(items, ", "); strings.HasPrefix(lines[0], "- ") {
		return "[" + all + "]", true
	} else {
		return "{" + all + "}", true
	}
}

// TestInOneLine: a part in one line has the faults of that in many: what stands on the first line is
// given too.
func TestInOneLine(t *testing.T) {
	t.Parallel()
	n := 0
	for file, cases := range golden.Cases(t, "../../cmd/centrepop/testdata/hostile") {
		for _, c := range cases {
			flow, ok := inFlow(strings.Split(strings.TrimSpace(c.Text), "\n"))
			if c.IsJob() || !ok || strings.Contains("yaml.txt bytes.txt", filepath.Base(file)) { // of bytes and marks
				continue
			}
			n++
			if many, one := faultsOf(c.Text), faultsOf(flow); !slices.Equal(many, one) {
				t.Errorf("%s:%d %s: %q in one line, %q in many", file, c.Line+1, c.Name, one, many)
			}
		}
	}
	if n < 300 {
		t.Errorf("only %d cases", n)
	}
}

// TestJobOnTheBound is the same of what stands in a job.
func TestJobOnTheBound(t *testing.T) {
	t.Parallel()
	for _, c := range []struct{ text, on, beyond, says string }{
		{"date: %s\n", "1900-01-01", "1899-12-31", "does not exist"}, {"date: %s\n", "2024-02-29", "2023-02-29", "does not exist"},
		{"shop: {paper: %s}\n", "1 mm", "1.1 mm", "no printing paper"},
		{"shop: {drill: {bushes: [{bore: 10, outside: %s}]}}\n", "10.1", "10", "has no wall"},
		{"paper: %s\n", "140 × 200", "139 × 200", "139"}, {"paper: %s\n", "2000 × 200", "2001 × 200", "2001"},
	} {
		for text, ok := range map[string]bool{c.on: true, c.beyond: false} {
			_, err := LoadText("job.yaml", []byte("job: J\nunits: mm\nparts: [plate.yaml]\n"+fmt.Sprintf(c.text, text)), "../../cmd/centrepop/testdata/hostile/good")
			if ok != (err == nil) || !ok && !strings.Contains(err.Error(), c.says) {
				t.Errorf("%s: %v, want %q: %v", text, err, c.says, !ok)
			}
		}
	}
}

// TestNamesOfJoints: a card that names a joint is held to the joints of its kind; to none where one of
// them could not be read.
func TestNamesOfJoints(t *testing.T) {
	t.Parallel()
	for joint, want := range map[string]int{
		"{name: b, bearing: {bearing: x, cup: housing.register, cone: pin.a, rotating: inner, bore: 40, outside: 90, width: 18}}": 0,
		"{name: b, press: {shaft: pin.a, bore: housing.register}}":                                                                1,
		"{name: c, press: {shaft: pin.a, bores: housing.register}}":                                                               1,
	} {
		dir := t.TempDir()
		for name, text := range map[string]string{"pin.yaml": "part: pin\nkind: shaft\nprofile: {outside: [{name: a, diameter: 40, length: 100}]}\n", "housing.yaml": "part: housing\nkind: turned\nprofile: {outside: [{name: b, diameter: 120, length: 48}], inside: [{name: register, diameter: 90, length: 48}]}\n"} {
			if err := os.WriteFile(filepath.Join(dir, name), []byte(text), 0o666); err != nil {
				t.Fatal(err)
			}
		}
		_, err := LoadText("job.yaml", []byte("job: J\nunits: mm\nparts: [pin.yaml, housing.yaml]\njoints: ["+joint+"]\nfirst-run: {watch: [{bearing: b, most: 60}]}\n"), dir)
		var all parts.Errors
		if errors.As(err, &all); len(all) != want {
			t.Errorf("%s: %v, want %d faults", joint, err, want)
		}
	}
}

// TestNeeds holds what must be given of each group of keys, and the bounds, to a list that
// is read when it changes: each change refuses jobs that were good, or takes others.
func TestNeeds(t *testing.T) {
	t.Parallel()
	var b strings.Builder
	seen := map[string]bool{}
	for _, g := range Groups() {
		if seen[g.Name] {
			t.Errorf("%s is listed twice", g.Name)
		}
		seen[g.Name] = true
		b.WriteString(g.Name + ":")
		for _, k := range g.Keys {
			said := []string{}
			if k.Need {
				said = append(said, "!")
			}
			if k.Low != 0 || k.High != 0 {
				said = append(said, fmt.Sprintf("%g–%g", k.Low, k.High))
			}
			if k.Longest > 0 {
				said = append(said, fmt.Sprintf("≤ %d", k.Longest))
			}
			if k.Entries[1] > 0 {
				said = append(said, fmt.Sprintf("%d–%d of", k.Entries[0], k.Entries[1]))
			}
			if len(said) > 0 {
				b.WriteString(" " + k.Name + " " + strings.Join(said, " ") + ";")
			}
		}
		b.WriteString("\n")
	}
	golden.Compare(t, "testdata/needs.txt", []byte(b.String()))
	for k, want := range map[*Key][2]string{
		{Type: ListType, Entries: [2]int{2, 7}}: {"2 to 7 entries", ""}, {Type: AngleType}: {"-360 to 360", "degrees"}, {Type: AngleType, Low: 30, High: 0}: {"30 to 0", "degrees"}, {Type: AnglesType, High: 90}: {"0 to 90", "degrees"},
		{Type: CountType, Low: 3, High: 9}: {"3 to 9", ""}, {Type: NumberType, High: 2.5, Unit: "kg"}: {"0 to 2.5", "kg"}, {Type: WordType, Words: []string{"a", "b"}}: {"a, b", ""}, {Type: TextType, Longest: 7}: {"up to 7 characters", ""},
		{Type: SizeType}: {"over 0, up to 10 m", "mm or in"}, {Type: DistanceType}: {"0 to 10 m", "mm or in"}, {Type: PointType}: {"-10 m to 10 m", "mm or in"}, {Type: SizeType, Unit: "mm"}: {"over 0, up to 10 m", "mm"}, {Type: YesType}: {"", ""},
	} {
		if got := [2]string{k.Limits(), k.UnitText()}; got != want {
			t.Errorf("%s: %q, want %q", k.Type, got, want)
		}
	}
}

// TestDescribed: the schema says of each key what it means, what stands for it if absent, and its unit.
func TestDescribed(t *testing.T) {
	t.Parallel()
	g := groupSchema(&Group{Name: "g", Keys: []Key{{Name: "a", Type: SizeType, Means: "m", Default: "5", Need: true}, {Name: "b", Type: YesType, Means: "m"}, {Name: "c", Type: NumberType, Means: "m", Unit: "kg"}}})
	for key, want := range map[string]string{"a": "m; if absent 5 (mm or in)", "b": "m", "c": "m (kg)"} {
		if got := g["properties"].(object)[key].(object)["description"]; got != want {
			t.Errorf("%s: %q, want %q", key, got, want)
		}
	}
	if got := g["required"]; !slices.Equal(got.([]string), []string{"a"}) {
		t.Errorf("required: %v", got)
	}
}

// TestWidest: of a profile with a step that nobody knows the size of, nothing is known.
func TestWidest(t *testing.T) {
	t.Parallel()
	step := func(mm float64, thread string) parts.Step {
		s := parts.Step{Size: parts.Size{Nominal: parts.Length{Mm: mm}, Thread: parts.Text{Value: thread}}}
		if thread == "" {
			s.Size.Nominal.Pos.Line = 1
		}
		return s
	}
	for _, c := range []struct {
		steps []parts.Step
		want  float64
	}{
		{[]parts.Step{step(40, ""), step(50, ""), step(30, "")}, 50}, {[]parts.Step{step(40, ""), step(0, "M60")}, 60}, {[]parts.Step{step(0, "1/2-13 UNC"), step(12, "")}, 12.7},
		{[]parts.Step{step(40, ""), step(0, "Q"), step(30, "")}, 0}, {nil, 0},
	} {
		if got := widest(&parts.Profile{Outside: c.steps}); got != c.want {
			t.Errorf("%g, want %g", got, c.want)
		}
	}
}
