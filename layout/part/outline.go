package part

import (
	"fmt"

	"github.com/tdewolff/canvas"

	"centrepop/layout/plan"
	"centrepop/parts"
	"centrepop/parts/geom"
)

// outlinePath is the outline of a flat part seen on the front face, or the
// largest circle of a round one; millimetres, y up.
func (r *Model) OutlinePath() *canvas.Path {
	o := r.Part.Outline
	if o == nil {
		if f := r.Part.Frustum; f != nil {
			return geom.Circle(f.Large.Mm)
		}
		if t := r.Part.Transition; t != nil {
			return geom.Rectangle(t.Width.Mm, t.Depth.Mm, 0)
		}
		return geom.Circle(r.widest().Size.NominalMm)
	}
	return o.Contour().Path
}

func mirrored(p *canvas.Path) *canvas.Path {
	return p.Transform(canvas.Identity.Scale(-1, 1))
}

// onMetal checks that every place of a pattern lies on the part. The reader has
// checked those whose sizes it knows; the thread tables and the sizes worked
// out here come after it.
func (r *Model) onMetal(p parts.Pattern, face parts.Face, pts []plan.XY) {
	edge := geom.NewContour(r.OutlinePath())
	bore := 0.0
	if _, inside := r.Sides(); len(inside) > 0 && inside[len(inside)-1].ToMm >= r.LengthMm()-geom.CloseMm {
		bore = inside[0].Size.NominalMm
		for _, s := range inside {
			bore = min(bore, s.Size.NominalMm)
		}
	}
	for i, at := range pts {
		front := at
		if face == parts.Back {
			front = at.Mirrored()
		}
		if edge.DepthMm(front) > geom.CloseMm && geom.Distance(at, plan.XY{}) >= bore/2-geom.CloseMm {
			continue
		}
		r.fault(p.PosOf(i), fmt.Sprintf("the place at x %s, y %s has no metal under it", r.W.Size(at.XMm), r.W.Size(at.YMm)), "a place between the bore and the outside")
	}
}
