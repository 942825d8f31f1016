package press

import "centrepop/layout/material"

// Code says what a caution is about.
type Code string

// The codes, with the fields of Caution that go with each.
const (
	Loose         Code = "loose"          // Mm of clearance at this end of the limits: the joint holds nothing
	Flattened     Code = "flattened"      // roughness of Mm takes up the whole interference of OfMm
	Breaks        Code = "breaks"         // Who of brittle Material stands Safety of this stress
	Yields        Code = "yields"         // Who of Material stands Safety of this stress elastically
	Brittle       Code = "brittle"        // Who of brittle Material has Safety, LeastSafety is usual
	BoreCloses    Code = "bore-closes"    // the inner part's bore closes by Mm
	TooHot        Code = "too-hot"        // C is above LimitC for Material
	TooCold       Code = "too-cold"       // C is below LimitC for Material: cooling alone does not do
	NeedsNitrogen Code = "needs-nitrogen" // C is below dry ice
	Frost         Code = "frost"          // frost forms on the cold part
	HeatSlowly    Code = "heat-slowly"    // cast iron: slowly and all round
)

// Who names a member.
type Who string

// The members.
const (
	HubMember   Who = "hub"
	ShaftMember Who = "shaft"
)

// Caution is a thing that a person should know, as a value.
type Caution struct {
	Code        Code
	Who         Who // the member it is about, or empty
	Material    string
	Mm, OfMm    float64 // mm on diameter
	Safety      float64
	LeastSafety float64
	C, LimitC   float64 // degrees Celsius
}

// cautions lists what the numbers alone do not say.
func (in Input) cautions(r Result) []Caution {
	if r.InterferenceMm <= 0 {
		return []Caution{{Code: Loose, Mm: -r.InterferenceMm}}
	}
	if r.EffectiveMm == 0 {
		return []Caution{{Code: Flattened, Mm: r.LossMm, OfMm: r.InterferenceMm}}
	}
	var out []Caution
	for _, m := range []struct {
		who    Who
		mat    Material
		safety float64
	}{{HubMember, in.Hub.Material, r.HubSafety}, {ShaftMember, in.Shaft.Material, r.ShaftSafety}} {
		c := Caution{Who: m.who, Material: m.mat.Name, Safety: m.safety}
		switch {
		case m.safety < 1 && m.mat.Brittle:
			c.Code = Breaks
		case m.safety < 1:
			c.Code = Yields
		case m.mat.Brittle && m.safety < brittleSafety:
			c.Code, c.LeastSafety = Brittle, brittleSafety
		default:
			continue
		}
		out = append(out, c)
	}
	if r.BoreClosesMm >= leastClosingMm {
		out = append(out, Caution{Code: BoreCloses, Who: ShaftMember, Mm: r.BoreClosesMm})
	}
	return out
}

const (
	// brittleSafety is the least safety against breaking to take without remark
	// for brittle materials. Common practice, no source.
	brittleSafety = 2.0
	// leastClosingMm is what a bore may close without remark. Common practice, no
	// source.
	leastClosingMm = 0.005
)

// hot compares the temperature with what the material stands.
func (j Joint) hot(a Assembly) []Caution {
	var out []Caution
	m := j.Hub.Material
	if m.MaxHeatC > 0 && a.HubC > m.MaxHeatC {
		out = append(out, Caution{Code: TooHot, Who: HubMember, Material: m.Name, C: a.HubC, LimitC: m.MaxHeatC})
	}
	if a.RiseK > 0 && m.Family == material.CastIron {
		out = append(out, Caution{Code: HeatSlowly, Who: HubMember, Material: m.Name})
	}
	return out
}

// coldest is how cold a material may get: its own limit, and no colder than
// liquid nitrogen, than which a shop has nothing.
func (m Material) coldest() float64 {
	if m.MinColdC == 0 {
		return LiquidNitrogenC
	}
	return max(m.MinColdC, LiquidNitrogenC)
}

// Coolants a small shop can get, degrees Celsius at normal pressure.
const (
	DryIceC         = -78.5  // solid carbon dioxide
	LiquidNitrogenC = -195.8 // boiling
)

// cold tells what cooling the shaft to a temperature means.
func (j Joint) cold(shaftC float64) []Caution {
	var out []Caution
	limit := j.Shaft.Material.coldest()
	c := Caution{Who: ShaftMember, Material: j.Shaft.Material.Name, C: shaftC}
	switch {
	case shaftC < limit:
		c.Code, c.LimitC = TooCold, limit
		out = append(out, c)
	case shaftC < DryIceC:
		c.Code, c.LimitC = NeedsNitrogen, DryIceC
		out = append(out, c)
	}
	if shaftC < 0 && shaftC >= limit { // what cannot be had makes no frost
		out = append(out, Caution{Code: Frost, Who: ShaftMember, C: shaftC})
	}
	return out
}
