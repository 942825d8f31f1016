package part_test

import (
	"math"
	"slices"
	"strings"
	"testing"

	"centrepop/layout"
	"centrepop/layout/part"

	"github.com/tdewolff/canvas"
)

// The blank of a cone has the area of its development and that of the lap, a
// rectangle as long as the seam, and twice the lap's width more to cut. The
// lengths of its arcs are the girths at mid-thickness.
func TestBlankProfile(t *testing.T) {
	const cone = "kind: cone\nstock: {sheet: 2 mm, cut: laser}\ncone: {large: 300, small: 150, height: 200, thickness: 2, offset: %OFFSET%, seam: 180, overlap: %LAP%}\n"
	const square = "kind: transition\nstock: {sheet: 2 mm, cut: laser}\ntransition: {width: 300, depth: 300, diameter: 150, height: 200, thickness: 2, seam: 180, overlap: %LAP%}\n"
	for _, c := range []struct{ name, pt, offset string }{
		{"cone", cone, "0"}, {"leaning cone", cone, "40"}, {"square to round", square, ""},
	} {
		pt := func(lap string) string {
			return strings.NewReplacer("%OFFSET%", c.offset, "%LAP%", lap).Replace(c.pt)
		}
		bare, err := part.CutProfile(cutJob(t, pt("0")), "p", part.CutOptions{})
		if err != nil {
			t.Fatalf("%s: %v", c.name, err)
		}
		worked, err := layout.Resolve(cutJob(t, pt("15")))
		if err != nil {
			t.Fatalf("%s: %v", c.name, err)
		}
		plan := worked.Plan
		d := plan.Parts[0].Developments[0]
		lapped, err := part.CutProfile(cutJob(t, pt("15")), "p", part.CutOptions{})
		if err != nil {
			t.Fatalf("%s: %v", c.name, err)
		}
		near(t, c.name+": area with its lap", lapped.AreaMm2, d.AreaMm2, 0.5)
		seam := 0.0
		for _, l := range d.Lines {
			if l.Role == "seam" {
				p, err := canvas.ParseSVGPath(string(l.Path))
				if err != nil {
					t.Fatal(err)
				}
				seam = p.Length()
			}
		}
		if seam < 200 {
			t.Fatalf("%s: seam of %.1f mm is shorter than the part is high", c.name, seam)
		}
		near(t, c.name+": lap", lapped.AreaMm2-bare.AreaMm2, 15*seam, 0.01)
		near(t, c.name+": length with lap", lapped.LengthMm-bare.LengthMm, 30, 0.001)
		near(t, c.name+": blank", lapped.BlankXMm, d.MaxMm.XMm-d.MinMm.XMm, 0.001)
		if len(lapped.Contours) != 1 || len(lapped.Lines) < 10 || lapped.Copies != 1 || lapped.ThicknessMm != 2 {
			t.Errorf("%s: %d contours, %d lines, %d copies, %g thick", c.name, len(lapped.Contours), len(lapped.Lines), lapped.Copies, lapped.ThicknessMm)
		}
		// A curve moved outward by d all round grows by 2πd.
		kerf, err := part.CutProfile(cutJob(t, pt("15")), "p", part.CutOptions{KerfMm: 0.2, Compensate: true})
		if err != nil {
			t.Fatalf("%s: %v", c.name, err)
		}
		if grown := kerf.LengthMm - lapped.LengthMm; math.Abs(grown-0.2*math.Pi) > 0.15 {
			t.Errorf("%s: the kerf makes the contour %.4f mm longer, want about %.4f", c.name, grown, 0.2*math.Pi)
		}
		near(t, c.name+": kerf mass", kerf.NetKg, lapped.NetKg, 0)
		if c.name == "cone" {
			// Half-diameters at mid-thickness: the two arcs and the two seams.
			slope := math.Atan2(75, 200)
			large, small := 300-2*math.Cos(slope), 150-2*math.Cos(slope)
			near(t, "arcs of the cone", bare.LengthMm-2*seam, math.Pi*(large+small), 0.001)
		}
	}
}

func TestBlankPieces(t *testing.T) {
	gores := "kind: cone\nstock: {sheet: 2 mm, cut: laser}\ncone: {large: 900, small: 500, height: 600, thickness: 2, overlap: 15, sheet: [1000, 800]}\n"
	p, err := part.CutProfile(cutJob(t, gores), "p", part.CutOptions{})
	if err != nil {
		t.Fatal(err)
	}
	if p.Copies < 2 || p.BlankXMm > 1000 || p.BlankYMm > 800 {
		t.Errorf("%d gores of %.0f × %.0f mm", p.Copies, p.BlankXMm, p.BlankYMm)
	}
	leaning := strings.Replace(gores, "height: 600", "height: 600, offset: 100", 1)
	if _, err := part.CutProfile(cutJob(t, leaning), "p", part.CutOptions{}); err == nil || !strings.Contains(err.Error(), "say which of") {
		t.Fatalf("several pieces: %v", err)
	}
	worked, err := layout.Resolve(cutJob(t, leaning))
	if err != nil {
		t.Fatal(err)
	}
	plan := worked.Plan
	total := 0.0
	for _, d := range plan.Parts[0].Developments {
		q, err := part.CutProfile(cutJob(t, leaning), "p", part.CutOptions{Piece: d.Name})
		if err != nil {
			t.Fatalf("%s: %v", d.Name, err)
		}
		total += q.AreaMm2
	}
	if total < 1e6 {
		t.Errorf("the pieces have %.0f mm² together: a cone of 900, 500 and 600 mm has over a square metre", total)
	}
	if _, err := part.CutProfile(cutJob(t, leaning), "p", part.CutOptions{Piece: "nothing"}); err == nil || !strings.Contains(err.Error(), `no piece "nothing"`) {
		t.Errorf("unknown piece: %v", err)
	}
}

// What a tube of sheet is rolled from: a rectangle round the middle of the wall, with the plain openings cut in it at
// their places. What is tapped, too small for the cutter or lies in the seam is made in the round, by the wrap, and so is
// all where the cutter follows no file.
func TestShellBlank(t *testing.T) {
	const drum = `kind: tube
stock: {sheet: 3 mm, cut: %CUT%}
tube: {outside: 403, wall: 3, length: 300, seam: 180, overlap: %LAP%}
radial:
  - {name: hatch, clock: 0, axial: 150, window: {around: 120, along: 100, corner: 10}}
  - {name: vents, clock: [90, 270], axial: 60, size: 12 mm, depth: through}
  - {name: slit, clock: 45, axial: 200, slot: {around: 10, along: 50}, depth: through}
  - {name: tap, clock: 135, axial: 60, size: M8 tap, depth: through}
  - {name: pin, clock: 225, axial: 60, size: 2.5 mm, depth: through}
  - {name: drain, clock: 184, axial: 250, size: 40 mm, depth: through}
`
	pt := func(cut, lap string) string {
		return strings.NewReplacer("%CUT%", cut, "%LAP%", lap).Replace(drum)
	}
	const girth = math.Pi * 400
	around := 120 * 400 / 403.0 // what a tape reads outside, at the middle of the wall
	openings := around*100 - (4-math.Pi)*100 + 2*math.Pi*36 + 10*40 + math.Pi*25
	corner := strings.Replace(drum, "clock: [90, 270], axial: 60", "clock: 28, axial: 80", 1) // Ø12 beside the corner of the hatch
	if p, err := part.CutProfile(cutJob(t, strings.NewReplacer("%CUT%", "laser", "%LAP%", "0").Replace(corner)), "p", part.CutOptions{}); err != nil {
		t.Error(err)
	} else {
		near(t, "metal beside the corner", p.Web.WidthMm, math.Hypot(28*girth/360-(60*400/403.0-10), 70-40)-10-6, 1e-6)
	}
	for lap, mm := range map[string]float64{"0": 0, "20": 20} {
		p, err := part.CutProfile(cutJob(t, pt("laser", lap)), "p", part.CutOptions{})
		if err != nil {
			t.Fatal(err)
		}
		near(t, "blank round", p.BlankXMm, girth+mm, 0.001)
		near(t, "blank along", p.BlankYMm, 300, 0.001)
		near(t, "area", p.AreaMm2, (girth+mm)*300-openings, 0.01)
		var names []string
		for _, c := range p.Contours {
			names = append(names, c.Name)
		}
		if got := strings.Join(names, ","); got != "hatch 1,vents 2,vents 3,slit 4,outline" {
			t.Errorf("cut: %s", got)
		}
	}
	if p, err := part.CutProfile(cutJob(t, pt("laser", "0")), "p", part.CutOptions{KerfMm: 0.4, Compensate: true}); err != nil {
		t.Error(err)
	} else {
		near(t, "round the hatch, inside its kerf", p.Contours[0].LengthMm, 2*(around+100)-8*10+2*math.Pi*10-2*math.Pi*0.2, 0.001)
		near(t, "round the slit, inside its kerf", p.Contours[3].LengthMm, 80+math.Pi*9.6, 0.001)
		near(t, "round a vent, inside its kerf", p.Contours[1].LengthMm, math.Pi*11.6, 0.001)
		near(t, "round the blank, outside its kerf", p.Contours[4].LengthMm, 2*(girth+300)+2*math.Pi*0.2, 0.001)
	}
	for cut, want := range map[string]string{"laser": "tap,pin,drain", "saw": "hatch,vents,vents,slit,tap,pin,drain"} {
		worked, err := layout.Resolve(cutJob(t, pt(cut, "0")))
		if err != nil {
			t.Fatal(err)
		}
		if do := strings.Join(worked.Plan.Parts[0].Operations[0].Do, "\n"); cut == "laser" && (!strings.Contains(do, "hatch: 120 around × 100 along, corners R10; 119.11 around in the flat.") || strings.Count(do, "in the flat") != 1) { // 120 · 400/403; round ends stay round
			t.Error(do)
		}
		var marked []string
		for _, d := range worked.Plan.Parts[0].Developments {
			for _, m := range d.Marks {
				marked = append(marked, m.Name)
			}
		}
		slices.SortFunc(marked, func(a, b string) int { return strings.Index(want, a) - strings.Index(want, b) })
		if got := strings.Join(marked, ","); got != want {
			t.Errorf("%s: marked in the round are %s, want %s", cut, got, want)
		}
	}
	if _, err := part.CutProfile(cutJob(t, pt("laser", "0")), "p", part.CutOptions{KerfMm: 10, Compensate: true}); err == nil || !strings.Contains(err.Error(), "slit 4 is no wider than the kerf") {
		t.Errorf("a slit as wide as the kerf: %v", err)
	}
}
