package parts

import (
	"errors"
	"fmt"
	"strings"

	"centrepop/parts/geom"
)

// ParseLength reads a length as it is written in a file, in millimetres; a bare
// number is in units. It refuses what is not above zero or above 10 m.
func ParseLength(text string, units Units) (mm float64, err error) {
	mm, wrong := MmOf(text, units)
	switch {
	case wrong != "":
		return 0, errors.New(wrong + "; write it like " + LengthForms)
	case mm < SmallestMm:
		return 0, errors.New("it must be over 0")
	}
	return mm, nil
}

// ParsePaper reads a paper size as it is written in a job: A4, A3, Letter,
// Tabloid, or WIDTHxHEIGHT, 100 to 2000 mm each way.
func ParsePaper(text string, units Units) (Paper, error) {
	p, wrong := PaperOf(text, units)
	if wrong != "" {
		return Paper{}, errors.New(wrong + "; write " + PaperForms)
	}
	return p, nil
}

// papers are the sheet sizes known by name: ISO 216, and ANSI/ASME Y14.1 A and
// B (8.5 × 11 in and 11 × 17 in).
var papers = []Paper{
	{Name: "A4", WidthMm: 210, HeightMm: 297},
	{Name: "A3", WidthMm: 297, HeightMm: 420},
	{Name: "Letter", WidthMm: 8.5 * geom.MmPerInch, HeightMm: 11 * geom.MmPerInch},
	{Name: "Tabloid", WidthMm: 11 * geom.MmPerInch, HeightMm: 17 * geom.MmPerInch},
}

// PaperForms is what a paper size may look like, for messages.
const PaperForms = `A4, A3, Letter, Tabloid, or a size such as "300x400 mm"`

// PaperOf reads a sheet name or size. It returns what is wrong, or "".
func PaperOf(text string, units Units) (p Paper, wrong string) {
	for _, p := range papers {
		if strings.EqualFold(p.Name, text) {
			return p, ""
		}
	}
	first, second, ok := strings.Cut(strings.ReplaceAll(text, "×", "x"), "x")
	_, unit := splitUnit(second)
	if number, own := splitUnit(first); own == "" {
		first = number + unit
	}
	width, wrong1 := MmOf(first, units)
	height, wrong2 := MmOf(second, units)
	if !ok || wrong1 != "" || wrong2 != "" {
		return Paper{}, fmt.Sprintf("the paper %s is not known", Quote(text))
	}
	if min(width, height) < 140 || max(width, height) < 200 || max(width, height) > 2000 {
		return Paper{}, "the paper is smaller than 140 × 200 mm or larger than 2000 mm"
	}
	return Paper{Name: "custom", WidthMm: width, HeightMm: height}, ""
}
