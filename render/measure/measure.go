// Package measure reads back finished PDF files with PDFium, an engine that
// shares no code with the one that wrote them, so that tests can measure on
// the page what a ruler would measure on the paper. It is for tests only.
//
// Pages count from 0. Positions are millimetres from the lower left corner of
// the page, x right, y up. PDFium keeps coordinates in single precision,
// which is 0.00002 mm on an A4 page; a length of 100 mm comes back to within
// 0.001 mm.
//
// PDFium runs as WebAssembly inside the test, and one instance serves all
// files. Compiling it takes a few seconds, so the result is kept in the user's
// cache folder, under centrepop/pdfium.
// Every failure ends the test.
package measure

import (
	"image"
	"image/draw"
	"math"
	"os"
	"path/filepath"
	"sync"
	"testing"
	"time"

	"github.com/klippa-app/go-pdfium"
	"github.com/klippa-app/go-pdfium/enums"
	"github.com/klippa-app/go-pdfium/references"
	"github.com/klippa-app/go-pdfium/requests"
	"github.com/klippa-app/go-pdfium/webassembly"
	"github.com/tetratelabs/wazero"
	"github.com/tetratelabs/wazero/api"
	"github.com/tetratelabs/wazero/experimental"

	"centrepop/parts/geom"
)

const mmPerPt = geom.MmPerInch / 72

// Point is a place on the page in millimetres.
type Point struct{ X, Y float64 }

// Dist returns the distance to q in millimetres.
func (p Point) Dist(q Point) float64 { return math.Hypot(p.X-q.X, p.Y-q.Y) }

// Kind tells the segments of a path apart.
type Kind uint8

// The kinds of segment. PDF has no arcs: they come back as curves.
const (
	Move Kind = iota
	Line
	Curve // cubic, by C1 and C2
)

// Seg is a segment of a path. Start is where the one before ended (for Move
// it equals End). Close says that the path is closed behind this segment;
// where a straight line is needed for that, PDFium gives it as this segment,
// so that a closed path ends where its last Move went. WidthMm is the width of the line
// drawn along the path, 0 where none is; Filled says the path is filled.
type Seg struct {
	Kind               Kind
	Start, C1, C2, End Point
	Close              bool
	WidthMm            float64
	Filled             bool
}

// Length returns the length of the segment in millimetres, for a curve to
// within a few millionths. A Move has none.
func (s Seg) Length() float64 {
	switch s.Kind {
	case Line:
		return s.Start.Dist(s.End)
	case Curve:
		const n = 256
		sum, last := 0.0, s.Start
		for i := 1; i <= n; i++ {
			next := s.At(float64(i) / n)
			sum += last.Dist(next)
			last = next
		}
		return sum
	}
	return 0
}

// At returns the point at t from 0 (Start) to 1 (End).
func (s Seg) At(t float64) Point {
	if s.Kind != Curve {
		return Point{s.Start.X + t*(s.End.X-s.Start.X), s.Start.Y + t*(s.End.Y-s.Start.Y)}
	}
	u := 1 - t
	a, b, c, d := u*u*u, 3*u*u*t, 3*u*t*t, t*t*t
	return Point{
		a*s.Start.X + b*s.C1.X + c*s.C2.X + d*s.End.X,
		a*s.Start.Y + b*s.C1.Y + c*s.C2.Y + d*s.End.Y,
	}
}

// Circle is a full circle found among the paths of a page.
type Circle struct {
	Centre     Point
	DiameterMm float64
	WidthMm    float64 // of the line drawn along it
}

// Char is a character of the text on a page. Origin is where its baseline
// starts; Left, Bottom, Right and Top are the box of its ink, upright on the
// page; AngleDeg is the direction of the baseline, anticlockwise, 0 to 360.
type Char struct {
	Rune                     rune
	Origin                   Point
	Left, Bottom, Right, Top float64
	AngleDeg                 float64
}

// Bookmark is an entry of the outline with those below it. Page is the page
// it leads to, -1 where it leads to none.
type Bookmark struct {
	Title    string
	Page     int
	Children []Bookmark
}

// Doc is an open file.
type Doc struct {
	t  testing.TB
	id references.FPDF_DOCUMENT
}

// engine is the one running PDFium. It does one thing at a time.
var engine struct {
	once sync.Once
	sync.Mutex
	pdfium.Pdfium
	err error
}

func start() {
	config := wazero.NewRuntimeConfig().
		WithCoreFeatures(api.CoreFeaturesV2 | experimental.CoreFeaturesExceptionHandling) // PDFium needs both
	if cache := compiled(); cache != nil {
		config = config.WithCompilationCache(cache)
	}
	pool, err := webassembly.Init(webassembly.Config{MinIdle: 1, MaxIdle: 1, MaxTotal: 1, RuntimeConfig: config})
	if err != nil {
		engine.err = err
		return
	}
	engine.Pdfium, engine.err = pool.GetInstance(time.Minute)
}

// compiled keeps the compiled engine in the user's cache folder; without one,
// it is compiled anew.
func compiled() wazero.CompilationCache {
	dir, err := os.UserCacheDir()
	if err != nil {
		return nil
	}
	cache, err := wazero.NewCompilationCacheWithDir(filepath.Join(dir, "centrepop", "pdfium"))
	if err != nil {
		return nil
	}
	return cache
}

// Open opens a file held in memory and closes it when the test ends.
func Open(t testing.TB, pdf []byte) *Doc {
	t.Helper()
	engine.Lock()
	defer engine.Unlock()
	engine.once.Do(start)
	if engine.err != nil {
		t.Fatalf("starting PDFium: %v", engine.err)
	}
	d := &Doc{t: t}
	d.id = ask(d, engine.OpenDocument, &requests.OpenDocument{File: &pdf}).Document
	t.Cleanup(func() { askAlone(d, engine.FPDF_CloseDocument, &requests.FPDF_CloseDocument{Document: d.id}) })
	return d
}

// ask has the engine answer a question about the file. The engine is locked.
func ask[Q, A any](d *Doc, call func(*Q) (*A, error), question *Q) *A {
	d.t.Helper()
	answer, err := call(question)
	if err != nil {
		d.t.Fatalf("PDFium: %v", err)
	}
	return answer
}

// askAlone is ask of an engine that is not locked yet.
func askAlone[Q, A any](d *Doc, call func(*Q) (*A, error), question *Q) *A {
	d.t.Helper()
	engine.Lock()
	defer engine.Unlock()
	return ask(d, call, question)
}

func (d *Doc) page(index int) requests.Page {
	return requests.Page{ByIndex: &requests.PageByIndex{Document: d.id, Index: index}}
}

// Pages returns the number of pages.
func (d *Doc) Pages() int {
	d.t.Helper()
	return askAlone(d, engine.FPDF_GetPageCount, &requests.FPDF_GetPageCount{Document: d.id}).PageCount
}

// Size returns width and height of a page in millimetres.
func (d *Doc) Size(page int) (widthMm, heightMm float64) {
	d.t.Helper()
	r := askAlone(d, engine.FPDF_GetPageSizeByIndex, &requests.FPDF_GetPageSizeByIndex{Document: d.id, Index: page})
	return r.Width * mmPerPt, r.Height * mmPerPt
}

// Label returns the label of a page.
func (d *Doc) Label(page int) string {
	d.t.Helper()
	return askAlone(d, engine.FPDF_GetPageLabel, &requests.FPDF_GetPageLabel{Document: d.id, Page: page}).Label
}

// Meta returns an entry of the information dictionary, such as Title or
// CreationDate.
func (d *Doc) Meta(key string) string {
	d.t.Helper()
	return askAlone(d, engine.FPDF_GetMetaText, &requests.FPDF_GetMetaText{Document: d.id, Tag: key}).Value
}

// ScalesWhenPrinted reports whether the file leaves viewers free to scale its
// pages to the paper: false is what a 1:1 template needs.
func (d *Doc) ScalesWhenPrinted() bool {
	d.t.Helper()
	return askAlone(d, engine.FPDF_VIEWERREF_GetPrintScaling, &requests.FPDF_VIEWERREF_GetPrintScaling{Document: d.id}).PreferPrintScaling
}

// Bookmarks returns the outline.
func (d *Doc) Bookmarks() []Bookmark {
	d.t.Helper()
	engine.Lock()
	defer engine.Unlock()
	return d.bookmarks(nil)
}

func (d *Doc) bookmarks(parent *references.FPDF_BOOKMARK) []Bookmark {
	var list []Bookmark
	first := ask(d, engine.FPDFBookmark_GetFirstChild, &requests.FPDFBookmark_GetFirstChild{Document: d.id, Bookmark: parent})
	for at := first.Bookmark; at != nil; {
		title := ask(d, engine.FPDFBookmark_GetTitle, &requests.FPDFBookmark_GetTitle{Bookmark: *at})
		b := Bookmark{Title: title.Title, Page: -1}
		dest := ask(d, engine.FPDFBookmark_GetDest, &requests.FPDFBookmark_GetDest{Document: d.id, Bookmark: *at})
		if dest.Dest != nil {
			index := ask(d, engine.FPDFDest_GetDestPageIndex, &requests.FPDFDest_GetDestPageIndex{Document: d.id, Dest: *dest.Dest})
			b.Page = index.Index
		}
		b.Children = d.bookmarks(at)
		list = append(list, b)
		next := ask(d, engine.FPDFBookmark_GetNextSibling, &requests.FPDFBookmark_GetNextSibling{Document: d.id, Bookmark: *at})
		at = next.Bookmark
	}
	return list
}

// Render draws a page at the given resolution on white.
func (d *Doc) Render(page int, dpi int) *image.RGBA {
	d.t.Helper()
	engine.Lock()
	defer engine.Unlock()
	r := ask(d, engine.RenderPageInDPI, &requests.RenderPageInDPI{Page: d.page(page), DPI: dpi})
	defer r.CleanupFunc()
	// The picture lies in the engine's memory and must be copied out.
	src := r.Result.RenderedImage
	img := image.NewRGBA(src.Bounds())
	draw.Draw(img, img.Bounds(), image.White, image.Point{}, draw.Src)
	draw.Draw(img, img.Bounds(), src, src.Bounds().Min, draw.Over)
	return img
}

// Text returns the text of a page in the order PDFium reads it, lines apart by
// "\r\n".
func (d *Doc) Text(page int) string {
	d.t.Helper()
	return askAlone(d, engine.GetPageText, &requests.GetPageText{Page: d.page(page)}).Text
}

// Chars returns the characters of a page that are drawn; the spaces and line
// breaks PDFium makes up between them are left out.
func (d *Doc) Chars(page int) []Char {
	d.t.Helper()
	engine.Lock()
	defer engine.Unlock()
	text := ask(d, engine.FPDFText_LoadPage, &requests.FPDFText_LoadPage{Page: d.page(page)})
	defer engine.FPDFText_ClosePage(&requests.FPDFText_ClosePage{TextPage: text.TextPage})
	count := ask(d, engine.FPDFText_CountChars, &requests.FPDFText_CountChars{TextPage: text.TextPage})
	var chars []Char
	for i := range count.Count {
		made := ask(d, engine.FPDFText_IsGenerated, &requests.FPDFText_IsGenerated{TextPage: text.TextPage, Index: i})
		if made.IsGenerated {
			continue
		}
		code := ask(d, engine.FPDFText_GetUnicode, &requests.FPDFText_GetUnicode{TextPage: text.TextPage, Index: i})
		at := ask(d, engine.FPDFText_GetCharOrigin, &requests.FPDFText_GetCharOrigin{TextPage: text.TextPage, Index: i})
		box := ask(d, engine.FPDFText_GetCharBox, &requests.FPDFText_GetCharBox{TextPage: text.TextPage, Index: i})
		angle := ask(d, engine.FPDFText_GetCharAngle, &requests.FPDFText_GetCharAngle{TextPage: text.TextPage, Index: i})
		chars = append(chars, Char{
			Rune:     rune(code.Unicode),
			Origin:   Point{at.X * mmPerPt, at.Y * mmPerPt},
			Left:     box.Left * mmPerPt,
			Bottom:   box.Bottom * mmPerPt,
			Right:    box.Right * mmPerPt,
			Top:      box.Top * mmPerPt,
			AngleDeg: math.Mod(720-float64(angle.CharAngle)*180/math.Pi, 360), // PDFium counts clockwise
		})
	}
	return chars
}

// Paths returns every path object of a page in the order they are drawn,
// those inside forms included, as it lies on the page before clipping.
func (d *Doc) Paths(page int) [][]Seg {
	d.t.Helper()
	engine.Lock()
	defer engine.Unlock()
	count := ask(d, engine.FPDFPage_CountObjects, &requests.FPDFPage_CountObjects{Page: d.page(page)})
	var paths [][]Seg
	for i := range count.Count {
		r := ask(d, engine.FPDFPage_GetObject, &requests.FPDFPage_GetObject{Page: d.page(page), Index: i})
		paths = d.object(paths, r.PageObject, identity)
	}
	return paths
}

func (d *Doc) object(paths [][]Seg, id references.FPDF_PAGEOBJECT, outer matrix) [][]Seg {
	kind := ask(d, engine.FPDFPageObj_GetType, &requests.FPDFPageObj_GetType{PageObject: id})
	if kind.Type != enums.FPDF_PAGEOBJ_PATH && kind.Type != enums.FPDF_PAGEOBJ_FORM {
		return paths
	}
	r := ask(d, engine.FPDFPageObj_GetMatrix, &requests.FPDFPageObj_GetMatrix{PageObject: id})
	m := outer.after(matrix{
		float64(r.Matrix.A), float64(r.Matrix.B), float64(r.Matrix.C),
		float64(r.Matrix.D), float64(r.Matrix.E), float64(r.Matrix.F),
	})
	if kind.Type == enums.FPDF_PAGEOBJ_PATH {
		return append(paths, d.path(id, m))
	}
	count := ask(d, engine.FPDFFormObj_CountObjects, &requests.FPDFFormObj_CountObjects{PageObject: id})
	for i := range count.Count {
		r := ask(d, engine.FPDFFormObj_GetObject, &requests.FPDFFormObj_GetObject{PageObject: id, Index: uint64(i)})
		paths = d.object(paths, r.PageObject, m)
	}
	return paths
}

func (d *Doc) path(id references.FPDF_PAGEOBJECT, m matrix) []Seg {
	mode := ask(d, engine.FPDFPath_GetDrawMode, &requests.FPDFPath_GetDrawMode{PageObject: id})
	var width float64
	if mode.Stroke {
		r := ask(d, engine.FPDFPageObj_GetStrokeWidth, &requests.FPDFPageObj_GetStrokeWidth{PageObject: id})
		width = float64(r.StrokeWidth) * m.scale() * mmPerPt
	}
	count := ask(d, engine.FPDFPath_CountSegments, &requests.FPDFPath_CountSegments{PageObject: id})
	var segs []Seg
	var at Point
	var curve []Point // the control points of a curve under way
	for i := range count.Count {
		r := ask(d, engine.FPDFPath_GetPathSegment, &requests.FPDFPath_GetPathSegment{PageObject: id, Index: i})
		p := ask(d, engine.FPDFPathSegment_GetPoint, &requests.FPDFPathSegment_GetPoint{PathSegment: r.PathSegment})
		kind := ask(d, engine.FPDFPathSegment_GetType, &requests.FPDFPathSegment_GetType{PathSegment: r.PathSegment})
		shut := ask(d, engine.FPDFPathSegment_GetClose, &requests.FPDFPathSegment_GetClose{PathSegment: r.PathSegment})
		s := Seg{Start: at, End: m.apply(float64(p.X), float64(p.Y)), Close: shut.IsClose, WidthMm: width,
			Filled: mode.FillMode != enums.FPDF_FILLMODE_NONE}
		switch kind.Type {
		case enums.FPDF_SEGMENT_MOVETO:
			s.Start = s.End
		case enums.FPDF_SEGMENT_LINETO:
			s.Kind = Line
		case enums.FPDF_SEGMENT_BEZIERTO: // three in a row make one curve
			if len(curve) < 2 {
				curve = append(curve, s.End)
				continue
			}
			s.Kind, s.C1, s.C2 = Curve, curve[0], curve[1]
			curve = nil
		default:
			d.t.Fatalf("PDFium gives a segment of the unknown type %d", kind.Type)
		}
		at = s.End
		segs = append(segs, s)
	}
	return segs
}

// Circles returns the full circles among the paths of a page: closed paths of
// one Move and curves only that keep one distance from their centre to within
// 0.005 mm and 20 millionths of the radius.
func (d *Doc) Circles(page int) []Circle {
	d.t.Helper()
	var circles []Circle
	for _, segs := range d.Paths(page) {
		for _, sub := range subpaths(segs) {
			if c, ok := circleOf(sub); ok {
				circles = append(circles, c)
			}
		}
	}
	return circles
}

// subpaths cuts a path before each Move.
func subpaths(segs []Seg) [][]Seg {
	var list [][]Seg
	for _, s := range segs {
		if s.Kind == Move || len(list) == 0 {
			list = append(list, nil)
		}
		list[len(list)-1] = append(list[len(list)-1], s)
	}
	return list
}

// circleOf fits a circle through points along the curves of one subpath and
// accepts it where they go round it once.
func circleOf(segs []Seg) (Circle, bool) {
	const perCurve = 64
	var points []Point
	for i, s := range segs {
		if (i == 0) != (s.Kind == Move) || s.Kind == Line && s.Length() > 1e-4 {
			return Circle{}, false
		}
		for k := 0; s.Kind == Curve && k < perCurve; k++ {
			points = append(points, s.At(float64(k)/perCurve))
		}
	}
	if len(points) < 2*perCurve || segs[0].Start.Dist(segs[len(segs)-1].End) > 1e-3 {
		return Circle{}, false
	}
	c, r := fitCircle(points)
	var turned float64
	for i, p := range points {
		if math.Abs(p.Dist(c)-r) > 0.005+20e-6*r {
			return Circle{}, false
		}
		q := points[(i+1)%len(points)]
		turned += math.Atan2((p.X-c.X)*(q.Y-c.Y)-(p.Y-c.Y)*(q.X-c.X), (p.X-c.X)*(q.X-c.X)+(p.Y-c.Y)*(q.Y-c.Y))
	}
	if math.Abs(math.Abs(turned)-2*math.Pi) > 1e-3 {
		return Circle{}, false
	}
	return Circle{Centre: c, DiameterMm: 2 * r, WidthMm: segs[0].WidthMm}, true
}

// fitCircle returns the circle of least squares through points that go all
// the way round, in the algebraic form x²+y² = 2ax + 2by + c about their mean.
func fitCircle(points []Point) (Point, float64) {
	n := float64(len(points))
	var mean Point
	for _, p := range points {
		mean.X += p.X / n
		mean.Y += p.Y / n
	}
	var xx, xy, yy, xz, yz, z float64
	for _, p := range points {
		x, y := p.X-mean.X, p.Y-mean.Y
		s := x*x + y*y
		xx, xy, yy = xx+x*x, xy+x*y, yy+y*y
		xz, yz, z = xz+x*s, yz+y*s, z+s
	}
	det := 2 * (xx*yy - xy*xy)
	if det == 0 {
		return mean, 0
	}
	a, b := (xz*yy-yz*xy)/det, (yz*xx-xz*xy)/det
	return Point{mean.X + a, mean.Y + b}, math.Sqrt(z/n + a*a + b*b)
}

// matrix maps x, y to ax+cy+e, bx+dy+f, in points.
type matrix struct{ a, b, c, d, e, f float64 }

var identity = matrix{a: 1, d: 1}

// after returns the map that applies n and then m.
func (m matrix) after(n matrix) matrix {
	return matrix{
		m.a*n.a + m.c*n.b, m.b*n.a + m.d*n.b,
		m.a*n.c + m.c*n.d, m.b*n.c + m.d*n.d,
		m.a*n.e + m.c*n.f + m.e, m.b*n.e + m.d*n.f + m.f,
	}
}

func (m matrix) apply(x, y float64) Point {
	return Point{(m.a*x + m.c*y + m.e) * mmPerPt, (m.b*x + m.d*y + m.f) * mmPerPt}
}

// scale is the factor on line widths, exact for a map without shear.
func (m matrix) scale() float64 { return math.Sqrt(math.Abs(m.a*m.d - m.b*m.c)) }
