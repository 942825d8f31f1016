package cutting_test

import (
	"fmt"
	"testing"

	"centrepop/layout/cutting"
)

// A 10 mm HSS drill in mild steel on a small lathe.
func Example() {
	group, err := cutting.MaterialGroup("S235JR")
	if err != nil {
		fmt.Println(err)
		return
	}
	speed, _, err := group.Speed(cutting.Drill, cutting.HSS)
	if err != nil {
		fmt.Println(err)
		return
	}
	want := cutting.SpindleRPM(speed.MidMPerMin(), 10)
	rpm, note := cutting.ChooseSpeed(want, []float64{70, 115, 190, 300, 480, 755, 1200})
	fmt.Printf("%s: %.0f to %.0f m/min, want %.0f, set %.0f rpm%s\n", group.Name, speed.MinMPerMin, speed.MaxMPerMin, want, rpm, note)
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

// Any text is either a group with usable figures or an error, never both.
func FuzzMaterialGroup(f *testing.F) {
	for _, seed := range []string{"S355J2+N", "EN-GJL-250", "", "S", "A", "SAE", "1.4301", "EN AW-6082 T6", "stål", "S235\x00", "GG"} {
		f.Add(seed)
	}
	f.Fuzz(func(t *testing.T, name string) {
		g, err := cutting.MaterialGroup(name)
		if (err == nil) != (g.Name != "") {
			t.Fatalf("%q: group %q and error %v", name, g.Name, err)
		}
		if err == nil && !(g.DensityKgM3 > 2000 && g.DensityKgM3 < 10000) {
			t.Fatalf("%q: density %v", name, g.DensityKgM3)
		}
	})
}
