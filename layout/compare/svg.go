package compare

import (
	"cmp"
	"encoding/xml"
	"fmt"
	"io"
	"slices"
	"strings"
	"unicode"
	"unicode/utf8"

	"centrepop/parts/geom"
	"centrepop/parts/seq"
)

// Sheet is a drawing as read: its contours in millimetres, y up.
type Sheet struct {
	contours []contour
	layers   []string // names of the marking layers
	// others are texts, pictures, hidden and clipped things: what a cutter
	// may or may not see, and what is not compared.
	others []place
}

// Read reads an SVG file. The error is a *SyntaxError where the file is at
// fault. Nothing outside the file is ever looked at: entities and references
// to other files are refused.
func Read(r io.Reader) (*Sheet, error) {
	src, err := io.ReadAll(io.LimitReader(r, MaxBytes+1))
	if err != nil {
		return nil, fmt.Errorf("compare: %w", err)
	}
	f := &file{src: src, sheet: &Sheet{layers: []string{}}, byID: map[string]*element{}}
	if len(src) > MaxBytes {
		return nil, &SyntaxError{1, 1, fmt.Sprintf("the file is larger than %d MiB", MaxBytes>>20)}
	}
	f.survey()
	if !utf8.Valid(src) {
		at := 0
		for at < len(src) {
			c, n := utf8.DecodeRune(src[at:])
			if c == utf8.RuneError && n <= 1 {
				break
			}
			at += n
		}
		return nil, f.fault(int64(at), "the file is not in UTF-8")
	}
	root, err := f.tree()
	if err != nil {
		return nil, err
	}
	if err := f.svg(root); err != nil {
		return nil, err
	}
	return f.sheet, nil
}

// context is what an element hands down to those in it.
type context struct {
	m    matrix
	mark bool
	w, h float64 // size of the view, for percentages
}

// svg draws the outermost element.
func (f *file) svg(root *element) error {
	w, errW := f.side(root, "width")
	h, errH := f.side(root, "height")
	if err := cmp.Or(errW, errH); err != nil {
		return err
	}
	m := matrix{mmPerPx, 0, 0, -mmPerPx, 0, 0}
	if _, ok := root.attr("viewBox"); !ok {
		return f.inside(root, context{m: m, w: w / mmPerPx, h: h / mmPerPx}, 0)
	}
	box, err := f.viewBox(root)
	if err != nil {
		return err
	}
	x, y, vw, vh := box[0], box[1], box[2], box[3]
	sx, sy := w/vw, h/vh // 0 where the size is not said
	if w == 0 && h == 0 {
		sx, sy = mmPerPx, mmPerPx
	} else if w == 0 {
		sx = sy
	} else if h == 0 {
		sy = sx
	}
	sx, sy = keepRatio(root, sx, sy)
	return f.inside(root, context{m: matrix{sx, 0, 0, -sy, -x * sx, y * sy}, w: vw, h: vh}, 0)
}

// keepRatio makes two scales one, as preserveAspectRatio says (SVG 1.1, 7.8).
func keepRatio(e *element, sx, sy float64) (float64, float64) {
	keep, _ := e.attr("preserveAspectRatio")
	switch {
	case strings.HasPrefix(strings.TrimSpace(keep), "none"):
		return sx, sy
	case strings.Contains(keep, "slice"):
		return max(sx, sy), max(sx, sy)
	}
	return min(sx, sy), min(sx, sy)
}

// side reads width or height of the outermost element in mm; 0 where it is
// absent or relative.
func (f *file) side(e *element, name string) (mm float64, err error) {
	text, _ := e.attr(name)
	if text = strings.TrimSpace(text); text == "" || text == "auto" {
		return 0, nil
	}
	v, unit, err := f.inUnit(e, name)
	if err != nil || unit == "%" {
		return 0, err
	}
	if !(v > 0) {
		return 0, f.faultIn(e, name, 0, "%s is %q; it must be more than 0", name, short(text))
	}
	return v * mmPer[unit], nil
}

// viewBox is an element's: x, y, width and height.
func (f *file) viewBox(e *element) (v [4]float64, err error) {
	text, _ := e.attr("viewBox")
	s := geom.Scanner{Text: text}
	for i := range v {
		var ok bool
		if v[i], ok = s.Number(); !ok {
			return v, f.faultIn(e, "viewBox", s.At, "viewBox needs four numbers")
		}
		s.Comma()
	}
	if s.Blank(); s.At < len(text) || !(v[2] > 0) || !(v[3] > 0) {
		return v, f.faultIn(e, "viewBox", 0, "viewBox is %q; it needs four numbers, width and height above 0", short(text))
	}
	return v, nil
}

// never are elements whose contents are not drawn where they stand.
var never = []string{
	"defs", "symbol", "clipPath", "mask", "pattern", "marker", "metadata", "title", "desc",
	"style", "script", "linearGradient", "radialGradient", "filter", "font", "view",
}

// markWords, as whole words of a layer's name, make it a marking layer.
var markWords = strings.Fields("mark marks marked marking markings punch punched punching punchmarks popmarks " +
	"engrave engraved engraving engravings etch etched etching scribe scribed scribing")

// marking tells a layer for marks by its name: "Pop marks", "mark_2",
// "EngraveLayer", and not "uncut", "remarks" or "unmarked".
func marking(name string) bool {
	var b strings.Builder
	before := ' '
	for _, r := range name {
		switch {
		case !unicode.IsLetter(r):
			r = ' '
		case unicode.IsUpper(r) && unicode.IsLower(before):
			b.WriteByte(' ')
		}
		b.WriteRune(unicode.ToLower(r))
		before = r
	}
	return slices.ContainsFunc(strings.Fields(b.String()), func(w string) bool { return slices.Contains(markWords, w) })
}

func (f *file) inside(e *element, c context, depth int) error {
	for _, child := range e.children {
		if err := f.draw(child, c, depth); err != nil {
			return err
		}
	}
	return nil
}

func (f *file) draw(e *element, c context, depth int) error {
	if slices.Contains(never, e.name) || strings.Contains(e.name, ":") {
		return nil
	}
	if hidden(e) || e.clipped() {
		f.other(e)
		return nil
	}
	var err error
	if c.m, err = f.transformed(e, c.m); err != nil {
		return err
	}
	switch e.name {
	case "g", "a", "switch":
		c.mark = f.markLayer(e) || c.mark
		return f.inside(e, c, depth)
	case "svg":
		return f.nested(e, c, depth)
	case "use":
		return f.use(e, c, depth)
	}
	return f.shape(e, c)
}

// transformed is a matrix with an element's own transform after it.
func (f *file) transformed(e *element, m matrix) (matrix, error) {
	t, _ := e.attr("transform")
	own, at, bad := transform(t)
	if bad != "" {
		return m, f.faultIn(e, "transform", at, "transform: %s", bad)
	}
	return m.times(own), nil
}

// markLayer tells a group that is a marking layer by its name, and notes it.
func (f *file) markLayer(e *element) (is bool) {
	for _, a := range e.attrs {
		if name := a.Name.Local; (name != "id" && name != "label" && name != "class") || !marking(a.Value) {
			continue
		}
		is = true
		f.sheet.layers = seq.Add(f.sheet.layers, a.Value)
	}
	return is
}

// clipped tells an element of which only a piece is drawn.
func (e *element) clipped() bool {
	return slices.ContainsFunc([]string{"clip-path", "mask"}, func(name string) bool {
		v, ok := e.attr(name)
		return ok && strings.TrimSpace(v) != "none"
	})
}

func hidden(e *element) bool {
	off := func(name, value string) bool {
		value = strings.TrimSpace(value)
		return name == "display" && value == "none" || name == "visibility" && (value == "hidden" || value == "collapse")
	}
	for _, a := range e.attrs {
		if a.Name.Space != "" {
			continue
		}
		if off(a.Name.Local, a.Value) {
			return true
		}
		if a.Name.Local == "style" {
			for _, rule := range strings.Split(a.Value, ";") {
				if name, value, ok := strings.Cut(rule, ":"); ok && off(strings.TrimSpace(name), value) {
					return true
				}
			}
		}
	}
	return false
}

// nested draws an svg element inside another.
func (f *file) nested(e *element, c context, depth int) error {
	m, errM := f.shifted(e, c)
	w, errW := f.coordinate(e, "width", c.w, c.w)
	h, errH := f.coordinate(e, "height", c.h, c.h)
	if err := cmp.Or(errM, errW, errH); err != nil {
		return err
	}
	c.m = m
	if _, ok := e.attr("viewBox"); ok {
		box, err := f.viewBox(e)
		if err != nil {
			return err
		}
		bx, by, bw, bh := box[0], box[1], box[2], box[3]
		sx, sy := 1.0, 1.0
		if w > 0 && h > 0 {
			sx, sy = keepRatio(e, w/bw, h/bh)
		}
		c.m = c.m.times(matrix{sx, 0, 0, sy, -bx * sx, -by * sy})
		w, h = bw, bh
	}
	c.w, c.h = w, h
	return f.inside(e, c, depth)
}

// shifted is the matrix of what an element holds, moved by its x and y.
func (f *file) shifted(e *element, c context) (matrix, error) {
	x, errX := f.coordinate(e, "x", c.w, 0)
	y, errY := f.coordinate(e, "y", c.h, 0)
	return c.m.times(matrix{1, 0, 0, 1, x, y}), cmp.Or(errX, errY)
}

// use draws another element of the file once more.
func (f *file) use(e *element, c context, depth int) error {
	ref := ""
	name := "href"
	for _, a := range e.attrs {
		if a.Name.Local == "href" {
			ref = a.Value
			if a.Name.Space != "" {
				name = a.Name.Space + ":href"
			}
		}
	}
	id, local := strings.CutPrefix(strings.TrimSpace(ref), "#")
	if !local {
		return f.faultIn(e, name, 0, "use points to %q; other files are not read", short(ref))
	}
	target := f.byID[id]
	if target == nil {
		return f.faultIn(e, name, 0, "use points to %q, which is not in the file", short(ref))
	}
	if depth >= maxUseDepth || slices.Contains(f.using, target) {
		return f.fault(e.from, "use points round in a circle, or more than %d deep", maxUseDepth)
	}
	var err error
	if c.m, err = f.shifted(e, c); err != nil {
		return err
	}
	f.using = append(f.using, target)
	defer func() { f.using = f.using[:len(f.using)-1] }()
	if f.elements += count(target); f.elements > maxElements {
		return f.fault(e.from, "uses repeat more than %d elements", maxElements)
	}
	if target.name != "symbol" && target.name != "svg" {
		return f.draw(target, c, depth+1)
	}
	if c.m, err = f.transformed(target, c.m); err != nil {
		return err
	}
	// The size given with use counts before the target's own.
	sized := *target
	sized.attrs = append(seq.Keep(e.attrs, func(a xml.Attr) bool {
		return a.Name.Space == "" && (a.Name.Local == "width" || a.Name.Local == "height")
	}), target.attrs...)
	return f.nested(&sized, c, depth+1)
}

func count(e *element) int { return 1 + seq.Sum(e.children, count) }
