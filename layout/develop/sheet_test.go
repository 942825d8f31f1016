package develop

import (
	"math"
	"testing"

	"centrepop/parts/geom"

	"pgregory.net/rapid"
)

// labelled are the places of a label on a sheet.
func labelled(d Development, text string) (out []Point) {
	for _, l := range d.Labels {
		if l.Text == text {
			out = append(out, l.At)
		}
	}
	return out
}

// curvesOf are the curves of a name.
func curvesOf(d Development, name string) (out []Curve) {
	for _, c := range d.Curves {
		if c.Name == name {
			out = append(out, c)
		}
	}
	return out
}

// TestSaddleSheets: on both sheets of any saddle what is written, drawn and
// tabled agrees: the lines end at their ordinates, results are the extremes of
// the table, the hole's sheet is its box and the margin, the axis of the branch
// crosses where it is said to.
func TestSaddleSheets(t *testing.T) {
	t.Parallel()
	rapid.Check(t, func(t *rapid.T) {
		s := Saddle{
			MainDiameterMm: 219.1, MainWallMm: 8, BranchDiameterMm: 114.3, BranchWallMm: 6.3, AngleDeg: float64(rapid.IntRange(30, 150).Draw(t, "angle")), OffsetMm: float64(rapid.IntRange(-40, 40).Draw(t, "offset")),
			GapMm: 2, PaperMm: 0.1, SeamDeg: float64(rapid.IntRange(-12, 12).Draw(t, "seam")) * 30, TabMm: rapid.SampledFrom([]float64{0, 0.5, 10}).Draw(t, "tab"), MarginMm: rapid.SampledFrom([]float64{0, 25}).Draw(t, "margin"),
			Divisions: rapid.SampledFrom([]int{8, 24}).Draw(t, "divisions"),
		}
		p, err := s.Develop()
		if err != nil {
			t.Skip(err)
		}
		girth := math.Pi * 114.4
		left := p.Branch.Box().Min.XMm
		longest, shortest := math.Inf(-1), math.Inf(1)
		for i, o := range p.Ordinates {
			longest, shortest = math.Max(longest, o.FromCrossingMm), math.Min(shortest, o.FromCrossingMm)
			row := p.Branch.Tables[0].Rows[i]
			for j, want := range []float64{360 * float64(i) / float64(s.Divisions), o.XMm, o.XMm - left, o.YMm, o.FromCrossingMm, o.DropMm, o.BetweenDeg} {
				near(t, p.Branch.Tables[0].Columns[j].Name, row.Values[j], want, 1e-9)
			}
			var lines []Curve
			for _, c := range curvesOf(p.Branch, row.Label) {
				if want := map[bool]Role{true: Top, false: Division}[i == 0]; c.Role != want {
					t.Fatalf("line %d is %s", i, c.Role)
				}
				lines = append(lines, c)
			}
			at := onSheet(o.XMm, girth, left, left+girth)
			if labels := labelled(p.Branch, row.Label); len(at) != len(lines) || len(at) != len(labels) {
				t.Fatalf("line %d is drawn %d times and named %d times, want %d", i, len(lines), len(labels), len(at))
			} else {
				for k := range at {
					near(t, "named at", geom.Distance(labels[k], Point{XMm: at[k]}), 0, 1e-8)
					near(t, "from", geom.Distance(lines[k].Start, Point{XMm: at[k]}), 0, 1e-8)
					near(t, "to", geom.Distance(lines[k].Segments[0].To, Point{XMm: at[k], YMm: o.YMm}), 0, 1e-8)
				}
			}
		}
		margin := s.MarginMm
		if margin == 0 {
			margin = DefaultSaddleMarginMm
		}
		most, _ := p.Branch.Result("longest from axis crossing")
		for name, want := range map[string]float64{"girth on the sheet": girth, "square edge from axis crossing": most + margin} {
			got, ok := p.Branch.Result(name)
			if near(t, name, got, want, 1e-9); !ok {
				t.Fatalf("no %s", name)
			}
		}
		if deep, _ := p.Branch.Result("deepest drop"); deep < most-shortest-1e-9 {
			t.Fatalf("deepest drop %v, and %v by the ordinates", deep, most-shortest)
		}
		if most < longest-1e-9 || len(curvesOf(p.Branch, "tab")) != len(curvesOf(p.Branch, "seam")) || (len(curvesOf(p.Branch, "tab")) == 1) != (s.TabMm > 0) {
			t.Fatalf("longest %v of %v, %d tabs", most, longest, len(curvesOf(p.Branch, "tab")))
		}
		saddleHole(t, p.Hole, math.Min(margin, 12.5))
	})
}

// saddleHole checks the sheet for the hole in the main.
func saddleHole(t reporter, d Development, margin float64) {
	t.Helper()
	hole, edge := curvesOf(d, "hole")[0].Box(), curvesOf(d, "edge")[0].Box()
	near(t, "left of the hole", hole.Min.XMm-edge.Min.XMm, margin, 1e-9)
	near(t, "below the hole", hole.Min.YMm-edge.Min.YMm, margin, 1e-9)
	near(t, "right of the hole", edge.Max.XMm-hole.Max.XMm, margin, 1e-9)
	near(t, "above the hole", edge.Max.YMm-hole.Max.YMm, margin, 1e-9)
	for name, want := range map[string]float64{"hole width on the sheet": hole.Size().XMm, "hole length along the main": hole.Size().YMm} {
		got, _ := d.Result(name)
		near(t, name, got, want, 1e-9)
	}
	foot, _ := d.Result("branch axis meets the surface at y")
	axis, at := curvesOf(d, "branch axis"), labelled(d, "origin")[0]
	near(t, "axis", at.YMm, foot, 1e-9)
	near(t, "level axis", axis[0].Start.YMm, foot, 1e-9)
	near(t, "level axis begins", axis[0].Start.XMm, edge.Min.XMm, 1e-9)
	near(t, "level axis ends", axis[0].Segments[0].To.XMm, edge.Max.XMm, 1e-9)
	near(t, "upright axis", axis[1].Start.XMm, at.XMm, 1e-9)
	near(t, "upright axis begins", axis[1].Start.YMm, edge.Min.YMm, 1e-9)
	near(t, "upright axis ends", axis[1].Segments[0].To.YMm, edge.Max.YMm, 1e-9)
	if shown := len(curvesOf(d, "line facing the branch")) == 1; shown != (edge.Min.XMm < 0 && edge.Max.XMm > 0) {
		t.Fatalf("line facing the branch: %v in %v", shown, edge)
	}
	for i, r := range d.Tables[0].Rows {
		near(t, "position", r.Values[0], 360*float64(i)/float64(len(d.Tables[0].Rows)), 1e-9)
		near(t, "hole point", geom.Distance(labelled(d, r.Label)[0], Point{XMm: r.Values[1], YMm: r.Values[2]}), 0, 1e-9)
	}
}

// TestStripSheets: lines and labels of any strip lie where its table has them,
// the last line of a piece carries the lap, square to it.
func TestStripSheets(t *testing.T) {
	t.Parallel()
	rapid.Check(t, func(t *rapid.T) {
		w := rapid.Float64Range(100, 500).Draw(t, "width")
		tr := Transition{
			WidthMm: w, DepthMm: w * 0.8, DiameterMm: w * rapid.Float64Range(0.4, 1).Draw(t, "d/width"),
			Forming: Forming{HeightMm: w, Faceted: true, Divisions: 12, OffsetRightMm: w * rapid.Float64Range(-0.3, 0.3).Draw(t, "right"), OverlapMm: rapid.SampledFrom([]float64{0, 15}).Draw(t, "lap")},
		}
		pieces := rapid.SampledFrom([]int{1, 2, 4}).Draw(t, "pieces")
		p, err := tr.develop([]int{pieces})
		if err != nil {
			t.Skip(err)
		}
		if len(p.Pieces) != pieces {
			t.Fatalf("%d pieces", len(p.Pieces))
		}
		for _, d := range p.Pieces {
			rows := d.Tables[0].Rows
			for i, r := range rows {
				v := r.Values
				base, top := Point{XMm: v[0], YMm: v[1]}, Point{XMm: v[2], YMm: v[3]}
				found := false
				for _, at := range labelled(d, r.Label) {
					found = found || geom.Distance(at, base.Plus(top).Times(0.5)) < 1e-9
				}
				drawn := false
				for _, c := range curvesOf(d, r.Label) {
					drawn = drawn || geom.Distance(c.Start, base) < 1e-9 && geom.Distance(c.Segments[0].To, top) < 1e-9
				}
				if !found || drawn != (i > 0 && i < len(rows)-1) {
					t.Fatalf("line %s: named at its middle %v, drawn %v", r.Label, found, drawn)
				}
				near(t, "length", v[4], geom.Distance(base, top), 1e-9)
				next := []float64{0, 0, 0}
				if i+1 < len(rows) {
					u := rows[i+1].Values
					nextBase := Point{XMm: u[0], YMm: u[1]}
					next = []float64{geom.Distance(base, nextBase), geom.Distance(top, Point{XMm: u[2], YMm: u[3]}), geom.Distance(top, nextBase)}
				}
				for j, want := range next {
					near(t, d.Tables[0].Columns[5+j].Name, v[5+j], want, 1e-9)
				}
			}
			laps := curvesOf(d, "lap")
			if (len(laps) == 1) != (tr.OverlapMm > 0) {
				t.Fatalf("%d laps of %v", len(laps), tr.OverlapMm)
			}
			if len(laps) == 1 {
				pts, last := laps[0].Points(0), rows[len(rows)-1].Values
				base, top := Point{XMm: last[0], YMm: last[1]}, Point{XMm: last[2], YMm: last[3]}
				up := top.Minus(base)
				near(t, "lap begins", geom.Distance(pts[0], base), 0, 1e-9)
				near(t, "lap ends", geom.Distance(pts[3], top), 0, 1e-9)
				near(t, "lap is wide", geom.Distance(pts[0], pts[1]), 15, 1e-9)
				near(t, "lap is square", pts[1].Minus(pts[0]).Dot(up)/up.LengthMm(), 0, 1e-9)
				near(t, "lap is wide at the top", geom.Distance(pts[2], pts[3]), 15, 1e-9)
				if up.Cross(pts[1].Minus(base)) > 0 {
					t.Fatalf("the lap lies on the piece")
				}
			}
		}
	})
}
