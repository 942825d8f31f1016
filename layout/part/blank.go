package part

import (
	"fmt"
	"math"
	"strings"

	"centrepop/layout/plan"
	"centrepop/parts/geom"

	"github.com/tdewolff/canvas"
)

// blankProfile is the cutting file of a flat blank: the development of a cone
// or of a square-to-round, its lap included, with the lines to bend and to
// join by as marks. Developments are those of the outside, which lies up.
func (r *Model) blankProfile(opt CutOptions) (*plan.Profile, error) {
	r.resolve()
	if len(r.Errs) > 0 {
		return nil, nil
	}
	var piece *plan.Development
	var names []string
	for i := range r.Out.Developments {
		d := &r.Out.Developments[i]
		if d.Kind != plan.ConePattern && d.Kind != plan.TransitionPattern {
			continue // paper to mark by
		}
		names = append(names, d.Name)
		if d.Name == opt.Piece {
			piece = d
		}
		if opt.Piece == "" && len(names) == 1 {
			piece = d
		}
	}
	switch {
	case len(names) == 0:
		r.fault(r.Part.Pos, r.Out.Name+" is not flat, and has no flat blank", "profiles are for flat parts, cones and square-to-rounds")
		return nil, nil
	case piece == nil:
		return nil, fmt.Errorf("%s has no piece %q: it has %s", r.Out.Name, opt.Piece, strings.Join(names, ", "))
	case opt.Piece == "" && len(names) > 1:
		return nil, fmt.Errorf("%s is cut in %d pieces: say which of %s", r.Out.Name, len(names), strings.Join(names, ", "))
	}
	out := r.newProfile(opt)
	if f := r.Part.Frustum; f != nil {
		out.ThicknessMm = f.Thickness.Mm
	} else if t := r.Part.Transition; t != nil {
		out.ThicknessMm = t.Thickness.Mm
	}
	out.Title += ", " + piece.Title
	out.Side, out.Copies = "outside up", piece.Copies
	if err := r.cutter(out, opt); err != nil || len(r.Errs) > 0 {
		return nil, err
	}
	edge, err := blankEdge(piece)
	if err != nil {
		return nil, fmt.Errorf("%s, %s: %w", r.Out.Name, piece.Name, err)
	}
	b := edge.Bounds()
	r.contours(out, nil, edge, r.W.Size(geom.Clean(b.X1-b.X0))+" × "+r.W.Size(geom.Clean(b.Y1-b.Y0)))
	if len(r.Errs) > 0 {
		return nil, nil
	}
	for _, l := range piece.Lines {
		if l.Role != "cut" && l.Role != "tab" {
			out.Lines = append(out.Lines, plan.CutLine{Name: l.Name, Role: l.Role, Path: l.Path})
		}
	}
	r.weigh(out, nil, edge)
	out.Notes = append(out.Notes, piece.Notes...)
	return out, nil
}

// blankEdge is the outline of a piece with its lap: the side of the edge that the
// lap stands on gives way to the lap's own three sides.
func blankEdge(d *plan.Development) (*canvas.Path, error) {
	var edge, tab *canvas.Path
	for _, l := range d.Lines {
		if l.Role != "cut" && l.Role != "tab" {
			continue
		}
		p, err := canvas.ParseSVGPath(string(l.Path))
		if err != nil {
			return nil, err
		}
		switch {
		case l.Role == "cut" && edge == nil && p.Closed():
			edge = p
		case l.Role == "tab" && tab == nil:
			tab = p
		default:
			return nil, fmt.Errorf("the line %s makes no blank", l.Name)
		}
	}
	if edge == nil {
		return nil, fmt.Errorf("the blank has no edge")
	}
	if tab == nil {
		return edge, nil
	}
	lap := tab.Coords()
	same := func(a, b canvas.Point) bool { return math.Hypot(a.X-b.X, a.Y-b.Y) < 1e-4 }
	first, last := lap[0], lap[len(lap)-1]
	out, found := &canvas.Path{}, false
	for s := edge.Scanner(); s.Scan(); {
		from, to := s.Start(), s.End()
		switch s.Cmd() {
		case canvas.MoveToCmd:
			out.MoveTo(to.X, to.Y)
		case canvas.ArcToCmd:
			rx, ry, rot, large, sweep := s.Arc()
			out.ArcTo(rx, ry, rot, large, sweep, to.X, to.Y)
		case canvas.QuadToCmd:
			out.QuadTo(s.CP1().X, s.CP1().Y, to.X, to.Y)
		case canvas.CubeToCmd:
			out.CubeTo(s.CP1().X, s.CP1().Y, s.CP2().X, s.CP2().Y, to.X, to.Y)
		default:
			forward := same(from, first) && same(to, last)
			if !found && (forward || same(from, last) && same(to, first)) {
				found = true
				for i := range lap {
					p := lap[i]
					if !forward {
						p = lap[len(lap)-1-i]
					}
					if i > 0 && i < len(lap)-1 {
						out.LineTo(p.X, p.Y)
					}
				}
			}
			out.LineTo(to.X, to.Y)
		}
	}
	out.Close()
	if !found {
		return nil, fmt.Errorf("the lap does not stand on a side of the edge")
	}
	return out, nil
}
