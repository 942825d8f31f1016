package fits

import (
	"errors"
	"strings"

	"centrepop/layout/lookup"
)

// ErrNotDefined is wrapped by every refusal of a class, grade or size that is
// well formed but for which the standard gives no value. Test for it with
// [errors.Is].
var ErrNotDefined = errors.New("not defined by the standard")

// refuse builds the error for a class that is blank at a checked size.
func refuse(nominalMm float64, c Class, reason string) error {
	return lookup.Refuse("fits: %v %s: %w: %s; nearest defined: %s", lookup.Mm(nominalMm), c, ErrNotDefined, reason, nearest(nominalMm, c))
}

// nearest looks for a defined class at the same size: the closest letter, its
// own first and of two the one nearer to a; and with it the closest grade, of
// two the finer. Hole G7 and shaft u7 exist at every size, so one is found.
func nearest(nominalMm float64, c Class) Class {
	at := letterIndex(strings.ToLower(c.Letter))
	n := c
	for d := 0; d < len(letters); d++ {
		for _, i := range [...]int{at - d, at + d} {
			if i < 0 || i >= len(letters) {
				continue
			}
			n.Letter = letters[i]
			if c.Hole {
				n.Letter = strings.ToUpper(n.Letter)
			}
			if found, ok := nearestInGrade(nominalMm, n); ok {
				return found
			}
		}
	}
	return n
}

// nearestInGrade keeps the letter and looks for the closest defined grade.
func nearestInGrade(nominalMm float64, c Class) (Class, bool) {
	for d := 0; d <= GradeFinal-GradeIT01; d++ {
		for _, g := range [...]int{c.Grade - d, c.Grade + d} {
			if g < GradeIT01 || g > GradeFinal {
				continue
			}
			n := c
			n.Grade = g
			if _, _, reason := deviations(nominalMm, n); reason == "" {
				return n, true
			}
		}
	}
	return Class{}, false
}
