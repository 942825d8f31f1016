package fits

import (
	"errors"
	"fmt"
	"strings"
)

// ErrNotDefined is wrapped by every refusal of a class, grade or size that is
// well formed but for which the standard gives no value. Test for it with
// [errors.Is].
var ErrNotDefined = errors.New("not defined by the standard")

// refuse builds the error for a class that is blank at a checked size.
func refuse(nominalMm float64, c Class, reason string) error {
	if n, ok := nearest(nominalMm, c); ok {
		return fmt.Errorf("fits: %v mm %s: %w: %s; nearest defined: %s", nominalMm, c, ErrNotDefined, reason, n)
	}
	return fmt.Errorf("fits: %v mm %s: %w: %s", nominalMm, c, ErrNotDefined, reason)
}

// nearest looks for a defined class at the same size: first the same letter
// with the closest grade, the finer of two; then the closest letter with the
// same grade, the looser shaft of two; then both.
func nearest(nominalMm float64, c Class) (Class, bool) {
	if n, ok := nearestInGrade(nominalMm, c); ok {
		return n, true
	}
	small := strings.ToLower(c.Letter)
	at := letterIndex(small)
	other := func(i int) (Class, bool) {
		if i < 0 || i >= len(letters) {
			return Class{}, false
		}
		n := c
		n.Letter = letters[i]
		if c.Hole {
			n.Letter = strings.ToUpper(n.Letter)
		}
		return nearestInGrade(nominalMm, n)
	}
	for d := 1; d < len(letters); d++ {
		for _, i := range [...]int{at - d, at + d} {
			if n, ok := other(i); ok {
				return n, true
			}
		}
	}
	return Class{}, false
}

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
