package cutting

import (
	"fmt"
	"math"
	"slices"

	"centrepop/layout/lookup"
	"centrepop/layout/threads"
	"centrepop/parts/geom"
)

// Finish is what brings a hole to size after the last drill.
type Finish int

// The finishes.
const (
	Drilled         Finish = iota // the last drill makes it
	Reamed                        // fixed reamer of the class
	AdjustReamed                  // adjustable reamer, set by trial: too slim to bore
	Bored                         // boring bar or boring head
	Tapped                        // tap
	BoredThenTapped               // bored to BoreToMm, then tapped: no drill is large enough
)

// Hole is what a hole has to become.
type Hole struct {
	NominalMm    float64         // finished diameter, mm; of a thread its major diameter
	MinMm, MaxMm float64         // limits, mm; both 0 for a hole without limits of its own
	Class        string          // ISO 286 class the limits come from ("H7"), or empty
	Clearance    bool            // a bolt's clearance hole: see lastPlain
	Thread       *threads.Thread // what is tapped, or nil
	DepthMm      float64         // length of the hole, mm; 0 where it is not known
	OneEnd       bool            // it is reached from one end only: blind, or into a bore
	LargestMm    float64         // biggest drill the shop can drive, mm
	System       System          // the series of drills the shop keeps
}

// Way is how to make a hole.
type Way struct {
	Drills   []DrillStep // smallest first, after the centre drill
	Finish   Finish
	LeaveMm  float64 // left on diameter after the last drill for the reamer or the bar, mm; 0 when drilled or tapped
	BoreToMm float64 // bore to this before tapping, mm; 0 unless BoredThenTapped
	BothEnds bool    // too deep to be drilled or bored true from one end
	Deep     bool    // so deep, and reached from one end only
	DepthMm  float64 // length of the hole, mm; 0 where it is not known
}

// Rules of thumb, all common practice, no source.
const (
	// A drill may start in solid metal up to solidMm; beyond it a pilot goes
	// first, about half the next drill, which clears that drill's web (0.15 to 0.2
	// of its diameter) and leaves its lips enough metal to stay steady.
	solidMm  = 10.0
	stepDown = 0.5
	// A bar as thick as will go in stays steady to three bore diameters, and in
	// from both ends to six; under leastBoreMm there is no bar.
	boreReach   = 3.0
	leastBoreMm = 10.0
	// A drill wanders: beyond ten diameters it comes from both ends.
	drillReach = 10.0
	widenMm    = 5.0
	webShare   = 0.25
	// A boring bar wants this much on the diameter under the least size.
	boreLeaveMm = 0.5
	// A clearance hole, whose size in thousandths lies a hair under the fraction
	// it comes from, takes a drill this much over, or this much under.
	clearanceOverMm, clearanceUnderMm = 0.1, 0.05
	sameMm                            = 1e-6 // below any printed digit
)

// OversizeMm is how much larger than itself a drill of dMm cuts at worst, for
// planning (mm): 0.1 to 10 mm, 0.15 to 20, 0.2 above; the mean of published
// trials is 0.1 at 1/4 in and 0.13 at 1/2 in (handbook, from memory).
func OversizeMm(dMm float64) float64 {
	switch {
	case dMm <= 10:
		return 0.1
	case dMm <= 20:
		return 0.15
	}
	return 0.2
}

// reamLeaveMm is the metal to leave for a reamer on diameter: 0.2 mm to 10 mm,
// 0.3 to 20, 0.5 above, or 1/64 in where drills go by sixty-fourths (common
// practice, no source).
func reamLeaveMm(dMm float64, s System) float64 {
	switch {
	case s == Inch:
		return geom.MmPerInch / 64
	case dMm <= 10:
		return 0.2
	case dMm <= 20:
		return 0.3
	}
	return 0.5
}

// Reamable tells whether a fixed reamer is sold for a hole: class H7, H8 or H9
// (DIN 212 and DIN 208 reamers are made to H7; an H8 reamer makes H9; from
// memory), in whole or half millimetres to 20 mm and whole ones to 50, or in
// sixty-fourths of an inch to 1 in and sixteenths to 2.
func Reamable(dMm float64, class string) bool {
	switch class {
	case "H7", "H8", "H9":
	default:
		return false
	}
	on := func(step float64) bool { return math.Abs(dMm/step-math.Round(dMm/step)) < 1e-6 }
	switch {
	case dMm > 50.8:
		return false
	case dMm <= 20 && on(0.5), dMm <= 50 && on(1), dMm <= geom.MmPerInch && on(geom.MmPerInch/64):
		return true
	}
	return on(geom.MmPerInch / 16)
}

// TapDrill returns the stock drill for a thread: the thread's own drill if the
// system has it, else the nearest to it between the thread's minor limits
// (threads.Thread.MinorLimitsMm), never below the least. Where the system has
// none, it is the thread's own drill, to be bought with the tap. It errs for a
// thread that is not tapped.
func TapDrill(t threads.Thread, s System) (DrillSize, error) {
	lo, hi := t.MinorLimitsMm()
	if !positive(t.TapDrillMm) || !positive(lo) {
		return DrillSize{}, fmt.Errorf("cutting: %q is not tapped", t.Designation)
	}
	best := DrillSize{DiaMm: t.TapDrillMm, Name: t.TapDrillName}
	if best.Name == "" {
		best.Name = metricDrill(int(math.Round(t.TapDrillMm * 100))).Name
	}
	off := math.Inf(1)
	for _, d := range StockDrills(s) {
		away := math.Abs(d.DiaMm - t.TapDrillMm)
		if fits := d.DiaMm >= lo && d.DiaMm <= hi || away < 0.001; fits && away < off {
			best, off = d, away
		}
	}
	return best, nil
}

// WayFor returns how to make a hole with what a shop has. A drill that keeps the
// limits, its oversize allowed for, makes the hole; else a reamer where one is
// sold for the class; else a boring bar, whose leave is counted from the real
// drill. It errs if a size is not positive and finite, the limits fall, or the
// hole is under the smallest stock drill.
func WayFor(h Hole) (Way, error) {
	if err := h.check(); err != nil {
		return Way{}, err
	}
	w := Way{BothEnds: h.DepthMm > drillReach*h.NominalMm, DepthMm: h.DepthMm}
	last, err := h.last(&w)
	if err != nil {
		return Way{}, err
	}
	if last.DiaMm > h.LargestMm+sameMm {
		target := last.DiaMm
		if last, err = StockDrill(h.LargestMm, h.System, Down); err != nil {
			return Way{}, err
		}
		switch w.Finish {
		case Tapped:
			w.Finish, w.BoreToMm, w.LeaveMm = BoredThenTapped, target, target-last.DiaMm
		default:
			w.Finish, w.LeaveMm = Bored, h.aimMm(0)-last.DiaMm
		}
	}
	if w.Finish == Bored {
		ok, both := BarReach(h.NominalMm, h.DepthMm)
		if w.BothEnds = w.BothEnds || both; !ok || both && h.OneEnd {
			w.Finish = AdjustReamed
		}
	}
	w.BothEnds, w.Deep = w.BothEnds && !h.OneEnd, h.OneEnd && h.DepthMm > drillReach*h.NominalMm
	w.Drills, err = pilots(last, h.System)
	return w, err
}

// BarReach says how a boring bar reaches a bore of a diameter and length: from
// one end to three diameters, half from each end to six, else not at all; a bore
// under 10 mm takes no bar. Common practice, no source.
func BarReach(boreMm, lengthMm float64) (ok, bothEnds bool) {
	if boreMm < leastBoreMm || lengthMm > 2*boreReach*boreMm {
		return false, false
	}
	return true, lengthMm > boreReach*boreMm
}

// taps are how long hand taps to a diameter are, mm: ISO 529, from memory.
var taps = [][2]float64{{3, 48}, {4, 53}, {5, 58}, {6, 66}, {8, 72}, {10, 80}, {12, 89}, {16, 102}, {20, 112}, {24, 130}, {30, 138}}

// TapReachMm is how far a hand tap of a diameter goes in while the wrench still holds its
// square: its length less one diameter; 0 over 30 mm.
func TapReachMm(diaMm float64) float64 {
	for _, t := range taps {
		if diaMm <= t[0] {
			return t[1] - diaMm
		}
	}
	return 0
}

// DrillReaches tells whether a drill goes as deep as lengthMm from one end and stays
// straight: to ten diameters. Common practice, no source.
func DrillReaches(drillMm, lengthMm float64) bool { return lengthMm <= drillReach*drillMm }

// Widening returns the drills that open a bore of boreMm for the bar beyond a hole that
// is there already: up to the largest of the shop that leaves a millimetre or more. The
// hole clears the web of a drill four times as large. None where they would take less
// than 5 mm more than the hole, which the bar takes as well. Common practice, no source.
func Widening(boreMm, holeMm, largestMm float64, s System) (Way, bool) {
	last, err := StockDrill(math.Min(boreMm-1, largestMm), s, Down)
	if err != nil || last.DiaMm < holeMm+widenMm-sameMm {
		return Way{}, false
	}
	w := Way{Drills: []DrillStep{{last, Last}}, Finish: Bored, LeaveMm: boreMm - last.DiaMm}
	if holeMm < webShare*last.DiaMm {
		steps, err := pilots(last, s)
		if err != nil {
			return Way{}, false
		}
		w.Drills = slices.DeleteFunc(steps, func(d DrillStep) bool { return d.Size.DiaMm <= holeMm })
	}
	return w, true
}

// StartBore returns the drills that open a turned bore of boreMm for the bar,
// which has a millimetre left or more.
func StartBore(boreMm, largestMm float64, s System) (Way, error) {
	if !positive(boreMm) || !positive(largestMm) {
		return Way{}, fmt.Errorf("cutting: bore %v mm and largest drill %v mm: want positive numbers", boreMm, largestMm)
	}
	last, err := StockDrill(math.Min(math.Max(1, boreMm-1), largestMm), s, Down)
	if err != nil {
		return Way{}, err
	}
	steps, err := pilots(last, s)
	return Way{Drills: steps, Finish: Bored, LeaveMm: boreMm - last.DiaMm}, err
}

// Hole saws of two metals go by whole millimetres or sixteenths, through walls up to their reach, and cut up to a millimetre over
// their size. From memory.
const (
	leastHoleSawMm, mostHoleSawMm = 14.0, 152.0
	holeSawReachMm                = 38.0
	holeSawOverMm                 = 1.0
)

// HoleSaw returns the hole saw that opens a hole in a wall, mm: the largest that surely leaves metal for the bar, or for a bolt's
// clearance hole the next under its size, which it makes. It errs where none is so small or so large, or reaches through the wall.
func HoleSaw(holeMm, wallMm float64, clearance bool, s System) (float64, error) {
	most := holeMm
	if !clearance {
		most -= holeSawOverMm + boreLeaveMm
	}
	grid := 1.0
	if s == Inch {
		grid = geom.MmPerInch / 16
	}
	mm := geom.Clean(math.Floor(most/grid+sameMm) * grid)
	if mm < leastHoleSawMm || mm > mostHoleSawMm || wallMm > holeSawReachMm {
		return 0, fmt.Errorf("cutting: no hole saw for %v mm through %v mm", holeMm, wallMm)
	}
	return mm, nil
}

func (h Hole) check() error {
	if !positive(h.NominalMm) || !positive(h.LargestMm) || !notNegative(h.DepthMm) {
		return fmt.Errorf("cutting: hole %v mm, largest drill %v mm and depth %v mm: want positive numbers", h.NominalMm, h.LargestMm, h.DepthMm)
	}
	if !notNegative(h.MinMm) || !notNegative(h.MaxMm) || h.MinMm > h.MaxMm {
		return lookup.Refuse("cutting: hole limits %v to %v do not rise", lookup.Mm(h.MinMm), lookup.Mm(h.MaxMm))
	}
	return nil
}

// last chooses the last drill, and sets finish and leave.
func (h Hole) last(w *Way) (DrillSize, error) {
	switch {
	case h.Thread != nil:
		w.Finish = Tapped
		return TapDrill(*h.Thread, h.System)
	case h.MaxMm == 0:
		return h.lastPlain(w)
	}
	if d, ok := h.within(); ok {
		return d, nil
	}
	if Reamable(h.NominalMm, h.Class) {
		leave := reamLeaveMm(h.NominalMm, h.System)
		d, err := StockDrill(h.NominalMm-leave, h.System, Nearest)
		if real := h.NominalMm - d.DiaMm; err == nil && real >= leave/2-sameMm {
			w.Finish, w.LeaveMm = Reamed, real
			return d, nil
		}
	}
	return h.beforeBar(w)
}

// aimMm is the size to make between the limits, less what a tool cuts over its own: the
// nominal one where that is among them, else the middle of them.
func (h Hole) aimMm(overMm float64) float64 {
	if most := h.MaxMm - overMm; h.MaxMm > 0 && (h.NominalMm < h.MinMm || h.NominalMm > most) {
		return (h.MinMm + most) / 2
	}
	return h.NominalMm
}

// within finds the stock drill that cuts between the limits, its oversize
// allowed for: the one nearest to what is to be made.
func (h Hole) within() (best DrillSize, ok bool) {
	off := math.Inf(1)
	for _, d := range StockDrills(h.System) {
		room, aim := h.MaxMm-OversizeMm(d.DiaMm), h.aimMm(OversizeMm(d.DiaMm))
		if away := math.Abs(d.DiaMm - aim); d.DiaMm >= h.MinMm-sameMm && d.DiaMm <= room+sameMm && away < off-sameMm {
			best, off, ok = d, away, true
		}
	}
	return best, ok
}

// beforeBar is the largest stock drill that leaves the bar its metal.
func (h Hole) beforeBar(w *Way) (DrillSize, error) {
	leave := boreLeaveMm
	if h.NominalMm < leastBoreMm {
		leave = reamLeaveMm(h.NominalMm, h.System)
	}
	d, err := StockDrill(math.Min(h.MinMm-leave, h.LargestMm), h.System, Down)
	w.Finish, w.LeaveMm = Bored, h.aimMm(0)-d.DiaMm
	return d, err
}

// lastPlain is the drill for a hole without limits: the nearest in stock within
// 0.05 mm, or 0.1 mm over for a clearance hole; else the hole is bored.
func (h Hole) lastPlain(w *Way) (DrillSize, error) {
	over := clearanceUnderMm
	if h.Clearance {
		over = clearanceOverMm
	}
	down, errDown := StockDrill(h.NominalMm, h.System, Down)
	up, errUp := StockDrill(h.NominalMm, h.System, Up)
	under := h.NominalMm - down.DiaMm
	canDown, canUp := errDown == nil && under <= clearanceUnderMm+sameMm, errUp == nil && up.DiaMm-h.NominalMm <= over+sameMm
	switch {
	case canDown && (!canUp || under <= up.DiaMm-h.NominalMm):
		return down, nil
	case canUp:
		return up, nil
	}
	h.MinMm = h.NominalMm
	return h.beforeBar(w)
}

// DrillWhy is why a drill goes through.
type DrillWhy int

// The reasons.
const (
	Pilot   DrillWhy = iota // the first of several
	OpenOut                 // between
	Last                    // the last, or the only one
)

// DrillStep is one drill to put through a hole.
type DrillStep struct {
	Size DrillSize
	Why  DrillWhy
}

// pilots returns the drills up to the last one, smallest first: each about half
// the next, to a half millimetre or a 32nd of an inch, sizes that every drill box
// has.
func pilots(last DrillSize, s System) ([]DrillStep, error) {
	grid := 0.5
	if s == Inch {
		grid = geom.MmPerInch / 32
	}
	steps := []DrillStep{{last, Last}}
	for d := last.DiaMm; d > solidMm; {
		next, err := StockDrill(math.Ceil(d*stepDown/grid-1e-9)*grid, s, Up)
		if err != nil {
			return nil, err
		}
		steps = append([]DrillStep{{next, OpenOut}}, steps...)
		d = next.DiaMm
	}
	if len(steps) > 1 {
		steps[0].Why = Pilot
	}
	return steps, nil
}
