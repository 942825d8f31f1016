package main

import (
	"centrepop/layout/fits"
	"centrepop/layout/grooves"
	"centrepop/layout/plan"
	"centrepop/layout/words"
)

type sealJSON struct {
	Shaft             *fits.Limits `json:"shaft"`
	Roundness         string       `json:"roundness"`
	RaUm              plan.Range   `json:"ra_um"`
	RzUm              plan.Range   `json:"rz_um"`
	RmaxUm            float64      `json:"rmax_um"`
	HardnessHRC       float64      `json:"hardness_hrc"`
	HardnessFastHRC   float64      `json:"hardness_fast_hrc"`
	LeadInMm          float64      `json:"lead_in_mm"`
	LeadInDeg         plan.Range   `json:"lead_in_deg"`
	HousingClass      string       `json:"housing_class"`
	HousingRaUm       plan.Range   `json:"housing_ra_um"`
	HousingStraightMm float64      `json:"housing_straight_mm,omitempty"`
	HousingDepthMm    float64      `json:"housing_depth_mm,omitempty"`
	Source            string       `json:"source"`
	LeadInSource      string       `json:"lead_in_source"`
}

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
	out := sealJSON{
		Shaft: &l.Shaft, Roundness: l.RoundClass, RaUm: plan.Range{Min: l.RaMinUm, Max: l.RaMaxUm}, RzUm: plan.Range{Min: l.RzMinUm, Max: l.RzMaxUm}, RmaxUm: l.RmaxUm,
		HardnessHRC: l.HardnessHRC, HardnessFastHRC: l.HardnessFastHRC, LeadInMm: round4(l.LeadInMm), LeadInDeg: plan.Range{Min: l.LeadInMinDeg, Max: l.LeadInMaxDeg},
		HousingClass: l.HousingClass, HousingRaUm: plan.Range{Min: l.HousingRaMinUm, Max: l.HousingRaMaxUm}, HousingStraightMm: round4(l.HousingStraightMm), HousingDepthMm: round4(l.HousingDepthMm),
		Source: l.Source.String(), LeadInSource: l.LeadInSource.String(),
	}
	return c.answer(out, func() { printSeal(c, out) })
}

func printSeal(c *call, l sealJSON) {
	c.line("land", "Ø %s (%s), round to %s", c.between(l.Shaft.MinMm, l.Shaft.MaxMm), l.Shaft.Class, l.Roundness)
	c.line("", "Ra %g to %g, Rz %g to %g, Rmax %g µm, plunge ground without twist", l.RaUm.Min, l.RaUm.Max, l.RzUm.Min, l.RzUm.Max, l.RmaxUm)
	c.line("", "%g HRC or more, %g HRC from 4 m/s on or in dirt", l.HardnessHRC, l.HardnessFastHRC)
	c.line("lead-in", "%g to %g° to Ø%s or less, edge rounded and polished (%s)", l.LeadInDeg.Min, l.LeadInDeg.Max, c.w.Said(l.LeadInMm), l.LeadInSource)
	c.line("housing", "bore %s, Ra %g to %g µm for a rubber outside", l.HousingClass, l.HousingRaUm.Min, l.HousingRaUm.Max)
	if l.HousingDepthMm > 0 {
		c.line("", "straight for %s at least, %s deep at least", c.w.Said(words.Round(l.HousingStraightMm, 2)), c.w.Said(l.HousingDepthMm))
	}
	c.line("source", "%s", l.Source)
}
