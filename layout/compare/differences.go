package compare

import (
	"cmp"
	"math"
	"slices"

	"centrepop/parts/geom"
	"centrepop/parts/seq"
)

// doubles reports closed contours on each other and uses up the later one.
func (c *comparison) doubles() {
	order := make([]int, len(c.closed))
	for i := range order {
		order[i] = i
	}
	boxes := seq.Map(c.closed, func(p *piece) geom.Box { return p.box() })
	slices.SortStableFunc(order, func(a, b int) int { return cmp.Compare(boxes[a].Min.XMm, boxes[b].Min.XMm) })
	twin := map[int]int{} // of a contour, the one before it that it lies on
	for at, i := range order {
		for _, j := range order[at+1:] {
			if boxes[j].Min.XMm-boxes[i].Min.XMm > doubledMm {
				break
			}
			_, iTwin := twin[i]
			_, jTwin := twin[j]
			if iTwin || jTwin || geom.Distance(boxes[i].Min, boxes[j].Min) > 2*doubledMm {
				continue
			}
			if onEachOther(c.closed[i], c.closed[j]) {
				twin[max(i, j)] = min(i, j)
			}
		}
	}
	for i, p := range c.closed {
		first, is := twin[i]
		if !is {
			continue
		}
		p.used = true
		c.add(p.at(Finding{Code: Doubled}))
		if p == c.edge { // the other one is as good
			c.edge = c.closed[first]
		}
	}
}

func onEachOther(a, b *piece) bool {
	if a.round && b.round {
		return geom.Distance(a.centre, b.centre)+math.Abs(a.radius-b.radius) <= doubledMm
	}
	d, _ := apart(&a.contour, &b.contour, 300)
	return d <= doubledMm
}

func (c *comparison) opens() {
	for _, p := range c.open {
		at := p.points[0]
		f := p.at(Finding{Code: Open, ByMm: geom.Distance(at, p.points[len(p.points)-1])})
		f.XMm, f.YMm = at.XMm, at.YMm
		c.add(f)
	}
}

// A contour is no outline at all where it is this much smaller or larger; an
// open one could have been it from this share of the size up.
const (
	otherSize  = 2.0
	couldShare = 0.8
)

func (c *comparison) outline() {
	want := &c.want.edge
	ww, wh := want.size()
	if e := c.edge; e != nil && (e.w < ww/otherSize || e.h < wh/otherSize || e.w > otherSize*ww || e.h > otherSize*wh) {
		c.edge = nil
	}
	wanted := &Shape{WidthMm: tidy(ww), HeightMm: tidy(wh)}
	if c.edge == nil {
		f := Finding{Code: OutlineMissing, Wanted: wanted}
		if k := slices.IndexFunc(c.open, func(p *piece) bool { return p.w > couldShare*ww && p.h > couldShare*wh }); k >= 0 {
			f.Drawn = c.open[k].shape()
		}
		c.add(f)
		return
	}
	c.edge.used = true
	if w, h := c.edge.w-ww, c.edge.h-wh; math.Abs(w) > c.tol || math.Abs(h) > c.tol {
		by := w
		if math.Abs(h) > math.Abs(by) {
			by = h
		}
		f := c.edge.at(Finding{Code: OutlineSize, ByMm: by, Wanted: wanted})
		c.add(f)
		return
	}
	if d, where := apart(&c.edge.contour, want, mostSamples); d > c.tol {
		f := c.edge.at(Finding{Code: OutlineShape, ByMm: d})
		f.XMm, f.YMm = where.XMm, where.YMm
		c.add(f)
	}
}

// reaches are how far from its place each hole is still looked for: less than
// half way to its neighbour, so that no two are mistaken for each other.
func reaches(places []point) []float64 {
	out := make([]float64, len(places))
	for i, p := range places {
		near := 80.0
		for j, q := range places {
			if j != i {
				near = math.Min(near, geom.Distance(p, q))
			}
		}
		out[i] = math.Max(0.45*near, math.Min(3, 0.49*near))
	}
	return out
}

// pairUp pairs n things with m others, the nearest first; cost tells how near
// two are, and whether at all. It returns for each thing its other, or −1.
func pairUp(n, m int, cost func(i, k int) (float64, bool)) []int {
	type pair struct {
		i, k int
		cost float64
	}
	var pairs []pair
	for i := range n {
		for k := range m {
			if d, ok := cost(i, k); ok {
				pairs = append(pairs, pair{i, k, d})
			}
		}
	}
	slices.SortStableFunc(pairs, func(a, b pair) int { return cmp.Compare(a.cost, b.cost) })
	got := slices.Repeat([]int{-1}, n)
	taken := make([]bool, m)
	for _, q := range pairs {
		if got[q.i] < 0 && !taken[q.k] {
			got[q.i], taken[q.k] = q.k, true
		}
	}
	return got
}

// How unlike in size a circle may be and still stand for a hole; how much a
// wrong diameter counts against a wrong place, for concentric circles.
const (
	leastLike  = 0.4
	mostLike   = 2.5
	sizeCounts = 0.2
)

// holes pairs the part's round openings with circles, nearest first.
func (c *comparison) holes() {
	places := seq.Map(c.want.Rounds, func(w Round) point { return w.Point })
	reach := reaches(places)
	got := pairUp(len(places), len(c.closed), func(i, k int) (float64, bool) {
		p, dia := c.closed[k], c.want.Rounds[i].DiameterMm
		if p.used || !p.round {
			return 0, false
		}
		d := geom.Distance(p.centre, places[i])
		ratio := 2 * p.radius / dia
		return d + sizeCounts*math.Abs(2*p.radius-dia), d <= reach[i] && ratio > leastLike && ratio < mostLike
	})
	for i, w := range c.want.Rounds {
		if got[i] >= 0 {
			c.closed[got[i]].used = true
			c.cut[w.Group] = true // a group is left out as a whole or not at all
		}
	}
	for i, w := range c.want.Rounds {
		switch {
		case got[i] >= 0:
			c.hole(w, c.closed[got[i]])
		case w.Later && !c.cut[w.Group]:
			c.report.LeftOut = append(c.report.LeftOut, c.want.name(w.N, w.Group))
		default:
			c.notRound(w, reach[i])
		}
	}
}

func (c *comparison) hole(w Round, p *piece) {
	c.report.Matched++
	f := p.at(Finding{Group: w.Group, N: w.N, Wanted: &Shape{DiameterMm: tidy(w.DiameterMm)}})
	f.XMm, f.YMm = w.XMm, w.YMm
	moved, by := geom.Distance(p.centre, w.Point), 2*p.radius-w.DiameterMm
	if moved > c.tol {
		f.Code, f.ByMm = HoleMoved, moved
		c.add(f)
	}
	if math.Abs(by) > c.tol {
		f.Code, f.ByMm = HoleDiameter, by
		c.add(f)
	}
	if f.Code != "" {
		c.report.Matched--
	}
}

// A contour that is not round may stand for a hole within these sizes.
const (
	leastStand = 0.4
	mostStand  = 1.6
)

// notRound reports a hole without a circle: drawn as something else, or not at
// all.
func (c *comparison) notRound(w Round, reach float64) {
	f := Finding{Code: HoleMissing, Group: w.Group, N: w.N, XMm: w.XMm, YMm: w.YMm, Wanted: &Shape{DiameterMm: tidy(w.DiameterMm)}}
	for _, p := range c.closed {
		if p.used || p.round || math.Min(p.w, p.h) < leastStand*w.DiameterMm || math.Max(p.w, p.h) > mostStand*w.DiameterMm {
			continue
		}
		if geom.Distance(p.mid, w.Point) <= math.Min(reach, w.DiameterMm) {
			p.used = true
			f.Code, f.Line, f.Column, f.Drawn = HoleShape, p.line, p.column, p.shape()
			f.ByMm = p.offRound(w.Point, w.DiameterMm/2)
			break
		}
	}
	c.add(f)
}

// How unlike in area a contour may be and still stand for a slot, and how far
// from its place: as a share of the length, and at least.
const (
	slotShare = 0.6
	slotMm    = 3.0
)

func (c *comparison) slots() {
	for _, w := range c.want.Slots {
		best, near := c.nearSlot(w)
		switch {
		case best != nil:
			best.used = true
			c.cut[w.Group] = true
			c.slot(w, best, near)
		case w.Later:
			c.report.LeftOut = append(c.report.LeftOut, c.want.name(w.N, w.Group))
		default:
			c.add(w.finding(SlotMissing, 0))
		}
	}
}

// nearSlot finds the contour that stands for a slot, and how far off it is.
func (c *comparison) nearSlot(w Slot) (best *piece, near float64) {
	want := w.contour()
	area, _ := want.area()
	near = math.Max(slotShare*w.LengthMm, slotMm)
	for _, p := range c.closed {
		if p.used || p.mm2 < leastLike*area || p.mm2 > mostLike*area {
			continue
		}
		if d := geom.Distance(p.mid, w.Point); d < near {
			best, near = p, d
		}
	}
	return best, near
}

func (s Slot) finding(code Code, by float64) Finding {
	return Finding{Code: code, Group: s.Group, N: s.N, XMm: s.XMm, YMm: s.YMm, ByMm: by, Wanted: &Shape{WidthMm: tidy(s.WidthMm), HeightMm: tidy(s.LengthMm)}}
}

// slot compares the place of a slot, and its shape laid on its place.
func (c *comparison) slot(w Slot, p *piece, off float64) {
	want := w.contour()
	laid := p.moved(w.Point.Minus(p.mid))
	shape, _ := apart(&laid, &want, mostSamples)
	for _, one := range []struct {
		code Code
		by   float64
	}{{SlotMoved, off}, {SlotShape, shape}} {
		if one.by > c.tol {
			f := w.finding(one.code, one.by)
			f.Line, f.Column, f.Drawn = p.line, p.column, p.shape()
			c.add(f)
		}
	}
	if off <= c.tol && shape <= c.tol {
		c.report.Matched++
	}
}

// extras reports what is left over.
func (c *comparison) extras() {
	for _, p := range c.closed {
		if p.round {
			c.report.Circles++
		}
		if p.used {
			continue
		}
		f := p.at(Finding{Code: Extra})
		k := slices.IndexFunc(c.want.Blind, func(w Round) bool {
			return geom.Distance(p.mid, w.Point) < math.Max(1, w.DiameterMm/4)
		})
		switch {
		case k >= 0:
			f.Code, f.Group, f.N = BlindCut, c.want.Blind[k].Group, c.want.Blind[k].N
		case p.round:
			f.Code, f.ByMm = HoleExtra, 2*p.radius
		}
		c.add(f)
	}
}
