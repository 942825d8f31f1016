package weld_test

import (
	"fmt"

	"centrepop/layout/weld"
)

// A 10 mm flange on a 114.3 x 6.3 tube with MAG.
func Example() {
	joint := weld.FilletJoint{ThinnerMm: 6.3, ThickerMm: 10, LowHydrogen: true}
	leg, rule, err := weld.SuggestLeg(joint)
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf("leg %g mm, throat %.1f mm (%s)\n", leg, weld.Throat(leg), rule)
	tacks, err := weld.TackCircle(114.3, 6.3, 10, 45)
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, t := range tacks.Tacks {
		fmt.Printf("tack at %g, ", t.ClockDeg)
	}
	runs, err := weld.RunOrder(114.3, 1, 0)
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, r := range runs {
		fmt.Printf("run %g to %g, ", r.StartDeg, r.EndDeg)
	}
	fmt.Println("let cool")
	// Output:
	// leg 5 mm, throat 3.5 mm (0.7 of the thinner part, common practice)
	// tack at 45, tack at 225, tack at 135, tack at 315, run 0 to 90, run 180 to 270, run 90 to 180, run 270 to 0, let cool
}
