package joint

import (
	"slices"
	"strings"

	"centrepop/layout/part"
	"centrepop/layout/words"
)

// screwedIn names what closes or serves a radial hole by its note: a nipple, a plug,
// or a set screw with the point and length that follow; empty for none.
func screwedIn(m part.Radial) string {
	for _, word := range []string{"nipple", "plug", setScrew} {
		if _, rest, ok := strings.Cut(m.In.Note.Value, word); ok {
			item := words.Capital(word) + " " + m.Size.ThreadName()
			if word == setScrew {
				item += rest
			}
			return item
		}
	}
	return ""
}

// What a note names with its sizes.
const (
	setScrew = "set screw"
	dowel    = "dowel pin"
)

// fitSmall fits the seals, O-rings, nipples and plugs of a part at the first joint
// that bolts it: its welds are made then, and its faces are open for the last time.
func (j *making) fitSmall(t *joint) {
	var do []string
	for _, f := range []feature{t.a, t.b} {
		bolted := func(o *joint) bool { return o.in.Bolt != nil && (o.a.inst() == f.inst() || o.b.inst() == f.inst()) }
		if !slices.ContainsFunc(j.before, bolted) {
			do = append(do, carried(f, j.w)...)
		}
	}
	if len(do) > 0 {
		t.step("Fit small parts", do...)
	}
}

// carried says how to fit what a part carries.
func carried(f feature, w words.Writer) []string {
	var do []string
	r, title := f.r, f.title()
	for i := range r.Steps {
		if q := r.SealIn(&r.Steps[i]); q != nil {
			do = append(do, "Press seal "+q.Size+" into "+words.Spaced(r.Steps[i].Name)+" of "+title+": square, by its rim, the lip greased and to the "+string(q.Lip)+" of "+title+"; nothing sharp may pass the lip.")
			do = append(do, ringOver(&r.Steps[i], f, w)...)
		}
	}
	for _, g := range r.Grooves {
		if item := g.Bought(w); strings.HasPrefix(item, "O-ring") {
			do = append(do, "Lay "+item+", greased, into "+words.Spaced(g.Row.Name)+" of "+title+": not twisted, and not over a sharp edge.")
		}
	}
	for _, m := range r.Radials {
		if item := screwedIn(m); item != "" {
			do = append(do, item+" into "+words.Spaced(m.In.Name.Value)+" of "+title+": clear the hole of chips first.")
		}
	}
	return do
}

// ringOver springs the retaining ring in the bore of a seal over it.
func ringOver(bore *part.Step, f feature, w words.Writer) []string {
	var do []string
	for _, g := range f.r.Grooves {
		if item := g.Bought(w); bore.Inside && g.Row.In == bore.Name && strings.HasPrefix(item, "Retaining ring") {
			do = append(do, item+" into "+words.Spaced(g.Row.Name)+" of "+f.title()+" over the seal, with its pliers, eyes protected: it snaps to the floor all round.")
		}
	}
	return do
}
