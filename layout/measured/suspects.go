package measured

import (
	"cmp"
	"fmt"
	"math"
	"slices"

	"centrepop/parts/seq"
)

// Suspect is an entry without which the rest agrees.
type Suspect struct {
	Entry
	WantMm float64 // what the others ask for
	OffMm  float64 // what was entered, less that
}

// Inconsistent is a survey whose distances cannot all be true within their
// uncertainties. Suspects holds the entries any one of which, left out, lets
// the rest agree; the likeliest first. It is empty when no single one is to
// blame.
type Inconsistent struct {
	Suspects []Suspect
	Equal    bool    // the one suspect was singled out by taking the holes as equally spaced
	WorstMm  float64 // the largest misfit of the adjusted whole
	// CaliperMm is the ± with which all readings would agree, where a caliper
	// may be as bad as that; 0 where it may not.
	CaliperMm float64
}

// Error gives the worst misclosure in mm, for a log; package words says it to people.
func (e *Inconsistent) Error() string {
	return fmt.Sprintf("measured: inconsistent: up to %.3f mm off, suspects %v", e.WorstMm, e.Suspects)
}

// caliperSteps are the ± that a caliper may have, the last a worn or badly
// held one (common practice, no source).
var caliperSteps = []float64{0.02, 0.03, 0.05, 0.1, 0.15, 0.2, 0.3}

// caliper finds the ± of the readings at which a survey agrees well enough.
func (s Survey) caliper(start state) float64 {
	for _, pm := range caliperSteps {
		t := s
		t.Readings = slices.Clone(s.Readings)
		for k := range t.Readings {
			r := &t.Readings[k]
			r.PlusMinusMm = math.Max(pm, plusMinus(r.PlusMinusMm))
		}
		if f, _, err := t.fit(start); err == nil && f.chi <= chiQuantile(1-shapeDoubt, f.redundancy) {
			return pm
		}
	}
	return 0
}

// candidate is a suspect with what the rest leaves over.
type candidate struct {
	Suspect
	k   int // its observation
	chi float64
}

// without fits the survey without one observation; false if the rest does not
// agree, or asks for what was entered.
func (s Survey) without(k int, start state, obs []observation, equal bool) (candidate, bool) {
	rest := slices.Delete(slices.Clone(obs), k, k+1)
	o := obs[k]
	var g *fitted
	var err error
	if equal {
		g, err = equalFit(start, rest)
	} else {
		if o.entry.Reading > 0 && len(s.Readings) > 1 { // a wild reading may have spoilt the start
			t := s
			t.Readings = slices.Delete(slices.Clone(s.Readings), o.entry.Reading-1, o.entry.Reading)
			start = t.start()
		}
		g, err = adjust(start, rest, false)
	}
	if err != nil || g.chi > chiQuantile(1-doubt, g.redundancy)+1e-6 {
		return candidate{}, false
	}
	if _, ok := g.ordered(); !ok {
		return candidate{}, false
	}
	want := g.predict(o, g.arc, g.row)
	c := candidate{Suspect{Entry: o.entry, WantMm: want, OffMm: o.mm - want}, k, g.chi}
	return c, math.Abs(c.OffMm) > o.u
}

// aboutAsGood is how much more a suspect may leave over than the likeliest:
// two standard deviations.
const aboutAsGood = 4.0

// mostSuspects is how many are worth measuring again; with more, no single one
// is to blame.
const mostSuspects = 6

// suspects finds which single entry, left out, lets the rest agree.
func (s Survey) suspects(start state, f *fitted) error {
	out := &Inconsistent{CaliperMm: s.caliper(start)}
	var found []candidate
	for k, o := range f.obs {
		if o.watch == onCircle || o.watch == spigot {
			continue // without its diameter nothing can be said of a spigot
		}
		out.WorstMm = math.Max(out.WorstMm, math.Abs(f.residuals[k]))
		if c, ok := s.without(k, start, f.obs, false); ok {
			found = append(found, c)
		}
	}
	slices.SortStableFunc(found, func(a, b candidate) int {
		if math.Abs(a.chi-b.chi) <= 1e-6 {
			return 0
		}
		return cmp.Compare(a.chi, b.chi)
	})
	if len(found) > 1 {
		best := found[0].chi
		found = slices.DeleteFunc(found, func(c candidate) bool { return c.chi > best+aboutAsGood })
	}
	if len(found) > 1 {
		var single []candidate
		for _, c := range found {
			if e, ok := s.without(c.k, start, f.obs, true); ok {
				single = append(single, e)
			}
		}
		if len(single) == 1 {
			found, out.Equal = single, true
		}
	}
	if len(found) > mostSuspects {
		found = nil
	}
	out.Suspects = append(out.Suspects, seq.Map(found, func(c candidate) Suspect { return c.Suspect })...)
	return out
}
