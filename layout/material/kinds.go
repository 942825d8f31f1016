package material

import "centrepop/layout/lookup"

// Kind is a group of metals that share elastic data, cutting speeds, thread
// engagement and place in the galvanic series.
type Kind int

// The kinds, in the order of Kinds.
const (
	MildSteel Kind = iota
	AlloySteel
	AusteniticStainless
	ChromiumStainless
	GreyIron
	DuctileIron // and malleable
	AluminiumAlloy
	FreeBrass
	OtherBronze // and brass that is not free-machining
	TinBronze
)

// Ferrous tells whether metals of a kind are steels or cast irons.
func (k Kind) Ferrous() bool { return k.Data().Family == Steel || k.Data().Family == CastIron }

// Cut is a cutting speed span in m/min with its source in words.
type Cut struct {
	Span
	Source string
}

// Speeds are the cutting speeds that tables give; boring, reaming and threading
// follow from them (layout/cutting).
type Speeds struct {
	TurnHSS, TurnCarbide, DrillHSS, TapHSS Cut
}

// Thread is what a thread cut in a metal needs.
type Thread struct {
	Name string // "cast iron"
	// Engagement is the engaged length over the thread's diameter that lets the
	// bolt break before the thread strips.
	Engagement float64
}

// KindData holds what a kind shares. A grade may have its own density, modulus,
// expansion and heat limit.
type KindData struct {
	Name         string // for people: "mild steel"
	Family       Family
	DensityKgM3  float64
	EMPa, Nu     float64
	AlphaPerK    float64
	ContractPerK float64
	MaxHeatC     float64
	MinColdC     float64
	HardHRC      float64 // as Material's
	Thread       Thread
	// GalvanicV is the span of corrosion potentials in flowing sea water, volts;
	// the metal with the lower one is eaten when two touch in the wet.
	GalvanicV Span
	Speeds    Speeds
}

// Data returns the row of a kind; the zero row if k is none of the constants.
func (k Kind) Data() KindData {
	if k < 0 || int(k) >= len(kindTable) {
		return KindData{}
	}
	return kindTable[k]
}

// Column is a column of the table and where its figures are from.
type Column struct {
	Name   string
	Source string
	State  lookup.State
}

// Columns returns the columns other than strength, whose source is told row by
// row by StrengthSource.
func Columns() []Column {
	return []Column{
		{"names", "EN 10027-2, EN 10025-2 Annex A, EN 1560, EN 573-3, EN 1412 and older national names", lookup.FromMemory},
		{"density", "EN 10088-1 (stainless), EN 1993-1-1 (steel), EN 1561 and EN 1563 (iron), data sheets", lookup.FromMemory},
		{"modulus and Poisson's ratio", "EN 1993-1-1, 3.2.6; EN 10088-1; EN 1561; data sheets", lookup.FromMemory},
		{"expansion and contraction",
			"DIN 7190, table of heating and cooling (steel 11 where EN 1993-1-1 has 12: the smaller asks the higher temperature); EN 10088-1; data sheets",
			lookup.FromMemory},
		{"heat limit", "DIN 7190 joining temperatures for steel and ductile iron; others common practice", lookup.FromMemory},
		{"cold limit", "the boiling point of liquid nitrogen: nothing in a small shop is colder", lookup.Checked},
		{"surface hardness", "EN 10083-2 and EN 10083-3, least HRC after flame or induction hardening; case-hardening and soft metals common practice", lookup.FromMemory},
		{"thread engagement", "engaged length over diameter", lookup.Practice},
		{"weldability and preheat", "carbon equivalent of the International Institute of Welding; class and preheat by grade", lookup.Practice},
		{"correlation factor of fillets", "EN 1993-1-8 Table 4.1", lookup.Checked},
		{"pressure under heads", "VDI 2230:2003, table of limiting surface pressures, as a catalogue of fasteners prints it; most marked there as not checked anew", lookup.Checked},
		{"galvanic place", "corrosion potentials in flowing sea water, silver/silver chloride electrode: published series", lookup.Checked},
		{"cutting speeds", "as each figure says", lookup.Practice},
	}
}

// liquidNitrogenC is what liquid nitrogen gives at normal pressure.
const liquidNitrogenC = -195.8

// Texts of the sources of speeds.
const (
	srcShop = "workshop reference table (secondary source)"
	srcHand = "handbook-type HSS tables by hardness, from ft/min"
	srcUni  = "university machine-tool sheet, from ft/min"
	srcTap  = "tap makers' tables for HSS taps, from ft/min"
	srcData = "Mechanical Engineer's Data Handbook, 5.7.1"
)

var stainlessSpeeds = Speeds{
	TurnHSS:     Cut{Span{12, 35}, srcShop + " 20-35; a second table gives austenitic 12-15: start low and never let the tool rub"},
	TurnCarbide: Cut{Span{70, 120}, srcShop},
	DrillHSS:    Cut{Span{15, 25}, srcShop + "; " + srcHand + " 15-20 for 304 and 316"},
	TapHSS:      Cut{Span{3, 6}, srcTap + ": 3-6 and 5-7 austenitic"},
}

// kindTable, in the order of the constants. Speeds are in m/min; 1 ft/min is
// 0.3048 m/min, rounded to whole metres (half metres for taps). Where sources
// disagree the range is chosen on the careful side and the other figure is told
// in the source text.
var kindTable = []KindData{
	{"mild steel", Steel, 7850, 210000, 0.30, 11.0e-6, 8.5e-6, 350, liquidNitrogenC, Unhardened, Thread{"steel", 1.0}, Span{-0.71, -0.60}, Speeds{
		TurnHSS:     Cut{Span{20, 37}, srcShop + " 20-35; " + srcHand + " 34-37; " + srcUni + " up to 76"},
		TurnCarbide: Cut{Span{90, 135}, srcShop},
		DrillHSS:    Cut{Span{20, 30}, srcShop + "; " + srcHand + " 27-30; " + srcUni + " 21-37"},
		TapHSS:      Cut{Span{9, 15}, srcTap + ": 9-15 and 15-18"},
	}},
	{"medium carbon and alloy steel", Steel, 7850, 210000, 0.30, 11.0e-6, 8.5e-6, 350, liquidNitrogenC, 0, Thread{"steel", 1.0}, Span{-0.71, -0.60}, Speeds{
		TurnHSS:     Cut{Span{15, 26}, srcHand + ": 1045 at 200 HB 26, alloy steel at 300 HB 18, at 350 HB 15"},
		TurnCarbide: Cut{Span{73, 107}, "handbook-type carbide table by hardness: 107 at 200 HB, 73 at 300 HB"},
		DrillHSS:    Cut{Span{12, 23}, srcHand + ": 1045 at 200 HB 23, 4140 at 325 HB 12"},
		TapHSS:      Cut{Span{5, 10}, srcTap + ": 4.5-7.5 alloy, 6-12 medium carbon, 7-10 at 300 HB"},
	}},
	{"stainless steel", Steel, 7900, 200000, 0.30, 16.0e-6, 13.0e-6, 350, liquidNitrogenC, Unhardened, Thread{"stainless steel", 1.0}, Span{-0.58, -0.05}, stainlessSpeeds},
	{"chromium stainless steel", Steel, 7700, 215000, 0.30, 10.5e-6, 8.2e-6, 300, liquidNitrogenC, 0, Thread{"stainless steel", 1.0}, Span{-0.58, -0.46}, stainlessSpeeds},
	{"grey cast iron", CastIron, 7200, 110000, 0.26, 10.0e-6, 8.0e-6, 250, liquidNitrogenC, 0, Thread{"cast iron", 1.5}, Span{-0.71, -0.60}, Speeds{
		TurnHSS:     Cut{Span{18, 35}, "cutting-conditions table (secondary source): rough 18-25, finish 30-35; " + srcUni + " 15-46 hard"},
		TurnCarbide: Cut{Span{60, 130}, "cutting-conditions table (secondary source): rough 60-90, finish 90-130"},
		DrillHSS:    Cut{Span{18, 30}, srcHand + ": 18 at 235 HB, 24-27 at 200 HB, 30 at 135 HB"},
		TapHSS:      Cut{Span{9, 18}, srcTap},
	}},
	{"ductile cast iron", CastIron, 7100, 169000, 0.275, 10.0e-6, 8.0e-6, 350, liquidNitrogenC, 0, Thread{"cast iron", 1.5}, Span{-0.71, -0.60}, Speeds{
		TurnHSS:     Cut{Span{15, 30}, "no table found; a little below grey iron, from memory"},
		TurnCarbide: Cut{Span{60, 110}, "no table found; a little below grey iron, from memory"},
		DrillHSS:    Cut{Span{15, 30}, srcHand + ": 15 at 240 HB, 24 at 207 HB, 30 at 165 HB"},
		TapHSS:      Cut{Span{6, 12}, srcTap + ": 6-12 malleable, 6-9 and 9-12 nodular"},
	}},
	{"aluminium alloy", Aluminium, 2700, 70000, 0.33, 23.0e-6, 18.0e-6, 150, liquidNitrogenC, Unhardened, Thread{"aluminium", 2.0}, Span{-1.00, -0.76}, Speeds{
		TurnHSS:     Cut{Span{150, 180}, srcShop + "; " + srcUni + " 107-213"},
		TurnCarbide: Cut{Span{335, 365}, srcShop},
		DrillHSS:    Cut{Span{30, 120}, srcShop + "; " + srcUni + " 76-152"},
		TapHSS:      Cut{Span{15, 21}, srcTap},
	}},
	{"free-machining brass", CopperAlloy, 8470, 97000, 0.34, 18.0e-6, 16.0e-6, 200, liquidNitrogenC, Unhardened, Thread{"brass", 1.5}, Span{-0.40, -0.30}, Speeds{
		TurnHSS:     Cut{Span{90, 105}, srcShop + "; " + srcUni + " 76-152"},
		TurnCarbide: Cut{Span{180, 200}, srcShop},
		DrillHSS:    Cut{Span{50, 55}, srcShop + "; " + srcUni + " 46-137"},
		TapHSS:      Cut{Span{18, 30}, srcTap},
	}},
	{"other brass and bronze", CopperAlloy, 8700, 100000, 0.34, 17.0e-6, 14.0e-6, 200, liquidNitrogenC, Unhardened, Thread{"bronze", 1.5}, Span{-0.42, -0.24}, Speeds{
		TurnHSS:     Cut{Span{60, 75}, srcShop + "; " + srcUni + " 76-152"},
		TurnCarbide: Cut{Span{150, 165}, srcShop},
		DrillHSS:    Cut{Span{35, 40}, srcShop + "; " + srcUni + " 46-137"},
		TapHSS:      Cut{Span{9, 12}, srcTap},
	}},
	{"tin (phosphor) bronze", CopperAlloy, 8800, 110000, 0.34, 17.0e-6, 14.0e-6, 200, liquidNitrogenC, Unhardened, Thread{"bronze", 1.5}, Span{-0.31, -0.24}, Speeds{
		TurnHSS:     Cut{Span{18, 36}, srcData + ", phosphor bronze, rough and fine; general bronze tables give twice that"},
		TurnCarbide: Cut{Span{120, 180}, srcData + ", phosphor bronze"},
		DrillHSS:    Cut{Span{13, 13}, srcData + ", phosphor bronze, one figure"},
		TapHSS:      Cut{Span{4.5, 9}, srcData + " 4.5 for reaming and threading; tap makers' tables 9-12 for bronze"},
	}},
}
