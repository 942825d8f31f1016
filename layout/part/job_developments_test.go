package part_test

import (
	"errors"
	"fmt"
	"math"
	"slices"
	"strings"
	"testing"

	"centrepop/layout/plan"
	"centrepop/parts"
)

// developed finds a flat pattern of the first part.
func developed(t *testing.T, pl *plan.Plan, name string) plan.Development {
	t.Helper()
	var names []string
	for _, d := range pl.Parts[0].Developments {
		if d.Name == name {
			return d
		}
		names = append(names, d.Name)
	}
	t.Fatalf("no pattern %s, only %v", name, names)
	return plan.Development{}
}

func TestWrapsFromBothEnds(t *testing.T) {
	const tube = "part: tube\nkind: tube\ntube: {outside: 100, wall: 4, length: %d}\nradial:\n" +
		"  - {name: vent, clock: 90, axial: 30, size: 8 mm, depth: through}\n" +
		"  - {name: port, clock: 180, axial: 40, from: back, size: 12 mm, depth: through}\n"
	pl := mustJob(t, "units: mm\nshop: {paper: 0.12 mm}", fmt.Sprintf(tube, 600))
	if n := len(pl.Parts[0].Developments); n != 2 {
		t.Fatalf("%d patterns of a long tube, want one from each end", n)
	}
	front, back := developed(t, pl, "wrap-outside-front"), developed(t, pl, "wrap-outside-back")
	girth := math.Pi * (100 + 0.12)
	near(t, "the wrap length", front.WrapMm, girth, 1e-9)
	near(t, "the length with its tab", back.MaxMm.XMm-back.MinMm.XMm, girth+15, 1e-9)
	// The vent, seen from the front edge, lies a quarter round to the right.
	near(t, "the vent round", front.Marks[0].CentreMm.XMm, girth/4, 1e-9)
	near(t, "the vent along", front.Marks[0].CentreMm.YMm, 30, 1e-9)
	// From the back edge angles run to the left; half round is either way.
	near(t, "the port round", math.Abs(back.Marks[0].CentreMm.XMm), girth/2, 1e-9)
	near(t, "the port along", back.Marks[0].CentreMm.YMm, 40, 1e-9)
	if front.Marks[0].N != 1 || back.Marks[0].N != 2 {
		t.Errorf("numbered %d and %d", front.Marks[0].N, back.Marks[0].N)
	}
	if !strings.Contains(front.Edge, "front face") || !strings.Contains(back.Edge, "back face") || back.ScaleMm >= 0 {
		t.Errorf("edges %q and %q, scale %g", front.Edge, back.Edge, back.ScaleMm)
	}
	// One of up to 250 mm has one, from the front; so has a longer one that needs one alone,
	// from the end that is nearer.
	head, at, _ := strings.Cut(tube, "  - ")
	vent, port, _ := strings.Cut(at, "  - ")
	vent, port = "  - "+vent, "  - "+port
	const one = "wrap-outside"
	for _, c := range []struct {
		long         int
		radial, edge string
		names        []string
	}{
		{200, vent + port, "front face", []string{one}}, {250, vent + port, "front face", []string{one}}, {251, vent + port, "front face", []string{one + "-front", one + "-back"}},
		{600, vent, "front face", []string{one}}, {600, port, "back face", []string{one}}, {60, vent, "front face", []string{one}}, {200, port, "back face", []string{one}}, {300, strings.Replace(vent, "30", "150", 1), "front face", []string{one}}, {300, strings.Replace(vent, "30", "151", 1), "back face", []string{one}},
	} {
		var names []string
		list := mustJob(t, "units: mm", fmt.Sprintf(head, c.long)+c.radial).Parts[0].Developments
		for _, d := range list {
			names = append(names, d.Name)
		}
		if !slices.Equal(names, c.names) || !strings.Contains(list[0].Edge, c.edge) {
			t.Errorf("%d long, %s: %v, want %v from the %s", c.long, c.radial, names, c.names, c.edge)
		}
	}
}

func TestWrapAgainstShoulder(t *testing.T) {
	pl := mustJob(t, "units: mm", "part: shaft\nkind: shaft\nprofile:\n  outside:\n"+
		"    - {name: collar, diameter: 60, length: 10}\n    - {name: body, diameter: 40, length: 80}\n"+
		"radial: [{name: pin, clock: 0, axial: 35, size: 6 mm, depth: 10}]\n")
	d := developed(t, pl, "wrap-body")
	if want := "against the shoulder of collar"; !strings.Contains(d.Edge, want) {
		t.Errorf("edge %q, want %q", d.Edge, want)
	}
	near(t, "the pin from the shoulder", d.Marks[0].CentreMm.YMm, 25, 1e-9)
	// An opening over two diameters has no wrap; the sheet says so.
	pl = mustJob(t, "units: mm", "part: shaft\nkind: shaft\nprofile:\n  outside:\n"+
		"    - {name: collar, diameter: 60, length: 30}\n    - {name: body, diameter: 40, length: 80}\n  inside:\n    - {name: bore, diameter: 20, length: 110}\n"+
		"radial: [{name: cut, clock: 0, axial: 28, window: {around: 20, along: 16, corner: 2}}]\n")
	p := pl.Parts[0]
	if len(p.Developments) != 0 || len(p.Notes) != 1 || !strings.Contains(p.Notes[0], "No wrap template for collar") {
		t.Errorf("%d patterns, notes %q", len(p.Developments), p.Notes)
	}
}

// TestSaddleMass compares the metal the cut takes off with the mean of the
// closed form w = √(R² − r²·sin²t), integrated here.
func TestSaddleMass(t *testing.T) {
	const tube = "part: stub\nkind: tube\nmaterial: S235\ntube: {outside: 60, wall: 0.01, length: 200}\n"
	whole := mustJob(t, "units: mm", tube).Parts[0].MassKg
	cut := mustJob(t, "units: mm", tube+"ends: {back: {onto: {diameter: 100}}}\n").Parts[0].MassKg
	const n = 3600
	mean := 0.0
	for i := range n {
		s := math.Sin(2 * math.Pi * float64(i) / n)
		mean += math.Sqrt(50*50-30*30*s*s) / n
	}
	near(t, "the share of metal cut away", 1-cut/whole, (mean-40)/200, 2e-5)
}

func TestSaddlePlaces(t *testing.T) {
	// A thin stub of 136 on a barrel: its far end lies 136 and the least w
	// from the crossing of the axes, the square edge 25 + most w from it.
	pl := mustJob(t, "units: mm", "part: stub\nkind: tube\ntube: {outside: 60, wall: 0.001, length: 136}\nends: {back: {onto: barrel.outside, place: {axial: 70, from: back}}}\n",
		"part: barrel\nkind: tube\ntube: {outside: 100, wall: 5, length: 300}\n")
	d := developed(t, pl, "saddle-back")
	if want := "101.00 from the front face"; !strings.Contains(d.Edge, want) { // 136 + 40 − (50 + 25)
		t.Errorf("edge %q, want %q", d.Edge, want)
	}
	if h := developed(t, pl, "hole-back"); !strings.Contains(h.On, "barrel outside, Ø100") || !strings.Contains(strings.Join(h.Notes, " "), "70 from the back face of the main") {
		t.Errorf("hole on %q, notes %q", h.On, h.Notes)
	}
}

func TestSaddleFaults(t *testing.T) {
	const stub = "part: stub\nkind: tube\ntube: {outside: 60, wall: 3, length: 136}\nends: {back: {onto: %s}}\n"
	const barrel = "part: barrel\nkind: tube\ntube: {outside: 50, wall: 5, length: 300}\n"
	for _, c := range []struct{ onto, want string }{
		{"barrel.outside", "the saddle cannot be cut"},
		{"drum.outside", "there is no other part drum"},
		{"stub.outside", "there is no other part stub"},
		{"barrel.bore", "which is a bore"},
		{"barrel.rim", "is not round"},
		{"{diameter: 60, wall: 3}, joint: set-in", "the saddle cannot be cut"},
	} {
		_, err := job(t, "units: mm", fmt.Sprintf(stub, c.onto), barrel)
		var faults parts.Errors
		if !errors.As(err, &faults) || !strings.Contains(err.Error(), c.want) || !strings.Contains(err.Error(), "p0.yaml:4:") {
			t.Errorf("onto %s: %v", c.onto, err)
		}
	}
}

// TestTransitionMass compares the blank's mass with the curved surface
// integrated here: flats as triangles, corners as cones from the corner point
// to a quarter of the circle. The circle bulges towards the corner, so the
// chords of the faceted blank pass beyond it and the blank is a little larger.
func TestTransitionMass(t *testing.T) {
	pl := mustJob(t, "units: mm", "part: throat\nkind: transition\nmaterial: S235\ntransition: {width: 340, depth: 300, diameter: 295, height: 120, thickness: 2, offset: [0, 20]}\n")
	const a, b, radius, height, up = 169.0, 149.0, 146.5, 120.0, 20.0
	cross := func(ux, uy, uz, vx, vy, vz float64) float64 {
		return math.Sqrt(math.Pow(uy*vz-uz*vy, 2) + math.Pow(uz*vx-ux*vz, 2) + math.Pow(ux*vy-uy*vx, 2))
	}
	area := 0.0
	for q, corner := range [][2]float64{{a, b}, {-a, b}, {-a, -b}, {a, -b}} {
		const n = 2000
		for i := range n {
			at := func(k int) (x, y float64) {
				s, c := math.Sincos(math.Pi / 2 * (float64(q) + float64(k)/n))
				return radius*c - corner[0], radius*s + up - corner[1]
			}
			x0, y0 := at(i)
			x1, y1 := at(i + 1)
			area += cross(x0, y0, height, x1, y1, height) / 2
		}
	}
	area += 2 * a * (math.Hypot(height, radius+up-b) + math.Hypot(height, radius-up-b)) / 2
	area += 2 * 2 * b * math.Hypot(height, radius-a) / 2
	want := area * 2 * 7850e-9
	if got := pl.Parts[0].MassKg; got < want || got > want*1.005 {
		t.Errorf("mass %.4f kg, want within 0.5 %% above %.4f", got, want)
	}
	if o := pl.Parts[0].Overall; o != "340 × 300 to Ø295 × 120 high" {
		t.Errorf("overall %q", o)
	}
}

// TestTransitionRoundEnd: bent in the press the round end is a polygon of 16 flats.
// Its girth at mid-thickness is 32·146.5·sin 11.25° = 914.58 and a tape round plate 2
// thick reads π·2 more; a flat's middle lies 147.5 − (146.5·cos 11.25° + 1) = 2.81
// inside the round: rolled it is the circle, π·295 = 926.77.
func TestTransitionRoundEnd(t *testing.T) {
	t.Parallel()
	for _, c := range []struct{ units, sizes, flats, tape string }{
		{"mm", "width: 340, depth: 300, diameter: 295, height: 120, thickness: 2, bend: faceted", "16 flats, their middles 2.8 inside the round.", "round it 920.9"},
		{"mm", "width: 340, depth: 300, diameter: 295, height: 120, thickness: 2, bend: rolled", "", "round it 926.8"},
		{"mm", "width: 340, depth: 300, diameter: 291, height: 120, thickness: 2, bend: faceted, measured: inside", "their middles 2.8 inside the round.", "round it 920.9"},
		{"in", "width: 12, depth: 12, diameter: 10, height: 5, thickness: 0.1, bend: faceted", "their middles 0.095 in inside the round.", "round it 31.216 in"},
	} {
		p := mustJob(t, "units: "+c.units, "part: p\nkind: transition\nmaterial: S235\ntransition: {"+c.sizes+"}\n")
		ops := p.Parts[0].Operations
		if do := strings.Join(ops[1].Do, " "); strings.Contains(do, "flats, their") != (c.flats != "") || !strings.Contains(do, c.flats) {
			t.Errorf("%s: %s", c.sizes, do)
		}
		head := "turn to the next"
		if c.flats != "" {
			head = "bend at the line"
		}
		if got := p.Parts[0].Developments[0].Tables[0].Heads[2]; got != head {
			t.Errorf("%s: %q, want %q", c.sizes, got, head)
		}
		if !strings.HasSuffix(ops[2].Gauge, c.tape) {
			t.Errorf("%s: %s", c.sizes, ops[2].Gauge)
		}
	}
}

func TestConeGores(t *testing.T) {
	const cone = "part: cone\nkind: cone\ncone: {large: 300, small: 150, height: 200, thickness: 0.01%s}\n"
	d := developed(t, mustJob(t, "units: mm", fmt.Sprintf(cone, "")), "cone")
	if d.Copies != 1 {
		t.Errorf("%d pieces without a sheet", d.Copies)
	}
	d = developed(t, mustJob(t, "units: mm", fmt.Sprintf(cone, ", sheet: [300, 500]")), "cone")
	w, h := d.MaxMm.XMm-d.MinMm.XMm, d.MaxMm.YMm-d.MinMm.YMm
	if d.Copies < 2 || math.Min(w, h) > 300 || math.Max(w, h) > 500 {
		t.Errorf("%d pieces of %.1f × %.1f on a sheet of 300 × 500", d.Copies, w, h)
	}
	// The pieces together are the whole: π·(R + r)·s.
	near(t, "the area of all gores", d.AreaMm2*float64(d.Copies), math.Pi*(150+75)*math.Hypot(200, 75), 10)
	if _, err := job(t, "units: mm", fmt.Sprintf(cone, ", sheet: [20, 20]")); err == nil || !strings.Contains(err.Error(), "the cone cannot be developed") {
		t.Errorf("a sheet of 20 × 20: %v", err)
	}
	// 12 in of slant and 6 in of girth at the least: a sheet of 1 in takes no gore, and inches say so.
	const inch = "part: cone\nkind: cone\ncone: {large: 12, small: 6, height: 8, thickness: 0.05, sheet: [1, 1]}\n"
	if _, err := job(t, "units: in", inch); err == nil || !strings.Contains(err.Error(), "the sheet is 1 in × 1 in") || strings.Contains(err.Error(), "mm") {
		t.Errorf("a sheet of 1 in: %v", err)
	}
}

// TestWrapUnderBranch: an opening inside the hole of a branch is no reason for a wrap,
// since it is cut with that, by the branch's template, and drawn as that; one that reaches out of the bore by more
// than a hair, 0.2, lies off it or on the other side is. The bore is 50, so a window with square
// corners of 30 by 40 just fits, its corners 25 from the middle.
func TestWrapUnderBranch(t *testing.T) {
	const job = "part: tube\nkind: tube\ntube: {outside: 200, wall: 4, length: 240}\nradial:\n" +
		"  - {name: rough, clock: %g, axial: %g, window: {around: 30, along: %g, corner: 0}}\n" +
		"  - {name: drain, clock: 180, axial: 40, size: 8 mm, depth: through}\n"
	const stub = "part: stub\nkind: tube\ntube: {outside: 60, wall: 5, length: 150}\n" +
		"ends:\n  back: {onto: tube.outside, angle: 90, joint: set-on, gap: 2, clock: 0, place: {clock: 0, axial: 100, from: back}}\n"
	for _, c := range []struct {
		clock, axial, along float64
		needless            bool
	}{{0, 140, 40, true}, {0, 140.1, 40, true}, {0, 140, 40.6, false}, {0, 140.4, 40, false}, {0.3, 140, 40, false}, {90, 140, 40, false}, {0, 100, 40, false}} {
		pl := mustJob(t, "units: mm", fmt.Sprintf(job, c.clock, c.axial, c.along), stub)
		d, tube := developed(t, pl, "wrap-outside"), pl.Part("tube")
		if got := strings.HasPrefix(d.NoTemplate, "drain alone"); got != c.needless || len(d.Marks) == 1 != got {
			t.Errorf("%+v: %q", c, d.NoTemplate)
		}
		milled := slices.ContainsFunc(tube.Operations, func(o plan.Operation) bool { return strings.HasPrefix(o.Title, "rough: ") })
		i := slices.IndexFunc(tube.Shown, func(r plan.RadialRow) bool { return r.Shape == "branch" })
		if i < 0 || milled == c.needless || (tube.Shown[i].Name == "rough") != c.needless {
			t.Errorf("%+v: milled %v, drawn %+v", c, milled, tube.Shown)
			continue
		}
		if r := tube.Shown[i]; r.AxialMm != 140 || r.Datum != "back" || r.DatumMm != 100 || r.AlongMm != 50 || r.DepthMm != 4 || r.OutsideMm != 200 || !strings.HasSuffix(r.SizeText, "by the template of Stub") && !strings.HasSuffix(r.SizeText, "by the template of stub") {
			t.Errorf("%+v", r)
		}
	}
}

// TestTransitionIsDrawn: a square to round is drawn from its square end, with the round
// end where it lies, mirrored in nothing, and the lines from the corners to its quarters.
func TestTransitionIsDrawn(t *testing.T) {
	t.Parallel()
	p := mustJob(t, "units: mm", "part: p\nkind: transition\nmaterial: S235\ntransition: {width: 340, depth: 300, diameter: 200, height: 120, thickness: 2, offset: [10, 60]}\n").Parts[0]
	if len(p.Faces) != 1 || p.Faces[0].Face != parts.Front || p.Faces[0].NoTemplate == "" || p.Faces[0].MaxMm != (plan.XY{XMm: 170, YMm: 160}) {
		t.Fatalf("%+v", p.Faces)
	}
	f := p.Faces[0]
	if c := f.Circles; len(c) != 1 || c[0].CentreMm != (plan.XY{XMm: 10, YMm: 60}) || c[0].DiameterMm != 200 || c[0].Label != "Ø200 round end" {
		t.Errorf("%+v", c)
	}
	if got := fmt.Sprint(f.Hidden); got != "[[{170 150} {10 160}] [{170 150} {110 60}] [{170 -150} {110 60}] [{170 -150} {10 -40}] [{-170 -150} {10 -40}] [{-170 -150} {-90 60}] [{-170 150} {-90 60}] [{-170 150} {10 160}]]" {
		t.Error(got)
	}
}
