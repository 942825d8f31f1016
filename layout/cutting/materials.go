package cutting

import (
	"fmt"
	"strings"
)

// Group is a family of work materials that machine alike, as found by
// MaterialGroup. The zero value is no group.
type Group struct {
	Name          string  // for people: "mild steel"
	DensityKgM3   float64 // of the named material, kg/m3
	DensitySource string  // where the density is from
	speeds        speedTable
}

// kind numbers the groups in the table below.
type kind int

const (
	mildSteel kind = iota
	alloySteel
	stainless
	greyIron
	ductileIron
	aluminium
	freeBrass
	bronze
	tinBronze
	kinds
)

// group returns the figures of one group. Speeds are in m/min; 1 ft/min is
// 0.3048 m/min, rounded to whole metres (half metres for taps).
//
// Where sources disagree the range is chosen on the careful side and the other
// figure is told in the source text.
func group(k kind) Group {
	switch k {
	case mildSteel:
		return Group{"mild steel", 7850, "EN 1993-1-2, 3.2.2 (from memory)", speedTable{
			turnHSS:     cut{Range{20, 37}, srcShop + " 20-35; " + srcHand + " 34-37; " + srcUni + " up to 76"},
			turnCarbide: cut{Range{90, 135}, srcShop},
			drillHSS:    cut{Range{20, 30}, srcShop + "; " + srcHand + " 27-30; " + srcUni + " 21-37"},
			tapHSS:      cut{Range{9, 15}, srcTap + ": 9-15 and 15-18"},
		}}
	case alloySteel:
		return Group{"medium carbon and alloy steel", 7850, "as mild steel, EN 1993-1-2, 3.2.2 (from memory)", speedTable{
			turnHSS:     cut{Range{15, 26}, srcHand + ": 1045 at 200 HB 26, alloy steel at 300 HB 18, at 350 HB 15"},
			turnCarbide: cut{Range{73, 107}, "handbook-type carbide table by hardness: 107 at 200 HB, 73 at 300 HB"},
			drillHSS:    cut{Range{12, 23}, srcHand + ": 1045 at 200 HB 23, 4140 at 325 HB 12"},
			tapHSS:      cut{Range{5, 10}, srcTap + ": 4.5-7.5 alloy, 6-12 medium carbon, 7-10 at 300 HB"},
		}}
	case stainless:
		return Group{"stainless steel", 7900, "EN 10088-1 for 1.4301 (from memory)", speedTable{
			turnHSS:     cut{Range{12, 35}, srcShop + " 20-35; a second table gives austenitic 12-15: start low and never let the tool rub"},
			turnCarbide: cut{Range{70, 120}, srcShop},
			drillHSS:    cut{Range{15, 25}, srcShop + "; " + srcHand + " 15-20 for 304 and 316"},
			tapHSS:      cut{Range{3, 6}, srcTap + ": 3-6 and 5-7 austenitic"},
		}}
	case greyIron:
		return Group{"grey cast iron", 7200, "EN 1561, GJL-250 (from memory)", speedTable{
			turnHSS:     cut{Range{18, 35}, "cutting-conditions table (secondary source): rough 18-25, finish 30-35; " + srcUni + " 15-46 hard"},
			turnCarbide: cut{Range{60, 130}, "cutting-conditions table (secondary source): rough 60-90, finish 90-130"},
			drillHSS:    cut{Range{18, 30}, srcHand + ": 18 at 235 HB, 24-27 at 200 HB, 30 at 135 HB"},
			tapHSS:      cut{Range{9, 18}, srcTap},
		}}
	case ductileIron:
		return Group{"ductile cast iron", 7100, "EN 1563, GJS-400 (from memory)", speedTable{
			turnHSS:     cut{Range{15, 30}, "no table found; a little below grey iron, from memory"},
			turnCarbide: cut{Range{60, 110}, "no table found; a little below grey iron, from memory"},
			drillHSS:    cut{Range{15, 30}, srcHand + ": 15 at 240 HB, 24 at 207 HB, 30 at 165 HB"},
			tapHSS:      cut{Range{6, 12}, srcTap + ": 6-12 malleable, 6-9 and 9-12 nodular"},
		}}
	case aluminium:
		return Group{"aluminium alloy", 2700, "EN AW-6082 data sheets (from memory)", speedTable{
			turnHSS:     cut{Range{150, 180}, srcShop + "; " + srcUni + " 107-213"},
			turnCarbide: cut{Range{335, 365}, srcShop},
			drillHSS:    cut{Range{30, 120}, srcShop + "; " + srcUni + " 76-152"},
			tapHSS:      cut{Range{15, 21}, srcTap},
		}}
	case freeBrass:
		return Group{"free-machining brass", 8470, "CuZn39Pb3 data sheets (from memory)", speedTable{
			turnHSS:     cut{Range{90, 105}, srcShop + "; " + srcUni + " 76-152"},
			turnCarbide: cut{Range{180, 200}, srcShop},
			drillHSS:    cut{Range{50, 55}, srcShop + "; " + srcUni + " 46-137"},
			tapHSS:      cut{Range{18, 30}, srcTap},
		}}
	case bronze:
		return Group{"other brass and bronze", 8700, "between CuZn37 and gunmetal, data sheets (from memory)", speedTable{
			turnHSS:     cut{Range{60, 75}, srcShop + "; " + srcUni + " 76-152"},
			turnCarbide: cut{Range{150, 165}, srcShop},
			drillHSS:    cut{Range{35, 40}, srcShop + "; " + srcUni + " 46-137"},
			tapHSS:      cut{Range{9, 12}, srcTap},
		}}
	case tinBronze:
		return Group{"tin (phosphor) bronze", 8800, "CuSn8 data sheets (from memory)", speedTable{
			turnHSS:     cut{Range{18, 36}, srcData + ", phosphor bronze, rough and fine; general bronze tables give twice that"},
			turnCarbide: cut{Range{120, 180}, srcData + ", phosphor bronze"},
			drillHSS:    cut{Range{13, 13}, srcData + ", phosphor bronze, one figure"},
			tapHSS:      cut{Range{4.5, 9}, srcData + " 4.5 for reaming and threading; tap makers' tables 9-12 for bronze"},
		}}
	}
	return Group{}
}

// grade ties a material name to its group. The name is in the form normal
// gives. With tail, the name may be followed by a delivery or quality mark: the
// next character must then be of another sort (no digit after a digit, no
// letter after a letter), so S235 takes S235JR+N and not S2350.
type grade struct {
	name    string
	k       kind
	tail    bool
	density float64 // kg/m3 when it differs from the group's, else 0
	src     string  // source of that density
}

const srcSheet = "data sheets (from memory)"

// grades in the order they are tried: exact and longer names before the short
// ones they contain.
var grades = []grade{
	// Structural, pressure and tube steels.
	{"MILDSTEEL", mildSteel, false, 0, ""}, {"STEEL", mildSteel, false, 0, ""},
	{"S185", mildSteel, true, 0, ""}, {"S235", mildSteel, true, 0, ""}, {"S275", mildSteel, true, 0, ""},
	{"S355", mildSteel, true, 0, ""}, {"S420", mildSteel, true, 0, ""}, {"S460", mildSteel, true, 0, ""},
	{"P235", mildSteel, true, 0, ""}, {"P265", mildSteel, true, 0, ""}, {"P355", mildSteel, true, 0, ""},
	{"E235", mildSteel, true, 0, ""}, {"E355", mildSteel, true, 0, ""}, {"E470", mildSteel, true, 0, ""},
	{"ST37", mildSteel, true, 0, ""}, {"ST44", mildSteel, true, 0, ""}, {"ST52", mildSteel, true, 0, ""},
	{"DC01", mildSteel, true, 0, ""}, {"DD11", mildSteel, true, 0, ""},
	{"A36", mildSteel, true, 0, ""}, {"A53", mildSteel, true, 0, ""}, {"A106", mildSteel, true, 0, ""},
	{"A500", mildSteel, true, 0, ""}, {"A513", mildSteel, true, 0, ""}, {"A572", mildSteel, true, 0, ""},
	{"A992", mildSteel, true, 0, ""}, {"A1011", mildSteel, true, 0, ""},
	{"1008", mildSteel, true, 0, ""}, {"1010", mildSteel, true, 0, ""}, {"1015", mildSteel, true, 0, ""},
	{"1018", mildSteel, true, 0, ""}, {"1020", mildSteel, true, 0, ""}, {"1022", mildSteel, true, 0, ""},
	{"1025", mildSteel, true, 0, ""}, {"1026", mildSteel, true, 0, ""},
	{"1117", mildSteel, true, 0, ""}, {"1215", mildSteel, true, 0, ""}, {"12L14", mildSteel, true, 0, ""},
	{"C10", mildSteel, true, 0, ""}, {"C15", mildSteel, true, 0, ""}, {"C22", mildSteel, true, 0, ""},
	{"11SMN30", mildSteel, true, 0, ""}, {"11SMNPB30", mildSteel, true, 0, ""},
	{"EN1A", mildSteel, false, 0, ""}, {"EN1APB", mildSteel, false, 0, ""}, {"EN3B", mildSteel, false, 0, ""}, {"080M15", mildSteel, false, 0, ""}, {"230M07", mildSteel, false, 0, ""},
	{"1.0037", mildSteel, false, 0, ""}, {"1.0038", mildSteel, false, 0, ""}, {"1.0044", mildSteel, false, 0, ""},
	{"1.0045", mildSteel, false, 0, ""}, {"1.0570", mildSteel, false, 0, ""}, {"1.0577", mildSteel, false, 0, ""},
	{"1.0580", mildSteel, false, 0, ""}, {"1.0715", mildSteel, false, 0, ""}, {"1.0718", mildSteel, false, 0, ""},

	// Medium carbon, heat-treatable and case-hardening steels.
	{"ALLOYSTEEL", alloySteel, false, 0, ""},
	{"C35", alloySteel, true, 0, ""}, {"C40", alloySteel, true, 0, ""}, {"C45", alloySteel, true, 0, ""},
	{"C50", alloySteel, true, 0, ""}, {"C55", alloySteel, true, 0, ""}, {"C60", alloySteel, true, 0, ""},
	{"CK45", alloySteel, true, 0, ""}, {"CK60", alloySteel, true, 0, ""},
	{"E295", alloySteel, true, 0, ""}, {"E335", alloySteel, true, 0, ""}, {"E360", alloySteel, true, 0, ""},
	{"25CRMO4", alloySteel, true, 0, ""}, {"34CRMO4", alloySteel, true, 0, ""}, {"42CRMO4", alloySteel, true, 0, ""}, {"42CRMOS4", alloySteel, true, 0, ""},
	{"34CRNIMO6", alloySteel, true, 0, ""}, {"30CRNIMO8", alloySteel, true, 0, ""}, {"16MNCR5", alloySteel, true, 0, ""}, {"18CRNIMO76", alloySteel, true, 0, ""},
	{"1035", alloySteel, true, 0, ""}, {"1040", alloySteel, true, 0, ""}, {"1045", alloySteel, true, 0, ""}, {"1050", alloySteel, false, 0, ""},
	{"1060", alloySteel, true, 0, ""}, {"1141", alloySteel, true, 0, ""}, {"1144", alloySteel, true, 0, ""},
	{"4130", alloySteel, true, 0, ""}, {"4140", alloySteel, true, 0, ""}, {"4142", alloySteel, true, 0, ""}, {"4150", alloySteel, true, 0, ""},
	{"4340", alloySteel, true, 0, ""}, {"8620", alloySteel, true, 0, ""}, {"8640", alloySteel, true, 0, ""},
	{"EN8", alloySteel, true, 0, ""}, {"EN9", alloySteel, true, 0, ""}, {"EN16", alloySteel, true, 0, ""},
	{"EN19", alloySteel, true, 0, ""}, {"EN24", alloySteel, true, 0, ""},
	{"080M40", alloySteel, false, 0, ""}, {"708M40", alloySteel, false, 0, ""}, {"709M40", alloySteel, false, 0, ""}, {"817M40", alloySteel, false, 0, ""},
	{"1.0503", alloySteel, false, 0, ""}, {"1.1191", alloySteel, false, 0, ""}, {"1.7225", alloySteel, false, 0, ""},
	{"1.7227", alloySteel, false, 0, ""}, {"1.6582", alloySteel, false, 0, ""}, {"1.7131", alloySteel, false, 0, ""},

	// Stainless steels.
	{"STAINLESS", stainless, false, 0, ""}, {"STAINLESSSTEEL", stainless, false, 0, ""},
	{"303", stainless, true, 0, ""}, {"304", stainless, true, 0, ""}, {"321", stainless, true, 0, ""},
	{"316", stainless, true, 8000, "EN 10088-1 for 1.4401 (from memory)"},
	{"410", stainless, true, 7700, "EN 10088-1 for 1.4006 (from memory)"},
	{"416", stainless, true, 7700, "EN 10088-1 for 1.4005 (from memory)"},
	{"420", stainless, true, 7700, "EN 10088-1 for 1.4021 (from memory)"},
	{"430", stainless, true, 7700, "EN 10088-1 for 1.4016 (from memory)"},
	{"431", stainless, true, 7700, "EN 10088-1 for 1.4057 (from memory)"},
	{"X5CRNI1810", stainless, false, 0, ""}, {"X2CRNI189", stainless, false, 0, ""}, {"X8CRNIS189", stainless, false, 0, ""},
	{"X2CRNIMO17122", stainless, false, 8000, "EN 10088-1 for 1.4404 (from memory)"},
	{"1.4301", stainless, false, 0, ""}, {"1.4305", stainless, false, 0, ""}, {"1.4307", stainless, false, 0, ""}, {"1.4541", stainless, false, 0, ""},
	{"1.4401", stainless, false, 8000, "EN 10088-1 (from memory)"}, {"1.4404", stainless, false, 8000, "EN 10088-1 (from memory)"}, {"1.4571", stainless, false, 8000, "EN 10088-1 (from memory)"},
	{"1.4021", stainless, false, 7700, "EN 10088-1 (from memory)"}, {"1.4057", stainless, false, 7700, "EN 10088-1 (from memory)"},

	// Cast irons.
	{"CASTIRON", greyIron, false, 0, ""}, {"GREYCASTIRON", greyIron, false, 0, ""}, {"GRAYCASTIRON", greyIron, false, 0, ""}, {"GREYIRON", greyIron, false, 0, ""}, {"GRAYIRON", greyIron, false, 0, ""},
	{"ENGJL", greyIron, true, 0, ""}, {"GJL", greyIron, true, 0, ""}, {"GG", greyIron, true, 0, ""}, {"A48", greyIron, true, 0, ""},
	{"DUCTILEIRON", ductileIron, false, 0, ""}, {"DUCTILECASTIRON", ductileIron, false, 0, ""}, {"NODULARIRON", ductileIron, false, 0, ""}, {"SGIRON", ductileIron, false, 0, ""},
	{"ENGJS", ductileIron, true, 0, ""}, {"GJS", ductileIron, true, 0, ""}, {"GGG", ductileIron, true, 0, ""}, {"A536", ductileIron, true, 0, ""},

	// Aluminium. A bare 1050 is the steel; EN AW-1050 and 1050A are aluminium.
	{"1050A", aluminium, false, 0, ""}, {"1050AH", aluminium, true, 0, ""}, {"1050H", aluminium, true, 0, ""},
	{"ENAW5083", aluminium, true, 2660, srcSheet}, {"ENAW5754", aluminium, true, 2670, srcSheet}, {"ENAW2011", aluminium, true, 2830, srcSheet},
	{"ENAW2017", aluminium, true, 2790, srcSheet}, {"ENAW2024", aluminium, true, 2780, srcSheet}, {"ENAW7075", aluminium, true, 2810, srcSheet},
	{"ALUMINIUM", aluminium, false, 0, ""}, {"ALUMINUM", aluminium, false, 0, ""},
	{"ENAW", aluminium, true, 0, ""}, {"AW", aluminium, true, 0, ""}, {"ALMGSI1", aluminium, true, 0, ""}, {"ALMGSI", aluminium, true, 0, ""},
	{"6005", aluminium, true, 0, ""}, {"6060", aluminium, true, 0, ""}, {"6061", aluminium, true, 0, ""}, {"6063", aluminium, true, 0, ""}, {"6082", aluminium, true, 0, ""}, {"6026", aluminium, true, 0, ""},
	{"5052", aluminium, true, 2680, srcSheet}, {"5083", aluminium, true, 2660, srcSheet}, {"5754", aluminium, true, 2670, srcSheet},
	{"2011", aluminium, true, 2830, srcSheet}, {"2017", aluminium, true, 2790, srcSheet}, {"2024", aluminium, true, 2780, srcSheet}, {"7075", aluminium, true, 2810, srcSheet},

	// Copper alloys.
	{"BRASS", freeBrass, false, 0, ""}, {"FREEMACHININGBRASS", freeBrass, false, 0, ""},
	{"CUZN39PB3", freeBrass, false, 0, ""}, {"CUZN38PB2", freeBrass, false, 0, ""}, {"CUZN36PB3", freeBrass, false, 8500, srcSheet},
	{"CW614N", freeBrass, false, 0, ""}, {"CW603N", freeBrass, false, 8500, srcSheet}, {"CZ121", freeBrass, false, 0, ""}, {"C360", freeBrass, false, 8500, srcSheet}, {"C36000", freeBrass, false, 8500, srcSheet},
	{"CUZN37", bronze, false, 8440, srcSheet}, {"CUZN40", bronze, false, 8390, srcSheet}, {"CW508L", bronze, false, 8440, srcSheet},
	{"C260", bronze, false, 8530, srcSheet}, {"C464", bronze, false, 8410, srcSheet}, {"NAVALBRASS", bronze, false, 8410, srcSheet},
	{"BRONZE", bronze, false, 0, ""}, {"GUNMETAL", bronze, false, 8800, srcSheet}, {"RG7", bronze, false, 8800, srcSheet},
	{"CUSN7ZN4PB7", bronze, true, 8800, srcSheet}, {"CUSN5ZN5PB5", bronze, true, 8700, srcSheet}, {"LG2", bronze, false, 8700, srcSheet},
	{"SAE660", bronze, false, 8930, srcSheet}, {"C932", bronze, false, 8930, srcSheet}, {"C93200", bronze, false, 8930, srcSheet},
	{"ALUMINIUMBRONZE", bronze, false, 7600, srcSheet}, {"ALUMINUMBRONZE", bronze, false, 7600, srcSheet},
	{"CUAL10NI5FE4", bronze, true, 7600, srcSheet}, {"CUAL10FE5NI5", bronze, true, 7600, srcSheet}, {"C954", bronze, false, 7450, srcSheet}, {"C95400", bronze, false, 7450, srcSheet},
	{"PHOSPHORBRONZE", tinBronze, false, 0, ""}, {"TINBRONZE", tinBronze, false, 0, ""}, {"PB1", tinBronze, false, 0, ""},
	{"CUSN6", tinBronze, true, 0, ""}, {"CUSN8", tinBronze, true, 0, ""}, {"CUSN10", tinBronze, true, 0, ""}, {"CUSN12", tinBronze, true, 8700, srcSheet}, {"C510", tinBronze, false, 8860, srcSheet}, {"C544", tinBronze, false, 8890, srcSheet},
}

// normal brings a material name to the form of the table: upper case, without
// spaces, hyphens, underscores, slashes and brackets.
func normal(s string) string {
	return strings.NewReplacer(" ", "", "\t", "", "-", "", "_", "", "/", "", "(", "", ")", "").Replace(strings.ToUpper(s))
}

// matches reports whether the normal name n is the grade g.
func (g grade) matches(n string) bool {
	if n == g.name {
		return true
	}
	if !g.tail || !strings.HasPrefix(n, g.name) {
		return false
	}
	last, next := g.name[len(g.name)-1], n[len(g.name)]
	return isDigit(last) != isDigit(next)
}

func isDigit(c byte) bool { return c >= '0' && c <= '9' }

// MaterialGroup finds the group of a material by name, whatever the case and
// with or without spaces and hyphens: EN names and numbers (S235JR, C45+QT,
// 1.4301, EN-GJL-250), AISI/SAE and ASTM names with or without the body's name
// (AISI 1018, A36), older British and German names, and plain words ("mild
// steel", "brass"). DensityKgM3 is that of the named grade where it is known
// apart. An unknown name is an error that lists the known ones.
func MaterialGroup(material string) (Group, error) {
	n := normal(material)
	names := []string{n}
	for _, body := range []string{"ASTM", "AISI", "SAE", "BS", "DIN"} {
		if rest, ok := strings.CutPrefix(n, body); ok && rest != "" {
			names = append(names, rest)
		}
	}
	for _, name := range names {
		for _, g := range grades {
			if g.matches(name) {
				out := group(g.k)
				if g.density > 0 {
					out.DensityKgM3, out.DensitySource = g.density, g.src
				}
				return out, nil
			}
		}
	}
	return Group{}, fmt.Errorf("cutting: unknown material %q; known: %s", material, strings.Join(KnownMaterials(), ", "))
}

// KnownMaterials returns the names MaterialGroup knows, in table order, upper
// case and without spaces; many may carry a quality mark after them.
func KnownMaterials() []string {
	out := make([]string, len(grades))
	for i, g := range grades {
		out[i] = g.name
	}
	return out
}

// Groups returns all material groups in a fixed order, for printing a table.
func Groups() []Group {
	out := make([]Group, 0, kinds)
	for k := kind(0); k < kinds; k++ {
		out = append(out, group(k))
	}
	return out
}
