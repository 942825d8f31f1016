package parts

import (
	"math"
	"strings"
	"testing"
)

func TestParseLengthValue(t *testing.T) {
	if mm, err := ParseLength("1-3/8", Inches); err != nil || math.Abs(mm-34.925) > 1e-12 {
		t.Errorf("ParseLength = %g, %v; want 34.925", mm, err)
	}
	for text, part := range map[string]string{"0": "over 0", "-1 mm": "over 0", "5 cm": "cm", "nan": "not finite"} {
		if mm, err := ParseLength(text, Millimetres); err == nil || !strings.Contains(err.Error(), part) || mm != 0 {
			t.Errorf("ParseLength(%q) = %g, %v; want it to say %q", text, mm, err, part)
		}
	}
}

func TestParsePaperValue(t *testing.T) {
	if p, err := ParsePaper("11x17", Inches); err != nil || math.Abs(p.WidthMm-279.4) > 1e-9 || math.Abs(p.HeightMm-431.8) > 1e-9 {
		t.Errorf("ParsePaper = %+v, %v; want 279.4 × 431.8", p, err)
	}
	// ISO 216 and ANSI/ASME Y14.1; in an inch job too.
	for name, want := range map[string][2]float64{"A4": {210, 297}, "a3": {297, 420}, "Letter": {215.9, 279.4}, "Tabloid": {279.4, 431.8}, "140x200": {140, 200}, "200x140": {200, 140}, "2000x140": {2000, 140}, "6×8 in": {152.4, 203.2}, "8 in x 300 mm": {203.2, 300}} {
		units := Inches
		if strings.ContainsAny(name, "0") {
			units = Millimetres
		}
		if p, err := ParsePaper(name, units); err != nil || math.Abs(p.WidthMm-want[0]) > 1e-9 || math.Abs(p.HeightMm-want[1]) > 1e-9 {
			t.Errorf("ParsePaper(%q) = %+v, %v; want %v", name, p, err, want)
		}
	}
	for text, part := range map[string]string{"139x200": "smaller", "140x199": "smaller", "140x2001": "larger", "": "not known", "A9": "not known", "50x50": "smaller", "x": "not known", "300": "not known",
		"300x": "not known", "300 cm x 200 mm": "not known", "1x2x3": "not known", "3000x300": "larger", "nanxnan": "not known"} {
		if p, err := ParsePaper(text, Millimetres); err == nil || !strings.Contains(err.Error(), part) {
			t.Errorf("ParsePaper(%q) = %+v, %v; want it to say %q", text, p, err, part)
		}
	}
}

// TestUnits: one of the unit of a job, in millimetres.
func TestUnits(t *testing.T) {
	if Millimetres.Mm() != 1 || Inches.Mm() != 25.4 {
		t.Errorf("%g and %g mm", Millimetres.Mm(), Inches.Mm())
	}
}
