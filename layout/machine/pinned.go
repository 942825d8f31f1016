package machine

import (
	"math"
	"slices"

	"centrepop/layout/assembly"
	"centrepop/layout/part"
	"centrepop/layout/plan"
	"centrepop/layout/stand"
	"centrepop/layout/words"
	"centrepop/parts"
	"centrepop/parts/geom"
	"centrepop/parts/seq"
)

// mouth is a round hole of a body: its axis out of its mouth, how deep it goes from there, what it measures
// as drawn and at the least, and what it is called.
type mouth struct {
	at, out               assembly.Vec
	deepMm, isMm, leastMm float64
	name                  string
	afterWeld             bool
	close                 bool // as a fit is
}

// closeMm is how far apart the limits of a fit are at the most. Common practice, no source.
const closeMm = 0.1

// isFit tells whether a size has limits of its own that are those of a fit.
func isFit(s part.Sized) bool {
	return s.Limited && !s.ByClass && !s.AsBought && s.Thread == nil && s.MaxMm-s.MinMm < closeMm
}

// pinned finds loose parts whose steps lie, or come to lie as they travel, in a hole or a bore that they do
// not go through at all limits, or that is finished only after they come.
func (m *Machine) pinned() (found []plan.Problem) {
	group, lastOf := m.weldGroups(), map[string]int{} // the weld after which the bores of a group are finished
	for _, j := range m.OfKind(parts.WeldKind) {
		if g := group[j.A.Instance().ID()]; g != "" {
			lastOf[g] = j.N - 1
		}
	}
	laid := m.Laid()
	for _, l := range laid {
		pin, n := m.Standing(l.Instance), m.StepOf(l.Loose.After.Value)
		if pin == nil {
			continue
		}
		for b := range m.Parts() {
			if b.ID == l.ID() {
				continue
			}
			last, welded := lastOf[group[b.ID]]
			early := welded && n >= 0 && (n < last || n == last && l.Loose.First)
			found = append(append(found, m.inMouths(&l, pin, b, early, last)...), m.unlikeIn(&l, pin, b)...)
			found = append(found, m.keyless(&l, pin, b)...)
			if !slices.ContainsFunc(laid, func(o stand.Laid) bool { return o.ID() == b.ID }) { // else its own turn comes
				found = append(found, m.keyless(&l, b, pin)...)
			}
		}
		if slack := m.slackIn(&l, pin); l.Loose.Held == parts.ByForce && slack != nil {
			found = append(found, *slack)
		}
	}
	return found
}

// roomShare is how much wider than a step, as a share of it, a hole may be that is meant for it. Common practice, no
// source.
const roomShare = 0.3

// slackIn is what is wrong where of all the steps of a loose part none is larger, at any limits, than a hole of
// about its size that it lies in: the tightest of them; nil where it lies in none.
func (m *Machine) slackIn(l *stand.Laid, pin *assembly.Body) (slack *plan.Problem) {
	outside, least := m.Model(l.Part).Side(false), inf
	for b := range m.Parts() {
		if b.ID == l.ID() {
			continue
		}
		for _, h := range m.roundHoles(b) {
			for _, s := range outside {
				if s.Size.Thread != nil || s.Size.NominalMm-h.isMm > stand.FitMm || h.isMm-s.Size.NominalMm > max(stand.FitMm, roomShare*s.Size.NominalMm) || !h.holds(pin.Pose, s.Span(), nil) {
					continue
				}
				room := h.leastMm - mostMm(s)
				if room < 0 {
					return nil
				}
				if room >= least {
					continue
				}
				least = room
				p := stand.Problem(l.Loose.After.Value, plan.PressedLoose, l.At.Pos, plan.Named(m.Title(l.ID())+" "+words.Spaced(s.Name)),
					plan.Named(m.Title(b.ID)+" "+words.Spaced(h.name)), m.Rounded(room, 3))
				slack = &p
			}
		}
	}
	return slack
}

// filled tells whether a step of about the size of a hole lies in it: of a bush, or of what runs there.
func (m *Machine) filled(h *mouth) bool {
	for b, r := range m.Parts() {
		if slices.ContainsFunc(r.Side(false), func(s *part.Step) bool {
			return math.Abs(h.isMm-s.Size.NominalMm) < stand.FitMm && h.holds(b.Pose, s.Span(), nil)
		}) {
			return true
		}
	}
	return false
}

// unlikeIn finds a step with a fit in a hole with one of another nominal size, a little wider, which nothing fills.
func (m *Machine) unlikeIn(l *stand.Laid, pin, b *assembly.Body) (found []plan.Problem) {
	outside := m.Model(l.Part).Side(false)
	for _, h := range m.roundHoles(b) {
		in := seq.Keep(outside, func(s *part.Step) bool { return h.close && isFit(s.Size) && h.holds(pin.Pose, s.Span(), nil) })
		i := slices.IndexFunc(in, func(s *part.Step) bool { return h.isMm-s.Size.NominalMm <= roomShare*s.Size.NominalMm })
		if i < 0 || m.filled(&h) {
			continue
		}
		found = append(found, stand.Problem(l.Loose.After.Value, plan.PinUnlike, l.At.Pos, plan.Named(m.Title(l.ID())+" "+words.Spaced(in[i].Name)), plan.Named(m.Title(b.ID)+" "+words.Spaced(h.name)),
			m.Rounded(in[i].Size.NominalMm, 3), m.Rounded(h.isMm, 3)))
	}
	return found
}

// keyless finds a step of a shaft in a bore of its size of a hub, a keyway in one of the two and none there in the
// other.
func (m *Machine) keyless(l *stand.Laid, shaft, hub *assembly.Body) (found []plan.Problem) {
	if !stand.SameAxis(hub.Pose, shaft.Pose) {
		return nil
	}
	of, on := m.PartOf(shaft.ID), m.PartOf(hub.ID)
	outside, at := of.Side(false), stand.On(hub.Pose, shaft, of)
	for _, bore := range on.Side(true) {
		keyed := slices.ContainsFunc(on.Out.Keyways, func(k plan.KeywayRow) bool { return k.In == bore.Name })
		for _, s := range outside {
			if math.Abs(bore.Size.NominalMm-s.Size.NominalMm) > stand.FitMm || 2*at.Span(s.Span()).OnMm(bore.Span()) < bore.LengthMm() {
				continue
			}
			key := slices.ContainsFunc(of.Out.Keyways, func(k plan.KeywayRow) bool {
				return k.In == s.Name && at.Span(k.Key()).Meets(bore.Span())
			})
			if key == keyed {
				continue
			}
			has, lacks := m.Title(shaft.ID)+" "+words.Spaced(s.Name), m.Title(hub.ID)+" "+words.Spaced(bore.Name)
			if keyed {
				has, lacks = lacks, has
			}
			found = append(found, stand.Problem(l.Loose.After.Value, plan.PinKeyless, l.At.Pos, plan.Named(has), plan.Named(lacks)))
		}
	}
	return found
}

// mostMm is the largest that an outside may be, as far as it is limited.
func mostMm(s *part.Step) float64 {
	if s.Size.Limited && s.Size.Thread == nil {
		return s.Size.MaxMm
	}
	return s.Size.NominalMm
}

// inMouths judges the steps of a loose part in the holes of one body; early tells that it comes before the
// bores that wait for the last weld are finished.
func (m *Machine) inMouths(l *stand.Laid, pin, b *assembly.Body, early bool, last int) (found []plan.Problem) {
	outside := m.Model(l.Part).Side(false)
	for _, h := range m.roundHoles(b) {
		name := plan.Named(m.Title(b.ID) + " " + words.Spaced(h.name))
		for _, s := range outside {
			if !h.holds(pin.Pose, s.Span(), l.Loose.Travels) {
				continue
			}
			if ratio, _ := s.Cone(); ratio > 0 { // its size is that of its large end, which may lie outside: what overlaps is found in space
				continue
			}
			if over := mostMm(s) - h.leastMm; geom.Over(over, 0) && s.Size.NominalMm-h.isMm < 2*stand.FitMm && !m.overlapping[[2]string{l.ID(), b.ID}] && l.Loose.Held != parts.ByForce { // what is larger lies round it, or overlaps
				found = append(found, stand.Problem(l.Loose.After.Value, plan.PinTight, l.At.Pos, plan.Named(m.Title(l.ID())+" "+words.Spaced(s.Name)), name, m.Rounded(over, 3)))
			}
			if h.afterWeld && early {
				found = append(found, stand.Problem(l.Loose.After.Value, plan.PinEarly, l.At.Pos, m.Named(l.ID()), name, plan.Named(l.Loose.After.Value), plan.Named(m.Joints[last].Name)))
				early = false
			}
		}
	}
	return found
}

// holds tells whether a step of a part at a pose lies in the hole, or comes there as it travels.
func (h *mouth) holds(pose assembly.Pose, own geom.Span, t *parts.Travels) bool {
	to := h.at.Sub(pose.At)
	if pose.Z.Cross(h.out).Len() > stand.Level || to.Cross(pose.Z).Len() > StandsMm {
		return false
	}
	way, at := pose.Z.Dot(h.out), -to.Dot(h.out)
	on := geom.Between(at-way*own.FromMm, at-way*own.ToMm)
	if t != nil {
		front, back := way*t.Front.Mm, -way*t.Back.Mm
		on = geom.Span{FromMm: on.FromMm + min(front, back), ToMm: on.ToMm + max(front, back)}
	}
	return on.OnMm(geom.Span{FromMm: -h.deepMm}) > StandsMm
}

// roundHoles are the bores and holes of a body without a thread. The bore of a bush is for inBushes.
func (m *Machine) roundHoles(b *assembly.Body) []mouth {
	if m.pressed(b.ID) {
		return m.drilled(b)
	}
	return m.mouths(b)
}

// mouths are the bores and holes of a body without a thread.
func (m *Machine) mouths(b *assembly.Body) (all []mouth) {
	for _, s := range m.PartOf(b.ID).Side(true) {
		least := words.Either(s.Size.Limited, s.Size.MinMm, s.Size.NominalMm)
		if s.Size.Thread == nil {
			all = append(all, mouth{b.Pose.Apply(assembly.Vec{Z: -s.FromMm}), b.Pose.Z, s.LengthMm(), s.Size.NominalMm, least, s.Name, s.AfterWeld, isFit(s.Size)})
		}
	}
	return append(all, m.drilled(b)...)
}

// drilled are the holes of a body without a thread.
func (m *Machine) drilled(b *assembly.Body) (all []mouth) {
	r := m.PartOf(b.ID)
	for _, f := range m.Mouths(b) {
		_, thick, ok := r.PlaneOf(f.Group, f.Group.Face)
		if size := f.Group.Size; ok && size.Thread == nil && (f.Group.OnWall() || (f.Out.Dot(b.Pose.Z) < 0) == (f.Group.Face == parts.Back)) {
			least := size.FinishedMm
			if size.Size.Limited {
				least = math.Min(least, size.Size.MinMm)
			}
			all = append(all, seq.Map(f.At, func(at assembly.Vec) mouth {
				return mouth{at, f.Out, thick, size.FinishedMm, least, f.Group.Group.Name, false, isFit(size.Size)}
			})...)
		}
	}
	return all
}
