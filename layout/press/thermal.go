package press

import (
	"fmt"
	"math"

	"centrepop/layout/material"
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
	Cautions    []string
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
	a.Cautions = j.cautions(a)
	return a, nil
}

// Cool returns the shaft temperature in degrees Celsius that alone makes the
// parts slip together, hub at room temperature:
// fall = (interference + clearance)/(contraction d_shaft). j.ShaftC is not read.
// The caution says if it is colder than dry ice, or than liquid nitrogen and so
// not to be had. Errors as Heat.
func Cool(j Joint) (shaftC float64, cautions []string, err error) {
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
	switch {
	case shaftC < LiquidNitrogenC:
		cautions = append(cautions, "colder than liquid nitrogen: cooling alone will not do, heat the hub as well")
	case shaftC < DryIceC:
		cautions = append(cautions, "colder than dry ice: needs liquid nitrogen, or heat the hub as well")
	}
	if shaftC < 0 {
		cautions = append(cautions, "frost forms on the cold part: work fast, dry and oil the joint's ends after; cold burns and, with gas boiling off, want of air")
	}
	return shaftC, cautions, nil
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

// cautions compares the temperature with all limits, the material's first.
func (j Joint) cautions(a Assembly) []string {
	var out []string
	m := j.Hub.Material
	if m.MaxHeatC > 0 && a.HubC > m.MaxHeatC {
		out = append(out, fmt.Sprintf("%.0f C is above the %.0f C for %s: use less clearance, cool the shaft, or press", a.HubC, m.MaxHeatC, m.Name))
	}
	for _, h := range j.With {
		if l := h.Limit(); a.HubC > l.MaxC {
			out = append(out, fmt.Sprintf("%.0f C is above the %.0f C for a %s (%s)", a.HubC, l.MaxC, l.What, l.Source))
		}
	}
	if a.RiseK > 0 && m.Family == material.CastIron {
		out = append(out, "cast iron: heat slowly and all round, in an oven if there is one")
	}
	return out
}
