package joint

import (
	"cmp"
	"math"
	"slices"
	"strconv"
	"strings"

	"centrepop/layout/lookup"
	"centrepop/layout/plan"
	"centrepop/layout/weld"
	"centrepop/layout/words"
	"centrepop/parts"
	"centrepop/parts/geom"
	"centrepop/parts/seq"
)

// weldKind is a fillet or butt weld.
type weldKind struct{ plain }

func (weldKind) ends(_ *shop, t *joint) {
	if t.b.radial == nil && slices.ContainsFunc(t.a.r.Part.Ends, func(e parts.TubeEnd) bool { return e.Onto.Part == t.b.ref.Part }) {
		t.refuse(t.b.ref.Pos, plan.CannotJoin, plan.Named(t.b.text()), plan.Named("to: the opening that the branch stands on, one of radial: of "+t.b.title()))
		return
	}
	for _, f := range []feature{t.a, t.b} {
		edge := f.step != nil || f.radial != nil || f.group == nil && (f.ref.Feature == "outline" || f.ref.Feature == "mouth" || f.r.Part.Bar != nil || f.roundMm() != 0)
		t.need(f, edge, "a step, a bore, an outline, an opening, an end of a cone or transition, or an end or side of a bar")
	}
}

func (weldKind) title(t *joint) string { return "Weld " + t.a.title() + " to " + t.b.title() }

func (weldKind) buy(*shop, *joint, *buying) {}

func (weldKind) work(j *making, t *joint) {
	in := t.in.Weld
	thickA, thickB := t.a.thickMm(), t.b.thickMm()
	p := &plan.WeldPlan{Type: in.Type, Process: in.Process, Metal: t.ownFiller(), Sides: in.Sides,
		ThinnerMm: geom.Clean(min(thickA, thickB)), ThickerMm: geom.Clean(max(thickA, thickB)), DiameterMm: geom.Clean(t.weldDiameterMm())}
	t.out.Weld = p
	if err := j.seamOf(t, p); err != nil {
		t.refuse(t.in.Pos, plan.WeldUnworkable, plan.Named(t.w.Refused(err)))
	}
	if t.refused() {
		return
	}
	if s := in.SquareUp; s.Set() {
		p.SquareUpMm = s.Mm
	}
	j.slack(t, p)
	for _, f := range []feature{t.a, t.b} {
		if !j.weldedLater(t, f.Instance()) {
			p.Finish = append(p.Finish, fineSizes(f, j.before)...)
		}
	}
	t.weldFigures(p)
	j.weldSteps(t, p)
}

// seamOf works out the section of a weld, its length, its metal and the way round.
func (j *making) seamOf(t *joint, p *plan.WeldPlan) error {
	in, fillet := t.in.Weld, t.in.Weld.Type == "fillet"
	if fillet {
		if err := t.fillet(p); err != nil {
			return err
		}
		j.corners(t, p)
		t.allRound(p)
	}
	long, err := t.longMm(p)
	if err != nil {
		return err
	}
	if round := t.seamRoundMm(); in.Length.Set() && round > 0 && long > round+seamOverMm {
		t.problem(plan.WeldLonger, plan.Of(plan.Mm, long), plan.Named(t.kind.title(t)), plan.Of(plan.Mm, t.w.Rounded(round, 0)))
	}
	if p.LengthMm = words.Round(long, 2); long == 0 {
		j.noLength(t)
		return nil
	}
	if fillet {
		t.filletLoad(p)
	} else if err := j.butt(t, p); err != nil || t.refused() {
		return err
	}
	if err := t.fill(p); err != nil || !t.ringed(p) {
		return err
	}
	return t.ring(p)
}

// corners finds where a straight fillet with a place lies, or one at the end of a bar that others have set, says it with the place where that
// is not on every side, and notes a length that is asked for where no corner is.
func (j *making) corners(t *joint, p *plan.WeldPlan) {
	p.Lap = t.in.Place != nil && !t.in.Place.Edge() && t.a.r.Part.Flat() && t.a.step == nil
	if plate, round := t.boredPlate(); plate != nil && !t.in.Weld.Length.Set() {
		j.boreCorners(t, p, plate, round)
	}
	_, _, barEnd := t.onBarEnd()
	if set := t.in.Place != nil || barEnd && !t.corner() && t.copeText() == ""; !set || !t.straight() {
		return
	}
	in := t.in.Weld
	p.Corners, p.Flush = j.seams.Corners(j.with(t), p.LegMm, !in.SidesSet)
	lengthMm := func(c plan.Corner) float64 { return c.LengthMm }
	p.CornerMm = seq.Sum(p.Corners, lengthMm)
	if !barEnd && t.in.Place.Edge() {
		t.edgeCorners(p)
	}
	sum := seq.Sum(p.Corners, lengthMm)
	asked := in.Length.Mm * float64(in.Sides)
	if len(p.Flush) > 0 && asked > sum+p.LegMm {
		t.problem(plan.FilletNoCorner, plan.Of(plan.Mm, asked), plan.Of(plan.Mm, t.w.Rounded(sum, 0)), plan.Named(strings.Join(p.Flush, ", ")), plan.Named(t.a.title()))
	}
	t.out.How += t.cornersText(p)
}

// allRound has the end of a round bar welded all round, where it is told no length: its corners are found along chords,
// and so many of the way round are all of it.
func (t *joint) allRound(p *plan.WeldPlan) {
	if mm := t.roundEndMm(); mm > 0 && !t.in.Weld.Length.Set() && len(p.Flush) == 0 && p.CornerMm > allRoundShare*math.Pi*mm {
		p.DiameterMm, p.Corners = mm, nil
	}
}

// standsApartMm is how far apart parts stand that no seam was meant to bridge. Common practice, no source.
const standsApartMm = 1.0

// noLength refuses a weld that has no corner: its parts stand apart, or nothing says where, or nothing gives it a length.
func (j *making) noLength(t *joint) {
	a, b := plan.Named(t.a.title()), plan.Named(t.b.title())
	switch mm, tied := j.seams.GapMm(j.with(t)); {
	case !tied:
		t.refuse(t.in.Pos, plan.WeldUnplaced, a, b, words.InPlaceOf(t.in.Meet))
	case mm > standsApartMm:
		t.refuse(t.in.Pos, plan.WeldApart, a, b, plan.Of(plan.Mm, t.w.Rounded(mm, 1)))
	default:
		t.refuse(t.in.Pos, plan.WeldNoLength)
	}
}

// fill reckons the weld metal and its runs, with that of the sides that are flush over a round corner.
func (t *joint) fill(p *plan.WeldPlan) error {
	process, density, long := weldProcesses[p.Process], densityOf(t.a.r), p.LengthMm
	if t.eachSide() {
		long *= float64(p.Sides)
	}
	filler, err := weld.FillerFor(p.AreaMm2, long, density, process)
	if err != nil {
		return err
	}
	if mm2, mm := t.flares(p); mm > 0 {
		flush, err := weld.FillerFor(mm2, mm, density, process)
		if err != nil {
			return err
		}
		filler.DepositedKg, filler.BuyMaxKg = filler.DepositedKg+flush.DepositedKg, filler.BuyMaxKg+flush.BuyMaxKg
		p.FlareMm2, p.FlareMm, p.FlareRuns = words.Round(mm2, 1), mm, flush.Runs
	}
	p.DepositedKg, p.BuyKg, p.Runs = words.Round(filler.DepositedKg, 3), words.Round(filler.BuyMaxKg, 3), filler.Runs
	return nil
}

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
		reason += "; the gap takes from the leg, and is added (AWS D1.1, fit-up of fillet welds)"
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
	p.Symbol, p.OnEdge = weld.Fillet.Symbol(), t.b.r.Part.Formed() != nil && !t.b.r.Part.Turned()
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

// Shells that are butted stand in steps of buttStepShare of the thinner, buttStepMm at the most: ISO 5817 no. 5072,
// level C (from memory).
const buttStepShare, buttStepMm = 0.5, 3.0

// buttSteps finds two ends of rolled sheet or tube that are butted and differ in diameter.
func (t *joint) buttSteps(p *plan.WeldPlan) {
	for _, f := range []feature{t.a, t.b} {
		kind := f.r.Part.Kind
		if f.radial != nil || f.roundMm() == 0 || f.step != nil && f.step.Inside || kind != parts.Tube && kind != parts.Cone && kind != parts.TransitionPiece {
			return
		}
	}
	step, most := math.Abs(t.a.roundMm()-t.b.roundMm())/2, min(buttStepShare*p.ThinnerMm, buttStepMm)
	if geom.Over(step, most) {
		t.problem(plan.ButtSteps, plan.Of(plan.Mm, step), plan.Of(plan.Mm, most))
	}
}

// standGapMm is the gap of two parts that stand already, as other joints have set them; ok is false where this one sets it.
func (j *making) standGapMm(t *joint) (mm float64, ok bool) {
	if _, tied := j.side(t, j.before); !tied || t.axis || t.in.Place != nil || t.corner() || t.stand() != nil || t.copeText() != "" || j.openingOf(t) != nil {
		return 0, false
	}
	mm, ok = j.seams.GapMm(j.with(t))
	return words.Round(mm, 1), ok
}

func (j *making) butt(t *joint, p *plan.WeldPlan) error {
	in := t.in.Weld
	if t.enters() {
		return t.pressedGroove(p)
	}
	t.buttSteps(p)
	c, on := weldChamfer(t)
	prep, err := t.prep(p.ThinnerMm)
	if err != nil {
		return err
	}
	if e := t.branchEnd(); e != nil {
		prep.GapMm.Use, p.Branch = e.Gap.Mm, e.Joint()
		prep.Source += "; gap as the branch is drawn"
	}
	stand, stands := j.standGapMm(t)
	usual := prep.GapMm.Use
	prep.GapMm.Use = max(usual, stand) // closed, it takes no less metal
	area, err := prep.GrooveArea(p.ThinnerMm, weld.CapMm(p.ThinnerMm))
	if err != nil {
		return err
	}
	if prep.GapMm.Use = usual; stands {
		prep.GapMm.Use = stand
		prep.Source += "; gap as the two stand"
	}
	p.Symbol, p.AreaMm2 = prep.Shape.Symbol(), words.Round(area, 1)
	p.BevelDeg, p.GapMm, p.RootFaceMm = prep.AngleDeg.Use, prep.GapMm.Use, prep.RootFaceMm.Use
	p.OneEdge = prep.Shape == weld.SingleBevel || prep.Shape == weld.DoubleBevel
	text := p.Symbol
	text += words.When(p.BevelDeg != 0, ", "+words.Trim(p.BevelDeg, 0)+"°, root face "+t.w.Read(p.RootFaceMm))
	t.figure("preparation", text+", gap "+t.w.Read(p.GapMm), prep.Source)
	t.opened(p)
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
		t.figure("chamfer drawn", t.w.Size(c.Size.Mm)+" × "+words.Angle(c.Angle.Deg)+" on "+words.Spaced(c.Edge.Value)+" of "+on, "part")
	} else if p.BevelDeg != 0 && !t.corner() { // bars are bevelled as they are fitted
		t.problem(plan.NoWeldChamfer, plan.Named(t.a.title()), plan.Named(t.b.title()))
	}
	return nil
}

// eachSide tells whether a weld is laid on two sides in full, each with its own section.
func (t *joint) eachSide() bool {
	p := t.out.Weld
	return p.Sides > 1 && (p.Type == "fillet" || p.DepthMm > 0) && !t.derived()
}

// ring plans tacks, runs and squaring up of a weld round a circle.
func (t *joint) ring(p *plan.WeldPlan) error {
	var first float64
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

func (t *joint) weldFigures(p *plan.WeldPlan) {
	t.figure("symbol", strings.TrimSpace(p.Symbol+" "+p.Designation), "ISO 2553")
	round := words.When(p.DiameterMm != 0 && len(p.TacksDeg) > 0, ", all round "+t.w.Dia(p.DiameterMm))
	if len(p.Corners) > 1 && round != "" {
		round = ", on both faces"
	}
	round += words.When(t.eachSide(), ", on each side")
	t.figure("length", t.w.Read(p.LengthMm)+round, "")
	if p.FlareMm != 0 {
		t.figure("flush sides", t.w.Read(p.FlareMm)+" of "+t.w.Area(p.FlareMm2)+", in the weld metal", "by geometry")
	}
	t.figure("weld metal", t.w.Area(p.AreaMm2)+", "+t.w.RoundMass(p.DepositedKg, 3)+"; buy "+t.w.RoundMass(p.BuyKg, 3), p.Process)
	t.shrinks(p)
	t.figure("runs", strconv.Itoa(p.Runs)+", about", "common practice, no source")
	if len(p.TacksDeg) > 0 {
		t.figure("tacks", strconv.Itoa(len(p.TacksDeg))+" × "+t.w.Read(p.TackLengthMm)+" in the order "+words.Degrees(p.TacksDeg), "common practice, no source")
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
	across += words.When(s.AcrossMaxMm > s.AcrossMinMm, " to "+t.w.Read(s.AcrossMaxMm))
	t.figure("draws in, each weld", across+" across, "+t.w.Read(s.AlongMm)+" along", s.Source)
}

func (j *making) weldSteps(t *joint, p *plan.WeldPlan) {
	if len(p.TacksDeg) > 0 {
		p.ClockOf = t.weldClock().title()
	}
	t.caution("The welder's qualification, the local code and the employer's welding procedure come before this sheet.",
		"Fumes, arc and fire: extraction, screens, no paint, zinc or oil within "+t.w.Near(50)+" of the joint.", j.bearingsOpen(t))
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
		s := t.step("Tack", "Tack "+strconv.Itoa(len(p.TacksDeg))+" × "+j.w.Read(p.TackLengthMm)+" long at "+words.Degrees(p.TacksDeg)+
			", in this order (clock of "+t.weldClock().title()+", seen from its front).")
		square := "square at two places 90° apart"
		if e := t.branchEnd(); e != nil && e.Angle.Deg != 90 {
			square = words.FineAngle(e.Angle.Deg) + " to " + t.b.title() + " where it leans, and square across that"
		}
		square += words.When(len(t.out.InLine) > 0, ", and what must line up")
		s.Hold = "Check " + square + "; knock straight now."
	} else if t.helixMm() != 0 {
		t.tackHelix()
	} else {
		s := t.step("Tack", t.tackSeams())
		_, within := t.lean()
		by := t.leansBy()
		switch {
		case p.Lap:
			s.Hold = "Check that it lies flat and where it is set; knock it there now."
		case by != "":
			s.Hold = "Check that it leans by " + by + " as it is cut, and stands square across that; knock straight now."
		default:
			s.Hold = words.Join(", ", "Check square on both sides", within) + "; knock straight now."
		}
	}
	t.step("Weld", t.laid(p)...)
	j.inspectWeld(t, p)
	j.flangesTrue(t)
	j.squareUp(t, p)
	j.seatsFlat(t)
	if len(p.Finish) > 0 {
		held, title := "", "Measure what was finished"
		if t.meanwhile(j.job) != "" {
			held, title = "Leave in what holds it until all is cold, then take it out.", "Measure what was held true"
		}
		s := t.step(title, held)
		s.Hold = "Still inside the limits: " + strings.Join(p.Finish, "; ") + "; if not, " + j.outOfSize(t)
	}
	j.finishLater(t)
	j.boresCold(t)
	j.drawnBores(t)
}

// frameSteps are those of a corner of a frame: each is tacked, and when the last is, the
// frame is checked and welded.
func (j *making) frameSteps(t *joint, p *plan.WeldPlan, r *ring) {
	t.out.Frame = r.last.in.Name.Value
	lay, over, before := "Lay the bars on a flat plate, or on trestles levelled to each other, fronts up"+r.packed(t.w)+"; shim until none rocks.", "turn it over", "it leaves the plate"
	if j.builtIn(r) {
		lay, over, before = "The bars that are built in already stay where they stand: clamp the others to them, fronts level by a straight edge from bar to bar.", "those of the other side", "the clamps come off"
	}
	t.step("Set up", lay,
		"Clean bright "+t.w.Near(25)+" each side of the joint.", j.takeOff(t, r, p), t.grindEdges(p), "Set: "+ofPlace+".", t.gapText(p), t.preheat())
	_, p.TackLengthMm = t.tackRow(p.LengthMm / 4)
	s := t.step("Tack", "Tack both ends of the "+r.word("cut", "seam")+" on the front, "+t.w.Read(p.TackLengthMm)+" long. No weld yet: all corners of the frame are tacked first.")
	s.Hold = "Square in the corner; no step from front to front."
	if t != r.last {
		return
	}
	draws, known := r.drawnIn(p.Symbol), r.drawsMm(p.Symbol).most > 0
	checked := "Lay a straight edge across from bar to bar, both ways: it touches everywhere."
	if d := r.frame.DiagonalsMm; d[0] != 0 {
		tol, set := diagonalsMm(math.Max(d[0], d[1])), "by the drawing"
		welded := t.bothOf(d)
		sides, _ := r.sidesMm()
		if known { // until it is welded
			sides = [2]float64{sides[0] + draws[0].mean(), sides[1] + draws[1].mean()}
			d[0], d[1], set = math.Hypot(sides[0], sides[1]), math.Hypot(sides[0], sides[1]), "until the welds draw it in"
		}
		both := t.bothOf(d)
		t.figure("diagonals", both, r.word("over the outer corners", "across the opening")+", by geometry")
		t.figure("diagonals equal within", t.w.Read(tol), "common practice, no source")
		s = t.step("Check the frame", "Measure both diagonals "+r.word("over the outer corners", "across the opening, from corner to corner")+", "+both+" "+set+"."+
			words.When(known && r.word("outer", "inner") == "outer", " The cuts are open there: two straight edges along the outsides show each corner."),
			"If one is longer, clamp across it until both agree; tack again.", checked)
		t.out.Checks = append(t.out.Checks, plan.Check{
			What: "diagonals alike", Wanted: welded, Limits: "0 to " + t.w.Read(tol), MaxMm: tol, Gauge: "tape", Source: lookup.NoSource, Boxes: j.diagonals(r),
		})
		s.Hold = "Diagonals alike"
		if _, rectangle := r.sidesMm(); rectangle { // its outside to the same limit
			s.Hold += ", and the " + r.word("outside", "opening") + " " + t.sizesOf(sides) + ","
		}
		s.Hold += " within " + t.w.Read(tol) + "."
		if known {
			t.figure("sides set larger by", t.sizesOf([2]float64{draws[0].mean(), draws[1].mean()}), "mean of what the welds draw in, by geometry")
		}
	} else {
		s = t.step("Check the frame", checked)
		s.Hold = "Every corner as drawn."
	}
	t.step("Weld", runs(p.Runs)+" of "+p.Process+", "+strings.TrimSpace(p.Symbol+" "+p.Designation)+", opposite corners in turn: "+r.inTurn()+".",
		t.seamOrder(over)+" Let it cool to hand-warm in between. Measure again before "+before+".")
	j.inspectWeld(t, p)
	filled := &t.out.Checks[len(t.out.Checks)-1]
	filled.Wanted, filled.Joins = strings.TrimSpace(p.Designation+" each corner, "+t.seamSides()), false
	s = &t.out.Steps[len(t.out.Steps)-1]
	s.Do = slices.Concat(s.Do, j.dressed(r), j.tried(t, r))
	if text := j.sleeved(t, r); text != "" {
		s.Do = append(s.Do, text)
	}
	j.welded(t, r, p)
}

// tackHelix tacks a flight at every quarter turn, common practice, no source.
func (t *joint) tackHelix() {
	f, _ := t.flightOf()
	in := f.r.Part.Flight
	_, turns := f.r.HelixMm()
	n := int(math.Ceil(4*turns-1e-6)) + 1
	on, centres := t.flightOn()
	_, t.out.Weld.TackLengthMm = t.tackRow(t.helixMm() / (4 * turns))
	sides := words.When(t.out.Weld.Sides > 1, ", on both sides")
	s := t.step("Tack", "Mark the start and, every "+t.w.Size(in.Pitch.Mm)+" along "+on+", the next turn on one line.",
		"Tack "+strconv.Itoa(n)+" × "+t.w.Read(t.out.Weld.TackLengthMm)+" long, at both ends and every quarter turn, "+t.w.Read(t.helixMm()/(4*turns))+" apart along the seam"+sides+".")
	s.Hold = "Pitch at every turn, and the outside true " + centres + "; knock straight now."
	off := weld.PlaceOff(in.Pitch.Mm)
	t.out.Checks = append(t.out.Checks, plan.Check{What: "pitch of the flight", Wanted: t.w.Size(in.Pitch.Mm), Limits: t.w.Limits(in.Pitch.Mm-off, in.Pitch.Mm+off),
		MinMm: in.Pitch.Mm - off, MaxMm: in.Pitch.Mm + off, Gauge: "rule along " + on, Source: weld.PlaceSource})
}

// lean is how far a plate that stands on a face with an edge of it may lean, and that in
// words; nothing of another weld.
func (t *joint) lean() (mm float64, text string) {
	p := t.in.Place
	if !t.a.r.Part.Flat() || p == nil || !p.Edge() || p.OnRim() {
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

// The angles between two faces in which a fillet is one: EN 1993-1-8, clause 4.3.2.1.
const leastCornerDeg, mostCornerDeg = 60.0, 120.0

// slanting is what the open and the close corner of a bar ask that leans on its mitred end: a leg for the throat, and
// what a seam there is worth.
func (t *joint) slanting(p *plan.WeldPlan) (do []string) {
	bar, _, ok := t.onBarEnd()
	if !ok || t.leansBy() == "" || p.ThroatMm == 0 {
		return nil
	}
	end := bar.r.Part.BarEnd(bar.ref.Feature)
	open := string(cmp.Or(end.Long, parts.TopSide))
	corner := func(what, side string, deg float64, worth string) {
		leg := words.Round(p.ThroatMm/math.Cos(deg*math.Pi/360), 1)
		text := what + " corner, on its " + side + ", " + words.FineAngle(deg) + ": legs of " + t.w.Read(max(leg, p.LegMm)) + " for the throat of " + t.w.Read(p.ThroatMm)
		text += words.When(deg < leastCornerDeg || deg > mostCornerDeg, "; "+worth+" (EN 1993-1-8, 4.3.2.1)")
		do = append(do, text+".")
	}
	corner("Open", open, 90+end.Mitre.Deg, "what the seam there holds is found by test alone")
	corner("Close", opposite[open], 90-end.Mitre.Deg, "the seam there counts as a butt weld that is not through")
	return do
}

func (t *joint) laid(p *plan.WeldPlan) []string {
	long := words.When(t.in.Weld.Length.Set() && p.DiameterMm == 0, ", "+t.w.Read(p.LengthMm)+" long"+words.When(t.eachSide(), " on each side"))
	do := []string{runs(p.Runs) + " of " + p.Process + ", " + strings.TrimSpace(p.Symbol+" "+p.Designation) + long + "."}
	if p.DiameterMm != 0 && len(p.Corners) > 0 {
		alone := map[bool]string{true: " alone"}[len(p.Corners) == 1]
		do = append(do, "On the "+t.sides(p.Corners, p.Corners[0].Along)+alone+".")
	}
	if drawn, on := weldChamfers(t); len(drawn) == 1 && p.Bevelled != "" {
		_, end := drawn[0].On()
		do = append(do, "Weld from the "+string(end)+" of "+on+", where its groove is.")
	}
	do = append(do, t.slanting(p)...)
	if p.Besides != "" {
		do = append(do, words.Capital(p.Besides)+".")
	}
	do = append(do, t.flanks(p))
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
	} else if t.helixMm() != 0 {
		on, _ := t.flightOn()
		do = append(do, "A quarter turn at a time, from the middle turn outward, each time the quarter opposite on "+on+
			words.When(p.Sides > 1, "; the two sides of the flight in turn")+", so that it stays straight.")
	} else {
		do = append(do, t.seam().weld)
	}
	return do
}

// inspectWeld is what the finished weld is measured by: a gauge reads the throat
// of a fillet, but of a groove only whether it is full.
func (j *making) inspectWeld(t *joint, p *plan.WeldPlan) {
	cool := "Let it cool in still air to hand-warm before unclamping."
	if metals, ok := weldMetals(t); ok && metals.PreheatC.Max != 0 {
		cool = "Cover it at once with dry blanket or sand and let it cool slowly to hand-warm, then unclamp."
	}
	s := t.step("Cool and inspect", cool, "Look for cracks, undercut and size.")
	c := plan.Check{Wanted: p.Designation, Joins: true}
	if p.LegMm != 0 {
		where := "at four places round"
		if len(p.TacksDeg) == 0 {
			where = t.seam().gauge
		} else if t.eachSide() || p.Sides > 1 {
			where += ", on each side"
		}
		s.Hold = "Weld gauge on the throat " + where + "."
		c.What, c.Limits, c.MinMm, c.Gauge, c.Source = "throat", t.w.Read(p.ThroatMm)+" or more", p.ThroatMm, "weld gauge", lookup.Standard("EN 1993-1-8 clause 4.5.3.3")
	} else {
		where, full := "Straight edge across the weld", "nowhere under the edge of the groove"
		c.Limits, c.Gauge = "level or proud all along", "straight edge, eye"
		if t.branchEnd() != nil { // no straight edge lies on a saddle
			where, full, c.Limits, c.Gauge = "Look along the weld all round, with a light", "no edge of the gap to be seen", "no edge of the gap to be seen", "eye, weld gauge"
		} else if plate, _ := t.boredPlate(); plate != nil {
			where = "Straight edge on " + t.grooveSide(plate) + plate.title() + ", along a radius over the weld"
		}
		s.Hold = where + ": full, " + full + ", no undercut."
		c.What, c.Source = "groove filled", lookup.NoSource
	}
	t.out.Checks = append(append(t.out.Checks, j.standChecks(t)...), c)
	if mm, within := t.lean(); mm > 0 && bolted(j.all, t.a.Instance()) {
		t.out.Checks = append(t.out.Checks, plan.Check{What: t.a.title() + " square to " + t.b.title(), Limits: within, MaxMm: mm, Gauge: "square, feeler", Source: weld.PlaceSource})
	}
	if on := groundSides[t.in.Weld.Ground]; on != "" {
		s.Do = append(s.Do, "Then grind the weld flush "+on+" with the metal beside it, not below it.")
		t.out.Checks = append(t.out.Checks, plan.Check{
			What: "ground flush " + on, Limits: "no step that a finger finds, nothing below the metal beside it", Gauge: "eye, finger", Source: lookup.NoSource,
		})
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

// weldClock is the part whose clock a weld goes by: of what stands on a side of a bar its own, of a branch its own, for it is
// the round that the weld runs round.
func (t *joint) weldClock() feature {
	if t.branchEnd() != nil {
		return t.a
	}
	if _, on, ok := t.onBarEnd(); ok { // a bar's front is along it
		return on
	}
	if t.b.r.Part.Bar != nil { // seen from its front, it stands on another side
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

// bearingsOpen keeps spatter and grit of a weld out of greased bearings that nothing covers yet.
func (j *making) bearingsOpen(t *joint) string {
	open := seq.Keep(ofKind(j.before, parts.BearingKind), func(o *joint) bool {
		over := func(c *joint) bool { return c.is(parts.BoltKind) && c.axis && c.covers(o) }
		return o.out.Bearing != nil && !o.out.Bearing.Sealed && !slices.ContainsFunc(j.before, over) && slices.ContainsFunc(j.later(t), over)
	})
	if len(open) == 0 {
		return ""
	}
	var in []string
	for _, o := range open {
		in = seq.Add(in, o.b.title())
	}
	return "Greased bearings lie open in " + strings.Join(in, " and ") + ": wrap it up tight, and weld and grind away from it, for grit stays in the grease."
}

func runs(n int) string { return words.Counted(n, "run") }

// straight tells whether the first part stands on the other along lines, not round either.
func (t *joint) straight() bool {
	return t.overhangs() || t.a.roundMm() == 0 && (t.b.roundMm() == 0 || t.onFlat())
}
