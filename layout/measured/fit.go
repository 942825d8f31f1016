package measured

import (
	"errors"
	"fmt"
	"math"
	"slices"
)

// doubt is the share of consistent surveys that the check still refuses.
const doubt = 0.001

// Fit works out the pitch circle of a survey. The error is an *InputError for
// values or readings that cannot be used, and an *Inconsistent where readings
// contradict each other by more than their uncertainties allow.
func Fit(s Survey) (*Result, error) {
	if err := s.check(); err != nil {
		return nil, err
	}
	obs := s.observations()
	start, err := s.start()
	if err != nil {
		return nil, err
	}
	f, err := adjust(start, obs, false)
	if errors.Is(err, errUndetermined) {
		return nil, refuse(-1, s.leastMeasured(), "measure every hole to both neighbours, and some to the opposite ones",
			"the readings do not fix every hole: hole %d has too few", s.leastMeasured())
	}
	if err != nil {
		return nil, err
	}
	if f.redundancy > 0 && f.chi > chiQuantile(1-doubt, f.redundancy) {
		return nil, s.suspects(start, obs, f)
	}
	if err := f.ordered(); err != nil {
		return nil, err
	}
	return s.result(f, start)
}

// start guesses the flange: from the ring of neighbouring distances where they
// are all there, else equally spaced with the middle of the radii that the
// readings ask for.
func (s Survey) start() (state, error) {
	n := len(s.Holes)
	st := state{n, make([]float64, 4+2*n)}
	for i, d := range s.Holes {
		st.p[1+i] = 2 * math.Pi * float64(i) / float64(n)
		st.p[1+n+i] = d.Mm
	}
	st.p[1+2*n] = s.Spigot.Mm
	chords := make([]float64, n)
	var radii []float64
	for k, r := range s.Readings {
		c := r.Mm
		if r.To == Spigot {
			switch r.Kind {
			case Over:
				c -= s.Holes[r.From-1].Mm / 2
			case Between:
				c += s.Holes[r.From-1].Mm / 2
			}
			radii = append(radii, c+s.Spigot.Mm/2)
			continue
		}
		half := (s.Holes[r.From-1].Mm + s.Holes[r.To-1].Mm) / 2
		switch r.Kind {
		case Over:
			c -= half
		case Between:
			c += half
		}
		if c <= 0 {
			return st, refuse(k, 0, "the distance across the far edges", "reading %s leaves no distance between the centres", r.Name())
		}
		steps := ((r.To-r.From)%n + n) % n
		radii = append(radii, c/2/math.Sin(math.Pi*float64(steps)/float64(n)))
		if steps == 1 {
			chords[r.From-1] = c
		} else if steps == n-1 {
			chords[r.To-1] = c
		}
	}
	if len(radii) == 0 {
		return st, refuse(-1, 1, "distances over or between the holes", "there are no readings")
	}
	slices.Sort(radii)
	st.p[0] = radii[len(radii)/2]
	if slices.Min(chords) > 0 {
		s.closeRing(&st, chords)
	}
	return st, nil
}

// closeRing finds the circle on which the chords go round exactly once, and
// leaves st alone if there is none.
func (s Survey) closeRing(st *state, chords []float64) {
	longest := slices.Max(chords)
	at := slices.Index(chords, longest)
	// turn is how far round the chords reach; wide means that the longest
	// one spans more than half the circle.
	turn := func(r float64, wide bool) float64 {
		sum := 0.0
		for i, c := range chords {
			a := 2 * math.Asin(math.Min(c/2/r, 1))
			if wide && i == at {
				a = 2*math.Pi - a
			}
			sum += a
		}
		return sum - 2*math.Pi
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
	angle := 0.0
	for i, c := range chords {
		st.p[1+i] = angle
		a := 2 * math.Asin(math.Min(c/2/lo, 1))
		if wide && i == at {
			a = 2*math.Pi - a
		}
		angle += a
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

// ordered refuses a fit whose holes do not follow each other clockwise.
func (f *fitted) ordered() error {
	for i := range f.n {
		next := f.angle(0) + 2*math.Pi
		if i+1 < f.n {
			next = f.angle(i + 1)
		}
		if !(next > f.angle(i)) {
			return refuse(-1, i+1, "number the holes clockwise, looking at the flange", "hole %d does not come before hole %d on the circle", i+1, (i+1)%f.n+1)
		}
	}
	return nil
}

// result writes a fit out in degrees and millimetres.
func (s Survey) result(f *fitted, start state) (*Result, error) {
	n := f.n
	// Readings that scatter more than they claim make everything less sure.
	scale := 1.0
	if f.redundancy > 0 {
		scale = math.Max(1, math.Sqrt(f.chi/float64(f.redundancy)))
	}
	u := func(factors map[int]float64) float64 { return scale * math.Sqrt(f.variance(factors)) }
	out := &Result{
		PCDMm: 2 * f.radius(), PCDUMm: 2 * u(map[int]float64{0: 1}),
		Redundancy: f.redundancy, ChiSquare: f.chi, Coverage: Coverage,
	}
	turn := s.FirstDeg*math.Pi/180 - f.angle(0)
	off := make([]float64, n)
	mean := 0.0
	for i := range n {
		off[i] = f.angle(i) - 2*math.Pi*float64(i)/float64(n)
		mean += off[i] / float64(n)
	}
	for i := range n {
		arcU := u(map[int]float64{1 + i: f.radius() / f.arc})
		rU := u(map[int]float64{0: 1})
		angle := f.angle(i) + turn
		sin, cos := math.Sincos(angle)
		deg := math.Mod(angle*180/math.Pi, 360)
		if deg < -1e-9 {
			deg += 360
		}
		h := HoleResult{
			N: i + 1, AngleDeg: math.Abs(deg), AngleUDeg: arcU / f.radius() * 180 / math.Pi,
			XMm: f.radius() * sin, YMm: f.radius() * cos, PlaceUMm: math.Max(arcU, rU),
			DiameterMm: f.dia(i), DiaUMm: u(map[int]float64{1 + n + i: 1}),
			OffEqualMm: (off[i] - mean) * f.radius(),
		}
		out.Holes = append(out.Holes, h)
		if math.Abs(h.OffEqualMm) > math.Abs(out.EqualOffMm) || out.EqualHole == 0 {
			out.EqualHole, out.EqualOffMm = h.N, h.OffEqualMm
		}
	}
	if s.Spigot.Mm > 0 {
		out.SpigotMm, out.SpigotUMm = f.spigot(), u(map[int]float64{1 + 2*n: 1})
	}
	if f.active[len(f.active)-1] == 3+2*n {
		ex, ey := f.offset()
		// The offset turns with the pattern (clockwise by turn).
		sin, cos := math.Sincos(turn)
		out.Centred = &Offset{XMm: ex*cos + ey*sin, YMm: -ex*sin + ey*cos,
			UMm: math.Max(u(map[int]float64{2 + 2*n: 1}), u(map[int]float64{3 + 2*n: 1}))}
	}
	for k, o := range f.obs {
		r := Residual{MeasuredMm: o.mm, FittedMm: o.mm - f.residuals[k], OffMm: f.residuals[k], Reading: s.nameOf(o)}
		if f.spread[k] > 0 {
			r.Normalised = f.residuals[k] / f.spread[k]
		}
		out.Residuals = append(out.Residuals, r)
	}
	equal, err := s.equalFit(start, f.obs)
	if err != nil {
		return nil, fmt.Errorf("measured: equal spacing: %w", err)
	}
	out.Equal = equal.chi-f.chi <= chiQuantile(0.99, n-1)
	return out, nil
}

// equalFit is the same survey with the holes held at equal spacing.
func (s Survey) equalFit(start state, obs []observation) (*fitted, error) {
	st := state{start.n, append([]float64(nil), start.p...)}
	for i := range st.n {
		st.p[1+i] = 2 * math.Pi * float64(i) / float64(st.n)
	}
	return adjust(st, obs, true)
}

func (s Survey) nameOf(o observation) string {
	switch {
	case o.watch == hole:
		return fmt.Sprintf("diameter of hole %d", o.i+1)
	case o.watch == spigot:
		return "spigot diameter"
	}
	return s.Readings[o.reading].Name()
}

// chiQuantile is the chi-square value that a share p of surveys stays under,
// by the cube-root approximation of Wilson and Hilferty (1931), good to a few
// percent from 1 degree of freedom up.
func chiQuantile(p float64, freedom int) float64 {
	if freedom < 1 {
		return 0
	}
	z := math.Sqrt2 * math.Erfinv(2*p-1)
	k := 2 / (9 * float64(freedom))
	c := 1 - k + z*math.Sqrt(k)
	return float64(freedom) * c * c * c
}
