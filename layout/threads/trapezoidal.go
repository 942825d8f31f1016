package threads

import (
	"math"
	"slices"
	"strings"

	"centrepop/layout/lookup"
	"centrepop/parts/seq"
)

// A trRow is one diameter of the metric trapezoidal threads with its pitches, the preferred first.
type trRow struct {
	d       float64
	pitches []float64
}

// trRows are ISO 2902 to 120 mm (the preferred pitches as a lexicon of measuring prints DIN 103, the others as a public
// list has them, but 105 and 120 mm from memory); Tr10x3, Tr14x4, Tr25x3 and Tr25x5 are of the trade (a maker's list).
var trRows = []trRow{
	{8, []float64{1.5}}, {9, []float64{2, 1.5}}, {10, []float64{2, 1.5, 3}}, {11, []float64{2, 3}}, {12, []float64{3, 2}}, {14, []float64{3, 2, 4}},
	{16, []float64{4, 2}}, {18, []float64{4, 2}}, {20, []float64{4, 2}}, {22, []float64{5, 3, 8}}, {24, []float64{5, 3, 8}}, {25, []float64{5, 3}}, {26, []float64{5, 3, 8}},
	{28, []float64{5, 3, 8}}, {30, []float64{6, 3, 10}}, {32, []float64{6, 3, 10}}, {34, []float64{6, 3, 10}}, {36, []float64{6, 3, 10}}, {38, []float64{7, 3, 10}},
	{40, []float64{7, 3, 10}}, {42, []float64{7, 3, 10}}, {44, []float64{7, 3, 12}}, {46, []float64{8, 3, 12}}, {48, []float64{8, 3, 12}}, {50, []float64{8, 3, 12}},
	{52, []float64{8, 3, 12}}, {55, []float64{9, 3, 14}}, {60, []float64{9, 3, 14}}, {65, []float64{10, 4, 16}}, {70, []float64{10, 4, 16}}, {75, []float64{10, 4, 16}},
	{80, []float64{10, 4, 16}}, {85, []float64{12, 4, 18}}, {90, []float64{12, 4, 18}}, {95, []float64{12, 4, 18}}, {100, []float64{12, 4, 20}}, {105, []float64{12, 4, 20}},
	{110, []float64{12, 4, 20}}, {120, []float64{14, 6, 22}},
}

// A trPitch holds, for one pitch, the tolerances of the crests, screw and nut, and how far the pitch diameter
// of the screw lies below its basic size at the positions c and e; 0.001 mm.
type trPitch struct{ p, major, minor, c, e float64 }

// trPitches are ISO 2903: e and major of the pitches 1.5 to 5 as printed limits have them, the others from memory; the
// tests hold all but c within a step of the formulas they are rounded from.
var trPitches = []trPitch{
	{1.5, 150, 190, 140, 67}, {2, 180, 236, 150, 71}, {3, 236, 315, 170, 85}, {4, 300, 375, 190, 95}, {5, 335, 450, 212, 106}, {6, 375, 500, 236, 118},
	{7, 425, 560, 250, 125}, {8, 450, 630, 265, 132}, {9, 500, 670, 280, 140}, {10, 530, 710, 300, 150}, {12, 600, 800, 335, 160}, {14, 670, 900, 355, 180},
	{16, 710, 1000, 375, 190}, {18, 800, 1120, 400, 200}, {20, 850, 1180, 425, 212}, {22, 900, 1250, 450, 224},
}

// trPitchTolerance are the tolerances of the pitch diameter of the screw, grade 7 of ISO 2903, in 0.001 mm by
// pitch, up to a diameter in mm: those that trapezoidal.csv has likewise, the others from memory.
var trPitchTolerance = []trRange{
	{11.2, map[float64]float64{1.5: 170, 2: 190, 3: 212}},
	{22.4, map[float64]float64{2: 200, 3: 224, 4: 265, 5: 280, 8: 355}},
	{45, map[float64]float64{3: 250, 5: 300, 6: 335, 7: 355, 8: 375, 10: 400, 12: 425}},
	{90, map[float64]float64{3: 265, 4: 300, 8: 400, 9: 425, 10: 425, 12: 475, 14: 500, 16: 530, 18: 560}},
	{180, map[float64]float64{4: 315, 6: 375, 12: 500, 14: 530, 18: 600, 20: 600, 22: 630}},
}

// A trRange is one range of diameters in mm with its tolerances by pitch.
type trRange struct {
	upTo float64
	of   map[float64]float64
}

// preferred are the preferred numbers R40 that tolerances are rounded to, ISO 3: a grade more is four of them,
// and the nut has five more than its screw (ISO 965-1, factors 1.25 and 1.32).
var preferred = []float64{
	160, 170, 180, 190, 200, 212, 224, 236, 250, 265, 280, 300, 315, 335, 355, 375, 400, 425, 450, 475, 500, 530, 560, 600, 630, 670, 710, 750, 800, 850, 900, 950, 1000, 1060, 1120,
}

// trClasses are the classes of ISO 2903 that are read: the first outside and inside are those of a thread
// without a class.
var trClasses = []string{"7e", "7H", "8e", "8c", "8H"}

// trClearance is that between crest and root in mm: ISO 2901.
func trClearance(pitch float64) float64 {
	switch {
	case pitch < 2:
		return 0.15
	case pitch < 6:
		return 0.25
	case pitch < 14:
		return 0.5
	}
	return 1
}

// trThread builds a trapezoidal thread of a class, "" for that of medium fits. Several starts have the
// tolerances of one; ISO 2903 allows them more (from memory).
func trThread(d, pitch float64, class string, left bool, starts int) Thread {
	clear, lead := trClearance(pitch), pitch*float64(starts)
	name := "Tr" + number(d) + "x" + number(lead)
	if starts > 1 {
		name += "P" + number(pitch)
	}
	outside, inside := trClasses[0], trClasses[1]
	if strings.HasSuffix(class, "H") {
		inside = class
	} else if class != "" {
		outside = class
	}
	row := trPitches[slices.IndexFunc(trPitches, func(r trPitch) bool { return r.p == pitch })]
	at := slices.IndexFunc(trPitchTolerance, func(r trRange) bool { return d <= r.upTo })
	medium := slices.Index(preferred, trPitchTolerance[at].of[pitch])
	more := func(class string, steps int) float64 { // of the pitch diameter
		if class[0] == '8' {
			steps += 4
		}
		return preferred[medium+steps]
	}
	below := row.e
	if strings.HasSuffix(outside, "c") {
		below = row.c
	}
	middle, least := d-pitch/2, d-pitch
	root, tolerance := least-2*clear, more(outside, 0)
	limits := func(lo, hi float64) [2]float64 { return [2]float64{round3(lo), round3(hi)} }
	flat, depth := round3(pitch/2-2*(pitch/4+clear)*math.Tan(math.Pi/12)), round3(pitch/2+clear) // half a pitch wide at the pitch line
	return Thread{
		Designation: handed(name, left), Series: Trapezoidal, Class: class,
		PitchMm: pitch, MajorMm: d, PitchDiameterMm: round3(middle), MinorMm: round3(least),
		Source: lookup.Standard("ISO 2904, limits ISO 2903"),
		Note:   "cut with a tool or a tap of its own; limits of pitches 1.5 to 5 to 25 mm as tables print them, others from memory, by the standard's formulas; flat of the tool by geometry",
		Lead: &Lead{
			AngleDeg: 30, Starts: starts, LeftHand: left, LeadMm: lead, ClearanceMm: clear,
			Screw: LeadLimits{
				Class: outside, Major: limits(d-row.major/1000, d), Pitch: limits(middle-(below+tolerance)/1000, middle-below/1000),
				Minor: limits(root-math.Round(1.25*tolerance+below)/1000, root), FlatMm: flat, DepthMm: depth,
			},
			Nut: LeadLimits{
				Class: inside, Major: [2]float64{round3(d + 2*clear), 0}, Pitch: limits(middle, middle+more(inside, 5)/1000),
				Minor: limits(least, least+row.minor/1000), FlatMm: flat, DepthMm: depth,
			},
		},
	}
}

// parseTr reads what follows the Tr: "20x4", "24x10P5 LH", "40x14 (P7) 8e".
func parseTr(designation, text string) (Thread, error) {
	words := split(strings.NewReplacer(" x ", "x", "x ", "x", " x", "x", "p ", " p", "p", " p").Replace(text))
	if len(words) == 0 {
		return Thread{}, unknown(designation, "the diameter and the pitch are missing")
	}
	first, second, _ := strings.Cut(words[0], "x")
	d, okD := decimal(first)
	lead, okP := decimal(second)
	pitch, starts := lead, 1
	if len(words) > 1 && words[1][0] == 'p' {
		var ok bool
		if pitch, ok = decimal(words[1][1:]); !ok || pitch == 0 {
			return Thread{}, unknown(designation, "the pitch behind P is not a number above zero")
		}
		starts = int(math.Round(lead / pitch))
		words = words[1:]
	}
	class, left, _, ok := leadMarks(words[1:], trClasses)
	switch {
	case !okD || !okP:
		return Thread{}, unknown(designation, "the diameter and the pitch are wanted as in Tr20x4")
	case !ok:
		return Thread{}, unknown(designation, "behind the pitch may stand LH and a class: "+strings.Join(trClasses, ", "))
	case starts < 1 || starts > mostStarts || math.Abs(float64(starts)*pitch-lead) > 1e-6:
		return Thread{}, unknown(designation, "the lead is not a pitch times a number of starts to "+number(mostStarts))
	}
	for _, row := range trRows {
		if row.d != d {
			continue
		}
		if slices.Contains(row.pitches, pitch) {
			return trThread(d, pitch, class, left, starts), nil
		}
		known := seq.Map(row.pitches, func(p float64) string { return trThread(d, p, "", false, 1).Designation })
		return Thread{}, &UnknownError{designation, "not a pitch of this diameter in ISO 2902", known}
	}
	return Thread{}, unknown(designation, "not a diameter of ISO 2902 from 8 to 120")
}
