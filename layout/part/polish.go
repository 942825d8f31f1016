package part

import (
	"regexp"
	"strconv"
	"strings"
	"sync"

	"centrepop/layout/words"
	"centrepop/parts/geom"
)

// turnedRaUm is the finest mean roughness that a sharp tool leaves in a small lathe, µm,
// and polishMm what is left on the diameter to polish off. Common practice, no source.
const (
	turnedRaUm = 0.8
	polishMm   = 0.02
)

var roughness = sync.OnceValue(func() *regexp.Regexp { return regexp.MustCompile(`\bRa ([0-9]*\.?[0-9]+)( ?[uµ]in\b)?`) })

// RaUm is the mean roughness that a finish asks for, µm: "Ra 0.4", "ground Ra 16 uin"; 0
// where it asks for none.
func RaUm(finish string) float64 {
	m := roughness().FindStringSubmatch(finish)
	if m == nil {
		return 0
	}
	v, _ := strconv.ParseFloat(m[1], 64) // a number by its pattern
	if m[2] != "" {
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
