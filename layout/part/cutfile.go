package part

import (
	"cmp"
	"fmt"
	"math"
	"strings"

	"github.com/tdewolff/canvas"

	"centrepop/layout/plan"
	"centrepop/parts/geom"
	"centrepop/parts/seq"
)

// CutOptions say how a part is cut. The zero value takes the cutter from the
// part's stock and applies no kerf.
type CutOptions struct {
	// Cut is laser, plasma, waterjet or flame; "" takes the part's stock.cut.
	Cut string
	// KerfMm is the width of metal that the cut removes, 0 (not known) to 10.
	KerfMm float64
	// Compensate moves the contours by half the kerf into the waste, so that
	// the cutter can follow them without its own correction.
	Compensate bool
	// Piece names the blank to cut, of a cone or square-to-round that is made
	// of several; "" for a part of one piece.
	Piece string
}

// MaxKerfMm is the widest kerf that is believed.
const MaxKerfMm = 10

// topLineMm is the length of the scribed TOP line.
const topLineMm = 10.0

// cutter lays out a cutting file.
type cutter struct {
	*Shape
	faults
	opt CutOptions
	out *plan.Profile
}

// newProfile has what is known without the geometry.
func (c *cutter) newProfile() *plan.Profile {
	p := c.Part
	return &plan.Profile{
		Part: p.Name.Value, Title: p.Title.Value, Revision: c.Job.Revision.Value, Quantity: p.Quantity, Copies: 1, Side: "front face up",
		Material: p.Material.Value, StockText: c.StockText(), Cut: cmp.Or(c.opt.Cut, p.Stock.Cut),
		ThicknessMm: c.plateMm(), KerfMm: c.opt.KerfMm, Compensated: c.opt.Compensate,
	}
}

// known looks up what the cutter can do. An unknown one is a plain error if
// it comes of the options, and a fault of the part otherwise.
func (c *cutter) known() error {
	var ok bool
	if c.out.LeastMm, c.out.LeastSource, ok = LeastHoleMm(c.out.Cut, c.out.ThicknessMm); ok {
		return nil
	}
	if c.opt.Cut != "" {
		return fmt.Errorf("cutter %q: laser, plasma, waterjet or flame", c.opt.Cut)
	}
	pos, what := c.Part.Stock.Pos, "the stock does not say how the part is cut"
	if cut := c.Part.Stock.Cut; cut != "" {
		what = "the stock says cut: " + cut + ", which follows no file"
	}
	if pos.Line == 0 {
		pos = c.Part.Pos
	}
	c.fault(pos, what, "cut: laser, plasma, waterjet or flame")
	return c.list
}

func (f *flat) cutFile(c *cutter) (*plan.Profile, error) {
	if err := c.known(); err != nil {
		return nil, err
	}
	a := f.asCut(c.Sizes, c.out.Cut)
	if a.err != nil {
		c.fault(f.Outline.LeaveOnPart.Pos, "the outline cannot be left larger: "+a.err.Error(), "a smaller leave, or wider inside corners")
		return nil, nil
	}
	return c.flatFile(a)
}

// flatFile is the cutting file of what lies flat on the plate.
func (c *cutter) flatFile(a asCut) (*plan.Profile, error) {
	c.out.Marks, c.out.Notes = a.marks, a.notes
	c.webs(a)
	c.contours(a)
	c.topLine(a)
	c.weigh(a)
	return c.out, nil
}

// webs checks that no contour runs into another and finds the least metal
// between two.
func (c *cutter) webs(a asCut) {
	edge := a.outline.Flatten(geom.FlatMm).Split()[0].Coords()
	take := func(o opening, other string, web float64) {
		if !geom.Some(web) {
			c.fault(o.pos, o.name+" runs into "+other+": contours must not meet", "move it, make it smaller, or draw the shape with outline: {path: ...}")
			return
		}
		if c.out.Web == nil || web < c.out.Web.WidthMm {
			c.out.Web = &plan.CutWeb{Between: o.name + " and " + other, WidthMm: geom.Clean(web), Ratio: geom.Clean(web / c.out.ThicknessMm)}
		}
	}
	for i, o := range a.openings {
		if !a.outline.Contains(o.a.XMm, o.a.YMm, canvas.NonZero) {
			c.fault(o.pos, o.name+" lies outside the outline", "move it onto the part")
			continue
		}
		take(o, "the outline", o.toEdge(a.outline, edge, a.round))
		for _, q := range a.openings[:i] {
			// A cheap look first: a thousand holes make half a million pairs.
			gap := geom.Distance(o.a, q.a) - geom.Distance(o.a, o.b) - geom.Distance(q.a, q.b) - o.radius - q.radius
			if c.out.Web != nil && gap > c.out.Web.WidthMm {
				continue
			}
			take(o, q.name, o.web(q))
		}
	}
}

// web is the metal between two openings; none is left where one lies in the other.
func (o opening) web(q opening) float64 {
	near := geom.Apart(o.a, o.b, q.a, q.b) - o.radius - q.radius
	if o.square || q.square {
		mine, r := o.core()
		its, s := q.core()
		for i, a := range mine {
			for k, b := range its {
				near = min(near, geom.Apart(a, mine[(i+1)%len(mine)], b, its[(k+1)%len(its)])-r-s)
			}
		}
	}
	return near
}

// core is what the opening is all round of, and how far.
func (o opening) core() ([]plan.XY, float64) {
	if !o.square {
		return []plan.XY{o.a, o.b}, o.radius
	}
	out := plan.XY{XMm: o.radius - o.corner, YMm: o.radius - o.corner} // a is the upper right end
	low, high := o.b.Minus(out), o.a.Plus(out)
	return []plan.XY{low, {XMm: high.XMm, YMm: low.YMm}, high, {XMm: low.XMm, YMm: high.YMm}}, o.corner
}

// toEdge is the metal between an opening and the outline.
func (o opening) toEdge(outline *canvas.Path, edge []canvas.Point, round bool) float64 {
	if round {
		far := math.Max(math.Hypot(o.a.XMm, o.a.YMm), math.Hypot(o.b.XMm, o.b.YMm))
		return outline.Bounds().W()/2 - far - o.radius
	}
	near := math.Inf(1)
	for k := range edge {
		s, t := edge[k], edge[(k+1)%len(edge)]
		near = math.Min(near, geom.Apart(o.a, o.b, plan.XY{XMm: s.X, YMm: s.Y}, plan.XY{XMm: t.X, YMm: t.Y})-o.radius)
	}
	return near
}

// contours puts the cuts in order, inside before outside, and moves them by
// half the kerf if that is asked.
func (c *cutter) contours(a asCut) {
	out := c.out
	half := 0.0
	if out.Compensated {
		half = out.KerfMm / 2
	}
	add := func(name, shape, text string, p *canvas.Path) {
		one := plan.CutContour{N: len(out.Contours) + 1, Name: name, Shape: shape, SizeText: text, LengthMm: geom.Clean(geom.NewContour(p).LengthMm()), Path: plan.Contour(p.ToSVG())}
		out.Contours = append(out.Contours, one)
		out.LengthMm = geom.Clean(out.LengthMm + one.LengthMm)
	}
	for _, o := range a.openings {
		if o.radius <= half {
			c.fault(o.pos, o.name+" is no wider than the kerf", "a wider opening, or a cutter with a narrower kerf")
			return
		}
		add(o.name, o.shape, o.text, o.path(half))
		if s := out.Smallest; s == nil || 2*o.radius < s.SizeMm {
			out.Smallest = &plan.CutSmallest{Name: o.name, SizeMm: geom.Clean(2 * o.radius), Ratio: geom.Clean(2 * o.radius / out.ThicknessMm)}
		}
	}
	drawn := a.outline
	if half > 0 {
		moved, err := geom.Outward(a.outline, half)
		if err != nil {
			c.fault(c.Part.Pos, "the kerf cannot be allowed for: "+err.Error(), "wider inside corners, or leave the kerf to the cutter")
			return
		}
		drawn = moved
	}
	add("outline", "outline", a.text, drawn)
	out.Pierces = len(out.Contours)
	b := drawn.Bounds()
	out.MinMm, out.MaxMm = plan.XY{XMm: geom.Clean(b.X0), YMm: geom.Clean(b.Y0)}, plan.XY{XMm: geom.Clean(b.X1), YMm: geom.Clean(b.Y1)}
}

// topLine scribes TOP from the upper edge of the part inward, on the metal.
func (c *cutter) topLine(a asCut) {
	out, outline := c.out, a.outline
	top, found := 0.0, false
	edge := outline.Flatten(geom.FlatMm).Split()[0].Coords()
	for i := range edge {
		a, b := edge[i], edge[(i+1)%len(edge)]
		if a.X < 0 == (b.X < 0) {
			continue
		}
		if y := a.Y - a.X*(b.Y-a.Y)/(b.X-a.X); !found || y > top {
			top, found = y, true
		}
	}
	if b := outline.Bounds(); c.form.round() {
		top = b.Y1
	}
	if !found || outline.Bounds().X0 > -1e-9 || outline.Bounds().X1 < 1e-9 {
		out.Notes = append(out.Notes, "No TOP line: the origin is not below the upper edge.")
		return
	}
	// Keep a millimetre off the edge, and off what is cut below.
	from := plan.XY{XMm: 0, YMm: geom.Clean(top - 1)}
	for length := topLineMm; length >= 2; length-- {
		to := plan.XY{XMm: 0, YMm: geom.Clean(from.YMm - length)}
		clear := outline.Contains(0, to.YMm, canvas.NonZero)
		for _, o := range a.openings {
			clear = clear && geom.Apart(from, to, o.a, o.b) > o.radius+1
		}
		if clear {
			out.TopLine = []plan.XY{from, to}
			return
		}
	}
	out.Notes = append(out.Notes, "No TOP line: there is no room for it below the upper edge.")
}

// weigh computes the blank, the area and the masses.
func (c *cutter) weigh(a asCut) {
	out, outline := c.out, a.outline
	b := outline.Bounds()
	out.BlankXMm, out.BlankYMm = geom.Clean(b.X1-b.X0), geom.Clean(b.Y1-b.Y0)
	area := math.Abs(geom.NewContour(outline).AreaMm2())
	for _, o := range a.openings {
		area -= o.areaMm2()
	}
	out.AreaMm2 = geom.Clean(area)
	switch name := c.Part.Material.Value; {
	case name == "":
		out.Notes = append(out.Notes, "No material is given: masses are left out.")
		return
	case c.DensityKgM3() == 0:
		out.Notes = append(out.Notes, "Material "+name+" has no density here: masses are left out.")
		return
	}
	out.NetKg = geom.Clean(area * out.ThicknessMm * 1e-9 * c.DensityKgM3())
	out.GrossKg = geom.Clean(out.BlankXMm * out.BlankYMm * out.ThicknessMm * 1e-9 * c.DensityKgM3())
}

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
		if l.Role != "edge" && l.Role != "cut" && l.Role != "tab" {
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
