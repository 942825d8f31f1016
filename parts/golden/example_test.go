package golden_test

import (
	"fmt"

	"centrepop/parts/golden"
)

func ExampleDiff() {
	fmt.Println(golden.Diff([]byte("bore 90\nlength 48\n"), []byte("bore 90\nlength 49\n")))
	// Output:
	// line 2 differs
	// want: "length 48"
	// got:  "length 49"
	// (3 lines wanted, 3 got)
}
