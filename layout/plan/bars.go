package plan

// BarPlan is a bar of a frame as it is sawn, marked out and drilled. It lies level: x
// along it from the middle between its outermost points, y up from the middle.
type BarPlan struct {
	Section  string      `json:"section"`            // "square tube 50 × 50 × 4"
	Profile  []Contour   `json:"-"`                  // the section, seen from the left end: x to the back, y up
	Outline  Contour     `json:"-"`                  // the front view
	WidthMm  float64     `json:"width_mm"`           // up
	DepthMm  float64     `json:"depth_mm"`           // to the back
	LengthMm float64     `json:"length_mm"`          // between the outermost points
	TopMm    float64     `json:"top_mm"`             // from point to point along the top
	BottomMm float64     `json:"bottom_mm"`          // and along the bottom
	Length   string      `json:"length"`             // the same, written
	Top      string      `json:"top,omitempty"`      // empty where both are the length
	Bottom   string      `json:"bottom,omitempty"`   //
	Limits   string      `json:"limits,omitempty"`   // of the length
	Short    string      `json:"short,omitempty"`    // how much shorter it is sawn than drawn, a sentence
	Left     BarEnd      `json:"left"`               //
	Right    BarEnd      `json:"right"`              //
	Holes    []BarHole   `json:"holes,omitempty"`    //
	Measures []BarRecord `json:"measures,omitempty"` // besides the length
}

// BarEnd is how an end is cut.
type BarEnd struct {
	Name   string  `json:"end"` // left or right
	Cut    string  `json:"cut"` // "square", "45°, long point at the bottom"
	SawDeg float64 `json:"saw_deg"`
	Long   string  `json:"long,omitempty"` // top or bottom
	Cope   string  `json:"cope,omitempty"` // how it is hollowed, one line; empty where it is not
}

// BarHole is a hole or a slot on a side of a bar.
type BarHole struct {
	N          int     `json:"n"`
	Group      string  `json:"group"`
	Side       string  `json:"side"` // front, back, top or bottom
	XMm        float64 `json:"x_mm"` // along the bar in its front view
	YMm        float64 `json:"y_mm"` // across the side, from its middle, as seen
	DiameterMm float64 `json:"diameter_mm"`
	EndMm      XY      `json:"end_mm,omitzero"` // of a slot: from its middle to the centre of an end, as XMm and YMm; else none
	Size       string  `json:"size"`
	From       string  `json:"from"` // "50 from L", of the end that is chalked so
	Up         string  `json:"up"`   // "25 from the lower edge"
}

// BarRecord is a length of a bar to measure.
type BarRecord struct {
	What   string `json:"what"`
	Wanted string `json:"wanted"`
	Limits string `json:"limits"`
}

// BarStock is what the bars of one section and material are sawn from.
type BarStock struct {
	Section  string     `json:"section"`
	Material string     `json:"material"`
	BarMm    float64    `json:"bar_mm"`
	KerfMm   float64    `json:"kerf_mm"`
	TrimMm   float64    `json:"trim_mm"`
	Bars     []StockBar `json:"bars,omitempty"`
	Source   string     `json:"source"`
}

// StockBar is one bar as bought, with what is sawn from it in order.
type StockBar struct {
	Cuts     []StockCut `json:"cuts"`
	OffcutMm float64    `json:"offcut_mm"`
}

// StockCut is a piece on a bar. Turned lies top side down, Reversed end for end; Shared
// says that the saw cut before it is its own first one.
type StockCut struct {
	Part     string  `json:"part"`
	Name     string  `json:"title"`
	FromMm   float64 `json:"from_mm"` // of its outermost point, from the end of the bar
	LengthMm float64 `json:"length_mm"`
	StartDeg float64 `json:"start_deg"` // as it lies: positive where its top sticks out
	EndDeg   float64 `json:"end_deg"`
	Turned   bool    `json:"turned,omitempty"`
	Reversed bool    `json:"reversed,omitempty"`
	Shared   bool    `json:"shared,omitempty"`
}
