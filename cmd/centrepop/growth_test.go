//go:build unix

package main

import (
	"bytes"
	"fmt"
	"io"
	"math"
	"path/filepath"
	"strings"
	"testing"

	"github.com/klauspost/compress/zlib"
)

// sized makes a job of n of a thing: its part files by name, and its joints.
type sized struct {
	name string
	make func(n int) (files map[string]string, joints string)
}

// The things whose number may grow. Each is a job as a shop could write it.
var sizedJobs = []sized{
	{"holes-on-circles", func(n int) (map[string]string, string) {
		var b strings.Builder
		outside := 100.0
		for k := 0; k*1000 < n; k++ {
			count := min(1000, n-k*1000)
			pcd := math.Max(outside+40, float64(count)*8/math.Pi)
			outside = pcd + 40
			fmt.Fprintf(&b, "  - {name: ring-%d, circle: {pcd: %.1f, count: %d}, size: 3 mm}\n", k, pcd, count)
		}
		return map[string]string{"disc": fmt.Sprintf("kind: flange\nstock: {plate: 10 mm}\noutline: {circle: %.0f}\nholes:\n%s", outside, &b)}, ""
	}},
	{"holes-in-grid", func(n int) (map[string]string, string) {
		side := int(math.Sqrt(float64(n)))
		var b strings.Builder
		for row := range side {
			fmt.Fprintf(&b, "  - {name: row-%d, grid: {columns: %d, rows: 1, pitch: [12, 12], centre: [0, %d]}, size: 5 mm}\n", row, n/side, row*12-side*6)
		}
		return map[string]string{"sieve": fmt.Sprintf("kind: plate\nstock: {plate: 10 mm}\noutline: {square: %d}\nholes:\n%s", n/side*12+60, &b)}, ""
	}},
	{"openings-in-tube", func(n int) (map[string]string, string) {
		var clocks []string
		for i := range 100 {
			clocks = append(clocks, fmt.Sprintf("%.1f", float64(i)*3.6))
		}
		var b strings.Builder
		for ring := range n / 100 {
			fmt.Fprintf(&b, "  - {name: ring-%d, clock: [%s], axial: %d, from: front, size: 8 mm}\n", ring, strings.Join(clocks, ", "), 50+ring*25)
		}
		return map[string]string{"drum": fmt.Sprintf("kind: tube\ntube: {outside: 1000, wall: 6, length: %d}\nradial:\n%s", n/4+100, &b)}, ""
	}},
	{"parts-in-pairs", func(n int) (map[string]string, string) {
		files := map[string]string{}
		var joints strings.Builder
		for i := range n {
			files[fmt.Sprintf("lid-%d", i)] = "kind: plate\nstock: {plate: 10 mm}\noutline: {circle: 200}\nholes: [{name: bolts, circle: {pcd: 150, count: 4}, size: M10 clearance}]\n"
			if i%2 == 1 {
				fmt.Fprintf(&joints, "  - {name: pair-%d, bolt: {through: lid-%d.bolts, into: lid-%d.bolts, bolt: M10 8.8, nut: yes}, face: back-on-front}\n", i, i-1, i)
			}
		}
		return files, "joints:\n" + joints.String()
	}},
	{"lugs-on-a-plate", func(n int) (map[string]string, string) {
		side := int(math.Ceil(math.Sqrt(float64(n))))
		var joints strings.Builder
		for i := range n {
			fmt.Fprintf(&joints, "  - {name: lug-%d, weld: {part: 'lid-1#%d.outline', to: lid-0.outline, type: fillet, size: 4 mm, length: 100 mm, sides: 2}, place: {on: front, with: bottom, from-left: %d mm, from-bottom: %d mm, front: up}}\n", i, i+1, 50+i%side*150, 50+i/side*100)
		}
		return map[string]string{
			"lid-0": fmt.Sprintf("kind: plate\nstock: {plate: 20 mm}\noutline: {rectangle: [%d, %d]}\n", side*150+100, side*100+100),
			"lid-1": fmt.Sprintf("kind: plate\nquantity: %d\nstock: {plate: 8 mm}\noutline: {rectangle: [100, 60]}\n", n),
		}, "joints:\n" + joints.String()
	}},
}

// write puts the job of that size into a folder.
func (s sized) write(t testing.TB, n int) string {
	t.Helper()
	dir := t.TempDir()
	files, joints := s.make(n)
	var names []string
	for i := range n { // in the order of their numbers, as the joints are
		if name := fmt.Sprintf("lid-%d", i); files[name] != "" {
			names = append(names, name+".yaml")
		}
	}
	for name, text := range files {
		write(t, filepath.Join(dir, name+".yaml"), "part: "+name+"\nmaterial: S235\ntop: punch\n"+text)
		if len(files) == 1 {
			names = append(names, name+".yaml")
		}
	}
	job := filepath.Join(dir, "job.yaml")
	write(t, job, "job: "+s.name+"\nunits: mm\ntolerance: m\nparts:\n  - "+strings.Join(names, "\n  - ")+"\n"+joints)
	return job
}

// BenchmarkGrowth runs review and sheets on jobs of rising size and reports
// the exponent of their growth: the slope of the logarithm of the time over
// that of the size, by least squares. 1 is linear.
func BenchmarkGrowth(b *testing.B) {
	for _, s := range sizedJobs {
		sizes := []int{500, 1000, 2000, 5000}
		switch s.name {
		case "parts-in-pairs":
			sizes = []int{200, 500, 1000, 2000}
		case "lugs-on-a-plate":
			sizes = []int{50, 100, 200, 500}
		}
		jobs := make([]string, len(sizes))
		for i, n := range sizes {
			jobs[i] = s.write(b, n)
		}
		for _, command := range []string{"review", "sheets"} {
			b.Run(s.name+"/"+command, func(b *testing.B) { growth(b, command, jobs, sizes) })
		}
	}
}

// growth runs a command on each job and reports what it computed.
func growth(b *testing.B, command string, jobs []string, sizes []int) {
	seconds := make([]float64, len(sizes))
	for b.Loop() {
		for i, job := range jobs {
			args := []string{command, job}
			if command == "sheets" {
				args = append(args, "-o", filepath.Join(filepath.Dir(job), "out.pdf"))
			}
			_, cpu := cost(b, func() error {
				var stderr bytes.Buffer
				if status := run(args, io.Discard, &stderr); status == statusBad {
					return fmt.Errorf("%v: %s", args, &stderr)
				}
				return nil
			})
			seconds[i] += cpu
		}
	}
	b.ReportMetric(slope(sizes, seconds), "exponent")
	for i, n := range sizes {
		b.ReportMetric(seconds[i]/float64(b.N), fmt.Sprintf("s/%d", n))
	}
}

// slope fits log y = a + slope · log x.
func slope(xs []int, ys []float64) float64 {
	var n, sx, sy, sxx, sxy float64
	for i, x := range xs {
		lx, ly := math.Log(float64(x)), math.Log(ys[i])
		n, sx, sy, sxx, sxy = n+1, sx+lx, sy+ly, sxx+lx*lx, sxy+lx*ly
	}
	return (n*sxy - sx*sy) / (n*sxx - sx*sx)
}

// TestGrowing runs the jobs of the growth benchmark once, at a size that
// tests can afford: they print, and nothing in them stops the work.
func TestGrowing(t *testing.T) {
	t.Parallel()
	for _, s := range sizedJobs {
		job := s.write(t, 100)
		var stdout, stderr bytes.Buffer
		if status := run([]string{"review", job}, &stdout, &stderr); status != statusDone && status != statusFindings || !strings.HasPrefix(lastLine(stdout.String()), "0 to stop at") {
			t.Errorf("%s: status %d\n%s%s", s.name, status, &stdout, &stderr)
		}
		if doc := opened(t, "sheets", job); doc.Pages() < 5 {
			t.Errorf("%s has %d pages", s.name, doc.Pages())
		}
	}
}

func lastLine(text string) string {
	lines := strings.Split(strings.TrimSpace(text), "\n")
	return lines[len(lines)-1]
}

// BenchmarkLevel compresses the pages of the pug mill at each level, with one
// compressor, and reports the bytes: by it the level of package pdf is chosen.
func BenchmarkLevel(b *testing.B) {
	var pages [][]byte
	for part := range bytes.SplitSeq(made(b, "sheets", pugMill), []byte("<</Filter /FlateDecode /Length ")) {
		_, rest, ok := bytes.Cut(part, []byte("\nstream\n"))
		if !ok {
			continue
		}
		r, err := zlib.NewReader(bytes.NewReader(rest))
		if err != nil {
			continue // a stream that is not compressed
		}
		page, err := io.ReadAll(r)
		if err != nil {
			b.Fatal(err)
		}
		pages = append(pages, page)
	}
	if len(pages) < 50 {
		b.Fatalf("only %d pages", len(pages))
	}
	for level := zlib.BestSpeed; level <= zlib.BestCompression; level++ {
		b.Run(fmt.Sprint(level), func(b *testing.B) {
			size := 0
			var out bytes.Buffer
			z, err := zlib.NewWriterLevel(&out, level)
			if err != nil {
				b.Fatal(err)
			}
			for b.Loop() {
				size = 0
				for _, page := range pages {
					out.Reset()
					z.Reset(&out)
					if _, err := z.Write(page); err != nil {
						b.Fatal(err)
					}
					if err := z.Close(); err != nil {
						b.Fatal(err)
					}
					size += out.Len()
				}
			}
			b.ReportMetric(float64(size)/1e6, "MB")
		})
	}
}
