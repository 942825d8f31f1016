package part

import (
	"fmt"
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
	edge := canvas.MustParseSVGPath(string(piece.Blank))
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
