package part

import (
	"math"
	"regexp"
	"strconv"
	"strings"
	"sync"

	"centrepop/layout/plan"
	"centrepop/layout/words"
	"centrepop/parts"
	"centrepop/parts/geom"
)

// turnedRaUm is the finest mean roughness that a sharp tool leaves in a small lathe, µm,
// and polishMm what is left on the diameter to polish off. Common practice, no source.
const (
	turnedRaUm = 0.8
	polishMm   = 0.02
)

var roughness = sync.OnceValue(func() *regexp.Regexp { return regexp.MustCompile(`\bRa ([0-9]*\.?[0-9]+)( ?[uµ](?:in|m)\b)?`) })

// raSteps are the steps of mean roughness, µin, that both systems share (ASME B46.1; the grades N of ISO 1302), and
// the same as ISO has them, µm.
var raSteps = [][2]float64{{1, 0.025}, {2, 0.05}, {4, 0.1}, {8, 0.2}, {16, 0.4}, {32, 0.8}, {63, 1.6}, {125, 3.2}, {250, 6.3}, {500, 12.5}, {1000, 25}}

// bareUin is the least number without a unit that an inch drawing means in µin: a finish of 8 µm is
// not asked for (common practice, no source).
const bareUin = 8

// aNumber is a finish that is a number alone: drawings mean Ra by it (common practice, no source).
var aNumber = sync.OnceValue(func() *regexp.Regexp { return regexp.MustCompile(`^[0-9]*\.?[0-9]+( ?[uµ](?:in|m))?$`) })

// Finish is what is asked of a surface as it is printed: a mean roughness in inch jobs with both its units.
func Finish(w words.Writer, finish string) string {
	if aNumber().MatchString(finish) {
		finish = "Ra " + finish
	}
	if w.Units != parts.Inches {
		return finish
	}
	return roughness().ReplaceAllStringFunc(finish, func(text string) string {
		um := RaUm(text)
		if m := roughness().FindStringSubmatch(text); m[2] == "" && um >= bareUin {
			um *= geom.MmPerInch / 1000
		}
		uin := math.Round(um * 1000 / geom.MmPerInch)
		for _, s := range raSteps {
			if math.Abs(um/s[1]-1) < 0.03 {
				uin, um = s[0], s[1]
			}
		}
		return "Ra " + words.Trim(uin, 0) + " µin (" + words.Trim(um, 3) + " µm)"
	})
}

// RaUm is the mean roughness that a finish asks for, µm: "Ra 0.4", "ground Ra 16 uin"; 0
// where it asks for none.
func RaUm(finish string) float64 {
	m := roughness().FindStringSubmatch(finish)
	if m == nil {
		return 0
	}
	v, _ := strconv.ParseFloat(m[1], 64) // a number by its pattern
	if strings.HasSuffix(m[2], "in") {
		v *= geom.MmPerInch / 1000
	}
	return v
}

// finish is the surface wanted.
type finish struct {
	bare
	text   string
	ground bool // it is hardened and ground anyway
}

func (f finish) note(words.Writer) string { return f.text }

func (f finish) check(_ *Step, c *plan.Check) { c.Wanted = words.Join(", ", c.Wanted, f.text) }

// polished tells whether a surface is finer than turning or boring leaves it, and is not ground anyway.
func (f finish) polished() bool {
	ra := RaUm(f.text)
	return !f.ground && ra > 0 && ra <= turnedRaUm-geom.CloseMm
}

func (f finish) clause(w words.Writer) string {
	return words.Either(f.polished(), "; "+f.text+", leave "+w.Read(polishMm)+" on the diameter for that", "; "+f.text)
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
	line += words.When(parts.SeatUse(s.Seat) == parts.ASeal, "; no spiral, the cloth square on at the last: a spiral pumps under the lip")
	return finishPhase, line + "."
}
