package main

import (
	"cmp"
	"errors"
	"fmt"
	"io"
	"math"
	"os"
	"slices"
	"strconv"
	"strings"
	"unicode/utf8"

	"github.com/goccy/go-yaml/ast"
	"github.com/goccy/go-yaml/parser"
	"github.com/goccy/go-yaml/token"

	"centrepop/layout/measured"
	"centrepop/parts"
)

// flangeFile is a measured flange as it was written down.
//
//	flange: gearbox motor flange
//	units: mm                     # or in
//	caliper: 0.05                 # ± of every reading that says nothing else
//	spigot: {diameter: 230.02, plus-minus: 0.02}
//	holes: {count: 4, diameter: 14.5, first: 45}
//	bolt: M12
//	readings:
//	  - {from: 1, to: 2, over: 201.9}
//	  - {from: 1, to: 3, between: 250.5, plus-minus: 0.1}
type flangeFile struct {
	name    string
	units   parts.Units
	survey  measured.Survey
	bolt    string
	boltPos parts.Pos
	thread  string // of tapped holes
	source  *flangeSource
	holes   parts.Pos   // of the holes
	dias    []parts.Pos // of each hole's diameter
	spigot  parts.Pos
	reading []parts.Pos
}

// Limits on the file: nobody writes more by hand.
const (
	maxFlangeBytes = 64 << 10
	maxFlangeLine  = 1000
	maxBrackets    = 16
)

// flangeSource is the file with the faults found in it.
type flangeSource struct {
	file  string
	lines []string
	units parts.Units
	errs  parts.Errors
}

func (s *flangeSource) fault(pos parts.Pos, right, format string, args ...any) {
	pos.File = s.file
	pos.Line = min(max(pos.Line, 1), max(len(s.lines), 1))
	pos.Column = max(pos.Column, 1)
	for _, e := range s.errs {
		if e.Pos == pos {
			return // it follows from the first one here
		}
	}
	line := ""
	if pos.Line <= len(s.lines) {
		line = lineOf([]byte(s.lines[pos.Line-1]), 1)
	}
	s.errs = append(s.errs, &parts.Error{Pos: pos, Excerpt: line, What: fmt.Sprintf(format, args...), Right: right})
}

// readFlange reads a file of a measured flange. The error is a parts.Errors
// where the file is at fault.
func readFlange(path string) (*flangeFile, error) {
	file, err := os.Open(path)
	if err != nil {
		return nil, err
	}
	defer file.Close()
	src, err := io.ReadAll(io.LimitReader(file, maxFlangeBytes+1))
	if err != nil {
		return nil, err
	}
	return parseFlange(path, src)
}

// parseFlange is readFlange for text already read.
func parseFlange(path string, src []byte) (*flangeFile, error) {
	text := strings.ReplaceAll(strings.TrimPrefix(string(src), "\uFEFF"), "\r\n", "\n")
	s := &flangeSource{file: path, lines: strings.Split(text, "\n"), units: parts.Millimetres}
	root := s.tree(text)
	if root == nil {
		return nil, s.errs
	}
	f := s.flange(root)
	if len(s.errs) > 0 {
		slices.SortStableFunc(s.errs, func(a, b *parts.Error) int {
			return cmp.Or(cmp.Compare(a.Line, b.Line), cmp.Compare(a.Column, b.Column))
		})
		return nil, s.errs
	}
	return f, nil
}

// tree parses the file, after a look at its size and nesting; nil with a fault
// if it cannot be read.
func (s *flangeSource) tree(text string) (root ast.Node) {
	const right = "keys with values, such as `holes: {count: 4, diameter: 14.5}` and `readings:`"
	if len(text) > maxFlangeBytes {
		s.fault(parts.Pos{}, right, "the file is larger than %d KiB", maxFlangeBytes>>10)
		return nil
	}
	depth := 0
	for i, line := range s.lines {
		if !utf8.ValidString(line) || strings.ContainsFunc(line, func(r rune) bool { return r < ' ' && r != '\t' }) {
			s.fault(parts.Pos{Line: i + 1}, "save it as UTF-8 text", "this line is no text")
			return nil
		}
		if len(line) > maxFlangeLine {
			s.fault(parts.Pos{Line: i + 1}, right, "the line is longer than %d characters", maxFlangeLine)
			return nil
		}
		for _, r := range line {
			switch r {
			case '[', '{':
				depth++
			case ']', '}':
				depth = max(depth-1, 0)
			}
			if depth > maxBrackets {
				s.fault(parts.Pos{Line: i + 1}, right, "brackets are nested deeper than %d", maxBrackets)
				return nil
			}
		}
	}
	defer func() {
		// A damaged file must not take the program down, whatever the library
		// does with it.
		if recover() != nil {
			s.fault(parts.Pos{}, right, "this is not valid YAML")
			root = nil
		}
	}()
	file, err := parser.ParseBytes([]byte(text), 0, parser.AllowDuplicateMapKey())
	if err != nil {
		var located interface {
			GetToken() *token.Token
			GetMessage() string
		}
		if errors.As(err, &located) {
			s.fault(tokenPos(located.GetToken()), right, "this is not valid YAML: %s", located.GetMessage())
		} else {
			s.fault(parts.Pos{}, right, "this is not valid YAML")
		}
		return nil
	}
	var bodies []ast.Node
	for _, doc := range file.Docs {
		if doc.Body != nil {
			bodies = append(bodies, doc.Body)
		}
	}
	switch len(bodies) {
	case 0:
		s.fault(parts.Pos{}, right, "the file is empty")
		return nil
	case 1:
		return bodies[0]
	}
	s.fault(tokenPos(bodies[1].GetToken()), "one flange, one file", "a second document starts here")
	return nil
}

func tokenPos(tk *token.Token) parts.Pos {
	if tk == nil || tk.Position == nil {
		return parts.Pos{}
	}
	return parts.Pos{Line: tk.Position.Line, Column: tk.Position.Column}
}

// entry is a value under its key.
type entry struct {
	key   string
	pos   parts.Pos
	value ast.Node
}

// group reads a node as keys with values, all of them known.
func (s *flangeSource) group(n ast.Node, what string, known ...string) []entry {
	var values []*ast.MappingValueNode
	switch n := n.(type) {
	case *ast.MappingNode:
		values = n.Values
	case *ast.MappingValueNode:
		values = []*ast.MappingValueNode{n}
	default:
		s.fault(tokenPos(n.GetToken()), "the keys "+strings.Join(known, ", "), "%s needs keys with values", what)
		return nil
	}
	var out []entry
	for _, v := range values {
		e := entry{key: v.Key.GetToken().Value, pos: tokenPos(v.Key.GetToken()), value: v.Value}
		switch {
		case !slices.Contains(known, e.key):
			s.fault(e.pos, "the keys are "+strings.Join(known, ", "), "the key %.40q is not known in %s", e.key, what)
		case slices.ContainsFunc(out, func(o entry) bool { return o.key == e.key }):
			s.fault(e.pos, "keep one of the two", "the key %s is given twice", e.key)
		default:
			out = append(out, e)
		}
	}
	return out
}

func (s *flangeSource) list(n ast.Node, what string) []ast.Node {
	if l, ok := n.(*ast.SequenceNode); ok {
		return l.Values
	}
	s.fault(tokenPos(n.GetToken()), "a list, each entry after a - or between [ ]", "%s needs a list", what)
	return nil
}

// scalar reads a single value as it is written.
func (s *flangeSource) scalar(n ast.Node, what string) (string, bool) {
	switch v := n.(type) {
	case *ast.StringNode:
		return v.Value, true
	case *ast.IntegerNode, *ast.FloatNode:
		return n.GetToken().Value, true
	}
	s.fault(tokenPos(n.GetToken()), "a single value", "%s needs one plain value", what)
	return "", false
}

// length reads a length above 0 in millimetres; 0 with a fault otherwise.
func (s *flangeSource) length(n ast.Node, what string) float64 {
	text, ok := s.scalar(n, what)
	if !ok {
		return 0
	}
	mm, err := parts.ParseLength(text, s.units)
	if err != nil {
		s.fault(tokenPos(n.GetToken()), "a length such as 201.9, 201.9 mm or 7.95 in", "%s is %.40q: %s", what, text, err)
		return 0
	}
	return mm
}

// count reads a whole number; −1 with a fault otherwise.
func (s *flangeSource) count(n ast.Node, what string, lo, hi int) int {
	text, ok := s.scalar(n, what)
	if !ok {
		return -1
	}
	v, err := strconv.Atoi(text)
	if err != nil || v < lo || v > hi {
		s.fault(tokenPos(n.GetToken()), fmt.Sprintf("a whole number from %d to %d", lo, hi), "%s is %.40q", what, text)
		return -1
	}
	return v
}

// flange reads the whole file.
func (s *flangeSource) flange(root ast.Node) *flangeFile {
	entries := s.group(root, "the file", "flange", "units", "caliper", "spigot", "holes", "bolt", "readings")
	f := &flangeFile{units: parts.Millimetres, source: s}
	get := func(key string) ast.Node {
		for _, e := range entries {
			if e.key == key {
				return e.value
			}
		}
		return nil
	}
	// The units come first: they are those of all lengths.
	if n := get("units"); n != nil {
		switch text, ok := s.scalar(n, "units"); {
		case ok && text != "mm" && text != "in":
			s.fault(tokenPos(n.GetToken()), "mm or in", "units is %.40q", text)
		case ok:
			f.units, s.units = parts.Units(text), parts.Units(text)
		}
	}
	if n := get("flange"); n != nil {
		f.name, _ = s.scalar(n, "flange")
	}
	if n := get("bolt"); n != nil {
		f.bolt, _ = s.scalar(n, "bolt")
		f.boltPos = tokenPos(n.GetToken())
	}
	caliper := 0.0
	if n := get("caliper"); n != nil {
		caliper = s.length(n, "caliper")
	}
	if n := get("spigot"); n != nil {
		f.spigot = tokenPos(n.GetToken())
		f.survey.Spigot = s.diameter(n, "spigot", caliper)
	}
	if n := get("holes"); n != nil {
		s.holes(f, n, caliper)
	} else {
		s.fault(parts.Pos{}, "holes: {count: 4, diameter: 14.5}", "the file lacks the key holes")
	}
	if n := get("readings"); n != nil {
		for i, r := range s.list(n, "readings") {
			f.reading = append(f.reading, tokenPos(r.GetToken()))
			if i < measured.MaxReadings {
				s.reading(f, r, caliper)
			}
		}
		if len(f.reading) > measured.MaxReadings {
			s.fault(f.reading[measured.MaxReadings], fmt.Sprintf("at most %d", measured.MaxReadings), "there are %d readings", len(f.reading))
		}
	} else {
		s.fault(parts.Pos{}, "readings: [{from: 1, to: 2, over: 201.9}, ...]", "the file lacks the key readings")
	}
	return f
}

// diameter reads a diameter, alone or with its own ±.
func (s *flangeSource) diameter(n ast.Node, what string, caliper float64) measured.Diameter {
	d := measured.Diameter{PlusMinusMm: caliper}
	if _, ok := n.(ast.ScalarNode); ok {
		d.Mm = s.length(n, what)
		return d
	}
	for _, e := range s.group(n, what, "diameter", "plus-minus") {
		switch e.key {
		case "diameter":
			d.Mm = s.length(e.value, what)
		case "plus-minus":
			d.PlusMinusMm = s.length(e.value, "plus-minus")
		}
	}
	if d.Mm == 0 {
		s.fault(tokenPos(n.GetToken()), "{diameter: 230.02, plus-minus: 0.02}", "%s has no diameter", what)
	}
	return d
}

func (s *flangeSource) holes(f *flangeFile, n ast.Node, caliper float64) {
	f.holes = tokenPos(n.GetToken())
	entries := s.group(n, "holes", "count", "diameter", "plus-minus", "first", "thread")
	count, pm := 0, caliper
	var dia ast.Node
	for _, e := range entries {
		switch e.key {
		case "count":
			f.holes = e.pos
			count = s.count(e.value, "count", measured.MinHoles, measured.MaxHoles)
		case "diameter":
			dia = e.value
		case "plus-minus":
			pm = s.length(e.value, "plus-minus")
		case "thread":
			f.thread, _ = s.scalar(e.value, "thread")
		case "first":
			text, ok := s.scalar(e.value, "first")
			v, err := strconv.ParseFloat(text, 64)
			if ok && (err != nil || !(math.Abs(v) <= 360)) {
				s.fault(tokenPos(e.value.GetToken()), "degrees from TOP, clockwise, −360 to 360", "first is %.40q", text)
			}
			f.survey.FirstDeg = v
		}
	}
	switch {
	case count < 0:
		return
	case count == 0:
		s.fault(f.holes, "count: 4", "holes lacks the key count")
		return
	case dia == nil:
		s.fault(f.holes, "diameter: 14.5, or a list of one for each hole", "holes lacks the key diameter")
		return
	}
	var each []ast.Node
	if _, ok := dia.(*ast.SequenceNode); ok {
		if each = s.list(dia, "diameter"); len(each) != count {
			s.fault(tokenPos(dia.GetToken()), fmt.Sprintf("%d diameters, or a single one", count), "there are %d diameters for %d holes", len(each), count)
			return
		}
	} else {
		each = slices.Repeat([]ast.Node{dia}, count)
	}
	for _, d := range each {
		f.dias = append(f.dias, tokenPos(d.GetToken()))
		f.survey.Holes = append(f.survey.Holes, measured.Diameter{Mm: s.length(d, "diameter"), PlusMinusMm: pm})
	}
}

func (s *flangeSource) reading(f *flangeFile, n ast.Node, caliper float64) {
	r := measured.Reading{PlusMinusMm: caliper}
	pos := tokenPos(n.GetToken())
	holes := max(len(f.survey.Holes), 1)
	to := false
	for _, e := range s.group(n, "a reading", "from", "to", "over", "between", "centres", "plus-minus") {
		switch e.key {
		case "from":
			r.From = s.count(e.value, "from", 1, holes)
			f.reading[len(f.reading)-1] = e.pos
			pos = e.pos
		case "to":
			to = true
			if text, ok := e.value.(*ast.StringNode); ok && text.Value == "spigot" {
				r.To = measured.Spigot
			} else {
				r.To = s.count(e.value, "to", 1, holes)
			}
		case "over", "between", "centres":
			if r.Kind != "" {
				s.fault(e.pos, "one of over, between and centres", "the reading has both %s and %s", r.Kind, e.key)
			}
			r.Kind, r.Mm = measured.Kind(e.key), s.length(e.value, e.key)
		case "plus-minus":
			r.PlusMinusMm = s.length(e.value, "plus-minus")
		}
	}
	if r.From == 0 || !to || r.Kind == "" {
		s.fault(pos, "{from: 1, to: 2, over: 201.9}", "a reading needs from, to, and one of over, between and centres")
	}
	f.survey.Readings = append(f.survey.Readings, r)
}

// locate turns an error of package measured into one that points at the file.
func (f *flangeFile) locate(err error) error {
	s := f.source
	var input *measured.InputError
	var wrong *measured.Inconsistent
	plain := strings.TrimPrefix(err.Error(), "measured: ")
	switch {
	case errors.As(err, &input):
		pos := f.holes
		switch {
		case input.Reading >= 0 && input.Reading < len(f.reading):
			pos = f.reading[input.Reading]
		case input.Hole > 0 && input.Hole <= len(f.dias):
			pos = f.dias[input.Hole-1]
		case strings.Contains(input.What, "spigot"):
			pos = f.spigot
		}
		s.fault(pos, input.Right, "%s", plain)
	case errors.As(err, &wrong):
		if len(wrong.Suspects) == 0 {
			s.fault(f.holes, "measure again; look for a swapped over and between, and for wrong hole numbers", "%s", plain)
		}
		for i, one := range wrong.Suspects {
			pos := f.holes
			if one.Reading >= 0 && one.Reading < len(f.reading) {
				pos = f.reading[one.Reading]
			} else if one.Hole > 0 && one.Hole <= len(f.dias) {
				pos = f.dias[one.Hole-1]
			}
			if i > 0 {
				plain = "or this one: the others ask for " + fmt.Sprintf("%.2f mm (%+.2f)", one.WantMm, one.OffMm)
			}
			s.fault(pos, "measure it again", "%s", plain)
		}
	default:
		return err
	}
	return s.errs
}
