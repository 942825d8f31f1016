package read

import (
	"fmt"
	"math"
	"strings"

	"centrepop/parts"
)

// span says which lengths a key takes.
type span int

const (
	positive span = iota // a size
	fromZero             // a distance or an allowance
	signed               // a coordinate or an offset
)

// length reads a length. An absent or faulty one is the zero Length.
func (r *reader) length(n *node, allowed span) parts.Length {
	text, ok := r.scalar(n, "a length", parts.LengthForms)
	if !ok {
		return parts.Length{}
	}
	mm, wrong := parts.MmOf(text, r.units)
	switch {
	case wrong != "":
		r.faultf(n.pos, "a length such as "+parts.LengthForms, "%s is %s: %s", n.label, parts.Quote(text), wrong)
	case allowed == positive && mm <= 0:
		r.faultf(n.pos, "a length above 0", "%s is %s; it must be more than 0", n.label, parts.Quote(text))
	case allowed == positive && mm < parts.SmallestMm:
		r.faultf(n.pos, "0.001 mm or more", "%s is %s; that is less than 0.001 mm", n.label, parts.Quote(text))
	case allowed == fromZero && mm < 0:
		r.faultf(n.pos, "0 or more", "%s is %s; it must not be negative", n.label, parts.Quote(text))
	default:
		return parts.Length{Mm: mm, Text: strings.TrimSpace(text), Pos: n.pos}
	}
	return parts.Length{}
}

// angle reads an angle within lo..hi degrees.
func (r *reader) angle(n *node, lo, hi float64) (parts.Angle, bool) {
	const forms = "degrees such as 30, 30 deg or 30°"
	text, ok := r.scalar(n, "an angle", forms)
	if !ok {
		return parts.Angle{}, false
	}
	switch deg, wrong := parts.DegOf(text); {
	case wrong != "":
		r.faultf(n.pos, forms, "%s is %s: %s", n.label, parts.Quote(text), wrong)
	case deg < lo || deg > hi:
		r.faultf(n.pos, fmt.Sprintf("%g to %g degrees", lo, hi), "%s is %s, outside its range", n.label, parts.Quote(text))
	default:
		return parts.Angle{Deg: deg, Pos: n.pos}, true
	}
	return parts.Angle{}, false
}

// count reads a whole number within lo..hi. An absent or faulty one is 0.
func (r *reader) count(n *node, lo, hi int) int {
	right := fmt.Sprintf("a whole number from %d to %d", lo, hi)
	text, ok := r.scalar(n, "a number", right)
	if !ok {
		return 0
	}
	switch v, isWhole := parts.WholeOf(text); {
	case !isWhole:
		r.faultf(n.pos, right, "%s is %s, which is no whole number in range", n.label, parts.Quote(text))
	case int(v) < lo || int(v) > hi:
		r.faultf(n.pos, right, "%s is %s, out of range", n.label, parts.Quote(text))
	default:
		return int(v)
	}
	return 0
}

// number reads a plain decimal within lo..hi.
func (r *reader) number(n *node, lo, hi float64) parts.Number {
	right := fmt.Sprintf("a number from %g to %g", lo, hi)
	text, ok := r.scalar(n, "a number", right)
	if !ok {
		return parts.Number{}
	}
	v, wrong := parts.NumberOf(text)
	if wrong != "" || v < lo || v > hi {
		r.faultf(n.pos, right, "%s is %s, out of range or no number", n.label, parts.Quote(text))
		return parts.Number{}
	}
	return parts.Number{Value: v, Pos: n.pos}
}

// not refuses a size, where both are given, that is op the other: ">", ">=" or "<=".
// The format takes the two as written.
func (r *reader) not(a parts.Length, op string, b parts.Length, right, format string) {
	wrong := map[string]bool{">": a.Mm > b.Mm, ">=": a.Mm >= b.Mm, "<=": a.Mm <= b.Mm}[op]
	if wrong && a.Set() && b.Set() {
		r.faultf(a.Pos, right, format, a.Text, b.Text)
	}
}

// times is a length by a factor, written as it was.
func times(factor float64, l parts.Length) parts.Length {
	l.Mm *= factor
	return l
}

func (r *reader) point(n *node) (parts.Point, bool) {
	items, ok := r.items(n, 2, 2, "a point [x, y]")
	if !ok {
		return parts.Point{}, false
	}
	items[0].label, items[1].label = "x of "+n.label, "y of "+n.label
	p := parts.Point{X: r.length(items[0], signed), Y: r.length(items[1], signed), Pos: n.pos}
	return p, p.X.Set() && p.Y.Set()
}

// bare is a length in the units, to a thousandth of a millimetre or a ten-thousandth of an
// inch; said names the unit too. Units that are not known are millimetres.
func (r *reader) bare(mm float64) string {
	digits := parts.By(r.units, 1e3, 1e4)
	return fmt.Sprint(math.Round(mm/r.units.Mm()*digits)/digits + 0)
}

func (r *reader) said(mm float64) string { return r.bare(mm) + parts.By(r.units, " mm", " in") }
