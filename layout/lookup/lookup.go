// Package lookup holds what the libraries of tables share: where a value comes
// from, and how a question that a table cannot answer is refused.
//
// Nothing here writes a unit or a sentence for a sheet. A refusal carries its
// numbers, and whoever prints it chooses the words and the units; the Error
// texts are for a programmer's log.
package lookup

import (
	"errors"
	"fmt"
	"math"
	"slices"
	"strconv"
	"strings"
)

// State says how far a value of a table can be trusted.
type State int

// The states, the least trusted first.
const (
	// Unchecked is a value for which sources differ or none was seen.
	Unchecked State = iota
	// FromMemory is a value that is only remembered.
	FromMemory
	// Practice is common practice without a published source.
	Practice
	// Checked is a value that was read in the source it names.
	Checked
)

// String returns the state as it is written beside a value: "unchecked", "from
// memory", "common practice, no source" or "checked".
func (s State) String() string {
	switch s {
	case FromMemory:
		return "from memory"
	case Practice:
		return "common practice, no source"
	case Checked:
		return "checked"
	}
	return "unchecked"
}

// Source is where a value comes from. The zero Source is that of a value that nothing limits.
type Source struct {
	Name  string // standard and table, or the publication the value was read in
	Of    string // what of it, or what else with it, as it stands behind the name: " (chamfers)"
	State State
	Told  bool // it is no standard: a drawing, a merchant or the tables of a trade say so
}

// NoSource is that of common practice.
var NoSource = Source{State: Practice}

// Standard is the source of what was read in a standard.
func Standard(name string) Source { return Source{Name: name, State: Checked} }

// Told is the source of what no standard says, but a drawing, a job or a merchant.
func Told(by string) Source { return Source{Name: by, State: Checked, Told: true} }

// String returns the name with what of it, and the state where it is not Checked: "DIN 6888,
// from memory"; nothing of the zero Source.
func (s Source) String() string {
	switch {
	case s.State == Checked:
		return s.Name + s.Of
	case s == Source{}:
		return ""
	case s.Name == "":
		return s.State.String()
	}
	return s.Name + s.Of + ", " + s.State.String()
}

// Range is a least and a greatest value, in the unit of its field.
type Range struct {
	Min float64 `json:"min"`
	Max float64 `json:"max"`
}

// MarshalText writes the source as String does.
func (s Source) MarshalText() ([]byte, error) { return []byte(s.String()), nil }

// RangeError refuses a number: it must be above Above and at most UpTo, either
// of which may be infinite. NaN is always refused.
type RangeError struct {
	What        string // what the number is, such as "shaft diameter"
	Value       float64
	Above, UpTo float64
	Unit        string // "mm", "deg", or "" for a plain number
}

// Error describes the refusal without a unit; see the package comment.
func (e *RangeError) Error() string {
	return fmt.Sprintf("%s %v is not above %v and at most %v", e.What, e.Value, e.Above, e.UpTo)
}

// Length returns a *RangeError unless above < mm <= upTo.
func Length(what string, mm, above, upTo float64) error { return check(what, mm, above, upTo, "mm") }

// Angle returns a *RangeError unless above < deg <= upTo.
func Angle(what string, deg, above, upTo float64) error { return check(what, deg, above, upTo, "deg") }

// Number returns a *RangeError unless above < v <= upTo.
func Number(what string, v, above, upTo float64) error { return check(what, v, above, upTo, "") }

// Under is the greatest number under v: for bounds of what may be v, or may not.
func Under(v float64) float64 { return math.Nextafter(v, math.Inf(-1)) }

func check(what string, v, above, upTo float64, unit string) error {
	// Written so that NaN, which compares with nothing, is refused.
	if v > above && v <= upTo && !math.IsInf(v, 0) {
		return nil
	}
	return &RangeError{What: what, Value: v, Above: above, UpTo: upTo, Unit: unit}
}

// UnknownError refuses a word that is not one of those known.
type UnknownError struct {
	What  string // what the word should have been, such as "form"
	Value string
	Known []string // in the order to offer them
}

// Error names the word and the known ones.
func (e *UnknownError) Error() string {
	return fmt.Sprintf("%s %q is not known, only %v", e.What, e.Value, e.Known)
}

// Mm is a length in the sentence of a Refusal, in mm.
type Mm float64

// String writes a length for a log, to 0.001 mm.
func (m Mm) String() string {
	return strconv.FormatFloat(math.Round(float64(m)*1000)/1000, 'f', -1, 64) + " mm"
}

// Refusal is what a library does not take. Its lengths are values, so that who prints it writes
// them in the units of a job.
type Refusal struct {
	error
	format string
	args   []any
}

// Refuse makes a Refusal as fmt.Errorf makes an error; its lengths are arguments of type Mm, for %v.
func Refuse(format string, args ...any) error {
	return &Refusal{fmt.Errorf(format, args...), format, args}
}

// Unwrap is what it wraps by %w, or nil.
func (r *Refusal) Unwrap() error { return errors.Unwrap(r.error) }

// Bare is what a library says, without its name.
func Bare(says string) string {
	if library, rest, _ := strings.Cut(says, ": "); rest != "" && !strings.ContainsAny(library, " \"") {
		return rest
	}
	return says
}

// In is the sentence with each length as write has it, which is given mm.
func (r *Refusal) In(write func(mm float64) string) string {
	args := slices.Clone(r.args)
	for i, a := range args {
		switch a := a.(type) {
		case Mm:
			args[i] = write(float64(a))
		case *Refusal:
			args[i] = errors.New(Bare(a.In(write)))
		}
	}
	return fmt.Errorf(r.format, args...).Error()
}
