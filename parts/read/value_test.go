package read

import (
	"errors"
	"math"
	"os"
	"testing"

	"centrepop/parts"
)

// TestValues: what is worked out as it is read. A channel that opens up or down lies with its web level;
// a sphere of 25 on the end of a round of 40 is 25 − √(625 − 400) = 10 high, its chord at atan 20/10; a
// pound is 0.45359237 kg (NIST SP 811).
func TestValues(t *testing.T) {
	t.Parallel()
	for open, want := range map[string][2]float64{"front": {80, 45}, "back": {80, 45}, "top": {45, 80}, "bottom": {45, 80}} {
		p, err := ParsePart("p.yaml", []byte("part: p\nkind: bar\nmaterial: S235\nbar: {channel: [80, 45], wall: 6, open: "+open+", length: 500}\n"), parts.Millimetres)
		if err != nil {
			t.Fatal(err)
		}
		if b := p.Bar; b.Width.Mm != want[0] || b.Depth.Mm != want[1] || b.Flange.Mm != 6 {
			t.Errorf("open to the %s: %g by %g, flange %g", open, b.Width.Mm, b.Depth.Mm, b.Flange.Mm)
		}
	}
	for radius, want := range map[string][2]float64{"20": {20, 45}, "25": {10, 63.434949}} {
		p, err := ParsePart("p.yaml", []byte("part: p\nkind: shaft\nprofile: {outside: [{name: a, diameter: 40, length: 100}]}\nchamfers: [{edge: a-front, sphere: "+radius+"}]\n"), parts.Millimetres)
		if err != nil {
			t.Fatal(err)
		}
		if c := p.Chamfers[0]; math.Abs(c.Size.Mm-want[0]) > 1e-9 || math.Abs(c.Angle.Deg-want[1]) > 1e-6 {
			t.Errorf("a sphere of %s: %g at %g°", radius, c.Size.Mm, c.Angle.Deg)
		}
	}
	for mass, want := range map[string]float64{"kg: 48": 48, "lb: 100": 45.359237} {
		j, err := LoadText("job.yaml", []byte("job: J\nunits: mm\nparts: [plate.yaml, tube.yaml]\njoints: [{name: w, weld: {part: plate.outline, to: tube.outside, type: fillet, length: 50, process: MAG}}]\nloose: [{item: motor, how: on it, after: w, "+mass+"}]\n"), "../../cmd/centrepop/testdata/hostile/good")
		if err != nil {
			t.Fatal(err)
		}
		if got := j.Loose[0].MassKg; math.Abs(got-want) > 1e-9 {
			t.Errorf("%s: %g kg", mass, got)
		}
	}
	if s, err := LoadSurvey("testdata/none.yaml"); s != nil || !errors.Is(err, os.ErrNotExist) {
		t.Errorf("a survey that is not there: %v, %v", s, err)
	}
}
