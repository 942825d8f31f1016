package main

import (
	"errors"
	"strings"

	"centrepop/layout/grooves"
	"centrepop/layout/words"
	"centrepop/parts/seq"
)

type oringJSON struct {
	grooves.ORing
	grooves.Gland
}

func oring(c *call) error {
	bore := c.length("bore", "groove on a piston sealing against a bore of this diameter", false)
	rod := c.length("rod", "groove in a bore sealing against a rod of this diameter", false)
	face := c.flags.String("face", "", "groove in a face with the pressure inside or outside the ring")
	moving := c.flags.Bool("moving", false, "the piston or rod slides")
	if err := c.parse(1, 1); err != nil {
		return err
	}
	insideText, sectionText, two := strings.Cut(c.args[0], "x")
	if !two {
		return badUse("%s: an O-ring is written as inside diameter x section, such as 50x3.53", c.args[0])
	}
	inside, section := &lengthArg{name: "inside diameter", text: insideText, need: true}, &lengthArg{name: "section", text: sectionText, need: true}
	if err := c.read(inside, section); err != nil {
		return err
	}
	seat, diameter, err := oringSeat(bore, rod, *face)
	if err != nil {
		return err
	}
	if *moving && *face != "" {
		return badUse("--moving goes with --bore or --rod")
	}
	o := grooves.ORing{InsideMm: inside.mm, SectionMm: section.mm}
	g, err := o.In(seat, diameter, *moving)
	var gap *grooves.SectionError
	if errors.As(err, &gap) {
		return badUse("no groove is tabled for a section of %s, only for %s%s", c.w.Said(gap.SectionMm), c.series(gap.KnownMm), c.unit())
	}
	if err != nil {
		return err
	}
	out := oringJSON{o, g}
	return c.looked(&out, func() { printORing(c, out) })
}

// oringSeat reads which of the three seats is meant.
func oringSeat(bore, rod *lengthArg, face string) (grooves.Seat, float64, error) {
	switch given := seq.Keep([]string{bore.text, rod.text, face}, func(text string) bool { return text != "" }); {
	case len(given) != 1:
		return "", 0, badUse("one of --bore, --rod and --face is needed")
	case bore.given():
		return grooves.Piston, bore.mm, nil
	case rod.given():
		return grooves.Rod, rod.mm, nil
	case face != "inside" && face != "outside":
		return "", 0, badUse("--face %s: it must be inside or outside", face)
	}
	return grooves.Seat("face-" + face), 0, nil
}

func printORing(c *call, g oringJSON) {
	c.line("O-ring", "%s × %s ± %s", c.w.Size(g.InsideMm), c.w.Size(g.SectionMm), c.w.Said(g.SectionTolMm))
	c.line("groove", "deep %s", c.between(g.DepthMm, g.DepthMm+g.DeeperMm))
	c.line("", "wide %s, corners R%s at most", c.between(g.WidthMm, g.WidthMm+g.WiderMm), c.w.Size(g.RadiusMm))
	if g.FloorMm > 0 {
		c.line("", "floor Ø%s", c.withUnit(g.FloorMm))
	} else {
		c.line("", "walls Ø%s and Ø%s", c.withUnit(g.InnerMm), c.withUnit(g.OuterMm))
	}
	percent := func(share float64) string { return words.Trim(share*100, 1) + " %" }
	c.line("ring", "squeezed %s to %s, fills %s, stretched %s", percent(g.Squeeze.Min), percent(g.Squeeze.Max), percent(g.Fill), percent(g.Stretch))
	if g.LeadInMm > 0 {
		c.line("lead-in", "%s long at %s°, edges broken", c.w.Said(g.LeadInMm), words.Trim(g.LeadInDeg, 0))
	}
	for _, p := range g.Problems {
		c.line("caution", "%s %s, where %s to %s is common",
			map[grooves.Code]string{grooves.StretchHigh: "stretched by", grooves.StretchLow: "stretched by", grooves.FillHigh: "the groove is filled to"}[p.Code],
			percent(p.Value), percent(p.Least), percent(p.Most))
	}
	c.line("source", "%s", g.Source)
}
