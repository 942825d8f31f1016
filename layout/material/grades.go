package material

import (
	"strings"

	"centrepop/layout/lookup"
)

// grade is a row of the table. names are further names in normal form, separated
// by spaces. own replaces figures of the kind; a zero leaves the kind's.
type grade struct {
	name  string
	names string
	kind  Kind
	weld  Weldability
	own   own
	steps []Step
	src   string // standard and table of the steps
	state lookup.State
}

// own are the figures in which a grade differs from its kind.
type own struct {
	densityKgM3, eMPa, alphaPerK, contractPerK, maxHeatC, betaW, hrc float64
}

// known returns all names of the grade in normal form.
func (g grade) known() []string { return append([]string{normal(g.name)}, strings.Fields(g.names)...) }

var plainer = strings.NewReplacer(" ", "", "\t", "", "-", "", "+", "", "_", "", "/", "", "(", "", ")", "")

// normal brings a name to the form of the table: upper case, without spaces,
// hyphens, plus signs, slashes, underscores and brackets.
func normal(s string) string { return plainer.Replace(strings.ToUpper(s)) }

// marked tells whether the marks of structural steels may follow the names.
func (g grade) marked() bool {
	return strings.ContainsRune("SPE", rune(g.name[0])) && isDigit(g.name[1])
}

func isDigit(c byte) bool { return c >= '0' && c <= '9' }

// material puts row and kind together; asked is the name when it has a mark that
// the row does not know.
func (g grade) material(asked string) Material {
	k := g.kind.Data()
	m := Material{
		Name: g.name, Kind: g.kind, DensityKgM3: k.DensityKgM3, EMPa: k.EMPa, Nu: k.Nu, AlphaPerK: k.AlphaPerK, ContractPerK: k.ContractPerK,
		MaxHeatC: k.MaxHeatC, MinColdC: k.MinColdC, HardHRC: k.HardHRC, Weld: g.weld, BetaW: g.own.betaW,
		steps: g.steps, src: g.src, state: g.state, asked: asked,
	}
	for _, o := range []struct {
		to  *float64
		own float64
	}{
		{&m.DensityKgM3, g.own.densityKgM3}, {&m.EMPa, g.own.eMPa}, {&m.AlphaPerK, g.own.alphaPerK},
		{&m.ContractPerK, g.own.contractPerK}, {&m.MaxHeatC, g.own.maxHeatC}, {&m.HardHRC, g.own.hrc},
	} {
		if o.own != 0 {
			*o.to = o.own
		}
	}
	return m
}

// Shorthands of the tables: weld classes, and the heat limit of quenched and
// tempered steel (DIN 7190, from memory).
var (
	readily = Weldability{}
	ownWay  = Weldability{Class: WeldOwn}
	never   = Weldability{Class: WeldNever}
	qtHeat  = own{maxHeatC: 300}
)

func cev(c float64) Weldability            { return Weldability{WeldReadily, c, Span{}} }
func warm(c, lo, hi float64) Weldability   { return Weldability{WeldPreheated, c, Span{lo, hi}} }
func proven(c, lo, hi float64) Weldability { return Weldability{WeldProcedure, c, Span{lo, hi}} }

const (
	en10025 = "EN 10025-2:2004 Table 7"
	en10297 = "EN 10297-1 Table 5, tube"
	isoN    = "EN ISO 683-1 (EN 10083-2), normalized"
	isoQT   = "EN ISO 683-2 (EN 10083-3), quenched and tempered, bars"
)

// structural, pressure, tube and sheet steels of the EN standards. Under 3 mm
// EN 10025-2 gives a higher tensile strength, which is not used.
var structural = []grade{
	{"S185", "ST33 1.0035", MildSteel, readily, own{}, []Step{{16, 185, 290}, {40, 175, 290}, {100, 175, 290}, {150, 165, 280}, {200, 155, 270}, {250, 145, 270}}, en10025, lookup.Checked},
	{"S235",
		"STEEL MILDSTEEL ST37 ST372 ST373 RST37 RST372 UST372 ST373N ST373U FE360 FE360B FE360C FE360D BS436040A 436040A E242 1.0036 1.0037 1.0038 1.0039 1.0114 1.0115 1.0116 1.0117",
		MildSteel, cev(0.35), own{betaW: 0.80},
		[]Step{{16, 235, 360}, {40, 225, 360}, {100, 215, 360}, {150, 195, 350}, {200, 185, 340}, {250, 175, 340}}, en10025, lookup.Checked},
	{"S275", "ST44 ST442 ST443 FE430 FE430B FE430C FE430D BS436043A 436043A E282 1.0044 1.0143 1.0144 1.0145 1.0149", MildSteel, cev(0.40), own{betaW: 0.85},
		[]Step{{16, 275, 410}, {40, 265, 410}, {63, 255, 410}, {80, 245, 410}, {100, 235, 410}, {150, 225, 400}, {200, 215, 380}, {250, 205, 380}}, en10025, lookup.Checked},
	{"S275N", "S275NL S275NH S275NLH 1.0490 1.0491 1.0493 1.0497", MildSteel, cev(0.40), own{betaW: 0.85},
		[]Step{{16, 275, 370}, {40, 265, 370}, {63, 255, 370}, {80, 245, 370}}, "lower of EN 10025-3 and EN 10210-1", lookup.Checked},
	{"S275M", "S275ML S275MH S275MLH 1.8818 1.8819 1.8843 1.8844", MildSteel, cev(0.34), own{betaW: 0.85},
		[]Step{{16, 275, 360}, {40, 265, 360}, {63, 255, 360}}, "lower of EN 10025-4 and EN 10219-1", lookup.Checked},
	{"S355", "ST52 ST523 ST523N ST523U FE510 FE510B FE510C FE510D BS436050B 436050B E363 1.0045 1.0547 1.0553 1.0554 1.0570 1.0576 1.0577 1.0595 1.0596", MildSteel, cev(0.45), own{betaW: 0.90},
		[]Step{{16, 355, 470}, {40, 345, 470}, {63, 335, 470}, {80, 325, 470}, {100, 315, 470}, {150, 295, 450}, {200, 285, 450}, {250, 275, 450}}, en10025, lookup.Checked},
	{"S355M", "S355ML S355MH S355MLH 1.8823 1.8834 1.8845 1.8846", MildSteel, cev(0.39), own{betaW: 0.90},
		[]Step{{16, 355, 450}, {40, 345, 450}, {63, 335, 450}}, "lower of EN 10025-4 and EN 10219-1", lookup.Checked},
	{"S420", "1.8902 1.8912 1.8825 1.8836 1.8750 1.8751 1.8847 1.8848", MildSteel, warm(0.48, 80, 150), own{betaW: 1.00},
		[]Step{{16, 420, 500}, {40, 400, 500}, {63, 390, 500}, {80, 370, 480}, {100, 360, 470}}, "lowest of EN 10025-3, EN 10025-4 and EN 10219-1",
		lookup.FromMemory},
	{"S460", "1.8901 1.8903 1.8827 1.8838 1.8953 1.8956 1.8849 1.8850", MildSteel, warm(0.53, 80, 150), own{betaW: 1.00},
		[]Step{{16, 460, 530}, {40, 440, 530}, {63, 430, 530}, {80, 410, 510}, {100, 400, 500}}, "lowest of EN 10025-3, EN 10025-4 and EN 10219-1",
		lookup.Checked},
	{"S690", "1.8928 1.8931 1.8988", MildSteel, proven(0.65, 100, 175), qtHeat, []Step{{50, 690, 770}, {100, 650, 760}, {150, 630, 710}}, "EN 10025-6", lookup.FromMemory},
	{"E295", "ST50 ST502 FE490 A502 1.0050", MildSteel, warm(0, 100, 200), own{},
		[]Step{{16, 295, 470}, {40, 285, 470}, {63, 275, 470}, {80, 265, 470}, {100, 255, 470}, {150, 245, 450}, {200, 235, 440}, {250, 225, 440}}, en10025,
		lookup.Checked},
	{"E335", "ST60 ST602 FE590 A602 1.0060", AlloySteel, proven(0, 150, 300), own{},
		[]Step{{16, 335, 570}, {40, 325, 570}, {63, 315, 570}, {80, 305, 570}, {100, 295, 570}, {150, 275, 550}, {200, 265, 540}, {250, 255, 540}}, en10025,
		lookup.Checked},
	{"E360", "ST70 ST702 FE690 A702 1.0070", AlloySteel, proven(0, 250, 400), own{},
		[]Step{{16, 360, 670}, {40, 355, 670}, {63, 345, 670}, {80, 335, 670}, {100, 325, 670}, {150, 305, 650}, {200, 295, 640}, {250, 285, 640}}, en10025,
		lookup.Checked},
	{"E235", "ST35 1.0308", MildSteel, readily, own{}, []Step{{16, 235, 360}, {40, 225, 360}, {65, 215, 360}}, en10297, lookup.FromMemory},
	{"E355", "1.0580", MildSteel, cev(0.45), own{}, []Step{{16, 355, 490}, {40, 345, 490}, {65, 335, 490}}, en10297, lookup.FromMemory},
	{"E470", "1.0536", MildSteel, warm(0, 80, 150), own{}, []Step{{16, 470, 650}, {40, 430, 600}}, en10297, lookup.FromMemory},
	{"P235", "ST37.0 ST35.8 1.0254 1.0255 1.0345", MildSteel, cev(0.35), own{}, []Step{{16, 235, 360}, {40, 225, 360}, {60, 215, 360}}, "EN 10216-2 and EN 10028-2, tube and plate", lookup.Checked},
	{"P265", "ST44.0 ST45.8 HII 1.0258 1.0259 1.0425", MildSteel, cev(0.40), own{}, []Step{{16, 265, 410}, {40, 255, 410}, {60, 245, 410}},
		"EN 10216-2 and EN 10028-2, tube and plate", lookup.Checked},
	{"P355", "1.0473 1.0562 1.0565", MildSteel, cev(0.45), own{},
		[]Step{{16, 355, 490}, {40, 345, 490}, {50, 335, 490}, {65, 325, 490}, {80, 315, 450}, {100, 305, 450}}, "EN 10216-3, tube", lookup.Checked},
	{"DC01", "ST12 CR4 1.0330", MildSteel, readily, own{}, []Step{{3, 140, 270}}, "EN 10130", lookup.Checked},
	{"DD11", "STW22 1.0332", MildSteel, readily, own{}, []Step{{11, 170, 0}}, "EN 10111", lookup.Checked},
	{"GE240", "GS45 1.0446", MildSteel, warm(0, 100, 200), own{}, []Step{{300, 240, 450}}, "EN 10293, steel casting", lookup.FromMemory},
}

// american are structural and plain carbon steels of ASTM and SAE, for a bare
// name in the hot-rolled condition, which is the weaker.
var american = []grade{
	{"A36", "K02600", MildSteel, readily, own{}, []Step{{203.2, 250, 400}, {AnySize, 220, 400}}, "ASTM A36, 36 and 58 ksi, over 8 in 32 ksi", lookup.Checked},
	{"A53 grade B", "A53 A53B A53GRB A106 A106B A106GRB A106GRADEB", MildSteel, readily, own{}, []Step{{AnySize, 240, 415}}, "ASTM A53 and A106 grade B, 35 and 60 ksi", lookup.Checked},
	{"A500 grade B", "A500 A500B A500GRB A500GRC A500GRADEC", MildSteel, readily, own{}, []Step{{AnySize, 290, 400}}, "ASTM A500 grade B round, 42 and 58 ksi", lookup.Checked},
	{"A513 1020 DOM", "A513 DOM 1020DOM 1026DOM", MildSteel, readily, own{}, []Step{{AnySize, 414, 480}}, "ASTM A513 type 5, 60 and 70 ksi", lookup.Checked},
	{"A516 grade 70", "A516 A51670 A516GR70", MildSteel, cev(0.43), own{}, []Step{{205, 260, 485}}, "ASTM A516 grade 70, 38 and 70 ksi", lookup.Checked},
	{"A572 grade 50", "A572 A57250 A572GR50 A992", MildSteel, cev(0.45), own{}, []Step{{100, 345, 450}}, "ASTM A572 and A992, 50 and 65 ksi", lookup.Checked},
	{"A1011 SS 36", "A1011", MildSteel, readily, own{}, []Step{{6, 250, 365}}, "ASTM A1011 SS grade 36, 36 and 53 ksi", lookup.Checked},
	{"1010 hot rolled", "1008 1010 1015 G10080 G10100", MildSteel, readily, own{hrc: 58}, []Step{{AnySize, 170, 300}}, "SAE J1397 estimate for 1008", lookup.Checked},
	{"1018 hot rolled", "1018 1020 1022 1025 1026 G10180 G10200 EN3B 070M20 080M15", MildSteel, cev(0.30), own{hrc: 58}, []Step{{AnySize, 205, 380}}, "SAE J1397 estimate for 1020", lookup.Checked},
	{"1018 cold drawn", "1018CD 1020CD", MildSteel, cev(0.30), own{hrc: 58}, []Step{{32, 370, 440}, {50, 345, 415}, {75, 310, 380}}, "data sheets, 54 ksi to 32 mm, 45 ksi to 75", lookup.FromMemory},
	{"1117 hot rolled", "1117", MildSteel, never, own{hrc: 58}, []Step{{AnySize, 235, 414}}, "makers' data, 60 ksi, and SAE J1397 estimate, 34 ksi", lookup.FromMemory},
	{"1035 hot rolled", "1035", AlloySteel, proven(0.47, 150, 250), own{hrc: 48}, []Step{{AnySize, 270, 495}}, "SAE J1397 estimate", lookup.Checked},
	{"1040 hot rolled", "1040", AlloySteel, proven(0.53, 150, 300), own{}, []Step{{AnySize, 290, 496}}, "design table, hot rolled", lookup.Checked},
	{"1045 hot rolled", "1045 G10450", AlloySteel, proven(0.59, 250, 400), own{hrc: 55}, []Step{{AnySize, 310, 565}}, "SAE J1397 estimate", lookup.Checked},
	{"1050 hot rolled", "1050", AlloySteel, proven(0.64, 250, 400), own{hrc: 56}, []Step{{AnySize, 338, 620}}, "design table, hot rolled", lookup.Checked},
	{"1060 hot rolled", "1060", AlloySteel, proven(0.73, 250, 400), own{}, []Step{{AnySize, 370, 675}}, "SAE J1397 estimate", lookup.Checked},
	{"1144 hot rolled", "1141 1144", AlloySteel, never, own{}, []Step{{AnySize, 352, 648}}, "design table, hot rolled", lookup.Checked},
}

// machinery are free-cutting and unalloyed heat-treatable steels.
var machinery = []grade{
	{"11SMn30+C", "11SMN30 11SMNPB30 11SMN37 11SMNPB37 9SMN28 9SMNPB28 9SMN36 9SMNPB36 1213 1215 12L14 EN1A EN1APB 230M07 1.0715 1.0718 1.0736 1.0737",
		MildSteel, never, own{}, []Step{{10, 440, 510}, {16, 410, 490}, {40, 375, 460}, {63, 305, 400}, {100, 245, 360}},
		"EN 10277 (EN 10277-3:2008), cold drawn", lookup.Checked},
	{"46S20", "45S20 1.0727 35S20 1.0726", AlloySteel, never, own{}, nil, "", lookup.FromMemory},
	{"C10", "C10E CK10 1.0301 1.1121 045M10", MildSteel, readily, own{hrc: 58}, nil, "", lookup.FromMemory},
	{"C15", "C15E CK15 1.0401 1.1141", MildSteel, readily, own{hrc: 58}, nil, "", lookup.FromMemory},
	{"C22+N", "C22 C22E CK22 1.0402 1.1151", MildSteel, cev(0.29), own{}, []Step{{16, 240, 430}, {100, 210, 410}}, isoN, lookup.FromMemory},
	{"C35+N", "C35 C35E C35R CK35 1.0501 1.1181 1.1180", AlloySteel, proven(0.46, 150, 250), own{hrc: 48}, []Step{{16, 300, 550}, {100, 270, 520}, {250, 245, 500}}, isoN, lookup.FromMemory},
	{"C40+N", "C40 C40E CK40 1.0511 1.1186", AlloySteel, proven(0.51, 150, 300), own{}, []Step{{16, 320, 580}, {100, 290, 550}, {250, 260, 530}}, isoN, lookup.Checked},
	{"080M40 normalized", "080M40 EN8", AlloySteel, proven(0.53, 150, 300), own{}, []Step{{150, 280, 540}, {250, 245, 510}}, "BS 970, normalized", lookup.Checked},
	{"C45+N", "C45 C45E C45R C45EN CK45 CM45 CF45 XC45 080M46 1.0503 1.1191 1.1201 1.1193", AlloySteel, proven(0.57, 250, 400), own{hrc: 55},
		[]Step{{16, 340, 620}, {100, 305, 580}, {250, 275, 560}}, isoN, lookup.Checked},
	{"C45+QT", "C45EQT C45RQT CK45QT CK45V C45V", AlloySteel, proven(0.57, 250, 400), own{maxHeatC: 300, hrc: 55},
		[]Step{{16, 490, 700}, {40, 430, 650}, {100, 370, 630}}, "EN ISO 683-1 (EN 10083-2), quenched and tempered, bars", lookup.Checked},
	{"C50+N", "C50 C50E CK50 1.0540 1.1206", AlloySteel, proven(0.63, 250, 400), own{hrc: 56}, []Step{{16, 355, 650}, {100, 320, 610}, {250, 290, 590}}, isoN, lookup.Checked},
	{"C55+N", "C55 C55E CK55 EN9 070M55 1.0535 1.1203", AlloySteel, proven(0.68, 250, 400), own{hrc: 58}, []Step{{16, 370, 680}, {100, 330, 640}, {250, 300, 620}}, isoN, lookup.Checked},
	{"C60+N", "C60 C60E CK60 1.0601 1.1221", AlloySteel, proven(0.73, 250, 400), own{}, []Step{{16, 380, 710}, {100, 340, 670}, {250, 310, 650}}, isoN, lookup.Checked},
}

// alloyed are heat-treatable and case-hardening steels.
var alloyed = []grade{
	{"25CrMo4+QT", "25CRMO4 1.7218", AlloySteel, proven(0.64, 150, 300), qtHeat, []Step{{16, 700, 900}, {40, 600, 800}, {100, 450, 700}, {160, 400, 650}}, isoQT, lookup.Checked},
	{"34CrMo4+QT", "34CRMO4 1.7220", AlloySteel, proven(0.72, 200, 350), qtHeat, []Step{{16, 800, 1000}, {40, 650, 900}, {100, 550, 800}, {160, 500, 750}, {250, 450, 700}}, isoQT, lookup.Checked},
	{"42CrMo4+QT", "42CRMO4 42CRMOS4 42CRMOS4QT 42CD4 4140QT 1.7225 1.7227", AlloySteel, proven(0.80, 300, 350), own{maxHeatC: 300, hrc: 53},
		[]Step{{16, 900, 1100}, {40, 750, 1000}, {100, 650, 900}, {160, 550, 800}, {250, 500, 750}}, isoQT, lookup.Checked},
	{"709M40 condition R", "709M40 708M40 708M40R EN19 EN19R EN19A", AlloySteel, proven(0.80, 300, 350), own{maxHeatC: 300, hrc: 53}, []Step{{254, 480, 690}},
		"BS 970, the lowest condition", lookup.Checked},
	{"817M40 condition T", "817M40 EN24 EN24T 817M40T", AlloySteel, proven(0.89, 300, 400), qtHeat, []Step{{254, 635, 850}}, "BS 970, condition T", lookup.Checked},
	{"34CrNiMo6+QT", "34CRNIMO6 1.6582", AlloySteel, proven(0.89, 300, 400), qtHeat,
		[]Step{{16, 1000, 1200}, {40, 900, 1100}, {100, 800, 1000}, {160, 700, 900}, {250, 600, 800}}, isoQT, lookup.Checked},
	{"30CrNiMo8+QT", "30CRNIMO8 1.6580", AlloySteel, proven(1.02, 300, 400), qtHeat, []Step{{40, 1050, 1250}, {100, 900, 1100}, {160, 800, 1000}, {250, 700, 900}}, isoQT, lookup.Checked},
	{"4130 annealed", "4130 G41300", AlloySteel, proven(0.62, 150, 300), own{}, []Step{{AnySize, 359, 558}}, "design table, 52 and 81 ksi", lookup.Checked},
	{"4140 annealed", "4140 4142 4150 G41400", AlloySteel, proven(0.78, 300, 350), own{hrc: 53}, []Step{{AnySize, 372, 655}}, "design table, 54 and 95 ksi", lookup.Checked},
	{"4340 annealed", "4340 G43400", AlloySteel, proven(0.85, 300, 400), own{}, []Step{{AnySize, 470, 745}}, "data sheets, 68 and 108 ksi", lookup.Checked},
	{"8620 annealed", "8620 8640", AlloySteel, proven(0.51, 150, 250), own{hrc: 58}, []Step{{AnySize, 358, 520}}, "data sheets: the lowest of annealed and normalized", lookup.Checked},
	{"16MnCr5", "16MNCRS5 1.7131 1.7139", AlloySteel, proven(0.55, 150, 250), own{maxHeatC: 200, hrc: 58}, nil, "", lookup.FromMemory},
	{"18CrNiMo7-6", "17CRNIMO6 1.6587", AlloySteel, proven(0.79, 150, 300), own{maxHeatC: 200, hrc: 58}, nil, "", lookup.FromMemory},
	{"alloy steel", "EN16", AlloySteel, proven(0, 300, 350), own{maxHeatC: 200}, nil, "", lookup.FromMemory},
}

// stainless steels. Densities, moduli and expansions: EN 10088-1.
var stainless = []grade{
	{"1.4305", "303 X8CRNIS189 X10CRNIS189 S30300", AusteniticStainless, never, own{}, []Step{{160, 190, 500}}, "EN 10088-3 Table 13", lookup.Checked},
	{"1.4301", "304 304L 1.4307 1.4306 X5CRNI1810 X2CRNI189 X2CRNI1911 V2A S30400 S30403 STAINLESS STAINLESSSTEEL", AusteniticStainless, ownWay, own{},
		[]Step{{250, 175, 460}}, "EN 10088-3 Table 13, lowest of 1.4301, 1.4306 and 1.4307", lookup.FromMemory},
	{"1.4541", "321 X6CRNITI1810 S32100", AusteniticStainless, ownWay, own{}, []Step{{250, 180, 460}}, "lowest solution annealed, tube beside the bar of EN 10088-3", lookup.Checked},
	{"1.4404", "316 316L 1.4401 X5CRNIMO17122 X2CRNIMO17122 V4A S31600 S31603", AusteniticStainless, ownWay, own{densityKgM3: 8000}, []Step{{250, 200, 500}}, "EN 10088-3 Table 13", lookup.FromMemory},
	{"1.4571", "316TI X6CRNIMOTI17122", AusteniticStainless, ownWay, own{densityKgM3: 8000, alphaPerK: 16.5e-6}, []Step{{250, 200, 500}}, "EN 10088-3 Table 13", lookup.FromMemory},
	{"1.4462", "2205 X2CRNIMON2253 318LN S31803 S32205", AusteniticStainless, ownWay,
		own{densityKgM3: 7800, alphaPerK: 13.0e-6, contractPerK: 11.0e-6, maxHeatC: 250}, []Step{{160, 450, 650}}, "EN 10088-3 Table 14", lookup.Checked},
	{"1.4016", "430 X6CR17 S43000", ChromiumStainless, ownWay, own{eMPa: 220000, alphaPerK: 10.0e-6, hrc: Unhardened}, []Step{{100, 240, 400}}, "EN 10088-3 Table 11", lookup.Checked},
	{"1.4006+QT650", "1.4006 410 X12CR13 S41000", ChromiumStainless, proven(0, 200, 300), own{}, []Step{{160, 450, 650}}, "EN 10088-3 Table 12", lookup.Checked},
	{"1.4005+QT650", "1.4005 416 X12CRS13 S41600", ChromiumStainless, never, own{}, []Step{{160, 450, 650}}, "EN 10088-3 Table 12", lookup.Checked},
	{"1.4021+QT700", "1.4021 420 X20CR13 S42000", ChromiumStainless, proven(0, 250, 350), own{}, []Step{{160, 500, 700}}, "EN 10088-3 Table 12", lookup.Checked},
	{"1.4057+QT800", "1.4057 431 X17CRNI162 S43100", ChromiumStainless, proven(0, 300, 350), own{alphaPerK: 10.0e-6}, []Step{{160, 600, 800}}, "EN 10088-3 Table 12", lookup.Checked},
	{"1.4542+P800", "1.4542 630 174PH X5CRNICUNB164 S17400", ChromiumStainless, ownWay, own{densityKgM3: 7800, eMPa: 200000, alphaPerK: 10.9e-6},
		[]Step{{100, 520, 800}}, "EN 10088-3 Table 15", lookup.Checked},
}
