package pdf

import (
	"bytes"
	"errors"
	"fmt"
	"strconv"
	"strings"
)

// tail is what the end of a finished file says about it.
type tail struct {
	file  []byte
	xref  int    // where the cross-reference table stands
	table []int  // offset of each object by its number; 0 is free
	size  int    // number of objects, the free first one included
	root  int    // number of the catalog
	info  int    // number of the information dictionary
	pages string // reference to the page tree
}

// readTail follows startxref to the table, the trailer and the catalog of a
// file with a single classic cross-reference table that starts at object 0.
func readTail(file []byte) (tail, error) {
	t := tail{file: file}
	at := bytes.LastIndex(file, []byte("startxref"))
	if at < 0 {
		return t, errors.New("no startxref")
	}
	s := scanner{b: file, at: at + len("startxref")}
	var err error
	if t.xref, err = s.integer(); err != nil {
		return t, err
	}
	if t.xref < 0 || t.xref >= at {
		return t, fmt.Errorf("startxref leads to %d", t.xref)
	}
	s = scanner{b: file, at: t.xref}
	first, count := 0, 0
	for _, step := range []func() error{
		func() error { return s.word("xref") },
		func() (err error) { first, err = s.integer(); return err },
		func() (err error) { count, err = s.integer(); return err },
	} {
		if err := step(); err != nil {
			return t, err
		}
	}
	if first != 0 || count < 1 || count > len(file)/20 {
		return t, fmt.Errorf("the table holds %d objects from %d", count, first)
	}
	for range count {
		offset, err := s.integer()
		if err != nil {
			return t, err
		}
		if _, err := s.integer(); err != nil {
			return t, err
		}
		kind := s.token()
		if kind == "f" {
			offset = 0
		} else if kind != "n" || offset <= 0 || offset >= t.xref {
			return t, fmt.Errorf("object %d stands at %d %q", len(t.table), offset, kind)
		}
		t.table = append(t.table, offset)
	}
	t.size = count
	if err := s.word("trailer"); err != nil {
		return t, err
	}
	trailer, err := s.dict()
	if err != nil {
		return t, err
	}
	if trailer["Encrypt"] != "" || trailer["Prev"] != "" {
		return t, errors.New("the file is encrypted or was updated before")
	}
	if t.info, err = refNumber(trailer["Info"]); err != nil {
		return t, err
	}
	if t.root, err = refNumber(trailer["Root"]); err != nil {
		return t, err
	}
	catalog, err := t.object(t.root)
	if err != nil {
		return t, err
	}
	if catalog["Type"] != "/Catalog" || catalog["Pages"] == "" {
		return t, fmt.Errorf("object %d is no catalog", t.root)
	}
	t.pages = catalog["Pages"]
	return t, nil
}

// object returns the dictionary that is the object of that number.
func (t tail) object(number int) (map[string]string, error) {
	if number <= 0 || number >= len(t.table) || t.table[number] == 0 {
		return nil, fmt.Errorf("there is no object %d", number)
	}
	s := scanner{b: t.file, at: t.table[number]}
	if n, err := s.integer(); err != nil || n != number {
		return nil, fmt.Errorf("object %d is not where the table says", number)
	}
	if _, err := s.integer(); err != nil {
		return nil, err
	}
	if err := s.word("obj"); err != nil {
		return nil, err
	}
	return s.dict()
}

// pageRefs returns the references to the pages, which must be that many and
// lie directly under the root of the page tree.
func (t tail) pageRefs(want int) ([]string, error) {
	number, err := refNumber(t.pages)
	if err != nil {
		return nil, err
	}
	node, err := t.object(number)
	if err != nil {
		return nil, err
	}
	fields := strings.Fields(strings.Trim(node["Kids"], "[]"))
	if len(fields) != 3*want {
		return nil, fmt.Errorf("the page tree holds %q, want %d pages", node["Kids"], want)
	}
	var refs []string
	for i := 0; i < len(fields); i += 3 {
		ref := strings.Join(fields[i:i+3], " ")
		n, err := refNumber(ref)
		if err != nil {
			return nil, err
		}
		page, err := t.object(n)
		if err != nil {
			return nil, err
		}
		if page["Type"] != "/Page" {
			return nil, fmt.Errorf("object %d is no page", n)
		}
		refs = append(refs, ref)
	}
	return refs, nil
}

func refNumber(ref string) (int, error) {
	fields := strings.Fields(ref)
	if len(fields) != 3 || fields[1] != "0" || fields[2] != "R" {
		return 0, fmt.Errorf("%q is no reference", ref)
	}
	return strconv.Atoi(fields[0])
}

// scanner reads the tokens of PDF syntax (clause 7.2).
type scanner struct {
	b  []byte
	at int
}

const (
	whiteSpace = "\x00\t\n\f\r "
	delimiters = "()<>[]{}/%"
)

// token returns the next token, empty at the end: a name with its slash, one
// of << >> [ ] { }, a string with its delimiters, or a run of other bytes.
func (s *scanner) token() string {
	for s.at < len(s.b) {
		if s.b[s.at] == '%' {
			for s.at < len(s.b) && s.b[s.at] != '\n' && s.b[s.at] != '\r' {
				s.at++
			}
		} else if strings.IndexByte(whiteSpace, s.b[s.at]) < 0 {
			break
		} else {
			s.at++
		}
	}
	if s.at >= len(s.b) {
		return ""
	}
	start := s.at
	c := s.b[s.at]
	s.at++
	switch {
	case c == '(':
		s.skipString()
	case c == '<' && s.at < len(s.b) && s.b[s.at] == '<', c == '>' && s.at < len(s.b) && s.b[s.at] == '>':
		s.at++
	case c == '<':
		for s.at < len(s.b) && s.b[s.at-1] != '>' {
			s.at++
		}
	case c == '/' || strings.IndexByte(delimiters, c) < 0:
		for s.at < len(s.b) && strings.IndexByte(whiteSpace+delimiters, s.b[s.at]) < 0 {
			s.at++
		}
	}
	return string(s.b[start:s.at])
}

// skipString leaves the scanner behind the parenthesis that closes a string.
func (s *scanner) skipString() {
	for depth := 1; s.at < len(s.b) && depth > 0; s.at++ {
		switch s.b[s.at] {
		case '\\':
			s.at++
		case '(':
			depth++
		case ')':
			depth--
		}
	}
	s.at = min(s.at, len(s.b))
}

func (s *scanner) integer() (int, error) {
	tok := s.token()
	n, err := strconv.Atoi(tok)
	if err != nil {
		return 0, fmt.Errorf("%q stands where a number should, at %d", tok, s.at)
	}
	return n, nil
}

func (s *scanner) word(want string) error {
	if got := s.token(); got != want {
		return fmt.Errorf("%q stands where %q should, at %d", got, want, s.at)
	}
	return nil
}

// dict reads a dictionary. Values are their tokens with a space between, and
// those of inner dictionaries and arrays are not taken apart.
func (s *scanner) dict() (map[string]string, error) {
	if err := s.word("<<"); err != nil {
		return nil, err
	}
	dict := map[string]string{}
	key, depth := "", 0
	var value []string
	store := func() {
		if key != "" {
			dict[key] = strings.Join(value, " ")
		}
	}
	for {
		tok := s.token()
		switch {
		case tok == "":
			return nil, errors.New("a dictionary does not end")
		case depth == 0 && tok == ">>":
			store()
			return dict, nil
		case depth == 0 && tok[0] == '/' && (key == "" || len(value) > 0):
			store()
			key, value = tok[1:], nil
			continue
		case depth == 0 && key == "":
			return nil, fmt.Errorf("%q stands where a key should", tok)
		case tok == "<<" || tok == "[":
			depth++
		case tok == ">>" || tok == "]":
			depth--
		}
		value = append(value, tok)
	}
}
