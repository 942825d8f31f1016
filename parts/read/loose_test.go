package read

import (
	"strings"
	"testing"

	"centrepop/parts"
	"centrepop/parts/seq"
)

// What lies on another loose part comes after it, wherever the list has the two; what is on nothing but one another, in a
// circle, is refused, as is what lies on itself.
func TestLooseFromBelow(t *testing.T) {
	t.Parallel()
	for _, c := range []struct{ on, want, fault string }{
		{"plate.front lid.front cover.front", "lid cover cap", ""},
		{"cover.front plate.front lid.front", "cover lid cap", ""},
		{"cover.front cap.front plate.front", "cap cover lid", ""},
		{"cover.front lid.front plate.front", "", "lid lies on cover, and that on it in turn"},
		{"cover.front cap.front lid.front", "", "lid lies on cover, and that on it in turn"},
		{"plate.front cover.front plate.front", "", "cover has no place for cover to lie on"},
	} {
		dir, on := t.TempDir(), strings.Fields(c.on)
		plate := func(name string) string {
			return "part: " + name + "\nkind: plate\nmaterial: S235\nstock: {plate: 10 mm}\noutline: {square: 100}\nholes: [{name: h, at: [[0, 0]], size: M8 clearance}]\n"
		}
		files := map[string]string{"job.yaml": "job: J\nunits: mm\nparts: [plate.yaml, base.yaml, lid.yaml, cover.yaml, cap.yaml]\njoints:\n" +
			"  - {name: b, bolt: {through: plate.h, into: base.h, bolt: M8 8.8, nut: yes}, face: back-on-front}\nloose:\n"}
		for i, name := range []string{"lid", "cover", "cap", "plate", "base"} {
			files[name+".yaml"] = plate(name)
			if i < len(on) {
				files["job.yaml"] += "  - {part: " + name + ", how: laid on it, after: b, lies: [{on: " + on[i] + ", with: back}]}\n"
			}
		}
		write(t, dir, files)
		job, err := Load(dir + "/job.yaml")
		switch {
		case c.fault != "":
			if err == nil || !strings.Contains(err.Error(), c.fault) {
				t.Errorf("%s: %v, want %s", c.on, err, c.fault)
			}
		case err != nil:
			t.Errorf("%s: %v", c.on, err)
		default:
			if got := strings.Join(seq.Map(job.Loose, func(e parts.Loose) string { return e.Part.Value }), " "); got != c.want {
				t.Errorf("%s: %s, want %s", c.on, got, c.want)
			}
		}
	}
}
