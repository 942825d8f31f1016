package changes

import (
	"math"
	"slices"

	"github.com/tdewolff/canvas"

	"centrepop/layout/part"
	"centrepop/layout/plan"
	"centrepop/layout/threads"
	"centrepop/parts/geom"
	"centrepop/parts/seq"
)

// sameMm is how far two numbers may be apart and be the same: coordinates are
// rounded to 1e-9 mm, and sums of lengths lose some digits.
const sameMm = 1e-6

func same(a, b float64) bool { return math.Abs(a-b) <= sameMm }

// limits is a size with its limits, all equal where nothing limits it.
type limits struct{ at, min, max float64 }

func exactly(v float64) limits { return limits{v, v, v} }

func sized(s part.Sized) limits { return limits{s.NominalMm, s.MinMm, s.MaxMm} }

// cutUse is the use of an opening or a depth made to the old limits: larger takes
// metal away.
func cutUse(was, is limits) Use {
	switch {
	case was.min >= is.min-sameMm && was.max <= is.max+sameMm:
		return AsIs
	case was.max <= is.min+sameMm:
		return Rework
	case was.min >= is.max-sameMm:
		return Scrap
	}
	return Measure
}

// metalUse is the use of an outside or a thickness: smaller takes metal away.
func metalUse(was, is limits) Use {
	return cutUse(limits{-was.at, -was.max, -was.min}, limits{-is.at, -is.max, -is.min})
}

// holeUse is the use of a hole that was to be made one way and is now to be made
// another. A tap needs its core to be metal; what is plain now must be as large
// as the thread that was there.
func holeUse(was, is part.Made) Use {
	most := was.Size.MaxMm
	if was.Thread == nil && was.Size.MaxMm == 0 {
		most = was.FinishedMm
	}
	switch {
	case is.Thread != nil && is.ThreadName() == was.ThreadName():
		return AsIs
	case is.Thread != nil && most > is.DrillMm+sameMm, is.Thread == nil && was.Thread != nil && most > is.Size.MaxMm+sameMm:
		return Scrap
	case is.Thread != nil || was.Thread != nil:
		return Rework
	}
	return cutUse(sized(was.Size), sized(is.Size))
}

// rootPitches is how much smaller than its major diameter the root of an outside
// thread is at most, in pitches: twice 0.640327 for the pipe threads of ISO 228-1;
// the profile of ISO 68-1 has less, 1.22687.
const rootPitches = 1.280654

// stepUse is the use of a cylinder that was to be turned one way and is now to be
// turned another. A thread that is there has to be cut away to its root within the new limits; a plain
// one takes a thread where its metal reaches the crest, and none where it does
// not reach the pitch diameter.
func stepUse(was, is part.Sized, inside bool) Use {
	use, sign := metalUse, 1.0
	if inside {
		use, sign = cutUse, -1
	}
	least, most := min(sign*was.MinMm, sign*was.MaxMm), max(sign*was.MinMm, sign*was.MaxMm)
	crest := min(sign*is.MinMm, sign*is.MaxMm)
	switch t := is.Thread; {
	case t == nil:
	case inside:
		crest = -t.MinorMm
	default:
		crest = t.MajorMm
	}
	switch {
	case was.Thread == nil && is.Thread == nil:
		return use(sized(was), sized(is))
	case was.Thread != nil && is.Thread != nil && was.Thread.Designation == is.Thread.Designation:
		return AsIs
	case was.Thread != nil && sign*rootMm(was.Thread, inside) < crest-sameMm:
		return Scrap
	case was.Thread != nil || least >= crest-sameMm:
		return Rework
	case most < sign*is.Thread.PitchDiameterMm:
		return Scrap
	}
	return Measure
}

// rootMm is the diameter to which a thread has cut the metal.
func rootMm(t *threads.Thread, inside bool) float64 {
	switch {
	case inside:
		return t.GroundMm()
	case t.Lead != nil:
		return t.RootMm()
	}
	return t.MajorMm - rootPitches*t.PitchMm
}

// clampUse tells whether a split ring serves as another: a saw cut can be made wider
// and a counterbore deeper, but neither they nor the screw can be moved. The new front
// face lies shiftMm behind the old.
func clampUse(was, is *plan.ClampRow, shiftMm float64) Use {
	switch {
	case !same(was.ClockDeg, is.ClockDeg), !same(was.AtMm, is.AtMm), !same(was.AxialMm-shiftMm, is.AxialMm), was.Thread != is.Thread,
		!same(was.HoleMm, is.HoleMm), !same(was.HeadMm, is.HeadMm), is.SlotMm < was.SlotMm-sameMm, is.DeepMm < was.DeepMm-sameMm:
		return Scrap
	case same(was.SlotMm, is.SlotMm) && same(was.DeepMm, is.DeepMm):
		return NoMetal
	}
	return Rework
}

// sectionUse is the use of a turned shape when the new section is laid into the
// old one, its front face shiftMm behind the old front face.
func sectionUse(was, is *plan.Section, shiftMm float64) Use {
	var at []float64
	for _, line := range [][]plan.XY{is.Outer, is.Inner} {
		at = append(at, seq.Map(line, func(p plan.XY) float64 { return p.XMm })...)
	}
	for _, line := range [][]plan.XY{was.Outer, was.Inner} {
		at = append(at, seq.Map(line, func(p plan.XY) float64 { return p.XMm - shiftMm })...)
	}
	slices.Sort(at)
	use := AsIs
	if is.LengthMm < was.LengthMm-sameMm {
		use = Rework
	}
	for i := 0; i+1 < len(at); i++ {
		lo, hi := at[i]+sameMm, at[i+1]-sameMm
		if hi <= lo || lo < 0 || hi > is.LengthMm {
			continue
		}
		for _, z := range []float64{lo, hi} {
			inner, outer, _ := is.RadiiAt(z)
			bore, outside, metal := was.RadiiAt(z + shiftMm)
			switch {
			case !metal || outer > outside+nearMm || inner < bore-nearMm:
				return Scrap
			case outer < outside-nearMm || inner > bore+nearMm:
				use = Rework
			}
		}
	}
	return use
}

// nearMm is how far contours may be apart and be the same: the sections are
// looked at sameMm beside their corners, and cones are steep.
const nearMm = 1e-4

// outlineUse is the use of a flat part with another outline.
func outlineUse(was, is *canvas.Path) Use {
	old, now := geom.NewContour(was), geom.NewContour(is)
	if slices.ContainsFunc(along(is), func(p geom.Point) bool { return old.DepthMm(p) < -outlineMm }) {
		return Scrap
	}
	if slices.ContainsFunc(along(was), func(p geom.Point) bool { return now.DepthMm(p) > outlineMm }) {
		return Scrap
	}
	return Rework
}

// outlineMm is how far an outline may be outside another and count as inside:
// arcs are looked at as polylines within geom.FlatMm.
const outlineMm = 2 * geom.FlatMm

// along lists points of a closed path, at most 1 mm apart on paths up to 2 m and
// a two-thousandth of the path on longer ones.
func along(p *canvas.Path) []geom.Point {
	step := math.Max(1, p.Length()/2000)
	var out []geom.Point
	corners := p.Flatten(geom.FlatMm).Coords()
	for i := 0; i+1 < len(corners); i++ {
		a := geom.Point{XMm: corners[i].X, YMm: corners[i].Y}
		b := geom.Point{XMm: corners[i+1].X, YMm: corners[i+1].Y}
		n := math.Ceil(geom.Distance(a, b) / step)
		for k := 0.0; k < n; k++ {
			out = append(out, a.Plus(b.Minus(a).Times(k/n)))
		}
	}
	return out
}
