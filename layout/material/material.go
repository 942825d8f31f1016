// Package material is the one table of materials: every name of a grade, and
// what pressing, heating, cutting, threading, welding and weighing ask of it.
//
// In: a name as people write it ("S235JR", "St 37-2", "1.0503", "AISI 1045",
// "GG-25") and, for strength, the thickness or diameter of the stock. Out:
// numbers in MPa, 1/K, kg/m3, degrees Celsius, m/min and volts, each column with
// its source (see Columns and Material.StrengthSource). A name or a section that
// the table does not know is an error value with what is known.
//
// Standards: EN 10025, EN 10028, EN 10130, EN 10210, EN 10216, EN 10219, EN
// 10297 and EN 10088 (steels), EN ISO 683-1 and -2 and EN 10277 (bars), EN 1561,
// EN 1562 and EN 1563 (irons), EN 755-2 (aluminium), EN 1982, EN 12163 and EN
// 12164 (copper alloys), DIN 7190 (joining), EN 1993-1-8 (welds), ASTM and SAE
// where a grade is theirs. testdata/reference/materials.csv tells row by row
// which figures were looked up.
package material

import (
	"fmt"

	"centrepop/layout/lookup"
)

// Span is a lowest and a highest value, in the unit of its field.
type Span struct {
	Min, Max float64
}

// Family groups metals that rub, are heated and are welded alike.
type Family int

// The families.
const (
	Steel Family = iota // stainless steel too
	CastIron
	CopperAlloy
	Aluminium
)

// Material is one grade. Figures are at room temperature.
type Material struct {
	Name        string // as printed: "EN-GJL-250"
	Kind        Kind
	DensityKgM3 float64 // kg/m3
	EMPa        float64 // Young's modulus, MPa
	Nu          float64 // Poisson's ratio
	// AlphaPerK is the expansion on heating from room temperature, 1/K, and
	// ContractPerK the smaller contraction on deep cooling.
	AlphaPerK    float64
	ContractPerK float64
	MaxHeatC     float64 // do not heat above for joining, degrees Celsius
	MinColdC     float64 // do not cool below for joining, degrees Celsius
	HardHRC      float64 // what its surface is sure to reach when flame, induction or case hardened; Unhardened, or 0 if not known
	Weld         Weldability
	BetaW        float64 // correlation factor of fillets, EN 1993-1-8 Table 4.1; 0 if the standard has none

	steps []Step
	src   string
	state lookup.State
	asked string // the name looked for, when it has a mark the table does not know
}

// Unhardened is the hardness of a metal that no heating and quenching hardens enough for a seat.
const Unhardened = -1

// Step is a strength up to a thickness or diameter of the stock.
type Step struct {
	UpToMm     float64 // largest thickness (plate, tube wall) or diameter (bar), mm; AnySize when the source ties it to none
	YieldMPa   float64 // yield or 0.2 % proof stress, MPa; 0 for a brittle iron, which has none
	TensileMPa float64 // least tensile strength, MPa; 0 where none is kept
}

// AnySize is the section of a strength that its source ties to no size, mm.
const AnySize = 1e6

// Strength is what the stock is sure to have.
type Strength struct {
	YieldMPa   float64 // MPa; 0 if Brittle
	TensileMPa float64 // MPa; 0 where none is kept
	Brittle    bool    // grey iron: judge by the greatest tension
	Source     string  // standard and table, with its state in words
}

// SectionError tells that no strength is kept for a section or a condition.
type SectionError struct {
	Material  string
	SectionMm float64 // as asked
	UpToMm    float64 // where the table ends, mm; 0 if it keeps no strength at all
	Condition string  // the whole name, when its mark is not known
}

// Error says it in a line.
func (e *SectionError) Error() string {
	switch {
	case e.Condition != "":
		return fmt.Sprintf("material: no strength for %s in the condition of %q", e.Material, e.Condition)
	case e.UpToMm == 0:
		return fmt.Sprintf("material: no strength is kept for %s", e.Material)
	case !(e.SectionMm > 0):
		return fmt.Sprintf("material: section %v mm is not a positive number", e.SectionMm)
	}
	return fmt.Sprintf("material: no strength for %s at a section of %.0f mm: the table ends at %.0f mm", e.Material, e.SectionMm, e.UpToMm)
}

// Strength returns the strength of stock of sectionMm, the size as bought that
// the standard goes by: the thickness of plate or wall, the diameter of a bar
// (mm). The error is a *SectionError.
func (m Material) Strength(sectionMm float64) (Strength, error) {
	e := &SectionError{Material: m.Name, SectionMm: sectionMm, Condition: m.asked}
	if len(m.steps) > 0 {
		e.UpToMm = m.steps[len(m.steps)-1].UpToMm
	}
	if !(sectionMm > 0) || m.asked != "" {
		return Strength{}, e
	}
	for _, s := range m.steps {
		if sectionMm <= s.UpToMm {
			return Strength{s.YieldMPa, s.TensileMPa, s.YieldMPa == 0, m.StrengthSource()}, nil
		}
	}
	return Strength{}, e
}

// Steps returns a copy of the strengths, sections rising.
func (m Material) Steps() []Step { return append([]Step(nil), m.steps...) }

// StrengthSource returns standard and table of the strengths with their state in
// words; empty if none is kept.
func (m Material) StrengthSource() string {
	if m.src == "" || m.state == lookup.Checked {
		return m.src
	}
	return m.src + " (" + m.state.String() + ")"
}

// StrengthState returns how well the strengths are known.
func (m Material) StrengthState() lookup.State { return m.state }
