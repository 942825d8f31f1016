package part

import (
	"strings"
	"testing"

	"centrepop/layout/plan"
	"centrepop/parts/seq"
)

// A ring of Ø210 and 17 thick with a bore of 80, turned from plate 20: the laser cuts a disc 2 larger
// and a bore 2 smaller, 3 are left on the length to face, and no drill opens the bore. A flame leaves
// 6; a bore of 20 less 6 is under the 30 that it makes in 20 (1.5 × the thickness). A saw cuts a
// square 5 larger. In inches what is left goes up to the next sixteenth: 2 mm to 1/8.
func TestTurnedFromPlate(t *testing.T) {
	t.Parallel()
	ring := func(stock, wide, bore, long string) string {
		return "part: disc\nkind: ring\nmaterial: S355\nstock: " + stock + "\nprofile:\n  outside: [{name: rim, diameter: " + wide + ", length: " + long + "}]\n  inside: [{name: bore, diameter: " + bore + ", fit: H8, length: " + long + "}]\n"
	}
	for _, c := range []struct {
		units, text, machine, first string
		drilled                     bool
	}{
		{"mm", ring("{plate: 20, cut: laser}", "210", "80", "17"), "Cutter", "Cut from plate 20, laser cut: Ø212 × 20 thick. Finished 17 mm; the rest is to face both ends. Bore as cut Ø78: 2 left on diameter for the lathe.", false},
		{"mm", ring("{plate: 20, cut: flame}", "210", "20", "17"), "Cutter", "Cut from plate 20, flame cut: Ø216 × 20 thick. Finished 17 mm; the rest is to face both ends.", true},
		{"mm", ring("{plate: 20, cut: saw}", "210", "80", "17"), "Saw", "Cut from plate 20, saw cut: 215 × 215 × 20 thick. Finished 17 mm; the rest is to face both ends.", true},
		{"in", ring("{plate: 3/4, cut: laser}", "8", "3", "5/8"), "Cutter", "Cut from plate 0.75 in, laser cut: Ø8.125 in × 0.75 in thick. Finished 0.625 in; the rest is to face both ends. Bore as cut Ø2.875 in: 0.125 in left on diameter for the lathe.", false},
	} {
		ops := work(t, c.units, c.text).Out.Operations
		if got := strings.Join(ops[0].Do, " "); string(ops[0].Machine) != c.machine || got != c.first {
			t.Errorf("%s: %q", ops[0].Machine, got)
		}
		if got := strings.Contains(strings.Join(ops[1].Do, " "), "Centre-drill"); got != c.drilled {
			t.Errorf("%s: %q", c.first, ops[1].Do)
		}
	}
}

// The cutting file has the same disc: 212 and 78 across.
func TestDiscFile(t *testing.T) {
	t.Parallel()
	job := load(t, "mm", "part: disc\nkind: ring\nmaterial: S355\nstock: {plate: 20, cut: laser}\nprofile:\n  outside: [{name: rim, diameter: 210, length: 17}]\n  inside: [{name: bore, diameter: 80, length: 17}]\n")
	p, err := CutProfile(job, "disc", CutOptions{})
	if err != nil {
		t.Fatal(err)
	}
	if p.BlankXMm != 212 || len(p.Contours) != 2 || !strings.HasPrefix(p.Contours[0].SizeText, "Ø78 as cut") || p.ThicknessMm != 20 {
		t.Errorf("%+v", p)
	}
}

// What is ground after it is hardened is turned 0.25 to 0.35 larger: 40 h7 to 40.25 – 40.35, and ground to 39.975 – 40.000.
// The edge of a cone's sheet is square to it: 300 to 150 inside in 200 leans by its 75, so that 2 of sheet stand
// 2 × 200/√(200² + 75²) = 1.873 out all round, and the tape reads π × 303.745 = 954.2 and π × 153.745 = 483.
func TestLeftForGrindingAndGirths(t *testing.T) {
	t.Parallel()
	ops := work(t, "mm", "part: p\nkind: shaft\nmaterial: C45\nstock: {round: 60, length: 126}\nprofile:\n  outside: [{name: land, diameter: 40, fit: h7, length: 50, hardness: 50}, {name: body, diameter: 55, length: 70}]\n").Out.Operations
	var turned, ground string
	for _, o := range ops {
		switch text := strings.Join(o.Limits, "; "); o.Machine {
		case "Lathe":
			turned += text
		case "Grind":
			ground = text
		}
	}
	if !strings.Contains(turned, "land 40.25 – 40.35") || strings.Contains(turned, "40.000") || ground != "land 39.975 – 40.000" {
		t.Errorf("turned %q, ground %q", turned, ground)
	}
	ops = work(t, "mm", "part: c\nkind: cone\nmaterial: S235\nstock: {sheet: 2}\ncone: {large: 300, small: 150, height: 200, thickness: 2, measured: inside}\n").Out.Operations
	if got := ops[1].Gauge; got != "tape round both ends: 952.7 – 955.8 and 481.5 – 484.5 outside" {
		t.Error(got)
	}
}

// A nose that is all thread gives the jaws nothing to hold when its back is turned: the bore does.
func TestHeldByTheBore(t *testing.T) {
	t.Parallel()
	const end = "part: p\nkind: turned\nmaterial: S235\nstock: {round: 125, length: 80}\nprofile:\n  outside: [{name: nose, thread: M100x3, length: 38, undercut: DIN 76-A}, {name: spigot, diameter: 102, length: 36}]\n  inside: [{name: throat, diameter: 85, length: 74}]\n"
	for text, want := range map[string]string{end: "on throat, jaws from inside and none on a thread, soft jaws", strings.Replace(end, "thread: M100x3, length: 38, undercut: DIN 76-A", "diameter: 98, length: 38", 1): "on nose, soft jaws"} {
		ops := seq.Keep(work(t, "mm", text).Out.Operations, func(o plan.Operation) bool { return o.Machine == "Lathe" })
		if got := ops[len(ops)-1].Holding; !strings.HasPrefix(got, want) {
			t.Errorf("%q, want %q", got, want)
		}
	}
}
