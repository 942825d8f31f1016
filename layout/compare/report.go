package compare

import "centrepop/parts"

// Code names a kind of finding; codes do not change.
type Code string

// The codes.
const (
	Empty          Code = "empty"           // nothing to cut in the drawing
	Scale          Code = "scale"           // the whole is too large or too small
	Mirror         Code = "mirror"          // the whole is a mirror image
	Turned         Code = "turned"          // the whole is turned
	OutlineMissing Code = "outline-missing" // no closed contour can be the outline
	OutlineSize    Code = "outline-size"    // the outline has another width or height
	OutlineShape   Code = "outline-shape"   // the outline has the size but not the shape
	Open           Code = "open-contour"    // a contour does not close
	Doubled        Code = "doubled"         // a contour lies twice on the same place
	HoleMissing    Code = "hole-missing"
	HoleExtra      Code = "hole-extra"
	HoleMoved      Code = "hole-moved"
	HoleDiameter   Code = "hole-diameter"
	HoleShape      Code = "hole-shape" // a round hole is drawn as something else
	BlindCut       Code = "blind-cut"  // a blind hole or slot is cut through
	SlotMissing    Code = "slot-missing"
	SlotMoved      Code = "slot-moved"
	SlotShape      Code = "slot-shape"
	Extra          Code = "extra-contour" // a contour that is nothing of the part
	MarkMissing    Code = "mark-missing"  // others of its group are there
	MarkMoved      Code = "mark-moved"
	MarkExtra      Code = "mark-extra"
	LinesUnread    Code = "lines-not-compared" // on marking layers, neither marks nor the TOP line
	OthersUnread   Code = "not-compared"       // texts, pictures, hidden and clipped things
)

func (c Code) severity() string {
	switch c {
	case Doubled, MarkMissing, MarkMoved, MarkExtra, LinesUnread, OthersUnread:
		return "check"
	}
	return "stop"
}

// Finding is one difference. Line and Column point into the drawing; both are
// 0 for what is not there. N is the hole's number on the front, 0 for none.
type Finding struct {
	Code   Code    `json:"code"`
	What   string  `json:"what"`
	Group  string  `json:"group,omitempty"`
	N      int     `json:"n,omitempty"`
	Line   int     `json:"line,omitempty"`
	Column int     `json:"column,omitempty"`
	XMm    float64 `json:"x_mm"` // place on the part's front, as it should be where that is known
	YMm    float64 `json:"y_mm"`
	ByMm   float64 `json:"by_mm"` // how far moved, how much too large, how far off the shape
	Count  int     `json:"count,omitempty"`
	Drawn  *Shape  `json:"drawn,omitempty"`
	Wanted *Shape  `json:"wanted,omitempty"`
	// Severity is "stop" for what is cut wrong and "check" for what is marked
	// wrong, lies twice, or could not be compared.
	Severity string `json:"severity"`
}

// Shape is a contour in numbers: its box and middle, the diameter if it is
// round, the number of sides if only its corners are on that diameter.
type Shape struct {
	XMm        float64 `json:"x_mm"`
	YMm        float64 `json:"y_mm"`
	WidthMm    float64 `json:"width_mm,omitempty"`
	HeightMm   float64 `json:"height_mm,omitempty"`
	DiameterMm float64 `json:"diameter_mm,omitempty"`
	Sides      int     `json:"sides,omitempty"`
}

// Report is the answer.
type Report struct {
	Part        string    `json:"part"`
	Contours    int       `json:"contours"` // closed ones, marks aside
	Circles     int       `json:"circles"`
	Marks       int       `json:"marks"` // places marked
	OtherLines  int       `json:"lines"` // other lines on marking layers, such as TOP
	Layers      []string  `json:"marking_layers"`
	Texts       int       `json:"texts"`   // texts, pictures, hidden and clipped things: not compared
	Matched     int       `json:"matched"` // holes, slots and bore found in their place and size
	Wanted      int       `json:"wanted"`
	MarksRight  int       `json:"marks_matched"`
	MarksWanted int       `json:"marks_wanted"`
	LeftOut     []string  `json:"left_out"`   // marked, not cut: tapped, reamed or too small to cut
	Unmarked    []string  `json:"unmarked"`   // those of them that are not marked either
	Scale       float64   `json:"scale"`      // the drawing is this much too large; 1 if right
	TurnedDeg   float64   `json:"turned_deg"` // clockwise
	Mirrored    bool      `json:"mirrored"`
	ToleranceMm float64   `json:"tolerance_mm"`
	Findings    []Finding `json:"findings"`
	units       parts.Units
}
