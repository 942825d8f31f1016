package words

import (
	"go/ast"
	"go/parser"
	"go/token"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"testing"

	"centrepop/layout/plan"
	"centrepop/parts"
)

// Every kind has one row with all its words, and its places are filled by what
// the layout hands over: numbers in the job's units.
func TestEveryKindHasWords(t *testing.T) {
	t.Parallel()
	place := regexp.MustCompile(`\{(\d)\}`)
	var seen []plan.ProblemKind
	for _, a := range Problems {
		if slices.Contains(seen, a.Kind) {
			t.Errorf("%s stands twice", a.Kind)
		}
		seen = append(seen, a.Kind)
		if a.Code == "" || a.Severity == "" || a.Says == "" || a.Fix == "" || a.Rule == "" || a.Source == "" {
			t.Errorf("%s: something is empty: %+v", a.Kind, a)
		}
		most := -1
		for _, m := range place.FindAllStringSubmatch(a.Says+a.Fix, -1) {
			n, _ := strconv.Atoi(m[1])
			most = max(most, n)
		}
		for n := range most + 1 {
			if !strings.Contains(a.Says+a.Fix, "{"+strconv.Itoa(n)+"}") {
				t.Errorf("%s has no place {%d}", a.Kind, n)
			}
		}
	}
}

func TestSaysInTheJobsUnits(t *testing.T) {
	t.Parallel()
	p := plan.Problem{Kind: plan.RegisterBinds, Args: []plan.Arg{plan.Named("Ring 3 holes and slot"), plan.Of(plan.Mm, 0.0254), plan.Named("")}}
	mm, inch := Writer{parts.Millimetres}, Writer{parts.Inches}
	if got, want := mm.Says(p), "Ring 3 holes and slot may bind by 0.025: a register needs clearance, or a press joint"; got != want {
		t.Errorf("got %q, want %q", got, want)
	}
	if got, want := inch.Says(p), "Ring 3 holes and slot may bind by 0.001 in: a register needs clearance, or a press joint"; got != want {
		t.Errorf("got %q, want %q", got, want)
	}
	for _, c := range []struct{ got, want string }{
		{mm.Fix(plan.Problem{Kind: plan.SlidePlate}), "a bore 0.5 mm larger than the thread"}, {inch.Fix(plan.Problem{Kind: plan.SlidePlate}), "a bore 0.02 in larger than the thread"},
		{mm.Rule(plan.Problem{Kind: plan.JawsShort}), "jaws hold what is turned in them by 3 mm at least"}, {inch.Rule(plan.Problem{Kind: plan.JawsShort}), "jaws hold what is turned in them by 1/8 in at least"},
	} {
		if c.got != c.want {
			t.Errorf("%q, want %q", c.got, c.want)
		}
	}
	for _, c := range []struct {
		arg  plan.Arg
		want string
	}{
		{plan.Of(plan.Diameter, 90), "Ø90"},
		{plan.Of(plan.Read, 2.126), "2.13"},
		{plan.Of(plan.Newton, 34567), "35 kN"},
		{plan.Of(plan.Degree, 12.346), "12.35°"},
		{plan.Of(plan.Celsius, 149.6), "150 °C"},
		{plan.Of(plan.Number, 1.005), "1.01"},
		{plan.Named("M10"), "M10"},
		{plan.Arg{Unit: plan.Preheat}, ""},
		{plan.Arg{Unit: plan.Preheat, Value: 150, High: 250}, "preheat to 150 – 250 °C (a start, common practice), "},
	} {
		if got := mm.Arg(c.arg); got != c.want {
			t.Errorf("%+v: %q, want %q", c.arg, got, c.want)
		}
	}
}

// Why a list of things failed is said of each by name.
func TestBecause(t *testing.T) {
	t.Parallel()
	p := plan.Problem{Kind: plan.NoStockLength, Args: []plan.Arg{plan.Named("M10")}, Because: []plan.Because{
		{Name: "M10 x 40", Problem: plan.Problem{Kind: "bottoms-out", Args: []plan.Arg{plan.Of(plan.Mm, 2)}}},
		{Name: "M10 x 35", Problem: plan.Problem{Kind: "near-bottom", Args: []plan.Arg{plan.Of(plan.Mm, 1.25)}}},
	}}
	want := "no stock length of M10 fits: M10 x 40 the screw is 2 longer than the thread in the hole: it jams before it clamps; " +
		"M10 x 35 1.25 of thread left below the screw, less than one pitch"
	if got := (Writer{parts.Millimetres}).Says(p); got != want {
		t.Errorf("got %q, want %q", got, want)
	}
}

// A kind that is declared without words would print an empty sentence.
func TestNoKindWithoutWords(t *testing.T) {
	t.Parallel()
	found := 0
	for _, file := range []string{"../plan/problem.go", "../bolts/length.go"} {
		f, err := parser.ParseFile(token.NewFileSet(), file, nil, 0)
		if err != nil {
			t.Fatal(err)
		}
		ast.Inspect(f, func(n ast.Node) bool {
			v, ok := n.(*ast.ValueSpec)
			if id, named := v0(ok, v); !named || id.Name != "ProblemKind" {
				return true
			}
			kind, err := strconv.Unquote(v.Values[0].(*ast.BasicLit).Value)
			if err != nil || AboutKind(plan.ProblemKind(kind)).Says == "" {
				t.Errorf("%s has no words", kind)
			}
			found++
			return true
		})
	}
	if found < len(Problems) {
		t.Errorf("%d kinds declared, %d with words", found, len(Problems))
	}
}

func v0(ok bool, v *ast.ValueSpec) (*ast.Ident, bool) {
	if !ok || v.Type == nil {
		return nil, false
	}
	id, named := v.Type.(*ast.Ident)
	return id, named
}
