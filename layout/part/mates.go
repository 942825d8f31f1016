package part

import (
	"cmp"
	"math"
	"slices"
	"strconv"

	"centrepop/layout/material"
	"centrepop/layout/plan"
	"centrepop/layout/words"
	"centrepop/parts"
	"centrepop/parts/seq"
)

// mate is a face of another part that bolts join to a face of this one.
type mate struct {
	*Sizes
	face *plan.Face
}

// mates are the faces of other parts with a group that bolts join to one on face f,
// drawn on a face of the same name. They are looked for by the joints alone: whether
// patterns meet is the joint's to say.
func (s *Sizes) mates(f parts.Face) []mate {
	var out []mate
	known := map[string]bool{s.Part.Name.Value: true}
	for _, j := range s.Job.Joints {
		own := func(r parts.JointRef) bool { return r.Part == s.Part.Name.Value && s.hasGroup(r.Feature, f) }
		if j.Bolt == nil || !j.Some(own) {
			continue
		}
		for _, r := range j.Refs() {
			p := s.Job.Part(r.Part)
			if p == nil || known[r.Part] {
				continue
			}
			if other, errs := newSizes(s.Job, p); len(errs) == 0 && other.hasGroup(r.Feature, f) && !other.knifed() {
				known[r.Part] = true
				other.oneTemplate()
				out = append(out, mate{other, other.face(f, false)})
			}
		}
	}
	return out
}

func newSizes(job *parts.Job, p *parts.Part) (*Sizes, parts.Errors) {
	z := newSizer(job, p)
	z.faceGroups()
	z.radials()
	z.keyways()
	z.grooves()
	z.flats()
	z.clamp()
	return z.Sizes, z.list
}

func newSizer(job *parts.Job, p *parts.Part) *sizer {
	z := &sizer{Sizes: &Sizes{Job: job, Part: p, W: words.Writer{Units: job.Units}, form: formOf(p, job.Units)}, faults: faults{job: job}}
	if m, err := material.Find(p.Material.Value); err == nil {
		z.Material = &m
	} else if n, ok := material.FindNonmetal(p.Material.Value); ok {
		z.Nonmetal = &n
	}
	z.Steps = z.form.steps(z)
	return z
}

func (s *Sizes) hasGroup(name string, f parts.Face) bool {
	return slices.ContainsFunc(s.Groups, func(m Group) bool { return m.Name.Value == name && m.Face == f })
}

// owner is the part whose template serves a face: a mate's that has all of its holes,
// or that of the mate's own owner; nil if the face keeps its own. Of equal faces the
// earlier part's is it.
func (s *Sizes) owner(f *plan.Face) *Sizes {
	for _, m := range s.mates(f.Face) {
		if serves(m.face, f) && (!serves(f, m.face) || slices.Index(s.Job.Parts, m.Part) < slices.Index(s.Job.Parts, s.Part)) {
			return cmp.Or(m.owner(m.face), m.Sizes)
		}
	}
	return nil
}

// share says of a face which other part's template serves it, or which it serves.
func (s *Sizes) share(f *plan.Face) {
	if f.NoTemplate != "" || !f.Round || len(f.Cuts) > 0 || s.knifed() { // soft sheet is cut on a template of its own
		return
	}
	if o := s.owner(f); o != nil {
		f.Shares = o.Part.Name.Value
		return
	}
	for _, m := range s.mates(f.Face) {
		if serves(f, m.face) {
			f.Serves = append(f.Serves, plan.Served{Part: m.Part.Name.Value, Title: m.Part.Title.Value, Quantity: m.Part.Quantity, Holes: holeSpan(m.face)})
		}
	}
}

// holeSpan are the numbers of a face's holes.
func holeSpan(f *plan.Face) string {
	first := seq.Min(math.MaxInt, f.Holes, func(h plan.Hole) int { return h.N })
	return words.Span(first, len(f.Holes))
}

// serves tells whether the template of a round flat face f has all holes of g, at the
// same places of a face of the same name, under the same numbers and for the same
// drill, inside the same outline. A mirrored pattern is another one.
func serves(f, g *plan.Face) bool {
	const same = 1e-6
	if f.Face != g.Face || f.NoTemplate != "" || g.NoTemplate != "" || !f.Round || !g.Round || len(f.Cuts)+len(g.Cuts)+len(g.Slots) > 0 || g.Carried != nil ||
		math.Abs(f.MaxMm.XMm-g.MaxMm.XMm) > same {
		return false
	}
	return !slices.ContainsFunc(g.Holes, func(h plan.Hole) bool {
		return !slices.ContainsFunc(f.Holes, func(k plan.Hole) bool {
			return k.N == h.N && math.Abs(k.XMm-h.XMm)+math.Abs(k.YMm-h.YMm)+math.Abs(k.DiameterMm-h.DiameterMm) < same
		})
	})
}

// sharedLines say whose template a face is punched from, and for whom one is printed
// again.
func (b *bench) sharedLines() []string {
	var out []string
	for m := range seq.Refs(b.Groups) {
		if m.Dowel != nil && !m.Dowel.Guide {
			out = append(out, "Leave "+m.placesWords()+" unpunched.")
		}
	}
	for _, f := range b.Faces {
		if f.Shares != "" {
			out = append(out, "The "+string(f.Face)+" template is that of "+b.Job.Part(f.Shares).Title.Value+", which is bolted on: of its holes punch "+
				holeSpan(f)+", the same side out and TOP to TOP, not mirrored.")
		}
		for _, o := range f.Serves {
			more := words.Either(o.Quantity > 1, strconv.Itoa(o.Quantity)+" times more", "once more")
			out = append(out, "Print the "+string(f.Face)+" template "+more+" for "+o.Title+", which is bolted on and has the same "+o.Holes+", not mirrored.")
		}
	}
	return out
}

// mateOf is the nominal outside diameter that a reference of this part points
// at, with the part it stands on; nil if it points at nothing that fits.
func (s *Sizes) mateOf(f *faults, ref parts.Ref) (*Sizes, *Step) {
	p := s.Job.Part(ref.Part)
	if p == nil {
		return nil, nil
	}
	other := newSizer(s.Job, p).Sizes
	switch st := other.StepNamed(ref.Feature); {
	case st == nil:
		f.fault(ref.Pos, ref.Part+"."+ref.Feature+" is not round", "a round outside of that part")
	case st.Inside:
		f.fault(ref.Pos, "light press on "+ref.Part+"."+ref.Feature+", which is a bore", "the outside step that goes into this bore")
	default:
		return other, st
	}
	return nil, nil
}
