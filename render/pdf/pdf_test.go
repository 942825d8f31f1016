package pdf_test

import (
	"bytes"
	"errors"
	"fmt"
	"io"
	"math"
	"regexp"
	"runtime"
	"slices"
	"strconv"
	"strings"
	"testing"
	"unicode"

	"github.com/pdfcpu/pdfcpu/pkg/api"
	"github.com/pdfcpu/pdfcpu/pkg/pdfcpu/model"
	"github.com/tdewolff/canvas"
	"pgregory.net/rapid"

	"centrepop/render/measure"
	"centrepop/render/pdf"
	"centrepop/templates/draw"
	"centrepop/templates/typeface"
)

func write(t testing.TB, doc *draw.Document) []byte {
	t.Helper()
	var b bytes.Buffer
	if err := pdf.Write(&b, doc); err != nil {
		t.Fatal(err)
	}
	return b.Bytes()
}

func line(x0, y0, x1, y1 float64) *canvas.Path {
	p := &canvas.Path{}
	p.MoveTo(x0, y0)
	p.LineTo(x1, y1)
	return p
}

func stroke(p *canvas.Path) draw.Shape {
	return draw.Shape{Path: p, Stroke: draw.Black, WidthMm: 0.25}
}

// onA4 is a document of one page with the items.
func onA4(items ...draw.Item) *draw.Document {
	return &draw.Document{Pages: []draw.Page{{WidthMm: 210, HeightMm: 297, Drawing: draw.Drawing{Items: items}}}}
}

// packet uses everything a document can hold.
func packet() *draw.Document {
	inner := &draw.Drawing{}
	inner.Add(draw.Shape{Path: canvas.Rectangle(40, 30), Fill: draw.Pale},
		draw.Text{XMm: 5, YMm: 5, SizeMm: 4, Content: "inside", RotateDeg: 15})
	doc := &draw.Document{Title: "Clay mill (A\\1) – Prüfung", Subject: "Flange", Language: "de-CH", Date: "2024-02-29"}
	for i := range 12 {
		page := draw.Page{WidthMm: 210, HeightMm: 297, Label: fmt.Sprintf("F-%d", i+1)}
		if i%2 == 1 {
			page.WidthMm, page.HeightMm, page.Label = 279.4, 215.9, "§ "+string(rune('a'+i))
		}
		page.Bookmarks = []draw.Bookmark{{Title: fmt.Sprintf("Sheet %d", i+1)}, {Title: "Löcher (8)", Level: 1}, {Title: "⌀ 18", Level: 2}, {Title: "Rand", Level: 1}}
		page.Drawing.Add(
			stroke(line(20, 20, 120, 20)),
			draw.Shape{Path: canvas.Circle(40).Translate(100, 120), Fill: draw.Grey, Stroke: draw.Black, WidthMm: 0.5, DashMm: []float64{6, 1.5, 0.5, 1.5}},
			draw.Text{XMm: 100, YMm: 180, SizeMm: 7, Bold: true, Align: draw.Centre, Content: "⌀ 80 ± 0,1 (b\\c)"},
			draw.Group{Drawing: inner, Transform: canvas.Identity.Translate(20, 40).Rotate(30), Clip: canvas.Circle(20).Translate(30, 50)},
			draw.Link{Path: canvas.Rectangle(30, 10).Translate(20, 20), To: "Sheet 3"},
		)
		doc.Pages = append(doc.Pages, page)
	}
	return doc
}

func TestStrictValidation(t *testing.T) {
	api.DisableConfigDir()
	for name, doc := range map[string]*draw.Document{"packet": packet(), "empty page": onA4()} {
		conf := model.NewDefaultConfiguration()
		conf.ValidationMode = model.ValidationStrict
		if err := api.Validate(bytes.NewReader(write(t, doc)), conf); err != nil {
			t.Errorf("%s: %v", name, err)
		}
	}
}

// The bytes depend on the document alone: not on the clock, the order of a map
// or the number of processors.
func TestSameBytes(t *testing.T) {
	first := write(t, packet())
	defer runtime.GOMAXPROCS(runtime.GOMAXPROCS(0))
	for _, processors := range []int{1, 2, 7} {
		runtime.GOMAXPROCS(processors)
		if !bytes.Equal(first, write(t, packet())) {
			t.Fatalf("on %d processors the same document gave other bytes", processors)
		}
	}
	if !bytes.Contains(first, []byte("D:20240229000000")) {
		t.Error("the file's date is not that of the document")
	}
	if undated := write(t, onA4()); !bytes.Contains(undated, []byte("D:20000101000000")) {
		t.Error("a document without a date is not dated by the constant")
	}
}

// A drawing that was taken over beforehand looks as if drawn with its page,
// wherever on it, and whatever was set before it.
func TestPressed(t *testing.T) {
	t.Parallel()
	page := packet().Pages[0].Drawing
	grey := draw.Shape{Path: line(10, 10, 200, 280), Stroke: draw.Grey, WidthMm: 2, DashMm: []float64{5, 5}}
	var press pdf.Press
	taken, err := press.Take(&page)
	if err != nil {
		t.Fatal(err)
	}
	for name, m := range map[string]canvas.Matrix{"in place": canvas.Identity, "moved": canvas.Identity.Translate(7, -5), "moved up": canvas.Identity.Translate(0, 9), "moved along": canvas.Identity.Translate(9, 0), "turned": canvas.Identity.Translate(100, 100).Rotate(30).Scale(0.7, 0.8)} {
		pictures := make([][]byte, 2)
		for i, inner := range []draw.Drawing{page, {Items: []draw.Item{taken}}} {
			doc := onA4(grey, draw.Group{Drawing: &inner, Transform: m}, grey)
			var b bytes.Buffer
			if err := press.Write(&b, doc); err != nil {
				t.Fatal(err)
			}
			pictures[i] = measure.Open(t, b.Bytes()).Render(0, 60).Pix
		}
		off := 0
		for i, v := range pictures[0] {
			off += max(int(v), int(pictures[1][i])) - min(int(v), int(pictures[1][i]))
		}
		// The engine rounds places in another order: a letter may stand a
		// fraction of a dot off.
		if off > 2*len(pictures[0])/1000 {
			t.Errorf("%s: the pressed page looks different, by %d in %d dots", name, off, len(pictures[0]))
		}
	}
	if err := pdf.Write(io.Discard, onA4(draw.Pressed{By: "another device's"})); err == nil {
		t.Error("another device's drawing was taken")
	}
	if _, err := press.Take(&draw.Drawing{Items: []draw.Item{draw.Text{Content: "漢", SizeMm: 3}}}); err == nil {
		t.Error("a character that the face lacks was taken")
	}
}

// Links lie over the rectangle about their path, wherever their drawing was put,
// and lead to the page of the first bookmark of their title; those to nothing are
// left out.
func TestLinks(t *testing.T) {
	t.Parallel()
	square := func(to string) draw.Link { return draw.Link{Path: canvas.Rectangle(10, 20).Translate(5, 5), To: to} }
	inner := &draw.Drawing{Items: []draw.Item{square("moved")}}
	turned := &draw.Drawing{Items: []draw.Item{square("Löcher (8)")}}
	var press pdf.Press
	taken, err := press.Take(&draw.Drawing{Items: []draw.Item{draw.Group{Drawing: inner, Transform: canvas.Identity.Translate(1, 2)}}})
	if err != nil {
		t.Fatal(err)
	}
	doc := onA4(
		square("plain"), square("nowhere"),
		draw.Group{Drawing: &draw.Drawing{Items: []draw.Item{taken}}, Transform: canvas.Identity.Translate(10, 20)},
		draw.Group{Drawing: turned, Transform: canvas.Identity.Translate(100, 100).Rotate(90)},
	)
	for _, title := range []string{"moved", "plain", "Löcher (8)", "plain"} {
		doc.Pages = append(doc.Pages, draw.Page{WidthMm: 210, HeightMm: 297, Bookmarks: []draw.Bookmark{{Title: title}}})
	}
	var b bytes.Buffer
	if err := press.Write(&b, doc); err != nil {
		t.Fatal(err)
	}
	api.DisableConfigDir()
	if err := api.Validate(bytes.NewReader(b.Bytes()), model.NewDefaultConfiguration()); err != nil {
		t.Error(err)
	}
	file := b.String()
	var pages []string // the numbers of their objects
	for _, m := range regexp.MustCompile(`/Kids \[([\d R]*)\]`).FindAllStringSubmatch(file, -1) {
		pages = strings.Split(strings.TrimSuffix(m[1], " 0 R "), " 0 R ")
	}
	var got []string
	for _, m := range regexp.MustCompile(`/Subtype /Link /F 4 /Border \[0 0 0\] /Rect \[([^]]*)\] /Contents \S.* /Dest \[(\d+) 0 R /Fit\]`).FindAllStringSubmatch(file, -1) {
		place := ""
		for _, v := range strings.Fields(m[1]) {
			pt, err := strconv.ParseFloat(v, 64)
			if err != nil {
				t.Fatal(err)
			}
			place += fmt.Sprintf("%.2f ", pt/72*25.4)
		}
		got = append(got, place+"page "+strconv.Itoa(slices.Index(pages, m[2])))
	}
	if want := []string{"5.00 5.00 15.00 25.00 page 2", "16.00 27.00 26.00 47.00 page 1", "75.00 105.00 95.00 115.00 page 3"}; !slices.Equal(got, want) {
		t.Errorf("links %q, want %q", got, want)
	}
}

// What ISO 19005-2 (PDF/A-2, level B) asks for and can be seen in the bytes;
// the validator of TestStrictValidation judges the rest of the format.
func TestKeptForLong(t *testing.T) {
	t.Parallel()
	file := string(write(t, packet()))
	head, rest, _ := strings.Cut(file, "\n")
	if head != "%PDF-1.7" || rest[0] != '%' || strings.IndexFunc(rest[1:5], func(r rune) bool { return r < 128 }) >= 0 {
		t.Errorf("the file begins with %q", file[:16])
	}
	if n := strings.Count(file, "%%EOF"); n != 1 {
		t.Errorf("the file ends %d times", n)
	}
	for _, want := range []string{
		"<pdfaid:part>2</pdfaid:part>", "<pdfaid:conformance>B</pdfaid:conformance>", "/S /GTS_PDFA1",
		"Clay mill (A\\1) – Prüfung</rdf:li>", ">Flange</rdf:li>", ">de-CH</rdf:li>", "<xmp:CreateDate>2024-02-29T00:00:00Z<", "<pdf:Producer>centrepop<",
		"/CreationDate (D:20240229000000+00'00')", "/Producer (centrepop)", "/Subject (Flange)",
	} {
		if !strings.Contains(file, want) {
			t.Errorf("the file holds no %q", want)
		}
	}
	names := regexp.MustCompile(`/(?:BaseFont|FontName) /([A-Z]{6})\+DejaVuSansCondensed(-Bold)?\s`).FindAllStringSubmatch(file, -1)
	if len(names) != 6 || names[0][1] == names[5][1] {
		t.Errorf("the fonts are called %q", names)
	}
	for _, length := range regexp.MustCompile(`/Length (\d+)>>`).FindAllStringSubmatch(file, -1) {
		if n, err := strconv.Atoi(length[1]); err != nil || n > 20_000 {
			t.Errorf("a stream has %s bytes", length[1])
		}
	}
}

func TestDocumentEntries(t *testing.T) {
	file := write(t, packet())
	if !bytes.HasPrefix(file, []byte("%PDF-1.7\n")) {
		t.Errorf("the file begins with %.9q", file)
	}
	if !bytes.Contains(file, []byte("/Lang (de-CH)")) {
		t.Error("no language")
	}
	d := measure.Open(t, file)
	if d.Pages() != 12 {
		t.Fatalf("%d pages, want 12", d.Pages())
	}
	for i, want := range [][2]float64{{210, 297}, {279.4, 215.9}} {
		if w, h := d.Size(i); math.Abs(w-want[0]) > 0.002 || math.Abs(h-want[1]) > 0.002 {
			t.Errorf("page %d is %v x %v, want %v", i, w, h, want)
		}
	}
	if d.ScalesWhenPrinted() {
		t.Error("the file lets viewers scale it")
	}
	if a, b := d.Label(0), d.Label(11); a != "F-1" || b != "§ l" {
		t.Errorf("labels %q and %q", a, b)
	}
	if got := d.Meta("Title"); got != "Clay mill (A\\1) – Prüfung" {
		t.Errorf("title %q", got)
	}
	marks := d.Bookmarks()
	if len(marks) != 12 {
		t.Fatalf("%d bookmarks at the top, want 12", len(marks))
	}
	for i, m := range marks {
		if m.Title != fmt.Sprintf("Sheet %d", i+1) || m.Page != i || len(m.Children) != 2 {
			t.Errorf("bookmark %d is %+v", i, m)
			continue
		}
		if c := m.Children; c[0].Title != "Löcher (8)" || c[1].Title != "Rand" || len(c[0].Children) != 1 || c[0].Children[0].Title != "⌀ 18" || c[0].Children[0].Page != i {
			t.Errorf("below bookmark %d lies %+v", i, c)
		}
	}
}

// Lines of 100 mm, across and up the page, upright and through a turned
// group, measured by the other engine.
func TestTrueSize(t *testing.T) {
	inner := &draw.Drawing{}
	inner.Add(stroke(line(0, 0, 100, 0)))
	d := measure.Open(t, write(t, onA4(
		stroke(line(20, 20, 120, 20)),
		stroke(line(13.37, 30, 13.37, 130)),
		draw.Group{Drawing: inner, Transform: canvas.Identity.Translate(100, 150).Rotate(33)},
	)))
	paths := d.Paths(0)
	if len(paths) != 3 {
		t.Fatalf("%d paths, want 3", len(paths))
	}
	sin, cos := math.Sincos(33 * math.Pi / 180)
	for i, want := range [][2]measure.Point{
		{{X: 20, Y: 20}, {X: 120, Y: 20}},
		{{X: 13.37, Y: 30}, {X: 13.37, Y: 130}},
		{{X: 100, Y: 150}, {X: 100 + 100*cos, Y: 150 + 100*sin}},
	} {
		s := paths[i][1]
		if s.Start.Dist(want[0]) > 0.001 || s.End.Dist(want[1]) > 0.001 {
			t.Errorf("line %d runs from %v to %v, want %v", i, s.Start, s.End, want)
		}
		if math.Abs(s.Length()-100) > 0.001 {
			t.Errorf("line %d is %.5f mm long", i, s.Length())
		}
		if math.Abs(s.WidthMm-0.25) > 0.0001 {
			t.Errorf("line %d is %.5f mm wide", i, s.WidthMm)
		}
	}
}

func TestCirclesStayRound(t *testing.T) {
	d := measure.Open(t, write(t, onA4(
		stroke(canvas.Circle(9).Translate(50, 60)),
		stroke(canvas.Circle(500).Translate(100, 100)),
		stroke(canvas.Ellipse(20, 10)),
	)))
	circles := d.Circles(0)
	if len(circles) != 2 {
		t.Fatalf("circles %+v, want two", circles)
	}
	for i, want := range []measure.Circle{
		{Centre: measure.Point{X: 50, Y: 60}, DiameterMm: 18},
		{Centre: measure.Point{X: 100, Y: 100}, DiameterMm: 1000},
	} {
		c := circles[i]
		if c.Centre.Dist(want.Centre) > 0.001 || math.Abs(c.DiameterMm-want.DiameterMm) > 0.005 {
			t.Errorf("circle %+v, want %+v", c, want)
		}
	}
}

// Any arc the path type holds lies, as drawn, on its ellipse and passes the
// middle of the true arc.
func TestArcs(t *testing.T) {
	type arc struct{ rx, ry, rot, from, to float64 }
	var arcs []arc
	for _, from := range []float64{0, 37, 180, 300} {
		for _, turn := range []float64{5, 90, 180, 200, 359, -5, -90, -180, -359} {
			arcs = append(arcs, arc{rx: 30, ry: 30, rot: 0, from: from, to: from + turn}, arc{rx: 40, ry: 15, rot: 25, from: from, to: from + turn})
		}
	}
	doc := onA4()
	for _, a := range arcs {
		doc.Pages[0].Drawing.Add(stroke(canvas.EllipticalArc(a.rx, a.ry, a.rot, a.from, a.to).Translate(100, 150)))
	}
	paths := measure.Open(t, write(t, doc)).Paths(0)
	if len(paths) != len(arcs) {
		t.Fatalf("%d paths, want %d", len(paths), len(arcs))
	}
	for i, a := range arcs {
		// EllipticalArc starts at the origin: find the centre it then has.
		on := func(deg float64) measure.Point {
			s, c := math.Sincos(deg * math.Pi / 180)
			sr, cr := math.Sincos(a.rot * math.Pi / 180)
			return measure.Point{X: cr*a.rx*c - sr*a.ry*s, Y: sr*a.rx*c + cr*a.ry*s}
		}
		first := on(a.from)
		at := func(deg float64) measure.Point {
			p := on(deg)
			return measure.Point{X: paths[i][0].End.X + p.X - first.X, Y: paths[i][0].End.Y + p.Y - first.Y}
		}
		segs := paths[i][1:]
		if got, want := segs[len(segs)-1].End, at(a.to); got.Dist(want) > 0.001 {
			t.Errorf("%+v ends at %v, want %v", a, got, want)
		}
		for k, s := range segs {
			mid := a.from + (a.to-a.from)*(float64(k)+0.5)/float64(len(segs))
			if got, want := s.At(0.5), at(mid); got.Dist(want) > 0.001 {
				t.Errorf("%+v passes %v, want %v", a, got, want)
			}
		}
	}
}

func TestTextPlaces(t *testing.T) {
	const content = "Ø 12 AVAV"
	width := typeface.WidthMm(content, 6, false)
	for _, c := range []struct {
		align draw.Align
		deg   float64
		shift float64
	}{{draw.Left, 0, 0}, {draw.Centre, 0, width / 2}, {draw.Right, 40, width}, {draw.Left, 90, 0}} {
		item := draw.Text{XMm: 100, YMm: 150, SizeMm: 6, Align: c.align, RotateDeg: c.deg, Content: content}
		d := measure.Open(t, write(t, onA4(item)))
		if got := strings.TrimSpace(d.Text(0)); c.deg == 0 && got != content {
			t.Errorf("the text is %q", got)
		}
		chars := d.Chars(0)
		if len(chars) < 7 {
			t.Fatalf("characters %+v", chars)
		}
		sin, cos := math.Sincos(c.deg * math.Pi / 180)
		want := measure.Point{X: 100 - c.shift*cos, Y: 150 - c.shift*sin}
		if got := chars[0].Origin; got.Dist(want) > 0.001 {
			t.Errorf("%+v starts at %v, want %v", c, got, want)
		}
		// The last character stands behind all others; widths in the file
		// are rounded to a thousandth of the size.
		ahead := width - typeface.WidthMm("V", 6, false)
		want.X, want.Y = want.X+ahead*cos, want.Y+ahead*sin
		if got := chars[len(chars)-1].Origin; got.Dist(want) > 0.03 {
			t.Errorf("%+v: the last character starts at %v, want %v", c, got, want)
		}
		if off := math.Abs(chars[0].AngleDeg - c.deg); off > 0.01 && off < 359.99 {
			t.Errorf("text turned %v runs at %v", c.deg, chars[0].AngleDeg)
		}
	}
}

// Tones, clip, transform and text seen in the drawn picture.
func TestTonesAndClip(t *testing.T) {
	inner := &draw.Drawing{}
	inner.Add(draw.Shape{Path: canvas.Rectangle(100, 100), Fill: draw.Grey})
	img := measure.Open(t, write(t, onA4(
		draw.Group{Drawing: inner, Transform: canvas.Identity.Translate(50, 100), Clip: canvas.Rectangle(20, 200).Translate(60, 0)},
		draw.Shape{Path: canvas.Rectangle(10, 10).Translate(150, 250), Fill: draw.Pale},
		draw.Text{XMm: 20, YMm: 20, SizeMm: 40, Content: "■"},
	))).Render(0, 127) // 5 px to the mm
	grey := func(xMm, yMm float64) int {
		r, _, _, _ := img.At(int(xMm*5), int((297-yMm)*5)).RGBA()
		return int(math.Round(float64(r) / 0xFFFF * 100))
	}
	for _, c := range []struct {
		x, y float64
		want int
	}{{70, 150, 45}, {55, 150, 100}, {85, 150, 100}, {70, 90, 100}, {155, 255, 85}, {30, 32, 0}, {10, 10, 100}} {
		if got := grey(c.x, c.y); got < c.want-1 || got > c.want+1 {
			t.Errorf("at %v, %v the page is %d %% light, want %d", c.x, c.y, got, c.want)
		}
	}
}

func TestRefused(t *testing.T) {
	nan, inf := math.NaN(), math.Inf(1)
	bad := &canvas.Path{}
	bad.MoveTo(0, 0)
	bad.LineTo(nan, 1)
	deep := &draw.Drawing{}
	for range 40 {
		outer := &draw.Drawing{}
		outer.Place(deep, 1, 1)
		deep = outer
	}
	withPage := func(p draw.Page) *draw.Document {
		return &draw.Document{Pages: []draw.Page{p}}
	}
	for name, doc := range map[string]*draw.Document{
		"nil document":   nil,
		"no page":        {},
		"zero size":      withPage(draw.Page{HeightMm: 1}),
		"NaN size":       withPage(draw.Page{WidthMm: nan, HeightMm: 1}),
		"huge size":      withPage(draw.Page{WidthMm: 6000, HeightMm: 1}),
		"bad date":       {Date: "2023-02-29", Pages: onA4().Pages},
		"bad language":   {Language: "en)", Pages: onA4().Pages},
		"deep bookmark":  withPage(draw.Page{WidthMm: 1, HeightMm: 1, Bookmarks: []draw.Bookmark{{Title: "x", Level: 1}}}),
		"minus bookmark": withPage(draw.Page{WidthMm: 1, HeightMm: 1, Bookmarks: []draw.Bookmark{{Title: "x", Level: -1}}}),
		"NaN path":       onA4(stroke(bad)),
		"far path":       onA4(stroke(line(0, 0, 1e6, 0))),
		"no width":       onA4(draw.Shape{Path: line(0, 0, 1, 1), Stroke: draw.Black}),
		"infinite width": onA4(draw.Shape{Path: line(0, 0, 1, 1), Stroke: draw.Black, WidthMm: inf}),
		"minus dash":     onA4(draw.Shape{Path: line(0, 0, 1, 1), Stroke: draw.Black, WidthMm: 1, DashMm: []float64{-1, 2}}),
		"empty dashes":   onA4(draw.Shape{Path: line(0, 0, 1, 1), Stroke: draw.Black, WidthMm: 1, DashMm: []float64{0, 0}}),
		"no character":   onA4(draw.Text{Content: "漢", SizeMm: 3}),
		"text size":      onA4(draw.Text{Content: "a"}),
		"text place":     onA4(draw.Text{Content: "a", SizeMm: 3, XMm: inf}),
		"flat group":     onA4(draw.Group{Drawing: &draw.Drawing{}}),
		"deep groups":    onA4(draw.Group{Drawing: deep, Transform: canvas.Identity}),
		"unknown item":   onA4(nil),
	} {
		var b bytes.Buffer
		if err := pdf.Write(&b, doc); err == nil {
			t.Errorf("%s: no error", name)
		} else if b.Len() > 0 {
			t.Errorf("%s: %d bytes written beside the error %v", name, b.Len(), err)
		}
	}
	second := onA4()
	second.Pages = append(second.Pages, onA4(nil).Pages...)
	if err := pdf.Write(io.Discard, second); err == nil || !strings.Contains(err.Error(), "page 2: ") {
		t.Errorf("an unknown item on the second page: %v", err)
	}
}

type full struct{}

var errFull = errors.New("disk full")

func (full) Write([]byte) (int, error) { return 0, errFull }

func TestWriterFails(t *testing.T) {
	if err := pdf.Write(full{}, onA4()); !errors.Is(err, errFull) {
		t.Errorf("error %v, want the writer's", err)
	}
}

// Whatever the texts, the file is valid and the title comes back whole, but
// for control characters.
func TestAnyText(t *testing.T) {
	api.DisableConfigDir()
	texts := []string{"", "\x1b\x00\n", "a(b\\", "😀漢é", "\xff", "\u202e"}
	for seed := range 20 {
		texts = append(texts, rapid.StringN(0, 12, -1).Example(seed))
	}
	for _, text := range texts {
		// The validator takes U+E000 for half of a surrogate pair.
		text = strings.ReplaceAll(text, "\uE000", "")
		doc := onA4(draw.Text{SizeMm: 3, Content: typeface.Printable(text)})
		doc.Title = text
		doc.Pages[0].Label = text
		doc.Pages[0].Bookmarks = []draw.Bookmark{{Title: text}}
		file := write(t, doc)
		conf := model.NewDefaultConfiguration()
		conf.ValidationMode = model.ValidationStrict
		if err := api.Validate(bytes.NewReader(file), conf); err != nil {
			t.Errorf("%q: %v", text, err)
		}
		want := strings.Map(func(r rune) rune {
			if unicode.IsControl(r) {
				return ' '
			}
			return r
		}, text)
		if got := measure.Open(t, file).Meta("Title"); got != want {
			t.Errorf("title %q came back as %q", text, got)
		}
	}
}

// TestTrailer: the size is one more than the highest object number, and each entry
// of the table is the place of its object (ISO 32000-1, 7.5.4 and 7.5.5).
func TestTrailer(t *testing.T) {
	t.Parallel()
	out := write(t, onA4(stroke(line(10, 10, 50, 50)), draw.Text{XMm: 20, YMm: 20, SizeMm: 4, Content: "Text"}))
	highest := 0
	for _, m := range regexp.MustCompile(`(?m)^(\d+) 0 obj`).FindAllSubmatchIndex(out, -1) {
		n, _ := strconv.Atoi(string(out[m[2]:m[3]]))
		highest = max(highest, n)
		if entry := fmt.Sprintf("%010d 00000 n \n", m[0]); !regexp.MustCompile(regexp.QuoteMeta(entry)).Match(out) {
			t.Errorf("object %d at %d is not in the table", n, m[0])
		}
	}
	// Both parts of the identifier are alike, 16 bytes (ISO 32000-1, 14.4: an MD5 has as many).
	if m := regexp.MustCompile(`/ID \[<([0-9a-f]*)> <([0-9a-f]*)>\]`).FindSubmatch(out); m == nil || len(m[1]) != 32 || string(m[1]) != string(m[2]) {
		t.Errorf("identifier %q", m)
	}
	for what, want := range map[string]int{`xref\n0 (\d+)\n`: highest + 1, `trailer\n<</Size (\d+)`: highest + 1, `startxref\n(\d+)\n`: regexp.MustCompile(`(?m)^xref`).FindIndex(out)[0]} {
		m := regexp.MustCompile(what).FindSubmatch(out)
		if m == nil || string(m[1]) != fmt.Sprint(want) {
			t.Errorf("%s: %q, want %d", what, m, want)
		}
	}
}
