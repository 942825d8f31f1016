package compare

import (
	"bytes"
	"encoding/xml"
	"errors"
	"fmt"
	"io"
	"slices"
	"strings"
	"unicode/utf8"
)

// Limits of a drawing that is read. They are far above any real cutting
// drawing; beyond them a file is broken or meant to do harm.
const (
	MaxBytes    = 16 << 20
	MaxDepth    = 64
	maxElements = 200_000 // also counting those that use repeats
	maxPoints   = 2_000_000
	maxContours = 20_000
	maxUseDepth = 8
	maxMm       = 1e6
)

// SyntaxError is a drawing that cannot be read: where, and what is wrong. Line
// and Column count from 1, a column in characters.
type SyntaxError struct {
	Line, Column int
	What         string
}

func (e *SyntaxError) Error() string {
	return fmt.Sprintf("%d:%d: %s", e.Line, e.Column, e.What)
}

// Sheet is a drawing as read: its contours in millimetres, y up.
type Sheet struct {
	// WidthMm and HeightMm are the size of the sheet; 0 where the file does
	// not say it in a unit of length.
	WidthMm, HeightMm float64
	// Texts counts texts and pictures, which are not compared.
	Texts    int
	contours []contour
}

// element is a node of the file.
type element struct {
	name     string
	attrs    []xml.Attr
	children []*element
	from, to int64 // bytes of its start tag
}

func (e *element) attr(name string) (string, bool) {
	for _, a := range e.attrs {
		if a.Name.Local == name && a.Name.Space == "" {
			return a.Value, true
		}
	}
	return "", false
}

// file is an SVG being read.
type file struct {
	src      []byte
	sheet    *Sheet
	byID     map[string]*element
	elements int
	points   int
	using    []*element
	blocks   []place
}

// Read reads an SVG file. The error is a *SyntaxError where the file is at
// fault. Nothing outside the file is ever looked at: entities and references
// to other files are refused.
func Read(r io.Reader) (*Sheet, error) {
	src, err := io.ReadAll(io.LimitReader(r, MaxBytes+1))
	if err != nil {
		return nil, fmt.Errorf("compare: %w", err)
	}
	f := &file{src: src, sheet: &Sheet{}, byID: map[string]*element{}}
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

// place is a line and a column in characters, both from 1.
type place struct{ line, column int }

// blockBytes is how far apart the known places of a file are, so that finding
// the place of a byte does not read the whole file again.
const blockBytes = 4096

// survey notes the place of every block's first byte.
func (f *file) survey() {
	at := place{1, 1}
	for from := 0; from < len(f.src); from += blockBytes {
		f.blocks = append(f.blocks, at)
		at = at.after(f.src[from:min(from+blockBytes, len(f.src))])
	}
}

// after is the place behind some text.
func (p place) after(text []byte) place {
	if i := bytes.LastIndexByte(text, '\n'); i >= 0 {
		p.line += bytes.Count(text, []byte("\n"))
		p.column = 1
		text = text[i+1:]
	}
	for _, b := range text {
		if utf8.RuneStart(b) {
			p.column++
		}
	}
	return p
}

func (f *file) where(at int64) place {
	at = min(max(at, 0), int64(len(f.src)))
	block := at / blockBytes
	if block >= int64(len(f.blocks)) {
		if block--; block < 0 {
			return place{1, 1}
		}
	}
	return f.blocks[block].after(f.src[block*blockBytes : at])
}

// fault is an error at a byte of the file.
func (f *file) fault(at int64, format string, args ...any) error {
	p := f.where(at)
	return &SyntaxError{p.line, p.column, fmt.Sprintf(format, args...)}
}

// faultIn is an error in the value of an attribute, off bytes into it.
func (f *file) faultIn(e *element, name string, off int, format string, args ...any) error {
	tag := f.src[e.from:e.to]
	at := e.from
	for i := 0; i < len(tag); {
		k := bytes.Index(tag[i:], []byte(name))
		if k < 0 {
			break
		}
		i += k
		after := i + len(name)
		rest := bytes.TrimLeft(tag[after:], " \t\r\n")
		if i > 0 && strings.ContainsRune(" \t\r\n", rune(tag[i-1])) && len(rest) > 0 && rest[0] == '=' {
			rest = bytes.TrimLeft(rest[1:], " \t\r\n")
			start := len(tag) - len(rest) + 1 // past the quote
			if value, _ := e.attr(name); strings.ContainsAny(value, "&<>\"'") || start+off >= len(tag) {
				off = 0 // written differently from how it reads
			}
			at = e.from + int64(start+off)
			break
		}
		i = after
	}
	return f.fault(at, format, args...)
}

// tree reads the elements; text and comments are passed over.
func (f *file) tree() (*element, error) {
	d := xml.NewDecoder(bytes.NewReader(f.src))
	// A file that calls itself something else but is UTF-8 is read as that.
	d.CharsetReader = func(_ string, r io.Reader) (io.Reader, error) { return r, nil }
	var stack []*element
	var root *element
	for {
		from := d.InputOffset()
		tok, err := d.RawToken()
		if errors.Is(err, io.EOF) {
			break
		}
		if err != nil {
			what := err.Error()
			var syntax *xml.SyntaxError
			if errors.As(err, &syntax) {
				what = syntax.Msg
			}
			return nil, f.fault(d.InputOffset(), "this is not well-formed XML: %s", strings.TrimPrefix(what, "xml: "))
		}
		switch tok := tok.(type) {
		case xml.Directive:
			if bytes.ContainsAny(tok, "[") || bytes.Contains(tok, []byte("ENTITY")) {
				return nil, f.fault(from, "entities in the document type are not read")
			}
		case xml.StartElement:
			if root != nil && len(stack) == 0 {
				return nil, f.fault(from, "a second drawing starts here")
			}
			if len(stack) >= MaxDepth {
				return nil, f.fault(from, "elements are nested deeper than %d", MaxDepth)
			}
			if f.elements++; f.elements > maxElements {
				return nil, f.fault(from, "there are more than %d elements", maxElements)
			}
			e := &element{name: tok.Name.Local, from: from, to: d.InputOffset()}
			if tok.Name.Space != "" && tok.Name.Space != "svg" {
				e.name = tok.Name.Space + ":" + tok.Name.Local // another vocabulary
			}
			for _, a := range tok.Attr {
				e.attrs = append(e.attrs, xml.Attr{Name: a.Name, Value: strings.Clone(a.Value)})
			}
			if len(stack) == 0 {
				root = e
			} else {
				up := stack[len(stack)-1]
				up.children = append(up.children, e)
			}
			if id, ok := e.attr("id"); ok && f.byID[id] == nil {
				f.byID[id] = e
			}
			stack = append(stack, e)
		case xml.EndElement:
			if len(stack) == 0 {
				return nil, f.fault(from, "</%s> closes nothing", tok.Name.Local)
			}
			if open := stack[len(stack)-1]; open.name != tok.Name.Local && !strings.HasSuffix(open.name, ":"+tok.Name.Local) {
				return nil, f.fault(from, "</%s> closes <%s>", tok.Name.Local, open.name)
			}
			stack = stack[:len(stack)-1]
		}
	}
	switch {
	case len(stack) > 0:
		return nil, f.fault(stack[len(stack)-1].from, "<%s> is never closed", stack[len(stack)-1].name)
	case root == nil:
		return nil, f.fault(0, "this is no SVG file: it holds no element")
	case root.name != "svg":
		return nil, f.fault(root.from, "this is no SVG file: it starts with <%s>", root.name)
	}
	return root, nil
}

// context is what an element hands down to those in it.
type context struct {
	m    matrix
	mark bool
	w, h float64 // size of the view, for percentages
}

// svg draws the outermost element.
func (f *file) svg(root *element) error {
	w, wPhysical, err := f.side(root, "width")
	if err != nil {
		return err
	}
	h, hPhysical, err := f.side(root, "height")
	if err != nil {
		return err
	}
	if wPhysical {
		f.sheet.WidthMm = w
	}
	if hPhysical {
		f.sheet.HeightMm = h
	}
	scale := mmPerPx
	m := identity
	if _, ok := root.attr("viewBox"); ok {
		x, y, vw, vh, err := f.viewBox(root)
		if err != nil {
			return err
		}
		sx, sy := 0.0, 0.0
		if w > 0 {
			sx = w / vw
		}
		if h > 0 {
			sy = h / vh
		}
		switch {
		case sx == 0 && sy == 0:
			sx, sy = scale, scale
		case sx == 0:
			sx = sy
		case sy == 0:
			sy = sx
		}
		if keep, _ := root.attr("preserveAspectRatio"); !strings.HasPrefix(strings.TrimSpace(keep), "none") {
			if strings.Contains(keep, "slice") {
				sx = max(sx, sy)
			} else {
				sx = min(sx, sy)
			}
			sy = sx
		}
		m = matrix{sx, 0, 0, -sy, -x * sx, y * sy}
		w, h = vw, vh
	} else {
		m = matrix{scale, 0, 0, -scale, 0, 0}
		w, h = w/scale, h/scale
	}
	return f.inside(root, context{m: m, w: w, h: h}, 0)
}

// side reads width or height of the outermost element in mm; 0 where it is
// absent or relative. physical tells that it has a real unit.
func (f *file) side(e *element, name string) (mm float64, physical bool, err error) {
	text, ok := e.attr(name)
	if !ok || strings.TrimSpace(text) == "" || strings.TrimSpace(text) == "auto" {
		return 0, false, nil
	}
	v, unit, bad := length(text)
	if bad != "" {
		return 0, false, f.faultIn(e, name, 0, "%s is %q: %s", name, short(text), bad)
	}
	if unit == "%" {
		return 0, false, nil
	}
	if !(v > 0) {
		return 0, false, f.faultIn(e, name, 0, "%s is %q; it must be more than 0", name, short(text))
	}
	per, ok := mmPer(unit)
	if !ok {
		return 0, false, f.faultIn(e, name, 0, "%s is %q: the unit %s depends on a font", name, short(text), unit)
	}
	return v * per, unit != "" && unit != "px", nil
}

func (f *file) viewBox(e *element) (x, y, w, h float64, err error) {
	text, _ := e.attr("viewBox")
	s := scanner{text: text}
	var v [4]float64
	for i := range v {
		var ok bool
		if v[i], ok = s.number(); !ok {
			return 0, 0, 0, 0, f.faultIn(e, "viewBox", s.at, "viewBox needs four numbers")
		}
		s.comma()
	}
	if s.blank(); s.at < len(text) || !(v[2] > 0) || !(v[3] > 0) {
		return 0, 0, 0, 0, f.faultIn(e, "viewBox", 0, "viewBox is %q; it needs four numbers, width and height above 0", short(text))
	}
	return v[0], v[1], v[2], v[3], nil
}

// never are elements whose contents are not drawn where they stand.
var never = []string{
	"defs", "symbol", "clipPath", "mask", "pattern", "marker", "metadata", "title", "desc",
	"style", "script", "linearGradient", "radialGradient", "filter", "font", "view",
}

// markWords in a layer's name make it a marking layer.
var markWords = []string{"mark", "punch", "engrave", "etch", "scribe"}

// inside draws the children of an element.
func (f *file) inside(e *element, c context, depth int) error {
	for _, child := range e.children {
		if err := f.draw(child, c, depth); err != nil {
			return err
		}
	}
	return nil
}

func (f *file) draw(e *element, c context, depth int) error {
	if slices.Contains(never, e.name) || strings.Contains(e.name, ":") || hidden(e) {
		return nil
	}
	if t, ok := e.attr("transform"); ok {
		m, at, bad := transform(t)
		if bad != "" {
			return f.faultIn(e, "transform", at, "transform: %s", bad)
		}
		c.m = c.m.times(m)
	}
	switch e.name {
	case "g", "a", "switch":
		for _, a := range e.attrs {
			if a.Name.Local != "id" && a.Name.Local != "label" && a.Name.Local != "class" {
				continue
			}
			for _, w := range markWords {
				c.mark = c.mark || strings.Contains(strings.ToLower(a.Value), w)
			}
		}
		return f.inside(e, c, depth)
	case "svg":
		return f.nested(e, c, depth)
	case "use":
		return f.use(e, c, depth)
	case "text", "image", "foreignObject":
		f.sheet.Texts++
		return nil
	}
	return f.shape(e, c)
}

// hidden tells an element that is not drawn.
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
	x, err := f.coordinate(e, "x", c.w, 0)
	if err != nil {
		return err
	}
	y, err := f.coordinate(e, "y", c.h, 0)
	if err != nil {
		return err
	}
	w, err := f.coordinate(e, "width", c.w, c.w)
	if err != nil {
		return err
	}
	h, err := f.coordinate(e, "height", c.h, c.h)
	if err != nil {
		return err
	}
	c.m = c.m.times(matrix{1, 0, 0, 1, x, y})
	if _, ok := e.attr("viewBox"); ok {
		bx, by, bw, bh, err := f.viewBox(e)
		if err != nil {
			return err
		}
		sx, sy := 1.0, 1.0
		if w > 0 && h > 0 {
			sx, sy = w/bw, h/bh
			if keep, _ := e.attr("preserveAspectRatio"); !strings.HasPrefix(strings.TrimSpace(keep), "none") {
				sx = min(sx, sy)
				sy = sx
			}
		}
		c.m = c.m.times(matrix{sx, 0, 0, sy, -bx * sx, -by * sy})
		w, h = bw, bh
	}
	c.w, c.h = w, h
	return f.inside(e, c, depth)
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
	x, err := f.coordinate(e, "x", c.w, 0)
	if err != nil {
		return err
	}
	y, err := f.coordinate(e, "y", c.h, 0)
	if err != nil {
		return err
	}
	c.m = c.m.times(matrix{1, 0, 0, 1, x, y})
	f.using = append(f.using, target)
	defer func() { f.using = f.using[:len(f.using)-1] }()
	if f.elements += count(target); f.elements > maxElements {
		return f.fault(e.from, "uses repeat more than %d elements", maxElements)
	}
	if target.name == "symbol" || target.name == "svg" {
		if t, ok := target.attr("transform"); ok {
			m, at, bad := transform(t)
			if bad != "" {
				return f.faultIn(target, "transform", at, "transform: %s", bad)
			}
			c.m = c.m.times(m)
		}
		// The size given with use counts before the target's own.
		sized := *target
		sized.attrs = nil
		for _, a := range e.attrs {
			if a.Name.Space == "" && (a.Name.Local == "width" || a.Name.Local == "height") {
				sized.attrs = append(sized.attrs, a)
			}
		}
		sized.attrs = append(sized.attrs, target.attrs...)
		return f.nested(&sized, c, depth+1)
	}
	return f.draw(target, c, depth+1)
}

func count(e *element) int {
	n := 1
	for _, c := range e.children {
		n += count(c)
	}
	return n
}

// short cuts a piece of input for a message.
func short(s string) string {
	if r := []rune(s); len(r) > 40 {
		return string(r[:40]) + "…"
	}
	return s
}
