package review

import (
	"strings"
	"testing"

	"centrepop/layout/plan"
	"centrepop/parts"
)

// TestTapered: designations of other bearings with the bore of the job, and of tapered ones, metric and in inches.
func TestTapered(t *testing.T) {
	t.Parallel()
	for _, c := range []struct {
		name string
		bore float64
		kind string
	}{
		{"6210-2RS", 50, "deep groove ball"}, {"6000", 10, "deep groove ball"}, {"6201 ZZ", 12, "deep groove ball"}, {"6302", 15, "deep groove ball"}, {"6403", 17, "deep groove ball"}, {"6204", 20, "deep groove ball"}, {"16008", 40, "deep groove ball"}, {"61810", 50, "deep groove ball"}, {"61996", 480, "deep groove ball"},
		{"7208-B", 40, "angular contact ball"}, {"1210 K", 50, "self-aligning ball"}, {"2308", 40, "self-aligning ball"}, {"22210-E", 50, "spherical roller"}, {"23120", 100, "spherical roller"}, {"24024", 120, "spherical roller"},
		{"NU 208", 40, "cylindrical roller"}, {"NJ2210", 50, "cylindrical roller"}, {"NUP 310", 50, "cylindrical roller"}, {"N1010", 50, "cylindrical roller"},
		{"30210", 50, ""}, {"32010 X", 50, ""}, {"33208", 40, ""}, {"6379/6320", 65.088, ""}, {"LM11949/LM11910", 19.05, ""}, {"6210", 40, ""}, {"6205.5", 25, ""}, {"62100", 50, ""},
	} {
		r := &reviewer{job: &parts.Job{}, pl: &plan.Plan{}}
		r.tapered(&parts.Joint{Name: parts.Text{Value: "j"}, Bearing: &parts.BearingJoint{Bearing: parts.Text{Value: c.name}, Bore: parts.Length{Mm: c.bore}}})
		want := ""
		if c.kind != "" {
			want = "stop j.: " + c.name + " is no tapered roller bearing; the series and the code of its bore are those of a " + c.kind + " bearing"
		}
		if got := strings.Join(told(r.found), "; "); got != want {
			t.Errorf("%s: %q, want %q", c.name, got, want)
		}
	}
}
