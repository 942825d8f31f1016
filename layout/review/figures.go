package review

import (
	"strings"

	"centrepop/parts"
)

// itemMm is a length in words, its unit that of the job where none is said.
func (r *reviewer) itemMm(text string) float64 {
	mm, _ := parts.ParseLength(strings.TrimSpace(text), r.job.Units)
	return mm
}

// noteMm is a length in a note in millimetres; what the pattern lets through is a number.
func noteMm(number, unit string) float64 {
	mm, _ := parts.ParseLength(number+" "+unit, parts.Millimetres)
	return mm
}

// figure is a number in words; what the pattern lets through is one.
func figure(text string) float64 {
	n, _ := parts.NumberOf(text)
	return n
}
