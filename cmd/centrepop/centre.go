package main

import (
	"centrepop/layout/grooves"
	"centrepop/layout/lookup"
)

type centreJSON struct {
	Designation  string  `json:"designation"`
	PilotMm      float64 `json:"pilot_mm"`
	MouthMm      float64 `json:"mouth_mm"`
	ConeMm       float64 `json:"cone_mm"`
	PilotDepthMm float64 `json:"pilot_depth_mm"`
	ConeDepthMm  float64 `json:"cone_depth_mm,omitempty"`
	Source       string  `json:"source"`
	Choice       string  `json:"choice,omitempty"`
}

func centre(c *call) error {
	form := c.flags.String("form", string(grooves.CentreA), "A (plain), B (protected) or R (curved)")
	drill := c.flags.String("drill", "", "diameter of the centre drill's pilot, instead of a part diameter")
	if err := c.parse(0, 1); err != nil {
		return err
	}
	if (len(c.args) == 1) == (*drill != "") {
		return badUse("a part diameter, or --drill, is needed")
	}
	args := []lengthArg{{"--drill", *drill, false}}
	if len(c.args) == 1 {
		args = append(args, lengthArg{"part diameter", c.args[0], true})
	}
	mm, w, err := readLengths(args...)
	if err != nil {
		return err
	}
	pilot, choice := mm["--drill"], lookup.Source{}
	if *drill == "" {
		if pilot, choice, err = grooves.PilotFor(mm["part diameter"]); err != nil {
			return wordRefusal(err, w)
		}
	}
	h, err := grooves.CentreFor(pilot, grooves.CentreForm(*form))
	if err != nil {
		return wordRefusal(err, w)
	}
	out := centreJSON{
		Designation: h.Designation, PilotMm: h.PilotMm, MouthMm: h.MouthMm, ConeMm: h.ConeMm, PilotDepthMm: h.PilotDepth,
		ConeDepthMm: round4(h.ConeDepthMm), Source: h.Source.String(),
	}
	if choice.Name != "" {
		out.Choice = choice.String()
	}
	return c.answer(out, func() {
		c.line("centre hole", "%s", out.Designation)
		c.line("mouth", "Ø%s at the face", w.Said(out.MouthMm))
		c.line("pilot", "Ø%s, %s below the cone", w.Said(out.PilotMm), w.Said(out.PilotDepthMm))
		if out.ConeDepthMm > 0 {
			c.line("cone", "Ø%s at 60°, the pilot begins %s from the face", w.Said(out.ConeMm), withUnit(w, out.ConeDepthMm))
		}
		c.line("source", "%s", out.Source)
		if out.Choice != "" {
			c.line("size", "%s", out.Choice)
		}
	})
}
