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

// polished tells whether a surface is finer than turning or boring leaves it, and is not ground anyway.
func (f finish) polished() bool {
	ra := RaUm(f.text)
	return !f.ground && ra > 0 && ra <= turnedRaUm-geom.CloseMm
}

func (f finish) clause(w words.Writer) string {
	if f.polished() {
		return "; " + f.text + ", leave " + w.Read(polishMm) + " on the diameter for that"
	}
	return "; " + f.text
}

// after is how a surface that is finer than turning leaves it is brought there; a spiral
// round the land of a lip seal carries past it (DIN 3760, from memory).
func (f finish) after(_ *bench, s *Step) (int, string) {
	name := words.Spaced(s.Name)
	switch {
	case !f.polished():
		return finishPhase, ""
	case s.Inside:
		return finishPhase, "Hone " + name + " to size: boring alone leaves it rougher than " + f.text + "."
	}
	line := "Grind or polish " + name + " to size, 320 then 600 cloth with oil, held by its ends, never wrapped round: turning alone leaves it rougher than " + f.text
	if strings.HasPrefix(s.Seat, "seal") {
		line += "; no spiral, the cloth square on at the last: a spiral pumps under the lip"
	}
	return finishPhase, line + "."
}
