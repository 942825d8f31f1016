package read

import (
	"math"

	"centrepop/parts"
	"centrepop/parts/geom"
)

// chamfer reads a bevel, a rounded edge or a spherical end. That the edge exists is
// checked, and the chord of a sphere worked out, with the geometry.
func (f *fields) chamfer() parts.Chamfer {
	c := parts.Chamfer{Edge: f.name("edge"), For: f.word("for")}
	key, _ := f.oneOf()
	c.Size, c.Angle = f.length("size"), f.angle("angle")
	if key != "radius" && key != "sphere" {
		return c
	}
	f.spare("angle", true, "a "+key+" has no angle", "leave out the angle, or give the size of a bevel")
	if c.For == "weld" {
		f.fault(f.n.get("for").pos, "no weld is prepared with a "+key, "the size and angle of a bevel")
	}
	c.Radius, c.Sphere = f.length(key), key == "sphere"
	c.Size, c.Angle.Deg = c.Radius, 45
	return c
}

// rounded checks a rounded edge against its step and sets the chord of a sphere.
func (r *reader) rounded(p *parts.Part, c *parts.Chamfer) bool {
	if p.Profile == nil {
		r.fault(c.Radius.Pos, "an edge is rounded on the lathe, on a turned part", "a bevel with a size")
		return false
	}
	name, end := c.On()
	step, from, inside := stepNamed(p.Profile, name)
	spot := c.Edge.Pos
	switch {
	case step.Size.Thread.Value != "":
		r.fault(spot, name+" is a thread, which starts with a bevel", "the size and angle of a bevel")
	case step.Seat.Value != "":
		r.fault(spot, name+" is a seat, which a bevel leads onto", "the size and angle of a bevel, for: lead-in")
	case step.Taper != nil:
		r.fault(spot, name+" is a taper: no quarter of a circle ends on it", "the size and angle of a bevel")
	case c.Sphere:
		back, last := end == parts.Back, !geom.Over(from, 0)
		if back {
			last = !geom.Over(p.Profile.LengthMm(), from+step.Length.Mm)
		}
		return r.sphere(p.Profile, c, step, last && !inside, back)
	default:
		return true // its room beside other steps is checked where threads have sizes
	}
	return false
}

// sphere checks a spherical end and sets its chord, where the step
// ends there with the part: its height is the sagitta
// h = R − √(R² − d²/4) over the diameter d of the step (by geometry).
func (r *reader) sphere(p *parts.Profile, c *parts.Chamfer, step *parts.Step, end, back bool) bool {
	bored := len(p.Inside) > 0
	if back {
		bored = p.Through()
	}
	half := step.Size.Nominal.Mm / 2
	switch {
	case !end:
		r.fault(c.Edge.Pos, c.Edge.Value+" is no end of the part, and only an end is spherical", "the front of the first outside step, or the back of the last")
	case bored:
		r.fault(c.Radius.Pos, "a spherical end has no bore", "a radius on the edge")
	case geom.Over(half, c.Radius.Mm):
		r.faultf(c.Radius.Pos, "at least "+r.said(half), "the sphere of %s does not reach over the diameter of %s", c.Radius.Text, step.Name.Value)
	default:
		c.Size.Mm = c.Radius.Mm - math.Sqrt(math.Max(0, c.Radius.Mm*c.Radius.Mm-half*half))
		c.Angle.Deg = math.Atan2(half, c.Size.Mm) * 180 / math.Pi
		return true
	}
	return false
}
