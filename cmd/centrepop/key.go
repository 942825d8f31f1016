package main

import (
	"centrepop/layout/fits"
	"centrepop/layout/keys"
	"centrepop/parts"
)

// keyJSON is the answer of the key command for a parallel key.
type keyJSON struct {
	keys.Parallel
	Fit        string       `json:"fit,omitempty"`
	ShaftWidth *fits.Limits `json:"shaft_width,omitempty"`
	HubWidth   *fits.Limits `json:"hub_width,omitempty"`
	LengthsMm  []float64    `json:"lengths_mm,omitempty"`
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
	out := keyJSON{Parallel: k, LengthsMm: k.LengthsMm()}
	if !inch {
		widths, err := k.Widths(keys.Fit(*fitName))
		if err != nil {
			return err
		}
		out.Fit, out.ShaftWidth, out.HubWidth = *fitName, &widths.Shaft, &widths.Hub
	}
	return c.looked(&out, func() { printKey(c, out) })
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
		Keys []keys.Woodruff `json:"keys"`
	}{list}
	return c.looked(&out, func() {
		for _, k := range list {
			c.line("Woodruff "+k.Designation, "cutter Ø%s × %s, sunk %s from the crown; hub keyway %s deep; key %s high, %s long   (%s)",
				c.w.Said(k.DiscMm), c.w.Said(k.WidthMm), c.w.Said(k.ShaftDepthMm), c.w.Said(k.HubDepthMm), c.w.Said(k.HeightMm), c.withUnit(k.LengthMm), k.Source)
		}
	})
}
