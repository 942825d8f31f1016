package read

import (
	"slices"
	"strings"
	"testing"

	"centrepop/parts"
)

// TestTable checks that the table of keys is whole: every key with its meaning,
// every group with its own, defaults that are words of the key, bounds in
// order, and examples of keys that must be given.
func TestTable(t *testing.T) {
	t.Parallel()
	groups := Groups()
	if len(groups) < 35 {
		t.Fatalf("only %d groups", len(groups))
	}
	for _, g := range groups {
		if g.Means == "" || !strings.HasSuffix(g.Means, ".") || len(g.Keys) == 0 {
			t.Errorf("the group %s has no sentence or no keys", g.Name)
		}
		for _, name := range g.OneOf {
			g.key(name) // must be there
		}
		seen := map[string]bool{}
		for i := range g.Keys {
			k := &g.Keys[i]
			at := g.Name + "." + k.Name
			if seen[k.Name] {
				t.Errorf("%s stands twice", at)
			}
			seen[k.Name] = true
			switch {
			case k.Means == "" || strings.HasSuffix(k.Means, "."):
				t.Errorf("%s: its meaning is a phrase", at)
			case k.Type == WordType && len(k.Words) < 2:
				t.Errorf("%s has no words", at)
			case k.Type == WordType && k.Default != "" && !slices.Contains(k.Words, k.Default) && k.Name != "units":
				t.Errorf("%s: the default %s is none of its words", at, k.Default)
			case k.Need && k.Default != "":
				t.Errorf("%s must be given and has a default", at)
			case k.Need && g.example(k) == "":
				t.Errorf("%s must be given and has no example", at)
			case k.Low > k.High:
				t.Errorf("%s runs from %g to %g", at, k.Low, k.High)
			case (k.Type == CountType || k.Type == NumberType || k.Type == NumbersType) && k.High == 0:
				t.Errorf("%s has no bounds", at)
			case slices.Contains([]Type{KeysType, ListType, EitherType, NamedType, OntoType, HoleType, ClassFitType}, k.Type) != (k.Group != nil):
				t.Errorf("%s of type %s: group %v", at, k.Type, k.Group != nil)
			case slices.Contains([]Type{ListType, TextsType, FilesType, RefsType, NumbersType, PointsType, AnglesType, ClocksType, NamesType, InLineType, SizesType}, k.Type) != (k.Entries[1] > 0):
				t.Errorf("%s of type %s takes %v entries", at, k.Type, k.Entries)
			case (k.forms != 0) != (k.use != ""):
				t.Errorf("%s: forms without words", at)
			}
		}
	}
}

// TestTableIsRead: bounds, words and defaults of the table are those the reader
// goes by.
func TestTableIsRead(t *testing.T) {
	t.Parallel()
	const part = "part: a\nkind: plate\nstock: {plate: 8}\noutline: {circle: 90}\n"
	for _, c := range []struct {
		text  string
		group *Group
		key   string
	}{
		{part + "quantity: 10001\n", partGroup, "quantity"},
		{part + "slots: [{name: s, circle: {pcd: 50, count: 1001}, width: 3, length: 9}]\n", patterns[0].Group, "count"},
		{part + "chamfers: [{edge: outline-back, size: 1, angle: 90}]\n", chamferGroup, "angle"},
		{part + "holes: [{name: h, at: [[0, 0]], size: 5, countersink: {diameter: 9, angle: 29}}]\n", countersinkGroup, "angle"},
		{"part: a\nkind: plate\nstock: {plate: 8}\noutline: {polygon: {sides: 65, across-flats: 50}}\n", polygonGroup, "sides"},
	} {
		k := c.group.key(c.key)
		want := strings.Fields(k.Limits())[0] + " to " + strings.Fields(k.Limits())[2]
		_, err := ParsePart("a", []byte(c.text), parts.Millimetres)
		if err == nil || !strings.Contains(err.Error(), want) {
			t.Errorf("%s.%s is to be %s: %v", c.group.Name, c.key, want, err)
		}
	}
	p, err := ParsePart("a", []byte("part: a\nkind: cone\ncone: {large: 300, small: 150, height: 200, thickness: 2}\n"), parts.Millimetres)
	if err != nil {
		t.Fatal(err)
	}
	if p.Quantity != 1 || p.Frustum.Seam.Deg != 180 || p.Frustum.Inside {
		t.Errorf("defaults: quantity %d, seam %g°, inside %v", p.Quantity, p.Frustum.Seam.Deg, p.Frustum.Inside)
	}
}

// The keys of one kind of part are those that all take and its own, with the groups in them and no others; a group has its own.
func TestGroupsOf(t *testing.T) {
	t.Parallel()
	shapes := []string{"quantity", "outline", "bore", "bends", "profile", "tube", "cone", "flight", "bar", "radial", "keyways"}
	for name, want := range map[string]string{
		"plate": "quantity outline bore keyways", "turned": "quantity profile radial keyways", "tube": "quantity profile tube radial keyways", "bar": "quantity bar",
		"cone": "quantity cone", "folded": "quantity outline bends", "flight": "quantity flight", "outline": "", "nothing": "",
	} {
		groups, known := GroupsOf(name)
		if !slices.Contains(known, "plate") || (groups == nil) == slices.Contains(known, name) {
			t.Errorf("%s: %d groups of %q", name, len(groups), known)
		}
		var own []string
		for i := range groups {
			for _, k := range groups[i].Keys {
				if i == 0 && slices.Contains(shapes, k.Name) {
					own = append(own, k.Name)
				}
				if k.Group != nil && !slices.Contains(groups, k.Group) {
					t.Errorf("%s: the group of %s is missing", name, k.Name)
				}
			}
		}
		if got := strings.Join(own, " "); got != want {
			t.Errorf("%s: %q, want %q", name, got, want)
		}
	}
}
