package fits

import (
	"fmt"
	"slices"
	"strings"
)

// Class is a tolerance class: a letter for the place of the tolerance and a
// grade for its width.
type Class struct {
	Letter string // as written: capitals for a hole, small letters for a shaft
	Grade  int    // -1 for IT01, 0 for IT0, then 1 to 18
	Hole   bool   // true when Letter is in capitals
}

// The grades at the two ends of the system, as [Class].Grade counts them.
const (
	GradeIT01  = -1
	GradeFinal = 18
)

// String writes the class as a drawing does: "H7", "js6", "H01".
func (c Class) String() string { return c.Letter + grades[c.Grade-GradeIT01] }

// grades are the grades from IT01 on as classes have them.
var grades = strings.Fields("01 0 1 2 3 4 5 6 7 8 9 10 11 12 13 14 15 16 17 18")

// letters are the fundamental deviations of ISO 286-1 in order from the
// loosest shaft to the tightest; holes have the same in capitals. I, L, O, Q
// and W are left out by the standard because they are easily misread.
var letters = [...]string{
	"a", "b", "c", "cd", "d", "e", "ef", "f", "fg", "g", "h", "js", "j",
	"k", "m", "n", "p", "r", "s", "t", "u", "v", "x", "y", "z", "za", "zb", "zc",
}

// letterIndex returns the place of a small letter in letters, or -1.
func letterIndex(small string) int { return slices.Index(letters[:], small) }

// Parse reads a tolerance class: one or two letters, capitals for a hole and
// small for a shaft, then a grade 01, 0 or 1 to 18. Space before and after is
// ignored, space inside is not allowed. The error says what is wrong and what
// would be right; the Class returned with it is zero. Parse does not look at
// any size: whether the class is defined at a size is for [Limit] to say.
func Parse(class string) (Class, error) {
	s := strings.TrimSpace(class)
	digits := strings.TrimLeftFunc(s, func(r rune) bool { return 'a' <= r && r <= 'z' || 'A' <= r && r <= 'Z' })
	letter := s[:len(s)-len(digits)]
	switch {
	case s == "":
		return Class{}, fmt.Errorf(`fits: empty tolerance class: write a letter and a grade, such as "H7" or "js6"`)
	case letter == "":
		return Class{}, fmt.Errorf(`fits: %q does not begin with a letter: write a class such as "H7" or "js6", without the size`, class)
	}
	small := strings.ToLower(letter)
	if letterIndex(small) < 0 {
		return Class{}, fmt.Errorf("fits: %q: there is no fundamental deviation %q: the letters are A to ZC and a to zc without I, L, O, Q, W", class, letter)
	}
	hole := letter == strings.ToUpper(letter)
	if !hole && letter != small {
		return Class{}, fmt.Errorf("fits: %q mixes capitals and small letters: write %s for a hole or %s for a shaft",
			class, strings.ToUpper(letter)+digits, small+digits)
	}
	grade := slices.Index(grades, digits) + GradeIT01
	if grade < GradeIT01 {
		return Class{}, fmt.Errorf("fits: %q: %q is not a tolerance grade: the grades are 01, 0 and 1 to 18", class, digits)
	}
	return Class{Letter: letter, Grade: grade, Hole: hole}, nil
}
