package card

import (
	"testing"

	"centrepop/layout/lookup"
)

// TestStates: the most trusted state first, each once, down to what nobody checked.
func TestStates(t *testing.T) {
	t.Parallel()
	seen := []lookup.Source{{Name: "a", State: lookup.Unchecked}, {Name: "a", State: lookup.Checked}, {Name: "b", State: lookup.FromMemory}, {Name: "c", State: lookup.Unchecked}}
	checked, memory, not := lookup.Checked.String(), lookup.FromMemory.String(), lookup.Unchecked.String()
	for name, want := range map[string]string{"a": checked + "; some rows " + not, "b": memory, "c": not, "d": ""} {
		if got := states(seen, name); got != want {
			t.Errorf("%s: %q, want %q", name, got, want)
		}
	}
}
