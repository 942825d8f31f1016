package press

import (
	"fmt"
	"strings"
)

// Family groups materials that rub and are heated alike.
type Family int

// The families.
const (
	Steel Family = iota
	CastIron
	CopperAlloy
	Aluminium
)

// Material holds what the formulas need. All figures are at room temperature.
type Material struct {
	Name         string
	Family       Family
	EMPa         float64 // Young's modulus, MPa
	Nu           float64 // Poisson's ratio, 0 to below 0.5
	AlphaPerK    float64 // expansion on heating, 1/K
	ContractPerK float64 // contraction on deep cooling, 1/K; smaller than AlphaPerK
	StrengthMPa  float64 // yield or 0.2 % proof stress; tensile strength if Brittle, MPa
	// Brittle materials have no yield: the greatest tension is compared with
	// StrengthMPa, and the greatest compression with three times it (grey iron
	// stands 3 to 4 times its tensile strength in compression, EN 1561, from
	// memory).
	Brittle     bool
	DensityKgM3 float64 // kg/m3
	MaxHeatC    float64 // do not heat above, degrees Celsius; 0 when not known
	Source      string  // of the strength, then of the limit
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

// safety returns strength over the governing stress at the worse of two states.
func (m Material) safety(a, b Stress) float64 {
	govern := func(s Stress) float64 {
		if !m.Brittle {
			return s.VonMisesMPa
		}
		tension := max(s.HoopMPa, s.RadialMPa, 0)
		compression := -min(s.HoopMPa, s.RadialMPa, 0)
		return max(tension, compression/3)
	}
	worst := max(govern(a), govern(b))
	return min(m.StrengthMPa/worst, maxSafety)
}

// step is a strength valid up to a section thickness.
type step struct {
	upToMm float64
	mpa    float64
}

// material is a row of the table: elastic data by family, strength by section.
type material struct {
	name    string   // as printed
	also    []string // other names, normal form
	family  Family
	base    elastic
	steps   []step // rising; the last holds to its size and no further
	brittle bool
	maxC    float64
	src     string
}

// elastic is the part of the data that a whole family shares.
type elastic struct {
	eMPa, nu, alpha, contract, density float64
}

// Elastic data. Steel: E and nu EN 1993-1-1, 3.2.6; expansion 11e-6 as in DIN
// 7190 (EN 1993-1-1 has 12e-6; the smaller asks the higher temperature).
// Contraction on cooling: DIN 7190 table for inner parts. The rest: data sheets.
// All from memory, cross-checked with a published press-fit material table.
var (
	steelData     = elastic{210000, 0.30, 11.0e-6, 8.5e-6, 7850}
	stainlessData = elastic{200000, 0.30, 16.0e-6, 13.0e-6, 7900}
	greyData      = elastic{110000, 0.26, 10.0e-6, 8.0e-6, 7200}
	ductileData   = elastic{169000, 0.275, 10.0e-6, 8.0e-6, 7100}
	aluminiumData = elastic{70000, 0.33, 23.0e-6, 18.0e-6, 2700}
	brassData     = elastic{97000, 0.34, 18.0e-6, 16.0e-6, 8470}
	tinData       = elastic{110000, 0.34, 17.0e-6, 14.0e-6, 8800}
	gunmetalData  = elastic{100000, 0.34, 17.0e-6, 14.0e-6, 8800}
	aluBronzeData = elastic{120000, 0.33, 16.0e-6, 14.0e-6, 7600}
)

const noLimit = 1e6 // mm; a strength the standard does not tie to a section

// table of materials. Heat limits: DIN 7190 joining temperatures (350 plain
// structural steel and ductile iron, 300 quenched and tempered, from memory);
// others as the source says.
var table = []material{
	{"S235", []string{"MILDSTEEL", "STEEL", "ST37", "P235"}, Steel, steelData, []step{{16, 235}, {40, 225}, {100, 215}, {150, 195}, {200, 185}, {250, 175}}, false, 350, "EN 10025-2 (from memory)"},
	{"S275", []string{"ST44", "P265"}, Steel, steelData, []step{{16, 275}, {40, 265}, {63, 255}, {80, 245}, {100, 235}, {150, 225}, {200, 215}, {250, 205}}, false, 350, "EN 10025-2 (from memory)"},
	{"S355", []string{"ST52", "P355"}, Steel, steelData, []step{{16, 355}, {40, 345}, {63, 335}, {80, 325}, {100, 315}, {150, 295}, {200, 285}, {250, 275}}, false, 350, "EN 10025-2 (from memory)"},
	{"S420", nil, Steel, steelData, []step{{16, 420}, {40, 400}, {63, 390}, {80, 370}, {100, 360}}, false, 350, "EN 10025-3 (from memory)"},
	{"S460", nil, Steel, steelData, []step{{16, 460}, {40, 440}, {63, 430}, {80, 410}, {100, 400}}, false, 350, "EN 10025-3 (from memory)"},
	{"E295", nil, Steel, steelData, []step{{16, 295}, {40, 285}, {63, 275}, {80, 265}, {100, 255}, {150, 245}}, false, 350, "EN 10025-2 (from memory)"},
	{"E335", nil, Steel, steelData, []step{{16, 335}, {40, 325}, {63, 315}, {80, 305}, {100, 295}, {150, 275}}, false, 350, "EN 10025-2 (from memory)"},
	{"E360", nil, Steel, steelData, []step{{16, 360}, {40, 355}, {63, 345}, {80, 335}, {100, 325}, {150, 305}}, false, 350, "EN 10025-2 (from memory)"},
	{"E235", nil, Steel, steelData, []step{{16, 235}, {40, 225}, {65, 215}}, false, 350, "EN 10297-1 tube (from memory)"},
	{"E355", nil, Steel, steelData, []step{{16, 355}, {40, 345}, {65, 335}}, false, 350, "EN 10297-1 tube (from memory)"},
	{"A36", nil, Steel, steelData, []step{{203, 250}}, false, 350, "ASTM A36, 36 ksi (from memory)"},
	{"A53 grade B", []string{"A53", "A106"}, Steel, steelData, []step{{noLimit, 240}}, false, 350, "ASTM A53 and A106 grade B, 35 ksi (from memory)"},
	{"A500 grade B", []string{"A500"}, Steel, steelData, []step{{noLimit, 290}}, false, 350, "ASTM A500 grade B round, 42 ksi (from memory)"},
	{"A513 1020 DOM", []string{"A513", "DOM", "1020DOM"}, Steel, steelData, []step{{noLimit, 414}}, false, 350, "ASTM A513 type 5, 60 ksi (from memory)"},
	{"A572 grade 50", []string{"A572", "A992"}, Steel, steelData, []step{{100, 345}}, false, 350, "ASTM A572 and A992, 50 ksi (from memory)"},
	{"1018 hot rolled", []string{"1018", "1020"}, Steel, steelData, []step{{noLimit, 205}}, false, 350, "data sheets, 30 ksi, the careful figure for a bare name (from memory)"},
	{"1018 cold drawn", []string{"1018CD", "1020CD"}, Steel, steelData, []step{{50, 370}, {75, 345}}, false, 350, "data sheets, 54 and 50 ksi (from memory)"},
	{"1215 cold drawn", []string{"1215", "12L14", "11SMN30", "11SMNPB30"}, Steel, steelData, []step{{16, 400}, {40, 375}, {63, 305}, {100, 245}}, false, 350, "EN 10277 for 11SMn30+C (from memory)"},
	{"1045 hot rolled", []string{"1045", "1040"}, Steel, steelData, []step{{noLimit, 310}}, false, 350, "data sheets, 45 ksi (from memory)"},
	{"4140 annealed", []string{"4140"}, Steel, steelData, []step{{noLimit, 415}}, false, 350, "data sheets, 60 ksi (from memory)"},
	{"C35+N", []string{"C35", "C35E"}, Steel, steelData, []step{{16, 300}, {100, 270}, {250, 245}}, false, 350, "EN ISO 683-1 normalized (from memory)"},
	{"C60+N", []string{"C60", "C60E", "CK60"}, Steel, steelData, []step{{16, 380}, {100, 340}, {250, 310}}, false, 350, "EN ISO 683-1 normalized (from memory)"},
	{"C45+N", []string{"C45", "C45E", "CK45", "1.0503", "1.1191"}, Steel, steelData, []step{{16, 340}, {100, 305}, {250, 275}}, false, 350, "EN ISO 683-1 normalized (from memory)"},
	{"C45+QT", []string{"C45EQT", "C45QT"}, Steel, steelData, []step{{16, 490}, {40, 430}, {100, 370}}, false, 300, "EN ISO 683-1 quenched and tempered (from memory)"},
	{"42CrMo4+QT", []string{"42CRMO4", "42CRMO4QT", "1.7225", "4140QT"}, Steel, steelData, []step{{16, 900}, {40, 750}, {100, 650}, {160, 550}, {250, 500}}, false, 300, "EN ISO 683-2 quenched and tempered (from memory)"},
	{"34CrNiMo6+QT", []string{"34CRNIMO6", "1.6582"}, Steel, steelData, []step{{16, 1000}, {40, 900}, {100, 800}, {160, 700}, {250, 600}}, false, 300, "EN ISO 683-2 quenched and tempered (from memory)"},
	{"1.4305 stainless", []string{"1.4305", "303"}, Steel, stainlessData, []step{{160, 190}}, false, 350, "EN 10088-3 (from memory); limit common practice"},
	{"1.4301 stainless", []string{"1.4301", "304", "304L", "1.4307", "STAINLESS", "STAINLESSSTEEL"}, Steel, stainlessData, []step{{250, 175}}, false, 350, "EN 10088-3, lower of 1.4301 and 1.4307 (from memory); limit common practice"},
	{"1.4404 stainless", []string{"1.4401", "1.4404", "316", "316L"}, Steel, stainlessData, []step{{250, 200}}, false, 350, "EN 10088-3 (from memory); limit common practice"},
	{"EN-GJL-250", []string{"ENGJL250", "GJL250", "GG25", "CASTIRON", "GREYCASTIRON", "GRAYCASTIRON"}, CastIron, greyData, []step{{10, 250}, {20, 225}, {40, 195}, {80, 170}, {150, 155}}, true, 250, "EN 1561, tensile strength expected in the casting (from memory); limit common practice: heat slowly"},
	{"EN-GJL-200", []string{"ENGJL200", "GJL200", "GG20"}, CastIron, greyData, []step{{10, 205}, {20, 180}, {40, 155}, {80, 130}, {150, 115}}, true, 250, "EN 1561, tensile strength expected in the casting (from memory); limit common practice: heat slowly"},
	{"EN-GJL-300", []string{"ENGJL300", "GJL300", "GG30"}, CastIron, greyData, []step{{20, 270}, {40, 240}, {80, 210}, {150, 195}}, true, 250, "EN 1561, tensile strength expected in the casting (from memory); limit common practice: heat slowly"},
	{"EN-GJS-500-7", []string{"ENGJS5007", "GJS5007", "GGG50"}, CastIron, ductileData, []step{{30, 320}, {60, 300}, {200, 290}}, false, 350, "EN 1563 (from memory)"},
	{"A536 65-45-12", []string{"A536", "654512"}, CastIron, ductileData, []step{{noLimit, 310}}, false, 350, "ASTM A536, 45 ksi (from memory)"},
	{"EN-GJS-400-15", []string{"ENGJS40015", "GJS40015", "GGG40", "DUCTILEIRON"}, CastIron, ductileData, []step{{30, 250}, {60, 250}, {200, 240}}, false, 350, "EN 1563 (from memory)"},
	{"EN AW-6082 T6", []string{"ENAW6082", "ENAW6082T6", "6082", "6082T6", "ALUMINIUM", "ALUMINUM"}, Aluminium, aluminiumData, []step{{20, 250}, {150, 260}, {200, 240}}, false, 150, "EN 755-2 (from memory); limit common practice: T6 softens above"},
	{"6061-T6", []string{"6061", "6061T6", "ENAW6061"}, Aluminium, aluminiumData, []step{{200, 240}}, false, 150, "ASTM B221, 35 ksi (from memory); limit common practice: T6 softens above"},
	{"CuZn39Pb3", []string{"BRASS", "CW614N", "C360", "C36000", "CZ121"}, CopperAlloy, brassData, []step{{20, 250}, {60, 180}}, false, 200, "EN 12164 R430 and R380 (from memory); limit common practice"},
	{"CuSn8", []string{"PHOSPHORBRONZE", "CW453K", "CUSN8P"}, CopperAlloy, tinData, []step{{20, 300}, {60, 240}}, false, 200, "EN 12163 hard-drawn rod (from memory); limit common practice"},
	{"CuSn12-C", []string{"CUSN12", "CUSN12C", "PB1"}, CopperAlloy, gunmetalData, []step{{noLimit, 150}}, false, 200, "EN 1982, continuous or centrifugal cast (from memory); limit common practice"},
	{"CuSn7Zn4Pb7-C", []string{"BRONZE", "GUNMETAL", "RG7", "CUSN7ZN4PB7", "CUSN7ZN4PB7C", "SAE660", "660", "C932", "C93200"}, CopperAlloy, gunmetalData, []step{{noLimit, 120}}, false, 200, "EN 1982, continuous or centrifugal cast (from memory); limit common practice"},
	{"CuAl10Fe5Ni5-C", []string{"ALUMINIUMBRONZE", "ALUMINUMBRONZE", "CUAL10FE5NI5", "CUAL10NI5FE4", "CUAL10FE5NI5C"}, CopperAlloy, aluBronzeData, []step{{noLimit, 250}}, false, 250, "EN 1982 (from memory); limit common practice"},
}

// normal brings a material name to one form: upper case without spaces,
// hyphens, plus signs, slashes and underscores.
func normal(s string) string {
	return strings.NewReplacer(" ", "", "-", "", "+", "", "_", "", "/", "").Replace(strings.ToUpper(s))
}

// marks are delivery and quality marks that may follow a structural steel's
// name without changing its yield stress.
var marks = []string{"JRN", "JR", "J0N", "J0", "J2N", "J2G3", "J2", "K2N", "K2", "JRH", "J0H", "J2H", "N", "NL", "GH", "TR1", "TR2", "AR", "M"}

// Lookup returns the material of that name for a section of sectionMm (the
// thickness that rules its strength: the wall of a tube or ring as supplied, the
// diameter of a bar; mm). Names are taken in any case, with or without AISI, SAE,
// ASTM before them and a quality mark after a structural steel (S355J2+N). It
// errs for an unknown name, listing the known, and for a section beyond the table.
func Lookup(name string, sectionMm float64) (Material, error) {
	if !positive(sectionMm) {
		return Material{}, fmt.Errorf("press: section %v mm is not a positive number", sectionMm)
	}
	row, ok := find(name)
	if !ok {
		return Material{}, fmt.Errorf("press: unknown material %q; known: %s", name, strings.Join(Known(), ", "))
	}
	for _, s := range row.steps {
		if sectionMm <= s.upToMm {
			e := row.base
			return Material{row.name, row.family, e.eMPa, e.nu, e.alpha, e.contract, s.mpa, row.brittle, e.density, row.maxC, row.src}, nil
		}
	}
	return Material{}, fmt.Errorf("press: no strength for %s at a section of %.0f mm: the table ends at %.0f mm", row.name, sectionMm, row.steps[len(row.steps)-1].upToMm)
}

func find(name string) (material, bool) {
	n := normal(name)
	for _, body := range []string{"ASTM", "AISI", "SAE"} {
		if rest, ok := strings.CutPrefix(n, body); ok && n != "SAE660" {
			n = rest
			break
		}
	}
	for _, row := range table {
		for _, known := range append([]string{normal(row.name)}, row.also...) {
			if n == known {
				return row, true
			}
			if row.base != steelData {
				continue
			}
			for _, m := range marks {
				if n == known+m {
					return row, true
				}
			}
		}
	}
	return material{}, false
}

// Known returns the names of the materials in table order.
func Known() []string {
	out := make([]string, len(table))
	for i, row := range table {
		out[i] = row.name
	}
	return out
}
