package threads

import (
	"math"
	"slices"
	"strconv"
	"strings"
)

// A Lead is what a thread that moves a load has beyond one that holds: trapezoidal and Acme.
// Lengths are mm.
type Lead struct {
	AngleDeg    float64 // between the flanks: 30 or 29
	Starts      int     // threads beside one another, 1 to 8
	LeftHand    bool
	LeadMm      float64    // travel of one turn: pitch times starts
	ClearanceMm float64    // between crest and root, at the least, on a side
	Screw, Nut  LeadLimits // of the thread outside and inside, each by its class
}

// LeadLimits are the limits of the diameters of one side, least and most in mm, and what cuts it.
type LeadLimits struct {
	Class   string     `json:"class"`
	Major   [2]float64 `json:"major_mm"` // that of a trapezoidal nut has no most: 0
	Pitch   [2]float64 `json:"pitch_diameter_mm"`
	Minor   [2]float64 `json:"minor_mm"`
	FlatMm  float64    `json:"tool_flat_mm"` // of the point of the tool, at most
	DepthMm float64    `json:"depth_mm"`     // on the radius, from the crest at its basic diameter to the root
}

// Of are the limits of the nut, or of the screw.
func (l *Lead) Of(inside bool) LeadLimits {
	if inside {
		return l.Nut
	}
	return l.Screw
}

// RootMm is the diameter at the bottom of the thread outside, in mm: of trapezoidal and Acme
// threads the greatest minor diameter of the screw, below that of the nut, else MinorMm.
func (t Thread) RootMm() float64 {
	if t.Lead != nil {
		return t.Lead.Screw.Minor[1]
	}
	return t.MinorMm
}

// GroundMm is the diameter at the bottom of the thread inside, in mm: of trapezoidal and Acme
// threads the least major diameter of the nut, else MajorMm.
func (t Thread) GroundMm() float64 {
	if t.Lead != nil {
		return t.Lead.Nut.Major[0]
	}
	return t.MajorMm
}

// HelixDeg is how far the thread climbs from square to its axis at the pitch diameter.
func (t Thread) HelixDeg() float64 {
	lead := t.PitchMm
	if t.Lead != nil {
		lead = t.Lead.LeadMm
	}
	return math.Atan2(lead, math.Pi*t.PitchDiameterMm) * 180 / math.Pi
}

// steepDeg is from where on a measure over wires wants a longer formula: Machinery's Handbook, from memory.
const steepDeg = 5

// BestWireMm is the wire that touches the flanks of a trapezoidal or Acme thread at its pitch
// diameter: P/(2 cos α), in mm, α half the angle. 0 for other threads.
func (t Thread) BestWireMm() float64 {
	if t.Lead == nil {
		return 0
	}
	return t.PitchMm / 2 / math.Cos(t.Lead.AngleDeg/2*math.Pi/180)
}

// OverWiresMm is what is measured over three wires of a diameter in mm laid into the screw, at the
// limits of its pitch diameter: d2 + w (1 + 1/sin α) − (P/2) cot α, and w/2 · tan² of the helix · cos α cot α
// for its slope (this last from memory). ok is false for other threads, and past five degrees of helix.
func (t Thread) OverWiresMm(wireMm float64) (lo, hi float64, ok bool) {
	if t.Lead == nil || t.HelixDeg() > steepDeg {
		return 0, 0, false
	}
	sin, cos := math.Sincos(t.Lead.AngleDeg / 2 * math.Pi / 180)
	slope := math.Tan(t.HelixDeg() * math.Pi / 180)
	more := wireMm*(1+1/sin) - t.PitchMm/2*cos/sin + wireMm/2*slope*slope*cos*cos/sin
	return t.Lead.Screw.Pitch[0] + more, t.Lead.Screw.Pitch[1] + more, true
}

// Misfits tells whether the class of the thread is that of the other side: A and e, c are outside, B
// and H inside. Classes of Acme threads are of both.
func (t Thread) Misfits(inside bool) bool {
	return t.Class != "" && t.Series != Acme && inside != strings.HasSuffix(strings.ReplaceAll(t.Class, "H", "B"), "B")
}

// mostStarts is how many threads beside one another are read. Common practice, no source.
const mostStarts = 8

// leadMarks reads what stands behind the size of a lead-screw thread, in any order: a class, LH, "2 starts".
func leadMarks(marks, classes []string) (class string, left bool, starts int, ok bool) {
	starts = 1
	for i := 0; i < len(marks); i++ {
		switch n, err := strconv.Atoi(marks[i]); {
		case marks[i] == "lh" || marks[i] == "left":
			left = true
		case err == nil && n >= 1 && n <= mostStarts && i+1 < len(marks) && strings.HasPrefix(marks[i+1], "start"):
			starts = n
			i++
		default:
			at := slices.IndexFunc(classes, func(c string) bool { return strings.EqualFold(c, marks[i]) })
			if at < 0 || class != "" {
				return "", false, 0, false
			}
			class = classes[at]
		}
	}
	return class, left, starts, true
}

// split cuts a designation at spaces, hyphens, commas and brackets.
func split(text string) []string {
	return strings.FieldsFunc(text, func(r rune) bool { return strings.ContainsRune(" -,()/", r) })
}

// handed is a designation with the mark of a left hand.
func handed(name string, left bool) string {
	if left {
		return name + " LH"
	}
	return name
}
