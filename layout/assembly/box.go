package assembly

import "math"

// Box is a bounding box in mm; Low is the corner with the smaller coordinates.
type Box struct{ Low, High Vec }

// nothing is the box of no point.
func nothing() Box {
	inf := math.Inf(1)
	return Box{Vec{inf, inf, inf}, Vec{-inf, -inf, -inf}}
}

// Empty tells whether the box holds no point.
func (b Box) Empty() bool { return b.Low.X > b.High.X }

// Size is the box's extent along each axis, in mm.
func (b Box) Size() Vec { return b.High.Sub(b.Low) }

// Centre is the middle of the box.
func (b Box) Centre() Vec { return b.Low.Add(b.High).Times(0.5) }

// With is the smallest box around b and the points.
func (b Box) With(points ...Vec) Box {
	for _, p := range points {
		b.Low = Vec{math.Min(b.Low.X, p.X), math.Min(b.Low.Y, p.Y), math.Min(b.Low.Z, p.Z)}
		b.High = Vec{math.Max(b.High.X, p.X), math.Max(b.High.Y, p.Y), math.Max(b.High.Z, p.Z)}
	}
	return b
}

// Join is the smallest box around both.
func (b Box) Join(c Box) Box {
	if c.Empty() {
		return b
	}
	return b.With(c.Low, c.High)
}

// Meets tells whether two boxes come within a distance in mm of one another.
func (b Box) Meets(c Box, mm float64) bool {
	return b.Low.X <= c.High.X+mm && c.Low.X <= b.High.X+mm &&
		b.Low.Y <= c.High.Y+mm && c.Low.Y <= b.High.Y+mm &&
		b.Low.Z <= c.High.Z+mm && c.Low.Z <= b.High.Z+mm
}

// dist is the distance from p to the box, 0 inside.
func (b *Box) dist(p Vec) float64 {
	dx := beyond(p.X, b.Low.X, b.High.X)
	dy := beyond(p.Y, b.Low.Y, b.High.Y)
	dz := beyond(p.Z, b.Low.Z, b.High.Z)
	if dx == 0 && dy == 0 {
		return dz
	}
	return math.Sqrt(dx*dx + dy*dy + dz*dz)
}

// beyond is how far x lies outside an interval.
func beyond(x, low, high float64) float64 {
	if x < low {
		return low - x
	}
	if x > high {
		return x - high
	}
	return 0
}

// corners are the eight corners of a box.
func (b Box) corners() [8]Vec {
	var out [8]Vec
	for i := range out {
		out[i] = b.Low
		if i&1 != 0 {
			out[i].X = b.High.X
		}
		if i&2 != 0 {
			out[i].Y = b.High.Y
		}
		if i&4 != 0 {
			out[i].Z = b.High.Z
		}
	}
	return out
}

// Moved is the box around the box in another pose.
func (b Box) Moved(p Pose) Box {
	if b.Empty() {
		return b
	}
	out := nothing()
	for _, c := range b.corners() {
		out = out.With(p.Apply(c))
	}
	return out
}

// meetsLine tells whether a line, from its point at t = low to that at high,
// passes the box.
func (b Box) meetsLine(o, d Vec, low, high float64) bool {
	const slack = surfaceMm
	for _, ax := range [3][4]float64{{o.X, d.X, b.Low.X, b.High.X}, {o.Y, d.Y, b.Low.Y, b.High.Y}, {o.Z, d.Z, b.Low.Z, b.High.Z}} {
		if math.Abs(ax[1]) < 1e-12 {
			if ax[0] < ax[2]-slack || ax[0] > ax[3]+slack {
				return false
			}
			continue
		}
		t0, t1 := (ax[2]-slack-ax[0])/ax[1], (ax[3]+slack-ax[0])/ax[1]
		low, high = math.Max(low, math.Min(t0, t1)), math.Min(high, math.Max(t0, t1))
	}
	return low <= high
}
