package main

import (
	"centrepop/layout/tapers"
	"centrepop/layout/words"
	"centrepop/parts/seq"
)

type taperJSON struct {
	LargeMm     float64  `json:"large_mm"`
	SmallMm     float64  `json:"small_mm"`
	LengthMm    float64  `json:"length_mm"`
	IncludedDeg float64  `json:"included_deg"`
	TopSlideDeg float64  `json:"top_slide_deg"`
	Ratio       float64  `json:"ratio"` // x of 1:x
	FlankMm     float64  `json:"flank_mm"`
	AtMm        *float64 `json:"diameter_at_mm,omitempty"`
	OverPinsMm  *float64 `json:"over_pins_mm,omitempty"`
}

func taper(c *call) error {
	large := c.length("large", "diameter of the large end", true)
	length := c.length("length", "length along the axis", true)
	small := c.length("small", "diameter of the small end; or --ratio or --angle", false)
	ratio := c.flags.Float64("ratio", 0, "x of a taper 1:x")
	angle := c.flags.Float64("angle", 0, "included angle, degrees")
	at := c.length("at", "plane to tell the diameter in, from the large end", false)
	pin := c.length("pins", "diameter of two pins to measure over, the taper standing on its small end", false)
	stack := c.length("stack", "height of the gauge blocks under the pins", false)
	if err := c.parse(0, 0); err != nil {
		return err
	}
	if given := seq.Keep([]string{"small", "ratio", "angle"}, c.flags.Changed); len(given) != 1 {
		return badUse("one of --small, --ratio and --angle is needed")
	}
	if stack.given() && !pin.given() {
		return badUse("--stack goes with --pins")
	}
	var t tapers.Taper
	var err error
	switch {
	case c.flags.Changed("ratio"):
		t, err = tapers.ByRatio(large.mm, *ratio, length.mm)
	case c.flags.Changed("angle"):
		t, err = tapers.ByAngle(large.mm, *angle, length.mm)
	default:
		t, err = tapers.New(large.mm, small.mm, length.mm)
	}
	if err != nil {
		return err
	}
	out := taperJSON{
		LargeMm: t.LargeMm, SmallMm: t.SmallMm, LengthMm: t.LengthMm, IncludedDeg: t.IncludedDeg(),
		TopSlideDeg: t.TopSlideDeg(), Ratio: t.Ratio(), FlankMm: t.FlankMm(),
	}
	if err := out.measure(t, at, pin, stack); err != nil {
		return err
	}
	return c.looked(&out, func() { printTaper(c, out, at, pin, stack) })
}

func (out *taperJSON) measure(t tapers.Taper, at, pin, stack *lengthArg) error {
	if at.given() {
		d, err := t.DiameterMm(at.mm)
		if err != nil {
			return err
		}
		out.AtMm = &d
	}
	if pin.given() {
		m, err := t.OverPinsMm(pin.mm, stack.mm, true)
		if err != nil {
			return err
		}
		out.OverPinsMm = &m
	}
	return nil
}

func printTaper(c *call, t taperJSON, at, pin, stack *lengthArg) {
	c.line("taper", "Ø%s to Ø%s over %s: 1:%s, included angle %s°", c.w.Size(t.LargeMm), c.w.Size(t.SmallMm), c.w.Setting(t.LengthMm), words.Trim(t.Ratio, 4), words.Trim(t.IncludedDeg, 4))
	c.line("top slide", "%s° from the axis, travel %s along the flank", words.Trim(t.TopSlideDeg, 3), c.w.Setting(t.FlankMm))
	if t.AtMm != nil {
		c.line("gauge plane", "Ø%s at %s from the large end", c.w.Size(*t.AtMm), c.w.Setting(at.mm))
	}
	if t.OverPinsMm != nil {
		c.line("over pins", "%s over pins of %s on blocks of %s, standing on the small end", c.w.Setting(*t.OverPinsMm), c.w.Setting(pin.mm), c.w.Setting(stack.mm))
	}
}
