package part

import (
	"slices"
	"testing"

	"centrepop/layout/plan"
	"centrepop/parts"
)

// TestFaceCuts: paper lies across no spigot, and on no floor of a recess from outside
// it. The heights are the lengths of the steps.
func TestFaceCuts(t *testing.T) {
	t.Parallel()
	const head = "part: p\nkind: turned\nmaterial: S235\nstock: {round: 190 mm, length: 100 mm}\nprofile:\n  outside:\n    - {name: nose, diameter: 120, length: 6}\n    - {name: body, diameter: 180, length: 90}\n  inside:\n"
	bore := "    - {name: through, diameter: 40, length: 96}\n"
	recess := "    - {name: recess, diameter: 90, length: 8}\n    - {name: through, diameter: 40, length: 88}\n"
	holes := func(pcd ...string) string {
		text := "holes:\n"
		for i, d := range pcd {
			text += "  - {name: h" + string(rune('a'+i)) + ", face: front, circle: {pcd: " + d + ", count: 4}, size: 6, depth: 10}\n"
		}
		return text
	}
	for _, c := range []struct {
		name, text string
		want       []plan.FaceCut
	}{
		{"on both levels", head + bore + holes("104", "156"), []plan.FaceCut{{DiameterMm: 120, ProudMm: 6, Inside: true, Outside: true}}},
		{"round the nose", head + bore + holes("156"), []plan.FaceCut{{DiameterMm: 120, ProudMm: 6, Outside: true}}},
		{"on the nose alone", head + bore + holes("104"), []plan.FaceCut{{DiameterMm: 120, ProudMm: 6, Inside: true}}},
		{"in the recess", head + recess + holes("60"), []plan.FaceCut{{DiameterMm: 90, ProudMm: -8, Inside: true}}}, // all beyond it is cut away
		{"beside the recess", head + recess + holes("104"), []plan.FaceCut{{DiameterMm: 120, ProudMm: 6, Inside: true}}},
		{"on the back, which is plain", head + bore + "holes: [{name: h, face: back, circle: {pcd: 156, count: 4}, size: 6, depth: 10}]\n", nil},
	} {
		m := work(t, "mm", c.text)
		if got := m.Faces[0].Cuts; !slices.Equal(got, c.want) {
			t.Errorf("%s: %+v, want %+v", c.name, got, c.want)
		}
	}
	back := work(t, "mm", "part: p\nkind: turned\nmaterial: S235\nstock: {round: 190 mm, length: 100 mm}\nprofile:\n  outside:\n    - {name: body, diameter: 180, length: 90}\n    - {name: spigot, diameter: 130, length: 10}\n"+
		"holes: [{name: h, face: back, circle: {pcd: 156, count: 4}, size: 6, depth: 10}]\n")
	if got := back.Faces[0]; got.Face != parts.Back || !slices.Equal(got.Cuts, []plan.FaceCut{{DiameterMm: 130, ProudMm: 10, Outside: true}}) {
		t.Errorf("%+v", got.Cuts)
	}
	two := work(t, "mm", "part: p\nkind: turned\nmaterial: S235\nstock: {round: 190 mm, length: 110 mm}\nprofile:\n  outside:\n    - {name: body, diameter: 180, length: 90}\n    - {name: spigot, diameter: 130, length: 10}\n    - {name: tip, diameter: 90, length: 5}\nholes: [{name: h, face: back, circle: {pcd: 156, count: 4}, size: 6, depth: 10}]\n")
	if got := two.Faces[0].Cuts; !slices.Equal(got, []plan.FaceCut{{DiameterMm: 130, ProudMm: 10, Outside: true}}) {
		t.Errorf("round two steps: %+v", got)
	}
	has(t, back, "Back template: cut along Ø130, where the face steps; the ring lies outside it.")
	has(t, work(t, "mm", head+bore+holes("104", "156")), "Front template: cut along Ø120, where the face steps; ring and disc lie each on its own level, TOP to TOP.")
	has(t, work(t, "mm", head+bore+holes("104")), "Front template: cut along Ø120, where the face steps; the disc lies inside it.")
}
