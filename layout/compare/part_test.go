package compare

import (
	"errors"
	"fmt"
	"math"
	"os"
	"path/filepath"
	"reflect"
	"strings"
	"testing"

	"centrepop/layout/plan"
	"centrepop/parts"
	"centrepop/parts/read"
)

func demo(t *testing.T, job, part string) (*Part, error) {
	t.Helper()
	j, err := read.Load("../../testdata/" + job + "/job.yaml")
	if err != nil {
		t.Fatal(err)
	}
	return Wanted(j, part)
}

// TestWanted takes the as-cut sizes of the demo parts, worked out by hand from
// their drawings.
func TestWanted(t *testing.T) {
	p, err := demo(t, "pugmill", "barrel-flange")
	if err != nil {
		t.Fatal(err)
	}
	// In 12 mm plate the laser makes no holes under 12 mm. Bore 168.3 less 2 for the lathe; M10 medium clearance 11; M8 tap drill 6.8.
	if len(p.Rounds) != 9 || p.Rounds[0] != (Round{Group: "bore", DiameterMm: 165.3}) {
		t.Fatalf("%+v", p.Rounds)
	}
	if r := p.Rounds[1]; r.DiameterMm != 11 || r.XMm != 55 || math.Abs(r.YMm-95.2628) > 1e-4 {
		t.Errorf("%+v", r)
	}
	if r := p.Rounds[8]; r.DiameterMm != 6.8 || r.YMm != -110 || !r.Later {
		t.Errorf("%+v", r)
	}
	if w, h := p.edge.size(); math.Abs(w-260) > 2e-3 || math.Abs(h-260) > 2e-3 {
		t.Errorf("outline %g × %g", w, h)
	}
	// Holes marked on the back come mirrored; blind ones are told apart.
	p, err = demo(t, "pugmill", "motor-adapter")
	if err != nil {
		t.Fatal(err)
	}
	if len(p.Rounds) != 1+4+4+2 || len(p.Blind) != 2 {
		t.Fatalf("%+v %+v", p.Rounds, p.Blind)
	}
	// 81, 306 from the left and bottom seen on the back of 320 × 314 mm.
	if b := p.Blind[0]; b.Group != "guard" || b.XMm != 79 || b.YMm != 149 {
		t.Errorf("%+v", b)
	}
	p, err = demo(t, "pugmill", "base-plate")
	if err != nil {
		t.Fatal(err)
	}
	if len(p.Slots) != 2 || p.Slots[0].XMm != 170 || p.Slots[0].LengthMm != 40 || len(p.Blind) != 3 {
		t.Errorf("%+v %+v", p.Slots, p.Blind)
	}
	// A blind slot on the back, 60 above the middle: there mirrored.
	if b := p.Blind[2]; b.Group != "tray" || b.XMm != 0 || b.DiameterMm != 9 || math.Abs(math.Abs(b.YMm)-60) > 1e-9 {
		t.Errorf("%+v", b)
	}
	c := p.Slots[0].contour()
	if w, h := c.size(); math.Abs(w-40) > 1e-3 || math.Abs(h-13.5) > 1e-3 {
		t.Errorf("slot of %g × %g", w, h)
	}
	// A part without any hole has its outline all the same.
	if p, err = demo(t, "pugmill", "gusset"); err != nil || len(p.edge.points) < 3 {
		t.Errorf("%v", err)
	}
}

func TestWantedRefused(t *testing.T) {
	if _, err := demo(t, "pugmill", "nothing"); err == nil {
		t.Error("an unknown part is found")
	}
	_, err := demo(t, "pugmill", "auger-shaft")
	var located parts.Errors
	if !errors.As(err, &located) || located[0].File == "" {
		t.Errorf("a shaft is cut from plate: %v", err)
	}
}

// TestSawn: what is sawn is compared as if a laser had cut it, which cuts a hole of 12 in 10 that
// plasma leaves to the drill; an outline is none that
// encloses nothing, or that is no path.
func TestSawn(t *testing.T) {
	t.Parallel()
	var saw, laser *Part
	for cut, into := range map[string]**Part{"saw": &saw, "laser": &laser} {
		job := filepath.Join(t.TempDir(), "job.yaml")
		for name, text := range map[string]string{job: "job: J\nunits: mm\nparts: [base.yaml]\n", filepath.Join(filepath.Dir(job), "base.yaml"): "part: base\nkind: plate\nmaterial: S235\nstock: {plate: 10 mm, cut: " + cut + "}\noutline: {rectangle: [400, 200]}\nholes: [{name: h, at: [[50, 40]], size: 12}]\n"} {
			if err := os.WriteFile(name, []byte(text), 0o600); err != nil {
				t.Fatal(err)
			}
		}
		j, err := read.Load(job)
		if err != nil {
			t.Fatal(err)
		}
		if *into, err = Wanted(j, "base"); err != nil {
			t.Fatal(err)
		}
	}
	if len(saw.Rounds) != 1 || saw.Rounds[0].Later || !reflect.DeepEqual(saw, laser) {
		t.Errorf("sawn %+v, cut by a laser %+v", saw, laser)
	}
	if err := (&Part{Outline: "M0 0L9 0L0 9Z"}).setEdge(); err != nil {
		t.Errorf("a triangle: %v", err)
	}
	for _, outline := range []string{"M0 0L1 1Z", "nonsense"} {
		if err := (&Part{Outline: plan.Contour(outline)}).setEdge(); err == nil {
			t.Errorf("%q is an outline", outline)
		}
	}
}

// TestOwnParts draws every flat part of both demo jobs from what is wanted and
// finds it faultless, and mirrored not.
func TestOwnParts(t *testing.T) {
	for _, job := range []string{"pugmill", "gatejack"} {
		j, err := read.Load("../../testdata/" + job + "/job.yaml")
		if err != nil {
			t.Fatal(err)
		}
		flat := 0
		for _, q := range j.Parts {
			if q.Outline == nil {
				continue
			}
			flat++
			p, err := Wanted(j, q.Name.Value)
			if err != nil {
				t.Errorf("%s: %v", q.Name.Value, err)
				continue
			}
			var b strings.Builder
			fmt.Fprintf(&b, `<svg width="1000mm" height="1000mm" viewBox="-500 -500 1000 1000"><g transform="scale(1 -1)"><path d="%s"/>`, p.Outline)
			for _, r := range p.Rounds {
				fmt.Fprintf(&b, `<circle cx="%g" cy="%g" r="%g"/>`, r.XMm, r.YMm, r.DiameterMm/2)
			}
			for _, s := range p.Slots {
				c := s.contour()
				b.WriteString(`<polygon points="`)
				for _, q := range c.points {
					fmt.Fprintf(&b, "%.4f,%.4f ", q.XMm, q.YMm)
				}
				b.WriteString(`"/>`)
			}
			b.WriteString("</g></svg>")
			r := compared(t, p, b.String())
			if len(r.Findings) > 0 || r.Matched != r.Wanted {
				t.Errorf("%s: %d of %d: %+v", q.Name.Value, r.Matched, r.Wanted, r.Findings)
			}
		}
		if flat < 4 {
			t.Errorf("%s: only %d flat parts", job, flat)
		}
	}
}
