package main

import (
	"centrepop/layout/bars"
	"centrepop/layout/words"
)

type mitreJSON struct {
	SawDeg      float64 `json:"saw_deg"`       // from a square cut
	OtherSawDeg float64 `json:"other_saw_deg"` // of the bar it meets
	OffsetMm    float64 `json:"offset_mm"`     // how far the long point stands beyond the short one
	CutMm       float64 `json:"cut_mm"`        // length of the cut across
	LongMm      float64 `json:"long_mm,omitempty"`
	ShortMm     float64 `json:"short_mm,omitempty"`
	CentreMm    float64 `json:"centre_mm,omitempty"`
}

func mitre(c *call) error {
	onto := c.length("onto", "width of the bar it meets; left out: the same", false)
	corner := c.flags.Float64("corner", 90, "angle between the bars, degrees")
	length := c.length("length", "long point to long point of a piece with this mitre at both ends", false)
	width := c.first("width")
	if err := c.parse(1, 1); err != nil {
		return err
	}
	own, other := width.mm, width.mm
	if onto.given() {
		other = onto.mm
	}
	saw, otherSaw, err := bars.Mitre(*corner, own, other)
	if err != nil {
		return err
	}
	out := mitreJSON{SawDeg: saw, OtherSawDeg: otherSaw}
	out.CutMm, out.OffsetMm = bars.Across(own, saw)
	if length.given() {
		m, err := bars.ByLong(length.mm, own, saw, saw)
		if err != nil {
			return err
		}
		s, err := m.Work()
		if err != nil {
			return err
		}
		out.LongMm, out.ShortMm, out.CentreMm = max(s.TopMm, s.BottomMm), min(s.TopMm, s.BottomMm), m.LengthMm
	}
	return c.looked(&out, func() {
		c.line("saw", "%s° from square; the other bar %s°", words.Trim(out.SawDeg, 2), words.Trim(out.OtherSawDeg, 2))
		c.line("cut", "%s long, the long point %s beyond the short one", c.withUnit(out.CutMm), c.withUnit(out.OffsetMm))
		if out.LongMm > 0 {
			c.line("piece", "%s long points, %s short points, %s along the middle", c.withUnit(out.LongMm), c.withUnit(out.ShortMm), c.withUnit(out.CentreMm))
		}
	})
}
