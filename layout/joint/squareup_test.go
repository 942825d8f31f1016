package joint_test

import (
	"strings"
	"testing"
)

// A welded flange is faced where its stock leaves metal for it. Where plate and
// flange are equally thick there is nothing to take off: it is kept flat before
// and checked after. Both come after the last weld on the flange alone.
func TestSquaringUpHasStock(t *testing.T) {
	t.Parallel()
	for _, c := range []struct {
		name, file, from, to, joint string
		flat, face                  bool
	}{
		{"as thick as its plate", "barrel-flange.yaml", "stock: {plate: 12 mm", "stock: {plate: 12 mm", "front-flange-weld", true, false},
		{"from thicker plate", "barrel-flange.yaml", "stock: {plate: 12 mm", "thickness: 12 mm\nstock: {plate: 20 mm", "front-flange-weld", false, true},
		{"a plate with gussets to come", "gusset.yaml", "quantity: 4", "quantity: 4", "gusset-1", false, false},
	} {
		p, err := draft(editedDemo(t, "pugmill", c.file, c.from, c.to))
		if err != nil {
			t.Fatal(err)
		}
		text := stepText(jointNamed(t, p, c.joint))
		if got := strings.Contains(text, "Check that it is flat") && strings.Contains(text, "a stiff plate to the free face"); got != c.flat {
			t.Errorf("%s: kept flat %v, want %v: %s", c.name, got, c.flat, text)
		}
		if got := strings.Contains(text, "Face it true if it rocks"); got != c.face {
			t.Errorf("%s: faced %v, want %v: %s", c.name, got, c.face, text)
		}
		for _, f := range jointNamed(t, p, c.joint).Figures {
			if strings.Contains(f.Label, "squaring up") && (!c.face || f.Value != "3 each face") {
				t.Errorf("%s: %+v where nothing is faced", c.name, f)
			} else if f.Label == "leave for squaring up" {
				c.face = false
			}
		}
		if c.face {
			t.Errorf("%s: no allowance to face it", c.name)
		}
	}
}
