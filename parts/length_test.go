package parts

import (
	"math"
	"strings"
	"testing"
)

func TestParseLength(t *testing.T) {
	for _, c := range []struct {
		text  string
		units Units
		mm    float64
	}{
		{"12", Millimetres, 12},
		{"12", Inches, 304.8},
		{"12 mm", Inches, 12},
		{"12.7mm", Inches, 12.7},
		{"1/2 in", Millimetres, 12.7},
		{"1-3/8 in", Millimetres, 34.925},
		{"1 3/8 in", Millimetres, 34.925},
		{"1-3/8", Inches, 34.925},
		{"-1-3/8 in", Millimetres, -34.925},
		{"0.375 in", Millimetres, 9.525},
		{"0.375in", Millimetres, 9.525},
		{".5", Millimetres, 0.5},
		{"+5", Millimetres, 5},
		{"-5", Millimetres, -5},
		{"63/64 in", Millimetres, 25.003125},
		{"10000", Millimetres, 10000},
		{"0", Millimetres, 0},
	} {
		mm, wrong := MmOf(c.text, c.units)
		if wrong != "" || math.Abs(mm-c.mm) > 1e-12 {
			t.Errorf("parseLength(%q, %s) = %.15g, %q; want %.15g", c.text, c.units, mm, wrong, c.mm)
		}
	}
}

func TestParseLengthRefuses(t *testing.T) {
	for text, part := range map[string]string{
		"":                       "not a number",
		"mm":                     "not a number",
		"1/0 in":                 "divided by zero",
		"1-8/8 in":               "less than 1",
		"1-1-1/2 in":             "not a number",
		"1/2/3":                  "not a number",
		"--5":                    "not a number",
		"- 5":                    "not a number",
		"1e3":                    "not a number",
		"12,5":                   "decimal point",
		"1.2.3":                  "not a number",
		"007":                    "extra 0",
		"10000.1":                "10 m",
		"394 in":                 "10 m",
		"5 cm":                   `"cm" is not known`,
		`5"`:                     "write inches as",
		"NaN":                    "not finite",
		".inf":                   "not finite",
		"-Infinity":              "not finite",
		"1\n2":                   "one line",
		"1/1234567":              "not a number",
		"0.00000000000000000001": "too many digits",
	} {
		if mm, wrong := MmOf(text, Millimetres); !strings.Contains(wrong, part) || mm != 0 {
			t.Errorf("parseLength(%q) = %g, %q; want it to say %q", text, mm, wrong, part)
		}
	}
}

func TestParseAngle(t *testing.T) {
	for text, deg := range map[string]float64{"30": 30, "30 deg": 30, "30°": 30, "-7.5 °": -7.5, "360": 360, "-360": -360} {
		if got, wrong := DegOf(text); wrong != "" || got != deg {
			t.Errorf("parseAngle(%q) = %g, %q; want %g", text, got, wrong, deg)
		}
	}
	for _, text := range []string{"360.1", "1 rad", "1/2", "", "nan", "30°30"} {
		if got, wrong := DegOf(text); wrong == "" {
			t.Errorf("parseAngle(%q) = %g, want a refusal", text, got)
		}
	}
}

func TestParseForce(t *testing.T) {
	// 1 tonne-force = 1000 kg × 9.80665 m/s², standard gravity, 3rd CGPM 1901.
	for text, newton := range map[string]float64{"200 kN": 200_000, "20 t": 196_133, "20000 N": 20_000, "2.5kN": 2500} {
		if got, wrong := NewtonOf(text); wrong != "" || math.Abs(got-newton) > 1e-9 {
			t.Errorf("parseForce(%q) = %g, %q; want %g", text, got, wrong, newton)
		}
	}
	for _, text := range []string{"1 N", "100000 kN"} {
		if got, wrong := NewtonOf(text); wrong != "" {
			t.Errorf("parseForce(%q) = %g, %q", text, got, wrong)
		}
	}
	for _, text := range []string{"0.9 N", "100001 kN", "200", "200 kg", "0 N", "-5 kN", "200000 kN", "kN"} {
		if got, wrong := NewtonOf(text); wrong == "" {
			t.Errorf("parseForce(%q) = %g, want a refusal", text, got)
		}
	}
}

// TestNumberOf: forms of numbers, and what is none, which has no value.
func TestNumberOf(t *testing.T) {
	for text, want := range map[string]float64{"-3/8": -0.375, "1-3/8": 1.375, "1 3/8": 1.375, "9/4": 2.25, "0.5": 0.5, "5.": 5, "0": 0, "0-1/2": 0.5, "12345678901234567890": 12345678901234567890} {
		if got, wrong := NumberOf(text); got != want || wrong != "" {
			t.Errorf("%q is %v, %q; want %v", text, got, wrong, want)
		}
	}
	for _, text := range []string{"", ".", "-", "1.2.3", "1..2", "-/4", "3/0", "1-4/4", "1 5/4", "01", "1,5", "1/2/3", " 1/2", "-1/2-", "1234567/2", "123456789012345678901", "x"} {
		if got, wrong := NumberOf(text); got != 0 || wrong == "" {
			t.Errorf("%q is %v, want a refusal", text, got)
		}
	}
	for _, text := range []string{"1/2", "1 rad", "400", "inf"} {
		if got, wrong := DegOf(text); wrong == "" || got != 0 {
			t.Errorf("%q is %v°, want a refusal", text, got)
		}
	}
	for _, text := range []string{"5", "inf kN", "5 kg", "0.5 N"} {
		if got, wrong := NewtonOf(text); wrong == "" || got != 0 {
			t.Errorf("%q is %v N, want a refusal", text, got)
		}
	}
}
