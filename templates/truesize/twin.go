package truesize

import (
	"slices"
	"strconv"

	"centrepop/layout/plan"
	"centrepop/layout/words"
)

// twins lets the face of a part use the template of the part that the plan names,
// where that is printed: parts that are bolted together need one, printed for each.
func twins(list [][]*template) {
	for i, kept := range list {
		list[i] = slices.DeleteFunc(kept, func(t *template) bool {
			if t.punch == nil || t.punch.face.Shares == "" {
				return false
			}
			for _, others := range list {
				for _, u := range others {
					if u.punch != nil && u.part.Name == t.punch.face.Shares && u.punch.face.Face == t.punch.face.Face {
						u.serve(t)
						return true
					}
				}
			}
			return false
		})
	}
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
	more := words.Either(other.part.Quantity > 1, strconv.Itoa(other.part.Quantity)+" more", "once more")
	t.legend = append([]string{"also for " + other.part.Title + ": holes " + words.Span(first, n) + ", print " + more}, t.legend...)
	t.also = append(t.also, other)
	for _, c := range q.face.Circles {
		if !slices.ContainsFunc(p.face.Circles, func(k plan.Circle) bool { return k.CentreMm == c.CentreMm && k.DiameterMm == c.DiameterMm }) {
			c.Label = words.Join(": ", other.part.Title, c.Label)
			p.extra = append(p.extra, c)
		}
	}
}
