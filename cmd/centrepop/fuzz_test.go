//go:build unix

package main

import (
	"errors"
	"io"
	"os"
	"path/filepath"
	"testing"
	"time"

	"centrepop/layout"
	"centrepop/layout/review"
	"centrepop/parts"
	"centrepop/parts/golden"
	"centrepop/parts/read"
	"centrepop/render/pdf"
	"centrepop/templates"
)

// FuzzPart takes any part file from the YAML to the PDF. It must be refused
// with a place in the input, or be printed; nothing may stop in between.
func FuzzPart(f *testing.F) {
	for _, pattern := range []string{"testdata/hostile/good/[!j]*.yaml", "../../testdata/pugmill/*.yaml", "../../testdata/gatejack/*.yaml"} {
		files, _ := filepath.Glob(pattern)
		if len(files) == 0 {
			f.Fatalf("no seeds in %s", pattern)
		}
		for _, file := range files {
			f.Add([]byte(fileText(f, file)))
		}
	}
	dir := f.TempDir()
	job := filepath.Join(dir, "job.yaml")
	write(f, job, "job: Fuzz\nunits: mm\ntolerance: m\nparts: [part.yaml]\n")
	f.Fuzz(func(t *testing.T, part []byte) {
		if err := os.WriteFile(filepath.Join(dir, "part.yaml"), part, 0o666); err != nil {
			t.Fatal(err)
		}
		printOrRefuse(t, job)
	})
}

// FuzzJob does the same with the job file, beside parts that are right.
func FuzzJob(f *testing.F) {
	dir := f.TempDir()
	if err := os.CopyFS(filepath.Join(dir, "good"), os.DirFS("testdata/hostile/good")); err != nil {
		f.Fatal(err)
	}
	for _, cases := range golden.Cases(f, "testdata/hostile") {
		for _, c := range cases {
			if c.IsJob() {
				f.Add([]byte(c.Text))
			}
		}
	}
	job := filepath.Join(dir, "job.yaml")
	f.Fuzz(func(t *testing.T, text []byte) {
		if err := os.WriteFile(job, text, 0o666); err != nil {
			t.Fatal(err)
		}
		printOrRefuse(t, job)
	})
}

// printOrRefuse runs every stage. One that does not end is a panic, so that the
// input is kept.
func printOrRefuse(t *testing.T, path string) {
	timer := time.AfterFunc(20*time.Second, func() { panic("no end after 20 s") })
	defer timer.Stop()
	job, err := read.Load(path)
	if err != nil {
		hasPlace(t, err)
		return
	}
	w, err := layout.Work(job)
	if err != nil {
		hasPlace(t, err)
		return
	}
	if err := w.Faults(); err != nil {
		hasPlace(t, err)
		return
	}
	doc, err := templates.Packet(w.Plan, templates.Options{Paper: w.Plan.Paper, Findings: review.Review(w)})
	if err != nil {
		hasPlace(t, located(err, job))
		return
	}
	if err := pdf.Write(io.Discard, doc); err != nil {
		t.Fatalf("what was accepted cannot be printed: %v", err)
	}
}

// hasPlace checks that an error says where in the input the fault is.
func hasPlace(t *testing.T, err error) {
	t.Helper()
	var all parts.Errors
	if !errors.As(err, &all) || len(all) == 0 {
		t.Fatalf("the error has no place: %v", err)
	}
	for _, one := range all {
		if one.File == "" || one.Line < 1 || one.Column < 1 || one.What == "" {
			t.Fatalf("the fault %+v has no place or no words", one)
		}
	}
}
