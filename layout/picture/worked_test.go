package picture_test

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"centrepop/layout/layouttest"
	"centrepop/layout/machine"
	"centrepop/layout/picture"
	"centrepop/layout/plan"
	"centrepop/parts/geom"
	"centrepop/parts/golden"
)

// TestWorked: what is drawn of the small jobs of layout/joint/testdata/worked, as text: slings, what is
// held, the sections of each step, and the machine as a whole. Of a contour its area, its
// length and its room stand there, and of lines how many and how long they are.
// CENTREPOP_UPDATE=1 writes testdata/worked anew: read the difference.
func TestWorked(t *testing.T) {
	layouttest.Whole(t, func(b *strings.Builder, m *machine.Machine, pl *plan.Plan) {
		all := picture.Draw(m)
		for _, j := range pl.Joints {
			fmt.Fprintf(b, "joint %s %.3f kg\n", j.Name, j.MassKg)
			if j.Lift != nil {
				fmt.Fprintf(b, " lift %s", golden.Text(j.Lift))
			}
			if j.Hold != nil {
				fmt.Fprintf(b, " hold %s", golden.Text(j.Hold))
			}
			for _, p := range j.Pictures {
				fmt.Fprintf(b, " picture %s %.2f to %.2f, centres %.2f, arrows %v\n", p.Cut, p.MinMm, p.MaxMm, p.Centres, p.Arrows)
				cuts(b, p.Shapes)
			}
		}
		if all != nil {
			fmt.Fprintf(b, "beside %q, floating %q, passing %q, bought %q, by hand %q\n", all.Beside, all.Floating, all.Passing, all.Bought, all.ByHand)
			for _, a := range all.Anchors {
				fmt.Fprintf(b, "anchor %.1f at %.2f, from %.2f\n", a.DiameterMm, a.AtMm, a.FromMm)
			}
			for _, v := range []plan.View{all.Front, all.End, all.Top} {
				n, mm, room := measured(v.Lines, false)
				fmt.Fprintf(b, "view %.2f to %.2f: %d lines of %.1f mm in %s, centres %.2f, behind %s", v.MinMm, v.MaxMm, n, mm, room, v.Centres, golden.Text(v.Behind))
				cuts(b, v.Shapes)
			}
		}
	})
}

func cuts(b *strings.Builder, list []plan.Shape) {
	for _, s := range list {
		_, mm, room := measured(s.Loops, true)
		area := 0.0
		for _, loop := range s.Loops {
			for i, p := range loop {
				q := loop[(i+1)%len(loop)]
				area += (p.XMm*q.YMm - q.XMm*p.YMm) / 2
			}
		}
		fmt.Fprintf(b, "  %s %d %s new %v, named %v: %d loops, %.1f mm², %.1f mm, in %s\n", s.Kind, s.Item, s.Title, s.New, s.Named, len(s.Loops), area, mm, room)
	}
}

// measured are how many lines there are, their length together, and their room.
func measured(lines [][]plan.XY, closed bool) (n int, mm float64, room string) {
	low, high := plan.XY{XMm: math.Inf(1), YMm: math.Inf(1)}, plan.XY{XMm: math.Inf(-1), YMm: math.Inf(-1)}
	for _, line := range lines {
		for i, p := range line {
			low.XMm, low.YMm, high.XMm, high.YMm = min(low.XMm, p.XMm), min(low.YMm, p.YMm), max(high.XMm, p.XMm), max(high.YMm, p.YMm)
			if i > 0 {
				mm += math.Hypot(p.XMm-line[i-1].XMm, p.YMm-line[i-1].YMm)
			}
		}
		if last := len(line) - 1; closed {
			mm += math.Hypot(line[0].XMm-line[last].XMm, line[0].YMm-line[last].YMm)
		}
	}
	return len(lines), geom.Clean(mm), fmt.Sprintf("%.2f to %.2f", low, high)
}
