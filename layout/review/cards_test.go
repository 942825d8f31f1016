package review

import (
	"maps"
	"strings"
	"testing"

	"centrepop/parts"
	"centrepop/parts/seq"
)

// TestFramesOf: a motor goes into its frame up to a tenth more than the most power that is
// usual in it (held in TestTables), and one up or down; two are said.
func TestFramesOf(t *testing.T) {
	t.Parallel()
	said := func(frame string, kw, rpm float64) string {
		r := &reviewer{job: &parts.Job{}}
		motored{r, &parts.Motor{Frame: parts.Text{Value: frame}, KW: parts.Number{Value: kw}, Hz: parts.Number{Value: 50}, RPM: parts.Number{Value: rpm}}}.frame()
		return strings.Join(seq.Map(r.found, func(f Finding) string { return f.Numbers }), "; ")
	}
	for _, c := range []struct {
		frame   string
		kw, rpm float64
		want    string
	}{
		{"90S", 1.5, 1400, ""}, {"90 L", 1.65, 1400, ""}, {"100", 1.5, 1400, ""}, {"80", 1.5, 1400, ""},
		{"112M", 1.5, 1400, "frame 112M for 1.5 kW at 1400 rev/min; usual is 90"}, {"71", 1.5, 1400, "frame 71 for 1.5 kW at 1400 rev/min; usual is 90"},
		{"112M", 1.66, 1400, ""}, {"112M", 1.5, 940, ""}, {"132", 1.5, 940, "frame 132 for 1.5 kW at 940 rev/min; usual is 100"},
		{"80", 3, 2850, "frame 80 for 3 kW at 2850 rev/min; usual is 100"}, {"100", 0.55, 700, ""}, {"112", 0.55, 700, "frame 112 for 0.55 kW at 700 rev/min; usual is 90"},
		{"90", 8.25, 1400, "frame 90 for 8.25 kW at 1400 rev/min; usual is 132"}, {"90", 8.26, 1400, "frame 90 for 8.26 kW at 1400 rev/min; usual is 160"},
		{"90S", 1.5, 3100, ""}, {"315", 1.5, 1400, ""}, {"112M", 0, 1400, ""},
	} {
		if got := said(c.frame, c.kw, c.rpm); got != c.want {
			t.Errorf("%s, %v kW, %v: %q, want %q", c.frame, c.kw, c.rpm, got, c.want)
		}
	}
}

// TestRarest: five years in the units of the upkeep, common practice: 2000 hours or 400 days
// a year worked, 52 weeks, 12 months, two seasons.
func TestRarest(t *testing.T) {
	t.Parallel()
	if want := map[string]float64{"h": 10_000, "hour": 10_000, "day": 2000, "week": 5 * 52, "month": 5 * 12, "season": 5 * 2, "year": 5}; !maps.Equal(rarest, want) {
		t.Errorf("%v, want %v", rarest, want)
	}
}

// TestRingsOfAnyTurn: places are the same a turn on or back; equal ones count once.
func TestRingsOfAnyTurn(t *testing.T) {
	t.Parallel()
	p := pattern{places: []place{{radiusMm: 50, deg: -90}, {radiusMm: 50, deg: 30}, {radiusMm: 50, deg: 270}, {radiusMm: 50, deg: 510}, {radiusMm: 50, deg: 390}}}
	rings := p.rings()
	if len(rings) != 1 || len(rings[0]) != 3 || rings[0][0].deg != 30 || rings[0][1].deg != 150 || rings[0][2].deg != 270 {
		t.Errorf("%+v", rings)
	}
	if n := p.order(); n != 3 {
		t.Errorf("three places a third of a turn apart repeat %d times", n)
	}
}

// TestCardBounds: the numbers of the motor's plate, of the upkeep and of the first run at
// their bounds and beyond, by hand: 400 V and 4 A of three phases are 2771.28 VA, of which
// 0.92 are 2549.6 W and a quarter 692.8; 60 f over the pairs of poles is the field's speed,
// and 0.85 of it the least. A coupling takes what the
// motor gives. The bounds are the rules' own, common practice, no source.
func TestCardBounds(t *testing.T) {
	t.Parallel()
	n := func(v float64) parts.Number { return parts.Number{Value: v} }
	three := func(volts string, kw, hp float64) *parts.Motor {
		return &parts.Motor{Phases: 3, Volts: parts.Text{Value: volts}, Amps: n(4), KW: n(kw), HP: n(hp)}
	}
	one := func(volts string, kw, amps float64) *parts.Motor {
		return &parts.Motor{Phases: 1, Volts: parts.Text{Value: volts}, Amps: n(amps), KW: n(kw)}
	}
	turns := func(hz, rpm float64) *parts.Motor { return &parts.Motor{Phases: 3, Hz: n(hz), RPM: n(rpm)} }
	every := func(said string) parts.Job {
		return parts.Job{Upkeep: &parts.Upkeep{Bolts: []parts.Retighten{{Every: parts.Text{Value: said}}}}}
	}
	grease := func(said string) parts.Job {
		return parts.Job{Upkeep: &parts.Upkeep{Ports: []parts.Port{{Every: parts.Text{Value: said}}}}}
	}
	run := func(runs ...parts.Run) parts.Job {
		return parts.Job{Motor: &parts.Motor{OutRPM: n(32)}, FirstRun: &parts.FirstRun{Runs: runs}}
	}
	again := func(h float64) parts.Job { return parts.Job{FirstRun: &parts.FirstRun{AgainHours: h}} }
	watch := func(bearing string, c float64) parts.Job {
		return parts.Job{FirstRun: &parts.FirstRun{Watch: []parts.Watch{{Bearing: parts.Text{Value: bearing}, MostC: n(c)}}}}
	}
	at := func(minutes, speed float64, load string) parts.Run {
		return parts.Run{Minutes: n(minutes), Speed: n(speed), Load: parts.Text{Value: load}}
	}
	coupling := func(item string, kw, rpm, out float64) parts.Job {
		return parts.Job{Motor: &parts.Motor{KW: n(kw), RPM: n(rpm), OutRPM: n(out)}, Loose: []parts.Loose{{Item: parts.Text{Value: item}}}}
	}
	turned := func(r *reviewer) { r.couplingTorque(&r.job.Loose[0]) }
	float := func(least, most float64) parts.Job {
		return parts.Job{Joints: []*parts.Joint{{Name: parts.Text{Value: "rear"}, Bearing: &parts.BearingJoint{EndFloat: []parts.Length{{Mm: least}, {Mm: most}}}}}}
	}
	set := func(r *reviewer) { r.endFloat(r.job.Joints[0]) }
	bearing := func(name string) *parts.Joint {
		return &parts.Joint{Name: parts.Text{Value: name}, Bearing: &parts.BearingJoint{Cup: parts.JointRef{Part: "housing"}}}
	}
	ports := func(rear, front string) parts.Job { // for grease, of two bearings in one housing
		at := func(name, every string) parts.Port {
			return parts.Port{Bearing: parts.Text{Value: name}, Every: parts.Text{Value: every}}
		}
		return parts.Job{Joints: []*parts.Joint{bearing("front"), bearing("rear")}, Upkeep: &parts.Upkeep{Ports: []parts.Port{at("rear", rear), at("front", front)}}}
	}
	seldom := each(everyPort, (*reviewer).unevenly)
	of := func(item string, kg float64) parts.Job { // for a plate of 1 kW at 50 Hz, 1400 and 32 rev/min
		return parts.Job{Motor: &parts.Motor{KW: n(1), Hz: n(50), RPM: n(1400), OutRPM: n(32)}, Loose: []parts.Loose{{Item: parts.Text{Value: item}, MassKg: kg}}}
	}
	ordered := func(r *reviewer) {
		for e := range seq.Refs(r.job.Loose) {
			motored{r, r.job.Motor}.item(e)
		}
	}
	strong := func(kw, kg float64) parts.Job {
		return parts.Job{Motor: &parts.Motor{KW: n(kw)}, Loose: []parts.Loose{{Item: parts.Text{Value: "gear motor"}, MassKg: kg}}}
	}
	geared := func(item string, rpm, out float64) parts.Job {
		return parts.Job{Motor: &parts.Motor{RPM: n(rpm), OutRPM: n(out)}, Loose: []parts.Loose{{Item: parts.Text{Value: item}, As: parts.AMotor}}}
	}
	mouth := func(item string, inside bool) parts.Job { // of a cone Ø100 of 2 mm sheet, and a part that is none
		title := func(s string) *parts.Part {
			return &parts.Part{Name: parts.Text{Value: s}, Title: parts.Text{Value: s}}
		}
		cone := title("Cone")
		cone.Kind, cone.Frustum = parts.Cone, &parts.Frustum{Large: parts.Length{Mm: 100}, Formed: parts.Formed{Thickness: parts.Length{Mm: 2}, Inside: inside}}
		return parts.Job{Parts: []*parts.Part{title("Plate"), cone}, Loose: []parts.Loose{{Item: parts.Text{Value: item}, How: parts.Text{Value: "laid on the mouth of the cone."}}}}
	}
	covers := func(r *reviewer) { r.covers(&r.job.Loose[0]) }
	const hardly = "a place of the upkeep is looked at hardly ever: "
	for _, c := range []struct {
		rule func(r *reviewer)
		job  parts.Job
		want string // what and numbers; "" where the rule is content
	}{
		{plate, parts.Job{Motor: three("400", 2.549, 0)}, ""}, {plate, parts.Job{Motor: three("400", 2.55, 0)}, "the motor's plate gives more power than its current brings in: 2550 W out of 2771.28 VA at 400 V and 4 A"},
		{plate, parts.Job{Motor: three("400", 0, 3.419)}, ""}, {plate, parts.Job{Motor: three("400", 0, 3.42)}, "the motor's plate gives more power than its current brings in: 2550.29 W out of 2771.28 VA at 400 V and 4 A"},
		{plate, parts.Job{Motor: three("400", 0.693, 0)}, ""}, {plate, parts.Job{Motor: three("400", 0.692, 0)}, "the motor's plate gives far more current than its power needs: 692 W out of 2771.28 VA at 400 V and 4 A"},
		{plate, parts.Job{Motor: three("230/400", 0.399, 0)}, ""}, {plate, parts.Job{Motor: three("230/400", 0.398, 0)}, "the motor's plate gives far more current than its power needs: 398 W out of 1593.49 VA at 230/400 V and 4 A"},
		{plate, parts.Job{Motor: three("400/230", 2.549, 0)}, ""}, {plate, parts.Job{Motor: three("", 2.2, 0)}, ""}, {plate, parts.Job{Motor: three("400", 0, 0)}, ""},
		{plate, parts.Job{Motor: one("230", 2.115, 10)}, ""}, {plate, parts.Job{Motor: one("230", 2.117, 10)}, "the motor's plate gives more power than its current brings in: 2117 W out of 2300 VA at 230 V and 10 A"},
		{plate, parts.Job{Motor: one("100", 0.7, 10)}, ""}, {plate, parts.Job{Motor: one("100", 0.701, 10)}, "the motor's plate gives more power than one phase gets out of its current: 701 W out of 1000 VA at 100 V and 10 A"}, {plate, parts.Job{Motor: one("100", 0.75, 10)}, ""},
		{plate, parts.Job{Motor: one("100/177", 0, 0)}, ""}, {plate, parts.Job{Motor: one("100/176", 0, 0)}, "the motor's plate gives the voltages of star and delta, which one phase has not: 100/176 V"},
		{plate, parts.Job{Motor: one("100/170", 0, 0)}, ""}, {plate, parts.Job{Motor: one("100/171", 0, 0)}, "the motor's plate gives the voltages of star and delta, which one phase has not: 100/171 V"},
		{plate, parts.Job{Motor: one("300", 0, 0)}, ""}, {plate, parts.Job{Motor: one("301", 0, 0)}, "the motor's plate gives one phase a voltage that only three have: 301 V"},
		{plate, parts.Job{Motor: turns(50, 3000)}, ""}, {plate, parts.Job{Motor: turns(50, 3001)}, "the motor's plate gives more speed than its frequency: 3001 rev/min at 50 Hz"},
		{plate, parts.Job{Motor: turns(50, 1275)}, ""}, {plate, parts.Job{Motor: turns(50, 1274)}, "the motor's plate gives a speed that lies between those of its fields: 1274 rev/min at 50 Hz, wanted 1275 to 1500 rev/min"},
		{plate, parts.Job{Motor: turns(60, 1020)}, ""}, {plate, parts.Job{Motor: turns(60, 1019)}, "the motor's plate gives a speed that lies between those of its fields: 1019 rev/min at 60 Hz, wanted 1020 to 1200 rev/min"},
		{plate, parts.Job{Motor: turns(0, 3061)}, ""}, {plate, parts.Job{Motor: turns(0, 3601)}, ""}, {plate, parts.Job{Motor: turns(0, 1275)}, ""}, {plate, parts.Job{Motor: turns(0, 1530)}, ""},
		{plate, parts.Job{Motor: turns(0, 3001)}, "the motor's plate gives a speed that lies between those of its fields: 3001 rev/min, wanted 2550 to 3000 rev/min or 3060 to 3600 rev/min"},
		{plate, parts.Job{Motor: turns(50, 425)}, ""}, {plate, parts.Job{Motor: turns(50, 424)}, "the motor's plate gives a speed that no motor on the mains has without a gear: 424 rev/min at 50 Hz, wanted 425 rev/min at the least"},
		{plate, parts.Job{Motor: turns(50, 0)}, ""},
		{plate, parts.Job{Motor: &parts.Motor{Frame: parts.Text{Value: "112M"}}}, ""}, {plate, parts.Job{Motor: &parts.Motor{Frame: parts.Text{Value: "113M"}}}, "the motor's frame is none that is made: 113M"},
		{upkeep, every("10000 h"), ""}, {upkeep, every("10001 h"), hardly + "10001 h"}, {upkeep, every("260 weeks"), ""}, {upkeep, every("261 weeks"), hardly + "261 weeks"},
		{upkeep, grease("2 years"), ""}, {upkeep, grease("3 years"), hardly + "3 years"}, {upkeep, grease("24 months"), ""}, {upkeep, grease("10000 h"), ""},
		{upkeep, every("5 years"), ""}, {upkeep, every("6 years"), hardly + "6 years"}, {upkeep, every("6 moons"), ""},
		{upkeep, grease("26 months"), hardly + "26 months"}, {upkeep, every("2000 days"), ""}, {upkeep, every("2001 days"), hardly + "2001 days"}, {upkeep, every("10 seasons"), ""}, {upkeep, every("11 seasons"), hardly + "11 seasons"}, {upkeep, every("60 months"), ""}, {upkeep, every("61 months"), hardly + "61 months"},
		{seldom, ports("19 months", "1 month"), ""}, {seldom, ports("20 months", "1 month"), "the upkeep greases rear far less often than front: 20 months and 1 month, both in housing"}, {seldom, ports("2 years", "1 month"), ""},
		{ordered, of("gear motor", 90), ""}, {ordered, of("gear motor", 90.1), "the mass of the motor is not one for its power: 90.1 kg, wanted 3 kg to 90 kg"}, {ordered, of("gear motor", 3), ""}, {ordered, of("gear motor", 2.9), "the mass of the motor is not one for its power: 2.9 kg, wanted 3 kg to 90 kg"},
		{ordered, geared("motor 1 hp with reducer", 1725, 200), ""}, {ordered, geared("motor 1 hp", 1725, 0), ""}, {ordered, geared("geared motor", 0, 0), ""},
		{ordered, geared("motor 1 hp with reducer", 1725, 0), "the motor as ordered has a gear, and the job does not say how fast it turns behind that: motor 1 hp with reducer; 1725 rev/min"},
		{ordered, strong(0.75, 2.3), ""}, {ordered, strong(0.75, 2.2), "the mass of the motor is not one for its power: 2.2 kg, wanted 2.3 kg to 75 kg"},
		{covers, mouth("sheet 96.1 x 120", false), ""}, {covers, mouth("sheet 120 x 96", false), "the sheet bought to lie on the mouth of Cone falls into it: 120 mm by 96 mm on 96 mm by 96 mm"}, {covers, mouth("sheet 100.1 x 120", true), ""}, {covers, mouth("sheet 100 x 100", true), "the sheet bought to lie on the mouth of Cone falls into it: 100 mm by 100 mm on 100 mm by 100 mm"},
		{ordered, of("0.97 kW gear motor", 0), ""}, {ordered, of("0.935 kW gear motor", 0), "the motor as ordered is not that of its plate: 0.935 kW in 0.935 kW gear motor"}, {ordered, of("gear motor, 53 Hz", 0), ""}, {ordered, of("gear motor, 53.2 Hz", 0), "the motor as ordered is not that of its plate: 53.2 Hz in gear motor, 53.2 Hz"},
		{ordered, of("gear motor, 1484 rpm", 0), ""}, {ordered, of("gear motor, 1486 rpm", 0), "the motor as ordered is not that of its plate: 1486 rpm in gear motor, 1486 rpm"}, {ordered, of("gear motor, 32 rpm", 0), ""}, {ordered, of("gear motor, 34 rpm", 0), "the motor as ordered is not that of its plate: 34 rpm in gear motor, 34 rpm"},
		{ordered, of("1.4 hp gear motor", 0), ""}, {ordered, of("1.43 hp gear motor", 0), "the motor as ordered is not that of its plate: 1.43 hp in 1.43 hp gear motor"}, // 1 kW is 1.341 hp, and 0.06 of it more 1.4215
		{firstRun, again(100), ""}, {firstRun, again(101), "bolts and bearings are looked at again long after the first run: 101 h, wanted at most 100 h"},
		{firstRun, watch("rear", 110), ""}, {firstRun, watch("rear", 111), "rear may run hot before the first run is stopped: 111 °C, wanted at most 110 °C"}, {firstRun, watch("", 111), ""},
		{firstRun, run(at(30, 33.59, "empty")), ""}, {firstRun, run(at(30, 32, "empty"), at(40, 33.61, "empty")), "run 2 of the first run is faster than the motor's output: 33.61 rev/min, the output 32"},
		{firstRun, run(at(30, 10, "empty"), at(40, 30.41, "empty")), ""}, {firstRun, run(at(30, 10, "empty"), at(40, 30.39, "empty")), "no run of the first run is as fast as the motor's output: at most 30.39 rev/min, the output 32"},
		{firstRun, run(at(30, 0, "empty"), at(31, 0, "empty")), ""}, {firstRun, run(at(30, 0, "empty"), at(30, 0, "empty")), "a reading of the first run comes no later than the one before it: 30 min after 30 min"}, {firstRun, run(at(30, 0, "empty"), at(5, 0, "clay")), ""},
		// 60 · 2200 W / (2 π · 32) = 656.5 N m, 484.2 pound-feet; 2.2 kW at 1430 are 14.7 N m.
		{turned, coupling("coupling for 657 N m", 2.2, 1430, 32), ""}, {turned, coupling("coupling for 656 N m", 2.2, 1430, 32), "the coupling is bought for less torque than the motor gives: 656 N m; 657 N m at 32 rev/min"},
		{turned, coupling("coupling for 485 lbf ft", 2.2, 1430, 32), ""}, {turned, coupling("coupling for 484 lbf ft", 2.2, 1430, 32), "the coupling is bought for less torque than the motor gives: 484 lbf ft; 657 N m at 32 rev/min"},
		{turned, coupling("coupling for 5811 lbf in", 2.2, 1430, 32), ""}, {turned, coupling("coupling for 5810 lbf in", 2.2, 1430, 32), "the coupling is bought for less torque than the motor gives: 5810 lbf in; 657 N m at 32 rev/min"},
		{turned, coupling("coupling for 15 N m", 2.2, 1430, 0), ""}, {turned, coupling("coupling for 14 N m", 2.2, 1430, 0), "the coupling is bought for less torque than the motor gives: 14 N m; 15 N m at 1430 rev/min"},
		{turned, coupling("coupling for 1 N m", 2.2, 0, 0), ""}, {turned, coupling("coupling for 1 N m", 0, 1430, 0), ""},
		{set, float(0.02, 0.3), ""}, {set, float(0.02, 0.31), "the end float of rear is wide: 0.02 mm to 0.31 mm, wanted at most 0.3 mm"},
		{set, float(-0.1, 0), ""}, {set, float(-0.11, 0.1), "the preload of rear burns the bearings: -0.11 mm to 0.1 mm, wanted at least -0.1 mm"},
	} {
		r := &reviewer{job: &c.job}
		c.rule(r)
		var said []string
		for _, f := range r.found {
			said = append(said, f.What+": "+f.Numbers)
		}
		if got := strings.Join(said, "; "); got != c.want {
			t.Errorf("%q, want %q", got, c.want)
		}
	}
}
