package measured

import (
	"math"
	"slices"
)

// Shares of consistent surveys that a check still refuses: of the whole, and
// of the claims that the holes are on one circle and equally spaced.
const (
	doubt      = 0.001
	shapeDoubt = 0.01
)

// Scatters that stand for none at all and for any.
const (
	noScatterMm  = 0.001
	anyScatterMm = 10.0
)

// Fit works out the circle and every hole of a survey. The error is an
// *InputError for values or readings that cannot be used, and an
// *Inconsistent where readings contradict each other by more than their
// uncertainties allow.
func Fit(s Survey) (*Result, error) {
	if err := s.check(); err != nil {
		return nil, err
	}
	start := s.start()
	f, scatter, err := s.fit(start)
	if err != nil {
		return nil, &InputError{Code: Undetermined, Reading: -1, Hole: s.leastMeasured()}
	}
	if !f.agrees() {
		return nil, s.suspects(start, f)
	}
	if i, ok := f.ordered(); !ok {
		return nil, &InputError{Code: NotClockwise, Reading: -1, Hole: i + 1}
	}
	out := s.result(f)
	out.ScatterMm = scatter
	return out, s.shape(out, f, start)
}

// fit adjusts the flange with holes that sit about one circle and, where the
// readings contradict that but fix and check every hole's own radius, with
// holes that sit anywhere.
func (s Survey) fit(start state) (f *fitted, scatterMm float64, err error) {
	f, err = adjust(start, s.observations(ScatterMm), false)
	if err != nil || f.agrees() {
		return f, ScatterMm, err
	}
	free, err := adjust(start, s.observations(anyScatterMm), false)
	if err == nil {
		free.redundancy -= free.n - 3 // any three holes are on a circle
		if free.redundancy > 0 && free.agrees() {
			return free, 0, nil
		}
	}
	return f, ScatterMm, nil
}

// agrees tells whether what is left over is within the uncertainties.
func (f *fitted) agrees() bool {
	return f.redundancy == 0 || f.chi <= chiQuantile(1-doubt, f.redundancy)
}

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

// ordered tells whether the holes follow each other clockwise, and the first
// that does not come before the next.
func (f *fitted) ordered() (hole int, ok bool) {
	for i := range f.n {
		next := f.angle(0) + 2*math.Pi
		if i+1 < f.n {
			next = f.angle(i + 1)
		}
		if !(next > f.angle(i)) {
			return i, false
		}
	}
	return 0, true
}

// result writes a fit out in degrees and millimetres.
func (s Survey) result(f *fitted) *Result {
	u := f.sure()
	mean := map[int]float64{0: 1} // the radius, whatever of it is in the offsets
	for i := range f.n {
		mean[f.offAt(i)] = 1 / float64(f.n)
	}
	out := &Result{
		PCDMm: 2 * f.p[0], PCDUMm: 2 * u(mean),
		Redundancy: f.redundancy, ChiSquare: f.chi, Coverage: Coverage, Holes: s.holes(f),
	}
	for _, h := range out.Holes {
		if math.Abs(h.OffEqualMm) > math.Abs(out.EqualOffMm) || out.EqualHole == 0 {
			out.EqualHole, out.EqualOffMm = h.N, h.OffEqualMm
		}
		if math.Abs(h.OffCircleMm) > math.Abs(out.CircleOffMm) || out.CircleHole == 0 {
			out.CircleHole, out.CircleOffMm = h.N, h.OffCircleMm
		}
	}
	if s.Spigot.Mm > 0 {
		out.SpigotMm, out.SpigotUMm = f.p[f.spigotAt()], u(map[int]float64{f.spigotAt(): 1})
	}
	if at := f.centreAt(); slices.Contains(f.active, at) {
		// The offset turns with the pattern, clockwise.
		sin, cos := math.Sincos(s.turn(f))
		ex, ey := f.p[at], f.p[at+1]
		out.Centred = &Offset{XMm: ex*cos + ey*sin, YMm: -ex*sin + ey*cos,
			UMm: math.Max(u(map[int]float64{at: 1}), u(map[int]float64{at + 1: 1}))}
	}
	for k, o := range f.obs {
		if o.watch == onCircle {
			continue
		}
		r := Residual{MeasuredMm: o.mm, FittedMm: o.mm - f.residuals[k], OffMm: f.residuals[k], Entry: o.entry}
		if f.spread[k] > 0 {
			r.Normalised = f.residuals[k] / f.spread[k]
		}
		out.Residuals = append(out.Residuals, r)
	}
	return out
}

// sure gives the standard uncertainty of a sum of parameters, each times a
// factor. Readings that scatter more than they claim make all less sure.
func (f *fitted) sure() func(factors map[int]float64) float64 {
	scale := 1.0
	if f.redundancy > 0 {
		scale = math.Max(1, math.Sqrt(f.chi/float64(f.redundancy)))
	}
	return func(factors map[int]float64) float64 { return scale * math.Sqrt(f.variance(factors)) }
}

// turn carries the angles of the fit to the clock, in radians.
func (s Survey) turn(f *fitted) float64 { return s.FirstDeg*math.Pi/180 - f.angle(0) }

// holes writes out every hole.
func (s Survey) holes(f *fitted) []HoleResult {
	u := f.sure()
	off := make([]float64, f.n)
	mean := 0.0
	for i := range f.n {
		off[i] = f.angle(i) - 2*math.Pi*float64(i)/float64(f.n)
		mean += off[i] / float64(f.n)
	}
	var out []HoleResult
	for i := range f.n {
		r := f.radius(i)
		arcU := u(map[int]float64{f.angleAt(i): r / f.arc})
		radiusU := u(map[int]float64{0: 1, f.offAt(i): 1})
		angle := f.angle(i) + s.turn(f)
		sin, cos := math.Sincos(angle)
		deg := math.Mod(angle*180/math.Pi, 360)
		if deg < -1e-9 {
			deg += 360
		}
		out = append(out, HoleResult{
			N: i + 1, AngleDeg: math.Abs(deg), AngleUDeg: arcU / r * 180 / math.Pi,
			RadiusMm: r, RadiusUMm: radiusU,
			XMm: r * sin, YMm: r * cos, PlaceUMm: math.Max(arcU, radiusU),
			DiameterMm: f.p[f.diaAt(i)], DiaUMm: u(map[int]float64{f.diaAt(i): 1}),
			OffCircleMm: r - f.p[0], OffEqualMm: (off[i] - mean) * f.p[0],
		})
	}
	return out
}

// shape judges whether the holes are equally spaced and on one circle.
func (s Survey) shape(out *Result, f *fitted, start state) error {
	equal, err := equalFit(start, f.obs)
	if err != nil {
		return err
	}
	out.Equal = equal.chi-f.chi <= chiQuantile(1-shapeDoubt, f.n-1)
	circle, err := adjust(start, s.observations(noScatterMm), false)
	if err != nil {
		return err
	}
	out.OneCircle = f.n == 3 || circle.chi-f.chi <= chiQuantile(1-shapeDoubt, f.n-3)
	return nil
}

// equalFit is an adjustment with the holes held at equal spacing.
func equalFit(start state, obs []observation) (*fitted, error) {
	st := start.clone()
	st.space()
	return adjust(st, obs, true)
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
