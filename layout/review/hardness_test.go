package review

import (
	"strings"
	"testing"
)

// TestHardness: C45 is sure of 55 HRC and 42CrMo4 of 53 (EN 10083-2 and EN 10083-3, flame
// or induction hardened, from memory); structural and free-cutting steel of none unless it
// is case-hardened; austenitic steel of none at all. What the table does not know is a note.
func TestHardness(t *testing.T) {
	t.Parallel()
	for of, want := range map[string]string{
		"C45 50": "", "1045 55": "", "42CrMo4 53": "", "16MnCr5 58": "", "1018 55": "",
		"C45 65": "check 65 HRC, and its surface is sure of 55", "1045 58": "check 58 HRC, and its surface is sure of 55", "42CrMo4 55": "check 55 HRC, and its surface is sure of 53",
		"A36 45": "check 45 HRC, and it is no metal to be quenched", "S235 50": "check 50 HRC, and it is no metal to be quenched", "11SMn30 45": "check 45 HRC, and it is no metal to be quenched",
		"1.4301 45": "stop 45 HRC, and it is no metal to be quenched", "CuSn8 45": "stop 45 HRC, and it is no metal to be quenched",
		"1.4021 45": "note land is to have 45 HRC",
	} {
		metal, hrc, _ := strings.Cut(of, " ")
		got := ""
		for _, f := range alone(t, "hardness", "part: p\nkind: shaft\nmaterial: "+metal+"\nstock: {round: 65, length: 110, cut: saw}\nprofile:\n  outside:\n    - {name: land, diameter: 60, fit: h11, length: 50, hardness: "+hrc+"}\n    - {name: end, diameter: 50, length: 50}\n") {
			got = string(f.Severity) + " " + f.Numbers
		}
		if got != want {
			t.Errorf("%s: %q, want %q", of, got, want)
		}
	}
}
