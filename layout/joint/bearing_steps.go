package joint

import (
	"cmp"
	"math"
	"slices"
	"strings"

	"centrepop/layout/part"
	"centrepop/layout/plan"
	"centrepop/layout/press"
	"centrepop/layout/words"
	"centrepop/parts"
	"centrepop/parts/geom"
	"centrepop/parts/seq"
)

// nutStopsMm is how far a seat may come out of its cone into the recess or the
// washer of the nut. Common practice, no source.
const nutStopsMm = 1.0

// sit says in the plan how the bearing sits, and judges its shoulders; false if
// no shoulder holds the cup.
func (j *making) sit(t *joint, p *plan.BearingPlan) (mounting, bool) {
	m, ok := t.mount()
	if !ok {
		return m, false
	}
	m.holds(p)
	housing := j.at(t.b.Instance()).at
	p.CupBackMm, p.LargeEndDir = geom.Clean(housing.z0+housing.s*m.cupBackMm), -housing.way(m.cupDir)
	p.LargeEndMm = geom.Clean(p.CupBackMm + p.LargeEndDir*p.WidthMm)
	if mm := j.standsOut(t, m); p.Adjusted && mm > nutStopsMm {
		t.problem(plan.NutStops, plan.Named(t.a.text()), plan.Of(plan.Mm, mm))
	}
	off, known := j.clearance(t, m)
	o := t.partner(j.all)
	oneSeat := o != nil && o.a.step == t.a.step // the other cone lies before this one
	if p.Adjusted && m.small != nil {
		p.KeepOff, p.KeepOffMm = words.Spaced(m.small.Name), off
		if known && oneSeat {
			p.KeepOffMm = geom.Clean(off - o.in.Bearing.ConeWidth.Mm)
		}
		if known && p.KeepOffMm <= 0 {
			t.problem(plan.ConeTouches, plan.Named(t.a.text()), plan.Named(p.KeepOff), plan.Of(plan.Mm, -p.KeepOffMm))
		}
	}
	j.nutShort(t, m)
	j.nutApart(t, o, m)
	if n, held := o.mount(); held {
		t.paired(p, m, n, off, known)
	}
	if m.fixed != nil {
		off = t.a.step.LengthMm() - p.WidthMm
	}
	if oneSeat && p.Arrangement == plan.BackToBack {
		m.small = nil
	}
	t.judgeMounting(p, m, off)
	return m, true
}

// paired says in the plan how a bearing and the other between its two parts stand to each other, and judges the gap
// before the small end that the lengths between the two leave.
func (t *joint) paired(p *plan.BearingPlan, m, n mounting, offMm float64, known bool) {
	if p.Arrangement = arrangement(m, n); p.Arrangement == plan.InTandem {
		t.problem(plan.Tandem, plan.Named(faceName(m.cupDir)))
	}
	if p.Adjusted && known && n.fixed != nil && p.Arrangement == plan.BackToBack {
		t.rely(relied{what: "the gap before the small end of the cone", mm: offMm, wantMm: standsOffMm, of: words.Spaced(m.small.Name),
			less: lessMm(t.b.r, true, m.cupBackMm, n.cupBackMm) + moreMm(t.a.r, false, n.coneBackMm, end(m.small, m.coneDir))})
	}
}

// holds says in the plan where the large end looks, what holds it, and from which side the cup comes.
func (m mounting) holds(p *plan.BearingPlan) {
	p.LargeEnd, p.Adjusted, p.CupFromCover = faceName(m.coneDir), m.fixed == nil, m.lid != nil && m.lid.out == nil
	switch {
	case m.fixed != nil:
		p.HeldBy = words.Spaced(m.fixed.Name)
	case m.nut != nil:
		p.HeldBy = m.nut.Size.Thread.Designation
	}
}

// rings is the plan of a bearing as far as mounting its rings goes.
func (t *joint) rings(m mounting) *plan.BearingPlan {
	in := t.in.Bearing
	p := &plan.BearingPlan{BoreMm: in.Bore.Mm, OutsideMm: in.Outside.Mm, WidthMm: in.Width.Mm, ConeWidthMm: in.ConeWidth.Mm}
	m.holds(p)
	t.fits(p)
	t.abutments(p)
	t.pushTools(p, m)
	t.heats(p)
	return p
}

// pushTools are the sleeve for the cone and the ring for the cup. The sleeve
// bears on the end that follows: the small one, where the cage stands just
// outside it, if the cone goes against a shoulder. Common practice, no source.
func (t *joint) pushTools(p *plan.BearingPlan, m mounting) {
	if p.ConeFitUm.Max > 0 { // else it slides on by hand
		p.ConeSleeveInMm, p.ConeSleeveOutMm = t.w.Even(p.BoreMm+0.5, 0.1, 0.01), p.SmallEndMaxMm
		if m.nut != nil {
			p.ConeSleeveOutMm = p.LargeEndMinMm
		}
	}
	p.CupRingInMm, p.CupRingOutMm = p.CupFaceMinMm, t.w.Even(p.OutsideMm-1, 0.1, 0.01)
}

func (t *joint) bearingFigures(p *plan.BearingPlan) {
	in := t.in.Bearing
	t.figure("bearing", p.Bearing+", "+t.w.Size(p.BoreMm)+" × "+t.w.Size(p.OutsideMm)+" × "+t.w.Size(p.WidthMm)+", "+p.Rotating+" ring turns", "job file")
	if p.LargeEnd != "" {
		t.figure("large end of the cone", "towards the "+p.LargeEnd+" of "+t.a.title()+", against "+held(p), "by geometry: away from the cup's shoulder")
	}
	if p.Arrangement != "" {
		t.figure("pair", string(p.Arrangement), "by geometry: where the backs of the cups look")
	}
	source := words.Either(p.ByRule, "share of the section, common practice, no source: take the maker's da, db, Da, Db where you have them", "the maker's, as the job gives them")
	t.figure("may touch the cone", "at its small end up to "+"Ø"+t.w.Read(p.SmallEndMaxMm)+"; shoulder at its large end at least "+"Ø"+t.w.Read(p.LargeEndMinMm), source)
	if p.ConeSleeveInMm != 0 {
		t.figure("sleeve for the cone", "Ø"+t.w.Read(p.ConeSleeveInMm)+" inside, "+"Ø"+t.w.Read(p.ConeSleeveOutMm)+" outside at the most, on its "+follows(p)+" end", "common practice, no source")
	}
	t.figure("push ring for the cup", "Ø"+t.w.Read(p.CupRingInMm)+" inside, "+"Ø"+t.w.Read(p.CupRingOutMm)+" outside", "common practice, no source")
	if p.KeepOff != "" {
		text := words.Either(in.ConeWidth.Set(), t.w.Read(p.KeepOffMm), "its width B is not in the job: measure")
		t.figure("small end off "+p.KeepOff, text, "shoulders and widths as drawn")
	}
	if p.HeatConeC != 0 {
		t.figure("cone slips on at", t.w.Heat(p.HeatConeC)+" with "+t.w.Fine(p.HeatLeftUm, p.HeatLeftUm)+" or more to spare", "expansion 12e-6 /K; bearing steel has 12.5e-6")
	}
	if p.HasEndFloat {
		t.figure("end float", t.w.Fine(p.EndFloatMm.Min*1000, p.EndFloatMm.Max*1000)+" (negative is preload)", "job file")
	}
	t.figure("grease", t.w.Grams(p.GreaseG)+" when regreasing; first fill: all spaces between the rollers", "0.005 D B, bearing makers' rule")
}

// held is what the large end stands against.
func held(p *plan.BearingPlan) string {
	switch {
	case p.HeldBy == "":
		return "nothing"
	case p.Adjusted:
		return "the nut on " + p.HeldBy
	}
	return shoulderOf(p.HeldBy)
}

// follows is the end of the cone that the sleeve bears on.
func follows(p *plan.BearingPlan) string { return words.Either(p.Adjusted, "large", "small") }

// here are the cups and the cones that are mounted at a joint: its own, and of a pair both of what the
// shaft cannot pass once its other rings are on, with the first of the two: the cones where the backs of
// the cups look apart, else the cups.
func (t *joint) here(partner *joint, second bool) (cups, cones []*joint) {
	own, both := []*joint{t}, []*joint{t}
	switch {
	case second:
		both = nil
	case partner != nil:
		both = append(both, partner)
	}
	if t.out.Bearing.Arrangement == plan.FaceToFace {
		return own, both
	}
	return both, own
}

// bearingSteps mounts the rings in the order a pair allows: what the shaft
// cannot pass any more goes in first, and a cone that a nut holds last.
func (j *making) bearingSteps(t *joint, p *plan.BearingPlan, m mounting) {
	t.caution("Press only on the ring that is being moved: a force through the rollers dents the raceways.")
	partner := t.partner(j.all)
	second := slices.Contains(j.before, partner)
	other, plans := mounting{}, map[*joint]*plan.BearingPlan{t: p}
	if partner != nil {
		other, _ = partner.mount()
		plans[partner] = partner.rings(other)
	}
	t.cups, t.cones = t.here(partner, second)
	for _, of := range t.cups {
		t.cupStep(of, plans[of])
		j.cupReached(t, of, plans[of])
	}
	if !second {
		j.slipSeals(t)
	}
	open := p.Adjusted && p.HeatConeC == 0 // its rollers go into the cup with the cone
	if open {
		j.greaseStep(t, p)
	}
	var heatC float64
	for _, of := range t.cones {
		j.coneStep(t, of, plans[of])
		heatC = max(heatC, plans[of].HeatConeC)
	}
	if p.HeatConeC = heatC; !open {
		j.greaseStep(t, p)
	}
	if partner != nil && !second && m.fixed != nil {
		t.step("Shaft into the housing", "Enter "+t.a.title()+" from the "+faceName(-m.cupDir)+" of "+t.b.title()+", its "+faceName(-m.coneDir)+
			" end leading, until the cone of "+t.a.text()+" lies in its cup.",
			"Guide it by hand: the rollers must not scrape over a shoulder.", j.packRoom(t, partner)).Caution = "Hold the shaft until the other bearing carries it: it drops out of an open cup."
	}
	j.putIn(t, putNut)
	if p.HasEndFloat && len(j.lidsLeft(t)) == 0 {
		j.endFloatStep(t, p, m, other, plans[partner])
	}
	j.fitSeals(t)
	name := func(of *joint) string { return of.in.Name.Value }
	p.CupsHere, p.ConesHere = seq.Map(t.cups, name), seq.Map(t.cones, name)
	p.Sleeve = slices.Contains(t.cones, t) && p.ConeSleeveInMm != 0
}

// cupReached finds the same of the cup of a bearing, in the joint that it goes in with, where its housing stands in a frame by
// then; not of one that may be loose, which is knocked in.
func (j *making) cupReached(t, of *joint, p *plan.BearingPlan) {
	body := j.members(of.b.Instance(), j.before)
	kg, _ := j.massKg(body, j.before)
	if len(body) < 2 || kg <= plan.LiftKg || p.CupFitUm.Min < 0 || of.cupForceN(p) == 0 {
		return
	}
	if across := t.w.Even(j.acrossMm(t, of.b.Instance(), body), 10, 1); across > postsMm {
		t.problem(plan.CupFramed, plan.Named(of.b.title()), plan.Of(plan.Kg, kg), plan.Of(plan.Read, across), plan.Named(of.in.Bearing.Bearing.Value))
	}
}

// slowMmPerMin is the speed times the mean diameter of a bearing up to which the room beside it may
// be full of grease (common practice, no source), and greaseGPerMm3 the density of that.
const slowMmPerMin, greaseGPerMm3 = 50000.0, 0.9e-3

// packRoom has the room between two bearings filled while one of its ends is still open, where a port
// lies in it and the shaft turns slowly.
func (j *making) packRoom(t, partner *joint) string {
	p, m := t.out.Bearing, j.job.Motor
	if len(p.Ports) == 0 || m == nil || m.Drives.Part != t.a.ref.Part {
		return ""
	}
	if rpm := cmp.Or(m.OutRPM.Value, m.RPM.Value); rpm == 0 || rpm*(p.BoreMm+p.OutsideMm)/2 > slowMmPerMin {
		return ""
	}
	between := func(a, b *part.Step, steps []*part.Step) (mm3 float64) {
		for _, s := range steps {
			if !geom.Over(min(a.ToMm, b.ToMm), s.FromMm) && !geom.Over(s.ToMm, max(a.FromMm, b.FromMm)) {
				mm3 += math.Pi / 4 * s.Size.NominalMm * s.Size.NominalMm * (s.ToMm - s.FromMm)
			}
		}
		return mm3
	}
	shaft, _ := t.a.r.Sides()
	_, bore := t.b.r.Sides()
	g := greaseGPerMm3 * (between(t.b.step, partner.b.step, bore) - between(t.a.step, partner.a.step, shaft))
	return "Then pack the room behind it full by hand, its holes shut, about " + t.w.Grams(words.Round(g, -1)) + " of the same grease: what is fed later reaches rollers only through it."
}

// greaseStep greases a bearing as it is mounted, and says how that is done later where no card of upkeep does.
func (j *making) greaseStep(t *joint, p *plan.BearingPlan) {
	later := "Later " + t.w.Grams(p.GreaseG) + " at a time."
	if len(p.Ports) > 0 {
		later += " Port: " + strings.Join(p.Ports, "; ") + "."
	} else if t.b.r.Part.Turned() && len(t.b.r.Radials) == 0 {
		later = "No port in " + t.b.title() + ": later it is washed out and packed anew."
	}
	if up := j.job.Upkeep; up != nil && slices.ContainsFunc(up.Ports, func(o parts.Port) bool { return o.Bearing.Value == t.in.Name.Value }) {
		later = ""
	}
	t.step("Grease", greaseText(p), later)
}

// cupStep pushes a cup home: that of the joint or of its partner.
func (t *joint) cupStep(of *joint, p *plan.BearingPlan) {
	m, _ := of.mount()
	if ring := (plan.PushRing{InMm: p.CupRingInMm, OutMm: p.CupRingOutMm}); !slices.Contains(t.out.Bearing.Rings, ring) {
		t.out.Bearing.Rings = append(t.out.Bearing.Rings, ring)
	}
	first, under := "thin side of the cup; its thick side, the back, goes first", m.cupDir
	home := "until it sounds home"
	before, hold := of.asMeasured("the cup", m)
	if p.CupFromCover {
		first, under = "thick side of the cup, its back; its thin side goes first", -m.cupDir
		before, home = "", "until its back is "+t.w.Said(math.Abs(end(of.b.step, m.cupDir)-m.cupBackMm))+" below the face"
		hold = "Kept from sliding out until " + m.lid.coverOf(of.b) + " is bolted on behind it."
	}
	s := t.step("Cup of "+words.Spaced(of.in.Name.Value), before, "Push ring Ø"+t.w.Read(p.CupRingInMm)+" / Ø"+t.w.Read(p.CupRingOutMm)+" on the "+first+".",
		of.pushText(p)+" into "+of.b.text()+" square "+home+", "+of.b.title()+" resting square on its "+faceName(under)+", the bore clear.")
	if most := of.cupForceN(p); most > 0 {
		s.Caution = "Over " + t.w.Force(most, 1) + " it is canted: knock it out and start again."
	}
	s.Hold = hold
}

// pushText says how tight a cup goes in.
func (t *joint) pushText(p *plan.BearingPlan) string {
	fit := p.CupFitUm
	switch {
	case fit == (plan.Range{}):
		return "Push it"
	case fit.Max <= 0:
		return "It is loose by " + t.w.Fine(-fit.Max, -fit.Min) + ": push it by hand"
	case fit.Min < 0:
		return "It is between " + t.w.Fine(-fit.Min, -fit.Min) + " loose and " + t.w.Fine(fit.Max, fit.Max) + " tight: push or press it"
	}
	return "It is " + t.w.Fine(fit.Min, fit.Max) + " tight: press it"
}

// cupForceN is what pressing a cup in takes at the most, in N: the tightest fit, oiled,
// the cup reckoned solid and as wide as the bearing and the housing as thick as it is
// anywhere, which is more than they are. 0 where it is not tight or the housing's metal is
// not known.
func (t *joint) cupForceN(p *plan.BearingPlan) float64 {
	tight := p.CupFitUm.Max / 1000
	hub, err := t.b.member(p.OutsideMm)
	if tight <= 0 || err != nil {
		return 0
	}
	hub.OutsideMm = seq.Max(hub.OutsideMm, t.b.r.Side(false), diameterMm)
	if t.b.r.Part.Flat() {
		box := t.b.r.OutlinePath().Bounds()
		hub.OutsideMm = math.Hypot(box.W(), box.H())
	}
	mu, err := press.FrictionFor(hub.Material, hub.Material, press.PressedOiled)
	if err != nil {
		return 0
	}
	r, err := press.Range(press.Input{Hub: hub, Shaft: press.Member{OutsideMm: p.OutsideMm, Material: hub.Material}, LengthMm: t.in.Bearing.Width.Mm, Friction: mu}, tight, tight)
	if err != nil {
		return 0
	}
	return words.Round(r.ForceN().Max, 0)
}

// coneStep mounts a cone: that of the joint or of its partner.
func (j *making) coneStep(t, of *joint, p *plan.BearingPlan) {
	do := append([]string{j.coneEnd(t, of, p)}, t.coneOn(p)...)
	if t.draw != nil {
		do = append(do, "Or draw it on: rod into "+t.draw.into+", tube on the "+follows(t.out.Bearing)+
			" end, plate, washer, nut; oil the threads, turn the nut until the play is nearly gone, not over "+t.w.Torque(t.draw.nutNm)+".")
	}
	if p.KeepOff != "" {
		keep := "It never reaches " + shoulderOf(p.KeepOff)
		if p.KeepOffMm > 0 {
			keep += ": about " + t.w.Read(p.KeepOffMm) + " stays open at its small end"
		}
		do = append(do, keep+".")
	}
	s := t.step("Cone of "+words.Spaced(of.in.Name.Value), do...)
	if !p.Adjusted && p.HeldBy != "" {
		s.Hold = "A " + t.w.Near(0.05) + " feeler does not enter between large end and shoulder" + words.When(p.HeatConeC != 0, " when it is cold") + "."
	}
	if p.HeatConeC != 0 {
		s.Caution = "Not over " + t.w.Heat(press.OpenBearingC) + ", no flame; gloves."
	}
	if most, err := coneForceN(of, p); err == nil && t.draw == nil && p.ConeFitUm.Max > 0 {
		s.Caution = words.Join(" ", s.Caution, "Pressed over "+t.w.Force(most, 1)+" it is canted: draw it off and start again.")
	}
}

// coneEnd says which end of a cone goes first, and against what its large one comes.
func (j *making) coneEnd(t, of *joint, p *plan.BearingPlan) string {
	switch small := "Small end first over " + of.a.text() + ", into its cup; "; {
	case !p.Adjusted:
		return "Large end first, to " + shoulderOf(p.HeldBy) + " of " + t.a.title() + "."
	case p.HeldBy == "":
		return small + "nothing of the job holds its large end."
	default:
		return small + j.nutTitle(p.HeldBy) + " on " + p.HeldBy + " follows on the large end."
	}
}

// coneOn says how a cone goes on its seat: hot, pressed or by hand.
func (t *joint) coneOn(p *plan.BearingPlan) (do []string) {
	sleeve := "Sleeve Ø" + t.w.Read(p.ConeSleeveInMm) + " inside, at most Ø" + t.w.Read(p.ConeSleeveOutMm) + " outside, on the " + follows(p) + " end of the cone: not on the cage."
	if p.Adjusted && t.draw == nil { // no shoulder stops it, and its force goes through the rollers
		sleeve += " Hold " + t.a.title() + " at its " + string(parts.Face(p.LargeEnd).Other()) + " end, and stop while there is still end play."
	}
	if !p.Adjusted && p.LargeEnd != "" {
		sleeve += " " + t.a.title() + " stands on its " + p.LargeEnd + "."
	}
	switch {
	case p.HeatConeC == 0 && p.ConeFitUm.Max > 0:
		return []string{sleeve, "Press it: heating to " + t.w.Heat(coneHeatC) + " would not open it enough."}
	case p.HeatConeC == 0:
		return []string{"It slides on by hand."}
	}
	on := "slip it on, hold until it grips."
	if p.Adjusted { // nothing draws it back; common practice, no source
		on = "slip it on, stop with " + t.w.Near(0.2) + " to " + t.w.Near(0.3) + " of end play left, hold until it grips: nothing draws it back."
	}
	heat := words.Either(p.ConeFitUm.Min < 0, "If it does not slide on by hand: heat the cone to ", "Heat the cone to ") // of a sliding seat, such as g6, few grip
	do = []string{heat + t.w.Heat(p.HeatConeC) + " in oil or on a plate, " + on}
	if t.draw == nil { // which stops better than a press, and needs nothing that holds the shaft
		do = append(do, "Or press it: "+words.Lower(sleeve))
	}
	return do
}

// fastenedBy is the joint after one of a bearing that fastens its housing to that of another bearing of the
// shaft; nil where they are fastened by then, or never.
func (j *making) fastenedBy(t, other *joint) *joint {
	if other == nil {
		return nil
	}
	fixed := seq.Keep(j.all, func(o *joint) bool { return !o.is(parts.BearingKind, parts.SlideKind) })
	for n, o := range fixed {
		if slices.Contains(j.members(t.b.Instance(), fixed[:n+1]), other.b.Instance()) {
			if slices.Contains(j.before, o) {
				return nil
			}
			return o
		}
	}
	return nil
}

// nutApart finds the nut of a cone put on with another joint than its bearing's or that of the other on the shaft: before the
// cone, which then does not come on, or when that has been set already.
func (j *making) nutApart(t, other *joint, m mounting) {
	if m.nut == nil {
		return
	}
	its := isNut(m.nut.Size.Thread.Designation)
	if made := j.nutMade(m.nut.Size.Thread.Designation); made != nil {
		its = func(e *parts.Loose) bool { return e.Part.Value == made.Part.Name.Value }
	}
	for e := range seq.Refs(j.job.Loose) {
		with := seq.First(j.all, func(o *joint) bool { return o.in.Name.Value == e.After.Value })
		later := with == other && !slices.Contains(j.before, other)
		switch {
		case !its(e):
		case with == nil, with == t, later, with.is(parts.BearingKind) && with.a.Instance() != t.a.Instance():
			return // it is there in time, or of another shaft
		default:
			early := words.Either(slices.Contains(j.before, with), "before the cone, which has to pass there", "when it should have set the bearing already")
			t.problem(plan.NutApart, plan.Named(j.looseTitle(e)), plan.Named(e.After.Value), plan.Named(early), plan.Named(t.in.Name.Value))
			return
		}
	}
}

// endFloatStep sets the play of a pair of bearings by a dial gauge, or, where
// preload is wanted, by an angle of the nut from no play on: preload over pitch; the nut may be that of the other of the pair. A cone that sits
// tight does not follow the nut back.
// Common practice, no source.
func (j *making) endFloatStep(t *joint, p *plan.BearingPlan, m, pair mounting, of *plan.BearingPlan) {
	tight := p.ConeFitUm.Min >= 0
	if m.nut == nil && pair.nut != nil {
		m.nut, tight = pair.nut, of.ConeFitUm.Min >= 0
	}
	span := t.span(p.EndFloatMm)
	check := t.floatCheck(p.EndFloatMm)
	defer func() { t.out.Checks = append(t.out.Checks, check) }()
	other := bearingOn(seq.Keep(j.all, func(o *joint) bool { return o.b.Instance() != t.b.Instance() }), t.a.Instance())
	if late := j.fastenedBy(t, other); late != nil {
		t.problem(plan.FloatEarly, plan.Named(t.a.title()), plan.Named(t.b.title()), plan.Named(other.b.title()), plan.Named(late.in.Name.Value))
	}
	if m.nut == nil && m.cupShoulder != nil && other == nil && len(j.lids(t)) == 0 { // of two housings one is shimmed
		t.problem(plan.FloatUnset, plan.Of(plan.Mm, p.EndFloatMm.Min), plan.Of(plan.Mm, p.EndFloatMm.Max), plan.Named(t.a.title()), plan.Named(t.b.title()))
		s := t.step("Measure the end float", "Nothing sets it: no nut is on the shaft, and the cups stand on shoulders of "+t.b.title()+".",
			"Dial gauge on the shaft end, push and pull while turning: "+span+".")
		s.Hold = "Turns freely by hand. Outside " + span + " stop: the shoulders lie wrong."
		return
	}
	if m.nut == nil {
		s := t.step("Set the end float", "Nothing on the shaft adjusts this bearing: fit shims under what holds the cup until the dial gauge on the shaft end shows "+span+", push and pull while turning.")
		s.Hold = "Turns freely by hand."
		return
	}
	thread := m.nut.Size.Thread.Designation
	lock := j.lock(thread)
	turn := func(lo, hi float64) string { return turnOf(m.nut, lo, hi) }
	nut := j.nutTitle(thread)
	tighten := "Tighten " + nut + " while turning " + t.a.title() + ", until "
	if p.EndFloatMm.Max > 0 {
		do := []string{tighten + "it drags, so that the rollers find their place; then slack off."}
		if tight {
			do = []string{"Tighten " + nut + " while turning " + t.a.title() +
				", a few degrees at a time, and measure each time. The cone sits tight and does not follow " + nut +
				" back: too far, draw it back and begin again."}
		} else if p.EndFloatMm.Min >= 0 {
			do = append(do, "From no play, "+turn(p.EndFloatMm.Min, p.EndFloatMm.Max)+" of "+nut+" back on "+thread+" gives it.")
		}
		s := t.step("Set the end float", append(do, "Dial gauge on the shaft end, push and pull while turning: "+span+".", lock+". Measure again: it may have moved.")...)
		s.Hold = "Turns freely by hand, no play felt sideways."
		return
	}
	s := t.step("Set the preload", tighten+"the dial gauge on the shaft end just shows no play, push and pull.",
		"From there tighten "+turn(-p.EndFloatMm.Max, -p.EndFloatMm.Min)+" more on "+thread+": "+span+" (negative is preload).",
		"Turn the shaft ten times. "+lock+". Turn again.")
	s.Hold = "Turns by hand with a light, even drag."
	check.What, check.Limits, check.Gauge = "preload", turn(-p.EndFloatMm.Max, -p.EndFloatMm.Min)+" past no play", "angle of "+nut
}

// turnOf is how far to turn a nut for a span along its thread: whole degrees
// inside it, as far as there are any.
func turnOf(thread *part.Step, loMm, hiMm float64) string {
	deg := func(mm float64) float64 { return 360 * mm / thread.Size.Thread.PitchMm }
	lo, hi := math.Ceil(deg(loMm)-1e-9), math.Floor(deg(hiMm)+1e-9)
	return words.Either(lo > hi, words.Trim(deg((loMm+hiMm)/2), 1)+"°", words.Trim(lo, 0)+"° to "+words.Trim(hi, 0)+"°")
}

// tools are a ring for each cup and a driver for each cone that is mounted in the steps of the joint.
func (bearingKind) tools(j *assembly, t *joint, _ []*joint, list *tooling) {
	for _, of := range t.cups {
		j.cupRing(t, of, list)
	}
	for _, of := range t.cones {
		j.coneDriver(t, of, list)
	}
}

// coneDriver is the driver for the cone of a bearing, long enough to stand out over the
// shaft; where the end of the shaft can be pulled on, it is the tube of a draw bolt. A cone
// that slides on by hand needs none.
func (j *assembly) coneDriver(t, of *joint, list *tooling) {
	p, m, ok := of.mounted()
	if !ok || p.ConeSleeveInMm == 0 {
		return
	}
	comes := -m.coneDir // the side that the cone comes from
	if p.Adjusted {
		comes = m.coneDir
	}
	name, long := "Cone driver", reachMm(of.a, comes)+endMm
	if of.draw != nil {
		name, long = "Draw tube", j.tubeMm(of, m)
	}
	list.add(t, tool{name, j.hollow(p.ConeSleeveInMm, p.ConeSleeveOutMm, long) + "on the cone's " + follows(p) + " end",
		j.sleeve(atLeast(p.ConeSleeveInMm, pressWideMm), atMost(p.ConeSleeveOutMm, 1), long), nil})
	if of.draw != nil {
		j.drawTools(of, list)
	}
}

func (bearingKind) work(j *making, t *joint) {
	p, ok := t.goesOn()
	if !ok {
		return
	}
	t.seats(p)
	t.abutments(p)
	m, held := j.sit(t, p)
	if !held {
		t.problem(plan.CupNotHeld, plan.Named(t.b.text()))
	}
	j.cupLoose(t, p, m)
	t.pushTools(p, m)
	t.draw = j.drawn(t, p, m)
	t.heats(p)
	p.GreaseG = greaseGrams(t.in.Bearing)
	p.Ports = j.greasePorts(t.b)
	if float := j.endFloat(t); len(float) == 2 {
		p.EndFloatMm, p.HasEndFloat = plan.Range{Min: geom.Clean(float[0].Mm), Max: geom.Clean(float[1].Mm)}, true
		p.ShutBy = j.shutBy(t)
		j.judgeShims(t, p, m)
	}
	t.bearingFigures(p)
	t.drawFigures()
	j.bearingSteps(t, p, m)
}
