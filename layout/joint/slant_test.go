package joint_test

import "testing"

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

// TestShortCorners: a post that stands with 12 or 20 mm of its 40 on a rail, whose edge is round, is tacked as its long side is, not as its short ones.
func TestShortCorners(t *testing.T) {
	t.Parallel()
	on := func(from string) string {
		return "{name: post, weld: {part: post.left, to: leg.front, type: fillet, size: 3}, place: {on: front, with: left, from-left: 100, from-bottom: " + from + ", front: up}}"
	}
	says(t, jointNamed(t, planned(t, jobOf(t, on("-28"), slantLeg, postOf)), "post"), []string{"each tack 6 long"}, []string{"each tack 2 long"})
	says(t, jointNamed(t, planned(t, jobOf(t, on("-20"), slantLeg, postOf)), "post"), []string{"each tack 6 long"}, nil)
}
