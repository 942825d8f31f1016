// Package sheets draws the cover, the review, and each part's operation sheet
// and inspection record.
package sheets

import (
	"cmp"
	"fmt"
	"math"
	"strconv"

	"centrepop/layout/plan"
	"centrepop/layout/review"
	"centrepop/layout/words"
	"centrepop/parts"
	"centrepop/parts/geom"
	"centrepop/parts/seq"
	"centrepop/templates/draw"
	"centrepop/templates/picture"
)

// Cover draws the cover and its further pages, as roomy as the fewest pages
// allow. own is the number of pages of the cover itself, by which the page
// numbers of the chapters are put off; 0 for what it comes to. The index does not
// change its length with the numbers in it, so trials without them find that.
func Cover(pl *plan.Plan, findings []review.Finding, paper draw.Frame, chapters []draw.Chapter, own int) []*draw.Sheet {
	c := cover{pl, findings, paper, chapters, 0}
	best, tried := draw.Roomiest([]density{1, 0.88, 0.8, 0.7, 0.6}, func(d density) []*draw.Sheet { return d.cover(c, math.MaxInt) }, draw.PagesOf)
	c.own = cmp.Or(own, len(tried))
	return best.cover(c, 0)
}

type cover struct {
	pl       *plan.Plan
	findings []review.Finding
	paper    draw.Frame
	chapters []draw.Chapter
	own      int // its pages
}

// cover sets the cover; a trial of so many pages draws nothing, 0 draws.
func (d density) cover(c cover, trial int) []*draw.Sheet {
	pl, paper := c.pl, c.paper
	f := draw.NewTrial(draw.Pages(draw.Sheet{Frame: paper, Name: "Cover", Scale: "rules 1:1 only"},
		coverHead(pl, paper.Body().Width()), pl.Job, "cover, continued"), trial)
	check, rest := d.scaleCheck(pl.Units, f.Width())
	f.Add(check, draw.Space(1))
	f.Add(d.reviewLine(c.findings, f.Width())...)
	parts, others := indexTables(pl, c.chapters, c.own)
	f.Table(d.listed(parts))
	f.Table(d.listed(others))
	lists := seq.Map([]draw.Table{boughtTable(pl), cutTable(pl), toolTable(pl, c.chapters, c.own), dangerTable(pl), noteTable(pl)}, d.listed)
	d.columns(f, pl, lists, draw.HeightMm(rest...))
	f.Add(rest...)
	return f.Sheets
}

// columns sets lists and, after the first two, the picture of the machine, in two
// columns, of about one height on the last page; one below the other on narrow paper. They begin a page
// where little is left of one and they do not fit on it with what stands under them.
func (d density) columns(f *draw.Flow, pl *plan.Plan, lists []draw.Table, underMm float64) {
	two, width := f.Width() >= twoColumnsMm, f.Width()
	if two {
		width = (width - draw.GutterMm) / 2
	}
	blocks, highs := d.blocks(f, pl.Arrangement, lists, width)
	split := -1 // decided on the page that all the rest fits on
	if two {
		if _, high := lowestSplit(highs); !f.Fits(high+underMm) && f.Left() < f.Tallest()*0.6 {
			f.TurnPage()
		}
		f.Columns(2)
		if _, high := lowestSplit(highs); !f.Fits(high+underMm) && total(highs) < 2*(f.Left()-underMm) { // a list breaks off above what stands under them
			f.Body.Y0 += underMm
		}
	}
	for i, set := range blocks {
		if n, high := lowestSplit(highs[i:]); split < 0 && f.Column() == 0 && f.Fits(high+underMm) {
			split = i + n
		}
		if two && i == split && f.Column() == 0 {
			f.TurnColumn()
		}
		set()
	}
	f.Columns(1)
	f.Body = f.Sheets[len(f.Sheets)-1].Frame.Body()
}

// blocks are lists and, after the first two, the picture of the machine, and how high each is in a width.
func (d density) blocks(f *draw.Flow, a *plan.Arrangement, lists []draw.Table, width float64) (set []func(), highs []float64) {
	for i, t := range lists {
		if i == 2 && a != nil {
			p := machinePicture(a, width, machineMm*float64(d))
			set, highs = append(set, func() { f.Add(p, draw.Space(2)) }), append(highs, p.Height+2)
		}
		if m := measure(t, width); len(t.Rows) > 0 {
			set, highs = append(set, func() { f.Table(m.Table) }), append(highs, m.whole()+gapMm)
		}
	}
	return set, highs
}

func total(highs []float64) float64 { return seq.Sum(highs, func(h float64) float64 { return h }) }

// lowestSplit is how many blocks stand in the left of two columns so that the
// taller is as low as can be, and how high that is.
func lowestSplit(highs []float64) (split int, best float64) {
	var left float64
	sum := total(highs)
	best = sum
	for i, h := range highs {
		if left += h; max(left, sum-left) < best {
			best, split = max(left, sum-left), i+1
		}
	}
	return split, best
}

// machineMm is the most height of the picture of the machine.
const machineMm = 60.0

// machinePicture is the machine cut along its axis, as large as it fits a width
// and a height clear of what is round it, without numbers.
func machinePicture(a *plan.Arrangement, width, height float64) draw.Piece {
	w, h := a.Front.MaxMm.XMm-a.Front.MinMm.XMm, a.Front.MaxMm.YMm-a.Front.MinMm.YMm
	const pad = 2.0
	scale := min((width-2*pad)/w, height/h)
	high := h*scale + 2*pad + draw.TextMm
	return draw.Piece{Height: high, Later: func() (d draw.Drawing) {
		d.Add(draw.Text{XMm: width / 2, YMm: -high + 1, SizeMm: draw.SmallMm, Align: draw.Centre, Content: "cut along its axis, not to scale; sizes: general arrangement"})
		v := &picture.Paper{Low: a.Front.MinMm, X: (width - w*scale) / 2, Y: -h*scale - pad, Scale: scale}
		v.Lines(&d, a.Front.Lines, draw.HairMm)
		for i := range a.Front.Shapes {
			v.Shape(&d, &a.Front.Shapes[i], draw.HairMm)
		}
		return d
	}}
}

func coverHead(pl *plan.Plan, width float64) draw.Piece {
	var p draw.Piece
	p.Draw.Add(draw.Text{YMm: -9, SizeMm: 10, Bold: true, Content: pl.Job, Heading: 1}.Within(width))
	line := words.Join("  ·  ", draw.Labelled("Revision", pl.Revision), draw.Labelled("Date", pl.Date),
		draw.Labelled("Drawn", pl.DrawnBy), draw.Labelled("Checked", pl.CheckedBy), "Sizes in "+parts.By(pl.Units, "millimetres", "inches")+", angles in degrees")
	y := -10.5
	for _, text := range draw.Wrap(line, 3.8, false, width) {
		y -= 3.8 * draw.Leading
		p.Draw.Add(draw.Text{YMm: y, SizeMm: 3.8, Content: text})
	}
	p.Draw.Add(draw.Segment(0, y-2.5, width, y-2.5, draw.ThickMm))
	p.Height = -y + 4
	return p
}

// howToPrint is what to do before trusting a template.
func howToPrint(inches bool) []string {
	within := "within 0.25 mm"
	within += words.When(inches, ", and 4 in to within 0.01 in")
	return []string{
		"In the print window choose “Actual size” or “100 %”. Switch off “Fit to page”, “Shrink oversized pages” and any scaling of the printer itself.",
		"Print this page first. Lay a steel rule on both 100 mm rules here, across and up.",
		"Each must be 100 mm to " + within + ". If not, do not use the templates: change the print settings and print again.",
		"The " + draw.RuleCheck(inches) + " rules stand on every template. Check them on each sheet: printers and damp paper stretch one way more than the other.",
		"Tape it flat, check one distance between two far holes with dividers against the table, then pop the crosses.",
	}
}

// scaleCheck shows the rules and says how to print at true size. Beside the rule
// stand the general caution, how angles are counted and who signs, as far as there
// is room; it returns the rest.
func (d density) scaleCheck(units parts.Units, width float64) (p draw.Piece, rest []draw.Piece) {
	left := parts.By(units, 12.0, 24)
	title := draw.Heading("Print at true size, and check it", width)
	p.Draw.Place(&title.Draw, 0, 0)
	y := -title.Height - 2
	foot := y - parts.By(units, draw.ScaleLengthMm, 4*geom.MmPerInch)
	draw.RuleUp(&p.Draw, 10, foot)
	if units == parts.Inches {
		draw.InchRule(&p.Draw, 21, foot, true)
	}
	beside := width - left - 6
	text := draw.Stack(d.steps(howToPrint(units == parts.Inches), beside)...)
	for _, more := range []func(float64) draw.Piece{d.safety, d.conventions, signatures} {
		if with := draw.Stack(text, draw.Space(2), more(beside)); len(rest) == 0 && with.Height <= draw.ScaleLengthMm+1 {
			text = with
		} else {
			rest = append(rest, more(width), draw.Space(3))
		}
	}
	p.Draw.Place(&text.Draw, left+6, y)
	low := min(foot, y-text.Height) - 3
	draw.RuleAcross(&p.Draw, 6, low)
	low -= 7.5
	if units == parts.Inches {
		low -= 1.5
		draw.InchRule(&p.Draw, 6, low, false)
		low -= 7.5
	}
	p.Height = -low
	return p, rest
}

func (d density) steps(texts []string, width float64) []draw.Piece {
	var pieces []draw.Piece
	for i, t := range texts {
		pieces = append(pieces, draw.Paragraph(strconv.Itoa(i+1)+".", t, d.em(3.5), false, width)...)
		pieces = append(pieces, draw.Space(0.8))
	}
	return pieces
}

// conventions explains clock angles, numbering, faces and coordinates.
func (d density) conventions(width float64) draw.Piece {
	text := []string{
		"Every part has a front and a back face and a TOP. Mark TOP on the metal before the first hole is marked, and mark it again if it is cut away.",
		"Clock angle: 0° at TOP, clockwise, looking at the named face.",
		"Holes are numbered on a circle from TOP clockwise, in rows from the top left, else as listed, alike on template, in tables and record.",
		"A hole that goes through is on the other side when the part is turned over. Templates of a back face are mirrored already: never turn a template over.",
		"x is to the right, y towards TOP, from the part’s middle unless the table says from where.",
	}
	pic := clockPicture()
	p := draw.Stack(dashed(text, d.em(3.1), width-clockWideMm)...)
	p.Draw.Place(&pic, width-clockWideMm, 0)
	p.Height = max(p.Height, clockHighMm)
	return p
}

// The room of the clock picture beside its text.
const (
	clockWideMm = 74.0
	clockHighMm = 34.0
)

func dashed(texts []string, sizeMm, width float64) []draw.Piece {
	var pieces []draw.Piece
	for _, t := range texts {
		pieces = append(pieces, draw.Paragraph("–", t, sizeMm, false, width)...)
		pieces = append(pieces, draw.Space(0.4))
	}
	return pieces
}

func (d density) safety(width float64) draw.Piece {
	text := "The law, the rules of your workshop and the makers’ instructions for machines and materials come before anything in this packet. " +
		"Whoever does the work judges whether it is safe on the machine at hand. Guard and hold the work, wear what the job needs, " +
		"support heavy parts from below, and stop if a size or a step does not make sense."
	body := draw.Stack(draw.Paragraph("", text, d.em(3.2), true, width-18)...)
	p := draw.Piece{Height: max(body.Height+3, 14)}
	p.Draw.Add(draw.Box(draw.R(0, -p.Height, width, 0), draw.ThickMm))
	p.Draw.Add(draw.Warning(2.5, -p.Height/2-5, 11)...)
	p.Draw.Place(&body.Draw, 16, -(p.Height-body.Height)/2)
	return p
}

// signatures are the boxes to sign before metal is cut.
func signatures(width float64) draw.Piece {
	p := draw.Piece{Height: 21}
	p.Draw.Add(draw.Text{YMm: -4, SizeMm: draw.TextMm, Bold: true, Content: "Signed before any metal is cut"})
	boxes := []string{"Drawn", "Checked by a second person", "Scale of templates checked"}
	w := width / float64(len(boxes))
	for i, name := range boxes {
		x := float64(i) * w
		p.Draw.Add(draw.Box(draw.R(x, -20, x+w, -5.6), draw.LineMm))
		p.Draw.Add(draw.Text{XMm: x + 2, YMm: -9.6, SizeMm: draw.TextMm, Bold: true, Content: name}.Within(w - 4))
		from := x + 2
		for j, what := range []string{"Name, signature", "Date"} {
			to := x + w*[2]float64{0.66, 1}[j] - 2
			label := draw.Text{XMm: from, YMm: -17.4, SizeMm: draw.SmallMm, Content: what}.Within(to - from)
			p.Draw.Add(label)
			if line := draw.TextRect(label).X1 + 1; line < to-4 {
				p.Draw.Add(draw.Segment(line, -17.8, to, -17.8, draw.ThinMm))
			}
			from = to + 1.5
		}
	}
	return p
}

// clockMm is the radius of the dials of clockPicture, pitchMm that of their holes.
const (
	clockMm = 9.6
	pitchMm = 6.6
)

// clockPicture explains clock angles and numbering: the same six holes from
// the front and, mirrored, from the back. It is 74 mm wide and 34 mm high,
// its origin the upper left corner.
func clockPicture() draw.Drawing {
	var d draw.Drawing
	for i, face := range []parts.Face{parts.Front, parts.Back} {
		cx, cy := 18.2+36.6*float64(i), -15.6
		d.Add(draw.Ring(cx, cy, clockMm, draw.LineMm), draw.Ring(cx, cy, pitchMm, draw.HairMm, draw.ChainDash...))
		d.Add(draw.Segment(cx-3, cy, cx+3, cy, draw.ThinMm), draw.Segment(cx, cy-3, cx, cy+3, draw.ThinMm))
		for j := range 12 {
			s, c := math.Sincos(float64(j) * math.Pi / 6)
			d.Add(draw.Segment(cx+s*clockMm, cy+c*clockMm, cx+s*(clockMm+1.5), cy+c*(clockMm+1.5), draw.ThinMm))
		}
		for n := range 6 {
			a := parts.At(face, 1.0, -1) * float64(30+60*n) * math.Pi / 180
			s, c := math.Sincos(a)
			d.Add(draw.Ring(cx+pitchMm*s, cy+pitchMm*c, 0.8, draw.ThinMm))
			d.Add(draw.Text{XMm: cx + (pitchMm-3)*s, YMm: cy + (pitchMm-3)*c - 0.95, SizeMm: draw.SmallMm, Align: draw.Centre, Content: strconv.Itoa(n + 1)})
		}
		d.Add(draw.TopArrow(cx, cy+clockMm+1.8, 3.4))
		d.Add(draw.Text{XMm: cx + 2.6, YMm: cy + clockMm + 3, SizeMm: draw.SmallMm, Bold: true, Content: "TOP 0°"})
		d.Add(draw.Text{XMm: cx + clockMm + 2, YMm: cy - 1, SizeMm: draw.SmallMm, Content: "90°"})
		d.Add(draw.Text{XMm: cx, YMm: cy - clockMm - 3.8, SizeMm: draw.SmallMm, Align: draw.Centre, Content: "180°"})
		d.Add(draw.Text{XMm: cx - clockMm - 2, YMm: cy - 1, SizeMm: draw.SmallMm, Align: draw.Right, Content: "270°"})
		d.Add(draw.Text{XMm: cx, YMm: cy - clockMm - 7.6, SizeMm: 3, Bold: true, Align: draw.Centre, Content: fmt.Sprintf("%s face", words.Upper(face))})
	}
	return d
}
