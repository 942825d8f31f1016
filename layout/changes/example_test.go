package changes_test

import (
	"fmt"
	"os"
	"strings"

	"centrepop/layout/changes"
	"centrepop/parts/read"
)

// A weld that is longer than it was: what was welded takes more of it.
func ExampleCompare() {
	const base = "testdata/base"
	src, err := os.ReadFile(base + "/job.yaml")
	if err != nil {
		fmt.Println(err)
		return
	}
	was, err := read.LoadText("job.yaml", src, base)
	if err != nil {
		fmt.Println(err)
		return
	}
	is, err := read.LoadText("job.yaml", []byte(strings.Replace(string(src), "length: 200 mm", "length: 220 mm", 1)), base)
	if err != nil {
		fmt.Println(err)
		return
	}
	report, err := changes.Compare(was, is)
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, j := range report.Joints {
		for _, c := range j.Changes {
			if c.Use != changes.NoMetal {
				fmt.Println(j.Name, c.Use)
			}
		}
	}
	// Output: ring-weld weld-on
}
