package part_test

import (
	"strings"
	"testing"
)

// Where slots lie is in the record, as no chord over pins shows it: by hand from the
// drawing. A slot of 0.688 × 2 that stands upright with its middle 1.25 and 5.25 in from
// the edges is 1.25 − 0.344 = 0.906 and 5.25 − 1 = 4.25 in from them. Nothing is
// nearer known from a flame-cut edge than it is cut (ISO 9013 class 2: ±1.8 mm over 35, ±1.9
// over 125).
func TestPlaceOfSlots(t *testing.T) {
	t.Parallel()
	for of, want := range map[string][]string{
		"gatejack thrust-housing": {"drain around × along: 0.3125 in × 0.625 in = "}, // as on the drawing
		"gatejack yoke-plate":     {"lifting 14, left and bottom edge to its near sides: 0.906 in, 4.25 in = 0.84 – 0.97 in, 4.18 – 4.32 in", "lifting 15, left and bottom edge to its near sides: 14.406 in, 4.25 in = "},
		"pugmill base-plate":      {"lashing 6, right and bottom edge to its near sides: 40, 163.25 = ", "tray 12, left and bottom edge to its near sides: 225.5, 95 = 223.6 – 227.4, 93.2 – 96.8"},
	} {
		job, name, _ := strings.Cut(of, " ")
		all := ""
		for _, c := range demo(t, job).Part(name).Checks {
			all += c.What + ": " + c.Wanted + " = " + c.Limits + "\n"
		}
		for _, w := range want {
			if !strings.Contains(all, w) {
				t.Errorf("%s: no %q in\n%s", of, w, all)
			}
		}
	}
}
