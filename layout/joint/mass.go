package joint

import (
	"math"
	"slices"

	"centrepop/layout/bolts"
	"centrepop/layout/plan"
	"centrepop/layout/words"
	"centrepop/parts"
)

// steelKgMm3 is the density of fasteners and bearings: common practice, no source.
const steelKgMm3 = 7850e-9

// bearingShare is how much of the ring between bore, outside and width of a tapered
// roller bearing is steel: 0.71 to 0.74 by the masses that makers print for 30208
// (0.42 kg), 30210 (0.55 kg) and LM48548/LM48510 (0.25 kg), from memory.
const bearingShare = 0.73

// ballShare is the same of a deep-groove ball bearing: 0.68 by the masses that makers print for 6004 (0.069 kg), 6204
// (0.106 kg) and 6308 (0.63 kg), from memory.
const ballShare = 0.68

// massKg sums parts and what joins them: bolts, nuts, washers, made studs and
// bearings of the joints made so far, and what was put in by hand with them, things
// bought as the job weighs them. Keys, seals and weld metal are left out. All is false where
// the mass of a part is not known: it is then at least so much.
func (j *shop) massKg(members []parts.Instance, made []*joint) (sum float64, all bool) {
	all = true
	for _, m := range members {
		kg := j.model(m.Part).Out.MassKg
		all = all && kg > 0
		sum += kg
	}
	for _, t := range made {
		if !slices.Contains(members, t.a.Instance()) {
			continue
		}
		sum += t.kind.massKg(j, t)
	}
	return words.Round(sum+j.looseKg(members, made), 3), all
}

func (bearingKind) massKg(_ *shop, t *joint) float64 {
	b := t.in.Bearing
	return bearingShare * steelKgMm3 * b.Width.Mm * ringMm2(b.Outside.Mm, b.Bore.Mm)
}

func (ballKind) massKg(s *shop, t *joint) float64 {
	return bearingKind{}.massKg(s, t) * ballShare / bearingShare
}

// massKg is what a ring of bolts or studs weighs with nuts and washers.
func (boltKind) massKg(j *shop, t *joint) float64 {
	p, in, b := t.out.Bolt, t.in.Bolt, t.bolt
	nuts := float64(t.nuts())
	each, washers := nuts*nutKg(b), max(1, nuts)
	if in.Stud.Value != "" {
		each += j.model(in.Stud.Value).Out.MassKg
	} else if each += boltKg(b, p); in.Nut {
		washers = 2
	}
	if in.Washer {
		each += washers * steelKgMm3 * b.WasherThicknessMm * ringMm2(b.WasherODMm, b.WasherIDMm)
	}
	return each * float64(p.Count)
}

// nutKg is a hexagon nut, its hole as wide as the thread; 0 for none.
func nutKg(b *bolts.Bolt) float64 {
	if b == nil {
		return 0
	}
	return steelKgMm3 * b.NutHeightMm * (hexagonMm2(b.NutAcrossFlatsMm) - ringMm2(b.Thread.MajorMm, 0))
}

// boltKg is a bolt of the length ordered, its shank taken at the middle of the
// thread.
func boltKg(b *bolts.Bolt, p *plan.BoltPlan) float64 {
	shank := p.LengthMm * ringMm2(b.Thread.MajorMm-0.65*b.Thread.PitchMm, 0)
	head := b.HeadHeightMm * hexagonMm2(b.AcrossFlatsMm)
	if p.Head == string(bolts.Socket) {
		head = b.SocketHeadHeightMm*ringMm2(b.SocketHeadDiameterMm, 0) - b.SocketHeadHeightMm/2*hexagonMm2(b.SocketKeyMm)
	}
	if s, ok := b.Sunk(); ok && p.Head == string(bolts.Countersunk) { // the cone beside the shank, which reaches its top
		d := b.Thread.MajorMm
		head = math.Pi/12*s.HeightMm*(s.DiameterMm*s.DiameterMm+s.DiameterMm*d-2*d*d) - s.HeightMm/2*hexagonMm2(s.KeyMm)
	}
	return steelKgMm3 * (shank + head)
}

func ringMm2(outMm, inMm float64) float64 { return math.Pi / 4 * (outMm*outMm - inMm*inMm) }

// hexagonMm2 is the area of a hexagon by its width across flats.
func hexagonMm2(flatsMm float64) float64 { return math.Sqrt(3) / 2 * flatsMm * flatsMm }
