package develop

import (
	"errors"
	"fmt"
	"math"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"centrepop/parts/geom"
)

// flatLines returns the marked lines of all pieces as drawn: the ends of each
// row of the line tables.
func flatLines(p StripPattern) [][]Row {
	var out [][]Row
	for _, d := range p.Pieces {
		out = append(out, d.Tables[0].Rows)
	}
	return out
}

// checkFolding compares every triangulation edge of a faceted pattern with
// the same edge in space: lines, sides along base and top, and diagonals.
func checkFolding(t reporter, p StripPattern, size float64) {
	t.Helper()
	k := 0
	for _, rows := range flatLines(p) {
		for i, row := range rows {
			v, line := row.Values, p.Lines[k%len(p.Lines)]
			base, top := Point{XMm: v[0], YMm: v[1]}, Point{XMm: v[2], YMm: v[3]}
			near(t, "line "+row.Label, geom.Distance(base, top), line.Base.DistanceMm(line.Top), 1e-7*size)
			near(t, "length column", v[4], line.TrueMm, 1e-7*size)
			if i+1 < len(rows) {
				w, next := rows[i+1].Values, p.Lines[(k+1)%len(p.Lines)]
				nextBase, nextTop := Point{XMm: w[0], YMm: w[1]}, Point{XMm: w[2], YMm: w[3]}
				near(t, "base edge", geom.Distance(base, nextBase), line.Base.DistanceMm(next.Base), 1e-7*size)
				near(t, "top edge", geom.Distance(top, nextTop), line.Top.DistanceMm(next.Top), 1e-7*size)
				near(t, "diagonal", geom.Distance(top, nextBase), line.Top.DistanceMm(next.Base), 1e-7*size)
				near(t, "other diagonal", geom.Distance(base, nextTop), line.Base.DistanceMm(next.Top), 1e-6*size)
				k++
			}
		}
	}
	if k != len(p.Lines) {
		t.Errorf("pieces have %d spans, the part %d", k, len(p.Lines))
	}
}

func drawOblique(t *rapid.T) Oblique {
	o := Oblique{
		BaseDiameterMm: rapid.Float64Range(50, 2000).Draw(t, "base"),
		Forming:        Forming{Divisions: rapid.IntRange(6, 40).Draw(t, "n"), SeamDeg: rapid.Float64Range(-360, 360).Draw(t, "seam"), Faceted: true},
	}
	o.TopDiameterMm = o.BaseDiameterMm * rapid.Float64Range(0.2, 1.8).Draw(t, "top/base")
	o.HeightMm = o.BaseDiameterMm * rapid.Float64Range(0.2, 3).Draw(t, "height/base")
	o.OffsetTopMm = o.BaseDiameterMm * rapid.Float64Range(-0.6, 0.6).Draw(t, "up/base")
	o.OffsetRightMm = o.BaseDiameterMm * rapid.Float64Range(0.01, 0.6).Draw(t, "right/base")
	return o
}

func TestObliqueFolding(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		o := drawOblique(t)
		pieces := rapid.IntRange(1, 4).Draw(t, "pieces")
		p, err := o.develop([]int{pieces})
		if err != nil {
			t.Fatal(err)
		}
		if len(p.Lines) != o.Divisions || len(p.Pieces) != pieces {
			t.Fatalf("%d lines, %d pieces", len(p.Lines), len(p.Pieces))
		}
		checkFolding(t, p, o.BaseDiameterMm)
		turn := 0.0
		for _, l := range p.Lines {
			if l.BendDeg <= 0 {
				t.Errorf("line %s bends by %g°, a cone bends away from the viewer everywhere", l.Label, l.BendDeg)
			}
			turn += l.BendDeg
		}
		// The outward normals run once round a convex curve on the sphere,
		// which is at most a great circle long.
		if turn > 360+1e-6 {
			t.Errorf("bends add up to %g°", turn)
		}
	})
}

// TestObliqueIsFrustum: without offset and rolled, the pattern is the exact
// sector: area, edge, and the chord over the outer corners.
func TestObliqueIsFrustum(t *testing.T) {
	// Worked examples (d), rows 2 and 3: outer radius, angle, outer chord.
	for _, row := range []struct{ base, top, height, slant, chord, area float64 }{
		{300, 150, 200, 213.600, 762.641, math.Pi * 225 * 213.6},
		{500, 400, 120, 130.000, 1215.521, math.Pi * 450 * 130},
	} {
		p, err := Oblique{BaseDiameterMm: row.base, TopDiameterMm: row.top, Forming: Forming{HeightMm: row.height, Divisions: 16}}.Develop()
		if err != nil {
			t.Fatal(err)
		}
		rows := p.Pieces[0].Tables[0].Rows
		first, last := rows[0].Values, rows[len(rows)-1].Values
		near(t, "edge", first[4], row.slant, 0.0006)
		near(t, "chord", geom.Distance(Point{XMm: first[0], YMm: first[1]}, Point{XMm: last[0], YMm: last[1]}), row.chord, 0.02)
		near(t, "area", p.AreaMm2, row.area, 3e-5*row.area)
		near(t, "seam matches", first[4], last[4], 1e-9)
	}
}

// TestObliqueApex develops an offset cone the other way: by triangles from
// its apex, with the law of cosines, and compares the ends.
func TestObliqueApex(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		o := drawOblique(t)
		o.TopDiameterMm = 0.5 * o.BaseDiameterMm
		p, err := o.Develop()
		if err != nil {
			t.Fatal(err)
		}
		// Similar triangles: the apex lies at twice the height and offset.
		apex := Space{2 * o.OffsetRightMm, 2 * o.OffsetTopMm, 2 * o.HeightMm}
		sum := 0.0
		for i, l := range p.Lines {
			next := p.Lines[(i+1)%len(p.Lines)]
			a, b, c := apex.DistanceMm(l.Base), apex.DistanceMm(next.Base), l.Base.DistanceMm(next.Base)
			sum += math.Acos((a*a + b*b - c*c) / (2 * a * b))
		}
		a := apex.DistanceMm(p.Lines[0].Base)
		rows := p.Pieces[0].Tables[0].Rows
		first, last := rows[0].Values, rows[len(rows)-1].Values
		got := geom.Distance(Point{XMm: first[0], YMm: first[1]}, Point{XMm: last[0], YMm: last[1]})
		near(t, "across the seam corners", got, 2*a*math.Abs(math.Sin(sum/2)), 1e-5*o.BaseDiameterMm)
	})
}

func TestObliqueOffsetSide(t *testing.T) {
	// Offset to 3 o'clock leans the top that way: the line at 3 o'clock is
	// the shortest for a smaller top, and lies right of the seam at 12.
	p, err := Oblique{BaseDiameterMm: 400, TopDiameterMm: 200, Forming: Forming{HeightMm: 300, OffsetRightMm: 100, Faceted: true}}.Develop()
	if err != nil {
		t.Fatal(err)
	}
	near(t, "3 o'clock", p.Lines[3].TrueMm, 300, 1e-9)
	near(t, "9 o'clock", p.Lines[9].TrueMm, math.Hypot(300, 200), 1e-9)
	near(t, "6 o'clock against TOP", p.Lines[6].TrueMm, p.Lines[0].TrueMm, 1e-9)
	rows := p.Pieces[0].Tables[0].Rows
	if !(rows[3].Values[0] > rows[0].Values[0]) {
		t.Error("3 o'clock is not right of TOP")
	}
	near(t, "middle line upright", rows[6].Values[0], rows[6].Values[2], 1e-9)
}

// TestObliqueBends: the normals of a right cone run round a circle of the
// sphere whose girth is 360° times the cosine of the half apex angle, here 0.8.
func TestObliqueBends(t *testing.T) {
	for _, faceted := range []bool{false, true} {
		p, err := Oblique{BaseDiameterMm: 240, TopDiameterMm: 120, Forming: Forming{HeightMm: 80, Divisions: 180, Faceted: faceted}}.Develop()
		if err != nil {
			t.Fatal(err)
		}
		turn := 0.0
		for _, l := range p.Lines {
			turn += l.BendDeg
		}
		near(t, "whole turn", turn, 288, 0.05)
		near(t, "one line", p.Lines[7].BendDeg, 1.6, 0.001)
	}
}

func TestObliqueSheet(t *testing.T) {
	o := Oblique{BaseDiameterMm: 600, TopDiameterMm: 60, Forming: Forming{HeightMm: 500, OffsetTopMm: 120, OverlapMm: 10, SheetWidthMm: 700, SheetHeightMm: 500}}
	p, err := o.Develop()
	if err != nil {
		t.Fatal(err)
	}
	if len(p.Pieces) < 2 {
		t.Fatalf("%d pieces for a girth of 1885 mm on 700 mm", len(p.Pieces))
	}
	for _, d := range p.Pieces {
		if !fitsSheet(d.Box().Size(), 700, 500) {
			t.Errorf("%v does not fit", d.Box())
		}
	}
	if _, err := o.develop([]int{len(p.Pieces) - 1}); !errors.Is(err, ErrInput) {
		t.Errorf("one piece less: %v", err)
	}
}

func TestTransitionFolding(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		w := rapid.Float64Range(50, 2000).Draw(t, "width")
		tr := Transition{
			WidthMm: w, DepthMm: w * rapid.Float64Range(0.3, 3).Draw(t, "depth/width"), DiameterMm: w * rapid.Float64Range(0.2, 2).Draw(t, "d/width"),
			Forming: Forming{HeightMm: w * rapid.Float64Range(0.5, 3).Draw(t, "height/width"), Faceted: true, Divisions: 4 * rapid.IntRange(1, 9).Draw(t, "n/4"), OffsetTopMm: w * rapid.Float64Range(-0.5, 0.5).Draw(t, "up"), OffsetRightMm: w * rapid.Float64Range(-0.5, 0.5).Draw(t, "right"), SeamDeg: 90 * float64(rapid.IntRange(-4, 4).Draw(t, "seam"))},
		}
		p, err := tr.develop([]int{[]int{1, 2, 4}[rapid.IntRange(0, 2).Draw(t, "pieces")]})
		if err != nil {
			t.Fatal(err)
		}
		checkFolding(t, p, w)
		base, top := 0.0, 0.0
		for _, rows := range flatLines(p) {
			for _, r := range rows {
				base, top = base+r.Values[5], top+r.Values[6]
			}
		}
		n := float64(tr.Divisions)
		near(t, "edge of rectangle", base, 2*(tr.WidthMm+tr.DepthMm), 1e-7*w)
		near(t, "edge of polygon", top, n*tr.DiameterMm*math.Sin(math.Pi/n), 1e-7*w)
		for _, l := range p.Lines {
			if strings.HasPrefix(l.Label, "side") {
				near(t, l.Label+" stays flat", l.BendDeg, 0, 1e-4)
			}
		}
	})
}

// TestTransitionByHand: a 200 × 200 square to a circle of 100, 120 high, on
// one axis: flats have the height √(120² + 50²) = 130, and the middle line of
// each corner the length √(120² + (100√2 - 50)²).
func TestTransitionByHand(t *testing.T) {
	p, err := Transition{WidthMm: 200, DepthMm: 200, DiameterMm: 100, Forming: Forming{HeightMm: 120, Divisions: 16, SeamDeg: 180}}.Develop()
	if err != nil {
		t.Fatal(err)
	}
	found := map[string]bool{}
	for _, l := range p.Lines {
		switch l.Label {
		case "side 1", "side 3":
			near(t, l.Label, l.TrueMm, 130, 1e-9)
			found[l.Label] = true
		case "A2", "D2":
			near(t, l.Label, l.TrueMm, math.Hypot(120, 100*math.Sqrt2-50), 1e-9)
			found[l.Label] = true
		case "A0", "A4":
			near(t, l.Label, l.TrueMm, math.Hypot(130, 100), 1e-9)
			found[l.Label] = true
		}
	}
	if len(found) != 6 {
		t.Fatalf("found only %v", found)
	}
	near(t, "seam side", p.Lines[0].Base.YMm, -100, 1e-12)
	// Clockwise from 6 o'clock comes the corner at 7:30, on the left.
	near(t, "first corner x", p.Lines[1].Base.XMm, -100, 1e-12)
	// Flats: 4·200·130/2; corners by the check table's area in space.
	d := p.Pieces[0]
	check := d.Tables[1].Rows
	near(t, "top", check[1].Values[0], math.Pi*100, 0.002)
	if d.Curves[0].AreaMm2() < 52000 {
		t.Errorf("area %g is less than that of the flats", d.Curves[0].AreaMm2())
	}
	box := d.Box()
	sum := 0.0
	for _, r := range d.Tables[0].Rows {
		sum += r.Values[0] + r.Values[2]
	}
	near(t, "mirror image of itself", sum, float64(len(d.Tables[0].Rows))*box.Size().XMm, 1e-6)
}

// TestTransitionOffsetSide: the circle moved towards TOP and 3 o'clock brings
// the flats there nearer to upright, the opposite ones lean.
func TestTransitionOffsetSide(t *testing.T) {
	p, err := Transition{WidthMm: 200, DepthMm: 200, DiameterMm: 100, Forming: Forming{HeightMm: 120, OffsetTopMm: 50, OffsetRightMm: 20, Faceted: true}}.Develop()
	if err != nil {
		t.Fatal(err)
	}
	want := map[string]float64{
		// From the middle of the side to the circle: depth 120, across the
		// side 50 less the shift towards it, along the side the other shift.
		"side 1": math.Sqrt(120*120 + 0*0 + 20*20), "side 2": math.Sqrt(120*120 + 30*30 + 50*50),
		"side 3": math.Sqrt(120*120 + 100*100 + 20*20), "side 4": math.Sqrt(120*120 + 70*70 + 50*50),
	}
	seen := 0
	for _, l := range p.Lines {
		if w, ok := want[l.Label]; ok {
			near(t, l.Label, l.TrueMm, w, 1e-9)
			seen++
		}
	}
	if seen != 4 {
		t.Errorf("%d sides", seen)
	}
}

func TestTransitionPieces(t *testing.T) {
	tr := Transition{WidthMm: 500, DepthMm: 400, DiameterMm: 300, Forming: Forming{HeightMm: 350, OverlapMm: 15, ThicknessMm: 2, SheetWidthMm: 900, SheetHeightMm: 700}}
	p, err := tr.Develop()
	if err != nil {
		t.Fatal(err)
	}
	if len(p.Pieces) != 2 {
		t.Errorf("%d pieces, want 2", len(p.Pieces))
	}
	middle, _ := p.Pieces[0].Result("width, middle of plate")
	near(t, "width", middle, 498, 1e-9)
	area := 0.0
	for _, d := range p.Pieces {
		area += d.Curves[0].AreaMm2()
		if !fitsSheet(d.Box().Size(), 900, 700) {
			t.Errorf("%v does not fit", d.Box())
		}
	}
	near(t, "area", area, p.AreaMm2, 1e-6)
}

func TestFoldRoles(t *testing.T) {
	for _, faceted := range []bool{false, true} {
		p, err := Transition{WidthMm: 200, DepthMm: 200, DiameterMm: 100, Forming: Forming{HeightMm: 120, Faceted: faceted}}.Develop()
		if err != nil {
			t.Fatal(err)
		}
		folds := 0
		for _, c := range p.Pieces[0].Curves {
			if c.Role == Fold {
				folds++
			}
		}
		// Four corners of four lines each, none in the middle of a side.
		if want := map[bool]int{true: 16}[faceted]; folds != want {
			t.Errorf("faceted %v: %d fold lines, want %d", faceted, folds, want)
		}
	}
}

func TestCrossesItself(t *testing.T) {
	square := []Point{{XMm: 0, YMm: 0}, {XMm: 10, YMm: 0}, {XMm: 10, YMm: 10}, {XMm: 0, YMm: 10}}
	bow := []Point{{XMm: 0, YMm: 0}, {XMm: 10, YMm: 10}, {XMm: 10, YMm: 0}, {XMm: 0, YMm: 10}}
	if crossesItself(square) || !crossesItself(bow) {
		t.Error("square or bow tie judged wrongly")
	}
	// A sector of 352° with a wide lap overlaps; in two pieces it does not.
	o := Oblique{BaseDiameterMm: 600, TopDiameterMm: 100, Forming: Forming{HeightMm: 60, OverlapMm: 30}}
	if _, err := o.Develop(); err == nil || !strings.Contains(err.Error(), "more pieces") {
		t.Errorf("lap over the edge: %v", err)
	}
	if _, err := o.develop([]int{2}); err != nil {
		t.Error(err)
	}
}

func TestStripRefuses(t *testing.T) {
	nan := math.NaN()
	type developer interface{ Develop() (StripPattern, error) }
	ob := func(change func(*Oblique)) developer {
		o := Oblique{BaseDiameterMm: 400, TopDiameterMm: 200, Forming: Forming{HeightMm: 300, OffsetTopMm: 50}}
		change(&o)
		return o
	}
	tr := func(change func(*Transition)) developer {
		v := Transition{WidthMm: 400, DepthMm: 300, DiameterMm: 200, Forming: Forming{HeightMm: 250}}
		change(&v)
		return v
	}
	for i, row := range []struct {
		d    developer
		want string
	}{
		{ob(func(o *Oblique) { o.BaseDiameterMm = nan }), "base diameter"},
		{ob(func(o *Oblique) { o.BaseDiameterMm = 0 }), "base diameter"},
		{ob(func(o *Oblique) { o.TopDiameterMm = -1 }), "top diameter"},
		{ob(func(o *Oblique) { o.TopDiameterMm = 0 }), "top diameter is 0"},
		{ob(func(o *Oblique) { o.HeightMm = 0 }), "height"},
		{ob(func(o *Oblique) { o.HeightMm = 1e9 }), "height"},
		{ob(func(o *Oblique) { o.OffsetTopMm = math.Inf(-1) }), "offset to TOP"},
		{ob(func(o *Oblique) { o.OffsetRightMm = 1e7 }), "offset to the right"},
		{ob(func(o *Oblique) { o.TopDiameterMm, o.OffsetTopMm = 400, 0 }), "use the cylinder wrap"},
		{ob(func(o *Oblique) { o.TopDiameterMm, o.OffsetTopMm = 400.0003, 0.0003 }), "use the cylinder wrap"}, // to a millionth of it, 0.0004
		{ob(func(o *Oblique) { o.ThicknessMm = 120 }), "too thick"},
		{ob(func(o *Oblique) { o.SheetWidthMm, o.SheetHeightMm = 50, 50 }), "the sheet is"},
		{ob(func(o *Oblique) { o.SheetWidthMm, o.SheetHeightMm = 0.5, 5000 }), "the sheet is"},
		{ob(func(o *Oblique) { o.SeamDeg = nan }), "seam angle"},
		{tr(func(v *Transition) { v.WidthMm = nan }), "width"},
		{tr(func(v *Transition) { v.DepthMm = -3 }), "depth"},
		{tr(func(v *Transition) { v.DiameterMm = 0 }), "diameter"},
		{tr(func(v *Transition) { v.HeightMm = 0 }), "height"},
		{tr(func(v *Transition) { v.SeamDeg = 45 }), "middle of a side"},
		{tr(func(v *Transition) { v.ThicknessMm = 150 }), "too thick"},
		{tr(func(v *Transition) { v.OverlapMm = -1 }), "overlap"},
		{tr(func(v *Transition) { v.SheetWidthMm, v.SheetHeightMm = 100, 100 }), "the sheet is"},
	} {
		p, err := row.d.Develop()
		if !errors.Is(err, ErrInput) || !strings.Contains(fmt.Sprint(err), row.want) {
			t.Errorf("%d %s: got %v", i, row.want, err)
		}
		if len(p.Pieces) != 0 {
			t.Errorf("%d: an error and a pattern", i)
		}
	}
}

// TestRolledTurnsAreAlike: in a corner that lies alike about its middle the turns from
// line to line are alike from both ends, and none is left for the flat after it.
func TestRolledTurnsAreAlike(t *testing.T) {
	p, err := Transition{WidthMm: 340, DepthMm: 340, DiameterMm: 300, Forming: Forming{HeightMm: 120, ThicknessMm: 2, Divisions: 16, SeamDeg: 180}}.Develop()
	if err != nil {
		t.Fatal(err)
	}
	turn := map[string]float64{}
	for _, l := range p.Lines {
		turn[l.Label] = l.BendDeg
	}
	near(t, "A0 as A3", turn["A0"], turn["A3"], 1e-6)
	near(t, "A1 as A2", turn["A1"], turn["A2"], 1e-6)
	near(t, "A4", turn["A4"], 0, 1e-6)
	near(t, "B0 as A0", turn["B0"], turn["A0"], 1e-6)
}

// A rolled surface is unrolled in 720 flat strips or more, as many in each division: 103 in each of 7, and two where one would make 719.
func TestFineStrips(t *testing.T) {
	for divisions, want := range map[int]int{7: 103, 24: 30, 719: 2, 720: 1, 721: 1} {
		if got := (&Forming{}).fine(divisions); got != want {
			t.Errorf("%d in each of %d divisions", got, divisions)
		}
	}
	if got := (&Forming{Faceted: true}).fine(7); got != 1 {
		t.Errorf("%d where it is folded", got)
	}
}
