package develop_test

import (
	"fmt"

	"centrepop/layout/develop"
)

// The wrap of a tube with one radial hole, and where the hole's centre lies.
func ExampleCylinder() {
	d, err := develop.Cylinder{
		DiameterMm: 114.3, PaperMm: 0.1, WidthMm: 100, TabMm: 15,
		Features: []develop.Feature{{Name: "grease port", Kind: develop.Hole, ClockDeg: 30, AxialMm: 40, DiameterMm: 10.2}},
	}.Develop()
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf("wrap length %.2f mm\n", d.WrapMm)
	for _, l := range d.Labels {
		if l.Text == "grease port" {
			fmt.Printf("%s: %.2f mm right of TOP, %.0f mm from the front face\n", l.Text, l.At.XMm, l.At.YMm)
		}
	}
	// Output:
	// wrap length 359.40 mm
	// grease port: 29.95 mm right of TOP, 40 mm from the front face
}

// A frustum whose blank does not fit the sheet in one piece.
func ExampleFrustum() {
	p, err := develop.Frustum{LargeDiameterMm: 300, SmallDiameterMm: 150, HeightMm: 200, SheetWidthMm: 500, SheetHeightMm: 500}.Develop()
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf("radii %.1f and %.1f mm, %d pieces of %.2f°\n", p.OuterRadiusMm, p.InnerRadiusMm, p.Gores, p.PieceAngleDeg)
	_, err = develop.Frustum{LargeDiameterMm: 300, SmallDiameterMm: 300, HeightMm: 200}.Develop()
	fmt.Println(err)
	// Output:
	// radii 427.2 and 213.6 mm, 2 pieces of 63.20°
	// develop: both ends are 300 mm: this is a cylinder, use the cylinder wrap
}
