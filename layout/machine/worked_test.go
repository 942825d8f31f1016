package machine_test

import (
	"fmt"
	"path/filepath"
	"strings"
	"testing"

	"centrepop/layout/layouttest"
	"centrepop/parts/golden"
)

// TestWorked: what is found in the small jobs of layout/joint/testdata/worked. CENTREPOP_UPDATE=1 writes
// testdata/worked anew: read the difference.
func TestWorked(t *testing.T) {
	t.Parallel()
	for _, name := range layouttest.Worked {
		t.Run(name, func(t *testing.T) {
			t.Parallel()
			m, _ := load(t, layouttest.Small(t, name))
			var b strings.Builder
			for _, p := range m.Problems {
				p.What = "" // its words are layout/words'
				fmt.Fprintf(&b, "problem %s", golden.Text(p))
			}
			golden.Whole(t, filepath.Join("testdata", "worked", name+".txt"), []byte(b.String()))
		})
	}
}
