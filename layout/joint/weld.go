package joint

import (
	"cmp"
	"math"
	"slices"
	"strings"

	"centrepop/layout/machine"
	"centrepop/layout/part"
	"centrepop/layout/plan"
	"centrepop/layout/weld"
	"centrepop/layout/words"
	"centrepop/parts"
	"centrepop/parts/geom"
	"centrepop/parts/seq"
)

// weldProcess names a process as the job does.
func weldProcess(word string) weld.Process {
	p, known := map[string]weld.Process{"MMA": weld.Stick, "MIG": weld.MIG, "TIG": weld.TIG, "flux-cored": weld.FluxCored, "metal-cored": weld.MetalCored, "self-shielded": weld.SelfShielded}[word]
	if !known {
		return weld.MAG
	}
	return p
}

// thickMm is the thickness that heat flows into at a feature: the plate, the
// wall, or half a solid bar.
func (f feature) thickMm() float64 {
	switch {
	case f.step != nil:
		return f.r.WallMm(f.step.MidMm())
	case f.radial != nil:
		return f.r.WallMm(f.radial.Rows[0].AxialMm)
	}
	return f.r.WallMm(f.r.LengthMm() / 2)
}

// weldDiameterMm is where the weld runs round: the smaller of two rounds that
// fit each other, or one that stands with an end on a face; 0 where the weld is no circle.
func (t *joint) weldDiameterMm() float64 {
	a, b := t.a.roundMm(), t.b.roundMm()
	switch {
	case a > 0 && b > 0:
		return math.Min(a, b)
	case t.b.radial != nil || t.standsRound():
		return a
	}
	return 0
}

// standsRound tells whether the first part stands with an end of a round outside on a face.
func (t *joint) standsRound() bool {
	p, s := t.in.Place, t.a.step
	if p == nil || s == nil || s.Inside {
		return false
	}
	at := map[string]float64{string(parts.Front): s.FromMm, string(parts.Back): t.a.r.LengthMm() - s.ToMm}
	off, end := at[p.With]
	return end && math.Abs(off) < geom.CloseMm
}

// roundMm is the diameter of a round feature, 0 for another.
func (f feature) roundMm() float64 { return f.r.RoundMm(f.ref.Feature) }

// weldKind is a fillet or butt weld.
type weldKind struct{ plain }

func (weldKind) ends(_ *shop, t *joint) {
	if t.b.radial == nil && slices.ContainsFunc(t.a.r.Part.Ends, func(e parts.TubeEnd) bool { return e.Onto.Part == t.b.ref.Part }) {
		t.refuse(t.b.ref.Pos, plan.CannotJoin, plan.Named(t.b.text()), plan.Named("to: the opening that the branch stands on, one of radial: of "+t.b.title()))
		return
	}
	for _, f := range []feature{t.a, t.b} {
		edge := f.step != nil || f.radial != nil || f.group == nil && (f.ref.Feature == "outline" || f.r.Part.Bar != nil || f.roundMm() > 0)
		t.need(f, edge, "a step, a bore, an outline, an opening, or an end or side of a bar")
	}
}

func (weldKind) title(t *joint) string { return "Weld " + t.a.title() + " to " + t.b.title() }

func (weldKind) buy(*shop, *joint, *buying) {}

func (weldKind) work(j *making, t *joint) {
	in := t.in.Weld
	thinner, thicker := t.a.thickMm(), t.b.thickMm()
	if thinner > thicker {
		thinner, thicker = thicker, thinner
	}
	p := &plan.WeldPlan{Type: in.Type, Process: in.Process, Metal: t.ownFiller(), Sides: in.Sides, ThinnerMm: geom.Clean(thinner), ThickerMm: geom.Clean(thicker), DiameterMm: geom.Clean(t.weldDiameterMm())}
	t.out.Weld = p
	if t.helixMm() > 0 { // it runs round no circle
		p.DiameterMm = 0
	}
	bad := func(err error) bool {
		if err != nil {
			t.refuse(t.in.Pos, plan.WeldUnworkable, plan.Named(t.w.Refused(err)))
		}
		return err != nil
	}
	if in.Type == "fillet" {
		if bad(t.fillet(p)) {
			return
		}
		j.corners(t, p)
	}
	long, err := t.longMm(p)
	if bad(err) {
		return
	}
	if round := t.seamRoundMm(); t.in.Weld.Length.Set() && round > 0 && long > round+seamOverMm {
		t.problem(plan.WeldLonger, plan.Of(plan.Mm, long), plan.Named(t.kind.title(t)), plan.Of(plan.Mm, words.Round(round, 0)))
	}
	if p.LengthMm = words.Round(long, 2); long == 0 {
		t.refuse(t.in.Pos, plan.WeldNoLength)
		return
	}
	if in.Type == "fillet" {
		t.filletLoad(p)
	} else if bad(t.butt(p)) || t.refused() {
		return
	}
	density := steelKgMm3 * 1e9
	if t.a.r.Material != nil {
		density = t.a.r.Material.DensityKgM3
	}
	sectionLength := p.LengthMm
	if t.eachSide() {
		sectionLength *= float64(in.Sides)
	}
	filler, err := weld.FillerFor(p.AreaMm2, sectionLength, density, weldProcess(in.Process))
	if bad(err) {
		return
	}
	if mm2, mm := t.flares(p); mm > 0 {
		flush, err := weld.FillerFor(mm2, mm, density, weldProcess(in.Process))
		if bad(err) {
			return
		}
		filler = weld.Filler{DepositedKg: filler.DepositedKg + flush.DepositedKg, BuyMaxKg: filler.BuyMaxKg + flush.BuyMaxKg, Runs: filler.Runs}
		p.FlareMm2, p.FlareMm, p.FlareRuns = words.Round(mm2, 1), mm, flush.Runs
	}
	p.DepositedKg, p.BuyKg, p.Runs = words.Round(filler.DepositedKg, 3), words.Round(filler.BuyMaxKg, 3), filler.Runs
	if round := p.DiameterMm > 0 && !in.Length.Set(); round {
		if bad(t.ring(p)) {
			return
		}
	}
	if s := in.SquareUp; s.Set() {
		p.SquareUpMm = s.Mm
	}
	t.slack(p)
	for _, f := range []feature{t.a, t.b} {
		if !j.weldedLater(t, f.inst()) {
			p.Finish = append(p.Finish, fineSizes(f, j.before)...)
		}
	}
	t.weldFigures(p)
	j.weldSteps(t, p)
}

// seamOverMm is how much longer than once round a weld may be said. Common practice, no source: its ends lap.
const seamOverMm = 10.0

// seamRoundMm is once round the end of a bar that is welded on, or the round that a weld runs on;
// 0 for another seam.
func (t *joint) seamRoundMm() float64 {
	for _, f := range []feature{t.a, t.b} {
		if _, end := f.barEnd(); end {
			section, _, _ := f.r.Bar()
			return 2 * (section.WidthMm + section.DepthMm)
		}
	}
	return math.Pi * t.weldDiameterMm()
}

// derived tells whether the length of a weld is that of the corners that its parts make.
func (t *joint) derived() bool { return len(t.out.Weld.Corners) > 0 && !t.in.Weld.Length.Set() }

// longMm is the length of a weld: as said, in its corners, or once round; 0 where nothing says it.
func (t *joint) longMm(p *plan.WeldPlan) (mm float64, err error) {
	switch {
	case t.in.Weld.Length.Set():
		return t.in.Weld.Length.Mm, nil
	case t.derived():
		for _, c := range p.Corners {
			mm += c.LengthMm
		}
		return mm, nil
	case t.helixMm() > 0:
		return words.Round(t.helixMm(), 1), nil
	case t.b.radial != nil && p.DiameterMm > 0:
		return t.saddleMm(p.DiameterMm)
	case t.corner():
		end, _ := t.a.mitre()
		section, _, _ := t.a.r.Bar()
		return words.Round(section.SeamMm(math.Abs(t.a.r.Part.Bar.End(end).Mitre.Deg)), 0), nil
	}
	return math.Pi * p.DiameterMm, nil
}

// sixteenthMm is a sixteenth of an inch.
const sixteenthMm = geom.MmPerInch / 16

func (t *joint) fillet(p *plan.WeldPlan) error {
	in := t.in.Weld
	f := weld.FilletJoint{ThinnerMm: p.ThinnerMm, ThickerMm: p.ThickerMm, LowHydrogen: in.Process != "MMA"}
	leg, rule, err := weld.SuggestLeg(f)
	if err != nil {
		return err
	}
	least, err := weld.MinLeg(f)
	if err != nil {
		return err
	}
	if t.w.Units == parts.Inches { // the table's inch column has 1/8, 3/16, 1/4 and 5/16 in
		least = math.Round(least/sixteenthMm) * sixteenthMm
	}
	reason := string(rule)
	if e := t.branchEnd(); e != nil && e.Gap.Mm > 0 {
		leg += e.Gap.Mm
		reason += "; the gap takes from the leg, and is added (ISO 9692-1, from memory)"
	}
	if in.Size.Set() {
		leg, reason = in.Size.Mm, "as drawn"
		if leg < least {
			t.problem(plan.FilletSmall, plan.Of(plan.Mm, leg), plan.Of(plan.Mm, least))
		}
	}
	if c, on := weldChamfer(t); c != nil {
		t.problem(plan.FilletOnChamfer, plan.Named(words.Spaced(c.Edge.Value)+" of "+on))
	}
	inch := t.w.Units == parts.Inches
	if inch && !in.Size.Set() { // what a gauge in inches reads
		leg = math.Ceil(leg/sixteenthMm-1e-9) * sixteenthMm
	}
	p.LegMm, p.ThroatMm = geom.Clean(leg), words.Round(weld.Throat(leg), 2)
	p.AreaMm2 = words.Round(weld.FilletArea(leg, true), 1)
	p.Symbol, p.OnEdge = weld.Fillet.Symbol(), t.b.r.Part.Formed() != nil
	if p.Designation, err = weld.Designation(leg, true, 0, 0, 0); err != nil {
		return err
	}
	if inch { // ISO 2553 writes the leg in mm
		p.Designation = t.w.Size(p.LegMm) + " leg"
	}
	if e := t.branchEnd(); e != nil {
		p.GapMm = e.Gap.Mm
	}
	t.figure("fillet leg", t.w.Size(p.LegMm)+" (throat "+t.w.Read(p.ThroatMm)+")", reason)
	t.figure("least leg", t.w.Size(least), "AWS D1.1:2020 Table 7.7")
	return nil
}

// prep is the groove of a butt weld of a thickness, as its joint asks for it.
func (t *joint) prep(thickMm float64) (weld.Prep, error) {
	edges, sides := weld.BothEdges, weld.OneSide
	if t.in.Weld.Type == "bevel" {
		edges = weld.OneEdge
	}
	if t.in.Weld.Sides == 2 {
		sides = weld.TwoSides
	}
	prep, err := weld.ButtPrep(thickMm, edges, sides)
	if t.w.Units == parts.Inches {
		prep.GapMm, prep.RootFaceMm = prep.GapMm.Stepped(sixteenthMm), prep.RootFaceMm.Stepped(sixteenthMm)
	}
	return prep, err
}

func (t *joint) butt(p *plan.WeldPlan) error {
	in := t.in.Weld
	if t.enters() {
		return t.pressedGroove(p)
	}
	c, on := weldChamfer(t)
	prep, err := t.prep(p.ThinnerMm)
	if err != nil {
		return err
	}
	if e := t.branchEnd(); e != nil {
		prep.GapMm.Use, p.Branch = e.Gap.Mm, e.Joint()
		prep.Source += "; gap as the branch is drawn"
	}
	area, err := prep.GrooveArea(p.ThinnerMm, weld.CapMm(p.ThinnerMm))
	if err != nil {
		return err
	}
	p.Symbol, p.AreaMm2 = prep.Shape.Symbol(), words.Round(area, 1)
	p.BevelDeg, p.GapMm, p.RootFaceMm = prep.AngleDeg.Use, prep.GapMm.Use, prep.RootFaceMm.Use
	p.OneEdge = prep.Shape == weld.SingleBevel || prep.Shape == weld.DoubleBevel
	text := p.Symbol
	if p.BevelDeg > 0 {
		text += ", " + words.Trim(p.BevelDeg, 0) + "°, root face " + t.w.Read(p.RootFaceMm)
	}
	t.figure("preparation", text+", gap "+t.w.Read(p.GapMm), prep.Source)
	if p.Besides = prep.Note; in.Type != "square" && prep.Shape == weld.Square {
		t.caution("No " + in.Type + " as the job says: " + t.w.Size(p.ThinnerMm) + " is welded square, not bevelled.")
	}
	if in.Type == "square" && prep.Shape != weld.Square {
		t.problem(plan.SquareTooThick, plan.Of(plan.Mm, p.ThinnerMm))
	}
	if c != nil {
		if p.OneEdge {
			p.Bevelled = on
		}
		t.figure("chamfer drawn", t.w.Size(c.Size.Mm)+" × "+words.Trim(c.Angle.Deg, 1)+"° on "+words.Spaced(c.Edge.Value)+" of "+on, "part")
	} else if p.BevelDeg > 0 && !t.corner() { // bars are bevelled as they are fitted
		t.problem(plan.NoWeldChamfer, plan.Named(t.a.title()), plan.Named(t.b.title()))
	}
	return nil
}

func weldChamfers(t *joint) (drawn []*parts.Chamfer, part string) {
	for k, f := range []feature{t.a, t.b} {
		for c := range seq.Refs(f.r.Part.Chamfers) {
			if of, end := c.On(); c.For == "weld" && of == f.ref.Feature && t.reaches(k == 1, end, c.Size.Mm) {
				drawn = append(drawn, c)
			}
		}
		if len(drawn) > 0 {
			return drawn, f.title()
		}
	}
	return nil, ""
}

// reaches tells whether a weld comes to a chamfer at one end of its step on B or on A: not where a
// saddle or a cope stands on the side of B, or what is round it ends before the chamfer, by more than
// the leg.
func (t *joint) reaches(onB bool, end parts.Face, sizeMm float64) bool {
	own, other, at := t.a.step, t.b.step, t.rel
	if onB {
		own, other, at = other, own, at.inverse()
	}
	switch {
	case onB && t.cutTo() && !t.corner():
		return false
	case !t.axis || own == nil || other == nil:
		return true
	}
	edge := own.FromMm
	if end == parts.Back {
		edge = own.ToMm
	}
	z, room := at.z0+at.s*edge, sizeMm+t.in.Weld.Size.Mm+agreeMm
	return other.FromMm-room < z && z < other.ToMm+room
}

// weldChamfer is the first of them; nil if none is drawn.
func weldChamfer(t *joint) (c *parts.Chamfer, part string) {
	if drawn, on := weldChamfers(t); len(drawn) > 0 {
		return drawn[0], on
	}
	return nil, ""
}

// eachSide tells whether a weld is laid on two sides in full, each with its own section.
func (t *joint) eachSide() bool {
	p := t.out.Weld
	return p.Sides > 1 && (p.Type == "fillet" || p.DepthMm > 0) && !t.derived()
}

// ring plans tacks, runs and squaring up of a weld round a circle.
func (t *joint) ring(p *plan.WeldPlan) error {
	first := 0.0
	tacks, err := weld.TackCircle(p.DiameterMm, p.ThinnerMm, p.ThickerMm, first)
	if err != nil {
		return err
	}
	p.TackLengthMm = t.tackMm(tacks.LengthMm)
	p.TacksDeg = append(p.TacksDeg, seq.Map(tacks.Tacks, func(k weld.Tack) float64 { return words.Round(k.ClockDeg, 2) })...)
	runs, err := weld.RunOrder(p.DiameterMm, max(1, p.Runs), first)
	if err != nil {
		return err
	}
	for i, r := range runs {
		p.Order = append(p.Order, plan.WeldRun{N: i + 1, Layer: r.Layer, StartDeg: words.Round(r.StartDeg, 2), EndDeg: words.Round(r.EndDeg, 2), Clockwise: r.Clockwise})
	}
	// The flat part dishes; without one, the larger round.
	dia, thick := p.DiameterMm, p.ThinnerMm
	for _, f := range []feature{t.b, t.a} {
		if f.r.Part.Flat() {
			box := f.r.OutlinePath().Bounds()
			dia, thick = math.Max(box.W(), box.H()), f.r.Part.Thickness.Mm
		}
	}
	if leave, err := weld.SquareUp(dia, thick); err == nil {
		p.SquareUpMm, p.BoreLeaveMm = geom.Clean(leave.FaceMm), geom.Clean(leave.BoreMm)
	} else {
		t.caution("No squaring-up allowance is known for a part of this size: tack, measure, and decide.")
	}
	return nil
}

// fineMm is the tolerance below which a size does not survive welding heat.
// Common practice, no source.
const fineMm = 0.1

// fineSizes are the sizes of a part to finish after welding, the seat of the
// weld itself and bores that hold something already left out.
func fineSizes(f feature, made []*joint) []string {
	var out []string
	for s := range seq.Refs(f.r.Steps) {
		if s != f.step && !s.AfterWeld && !(s.Inside && filled(f.inst(), s, made)) && s.Size.Limited && s.Size.MaxMm-s.Size.MinMm < fineMm && s.Size.Thread == nil {
			out = append(out, f.title()+" "+words.Spaced(s.Name)+" "+f.r.W.Limits(s.Size.MinMm, s.Size.MaxMm))
		}
	}
	return out
}

func (t *joint) weldFigures(p *plan.WeldPlan) {
	t.figure("symbol", strings.TrimSpace(p.Symbol+" "+p.Designation), "ISO 2553")
	round := ""
	if p.DiameterMm > 0 && len(p.TacksDeg) > 0 {
		round = ", all round " + t.w.Dia(p.DiameterMm)
	}
	if len(p.Corners) > 1 && round != "" {
		round = ", on both faces"
	}
	if t.eachSide() {
		round += ", on each side"
	}
	t.figure("length", t.w.Read(p.LengthMm)+round, "")
	if p.FlareMm > 0 {
		t.figure("flush sides", t.w.Read(p.FlareMm)+" of "+t.w.Area(p.FlareMm2)+", in the weld metal", "by geometry")
	}
	t.figure("weld metal", t.w.Area(p.AreaMm2)+", "+t.w.RoundMass(p.DepositedKg, 3)+"; buy "+t.w.RoundMass(p.BuyKg, 3), p.Process)
	t.shrinks(p)
	t.figure("runs", words.Trim(float64(p.Runs), 0)+", about", "common practice, no source")
	if len(p.TacksDeg) > 0 {
		t.figure("tacks", words.Trim(float64(len(p.TacksDeg)), 0)+" × "+t.w.Read(p.TackLengthMm)+" in the order "+words.Degrees(p.TacksDeg), "common practice, no source")
	}
}

// shrinks says what a fillet or a V between two bevelled edges draws in; the rule
// knows no other groove.
func (t *joint) shrinks(p *plan.WeldPlan) {
	s, err := weld.FilletShrinkage(p.LegMm, p.ThinnerMm, p.LengthMm)
	if p.Symbol == weld.SingleV.Symbol() {
		s, err = weld.ButtShrinkage(p.LengthMm)
	}
	if err != nil {
		return
	}
	across := t.w.Read(s.AcrossMinMm)
	if s.AcrossMaxMm > s.AcrossMinMm {
		across += " to " + t.w.Read(s.AcrossMaxMm)
	}
	t.figure("draws in, each weld", across+" across, "+t.w.Read(s.AlongMm)+" along", s.Source)
}

func (j *making) weldSteps(t *joint, p *plan.WeldPlan) {
	if len(p.TacksDeg) > 0 {
		p.ClockOf = t.weldClock().title()
	}
	t.caution("The welder's qualification, the local code and the employer's welding procedure come before this sheet.",
		"Fumes, arc and fire: extraction, screens, no paint, zinc or oil within "+t.w.Near(50)+" of the joint.")
	if metals, ok := weldMetals(t); ok {
		weldMetalProblem(t, metals)
	}
	j.holdTrue(t)
	j.cornerFits(t)
	if r := j.ringOf(t); r != nil {
		j.frameSteps(t, p, r)
		return
	}
	t.step("Set up", j.keepFlat(t, p), j.returnClamp(t), j.plugText(t), j.closes(t), "Clean bright "+t.w.Near(25)+" each side of the joint.", "Set: "+ofPlace+".", t.gapText(p), t.preheat())
	if len(p.TacksDeg) > 0 {
		s := t.step("Tack", "Tack "+words.Trim(float64(len(p.TacksDeg)), 0)+" × "+j.w.Read(p.TackLengthMm)+" long at "+words.Degrees(p.TacksDeg)+", in this order (clock of "+t.weldClock().title()+", seen from its front).")
		square := "square at two places 90° apart"
		if e := t.branchEnd(); e != nil && e.Angle.Deg != 90 {
			square = words.Trim(e.Angle.Deg, 3) + "° to " + t.b.title() + " where it leans, and square across that"
		}
		if len(t.out.InLine) > 0 {
			square += ", and what must line up"
		}
		s.Hold = "Check " + square + "; knock straight now."
	} else if t.helixMm() > 0 {
		t.tackHelix()
	} else {
		s := t.step("Tack", t.tackSeams())
		_, within := t.lean()
		s.Hold = words.Join(", ", "Check square on both sides", within) + "; knock straight now."
		if p.Lap {
			s.Hold = "Check that it lies flat and where it is set; knock it there now."
		}
	}
	t.step("Weld", t.laid(p)...)
	j.inspectWeld(t, p)
	j.flangesTrue(t)
	j.squareUp(t, p)
	if len(p.Finish) > 0 {
		held, title := "", "Measure what was finished"
		if t.meanwhile(j.job) != "" {
			held, title = "Leave in what holds it until all is cold, then take it out.", "Measure what was held true"
		}
		s := t.step(title, held)
		s.Hold = "Still inside the limits: " + strings.Join(p.Finish, "; ") + "; if not, force nothing into it: bore it where it stands, or ask who drew it."
	}
	j.finishLater(t)
	j.boresCold(t)
}

// finishLater is the step after the last weld of a weldment, in which its parts get the sizes that
// they were left large for, with what is cut into them, and their rows of the record.
func (j *making) finishLater(t *joint) {
	body := j.weldment(t.a.inst())
	if slices.ContainsFunc(body, func(i inst) bool { return j.weldedLater(t, i) }) {
		return
	}
	slices.SortFunc(body, func(a, b inst) int { return cmp.Or(strings.Compare(a.part, b.part), a.copy-b.copy) })
	var what, do, by []string
	clamped, set := "", "turn or bore only now"
	for _, i := range body {
		r := j.model(i.part)
		title, held := copyTitle(r, i.copy), r.LaterHeld
		later := slices.DeleteFunc(slices.Clone(r.Steps), func(s part.Step) bool { return !s.AfterWeld })
		for _, s := range later {
			what = append(what, title+" "+r.Finished(&s))
		}
		if most := j.job.Shop.SwingMm.Mm; len(later) > 0 {
			by = append(by, title+" true by "+r.LaterTrue)
			if swings := j.swingMm(t, i, body); swings > most {
				held, clamped, set = nil, "clamp it on the mill's table, for it would swing "+t.w.Read(words.Round(swings, 0))+" and the lathe takes "+t.w.Read(most)+", ", "bore only now with the boring head"
				for _, s := range slices.DeleteFunc(later, func(s part.Step) bool { return s.Inside }) {
					t.problem(plan.WeldedSwings, plan.Named(title+" "+words.Spaced(s.Name)), plan.Of(plan.Read, words.Round(swings, 0)), plan.Of(plan.Read, most))
				}
			}
		}
		for _, text := range slices.Concat(held, r.LaterDo) {
			do = append(do, words.Capital(title)+": "+text)
		}
		for _, c := range r.Later {
			c.What, c.Ref = title+" "+c.What, 0
			t.out.Checks = append(t.out.Checks, c)
		}
	}
	if len(what) > 0 {
		t.step("Finish after welding", append([]string{"When it is cold, " + clamped + "set " + strings.Join(by, " and ") + ", and " + set + ", without letting go between bores of one axis: " + strings.Join(what, "; ") + ", to the limits below."}, do...)...)
	}
}

// swingMm is what a weldment turns across about the axis of one of its parts, as it is after a weld; 0
// where the shop's lathe has no swing.
func (j *making) swingMm(t *joint, about inst, body []inst) float64 {
	if !j.job.Shop.SwingMm.Set() {
		return 0
	}
	return j.seams.SwingMm(j.with(t), machineOf(about), seq.Map(body, machineOf))
}

// machineOf is an instance as the machine knows it.
func machineOf(i inst) machine.Instance { return machine.Instance{Part: i.part, Copy: i.copy} }

// lean is how far a plate that stands on a face with an edge of it may lean, and that in
// words; nothing of another weld.
func (t *joint) lean() (mm float64, text string) {
	p := t.in.Place
	if !t.a.r.Part.Flat() || p == nil || !p.Edge() || p.On != "front" && p.On != "back" {
		return 0, ""
	}
	box := t.a.r.OutlinePath().Bounds()
	high := box.H()
	if p.With == "left" || p.With == "right" {
		high = box.W()
	}
	mm = words.Round(weld.LeanOff(high), 1)
	return mm, "within " + t.w.Read(mm) + " over " + t.w.Size(high)
}

func (t *joint) laid(p *plan.WeldPlan) []string {
	do := []string{runs(p.Runs) + " of " + p.Process + ", " + strings.TrimSpace(p.Symbol+" "+p.Designation) + "."}
	if p.DiameterMm > 0 && len(p.Corners) > 0 {
		alone := map[bool]string{true: " alone"}[len(p.Corners) == 1]
		do = append(do, "On the "+t.sides(p.Corners, p.Corners[0].Along)+" of "+p.Corners[0].Of+alone+".")
	}
	if drawn, on := weldChamfers(t); len(drawn) == 1 && p.Bevelled != "" {
		_, end := drawn[0].On()
		do = append(do, "Weld from the "+string(end)+" of "+on+", where its groove is.")
	}
	if p.Besides != "" {
		do = append(do, words.Capital(p.Besides)+".")
	}
	if len(p.Order) > 0 {
		var order []string
		for i, r := range p.Order {
			if r.Layer > 1 || i >= 12 {
				break
			}
			order = append(order, words.Trim(r.StartDeg, 0)+"→"+words.Trim(r.EndDeg, 0)+"°")
		}
		do = append(do, "First layer in sectors: "+strings.Join(order, ", ")+"; opposite sectors follow each other.")
		if p.Runs > 1 {
			do = append(do, "Further layers start half a sector on.")
		}
		if p.Sides > 1 {
			on := "both sides"
			if plate, _ := t.boredPlate(); plate != nil {
				on = "the front and the back of " + plate.title()
			}
			do = append(do, "Weld on "+on+": a layer on one, then the same on the other, turn and turn about.")
		}
	} else if t.helixMm() > 0 {
		on, _ := t.flightOn()
		do = append(do, "A quarter turn at a time, from the middle turn outward, each time the quarter opposite on "+on+"; the two sides of the flight in turn, so that it stays straight.")
	} else {
		do = append(do, t.seam().weld)
	}
	return do
}

// boresCold are the checks of bores that are finished before the last weld on their part: their
// limits are wide enough for that, or the job says what holds them.
func (j *making) boresCold(t *joint) {
	t.emptyBores(j.before, func(f feature, bore *part.Step) {
		if (bore.Size.MaxMm-bore.Size.MinMm >= fineMm || t.meanwhile(j.job) != "") && !j.weldedLater(t, f.inst()) {
			t.out.Checks = append(t.out.Checks, plan.Check{What: words.Spaced(bore.Name) + " of " + f.title() + ", cold, plugs out", Wanted: t.w.Dia(bore.Size.NominalMm), Limits: t.w.Limits(bore.Size.MinMm, bore.Size.MaxMm), MinMm: bore.Size.MinMm, MaxMm: bore.Size.MaxMm, Gauge: "bore gauge", Source: bore.Size.Source})
		}
	})
}

// meanwhile is what holds fine sizes of a part true while it is welded: the reason
// for which the job accepts that they are finished before the weld.
func (t *joint) meanwhile(job *parts.Job) string {
	for _, a := range job.Accept {
		if a.Finding.Value != "weld-first" {
			continue
		}
		o := job.Joint(a.Part)
		if o == nil || o.Kind != parts.WeldKind {
			continue
		}
		for _, f := range []feature{t.a, t.b} {
			if o.Some(func(e parts.JointRef) bool { return e.Is(f.ref.Part, f.ref.Copy) }) && len(fineSizes(f, nil)) > 0 {
				return a.Reason.Value
			}
		}
	}
	return ""
}

// holdTrue is the step before the first weld on a part whose fine sizes are done.
func (j *making) holdTrue(t *joint) {
	reason := t.meanwhile(j.job)
	begun := slices.ContainsFunc(ofKind(j.before, parts.WeldKind), func(o *joint) bool { return o.meanwhile(j.job) == reason })
	if reason == "" || begun {
		return
	}
	t.step("Hold what is finished true", "Fine sizes of these parts are finished already. As the job accepts it: "+reason)
}

// seam is how a straight weld is tacked, where that is not along the seam, welded and gauged.
type seam struct{ tack, weld, gauge string }

// flared are the bar whose end is welded, and what it stands on.
func (t *joint) flared() (bar, on feature) {
	if _, end := t.a.barEnd(); end {
		return t.a, t.b
	}
	return t.b, t.a
}

// flares are the section and the length of the seams where the end of a bar stands flush over the
// round corner of a hollow section; no length where it does so on no side.
func (t *joint) flares(p *plan.WeldPlan) (mm2, mm float64) {
	bar, on := t.flared()
	if _, end := bar.barEnd(); !end {
		return 0, 0
	}
	stands, _, _ := bar.r.Bar()
	section, _, _ := on.r.Bar()
	round, _ := section.CornersMm()
	if round == 0 {
		return 0, 0
	}
	for _, side := range p.Flush {
		switch parts.Side(side) {
		case parts.FrontSide, parts.BackSide:
			mm += stands.WidthMm
		default:
			mm += stands.DepthMm
		}
	}
	return weld.FlareArea(round, cmp.Or(stands.WallMm, round)), mm
}

// flare says what the end of a bar stands over where it is flush with a hollow section: no gap of 0,
// but the round of its corner.
func (t *joint) flare() string {
	p := t.out.Weld
	if p.FlareMm == 0 {
		return ""
	}
	_, on := t.flared()
	section, _, _ := on.r.Bar()
	r, _ := section.CornersMm()
	layers := ""
	if p.FlareRuns > 1 {
		layers = ", root first, in layers"
	}
	return "over the round corner of " + on.title() + ", radius about " + t.w.Read(r) + ", the gap opens to a flare" + layers + ": "
}

// seam is that of the sides of a bar's section, of both sides of a plate, or of one.
func (t *joint) seam() seam {
	_, endA := t.a.barEnd()
	_, endB := t.b.barEnd()
	flush := len(t.out.Weld.Flush) > 0
	switch out := (seam{"", "From the middle outward.", "at both ends and in the middle"}); {
	case (endA || endB) && flush:
		return seam{"the middle of each side of the section", "The fillets in the corners first, each from its middle outward; then the flush sides, which have no corner: " + t.flare() + "a seam filled level with both.", "in the middle of each fillet"}
	case endA || endB:
		return seam{"the middle of two opposite sides of the section, then of the other two", "Each side of the section from its middle outward, opposite sides in turn.", "in the middle of each side"}
	case t.out.Weld.Round:
		return seam{out.tack, "From the middle of its longest side outward both ways, round the corners without a stop" + map[bool]string{true: ". No weld where it stands flush: there is no corner.", false: " until both meet."}[flush], out.gauge + " of each side"}
	case flush:
		return seam{out.tack, "From the middle outward, corner by corner in turn. No weld where it stands flush: there is no corner.", out.gauge + " of each fillet"}
	case t.out.Weld.Lap:
		return seam{out.tack, "Each edge from its middle outward, the opposite one after it.", "in the middle of each edge"}
	case t.in.Weld.Sides == 2 || t.helixMm() > 0 || !t.out.Weld.OneSided():
		return seam{out.tack, "From the middle outward, turn and turn about on the two sides.", out.gauge + ", on each side"}
	default:
		return out
	}
}

// tackRow is the number and length of the tacks of a straight seam, which is taken in whole 5 mm
// so that pieces alike but for a millimetre are tacked alike.
func (t *joint) tackRow(lengthMm float64) (n int, eachMm float64) {
	lengthMm = max(5*math.Floor(lengthMm/5), min(5, lengthMm))
	n, eachMm, err := weld.TackRow(lengthMm, t.out.Weld.ThinnerMm, t.out.Weld.ThickerMm)
	if err != nil {
		t.refuse(t.in.Pos, plan.WeldUnworkable, plan.Named(t.w.Refused(err)))
	}
	return n, t.tackMm(eachMm)
}

// tackMm is the length of a tack to the millimetre, or to the sixteenth of an inch.
func (t *joint) tackMm(mm float64) float64 {
	if t.w.Units == parts.Inches {
		return geom.Clean(math.Round(mm/sixteenthMm) * sixteenthMm)
	}
	return words.Round(mm, 0)
}

// tackSeams says how many tacks hold a straight weld, of what length and in what order. The
// sides of a section are tacked in their middles.
func (t *joint) tackSeams() string {
	p, seam, edges := t.out.Weld, t.seam(), map[float64][]string{}
	long := []float64{p.LengthMm / float64(p.Sides)}
	switch {
	case t.in.Weld.Length.Set():
		long = []float64{t.in.Weld.Length.Mm}
	case t.derived():
		long = nil
		for _, c := range p.Corners {
			long, edges[c.LengthMm] = append(long, c.LengthMm), append(edges[c.LengthMm], c.Side)
		}
	}
	slices.Sort(long)
	if seam.tack != "" {
		side := long[0]
		if !t.derived() {
			side /= 4
		}
		_, p.TackLengthMm = t.tackRow(side)
		return "Tack " + seam.tack + ", each tack " + t.w.Read(p.TackLengthMm) + " long."
	}
	var each []string
	order := "in its middle"
	for i, mm := range slices.Backward(long) {
		n, tack := t.tackRow(mm)
		text := words.Trim(float64(n), 0) + " × " + t.w.Read(tack) + " long"
		if on := t.w.Read(mm); long[0] != long[len(long)-1] {
			if p.Lap || p.Round { // corners that are rounded are of both edges
				on = strings.Join(edges[mm], " and ")
			}
			text += " on " + on
		}
		each = seq.Add(each, text)
		if n > 1 && order == "in its middle" {
			order = tackOrder(n)
		}
		if i == len(long)-1 {
			p.TackLengthMm = tack
		}
	}
	of, turn := "", ""
	if len(long) > 1 || p.Sides > 1 {
		of, turn = "each seam ", "; one tack on each seam in turn, so that no side pulls"
	}
	return "Tack " + of + strings.Join(each, ", ") + ": " + order + turn + "."
}

// tackOrder is the order of tacks along a straight seam.
func tackOrder(n int) string {
	switch n {
	case 2:
		return "both ends"
	case 3:
		return "both ends, then the middle"
	}
	return "both ends, then the middle, then always into the widest gap, at equal distances"
}

// inspectWeld is what the finished weld is measured by: a gauge reads the throat
// of a fillet, but of a groove only whether it is full.
func (j *making) inspectWeld(t *joint, p *plan.WeldPlan) {
	cool := "Let it cool in still air to hand-warm before unclamping."
	if metals, ok := weldMetals(t); ok && metals.PreheatC.Max > 0 {
		cool = "Cover it at once with dry blanket or sand and let it cool slowly to hand-warm, then unclamp."
	}
	s := t.step("Cool and inspect", cool, "Look for cracks, undercut and size.")
	c := plan.Check{Wanted: p.Designation, Joins: true}
	if p.LegMm > 0 {
		where := "at four places round"
		if len(p.TacksDeg) == 0 {
			where = t.seam().gauge
		} else if t.eachSide() || p.Sides > 1 {
			where += ", on each side"
		}
		s.Hold = "Weld gauge on the throat " + where + "."
		c.What, c.Limits, c.MinMm, c.Gauge, c.Source = "throat", t.w.Read(p.ThroatMm)+" or more", p.ThroatMm, "weld gauge", "EN 1993-1-8 clause 4.5.3.3"
	} else {
		where, full := "Straight edge across the weld", "nowhere under the edge of the groove"
		c.Limits, c.Gauge = "level or proud all along", "straight edge, eye"
		if t.branchEnd() != nil { // no straight edge lies on a saddle
			where, full, c.Limits, c.Gauge = "Look along the weld all round, with a light", "no edge of the gap to be seen", "no edge of the gap to be seen", "eye, weld gauge"
		} else if plate, _ := t.boredPlate(); plate != nil {
			where = "Straight edge on " + t.grooveSide(plate) + plate.title() + ", along a radius over the weld"
		}
		s.Hold = where + ": full, " + full + ", no undercut."
		c.What, c.Source = "groove filled", "common practice, no source"
	}
	t.out.Checks = append(append(t.out.Checks, j.standChecks(t)...), c)
	if mm, within := t.lean(); mm > 0 && bolted(j.all, t.a.inst()) {
		t.out.Checks = append(t.out.Checks, plan.Check{What: t.a.title() + " square to " + t.b.title(), Limits: within, MaxMm: mm, Gauge: "square, feeler", Source: weld.PlaceSource})
	}
	if on := groundSides[t.in.Weld.Ground]; on != "" {
		s.Do = append(s.Do, "Then grind the weld flush "+on+" with the metal beside it, not below it.")
		t.out.Checks = append(t.out.Checks, plan.Check{What: "ground flush " + on, Limits: "no step that a finger finds, nothing below the metal beside it", Gauge: "eye, finger", Source: "common practice, no source"})
	}
}

// groundSides are where a weld is ground flush, in words.
var groundSides = map[string]string{"inside": "inside", "outside": "outside", "both": "inside and outside"}

// boredPlate is the flat part in whose bore a round is welded, and that; nil for another weld.
func (t *joint) boredPlate() (plate, round *feature) {
	for _, p := range [2][2]*feature{{&t.a, &t.b}, {&t.b, &t.a}} {
		if round, plate := p[0], p[1]; plate.r.Part.Flat() && plate.step != nil && plate.step.Inside && round.step != nil && !round.step.Inside {
			return plate, round
		}
	}
	return nil, nil
}

// grooveSide says which face of a part its groove opens to; nothing where none is drawn.
func (t *joint) grooveSide(f *feature) string {
	c, on := weldChamfer(t)
	if c == nil || on != f.title() {
		return ""
	}
	_, end := c.On()
	return "the " + string(end) + " of "
}

// branchEnd is the saddled end of a branch that is welded to its main, nil for
// another weld.
func (t *joint) branchEnd() *parts.TubeEnd {
	ends := t.a.r.Part.Ends
	i := slices.IndexFunc(ends, func(e parts.TubeEnd) bool { return t.b.radial != nil && e.Onto.Part == t.b.ref.Part })
	if i < 0 {
		return nil
	}
	return &ends[i]
}

// weldClock is the part whose clock a weld goes by: of a branch its own, for it is
// the round that the weld runs round.
func (t *joint) weldClock() feature {
	if t.branchEnd() != nil {
		return t.a
	}
	return t.b
}

// returnClamp keeps the welding current out of bearings that are in already.
func (j *making) returnClamp(t *joint) string {
	if bearingOn(j.before, j.there(t)...) != nil {
		return "Return clamp on " + t.b.title() + ", bright metal, beside the weld: bearings are in, and no current may go through them."
	}
	return ""
}

func runs(n int) string {
	if n == 1 {
		return "1 run"
	}
	return words.Trim(float64(n), 0) + " runs"
}

// weldedLater tells whether a later joint welds the same part again.
func (j *making) weldedLater(t *joint, i inst) bool {
	return slices.ContainsFunc(ofKind(j.later(t), parts.WeldKind), func(o *joint) bool { return o.has(i) })
}

// plateToFace is the flat part of a weld whose free face is to be true: something is bolted to
// it later, or the job says square-up; and the metal that its stock has over its thickness. ok
// is false where there is none, or other welds on it follow first.
func (j *making) plateToFace(t *joint) (f feature, spareMm float64, ok bool) {
	for _, f := range []feature{t.b, t.a} {
		part := f.r.Part
		if !part.Flat() || !t.in.Weld.SquareUp.Set() && !j.facedLater(f.inst()) || j.weldedLater(t, f.inst()) {
			continue
		}
		return f, geom.Clean(f.spareMm()), true
	}
	return feature{}, 0, false
}

// stiffShare is the thickness of a plate that keeps another flat, over that one's. Common
// practice, no source.
const stiffShare = 1.5

// keepFlat is what to do before welding a plate that nothing is left to face on.
func (j *making) keepFlat(t *joint, p *plan.WeldPlan) string {
	f, spare, ok := j.plateToFace(t)
	if !ok || spare >= p.SquareUpMm {
		return ""
	}
	p.BackingMm, p.BackingOn = j.next(stiffShare*f.r.LengthMm(), 5, 1.0/4), f.r.Out.Title
	return "Bolt a plate " + t.w.Size(p.BackingMm) + " thick or more, drilled through " + f.title() + ", to its free face, no tack there: nothing is left to face it."
}

// A face that is turned is flat to turnedFlatMm (common practice, no source); flatShare is how flat a
// plate that is not faced comes, over its longest side: EN 10029 class S has 3 mm in 1000 at 8 to 15
// thick (from memory).
const turnedFlatMm, flatShare = 0.1, 0.003

// squareUp faces plates whose free face is to be true where the stock is so much thicker than
// the part, in one step after the last weld of their body; else the plate is only checked.
func (j *making) squareUp(t *joint, p *plan.WeldPlan) {
	f, spare, ok := j.plateToFace(t)
	asked := t.in.Weld.SquareUp.Set()
	flat := func(mm float64) string {
		return "A " + t.w.Near(mm) + " feeler does not enter anywhere under the face."
	}
	switch {
	case asked && !ok:
		t.problem(plan.SquareUpNowhere, plan.Of(plan.Mm, p.SquareUpMm))
	case p.SquareUpMm <= 0 || !ok:
	case spare >= p.SquareUpMm:
		p.Faced = f.r.Part.Name.Value
		source := "common practice, no source"
		if asked {
			source = "job file"
		}
		t.figure("leave for squaring up", t.w.Read(p.SquareUpMm)+" on the joint face", source)
	default:
		box := f.r.OutlinePath().Bounds()
		t.step("Check that it is flat", "Rest the joint face of "+f.title()+" on a plate and feel round it.", "Else press it flat over the weld; if it stays so, cut it anew, from plate with metal to face.").Hold =
			flat(j.next(max(turnedFlatMm, flatShare*max(box.W(), box.H())), 0.1, 0.005))
		if asked {
			t.problem(plan.SquareUpStock, plan.Of(plan.Mm, p.SquareUpMm), plan.Named(f.title()), plan.Of(plan.Mm, spare))
		}
	}
	var do []string
	for _, o := range ofKind(j.made(t), parts.WeldKind) {
		if o.out.Weld == nil || o.out.Weld.Faced == "" {
			continue
		}
		if f, spare, _ := j.plateToFace(o); j.facedAt(o, f.inst()) == t {
			do = append(do, "Face the joint face of "+f.title()+" true, down to its thickness of "+t.w.Size(f.r.Part.Thickness.Mm)+": "+t.w.Read(spare)+" stands over it.")
		}
	}
	if len(do) > 0 {
		t.step("Square up", do...).Hold = flat(turnedFlatMm)
	}
}

// facedAt is the joint after which a plate is faced that a weld holds: the last weld of its body
// before something other is put to the plate.
func (j *making) facedAt(t *joint, plate inst) *joint {
	body, at := j.weldment(plate), t
	for _, o := range j.later(t) {
		if !o.forGood() && slices.Contains(o.held(), plate) {
			break
		}
		if o.is(parts.WeldKind) && slices.Contains(body, o.a.inst()) {
			at = o
		}
	}
	return at
}

// weldment are the parts that welds make one body with a part.
func (j *making) weldment(i inst) []inst {
	return j.members(i, ofKind(j.all, parts.WeldKind))
}

// thickYet warns of a plate that is thicker than it is drawn until it is faced after this weld
// or a later one.
func (j *making) thickYet(t *joint) {
	for _, o := range ofKind(j.all, parts.WeldKind) {
		f, spare, ok := j.plateToFace(o)
		if ok && spare > 0 && t.has(f.inst()) && slices.Index(j.all, j.facedAt(o, f.inst())) >= slices.Index(j.all, t) {
			t.caution(f.title() + " is still " + t.w.Size(f.r.Part.Stock.Size.Mm) + " thick, drawn " + t.w.Size(f.r.Part.Thickness.Mm) + ": places and depths here are those of the drawing, and " + t.w.Read(spare) + " stands out beyond its joint face until that is faced.")
		}
	}
}

// facedLater tells whether a part is bolted to something, so that its face must
// be true.
func (j *shop) facedLater(i inst) bool {
	return slices.ContainsFunc(j.job.Of(parts.BoltKind), func(o *parts.Joint) bool {
		return o.Bolt.Through.Is(i.part, i.copy) || o.Bolt.Into.Is(i.part, i.copy)
	})
}
