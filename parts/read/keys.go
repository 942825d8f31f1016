package read

import (
	"cmp"
	"fmt"
	"slices"
	"strings"

	"centrepop/parts"
	"centrepop/parts/seq"
)

// Type is what the value of a key is.
type Type string

// The types of value.
const (
	SizeType       Type = "size"         // a length over 0
	DistanceType   Type = "distance"     // a length of 0 or more
	CoordinateType Type = "coordinate"   // a length of either sign
	AngleType      Type = "angle"        // degrees
	CountType      Type = "whole number" //
	NumberType     Type = "number"
	ForceType      Type = "force"
	TextType       Type = "text"
	NameType       Type = "name" // lower-case letters, digits and single hyphens
	WordType       Type = "word" // one of a few
	YesType        Type = "yes or no"
	DateType       Type = "date"
	PaperType      Type = "paper"
	ThreadType     Type = "thread"
	BoltType       Type = "bolt"
	FitPairType    Type = "hole and shaft class"
	ClassFitType   Type = "fit"       // a class, or the keys of a fit
	RefType        Type = "reference" // part.feature, in joints also part#2.feature
	PlaceType      Type = "place"     // part, part.feature or joint
	HoleType       Type = "hole size" // words, or the keys diameter and fit
	DepthType      Type = "depth"     // a size, or through
	PathType       Type = "path data"
	EitherType     Type = "size or keys" // a size, or the keys of its group
	NamedType      Type = "name of a standard or keys"
	OntoType       Type = "reference or keys" // a reference, or the keys of its group
	StockNameType  Type = "size or text"
	PairType       Type = "two sizes"   // [a, b]
	FloatsType     Type = "two lengths" // [a, b] of either sign
	PointType      Type = "point"       // [x, y]
	PointsType     Type = "points"
	AnglesType     Type = "angles"            // a list
	ClocksType     Type = "angle or angles"   // one, or a list
	SizesType      Type = "size or sizes"     // one, or a list
	HoleOrSpigot   Type = "number or spigot"  //
	NamesType      Type = "name or names"     // one, or a list
	RefsType       Type = "references"        // a list
	InLineType     Type = "lists of features" // a list of references, or a list of such lists
	TextsType      Type = "texts"
	FilesType      Type = "files"
	NumbersType    Type = "numbers"
	KeysType       Type = "keys"         // the keys of its group
	ListType       Type = "list of keys" // a list of the keys of its group
)

// Key is one key of the input: the reader reads by it, and the lists of keys
// and the schema are written from it.
type Key struct {
	Name    string   `json:"key"`
	Type    Type     `json:"type"`
	Means   string   `json:"means"`
	Unit    string   `json:"unit,omitempty"` // of a bare number, where not that of the type
	Need    bool     `json:"needed"`
	Default string   `json:"default,omitempty"` // what an absent key stands for; the reader reads it where it is a value
	Low     float64  `json:"-"`                 // bounds of numbers and angles
	High    float64  `json:"-"`
	Longest int      `json:"-"` // characters of a text
	Entries [2]int   `json:"-"` // least and most entries of a list
	Words   []string `json:"words,omitempty"`
	Example string   `json:"example,omitempty"` // what would be right; of its group if empty
	Group   *Group   `json:"-"`
	forms   shape    // of part that take the key; 0 for all
	use     string   // the same in words
}

// Group is a set of keys that stand together.
type Group struct {
	Name    string `json:"group"` // what lists call it: job, stock, holes
	Means   string `json:"means"`
	Example string `json:"example,omitempty"`
	Keys    []Key  `json:"keys"`
	// OneOf are the keys of which exactly one is given, if any.
	OneOf []string `json:"one_of,omitempty"`
}

// names of the keys, in the order of the table.
func (g *Group) names() []string { return seq.Map(g.Keys, func(k Key) string { return k.Name }) }

// key finds a key of the group. Asking for one that is not in the table is a
// fault of the program.
func (g *Group) key(name string) *Key {
	i := slices.IndexFunc(g.Keys, func(k Key) bool { return k.Name == name })
	if i < 0 {
		panic("parts: the group " + g.Name + " has no key " + name)
	}
	return &g.Keys[i]
}

func (g *Group) example(k *Key) string { return cmp.Or(k.Example, g.Example) }

// Limits says in words what values a key takes; "" where the type says it all.
func (k Key) Limits() string {
	switch k.Type {
	case SizeType, EitherType, DepthType, SizesType, PairType:
		return "over 0, up to 10 m"
	case DistanceType:
		return "0 to 10 m"
	case CoordinateType, PointType, PointsType, FloatsType:
		return "-10 m to 10 m"
	case AngleType, ClocksType, AnglesType, CountType, NumberType, NumbersType:
		low, high := k.bounds()
		return fmt.Sprintf("%g to %g", low, high)
	case ForceType:
		return "1 N to 100 000 kN"
	case TextType:
		return fmt.Sprintf("up to %d characters", k.longest())
	case NameType:
		return "up to 60 characters"
	case PaperType:
		return "140 × 200 mm to 2000 mm"
	case WordType:
		return strings.Join(k.Words, ", ")
	case ListType, TextsType, FilesType, RefsType:
		return fmt.Sprintf("%d to %d entries", k.Entries[0], k.Entries[1])
	}
	return ""
}

// UnitText says what a bare number is in; "" for what is no number.
func (k Key) UnitText() string {
	switch {
	case k.Unit != "":
		return k.Unit
	case slices.Contains([]Type{SizeType, DistanceType, CoordinateType, EitherType, DepthType, SizesType, PairType, PointType, PointsType, FloatsType, HoleType}, k.Type):
		return "mm or in"
	case k.Type == AngleType || k.Type == AnglesType || k.Type == ClocksType:
		return "degrees"
	}
	return ""
}

// bounds are the least and the greatest number that a key takes; an angle that
// says none goes once round either way.
func (k Key) bounds() (low, high float64) {
	if k.Low == 0 && k.High == 0 {
		return -360, 360
	}
	return k.Low, k.High
}

func (k Key) longest() int {
	if k.Longest > 0 {
		return k.Longest
	}
	return maxText
}

// fields is a group of keys as given, with what is known about each.
type fields struct {
	*reader
	n *node
	g *Group
}

// in checks that a node is a group of keys and that all of them are known. It
// returns nil if the node is absent or no group.
func (r *reader) in(n *node, g *Group) *fields {
	if n == nil {
		return nil
	}
	if n.kind != mapNode {
		r.faultf(n.pos, "the keys "+list(g.names()), "%s needs keys with values, not %s", n.label, n.what())
		return nil
	}
	for _, f := range n.keys {
		if !slices.ContainsFunc(g.Keys, func(k Key) bool { return k.Name == f.key }) {
			r.unknownKey(n, f, g.names())
		}
	}
	return &fields{r, n, g}
}

// val returns the value of a key, nil if it is not given; one that must be
// given is then reported.
func (f *fields) val(name string) *node {
	k := f.g.key(name)
	if v := f.n.get(name); v != nil || !k.Need {
		return v
	}
	return f.need(f.n, name, f.g.example(k))
}

func (f *fields) given(name string) bool { return f.n.get(name) != nil }

// spare refuses a key that is given where it is useless.
func (f *fields) spare(key string, useless bool, what, right string) {
	if useless && f.given(key) {
		f.fault(f.n.keyPos(key), what, right)
	}
}

// oneOf returns the one key that is given of those that stand for each other.
func (f *fields) oneOf() (string, *node) { return f.reader.oneOf(f.n, f.g.OneOf...) }

func (f *fields) sub(name string) *fields { return f.in(f.val(name), f.g.key(name).Group) }

// subOf reads a key that is a group by what reads its keys; absent, it is the zero value.
func subOf[T any](f *fields, name string, read func(*fields) T) (out T) {
	if g := f.sub(name); g != nil {
		out = read(g)
	}
	return out
}

func (f *fields) each(name string) []*fields {
	k := f.g.key(name)
	items, _ := f.items(f.val(name), k.Entries[0], k.Entries[1], "a list such as ["+k.Group.Example+"]")
	var out []*fields
	for _, item := range items {
		if one := f.in(item, k.Group); one != nil {
			out = append(out, one)
		}
	}
	return out
}

// eachOf reads the entries of a list of groups by what reads one of them.
func eachOf[T any](f *fields, name string, read func(*fields) T) (out []T) {
	return seq.Map(f.each(name), read)
}

func (f *fields) entries(name string) []*node {
	k := f.g.key(name)
	items, _ := f.items(f.val(name), k.Entries[0], k.Entries[1], f.g.example(k))
	return items
}

func (f *fields) length(name string) parts.Length {
	n := f.val(name)
	if n == nil {
		if mm, wrong := parts.MmOf(f.g.key(name).Default, parts.Millimetres); wrong == "" {
			return parts.Length{Mm: mm, Text: f.g.key(name).Default}
		}
		return parts.Length{}
	}
	return f.reader.length(n, f.g.key(name).span())
}

// span says which lengths a key takes.
func (k *Key) span() span {
	switch k.Type {
	case DistanceType:
		return fromZero
	case CoordinateType, FloatsType:
		return signed
	}
	return positive
}

// angle reads a key that is an angle; absent, it is the default without a
// place, or 0.
func (f *fields) angle(name string) parts.Angle {
	k := f.g.key(name)
	n := f.val(name)
	if n == nil {
		deg, _ := parts.DegOf(k.Default)
		return parts.Angle{Deg: deg}
	}
	low, high := k.bounds()
	a, _ := f.reader.angle(n, low, high)
	return a
}

// count reads a whole number; absent, it is the default.
func (f *fields) count(name string) int {
	k := f.g.key(name)
	n := f.val(name)
	if n == nil {
		v, _ := parts.WholeOf(k.Default)
		return int(v)
	}
	return f.reader.count(n, int(k.Low), int(k.High))
}

func (f *fields) number(name string) parts.Number {
	k := f.g.key(name)
	return f.reader.number(f.val(name), k.Low, k.High)
}

func (f *fields) text(name string) parts.Text {
	return f.reader.text(f.val(name), f.g.key(name).longest())
}

func (f *fields) name(name string) parts.Text { return f.reader.name(f.val(name)) }

// word reads one of the words of a key; absent, it is the default.
func (f *fields) word(name string) string {
	k := f.g.key(name)
	n := f.val(name)
	if n == nil && slices.Contains(k.Words, k.Default) {
		return k.Default
	}
	return f.reader.word(n, k.Words...)
}

// wordText is a word with its place.
func (f *fields) wordText(name string) parts.Text {
	if w := f.word(name); w != "" {
		return parts.Text{Value: w, Pos: f.n.get(name).pos}
	}
	return parts.Text{}
}

// yes reads yes or no; absent is no.
func (f *fields) yes(name string) bool {
	w := f.reader.word(f.val(name), "yes", "no", "true", "false")
	return w == "yes" || w == "true"
}

func (f *fields) pair(name string) (a, b parts.Length) {
	k := f.g.key(name)
	items, ok := f.items(f.val(name), 2, 2, f.g.example(k))
	if !ok {
		return parts.Length{}, parts.Length{}
	}
	return f.reader.length(items[0], k.span()), f.reader.length(items[1], k.span())
}

// pairBy reads two sizes with x between them; two is false where they are not.
func (f *fields) pairBy(t parts.Text) (a, b parts.Length, two bool) {
	first, second, two := strings.Cut(strings.ReplaceAll(t.Value, "×", "x"), "x")
	side := func(text string) parts.Length {
		text = strings.TrimSpace(text)
		mm, wrong := parts.MmOf(text, f.units)
		if wrong != "" || mm < parts.SmallestMm {
			two = false
		}
		return parts.Length{Mm: mm, Text: text, Pos: t.Pos}
	}
	a, b = side(first), side(second)
	return a, b, two
}

func (f *fields) texts(name string) []parts.Text {
	most := f.g.key(name).longest()
	return seq.Keep(seq.Map(f.entries(name), func(n *node) parts.Text { return f.reader.text(n, most) }), func(t parts.Text) bool { return t.Pos.Line > 0 })
}

func (f *fields) names(key string) []parts.Text {
	n := f.val(key)
	if n == nil {
		return nil
	}
	if n.kind == scalarNode {
		return []parts.Text{f.reader.name(n)}
	}
	return seq.Map(f.entries(key), f.reader.name)
}

func (f *fields) face(name string) parts.Face {
	if w := f.word(name); w != "" {
		return parts.Face(w)
	}
	return parts.Front
}
