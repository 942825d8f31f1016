// Package render holds what the devices below it (pdf, svg, png) must do
// alike: how light a tone is, where a text stands, and which items none of
// them draws. Lengths are millimetres, y up.
package render

import (
	"errors"
	"fmt"
	"math"
	"strconv"

	"github.com/tdewolff/canvas"

	"centrepop/templates/draw"
	"centrepop/templates/typeface"
)

// MaxMm bounds coordinates, widths and sizes on either side of zero: far off
// any sheet, and near enough for the single precision readers count in.
const MaxMm = 1e5

// MaxDepth bounds groups within groups. A PDF reader need not keep more than
// 28 graphics states (ISO 32000-1:2008 annex C.2), and each group takes one.
const MaxDepth = 26

// MiterLimit is the ratio of mitre length to line width above which a corner
// is cut off: 10, what PDF takes where nothing is said.
const MiterLimit = 10

// Lightness returns how light a tone is, 0 black to 1 white. None draws
// nothing and counts as black, as it does for text.
func Lightness(t draw.Tone) float64 {
	switch t {
	case draw.Grey:
		return 0.45
	case draw.Pale:
		return 0.85
	case draw.White:
		return 1
	}
	return 0
}

// TextMatrix returns the transform from text that starts at the origin, along
// x, to where t stands on its drawing.
func TextMatrix(t draw.Text) canvas.Matrix {
	m := canvas.Identity.Translate(t.XMm, t.YMm).Rotate(t.RotateDeg)
	switch t.Align {
	case draw.Centre:
		m = m.Translate(-typeface.WidthMm(t.Content, t.SizeMm, t.Bold)/2, 0)
	case draw.Right:
		m = m.Translate(-typeface.WidthMm(t.Content, t.SizeMm, t.Bold), 0)
	}
	return m
}

// CheckPath refuses a path with a number that is not finite or beyond MaxMm.
// A nil path is an empty one.
func CheckPath(p *canvas.Path) error {
	if p == nil {
		return nil
	}
	for _, v := range p.Data() { // its commands are small numbers
		if !within(v) {
			return fmt.Errorf("a path runs to %v mm", v)
		}
	}
	for s := p.Scanner(); s.Scan(); {
		if s.Cmd() == canvas.ArcToCmd {
			if rx, ry, _, _, _ := s.Arc(); !(min(rx, ry) > 0) {
				return fmt.Errorf("an arc has the radii %v and %v mm", rx, ry)
			}
		}
	}
	return nil
}

// CheckShape refuses a shape whose path CheckPath refuses, whose line has no
// width, or whose dashes are negative or all zero.
func CheckShape(s draw.Shape) error {
	if err := CheckPath(s.Path); err != nil {
		return err
	}
	if s.Stroke == draw.None {
		return nil
	}
	if !long(s.WidthMm) {
		return fmt.Errorf("a line of width %v mm cannot be drawn", s.WidthMm)
	}
	var sum float64
	for _, d := range s.DashMm {
		if !(d >= 0) || !within(d) {
			return fmt.Errorf("a dash of %v mm cannot be drawn", d)
		}
		sum += d
	}
	if len(s.DashMm) > 0 && sum < 1e-3 {
		return errors.New("the dashes have no length")
	}
	return nil
}

// CheckText refuses a text without a size, off the range of coordinates, or
// with a character that the typeface lacks: an empty box in its place could be
// taken for a sign.
func CheckText(t draw.Text) error {
	if !within(t.XMm) || !within(t.YMm) || !within(t.RotateDeg) {
		return fmt.Errorf("text %q stands at %v, %v mm, turned by %v", t.Content, t.XMm, t.YMm, t.RotateDeg)
	}
	if !long(t.SizeMm) {
		return fmt.Errorf("text %q has the size %v mm", t.Content, t.SizeMm)
	}
	if r, lacks := typeface.Lacks(t.Content); lacks {
		return &LackingError{Text: t.Content, Char: r}
	}
	return nil
}

// A LackingError says that a text holds a character that the typeface lacks.
type LackingError struct {
	Text string
	Char rune
}

// Error names the character and the text.
func (e *LackingError) Error() string {
	return fmt.Sprintf("the typeface has no character %q (U+%04X) for the text %q", e.Char, e.Char, e.Text)
}

// CheckGroup refuses a group at a depth beyond MaxDepth (the items of a page
// lie at depth 0), with a transform that is not finite or flattens, or with a
// clip that CheckPath refuses.
func CheckGroup(g draw.Group, depth int) error {
	if depth >= MaxDepth {
		return fmt.Errorf("groups lie more than %d deep", MaxDepth)
	}
	for _, row := range g.Transform {
		for _, v := range row {
			if !within(v) {
				return fmt.Errorf("a group's transform holds %v", v)
			}
		}
	}
	if math.Abs(g.Transform.Det()) < 1e-12 {
		return errors.New("a group's transform flattens it to a line or a point")
	}
	return CheckPath(g.Clip)
}

func within(v float64) bool { return math.Abs(v) <= MaxMm }

// long tells whether a length is more than nothing, and no more than MaxMm.
func long(v float64) bool { return v > 0 && within(v) }

// Each hands the items of a drawing to a device in drawing order and stops at
// the first error. A nil drawing has none; any other item is an error. A device
// without links has nil for them.
func Each(d *draw.Drawing, shape func(draw.Shape) error, text func(draw.Text) error, group func(draw.Group) error, link func(draw.Link) error) error {
	if d == nil {
		return nil
	}
	for _, item := range d.Items {
		var err error
		switch item := item.(type) {
		case draw.Shape:
			err = shape(item)
		case draw.Text:
			err = text(item)
		case draw.Group:
			err = group(item)
		case draw.Link:
			if link != nil {
				err = link(item)
			}
		default:
			err = fmt.Errorf("cannot draw a %T", item)
		}
		if err != nil {
			return err
		}
	}
	return nil
}

// Decimal is v with at most n decimals, 0 to 9, without the zeros at the end;
// never -0.
func Decimal(v float64, n int) string { return string(AppendDecimal(nil, v, n)) }

// AppendDecimal appends Decimal to b.
func AppendDecimal(b []byte, v float64, n int) []byte {
	unit := units[n]
	scaled := math.Round(v * float64(unit))
	if !(math.Abs(scaled) < 1<<53) { // far beyond MaxMm, where decimals mean nothing
		return strconv.AppendFloat(b, v, 'f', 0, 64)
	}
	count := int64(scaled)
	if count < 0 {
		b, count = append(b, '-'), -count
	}
	b = strconv.AppendInt(b, count/unit, 10)
	count %= unit
	if count == 0 {
		return b
	}
	b = append(b, '.')
	for count > 0 {
		unit /= 10
		b = append(b, byte('0'+count/unit))
		count %= unit
	}
	return b
}

// units are the parts of one that n decimals count.
var units = [...]int64{1, 1e1, 1e2, 1e3, 1e4, 1e5, 1e6, 1e7, 1e8, 1e9}
