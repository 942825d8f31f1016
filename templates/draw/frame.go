package draw

// Frame is a sheet of paper as it lies: width across, height up.
type Frame struct {
	WidthMm, HeightMm float64
	Name              string // A4, or the size
}

// The paper's edges, in millimetres. Office printers leave 3 to 6 mm blank.
const (
	MarginMm   = 8.0
	TitleRowMm = 8.5
	titleGapMm = 2.5
	oneRowMm   = 185.0 // from this paper width on the title block is one row
)

// Body is the room above the title block and inside the margins.
func (f Frame) Body() Rect {
	return Rect{MarginMm, MarginMm + f.titleMm() + titleGapMm, f.WidthMm - MarginMm, f.HeightMm - MarginMm}
}

func (f Frame) titleMm() float64 {
	if f.WidthMm >= oneRowMm {
		return TitleRowMm
	}
	return 2 * TitleRowMm
}

// Turned is the same paper on its side.
func (f Frame) Turned() Frame { return Frame{f.HeightMm, f.WidthMm, f.Name} }
