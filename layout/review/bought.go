package review

import (
	"cmp"
	"math"
	"regexp"
	"slices"
	"strings"

	"centrepop/layout/fits"
	"centrepop/layout/plan"
	"centrepop/layout/threads"
	"centrepop/layout/words"
	"centrepop/parts"
	"centrepop/parts/geom"
	"centrepop/parts/seq"
)

// screwWords are a thread and a length as a screw is ordered.
var screwWords = regexp.MustCompile(`(M\d+(?:x\d+(?:\.\d+)?)?|#?\d+(?:[-/]\d+)*-\d+ UN[CF]) ?[x×] ?(\d+(?:\.\d+|-\d+/\d+|/\d+)?) ?(mm|in)?`)

// screwBought is the screw that is ordered for a loose part; false where the words name none.
func screwBought(words string) (t threads.Thread, longMm float64, ok bool) {
	m := screwWords.FindStringSubmatch(words)
	if m == nil {
		return t, 0, false
	}
	t, err := threads.Parse(m[1])
	unit := m[3]
	if unit == "" && t.TPI > 0 {
		unit = "in"
	}
	return t, noteMm(m[2], unit), err == nil
}

// forPushing is in the names of threads that take a screw only to part or to lift.
var forPushing = regexp.MustCompile(`(?i)\b(draw|jack|pry|push|pull|lift|eye)`)

// bought compares the screws that are ordered for a loose part with its threads, and with
// the holes in the wall of what it stands in.
func bought(r *reviewer) {
	r.sizesNamed()
	for e := range seq.Refs(r.job.Loose) {
		r.boughtFor(e, r.boughtBy(e))
		r.orders(e)
		r.seatLong(e)
		r.couplingTorque(e)
		r.couplingBores(e)
		r.holesFree(e)
	}
}

// boughtFor compares the screws that are ordered for a loose part with its own threads; short tells that they are fewer
// than the holes that the words name.
func (r *reviewer) boughtFor(e *parts.Loose, short bool) {
	v := r.viewOf(e.Part.Value)
	t, long, ok := screwBought(e.Buy.Value)
	if v == nil || !ok {
		return
	}
	f := Finding{Part: v.p.Name.Value, Pos: e.Buy.Pos, Numbers: e.Buy.Value, Source: "by the job"}
	holes, others, passes := 0, 0, false
	for g := range seq.Refs(v.p.Holes) {
		has, err := threads.Parse(g.Size.Thread)
		switch {
		case err == nil && g.Size.Make == parts.ClearanceHole && has.Designation == t.Designation:
			passes = true
		case g.Size.Make != parts.TappedHole || err != nil || forPushing.MatchString(g.Name.Value):
		case has.Designation != t.Designation:
			others++
		default:
			holes += g.Pattern.Count
			r.boughtInto(e, v, g, t, long)
		}
	}
	if c := v.q.Clamp; c != nil && sameThread(c.Thread, t.Designation) {
		holes++
	} else if c != nil {
		others++
	}
	switch need := holes * max(1, v.p.Quantity); {
	case holes == 0 && others > 0 && !passes:
		f.What, f.Rule, f.Fix = "the screws bought for "+v.p.Title.Value+" have the thread of none of its holes", "a screw has the thread of its hole", "one thread in both places"
	case e.Count < need && !short:
		f.What, f.Rule, f.Fix = "fewer screws are bought for "+v.p.Title.Value+" than it has holes", "each hole has its screw", "count: "+number(float64(need))
		f.Numbers = number(float64(e.Count)) + " for " + number(float64(need))
	case holes == 0 && r.boltThrough(e, v, screwOrder{e.Buy.Value, t, long}, &f):
	default:
		return
	}
	r.add(f)
}

// pinsNamed are two pins in words: their diameter, and where it is said their length, how far apart they
// stand and how far off the axis. washerNamed is a washer by its bolt and how wide it is outside. anyFastener is the
// name of holes that says nothing of what goes in.
var (
	pinsNamed   = regexp.MustCompile(`(?i)\bpins? ` + bareLength + `(?:, ` + bareLength + ` long)?(?:, ` + bareLength + ` apart)?(?:, ` + bareLength + ` off the axis)?`)
	pinsIn      = regexp.MustCompile(`(?i)\bpins? in (?:its|the) (front|back)\b`)
	anyFastener = regexp.MustCompile(`^(?:screw|bolt|hole|tap|stud|pin|nut|washer)s?$`)
	washerNamed = regexp.MustCompile(`(?i)^washers? ` + bareLength + `, ` + bareLength + ` outside`)
)

// sizesNamed compares the sizes of what is bought with the holes that are for it: those whose note names
// it, and those whose name stands beside a thread in its words.
func (r *reviewer) sizesNamed() {
	for _, v := range r.all() {
		for g := range seq.Refs(v.p.Holes) {
			if v.jointNames(g.Name.Value) {
				continue
			}
			for e := range seq.Refs(r.job.Loose) {
				v.sized(g, parts.Text{Value: e.Item.Value + "; " + e.Buy.Value, Pos: e.Pos}, words.Head(e.Item.Value), titled(wordsOf(e.How.Value), v.p))
				v.washers(g, e)
			}
			name, _, _ := strings.Cut(r.motor().Maker.Value, " with ")
			for _, note := range r.motor().Notes {
				v.sized(g, note, name, true)
			}
		}
	}
}

// sized compares a group of holes with the words of one thing that is bought; there tells whether they
// name the part.
func (v *view) sized(g *parts.HoleGroup, said parts.Text, head string, there bool) {
	note := strings.ToLower(g.Note.Value)
	its := head != "" && strings.Contains(note, strings.ToLower(head))
	if its && strings.Contains(note, "pin") {
		v.pinned(g, said)
	}
	var other string
	for _, clause := range clauses(said, ";,") {
		m := screwWords.FindStringSubmatch(clause)
		named := len(g.Name.Value) > 2 && there && !anyFastener.MatchString(g.Name.Value) && strings.Contains(" "+strings.ToLower(clause)+" ", " "+g.Name.Value+" ")
		if t, _, ok := screwBought(clause); ok && (its && g.Size.Thread != "" || named) {
			if d := openingMm(g); sameThread(g.Size.Thread, t.Designation) || strings.Contains(clause, g.Size.Thread) && g.Size.Thread != "" || g.Size.Make != parts.TappedHole && d > t.MajorMm && d < widest*t.MajorMm {
				return
			}
			other = m[0]
		}
	}
	if other != "" {
		v.unlikeBought(g, said, other, cmp.Or(g.Size.Thread, v.mm(openingMm(g))))
	}
}

// unlikeBought reports what is bought for a group of holes and does not go there.
func (v *view) unlikeBought(g *parts.HoleGroup, said parts.Text, bought, drawn string) {
	v.report(Check, g.Name.Value, said.Pos, Finding{What: "what is bought for " + g.Name.Value + " of " + v.p.Title.Value + " has another size or place", Numbers: bought + "; drawn " + drawn, Rule: "what is bought goes into its holes", Source: "by the job", Fix: "one size in both places"})
}

// pinned compares a group of holes with the pins of what is bought for it.
func (v *view) pinned(g *parts.HoleGroup, said parts.Text) {
	h := v.holesOf(g.Name.Value)
	if m := pinsIn.FindStringSubmatch(said.Value); m != nil && !strings.EqualFold(m[1], string(g.Face)) {
		v.unlikeBought(g, said, m[0], "in the "+string(g.Face))
	}
	if m := pinsNamed.FindStringSubmatch(said.Value); m != nil && len(h) > 0 {
		size := func(k int) float64 { return v.itemMm(m[k] + " " + m[k+1]) }
		first, last := h[0].a, h[len(h)-1].a
		drawn := []float64{2 * h[0].radiusMm, h[0].toMm - h[0].fromMm, geom.Distance(first, last), first.Plus(last).Times(0.5).LengthMm()}
		between, _ := fits.General(drawn[2], v.job.Tolerance.Value)
		across, _ := fits.General(drawn[0], v.job.Tolerance.Value)
		if fine(g.Size.Size.Fit, pinGrade) {
			across = 0
		}
		deep, _ := fits.General(drawn[1], v.job.Tolerance.Value)
		for i, mm := range drawn {
			want := size(1 + 2*i)
			wrong := [...]bool{mm < want-slackMm || mm > widest*want, mm-deep < want-slackMm, math.Abs(mm-want) > meetMm, math.Abs(mm-want) > meetMm}
			if want > 0 && (i < 2 || len(h) == 2) && wrong[i] {
				v.unlikeBought(g, said, m[0], v.mm(mm))
			}
		}
		if play := drawn[0] - across - size(1); len(h) == 2 && size(1) > 0 && play < between-slackMm {
			v.report(Check, g.Name.Value, g.Pos, Finding{What: g.Name.Value + " of " + v.p.Title.Value + " need not meet the pins though both are right", Numbers: "centres may differ by " + v.mm(between) + ", the play is " + v.mm(play), LeftMm: left(play), Rule: "what is bought goes into its holes", Source: "ISO 2768-1", Fix: "holes from " + v.mm(size(1)+between+across) + " on"})
		}
	}
}

// openingMm is what goes through the holes of a group, by its size or the thread that they are for.
func openingMm(g *parts.HoleGroup) float64 {
	t, err := threads.Parse(g.Size.Thread)
	if g.Size.Thread == "" || err != nil {
		return g.Size.Size.Nominal.Mm
	}
	return t.MajorMm
}

// washers compares washers with the holes that are to go over them, and the holes of that name that have
// their bolts.
func (v *view) washers(g *parts.HoleGroup, e *parts.Loose) {
	m := washerNamed.FindStringSubmatch(e.Item.Value)
	if m == nil {
		return
	}
	over, n := strings.Contains(g.Note.Value, "washer"), g.Pattern.Count*max(1, v.p.Quantity)
	d, size, wide := openingMm(g), v.itemMm(m[1]+" "+m[2]), v.itemMm(m[3]+" "+m[4])
	under := slices.ContainsFunc(v.job.Parts, func(p *parts.Part) bool {
		return slices.ContainsFunc(p.Holes, func(o parts.HoleGroup) bool {
			return o.Name.Value == g.Name.Value && strings.Contains(o.Note.Value, "washer") && titled(wordsOf(e.How.Value), p)
		})
	})
	if under && (over && (d < wide || e.Count < n) || !over && d < size) {
		v.report(Check, g.Name.Value, e.Pos, Finding{What: "the washers bought for " + g.Name.Value + " of " + v.p.Title.Value + " are not for these holes, or too few", Numbers: number(float64(e.Count)) + " of " + m[0] + "; " + number(float64(n)) + " holes of " + v.mm(d), Rule: "what is bought goes into its holes", Source: "by the job", Fix: "one size and number in both places"})
	}
}

// widest is how much larger than its screw a hole is at the most, that is for it. Common
// practice, no source: ISO 273 and ASME B18.2.8 have up to a quarter in the coarse series.
const widest = 1.35

// boltThrough looks at a bolt that is bought for a part without threads: that it goes through
// one of its holes, and with its nut through what the words bolt it to as well.
func (r *reviewer) boltThrough(e *parts.Loose, v *view, o screwOrder, f *Finding) bool {
	d, thick := o.thread.MajorMm, v.lengthMm
	widest := seq.Max(0, v.holes, func(h hole) float64 { return 2 * h.radiusMm })
	if widest == 0 || !v.p.Flat() {
		return false
	}
	if widest < d-slackMm {
		f.What, f.Numbers, f.LeftMm = "the bolts bought for "+v.p.Title.Value+" go through none of its holes", e.Buy.Value+" through "+r.mm(widest), left(widest)
		f.Rule, f.Fix = "a bolt goes through its hole", "one size in both places"
		return true
	}
	for _, to := range r.all() {
		if to != v && to.p.Flat() && saysHoles(" "+strings.ToLower(wordsOf(e.How.Value)), to.p.Name.Value) {
			thick += to.lengthMm
			break
		}
	}
	if !strings.Contains(o.words, "nut") || o.longMm >= thick+o.takes(e)*d {
		return false
	}
	f.What, f.Numbers, f.LeftMm = "the bolts bought for "+v.p.Title.Value+" are too short for their nuts", r.mm(o.longMm)+" long through "+r.mm(thick), left(o.longMm-thick)
	f.Rule, f.Fix = "a bolt comes through its nut", "a longer bolt"
	return true
}

// nutted is the least that a bolt comes through for its nut, in diameters.
const nutted = 0.8

// boughtInto looks at the screws in a group of threads, through the walls that the words
// name.
func (r *reviewer) boughtInto(e *parts.Loose, v *view, g *parts.HoleGroup, t threads.Thread, longMm float64) {
	for _, wall := range r.all() {
		if wall == v || !seatNames(wordsOf(e.How.Value), wall.p) {
			continue
		}
		rows := screwRows(wall, t)
		if len(rows) == 0 {
			continue
		}
		thick := wall.wallAt(rows[0].AxialMm)
		f := Finding{Severity: Check, Part: v.p.Name.Value, Feature: g.Name.Value, Pos: e.Buy.Pos, Source: practice}
		f.Numbers = r.mm(longMm) + " long, " + r.mm(thick) + " of it in the wall of " + wall.p.Title.Value
		switch in := longMm - thick; {
		case in < t.MajorMm-slackMm:
			f.What, f.LeftMm = "the screws bought for "+v.p.Title.Value+" hardly reach into it", left(in)
			f.Rule, f.Fix = "a screw holds in one diameter of thread", "a longer screw"
			r.add(f)
		case !g.Through && g.Depth.Set() && in > g.Depth.Mm+slackMm:
			f.What, f.OverMm = "the screws bought for "+v.p.Title.Value+" meet the bottom of their holes", over(in-g.Depth.Mm)
			f.Rule, f.Fix = "a screw clamps before it meets the bottom", "a shorter screw, or washers"
			r.add(f)
		}
		play := rows[0].DiameterMm - t.MajorMm + meetMm
		if off := rowOff(g, rows); off > play && !slices.ContainsFunc(wall.q.Radials, func(row plan.RadialRow) bool { return tooSmall(row, g, t) }) {
			if row := seq.At(rows, func(row *plan.RadialRow) bool { return row.ClockDeg != rows[0].ClockDeg }); row != nil && rowOff(g, onClock(rows, rows[0].ClockDeg)) <= play {
				f.Pos, f.LeftMm, f.OverMm = g.Pos, nil, over(math.Abs(math.Remainder(row.ClockDeg-rows[0].ClockDeg, 360))*math.Pi/180*wall.q.Section.MaxMm)
				f.What, f.Numbers = row.Name+" of "+wall.p.Title.Value+" lies at another clock angle than "+rows[0].Name+": "+g.Name.Value+" of "+v.p.Title.Value+" are in one line", number(row.ClockDeg)+"° and "+number(rows[0].ClockDeg)+"°"
				f.Rule, f.Source, f.Fix = "holes for one row of screws are in one line", "by geometry", "one clock angle for both"
				r.add(f)
				continue
			}
			f.Pos, f.LeftMm, f.OverMm = g.Pos, nil, over(off)
			f.What, f.Numbers = g.Name.Value+" of "+v.p.Title.Value+" do not meet the holes in "+wall.p.Title.Value, r.mm(off)+" off, with "+r.mm(rows[0].DiameterMm-t.MajorMm)+" of play"
			f.Rule, f.Source, f.Fix = "a screw through a wall meets its thread", "by geometry", "the same distances on both drawings"
			r.add(f)
		}
	}
}

// meetMm is how far holes of two parts may lie apart beside the play of their screws.
// Common practice, no source: what marking out and drilling hold.
const meetMm = 0.25

// screwRows are the holes in a wall that a screw goes through without rattling.
func screwRows(wall *view, t threads.Thread) []plan.RadialRow {
	return seq.Keep(wall.q.Radials, func(row plan.RadialRow) bool { return row.DiameterMm > t.MajorMm && row.DiameterMm < widest*t.MajorMm })
}

// onClock are holes as they would lie at one clock angle.
func onClock(rows []plan.RadialRow, deg float64) []plan.RadialRow {
	out := slices.Clone(rows)
	for i := range out {
		out[i].ClockDeg = deg
	}
	return out
}

// rowOff is how far the threads in a row lie off the holes of one clock angle where they
// meet best.
func rowOff(g *parts.HoleGroup, rows []plan.RadialRow) float64 {
	row, ok := g.Pattern.Shape.(geom.Along)
	if !ok || row.Count < 2 {
		return 0
	}
	best := math.Inf(1)
	for _, from := range rows {
		for _, way := range []float64{-1, 1} {
			worst := 0.0
			for i := range row.Count {
				at, near := from.AxialMm+way*float64(i)*row.PitchMm, math.Inf(1)
				for _, o := range rows {
					if o.ClockDeg == from.ClockDeg {
						near = math.Min(near, math.Abs(o.AxialMm-at))
					}
				}
				worst = math.Max(worst, near)
			}
			best = math.Min(best, worst)
		}
	}
	return best
}

// both looks for loose parts that the words say are two, and that are made once.
func (r *reviewer) both() {
	for e := range seq.Refs(r.job.Loose) {
		if p := r.job.Part(e.Part.Value); p != nil && p.Quantity < 2 && strings.HasPrefix(strings.ToLower(e.How.Value), "both ") {
			r.disagree(e.How.Pos, p.Name.Value, "the words say both of "+p.Title.Value+", and one is made", e.How.Value, "quantity: 2, or the words")
		}
	}
}

// boughtBy compares screws that are ordered with the holes that the words beside them
// name, in whichever part, unless a joint fills these; short tells whether there are fewer.
func (r *reviewer) boughtBy(e *parts.Loose) (short bool) {
	order := cmp.Or(e.Buy.Value, e.Item.Value)
	t, long, ok := screwBought(order)
	if !ok {
		return false
	}
	said := r.untitled(e.Item.Value + " " + e.How.Value)
	for _, v := range r.all() {
		for k := range v.p.Holes {
			if g := &v.p.Holes[k]; (saysHoles(said, g.Name.Value) || e.Stands != nil && e.Stands.On.Part == v.p.Name.Value && e.Stands.On.Feature == g.Name.Value) && !v.jointNames(g.Name.Value) {
				v.ordered(e, g, screwOrder{order, t, long})
				short = short || e.Count < g.Pattern.Count*max(1, v.p.Quantity)
			} else if sunkHead.MatchString(order) && g.Countersink != nil && titled(wordsOf(e.Item.Value+" "+e.How.Value), v.p) && !v.jointNames(g.Name.Value) && sameThread(g.Size.Thread, t.Designation) {
				v.ordered(e, g, screwOrder{order, t, long})
			}
		}
	}
	return short
}

// sunkHead are the words of a screw whose head is sunk in a cone.
var sunkHead = regexp.MustCompile(`(?i)\bcountersunk\b|\bflat head\b|\b(?:82|90|100) ?°`)

// untitled are words in which holes may be named, without the titles of parts, which name none.
func (r *reviewer) untitled(words string) string {
	said := " " + strings.ToLower(wordsOf(words)) + " "
	for _, p := range r.job.Parts {
		said = strings.ReplaceAll(said, " "+strings.ToLower(p.Title.Value)+" ", "  ")
	}
	return said
}

// nutAlone are the words of a nut that is bought with its thread, not with a bolt.
var nutAlone = regexp.MustCompile(`(?i)\bnuts? (M\d+(?:x\d+(?:\.\d+)?)?|#?\d+(?:[-/]\d+)*-\d+ UN[CF])\b`)

// holesFree looks for a loose part that is bolted on with nuts where its words name no hole of
// another part, or one that a joint has filled. A nut for a thread of the part itself goes on that.
func (r *reviewer) holesFree(e *parts.Loose) {
	if e.Part.Value == "" || !strings.Contains(e.Buy.Value, "nut") {
		return
	}
	if v, m := r.viewOf(e.Part.Value), nutAlone.FindStringSubmatch(e.Buy.Value); v != nil && m != nil {
		own := seq.Keep(v.outside, func(c *cylinder) bool { return c.thread != nil })
		if slices.ContainsFunc(own, func(c *cylinder) bool { return sameThread(c.thread.Designation, m[1]) }) {
			return
		}
		if len(own) > 0 && !slices.ContainsFunc(v.p.Holes, func(g parts.HoleGroup) bool { return g.Size.Make == parts.ClearanceHole }) {
			v.report(Check, own[0].name, e.Buy.Pos, Finding{
				What: "the nut that is bought goes on no thread of " + v.p.Title.Value, Numbers: e.Buy.Value + " on " + own[0].thread.Designation,
				Rule: "a nut has the thread that it goes on", Source: "by geometry", Fix: "a nut of that thread",
			})
			return
		}
	}
	said, filled := r.untitled(e.How.Value), ""
	for _, v := range r.all() {
		if v.p.Name.Value == e.Part.Value {
			continue
		}
		for k := range v.p.Holes {
			if name := v.p.Holes[k].Name.Value; saysHoles(said, name) {
				if !v.jointNames(name) {
					return
				}
				filled = name + " of " + v.p.Title.Value
			}
		}
	}
	f := Finding{Severity: Check, Part: e.Part.Value, Pos: e.How.Pos, What: "the words name no hole that the bolts of this part go into", Numbers: e.How.Value, Rule: "what is bolted on has holes of its own, which no joint fills", Source: "by the job", Fix: "holes for it, named in the words"}
	if filled != "" {
		f.What = "the bolts of this part are to go into " + filled + ", which a joint fills"
	}
	r.add(f)
}

// screwOrder is a screw as ordered: its words, thread and length.
type screwOrder struct {
	words  string
	thread threads.Thread
	longMm float64
}

// takes is what of a bolt lies beyond the hole that is drawn, in diameters: its nut, its
// washers, and the flange of a thing that is bought. Common practice, no source: a flange is
// about as thick as its bolts.
func (o *screwOrder) takes(e *parts.Loose) float64 {
	const flange = 0.8
	out := nutted + o.washers()
	if e.Item.Value != "" && e.Buy.Value != "" && !sunkHead.MatchString(o.words) { // sunk heads hold what is thin
		out += flange
	}
	return out
}

// washers is how thick the washers are that the words order with a screw, in its diameters. Common practice,
// no source.
func (o *screwOrder) washers() float64 {
	const washer = 0.2
	switch {
	case strings.Contains(o.words, "washers"):
		return 2 * washer
	case strings.Contains(o.words, "washer"):
		return washer
	}
	return 0
}

// saysHoles tells whether words name a group of holes, by all the words of its name; what
// any hole is called says nothing.
func saysHoles(said, name string) bool {
	return !slices.ContainsFunc(strings.Split(strings.ToLower(name), "-"), func(word string) bool {
		word = strings.TrimSuffix(word, "s")
		return len(word) < 4 || slices.Contains([]string{"screw", "bolt", "hole", "tap"}, word) || !strings.Contains(said, " "+word)
	})
}

// ordered looks at screws that are ordered for a group of holes: their size, their number
// and their length.
func (v *view) ordered(e *parts.Loose, g *parts.HoleGroup, o screwOrder) {
	h := seq.At(v.holes, func(h *hole) bool { return h.group == g })
	if h == nil {
		return
	}
	d, nut := o.thread.MajorMm, strings.Contains(o.words, "nut")
	f := Finding{Severity: Check, Part: v.p.Name.Value, Feature: g.Name.Value, Pos: e.Pos, Source: practice}
	what := "the screws bought for " + g.Name.Value + " of " + v.p.Title.Value
	const (
		deeper      = 0.6 // diameters beyond a blind thread, for washers and a head's seat
		flangeShare = 1.6 // diameters of a motor's flange and a washer at the most
	)
	deep, behind := h.toMm-h.fromMm, ""
	takes, through := flangeShare, "a flange and "
	if e.Stands == nil {
		takes, through = deeper, ""
	}
	past := o.longMm - takes*d - deep
	if (e.Stands != nil || e.Item.Value != "") && h.thread != nil && g.Through && !nut && past > 0 {
		behind = cmp.Or(v.machine().Under(v.p.Name.Value, g.Name.Value, past)...)
	}
	switch need := g.Pattern.Count * max(1, v.p.Quantity); {
	case h.thread != nil && h.thread.Designation != o.thread.Designation, h.thread == nil && (2*h.radiusMm < d-slackMm || 2*h.radiusMm > widest*d):
		f.What, f.Numbers = what+" are not for these holes", o.words+" in "+v.mm(2*h.radiusMm)
		f.Rule, f.Fix = "a screw has the thread of its hole, or goes through it without rattling", "one size in both places"
	case e.Count < need:
		f.What, f.Numbers = what+" are fewer than the holes", number(float64(e.Count))+" for "+number(float64(need))
		f.Rule, f.Fix = "each hole has its screw", "count: "+number(float64(need))
	case sunkHead.MatchString(o.words) && h.thread == nil && g.Countersink == nil && e.Part.Value == "" && e.Buy.Value == "":
		f.What, f.Numbers = what+" have heads for a countersink, and the holes have none", o.words
		f.Rule, f.Fix = "a head that is to lie flush lies in its cone", "countersink: as wide as the head, on the side that the screws go in by"
	case h.thread != nil && !g.Through && !nut && o.longMm > deep+deeper*d:
		f.What, f.Numbers, f.OverMm = what+" meet the bottom of their holes", v.mm(o.longMm)+" long in "+v.mm(deep), over(o.longMm-deep)
		f.Rule, f.Fix = "a screw clamps before it meets the bottom", "a shorter screw"
	case behind != "":
		f.What, f.Numbers, f.OverMm = what+" end on "+behind, v.mm(o.longMm)+" long through "+through+v.mm(deep)+": "+v.mm(past)+" stand out", over(past)
		f.Rule, f.Fix = "a screw clamps before it meets anything", "a shorter screw"
	case headDegrees.MatchString(o.words) && g.Countersink != nil && number(g.Countersink.Angle.Deg) != headDegrees.FindStringSubmatch(o.words)[1]:
		f.What, f.Numbers = what+" have heads of another angle than their cones", headDegrees.FindString(o.words)+" in "+number(g.Countersink.Angle.Deg)+"°"
		f.Rule, f.Fix = "a head lies in its cone all round", "one angle in both places"
	case h.thread != nil && !nut && e.Stands == nil && e.Part.Value == "" && !setScrew.MatchString(o.words):
		full := 0.0
		if !g.Through && e.Buy.Value == "" { // what is ordered is the screw itself: little else lies under its head
			full = cmp.Or(g.Depth.Mm, deep) + deeper*d
		}
		v.holds(what, e.Pos, d, o.longMm-o.washers()*d, full)
		return
	case h.thread == nil && nut && e.Part.Value == "" && o.longMm < deep+o.takes(e)*d:
		f.What, f.Numbers, f.LeftMm = what+" are too short for their nuts", v.mm(o.longMm)+" long through "+v.mm(deep)+", with what comes on "+v.mm(o.takes(e)*d)+" wanted beyond", left(o.longMm-deep)
		f.Rule, f.Fix = "a bolt comes through its nut", "a longer screw"
	default:
		return
	}
	v.add(f)
}
