package part

import (
	"cmp"
	"math"
	"slices"

	"centrepop/parts"
	"centrepop/parts/geom"
	"centrepop/parts/seq"
)

// setting is what is turned without letting the part go.
type setting struct {
	face   parts.Face
	steps  []*Step // outside from the widest down, inside from the narrowest up
	before []*Step // what was turned in the setting before
}

// settings shares out the steps. A widest outside that reaches the back face
// is turned from there, for the chuck holds it while the front is turned.
func (b *bench) settings() [2]setting {
	outside, inside := b.Sides()
	out := [2]setting{{face: parts.Front}, {face: parts.Back}}
	wide := b.widest()
	share := func(steps []*Step, split float64) {
		for _, s := range steps {
			i := 0
			if !geom.Over(split, s.FromMm) || tapped(s) && geom.Some(s.FromMm) && b.toEnd(s) {
				i = 1 // a tap goes in from the end where its thread begins
			}
			out[i].steps = append(out[i].steps, s)
		}
	}
	slices.SortStableFunc(outside, func(p, q *Step) int { return cmp.Compare(q.Size.NominalMm, p.Size.NominalMm) })
	share(outside, b.parting(wide))
	if len(inside) > 0 {
		last := inside[len(inside)-1]
		byRadius := func(p, q *Step) int { return cmp.Compare(p.RadiusMm(), q.RadiusMm()) }
		narrow := slices.MinFunc(inside, byRadius)
		slices.SortStableFunc(inside, byRadius)
		split := narrow.ToMm
		switch {
		case b.blind(last):
			split = b.LengthMm()
		case b.fromBehind(narrow), narrow.taper() != nil && narrow.taper().largeAt(true): // the gauge of a cone enters at its large end
			split = narrow.FromMm
		}
		share(inside, split)
	}
	b.together(&out)
	return out
}

// parting is from where on, mm from the front, outsides are turned from the back: behind the widest, or with it, or behind a
// neck too, which is turned before the thread that runs out into it.
func (b *bench) parting(wide *Step) float64 {
	if len(b.Side(false)) > 1 && !b.splits(wide) && (b.toEnd(wide) || b.fromBack(wide)) {
		return wide.FromMm
	}
	if neck := b.neckBehind(wide); neck != nil {
		return neck.ToMm
	}
	return wide.ToMm
}

// neckBehind is the neck between a thread outside and the larger step behind it, into which the thread runs out; nil
// if there is none.
func (b *bench) neckBehind(s *Step) *Step {
	_, neck := b.neighbours(s)
	if s.Size.Thread == nil || neck == nil || overRoot(s, neck) > geom.CloseMm {
		return nil
	}
	if _, next := b.neighbours(neck); next == nil || next.RadiusMm() <= neck.RadiusMm() {
		return nil
	}
	return neck
}

// fromBack tells whether the widest outside, though something lies behind it, is
// turned from the back: the jaws would have too little in front of it, and
// another finished diameter is long enough to turn it on.
func (b *bench) fromBack(wide *Step) bool {
	return b.leftMm(wide.ToMm) < b.gripNeedMm() && !b.splits(wide) && b.heldBefore(wide)
}

// heldBefore tells whether a finished diameter in front of an outside is long enough to
// hold the part on.
func (b *bench) heldBefore(wide *Step) bool {
	return slices.ContainsFunc(b.Side(false), func(s *Step) bool { return !geom.Over(s.ToMm, wide.FromMm) && s.LengthMm() >= b.gripNeedMm() })
}

// leftMm is what the first setting leaves for the jaws where it turns all up to zMm:
// with what the other end is faced by, the tool clear of the jaws.
func (b *bench) leftMm(zMm float64) float64 {
	return b.LengthMm() - zMm + b.backAllowanceMm() - toolClearMm
}

// twice tells whether a step is turned in two settings: an outside, or a bore so deep that a bar
// reaches half from each end.
func (b *bench) twice(s *Step) bool {
	if b.whole(s) && !s.Size.AsBought && !b.partedOff() {
		return true
	}
	return !b.onCentres && b.splits(s) || b.barDeep(s) && s.FromMm < geom.CloseMm && s.ToMm > b.LengthMm()-geom.CloseMm && !b.oneSetting(s.Name)
}

// rest are the steps of which the second setting turns the rest.
func (b *bench) rest() []*Step {
	return seq.Keep(append([]*Step{b.widest()}, b.Side(true)...), b.twice)
}

// toEnd tells whether a step goes to the back of the part.
func (s *Sizes) toEnd(st *Step) bool { return geom.Alike(st.ToMm, s.LengthMm()) }

// splits tells whether the widest outside is turned in two settings: it is what the
// jaws hold in both, and long enough for that, or there is next to nothing behind it and nothing before it to
// hold; or it reaches the back, and what is before it is too short to hold it by.
func (b *bench) splits(s *Step) bool {
	left, need := b.leftMm(s.ToMm), b.gripNeedMm()
	if s.Inside || s.Size.AsBought || s.Name != b.widest().Name || left >= need {
		return false
	}
	if b.toEnd(s) {
		outside, _ := b.Sides()
		return len(outside) > 1 && seq.Max(0, outside[:len(outside)-1], (*Step).LengthMm) < min(leastJawMm, need, s.LengthMm()-b.restMm(s))
	}
	return s.LengthMm() >= 2*need && geom.Some(s.FromMm) || left < leastJawMm && !b.heldBefore(s)
}

// restMm is how much of an outside that splits is turned when the part is turned round.
func (b *bench) restMm(s *Step) float64 { return math.Min(b.gripNeedMm(), s.LengthMm()/2) }

// together moves the steps that are to be turned without letting the part go into
// one setting: the one that has more of them, or the later.
func (b *bench) together(out *[2]setting) {
	wanted := func(s *Step) bool { return b.oneSetting(s.Name) }
	var found [2][]*Step
	for i, set := range out {
		found[i] = seq.Keep(set.steps, wanted)
	}
	from, to := 0, 1
	if len(found[0]) > len(found[1]) {
		from, to = 1, 0
	}
	out[from].steps = slices.DeleteFunc(out[from].steps, wanted)
	out[to].steps = append(out[to].steps, found[from]...)
	order := func(s *Step) float64 { // outsides from the largest on, then bores from the smallest on
		if s.Inside {
			return s.RadiusMm()
		}
		return -s.Size.NominalMm
	}
	slices.SortStableFunc(out[to].steps, func(p, q *Step) int { return cmp.Compare(order(p), order(q)) })
}
