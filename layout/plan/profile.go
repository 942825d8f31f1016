package plan

// Profile is what the cutter gets of one part: closed contours in the order
// of cutting, inside before outside, marks, and the numbers to quote and check
// by. Coordinates are those of the front face, which lies up on the cutter:
// millimetres, x right, y up, the part's origin. The flat blank of a formed
// part has those of its development, with the outside up.
type Profile struct {
	Part        string       `json:"part"`
	Title       string       `json:"title"`
	Revision    string       `json:"revision,omitempty"`
	Held        bool         `json:"not_released,omitempty"` // a stop of the review is open
	Quantity    int          `json:"quantity"`
	Copies      int          `json:"copies"` // equal pieces for one part
	Side        string       `json:"side"`   // what lies up: "front face up"
	Material    string       `json:"material"`
	StockText   string       `json:"stock"`
	Cut         string       `json:"cut"`
	ThicknessMm float64      `json:"thickness_mm"` // of the stock
	KerfMm      float64      `json:"kerf_mm"`      // 0: not stated
	Compensated bool         `json:"compensated"`
	Contours    []CutContour `json:"contours"`
	Marks       []CutMark    `json:"marks"`
	Lines       []CutLine    `json:"lines,omitempty"`    // to be scribed
	TopLine     []XY         `json:"top_line,omitempty"` // two points, from the edge inward; the scribed TOP
	MinMm       XY           `json:"min"`                // box of the contours as drawn
	MaxMm       XY           `json:"max"`
	BlankXMm    float64      `json:"blank_x_mm"` // least rectangle round the part as cut
	BlankYMm    float64      `json:"blank_y_mm"`
	LengthMm    float64      `json:"cut_length_mm"`
	Pierces     int          `json:"pierces"`
	AreaMm2     float64      `json:"net_area_mm2"`
	NetKg       float64      `json:"net_mass_kg"`   // of one part as cut; 0 if the material is not known
	GrossKg     float64      `json:"gross_mass_kg"` // of the blank rectangle
	Smallest    *CutSmallest `json:"smallest,omitempty"`
	LeastMm     float64      `json:"least_hole_mm"` // what may be pierced and cut
	LeastSource string       `json:"least_hole_source"`
	Web         *CutWeb      `json:"least_web,omitempty"`
	Notes       []string     `json:"notes,omitempty"`
}

// CutContour is a closed contour, N from 1 in the order of cutting. SizeText
// is the size of the finished cut, whatever the kerf; PathMm is what is drawn.
type CutContour struct {
	N        int     `json:"n"`
	Name     string  `json:"name"`
	Shape    string  `json:"shape"` // hole, slot, bore or outline
	SizeText string  `json:"size"`
	LengthMm float64 `json:"length_mm"`
	Path     Contour `json:"-"`
}

// CutMark is a centre to be marked and made later, and why it is not cut.
type CutMark struct {
	Name    string  `json:"name"`
	N       int     `json:"n"` // its number on the face
	AtMm    XY      `json:"at"`
	DrillMm float64 `json:"drill_mm"`
	Why     string  `json:"why"`
}

// CutSmallest is the smallest opening that is cut, against the thickness.
type CutSmallest struct {
	Name   string  `json:"name"`
	SizeMm float64 `json:"size_mm"` // diameter, or width of a slot
	Ratio  float64 `json:"times_thickness"`
}

// CutWeb is the narrowest strip of metal between two contours.
type CutWeb struct {
	Between string  `json:"between"`
	WidthMm float64 `json:"width_mm"`
	Ratio   float64 `json:"times_thickness"`
}

// CutLine is a line to be scribed on a blank: a seam, fold or division.
type CutLine struct {
	Name string  `json:"name"`
	Role string  `json:"role"`
	Path Contour `json:"-"`
}
