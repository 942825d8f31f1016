package machine

import (
	"fmt"
	"math"
	"path/filepath"
	"strings"
	"testing"

	"centrepop/layout/part"
	"centrepop/parts/golden"
	"centrepop/parts/read"
)

// TestSolidsWeigh: the solids of small parts of every form weigh what package part works
// out by formulas, but for threads, undercuts and laps, which solids leave out. Of each volume, middle and room are held. CENTREPOP_UPDATE=1 writes it anew.
func TestSolidsWeigh(t *testing.T) {
	t.Parallel()
	var out strings.Builder
	for _, name := range []string{"mm", "turned", "inch"} {
		job, err := read.Load(golden.Job(t, filepath.Join("..", "part", "testdata", "worked", name+".yaml")))
		if err != nil {
			t.Fatal(err)
		}
		for _, p := range job.Parts {
			m := part.Work(job, p)
			s := solid(m)
			b, box := s.Bulk(), s.Box()
			fmt.Fprintf(&out, "%s, %s: %.4g mm³ about %.2f, %.2f to %.2f\n", name, p.Name.Value, b.VolumeMm3, b.Centre, box.Low, box.High)
			kg := b.VolumeMm3 * m.Material.DensityKgM3 / 1e9
			if m.Out.MassKg > 0 && math.Abs(kg/m.Out.MassKg-1) > 0.03 {
				t.Errorf("%s, %s: %.4f kg as a solid, %.4f by formulas", name, p.Name.Value, kg, m.Out.MassKg)
			}
		}
	}
	golden.Whole(t, filepath.Join("testdata", "worked", "solids.txt"), []byte(out.String()))
}
