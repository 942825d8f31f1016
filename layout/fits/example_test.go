package fits_test

import (
	"fmt"

	"centrepop/layout/fits"
)

func ExampleBetween() {
	f, err := fits.Between(90, "H7/p6")
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf("bore  %.3f – %.3f\n", f.Hole.MinMm, f.Hole.MaxMm)
	fmt.Printf("shaft %.3f – %.3f\n", f.Shaft.MinMm, f.Shaft.MaxMm)
	fmt.Printf("%s, %v to %v µm\n", f.Kind, -f.ClearanceMaxUm, -f.ClearanceMinUm)
	// Output:
	// bore  90.000 – 90.035
	// shaft 90.037 – 90.059
	// interference, 2 to 59 µm
}

func ExampleLimit_refused() {
	_, err := fits.Limit(20, "t6")
	fmt.Println(err)
	// Output:
	// fits: 20 mm t6: not defined by the standard: letter T of hole and shaft is given only above 24 mm; nearest defined: s6
}
