package read

import (
	"os"
	"path/filepath"
	"strings"
	"testing"

	"centrepop/parts"
	"centrepop/parts/golden"
)

// TestBadParts reads every file in testdata/bad, none of which is right, and
// compares the whole message with the text beside it.
func TestBadParts(t *testing.T) {
	files, _ := filepath.Glob("testdata/bad/*.yaml")
	if len(files) == 0 {
		t.Fatal("no cases in testdata/bad")
	}
	for _, file := range files {
		t.Run(strings.TrimSuffix(filepath.Base(file), ".yaml"), func(t *testing.T) {
			src, err := os.ReadFile(file)
			if err != nil {
				t.Fatal(err)
			}
			p, err := ParsePart(filepath.Base(file), src, parts.Millimetres)
			if err == nil || p != nil {
				t.Fatalf("ParsePart = %v, %v; want no part and an error", p, err)
			}
			checkErrors(t, err, map[string][]byte{filepath.Base(file): src})
			golden.Compare(t, strings.TrimSuffix(file, ".yaml")+".txt", []byte(err.Error()+"\n"))
		})
	}
}

// TestBadJobs does the same with the folders of testdata/badjobs.
func TestBadJobs(t *testing.T) {
	jobs, _ := filepath.Glob("testdata/badjobs/*/job.yaml")
	if len(jobs) == 0 {
		t.Fatal("no cases in testdata/badjobs")
	}
	for _, job := range jobs {
		dir := filepath.Dir(job)
		t.Run(filepath.Base(dir), func(t *testing.T) {
			j, err := Load(job)
			if err == nil || j != nil {
				t.Fatalf("Load = %v, %v; want no job and an error", j, err)
			}
			golden.Compare(t, filepath.Join(dir, "want.txt"), []byte(err.Error()+"\n"))
		})
	}
}

// TestWantedFilesAreUsed fails for a text whose YAML is gone.
func TestWantedFilesAreUsed(t *testing.T) {
	texts, _ := filepath.Glob("testdata/bad/*.txt")
	for _, text := range texts {
		if _, err := os.Stat(strings.TrimSuffix(text, ".txt") + ".yaml"); err != nil {
			t.Errorf("%s has no YAML beside it", text)
		}
	}
}
