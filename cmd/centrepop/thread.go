package main

import (
	"fmt"
	"io"
	"reflect"
	"strings"

	"centrepop/layout/threads"
	"centrepop/layout/words"
	"centrepop/parts/geom"
)

// leadSizes is what is known of the thread of a lead screw beyond others.
type leadSizes struct {
	AngleDeg float64            `json:"angle_deg"`
	HelixDeg float64            `json:"helix_deg"`
	Starts   int                `json:"starts"`
	LeftHand bool               `json:"left_hand"`
	LeadMm   float64            `json:"lead_mm"`
	WireMm   float64            `json:"wire_mm"`
	OverMm   *[2]float64        `json:"over_wires_mm,omitempty"`
	Screw    threads.LeadLimits `json:"screw"`
	Nut      threads.LeadLimits `json:"nut"`
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

// threadSizes writes sizes of a thread: of an inch thread in inches with the millimetres
// behind.
type threadSizes struct{ inch bool }

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

// leadAnswer is that of a thread, nil for one that holds.
func leadAnswer(t threads.Thread) *leadSizes {
	l := t.Lead
	if l == nil {
		return nil
	}
	out := &leadSizes{AngleDeg: l.AngleDeg, HelixDeg: t.HelixDeg(), Starts: l.Starts, LeftHand: l.LeftHand, LeadMm: l.LeadMm, WireMm: t.BestWireMm(), Screw: l.Screw, Nut: l.Nut}
	tidy(reflect.ValueOf(out)) // over wires of that size
	if lo, hi, ok := t.OverWiresMm(out.WireMm); ok {
		out.OverMm = &[2]float64{lo, hi}
	}
	tidy(reflect.ValueOf(out.OverMm))
	return out
}

// lead writes them.
func (s threadSizes) lead(w io.Writer, l *leadSizes) {
	hand := words.Either(l.LeftHand, "left hand", "right hand")
	fmt.Fprintf(w, "%s, %s, %s, helix %s°, tool %s°\n", s.all("lead ", l.LeadMm), words.Counted(l.Starts, "start"), hand, words.Trim(l.HelixDeg, 2), words.Trim(l.AngleDeg, 0))
	for _, side := range []struct {
		name string
		threads.LeadLimits
	}{{"screw", l.Screw}, {"nut", l.Nut}} {
		major := words.Either(side.Major[1] == 0, s.all("major at least ", side.Major[0]), s.all("major least , most ", side.Major[0], side.Major[1]))
		fmt.Fprintf(w, "%s %s: %s; %s; %s; %s\n", side.name, side.Class, major, s.all("pitch diameter least , most ", side.Pitch[:]...),
			s.all("minor least , most ", side.Minor[:]...), s.all("tool flat , depth ", side.FlatMm, side.DepthMm))
	}
	if l.OverMm != nil {
		fmt.Fprintln(w, s.all("over three wires of , least , most ", l.WireMm, l.OverMm[0], l.OverMm[1]))
	}
}

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
