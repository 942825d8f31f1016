package changes

import (
	"os"
	"path/filepath"
	"strings"
	"testing"

	"centrepop/parts"
	"centrepop/parts/read"
)

// whole loads a job of one part, with a text in either replaced by another.
func whole(t *testing.T, part, from, to string) *parts.Job {
	t.Helper()
	dir := t.TempDir()
	for name, src := range map[string]string{"job.yaml": "job: A\nunits: mm\ntools: no\nparts: [one.yaml]\n", "one.yaml": part} {
		if err := os.WriteFile(filepath.Join(dir, name), []byte(strings.Replace(src, from, to, 1)), 0o600); err != nil {
			t.Fatal(err)
		}
	}
	job, err := read.Load(filepath.Join(dir, "job.yaml"))
	if err != nil {
		t.Fatal(err)
	}
	return job
}

// What a split ring, a bar already sawn, and a job that wants its tools drawn are
// told of a change: the words of the line, and what becomes of the part.
func TestClampAndBarLines(t *testing.T) {
	t.Parallel()
	const (
		clamp  = "clamp: {in: bore, slot: 2, screw: M5 8.8, clock: 90}\n"
		collar = "part: collar\nkind: turned\nmaterial: C45\nstock: {round: 45, length: 25, cut: saw}\nprofile:\n" +
			"  outside: [{name: rim, diameter: 40, length: 20}]\n  inside: [{name: bore, diameter: 20, fit: H7, length: 20}]\n"
		pin  = "part: pin\nkind: shaft\nmaterial: C45\nstock: {round: 45 mm, length: 108 mm}\nprofile:\n  outside: [{name: nose, diameter: 40, length: 100}]\nchamfers: [{edge: nose-front, size: 3, angle: 40, for: lead-in}]\n"
		rail = "part: rail\nkind: bar\nmaterial: S235\nbar: {square: 50, wall: 4, length: 400, right: {mitre: 45, long: bottom}}\n"
	)
	for _, c := range []struct {
		name, part, from, to string
		want                 []string
	}{
		{"cut elsewhere", collar + clamp + "radial: [{name: port, clock: 0, axial: 10, size: 4}]\n", "clock: 90", "clock: 100", []string{"clamp: split 2 wide", "clock 100", ": scrap"}},
		{"wider cut", collar + clamp, "slot: 2", "slot: 2.5", []string{"clamp: split 2 wide", "→ split 2.5 wide", ": rework"}},
		{"narrower cut", collar + clamp, "slot: 2", "slot: 1.5", []string{"→ split 1.5 wide", ": scrap"}},
		{"smaller screw", collar + clamp, "M5", "M4", []string{"screw M4", ": scrap"}},
		{"screw elsewhere", collar + clamp, "clock: 90", "axial: 9, clock: 90", []string{"9 from the front face", ": scrap"}},
		{"stronger screw", collar + clamp, "M5 8.8", "M5 10.9", []string{"M5 x 12, 8.8", "M5 x 12, 10.9"}},
		{"split now", collar, "stock:", clamp + "stock:", []string{"clamp: new: split 2 wide", ": rework"}},
		{"whole now", collar + clamp, clamp, "", []string{"clamp: no longer: split 2 wide", ": scrap"}},
		{"thinner wall", rail, "wall: 4", "wall: 3", []string{"stock: square tube 50 × 50 × 4 → square tube 50 × 50 × 3: scrap"}},
		{"square end", rail, ", right: {mitre: 45, long: bottom}", "", []string{"right end: no longer: 45°", ": decide by hand"}},
		// A bevel of 3 × 40° reaches 3·tan 40° = 2.52 across, one of 2 × 60° 3.46, of 2.2 × 60°
		// 3.81, of 2 × 30° 1.15: more both ways can be cut, less one way cannot.
		{"a wider bevel", pin, "size: 3, angle: 40", "size: 3.5, angle: 40", []string{"3 × 40° → 3.5 × 40°: rework"}},
		{"a bevel that reaches less along", pin, "size: 3, angle: 40", "size: 2.2, angle: 60", []string{"3 × 40° → 2.2 × 60°: scrap"}},
		{"a bevel that reaches less across", pin, "size: 3, angle: 40", "size: 4, angle: 30", []string{"3 × 40° → 4 × 30°: scrap"}},
		{"a bevel that reaches hardly less across", pin, "size: 3, angle: 40", "size: 3.5, angle: 35", []string{"3 × 40° → 3.5 × 35°: scrap"}}, // 2.45
		{"a bevel that reaches more across", pin, "size: 3, angle: 40", "size: 3, angle: 45", []string{"3 × 40° → 3 × 45°: rework"}},
		{"one slot of two", "part: pad\nkind: plate\nmaterial: S235\nstock: {plate: 8, cut: laser}\noutline: {rectangle: [200, 100]}\nslots:\n  - {name: one, face: front, at: [[-60, 0]], width: 10, length: 40, turn: 0, depth: through}\n  - {name: two, face: front, at: [[60, 0]], width: 12, length: 40, turn: 0, depth: through}\n",
			"width: 10", "width: 11", []string{"one width: 10 mm → 11 mm: rework"}},
		{"tools drawn", rail, "tools: no", "tools: yes", []string{"sheets of tools: no → yes"}},
	} {
		t.Run(c.name, func(t *testing.T) {
			t.Parallel()
			lines := compare(t, whole(t, c.part, "", ""), whole(t, c.part, c.from, c.to)).Lines()
			found := false
			for _, line := range lines {
				has := true
				for _, want := range c.want {
					has = has && strings.Contains(line, want)
				}
				found = found || has
			}
			if !found {
				t.Errorf("no line with %q in\n%s", c.want, strings.Join(lines, "\n"))
			}
			if c.name == "one slot of two" && strings.Contains(strings.Join(lines, "\n"), "two") {
				t.Errorf("the other slot is as it was:\n%s", strings.Join(lines, "\n"))
			}
			if c.name == "stronger screw" && strings.Contains(strings.Join(lines, "\n"), "already made: ") {
				t.Errorf("another class of screw spoils no part:\n%s", strings.Join(lines, "\n"))
			}
		})
	}
}
