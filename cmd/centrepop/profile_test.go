package main

import (
	"bytes"
	"encoding/xml"
	"fmt"
	"math"
	"os"
	"path/filepath"
	"testing"

	"github.com/tdewolff/canvas"

	"centrepop/render/measure"
)

// profilePDF runs the command and opens what it wrote.
func profilePDF(t *testing.T, args ...string) *measure.Doc {
	t.Helper()
	file := filepath.Join(t.TempDir(), "p.pdf")
	var stdout, stderr bytes.Buffer
	if code := run(append([]string{"profile", "-o", file}, args...), &stdout, &stderr); code != statusDone {
		t.Fatalf("status %d: %s", code, stderr.String())
	}
	data, err := os.ReadFile(file)
	if err != nil {
		t.Fatal(err)
	}
	return measure.Open(t, data)
}

// diameters are those of the full circles of the first page.
func diameters(d *measure.Doc) []float64 {
	var out []float64
	for _, c := range d.Circles(0) {
		out = append(out, c.DiameterMm)
	}
	return out
}

func sameSizes(t *testing.T, what string, got, want []float64) {
	t.Helper()
	if len(got) != len(want) {
		t.Fatalf("%s: %v, want %v", what, got, want)
	}
	for i := range want {
		if math.Abs(got[i]-want[i]) > 0.01 {
			t.Errorf("%s: %v, want %v", what, got, want)
		}
	}
}

// TestProfileMeasured measures the cutting file of the cap ring (sizes from
// its YAML, clearance hole of 1/4 in screws 0.281 in by ASME B18.2.8) as
// printed: inside first, the outline last, page as large as the part and 1 mm
// all round.
func TestProfileMeasured(t *testing.T) {
	t.Parallel()
	const job, in = "../../testdata/gatejack/job.yaml", 25.4
	want := []float64{0.281 * in, 0.281 * in, 0.281 * in, 0.281 * in, 0.281 * in, 0.281 * in, 2.25 * in, 4.5 * in}
	d := profilePDF(t, job, "cap-ring")
	sameSizes(t, "as cut", diameters(d), want)
	if d.Pages() != 1 || d.ScalesWhenPrinted() {
		t.Errorf("%d pages, scaled %t", d.Pages(), d.ScalesWhenPrinted())
	}
	w, h := d.Size(0)
	sameSizes(t, "page", []float64{w, h}, []float64{4.5*in + 2, 4.5*in + 2})
	// The screws stand on their pitch circle of 3-1/2 in.
	centre := measure.Point{X: w / 2, Y: h / 2}
	for i, c := range d.Circles(0)[:6] {
		if r := c.Centre.Dist(centre); math.Abs(r-1.75*in) > 0.01 {
			t.Errorf("screw %d stands %.3f mm from the centre, want %.3f", i+1, r, 1.75*in)
		}
	}

	for i := range want {
		want[i] -= 0.5
	}
	want[len(want)-1] += 1
	sameSizes(t, "with kerf", diameters(profilePDF(t, job, "cap-ring", "--kerf", "0.5 mm", "--compensate")), want)
}

// TestProfileSVG reads the cutting file of the cap ring back: groups and
// nothing else, closed contours with the areas of the circles they stand for,
// the largest last, and marks at the places of the tapped holes.
func TestProfileSVG(t *testing.T) {
	t.Parallel()
	file := filepath.Join(t.TempDir(), "p.svg")
	var stdout, stderr bytes.Buffer
	if code := run([]string{"profile", "../../testdata/gatejack/job.yaml", "cap-ring", "-o", file}, &stdout, &stderr); code != statusDone {
		t.Fatalf("status %d: %s", code, &stderr)
	}
	data, err := os.ReadFile(file)
	if err != nil {
		t.Fatal(err)
	}
	type path struct {
		D string `xml:"d,attr"`
	}
	var doc struct {
		Width  string `xml:"width,attr"`
		Groups []struct {
			ID    string `xml:"id,attr"`
			Paths []path `xml:"path"`
		} `xml:"g"`
	}
	if err := xml.Unmarshal(data, &doc); err != nil {
		t.Fatal(err)
	}
	const in = 25.4
	if want := fmt.Sprintf("%gmm", 4.5*in+2); doc.Width != want {
		t.Errorf("width %s, want %s", doc.Width, want)
	}
	if len(doc.Groups) != 2 || doc.Groups[0].ID != "cut" || doc.Groups[1].ID != "mark" {
		t.Fatalf("groups %v", doc.Groups)
	}
	want := []float64{0.281 * in, 0.281 * in, 0.281 * in, 0.281 * in, 0.281 * in, 0.281 * in, 2.25 * in, 4.5 * in}
	var got []float64
	for _, p := range doc.Groups[0].Paths {
		contour, err := canvas.ParseSVGPath(p.D)
		if err != nil || !contour.Closed() || len(contour.Split()) != 1 {
			t.Fatalf("%s: not one closed contour: %v", p.D, err)
		}
		area, pts := 0.0, contour.Flatten(1e-4).Coords()
		for i, a := range pts {
			b := pts[(i+1)%len(pts)]
			area += (a.X*b.Y - a.Y*b.X) / 2
		}
		got = append(got, 2*math.Sqrt(math.Abs(area)/math.Pi))
	}
	sameSizes(t, "diameters by area", got, want)
	// Two tapped holes at clock 30 and 210 on the circle of 3-1/2 in, and TOP.
	if n := len(doc.Groups[1].Paths); n != 3 {
		t.Fatalf("%d marks, want 3", n)
	}
	middle := 4.5*in/2 + 1
	for i, clock := range []float64{30, 210} {
		mark, err := canvas.ParseSVGPath(doc.Groups[1].Paths[i].D)
		if err != nil {
			t.Fatal(err)
		}
		b := mark.Bounds()
		sin, cos := math.Sincos(clock * math.Pi / 180)
		at := []float64{(b.X0 + b.X1) / 2, (b.Y0 + b.Y1) / 2}
		sameSizes(t, "mark", at, []float64{middle + 1.75*in*sin, middle - 1.75*in*cos}) // y down
	}
}

// TestProfileClosed requires every contour of the flat parts of both jobs to
// be closed and the outline to be the last of them.
func TestProfileClosed(t *testing.T) {
	t.Parallel()
	job := partsAlone(t, pugMill)
	for _, part := range []string{"gusset", "guard-bracket", "lifting-link", "inlet-flange", "housing-plate"} {
		d := profilePDF(t, job, part, "--cut", "waterjet", "--kerf", "0.8", "--compensate")
		width, height := d.Size(0)
		closed := 0
		var last [4]float64
		for _, path := range d.Paths(0) {
			if !path[len(path)-1].Close {
				continue // a mark
			}
			closed++
			last = [4]float64{width, height, 0, 0}
			for _, s := range path {
				for i := range 65 {
					at := s.At(float64(i) / 64)
					last = [4]float64{min(last[0], at.X), min(last[1], at.Y), max(last[2], at.X), max(last[3], at.Y)}
				}
			}
		}
		if closed < 3 {
			t.Errorf("%s: %d closed contours", part, closed)
		}
		sameSizes(t, part+" outline", last[:], []float64{1, 1, width - 1, height - 1})
	}
}

// TestShellMeasured measures the blank of the drip ring (Ø7-1/4 in of 0.060 in sheet, lap 3/8 in, seam at 90°): it goes
// once round the middle of its wall, and its hole at 180° lies a quarter turn right of the left edge, 1/4 in from the back.
func TestShellMeasured(t *testing.T) {
	t.Parallel()
	const in = 25.4
	girth := math.Pi * (7.25 - 0.06) * in
	d := profilePDF(t, "../../testdata/gatejack/job.yaml", "drip-ring")
	w, h := d.Size(0)
	sameSizes(t, "page", []float64{w, h}, []float64{girth + 0.375*in + 2, 1.25*in + 2})
	sameSizes(t, "holes", diameters(d), []float64{0.375 * in})
	hole := d.Circles(0)[0].Centre
	sameSizes(t, "place", []float64{hole.X, hole.Y}, []float64{1 + girth/4, 1 + (1.25-0.25)*in})
	sameSizes(t, "inside the kerf", diameters(profilePDF(t, "../../testdata/gatejack/job.yaml", "drip-ring", "--kerf", "0.5 mm", "--compensate")), []float64{0.375*in - 0.5})
}
