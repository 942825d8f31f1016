package read

import (
	"fmt"
	"regexp"
	"slices"
	"strings"
	"sync"
	"unicode/utf8"

	"centrepop/parts"
	"centrepop/parts/meant"
	"centrepop/parts/seq"
)

// Lengths of texts, in characters.
const (
	maxText = 200
	maxNote = 2000
)

// reader takes typed values from nodes and records what is wrong with them. A
// nil node is an absent key: it gives the zero value and no fault.
type reader struct {
	*source
	units parts.Units // empty if the input fails to say; then sizes are not compared
}

// sound tells whether no fault has been found at a key of n or anywhere below
// it, so that what was read from there can be relied on. An absent key is
// sound.
func (r *reader) sound(n *node, key string) bool {
	f := n.find(key)
	return f == nil || f.val != nil && !r.faultAt(f.pos) && r.soundBelow(f.val)
}

func (r *reader) soundBelow(n *node) bool {
	return !n.broken && !r.faultAt(n.pos) && !slices.ContainsFunc(n.items, func(item *node) bool { return !r.soundBelow(item) }) &&
		!slices.ContainsFunc(n.keys, func(f field) bool { return r.faultAt(f.pos) || !r.soundBelow(f.val) })
}

func (s *source) faultAt(pos parts.Pos) bool {
	return slices.ContainsFunc(s.errs, func(e *parts.Error) bool { return e.Pos == pos })
}

// renamed are keys of earlier versions and what they are called now.
var renamed = map[string]string{"flush": "level", "align": "in-line", "flip": "other-way-round"}

func (r *reader) unknownKey(n *node, f field, known []string) {
	if r.full {
		return // it would not be shown
	}
	if now := renamed[f.key]; slices.Contains(known, now) {
		n.meant = append(n.meant, now)
		r.faultf(f.pos, now+" in its place, with the same value", "the key %s of earlier versions is now %s", f.key, now)
		return
	}
	if like := meant.Word(f.key, known); like != "" {
		n.meant = append(n.meant, like)
	}
	r.faultf(f.pos, "the keys here are "+all(known), "the key %s is not known in %s%s", parts.Quote(f.key), n.label, meant.Perhaps(f.key, known))
}

// need returns the value of a key that must be there.
func (r *reader) need(n *node, key, right string) *node {
	if n == nil || n.kind != mapNode {
		return nil
	}
	if f := n.find(key); f != nil {
		return f.val
	}
	if !slices.Contains(n.meant, key) {
		r.lack(n.pos, n.label+" lacks the key "+key, right)
	}
	return nil
}

// oneOf returns the one key of a set that is given. No key, and a second one,
// are faults.
func (r *reader) oneOf(n *node, keys ...string) (string, *node) {
	found := seq.Keep(n.keys, func(f field) bool { return slices.Contains(keys, f.key) })
	switch len(found) {
	case 0:
		if !slices.ContainsFunc(keys, func(key string) bool { return slices.Contains(n.meant, key) }) {
			r.lack(n.pos, fmt.Sprintf("%s has none of the keys %s", n.label, list(keys)), "one of them")
		}
		return "", nil
	case 1:
		return found[0].key, found[0].val
	}
	r.faultf(found[1].pos, "keep one of the two", "%s has both %s and %s", n.label, found[0].key, found[1].key)
	return "", nil
}

func (r *reader) is(n *node, kind nodeKind, what, right string) bool {
	switch {
	case n == nil:
		return false
	case n.kind == emptyNode:
		r.faultf(n.pos, right, "%s has no value", n.label)
	case n.kind != kind:
		r.faultf(n.pos, right, "%s needs %s, not %s", n.label, what, n.what())
	}
	return n.kind == kind
}

func (r *reader) scalar(n *node, what, right string) (string, bool) {
	if !r.is(n, scalarNode, what, right) {
		return "", false
	}
	return n.text, true
}

func (r *reader) items(n *node, lo, hi int, right string) ([]*node, bool) {
	if !r.is(n, listNode, "a list", right) {
		return nil, false
	}
	if len(n.items) >= lo && len(n.items) <= hi {
		return n.items, true
	}
	many := fmt.Sprintf("%d to %d entries", lo, hi)
	if lo == hi {
		many = entries(lo)
	}
	r.faultf(n.pos, right, "%s has %s; it takes %s", n.label, entries(len(n.items)), many)
	return nil, false
}

func entries(n int) string {
	if n == 1 {
		return "1 entry"
	}
	return fmt.Sprintf("%d entries", n)
}

// text reads a line of words of at most most characters.
func (r *reader) text(n *node, most int) parts.Text {
	s, ok := r.scalar(n, "text", "a line of text")
	if !ok {
		return parts.Text{}
	}
	switch {
	case strings.TrimSpace(s) == "":
		r.faultf(n.pos, "a line of text", "%s is empty", n.label)
	case utf8.RuneCountInString(s) > most:
		r.faultf(n.pos, "shorten it", "%s is longer than %d characters", n.label, most)
	case strings.ContainsFunc(s, badInText) || most < maxNote && strings.Contains(s, "\n"):
		r.faultf(n.pos, "one line of printable text", "%s holds a line end or a character that cannot be printed", n.label)
	default:
		return parts.Text{Value: s, Pos: n.pos}
	}
	return parts.Text{}
}

// badInText tells characters that an escape such as "\0" can bring into text.
func badInText(r rune) bool {
	return r < ' ' && r != '\n' || r == 0x7F || r >= 0x80 && r < 0xA0 || r == utf8.RuneError ||
		r >= 0x202A && r <= 0x202E || r >= 0x2066 && r <= 0x2069
}

func (r *reader) word(n *node, words ...string) string {
	s, ok := r.scalar(n, "a word", list(words))
	if !ok {
		return ""
	}
	if slices.Contains(words, s) {
		return s
	}
	r.faultf(n.pos, list(words), "%s is %s, which is not known%s", n.label, parts.Quote(s), meant.Perhaps(s, words))
	return ""
}

var (
	nameForm   = sync.OnceValue(func() *regexp.Regexp { return regexp.MustCompile(`^[a-z0-9]+(-[a-z0-9]+)*$`) })
	threadForm = sync.OnceValue(func() *regexp.Regexp { return regexp.MustCompile(`^[A-Za-z#]{0,3}[0-9][A-Za-z0-9 ./×x-]*$`) })
	classForm  = sync.OnceValue(func() *regexp.Regexp { return regexp.MustCompile(`^([A-Z]{1,2}|[a-z]{1,2})(0?[0-9]|1[0-8])$`) })
	boltForm   = sync.OnceValue(func() *regexp.Regexp {
		return regexp.MustCompile(`^(.+?)(?:\s+((?i:[0-9]{1,2}\.[0-9]|[AC][0-9]-[0-9]{2}|(?:ASTM )?(?:A574|F835)|(?:SAE )?(?:grade|gr) ?[0-9])))?$`)
	})
)

func (r *reader) name(n *node) parts.Text {
	return r.formed(n, 60, nameForm(), "name", "lower-case letters and digits with single hyphens between, such as drain-port")
}

// thread reads a thread designation. Whether the thread exists is for the
// layout stage, which has the tables.
func (r *reader) thread(n *node) parts.Text {
	return r.formed(n, 40, threadForm(), "thread", "a thread such as M10, M40x1.5, G1/2, 1/2-13 UNC, Tr20x4 or 3/4-6 ACME")
}

// formed reads a text of a form.
func (r *reader) formed(n *node, most int, form *regexp.Regexp, what, right string) parts.Text {
	t := r.text(n, most)
	if t.Pos.Line > 0 && !form.MatchString(t.Value) {
		r.faultf(n.pos, right, "%s is %s, which is no %s", n.label, parts.Quote(t.Value), what)
		return parts.Text{}
	}
	return t
}
