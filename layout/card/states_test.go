package card

import (
	"strings"
	"testing"

	"centrepop/layout/bars"
	"centrepop/layout/bolts"
	"centrepop/layout/lookup"
	"centrepop/layout/measured"
	"centrepop/layout/plan"
	"centrepop/layout/threads"
	"centrepop/layout/weld"
	"centrepop/parts"
)

// TestStates: the most trusted state first, each once, down to what nobody checked.
func TestStates(t *testing.T) {
	t.Parallel()
	seen := []lookup.Source{{Name: "a", State: lookup.Unchecked}, {Name: "a", State: lookup.Checked}, {Name: "b", State: lookup.FromMemory}, {Name: "c", State: lookup.Unchecked}, {Name: "e", State: lookup.Unchecked}, {Name: "e", State: lookup.FromMemory}}
	memory, not := lookup.FromMemory.String(), lookup.Unchecked.String()
	for name, want := range map[string]string{"a": inPart, "b": memory, "c": not, "d": "", "e": memory + "; some rows " + not} {
		if got := states(seen, name); got != want {
			t.Errorf("%s: %q, want %q", name, got, want)
		}
	}
}

// A table whose library says of itself that something is from memory says so here.
func TestWholeTablesSayWhatTheirLibrariesSay(t *testing.T) {
	t.Parallel()
	pipe, err := threads.Parse("Rp1/2")
	if err != nil {
		t.Fatal(err)
	}
	prep, err := weld.ButtPrep(8, weld.BothEdges, weld.OneSide)
	if err != nil {
		t.Fatal(err)
	}
	sold, known, _, bar := bars.Listed(bars.Section{Shape: bars.Square, WidthMm: 50, DepthMm: 50, WallMm: 4})
	said := map[string]string{"bolts, nuts, washers": bolts.CompanionsSource, "threads, holes": pipe.Note, "edges of butt welds": prep.Source, "motor flanges": measured.StandardSource, "sections of bars": bar.String()}
	if !sold || !known {
		t.Error("50 × 50 × 4 is not listed")
	}
	for _, row := range wholeTables {
		if text, ok := said[row.What]; ok && (!strings.Contains(text, "from memory") || row.State == lookup.Checked.String()) {
			t.Errorf("%s: %q, its library says %q", row.What, row.State, text)
		}
	}
}

// What fixes the machine to the floor is known by what it is, not by its name.
func TestAnchorsByKind(t *testing.T) {
	t.Parallel()
	c := cards{pl: &plan.Plan{Bought: []plan.BoughtRow{{Item: "Anchor shackle M10", Quantity: 1, For: "Yoke"}, {Item: "Bolt M12", Quantity: 4, For: "Foot", Anchor: true}}}, job: &parts.Job{}}
	if got := c.looseBolts(); len(got) != 1 || got[0].Do != "4 × bolt M12, Foot" || got[0].Wanted != "by its maker" {
		t.Errorf("%+v", got)
	}
}
