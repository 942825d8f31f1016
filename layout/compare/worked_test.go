package compare

import (
	"fmt"
	"path/filepath"
	"strings"
	"testing"

	"centrepop/parts/golden"
)

// TestWorked: all that is said of drawings of the plate, each with something else wrong,
// as text. CENTREPOP_UPDATE=1 writes testdata/worked.txt anew: read the difference.
// Codes, places and numbers are checked by the other tests, case by case.
func TestWorked(t *testing.T) {
	t.Parallel()
	within := func(transform string, lines []string) []string {
		return append(append([]string{`<g transform="` + transform + `">`}, lines...), "</g>")
	}
	replaced := func(pairs ...string) []string {
		return strings.Split(strings.NewReplacer(pairs...).Replace(strings.Join(drawing(), "\n")), "\n")
	}
	bore, bolt, lift, slot := drawing()[1], drawing()[2], drawing()[8], drawing()[10]
	hexagon := `<path d="M150 37L144.2 40.5V47.2L150 50.6L155.8 47.2V40.5Z"/>`
	type answer struct {
		Name   string
		Report *Report
		Lines  []string
	}
	var out []answer
	for _, c := range []struct {
		name, head string
		lines      []string
		mm         float64
	}{
		{"as it should be", mmHead, drawing(), 0},
		{"too large by 1.3 %", mmHead, within("scale(1.013)", drawing()), 0},
		{"in pixels", strings.NewReplacer("240mm", "907.0866", "160mm", "604.7244").Replace(mmHead), drawing(), 0},
		{"mirrored and turned", mmHead, within("rotate(37.25 120 80) translate(240) scale(-1 1)", drawing()), 0},
		{"skewed", mmHead, within("skewX(0.4)", drawing()), 0},
		{"sheared by a matrix", mmHead, within("matrix(1 0.002 -0.003 1.004 5 6)", drawing()), 0.5},
		{"bore oval, bolt off, lift too small", mmHead, replaced(bore, `<ellipse cx="120" cy="80" rx="29" ry="28.4"/>`, bolt, circleAt(22.9, 38.97, 5.5), lift, circleAt(-85, 45, 4.31)), 0},
		{"bolt a hexagon, lift missing, others beside", mmHead, append(replaced(bolt, hexagon, lift+"\n", ""), circleAt(-20, -51, 3), circleAt(88, 5, 2)), 0},
		{"slot moved, longer and turned", mmHead, replaced(slot, `<path d="M196 101v22a5 5 0 0 0 10 0v-22a5 5 0 0 0 -10 0z"/>`), 0},
		{"slot a rectangle", mmHead, replaced(slot, `<rect x="195" y="95" width="10" height="30" rx="1"/>`), 0},
		{"slot as a curve", mmHead, replaced(slot, `<path d="M195 100v20c0 2.761 2.239 5 5 5s5-2.239 5-5v-20c0-2.761-2.239-5-5-5q-5 0-5 5z"/>`), 0},
		{"outline wider and its corner round", mmHead, replaced("M20 140H220V40L200 20H20Z", "M20 140H220.6V40A20 20 0 0 0 200 20H20Z"), 0},
		{"outline of another shape", mmHead, replaced("M20 140H220V40L200 20H20Z", "M20 140H220V20H20Z"), 0},
		{"outline open, bore twice, blind cut", mmHead, append(replaced("V40L200 20H20Z", "V40L200 20H20V139"), bore, circleAt(-85, -45, 3.4)), 0},
		{"lines that join to a bore", mmHead, replaced(bore, `<path d="M91 80a29 29 0 0 1 29-29"/><path d="M120 51a29 29 0 0 1 29 29"/><path d="M149.03 80a29 29 0 0 1-29.03 29"/><path d="M120 109a29 29 0 0 1-29-29"/>`), 0},
		{"text and a hidden hole", mmHead, append(drawing(), `<text x="5" y="9">PLATE</text>`, `<circle cx="9" cy="9" r="2" display="none"/>`), 0},
		{"nothing", mmHead, nil, 0},
		{"marks off, one lacking", mmHead, markLines(func(x, y float64) string {
			if x < 36 && y > 100 {
				return ""
			}
			return cross(x+0.31, y-0.17)
		}), 0},
		{"marks as circles, two more", mmHead, append(markLines(func(x, y float64) string { return fmt.Sprintf(`<circle cx="%g" cy="%g" r="0.5"/>`, x, y) }), `<g id="pop">`, cross(60, 60), cross(180, 120), "</g>"), 0},
	} {
		p := plate(t)
		if strings.HasPrefix(c.name, "marks") {
			p = marked(t)
		}
		sheet, err := Read(strings.NewReader(svgFile(c.head, c.lines)))
		if err != nil {
			t.Fatalf("%s: %v", c.name, err)
		}
		r, err := Compare(p, sheet, c.mm)
		if err != nil {
			t.Fatalf("%s: %v", c.name, err)
		}
		out = append(out, answer{c.name, r, r.Lines("plate.svg")})
	}
	golden.Whole(t, filepath.Join("testdata", "worked.txt"), golden.Text(out))
}
