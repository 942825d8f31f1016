package measured

import (
	"errors"
	"math"
	"slices"
)

type fitted struct {
	state
	arc        float64     // radius that turns angle parameters into arcs
	equal      bool        // the angles were held
	active     []int       // parameters that were adjusted
	cov        [][]float64 // covariance of the active parameters, mm²
	obs        []observation
	residuals  []float64 // measured − fitted
	spread     []float64 // standard deviation of each residual; 0 where nothing checks it
	chi        float64
	redundancy int
	row        []float64 // derivatives of the observation looked at last
	used       []int     // active parameters it depends on; there are few
}

// errUndetermined says that the readings leave something free.
var errUndetermined = errors.New("measured: the readings leave a hole free")

// gaugeMm holds in place what changes no reading: turning and shifting the
// whole flange, and moving an equal amount from the offsets to the radius. Its
// size does not matter as long as it is small.
const gaugeMm = 0.003

// Damping of the first step, and when steps are small enough to stop.
const (
	firstDamping = 1e-4
	smallStepMm  = 1e-8
	mostSteps    = 100
)

// adjust is a least-squares fit by damped Gauss-Newton steps. With equal, the
// angles stay as they start.
func adjust(start state, obs []observation, equal bool) (*fitted, error) {
	f := &fitted{state: start.clone(), arc: start.p[0], equal: equal, obs: obs, row: make([]float64, len(start.p))}
	f.activate()
	if f.redundancy < 0 {
		return nil, errUndetermined
	}
	if err := f.converge(); err != nil {
		return nil, err
	}
	return f, f.judge()
}

// activate lists the parameters to adjust and counts what checks them.
func (f *fitted) activate() {
	looks := func(w watch) bool {
		return slices.ContainsFunc(f.obs, func(o observation) bool { return o.watch == w })
	}
	withSpigot, withCentre := looks(spigot), looks(toSpigot)
	for k := range f.p {
		switch {
		case f.isAngle(k) && f.equal, k == f.spigotAt() && !withSpigot, k >= f.centreAt() && k < f.offAt(0) && !withCentre:
			continue
		}
		f.active = append(f.active, k)
	}
	f.redundancy = len(f.obs) - len(f.active)
	if !f.equal {
		f.redundancy++ // the turn of the whole is no unknown
	}
}

// normal fills the normal equations at s and returns the weighted sum of
// squares; with a nil only that.
func (f *fitted) normal(s state, a [][]float64, b []float64) float64 {
	chi := 0.0
	for _, o := range f.obs {
		v := (o.mm - s.predict(o, f.arc, f.row)) / o.u
		chi += float64(v * v)
		if a == nil {
			continue
		}
		f.look()
		for _, x := range f.used {
			w := f.row[f.active[x]] / o.u
			b[x] += float64(w * v)
			for _, y := range f.used {
				a[x][y] += float64(w * f.row[f.active[y]] / o.u)
			}
		}
	}
	if a != nil && !f.equal {
		f.hold(s, a)
	}
	return chi
}

// look lists which active parameters the last observation depends on.
func (f *fitted) look() {
	f.used = f.used[:0]
	for x, k := range f.active {
		if f.row[k] != 0 {
			f.used = append(f.used, x)
		}
	}
}

// hold keeps still the four combinations that no reading sees: the sum of the
// angles, the sum of the offsets, and their sums in x and in y.
func (f *fitted) hold(s state, a [][]float64) {
	for _, weight := range []func(i int) (angle, off float64){
		func(int) (float64, float64) { return 1, 0 },
		func(int) (float64, float64) { return 0, 1 },
		func(i int) (float64, float64) { return 0, math.Sin(s.angle(i)) },
		func(i int) (float64, float64) { return 0, math.Cos(s.angle(i)) },
	} {
		clear(f.row)
		for i := range f.n {
			f.row[f.angleAt(i)], f.row[f.offAt(i)] = weight(i)
		}
		f.look()
		for _, x := range f.used {
			for _, y := range f.used {
				a[x][y] += float64(f.row[f.active[x]]*f.row[f.active[y]]) / (gaugeMm * gaugeMm)
			}
		}
	}
}

func (f *fitted) converge() error {
	m := len(f.active)
	damping := firstDamping
	f.chi = f.normal(f.state, nil, nil)
	for range mostSteps {
		a, b := square(m), make([]float64, m)
		f.normal(f.state, a, b)
		for x := range a {
			a[x][x] *= 1 + damping
		}
		l, ok := cholesky(a, 1e-14)
		if !ok {
			return errUndetermined
		}
		next, largest := f.step(solve(l, b))
		chi := math.Inf(1)
		if next.p[0] > 0 {
			chi = f.normal(next, nil, nil)
		}
		if chi > f.chi+1e-12 {
			damping *= 10
			continue
		}
		f.state, f.chi = next, chi
		damping /= 10
		if largest < smallStepMm {
			break
		}
	}
	return nil
}

// step is the state a step further, and the largest change in it.
func (f *fitted) step(by []float64) (next state, largest float64) {
	next = f.clone()
	for x, k := range f.active {
		largest = math.Max(largest, math.Abs(by[x]))
		if f.isAngle(k) {
			by[x] /= f.arc
		}
		next.p[k] += by[x]
	}
	return next, largest
}

// judge works out how sure the parameters are and how large each residual may
// be.
func (f *fitted) judge() error {
	a, b := square(len(f.active)), make([]float64, len(f.active))
	f.normal(f.state, a, b)
	l, ok := cholesky(a, 1e-7)
	if !ok {
		return errUndetermined
	}
	f.cov = inverse(l)
	for _, o := range f.obs {
		f.residuals = append(f.residuals, o.mm-f.predict(o, f.arc, f.row))
		f.look()
		explained := 0.0
		for _, x := range f.used {
			for _, y := range f.used {
				explained += float64(f.row[f.active[x]] * f.cov[x][y] * f.row[f.active[y]])
			}
		}
		spread := math.Sqrt(math.Max(float64(o.u*o.u)-explained, 0))
		if spread < 1e-4*o.u {
			spread = 0
		}
		f.spread = append(f.spread, spread)
	}
	return nil
}

// variance is the variance of a sum of parameters, each times a factor.
func (f *fitted) variance(factors map[int]float64) float64 {
	sum := 0.0
	for x, kx := range f.active {
		if factors[kx] == 0 {
			continue
		}
		for y, ky := range f.active {
			sum += float64(factors[kx] * f.cov[x][y] * factors[ky])
		}
	}
	return math.Max(sum, 0)
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

// Shares of consistent surveys that a check still refuses: of the whole, and
// of the claims that the holes are on one circle and equally spaced.
const (
	doubt      = 0.001
	shapeDoubt = 0.01
)

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

// equalFit is an adjustment with the holes held at equal spacing.
func equalFit(start state, obs []observation) (*fitted, error) {
	st := start.clone()
	st.space()
	return adjust(st, obs, true)
}

// Scatters that stand for none at all and for any.
const (
	noScatterMm  = 0.001
	anyScatterMm = 10.0
)

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
