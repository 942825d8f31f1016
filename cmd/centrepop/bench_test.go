//go:build unix

package main

import (
	"io"
	"path/filepath"
	"testing"

	"centrepop/layout"
	"centrepop/layout/plan"
	"centrepop/layout/review"
	"centrepop/parts"
	"centrepop/render/pdf"
	"centrepop/templates"
	"centrepop/templates/draw"
)

// stages runs the pug mill up to each stage, for the benchmarks of the next.
func stages(b *testing.B) (*parts.Job, *plan.Plan, *draw.Document) {
	b.Helper()
	job, err := parts.Load(pugMill)
	if err != nil {
		b.Fatal(err)
	}
	pl, err := layout.Resolve(job)
	if err != nil {
		b.Fatal(err)
	}
	doc, err := templates.Packet(pl, templates.Options{Paper: pl.Paper})
	if err != nil {
		b.Fatal(err)
	}
	return job, pl, doc
}

func BenchmarkLoad(b *testing.B) {
	b.ReportAllocs()
	for b.Loop() {
		if _, err := parts.Load(pugMill); err != nil {
			b.Fatal(err)
		}
	}
}

func BenchmarkResolve(b *testing.B) {
	job, _, _ := stages(b)
	b.ReportAllocs()
	for b.Loop() {
		if _, err := layout.Resolve(job); err != nil {
			b.Fatal(err)
		}
	}
}

func BenchmarkReview(b *testing.B) {
	job, pl, _ := stages(b)
	b.ReportAllocs()
	for b.Loop() {
		review.Review(job, pl)
	}
}

func BenchmarkPacket(b *testing.B) {
	_, pl, _ := stages(b)
	b.ReportAllocs()
	for b.Loop() {
		if _, err := templates.Packet(pl, templates.Options{Paper: pl.Paper}); err != nil {
			b.Fatal(err)
		}
	}
}

func BenchmarkPDF(b *testing.B) {
	_, _, doc := stages(b)
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
