package review

import (
	"cmp"
	"math"
	"slices"
	"strings"

	"centrepop/layout/assembly"
	"centrepop/layout/fits"
	"centrepop/layout/plan"
	"centrepop/layout/stand"
	"centrepop/layout/threads"
	"centrepop/layout/words"
	"centrepop/parts"
	"centrepop/parts/geom"
	"centrepop/parts/seq"
)

// bought compares the screws that are ordered for a loose part with its threads, and with
// the holes in the wall of what it stands in.
var bought = together(
	of(everyPart, each(everyHoleOrSlot, (*view).sizesNamed)),
	each(everyLoose, (*reviewer).boughtBy, (*reviewer).orders, (*reviewer).seatLong, (*reviewer).couplingTorque, (*reviewer).couplingBores,
		(*reviewer).holesFree, (*reviewer).nutOnThread, (*reviewer).nutLocked, (*reviewer).ringBought, (*reviewer).howInNoList, (*reviewer).standsUnheld),
	of(everyMotor, together(motored.notesInNoList, motored.beltBought)),
	of(everyMade, made.boughtFor),
)

// forScrew are the threads of a part that a screw goes into, how many groups have other threads, and whether it passes
// through another.
func (v *view) forScrew(t threads.Thread) (own []*parts.HoleGroup, others int, passes bool) {
	for g := range seq.Refs(v.p.Holes) {
		has, err := threads.Parse(g.Size.Thread)
		switch its := has.Designation == t.Designation; {
		case err == nil && its && g.Size.Make == parts.ClearanceHole:
			passes = true
		case g.Size.Make != parts.TappedHole || err != nil || g.For.Moves():
		case its:
			own = append(own, g)
		default:
			others++
		}
	}
	return own, others, passes
}

// boughtFor compares the screws that are ordered for a loose part with its own threads.
func (v made) boughtFor() {
	o, ok := orderOf(v.e.Buy.Value)
	if !ok {
		return
	}
	own, others, passes := v.forScrew(o.thread)
	for _, g := range own {
		v.boughtInto(v.e, v.view, g, o.thread, o.longMm)
	}
	holes := seq.Sum(own, func(g *parts.HoleGroup) int { return g.Pattern.Count })
	if c := v.q.Clamp; c != nil && sameThread(c.Thread, o.thread.Designation) {
		holes++
	} else if c != nil {
		others++
	}
	f := v.here("", v.e.Buy.Pos)
	f.Source = "by the job"
	need, title := number(float64(holes*max(1, v.p.Quantity))), v.p.Title.Value
	if !v.firstOf(f,
		flaw{holes == 0 && others > 0 && !passes, Finding{
			What: "the screws bought for " + title + " have the thread of none of its holes", Numbers: o.words, Rule: "a screw has the thread of its hole", Fix: "one thread in both places"}},
		flaw{v.e.Count < holes*max(1, v.p.Quantity) && !v.fewerThanSaid(v.e), Finding{
			What: "fewer screws are bought for " + title + " than it has holes", Numbers: number(float64(v.e.Count)) + " for " + need, Rule: "each hole has its screw", Fix: "count: " + need}},
	) && holes == 0 {
		v.boltThrough(v.e, f, o)
	}
}

// sizesNamed compares the sizes of what is bought with the holes that are for it: those whose note names
// it, and those whose name stands beside a thread in its words.
func (v *view) sizesNamed(g *parts.HoleGroup) {
	if v.jointNames(g.Name.Value) {
		return
	}
	for e := range seq.Refs(v.job.Loose) {
		v.sized(g, parts.Text{Value: e.Item.Value + "; " + e.Buy.Value, Pos: e.Pos}, words.Head(e.Item.Value), v.p.NamedIn(e.How.Value))
		v.washers(g, e)
	}
	name, _, _ := strings.Cut(v.motor().Maker.Value, " with ")
	for _, note := range v.motor().Notes {
		v.sized(g, note, name, true)
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
	name, other := g.Name.Value, ""
	there = there && len(name) > 2 && !anyFastener().MatchString(name)
	for _, clause := range clauses(said, ";,") {
		o, ok := orderOf(clause)
		if named := there && strings.Contains(" "+strings.ToLower(clause)+" ", " "+name+" "); !ok || !named && (!its || g.Size.Thread == "") {
			continue
		}
		if o.fits(g, seq.Max(openingMm(g), v.holesOf(name), func(h hole) float64 { return 2 * h.radiusMm })) {
			return
		}
		other = cmp.Or(other, screwWords().FindString(clause))
	}
	if other != "" {
		v.unlikeBought(g, said, other, cmp.Or(g.Size.Thread, v.mm(openingMm(g))))
	}
}

// fits tells whether a screw has the thread of a group of holes, or goes through them without rattling.
func (o *screwOrder) fits(g *parts.HoleGroup, holeMm float64) bool {
	if g.Size.Thread != "" && (sameThread(g.Size.Thread, o.thread.Designation) || strings.Contains(o.words, g.Size.Thread)) {
		return true
	}
	return g.Size.Make != parts.TappedHole && passesThrough(holeMm, o.thread)
}

// playing is the least hole that a screw goes through with play in mm: the fine series of its thread, its own diameter where there is none.
func playing(t threads.Thread) float64 {
	if t.Clearance == nil {
		return t.MajorMm
	}
	return t.Clearance.FineMm
}

// unlikeBought reports what is bought for a group of holes and does not go there.
func (v *view) unlikeBought(g *parts.HoleGroup, said parts.Text, bought, drawn string) {
	v.report(Check, g.Name.Value, said.Pos, Finding{
		What: "what is bought for " + g.Name.Value + " of " + v.p.Title.Value + " has another size or place", Numbers: bought + "; drawn " + drawn,
		Rule: "what is bought goes into its holes", Source: "by the job", Fix: "one size in both places",
	})
}

// pinned compares a group of holes with the pins of what is bought for it.
func (v *view) pinned(g *parts.HoleGroup, said parts.Text) {
	if m := pinsIn().FindStringSubmatch(said.Value); m != nil && !strings.EqualFold(m[1], string(g.Face)) {
		v.unlikeBought(g, said, m[0], "in the "+string(g.Face))
	}
	h, m := v.holesOf(g.Name.Value), pinsNamed().FindStringSubmatch(said.Value)
	if m == nil || len(h) == 0 {
		return
	}
	size := func(k int) float64 { return v.itemMm(m[k] + " " + m[k+1]) }
	pin, first, last := size(1), h[0].a, h[len(h)-1].a
	hole, deep := 2*h[0].radiusMm, h[0].span().LengthMm()
	off := func(mm, wantMm float64) bool { return wantMm > 0 && len(h) == 2 && math.Abs(mm-wantMm) > meetMm }
	less, _ := fits.General(deep, v.job.Tolerance.Value)
	between, beside := geom.Distance(first, last), first.Plus(last).Times(0.5).LengthMm()
	for _, is := range []struct {
		mm    float64
		wrong bool
	}{
		{hole, pin > 0 && (geom.Over(pin, hole) || hole > widestPin*pin)}, {deep, size(3) > 0 && geom.Over(size(3), deep-less)},
		{between, off(between, size(5))}, {beside, off(beside, size(7))},
	} {
		if is.wrong {
			v.unlikeBought(g, said, m[0], v.mm(is.mm))
		}
	}
	if pin > 0 && len(h) == 2 {
		v.pinPlay(g, pin, hole, between)
	}
}

// pinPlay compares the play of two pins in their holes with what the tolerances of the holes let their centres differ.
func (v *view) pinPlay(g *parts.HoleGroup, pinMm, holeMm, betweenMm float64) {
	apart, _ := fits.General(betweenMm, v.job.Tolerance.Value)
	across, _ := fits.General(holeMm, v.job.Tolerance.Value)
	if fine(g.Size.Size.Fit, pinGrade) {
		across = 0
	}
	if play := holeMm - across - pinMm; geom.Over(apart, play) {
		v.report(Check, g.Name.Value, g.Pos, Finding{
			What:    g.Name.Value + " of " + v.p.Title.Value + " need not meet the pins though both are right",
			Numbers: "centres may differ by " + v.mm(apart) + ", the play is " + v.mm(play), LeftMm: left(play),
			Rule: "what is bought goes into its holes", Source: "ISO 2768-1", Fix: "holes from " + v.mm(pinMm+apart+across) + " on",
		})
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
	m := washerNamed().FindStringSubmatch(e.Item.Value)
	if m == nil {
		return
	}
	over, n := strings.Contains(g.Note.Value, "washer"), v.count(g)
	d, size, wide := openingMm(g), v.itemMm(m[1]+" "+m[2]), v.itemMm(m[3]+" "+m[4])
	under := slices.ContainsFunc(v.job.Parts, func(p *parts.Part) bool {
		return slices.ContainsFunc(p.Holes, func(o parts.HoleGroup) bool {
			return o.Name.Value == g.Name.Value && strings.Contains(o.Note.Value, "washer") && p.NamedIn(e.How.Value)
		})
	})
	if under && (over && (d < wide || e.Count < n) || !over && d < size) {
		v.report(Check, g.Name.Value, e.Pos, Finding{
			What:    "the washers bought for " + g.Name.Value + " of " + v.p.Title.Value + " are not for these holes, or too few",
			Numbers: number(float64(e.Count)) + " of " + m[0] + "; " + number(float64(n)) + " holes of " + v.mm(d), Rule: "what is bought goes into its holes",
			Source: "by the job", Fix: "one size and number in both places",
		})
	}
}

// boltThrough looks at a bolt that is bought for a part without threads: that it goes through
// one of its holes, and with its nut through what the words bolt it to as well.
func (v *view) boltThrough(e *parts.Loose, f Finding, o screwOrder) {
	widest := seq.Max(0, v.holes, func(h hole) float64 { return 2 * h.radiusMm })
	if widest == 0 || !v.p.Flat() {
		return
	}
	d, thick, how := o.thread.MajorMm, v.lengthMm, parts.Bare(e.How.Value)
	if to := seq.First(v.all(), func(to *view) bool { return to != v && to.p.Flat() && saysHoles(how, to.p.Name.Value) }); to != nil {
		thick += to.lengthMm
	}
	v.firstOf(f,
		flaw{geom.Over(d, widest), Finding{
			What: "the bolts bought for " + v.p.Title.Value + " go through none of its holes", Numbers: o.words + " through " + v.mm(widest), LeftMm: left(widest),
			Rule: "a bolt goes through its hole", Fix: "one size in both places"}},
		flaw{o.nut() && o.longMm < thick+o.takes(e)*d, Finding{
			What: "the bolts bought for " + v.p.Title.Value + " are too short for their nuts", Numbers: v.mm(o.longMm) + " long through " + v.mm(thick), LeftMm: left(o.longMm - thick),
			Rule: "a bolt comes through its nut", Fix: "a longer bolt"}},
	)
}

// boughtInto looks at the screws in a group of threads, through the walls that the words
// name.
func (r *reviewer) boughtInto(e *parts.Loose, v *view, g *parts.HoleGroup, t threads.Thread, longMm float64) {
	for _, wall := range r.all() {
		if rows := screwRows(wall, t); len(rows) > 0 && wall != v && wall.p.NamedIn(e.How.Value) {
			v.reachInto(e, g, t, wall, longMm)
			v.opensTo(g, wall, rows)
			if !slices.ContainsFunc(wall.q.Radials, func(row plan.RadialRow) bool { return tooSmall(row, g, t) }) {
				v.meetsRows(g, wall, rows, t)
			}
		}
	}
}

// tooSmall tells whether a hole in a wall has the name of a group of threads and does not let
// its screws through with any play, or their heads as well.
func tooSmall(row plan.RadialRow, g *parts.HoleGroup, t threads.Thread) bool {
	return strings.HasSuffix(row.Name, g.Name.Value) && row.DiameterMm > 0 && (geom.Over(playing(t), row.DiameterMm) || row.DiameterMm > widest*t.MajorMm)
}

// reachInto looks at how far screws of a length through a wall come into a group of threads.
func (v *view) reachInto(e *parts.Loose, g *parts.HoleGroup, t threads.Thread, wall *view, longMm float64) {
	thick := wall.wallAt(screwRows(wall, t)[0].AxialMm)
	in, f := longMm-thick, v.here(g.Name.Value, e.Buy.Pos)
	f.Numbers = v.mm(longMm) + " long, " + v.mm(thick) + " of it in the wall of " + wall.p.Title.Value
	v.firstOf(f,
		flaw{geom.Over(t.MajorMm, in), Finding{
			What: "the screws bought for " + v.p.Title.Value + " hardly reach into it", LeftMm: left(in), Rule: "a screw holds in one diameter of thread", Fix: "a longer screw"}},
		flaw{!g.Through && g.Depth.Set() && geom.Over(in, g.Depth.Mm), Finding{
			What: "the screws bought for " + v.p.Title.Value + " meet the bottom of their holes", OverMm: over(in - g.Depth.Mm),
			Rule: "a screw clamps before it meets the bottom", Fix: "a shorter screw, or washers"}},
	)
}

// squareTo is how much of the axis of a screw lies along that of its thread at the least. Common practice, no source.
const squareTo = 0.9

// opensTo looks in space whether threads open towards the holes of the tube that they lie in or on, from where their screws come.
func (v *view) opensTo(g *parts.HoleGroup, wall *view, rows []plan.RadialRow) {
	b, tube := v.bodyOf(v.p.Name.Value), v.bodyOf(wall.p.Name.Value)
	if b == nil || tube == nil {
		return
	}
	mouths := seq.Keep(v.machine().Mouths(b), func(f stand.Faced) bool { return f.Group.Group.Name == g.Name.Value })
	in := tube.Pose.Inverse()
	if len(mouths) == 0 || slices.ContainsFunc(mouths, func(f stand.Faced) bool {
		at, out := in.Apply(f.At[0]), in.Turn(f.Out)
		return slices.ContainsFunc(rows, func(row plan.RadialRow) bool {
			to := assembly.Clock(1, row.ClockDeg)
			return out.Dot(to)*words.Either(at.Dot(to) < row.OutsideMm/2, 1, -1.0) > squareTo
		})
	}) {
		return
	}
	v.report(Stop, g.Name.Value, g.Pos, Finding{
		What: g.Name.Value + " of " + v.p.Title.Value + " as it lies do not open towards " + rows[0].Name + " of " + wall.p.Title.Value, Numbers: "the screws come through the wall",
		Rule: "a thread opens towards the head of its screw", Source: "by geometry", Fix: "the threads in the other edge or face, or the part the other way up",
	})
}

// meetsRows looks whether a group of threads meets the holes of a wall round it, in one line.
func (v *view) meetsRows(g *parts.HoleGroup, wall *view, rows []plan.RadialRow, t threads.Thread) {
	play := rows[0].DiameterMm - t.MajorMm
	off, turned := rowOff(g, rows), seq.At(rows, func(row *plan.RadialRow) bool { return row.ClockDeg != rows[0].ClockDeg })
	if !geom.Over(off, play+meetMm) {
		return
	}
	f := v.here(g.Name.Value, g.Pos)
	f.Source = "by geometry"
	f.What, f.Numbers, f.OverMm = g.Name.Value+" of "+v.p.Title.Value+" do not meet the holes in "+wall.p.Title.Value, v.mm(off)+" off, with "+v.mm(play)+" of play", over(off)
	f.Rule, f.Fix = "a screw through a wall meets its thread", "the same distances on both drawings"
	if turned != nil && !geom.Over(rowOff(g, onClock(rows, rows[0].ClockDeg)), play+meetMm) {
		f.What = turned.Name + " of " + wall.p.Title.Value + " lies at another clock angle than " + rows[0].Name + ": " + g.Name.Value + " of " + v.p.Title.Value + " are in one line"
		f.Numbers, f.OverMm = number(turned.ClockDeg)+"° and "+number(rows[0].ClockDeg)+"°", over(math.Abs(math.Remainder(turned.ClockDeg-rows[0].ClockDeg, 360))*math.Pi/180*wall.q.Section.MaxMm)
		f.Rule, f.Fix = "holes for one row of screws are in one line", "one clock angle for both"
	}
	v.add(f)
}

// meetMm is how far holes of two parts may lie apart beside the play of their screws.
// Common practice, no source: what marking out and drilling hold.
const meetMm = 0.25

// screwRows are the holes in a wall that a screw goes through without rattling.
func screwRows(wall *view, t threads.Thread) []plan.RadialRow {
	return seq.Keep(wall.q.Radials, func(row plan.RadialRow) bool { return passesThrough(row.DiameterMm, t) })
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
	best := endless
	for _, from := range rows {
		beside := seq.Keep(rows, func(o plan.RadialRow) bool { return o.ClockDeg == from.ClockDeg })
		for _, pitch := range []float64{-row.PitchMm, row.PitchMm} {
			var worst float64
			for i := range row.Count {
				at := from.AxialMm + float64(i)*pitch
				worst = max(worst, seq.Least(beside, func(o plan.RadialRow) float64 { return math.Abs(o.AxialMm - at) }))
			}
			best = min(best, worst)
		}
	}
	return best
}

// both looks for loose parts that the words say are two, and that are made once.
func (v made) both() {
	if v.p.Quantity < 2 && strings.HasPrefix(strings.ToLower(v.e.How.Value), "both ") {
		v.disagree(v.e.How.Pos, v.p.Name.Value, "the words say both of "+v.p.Title.Value+", and one is made", v.e.How.Value, "quantity: 2, or the words")
	}
}

// saidFor tells whether what is ordered is for a group of holes that no joint fills: it stands on them, or its words
// name them.
func (v *view) saidFor(e *parts.Loose, words string, g *parts.HoleGroup) bool {
	stands := e.Stands != nil && slices.ContainsFunc(v.job.Part(e.Stands.On.Part).Holes, func(o parts.HoleGroup) bool { return o.Name.Value == e.Stands.On.Feature }) // its words name no others then
	slots := len(v.p.Slots) == 1 && v.p.Slots[0].Name.Value == g.Name.Value && itsSlots().MatchString(e.How.Value) && v.p.NamedIn(e.How.Value)
	return (v.stoodOn(e, g.Name.Value) || !stands && (slots || saysHoles(words, g.Name.Value) || v.onlyFor(e, words, g))) && !v.jointNames(g.Name.Value)
}

// onlyFor tells whether a group is the only one that bolts of a motor go through in the part that its words name: no joint fills
// it, and they name no holes.
func (v *view) onlyFor(e *parts.Loose, words string, g *parts.HoleGroup) bool {
	free := seq.Keep(v.holesAndSlots(), func(o parts.HoleGroup) bool { return o.Anchors() && !v.jointNames(o.Name.Value) })
	if e.As != parts.AMotor || e.Stands != nil || !v.p.NamedIn(e.How.Value) || len(free) != 1 || free[0].Name.Value != g.Name.Value {
		return false
	}
	for _, o := range v.groups() {
		if saysHoles(words, o.Name.Value) {
			return false
		}
	}
	return true
}

// boughtBy compares screws that are ordered with the holes that the words beside them
// name, in whichever part, unless a joint fills these.
func (r *reviewer) boughtBy(e *parts.Loose) {
	o, ok := orderOf(cmp.Or(e.Buy.Value, e.Item.Value))
	if !ok {
		return
	}
	said := r.untitled(e.Item.Value + " " + e.How.Value)
	for v, g := range r.groups() {
		if v.saidFor(e, said, g) || o.sunk() && g.Countersink != nil && v.p.NamedIn(e.Item.Value+" "+e.How.Value) && !v.jointNames(g.Name.Value) && sameThread(g.Size.Thread, o.thread.Designation) {
			v.ordered(e, g, o)
			v.fromSide(e, g)
		}
	}
}

// fromSide looks for screws that the words put in from above or from below, and whose blind holes look the other way as the machine stands.
func (v *view) fromSide(e *parts.Loose, g *parts.HoleGroup) {
	said := fromWay().FindString(e.How.Value)
	if said == "" || g.Through || v.p.Quantity > 1 || len(v.pl.Faults) > 0 {
		return
	}
	b := v.bodyOf(v.p.Name.Value)
	if b == nil {
		return
	}
	up := b.Pose.Z.Dot(v.machine().Up) * words.Either(g.Face == parts.Back, -1.0, 1)
	if above := strings.HasSuffix(said, "above"); math.Abs(up) > steep && above != (up > 0) {
		v.report(Stop, g.Name.Value, e.How.Pos, Finding{
			What:    "what is bought for " + g.Name.Value + " of " + v.p.Title.Value + " goes in " + said + ", and these blind holes open " + words.Either(above, "downward", "upward"),
			Numbers: "face: " + string(g.Face),
			Rule:    "a screw goes in by the open end of its hole", Source: "by geometry", Fix: "the other face, depth: through, or the words",
		})
	}
}

// steep is from which cosine on a face looks up or down. Common practice, no source.
const steep = 0.7

// fewerThanSaid tells whether there are fewer screws than holes that the words beside them name.
func (r *reviewer) fewerThanSaid(e *parts.Loose) bool {
	said := r.untitled(e.Item.Value + " " + e.How.Value)
	for v, g := range r.groups() {
		if v.saidFor(e, said, g) && e.Count < v.count(g) {
			return true
		}
	}
	return false
}

// unhyphened are the bare words of a sentence, those that a hyphen joins apart.
func unhyphened(said string) string { return strings.ReplaceAll(parts.Bare(said), "-", " ") }

// untitled are words in which holes may be named, as in the input or apart, without the titles
// of parts, which name none.
func (r *reviewer) untitled(words string) string {
	said := unhyphened(words)
	for _, p := range r.job.Parts {
		said = strings.ReplaceAll(said, unhyphened(p.Title.Value), "  ")
	}
	return said
}

// holesFree looks for a loose part that is bolted on with nuts where its words name no hole of
// another part, or one that a joint has filled. A nut for a thread of the part itself goes on that.
func (r *reviewer) holesFree(e *parts.Loose) {
	if e.Part.Value == "" || !strings.Contains(e.Buy.Value, "nut") || r.goesOnOwn(e) {
		return
	}
	said, filled := r.untitled(e.How.Value), ""
	for v, g := range r.groups() {
		name := g.Name.Value
		if v.p.Name.Value != e.Part.Value && (saysHoles(said, name) || strings.Contains(strings.ToLower(e.How.Value), strings.ToLower(v.p.Name.Value+"."+name))) {
			if !v.jointNames(name) {
				return
			}
			filled = name + " of " + v.p.Title.Value
		}
	}
	f := Finding{
		Part: e.Part.Value, Pos: e.How.Pos, What: "the words name no hole that the bolts of this part go into", Numbers: e.How.Value,
		Rule: "what is bolted on has holes of its own, which no joint fills", Source: "by the job",
		Fix: "holes for it, named in the words by the name of their group; bolts, screws, holes or taps is no name, what any is called, but with its part before it, as in lug.bolts, it is",
	}
	if filled != "" {
		f.What = "the bolts of this part are to go into " + filled + ", which a joint fills"
	}
	r.add(f)
}

// goesOnOwn tells whether a nut that is bought alone is for a thread of the part itself, and says where it has another.
func (r *reviewer) goesOnOwn(e *parts.Loose) bool {
	v, nuts := r.viewOf(e.Part.Value), nutAlone().FindAllStringSubmatch(e.Buy.Value, -1)
	if v == nil || len(nuts) == 0 {
		return false
	}
	own := seq.Keep(v.outside, func(c *cylinder) bool { return c.Size.Thread != nil })
	unlike := seq.Keep(nuts, func(m []string) bool {
		return !slices.ContainsFunc(own, func(c *cylinder) bool { return sameThread(c.Size.Thread.Designation, m[1]) })
	})
	if len(unlike) == 0 {
		return true
	}
	if len(own) == 0 || slices.ContainsFunc(v.p.Holes, func(g parts.HoleGroup) bool { return g.Size.Make == parts.ClearanceHole }) {
		return len(unlike) < len(nuts)
	}
	v.report(Check, own[0].Name, e.Buy.Pos, Finding{
		What: "the nut that is bought goes on no thread of " + v.p.Title.Value, Numbers: unlike[0][0] + " on " + own[0].Size.Thread.Designation,
		Rule: "a nut has the thread that it goes on", Source: "by geometry", Fix: "a nut of that thread",
	})
	return true
}

// nutWanted is what tells of a thread whether a nut that words name runs on it, and whether it is of that diameter or of a
// series of nuts as the nut is; nil where they name none.
func nutWanted(said string) (name string, runs, like func(threads.Thread) bool) {
	if m := nutAlone().FindStringSubmatch(said); m != nil {
		nut, err := threads.Parse(m[1])
		if err != nil {
			return "", nil, nil
		}
		return nut.Designation, func(t threads.Thread) bool { return t.Designation == nut.Designation }, func(t threads.Thread) bool { return geom.Alike(t.MajorMm, nut.MajorMm) }
	}
	m := nutSeries().FindStringSubmatch(said)
	if m == nil {
		return "", nil, nil
	}
	name = m[1] + m[2] + m[3]
	return name, func(t threads.Thread) bool { return threads.LockNut(t) == name }, func(t threads.Thread) bool { return threads.LockNut(t) != "" }
}

// nutOnThread compares a nut that is bought alone with the threads on the outside of the parts that its words name, or
// else of the shaft whose hub it keeps: with the step that they name, or where they name none with those of its diameter.
func (r *reviewer) nutOnThread(e *parts.Loose) {
	for _, said := range []parts.Text{e.Item, e.Buy} {
		if name, runs, like := nutWanted(said.Value); e.As == parts.ANut && runs != nil {
			r.nutRuns(e, said.Pos, name, runs, like)
		}
	}
}

// goesOn are the parts that a nut goes on: those that its words name, or else the shaft whose hub it keeps, or whose bearing.
func (r *reviewer) goesOn(e *parts.Loose) []*view {
	named := seq.Keep(r.all(), func(v *view) bool { return v.p.NamedIn(e.Item.Value + " " + e.How.Value) })
	switch j := r.job.Joint(e.After.Value); {
	case len(named) > 0:
	case j.Slide != nil && j.Slide.KeptBy.Set():
		named = []*view{r.viewOf(j.Slide.KeptBy.Part)}
	case j.Bearing != nil:
		named = []*view{r.viewOf(j.Bearing.Cone.Part)}
	}
	return named
}

func (r *reviewer) nutRuns(e *parts.Loose, pos parts.Pos, name string, runs, like func(threads.Thread) bool) {
	how := e.Item.Value + " " + e.How.Value
	for _, v := range r.goesOn(e) {
		own := seq.Keep(v.outside, func(c *cylinder) bool { return c.Size.Thread != nil })
		said := seq.Keep(own, func(c *cylinder) bool { return strings.Contains(unhyphened(how), unhyphened(c.Name)) })
		if len(said) == 0 {
			said = seq.Keep(own, func(c *cylinder) bool { return like(*c.Size.Thread) })
		}
		if len(said) == 0 || slices.ContainsFunc(said, func(c *cylinder) bool { return runs(*c.Size.Thread) }) {
			continue
		}
		v.report(Stop, said[0].Name, pos, Finding{
			What: "the nut that is bought does not go on " + said[0].Name + " of " + v.p.Title.Value, Numbers: name + " on " + said[0].Size.Thread.Designation,
			Rule: "a nut has the thread that it goes on", Source: "by geometry", Fix: "a nut of that thread",
		})
	}
}

// nutLocked looks for what locks a nut of a series that is bought: the washer of its number, and in the shaft the slot for its inner
// tab.
func (r *reviewer) nutLocked(e *parts.Loose) {
	said := e.Item.Value + " " + e.Buy.Value
	nut := nutSeries().FindStringSubmatch(said)
	if e.As != parts.ANut || nut == nil || locksItself().MatchString(said+" "+e.How.Value) {
		return
	}
	other, locked := "", washer().MatchString(said) && !washerSeries().MatchString(said)
	for o := range everyLoose(r) {
		for _, m := range washerSeries().FindAllStringSubmatch(o.Item.Value+" "+o.Buy.Value, -1) {
			if locked = locked || m[2] == nut[3]; !r.nutNumbered(m[2]) {
				other = m[0]
			}
		}
	}
	f := Finding{Severity: Check, Pos: e.Item.Pos, Source: "ISO 2982-2 (DIN 5406), ABMA 8.2"}
	for _, v := range r.goesOn(e) {
		own := seq.First(v.outside, func(c *cylinder) bool {
			return c.Size.Thread != nil && threads.LockNut(*c.Size.Thread) == nut[1]+nut[2]+nut[3]
		})
		if own == nil {
			continue
		}
		f.Part, f.Feature = v.p.Name.Value, own.Name
		v.lockNutClear(own, nut[0])
		r.firstOf(f,
			flaw{!locked && other != "", Finding{
				What: "the lock washer " + other + " is not that of the nut " + nut[0], Numbers: "on " + own.Drawn.Size.Thread.Value,
				Rule: "a locking washer has the number of its nut", Fix: "the washer of that number"}},
			flaw{!locked, Finding{
				What: "nothing locks the nut " + nut[0] + " on " + own.Name + " of " + v.p.Title.Value, Numbers: "no washer is bought for it",
				Rule: "a nut on a shaft that turns is locked", Fix: "its washer under loose, a nut that locks itself, or how it is locked in its words"}},
			flaw{!v.slotted(own), Finding{
				What: "no slot in " + own.Name + " of " + v.p.Title.Value + " takes the tab of the washer under the nut " + nut[0], Numbers: "the washer turns with the nut",
				Rule: "the inner tab of a locking washer lies in a slot of the shaft", Fix: "a keyway or an opening for the washer in the thread, or a note for it"}},
			v.tabNarrow(own, nut[0]),
		)
	}
}

// lockNutClear looks for parts in the place of a lock nut that is bought and holds what stands beside its thread, on the side where the shaft is thicker.
func (v *view) lockNutClear(own *cylinder, name string) {
	b, nut := v.bodyOf(v.p.Name.Value), lockNutOf(*own.Size.Thread)
	before, behind := own.neighbours()
	on := geom.Between(own.FromMm, own.FromMm+nut.highMm)
	if behind != nil && (before == nil || behind.RadiusMm() > before.RadiusMm()) {
		on = geom.Between(own.ToMm-nut.highMm, own.ToMm)
	}
	set := slices.ContainsFunc(v.planned(parts.BearingKind), func(j *plan.JointPlan) bool { return j.A.Part == v.p.Name.Value && j.Bearing.Adjusted }) // nutClear looks there
	if b == nil || set {
		return
	}
	for p, mm := range v.lyingIn(ringOf(b.Pose, on, own.RadiusMm(), nut.overMm/2)) {
		if p.Of.Part.Name.Value != v.p.Name.Value {
			v.inNutsPlace(p, name+" on "+own.Name+" of "+v.p.Title.Value, Finding{
				Numbers: "the nut is " + v.mm(nut.overMm) + " across; they lie " + v.mm(mm) + " in one another", OverMm: over(mm),
			})
		}
	}
}

// nutNumbered tells whether a nut of a series with that number is bought.
func (r *reviewer) nutNumbered(number string) bool {
	return slices.ContainsFunc(r.job.Loose, func(e parts.Loose) bool {
		m := nutSeries().FindStringSubmatch(e.Item.Value + " " + e.Buy.Value)
		return m != nil && m[3] == number
	})
}

// slotted tells whether a washer finds a slot in a thread: a keyway or an opening that is for it, or words.
func (v *view) slotted(c *cylinder) bool {
	return slices.ContainsFunc(v.p.Radials, func(f parts.Radial) bool { return isWasher(&f) }) ||
		slices.ContainsFunc(v.q.Keyways, func(k plan.KeywayRow) bool { return k.In == c.Name }) ||
		slices.ContainsFunc(v.texts(), func(t parts.Text) bool { return washer().MatchString(t.Value) })
}

// tabNarrow is what is wrong with slots in a thread, or beside it for its washer, that are narrower than the inner tab of the washer under its nut.
func (v *view) tabNarrow(c *cylinder, nut string) flaw {
	wide := seq.Max(0, v.p.Radials, func(f parts.Radial) float64 { return words.Either(isWasher(&f), f.Around.Mm, 0) })
	for _, k := range v.q.Keyways {
		wide = max(wide, words.Either(k.In == c.Name, k.WidthMm, 0))
	}
	tab := tabMm(*c.Size.Thread)
	return flaw{wide > 0 && geom.Over(tab, wide), Finding{
		What:    "the slot in " + c.Name + " of " + v.p.Title.Value + " is narrower than the tab of the washer under the nut " + nut,
		Numbers: v.mm(wide) + ", the tab is " + v.mm(tab), OverMm: over(tab - wide),
		Rule: "the inner tab of a locking washer lies in a slot of the shaft", Source: "DIN 5406, ABMA 8.2, from memory", Fix: "a slot as wide as the maker has for this washer"}}
}

// ringBought compares a bearing or a seal that is bought by its sizes with the bores and shafts of the job, in millimetres or
// inches, and with the number of its seats.
func (r *reviewer) ringBought(e *parts.Loose) {
	m := ringSized().FindStringSubmatch(e.Item.Value)
	if m == nil {
		return
	}
	kind, inner, outer := strings.ToLower(m[1]), figure(m[2]), figure(m[3])
	is := func(c *cylinder, mm float64) bool {
		return geom.Alike(c.Drawn.Size.Nominal.Mm, mm) || geom.Alike(c.Drawn.Size.Nominal.Mm, mm*geom.MmPerInch)
	}
	var shaft, bore bool
	seats := 0
	for _, v := range r.all() {
		shaft = shaft || slices.ContainsFunc(v.outside, func(c *cylinder) bool { return is(c, inner) })
		for _, c := range seq.Keep(v.inside, func(c *cylinder) bool { return is(c, outer) }) {
			bore = true
			if strings.Contains(strings.ToLower(c.Seat), kind) && !v.jointNames(c.Name) {
				seats += max(1, v.p.Quantity)
			}
		}
	}
	f := Finding{Severity: Check, Pos: e.Item.Pos, Source: "by the job"}
	r.firstOf(f,
		flaw{!shaft || !bore, Finding{
			What: "the " + kind + " that is bought has the size of no " + words.Either(bore, "shaft", "bore") + " of the job", Numbers: m[0],
			Rule: "a bearing or a seal has the size of its seats", Fix: "the one that the seats are drawn for, or the seats"}},
		flaw{max(1, e.Count) < seats, Finding{
			What: "fewer " + kind + "s are bought than there are seats for them", Numbers: number(float64(max(1, e.Count))) + " for " + number(float64(seats)),
			Rule: "each seat has its bearing or seal", Fix: "count: " + number(float64(seats))}},
	)
}

// inNoList looks for screws with their sizes, in the words for how a thing is put on and in the notes of the motor, that
// stand in no list to buy. A joint that is not worked out has not listed its own.
func (r *reviewer) inNoList(said parts.Text) {
	if len(r.pl.Faults) > 0 {
		return
	}
	for _, words := range screwWords().FindAllString(said.Value, -1) {
		o, ok := orderOf(words)
		listed := slices.ContainsFunc(r.pl.Bought, func(row plan.BoughtRow) bool {
			return slices.ContainsFunc(screwWords().FindAllString(row.Item, -1), func(item string) bool {
				its, ok := orderOf(item)
				return ok && its.thread.Designation == o.thread.Designation && geom.Alike(its.longMm, o.longMm)
			})
		})
		if ok && !listed {
			r.add(Finding{
				Severity: Check, Pos: said.Pos, What: "the words name a screw that stands in no list to buy", Numbers: strings.TrimSpace(words),
				Rule: "what is screwed in is bought", Source: "by the job", Fix: "buy: the screw, and count: how many, beside how:",
			})
		}
	}
}

// standsUnheld looks for what stands on holes with nothing bought that holds it there, with it or by words that name them.
func (r *reviewer) standsUnheld(e *parts.Loose) {
	if e.Stands == nil || !r.job.OnHoles(e.Stands) || fastener().MatchString(e.Item.Value+" "+e.Buy.Value) {
		return
	}
	on := e.Stands.On
	for v, g := range r.groups() {
		if v.p.Name.Value != on.Part || g.Name.Value != on.Feature {
			continue
		}
		for o := range seq.Refs(r.job.Loose) {
			if fastener().MatchString(o.Item.Value+" "+o.Buy.Value) && v.saidFor(o, r.untitled(o.Item.Value+" "+o.How.Value), g) {
				return
			}
		}
	}
	r.add(Finding{
		Severity: Check, Pos: e.Item.Pos, What: "nothing is bought that holds " + words.Head(e.Item.Value) + " on " + on.Feature + " of " + r.viewOf(on.Part).p.Title.Value,
		Rule: "what is screwed in is bought", Source: "by the job", Fix: "buy: the screws, and count: how many, beside how:",
	})
}

func (r *reviewer) howInNoList(e *parts.Loose) { r.inNoList(e.How) }
func (m motored) notesInNoList() {
	for _, note := range m.m.Notes {
		m.inNoList(note)
	}
}

// beltBought looks for the belt or the chain that the motor drives through.
func (m motored) beltBought() {
	if m.m.Through == "belt" && seq.At(m.job.Loose, (*parts.Loose).Belt) == nil {
		m.add(Finding{
			Pos: m.m.Pos, What: "the motor drives through a belt or a chain, and none is bought",
			Rule: "what drives is bought", Source: "by the job", Fix: "an entry of loose with the belt or chain as item, or through: as it drives",
		})
	}
}

// ordered looks at screws that are ordered for a group of holes: their size, their number
// and their length.
func (v *view) ordered(e *parts.Loose, g *parts.HoleGroup, o screwOrder) {
	h := seq.At(v.holes, func(h *hole) bool { return h.name == g.Name.Value })
	if h == nil {
		return
	}
	f, d, need := v.here(g.Name.Value, e.Pos), o.thread.MajorMm, number(float64(v.count(g)))
	f.What = "the screws bought for " + g.Name.Value + " of " + v.p.Title.Value
	unlike := geom.Over(d, 2*h.radiusMm) || 2*h.radiusMm > widest*d
	look := v.throughHole
	if h.thread != nil {
		unlike, look = h.thread.Designation != o.thread.Designation, v.intoThread
	}
	if !v.firstOf(f,
		flaw{unlike, Finding{
			What: f.What + " are not for these holes", Numbers: o.words + " in " + v.mm(2*h.radiusMm),
			Rule: "a screw has the thread of its hole, or goes through it without rattling", Fix: "one size in both places"}},
		flaw{h.thread == nil && g.Size.Size.Fit.Class.Value == "" && v.count(g) > 1 && geom.Over(playing(o.thread), 2*h.radiusMm), Finding{
			Severity: Check, What: f.What + " have hardly any play in these holes",
			Numbers: o.words + " in " + v.mm(2*h.radiusMm) + ", wanted " + v.mm(playing(o.thread)) + " at the least", LeftMm: left(2*h.radiusMm - d),
			Rule: "the holes of several screws have the play of the fine series at the least", Source: "ISO 273, ASME B18.2.8",
			Fix: words.When(g.Size.Make == parts.ClearanceHole && g.Size.Thread != o.thread.Designation, "screws "+g.Size.Thread+", or ") + "larger holes"}},
		flaw{h.thread != nil && o.nut() && e.Stands != nil, Finding{
			Severity: Check, What: f.What + " have nuts, and the holes a thread", Numbers: o.words + " in " + g.Size.Thread,
			Rule: "what a nut draws together is free on the bolt", Fix: "clearance holes, or screws without nuts"}},
		flaw{e.Count < v.count(g), Finding{
			What: f.What + " are fewer than the holes", Numbers: number(float64(e.Count)) + " for " + need, Rule: "each hole has its screw", Fix: "count: " + need}},
	) {
		if m := v.mountings(g); len(m) == 0 || !m[0].screws(h, o, f) {
			look(e, g, h, o, f)
		}
	}
}

// deeper is how far beyond a blind thread a screw may reach, in its diameters: for washers and the seat of its head.
// Common practice, no source.
const deeper = 0.6

// intoThread looks at the length of screws that are ordered for threads, whose finding begins with what it is about.
func (v *view) intoThread(e *parts.Loose, g *parts.HoleGroup, h *hole, o screwOrder, f Finding) {
	const flangeShare = 1.6 // diameters of a motor's flange and a washer at the most
	d, deep, what := o.thread.MajorMm, h.span().LengthMm(), f.What
	if o.nut() {
		v.firstOf(f, o.otherCone(g, what))
		return
	}
	past, through, behind := o.longMm-deeper*d-deep, "", ""
	if e.Stands != nil {
		past, through = o.longMm-flangeShare*d-deep, "a flange and "
	}
	if (e.Stands != nil || e.Item.Value != "") && g.Through && past > 0 {
		behind = cmp.Or(v.machine().Under(v.p.Name.Value, g.Name.Value, past)...)
	}
	if v.firstOf(f,
		flaw{!g.Through && o.longMm > deep+deeper*d && (len(e.Lies) == 0 || e.Part.Value == v.p.Name.Value), Finding{ // what lies there is looked at in space
			What: what + " meet the bottom of their holes", Numbers: v.mm(o.longMm) + " long in " + v.mm(deep), OverMm: over(o.longMm - deep),
			Rule: "a screw clamps before it meets the bottom", Fix: "a shorter screw"}},
		flaw{behind != "", Finding{
			What: what + " end on " + behind, Numbers: v.mm(o.longMm) + " long through " + through + v.mm(deep) + ": " + v.mm(past) + " stand out", OverMm: over(past),
			Rule: "a screw clamps before it meets anything", Fix: "a shorter screw"}},
		o.otherCone(g, what),
	) || e.Stands != nil || e.Part.Value != "" || parts.SetScrew(o.words) {
		return
	}
	var full float64
	if !g.Through && e.Buy.Value == "" { // what is ordered is the screw itself: little else lies under its head
		full = cmp.Or(g.Depth.Mm, deep) + deeper*d
	}
	v.holds(what, e.Pos, d, o.longMm-o.washers()*d, full)
}

// throughHole looks at the head and the length of screws that are ordered for holes without a thread.
func (v *view) throughHole(e *parts.Loose, g *parts.HoleGroup, h *hole, o screwOrder, f Finding) {
	d, deep, what := o.thread.MajorMm, h.span().LengthMm(), f.What
	v.firstOf(f,
		flaw{o.sunk() && g.Countersink == nil && e.Part.Value == "" && e.Buy.Value == "", Finding{
			What: what + " have heads for a countersink, and the holes have none", Numbers: o.words,
			Rule: "a head that is to lie flush lies in its cone", Fix: "countersink: as wide as the head, on the side that the screws go in by"}},
		flaw{g.Countersink != nil && !o.sunk() && e.Part.Value == "" && e.Buy.Value == "" && flatHead().MatchString(o.words), Finding{
			What: what + " have heads that lie on a face, and the holes are countersunk", Numbers: o.words,
			Rule: "a head that is to lie on a face has one under it", Fix: "countersunk screws, or plain holes"}},
		o.otherCone(g, what),
		flaw{!o.nut() && saysInto(e, g.Name.Value) && !v.nutsBought(o.thread.Designation) && !v.threadFree(o.thread.Designation), Finding{
			What: what + " hold nothing: the holes that they are to go into have no thread", Numbers: o.words + " in " + v.mm(2*h.radiusMm),
			Rule: "a bolt has a nut or a thread behind it", Source: "by the job", Fix: "a tapped hole, or a nut"}},
		flaw{o.nut() && e.Part.Value == "" && o.longMm < deep+o.takes(e)*d, Finding{
			What:    what + " are too short for their nuts",
			Numbers: v.mm(o.longMm) + " long through " + v.mm(deep) + ", with what comes on " + v.mm(o.takes(e)*d) + " wanted beyond",
			LeftMm:  left(o.longMm - deep),
			Rule:    "a bolt comes through its nut", Fix: "a longer screw"}},
	)
}

// saysInto tells whether words put what is bought into a group of holes, by its name.
func saysInto(e *parts.Loose, group string) bool {
	return slices.ContainsFunc(intoWords().FindAllString(e.How.Value, -1), func(s string) bool { return saysHoles(unhyphened(s), group) })
}

// threadFree tells whether a group of holes has a thread that no joint fills: a screw may go on into that.
func (r *reviewer) threadFree(thread string) bool {
	for v, g := range r.groups() {
		if g.Size.Make == parts.TappedHole && sameThread(g.Size.Thread, thread) && !v.jointNames(g.Name.Value) {
			return true
		}
	}
	return false
}

// otherCone is a head of another angle than the cone that it is to lie in.
func (o *screwOrder) otherCone(g *parts.HoleGroup, what string) flaw {
	m := headDegrees().FindStringSubmatch(o.words)
	if m == nil || g.Countersink == nil {
		return flaw{}
	}
	deg := number(g.Countersink.Angle.Deg)
	return flaw{deg != m[1], Finding{
		What: what + " have heads of another angle than their cones", Numbers: m[0] + " in " + deg + "°",
		Rule: "a head lies in its cone all round", Fix: "one angle in both places"}}
}

// pinsBought compares pins that are bought with the plain holes that the words beside them name, in whichever part:
// they go into all, and where they are pressed in one holds them.
func (r *reviewer) pinsBought(e *parts.Loose) {
	across, _ := r.pinOf(e.Item.Value+"; "+e.Buy.Value, true)
	said := r.untitled(e.Item.Value + " " + e.How.Value)
	var loose *flaw
	held := false
	for v, g := range r.groups() {
		if across == 0 || g.Size.Make != parts.PlainHole || !v.saidFor(e, said, g) {
			continue
		}
		h := forPin{name: g.Name.Value + " of " + v.p.Title.Value, size: g.Size.Size}
		is, free := v.pinSize(h, across, e.Held == parts.ByForce), v.pinSize(h, across, false)
		common := v.here(g.Name.Value, e.Pos)
		common.Fix = "the pin or the hole of the other's size"
		held = held || !is.is
		if free.is {
			r.firstOf(common, free)
		} else if is.is && loose == nil {
			is.Finding = is.or(common)
			loose = &is
		}
	}
	if loose != nil && !held {
		r.add(loose.Finding)
	}
}
