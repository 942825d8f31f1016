package material

import (
	"regexp"
	"strconv"
	"strings"
	"testing"
)

// namingRules read the kind off a designation, by the standard that forms it. The
// standards give the carbon, the alloying elements or the sort of metal; that
// mild steel ends at 0.25 % of carbon is the table's own line. EN 10027-1 and -2
// and EN 1560 were looked up (a reprint in DIN-Normen, edelstahl-rostfrei.de and a
// text on cast iron print them); SAE J402, BS 970, EN 573-1, ISO 1190-1, UNS and the
// titles are from memory.
var namingRules = []struct {
	name   string
	source string
	kind   func(match []string) Kind
}{
	{`^C(\d\d)\b`, "EN 10027-1: C, then 100 times the carbon in percent", func(m []string) Kind { return byCarbon(m[1]) }},
	{`^(\d\d)S(?:Mn)?\d\d\b`, "EN 10027-1: 100 times the carbon in percent, then S or SMn: free-cutting", func(m []string) Kind { return byCarbon(m[1]) }},
	{`^\d\d(?:Mn)?Cr(?:Ni)?(?:Mo)?\d`, "EN 10027-1: alloyed with chromium", always(AlloySteel)},
	{`^1[01](\d\d)\b`, "SAE J402: 10 and 11, then 100 times the carbon in percent", func(m []string) Kind { return byCarbon(m[1]) }},
	{`^(?:41|43|86)\d\d\b`, "SAE J402: 41, 43 and 86, alloyed with chromium and molybdenum", always(AlloySteel)},
	{`^0\d\dM(\d\d)\b`, "BS 970: 000 to 199 unalloyed, M, then 100 times the carbon in percent", func(m []string) Kind { return byCarbon(m[1]) }},
	{`^[5-9]\d\dM\d\d\b`, "BS 970: 500 to 999, alloyed", always(AlloySteel)},
	{`^1\.40\d\d\b`, "EN 10027-2: 1.40, stainless with less than 2.5 % of nickel", always(ChromiumStainless)},
	{`^1\.4[34]\d\d\b`, "EN 10027-2: 1.43 and 1.44, stainless with 2.5 % of nickel and more", always(AusteniticStainless)},
	{`^A513 10(\d\d)\b`, "ASTM A513: SAE number, 10, then 100 times the carbon in percent", func(m []string) Kind { return byCarbon(m[1]) }},
	{`^D[CD]\d\d\b`, "EN 10130 and EN 10111: the titles, low carbon steel", always(MildSteel)},
	{`^grey cast iron\b`, "the name says it", always(GreyIron)},
	{`^ductile cast iron\b`, "the name says it", always(DuctileIron)},
	{`^aluminium\b`, "the name says it", always(AluminiumAlloy)},
	{`^alloy steel\b`, "the name says it", always(AlloySteel)},
	{`^EN-GJL-`, "EN 1560: GJL, cast iron with flake graphite", always(GreyIron)},
	{`^EN-GJS-`, "EN 1560: GJS, cast iron with spheroidal graphite", always(DuctileIron)},
	{`^EN-GJM[BW]-`, "EN 1560: GJM, malleable cast iron", always(DuctileIron)},
	{`^A48 `, "ASTM A48: the title, grey iron castings", always(GreyIron)},
	{`^A536 `, "ASTM A536: the title, ductile iron castings", always(DuctileIron)},
	{`^EN AW-`, "EN 573-1: AW, wrought aluminium", always(AluminiumAlloy)},
	{`^CuZn\d\dPb`, "ISO 1190-1: copper, zinc and lead", always(FreeBrass)},
	{`^CuZn\d\d(?:Sn\d)?$`, "ISO 1190-1: copper and zinc, no lead", always(OtherBronze)},
	{`^CuSn\d+(?:-C)?$`, "ISO 1190-1: copper and tin only", always(TinBronze)},
	{`^CuSn\d+Zn`, "ISO 1190-1: copper, tin and zinc, not tin only", always(OtherBronze)},
	{`^C93[2-9]`, "UNS C93200 to C93900: cast copper, tin and lead, not tin only", always(OtherBronze)},
	{`^C95[2-9]`, "UNS C95200 to C95900: cast copper and aluminium", always(OtherBronze)},
	{`^CuAl\d`, "ISO 1190-1: copper and aluminium, no tin and no zinc", always(OtherBronze)},
}

func always(k Kind) func([]string) Kind { return func([]string) Kind { return k } }

// byCarbon is the kind of an unalloyed steel by 100 times its carbon.
func byCarbon(s string) Kind {
	if n, _ := strconv.Atoi(s); n <= 25 {
		return MildSteel
	}
	return AlloySteel
}

// The kinds that a designation gives by itself, and the family that a kind's name
// says: the rows "by rule" of the reference file are those and no others.
func TestKindByName(t *testing.T) {
	t.Parallel()
	rules := make([]*regexp.Regexp, len(namingRules))
	for i, r := range namingRules {
		rules[i] = regexp.MustCompile(r.name)
	}
	byRule := map[string]bool{}
	for _, g := range grades() {
		name := g.material("").Name
		for i, re := range rules {
			m := re.FindStringSubmatch(name)
			if m == nil {
				continue
			}
			byRule[name+"/kind/"+namingRules[i].source] = true
			if want := namingRules[i].kind(m); g.material("").Kind != want {
				t.Errorf("%s: %s, by its name %s (%s)", name, g.material("").Kind.Data().Name, want.Data().Name, namingRules[i].source)
			}
		}
	}
	for k := Kind(0); k.Data().Name != ""; k++ {
		name, want := k.Data().Name, ""
		for _, w := range [][2]string{{"steel", "steel"}, {"iron", "cast iron"}, {"brass", "copper alloy"}, {"bronze", "copper alloy"}, {"aluminium", "aluminium"}} {
			if strings.Contains(name, w[0]) {
				want = w[1]
			}
		}
		byRule[name+"/family/the name of the kind"] = true
		if have := kindValues(k.Data())["family"]; have != want {
			t.Errorf("%s: family %s, by its name %s", name, have, want)
		}
	}
	for _, r := range reference(t) {
		if key := r.subject + "/" + r.quantity + "/" + r.source; (r.how == "by rule") != byRule[key] {
			t.Errorf("%s: how %q, but a rule gives it: %v", key, r.how, byRule[key])
		}
		delete(byRule, r.subject+"/"+r.quantity+"/"+r.source)
	}
	for key := range byRule {
		t.Errorf("no row by rule of %s", key)
	}
}
