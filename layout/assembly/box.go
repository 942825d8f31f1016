package assembly

import "math"

// Box is a bounding box in mm; Low is the corner with the smaller coordinates.
type Box struct{ Low, High Vec }

// nothing is the box of no point.
func nothing() Box { return Box{Vec{inf, inf, inf}, Vec{-inf, -inf, -inf}} }

// Empty tells whether the box holds no point.
func (b Box) Empty() bool { return b.Low.X > b.High.X }

// Size is the box's extent along each axis, in mm.
func (b Box) Size() Vec { return b.High.Sub(b.Low) }

// Centre is the middle of the box.
func (b Box) Centre() Vec { return b.Low.Add(b.High).Times(0.5) }

// With is the smallest box around b and the points.
func (b Box) With(points ...Vec) Box {
	for _, p := range points {
		b.Low = Vec{min(b.Low.X, p.X), min(b.Low.Y, p.Y), min(b.Low.Z, p.Z)}
		b.High = Vec{max(b.High.X, p.X), max(b.High.Y, p.Y), max(b.High.Z, p.Z)}
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

// Common is what two boxes share; where they share nothing along an axis, its Low and High lie
// the wrong way round there, with what is between the boxes.
func (b Box) Common(c Box) Box {
	return Box{
		Vec{max(b.Low.X, c.Low.X), max(b.Low.Y, c.Low.Y), max(b.Low.Z, c.Low.Z)},
		Vec{min(b.High.X, c.High.X), min(b.High.Y, c.High.Y), min(b.High.Z, c.High.Z)},
	}
}

// Along is from where to where the box reaches in a direction, in mm from its origin.
func (b Box) Along(way Vec) (low, high float64) {
	middle, size := b.Centre().Dot(way), b.Size()
	half := (math.Abs(way.X)*size.X + math.Abs(way.Y)*size.Y + math.Abs(way.Z)*size.Z) / 2
	return middle - half, middle + half
}

// Meets tells whether two boxes come within a distance in mm of one another.
func (b Box) Meets(c Box, mm float64) bool {
	return b.Low.X <= c.High.X+mm && c.Low.X <= b.High.X+mm &&
		b.Low.Y <= c.High.Y+mm && c.Low.Y <= b.High.Y+mm &&
		b.Low.Z <= c.High.Z+mm && c.Low.Z <= b.High.Z+mm
}

// within tells whether p lies in the box or nearer to it than mm.
func (b *Box) within(p Vec, mm float64) bool {
	dx := beyond(p.X, b.Low.X, b.High.X)
	if dx > 0 && dx >= mm {
		return false // as most do
	}
	dy := beyond(p.Y, b.Low.Y, b.High.Y)
	if dy > 0 && dy >= mm {
		return false
	}
	dz := beyond(p.Z, b.Low.Z, b.High.Z)
	off := dx*dx + dy*dy + dz*dz
	return off == 0 || mm > 0 && off < mm*mm
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

func (b Box) corners() (out []Vec) {
	for _, x := range []float64{b.Low.X, b.High.X} {
		for _, y := range []float64{b.Low.Y, b.High.Y} {
			out = append(out, Vec{x, y, b.Low.Z}, Vec{x, y, b.High.Z})
		}
	}
	return out
}

// Moved is the box around the box in another pose.
func (b Box) Moved(p Pose) Box {
	if b.Empty() {
		return b
	}
	at, half := p.Apply(b.Centre()), b.High.Sub(b.Low).Times(0.5)
	reach := func(x, y, z float64) float64 { return math.Abs(x)*half.X + math.Abs(y)*half.Y + math.Abs(z)*half.Z }
	out := Vec{reach(p.X.X, p.Y.X, p.Z.X), reach(p.X.Y, p.Y.Y, p.Z.Y), reach(p.X.Z, p.Y.Z, p.Z.Z)}
	return Box{Low: at.Sub(out), High: at.Add(out)}
}

// meetsLine tells whether a line, from its point at t = low to that at high,
// passes the box.
func (b *Box) meetsLine(o, d Vec, low, high float64) bool {
	t := Span{low, high}
	return t.clip(o.X, d.X, b.Low.X, b.High.X) && t.clip(o.Y, d.Y, b.Low.Y, b.High.Y) && t.clip(o.Z, d.Z, b.Low.Z, b.High.Z)
}
