package stand_test

import (
	"testing"

	"centrepop/layout/assembly"
	"centrepop/layout/part"
	"centrepop/layout/plan"
	"centrepop/layout/stand"
	"centrepop/parts"
	"centrepop/parts/geom"
)

// TestOnAxis: a part of 40, a cone of 30 to 20 with a bore of 10, whose front lies 100 behind the origin of an axis, has what is
// 30 behind its front at 130, or the other way round at 70, wherever the axis points; a bar has no radii.
func TestOnAxis(t *testing.T) {
	t.Parallel()
	of := &part.Model{Numbered: &part.Numbered{Shape: &part.Shape{Sizes: &part.Sizes{Part: &parts.Part{}}}}, Out: &plan.PartPlan{Section: &plan.Section{
		LengthMm: 40, Outer: []plan.XY{{YMm: 30}, {XMm: 40, YMm: 20}}, Inner: []plan.XY{{YMm: 10}, {XMm: 40, YMm: 10}}}}}
	axis := assembly.Move(assembly.Vec{X: 7, Y: -3, Z: 11}).Of(assembly.Rotate(assembly.Vec{X: 0.6, Y: 0.8}, 37))
	for _, c := range []struct {
		turned, at, low, high, middle float64
		metal                         geom.Point
	}{{0, 130, 110, 130, 120, geom.Point{XMm: 140, YMm: 20}}, {180, 70, 70, 90, 80, geom.Point{XMm: 60, YMm: 20}}} {
		b := assembly.Body{Pose: axis.Of(assembly.Move(assembly.Vec{Z: -100})).Of(assembly.Rotate(assembly.AxisY, c.turned))}
		p := stand.On(axis, &b, of)
		if z, own := p.Z(30), p.Own(c.at); z != c.at || own != 30 {
			t.Errorf("turned %v: 30 behind the front lies at %v, want %v, and that at %v", c.turned, z, c.at, own)
		}
		if got := p.Span(geom.Span{FromMm: 10, ToMm: 30}); got.FromMm != c.low || got.ToMm != c.high || p.Middle() != c.middle || p.Whole().MidMm() != c.middle || p.Whole().LengthMm() != 40 {
			t.Errorf("turned %v: %v, %v about %v", c.turned, got, p.Whole(), p.Middle())
		}
		if inner, outer, ok := p.Radii(c.at); inner != 10 || outer != 22.5 || !ok || p.Metal()[1] != c.metal {
			t.Errorf("turned %v: %v to %v, %v", c.turned, inner, outer, p.Metal())
		}
	}
	of.Part.Kind = parts.BarPart
	p := stand.On(axis, &assembly.Body{Pose: axis}, of)
	if inner, outer, ok := p.Radii(5); inner != 0 || outer != 0 || ok || p.Metal() != nil {
		t.Error("a bar is round")
	}
}

// TestAlong: of two shafts on one line and one beside them, and of one far off, where nothing is tied to it, those on the line.
func TestAlong(t *testing.T) {
	t.Parallel()
	of := &part.Model{Numbered: &part.Numbered{Shape: &part.Shape{Sizes: &part.Sizes{Part: &parts.Part{Name: parts.Text{Value: "shaft"}}}}}}
	m := stand.Of(&parts.Job{}, []*part.Model{of}, nil)
	for n, at := range []assembly.Vec{{Z: 20}, {Z: -300}, {X: 2}, {X: stand.ApartMm}} {
		i := parts.Instance{Part: "shaft", Copy: n + 1}
		m.Of[i.ID()] = i
		m.Bodies = append(m.Bodies, assembly.Body{ID: i.ID(), Pose: assembly.Move(at)})
	}
	for _, axis := range []assembly.Vec{{}, {X: 0.9}} {
		line := m.Along(assembly.Move(axis))
		if len(line) != 2 || line.Find(parts.Instance{Part: "shaft", Copy: 2}).Z(0) != 300 || line.Find(parts.Instance{Part: "shaft", Copy: 3}) != nil {
			t.Errorf("along %v stand %v", axis, line)
		}
	}
	across := assembly.Rotate(assembly.AxisY, 90)
	if line := m.Along(across); len(line) != 0 {
		t.Errorf("across stand %v", line)
	}
}
