package read

import (
	"strings"
	"testing"

	"centrepop/parts"
)

// TestFeatures: what a feature is, its kind says: holes may be called length or
// height, and a numbered opening is found.
func TestFeatures(t *testing.T) {
	t.Parallel()
	const src = `part: a
kind: turned
profile: {outside: [{name: body, diameter: 100, length: 50}], inside: [{diameter: 20, length: 50}]}
holes:
  - {name: length, circle: {pcd: 60, count: 4}, size: 8}
slots:
  - {name: height, at: [[0, 20]], width: 3, length: 8}
radial:
  - {name: port, clock: [0, 90], axial: 20, size: 5}
`
	p, err := ParsePart("a", []byte(src), parts.Millimetres)
	if err != nil {
		t.Fatal(err)
	}
	for name, want := range map[string]parts.Feature{
		"body": {Kind: parts.OutsideFeature, Pos: parts.Pos{File: "a", Line: 3, Column: 28}}, "inside-1": {Kind: parts.InsideFeature, Pos: parts.Pos{File: "a", Line: 3, Column: 72}}, "top": {Kind: parts.TopFeature, Pos: parts.Pos{File: "a", Line: 1, Column: 1}},
		"length": {Kind: parts.HolesFeature, Pos: parts.Pos{File: "a", Line: 5, Column: 12}}, "height": {Kind: parts.SlotsFeature, Pos: parts.Pos{File: "a", Line: 7, Column: 12}},
		"port": {Kind: parts.RadialFeature, Pos: parts.Pos{File: "a", Line: 9, Column: 12}}, "port-2": {Kind: parts.RadialFeature, N: 2, Pos: parts.Pos{File: "a", Line: 9, Column: 12}},
	} {
		want.Name = name
		if got, ok := p.Feature(name); !ok || got != want {
			t.Errorf("%s is %+v, want %+v", name, got, want)
		}
	}
	for _, name := range []string{"port-3", "port-0", "outline", "bore", ""} {
		if f, ok := p.Feature(name); ok {
			t.Errorf("%q is %+v", name, f)
		}
	}
	for _, c := range []struct{ old, new, want string }{
		{"name: length", "name: port-2", "a:5:12: the name port-2 stands for number 2 of the radial feature in line 9"},
		{"name: length", "name: height", "a:7:12: the name height is already used in line 5"},
		{"name: height", "name: top", "a:7:12: the name top stands for the top of the part"},
		{"name: body", "name: top", "a:3:28: the name top stands for the top of the part"},
	} {
		_, err := ParsePart("a", []byte(strings.Replace(src, c.old, c.new, 1)), parts.Millimetres)
		if err == nil || !strings.HasPrefix(err.Error(), c.want) {
			t.Errorf("%s: %v, want %s", c.new, err, c.want)
		}
	}
}
