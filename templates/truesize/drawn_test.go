package truesize

import (
	"fmt"
	"math"
	"slices"
	"testing"

	"centrepop/layout/plan"
	"centrepop/parts"
	"centrepop/parts/golden"
	"centrepop/templates/draw"
	"centrepop/templates/sheettest"
)

var letter = draw.Frame{WidthMm: 215.9, HeightMm: 279.4, Name: "Letter"}

// square is a closed rectangle as a contour.
func square(x0, y0, x1, y1 float64) plan.Contour {
	return plan.Contour(fmt.Sprintf("M%g %gH%gV%gH%gZ", x0, y0, x1, y1, x0))
}

// line is a straight line as a contour.
func line(x0, y0, x1, y1 float64) plan.Contour {
	return plan.Contour(fmt.Sprintf("M%g %gL%g %g", x0, y0, x1, y1))
}

// patternParts is a tube with a wrap for either end, a fold and a branch.
func patternParts() *plan.PartPlan {
	wrap := func(name, title string, scale, width float64) plan.Development {
		left, length := -80.0, 160.0
		return plan.Development{
			Name: name, Title: title, Kind: plan.WrapPattern, Edge: "at the front face", Beyond: "to the back", Copies: 1,
			WrapMm: length, WidthMm: width, ScaleMm: scale, MinMm: plan.XY{XMm: left}, MaxMm: plan.XY{XMm: left + length + 12, YMm: width},
			Lines: []plan.PatternLine{
				{Name: "edge", Role: "edge", Path: square(left, 0, left+length, width)}, {Name: "tab", Role: "tab", Path: square(left+length, 0, left+length+12, width)},
				{Name: "seam", Role: "seam", Path: line(left+length, 0, left+length, width)}, {Name: "TOP", Role: "top", Path: line(0, 0, 0, width)}, {Name: "90°", Role: "division", Path: line(40, 0, 40, width)},
			},
			Marks: []plan.PatternMark{{Name: "port", N: 1, CentreMm: plan.XY{XMm: 40, YMm: width / 2}, DiameterMm: 8}, {Name: "pin", N: 2, CentreMm: plan.XY{XMm: -40, YMm: width / 2}}},
		}
	}
	fold := plan.Development{
		Name: "fold", Title: "Hopper side", Kind: plan.FoldPattern, Copies: 2, MinMm: plan.XY{XMm: -60, YMm: -10}, MaxMm: plan.XY{XMm: 60, YMm: 70},
		Lines: []plan.PatternLine{
			{Name: "edge", Role: "edge", Path: "M-60 -10H50V70H-40Z"}, {Name: "tab", Role: "tab", Path: "M50 -10L60 -8L60 68L50 70"},
			{Name: "bend 1", Role: "fold", Path: line(-30, 70, -30, -10), Text: "bend 1, up 30°"}, {Name: "bend 2", Role: "fold", Path: line(-50, 30, 50, 50), Text: "bend 2, up 12°"}, {Name: "bend 3", Role: "fold", Path: line(0, -10, 0, 70)},
			{Name: "middle", Role: "division", Path: line(20, -10, 20, 70), Text: "middle"}, {Name: "seam", Role: "seam", Path: line(50, -10, 50, 70)},
		},
		Marks: []plan.PatternMark{{Name: "corner", N: 1, CentreMm: plan.XY{XMm: 30, YMm: 10}}}, Labels: []plan.PatternLabel{{Text: "A", AtMm: plan.XY{XMm: 10, YMm: 60}}},
	}
	branch := plan.Development{
		Name: "branch", Title: "Branch end", Kind: plan.BranchPattern, Edge: "square across the branch", Beyond: "to the main", Copies: 1, NoTemplate: "a mitre does it",
		MinMm: plan.XY{XMm: -50}, MaxMm: plan.XY{XMm: 50, YMm: 30},
		Lines:  []plan.PatternLine{{Name: "edge", Role: "edge", Path: "M-50 0H50V10L0 30L-50 10Z"}, {Name: "TOP", Role: "top", Path: line(0, 0, 0, 30), Text: "TOP"}},
		Labels: []plan.PatternLabel{{Text: "0°", AtMm: plan.XY{XMm: 0, YMm: 30}}, {Text: "180°", AtMm: plan.XY{XMm: 50, YMm: 10}}},
	}
	return &plan.PartPlan{Name: "tube", Title: "Barrel tube", Kind: "tube", Quantity: 1, Developments: []plan.Development{wrap("wrap-1", "Wrap, front end", 160.0/360, 48), wrap("wrap-2", "Wrap, back end", -160.0/360, 30), fold, branch}}
}

// smallRound has a scale so fine that it shows every 15 degrees.
func smallRound() *plan.PartPlan {
	p := patternParts()
	p.Name, p.Title = "pin", "Hinge pin"
	d := &p.Developments[0]
	d.ScaleMm, d.WrapMm, d.WidthMm = 60.0/360, 60, 18
	d.MinMm, d.MaxMm = plan.XY{XMm: -30}, plan.XY{XMm: 42, YMm: 18}
	d.Lines = []plan.PatternLine{{Name: "edge", Role: "edge", Path: square(-30, 0, 30, 18)}, {Name: "tab", Role: "tab", Path: square(30, 0, 42, 18)}, {Name: "TOP", Role: "top", Path: line(0, 0, 0, 18)}}
	d.Marks = nil
	p.Developments = p.Developments[:1]
	return p
}

// TestDrawn holds every template sheet of some parts made by hand against what
// was looked at: each text with its place, each shape with its extent.
func TestDrawn(t *testing.T) {
	t.Parallel()
	for _, c := range []struct {
		name  string
		units parts.Units
		paper draw.Frame
		which Policy
		apart bool
		list  []*plan.PartPlan
	}{
		{"shared", parts.Millimetres, a4, All, false, []*plan.PartPlan{sheettest.HousingPart(), patternParts(), smallRound()}},
		{"apart", parts.Millimetres, a4, Useful, true, []*plan.PartPlan{sheettest.FlangePart(), patternParts()}},
		{"inches", parts.Inches, letter, All, true, []*plan.PartPlan{sheettest.CrowdedPart(), patternParts(), sheettest.PlatePart()}},
		{"tiles", parts.Millimetres, a4, All, false, []*plan.PartPlan{sheettest.RingPart(320)}},
	} {
		pl := sheettest.JobOf("Tried", c.units, c.list...)
		chapters, err := sheetsOf(pl, c.paper, c.which)
		if c.apart {
			chapters, err = apartOf(pl, c.paper, c.which)
		}
		if err != nil {
			t.Fatal(err)
		}
		var all []*draw.Sheet
		for _, k := range chapters {
			all = append(all, k.Sheets...)
		}
		doc := &draw.Document{Title: c.name}
		for i, s := range all {
			s.Close(i+1, len(all))
			page := draw.Page{WidthMm: s.Frame.WidthMm, HeightMm: s.Frame.HeightMm, Label: fmt.Sprint(i+1, " ", s.Part, ", ", s.Name), Drawing: s.Draw}
			for _, start := range s.Starts {
				page.Bookmarks = append(page.Bookmarks, draw.Bookmark{Title: start})
			}
			doc.Pages = append(doc.Pages, page)
		}
		golden.Whole(t, "testdata/"+c.name+".txt", []byte(sheettest.Record(t, doc)))
	}
}

// TestPatternRefused: a pattern without an edge, without extent, or with a path
// that cannot be read names part and pattern.
func TestPatternRefused(t *testing.T) {
	t.Parallel()
	for name, spoil := range map[string]func(*plan.Development){
		"no edge":   func(d *plan.Development) { d.Lines = d.Lines[3:] },
		"no width":  func(d *plan.Development) { d.MaxMm.XMm = d.MinMm.XMm },
		"no height": func(d *plan.Development) { d.MaxMm.YMm = d.MinMm.YMm },
		"bad path":  func(d *plan.Development) { d.Lines[0].Path = "M0 0 Q" },
	} {
		part := patternParts()
		spoil(&part.Developments[0])
		if _, err := templatesOf(sheettest.JobOf("Tried", parts.Millimetres, part), part, All); err == nil {
			t.Errorf("%s is drawn", name)
		}
	}
	for name, spoil := range map[string]func(*plan.Face){
		"no width": func(f *plan.Face) { f.MaxMm.XMm = f.MinMm.XMm }, "no height": func(f *plan.Face) { f.MaxMm.YMm = f.MinMm.YMm },
		"endless": func(f *plan.Face) { f.MaxMm.XMm = math.Inf(1) }, "endless up": func(f *plan.Face) { f.MaxMm.YMm = math.Inf(1) },
		"no outline": func(f *plan.Face) { f.Outline = "" }, "bad outline": func(f *plan.Face) { f.Outline = "M0 0 Q" },
	} {
		part := sheettest.FlangePart()
		spoil(part.Faces[0])
		if _, err := templatesOf(sheettest.JobOf("Tried", parts.Millimetres, part), part, All); err == nil {
			t.Errorf("a face with %s is drawn", name)
		}
	}
}

// TestProfileMeasured measures a cutting file: the page is a millimetre larger
// all round, contours and lines lie where the plan has them, a pop mark on a
// small hole stays within it, the arrow's barbs are a quarter of its length.
func TestProfileMeasured(t *testing.T) {
	t.Parallel()
	p := &plan.Profile{
		Part: "plate", Title: "Plate", MinMm: plan.XY{XMm: -50, YMm: -30}, MaxMm: plan.XY{XMm: 50, YMm: 30},
		Contours: []plan.CutContour{{N: 1, Name: "outline", Path: square(-50, -30, 50, 30)}},
		Lines:    []plan.CutLine{{Name: "fold", Path: line(-20, -30, -20, 30)}},
		Marks:    []plan.CutMark{{Name: "large", AtMm: plan.XY{XMm: 10, YMm: 5}, DrillMm: 8}, {Name: "small", AtMm: plan.XY{XMm: -10, YMm: 5}, DrillMm: 3}, {Name: "none", AtMm: plan.XY{XMm: 0, YMm: -20}}},
		TopLine:  []plan.XY{{XMm: 0, YMm: 30}, {XMm: 0, YMm: 22}},
	}
	for _, held := range []bool{false, true} {
		p.Held = held
		page, err := Profile(p)
		if err != nil {
			t.Fatal(err)
		}
		foot, wide := 0.0, 102.0
		if held {
			foot = 9
			wide = max(wide, draw.TextWidth(draw.NotReleased, 6, true)+2)
		}
		if page.WidthMm != wide || page.HeightMm != 62+foot {
			t.Errorf("held %v: a page of %v × %v", held, page.WidthMm, page.HeightMm)
		}
		var got []string
		for _, it := range sheettest.Flatten(t, &page.Drawing, 0, 0, nil) {
			switch item := it.Item.(type) {
			case draw.Shape:
				b := item.Path.Bounds()
				got = append(got, fmt.Sprintf("%v %g: %.4g %.4g to %.4g %.4g", item.Layer == draw.LayerCut, item.WidthMm, b.X0+it.DX, b.Y0+it.DY-foot, b.X1+it.DX, b.Y1+it.DY-foot))
			case draw.Text:
				if !held || item.XMm != 1 || item.YMm != 1 || item.SizeMm != 6 || !item.Bold || item.Content != draw.NotReleased {
					t.Errorf("held %v: %+v", held, item)
				}
				got = append(got, "text")
			}
		}
		want := []string{
			"true 0.1: 1 1 to 101 61", "false 0.1: 31 1 to 31 61", "false 0.1: 59 34 to 63 38", "false 0.1: 39.8 34.8 to 42.2 37.2", "false 0.1: 49 9 to 53 13",
			"false 0.1: 50 53 to 52 61", // barbs of 2, half as wide either way
		}
		if held {
			want = append(want, "text")
		}
		if !slices.Equal(got, want) {
			t.Errorf("held %v: %q\nwant %q", held, got, want)
		}
	}
	for name, spoil := range map[string]func(p *plan.Profile){
		"open": func(p *plan.Profile) { p.Contours[0].Path = line(0, 0, 5, 5) }, "contour": func(p *plan.Profile) { p.Contours[0].Path = "M0 0 Q" }, "line": func(p *plan.Profile) { p.Lines[0].Path = "M0 0 Q" },
	} {
		q := *p
		q.Contours, q.Lines = slices.Clone(p.Contours), slices.Clone(p.Lines)
		spoil(&q)
		if page, err := Profile(&q); err == nil || page != nil {
			t.Errorf("%s: %v", name, err)
		}
	}
	if doc := ProfileDocument(&plan.Profile{Title: "Plate", Revision: "C", Side: "front face up"}, &draw.Page{}, "2025-03-14"); doc.Title != "Plate, revision C" || doc.Subject != "Profile for the cutter, 1:1, front face up" || len(doc.Pages) != 1 {
		t.Errorf("%+v", doc)
	}
}
