package press_test

import (
	"fmt"

	"centrepop/layout/press"
)

// A 50 H7/s6 seat (hub +0.025/0, shaft +0.059/+0.043), hub 80 outside, 40 long.
func Example() {
	steel, err := press.Lookup("S355", 15)
	if err != nil {
		fmt.Println(err)
		return
	}
	friction, err := press.FrictionFor(steel, steel, press.PressedOiled)
	if err != nil {
		fmt.Println(err)
		return
	}
	in := press.Input{
		Hub:      press.Member{OutsideMm: 80, InsideMm: 50, Material: steel},
		Shaft:    press.Member{OutsideMm: 50, Material: steel},
		LengthMm: 40, Friction: friction,
	}
	fit, err := press.Range(in, 0.043-0.025, 0.059)
	if err != nil {
		fmt.Println(err)
		return
	}
	force := fit.ForceN()
	fmt.Printf("press with %.0f to %.0f kN; hub safety %.1f\n", force.Min/1000, force.Max/1000, fit.Tightest.HubSafety)
	hot, err := press.Heat(press.Joint{Hub: in.Hub, Shaft: in.Shaft, InterferenceMm: 0.059, RoomC: 20, ShaftC: 20})
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf("or heat the hub to %.0f C\n", hot.HubC)
	// Output:
	// press with 7 to 57 kN; hub safety 1.6
	// or heat the hub to 218 C
}
