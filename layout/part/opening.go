package part

import (
	"cmp"
	"math"
	"slices"

	"centrepop/layout/cutting"
	"centrepop/layout/words"
	"centrepop/parts"
	"centrepop/parts/geom"
)

// openLines open the bores of solid stock with drills before the bar comes: the
// narrowest as far as any of them goes, then wider ones to their own depth.
func (b *bench) openLines(set setting) []string {
	_, inside := b.Sides()
	if b.Part.Stock.Form == "tube" || b.Part.Kind == parts.Tube || b.cut.boreCut || !anyTurned(inside) {
		return nil
	}
	if b.Part.Stock.Form == "casting" {
		if !set.first() {
			return nil
		}
		return []string{"Open the cored hole with the boring bar; if it is cast solid, drill it first."}
	}
	bores := slices.DeleteFunc(slices.Clone(set.steps), func(s *Step) bool { return !s.Inside })
	narrow := slices.MinFunc(inside, func(p, q *Step) int { return cmp.Compare(p.leastMm(), q.leastMm()) })
	behind := b.fromBehind(narrow)
	o := drilling{bench: b, face: set.face}
	if set.first() {
		o.behindMm = b.backAllowanceMm()
	}
	switch {
	case set.first() && behind:
		o.open(bores)
	case set.first():
		o.open(inside)
	case behind:
		o.open([]*Step{narrow})
	}
	if !set.first() && !behind {
		o.holeMm = b.holeMm
	}
	o.widen(bores)
	b.holeMm = o.holeMm
	return append(o.lines, o.finish...)
}

// fromBehind tells whether the narrowest bore, open at the back face, is made from
// there: from the front its drill would go too deep to stay true, or the bar in it too
// far, and not so from behind.
func (b *bench) fromBehind(narrow *Step) bool {
	if narrow.FromMm < geom.CloseMm || narrow.ToMm < b.LengthMm()-geom.CloseMm || b.oneSetting(narrow.Name) {
		return false
	}
	if !cutting.DrillReaches(narrow.leastMm(), narrow.ToMm) {
		return true
	}
	far, half := cutting.BarReach(narrow.leastMm(), narrow.ToMm)
	near, nearHalf := cutting.BarReach(narrow.leastMm(), narrow.LengthMm())
	return narrow.Size.Thread == nil && near && (!far || half && !nearHalf)
}

// drilling is what opens the bores of one setting.
type drilling struct {
	*bench
	face          parts.Face
	holeMm        float64 // the last drill that is through
	behindMm      float64 // of stock behind the part, which a drill that goes through goes through too
	lines, finish []string
	wide          []*Step // opened to their own size
}

// deepMm is how deep a bore ends, and begins, from the face at hand.
func (o *drilling) deepMm(s *Step) (endMm, startMm float64) {
	a, b := geom.Clean(o.face.FromFront(s.FromMm, o.LengthMm())), geom.Clean(o.face.FromFront(s.ToMm, o.LengthMm()))
	return max(a, b), min(a, b)
}

// open drills the narrowest bore from solid. One so far behind a wider one that its
// drill would wander starts on that one's floor.
func (o *drilling) open(bores []*Step) {
	narrow := slices.MinFunc(bores, func(p, q *Step) int { return cmp.Compare(p.leastMm(), q.leastMm()) })
	deepest, open := 0.0, false
	for _, s := range bores {
		end, _ := o.deepMm(s)
		deepest = math.Max(deepest, end)
	}
	end, start := o.deepMm(narrow)
	open = o.BoreMm() != 0 && (o.face == parts.Back || deepest >= o.LengthMm()-geom.CloseMm)
	lead, at := "Centre-drill.", 0.0
	if start > geom.CloseMm && !cutting.DrillReaches(narrow.leastMm(), end) {
		before := slices.DeleteFunc(slices.Clone(bores), func(s *Step) bool { to, _ := o.deepMm(s); return to > start+geom.CloseMm })
		o.open(before)
		o.widen(before)
		o.wide = before
		lead, at = words.Capital(words.Spaced(narrow.Name))+" from the floor before it: centre-drill there with a long drill.", start
	}
	lead += words.When(!open, " Stop every drill short of "+o.W.Said(deepest)+" from the "+string(o.face)+" face.")
	way, err := cutting.StartBore(narrow.leastMm(), o.largestDrillMm(), o.drills())
	way.DepthMm = geom.Clean(deepest - at)
	if o.drilledFirst(narrow) {
		m := Made{Thread: narrow.Size.Thread, FinishedMm: narrow.Size.NominalMm, Size: narrow.Size}
		oneEnd := at > 0 || deepest < o.LengthMm()-geom.CloseMm // blind, or into a bore that is there
		if way, err = o.holeWay(m, geom.Clean(deepest-at), oneEnd), nil; m.Thread == nil {
			o.finish = append(o.finish, o.finishLines(m, way)...)
		}
	}
	way.DepthMm += words.Either(open, o.behindMm, 0)
	o.lines = append(o.lines, lead)
	if err != nil || len(way.Drills) == 0 {
		return
	}
	o.lines = append(o.lines, o.drillLines(way, true)...)
	o.holeMm = way.Drills[len(way.Drills)-1].Size.DiaMm
}

// widen drills the wider bores to their own depth, where that saves the bar work.
func (o *drilling) widen(bores []*Step) {
	for _, s := range bores {
		end, _ := o.deepMm(s)
		if o.holeMm == 0 || slices.Contains(o.wide, s) || o.drilledFirst(s) || tapped(s) {
			continue
		}
		way, ok := cutting.Widening(s.leastMm(), o.holeMm, o.largestDrillMm(), o.drills())
		if !ok {
			continue
		}
		lines := o.drillLines(way, true)
		if end < o.LengthMm()-geom.CloseMm {
			lines = append([]string{"For " + words.Spaced(s.Name) + " let no drill's point go over " + o.W.Said(end) + " deep."}, lines...)
		}
		o.lines, o.wide = append(o.lines, lines...), append(o.wide, s)
		o.holeMm = way.Drills[len(way.Drills)-1].Size.DiaMm
	}
}
