package main

import (
	"centrepop/layout/bend"
	"centrepop/layout/words"
	"centrepop/parts"
	"centrepop/parts/seq"
)

type bendJSON struct {
	bend.Result
	MeasuredTo string     `json:"legs_measured_to"`
	ReliefMm   [2]float64 `json:"relief_mm"` // width, depth from the outside of the bend
	*bend.Die
	MinFlangeMm float64   `json:"min_flange_mm,omitempty"`
	BlankMm     float64   `json:"blank_mm,omitempty"`
	BendLinesMm []float64 `json:"bend_lines_mm,omitempty"`
	Source      string    `json:"source"`
}

func bendCmd(c *call) error {
	thickness := c.length("thickness", "thickness of the sheet", true)
	radius := c.length("radius", "inside radius", true)
	angle := c.flags.Float64("angle", 90, "degrees the sheet turns through: 90 is square")
	k := c.flags.Float64("k", 0, "neutral line from the inside, as a share of the thickness; 0 takes DIN 6935")
	legs := c.flags.StringSlice("legs", nil, "outside lengths of the legs of a strip with this bend between them, such as 40,100,40")
	if err := c.parse(0, 0); err != nil {
		return err
	}
	switch {
	case c.flags.Changed("k") && *k == 0:
		return badUse("--k is 0: it must be above 0 and at most 1")
	case *k == 0 && radius.mm < bend.MinRatio*thickness.mm:
		return badUse("--radius %s is below a tenth of the thickness, where DIN 6935 gives no k: give --k", radius.text)
	}
	b := bend.Bend{ThicknessMm: thickness.mm, InsideRadiusMm: radius.mm, AngleDeg: *angle, K: *k}
	out, err := workBend(b, c.w)
	if err != nil {
		return err
	}
	if len(*legs) > 0 {
		if err := workStrip(b, *legs, out); err != nil {
			return err
		}
	}
	return c.looked(out, func() { printBend(c, out) })
}

func workBend(b bend.Bend, w words.Writer) (*bendJSON, error) {
	r, err := b.Work()
	if err != nil {
		return nil, err
	}
	width, depth, err := b.Relief()
	if err != nil {
		return nil, err
	}
	out := &bendJSON{Result: r, MeasuredTo: "outside corner", ReliefMm: [2]float64{width, depth}, Source: "DIN 6935"}
	if r.ToTangent {
		out.MeasuredTo = "outside tangent"
	}
	if b.K != 0 {
		out.Source = "K as given"
	}
	// A sheet too thick for the dies sold has no shortest flange to tell.
	if die, err := bend.DieFor(b.ThicknessMm, w.Units == parts.Inches); err == nil {
		if out.MinFlangeMm, err = die.MinFlangeMm(b.AngleDeg); err != nil {
			return nil, err
		}
		out.Die = &die
	}
	return out, nil
}

// workStrip adds the blank of a strip whose bends are all alike.
func workStrip(b bend.Bend, legs []string, out *bendJSON) error {
	chain := bend.Chain{}
	for i, text := range legs {
		leg := &lengthArg{name: "--legs", text: text, need: true}
		if err := leg.read(parts.Millimetres); err != nil {
			return err
		}
		chain.LegsMm = append(chain.LegsMm, leg.mm)
		if i > 0 {
			chain.Bends = append(chain.Bends, b)
		}
	}
	flat, err := chain.Blank()
	if err != nil {
		return err
	}
	out.BlankMm = flat.LengthMm
	out.BendLinesMm = seq.Map(flat.Folds, func(f bend.Fold) float64 { return f.LineMm })
	return nil
}

func printBend(c *call, out *bendJSON) {
	c.line("K", "%s of the thickness (%s)", words.Trim(out.K, 3), out.Source)
	c.line("allowance", "%s along the neutral line", c.w.Setting(out.AllowanceMm))
	c.line("deduction", "%s off the sum of both legs, measured to the %s", c.w.Setting(out.DeductionMm), out.MeasuredTo)
	if out.Die != nil {
		c.line("die", "V %s for air bending leaves a radius of about %s in mild steel; shortest flange %s outside", c.withUnit(out.OpeningMm), c.withUnit(out.RadiusMm), c.withUnit(out.MinFlangeMm))
	}
	c.line("relief", "at least %s wide and %s deep from the outside of the bend (common practice, no source)", c.w.Setting(out.ReliefMm[0]), c.w.Setting(out.ReliefMm[1]))
	if out.BlankMm > 0 {
		c.line("blank", "%s long", c.w.Setting(out.BlankMm))
	}
	if len(out.BendLinesMm) > 0 {
		c.line("bend lines", "%s from one edge", c.series(out.BendLinesMm)+c.unit())
	}
	c.line("note", "springback is not computed: fold a test strip of the same sheet and measure it")
}
