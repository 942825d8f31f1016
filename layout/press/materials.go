package press

import (
	"fmt"
	"math"

	"centrepop/layout/material"
)

// Material holds what the formulas need. All figures are at room temperature.
type Material struct {
	Name         string
	Family       material.Family
	EMPa         float64 // Young's modulus, MPa
	Nu           float64 // Poisson's ratio, 0 to below 0.5
	AlphaPerK    float64 // expansion on heating, 1/K
	ContractPerK float64 // contraction on deep cooling, 1/K; smaller than AlphaPerK
	StrengthMPa  float64 // yield or 0.2 % proof stress; tensile strength if Brittle, MPa
	// Brittle materials have no yield: the greatest tension is compared with
	// StrengthMPa, and the greatest compression with three times it (grey iron
	// stands 3 to 4 times its tensile strength in compression, EN 1561, from
	// memory).
	Brittle  bool
	MaxHeatC float64 // do not heat above, degrees Celsius; 0 when not known
	MinColdC float64 // do not cool below, degrees Celsius; 0 when not known
	Source   string  // of the strength
}

// check refuses figures the formulas cannot take.
func (m Material) check() error {
	if !positive(m.EMPa) || !positive(m.StrengthMPa) {
		return fmt.Errorf("material %q needs a positive modulus and strength, has %v and %v MPa", m.Name, m.EMPa, m.StrengthMPa)
	}
	if !(m.Nu >= 0 && m.Nu < 0.5) {
		return fmt.Errorf("material %q has Poisson's ratio %v, want 0 to below 0.5", m.Name, m.Nu)
	}
	return nil
}

// positive reports whether x is above zero and finite.
func positive(x float64) bool { return x > 0 && !math.IsInf(x, 0) }

// maxSafety bounds the safety told, to keep it finite.
const maxSafety = 1000.0

// safety returns strength over the governing stress at the worse of two states.
func (m Material) safety(a, b Stress) float64 {
	govern := func(s Stress) float64 {
		if !m.Brittle {
			return s.VonMisesMPa
		}
		return max(s.HoopMPa, s.RadialMPa, -s.HoopMPa/3, -s.RadialMPa/3)
	}
	worst := max(govern(a), govern(b))
	return min(m.StrengthMPa/worst, maxSafety)
}

// Lookup returns the material of that name with the strength of stock of
// sectionMm, the size as bought that its standard goes by: the thickness of plate
// or wall, the diameter of a bar (mm). The error is a *material.UnknownError or a
// *material.SectionError.
func Lookup(name string, sectionMm float64) (Material, error) {
	m, err := material.Find(name)
	if err != nil {
		return Material{}, err
	}
	s, err := m.Strength(sectionMm)
	if err != nil {
		return Material{}, err
	}
	strength := s.YieldMPa
	if s.Brittle {
		strength = s.TensileMPa
	}
	return Material{
		Name: m.Name, Family: m.Kind.Data().Family, EMPa: m.EMPa, Nu: m.Nu, AlphaPerK: m.AlphaPerK, ContractPerK: m.ContractPerK,
		StrengthMPa: strength, Brittle: s.Brittle, MaxHeatC: m.MaxHeatC, MinColdC: m.MinColdC, Source: s.Source,
	}, nil
}

// notNegative reports whether x is zero or above, and finite.
func notNegative(x float64) bool { return x >= 0 && !math.IsInf(x, 0) }
