package picture_test

import (
	"math"
	"slices"
	"strings"
	"testing"

	"centrepop/layout/plan"
	"centrepop/layout/words"
	"centrepop/templates/draw"
	"centrepop/templates/picture"
	"centrepop/templates/sheettest"
)

// sized is a stepped shaft with a bore, its diameters and lengths as a sheet has
// them.
func sized() *plan.PartPlan {
	p := sheettest.HousingPart()
	dia := func(from, to, r float64, inside bool, text, limits string) plan.Dimension {
		return plan.Dimension{Kind: plan.DiameterDim, FromMm: from, ToMm: to, RadiusMm: r, Inside: inside, Text: text, Limits: limits}
	}
	length := func(from, to float64, inside bool, text, limits string) plan.Dimension {
		return plan.Dimension{Kind: plan.LengthDim, FromMm: from, ToMm: to, Inside: inside, Text: text, Limits: limits}
	}
	p.Dimensions = []plan.Dimension{
		dia(0, 26, 60, false, "Ø120", "119.7 – 120.3"), dia(26, 56, 50, false, "Ø100 h6", "99.978 – 100.000"),
		dia(0, 25, 45, true, "Ø90 H7", "90.000 – 90.035"), dia(25, 56, 30, true, "Ø60", ""),
		length(0, 26, false, "26", ""), length(26, 56, false, "30", ""), length(0, 25, true, "25", ""), length(25, 28, true, "3", ""), length(28, 56, true, "28", ""),
		{Kind: plan.OverallDim, ToMm: 56, Text: "56", Limits: "55.7 – 56.3"},
	}
	return p
}

// TestDimensionsAreToScale: dimension lines and their arrows reach from one end of
// a length to the other, leaders end on their diameters, texts stand in the panel
// and not over each other.
func TestDimensionsAreToScale(t *testing.T) {
	t.Parallel()
	part := sized()
	for _, room := range [][2]float64{{190, 120}, {120, 110}, {150, 90}} {
		p := picture.Dimensioned(part, room[0], room[1])
		p.Draw = *p.Drawn()
		shapes, texts := drawn(t, &p.Draw)
		within(t, "dimensioned", p, texts)
		if p.Width > room[0]+1e-6 || p.Height > room[1]+1e-6 {
			t.Errorf("%g × %g in %v", p.Width, p.Height, room)
		}
		thin, hair := straight(shapes, draw.ThinMm), straight(shapes, draw.HairMm)
		metal := shapes[0].Path.Bounds() // from the inside of the bore to the outside
		k := metal.W() / 56
		axis := metal.Y1 - metal.H()*2 // 30 of 60 mm are metal at least
		x := func(z float64) float64 { return metal.X0 + z*k }
		if !slices.ContainsFunc(thin, func(l [4]float64) bool {
			return math.Abs(l[1]-axis) < 1e-6 && math.Abs(l[0]-metal.X0+4) < 1e-6 && math.Abs(l[2]-metal.X1-4) < 1e-6
		}) {
			t.Errorf("no axis at %g", axis)
		}
		tips := func(at, y, dir float64) bool { // an arrow head with its tip there, pointing that way
			return slices.ContainsFunc(shapes, func(s draw.Shape) bool {
				b := s.Path.Bounds()
				tip, tail := b.X0, b.X1
				if dir > 0 {
					tip, tail = b.X1, b.X0
				}
				return s.Fill == draw.Black && math.Abs(tip-at) < 1e-6 && math.Abs((b.Y0+b.Y1)/2-y) < 1e-6 && math.Abs(math.Abs(tip-tail)-2.2) < 1e-6 && b.H() < 1
			})
		}
		for _, d := range part.Dimensions {
			a, b := x(d.FromMm), x(d.ToMm)
			if d.Kind == plan.DiameterDim {
				surface := axis + d.RadiusMm*metal.H()/30
				if !slices.ContainsFunc(hair, func(l [4]float64) bool {
					return math.Abs(l[3]-surface) < 1e-6 && l[2] > a && l[2] < b && (l[1] < axis) == d.Inside
				}) {
					t.Errorf("no leader to %s at %g", d.Text, surface)
				}
				r := text(t, texts, d.Text)
				if d.Inside && r.Y1 > axis || !d.Inside && r.Y0 < metal.Y1 {
					t.Errorf("%s stands at %v, the part from %g to %g", d.Text, r, axis, metal.Y1)
				}
				if d.Limits != "" {
					if l := text(t, texts, d.Limits); l.Y1 > r.Y0+0.6 || math.Abs(l.X0+l.X1-r.X0-r.X1) > 1e-6 {
						t.Errorf("%s: limits at %v under %v", d.Text, l, r)
					}
				}
				continue
			}
			i := slices.IndexFunc(thin, func(l [4]float64) bool {
				return math.Abs(l[0]-a) < 1e-6 && math.Abs(l[2]-b) < 1e-6 && l[1] == l[3] && (d.Inside && l[1] < axis || !d.Inside && l[1] > metal.Y1)
			})
			if i < 0 {
				t.Errorf("no line for %s from %g to %g", d.Text, a, b)
				continue
			}
			y := thin[i][1]
			if roomy := b-a > 6.6; roomy != (tips(a, y, -1) && tips(b, y, 1)) {
				t.Errorf("%s, %.1f long, has arrows %v", d.Text, b-a, !roomy)
			} else if !roomy && (!has(thin, [4]float64{a - 0.8, y - 0.8, a + 0.8, y + 0.8}) || !has(thin, [4]float64{b - 0.8, y - 0.8, b + 0.8, y + 0.8})) {
				t.Errorf("%s has no strokes", d.Text)
			}
			for _, at := range []float64{a, b} {
				from, past := metal.Y1+0.8, y+1.2
				if d.Inside {
					from, past = axis-0.8, y-1.2
				}
				if !slices.ContainsFunc(hair, func(l [4]float64) bool {
					return math.Abs(l[0]-at) < 1e-6 && math.Abs(l[2]-at) < 1e-6 && math.Abs(l[1]-from) < 1e-6 && math.Abs(l[3]-past) < 1e-6
				}) {
					t.Errorf("%s: no extension line at %g from %g to %g", d.Text, at, from, past)
				}
			}
			// The text stands on its line, or under it in a chain below with one wider than its length; over its stretch where that is long enough.
			if !slices.ContainsFunc(texts, func(q sheettest.Placed) bool {
				r, item := q.Room(), q.Item.(draw.Text)
				return item.Content == d.Text && (math.Abs(item.YMm-y-0.9) < 1e-6 || d.Inside && math.Abs(item.YMm+draw.AscentMm*item.SizeMm-y+0.9) < 1e-6) && (r.Width() > b-a-2 || r.X0 > a && r.X1 < b)
			}) {
				t.Errorf("%s does not stand on its line at %g", d.Text, y)
			}
		}
	}
	few := *part
	few.Dimensions = slices.Clone(part.Dimensions[9:])
	for n := range 17 {
		few.Dimensions = append(few.Dimensions, plan.Dimension{Kind: plan.DiameterDim, FromMm: float64(n), ToMm: float64(n + 1), RadiusMm: 50, Text: "Ø100"})
		if picture.Crowded(&few) != (n >= 16) {
			t.Errorf("%d diameters are crowded: %v", n+1, n < 16)
		}
	}
}

// TestPlainRows: a row of labels without limits takes 3.2 mm less.
func TestPlainRows(t *testing.T) {
	t.Parallel()
	part := sized()
	full := picture.Dimensioned(part, 190, 80).Height
	for i, rows := range []float64{1, 2} {
		for k := range part.Dimensions {
			if d := &part.Dimensions[k]; d.Kind == plan.DiameterDim && d.Inside == (i > 0) {
				d.Limits = ""
			}
		}
		// The section takes what the labels leave of the height.
		if got := picture.Dimensioned(part, 190, 40).Height; math.Abs(full-80) > 1e-9 || math.Abs(got-(8.6*2-3.2*rows+7.5*3+1+14)) > 1e-9 {
			t.Errorf("%g rows without limits: %g and %g high", rows, full, got)
		}
	}
}

// TestFoldedIsToScale: the metal and the dimension lines beside it, 5 mm off, with
// their texts outside.
func TestFoldedIsToScale(t *testing.T) {
	t.Parallel()
	v := &plan.FoldView{Name: "cut from left to right", MinMm: plan.XY{XMm: -50, YMm: -3}, MaxMm: plan.XY{XMm: 50, YMm: 27},
		Metal: []plan.Contour{square(-50, -3, 50, 0), square(-50, 0, -47, 27)},
		Dims: []plan.FoldLength{
			{FromMm: plan.XY{XMm: -50, YMm: -3}, ToMm: plan.XY{XMm: 50, YMm: -3}, Out: plan.XY{YMm: -1}, Text: "100", Limits: "99.5 – 100.5"},
			{FromMm: plan.XY{XMm: -50, YMm: -3}, ToMm: plan.XY{XMm: -50, YMm: 27}, Out: plan.XY{XMm: -1}, Text: "30"},
			{FromMm: plan.XY{XMm: 50, YMm: -3}, ToMm: plan.XY{XMm: 50, YMm: 0}, Out: plan.XY{XMm: 1}, Text: "3", Limits: "2.9 – 3.1"},
			{FromMm: plan.XY{XMm: -50, YMm: 27}, ToMm: plan.XY{XMm: -47, YMm: 27}, Out: plan.XY{YMm: 1}, Text: "t"},
		},
		Turns: []plan.FoldTurn{{AtMm: plan.XY{XMm: -45, YMm: 5}, Text: "90° R2"}}}
	for _, size := range [][2]float64{{120, 100}, {180, 60}} {
		p := picture.Folded(v, size[0], size[1])
		shapes, texts := drawn(t, &p.Draw)
		within(t, "folded", p, texts)
		if p.Width > size[0]+1e-6 || p.Height > size[1]+1e-6 {
			t.Errorf("%g × %g in %v", p.Width, p.Height, size)
		}
		b := shapes[0].Path.Bounds()
		k := b.W() / 100
		at := func(q plan.XY) (x, y float64) { return b.X0 + (q.XMm+50)*k, b.Y0 + (q.YMm+3)*k }
		if c := shapes[1].Path.Bounds(); math.Abs(b.H()-3*k) > 1e-6 || math.Abs(c.W()-3*k) > 1e-6 || math.Abs(c.Y1-b.Y0-30*k) > 1e-6 || math.Abs(c.X0-b.X0) > 1e-6 {
			t.Errorf("metal %v and %v", b, c)
		}
		if math.Abs(b.X0+b.X1-p.Width) > 1e-6 {
			t.Errorf("the metal is not in the middle: %v of %g", b, p.Width)
		}
		thin, hair := straight(shapes, draw.ThinMm), straight(shapes, draw.HairMm)
		for _, d := range v.Dims {
			ax, ay := at(d.FromMm)
			bx, by := at(d.ToMm)
			ux, uy := d.Out.XMm, d.Out.YMm
			if !has(thin, [4]float64{ax + 5*ux, ay + 5*uy, bx + 5*ux, by + 5*uy}) {
				t.Errorf("no dimension line of %s", d.Text)
			}
			for _, q := range [][2]float64{{ax, ay}, {bx, by}} {
				if !has(hair, [4]float64{q[0] + 0.8*ux, q[1] + 0.8*uy, q[0] + 6*ux, q[1] + 6*uy}) || !has(thin, [4]float64{q[0] + 5*ux - 0.8, q[1] + 5*uy - 0.8, q[0] + 5*ux + 0.8, q[1] + 5*uy + 0.8}) {
					t.Errorf("%s: no extension line or stroke at %v", d.Text, q)
				}
			}
			i := slices.IndexFunc(texts, func(q sheettest.Placed) bool { return q.Item.(draw.Text).Content == d.Text })
			r := texts[i].Room()
			if d.Limits != "" {
				l := text(t, texts, d.Limits)
				if l.Y1 > r.Y0+0.7 {
					t.Errorf("%s: its limits at %v, the text at %v", d.Text, l, r)
				}
				r = draw.R(min(r.X0, l.X0), l.Y0, max(r.X1, l.X1), r.Y1)
			}
			mx, my := (ax+bx)/2+5*ux, (ay+by)/2+5*uy
			switch {
			case ux > 0 && r.X0 < mx || ux < 0 && r.X1 > mx || uy > 0 && r.Y0 < my || uy < 0 && r.Y1 > my:
				t.Errorf("%s at %v stands over its line at %g, %g", d.Text, r, mx, my)
			case ux != 0 && math.Abs((r.Y0+r.Y1)/2-my) > 2 || uy != 0 && math.Abs((r.X0+r.X1)/2-mx) > 1e-6:
				t.Errorf("%s at %v does not stand beside its line at %g, %g", d.Text, r, mx, my)
			}
		}
	}
}

func square(x0, y0, x1, y1 float64) plan.Contour {
	return plan.Contour(draw.R(x0, y0, x1, y1).Path().ToSVG())
}

// TestLowHead: what is known of a part stands beside its title where that has room,
// in two lines at most, and then the head is lower; each of its words is kept.
func TestLowHead(t *testing.T) {
	t.Parallel()
	for _, c := range []struct {
		title, stock string
		width        float64
		lines        int // beside the title
	}{{"Key bar", "flat 8", 190, 1}, {"Key bar", strings.Repeat("flat 28 × 6, saw cut, ", 3), 190, 2}, {"Key bar", strings.Repeat("flat 28 × 6, saw cut, ", 9), 190, 0},
		{strings.Repeat("Bar ", 9), "flat 8", 190, 0}, {"Key bar", "flat 8", 90, 0}} {
		part := &plan.PartPlan{Title: strings.TrimSpace(c.title), Material: "C45", StockText: c.stock, Overall: "250 × 28 × 6"}
		high, low := picture.Head(part, words.Writer{}, "make 1", c.width), picture.LowHead(part, words.Writer{}, "make 1", c.width)
		beside, all := 0, ""
		for _, item := range low.Draw.Items {
			if text, ok := item.(draw.Text); ok {
				all += " " + text.Content
				if text.SizeMm == draw.FactsMm && text.XMm > 0 && text.YMm > -low.Height+3 {
					beside++
				}
			}
		}
		if beside != c.lines || c.lines > 0 != (low.Height < high.Height-4) {
			t.Errorf("%s of %s: %d lines beside the title, %.1f of %.1f mm", c.title, c.stock, beside, low.Height, high.Height)
		}
		for word := range strings.FieldsSeq(c.title + " " + c.stock + " C45 make 250") {
			if !strings.Contains(all, word) {
				t.Errorf("%s of %s: no %q", c.title, c.stock, word)
			}
		}
	}
}

// TestShortAndFlatSections: a short turned part is drawn longer than it is, for the sake
// of its lengths, though not more than 1.8 times; the section of a plate takes little of
// the room of its faces.
func TestShortAndFlatSections(t *testing.T) {
	t.Parallel()
	size := func(part *plan.PartPlan, room float64) (w, h float64) {
		p := picture.Dimensioned(part, room, room)
		shapes, _ := drawn(t, p.Drawn())
		b := shapes[0].Path.Bounds()
		return b.W(), b.H()
	}
	short := sized()
	short.Section.MaxMm = 3 * short.Section.LengthMm
	w, h := size(short, 100)
	if longer := w / short.Section.LengthMm / (h / 30); longer < 1.2 || longer > 1.801 { // 30 of metal over the bore
		t.Errorf("drawn %.2f times as long as it is", longer)
	}
	long := sized()
	w, _ = size(long, 190)
	long.Section.Flat = true
	if flat, high := size(long, 190); flat > 26 || high > 26 || flat >= w {
		t.Errorf("a plate is drawn %g by %g, a turned part %g long", flat, high, w)
	}
}
