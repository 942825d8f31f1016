package read

import (
	"os"
	"path/filepath"
	"testing"

	"centrepop/parts"
)

// FuzzParsePart: an error or a part, never both; errors point into the file;
// an accepted part is complete and finite.
func FuzzParsePart(f *testing.F) {
	for _, pattern := range []string{"testdata/bad/*.yaml", "../../testdata/*/*.yaml"} {
		files, _ := filepath.Glob(pattern)
		if len(files) == 0 {
			f.Fatalf("no seeds in %s", pattern)
		}
		for _, file := range files {
			src, err := os.ReadFile(file)
			if err != nil {
				f.Fatal(err)
			}
			f.Add(src, filepath.Base(filepath.Dir(file)) == "gatejack")
		}
	}
	f.Fuzz(func(t *testing.T, src []byte, inches bool) {
		units := parts.Millimetres
		if inches {
			units = parts.Inches
		}
		p, err := ParsePart("part.yaml", src, units)
		if (p == nil) == (err == nil) {
			t.Fatalf("ParsePart = %v, %v", p, err)
		}
		if err != nil {
			checkErrors(t, err, map[string][]byte{"part.yaml": src})
			return
		}
		checkPart(t, p)
	})
}

// FuzzLoad: as FuzzParsePart, for the job file beside two parts that are right.
func FuzzLoad(f *testing.F) {
	files, _ := filepath.Glob("testdata/badjobs/*/job.yaml")
	demos, _ := filepath.Glob("../../testdata/*/job.yaml")
	if len(files) == 0 || len(demos) == 0 {
		f.Fatal("no seeds")
	}
	for _, file := range append(files, demos...) {
		src, err := os.ReadFile(file)
		if err != nil {
			f.Fatal(err)
		}
		f.Add(src)
	}
	f.Add([]byte("job: Two\nunits: in\nparts: [disc.yaml, pipe.yaml]\n"))
	dir := f.TempDir()
	read := map[string][]byte{
		"disc.yaml": []byte(disc),
		"pipe.yaml": []byte("part: pipe\nkind: tube\ntube: {outside: 50 mm, wall: 4 mm, length: 100 mm}\n"),
	}
	for name, src := range read {
		if err := os.WriteFile(filepath.Join(dir, name), src, 0o644); err != nil {
			f.Fatal(err)
		}
	}
	f.Fuzz(func(t *testing.T, src []byte) {
		path := filepath.Join(dir, "job.yaml")
		if err := os.WriteFile(path, src, 0o644); err != nil {
			t.Fatal(err)
		}
		j, err := Load(path)
		if (j == nil) == (err == nil) {
			t.Fatalf("Load = %v, %v", j, err)
		}
		if err != nil {
			checkErrors(t, err, map[string][]byte{"job.yaml": src, "disc.yaml": read["disc.yaml"], "pipe.yaml": read["pipe.yaml"]})
			return
		}
		if len(j.Parts) == 0 || j.Name.Value == "" || j.Paper.WidthMm <= 0 || j.Units == "" {
			t.Fatalf("incomplete job: %+v", j)
		}
		for _, p := range j.Parts {
			checkPart(t, p)
		}
	})
}
