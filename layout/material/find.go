package material

import (
	"fmt"
	"slices"
	"sort"
	"strings"
	"sync"

	"centrepop/parts/meant"
)

// UnknownError tells that no grade has the name.
type UnknownError struct {
	Name    string   // as asked
	Nearest []string // printed names of the grades whose names are nearest, at most three, nearest first
}

// Error says it in a line.
func (e *UnknownError) Error() string {
	return fmt.Sprintf("material: unknown material %q; nearest: %s", e.Name, strings.Join(e.Nearest, ", "))
}

// bodies may stand before a name.
var bodies = []string{"ASTM", "AISI", "SAE", "UNS", "BS", "DIN", "ISO"}

// marks of delivery and quality may follow a steel's name without changing its
// strength (EN 10025, EN 10210, EN 10216 to 10219, EN 10028); a name whose mark
// changes it has a row of its own.
var marks = []string{"JRC", "J0C", "J2C", "K2C", "JRN", "J0N", "J2N", "K2N", "JRAR", "J0AR", "J2AR", "JRM", "J2M", "K2M",
	"JR", "J0", "J2", "K2", "J2G3", "J2G4", "K2G3", "K2G4", "JRG1", "JRG2", "J0W", "J2W", "K2W", "JRH", "J0H", "J2H", "K2H",
	"NL", "NLH", "NH", "ML", "MLH", "MH", "N", "M", "AR", "GH", "TR1", "TR2", "NL1", "NL2", "QL", "QL1", "Q"}

// index is the table by name.
type index struct {
	exact map[string]grade
	names []string // sorted, so that the answer does not depend on map order
}

var load = sync.OnceValue(func() index {
	x := index{exact: map[string]grade{}}
	for _, g := range grades() {
		for _, n := range g.known() {
			x.exact[n] = g
			x.names = append(x.names, n)
		}
	}
	sort.Strings(x.names)
	return x
})

// grades returns the rows in print order.
func grades() []grade {
	return slices.Concat(structural, american, machinery, alloyed, stainless, irons, aluminium, coppers)
}

// Find returns the material of that name, in any case, with or without spaces,
// hyphens and the body's name before it (AISI 1018). A structural steel may carry
// the marks of its standard (S355J2+N). A name with a mark that the table does
// not know (42CrMo4+A, 6061-T4) still gives what does not hang on the condition;
// its Strength is then a *SectionError. The error is an *UnknownError.
func Find(name string) (Material, error) {
	x := load()
	n := normal(name)
	names := []string{n}
	for _, body := range bodies {
		if rest, ok := strings.CutPrefix(n, body); ok && rest != "" {
			names = append(names, rest)
		}
	}
	for _, n := range names {
		if g, ok := x.exact[n]; ok {
			return g.material(""), nil
		}
		for _, m := range marks {
			if g, ok := x.exact[strings.TrimSuffix(n, m)]; ok && strings.HasSuffix(n, m) && g.marked() {
				return g.material(""), nil
			}
		}
	}
	for _, n := range names {
		if g, ok := x.prefix(n); ok {
			return g.material(name), nil
		}
	}
	return Material{}, &UnknownError{name, x.nearest(names[len(names)-1])}
}

// prefix finds the grade with the longest name that n begins with, when what
// follows is a mark: no digit after a digit and no letter after a letter, so
// C45 takes C45E and not C450.
func (x index) prefix(n string) (grade, bool) {
	for i := len(n) - 1; i >= 2; i-- {
		if g, ok := x.exact[n[:i]]; ok && isDigit(n[i-1]) != isDigit(n[i]) {
			return g, true
		}
	}
	return grade{}, false
}

// nearest returns the printed names of the three grades with the names most like
// n; ties in alphabetical order.
func (x index) nearest(n string) []string {
	var out []string
	seen := map[string]bool{}
	for _, k := range meant.Sorted(n, x.names, func(name string) string { return name }) {
		if printed := x.exact[k].name; len(out) < 3 && !seen[printed] {
			seen[printed] = true
			out = append(out, printed)
		}
	}
	return out
}
