package bolts

import "centrepop/layout/threads"

// An inchRow is one inch size. Lengths in inches, areas in square inches.
type inchRow struct {
	d, areaUNC, areaUNF         float64
	flats, head                 float64 // zero: ASME B18.2.1 does not have the size
	nutFlats, nut               float64
	socket, key                 float64 // zero: ASME B18.3 does not have the size
	washerID, washerOD, washerT float64
	from, to                    float64 // lengths a merchant keeps
}

// inchBolts: stress areas SAE J429 (= ASME B1.1; tests hold them to the
// formula); head ASME B18.2.1 hex cap screw, basic; nut ASME B18.2.2 hex nut,
// basic; socket head ASME B18.3, 1960 series; all looked up in makers'
// reprints. Number sizes are socket heads alone; their nuts, ASME B18.6.3, are from
// memory, as is the washer ASME B18.21.1 type A narrow, thickness basic. Lengths are
// common practice, no source. 7/16 and 9/16 nuts are wider than the heads.
var inchBolts = []inchRow{
	{0.138, 0.00909, 0.01015, 0, 0, 5.0 / 16, 7.0 / 64, 0.226, 7.0 / 64, 0.156, 0.375, 0.049, 0.25, 2},
	{0.164, 0.0140, 0.01474, 0, 0, 11.0 / 32, 1.0 / 8, 0.270, 9.0 / 64, 0.188, 0.438, 0.049, 0.25, 2},
	{0.190, 0.0175, 0.0200, 0, 0, 3.0 / 8, 1.0 / 8, 0.312, 5.0 / 32, 0.219, 0.500, 0.049, 0.25, 3},
	{1.0 / 4, 0.0318, 0.0364, 7.0 / 16, 5.0 / 32, 7.0 / 16, 7.0 / 32, 0.375, 3.0 / 16, 0.281, 0.625, 0.065, 0.5, 6},
	{5.0 / 16, 0.0524, 0.0580, 1.0 / 2, 13.0 / 64, 1.0 / 2, 17.0 / 64, 0.469, 1.0 / 4, 0.344, 0.688, 0.065, 0.5, 6},
	{3.0 / 8, 0.0775, 0.0878, 9.0 / 16, 15.0 / 64, 9.0 / 16, 21.0 / 64, 0.562, 5.0 / 16, 0.406, 0.812, 0.065, 0.625, 8},
	{7.0 / 16, 0.1063, 0.1187, 5.0 / 8, 9.0 / 32, 11.0 / 16, 3.0 / 8, 0.656, 3.0 / 8, 0.469, 0.922, 0.065, 0.75, 8},
	{1.0 / 2, 0.1419, 0.1599, 3.0 / 4, 5.0 / 16, 3.0 / 4, 7.0 / 16, 0.750, 3.0 / 8, 0.531, 1.062, 0.095, 0.75, 12},
	{9.0 / 16, 0.182, 0.203, 13.0 / 16, 23.0 / 64, 7.0 / 8, 31.0 / 64, 0, 0, 0.594, 1.156, 0.095, 1, 12},
	{5.0 / 8, 0.226, 0.256, 15.0 / 16, 25.0 / 64, 15.0 / 16, 35.0 / 64, 0.938, 1.0 / 2, 0.656, 1.312, 0.095, 1, 12},
	{3.0 / 4, 0.334, 0.373, 9.0 / 8, 15.0 / 32, 9.0 / 8, 41.0 / 64, 1.125, 5.0 / 8, 0.812, 1.469, 0.134, 1.25, 12},
	{7.0 / 8, 0.462, 0.509, 21.0 / 16, 35.0 / 64, 21.0 / 16, 3.0 / 4, 1.312, 3.0 / 4, 0.938, 1.750, 0.134, 1.5, 12},
	{1, 0.606, 0.663, 3.0 / 2, 39.0 / 64, 3.0 / 2, 55.0 / 64, 1.500, 3.0 / 4, 1.062, 2.000, 0.134, 1.75, 12},
}

func inchBolt(t threads.Thread, i int) Bolt {
	row := inchBolts[i]
	area := row.areaUNC
	if t.Series == threads.UnifiedUNF {
		area = row.areaUNF
	}
	b := Bolt{
		Thread:        t,
		StressAreaMm2: area * inch * inch,
		AcrossFlatsMm: row.flats * inch, HeadHeightMm: row.head * inch,
		NutAcrossFlatsMm: row.nutFlats * inch, NutHeightMm: row.nut * inch,
		WasherIDMm: row.washerID * inch, WasherODMm: row.washerOD * inch, WasherThicknessMm: row.washerT * inch,
		Source: "SAE J429; ASME B18.2.1; ASME B18.2.2; ASME B18.3; ASME B18.21.1",
		row:    i,
	}
	if row.socket > 0 {
		b.SocketHeadDiameterMm, b.SocketHeadHeightMm, b.SocketKeyMm = row.socket*inch, row.d*inch, row.key*inch
	}
	return b
}
