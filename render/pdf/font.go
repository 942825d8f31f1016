package pdf

import (
	"crypto/sha256"
	"fmt"
	"maps"
	"math/bits"
	"slices"
	"strconv"

	"centrepop/parts/seq"
	"centrepop/render"
	"centrepop/templates/typeface"
)

// fontName is what the content streams call a face.
func fontName(bold bool) string {
	if bold {
		return "F2"
	}
	return "F1"
}

// glyphs notes which characters of the Basic Multilingual Plane are set, in
// each weight: a bit for each.
type glyphs [2][1 << 16 / 64]uint64

func weight(bold bool) int {
	if bold {
		return 1
	}
	return 0
}

// appendText appends a text as the inside of a string (clause 7.3.4.2): two
// bytes a glyph, its number in the font.
func (g *glyphs) appendText(b []byte, text string, bold bool) []byte {
	used := &g[weight(bold)]
	for _, r := range text {
		used[r/64] |= 1 << (r % 64)
		id, _ := typeface.Glyph(r, bold)
		for _, c := range [2]byte{byte(id >> 8), byte(id)} {
			switch c {
			case '(', ')', '\\':
				b = append(b, '\\', c)
			case '\r': // would be read as a line feed
				b = append(b, '\\', 'r')
			default:
				b = append(b, c)
			}
		}
	}
	return b
}

func (g *glyphs) merge(other *glyphs) {
	for w := range g {
		for i, chars := range other[w] {
			g[w][i] |= chars
		}
	}
}

// glyph is a character with its glyph and its advance in thousandths of the em.
type glyph struct {
	char    rune
	id      uint16
	advance float64
}

// set lists the characters of a weight by their glyph's numbers, which is also
// the order of the file.
func (g *glyphs) set(bold bool) []glyph {
	em := float64(typeface.MetricsOf(bold).Em)
	byID := map[uint16]glyph{}
	for i, chars := range g[weight(bold)] {
		for ; chars != 0; chars &= chars - 1 {
			r := rune(i*64 + bits.TrailingZeros64(chars))
			id, advance := typeface.Glyph(r, bold)
			byID[id] = glyph{r, id, float64(advance) / em * 1000}
		}
	}
	return seq.Map(slices.Sorted(maps.Keys(byID)), func(id uint16) glyph { return byID[id] })
}

// font writes a face with the glyphs that are used (clause 9.7), and returns
// the number of its object.
func (f *file) font(bold bool, used []glyph) (int, error) {
	ids := seq.Map(used, func(g glyph) uint16 { return g.id })
	program, err := typeface.Subset(bold, ids)
	if err != nil {
		return 0, err
	}
	m := typeface.MetricsOf(bold)
	k := 1000 / float64(m.Em)
	name, stem := "DejaVuSansCondensed", 80
	if bold {
		name, stem = "DejaVuSansCondensed-Bold", 140
	}
	name = subsetTag(program) + "+" + name
	programs := f.stream(" /Length1 "+strconv.Itoa(len(program)), program)
	descriptor := f.object(fmt.Sprintf("<</Type /FontDescriptor /FontName /%s /Flags 4 /FontBBox [%.0f %.0f %.0f %.0f] /ItalicAngle 0"+
		" /Ascent %.0f /Descent %.0f /CapHeight %.0f /StemV %d /FontFile2 %d 0 R>>",
		name, float64(m.XMin)*k, float64(m.YMin)*k, float64(m.XMax)*k, float64(m.YMax)*k,
		float64(m.Ascent)*k, float64(m.Descent)*k, float64(m.CapHeight)*k, stem, programs))
	descendant := f.object(fmt.Sprintf("<</Type /Font /Subtype /CIDFontType2 /BaseFont /%s /CIDSystemInfo <</Registry (Adobe) /Ordering (Identity) /Supplement 0>>"+
		" /FontDescriptor %d 0 R /CIDToGIDMap /Identity /DW 0 /W [%s]>>", name, descriptor, widths(used)))
	return f.object(fmt.Sprintf("<</Type /Font /Subtype /Type0 /BaseFont /%s /Encoding /Identity-H /DescendantFonts [%d 0 R] /ToUnicode %d 0 R>>",
		name, descendant, f.stream("", toUnicode(used)))), nil
}

// subsetTag is the six letters before the name of a subset (clause 9.6.4),
// another for another set of glyphs.
func subsetTag(program []byte) string {
	sum := sha256.Sum256(program)
	tag := make([]byte, 6)
	for i := range tag {
		tag[i] = 'A' + sum[i]%26
	}
	return string(tag)
}

// widths lists the advances, neighbours together (clause 9.7.4.3).
func widths(used []glyph) []byte {
	var b []byte
	for i, g := range used {
		switch {
		case i == 0:
			b = append(strconv.AppendUint(b, uint64(g.id), 10), '[')
		case used[i-1].id+1 != g.id:
			b = append(strconv.AppendUint(append(b, "]\n"...), uint64(g.id), 10), '[')
		default:
			b = append(b, ' ')
		}
		b = render.AppendDecimal(b, g.advance, 3)
	}
	if len(used) > 0 {
		b = append(b, ']')
	}
	return b
}

// toUnicode is the map from glyphs back to characters (clause 9.10.3), of at
// most a hundred entries a block.
func toUnicode(used []glyph) []byte {
	b := []byte("/CIDInit /ProcSet findresource begin\n12 dict begin\nbegincmap\n" +
		"/CIDSystemInfo <</Registry (Adobe) /Ordering (UCS) /Supplement 0>> def\n" +
		"/CMapName /Adobe-Identity-UCS def\n/CMapType 2 def\n1 begincodespacerange\n<0000> <FFFF>\nendcodespacerange\n")
	for len(used) > 0 {
		n := min(len(used), 100)
		b = fmt.Appendf(b, "%d beginbfchar\n", n)
		for _, g := range used[:n] {
			b = fmt.Appendf(b, "<%04X> <%04X>\n", g.id, g.char)
		}
		b = append(b, "endbfchar\n"...)
		used = used[n:]
	}
	return append(b, "endcmap\nCMapName currentdict /CMap defineresource pop\nend\nend\n"...)
}
