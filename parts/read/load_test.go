package read

import (
	"bytes"
	"fmt"
	"path/filepath"
	"strings"
	"testing"

	"centrepop/parts/golden"
)

// TestDemos: both demonstrations can be read.
func TestDemos(t *testing.T) {
	for _, job := range []string{"../../testdata/pugmill/job.yaml", "../../testdata/gatejack/job.yaml"} {
		if _, err := Load(job); err != nil {
			t.Errorf("%s:\n%v", job, err)
		}
	}
}

// TestWhatIsRead: what is read of each small job that the layout works out, value by value with its
// place: a line for each part, each joint, and the rest of the job.
func TestWhatIsRead(t *testing.T) {
	t.Parallel()
	files, _ := filepath.Glob("../../layout/*/testdata/worked/*.yaml")
	if len(files) < 10 {
		t.Fatalf("only %d jobs", len(files))
	}
	var whole strings.Builder
	for _, file := range files {
		at := golden.Job(t, file)
		j, err := Load(at)
		if err != nil {
			t.Fatalf("%s:\n%v", file, err)
		}
		line := func(what string, v any) {
			text := bytes.ReplaceAll(golden.Text(v), []byte(filepath.Dir(at)), []byte("."))
			fmt.Fprintf(&whole, "%s: %s\n", what, strings.Join(strings.Fields(string(text)), " "))
		}
		for _, p := range j.Parts {
			line("part "+p.Name.Value, p)
		}
		for _, o := range j.Joints {
			line("joint "+o.Name.Value, o)
		}
		j.Lines, j.Parts, j.Joints = nil, nil, nil
		line("job "+filepath.Base(file), j)
	}
	golden.Whole(t, "testdata/worked.txt", []byte(whole.String()))
}

func BenchmarkLoad(b *testing.B) {
	b.ReportAllocs()
	for b.Loop() {
		if _, err := Load("../../testdata/pugmill/job.yaml"); err != nil {
			b.Fatal(err)
		}
	}
}
