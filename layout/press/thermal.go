package press

import (
	"cmp"
	"fmt"
	"math"
)

// OpenBearingC is how hot an open rolling bearing may get: tempering begins above 120 to
// 125 degrees Celsius (bearing makers).
const OpenBearingC = 120.0

// SealedBearingC is how hot a rolling bearing that is sealed on both sides may get: its seals and its grease (a bearing
// maker's page on sealed bearings).
const SealedBearingC = 80.0

// Joint is a thermal assembly: hub heated, shaft left or cooled.
type Joint struct {
	Hub            Member
	Shaft          Member
	InterferenceMm float64 // greatest interference on diameter, mm, above 0
	ClearanceMm    float64 // clearance wanted on diameter while joining, mm; 0 takes JoinClearanceMm
	RoomC          float64 // shop temperature at which the parts were measured
	ShaftC         float64 // temperature of the shaft while joining; give RoomC if it is not cooled
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
// absolute zero, and a hub material without expansion.
func Heat(j Joint) (Assembly, error) {
	if err := j.check(); err != nil {
		return Assembly{}, err
	}
	a := Assembly{ClearanceMm: cmp.Or(j.ClearanceMm, JoinClearanceMm(j.Hub.InsideMm))}
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
	clearance := cmp.Or(j.ClearanceMm, JoinClearanceMm(j.Hub.InsideMm))
	fall := (j.InterferenceMm + clearance) / (j.Shaft.Material.ContractPerK * j.Shaft.OutsideMm)
	shaftC = j.RoomC - fall
	if math.IsInf(shaftC, 0) || math.IsNaN(shaftC) {
		return 0, nil, fmt.Errorf("press: the sizes are out of all proportion: no finite temperature")
	}
	return shaftC, j.cold(shaftC), nil
}

// Together returns the temperatures in degrees Celsius that make the parts slip
// together when neither heating nor cooling alone may: the hub at its limit and
// the shaft as cold as is then missing. ok is false if the hub has no limit or if
// the shaft would have to be colder than its own. Errors as Heat.
func Together(j Joint) (hubC, shaftC float64, ok bool, err error) {
	hubC = j.Hub.Material.MaxHeatC
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
	if !positive(j.Hub.Material.AlphaPerK) {
		return fmt.Errorf("press: no expansion on heating known for %q", j.Hub.Material.Name)
	}
	const zeroK = -273.15
	if !(j.RoomC > zeroK && !math.IsInf(j.RoomC, 0) && j.ShaftC > zeroK && j.ShaftC <= j.RoomC) {
		return fmt.Errorf("press: room at %v C and shaft at %v C: want the shaft at or below the room, above absolute zero", j.RoomC, j.ShaftC)
	}
	return nil
}
