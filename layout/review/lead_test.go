package review

import "testing"

// TestLeadRelief: the thread of Tr24x5 is 2.75 deep outside and inside (ISO 2904), root of the screw 18.5. A relief
// of that, a neck under the root or a free end takes its tool, a shoulder or a floor without one does not;
// M24 has its own way out.
func TestLeadRelief(t *testing.T) {
	t.Parallel()
	const none = ""
	for _, c := range []struct{ steps, want string }{
		{"outside:\n    - {name: screw, thread: Tr24x5, length: 60, undercut: {width: 10, depth: 2.75}}\n    - {name: collar, diameter: 40, length: 20}\n", none},
		{"outside:\n    - {name: screw, thread: Tr24x5, length: 60, undercut: {width: 10, depth: 2.7}}\n    - {name: collar, diameter: 40, length: 20}\n", "2.7 mm, wanted 2.75 mm"},
		{"outside:\n    - {name: screw, thread: Tr24x5, length: 60}\n    - {name: collar, diameter: 40, length: 20}\n", "Tr24x5 of 2.75 mm depth"},
		{"outside:\n    - {name: screw, thread: M24, length: 60}\n    - {name: collar, diameter: 40, length: 20}\n", none},
		{"outside:\n    - {name: screw, thread: Tr24x5, length: 60}\n    - {name: neck, diameter: 18, length: 10}\n    - {name: collar, diameter: 40, length: 20}\n", none},
		{"outside:\n    - {name: screw, thread: Tr24x5, length: 80}\n", none},
		{"outside:\n    - {name: rim, diameter: 50, length: 80}\n  inside:\n    - {name: nut, thread: Tr24x5, length: 80}\n", none},
		{"outside:\n    - {name: rim, diameter: 50, length: 80}\n  inside:\n    - {name: nut, thread: Tr24x5, length: 40}\n", "Tr24x5 of 2.75 mm depth"},
		{"outside:\n    - {name: rim, diameter: 50, length: 80}\n  inside:\n    - {name: nut, thread: Tr24x5, length: 40}\n    - {name: way, diameter: 26, length: 40}\n", none},
		{"outside:\n    - {name: rim, diameter: 50, length: 80}\n  inside:\n    - {name: nut, thread: Tr24x5, length: 40}\n    - {name: way, diameter: 24, length: 40}\n", "Tr24x5 of 2.75 mm depth"},
	} {
		got := none
		for _, f := range alone(t, "weak", "part: p\nkind: shaft\nmaterial: C45\nstock: {round: 55, length: 100, cut: saw}\nprofile:\n  "+c.steps) {
			got += f.Numbers
		}
		if got != c.want {
			t.Errorf("%q: %q, want %q", c.steps, got, c.want)
		}
	}
}

// TestLeadSaid: words that name the thread of a lead screw name the one that is drawn, hand and all.
func TestLeadSaid(t *testing.T) {
	t.Parallel()
	for words, want := range map[string]int{"Tr24x5 LH to the gauge nut": 0, "Tr24x5 to the gauge nut": 1, "Tr24x10P5 LH to the gauge nut": 1, "3/4-6 ACME to the gauge nut": 1} {
		got := alone(t, "said-thread", "part: p\nkind: shaft\nmaterial: C45\nstock: {round: 55, length: 100, cut: saw}\nprofile:\n  outside:\n    - {name: screw, thread: Tr24x5 LH, length: 80}\nnotes:\n  - "+words+"\n")
		if len(got) != want {
			t.Errorf("%q: %v, want %d", words, got, want)
		}
	}
}
