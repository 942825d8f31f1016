package material

import "centrepop/layout/lookup"

const (
	en1561 = "EN 1561:1997 Table 1, expected in the casting"
	en1563 = "EN 1563 Tables 1 and 3"
	en1982 = "EN 1982 Table of mechanical properties, the lowest casting process"
	en755  = "EN 755-2, extruded bar"
)

// Cast irons are repaired and joined by hot or nickel welding only.
var (
	greyWeld    = proven(0, 300, 600)
	ductileWeld = proven(0, 100, 330) // TWI: 100 to 200 ferritic, 250 and more pearlitic, to 330 when stiffly held
)

// irons. Grey iron has no yield: the steps hold its tensile strength. A bare
// "cast iron" is taken as the weakest grade.
var irons = []grade{
	{"EN-GJL-150", "GJL150 GG15 ENJL1020 0.6015 5.1200 GREYCASTIRON GRAYCASTIRON GREYIRON GRAYIRON CASTIRON FLAKEGRAPHITECASTIRON", GreyIron, greyWeld,
		own{densityKgM3: 7100, eMPa: 90000}, []Step{{10, 0, 155}, {20, 0, 130}, {40, 0, 110}, {80, 0, 95}, {150, 0, 80}}, en1561, lookup.Checked},
	{"EN-GJL-200", "GJL200 GG20 ENJL1030 0.6020 5.1300", GreyIron, greyWeld, own{densityKgM3: 7150, eMPa: 100000},
		[]Step{{10, 0, 205}, {20, 0, 180}, {40, 0, 155}, {80, 0, 130}, {150, 0, 115}}, en1561, lookup.Checked},
	{"EN-GJL-250", "GJL250 GG25 ENJL1040 0.6025 5.1301", GreyIron, greyWeld, own{}, []Step{{10, 0, 250}, {20, 0, 225}, {40, 0, 195}, {80, 0, 170}, {150, 0, 155}}, en1561, lookup.Checked},
	{"EN-GJL-300", "GJL300 GG30 ENJL1050 0.6030 5.1302", GreyIron, greyWeld, own{densityKgM3: 7250, eMPa: 122000},
		[]Step{{20, 0, 270}, {40, 0, 240}, {80, 0, 210}, {150, 0, 195}}, en1561, lookup.Checked},
	{"EN-GJL-350", "GJL350 GG35 ENJL1060 0.6035 5.1303", GreyIron, greyWeld, own{densityKgM3: 7300, eMPa: 133000},
		[]Step{{20, 0, 315}, {40, 0, 280}, {80, 0, 250}, {150, 0, 225}}, en1561, lookup.Checked},
	{"A48 class 30", "A4830 A48NO30 CLASS30 G3000 F12401", GreyIron, greyWeld, own{}, []Step{{40, 0, 205}}, "ASTM A48 class 30, 30 ksi in the test bar", lookup.FromMemory},
	{"grey cast iron, grade unknown", "ENGJL GJL GG A48", GreyIron, greyWeld, own{}, nil, "", lookup.FromMemory},
	{"EN-GJS-400-15",
		"GJS40015 GGG40 ENJS1030 0.7040 5.3106 DUCTILEIRON DUCTILECASTIRON NODULARIRON NODULARCASTIRON SGIRON SPHEROIDALGRAPHITEIRON SPHEROIDALGRAPHITECASTIRON",
		DuctileIron, ductileWeld, own{}, []Step{{30, 250, 400}, {60, 250, 390}, {200, 240, 370}}, en1563, lookup.Checked},
	{"EN-GJS-500-7", "GJS5007 GGG50 ENJS1050 0.7050 5.3200", DuctileIron, ductileWeld, own{}, []Step{{30, 320, 500}, {60, 300, 450}, {200, 290, 420}}, en1563, lookup.Checked},
	{"EN-GJS-600-3", "GJS6003 GGG60 ENJS1060 0.7060 5.3201", DuctileIron, ductileWeld, own{densityKgM3: 7200, eMPa: 174000},
		[]Step{{30, 370, 600}, {60, 360, 600}, {200, 340, 550}}, en1563, lookup.FromMemory},
	{"EN-GJS-700-2", "GJS7002 GGG70 ENJS1070 0.7070 5.3300", DuctileIron, ductileWeld, own{densityKgM3: 7200, eMPa: 176000},
		[]Step{{30, 420, 700}, {60, 400, 700}, {200, 380, 660}}, en1563, lookup.FromMemory},
	{"A536 65-45-12", "A536 654512 F33100", DuctileIron, ductileWeld, own{}, []Step{{AnySize, 310, 448}}, "ASTM A536, 45 and 65 ksi", lookup.Checked},
	{"EN-GJMB-350-10", "GTS35 GTS3510 ENJM1130 0.8135 MALLEABLEIRON MALLEABLECASTIRON BLACKHEARTMALLEABLE", DuctileIron, ductileWeld, own{densityKgM3: 7300},
		[]Step{{AnySize, 200, 350}}, "EN 1562", lookup.Checked},
	{"EN-GJMW-400-5", "GTW40 GTW4005 ENJM1030 0.8040 WHITEHEARTMALLEABLE", DuctileIron, ductileWeld, own{densityKgM3: 7400}, []Step{{AnySize, 220, 400}}, "EN 1562, test bar of 12 mm", lookup.Checked},
	{"ductile cast iron, grade unknown", "ENGJS GJS GGG", DuctileIron, ductileWeld, own{}, nil, "", lookup.FromMemory},
}

// aluminium alloys. A bare name is taken in the temper sold as bar. A bare 1050
// is the steel; EN AW-1050 and 1050A are aluminium.
var aluminium = []grade{
	{"EN AW-1050A", "1050A 1050AH 1050H ENAW1050 AW1050 AW1050A AL995 3.0255", AluminiumAlloy, ownWay, own{}, []Step{{AnySize, 20, 60}}, "EN 755-2, soft", lookup.FromMemory},
	{"EN AW-2011 T3", "ENAW2011 AW2011 2011 2011T3 ALCU6BIPB 3.1655", AluminiumAlloy, never, own{densityKgM3: 2830},
		[]Step{{40, 270, 320}, {50, 250, 300}, {80, 210, 280}}, "EN 754-2, drawn bar", lookup.Checked},
	{"EN AW-2017A T4", "ENAW2017 ENAW2017A AW2017 2017 2017A 2017AT4 ALCUMG1 3.1325", AluminiumAlloy, never, own{densityKgM3: 2790},
		[]Step{{25, 260, 380}, {75, 270, 400}, {150, 260, 390}, {200, 240, 370}, {250, 220, 360}}, en755, lookup.FromMemory},
	{"EN AW-2024 T3", "ENAW2024 AW2024 2024 2024T3 ALCUMG2 3.1355", AluminiumAlloy, never, own{densityKgM3: 2780, eMPa: 73000},
		[]Step{{50, 310, 450}, {100, 300, 440}, {200, 280, 420}, {250, 270, 400}}, en755, lookup.FromMemory},
	{"EN AW-5052 O", "ENAW5052 AW5052 5052 ALMG2.5 3.3523", AluminiumAlloy, ownWay, own{densityKgM3: 2680}, []Step{{AnySize, 65, 165}}, "EN 485-2, soft", lookup.Checked},
	{"EN AW-5083 H112", "ENAW5083 AW5083 5083 ALMG4.5MN 3.3547", AluminiumAlloy, ownWay, own{densityKgM3: 2660}, []Step{{200, 110, 270}}, en755, lookup.FromMemory},
	{"EN AW-5754 H112", "ENAW5754 AW5754 5754 ALMG3 3.3535", AluminiumAlloy, ownWay, own{densityKgM3: 2670}, []Step{{150, 80, 180}}, en755, lookup.FromMemory},
	{"EN AW-6005A T6", "ENAW6005 ENAW6005A AW6005A 6005 6005A 6005AT6 ALMGSI0.7 3.3210", AluminiumAlloy, ownWay, own{}, []Step{{50, 225, 270}, {100, 215, 260}}, en755, lookup.Checked},
	{"EN AW-6026", "AW6026 6026", AluminiumAlloy, never, own{}, nil, "", lookup.FromMemory},
	{"EN AW-6060 T6", "ENAW6060 AW6060 6060 6060T6 ALMGSI ALMGSI0.5 3.3206", AluminiumAlloy, ownWay, own{}, []Step{{150, 140, 170}}, en755, lookup.FromMemory},
	{"EN AW-6061 T6", "ENAW6061 AW6061 6061 6061T6 6061T651 6061T6511 A96061 3.3211", AluminiumAlloy, ownWay, own{}, []Step{{200, 240, 260}}, en755 + "; ASTM B221, 35 and 38 ksi", lookup.Checked},
	{"EN AW-6063 T6", "ENAW6063 AW6063 6063 6063T6", AluminiumAlloy, ownWay, own{}, []Step{{150, 170, 215}, {200, 160, 195}}, en755, lookup.Checked},
	{"EN AW-6082 T6", "ENAW6082 AW6082 6082 6082T6 6082T651 6082T6511 ALMGSI1 ALSI1MGMN HE30 3.2315", AluminiumAlloy, ownWay, own{},
		[]Step{{20, 250, 295}, {150, 260, 310}, {200, 240, 280}, {250, 200, 270}}, en755, lookup.Checked},
	{"EN AW-7075 T6", "ENAW7075 AW7075 7075 7075T6 7075T651 ALZN5.5MGCU ALZNMGCU1.5 3.4365", AluminiumAlloy, never, own{densityKgM3: 2810, eMPa: 72000},
		[]Step{{25, 480, 540}, {100, 500, 560}}, en755, lookup.Checked},
	{"aluminium, grade unknown", "ALUMINIUM ALUMINUM ALUMINIUMALLOY ALUMINUMALLOY ENAW AW", AluminiumAlloy, ownWay, own{}, nil, "", lookup.FromMemory},
}

// coppers are brasses and bronzes. A bare "bronze" is taken as gunmetal, and a cast one in the weakest way of casting.
var coppers = []grade{
	{"CuZn39Pb3", "CW614N CZ121 C385 C38500 2.0401 MS58 BRASS FREEMACHININGBRASS FREECUTTINGBRASS CUZN38PB2", FreeBrass, never, own{}, []Step{{80, 150, 360}},
		"EN 12164, the softest rod", lookup.Checked},
	{"CuZn36Pb3", "CW603N C360 C36000 CZ124 2.0375", FreeBrass, never, own{densityKgM3: 8500}, []Step{{25, 170, 380}, {50, 140, 345}, {100, 105, 310}}, "ASTM B16 half hard", lookup.Checked},
	{"CuZn37", "CW508L C272 C27200 2.0321 MS63", OtherBronze, ownWay, own{densityKgM3: 8440}, nil, "", lookup.FromMemory},
	{"CuZn40", "CW509L C280 2.0360 MS60", OtherBronze, ownWay, own{densityKgM3: 8390}, nil, "", lookup.FromMemory},
	{"CuZn30", "CW505L C260 C26000 2.0265", OtherBronze, ownWay, own{densityKgM3: 8530}, nil, "", lookup.FromMemory},
	{"CuZn39Sn1", "CW719R C464 C46400 NAVALBRASS", OtherBronze, ownWay, own{densityKgM3: 8410}, nil, "", lookup.FromMemory},
	{"CuSn6", "CW452K C519 2.1020", TinBronze, ownWay, own{}, nil, "", lookup.FromMemory},
	{"CuSn5", "CW451K C510 C51000", TinBronze, ownWay, own{densityKgM3: 8860}, nil, "", lookup.FromMemory},
	{"CuSn4Pb4Zn4", "CW456K C544 C54400", TinBronze, never, own{densityKgM3: 8890}, nil, "", lookup.FromMemory},
	{"CuSn8", "CUSN8P CW453K CW459K C521 C52100 2.1030 PHOSPHORBRONZE TINBRONZE", TinBronze, ownWay, own{}, []Step{{20, 300, 450}, {60, 240, 400}}, "EN 12163 hard-drawn rod", lookup.FromMemory},
	{"CuSn10-C", "CUSN10 CC480K 2.1050", TinBronze, ownWay, own{densityKgM3: 8700}, []Step{{AnySize, 130, 250}}, en1982, lookup.Checked},
	{"CuSn11P-C", "CUSN11P CC481K PB1", TinBronze, ownWay, own{densityKgM3: 8600}, []Step{{AnySize, 130, 250}}, en1982, lookup.Checked},
	{"CuSn12-C", "CUSN12 CC483K PB2 C908 2.1052", TinBronze, ownWay, own{densityKgM3: 8700, eMPa: 100000}, []Step{{AnySize, 140, 260}}, en1982, lookup.Checked},
	{"CuSn7Zn4Pb7-C", "CUSN7ZN4PB7 CC493K RG7 2.1090 BRONZE GUNMETAL", OtherBronze, never, own{densityKgM3: 8800}, []Step{{AnySize, 120, 230}}, en1982, lookup.Checked},
	{"CuSn5Zn5Pb5-C", "CUSN5ZN5PB5 CC491K RG5 LG2 C836 C83600 2.1096", OtherBronze, never, own{}, []Step{{AnySize, 90, 200}}, en1982, lookup.Checked},
	{"C93200", "C932 660 SAE660 B584C93200", OtherBronze, never, own{densityKgM3: 8910}, []Step{{AnySize, 97, 207}}, "ASTM B584, sand cast, 14 and 30 ksi", lookup.Checked},
	{"C93200 continuous cast", "C93200CC C93200M07 B505C93200", OtherBronze, never, own{densityKgM3: 8910}, []Step{{AnySize, 138, 241}}, "ASTM B505, 20 and 35 ksi", lookup.Checked},
	{"CuAl10Fe5Ni5-C", "CUAL10FE5NI5 CUAL10NI5FE4 CC333G CW307G C955 C95500 AB2 2.0975 ALUMINIUMBRONZE ALUMINUMBRONZE", OtherBronze, ownWay,
		own{densityKgM3: 7600, eMPa: 120000, alphaPerK: 16.0e-6, maxHeatC: 250}, []Step{{AnySize, 250, 600}}, en1982, lookup.FromMemory},
	{"C95400", "C954", OtherBronze, ownWay, own{densityKgM3: 7450, eMPa: 107000, alphaPerK: 16.0e-6, maxHeatC: 250}, []Step{{AnySize, 205, 515}}, "ASTM B148, 30 and 75 ksi", lookup.Checked},
}
