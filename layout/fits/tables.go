package fits

// deviationSteps are the steps of nominal size, mm, for the fundamental
// deviations, by their upper ends: the main steps with the intermediate ones
// that some letters need. Source: ISO 286-1:2010, Tables 2 to 5.
var deviationSteps = [...]float64{
	3, 6, 10, 14, 18, 24, 30, 40, 50, 65, 80, 100, 120, 140, 160, 180,
	200, 225, 250, 280, 315, 355, 400, 450, 500,
	560, 630, 710, 800, 900, 1000, 1120, 1250, 1400, 1600, 1800, 2000,
	2240, 2500, 2800, 3150,
}

// clearanceLetters name the columns of clearanceTable.
var clearanceLetters = [...]string{"a", "b", "c", "cd", "d", "e", "ef", "f", "fg", "g"}

// clearanceTable holds -es of shafts a to g, µm, one row per deviation step.
// Source: ISO 286-1:2010, Table 4. Columns cd, ef and fg above 10 mm are new in
// the 2010 edition and from memory; they agree with the geometric mean of the
// two neighbouring letters.
var clearanceTable = [len(deviationSteps)][len(clearanceLetters)]float64{
	{270, 140, 60, 34, 20, 14, 10, 6, 4, 2},                 // to 3
	{270, 140, 70, 46, 30, 20, 14, 10, 6, 4},                // above 3 to 6
	{280, 150, 80, 56, 40, 25, 18, 13, 8, 5},                // above 6 to 10
	{290, 150, 95, 70, 50, 32, 23, 16, 10, 6},               // above 10 to 14
	{290, 150, 95, 70, 50, 32, 23, 16, 10, 6},               // above 14 to 18
	{300, 160, 110, 85, 65, 40, 28, 20, 12, 7},              // above 18 to 24
	{300, 160, 110, 85, 65, 40, 28, 20, 12, 7},              // above 24 to 30
	{310, 170, 120, 100, 80, 50, 35, 25, 15, 9},             // above 30 to 40
	{320, 180, 130, 100, 80, 50, 35, 25, 15, 9},             // above 40 to 50
	{340, 190, 140, none, 100, 60, none, 30, none, 10},      // above 50 to 65
	{360, 200, 150, none, 100, 60, none, 30, none, 10},      // above 65 to 80
	{380, 220, 170, none, 120, 72, none, 36, none, 12},      // above 80 to 100
	{410, 240, 180, none, 120, 72, none, 36, none, 12},      // above 100 to 120
	{460, 260, 200, none, 145, 85, none, 43, none, 14},      // above 120 to 140
	{520, 280, 210, none, 145, 85, none, 43, none, 14},      // above 140 to 160
	{580, 310, 230, none, 145, 85, none, 43, none, 14},      // above 160 to 180
	{660, 340, 240, none, 170, 100, none, 50, none, 15},     // above 180 to 200
	{740, 380, 260, none, 170, 100, none, 50, none, 15},     // above 200 to 225
	{820, 420, 280, none, 170, 100, none, 50, none, 15},     // above 225 to 250
	{920, 480, 300, none, 190, 110, none, 56, none, 17},     // above 250 to 280
	{1050, 540, 330, none, 190, 110, none, 56, none, 17},    // above 280 to 315
	{1200, 600, 360, none, 210, 125, none, 62, none, 18},    // above 315 to 355
	{1350, 680, 400, none, 210, 125, none, 62, none, 18},    // above 355 to 400
	{1500, 760, 440, none, 230, 135, none, 68, none, 20},    // above 400 to 450
	{1650, 840, 480, none, 230, 135, none, 68, none, 20},    // above 450 to 500
	{none, none, none, none, 260, 145, none, 76, none, 22},  // above 500 to 560
	{none, none, none, none, 260, 145, none, 76, none, 22},  // above 560 to 630
	{none, none, none, none, 290, 160, none, 80, none, 24},  // above 630 to 710
	{none, none, none, none, 290, 160, none, 80, none, 24},  // above 710 to 800
	{none, none, none, none, 320, 170, none, 86, none, 26},  // above 800 to 900
	{none, none, none, none, 320, 170, none, 86, none, 26},  // above 900 to 1000
	{none, none, none, none, 350, 195, none, 98, none, 28},  // above 1000 to 1120
	{none, none, none, none, 350, 195, none, 98, none, 28},  // above 1120 to 1250
	{none, none, none, none, 390, 220, none, 110, none, 30}, // above 1250 to 1400
	{none, none, none, none, 390, 220, none, 110, none, 30}, // above 1400 to 1600
	{none, none, none, none, 430, 240, none, 120, none, 32}, // above 1600 to 1800
	{none, none, none, none, 430, 240, none, 120, none, 32}, // above 1800 to 2000
	{none, none, none, none, 480, 260, none, 130, none, 34}, // above 2000 to 2240
	{none, none, none, none, 480, 260, none, 130, none, 34}, // above 2240 to 2500
	{none, none, none, none, 520, 290, none, 145, none, 38}, // above 2500 to 2800
	{none, none, none, none, 520, 290, none, 145, none, 38}, // above 2800 to 3150
}

// tightLetters name the columns of tightTable.
var tightLetters = [...]string{"m", "n", "p", "r", "s", "t", "u", "v", "x", "y", "z", "za", "zb", "zc"}

// tightTable holds ei of shafts m to zc, µm, one row per deviation step.
// Source: ISO 286-1:2010, Table 5.
var tightTable = [len(deviationSteps)][len(tightLetters)]float64{
	{2, 4, 6, 10, 14, none, 18, none, 20, none, 26, 32, 40, 60},                     // to 3
	{4, 8, 12, 15, 19, none, 23, none, 28, none, 35, 42, 50, 80},                    // above 3 to 6
	{6, 10, 15, 19, 23, none, 28, none, 34, none, 42, 52, 67, 97},                   // above 6 to 10
	{7, 12, 18, 23, 28, none, 33, none, 40, none, 50, 64, 90, 130},                  // above 10 to 14
	{7, 12, 18, 23, 28, none, 33, 39, 45, none, 60, 77, 108, 150},                   // above 14 to 18
	{8, 15, 22, 28, 35, none, 41, 47, 54, 63, 73, 98, 136, 188},                     // above 18 to 24
	{8, 15, 22, 28, 35, 41, 48, 55, 64, 75, 88, 118, 160, 218},                      // above 24 to 30
	{9, 17, 26, 34, 43, 48, 60, 68, 80, 94, 112, 148, 200, 274},                     // above 30 to 40
	{9, 17, 26, 34, 43, 54, 70, 81, 97, 114, 136, 180, 242, 325},                    // above 40 to 50
	{11, 20, 32, 41, 53, 66, 87, 102, 122, 144, 172, 226, 300, 405},                 // above 50 to 65
	{11, 20, 32, 43, 59, 75, 102, 120, 146, 174, 210, 274, 360, 480},                // above 65 to 80
	{13, 23, 37, 51, 71, 91, 124, 146, 178, 214, 258, 335, 445, 585},                // above 80 to 100
	{13, 23, 37, 54, 79, 104, 144, 172, 210, 254, 310, 400, 525, 690},               // above 100 to 120
	{15, 27, 43, 63, 92, 122, 170, 202, 248, 300, 365, 470, 620, 800},               // above 120 to 140
	{15, 27, 43, 65, 100, 134, 190, 228, 280, 340, 415, 535, 700, 900},              // above 140 to 160
	{15, 27, 43, 68, 108, 146, 210, 252, 310, 380, 465, 600, 780, 1000},             // above 160 to 180
	{17, 31, 50, 77, 122, 166, 236, 284, 350, 425, 520, 670, 880, 1150},             // above 180 to 200
	{17, 31, 50, 80, 130, 180, 258, 310, 385, 470, 575, 740, 960, 1250},             // above 200 to 225
	{17, 31, 50, 84, 140, 196, 284, 340, 425, 520, 640, 820, 1050, 1350},            // above 225 to 250
	{20, 34, 56, 94, 158, 218, 315, 385, 475, 580, 710, 920, 1200, 1550},            // above 250 to 280
	{20, 34, 56, 98, 170, 240, 350, 425, 525, 650, 790, 1000, 1300, 1700},           // above 280 to 315
	{21, 37, 62, 108, 190, 268, 390, 475, 590, 730, 900, 1150, 1500, 1900},          // above 315 to 355
	{21, 37, 62, 114, 208, 294, 435, 530, 660, 820, 1000, 1300, 1650, 2100},         // above 355 to 400
	{23, 40, 68, 126, 232, 330, 490, 595, 740, 920, 1100, 1450, 1850, 2400},         // above 400 to 450
	{23, 40, 68, 132, 252, 360, 540, 660, 820, 1000, 1250, 1600, 2100, 2600},        // above 450 to 500
	{26, 44, 78, 150, 280, 400, 600, none, none, none, none, none, none, none},      // above 500 to 560
	{26, 44, 78, 155, 310, 450, 660, none, none, none, none, none, none, none},      // above 560 to 630
	{30, 50, 88, 175, 340, 500, 740, none, none, none, none, none, none, none},      // above 630 to 710
	{30, 50, 88, 185, 380, 560, 840, none, none, none, none, none, none, none},      // above 710 to 800
	{34, 56, 100, 210, 430, 620, 940, none, none, none, none, none, none, none},     // above 800 to 900
	{34, 56, 100, 220, 470, 680, 1050, none, none, none, none, none, none, none},    // above 900 to 1000
	{40, 66, 120, 250, 520, 780, 1150, none, none, none, none, none, none, none},    // above 1000 to 1120
	{40, 66, 120, 260, 580, 840, 1300, none, none, none, none, none, none, none},    // above 1120 to 1250
	{48, 78, 140, 300, 640, 960, 1450, none, none, none, none, none, none, none},    // above 1250 to 1400
	{48, 78, 140, 330, 720, 1050, 1600, none, none, none, none, none, none, none},   // above 1400 to 1600
	{58, 92, 170, 370, 820, 1200, 1850, none, none, none, none, none, none, none},   // above 1600 to 1800
	{58, 92, 170, 400, 920, 1350, 2000, none, none, none, none, none, none, none},   // above 1800 to 2000
	{68, 110, 195, 440, 1000, 1500, 2300, none, none, none, none, none, none, none}, // above 2000 to 2240
	{68, 110, 195, 460, 1100, 1650, 2500, none, none, none, none, none, none, none}, // above 2240 to 2500
	{76, 135, 240, 550, 1250, 1900, 2900, none, none, none, none, none, none, none}, // above 2500 to 2800
	{76, 135, 240, 580, 1400, 2100, 3200, none, none, none, none, none, none, none}, // above 2800 to 3150
}

// shaftJTable holds -ei of shaft j, µm, for grades 5 and 6, and for grade 7,
// one row per main step up to 500 mm. Source: ISO 286-1:2010, Table 5.
var shaftJTable = [13][2]float64{
	{2, 4}, {2, 4}, {2, 5}, {3, 6}, {4, 8}, {5, 10}, {7, 12}, {9, 15},
	{11, 18}, {13, 21}, {16, 26}, {18, 28}, {20, 32},
}

// holeJTable holds ES of hole J, µm, for grades 6, 7 and 8, one row per main
// step up to 500 mm. Source: ISO 286-1:2010, Table 2.
var holeJTable = [13][3]float64{
	{2, 4, 6}, {5, 6, 10}, {5, 8, 12}, {6, 10, 15}, {8, 12, 20}, {10, 14, 24},
	{13, 18, 28}, {16, 22, 34}, {18, 26, 41}, {22, 30, 47}, {25, 36, 55},
	{29, 39, 60}, {33, 43, 66},
}

// shaftKTable holds ei of shaft k in grades 4 to 7, µm, one value per main step
// up to 500 mm. Source: ISO 286-1:2010, Table 5.
var shaftKTable = [13]float64{0, 1, 1, 1, 2, 2, 2, 3, 3, 4, 4, 4, 5}
