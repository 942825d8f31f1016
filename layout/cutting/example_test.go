package cutting_test

import (
	"fmt"

	"centrepop/layout/cutting"
	"centrepop/layout/material"
)

// A 10 mm HSS drill in mild steel on a small lathe.
func Example() {
	steel, err := material.Find("S235JR")
	if err != nil {
		fmt.Println(err)
		return
	}
	speed, _, err := cutting.Speed(steel.Kind, cutting.Drill, cutting.HSS)
	if err != nil {
		fmt.Println(err)
		return
	}
	want := cutting.SpindleRPM(speed.MidMPerMin(), 10)
	rpm, note := cutting.ChooseSpeed(want, []float64{70, 115, 190, 300, 480, 755, 1200})
	fmt.Printf("%s: %.0f to %.0f m/min, want %.0f, set %.0f rpm%s\n", steel.Kind.Data().Name, speed.MinMPerMin, speed.MaxMPerMin, want, rpm, note)
	// Output: mild steel: 20 to 30 m/min, want 796, set 755 rpm
}
