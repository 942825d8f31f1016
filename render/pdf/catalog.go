package pdf

import (
	"cmp"
	"fmt"
	"strconv"
	"strings"
	"time"

	"centrepop/templates/draw"
)

// complete writes what belongs to the whole document: catalog (clause 7.7.2),
// page labels, bookmarks, information and metadata, and the end of the file.
func (f *file) complete(doc *draw.Document, date time.Time, tree int, kids []int, structure int) error {
	var c strings.Builder
	fmt.Fprintf(&c, "<</Type /Catalog /Pages %d 0 R /StructTreeRoot %d 0 R /MarkInfo <</Marked true>>", tree, structure)
	sides := "Simplex"
	if doc.TwoSided {
		sides = "DuplexFlipLongEdge"
	}
	c.WriteString("\n/ViewerPreferences <</PrintScaling /None /Duplex /" + sides + " /DisplayDocTitle true>>")
	if doc.Language != "" {
		c.WriteString("\n/Lang " + textString(doc.Language))
	}
	c.WriteString("\n/PageLabels <</Nums [")
	for i, page := range doc.Pages {
		fmt.Fprintf(&c, "\n%d <</P %s>>", i, textString(cmp.Or(page.Label, strconv.Itoa(i+1))))
	}
	c.WriteString("]>>")
	if outlines := f.outline(doc, kids); outlines != 0 {
		fmt.Fprintf(&c, "\n/Outlines %d 0 R /PageMode /UseOutlines", outlines)
	}
	fmt.Fprintf(&c, "\n/Metadata %d 0 R /OutputIntents [%s]>>", f.plain("/Type /Metadata /Subtype /XML", metadata(doc, date)), f.outputIntent())
	root := f.object(c.String())

	stamp := textString(date.Format("D:20060102150405+00'00'"))
	info := "<</Producer (" + producer + ") /CreationDate " + stamp + " /ModDate " + stamp
	if doc.Title != "" {
		info += "\n/Title " + textString(doc.Title)
	}
	if doc.Subject != "" {
		info += "\n/Subject " + textString(doc.Subject)
	}
	return f.finish(root, f.object(info+">>"))
}

// annotations writes the links of a page (clause 12.5.6.5), without a border and
// printed as nothing, and returns the entry of the page for them.
func (f *file) annotations(links []link, targets map[string]int, kids []int) string {
	var list []int
	for _, l := range links {
		page, ok := targets[l.to]
		if !ok {
			continue
		}
		rect := appendPt(nil, l.X0)
		for _, v := range [3]float64{l.Y0, l.X1, l.Y1} {
			rect = appendPt(append(rect, ' '), v)
		}
		list = append(list, f.object(fmt.Sprintf("<</Type /Annot /Subtype /Link /F 4 /Border [0 0 0] /Rect [%s] /Contents %s /Dest [%d 0 R /Fit]>>",
			rect, textString(l.to), kids[page])))
	}
	if len(list) == 0 {
		return ""
	}
	return fmt.Sprintf(" /Annots [%s]", references(list))
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
func (f *file) outline(doc *draw.Document, kids []int) int {
	entries := outlineTree(doc)
	if len(entries) == 0 {
		return 0
	}
	numbers := make([]int, 1+len(entries)) // the root, which is -1 to its entries, and theirs
	for i := range numbers {
		numbers[i] = f.reserve()
	}
	last := 0
	for i, e := range entries {
		if e.parent < 0 {
			last = i
		}
		var b strings.Builder
		fmt.Fprintf(&b, "<</Title %s /Parent %d 0 R", textString(e.title), numbers[1+e.parent])
		for _, link := range []struct {
			key string
			to  int
		}{{"Prev", e.prev}, {"Next", e.next}, {"First", e.first}, {"Last", e.end}} {
			if link.to >= 0 {
				fmt.Fprintf(&b, " /%s %d 0 R", link.key, numbers[1+link.to])
			}
		}
		if e.open > 0 {
			fmt.Fprintf(&b, " /Count %d", e.open)
		}
		fmt.Fprintf(&b, " /Dest [%d 0 R /Fit]>>", kids[e.page])
		f.put(numbers[1+i], b.String())
	}
	f.put(numbers[0], fmt.Sprintf("<</Type /Outlines /First %d 0 R /Last %d 0 R /Count %d>>", numbers[1], numbers[1+last], len(entries)))
	return numbers[0]
}

func outlineTree(doc *draw.Document) []entry {
	var entries []entry
	var path []int // the last entry at each level
	for p, page := range doc.Pages {
		for _, b := range page.Bookmarks {
			i := len(entries)
			e := entry{title: b.Title, page: p, parent: -1, prev: -1, next: -1, first: -1, end: -1}
			if b.Level > 0 {
				e.parent = path[b.Level-1]
				entries[e.parent].end = i
			}
			switch {
			case b.Level < len(path):
				e.prev = path[b.Level]
				entries[e.prev].next = i
			case b.Level > 0:
				entries[e.parent].first = i
			}
			path = append(path[:b.Level], i)
			for _, above := range path[:b.Level] {
				entries[above].open++
			}
			entries = append(entries, e)
		}
	}
	return entries
}
