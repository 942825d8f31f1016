package review

import (
	"fmt"
	"testing"
)

// TestLengthLimits: a length of 20 lies between its limits or on one of them; what lies wholly beside them is found.
func TestLengthLimits(t *testing.T) {
	t.Parallel()
	const pin = "part: p\nkind: turned\nmaterial: C45\nstock: {round: 35, length: 62, cut: saw}\nprofile:\n  outside:\n    - {name: head, diameter: 30, length: 20%s}\n    - {name: body, diameter: 20, length: 40}\n"
	for limits, found := range map[string]bool{"": false, "[19.9, 20.1]": false, "[20, 20.2]": false, "[19.8, 20]": false, "[20.05, 20.2]": true, "[19.8, 19.95]": true} {
		if limits != "" {
			limits = ", length-limits: " + limits
		}
		if got := alone(t, "limits", fmt.Sprintf(pin, limits)); len(got) > 0 != found {
			t.Errorf("%q: %v", limits, got)
		}
	}
}
