package joint_test

import (
	"fmt"
	"math"
	"slices"
	"strings"
	"testing"

	"centrepop/layout/plan"
	"centrepop/layout/words"
)

// ballJob is a roller on an axle with two ball bearings: the classes of the seats on the axle and in the roller, which ring
// turns, and the designation.
func ballJob(t *testing.T, shaft, housing, rotating, bearing string) *plan.Plan {
	t.Helper()
	return ballJobOf(t, shaft, housing, rotating, bearing, "")
}

// ballJobOf is the same with more of the axle.
func ballJobOf(t *testing.T, shaft, housing, rotating, bearing, more string) *plan.Plan {
	t.Helper()
	edit := strings.NewReplacer("SHAFT", shaft, "HOUSING", housing)
	roller := edit.Replace(`part: roller
kind: turned
material: S355
stock: {round: 125, length: 54, cut: saw}
profile:
  outside: [{name: tread, diameter: 120, length: 50}]
  inside:
    - {name: near, diameter: 42, fit: HOUSING, length: 14}
    - {name: web, diameter: 37, length: 22}
    - {name: far, diameter: 42, fit: HOUSING, length: 14}
`)
	axle := edit.Replace(`part: axle
kind: shaft
material: C45
stock: {round: 30, length: 104, cut: saw}
profile: {outside: [{name: seat, diameter: 20, fit: SHAFT, length: 100}]}
`) + more
	one := func(name, bore, place string) string {
		return "{name: " + name + ", ball-bearing: {bearing: " + bearing + ", housing: roller." + bore + ", shaft: axle.seat, rotating: " + rotating + "}" + place + "}"
	}
	return planned(t, jobOf(t, one("near", "near", ", place: {on: front, with: back, at: [0, 0], top: up, gap: -75 mm}")+"\n  - "+one("far", "far", ""), roller, axle))
}

// Interferences by hand. 6004 of ISO 492 has a bore of 20 −0.010 and an outside of 42 −0.011; h6 is 20 −0.013, k6 20 +0.015 +0.002,
// N7 42 −0.008 −0.033, H7 42 +0.025. So h6 is 13 loose to 10 tight, k6 2 to 25 tight; N7 from 33 tight to 3 loose, H7 0 to 36
// loose. What goes on first is what the middle of the limits says is tight, and only that ring is pressed.
func TestBallBearingGoesOnByItsTightRing(t *testing.T) {
	t.Parallel()
	for _, c := range []struct {
		shaft, housing, rotating, bearing string
		inner, outer                      plan.Range
		onShaft                           bool
		heatC                             float64
		first, second                     string
	}{
		{"h6", "N7", "outer", "6004-2RS", plan.Range{Min: -13, Max: 10}, plan.Range{Min: -3, Max: 33}, false, 0, "Shaft through the bearings\nEnter axle through the inner rings by hand, straight, to its place, its front 25 before the front of roller", "went into roller far when the other went into roller near, before axle came through both"},
		{"g6", "N7", "outer", "6004-2RS", plan.Range{Min: -20, Max: 3}, plan.Range{Min: -3, Max: 33}, false, 0, "push or press it into roller far square, its bearing until it sounds home on its shoulder, roller resting square on its front", "before axle came through both"},
		{"k6", "H7", "inner", "6004-2RS", plan.Range{Min: 2, Max: 25}, plan.Range{Min: -36, Max: 0}, true, 0, "on the inner ring; it is 2 – 25 µm tight", "on the inner ring alone"},
		{"js6", "H7", "inner", "6004-2Z", plan.Range{Min: -6.5, Max: 16.5}, plan.Range{Min: -36, Max: 0}, true, 0, "on the inner ring", "on the inner ring alone"},
		{"js6", "H7", "inner", "6004", plan.Range{Min: -6.5, Max: 16.5}, plan.Range{Min: -36, Max: 0}, true, 110, "Heat the bearing to 110 °C, in oil", "on the inner ring alone"},
		{"k6", "N7", "inner", "6004-2RS", plan.Range{Min: 2, Max: 25}, plan.Range{Min: -3, Max: 33}, true, 0, "axle with its bearing", "on both rings at once"},
		{"f7", "H7", "outer", "6004-2RS", plan.Range{Min: -41, Max: -10}, plan.Range{Min: -36, Max: 0}, false, 0, "by hand, straight", "before axle came through both"},
	} {
		p := ballJob(t, c.shaft, c.housing, c.rotating, c.bearing)
		near, far := jointNamed(t, p, "near"), jointNamed(t, p, "far")
		b, name := near.Bearing, c.shaft+" "+c.housing+" "+c.bearing
		if b.ConeFitUm != c.inner || b.CupFitUm != c.outer {
			t.Errorf("%s: %v and %v µm, want %v and %v", name, b.ConeFitUm, b.CupFitUm, c.inner, c.outer)
		}
		if b.OnShaft != c.onShaft || b.HeatConeC != c.heatC {
			t.Errorf("%s: on the shaft first %v, heated to %v", name, b.OnShaft, b.HeatConeC)
		}
		if text := stepText(near); !strings.Contains(text, c.first) {
			t.Errorf("%s: first\n%s\nlacks %q", name, text, c.first)
		}
		if text := stepText(far); !strings.Contains(text, c.second) {
			t.Errorf("%s: second\n%s\nlacks %q", name, text, c.second)
		}
		if sealed := c.bearing != "6004"; sealed == strings.Contains(stepText(near), "grease") || b.Sealed != sealed || (b.GreaseG == 0) != sealed {
			t.Errorf("%s: sealed %v, %v g: %s", name, b.Sealed, b.GreaseG, stepText(near))
		}
	}
}

// The web is from 14 to 36 of the roller's front, each bearing 12 wide against it: on 2 to 14, and 36 to 48. Sleeves keep to the
// faces of the rings: 0.2 of the section of 22 inside them. DIN 5418 has 1.6 mm for 0.6 mm of the light series.
func TestBallBearingLiesOnItsShoulder(t *testing.T) {
	t.Parallel()
	p := ballJob(t, "h6", "N7", "outer", "6004-2RS")
	near, far := jointNamed(t, p, "near").Bearing, jointNamed(t, p, "far").Bearing
	for _, c := range []struct{ is, want float64 }{
		{math.Abs(near.CupBackMm - far.CupBackMm), 22}, {math.Abs(near.LargeEndMm - far.LargeEndMm), 46},
		{near.LargeEndMinMm, 23.2}, {near.SmallEndMaxMm, 26.6}, {near.CupBackMaxMm, 38.8}, {near.CupBackMinMm, 35.4},
		{near.ConeSleeveInMm, 20.5}, {near.ConeSleeveOutMm, 24.4}, {near.CupRingInMm, 37.6}, {near.CupRingOutMm, 41},
	} {
		if math.Abs(c.is-c.want) > 1e-9 {
			t.Errorf("%v, want %v", c.is, c.want)
		}
	}
	if near.LargeEndDir != -far.LargeEndDir {
		t.Error("both come from one side")
	}
	bought := ""
	for _, row := range p.Bought {
		bought += row.Item + " × " + string(rune('0'+row.Quantity)) + ", " + row.Note + "\n"
	}
	if want := "Deep-groove ball bearing 6004-2RS × 2, sealed, with its grease"; !strings.Contains(bought, want) {
		t.Errorf("%s lacks %s", bought, want)
	}
}

// Two bearings 25 × 52 × 15 of one shaft in one bore with one shoulder, 5 from its front: the one beside that stands on it,
// from 5 to 20; the other on its own shoulder of the shaft, behind a body of 60, so from 80 to 95. It is pressed on the
// shaft that stands in the first, whose balls are spared where the shaft is borne and not the housing.
func TestBallBearingsOfOneBore(t *testing.T) {
	t.Parallel()
	const housing = "part: housing\nkind: bearing-housing\nmaterial: EN-GJL-250\nstock: {round: 85, length: 104, cut: saw}\nprofile:\n  outside: [{name: body, diameter: 80, length: 100}]\n  inside: [{name: lip, diameter: 44, length: 5}, {name: bore, diameter: 52, fit: H7, length: 95}]\n"
	const shaft = "part: shaft\nkind: shaft\nmaterial: C45\nstock: {round: 40, length: 124, cut: saw}\nprofile:\n  outside: [{name: nose, diameter: 20, length: 30}, {name: one, diameter: 25, fit: k6, length: 15}, {name: body, diameter: 31, length: 60}, {name: two, diameter: 25, fit: k6, length: 15}]\n"
	on := func(seat string) string {
		return "{name: " + seat + ", ball-bearing: {bearing: 6205-2RS, housing: housing.bore, shaft: shaft." + seat + ", rotating: inner}}"
	}
	p := planned(t, jobOf(t, on("one")+"\n  - "+on("two"), housing, shaft))
	one, two := jointNamed(t, p, "one"), jointNamed(t, p, "two")
	if a, b := one.Bearing, two.Bearing; math.Abs(b.LargeEndMm+b.CupBackMm-a.LargeEndMm-a.CupBackMm) != 150 {
		t.Errorf("one from %g to %g, two from %g to %g", a.CupBackMm, a.LargeEndMm, b.CupBackMm, b.LargeEndMm)
	}
	if text := stepText(two); !strings.Contains(text, "until it stands on the shoulder body of shaft, shaft borne at its front end and not housing") {
		t.Error(text)
	}
	// With the nose of 20 ending in a blind mouth, a hole through its floor 12 or 13 wide, half of the seat of 25 or more: only the wider lets
	// something in that bears it. Common practice, no source.
	for hole, shut := range map[string]bool{"12": true, "13": false} {
		blind := strings.NewReplacer("length: 100}", "length: 135}", "length: 104", "length: 139", "inside: [{name: lip, diameter: 44, length: 5}", "inside: [{name: hole, diameter: "+hole+", length: 5}, {name: mouth, diameter: 44, length: 35}").Replace(housing)
		p := planned(t, jobOf(t, on("one")+"\n  - "+on("two"), blind, shaft))
		two, found := jointNamed(t, p, "two"), ""
		for _, q := range two.Problems {
			if q.Kind == plan.BallUnborne {
				found = q.What
			}
		}
		if shut != (found == "6205-2RS is pressed on shaft while housing shuts the front end of that: nothing bears the shaft there, and the force goes through the balls of another bearing") ||
			shut != strings.Contains(stepText(two), "until it stands on the shoulder body of shaft; the front end of shaft lies in housing, where nothing bears it.") {
			t.Errorf("%s: %q, %s", hole, found, stepText(two))
		}
	}
}

// With no shoulder in the housing of 35 and none on the shaft, a bearing of 15 lies in the middle of its bore: from 10 to 25.
func TestBallBearingInTheMiddle(t *testing.T) {
	t.Parallel()
	p := planned(t, jobOf(t, "{name: one, ball-bearing: {bearing: 6205-2RS, housing: housing.bore, shaft: shaft.seat, rotating: inner}, place: {on: front, with: back, at: [0, 0], top: up, gap: -60 mm}}",
		"part: housing\nkind: bearing-housing\nmaterial: EN-GJL-250\nstock: {round: 85, length: 44, cut: saw}\nprofile:\n  outside: [{name: body, diameter: 80, length: 35}]\n  inside: [{name: bore, diameter: 52, fit: H7, length: 35}]\n",
		"part: shaft\nkind: shaft\nmaterial: C45\nstock: {round: 30, length: 104, cut: saw}\nprofile:\n  outside: [{name: seat, diameter: 25, fit: k6, length: 100}]\n"))
	b := jointNamed(t, p, "one").Bearing
	for _, q := range jointNamed(t, p, "one").Placed {
		if from, to := math.Abs(b.CupBackMm-q.FrontMm), math.Abs(b.LargeEndMm-q.FrontMm); q.Part == "housing" && (min(from, to) != 10 || max(from, to) != 25) {
			t.Errorf("from %g to %g of the housing", from, to)
		} else if q.Part == "housing" {
			return
		}
	}
	t.Error("no housing")
}

// Between two retaining rings in a bore without a shoulder that to the front is sprung in before the bearing comes, the other after it.
func TestBallBearingBetweenRings(t *testing.T) {
	t.Parallel()
	p := planned(t, jobOf(t, "{name: one, ball-bearing: {bearing: 6205-2RS, housing: housing.bore, shaft: shaft.seat, rotating: inner}, place: {on: front, with: back, at: [0, 0], top: up, gap: -85 mm}}",
		"part: housing\nkind: bearing-housing\nmaterial: EN-GJL-250\nstock: {round: 85, length: 44, cut: saw}\nprofile:\n  outside: [{name: body, diameter: 80, length: 35}]\n  inside: [{name: bore, diameter: 52, fit: H7, length: 35}]\ngrooves: [{name: near, in: bore, axial: 7.85, for: retaining-ring}, {name: far, in: bore, axial: 25, for: retaining-ring}]\n",
		"part: shaft\nkind: shaft\nmaterial: C45\nstock: {round: 45, length: 84, cut: saw}\nprofile:\n  outside: [{name: seat, diameter: 25, fit: k6, length: 20}, {name: body, diameter: 40, length: 60}]\n"))
	says(t, jointNamed(t, p, "one"), []string{"shaft with its bearing until it stands in its place"}, nil)
	text := stepText(jointNamed(t, p, "one"))
	if near, push, far := strings.Index(text, "into near of housing"), strings.Index(text, "into housing bore"), strings.Index(text, "into far of housing"); near < 0 || push < near || far < push {
		t.Error(text)
	}
}

// Both shoulders of a bearing look to the back, 5 from the front of its housing: a shaft whose head of 60 does not pass the lip of 44
// stands in the housing before it, and so does one of 40 with a flight of 60 on it; without that it may bring it. The ring of that one, in a groove at the end of its 15, is sprung in last. Floating in a
// bore that only the spigot of a cover shuts, it stands on the shoulder of the shaft where the joint has a place: its end 55 in from the
// front of the housing and 45 beyond the shoulder, so from 10 to 25, and not against the spigot at 30.
func TestBallBearingGoesOnLast(t *testing.T) {
	t.Parallel()
	const housing = "part: housing\nkind: bearing-housing\nmaterial: EN-GJL-250\nstock: {round: 85, length: 44, cut: saw}\nprofile:\n  outside: [{name: body, diameter: 80, length: 40}]\n  inside: [{name: lip, diameter: LIP, length: 5}, {name: bore, diameter: 52, fit: H7, length: 35}]\nholes: [{name: taps, face: back, circle: {pcd: 66, count: 4}, size: M6 tap, depth: 12}]\n"
	const shaft = "part: shaft\nkind: shaft\nmaterial: C45\nstock: {round: 65, length: 84, cut: saw}\nprofile:\n  outside: [{name: head, diameter: HEAD, length: 15}, {name: neck, diameter: 31, length: 20}, {name: seat, diameter: 25, fit: k6, length: 45}]\ngrooves: [{name: clip, in: seat, axial: 50.1, for: retaining-ring}]\n"
	const cover = "part: cover\nkind: flange\nmaterial: S235\nstock: {round: 85, length: 24, cut: saw}\nprofile:\n  outside: [{name: spigot, diameter: 52, fit: f7, length: 10}, {name: rim, diameter: 80, length: 10}]\n  inside: [{name: bore, diameter: 40, length: 20}]\nholes: [{name: holes, face: back, circle: {pcd: 66, count: 4}, size: M6 clearance}]\n"
	const covered = "\n  - {name: cover, bolt: {through: cover.holes, into: housing.taps, bolt: M6 8.8}, face: front-on-back}"
	const flight = "part: flight\nkind: flight\nmaterial: S235\nstock: {sheet: 2 mm, cut: laser}\nflight: {shaft: 40, outside: 60, pitch: 15, thickness: 2}\n"
	const worm = "{name: worm, weld: {part: flight.inside, to: shaft.head, type: fillet}, level: front-with-front}\n  - "
	for _, c := range []struct {
		worm, head, lip, place string
		last, onShaft          bool
		first                  string
		atMm                   float64
	}{
		{"", "60", "44", "", true, false, "Shaft into the housing", 5}, {"", "40", "44", "", false, true, "Bearing on the shaft", 5}, {worm, "40", "44", "", true, false, "Shaft into the housing", 5},
		{"", "60", "52.4", ", place: {on: front, with: back, at: [0, 0], top: up, gap: -55 mm}", false, true, "Bearing on the shaft", 10},
	} {
		edit := strings.NewReplacer("HEAD", c.head, "LIP", c.lip)
		p := planned(t, jobOf(t, c.worm+"{name: one, ball-bearing: {bearing: 6205-2RS, housing: housing.bore, shaft: shaft.seat, rotating: inner}"+c.place+"}"+covered, edit.Replace(housing), edit.Replace(shaft), cover, flight))
		one := jointNamed(t, p, "one")
		b, steps := one.Bearing, one.Steps
		if b.Last != c.last || b.OnShaft != c.onShaft || steps[0].Title != c.first || c.last && !strings.Contains(strings.Join(steps[len(steps)-1].Do, " "), "into clip of shaft") {
			t.Errorf("head %s: last %v, on the shaft %v: %s", c.head, b.Last, b.OnShaft, stepText(one))
		}
		for _, q := range one.Placed {
			from, to := math.Abs(b.CupBackMm-q.FrontMm), math.Abs(b.LargeEndMm-q.FrontMm)
			if q.Part == "housing" && math.Abs(min(from, to)-c.atMm) > 1e-9 {
				t.Errorf("head %s: bearing from %g to %g of the housing", c.head, from, to)
			}
		}
	}
}

// A housing with a collar of 70 is pressed into a plate of 12, its nose of 23 leading, for the collar does not pass the bore: so much comes
// out below. Its seal, which no bearing passes, goes in before the plate is bolted on, behind which none reaches it, and once.
func TestPressedHousingHasItsSealInTime(t *testing.T) {
	t.Parallel()
	const housing = "part: housing\nkind: bearing-housing\nmaterial: S235\nstock: {round: 75, length: 44, cut: saw}\nprofile:\n  outside: [{name: collar, diameter: 70, length: 5}, {name: press, diameter: 60, fit: p6, length: 12}, {name: nose, diameter: 58, length: 23}]\n" +
		"  inside: [{name: seal, diameter: 35, fit: H8, length: 8, seat: seal 20x35x7, lip: front}, {name: land, diameter: 30, length: 4}, {name: seat, diameter: 42, fit: H7, length: 28}]\nholes: [{name: taps, face: back, circle: {pcd: 50, count: 4}, size: M4 tap, depth: 10}]\n"
	const plate = "part: plate\nkind: plate\nmaterial: S235\nstock: {plate: 12 mm, cut: laser}\noutline: {square: 150}\nbore: {diameter: 60, fit: H7, leave: 2}\nholes: [{name: bolts, grid: {columns: 2, rows: 2, pitch: [120, 120]}, size: M8 clearance}]\n"
	const base = "part: base\nkind: plate\nmaterial: S235\nstock: {plate: 12 mm, cut: laser}\noutline: {square: 150}\nbore: {diameter: 90}\nholes: [{name: taps, grid: {columns: 2, rows: 2, pitch: [120, 120]}, size: M8 tap}]\n"
	const cap = "part: cap\nkind: plate\nmaterial: S235\nstock: {plate: 5 mm, cut: laser}\noutline: {circle: 58}\nholes: [{name: bolts, circle: {pcd: 50, count: 4}, size: M4 clearance}]\n"
	p := planned(t, jobOf(t, "{name: press, press: {shaft: housing.press, bore: plate.bore}, face: back-on-front}\n  - {name: on, bolt: {through: plate.bolts, into: base.taps, bolt: M8 8.8}, face: front-on-back}\n  - {name: shut, bolt: {through: cap.bolts, into: housing.taps, bolt: M4 8.8}, face: front-on-back}", housing, plate, base, cap))
	says(t, jointNamed(t, p, "press"), []string{"housing comes out 23 below it"}, nil)
	const seal = "Press seal 20x35x7 into seal of housing"
	says(t, jointNamed(t, p, "on"), []string{seal}, nil)
	says(t, jointNamed(t, p, "shut"), nil, []string{seal})
}

// The shaft's shoulder stands 1 past that of the housing, by the place of the joint, and the bearing on it: 6 from the lip of 5,
// which its outer ring keeps off. So it does in a housing that looks the other way; 0.5 short of it, the bearing is home on the lip.
func TestBallBearingFloatsOffItsHousing(t *testing.T) {
	t.Parallel()
	const lip, bore = "{name: lip, diameter: 44, length: 5}", "{name: bore, diameter: 52, fit: H7, length: 35}"
	const shaft = "part: shaft\nkind: shaft\nmaterial: C45\nstock: {round: 65, length: 84, cut: saw}\nprofile:\n  outside: [{name: head, diameter: 60, length: 15}, {name: neck, diameter: 31, length: 20}, {name: seat, diameter: 25, fit: k6, length: 45}]\n"
	for _, c := range []struct {
		inside, on string
		atMm, long float64 // of the bearing, from that face of the housing
		home       string
	}{
		{lip + ", " + bore, "front", 6, 51, "until it stands on the shoulder neck of shaft"},
		{bore + ", " + lip, "back", 6, 51, "until it stands on the shoulder neck of shaft"},
		{lip + ", " + bore, "front", 5, 49.5, "until it sounds home on its shoulder"},
	} {
		housing := "part: housing\nkind: bearing-housing\nmaterial: EN-GJL-250\nstock: {round: 85, length: 44, cut: saw}\nprofile:\n  outside: [{name: body, diameter: 80, length: 40}]\n  inside: [" + c.inside + "]\n"
		one := jointNamed(t, planned(t, jobOf(t, fmt.Sprintf("{name: one, ball-bearing: {bearing: 6205-2RS, housing: housing.bore, shaft: shaft.seat, rotating: inner}, place: {on: %s, with: back, at: [0, 0], top: up, gap: -%g mm}}", c.on, c.long), housing, shaft)), "one")
		b := one.Bearing
		if text := stepText(one); !b.Last || !strings.Contains(text, c.home) || strings.Contains(text, "neck") != (c.atMm == 6) {
			t.Errorf("%s, %g: last %v: %s", c.on, c.long, b.Last, text)
		}
		for _, q := range one.Placed {
			if face := q.FrontMm + 40; q.Part == "housing" { // its back; its front is 40 before that
				if c.on == "front" {
					face = q.FrontMm
				} else if q.OtherWay {
					face = q.FrontMm - 40
				}
				if at := min(math.Abs(b.CupBackMm-face), math.Abs(b.LargeEndMm-face)); math.Abs(at-c.atMm) > 1e-9 {
					t.Errorf("%s: the bearing %g from it, want %g", c.on, at, c.atMm)
				}
			}
		}
	}
}

// TestBallsBetweenTwoRings: the axle stands 25 out of the roller, whose web of 22 keeps its bearings, each 12 −0.12 wide, at 27 to 39 and
// 61 to 73 of it. Of two rings 1.2 thick the one before the first bearing is held by the front wall of its groove, at 25.7 ± 0.2, the one behind the
// second by the back wall of its own, 1.3 to 1.44 wide, at 73 ± 0.3: 45.7 to 46.84 between them.
// The web is what 50 ± 0.3 leave of two seats of 14 ± 0.2: 21.3 to 22.7.
// Grooves 0.7 and 0.5 further out leave 0.2 to 2.98, each bearing keeps the axle one way; one ring alone leaves it to go to the
// front, and two beside one bearing leave the other to float; two beside each hold it by the closest. What lies along is judged at the last of them.
func TestBallsBetweenTwoRings(t *testing.T) {
	t.Parallel()
	const play = "held along: each of the bearings one way; play along between the bearings: 0.2 – 2.98; play of roller along, some, no bearing pushes the other, 0.2 – 2.98"
	for _, c := range []struct {
		at     []float64
		leaves string
		want   string
	}{
		{[]float64{25.7, 73}, "[]", "clamped -1 1.78"}, {[]float64{25, 73.5}, "[]", play}, {nil, "[back front]", ""}, {[]float64{25}, "[front]", ""}, {[]float64{73.5}, "[back]", ""},
		{[]float64{25, 39.2}, "[]", "held along: roller near both ways; roller far floats"}, {[]float64{59.6, 73.5}, "[]", "held along: roller far both ways; roller near floats"},
		{[]float64{25, 39.6, 59.2, 73.5}, "[]", "held along: roller near, roller far both ways; play along between the bearings: 0.2 – 2.98"},
	} {
		var grooves []string
		for i, at := range c.at {
			grooves = append(grooves, fmt.Sprintf("{name: ring-%d, in: seat, axial: %g, for: retaining-ring}", i, at))
		}
		p := ballJobOf(t, "h6", "N7", "outer", "6004-2RS", words.When(grooves != nil, "grooves: ["+strings.Join(grooves, ", ")+"]\n"))
		var got []string
		for _, name := range []string{"near", "far"} {
			one := jointNamed(t, p, name)
			for _, q := range one.Problems {
				if q.Kind == plan.BallsClamped {
					got = append(got, fmt.Sprint("clamped ", q.Args[3].Value, " ", q.Args[4].Value))
				}
			}
			for _, f := range one.Figures {
				if strings.Contains(f.Label, "along") {
					got = append(got, f.Label+": "+f.Value)
				}
			}
			for _, k := range one.Checks {
				if strings.HasSuffix(k.What, " along") {
					got = append(got, k.What+", "+k.Wanted+", "+k.Limits)
				}
			}
		}
		if leaves := fmt.Sprint(jointNamed(t, p, "far").Bearing.Leaves); leaves != c.leaves || strings.Join(got, "; ") != c.want || jointNamed(t, p, "near").Bearing.Leaves != nil {
			t.Errorf("rings at %v: it goes to %s; %q", c.at, leaves, got)
		}
	}
}

// The first of two bearings in two housings leaves the shaft to tip in it until the second is in; in one housing it stands in that.
func TestOneBearingDoesNotHold(t *testing.T) {
	t.Parallel()
	const housing = "kind: bearing-housing\nmaterial: EN-GJL-250\nstock: {round: 85, length: 44, cut: saw}\nprofile:\n  outside: [{name: body, diameter: 80, length: 40}]\n  inside: [{name: lip, diameter: 44, length: 5}, {name: bore, diameter: 52, fit: H7, length: 35}]\n"
	const shaft = "part: shaft\nkind: shaft\nmaterial: C45\nstock: {round: 40, length: 304, cut: saw}\nprofile:\n  outside: [{name: one, diameter: 25, fit: k6, length: 45}, {name: body, diameter: 31, length: 210}, {name: two, diameter: 25, fit: k6, length: 45}]\n"
	const ball = "ball-bearing: {bearing: 6205-2RS, housing: %s.bore, shaft: shaft.%s, rotating: inner}"
	p := planned(t, jobOf(t, fmt.Sprintf("{name: one, "+ball+", other-way-round: yes}\n  - {name: two, "+ball+"}", "near", "one", "far", "two"), "part: near\n"+housing, "part: far\n"+housing, shaft))
	const said = "One bearing does not hold shaft straight: its other end stays in the sling or on blocks until its bearing in far is in."
	says(t, jointNamed(t, p, "one"), []string{said}, nil)
	says(t, jointNamed(t, p, "two"), nil, []string{"One bearing"})
}

// TestRingsAreSeatedAsMeasured: a ring covers the gap at its shoulder, so its place is measured from the face that it comes from,
// in the row in which it goes in; the rings of the sheave come from both sides.
func TestRingsAreSeatedAsMeasured(t *testing.T) {
	t.Parallel()
	says(t, jointNamed(t, demoPlan(t, "pugmill"), "front-bearing"), []string{
		"First measure how deep the shoulder lies from the front of Bearing housing, and how wide the cup is.",
		"Depth micrometer from the front of Bearing housing to the cup, four places round: that depth less that width, within 0.05 mm.",
		"Depth micrometer from the back of Bearing housing to the cup",
	}, []string{"between cup and shoulder"})
	says(t, jointNamed(t, demoPlan(t, "gatejack"), "sheave-lower"), []string{
		"First measure how deep the shoulder lies from the back of Cord sheave, and how wide the outer ring is.",
		"Depth micrometer from the front of Cord sheave to the outer ring, four places round: that depth less that width, within 0.002 in.",
		"outer ring on its shoulder: that depth less that width, within 0.002 in, depth micrometer",
	}, nil)
}

// TestPressRingClearsTheShaft: what presses on a bearing that goes over a shaft, or in with it, reaches out over the end of that too. In the
// roller the far bearing lies at 36 to 48; the axle stands 25 out of its front, and so at 75 ends: 27 beyond the bearing, and 20 more for the
// hand. The near one goes in with the axle where both rings may be tight, at 2 to 14: 27 of the axle lie before it.
func TestPressRingClearsTheShaft(t *testing.T) {
	t.Parallel()
	for housing, want := range map[string][]string{
		"H7": {"Press ring Ø20.5 inside, Ø24.4 outside, 47 long, on the inner ring"},
		"N7": {"Press ring Ø37.6 inside, Ø41 outside, 47 long, on the outer ring", "Press ring Ø20.5 inside, Ø41 outside, 47 long, on both rings"},
	} {
		var got []string
		for _, r := range ballJob(t, "k6", housing, "inner", "6004-2RS").Tools {
			if strings.HasPrefix(r.Tool, "Press ring") {
				got = append(got, r.Tool)
			}
		}
		if !slices.Equal(got, want) {
			t.Errorf("%s: %q", housing, got)
		}
	}
}
