package part

import (
	"fmt"
	"slices"
	"strings"
	"testing"

	"centrepop/layout/plan"
	"centrepop/parts"
)

// TestRequirements: each kind is numbered with the symbol and name of ISO 1101,
// checked while the part is still held, and in the record.
func TestRequirements(t *testing.T) {
	t.Parallel()
	m := work(t, "mm", housing+`require:
  - {is: flatness, within: 0.05, of: front}
  - {is: squareness, within: 0.1, of: back, to: cup}
  - {is: run-out, within: 0.03, of: body, to: cup}
  - {is: coaxiality, within: 0.02, of: narrow, to: cup}
  - {is: parallelism, within: 0.08, of: back, to: rear}
  - {is: equal, within: 0.2, of: length}
`)
	want := []string{"⏥ 0.05 flatness of front", "⊥ 0.1 perpendicularity of back to cup", "↗ 0.03 circular run-out of body to cup",
		"◎ 0.02 coaxiality of narrow to cup", "∥ 0.08 parallelism of back to rear", "0.2 length the same on all pieces"}
	widths := []float64{0.05, 0.1, 0.03, 0.02, 0.08, 0.2}
	gauges := []string{"surface plate", "indicator across", "indicator, largest less smallest", "indicator, largest less smallest", "micrometer at four", "micrometer or calipers, all"}
	var got []string
	for _, f := range m.Features {
		if f.Kind == plan.RequirementFeature {
			i := len(got)
			got = append(got, f.Size+" "+f.Name)
			c := check(m, f.Name)
			if c == nil || c.Ref != f.N || c.Wanted != f.Size || c.MaxMm != widths[i] || c.Limits != "within "+m.W.Said(widths[i]) || !strings.HasPrefix(c.Gauge, gauges[i]) {
				t.Errorf("record of %s: %+v", f.Name, c)
			}
		}
	}
	if !slices.Equal(got, want) {
		t.Errorf("features %q", got)
	}
	for line, title := range map[string]string{
		"Before letting go: Flatness of front within 0.05 mm":                         "Turn from the front face",
		"Before letting go: Perpendicularity of back to cup within 0.1 mm: indicator": "Turn from the back face",
		"Before letting go: Coaxiality of narrow to cup within 0.02 mm":               "Turn from the front face",
		"Length the same on all pieces within 0.2 mm: micrometer or calipers":         "Deburr and inspect",
	} {
		i := slices.IndexFunc(m.Out.Operations, func(o plan.Operation) bool { return o.Title == title })
		if o := m.Out.Operations[i]; strings.HasPrefix(line, "Before") && !slices.ContainsFunc(o.Refs, func(n int) bool {
			return slices.ContainsFunc(m.Features, func(f plan.Feature) bool { return f.N == n && f.Kind == plan.RequirementFeature })
		}) {
			t.Errorf("%q has no balloon of what is required: %v", title, o.Refs)
		}
		if !slices.ContainsFunc(m.Out.Operations[i].Do, func(s string) bool { return strings.HasPrefix(s, line) }) {
			t.Errorf("no %q in %q: %q", line, title, m.Out.Operations[i].Do)
		}
	}
	for _, k := range parts.RequirementKinds {
		if toleranced[k].name == "" || toleranced[k].gauge == "" {
			t.Errorf("no words for %s", k)
		}
	}
}

// TestEqualLengthIsNoAuxiliary: a length that has to be equal on all copies is
// measured, and another closes the chain.
func TestEqualLengthIsNoAuxiliary(t *testing.T) {
	t.Parallel()
	m := work(t, "mm", housing+"require:\n  - {is: equal, within: 0.05, of: body}\n")
	if got := feature(m, "body").Size; !strings.HasSuffix(got, "× 104 long") || check(m, "body length") == nil {
		t.Error(got)
	}
	if got := feature(m, "rear").Size; !strings.HasSuffix(got, "× (10) long") {
		t.Error(got)
	}
}

// TestOneSetting: the steps asked for are turned in one operation, which says so.
func TestOneSetting(t *testing.T) {
	t.Parallel()
	job := demo(t, "pugmill")
	i := slices.IndexFunc(job.Parts, func(p *parts.Part) bool { return p.Name.Value == "auger-shaft" })
	var with []string
	for _, o := range Work(job, job.Parts[i]).Out.Operations {
		text := strings.Join(o.Do, "\n")
		if strings.Contains(text, "Turn seal land") || strings.Contains(text, "Turn front bearing") || strings.Contains(text, "Turn rear bearing") {
			with = append(with, o.Title)
		}
		if strings.Contains(text, "Turn seal land") && !strings.Contains(text, "Without letting the part go between them: seal land, front bearing, rear bearing.") {
			t.Error(text)
		}
	}
	if len(with) != 1 {
		t.Errorf("turned in %q", with)
	}
	// A cup behind a narrower bore from either side cannot be bored with the other.
	bad := strings.Replace(housing, "profile:\n", "profile:\n  one-setting: [cup, far]\n", 1)
	bad = strings.Replace(bad, "length: 60}", "length: 34}\n    - {name: far, diameter: 80, length: 26}", 1)
	job = load(t, "mm", bad)
	if errs := Work(job, job.Parts[0]).Errs; len(errs) != 1 || !strings.Contains(errs.Error(), "cannot be reached in one setting") {
		t.Errorf("errors %v", errs)
	}
	job = load(t, "mm", strings.Replace(bad, "[cup, far]", "[cup, wide]", 1))
	if errs := Work(job, job.Parts[0]).Errs; len(errs) > 0 {
		t.Error(errs)
	}
	// A spigot in front of a flange and a bore behind its narrowest open to opposite faces; with the bore before
	// that they open to one, and two outsides alone are turned between centres.
	cover := "part: p\nkind: turned\nmaterial: S235\nstock: {round: 120 mm}\nprofile:\n  one-setting: [spigot, %s]\n  outside: [{name: spigot, diameter: 75, length: 10}, {name: flange, diameter: 115, length: 20}, {name: end, diameter: 80, length: 10}]\n  inside: [{name: near, diameter: 50, length: 15}, {name: hole, diameter: 40, length: 10}, {name: far, diameter: 56, length: 15}]\n"
	for with, want := range map[string]int{"far": 1, "near": 0, "end": 0} {
		job := load(t, "mm", fmt.Sprintf(cover, with))
		if errs := Work(job, job.Parts[0]).Errs; len(errs) != want {
			t.Errorf("spigot and %s: %v", with, errs)
		}
	}
	job = load(t, "mm", strings.Replace(cover, "[spigot, %s]", "[end, far]", 1)) // both open to the back
	if errs := Work(job, job.Parts[0]).Errs; len(errs) > 0 {
		t.Error(errs)
	}
	// Two that are open to the back face alone can.
	back := "part: p\nkind: turned\nmaterial: S235\nstock: {round: 100 mm}\nprofile:\n  one-setting: [b, c]\n  outside: [{name: o, diameter: 95, length: 60}]\n  inside: [{name: a, diameter: 30, length: 20}, {name: b, diameter: 40, length: 20}, {name: c, diameter: 50, length: 20}]\n"
	if job = load(t, "mm", back); len(Work(job, job.Parts[0]).Errs) > 0 {
		t.Error(Work(job, job.Parts[0]).Errs)
	}
}

// TestGroundBesideHardened: the seats of bearings on a shaft of which a land is hardened are left over
// size and ground after it, their run-out measured then; without the hardness they are turned.
func TestGroundBesideHardened(t *testing.T) {
	t.Parallel()
	const shaft = "part: p\nkind: shaft\nmaterial: C45\nstock: {round: 65 mm, length: 210 mm}\nprofile:\n  outside:\n    - {name: seat, diameter: 50, fit: k6, length: 50, seat: bearing}\n    - {name: land, diameter: 60, fit: h11, length: 50%s}\n    - {name: other, diameter: 45, fit: k6, length: 100, seat: bearing}\nrequire:\n  - {is: run-out, within: 0.02, of: other, to: seat}\n"
	for hardness, want := range map[string]bool{", hardness: 50": true, "": false} {
		text := ""
		for _, o := range work(t, "mm", fmt.Sprintf(shaft, hardness)).Out.Operations {
			if o.Machine == "Grind" {
				text = strings.Join(o.Do, " ") + strings.Join(o.Limits, ", ")
			}
		}
		if got := strings.Contains(text, "Have land hardened to 50 HRC at least, then grind it to size. Then grind seat, other to size in the same setting: hardening beside has moved it. Before letting go: Circular run-out of other to seat") && strings.Contains(text, "seat 50.002 – 50.018"); got != want {
			t.Errorf("%q: %q", hardness, text)
		}
	}
}

// TestPartedOff: an outside from end to end that is turned in one setting with its bore stands whole out
// of the jaws, 10 held, 3 clear of the tool, 5 for the parting tool and 1.5 to face, or is found; without
// a length the stock is so long, and one that may be turned round is not. So is one limited closer than 0.05 (ISO 286-2: s6 of Ø32 is
// 0.016 wide, h10 0.1), as far as three diameters.
func TestPartedOff(t *testing.T) {
	t.Parallel()
	const bush = "part: p\nkind: turned\nmaterial: CuSn8\nstock: {round: 36 mm%s}\nprofile:\n%s  outside: [{name: outside, diameter: 32, %s}]\n  inside: [{name: bore, diameter: 25, fit: F7, length: %[4]s}]\n"
	const one = "  one-setting: [outside, bore]\n"
	for _, c := range []struct {
		length, one, fit, long string
		parted                 bool
		found                  string
	}{
		{", length: 39.5 mm", one, "s6", "20", true, ""}, {", length: 39.4 mm", one, "s6", "20", false, "stock-short outside, bore 39.4 40"}, {"", one, "s6", "20", true, ""},
		{", length: 60 mm", "", "s6", "20", true, ""}, {", length: 39.4 mm", "", "s6", "20", false, "fit-split outside 39.4 40"}, {", length: 60 mm", "", "h10", "20", false, ""}, // 0.1 wide
		{"", "", "s6", "96", true, ""}, {"", "", "s6", "96.5", false, ""}, // three diameters
	} {
		m := work(t, "mm", fmt.Sprintf(bush, c.length, c.one, "fit: "+c.fit+", length: "+c.long, c.long))
		parted, rest := false, false
		for _, o := range m.Out.Operations {
			text := strings.Join(o.Do, " ")
			parted = parted || strings.HasSuffix(text, "Part off, 1 mm over the length.")
			rest = rest || strings.Contains(text, "as far as the jaws allow, the rest when turned round")
		}
		found := ""
		for _, p := range m.Out.Problems {
			if p.Kind == plan.StockShort || p.Kind == plan.FitSplit {
				found = fmt.Sprint(p.Kind, " ", p.Args[0].Text, " ", p.Args[1].Value, " ", p.Args[2].Value)
			}
		}
		if parted != c.parted || rest == c.parted || found != c.found {
			t.Errorf("%+v: parted off %v, the rest later %v, found %q", c, parted, rest, found)
		}
	}
}

// TestMeasuredWhenGround: what is hardened has its size, and runs true, once it is ground, whether
// it is measured or measured to; what is neither is measured in the setting that turns it.
func TestMeasuredWhenGround(t *testing.T) {
	t.Parallel()
	const shaft = "part: p\nkind: shaft\nmaterial: C45\nstock: {round: 65 mm, length: 210 mm}\nprofile:\n  outside:\n    - {name: land, diameter: 60, length: 50%s}\n    - {name: seat, diameter: 50, length: 50}\n    - {name: other, diameter: 45, length: 100}\n" +
		"require:\n  - {is: run-out, within: 0.02, of: land, to: seat}\n  - {is: run-out, within: 0.02, of: other, to: land}\n  - {is: run-out, within: 0.02, of: other, to: seat}\n  - {is: squareness, within: 0.02, of: back, to: land}\n"
	at := func(hardness string) map[string]string {
		out := map[string]string{}
		for _, o := range work(t, "mm", fmt.Sprintf(shaft, hardness)).Out.Operations {
			for _, line := range o.Do {
				if s, ok := strings.CutPrefix(line, "Before letting go: "); ok {
					s, _, _ = strings.Cut(s, " within")
					out[s] = string(o.Machine)
				}
			}
		}
		return out
	}
	soft, ground := at(""), at(", hardness: 50")
	for line, hard := range map[string]string{"Circular run-out of land to seat": "Grind", "Circular run-out of other to land": "Grind", "Circular run-out of other to seat": "Lathe", "Perpendicularity of back to land": "Grind"} {
		if soft[line] != "Lathe" || ground[line] != hard {
			t.Errorf("%s: %q, hardened %q", line, soft[line], ground[line])
		}
	}
}

// A face is measured to a step, or to the other face, when both are there.
func TestRequirementWaitsForItsDatum(t *testing.T) {
	t.Parallel()
	const shaft = "part: p\nkind: shaft\nmaterial: S355\nstock: {round: 50 mm}\nprofile:\n  outside:\n    - {name: seat, diameter: 30, fit: k6, length: 30}\n    - {name: middle, diameter: 40, length: LONG}\n    - {name: tail, diameter: 30, length: 30}\nrequire:\n  - WHAT\n"
	for _, c := range []struct{ long, what, title string }{
		{"200", "{is: squareness, within: 0.02, of: back, to: tail}", "Turn from the back face"},
		{"200", "{is: squareness, within: 0.02, of: front, to: seat}", "Turn from the front face"},
		{"30", "{is: parallelism, within: 0.02, of: front, to: back}", "Turn from the back face"},
		{"30", "{is: parallelism, within: 0.02, of: back, to: front}", "Turn from the back face"},
		{"30", "{is: squareness, within: 0.02, of: front, to: tail}", "Turn from the back face"},
	} {
		m, at := work(t, "mm", strings.NewReplacer("LONG", c.long, "WHAT", c.what).Replace(shaft)), ""
		for _, o := range m.Out.Operations {
			if slices.ContainsFunc(o.Do, func(s string) bool { return strings.HasPrefix(s, "Before letting go: P") }) {
				at += o.Title
			}
		}
		if at != c.title {
			t.Errorf("%s: in %q, want %q", c.what, at, c.title)
		}
	}
}

// A seat turned in the second setting reads true to its own spindle: the datum of the first is read,
// through a bore of Ø70; out of a bore of Ø18 no lever reaches, nor to an outside in the jaws.
func TestDatumOfAnotherSetting(t *testing.T) {
	t.Parallel()
	const part = "part: p\nkind: turned\nmaterial: C45\nstock: {round: 110 mm, length: 106 mm, cut: saw}\nprofile:\n  outside: [{name: low, diameter: 90, length: 40}, {name: body, diameter: 100, length: 30}, {name: far, diameter: 80, length: 30}]\n" +
		"  inside: [{name: front-cup, diameter: 60, length: 20}, {name: bore, diameter: CORE, length: 60}, {name: rear-cup, diameter: 60, length: 20}]\nrequire:\n  - {is: run-out, within: 0.03, of: OF, to: TO}\n"
	for _, c := range []struct{ core, of, to, title, want string }{
		{"40", "rear-cup", "front-cup", "Turn from the back face", "Before anything is finished: Circular run-out of rear cup to front cup within 0.03 mm: indicator on front cup, through the bore, largest less"},
		{"18", "rear-cup", "front-cup", "Deburr and inspect", "within 0.03 mm: a mandrel in front cup, indicator on the other"},
		{"40", "far", "low", "Deburr and inspect", "within 0.03 mm: low turned in V blocks, indicator on the other"},
		{"40", "low", "front-cup", "Turn from the front face", "Before letting go: Circular run-out of low to front cup within 0.03 mm: indicator, largest less"},
	} {
		p := work(t, "mm", strings.NewReplacer("CORE", c.core, "OF", c.of, "TO", c.to).Replace(part)).Out
		i := slices.IndexFunc(p.Operations, func(o plan.Operation) bool {
			return strings.Contains(strings.Join(o.Do, " "), c.want)
		})
		if i < 0 || p.Operations[i].Title != c.title {
			t.Errorf("%+v: in %d of %+v", c, i, p.Operations)
		}
	}
}
