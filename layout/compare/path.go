package compare

import (
	"errors"

	"centrepop/parts/geom"
)

// path draws path data.
func (p *pen) path(d string) error {
	var start point // of the contour
	down := false
	err := geom.Strokes(d, geom.LargestNumber, func(s geom.Stroke) error {
		switch {
		case p.tooMuch || p.notPlain:
			return p.lift(false)
		case s.Command == 'Z':
			down = false
			return p.lift(true)
		case s.Command == 'M':
			if err := p.lift(false); err != nil {
				return err
			}
			start, down = s.To, false
		}
		if !down { // after Z a contour goes on from where the last began
			p.to(start.XMm, start.YMm)
			down = true
		}
		p.draw(s)
		return nil
	})
	if fault, ok := errors.AsType[*geom.PathFault](err); ok {
		return p.f.faultIn(p.e, "d", fault.At, "path data: %s", fault.What)
	}
	if err != nil {
		return err
	}
	return p.lift(false)
}

func (p *pen) draw(s geom.Stroke) {
	switch s.Command {
	case 'L':
		p.to(s.To.XMm, s.To.YMm)
	case 'C':
		p.cubic(s.Control[0], s.Control[1], s.To)
	case 'Q':
		p.quad(s.Control[0], s.To)
	case 'A':
		p.arc(s)
	}
}
