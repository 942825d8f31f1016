package review

import (
	"fmt"
	"maps"
	"strings"
	"testing"

	"centrepop/parts"
)

// TestFramesOf: the frames and the most power in each of 2, 4, 6 and 8 poles: EN 50347 and
// IEC 60072-1, from memory, unchecked. A motor goes into its frame up to a tenth more than
// that, and one up or down; two are said.
func TestFramesOf(t *testing.T) {
	t.Parallel()
	rows := strings.Split("56 0.12 0.09 0.06 0.04, 63 0.25 0.18 0.12 0.09, 71 0.55 0.37 0.25 0.12, 80 1.1 0.75 0.55 0.25, 90 2.2 1.5 1.1 0.55, 100 3 3 1.5 1.1, 112 4 4 2.2 1.5, "+
		"132 7.5 7.5 5.5 3, 160 18.5 15 11 7.5, 180 22 22 15 11, 200 37 30 22 15, 225 45 45 30 22, 250 55 55 37 30, 280 90 90 55 45", ", ")
	if len(rows) != len(framesOf) {
		t.Fatalf("%d frames, want %d", len(framesOf), len(rows))
	}
	said := func(frame string, kw, rpm float64) string {
		out := ""
		framePower(&parts.Motor{Frame: parts.Text{Value: frame}, KW: parts.Number{Value: kw}, Hz: parts.Number{Value: 50}, RPM: parts.Number{Value: rpm}},
			func(_, numbers, _, _ string) { out = numbers })
		return out
	}
	for i, row := range rows {
		f := framesOf[i]
		if got := strings.TrimSpace(fmt.Sprintf("%s %v %v %v %v", f.frame, f.kw[0], f.kw[1], f.kw[2], f.kw[3])); got != row {
			t.Errorf("%s, want %s", got, row)
		}
	}
	for _, c := range []struct {
		frame   string
		kw, rpm float64
		want    string
	}{
		{"90S", 1.5, 1400, ""}, {"90 L", 1.65, 1400, ""}, {"100", 1.5, 1400, ""}, {"80", 1.5, 1400, ""},
		{"112M", 1.5, 1400, "frame 112M for 1.5 kW at 1400 rev/min; usual is 90"}, {"71", 1.5, 1400, "frame 71 for 1.5 kW at 1400 rev/min; usual is 90"},
		{"112M", 1.66, 1400, ""}, {"112M", 1.5, 940, ""}, {"132", 1.5, 940, "frame 132 for 1.5 kW at 940 rev/min; usual is 100"},
		{"80", 3, 2850, "frame 80 for 3 kW at 2850 rev/min; usual is 100"}, {"100", 0.55, 700, ""}, {"112", 0.55, 700, "frame 112 for 0.55 kW at 700 rev/min; usual is 90"},
		{"90S", 1.5, 3100, ""}, {"315", 1.5, 1400, ""}, {"112M", 0, 1400, ""},
	} {
		if got := said(c.frame, c.kw, c.rpm); got != c.want {
			t.Errorf("%s, %v kW, %v: %q, want %q", c.frame, c.kw, c.rpm, got, c.want)
		}
	}
}

// TestRarest: five years in the units of the upkeep, common practice: 2000 hours or 400 days
// a year worked, 52 weeks, 12 months, two seasons.
func TestRarest(t *testing.T) {
	t.Parallel()
	if want := map[string]float64{"h": 10_000, "hour": 10_000, "day": 2000, "week": 5 * 52, "month": 5 * 12, "season": 5 * 2, "year": 5}; !maps.Equal(rarest, want) {
		t.Errorf("%v, want %v", rarest, want)
	}
}

// TestRingsOfAnyTurn: places are the same a turn on or back; equal ones count once.
func TestRingsOfAnyTurn(t *testing.T) {
	t.Parallel()
	p := pattern{places: []place{{radiusMm: 50, deg: -90}, {radiusMm: 50, deg: 30}, {radiusMm: 50, deg: 270}, {radiusMm: 50, deg: 510}, {radiusMm: 50, deg: 390}}}
	rings := p.rings()
	if len(rings) != 1 || len(rings[0]) != 3 || rings[0][0].deg != 30 || rings[0][1].deg != 150 || rings[0][2].deg != 270 {
		t.Errorf("%+v", rings)
	}
	if n := p.order(); n != 3 {
		t.Errorf("three places a third of a turn apart repeat %d times", n)
	}
}
