package part

import (
	"cmp"
	"math"
	"slices"

	"centrepop/layout/cutting"
	"centrepop/layout/words"
	"centrepop/parts"
	"centrepop/parts/geom"
	"centrepop/parts/seq"
)

// backAllowanceMm is what stands behind the part in the first setting: what the stock is longer
// than it, less what its front is faced by, half of that and what facing needs at most; a casting
// has as much on either face. What is sawn on for the jaws is not of it.
func (b *bench) backAllowanceMm() float64 {
	over := math.Max(0, b.sawnMm()-b.moreMm-b.LengthMm())
	if b.Part.Stock.Form == "casting" {
		return over / 2
	}
	return over - math.Min(b.facingMm(), over/2)
}

// facingMm is what facing needs at each end.
func (b *bench) facingMm() float64 { return cutting.FacingAllowanceMm(b.widest().Size.NominalMm) }

// partOffMm is what a parting tool and the facing behind it take. Common practice, no source.
const partOffMm = 5.0

// An outside that is limited closer than meetMm is turned whole out of the jaws: what is turned round in soft ones does not meet so
// closely. It is no longer than standsOut of its diameters, and no thicker than can be parted off. Common practice, no source.
const meetMm, standsOut, partsMm = 0.05, 3.0, 80.0

// inOneGo tells whether an outside from end to end is turned in one setting: with others, or as close as it is limited.
func (b *bench) inOneGo(wide *Step) bool {
	z := wide.Size
	return b.oneSetting(wide.Name) || z.Fitted() && z.Thread == nil && z.MaxMm-z.MinMm < meetMm && z.NominalMm <= partsMm && b.LengthMm() <= standsOut*z.NominalMm
}

// partingMm is the stock behind a part of which an outside from end to end is turned in one setting: what the parting tool takes,
// and for the jaws; 0 of others. A casting has it where it is ordered so long.
func (b *bench) partingMm() float64 {
	wide := b.widest()
	if wide == nil || !b.whole(wide) || wide.Size.AsBought || !b.inOneGo(wide) {
		return 0
	}
	if k := b.Part.Stock; k.Form == "casting" && !k.Length.Set() {
		return 0
	}
	return partOffMm + toolClearMm + max(leastJawMm, b.gripNeedMm())
}

// oneSetting tells whether a step is one of those turned without letting go.
func (s *Sizes) oneSetting(name string) bool {
	return s.Part.Turned() && slices.ContainsFunc(s.Part.Profile.OneSetting, func(t parts.Text) bool { return t.Value == name })
}

// partingStockMm is how long the stock of such a part has to be; 0 of others.
func (b *bench) partingStockMm() float64 {
	more := b.partingMm()
	if more == 0 {
		return 0
	}
	return b.LengthMm() + b.facingMm() + more
}

// partedOff tells whether the stock is long enough for that.
func (b *bench) partedOff() bool {
	need := b.partingStockMm()
	return need > 0 && b.sawnMm() >= need-geom.CloseMm
}

// sawnMm is the length that the stock is cut to: as bought, else with what facing both
// ends and the jaws need.
func (b *bench) sawnMm() float64 {
	if l := b.Part.Stock.Length; l.Set() {
		return l.Mm
	}
	if b.cut.outline != nil {
		return b.plateMm()
	}
	return geom.Clean(b.LengthMm() + 2*b.facingMm() + b.partingMm() + b.moreMm)
}

// BlankLengthMm is the length in mm that the first operation cuts the bar or tube of a part to, what is faced off with it.
func (m *Model) BlankLengthMm() float64 {
	if m.work == nil {
		return geom.Clean(m.LengthMm())
	}
	return m.work.sawnMm()
}

// stockKg is the mass of what goes into the chuck first: bar, tube, casting or blank;
// 0 where it is not known.
func (b *bench) stockKg() float64 {
	k := b.Part.Stock
	if b.DensityKgM3() == 0 || !k.Size.Set() {
		return 0
	}
	area, long := sweptMm2(k.Size.Mm, 0), 0.0
	switch {
	case b.cut.outline != nil:
		area, long = math.Abs(geom.NewContour(b.cut.outline).AreaMm2()), b.plateMm()
		for _, o := range b.cut.openings {
			area -= o.areaMm2()
		}
	case !b.Part.Turned() && b.Part.Kind != parts.Tube:
		return 0
	case k.Form == "casting":
		return b.castKg()
	case k.Form == "tube":
		area -= sweptMm2(k.Size.Mm-2*k.Second.Mm, 0)
	case k.Form == "square":
		area = k.Size.Mm * k.Size.Mm
	}
	return area * cmp.Or(long, b.sawnMm()) * 1e-9 * b.DensityKgM3()
}

// castKg is the mass of a casting as castText orders it.
func (b *bench) castKg() float64 {
	more := math.Max(0, b.Part.Stock.Size.Mm-b.widest().Size.NominalMm)
	pieces := b.pieces(0, b.LengthMm())
	pieces[0].LengthMm += (b.sawnMm() - b.LengthMm()) / 2
	pieces[len(pieces)-1].LengthMm += (b.sawnMm() - b.LengthMm()) / 2
	core := sweptMm2(b.coreMm(more), 0)
	return seq.Sum(pieces, func(p cutting.Stretch) float64 { return (sweptMm2(p.OutMm+more, 0) - core) * p.LengthMm }) * 1e-9 * b.DensityKgM3()
}

// pieces are the sections of the finished part from one place to another, turned
// round where from is the greater.
func (b *bench) pieces(fromMm, toMm float64) []cutting.Stretch {
	lo, hi := math.Min(fromMm, toMm), math.Max(fromMm, toMm)
	ends := []float64{lo, hi}
	for i := range b.Steps {
		ends = append(ends, seq.Keep([]float64{b.Steps[i].FromMm, b.Steps[i].ToMm}, func(z float64) bool { return z > lo && z < hi })...)
	}
	slices.Sort(ends)
	ends = slices.Compact(ends)
	var out []cutting.Stretch
	for i := 1; i < len(ends); i++ {
		middle := (ends[i-1] + ends[i]) / 2
		p := cutting.Stretch{LengthMm: ends[i] - ends[i-1]}
		if s := b.outsideAt(middle); s != nil {
			p.OutMm = 2 * s.RadiusMm()
		}
		if s := b.boreAt(middle); s != nil {
			p.InMm = 2 * s.RadiusMm()
		}
		out = append(out, p)
	}
	if fromMm > toMm {
		slices.Reverse(out)
	}
	return out
}

// ends says what becomes of the two ends that the saw leaves.
func (b *bench) ends() string {
	switch front, back := b.saddledEnd(parts.Front), b.saddledEnd(parts.Back); {
	case front && back:
		return "cut both ends to their saddle curves"
	case front || back:
		return "face one end and cut the other to its saddle curve"
	case b.partedOff():
		return "face the front, and to hold it by until it is parted off"
	case b.sawnOff():
		return "face both ends, and to hold it by until it is sawn off"
	}
	return "face both ends"
}

// sawnOff tells whether more is sawn on for the jaws than facing takes off again.
func (b *bench) sawnOff() bool { return b.moreMm >= partOffMm }

// leastCoreMm is the smallest hole that is cored. Common practice, no source.
const leastCoreMm = 20.0

// coreMm is the core of a casting that leaves some metal in its narrowest bore; 0 where it is
// cast solid.
func (b *bench) coreMm(moreMm float64) float64 {
	inside := b.Side(true)
	core := seq.Least(inside, func(s *Step) float64 { return s.leastMm() - moreMm })
	if len(inside) == 0 || core < leastCoreMm-geom.CloseMm {
		return 0
	}
	return geom.Clean(core)
}

// castText is what a casting is ordered by: each diameter of the part with what the stock
// leaves on the largest, but for steps that are cast with their neighbour, and the core.
func (b *bench) castText() string {
	more, long := geom.Clean(b.Part.Stock.Size.Mm-b.widest().Size.NominalMm), b.Part.Stock.Length.Mm
	if long == 0 || more <= 0 {
		return ""
	}
	text := "Ordered with " + b.W.Size(more) + " on diameters and " + b.W.Read((long-b.LengthMm())/2) + " on each face: "
	for _, s := range b.Side(false) {
		text += words.When(s.LengthMm() > more, words.Spaced(s.Name)+" "+b.W.Dia(s.Size.NominalMm+more)+", ")
	}
	if core := b.coreMm(more); core > 0 {
		text += "core " + b.W.Dia(core)
	} else {
		text += "cast solid"
	}
	return text + ". Draft, fillets, shrinkage and a stepped core are the pattern maker's."
}
