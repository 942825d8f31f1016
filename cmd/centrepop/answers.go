package main

import (
	"fmt"
	"strings"

	"centrepop/layout/fits"
	"centrepop/layout/part"
	"centrepop/layout/words"
	"centrepop/parts"
)

func fit(c *call) error {
	first := c.first("size")
	if err := c.parse(2, 2); err != nil {
		return err
	}
	size := first.mm
	var out struct {
		NominalMm      float64      `json:"nominal_mm"`
		Hole           *fits.Limits `json:"hole,omitempty"`
		Shaft          *fits.Limits `json:"shaft,omitempty"`
		Kind           string       `json:"kind,omitempty"`
		ClearanceMaxUm *float64     `json:"clearance_max_um,omitempty"`
		ClearanceMinUm *float64     `json:"clearance_min_um,omitempty"`
	}
	out.NominalMm = size
	if strings.Contains(c.args[1], "/") {
		f, err := fits.Between(size, c.args[1])
		if err != nil {
			return err
		}
		out.Hole, out.Shaft, out.Kind = &f.Hole, &f.Shaft, f.Kind
		out.ClearanceMaxUm, out.ClearanceMinUm = &f.ClearanceMaxUm, &f.ClearanceMinUm
	} else {
		l, err := fits.Limit(size, c.args[1])
		if err != nil {
			return err
		}
		if l.Hole {
			out.Hole = &l
		} else {
			out.Shaft = &l
		}
	}
	return c.answer(out, func() {
		for _, side := range []struct {
			name string
			l    *fits.Limits
		}{{"hole", out.Hole}, {"shaft", out.Shaft}} {
			if side.l != nil {
				fmt.Fprintf(c.stdout, "%-6s Ø%s %-5s %s   (%+g / %+g µm)\n", side.name, c.w.Size(size), side.l.Class, c.between(side.l.MinMm, side.l.MaxMm), side.l.UpperUm, side.l.LowerUm)
			}
		}
		if out.Kind != "" {
			inches := ""
			if c.w.Units == parts.Inches {
				inches = c.w.Setting(*out.ClearanceMinUm/1000) + " to " + c.w.Setting(*out.ClearanceMaxUm/1000) + ", "
			}
			fmt.Fprintf(c.stdout, "%s fit: clearance %s%+g to %+g µm (negative is interference)\n", out.Kind, inches, *out.ClearanceMinUm, *out.ClearanceMaxUm)
		}
	})
}

func circle(c *call) error {
	pcd := c.length("pcd", "pitch circle diameter, such as 140 or 5-1/2in", false)
	count := c.flags.Int("count", 0, "number of holes")
	first := c.flags.Float64("first", 0, "clock angle of one hole, degrees from TOP")
	if err := c.parse(0, 0); err != nil {
		return err
	}
	if !pcd.given() || *count == 0 {
		return badUse("--pcd and --count are both needed")
	}
	bc, err := part.NewBoltCircle(pcd.mm, *count, *first)
	if err != nil {
		return badUse("%s", err)
	}
	return c.looked(&bc, func() {
		read := func(mm float64) string { return words.Readout(mm, c.w.Units) }
		fmt.Fprintf(c.stdout, "hole   angle°         x         y   (%s; clock angle from TOP, x right, y up)\n", c.w.Units)
		for _, h := range bc.Holes {
			fmt.Fprintf(c.stdout, "%4d %8.3f %9s %9s\n", h.N, h.AngleDeg, read(h.XMm), read(h.YMm))
		}
		fmt.Fprintf(c.stdout, "chord between neighbours %s, across %s\n", read(bc.ChordMm), read(bc.AcrossMm))
	})
}
