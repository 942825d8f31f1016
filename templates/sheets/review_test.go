package sheets

import (
	"math"
	"slices"
	"strings"
	"testing"

	"centrepop/layout/plan"
	"centrepop/layout/review"
	"centrepop/parts"
	"centrepop/templates/draw"
	"centrepop/templates/sheettest"
)

// A row of the review counts what is found of its part and names its cut file;
// what is of no part is counted with the joints.
func TestReviewRows(t *testing.T) {
	t.Parallel()
	pl := &plan.Plan{Parts: []*plan.PartPlan{
		{Name: "lid", Title: "Lid", Operations: []plan.Operation{{Machine: "Cutter"}}}, {Name: "peg", Title: "Peg", Operations: []plan.Operation{{Machine: "Saw"}}}}}
	found := []review.Finding{
		{Part: "lid", Severity: review.Stop}, {Part: "lid", Severity: review.Check}, {Part: "lid", Severity: review.Check, Accepted: true},
		{Part: "weld", Severity: review.Note}, {Severity: review.Note}, {Part: "lid", OfJoint: true, Severity: review.Note}}
	want := [][]string{{"Lid", "lid", "2", "1", "–", ""}, {"Peg", "", "–", "–", "–", ""}, {"Joints and job", "", "–", "–", "3", ""}}
	if got := partRows(pl, found).Rows; !slices.EqualFunc(got, want, slices.Equal) {
		t.Errorf("%q, want %q", got, want)
	}
}

// A row of what is worth knowing says the rule once and every place, numbered; what is open or
// accepted is none of it. The rows of the parts count each place.
func TestNotesTogether(t *testing.T) {
	t.Parallel()
	note := review.Finding{Part: "weld", Severity: review.Note, Code: "pierce", What: "a", Rule: "r; s", Source: "a table", Fix: "f"}
	open, agreed := note, note
	open.Severity, agreed.Accepted = review.Stop, true
	note.With = []review.Finding{{Part: "lid", What: "b", Numbers: "3 mm"}}
	pl := &plan.Plan{Parts: []*plan.PartPlan{{Name: "lid", Title: "Lid"}}}
	got := Notes(pl, []review.Finding{open, agreed, note})[0].Rows
	if want := [][]string{{draw.Bold("1 pierce.") + " r; s (a table): f", draw.Bold("weld:") + " a; " + draw.Bold("Lid:") + " b, 3 mm"}}; !slices.EqualFunc(got, want, slices.Equal) {
		t.Errorf("%q, want %q", got, want)
	}
	if got := Notes(pl, []review.Finding{open, agreed}); got != nil {
		t.Errorf("nothing to note: %v", got)
	}
	if got := partRows(pl, []review.Finding{note}).Rows[0][4]; got != "1" {
		t.Errorf("%s notes of the lid", got)
	}
}

// An open finding of holes shows them filled on their face, one of a step points at it
// in the section, one of a joint shows its step; one of nothing that is made has no picture.
func TestPlaceOfAFinding(t *testing.T) {
	t.Parallel()
	part := sheettest.FlangePart()
	pl := sheettest.JobOf("Pug mill", parts.Millimetres, part)
	group := part.Faces[0].Groups[0]
	discs := func(d draw.Drawing) int {
		n := 0
		for _, item := range d.Items {
			if s, ok := item.(draw.Shape); ok && s.Fill == draw.Black && s.Path.Bounds().W() < 4 {
				n++
			}
		}
		return n
	}
	bare := discs(placePicture(pl, review.Finding{Part: part.Name, Feature: part.Faces[0].Groups[1].Name}))
	if got := discs(placePicture(pl, review.Finding{Part: part.Name, Feature: group.Name})) - bare; got != group.Count-part.Faces[0].Groups[1].Count {
		t.Errorf("%d more holes filled than of the other group of %d, want those of %d", got, part.Faces[0].Groups[1].Count, group.Count)
	}
	if d := placePicture(pl, review.Finding{Part: part.Name, Feature: "bore"}); !slices.Contains(allTexts(d), "1") {
		t.Errorf("the bore has no number in %q", allTexts(d))
	}
	for i := range part.Features {
		if part.Features[i].Name == "bore" {
			part.Features[i].Name = "main bore" // as sheets say the name main-bore
		}
	}
	if d := placePicture(pl, review.Finding{Part: part.Name, Feature: "main-bore"}); !slices.Contains(allTexts(d), "1") {
		t.Errorf("a name of two words has no picture: %q", allTexts(d))
	}
	square := plan.Shape{Kind: plan.ShapePart, New: true, Loops: [][]plan.XY{{{}, {XMm: 400}, {XMm: 400, YMm: 100}, {YMm: 100}}}}
	pl.Joints = append(pl.Joints, &plan.JointPlan{Name: "drawn", Pictures: []plan.Picture{{Shapes: []plan.Shape{square}, MaxMm: plan.XY{XMm: 400, YMm: 100}}}})
	if d := placePicture(pl, review.Finding{Part: "drawn"}); len(d.Items) == 0 {
		t.Error("a joint's step has no picture")
	} else if got := d.Items[len(d.Items)-1].(draw.Shape).Path.Bounds(); math.Abs(got.W()-(placeMm-2)) > 1e-6 || math.Abs(got.H()-(placeMm-2)/4) > 1e-6 {
		t.Errorf("the step is %v", got)
	}
	if d := placePicture(pl, review.Finding{Part: "weld", Feature: group.Name}); len(d.Items) > 0 {
		t.Error("nothing has a picture")
	}
	// A joint that could not be worked out shows the holes that it names first, a part without a place itself.
	if got, want := discs(placePicture(pl, review.Finding{Part: "weld", Meets: [2]parts.JointRef{{Part: part.Name, Feature: group.Name}}})), bare+group.Count-part.Faces[0].Groups[1].Count; got != want {
		t.Errorf("a joint's first end: %d filled, want %d", got, want)
	}
	if d := placePicture(pl, review.Finding{Part: part.Name}); len(d.Items) == 0 || discs(d) != bare-part.Faces[0].Groups[1].Count {
		t.Errorf("the whole part: %d items", len(d.Items))
	}
	if d := placePicture(pl, review.Finding{Part: part.Name, Feature: "main-bore-front"}); !slices.Contains(allTexts(d), "1") {
		t.Errorf("the edge of a step has no picture: %q", allTexts(d))
	}
}

// A hole on the top of a bar of 300, 50 from its middle, is filled where it is along the width of the picture less 2.
func TestPlaceOnABar(t *testing.T) {
	t.Parallel()
	bar := &plan.PartPlan{Name: "bar", Bar: &plan.BarPlan{LengthMm: 300, WidthMm: 60, DepthMm: 40, Outline: "M-150 -30L150 -30L150 30L-150 30Z",
		Holes: []plan.BarHole{{Group: "a", Side: "top", XMm: 50, DiameterMm: 10}, {Group: "b", Side: "top", XMm: -50, DiameterMm: 10}, {Group: "c", Side: "front"}}}}
	pl := sheettest.JobOf("Frame", parts.Millimetres, bar)
	var filled, open []float64
	var edge draw.Rect
	d := placePicture(pl, review.Finding{Part: "bar", Feature: "a"})
	for _, item := range d.Items {
		if s, ok := item.(draw.Shape); ok && s.Path.Bounds().W() < 4 {
			if b := s.Path.Bounds(); s.Fill == draw.Black {
				filled = append(filled, (b.X0+b.X1)/2)
			} else {
				open = append(open, (b.X0+b.X1)/2)
			}
		} else if ok {
			b := s.Path.Bounds()
			edge = draw.R(b.X0, b.Y0, b.X1, b.Y1)
		}
	}
	if math.Abs(edge.Width()-30) > 1e-6 || math.Abs(edge.Height()-leastSideMm) > 1e-6 {
		t.Errorf("the side of the bar is drawn in %v", edge)
	}
	if len(filled) != 1 || math.Abs(filled[0]-21) > 1e-6 || len(open) != 1 || math.Abs(open[0]-11) > 1e-6 || !slices.Contains(allTexts(d), "top, left end at the left") {
		t.Errorf("%v filled, %v open, %q", filled, open, allTexts(d))
	}
	if d := placePicture(pl, review.Finding{Part: "bar"}); !slices.Contains(allTexts(d), "front, left end at the left") {
		t.Errorf("the whole bar: %q", allTexts(d))
	}
}

// An open finding says its place and page; only a check may be accepted.
func TestOpenFinding(t *testing.T) {
	t.Parallel()
	part := sheettest.FlangePart()
	pl := sheettest.JobOf("Pug mill", parts.Millimetres, part)
	check := review.Finding{Part: part.Name, Severity: review.Check, What: "close", Fix: "move it", Pos: parts.Pos{File: "f.yaml", Line: 7}}
	stop := check
	stop.Part, stop.Severity = "weld", review.Stop
	for _, c := range []struct {
		f        review.Finding
		page     string
		says     []string
		accepted bool
	}{
		{check, part.Title, []string{part.Title + ": close", "Mend: move it", "f.yaml line 7", "mended"}, true},
		{stop, draw.StepOf("weld"), []string{"weld: close", "mended"}, false},
	} {
		long := c.f
		long.Rule = strings.Repeat("i ", 400) // ends near the edge
		for _, item := range density(1).openFinding(pl, long, 180).Draw.Items {
			if text, ok := item.(draw.Text); ok && (draw.TextRect(text).X1 > 177.001 || draw.TextRect(text).X0 < 2.999) {
				t.Errorf("%q is not 3 mm inside its frame", text.Content)
			}
		}
		p := density(1).openFinding(pl, c.f, 180)
		s := strings.Join(allTexts(p.Draw), " ")
		for _, want := range c.says {
			if !strings.Contains(s, want) {
				t.Errorf("%q lacks %q", s, want)
			}
		}
		if strings.Contains(s, "accepted") != c.accepted {
			t.Errorf("%s: %q", c.f.Severity, s)
		}
		if len(p.Refers) != 1 || p.Refers[0].Title != c.page {
			t.Errorf("refers to %+v, want %s", p.Refers, c.page)
		}
	}
}

// The notes are at as many places as those that are open have; what is accepted, or no note, has none of them.
func TestPlacesOfNotes(t *testing.T) {
	t.Parallel()
	note, with := review.Finding{Severity: review.Note}, []review.Finding{{}, {}}
	many := review.Finding{Severity: review.Note, With: with}
	for want, all := range map[string][]review.Finding{
		"": {note, {Severity: review.Check, With: with}, {Severity: review.Note, Accepted: true, With: with}}, " at 4 places": {note, many},
	} {
		if got := places(all); got != want {
			t.Errorf("%q, want %q", got, want)
		}
	}
}
