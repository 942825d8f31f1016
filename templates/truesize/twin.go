package truesize

import (
	"math"
	"slices"
	"strconv"

	"centrepop/layout/plan"
	"centrepop/layout/words"
)

// twins lets the face of a part use the template of an earlier one that has all of
// its holes, under the same numbers, in an equal outline: parts that are bolted
// together need one template, printed for each.
func twins(list [][]*template) {
	var faces []*template
	for i, kept := range list {
		list[i] = slices.DeleteFunc(kept, func(t *template) bool {
			if t.punch == nil {
				return false
			}
			k := slices.IndexFunc(faces, func(u *template) bool { return u.part != t.part && u.punch.covers(t.punch) })
			if k < 0 {
				faces = append(faces, t)
				return false
			}
			faces[k].serve(t)
			return true
		})
	}
}

// covers tells whether a face that is no other shape, and seen from the same side,
// has all holes of another.
func (p *punch) covers(q *punch) bool {
	const same = 1e-6
	f, g := p.face, q.face
	if f.Face != g.Face || !f.Round || !g.Round || len(f.Cuts)+len(g.Cuts)+len(g.Slots) > 0 || g.Carried != nil ||
		math.Abs(p.hi.XMm-q.hi.XMm) > same || math.Abs(p.lo.XMm-q.lo.XMm) > same || math.Abs(p.hi.YMm-q.hi.YMm) > same {
		return false
	}
	return !slices.ContainsFunc(g.Holes, func(h plan.Hole) bool {
		return !slices.ContainsFunc(f.Holes, func(k plan.Hole) bool {
			return k.N == h.N && math.Abs(k.XMm-h.XMm)+math.Abs(k.YMm-h.YMm)+math.Abs(k.DiameterMm-h.DiameterMm) < same
		})
	})
}

// serve makes a template one of another part's face too: it says which holes are
// those, and shows the bore to set it by.
func (t *template) serve(other *template) {
	p, q := t.punch, other.punch
	var first, n int
	for _, h := range q.face.Holes {
		if n++; first == 0 || h.N < first {
			first = h.N
		}
	}
	more := "once more"
	if other.part.Quantity > 1 {
		more = strconv.Itoa(other.part.Quantity) + " more"
	}
	t.legend = append([]string{"also for " + other.part.Title + ": holes " + words.Span(first, n) + ", print " + more}, t.legend...)
	t.also = append(t.also, other)
	for _, c := range q.face.Circles {
		if !slices.ContainsFunc(p.face.Circles, func(k plan.Circle) bool { return k.CentreMm == c.CentreMm && k.DiameterMm == c.DiameterMm }) {
			c.Label = words.Join(": ", other.part.Title, c.Label)
			p.extra = append(p.extra, c)
		}
	}
}
