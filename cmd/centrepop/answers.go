package main

import (
	"fmt"
	"strings"

	"centrepop/layout/fits"
	"centrepop/layout/part"
	"centrepop/layout/threads"
	"centrepop/layout/words"
	"centrepop/parts"
	"centrepop/parts/geom"
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

// threadAnswer is what is known of a thread, in mm.
type threadAnswer struct {
	Designation     string             `json:"designation"`
	PitchMm         float64            `json:"pitch_mm"`
	TPI             float64            `json:"tpi,omitempty"`
	MajorMm         float64            `json:"major_mm"`
	PitchDiameterMm float64            `json:"pitch_diameter_mm"`
	MinorMm         float64            `json:"minor_mm"`
	Class           string             `json:"class,omitempty"`
	PitchMinMm      float64            `json:"pitch_diameter_min_mm,omitempty"`
	PitchMaxMm      float64            `json:"pitch_diameter_max_mm,omitempty"`
	TapDrillMm      float64            `json:"tap_drill_mm,omitempty"`
	TapDrill        string             `json:"tap_drill,omitempty"`
	Clearance       *threads.Clearance `json:"clearance_mm,omitempty"`
	Lead            *leadSizes         `json:"lead,omitempty"`
	GaugeMm         float64            `json:"gauge_mm,omitempty"`
	UsefulMm        float64            `json:"useful_mm,omitempty"`
	WrenchMm        float64            `json:"wrench_mm,omitempty"`
	Source          string             `json:"source"`
	Note            string             `json:"note,omitempty"`
}

func thread(c *call) error {
	if err := c.parse(1, -1); err != nil {
		return err
	}
	t, err := threads.Parse(strings.Join(c.args, " "))
	if err != nil {
		return err
	}
	out := threadAnswer{
		Designation: t.Designation, PitchMm: t.PitchMm, TPI: t.TPI, MajorMm: t.MajorMm, Class: t.Class,
		PitchDiameterMm: t.PitchDiameterMm, MinorMm: t.MinorMm, TapDrillMm: t.TapDrillMm, TapDrill: t.TapDrillName,
		GaugeMm: t.GaugeLengthMm, UsefulMm: t.UsefulLengthMm, WrenchMm: t.WrenchMm, Source: t.Source.String(), Note: t.Note,
		Clearance: t.Clearance, Lead: leadAnswer(t),
	}
	out.PitchMinMm, out.PitchMaxMm = t.PitchLimitsMm()
	return c.answer(out, func() {
		s := threadSizes{inch: strings.HasPrefix(t.Series, "UN") || t.Series == threads.PipeNPT || t.Series == threads.Acme}
		fmt.Fprintf(c.stdout, "%s   (%s)\npitch %s", t.Designation, t.Source, s.all("", t.PitchMm))
		if t.TPI > 0 {
			fmt.Fprintf(c.stdout, " (%g per inch)", t.TPI)
		}
		fmt.Fprintf(c.stdout, "\n%s\n", s.all("major , pitch diameter , minor ", t.MajorMm, t.PitchDiameterMm, t.MinorMm))
		if t.Lead != nil {
			s.lead(c.stdout, out.Lead)
		} else if t.Class != "" {
			fmt.Fprintln(c.stdout, s.all("class "+t.Class+" pitch diameter least , most ", out.PitchMinMm, out.PitchMaxMm))
		}
		if t.TapDrillMm > 0 {
			fmt.Fprintf(c.stdout, "tap drill %s %s\n", s.all("", t.TapDrillMm), t.TapDrillName)
		}
		if cl := out.Clearance; cl != nil {
			names := words.Either(s.inch, "clearance hole close , normal , loose ", "clearance hole fine , medium , coarse ") // ASME B18.2.8
			fmt.Fprintln(c.stdout, s.all(names, cl.FineMm, cl.MediumMm, cl.CoarseMm))
		}
		if t.GaugeLengthMm > 0 {
			fmt.Fprintln(c.stdout, s.all("gauge length , useful length ", t.GaugeLengthMm, t.UsefulLengthMm))
		}
		if t.WrenchMm > 0 {
			fmt.Fprintf(c.stdout, "goes in %s by hand, %s more by wrench\n", s.all("", t.GaugeLengthMm), s.all("", t.WrenchMm))
		}
		if t.Note != "" {
			fmt.Fprintf(c.stdout, "note: %s\n", t.Note)
		}
	})
}

// threadSizes writes sizes of a thread: of an inch thread in inches with the millimetres
// behind.
type threadSizes struct{ inch bool }

// all writes the sizes behind their names, which end at commas, and one unit for all.
func (s threadSizes) all(names string, mm ...float64) string {
	in, metric := "", ""
	for i, name := range strings.Split(names, ",") {
		sep := words.When(i > 0, ",")
		in += sep + name + words.Trim(mm[i]/geom.MmPerInch, 4)
		if metric += sep + " "; !s.inch {
			metric += strings.TrimPrefix(name, " ")
		}
		metric += words.Trim(mm[i], 4)
	}
	metric = strings.TrimSpace(metric) + " mm"
	return words.Either(s.inch, in+" in ("+metric+")", metric)
}
