package keys

import (
	"errors"
	"math"
	"slices"
	"testing"

	"centrepop/layout/lookup"
	"centrepop/parts/golden"
)

// rows returns the number columns of a reference table, one map a row, and the
// source of each row.
func rows(t *testing.T, name string, least int) (out []map[string]float64, sources []string) {
	t.Helper()
	for _, record := range golden.Table(t, "../../testdata/reference/"+name, least) {
		row := map[string]float64{}
		for column := range record {
			if column != "source" && column != "how" {
				row[column] = record.Number(t, column)
			}
		}
		out, sources = append(out, row), append(sources, record["source"])
	}
	return out, sources
}

func near(a, b, tol float64) bool { return math.Abs(a-b) <= tol }

// Both ends of every row of the reference, and the least above its lower end.
func TestParallelReference(t *testing.T) {
	t.Parallel()
	table, sources := rows(t, "keys.csv", 26)
	for i, want := range table {
		for _, d := range []float64{want["over_mm"] + 1e-6, want["up_to_mm"]} {
			got, err := For(d)
			if err != nil {
				t.Error(err)
				continue
			}
			for column, v := range map[string]float64{
				"over_mm": got.OverMm[0], "up_to_mm": got.OverMm[1], "width_mm": got.WidthMm, "height_mm": got.HeightMm,
				"shaft_depth_mm": got.ShaftDepthMm, "hub_depth_mm": got.HubDepthMm,
			} {
				if v != want[column] {
					t.Errorf("%v %s = %v, want %v (%s)", d, column, v, want[column], sources[i])
				}
			}
			if got.ShaftAcrossMm != d-want["shaft_depth_mm"] || got.HubAcrossMm != d+want["hub_depth_mm"] {
				t.Errorf("%v across %v, %v", d, got.ShaftAcrossMm, got.HubAcrossMm)
			}
		}
	}
}

// Machinery's Handbook gives S and T of ANSI B17.1 to a thousandth.
func TestInchReference(t *testing.T) {
	t.Parallel()
	table, sources := rows(t, "keys_inch.csv", 30)
	for i, want := range table {
		for section, name := range map[Section]string{Square: "square", Rectangular: "rectangular"} {
			d := want["shaft_in"]
			got, err := ForInch(d*25.4, section)
			if err != nil {
				t.Error(err)
				continue
			}
			s, h := got.ShaftAcrossMm/25.4, got.HubAcrossMm/25.4
			if !near(s, want["shaft_across_"+name+"_in"], 0.00051) || !near(h, want["hub_across_"+name+"_in"], 0.00051) {
				t.Errorf("%v %s: S %.4f, T %.4f, want %v (%s)", d, name, s, h, want, sources[i])
			}
			if !near(got.ShaftDepthMm, d*25.4-got.ShaftAcrossMm, 1e-9) || !near(got.HubDepthMm, got.HubAcrossMm-d*25.4, 1e-9) {
				t.Errorf("%v %s: depths %v, %v do not go with what is measured across", d, name, got.ShaftDepthMm, got.HubDepthMm)
			}
		}
	}
}

// ASME B17.1-1967, key size by shaft diameter, as utilitiesbunker.com prints it
// up to 6-1/2 in; above from memory.
func TestInchSizes(t *testing.T) {
	t.Parallel()
	for _, c := range []struct{ d, over, upTo, width, square, flat float64 }{
		{7.0 / 16, 5.0 / 16, 7.0 / 16, 3.0 / 32, 3.0 / 32, 0}, {0.5, 7.0 / 16, 9.0 / 16, 0.125, 0.125, 3.0 / 32},
		{1.25, 0.875, 1.25, 0.25, 0.25, 3.0 / 16}, {1.26, 1.25, 1.375, 5.0 / 16, 5.0 / 16, 0.25}, {1.75, 1.375, 1.75, 0.375, 0.375, 0.25},
		{2.5, 2.25, 2.75, 0.625, 0.625, 7.0 / 16}, {3, 2.75, 3.25, 0.75, 0.75, 0.5}, {3.5, 3.25, 3.75, 0.875, 0.875, 0.625},
		{4, 3.75, 4.5, 1, 1, 0.75}, {5, 4.5, 5.5, 1.25, 1.25, 0.875}, {6.5, 5.5, 6.5, 1.5, 1.5, 1}, {7, 6.5, 7.5, 1.75, 1.75, 1.5}, {9, 7.5, 9, 2, 2, 1.5},
	} {
		got, err := ForInch(c.d*25.4, Square)
		if err != nil || !near(got.WidthMm, c.width*25.4, 1e-9) || !near(got.HeightMm, c.square*25.4, 1e-9) || !near(got.OverMm[0], c.over*25.4, 1e-9) || !near(got.OverMm[1], c.upTo*25.4, 1e-9) {
			t.Errorf("%v in: %+v, %v", c.d, got, err)
		}
		got, err = ForInch(c.d*25.4, Rectangular)
		if (c.flat == 0) != (err != nil) || !near(got.HeightMm, c.flat*25.4, 1e-9) {
			t.Errorf("%v in rectangular: %+v, %v", c.d, got, err)
		}
	}
	// ASME B17.1, depth tolerances: engineersedge.com, "Design Fits for Parallel and Taper Keys".
	if got, _ := ForInch(25.4, Square); !near(got.ShaftDeeperMm, 0.381, 1e-9) || !near(got.HubDeeperMm, 0.254, 1e-9) || got.Source.State != lookup.Checked || got.ToleranceSource.State != lookup.Checked {
		t.Errorf("%+v", got)
	}
	if got, _ := ForInch(7*25.4, Square); got.Source.State != lookup.FromMemory {
		t.Error("above 6-1/2 in the size is not marked")
	}
}

// DIN 6885-1: lengths as engineersedge.com prints the ends of each range;
// tolerances from memory.
func TestLengthsAndTolerances(t *testing.T) {
	t.Parallel()
	for _, c := range []struct {
		d, least, most, deeper float64
	}{
		{7, 6, 20, 0.1}, {9, 6, 36, 0.1}, {12, 8, 45, 0.1}, {17, 10, 56, 0.1},
		{22, 14, 70, 0.1}, {30, 18, 90, 0.2}, {38, 22, 110, 0.2}, {44, 28, 140, 0.2},
		{50, 36, 160, 0.2}, {58, 45, 180, 0.2}, {65, 50, 200, 0.2}, {75, 56, 220, 0.2},
		{85, 63, 250, 0.2}, {95, 70, 280, 0.2}, {110, 80, 320, 0.2}, {130, 90, 360, 0.2},
		{150, 100, 400, 0.3}, {170, 110, 400, 0.3}, {200, 125, 400, 0.3}, {230, 140, 400, 0.3},
		{260, 160, 400, 0.3}, {290, 180, 400, 0.3}, {330, 200, 400, 0.3}, {380, 220, 400, 0.3}, {440, 250, 400, 0.3}, {500, 280, 400, 0.3},
	} {
		k, err := For(c.d)
		if err != nil {
			t.Error(err)
			continue
		}
		l := k.LengthsMm()
		if l[0] != c.least || l[len(l)-1] != c.most || !slices.IsSorted(l) {
			t.Errorf("%v: lengths %v, want %v to %v", c.d, l, c.least, c.most)
		}
		if k.ShaftDeeperMm != c.deeper || k.HubDeeperMm != c.deeper {
			t.Errorf("%v: %+v", c.d, k)
		}
	}
	k, _ := For(38)
	if got := k.LengthsMm(); !slices.Equal(got, []float64{22, 25, 28, 32, 36, 40, 45, 50, 56, 63, 70, 80, 90, 100, 110}) {
		t.Error(got)
	}
	if k, _ = ForInch(25.4, Square); k.LengthsMm() != nil {
		t.Error("an inch key is sold by length")
	}
}

// The whole series of lengths, DIN 6885-1, as it stands in the code again (tables.csv has
// its source); the widest range covers only a part of it.
func TestLengthSeries(t *testing.T) {
	t.Parallel()
	all := Parallel{LeastLengthMm: 0, MostLengthMm: 400}.LengthsMm()
	want := []float64{6, 8, 10, 12, 14, 16, 18, 20, 22, 25, 28, 32, 36, 40, 45, 50, 56, 63, 70, 80, 90, 100, 110, 125, 140, 160, 180, 200, 220, 250, 280, 320, 360, 400}
	if !slices.Equal(all, want) {
		t.Error(all)
	}
}

// ISO 286-1, 10 mm: P9 −15/−51, N9 0/−36, JS9 ±18, H9 +36/0, D10 +98/+40, h9 0/−36 µm.
func TestWidths(t *testing.T) {
	t.Parallel()
	k, _ := For(38)
	for fit, want := range map[Fit][2][2]float64{
		Tight: {{-15, -51}, {-15, -51}}, Normal: {{0, -36}, {18, -18}}, Free: {{36, 0}, {98, 40}},
	} {
		w, err := k.Widths(fit)
		if err != nil || w.Shaft.UpperUm != want[0][0] || w.Shaft.LowerUm != want[0][1] || w.Hub.UpperUm != want[1][0] || w.Hub.LowerUm != want[1][1] {
			t.Errorf("%s: %+v, %v", fit, w, err)
		}
		if w.Key.UpperUm != 0 || w.Key.LowerUm != -36 {
			t.Errorf("key %+v", w.Key)
		}
	}
	var u *lookup.UnknownError
	if _, err := k.Widths("loose"); !errors.As(err, &u) || !slices.Equal(u.Known, []string{"tight", "normal", "free"}) {
		t.Errorf("loose: %v", err)
	}
	inch, _ := ForInch(25.4, Square)
	if _, err := inch.Widths(Normal); err == nil {
		t.Error("an inch key has ISO classes")
	}
}

// A cutter of 50 at a depth of 5 touches the crown over √(5·45) = 15 to each side.
func TestSledRunout(t *testing.T) {
	t.Parallel()
	if got, err := SledRunoutMm(50, 5); err != nil || !near(got, 15, 1e-12) {
		t.Error(got, err)
	}
	for _, c := range [][2]float64{{0, 1}, {10, 0}, {10, 5.01}, {math.NaN(), 1}, {10, math.NaN()}} {
		if _, err := SledRunoutMm(c[0], c[1]); err == nil {
			t.Errorf("%v is accepted", c)
		}
	}
}

func TestOutside(t *testing.T) {
	t.Parallel()
	for _, d := range []float64{6, 0, -1, 500.1, math.NaN(), math.Inf(1)} {
		var r *lookup.RangeError
		if _, err := For(d); !errors.As(err, &r) || r.Above != 6 || r.UpTo != 500 {
			t.Errorf("%v: %v", d, err)
		}
	}
	for _, d := range []float64{25.4 * 5 / 16, 9.01 * 25.4, math.NaN()} {
		if _, err := ForInch(d, Square); err == nil {
			t.Errorf("%v is accepted", d)
		}
	}
}

// A keyway is longer than its key by up to 0.2 to 28, 0.3 to 80 and 0.5 beyond (DIN 6885-1, from memory).
func TestLonger(t *testing.T) {
	t.Parallel()
	for long, want := range map[float64]float64{6: 0.2, 28: 0.2, 28.1: 0.3, 32: 0.3, 80: 0.3, 80.1: 0.5, 90: 0.5, 400: 0.5} {
		if got := LongerMm(long); got != want {
			t.Errorf("%g: %g, want %g", long, got, want)
		}
	}
}
