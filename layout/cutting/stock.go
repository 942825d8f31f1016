package cutting

// FacingAllowanceMm returns the metal in mm to leave for facing at each sawn end
// of a bar of diameter dMm: 1.5 mm to 50, 2 to 100, 3 above, for a bandsaw that
// may run out of square. Common practice, no source.
func FacingAllowanceMm(dMm float64) float64 {
	switch {
	case dMm <= 50:
		return 1.5
	case dMm <= 100:
		return 2
	}
	return 3
}
