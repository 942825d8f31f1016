package compare

import (
	"cmp"
	"math"
	"slices"

	"centrepop/parts/geom"
	"centrepop/parts/seq"
)

// pose carries the drawing onto the part: mirror in x, then scale, then turn
// anticlockwise, then shift.
type pose struct {
	scale    float64
	turn     float64 // radians
	mirrored bool
	dx, dy   float64
}

func (p pose) lay(points []point) contour {
	return contour{closed: true, points: seq.Map(points, p.apply)}
}

func (p pose) apply(q point) point {
	x, y := q.XMm*p.scale, q.YMm*p.scale
	if p.mirrored {
		x = -x
	}
	sin, cos := math.Sincos(p.turn)
	return xy(float64(x*cos)-float64(y*sin)+p.dx, float64(x*sin)+float64(y*cos)+p.dy)
}

// changes counts how much a pose does besides shifting; turning by anything but
// quarters counts twice.
func (p pose) changes() int {
	return len(seq.Keep([]bool{p.scale != 1, p.mirrored, p.turn != 0, !p.quarter()}, func(does bool) bool { return does }))
}

// quarter tells a pose that is turned by quarters of a circle, or not at all.
func (p pose) quarter() bool { return math.Abs(math.Remainder(p.turn, math.Pi/2)) < 1e-9 }

// How near a hole or mark must come to count for a pose, and how alike a hole's
// diameter must be.
const (
	poseMm    = 0.5
	poseShare = 0.01 // of the diameter
	// What lies exactly counts so much more than what is just near enough.
	closeCounts = 0.05
)

// Bounds on what is posed, so that a drawing of any size is posed in a bounded
// time.
const (
	mostTargets = 60
	mostSlots   = 20
	mostSources = 150
	mostEdges   = 4
	mostTurns   = 60
	mostShifts  = 600
)

// target is a hole of the part, or with diameter 0 a place to be marked.
type target struct {
	at         point
	diameterMm float64
	later      bool // need not be there
}

// source is a circle of the drawing, or with diameter 0 a place that is marked.
type source struct {
	at         point
	diameterMm float64
	piece      *piece // nil for a mark
}

// is tells whether it is a hole of a piece, no mark.
func (g *source) is(p *piece) bool { return g.piece != nil && g.piece == p }

// fits tells whether a source scaled by a pose may be a target, by its kind and
// its diameter.
func (w target) fits(g source, scale, least, share float64) bool {
	return (w.diameterMm == 0) == (g.diameterMm == 0) && math.Abs(scale*g.diameterMm-w.diameterMm) <= math.Max(least, share*w.diameterMm)
}

type poser struct {
	want  []target
	got   []source
	slots []Slot
	edge  contour
	mid   point
	area  float64
	all   []*piece // the largest closed ones, for slots
	asIs  try
	best  try
}

// try is a pose with the contour that is taken for the outline.
type try struct {
	pose
	edge  *piece
	score float64
	full  bool // all of the part is there, and nothing else
}

// newPoser takes from the part and the drawing what is posed.
func (c *comparison) newPoser() *poser {
	s := &poser{asIs: try{score: -1}, best: try{score: -1}, slots: c.want.Slots[:min(len(c.want.Slots), mostSlots)]}
	s.edge = contour{points: sampled(c.want.edge.points, 400), closed: true}
	s.area, s.mid = c.want.edge.area()
	s.want = seq.Map(c.want.Rounds[:min(len(c.want.Rounds), mostTargets)], func(w Round) target { return target{w.Point, w.DiameterMm, w.Later} })
	for _, m := range c.want.Marks[:min(len(c.want.Marks), mostTargets)] {
		s.want = append(s.want, target{m.Point, 0, true})
	}
	s.all = slices.Clone(c.closed)
	for _, p := range s.all {
		p.mm2, _ = p.contour.area()
	}
	slices.SortStableFunc(s.all, func(a, b *piece) int { return cmp.Compare(b.mm2, a.mm2) })
	for _, p := range s.all {
		if p.round && len(s.got) < mostSources {
			s.got = append(s.got, source{p.centre, 2 * p.radius, p})
		}
	}
	s.got = append(s.got, seq.Map(c.spots[:min(len(c.spots), mostSources)], func(m *spot) source { return source{at: m.at} })...)
	s.all = s.all[:min(len(s.all), 40)]
	return s
}

// score tells how much of the part a pose finds in the drawing: 2 for every
// hole in place with its diameter, 1 for one in place, 1 for every mark and
// slot, 4 for the outline.
func (s *poser) score(p pose, edge *piece) (score float64, full bool) {
	score, full = s.scoreHoles(p, edge)
	for _, w := range s.slots {
		if s.findsSlot(p, w, edge) {
			score++
		} else {
			full = full && w.Later
		}
	}
	if edge == nil || !s.findsEdge(p, edge) {
		return score, false
	}
	return score + 4, full
}

func (s *poser) scoreHoles(p pose, edge *piece) (score float64, full bool) {
	full = true
	taken := make([]bool, len(s.got))
	at := seq.Map(s.got, func(g source) point { return p.apply(g.at) })
	for _, w := range s.want {
		best, off := -1, math.Inf(1) // the free one there whose diameter is nearest
		for j, g := range s.got {
			there := !taken[j] && !g.is(edge) && (g.diameterMm == 0) == (w.diameterMm == 0) && geom.Distance(at[j], w.at) <= poseMm
			if d := math.Abs(g.diameterMm*p.scale - w.diameterMm); there && d < off {
				best, off = j, d
			}
		}
		if best < 0 {
			full = full && w.later
			continue
		}
		taken[best] = true
		score += 1 + closeCounts*(1-geom.Distance(at[best], w.at)/poseMm)
		switch {
		case w.diameterMm == 0:
		case off <= math.Max(poseMm, poseShare*w.diameterMm):
			score++
		default:
			full = false
		}
	}
	for j, g := range s.got {
		full = full && (taken[j] || g.is(edge))
	}
	return score, full
}

func (s *poser) findsSlot(p pose, w Slot, edge *piece) bool {
	want := w.contour()
	for _, g := range s.all {
		if g == edge || g.round {
			continue
		}
		if geom.Distance(p.apply(g.box().Middle()), w.Point) > poseMm {
			continue
		}
		laid := p.lay(sampled(g.points, 60))
		if d, _ := apart(&laid, &want, 60); d < math.Max(1, 0.1*w.WidthMm) {
			return true
		}
	}
	return false
}

func (s *poser) findsEdge(p pose, edge *piece) bool {
	laid := p.lay(sampled(edge.points, 120))
	mw, mh := laid.size()
	ew, eh := s.edge.size()
	limit := math.Max(poseMm, 0.004*math.Max(ew, eh)) // the sagitta of the sampling
	return math.Abs(mw-ew) <= limit && math.Abs(mh-eh) <= limit && !slices.ContainsFunc(laid.points, func(q point) bool { return s.edge.off(q, poseMm) > poseMm })
}

// consider keeps a pose if it is better than those before it.
func (s *poser) consider(p pose, edge *piece) {
	if s.asIs.full {
		return // nothing can be better
	}
	t := try{pose: p, edge: edge}
	closed := edge
	if !edge.closed {
		closed = nil
	}
	t.score, t.full = s.score(p, closed)
	if p.changes() == 0 {
		if t.score > s.asIs.score || t.full {
			s.asIs = t
		}
		return
	}
	better := t.score - s.best.score - 0.1*float64(t.changes()-s.best.changes())
	if t.full && !s.best.full || t.full == s.best.full && (better > 0.01 || better > -0.01 && math.Abs(t.turn) < math.Abs(s.best.turn)-1e-6) {
		s.best = t
	}
}

// chosen is the best pose. A drawing that is right but for a hole or two is not
// called mirrored: another pose must find much more, or everything.
func (s *poser) chosen() try {
	if s.best.score > s.asIs.score && (s.best.full && !s.asIs.full || s.best.score >= s.asIs.score+4) {
		return s.best
	}
	return s.asIs
}

// findPose decides which contour is the outline and how the drawing lies, and
// moves every contour onto the part. Scale, mirror and turn become findings.
func (c *comparison) findPose() {
	s := c.newPoser()
	edges := s.all[:min(len(s.all), mostEdges)]
	if len(edges) == 0 { // nothing closes: the largest open one shows the place
		edges = []*piece{slices.MaxFunc(c.open, func(a, b *piece) int {
			aw, ah := a.size()
			bw, bh := b.size()
			return cmp.Compare(math.Hypot(aw, ah), math.Hypot(bw, bh))
		})}
	}
	for k, edge := range edges {
		s.try(edge, k < 2)
	}
	t := s.chosen()
	c.settle(t.pose, t.edge)
}

// try considers every likely pose with a contour as the outline. A free scale
// is believed only of one that can be it.
func (s *poser) try(edge *piece, free bool) {
	area, mid := edge.contour.area()
	ratio := math.Sqrt(s.area / math.Max(area, 1e-6))
	scales := []float64{1}
	for _, f := range factors {
		if f.by/ratio > 0.7 && f.by/ratio < 1.4 {
			scales = append(scales, f.by)
		}
	}
	if free && math.Abs(ratio-1) > 0.002 && ratio > 0.001 && ratio < 1000 {
		scales = append(scales, ratio)
	}
	for _, scale := range scales {
		for _, mirrored := range []bool{false, true} {
			for _, turn := range s.turns(scale, mirrored, mid, edge) {
				p := pose{scale: scale, turn: turn, mirrored: mirrored}
				q := p.apply(mid)
				p.dx, p.dy = s.mid.XMm-q.XMm, s.mid.YMm-q.YMm
				s.consider(p, edge)
				if !p.quarter() {
					continue
				}
				if by, ok := s.vote(p); ok {
					p.dx += by.XMm
					p.dy += by.YMm
					s.consider(p, edge)
				}
			}
		}
	}
}

// A turn is measured by so many holes or marks, at least so far from the middle.
const (
	mostArms   = 3
	leastArmMm = 5.0
)

// turns are the angles worth trying: quarter turns about the middle, and those
// that bring a hole or mark, or the outermost corner, onto one of the part.
func (s *poser) turns(scale float64, mirrored bool, mid point, edge *piece) []float64 {
	out := []float64{0, math.Pi / 2, math.Pi, -math.Pi / 2}
	add := func(want, got point) {
		if mirrored {
			got.XMm = -got.XMm
		}
		a := math.Remainder(math.Atan2(want.YMm, want.XMm)-math.Atan2(got.YMm, got.XMm), 2*math.Pi)
		same := func(t float64) bool { return math.Abs(math.Remainder(t-a, 2*math.Pi)) < 1e-4 }
		if len(out) < mostTurns && !slices.ContainsFunc(out, same) {
			out = append(out, a)
		}
	}
	found := 0
	for _, w := range s.want {
		d, before := w.at.Minus(s.mid), len(out)
		r := d.LengthMm()
		if r < leastArmMm || found >= mostArms {
			continue
		}
		for _, g := range s.got {
			q := g.at.Minus(mid)
			if g.piece != edge && math.Abs(scale*q.LengthMm()-r) <= poseMm && w.fits(g, scale, poseMm, 0.05) {
				add(d, q)
			}
		}
		found += min(1, len(out)-before)
	}
	r, corners := farthest(s.edge.points, s.mid)
	if _, _, round, _ := s.edge.circle(); !round && r > 0 {
		if got, theirs := farthest(edge.points, mid); math.Abs(got*scale-r) < 0.02*r {
			for _, q := range theirs {
				add(corners[0], q)
			}
		}
	}
	return out
}

// farthest are the points furthest from the middle, seen from it.
func farthest(points []point, mid point) (r float64, at []point) {
	r = seq.Max(0, points, func(p point) float64 { return geom.Distance(p, mid) })
	for _, p := range points {
		if geom.Distance(p, mid) > 0.998*r && len(at) < 16 {
			at = append(at, p.Minus(mid))
		}
	}
	return r, at
}

// vote finds the shift that brings the most holes and marks onto those of their
// kind and size, for drawings whose outline is not where it should be.
func (s *poser) vote(p pose) (by point, ok bool) {
	var shifts []point
	for _, w := range s.want {
		for _, g := range s.got {
			if len(shifts) < mostShifts && w.fits(g, p.scale, 0.2, poseShare) {
				shifts = append(shifts, w.at.Minus(p.apply(g.at)))
			}
		}
	}
	most := 2 // fewer prove nothing
	for _, a := range shifts {
		n := 0
		var sum point
		for _, b := range shifts {
			if geom.Distance(a, b) < 0.2 {
				n++
				sum.XMm += b.XMm
				sum.YMm += b.YMm
			}
		}
		if n > most {
			most, ok = n, true
			by = xy(sum.XMm/float64(n), sum.YMm/float64(n))
		}
	}
	return by, ok
}

// settle moves the contours onto the part and reports scale, mirror and turn.
func (c *comparison) settle(p pose, edge *piece) {
	for _, q := range c.pieces() {
		q.points = p.lay(q.points).points
		if q.closed {
			q.recognise()
		}
	}
	for _, m := range c.spots {
		m.at, m.size = p.apply(m.at), m.size*p.scale
	}
	if edge.closed {
		c.edge = edge
	}
	c.centreUp()
	for _, q := range c.pieces() {
		q.measure()
	}
	r := c.report
	r.Mirrored = p.mirrored
	if p.scale != 1 {
		r.Scale = tidy(1 / p.scale)
		c.add(edge.at(Finding{Code: Scale}))
	}
	if p.mirrored {
		c.add(edge.at(Finding{Code: Mirror}))
	}
	if p.turn != 0 {
		// The pose turns the drawing back; a mirrored one turns the other way.
		r.TurnedDeg = tidy(math.Remainder(p.turn*180/math.Pi, 360))
		if p.mirrored {
			r.TurnedDeg = tidy(-r.TurnedDeg)
		}
		c.add(edge.at(Finding{Code: Turned}))
	}
}

// centreUp takes out the last hundredths of the shift: by the outline where it
// is right, else by the holes.
func (c *comparison) centreUp() {
	var by []point
	if c.edge != nil {
		step, good := c.edgeShift()
		by = []point{step}
		if !good {
			if holes := c.holeShifts(); len(holes) > 0 {
				by = holes // they know better
			}
		}
	} else {
		by = c.holeShifts()
	}
	if len(by) == 0 {
		return
	}
	step := xy(median(by, func(p point) float64 { return p.XMm }), median(by, func(p point) float64 { return p.YMm }))
	if math.Hypot(step.XMm, step.YMm) > 3*poseMm {
		return
	}
	for _, q := range c.pieces() {
		q.contour = q.moved(step)
		q.centre = q.centre.Plus(step)
	}
	for _, m := range c.spots {
		m.at = m.at.Plus(step)
	}
}

// edgeShift is the shift that brings the outline's middle onto the part's, and
// whether the outline then lies on it.
func (c *comparison) edgeShift() (step point, good bool) {
	_, mid := c.edge.contour.area()
	_, want := c.want.edge.area()
	step = want.Minus(mid)
	ew, eh := c.edge.size()
	ww, wh := c.want.edge.size()
	if math.Abs(ew-ww) > c.tol || math.Abs(eh-wh) > c.tol {
		return step, false
	}
	laid := c.edge.moved(step)
	off, _ := apart(&laid, &c.want.edge, 400)
	return step, off <= 2*c.tol
}

// holeShifts are the shifts of the circles that are near a hole.
func (c *comparison) holeShifts() (by []point) {
	for _, w := range c.want.Rounds {
		for _, g := range c.closed {
			if d := (w.Point).Minus(g.centre); g.round && g != c.edge && math.Hypot(d.XMm, d.YMm) <= poseMm {
				by = append(by, d)
			}
		}
	}
	return by
}

func median(of []point, by func(point) float64) float64 {
	v := seq.Map(of, by)
	slices.Sort(v)
	return v[len(v)/2]
}
