package review

import (
	"iter"
	"maps"
	"math"
	"slices"
	"strconv"
	"strings"

	"centrepop/layout/plan"
	"centrepop/layout/threads"
	"centrepop/parts"
	"centrepop/parts/geom"
	"centrepop/parts/seq"
)

// facts are what notes say that the geometry says too: words around a length, and the
// lengths of the part that it may be.
var facts = []struct {
	about string
	words phrase
	of    func(v *view) []float64
}{
	{"pitch circle", spoken(`(?:bolt|pitch) circle (?:of )?` + noteLength), (*view).pitchCircles},
	{"diameter", spoken(`(?:bore|spigot|pilot|register|diameter)s? (?:of )?` + noteLength), (*view).diameters},
	{"diameter", spoken(noteLength + ` (?:spigot|bore|pilot|register|diameter)\b`), (*view).diameters},
	{"distance", spoken(noteLength + ` from the (?:left|right|top|bottom) edge`), (*view).placesOn},
	{"depth", spoken(noteLength + ` (?:below|under|beneath) (?:it|the face|the front|the back)\b`), (*view).below},
	{"lean", spoken(`\b(?:leans|leaning|stands|standing) ` + noteLength + ` (?:to|towards?|back)\b`), (*view).leans},
	{"width", spoken(noteLength + ` wide\b`), (*view).openingWidths},
	{"difference", spoken(noteLength + ` past (?:its|the) seat`), (*view).pastSeat},
}

// said compares what the notes of a part say with what is drawn: lengths that have a
// name, and threads; and with its joints.
var said = together(
	each(everyText, (*view).saidFacts, (*view).saidOff, (*view).saidLap, (*view).saidStraps, (*view).saidOfJoints),
	each(everyPut, (*view).saidOfScrews, (*view).saidHoist), each(everySlot, (*view).saidSlot), each(everyHole, (*view).saidUse, (*view).saidSides),
	each(everyInside, (*view).saidClear),
)

func everyText(v *view) iter.Seq[parts.Text] { return slices.Values(v.texts()) }

func (v *view) saidFacts(note parts.Text) {
	for _, f := range facts {
		for _, m := range f.words().FindAllStringSubmatch(note.Value, -1) {
			mm, of := noteMm(m[1], m[2]), f.of(v)
			if len(of) > 0 && !slices.ContainsFunc(of, func(x float64) bool { return math.Abs(x-mm) < 0.006*max(1, mm/geom.MmPerInch) }) {
				v.unlike(note.Pos, "", "a note of "+v.p.Title.Value+" gives a "+f.about+" that nothing on the drawing has", m[0]+"; drawn: "+few(v.written(of)), "the note, or what is drawn")
			}
		}
	}
}

// saidSides looks at the side that words let the screws of a group in by, and tells of the first.
func (v *view) saidSides(g *parts.HoleGroup) {
	for _, t := range slices.Concat(v.p.Notes, v.hows()) {
		if v.saidSide(g, t) {
			return
		}
	}
}

func (v *view) saidSlot(s *parts.FaceSlot) { v.saidLifts(s.Name.Value, s.For) }

// besideShare is how far from the middle a part may hang, as a share of its width. Common
// practice, no source.
const besideShare = 0.05

// saidUse compares a group with what it is for: jack screws push by a
// thread, and a plate hangs level by holes on both sides of its middle.
func (v *view) saidUse(g *parts.HoleGroup) {
	if g.For == parts.Jacking && g.Size.Make != parts.TappedHole {
		v.report(Check, g.Name.Value, g.Pos, Finding{
			What: g.Name.Value + " are for jack screws, and have no thread", Rule: "a jack screw pushes by its thread", Fix: "a tapped hole",
		})
	}
	all := v.holesOf(g.Name.Value)
	if len(all) == 1 && v.p.Kind == parts.Shaft && g.For == parts.Drawing && geom.Some(all[0].centreMm()) {
		off := all[0].centreMm()
		v.report(Check, g.Name.Value, g.Pos, Finding{
			What: g.Name.Value + " of " + v.p.Title.Value + " lies off the axis that it is to draw along", Numbers: v.mm(off) + " beside it", OverMm: over(off),
			Rule: "a screw that draws along a shaft pulls in its axis", Source: "by geometry", Fix: "at: [[0, 0]]",
		})
	}
	v.saidLifts(g.Name.Value, g.For)
}

// shackleMm is the least that a shackle goes through. Common practice, no source: the pin of the
// smallest in common sale is 1/4 in.
const shackleMm = 6.3

// nearEdge is how near to an edge, as a share of the height, a plate has the holes by which it hangs
// upright. Common practice, no source.
const nearEdge = 0.2

// saidLifts looks at holes or slots that a plate is lifted by: it hangs level by them or
// upright, and a shackle goes through.
func (v *view) saidLifts(name string, use parts.Use) {
	all := v.holesOf(name)
	if use != parts.Lifting || v.outline == nil && !v.turned() || len(all) == 0 {
		return
	}
	if all[0].thread == nil {
		v.atLeast(name, all[0].pos, 2*all[0].radiusMm, shackleMm, Finding{
			What: "no shackle goes through " + name + " of " + v.p.Title.Value, Rule: "what a part is lifted by takes a shackle", Fix: "wider ones",
		})
	}
	if len(all) < 2 || v.p.Bore == nil && !v.turned() {
		return
	}
	wide, high := v.box()
	off := math.Abs(seq.Sum(all, func(h hole) float64 { return (h.a.XMm + h.b.XMm) / 2 / float64(len(all)) }))
	switch up := math.Abs(seq.Sum(all, func(h hole) float64 { return (h.a.YMm + h.b.YMm) / 2 / float64(len(all)) })); {
	case v.turned():
		off, wide = math.Hypot(off, up), 2*mostMm(v.outside)
	case off <= besideShare*wide && up < (0.5-nearEdge)*high:
		off, wide = up, high
	}
	if off > besideShare*wide {
		v.report(Check, name, all[0].pos, Finding{
			What: v.p.Title.Value + " hangs askew by " + name, Numbers: "the middle of the holes lies " + v.mm(off) + " beside its own, wanted at most " + v.mm(besideShare*wide), OverMm: over(off),
			Rule: "what is hung up by several holes hangs under their middle", Fix: "holes as far to the left as to the right, in the middle of its height or near its edge",
		})
	}
}

// saidSide compares the face in which the heads of a group are sunk, or from which its holes
// are blind, with that from which words let its screws in.
func (v *view) saidSide(g *parts.HoleGroup, t parts.Text) bool {
	for _, said := range clauses(t, ".;,") {
		m := entersBy().FindStringSubmatch(said)
		sunk := g.Countersink != nil || g.Counterbore != nil || !g.Through
		if m == nil || !sunk || m[1] != "" && g.Through || strings.ToLower(m[2]) == string(g.Face) || !saysHoles(" "+strings.ToLower(said), g.Name.Value) || !screwNamed().MatchString(said) {
			continue
		}
		v.unlike(g.Pos, g.Name.Value,
			"screws go into "+g.Name.Value+" of "+v.p.Title.Value+" from the "+strings.ToLower(m[2])+" by the words, and from the "+string(g.Face)+" by the drawing",
			strings.TrimSpace(said), "face: "+strings.ToLower(m[2])+", or the words")
		return true
	}
	return false
}

// saidClear compares what the words at a bore keep clear with the shafts of the job.
func (v *view) saidClear(c *cylinder) {
	m := clearOf().FindStringSubmatch(c.Seat)
	if m == nil {
		return
	}
	mm := noteMm(m[1], m[2])
	for _, o := range v.all() {
		for _, s := range o.outside {
			if o != v && o.turned() && math.Abs(c.RadiusMm()-s.Drawn.Size.Nominal.Mm/2-mm) < 0.05 {
				return
			}
		}
	}
	v.unlike(c.Drawn.Pos, c.Name, c.Name+" stays off no shaft of the job by what its words say", c.Seat+", at "+v.mm(2*c.RadiusMm()), "the words, or the bore")
}

// texts are the notes of a part and of its holes and openings.
func (v *view) texts() []parts.Text {
	return slices.Concat(v.p.Notes,
		seq.Map(v.p.Holes, func(g parts.HoleGroup) parts.Text { return g.Note }),
		seq.Map(v.p.Radials, func(f parts.Radial) parts.Text { return f.Note }))
}

// fittings are the words of what is fitted in holes.
func (v *view) fittings() []parts.Text {
	return append(seq.Map(v.p.Holes, func(g parts.HoleGroup) parts.Text { return g.Fitted }),
		seq.Map(v.p.Radials, func(f parts.Radial) parts.Text { return f.Fitted })...)
}

// hows are the words of how loose things are put on.
func (r *reviewer) hows() []parts.Text {
	return seq.Map(r.job.Loose, func(e parts.Loose) parts.Text { return e.How })
}

// written are lengths in the job's units, each once.
func (v *view) written(of []float64) []string { return seq.Add(nil, seq.Map(of, v.mm)...) }

func (v *view) pitchCircles() []float64 {
	all := seq.Map(v.p.Holes, func(g parts.HoleGroup) float64 { return g.Pattern.PCD.Mm })
	return seq.Keep(all, func(mm float64) bool { return mm > 0 })
}

// diameters are those of a part, and of what it is pressed, bolted or slid on to.
func (v *view) diameters() (out []float64) {
	of := func(o *view) {
		for _, c := range o.steps() {
			out = append(out, 2*c.RadiusMm(), c.Drawn.Size.Nominal.Mm)
		}
		for i := range o.holes {
			out = append(out, 2*o.holes[i].radiusMm, 2*o.holes[i].headRadiusMm())
		}
		out = append(out, seq.Map(o.q.Radials, func(r plan.RadialRow) float64 { return r.DiameterMm })...)
		switch f := o.p.Frustum; o.p.Kind {
		case parts.Cone:
			out = append(out, f.Large.Mm, f.Small.Mm, f.Large.Mm-2*f.Thickness.Mm, f.Small.Mm-2*f.Thickness.Mm)
		case parts.TransitionPiece:
			out = append(out, o.p.Transition.Diameter.Mm)
		}
	}
	of(v)
	for _, j := range v.job.Joints {
		for _, ref := range j.Refs() {
			if o := v.viewOf(ref.Part); o != v && j.Holds(v.p.Name.Value) {
				of(o)
			}
		}
	}
	return out
}

// placesOn are the distances from the edges of a part at which joints stand others on it.
func (v *view) placesOn() (out []float64) {
	for _, j := range v.job.Joints {
		if _, on := j.Ends(); j.Place != nil && on.Part == v.p.Name.Value {
			for _, l := range []parts.Length{j.Place.FromLeft, j.Place.FromRight, j.Place.FromTop, j.Place.FromBottom} {
				if l.Set() {
					out = append(out, l.Mm)
				}
			}
		}
	}
	return out
}

// leans are how far one end of a cone or transition stands beside the other.
func (v *view) leans() (out []float64) {
	switch t := v.p.Transition; v.p.Kind {
	case parts.Cone:
		return []float64{math.Abs(v.p.Frustum.Offset.Mm)}
	case parts.TransitionPiece:
		return []float64{math.Abs(t.Offset.X.Mm), math.Abs(t.Offset.Y.Mm)}
	}
	return nil
}

// openingWidths are the sizes of windows and slots in the outside of a part.
func (v *view) openingWidths() (out []float64) {
	for f := range seq.Refs(v.p.Radials) {
		if f.Around.Set() {
			out = append(out, f.Around.Mm, f.Along.Mm)
		}
	}
	return out
}

// below are how far joints set one end under a face of the part.
func (v *view) below() []float64 {
	set := seq.Keep(v.job.Joints, func(j *parts.Joint) bool { return j.Meet.Below.Set() && j.Holds(v.p.Name.Value) })
	return seq.Map(set, func(j *parts.Joint) float64 { return j.Meet.Below.Mm })
}

// pastSeat is how much longer a hub is than the seat that it slides on to.
func (v *view) pastSeat() (out []float64) {
	for _, j := range v.job.Of(parts.SlideKind) {
		if seat := v.stepOf(j.Slide.On); seat != nil && j.Slide.Hub.Part == v.p.Name.Value {
			out = append(out, v.lengthMm-seat.LengthMm())
		}
	}
	return out
}

// saidThreads looks in the words of the job for threads that nothing of the job has: of
// the part that the words name, where they name one.
func saidThreads(r *reviewer) {
	all := map[string]bool{}
	own := map[*parts.Part]map[string]bool{}
	for _, v := range r.all() {
		own[v.p] = v.threads()
		maps.Copy(all, own[v.p])
	}
	for _, j := range r.job.Of(parts.BoltKind) {
		all[threadName(j.Bolt.Size)] = true
	}
	look := func(t parts.Text, part string) {
		on, has := "the job", all
		for _, p := range r.job.Parts {
			if part == "" && p.NamedIn(t.Value) {
				on, has, part = p.Title.Value, own[p], p.Name.Value
				break
			}
		}
		for _, m := range namedThread().FindAllString(t.Value, -1) {
			if _, err := threads.Parse(m); err != nil { // of a screw, with its length
				m, _, _ = strings.Cut(m, "x")
			}
			if !has[threadName(m)] {
				r.disagree(t.Pos, part, "the words name a thread "+m+", which "+on+" has not", t.Value, "the words, or the thread")
			}
		}
	}
	for _, v := range r.all() {
		for _, t := range v.texts() {
			for _, f := range v.fittings() { // compared with its hole
				t.Value = strings.Replace(t.Value, f.Value, "", 1)
			}
			look(t, v.p.Name.Value)
		}
	}
	look(r.motor().Earth, "")
	for e := range everyBought(r) {
		for _, m := range saying([]parts.Text{e.How}, intoThread) {
			look(parts.Text{Value: e.Item.Value + ": " + m[1], Pos: e.Item.Pos}, "")
		}
	}
}

// saidHoles looks in the words of the motor's earth and of loose things for a hole that the part
// named after it has not.
func (r *reviewer) saidHoles() {
	for t, m := range saying(append(r.hows(), r.motor().Earth), namedHole) {
		name, rest := strings.ToLower(m[1]+m[3]), parts.Bare(m[2]+m[4])
		is := func(own string) bool { return strings.Contains("-"+own+"-", "-"+name+"-") }
		for _, p := range r.job.Parts {
			if !p.NamedIn(rest) {
				continue
			}
			if !slices.ContainsFunc(p.Holes, func(g parts.HoleGroup) bool { return is(g.Name.Value) }) && !slices.ContainsFunc(p.Radials, func(o parts.Radial) bool { return is(o.Name.Value) }) {
				r.disagree(t.Pos, p.Name.Value, "the words name a hole "+name+", which "+p.Title.Value+" has not", t.Value, "the hole, or the words")
			}
			break
		}
	}
}

// saidPuttingOn looks in the words by which things are put on by hand for holes that the part is to have for what moves
// it, and for a retaining ring on a part without its groove.
func (r *reviewer) saidPuttingOn(e *parts.Loose) {
	v := r.viewOf(e.Part.Value)
	for t, m := range saying([]parts.Text{e.How}, itsHoles) {
		use := parts.HoleUse(m[1], "")
		its := func(p *parts.Part) bool { // of it, or of another that the words name
			return (p == v.p || p.NamedIn(t.Value)) && slices.ContainsFunc(p.Holes, func(g parts.HoleGroup) bool { return g.For == use })
		}
		if v != nil && use.Moves() && !slices.ContainsFunc(r.job.Parts, its) {
			r.disagree(t.Pos, v.p.Name.Value, "the words name "+strings.ToLower(m[1])+" holes, which "+v.p.Title.Value+" has not", t.Value, "the holes, or the words")
		}
	}
	for t, m := range saying([]parts.Text{e.How}, ringOn) {
		p := seq.First(r.job.Parts, func(p *parts.Part) bool { return r.job.Begins(m[1], p) })
		if p != nil && !slices.ContainsFunc(p.Grooves, func(g parts.Groove) bool { return g.Kind == parts.RingGroove }) {
			r.disagree(t.Pos, p.Name.Value, "the words have a retaining ring on "+p.Title.Value+", which has no groove for one", m[0], "the groove, or the words")
		}
	}
}

// saidSteps looks in the words of the parts for steps that there are not, and for the load of a
// step that lifts nothing.
func (v *view) saidSteps(t parts.Text) {
	for _, m := range namedStep().FindAllStringSubmatch(t.Value, -1) {
		n, _ := strconv.Atoi(m[2])
		what := ""
		switch {
		case n < 1 || n > len(v.pl.Joints):
			what = "the words name step " + m[2] + " of " + number(float64(len(v.pl.Joints)))
		case ofLoad().MatchString(m[1]) && v.pl.Joints[n-1].Lift == nil:
			what = "the words name the load on step " + m[2] + ", and nothing hangs in the hook there"
		default:
			continue
		}
		v.disagree(t.Pos, v.p.Name.Value, what, t.Value, "the step that is meant; better its joint by name, for numbers of steps change")
	}
}

func (v *view) threads() map[string]bool {
	p, has := v.p, map[string]bool{}
	for g := range seq.Refs(p.Holes) {
		has[threadName(g.Size.Thread)] = true
	}
	for f := range seq.Refs(p.Radials) {
		has[threadName(f.Size.Thread)] = true
	}
	for _, c := range v.steps() {
		has[threadName(c.Drawn.Size.Thread.Value)] = true
	}
	if p.Clamp != nil {
		has[threadName(p.Clamp.Size)] = true
	}
	return has
}

// threadName is the designation of a thread, without what follows its size.
func threadName(text string) string {
	text = namedThread().FindString(text) // what is none is looked up at length
	if text == "" {
		return ""
	}
	if t, err := threads.Parse(text); err == nil {
		return t.Designation
	}
	return text
}
