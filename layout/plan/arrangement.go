package plan

// Arrangement is the whole machine cut along the axis of its largest assembly,
// seen from the right of its front view: x from its front to its back, y up.
type Arrangement struct {
	Cuts  []ArrangedPart `json:"cuts"`
	MinMm XY             `json:"min"`
	MaxMm XY             `json:"max"`
	// Beside are parts that stand in the machine and are not cut by this plane,
	// Floating those that no joint places; both by title.
	Beside   []string `json:"beside,omitempty"`
	Floating []string `json:"floating,omitempty"`
}

// ArrangedPart is the cut surface of one part or bought thing.
type ArrangedPart struct {
	Item  int    `json:"item"` // place of the part in the plan, from 1; 0 for what is bought
	Title string `json:"title,omitempty"`
	Loops [][]XY `json:"loops"` // closed; outer ones anticlockwise, holes clockwise
}
