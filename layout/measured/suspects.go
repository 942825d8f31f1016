package measured

import (
	"fmt"
	"math"
	"slices"
	"strings"
)

// Suspect is a reading without which the rest agrees.
type Suspect struct {
	Reading int    // index into Survey.Readings, −1 for a diameter
	Hole    int    // hole number of a diameter, else 0
	Name    string // "1–3 over", "diameter of hole 2"
	WantMm  float64
	OffMm   float64 // what was entered, less what the other readings ask for
}

// Inconsistent is a survey whose distances cannot all be true: they do not
// close on one circle within their uncertainties. Suspects holds the readings
// any one of which, left out, lets the rest agree; the likeliest first. It is
// empty when no single reading is to blame.
type Inconsistent struct {
	Suspects []Suspect
	Equal    bool    // the one suspect was singled out by taking the holes as equally spaced
	WorstMm  float64 // the largest misfit of the adjusted whole
}

func (e *Inconsistent) Error() string {
	switch {
	case len(e.Suspects) == 0:
		return fmt.Sprintf("measured: the readings do not close on a circle (up to %.2f mm off), and no single one is to blame", e.WorstMm)
	case len(e.Suspects) == 1:
		s := e.Suspects[0]
		more := ""
		if e.Equal {
			more = ", taking the holes as equally spaced"
		}
		return fmt.Sprintf("measured: the readings do not close: %s looks wrong; the others ask for %.2f mm (%+.2f)%s", s.Name, s.WantMm, s.OffMm, more)
	}
	names := make([]string, len(e.Suspects))
	for i, s := range e.Suspects {
		names[i] = s.Name
	}
	return "measured: the readings do not close: one of " + strings.Join(names, ", ") + " looks wrong"
}

// suspects finds which single reading, left out, lets the rest agree.
func (s Survey) suspects(start state, obs []observation, f *fitted) error {
	out := &Inconsistent{}
	for _, v := range f.residuals {
		out.WorstMm = math.Max(out.WorstMm, math.Abs(v))
	}
	type candidate struct {
		Suspect
		k   int
		chi float64
	}
	without := func(k int, equal bool) (candidate, bool) {
		rest := slices.Delete(slices.Clone(obs), k, k+1)
		var g *fitted
		var err error
		if equal {
			g, err = s.equalFit(start, rest)
		} else {
			// A wild reading may have spoilt the start.
			st := start
			if o := obs[k]; o.reading >= 0 {
				t := s
				t.Readings = slices.Delete(slices.Clone(s.Readings), o.reading, o.reading+1)
				if again, err := t.start(); err == nil {
					st = again
				}
			}
			g, err = adjust(st, rest, false)
		}
		if err != nil || g.ordered() != nil || g.chi > chiQuantile(1-doubt, g.redundancy)+1e-6 {
			return candidate{}, false
		}
		o := obs[k]
		want := g.predict(o, g.arc, make([]float64, len(g.p)))
		c := candidate{Suspect: Suspect{Reading: o.reading, Name: s.nameOf(o), WantMm: want, OffMm: o.mm - want}, k: k, chi: g.chi}
		if o.watch == hole {
			c.Hole = o.i + 1
		}
		return c, math.Abs(c.OffMm) > o.u // a reading that was right is no suspect
	}
	var found []candidate
	for k := range obs {
		if obs[k].watch == spigot {
			continue // without its diameter nothing can be said of it
		}
		if c, ok := without(k, false); ok {
			found = append(found, c)
		}
	}
	slices.SortStableFunc(found, func(a, b candidate) int {
		switch {
		case a.chi < b.chi-1e-6:
			return -1
		case a.chi > b.chi+1e-6:
			return 1
		}
		return 0
	})
	// Those that explain it about as well as the best.
	if len(found) > 1 {
		best := found[0].chi
		found = slices.DeleteFunc(found, func(c candidate) bool { return c.chi > best+4 })
	}
	if len(found) > 1 {
		var single []candidate
		for _, c := range found {
			if e, ok := without(c.k, true); ok {
				single = append(single, e)
			}
		}
		if len(single) == 1 {
			found, out.Equal = single, true
		}
	}
	for _, c := range found {
		out.Suspects = append(out.Suspects, c.Suspect)
	}
	return out
}
