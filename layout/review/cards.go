package review

import (
	"math"
	"regexp"
	"strconv"
)

// voltNumber is one of the numbers in the words for a voltage.
var voltNumber = regexp.MustCompile(`\d+(\.\d+)?`)

// wattsPerHP is a mechanical horsepower.
const wattsPerHP = 745.7

// plate looks at the numbers on the motor's plate: what it turns out of what it
// takes, and how fast it can run on its mains.
func plate(r *reviewer) {
	m := r.job.Motor
	if m == nil {
		return
	}
	f := Finding{Severity: Check, Pos: m.Pos, Source: "by physics"}
	watts := 1000*m.KW.Value + wattsPerHP*m.HP.Value
	phases, takes := 1.0, 0.0
	if m.Phases == 3 {
		phases = math.Sqrt(3)
	}
	for _, n := range voltNumber.FindAllString(m.Volts.Value, -1) {
		u, _ := strconv.ParseFloat(n, 64) // the pattern lets numbers through alone
		takes = max(takes, phases*u*m.Amps.Value)
	}
	if takes > 0 && watts > takes {
		f.What, f.Numbers = "the motor's plate gives more power than its current brings in", number(watts)+" W out of "+number(takes)+" VA at "+m.Volts.Value+" V and "+number(m.Amps.Value)+" A"
		f.Rule, f.Fix = "a motor turns out less than it takes", "read the plate again: power, voltage and current of one row"
		r.add(f)
	}
	if fastest := 60 * m.Hz.Value; fastest > 0 && m.RPM.Value > fastest {
		f.What, f.Numbers = "the motor's plate gives more speed than its frequency", number(m.RPM.Value)+" rev/min at "+number(m.Hz.Value)+" Hz"
		f.Rule, f.Fix = "a motor on the mains turns once in a period at the most", "read the plate again"
		r.add(f)
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
