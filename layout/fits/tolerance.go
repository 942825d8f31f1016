package fits

import "sort"

// mainSteps are the main steps of nominal size, mm, by their upper ends; each
// begins above the end of the one before. Source: ISO 286-1:2010, Table 1.
var mainSteps = [...]float64{
	3, 6, 10, 18, 30, 50, 80, 120, 180, 250, 315, 400, 500,
	630, 800, 1000, 1250, 1600, 2000, 2500, 3150,
}

// none marks a cell that the standard leaves blank. No tabulated value is
// negative: deviations are stored without their sign.
const none = -1

// standardTolerances are IT01, IT0, IT1 to IT18 in µm, one row per main step.
// Source: ISO 286-1:2010, Table 1.
var standardTolerances = [len(mainSteps)][20]float64{
	{0.3, 0.5, 0.8, 1.2, 2, 3, 4, 6, 10, 14, 25, 40, 60, 100, 140, 250, 400, 600, 1000, 1400},
	{0.4, 0.6, 1, 1.5, 2.5, 4, 5, 8, 12, 18, 30, 48, 75, 120, 180, 300, 480, 750, 1200, 1800},
	{0.4, 0.6, 1, 1.5, 2.5, 4, 6, 9, 15, 22, 36, 58, 90, 150, 220, 360, 580, 900, 1500, 2200},
	{0.5, 0.8, 1.2, 2, 3, 5, 8, 11, 18, 27, 43, 70, 110, 180, 270, 430, 700, 1100, 1800, 2700},
	{0.6, 1, 1.5, 2.5, 4, 6, 9, 13, 21, 33, 52, 84, 130, 210, 330, 520, 840, 1300, 2100, 3300},
	{0.6, 1, 1.5, 2.5, 4, 7, 11, 16, 25, 39, 62, 100, 160, 250, 390, 620, 1000, 1600, 2500, 3900},
	{0.8, 1.2, 2, 3, 5, 8, 13, 19, 30, 46, 74, 120, 190, 300, 460, 740, 1200, 1900, 3000, 4600},
	{1, 1.5, 2.5, 4, 6, 10, 15, 22, 35, 54, 87, 140, 220, 350, 540, 870, 1400, 2200, 3500, 5400},
	{1.2, 2, 3.5, 5, 8, 12, 18, 25, 40, 63, 100, 160, 250, 400, 630, 1000, 1600, 2500, 4000, 6300},
	{2, 3, 4.5, 7, 10, 14, 20, 29, 46, 72, 115, 185, 290, 460, 720, 1150, 1850, 2900, 4600, 7200},
	{2.5, 4, 6, 8, 12, 16, 23, 32, 52, 81, 130, 210, 320, 520, 810, 1300, 2100, 3200, 5200, 8100},
	{3, 5, 7, 9, 13, 18, 25, 36, 57, 89, 140, 230, 360, 570, 890, 1400, 2300, 3600, 5700, 8900},
	{4, 6, 8, 10, 15, 20, 27, 40, 63, 97, 155, 250, 400, 630, 970, 1550, 2500, 4000, 6300, 9700},
	{none, none, 9, 11, 16, 22, 32, 44, 70, 110, 175, 280, 440, 700, 1100, 1750, 2800, 4400, 7000, 11000},
	{none, none, 10, 13, 18, 25, 36, 50, 80, 125, 200, 320, 500, 800, 1250, 2000, 3200, 5000, 8000, 12500},
	{none, none, 11, 15, 21, 28, 40, 56, 90, 140, 230, 360, 560, 900, 1400, 2300, 3600, 5600, 9000, 14000},
	{none, none, 13, 18, 24, 33, 47, 66, 105, 165, 260, 420, 660, 1050, 1650, 2600, 4200, 6600, 10500, 16500},
	{none, none, 15, 21, 29, 39, 55, 78, 125, 195, 310, 500, 780, 1250, 1950, 3100, 5000, 7800, 12500, 19500},
	{none, none, 18, 25, 35, 46, 65, 92, 150, 230, 370, 600, 920, 1500, 2300, 3700, 6000, 9200, 15000, 23000},
	{none, none, 22, 30, 41, 55, 78, 110, 175, 280, 440, 700, 1100, 1750, 2800, 4400, 7000, 11000, 17500, 28000},
	{none, none, 26, 36, 50, 68, 96, 135, 210, 330, 540, 860, 1350, 2100, 3300, 5400, 8600, 13500, 21000, 33000},
}

// tolerance returns the standard tolerance of a grade, in µm, at a nominal size
// above 0 up to and including 3150 mm. The grade is -1 for IT01, 0 for IT0 and
// 1 to 18 for IT1 to IT18; both must be checked before. A reason other than ""
// says why the cell is blank. Source: ISO 286-1:2010, Table 1 and its
// footnotes.
func tolerance(nominalMm float64, grade int) (um float64, reason string) {
	if nominalMm <= 1 && grade >= 14 {
		return 0, "grades IT14 to IT18 are not used up to and including 1 mm"
	}
	um = standardTolerances[stepOf(mainSteps[:], nominalMm)][grade+1]
	if um == none {
		return 0, "grades IT01 and IT0 are given only up to and including 500 mm"
	}
	return um, ""
}

// stepOf returns the first step whose upper end is not below the size, which
// must not be above the last one.
func stepOf(ends []float64, nominalMm float64) int { return sort.SearchFloat64s(ends, nominalMm) }
