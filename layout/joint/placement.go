package joint

import (
	"math"

	"centrepop/layout/part"
	"centrepop/layout/plan"
	"centrepop/parts"
	"centrepop/parts/geom"
	"centrepop/parts/seq"
)

// placement takes a part's coordinates to those of a frame: z' = z0 + s z,
// clock' = turn + s clock, s being −1 for a part that is turned end for end.
type placement struct {
	z0, turn, s float64
}

func (p placement) then(q placement) placement { // q after p
	return placement{q.z0 + q.s*p.z0, geom.OnClock(q.turn + q.s*p.turn), q.way(p.s)}
}

// way is a direction along the axis of a part, 1 or −1, in the frame; and one in the frame along that of the part.
func (p placement) way(dir float64) float64 { return p.s * dir }

// turned tells whether the part looks the other way than the frame.
func (p placement) turned() bool { return p.s < 0 }

func (p placement) inverse() placement {
	return placement{-p.s * p.z0, geom.OnClock(-p.s * p.turn), p.s}
}

// seenFrom is a placement in the coordinates of what another places in the same frame.
func (p placement) seenFrom(q placement) placement { return p.then(q.inverse()) }

// clock is the frame's clock angle of a part's.
func (p placement) clock(deg float64) float64 { return geom.OnClock(p.turn + p.s*deg) }

// point is the frame's x and y of a point seen from the part's front.
func (p placement) point(q plan.XY) plan.XY {
	sin, cos := geom.SinCosDeg(p.turn)
	x := p.s * q.XMm
	return plan.XY{XMm: geom.Clean(x*cos + q.YMm*sin), YMm: geom.Clean(q.YMm*cos - x*sin)}
}

// span is where a stretch of the part lies in the frame.
func (p placement) span(own geom.Span) geom.Span {
	return geom.Between(p.z0+p.s*own.FromMm, p.z0+p.s*own.ToMm)
}

// placedPart is a part in a group of parts on one axis.
type placedPart struct {
	parts.Instance
	r     *part.Model
	group int
	at    placement
}

// along is where a part lies in the frame.
func (p *placedPart) along() geom.Span { return p.at.span(geom.Span{ToMm: p.r.LengthMm()}) }

// still moves nothing, turnedBy turns clockwise.
var still = placement{s: 1}

func turnedBy(deg float64) placement { return placement{turn: deg, s: 1} }

// apart is the angle between two clock angles, 0 to 180.
func apart(a, b float64) float64 {
	d := geom.OnClock(a - b)
	return math.Min(d, 360-d)
}

func flipped(at []plan.XY) (out []plan.XY) { return seq.Map(at, plan.XY.Mirrored) }

// alignDeg is how far apart two features that line up may lie. Common
// practice, no source: what the eye sees with a protractor.
const alignDeg = 0.5
