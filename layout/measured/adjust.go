package measured

import (
	"errors"
	"math"
)

// what an observation looks at.
type watch int

const (
	pair     watch = iota // distance between two holes
	toSpigot              // distance from a hole to the spigot
	hole                  // diameter of a hole
	spigot                // diameter of the spigot
)

// observation is a measured value with its standard uncertainty in mm.
type observation struct {
	watch   watch
	i, j    int     // holes, from 0
	edges   float64 // half diameters added to the centre distance: +1 over, −1 between, 0 centres
	mm, u   float64
	reading int // index into Survey.Readings, −1 for diameters
}

func (s Survey) observations() []observation {
	uniform := func(pm float64) float64 { return plusMinus(pm) / math.Sqrt(3) } // GUM 4.3.7
	var out []observation
	for k, r := range s.Readings {
		o := observation{watch: pair, i: r.From - 1, j: r.To - 1, mm: r.Mm, u: uniform(r.PlusMinusMm), reading: k}
		if r.To == Spigot {
			o.watch, o.j = toSpigot, 0
		}
		switch r.Kind {
		case Over:
			o.edges = 1
		case Between:
			o.edges = -1
		}
		out = append(out, o)
	}
	for i, d := range s.Holes {
		out = append(out, observation{watch: hole, i: i, mm: d.Mm, u: uniform(d.PlusMinusMm), reading: -1})
	}
	if s.Spigot.Mm > 0 {
		out = append(out, observation{watch: spigot, mm: s.Spigot.Mm, u: uniform(s.Spigot.PlusMinusMm), reading: -1})
	}
	return out
}

// state is the flange that the readings are held against. Parameters are in
// one row: radius, n angles, n diameters, spigot diameter, spigot x and y.
type state struct {
	n int
	p []float64
}

func (s state) radius() float64        { return s.p[0] }
func (s state) angle(i int) float64    { return s.p[1+i] }
func (s state) dia(i int) float64      { return s.p[1+s.n+i] }
func (s state) spigot() float64        { return s.p[1+2*s.n] }
func (s state) offset() (x, y float64) { return s.p[2+2*s.n], s.p[3+2*s.n] }

// predict is what an observation should read, with its derivatives by every
// parameter; angles count as arcs on a circle of radius arc, so that all
// derivatives are plain numbers.
func (s state) predict(o observation, arc float64, row []float64) float64 {
	clear(row)
	n := s.n
	switch o.watch {
	case hole:
		row[1+n+o.i] = 1
		return s.dia(o.i)
	case spigot:
		row[1+2*n] = 1
		return s.spigot()
	case toSpigot:
		sin, cos := math.Sincos(s.angle(o.i))
		ex, ey := s.offset()
		dx, dy := s.radius()*sin-ex, s.radius()*cos-ey
		dist := math.Max(math.Hypot(dx, dy), 1e-9)
		ux, uy := dx/dist, dy/dist
		row[0] = ux*sin + uy*cos
		row[1+o.i] = (ux*cos - uy*sin) * s.radius() / arc
		row[1+n+o.i] = o.edges / 2
		row[1+2*n] = -0.5
		row[2+2*n], row[3+2*n] = -ux, -uy
		return dist + o.edges*s.dia(o.i)/2 - s.spigot()/2
	}
	sin, cos := math.Sincos((s.angle(o.j) - s.angle(o.i)) / 2)
	sign := math.Copysign(1, sin)
	row[0] = 2 * math.Abs(sin)
	row[1+o.j] = s.radius() * cos * sign / arc
	row[1+o.i] = -row[1+o.j]
	row[1+n+o.i], row[1+n+o.j] = o.edges/2, o.edges/2
	return 2*s.radius()*math.Abs(sin) + o.edges*(s.dia(o.i)+s.dia(o.j))/2
}

// fitted is an adjusted flange.
type fitted struct {
	state
	arc        float64     // radius that turns angle parameters into arcs
	active     []int       // parameters that were adjusted
	cov        [][]float64 // covariance of the active parameters, mm²
	obs        []observation
	residuals  []float64 // measured − fitted
	spread     []float64 // standard deviation of each residual; 0 where nothing checks it
	chi        float64
	redundancy int
}

// errUndetermined says that the readings leave something free.
var errUndetermined = errors.New("measured: the readings leave a hole free")

// gaugeMm holds the mean of all angles in place: turning the whole flange
// changes no reading. Its size does not matter as long as it is small.
const gaugeMm = 0.01

// adjust is a least-squares fit by damped Gauss-Newton steps. With equal, the
// angles stay as they start.
func adjust(start state, obs []observation, equal bool) (*fitted, error) {
	n := start.n
	f := &fitted{state: state{n, append([]float64(nil), start.p...)}, arc: start.radius(), obs: obs}
	offset := false
	withSpigot := false
	for _, o := range obs {
		offset = offset || o.watch == toSpigot
		withSpigot = withSpigot || o.watch == spigot
	}
	for k := range f.p {
		switch {
		case k >= 1 && k <= n && equal, k == 1+2*n && !withSpigot, k > 1+2*n && !offset:
			continue
		}
		f.active = append(f.active, k)
	}
	m := len(f.active)
	free := m
	if !equal {
		free-- // the turn of the whole
	}
	f.redundancy = len(obs) - free
	if f.redundancy < 0 {
		return nil, errUndetermined
	}
	row := make([]float64, len(f.p))
	var used []int
	// normal fills the normal equations at s and returns the weighted sum of squares.
	normal := func(s state, a [][]float64, b []float64) float64 {
		chi := 0.0
		for _, o := range obs {
			v := (o.mm - s.predict(o, f.arc, row)) / o.u
			chi += float64(v * v)
			if a == nil {
				continue
			}
			used = f.used(row, used[:0])
			for _, x := range used {
				w := row[f.active[x]] / o.u
				b[x] += float64(w * v)
				for _, y := range used {
					a[x][y] += float64(w * row[f.active[y]] / o.u)
				}
			}
		}
		if a != nil && !equal {
			for x, kx := range f.active {
				for y, ky := range f.active {
					if kx >= 1 && kx <= n && ky >= 1 && ky <= n {
						a[x][y] += 1 / (gaugeMm * gaugeMm)
					}
				}
			}
		}
		return chi
	}
	damping := 1e-4
	chi := normal(f.state, nil, nil)
	for range 100 {
		a, b := square(m), make([]float64, m)
		normal(f.state, a, b)
		for x := range a {
			a[x][x] *= 1 + damping
		}
		l, ok := cholesky(a, 1e-14)
		if !ok {
			return nil, errUndetermined
		}
		step := solve(l, b)
		next := state{n, append([]float64(nil), f.p...)}
		largest := 0.0
		for x, k := range f.active {
			largest = math.Max(largest, math.Abs(step[x]))
			if k >= 1 && k <= n {
				next.p[k] += step[x] / f.arc
			} else {
				next.p[k] += step[x]
			}
		}
		nextChi := math.Inf(1)
		if next.radius() > 0 {
			nextChi = normal(next, nil, nil)
		}
		if nextChi <= chi+1e-12 {
			f.state, chi = next, nextChi
			damping = math.Max(damping/10, 1e-12)
			if largest < 1e-8 {
				break
			}
		} else {
			damping *= 10
			if damping > 1e12 {
				break
			}
		}
	}
	f.chi = chi
	a, b := square(m), make([]float64, m)
	normal(f.state, a, b)
	l, ok := cholesky(a, 1e-7)
	if !ok {
		return nil, errUndetermined
	}
	f.cov = inverse(l)
	for _, o := range obs {
		f.residuals = append(f.residuals, o.mm-f.predict(o, f.arc, row))
		explained := 0.0
		used = f.used(row, used[:0])
		for _, x := range used {
			for _, y := range used {
				explained += float64(row[f.active[x]] * f.cov[x][y] * row[f.active[y]])
			}
		}
		spread := math.Sqrt(math.Max(float64(o.u*o.u)-explained, 0))
		if spread < 1e-4*o.u {
			spread = 0
		}
		f.spread = append(f.spread, spread)
	}
	return f, nil
}

// used lists which active parameters an observation with these derivatives
// depends on; there are few of them.
func (f *fitted) used(row []float64, to []int) []int {
	for x, k := range f.active {
		if row[k] != 0 {
			to = append(to, x)
		}
	}
	return to
}

// variance is the variance of a sum of parameters, each times a factor.
func (f *fitted) variance(factors map[int]float64) float64 {
	sum := 0.0
	for x, kx := range f.active {
		for y, ky := range f.active {
			sum += float64(factors[kx] * f.cov[x][y] * factors[ky])
		}
	}
	return math.Max(sum, 0)
}

func square(n int) [][]float64 {
	a := make([][]float64, n)
	for i := range a {
		a[i] = make([]float64, n)
	}
	return a
}

// cholesky factors a symmetric matrix; false if it is singular: a pivot that
// lost all but the given share of its diagonal.
func cholesky(a [][]float64, share float64) ([][]float64, bool) {
	n := len(a)
	l := square(n)
	for i := range n {
		for j := 0; j <= i; j++ {
			sum := a[i][j]
			for k := range j {
				sum -= float64(l[i][k] * l[j][k])
			}
			if i != j {
				l[i][j] = sum / l[j][j]
				continue
			}
			if !(sum > share*a[i][i]) || math.IsInf(sum, 0) {
				return nil, false
			}
			l[i][i] = math.Sqrt(sum)
		}
	}
	return l, true
}

// solve solves l·lᵀ·x = b.
func solve(l [][]float64, b []float64) []float64 {
	n := len(l)
	x := append([]float64(nil), b...)
	for i := range n {
		for k := range i {
			x[i] -= float64(l[i][k] * x[k])
		}
		x[i] /= l[i][i]
	}
	for i := n - 1; i >= 0; i-- {
		for k := i + 1; k < n; k++ {
			x[i] -= float64(l[k][i] * x[k])
		}
		x[i] /= l[i][i]
	}
	return x
}

func inverse(l [][]float64) [][]float64 {
	n := len(l)
	inv := square(n)
	for j := range n {
		e := make([]float64, n)
		e[j] = 1
		col := solve(l, e)
		for i := range n {
			inv[i][j] = col[i]
		}
	}
	return inv
}
