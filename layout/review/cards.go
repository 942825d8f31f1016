package review

import (
	"math"
	"regexp"
	"slices"
	"strconv"
	"strings"

	"centrepop/parts"
)

// voltNumber is one of the numbers in the words for a voltage.
var voltNumber = regexp.MustCompile(`\d+(\.\d+)?`)

// wattsPerHP is a mechanical horsepower.
const wattsPerHP = 745.7

// What the plate of a motor on the mains can say.
const (
	leastYield = 0.25 // of volts times amperes, turned out: common practice, no source
	mostSlip   = 0.15 // of its field: common practice, no source; over 0.1 only the smallest
)

// plate looks at the numbers on the motor's plate: what it turns out of what it
// takes, how many phases it has, and how fast it can run on its mains.
func plate(r *reviewer) {
	m := r.job.Motor
	if m == nil {
		return
	}
	say := func(what, numbers, rule, fix string) {
		r.add(Finding{Severity: Check, Pos: m.Pos, Source: "by physics", What: what, Numbers: numbers, Rule: rule, Fix: fix})
	}
	watts := 1000*m.KW.Value + wattsPerHP*m.HP.Value
	phases, low, high := 1.0, math.Inf(1), 0.0
	if m.Phases == 3 {
		phases = math.Sqrt(3)
	}
	for _, n := range voltNumber.FindAllString(m.Volts.Value, -1) {
		u, _ := strconv.ParseFloat(n, 64) // the pattern lets numbers through alone
		low, high = min(low, u), max(high, u)
	}
	most, least := phases*high*m.Amps.Value, phases*low*m.Amps.Value
	at := " VA at " + m.Volts.Value + " V and " + number(m.Amps.Value) + " A"
	const again = "read the plate again: power, voltage and current of one row"
	switch {
	case most <= 0 || watts <= 0:
	case watts > most:
		say("the motor's plate gives more power than its current brings in", number(watts)+" W out of "+number(most)+at, "a motor turns out less than it takes", again)
	case watts < leastYield*least:
		say("the motor's plate gives far more current than its power needs", number(watts)+" W out of "+number(least)+at, "a motor turns out a quarter of volts times amperes at the least", again)
	}
	if m.Phases == 1 && high > 0 && math.Abs(high/low-math.Sqrt(3)) < 0.03 {
		say("the motor's plate gives the voltages of star and delta, which one phase has not", m.Volts.Value+" V", "two voltages in the ratio √3 are those of a three-phase winding", "phases: 3, or the voltage of the one phase")
	}
	plateSpeed(r, say)
	if n := voltNumber.FindString(m.Frame.Value); n != "" && !slices.Contains(frames, n) {
		say("the motor's frame is none that is made", m.Frame.Value, "a frame is named by the height of its shaft, in millimetres or sixteenths of an inch, or is a NEMA number", "read the plate again")
	}
	flangeWords(r, say)
}

// frames are the sizes of motors: IEC 60072-1 and NEMA MG 1, both from memory.
var frames = strings.Fields("56 63 71 80 90 100 112 132 160 180 200 225 250 280 315 355 400 450" +
	" 42 48 143 145 182 184 203 204 213 215 224 225 254 256 284 286 324 326 364 365 404 405 444 445 447 449")

// flangeWords compares all sizes in the words for the motor's flange with the plate
// that has one of them as its pitch circle.
func flangeWords(r *reviewer, say func(what, numbers, rule, fix string)) {
	sizes := flangeNumber.FindAllString(r.job.Motor.Flange.Value, -1)
	for _, p := range r.job.Parts {
		v := r.viewOf(p.Name.Value)
		if v == nil || p.Outline == nil || p.Bore == nil {
			continue
		}
		has := []string{number(p.Bore.Size.Nominal.Mm), number(p.Outline.Width.Mm)}
		circles := v.pitchCircles()
		for _, mm := range circles {
			has = append(has, number(mm))
		}
		meant := slices.ContainsFunc(circles, func(mm float64) bool { return slices.Contains(sizes, number(mm)) })
		for _, s := range sizes {
			if meant && !slices.Contains(has, s) {
				say("the motor's flange has a size that "+p.Title.Value+" has not", r.job.Motor.Flange.Value+"; drawn: "+few(has)+" mm", "plate and motor have one flange", "the sizes on the motor's drawing, on both")
			}
		}
	}
}

// plateSpeed compares the speed with that of the field: the frequency over the
// pairs of poles, less some slip.
func plateSpeed(r *reviewer, say func(what, numbers, rule, fix string)) {
	m := r.job.Motor
	fastest, turns := 60*m.Hz.Value, m.RPM.Value
	if fastest <= 0 || turns <= 0 {
		return
	}
	numbers := number(turns) + " rev/min at " + number(m.Hz.Value) + " Hz"
	if turns > fastest {
		say("the motor's plate gives more speed than its frequency", numbers, "a motor on the mains turns once in a period at the most", "read the plate again")
		return
	}
	field := fastest / math.Floor(fastest/turns)
	if turns < (1-mostSlip)*field {
		say("the motor's plate gives a speed that lies between those of its fields", numbers+", wanted "+number(math.Ceil((1-mostSlip)*field))+" to "+number(field)+" rev/min", "a motor on the mains runs a little slower than its field", "read the plate again: speed and frequency of one row")
	}
}

// rarest is how many of a unit pass at most between two times that something is greased or
// looked at, about five years. Common practice, no source.
var rarest = map[string]float64{"h": 10_000, "hour": 10_000, "day": 2000, "week": 260, "month": 60, "season": 10, "year": 5}

// every is a time in the words of the upkeep.
var every = regexp.MustCompile(`^(\d+) ?(h|hour|day|week|month|season|year)s?\b`)

// upkeep looks for times that are too long to be meant.
func upkeep(r *reviewer) {
	if r.job.Upkeep == nil {
		return
	}
	look := func(t parts.Text) {
		m := every.FindStringSubmatch(t.Value)
		if m == nil {
			return
		}
		if n, _ := strconv.ParseFloat(m[1], 64); n > rarest[m[2]] {
			r.add(Finding{
				Severity: Check, Pos: t.Pos, What: "a place of the upkeep is looked at hardly ever", Numbers: t.Value,
				Rule: "grease ages, and bolts are looked at, in five years at the most", Source: practice, Fix: "a shorter time",
			})
		}
	}
	for _, p := range r.job.Upkeep.Ports {
		look(p.Every)
	}
	for _, b := range r.job.Upkeep.Bolts {
		look(b.Every)
	}
	for _, w := range r.job.Upkeep.Wear {
		look(w.Every)
	}
}

// hottestC is the most that a greased bearing with a rubber seal stands. Common
// practice, no source.
const hottestC = 110.0

// firstRun looks at the numbers of the first run: speeds the motor does not give,
// and a bearing that is let run hot.
func firstRun(r *reviewer) {
	run := r.job.FirstRun
	if run == nil {
		return
	}
	fastest := 0.0
	for _, s := range run.Runs {
		fastest = max(fastest, s.Speed.Value)
	}
	const same = 0.05
	if m := r.job.Motor; m != nil && fastest > 0 && m.OutRPM.Value > 0 && math.Abs(fastest-m.OutRPM.Value) > same*m.OutRPM.Value {
		r.add(Finding{
			Severity: Check, Pos: run.Pos, What: "no run of the first run has the speed of the motor's output", Numbers: "at most " + number(fastest) + " rev/min, the output " + number(m.OutRPM.Value),
			Rule: "the machine is tried at its own speed", Source: "by the job", Fix: "output-speed as on the gear's plate, or accept it where a belt changes the speed",
		})
	}
	for _, w := range run.Watch {
		if w.Bearing.Value != "" && w.MostC.Value > hottestC {
			r.add(Finding{
				Severity: Check, Part: w.Bearing.Value, Pos: w.Pos, What: w.Bearing.Value + " may run hot before the first run is stopped", Numbers: number(w.MostC.Value) + " °C, wanted at most " + number(hottestC) + " °C",
				Rule: "grease and seals stand about 110 °C", Source: practice, Fix: "70 to 90 °C, or the maker's figure",
			})
		}
	}
}
