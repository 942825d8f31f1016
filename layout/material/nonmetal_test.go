package material

import (
	"fmt"
	"testing"

	"centrepop/parts/golden"
)

func TestFindNonmetal(t *testing.T) {
	for name, want := range map[string]Nonmetal{
		"PA6": {"PA6", Plastic, 1160}, "pa 6 g": {"PA6", Plastic, 1160}, "nylon 66": {"PA66", Plastic, 1140}, "POM-C": {"POM", Plastic, 1410}, "UHMW-PE": {"PE-UHMW", Plastic, 940},
		"NBR": {"NBR", Rubber, 0}, "NBR 70": {"NBR", Rubber, 0}, "EPDM 60 Shore A": {"EPDM", Rubber, 0}, "70 NBR": {"NBR", Rubber, 0}, "silicone": {"VMQ", Rubber, 0},
		"CR4": {}, "CR 40": {"CR", Rubber, 0}, "PC45": {}, "PA70": {}, "C45": {}, "": {}, "Unobtainium": {},
	} {
		if got, ok := FindNonmetal(name); got != want || ok != (want.Name != "") {
			t.Errorf("%q: %+v, %v", name, got, ok)
		}
	}
}

// The pressures under heads and the densities of plastics are those of testdata/reference/tables.csv; every metal whose
// pressure is kept is in the table of materials, and no name of a plastic or a rubber is that of a metal.
func TestPressures(t *testing.T) {
	golden.Held(t, "VDI 2230 pressure under heads: grade, MPa", golden.Pairs(pressures))
	for name, mpa := range pressures {
		if m, err := Find(name); err != nil || m.PressureMPa() != mpa || m.Name != name {
			t.Errorf("%s: %v %v", name, m.Name, err)
		}
	}
	if m, err := Find("CuSn12"); err != nil || m.PressureMPa() != 0 {
		t.Errorf("bronze bears %v: %v", m.PressureMPa(), err)
	}
	var plastics []string
	for _, n := range nonmetals {
		if n.Kind == Plastic {
			plastics = append(plastics, fmt.Sprint(n.Name, " ", n.DensityKgM3))
		} else if n.DensityKgM3 != 0 {
			t.Errorf("%s has a density", n.Name)
		}
		if m, err := Find(n.Name); err == nil {
			t.Errorf("%s is a metal too: %s", n.Name, m.Name)
		}
	}
	golden.Held(t, "plastics: density, kg/m³", plastics)
}
