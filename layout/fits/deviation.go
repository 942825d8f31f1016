package fits

import (
	"math"
	"slices"
	"strings"
)

// deviations returns the upper and lower limit deviations, µm, of a class at a
// checked nominal size. A reason other than "" says why the standard gives
// none.
func deviations(nominalMm float64, c Class) (upperUm, lowerUm float64, reason string) {
	it, reason := tolerance(nominalMm, c.Grade)
	if reason != "" {
		return 0, 0, reason
	}
	if c.Hole {
		upperUm, lowerUm, reason = holeDeviations(nominalMm, strings.ToLower(c.Letter), c.Grade, it)
	} else {
		upperUm, lowerUm, reason = shaftDeviations(nominalMm, c.Letter, c.Grade, it)
	}
	if reason != "" {
		return 0, 0, reason
	}
	upperUm, lowerUm = roundUm(upperUm), roundUm(lowerUm)
	if sizeMm(nominalMm, lowerUm) <= 0 {
		return 0, 0, "its lower limit of size would not be above zero"
	}
	return upperUm, lowerUm, ""
}

// sizeMm adds a deviation to a nominal size and clears the float dust below a
// nanometre, so that 90 mm and +35 µm is 90.035 and nothing else.
func sizeMm(nominalMm, deviationUm float64) float64 {
	return math.Round((nominalMm+deviationUm/1000)*1e6) / 1e6
}

// roundUm clears the float dust of sums of tabulated values, whose finest
// digit is 0.05 µm (half of IT01).
func roundUm(um float64) float64 {
	r := math.Round(um*1000) / 1000
	if r == 0 {
		return 0 // never minus zero, which would print as "-0"
	}
	return r
}

// shaftDeviations returns es and ei. Letters a to h fix es and lie below the
// nominal size, j to zc fix ei.
func shaftDeviations(nominalMm float64, letter string, grade int, it float64) (es, ei float64, reason string) {
	switch letter {
	case "js":
		return it / 2, -it / 2, ""
	case "j":
		ei, reason = shaftJ(nominalMm, grade)
		return ei + it, ei, reason
	case "k":
		ei = shaftK(nominalMm, grade)
		return ei + it, ei, ""
	}
	d, reason := shaftMagnitude(nominalMm, letter)
	if letterIndex(letter) <= letterIndex("h") {
		return -d, -d - it, reason
	}
	return d + it, d, reason
}

// holeDeviations returns ES and EI for a hole whose letter is given small.
//
// Holes A to H mirror the shaft of the same letter: EI = -es (general rule).
// Holes K to ZC mirror it too, ES = -ei, but above 3 mm up to 500 mm the finer
// grades get the amount Δ = ITn - IT(n-1) added, so that a hole-basis fit and
// the shaft-basis fit with a shaft one grade finer come out equal (special
// rule: K, M, N up to IT8; P to ZC up to IT7).
func holeDeviations(nominalMm float64, letter string, grade int, it float64) (upper, lower float64, reason string) {
	switch letter {
	case "js":
		return it / 2, -it / 2, ""
	case "j":
		upper, reason = holeJ(nominalMm, grade)
		return upper, upper - it, reason
	case "k":
		if grade > 8 && nominalMm > 3 {
			return 0, 0, "hole K is given above 3 mm only up to grade 8"
		}
		upper = -shaftK(nominalMm, 7)
	case "n":
		if grade > 8 && nominalMm <= 1 {
			return 0, 0, "hole N is not used above grade 8 up to and including 1 mm"
		}
		if grade > 8 && nominalMm > 3 && nominalMm <= 500 {
			return 0, -it, ""
		}
	}
	if letter == "m" && grade == 6 && nominalMm > 250 && nominalMm <= 315 {
		return -9, -9 - it, "" // special case in ISO 286-1: the rule would give -11
	}
	if letter != "k" {
		d, reason := shaftMagnitude(nominalMm, letter)
		if reason != "" {
			return 0, 0, reason
		}
		if letterIndex(letter) <= letterIndex("h") {
			return d + it, d, ""
		}
		upper = -d
	}
	delta, reason := holeDelta(nominalMm, letter, grade, it)
	return upper + delta, upper + delta - it, reason
}

// holeDelta is the Δ of the special rule, µm; zero where the rule does not
// apply. The standard lists Δ for grades 3 to 8 only.
// Source: ISO 286-1:2010, Tables 2 and 3, right-hand columns.
func holeDelta(nominalMm float64, letter string, grade int, it float64) (delta float64, reason string) {
	top := 7
	if letter == "k" || letter == "m" || letter == "n" {
		top = 8
	}
	switch {
	case nominalMm <= 3 || nominalMm > 500 || grade > top:
		return 0, ""
	case grade < 3:
		return 0, "holes K to ZC above 3 mm up to 500 mm are given only from grade 3"
	}
	finer, reason := tolerance(nominalMm, grade-1)
	return it - finer, reason
}

// shaftJ returns ei of shaft j, µm. Source: ISO 286-1:2010, Table 5.
func shaftJ(nominalMm float64, grade int) (ei float64, reason string) {
	if nominalMm > 500 {
		return 0, "letter j is given only up to and including 500 mm"
	}
	row := shaftJTable[stepOf(mainSteps[:], nominalMm)]
	switch {
	case grade == 5 || grade == 6:
		return -row[0], ""
	case grade == 7:
		return -row[1], ""
	case grade == 8 && nominalMm <= 3:
		return -6, ""
	}
	return 0, "shaft j is given only in grades 5, 6 and 7, and 8 up to and including 3 mm"
}

// holeJ returns ES of hole J, µm. Source: ISO 286-1:2010, Table 2.
func holeJ(nominalMm float64, grade int) (upper float64, reason string) {
	if nominalMm > 500 {
		return 0, "letter J is given only up to and including 500 mm"
	}
	if grade < 6 || grade > 8 {
		return 0, "hole J is given only in grades 6, 7 and 8"
	}
	return holeJTable[stepOf(mainSteps[:], nominalMm)][grade-6], ""
}

// shaftK returns ei of shaft k, µm: tabulated for grades 4 to 7 up to 500 mm,
// zero for the others. Source: ISO 286-1:2010, Table 5.
func shaftK(nominalMm float64, grade int) float64 {
	if nominalMm > 500 || grade < 4 || grade > 7 {
		return 0
	}
	return shaftKTable[stepOf(mainSteps[:], nominalMm)]
}

// shaftMagnitude returns the fundamental deviation of a shaft letter other
// than j, js and k, µm, without its sign.
func shaftMagnitude(nominalMm float64, letter string) (um float64, reason string) {
	if letter == "h" {
		return 0, ""
	}
	if nominalMm <= 1 && (letter == "a" || letter == "b") {
		return 0, "letters A and B (a and b) are not used up to and including 1 mm"
	}
	step := stepOf(deviationSteps[:], nominalMm)
	um = none
	if column := slices.Index(clearanceLetters[:], letter); column >= 0 {
		um = clearanceTable[step][column]
	} else if column := slices.Index(tightLetters[:], letter); column >= 0 {
		um = tightTable[step][column]
	}
	if um == none {
		return 0, blankReason(letter, nominalMm)
	}
	return um, ""
}

// blankReason says where a letter is defined, for a size where it is not.
func blankReason(letter string, nominalMm float64) string {
	const both = " of hole and shaft is given only "
	name := "letter " + strings.ToUpper(letter)
	switch letter {
	case "cd", "ef", "fg":
		return name + both + "up to and including 50 mm"
	case "a", "b", "c", "x", "z", "za", "zb", "zc":
		return name + both + "up to and including 500 mm"
	case "v":
		return name + both + "above 14 mm up to and including 500 mm"
	case "y":
		return name + both + "above 18 mm up to and including 500 mm"
	}
	return name + both + "above 24 mm" // t, the only other letter with a blank
}
