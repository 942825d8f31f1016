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
	large := c.flags.String("large", "", "diameter of the large end")
	length := c.flags.String("length", "", "length along the axis")
	small := c.flags.String("small", "", "diameter of the small end; or --ratio or --angle")
	ratio := c.flags.Float64("ratio", 0, "x of a taper 1:x")
	angle := c.flags.Float64("angle", 0, "included angle, degrees")
	at := c.flags.String("at", "", "plane to tell the diameter in, from the large end")
	pin := c.flags.String("pins", "", "diameter of two pins to measure over, the taper standing on its small end")
	stack := c.flags.String("stack", "", "height of the gauge blocks under the pins")
	if err := c.parse(0, 0); err != nil {
		return err
	}
	mm, w, err := readLengths(lengthArg{"--large", *large, true}, lengthArg{"--length", *length, true}, lengthArg{"--small", *small, false},
		lengthArg{"--at", *at, false}, lengthArg{"--pins", *pin, false}, lengthArg{"--stack", *stack, false})
	if err != nil {
		return err
	}
	if given := seq.Keep([]string{"small", "ratio", "angle"}, c.flags.Changed); len(given) != 1 {
		return badUse("one of --small, --ratio and --angle is needed")
	}
	if *stack != "" && *pin == "" {
		return badUse("--stack goes with --pins")
	}
	var t tapers.Taper
	switch {
	case c.flags.Changed("ratio"):
		t, err = tapers.ByRatio(mm["--large"], *ratio, mm["--length"])
	case c.flags.Changed("angle"):
		t, err = tapers.ByAngle(mm["--large"], *angle, mm["--length"])
	default:
		t, err = tapers.New(mm["--large"], mm["--small"], mm["--length"])
	}
	if err != nil {
		return wordRefusal(err, w)
	}
	out := taperJSON{
		LargeMm: round4(t.LargeMm), SmallMm: round4(t.SmallMm), LengthMm: round4(t.LengthMm), IncludedDeg: round4(t.IncludedDeg()),
		TopSlideDeg: round4(t.TopSlideDeg()), Ratio: round4(t.Ratio()), FlankMm: round4(t.FlankMm()),
	}
	if err := measureTaper(t, mm, &out); err != nil {
		return wordRefusal(err, w)
	}
	return c.answer(out, func() { printTaper(c, w, mm, out) })
}

func measureTaper(t tapers.Taper, mm map[string]float64, out *taperJSON) error {
	if z, given := mm["--at"]; given {
		d, err := t.DiameterMm(z)
		if err != nil {
			return err
		}
		d = round4(d)
		out.AtMm = &d
	}
	if p, given := mm["--pins"]; given {
		m, err := t.OverPinsMm(p, mm["--stack"], true)
		if err != nil {
			return err
		}
		m = round4(m)
		out.OverPinsMm = &m
	}
	return nil
}

func printTaper(c *call, w words.Writer, mm map[string]float64, t taperJSON) {
	c.line("taper", "Ø%s to Ø%s over %s: 1:%s, included angle %s°", w.Size(t.LargeMm), w.Size(t.SmallMm), w.Setting(t.LengthMm), words.Trim(t.Ratio, 4), words.Trim(t.IncludedDeg, 4))
	c.line("top slide", "%s° from the axis, travel %s along the flank", words.Trim(t.TopSlideDeg, 3), w.Setting(t.FlankMm))
	if t.AtMm != nil {
		c.line("gauge plane", "Ø%s at %s from the large end", w.Size(*t.AtMm), w.Setting(mm["--at"]))
	}
	if t.OverPinsMm != nil {
		c.line("over pins", "%s over pins of %s on blocks of %s, standing on the small end", w.Setting(*t.OverPinsMm), w.Setting(mm["--pins"]), w.Setting(mm["--stack"]))
	}
}
