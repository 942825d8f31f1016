package parts

import "errors"

// ParseLength reads a length as it is written in a file, in millimetres; a bare
// number is in units. It refuses what is not above zero or above 10 m.
func ParseLength(text string, units Units) (mm float64, err error) {
	mm, wrong := parseLength(text, units)
	switch {
	case wrong != "":
		return 0, errors.New(wrong + "; write it like " + lengthForms)
	case mm < smallestMm:
		return 0, errors.New("it must be over 0")
	}
	return mm, nil
}

// ParsePaper reads a paper size as it is written in a job: A4, A3, Letter,
// Tabloid, or WIDTHxHEIGHT, 100 to 2000 mm each way.
func ParsePaper(text string, units Units) (Paper, error) {
	p, wrong := parsePaper(text, units)
	if wrong != "" {
		return Paper{}, errors.New(wrong + "; write " + paperForms)
	}
	return p, nil
}
