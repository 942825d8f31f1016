// Package sheettest has what the tests of the sheets share: plans made by hand,
// and checks and records of drawn pages.
package sheettest

import (
	"fmt"
	"math"
	"path/filepath"
	"slices"
	"testing"

	"centrepop/layout"
	"centrepop/layout/lookup"
	"centrepop/layout/plan"
	"centrepop/parts"
	"centrepop/parts/golden"
	"centrepop/parts/read"
)

// Sample is a plan and the paper to draw it on.
type Sample struct {
	Name  string
	Plan  *plan.Plan
	Paper parts.Paper
}

// Papers that the samples are drawn on: ISO 216, ANSI/ASME Y14.1, and the least
// that a job may ask for.
var (
	A4      = parts.Paper{Name: "A4", WidthMm: 210, HeightMm: 297}
	A3      = parts.Paper{Name: "A3", WidthMm: 297, HeightMm: 420}
	Letter  = parts.Paper{Name: "Letter", WidthMm: 215.9, HeightMm: 279.4}
	Tabloid = parts.Paper{Name: "Tabloid", WidthMm: 279.4, HeightMm: 431.8}
	Least   = parts.Paper{Name: "custom", WidthMm: 140, HeightMm: 200}
)

// Samples are plans made by hand: a flange and a housing in millimetres, a
// ring and a plate that need tiles, and a crowded plate in inches.
func Samples() []Sample {
	pug := JobOf("Pug mill", parts.Millimetres, FlangePart(), HousingPart(), RingPart(620))
	jack := JobOf("Sluice-gate jack", parts.Inches, CrowdedPart(), PlatePart())
	return []Sample{
		{"pug-a4", pug, A4}, {"pug-a3", pug, A3}, {"pug-least", pug, Least},
		{"jack-letter", jack, Letter}, {"jack-tabloid", jack, Tabloid},
	}
}

// JobOf is a plan of some parts.
func JobOf(name string, units parts.Units, list ...*plan.PartPlan) *plan.Plan {
	pl := &plan.Plan{Job: name, Revision: "B", Date: "2025-03-14", DrawnBy: "A. R.", CheckedBy: "M. Holt", Units: units,
		Tolerance: "ISO 2768-m", Notes: []string{"All welds are cleaned of slag before the next run.", "Deburr every edge."}, Parts: list}
	pl.Bought = []plan.BoughtRow{{Item: "hexagon screw M10 × 35, 8.8", Quantity: 12, For: "barrel flanges", Note: "ISO 4017"}, {Item: "washer 10", Quantity: 24, For: "barrel flanges"}}
	pl.Cuts = []plan.CutRow{{Stock: "round 130", Material: "C45", BarMm: 3000, KerfMm: 2, Bars: []plan.CutBar{
		{Pieces: []plan.CutPiece{{Part: list[0].Name, LengthMm: 60}, {Part: list[len(list)-1].Name, LengthMm: 738.5, FromMm: 72}}, OffcutMm: 2187}}}}
	pl.Lifts = []string{"Base plate, 41 kg"}
	for _, p := range list {
		pl.Stock = append(pl.Stock, plan.StockRow{Part: p.Name, Quantity: p.Quantity, Material: p.Material, Size: p.StockText, MassKg: p.MassKg})
	}
	return pl
}

func circlePath(r float64) plan.Contour {
	return plan.Contour(fmt.Sprintf("M%g 0A%g %g 0 0 1 %g 0A%g %g 0 0 1 %g 0Z", r, r, r, -r, r, r, r))
}

// holesOn are holes like one, on a circle on a face that starts at a clock angle, numbered from 1.
func holesOn(like plan.Hole, pcd, start float64, count int, lo plan.XY) []plan.Hole {
	var holes []plan.Hole
	for i := range count {
		a := math.Mod(start+360*float64(i)/float64(count), 360)
		s, c := math.Sincos(a * math.Pi / 180)
		h := like
		h.N, h.XMm, h.YMm, h.AngleDeg, h.RadiusMm = i+1, pcd/2*s, pcd/2*c, a, pcd/2
		h.FromXMm, h.FromYMm = h.XMm-lo.XMm, h.YMm-lo.YMm
		holes = append(holes, h)
	}
	return holes
}

func chordsOf(first, count int, pcd, diameter float64) []plan.Chord {
	var chords []plan.Chord
	for _, k := range []struct {
		step int
		kind string
	}{{1, "neighbours"}, {count / 2, "across"}} {
		c := pcd * math.Sin(math.Pi*float64(k.step)/float64(count))
		chords = append(chords, plan.Chord{From: first, To: first + k.step, Kind: k.kind, CentreMm: c, OverMm: c + diameter, BetweenMm: c - diameter})
	}
	return chords
}

// FlangePart is a flange with both faces and a ladder.
func FlangePart() *plan.PartPlan {
	lo, hi := plan.XY{XMm: -82.5, YMm: -82.5}, plan.XY{XMm: 82.5, YMm: 82.5}
	bolts := holesOn(plan.Hole{Group: "bolts", DiameterMm: 11}, 140, 30, 6, lo)
	pry := []plan.Hole{
		{N: 7, Group: "pry", XMm: 0, YMm: 70, RadiusMm: 70, DiameterMm: 6.8, FromXMm: 82.5, FromYMm: 152.5},
		{N: 8, Group: "pry", XMm: 0, YMm: -70, AngleDeg: 180, RadiusMm: 70, DiameterMm: 6.8, FromXMm: 82.5, FromYMm: 12.5},
	}
	front := &plan.Face{Part: "barrel-flange", Face: parts.Front, Outline: circlePath(82.5), Datum: "left and bottom edge", FromX: "left", FromY: "bottom", MinMm: lo, MaxMm: hi, SetAt: lo, DatumAt: lo,
		Holes:   append(bolts, pry...),
		Circles: []plan.Circle{{Label: "bore Ø112.3 as cut", DiameterMm: 112.3}, {Label: "pitch circle Ø140", DiameterMm: 140, Pitch: true}},
		Groups: []plan.Group{
			{Name: "bolts", First: 1, Count: 6, SizeText: "M10 clearance Ø11", DepthText: "through", Marked: parts.Front, PCDMm: 140, DrillMm: 11, FinishedMm: 11, Chords: chordsOf(1, 6, 140, 11)},
			{Name: "pry", First: 7, Count: 2, SizeText: "M8 tap, drill 6.8", DepthText: "through", Marked: parts.Front, DrillMm: 6.8, FinishedMm: 8, Thread: "M8", Chords: chordsOf(7, 2, 140, 6.8)[:1]},
		}}
	return &plan.PartPlan{Name: "barrel-flange", Title: "Barrel flange", Kind: "flange", Quantity: 2, Material: "S235", StockText: "plate 8 mm, laser cut",
		Top: "scribe", MassKg: 0.655, Overall: "Ø165 × 8 mm", Faces: []*plan.Face{front},
		Section: &plan.Section{LengthMm: 8, MaxMm: 82.5, Flat: true,
			Outer: []plan.XY{{XMm: 0, YMm: 82.5}, {XMm: 8, YMm: 82.5}}, Inner: []plan.XY{{XMm: 0, YMm: 57.15}, {XMm: 3, YMm: 57.15}, {XMm: 8, YMm: 62.15}}},
		Features: []plan.Feature{
			{N: 1, Name: "outline", Size: "Ø165", Limits: "164.5 – 165.5", Balloon: plan.XY{XMm: 4, YMm: 82.5}},
			{N: 2, Name: "bore", Size: "Ø114.3, light press on the barrel tube", Limits: "measure the counterpart", Note: "turn to the ladder below", Balloon: plan.XY{XMm: 1.5, YMm: 57.15}},
			{N: 3, Name: "bore, back chamfer", Size: "5 × 45°", Note: "weld preparation", Balloon: plan.XY{XMm: 5.5, YMm: 59.65}},
			{N: 4, Name: "bolts", Size: "6 × Ø11 on Ø140", Limits: "11.00 – 11.18", Face: parts.Front, Balloon: plan.XY{XMm: 35, YMm: 60.62}},
			{N: 5, Name: "pry", Size: "2 × M8", Face: parts.Front, Balloon: plan.XY{XMm: 0, YMm: -70}},
		},
		Operations: []plan.Operation{
			{N: 1, Machine: "Cutter", Title: "Cut the blank", Do: []string{"Cut the outline and the bore at Ø112.3.", "Mark TOP with a scribed line on the front face before the blank leaves the table."}, Holding: "on the slats", Limits: []string{"bore left at 112.3"}, Gauge: "rule", Refs: []int{1}},
			{N: 2, Machine: "Lathe", Title: "Turn the bore to the measured tube", Do: []string{"Measure the tube end in three places.", "Read the bore from the ladder.", "Turn the bore; break the front edge 0.5 mm.", "Turn the back chamfer 5 × 45°."},
				Holding: "4-jaw chuck, outline clocked to 0.05 mm", Tool: "HSS boring bar", Speed: "70 rev/min (25 m/min, Ø114.3)", Limits: []string{"114.310 – 114.330 on a tube of 114.300", "chamfer 4.8 – 5.2"}, Gauge: "telescopic gauge and 100–125 micrometer", Caution: "The chips are long and sharp: stop the spindle before you clear them.", Refs: []int{2, 3}},
			{N: 3, Machine: "Drill", Title: "Drill and tap", Do: []string{"Glue the template on the front face, TOP to TOP.", "Pop 1 to 8.", "Drill 1–6: 5 mm, 8.5 mm, then 11 mm.", "Drill 7–8 at 6.8 mm and tap M8."}, Holding: "clamped on parallels", Tool: "twist drills 5, 6.8, 8.5, 11; tap M8", Speed: "720 rev/min (25 m/min, Ø11)", Gauge: "caliper over pins", Refs: []int{4, 5}},
		},
		Checks: []plan.Check{
			{Ref: 1, What: "Outline", Wanted: "Ø165", Limits: "164.5 – 165.5", Gauge: "caliper", Source: lookup.Standard("ISO 2768-m")},
			{Ref: 2, What: "Bore", Wanted: "Ø114.3", Limits: "0.01 – 0.03 under the tube", Gauge: "telescopic gauge and micrometer", Source: lookup.NoSource},
			{Ref: 4, What: "Holes 1 to 4, over pins", Wanted: "151.00", Limits: "150.7 – 151.3", Gauge: "caliper and two 11 mm pins", Source: lookup.Standard("ISO 2768-m")},
		},
		Ladders:  []plan.Ladder{ladderOf()},
		Notes:    []string{"The chamfer faces away from the barrel."},
		Cautions: []string{"Plate edges from the laser are sharp. Deburr before handling."},
	}
}

func ladderOf() plan.Ladder {
	l := plan.Ladder{Feature: "barrel-flange bore", Counterpart: "barrel-tube outside", Note: "0.01 to 0.03 mm light press."}
	for i := range 13 {
		m := 114.0 + 0.05*float64(i)
		l.Rungs = append(l.Rungs, plan.Rung{MeasuredMm: m, BoreMinMm: m - 0.03, BoreMaxMm: m - 0.01,
			Measured: fmt.Sprintf("%.2f", m), Bore: fmt.Sprintf("%.2f – %.2f", m-0.03, m-0.01)})
	}
	return l
}

// HousingPart is a turned housing with radial holes.
func HousingPart() *plan.PartPlan {
	lo, hi := plan.XY{XMm: -60, YMm: -60}, plan.XY{XMm: 60, YMm: 60}
	face := func(f parts.Face, mirror bool) *plan.Face {
		out := &plan.Face{Part: "bearing-housing", Face: f, Outline: circlePath(60), Datum: "left and bottom edge", FromX: "left", FromY: "bottom", MinMm: lo, MaxMm: hi, SetAt: lo, Mirrored: mirror,
			Holes:   holesOn(plan.Hole{Group: "cover", DiameterMm: 6.8}, 104, 0, 8, lo),
			Circles: []plan.Circle{{Label: "register Ø90", DiameterMm: 90}, {Label: "pitch circle Ø104", DiameterMm: 104, Pitch: true}},
			Groups:  []plan.Group{{Name: "cover", First: 1, Count: 8, SizeText: "M8 tap, drill 6.8", DepthText: "20 deep, drill 26", Marked: parts.Front, PCDMm: 104, Chords: chordsOf(1, 8, 104, 6.8)}}}
		if mirror {
			for i := range out.Holes {
				out.Holes[i].XMm = -out.Holes[i].XMm
			}
		}
		return out
	}
	p := &plan.PartPlan{Name: "bearing-housing", Title: "Bearing housing, lower", Kind: "bearing-housing", Quantity: 1, Material: "C45", StockText: "round 130, 60 long",
		Top: "punch", MassKg: 2.31, Overall: "Ø120 × 56 mm", Faces: []*plan.Face{face(parts.Front, false), face(parts.Back, true)},
		Section: &plan.Section{LengthMm: 56, MaxMm: 60,
			Outer:   []plan.XY{{XMm: 0, YMm: 59}, {XMm: 1, YMm: 60}, {XMm: 26, YMm: 60}, {XMm: 26, YMm: 50}, {XMm: 56, YMm: 50}},
			Inner:   []plan.XY{{XMm: 0, YMm: 45}, {XMm: 25, YMm: 45}, {XMm: 25, YMm: 30}, {XMm: 56, YMm: 30}},
			Threads: []plan.ThreadLine{{FromMm: 36, ToMm: 56, RadiusMm: 31, CrestMm: 30, Inside: true}}},
		Shown: []plan.RadialRow{{N: 1, Name: "grease-port", Shape: "hole", ClockDeg: 0, AxialMm: 40, Datum: "front", DatumMm: 40, SizeText: "M10×1 tap, drill 9", DepthText: "through", DiameterMm: 9, DepthMm: 20, OutsideMm: 100}},
	}
	names := []string{"flange", "body", "register", "pipe thread", "front face", "grease port", "cover holes", "cover holes, back", "undercut", "back face"}
	at := []plan.XY{{XMm: 13, YMm: 60}, {XMm: 45, YMm: 50}, {XMm: 12, YMm: 45}, {XMm: 45, YMm: 30}, {XMm: 0, YMm: 50}, {XMm: 40, YMm: 50}, {XMm: 36.8, YMm: 36.8}, {XMm: -36.8, YMm: 36.8}, {XMm: 25, YMm: 45}, {XMm: 56, YMm: 40}}
	for i, name := range names {
		f := plan.Feature{N: i + 1, Name: name, Size: "Ø90 H7", Limits: "90.000 – 90.035", Balloon: at[i]}
		switch i {
		case 6:
			f.Face = parts.Front
		case 7:
			f.Face = parts.Back
		}
		p.Features = append(p.Features, f)
		p.Checks = append(p.Checks, plan.Check{Ref: i + 1, What: name, Wanted: "Ø90 H7", Limits: "90.000 – 90.035", Gauge: "bore gauge", Source: lookup.Standard("ISO 286-1 H7")})
		p.Operations = append(p.Operations, plan.Operation{N: i + 1, Machine: plan.Lathe, Title: "Turn the " + name, Do: []string{"Rough to 0.5 mm.", "Let it cool, measure, finish in two cuts of equal depth."},
			Holding: "3-jaw chuck, soft jaws", Tool: "HSS, R0.4", Speed: "115 rev/min (30 m/min, Ø90)", Limits: []string{"90.000 – 90.035"}, Gauge: "bore gauge", Refs: []int{i + 1}})
	}
	return p
}

// RingPart is a large ring that needs tiles on any office paper.
func RingPart(od float64) *plan.PartPlan {
	lo, hi := plan.XY{XMm: -od / 2, YMm: -od / 2}, plan.XY{XMm: od / 2, YMm: od / 2}
	front := &plan.Face{Part: "base-ring", Face: parts.Front, Outline: circlePath(od / 2), Datum: "left and bottom edge", FromX: "left", FromY: "bottom", MinMm: lo, MaxMm: hi, SetAt: lo,
		Holes:   holesOn(plan.Hole{Group: "feet", DiameterMm: 14}, od-60, 15, 24, lo),
		Circles: []plan.Circle{{Label: fmt.Sprintf("bore Ø%g", od-120), DiameterMm: od - 120}, {Label: fmt.Sprintf("pitch circle Ø%g", od-60), DiameterMm: od - 60, Pitch: true}},
		Groups:  []plan.Group{{Name: "feet", First: 1, Count: 24, SizeText: "M12 clearance Ø14", DepthText: "through", Marked: parts.Front, PCDMm: od - 60, Chords: chordsOf(1, 24, od-60, 14)}}}
	return &plan.PartPlan{Name: "base-ring", Title: "Base ring", Kind: "ring", Quantity: 1, Material: "S355", StockText: "plate 15 mm", Overall: fmt.Sprintf("Ø%g × 15 mm", od), MassKg: 13.4,
		Faces: []*plan.Face{front},
		Section: &plan.Section{LengthMm: 15, MaxMm: od / 2, Flat: true, Outer: []plan.XY{{XMm: 0, YMm: od / 2}, {XMm: 15, YMm: od / 2}},
			Inner: []plan.XY{{XMm: 0, YMm: od/2 - 60}, {XMm: 15, YMm: od/2 - 60}}},
		Features: []plan.Feature{{N: 1, Name: "bore", Size: "Ø500", Balloon: plan.XY{XMm: 7, YMm: od/2 - 60}}, {N: 2, Name: "feet", Size: "24 × Ø14", Face: parts.Front, Balloon: plan.XY{XMm: 0, YMm: -280}}},
	}
}

// CrowdedPart has a grid of 120 holes at half an inch and two slots.
func CrowdedPart() *plan.PartPlan {
	w, h := 190.5, 139.7
	lo, hi := plan.XY{XMm: -w / 2, YMm: -h / 2}, plan.XY{XMm: w / 2, YMm: h / 2}
	front := &plan.Face{Part: "sieve", Face: parts.Front, Datum: "left and bottom edge", FromX: "left", FromY: "bottom", MinMm: lo, MaxMm: hi, SetAt: lo,
		Outline: plan.Contour(fmt.Sprintf("M%g %gH%gV%gH%gZ", lo.XMm, lo.YMm, hi.XMm, hi.YMm, lo.XMm))}
	for i := range 120 {
		x, y := (float64(i%12)-5.5)*12.7, (4.5-float64(i/12))*12.7
		a := math.Mod(math.Atan2(x, y)*180/math.Pi+360, 360)
		front.Holes = append(front.Holes, plan.Hole{N: i + 1, Group: "grid", XMm: x, YMm: y, AngleDeg: a, RadiusMm: math.Hypot(x, y), FromXMm: x - lo.XMm, FromYMm: y - lo.YMm, DiameterMm: 6.35})
	}
	for i, x := range []float64{-84, 84} {
		front.Slots = append(front.Slots, plan.Slot{N: 121 + i, Group: "adjust", XMm: x, WidthMm: 9.525, LengthMm: 38.1, EndsMm: [2]plan.XY{{XMm: x, YMm: -14.2875}, {XMm: x, YMm: 14.2875}}})
	}
	front.Groups = []plan.Group{{Name: "grid", First: 1, Count: 120, SizeText: "1/4 in", DepthText: "through", Marked: parts.Front}}
	return &plan.PartPlan{Name: "sieve", Title: "Sieve plate with a long name that hardly fits its box", Kind: "plate", Quantity: 12, Material: "A36", StockText: "plate 3/8 in", Overall: "7-1/2 × 5-1/2 × 3/8 in", MassKg: 1.7,
		Faces:   []*plan.Face{front},
		Section: &plan.Section{LengthMm: 9.525, MaxMm: h / 2, Flat: true, Outer: []plan.XY{{XMm: 0, YMm: h / 2}, {XMm: 9.525, YMm: h / 2}}},
		Features: []plan.Feature{{N: 1, Name: "outline", Size: "7-1/2 × 5-1/2", Limits: "7.480 – 7.520 (190.00 – 191.00 mm)", Balloon: plan.XY{XMm: 5, YMm: h / 2}},
			{N: 2, Name: "grid", Size: "120 × 1/4", Face: parts.Front, Balloon: plan.XY{XMm: -69.85, YMm: 57.15}}},
	}
}

// PlatePart is a rectangle of 500 by 330 mm with large and small holes near
// the places where sheets would be cut.
func PlatePart() *plan.PartPlan {
	lo, hi := plan.XY{XMm: -250, YMm: -165}, plan.XY{XMm: 250, YMm: 165}
	front := &plan.Face{Part: "gate-plate", Face: parts.Front, Datum: "left and bottom edge", FromX: "left", FromY: "bottom", MinMm: lo, MaxMm: hi, SetAt: lo,
		Outline: "M-240 -165H240A10 10 0 0 1 250 -155V155A10 10 0 0 1 240 165H-240A10 10 0 0 1 -250 155V-155A10 10 0 0 1 -240 -165Z"}
	for i := range 21 {
		x, y := -230+23*float64(i), 150-15*float64(i)
		front.Holes = append(front.Holes, plan.Hole{N: i + 1, Group: "row", XMm: x, YMm: y, RadiusMm: math.Hypot(x, y), FromXMm: x + 250, FromYMm: y + 165, DiameterMm: 12.7})
	}
	front.Holes = append(front.Holes, plan.Hole{N: 22, Group: "big", XMm: 60, YMm: 60, RadiusMm: 84.85, FromXMm: 310, FromYMm: 225, DiameterMm: 88.9})
	front.Groups = []plan.Group{{Name: "row", First: 1, Count: 21, SizeText: "1/2 in", DepthText: "through", Marked: parts.Front}, {Name: "big", First: 22, Count: 1, SizeText: "3-1/2 in", DepthText: "through", Marked: parts.Front}}
	return &plan.PartPlan{Name: "gate-plate", Title: "Gate plate", Kind: "plate", Quantity: 1, Material: "A36", StockText: "plate 1/2 in", Overall: "19.685 × 12.992 × 1/2 in", MassKg: 14,
		Faces:    []*plan.Face{front},
		Section:  &plan.Section{LengthMm: 12.7, MaxMm: 165, Flat: true, Outer: []plan.XY{{XMm: 0, YMm: 165}, {XMm: 12.7, YMm: 165}}},
		Features: []plan.Feature{{N: 1, Name: "row", Size: "21 × 1/2", Face: parts.Front, Balloon: plan.XY{XMm: -230, YMm: 150}}},
	}
}

// SleevePart is a plain sleeve of 100 mm on the flange's bore.
func SleevePart() *plan.PartPlan {
	return &plan.PartPlan{Name: "sleeve", Title: "Sleeve", Kind: "tube", Quantity: 1, Material: "S355", MassKg: 3.2,
		Section: &plan.Section{LengthMm: 100, MaxMm: 57.15,
			Outer: []plan.XY{{XMm: 0, YMm: 55.15}, {XMm: 4, YMm: 57.15}, {XMm: 100, YMm: 57.15}},
			Inner: []plan.XY{{XMm: 0, YMm: 50}, {XMm: 100, YMm: 50}}},
	}
}

// JoinedPlan has a joint of each kind on a flange and a sleeve.
func JoinedPlan() *plan.Plan {
	pl := JobOf("Pug mill", parts.Millimetres, FlangePart(), SleevePart())
	sleeve := plan.JointEnd{Part: "sleeve", Copy: 1, Title: "Sleeve", PartTitle: "Sleeve", Feature: "outside", DiameterMm: 114.3, MinMm: 114.3, MaxMm: 114.3, FromMm: 0, ToMm: 100}
	bore := plan.JointEnd{Part: "barrel-flange", Copy: 1, Title: "Barrel flange 1", PartTitle: "Barrel flange", Feature: "bore", DiameterMm: 114.3, Inside: true, FromMm: 0, ToMm: 8}
	together := []plan.Placed{
		{Part: "barrel-flange", Copy: 1, Title: "Barrel flange 1"},
		{Part: "sleeve", Copy: 1, Title: "Sleeve", FrontMm: 1, New: true},
	}
	marks := []plan.ClockMark{
		{Label: "TOP", Part: "Barrel flange 1", Key: true}, {Label: "TOP", Part: "Sleeve", Deg: 0, Key: true},
		{Label: "grease port", Part: "Sleeve", Deg: 120, Key: true}, {Label: "drain", Part: "Sleeve", Deg: 240},
	}
	press := &plan.JointPlan{N: 1, Name: "press", Title: "Press Barrel flange 1 on Sleeve", Kind: "press", A: sleeve, B: bore,
		How: "front of Sleeve level with the front of Barrel flange 1, the inner part 1 below, TOP of Sleeve at 0° of Barrel flange 1",
		Why: []plan.Reason{{Step: 1, Why: "the job says so"}, {Step: 2, Why: "the job says so"}}, Placed: together, Clock: marks,
		InLine:  []plan.InLine{{What: "Sleeve grease port – Barrel flange 1 bolts", Deg: 120}},
		Figures: []plan.Figure{{Label: "press force", Value: "12 – 34 kN", Source: "at the end of travel"}, {Label: "pressure", Value: "1.2 – 3.4 MPa", Source: "Lamé"}},
		Press: &plan.PressPlan{Method: "press", InterferenceMm: plan.Range{Min: 0.01, Max: 0.03}, LengthMm: 7, ForceN: plan.Range{Min: 12000, Max: 34000},
			HeatHubC: 127, CoolShaftC: -119, ClearanceMm: 0.17, LeadInMm: 5.5, LeadInDeg: 5, LeadInOn: "Spindle", ShopPressN: 200000},
		Remedies: []string{"Scribe both at 0°."},
		Steps: []plan.JointStep{
			{N: 1, Title: "Measure", Do: []string{"Measure both at three places."}, Hold: "Do not go on outside these limits."},
			{N: 2, Title: "Press", Do: []string{"Press with even force.", "Scribe both at 0°."}, Caution: "Stop if the force jumps."},
		},
		Checks:   []plan.Check{{What: "seated", Wanted: "level", Limits: "no gap over 0.05 mm", Gauge: "feeler"}},
		Cautions: []string{"Stand aside."}, Problems: []plan.Problem{{What: "no lead-in chamfer is drawn"}}, MassKg: 11.9,
	}
	weld := &plan.JointPlan{N: 2, Name: "weld", Title: "Weld Barrel flange 1 to Sleeve", Kind: "weld", A: bore, B: sleeve, How: "as they were put together", Placed: together, Clock: marks,
		Weld: &plan.WeldPlan{ClockOf: "Sleeve", Type: "bevel", Symbol: "single-bevel butt weld", Process: "MAG", Sides: 1, ThinnerMm: 7, ThickerMm: 8, BevelDeg: 45, GapMm: 2.5, RootFaceMm: 1.5, DiameterMm: 114.3, LengthMm: 359,
			Runs: 2, BuyKg: 0.09, TackLengthMm: 44, TacksDeg: []float64{0, 180, 90, 270}, Order: []plan.WeldRun{
				{N: 1, Layer: 1, StartDeg: 0, EndDeg: 90, Clockwise: true}, {N: 2, Layer: 1, StartDeg: 180, EndDeg: 270, Clockwise: true},
				{N: 3, Layer: 2, StartDeg: 45, EndDeg: 315}, {N: 4, Layer: 2, StartDeg: 225, EndDeg: 135}}},
		Steps:    []plan.JointStep{{N: 1, Title: "Tack", Do: []string{"Tack at 0°, 180°, 90°, 270°."}, Hold: "Check square."}},
		Cautions: []string{"The local code comes first.", "Fumes: extraction."},
	}
	end := func(title string) plan.JointEnd {
		return plan.JointEnd{Part: "barrel-flange", Copy: int(title[len(title)-1] - '0'), Title: title, PartTitle: "Barrel flange", Feature: "bolts", DiameterMm: 11}
	}
	bolt := &plan.JointPlan{N: 3, Name: "bolt", Title: "Bolt Barrel flange 2 to Barrel flange 1", Kind: "bolt", A: end("Barrel flange 2"), B: end("Barrel flange 1"),
		How: "front of Barrel flange 2 on the front of Barrel flange 1", Clock: marks,
		Placed: append(slices.Clone(together), plan.Placed{Part: "barrel-flange", Copy: 2, Title: "Barrel flange 2", FrontMm: 0, OtherWay: true, New: true}),
		Bolt: &plan.BoltPlan{Size: "M10", Class: "8.8", Head: "hex", Count: 6, PCDMm: 140, Grip: []plan.GripRow{{What: "Barrel flange 2", ThickMm: 8}, {What: "Barrel flange 1", ThickMm: 8}}, GripMm: 16,
			Ordered: "M10 x 35", LengthMm: 35, EngagementMm: 8.4, NeedMm: 8.4, ProtrusionMm: -1, PreloadN: 25300, PreloadRangeN: plan.Range{Min: 17700, Max: 32900},
			TorqueNm: 51, TorqueRangeNm: plan.Range{Min: 35, Max: 66}, Threads: "dry", OtherThreads: "oiled", OtherTorqueNm: 38, K: 0.2, KSource: "clean and dry", Order: []int{1, 4, 2, 5, 3, 6}, OrderDeg: []float64{30, 210, 90, 270, 150, 330}},
		Traps: []plan.Trap{
			{TurnDeg: 60, Out: []plan.Out{{What: "Sleeve grease port", Clocked: true, AtDeg: 180, RightDeg: 120}, {What: "Barrel flange 2 pry", Elsewhere: true, Unruled: true}}},
			{TurnDeg: 0, OtherWay: true, Out: []plan.Out{{What: "heads on the wrong side"}}}, {TurnDeg: 180, OtherWay: true, Out: []plan.Out{{What: "heads on the wrong side"}}}},
		MassKg: 26, Lift: &plan.Lift{What: "Barrel flange 2 with all that is on it", MassKg: 26, How: "hoist or two people"},
	}
	bearing := &plan.JointPlan{N: 4, Name: "bearing", Title: "Bearing 30210: Sleeve in Barrel flange 1", Kind: "bearing", How: "fronts looking the same way", Placed: together,
		A: plan.JointEnd{Part: "sleeve", Copy: 1, Title: "Sleeve", PartTitle: "Sleeve", Feature: "seat", DiameterMm: 80, FromMm: 0, ToMm: 8}, B: bore,
		Bearing: &plan.BearingPlan{Bearing: "30210", ConeSleeveInMm: 50.5, ConeSleeveOutMm: 62, CupRingInMm: 78, CupRingOutMm: 89, Sleeve: true, Rings: []plan.PushRing{{InMm: 78, OutMm: 89}}, HasEndFloat: true, EndFloatMm: plan.Range{Min: -0.03, Max: -0.01}, HeatConeC: 110, GreaseG: 10}}
	apart := &plan.JointPlan{N: 5, Name: "gusset", Title: "Weld Sleeve to Barrel flange 1", Kind: "weld", A: sleeve, B: bore, How: "the parts share no axis",
		Weld: &plan.WeldPlan{ClockOf: "Sleeve", Type: "fillet", Symbol: "fillet weld", Designation: "z5", Process: "MAG", Sides: 2, LegMm: 5, ThroatMm: 3.54, LengthMm: 140, Runs: 1, BuyKg: 0.1}}
	pl.Joints = []*plan.JointPlan{press, weld, bolt, bearing, apart}
	pl.Lifts = []string{"after bolt 26 kg"}
	pl.Cuts = []plan.CutRow{{Stock: "tube Ø114.3", Material: "S355", BarMm: 6000, KerfMm: 2, TrimMm: 10, Source: "common practice, no source",
		Bars: []plan.CutBar{{Pieces: []plan.CutPiece{{Part: "Sleeve", LengthMm: 104, FromMm: 10}, {Part: "Sleeve", LengthMm: 104, FromMm: 116}}, OffcutMm: 5778}}}}
	return pl
}

// Worked is a small job of the tests of a package of layout, "part" or "joint", worked
// out. Its caller's package stands two folders down.
func Worked(t testing.TB, of, name string) *layout.Worked {
	t.Helper()
	job, err := read.Load(golden.Job(t, filepath.Join("..", "..", "layout", of, "testdata", "worked", name+".yaml")))
	if err != nil {
		t.Fatal(err)
	}
	w, err := layout.Resolve(job)
	if err != nil {
		t.Fatal(err)
	}
	return w
}
