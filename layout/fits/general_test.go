package fits

import (
	"errors"
	"math"
	"os"
	"strings"
	"testing"
)

// TestGeneralAgainstReference reads the linear table of section (h) in
// worked_examples.md (ISO 2768-1:1989, from a DIN ISO 2768-1 sheet) and checks
// every cell just above the bottom and at the top of its range.
func TestGeneralAgainstReference(t *testing.T) {
	text, err := os.ReadFile("../../testdata/reference/worked_examples.md")
	if err != nil {
		t.Fatal(err)
	}
	_, section, _ := strings.Cut(string(text), "## (h) ISO 2768-1")
	section, _, _ = strings.Cut(section, "\n## ")
	var heading []string
	checked := 0
	for _, line := range strings.Split(section, "\n") {
		if !strings.HasPrefix(line, "|") || strings.HasPrefix(line, "|--") {
			continue
		}
		cells := strings.Split(strings.Trim(line, "| "), "|")
		for i := range cells {
			cells[i] = strings.TrimSpace(cells[i])
		}
		if heading == nil {
			heading = cells
			continue
		}
		for i, cell := range cells[1:] {
			from, to, ok := strings.Cut(heading[i+1], "-")
			if !ok {
				t.Fatalf("heading %q is not a range", heading[i+1])
			}
			low, high := number(t, strings.TrimPrefix(from, ">")), number(t, to)
			if strings.HasPrefix(from, ">") {
				low = math.Nextafter(low, high)
			}
			for _, size := range []float64{low, high} {
				checked++
				got, err := General(size, cells[0])
				if cell == "-" {
					if !errors.Is(err, ErrNotDefined) || got != 0 {
						t.Errorf("%v %s: got %v, %v; want a refusal", size, cells[0], got, err)
					}
					continue
				}
				if want := number(t, cell); err != nil || got != want {
					t.Errorf("%v %s: got %v, %v; want %v", size, cells[0], got, err, want)
				}
			}
		}
	}
	if checked != 4*8*2 {
		t.Errorf("checked %d cells, want %d: has the table moved?", checked, 4*8*2)
	}
}

// TestGeneralChamferAndAngle checks the two lists that section (h) of
// worked_examples.md gives in words (ISO 2768-1:1989, Tables 2 and 3).
func TestGeneralChamferAndAngle(t *testing.T) {
	above := func(v float64) float64 { return math.Nextafter(v, 1e9) }
	for _, c := range []struct {
		size  float64
		class string
		want  float64
	}{
		{0.5, "f", 0.2}, {3, "m", 0.2}, {above(3), "f", 0.5}, {6, "m", 0.5}, {above(6), "f", 1}, {500, "m", 1},
		{0.5, "c", 0.4}, {3, "v", 0.4}, {above(3), "c", 1}, {6, "v", 1}, {above(6), "c", 2}, {500, "v", 2},
	} {
		if got, err := GeneralChamfer(c.size, c.class); err != nil || got != c.want {
			t.Errorf("chamfer %v %s: got %v, %v; want %v", c.size, c.class, got, err, c.want)
		}
	}
}

func TestGeneralRefuses(t *testing.T) {
	for _, c := range []struct {
		what    func(float64, string) (float64, error)
		size    float64
		class   string
		defined bool // the refusal is by the standard, not by the input
		says    string
	}{
		{General, 0.4, "m", true, "write the tolerance at the dimension"},
		{General, 4000.1, "m", true, "ends at 4000 mm"},
		{General, 2500, "f", true, "nearest defined: m"},
		{General, 2, "v", true, "nearest defined: c"},
		{General, 20, "M", false, `"f", "m", "c" and "v"`},
		{General, 20, "", false, `"f", "m", "c" and "v"`},
		{GeneralChamfer, 0.4, "m", true, "write the tolerance at the dimension"},
	} {
		got, err := c.what(c.size, c.class)
		if err == nil || got != 0 || !strings.Contains(err.Error(), c.says) || errors.Is(err, ErrNotDefined) != c.defined {
			t.Errorf("%v %q: got %v, %v; want %q", c.size, c.class, got, err, c.says)
		}
	}
}
