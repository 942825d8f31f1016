package sequence

import (
	"cmp"
	"math"
	"slices"
	"strconv"
	"strings"

	"centrepop/layout/plan"
	"centrepop/layout/words"
	"centrepop/parts/geom"
	"centrepop/parts/seq"
	"centrepop/templates/draw"

	"github.com/tdewolff/canvas"
)

// round places a clock angle on a dial: x right, y up.
func round(cx, cy, r, deg float64) (x, y float64) {
	s, c := math.Sincos(deg * math.Pi / 180)
	return cx + r*s, cy + r*c
}

// dial is a clock face about a centre, and what lies at its 12 o'clock: upDeg of the clock
// that it shows.
type dial struct {
	cx, cy, r float64
	up        string
	upDeg     float64
}

// draw draws the ring, a mark every 30°, the arrow up in the middle, and where the dial
// is not small what lies there and the quarter
// angles where nothing else stands.
func (f dial) draw(d *draw.Drawing, taken []float64) {
	cx, cy, r := f.cx, f.cy, f.r
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
	if r <= smallDialMm { // the letters need the room
		d.Add(draw.TopArrow(cx, cy-2.4, 4.8))
		return
	}
	d.Add(draw.TopArrow(cx, cy, 6), draw.Text{XMm: cx, YMm: cy - 3.8, SizeMm: 3.2, Bold: true, Align: draw.Centre, Content: f.up})
	for _, deg := range []float64{90, 180, 270} {
		free := !slices.ContainsFunc(taken, func(t float64) bool { return math.Abs(t-deg) < 24 })
		if x, y := round(cx, cy, r-6.2, deg-f.upDeg); free && math.Mod(deg-f.upDeg, 360) != 0 {
			d.Add(draw.Text{XMm: x, YMm: y - 1, SizeMm: draw.SmallMm, Align: draw.Centre, Content: words.Angle(deg)})
		}
	}
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
		h.whats = seq.Add(h.whats, what)
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

// frontOf is the part whose front the assembly's clock is seen from: one of the joint where its clock is
// the assembly's, else the first whose is.
func frontOf(j *plan.JointPlan) string {
	upright := seq.Keep(j.Placed, func(p plan.Placed) bool { return p.TurnDeg == 0 && !p.OtherWay })
	for _, title := range []string{j.B.Title, j.A.Title} {
		if slices.ContainsFunc(upright, func(p plan.Placed) bool { return p.Title == title }) {
			return title
		}
	}
	if len(upright) > 0 {
		return upright[0].Title
	}
	if len(j.Placed) > 0 {
		return j.Placed[0].Title
	}
	return j.B.Title
}

// clockPanel draws one clock with all that a joint has on it: what lies where as
// letters inside, and outside the order of its bolts, or tacks and runs of weld.
func clockPanel(j *plan.JointPlan, r float64) (draw.Panel, bool) {
	marks := clockMarks(j)
	title, seen, outside, order, inRows := "Clock", frontOf(j), 2.0, func(*draw.Drawing, float64, float64) {}, false
	from, short, up := "seen from the front of", "front of", "TOP"
	if s := j.Beside; s != nil && s.On != "" {
		from, short, seen, up = "seen on the", "seen on the", s.On, s.Up
	}
	if j.UpDeg != 0 {
		up = "machine’s TOP"
		from = short // both do not fit on a line
	}
	switch w, b := j.Weld, j.Bolt; {
	case w != nil && len(w.TacksDeg) > 0 && w.DiameterMm > 0:
		title, seen, outside = "Tacks 1 to "+strconv.Itoa(len(w.TacksDeg)), w.ClockOf, 7-nearerMm(r)
		if n := layers(w); n > 0 {
			title += ", then runs a, b …"
			outside += runRoomMm * float64(n)
		}
		order = func(d *draw.Drawing, cx, cy float64) { weldOrder(d, w, cx, cy, r) }
	case b != nil && len(b.OrderDeg) > 1:
		title, outside = "Tighten in this order", 2*draw.BalloonMm+0.5
		at, rows := boltSpots(b, r+draw.BalloonMm, len(marks) == 0)
		inRows = rows
		order = func(d *draw.Drawing, cx, cy float64) {
			for i, q := range at {
				x, y := round(cx, cy, q.LengthMm(), geom.ClockDeg(q)-j.UpDeg)
				d.Add(draw.Balloon(x, y, i+1)...)
			}
		}
	case len(marks) == 0:
		return draw.Panel{}, false
	}
	least, em := 50.0, 3.4
	if r <= smallDialMm {
		least, em = 45, 2.8
	}
	if r <= smallDialMm || inRows {
		from = up + " up, " + from
	}
	p := draw.Panel{Width: max(least, 2*(r+outside)+2), Height: 2*(r+outside) + 4.4*em}
	if inRows {
		p.Width = max(p.Width, 2*(r+outside+arrowRoomMm)+2)
	}
	cx, cy := p.Width/2, -1.8*em-r-outside
	for _, text := range []struct {
		y    float64
		says string
		bold bool
	}{{-1.24 * em, title, true}, {-p.Height + 1 + 1.06*em, from, false}, {-p.Height + 1, seen, true}} {
		p.Draw.Add(draw.Text{XMm: cx, YMm: text.y, SizeMm: em, Bold: text.bold, Align: draw.Centre, Content: text.says}.Within(p.Width - 2))
	}
	if inRows {
		p.Draw.Add(draw.TopArrow(arrowRoomMm/2, cy, 6))
	} else {
		dial{cx, cy, r, up, j.UpDeg}.marked(&p.Draw, marks)
	}
	order(&p.Draw, cx, cy)
	return p, true
}

// arrowRoomMm is for the arrow beside bolts in rows.
const arrowRoomMm = 6.0

// boltSpots are where the balloons of bolts stand about the middle of a clock, in the order of tightening: round a
// dial, so far out; or as the bolts lie, inside that, if they may, where some would meet on the dial or have no
// angle on it, standing in the middle, and so they do not meet.
func boltSpots(b *plan.BoltPlan, outMm float64, may bool) (at []plan.XY, rows bool) {
	meet := func(at []plan.XY) bool {
		for i, p := range at {
			if slices.ContainsFunc(at[:i], func(q plan.XY) bool { return geom.Distance(p, q) < 2*draw.BalloonMm }) {
				return true
			}
		}
		return false
	}
	dial := seq.Map(b.OrderDeg, func(deg float64) plan.XY { return geom.Clock(outMm, deg) })
	box := geom.BoxOf(b.OrderMm...)
	central := func(p plan.XY) bool { return p.LengthMm() < max(box.Size().XMm, box.Size().YMm)/8 }
	if !may || !meet(dial) && !slices.ContainsFunc(b.OrderMm, central) {
		return dial, false
	}
	scale := 2 * outMm / max(box.Size().XMm, box.Size().YMm)
	lie := seq.Map(b.OrderMm, func(p plan.XY) plan.XY { return p.Minus(box.Middle()).Times(scale) })
	if meet(lie) {
		return dial, false
	}
	return lie, true
}

// marked draws a dial with what lies where as letters inside.
func (f dial) marked(d *draw.Drawing, marks []hourMark) {
	cx, cy, r := f.cx, f.cy, f.r
	wanted := seq.Map(marks, func(m hourMark) float64 { return m.deg })
	f.draw(d, wanted)
	const inMm, apartMm = 4.6, 4.2 // of the letters
	step := min(apartMm/(r-inMm)*180/math.Pi, 360/math.Max(1, float64(len(marks))))
	places := draw.Spread(wanted, step, 0, 360-step)
	em := 3.6 * min(1, step*math.Pi/180*(r-inMm)/apartMm)
	for i, m := range marks {
		x, y := round(cx, cy, r, m.deg-f.upDeg)
		if m.key {
			d.Add(draw.Disc(x, y, 1.5))
		} else {
			d.Add(draw.Shape{Path: canvas.Circle(1.2).Translate(x, y), Fill: draw.White, Stroke: draw.Black, WidthMm: 0.3})
		}
		lx, ly := round(cx, cy, r-inMm, places[i]-f.upDeg)
		d.Add(draw.Text{XMm: lx, YMm: ly - 0.36*em, SizeMm: em, Bold: true, Align: draw.Centre, Content: m.letter})
	}
}

// clockMarks are those that stand on the clock of a joint: a weld's is that of
// the part welded to, and has them only where that is the assembly's too.
func clockMarks(j *plan.JointPlan) []hourMark {
	if w := j.Weld; w != nil && len(w.TacksDeg) > 0 {
		if slices.ContainsFunc(j.Placed, func(p plan.Placed) bool { return p.Title == w.ClockOf && (p.TurnDeg != 0 || p.OtherWay) }) {
			return nil
		}
	}
	return hourMarks(j.Clock)
}

// clockLines say what lies at each letter of the clock, and what must lie in
// line.
func clockLines(j *plan.JointPlan) []string {
	out := seq.Map(clockMarks(j), func(m hourMark) string {
		return m.letter + "  " + words.Angle(m.deg) + ", " + oclock(m.deg) + ": " + strings.Join(m.whats, ", ")
	})
	for _, a := range j.InLine {
		out = append(out, "In line: "+a.What+", "+words.Angle(a.Deg)+", "+oclock(a.Deg))
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

// smallDialMm is the radius of the clock of a step that stands beside another.
const smallDialMm = 9.4

// nearerMm is how much nearer to a small dial its runs lie, in millimetres.
func nearerMm(r float64) float64 {
	if r <= smallDialMm {
		return 1.2
	}
	return 0
}

// runRoomMm is the room of one layer of runs round a dial.
const runRoomMm = 6.4

// layers are those of a weld that are drawn: further ones go on in turn like the
// first two.
func layers(w *plan.WeldPlan) int {
	n := seq.Max(0, w.Order, func(run plan.WeldRun) int { return run.Layer })
	return min(n, 2)
}

// weldOrder shows the tacks on the clock, numbered in their order, and round
// them the runs of each layer as arrows from start to stop.
func weldOrder(d *draw.Drawing, w *plan.WeldPlan, cx, cy, r float64) {
	half := min(9, 360*w.TackLengthMm/(2*math.Pi*w.DiameterMm))
	em, off := 4.2, 3.9
	const apart = 1.15                        // the middles of two numbers, over their width
	if n := float64(len(w.TacksDeg)); n > 9 { // two figures
		off = 3.4
		em = max(draw.SmallMm, min(3, 2*(r+off)*math.Sin(math.Pi/n)/apart/draw.TextWidth("88", 1, true)))
	}
	var numbered []plan.XY
	for i, deg := range w.TacksDeg {
		d.Add(arc(canvas.Point{X: cx, Y: cy}, r, deg-half, deg+half, 1.8))
		x, y := round(cx, cy, r+off, deg)
		number, at := strconv.Itoa(i+1), plan.XY{XMm: x, YMm: y}
		if wide := apart * draw.TextWidth(number, em, true); slices.ContainsFunc(numbered, func(q plan.XY) bool { return geom.Distance(at, q) < wide-geom.CloseMm }) {
			continue // the step has them all
		}
		numbered = append(numbered, at)
		d.Add(draw.Text{XMm: x, YMm: y - 0.36*em, SizeMm: em, Bold: true, Align: draw.Centre, Content: number})
	}
	n := 0
	for _, run := range w.Order {
		if run.Layer > 2 {
			continue
		}
		at := r + 7.6 - nearerMm(r) + runRoomMm*float64(run.Layer-1)
		from, to := run.StartDeg, run.EndDeg
		if run.Clockwise && to <= from {
			to += 360
		}
		if !run.Clockwise && to >= from {
			to -= 360
		}
		way := math.Copysign(1, to-from)
		d.Add(arc(canvas.Point{X: cx, Y: cy}, at, from+way*2, to-way*9, 0.7), arrowhead(cx, cy, at, to-way*1, way > 0))
		x, y := round(cx, cy, at, from+way*2)
		d.Add(draw.Disc(x, y, 0.8))
		x, y = round(cx, cy, at+3.2, (from+to)/2)
		d.Add(draw.Text{XMm: x, YMm: y - 1.2, SizeMm: 3.4, Bold: true, Align: draw.Centre, Content: string(rune('a' + n%26))})
		n++
	}
}

// arc is a stretch of a circle from one clock angle clockwise to another.
func arc(c canvas.Point, r, from, to, width float64) draw.Shape {
	p := &canvas.Path{}
	n := max(2, int(math.Abs(to-from)/4)+1)
	for i := range n + 1 {
		x, y := round(c.X, c.Y, r, from+(to-from)*float64(i)/float64(n))
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
