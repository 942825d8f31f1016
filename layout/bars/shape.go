package bars

// Shape names a cross section.
type Shape string

// The shapes.
const (
	Square    Shape = "square"
	Rectangle Shape = "rectangle"
	Round     Shape = "round"
	Angle     Shape = "angle"
	Channel   Shape = "channel"
	Flat      Shape = "flat"
)

// Side is a side of a bar that lies level: what is seen of it is its front.
type Side string

// The sides.
const (
	Front  Side = "front"
	Back   Side = "back"
	Top    Side = "top"
	Bottom Side = "bottom"
)

// Section is a cross section. Y goes up from the middle of the width, and depth goes
// back from the front. An angle and a parallel channel of a listed size have their root
// and toe radii; the flanges of a UPN are drawn parallel, and its fillets left out: what
// these add, the slope of its flanges takes off (within half a per cent of its mass).
type Section struct {
	Shape    Shape
	WidthMm  float64 // up
	DepthMm  float64 // behind the front
	WallMm   float64 // of a tube, an angle, a channel's web; 0 is solid
	FlangeMm float64 // of a channel
	CornerMm float64 // outside, of a square or rectangular tube; 0 is that of its wall
	Open     Side    // of a channel: where the flanges point
	Inch     bool    // a size in inches
}

// Hollow tells whether the section is closed round a hollow.
func (s Section) Hollow() bool {
	return s.WallMm > 0 && (s.Shape == Square || s.Shape == Rectangle || s.Shape == Round)
}
