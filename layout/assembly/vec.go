package assembly

import (
	"cmp"
	"math"
	"slices"

	"centrepop/parts/geom"
)

// surfaceMm is how near to a surface a point counts as on it: rounding of
// coordinates up to 10 m, no tolerance of manufacture.
const surfaceMm = 1e-6

// inf is further than anything lies.
var inf = math.Inf(1)

// Vec is a point or a direction, in millimetres; a direction has length 1.
type Vec struct{ X, Y, Z float64 }

// Add is a + b.
func (a Vec) Add(b Vec) Vec { return Vec{a.X + b.X, a.Y + b.Y, a.Z + b.Z} }

// Sub is a − b.
func (a Vec) Sub(b Vec) Vec { return Vec{a.X - b.X, a.Y - b.Y, a.Z - b.Z} }

// Times is a stretched by f.
func (a Vec) Times(f float64) Vec { return Vec{a.X * f, a.Y * f, a.Z * f} }

// Reversed is −a.
func (a Vec) Reversed() Vec { return Vec{-a.X, -a.Y, -a.Z} }

// Dot is the scalar product, mm² of two points.
func (a Vec) Dot(b Vec) float64 { return a.X*b.X + a.Y*b.Y + a.Z*b.Z }

// Cross is the vector product, right-handed.
func (a Vec) Cross(b Vec) Vec { return Vec{a.Y*b.Z - a.Z*b.Y, a.Z*b.X - a.X*b.Z, a.X*b.Y - a.Y*b.X} }

// Len is the length in mm.
func (a Vec) Len() float64 { return math.Sqrt(a.Dot(a)) }

// Unit is the direction of a; the zero vector stays as it is.
func (a Vec) Unit() Vec {
	l := a.Len()
	if l == 0 {
		return a
	}
	return a.Times(1 / l)
}

// Square is a direction at a right angle to a, the same for the same a.
func (a Vec) Square() Vec {
	away := Vec{X: 1}
	if math.Abs(a.X) > 0.8*a.Len() {
		away = Vec{Y: 1}
	}
	return a.Cross(away).Unit()
}

// The axes of a frame.
var (
	AxisX = Vec{X: 1}
	AxisY = Vec{Y: 1}
	AxisZ = Vec{Z: 1}
)

// Clock is the point at a radius in mm and a clock angle in degrees, seen on
// the front: 0 at TOP (+y), clockwise to +x.
func Clock(radiusMm, deg float64) Vec {
	sin, cos := geom.SinCosDeg(deg)
	return Vec{X: radiusMm * sin, Y: radiusMm * cos}
}

// ClockWay is the direction out from the axis at a clock angle in degrees.
func ClockWay(deg float64) Vec { return Clock(1, deg) }

// Round are n directions at right angles to an axis, evenly round it; of z the first points to TOP.
func Round(axis Vec, n int) []Vec {
	ways := make([]Vec, n)
	for k, deg := range geom.Evenly(n) {
		ways[k] = Rotate(axis, deg).Turn(axis.Square())
	}
	return ways
}

// ClockDeg is the clock angle of a point, 0 ≤ a < 360; 0 on the axis.
func ClockDeg(p Vec) float64 {
	a := math.Atan2(p.X, p.Y) * 180 / math.Pi
	if a < 0 {
		a += 360
	}
	return a
}

// Pose is where a frame stands in another: its axes, which are unit vectors at
// right angles and right-handed, and its origin in mm.
type Pose struct{ X, Y, Z, At Vec }

// Still is the pose that moves nothing.
var Still = Pose{X: AxisX, Y: AxisY, Z: AxisZ}

// Move is a shift by v in mm.
func Move(v Vec) Pose { return Pose{AxisX, AxisY, AxisZ, v} }

// Rotate turns about an axis through the origin, right-handed, in degrees.
func Rotate(axis Vec, deg float64) Pose {
	u := axis.Unit()
	sin, cos := geom.SinCosDeg(deg)
	turn := func(v Vec) Vec { // Rodrigues
		return v.Times(cos).Add(u.Cross(v).Times(sin)).Add(u.Times(u.Dot(v) * (1 - cos)))
	}
	return Pose{X: turn(AxisX), Y: turn(AxisY), Z: turn(AxisZ)}
}

// Frame is the frame at a point with z along one direction and y as near to
// another as a right angle allows; any y where the two are parallel.
func Frame(at, z, y Vec) Pose {
	z = z.Unit()
	y = y.Sub(z.Times(z.Dot(y)))
	if geom.Alike(y.Len(), 0) {
		y = z.Square()
	}
	y = y.Unit()
	return Pose{X: y.Cross(z), Y: y, Z: z, At: at}
}

// Apply takes a point of the frame to the surrounding one.
func (p Pose) Apply(v Vec) Vec { return p.At.Add(p.Turn(v)) }

// Turn takes a direction of the frame to the surrounding one.
func (p Pose) Turn(v Vec) Vec {
	return Vec{
		p.X.X*v.X + p.Y.X*v.Y + p.Z.X*v.Z,
		p.X.Y*v.X + p.Y.Y*v.Y + p.Z.Y*v.Z,
		p.X.Z*v.X + p.Y.Z*v.Y + p.Z.Z*v.Z,
	}
}

// apply is Apply, for the loops that do little else.
func (p *Pose) apply(v Vec) Vec {
	return Vec{
		p.At.X + (p.X.X*v.X + p.Y.X*v.Y + p.Z.X*v.Z),
		p.At.Y + (p.X.Y*v.X + p.Y.Y*v.Y + p.Z.Y*v.Z),
		p.At.Z + (p.X.Z*v.X + p.Y.Z*v.Y + p.Z.Z*v.Z),
	}
}

// Of is the pose in the surrounding frame of what stands at q in this one.
func (p Pose) Of(q Pose) Pose { return Pose{p.Turn(q.X), p.Turn(q.Y), p.Turn(q.Z), p.Apply(q.At)} }

// Inverse undoes the pose.
func (p Pose) Inverse() Pose {
	out := Pose{Vec{p.X.X, p.Y.X, p.Z.X}, Vec{p.X.Y, p.Y.Y, p.Z.Y}, Vec{p.X.Z, p.Y.Z, p.Z.Z}, Vec{}}
	out.At = out.Turn(p.At).Reversed()
	return out
}

// in is where a point of the surrounding frame lies in the pose's own.
func (p Pose) in(v Vec) Vec {
	v = v.Sub(p.At)
	return Vec{v.Dot(p.X), v.Dot(p.Y), v.Dot(p.Z)}
}

// Shifted is the pose moved by v in the surrounding frame.
func (p Pose) Shifted(v Vec) Pose {
	p.At = p.At.Add(v)
	return p
}

// turnBetween is the turn that takes p's axes to q's: along its axis, as long
// as its angle in radians.
func turnBetween(p, q Pose) Vec {
	twice := p.X.Cross(q.X).Add(p.Y.Cross(q.Y)).Add(p.Z.Cross(q.Z)) // 2 sin
	cos := (p.X.Dot(q.X) + p.Y.Dot(q.Y) + p.Z.Dot(q.Z) - 1) / 2
	angle := math.Atan2(twice.Len()/2, cos)
	if twice.Len() > 1e-9 {
		return twice.Unit().Times(angle)
	}
	if cos > 0 {
		return Vec{}
	}
	// A half turn: its axis is halfway between an axis and its image.
	halves := []Vec{p.X.Add(q.X), p.Y.Add(q.Y), p.Z.Add(q.Z)} // some are nothing
	return slices.MaxFunc(halves, func(a, b Vec) int { return cmp.Compare(a.Len(), b.Len()) }).Unit().Times(math.Pi)
}

// rounded leaves out what is off by rounding, to so much.
func (a Vec) rounded(to float64) Vec {
	return Vec{math.Round(a.X/to) * to, math.Round(a.Y/to) * to, math.Round(a.Z/to) * to}
}
