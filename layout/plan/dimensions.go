package plan

// DimensionKind says what a dimension of the section measures.
type DimensionKind string

// The kinds: across, along a step, and over all.
const (
	DiameterDim DimensionKind = "diameter"
	LengthDim   DimensionKind = "length"
	OverallDim  DimensionKind = "overall"
	AtDim       DimensionKind = "at"     // a length at a clock angle that it names
	OffsetDim   DimensionKind = "offset" // of the middle of the back end from the axis, to TOP by RadiusMm
)

// Dimension is a size drawn on a part's section, from FromMm to ToMm of its
// axis. A length in brackets follows from the others and has no limits.
type Dimension struct {
	Kind     DimensionKind `json:"kind"`
	FromMm   float64       `json:"from_mm"`
	ToMm     float64       `json:"to_mm"`
	RadiusMm float64       `json:"radius_mm,omitempty"` // of a diameter, as drawn
	Inside   bool          `json:"inside,omitempty"`
	Text     string        `json:"text"`             // "Ø90 K7"
	Limits   string        `json:"limits,omitempty"` // "89.975 – 90.010"
}
