package bolts_test

import (
	"fmt"

	"centrepop/layout/bolts"
)

// An 8 mm flange bolted to a 12 mm one with an M10 8.8 bolt, washers both
// sides.
func Example() {
	bolt, err := bolts.Find("M10")
	if err != nil {
		fmt.Println(err)
		return
	}
	choice, err := bolt.ChooseLength(bolts.Joint{GripMm: 20, HeadWashers: 1, NutWashers: 1})
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, c := range choice.Candidates {
		fmt.Printf("%s: %.1f mm past the nut", c.Name, c.ProtrusionMm)
		for _, p := range c.Problems {
			fmt.Printf(" (%s %.1f)", p.Kind, p.Mm)
		}
		fmt.Println()
	}
	fmt.Println("take", choice.Chosen.Name)
	torque, err := bolt.Tighten(bolts.Tightening{Class: "8.8", Condition: "lubricated"})
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf("%.0f N m for %.1f kN (%.1f to %.1f kN)\n", torque.TorqueNm, torque.PreloadN/1000, torque.PreloadLowN/1000, torque.PreloadHighN/1000)
	// Output:
	// M10 x 35: 2.6 mm past the nut (short-protrusion [2.6 3.0])
	// M10 x 40: 7.6 mm past the nut
	// M10 x 45: 12.6 mm past the nut (long-past-nut [12.6])
	// take M10 x 40
	// 38 N m for 25.3 kN (17.7 to 32.9 kN)
}
