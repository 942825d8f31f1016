package measured

import (
	"errors"
	"math"
	"slices"
)

// what an observation looks at.
type watch int

const (
	pair     watch = iota // distance between two holes
	toSpigot              // distance from a hole to the spigot
	hole                  // diameter of a hole
	spigot                // diameter of the spigot
	onCircle              // a hole sits on the circle, give or take the scatter
)

// observation is a measured value with its standard uncertainty in mm.
type observation struct {
	watch watch
	i, j  int     // holes, from 0
	edges float64 // half diameters added to the centre distance
	mm, u float64
	entry Entry
}

// observations are the readings and diameters, then one for each hole that it
// sits on the circle within the scatter.
func (s Survey) observations(scatterMm float64) []observation {
	uniform := func(pm float64) float64 { return plusMinus(pm) / math.Sqrt(3) } // GUM 4.3.7
	var out []observation
	for k, r := range s.Readings {
		o := observation{watch: pair, i: r.From - 1, j: r.To - 1, edges: edges[r.Kind], mm: r.Mm, u: uniform(r.PlusMinusMm), entry: Entry{Reading: k + 1}}
		if r.To == Spigot {
			o.watch, o.j = toSpigot, 0
		}
		out = append(out, o)
	}
	for i, d := range s.Holes {
		out = append(out, observation{watch: hole, i: i, mm: d.Mm, u: uniform(d.PlusMinusMm), entry: Entry{Hole: i + 1}})
	}
	if s.Spigot.Mm > 0 {
		out = append(out, observation{watch: spigot, mm: s.Spigot.Mm, u: uniform(s.Spigot.PlusMinusMm)})
	}
	for i := range s.Holes {
		out = append(out, observation{watch: onCircle, i: i, u: scatterMm})
	}
	return out
}

// state is the flange that the readings are held against. Parameters are in
// one row: radius, n angles, n diameters, spigot diameter, spigot x and y, and
// how far each of n holes is off the radius.
type state struct {
	n int
	p []float64
}

func newState(n int) state { return state{n, make([]float64, 4+3*n)} }

// Where the parameters stand in the row.
func (s state) angleAt(i int) int { return 1 + i }
func (s state) diaAt(i int) int   { return 1 + s.n + i }
func (s state) spigotAt() int     { return 1 + 2*s.n }
func (s state) centreAt() int     { return 2 + 2*s.n } // x, then y
func (s state) offAt(i int) int   { return 4 + 2*s.n + i }

func (s state) angle(i int) float64  { return s.p[s.angleAt(i)] }
func (s state) radius(i int) float64 { return s.p[0] + s.p[s.offAt(i)] }

func (s state) clone() state { return state{s.n, slices.Clone(s.p)} }

// isAngle tells the parameters that are angles.
func (s state) isAngle(k int) bool { return k >= 1 && k <= s.n }

func (s state) place(i int) (x, y float64) {
	sin, cos := math.Sincos(s.angle(i))
	return s.radius(i) * sin, s.radius(i) * cos
}

// predict is what an observation should read, with its derivatives by every
// parameter; angles count as arcs on a circle of radius arc, so that all
// derivatives are plain numbers.
func (s state) predict(o observation, arc float64, row []float64) float64 {
	clear(row)
	switch o.watch {
	case hole:
		row[s.diaAt(o.i)] = 1
		return s.p[s.diaAt(o.i)]
	case spigot:
		row[s.spigotAt()] = 1
		return s.p[s.spigotAt()]
	case onCircle:
		row[s.offAt(o.i)] = 1
		return s.p[s.offAt(o.i)]
	}
	x, y := s.place(o.i)
	at := s.centreAt()
	otherX, otherY, rest := s.p[at], s.p[at+1], -s.p[s.spigotAt()]/2
	if o.watch == pair {
		otherX, otherY = s.place(o.j)
		rest = o.edges * s.p[s.diaAt(o.j)] / 2
	}
	apart := math.Max(math.Hypot(x-otherX, y-otherY), 1e-9)
	ux, uy := (x-otherX)/apart, (y-otherY)/apart
	s.slope(row, o.i, ux, uy, arc)
	row[s.diaAt(o.i)] = o.edges / 2
	if o.watch == pair {
		s.slope(row, o.j, -ux, -uy, arc)
		row[s.diaAt(o.j)] = o.edges / 2
	} else {
		row[s.spigotAt()] = -0.5
		row[at], row[at+1] = -ux, -uy
	}
	return apart + o.edges*s.p[s.diaAt(o.i)]/2 + rest
}

// slope adds the derivatives of a hole's place in the direction ux, uy.
func (s state) slope(row []float64, i int, ux, uy, arc float64) {
	sin, cos := math.Sincos(s.angle(i))
	out := float64(ux*sin) + float64(uy*cos)
	row[0] += out
	row[s.offAt(i)] += out
	row[s.angleAt(i)] += (float64(ux*cos) - float64(uy*sin)) * s.radius(i) / arc
}

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
