package part

import (
	"strconv"
	"strings"

	"centrepop/layout/words"
	"centrepop/parts/geom"
)

// turnedRaUm is the finest mean roughness that a sharp tool leaves in a small lathe, µm,
// and polishMm what is left on the diameter to polish off. Common practice, no source.
const (
	turnedRaUm = 0.8
	polishMm   = 0.02
)

// RaUm is the mean roughness that a finish asks for, µm: "Ra 0.4", "Ra 16 uin"; 0 where
// it asks for none.
func RaUm(finish string) float64 {
	f := strings.Fields(finish)
	if len(f) < 2 || f[0] != "Ra" {
		return 0
	}
	v, err := strconv.ParseFloat(f[1], 64)
	if err != nil || v <= 0 {
		return 0
	}
	if len(f) > 2 && f[2] == "uin" {
		v *= geom.MmPerInch / 1000
	}
	return v
}

// after is how a surface that is finer than turning leaves it is brought there; a spiral
// round the land of a lip seal carries past it (DIN 3760, from memory).
func (f finish) after(b *bench, s *Step) string {
	ra, name := RaUm(f.text), words.Spaced(s.Name)
	switch {
	case f.ground || ra == 0 || ra > turnedRaUm-geom.CloseMm:
		return ""
	case s.Inside:
		return "Leave " + b.W.Read(polishMm) + " in " + name + " and hone it: boring alone leaves it rougher than " + f.text + "."
	}
	line := "Leave " + b.W.Read(polishMm) + " on " + name + " and grind or polish it, 320 then 600 cloth with oil, held by its ends, never wrapped round: turning alone leaves it rougher than " + f.text
	if strings.HasPrefix(s.Seat, "seal") {
		line += "; no spiral, the cloth square on at the last: a spiral pumps under the lip"
	}
	return line + "."
}
