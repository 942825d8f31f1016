package read

import (
	"errors"
	"fmt"
	"maps"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"centrepop/parts"
	"centrepop/parts/golden"
)

// TestHostile reads every case of the tables of bad inputs. Each is refused with the wanted words
// first; what a later stage refuses is read without any. The whole of what is said of each, place,
// excerpt, cure and faults that come with it, is held by testdata/hostile.txt.
func TestHostile(t *testing.T) {
	t.Parallel()
	const folder = "../../cmd/centrepop/testdata/hostile"
	dir := t.TempDir()
	if err := os.CopyFS(dir, os.DirFS(folder)); err != nil {
		t.Fatal(err)
	}
	write := func(name, text string) {
		if err := os.WriteFile(filepath.Join(dir, name), []byte(text), 0o666); err != nil {
			t.Fatal(err)
		}
	}
	var whole strings.Builder
	tables := golden.Cases(t, folder)
	for _, file := range slices.Sorted(maps.Keys(tables)) {
		fmt.Fprintf(&whole, "%s\n", filepath.Base(file))
		cases := tables[file]
		for _, c := range cases {
			job, name := c.Name+".yaml", c.Name+".yaml"
			write(name, c.Text)
			if !c.IsJob() {
				job = "job.yaml"
				write(job, "job: Hostile\nunits: mm\nparts: ["+name+"]\n")
			}
			_, err := Load(filepath.Join(dir, job))
			if c.Later || err == nil {
				if c.Later != (err == nil) {
					t.Errorf("%s:%d: read with %v, want %s", file, c.Line+1, err, c.Want)
				}
				continue
			}
			fmt.Fprintf(&whole, "%s\t%s\n", said(err), strings.ReplaceAll(err.Error(), "\n", " "))
			if first, _, _ := strings.Cut(err.Error(), "\n"); strings.TrimPrefix(first, name+":") != c.Want {
				t.Errorf("%s:%d: %s, want %s", file, c.Line+1, first, c.Want)
			}
		}
	}
	golden.Whole(t, "testdata/hostile.txt", []byte(whole.String()))
}

// said is how many faults an error lists.
func said(err error) string {
	var all parts.Errors
	errors.As(err, &all)
	return fmt.Sprintf("%d at once", len(all))
}
