package review

import (
	"bytes"
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"centrepop/layout"
	"centrepop/parts"
	"centrepop/parts/read"
)

// drawPart writes a flat or a turned part with holes, slots, chamfers and
// openings of any size; many are nonsense that the reader refuses.
func drawPart(t *rapid.T) string {
	var b strings.Builder
	mm := func(name string, lo, hi int) float64 { return float64(rapid.IntRange(lo*4, hi*4).Draw(t, name)) / 4 }
	b.WriteString("part: any\nmaterial: " + rapid.SampledFrom([]string{"S235", "EN-GJL-250", "unobtainium"}).Draw(t, "material") + "\n")
	sizes := []string{"M8 clearance", "M10 tap", "7.3 mm", "{diameter: 10, fit: H7}", "G1/4 tap", "1/4-20 UNC tap"}
	if rapid.Bool().Draw(t, "flat") {
		outline := rapid.SampledFrom([]string{"{circle: 120}", "{square: 100, corner: 8}", "{slot: [160, 60]}", "{polygon: {sides: 6, across-flats: 110}}", `{path: "M-60 -40 L60 -40 L60 40 C20 40 0 60 -60 40 Z"}`}).Draw(t, "outline")
		fmt.Fprintf(&b, "kind: plate\nstock: {plate: %g mm, cut: %s}\noutline: %s\nbore: {diameter: %g, fit: H7, leave: %g}\n", mm("plate", 1, 40),
			rapid.SampledFrom([]string{"laser", "flame", "saw"}).Draw(t, "cut"), outline, mm("bore", 5, 110), mm("leave", 0, 3))
		fmt.Fprintf(&b, "chamfers:\n  - {edge: bore-front, size: %g, angle: %g}\n", mm("chamfer", 1, 20), mm("angle", 10, 80))
		fmt.Fprintf(&b, "slots:\n  - {name: slot, at: [[%g, %g]], width: %g, length: %g, turn: %g}\n", mm("sx", -50, 50), mm("sy", -50, 50), mm("w", 4, 20), mm("l", 8, 60), mm("turn", -180, 180))
	} else {
		b.WriteString("kind: bearing-housing\nprofile:\n  outside:\n")
		for i := range rapid.IntRange(1, 4).Draw(t, "outside") {
			fmt.Fprintf(&b, "    - {name: o%d, diameter: %g, length: %g}\n", i, mm("d", 30, 150), mm("z", 2, 60))
		}
		b.WriteString("  inside:\n")
		for i := range rapid.IntRange(1, 3).Draw(t, "inside") {
			fmt.Fprintf(&b, "    - {name: i%d, diameter: %g, fit: H7, seat: bearing, length: %g}\n", i, mm("d", 10, 90), mm("z", 2, 40))
		}
		fmt.Fprintf(&b, "radial:\n  - {name: port, clock: [%g, 200], axial: %g, size: %s, depth: through}\n", mm("clock", 0, 180), mm("axial", 0, 100), rapid.SampledFrom(sizes).Draw(t, "port"))
		fmt.Fprintf(&b, "  - {name: key, clock: %g, axial: %g, slot: {around: %g, along: %g}, depth: %g}\n", mm("clock", -90, 90), mm("axial", 0, 100), mm("around", 2, 30), mm("along", 2, 60), mm("depth", 1, 20))
	}
	b.WriteString("holes:\n")
	for i := range rapid.IntRange(1, 3).Draw(t, "groups") {
		depth := "through"
		if rapid.Bool().Draw(t, "blind") {
			depth = fmt.Sprint(mm("deep", 1, 40))
		}
		fmt.Fprintf(&b, "  - {name: g%d, face: %s, circle: {pcd: %g, count: %d, first: %g}, size: %s, depth: %s}\n", i, rapid.SampledFrom([]string{"front", "back"}).Draw(t, "face"),
			mm("pcd", 10, 140), rapid.IntRange(1, 9).Draw(t, "count"), mm("first", -180, 180), rapid.SampledFrom(sizes).Draw(t, "size"), depth)
	}
	return b.String()
}

// TestAnyPartIsReviewed holds that every part the reader takes is reviewed
// without a fault, with real numbers and a place in its file, and that
// accepting all of it leaves the stops open and nothing else.
func TestAnyPartIsReviewed(t *testing.T) {
	reviewed := 0
	dir := t.TempDir()
	rapid.Check(t, func(t *rapid.T) {
		src := drawPart(t)
		for name, text := range map[string]string{"job.yaml": "job: Any\nunits: mm\nparts: [any.yaml]\n", "any.yaml": src} {
			if err := os.WriteFile(filepath.Join(dir, name), []byte(text), 0o666); err != nil {
				t.Fatal(err)
			}
		}
		job, err := read.Load(filepath.Join(dir, "job.yaml"))
		if err != nil {
			return
		}
		w, err := layout.Work(job)
		if err != nil {
			return
		}
		reviewed++
		findings := Review(w)
		if got := text(findings); bytes.Contains(got, []byte("NaN")) || bytes.Contains(got, []byte("Inf")) {
			t.Fatalf("no numbers in\n%s\nof\n%s", got, src)
		}
		lines := strings.Count(src, "\n")
		for _, f := range findings {
			if f.Pos.File == "any.yaml" && f.Pos.Line > lines || f.Pos.Line < 1 || f.Pos.Column < 1 {
				t.Fatalf("%s is at %+v, outside\n%s", f.Code, f.Pos, src)
			}
			var number parts.Length
			if f.measured() {
				number = parts.Length{Mm: f.number(), Pos: parts.Pos{Line: 1}}
			}
			job.Accept = append(job.Accept, parts.Accept{Number: number, Finding: parts.Text{Value: f.Code}, Part: f.Part, Reason: parts.Text{Value: "meant so"}})
		}
		if was, is := Summary(findings), Summary(Review(w)); is.Open() != was.Stop || is.Stop != was.Stop {
			t.Fatalf("%d still open after accepting all of\n%s", is.Open(), text(findings))
		}
	})
	if reviewed == 0 {
		t.Error("no part was good enough to review")
	}
	t.Logf("%d parts reviewed", reviewed)
}
