package part

import (
	"cmp"
	"math"
	"slices"

	"centrepop/layout/cutting"
	"centrepop/layout/plan"
	"centrepop/layout/words"
	"centrepop/parts/geom"
	"centrepop/parts/seq"
)

// Where a round is supported. Of a finished size a quarter of its tolerance may be
// bent aside; what sticks out over three diameters chatters, and jaws on less than a
// fifth of what sticks out, or on less than 0.15 diameters, let go. The tool stays clear
// of the jaws, and on less than leastJawMm nothing is turned that can be turned in two
// settings. Common practice, no source.
const (
	bendShare   = 0.25
	chatterDias = 3.0
	gripShare   = 1.0 / 5
	gripDias    = 0.15
	toolClearMm = 3.0
	leastJawMm  = 10.0
	leastHeldMm = 3.0 // jaws on less let go, however light the cut
)

// slender tells whether the part sticks out so far over its diameter that it is
// turned with a tailstock or a steady.
func (b *bench) slender() bool { return b.LengthMm() > chatterDias*b.widest().Size.NominalMm }

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

// bent is the turned step with limits that a finishing cut bends aside the most of
// what its tolerance lets it, and by how much; nil where none is bent over that.
func (b *bench) bent(steps []*Step, bendMm func(zMm float64) float64) (worst *Step, mm float64) {
	share := bendShare
	for _, s := range steps {
		lo, hi := s.Size.MinMm, s.Size.MaxMm
		if t := s.Size.Thread; t != nil && t.Lead != nil {
			lo, hi = leadCrest(s)
		} else if !s.Size.Limited {
			continue
		}
		if s.Inside || s.Size.AsBought {
			continue
		}
		tolerance := hi - lo
		for _, z := range []float64{s.FromMm, (s.FromMm + s.ToMm) / 2, s.ToMm} {
			if at := bendMm(z); 2*at/tolerance > share+1e-9 {
				share, worst, mm = 2*at/tolerance, s, at
			}
		}
	}
	return worst, mm
}

// bends says what a finishing cut does to a step.
func (b *bench) bends(s *Step, mm float64) string {
	um := math.Round(1000 * mm)
	return "a finishing cut bends " + words.Spaced(s.Name) + " " + b.W.Fine(um, um) + " aside (beam formula; force common practice, no source)"
}

// onCentresSupport is a travelling steady where a finishing cut bends the bar more
// than its tolerance bears.
func (b *bench) onCentresSupport(steps []*Step) string {
	if b.Material == nil {
		return ""
	}
	all := b.pieces(0, b.LengthMm())
	worst, mm := b.bent(steps, func(z float64) float64 { return cutting.BendOnCentresMm(all, z, b.Material.EMPa) })
	if worst == nil {
		return ""
	}
	return "; travelling steady, or a spring pass on short steps: " + b.bends(worst, mm)
}

// held is how a part stands in the chuck: on gripMm of its length, with the jaws'
// edge at jawsMm from the front and the free end at freeMm; outMm sticks out.
type held struct{ gripMm, jawsMm, freeMm, outMm float64 }

// heldIn is that of a setting: first on the stock at the back end, then, turned
// round, on the widest of what was turned before. A part that is only faced is held as
// far as the jaws reach.
func (b *bench) heldIn(set setting) held {
	length := b.LengthMm()
	switch {
	case !anyTurned(set.steps):
		return held{cutting.JawMm, length - cutting.JawMm, 0, length - cutting.JawMm}
	case set.first():
		grip, behind := b.grip(set.steps), b.backAllowanceMm()+b.moreMm
		switch whole := slices.ContainsFunc(set.steps, b.whole); {
		case whole && b.partedOff():
			grip = math.Min(cutting.JawMm, behind-partOffMm-toolClearMm)
		case whole:
			grip = math.Min(cutting.JawMm, math.Max(length/2, behind))
		}
		in := math.Min(grip, cutting.JawMm)
		return held{grip, math.Min(length, length+behind-in), 0, b.sawnMm() - in}
	}
	h := held{gripMm: math.Min(cutting.JawMm, length/2), freeMm: length}
	if s := gripped(set.before); s != nil {
		if h.gripMm, h.jawsMm = math.Min(s.LengthMm(), cutting.JawMm), s.ToMm; b.splits(s) {
			h.jawsMm -= b.restMm(s)
		}
	}
	h.jawsMm = math.Max(h.jawsMm, h.gripMm)
	h.outMm = length - h.jawsMm
	return h
}

// letGo notes that the jaws have hardly anything to hold a part by: of the stock behind it, or of what
// was turned before.
func (b *bench) letGo(set setting, h held) {
	if h.gripMm >= leastHeldMm-geom.CloseMm || !anyTurned(set.steps) || !set.first() && b.thinWallMm(set.before) > 0 {
		return
	}
	p := plan.Problem{
		Kind: plan.JawsShort, Pos: cmp.Or(b.Part.Stock.Pos, b.Part.Pos),
		Args: []plan.Arg{plan.Of(plan.Mm, h.gripMm), plan.Of(plan.Mm, h.outMm), plan.Of(plan.Mm, b.W.Up(b.jawStockMm(set.steps), 1, 1.0/16))},
	}
	if on := gripped(set.before); !set.first() && on != nil {
		p.Kind, p.Feature, p.Args[2] = plan.JawsThin, on.Name, plan.Named(words.Spaced(on.Name))
	}
	b.unmeasured = append(b.unmeasured, p)
}

// chuckSupport is what holds up what sticks out of the chuck in a setting.
func (b *bench) chuckSupport(set setting, h held) string {
	weak := math.Min(h.gripMm, cutting.JawMm) < gripShare*h.outMm || h.gripMm < math.Min(gripDias*b.widest().Size.NominalMm, h.outMm)
	if !anyTurned(set.steps) {
		return words.When(weak, "; steady near the end that is faced"+words.When(b.widest().Size.AsBought, ", on a cathead")+", "+b.W.Near(h.outMm)+" sticks out")
	}
	text := ""
	if weak && h.gripMm < cutting.JawMm && !slices.ContainsFunc(set.steps, b.whole) {
		text = "; only " + b.W.Said(b.W.Even(h.gripMm, 0.01, 0.01)) + " for the jaws, " + b.W.Said(b.W.Even(h.outMm, 0.01, 0.01)) + " sticks out: light cuts"
	}
	var worst *Step
	mm := 0.0
	if b.Material != nil {
		bar := b.pieces(h.freeMm, h.jawsMm)
		worst, mm = b.bent(set.steps, func(z float64) float64 {
			return cutting.BendInChuckMm(bar, math.Abs(z-h.freeMm), b.Material.EMPa)
		})
	}
	centre := words.Either(b.BoreMm() != 0, "; a centre in a plug, or a steady, at the free end", "; a centre or a steady at the free end")
	b.tail = true
	switch wide := b.widest().Size.NominalMm; {
	case worst != nil:
		text += centre + ": " + b.bends(worst, mm)
	case h.outMm > chatterDias*wide || weak && h.outMm > wide:
		text += centre
		text += words.When(slices.ContainsFunc(set.steps, func(s *Step) bool { return !s.Inside && !s.Size.AsBought }), " until the outside is rough turned")
	default:
		b.tail = false
	}
	return text
}

// hoisted says what a heavy part needs while it goes into the chuck, and each time that it is
// held anew, when it weighs what it does finished or more.
func (b *bench) hoisted() string {
	kg, how := math.Max(b.stockKg(), b.massKg()), " before turning: hoist it in"
	if slices.ContainsFunc(b.ops, func(o plan.Operation) bool { return o.Machine == plan.Lathe }) {
		kg, how = b.massKg(), ": hoist it round"
	}
	return words.When(kg > plan.LiftKg, "; "+b.W.RoundMass(kg, 0)+how+" and do not let go before the jaws hold")
}
