package press

import (
	"fmt"
	"math"
)

// Heated is a thing that gets hot with the hub and has a limit of its own.
type Heated int

// The things to look out for.
const (
	OpenBearing   Heated = iota // rolling bearing without seals
	SealedBearing               // rolling bearing sealed and greased
	NBRSeal                     // nitrile seal or O-ring
	FKMSeal                     // fluorocarbon seal or O-ring
	PTFESeal                    // PTFE seal or bush
	CaseHardened                // case-hardened surface
	FlameHardened               // flame- or induction-hardened surface
)

// HeatLimit is a temperature not to pass, and why.
type HeatLimit struct {
	What   string  // the part or state it protects
	MaxC   float64 // degrees Celsius
	Source string
}

// Limit returns the limit of h; the zero HeatLimit if h is none of the constants.
func (h Heated) Limit() HeatLimit {
	switch h {
	case OpenBearing:
		return HeatLimit{"rolling bearing, open", 120, "bearing makers: tempering begins above 120 to 125 C"}
	case SealedBearing:
		return HeatLimit{"rolling bearing, sealed and greased", 80, "bearing makers (from memory)"}
	case NBRSeal:
		return HeatLimit{"nitrile (NBR) seal or O-ring", 100, "seal makers (from memory)"}
	case FKMSeal:
		return HeatLimit{"fluorocarbon (FKM) seal or O-ring", 200, "seal makers (from memory)"}
	case PTFESeal:
		return HeatLimit{"PTFE seal or bush", 250, "seal makers (from memory)"}
	case CaseHardened:
		return HeatLimit{"case-hardened surface", 200, "DIN 7190 joining temperatures (from memory)"}
	case FlameHardened:
		return HeatLimit{"flame- or induction-hardened surface", 250, "DIN 7190 joining temperatures (from memory)"}
	}
	return HeatLimit{}
}

// Coolants a small shop can get, degrees Celsius at normal pressure.
const (
	DryIceC         = -78.5  // solid carbon dioxide
	LiquidNitrogenC = -195.8 // boiling
)

// Joint is a thermal assembly: hub heated, shaft left or cooled.
type Joint struct {
	Hub            Member
	Shaft          Member
	InterferenceMm float64  // greatest interference on diameter, mm, above 0
	ClearanceMm    float64  // clearance wanted on diameter while joining, mm; 0 takes JoinClearanceMm
	RoomC          float64  // shop temperature at which the parts were measured
	ShaftC         float64  // temperature of the shaft while joining; give RoomC if it is not cooled
	With           []Heated // things that get hot with the hub
}

// Assembly is how hot, and what to mind.
type Assembly struct {
	RiseK       float64 // above the room for the hub, K; 0 if the cold shaft alone slips
	HubC        float64 // temperature to heat the hub to, degrees Celsius
	ClearanceMm float64 // on diameter while joining, mm
	ShrinkMm    float64 // taken off the shaft's diameter by cooling, mm
	Cautions    []Caution
}

// JoinClearanceMm returns the clearance on diameter in mm to plan for slipping
// parts of diameter dMm together by hand: a thousandth of the diameter (DIN
// 7190, from memory), at least 0.05 mm (common practice). 0 if dMm is not
// positive and finite.
func JoinClearanceMm(dMm float64) float64 {
	if !positive(dMm) {
		return 0
	}
	return math.Max(dMm/1000, 0.05)
}

// Heat returns the hub temperature that makes the parts slip together:
// rise = (interference + clearance - shrink)/(alpha bore). It errs for sizes
// that are not positive and finite, a shaft warmer than the room or below
// absolute zero, an unknown entry in With, and a hub material without expansion.
func Heat(j Joint) (Assembly, error) {
	if err := j.check(); err != nil {
		return Assembly{}, err
	}
	a := Assembly{ClearanceMm: j.ClearanceMm}
	if a.ClearanceMm == 0 {
		a.ClearanceMm = JoinClearanceMm(j.Hub.InsideMm)
	}
	if j.ShaftC < j.RoomC {
		if !positive(j.Shaft.Material.ContractPerK) {
			return Assembly{}, fmt.Errorf("press: no contraction on cooling known for %q", j.Shaft.Material.Name)
		}
		a.ShrinkMm = j.Shaft.Material.ContractPerK * j.Shaft.OutsideMm * (j.RoomC - j.ShaftC)
	}
	need := j.InterferenceMm + a.ClearanceMm - a.ShrinkMm
	if need > 0 {
		a.RiseK = need / (j.Hub.Material.AlphaPerK * j.Hub.InsideMm)
	} else {
		a.ClearanceMm = a.ShrinkMm - j.InterferenceMm
	}
	a.HubC = j.RoomC + a.RiseK
	if math.IsInf(a.HubC, 0) || math.IsNaN(a.HubC) {
		return Assembly{}, fmt.Errorf("press: the sizes are out of all proportion: no finite temperature")
	}
	a.Cautions = j.hot(a)
	return a, nil
}

// Cool returns the shaft temperature in degrees Celsius that alone makes the
// parts slip together, hub at room temperature:
// fall = (interference + clearance)/(contraction d_shaft). j.ShaftC is not read.
// The cautions say if it is colder than dry ice, or than the material or liquid
// nitrogen allows. Errors as Heat.
func Cool(j Joint) (shaftC float64, cautions []Caution, err error) {
	j.ShaftC = j.RoomC
	if err := j.check(); err != nil {
		return 0, nil, err
	}
	if !positive(j.Shaft.Material.ContractPerK) {
		return 0, nil, fmt.Errorf("press: no contraction on cooling known for %q", j.Shaft.Material.Name)
	}
	clearance := j.ClearanceMm
	if clearance == 0 {
		clearance = JoinClearanceMm(j.Hub.InsideMm)
	}
	fall := (j.InterferenceMm + clearance) / (j.Shaft.Material.ContractPerK * j.Shaft.OutsideMm)
	shaftC = j.RoomC - fall
	if math.IsInf(shaftC, 0) || math.IsNaN(shaftC) {
		return 0, nil, fmt.Errorf("press: the sizes are out of all proportion: no finite temperature")
	}
	return shaftC, j.cold(shaftC), nil
}

// limitC is the lowest heat limit of the hub and what is heated with it; 0 if none
// is known.
func (j Joint) limitC() float64 {
	limit := j.Hub.Material.MaxHeatC
	for _, h := range j.With {
		if c := h.Limit().MaxC; limit == 0 || c < limit {
			limit = c
		}
	}
	return limit
}

// Together returns the temperatures in degrees Celsius that make the parts slip
// together when neither heating nor cooling alone may: the hub at its limit and
// the shaft as cold as is then missing. ok is false if the hub has no limit or if
// the shaft would have to be colder than its own. Errors as Heat.
func Together(j Joint) (hubC, shaftC float64, ok bool, err error) {
	hubC = j.limitC()
	hot := j
	hot.ShaftC = j.RoomC
	a, err := Heat(hot)
	if err != nil || hubC <= j.RoomC {
		return 0, 0, false, err
	}
	missing := (a.HubC - hubC) * j.Hub.Material.AlphaPerK * j.Hub.InsideMm
	if !positive(missing) {
		return a.HubC, j.RoomC, true, nil
	}
	if !positive(j.Shaft.Material.ContractPerK) {
		return 0, 0, false, fmt.Errorf("press: no contraction on cooling known for %q", j.Shaft.Material.Name)
	}
	shaftC = j.RoomC - missing/(j.Shaft.Material.ContractPerK*j.Shaft.OutsideMm)
	return hubC, shaftC, shaftC >= j.Shaft.Material.coldest(), nil
}

// check refuses a joint the formulas cannot take.
func (j Joint) check() error {
	for _, v := range []struct {
		what string
		x    float64
	}{
		{"interference", j.InterferenceMm}, {"hub bore", j.Hub.InsideMm}, {"shaft diameter", j.Shaft.OutsideMm},
	} {
		if !positive(v.x) {
			return fmt.Errorf("press: %s %v mm is not a positive number", v.what, v.x)
		}
	}
	if !notNegative(j.ClearanceMm) {
		return fmt.Errorf("press: joining clearance %v mm is not zero or more", j.ClearanceMm)
	}
	for _, h := range j.With {
		if h.Limit().MaxC == 0 {
			return fmt.Errorf("press: unknown heated thing %d", int(h))
		}
	}
	if !positive(j.Hub.Material.AlphaPerK) {
		return fmt.Errorf("press: no expansion on heating known for %q", j.Hub.Material.Name)
	}
	const zeroK = -273.15
	if !(j.RoomC > zeroK && !math.IsInf(j.RoomC, 0) && j.ShaftC > zeroK && j.ShaftC <= j.RoomC) {
		return fmt.Errorf("press: room at %v C and shaft at %v C: want the shaft at or below the room, above absolute zero", j.RoomC, j.ShaftC)
	}
	return nil
}
