package parts

import (
	"fmt"
	"strings"
	"unicode"

	"centrepop/parts/seq"
)

// Error is one fault in an input file: where it is, the line it is on, what is
// wrong and what would be right.
type Error struct {
	Pos
	Excerpt string // the whole input line, control characters shown as spaces
	What    string
	Right   string // empty if there is nothing to suggest
}

// Widths of the shown part of an input line, in characters.
const (
	excerptWidth = 100
	excerptLead  = 60 // at most this much is shown before the caret
)

// Error prints the place and the fault, then the line with a caret under the
// column, then what would be right.
func (e *Error) Error() string {
	var b strings.Builder
	fmt.Fprintf(&b, "%s:%d:%d: %s", e.File, e.Line, e.Column, e.What)
	line, caret := []rune(e.Excerpt), max(e.Column-1, 0)
	if len(line) > 0 {
		lead := ""
		if caret > excerptLead && len(line) > excerptWidth {
			cut := caret - excerptLead
			line, caret, lead = line[min(cut, len(line)):], caret-cut+1, "…"
		}
		tail := ""
		if len(line) > excerptWidth {
			line, tail = line[:excerptWidth], "…"
		}
		fmt.Fprintf(&b, "\n    %s%s%s\n    %s^", lead, string(line), tail, strings.Repeat(" ", caret))
	}
	if e.Right != "" {
		fmt.Fprintf(&b, "\nright: %s", e.Right)
	}
	return b.String()
}

// Errors is every fault found in a job, in the order of its files, then by
// line and column. It is never empty when returned as an error.
type Errors []*Error

// Error prints all faults with an empty line between them.
func (e Errors) Error() string {
	texts := seq.Map(e, (*Error).Error)
	return strings.Join(texts, "\n\n")
}

// Unwrap gives the single faults to errors.Is and errors.As.
func (e Errors) Unwrap() []error { return seq.Map(e, func(one *Error) error { return one }) }

// Fault makes an error at a place in one of the job's files, with the excerpt
// of its line, for stages after loading. A place outside the files read gives
// an error without an excerpt.
func (j *Job) Fault(pos Pos, what, right string) *Error {
	return &Error{Pos: pos, Excerpt: excerpt(j.Lines[pos.File], pos.Line), What: what, Right: right}
}

// FaultIn makes an error at a place in a file of those lines.
func FaultIn(lines []string, pos Pos, what, right string) *Error {
	pos.Line, pos.Column = max(pos.Line, 1), max(pos.Column, 1)
	return &Error{Pos: pos, Excerpt: excerpt(lines, pos.Line), What: what, Right: right}
}

// excerpt returns line number n (from 1) fit for printing.
func excerpt(lines []string, n int) string {
	if n < 1 || n > len(lines) {
		return ""
	}
	return strings.TrimRight(strings.Map(func(r rune) rune {
		if !unicode.IsPrint(r) {
			return ' '
		}
		return r
	}, lines[n-1]), " ")
}

// Quote shows a piece of input in a message, shortened.
func Quote(s string) string {
	const most = 40
	if r := []rune(s); len(r) > most {
		s = string(r[:most]) + "…"
	}
	return fmt.Sprintf("%q", s)
}
