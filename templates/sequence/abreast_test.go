package sequence

import (
	"math"
	"path/filepath"
	"slices"
	"strings"
	"sync"
	"testing"

	"centrepop/layout"
	"centrepop/layout/plan"
	"centrepop/parts/read"
	"centrepop/templates/draw"
	"centrepop/templates/sheettest"
)

var papers = []draw.Frame{{WidthMm: 210, HeightMm: 297, Name: "A4"}, {WidthMm: 215.9, HeightMm: 279.4, Name: "Letter"}}

// demos are the plans of the demonstration jobs with their pictures, each made once for all
// tests, which only read them.
var demos = map[string]func() (*plan.Plan, error){"pugmill": demoOf("pugmill"), "gatejack": demoOf("gatejack")}

func demoOf(name string) func() (*plan.Plan, error) {
	return sync.OnceValues(func() (*plan.Plan, error) {
		job, err := read.Load(filepath.Join("..", "..", "testdata", name, "job.yaml"))
		if err != nil {
			return nil, err
		}
		worked, err := layout.Resolve(job)
		if err != nil {
			return nil, err
		}
		worked.Arrange()
		return worked.Plan, nil
	})
}

// demo is the plan of a demonstration job with its pictures.
func demo(t *testing.T, name string) *plan.Plan {
	t.Helper()
	pl, err := demos[name]()
	if err != nil {
		t.Fatal(err)
	}
	return pl
}

// wordsOf are all words of sheets, without what ends a sentence.
func wordsOf(t *testing.T, sheets []*draw.Sheet) (out []string) {
	t.Helper()
	for _, s := range sheets {
		page := draw.Page{WidthMm: s.Frame.WidthMm, HeightMm: s.Frame.HeightMm, Drawing: s.Draw}
		for _, text := range sheettest.TextsOf(t, &page) {
			for _, word := range strings.Fields(strings.ToLower(text)) {
				out = append(out, strings.TrimRight(word, ".:,"))
			}
		}
	}
	return out
}

// spared are what a step that shares a sheet does without: words that the title, the
// head or the column over them says, and quarters of a clock.
var spared = []string{"step", "slide", "press", "weld", "bolt", "bearing", "what", "90°", "180°", "270°"}

// TestAbreast: two steps of a demonstration job on a sheet say every word that they
// say on sheets of their own, cut none, and stand in a column each; they are bookmarks
// and the joints of one chapter, and save sheets.
func TestAbreast(t *testing.T) {
	t.Parallel()
	for _, name := range []string{"pugmill", "gatejack"} {
		pl := demo(t, name)
		for _, paper := range papers {
			shared, joints := 0, 0
			for _, c := range steps(pl, paper) {
				joints += len(c.Of)
				s := c.Sheets[0]
				if s.Frame.WidthMm < s.Frame.HeightMm {
					continue
				}
				shared++
				var own []*draw.Sheet
				titles := 0
				for _, run := range equalRuns(pl.Joints) {
					if slices.Contains(c.Of, run[0].Name) {
						own = append(own, jointSheets(pl, run, paper)...)
						title := stepsWord(run) + ": " + titleOf(run)
						if title == c.Name || slices.Equal(s.Starts, []string{title}) {
							titles++
						}
					}
				}
				said := wordsOf(t, c.Sheets)
				for _, word := range wordsOf(t, own) {
					if !slices.Contains(spared, word) && !slices.Contains(said, word) {
						t.Errorf("%s on %s: %s, %v does not say %q", name, paper.Name, c.Name, s.Starts, word)
					}
				}
				if i := slices.IndexFunc(said, func(word string) bool { return len(word) > 3 && strings.HasSuffix(word, "…") }); i >= 0 {
					t.Errorf("%s on %s: %s is cut at %q", name, paper.Name, c.Name, said[i])
				}
				if titles != 2 || len(c.Sheets) != 1 || strings.Count(strings.Join(said, " "), "hold all") != 2 {
					t.Errorf("%s on %s: %s on %d sheets, %d bookmarks", name, paper.Name, c.Name, len(c.Sheets), titles)
				}
				body := s.Frame.Body()
				for _, b := range s.Blocks {
					if left, right := math.Abs(b.XMm-body.X0), math.Abs(b.XMm-(body.X0+body.X1+draw.GutterMm)/2); min(left, right) > 1e-6 || b.TopMm-b.HeightMm < body.Y0-1e-6 {
						t.Errorf("%s on %s: %s has a block at %g, %g high", name, paper.Name, c.Name, b.XMm, b.HeightMm)
					}
				}
			}
			if shared < 2 || joints != len(pl.Joints) {
				t.Errorf("%s on %s: %d sheets are shared, of %d joints", name, paper.Name, shared, joints)
			}
		}
	}
}

// TestNotAbreast: a step too high for half a sheet stands alone, and so do both on
// paper too narrow for two.
func TestNotAbreast(t *testing.T) {
	t.Parallel()
	pl := demo(t, "gatejack")
	runs := equalRuns(pl.Joints)
	at := slices.IndexFunc(runs, func(run []*plan.JointPlan) bool { return run[0].N == 10 })
	if got := halvesOf(pl, papers[0]).abreast(runs[at], runs[at+1]); len(got) != 1 {
		t.Fatalf("two short steps on %d sheets", len(got))
	}
	if got := halvesOf(pl, draw.Frame{WidthMm: 140, HeightMm: 200}).abreast(runs[at], runs[at+1]); got != nil {
		t.Errorf("two steps on small paper: %d sheets", len(got))
	}
	long := *runs[at][0]
	long.Steps = slices.Concat(long.Steps, long.Steps, long.Steps)
	for _, pair := range [][2][]*plan.JointPlan{{{&long}, runs[at+1]}, {runs[at+1], {&long}}} {
		if got := halvesOf(pl, papers[0]).abreast(pair[0], pair[1]); got != nil {
			t.Errorf("a long step shares a sheet: %v", got[0].Name)
		}
	}
}

// TestNumberRow: numbers share a row, each as wide as it needs; where they need more
// than there is, that is told.
func TestNumberRow(t *testing.T) {
	t.Parallel()
	list := []keyNumber{{"Gap", "0 mm", ""}, {"Sleeve for the cone", "Ø50.5 / 58", "inside / outside at most, mm"}, {"Grease", "10 g", "when regreasing"}}
	need := 0.0
	for _, k := range list {
		need += k.leastMm()
	}
	for _, c := range []struct {
		width float64
		whole bool
	}{{need + 0.1, true}, {need - 0.1, false}, {160, true}} {
		p, whole := numberRow(list, c.width)
		boxes := []float64{}
		for _, item := range p.Draw.Items {
			switch it := item.(type) {
			case draw.Shape:
				boxes = append(boxes, it.Path.Bounds().W())
			case draw.Text:
				if c.whole && strings.HasSuffix(it.Content, "…") {
					t.Errorf("%g mm: %q", c.width, it.Content)
				}
			}
		}
		if whole != c.whole || len(boxes) != 3 || math.Abs(boxes[0]+boxes[1]+boxes[2]-c.width) > 1e-6 || math.Abs(boxes[1]-boxes[2]-(list[1].leastMm()-list[2].leastMm())) > 1e-6 || p.Height != smallBox.highMm {
			t.Errorf("%g mm: whole %v, boxes %v", c.width, whole, boxes)
		}
	}
}

// TestHalvesAreReadable: a step that shares a sheet is set as large as it fits, however
// close the other must be; at least half of those of the demonstration jobs say what
// to do in 3 mm or more, and none is less so than the ways from the roomiest on allow.
func TestHalvesAreReadable(t *testing.T) {
	t.Parallel()
	large, all, mixed := 0, 0, 0
	for _, name := range []string{"pugmill", "gatejack"} {
		pl := demo(t, name)
		runs := equalRuns(pl.Joints)
		for _, paper := range papers {
			h := halvesOf(pl, paper)
			for i := 0; i+1 < len(runs); i++ {
				if h.abreast(runs[i], runs[i+1]) == nil {
					continue
				}
				sizes := [2]float64{}
				for k, run := range [][]*plan.JointPlan{runs[i], runs[i+1]} {
					one := h.half(run)
					sizes[k] = one.tables[0].Columns[1].Size
					if all++; sizes[k] >= 3 {
						large++
					}
				}
				if i++; sizes[0] != sizes[1] {
					mixed++
				}
			}
		}
	}
	t.Logf("%d of %d in 3 mm or more", large, all)
	if large*2 < all || mixed == 0 {
		t.Errorf("%d of %d steps in 3 mm or more, %d sheets with two sizes", large, all, mixed)
	}
	for i, way := range asideWays[1:] {
		if way.closeness > asideWays[i].closeness || way.closeness < 0.8 {
			t.Errorf("way %d is roomier than that before it, or too close: %v", i+1, way)
		}
	}
}

// What only the last of several equal pieces adds has no box for the others: the plug comes out
// of the housing plate's bore when the fourth gusset is cold, and its faces are felt.
func TestBoxOnlyWhereAStepIs(t *testing.T) {
	t.Parallel()
	for _, run := range equalRuns(demo(t, "pugmill").Joints) {
		if run[0].Name != "gusset-1" {
			continue
		}
		for n := range run { // of more than one no row names the piece
			steps, named := run[n].Steps, n == 0
			for i, row := range closeness(1).stepTable(run[:n+1]).Rows {
				if step := steps[i]; !strings.HasPrefix(row[2], map[bool]string{true: strings.Join(step.Do, " "), false: step.Alike}[named]) {
					t.Errorf("row %d of %d pieces: %q", i+1, n+1, row[2])
				}
			}
		}
		for i, row := range closeness(1).stepTable(run).Rows {
			want := "|||"
			if i >= 4 {
				want = "–|–|–|"
			}
			if got := strings.Join(row[3:], "|"); got != want {
				t.Errorf("row %d of %d pieces: %q, want %q", i+1, len(run), got, want)
			}
		}
		return
	}
	t.Error("no run of gussets")
}

// TestSectionsAreAsHighAsTheirRow: what stands beside the sections of a step gives its height to
// them; over it they keep their own.
func TestSectionsAreAsHighAsTheirRow(t *testing.T) {
	t.Parallel()
	j := &plan.JointPlan{Pictures: make([]plan.Picture, 1)}
	beside := []draw.Panel{{Width: 40, Height: 50}}
	if room, high := (asideWay{pictures: 0.5}).sections(j, beside, 130); room != 90 || high != 50 {
		t.Errorf("beside: %g wide, %g high", room, high)
	}
	if room, high := (asideWay{pictures: 0.5, apart: true}).sections(j, beside, 130); room != 130 || high != lowMm/2 {
		t.Errorf("apart: %g wide, %g high", room, high)
	}
}
