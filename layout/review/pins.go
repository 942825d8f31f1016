package review

import (
	"math"
	"slices"
	"strings"

	"centrepop/layout/fits"
	"centrepop/layout/words"
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
	at := hub.lyingAt(plate)
	for g := range seq.Refs(plate.p.Holes) {
		_, long := r.pinOf(g.Note.Value, false)
		switch other, _ := hub.groupNamed(g.Name.Value); {
		case other != nil && !other.Through && at != "" && other.Face != at:
			plate.report(Stop, g.Name.Value, g.Pos, Finding{
				What:    g.Name.Value + " of " + hub.p.Title.Value + " are in its " + string(other.Face) + ", and " + plate.p.Title.Value + " lies at its " + string(at),
				Numbers: "with " + number(float64(g.Pattern.Count)) + " pins",
				Rule:    "a pin goes into its hole", Source: "by geometry", Fix: "face: " + string(at) + ", and the pattern as seen from there",
			})
		case other != nil:
			r.pinned(plate, hub, g)
		case geom.Over(long, plate.lengthMm):
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
	_, long := r.pinOf(g.Note.Value, false)
	out := long - plate.lengthMm
	f := Finding{
		Severity: Stop, Part: plate.p.Name.Value, Feature: g.Name.Value, Pos: g.Pos,
		Rule: "a pin goes into its hole", Source: "by geometry", Fix: "one pattern on both drawings, and holes for the pins in one of them larger by their play",
	}
	of := g.Name.Value + " of " + plate.p.Title.Value + " and of " + hub.p.Title.Value
	play, worst := math.Abs(a[0].radiusMm-b[0].radiusMm), seq.Max(0, a, func(h hole) float64 {
		return seq.Least(b, func(o hole) float64 { return geom.Distance(h.a, o.a) })
	})
	its := "the pins of " + plate.p.Title.Value
	if !r.firstOf(f,
		flaw{len(a) != len(b), Finding{What: of + " are not as many", Numbers: number(float64(len(a))) + " and " + number(float64(len(b)))}},
		flaw{worst > play+pinsMm, Finding{What: of + " do not meet", Numbers: r.mm(worst) + " apart, with " + r.mm(2*play) + " of play"}},
		flaw{geom.Over(a[0].radiusMm, b[0].radiusMm), Finding{
			What: its + " do not go into " + hub.p.Title.Value, Numbers: r.mm(2*a[0].radiusMm) + " into " + r.mm(2*b[0].radiusMm)}},
		flaw{!other.Through && !geom.Over(other.Depth.Mm, out), Finding{
			What: its + " keep it off " + hub.p.Title.Value, Numbers: "they stand out " + r.mm(out) + ", and their holes are " + r.mm(other.Depth.Mm) + " deep",
			Fix: "deeper holes, or shorter pins"}},
	) {
		r.pinsAtLimits(f, of, a, b, worst)
	}
}

// lyingAt is the face of a part that another on its axis lies at; empty where one of them has no place.
func (v *view) lyingAt(o *view) parts.Face {
	b := v.bodyOf(v.p.Name.Value)
	if b == nil {
		return ""
	}
	on := v.machine().Along(b.Pose).Find(parts.Instance{Part: o.p.Name.Value, Copy: 1})
	if on == nil {
		return ""
	}
	return words.Either(on.Middle() < v.lengthMm/2, parts.Front, parts.Back)
}

// pinsAtLimits compares how far the centres of two good parts may differ, beside what they
// differ on the drawings, with the least play: two holes that are so much farther apart than
// their pins put each pin off by half of it.
func (r *reviewer) pinsAtLimits(f Finding, of string, plate, hub []hole, drawnMm float64) {
	var apart float64
	for i := range plate {
		for k := range i {
			apart = math.Max(apart, geom.Distance(plate[i].a, plate[k].a))
		}
	}
	pin, wide := 2*plate[0].radiusMm, 2*hub[0].radiusMm
	between, err := fits.General(apart, r.job.Tolerance.Value)
	size, errSize := fits.General(wide, r.job.Tolerance.Value)
	if play := wide - size - pin; len(plate) > 1 && err == nil && errSize == nil && geom.Over(2*(between+drawnMm), play) {
		f.Severity, f.Source = Check, "ISO 2768-1"
		f.What, f.Numbers, f.LeftMm = of+" need not meet though both are right", "centres may differ by "+r.mm(2*(between+drawnMm))+", the play is "+r.mm(play), left(play)
		f.Rule, f.Fix = "parts inside their limits go together", "holes for the pins from "+r.mm(pin+2*(between+drawnMm)+size)+" on"
		r.add(f)
	}
}

// pinOf is the pin that words name, 0 where they name none; of a pin that is ordered the diameter alone counts too.
func (r *reviewer) pinOf(words string, ordered bool) (acrossMm, longMm float64) {
	if acrossMm, longMm = parts.PinSizes(words, r.job.Units); acrossMm > 0 || !ordered {
		return acrossMm, longMm
	}
	if m := pinsNamed().FindStringSubmatch(words); m != nil {
		return parts.BareMm(m[1], m[2], r.job.Units), parts.BareMm(m[3], m[4], r.job.Units)
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

// widestPin is how much larger than its pin a hole is at the most, that is for it. Common practice, no source: less
// than for a screw, which clamps.
const widestPin = 1.2

// forPin is a plain hole and the words for what goes into it.
type forPin struct {
	name    string
	pos     parts.Pos
	words   string
	fitted  bool // what goes in is pressed in
	through bool
	size    parts.Size
	deepMm  float64
}

// pinInHole compares the pin that is fitted in a group of holes, or that its note names, with these.
func (v *view) pinInHole(g *parts.HoleGroup) {
	if g.Size.Make != parts.PlainHole {
		return
	}
	h := forPin{g.Name.Value, g.Pos, g.Note.Value, g.Fitted.Value != "", g.Through, g.Size.Size, g.Depth.Mm}
	if g.Through {
		h.deepMm = seq.First(v.holes, func(o hole) bool { return o.name == h.name }).metalMm
	}
	if class := g.Size.Size.Fit.Class.Value; class != "" && taperPin().MatchString(g.Note.Value+" "+g.Fitted.Value) {
		v.report(Check, h.name, h.pos, Finding{
			What: h.name + " is reamed parallel, and its words have a taper pin", Numbers: v.mm(h.size.Nominal.Mm) + " " + class,
			Rule: "a taper pin bears in a hole of its taper", Source: "ISO 2339", Fix: "a dowel pin; or no fit, and a note that has it reamed 1:50 through both parts",
		})
		return
	}
	v.pinIn(h)
}

// pinAcross is the same of a hole in the outside of a round.
func (v *view) pinAcross(f *parts.Radial) {
	if f.Shape != parts.RadialHole || f.Size.Make != parts.PlainHole {
		return
	}
	h := forPin{f.Name.Value, f.Pos, f.Note.Value, f.Fitted.Value != "", f.Through, f.Size.Size, v.wallAt(v.axialMm(f))}
	if !f.Through {
		h.deepMm = f.Depth.Mm
	}
	v.pinIn(h)
}

func (v *view) pinIn(h forPin) {
	across, long := v.pinOf(h.words, h.fitted)
	if across == 0 {
		return
	}
	f, pressed := v.here(h.name, h.pos), strings.Contains(h.words, "press")
	f.Fix = "the pin or the hole of the other's size"
	v.firstOf(f,
		v.pinSize(h, across, h.fitted || pressed),
		flaw{pressed && !fine(h.size.Fit, pinGrade), Finding{
			What: h.name + " has no fit, and a pin is pressed into it", Numbers: h.words + " in " + v.mm(h.size.Nominal.Mm), OverMm: over(0),
			Rule: "a pin that is pressed in is held by its fit", Fix: "fit: H7"}},
		flaw{pressed && h.through && !standsWords().MatchString(h.words), Finding{
			What: "nothing says how far the pin of " + h.name + " stands out, and of which face", Numbers: h.words, LeftMm: left(0),
			Rule: "a pin in a hole that goes through can be driven to any depth", Fix: "in the note: from the front till level with it"}},
		flaw{long > 0 && geom.Over(h.deepMm+pinOutShare*across, long), Finding{
			What: "the pin of " + h.name + " hardly stands out of its hole", Numbers: v.mm(long) + " long in " + v.mm(h.deepMm), LeftMm: left(long - h.deepMm),
			Rule: "a pin locates by what stands out, half its diameter at the least", Fix: "a longer pin"}},
	)
}

// pinSize is what is wrong with the size of a hole for a pin: it does not go in, or is not held though it is
// pressed in, for most good holes are wider, or rattles. Ground pins are m6 (ISO 8734), or 0.0001 to 0.0003 in over their size (ASME B18.8.2,
// from memory): the most is the same to 0.004 mm.
func (v *view) pinSize(h forPin, across float64, pressed bool) flaw {
	hole, most := h.size.Nominal.Mm, across
	if m6, err := fits.Limit(across, "m6"); err == nil {
		most = m6.MaxMm
	}
	low, high, limited := limitsOf(h.size)
	loose := pressed && (geom.Over(hole, across) || limited && fine(h.size.Fit, pinGrade) && (low+high)/2 > most+geom.CloseMm)
	f := flaw{geom.Over(across, hole) || loose || hole > widestPin*across, Finding{
		Severity: Stop, What: "the pin of " + h.name + " is larger than its hole", Numbers: v.mm(across) + " in " + v.mm(hole),
		Rule: "a pin goes into its hole", Source: "ISO 8734 and ISO 2338 in H7, ASME B18.8.2"}}
	switch {
	case loose:
		f.What, f.Rule = "the pin of "+h.name+" is pressed in, and loose in its hole", "a pin that is pressed in is held by its hole: of m6 in H7"
		if !geom.Over(hole, across) {
			f.Numbers = v.mm(most) + " at the most in " + v.mm(low) + " to " + v.mm(high)
		}
	case hole > across:
		f.Severity, f.What, f.OverMm = Check, "the pin of "+h.name+" rattles in its hole", over(hole-across)
	}
	return f
}

// pinsMeet compares the pins in the holes of one part of a bolted joint with the holes of that name in the others.
func (r *reviewer) pinsMeet(j *parts.Joint) {
	for _, a := range j.Refs() {
		v := r.viewOf(a.Part)
		for g := range seq.Refs(v.p.Holes) {
			across, _ := r.pinOf(g.Note.Value, g.Fitted.Value != "")
			for _, b := range j.Refs() {
				w := r.viewOf(b.Part)
				o, _ := w.groupNamed(g.Name.Value)
				if across == 0 || w == v || o == nil || o.Size.Make != parts.PlainHole || o.Note.Value != "" && strings.Contains(o.Note.Value, "pin") {
					continue
				}
				f := w.here(o.Name.Value, o.Pos)
				f.Fix = "the pin of " + v.p.Title.Value + " or the hole of the other's size"
				r.firstOf(f, w.pinSize(forPin{name: o.Name.Value + " of " + v.p.Title.Value, size: o.Size.Size}, across, false))
			}
		}
	}
}

// pinnedAcross compares the holes for pins across two parts that a joint lines up: one pin goes through both.
func (r *reviewer) pinnedAcross(j *parts.Joint) {
	for _, rule := range j.InLine {
		var first *view
		var wide float64
		for _, ref := range rule.Refs {
			v := r.viewOf(ref.Part)
			o := seq.At(v.p.Radials, func(o *parts.Radial) bool { return o.Name.Value == ref.Feature && o.For == parts.Pins })
			if o == nil {
				break
			}
			mm := v.radialHoleMm(o)
			if first != nil && !geom.Alike(mm, wide) {
				v.report(Check, o.Name.Value, o.Pos, Finding{
					What:    "the pins through " + o.Name.Value + " of " + v.p.Title.Value + " have holes of another size in " + first.p.Title.Value,
					Numbers: v.mm(mm) + " and " + v.mm(wide), OverMm: over(math.Abs(mm - wide)),
					Rule: "one pin fills its holes in both parts", Source: "by geometry", Fix: "one size in both",
				})
			}
			if first != nil {
				v.unpinned(first, o, mm)
			}
			first, wide = v, mm
		}
	}
}

// unpinned finds holes for pins across a part and another which nothing goes through: no pin or screw is fitted in them, or comes
// loose, through something or with words that name the holes or one of the parts.
func (v *view) unpinned(other *view, o *parts.Radial, mm float64) {
	if o.Fitted.Value != "" || slices.ContainsFunc(v.job.Loose, func(e parts.Loose) bool {
		said := strings.Join([]string{e.Part.Value, e.Item.Value, e.Buy.Value, e.How.Value}, " ")
		return throughBoth().MatchString(said) && (comesThrough().MatchString(said) || saysHoles(parts.Bare(said), o.Name.Value) || v.p.NamedIn(said) || other.p.NamedIn(said))
	}) {
		return
	}
	v.report(Check, o.Name.Value, o.Pos, Finding{
		What:    "nothing is bought that goes through " + o.Name.Value + " of " + v.p.Title.Value + " and of " + other.p.Title.Value,
		Numbers: "holes of " + v.mm(mm), OverMm: over(mm),
		Rule: "what is pinned is held by its pin", Source: "by geometry", Fix: "the pin or bolt among what comes loose, its words naming " + v.p.Title.Value,
	})
}
