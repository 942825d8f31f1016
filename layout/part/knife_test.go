package part

import (
	"strings"
	"testing"
)

// TestKnife: soft sheet is cut with a knife and punched, not sawn, drilled or bored; metal, thick rubber and what is fitted are not.
func TestKnife(t *testing.T) {
	soft := func(material, stock, more string) string {
		return "part: g\nkind: ring\nfor: gasket\nmaterial: " + material + "\ntop: punch\nstock: {" + stock + ", cut: none}\noutline: {circle: 120}\nbore: {diameter: 80" + more + "}\nholes: [{name: rim, circle: {pcd: 100, count: 6}, size: M8 clearance}]\n"
	}
	knife := "Tape the front template on it whole; do not cut it out. Punch rim, holes 1 to 6: 6 × Ø9 for M8. Cut out the bore Ø80. Last the outside, Ø120: several light cuts"
	for name, c := range map[string]struct {
		part  string
		knife bool
	}{
		"cork":         {soft("cork", "sheet: 2 mm", ""), true},
		"NBR":          {soft("NBR", "sheet: 3 mm", ""), true},
		"copper":       {soft("Cu-DHP", "sheet: 2 mm", ""), false},
		"thick":        {soft("NBR", "plate: 12 mm", ""), false},
		"water jet":    {strings.Replace(soft("NBR", "sheet: 3 mm", ""), "cut: none", "cut: waterjet", 1), false},
		"fitted":       {soft("cork", "sheet: 2 mm", ", fit: H7"), false},
		"of no gasket": {strings.Replace(soft("cork", "sheet: 2 mm", ""), "for: gasket\n", "", 1), false},
	} {
		m := work(t, "mm", c.part)
		text := strings.Join(strings.Fields(lines(m)), " ")
		if got := strings.Contains(text, knife); got != c.knife || m.Out.Knifed != c.knife {
			t.Errorf("%s: knife %v, want %v:\n%s", name, got, c.knife, text)
		}
		for _, s := range []string{"Drill", "Centre-drill", "Deburr"} {
			if c.knife && strings.Contains(text, s) {
				t.Errorf("%s: %q in\n%s", name, s, text)
			}
		}
	}
}

// TestSoftRecord: soft sheet is not measured with pins, which stretch it, and no punch marks TOP on it.
func TestSoftRecord(t *testing.T) {
	rec := func(part string) string {
		var rows []string
		for _, c := range work(t, "mm", part).Out.Checks {
			rows = append(rows, c.What+" "+c.Wanted+": "+c.Limits)
		}
		return strings.Join(rows, "\n")
	}
	steel := "part: g\nkind: ring\nmaterial: S235\ntop: punch\nstock: {plate: 4 mm, cut: saw}\noutline: {circle: 120}\nbore: {diameter: 80}\nholes: [{name: rim, circle: {pcd: 100, count: 6}, size: M8 clearance}]\n"
	cork := strings.NewReplacer("S235", "cork", "plate: 4 mm, cut: saw", "sheet: 4 mm, cut: none", "kind: ring", "kind: ring\nfor: gasket").Replace(steel)
	for part, soft := range map[string]bool{steel: false, cork: true} {
		got := rec(part)
		for s, want := range map[string]bool{"over pins": !soft, "bore to pin": !soft, "TOP marked punch": !soft, "TOP marked pen: on the front face": soft,
			"rim, laid flat on what it seals : each bolt or pin drops in, nothing is stretched": soft, "rim 6 × Ø9 for M8: Ø9, bolt passes": true} {
			if strings.Contains(got, s) != want {
				t.Errorf("soft %v: %q, want it %v in\n%s", soft, s, want, got)
			}
		}
	}
}

// TestWallsApart: holes through two flanges with air between are drilled wall by wall, as deep as the thicker is.
func TestWallsApart(t *testing.T) {
	lantern := func(waist string) string {
		return "part: lantern\nkind: turned\nmaterial: S235\nstock: {casting: lantern}\ntop: punch\nprofile:\n  outside: [{name: outer, diameter: 180, length: 12}, {name: barrel, diameter: " + waist + ", length: 90}, {name: inner, diameter: 180, length: 12}]\n  inside: [{name: bore, diameter: 100, length: 114}]\nholes: [{name: rim, circle: {pcd: 150, count: 6}, size: M10 clearance}]\n"
	}
	const apart = "Air of 90 mm lies between the walls: each is drilled through by itself, the near one first, those behind through its holes with a drill that reaches 114 mm"
	for waist, air := range map[string]bool{"120": true, "180": false} {
		text := lines(work(t, "mm", lantern(waist)))
		if strings.Contains(text, apart) != air || strings.Contains(text, "half from each end") == air {
			t.Errorf("barrel %s: air %v\n%s", waist, air, text)
		}
	}
}

// TestUnturnedRound: a round that is turned nowhere needs no centres, one that is turned does.
func TestUnturnedRound(t *testing.T) {
	for dia, centred := range map[string]bool{"25": false, "24": true} {
		m := work(t, "mm", "part: boss\nkind: turned\nmaterial: S235\nstock: {round: 25 mm}\nprofile: {outside: [{name: body, diameter: "+dia+", length: 110}]}\n")
		if text := lines(m); strings.Contains(text, "entre-drill") != centred {
			t.Errorf("Ø%s, centred %v:\n%s", dia, centred, text)
		}
	}
}

// TestClearanceOfNoPitch: a fraction of an inch alone says what passes; what is tapped needs its pitch.
func TestClearanceOfNoPitch(t *testing.T) {
	plate := func(size string) string {
		return "part: p\nkind: plate\nmaterial: A36\nstock: {plate: 0.5, cut: laser}\noutline: {rectangle: [4, 4]}\nholes: [{name: h, at: [[0, 0]], size: " + size + "}]\n"
	}
	for _, size := range []string{"3/8 clearance", "3/8 clearance fine", "1-1/8 clearance"} {
		thread := strings.Fields(size)[0]
		pitched := strings.Replace(size, thread, thread+" UNC", 1)
		if a, b := work(t, "in", plate(size)).Groups[0].Size, work(t, "in", plate(pitched)).Groups[0].Size; a.FinishedMm != b.FinishedMm || a.FinishedMm == 0 {
			t.Errorf("%s: Ø%v, %s: Ø%v", size, a.FinishedMm, pitched, b.FinishedMm)
		}
	}
	if job := load(t, "in", plate("3/8 tap")); len(Work(job, job.Parts[0]).Errs) == 0 {
		t.Error("3/8 tap is taken")
	}
}
