package read_test

import (
	"errors"
	"fmt"

	"centrepop/parts"
	"centrepop/parts/read"
)

func ExampleLoad() {
	job, err := read.Load("../../testdata/gatejack/job.yaml")
	if err != nil {
		fmt.Println(err)
		return
	}
	first := job.Parts[0]
	fmt.Println(job.Units, len(job.Parts), "parts, first", first.Name.Value, "of", first.Kind)
	// Output: in 22 parts, first thrust-housing of bearing-housing
}

// A fault says where it is.
func ExampleLoad_fault() {
	_, err := read.Load("../../cmd/centrepop/testdata/hostile/good/plate.yaml")
	var faults parts.Errors
	fmt.Println(errors.As(err, &faults), faults[0].Line, faults[0].Column, faults[0].What)
	// Output: true 1 1 this is a part file, and a job is asked for
}
