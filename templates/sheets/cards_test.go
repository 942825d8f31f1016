package sheets

import (
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"centrepop/layout"
	"centrepop/layout/plan"
	"centrepop/parts/read"
	"centrepop/templates/draw"
)

// demoPlan is the plan of a demo job.
func demoPlan(t *testing.T, name string) *plan.Plan {
	t.Helper()
	job, err := read.Load(filepath.Join("..", "..", "testdata", name, "job.yaml"))
	if err != nil {
		t.Fatal(err)
	}
	worked, err := layout.Resolve(job)
	if err != nil {
		t.Fatal(err)
	}
	worked.ArrangeAs(&plan.Plan{}) // quicker than with the machine
	return worked.Plan
}

// cardWords are all texts of the plan's cards, by the name of their sheet.
func cardWords(pl *plan.Plan) map[string][]string {
	words := map[string][]string{}
	say := func(name string, texts ...string) { words[name] = append(words[name], texts...) }
	r := pl.FirstRun
	say(FirstRunName, append([]string{"Run by, signature", "Found"}, r.Cautions...)...)
	for _, s := range r.Stages {
		say(FirstRunName, s.Title)
		for _, l := range s.Lines {
			say(FirstRunName, l.Do, l.Wanted)
		}
		for _, run := range s.Runs {
			say(FirstRunName, run.What, run.After, run.Speed)
		}
	}
	for _, w := range r.Watch {
		say(FirstRunName, w.Where, w.Most)
	}
	u := pl.Upkeep
	say(UpkeepName, append([]string{"Date", "Initials"}, append(u.Cautions, u.Sources...)...)...)
	for _, rows := range [][]plan.UpkeepRow{u.Ports, u.Bolts, u.Wear} {
		for _, row := range rows {
			say(UpkeepName, row.Where, row.What, row.Every)
		}
	}
	m := pl.Motor
	say(MotorName, append(append(append([]string{"Licensed electrician, licence and signature"}, m.Cautions...), m.Sign...), m.Notes...)...)
	for _, f := range append(append([]plan.Fact{}, m.Plate...), m.Machine...) {
		say(MotorName, f.Label, f.Value)
	}
	return words
}

// missingWords are the words of a text that a page lacks: the lines of a cell
// stand among those of its neighbours, so words are looked for one by one.
func missingWords(all, text string) (out []string) {
	for _, word := range strings.Fields(text) {
		if !strings.Contains(all, word) {
			out = append(out, word)
		}
	}
	return out
}

// Each card is one page on either paper and says all that the plan does.
func TestCards(t *testing.T) {
	t.Parallel()
	letter := draw.Frame{WidthMm: 215.9, HeightMm: 279.4, Name: "Letter"}
	for _, name := range []string{"pugmill", "gatejack"} {
		pl := demoPlan(t, name)
		want := cardWords(pl)
		for _, paper := range []draw.Frame{a4, letter} {
			chapters := Cards(pl, paper)
			var names []string
			for _, c := range chapters {
				names = append(names, c.Name)
				if len(c.Sheets) != 1 {
					t.Errorf("%s on %s: %s has %d pages", name, paper.Name, c.Name, len(c.Sheets))
				}
				all := strings.Join(allTexts(c.Sheets[0].Draw), " ")
				if least := leastText(c.Sheets[0].Draw); least < leastCardMm {
					t.Errorf("%s on %s: text of %s is %.2f mm, under %.1f", name, paper.Name, c.Name, least, leastCardMm)
				}
				for _, text := range want[c.Name] {
					if missing := missingWords(all, text); len(missing) > 0 {
						t.Errorf("%s on %s, %s: %q lacks %q", name, paper.Name, c.Name, text, missing)
					}
				}
			}
			if got := strings.Join(names, "; "); got != FirstRunName+"; "+UpkeepName+"; "+MotorName {
				t.Errorf("%s: %s", name, got)
			}
		}
	}
}

// The stages stand in their order and are numbered through, every line has its
// box; the grid has its marks in every row.
func TestCardTables(t *testing.T) {
	t.Parallel()
	pl := demoPlan(t, "pugmill")
	first := allTexts(Cards(pl, a4)[0].Sheets[0].Draw)
	at := -1
	for i, stage := range []string{"1 Look", "2 Oil", "3 By", "4 Guards", "5 Direction", "6 Idle", "7 Under", "8 After"} {
		found := -1
		for j, text := range first {
			if strings.HasPrefix(text, stage) {
				found = j
				break
			}
		}
		if found <= at {
			t.Errorf("stage %d stands at %d, the one before at %d", i+1, found, at)
		}
		at = found
	}
	marks := 0
	for _, c := range upkeepTable(pl.Upkeep).Columns {
		if c.Head == "" && !c.Flex {
			marks++
		}
	}
	if rows := upkeepTable(pl.Upkeep).Rows; marks != upkeepMarks || len(rows) != 2+len(pl.Upkeep.Ports)+len(pl.Upkeep.Bolts)+len(pl.Upkeep.Wear) || rows[2][0] != "Grease, oil" || rows[3][0] != "" {
		t.Errorf("%d marks, rows %q", marks, rows)
	}
	if runs := runsTable(pl.FirstRun); len(runs.Columns) != 5+len(pl.FirstRun.Watch) || runs.Columns[4].Head != "front bearing, °C: stop above 70 °C" {
		t.Errorf("columns of the runs: %+v", runs.Columns)
	}
	mixed := &plan.Plan{Job: "x", FirstRun: &plan.FirstRun{Stages: []plan.RunStage{{Title: "Idle", Runs: []plan.RunRow{{What: "empty"}}}, {Title: "Look", Lines: []plan.CardLine{{Do: "at the seals"}}}}}}
	if all := allTexts(Cards(mixed, a4)[0].Sheets[0].Draw); slices.Index(all, "1 Idle") < 0 || slices.Index(all, "1 Idle") > slices.Index(all, "2 Look") {
		t.Errorf("what is looked at after a run stands before it: %q", all)
	}
	if got := sized(linesTable(), 2.65).RowMm; got != leastTickMm {
		t.Errorf("a box in a row of %g mm", got)
	}
	if got := Cards(&plan.Plan{Job: "x"}, a4); got != nil {
		t.Errorf("cards that nobody asked for: %v", got)
	}
}

// leastText is the smallest text of a drawing but its title block.
func leastText(d draw.Drawing) float64 {
	least := 100.0
	for _, item := range d.Items {
		switch item := item.(type) {
		case draw.Text:
			least = min(least, item.SizeMm)
		case draw.Group:
			least = min(least, leastText(*item.Drawing))
		}
	}
	return least
}
