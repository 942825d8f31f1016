package changes

import (
	"os"
	"path/filepath"
	"strings"
	"testing"

	"centrepop/parts"
	"centrepop/parts/read"
)

// A longer bar keeps holes that are measured from its left end; one with a hole on another
// side, or measured from the other end, does not serve. Whether both walls are drilled is
// said too.
func TestBarChanges(t *testing.T) {
	t.Parallel()
	const rail = "part: rail\nkind: bar\nmaterial: S235\nbar: {square: 50, wall: 4, length: 400}\nholes:\n  - {name: seat, on: top, along: {from: left, first: 60, pitch: 80, count: 2}, size: 9}\n"
	load := func(text string) *parts.Job {
		dir := t.TempDir()
		for name, src := range map[string]string{"job.yaml": "job: A\nunits: mm\nparts: [rail.yaml]\n", "rail.yaml": text} {
			if err := os.WriteFile(filepath.Join(dir, name), []byte(src), 0o600); err != nil {
				t.Fatal(err)
			}
		}
		job, err := read.Load(filepath.Join(dir, "job.yaml"))
		if err != nil {
			t.Fatal(err)
		}
		return job
	}
	for _, c := range []struct {
		from, to string
		seat     string
	}{
		{"length: 400", "length: 420", ""},
		{"first: 60", "first: 63", string(Moved)},
		{"on: top", "on: bottom", string(Reworded)},
		{"size: 9", "size: 9, walls: both", string(Reworded)},
		{"from: left, first: 60", "from: right, first: 260", string(Reworded)},
	} {
		r, err := Compare(load(rail), load(strings.Replace(rail, c.from, c.to, 1)))
		if err != nil {
			t.Fatal(err)
		}
		got := ""
		for _, p := range r.Parts {
			for _, change := range p.Changes {
				if change.Feature == "seat" {
					got = string(change.Code)
					if change.Use != Scrap && change.What != "walls" {
						t.Errorf("%s: %s", c.to, change.Use)
					}
				}
			}
		}
		if got != c.seat || len(r.Parts) != 1 {
			t.Errorf("%s: %q, want %q; %+v", c.to, got, c.seat, r.Parts)
		}
	}
}
