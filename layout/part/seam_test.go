package part

import (
	"math"
	"slices"
	"strings"
	"testing"

	"centrepop/layout/plan"
)

// TestSeam: how long the seams of a sheet are, and by which process, as far as the job says one.
func TestSeam(t *testing.T) {
	t.Parallel()
	const cone = "part: p\nkind: cone\nmaterial: 1.4301\nstock: {sheet: 2 mm, cut: none}\ncone: {large: 300, small: 150, height: 200, thickness: 2, offset: 20, seam: 90%}\n"
	for _, c := range []struct {
		text, how string
		longMm    float64
	}{
		{cone, "weld: butt, gap 0 to 1, right through; process and filler for 1.4301 by the welding procedure.", math.Sqrt(200*200 + 75*75 + 20*20)},
		{strings.Replace(cone, "90%", "0, overlap: 15", 1), "weld: fillet 2 along the edge of the lap; process and filler", math.Hypot(200, 55)},
		{strings.Replace(strings.Replace(cone, "thickness: 2", "thickness: 6", 1), "2 mm", "6 mm", 1), "butt, gap 0 to 3, both sides, gouge or grind the root before the second side; ", math.Sqrt(200*200 + 75*75 + 20*20)},
		{"part: p\nkind: transition\nstock: {sheet: 2 mm, cut: none}\ntransition: {width: 400, depth: 300, diameter: 150, height: 200, thickness: 2, offset: [0, 20], seam: 180}\n", "right through; process and filler by the welding procedure.", math.Hypot(200, 95)},
		{auger, "butt, gap 0 to 3, both sides", 2 * 50}, // three rings, two seams over the blade
	} {
		m := work(t, "mm", strings.Replace(c.text, "%", "", 1))
		s, text := m.Seam(), lines(m)
		if s == nil || math.Abs(s.LengthMm-c.longMm) > 0.01 || !strings.Contains(text, c.how) {
			t.Errorf("%s: %+v, by hand %.2f; wanted %q in\n%s", c.text, s, c.longMm, c.how, text)
		}
	}
	for name, want := range map[string]string{"hopper": "TIG", "auger-flight": "MAG", "water-funnel": ""} {
		job := demo(t, "pugmill")
		if s := Work(job, job.Part(name)).Seam(); s == nil || s.Process != want {
			t.Errorf("%s: %+v, wanted %q", name, s, want)
		}
	}
	job := demo(t, "pugmill")
	if s := Work(job, job.Part("base-plate")).Seam(); s != nil {
		t.Errorf("a plate: %+v", s)
	}
}

// An end up to 6 mm has no centre hole: what is too long to turn without one is found, a short pin is not.
func TestThinCentre(t *testing.T) {
	t.Parallel()
	const pin = "part: p\nkind: shaft\nmaterial: C45\nstock: {round: 10 mm}\nprofile: {outside: [{name: a, diameter: %D, length: 10}, {name: b, diameter: 9, length: %L}]}\n"
	for c, want := range map[[2]string]bool{{"4", "60"}: true, {"6.5", "60"}: false, {"4", "12"}: false} {
		m := work(t, "mm", strings.NewReplacer("%D", c[0], "%L", c[1]).Replace(pin))
		if got := slices.ContainsFunc(m.Out.Problems, func(p plan.Problem) bool { return p.Kind == plan.CentreThin }); got != want {
			t.Errorf("Ø%s, %s long: %v", c[0], c[1], got)
		}
	}
}
