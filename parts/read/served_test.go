package read

import (
	"fmt"
	"testing"

	"centrepop/parts"
)

// What holes are for and what is fitted in them is what the file says, before what name and note say; what is fitted is
// printed beside the size once.
func TestServed(t *testing.T) {
	t.Parallel()
	const plate = "part: p\nkind: plate\nstock: {plate: 10 mm}\noutline: {square: 100}\nholes:\n  - {name: %s, at: [[0, 0]], size: M10 tap%s}\n"
	for _, c := range []struct {
		name, keys   string
		use          parts.Use
		fitted, note string
	}{
		{"bolts", "", "", "", ""},
		{"drain", "", parts.Drain, "", ""},
		{"drain", ", for: other", parts.NoUse, "", ""},
		{"a", ", for: jacking", parts.Jacking, "", ""},
		{"a", ", note: closed by a plug", "", "plug", "closed by a plug"},
		{"a", ", fitted: plug", "", "plug", "plug"},
		{"a", ", fitted: plug, note: closed by a plug", "", "plug", "closed by a plug"},
		{"a", ", fitted: breather, note: not a plug", "", "breather", "breather; not a plug"},
	} {
		_, p := parsePart("p.yaml", fmt.Appendf(nil, plate, c.name, c.keys), parts.Millimetres)
		if g := p.Holes[0]; g.For != c.use || g.Fitted.Value != c.fitted || g.Note.Value != c.note {
			t.Errorf("%s%s: for %q, fitted %q, note %q", c.name, c.keys, g.For, g.Fitted.Value, g.Note.Value)
		}
		if g := p.Holes[0]; g.Fitted.Value != "" && g.Fitted.Pos.Line != 6 {
			t.Errorf("%s: fitted at line %d", c.keys, g.Fitted.Pos.Line)
		}
	}
}
