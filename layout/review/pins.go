package review

import (
	"math"
	"regexp"

	"centrepop/parts"
	"centrepop/parts/geom"
)

// pinsMm is how far holes for one pin may lie apart in two parts beside its play.
// Common practice, no source: what marking out and drilling hold.
const pinsMm = 0.1

// pins compares the holes of one name in a hub that slides and in the plate that
// its nut holds there: what sticks out of one goes into the other.
func pins(r *reviewer) {
	for _, j := range r.job.Joints {
		if j.Slide == nil || !j.Slide.Plate.Set() {
			continue
		}
		plate, hub := r.viewOf(j.Slide.Plate.Part), r.viewOf(j.Slide.Hub.Part)
		if plate == nil || hub == nil {
			continue
		}
		for i := range plate.p.Holes {
			g := &plate.p.Holes[i]
			if other, _ := hub.groupNamed(g.Name.Value); other != nil {
				r.pinned(plate, hub, g)
			}
		}
	}
}

func (r *reviewer) pinned(plate, hub *view, g *parts.HoleGroup) {
	a, b := plate.holesOf(g.Name.Value), hub.holesOf(g.Name.Value)
	other, _ := hub.groupNamed(g.Name.Value)
	out := pinLongMm(g.Note.Value) - plate.lengthMm
	f := Finding{
		Severity: Stop, Part: plate.p.Name.Value, Feature: g.Name.Value, Pos: g.Pos, Source: "by geometry",
		Rule: "a pin goes into its hole", Fix: "one pattern on both drawings, and holes for the pins in one of them larger by their play",
	}
	of := g.Name.Value + " of " + plate.p.Title.Value + " and of " + hub.p.Title.Value
	worst, play := 0.0, math.Abs(a[0].radiusMm-b[0].radiusMm)
	for _, h := range a {
		near := math.Inf(1)
		for _, o := range b {
			near = math.Min(near, geom.Distance(h.a, o.a))
		}
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
		return
	}
	r.add(f)
}

// pinWords are the size, and the length in millimetres, of a pin as it is ordered.
var pinWords = regexp.MustCompile(`(?i)\bpins?\b.*?\d(?: ?[a-z]\d+)? ?[x×] ?(\d+(?:\.\d+)?)\b(?:[^/]|$)`)

// pinLongMm is how long the pin is that a note names, 0 where it names none.
func pinLongMm(note string) float64 {
	if m := pinWords.FindStringSubmatch(note); m != nil {
		return noteMm(m[1], "mm")
	}
	return 0
}

// holesOf are the holes of a group.
func (v *view) holesOf(name string) (out []hole) {
	for _, h := range v.holes {
		if h.name == name {
			out = append(out, h)
		}
	}
	return out
}
