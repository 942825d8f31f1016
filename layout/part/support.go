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

// slender tells whether the part sticks out so far over its diameter that it is
// turned with a tailstock or a steady.
func (b *bench) slender() bool { return b.LengthMm() > chatterDias*b.widest().Size.NominalMm }

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
	lo, hi := worst.Size.MinMm, worst.Size.MaxMm
	return "; travelling steady" + words.When(!worst.Size.Limited || !geom.Over(mm, hi-lo), ", or a spring pass on short steps") + ": " + b.bends(worst, mm)
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

// jawStockMm is how long the stock has to be for the jaws to have enough behind what is turned in
// the first setting.
func (b *bench) jawStockMm(steps []*Step) float64 {
	out := b.facingMm() + b.turnedToMm(steps) + toolClearMm
	if slices.ContainsFunc(steps, b.whole) {
		out = b.facingMm() + b.LengthMm()
	}
	need := math.Min(cutting.JawMm, math.Max(gripShare*out, math.Min(b.gripNeedMm(), out)))
	return math.Max(b.LengthMm()+2*b.facingMm(), out+need)
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

// holding is how a part is held in a setting, after the steps turned before.
func (b *bench) holding(set setting) string {
	b.tail = false
	if s := seq.First(set.steps, func(s *Step) bool { return b.behind(set.face, s) && s != b.neckBehind(b.widest()) }); b.onCentres && s != nil {
		return "between centres, by a face driver: a driver on the outside stands in the way of " + words.Spaced(s.Name) + b.onCentresSupport(set.steps)
	}
	if b.onCentres {
		on := words.Either(!set.first() && anyTurned(set.before), b.driverOn(set), words.Either(b.roughed, "the end not finished", "the end not turned"))
		if mine, _, _ := b.trueTo(set.steps, b.Side(false)); mine == nil {
			on += "; or in the chuck with a centre at the free end"
		}
		return "between centres, driver on " + on + b.onCentresSupport(set.steps)
	}
	text := "chuck on the back end, set true"
	switch {
	case set.first():
	case !slices.ContainsFunc(b.ops, func(o plan.Operation) bool { return o.Machine == plan.Lathe }): // the front is only sawn
		text = "chuck on the front end, set true"
	case !anyTurned(set.steps) && len(b.rest()) == 0:
		text = "turned round, set true"
	default:
		text = b.truedOn(set)
	}
	h := b.heldIn(set)
	b.letGo(set, h)
	return text + b.chuckSupport(set, h)
}
