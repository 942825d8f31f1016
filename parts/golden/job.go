package golden

import (
	"os"
	"path/filepath"
	"strings"
	"testing"
)

// Job writes the files of a job that stands in one file into a folder of the test,
// and returns the path of its job.yaml. The job comes first, without its list of
// parts, then its parts, apart by lines of "---"; a part begins with its name.
func Job(t testing.TB, path string) string {
	t.Helper()
	text, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	dir := t.TempDir()
	files := strings.Split(string(text), "\n---\n")
	job := files[0] + "\nparts:\n"
	for _, f := range files[1:] {
		name := strings.Fields(f)[1] + ".yaml"
		job += "  - " + name + "\n"
		if err := os.WriteFile(filepath.Join(dir, name), []byte(f), 0o600); err != nil {
			t.Fatal(err)
		}
	}
	out := filepath.Join(dir, "job.yaml")
	if err := os.WriteFile(out, []byte(job), 0o600); err != nil {
		t.Fatal(err)
	}
	return out
}
