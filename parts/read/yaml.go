package read

import (
	"bytes"
	"errors"
	"fmt"
	"slices"
	"strings"
	"unicode"
	"unicode/utf8"

	"centrepop/parts"
	"centrepop/parts/seq"

	"github.com/goccy/go-yaml/ast"
	"github.com/goccy/go-yaml/lexer"
	"github.com/goccy/go-yaml/parser"
	"github.com/goccy/go-yaml/token"
)

// LargestFile is the most bytes of an input file.
const LargestFile = 1 << 20

// Limits on an input file. The YAML library takes quadratic time over maps
// of many keys and recurses over deep ones, so they are refused before it sees them.
const (
	maxFileBytes  = LargestFile
	maxLines      = 20_000
	maxLineChars  = 20_000
	maxBlankLines = 200 // in one run
	maxTokens     = 200_000
	maxKeys       = 5_000 // of one map
	maxNesting    = 32
)

type nodeKind int

const (
	emptyNode nodeKind = iota // a key with nothing after it
	scalarNode
	listNode
	mapNode
)

// node is a value of the input, with its place. It is what is left of YAML
// once anchors, tags and the like are refused.
type node struct {
	pos   parts.Pos
	kind  nodeKind
	label string // what it is called in messages: its key, or "entry 2 of KEY"
	text  string // scalar, as written without quotes
	items []*node
	keys  []field
	// broken tells that an entry or key was left out because of a fault.
	broken bool
	// meant holds the known keys that unknown ones were probably meant to be;
	// they are not reported as missing.
	meant []string
}

// drop takes a key away, so that nothing reads it.
func (n *node) drop(key string) {
	n.keys = slices.DeleteFunc(n.keys, func(f field) bool { return f.key == key })
}

type field struct {
	key string
	pos parts.Pos
	val *node
}

// get returns the value of a key, nil if it is not there.
func (n *node) get(key string) *node {
	if f := n.find(key); f != nil {
		return f.val
	}
	return nil
}

// find returns a key, nil if it is not there.
func (n *node) find(key string) *field {
	if n == nil {
		return nil
	}
	return seq.At(n.keys, func(f *field) bool { return f.key == key })
}

// hasAny tells whether one of the keys is there, though perhaps at fault or
// misspelt.
func (n *node) hasAny(keys []string) bool {
	return slices.ContainsFunc(keys, func(key string) bool {
		return slices.Contains(n.meant, key) || n.find(key) != nil
	})
}

// keyPos returns the place of a key, the place of the map if it is not there.
func (n *node) keyPos(key string) parts.Pos {
	if f := n.find(key); f != nil {
		return f.pos
	}
	return n.pos
}

// what names the kind of a node in messages.
func (n *node) what() string {
	switch n.kind {
	case scalarNode:
		return parts.Quote(n.text)
	case listNode:
		return "a list"
	case mapNode:
		return "a group of keys"
	}
	return "nothing"
}

// read turns a file into a tree of nodes. It returns nil, with at least one
// fault recorded, if the file cannot be understood as YAML of the kind used
// here; faults that leave the rest readable are recorded beside a tree.
func read(file string, src []byte) (*source, *node) {
	s := &source{file: file}
	text, ok := s.accept(src)
	if !ok {
		return s, nil
	}
	doc, ok := s.parse(text)
	if !ok {
		return s, nil
	}
	root := s.convert(doc, "the file", 1)
	if root == nil || s.deep {
		return s, nil
	}
	if root.kind != mapNode {
		s.faultf(root.pos, "start with lines such as `part: cover`", "the file holds %s instead of keys and values", root.what())
		return s, nil
	}
	return s, root
}

// accept checks the characters and the size of a file before it is parsed, and
// returns its text with plain line ends and without byte order mark.
func (s *source) accept(src []byte) (string, bool) {
	if len(src) > maxFileBytes {
		s.faultf(parts.Pos{}, "split the job into more part files", "the file is larger than %d KiB", maxFileBytes>>10)
		return "", false
	}
	if bytes.HasPrefix(src, []byte{0xFF, 0xFE}) || bytes.HasPrefix(src, []byte{0xFE, 0xFF}) {
		s.fault(parts.Pos{}, "the file is written as UTF-16", "save it as UTF-8")
		return "", false
	}
	raw := strings.TrimPrefix(string(src), "\uFEFF")
	raw = strings.ReplaceAll(raw, "\r\n", "\n")
	raw = strings.ReplaceAll(raw, "\r", "\n")
	s.lines = strings.Split(raw, "\n")
	if len(s.lines) > maxLines {
		s.faultf(parts.Pos{Line: maxLines + 1}, "split the job into more part files", "the file has more than %d lines", maxLines)
		return "", false
	}
	blank, inside := 0, false
	for i, line := range s.lines {
		if fault, right, col := checkLine(line); fault != "" {
			s.fault(parts.Pos{Line: i + 1, Column: col}, fault, right)
			return "", false
		}
		if strings.TrimSpace(line) == "" {
			if blank++; blank > maxBlankLines {
				s.faultf(parts.Pos{Line: i + 1}, "delete the empty lines", "more than %d empty lines on end", maxBlankLines)
				return "", false
			}
			continue
		}
		blank = 0
		if !strings.HasPrefix(strings.TrimSpace(line), "#") {
			inside = true
		}
	}
	if !inside {
		s.fault(parts.Pos{}, "the file is empty", "start with `job:` or `part:`")
		return "", false
	}
	return raw, true
}

// checkLine finds the first character of a line that has no business there.
func checkLine(line string) (fault, right string, column int) {
	column = 1
	for i, r := range line {
		switch {
		case r == utf8.RuneError && !strings.HasPrefix(line[i:], "\uFFFD"):
			return "this is not UTF-8 text", "save the file as UTF-8", column
		case r == 0:
			return "there is a NUL character here", "this is not a text file, or it is damaged", column
		case r == '\t':
			if strings.TrimLeft(line[:i], " \t") == "" && strings.TrimSpace(line) != "" {
				return "a tab is used to indent", "indent with spaces", column
			}
		case unicode.IsControl(r):
			return fmt.Sprintf("there is a control character (U+%04X) here", r), "delete it", column
		case r == '\u2028' || r == '\u2029' || r == '\uFEFF' || unicode.Is(unicode.Bidi_Control, r):
			return fmt.Sprintf("there is an invisible character (U+%04X) here", r), "delete it", column
		}
		if column++; column > maxLineChars {
			return fmt.Sprintf("the line has more than %d characters", maxLineChars), "break the line", column
		}
	}
	return "", "", 0
}

// parse runs the YAML library over checked text and returns the body of its
// one document.
func (s *source) parse(text string) (body ast.Node, ok bool) {
	defer func() {
		// Should the library ever panic on odd input, a damaged file must
		// still not take the program down.
		if recover() != nil {
			s.fault(parts.Pos{}, "this is not valid YAML", "compare it with a part file that works")
			body, ok = nil, false
		}
	}()
	tokens := lexer.Tokenize(text)
	if !s.checkTokens(tokens) {
		return nil, false
	}
	file, err := parser.Parse(tokens, 0, parser.AllowDuplicateMapKey())
	if err != nil {
		s.syntax(err)
		return nil, false
	}
	for _, doc := range file.Docs {
		if doc.Body != nil {
			return doc.Body, true
		}
	}
	s.fault(parts.Pos{}, "the file is empty", "start with `job:` or `part:`")
	return nil, false
}

func place(tk *token.Token) parts.Pos {
	if tk == nil || tk.Position == nil {
		return parts.Pos{}
	}
	return parts.Pos{Line: tk.Position.Line, Column: tk.Position.Column}
}

// unused are the parts of YAML that have no place here, with what to write instead.
var unused = map[token.Type][2]string{
	token.AnchorType:    {"anchors and aliases (& and *) are not used here", "write the value out; put text with & or * in quotes"},
	token.AliasType:     {"anchors and aliases (& and *) are not used here", "write the value out; put text with & or * in quotes"},
	token.MergeKeyType:  {"merge keys (<<) are not used here", "write the keys out"},
	token.TagType:       {"tags (!) are not used here", "delete the tag; put text with ! in quotes"},
	token.DirectiveType: {"directives (%) are not used here", "delete the line"},
}

// checkTokens refuses the parts of YAML that are not used here, too many keys in one
// place, and nesting so deep that the parser's recursion could hurt.
func (s *source) checkTokens(tokens token.Tokens) bool {
	if len(tokens) > maxTokens {
		s.faultf(place(tokens[maxTokens]), "split the job into more part files", "the file holds more than %d words and marks", maxTokens)
		return false
	}
	begun, ended := false, false
	var in nested
	for i, tk := range tokens {
		if why, ok := unused[tk.Type]; ok {
			s.fault(place(tk), why[0], why[1])
			return false
		}
		switch tk.Type {
		case token.CommentType:
			continue
		case token.DocumentEndType:
			ended = true
			continue
		}
		header := tk.Type == token.DocumentHeaderType
		if ended || header && begun {
			s.fault(place(tk), "a second document starts here", "put each part in its own file")
			return false
		}
		if begun = true; header {
			continue
		}
		switch keys := in.add(tokens, i); {
		case keys > maxKeys:
			s.faultf(place(tk), "the keys that the README lists", "more than %d keys stand in one place", maxKeys)
			return false
		case len(in) > 2*maxNesting:
			s.tooDeep(place(tk))
			return false
		}
	}
	return true
}

// nested are the lists and maps that a token lies in, outermost first: each with the column that it
// begins in, 0 for one in brackets, and the keys that it has so far.
type nested []struct{ column, keys int }

// add takes the next token in; keys is how many its map has with it, if it stands behind one. Outside
// brackets what begins further left ends what stands right of it.
func (n *nested) add(tokens token.Tokens, i int) (keys int) {
	open, column := *n, 0
	flow := len(open) > 0 && open[len(open)-1].column == 0
	switch tk := tokens[i]; tk.Type {
	case token.MappingStartType, token.SequenceStartType:
		*n = append(open, struct{ column, keys int }{})
		return 0
	case token.MappingEndType, token.SequenceEndType:
		if flow {
			*n = open[:len(open)-1]
		}
		return 0
	case token.SequenceEntryType, token.MappingKeyType:
		column = tk.Position.Column
	case token.MappingValueType:
		column, keys = tokens[max(0, i-1)].Position.Column, 1
	default:
		return 0
	}
	for !flow && len(open) > 0 && open[len(open)-1].column > column {
		open = open[:len(open)-1]
	}
	if !flow && (len(open) == 0 || open[len(open)-1].column < column) {
		open = append(open, struct{ column, keys int }{column, 0})
	}
	*n = open
	open[len(open)-1].keys += keys
	return keys * open[len(open)-1].keys
}

func (s *source) tooDeep(pos parts.Pos) {
	s.deep = true
	s.faultf(pos, "no part file needs it; check the brackets and the indentation", "nesting is deeper than %d levels", maxNesting)
}

// syntax records an error of the YAML library as one of ours.
func (s *source) syntax(err error) {
	var located interface {
		GetToken() *token.Token
		GetMessage() string
	}
	if !errors.As(err, &located) {
		s.fault(parts.Pos{}, "this is not valid YAML", "compare it with a part file that works")
		return
	}
	right := "check brackets, quotes, colons and the indentation on this line and the one above"
	message := located.GetMessage()
	for _, hint := range syntaxHints {
		if strings.Contains(message, hint.part) {
			message, right = hint.what, hint.right
			break
		}
	}
	message = strings.Map(func(r rune) rune {
		if unicode.IsPrint(r) {
			return r
		}
		return ' '
	}, message)
	s.fault(s.exact(located.GetToken()), "this is not valid YAML: "+message, right)
}

// exact is where a token starts. The library puts some marks after a quoted
// text one character too far to the right.
func (s *source) exact(tk *token.Token) parts.Pos {
	pos := place(tk)
	if tk == nil || pos.Line < 1 || pos.Line > len(s.lines) {
		return pos
	}
	mark, line := []rune(tk.Value), []rune(s.lines[pos.Line-1])
	at := func(column int) bool { return column >= 1 && column <= len(line) && line[column-1] == mark[0] }
	if len(mark) == 1 && !at(pos.Column) && at(pos.Column-1) {
		pos.Column--
	}
	return pos
}

// syntaxHints put the library's commoner messages in the words of a reader of
// part files.
var syntaxHints = []struct{ part, what, right string }{
	{"end character of single-quoted", "the quote ' is never closed", "add the closing '"},
	{"end character of double-quoted", "the quote \" is never closed", "add the closing \""},
	{"flow mapping end token", "the brace { is never closed", "add the closing }"},
	{"sequence end token", "the bracket [ is never closed", "add the closing ]"},
	{"',' or ']' must", "the list has no comma or closing bracket here", "put a comma between entries and ] at the end"},
	{"',' or '}' must", "the group has no comma or closing brace here", "put a comma between entries and } at the end"},
	{"mapping value is not allowed", "there are two colons in one line", "put the value in quotes, or the second key on its own line"},
	{"value is not allowed in this context", "this does not belong here", "indent like the keys of the same group, with nothing behind the value"},
	{"non-map value", "a line without a colon stands among keys", "write `key: value`"},
	{"invalid key for this map", "a key is a list or a group", "keys are plain words"},
	{"reserved character", "a value starts with a reserved character", "put the value in quotes"},
	{"cannot start any token", "a tab stands where a key or value should start", "use spaces"},
	{"expected sequence element", "the list has an entry with nothing in it", "delete the comma, or write the entry"},
	{"unexpected scalar value type", "the list has an entry with nothing in it", "delete the comma, or write the entry"},
	{"could not find map value", "a key has no colon", "write `key: value`"},
}

// place is where a piece of the syntax starts in the file.
func (s *source) place(n ast.Node) parts.Pos {
	pos := place(n.GetToken())
	pos.File = s.file
	return pos
}

// convert turns a syntax tree into nodes. It returns nil when it has recorded
// a fault about the node itself.
func (s *source) convert(n ast.Node, label string, depth int) *node {
	pos := s.place(n)
	if depth > maxNesting {
		s.tooDeep(pos)
		return nil
	}
	out := &node{pos: pos, label: label}
	switch v := n.(type) {
	case *ast.NullNode:
		return out
	case *ast.LiteralNode:
		out.kind, out.text = scalarNode, strings.TrimRight(v.Value.Value, "\n")
	case *ast.StringNode:
		out.kind, out.text = scalarNode, v.Value
	case *ast.IntegerNode, *ast.FloatNode, *ast.BoolNode, *ast.InfinityNode, *ast.NanNode:
		out.kind, out.text = scalarNode, n.GetToken().Value
	case *ast.SequenceNode:
		out.kind = listNode
		for i, item := range v.Values {
			if c := s.convert(item, fmt.Sprintf("entry %d of %s", i+1, label), depth+1); c != nil {
				out.items = append(out.items, c)
			} else {
				out.broken = true
			}
		}
	case *ast.MappingNode:
		out.kind = mapNode
		if !v.IsFlowStyle && len(v.Values) > 0 {
			out.pos = s.place(v.Values[0].Key)
		}
		s.convertKeys(out, v.Values, depth)
	case *ast.MappingValueNode:
		out.kind = mapNode
		out.pos = s.place(v.Key)
		s.convertKeys(out, []*ast.MappingValueNode{v}, depth)
	default:
		s.fault(pos, "this kind of YAML is not used here", "write plain keys, lists and values")
		return nil
	}
	return out
}

func (s *source) convertKeys(out *node, values []*ast.MappingValueNode, depth int) {
	lines := make(map[string]int, len(values))
	for _, v := range values {
		pos := s.place(v.Key)
		key, ok := v.Key.(*ast.StringNode)
		if !ok {
			s.fault(pos, "a key must be a plain word", "a word, a colon, then the value")
			out.broken = true
			continue
		}
		if line, twice := lines[key.Value]; twice {
			s.faultf(pos, "keep one of the two", "the key %s is given twice, first in line %d", parts.Quote(key.Value), line)
			out.broken = true
			continue
		}
		lines[key.Value] = pos.Line
		if val := s.convert(v.Value, key.Value, depth+1); val != nil {
			if val.kind == emptyNode {
				val.pos = pos
			}
			out.keys = append(out.keys, field{key: key.Value, pos: pos, val: val})
		} else {
			out.keys = append(out.keys, field{key: key.Value, pos: pos})
			out.broken = true
		}
	}
}
