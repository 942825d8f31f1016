package picture_test

import (
	"fmt"
	"path/filepath"
	"strings"
	"testing"

	"centrepop/layout/plan"
	"centrepop/layout/words"
	"centrepop/parts/golden"
	"centrepop/templates/draw"
	"centrepop/templates/picture"
	"centrepop/templates/sheettest"
)

// TestRecorded: the pictures of some of the small parts of layout/part are drawn as
// recorded: each text and each line with its place to 0.1 mm. CENTREPOP_UPDATE=1
// writes testdata anew: read the difference, and look at a sheet.
func TestRecorded(t *testing.T) {
	t.Parallel()
	worked := sheettest.Worked(t, "part", "mm")
	all := map[string]*strings.Builder{}
	note := func(kind, of string, p draw.Panel) {
		if all[kind] == nil {
			all[kind] = &strings.Builder{}
		}
		fmt.Fprintf(all[kind], "%s %.1f x %.1f\n%s", of, p.Width, p.Height, sheettest.RecordDrawing(t, p.Drawn()))
	}
	for _, name := range []string{"sleeve", "spindle", "disc", "collar", "plug", "branch", "tray", "worm", "rail", "post", "strip", "rod", "spar", "bearer"} {
		part := worked.Plan.Part(name)
		for i := range part.Profiles {
			note("folded", name, picture.Folded(&part.Profiles[i], 90, 70))
		}
		if part.Bar != nil {
			note("bar", name, picture.Bar(part.Bar, 120))
			note("bar", name, picture.Bar(part.Bar, 62))
			continue
		}
		if name != "tray" && name != "worm" {
			note("section", name, picture.Section(part, part.Features, 95, 70))
			note("dimensioned", name, picture.Dimensioned(part, 150, 90))
			note("narrow", name, picture.Dimensioned(part, 88, 70))
		}
		for i, face := range part.Faces {
			note("face", fmt.Sprint(name, " ", face.Face), picture.Face(face, 70-float64(20*i)))
		}
	}
	head := picture.Head(worked.Plan.Part("sleeve"), words.Writer{Units: worked.Plan.Units}, "Operations", 120)
	note("head", "sleeve", draw.Panel{Draw: head.Draw, Width: 120, Height: head.Height})
	loops := func(x float64) [][]plan.XY {
		return [][]plan.XY{{{XMm: x, YMm: 10}, {XMm: x + 30, YMm: 10}, {XMm: x + 30, YMm: 24}, {XMm: x, YMm: 20}}}
	}
	on, cut := picture.Paper{Low: plan.XY{XMm: -10, YMm: 4}, X: 5, Y: 3, Scale: 0.8}, draw.Panel{Width: 200, Height: 20}
	const part = plan.ShapePart
	for i, kind := range []plan.ShapeKind{part, part, part, part, part, part, plan.ShapeCup, plan.ShapeCone, plan.ShapeBead, plan.ShapeScrew} {
		on.Shape(&cut.Draw, &plan.Shape{Kind: kind, Item: 1 + i, Loops: loops(40 * float64(i))}, 0.25+0.05*float64(i))
	}
	on.Lines(&cut.Draw, loops(0), 0.2)
	on.Centres(&cut.Draw, [][2]plan.XY{{{XMm: 1, YMm: 2}, {XMm: 90, YMm: 2}}})
	note("cut", "shapes", cut)
	// A face out of the middle of its part, and pictures hardly as wide as what is under them.
	aside := *worked.Plan.Part("disc").Faces[0]
	aside.MinMm.XMm -= 40
	aside.MaxMm.YMm += 25
	note("face", "aside", picture.Face(&aside, 75))
	sleeve := worked.Plan.Part("sleeve")
	note("section", "small", picture.Section(sleeve, sleeve.Features[:4], 34, 40))
	tray := worked.Plan.Part("tray").Profiles[0]
	note("folded", "small", picture.Folded(&tray, 45, 40))
	for kind, got := range all {
		golden.Whole(t, filepath.Join("testdata", kind+".txt"), []byte(got.String()))
	}
}
