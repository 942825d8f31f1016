package main

import (
	"fmt"

	"centrepop/layout/tapers"
	"centrepop/layout/words"
)

type flatsJSON struct {
	Sides      int     `json:"sides"`
	DepthMm    float64 `json:"depth_mm"`
	WidthMm    float64 `json:"width_mm"`
	AcrossMm   float64 `json:"across_mm"`
	CornersMm  float64 `json:"corners_mm,omitempty"`
	Full       bool    `json:"full"`
	IndexDeg   float64 `json:"index_deg,omitempty"`
	HeadTurns  string  `json:"head_turns,omitempty"`
	LeastRound float64 `json:"round_for_sharp_corners_mm,omitempty"`
}

func flats(c *call) error {
	round := c.length("round", "diameter of the round", true)
	across := c.length("across", "across flats; for one flat, to the far side of the round", true)
	sides := c.flags.Int("sides", 6, "1, or an even number up to 12")
	if err := c.parse(0, 0); err != nil {
		return err
	}
	m, err := tapers.Flats{Sides: *sides, RoundMm: round.mm, AcrossMm: across.mm}.Work()
	if err != nil {
		return err
	}
	out := flatsJSON{
		Sides: *sides, DepthMm: m.DepthMm, WidthMm: m.WidthMm, AcrossMm: across.mm, CornersMm: m.CornersMm, Full: m.Full,
		IndexDeg: m.IndexDeg, LeastRound: m.LeastRound,
	}
	if m.IndexDeg > 0 {
		out.HeadTurns = fmt.Sprint(m.HeadTurns)
	}
	out.HeadTurns += words.When(m.HeadRest > 0, fmt.Sprintf(" %d/%d", m.HeadRest, m.HeadOf))
	return c.looked(&out, func() {
		c.line("flats", "%d, %s across", out.Sides, c.w.Said(out.AcrossMm))
		c.line("cut", "%s deep from the crown of the round, each flat %s wide", c.withUnit(out.DepthMm), c.withUnit(out.WidthMm))
		if out.IndexDeg > 0 {
			c.line("index", "%s° from flat to flat, %s turns of a 40:1 dividing head", words.Trim(out.IndexDeg, 4), out.HeadTurns)
		}
		if out.CornersMm > 0 && !out.Full {
			c.line("corners", "rounded: sharp ones need a round of %s", c.withUnit(out.LeastRound))
		} else if out.CornersMm > 0 {
			c.line("corners", "%s across, sharp", c.withUnit(out.CornersMm))
		}
	})
}
