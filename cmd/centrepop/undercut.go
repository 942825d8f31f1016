package main

import (
	"math"
	"strings"

	"centrepop/layout/fits"
	"centrepop/layout/grooves"
	"centrepop/layout/threads"
	"centrepop/layout/words"
	"centrepop/parts"
)

// reliefJSON is the answer of the undercut command for a shoulder.
type reliefJSON struct {
	Designation string  `json:"designation"`
	RadiusMm    float64 `json:"radius_mm"`
	DepthMm     float64 `json:"depth_mm"`
	WidthMm     float64 `json:"width_mm"`
	FaceDepthMm float64 `json:"face_depth_mm,omitempty"`
	FaceWidthMm float64 `json:"face_width_mm,omitempty"`
	RunoutDeg   float64 `json:"runout_deg"`
	ChamferMm   float64 `json:"mate_chamfer_mm"` // the mate's chamfer must be larger
	OverMm      float64 `json:"over_mm"`
	UpToMm      float64 `json:"up_to_mm,omitempty"`
	Source      string  `json:"source"`
}

// threadEndJSON is the answer of the undercut command for a thread.
type threadEndJSON struct {
	Thread     string       `json:"thread"`
	FloorMm    float64      `json:"floor_mm"`
	Floor      *fits.Limits `json:"floor"`
	LeastMm    float64      `json:"straight_mm"` // at least
	MostMm     float64      `json:"whole_mm"`    // at most
	RadiusMm   float64      `json:"radius_mm"`
	AngleDeg   float64      `json:"angle_deg"`
	RunoutMm   float64      `json:"runout_mm,omitempty"`
	ShoulderMm float64      `json:"shoulder_mm,omitempty"`
	Source     string       `json:"source"`
	RestSource string       `json:"rest_source"`
}

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
	out := reliefJSON{
		Designation: r.Designation, RadiusMm: r.RadiusMm, DepthMm: r.DepthMm, WidthMm: r.WidthMm, FaceDepthMm: r.FaceDepthMm, FaceWidthMm: r.FaceWidthMm,
		RunoutDeg: r.RunoutDeg, ChamferMm: r.ChamferMm, OverMm: r.OverMm, Source: r.Source.String(),
	}
	if !math.IsInf(r.UpToMm, 1) { // JSON has no infinity
		out.UpToMm = r.UpToMm
	}
	return c.answer(out, func() {
		c.line("undercut", "%s", out.Designation)
		c.line("cylinder", "%s deep (radial), %s wide, R%s, back to the cylinder at %s°", c.w.Said(out.DepthMm), c.w.Said(out.WidthMm), c.w.Size(out.RadiusMm), words.Trim(out.RunoutDeg, 0))
		if form == grooves.FormF {
			c.line("shoulder", "%s deep, as far as %s up from the floor", c.w.Said(out.FaceDepthMm), c.w.Said(out.FaceWidthMm))
		}
		if out.ChamferMm > 0 {
			c.line("counterpart", "its chamfer must be larger than %s", c.w.Said(out.ChamferMm))
		}
		c.line("source", "%s", out.Source)
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
	floor, err := e.Floor()
	if err != nil {
		return err
	}
	out := threadEndJSON{
		Thread: t.Designation, FloorMm: round4(e.FloorMm), Floor: &floor, LeastMm: e.LeastMm, MostMm: e.MostMm, RadiusMm: e.RadiusMm, AngleDeg: e.AngleDeg,
		RunoutMm: e.RunoutMm, ShoulderMm: e.ShoulderMm, Source: e.Source.String(), RestSource: e.RestSource.String(),
	}
	return c.answer(out, func() {
		c.line("undercut", "%s, Ø %s (%s)", out.Thread, c.between(out.Floor.MinMm, out.Floor.MaxMm), out.Floor.Class)
		c.line("", "straight for %s at least, %s in all at most, R%s, flank %s°", c.w.Said(out.LeastMm), c.w.Said(out.MostMm), c.w.Size(out.RadiusMm), words.Trim(out.AngleDeg, 0))
		if !inside {
			c.line("without it", "run-out %s, last full turn %s from a shoulder", c.w.Said(out.RunoutMm), c.w.Said(out.ShoulderMm))
		}
		c.line("source", "%s; straight part, run-out and short form %s", out.Source, out.RestSource)
	})
}
