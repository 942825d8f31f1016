package joint

import (
	"cmp"
	"math"
	"slices"
	"strings"

	"centrepop/layout/part"
	"centrepop/layout/plan"
	"centrepop/layout/words"
	"centrepop/parts"
	"centrepop/parts/geom"
	"centrepop/parts/seq"
)

// placeText says where a part stands on another by the faces and distances of
// the joint.
func (j *shop) placeText(t *joint, p *parts.Place) string {
	w, on := j.w, p.On+" of "+t.b.title()
	if long := t.a.r.LengthMm(); t.a.helical() && p.OnAxis() && -p.Gap.Mm >= long && j.flightsOn(t.b.Instance()) == 1 {
		near := string(parts.Face(p.With).Other())
		return near + " end of " + t.a.title() + " " + w.Size(math.Abs(p.Gap.Mm+long)) + " and its " + p.With + " end " + w.Size(math.Abs(p.Gap.Mm)) +
			" from the " + on + "; it starts anywhere round it"
	}
	stop := t.stopsAt(p)
	text := words.Either(stop != "", stop, p.With) + " of " + t.a.title() + " on the " + on + j.fromText(t, p) + j.originText(t, p)
	if p.Looks != "" {
		end := words.Either(p.Edge(), "front", "TOP")
		text += ", " + end + " " + t.looksText(p)
		if to := lengthTo(p); to != "" && t.a.r.Part.Bar != nil {
			text += ", its right end to the " + to + " of " + t.b.title()
		}
		text += t.leansText(p)
	}
	switch on := t.b.roundMm(); {
	case stop != "":
		_, out := j.seams.Through(t.in)
		return text + words.When(out > 0, ", its "+p.With+" out of the other side by "+w.Size(out))
	case p.Gap.Mm > 0:
		text += ", " + w.Size(p.Gap.Mm) + " clear of it"
	case p.Gap.Mm < 0 && on > 0 && t.a.roundMm() > on:
		text += ", " + w.Size(-p.Gap.Mm) + " over it"
	case p.Gap.Mm < 0:
		text += ", " + w.Size(-p.Gap.Mm) + " inside it"
	}
	return text
}

// stopsAt is the shoulder with which a turned part that goes into another lies on the face that its place names; empty for none.
func (t *joint) stopsAt(p *parts.Place) string {
	dir := parts.Face(p.With).Outward()
	stop := seq.First(t.a.r.Side(false), func(s *part.Step) bool {
		return p.Gap.Mm < 0 && geom.Alike(math.Abs(end(s, dir)-faceMm(t.a.r, dir)), -p.Gap.Mm) && shoulder(feature{r: t.a.r, step: s}, dir) == nil
	})
	if stop == nil {
		return ""
	}
	return shoulderOf(words.Spaced(stop.Name))
}

// throughHole notes a turned part that may be larger than the hole which its place puts it through.
func (j *shop) throughHole(t *joint) {
	p := t.in.Place
	if p == nil || p.Gap.Mm >= 0 || !t.a.r.Part.Turned() {
		return
	}
	name, _ := j.seams.Through(t.in)
	g, dir := t.b.r.GroupNamed(name), parts.Face(p.With).Outward()
	if g == nil || g.Hole == nil || g.Size.Thread != nil {
		return
	}
	inside := geom.Span{FromMm: faceMm(t.a.r, dir), ToMm: faceMm(t.a.r, dir) + dir*p.Gap.Mm}
	if inside.FromMm > inside.ToMm {
		inside.FromMm, inside.ToMm = inside.ToMm, inside.FromMm
	}
	for _, s := range stepsAt(t.a.r, false, inside) {
		if more := geom.Clean(s.Size.MaxMm - g.Size.Size.MinMm); more > 0 {
			t.problem(plan.ThroughBinds, plan.Named(t.a.title()+" "+words.Spaced(s.Name)), plan.Of(plan.Read, more), plan.Named(words.Spaced(name)), plan.Named(t.b.title()))
		}
	}
}

// leansText is the way that a bar leans which stands on a face with its mitred end: over its shorter side.
func (t *joint) leansText(p *parts.Place) string {
	end := t.a.r.Part.BarEnd(p.With)
	if end == nil || !end.Mitred() {
		return ""
	}
	to := *p
	to.Looks = map[string]string{"up": "left", "left": "down", "down": "right", "right": "up"}[p.Looks] // the top of what stands on its right end
	if (p.With == string(parts.LeftEnd)) != (end.Long == parts.TopSide) {
		to.Looks = map[string]string{"up": "down", "down": "up", "left": "right", "right": "left"}[to.Looks]
	}
	return ", leaning " + words.FineAngle(end.Mitre.Deg) + " " + t.looksText(&to)
}

// lengthTo is the side of the other part that the right end of a bar lies towards; empty where
// it is one of its ends that stands on it.
func lengthTo(p *parts.Place) string {
	ways := faceWays[p.On]
	to := map[string]string{"up": opposite[ways[0]], "down": ways[0], "right": ways[1], "left": opposite[ways[1]]}[p.Looks]
	switch p.With {
	case "front", "bottom":
		return to
	case "back", "top":
		return opposite[to]
	}
	return ""
}

// looksText says where a part looks: as seen on a face, or by the sides of what it stands on
// where that is seen on edge.
func (t *joint) looksText(p *parts.Place) string {
	if ways := faceWays[p.On]; p.OnRim() {
		to := map[string]string{"up": ways[1], "down": opposite[ways[1]], "right": ways[0], "left": opposite[ways[0]]}
		return "to the " + to[p.Looks] + " of " + t.b.title()
	}
	return map[string]string{"up": "up", "down": "down", "left": "to the left", "right": "to the right"}[p.Looks]
}

// flightsOn counts the flights that stand on a part: where one starts round it is of no matter.
func (j *shop) flightsOn(hub parts.Instance) (n int) {
	for _, in := range j.job.Joints {
		on, to := in.Ends()
		if in.Place != nil && to.Instance() == hub && j.find(on).helical() {
			n++
		}
	}
	return n
}

// originText says where the origin of a part lies from that of what it stands on; of two bars,
// whose origins are no marks, how far the first reaches past the other's sides, and of what stands on a bar or a plate how far
// it is from the nearer edges: a tape is laid to those.
func (j *shop) originText(t *joint, p *parts.Place) string {
	switch {
	case p.At == nil:
		return ""
	case t.a.r.Part.Bar != nil && t.b.r.Part.Bar != nil:
		return j.pastText(t)
	case p.Gap.Mm >= 0 && (t.b.r.Part.Bar != nil || t.b.r.Part.Kind == parts.Plate && t.b.roundMm() == 0):
		return j.edgesText(t)
	}
	if over := t.over(p); over != "" {
		return ", its middle over that of " + over
	}
	if hole, _ := j.seams.Through(t.in); hole != "" && t.a.r.Part.Turned() {
		return ", its axis on that of the hole " + words.Spaced(hole)
	}
	at, known := t.middleAt(p)
	return ", " + strings.Join(append([]string{"its " + words.Either(known, "middle", "origin") + " on the other's"}, offText(j.w, at.XMm, at.YMm)...), ", ")
}

// over is the opening in the front of what a part stands on that the middle of its end lies over; empty where it lies over none.
func (t *joint) over(p *parts.Place) string {
	if t.a.r.Part.Flat() || !t.a.middled() || p.On != string(parts.Front) {
		return ""
	}
	at := t.endAt(p)
	g := seq.At(t.b.r.Groups, func(g *part.Group) bool {
		return !g.OnWall() && g.Face != parts.Back && len(g.Points) == 1 && geom.Distance(g.OwnMm()[0], at) < inMetalMm
	})
	if g == nil {
		return ""
	}
	return words.Spaced(g.Group.Name)
}

// offText says how far one origin lies from another, seen along its axis: nothing of a direction
// in which it does not.
func offText(w words.Writer, xMm, yMm float64) (text []string) {
	if !geom.Alike(xMm, 0) {
		text = append(text, w.Size(math.Abs(xMm))+side(xMm, " to the left", " to the right"))
	}
	if !geom.Alike(yMm, 0) {
		text = append(text, w.Size(math.Abs(yMm))+side(yMm, " down", " up"))
	}
	return text
}

// edgesText says how far what stands on a face is from the nearer of its left and right edges, and of its lower and upper.
func (j *shop) edgesText(t *joint) (text string) {
	edges, past := [4]string{"left", "right", "bottom", "top"}, j.seams.PastMm(t.in)
	for i := 0; i < len(past); i += 2 {
		n := i
		if geom.Over(math.Abs(past[i]), math.Abs(past[i+1])) {
			n++
		}
		text += j.edgeText(-past[n], "its "+edges[n]+" edge")
	}
	return text
}

// faceWays are, for each face of a part, its sides to the right and above as one looks at
// that face; left and right, top and bottom are those of its front view.
var faceWays = map[string][2]string{
	"front": {"right", "top"}, "back": {"left", "top"}, "left": {"front", "top"}, "right": {"back", "top"}, "top": {"right", "back"}, "bottom": {"right", "front"},
}

var opposite = map[string]string{"front": "back", "back": "front", "left": "right", "right": "left", "top": "bottom", "bottom": "top"}

// pastText says how far a bar reaches past the sides of the face that it lies on.
func (j *shop) pastText(t *joint) (text string) {
	ways, past := faceWays[t.in.Place.On], j.seams.PastMm(t.in)
	for i, side := range []string{opposite[ways[0]], ways[0], opposite[ways[1]], ways[1]} {
		word := words.Either(past[i] < 0, " short of its ", " past its ")
		text += ", " + j.w.Size(math.Abs(past[i])) + word + side
	}
	return text
}

func side(v float64, below, above string) string { return words.Either(v < 0, below, above) }

// fromText says how far a part stands from the edges of what it stands on.
func (j *shop) fromText(t *joint, p *parts.Place) (text string) {
	for i, mm := range []parts.Length{p.FromLeft, p.FromRight, p.FromBottom, p.FromTop} {
		if !mm.Set() {
			continue
		}
		edge := []string{"left", "right", "bottom", "top"}[i]
		from := "its " + edge + " edge"
		if end := t.b.r.Part.BarEnd(edge); j.short[t.b.ref.Part] && end != nil && end.Mitred() {
			from = "the outside of its frame at the " + edge // its own end is sawn short of that
		}
		text += j.edgeText(mm.Mm, from)
	}
	return text
}

// edgeText says how far a part stands from an edge, or past it where that is less than 0.
func (j *shop) edgeText(mm float64, edge string) string {
	if geom.Alike(mm, 0) {
		return ", at " + edge
	}
	return ", " + j.w.Size(math.Abs(mm)) + words.Either(mm < 0, " past ", " from ") + edge
}

// middleAt is where the middle of the face that a part stands with lies from the other's middle, seen on that
// face; its origin, and not known, where either is no middle that a person at the bench finds.
func (t *joint) middleAt(p *parts.Place) (at plan.XY, known bool) {
	aside := p.With == string(parts.Back) && t.a.r.Part.Narrowed() != (geom.Point{})
	if !t.a.middled() || !t.b.middled() || aside && p.On != string(parts.Front) {
		return plan.XY{XMm: p.At.X.Mm, YMm: p.At.Y.Mm}, false
	}
	return t.endAt(p), true
}

// endAt is where the middle of the end that a part stands with lies from the other's origin.
func (t *joint) endAt(p *parts.Place) plan.XY {
	at := plan.XY{XMm: p.At.X.Mm, YMm: p.At.Y.Mm}
	if p.With == string(parts.Back) {
		at = turnedBy(p.TurnDeg()).point(t.a.r.Part.Narrowed()).Plus(at)
	}
	return at
}

// copeText says where on a round the coped end of a bar sits; empty where no place is said.
func (t *joint) copeText() string {
	end, ok := t.a.barEnd()
	if !ok {
		return ""
	}
	e := t.a.r.Part.Bar.End(end)
	if e.Place == nil || e.Onto.Part != t.b.ref.Part {
		return ""
	}
	from := cmp.Or(e.Place.From, parts.Front)
	return t.a.text() + " on " + t.b.text() + " at clock " + words.Angle(e.Place.Clock.Deg) + ", square to it, its middle " + t.w.Size(e.Place.Axial.Mm) +
		" from the " + string(from) + " of " + t.b.title() + ", fronts looking the same way"
}

// alongText is where along its axis a place has a face of what enters.
func (t *joint) alongText() string {
	p, how := t.in.Place, " level with"
	switch along := parts.Face(p.On).Outward() * p.Gap.Mm; {
	case along > 0:
		how = " " + t.w.Size(along) + " behind"
	case along < 0:
		how = " " + t.w.Size(-along) + " in front of"
	}
	return p.With + " of " + t.a.title() + how + " the " + p.On + " of " + t.b.title()
}

// enters tells whether one of two parts lies round in a bore of the other, welded or pressed there.
func (t *joint) enters() bool {
	return t.forGood() && t.a.step != nil && t.b.step != nil && t.a.step.Inside != t.b.step.Inside
}

// topText says which way TOP of the first part of a joint on one axis looks; empty where that is nothing.
func (j *making) topText(t *joint) string {
	if j.noTop(t) {
		return ""
	}
	return ", TOP of " + t.a.title() + " at " + words.Angle(j.stands(t).turn) + " of " + t.b.title()
}

// noTop tells whether one of the two parts of a joint is alike all round, with no mark at its TOP, and in no other
// joint, or they are screwed together: which way it is turned is nothing.
func (j *making) noTop(t *joint) bool {
	return t.is(parts.ScrewKind) || len(t.in.InLine) == 0 && slices.ContainsFunc([]feature{t.a, t.b}, func(f feature) bool {
		p := f.r.Part
		return p.AllRound() && p.Top.Value == "" && !slices.ContainsFunc(j.job.Joints, func(o *parts.Joint) bool { return o != t.in && o.Holds(p.Name.Value) })
	})
}

// againstText says which faces meet, or which shoulder of its shaft a bush stands against.
func (t *joint) againstText() string {
	m := t.meeting()
	if t.unkept() {
		if stop := shoulder(t.b, -m.Second.Outward()); stop != nil {
			return string(m.First) + " of " + t.a.title() + " against " + shoulderOf(words.Spaced(stop.Name)) + " of " + t.b.title()
		}
	}
	return t.a.bears(m.First) + " of " + t.a.title() + " on the " + t.b.bears(m.Second) + " of " + t.b.title()
}

// bears names what of a turned part bears where its holes are: a face, or that of the step past which a spigot stands out.
func (f feature) bears(face parts.Face) string {
	z, _, ok := 0.0, 0.0, false
	if f.group != nil && !f.onWall() && f.r.Part.Turned() {
		z, _, ok = f.plane(face)
	}
	if !ok || geom.Alike(z, faceMm(f.r, face.Outward())) {
		return string(face)
	}
	step := seq.First(f.r.Side(false), func(s *part.Step) bool { return geom.Alike(end(s, face.Outward()), z) })
	if step == nil {
		return string(face)
	}
	return string(face) + " of " + words.Spaced(step.Name)
}
