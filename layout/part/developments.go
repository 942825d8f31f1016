package part

import (
	"cmp"
	"math"
	"strconv"
	"strings"

	"github.com/tdewolff/canvas"

	"centrepop/layout/develop"
	"centrepop/layout/plan"
	"centrepop/layout/words"
	"centrepop/parts"
	"centrepop/parts/geom"
	"centrepop/parts/seq"
)

// pattern takes over the lines and labels of a development.
func (s *Sizes) pattern(name string, kind plan.DevelopmentKind, d develop.Development) plan.Development {
	box := d.Box()
	out := plan.Development{Name: name, Kind: kind, Copies: 1, MinMm: at(box.Min), MaxMm: at(box.Max)}
	if d.Blank.Closed {
		out.Blank = contour(d.Blank)
	}
	for _, c := range d.Curves {
		out.Lines = append(out.Lines, plan.PatternLine{Name: c.Name, Role: string(c.Role), Path: contour(c)})
		if lap := c.Role == develop.Tab && out.AreaMm2 > 0; lap || c.Role == develop.Edge {
			c.Closed = true // a lap is, along the edge that it stands on
			out.AreaMm2 += math.Abs(c.AreaMm2())
		}
	}
	for _, l := range d.Labels {
		out.Labels = append(out.Labels, plan.PatternLabel{Text: l.Text, AtMm: at(l.At)})
	}
	out.Rules = append(out.Rules, seq.Map(d.Formulas, func(f develop.Formula) string { return f.Name + ": " + f.Rule })...)
	return out
}

// values writes results in the job's units.
func (s *Sizes) values(list []develop.Value) []plan.PatternValue {
	return seq.Map(list, func(v develop.Value) plan.PatternValue {
		return plan.PatternValue{Name: v.Name, Text: s.inUnit(v.Value, v.Unit)}
	})
}

// tables writes the tables of a development in the job's units.
func (s *Sizes) tables(list []develop.Table) []plan.PatternTable {
	var out []plan.PatternTable
	for _, t := range list {
		p := plan.PatternTable{Title: t.Title, Drawn: t.Drawn, Heads: []string{"No."}}
		p.Heads = append(p.Heads, seq.Map(t.Columns, func(c develop.Column) string { return c.Name })...)
		for _, row := range t.Rows {
			cells := []string{row.Label}
			for i, v := range row.Values {
				cells = append(cells, s.inUnit(v, cmp.Or(row.Unit, t.Columns[i].Unit)))
			}
			p.Rows = append(p.Rows, cells)
		}
		out = append(out, p)
	}
	return out
}

func (s *Sizes) inUnit(v float64, unit string) string {
	switch unit {
	case "mm":
		return s.exact(v)
	case "deg":
		return words.Angle(v)
	case "mm2":
		return parts.By(s.W.Units, words.Trim(v/100, 1)+" cm²", words.Trim(v/words.MmPerInch/words.MmPerInch, 1)+" sq in")
	}
	return words.Trim(v, 3)
}

// exact writes a length of a pattern: to 0.01 mm, or 0.001 in.
func (s *Sizes) exact(mm float64) string { return words.Fixed(mm, s.W.Units) }

func at(p develop.Point) plan.XY { return plan.XY{XMm: geom.Clean(p.XMm), YMm: geom.Clean(p.YMm)} }

// contour writes a curve as SVG path data, y up, to a millionth of a
// millimetre; arcs stay arcs.
func contour(c develop.Curve) plan.Contour {
	var b strings.Builder
	point := func(cmd string, p develop.Point) {
		b.WriteString(cmd + coordinate(p.XMm) + " " + coordinate(p.YMm))
	}
	point("M", c.Start)
	from := c.Start
	for _, s := range c.Segments {
		if s.SweepDeg == 0 {
			point("L", s.To)
			from = s.To
			continue
		}
		// Halves, because a full turn has no single arc in SVG.
		radius := math.Hypot(from.XMm-s.Center.XMm, from.YMm-s.Center.YMm)
		sin, cos := math.Sincos(s.SweepDeg / 2 * math.Pi / 180)
		dx, dy := from.XMm-s.Center.XMm, from.YMm-s.Center.YMm
		middle := develop.Point{XMm: s.Center.XMm + dx*cos - dy*sin, YMm: s.Center.YMm + dx*sin + dy*cos}
		sweep := words.Either(math.Signbit(s.SweepDeg), "0", "1")
		for _, to := range []develop.Point{middle, s.To} {
			point("A"+coordinate(radius)+" "+coordinate(radius)+" 0 0 "+sweep+" ", to)
		}
		from = s.To
	}
	if c.Closed {
		b.WriteString("Z")
	}
	return plan.Contour(b.String())
}

// lineOf draws lines from point to point.
func lineOf(points ...plan.XY) plan.Contour {
	p := &canvas.Path{}
	p.MoveTo(points[0].XMm, points[0].YMm)
	for _, q := range points[1:] {
		p.LineTo(q.XMm, q.YMm)
	}
	return plan.Contour(p.ToSVG())
}

// loopOf draws a loop as it lies once each of its points is moved; mirrored tells that the way it turns is
// the other then.
func loopOf(loop geom.Loop, mirrored bool, moved func(plan.XY) plan.XY) *canvas.Path {
	p, start := &canvas.Path{}, moved(loop[0].Point)
	p.MoveTo(start.XMm, start.YMm)
	for i, v := range loop {
		next := loop[(i+1)%len(loop)].Point
		to := moved(next)
		if v.Bulge == 0 {
			p.LineTo(to.XMm, to.YMm)
			continue
		}
		r := geom.Distance(v.Point, next) / 2 / math.Sin(2*math.Atan(math.Abs(v.Bulge)))
		p.ArcTo(r, r, 0, false, v.Bulge > 0 != mirrored, to.XMm, to.YMm)
	}
	p.Close()
	return p
}

func coordinate(mm float64) string { return words.Trim(mm, 6) }

// pieces takes over the flat pieces of a rolled or folded part and returns
// them, to be added to.
func (d *shaper) pieces(kind plan.DevelopmentKind, title string, list []develop.Development, seamDeg float64) []plan.Development {
	first := len(d.Developments)
	for i, p := range list {
		out := d.pattern(string(kind), kind, p)
		out.Title = title + " development"
		if len(list) > 1 {
			out.Name += "-" + strconv.Itoa(i+1)
			out.Title += ", piece " + strconv.Itoa(i+1) + " of " + strconv.Itoa(len(list))
		}
		if d.Part.Stock.Form != "" {
			out.On = d.StockText()
		}
		out.SeamDeg = seamDeg
		if x, ok := mirrorLine(p); ok {
			out.MirrorMm = &x
		}
		out.Sizes = append(d.values(p.Inputs), d.values(p.Results)...)
		out.Tables = d.tables(p.Tables)
		out.Notes = append(p.Notes, "Edges are those of the metal, at the middle of its thickness. The seam closes at clock "+words.Angle(seamDeg)+".")
		d.Developments = append(d.Developments, out)
	}
	return d.Developments[first:]
}

// blanks are the flat pieces that it is formed from.
func (g *Shape) blanks() []plan.Development {
	return seq.Keep(g.Developments, func(d plan.Development) bool { return d.Kind.Blank() })
}

// developedMm3 is the volume of what is cut from sheet: flat area, laps too, times
// thickness.
func (g *Shape) developedMm3(thicknessMm float64) float64 {
	return seq.Sum(g.blanks(), func(d plan.Development) float64 { return d.AreaMm2 * float64(d.Copies) }) * thicknessMm
}

// sheetSection is the half section of what is formed from sheet, between the
// radii of its outside at both ends. The wall is measured square to the axis.
func sheetSection(frontMm, backMm, lengthMm, thicknessMm float64) *plan.Section {
	wall := thicknessMm * math.Hypot(lengthMm, frontMm-backMm) / lengthMm
	return &plan.Section{
		LengthMm: lengthMm, MaxMm: math.Max(frontMm, backMm),
		Outer: []plan.XY{{XMm: 0, YMm: geom.Clean(frontMm)}, {XMm: lengthMm, YMm: geom.Clean(backMm)}},
		Inner: []plan.XY{{XMm: 0, YMm: geom.Clean(frontMm - wall)}, {XMm: lengthMm, YMm: geom.Clean(backMm - wall)}},
	}
}

// leaning adds to the section of a sheet what it is cut from TOP to 180° where the middle
// of its back end stands so far to TOP of that of its front.
func leaning(s *plan.Section, topMm float64) *plan.Section {
	if topMm == 0 {
		return s
	}
	for _, side := range []float64{1, -1} {
		at := func(q plan.XY) plan.XY {
			return plan.XY{XMm: q.XMm, YMm: geom.Clean(side*q.YMm + topMm*q.XMm/s.LengthMm)}
		}
		s.Whole = append(s.Whole, []plan.XY{at(s.Outer[0]), at(s.Outer[1]), at(s.Inner[1]), at(s.Inner[0])})
	}
	up, low := s.Whole[0], s.Whole[1]
	s.Seen = [][]plan.XY{{up[3], low[3]}, {up[2], low[2]}}
	return s
}

// offset says in the section how far the middle of the back end stands to TOP.
func (d *shaper) offset(topMm float64) {
	if topMm != 0 {
		d.atTop = append(d.atTop, plan.Dimension{Kind: plan.OffsetDim, FromMm: d.LengthMm(), ToMm: d.LengthMm(), RadiusMm: topMm, Text: d.W.Size(math.Abs(topMm))})
	}
}

// offsetFeature numbers how far the middle of an end stands off that of the other, to the
// one side or, if less than 0, to the other.
func (n *Numbered) offsetFeature(end string, mm float64, plus, minus string) {
	if mm == 0 {
		return
	}
	if mm < 0 {
		plus = minus
	}
	n.add(plan.Feature{Kind: plan.OffsetFeature, Name: end + ", its middle to " + plus, Size: n.W.Size(math.Abs(mm)), Limits: n.limitsText(n.shaped(math.Abs(mm))), Balloon: n.Section.Outer[1]})
}

// mirrorMm is how far two points of a pattern may be from mirror images of one
// another.
const mirrorMm = 0.005

// mirrorLine is the upright line that turns the edge and the lines of a pattern into
// themselves, laps and seams left out; ok is false where there is none.
func mirrorLine(d develop.Development) (xMm float64, ok bool) {
	var points []develop.Point
	lo, hi := math.Inf(1), math.Inf(-1)
	for _, c := range d.Curves {
		edge := c.Role == develop.Edge || c.Role == develop.Cut
		if !edge && c.Role != develop.Fold && c.Role != develop.Division {
			continue
		}
		points = append(points, c.Start)
		for _, s := range c.Segments {
			points = append(points, s.To)
			if s.SweepDeg != 0 {
				points = append(points, s.Center)
			}
		}
		if b := c.Box(); edge {
			lo, hi = min(lo, b.Min.XMm), max(hi, b.Max.XMm)
		}
	}
	xMm = geom.Clean((lo + hi) / 2)
	for _, p := range points {
		found := false
		for _, q := range points {
			found = found || math.Abs(p.XMm+q.XMm-2*xMm) < mirrorMm && math.Abs(p.YMm-q.YMm) < mirrorMm
		}
		if !found {
			return 0, false
		}
	}
	return xMm, len(points) > 0
}

// paperMm is the thickness of the printing paper.
func (s *Sizes) paperMm() float64 {
	if p := s.Job.Shop.PaperThick; p.Set() {
		return p.Mm
	}
	return 0.1
}

const (
	wrapTabMm    = 15.0  // overlap to glue: common practice, no source
	wrapBeyondMm = 15.0  // paper beyond the last feature
	wrapLeastMm  = 40.0  // narrower strips do not lie true
	wrapSplitMm  = 250.0 // longer steps get a template from each end
)
