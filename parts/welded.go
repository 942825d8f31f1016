package parts

import (
	"slices"
)

// LeftMm is what stays on the diameter of the bore after it is cut: where it is finished after the
// welds weldMm at the least.
func (b *Bore) LeftMm(weldMm float64) float64 {
	if b.AfterWeld {
		return max(weldMm, b.Leave.Mm)
	}
	return b.Leave.Mm
}

// Unwelded are the copies of a part, from 1, that no weld of the job holds.
func (j *Job) Unwelded(p *Part) (copies []int) {
	for n := 1; n <= p.Quantity; n++ {
		holds := func(r JointRef) bool { return r.Instance() == Instance{p.Name.Value, n} }
		if !slices.ContainsFunc(j.Joints, func(o *Joint) bool { return o.Weld != nil && (holds(o.Weld.Part) || holds(o.Weld.To)) }) {
			copies = append(copies, n)
		}
	}
	return copies
}

// BeforeWeld is the part as it goes to its welds: what is finished after the last of them has
// leaveMm left on the diameter and no limits, and nothing is cut into it; TOP that is a keyway's is scribed
// until then; nil where nothing is.
func (p *Part) BeforeWeld(leaveMm float64) *Part {
	out, later := *p, []string{}
	left := func(s Size, moreMm float64) Size {
		return Size{Nominal: Length{Mm: s.Nominal.Mm + moreMm, Pos: s.Nominal.Pos}}
	}
	if b := p.Bore; b != nil && b.AfterWeld {
		later = append(later, "bore")
		out.Bore = &Bore{Pos: b.Pos, Size: left(b.Size, -b.LeftMm(leaveMm)), Waits: true}
	}
	if p.Profile != nil {
		profile := *p.Profile
		steps := func(of []Step, moreMm float64) []Step {
			of = slices.Clone(of)
			for i, s := range of {
				if s.AfterWeld {
					later = append(later, s.Name.Value)
					of[i] = Step{Pos: s.Pos, Name: s.Name, Size: left(s.Size, moreMm), Length: s.Length, Limits: s.Limits, Seat: s.Seat}
				}
			}
			return of
		}
		profile.Outside, profile.Inside = steps(p.Profile.Outside, leaveMm), steps(p.Profile.Inside, -leaveMm)
		out.Profile = &profile
	}
	if len(later) == 0 {
		return nil
	}
	is := func(name Text) bool { return slices.Contains(later, name.Value) }
	out.Keyways = slices.DeleteFunc(slices.Clone(p.Keyways), func(k Keyway) bool { return is(k.In) })
	if out.Top.Value == "keyway" && len(out.Keyways) < len(p.Keyways) && len(out.Keyways) == 0 {
		out.Top.Value = "scribe"
	}
	out.Grooves = slices.DeleteFunc(slices.Clone(p.Grooves), func(g Groove) bool { return is(g.In) })
	out.Flats = slices.DeleteFunc(slices.Clone(p.Flats), func(f Flats) bool { return is(f.In) })
	if p.Clamp != nil && is(p.Clamp.In) {
		out.Clamp = nil // an open ring is neither welded nor bored
	}
	out.Require = slices.DeleteFunc(slices.Clone(p.Require), func(q Requirement) bool { return is(q.Of) || is(q.To) })
	out.Chamfers = slices.DeleteFunc(slices.Clone(p.Chamfers), func(c Chamfer) bool {
		return c.For != "weld" && slices.ContainsFunc(later, func(name string) bool {
			of, end := c.On()
			return of == name && end != ""
		})
	})
	return &out
}
