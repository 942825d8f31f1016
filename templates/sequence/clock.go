package sequence

import (
	"cmp"
	"math"
	"slices"
	"strconv"
	"strings"

	"centrepop/layout/plan"
	"centrepop/templates/draw"
	"centrepop/templates/figures"

	"github.com/tdewolff/canvas"
)

// round places a clock angle on a dial: x right, y up.
func round(cx, cy, r, deg float64) (x, y float64) {
	s, c := math.Sincos(deg * math.Pi / 180)
	return cx + r*s, cy + r*c
}

// dial draws a clock face about (cx, cy): ring, a mark every 30°, the quarter
// angles and the TOP arrow inside.
func dial(d *draw.Drawing, cx, cy, r float64) {
	d.Add(draw.Ring(cx, cy, r, draw.LineMm))
	for i := range 12 {
		in := r - 1.6
		if i%3 == 0 {
			in = r - 2.8
		}
		x0, y0 := round(cx, cy, in, float64(30*i))
		x1, y1 := round(cx, cy, r, float64(30*i))
		d.Add(draw.Segment(x0, y0, x1, y1, draw.ThinMm))
	}
	if r > 17 {
		d.Add(draw.Segment(cx-1.5, cy, cx+1.5, cy, draw.ThinMm), draw.Segment(cx, cy-1.5, cx, cy+1.5, draw.ThinMm))
	}
	d.Add(draw.TopArrow(cx, cy+r-10.4, 7))
	d.Add(draw.Text{XMm: cx, YMm: cy + r - 14, SizeMm: 3.4, Bold: true, Align: draw.Centre, Content: "TOP"})
	d.Add(draw.Text{XMm: cx + r - 3.6, YMm: cy - 1, SizeMm: draw.SmallMm, Align: draw.Right, Content: "90°"})
	d.Add(draw.Text{XMm: cx, YMm: cy - r + 3.8, SizeMm: draw.SmallMm, Align: draw.Centre, Content: "180°"})
	d.Add(draw.Text{XMm: cx - r + 3.6, YMm: cy - 1, SizeMm: draw.SmallMm, Content: "270°"})
}

// hourMark is everything that lies at one clock angle.
type hourMark struct {
	letter string
	deg    float64
	whats  []string
	key    bool
}

// hourMarks gathers a joint's clock marks by angle, from TOP round.
func hourMarks(marks []plan.ClockMark) []hourMark {
	sorted := slices.Clone(marks)
	slices.SortStableFunc(sorted, func(a, b plan.ClockMark) int { return cmp.Compare(a.Deg, b.Deg) })
	var out []hourMark
	for _, m := range sorted {
		n := len(out)
		if n == 0 || m.Deg-out[n-1].deg > 0.25 {
			out = append(out, hourMark{deg: m.Deg})
			n++
		}
		h := &out[n-1]
		what := m.Part + " " + m.Label
		if !slices.Contains(h.whats, what) {
			h.whats = append(h.whats, what)
		}
		h.key = h.key || m.Key
	}
	for i := range out {
		out[i].letter = string(rune('A' + i%26))
		if i >= 26 {
			out[i].letter += strconv.Itoa(i/26 + 1)
		}
	}
	return out
}

// frontOf is the part whose front the assembly's clock is seen from.
func frontOf(j *plan.JointPlan) string {
	for _, p := range j.Placed {
		if p.FrontMm == 0 && p.TurnDeg == 0 && !p.OtherWay {
			return p.Title
		}
	}
	if len(j.Placed) > 0 {
		return j.Placed[0].Title
	}
	return j.B.Title
}

// clockPanel draws the clock with what lies where as letters, and the list of
// them under it.
func clockPanel(j *plan.JointPlan, r, width float64) (draw.Panel, bool) {
	marks := hourMarks(j.Clock)
	if len(marks) == 0 {
		return draw.Panel{}, false
	}
	p := draw.Panel{Width: width, Height: 2*r + 22}
	cx, cy := width/2, -r-15.5
	for i, text := range []string{"Seen from the front of", frontOf(j)} {
		shown, size := draw.Shrink(text, draw.TextMm, i == 1, width)
		p.Draw.Add(draw.Text{XMm: cx, YMm: -3 - 3.6*float64(i), SizeMm: size, Bold: i == 1, Align: draw.Centre, Content: shown})
	}
	dial(&p.Draw, cx, cy, r)
	wanted := make([]float64, len(marks))
	for i, m := range marks {
		wanted[i] = m.deg
	}
	places := draw.Spread(wanted, 9.5, 0, 350)
	for i, m := range marks {
		x, y := round(cx, cy, r, m.deg)
		if m.key {
			p.Draw.Add(draw.Disc(x, y, 1.5))
		} else {
			p.Draw.Add(draw.Shape{Path: canvas.Circle(1.2).Translate(x, y), Fill: draw.White, Stroke: draw.Black, WidthMm: 0.3})
		}
		lx, ly := round(cx, cy, r+4.2, places[i])
		p.Draw.Add(draw.Text{XMm: lx, YMm: ly - 1.3, SizeMm: 3.6, Bold: true, Align: draw.Centre, Content: m.letter})
	}
	return p, true
}

// clockLines say what lies at each letter of the clock, and what must lie in
// line.
func clockLines(j *plan.JointPlan) []string {
	var out []string
	for _, m := range hourMarks(j.Clock) {
		out = append(out, m.letter+"  "+figures.Degrees(m.deg)+", "+oclock(m.deg)+": "+strings.Join(m.whats, ", "))
	}
	for _, a := range j.InLine {
		out = append(out, "In line: "+a.What+", "+figures.Degrees(a.Deg)+", "+oclock(a.Deg))
	}
	return out
}

// panelRows sets panels side by side, as many in a row as fit.
func panelRows(panels []draw.Panel, width float64) []draw.Piece {
	var pieces []draw.Piece
	for len(panels) > 0 {
		n, used := 1, panels[0].Width
		for n < len(panels) && used+panels[n].Width <= width {
			used += panels[n].Width
			n++
		}
		var row draw.Piece
		draw.PlaceRow(&row, panels[:n], width)
		pieces = append(pieces, row, draw.Space(3))
		panels = panels[n:]
	}
	return pieces
}

// The radius of the dials of tacks, runs and bolts; the smaller one where two
// layers of a weld stand beside its tacks.
const (
	dialPanelMm = 14.8
	dialSmallMm = 13.0
)

// captioned is an empty panel for a dial of radius r with room around it for
// its numbers, its title above and its notes below.
func captioned(title string, r, around float64, notes ...string) (p draw.Panel, cx, cy float64) {
	p.Width = max(50, 2*(r+around)+2)
	if r < dialPanelMm {
		p.Width = 2*(r+around) + 1
	}
	p.Height = 6.5 + 2*(r+around) + 4.6*float64(len(notes)) + 1
	cx, cy = p.Width/2, -6.5-r-around
	shown, size := draw.Shrink(title, 3.8, true, p.Width-2)
	p.Draw.Add(draw.Text{XMm: cx, YMm: -4.2, SizeMm: size, Bold: true, Align: draw.Centre, Content: shown})
	for i, n := range notes {
		shown, size := draw.Shrink(n, 3.2, false, p.Width-2)
		p.Draw.Add(draw.Text{XMm: cx, YMm: -p.Height + 1.4 + 4.6*float64(len(notes)-1-i), SizeMm: size, Align: draw.Centre, Content: shown})
	}
	return p, cx, cy
}

// tackPanel shows the tacks on the clock, numbered in their order.
func tackPanel(j *plan.JointPlan, w *plan.WeldPlan, r float64, length string) draw.Panel {
	p, cx, cy := captioned("Tacks: weld in this order", r, 6.5, "each "+length+" long", "seen from the front of "+j.B.Title)
	dial(&p.Draw, cx, cy, r)
	half := min(9, 360*w.TackLengthMm/(2*math.Pi*w.DiameterMm))
	for i, deg := range w.TacksDeg {
		p.Draw.Add(arc(cx, cy, r, deg-half, deg+half, 1.8))
		x, y := round(cx, cy, r+4.4, deg)
		p.Draw.Add(draw.Text{XMm: x, YMm: y - 1.6, SizeMm: 4.4, Bold: true, Align: draw.Centre, Content: strconv.Itoa(i + 1)})
	}
	return p
}

// arc is a stretch of a circle from one clock angle clockwise to another.
func arc(cx, cy, r, from, to, width float64) draw.Shape {
	p := &canvas.Path{}
	n := max(2, int(math.Abs(to-from)/4)+1)
	for i := range n + 1 {
		x, y := round(cx, cy, r, from+(to-from)*float64(i)/float64(n))
		if i == 0 {
			p.MoveTo(x, y)
		} else {
			p.LineTo(x, y)
		}
	}
	return draw.Shape{Path: p, Stroke: draw.Black, WidthMm: width}
}

// arrowhead is a filled triangle with its point at a clock angle of a circle,
// pointing along it.
func arrowhead(cx, cy, r, deg float64, clockwise bool) draw.Shape {
	back := 3.4 / r * 180 / math.Pi
	if clockwise {
		back = -back
	}
	tx, ty := round(cx, cy, r, deg)
	ax, ay := round(cx, cy, r-1.3, deg+back)
	bx, by := round(cx, cy, r+1.3, deg+back)
	return draw.Shape{Path: draw.Polygon(tx, ty, ax, ay, bx, by), Fill: draw.Black}
}

// runsPanel shows the stretches of one layer as arrows, numbered in their
// order.
func runsPanel(j *plan.JointPlan, w *plan.WeldPlan, r float64, layer, layers int) draw.Panel {
	title := "Runs, in this order"
	if layers > 1 {
		title = "Layer " + strconv.Itoa(layer) + " of " + strconv.Itoa(layers) + ", in order"
	}
	p, cx, cy := captioned(title, r, 6.5, "arrows: from start to stop", "seen from the front of "+j.B.Title)
	dial(&p.Draw, cx, cy, r)
	n := 0
	for _, run := range w.Order {
		if run.Layer != layer {
			continue
		}
		n++
		from, to := run.StartDeg, run.EndDeg
		if run.Clockwise && to <= from {
			to += 360
		}
		if !run.Clockwise && to >= from {
			to -= 360
		}
		way := math.Copysign(1, to-from)
		p.Draw.Add(arc(cx, cy, r+2.2, from+way*2, to-way*9, 0.8))
		p.Draw.Add(arrowhead(cx, cy, r+2.2, to-way*1, way > 0))
		x, y := round(cx, cy, r+2.2, from+way*2)
		p.Draw.Add(draw.Disc(x, y, 0.9))
		x, y = round(cx, cy, r+5.8, (from+to)/2)
		p.Draw.Add(draw.Text{XMm: x, YMm: y - 1.4, SizeMm: 3.8, Bold: true, Align: draw.Centre, Content: strconv.Itoa(n)})
	}
	return p
}

// tightenPanel shows the bolts on the clock, numbered as they are tightened.
func tightenPanel(j *plan.JointPlan, b *plan.BoltPlan) draw.Panel {
	n := len(b.OrderDeg)
	r := max(dialPanelMm, float64(n)*(2*draw.BalloonMm+0.8)/(2*math.Pi))
	p, cx, cy := captioned("Tighten in this order", r, draw.BalloonMm+1, "seen from the front of", frontOf(j))
	p.Draw.Add(draw.Ring(cx, cy, r, draw.ThinMm, draw.ChainDash...), draw.TopArrow(cx, cy+r-14, 7))
	p.Draw.Add(draw.Text{XMm: cx, YMm: cy + r - 18, SizeMm: draw.TextMm, Bold: true, Align: draw.Centre, Content: "TOP"})
	for i, deg := range b.OrderDeg {
		x, y := round(cx, cy, r, deg)
		p.Draw.Add(draw.Balloon(x, y, i+1)...)
	}
	return p
}
