package measured

import (
	"fmt"
	"math"
	"regexp"
	"strconv"

	"centrepop/parts/geom"
)

// Chain is a roller chain by its designation: its number as ISO 606 has it, its pitch in mm, and of how many links it is; 0 where that is not said.
type Chain struct {
	Name    string
	PitchMm float64
	Links   int
}

// chainName is a roller chain in words, by ISO 606 or by the number of ASME B29.1; chainLinks how long it is.
var (
	chainName  = regexp.MustCompile(`\b(\d\d)([AB])(?:-\d)?\b|(?i:\bno\.? ?|\bnumber |\bansi |#)([2-9]|1\d|2[0-4])([0158])(?:-\d)?\b`)
	chainLinks = regexp.MustCompile(`(?i)\b(\d{1,4}) (?:links|pitches)\b`)
)

// ParseChain is the roller chain that words name, such as 10B-1 or no. 40; ok is false where they name none. The number of a chain is its pitch in
// sixteenths of an inch (chinatransmissions.com, metric roller chain size chart), but 05B has 8 mm; that of ASME B29.1 has the eighths before its
// last figure, which is 0 for what ISO 606 calls A (ISO 606 annex B, from memory).
func ParseChain(words string) (c Chain, ok bool) {
	m := chainName.FindStringSubmatch(words)
	if m == nil {
		return c, false
	}
	if m[1] != "" {
		n, _ := strconv.Atoi(m[1])
		c = Chain{Name: m[1] + m[2], PitchMm: float64(n) * geom.MmPerInch / 16}
		if c.Name == "05B" {
			c.PitchMm = 8
		}
	} else {
		n, _ := strconv.Atoi(m[3])
		c = Chain{Name: "no. " + m[3] + m[4], PitchMm: float64(n) * geom.MmPerInch / 8}
		if m[4] == "0" {
			c.Name = fmt.Sprintf("%02dA", 2*n)
		}
	}
	if l := chainLinks.FindStringSubmatch(words); l != nil {
		c.Links, _ = strconv.Atoi(l[1])
	}
	return c, c.PitchMm > 0
}

// RimMm are the least and the greatest diameter over the teeth of a wheel for a chain. ISO 606 has d + p (1 − 1.6/z) − d1 to d + 1.25 p − d1 of its
// pitch circle d, with rollers d1 of 0.6 to 0.67 of the pitch p (from memory).
func (c Chain) RimMm(teeth int) (least, most float64) {
	const widest, narrowest = 0.67, 0.6
	p, z := c.PitchMm, float64(teeth)
	d := p / math.Sin(math.Pi/z)
	return d + p*(1-1.6/z-widest), d + p*(1.25-narrowest)
}

// LinksRound is how many links lie round two wheels that stand apart.
func (c Chain) LinksRound(aTeeth, bTeeth int, apartMm float64) float64 {
	a, b := float64(aTeeth), float64(bTeeth)
	lean := (b - a) / (2 * math.Pi)
	return 2*apartMm/c.PitchMm + (a+b)/2 + lean*lean*c.PitchMm/apartMm
}
