package part_test

import (
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"centrepop/layout"
	"centrepop/layout/plan"
	"centrepop/parts/read"
)

// ringWith is a ring of a name with holes, and more of its text.
func ringWith(name, holes, more string) string {
	return fmt.Sprintf("part: %s\ntitle: The %s\nkind: ring\nmaterial: S235\nstock: {plate: 10 mm, cut: laser}\noutline: {circle: 200}\nbore: {diameter: 60}\n%sholes:\n%s", name, name, more, holes)
}

// inPart works a job out as far as its parts, whether or not its joints can be made.
func inPart(t *testing.T, header string, texts ...string) *plan.Plan {
	t.Helper()
	dir, list := t.TempDir(), ""
	for i, text := range texts {
		name := fmt.Sprintf("p%d.yaml", i)
		list += "  - " + name + "\n"
		if err := os.WriteFile(filepath.Join(dir, name), []byte(text), 0o666); err != nil {
			t.Fatal(err)
		}
	}
	file := filepath.Join(dir, "job.yaml")
	if err := os.WriteFile(file, []byte("job: Test\n"+header+"parts:\n"+list), 0o666); err != nil {
		t.Fatal(err)
	}
	j, err := read.Load(file)
	if err != nil {
		t.Fatal(err)
	}
	worked, err := layout.Work(j)
	if err != nil {
		t.Fatal(err)
	}
	return worked.Plan
}

// TestSharedTemplate: of two rings that are bolted together one is punched from the
// template of the other that has all of its holes, and both say so; of equal ones from
// the earlier's. A pattern that is turned, mirrored, numbered otherwise or on the other
// face, and rings that nothing joins, keep their own, and nothing is said.
func TestSharedTemplate(t *testing.T) {
	const (
		joint = "units: mm\njoints:\n  - {name: j, bolt: {through: a.h, into: b.h, bolt: M8 8.8, nut: yes}, face: front-on-front}\n"
		even  = "  - {name: h, circle: {pcd: 150, count: 6, first: 30}, size: M8 clearance}\n"
		some  = "  - {name: h, angles: {pcd: 150, at: [0, 80, 200]}, size: M8 clearance}\n"
		more  = "  - {name: pry, angles: {pcd: 150, at: [90, 270]}, size: M8 tap, depth: through}\n"
	)
	strangers := inPart(t, strings.NewReplacer("a.h", "b.h", "b.h", "c.h").Replace(joint), ringWith("a", even, ""), ringWith("b", even, ""), ringWith("c", even, ""))
	if f := strangers.Parts[0].Faces[0]; f.Shares != "" || len(f.Serves) > 0 || strangers.Parts[2].Faces[0].Shares != "b" {
		t.Errorf("what is bolted to others shares %q, serves %v", f.Shares, f.Serves)
	}
	mirrored := strings.Replace(some, "[0, 80, 200]", "[0, 280, 160]", 1)
	for name, c := range map[string]struct {
		header, a, b string
		from         string // whose template serves the other
		off          string
	}{
		"b has more":            {joint, ringWith("a", even, ""), ringWith("b", even+more, ""), "b", ""},
		"equal":                 {joint, ringWith("a", even, ""), ringWith("b", even, ""), "a", ""},
		"two of them":           {joint, ringWith("a", even, "quantity: 2\n"), ringWith("b", even+more, ""), "b", "2 times more"},
		"mirrored to meet":      {joint, ringWith("a", some, ""), ringWith("b", mirrored, ""), "", ""},
		"turned":                {joint, ringWith("a", even, ""), ringWith("b", strings.Replace(even, "30", "45", 1), ""), "", ""},
		"on the other face":     {joint, ringWith("a", strings.Replace(even, "h,", "h, face: back,", 1), ""), ringWith("b", even, ""), "", ""},
		"other drill":           {joint, ringWith("a", even, ""), ringWith("b", strings.Replace(even, "M8 clearance", "9.5", 1), ""), "", ""},
		"other outline":         {joint, ringWith("a", even, ""), strings.Replace(ringWith("b", even, ""), "200}", "201}", 1), "", ""},
		"slotted":               {joint, ringWith("a", even, "slots: [{name: s, at: [[0, 50]], width: 8, length: 20}]\n"), ringWith("b", even, "slots: [{name: s, at: [[0, 50]], width: 8, length: 20}]\n"), "", ""},
		"nothing joins them":    {"units: mm\n", ringWith("a", even, ""), ringWith("b", even, ""), "", ""},
		"a turned one, stepped": {joint, ringWith("a", even, ""), "part: b\nkind: ring\nmaterial: S235\nstock: {round: 210, length: 30}\nprofile: {outside: [{name: nose, diameter: 80, length: 10}, {name: rim, diameter: 200, length: 12}], inside: [{name: bore, diameter: 60, length: 22}]}\nholes:\n" + even, "", ""},
	} {
		pl := inPart(t, c.header, c.a, c.b)
		text := func(p *plan.PartPlan) string {
			var out []string
			for _, o := range p.Operations {
				out = append(out, o.Do...)
			}
			return strings.Join(out, "\n")
		}
		for i, own := range []string{"a", "b"} {
			p, other := pl.Parts[i], pl.Parts[1-i]
			f := p.Faces[0]
			shares, serves := c.from != "" && own != c.from, own == c.from
			if (f.Shares == other.Name) != shares || len(f.Serves) == 1 != serves {
				t.Errorf("%s: %s shares %q, serves %v", name, own, f.Shares, f.Serves)
			}
			took := strings.Contains(text(p), "The front template is that of "+other.Title+", which is bolted on: of its holes punch 1–6, the same side out and TOP to TOP, not mirrored.")
			gave := strings.Contains(text(p), "Print the front template "+strings.TrimPrefix(c.off+" ", " ")+"") && strings.Contains(text(p), "for "+other.Title+", which is bolted on and has the same 1–6")
			if took != shares || gave != serves {
				t.Errorf("%s: %s: %s", name, own, text(p))
			}
		}
	}
}
