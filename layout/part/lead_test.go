package part

import (
	"strings"
	"testing"
)

// ledText is the text of all operations and checks of a shaft or ring with one thread of a lead screw.
func ledText(t *testing.T, units, kind, profile string) string {
	t.Helper()
	q := work(t, units, "part: p\nkind: "+kind+"\nmaterial: C45\nstock: {round: 60 mm, length: 140 mm}\nprofile:\n"+profile)
	text := ""
	for _, o := range q.Out.Operations {
		text += strings.Join(o.Do, " ") + " " + strings.Join(o.Limits, "; ") + " " + o.Speed + "\n"
	}
	for _, c := range q.Out.Checks {
		text += c.What + " | " + c.Wanted + " | " + c.Limits + " | " + c.Gauge + "\n"
	}
	return text
}

// TestLeadScrews: what the sheets say of them. Tr24x5: limits of threads/trapezoidal.csv; over wires of 2.6 the formula
// gives 21.094 + 4.8637·2.6 − 1.866·5 + 0.025 = 24.434; half the angle is 15° or 14.5°. The best wire of 3/4-6 ACME is
// 1/12 in / cos 14.5° = 0.0861 in, the next of 0.005 in 0.085. M24 has none of it.
func TestLeadScrews(t *testing.T) {
	t.Parallel()
	const shaft, ring = "  outside:\n    - {name: screw, thread: TTT, length: 90, undercut: {width: 12, depth: 3.3}}\n    - {name: collar, diameter: 40, length: 20}\n",
		"  outside:\n    - {name: rim, diameter: 50, length: 50}\n  inside:\n    - {name: way, thread: TTT, length: 50}\n"
	inch := strings.NewReplacer("90", "3.5", "20", "0.8", "40", "1.6", "12", "0.4", "3.3", "0.12")
	for _, c := range []struct {
		units, kind, profile, thread string
		says, never                  []string
	}{
		{"mm", "shaft", shaft, "Tr24x5 LH", []string{
			"pitch 5 mm", "Tool ground to 30°, its point 1.69 wide", "relieved for a helix of 4.2°", "depth 2.75 on the radius", "root 18.02 – 18.50", "straight in", "LEFT HAND: the lathe runs forward",
			"three wires Ø2.6, 24.44 – 24.73 over them", "screw before the thread 23.67 – 24.00", "Tr24x5 LH-7e thread", "screw over wires | Ø2.6 | 24.44 – 24.73", "to Ø23.83",
		}, []string{"Tap", "tap ", "no shake", "15°", "starts", "DIN 76"}},
		{"mm", "shaft", shaft, "Tr24x3-8c", []string{"set 15° from square to the axis, the last ones straight in, with cutting oil.", "Tr24x3-8c thread"}, []string{"Left hand", "DIN 76"}},
		{"mm", "shaft", shaft, "Tr24x10P5", []string{"2 starts: the gears for a lead of 10 mm", "moved on by one pitch, 5 mm", "Finish by a gauge nut"}, []string{"wires"}},
		{"mm", "shaft", strings.Replace(shaft, ", undercut: {width: 12, depth: 3.3}", "", 1), "Tr24x5", []string{"the last 10 mm run out", "full thread ends 10 mm from the shoulder at most (common practice, no source)"}, []string{"DIN 76"}},
		{"mm", "shaft", shaft, "M24", []string{"no shake"}, []string{"Tool ground", "wires", "before the thread"}},
		{"mm", "ring", ring, "Tr24x5", []string{"Bore way to Ø19.23", "way before the thread 19.00 – 19.45", "Ø24.5 at the least", "a gauge screw, or the screw itself", "Tr24x5-7H thread, bore 19.00 – 19.45 first"}, []string{"Tap", "wires"}},
		{"in", "shaft", inch.Replace(shaft), "3/4-6 ACME", []string{"6 per inch", "Tool ground to 29°, its point 0.058 in wide", "screw before the thread 0.742 – 0.750 in", "3/4-6 ACME-2G thread", "three wires Ø0.085 in, "}, []string{"30°"}},
	} {
		text := ledText(t, c.units, c.kind, strings.ReplaceAll(c.profile, "TTT", c.thread))
		for _, say := range c.says {
			if !strings.Contains(text, say) {
				t.Errorf("%s: %q is not said:\n%s", c.thread, say, text)
			}
		}
		for _, no := range c.never {
			if strings.Contains(text, no) {
				t.Errorf("%s: says %q:\n%s", c.thread, no, text)
			}
		}
	}
}
