package main

import (
	"centrepop/layout/fits"
	"centrepop/layout/keys"
	"centrepop/parts"
)

// keyJSON is the answer of the key command for a parallel key.
type keyJSON struct {
	WidthMm         float64      `json:"width_mm"`
	HeightMm        float64      `json:"height_mm"`
	ShaftDepthMm    float64      `json:"shaft_depth_mm"`
	HubDepthMm      float64      `json:"hub_depth_mm"`
	OverMm          [2]float64   `json:"over_mm"` // shaft diameters: above the first, up to the second
	ShaftAcrossMm   float64      `json:"shaft_across_mm"`
	HubAcrossMm     float64      `json:"hub_across_mm"`
	ShaftDeeperMm   float64      `json:"shaft_deeper_mm"`
	HubDeeperMm     float64      `json:"hub_deeper_mm"`
	Fit             string       `json:"fit,omitempty"`
	ShaftWidth      *fits.Limits `json:"shaft_width,omitempty"`
	HubWidth        *fits.Limits `json:"hub_width,omitempty"`
	LengthsMm       []float64    `json:"lengths_mm,omitempty"`
	Material        string       `json:"material"`
	Standard        string       `json:"standard"`
	Source          string       `json:"source"`
	ToleranceSource string       `json:"tolerance_source"`
}

// discJSON is one Woodruff key.
type discJSON struct {
	Designation  string     `json:"designation"`
	WidthMm      float64    `json:"width_mm"`
	HeightMm     float64    `json:"height_mm"`
	DiscMm       float64    `json:"disc_mm"`
	LengthMm     float64    `json:"length_mm"`
	ShaftDepthMm float64    `json:"shaft_depth_mm"`
	HubDepthMm   float64    `json:"hub_depth_mm"`
	OverMm       [2]float64 `json:"over_mm"`
	Source       string     `json:"source"`
}

// key answers which key goes with a shaft, in the standard of its units.
func key(c *call) error {
	fitName := c.flags.String("fit", string(keys.Normal), "tight, normal or free; for keys in millimetres")
	flat := c.flags.Bool("flat", false, "rectangular instead of square; for keys in inches")
	disc := c.flags.Bool("woodruff", false, "Woodruff (disc) keys")
	diameter := c.first("shaft diameter")
	if err := c.parse(1, 1); err != nil {
		return err
	}
	d, inch := diameter.mm, c.w.Units == parts.Inches
	switch {
	case *disc && (*flat || c.flags.Changed("fit")):
		return badUse("--woodruff goes with neither --fit nor --flat")
	case inch && c.flags.Changed("fit"):
		return badUse("--fit is for keys in millimetres: ASME B17.1 gives tolerances, not fits")
	case !inch && *flat:
		return badUse("--flat is for keys in inches: write the diameter such as \"1-1/4 in\"")
	case *disc:
		return woodruff(c, d)
	}
	k, err := parallelKey(d, inch, *flat)
	if err != nil {
		return err
	}
	out := keyJSON{
		WidthMm: round4(k.WidthMm), HeightMm: round4(k.HeightMm), ShaftDepthMm: round4(k.ShaftDepthMm), HubDepthMm: round4(k.HubDepthMm),
		OverMm:        [2]float64{round4(k.OverMm), round4(k.UpToMm)},
		ShaftAcrossMm: round4(k.ShaftAcrossMm), HubAcrossMm: round4(k.HubAcrossMm),
		ShaftDeeperMm: round4(k.ShaftDeeperMm), HubDeeperMm: round4(k.HubDeeperMm), LengthsMm: k.LengthsMm(),
		Material: k.Material, Standard: k.Standard, Source: k.Source.String(), ToleranceSource: k.ToleranceSource.String(),
	}
	if !inch {
		widths, err := k.Widths(keys.Fit(*fitName))
		if err != nil {
			return err
		}
		out.Fit, out.ShaftWidth, out.HubWidth = *fitName, &widths.Shaft, &widths.Hub
	}
	return c.answer(out, func() { printKey(c, out) })
}

func parallelKey(shaftMm float64, inch, flat bool) (keys.Parallel, error) {
	switch {
	case !inch:
		return keys.For(shaftMm)
	case flat:
		return keys.ForInch(shaftMm, keys.Rectangular)
	}
	return keys.ForInch(shaftMm, keys.Square)
}

func printKey(c *call, k keyJSON) {
	c.line("key", "%s × %s, %s", c.w.Size(k.WidthMm), c.w.Size(k.HeightMm), k.Material)
	c.line("for shafts", "over %s up to %s", c.w.Size(k.OverMm[0]), c.w.Said(k.OverMm[1]))
	side := func(name string, depth, across, least, most float64, width *fits.Limits) {
		c.line(name, "deep %s from the crown", c.between(depth, depth+most-least))
		c.line("", "%s across to the far side", c.between(across+least, across+most))
		if width != nil {
			c.line("", "wide %s (%s)", c.between(width.MinMm, width.MaxMm), width.Class)
		}
	}
	side("shaft keyway", k.ShaftDepthMm, k.ShaftAcrossMm, -k.ShaftDeeperMm, 0, k.ShaftWidth)
	side("hub keyway", k.HubDepthMm, k.HubAcrossMm, 0, k.HubDeeperMm, k.HubWidth)
	if len(k.LengthsMm) > 0 {
		c.line("lengths", "%s mm", c.series(k.LengthsMm))
	}
	c.line("source", "%s; tolerances %s", k.Source, k.ToleranceSource)
}

func woodruff(c *call, shaftMm float64) error {
	list, err := parts.By(c.w.Units, keys.WoodruffFor, keys.WoodruffForInch)(shaftMm)
	if err != nil {
		return err
	}
	out := struct {
		Keys []discJSON `json:"keys"`
	}{}
	for _, k := range list {
		out.Keys = append(out.Keys, discJSON{
			Designation: k.Designation, WidthMm: round4(k.WidthMm), HeightMm: round4(k.HeightMm), DiscMm: round4(k.DiscMm),
			LengthMm: round4(k.LengthMm), ShaftDepthMm: round4(k.ShaftDepthMm), HubDepthMm: round4(k.HubDepthMm),
			OverMm: [2]float64{round4(k.OverMm), round4(k.UpToMm)}, Source: k.Source.String(),
		})
	}
	return c.answer(out, func() {
		for _, k := range list {
			c.line("Woodruff "+k.Designation, "cutter Ø%s × %s, sunk %s from the crown; hub keyway %s deep; key %s high, %s long   (%s)",
				c.w.Said(k.DiscMm), c.w.Said(k.WidthMm), c.w.Said(k.ShaftDepthMm), c.w.Said(k.HubDepthMm), c.w.Said(k.HeightMm), c.withUnit(k.LengthMm), k.Source)
		}
	})
}
