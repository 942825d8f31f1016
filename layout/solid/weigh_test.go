package solid

import (
	"fmt"
	"math"
	"path/filepath"
	"strings"
	"testing"

	"centrepop/layout/assembly"
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
			s := Of(m)
			b, box := s.Bulk(), s.Box()
			fmt.Fprintf(&out, "%s, %s: %.4g mm³ about %.2f, %.2f to %.2f\n", name, p.Name.Value, b.VolumeMm3, b.Centre, box.Low, box.High)
			weighs(t, name, m, s, 0.03)
		}
	}
	golden.Whole(t, filepath.Join("testdata", "worked", "solids.txt"), []byte(out.String()))
}

// TestFormsHaveSolids: the parts of the demos, which have every form, weigh as solids what package
// part works out, but for laps, and for mitres, which are weighed on samples. A form without a solid of
// its own weighs nothing, or something else.
func TestFormsHaveSolids(t *testing.T) {
	t.Parallel()
	for _, name := range []string{"pugmill", "gatejack"} {
		job, err := read.Load(filepath.Join("..", "..", "testdata", name, "job.yaml"))
		if err != nil {
			t.Fatal(err)
		}
		for _, p := range job.Parts {
			m := part.Work(job, p)
			weighs(t, name, m, Of(m), 0.07)
		}
	}
}

// weighs compares a solid with the mass on its sheet, of which it may lack a share, and with the outside size of what
// is folded.
func weighs(t *testing.T, job string, m *part.Model, s *assembly.Solid, share float64) {
	t.Helper()
	kg := s.Bulk().VolumeMm3 * m.Material.DensityKgM3 / 1e9
	if m.Out.MassKg > 0 && math.Abs(kg/m.Out.MassKg-1) > share {
		t.Errorf("%s, %s: %.4f kg as a solid, %.4f by formulas", job, m.Part.Name.Value, kg, m.Out.MassKg)
	}
	if size, w := s.Box().High.Sub(s.Box().Low), m.W; m.Part.Bends != nil && !strings.HasPrefix(m.Out.Overall, w.Read(size.X)+" × "+w.Read(size.Y)+" × "+w.Read(size.Z)+" folded") {
		t.Errorf("%s, %s: %v as a solid, %s on the sheet", job, m.Part.Name.Value, size, m.Out.Overall)
	}
}
