package compare

import (
	"cmp"
	"math"
	"slices"
)

// pose carries the drawing onto the part: mirror in x, then scale, then turn
// anticlockwise, then shift.
type pose struct {
	scale    float64
	turn     float64 // radians
	mirrored bool
	dx, dy   float64
}

func (p pose) apply(q point) point {
	x, y := q.x*p.scale, q.y*p.scale
	if p.mirrored {
		x = -x
	}
	sin, cos := math.Sincos(p.turn)
	return point{float64(x*cos) - float64(y*sin) + p.dx, float64(x*sin) + float64(y*cos) + p.dy}
}

// changes counts how much a pose does besides shifting.
func (p pose) changes() int {
	n := 0
	if p.scale != 1 {
		n++
	}
	if p.mirrored {
		n++
	}
	if p.turn != 0 {
		n++
	}
	return n
}

// factors are the usual wrong scales: what the drawing has to be multiplied
// by, and how that comes about.
var factors = []struct {
	by  float64
	why string
}{
	{mmPerInch, "inches are read as millimetres"},
	{1 / mmPerInch, "millimetres are read as inches"},
	{96 / mmPerInch, "millimetres are read as pixels, 96 to the inch"},
	{mmPerInch / 96, "pixels, 96 to the inch, are read as millimetres"},
	{72 / mmPerInch, "millimetres are read as points, 72 to the inch"},
	{mmPerInch / 72, "points, 72 to the inch, are read as millimetres"},
	{90 / mmPerInch, "millimetres are read as pixels, 90 to the inch"},
	{mmPerInch / 90, "pixels, 90 to the inch, are read as millimetres"},
	{96.0 / 72, "72 and 96 dots to the inch are mixed up"},
	{72.0 / 96, "72 and 96 dots to the inch are mixed up"},
	{96.0 / 90, "90 and 96 dots to the inch are mixed up"},
	{90.0 / 96, "90 and 96 dots to the inch are mixed up"},
	{10, "millimetres are read as centimetres, or the other way"},
	{0.1, "millimetres are read as centimetres, or the other way"},
}

// How near a hole must come to count for a pose.
const (
	poseMm    = 0.5
	poseShare = 0.01 // of the diameter
)

// poser scores poses. Everything in it is thinned out, so that a drawing of
// any size is posed in a bounded time.
type poser struct {
	want  []Round
	slots []Slot
	edge  contour
	mid   point
	area  float64
	got   []*piece // round ones
	all   []*piece // the largest closed ones, for slots
}

// score tells how much of the part a pose finds in the drawing: 2 for every
// hole in place with its diameter, 1 for one in place, 1 for every slot, 4 for
// the outline.
func (s *poser) score(p pose, edge *piece) (score float64, full bool) {
	full = true
	taken := make([]bool, len(s.got))
	at := make([]point, len(s.got))
	for j, g := range s.got {
		at[j] = p.apply(g.centre)
	}
	for _, w := range s.want {
		best := -1
		for j, g := range s.got {
			if taken[j] || g == edge || at[j].distance(point{w.XMm, w.YMm}) > poseMm {
				continue
			}
			if best < 0 || math.Abs(2*g.radius*p.scale-w.DiameterMm) < math.Abs(2*s.got[best].radius*p.scale-w.DiameterMm) {
				best = j
			}
		}
		if best < 0 {
			full = full && w.Later
			continue
		}
		taken[best] = true
		score++
		if math.Abs(2*s.got[best].radius*p.scale-w.DiameterMm) <= math.Max(poseMm, poseShare*w.DiameterMm) {
			score++
		} else {
			full = full && w.Later
		}
	}
	for _, w := range s.slots {
		found := false
		for _, g := range s.all {
			if g == edge || g.round || found {
				continue
			}
			lo, hi := g.box()
			mid := p.apply(point{(lo.x + hi.x) / 2, (lo.y + hi.y) / 2})
			if mid.distance(point{w.XMm, w.YMm}) > poseMm {
				continue
			}
			moved := contour{closed: true}
			for _, q := range sampled(g.points, 60) {
				moved.points = append(moved.points, p.apply(q))
			}
			edge := w.contour()
			d, _ := apart(&moved, &edge, 60)
			found = d < math.Max(1, 0.1*w.WidthMm)
		}
		if found {
			score++
		} else {
			full = full && w.Later
		}
	}
	if edge == nil {
		return score, false
	}
	moved := contour{closed: true}
	for _, q := range sampled(edge.points, 120) {
		moved.points = append(moved.points, p.apply(q))
	}
	mw, mh := moved.size()
	ew, eh := s.edge.size()
	limit := math.Max(poseMm, 0.004*math.Max(ew, eh)) // the sagitta of the sampling
	if math.Abs(mw-ew) > limit || math.Abs(mh-eh) > limit {
		return score, false
	}
	ref := s.edge.points
	for _, q := range moved.points {
		near := math.Inf(1)
		for i := range ref {
			if near = math.Min(near, toSegment(q, ref[i], ref[(i+1)%len(ref)])); near <= poseMm {
				break
			}
		}
		if near > poseMm {
			return score, false
		}
	}
	return score + 4, full
}

// findPose decides which contour is the outline and how the drawing lies, and
// moves every contour onto the part. Scale, mirror and turn become findings.
func (c *comparison) findPose() {
	s := &poser{want: c.want.Rounds, slots: c.want.Slots, edge: contour{points: sampled(c.want.edge.points, 400), closed: true}}
	if len(s.want) > 60 {
		s.want = s.want[:60]
	}
	if len(s.slots) > 20 {
		s.slots = s.slots[:20]
	}
	s.area, s.mid = c.want.edge.area()
	large := slices.Clone(c.closed)
	areas := map[*piece]float64{}
	for _, p := range large {
		areas[p], _ = p.contour.area()
	}
	slices.SortStableFunc(large, func(a, b *piece) int { return cmp.Compare(areas[b], areas[a]) })
	s.all = large[:min(len(large), 40)]
	for _, p := range large {
		if p.round && len(s.got) < 150 {
			s.got = append(s.got, p)
		}
	}
	var edges []*piece
	for _, p := range large[:min(len(large), 4)] {
		edges = append(edges, p)
	}
	if len(edges) == 0 { // nothing closes: the largest open one shows the place
		widest := slices.MaxFunc(c.open, func(a, b *piece) int {
			aw, ah := a.size()
			bw, bh := b.size()
			return cmp.Compare(math.Hypot(aw, ah), math.Hypot(bw, bh))
		})
		edges = []*piece{widest}
	}
	type try struct {
		pose
		edge  *piece
		score float64
		full  bool
	}
	var asIs, best try
	asIs.score, best.score = -1, -1
	consider := func(p pose, edge *piece) {
		if asIs.full {
			return // nothing can be better
		}
		t := try{pose: p, edge: edge}
		e := edge
		if !edge.closed {
			e = nil
		}
		t.score, t.full = s.score(p, e)
		if p.changes() == 0 {
			if t.score > asIs.score || t.full && !asIs.full {
				asIs = t
			}
			return
		}
		better := t.score - best.score - 0.1*float64(t.changes()-best.changes())
		if t.full && !best.full || t.full == best.full && (better > 0.01 || better > -0.01 && math.Abs(t.turn) < math.Abs(best.turn)-1e-6) {
			best = t
		}
	}
	for k, edge := range edges {
		area, mid := edge.contour.area()
		if area == 0 {
			area = 1e-6
		}
		ratio := math.Sqrt(s.area / area)
		scales := []float64{1}
		for _, f := range factors {
			if f.by/ratio > 0.7 && f.by/ratio < 1.4 {
				scales = append(scales, f.by)
			}
		}
		// A free scale is believed only of a contour that can be the outline.
		if k < 2 && math.Abs(ratio-1) > 0.002 && ratio > 0.001 && ratio < 1000 {
			scales = append(scales, ratio)
		}
		for _, scale := range scales {
			for _, mirrored := range []bool{false, true} {
				for _, turn := range s.turns(scale, mirrored, mid, edge) {
					p := pose{scale: scale, turn: turn, mirrored: mirrored}
					q := p.apply(mid)
					p.dx, p.dy = s.mid.x-q.x, s.mid.y-q.y
					consider(p, edge)
					if math.Abs(math.Remainder(turn, math.Pi/2)) < 1e-9 {
						if x, y, ok := s.vote(p); ok {
							p.dx += x
							p.dy += y
							consider(p, edge)
						}
					}
				}
			}
		}
	}
	// A drawing that is right but for a hole or two is not called mirrored:
	// another pose must find much more, or everything.
	chosen := asIs
	if best.score > asIs.score && (best.full && !asIs.full || best.score >= asIs.score+4) {
		chosen = best
	}
	c.settle(chosen.pose, chosen.edge)
}

// turns are the angles worth trying: quarter turns about the middle, and those
// that bring a round hole, or the outermost corner, onto one of the part.
func (s *poser) turns(scale float64, mirrored bool, mid point, edge *piece) []float64 {
	out := []float64{0, math.Pi / 2, math.Pi, -math.Pi / 2}
	add := func(want, got point) {
		if mirrored {
			got.x = -got.x
		}
		a := math.Remainder(math.Atan2(want.y, want.x)-math.Atan2(got.y, got.x), 2*math.Pi)
		for _, t := range out {
			if math.Abs(math.Remainder(t-a, 2*math.Pi)) < 1e-4 {
				return
			}
		}
		if len(out) < 60 {
			out = append(out, a)
		}
	}
	tried := 0
	for _, w := range s.want {
		d := point{w.XMm, w.YMm}.minus(s.mid)
		r := math.Hypot(d.x, d.y)
		if r < 5 {
			continue
		}
		if tried++; tried > 3 {
			break
		}
		for _, g := range s.got {
			q := g.centre.minus(mid)
			if g != edge && math.Abs(scale*math.Hypot(q.x, q.y)-r) <= poseMm && math.Abs(2*scale*g.radius-w.DiameterMm) <= math.Max(poseMm, 0.05*w.DiameterMm) {
				add(d, q)
			}
		}
	}
	far := func(points []point, mid point) (r float64, at []point) {
		for _, p := range points {
			r = math.Max(r, p.distance(mid))
		}
		for _, p := range points {
			if p.distance(mid) > 0.998*r && len(at) < 16 {
				at = append(at, p.minus(mid))
			}
		}
		return r, at
	}
	r, corners := far(s.edge.points, s.mid)
	if _, _, round := s.edge.circle(); !round && r > 0 {
		if got, theirs := far(edge.points, mid); math.Abs(got*scale-r) < 0.02*r {
			for _, q := range theirs {
				add(corners[0], q)
			}
		}
	}
	return out
}

// vote finds the shift that brings the most round holes onto holes of their
// size, for drawings whose outline is not where it should be.
func (s *poser) vote(p pose) (x, y float64, ok bool) {
	var shifts []point
	for _, w := range s.want {
		for _, g := range s.got {
			if math.Abs(2*g.radius*p.scale-w.DiameterMm) > math.Max(0.2, poseShare*w.DiameterMm) {
				continue
			}
			q := p.apply(g.centre)
			if len(shifts) < 600 {
				shifts = append(shifts, point{w.XMm - q.x, w.YMm - q.y})
			}
		}
	}
	most := 2 // fewer prove nothing
	for _, a := range shifts {
		n := 0
		var sum point
		for _, b := range shifts {
			if a.distance(b) < 0.2 {
				n++
				sum.x += b.x
				sum.y += b.y
			}
		}
		if n > most {
			most, ok = n, true
			x, y = sum.x/float64(n), sum.y/float64(n)
		}
	}
	return x, y, ok
}

// settle moves the contours onto the part and reports scale, mirror and turn.
func (c *comparison) settle(p pose, edge *piece) {
	for _, list := range [][]*piece{c.closed, c.open} {
		for _, q := range list {
			for i := range q.points {
				q.points[i] = p.apply(q.points[i])
			}
			if q.round {
				q.centre, q.radius = p.apply(q.centre), q.radius*p.scale
			} else {
				q.recognise() // a circle too small to be sure of before
			}
		}
	}
	if edge.closed {
		c.edge = edge
	}
	c.centreUp()
	for _, list := range [][]*piece{c.closed, c.open} {
		for _, q := range list {
			q.measure()
		}
	}
	r := c.report
	r.Mirrored = p.mirrored
	if p.scale != 1 {
		r.Scale = tidy(1 / p.scale)
		why := ""
		for _, f := range factors {
			if math.Abs(p.scale/f.by-1) < 0.004 {
				why = ": " + f.why
				break
			}
		}
		c.add(edge.at(Finding{Code: Scale, ByMm: 0, What: "the drawing is " + decimal(1/p.scale, 4) + " times its size" + why}))
	}
	if p.mirrored {
		c.add(edge.at(Finding{Code: Mirror, What: "the drawing is a mirror image of the front"}))
	}
	if p.turn != 0 {
		// The pose turns the drawing back; a mirrored one turns the other way.
		r.TurnedDeg = tidy(math.Remainder(p.turn*180/math.Pi, 360))
		if p.mirrored {
			r.TurnedDeg = tidy(-r.TurnedDeg)
		}
		way := "clockwise"
		if r.TurnedDeg < 0 {
			way = "anticlockwise"
		}
		c.add(edge.at(Finding{Code: Turned, What: "the drawing is turned " + decimal(math.Abs(r.TurnedDeg), 2) + "° " + way}))
	}
}

// centreUp takes out the last hundredths of the shift: by the outline where it
// is right, else by the holes.
func (c *comparison) centreUp() {
	var dx, dy []float64
	good := false
	if c.edge != nil {
		_, mid := c.edge.contour.area()
		_, want := c.want.edge.area()
		ew, eh := c.edge.size()
		ww, wh := c.want.edge.size()
		dx, dy = append(dx, want.x-mid.x), append(dy, want.y-mid.y)
		if math.Abs(ew-ww) <= c.tol && math.Abs(eh-wh) <= c.tol {
			laid := contour{closed: true}
			for _, q := range c.edge.points {
				laid.points = append(laid.points, point{q.x - mid.x + want.x, q.y - mid.y + want.y})
			}
			off, _ := apart(&laid, &c.want.edge, 400)
			good = off <= 2*c.tol
		}
	}
	if !good {
		for _, w := range c.want.Rounds {
			for _, g := range c.closed {
				if g.round && g != c.edge && g.centre.distance(point{w.XMm, w.YMm}) <= poseMm {
					dx, dy = append(dx, w.XMm-g.centre.x), append(dy, w.YMm-g.centre.y)
				}
			}
		}
		if len(dx) > 1 && c.edge != nil {
			dx, dy = dx[1:], dy[1:] // the holes know better
		}
	}
	if len(dx) == 0 {
		return
	}
	slices.Sort(dx)
	slices.Sort(dy)
	x, y := dx[len(dx)/2], dy[len(dy)/2]
	if math.Hypot(x, y) > 3*poseMm {
		return
	}
	for _, list := range [][]*piece{c.closed, c.open} {
		for _, q := range list {
			for i := range q.points {
				q.points[i] = point{q.points[i].x + x, q.points[i].y + y}
			}
			q.centre = point{q.centre.x + x, q.centre.y + y}
		}
	}
}
