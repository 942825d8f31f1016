package part

import (
	"math"
	"slices"

	"centrepop/layout/cutting"
)

// barDeep tells whether a bore is deeper than a bar stays stiff from one end.
func (b *bench) barDeep(s *Step) bool {
	_, both := cutting.BarReach(s.Size.NominalMm, b.boreDeepMm(s))
	return both && s.Inside && !s.Size.AsBought && s.Size.Thread == nil && !b.noBar(s)
}

// beyondBar tells whether a bar in the tool post does not reach through the bore of a
// tube or casting, which no drill opens either, for it is there already.
func (b *bench) beyondBar(s *Step) bool {
	form := b.Part.Stock.Form
	if !s.Inside || s.Size.AsBought || s.Size.Thread != nil || form != "tube" && form != "casting" {
		return false
	}
	ok, _ := cutting.BarReach(s.Size.NominalMm, b.boreDeepMm(s))
	return !ok
}

// inLine is how near the outside of a part that lies still is set to the centres: the wall of what is as
// bought is no rounder than it came, and only opposite places are compared (common practice, no source).
func (b *bench) inLine() string {
	if anyTurned(b.Side(false)) {
		return "its outside in line with the centres within " + b.W.Near(truedMm)
	}
	return "its outside, as bought, swept by an indicator on the bar, opposite places alike within " + b.W.Near(boughtTrueMm)
}

// boreDeepMm is how far a bar goes in for a bore: from the nearer face, or from the
// open one of a blind bore.
func (b *bench) boreDeepMm(s *Step) float64 {
	if b.BoreMm() != 0 {
		return math.Min(s.ToMm, b.LengthMm()-s.FromMm)
	}
	return s.ToMm
}

// noBar tells whether a bore in solid stock is not bored because no bar reaches.
func (b *bench) noBar(s *Step) bool {
	if !s.Inside || s.Size.AsBought || b.Part.Stock.Form == "casting" || b.Part.Stock.Form == "tube" {
		return false
	}
	if s.Size.Thread != nil {
		return tapped(s)
	}
	ok, _ := cutting.BarReach(s.Size.NominalMm, b.boreDeepMm(s))
	return !ok
}

// deepLines make a bore with limits, or drill one that is tapped, where no bar reaches and what
// opens the middle leaves it narrower.
func (b *bench) deepLines(s *Step) []string {
	if b.drilledFirst(s) || !tapped(s) && (s.Size.Thread != nil || !s.Size.Fitted() || !b.noBar(s)) {
		return nil
	}
	m := Made{Thread: s.Size.Thread, FinishedMm: s.Size.NominalMm, Size: s.Size}
	way := b.holeWay(m, s.LengthMm(), true) // a narrower bore, or metal, is behind it
	if m.Thread != nil {
		way.Drills = way.Drills[max(0, len(way.Drills)-1):] // the narrower one is its pilot
		return b.drillLines(way, true)
	}
	return append(b.drillLines(way, true), b.finishLines(m, way)...)
}

// drilledFirst tells whether the drills that open the middle make a bore.
func (b *bench) drilledFirst(s *Step) bool {
	return b.noBar(s) && !slices.ContainsFunc(b.Side(true), func(o *Step) bool { return o.RadiusMm() < s.RadiusMm() })
}
