package review

import (
	"fmt"
	"slices"
	"strings"
	"testing"

	"github.com/rogpeppe/go-internal/txtar"

	"centrepop/layout/plan"
	"centrepop/layout/threads"
	"centrepop/parts"
	"centrepop/parts/geom"
)

// TestHoldingBounds: pins, screws and what is put on by hand, at the bounds of the rules and a
// hair beyond, by hand; the bounds are the rules' own, common practice, no source, the
// distances between centres ISO 2768-1 m: ±0.2 to 30, ±0.3 to 120.
func TestHoldingBounds(t *testing.T) {
	t.Parallel()
	text := func(s string) parts.Text { return parts.Text{Value: s} }
	mm := func(v float64) parts.Length { return parts.Length{Mm: v, Pos: parts.Pos{Line: 1}} }
	thread := func(s string) threads.Thread {
		u, err := threads.Parse(s)
		if err != nil {
			t.Fatal(err)
		}
		return u
	}
	part := func(name string) *parts.Part {
		return &parts.Part{Name: text(name), Title: text(strings.ToUpper(name[:1]) + name[1:]), Quantity: 1}
	}
	type rule = func(r *reviewer)
	say := func(v any) rule { return func(r *reviewer) { r.found = append(r.found, Finding{What: fmt.Sprint(v)}) } }
	set := func(across float64, at ...float64) (out []hole) { // holes beside one another
		for _, x := range at {
			out = append(out, hole{name: "pin", a: plan.XY{XMm: x}, radiusMm: across / 2})
		}
		return out
	}
	pinned := func(note string, plate, hub []hole, depth float64) rule { // a plate of 12
		return func(r *reviewer) {
			a, b := &view{reviewer: r, p: part("plate"), lengthMm: 12, holes: plate}, &view{reviewer: r, p: part("hub"), holes: hub}
			g := parts.HoleGroup{FaceGroup: parts.FaceGroup{Name: text("pin"), Through: true}, Note: text(note)}
			a.p.Holes, b.p.Holes = []parts.HoleGroup{g}, []parts.HoleGroup{{FaceGroup: parts.FaceGroup{Name: text("pin"), Depth: mm(depth), Through: depth == 0}}}
			r.pinned(a, b, &g)
		}
	}
	inHole := func(note string, across float64, fit string, depth float64) rule { // in 12
		return func(r *reviewer) {
			p := part("plate")
			p.Holes = []parts.HoleGroup{{FaceGroup: parts.FaceGroup{Name: text("pin"), Through: depth == 0, Depth: mm(depth)}, Note: text(note), Size: parts.HoleSize{Make: parts.PlainHole, Size: parts.Size{Nominal: mm(across), Fit: parts.Fit{Class: text(fit)}}}}}
			(&view{reviewer: r, p: p, lengthMm: 50, holes: []hole{{name: "pin", metalMm: 12}}}).pinInHole(&p.Holes[0]) // in a flange
		}
	}
	wall := func(across float64) rule {
		return say(len(screwRows(&view{q: &plan.PartPlan{Radials: []plan.RadialRow{{DiameterMm: across}}}}, thread("M8"))))
	}
	row := func(count int, pitch float64, at ...float64) rule {
		var rows []plan.RadialRow
		for _, z := range at {
			rows = append(rows, plan.RadialRow{AxialMm: z})
		}
		return say(rowOff(&parts.HoleGroup{FaceGroup: parts.FaceGroup{Pattern: parts.Pattern{Shape: geom.Along{Count: count, PitchMm: pitch}}}}, rows))
	}
	takes := func(words, item, buy string) rule {
		return say(fmt.Sprintf("%.3g", (&screwOrder{words: words}).takes(&parts.Loose{Item: text(item), Buy: text(buy)})))
	}
	ordered := func(words, into string, across, long, deep float64, count int) rule { // two copies with three holes
		return func(r *reviewer) {
			v := &view{reviewer: r, p: part("cover")}
			v.p.Quantity = 2
			v.p.Holes = []parts.HoleGroup{{FaceGroup: parts.FaceGroup{Name: text("rim"), Pattern: parts.Pattern{Count: 3}}}}
			g := &v.p.Holes[0]
			h := hole{group: g, name: "rim", radiusMm: across / 2, fromMm: 2, toMm: 2 + deep}
			if into != "" {
				u := thread(into)
				h.thread = &u
			}
			v.holes = []hole{h}
			v.ordered(&parts.Loose{Count: count}, g, screwOrder{words, thread("M8"), long})
		}
	}
	slotted := func(words string, long float64, count int) rule { // slots of 9 in 10, two of them
		return func(r *reviewer) {
			v := &view{reviewer: r, p: part("rail"), q: &plan.PartPlan{}}
			v.p.Slots = []parts.FaceSlot{{FaceGroup: parts.FaceGroup{Name: text("motor"), Pattern: parts.Pattern{Count: 2}}, Width: mm(9)}}
			r.views["rail"], r.job.Parts, r.pl.Parts = v, []*parts.Part{v.p}, []*plan.PartPlan{v.q}
			v.holes = []hole{{slot: &v.p.Slots[0], name: "motor", radiusMm: 4.5, toMm: 10}}
			r.boughtBy(&parts.Loose{Item: text(fmt.Sprintf(words, long)), How: text("through the motor slots of the rail"), Count: count})
		}
	}
	onMotor := func(how string, bore, shaft float64) rule {
		return func(r *reviewer) {
			r.job.Loose = []parts.Loose{{As: parts.AMotor, Stands: &parts.Stands{Shaft: mm(shaft)}}}
			v := &view{reviewer: r, p: part("pulley"), inside: sideBy(true, cyl("recess", 0, 5, 40, parts.Step{}), cyl("bore", 5, 30, bore, parts.Step{}))}
			made{v, &parts.Loose{How: text(how)}}.onMotorShaft()
		}
	}
	onShaft := func(how string, bore, seat float64, each func(v made, to *view, seat *cylinder)) rule { // of three steps, the last 60
		return func(r *reviewer) {
			step := func(name string, from, to, d float64, fit string) *cylinder {
				size := parts.Size{Nominal: mm(40), Fit: parts.Fit{Class: text(fit)}}
				if fit == "" {
					size = parts.Size{Nominal: mm(40), Fit: parts.Fit{Limits: []parts.Length{mm(d), mm(d + 0.02)}}}
				}
				return cyl(name, from, to, d, parts.Step{Size: size})
			}
			v := &view{reviewer: r, p: part("ring"), lengthMm: 20, inside: sideBy(true, step("bore", 0, 19, bore, ""))}
			v.outside = sideBy(false, step("rim", 0, 20, 80, ""))
			to := &view{reviewer: r, p: part("shaft"), outside: sideBy(false, step("end", 0, 20, 30, ""), step("seat", 20, 60, seat, ""), step("collar", 60, 80, 60, ""))}
			each(made{v, &parts.Loose{How: text(how), After: text("last")}}, to, to.outside[1])
		}
	}
	order := func(item, how string) rule {
		return func(r *reviewer) { r.orders(&parts.Loose{Item: text(item), How: text(how)}) }
	}
	for _, c := range []struct {
		name string
		rule rule
		want string // severity, place, what, numbers and the number to accept; "" where the rule is content
	}{
		{"pins that meet", pinned("", set(10, 0, 50), set(10.8, 0, 50), 0), ""}, {"off by their play and 0.1", pinned("", set(10, 0), set(10.8, 0.5), 0), ""}, {"off by more", pinned("", set(10, 0), set(10.8, 0.51), 0), "stop plate.pin: pin of Plate and of Hub do not meet; 0.51 mm apart, with 0.8 mm of play"},
		{"one too few", pinned("", set(10, 0, 50), set(10.8, 0), 0), "stop plate.pin: pin of Plate and of Hub are not as many; 2 and 1"}, {"into smaller holes", pinned("", set(10, 0), set(9.9, 0), 0), "stop plate.pin: the pins of Plate do not go into Hub; 10 mm into 9.9 mm"}, {"into as large ones", pinned("", set(10, 0), set(10, 0), 0), ""},
		{"out of 12 by 8, into 8.1", pinned("pin 10 x 20", set(10, 0), set(10, 0), 8.1), ""}, {"into 8", pinned("pin 10 x 20", set(10, 0), set(10, 0), 8), "stop plate.pin: the pins of Plate keep it off Hub; they stand out 8 mm, and their holes are 8 mm deep"}, {"right through", pinned("pin 10 x 20", set(10, 0), set(10, 0), 0), ""},
		{"0.6 of play at ±0.3", pinned("", set(10, 20, 0, 50), set(10.8, 20, 0, 50), 0), ""}, {"less", pinned("", set(10, 20, 0, 50), set(10.79, 20, 0, 50), 0), "check plate.pin: pin of Plate and of Hub need not meet though both are right; centres may differ by 0.6 mm, the play is 0.59 mm (0.59)"}, {"0.7, drawn 0.05 off", pinned("", set(10, 0, 50), set(10.9, 0, 50.05), 0), ""}, {"less for that", pinned("", set(10, 0, 50), set(10.89, 0, 50.05), 0), "check plate.pin: pin of Plate and of Hub need not meet though both are right; centres may differ by 0.7 mm, the play is 0.69 mm (0.69)"},
		{"a bore of the motor's shaft", onMotor("on the motor's shaft, to its shoulder", 14, 14), ""}, {"a larger one", onMotor("slid on the motor shaft", 19, 14), "stop pulley.bore: Pulley is loose on the motor's shaft; 19 mm on 14 mm (5)"},
		{"a smaller one", onMotor("slid on the motor shaft", 14, 19), "stop pulley.bore: Pulley does not go on the motor's shaft; 14 mm on 19 mm (5)"}, {"as finely as words say it", onMotor("slid on the motor shaft", 22.2, 22.225), ""}, {"on another shaft", onMotor("slid on the shaft beside the motor", 19, 14), ""},
		{"a pin of its hole", inHole("pin 8 x 24, pressed in, stands out", 8, "H7", 0), ""}, {"larger", inHole("pin 8 x 24, pressed in, stands out", 7.9, "H7", 0), "stop plate.pin: the pin of pin is larger than its hole; 8 mm in 7.9 mm"}, {"pressed and smaller", inHole("pin 8 x 24, pressed in, stands out", 8.1, "H7", 0), "stop plate.pin: the pin of pin is pressed in, and loose in its hole; 8 mm in 8.1 mm"}, {"not pressed and smaller", inHole("pin 8 x 24", 8.1, "", 0), ""},
		{"of grade 8", inHole("pin 8 x 24, pressed in, stands out", 8, "H8", 0), ""}, {"of grade 9", inHole("pin 8 x 24, pressed in, stands out", 8, "H9", 0), "check plate.pin: pin has no fit, and a pin is pressed into it; pin 8 x 24, pressed in, stands out in 8 mm (0)"}, {"how far is not said", inHole("pin 8 x 24, pressed in", 8, "H7", 0), "check plate.pin: nothing says how far the pin of pin stands out, and of which face; pin 8 x 24, pressed in (0)"}, {"the hole says it", inHole("pin 8 x 24, pressed in", 8, "H7", 20), ""},
		{"half of it out", inHole("pin 8 x 16, pressed in, stands out", 8, "H7", 0), ""}, {"less out", inHole("pin 8 x 15.9, pressed in, stands out", 8, "H7", 0), "check plate.pin: the pin of pin hardly stands out of its hole; 15.9 mm long in 12 mm (3.9)"}, {"half of it out of a blind hole", inHole("pin 8 x 24", 8, "", 20), ""}, {"less of a deeper", inHole("pin 8 x 24", 8, "", 20.1), "check plate.pin: the pin of pin hardly stands out of its hole; 24 mm long in 20.1 mm (3.9)"},
		{"M8 through 8", wall(8), "0"}, {"through 8.1", wall(8.1), "1"}, {"through 1.35 of it", wall(10.79), "1"}, {"through more", wall(10.8), "0"},
		{"a row that meets", row(3, 30, 10, 40, 70), "0"}, {"the one end off by 2", row(3, 30, 10, 40, 72), "2"}, {"the middle off by 1", row(3, 30, 10, 41, 70), "1"}, {"one alone", row(1, 30, 10, 40), "0"}, {"another pitch", row(2, 30, 10, 45), "5"},
		{"a nut", takes("nut", "", ""), "0.8"}, {"and a washer", takes("nut and washer", "", ""), "1"}, {"and washers", takes("nut and washers", "", ""), "1.2"}, {"and a flange", takes("nut", "motor", "bolts"), "1.6"}, {"alone", takes("nut", "motor", ""), "0.8"},
		{"names of holes", say([]bool{saysHoles(" the rim bolts", "rim"), saysHoles(" the cover bolts", "cover-screws"), saysHoles(" the cover bolts", "cover"), saysHoles(" the cover and plate", "cover-plates"), saysHoles(" the cover", "cover-plates"), saysHoles(" uncover", "cover")}), "[false false true true false false]"},
		{"threads", say([]bool{sameThread("M8", "M8x1.25"), sameThread("M8", "M10"), sameThread("M8", ""), sameThread("", ""), sameThread("", "M8")}), "[true false false false false]"},
		{"six M8 in two times three", ordered("M8", "", 9, 20, 10, 6), ""}, {"five", ordered("M8", "", 9, 20, 10, 5), "check cover.rim: the screws bought for rim of Cover are fewer than the holes; 5 for 6"}, {"in 8.4, the fine series", ordered("M8", "", 8.4, 20, 10, 6), ""}, {"in 8", ordered("M8", "", 8, 20, 10, 6), "check cover.rim: the screws bought for rim of Cover have hardly any play in these holes; M8 in 8 mm, wanted 8.4 mm at the least (0)"}, {"in less", ordered("M8", "", 7.9, 20, 10, 6), "check cover.rim: the screws bought for rim of Cover are not for these holes; M8 in 7.9 mm"}, {"in 10.7", ordered("M8", "", 10.7, 20, 10, 6), ""}, {"in more", ordered("M8", "", 10.9, 20, 10, 6), "check cover.rim: the screws bought for rim of Cover are not for these holes; M8 in 10.9 mm"}, {"in M10", ordered("M8", "M10", 10, 20, 10, 6), "check cover.rim: the screws bought for rim of Cover are not for these holes; M8 in 10 mm"},
		{"14.8 long in 10 of thread", ordered("M8", "M8", 8, 14.8, 10, 6), ""}, {"longer", ordered("M8", "M8", 8, 14.9, 10, 6), "check cover.rim: the screws bought for rim of Cover meet the bottom of their holes; 14.9 mm long in 10 mm (4.9)"}, {"with a nut", ordered("M8 with nut", "M8", 8, 30, 10, 6), ""}, {"16.4 through 10 and a nut", ordered("M8 with nut", "", 9, 16.4, 10, 6), ""}, {"shorter", ordered("M8 with nut", "", 9, 16.3, 10, 6), "check cover.rim: the screws bought for rim of Cover are too short for their nuts; 16.3 mm long through 10 mm, with what comes on 6.4 mm wanted beyond (6.3)"},
		{"through slots with a nut", slotted("bolt M8 x %g with nut", 16.4, 2), ""}, {"too short for it", slotted("bolt M8 x %g with nut", 16.3, 2), "check rail.motor: the screws bought for motor of Rail are too short for their nuts; 16.3 mm long through 10 mm, with what comes on 6.4 mm wanted beyond (6.3)"}, {"one for two slots", slotted("bolt M8 x %g with nut", 20, 1), "check rail.motor: the screws bought for motor of Rail are fewer than the holes; 1 for 2"}, {"larger than the slots", slotted("bolt M10 x %g with nut", 30, 2), "check rail.motor: the screws bought for motor of Rail are not for these holes; bolt M10 x 30 with nut in 9 mm"}, {"sunk heads in slots", slotted("countersunk screw M8 x %g", 30, 2), "check rail.motor: the screws bought for motor of Rail have heads for a countersink, and the holes have none; countersunk screw M8 x 30"},
		{"a bore that may be as large", onShaft("by hand", 40.02, 40, made.looseFit), ""}, {"slides and may be larger", onShaft("slides on", 40.01, 40, made.looseFit), "check ring.bore: Ring is too tight to be put on Shaft as the job says; 40.01 – 40.03 over 40.00 – 40.02 (0.01)"}, {"as often as not", onShaft("put on", 40, 40, made.looseFit), ""}, {"less often", onShaft("put on", 39.99, 40, made.looseFit), "check ring.bore: Ring is too tight to be put on Shaft as the job says; 39.99 – 40.01 over 40.00 – 40.02 (0.01)"}, {"by force", onShaft("pressed on", 39.97, 40, made.looseFit), ""},
		{"0.1 larger on radius", onShaft("on the seat ", 40, 40.18, made.twoWays), ""}, {"more", onShaft("on the seat ", 40, 40.2, made.twoWays), "check ring.: Ring does not go on seat of Shaft; 40 mm over 40.2 mm (0.2)"}, {"nothing says where", onShaft("put on", 40, 41, made.twoWays), ""}, {"driven", onShaft("driven on the seat ", 40, 41, made.twoWays), ""}, {"past the collar", onShaft("on the seat , one from below, the other from above", 60, 40, made.twoWays), ""}, {"does not pass it", onShaft("on the seat , one from below, the other from above", 59.8, 40, made.twoWays), "check ring.: Ring does not pass collar of Shaft to seat, and one comes from that end; 59.8 mm over 60 mm (0.2)"},
		// M8 8.8: 0.2 · 0.75 · 580 · 36.6 · 8 = 25.5 N m, oiled 0.15; 1/4-20 grade 5: 0.2 · 0.75 · 85000 · 0.0318 · 0.25 = 101 lbf in. ISO 898-1, SAE J429.
		{"a class of its standard", order("screw M8 x 25 8.8", ""), ""}, {"a class of none", order("screw M8 x 25 8.9", ""), "check .: no screw of this size has the class that is ordered; 8.9 for M8"}, {"a class after a comma", order("screw M8 x 25, 12.9", ""), ""},
		{"a length of an inch and a quarter", order("screw 1/4-20 UNC x 1.25", ""), ""}, {"a length, then a grade", order("screw 1/4-20 UNC x 1.25, grade 5", ""), ""}, {"a length, then none", order("screw 1/4-20 UNC x 1.25, grade 7", ""), "check .: no screw of this size has the class that is ordered; grade 7 for 1/4-20 UNC"},
		{"25.5 N m to 0.7 of it, and 1.25 beside, the least", order("screw M8 x 25 8.8", "tightened to 14.3 Nm"), ""}, {"25.5 N m to 0.7 of it, and 1.25 beside, less", order("screw M8 x 25 8.8", "tightened to 14.2 Nm"), "check .: the words give the screws another torque than their class takes; 14.2 Nm for M8 8.8: 25 N m"}, {"25.5 N m to 0.7 of it, and 1.25 beside, the most", order("screw M8 x 25 8.8", "tightened to 31.8 Nm"), ""},
		{"25.5 N m to 0.7 of it, and 1.25 beside, more", order("screw M8 x 25 8.8", "tightened to 31.9 Nm"), "check .: the words give the screws another torque than their class takes; 31.9 Nm for M8 8.8: 25 N m"}, {"19.1 N m oiled, the least", order("screw M8 x 25 8.8", "tightened to 10.7 Nm oiled"), ""}, {"19.1 N m oiled, less", order("screw M8 x 25 8.8", "tightened to 10.6 Nm oiled"), "check .: the words give the screws another torque than their class takes; 10.6 Nm oiled for M8 8.8: 19 N m"},
		{"19.1 N m oiled, the most", order("screw M8 x 25 8.8", "tightened to 23.8 Nm oiled"), ""}, {"19.1 N m oiled, more", order("screw M8 x 25 8.8", "tightened to 23.9 Nm oiled"), "check .: the words give the screws another torque than their class takes; 23.9 Nm oiled for M8 8.8: 19 N m"}, {"8.4 lbf-ft, the least", order("screw 1/4-20 UNC x 1.25, grade 5", "tightened to 4.8 lbf-ft"), ""},
		{"8.4 lbf-ft, less", order("screw 1/4-20 UNC x 1.25, grade 5", "tightened to 4.7 lbf-ft"), "check .: the words give the screws another torque than their class takes; 4.7 lbf-ft for 1/4-20 UNC grade 5: 11 N m"}, {"8.4 lbf-ft, the most", order("screw 1/4-20 UNC x 1.25, grade 5", "tightened to 10.5 lbf-ft"), ""}, {"8.4 lbf-ft, more", order("screw 1/4-20 UNC x 1.25, grade 5", "tightened to 10.6 lbf-ft"), "check .: the words give the screws another torque than their class takes; 10.6 lbf-ft for 1/4-20 UNC grade 5: 11 N m"},
		{"101 lbf-in, the least", order("screw 1/4-20 UNC x 1.25, grade 5", "tightened to 56.8 lbf-in"), ""}, {"101 lbf-in, less", order("screw 1/4-20 UNC x 1.25, grade 5", "tightened to 56.7 lbf-in"), "check .: the words give the screws another torque than their class takes; 56.7 lbf-in for 1/4-20 UNC grade 5: 11 N m"}, {"101 lbf-in, the most", order("screw 1/4-20 UNC x 1.25, grade 5", "tightened to 126.7 lbf-in"), ""},
		{"101 lbf-in, more", order("screw 1/4-20 UNC x 1.25, grade 5", "tightened to 126.8 lbf-in"), "check .: the words give the screws another torque than their class takes; 126.8 lbf-in for 1/4-20 UNC grade 5: 11 N m"},
	} {
		r := &reviewer{job: &parts.Job{Tolerance: text("m")}, pl: &plan.Plan{}, views: map[string]*view{}}
		c.rule(r)
		if got := strings.Join(told(r.found), "; "); got != c.want {
			t.Errorf("%s: %q, want %q", c.name, got, c.want)
		}
	}
}

// What runs round holds by its round: 60 of a weld on a tube of 88.9 are less than a quarter of π · 88.9 = 279.3, 70 are more.
func TestShortWeldOnARound(t *testing.T) {
	t.Parallel()
	a, err := txtar.ParseFile("testdata/weld-first.txtar")
	if err != nil {
		t.Fatal(err)
	}
	for long, want := range map[string]string{"60": "60 mm on 279.29 mm, wanted at least 69.82 mm", "70": ""} {
		files, got := map[string]string{}, ""
		for _, f := range a.Files {
			files[f.Name] = strings.Replace(string(f.Data), "process: MAG}", "process: MAG, length: "+long+"}", 1)
		}
		for _, f := range reviewOf(t, files) {
			if strings.Contains(f.What, "a small part of the edge") {
				got += f.Numbers
			}
		}
		if got != want {
			t.Errorf("%s: %q, want %q", long, got, want)
		}
	}
}

// A bearing that is adjusted on a left-hand thread in inches has no locking nut of a series: one is made, or ordered as such.
func TestLeftHandLockNut(t *testing.T) {
	t.Parallel()
	a, err := txtar.ParseFile("testdata/lock-nut.txtar")
	if err != nil {
		t.Fatal(err)
	}
	for _, c := range []struct {
		thread, loose string
		found         bool
	}{
		{"3/4-16 UNF", "", false}, {"3/4-16 UNF LH", "", true},
		{"3/4-16 UNF LH", "loose: [{item: nut 3/4-16 LH, how: on the nut of the axle, after: bad}]\n", false},
		{"3/4-16 UNF LH", "loose: [{item: nut 3/4-16, how: on the nut of the axle, after: bad}]\n", true},
	} {
		files := map[string]string{}
		for _, f := range a.Files {
			files[f.Name] = strings.Replace(string(f.Data), "M18x1.5", c.thread, 1)
		}
		files["job.yaml"] += c.loose
		if got := slices.ContainsFunc(reviewOf(t, files), func(f Finding) bool { return strings.HasPrefix(f.What, "no locking nut has the left-hand thread") }); got != c.found {
			t.Errorf("%+v: found %v", c, got)
		}
	}
}
