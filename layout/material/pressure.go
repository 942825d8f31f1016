package material

// pressures are the limiting pressures under the heads of bolts, MPa, of VDI 2230:2003, and of its edition of 1986 for
// grades that only that has, as a catalogue of fasteners prints both, each in its state: EN AW-6082 F31 and F28 differ by
// 30. Row by row, and which the table itself calls not yet checked: testdata/reference/tables.csv.
var pressures = map[string]float64{
	"S235": 490, "E295": 710, "S355": 760, "42CrMo4+QT": 850, "34CrNiMo6+QT": 1080, "16MnCr5": 900,
	"EN-GJL-150": 600, "EN-GJL-250": 900, "EN-GJL-350": 900, "EN-GJS-400-15": 700, "EN-GJS-500-7": 900, "EN-GJS-600-3": 1000,
	"EN AW-5083 H112": 230, "EN AW-6082 T6": 260, "EN AW-7075 T6": 410,
}

// PressureMPa is the most that the metal bears under the head of a bolt, MPa (VDI 2230); 0 where none is kept.
func (m Material) PressureMPa() float64 { return pressures[m.Name] }
