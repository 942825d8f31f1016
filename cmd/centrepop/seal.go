package main

import (
	"centrepop/layout/grooves"
	"centrepop/layout/words"
)

func seal(c *call) error {
	width := c.length("width", "width of the seal, for the depth of its housing", false)
	shaft := c.first("shaft diameter")
	if err := c.parse(1, 1); err != nil {
		return err
	}
	l, err := grooves.SealLandFor(shaft.mm, width.mm)
	if err != nil {
		return err
	}
	return c.looked(&l, func() {
		c.line("land", "Ø %s (%s), round to %s", c.between(l.Shaft.MinMm, l.Shaft.MaxMm), l.Shaft.Class, l.RoundClass)
		c.line("", "Ra %g to %g, Rz %g to %g, Rmax %g µm, plunge ground without twist", l.RaUm.Min, l.RaUm.Max, l.RzUm.Min, l.RzUm.Max, l.RmaxUm)
		c.line("", "%g HRC or more, %g HRC from 4 m/s on or in dirt", l.HardnessHRC, l.HardnessFastHRC)
		c.line("lead-in", "%g to %g° to Ø%s or less, edge rounded and polished (%s)", l.LeadInDeg.Min, l.LeadInDeg.Max, c.w.Said(l.LeadInMm), l.LeadInSource)
		c.line("housing", "bore %s, Ra %g to %g µm for a rubber outside", l.HousingClass, l.HousingRaUm.Min, l.HousingRaUm.Max)
		if l.HousingDepthMm > 0 {
			c.line("", "straight for %s at least, %s deep at least", c.w.Said(words.Round(l.HousingStraightMm, 2)), c.w.Said(l.HousingDepthMm))
		}
		c.line("source", "%s", l.Source)
	})
}
