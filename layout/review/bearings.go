package review

import (
	"cmp"
	"slices"
	"strconv"
	"strings"

	"centrepop/layout/fits"
	"centrepop/layout/plan"
	"centrepop/layout/stand"
	"centrepop/layout/threads"
	"centrepop/parts"
	"centrepop/parts/geom"
	"centrepop/parts/seq"
)

// The widest end float and the most preload of a pair of tapered bearings, as a
// length, and the most interference of a cone that its nut pushes along, as a part
// of its bore. Common practice, no source.
const (
	widestMm    = 0.3
	preloadMm   = 0.1
	pushedShare = 0.001
)

// twoSizes tells whether the job gives the bearing of a joint other sizes elsewhere: what they
// show is not known then.
func (r *reviewer) twoSizes(j *plan.JointPlan) bool {
	b := r.job.Joint(j.Name).Bearing
	return slices.ContainsFunc(r.job.Of(parts.BearingKind), func(o *parts.Joint) bool {
		return o.Bearing.Bearing.Value == b.Bearing.Value && r.sizesOf(o.Bearing) != r.sizesOf(b)
	})
}

// bearingPair looks for bearings of one shaft that do not go together: that turn
// unlike, are greased unlike or are set by neither; and for sizes of one bearing
// that cannot be its own.
var bearingPair = together(
	each(everyJoint(parts.BearingKind), (*reviewer).tapered, (*reviewer).bearingSizes, (*reviewer).endFloat, (*reviewer).besideBearing),
	each(everyPlan(parts.BearingKind), (*reviewer).looseRing, (*reviewer).pushed, (*reviewer).nutClear, (*reviewer).saidPair, (*reviewer).regreased),
)

// besideBearing compares a bearing with the first of its designation, and with the first on its shaft.
func (r *reviewer) besideBearing(j *parts.Joint) {
	b := j.Bearing
	say := func(what, numbers, rule, source, fix string) {
		r.add(Finding{Part: j.Name.Value, Pos: j.Pos, What: what, Numbers: numbers, Rule: rule, Source: source, Fix: fix})
	}
	all := r.job.Of(parts.BearingKind)
	like := seq.First(all, func(o *parts.Joint) bool { return o.Bearing.Bearing.Value == b.Bearing.Value })
	if is, was := r.sizesOf(b), r.sizesOf(like.Bearing); is != was {
		say(j.Name.Value+" and "+like.Name.Value+" give one bearing two sizes: "+b.Bearing.Value, is+", "+was,
			"a designation has one bore, outside and width", "by the job", "the maker's sizes in both places")
	}
	if greased := r.job.Upkeep != nil && slices.ContainsFunc(r.job.Upkeep.Ports, func(p parts.Port) bool { return p.Bearing.Value == j.Name.Value }); b.Ball &&
		!b.Sealed() && b.Grease.Value == "" && !greased {
		say(b.Bearing.Value+" is open on a side, and nothing says what grease goes into it", "", "an open bearing is filled with grease, and kept from dirt",
			practice, "2RS for a sealed one, or grease: and a cover or a seal beside it")
	}
	shaft := seq.Keep(all, func(o *parts.Joint) bool { return o.Bearing.Cone.Part == b.Cone.Part })
	one := shaft[0].Bearing
	if one == b && !b.Ball && !slices.ContainsFunc(shaft, func(o *parts.Joint) bool { return len(o.Bearing.EndFloat) == 2 }) {
		say("no bearing of "+b.Cone.Part+" says how much end float it is set to", "",
			"a tapered bearing is set to an end float or a preload", practice, "end-float at the bearing that its nut sets, by the maker's figure")
	}
	if one.Rotating != b.Rotating {
		say("the bearings of "+b.Cone.Part+" do not turn alike", one.Rotating+" and "+b.Rotating+" rotating", "one shaft turns or stands", "by the job", "the same at both bearings")
	}
	if is, was := greaseNamed(b), greaseNamed(one); is != "" && was != "" && is != was && one.Cup.Part == b.Cup.Part {
		say("the bearings in "+b.Cup.Part+" are greased unlike", one.Grease.Value+", "+b.Grease.Value, "greases of two thickeners soften one another", practice, "one grease for both")
	}
}

// regreased looks at the ways of grease into a housing that seals close, and out of it again:
// by a second hole, or by a lip that looks outward and gives way.
func (r *reviewer) regreased(j *plan.JointPlan) {
	in, v := r.job.Joint(j.Name), r.viewOf(j.B.Part)
	if in.Bearing.Grease.Value == "" || j != seq.First(r.planned(parts.BearingKind), func(o *plan.JointPlan) bool { return o.B.Part == j.B.Part }) {
		return
	}
	if slices.ContainsFunc(v.p.Holes, func(h parts.HoleGroup) bool { return h.For.Opens() }) {
		return
	}
	f := Finding{
		Numbers: in.Bearing.Grease.Value, Rule: "greased bearings between seals take new grease, and the old gets out",
		Fix: "a radial hole between the cups, its neighbour opposite it, or accept it where the bearings are packed anew",
	}
	open := seq.Sum(v.p.Radials, func(f parts.Radial) int { return len(f.Clock) })
	switch seals, out := r.lipsRound(j); {
	case seals < 2 || open > 1 || open == 1 && out:
		return
	case open == 0:
		f.What = "nothing lets grease into " + v.p.Title.Value
	default:
		f.What = "one hole alone lets grease into " + v.p.Title.Value + " and out again: the lips of its seals look inward"
	}
	v.report(Note, "", v.p.Name.Pos, f)
}

// lipsRound counts the seals that stand with a bearing, and tells whether a lip looks away from it.
func (r *reviewer) lipsRound(j *plan.JointPlan) (seals int, out bool) {
	for _, p := range r.along(j) {
		for _, s := range p.Of.Out.Section.Seals {
			seals, out = seals+1, out || looks(p, s)*(j.Bearing.LargeEndMm-p.Z(s.Span().MidMm())) < 0
		}
	}
	return seals, out
}

// greaseNamed names the grease of a bearing, without how much of it goes in.
func greaseNamed(b *parts.BearingJoint) string {
	return strings.ToLower(strings.Trim(massOf().ReplaceAllString(b.Grease.Value, ""), " ,;:"))
}

// saidPair compares notes with how a bearing and its neighbour look at each other.
func (r *reviewer) saidPair(j *plan.JointPlan) {
	b := j.Bearing
	if b.Arrangement == "" {
		return
	}
	texts := slices.Concat(r.viewOf(j.A.Part).texts(), r.viewOf(j.B.Part).texts(), r.job.Notes, []parts.Text{r.job.Joint(j.Name).Note})
	for said, m := range saying(sentences(texts...), paired) {
		if plan.Pair(strings.ToLower(strings.ReplaceAll(m[1], "-", " "))) != b.Arrangement {
			r.viewOf(j.B.Part).unlike(said.Pos, "", "a note says how the bearings of "+j.B.Part+" look at each other, and "+j.Name+" has them otherwise",
				m[1]+"; by their shoulders "+string(b.Arrangement), "the note, or the shoulders")
		}
	}
}

// sizesOf are the bore, outside and width of a bearing in words.
func (r *reviewer) sizesOf(b *parts.BearingJoint) string {
	return r.mm(b.Bore.Mm) + " × " + r.mm(b.Outside.Mm) + " × " + r.mm(b.Width.Mm)
}

// taperedOf are the outside diameters and widths T of the single-row tapered bearings of
// a metric series by the code of their bore from 04 on, in mm; 0 where there is none. ISO 355.
var taperedOf = map[string][][2]float64{
	"302": {{47, 15.25}, {52, 16.25}, {62, 17.25}, {72, 18.25}, {80, 19.75}, {85, 20.75}, {90, 21.75}, {100, 22.75}, {110, 23.75}, {120, 24.75}, {125, 26.25}, {130, 27.25}, {140, 28.25}},
	"303": {{52, 16.25}, {62, 18.25}, {72, 20.75}, {80, 22.75}, {90, 25.25}, {100, 27.25}, {110, 29.25}, {120, 31.5}, {130, 33.5}, {140, 36}, {150, 38}, {160, 40}, {170, 42.5}},
	"313": {{}, {62, 18.25}, {72, 20.75}, {80, 22.75}, {90, 25.25}, {100, 27.25}, {110, 29.25}, {120, 31.5}, {130, 33.5}, {140, 36}, {150, 38}, {160, 40}, {170, 42.5}},
	"320": {{42, 15}, {47, 15}, {55, 17}, {62, 18}, {68, 19}, {75, 20}, {80, 20}, {90, 23}, {95, 23}, {100, 23}, {110, 25}, {115, 25}, {125, 29}},
	"322": {{}, {52, 19.25}, {62, 21.25}, {72, 24.25}, {80, 24.75}, {85, 24.75}, {90, 24.75}, {100, 26.75}, {110, 29.75}, {120, 32.75}, {125, 33.25}, {130, 33.25}, {140, 35.25}},
	"323": {{52, 22.25}, {62, 25.25}, {72, 28.75}, {80, 32.75}, {90, 35.25}, {100, 38.25}, {110, 42.25}, {120, 45.5}, {130, 48.5}, {140, 51}, {150, 54}, {160, 58}, {170, 61.5}},
	"330": {{}, {47, 17}, {55, 20}, {62, 21}, {68, 22}, {75, 24}, {80, 24}, {90, 27}, {95, 27}, {100, 27}, {110, 31}, {115, 31}, {125, 36}},
	"332": {{}, {52, 22}, {62, 25}, {72, 28}, {80, 32}, {85, 32}, {90, 32}, {100, 35}, {110, 38}, {120, 41}, {125, 41}, {130, 41}, {140, 46}},
}

// otherWidth is the outside and the width of a known bearing that is given others; false where
// no table knows it or the sizes are its own.
func otherWidth(name string, outsideMm, widthMm float64) (own [2]float64, other bool) {
	i := int(boreCodeMm(name)/5) - 4
	if i < 0 || i >= len(taperedOf[name[:3]]) {
		return own, false
	}
	own = taperedOf[name[:3]][i]
	return own, own[0] > 0 && (!geom.Alike(own[0], outsideMm) || !geom.Alike(own[1], widthMm))
}

// looseRing looks at seats given as limits in inches, for which no table of classes speaks:
// the ring that turns with its load creeps on a seat that is loose or may be, as an ISO class of a
// metric bearing leaves one of an inch bearing, unless it is moved to set the bearing, and so does a cup that is loose where that of the same bearing beside it, on
// a shaft set by a nut, is tight.
func (r *reviewer) looseRing(j *plan.JointPlan) {
	b := j.Bearing
	if r.job.Units != parts.Inches || b.Ball { // of that the table of classes speaks in inches too
		return
	}
	end, fit, why := j.A, b.ConeFitUm, "it turns with the load"
	if b.Rotating == "outer" {
		end, fit = j.B, b.CupFitUm
	}
	if end == j.A && b.Adjusted || fit.Min >= 0 {
		other := r.tightBeside(j)
		if end, fit, why = j.B, b.CupFitUm, "the other, of "+other+", is tight"; other == "" || fit.Max >= 0 {
			return
		}
	}
	is, numbers := " is", r.w.Near(-fit.Max/1000)+" to "+r.w.Near(-fit.Min/1000)+" of play"
	if fit.Max >= 0 {
		is, numbers = " may be", r.w.Near(-fit.Min/1000)+" of play to "+r.w.Near(fit.Max/1000)+" of tightness"
	}
	r.add(Finding{
		Part: j.Name, Feature: end.Feature, Pos: r.jointPos(j.Name), OverMm: over(-fit.Min / 1000), What: "a ring of " + b.Bearing + is + " loose on " + end.Feature + ": " + why, Numbers: numbers,
		Rule: "the ring that turns with its load is tight, and so is a cup that nothing moves", Fix: "limits from the bearing maker's table",
	})
}

// tightBeside is the joint of the same bearing in the housing of one whose cup is tight, the last of them; empty where
// there is none, or no nut sets any.
func (r *reviewer) tightBeside(j *plan.JointPlan) (name string) {
	like := seq.Keep(r.planned(parts.BearingKind), func(o *plan.JointPlan) bool { return o.B.Part == j.B.Part && o.Bearing.Bearing == j.Bearing.Bearing })
	if !j.Bearing.Adjusted && !slices.ContainsFunc(like, func(o *plan.JointPlan) bool { return o.Bearing.Adjusted }) {
		return ""
	}
	for _, o := range like {
		if o.Bearing.CupFitUm.Min > 0 {
			name = o.Name
		}
	}
	return name
}

// leastCone is the least width of a cone as a share of its bearing's. Common practice, no
// source: makers' tables lie above 0.85.
const leastCone = 0.75

// mostCone is how much wider a cone is than its bearing at the most: in the inch series its
// small end stands out behind the cup, by 1.074 of T for LM11949, 1.056 for LM67048 and 1.014 for
// LM48548 (makers' catalogues, from memory).
const mostCone = 1.15

// bearingSizes compares a bearing's sizes with its designation and each other.
func (r *reviewer) bearingSizes(j *parts.Joint) {
	b := j.Bearing
	say := func(what, numbers, rule, source string) {
		r.add(Finding{Severity: Stop, Part: j.Name.Value, Pos: j.Pos, Fix: "the designation or the sizes are wrong", What: what, Numbers: numbers, Rule: rule, Source: source})
	}
	name := b.Bearing.Value
	if mm := boreCodeMm(name); mm > 0 && !geom.Alike(mm, b.Bore.Mm) {
		say(name+" has another bore than the joint gives", r.mm(mm)+", given "+r.mm(b.Bore.Mm),
			"the last two figures of a metric bearing are a fifth of its bore in millimetres", "ISO 355, ISO 15 bore code")
	}
	if own, other := otherWidth(name, b.Outside.Mm, b.Width.Mm); other {
		say(name+" has other sizes than the joint gives", r.mm(own[0])+" × "+r.mm(own[1])+", given "+r.mm(b.Outside.Mm)+" × "+r.mm(b.Width.Mm),
			"a designation has one outside and one width", "ISO 355")
	}
	if most := mostCone * b.Width.Mm; geom.Over(b.ConeWidth.Mm, most) {
		say("the cone of "+name+" is far wider than the bearing", r.mm(b.ConeWidth.Mm)+" of "+r.mm(b.Width.Mm)+", wanted at most "+r.mm(most),
			"the maker's T is over both rings, B of the cone alone", practice)
	}
	if least := leastCone * b.Width.Mm; b.ConeWidth.Set() && geom.Over(least, b.ConeWidth.Mm) {
		say("the cone of "+name+" is far narrower than the bearing", r.mm(b.ConeWidth.Mm)+" of "+r.mm(b.Width.Mm)+", wanted at least "+r.mm(least), "a cone is nearly as wide as its bearing", practice)
	}
	for _, at := range []struct {
		name string
		mm   parts.Length
	}{{"da", b.Da}, {"db", b.Db}, {"Da", b.CupDa}, {"Db", b.CupDb}} {
		if at.mm.Set() && (at.mm.Mm <= b.Bore.Mm || at.mm.Mm >= b.Outside.Mm) {
			say("the abutment "+at.name+" of "+name+" is not between its bore and its outside", r.mm(at.mm.Mm)+"; "+r.mm(b.Bore.Mm)+" and "+r.mm(b.Outside.Mm),
				"a shoulder stands against the side of a ring", "by geometry")
		}
	}
}

// endFloat looks at the play or preload that a bearing is set to.
func (r *reviewer) endFloat(j *parts.Joint) {
	float := j.Bearing.EndFloat
	if len(float) != 2 {
		return
	}
	least, most := float[0].Mm, float[1].Mm
	is := r.mm(least) + " to " + r.mm(most) + ", wanted at "
	r.firstOf(Finding{Part: j.Name.Value, Pos: j.Pos, Rule: "a pair of tapered bearings runs with little play or with preload", Fix: "the maker's figure"},
		flaw{geom.Over(most, widestMm), Finding{What: "the end float of " + j.Name.Value + " is wide", Numbers: is + "most " + r.mm(widestMm), OverMm: over(most)}},
		flaw{geom.Over(-preloadMm, least), Finding{What: "the preload of " + j.Name.Value + " burns the bearings", Numbers: is + "least " + r.mm(-preloadMm), OverMm: over(-least)}},
	)
}

// pushed looks for a cone that a nut sets and that sits too tight to be pushed along.
func (r *reviewer) pushed(j *plan.JointPlan) {
	b := j.Bearing
	most := pushedShare * b.BoreMm
	if v := r.viewOf(j.A.Part); v != nil && slices.ContainsFunc(v.p.Notes, func(t parts.Text) bool { return coneSlides().MatchString(t.Value) }) {
		most = 0
	}
	if !b.Adjusted || !geom.Over(b.ConeFitUm.Max/1000, most) {
		return
	}
	tight := b.ConeFitUm.Max / 1000
	r.ofJoint(j, Finding{
		What:    "the cone that the nut of " + b.Bearing + " sets sits too tight on " + j.A.Feature,
		Numbers: r.mm(tight) + " of interference at the most, wanted " + r.mm(most), OverMm: over(tight),
		Rule: "a cone that is set moves under its nut", Fix: "a looser seat, or set the bearing at the other one",
	})
}

// nutOver is the outside diameter and the height of the nut on a thread: a part of
// the job, or a locking nut.
func (r *reviewer) nutOver(designation string) (overMm, highMm float64) {
	for _, v := range r.all() {
		if r.nutOf(v.p.Name.Value, designation) {
			return 2 * v.wideMm(), v.lengthMm
		}
	}
	t, err := threads.Parse(designation)
	if err != nil {
		return 0, 0
	}
	nut := lockNutOf(t)
	return nut.overMm, nut.highMm
}

// nutClear looks for parts in the place of the nut that sets a bearing.
func (r *reviewer) nutClear(j *plan.JointPlan) {
	b := j.Bearing
	if !b.Adjusted || b.LargeEndDir == 0 {
		return
	}
	wide, high := r.nutOver(b.HeldBy)
	axis, _ := r.machine().AxisOf(j)
	on, in := geom.Between(b.LargeEndMm, b.LargeEndMm+b.LargeEndDir*high), map[string]bool{}
	other := func(p stand.OnAxis) bool {
		name := p.Of.Part.Name.Value
		return name != j.A.Part && !r.nutOf(name, b.HeldBy)
	}
	for p, mm := range r.lyingIn(ringOf(axis, on, b.BoreMm/2, wide/2)) {
		if in[p.ID] = true; other(p) {
			r.inNutsPlace(p, "that sets "+b.Bearing, Finding{
				Numbers: "the nut on " + b.HeldBy + " is at least " + r.mm(wide) + " across; they lie " + r.mm(mm) + " in one another",
			})
		}
	}
	for _, p := range r.along(j) {
		if !in[p.ID] && other(p) {
			r.nutTurns(b, p, on)
		}
	}
}

// inNutsPlace reports a part that stands where a nut comes, one that sets a bearing or one that is bought.
func (r *reviewer) inNutsPlace(p stand.OnAxis, nut string, f Finding) {
	f.Severity, f.Part, f.Pos, f.What = Stop, p.Of.Part.Name.Value, p.Of.Part.Name.Pos, r.machine().Title(p.ID)+" stands in the place of the nut "+nut
	f.Rule, f.Source, f.Fix = "the nut has its place, and is reached", "ISO 2982-2", "a wider bore there"
	r.add(f)
}

// boreCodeMm is the bore of a metric tapered bearing, by the five figures that its designation
// starts with, 0 for others.
func boreCodeMm(name string) float64 {
	if m := fiveFigures().FindStringSubmatch(name); m != nil {
		if code, _ := strconv.Atoi(m[1]); code >= 4 {
			return parts.CodedBoreMm(code)
		}
	}
	return 0
}

// otherSeries are bearings that are not tapered, by what stands before the code of their bore, as a pattern. DIN 623-1,
// as makers' catalogues print it.
var otherSeries = []struct{ kind, series string }{
	{"deep groove ball", "60|62|63|64|160|618|619"},
	{"angular contact ball", "70|72|73"},
	{"self-aligning ball", "12|13|22|23"},
	{"spherical roller", "213|222|223|230|231|232|240|241"},
	{"cylindrical roller", "N(?:U|J|UP)? ?(?:10|2|3|22|23)"},
}

// otherNames are the designations of each of otherSeries.
var otherNames = seq.Map(otherSeries, func(o struct{ kind, series string }) phrase {
	return exactly(`^(?:` + o.series + `)(\d\d)(?:[^\d.]|$)`)
})

// tapered finds a bearing whose designation, with the bore that the job gives, is that of another kind than its joint.
func (r *reviewer) tapered(j *parts.Joint) {
	is, of, fix := "tapered roller", "tapered roller bearings", "a tapered one; of another kind give the seats their fits and buy it under loose"
	if j.Bearing.Ball {
		is, of, fix = "deep groove ball", "deep groove ball bearings", "a deep groove one; of another kind give the seats their fits and buy it under loose"
		if boreCodeMm(j.Bearing.Bearing.Value) == j.Bearing.Bore.Mm {
			r.otherKind(j, is, "tapered roller", of, "bearing in place of ball-bearing, or a deep groove one")
		}
	}
	for i, other := range otherSeries {
		if other.kind == is {
			continue
		}
		m := otherNames[i]().FindStringSubmatch(j.Bearing.Bearing.Value)
		if m == nil {
			continue
		}
		if code, _ := strconv.Atoi(m[1]); geom.Alike(parts.CodedBoreMm(code), j.Bearing.Bore.Mm) {
			if other.kind == "deep groove ball" {
				fix = "ball-bearing in place of bearing, or a tapered one"
			}
			r.otherKind(j, is, other.kind, of, fix)
		}
	}
}

// otherKind says that the designation of a bearing is that of another kind.
func (r *reviewer) otherKind(j *parts.Joint, is, other, of, fix string) {
	r.add(Finding{
		Severity: Stop, Part: j.Name.Value, Pos: j.Bearing.Bearing.Pos, What: j.Bearing.Bearing.Value + " is no " + is + " bearing",
		Numbers: "the series and the code of its bore are those of a " + other + " bearing",
		Rule:    "what a bearing joint works out holds for " + of + " alone", Source: "DIN 623-1", Fix: fix,
	})
}

// nutTurns finds a part round the nut that sets a bearing, from lo to hi, which the nut or
// the head of its screw may strike as it turns: where the part is only bolted on, it stands
// off the axis by what the play of its bolts and the two patterns let it.
func (r *reviewer) nutTurns(b *plan.BearingPlan, p stand.OnAxis, on geom.Span) {
	v, title := r.viewOf(p.Of.Part.Name.Value), r.machine().Title(p.ID)
	off, bolted := r.offMm(v.p.Name.Value)
	if !bolted {
		return
	}
	for _, nut := range r.all() {
		if !r.nutOf(nut.p.Name.Value, b.HeldBy) {
			continue
		}
		what, wide := nut.p.Title.Value, nut.wideMm()
		if c := nut.q.Clamp; c != nil && c.ProudMm > 0 {
			in := min(c.AxialMm, nut.lengthMm-c.AxialMm) - c.HeadMm/2 // whichever way round the nut is on
			if of := p.Whole(); on.FromMm+in < of.ToMm && on.ToMm-in > of.FromMm {
				what, wide = "the screw of "+what, c.OutsideMm/2+c.ProudMm
			}
		}
		for _, c := range v.inside {
			low, _, ok := limitsOf(c.Drawn.Size)
			lies := p.Span(c.Span())
			if !ok {
				low = 2 * c.RadiusMm()
			}
			if free := low/2 - wide - off; !geom.Some(free) && lies.OnMm(on) > 0 {
				v.report(Check, c.Name, c.Drawn.Pos, Finding{
					What:    what + " may strike " + c.Name + " of " + title + " as it turns",
					Numbers: r.mm(low/2-wide) + " round it, and " + r.mm(off) + " that " + title + " may stand off the axis", LeftMm: left(free),
					Rule: "what turns clears what is round it wherever the bolts let that stand", Source: "by geometry", Fix: "a larger bore, a register, or a head under the round",
				})
			}
		}
	}
}

// offMm is how far the joint that bolts a part on lets it stand off the axis: half the play
// of its bolts, and for both patterns the general tolerance of their radius; false where
// no bolts hold it, or a fitted step centres it.
func (r *reviewer) offMm(part string) (mm float64, ok bool) {
	j := seq.First(r.planned(parts.BoltKind), func(j *plan.JointPlan) bool { return j.A.Part == part || j.B.Part == part })
	if j == nil {
		return 0, false
	}
	for _, end := range []plan.JointEnd{j.A, j.B} {
		v := r.viewOf(end.Part)
		if face, known := r.faceOf(j.Name, end.Part); known && v.turned() && v.end(face).fitted() {
			return 0, false
		}
	}
	pm, _ := fits.General(j.Bolt.PCDMm/2, r.job.Tolerance.Value)
	return j.Bolt.PlayMm/2 + 2*pm, true
}

// ringClash looks for parts that reach into a bearing, for cones that hang over
// the end of their seat, and for covers that leave a bearing open.
func (r *reviewer) ringClash(j *plan.JointPlan) {
	b := j.Bearing
	if _, other := otherWidth(b.Bearing, b.OutsideMm, b.WidthMm); b.LargeEndDir == 0 || other {
		return // said of the bearing: where it ends is not known
	}
	all := r.along(j)
	if all.Find(j.A.Instance()) == nil || all.Find(j.B.Instance()) == nil {
		return
	}
	r.coneSeat(j, all)
	r.openCover(j, all)
	axis, _ := r.machine().AxisOf(j)
	wide := geom.Between(b.CupBackMm, b.LargeEndMm)
	for p, mm := range r.lyingIn(ringOf(axis, wide, b.BoreMm/2, b.OutsideMm/2)) {
		if name := p.Of.Part.Name.Value; name != j.A.Part && name != j.B.Part {
			r.add(Finding{
				Severity: Stop, Part: name, Pos: p.Of.Part.Name.Pos, What: r.machine().Title(p.ID) + " reaches into the bearing " + b.Bearing,
				Numbers: "they lie " + r.mm(mm) + " in one another; the bearing is " + r.mm(wide.LengthMm()) + " wide there",
				Rule:    "a cover stays clear of the bearing", Source: "by geometry", Fix: "a shorter pilot, or a deeper seat",
			})
		}
	}
}

// coneSeat finds cones that stand beside their seat.
func (r *reviewer) coneSeat(j *plan.JointPlan, all stand.Line) {
	b := j.Bearing
	if j.A.Inside || r.twoSizes(j) {
		return
	}
	wide, inner := cmp.Or(b.ConeWidthMm, coneShare*b.WidthMm), "cone"
	if b.Ball {
		wide, inner = b.WidthMm, "inner ring"
	}
	const least = 0.75
	if on := all.Find(j.A.Instance()).Span(j.A.Span()).OnMm(geom.Between(b.LargeEndMm, b.LargeEndMm-b.LargeEndDir*wide)); on < least*wide {
		r.ofJoint(j, Finding{
			Severity: Stop, What: "the " + inner + " of " + b.Bearing + " stands beside its seat " + j.A.Feature, Numbers: r.mm(max(0, on)) + " of " + r.mm(wide) + " sit on it",
			Rule: "a ring sits on its seat over three quarters of its width", Fix: "shoulders that agree: compare their distance on shaft and housing",
		})
	}
}
