package compare

import (
	"bytes"
	"encoding/xml"
	"errors"
	"fmt"
	"io"
	"regexp"
	"strings"
	"unicode/utf8"

	"centrepop/parts/seq"
)

// SyntaxError is a drawing that cannot be read: where, and what is wrong. Line
// and Column count from 1, a column in characters.
type SyntaxError struct {
	Line, Column int
	What         string
}

// Error names the place and what is wrong there.
func (e *SyntaxError) Error() string { return fmt.Sprintf("%d:%d: %s", e.Line, e.Column, e.What) }

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
	tag, at := f.src[e.from:e.to], e.from
	value, _ := e.attr(name)
	for _, m := range regexp.MustCompile(`\s`+regexp.QuoteMeta(name)+`\s*=\s*["']`).FindAllIndex(tag, -1) {
		switch start := e.from + int64(m[1]); {
		case bytes.HasPrefix(tag[m[1]:], []byte(value)):
			return f.fault(start+int64(off), format, args...)
		case at == e.from:
			at = start // written differently from how it reads
		}
	}
	return f.fault(at, format, args...)
}

// tree reads the elements; text and comments are passed over.
func (f *file) tree() (*element, error) {
	d := xml.NewDecoder(bytes.NewReader(f.src))
	// A file that calls itself something else but is UTF-8 is read as that.
	d.CharsetReader = func(_ string, r io.Reader) (io.Reader, error) { return r, nil }
	doc := &element{}
	open := []*element{doc}
	for {
		from := d.InputOffset()
		tok, err := f.token(d)
		if tok == nil && err == nil {
			break
		}
		up := open[len(open)-1]
		switch tok := tok.(type) {
		case xml.Directive:
			if bytes.Contains(tok, []byte("[")) || bytes.Contains(tok, []byte("ENTITY")) {
				err = f.fault(from, "entities in the document type are not read")
			}
		case xml.StartElement:
			var e *element
			if e, err = f.begin(tok, from, d.InputOffset(), open); err == nil {
				up.children, open = append(up.children, e), append(open, e)
			}
		case xml.EndElement:
			err, open = f.closed(up, tok.Name.Local, from), open[:len(open)-1]
		}
		if err != nil {
			return nil, err
		}
	}
	switch last := open[len(open)-1]; {
	case last != doc:
		return nil, f.fault(last.from, "<%s> is never closed", last.name)
	case len(doc.children) == 0:
		return nil, f.fault(0, "this is no SVG file: it holds no element")
	case doc.children[0].name != "svg":
		return nil, f.fault(doc.children[0].from, "this is no SVG file: it starts with <%s>", doc.children[0].name)
	}
	return doc.children[0], nil
}

// token is the next one of the file, nil at its end.
func (f *file) token(d *xml.Decoder) (xml.Token, error) {
	tok, err := d.RawToken()
	if err == nil || errors.Is(err, io.EOF) {
		return tok, nil
	}
	what := err.Error()
	if syntax, ok := errors.AsType[*xml.SyntaxError](err); ok {
		what = syntax.Msg
	}
	return nil, f.fault(d.InputOffset(), "this is not well-formed XML: %s", strings.TrimPrefix(what, "xml: "))
}

// closed is what is wrong with an end tag at a byte of the file, that of the element that is open, if
// there is one with a name.
func (f *file) closed(up *element, name string, from int64) error {
	switch {
	case up.name == "":
		return f.fault(from, "</%s> closes nothing", name)
	case up.name != name && !strings.HasSuffix(up.name, ":"+name):
		return f.fault(from, "</%s> closes <%s>", name, up.name)
	}
	return nil
}

// begin makes an element of its start tag, which stands between two bytes of
// the file, in the elements that are open, the whole document first.
func (f *file) begin(tok xml.StartElement, from, to int64, open []*element) (*element, error) {
	f.elements++
	switch {
	case len(open) == 1 && len(open[0].children) > 0:
		return nil, f.fault(from, "a second drawing starts here")
	case len(open) > MaxDepth:
		return nil, f.fault(from, "elements are nested deeper than %d", MaxDepth)
	case f.elements > maxElements:
		return nil, f.fault(from, "there are more than %d elements", maxElements)
	}
	e := &element{name: tok.Name.Local, from: from, to: to}
	if tok.Name.Space != "" && tok.Name.Space != "svg" {
		e.name = tok.Name.Space + ":" + tok.Name.Local // another vocabulary
	}
	e.attrs = seq.Map(tok.Attr, func(a xml.Attr) xml.Attr { return xml.Attr{Name: a.Name, Value: strings.Clone(a.Value)} })
	if id, ok := e.attr("id"); ok && f.byID[id] == nil {
		f.byID[id] = e
	}
	return e, nil
}

// Limits of a drawing that is read. They are far above any real cutting
// drawing; beyond them a file is broken or meant to do harm.
const (
	MaxBytes    = 16 << 20
	MaxDepth    = 64
	maxElements = 200_000 // also counting those that use repeats
	maxPoints   = 4_000_000
	maxContours = 20_000
	maxUseDepth = 8
	maxMm       = 1e6
)
