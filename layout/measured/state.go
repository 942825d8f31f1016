package measured

import (
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
