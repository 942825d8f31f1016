package part_test

import (
	"encoding/json"
	"errors"
	"fmt"
	"math"
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"testing"

	"centrepop/layout"
	"centrepop/layout/part"
	"centrepop/layout/plan"
	"centrepop/layout/words"
	"centrepop/parts"
	"centrepop/parts/golden"
	"centrepop/parts/read"
)

// job writes one part file into a job and works it out.
func job(t *testing.T, header string, partFiles ...string) (*plan.Plan, error) {
	t.Helper()
	dir := t.TempDir()
	list := ""
	for i, text := range partFiles {
		name := fmt.Sprintf("p%d.yaml", i)
		list += "  - " + name + "\n"
		if err := os.WriteFile(filepath.Join(dir, name), []byte(text), 0o666); err != nil {
			t.Fatal(err)
		}
	}
	file := filepath.Join(dir, "job.yaml")
	if err := os.WriteFile(file, []byte("job: Test\n"+header+"\nparts:\n"+list), 0o666); err != nil {
		t.Fatal(err)
	}
	j, err := read.Load(file)
	if err != nil {
		t.Fatal(err)
	}
	worked, err := layout.Resolve(j)
	if err != nil {
		return nil, err
	}
	return worked.Plan, nil
}

func mustJob(t *testing.T, header string, partFiles ...string) *plan.Plan {
	t.Helper()
	pl, err := job(t, header, partFiles...)
	if err != nil {
		t.Fatal(err)
	}
	return pl
}

// demo works out a demo job.
func demo(t *testing.T, name string) *plan.Plan {
	t.Helper()
	j, err := read.Load("../../testdata/" + name + "/job.yaml")
	if err != nil {
		t.Fatal(err)
	}
	worked, err := layout.Resolve(j)
	if err != nil {
		t.Fatal(err)
	}
	return worked.Plan
}

// TestDemoHoles compares every hole of the demo jobs with testdata/expected,
// which was worked out by other means.
func TestDemoHoles(t *testing.T) {
	for _, name := range []string{"pugmill", "gatejack"} {
		pl := demo(t, name)
		for _, r := range golden.Table(t, "../../testdata/expected/"+name+"-holes.csv", 20) {
			x, y, dia := r.Number(t, "x_mm"), r.Number(t, "y_mm"), r.Number(t, "diameter_mm")
			hole, group := find(pl, r["part"], r["face"], r["group"], int(r.Number(t, "n")))
			if hole == nil {
				t.Errorf("%s: %v is not in the plan", name, r)
				continue
			}
			if math.Hypot(hole.XMm-x, hole.YMm-y) > 1e-3 {
				t.Errorf("%s: %v lies at (%v, %v)", name, r, hole.XMm, hole.YMm)
			}
			want := group.FinishedMm
			if group.Thread != "" {
				want = group.DrillMm
			}
			if math.Abs(want-dia) > 1e-3 {
				t.Errorf("%s: %v has diameter %v", name, r, want)
			}
		}
	}
}

func find(pl *plan.Plan, pt, face, group string, n int) (*plan.Hole, *plan.Group) {
	p := pl.Part(pt)
	if p == nil {
		return nil, nil
	}
	for _, f := range p.Faces {
		if string(f.Face) != face {
			continue
		}
		for gi := range f.Groups {
			g := &f.Groups[gi]
			if g.Name != group || string(g.Marked) != face {
				continue
			}
			for i := range f.Holes {
				if f.Holes[i].N == g.First+n-1 {
					return &f.Holes[i], g
				}
			}
		}
	}
	return nil, nil
}

// TestPlanIsFinite: a plan encodes as JSON, which refuses NaN and infinity, and
// the same job gives the same bytes.
func TestPlanIsFinite(t *testing.T) {
	for _, name := range []string{"pugmill", "gatejack"} {
		a, err := json.Marshal(demo(t, name))
		if err != nil {
			t.Fatal(err)
		}
		b, err := json.Marshal(demo(t, name))
		if err != nil || string(a) != string(b) {
			t.Errorf("%s: two runs differ: %v", name, err)
		}
	}
}

const plate = `part: plate
kind: plate
material: S235
thickness: 10
outline: {rectangle: [200, 100]}
`

// TestMirroredBack: a through hole marked on the front is seen mirrored on the
// back and keeps its number; a blind one is not seen there.
func TestMirroredBack(t *testing.T) {
	dir := t.TempDir()
	text := plate + `holes:
  - {name: through, at: [[60, 20], [10, 30]], size: 8}
  - {name: blind, at: [[-60, 20]], size: 8, depth: 5}
  - {name: behind, face: back, at: [[-80, 0]], size: 6}
`
	os.WriteFile(filepath.Join(dir, "p.yaml"), []byte(text), 0o666)
	os.WriteFile(filepath.Join(dir, "job.yaml"), []byte("job: T\nunits: mm\nparts: [p.yaml]\n"), 0o666)
	j, err := read.Load(filepath.Join(dir, "job.yaml"))
	if err != nil {
		t.Fatal(err)
	}
	f, err := part.FaceView(j, "plate", parts.Back)
	if err != nil {
		t.Fatal(err)
	}
	if len(f.Holes) != 3 {
		t.Fatalf("holes %v", f.Holes)
	}
	got := map[string][]plan.XY{}
	for _, h := range f.Holes {
		got[h.Group] = append(got[h.Group], plan.XY{XMm: h.XMm, YMm: h.YMm})
	}
	if got["behind"][0] != (plan.XY{XMm: -80, YMm: 0}) || got["through"][0] != (plan.XY{XMm: -60, YMm: 20}) || got["through"][1] != (plan.XY{XMm: -10, YMm: 30}) {
		t.Errorf("got %v", got)
	}
	if none, err := part.FaceView(j, "nothing", parts.Back); none != nil || err == nil {
		t.Errorf("a part that is not there: %v, %v", none, err)
	}
}

// TestDatumEdges: coordinates from two edges are positive inward.
func TestDatumEdges(t *testing.T) {
	pl := mustJob(t, "units: mm", plate+"holes: [{name: a, at: [[12, 20]], datum: right-top, size: 8}]\n")
	f := pl.Parts[0].Faces[0]
	h := f.Holes[0]
	if h.XMm != 88 || h.YMm != 30 || h.FromXMm != 12 || h.FromYMm != 20 || f.Datum != "right and top edge" {
		t.Errorf("got %+v from the %s", h, f.Datum)
	}
}

// TestMass: plate and turned part against hand arithmetic with 7850 kg/m³.
func TestMass(t *testing.T) {
	const shaft = `part: shaft
kind: shaft
material: S235
profile:
  outside:
    - {name: a, diameter: 100, length: 100}
    - {name: b, diameter: 50, length: 100}
  inside:
    - {name: bore, diameter: 20, length: 200}
`
	pl := mustJob(t, "units: mm", plate+"holes: [{name: a, at: [[0, 0]], size: 50}]\n", shaft)
	for i, wantMm3 := range []float64{
		200*100*10 - math.Pi/4*50*50*10,
		math.Pi / 4 * (100*100*100 + 50*50*100 - 20*20*200),
	} {
		want := wantMm3 * 7850e-9
		if got := pl.Parts[i].MassKg; math.Abs(got-want) > 1e-6*want {
			t.Errorf("%s: %v kg, want %v", pl.Parts[i].Name, got, want)
		}
	}
}

// TestChamfer: a 5 × 45° chamfer opens a Ø90 bore to Ø100 at the face, and
// 2 × 30° from the axis an outside Ø60 to 60 − 2·2·tan 30° (trigonometry).
func TestChamfer(t *testing.T) {
	pl := mustJob(t, "units: mm", `part: ring
kind: flange
thickness: 10
outline: {circle: 160}
bore: {diameter: 90}
chamfers: [{edge: bore-back, size: 5, angle: 45, for: weld}]
`, `part: pin
kind: shaft
profile: {outside: [{name: a, diameter: 60, length: 50}]}
chamfers: [{edge: a-front, size: 2, angle: 30}]
`)
	for i, want := range []string{"Ø100 at the face", "Ø57.69 at the face"} {
		found := false
		for _, f := range pl.Parts[i].Features {
			found = found || strings.Contains(f.Size, want)
		}
		if !found {
			t.Errorf("%s: no feature with %q: %+v", pl.Parts[i].Name, want, pl.Parts[i].Features)
		}
	}
	inner := pl.Parts[0].Section.Inner
	if last := inner[len(inner)-1]; last != (plan.XY{XMm: 10, YMm: 50}) {
		t.Errorf("the chamfered bore ends at %v", last)
	}
}

// TestLadder: the bore for a tube measured 114.42 is 114.39 to 114.41
// (0.01 to 0.03 mm under; common practice, no source).
func TestLadder(t *testing.T) {
	pl := mustJob(t, "units: mm", `part: flange
kind: flange
thickness: 10
outline: {circle: 200}
bore: {diameter: 114.3, fit: {light-press: tube.outside}, leave: 2}
`, "part: tube\nkind: tube\ntube: {outside: 114.3, wall: 4, length: 300}\n")
	rungs := pl.Parts[0].Ladders[0].Rungs
	if len(rungs) != 25 {
		t.Fatalf("%d rungs", len(rungs))
	}
	for _, r := range rungs {
		if math.Abs(r.MeasuredMm-r.BoreMaxMm-0.01) > 1e-9 || math.Abs(r.MeasuredMm-r.BoreMinMm-0.03) > 1e-9 {
			t.Errorf("rung %+v", r)
		}
	}
}

// TestLocatedFaults: what only layout can know is refused at its place.
func TestLocatedFaults(t *testing.T) {
	for _, c := range []struct{ text, what string }{
		{plate + "holes: [{name: a, at: [[0, 0]], size: M11.5 tap}]\n", "M11.5"},
		{plate + "holes: [{name: a, at: [[0, 0]], size: R1/2 tap}]\n", "outside thread"},
		{plate + "holes: [{name: a, at: [[0, 0]], size: G1 clearance}]\n", "clearance"},
		{plate + "bore: {diameter: 20, fit: T6}\n", "T6"},
	} {
		pl, err := job(t, "units: mm", c.text)
		var faults parts.Errors
		if pl != nil || !errors.As(err, &faults) || len(faults) != 1 {
			t.Errorf("%s: %v, %v", c.what, pl, err)
			continue
		}
		if f := faults[0]; f.Pos.Line != 6 || f.Pos.File != "p0.yaml" || !strings.Contains(f.What, c.what) || f.Right == "" {
			t.Errorf("%s: %+v", c.what, f)
		}
	}
}

// TestLimitsAreInside: limits print rounded inward, as coarse as costs a tenth
// of the room between them at most, never finer than 0.01 mm where there is
// 0.1 mm, nor than 0.001 in where there is 0.01 in.
func TestLimitsAreInside(t *testing.T) {
	for _, c := range []struct {
		units    parts.Units
		min, max float64
		want     string
	}{
		{parts.Millimetres, 90, 90.035, "90.000 – 90.035"},
		{parts.Millimetres, 90, 90.025, "90.000 – 90.025"},
		{parts.Millimetres, 11.9785, 12.0215, "11.98 – 12.02"},   // 3 of 43 µm
		{parts.Millimetres, 11.978, 12.022, "11.98 – 12.02"},     // 4 of 44 µm
		{parts.Millimetres, 11.9765, 12.0215, "11.977 – 12.021"}, // 5 of 45 µm
		{parts.Millimetres, 59.7, 60.3, "59.7 – 60.3"},
		{parts.Millimetres, 67.898624, 68.498624, "67.90 – 68.49"},
		{parts.Millimetres, 99.901, 99.999, "99.901 – 99.999"}, // 18 of 98 µm
		{parts.Millimetres, 99.901, 100.009, "99.91 – 100.00"}, // 18 of 108 µm
		{parts.Inches, 25.4, 27.94, "1.00 – 1.10 in"},
		{parts.Inches, 25.4 * 1.0004, 25.4 * 1.0109, "1.001 – 1.010 in"},
		{parts.Inches, 25.4 * 1.0004, 25.4 * 1.0096, "1.0004 – 1.0096 in"},
		{parts.Inches, 25.4, 25.421, "1.0000 – 1.0008 in"},
		{parts.Inches, 25.401, 25.4254, "1.0001 – 1.0010 in"},
	} {
		if got := (words.Writer{Units: c.units}).Limits(c.min, c.max); got != c.want {
			t.Errorf("%v to %v: %q, want %q", c.min, c.max, got, c.want)
		}
	}
}

// TestShopFiguresInJobUnits: what the shop chooses in a job in inches is round in inches: no figure of an operation
// with four places is a round tenth of a millimetre. The sizes of standards that have none in
// inches (DIN, ISO) stand as they are, and what the job gives in mm.
func TestShopFiguresInJobUnits(t *testing.T) {
	t.Parallel()
	given := regexp.MustCompile(`DIN|ISO|knurl|R0.0118 in at most`)
	files, err := filepath.Glob("../../testdata/gatejack/*.yaml")
	if err != nil {
		t.Fatal(err)
	}
	drawn := ""
	for _, file := range files {
		text, err := os.ReadFile(file)
		if err != nil {
			t.Fatal(err)
		}
		drawn += string(text)
	}
	inMm := func(mm float64) bool { return strings.Contains(drawn, " "+words.Trim(mm, 1)+" mm") }
	seen, fourth := 0, regexp.MustCompile(`(?:^|[^0-9.])([0-9]*\.[0-9]{4}) in`)
	for _, p := range demo(t, "gatejack").Parts {
		for _, o := range p.Operations {
			for _, line := range append(slices.Clone(o.Do), o.Holding) {
				for _, m := range fourth.FindAllStringSubmatch(line, -1) {
					in, err := strconv.ParseFloat(m[1], 64)
					if err != nil {
						t.Fatal(err)
					}
					seen++
					mm := 25.4 * in
					if binary := math.Abs(64*in-math.Round(64*in)) < 0.0065; mm > 0.1 && !binary && math.Abs(mm-math.Round(10*mm)/10) < 0.0013 && !given.MatchString(line) && !inMm(mm) {
						t.Errorf("%s: %s in is %.1f mm: %s", p.Title, m[1], mm, line)
					}
				}
			}
		}
	}
	if seen < 10 {
		t.Errorf("%d figures", seen)
	}
}

// TestWantedWithinLimits: the size that a record asks for, and what an operation cuts, lie
// within the limits that are printed beside it, whatever the rounding to inches does. Of a fit and of a
// bearing's seat the size is a name, and beside its limits by intent.
func TestWantedWithinLimits(t *testing.T) {
	t.Parallel()
	pl := demo(t, "gatejack")
	plans := []*plan.Plan{pl, demo(t, "pugmill"), mustJob(t, "units: in", "part: s\nkind: shaft\nmaterial: C45\nstock: {round: 2}\nprofile:\n  outside: [{name: seat, diameter: 40 mm, length: 4}]\nkeyways: [{name: key, in: seat, length: 1}]\ngrooves: [{name: seal, in: seat, axial: 2.5, for: o-ring, o-ring: 1.346x0.118}]\n")}
	seen, classed := 0, regexp.MustCompile(`×| [A-Za-z]+[0-9]`)
	for _, pl := range plans {
		for i := range pl.Parts {
			for _, c := range pl.Parts[i].Checks {
				var wanted, lo, hi float64
				if n, _ := fmt.Sscanf(strings.TrimPrefix(c.Wanted, "Ø"), "%g", &wanted); n == 0 || strings.Contains(c.Wanted, " Ra ") || classed.MatchString(c.Wanted) {
					continue
				}
				if n, _ := fmt.Sscanf(c.Limits, "%g – %g", &lo, &hi); n == 2 && lo > 0.9*wanted {
					if seen++; wanted < lo || wanted > hi {
						t.Errorf("%s, %s: %s, limits %s", pl.Parts[i].Title, c.What, c.Wanted, c.Limits)
					}
				}
			}
		}
	}
	if seen < 200 {
		t.Errorf("%d sizes", seen)
	}
	said := strings.Join(pl.Part("thrust-housing").Operations[1].Do, " ")
	if !strings.Contains(said, "× 0.0788 in deep") {
		t.Error(said)
	}
}
