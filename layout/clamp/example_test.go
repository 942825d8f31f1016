package clamp_test

import (
	"fmt"

	"centrepop/layout/bolts"
	"centrepop/layout/clamp"
)

// A stop ring of 60 on a shaft of 30, split by a cut of 2 and closed by an M6.
func ExampleRing_Work() {
	m6, err := bolts.Find("M6")
	if err != nil {
		fmt.Println(err)
		return
	}
	w, err := clamp.Ring{OutsideMm: 60, BoreMm: 30, SlotMm: 2, Bolt: m6, Class: "8.8"}.Work()
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf("screw %g mm off the axis, M6 × %g, %.1f mm of metal to the bore\n", w.AtMm, w.LongMm, w.InnerMm)
	// Output:
	// screw 22.5 mm off the axis, M6 × 25, 4.2 mm of metal to the bore
}
