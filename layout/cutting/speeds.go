package cutting

import (
	"fmt"

	"centrepop/layout/material"
)

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

// Speed returns the cutting speed range for an operation and tool material in a
// kind of metal, with the source in words. Turning, drilling and tapping are
// tabulated; boring, reaming and threading are fractions of them, and the
// source says so. It errs for an unknown operation or tool, for drilling,
// reaming and tapping with carbide (no workshop figure is kept: follow the tool
// maker), and for a kind that is none of the constants.
func Speed(k material.Kind, op Op, tool Tool) (Range, string, error) {
	data := k.Data()
	if data.Name == "" {
		return Range{}, "", fmt.Errorf("cutting: unknown kind of metal %d", int(k))
	}
	if tool != HSS && tool != Carbide {
		return Range{}, "", fmt.Errorf("cutting: unknown tool material %q (known: %s, %s)", string(tool), HSS, Carbide)
	}
	turn := data.Speeds.TurnHSS
	if tool == Carbide {
		turn = data.Speeds.TurnCarbide
	}
	switch op {
	case Turn:
		return spanOf(turn), turn.Source, nil
	case Bore:
		return spanOf(turn).scaled(boreMin, boreMax), "0.7 to 0.85 of turning: common practice; turning from " + turn.Source, nil
	case Thread:
		if tool == Carbide {
			return spanOf(turn).scaled(threadCarbideMin, threadCarbideMax), "half to two thirds of turning: common practice; turning from " + turn.Source, nil
		}
		return spanOf(turn).scaled(threadHSSMin, threadHSSMax), "a third to half of turning: common practice; turning from " + turn.Source, nil
	case Drill, Ream, Tap:
		if tool == Carbide {
			return Range{}, "", fmt.Errorf("cutting: no workshop figure for %s with carbide in %s; take the tool maker's", op, data.Name)
		}
	default:
		return Range{}, "", fmt.Errorf("cutting: unknown operation %q (known: %s, %s, %s, %s, %s, %s)", string(op), Turn, Bore, Drill, Ream, Tap, Thread)
	}
	d := data.Speeds.DrillHSS
	switch op {
	case Ream:
		return spanOf(d).scaled(reamFactor, reamFactor), "half of drilling: common practice (handbook-type tables allow 0.6); drilling from " + d.Source, nil
	case Tap:
		return spanOf(data.Speeds.TapHSS), data.Speeds.TapHSS.Source, nil
	}
	return spanOf(d), d.Source, nil
}

// spanOf is a tabulated speed as a range.
func spanOf(c material.Cut) Range { return Range{c.Min, c.Max} }
