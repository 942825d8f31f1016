package part

import (
	"strings"
	"testing"

	"centrepop/parts"
)

// A surface that stays as its tube or bar comes is nothing that the shop can hold to
// the job's general tolerance; turned to another size, or with limits, it is.
func TestAsBought(t *testing.T) {
	t.Parallel()
	part := func(stock, diameter string) string {
		return "part: hub\nkind: turned\nmaterial: S235\nstock: {" + stock + ", length: 84}\nprofile:\n  outside: [{name: body, " + diameter + ", length: 80}]\n  inside: [{name: bore, diameter: 50, fit: H11, length: 80}]\n"
	}
	for _, c := range []struct{ stock, diameter, limits string }{
		{"tube: 70, wall: 12.5", "diameter: 70", "as bought"},
		{"round: 70", "diameter: 70", "as bought"},
		{"tube: 70, wall: 12.5", "diameter: 69", "68.7 – 69.3"},
		{"round: 75", "diameter: 70", "69.7 – 70.3"},
		{"round: 70", "diameter: 70, fit: {limits: [69.5, 70.1]}", "69.5 – 70.1"},
	} {
		m := work(t, "mm", part(c.stock, c.diameter))
		got := check(m, "body").Limits
		if got != c.limits || strings.Contains(lines(m), "as bought, not turned") != (c.limits == "as bought") {
			t.Errorf("%v: %s", c, got)
		}
	}
	m := work(t, "mm", strings.NewReplacer("length: 84", "length: 304", "length: 80", "length: 300").Replace(part("tube: 70, wall: 12.5", "diameter: 70")))
	if s := lines(m); strings.Contains(s, "rough turned") {
		t.Error(s)
	}
}

// Pins that measure a pattern fit the holes as they are finished: 30·√3 and 4 of
// reamed holes, 3.8 before; in threads the tap drill's.
func TestPinsOfThePattern(t *testing.T) {
	t.Parallel()
	for size, want := range map[string]string{"{diameter: 4 mm, fit: H7}": "55.96 over pins Ø4", "M5 tap": "56.16 over pins Ø4.2"} {
		m := work(t, "mm", "part: plate\nkind: plate\nmaterial: S235\nstock: {plate: 6}\noutline: {circle: 90}\nholes:\n  - {name: pins, face: front, circle: {pcd: 60, count: 3}, size: "+size+"}\n")
		if got := check(m, "pins 1–2").Wanted; got != want {
			t.Errorf("%s: %s, want %s", size, got, want)
		}
	}
}

// Two rows of alike holes have their distance over pins: (-20, 9) to the nearer of (-20, -21) and
// (22, -21) is 30, over pins of 6.6 36.6; holes of another size, number or face have none.
func TestRowsOfHoles(t *testing.T) {
	t.Parallel()
	for second, want := range map[string]string{
		"face: front, at: [[22, -21], [-20, -21]], size: M6 clearance": "36.6 over pins Ø6.6",
		"face: front, at: [[22, -21], [-20, -21]], size: M8 clearance": "",
		"face: front, at: [[-20, -21]], size: M6 clearance":            "",
		"face: back, at: [[22, -21], [-20, -21]], size: M6 clearance":  "",
	} {
		m := work(t, "mm", "part: plate\nkind: plate\nmaterial: S235\nstock: {plate: 6}\noutline: {rectangle: [90, 70]}\nholes:\n  - {name: near, face: front, at: [[-20, 9], [22, 9]], size: M6 clearance}\n  - {name: far, "+second+"}\n")
		switch c := check(m, "far 1–4"); {
		case (c == nil) != (want == ""):
			t.Errorf("%s: %v", second, c)
		case c != nil && (c.Wanted != want || c.Limits != "36.4 – 36.8"):
			t.Errorf("%s: %+v", second, c)
		}
	}
}

// A centre that a hole on the axis takes away is not there to be measured: the seat in the mouth
// of its thread is, 1.25 × 12 wide (common practice, no source).
func TestCentreDrilledAway(t *testing.T) {
	t.Parallel()
	shaft := "part: shaft\nkind: shaft\nmaterial: C45\nstock: {round: 60, length: 305}\nprofile: {outside: [{name: body, diameter: 50, length: 300}]}\ncentres: {ends: both, form: B, pilot: 3.15}\n"
	for more, there := range map[string]bool{
		"": true,
		"holes:\n  - {name: draw, face: back, at: [[0, 0]], size: M12 tap, depth: 28}\n":  false,
		"holes:\n  - {name: draw, face: back, at: [[0, 0]], size: M5 tap, depth: 12}\n":   true,
		"holes:\n  - {name: draw, face: front, at: [[0, 0]], size: M12 tap, depth: 28}\n": true,
	} {
		m := work(t, "mm", shaft+more)
		noted := strings.Contains(feature(m, "centre back").Note, "drilled away")
		seat := strings.Contains(lines(m), "Countersink 60° to Ø15: the thread begins clean, and the part runs on that centre again.")
		if c := check(m, "centre back"); c == nil || (c.Wanted == "60° in the mouth of draw") == there || noted == there || seat != strings.Contains(more, "M12") {
			t.Errorf("%s: measured %v, said to go %v, seat %v", more, c, noted, seat)
		}
	}
	for mm, gone := range map[string]bool{"12": true, "6.7": true, "6.6": false} { // the cone of B 3.15 is Ø6.7, ISO 6411
		if c := check(work(t, "mm", shaft+"holes:\n  - {name: oil, face: back, at: [[0, 0]], size: "+mm+" mm, depth: 28}\n"), "centre back"); (c == nil) != gone {
			t.Errorf("Ø%s without a thread: %+v", mm, c)
		}
	}
}

// What the saw leaves on a tube is faced, or cut to the saddle of the branch.
func TestEndsAfterTheSaw(t *testing.T) {
	t.Parallel()
	front, back := &saddle{end: &parts.TubeEnd{Face: parts.Front}}, &saddle{end: &parts.TubeEnd{Face: parts.Back}}
	for _, c := range []struct {
		saddles []*saddle
		want    string
	}{
		{nil, "face both ends"},
		{[]*saddle{front}, "face one end and cut the other to its saddle curve"},
		{[]*saddle{back}, "face one end and cut the other to its saddle curve"},
		{[]*saddle{front, back}, "cut both ends to their saddle curves"},
	} {
		b := &bench{Numbered: &Numbered{Shape: &Shape{Sizes: &Sizes{}, saddles: c.saddles}}}
		if got := b.ends(); got != c.want {
			t.Errorf("%d saddles: %s, want %s", len(c.saddles), got, c.want)
		}
	}
}

// Who sets a cone out by its radii, without paper, is told of its overlap.
func TestOverlapIsSetOut(t *testing.T) {
	t.Parallel()
	for lap, want := range map[string]string{"": "than joined paper", ", overlap: 15": "leave 15 mm more, square to it, for the overlap"} {
		m := work(t, "mm", "part: hopper\nkind: cone\nmaterial: S235\nstock: {sheet: 2 mm, cut: none}\ncone: {large: 300, small: 150, height: 200, thickness: 2, measured: outside"+lap+"}\n")
		if s := lines(m); !strings.Contains(s, want) || lap == "" && strings.Contains(s, "for the overlap") {
			t.Errorf("%q: %s", lap, s)
		}
	}
}

// An article bought half finished is neither sawn nor faced: of its profile what has limits of its own is turned, or every bore over a pilot, in
// one setting; keyways and holes are made. It is ordered by its words, and its pilot leaves metal in every bore. By the words of the key.
func TestBoughtHalfFinished(t *testing.T) {
	t.Parallel()
	const text = "part: p\nkind: turned\nmaterial: C45\ntop: keyway\nstock: {bought: \"Sprocket 10B-1, 17 teeth\"PILOT}\nprofile:\n  outside: [{name: hub, diameter: 60, length: 19}, {name: teeth, diameter: 93, length: 9}]\n" +
		"  inside: [{name: relief, diameter: 30, length: 8}, {name: bore, diameter: 22, fit: H7, length: 20}]\nkeyways: [{name: key, in: bore}]\n"
	for _, c := range []struct {
		pilot    string
		has, not []string
	}{
		{"", []string{"Sprocket 10B-1, 17 teeth: as ordered", "It has hub Ø60 × 19, teeth Ø93 × 9, relief Ø30 × 8, 28 over all.", "four jaws on hub", "bore Ø22 H7, 20 long", "keyway 6 JS9"}, []string{"Cut the stock", "Face ", "Turn hub", "Turn teeth", "Drill", "relief Ø30, "}},
		{", pilot: 12", []string{"28 over all; pilot bore Ø12.", "Drill Ø21", "bore Ø22 H7, 20 long", "Bore relief Ø30, (8) long"}, []string{"relief Ø30 × 8"}},
	} {
		m := work(t, "mm", strings.ReplaceAll(text, "PILOT", c.pilot))
		said := strings.Join(doText(m.Out), "\n")
		for _, want := range c.has {
			if !strings.Contains(said, want) {
				t.Errorf("%q: no %q in %s", c.pilot, want, said)
			}
		}
		for _, not := range c.not {
			if strings.Contains(said, not) {
				t.Errorf("%q: %q in %s", c.pilot, not, said)
			}
		}
		if !strings.HasPrefix(m.Out.StockText, "bought: Sprocket 10B-1, 17 teeth") || m.Out.MassKg < 0.5 {
			t.Errorf("%q, %v kg", m.Out.StockText, m.Out.MassKg)
		}
	}
	job := load(t, "mm", strings.ReplaceAll(text, "PILOT", ", pilot: 22"))
	if m := Work(job, job.Parts[0]); len(m.Errs) != 1 || !strings.Contains(m.Errs[0].What, "the pilot bore of 22 leaves nothing to bore in bore of 22") {
		t.Errorf("%v", m.Errs)
	}
}
