package review

import (
	"testing"

	"centrepop/parts"
)

// A note that asks one setting of steps is obeyed where the profile has all of them together.
func TestNoteOfOneSetting(t *testing.T) {
	t.Parallel()
	step := func(name string) parts.Step { return parts.Step{Name: parts.Text{Value: name}} }
	v := &view{p: &parts.Part{Profile: &parts.Profile{OneSetting: []parts.Text{{Value: "o2"}, {Value: "i1"}}, Outside: []parts.Step{step("o1"), step("o2")}, Inside: []parts.Step{step("i1")}}}}
	for note, want := range map[string]bool{
		"o1 and o2 in one setting":              false,
		"o2 and i1 in one setting":              true,
		"all seats in one setting":              true,
		"o2 in one setting with i1; paint o1":   true,
		"Polish o1. Turn o2, i1 in one setting": true,
	} {
		if got := v.obeysSetting(note, "one setting"); got != want {
			t.Errorf("%s: %v", note, got)
		}
	}
}
