package main

import (
	"os"
	"path"
	"path/filepath"
	"regexp"
	"strings"
	"testing"
)

// TestIndex: every file and folder that the index of DEVELOPERS.md names is there, and the words that
// it quotes stand in one of those of their row. A file without a folder is in that of the one before;
// … stands for what differs.
func TestIndex(t *testing.T) {
	t.Parallel()
	const root = "../.."
	text, err := os.ReadFile(filepath.Join(root, "DEVELOPERS.md"))
	if err != nil {
		t.Fatal(err)
	}
	_, index, _ := strings.Cut(string(text), "\n| on the sheet |")
	index, _, _ = strings.Cut(index, "\n\n")
	quoted, named := regexp.MustCompile(`"([^"]+)"`), regexp.MustCompile("`([^`]+)`")
	rows := strings.Split(index, "\n")[2:]
	if len(rows) < 30 {
		t.Fatalf("%d rows", len(rows))
	}
	for _, row := range rows {
		words, files, _ := strings.Cut(strings.Trim(row, "| "), "|")
		var source strings.Builder
		folder := ""
		for _, m := range named.FindAllStringSubmatch(files, -1) {
			head, list, _ := strings.Cut(m[1], "{")
			list, tail, _ := strings.Cut(list, "}")
			for _, one := range strings.Split(list, ",") {
				name := head + one + tail
				switch {
				case !strings.HasSuffix(name, ".go"):
					folder, name = name, path.Join(name, "*.go")
				case strings.Contains(name, "/"):
					folder = path.Dir(name)
				default:
					name = path.Join(folder, name)
				}
				found, _ := filepath.Glob(filepath.Join(root, name))
				if len(found) == 0 {
					t.Errorf("no %s, which %s names", name, row)
				}
				for _, f := range found {
					content, err := os.ReadFile(f)
					if err != nil {
						t.Error(err)
					}
					source.Write(content)
				}
			}
		}
		for _, m := range quoted.FindAllStringSubmatch(words, -1) {
			for _, piece := range strings.Split(m[1], "…") {
				if !strings.Contains(source.String(), strings.TrimSpace(piece)) {
					t.Errorf("%q stands in none of %s", piece, files)
				}
			}
		}
	}
}
