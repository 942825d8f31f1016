package templates

import (
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"centrepop/layout"
	"centrepop/layout/changes"
	"centrepop/layout/review"
	"centrepop/parts/read"
	"centrepop/templates/draw"
	"centrepop/templates/sheettest"
	"centrepop/templates/truesize"
)

// changedJack is what is printed of the jack with edits: file, old and new text.
func changedJack(t *testing.T, edits ...[3]string) *draw.Document {
	t.Helper()
	const from = "../testdata/gatejack"
	folder := t.TempDir()
	if err := os.CopyFS(folder, os.DirFS(from)); err != nil {
		t.Fatal(err)
	}
	for _, e := range edits {
		path := filepath.Join(folder, e[0])
		src, err := os.ReadFile(path)
		if err != nil || strings.Count(string(src), e[1]) != 1 {
			t.Fatalf("%s has %q not once: %v", e[0], e[1], err)
		}
		if err := os.WriteFile(path, []byte(strings.Replace(string(src), e[1], e[2], 1)), 0o600); err != nil {
			t.Fatal(err)
		}
	}
	was, err := read.Load(filepath.Join(from, "job.yaml"))
	if err != nil {
		t.Fatal(err)
	}
	is, err := read.Load(filepath.Join(folder, "job.yaml"))
	if err != nil {
		t.Fatal(err)
	}
	report, err := changes.Compare(was, is)
	if err != nil {
		t.Fatal(err)
	}
	before, err := layout.Work(was)
	if err != nil {
		t.Fatal(err)
	}
	now, err := layout.Work(is)
	if err != nil {
		t.Fatal(err)
	}
	doc, err := Packet(now.Plan, Options{
		Findings: review.Review(now), Templates: truesize.All,
		Since: &Since{Plan: before.Plan, Findings: review.Review(before), Report: report},
	})
	if err != nil {
		t.Fatal(err)
	}
	return doc
}

// TestChangedBars prints the cut list once, whichever bars of it differ.
func TestChangedBars(t *testing.T) {
	t.Parallel()
	doc := changedJack(t, [3]string{"frame-rail.yaml", "title: Frame rail", "title: Pit rail"}, [3]string{"frame-end.yaml", "title: Frame end", "title: Pit end"})
	lists := 0
	for i := range doc.Pages {
		if texts := sheettest.TextsOf(t, &doc.Pages[i]); slices.Contains(texts, "Bars – cut list and record") {
			if lists++; !slices.Contains(texts, "A Pit rail × 2") || !slices.Contains(texts, "C Stay × 1") {
				t.Errorf("page %d: %q", i+1, texts)
			}
		}
	}
	if lists != 1 {
		t.Errorf("%d cut lists", lists)
	}
}

// TestChangedSince prints the jack with a note on one part: the cover, the list of
// changes and that part's sheets alone, marked.
func TestChangedSince(t *testing.T) {
	t.Parallel()
	doc := changedJack(t, [3]string{"job.yaml", "revision: \"2\"", "revision: \"3\""}, [3]string{"stem.yaml", "notes:", "notes:\n  - Keep the chips off the thread."})
	if doc.Subject != "Changed sheets" {
		t.Errorf("the subject is %q", doc.Subject)
	}
	var marks []string
	barred := 0
	for i := range doc.Pages {
		p := &doc.Pages[i]
		for _, b := range p.Bookmarks {
			if b.Level == 0 {
				marks = append(marks, b.Title)
			}
		}
		texts := sheettest.TextsOf(t, p)
		if slices.Contains(marks, "Stem") && !slices.ContainsFunc(texts, func(s string) bool {
			return strings.HasPrefix(s, "Takes the place of the sheet of revision 2.")
		}) {
			t.Errorf("page %d has no note of the revision", i+1)
		}
		if slices.ContainsFunc(texts, func(s string) bool { return strings.HasSuffix(s, "marks what differs.") }) {
			barred++
		}
	}
	if want := []string{"Cover", "What has changed", "Stem"}; !slices.Equal(marks, want) {
		t.Errorf("chapters %q, want %q", marks, want)
	}
	if barred != 2 { // the cover has the revision, the stem the note
		t.Errorf("%d sheets with bars", barred)
	}
}
