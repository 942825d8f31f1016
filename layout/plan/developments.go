package plan

// DevelopmentKind says what a flat pattern is for.
type DevelopmentKind string

// The kinds of flat pattern.
const (
	WrapPattern       DevelopmentKind = "wrap"       // paper round a cylinder, to mark its radial features
	BranchPattern     DevelopmentKind = "branch"     // paper round the end of a tube that is saddled to another
	MainPattern       DevelopmentKind = "main"       // paper on the tube that gets the hole for a branch
	ShellPattern      DevelopmentKind = "shell"      // the flat blank of a rolled tube
	ConePattern       DevelopmentKind = "cone"       // the flat blank of a rolled cone
	TransitionPattern DevelopmentKind = "transition" // the flat blank of a square-to-round
	FlightPattern     DevelopmentKind = "flight"     // the flat ring of one turn of an auger flight
	FoldPattern       DevelopmentKind = "fold"       // the flat blank of a folded part
	CopePattern       DevelopmentKind = "cope"       // paper round the end of a bar that is hollowed to sit on a round
)

// Blank tells whether it is cut from sheet; the others are paper to mark by.
func (k DevelopmentKind) Blank() bool {
	switch k {
	case ShellPattern, ConePattern, TransitionPattern, FlightPattern, FoldPattern:
		return true
	}
	return false
}

// Development is one flat pattern of a part at true size: paper to wrap round
// it, or the blank it is formed from. Millimetres, x right, y up, seen with
// the printed side out. See package layout/develop for the axes of each kind.
type Development struct {
	Name   string          `json:"name"` // unique in the part: "wrap-waist", "cone-1"
	Kind   DevelopmentKind `json:"kind"`
	Title  string          `json:"title"`
	On     string          `json:"on"`               // what it goes on, or is cut from
	Edge   string          `json:"edge,omitempty"`   // where its square edge y = 0 is set
	SeatAt string          `json:"-"`                // of a wrap, the face that the square edge looks to
	Beyond string          `json:"beyond,omitempty"` // what lies in the direction of y
	// Origin says where the ringed cross OriginMm of a hole in a main lies.
	Origin   string `json:"origin,omitempty"`
	OriginMm XY     `json:"origin_mm,omitzero"`
	// NoTemplate is why it is not printed unless all templates are asked for.
	NoTemplate string  `json:"no_template,omitempty"`
	Copies     int     `json:"copies"` // equal pieces to cut for one part
	PaperMm    float64 `json:"paper_mm,omitempty"`
	WrapMm     float64 `json:"wrap_mm,omitempty"`    // once round, without the tab
	WidthMm    float64 `json:"width_mm,omitempty"`   // of a wrap, along the axis
	ScaleMm    float64 `json:"per_deg_mm,omitempty"` // x for a degree of clock angle, negative where the angle grows to the left; 0 for none
	// ScaleFromDeg is the clock angle at x = 0.
	ScaleFromDeg float64 `json:"scale_from_deg,omitempty"`
	SeamDeg      float64 `json:"seam_deg,omitempty"`
	// MirrorMm is the x of the line about which edge and lines are mirror images,
	// laps left out; nil where there is none.
	MirrorMm *float64       `json:"mirror,omitempty"`
	Lines    []PatternLine  `json:"lines"`
	Blank    Contour        `json:"-"` // the edge with the lap
	Marks    []PatternMark  `json:"marks,omitempty"`
	Labels   []PatternLabel `json:"labels,omitempty"`
	MinMm    XY             `json:"min"` // box of the edges and the tab
	MaxMm    XY             `json:"max"`
	Sizes    []PatternValue `json:"sizes"`
	Tables   []PatternTable `json:"tables,omitempty"`
	Rules    []string       `json:"rules,omitempty"`
	Notes    []string       `json:"notes,omitempty"`
	Corners  string         `json:"corners,omitempty"`  // where those of the edge lie, a sentence that a print at 1:1 shows
	AreaMm2  float64        `json:"area_mm2,omitempty"` // of one piece, with its lap
}

// PatternLine is a line of a flat pattern. Role is a develop.Role in words:
// edge, cut, tab, seam, fold, division or top.
type PatternLine struct {
	Name string  `json:"name"`
	Role string  `json:"role"`
	Path Contour `json:"path"`           // closed for an outline, else open
	Text string  `json:"text,omitempty"` // to write along it: its ordinate or true length
}

// PatternMark is a numbered feature on a wrap template.
type PatternMark struct {
	N          int     `json:"n"`
	Name       string  `json:"name"`
	Size       string  `json:"size"`
	CentreMm   XY      `json:"centre"`
	MinMm      XY      `json:"min"` // box of its outline
	MaxMm      XY      `json:"max"`
	DiameterMm float64 `json:"diameter_mm,omitempty"` // of a drilled hole
}

// PatternLabel is a short text at a point of the pattern.
type PatternLabel struct {
	Text string `json:"text"`
	AtMm XY     `json:"at"`
}

// PatternValue is a named size, written in the job's units.
type PatternValue struct {
	Name string `json:"name"`
	Text string `json:"text"`
}

// PatternTable is a table to mark out with, in the job's units.
type PatternTable struct {
	Title string `json:"title"`
	// Drawn tells that a print at 1:1 shows all of it, so that it is needed only
	// where there is none.
	Drawn bool       `json:"drawn,omitempty"`
	Heads []string   `json:"heads"`
	Rows  [][]string `json:"rows"`
}
