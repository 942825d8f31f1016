package bolts

import "centrepop/layout/threads"

// A metricRow is one metric size. Lengths in mm.
type metricRow struct {
	d, area                     float64
	proof88, proof109, proof129 float64 // N
	flats, head, nut            float64
	socket, key                 float64
	washerID, washerOD, washerT float64
	hexFrom, boltFrom           float64 // shortest: ISO 4017, ISO 4014
	socketFrom                  float64 // shortest: ISO 4762
}

// metricBolts: stress areas and proof loads ISO 898-1:2013 (coarse thread),
// hexagon ISO 4014:2011, nut height ISO 4032:2012, socket head ISO 4762:2004
// (M18, M22, M27, M33: DIN 912, not preferred), washer ISO 7089:2000.
// The rows are looked up but for the length ranges and the washers of M22, M27 and M33,
// from memory (testdata/reference/bolts_all.csv). Tests hold areas to the formula, loads to
// area times stress, washer bores to ISO 273 fine. M10, M12, M14 and M22 have
// other across flats in the older DIN 931: 17, 19, 22, 32.
var metricBolts = []metricRow{
	{3, 5.03, 2920, 4180, 4880, 5.5, 2, 2.4, 5.5, 2.5, 3.2, 7, 0.5, 6, 20, 5},
	{4, 8.78, 5100, 7290, 8520, 7, 2.8, 3.2, 7, 3, 4.3, 9, 0.8, 8, 25, 6},
	{5, 14.2, 8230, 11800, 13800, 8, 3.5, 4.7, 8.5, 4, 5.3, 10, 1, 10, 25, 8},
	{6, 20.1, 11600, 16700, 19500, 10, 4, 5.2, 10, 5, 6.4, 12, 1.6, 12, 30, 10},
	{8, 36.6, 21200, 30400, 35500, 13, 5.3, 6.8, 13, 6, 8.4, 16, 1.6, 16, 40, 12},
	{10, 58, 33700, 48100, 56300, 16, 6.4, 8.4, 16, 8, 10.5, 20, 2, 20, 45, 16},
	{12, 84.3, 48900, 70000, 81800, 18, 7.5, 10.8, 18, 10, 13, 24, 2.5, 25, 50, 20},
	{14, 115, 66700, 95500, 112000, 21, 8.8, 12.8, 21, 12, 15, 28, 2.5, 30, 60, 25},
	{16, 157, 91000, 130000, 152000, 24, 10, 14.8, 24, 14, 17, 30, 3, 30, 65, 25},
	{18, 192, 115000, 159000, 186000, 27, 11.5, 15.8, 27, 14, 19, 34, 3, 35, 70, 30},
	{20, 245, 147000, 203000, 238000, 30, 12.5, 18, 30, 17, 21, 37, 3, 40, 80, 30},
	{22, 303, 182000, 252000, 294000, 34, 14, 19.4, 33, 17, 23, 39, 3, 45, 90, 40},
	{24, 353, 212000, 293000, 342000, 36, 15, 21.5, 36, 19, 25, 44, 4, 50, 90, 40},
	{27, 459, 275000, 381000, 445000, 41, 17, 23.8, 40, 19, 28, 50, 4, 55, 100, 45},
	{30, 561, 337000, 466000, 544000, 46, 18.7, 25.6, 45, 22, 31, 56, 4, 60, 110, 45},
	{33, 694, 416000, 576000, 673000, 50, 21, 28.7, 50, 24, 34, 60, 5, 65, 130, 50},
	{36, 817, 490000, 678000, 792000, 55, 22.5, 31, 54, 27, 37, 66, 5, 70, 140, 55},
}

func metricBolt(t threads.Thread, i int) Bolt {
	row := metricBolts[i]
	b := Bolt{
		Thread:        t,
		StressAreaMm2: row.area,
		AcrossFlatsMm: row.flats, HeadHeightMm: row.head,
		NutAcrossFlatsMm: row.flats, NutHeightMm: row.nut,
		SocketHeadDiameterMm: row.socket, SocketHeadHeightMm: row.d, SocketKeyMm: row.key,
		WasherIDMm: row.washerID, WasherODMm: row.washerOD, WasherThicknessMm: row.washerT,
		Source: "ISO 898-1:2013; ISO 4014:2011; ISO 4032:2012; ISO 4762:2004; ISO 7089:2000",
		row:    i,
		metric: true,
	}
	if t.Series == threads.MetricFine {
		// The thread comes from threads.Parse, so the formula has its numbers.
		b.StressAreaMm2, _ = StressAreaMm2(t)
		b.Source += "; fine pitch: heads as ISO 8765, area by formula"
	}
	return b
}
