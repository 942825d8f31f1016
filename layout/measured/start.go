package measured

import (
	"math"
	"slices"
)

// start guesses the flange: from the ring of neighbouring distances where they
// are all there, else equally spaced with the middle of the radii that the
// readings ask for.
func (s Survey) start() state {
	n := len(s.Holes)
	st := newState(n)
	st.space()
	for i, d := range s.Holes {
		st.p[st.diaAt(i)] = d.Mm
	}
	st.p[st.spigotAt()] = s.Spigot.Mm
	chords := make([]float64, n)
	var radii []float64
	for _, r := range s.Readings {
		c := s.centres(r)
		if r.To == Spigot {
			radii = append(radii, c)
			continue
		}
		steps := ((r.To-r.From)%n + n) % n
		radii = append(radii, c/2/math.Sin(math.Pi*float64(steps)/float64(n)))
		if steps == 1 {
			chords[r.From-1] = c
		} else if steps == n-1 {
			chords[r.To-1] = c
		}
	}
	slices.Sort(radii)
	st.p[0] = radii[len(radii)/2]
	if slices.Min(chords) > 0 {
		s.closeRing(&st, chords)
	}
	return st
}

// space sets the holes at equal angles.
func (s state) space() {
	for i := range s.n {
		s.p[s.angleAt(i)] = 2 * math.Pi * float64(i) / float64(s.n)
	}
}

// closeRing finds the circle on which the chords go round exactly once, and
// leaves st alone if there is none.
func (s Survey) closeRing(st *state, chords []float64) {
	longest := slices.Max(chords)
	at := slices.Index(chords, longest)
	// The angle of a chord; wide means that the longest one spans more than half the circle.
	angle := func(i int, r float64, wide bool) float64 {
		a := 2 * math.Asin(math.Min(chords[i]/2/r, 1))
		if wide && i == at {
			a = 2*math.Pi - a
		}
		return a
	}
	turn := func(r float64, wide bool) (over float64) { // how far round the chords reach
		for i := range chords {
			over += angle(i, r, wide)
		}
		return over - 2*math.Pi
	}
	lo := longest / 2
	wide := turn(lo, false) < 0
	hi := lo * 1e4
	sign := 1.0
	if wide {
		sign = -1 // the others reach further round as the circle gets smaller
	}
	if !(sign*turn(lo, wide) >= 0 && sign*turn(hi, wide) < 0) {
		return
	}
	for range 200 {
		mid := (lo + hi) / 2
		if sign*turn(mid, wide) >= 0 {
			lo = mid
		} else {
			hi = mid
		}
	}
	st.p[0] = lo
	for i := 1; i < len(chords); i++ {
		st.p[st.angleAt(i)] = st.p[st.angleAt(i-1)] + angle(i-1, lo, wide)
	}
}

// leastMeasured is the hole with the fewest readings.
func (s Survey) leastMeasured() int {
	count := make([]int, len(s.Holes))
	for _, r := range s.Readings {
		count[r.From-1]++
		if r.To != Spigot {
			count[r.To-1]++
		}
	}
	return slices.Index(count, slices.Min(count)) + 1
}
