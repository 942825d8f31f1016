package assembly

import (
	"fmt"
	"math"
	"path/filepath"
	"slices"
	"testing"

	"centrepop/parts/geom"
	"centrepop/parts/golden"
)

// TestWorked: what is answered about the solids of the other tests, alone and in pairs,
// as text. CENTREPOP_UPDATE=1 writes testdata/worked.txt anew: read the difference. That
// the answers are right is checked by the other tests, by the formula of each body.
func TestWorked(t *testing.T) {
	t.Parallel()
	var out []string
	say := func(format string, args ...any) { out = append(out, fmt.Sprintf(format, args...)) }
	loops := func(list [][]geom.Point) string {
		area, long := 0.0, 0.0
		for _, l := range list {
			for i, p := range l {
				q := l[(i+1)%len(l)]
				area, long = area+(p.XMm*q.YMm-q.XMm*p.YMm)/2, long+math.Hypot(q.XMm-p.XMm, q.YMm-p.YMm)
			}
		}
		return fmt.Sprintf("%d loops, %.2f mm², %.2f mm", len(list), area, long)
	}
	slanted := Frame(Vec{3, -2, 4}, Vec{0.2, -0.3, 1}.Unit(), AxisY)
	var bodies []Body
	for i, s := range shapesByFormula {
		b := at(s.name, s.solid, Move(Vec{X: 9 * float64(i%4), Y: 14 * float64(i/4), Z: 5 * float64(i%3)}).Of(Rotate(Vec{1, 2, 3}.Unit(), 17*float64(i))))
		b.DensityKgM3 = 7850
		bodies = append(bodies, b)
		bulk, kg := s.solid.Bulk(), 0.0
		kg, _, _ = b.Mass()
		say("%s: box %.3f to %.3f, %.1f mm³ about %.3f within %.2f, %.4f kg, %d points of its surface", s.name, s.solid.Box().Low, s.solid.Box().High, bulk.VolumeMm3, bulk.Centre, bulk.ErrorMm3, kg, len(s.solid.Surface(4)))
		say(" cut level: %s; slanting: %s; across: %s", loops(b.Section(Move(Vec{Z: 7}), 0.05)), loops(b.Section(slanted, 0.05)), loops(b.Section(Frame(Vec{X: 11}, AxisX, AxisZ), 0.05)))
		say(" %.4f and %.4f off, along a line %.3f", b.Dist(Vec{20, 10, 5}), b.Dist(Vec{-70, 30, 90}), b.Spans(Vec{-200, 8, 6}, AxisX))
		lines, long := Look([]Body{b}, slanted, 1), 0.0
		for _, l := range lines {
			for k := 1; k < len(l.Points); k++ {
				long += math.Hypot(l.Points[k].XMm-l.Points[k-1].XMm, l.Points[k].YMm-l.Points[k-1].YMm)
			}
		}
		say(" seen as %d lines of %.1f mm", len(lines), long)
	}
	for i := range bodies {
		a, b := &bodies[i], &bodies[(i+1)%len(bodies)]
		if o, ok := PairOverlap(a, b, Usual.allowing(0.1)); ok {
			say("%s in %s: %.3f deep", b.ID, a.ID, o.DepthMm)
		}
		away := *b
		away.Pose = Move(Vec{X: 130, Y: 20}).Of(b.Pose)
		mm, ok := Clearance(a, &away, 60, 0.4)
		say("%s and %s moved: %.2f apart %v, near %v", a.ID, b.ID, mm, ok, Near(a, &away, 30, 4))
		for _, g := range Gaps(a, &away, AxisX) {
			say(" gap of %.2f over %.0f mm²", g.Mm, g.AreaMm2)
		}
		way := Way{Back: AxisX, FarMm: 300, FinestMm: 5, Tolerance: Usual}
		for _, k := range slices.Collect(way.Blocks([]Body{*a}, []Body{away}, nil)) {
			say(" %s is stopped by %s at %.2f, free at %.2f", k.Mover, k.Fixed, k.FirstMm, k.LastMm)
		}
	}
	few := []Body{still("plate", plate()), at("housing", housing(), Move(Vec{X: 30, Y: -5})), at("post", Of(Cuboid(Vec{-8, -8, -80}, Vec{8, 8, -12})), Move(Vec{X: 60})), at("pin", Of(Cylinder(6, -80, -12)), Move(Vec{X: -70, Y: 30})), at("leg", Of(Hexagon(20, -80, -12)), Move(Vec{X: -70, Y: -35}))}
	for i := range few {
		few[i].DensityKgM3 = 7850
	}
	g := Together(few)
	say("together %.4f kg about %.3f, from %.2f to %.2f", g.MassKg, g.Centre, g.Box.Low, g.Box.High)
	if s, ok := Standing(few, AxisZ); ok {
		say("stands on %.2f, %.3f within, toward %.3f, tips at %.3f°", s.Feet, s.MarginMm, s.Toward, s.TipDeg)
	}
	if s, ok := Slings(few, AxisZ, AxisX, 45); ok {
		say("slung at %.2f on %v", s.Points, s.IDs)
	}
	for _, c := range Crossings(few, Vec{-150, 2, 20}, AxisX) {
		say("crosses %s from %.2f to %.2f", c.ID, c.FromMm, c.ToMm)
	}
	for _, o := range []Opening{{At: Vec{60, 0, 70}, Along: Vec{Z: -1}, RadiusMm: 20, ReachMm: 200}, {At: Vec{-150, 0, 20}, Along: AxisX, RadiusMm: 9, ReachMm: 300}} {
		free, covers := o.Look(few)
		say("%.3f of the opening is free; %.4v", free, covers)
	}
	for _, o := range Overlaps(few, []Allowed{{"plate", "housing", 50}}, Usual) {
		say("%s in %s: %.3f deep", o.B, o.A, o.DepthMm)
	}
	golden.Whole(t, filepath.Join("testdata", "worked.txt"), golden.Text(out))
}
