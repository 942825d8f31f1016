package main

import (
	"math"
	"strings"

	"centrepop/layout/grooves"
	"centrepop/layout/threads"
	"centrepop/layout/words"
	"centrepop/parts"
)

func undercut(c *call) error {
	form := c.flags.String("form", string(grooves.FormF), "E (cylinder) or F (cylinder and shoulder); for a diameter")
	changing := c.flags.Bool("changing", false, "for changing loads: a larger radius; for a diameter")
	inside := c.flags.Bool("inside", false, "an internal thread; for a thread")
	short := c.flags.Bool("short", false, "the short form; for a thread")
	if err := c.parse(1, -1); err != nil {
		return err
	}
	text := strings.Join(c.args, " ")
	t, threadErr := threads.Parse(text)
	if _, err := parts.ParseLength(text, parts.Millimetres); err == nil || threadErr != nil && !strings.ContainsAny(text, "MGRTUA#") {
		if *inside || *short {
			return badUse("--inside and --short are for a thread, such as M20")
		}
		return relief(c, text, grooves.Form(*form), *changing)
	}
	switch {
	case threadErr != nil:
		return threadErr
	case c.flags.Changed("form") || *changing:
		return badUse("--form and --changing are for a diameter, such as 40")
	case t.Lead != nil:
		return badUse("%s is the thread of a lead screw: DIN 76-1 has no undercut for it; two pitches wide and a little deeper than the thread is common practice", t.Designation)
	case t.Taper:
		return badUse("%s is a taper thread: it has no undercut", t.Designation)
	}
	return threadEnd(c, t, *inside, *short)
}

func relief(c *call, text string, form grooves.Form, changing bool) error {
	diameter := &lengthArg{name: "diameter", text: text, need: true}
	if err := c.read(diameter); err != nil {
		return err
	}
	r, err := grooves.ReliefFor(diameter.mm, form, changing)
	if err != nil {
		return err
	}
	if math.IsInf(r.UpToMm, 1) { // JSON has no infinity
		r.UpToMm = 0
	}
	return c.looked(&r, func() {
		c.line("undercut", "%s", r.Designation)
		c.line("cylinder", "%s deep (radial), %s wide, R%s, back to the cylinder at %s°", c.w.Said(r.DepthMm), c.w.Said(r.WidthMm), c.w.Size(r.RadiusMm), words.Trim(r.RunoutDeg, 0))
		if form == grooves.FormF {
			c.line("shoulder", "%s deep, as far as %s up from the floor", c.w.Said(r.FaceDepthMm), c.w.Said(r.FaceWidthMm))
		}
		if r.ChamferMm > 0 {
			c.line("counterpart", "its chamfer must be larger than %s", c.w.Said(r.ChamferMm))
		}
		c.line("source", "%s", r.Source)
	})
}

func threadEnd(c *call, t threads.Thread, inside, short bool) error {
	if t.TPI > 0 {
		c.w.Units = parts.Inches
	}
	e, err := grooves.ThreadEndFor(t.MajorMm, t.PitchMm, inside, short)
	if err != nil {
		return err
	}
	out := struct {
		Thread string `json:"thread"`
		grooves.ThreadEnd
	}{t.Designation, e}
	return c.looked(&out, func() {
		c.line("undercut", "%s, Ø %s (%s)", out.Thread, c.between(out.Floor.MinMm, out.Floor.MaxMm), out.Floor.Class)
		c.line("", "straight for %s at least, %s in all at most, R%s, flank %s°", c.w.Said(out.LeastMm), c.w.Said(out.MostMm), c.w.Size(out.RadiusMm), words.Trim(out.AngleDeg, 0))
		if !inside {
			c.line("without it", "run-out %s, last full turn %s from a shoulder", c.w.Said(out.RunoutMm), c.w.Said(out.ShoulderMm))
		}
		c.line("source", "%s; straight part, run-out and short form %s", out.Source, out.RestSource)
	})
}
