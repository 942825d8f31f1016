package main

import (
	"centrepop/layout/grooves"
	"centrepop/layout/lookup"
)

func centre(c *call) error {
	form := c.flags.String("form", string(grooves.CentreA), "A (plain), B (protected) or R (curved)")
	drill := c.length("drill", "diameter of the centre drill's pilot, instead of a part diameter", false)
	diameter := c.first("part diameter")
	if err := c.parse(0, 1); err != nil {
		return err
	}
	if (len(c.args) == 1) == (drill.given()) {
		return badUse("a part diameter, or --drill, is needed")
	}
	pilot, choice, err := drill.mm, lookup.Source{}, error(nil)
	if !drill.given() {
		if pilot, choice, err = grooves.PilotFor(diameter.mm); err != nil {
			return err
		}
	}
	h, err := grooves.CentreFor(pilot, grooves.CentreForm(*form))
	if err != nil {
		return err
	}
	out := struct {
		grooves.Centre
		Choice lookup.Source `json:"choice,omitzero"`
	}{h, choice}
	return c.looked(&out, func() {
		c.line("centre hole", "%s", out.Designation)
		c.line("mouth", "Ø%s at the face", c.w.Said(out.MouthMm))
		c.line("pilot", "Ø%s, %s below the cone", c.w.Said(out.PilotMm), c.w.Said(out.PilotDepth))
		if out.ConeDepthMm > 0 {
			c.line("cone", "Ø%s at 60°, the pilot begins %s from the face", c.w.Said(out.ConeMm), c.withUnit(out.ConeDepthMm))
		}
		c.line("source", "%s", out.Source)
		if choice.Name != "" {
			c.line("size", "%s", out.Choice)
		}
	})
}
