package geom

// Span is a stretch of a line in mm: from one place on it to another that does not lie before.
type Span struct{ FromMm, ToMm float64 }

// Between is the stretch between two places, whichever of them is the first.
func Between(aMm, bMm float64) Span { return Span{min(aMm, bMm), max(aMm, bMm)} }

// Around is the stretch that reaches so far to either side of a place.
func Around(mm, halfMm float64) Span { return Span{mm - halfMm, mm + halfMm} }

// LengthMm is how long it is.
func (s Span) LengthMm() float64 { return s.ToMm - s.FromMm }

// MidMm is where its middle lies.
func (s Span) MidMm() float64 { return (s.FromMm + s.ToMm) / 2 }

// OnMm is how much of it lies on another, in mm; less than nothing is the gap between the two.
func (s Span) OnMm(o Span) float64 { return min(s.ToMm, o.ToMm) - max(s.FromMm, o.FromMm) }

// Meets tells whether some of it lies on another, or within it, by more than rounding: not if the two touch.
func (s Span) Meets(o Span) bool { return Over(s.ToMm, o.FromMm) && Over(o.ToMm, s.FromMm) }

// Holds tells whether a place lies in it or at one of its ends.
func (s Span) Holds(mm float64) bool { return !Over(s.FromMm, mm) && !Over(mm, s.ToMm) }
