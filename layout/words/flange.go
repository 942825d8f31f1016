package words

import (
	"cmp"
	"fmt"
	"math"
	"strconv"
	"strings"

	"centrepop/layout/measured"
	"centrepop/parts"
	"centrepop/parts/seq"
)

// Flange writes about a measured flange, in the units of its file.
type Flange struct {
	Writer
	Readings []measured.Reading // as entered, to name them
}

// fixed writes a measured length for a column: to 0.001 mm or 0.0001 in.
func (f Flange) fixed(mm float64) string {
	n := parts.By(f.Units, 3, 4)
	return strconv.FormatFloat(Round(mm/f.Units.Mm(), n)+0, 'f', n, 64) // never -0
}

// off writes a signed length with its unit.
func (f Flange) off(mm float64) string {
	sign := Either(mm < 0, "-", "+")
	return sign + f.fixed(math.Abs(mm)) + " " + string(f.Units)
}

func (f Flange) expanded(mm, uMm float64) string {
	return f.fixed(mm) + " ± " + f.fixed(measured.CoverageFactor*uMm)
}

// Entry names an entry of the survey: "1–3 over", "diameter of hole 2".
func (f Flange) Entry(e measured.Entry) string {
	switch {
	case e.Reading > 0:
		r := f.Readings[e.Reading-1]
		to := Either(r.To == measured.Spigot, "spigot", fmt.Sprint(r.To))
		return fmt.Sprintf("%d–%s %s", r.From, to, r.Kind)
	case e.Hole > 0:
		return fmt.Sprintf("diameter of hole %d", e.Hole)
	}
	return "spigot diameter"
}

// refused says of every code what is wrong and what would be right.
var refused = map[measured.Code][2]string{
	measured.HolesCount:       {"a pitch circle cannot be found from {count} holes", "3 to 36 holes"},
	measured.ReadingsCount:    {"there are {count} readings", "1 to 400 distances over or between the holes"},
	measured.FirstRange:       {"the clock angle of hole 1 is {count}", "−360 to 360 degrees"},
	measured.HoleRange:        {"the diameter of hole {hole} is {mm}", "a diameter above 0"},
	measured.HolePlusMinus:    {"hole {hole} has ±{mm}", "{finest} to a tenth of the diameter"},
	measured.SpigotRange:      {"the spigot of {mm}, or its ±, is out of range", "a diameter above 0 with a ± of {finest} to a tenth of it"},
	measured.NoSuchHole:       {"the reading goes to hole {hole}, which is not there", "one of the holes, or spigot"},
	measured.SameHole:         {"the reading goes from hole {hole} to itself", "two different holes"},
	measured.UnknownKind:      {"the reading does not say how the jaws stood", "over, between or centres"},
	measured.LengthRange:      {"reading {reading} is {mm}", "a length above 0"},
	measured.ReadingPlusMinus: {"reading {reading} has ±{mm}", "{finest} to a tenth of the reading"},
	measured.NoSpigot:         {"reading {reading} needs the spigot", "measure the spigot's diameter too"},
	measured.TooShort:         {"reading {reading} is {mm}, less than the two holes side by side", "over is across the far edges, between across the near ones"},
	measured.FewToSpigot:      {"{count} readings to the spigot cannot show where it sits", "readings to the spigot from three holes or more, or none"},
	measured.Undetermined:     {"the readings do not fix every hole: hole {hole} has too few", "measure every hole to both neighbours, and some to the opposite ones"},
	measured.NotClockwise:     {"hole {hole} does not come before the next one on the circle", "number the holes clockwise, looking at the flange"},
}

// Refused says what is wrong with a survey, and what would be right.
func (f Flange) Refused(e *measured.InputError) (what, right string) {
	reading := ""
	if e.Reading >= 0 && e.Reading < len(f.Readings) {
		reading = f.Entry(measured.Entry{Reading: e.Reading + 1})
	}
	fill := strings.NewReplacer("{count}", Trim(e.Mm, 2), "{mm}", f.Setting(e.Mm), "{hole}", fmt.Sprint(e.Hole),
		"{reading}", reading, "{finest}", f.Setting(measured.SmallestPlusMinusMm))
	return fill.Replace(refused[e.Code][0]), fill.Replace(refused[e.Code][1])
}

// Inconsistent says of suspect i, or of the whole if there is none, how the
// readings disagree, and what to do.
func (f Flange) Inconsistent(e *measured.Inconsistent, i int) (what, right string) {
	right = Either(len(e.Suspects) == 0, "measure again, each hole to the next but one as well; look for a swapped over and between, and for wrong hole numbers", "measure it again")
	right += When(e.CaliperMm > 0, "; or, if all were read with care, say how good the caliper is: caliper: "+f.Said(e.CaliperMm))
	if len(e.Suspects) == 0 {
		return "the readings do not close: they leave up to " + f.Said(Round(e.WorstMm, 2)) + ", and no single one is to blame", right
	}
	s := e.Suspects[i]
	asks := fmt.Sprintf("the others ask for %s (%s)", f.fixed(s.WantMm), f.off(s.OffMm))
	switch {
	case i > 0:
		return "or this one: " + asks, right
	case len(e.Suspects) > 1:
		names := seq.Map(e.Suspects, func(s measured.Suspect) string { return f.Entry(s.Entry) })
		return "the readings do not close: one of " + strings.Join(names, ", ") + " looks wrong; here " + asks, right
	case e.Equal:
		asks += ", taking the holes as equally spaced"
	}
	return "the readings do not close: " + f.Entry(s.Entry) + " looks wrong; " + asks, right
}

// Against says what speaks against the nearest standard flange.
func (f Flange) Against(m *measured.Match) string {
	var out []string
	for _, d := range m.Against {
		out = append(out, map[measured.Code]string{
			measured.PitchDiffers:   "the pitch circle is " + f.off(d.OffMm) + " off",
			measured.CountDiffers:   fmt.Sprintf("it has %+.0f holes", d.OffMm),
			measured.SpacingDiffers: fmt.Sprintf("hole %d is %s off equal spacing", d.Hole, f.off(d.OffMm)),
			measured.CircleDiffers:  fmt.Sprintf("hole %d is %s off the circle", d.Hole, f.off(d.OffMm)),
			measured.SpigotDiffers:  "the spigot is " + f.off(d.OffMm) + " off, beyond its classes",
			measured.HolesDiffer:    fmt.Sprintf("hole %d is %s off its diameter", d.Hole, f.off(d.OffMm)),
		}[d.Code])
	}
	return strings.Join(out, "; ")
}

// Result writes a measured flange as lines.
func (f Flange) Result(name string, r *measured.Result) []string {
	name = cmp.Or(name, "flange")
	out := []string{fmt.Sprintf("%s: pitch circle %s %s, %d holes", name, f.expanded(r.PCDMm, r.PCDUMm), f.Units, len(r.Holes))}
	if r.SpigotMm > 0 {
		line := fmt.Sprintf("spigot %s %s", f.expanded(r.SpigotMm, r.SpigotUMm), f.Units)
		if c := r.Centred; c != nil {
			line += fmt.Sprintf(", its centre at %s, %s ± %s from that of the pitch circle", f.fixed(c.XMm), f.fixed(c.YMm), f.fixed(measured.CoverageFactor*c.UMm))
		}
		out = append(out, line)
	}
	out = append(out, "hole      clock angle°            radius         x         y          diameter   off circle  off equal spacing   ("+string(f.Units)+")")
	for _, h := range r.Holes {
		out = append(out, fmt.Sprintf("%4d   %7.3f ± %.3f  %16s %9s %9s  %16s  %11s  %17s", h.N, h.AngleDeg, measured.CoverageFactor*h.AngleUDeg,
			f.expanded(h.RadiusMm, h.RadiusUMm), f.fixed(h.XMm), f.fixed(h.YMm), f.expanded(h.DiameterMm, h.DiaUMm), f.fixed(h.OffCircleMm), f.fixed(h.OffEqualMm)))
	}
	out = append(out, f.shape("on one circle", r.OneCircle, r.CircleHole, r.CircleOffMm), f.shape("equally spaced", r.Equal, r.EqualHole, r.EqualOffMm))
	if r.Redundancy == 0 {
		out = append(out, "no reading checks another: a wrong one would not show")
	} else {
		out = append(out, fmt.Sprintf("readings more than needed: %d; measured less fitted:", r.Redundancy))
		for _, q := range r.Residuals {
			out = append(out, fmt.Sprintf("  %-20s %9s  %s", f.Entry(q.Entry), f.fixed(q.MeasuredMm), f.off(q.OffMm)))
		}
	}
	out = append(out, "(± is the "+r.Coverage+")")
	if r.ScatterMm > 0 {
		return append(out, "(where the readings leave it open, holes are taken to be within about "+f.Near(measured.CoverageFactor*r.ScatterMm)+" of the circle)")
	}
	return append(out, "(every hole's radius is from the readings alone)")
}

func (f Flange) shape(what string, is bool, hole int, offMm float64) string {
	if is {
		return fmt.Sprintf("%s, as far as the readings tell (hole %d is furthest off: %s)", what, hole, f.off(offMm))
	}
	return fmt.Sprintf("not %s: hole %d is %s off", what, hole, f.off(offMm))
}

// Nearest names the nearest standard flange, or says that there is none.
func (f Flange) Nearest(m *measured.Match) string {
	if m == nil {
		return "no standard motor flange is near"
	}
	classes := m.SpigotClasses
	if len(classes) == 0 {
		classes = append(classes, seq.Map(m.Spigots, func(c measured.SpigotClass) string { return c.Class })...)
	}
	is := fmt.Sprintf("%s: pitch circle %s (%s), spigot %s %s, %d holes, bolt %s", m.Name, f.Said(m.PitchMm), f.off(m.PitchOffMm), f.Said(m.SpigotMm),
		strings.Join(classes, " or "), m.Standard.Holes, m.Thread)
	return Either(m.Matches, "this is "+is+" ("+m.Source+")", "nearest is "+is+"; but "+f.Against(m)+" ("+m.Source+")")
}

// SpigotFit says what can be said of the spigot in its bore; empty if either is
// not there. Transition tells that the fit is meant to be so.
func (f Flange) SpigotFit(m *measured.Mating, transition bool) string {
	ends := f.Setting(math.Abs(m.ClearanceMm))
	text := map[measured.Code]string{
		measured.SpigotClears:    "the spigot has at least " + ends + " in the bore",
		measured.SpigotUndecided: "whether the spigot enters, a caliper cannot decide: it may be " + ends + " too large or " + f.Setting(m.ClearanceToMm) + " loose",
		measured.SpigotTight:     "the spigot is at least " + f.Setting(-m.ClearanceToMm) + " larger than the largest bore",
	}[m.Spigot]
	if m.Spigot == measured.SpigotUndecided && transition {
		text += "; the standard means it to be a transition fit"
	} else if m.Spigot == measured.SpigotUndecided {
		text += "; measure both with micrometers"
	}
	text += When(m.Concentric, "; it is taken to be in the middle of the holes, as nothing was measured to it")
	return text
}

// HoleTight says how far a bolt may be from passing a pair of holes.
func (f Flange) HoleTight(p measured.Pair, bolt string) string {
	would := Either(p.NeedsMm == 0, "the flange's own hole may be only "+f.Dia(p.FlangeMinMm), "a drawn hole of "+f.needed(p)+" would do")
	return fmt.Sprintf("hole %d of the flange and hole %d of the part: the bolt %s may not pass, by %s; %s", p.Flange, p.Drawn, bolt, f.Setting(-p.MarginMm), would)
}

// needed is the hole that a pair needs, rounded up to 0.01 mm or 0.001 in.
func (f Flange) needed(p measured.Pair) string {
	return f.Dia(up(p.NeedsMm/f.Units.Mm(), parts.By(f.Units, 2, 3)) * f.Units.Mm())
}

// Mating writes how the drawn part goes onto the flange, as lines.
func (f Flange) Mating(m *measured.Mating, transition bool) []string {
	var out []string
	if text := f.SpigotFit(m, transition); text != "" {
		out = append(out, "  "+text)
	}
	if m.Mirrored {
		out = append(out, "  only with the flange against the other face than the holes are marked on")
	}
	if math.Abs(m.TurnDeg) >= 0.05 {
		out = append(out, fmt.Sprintf("  with the flange turned %+.3f° clockwise", m.TurnDeg))
	}
	out = append(out, "  flange  part      off    doubt     play   margin   hole needed")
	for _, p := range m.Pairs {
		out = append(out, fmt.Sprintf("  %6d  %4d  %7s  %7s  %7s  %7s   %s", p.Flange, p.Drawn, f.fixed(p.OffMm), f.fixed(p.DoubtMm), f.fixed(p.PlayMm), f.fixed(p.MarginMm), f.needed(p)))
	}
	if m.MarginMm >= 0 {
		out = append(out, "  the bolts go in, with "+f.Setting(math.Floor(m.MarginMm*100)/100)+" to spare at the tightest")
	}
	return out
}
