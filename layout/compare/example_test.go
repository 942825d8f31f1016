package compare_test

import (
	"fmt"
	"strings"

	"centrepop/layout/compare"
	"centrepop/parts/read"
)

// Somebody else's drawing of the pug mill's gusset, in which the cable hole is
// 2 mm too far out and the cutter's text was left as text.
func ExampleCompare() {
	job, err := read.Load("../../testdata/pugmill/job.yaml")
	if err != nil {
		fmt.Println(err)
		return
	}
	want, err := compare.Wanted(job, "gusset")
	if err != nil {
		fmt.Println(err)
		return
	}
	sheet, err := compare.Read(strings.NewReader(`<svg width="200mm" height="200mm" viewBox="0 0 200 200">
<polygon points="65,190 160,190 160,170 70,50 50,50 50,175"/>
<circle cx="88" cy="145" r="15"/>
<circle cx="66" cy="78" r="7.14375"/>
<text x="5" y="10">Gusset, 4 off</text>
</svg>`))
	if err != nil {
		fmt.Println(err)
		return
	}
	report, err := compare.Compare(want, sheet, 0)
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println(strings.Join(report.Lines("gusset.svg"), "\n"))
	// Output:
	// gusset.svg against gusset: 3 closed contours, 2 of them round; 1 of 2 openings in place and size (to 0.1 mm)
	// gusset.svg:4:1: hole-moved: hole 2 (cable) is 2 mm from its place: at 16, 112 mm, not 16, 110 mm
	// gusset.svg:5:1: not-compared: 1 element, the first here, cannot be compared: texts, pictures, hidden or clipped things
	// 2 findings
}
