package compare

import (
	"cmp"
	"fmt"
	"math"
	"slices"
	"strconv"
	"strings"
)

// decimal writes a value with at most n decimals.
func decimal(v float64, n int) string {
	s := strconv.FormatFloat(v, 'f', n, 64)
	if strings.Contains(s, ".") {
		s = strings.TrimRight(strings.TrimRight(s, "0"), ".")
	}
	if s == "-0" {
		return "0"
	}
	return s
}

// collect takes the contours to cut out of the sheet and chains open ones.
func (c *comparison) collect(sheet *Sheet) {
	var open []contour
	for _, k := range sheet.contours {
		switch {
		case k.mark:
			c.report.Marks++
		case k.closed:
			k.points = slices.Clone(k.points) // they are moved about
			c.closed = append(c.closed, &piece{contour: k})
		default:
			open = append(open, k)
		}
	}
	open = c.twice(open)
	for _, k := range join(open) {
		p := &piece{contour: k}
		if k.closed {
			p.points = thin(p.points, true, flatMm)
			p.closed = len(p.points) > 2
		}
		if p.closed {
			c.closed = append(c.closed, p)
		} else {
			c.open = append(c.open, p)
		}
	}
	for _, p := range c.closed {
		p.recognise()
		if p.round {
			c.report.Circles++
		}
	}
	c.report.Contours = len(c.closed)
}

// doubledMm is how near two contours must be to lie on each other.
const doubledMm = 0.1

// twice drops open lines that lie on one before them, so that they do not
// spoil the chaining, and reports each.
func (c *comparison) twice(open []contour) []contour {
	if len(open) > 5000 {
		return open // a hatching or a picture, no cutting line
	}
	var kept []contour
	for i := range open {
		a := &open[i]
		first, last := a.points[0], a.points[len(a.points)-1]
		twin := slices.ContainsFunc(kept, func(b contour) bool {
			bf, bl := b.points[0], b.points[len(b.points)-1]
			same := first.distance(bf) < joinMm && last.distance(bl) < joinMm || first.distance(bl) < joinMm && last.distance(bf) < joinMm
			if !same || a.length() < joinMm {
				return false
			}
			d, _ := apart(a, &b, 200)
			return d < doubledMm
		})
		if !twin {
			kept = append(kept, *a)
			continue
		}
		p := piece{contour: *a}
		c.add(p.at(Finding{Code: Doubled, What: "a line lies on another one and would be cut twice"}))
	}
	return kept
}

// doubles reports closed contours on each other and uses up the later one.
func (c *comparison) doubles() {
	order := make([]int, len(c.closed))
	lows := make([]point, len(c.closed))
	highs := make([]point, len(c.closed))
	for i, p := range c.closed {
		order[i] = i
		lows[i], highs[i] = p.box()
	}
	slices.SortStableFunc(order, func(a, b int) int { return cmp.Compare(lows[a].x, lows[b].x) })
	twin := map[int]bool{}
	for at, i := range order {
		for _, j := range order[at+1:] {
			if lows[j].x-lows[i].x > doubledMm {
				break
			}
			if twin[i] || twin[j] || lows[i].distance(lows[j]) > 2*doubledMm || highs[i].distance(highs[j]) > 2*doubledMm {
				continue
			}
			if onEachOther(c.closed[i], c.closed[j]) {
				twin[max(i, j)] = true
			}
		}
	}
	for i, p := range c.closed {
		if !twin[i] {
			continue
		}
		p.used = true
		c.add(p.at(Finding{Code: Doubled, What: fmt.Sprintf("the %s lies on another one and would be cut twice", p.describe())}))
		if p == c.edge { // the other one is as good
			for _, q := range c.closed {
				if q != p && !q.used && onEachOther(p, q) {
					c.edge = q
					break
				}
			}
		}
	}
}

func onEachOther(a, b *piece) bool {
	if a.round && b.round {
		return a.centre.distance(b.centre)+math.Abs(a.radius-b.radius) <= doubledMm
	}
	d, _ := apart(&a.contour, &b.contour, 300)
	return d <= doubledMm
}

// describe names a contour in messages.
func (p *piece) describe() string {
	if p.round {
		return "circle Ø" + decimal(2*p.radius, 2)
	}
	return "contour of " + decimal(p.w, 2) + " × " + decimal(p.h, 2) + " mm"
}

// opens reports contours that do not close.
func (c *comparison) opens() {
	for _, p := range c.open {
		gap := p.points[0].distance(p.points[len(p.points)-1])
		at := p.points[0]
		f := p.at(Finding{Code: Open, ByMm: gap})
		f.XMm, f.YMm = at.x, at.y
		f.What = fmt.Sprintf("the %s does not close: its ends are %s mm apart, at %s, %s", p.describe(), decimal(gap, 3), decimal(at.x, 2), decimal(at.y, 2))
		c.add(f)
	}
}

// outline compares the outside contour.
func (c *comparison) outline() {
	want := &c.want.edge
	ww, wh := want.size()
	if c.edge != nil {
		// A contour far from the part's size is no outline at all.
		w, h := c.edge.w, c.edge.h
		if w < ww/2 || h < wh/2 || w > 2*ww || h > 2*wh {
			c.edge = nil
		}
	}
	if c.edge == nil {
		what := "no closed contour can be the outline of " + decimal(ww, 2) + " × " + decimal(wh, 2) + " mm"
		for _, p := range c.open {
			if p.w > 0.8*ww && p.h > 0.8*wh {
				what += "; the one that could does not close"
				p.used = true
				break
			}
		}
		c.add(Finding{Code: OutlineMissing, What: what})
		return
	}
	c.edge.used = true
	w, h := c.edge.w, c.edge.h
	if math.Abs(w-ww) > c.tol || math.Abs(h-wh) > c.tol {
		by := w - ww
		if math.Abs(h-wh) > math.Abs(by) {
			by = h - wh
		}
		c.add(c.edge.at(Finding{Code: OutlineSize, ByMm: by,
			What: fmt.Sprintf("the outline is %s × %s mm, not %s × %s", decimal(w, 2), decimal(h, 2), decimal(ww, 2), decimal(wh, 2))}))
		return
	}
	if d, where := apart(&c.edge.contour, want, mostSamples); d > c.tol {
		f := c.edge.at(Finding{Code: OutlineShape, ByMm: d})
		f.XMm, f.YMm = where.x, where.y
		f.What = fmt.Sprintf("the outline has the right size but is up to %s mm off, at %s, %s", decimal(d, 2), decimal(where.x, 2), decimal(where.y, 2))
		c.add(f)
	}
}

// reach is how far from its place a hole is still looked for: less than half
// way to its neighbour, so that no two are mistaken for each other.
func (c *comparison) reach(i int) float64 {
	near := 2 * 40.0
	w := c.want.Rounds[i]
	for j, o := range c.want.Rounds {
		if j != i {
			near = math.Min(near, math.Hypot(w.XMm-o.XMm, w.YMm-o.YMm))
		}
	}
	return math.Max(0.45*near, math.Min(3, 0.49*near))
}

// name calls a hole as the templates do.
func (r Round) name() string {
	if r.N == 0 {
		return r.Group
	}
	return fmt.Sprintf("hole %d (%s)", r.N, r.Group)
}

// holes pairs the part's round openings with circles, nearest first.
func (c *comparison) holes() {
	type pair struct {
		i    int
		p    *piece
		k    int
		dist float64
	}
	var pairs []pair
	for i, w := range c.want.Rounds {
		reach := c.reach(i)
		for k, p := range c.closed {
			if p.used || !p.round {
				continue
			}
			d := p.centre.distance(point{w.XMm, w.YMm})
			if ratio := 2 * p.radius / w.DiameterMm; d <= reach && ratio > 0.4 && ratio < 2.5 {
				// A wrong diameter counts a little, for concentric circles.
				pairs = append(pairs, pair{i, p, k, d + 0.2*math.Abs(2*p.radius-w.DiameterMm)})
			}
		}
	}
	slices.SortStableFunc(pairs, func(a, b pair) int {
		return cmp.Or(cmp.Compare(a.dist, b.dist), cmp.Compare(a.i, b.i), cmp.Compare(a.k, b.k))
	})
	got := make([]*piece, len(c.want.Rounds))
	for _, q := range pairs {
		if got[q.i] == nil && !q.p.used {
			got[q.i] = q.p
			q.p.used = true
		}
	}
	// A group is left out as a whole or not at all.
	begun := map[string]bool{}
	for i, w := range c.want.Rounds {
		begun[w.Group] = begun[w.Group] || got[i] != nil
	}
	for i, w := range c.want.Rounds {
		p := got[i]
		if p == nil && w.Later && !begun[w.Group] {
			c.report.LeftOut = append(c.report.LeftOut, w.name())
			continue
		}
		if p == nil {
			c.notRound(w, c.reach(i))
			continue
		}
		fine := true
		place := Finding{Group: w.Group, N: w.N, Line: p.line, Column: p.column, XMm: w.XMm, YMm: w.YMm}
		if d := p.centre.distance(point{w.XMm, w.YMm}); d > c.tol {
			f := place
			f.Code, f.ByMm, fine = HoleMoved, d, false
			f.What = fmt.Sprintf("%s is %s mm from its place: at %s, %s, not %s, %s", w.name(), decimal(d, 2),
				decimal(p.centre.x, 2), decimal(p.centre.y, 2), decimal(w.XMm, 2), decimal(w.YMm, 2))
			c.add(f)
		}
		if d := 2*p.radius - w.DiameterMm; d > c.tol || d < -c.tol && !w.Later {
			f := place
			f.Code, f.ByMm, fine = HoleDiameter, d, false
			f.What = fmt.Sprintf("%s is Ø%s, not Ø%s as cut", w.name(), decimal(2*p.radius, 2), decimal(w.DiameterMm, 2))
			c.add(f)
		}
		if fine {
			c.report.Matched++
		}
	}
}

// notRound reports a hole without a circle: drawn as something else, or not at
// all.
func (c *comparison) notRound(w Round, reach float64) {
	f := Finding{Group: w.Group, N: w.N, XMm: w.XMm, YMm: w.YMm}
	for _, p := range c.closed {
		if p.used || p.round || math.Min(p.w, p.h) < 0.4*w.DiameterMm || math.Max(p.w, p.h) > 1.6*w.DiameterMm {
			continue
		}
		if p.mid.distance(point{w.XMm, w.YMm}) > math.Min(reach, w.DiameterMm) {
			continue
		}
		p.used = true
		f.Code, f.Line, f.Column = HoleShape, p.line, p.column
		f.What = fmt.Sprintf("%s is not round: a %s stands for Ø%s", w.name(), p.describe(), decimal(w.DiameterMm, 2))
		c.add(f)
		return
	}
	f.Code = HoleMissing
	f.What = fmt.Sprintf("%s Ø%s at %s, %s is missing", w.name(), decimal(w.DiameterMm, 2), decimal(w.XMm, 2), decimal(w.YMm, 2))
	c.add(f)
}

// slots pairs the part's slots with contours that are not round.
func (c *comparison) slots() {
	for _, w := range c.want.Slots {
		name := fmt.Sprintf("slot %d (%s)", w.N, w.Group)
		f := Finding{Group: w.Group, N: w.N, XMm: w.XMm, YMm: w.YMm}
		want := w.contour()
		area, _ := want.area()
		var best *piece
		near := math.Max(0.6*w.LengthMm, 3)
		for _, p := range c.closed {
			if p.used {
				continue
			}
			if p.mm2 < 0.4*area || p.mm2 > 2.5*area {
				continue
			}
			if d := p.mid.distance(point{w.XMm, w.YMm}); d < near {
				best, near = p, d
			}
		}
		if best == nil && w.Later {
			c.report.LeftOut = append(c.report.LeftOut, name)
			continue
		}
		if best == nil {
			f.Code = SlotMissing
			f.What = fmt.Sprintf("%s %s × %s at %s, %s is missing", name, decimal(w.WidthMm, 2), decimal(w.LengthMm, 2), decimal(w.XMm, 2), decimal(w.YMm, 2))
			c.add(f)
			continue
		}
		best.used = true
		fine := true
		f.Line, f.Column = best.line, best.column
		if near > c.tol {
			g := f
			g.Code, g.ByMm, fine = SlotMoved, near, false
			g.What = fmt.Sprintf("%s is %s mm from its place", name, decimal(near, 2))
			c.add(g)
		}
		// Its shape, laid on its place.
		mid := best.mid
		laid := contour{closed: true}
		for _, q := range best.points {
			laid.points = append(laid.points, point{q.x - mid.x + w.XMm, q.y - mid.y + w.YMm})
		}
		if d, _ := apart(&laid, &want, mostSamples); d > c.tol {
			g := f
			g.Code, g.ByMm, fine = SlotShape, d, false
			g.What = fmt.Sprintf("%s is not %s × %s turned as drawn: up to %s mm off", name, decimal(w.WidthMm, 2), decimal(w.LengthMm, 2), decimal(d, 2))
			c.add(g)
		}
		if fine {
			c.report.Matched++
		}
	}
}

// extras reports what is left over.
func (c *comparison) extras() {
	for _, p := range c.closed {
		if p.used {
			continue
		}
		mid := p.mid
		if k := slices.IndexFunc(c.want.Blind, func(w Round) bool {
			return mid.distance(point{w.XMm, w.YMm}) < math.Max(1, w.DiameterMm/4)
		}); k >= 0 {
			w := c.want.Blind[k]
			f := p.at(Finding{Code: BlindCut, Group: w.Group, N: w.N})
			f.What = fmt.Sprintf("%s does not go through, and the drawing cuts it: %s", w.name(), p.describe())
			c.add(f)
			continue
		}
		f := p.at(Finding{Code: Extra, What: fmt.Sprintf("the %s at %s, %s is nothing of the part", p.describe(), decimal(mid.x, 2), decimal(mid.y, 2))})
		if p.round {
			f.Code = HoleExtra
			f.ByMm = 2 * p.radius
		}
		c.add(f)
	}
}
