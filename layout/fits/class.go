package fits

import (
	"fmt"
	"slices"
	"strconv"
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
	GradeIT0   = 0
	GradeFinal = 18
)

// String writes the class as a drawing does: "H7", "js6", "H01".
func (c Class) String() string { return c.Letter + gradeText(c.Grade) }

func gradeText(grade int) string {
	if grade == GradeIT01 {
		return "01"
	}
	return strconv.Itoa(grade)
}

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
	n := 0
	for n < len(s) && isLetter(s[n]) {
		n++
	}
	letter, digits := s[:n], s[n:]
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
	grade, ok := parseGrade(digits)
	if !ok {
		return Class{}, fmt.Errorf("fits: %q: %q is not a tolerance grade: the grades are 01, 0 and 1 to 18", class, digits)
	}
	return Class{Letter: letter, Grade: grade, Hole: hole}, nil
}

func isLetter(b byte) bool { return 'a' <= b && b <= 'z' || 'A' <= b && b <= 'Z' }

// parseGrade takes only the spellings that [Class.String] writes.
func parseGrade(digits string) (grade int, ok bool) {
	if digits == "01" {
		return GradeIT01, true
	}
	grade, err := strconv.Atoi(digits)
	if err != nil || grade < GradeIT0 || grade > GradeFinal || strconv.Itoa(grade) != digits {
		return 0, false
	}
	return grade, true
}
