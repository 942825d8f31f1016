package measured_test

import (
	"fmt"

	"centrepop/layout/measured"
)

// A motor flange with four holes of 12 mm, measured over neighbours and
// between opposite holes.
func ExampleFit() {
	d := measured.Diameter{Mm: 12}
	r, err := measured.Fit(measured.Survey{
		Holes:  []measured.Diameter{d, d, d, d},
		Spigot: measured.Diameter{Mm: 130.01, PlusMinusMm: 0.02},
		Readings: []measured.Reading{
			{From: 1, To: 2, Kind: measured.Over, Mm: 128.70},
			{From: 2, To: 3, Kind: measured.Over, Mm: 128.65},
			{From: 3, To: 4, Kind: measured.Over, Mm: 128.65},
			{From: 4, To: 1, Kind: measured.Over, Mm: 128.70},
			{From: 1, To: 3, Kind: measured.Between, Mm: 153.00},
			{From: 2, To: 4, Kind: measured.Between, Mm: 153.05},
		},
		FirstDeg: 45,
	})
	if err != nil {
		fmt.Println(err)
		return
	}
	near, _ := r.Nearest(false)
	fmt.Printf("pitch circle %.2f ± %.2f, equally spaced: %v\n", r.PCDMm, measured.CoverageFactor*r.PCDUMm, r.Equal)
	fmt.Println(near.Name, near.Matches, near.Thread)
	// Output:
	// pitch circle 165.02 ± 0.03, equally spaced: true
	// FF165 true M10
}
