package assembly

import "math"

// face is a piece of a surface: a point for each a and b between two limits.
type face struct {
	at             func(a, b float64) Vec
	a0, a1, b0, b1 float64
	centre         Vec
	reach          float64 // no point of the face is further from the centre
}

func newFace(at func(a, b float64) Vec, a0, a1, b0, b1 float64) face {
	f := face{at: at, a0: a0, a1: a1, b0: b0, b1: b1}
	f.centre = at((a0+a1)/2, (b0+b1)/2)
	for _, c := range f.corners() {
		f.reach = math.Max(f.reach, c.Sub(f.centre).Len())
	}
	return f
}

func (f *face) corners() [4]Vec {
	return [4]Vec{f.at(f.a0, f.b0), f.at(f.a1, f.b0), f.at(f.a1, f.b1), f.at(f.a0, f.b1)}
}

// halves cuts the face across its longer way.
func (f *face) halves() [2]face {
	a, b := (f.a0+f.a1)/2, (f.b0+f.b1)/2
	if f.at(f.a0, b).Sub(f.at(f.a1, b)).Len() > f.at(a, f.b0).Sub(f.at(a, f.b1)).Len() {
		return [2]face{newFace(f.at, f.a0, a, f.b0, f.b1), newFace(f.at, a, f.a1, f.b0, f.b1)}
	}
	return [2]face{newFace(f.at, f.a0, f.a1, f.b0, b), newFace(f.at, f.a0, f.a1, b, f.b1)}
}

// moved is the face seen from the frame that p stands in.
func (f face) moved(p Pose) face {
	at := f.at
	f.at = func(a, b float64) Vec { return p.Apply(at(a, b)) }
	f.centre = p.Apply(f.centre)
	return f
}

// walk goes through ever smaller pieces of the faces. It leaves a piece where
// look says so, and stops below the finest reach; there it calls point with the
// centre and the corners, each at least once.
func walk(faces []face, finest float64, look func(f *face) bool, point func(p Vec)) {
	for i := range faces {
		if f := &faces[i]; look(f) {
			for _, c := range f.corners() {
				point(c)
			}
			halve(f, finest, look, point)
		}
	}
}

func halve(f *face, finest float64, look func(f *face) bool, point func(p Vec)) {
	if f.reach <= finest {
		point(f.centre)
		return
	}
	// The cut's two ends are the new corners.
	halves := f.halves()
	point(halves[1].at(halves[1].a0, halves[1].b0))
	point(halves[0].at(halves[0].a1, halves[0].b1))
	for i := range halves {
		if look(&halves[i]) {
			halve(&halves[i], finest, look, point)
		}
	}
}

// Surface are points on the solid's surface, no further apart than about the
// spacing in mm, corners and rims included.
func (s *Solid) Surface(spacingMm float64) []Vec {
	var out []Vec
	seen := map[[3]int64]bool{}
	walk(s.faces, spacingMm/2, func(*face) bool { return true }, func(p Vec) {
		key := [3]int64{int64(math.Round(p.X * 1e4)), int64(math.Round(p.Y * 1e4)), int64(math.Round(p.Z * 1e4))}
		if !seen[key] && math.Abs(s.Dist(p)) < surfaceMm {
			seen[key] = true
			out = append(out, p)
		}
	})
	return out
}
