package plan_test

import (
	"encoding/json"
	"fmt"

	"centrepop/layout"
	"centrepop/parts/read"
)

// A plan is plain data: it can be read in Go or written as JSON.
func Example() {
	job, err := read.Load("../../testdata/gatejack/job.yaml")
	if err != nil {
		fmt.Println(err)
		return
	}
	worked, err := layout.Resolve(job)
	if err != nil {
		fmt.Println(err)
		return
	}
	p := worked.Plan
	text, err := json.Marshal(p.Part("cap-ring").Faces[0].Groups[0].Chords[0])
	fmt.Println(len(p.Parts), string(text), err)
	// Output: 22 {"from":1,"to":2,"kind":"neighbours","centre_mm":44.45,"over_mm":51.5874,"between_mm":37.3126} <nil>
}
