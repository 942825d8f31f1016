package main

import (
	"centrepop/layout/flight"
	"centrepop/layout/words"
)

func flightCmd(c *call) error {
	shaft := c.length("shaft", "outside diameter of the shaft or tube", true)
	outside := c.length("outside", "outside diameter of the flight", true)
	pitch := c.length("pitch", "advance along the axis in one turn", true)
	length := c.length("length", "length of the auger along the axis, to count the blanks", false)
	hand := c.flags.String("hand", string(flight.Right), "right or left")
	if err := c.parse(0, 0); err != nil {
		return err
	}
	f := flight.Flight{ShaftMm: shaft.mm, OutsideMm: outside.mm, PitchMm: pitch.mm, Hand: flight.Hand(*hand)}
	b, err := f.Blank()
	if err != nil {
		return err
	}
	out := struct {
		flight.Blank
		Hand string `json:"hand"`
		*flight.Run
	}{Blank: b, Hand: *hand}
	if length.given() {
		run, err := f.For(length.mm)
		if err != nil {
			return err
		}
		out.Run = &run
	}
	return c.looked(&out, func() {
		c.line("blank", "ring Ø%s inside, Ø%s outside", c.withUnit(out.InsideMm), c.withUnit(out.OutsideMm))
		c.line("cut out", "%s°: %s across the gap inside, %s outside", words.Trim(out.GapDeg, 1), c.withUnit(out.InsideGapMm), c.withUnit(out.OutsideGapMm))
		c.line("edges", "%s inside, %s outside: the two helices of one turn, %s hand", c.withUnit(out.InsideHelixMm), c.withUnit(out.OutsideHelixMm), out.Hand)
		c.line("lead", "%s° at the shaft, %s° outside, from a plane across it", words.Trim(out.InsideLeadDeg, 1), words.Trim(out.OutsideLeadDeg, 1))
		// The middle never stretches: a helix grows faster than its diameter.
		c.line("forming", "the middle of the ring shrinks by %s %% as it is pulled to its pitch", words.Trim(-out.MidStrain*100, 1))
		if out.Run != nil {
			c.line("for the length", "%s for %s turns, the last %s° of its ring; seam %s along the shaft, one side", words.Counted(out.Blanks, "blank"),
				words.Trim(out.Turns, 3), words.Trim(out.LastDeg, 1), c.withUnit(words.Round(out.SeamMm, 1)))
		}
	})
}
