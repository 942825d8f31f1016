package parts

import (
	"cmp"
	"fmt"
	"slices"
	"strings"
	"unicode"
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
	texts := make([]string, len(e))
	for i, one := range e {
		texts[i] = one.Error()
	}
	return strings.Join(texts, "\n\n")
}

// Unwrap gives the single faults to errors.Is and errors.As.
func (e Errors) Unwrap() []error {
	errs := make([]error, len(e))
	for i, one := range e {
		errs[i] = one
	}
	return errs
}

// Fault makes an error at a place in one of the job's files, with the excerpt
// of its line, for stages after loading. A place outside the files read gives
// an error without an excerpt.
func (j *Job) Fault(pos Pos, what, right string) *Error {
	return &Error{Pos: pos, Excerpt: excerpt(j.sources[pos.File], pos.Line), What: what, Right: right}
}

// FaultIn makes an error at a place in the text of a file that is not read by
// this package.
func FaultIn(src []byte, pos Pos, what, right string) *Error {
	return faultIn(strings.Split(string(src), "\n"), pos, what, right)
}

func faultIn(lines []string, pos Pos, what, right string) *Error {
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

// maxErrors is how many faults of one file are kept. More than that is one
// mistake repeated, or no part file at all.
const maxErrors = 100

// source is one input file with the faults found in it.
type source struct {
	file  string
	lines []string
	errs  Errors
	full  bool // there were more faults than are kept
	deep  bool // the nesting is too deep to go on
}

// fault records an error. Places outside the file are moved to the nearest one
// inside; a second fault at the same place is dropped, as it follows from the
// first.
func (s *source) fault(pos Pos, what, right string) {
	s.record(pos, what, right, func(e *Error) bool { return true })
}

// lack records that something is missing at a place. Several things can be
// missing at one place.
func (s *source) lack(pos Pos, what, right string) {
	s.record(pos, what, right, func(e *Error) bool { return e.What == what })
}

// record adds an error unless one at the same place makes it needless.
func (s *source) record(pos Pos, what, right string, needless func(*Error) bool) {
	pos.File = s.file
	pos.Line = min(max(pos.Line, 1), max(len(s.lines), 1))
	width := 0
	if pos.Line <= len(s.lines) {
		width = len([]rune(s.lines[pos.Line-1]))
	}
	pos.Column = min(max(pos.Column, 1), width+1)
	for _, e := range s.errs {
		if e.Pos == pos && needless(e) {
			return
		}
	}
	if len(s.errs) >= maxErrors {
		s.full = true
		return
	}
	s.errs = append(s.errs, &Error{Pos: pos, Excerpt: excerpt(s.lines, pos.Line), What: what, Right: right})
}

func (s *source) faultf(pos Pos, right, format string, args ...any) {
	s.fault(pos, fmt.Sprintf(format, args...), right)
}

// sorted returns the faults by line and column.
func (s *source) sorted() Errors {
	errs := slices.Clone(s.errs)
	slices.SortStableFunc(errs, func(a, b *Error) int {
		return cmp.Or(cmp.Compare(a.Line, b.Line), cmp.Compare(a.Column, b.Column))
	})
	if s.full {
		last := errs[len(errs)-1]
		errs = append(errs, &Error{Pos: last.Pos,
			What: fmt.Sprintf("this file has more than %d faults; the rest is not shown", maxErrors)})
	}
	return errs
}

// quote shows a piece of input in a message, shortened.
func quote(s string) string {
	const most = 40
	if r := []rune(s); len(r) > most {
		s = string(r[:most]) + "…"
	}
	return fmt.Sprintf("%q", s)
}

// list joins words for a message: "a, b or c".
func list(words []string) string { return join(words, " or ") }

// plain are words of a type of their own as they are written.
func plain[T ~string](words []T) []string {
	out := make([]string, len(words))
	for i, w := range words {
		out[i] = string(w)
	}
	return out
}

// all joins words for a message: "a, b and c".
func all(words []string) string { return join(words, " and ") }

func join(words []string, last string) string {
	switch len(words) {
	case 0:
		return "none"
	case 1:
		return words[0]
	}
	return strings.Join(words[:len(words)-1], ", ") + last + words[len(words)-1]
}
