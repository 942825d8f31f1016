package part

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"centrepop/layout/develop"
	"centrepop/layout/plan"
	"centrepop/layout/words"
	"centrepop/parts"

	"github.com/tdewolff/canvas"
)

// TestPatternNumbers: lengths of a pattern to 0.01 mm or 0.001 in, areas in cm² or
// square inches (25.4 mm to the inch), never −0.
func TestPatternNumbers(t *testing.T) {
	t.Parallel()
	for _, c := range []struct {
		units parts.Units
		v     float64
		unit  string
		want  string
	}{
		{parts.Millimetres, 12.345678, "mm", "12.35"}, {parts.Millimetres, -0.004, "mm", "0.00"}, {parts.Millimetres, -0.006, "mm", "-0.01"}, {parts.Millimetres, 7, "mm", "7.00"},
		{parts.Inches, 25.4, "mm", "1.000"}, {parts.Inches, 40, "mm", "1.575"}, {parts.Inches, -0.0004, "mm", "0.000"},
		{parts.Millimetres, 12.3456, "deg", "12.35°"}, {parts.Millimetres, 12345, "mm2", "123.5 cm²"}, {parts.Inches, 12345, "mm2", "19.1 sq in"}, {parts.Inches, 2 * 645.16, "mm2", "2 sq in"},
		{parts.Millimetres, 1.23456, "", "1.235"},
	} {
		s := &Sizes{W: words.Writer{Units: c.units}, Job: &parts.Job{Units: c.units}}
		if got := s.inUnit(c.v, c.unit); got != c.want {
			t.Errorf("%v %s: %q, want %q", c.v, c.unit, got, c.want)
		}
	}
}

// TestRowUnits: a row with a unit of its own is written in it, in the job's units.
func TestRowUnits(t *testing.T) {
	t.Parallel()
	list := []develop.Table{{Columns: []develop.Column{{Name: "angle", Unit: "deg"}}, Rows: []develop.Row{{Label: "edge", Values: []float64{914.583}, Unit: "mm"}, {Label: "bend", Values: []float64{17.64}}}}}
	for units, want := range map[parts.Units]string{parts.Millimetres: "914.58", parts.Inches: "36.007"} {
		s := &Sizes{W: words.Writer{Units: units}, Job: &parts.Job{Units: units}}
		if rows := s.tables(list)[0].Rows; rows[0][1] != want || rows[1][1] != "17.64°" {
			t.Errorf("%v: %v, want %s and 17.64°", units, rows, want)
		}
	}
}

// TestNumbering: operations and features of every part are numbered from 1 without
// a gap, and what refers to a feature refers to one that is there.
func TestNumbering(t *testing.T) {
	t.Parallel()
	for _, name := range []string{"pugmill", "gatejack"} {
		job := demo(t, name)
		for _, p := range job.Parts {
			m := Work(job, p)
			if len(m.Errs) > 0 {
				t.Fatal(m.Errs)
			}
			for i, f := range m.Features {
				if f.N != i+1 {
					t.Errorf("%s: feature %d is number %d", p.Name.Value, i+1, f.N)
				}
			}
			for i, o := range m.Out.Operations {
				if o.N != i+1 {
					t.Errorf("%s: operation %d is number %d", p.Name.Value, i+1, o.N)
				}
				for _, ref := range o.Refs {
					if ref < 1 || ref > len(m.Features) {
						t.Errorf("%s: operation %d is of feature %d", p.Name.Value, o.N, ref)
					}
				}
			}
			for _, c := range m.Out.Checks {
				if c.Ref < 0 || c.Ref > len(m.Features) {
					t.Errorf("%s: %s is of feature %d", p.Name.Value, c.What, c.Ref)
				}
			}
		}
	}
}

// TestFlightLastLine: the line that ends the last ring runs from its inside to its
// outside, 168.07° from the gap's right edge, which is 11.94° from TOP.
func TestFlightLastLine(t *testing.T) {
	t.Parallel()
	d := work(t, "mm", auger).Developments[0]
	last := d.Lines[len(d.Lines)-1]
	c := canvas.MustParseSVGPath(string(last.Path)).Coords()
	for i, want := range []float64{76.178 / 2, 176.178 / 2} {
		deg := math.Mod(math.Atan2(c[i].X, c[i].Y)*180/math.Pi+360, 360)
		if r := math.Hypot(c[i].X, c[i].Y); math.Abs(r-want) > 1e-3 || math.Abs(deg-(23.87/2+336.13/2)) > 0.01 {
			t.Errorf("end %d at %g, %g°, want %g", i, r, deg, want)
		}
	}
	if l := d.Labels[len(d.Labels)-1]; !strings.HasPrefix(l.Text, "last of ") || !strings.HasSuffix(l.Text, ": cut here") {
		t.Errorf("%+v", d.Labels)
	}
	for long, cut := range map[string]bool{"112": true, "119.9": true, "120": false} {
		if d := work(t, "mm", strings.Replace(auger, "length: 300", "length: "+long, 1)).Developments[0]; d.Copies != 1 || (len(d.Notes) > 0) != cut {
			t.Errorf("%s long: %d rings, %q", long, d.Copies, d.Notes)
		}
	}
	if box := d.MaxMm; math.Abs(box.XMm-176.178/2) > 1e-3 || last.Role != "division" {
		t.Errorf("%+v %s", box, last.Role)
	}
}

// TestFoldedTemplate: the blank's template says its own sizes and lists no more than
// four places on a flange.
func TestFoldedTemplate(t *testing.T) {
	t.Parallel()
	m := work(t, "mm", tray)
	d := m.Developments[0]
	want := []plan.PatternValue{{Name: "width", Text: "221.16"}, {Name: "height", Text: "184.32"}} // 200 + 25 − 3.8374, 120 + 40 − 3.8374 + 30 − 1.8437
	if len(d.Sizes) < 2 || d.Sizes[0] != want[0] || d.Sizes[1] != want[1] || math.Abs(d.MaxMm.XMm-d.MinMm.XMm-221.1626) > 1e-3 {
		t.Errorf("%v in %v to %v", d.Sizes, d.MinMm, d.MaxMm)
	}
	for n := 3; n <= 6; n++ {
		var at []string
		for i := range n {
			at = append(at, fmt.Sprintf("[%d, 20]", -60+20*i))
		}
		m := work(t, "mm", strings.Replace(tray, "[[-30, 20]], size: 20 mm", "["+strings.Join(at, ", ")+"], size: 6 mm", 1))
		s := ""
		for i := range m.Groups {
			if m.Groups[i].Name.Value == "gland" {
				s = m.form.where(m.Numbered, &m.Groups[i])
			}
		}
		list := "(-60, 20) (-40, 20) (-20, 20)"
		if n > 3 {
			list += " (0, 20)"
		}
		if n > 4 {
			list += " …"
		}
		if !strings.Contains(s, list) || n < 5 && strings.Contains(s, list+" …") || strings.Contains(s, "(20, 20)") {
			t.Errorf("%d holes: %q is not in\n%s", n, list, s)
		}
	}
}

// TestThreadAfterHead: a thread whose only neighbour stands before it runs out at
// that.
func TestThreadAfterHead(t *testing.T) {
	t.Parallel()
	const pin = "part: pin\nkind: shaft\nmaterial: S235\nstock: {round: 45 mm}\nprofile:\n  outside:\n    - {name: head, diameter: SEAT, length: 20}\n    - {name: end, thread: M30x1.5, length: 40}\n"
	for seat, want := range map[string]string{"40": "ends 4.5 mm from the shoulder at most", "30": "ends 4.5 mm from head at most", "28": ""} {
		s := lines(work(t, "mm", strings.Replace(pin, "SEAT", seat, 1)))
		if want == "" && strings.Contains(s, "run out") || !strings.Contains(s, want) {
			t.Errorf("Ø%s: %q in\n%s", seat, want, s)
		}
	}
}

// TestWrapSeats: what the square edge of a wrap is set to, from either end.
func TestWrapSeats(t *testing.T) {
	t.Parallel()
	dia := map[string]float64{"small": 30, "body": 40, "large": 60}
	for _, c := range []struct {
		order        string
		edge         parts.Face
		seat, beyond string
	}{
		{"body", parts.Front, "level with the front face", "to the back"}, {"body", parts.Back, "level with the back face", "to the front"},
		{"large body", parts.Front, "against the shoulder of large, on the front side", "to the back"}, {"large body", parts.Back, "level with the back face", "to the front"},
		{"body large", parts.Back, "against the shoulder of large, on the back side", "to the front"}, {"body large", parts.Front, "level with the front face", "to the back"},
		{"small body", parts.Front, "level with the front end of body", "to the back"}, {"small body large", parts.Back, "against the shoulder of large, on the back side", "to the front"},
		{"large body small", parts.Back, "level with the back end of body", "to the front"},
	} {
		text := "part: p\nkind: shaft\nprofile:\n  outside:\n"
		for _, name := range strings.Fields(c.order) {
			text += fmt.Sprintf("    - {name: %s, diameter: %g, length: 40}\n", name, dia[name])
		}
		m := work(t, "mm", text)
		seat, beyond := m.wrapSeat(wrapped{Step: m.StepNamed("body"), edge: c.edge})
		if seat != c.seat || beyond != c.beyond {
			t.Errorf("%s from the %s: %q, %q", c.order, c.edge, seat, beyond)
		}
	}
}

// TestFarFromTheKey: limits of a keyway more than a tenth off the key's width are a
// slip of the pen, at either end.
func TestFarFromTheKey(t *testing.T) {
	t.Parallel()
	for limits, far := range map[string]bool{"[10.9, 10.99]": false, "[9.01, 9.1]": false, "[10.9, 11.1]": true, "[8.9, 9.1]": true, "[11.1, 11.2]": true} {
		job := load(t, "mm", strings.Replace(keyShaft, "KEY", "in: seat, length: 40, fit: {limits: "+limits+"}", 1))
		m := Work(job, job.Parts[0])
		if got := len(m.Errs) > 0 && strings.Contains(m.Errs[0].What, "far from the key's width of 10"); got != far {
			t.Errorf("%s: %v %v", limits, got, m.Errs)
		}
	}
}

// TestLargeBlank: a straight cone over 420 mm is set out with the trammel, a wrap
// with one place alone by its arc.
func TestLargeBlank(t *testing.T) {
	t.Parallel()
	for _, c := range []struct {
		d     plan.Development
		lean  float64
		least bool // a template is worth it
	}{
		{plan.Development{Kind: plan.ConePattern, MaxMm: plan.XY{XMm: 420, YMm: 100}}, 0, true}, {plan.Development{Kind: plan.ConePattern, MaxMm: plan.XY{XMm: 421, YMm: 100}}, 0, false},
		{plan.Development{Kind: plan.ConePattern, MinMm: plan.XY{YMm: -300}, MaxMm: plan.XY{XMm: 100, YMm: 121}}, 0, false}, {plan.Development{Kind: plan.ConePattern, MinMm: plan.XY{XMm: 200}, MaxMm: plan.XY{XMm: 500, YMm: 100}}, 0, true},
		{plan.Development{Kind: plan.ConePattern, MaxMm: plan.XY{XMm: 500, YMm: 100}}, 12, true},
		{plan.Development{Kind: plan.WrapPattern, Marks: make([]plan.PatternMark, 1)}, 0, false}, {plan.Development{Kind: plan.WrapPattern, Marks: make([]plan.PatternMark, 2)}, 0, true},
	} {
		d := &shaper{Shape: &Shape{Sizes: &Sizes{form: &cone{in: &parts.Frustum{Offset: parts.Length{Mm: c.lean}}}}, Developments: []plan.Development{c.d}}}
		d.templatePolicy()
		if got := d.Developments[0].NoTemplate == ""; got != c.least {
			t.Errorf("%+v, offset %g: %q", c.d, c.lean, d.Developments[0].NoTemplate)
		}
	}
}

// TestFlightView: the cut of a flight shows it every half turn, above and below in
// turn, as thick as it is and from the shaft to the outside, none beyond its ends.
func TestFlightView(t *testing.T) {
	t.Parallel()
	v := work(t, "mm", auger).Out.Profiles[0]
	for k, metal := range v.Metal {
		b := canvas.MustParseSVGPath(string(metal)).Bounds()
		z, low, high := min(max(float64(60*k), 3), 297), 30.0, 80.0 // 0 and 300 lie within the ends
		if k%2 == 1 {
			low, high = -80, -30
		}
		if math.Abs((b.X0+b.X1)/2-z) > 1e-6 || math.Abs(b.W()-6) > 1e-6 || math.Abs(b.Y0-low) > 1e-6 || math.Abs(b.Y1-high) > 1e-6 {
			t.Errorf("cut %d is %v, want %v at %v to %v", k, b, z, low, high)
		}
	}
	at := func(x, y float64) plan.XY { return plan.XY{XMm: x, YMm: y} }
	for i, want := range []plan.FoldLength{
		{FromMm: at(0, 80), ToMm: at(300, 80), Out: at(0, 1), Text: "300"}, {FromMm: at(0, -80), ToMm: at(0, 80), Out: at(-1, 0), Text: "Ø160"},
		{FromMm: at(300, -30), ToMm: at(300, 30), Out: at(1, 0), Text: "Ø60"}, {FromMm: at(0, -80), ToMm: at(120, -80), Out: at(0, -1), Text: "pitch 120"},
	} {
		got := v.Dims[i]
		if got.FromMm != want.FromMm || got.ToMm != want.ToMm || got.Out != want.Out || got.Text != want.Text {
			t.Errorf("length %d: %+v, want %+v", i, got, want)
		}
	}
	if v.MinMm != at(0, -80) || v.MaxMm != at(300, 80) {
		t.Errorf("from %v to %v", v.MinMm, v.MaxMm)
	}
}

// TestBalloonsOnThePart: the place that a feature's leader ends at lies on the part:
// within its section, of what is on a face within that face.
func TestBalloonsOnThePart(t *testing.T) {
	t.Parallel()
	check := func(m *Model, name string) {
		s := m.Out.Section
		for _, f := range m.Features {
			if f.Face == "" && s != nil && m.Part.Outline == nil && (f.Balloon.XMm < -1e-9 || f.Balloon.XMm > s.LengthMm+1e-9 || math.Abs(f.Balloon.YMm) > s.MaxMm+1e-9) {
				t.Errorf("%s, %s: %v in a section of %v by %v", name, f.Name, f.Balloon, s.LengthMm, s.MaxMm)
			}
			for _, face := range m.Faces {
				if f.Face == face.Face && (f.Balloon.XMm < face.MinMm.XMm-1e-9 || f.Balloon.XMm > face.MaxMm.XMm+1e-9 || f.Balloon.YMm < face.MinMm.YMm-1e-9 || f.Balloon.YMm > face.MaxMm.YMm+1e-9) {
					t.Errorf("%s, %s: %v on a face from %v to %v", name, f.Name, f.Balloon, face.MinMm, face.MaxMm)
				}
			}
		}
	}
	for _, name := range []string{"pugmill", "gatejack"} {
		job := demo(t, name)
		for _, p := range job.Parts {
			check(Work(job, p), p.Name.Value)
		}
	}
	m := work(t, "mm", strings.Replace(flatsShaft, "FLATS", "across: 24, length: 15, from: back", 1))
	check(m, "flats")
	if f := feature(m, "key"); f.Balloon != (plan.XY{XMm: 32.5, YMm: 12}) { // 25 to 40, 3 under 15
		t.Errorf("flats: %v", f.Balloon)
	}
	for name, want := range map[string]plan.XY{"outside": {XMm: 150, YMm: 80}, "inside": {XMm: 150, YMm: 30}, "pitch": {YMm: 80}} {
		if f := feature(work(t, "mm", auger), name); f.Balloon != want {
			t.Errorf("%s: %v", name, f.Balloon)
		}
	}
}

// TestMetalAt: where along the axis there is metal at a radius.
func TestMetalAt(t *testing.T) {
	t.Parallel()
	m := work(t, "mm", "part: p\nkind: turned\nmaterial: S235\nprofile:\n  outside:\n    - {name: a, diameter: 60, length: 20}\n    - {name: b, diameter: 40, length: 30}\n    - {name: c, diameter: 60, length: 10}\n  inside:\n    - {name: d, diameter: 30, length: 25}\n    - {name: e, diameter: 10, length: 35}\n")
	for radius, want := range map[float64]string{2: "[]", 5: "[]", 6: "[{25 60}]", 15: "[{25 60}]", 16: "[{0 60}]", 20: "[{0 20} {50 60}]", 25: "[{0 20} {50 60}]", 29.9: "[{0 20} {50 60}]", 30: "[]"} {
		if got := fmt.Sprint(m.MetalAt(radius)); got != want {
			t.Errorf("at %v: %v, want %s", radius, got, want)
		}
	}
}

// A hole between limits is named by its size alone: the limits stand beside it.
func TestHoleBetweenLimits(t *testing.T) {
	t.Parallel()
	m := work(t, "mm", "part: p\nkind: plate\nmaterial: S235\nstock: {plate: 10 mm, cut: laser}\noutline: {square: 100}\nholes: [{name: a, at: [[0, 0]], size: {diameter: 15, fit: {limits: [15, 15.01]}}}]\n")
	if got := m.Groups[0].Size.Text; got != "Ø15, drill Ø14.5, bore" {
		t.Error(got)
	}
	has(t, m, "Bore Ø15 with a boring head")
	if why := m.Groups[0].whyNot(m.Sizes, "laser"); why != "finished to its limits after drilling" {
		t.Error(why)
	}
}
