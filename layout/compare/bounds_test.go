package compare

import (
	"slices"
	"strings"
	"testing"
)

// TestSaid: what is wrong with a drawing as a whole, to the digits that are said.
func TestSaid(t *testing.T) {
	t.Parallel()
	for _, c := range []struct {
		code   Code
		report Report
		want   string
	}{
		{Turned, Report{TurnedDeg: -12.3456}, "the drawing is turned 12.35° anticlockwise"},
		{Turned, Report{TurnedDeg: 12.3456}, "the drawing is turned 12.35° clockwise"},
		{Turned, Report{TurnedDeg: -0.5}, "the drawing is turned 0.5° anticlockwise"},
		{Scale, Report{Scale: 1.234567}, "the drawing is 1.2346 times its size"},
		{Mirror, Report{}, "the drawing is a mirror image of the front"},
	} {
		co := &comparison{want: plate(t), report: &c.report}
		if got := co.say(&Finding{Code: c.code}); got != c.want {
			t.Errorf("%s: %q, want %q", c.code, got, c.want)
		}
	}
}

// An outline of half the size of the part's or twice is the outline, drawn wrongly; of
// less or more it is none. The plate is 200 by 120.
func TestOtherSize(t *testing.T) {
	t.Parallel()
	for _, c := range []struct {
		w, h    string
		missing bool
	}{
		{"100", "120", false}, {"99.9", "120", true}, {"200", "60", false}, {"200", "59.9", true},
		{"400", "120", false}, {"400.1", "120", true}, {"200", "240", false}, {"200", "240.1", true},
	} {
		lines := drawing()
		lines[0] = `<rect x="20" y="20" width="` + c.w + `" height="` + c.h + `"/>`
		if got := slices.Contains(codes(compared(t, plate(t), svgFile(mmHead, lines))), OutlineMissing); got != c.missing {
			t.Errorf("an outline of %s × %s is missing: %v", c.w, c.h, got)
		}
	}
}

// A view box needs four numbers and no more.
func TestViewBox(t *testing.T) {
	t.Parallel()
	for box, good := range map[string]bool{"0 0 10 5": true, " 0,0 , 10 5 ": true, "0 0 10 5 1": false, "0 0 10 5x": false, "0 0 10 0": false, "0 0 0 5": false, "0 0 0.5 0.5": true, "0 0 -1 5": false} {
		if _, err := Read(strings.NewReader(`<svg viewBox="` + box + `"><rect width="1" height="1"/></svg>`)); (err == nil) != good {
			t.Errorf("view box %q: %v", box, err)
		}
	}
}
