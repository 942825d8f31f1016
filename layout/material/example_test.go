package material_test

import (
	"fmt"

	"centrepop/layout/material"
)

func Example() {
	m, err := material.Find("Ck45")
	if err != nil {
		fmt.Println(err)
		return
	}
	s, err := m.Strength(60)
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf("%s at 60 mm: yield %.0f MPa, %.0f kg/m3, heat to %.0f C at most\n", m.Name, s.YieldMPa, m.DensityKgM3, m.MaxHeatC)
	_, err = material.Find("S2355")
	fmt.Println(err)
	// Output:
	// C45+N at 60 mm: yield 305 MPa, 7850 kg/m3, heat to 350 C at most
	// material: unknown material "S2355"; nearest: S235, S355, E235
}
