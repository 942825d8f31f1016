package main

import (
	"errors"
	"fmt"

	"centrepop/layout/fits"
	"centrepop/layout/grooves"
	"centrepop/layout/words"
	"centrepop/parts"
)

type ringJSON struct {
	NominalMm   float64      `json:"nominal_mm"`
	ThicknessMm float64      `json:"thickness_mm"`
	GrooveMm    float64      `json:"groove_mm"`
	Groove      *fits.Limits `json:"groove"`
	WidthMm     float64      `json:"width_mm"`
	Width       *fits.Limits `json:"width"`
	EdgeMm      float64      `json:"edge_mm"`  // least from the groove to the end of the part
	ClearMm     float64      `json:"clear_mm"` // diameter to keep free for the lugs
	Standard    string       `json:"standard"`
	Source      string       `json:"source"`
}

func ring(c *call) error {
	inside := c.flags.Bool("inside", false, "in a bore (DIN 472) instead of on a shaft (DIN 471)")
	diameter := c.first("diameter")
	if err := c.parse(1, 1); err != nil {
		return err
	}
	r, err := grooves.RingFor(diameter.mm, *inside)
	var gap *grooves.RingError
	if errors.As(err, &gap) {
		standard, more := map[bool]string{false: "DIN 471", true: "DIN 472"}[*inside], ""
		if c.w.Units == parts.Inches { // the table has no rings of inch sizes
			more = fmt.Sprintf(", which are metric rings %s and %s: a seat of that size, or the groove that the maker of an inch ring prints", words.Trim(gap.BelowMm, 2), words.Trim(gap.AboveMm, 2))
		}
		return badUse("no retaining ring of %s fits %s: the nearest are for %s and %s%s", standard, c.w.Said(gap.DiameterMm), c.w.Said(gap.BelowMm), c.w.Said(gap.AboveMm), more)
	}
	if err != nil {
		return err
	}
	out := ringJSON{
		NominalMm: r.NominalMm, ThicknessMm: r.ThicknessMm, GrooveMm: r.Groove.NominalMm, Groove: &r.Groove,
		WidthMm: r.Width.NominalMm, Width: &r.Width, EdgeMm: r.EdgeMm, ClearMm: r.ClearMm, Standard: r.Standard, Source: r.Source.String(),
	}
	return c.looked(&out, func() { printRing(c, out, *inside) })
}

func printRing(c *call, r ringJSON, inside bool) {
	c.line("ring", "%s × %s %s", c.w.Size(r.NominalMm), c.w.Size(r.ThicknessMm), r.Standard)
	c.line("groove", "Ø %s (%s)", c.between(r.Groove.MinMm, r.Groove.MaxMm), r.Groove.Class)
	c.line("", "wide %s (%s)", c.between(r.Width.MinMm, r.Width.MaxMm), r.Width.Class)
	c.line("edge", "at least %s from the groove to the end", c.w.Said(r.EdgeMm))
	if inside {
		c.line("lugs", "need Ø%s free within", c.withUnit(r.ClearMm))
	} else {
		c.line("lugs", "need Ø%s free around", c.withUnit(r.ClearMm))
	}
	c.line("source", "%s", r.Source)
}
