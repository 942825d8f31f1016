package part

import (
	"math"
	"strings"
	"testing"

	"centrepop/layout/words"
	"centrepop/parts"
)

// Finer than Ra 0.8 is polished: 16 µin are 0.41 µm, 32 µin 0.81. Only the land of a seal
// has no spiral.
func TestPolished(t *testing.T) {
	t.Parallel()
	for _, c := range []struct{ step, want, not string }{
		{"seat: seal 60x80x8, finish: Ra 0.4", "Turn land Ø60, 20 long; Ra 0.4, leave 0.02 on the diameter for that (seal 60x80x8). Grind or polish land to size, 320 then 600 cloth with oil, held by its ends, never wrapped round: turning alone leaves it rougher than Ra 0.4; no spiral", ""},
		{"finish: Ra 0.4", "turning alone leaves it rougher than Ra 0.4.", "spiral"},
		{"finish: Ra 16 uin", "turning alone leaves it rougher than Ra 16 uin.", "spiral"},
		{"finish: Ra 32 uin", "", "leave 0"},
		{"finish: Ra 0.8", "", "leave 0"},
		{"finish: fine", "", "leave 0"},
		{"hardness: 58, finish: Ra 0.4", "then grind it to size", "leave 0.02"},
	} {
		step := "{name: land, diameter: 60, " + c.step + ", length: 20}"
		m := work(t, "mm", "part: pin\nkind: turned\nmaterial: C45\nstock: {round: 70 mm}\nprofile:\n  outside:\n    - "+step+"\n    - {name: stem, diameter: 50, length: 40}\n")
		text := ""
		for _, o := range m.Out.Operations {
			text += strings.Join(o.Do, " ") + " "
		}
		if !strings.Contains(text, c.want) || c.not != "" && strings.Contains(text, c.not) {
			t.Errorf("%s: %s", c.step, text)
		}
	}
}

// One microinch is 0.0254 µm.
func TestRaUm(t *testing.T) {
	t.Parallel()
	for finish, want := range map[string]float64{
		"Ra 0.4": 0.4, "Ra 1.6": 1.6, "ground Ra .4, no spiral": 0.4, "Ra 16 uin": 0.4064, "Ra 32uin": 0.8128, "Ra 63 µin": 1.6002,
		"": 0, "Ra": 0, "Ra fine": 0, "Rz 6.3": 0, "N7": 0, "extRa 3": 0, "Ra 8 units": 8,
	} {
		if got := RaUm(finish); math.Abs(got-want) > 1e-9 {
			t.Errorf("%q: %v, want %v", finish, got, want)
		}
	}
}

// In inch jobs a roughness is printed in both units: 16 µin is 0.4 µm (ASME B46.1 with ISO 21920, steps);
// 20 µin is 0.508. In millimetres it stays as written.
func TestFinish(t *testing.T) {
	t.Parallel()
	in := words.Writer{Units: parts.Inches}
	for uin, um := range map[string]string{"1": "0.025", "2": "0.05", "4": "0.1", "8": "0.2", "16": "0.4", "32": "0.8", "63": "1.6", "125": "3.2", "250": "6.3", "500": "12.5", "1000": "25"} {
		for _, asked := range []string{um + " µm", uin + " uin"} {
			if got, want := Finish(in, "Ra "+asked), "Ra "+uin+" µin ("+um+" µm)"; got != want {
				t.Errorf("Ra %s: %q, want %q", asked, got, want)
			}
		}
	}
	for finish, want := range map[string]string{
		"Ra 0.4": "Ra 16 µin (0.4 µm)", "ground Ra .8, no spiral": "ground Ra 32 µin (0.8 µm), no spiral", "Ra 3.2 µm": "Ra 125 µin (3.2 µm)",
		"Ra 8": "Ra 8 µin (0.2 µm)", "Ra 7.9": "Ra 311 µin (7.9 µm)", "Ra 0.205 µm": "Ra 8 µin (0.2 µm)", "Ra 0.207 µm": "Ra 8 µin (0.207 µm)",
		"32": "Ra 32 µin (0.8 µm)", "63 uin": "Ra 63 µin (1.6 µm)", "1.6 µm": "Ra 63 µin (1.6 µm)", "32 grit": "32 grit",
		"Ra 63": "Ra 63 µin (1.6 µm)", "Ra 32 uin": "Ra 32 µin (0.8 µm)", "Ra 20uin": "Ra 20 µin (0.508 µm)", "Ra 1": "Ra 39 µin (1 µm)", "fine": "fine", "Ra 20 µm": "Ra 787 µin (20 µm)", // 20 / 0.0254
	} {
		if got := Finish(in, finish); got != want {
			t.Errorf("%q: %q, want %q", finish, got, want)
		}
		if got := Finish(words.Writer{Units: parts.Millimetres}, finish); strings.TrimPrefix(got, "Ra ") != strings.TrimPrefix(finish, "Ra ") {
			t.Errorf("%q in mm: %q", finish, got)
		}
	}
}
