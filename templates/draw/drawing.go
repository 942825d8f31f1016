// Package draw is what every sheet is made of: shapes and text in millimetres,
// blocks and tables that flow over pages, the marks of the trade, the frame of
// a sheet and its title block. It knows no part and no plan.
//
// x is to the right and y up; a page's origin is its lower left corner. Text
// sizes are em sizes in millimetres, nothing smaller than SmallMm.
package draw

import "github.com/tdewolff/canvas"

// Tone is the lightness of a stroke or fill. Nothing is told by tone alone:
// every sheet must survive a black-and-white printer and a photocopier.
type Tone uint8

// The tones, from darkest to lightest. None draws nothing.
const (
	None  Tone = iota
	Black      // 0 % light: outlines, text
	Grey       // 45 % light: construction lines, dimensions
	Pale       // 85 % light: section fill, table heads
	White      // paper: masks what lies under it
)

// Layers group the items of a drawing for the cutting files. Sheets use "".
const (
	LayerCut   = "cut"   // contours the cutter follows
	LayerMark  = "mark"  // pop marks and scribed lines, not cut through
	LayerNotes = "notes" // text and dimensions, never cut
)

// Item is one thing drawn: a Shape, a Text, a Link, a Group or a Pressed. Items are
// drawn in the order of their list, later over earlier.
type Item interface{ item() }

// Shape is a path in millimetres, y up, arcs kept as arcs. It is filled with
// Fill (even-odd is not used: the non-zero rule is), then stroked with Stroke
// at WidthMm. DashMm alternates drawn and skipped lengths in millimetres;
// nil is a full line. Ends are butt, joins mitred.
type Shape struct {
	Path    *canvas.Path
	Fill    Tone
	Stroke  Tone
	WidthMm float64
	DashMm  []float64
	Layer   string
}

// Align says which point of a text's baseline stands at its position.
type Align uint8

// The alignments along the baseline.
const (
	Left Align = iota
	Centre
	Right
)

// Text is one line of text. XMm, YMm is the baseline point chosen by Align;
// SizeMm is the em size in millimetres (1 pt = 0.3528 mm); RotateDeg turns it
// anticlockwise about that point. A character that the typeface lacks is an
// error of the device.
type Text struct {
	XMm, YMm  float64
	SizeMm    float64
	Bold      bool
	Align     Align
	RotateDeg float64
	Tone      Tone // None means Black
	Content   string
	Layer     string
	Heading   uint8 // 1 for the title of a page, 2 for what lies below it; 0 for other text
}

// Group draws a drawing through an affine transform (applied to its
// millimetre coordinates) and, where Clip is not nil, only inside that closed
// path, which is given in the coordinates outside the transform.
type Group struct {
	Drawing   *Drawing
	Transform canvas.Matrix
	Clip      *canvas.Path
}

// OnlyMoves tells whether a transform leaves size and direction as they are.
func OnlyMoves(m canvas.Matrix) bool {
	m[0][2], m[1][2] = 0, 0
	return m == canvas.Identity
}

// Link is a place that leads to a bookmark of the document when it is clicked,
// where the device can: the inside of a closed path. Nothing is drawn. One that
// names no bookmark of the document leads nowhere.
type Link struct {
	Path *canvas.Path
	To   string // the bookmark's title
}

// Pressed is a drawing that a device took over before the rest of its page was
// known, in the device's own form. Only that device can draw it.
type Pressed struct{ By any }

func (Pressed) item() {}

func (Shape) item() {}

func (Text) item() {}

func (Link) item() {}

func (Group) item() {}

// Drawing is a list of items in millimetres, x right, y up. Where the origin
// lies is said by the function that returns the drawing.
type Drawing struct{ Items []Item }

// Add appends items on top of what is drawn.
func (d *Drawing) Add(items ...Item) { d.Items = append(d.Items, items...) }

// Place appends the drawing e, moved by xMm, yMm.
func (d *Drawing) Place(e *Drawing, xMm, yMm float64) {
	d.Add(Group{Drawing: e, Transform: canvas.Identity.Translate(xMm, yMm)})
}

// Page is one sheet of paper. The drawing's origin is the lower left corner
// of the paper. Label is the printed page label; Bookmarks point here.
type Page struct {
	WidthMm, HeightMm float64
	Drawing           Drawing
	Label             string
	Bookmarks         []Bookmark
}

// Bookmark is an entry of the outline; Level 0 is outermost, and an entry may
// only be one level deeper than the entry before it.
type Bookmark struct {
	Title string
	Level int
}

// Document is a packet ready for a device. Date is YYYY-MM-DD or empty, and
// comes from the job: no output holds the clock.
type Document struct {
	Title, Subject, Language, Date string
	Pages                          []Page
	TwoSided                       bool // to be printed on both sides of the paper
}

// Marks are the pages of the bookmarks by their titles, of the first of each,
// from 0: where a Link leads.
func (doc *Document) Marks() map[string]int {
	to := map[string]int{}
	for i, page := range doc.Pages {
		for _, b := range page.Bookmarks {
			if _, known := to[b.Title]; !known {
				to[b.Title] = i
			}
		}
	}
	return to
}
