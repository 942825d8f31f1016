package geom

import (
	"errors"
	"fmt"
	"math"
	"slices"

	"github.com/tdewolff/canvas"
)

// maxPathSegments is the most commands in one outline path.
const maxPathSegments = 2000

// CheckContour says what keeps a closed path from being the outline of a part,
// or "": a place over 10 m from the origin, an area under 1 mm², sides that
// cross.
func CheckContour(p *canvas.Path) (wrong string) {
	b := p.Bounds()
	if slices.ContainsFunc([]float64{b.X0, b.Y0, b.X1, b.Y1}, func(v float64) bool { return !(math.Abs(v) <= LargestMm) }) {
		return fmt.Sprintf("it runs more than %g mm from the origin", LargestMm)
	}
	switch _, _, at, crosses, ok := Crossing(corners(p)); {
	case !ok:
		return "it is too intricate to check for crossings"
	case crosses:
		return fmt.Sprintf("it crosses itself near x %g, y %g mm", math.Round(at.XMm*1000)/1000+0, math.Round(at.YMm*1000)/1000+0)
	case math.Abs(NewContour(p).AreaMm2()) < 1:
		return "the contour has no area"
	}
	return ""
}

// ParsePath reads SVG path data of one closed contour in millimetres, y up. It
// returns what is wrong, or "": data that do not start with M or end with Z, a
// second contour, more than 2000 commands, a number over 10 000.
func ParsePath(text string) (path *canvas.Path, wrong string) {
	path = &canvas.Path{}
	count, last := 0, Stroke{}
	err := Strokes(text, LargestMm, func(s Stroke) error {
		count++
		switch to := s.To; {
		case count > maxPathSegments:
			return fmt.Errorf("it has more than %d segments", maxPathSegments)
		case last.Command == 'Z':
			return errors.New("it goes on after Z; only one contour can be the outline")
		case count > 1 && s.Command == 'M':
			return errors.New("it has a second M; only one contour can be the outline")
		case math.Abs(to.XMm) > LargestMm || math.Abs(to.YMm) > LargestMm:
			return fmt.Errorf("it runs more than %g mm from the origin", LargestMm)
		}
		last = s
		s.draw(path)
		return nil
	})
	if fault, ok := errors.AsType[*PathFault](err); ok {
		return nil, fmt.Sprintf("%s at %q", fault.What, short(text[fault.At:]))
	}
	switch {
	case err != nil:
		return nil, err.Error()
	case last.Command != 'Z':
		return nil, "it is not closed with Z"
	}
	return path, ""
}

// short is a piece of path data for a message.
func short(s string) string {
	const most = 40
	if r := []rune(s); len(r) > most {
		return string(r[:most]) + "…"
	}
	return s
}

// draw goes on with a path.
func (s Stroke) draw(p *canvas.Path) {
	a, b := s.Control[0], s.Control[1]
	switch s.Command {
	case 'M':
		p.MoveTo(s.To.XMm, s.To.YMm)
	case 'L':
		p.LineTo(s.To.XMm, s.To.YMm)
	case 'C':
		p.CubeTo(a.XMm, a.YMm, b.XMm, b.YMm, s.To.XMm, s.To.YMm)
	case 'Q':
		p.QuadTo(a.XMm, a.YMm, s.To.XMm, s.To.YMm)
	case 'A':
		p.ArcTo(s.Radii.XMm, s.Radii.YMm, s.TurnDeg, s.Large, s.Sweep, s.To.XMm, s.To.YMm)
	case 'Z':
		p.Close()
	}
}
