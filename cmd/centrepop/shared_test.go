package main

import (
	"cmp"
	"math"
	"slices"
	"strings"
	"testing"
)

// TestSharedSheets measures with PDFium every sheet of both packets on which a whole
// punch template shares the paper with another: it has all of its holes, or those of both
// faces, or those that the template of the other face has not, where testdata/expected
// has them to within 0.01 mm of each other, and where all are whole no cross is left
// over.
func TestSharedSheets(t *testing.T) {
	t.Parallel()
	for _, job := range []string{pugMill, gateJack} {
		want := expected(t, job)
		for _, paper := range []string{"A4", "Letter"} {
			t.Run(job+" "+paper, func(t *testing.T) {
				t.Parallel()
				doc := opened(t, "sheets", job, "--paper", paper)
				apart, pages := faceTemplates(t, job, partsOf(want), paper)
				measured := 0
				for page := range doc.Pages() {
					text := doc.Text(page)
					faces := captioned(text, want)
					templates := strings.Count(text, "this side out")
					if len(faces) == 0 || templates < 2 {
						continue
					}
					measured++
					if left := checkShared(t, page, crosses(doc.Paths(page)), faces, func(key string) ([]expectedHole, []int) {
						part, face, _ := strings.Cut(key, " ")
						holes := bothFaces(want, part)
						other := map[string]string{"front": "back", "back": "front"}[face]
						alone := cover(laidOn(t, apart, pages[part+" "+other], holes[other]), make([]int, len(holes[other])))
						return holes[face], []int{len(want[key]), len(holes[face]), alone}
					}); len(left) > 0 && len(faces) == templates {
						t.Errorf("page %d: %d crosses are of none of %q", page+1, len(left), faces)
					}
				}
				if measured == 0 {
					t.Error("no sheet is shared")
				}
			})
		}
	}
}

// captioned are the faces, such as "cap-ring front", that a shared sheet has a
// caption of.
func captioned(text string, want map[string][]expectedHole) []string {
	var out []string
	for key := range want {
		name, face, _ := strings.Cut(key, " ")
		title := strings.ToUpper(name[:1]) + strings.ReplaceAll(name[1:], "-", " ")
		if strings.Contains(text, title+" · "+strings.ToUpper(face)+", this side out") {
			out = append(out, key)
		}
	}
	slices.SortFunc(out, func(a, b string) int { // most holes first: a pair of them lies on many crosses
		return cmp.Or(len(want[b])-len(want[a]), strings.Compare(a, b))
	})
	return out
}

// checkShared lays the holes of each face on crosses that no other has taken, and
// returns the crosses left. holesOf are those that may be on a face's template, and
// how many may be.
func checkShared(t *testing.T, page int, found []expectedHole, faces []string, holesOf func(string) ([]expectedHole, []int)) []expectedHole {
	t.Helper()
	for _, key := range faces {
		holes, counts := holesOf(key)
		var best []expectedHole
		for _, f := range found {
			for _, first := range holes {
				if on := lie(found, holes, first, f); len(on) > len(best) && slices.Contains(counts, len(on)) {
					best = on
				}
			}
		}
		if best == nil {
			t.Errorf("page %d: the holes of %s are not on it", page+1, key)
			continue
		}
		found = slices.DeleteFunc(slices.Clone(found), func(f expectedHole) bool { return slices.Contains(best, f) })
	}
	return found
}

// lie are the crosses that holes lie on when one of them lies on a cross.
func lie(found, holes []expectedHole, first, on expectedHole) []expectedHole {
	var out []expectedHole
	for _, h := range holes {
		x, y := on.x+h.x-first.x, on.y+h.y-first.y
		if i := slices.IndexFunc(found, func(f expectedHole) bool { return math.Abs(f.x-x) <= paperTolMm && math.Abs(f.y-y) <= paperTolMm }); i >= 0 && !slices.Contains(out, found[i]) {
			out = append(out, found[i])
		}
	}
	return out
}
