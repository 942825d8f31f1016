package part

import (
	"math"
	"strings"
	"testing"

	"centrepop/layout/plan"
	"centrepop/parts/geom"

	"github.com/tdewolff/canvas"
)

const auger = `part: auger
kind: flight
material: S235
stock: {sheet: 6, cut: laser}
flight: {shaft: 60, outside: 160, pitch: 120, thickness: 6, length: 300}
`

// The ring of this flight is 76.18 inside and 176.18 outside with a gap of 23.87°
// (see package flight); 300 of a pitch of 120 are two turns and a half, so three
// rings, the last half of its 336.13°.
func TestFlight(t *testing.T) {
	t.Parallel()
	m := work(t, "mm", auger)
	d := m.Developments[0]
	if d.Copies != 3 || d.NoTemplate != "" || !strings.Contains(strings.Join(d.Notes, ""), "cut to 168.1°") {
		t.Errorf("%d rings, %q, %q", d.Copies, d.NoTemplate, d.Notes)
	}
	edge := geom.NewContour(canvas.MustParseSVGPath(string(d.Lines[0].Path)))
	r, w := 76.178/2, 50.0
	sweep := (360 - 23.870) * math.Pi / 180
	if want := sweep / 2 * w * (2*r + w); math.Abs(math.Abs(edge.AreaMm2())-want) > 1 || math.Abs(d.AreaMm2-want) > 1 {
		t.Errorf("area %v and %v, want %v", edge.AreaMm2(), d.AreaMm2, want)
	}
	if b := d.MaxMm.XMm - d.MinMm.XMm; math.Abs(b-176.178) > 0.01 {
		t.Errorf("ring %v wide", b)
	}
	// Two and a half times the area, of 6 mm.
	if want := 2.5 * d.AreaMm2 * 6 * 7.85e-6; math.Abs(m.Out.MassKg-want) > 1e-6 {
		t.Errorf("%v kg, want %v", m.Out.MassKg, want)
	}
	seam, turns := m.HelixMm()
	if want := 2.5 * math.Hypot(math.Pi*60, 120); turns != 2.5 || math.Abs(seam-want) > 1e-9 {
		t.Errorf("seam %v in %v turns, want %v", seam, turns, want)
	}
	// Cut at 0, 60, 120 … 300: on the axis' two sides in turn.
	if v := m.Out.Profiles[0]; len(v.Metal) != 6 || len(v.Dims) != 4 {
		t.Errorf("%d cuts, %d lengths", len(v.Metal), len(v.Dims))
	}
}

// A right-hand flight comes towards the eye going back from the gap's left edge.
func TestFlightHand(t *testing.T) {
	t.Parallel()
	for text, want := range map[string]string{auger: "right towards you", strings.Replace(auger, "pitch:", "hand: left, pitch:", 1): "right away from you"} {
		ops := work(t, "mm", text).Out.Operations
		if do := ops[1].Do[0]; !strings.Contains(do, want) || len(ops) != 4 {
			t.Errorf("%q lacks %q, %d operations", do, want, len(ops))
		}
	}
	// A single turn needs no joining, and none is shortened.
	ops := work(t, "mm", strings.Replace(auger, ", length: 300", "", 1)).Out.Operations
	if len(ops) != 3 || ops[0].Title != "Cut the flat ring" || len(ops[0].Do) != 1 {
		t.Errorf("%+v", ops)
	}
	// A turn and a half, 540°, takes two rings of 336.13°, which are joined.
	ops = work(t, "mm", strings.Replace(auger, "length: 300", "length: 180", 1)).Out.Operations
	if len(ops) != 4 || ops[0].Title != "Cut 2 flat rings" || ops[2].Title != "Join the turns end to end" {
		t.Errorf("%+v", ops)
	}
}

// TestFlightMetal: a blade of 60 to 160 has metal from 30 to 80 off its axis, over its 300.
func TestFlightMetal(t *testing.T) {
	t.Parallel()
	m := work(t, "mm", auger)
	for radius, stretches := range map[float64]int{29.9: 0, 30: 1, 80: 1, 80.1: 0} {
		if got := m.MetalAt(radius); len(got) != stretches || stretches > 0 && got[0] != (geom.Span{ToMm: 300}) {
			t.Errorf("at %g: %v", radius, got)
		}
	}
}

// TestClockList: eight clock angles are told, of more the first eight.
func TestClockList(t *testing.T) {
	t.Parallel()
	rows := make([]plan.RadialRow, 9)
	for i := range rows {
		rows[i].ClockDeg = 40 * float64(i)
	}
	for n, want := range map[int]string{1: "0°", 8: "280°", 9: "280°, …"} {
		if got := clockList(rows[:n]); !strings.HasSuffix(got, want) || strings.Count(got, "°") != min(n, 8) {
			t.Errorf("%d: %s", n, got)
		}
	}
}

func TestFlightCut(t *testing.T) {
	t.Parallel()
	job := load(t, "mm", auger)
	p, err := CutProfile(job, "auger", CutOptions{})
	if err != nil {
		t.Fatal(err)
	}
	if p.Copies != 3 || len(p.Contours) != 1 || len(p.Lines) != 1 || p.ThicknessMm != 6 || math.Abs(p.BlankXMm-176.178) > 0.01 {
		t.Errorf("%+v", p)
	}
}

// TestFlightKerf: a gap that the kerf closes is no gap.
func TestFlightKerf(t *testing.T) {
	t.Parallel()
	job := load(t, "mm", strings.Replace(auger, "pitch: 120", "pitch: 12", 1))
	if p, err := CutProfile(job, "auger", CutOptions{KerfMm: 3, Compensate: true}); err == nil || p != nil || !strings.Contains(err.Error(), "the kerf cannot be allowed for") {
		t.Errorf("%v, %v", p, err)
	}
	if _, err := CutProfile(job, "auger", CutOptions{KerfMm: 0.1, Compensate: true}); err != nil {
		t.Error(err)
	}
}

func TestFlightRefused(t *testing.T) {
	t.Parallel()
	job := load(t, "mm", strings.Replace(auger, "thickness: 6, length", "thickness: 60, length", 1))
	errs := Work(job, job.Parts[0]).Errs
	if len(errs) != 1 || errs[0].What != "the flight cannot be made: its thickness is 60 mm" || errs[0].Right != "at most 50 mm" {
		t.Errorf("%v", errs)
	}
	if kind := work(t, "mm", auger).Developments[0].Kind; kind != plan.FlightPattern {
		t.Error(kind)
	}
}

// One limit of a size stands everywhere: the length of a flight on the drawing is that of its
// record, ISO 13920 class A, ±1 up to 400.
func TestFlightLimits(t *testing.T) {
	t.Parallel()
	m := work(t, "mm", auger)
	if f := feature(m, "length"); f.Limits != "299.0 – 301.0" {
		t.Errorf("length %s", f.Limits)
	}
}

// TestFlightTemplate: joined paper goes to a ring of 420.
func TestFlightTemplate(t *testing.T) {
	t.Parallel()
	for outside, paper := range map[string]bool{"406.5": true, "407.3": false} {
		d := work(t, "mm", strings.Replace(auger, "outside: 160", "outside: "+outside, 1)).Developments[0]
		if wide := d.MaxMm.XMm - d.MinMm.XMm; math.Abs(wide-largeBlankMm) > 1 || (wide <= largeBlankMm) != paper || (d.NoTemplate == "") != paper {
			t.Errorf("%s: a ring of %g, %q", outside, wide, d.NoTemplate)
		}
	}
}
