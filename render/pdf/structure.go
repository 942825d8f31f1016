package pdf

import "fmt"

// tagName is the kind of a part of a page to read (clause 14.8.4).
func tagName(heading uint8) string {
	switch heading {
	case 0:
		return "P"
	case 1:
		return "H1"
	}
	return "H2"
}

// structure writes the order in which the texts are read (clause 14.7): a section
// for each page, in it the headings and what lies between them. It returns the
// number of the root. Lines and pictures are in it only where a text goes on
// behind them, and links not at all.
func (f *file) structure(painted []taken, kids []int) int {
	root, document := f.reserve(), f.reserve()
	var sections []int
	var parents []byte
	for i, page := range painted {
		section := f.reserve()
		sections = append(sections, section)
		var inside []byte
		for n, heading := range page.tags {
			part := f.object(fmt.Sprintf("<</Type /StructElem /S /%s /P %d 0 R /Pg %d 0 R /K %d>>", tagName(heading), section, kids[i], n))
			inside = fmt.Appendf(inside, "%d 0 R ", part)
		}
		f.put(section, fmt.Sprintf("<</Type /StructElem /S /Sect /P %d 0 R /K [%s]>>", document, inside))
		parents = fmt.Appendf(parents, "%d [%s]\n", i, inside)
	}
	f.put(document, fmt.Sprintf("<</Type /StructElem /S /Document /P %d 0 R /K [%s]>>", root, references(sections)))
	tree := f.object(fmt.Sprintf("<</Nums [%s]>>", parents))
	f.put(root, fmt.Sprintf("<</Type /StructTreeRoot /K %d 0 R /ParentTree %d 0 R /ParentTreeNextKey %d>>", document, tree, len(painted)))
	return root
}
