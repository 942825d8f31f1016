package joint_test

import (
	"strings"
	"testing"
)

const (
	slantLeg   = "part: leg\nkind: bar\nquantity: 1\nmaterial: S235\nbar: {square: 50, wall: 4, length: 600}\n"
	slantBrace = "part: brace\nkind: bar\nquantity: 1\nmaterial: S235\nbar: {square: 40, wall: 3, length: 420, left: {mitre: 45, long: bottom}, right: {mitre: 45, long: bottom}}\n"
	postOf     = "part: post\nkind: bar\nquantity: 1\nmaterial: S235\nbar: {square: 40, wall: 3, length: 300}\n"
)

// TestSlantingBrace: a bar whose mitred end is welded to the side of another leans, and no square is put to it; by two
// seams of a length it is not welded round its section, by one as long as three of its sides it is.
func TestSlantingBrace(t *testing.T) {
	t.Parallel()
	brace := func(keys string) string {
		return "{name: brace, weld: {part: brace.left, to: leg.top, type: fillet, size: 3" + keys + "}}"
	}
	leans := []string{"its cut flat on it, so that it leans by 45°", "Check that it leans by 45° as it is cut, and stands square across that; knock straight now."}
	says(t, jointNamed(t, planned(t, jobOf(t, brace(", length: 40, sides: 2"), slantLeg, slantBrace)), "brace"),
		append(leans, "Tack each seam 2 × 7 long: both ends", "turn and turn about on the two sides"), []string{"of the section", "on both sides", "square and place"})
	says(t, jointNamed(t, planned(t, jobOf(t, brace(", length: 120"), slantLeg, slantBrace)), "brace"), append(leans, "two opposite sides of the section"), nil)
}

// TestRoundOnNarrower: a round plate on the end of a bar is welded round the bar, not round itself: a square tube of 50 along
// its sides, a round of 16 round that, π · 16 = 50.27; on a wider bar it is welded round the plate.
func TestRoundOnNarrower(t *testing.T) {
	t.Parallel()
	const foot = "part: foot\nkind: plate\nmaterial: S235\nstock: {plate: 8, cut: laser}\noutline: {circle: 160}\n"
	const on = "{name: foot, weld: {part: foot.outline, to: BAR.right, type: fillet, size: 3}, place: {on: right, with: front, at: [0, 0], top: up}}"
	const arm = "part: arm\nkind: bar\nquantity: 1\nmaterial: S235\nbar: {round: 16, length: 200}\n"
	on1 := func(bar string) string { return strings.Replace(on, "BAR", bar, 1) }
	leg := jointNamed(t, planned(t, jobOf(t, on1("leg"), slantLeg, foot)), "foot")
	if w := leg.Weld; w.DiameterMm != 0 || w.LengthMm < 170 || w.LengthMm > 200 || len(w.Corners) != 4 {
		t.Errorf("%+v", w)
	}
	says(t, leg, []string{"Each side of the section"}, []string{"all round"})
	round := jointNamed(t, planned(t, jobOf(t, on1("arm"), arm, foot)), "foot")
	if w := round.Weld; w.DiameterMm != 16 || w.LengthMm != 50.27 || len(w.TacksDeg) == 0 || w.ClockOf != "foot" {
		t.Errorf("%+v", w)
	}
	says(t, round, []string{"50.27, all round Ø16"}, []string{"side of the section"})
	said := strings.Replace(on1("arm"), "size: 3", "size: 3, length: 45", 1)
	says(t, jointNamed(t, planned(t, jobOf(t, said, arm, foot)), "foot"), []string{"In quarters, opposite ones in turn."}, []string{"of the section"})
	wide := strings.Replace(arm, "round: 16", "round: 180", 1)
	if w := jointNamed(t, planned(t, jobOf(t, on1("arm"), wide, foot)), "foot").Weld; w.DiameterMm != 160 {
		t.Errorf("on the wide one: %+v", w)
	}
	// A disc of 60 on the sides of a bar 80 wide and 40 deep, and on plates.
	bar := func(long string) string {
		return "part: base\nkind: bar\nquantity: 1\nmaterial: S235\nbar: {rectangle: [80, 40], wall: 4, length: " + long + "}\n"
	}
	plate := func(size string) string {
		return "part: base\nkind: plate\nmaterial: S235\nstock: {plate: 8, cut: laser}\noutline: {rectangle: [" + size + "]}\n"
	}
	for _, c := range []struct {
		base, to, on string
		mm           float64
	}{
		{bar("200"), "front", "front", 60}, {bar("200"), "back", "back", 60}, {bar("200"), "top", "top", 0}, {bar("200"), "bottom", "bottom", 0}, {bar("59.9"), "front", "front", 0}, {bar("60"), "front", "front", 60},
		{plate("60, 90"), "outline", "front", 60}, {plate("59.9, 90"), "outline", "front", 0}, {plate("90, 59.9"), "outline", "back", 0}, {plate("90, 60"), "outline", "back", 60},
	} {
		top := map[string]string{"front": "up", "back": "up", "top": "right", "bottom": "right"}[c.on]
		job := "{name: foot, weld: {part: foot.outline, to: base." + c.to + ", type: fillet, size: 3}, place: {on: " + c.on + ", with: back, at: [0, 0], top: " + top + "}}"
		w := jointNamed(t, planned(t, jobOf(t, job, c.base, strings.Replace(foot, "160", "60", 1))), "foot").Weld
		if w == nil || w.DiameterMm != c.mm || (len(w.Corners) == 0) != (c.mm > 0) {
			t.Errorf("on the %s of %s: %+v", c.on, c.base, w)
		}
	}
}

// TestShortCorners: a post that stands with 12 or 20 mm of its 40 on a rail, whose edge is round, is tacked as its long side is, not as its short ones.
func TestShortCorners(t *testing.T) {
	t.Parallel()
	on := func(from string) string {
		return "{name: post, weld: {part: post.left, to: leg.front, type: fillet, size: 3}, place: {on: front, with: left, from-left: 100, from-bottom: " + from + ", front: up}}"
	}
	says(t, jointNamed(t, planned(t, jobOf(t, on("-28"), slantLeg, postOf)), "post"), []string{"each tack 6 long"}, []string{"each tack 2 long"})
	says(t, jointNamed(t, planned(t, jobOf(t, on("-20"), slantLeg, postOf)), "post"), []string{"each tack 6 long"}, nil)
}

// TestBraceInItsCorner: each end of a brace between a post and the rail that it stands on is said with its place, and what
// its two corners ask: a throat of 2.12 asks for a leg of 2.12/cos 67.5° = 5.54 in a corner of 135°.
func TestBraceInItsCorner(t *testing.T) {
	t.Parallel()
	const rail = "part: rail\nkind: bar\nquantity: 1\nmaterial: S235\nbar: {square: 50, wall: 4, length: 800}\n"
	joints := "{name: tee, weld: {part: leg.left, to: rail.top, type: fillet, size: 3}, place: {on: top, with: left, at: [0, 0], front: down}}\n" +
		"  - {name: foot, weld: {part: brace.left, to: rail.top, type: fillet, size: 3}, place: {on: top, with: left, from-right: 78.015, from-bottom: 5, front: down}}\n" +
		"  - {name: head, weld: {part: brace.right, to: leg.bottom, type: fillet, size: 3}, place: {on: bottom, with: right, from-left: 240.416, from-bottom: 5, front: up}}"
	pl := planned(t, jobOf(t, joints, slantLeg, rail, slantBrace))
	says(t, jointNamed(t, pl, "foot"), []string{
		"left of brace on the top of rail, 78.02 from its right edge, 5 from its bottom edge, front to the front of rail, leaning 45° to the left of rail",
		"Open corner, on its bottom, 135°: legs of 5.5 for the throat of 2.12; what the seam there holds is found by test alone (EN 1993-1-8, 4.3.2.1).",
		"Close corner, on its top, 45°: legs of 3 for the throat of 2.12; the seam there counts as a butt weld that is not through (EN 1993-1-8, 4.3.2.1).",
	}, nil)
	says(t, jointNamed(t, pl, "head"), []string{"leaning 45° to the left of leg"}, nil)
	for name, deg := range map[string]string{"30": "60°: legs of 3 for the throat of 2.12.", "31": "59°: legs of 3 for the throat of 2.12; the seam"} {
		plan := planned(t, jobOf(t, "{name: foot, weld: {part: brace.left, to: leg.top, type: fillet, size: 3}, place: {on: top, with: left, at: [0, 0], front: down}}",
			slantLeg, "part: brace\nkind: bar\nquantity: 1\nmaterial: S235\nbar: {square: 40, wall: 3, length: 420, left: {mitre: "+name+", long: top}}\n"))
		says(t, jointNamed(t, plan, "foot"), []string{"Close corner, on its bottom, " + deg, "Open corner, on its top, "}, nil)
	}
}
