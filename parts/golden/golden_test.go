package golden

import (
	"os"
	"path/filepath"
	"strings"
	"testing"
)

func TestDiff(t *testing.T) {
	long := strings.Repeat("x", 400)
	for _, c := range []struct{ want, got, part string }{
		{"a\nb\n", "a\nb\n", ""},
		{"a\nb\n", "a\nc\n", "line 2 differs"},
		{"a\n", "a", "no more lines"},
		{"a ", "a", `want: "a "`},
		{long, long + "y", "401 bytes"},
		{long + "y", long + "z", "line 1 differs"},
	} {
		d := Diff([]byte(c.want), []byte(c.got))
		if (d == "") != (c.part == "") || !strings.Contains(d, c.part) {
			t.Errorf("Diff(%.10q, %.10q) = %q, want it to say %q", c.want, c.got, d, c.part)
		}
	}
}

func TestCompareWritesAndReads(t *testing.T) {
	path := filepath.Join(t.TempDir(), "sub", "wanted.txt")
	t.Setenv("CENTREPOP_UPDATE", "1")
	Compare(t, path, []byte("one\n"))
	t.Setenv("CENTREPOP_UPDATE", "")
	Compare(t, path, []byte("one\n"))
}

func TestTable(t *testing.T) {
	path := filepath.Join(t.TempDir(), "t.csv")
	if err := os.WriteFile(path, []byte("# a comment\nname,mm\na,1.5\n\"b, c\",\n"), 0o666); err != nil {
		t.Fatal(err)
	}
	rows := Table(t, path, 2)
	if len(rows) != 2 || rows[0]["name"] != "a" || rows[0].Number(t, "mm") != 1.5 || rows[1]["name"] != "b, c" || rows[1].Number(t, "mm") != 0 {
		t.Errorf("%v", rows)
	}
}

func TestJob(t *testing.T) {
	t.Parallel()
	in := filepath.Join(t.TempDir(), "all.yaml")
	if err := os.WriteFile(in, []byte("job: A\n---\npart: pin\nkind: shaft\n---\npart: lid\n"), 0o600); err != nil {
		t.Fatal(err)
	}
	job := Job(t, in)
	for name, want := range map[string]string{
		"job.yaml": "job: A\nparts:\n  - pin.yaml\n  - lid.yaml\n", "pin.yaml": "part: pin\nkind: shaft", "lid.yaml": "part: lid\n",
	} {
		if got, err := os.ReadFile(filepath.Join(filepath.Dir(job), name)); err != nil || string(got) != want {
			t.Errorf("%s: %q, %v", name, got, err)
		}
	}
}
