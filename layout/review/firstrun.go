package review

import (
	"iter"
	"slices"
	"strings"

	"centrepop/parts"
	"centrepop/parts/geom"
	"centrepop/parts/seq"
)

// firstRun looks at the numbers and words of the first run: speeds the motor does not give, readings, guards, travels,
// and a bearing that is let run hot.
var firstRun = together(
	(*reviewer).tooFast, (*reviewer).ownSpeed, (*reviewer).runsOpen, each(everyLoose, (*reviewer).staysIn), (*reviewer).lateAgain, (*reviewer).uncoupledAfter,
	(*reviewer).readings, each(everyRun, (*reviewer).travel), each(everyWatch, (*reviewer).hot), (*reviewer).allWatched,
)

func everyRun(r *reviewer) iter.Seq[parts.Run]     { return slices.Values(r.run().Runs) }
func everyWatch(r *reviewer) iter.Seq[parts.Watch] { return slices.Values(r.run().Watch) }

// readings looks for readings of a run that do not come later than the one before, at the
// same load.
func (r *reviewer) readings() {
	runs := r.run().Runs
	for i, b := range runs[min(1, len(runs)):] {
		if a := runs[i]; a.Load.Value == b.Load.Value && b.Minutes.Value <= a.Minutes.Value {
			r.add(Finding{
				Pos: b.Pos, What: "a reading of the first run comes no later than the one before it", Numbers: number(b.Minutes.Value) + " min after " + number(a.Minutes.Value) + " min",
				Rule: "minutes count from the start of idling, or of one load", Source: "by the job", Fix: "the later time, or another load",
			})
		}
	}
}

// hottestC is the most that a greased bearing with a rubber seal stands. Common
// practice, no source.
const hottestC = 110.0

// latestH is when all is looked at again after the first run at the latest, in hours of
// running. Common practice, no source.
const latestH = 100.0

// sameSpeed is how far the speed of a run may lie from that of the motor's output and be the same.
const sameSpeed = 0.05

// tooFast looks for speeds of the first run that are above the one that the motor gives what it drives.
func (r *reviewer) tooFast() {
	out, by := r.drivenRPM()
	for i, s := range r.run().Runs {
		if out > 0 && s.Speed.Value > (1+sameSpeed)*out {
			r.add(Finding{
				Pos: s.Pos, What: "run " + number(float64(i+1)) + " of the first run is faster than " + by, Numbers: number(s.Speed.Value) + " rev/min, the output " + number(out),
				Rule: "the machine is tried at its own speed", Source: "by the job",
				Fix: "the speed that the gear or the belt gives, the speeds as on the plate, or accept it where something else changes it",
			})
		}
	}
}

// ownSpeed looks for a first run of which no speed reaches the one that the motor gives what it drives.
func (r *reviewer) ownSpeed() {
	out, by := r.drivenRPM()
	fastest := seq.Max(0, r.run().Runs, func(s parts.Run) float64 { return s.Speed.Value })
	if fastest > 0 && fastest < (1-sameSpeed)*out {
		r.add(Finding{
			Pos: r.run().Pos, What: "no run of the first run is as fast as " + by, Numbers: "at most " + number(fastest) + " rev/min, the output " + number(out),
			Rule: "the machine is tried at its own speed", Source: "by the job", Fix: "the speeds as on the plate, the pulleys that give this one, or accept it where something else changes it",
		})
	}
}

// uncoupledAfter looks for a motor that is to run uncoupled once it has run coupled.
func (r *reviewer) uncoupledAfter() {
	if how := r.run().WarmUpHow; r.job.Motor != nil && uncoupled().MatchString(how.Value) {
		r.add(Finding{
			Pos: how.Pos, What: "the motor is to run uncoupled after it has run coupled for its direction", Numbers: how.Value,
			Rule: "nothing is taken apart between two stages of the first run: guards come off, a loose half turns in the open, and no line puts it together again",
			Fix:  "coupled and empty; or before the step of the coupling",
		})
	}
}

// lateAgain looks at when all is looked at again.
func (r *reviewer) lateAgain() {
	if h := r.run().AgainHours; h > latestH {
		r.add(Finding{
			Pos: r.run().Pos, What: "bolts and bearings are looked at again long after the first run", Numbers: number(h) + " h, wanted at most " + number(latestH) + " h",
			Rule: "what settles does so in the first hours", Fix: "again-after: 8, or the first shift",
		})
	}
}

// hot looks at the temperature at which the first run is stopped.
func (r *reviewer) hot(w parts.Watch) {
	if w.Bearing.Value != "" && w.MostC.Value > hottestC {
		r.add(Finding{
			Part: w.Bearing.Value, Pos: w.Pos, What: w.Bearing.Value + " may run hot before the first run is stopped",
			Numbers: number(w.MostC.Value) + " °C, wanted at most " + number(hottestC) + " °C",
			Rule:    "grease and seals stand about 110 °C", Fix: "70 to 90 °C, or the maker's figure",
		})
	}
}

// allWatched looks for a bearing that is not watched beside one that is.
func (r *reviewer) allWatched() {
	r.beside(seq.Map(r.run().Watch, func(w parts.Watch) parts.Text { return w.Bearing }), Finding{
		Pos: r.run().Pos, What: "the first run watches %s and not %s", Rule: "all bearings of one housing are watched: the one that is set too tight gets hot", Fix: "watch: %s too",
	})
}

// travel looks for a run over the whole travel or stroke, of which no words of the job say how
// long it is: nobody can tell whether the run has gone over all of it; and for one that is
// longer than words or a keyway give.
func (r *reviewer) travel(one parts.Run) {
	load := strings.ToLower(one.Load.Value)
	most, by := r.mostTravelMm(load)
	goes := strings.Contains(load, "travel") || strings.Contains(load, "stroke")
	long, said := 0.0, ""
	if m := runTravel().FindStringSubmatch(load); m != nil {
		long, said = noteMm(m[1], m[2]), m[0]
	}
	r.firstOf(Finding{Pos: one.Load.Pos, Source: "by the job"},
		flaw{long > travelShare*most, Finding{
			What: "a run goes over a longer travel than " + by, Numbers: said + "; at most " + r.mm(most), OverMm: over(long),
			Rule: "words and numbers of one job agree", Fix: "the travel between the stops"}},
		flaw{goes && !travelMm().MatchString(load) && !travelMm().MatchString(r.saidAll()), Finding{
			What: "a run goes over a travel, and the job says nowhere how long that is", Numbers: one.Load.Value,
			Rule: "what is to be seen at the first run has its number", Fix: "the length of the travel between its stops, in the words of the run"}},
	)
}

// mostTravelMm is the longest travel that words of the job give what the load of a run names, or a key in its keyway, with
// what gives it; infinite where nothing does.
func (r *reviewer) mostTravelMm(load string) (mm float64, by string) {
	mm = endless
	is := func(most float64, what string) {
		if most > 0 && most < mm {
			mm, by = most, what
		}
	}
	for e := range seq.Refs(r.job.Loose) {
		if e.Part.Value != "" && r.ofAnother(load, e.Part.Value) {
			continue
		}
		if e.Travels != nil {
			is(e.Travels.Front.Mm+e.Travels.Back.Mm, r.called(e)+" travels")
		}
		said, _ := travelSaid(e)
		is(said, "the words for "+r.called(e)+" give")
		if v := r.viewOf(e.Part.Value); v != nil && isKey(v.p) {
			v.travelsBy(is)
		}
	}
	return mm, by
}

// travelsBy tells how far what slides over a key travels by its keyways.
func (v *view) travelsBy(is func(mm float64, what string)) {
	thick, _, long := v.keyMm()
	for _, p := range v.job.Parts {
		for f := range seq.Refs(p.Radials) {
			if blindSlot(f) && geom.Alike(f.Around.Mm, thick) {
				is(f.Along.Mm-long, v.p.Title.Value+" has in "+f.Name.Value+" of "+p.Title.Value)
			}
		}
	}
}
