package compare_test

import (
	"errors"
	"strings"
	"testing"
	"unicode/utf8"

	"centrepop/layout/compare"
)

// TestWhereAFaultIs: a fault in a value is shown at its place in it, marked here, whatever stands before it in the tag; at the
// beginning of the value where that is written otherwise than it reads.
func TestWhereAFaultIs(t *testing.T) {
	t.Parallel()
	const open, close = `<svg xmlns="http://www.w3.org/2000/svg" width="10mm" height="10mm" viewBox="0 0 10 10">` + "\n", "\n</svg>"
	for _, text := range []string{
		open + `<polyline points="1,2 ¦x"/>` + close, open + `<polyline id="points" points="1,2 ¦x"/>` + close, open + `<polyline data-points="0" points="1,2 ¦x"/>` + close,
		open + "<polyline\n  points = '1,2 ¦x'/>" + close, open + "<polyline\tpoints=\n\"1,2\n ¦x\"/>" + close, open + `<polyline points="¦1,2&#32;x"/>` + close, open + `<polyline class="my points =" points="1,2 ¦x"/>` + close,
		strings.Replace(open, `"10mm" h`, `"¦-1mm" h`, 1) + close, strings.Replace(open, `"10mm" h`, `"¦0" h`, 1) + close, strings.Replace(open, `"10mm" v`, `"¦0mm" v`, 1) + close, strings.Replace(open, "0 0 10 10", "0 0 ¦x 10", 1) + close,
		"¦\xff" + open + close, open + "<!-- \uFFFDä ¦\xff -->" + close,
	} {
		before, _, _ := strings.Cut(text, "¦")
		line, column := 1+strings.Count(before, "\n"), utf8.RuneCountInString(before[strings.LastIndex(before, "\n")+1:])+1
		_, err := compare.Read(strings.NewReader(strings.Replace(text, "¦", "", 1)))
		var fault *compare.SyntaxError
		if !errors.As(err, &fault) || fault.Line != line || fault.Column != column {
			t.Errorf("%q: %v, want it at %d:%d", text, err, line, column)
		}
	}
	// Half a millimetre is a width.
	if _, err := compare.Read(strings.NewReader(strings.Replace(open, `"10mm" h`, `"0.5mm" h`, 1) + close)); err != nil {
		t.Error(err)
	}
}
