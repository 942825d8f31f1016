// Package develop computes flat developments: the wrap of a cylinder with
// its radial holes and slots, the saddle of a branch on a tube, cones and
// frustums, and square-to-round transitions.
//
// Every input type ([Cylinder], [Shell], [Saddle], [Frustum], [Oblique],
// [Transition]) has a Develop method. It returns one or more [Development]
// values, or an error that wraps [ErrInput] and says which number is wrong.
// The package is pure: no files, no clock, no globals that change. All is by geometry; a rule
// that goes by a standard names it.
//
// # Units and axes
//
// Lengths are millimetres and end in Mm, angles are degrees and end in Deg.
// On the flat sheet x runs right and y runs up. All patterns are drawn as
// seen from OUTSIDE the finished part, printed (or scribed) side out.
//
// # The clock rule
//
// Clock angles follow the house convention: 0° at TOP, clockwise looking at
// the named face. Take the part with its front face towards you and TOP up,
// and lean over it to look at TOP from above. The front face edge is then
// the lower edge of the pattern (y = 0), y grows away from the front face,
// and 3 o'clock lies to the right. Hence, printed side out and front face
// edge down, clock angle grows to the RIGHT: x = π·D'·clock/360. Where the
// square edge of a pattern is the back face, the sheet is turned half a turn:
// y grows away from the back face, and clock angles of the front face grow to
// the LEFT. The cone, the oblique cone and the transition keep the same rule
// with their base as the front face.
//
// # Sources
//
// The constructions are elementary geometry: the sector of a cone, the
// intersection of two cylinders, triangulation by true lengths. The saddle
// follows the classical division method (Sheet and Plate Metal Work,
// public-domain textbook, oblique and offset tee pieces) with each ordinate
// calculated instead of drawn. Rules without a published source are marked
// "common practice, no source" where they are applied.
package develop

import (
	"errors"
	"math"

	"centrepop/layout/lookup"
	"centrepop/parts/geom"
)

// ErrInput is wrapped by every error of this package: the dimensions given
// are not a number, out of range, or describe a part that cannot exist.
var ErrInput = errors.New("develop")

// Limits of every length given to this package, in millimetres. They keep
// slips of the decimal point and NaN out; no workshop part is outside them.
const (
	// MinLengthMm is the smallest length accepted where zero is not.
	MinLengthMm = 0.01
	// MaxLengthMm is the largest length accepted, 100 m.
	MaxLengthMm = 100_000
	// DefaultDivisions is used where a Divisions field is zero.
	DefaultDivisions = 12
)

// Value is one named number of the calculation with its unit: "mm", "deg",
// "mm2" or "" for a count.
type Value struct {
	Name  string
	Value float64
	Unit  string
}

// Formula names one rule the development was calculated with.
type Formula struct {
	// Name is the plain name of the rule, such as "wrap length".
	Name string
	// Rule is the rule written out, such as "L = π·(D + paper)".
	Rule string
}

// Column heads one column of a Table. Unit is as in Value.
type Column struct {
	Name string
	Unit string
}

// Row is one line of a Table: a label and one number per column, in the columns' units
// unless the row has one of its own.
type Row struct {
	Label  string
	Values []float64
	Unit   string
}

// Table is a table of numbers to mark out with: divisions, ordinates, holes.
type Table struct {
	Title   string
	Columns []Column
	Rows    []Row
	// Drawn tells that the pattern shows all of it: its rows are the points and
	// lines of the drawing.
	Drawn bool
}

// Label is a short text that belongs to a point of the pattern: a hole name,
// a division number, TOP.
type Label struct {
	Text string
	At   Point
}

// Development is one flat piece with everything needed to draw, mark out and
// check it. All points are millimetres, x right, y up, seen from outside.
type Development struct {
	// Curves are the lines of the pattern in drawing order.
	Curves []Curve
	// Labels are texts at points.
	Labels []Label
	// Blank is the edge of a piece that is cut from sheet, with the lap.
	Blank Curve
	// Openings are the middles of those of a Shell, in its order.
	Openings []Point
	// WrapMm is the length round of what is wrapped on a tube, SeamDeg the clock
	// angle at which the ends of a Cylinder's meet.
	WrapMm, SeamDeg float64
	// Inputs repeats the numbers the piece was calculated from.
	Inputs []Value
	// Results are the leading dimensions of the flat piece.
	Results []Value
	// Formulas are the rules used, in order of use.
	Formulas []Formula
	// Tables holds the division table first, then any others.
	Tables []Table
	// Notes are remarks for the sheet: how to place it, what it assumes.
	Notes []string
}

// Box is the exact bounding box of the Edge, Cut and Tab curves.
func (d *Development) Box() geom.Box {
	box := geom.BoxOf()
	for _, c := range d.Curves {
		if c.Role == Edge || c.Role == Cut || c.Role == Tab {
			box = box.Join(c.Box())
		}
	}
	return box
}

// refuse builds an error that wraps ErrInput; its lengths are of type lookup.Mm.
func refuse(format string, args ...any) error {
	return lookup.Refuse("%w: "+format, append([]any{ErrInput}, args...)...)
}

func finite(v float64) bool { return !math.IsNaN(v) && !math.IsInf(v, 0) }

// checkLength refuses a length that is not within MinLengthMm..MaxLengthMm.
func checkLength(name string, mm float64) error {
	if !finite(mm) {
		return refuse("%s is not a finite number", name)
	}
	if mm < MinLengthMm || mm > MaxLengthMm {
		return refuse("%s is %v, want %v to %v", name, lookup.Mm(mm), lookup.Mm(MinLengthMm), lookup.Mm(MaxLengthMm))
	}
	return nil
}

// checkAllowance is checkLength with zero allowed.
func checkAllowance(name string, mm float64) error {
	if mm >= 0 && mm < MinLengthMm {
		return nil // paper and gaps may be thinner than any other length
	}
	return checkLength(name, mm)
}

// checkOffset accepts a length of either sign up to MaxLengthMm.
func checkOffset(name string, mm float64) error {
	if !finite(mm) {
		return refuse("%s is not a finite number", name)
	}
	if math.Abs(mm) > MaxLengthMm {
		return refuse("%s is %v, want at most %v either way", name, lookup.Mm(mm), lookup.Mm(MaxLengthMm))
	}
	return nil
}

// checkAngle accepts a clock angle between -360° and 360°.
func checkAngle(name string, deg float64) error {
	if !finite(deg) {
		return refuse("%s is not a finite number", name)
	}
	if math.Abs(deg) > 360 {
		return refuse("%s is %g°, want -360° to 360°", name, deg)
	}
	return nil
}
