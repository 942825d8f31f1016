package templates

import (
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"centrepop/layout"
	"centrepop/parts"
	"centrepop/parts/read"
	"centrepop/templates/draw"
)

// leastFull is the share of a page that is used, but of the last of a chapter.
const leastFull = 0.29

// TestPagesAreFull: on both papers no page of a demonstration job but the last of
// a chapter is less than leastFull full, no table goes on for fewer than four
// rows, and the packet has no more pages than it is to have.
func TestPagesAreFull(t *testing.T) {
	t.Parallel()
	tables := 0
	letter := parts.Paper{Name: "Letter", WidthMm: 215.9, HeightMm: 279.4}
	for _, c := range []struct {
		job   string
		paper parts.Paper
		pages int // the most, without cover and review
	}{{"pugmill", parts.Paper{}, 105}, {"pugmill", letter, 110}, {"gatejack", parts.Paper{}, 57}, {"gatejack", parts.Paper{Name: "A4", WidthMm: 210, HeightMm: 297}, 57}} {
		job, err := read.Load(filepath.Join("..", "testdata", c.job, "job.yaml"))
		if err != nil {
			t.Fatal(err)
		}
		worked, err := layout.Resolve(job)
		if err != nil {
			t.Fatal(err)
		}
		worked.Arrange()
		opt := Options{Paper: c.paper}
		paper, err := paperOf(worked.Plan, opt)
		if err != nil {
			t.Fatal(err)
		}
		chapters, err := opt.work(opt.tasks(worked.Plan, worked.Plan.Parts, paper))
		if err != nil {
			t.Fatal(err)
		}
		pages := 0
		for _, chapter := range chapters {
			pages += len(chapter.Sheets)
			for i, s := range chapter.Sheets {
				last := i == len(chapter.Sheets)-1
				picture := s.FillShare == 0 && len(s.Blocks) == 0
				if full := used(s); full < leastFull && !last && !picture {
					t.Errorf("%s on %s: %s %s, page %d: %.0f %% full", c.job, paper.Name, chapter.Name, s.Part, i+1, 100*full)
				}
				for _, n := range continued(s) {
					tables++
					if n < 4 {
						t.Errorf("%s on %s: %s %s, page %d: a table goes on for %d rows", c.job, paper.Name, chapter.Name, s.Part, i+1, n)
					}
				}
			}
		}
		if pages > c.pages {
			t.Errorf("%s on %s: %d pages, wanted %d at most", c.job, paper.Name, pages, c.pages)
		}
	}
	if tables == 0 {
		t.Error("no table goes on: the test looks past them")
	}
}

// used is how far down a sheet goes, or the share of its room that templates take.
func used(s *draw.Sheet) float64 {
	if s.FillShare > 0 || len(s.Blocks) == 0 {
		return max(s.FillShare, 1e-9)
	}
	body, low := s.Frame.Body(), s.Frame.Body().Y1
	for _, b := range s.Blocks {
		low = min(low, b.TopMm-b.HeightMm)
	}
	return (body.Y1 - low) / body.Height()
}

// continued are the rows of each table that began on an earlier sheet: the ruled
// blocks that follow its heading, less the heads.
func continued(s *draw.Sheet) []int {
	var out []int
	for i, b := range s.Blocks {
		if !slices.ContainsFunc(b.Draw.Items, func(item draw.Item) bool {
			text, ok := item.(draw.Text)
			return ok && strings.HasSuffix(text.Content, "(continued)") && text.Heading > 0
		}) {
			continue
		}
		low, rows := b.TopMm-b.HeightMm, -1
		for _, next := range s.Blocks[i+1:] {
			if next.XMm != b.XMm || next.TopMm < low-0.01 {
				break
			}
			low = next.TopMm - next.HeightMm
			if _, ruled := next.Draw.Items[0].(draw.Shape); ruled {
				rows++
			}
		}
		out = append(out, rows)
	}
	return out
}
