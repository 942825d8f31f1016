package material

import (
	"regexp"
	"slices"
	"strings"
)

// Nonmetal is a plastic or a rubber: the table keeps no strength of it, and no speeds to cut it by.
type Nonmetal struct {
	Name        string // as its standard has it: "PA6", "NBR"
	Kind        string // "plastic" or "rubber"
	DensityKgM3 float64
}

// nonmetals are the plastics (ISO 1043-1) and rubbers (ISO 1629), with further names in normal form. Densities are the
// specific gravities of the Machinery's Handbook's table of plastics, as engineersedge.com prints it; those of
// rubbers, which hang on what is mixed into them, are not kept.
var nonmetals = []struct {
	Nonmetal
	names string
}{
	{Nonmetal{"PA6", Plastic, 1160}, "PA6G NYLON NYLON6 POLYAMIDE"}, {Nonmetal{"PA66", Plastic, 1140}, "NYLON66"},
	{Nonmetal{"POM", Plastic, 1410}, "POMC POMH ACETAL"}, {Nonmetal{"PE-UHMW", Plastic, 940}, "UHMWPE UHMW PE1000"}, {Nonmetal{"PE-HD", Plastic, 970}, "HDPE PE PE300"},
	{Nonmetal{"PP", Plastic, 910}, "POLYPROPYLENE"}, {Nonmetal{"PVC", Plastic, 1390}, "PVCU"}, {Nonmetal{"PTFE", Plastic, 2190}, ""}, {Nonmetal{"PVDF", Plastic, 1770}, ""},
	{Nonmetal{"PMMA", Plastic, 1190}, "ACRYLIC"}, {Nonmetal{"PC", Plastic, 1190}, "POLYCARBONATE"}, {Nonmetal{"PET", Plastic, 1360}, "PETP"}, {Nonmetal{"ABS", Plastic, 1050}, ""},
	{Nonmetal{"NBR", Rubber, 0}, "NITRILE HNBR"}, {Nonmetal{"EPDM", Rubber, 0}, "EPM"}, {Nonmetal{"CR", Rubber, 0}, "NEOPRENE CHLOROPRENE"}, {Nonmetal{"SBR", Rubber, 0}, "RUBBER"},
	{Nonmetal{"NR", Rubber, 0}, "NATURALRUBBER"}, {Nonmetal{"VMQ", Rubber, 0}, "SILICONE"}, {Nonmetal{"FKM", Rubber, 0}, "FPM"}, {Nonmetal{"IIR", Rubber, 0}, "BUTYL"},
	{Nonmetal{"PUR", Rubber, 0}, "PU TPU AU POLYURETHANE"},
}

const Plastic, Rubber = "plastic", "rubber"

// hardness may follow the name of a rubber: "70", "70 Shore A".
var hardness = regexp.MustCompile(`^[3-9]\d(SH|SHORE)?A?$`)

// FindNonmetal is the plastic or rubber of a name, in any case, with or without spaces and hyphens, a rubber with its
// hardness behind or before it; ok is false for another.
func FindNonmetal(name string) (Nonmetal, bool) {
	n := normal(name)
	for _, m := range nonmetals {
		for _, known := range append(strings.Fields(m.names), normal(m.Name)) {
			behind, ok := strings.CutPrefix(n, known)
			before, ends := strings.CutSuffix(n, known)
			if n == known || m.Kind == Rubber && slices.ContainsFunc([]string{behind, before}, hardness.MatchString) && (ok || ends) {
				return m.Nonmetal, true
			}
		}
	}
	return Nonmetal{}, false
}
