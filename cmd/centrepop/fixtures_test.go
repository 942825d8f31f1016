package main

import (
	"bytes"
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"sync"
	"testing"

	"centrepop/render/measure"
)

// The demo jobs. Where the size of the job does not matter, tests take a
// plateJob.
const (
	pugMill  = "../../testdata/pugmill/job.yaml"
	gateJack = "../../testdata/gatejack/job.yaml"
)

// plateJob writes a job of one plate with six holes.
func plateJob(t testing.TB) string {
	t.Helper()
	return jobOf(t, fileText(t, "testdata/hostile/good/plate.yaml"))
}

// partsAlone writes a demo's parts as a job in which nothing says how they meet: what is
// asked of a part alone then waits for no machine to be stood.
func partsAlone(t testing.TB, demo string) string {
	t.Helper()
	dir := t.TempDir()
	if err := os.CopyFS(dir, os.DirFS(filepath.Dir(demo))); err != nil {
		t.Fatal(err)
	}
	job := filepath.Join(dir, "job.yaml")
	own, _, _ := strings.Cut(fileText(t, job), "\njoints:\n")
	write(t, job, own+"\n")
	return job
}

// jobOf writes a job of one part, whose file is part.yaml.
func jobOf(t testing.TB, part string) string {
	t.Helper()
	dir := t.TempDir()
	job := filepath.Join(dir, "job.yaml")
	write(t, job, "job: Test\nunits: mm\nparts: [part.yaml]\n")
	write(t, filepath.Join(dir, "part.yaml"), part)
	return job
}

func write(t testing.TB, path, text string) {
	t.Helper()
	if err := os.WriteFile(path, []byte(text), 0o666); err != nil {
		t.Fatal(err)
	}
}

func fileText(t testing.TB, path string) string {
	t.Helper()
	data, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	return string(data)
}

// prints are the files printed so far, by command line.
var prints sync.Map

// made runs the program and gives what it wrote to -o. One command line runs
// once, for all tests: its words must name all that it depends on.
func made(t testing.TB, args ...string) []byte {
	t.Helper()
	once, _ := prints.LoadOrStore(strings.Join(args, "\x00"), sync.OnceValues(func() ([]byte, error) {
		dir, err := os.MkdirTemp("", "centrepop")
		if err != nil {
			return nil, err
		}
		defer os.RemoveAll(dir)
		out := filepath.Join(dir, "out.pdf")
		var stdout, stderr bytes.Buffer
		if got := run(append(args, "-o", out), &stdout, &stderr); got != statusDone {
			return nil, fmt.Errorf("%v: status %d: %s", args, got, &stderr)
		}
		return os.ReadFile(out)
	}))
	data, err := once.(func() ([]byte, error))()
	if err != nil {
		t.Fatal(err)
	}
	return data
}

// opened is what made gives, opened to measure on it.
func opened(t testing.TB, args ...string) *measure.Doc {
	t.Helper()
	return measure.Open(t, made(t, args...))
}

// faceTemplates prints the punch templates of some parts in one file, apart, and
// gives the pages of each by part and face, such as "cap-ring front".
func faceTemplates(t testing.TB, job string, names []string, paper string, more ...string) (*measure.Doc, map[string][]int) {
	t.Helper()
	doc := opened(t, append(append([]string{"template", job}, names...), append(more, "--apart", "--paper", paper)...)...)
	chapters := doc.Bookmarks()
	if len(chapters) != len(names) {
		t.Fatalf("%d bookmarks for %d parts", len(chapters), len(names))
	}
	pages := map[string][]int{}
	last := doc.Pages()
	for i := len(chapters) - 1; i >= 0; i-- { // from the end: a chapter ends where the next begins
		for j := len(chapters[i].Children) - 1; j >= 0; j-- {
			c := chapters[i].Children[j]
			if face, ok := strings.CutSuffix(strings.TrimPrefix(c.Title, "Punch template, "), " face"); ok {
				key := names[i] + " " + strings.ToLower(face)
				for page := c.Page; page < last; page++ {
					pages[key] = append(pages[key], page)
				}
			}
			last = c.Page
		}
	}
	return doc, pages
}
