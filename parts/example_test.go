package parts_test

import (
	"fmt"

	"centrepop/parts"
)

// A part made without a file answers as one that was read.
func Example() {
	mm, _ := parts.ParseLength("1-3/8 in", parts.Millimetres)
	step := func(name string, dia, long float64) parts.Step {
		return parts.Step{Name: parts.Text{Value: name}, Size: parts.Size{Nominal: parts.Length{Mm: dia}}, Length: parts.Length{Mm: long}}
	}
	p := parts.Part{Profile: &parts.Profile{Outside: []parts.Step{step("body", mm, 40), step("nose", 20, 25)}}}
	fmt.Println(p.Profile.LengthMm(), p.FeatureNames())
	// Output: 65 [body nose top]
}
