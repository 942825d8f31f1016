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

func ExamplePlanBars() {
	bars, err := cutting.PlanBars([]cutting.Piece{
		{Name: "shaft", LengthMm: 820, Count: 2},
		{Name: "spacer", LengthMm: 55, Count: 6},
	}, 1000, 2, 5)
	if err != nil {
		fmt.Println(err)
		return
	}
	for i, b := range bars {
		fmt.Printf("bar %d:", i+1)
		for _, c := range b.Cuts {
			fmt.Printf(" %s %g at %g,", c.Name, c.LengthMm, c.FromMm)
		}
		fmt.Printf(" left %g\n", b.OffcutMm)
	}
	// Output:
	// bar 1: shaft 820 at 5, spacer 55 at 827, spacer 55 at 884, spacer 55 at 941, left 2
	// bar 2: shaft 820 at 5, spacer 55 at 827, spacer 55 at 884, spacer 55 at 941, left 2
}
