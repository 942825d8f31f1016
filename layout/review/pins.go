package review

import (
	"math"
	"regexp"
	"strings"

	"centrepop/layout/fits"
	"centrepop/parts"
	"centrepop/parts/geom"
	"centrepop/parts/seq"
)

// pinsMm is how far holes for one pin may lie apart in two parts beside its play.
// Common practice, no source: what marking out and drilling hold.
const pinsMm = 0.1

// pins compares the holes of one name in a hub that slides and in the plate that
// its nut holds there: what sticks out of one goes into the other.
func (r *reviewer) pins(j *parts.Joint) {
	plate, hub := r.viewOf(j.Slide.Plate.Part), r.viewOf(j.Slide.Hub.Part)
	if plate == nil {
		return
	}
	for g := range seq.Refs(plate.p.Holes) {
		_, long := pinOf(g.Note.Value)
		switch other, _ := hub.groupNamed(g.Name.Value); {
		case other != nil:
			r.pinned(plate, hub, g)
		case long > plate.lengthMm+slackMm:
			plate.report(Stop, g.Name.Value, g.Pos, Finding{
				What: "the pins of " + plate.p.Title.Value + " have no holes in " + hub.p.Title.Value, Numbers: g.Note.Value + ", in " + r.mm(plate.lengthMm),
				Rule: "a pin goes into its hole", Source: "by geometry", Fix: "holes named " + g.Name.Value + " in " + hub.p.Title.Value + ", on the same pattern",
			})
		}
	}
}

func (r *reviewer) pinned(plate, hub *view, g *parts.HoleGroup) {
	a, b := plate.holesOf(g.Name.Value), hub.holesOf(g.Name.Value)
	other, _ := hub.groupNamed(g.Name.Value)
	_, long := pinOf(g.Note.Value)
	out := long - plate.lengthMm
	f := Finding{
		Severity: Stop, Part: plate.p.Name.Value, Feature: g.Name.Value, Pos: g.Pos,
		Rule: "a pin goes into its hole", Source: "by geometry", Fix: "one pattern on both drawings, and holes for the pins in one of them larger by their play",
	}
	of := g.Name.Value + " of " + plate.p.Title.Value + " and of " + hub.p.Title.Value
	worst, play := 0.0, math.Abs(a[0].radiusMm-b[0].radiusMm)
	for _, h := range a {
		near := seq.Min(math.Inf(1), b, func(o hole) float64 { return geom.Distance(h.a, o.a) })
		worst = math.Max(worst, near)
	}
	switch {
	case len(a) != len(b):
		f.What, f.Numbers = of+" are not as many", number(float64(len(a)))+" and "+number(float64(len(b)))
	case worst > play+pinsMm:
		f.What, f.Numbers = of+" do not meet", r.mm(worst)+" apart, with "+r.mm(2*play)+" of play"
	case b[0].radiusMm < a[0].radiusMm-slackMm:
		f.What, f.Numbers = "the pins of "+plate.p.Title.Value+" do not go into "+hub.p.Title.Value, r.mm(2*a[0].radiusMm)+" into "+r.mm(2*b[0].radiusMm)
	case !other.Through && out > other.Depth.Mm-slackMm:
		f.What, f.Numbers = "the pins of "+plate.p.Title.Value+" keep it off "+hub.p.Title.Value, "they stand out "+r.mm(out)+", and their holes are "+r.mm(other.Depth.Mm)+" deep"
		f.Fix = "deeper holes, or shorter pins"
	default:
		r.pinsAtLimits(f, of, a, b, worst)
		return
	}
	r.add(f)
}

// pinsAtLimits compares how far the centres of two good parts may differ, beside what they
// differ on the drawings, with the least play: two holes that are so much farther apart than
// their pins put each pin off by half of it.
func (r *reviewer) pinsAtLimits(f Finding, of string, plate, hub []hole, drawnMm float64) {
	apart := 0.0
	for i := range plate {
		for k := range i {
			apart = math.Max(apart, geom.Distance(plate[i].a, plate[k].a))
		}
	}
	pin, wide := 2*plate[0].radiusMm, 2*hub[0].radiusMm
	between, err := fits.General(apart, r.job.Tolerance.Value)
	size, errSize := fits.General(wide, r.job.Tolerance.Value)
	if play := wide - size - pin; len(plate) > 1 && err == nil && errSize == nil && play < 2*(between+drawnMm)-slackMm {
		f.Severity, f.Source = Check, "ISO 2768-1"
		f.What, f.Numbers, f.LeftMm = of+" need not meet though both are right", "centres may differ by "+r.mm(2*(between+drawnMm))+", the play is "+r.mm(play), left(play)
		f.Rule, f.Fix = "parts inside their limits go together", "holes for the pins from "+r.mm(pin+2*(between+drawnMm)+size)+" on"
		r.add(f)
	}
}

// pinWords are the diameter and the length in millimetres of a pin as it is ordered.
var pinWords = regexp.MustCompile(`(?i)\bpins?\b(?:[^/]*?[^/\d.])(\d+(?:\.\d+)?)(?: ?[a-z]\d+)? ?[x×] ?(\d+(?:\.\d+)?)\b(?:[^/]|$)`)

// standsWords say how far a pin goes into a hole that goes through.
var standsWords = regexp.MustCompile(`(?i)\b(level|flush|deep|stands? out|out of|past)\b`)

// pinOf is the pin that a note names, 0 where it names none.
func pinOf(note string) (acrossMm, longMm float64) {
	if m := pinWords.FindStringSubmatch(note); m != nil {
		return noteMm(m[1], "mm"), noteMm(m[2], "mm")
	}
	return 0, 0
}

// pinOutShare is how far a pin stands out of its hole at the least, as a share of its
// diameter, and pinGrade the coarsest grade of a hole that a pin is pressed into. Common
// practice, no source; H7 is usual.
const (
	pinOutShare = 0.5
	pinGrade    = 8
)

// pinInHole compares the pin that the note at a hole names with that hole.
func (v *view) pinInHole(g *parts.HoleGroup) {
	across, long := pinOf(g.Note.Value)
	if across == 0 || g.Size.Make != parts.PlainHole {
		return
	}
	f, note := v.here(g.Name.Value, g.Pos), g.Note.Value
	f.Fix = "the pin or the hole of the other's size"
	hole, deep, pressed := g.Size.Size.Nominal.Mm, v.lengthMm, strings.Contains(note, "press")
	if !g.Through {
		deep = g.Depth.Mm
	}
	v.firstOf(f,
		flaw{across > hole+slackMm || pressed && across < hole-slackMm, Finding{
			What: "the pin of " + g.Name.Value + " has another size than its hole", Numbers: v.mm(across) + " in " + v.mm(hole), OverMm: over(math.Abs(across - hole)),
			Rule: "a pin has the nominal size of the hole that holds it"}},
		flaw{pressed && !fine(g.Size.Size.Fit, pinGrade), Finding{
			What: g.Name.Value + " has no fit, and a pin is pressed into it", Numbers: note + " in " + v.mm(hole), OverMm: over(0),
			Rule: "a pin that is pressed in is held by its fit", Fix: "fit: H7"}},
		flaw{pressed && g.Through && !standsWords.MatchString(note), Finding{
			What: "nothing says how far the pin of " + g.Name.Value + " stands out, and of which face", Numbers: note, LeftMm: left(0),
			Rule: "a pin in a hole that goes through can be driven to any depth", Fix: "in the note: from the front till level with it"}},
		flaw{long < deep+pinOutShare*across-slackMm, Finding{
			What: "the pin of " + g.Name.Value + " hardly stands out of its hole", Numbers: v.mm(long) + " long in " + v.mm(deep), LeftMm: left(long - deep),
			Rule: "a pin locates by what stands out, half its diameter at the least", Fix: "a longer pin"}},
	)
}

// holesOf are the holes of a group.
func (v *view) holesOf(name string) (out []hole) {
	return seq.Keep(v.holes, func(h hole) bool { return h.name == name })
}
