package solid

import (
	"math"
	"slices"

	"github.com/tdewolff/canvas"

	"centrepop/layout/assembly"
	"centrepop/layout/part"
	"centrepop/layout/plan"
	"centrepop/parts/geom"
	"centrepop/parts/seq"
)

// keyway is what a keyway takes out of a round: from its floor outward in a shaft, inward in a
// bore; with round ends where an end mill leaves them, or a disc's.
func keyway(k *part.Keyway) []assembly.Simple {
	row, round := &k.Row, k.Row.DiameterMm/2
	from, to, half := -row.ToMm, -row.FromMm, row.WidthMm/2
	opens := k.Opens()
	if opens[0] {
		to += past
	}
	if opens[1] {
		from -= past
	}
	// z runs outward, y to the part's front, x clockwise seen from there.
	at := assembly.Frame(assembly.Vec{}, assembly.ClockWay(row.ClockDeg), assembly.AxisZ)
	if row.Inside {
		return []assembly.Simple{assembly.Cuboid(assembly.Vec{X: -half, Y: from}, assembly.Vec{X: half, Y: to, Z: round + row.DepthMm}).At(at)}
	}
	floor := round - row.DepthMm
	if run := row.RunoutMm; run > 0 {
		disc := discMm(row)
		var out []assembly.Simple
		for _, y := range []float64{-row.FromMm, -row.ToMm} {
			across := assembly.Frame(assembly.Vec{Y: y, Z: floor + disc}, assembly.AxisX, assembly.AxisY)
			out = append(out, assembly.Cylinder(disc, -half, half).At(at.Of(across)))
		}
		if row.ToMm > row.FromMm {
			out = append(out, assembly.Cuboid(assembly.Vec{X: -half, Y: -row.ToMm, Z: floor}, assembly.Vec{X: half, Y: -row.FromMm, Z: round + past}).At(at))
		}
		return out
	}
	var ends [2]float64 // bulges of the front and the back one
	if !opens[0] {
		to, ends[0] = to-half, 1
	}
	if !opens[1] {
		from, ends[1] = from+half, 1
	}
	loop := geom.Loop{{Point: geom.Point{XMm: half, YMm: from}}, {Point: geom.Point{XMm: half, YMm: to}, Bulge: ends[0]},
		{Point: geom.Point{XMm: -half, YMm: to}}, {Point: geom.Point{XMm: -half, YMm: from}, Bulge: ends[1]}}
	return []assembly.Simple{assembly.Prism(assembly.Outline{loop}, floor, round+past).At(at)}
}

// bevels are what the chamfers of an outline that is not round take off, a wedge along each
// straight piece of it and along short chords of its rounds; what lies between two chords
// of a round stays.
func bevels(r *part.Model) (out []assembly.Simple) {
	const chordMm = 0.3
	for c := range seq.Refs(r.Part.Chamfers) {
		front := c.Edge.Value == "outline-front"
		if !front && c.Edge.Value != "outline-back" {
			continue
		}
		pts := r.OutlinePath().Flatten(chordMm).Coords()
		pts = slices.CompactFunc(pts, func(a, b canvas.Point) bool { return a == b })
		if n := len(pts); pts[0] == pts[n-1] {
			pts = pts[:n-1]
		}
		if geom.NewContour(r.OutlinePath()).AreaMm2() < 0 {
			slices.Reverse(pts)
		}
		up := c.AcrossMm()
		for k := range pts {
			p, q := pts[k], pts[(k+1)%len(pts)]
			along := assembly.Vec{X: q.X - p.X, Y: q.Y - p.Y}
			at, outward := assembly.Vec{X: p.X, Y: p.Y}, along.Unit().Cross(assembly.AxisZ)
			face, low, high := assembly.AxisZ, -along.Len(), 0.0
			if !front {
				face, at.Z = face.Reversed(), -r.LengthMm()
				low, high = 0, along.Len()
			}
			wedge := []geom.Point{{XMm: -1.1 * up, YMm: 0.1 * c.Size.Mm}, {XMm: 0.1 * up, YMm: -1.1 * c.Size.Mm}, {XMm: 0.1 * up, YMm: 0.1 * c.Size.Mm}}
			out = append(out, assembly.Prism(assembly.Outline{geom.PolygonLoop(wedge...)}, low, high).At(assembly.Pose{X: outward, Y: face, Z: outward.Cross(face), At: at}))
		}
	}
	return out
}

// discMm is the radius of the disc that cuts the run-outs of a keyway, by chord and height.
func discMm(row *plan.KeywayRow) float64 {
	return (row.RunoutMm*row.RunoutMm + row.DepthMm*row.DepthMm) / row.DepthMm / 2
}

// Key is the key of a keyway in a shaft, on its floor: with round ends, or of a Woodruff
// pocket the segment of its disc. Its floor is z = 0, and it lies along y about the middle of its keyway.
func Key(row *plan.KeywayRow) assembly.Simple {
	half := row.WidthMm / 2
	if row.Woodruff == "" {
		return assembly.Prism(assembly.Outline{obround((row.ToMm-row.FromMm)/2-half, half)}, 0, row.HeightMm)
	}
	chord := math.Sqrt(row.HeightMm * (2*discMm(row) - row.HeightMm)) // half of it
	loop := geom.Loop{{Point: geom.Point{XMm: -chord, YMm: row.HeightMm}, Bulge: row.HeightMm / chord}, {Point: geom.Point{XMm: chord, YMm: row.HeightMm}}}
	return assembly.Prism(assembly.Outline{loop}, -half, half).At(assembly.Pose{X: assembly.AxisY, Y: assembly.AxisZ, Z: assembly.AxisX})
}
