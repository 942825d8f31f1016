package main

import (
	"cmp"
	"errors"
	"fmt"
	"io/fs"
	"reflect"
	"strings"

	"centrepop/layout/fits"
	"centrepop/layout/measured"
	"centrepop/layout/part"
	"centrepop/layout/threads"
	"centrepop/layout/words"
	"centrepop/parts"
	"centrepop/parts/read"
	"centrepop/parts/seq"
)

// The codes of a flangeFinding.
const (
	holeTight       = "hole-tight"
	spigotTight     = "spigot-tight"
	spigotUndecided = "spigot-undecided" // and no fit that is meant to be so
	patternDiffers  = "pattern-differs"
)

// flangeFinding is something that keeps the part off the flange. Hole and
// Drawn are the hole's numbers on the flange and on the part.
type flangeFinding struct {
	Code  string  `json:"code"`
	What  string  `json:"what"`
	Hole  int     `json:"flange_hole,omitempty"`
	Drawn int     `json:"drawn_hole,omitempty"`
	ByMm  float64 `json:"by_mm"` // how much too tight, in the worst case
}

// flangeAnswer is what the command prints. Lengths are millimetres.
type flangeAnswer struct {
	Flange     string           `json:"flange,omitempty"`
	Measured   *measured.Result `json:"measured"`
	Nearest    *measured.Match  `json:"nearest"` // null where none is near
	Part       string           `json:"part,omitempty"`
	Group      string           `json:"group,omitempty"`
	Bolt       string           `json:"bolt,omitempty"`
	Mating     *measured.Mating `json:"mating,omitempty"`
	Transition bool             `json:"spigot_meant_as_transition"`
	Findings   []flangeFinding  `json:"findings"`
}

// flange works out a measured flange and, with a job, whether a drawn group of
// clearance holes goes onto it. It ends with errFindings if it does not.
func flange(c *call) error {
	jobPath := c.flags.String("job", "", "job file with the part that goes onto the flange")
	partName := c.flags.String("part", "", "the part")
	groupName := c.flags.String("group", "", "its group of clearance holes")
	placeText := c.flags.String("place", "0.25", "how far a hole may be made from where it is drawn; 0.25 mm is what punching by a template holds")
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
	file, err := read.LoadSurvey(c.args[0])
	if errors.Is(err, fs.ErrNotExist) {
		return badUse("there is no file %s; centrepop input \"measured flange\" lists what such a file holds", c.args[0])
	}
	if err != nil {
		return err
	}
	survey := surveyOf(file)
	say := words.Flange{Writer: words.Writer{Units: file.Units}, Readings: survey.Readings}
	result, err := measured.Fit(survey)
	if err != nil {
		return locateSurvey(file, say, err)
	}
	answer := flangeAnswer{Flange: file.Name.Value, Measured: result, Findings: []flangeFinding{}}
	if m, ok := result.Nearest(file.Thread.Value != ""); ok {
		answer.Nearest = &m
	}
	if *jobPath != "" {
		answer.Part, answer.Group = *partName, *groupName
		if err := answer.mate(file, *jobPath, place); err != nil {
			return err
		}
	}
	tidy(reflect.ValueOf(&answer))
	answer.judge(say)
	return c.judged(answer, answer.text(say), len(answer.Findings) > 0)
}

// surveyOf hands the file's numbers to package measured.
func surveyOf(file *read.Survey) measured.Survey {
	diameter := func(m read.Measured) measured.Diameter {
		return measured.Diameter{Mm: m.Diameter.Mm, PlusMinusMm: m.PlusMinus.Mm}
	}
	out := measured.Survey{FirstDeg: file.First.Deg}
	if file.Spigot.Diameter.Set() {
		out.Spigot = diameter(file.Spigot)
	}
	out.Holes = seq.Map(file.Holes, diameter)
	for _, r := range file.Readings {
		out.Readings = append(out.Readings, measured.Reading{From: r.From, To: r.To, Kind: measured.Kind(r.Kind), Mm: r.Length.Mm, PlusMinusMm: r.PlusMinus.Mm})
	}
	return out
}

// mostShown is how many suspects are shown in their place; the first names all.
const mostShown = 3

// locateSurvey turns an error of package measured into one that points at the
// file.
func locateSurvey(file *read.Survey, say words.Flange, err error) error {
	at := func(e measured.Entry) parts.Pos {
		switch {
		case e.Reading > 0:
			return file.Readings[e.Reading-1].Pos
		case e.Hole > 0 && e.Hole <= len(file.Holes):
			return file.Holes[e.Hole-1].Diameter.Pos
		}
		return file.HolesPos
	}
	var errs parts.Errors
	add := func(pos parts.Pos, what, right string) {
		errs = append(errs, file.Fault(pos, what, right))
	}
	var input *measured.InputError
	var wrong *measured.Inconsistent
	switch {
	case errors.As(err, &input):
		pos := at(measured.Entry{Reading: input.Reading + 1, Hole: input.Hole})
		switch input.Code {
		case measured.SpigotRange:
			pos = file.Spigot.Diameter.Pos
		case measured.Undetermined, measured.NotClockwise:
			pos = file.HolesPos
		}
		what, right := say.Refused(input)
		add(pos, what, right)
	case errors.As(err, &wrong):
		for i := range min(max(len(wrong.Suspects), 1), mostShown) {
			pos := file.HolesPos
			if len(wrong.Suspects) > 0 {
				pos = at(wrong.Suspects[i].Entry)
			}
			what, right := say.Inconsistent(wrong, i)
			add(pos, what, right)
		}
	default:
		return err
	}
	return errs
}

// mate puts the drawn group onto the flange.
func (a *flangeAnswer) mate(file *read.Survey, jobPath string, place float64) error {
	bolt := cmp.Or(file.Bolt.Value, file.Thread.Value)
	if bolt == "" && a.Nearest != nil {
		bolt = a.Nearest.Thread
	}
	if bolt == "" {
		return parts.Errors{file.Fault(parts.Pos{}, "the file does not say the bolt, and no standard flange is near", "bolt: M12")}
	}
	thread, err := threads.Parse(bolt)
	if err != nil {
		return parts.Errors{file.Fault(cmp.Or(file.Bolt.Pos, file.Thread.Pos), "the bolt "+bolt+" is not known: "+strings.TrimPrefix(err.Error(), "threads: "), "a thread such as M12")}
	}
	a.Bolt = thread.Designation
	w, err := load(jobPath)
	if err != nil {
		return err
	}
	if _, err := partNamed(w.Plan, a.Part); err != nil {
		return err
	}
	drawn := measured.Drawn{BoltMm: thread.MajorMm, Tapped: file.Thread.Value != "", PlaceMm: place}
	if err := drawnGroup(w.Job, a.Part, a.Group, &drawn); err != nil {
		return err
	}
	if n := len(a.Measured.Holes); n != len(drawn.Holes) {
		what := fmt.Sprintf("the flange has %d holes and the group %s has %d", n, a.Group, len(drawn.Holes))
		a.Findings = append(a.Findings, flangeFinding{Code: patternDiffers, What: what})
		return nil
	}
	a.Transition = a.Nearest != nil && a.Nearest.Transition(drawn.BoreMinMm)
	a.Mating, err = a.Measured.Together(drawn)
	return err
}

// judge finds what keeps the part off the flange.
func (a *flangeAnswer) judge(say words.Flange) {
	m := a.Mating
	if m == nil {
		return
	}
	spigot := flangeFinding{What: say.SpigotFit(m, a.Transition), ByMm: -m.ClearanceMm}
	switch {
	case m.Spigot == measured.SpigotTight:
		spigot.Code, spigot.ByMm = spigotTight, -m.ClearanceToMm
	case m.Spigot == measured.SpigotUndecided && !a.Transition:
		spigot.Code = spigotUndecided
	}
	if spigot.Code != "" {
		a.Findings = append(a.Findings, spigot)
	}
	for _, p := range m.Pairs {
		if p.MarginMm < 0 {
			a.Findings = append(a.Findings, flangeFinding{holeTight, say.HoleTight(p, a.Bolt), p.Flange, p.Drawn, -p.MarginMm})
		}
	}
}

// drawnGroup fills in the holes of a group, as seen on the face they are
// marked on, and the limits of the bore.
func drawnGroup(job *parts.Job, name, group string, d *measured.Drawn) error {
	p := job.Part(name)
	h := seq.At(p.Holes, func(g *parts.HoleGroup) bool { return g.Name.Value == group })
	if h == nil {
		known := seq.Map(p.Holes, func(g parts.HoleGroup) string { return g.Name.Value })
		return badUse("--group %s: %s has the groups %s", group, name, strings.Join(known, ", "))
	}
	if h.Size.Make == parts.TappedHole {
		return parts.Errors{job.Fault(h.Size.Pos, "the holes of "+group+" are tapped", "clearance holes, to take the bolts of the flange")}
	}
	face, err := part.FaceView(job, name, h.Face)
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
		d.BoreMinMm, d.BoreMaxMm, err = boreLimits(job, p.Bore.Size)
	}
	return err
}

// boreLimits are the limits of a bore; a light press has none of its own.
func boreLimits(job *parts.Job, s parts.Size) (minMm, maxMm float64, err error) {
	mm := s.Nominal.Mm
	switch f := s.Fit; {
	case f.Class.Value != "":
		l, err := fits.Limit(mm, f.Class.Value)
		return l.MinMm, l.MaxMm, err
	case f.LightPress.Set():
		return 0, 0, nil
	case len(f.Limits) == 2:
		return f.Limits[0].Mm, f.Limits[1].Mm, nil
	case f.PlusMinus.Set():
		return mm - f.PlusMinus.Mm, mm + f.PlusMinus.Mm, nil
	case job.Tolerance.Value != "":
		if pm, err := fits.General(mm, job.Tolerance.Value); err == nil {
			return mm - pm, mm + pm, nil
		}
	}
	return mm, mm, nil
}

// text is the answer for reading in a terminal.
func (a *flangeAnswer) text(say words.Flange) string {
	lines := append(say.Result(a.Flange, a.Measured), say.Nearest(a.Nearest))
	if m := a.Mating; m != nil {
		lines = append(lines, fmt.Sprintf("%s, group %s, bolt %s, in the worst case:", a.Part, a.Group, a.Bolt))
		lines = append(lines, say.Mating(m, a.Transition)...)
	}
	lines = append(lines, seq.Map(a.Findings, func(f flangeFinding) string { return f.Code + ": " + f.What })...)
	return strings.Join(lines, "\n") + "\n"
}
