package material_test

import (
	"testing"

	"centrepop/layout/material"
)

// Volts by the series in sea water that testdata/reference/materials.csv quotes:
// mild steel and iron −0.60 to −0.71, aluminium −0.76 to −1.00, yellow brass
// −0.30 to −0.40, tin bronze −0.24 to −0.31, 400 stainless −0.46 to −0.58,
// 300 stainless −0.05 passive to −0.58 active; the middle of each.
func TestGalvanic(t *testing.T) {
	t.Parallel()
	for _, c := range []struct {
		a, b, eaten material.Kind
		apartV      float64
		unlike      bool
	}{
		{material.MildSteel, material.AluminiumAlloy, material.AluminiumAlloy, 0.225, true},
		{material.AluminiumAlloy, material.AusteniticStainless, material.AluminiumAlloy, 0.565, true},
		{material.AusteniticStainless, material.MildSteel, material.MildSteel, 0.34, true},
		{material.TinBronze, material.MildSteel, material.MildSteel, 0.38, true},
		{material.FreeBrass, material.GreyIron, material.GreyIron, 0.305, true},
		{material.ChromiumStainless, material.AlloySteel, material.AlloySteel, 0.135, false},
		{material.GreyIron, material.MildSteel, material.GreyIron, 0, false},
	} {
		eaten, v := material.Galvanic(c.a, c.b)
		if eaten != c.eaten || v != c.apartV || (v > material.UnlikeV) != c.unlike {
			t.Errorf("%s and %s: %s is eaten, %v V apart; want %+v", c.a.Data().Name, c.b.Data().Name, eaten.Data().Name, v, c)
		}
	}
	for _, c := range []struct {
		a, b material.Kind
		want bool
	}{
		{material.AusteniticStainless, material.ChromiumStainless, true}, {material.AusteniticStainless, material.MildSteel, false}, {material.MildSteel, material.MildSteel, false},
	} {
		if material.Galls(c.a, c.b) != c.want {
			t.Errorf("%s on %s", c.a.Data().Name, c.b.Data().Name)
		}
	}
}
