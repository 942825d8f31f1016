package assembly_test

import (
	"fmt"

	"centrepop/layout/assembly"
)

// A spigot 0.2 mm too large in radius for its bore, and what the two weigh.
func Example() {
	housing := assembly.Of(assembly.Tube(80, 50, 0, 60))
	cover := assembly.Of(assembly.Turned([]assembly.ZR{{Z: -15, R: 80}, {Z: 0, R: 80}, {Z: 0, R: 50.2}, {Z: 10, R: 50.2}}, nil))
	bodies := []assembly.Body{
		{ID: "housing", Solid: housing, Pose: assembly.Still, DensityKgM3: 7850},
		{ID: "cover", Solid: cover, Pose: assembly.Still, DensityKgM3: 7850},
	}
	for _, o := range assembly.Overlaps(bodies, nil, assembly.Usual) {
		fmt.Printf("%s in %s by %.2f mm\n", o.B, o.A, o.DepthMm)
	}
	g := assembly.Together(bodies)
	fmt.Printf("%.2f kg, centre %.1f mm along the axis\n", g.MassKg, g.Centre.Z)
	// Output:
	// cover in housing by 0.20 mm
	// 8.76 kg, centre 18.1 mm along the axis
}
