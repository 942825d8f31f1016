package pdf

import (
	"fmt"
	"strings"
	"unicode"
	"unicode/utf16"

	"centrepop/parts/geom"
	"centrepop/render"

	"github.com/tdewolff/canvas"
)

// ptPerMm is the number of points in a millimetre: 72 to the inch.
const ptPerMm = 72 / geom.MmPerInch

// appendPt appends a length in points with four decimals.
func appendPt(b []byte, mm float64) []byte { return render.AppendDecimal(b, mm*ptPerMm, 4) }

// appendMatrix appends a transform of millimetres.
func appendMatrix(b []byte, m canvas.Matrix) []byte {
	for _, v := range [4]float64{m[0][0], m[1][0], m[0][1], m[1][1]} {
		b = append(render.AppendDecimal(b, v, 9), ' ')
	}
	b = append(appendPt(b, m[0][2]), ' ')
	return appendPt(b, m[1][2])
}

// textString writes a text string (clause 7.9.2.2): as it is where it is
// printable ASCII, else in UTF-16 with a byte order mark, in hexadecimal.
// Control characters become spaces: one of them would start a language code.
func textString(s string) string {
	s = printed(s)
	if strings.IndexFunc(s, func(r rune) bool { return r > unicode.MaxASCII }) < 0 {
		return "(" + escaped.Replace(s) + ")"
	}
	var b strings.Builder
	b.WriteString("<FEFF")
	for _, unit := range utf16.Encode([]rune(s)) {
		fmt.Fprintf(&b, "%04X", unit)
	}
	b.WriteString(">")
	return b.String()
}

// escaped are the characters of a string in parentheses that mean something there.
var escaped = strings.NewReplacer(`\`, `\\`, "(", `\(`, ")", `\)`)

// printed is the text with spaces for control characters.
func printed(s string) string {
	return strings.Map(func(r rune) rune {
		if unicode.IsControl(r) {
			return ' '
		}
		return r
	}, s)
}

func references(objects []int) []byte {
	var b []byte
	for _, n := range objects {
		b = fmt.Appendf(b, "%d 0 R ", n)
	}
	return b
}
