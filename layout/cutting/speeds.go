package cutting

import "fmt"

// Op is a machining operation that has a cutting speed of its own.
type Op string

// The operations for which speeds are known.
const (
	Turn   Op = "turn"   // outside turning and facing
	Bore   Op = "bore"   // boring with a bar, on lathe or mill
	Drill  Op = "drill"  // twist drill
	Ream   Op = "ream"   // machine reamer
	Tap    Op = "tap"    // machine tapping
	Thread Op = "thread" // single-point threading on the lathe
)

// Tool is a cutting tool material.
type Tool string

// The tool materials for which speeds are known.
const (
	HSS     Tool = "HSS"     // high-speed steel
	Carbide Tool = "carbide" // cemented carbide, brazed or indexable
)

// Factors from the tabulated operations to the others. All common practice;
// no standard fixes them.
const (
	boreMin, boreMax                   = 0.70, 0.85    // bar overhang, of turning
	reamFactor                         = 0.50          // of drilling
	threadHSSMin, threadHSSMax         = 1.0 / 3, 0.50 // time to disengage, of turning
	threadCarbideMin, threadCarbideMax = 0.50, 2.0 / 3 // of turning
)

// Texts of the sources used in the table of groups. They are printed beside
// the figures.
const (
	srcShop = "workshop reference table (secondary source)"
	srcHand = "handbook-type HSS tables by hardness, from ft/min"
	srcUni  = "university machine-tool sheet, from ft/min"
	srcTap  = "tap makers' tables for HSS taps, from ft/min"
	srcData = "Mechanical Engineer's Data Handbook, 5.7.1"
)

// cut is one tabulated speed range and where it is from.
type cut struct {
	r   Range
	src string
}

// speedTable holds the four tabulated speeds of a group; the others follow.
type speedTable struct {
	turnHSS, turnCarbide, drillHSS, tapHSS cut
}

// Speed returns the cutting speed range for an operation and tool material in
// this group, with the source in words. Turning, drilling and tapping are
// tabulated; boring, reaming and threading are fractions of them, and the
// source says so. It errs for an unknown operation or tool, for drilling,
// reaming and tapping with carbide (no workshop figure is kept: follow the tool
// maker), and for a zero Group.
func (g Group) Speed(op Op, tool Tool) (Range, string, error) {
	if g.Name == "" {
		return Range{}, "", fmt.Errorf("cutting: no material group chosen")
	}
	if tool != HSS && tool != Carbide {
		return Range{}, "", fmt.Errorf("cutting: unknown tool material %q (known: %s, %s)", string(tool), HSS, Carbide)
	}
	turn := g.speeds.turnHSS
	if tool == Carbide {
		turn = g.speeds.turnCarbide
	}
	switch op {
	case Turn:
		return turn.r, turn.src, nil
	case Bore:
		return turn.r.scaled(boreMin, boreMax), "0.7 to 0.85 of turning: common practice; turning from " + turn.src, nil
	case Thread:
		if tool == Carbide {
			return turn.r.scaled(threadCarbideMin, threadCarbideMax), "half to two thirds of turning: common practice; turning from " + turn.src, nil
		}
		return turn.r.scaled(threadHSSMin, threadHSSMax), "a third to half of turning: common practice; turning from " + turn.src, nil
	case Drill, Ream, Tap:
		if tool == Carbide {
			return Range{}, "", fmt.Errorf("cutting: no workshop figure for %s with carbide in %s; take the tool maker's", op, g.Name)
		}
	default:
		return Range{}, "", fmt.Errorf("cutting: unknown operation %q (known: %s, %s, %s, %s, %s, %s)", string(op), Turn, Bore, Drill, Ream, Tap, Thread)
	}
	d := g.speeds.drillHSS
	switch op {
	case Ream:
		return d.r.scaled(reamFactor, reamFactor), "half of drilling: common practice (handbook-type tables allow 0.6); drilling from " + d.src, nil
	case Tap:
		return g.speeds.tapHSS.r, g.speeds.tapHSS.src, nil
	}
	return d.r, d.src, nil
}
