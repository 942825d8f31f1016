package review

import (
	"cmp"
	"math"
	"slices"
	"strings"

	"centrepop/layout/assembly"
	"centrepop/layout/stand"
	"centrepop/parts"
	"centrepop/parts/geom"
	"centrepop/parts/seq"
)

// inUse holds what words say of a part that travels, and of where a loose part stands, against
// the machine as it stands.
func (r *reviewer) inUse(e *parts.Loose) {
	b := r.bodyOf(e.Part.Value)
	if b == nil {
		return
	}
	r.edgeOff(e, b)
	r.pointed(e)
	if e.Travels != nil {
		r.travelUnlike(e)
		r.tipOver(e, b)
		r.carried(e, b)
		r.turnedUp(e)
	}
}

// bodyOf is the first copy of a part in the machine; nil where it has no place.
func (r *reviewer) bodyOf(part string) *assembly.Body {
	m := r.machine()
	return seq.At(m.Bodies, func(b *assembly.Body) bool { return part != "" && m.Of[b.ID].Part == part })
}

// reaches are how far down and up a part travels from where it lies; upright is false for one that
// travels level.
func (r *reviewer) reaches(e *parts.Loose, b *assembly.Body) (low, high float64, upright bool) {
	switch up := b.Pose.Z.Dot(r.machine().Up); {
	case up > 0.5:
		return -e.Travels.Back.Mm, e.Travels.Front.Mm, true
	case up < -0.5:
		return -e.Travels.Front.Mm, e.Travels.Back.Mm, true
	}
	return 0, 0, false
}

// lockedUp is how far above its place a loose part is when it is locked on one that travels; false
// where no words say when.
func (r *reviewer) lockedUp(part string) (mm float64, ok bool) {
	own := r.job.ByHand(part)
	on := seq.At(r.job.Loose, func(e *parts.Loose) bool {
		return e.Travels != nil && slices.ContainsFunc(e.Travels.With, func(t parts.Text) bool { return t.Value == part })
	})
	if own == nil || on == nil {
		return 0, false
	}
	b := r.bodyOf(on.Part.Value)
	if b == nil {
		return 0, false
	}
	low, high, upright := r.reaches(on, b)
	switch w := lockedSaid().FindStringSubmatch(own.How.Value); {
	case w == nil || !upright:
		return 0, false
	case strings.EqualFold(w[1], "bottom"):
		return low, true
	}
	return high, true
}

// called names what no joint fastens: a part by its title, what is bought by its words.
func (r *reviewer) called(e *parts.Loose) string {
	if v := r.viewOf(e.Part.Value); v != nil {
		return v.p.Title.Value
	}
	return cmp.Or(e.Part.Value, e.Item.Value)
}

// travelSaid is the travel that words give a loose part, mm, and the words; 0 where they give none.
func travelSaid(e *parts.Loose) (mm float64, words string) {
	m := mostTravel().FindStringSubmatch(e.How.Value)
	if m == nil {
		return 0, ""
	}
	return noteMm(cmp.Or(m[1], m[3]), cmp.Or(m[2], m[4])), m[0]
}

// travelShare is how much more than what is said a travel may be. Common practice, no source:
// words round.
const travelShare = 1.05

// travelUnlike compares that with its travel.
func (r *reviewer) travelUnlike(e *parts.Loose) {
	way := e.Travels.Front.Mm + e.Travels.Back.Mm
	if said, words := travelSaid(e); said > 0 && unlikeBy(travelShare, said, way) {
		r.disagree(e.How.Pos, e.Part.Value, "the words for "+r.called(e)+" give another travel than it has", words+"; "+r.mm(way), "the travel between the stops")
	}
}

// unlikeBy tells whether one of two amounts is more than a share of the other.
func unlikeBy(share, a, b float64) bool { return a > share*b || b > share*a }

// ofAnother tells whether words name another part that travels, and not this one.
func (r *reviewer) ofAnother(words, part string) bool {
	named := func(name string) bool {
		p := r.job.Part(name)
		return p != nil && p.NamedIn(words)
	}
	return !named(part) && slices.ContainsFunc(r.job.Loose, func(o parts.Loose) bool { return o.Travels != nil && named(o.Part.Value) })
}

// tipOver compares heights that words give the tip of a travelling part with where it stands: at
// mid travel, or at the top of it.
func (r *reviewer) tipOver(e *parts.Loose, b *assembly.Body) {
	m := r.machine()
	said := slices.Concat([]parts.Text{e.How}, r.run().Checks, r.motor().Notes)
	low, high, upright := r.reaches(e, b)
	if !upright {
		return
	}
	for t, words := range saying(said, tipSaid) {
		at := math.NaN()
		switch text := strings.ToLower(t.Value); {
		case strings.Contains(text, "mid travel"):
			at = (high + low) / 2
		case strings.Contains(text, "the top of"):
			at = high
		}
		of := seq.At(r.job.Parts, func(p *(*parts.Part)) bool { return r.job.Begins(words[3], *p) })
		if of == nil || math.IsNaN(at) || r.ofAnother(t.Value, e.Part.Value) {
			continue
		}
		over := r.bodyOf((*of).Name.Value)
		if over == nil {
			continue
		}
		_, tip := b.Along(m.Up)
		_, top := over.Along(m.Up)
		is, says := tip+at-top, noteMm(words[1], words[2])
		if math.Abs(is-says) > (travelShare-1)*(high-low) {
			r.add(Finding{
				Part: e.Part.Value, Pos: t.Pos, What: "the tip of " + r.called(e) + " stands at another height than the words give it", Numbers: words[0] + "; " + r.mm(is),
				Rule: "words and numbers of one job agree", Source: "by geometry", Fix: "the height as it is there",
			})
		}
	}
}

// carried finds a travelling part that hangs in too little thread: it wears through, or strips.
func (r *reviewer) carried(e *parts.Loose, b *assembly.Body) {
	v := r.viewOf(e.Part.Value)
	for _, on := range r.machine().Along(b.Pose) { // else it is the nut of another
		o := r.viewOf(on.Of.Part.Name.Value)
		for _, c := range o.inside {
			if c.Size.Thread == nil || !slices.ContainsFunc(v.outside, func(s *cylinder) bool { return s.Drawn.Size.Thread.Value == c.Drawn.Size.Thread.Value }) {
				continue
			}
			o.atLeast(c.Name, c.Drawn.Pos, c.LengthMm(), c.Size.Thread.MajorMm, Finding{
				What: r.called(e) + " travels in few turns of thread", Numbers: " of " + c.Drawn.Size.Thread.Value + ", wanted at least ",
				Rule: "a nut that moves its load is at least as long as its thread is wide", Fix: "a longer thread",
			})
		}
	}
}

// turnedUp compares them with the hand of its thread: what is kept from turning comes towards who
// turns its nut, or the part that it is the nut of, clockwise, of a right-hand thread.
func (r *reviewer) turnedUp(e *parts.Loose) {
	v := r.viewOf(e.Part.Value)
	for t, w := range saying(r.motor().Notes, turnRaises) {
		if !v.turned() || !r.job.Begins(w[4], v.p) {
			continue
		}
		for _, c := range v.steps() {
			if !c.threaded() || !r.carriedBy(v, c.Drawn.Size.Thread.Value) {
				continue
			}
			up := strings.EqualFold(w[1], "clockwise") == strings.EqualFold(w[2], "above")
			if strings.Contains(c.Drawn.Size.Thread.Value, "LH") {
				up = !up
			}
			if up == strings.EqualFold(w[3], "lowers") {
				r.add(Finding{
					Part: e.Part.Value, Pos: t.Pos, What: "the words have " + r.called(e) + " go the other way than its thread moves it", Numbers: w[0] + "; " + c.Drawn.Size.Thread.Value,
					Rule: "what is held from turning comes towards who turns its right-hand nut clockwise", Source: "by geometry", Fix: "the other way, or a left-hand thread",
				})
			}
			return
		}
	}
}

// carriedBy tells whether a thread has its mate in another part.
func (r *reviewer) carriedBy(v *view, thread string) bool {
	return slices.ContainsFunc(r.all(), func(o *view) bool {
		return o != v && slices.ContainsFunc(o.steps(), func(c *cylinder) bool { return c.Drawn.Size.Thread.Value == thread })
	})
}

// filedOffMm is how far a part that is filed or shimmed to its place stands off that in the
// machine. Common practice, no source.
const filedOffMm = 1.0

// edgeOff compares them with where its edges lie.
func (r *reviewer) edgeOff(e *parts.Loose, b *assembly.Body) {
	w := edgeSaid().FindStringSubmatch(e.How.Value)
	if w == nil || len(e.Lies) == 0 {
		return
	}
	on := r.bodyOf(e.Lies[0].Ref.Part)
	if on == nil {
		return
	}
	out := b.Box().Centre().Sub(on.Pose.At)
	if out = out.Sub(on.Pose.Z.Times(out.Dot(on.Pose.Z))); !geom.Some(out.Len()) {
		return
	}
	out = out.Times(1 / out.Len())
	said := (noteMm(w[1], w[3]) + noteMm(w[2], w[3])) / 2
	near, far := b.Along(out)
	near, far = near-on.Pose.At.Dot(out), far-on.Pose.At.Dot(out)
	if math.Min(math.Abs(near-said), math.Abs(far-said)) > filedOffMm {
		r.add(Finding{
			Part: e.Part.Value, Pos: e.How.Pos, What: "the words for " + r.called(e) + " put its edge elsewhere than it lies", Numbers: w[0] + "; " + r.mm(near) + " and " + r.mm(far),
			Rule: "words and numbers of one job agree", Source: "by geometry", Fix: "the place as it is there",
		})
	}
}

// spotMm is how far a point may lie from its spot. Common practice, no source: it draws in.
const spotMm = 1.5

// spot is a place of a spot along a part from its front, and of the note that gives it.
type spot struct {
	mm  float64
	pos parts.Pos
}

// spots are those that its notes give a part.
func (v *view) spots() (all []spot) {
	for t, w := range saying(v.p.Notes, spotsAt) {
		for _, text := range spotsSep().Split(w[2], -1) {
			z := noteMm(text, w[3])
			if strings.EqualFold(w[4], "back") {
				z = v.lengthMm - z
			}
			all = append(all, spot{z, t.Pos})
		}
	}
	return all
}

// pointed looks for set screws with a point in a loose part that lies round one with spots in its
// notes: the point meets one of them, and none lies in a thread.
func (r *reviewer) pointed(e *parts.Loose) {
	m, v := r.machine(), r.viewOf(e.Part.Value)
	for _, on := range r.all() {
		b, spots := r.bodyOf(on.p.Name.Value), on.spots()
		switch {
		case b == nil || v == nil || len(spots) == 0:
			continue
		case on == v:
			v.spotsPlain(spots)
			continue
		}
		for _, c := range m.Along(b.Pose) {
			if c.Of.Part == v.p {
				on.meetsSpot(v, c, spots)
			}
		}
	}
}

// spotsPlain finds spots beside the part, or in a thread of it.
func (v *view) spotsPlain(spots []spot) {
	for _, s := range spots {
		if c := at(v.outside, s.mm); c == nil || c.threaded() {
			v.report(Check, "", s.pos, Finding{
				What: "a spot of " + v.p.Title.Value + " does not lie on a plain outside", Numbers: v.mm(s.mm) + " from the front",
				Rule: "a point holds in a spot in full metal", Fix: "another place along it",
			})
		}
	}
}

// meetsSpot finds a screw with a point in a part round this one, as it stands along its axis, that comes down beside all spots.
func (v *view) meetsSpot(o *view, stands stand.OnAxis, spots []spot) {
	for f := range seq.Refs(o.p.Radials) {
		if !withPoint().MatchString(f.Note.Value) {
			continue
		}
		z := stands.Z(o.axialMm(f))
		if !slices.ContainsFunc(spots, func(s spot) bool { return math.Abs(s.mm-z) <= spotMm }) {
			all := seq.Map(spots, func(s spot) float64 { return s.mm })
			v.report(Check, "", spots[0].pos, Finding{
				What:    "the point of " + f.Name.Value + " in " + o.p.Title.Value + " meets no spot of " + v.p.Title.Value,
				Numbers: v.mm(z) + " from its front; spots at " + strings.Join(v.written(all), ", "),
				Rule:    "a point goes into its spot", Source: "by geometry", Fix: "the spot where the part comes to lie",
			})
		}
	}
}
