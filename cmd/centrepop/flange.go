package main

import (
	"fmt"
	"io"
	"math"
	"strings"

	"centrepop/layout"
	"centrepop/layout/fits"
	"centrepop/layout/measured"
	"centrepop/layout/threads"
	"centrepop/layout/words"
	"centrepop/parts"
)

// flangeFinding is something that keeps the part off the flange.
type flangeFinding struct {
	Code string `json:"code"` // hole-tight, spigot-tight, pattern-differs
	What string `json:"what"`
}

// flangeAnswer is what the command prints. Lengths are millimetres.
type flangeAnswer struct {
	Flange   string           `json:"flange,omitempty"`
	Measured *measured.Result `json:"measured"`
	Nearest  *measured.Match  `json:"nearest"` // null where none is near
	Part     string           `json:"part,omitempty"`
	Group    string           `json:"group,omitempty"`
	Bolt     string           `json:"bolt,omitempty"`
	Mating   *measured.Mating `json:"mating,omitempty"`
	Findings []flangeFinding  `json:"findings"`
}

// flange works out a measured flange and, with a job, whether a drawn group of
// clearance holes goes onto it. It ends with errFindings if it does not.
func flange(c *call) error {
	jobPath := c.flags.String("job", "", "job file with the part that goes onto the flange")
	partName := c.flags.String("part", "", "the part")
	groupName := c.flags.String("group", "", "its group of clearance holes")
	placeText := c.flags.String("place", "0.25", "how far a hole may be made from where it is drawn, in mm; 0.25 is what punching by a template holds")
	if err := c.parse(1, 1); err != nil {
		return err
	}
	if given := *jobPath != ""; given != (*partName != "") || given != (*groupName != "") {
		return badUse("--job, --part and --group belong together")
	}
	place, err := parts.ParseLength(*placeText, parts.Millimetres)
	if err != nil || place > 10 {
		return badUse("--place %s: a length up to 10 mm", *placeText)
	}
	file, err := readFlange(c.args[0])
	if err != nil {
		return err
	}
	result, err := measured.Fit(file.survey)
	if err != nil {
		return file.locate(err)
	}
	answer := flangeAnswer{Flange: file.name, Measured: result, Findings: []flangeFinding{}}
	if m, ok := result.Nearest(file.thread != ""); ok {
		answer.Nearest = &m
	}
	if *jobPath != "" {
		answer.Part, answer.Group = *partName, *groupName
		if err := answer.mate(file, *jobPath, place); err != nil {
			return err
		}
	}
	tidyFlange(&answer)
	if *c.json {
		err = c.print(answer)
	} else {
		flangeText(c.stdout, words.Writer{Units: file.units}, &answer)
	}
	if err == nil && len(answer.Findings) > 0 {
		return errFindings
	}
	return err
}

// mate puts the drawn group onto the flange.
func (a *flangeAnswer) mate(file *flangeFile, jobPath string, place float64) error {
	bolt := file.bolt
	if bolt == "" {
		bolt = file.thread
	}
	if bolt == "" && a.Nearest != nil {
		bolt = a.Nearest.Thread
	}
	if bolt == "" {
		file.source.fault(parts.Pos{}, "bolt: M12", "the file does not say the bolt, and no standard flange is near")
		return file.source.errs
	}
	thread, err := threads.Parse(bolt)
	if err != nil {
		file.source.fault(file.boltPos, "a thread such as M12", "the bolt %s is not known: %s", bolt, strings.TrimPrefix(err.Error(), "threads: "))
		return file.source.errs
	}
	a.Bolt = thread.Designation
	job, plan, err := load(jobPath)
	if err != nil {
		return err
	}
	if _, err := partNamed(plan, a.Part); err != nil {
		return err
	}
	drawn := measured.Drawn{BoltMm: thread.MajorMm, Tapped: file.thread != "", PlaceMm: place, Mirror: true}
	if err := drawnGroup(job, a.Part, a.Group, &drawn); err != nil {
		return err
	}
	if n := len(a.Measured.Holes); n != len(drawn.Holes) {
		a.find("pattern-differs", "the flange has %d holes and the group %s has %d", n, a.Group, len(drawn.Holes))
		return nil
	}
	if a.Mating, err = a.Measured.Together(drawn); err != nil {
		return err
	}
	if m := a.Mating; m.HasSpigot && m.SpigotClearanceMm < 0 {
		a.find("spigot-tight", "the spigot of %.3f mm may be %.3f mm too large for the smallest bore of %.3f mm", a.Measured.SpigotMm, -m.SpigotClearanceMm, drawn.BoreMinMm)
	}
	for _, p := range a.Mating.Pairs {
		if p.MarginMm >= 0 {
			continue
		}
		would := fmt.Sprintf("a drawn hole of %.2f mm would do", p.NeedsMm)
		if p.NeedsMm == 0 {
			would = fmt.Sprintf("the flange's own hole may be only %.2f mm", p.FlangeMin)
		}
		a.find("hole-tight", "hole %d of the flange and hole %d of the part: the bolt %s may not pass, by %.2f mm; %s", p.Flange, p.Drawn, a.Bolt, -p.MarginMm, would)
	}
	return nil
}

func (a *flangeAnswer) find(code, format string, args ...any) {
	a.Findings = append(a.Findings, flangeFinding{code, fmt.Sprintf(format, args...)})
}

// drawnGroup fills in the holes of a group, as seen on the face they are
// marked on, and the smallest bore.
func drawnGroup(job *parts.Job, part, group string, d *measured.Drawn) error {
	var p *parts.Part
	for _, q := range job.Parts {
		if q.Name.Value == part {
			p = q
		}
	}
	var h *parts.HoleGroup
	var known []string
	for i := range p.Holes {
		known = append(known, p.Holes[i].Name.Value)
		if p.Holes[i].Name.Value == group {
			h = &p.Holes[i]
		}
	}
	if h == nil {
		return badUse("--group %s: %s has the groups %s", group, part, strings.Join(known, ", "))
	}
	if h.Size.Make == parts.TappedHole {
		return parts.Errors{job.Fault(h.Size.Pos, "the holes of "+group+" are tapped", "clearance holes, to take the bolts of the flange")}
	}
	face, err := layout.FaceView(job, part, h.Face)
	if err != nil {
		return err
	}
	for _, g := range face.Groups {
		if g.Name != group || g.Marked != h.Face {
			continue
		}
		for _, hole := range face.Holes {
			if hole.N >= g.First && hole.N < g.First+g.Count {
				d.Holes = append(d.Holes, measured.DrawnHole{N: hole.N, XMm: hole.XMm, YMm: hole.YMm, MinMm: g.FinishedMm})
			}
		}
	}
	if p.Bore != nil {
		d.BoreMinMm, err = smallest(job, p.Bore.Size)
	}
	return err
}

// smallest is the lower limit of a bore; a light press has none of its own.
func smallest(job *parts.Job, s parts.Size) (float64, error) {
	mm := s.Nominal.Mm
	switch f := s.Fit; {
	case f.Class.Value != "":
		l, err := fits.Limit(mm, f.Class.Value)
		return l.MinMm, err
	case f.LightPress.Set():
		return 0, nil
	case len(f.Limits) == 2:
		return f.Limits[0].Mm, nil
	case f.PlusMinus.Set():
		return mm - f.PlusMinus.Mm, nil
	case job.Tolerance.Value != "":
		if pm, err := fits.General(mm, job.Tolerance.Value); err == nil {
			return mm - pm, nil
		}
	}
	return mm, nil
}

// tidyFlange rounds what is printed to a tenth of a micrometre.
func tidyFlange(a *flangeAnswer) {
	r := a.Measured
	for _, v := range []*float64{&r.PCDMm, &r.PCDUMm, &r.ChiSquare, &r.EqualOffMm, &r.SpigotMm, &r.SpigotUMm} {
		*v = fourDecimals(*v)
	}
	if c := r.Centred; c != nil {
		c.XMm, c.YMm, c.UMm = fourDecimals(c.XMm), fourDecimals(c.YMm), fourDecimals(c.UMm)
	}
	for i := range r.Holes {
		h := &r.Holes[i]
		for _, v := range []*float64{&h.AngleDeg, &h.AngleUDeg, &h.XMm, &h.YMm, &h.PlaceUMm, &h.DiameterMm, &h.DiaUMm, &h.OffEqualMm} {
			*v = fourDecimals(*v)
		}
	}
	for i := range r.Residuals {
		q := &r.Residuals[i]
		q.MeasuredMm, q.FittedMm, q.OffMm, q.Normalised = fourDecimals(q.MeasuredMm), fourDecimals(q.FittedMm), fourDecimals(q.OffMm), fourDecimals(q.Normalised)
	}
	if m := a.Nearest; m != nil {
		m.PitchOffMm, m.SpigotOffMm, m.HoleOffMm = fourDecimals(m.PitchOffMm), fourDecimals(m.SpigotOffMm), fourDecimals(m.HoleOffMm)
	}
	if m := a.Mating; m != nil {
		m.MarginMm, m.TurnDeg, m.SpigotClearanceMm = fourDecimals(m.MarginMm), fourDecimals(m.TurnDeg), fourDecimals(m.SpigotClearanceMm)
		for i := range m.Pairs {
			p := &m.Pairs[i]
			for _, v := range []*float64{&p.OffMm, &p.DoubtMm, &p.PlayMm, &p.MarginMm, &p.NeedsMm, &p.DrawnMm, &p.FlangeMin} {
				*v = fourDecimals(*v)
			}
		}
	}
}

// flangeText writes the answer for reading in a terminal.
func flangeText(w io.Writer, size words.Writer, a *flangeAnswer) {
	r := a.Measured
	name := a.Flange
	if name == "" {
		name = "flange"
	}
	k := measured.CoverageFactor
	fmt.Fprintf(w, "%s: pitch circle %.3f ± %.3f mm", name, r.PCDMm, k*r.PCDUMm)
	if size.Units == parts.Inches {
		fmt.Fprintf(w, " (%s)", size.Size(r.PCDMm))
	}
	fmt.Fprintf(w, ", %d holes\n", len(r.Holes))
	if r.SpigotMm > 0 {
		fmt.Fprintf(w, "spigot %.3f ± %.3f mm", r.SpigotMm, k*r.SpigotUMm)
		if c := r.Centred; c != nil {
			fmt.Fprintf(w, ", its centre at %.3f, %.3f ± %.3f mm from that of the pitch circle", c.XMm, c.YMm, k*c.UMm)
		}
		fmt.Fprintln(w)
	}
	fmt.Fprintln(w, "hole   clock angle°           x         y  (mm)    diameter   from equal spacing")
	for _, h := range r.Holes {
		fmt.Fprintf(w, "%4d  %9.3f ±%.3f  %9.3f %9.3f  %9.3f ±%.3f   %+.3f\n", h.N, h.AngleDeg, k*h.AngleUDeg, h.XMm, h.YMm, h.DiameterMm, k*h.DiaUMm, h.OffEqualMm)
	}
	if r.Equal {
		fmt.Fprintf(w, "equally spaced, as far as the readings tell (hole %d is furthest off: %+.3f mm)\n", r.EqualHole, r.EqualOffMm)
	} else {
		fmt.Fprintf(w, "not equally spaced: hole %d is %+.3f mm off\n", r.EqualHole, r.EqualOffMm)
	}
	if r.Redundancy == 0 {
		fmt.Fprintln(w, "no reading checks another: a wrong one would not show")
	} else {
		fmt.Fprintf(w, "readings more than needed: %d; measured less fitted:\n", r.Redundancy)
		for _, q := range r.Residuals {
			fmt.Fprintf(w, "  %-20s %9.3f  %+.3f\n", q.Reading, q.MeasuredMm, q.OffMm)
		}
	}
	fmt.Fprintf(w, "(± is the %s)\n", r.Coverage)
	switch m := a.Nearest; {
	case m == nil:
		fmt.Fprintln(w, "no standard motor flange is near")
	case m.Matches:
		fmt.Fprintf(w, "this is %s: pitch circle %g (%+.2f), spigot %g %s, bolt %s (%s)\n", m.Name, m.PitchMm, m.PitchOffMm, m.SpigotMm, m.SpigotClass, m.Thread, m.Source)
	default:
		fmt.Fprintf(w, "nearest is %s (pitch circle %g, spigot %g %s, %d holes), but %s (%s)\n", m.Name, m.PitchMm, m.SpigotMm, m.SpigotClass, m.Standard.Holes, strings.Join(m.Against, "; "), m.Source)
	}
	if a.Part == "" {
		return
	}
	if m := a.Mating; m != nil {
		fmt.Fprintf(w, "%s, group %s, bolt %s, in the worst case:\n", a.Part, a.Group, a.Bolt)
		if m.HasSpigot {
			fmt.Fprintf(w, "  the spigot has at least %.3f mm in the bore", m.SpigotClearanceMm)
			if m.Concentric {
				fmt.Fprint(w, "; it is taken to be in the middle of the holes, as nothing was measured to it")
			}
			fmt.Fprintln(w)
		}
		if m.Mirrored {
			fmt.Fprintln(w, "  only with the flange against the other face than the holes are marked on")
		}
		if math.Abs(m.TurnDeg) >= 0.05 {
			fmt.Fprintf(w, "  with the flange turned %+.3f° clockwise\n", m.TurnDeg)
		}
		fmt.Fprintln(w, "  flange  part     off   doubt    play  margin   hole needed")
		for _, p := range m.Pairs {
			fmt.Fprintf(w, "  %6d  %4d  %6.3f  %6.3f  %6.3f  %+6.3f   %s\n", p.Flange, p.Drawn, p.OffMm, p.DoubtMm, p.PlayMm, p.MarginMm, size.Dia(math.Ceil(p.NeedsMm*100)/100))
		}
		if m.Goes {
			fmt.Fprintf(w, "  it goes together, with %.2f mm to spare at the tightest bolt\n", m.MarginMm)
		}
	}
	for _, f := range a.Findings {
		fmt.Fprintf(w, "%s: %s\n", f.Code, f.What)
	}
}
