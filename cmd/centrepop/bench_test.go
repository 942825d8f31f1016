//go:build unix

package main

import (
	"io"
	"path/filepath"
	"testing"

	"centrepop/layout"
	"centrepop/layout/review"
	"centrepop/parts/read"
	"centrepop/render/pdf"
	"centrepop/templates"
	"centrepop/templates/draw"
)

// stages runs the pug mill up to each stage, for the benchmarks of the next.
func stages(b *testing.B) (*layout.Worked, *draw.Document) {
	b.Helper()
	job, err := read.Load(pugMill)
	if err != nil {
		b.Fatal(err)
	}
	w, err := layout.Work(job)
	if err != nil {
		b.Fatal(err)
	}
	doc, err := templates.Packet(w.Plan, templates.Options{Paper: w.Plan.Paper})
	if err != nil {
		b.Fatal(err)
	}
	return w, doc
}

func BenchmarkLoad(b *testing.B) {
	b.ReportAllocs()
	for b.Loop() {
		if _, err := read.Load(pugMill); err != nil {
			b.Fatal(err)
		}
	}
}

func BenchmarkResolve(b *testing.B) {
	w, _ := stages(b)
	b.ReportAllocs()
	for b.Loop() {
		if _, err := layout.Resolve(w.Job); err != nil {
			b.Fatal(err)
		}
	}
}

func BenchmarkReview(b *testing.B) {
	w, _ := stages(b)
	b.ReportAllocs()
	for b.Loop() {
		one, err := layout.Work(w.Job) // the machine stands anew
		if err != nil {
			b.Fatal(err)
		}
		review.Review(one)
	}
}

func BenchmarkPacket(b *testing.B) {
	w, _ := stages(b)
	pl := w.Plan
	b.ReportAllocs()
	for b.Loop() {
		if _, err := templates.Packet(pl, templates.Options{Paper: pl.Paper}); err != nil {
			b.Fatal(err)
		}
	}
}

func BenchmarkPDF(b *testing.B) {
	_, doc := stages(b)
	b.ReportAllocs()
	for b.Loop() {
		if err := pdf.Write(io.Discard, doc); err != nil {
			b.Fatal(err)
		}
	}
}

// BenchmarkRun is the whole program, from the YAML to the file on the disk.
func BenchmarkRun(b *testing.B) {
	out := filepath.Join(b.TempDir(), "packet.pdf")
	b.ReportAllocs()
	for b.Loop() {
		if status := run([]string{"sheets", pugMill, "-o", out}, io.Discard, io.Discard); status != statusDone {
			b.Fatalf("exit status %d", status)
		}
	}
}
