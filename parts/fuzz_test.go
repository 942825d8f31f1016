package parts

import (
	"math"
	"os"
	"path/filepath"
	"testing"
)

// FuzzParsePart: an error or a part, never both; errors point into the file;
// an accepted part is complete and finite.
func FuzzParsePart(f *testing.F) {
	for _, pattern := range []string{"testdata/bad/*.yaml", "../testdata/*/*.yaml"} {
		files, _ := filepath.Glob(pattern)
		if len(files) == 0 {
			f.Fatalf("no seeds in %s", pattern)
		}
		for _, file := range files {
			src, err := os.ReadFile(file)
			if err != nil {
				f.Fatal(err)
			}
			f.Add(src, filepath.Base(filepath.Dir(file)) == "gatejack")
		}
	}
	f.Fuzz(func(t *testing.T, src []byte, inches bool) {
		units := Millimetres
		if inches {
			units = Inches
		}
		p, err := ParsePart("part.yaml", src, units)
		if (p == nil) == (err == nil) {
			t.Fatalf("ParsePart = %v, %v", p, err)
		}
		if err != nil {
			checkErrors(t, err, map[string][]byte{"part.yaml": src})
			return
		}
		checkPart(t, p)
	})
}

// FuzzLength: a length is finite and within its limits, or a reason is given;
// the unit changes it by exactly the inch.
func FuzzLength(f *testing.F) {
	for _, seed := range []string{"12", "12 mm", "1/2 in", "1-3/8 in", "1 3/8 in", "0.375 in", "12.7mm", "-5", "+1", ".5", "5.", "", "/", "1/0", "1e3", "NaN", "∞", "12 \u00a0mm", "0.0000000000000000001", "-1-1/2 in", "- 1"} {
		f.Add(seed)
	}
	f.Fuzz(func(t *testing.T, text string) {
		mm, wrong := parseLength(text, Millimetres)
		if math.IsNaN(mm) || math.Abs(mm) > largestMm {
			t.Fatalf("parseLength(%q) = %g", text, mm)
		}
		if wrong != "" && mm != 0 {
			t.Fatalf("parseLength(%q) = %g and %q", text, mm, wrong)
		}
		inch, wrongInch := parseLength(text, Inches)
		switch _, unit := splitUnit(text); {
		case wrong != "" || wrongInch != "":
		case unit == "" && inch != mm*mmPerInch:
			t.Fatalf("parseLength(%q) = %g in mm and %g in inches", text, mm, inch)
		case unit != "" && inch != mm:
			t.Fatalf("parseLength(%q) changes with the job's units: %g, %g", text, mm, inch)
		}
	})
}
