package part

import (
	"centrepop/layout/cutting"
	"centrepop/layout/grooves"
	"centrepop/layout/lookup"
	"centrepop/layout/plan"
	"centrepop/layout/words"
	"centrepop/parts"
	"centrepop/parts/geom"
	"centrepop/parts/seq"
)

// centreHole is a centre hole in an end of a part.
type centreHole struct {
	grooves.Centre
	face parts.Face
	at   string // where its mouth is measured
}

// centreHoles are those that the drawing gives, and those that a bar turned
// between centres needs: form A, by the diameter of the end.
func (s *shaper) centreHoles() {
	in := s.Part.Centres
	outside := s.Side(false)
	needed := s.Part.Turned() && len(s.Side(true)) == 0 && anyTurned(outside) && s.LengthMm() > chatterDias*s.widest().Size.NominalMm
	if in == nil && !needed {
		return
	}
	for i, face := range []parts.Face{parts.Front, parts.Back} {
		if in != nil && in.Ends != "both" && in.Ends != string(face) {
			continue
		}
		end := outside[i*(len(outside)-1)]
		form, pilot := grooves.CentreA, 0.0
		if in != nil {
			form, pilot = grooves.CentreForm(in.Form), in.Pilot.Mm
		}
		if pilot == 0 {
			var err error
			if pilot, _, err = grooves.PilotFor(end.Size.NominalMm); err != nil {
				if in != nil {
					s.fault(in.Pos, "no centre hole is known for an end of "+s.W.Dia(end.Size.NominalMm), "a diameter over "+s.W.Said(grooves.LeastCentredMm)+", or the pilot")
				} else {
					s.thin = append(s.thin, end)
				}
				continue
			}
		}
		hole, err := grooves.CentreFor(pilot, form)
		if err != nil {
			s.fault(in.Pilot.Pos, "no centre hole has a pilot of "+s.W.Size(pilot), "1, 1.25, 1.6, 2, 2.5, 3.15, 4, 5, 6.3, 8 or 10 mm")
			continue
		}
		s.centres = append(s.centres, &centreHole{hole, face, s.centreAt(face)})
	}
}

// centredOnce tells whether the drawing has a centre in one end alone: the other has nothing to turn on.
func (s *Sizes) centredOnce() bool {
	c := s.Part.Centres
	return c != nil && c.Ends != "both"
}

// centreAt is where the mouth of a centre is measured: a crown takes it away.
func (s *Shape) centreAt(face parts.Face) string {
	at := "at the face"
	for _, c := range s.bevels {
		at += words.When(c.Sphere && c.back == (face == parts.Back), ", before its crown")
	}
	return at
}

func (c *centreHole) feature(n *Numbered) plan.Feature {
	f := plan.Feature{
		Kind: plan.CentreFeature, Name: "centre " + string(c.face), Size: c.Designation,
		Note: "pilot " + n.W.Dia(c.PilotMm) + ", " + n.W.Dia(c.MouthMm) + " " + c.at, Balloon: plan.XY{XMm: c.face.FromFront(0, n.LengthMm())},
	}
	f.Note += words.When(n.drilledAway(c) != nil, ", to turn by: drilled away later")
	return f
}

// operations: a centre is drilled when its end is faced.
func (c *centreHole) operations(*bench) {}

func (c *centreHole) checks(r *record) {
	k := plan.Check{Ref: r.ref(c), What: "centre " + string(c.face), Wanted: c.Designation, Limits: "cone whole to " + r.W.Dia(c.MouthMm) + " " + c.at, Gauge: "calipers", Source: c.Source}
	if m := r.drilledAway(c); m != nil {
		seat := seatMm(m)
		if seat == 0 {
			return
		}
		k.Wanted, k.Limits, k.Source = "60° in the mouth of "+words.Spaced(m.Name.Value), r.W.Dia(seat)+" "+c.at+", bright all round", lookup.NoSource
	}
	r.add(k)
}

// drilledAway is the hole on the axis that takes the cone of a centre hole away, or nil.
func (s *Sizes) drilledAway(c *centreHole) *Group {
	return seq.At(s.Groups, func(m *Group) bool {
		return m.Face == c.face && s.central(m) && m.Size.DrillMm >= c.ConeMm
	})
}

// seatDias is how wide a 60° seat is in the mouth of a tapped hole that takes a centre's
// place, in diameters of its thread. Common practice, no source.
const seatDias = 1.25

// seatMm is that of a tapped hole with no countersink of its own; else 0.
func seatMm(m *Group) float64 {
	if m.Size.Thread == nil || m.Hole.Countersink != nil || m.Hole.Counterbore != nil {
		return 0
	}
	return geom.Clean(seatDias * m.Size.Thread.MajorMm)
}

// centreLine drills the centre of a face; empty without one.
func (b *bench) centreLine(face parts.Face) string {
	for _, c := range b.centres {
		if c.face == face {
			return "centre-drill " + c.Designation + ", to " + b.W.Dia(c.MouthMm) + " " + c.at + b.atSpeed(cutting.Drill, c.ConeMm, true)
		}
	}
	return ""
}

// centred is a line with the centre of a face drilled after it.
func (b *bench) centred(line string, face parts.Face) string {
	return words.Join("; ", line, b.centreLine(face)) + "."
}
