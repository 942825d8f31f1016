// Package clamp works out a ring that is split by a saw cut and closed by a screw
// across it: where the screw lies, how long it is, what metal stays beside it, and
// what the ring holds.
//
// In: sizes of ring, slot and screw in mm. Out: mm, N and N m, measured along the
// screw from the middle of the slot. The proportions are common practice; sizes and
// strength of the screw are those of package bolts, its hole that of ISO 273 or ASME
// B18.2.8.
package clamp

import (
	"cmp"
	"errors"
	"math"

	"centrepop/layout/bolts"
	"centrepop/parts/geom"
)

// Ring is a ring with its screw.
type Ring struct {
	OutsideMm float64 // diameter
	BoreMm    float64 // largest diameter of the bore: the major one of a thread
	SlotMm    float64 // width of the saw cut
	AtMm      float64 // from the ring's axis to that of the screw; 0 for the middle of the wall
	Bolt      bolts.Bolt
	Class     string  // of the screw
	ToolMm    float64 // end mills come in steps of it; 0 for half millimetres
}

// Work is a ring worked out.
type Work struct {
	AtMm    float64 // of the screw's axis
	HoleMm  float64 // clearance hole, ISO 273 or ASME B18.2.8 medium
	HeadMm  float64 // diameter of the counterbore
	SeatMm  float64 // where the head bears: all of its rim on metal
	DeepMm  float64 // from the round to the seat along the screw's axis
	ExitMm  float64 // the round again, on the side of the thread
	LongMm  float64 // of the screw, a stock length
	GripMm  float64 // metal under the head, to the slot
	HoldsMm float64 // thread engaged
	InnerMm float64 // metal between hole and bore, and between hole and outside
	OuterMm float64
	ProudMm float64 // how far the head stands over the round; below 0 it lies under it
	// Tightening of the screw, and the torque that the ring then holds on its bore.
	NutFactor bolts.NutFactor
	TorqueNm  float64
	LowNm     float64
	HighNm    float64
}

// Proportions and friction. Common practice, no source.
const (
	headRoomShare = 0.14 // of the head: the counterbore is that much wider
	leastRoomMm   = 1.0
	lowFriction   = 0.08
	highFriction  = 0.15
	bendShare     = 0.5 // of the screw's force may go into bending the ring
)

// ErrNoRoom says that the screw does not lie in the metal of the ring, or that no
// stock length ends in it.
var ErrNoRoom = errors.New("clamp: the wall has no room for the screw")

// Work works a ring out. The errors are ErrNoRoom and those of package bolts.
//
// The torque lies between that of two half rings that are hinged opposite the slot
// and lose half of the force to bending, 2 μ F d / 2 with μ 0.08, and that of a band
// under the force F all round, π μ F d with μ 0.15, each with the scatter of the
// preload (from memory; friction and stiffness of the ring are not known).
func (r Ring) Work() (Work, error) {
	out, in := r.OutsideMm/2, r.BoreMm/2
	w := Work{AtMm: cmp.Or(r.AtMm, geom.Clean((out+in)/2))}
	head, d := r.Bolt.SocketHeadDiameterMm, r.Bolt.Thread.MajorMm
	rim := w.AtMm + head/2
	if in <= 0 || r.SlotMm <= 0 {
		return w, ErrNoRoom
	}
	var err error
	if w.HoleMm, err = r.Bolt.Thread.ClearanceMm("medium"); err != nil {
		return w, err
	}
	w.HeadMm = geom.Clean(head + math.Max(leastRoomMm, math.Round(2*headRoomShare*head)/2))
	if r.ToolMm > 0 {
		w.HeadMm = geom.Clean(math.Round(w.HeadMm/r.ToolMm) * r.ToolMm)
	}
	w.SeatMm = math.Floor(10*math.Sqrt(out*out-rim*rim)) / 10
	w.ExitMm = geom.Clean(chord(out, w.AtMm))
	w.DeepMm = geom.Clean(w.ExitMm - w.SeatMm)
	w.GripMm = geom.Clean(w.SeatMm - r.SlotMm/2)
	w.InnerMm, w.OuterMm = geom.Clean(w.AtMm-in-w.HoleMm/2), geom.Clean(out-w.AtMm-w.HoleMm/2)
	w.ProudMm = geom.Clean(math.Hypot(rim, w.SeatMm+r.Bolt.SocketHeadHeightMm) - out)
	for _, long := range r.Bolt.StockLengths(bolts.Socket) {
		if long <= w.SeatMm+chord(out, w.AtMm+d/2) {
			w.LongMm, w.HoldsMm = geom.Clean(long), geom.Clean(long-w.SeatMm-r.SlotMm/2)
		}
	}
	if w.InnerMm <= 0 || w.GripMm <= 0 || w.HoldsMm <= 0 { // outside the head is in the way first, and holds nothing
		return w, ErrNoRoom
	}
	t, err := r.Bolt.Tighten(bolts.Tightening{Class: r.Class, Condition: "oiled"})
	if err != nil {
		return w, err
	}
	w.NutFactor, w.TorqueNm = t.NutFactor, t.TorqueNm
	w.LowNm = 2 * lowFriction * bendShare * t.PreloadLowN * r.BoreMm / 1000
	w.HighNm = math.Pi * highFriction * t.PreloadHighN * r.BoreMm / 1000
	return w, nil
}

// chord is how far a circle lies from its middle plane at a distance from its axis.
func chord(radius, at float64) float64 { return math.Sqrt(math.Max(0, radius*radius-at*at)) }

// LeastWallMm is the metal that should stay beside a hole of a screw of diameter d, mm;
// LeastGripMm that under its head, and LeastThreadMm the thread engaged in steel, or
// half as much again in what is weaker. Common practice, no source.
func LeastWallMm(dMm float64) float64 { return math.Max(1, dMm/4) }

// LeastGripMm is the metal under the head: see LeastWallMm.
func LeastGripMm(dMm float64) float64 { return dMm / 2 }

// LeastThreadMm is the thread engaged: see LeastWallMm.
func LeastThreadMm(dMm float64, steel bool) float64 {
	if steel {
		return dMm
	}
	return 1.5 * dMm
}
