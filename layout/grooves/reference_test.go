package grooves

import (
	"math"
	"testing"

	"centrepop/parts/golden"
)

// record is one row of a reference table.
type record struct {
	t     *testing.T
	cells golden.Row
}

func (r record) number(column string) float64 {
	r.t.Helper()
	return r.cells.Number(r.t, column)
}

// records reads a reference table, which must have at least least rows.
func records(t *testing.T, name string, least int) (out []record) {
	t.Helper()
	for _, row := range golden.Table(t, "../../testdata/reference/"+name, least) {
		out = append(out, record{t, row})
	}
	return out
}

func near(a, b, tol float64) bool { return math.Abs(a-b) <= tol }

// Rows printed by ring sellers, and some that are only remembered.
func TestRingReference(t *testing.T) {
	t.Parallel()
	for _, r := range records(t, "rings.csv", 60) {
		d := r.number("nominal_mm")
		got, err := RingFor(d, r.cells["kind"] == "inside")
		if err != nil {
			t.Error(err)
			continue
		}
		g := got.Groove
		if g.NominalMm != r.number("groove_mm") || g.UpperUm != r.number("groove_upper_um") || g.LowerUm != r.number("groove_lower_um") ||
			got.Width.NominalMm != r.number("width_mm") || got.EdgeMm != r.number("edge_mm") || got.Width.Class != "H13" {
			t.Errorf("%s %v: %+v, want %v", r.cells["kind"], d, got, r.cells)
		}
	}
}

// DIN 76-1 as a lathe control's manual prints it.
func TestThreadReference(t *testing.T) {
	t.Parallel()
	for _, r := range records(t, "thread_undercuts.csv", 36) {
		inside := r.cells["kind"] == "inside"
		got, err := ThreadEndFor(20, r.number("pitch_mm"), inside, false)
		class := map[bool]string{false: "h13", true: "H13"}[inside]
		if err != nil || !near(got.FloorMm, 20+r.number("floor_from_diameter_mm"), 1e-9) || got.MostMm != r.number("most_mm") ||
			got.RadiusMm != r.number("radius_mm") || got.AngleDeg != 30 || got.Floor.Class != class {
			t.Errorf("%v: %+v, %v", r.cells, got, err)
		}
	}
}

// DIN 509 as another control's manual prints it, at the end of each range.
func TestReliefReference(t *testing.T) {
	t.Parallel()
	for _, r := range records(t, "reliefs.csv", 5) {
		for _, form := range []Form{FormE, FormF} {
			got, err := ReliefFor(r.number("diameter_mm"), form, false)
			if err != nil || got.DepthMm != r.number("depth_mm") || got.WidthMm != r.number("width_mm") || got.RadiusMm != r.number("radius_mm") || got.RunoutDeg != 15 {
				t.Errorf("%s: %v: %+v, %v", form, r.cells, got, err)
			}
			face, slope := r.number("face_depth_mm"), 8.0
			if form == FormE {
				face, slope = 0, 0
			}
			if got.FaceDepthMm != face || got.FaceRunoutDeg != slope {
				t.Errorf("%s: %v: %+v", form, r.cells, got)
			}
		}
	}
}

// The grooves of the trade table by section.
func TestORingReference(t *testing.T) {
	t.Parallel()
	for _, r := range records(t, "oring_grooves.csv", 17) {
		ring := ORing{InsideMm: 50, SectionMm: r.number("section_mm")}
		for _, c := range []struct {
			seat         Seat
			moving       bool
			depth, width string
			deeper       float64
			wider        float64
		}{
			{Piston, false, "still_mm", "width_mm", 0.05, 0.25}, {Piston, true, "moving_mm", "width_mm", 0.05, 0.25},
			{Rod, true, "moving_mm", "width_mm", 0.05, 0.25}, {FaceInside, false, "face_depth_mm", "face_width_mm", 0.1, 0.2},
		} {
			got, err := ring.In(c.seat, 60, c.moving)
			if err != nil || got.DepthMm != r.number(c.depth) || got.WidthMm != r.number(c.width) || got.RadiusMm != r.number("radius_mm") ||
				got.DeeperMm != c.deeper || got.WiderMm != c.wider {
				t.Errorf("%s: %v: %+v, %v", c.seat, r.cells, got, err)
			}
		}
	}
}
