package develop

import (
	"errors"
	"math"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"centrepop/parts/geom"
)

// TestFrustumWorkedExamples: worked examples (d). The first row is a
// published geometry text example (duct reducer, inches, 7.12 and 11.39 in,
// 126.4°); the others are exact values of the same formulas.
func TestFrustumWorkedExamples(t *testing.T) {
	in := 25.4
	for _, row := range []struct{ large, small, height, slant, outer, inner, angle, arc, chord float64 }{
		{8 * in, 5 * in, 4 * in, 4.272 * in, 11.392 * in, 7.12 * in, 126.4044, 0, 0},
		{300, 150, 200, 213.600, 427.200, 213.600, 126.4044, 942.478, 762.641},
		{500, 400, 120, 130.000, 650.000, 520.000, 138.4615, 1570.796, 1215.521},
		{600, 100, 80, 262.488, 314.986, 52.498, 342.8727, 1884.956, 93.808},
	} {
		p, err := Frustum{LargeDiameterMm: row.large, SmallDiameterMm: row.small, HeightMm: row.height}.Develop()
		if err != nil {
			t.Fatal(err)
		}
		tol := 0.0006
		if row.arc == 0 {
			tol = 0.0005 * in
		}
		near(t, "slant", p.SlantMm, row.slant, tol)
		near(t, "outer", p.OuterRadiusMm, row.outer, tol)
		near(t, "inner", p.InnerRadiusMm, row.inner, tol)
		near(t, "angle", p.AngleDeg, row.angle, 0.00006)
		if row.arc != 0 {
			arc, _ := p.Piece.Result("outer arc of one piece")
			chord, _ := p.Piece.Result("outer chord of one piece")
			near(t, "arc", arc, row.arc, 0.0006)
			near(t, "chord", chord, row.chord, 0.0006)
			near(t, "chord as drawn", geom.Distance(p.Piece.Curves[0].Start, p.Piece.Curves[0].Segments[0].To), row.chord, 0.0006)
		}
	}
}

func TestFrustumPlate(t *testing.T) {
	// A 3-4-5 cone: half apex angle with cosine 0.8, so 10 mm plate moves the
	// diameter by 8 mm and the height not at all.
	for _, row := range []struct {
		inside      bool
		large, want float64
	}{{false, 208, 200}, {true, 192, 200}} {
		p, err := Frustum{LargeDiameterMm: row.large, SmallDiameterMm: row.large - 120, HeightMm: 80, ThicknessMm: 10, Inside: row.inside}.Develop()
		if err != nil {
			t.Fatal(err)
		}
		near(t, "slant", p.SlantMm, 100, 1e-9)
		middle, _ := p.Piece.Result("large diameter, middle of plate")
		near(t, "middle", middle, row.want, 1e-9)
		near(t, "angle", p.AngleDeg, 216, 1e-9)
	}
}

func TestFrustumGores(t *testing.T) {
	f := Frustum{LargeDiameterMm: 600, SmallDiameterMm: 300, HeightMm: 400, OverlapMm: 12, SheetWidthMm: 400, SheetHeightMm: 600}
	p, err := f.Develop()
	if err != nil {
		t.Fatal(err)
	}
	if !fitsSheet(p.Piece.Box().Size(), 400, 600) {
		t.Errorf("piece %v does not fit", p.Piece.Box())
	}
	near(t, "angles", p.PieceAngleDeg*float64(p.Gores), p.AngleDeg, 1e-9)
	if fewer := p; f.split(&fewer, p.Gores-1, p.Gores-1) == nil {
		t.Errorf("%d pieces were chosen although one less fits", p.Gores)
	}
	if _, err := (Frustum{LargeDiameterMm: 600, SmallDiameterMm: 300, HeightMm: 400, SheetWidthMm: 100, SheetHeightMm: 100}).Develop(); !errors.Is(err, ErrInput) {
		t.Errorf("sheet shorter than the slant: %v", err)
	}
}

func TestFrustumRefuses(t *testing.T) {
	for _, row := range []struct {
		f    Frustum
		want string
	}{
		{Frustum{LargeDiameterMm: 100, SmallDiameterMm: 100, HeightMm: 50}, "use the cylinder wrap"},
		{Frustum{LargeDiameterMm: 100, SmallDiameterMm: 120, HeightMm: 50}, "swap"},
		{Frustum{LargeDiameterMm: 100, SmallDiameterMm: 80}, "height is 0"},
		{Frustum{LargeDiameterMm: 100, SmallDiameterMm: -80, HeightMm: 50}, "small diameter"},
		{Frustum{LargeDiameterMm: 100, HeightMm: 50}, "small diameter is 0"},
		{Frustum{LargeDiameterMm: math.NaN(), SmallDiameterMm: 80, HeightMm: 50}, "large diameter"},
		{Frustum{LargeDiameterMm: 100, SmallDiameterMm: 80, HeightMm: math.Inf(1)}, "height"},
		{Frustum{LargeDiameterMm: 100, SmallDiameterMm: 5, HeightMm: 50, ThicknessMm: 10}, "too thick"},
		{Frustum{LargeDiameterMm: 600, SmallDiameterMm: 100, HeightMm: 80, OverlapMm: 20}, "so small that it is cut in pieces"},
		{Frustum{LargeDiameterMm: 50000, SmallDiameterMm: 49999.9, HeightMm: 1e5}, "so slight"},
	} {
		_, err := row.f.Develop()
		if !errors.Is(err, ErrInput) || !strings.Contains(err.Error(), row.want) {
			t.Errorf("%s: got %v", row.want, err)
		}
	}
}

// TestFrustumProperties: the drawn sector has the lateral area of the cone,
// its arcs have the girths of the ends, and it is its own mirror image.
func TestFrustumProperties(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		f := Frustum{
			LargeDiameterMm: rapid.Float64Range(20, 3000).Draw(t, "D"),
			HeightMm:        rapid.Float64Range(5, 3000).Draw(t, "h"),
		}
		f.SmallDiameterMm = f.LargeDiameterMm * rapid.Float64Range(0.05, 0.95).Draw(t, "d/D")
		p, err := f.Develop()
		if err != nil {
			t.Fatal(err)
		}
		if gores := rapid.IntRange(1, 6).Draw(t, "gores"); gores > 1 {
			if err := f.split(&p, gores, gores); err != nil {
				t.Fatal(err)
			}
		}
		n, edge := float64(p.Gores), p.Piece.Curves[0]
		r1, r2 := f.LargeDiameterMm/2, f.SmallDiameterMm/2
		lateral := math.Pi * (r1 + r2) * math.Sqrt(f.HeightMm*f.HeightMm+(r1-r2)*(r1-r2))
		near(t, "area", n*edge.AreaMm2(), lateral, 1e-7*lateral)
		near(t, "area by formula", p.AreaMm2, lateral, 1e-9*lateral)
		rows := p.Piece.Tables[0].Rows
		for i, r := range rows {
			v := r.Values
			on, in := Point{XMm: v[1], YMm: v[2]}, Point{XMm: v[3], YMm: v[4]}
			near(t, "outer", on.LengthMm(), p.OuterRadiusMm, 1e-9*p.OuterRadiusMm)
			near(t, "inner", in.LengthMm(), p.InnerRadiusMm, 1e-9*p.OuterRadiusMm)
			near(t, "division", geom.Distance(on, in), p.SlantMm, 1e-8*p.OuterRadiusMm)
			near(t, "chord", v[5], geom.Distance(on, edge.Start), 1e-7*p.OuterRadiusMm)
			if i > 0 {
				w := rows[i-1].Values
				before := Point{XMm: w[1], YMm: w[2]}
				if before.Cross(on) <= 0 {
					t.Errorf("division %d does not follow anticlockwise", i)
				}
			}
		}
		outer := edge.Segments[0]
		inner := edge.Segments[2]
		near(t, "outer girth", n*outer.lengthMm(edge.Start), math.Pi*f.LargeDiameterMm, 1e-8*f.LargeDiameterMm)
		near(t, "inner girth", n*inner.lengthMm(edge.Segments[1].To), math.Pi*f.SmallDiameterMm, 1e-8*f.LargeDiameterMm)
		near(t, "edge", geom.Distance(outer.To, edge.Segments[1].To), p.SlantMm, 1e-8*p.OuterRadiusMm)
		near(t, "mirror", p.Piece.Box().Min.XMm, -p.Piece.Box().Max.XMm, 1e-9*p.OuterRadiusMm)
	})
}
