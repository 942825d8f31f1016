package truesize

import (
	"fmt"
	"math"
	"slices"
	"strings"
	"testing"

	"centrepop/layout/plan"
	"centrepop/parts"
	"centrepop/templates/draw"
	"centrepop/templates/sheettest"
)

// TestDivideByHand works the strips of a bare length out by hand: they overlap
// by 10 mm, and each cut lies 5 mm inside both of its strips.
func TestDivideByHand(t *testing.T) {
	for _, c := range []struct {
		lo, hi, size float64
		spans        [][2]float64
		from, cut    []float64
	}{
		{0, 100, 100, nil, []float64{0}, nil},
		{0, 100.001, 100, nil, []float64{0, 90}, []float64{95}},
		{-50, 230, 100, nil, []float64{-50, 40, 130}, []float64{45, 135}},
		{-50, 230.1, 100, nil, []float64{-50, 40, 130, 220}, []float64{45, 135, 225}},
		// A hole over the cut at 95: the cut goes to its near edge.
		{0, 150, 100, [][2]float64{{80, 96}}, []float64{0, 75}, []float64{80}},
		// One that ends at the cut, or begins there, is not in the way.
		{0, 150, 100, [][2]float64{{80, 95}, {95, 99}}, []float64{0, 90}, []float64{95}},
		// Two that meet push it before the first.
		{0, 150, 100, [][2]float64{{60, 82}, {80, 96}}, []float64{0, 55}, []float64{60}},
		// It goes down to 40 mm of the strip and no further: holes one over
		// another from 30 to 96 are cut, and those past the end are whole on the
		// next strip, with the cut in the middle of what both share.
		{0, 130, 100, [][2]float64{{40, 96}}, []float64{0, 35}, []float64{40}},
		{0, 150, 100, [][2]float64{{39, 96}}, []float64{0, 90}, []float64{95}},
		{0, 150, 100, [][2]float64{{30, 70}, {60, 101}}, []float64{0, 60}, []float64{80}},
		{0, 150, 100, [][2]float64{{30, 70}, {60, 100}}, []float64{0, 90}, []float64{95}},
		{0, 150, 100, [][2]float64{{39, 140}}, []float64{0, 90}, []float64{95}}, // longer than a strip
		{0, 139, 100, [][2]float64{{39, 139}}, []float64{0, 39}, []float64{69.5}},
	} {
		s := divide(c.lo, c.hi, c.size, c.spans)
		if !near(s.from, c.from) || !near(s.cut, c.cut) || s.size != c.size {
			t.Errorf("%g to %g by %g past %v: from %v, cut %v; want %v, %v", c.lo, c.hi, c.size, c.spans, s.from, s.cut, c.from, c.cut)
		}
	}
}

func near(got, want []float64) bool {
	return slices.EqualFunc(got, want, func(a, b float64) bool { return math.Abs(a-b) < 1e-9 })
}

// barePlate is a plate without holes, w by h about its origin.
func barePlate(w, h float64) *plan.PartPlan {
	p := sheettest.PlatePart()
	p.Faces[0].MinMm, p.Faces[0].MaxMm = plan.XY{XMm: -w / 2, YMm: -h / 2}, plan.XY{XMm: w / 2, YMm: h / 2}
	p.Faces[0].Outline = plan.Contour(fmt.Sprintf("M%g %gH%gV%gH%gZ", -w/2, -h/2, w/2, h/2, -w/2))
	p.Faces[0].Holes, p.Faces[0].Groups = nil, nil
	return p
}

// TestTilesByHand works out the tiles of a bare plate of 360 × 500 on A4. The
// sheet's body is 8 to 202 across and, between title block and margin, 42 high
// less; the strip of the upright rule takes 13 at the left, the other rule
// 10.5 below, the head 25 above.
func TestTilesByHand(t *testing.T) {
	frame := draw.Frame{WidthMm: 210, HeightMm: 297, Name: "A4"}
	part := barePlate(360, 500)
	face := part.Faces[0]
	p := &punch{pl: sheettest.JobOf("tiles", parts.Millimetres, part), part: part, face: face, outline: draw.Polygon(-180, -250, 180, -250, 180, 250, -180, 250),
		bounds: draw.R(-185, -255, 185, 259)}
	area := workArea(frame, tileHeadMm)
	body := frame.Body()
	if area != draw.R(body.X0+13, body.Y0+10.5, body.X1, body.Y1-25) {
		t.Fatalf("the work area is %v in %v", area, body)
	}
	tiles := p.tile(frame)
	w, h := area.Width(), area.Height()
	if want := []float64{-185, -185 + w - 10, -185 + 2*(w-10)}; !near(tiles.cols.from, want) || !near(tiles.cols.cut, []float64{-185 + w - 5, -185 + 2*w - 15}) {
		t.Errorf("columns %v, want from %v", tiles.cols, want)
	}
	if want := []float64{-259, -259 + h - 10, -259 + 2*(h-10)}; !near(tiles.rows.from, want) || !near(tiles.rows.cut, []float64{-259 + h - 5, -259 + 2*h - 15}) {
		t.Errorf("rows %v, want from %v", tiles.rows, want)
	}
	if tiles.count() != 9 {
		t.Errorf("%d tiles", tiles.count())
	}
	if got := tiles.window(p, 2, 2); got != draw.R(tiles.cols.from[2], -255, 185, -tiles.rows.from[2]) {
		t.Errorf("the last window is %v", got)
	}
	if got := tiles.window(p, 0, 0); math.Abs(got.X1-(-185+w)) > 1e-9 || math.Abs(got.Y0-(259-h)) > 1e-9 || got.X0 != -185 || got.Y1 != 259 {
		t.Errorf("the first window is %v", got)
	}
	// Two marks on each stretch of each of the 12 lines between tiles, at a
	// fifth from its ends where nothing is in the way.
	if len(tiles.marks) != 24 {
		t.Fatalf("%d match marks", len(tiles.marks))
	}
	cuts := tiles.cols.cut
	top, bottom := tiles.rows.cut[0], tiles.rows.cut[1]
	for _, want := range []match{ // the middle row of upright lines, the middle column of level ones
		{5, cuts[0], -(top + 0.2*(bottom-top)), false}, {6, cuts[0], -(top + 0.8*(bottom-top)), false},
		{7, cuts[1], -(top + 0.2*(bottom-top)), false},
		{17, cuts[0] + 0.2*(cuts[1]-cuts[0]), -top, true}, {18, cuts[0] + 0.8*(cuts[1]-cuts[0]), -top, true},
		{19, cuts[0] + 0.2*(cuts[1]-cuts[0]), -bottom, true},
	} {
		got := tiles.marks[want.n-1]
		if got.n != want.n || got.across != want.across || math.Abs(got.x-want.x) > 1e-9 || math.Abs(got.y-want.y) > 1e-9 {
			t.Errorf("mark %d is %+v, want %+v", want.n, got, want)
		}
	}
}

// tilePage is a tile as it is drawn: where it stands, how far the face is moved
// on it, and its straight dashed lines in face coordinates.
type tilePage struct {
	col, row   int
	name       string
	window     draw.Rect // face coordinates
	cut, chain []draw.Rect
	marks      map[string]plan.XY
	notes      []string
	texts      []sheettest.Placed
	dx, dy     float64
}

// tilePages draws a part and reads its tiles back.
func tilePages(t *testing.T, pl *plan.Plan, part *plan.PartPlan, paper draw.Frame) []tilePage {
	t.Helper()
	chapters, err := Chapters(pl, part, paper)
	if err != nil {
		t.Fatal(err)
	}
	doc := draw.Bind(draw.Job{Name: pl.Job}, chapters, "tiles")
	var pages []tilePage
	for i := range doc.Pages {
		page := tilePage{marks: map[string]plan.XY{}}
		items := sheettest.Flatten(t, &doc.Pages[i].Drawing, 0, 0, nil)
		for _, it := range items {
			if text, ok := it.Item.(draw.Text); ok && strings.HasPrefix(text.Content, "Tile ") && strings.Contains(text.Content, " to ") {
				page.name = strings.Fields(text.Content)[1]
			}
			if it.Clip != nil && page.window.Width() == 0 { // the face is drawn in a window of its own
				page.dx, page.dy = it.DX, it.DY
				page.window = draw.R(it.Clip.X0-it.DX, it.Clip.Y0-it.DY, it.Clip.X1-it.DX, it.Clip.Y1-it.DY)
			}
		}
		if page.name == "" {
			continue
		}
		page.row, page.col = int(page.name[0]-'A'), int(page.name[1]-'1')
		page.read(items)
		pages = append(pages, page)
	}
	return pages
}

// read finds the cut lines, match marks and notes among the items of a page.
func (p *tilePage) read(items []sheettest.Placed) {
	for _, it := range items {
		switch item := it.Item.(type) {
		case draw.Text:
			p.texts = append(p.texts, it)
			if strings.Contains(item.Content, "this line") {
				p.notes = append(p.notes, item.Content)
			}
		case draw.Shape:
			b := item.Path.Bounds()
			r := draw.R(b.X0+it.DX-p.dx, b.Y0+it.DY-p.dy, b.X1+it.DX-p.dx, b.Y1+it.DY-p.dy)
			whole := r.Width() == 0 && r.Height() > 30 || r.Height() == 0 && r.Width() > 30
			switch {
			case it.Clip == nil && whole && slices.Equal(item.DashMm, draw.CutDash):
				p.cut = append(p.cut, r)
			case it.Clip == nil && whole && slices.Equal(item.DashMm, draw.ChainDash):
				p.chain = append(p.chain, r)
			case math.Abs(r.Width()-6.4) < 1e-9 && math.Abs(r.Height()-6.4) < 1e-9:
				at := plan.XY{XMm: (r.X0 + r.X1) / 2, YMm: (r.Y0 + r.Y1) / 2}
				p.marks[fmt.Sprintf("%.6f %.6f", at.XMm, at.YMm)] = at
			}
		}
	}
}

// centred requires the window of a tile to stand in the middle of the room for
// it, on paper as it is or turned.
func (p *tilePage) centred(t *testing.T, paper draw.Frame) {
	t.Helper()
	x, y := (p.window.X0+p.window.X1)/2+p.dx, (p.window.Y0+p.window.Y1)/2+p.dy
	for _, f := range []draw.Frame{paper, paper.Turned()} {
		a := workArea(f, tileHeadMm)
		if math.Abs(x-(a.X0+a.X1)/2) < 1e-6 && math.Abs(y-(a.Y0+a.Y1)/2) < 1e-6 {
			return
		}
	}
	t.Errorf("%s: the middle of the window is at %g, %g", p.name, x, y)
}

// TestSmallCircles: a hole of the other side, up to 60 mm, keeps cuts off; a
// bore or a pitch circle does not.
func TestSmallCircles(t *testing.T) {
	for _, c := range []struct {
		circle plan.Circle
		want   bool
	}{{plan.Circle{DiameterMm: 60}, true}, {plan.Circle{DiameterMm: 60.01}, false}, {plan.Circle{DiameterMm: 20, Pitch: true}, false}} {
		if got := isSmall(c.circle); got != c.want {
			t.Errorf("%+v: %t", c.circle, got)
		}
	}
	if got := circleRect(plan.Circle{CentreMm: plan.XY{XMm: 5, YMm: -7}, DiameterMm: 8}); got != draw.R(1, -11, 9, -3) {
		t.Errorf("the room of a circle is %v", got)
	}
}

// TestNotesGiveWay: where the middle of a cut line is taken, the note stands
// 4 mm lower, or further left, until there is room; else it is left out.
func TestNotesGiveWay(t *testing.T) {
	part := barePlate(360, 500)
	p := &punch{pl: sheettest.JobOf("tiles", parts.Millimetres, part), part: part, face: part.Faces[0], outline: draw.Polygon(-180, -250, 180, -250, 180, 250, -180, 250),
		bounds: draw.R(-185, -255, 185, 259)}
	frame := draw.Frame{WidthMm: 210, HeightMm: 297, Name: "A4"}
	tiles := p.tile(frame)
	window := draw.R(20, 60, 190, 240)
	ox, oy := 30-tiles.cols.cut[0], 230+tiles.rows.cut[0] // the cut lines at 30 and 230
	place := func(taken ...draw.Rect) map[string]draw.Text {
		s := &draw.Sheet{Frame: frame}
		room := draw.NewOccupied(window)
		for _, r := range taken {
			room.AddText(r)
		}
		p.cutNotes(s, tiles, 1, 1, window, ox, oy, room)
		out := map[string]draw.Text{}
		for _, item := range s.Draw.Items {
			text := item.(draw.Text)
			out[fmt.Sprint(text.RotateDeg, " ", text.Content)] = text
		}
		return out
	}
	free := place()
	up, level := free["90 cut along this line"], free["0 cut along this line"]
	w := draw.TextWidth("cut along this line", draw.SmallMm, false)
	if math.Abs(up.YMm-(150-w/2)) > 1e-9 || math.Abs(level.XMm-(105-w/2)) > 1e-9 {
		t.Fatalf("the notes stand at %+v and %+v", up, level)
	}
	// A thing in the middle of each line, 10 along it.
	moved := place(draw.R(25, 145, 29, 155), draw.R(100, 231, 110, 234))
	for name, drop := range map[string]float64{"90 cut along this line": up.YMm - moved["90 cut along this line"].YMm, "0 cut along this line": level.XMm - moved["0 cut along this line"].XMm} {
		if n := drop / 4; n < 1 || math.Abs(n-math.Round(n)) > 1e-9 || drop > w/2+5+8 {
			t.Errorf("%s moved by %g", name, drop)
		}
	}
	none := place(draw.R(21, 61, 29.5, 239), draw.R(21, 230.5, 189, 239))
	if _, ok := none["90 cut along this line"]; ok {
		t.Error("a note stands where there is no room")
	}
	if _, ok := none["0 cut along this line"]; ok {
		t.Error("a level note stands where there is no room")
	}
}

// wantLines are the lines wanted on a page by the tiles that are there: upright
// towards a neighbour in the row, level towards one in the column.
func wantLines(all []tilePage, p tilePage) (cut, chain int) {
	for _, q := range all {
		switch {
		case q.row == p.row && q.col == p.col-1, q.col == p.col && q.row == p.row-1:
			cut++
		case q.row == p.row && q.col == p.col+1, q.col == p.col && q.row == p.row+1:
			chain++
		}
	}
	return cut, chain
}

// TestCutLinesMeet draws a plate with holes on tiles. On each tile the dashed
// lines lie left and above, the chain lines right and below; each dashed line
// lies at the same place of the part as the chain line of the tile before it,
// at least 5 mm inside both; and the marks beside them are the same.
func TestCutLinesMeet(t *testing.T) {
	for _, c := range []struct {
		part  *plan.PartPlan
		paper draw.Frame
		least int
	}{
		{barePlate(360, 500), draw.Frame{WidthMm: 210, HeightMm: 297, Name: "A4"}, 8},
		{sheettest.PlatePart(), draw.Frame{WidthMm: 215.9, HeightMm: 279.4, Name: "Letter"}, 6},
		{sheettest.PlatePart(), draw.Frame{WidthMm: 297, HeightMm: 420, Name: "A3"}, 2},
	} {
		pl := sheettest.JobOf("tiles", parts.Millimetres, c.part)
		pages := tilePages(t, pl, c.part, c.paper)
		if len(pages) < c.least {
			t.Fatalf("%s on %s: %d tiles, want %d or more", c.part.Name, c.paper.Name, len(pages), c.least)
		}
		for _, p := range pages {
			p.cutNotes(t)
			p.centred(t, c.paper)
			cut, chain := wantLines(pages, p)
			if len(p.cut) != cut || len(p.chain) != chain {
				t.Errorf("%s: %d cut lines and %d chain lines, want %d and %d", p.name, len(p.cut), len(p.chain), cut, chain)
			}
			if n := len(p.notes); n > cut+chain || len(c.part.Faces[0].Holes) == 0 && n != cut+chain {
				t.Errorf("%s: notes %q", p.name, p.notes) // between holes there may be no room
			}
			for _, q := range pages {
				switch {
				case q.row == p.row && q.col == p.col+1:
					meetUpright(t, p, q)
				case q.col == p.col && q.row == p.row+1:
					meetLevel(t, p, q)
				}
			}
		}
	}
}

// meetUpright compares the chain line at the right of a tile with the cut line
// at the left of the next.
func meetUpright(t *testing.T, p, q tilePage) {
	t.Helper()
	i := slices.IndexFunc(p.chain, func(r draw.Rect) bool { return r.Width() == 0 })
	j := slices.IndexFunc(q.cut, func(r draw.Rect) bool { return r.Width() == 0 })
	if i < 0 || j < 0 {
		t.Fatalf("%s and %s: no upright lines", p.name, q.name)
	}
	a, b := p.chain[i], q.cut[j]
	if math.Abs(a.X0-b.X0) > 1e-9 || a.X0 > p.window.X1-5+1e-9 || a.X0 < q.window.X0+5-1e-9 {
		t.Errorf("%s and %s: lines at %g and %g, windows to %g and from %g", p.name, q.name, a.X0, b.X0, p.window.X1, q.window.X0)
	}
	if math.Abs(a.Y0-p.window.Y0) > 1e-9 || math.Abs(a.Y1-p.window.Y1) > 1e-9 || math.Abs(b.Y0-q.window.Y0) > 1e-9 || math.Abs(b.Y1-q.window.Y1) > 1e-9 {
		t.Errorf("%s and %s: the lines do not go through the windows", p.name, q.name)
	}
	p.says(t, q, 90, func(r draw.Rect) float64 { return r.X0 - a.X0 })
	sameMarks(t, p, q, func(at plan.XY) bool { return math.Abs(at.XMm-a.X0) < 1e-9 })
}

// meetLevel does the same below a tile.
func meetLevel(t *testing.T, p, q tilePage) {
	t.Helper()
	i := slices.IndexFunc(p.chain, func(r draw.Rect) bool { return r.Height() == 0 })
	j := slices.IndexFunc(q.cut, func(r draw.Rect) bool { return r.Height() == 0 })
	if i < 0 || j < 0 {
		t.Fatalf("%s and %s: no level lines", p.name, q.name)
	}
	a, b := p.chain[i], q.cut[j]
	if math.Abs(a.Y0-b.Y0) > 1e-9 || a.Y0 < p.window.Y0+5-1e-9 || a.Y0 > q.window.Y1-5+1e-9 {
		t.Errorf("%s and %s: lines at %g and %g, windows from %g and to %g", p.name, q.name, a.Y0, b.Y0, p.window.Y0, q.window.Y1)
	}
	if math.Abs(a.X0-p.window.X0) > 1e-9 || math.Abs(a.X1-p.window.X1) > 1e-9 || math.Abs(b.X0-q.window.X0) > 1e-9 || math.Abs(b.X1-q.window.X1) > 1e-9 {
		t.Errorf("%s and %s: the lines do not go through the windows", p.name, q.name)
	}
	p.says(t, q, 0, func(r draw.Rect) float64 { return a.Y0 - r.Y1 })
	sameMarks(t, p, q, func(at plan.XY) bool { return math.Abs(at.YMm-a.Y0) < 1e-9 })
}

// says checks the note of a tile on its chain line towards another: beyond the
// line by 0.7 mm. It may be left out for want of room.
func (p *tilePage) says(t *testing.T, q tilePage, turnDeg float64, beyond func(draw.Rect) float64) {
	t.Helper()
	for _, it := range p.texts {
		text := it.Item.(draw.Text)
		if text.Content != "edge of "+q.name+" goes on this line" {
			continue
		}
		r := it.Room()
		r = draw.R(r.X0-p.dx, r.Y0-p.dy, r.X1-p.dx, r.Y1-p.dy)
		if gap := beyond(r); text.RotateDeg != turnDeg || math.Abs(gap-0.7) > 0.05 {
			t.Errorf("%s: the note for %s is turned %g, %.3f mm beyond the line", p.name, q.name, text.RotateDeg, gap)
		}
	}
}

// cutNotes checks the notes along a tile's own cut lines: 0.7 mm off the line,
// on the side that is cut away.
func (p *tilePage) cutNotes(t *testing.T) {
	t.Helper()
	for _, it := range p.texts {
		text := it.Item.(draw.Text)
		if text.Content != "cut along this line" {
			continue
		}
		r := it.Room()
		r = draw.R(r.X0-p.dx, r.Y0-p.dy, r.X1-p.dx, r.Y1-p.dy)
		if !slices.ContainsFunc(p.cut, func(c draw.Rect) bool {
			if text.RotateDeg == 90 {
				return c.Width() == 0 && math.Abs(c.X0-r.X1-0.7) < 0.05
			}
			return text.RotateDeg == 0 && c.Height() == 0 && math.Abs(r.Y0-c.Y0-0.7) < 0.05
		}) {
			t.Errorf("%s: %q stands at %v, the cut lines are %v", p.name, text.Content, r, p.cut)
		}
	}
}

// sameMarks requires two marks on the line between two tiles, drawn on both,
// each with the same number on its own side of the line.
func sameMarks(t *testing.T, p, q tilePage, on func(plan.XY) bool) {
	t.Helper()
	shared := 0
	for key, at := range p.marks {
		if !on(at) {
			continue
		}
		if _, ok := q.marks[key]; !ok {
			continue
		}
		shared++
		a, b := p.numberAt(at), q.numberAt(at)
		if a == "" || a != b {
			t.Errorf("%s and %s: the mark at %g, %g is %q and %q", p.name, q.name, at.XMm, at.YMm, a, b)
		}
	}
	if shared < 2 { // a mark of the next column may lie on both, too
		t.Errorf("%s and %s share %d marks", p.name, q.name, shared)
	}
}

// numberAt is the bold number nearest to a match mark.
func (p *tilePage) numberAt(at plan.XY) string {
	best, number := 12.0, ""
	for _, it := range p.texts {
		text := it.Item.(draw.Text)
		r := it.Room()
		d := math.Hypot((r.X0+r.X1)/2-p.dx-at.XMm, (r.Y0+r.Y1)/2-p.dy-at.YMm)
		if text.Bold && text.SizeMm == draw.TextMm && d < best {
			best, number = d, text.Content
		}
	}
	return number
}

// TestTileMap: on every tile's small map its own cell is shaded and drawn
// bold, the cells lie edge to edge, and the names stand in them.
func TestTileMap(t *testing.T) {
	part := barePlate(360, 500)
	p := &punch{pl: sheettest.JobOf("tiles", parts.Millimetres, part), part: part, face: part.Faces[0], outline: draw.Polygon(-180, -250, 180, -250, 180, 250, -180, 250),
		bounds: draw.R(-185, -255, 185, 259)}
	tiles := p.tile(draw.Frame{WidthMm: 210, HeightMm: 297, Name: "A4"})
	var d draw.Drawing
	// 37 × 102.8 is a tenth of the bounds across and a fifth up: the scale is
	// a tenth, and the map stands in the middle of the height.
	p.tileMap(&d, tiles, draw.R(100, 50, 137, 152.8), 1, 2, 2.6)
	place := func(x, y float64) (float64, float64) { return 118.5 + x/10, 101.4 + (y-2)/10 }
	x0, y0 := place(tiles.cols.cut[0], -255)
	x1, y1 := place(tiles.cols.cut[1], -tiles.rows.cut[1])
	own := draw.R(x0, y0, x1, y1)
	var boxes []draw.Rect
	shaded, bold, names := 0, 0, map[string]draw.Text{}
	for _, item := range d.Items {
		switch item := item.(type) {
		case draw.Text:
			names[item.Content] = item
		case draw.Shape:
			b := item.Path.Bounds()
			r := draw.R(b.X0, b.Y0, b.X1, b.Y1)
			same := math.Hypot(r.X0-own.X0, r.Y0-own.Y0)+math.Hypot(r.X1-own.X1, r.Y1-own.Y1) < 1e-9
			switch {
			case item.Fill == draw.Pale && same:
				shaded++
			case item.WidthMm == draw.ThickMm && same:
				bold++
			case item.WidthMm == draw.HairMm:
				boxes = append(boxes, r)
			case item.WidthMm == draw.ThinMm:
				bx, by := place(-180, -250)
				cx, cy := place(180, 250)
				if math.Hypot(r.X0-bx, r.Y0-by)+math.Hypot(r.X1-cx, r.Y1-cy) > 1e-9 {
					t.Errorf("the outline is %v", r)
				}
			}
		}
	}
	if shaded != 1 || bold != 1 || len(boxes) != 9 || len(names) != 6 { // the third column is too narrow for its names
		t.Errorf("%d shaded, %d bold, %d cells, names %v", shaded, bold, len(boxes), names)
	}
	total := 0.0
	for _, b := range boxes {
		total += b.Width() * b.Height()
	}
	if math.Abs(total-37*51.4) > 1e-6 {
		t.Errorf("the cells cover %g, want %g", total, 37*51.4)
	}
	if at := names["C2"]; math.Abs(at.XMm-(own.X0+own.X1)/2) > 1e-9 || math.Abs(at.YMm-((own.Y0+own.Y1)/2-2.6*0.36)) > 1e-9 || at.Align != draw.Centre {
		t.Errorf("C2 stands at %+v in %v", at, own)
	}
	// Where the cells are too small for them, the names are left out.
	var small draw.Drawing
	p.tileMap(&small, tiles, draw.R(0, 0, 10, 20), -1, 0, 9)
	for _, item := range small.Items {
		switch item := item.(type) {
		case draw.Text:
			t.Errorf("%q does not fit its cell", item.Content)
		case draw.Shape:
			if item.Fill == draw.Pale || item.WidthMm == draw.ThickMm {
				t.Error("a tile is marked though none is meant")
			}
		}
	}
}

// TestKeySheet: the map stands over the whole width, no tile marked, and the
// steps say how many tiles there are; a second sheet says that it goes on.
func TestKeySheet(t *testing.T) {
	part := barePlate(360, 500)
	p := &punch{pl: sheettest.JobOf("tiles", parts.Millimetres, part), part: part, face: part.Faces[0], outline: draw.Polygon(-180, -250, 180, -250, 180, 250, -180, 250),
		bounds: draw.R(-185, -255, 185, 259)}
	frame := draw.Frame{WidthMm: 210, HeightMm: 297, Name: "A4"}
	doc := draw.Bind(draw.Job{Name: "tiles"}, []draw.Chapter{{Part: part.Title, Name: "key", Sheets: p.keySheets(frame, p.tile(frame))}}, "key")
	texts := sheettest.TextsOf(t, &doc.Pages[0])
	for _, want := range []string{"Gate plate", "FRONT template: key", "Join 9 tiles", "Check both 100 mm rules on every tile before you cut.", "not to scale"} {
		if !slices.ContainsFunc(texts, func(s string) bool { return strings.Contains(s, want) }) {
			t.Errorf("the key does not say %q: %q", want, texts)
		}
	}
	if slices.ContainsFunc(texts, func(s string) bool { return strings.Contains(s, "continued") }) {
		t.Error("the first sheet is continued")
	}
	// The map: 370 × 514 of the part in 42 % of the body's height, in the middle.
	body := frame.Body()
	height := 0.42 * body.Height()
	scale := height / 514
	cells := 0
	for _, it := range sheettest.Flatten(t, &doc.Pages[0].Drawing, 0, 0, nil) {
		shape, ok := it.Item.(draw.Shape)
		if !ok {
			continue
		}
		if shape.Fill == draw.Pale || shape.WidthMm == draw.ThickMm && shape.Path.Bounds().W() < 100 {
			t.Error("a tile is marked on the key")
		}
		b := shape.Path.Bounds()
		if shape.WidthMm == draw.ThinMm && math.Abs(b.W()-360*scale) < 1e-6 && math.Abs(b.H()-500*scale) < 1e-6 {
			cells++
			if middle := (b.X0+b.X1)/2 + it.DX; math.Abs(middle-(body.X0+body.X1)/2) > 1e-6 {
				t.Errorf("the map stands about %g, want %g", middle, (body.X0+body.X1)/2)
			}
		}
	}
	if cells != 1 {
		t.Errorf("%d outlines on the map", cells)
	}
}

// TestTilesGivenUp: beyond four times the most sheets nothing is worked out of
// the tiles.
func TestTilesGivenUp(t *testing.T) {
	frame := draw.Frame{WidthMm: 210, HeightMm: 297, Name: "A4"}
	area := workArea(frame, tileHeadMm)
	for _, n := range []int{40, 41} {
		w, h := area.Width()+float64(n-1)*(area.Width()-10)-1, area.Height()+float64(n-1)*(area.Height()-10)-1
		part := barePlate(100, 100)
		p := &punch{part: part, face: part.Faces[0], outline: draw.Polygon(-50, -50, 50, -50, 50, 50, -50, 50), bounds: draw.R(0, 0, w, h)}
		tiles := p.tile(frame)
		if len(tiles.cols.from) != n || len(tiles.rows.from) != n || (tiles.empty == nil) != (n > 40) {
			t.Errorf("%d × %d tiles: %d × %d, %d rows looked at", n, n, len(tiles.cols.from), len(tiles.rows.from), len(tiles.empty))
		}
	}
}

// TestTooLarge: the part, its size and the paper are named, and the least that
// is too much is refused.
func TestTooLarge(t *testing.T) {
	part := barePlate(9000, 9000)
	pl := sheettest.JobOf("tiles", parts.Millimetres, part)
	_, err := Chapters(pl, part, draw.Frame{WidthMm: 210, HeightMm: 297, Name: "A4"})
	if err == nil || !strings.Contains(err.Error(), "gate-plate") || !strings.Contains(err.Error(), "9000 × 9000 mm needs more than 400 sheets of A4") {
		t.Errorf("%v", err)
	}
}
