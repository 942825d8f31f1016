package part

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"github.com/tdewolff/canvas"

	"centrepop/layout/plan"
	"centrepop/parts/seq"
)

// blank is the cutting file of a flat blank: the development of a cone
// or of a square-to-round, its lap included, with the lines to bend and to
// join by as marks. Developments are those of the outside, which lies up.
func (c *cutter) blank(thicknessMm float64, openings ...opening) (*plan.Profile, error) {
	piece, err := c.piece()
	if err != nil {
		return nil, err
	}
	out := c.out
	out.ThicknessMm = thicknessMm
	out.Title += ", " + piece.Title
	out.Side, out.Copies = "outside up", piece.Copies
	if err := c.known(); err != nil {
		return nil, err
	}
	edge, err := blankEdge(piece)
	if err != nil {
		return nil, fmt.Errorf("%s, %s: %w", out.Part, piece.Name, err)
	}
	b := edge.Bounds()
	a := asCut{outline: edge, text: c.W.Size(b.X1-b.X0) + " × " + c.W.Size(b.Y1-b.Y0), openings: openings}
	c.webs(a)
	c.contours(a)
	for _, l := range piece.Lines {
		if l.Role != "cut" && l.Role != "tab" {
			out.Lines = append(out.Lines, plan.CutLine{Name: l.Name, Role: l.Role, Path: l.Path})
		}
	}
	c.weigh(a)
	out.Notes = append(out.Notes, piece.Notes...)
	return out, nil
}

// piece is the blank that is asked for; that of a part in one piece needs no
// asking.
func (c *cutter) piece() (*plan.Development, error) {
	var names []string
	blanks := c.blanks()
	for d := range seq.Refs(blanks) {
		if names = append(names, d.Name); d.Name == c.opt.Piece || c.opt.Piece == "" && len(blanks) == 1 {
			return d, nil
		}
	}
	if c.opt.Piece == "" {
		return nil, fmt.Errorf("%s is cut in %d pieces: say which of %s", c.out.Part, len(names), strings.Join(names, ", "))
	}
	return nil, fmt.Errorf("%s has no piece %q: it has %s", c.out.Part, c.opt.Piece, strings.Join(names, ", "))
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
		case l.Role == "cut" && edge != nil && p.Closed(): // an opening
		case l.Role == "cut" && p.Closed():
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
	return withLap(edge, tab.Coords())
}

// withLap puts the lap in the place of the straight side it stands on.
func withLap(edge *canvas.Path, lap []canvas.Point) (*canvas.Path, error) {
	same := func(a, b canvas.Point) bool { return math.Hypot(a.X-b.X, a.Y-b.Y) < 1e-4 }
	first, last := lap[0], lap[len(lap)-1]
	out, found := &canvas.Path{}, false
	for s := edge.Scanner(); s.Scan(); {
		from, to := s.Start(), s.End()
		if straight := s.Cmd() == canvas.LineToCmd || s.Cmd() == canvas.CloseCmd; straight && !found {
			switch {
			case same(from, first) && same(to, last):
				found = true
				lineAlong(out, lap[1:len(lap)-1])
			case same(from, last) && same(to, first):
				found = true
				back := slices.Clone(lap[1 : len(lap)-1])
				slices.Reverse(back)
				lineAlong(out, back)
			}
		}
		draw(out, s)
	}
	out.Close()
	if !found {
		return nil, fmt.Errorf("the lap does not stand on a side of the edge")
	}
	return out, nil
}

func lineAlong(p *canvas.Path, pts []canvas.Point) {
	for _, q := range pts {
		p.LineTo(q.X, q.Y)
	}
}

// draw appends the segment a scanner stands at; a close becomes a line.
func draw(out *canvas.Path, s *canvas.PathScanner) {
	to := s.End()
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
		out.LineTo(to.X, to.Y)
	}
}
