//go:build unix

package read

import (
	"errors"
	"io/fs"
	"os"
	"path/filepath"
	"strings"
	"syscall"
	"testing"

	"centrepop/parts"
)

const jobHead = "job: Test\nunits: mm\nparts: "

func TestFolder(t *testing.T) {
	top := t.TempDir()
	dir := filepath.Join(top, "job")
	write(t, top, map[string]string{
		"job/job.yaml": jobHead + "[sub/disc.yaml, inner.yaml]\n", "job/sub/disc.yaml": disc,
		"job/real.yaml": strings.ReplaceAll(disc, "part: disc", "part: other"),
		"secret.yaml":   strings.ReplaceAll(disc, "part: disc", "part: secret"),
	})
	link := func(to, name string) {
		if err := os.Symlink(to, filepath.Join(dir, name)); err != nil {
			t.Skipf("no symbolic links here: %v", err)
		}
	}
	link("real.yaml", "inner.yaml")
	link("../secret.yaml", "out.yaml")
	link(filepath.Join(top, "secret.yaml"), "far.yaml")
	link("..", "up")
	link("loop.yaml", "loop.yaml")
	link("/dev/zero", "zero.yaml")
	if err := syscall.Mkfifo(filepath.Join(dir, "pipe.yaml"), 0o600); err != nil {
		t.Fatal(err)
	}

	job, err := Load(filepath.Join(dir, "job.yaml"))
	if err != nil {
		t.Fatalf("a part in a folder below and one behind a link inside: %v", err)
	}
	if len(job.Parts) != 2 || job.Parts[0].File != "sub/disc.yaml" || job.Parts[1].Name.Value != "other" {
		t.Errorf("parts %+v", job.Parts)
	}

	for _, c := range []struct{ entry, what string }{
		{"out.yaml", "leads out of the job's folder by a link"},
		{"far.yaml", "leads out of the job's folder by a link"},
		{"up/secret.yaml", "leads out of the job's folder by a link"},
		{"zero.yaml", "leads out of the job's folder by a link"},
		{"loop.yaml", "cannot be read"},
		{"pipe.yaml", "is not a file"},
		{"sub", "is not a file"},
		{"real.yaml, inner.yaml", "listed already"},
		{"sub/../../secret.yaml", "leads out of the job's folder"},
		{filepath.Join(top, "secret.yaml"), "leads out of the job's folder"},
		{"real.yaml/x", "real.yaml/x"},
	} {
		write(t, dir, map[string]string{"bad.yaml": jobHead + "[" + c.entry + "]\n"})
		job, err := Load(filepath.Join(dir, "bad.yaml"))
		var located *parts.Error
		if job != nil || !errors.As(err, &located) || !strings.Contains(located.What, c.what) || located.File != "bad.yaml" {
			t.Errorf("%s: %v, want an error that says %q", c.entry, err, c.what)
		}
	}
}

func TestJobFileMissing(t *testing.T) {
	for _, path := range []string{filepath.Join(t.TempDir(), "none.yaml"), filepath.Join(t.TempDir(), "none", "job.yaml")} {
		if job, err := Load(path); job != nil || !errors.Is(err, fs.ErrNotExist) {
			t.Errorf("Load = %v, %v; want fs.ErrNotExist", job, err)
		}
	}
	if job, err := Load(t.TempDir()); job != nil || err == nil {
		t.Errorf("a folder loads as %v, %v", job, err)
	}
}

func TestFault(t *testing.T) {
	job, err := Load("../../testdata/pugmill/job.yaml")
	if err != nil {
		t.Fatal(err)
	}
	for _, p := range job.Parts {
		e := job.Fault(p.Name.Pos, "is odd", "not that")
		if e.File != p.File || !strings.Contains(e.Excerpt, "part: "+p.Name.Value) || e.What != "is odd" || e.Right != "not that" {
			t.Errorf("fault of %s: %+v", p.Name.Value, e)
		}
	}
	if e := job.Fault(job.Name.Pos, "x", ""); e.Excerpt != "job: "+job.Name.Value {
		t.Errorf("fault in the job file has the excerpt %q", e.Excerpt)
	}
	if e := job.Fault(parts.Pos{File: "elsewhere", Line: 5, Column: 1}, "x", ""); e.Excerpt != "" {
		t.Errorf("fault in an unknown file has the excerpt %q", e.Excerpt)
	}
}
