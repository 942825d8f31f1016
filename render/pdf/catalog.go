package pdf

import (
	"bytes"
	"crypto/sha256"
	"fmt"
	"strconv"
	"strings"
	"time"
	"unicode"
	"unicode/utf16"

	"centrepop/templates"
	"centrepop/templates/typeface"
)

// The library has no setting for print scaling, page labels or PDF 1.7, places
// all bookmarks by the last page and garbles titles beyond U+FFFF. So its file
// is completed by an incremental update (clause 7.5.6): new catalog and
// information dictionary under the old numbers, the outline as new objects,
// and a second cross-reference section that points back to the first. The old
// catalog is not looked for as text: the trailer leads to it, as it leads a
// reader.

// complete returns the file with the update appended.
func complete(file []byte, doc *templates.Document, date time.Time) ([]byte, error) {
	old, err := readTail(file)
	if err != nil {
		return nil, fmt.Errorf("reading back the pages: %w", err)
	}
	kids, err := old.pageRefs(len(doc.Pages))
	if err != nil {
		return nil, fmt.Errorf("reading back the pages: %w", err)
	}
	out, err := withVersion(file)
	if err != nil {
		return nil, err
	}
	u := update{out: out, next: old.size}
	outlines := u.outline(doc, kids)

	var c strings.Builder
	c.WriteString("<</Type /Catalog /Version /1.7 /Pages " + old.pages)
	c.WriteString("\n/ViewerPreferences <</PrintScaling /None /DisplayDocTitle true>>")
	if doc.Language != "" {
		c.WriteString("\n/Lang " + textString(doc.Language))
	}
	c.WriteString("\n/PageLabels <</Nums [")
	for i, page := range doc.Pages {
		label := page.Label
		if label == "" {
			label = strconv.Itoa(i + 1)
		}
		fmt.Fprintf(&c, "\n%d <</P %s>>", i, textString(typeface.Printable(label)))
	}
	c.WriteString("]>>")
	if outlines != 0 {
		fmt.Fprintf(&c, "\n/Outlines %d 0 R /PageMode /UseOutlines", outlines)
	}
	c.WriteString(">>")
	u.object(old.root, c.String())

	stamp := textString(date.Format("D:20060102150405"))
	info := "<</Producer (centrepop) /CreationDate " + stamp + " /ModDate " + stamp
	if doc.Title != "" {
		info += "\n/Title " + textString(doc.Title)
	}
	if doc.Subject != "" {
		info += "\n/Subject " + textString(doc.Subject)
	}
	u.object(old.info, info+">>")
	return u.finish(old), nil
}

// withVersion returns a copy of the file that calls itself PDF 1.7.
func withVersion(file []byte) ([]byte, error) {
	const want = "%PDF-1.7"
	if !bytes.HasPrefix(file, []byte("%PDF-1.")) || len(file) < len(want) {
		return nil, fmt.Errorf("the file begins with %.8q", file)
	}
	return append([]byte(want), file[len(want):]...), nil
}

// update collects the objects of an incremental update.
type update struct {
	out     []byte
	next    int // the first object number not in use
	numbers []int
	offsets []int
}

func (u *update) reserve(n int) int {
	first := u.next
	u.next += n
	return first
}

func (u *update) object(number int, body string) {
	u.numbers = append(u.numbers, number)
	u.offsets = append(u.offsets, len(u.out))
	u.out = fmt.Appendf(u.out, "%d 0 obj\n%s\nendobj\n", number, body)
}

// finish appends cross-reference section and trailer. Each object stands in a
// subsection of its own, which spares sorting them.
func (u *update) finish(old tail) []byte {
	sum := sha256.Sum256(u.out) // the identifier depends on the content only
	start := len(u.out)
	u.out = append(u.out, "xref\n"...)
	for i, number := range u.numbers {
		u.out = fmt.Appendf(u.out, "%d 1\n%010d 00000 n \n", number, u.offsets[i])
	}
	u.out = fmt.Appendf(u.out, "trailer\n<</Size %d /Root %d 0 R /Info %d 0 R /Prev %d /ID [<%x> <%x>]>>\nstartxref\n%d\n%%%%EOF\n",
		u.next, old.root, old.info, old.xref, sum[:16], sum[:16], start)
	return u.out
}

// entry is a bookmark with its neighbours in the tree, as indices; -1 is none.
type entry struct {
	title                          string
	page                           int
	parent, prev, next, first, end int
	open                           int // entries below it that show when all is open
}

// outline writes the bookmarks (clause 12.3.3), all open, and returns the
// number of the root object, or 0 where there are none. The levels have been
// checked: none is more than one deeper than the entry before it.
func (u *update) outline(doc *templates.Document, kids []string) int {
	entries := outlineTree(doc)
	if len(entries) == 0 {
		return 0
	}
	root := u.reserve(1 + len(entries))
	ref := func(i int) string { return fmt.Sprintf("%d 0 R", root+1+i) }
	first, last := -1, -1
	for i, e := range entries {
		var b strings.Builder
		b.WriteString("<</Title " + textString(e.title))
		if e.parent < 0 {
			fmt.Fprintf(&b, " /Parent %d 0 R", root)
			if first < 0 {
				first = i
			}
			last = i
		} else {
			b.WriteString(" /Parent " + ref(e.parent))
		}
		for _, link := range []struct {
			key string
			to  int
		}{{"Prev", e.prev}, {"Next", e.next}, {"First", e.first}, {"Last", e.end}} {
			if link.to >= 0 {
				b.WriteString(" /" + link.key + " " + ref(link.to))
			}
		}
		if e.open > 0 {
			fmt.Fprintf(&b, " /Count %d", e.open)
		}
		fmt.Fprintf(&b, " /Dest [%s /Fit]>>", kids[e.page])
		u.object(root+1+i, b.String())
	}
	u.object(root, fmt.Sprintf("<</Type /Outlines /First %s /Last %s /Count %d>>", ref(first), ref(last), len(entries)))
	return root
}

func outlineTree(doc *templates.Document) []entry {
	var entries []entry
	var path []int // the last entry at each level
	for p, page := range doc.Pages {
		for _, b := range page.Bookmarks {
			i := len(entries)
			e := entry{title: b.Title, page: p, parent: -1, prev: -1, next: -1, first: -1, end: -1}
			if b.Level < len(path) {
				e.prev = path[b.Level]
				entries[e.prev].next = i
			}
			path = append(path[:b.Level], i)
			if b.Level > 0 {
				e.parent = path[b.Level-1]
				if entries[e.parent].first < 0 {
					entries[e.parent].first = i
				}
				entries[e.parent].end = i
			}
			for _, above := range path[:b.Level] {
				entries[above].open++
			}
			entries = append(entries, e)
		}
	}
	return entries
}

// textString writes a text string (clause 7.9.2.2): as it is where it is
// printable ASCII, else in UTF-16 with a byte order mark, in hexadecimal.
// Control characters become spaces: one of them would start a language code.
func textString(s string) string {
	s = strings.Map(func(r rune) rune {
		if unicode.IsControl(r) {
			return ' '
		}
		return r
	}, s)
	ascii := true
	for _, r := range s {
		ascii = ascii && r >= ' ' && r <= '~'
	}
	if ascii {
		return "(" + strings.NewReplacer(`\`, `\\`, "(", `\(`, ")", `\)`).Replace(s) + ")"
	}
	var b strings.Builder
	b.WriteString("<FEFF")
	for _, unit := range utf16.Encode([]rune(s)) {
		fmt.Fprintf(&b, "%04X", unit)
	}
	b.WriteString(">")
	return b.String()
}
