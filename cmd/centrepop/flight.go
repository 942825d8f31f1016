package main

import (
	"centrepop/layout/flight"
	"centrepop/layout/words"
)

type flightJSON struct {
	BlankInsideMm  float64 `json:"blank_inside_mm"`
	BlankOutsideMm float64 `json:"blank_outside_mm"`
	GapDeg         float64 `json:"gap_deg"`
	WidthMm        float64 `json:"width_mm"`
	InsideGapMm    float64 `json:"inside_gap_mm"`
	OutsideGapMm   float64 `json:"outside_gap_mm"`
	InsideHelixMm  float64 `json:"inside_helix_mm"`
	OutsideHelixMm float64 `json:"outside_helix_mm"`
	InsideLeadDeg  float64 `json:"inside_lead_deg"`
	OutsideLeadDeg float64 `json:"outside_lead_deg"`
	MidStrain      float64 `json:"mid_strain"`
	Hand           string  `json:"hand"`
	Turns          float64 `json:"turns,omitempty"`
	Blanks         int     `json:"blanks,omitempty"`
	LastDeg        float64 `json:"last_deg,omitempty"`
	SeamMm         float64 `json:"seam_mm,omitempty"`
}

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
	out := flightJSON{
		BlankInsideMm: words.Round(b.InsideMm, 2), BlankOutsideMm: words.Round(b.OutsideMm, 2), GapDeg: words.Round(b.GapDeg, 1),
		WidthMm: words.Round(b.WidthMm, 2), InsideGapMm: words.Round(b.InsideGapMm, 2), OutsideGapMm: words.Round(b.OutsideGapMm, 2),
		InsideHelixMm: words.Round(b.InsideHelixMm, 2), OutsideHelixMm: words.Round(b.OutsideHelixMm, 2),
		InsideLeadDeg: words.Round(b.InsideLeadDeg, 2), OutsideLeadDeg: words.Round(b.OutsideLeadDeg, 2), MidStrain: words.Round(b.MidStrain, 4), Hand: *hand,
	}
	if length.given() {
		run, err := f.For(length.mm)
		if err != nil {
			return err
		}
		out.Turns, out.Blanks, out.LastDeg, out.SeamMm = words.Round(run.Turns, 3), run.Blanks, words.Round(run.LastDeg, 1), words.Round(run.SeamMm, 1)
	}
	return c.answer(out, func() { printFlight(c, out) })
}

func printFlight(c *call, f flightJSON) {
	c.line("blank", "ring Ø%s inside, Ø%s outside", c.withUnit(f.BlankInsideMm), c.withUnit(f.BlankOutsideMm))
	c.line("cut out", "%s°: %s across the gap inside, %s outside", words.Trim(f.GapDeg, 1), c.withUnit(f.InsideGapMm), c.withUnit(f.OutsideGapMm))
	c.line("edges", "%s inside, %s outside: the two helices of one turn, %s hand", c.withUnit(f.InsideHelixMm), c.withUnit(f.OutsideHelixMm), f.Hand)
	c.line("lead", "%s° at the shaft, %s° outside, from a plane across it", words.Trim(f.InsideLeadDeg, 1), words.Trim(f.OutsideLeadDeg, 1))
	// The middle never stretches: a helix grows faster than its diameter.
	c.line("forming", "the middle of the ring shrinks by %s %% as it is pulled to its pitch", words.Trim(-f.MidStrain*100, 1))
	if f.Blanks > 0 {
		c.line("for the length", "%s for %s turns, the last %s° of its ring; seam %s along the shaft, one side", words.Counted(f.Blanks, "blank"), words.Trim(f.Turns, 3), words.Trim(f.LastDeg, 1), c.withUnit(f.SeamMm))
	}
}
