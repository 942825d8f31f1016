package read

import (
	"cmp"
	"fmt"
	"slices"
	"strings"

	"centrepop/parts"
	"centrepop/parts/seq"
)

// maxErrors is how many faults of one file are kept. More than that is one
// mistake repeated, or no part file at all.
const maxErrors = 100

// source is one input file with the faults found in it.
type source struct {
	file  string
	lines []string
	errs  parts.Errors
	full  bool // there were more faults than are kept
	deep  bool // the nesting is too deep to go on
}

// fault records an error. Places outside the file are moved to the nearest one
// inside; a second fault at the same place is dropped, as it follows from the
// first.
func (s *source) fault(pos parts.Pos, what, right string) {
	s.record(pos, what, right, func(e *parts.Error) bool { return true })
}

// lack records that something is missing at a place. Several things can be
// missing at one place.
func (s *source) lack(pos parts.Pos, what, right string) {
	s.record(pos, what, right, func(e *parts.Error) bool { return e.What == what })
}

// record adds an error unless one at the same place makes it needless.
func (s *source) record(pos parts.Pos, what, right string, needless func(*parts.Error) bool) {
	pos.File = s.file
	pos.Line = min(max(pos.Line, 1), max(len(s.lines), 1))
	width := 0
	if pos.Line <= len(s.lines) {
		width = len([]rune(s.lines[pos.Line-1]))
	}
	pos.Column = min(max(pos.Column, 1), width+1)
	if slices.ContainsFunc(s.errs, func(e *parts.Error) bool { return e.Pos == pos && needless(e) }) {
		return
	}
	if len(s.errs) >= maxErrors {
		s.full = true
		return
	}
	s.errs = append(s.errs, parts.FaultIn(s.lines, pos, what, right))
}

func (s *source) faultf(pos parts.Pos, right, format string, args ...any) {
	s.fault(pos, fmt.Sprintf(format, args...), right)
}

// sorted returns the faults by line and column.
func (s *source) sorted() parts.Errors {
	errs := slices.Clone(s.errs)
	slices.SortStableFunc(errs, func(a, b *parts.Error) int {
		return cmp.Or(cmp.Compare(a.Line, b.Line), cmp.Compare(a.Column, b.Column))
	})
	if s.full {
		last := errs[len(errs)-1]
		errs = append(errs, &parts.Error{Pos: last.Pos,
			What: fmt.Sprintf("this file has more than %d faults; the rest is not shown", maxErrors)})
	}
	return errs
}

// list joins words for a message: "a, b or c".
func list(words []string) string { return join(words, " or ") }

// plain are words of a type of their own as they are written.
func plain[T ~string](words []T) []string {
	return seq.Map(words, func(w T) string { return string(w) })
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
