package joint

import (
	"cmp"
	"errors"
	"math"
	"slices"
	"strconv"
	"strings"

	"centrepop/layout/fits"
	"centrepop/layout/lookup"
	"centrepop/layout/material"
	"centrepop/layout/part"
	"centrepop/layout/plan"
	"centrepop/layout/press"
	"centrepop/layout/words"
	"centrepop/parts"
	"centrepop/parts/geom"
	"centrepop/parts/seq"
)

// spanRange is a range with so many decimals.
func spanRange(s plan.Range, decimals int) plan.Range {
	return plan.Range{Min: words.Round(s.Min, decimals), Max: words.Round(s.Max, decimals)}
}

// interference is the least and the greatest interference on diameter, mm.
func (t *joint) interference() (lo, hi float64, source string, ok bool) {
	a, b := t.a.step.Size, t.b.step.Size
	if math.Abs(a.NominalMm-b.NominalMm) > nearMm {
		t.refuse(t.in.Pos, plan.PressSizes, plan.Named(t.a.text()), plan.Of(plan.Diameter, a.NominalMm), plan.Named(t.b.text()), plan.Of(plan.Diameter, b.NominalMm))
		return 0, 0, "", false
	}
	bought := func(f feature) bool { return f.r.Part.Kind == parts.Tube && !f.step.Size.Fitted() } // no class is true of it
	if fit := t.in.Press.Fit; fit.Value != "" && !bought(t.a) && !bought(t.b) {
		f, err := fits.Between(b.NominalMm, fit.Value)
		if err != nil {
			t.refuse(fit.Pos, plan.FitUnusable, plan.Named(fit.Value), plan.Of(plan.Diameter, b.NominalMm), plan.Named(t.w.Refused(err)))
			return 0, 0, "", false
		}
		return geom.Clean(-f.ClearanceMaxUm / 1000), geom.Clean(-f.ClearanceMinUm / 1000), "ISO 286-1 " + fit.Value, true
	}
	switch {
	case b.Press.Set():
		return 0.01, 0.03, "bore turned to the measured counterpart (common practice, no source)", true
	case a.Fitted() && b.Fitted():
		aMin, aMax := t.w.Printed(a.MinMm, a.MaxMm)
		bMin, bMax := t.w.Printed(b.MinMm, b.MaxMm)
		return geom.Clean(aMin - bMax), geom.Clean(aMax - bMin), "limits on the drawings", true
	}
	bad := t.a
	if a.Fitted() || bought(t.b) {
		bad = t.b
	}
	cure := "fit: H7/p6 in the joint, or limits on the part"
	switch {
	case bought(bad) && bad.step.Inside:
		cure = "draw it as turned from tube stock, with a bored step that has limits"
	case bought(bad):
		cure = "fit: {light-press: " + bad.ref.Part + "." + bad.ref.Feature + "} on the bore, which is turned to the tube as measured"
	}
	t.refuse(bad.ref.Pos, plan.NoLimits, plan.Named(bad.text()), plan.Named(cure))
	return 0, 0, "", false
}

// member is one side of a press fit, refused where its metal's strength is not known.
func (t *joint) member(f feature, sharedMm float64) (press.Member, bool) {
	m, err := f.member(sharedMm)
	if e := (*material.SectionError)(nil); errors.As(err, &e) && e.Condition == "" && e.UpToMm != 0 && e.SectionMm > e.UpToMm {
		t.refuse(f.ref.Pos, plan.NoSectionStrength, plan.Named(f.title()), plan.Of(plan.Mm, e.SectionMm), plan.Named(e.Material), plan.Of(plan.Mm, e.UpToMm))
	} else if err != nil {
		t.refuse(f.ref.Pos, plan.NoStrength, plan.Named(f.title()), plan.Named(t.w.Refused(err)))
	}
	return m, err == nil
}

// member is a part as one side of a fit of sharedMm.
func (f feature) member(sharedMm float64) (press.Member, error) {
	m := press.Member{OutsideMm: sharedMm}
	if opposite := stepsAt(f.r, !f.step.Inside, f.step.Span()); !f.step.Inside {
		m.InsideMm = seq.Max(0, opposite, diameterMm)
	} else if m.InsideMm, m.OutsideMm = sharedMm, seq.Least(opposite, diameterMm); f.r.Part.Flat() && len(opposite) == 0 {
		box := f.r.OutlinePath().Bounds()
		m.OutsideMm = math.Min(box.W(), box.H())
	}
	var err error
	m.Material, err = press.Lookup(f.r.Part.Material.Value, strengthSectionMm(f.r.Part, m))
	return m, err
}

// rzPerRa turns a mean roughness into a peak-to-valley height. Between 4 and 7
// for turned and bored surfaces (common practice, no source).
const rzPerRa = 5

// pressKind is an interference fit.
type pressKind struct{ plain }

func (pressKind) ends(_ *shop, t *joint) {
	t.need(t.a, round(t.a, false), "a round outside, such as a step or the outline of a round plate")
	t.need(t.b, round(t.b, true), "a bore on the axis of the part"+t.b.listed())
}

// listed says how a part stands in the job that is pressed into a hole, where the feature is one: no joint does that.
func (f feature) listed() string {
	if f.group == nil || f.slotted() {
		return ""
	}
	return "; no joint presses into one of its holes: list the part under loose:, with how: pressed into it, fits of both and lies: for its place"
}

func (pressKind) title(t *joint) string {
	switch t.in.Press.Method {
	case "heat":
		return "Shrink " + t.b.title() + " on " + t.a.title()
	case "cool":
		return "Shrink " + t.a.title() + ", cooled, into " + t.b.title()
	}
	return words.Either(t.inward, "Press "+t.a.title()+" into "+t.b.title(), "Press "+t.b.title()+" on "+t.a.title())
}

func (pressKind) buy(*shop, *joint, *buying) {}

func (pressKind) work(j *making, t *joint) {
	in := t.in.Press
	aKg, _ := j.sideKg(t.a)
	bKg, _ := j.sideKg(t.b)
	t.inward = in.Method == "press" && aKg < bKg
	if t.coned() && !t.oneTaper() {
		t.refuse(t.in.Pos, plan.SlideTapers, plan.Named(t.a.text()), plan.Named(t.b.text()))
		return
	}
	lo, hi, source, ok := t.interference()
	if !ok {
		return
	}
	if hi <= 0 {
		t.refuse(t.in.Pos, plan.ClearanceFit, plan.Of(plan.Mm, -hi))
		return
	}
	input, err := j.pressInput(t)
	if t.refused() {
		return
	}
	thermal := press.Joint{Hub: input.Hub, Shaft: input.Shaft, InterferenceMm: hi, ClearanceMm: in.Clearance.Mm, RoomC: roomC, ShaftC: roomC}
	r, errFit := press.Range(input, lo, hi)
	heat, errHeat := press.Heat(thermal)
	cold, coldCautions, errCold := press.Cool(thermal)
	lead, errLead := press.LeadInFor(t.b.step.Size.NominalMm, hi, input.LengthMm)
	if err = cmp.Or(err, errFit, errHeat, errCold, errLead); err != nil {
		t.refuse(t.in.Pos, plan.PressUnworkable, plan.Named(t.w.Refused(err)))
		return
	}
	p := &plan.PressPlan{
		Inward: t.inward, Method: in.Method, InterferenceMm: plan.Range{Min: lo, Max: hi}, LengthMm: geom.Clean(input.LengthMm),
		PressureMPa: plan.Range{Min: words.Round(r.Loosest.PressureMPa, 2), Max: words.Round(r.Tightest.PressureMPa, 2)},
		HubMPa:      plan.Range{Min: words.Round(r.Loosest.HubBore.VonMisesMPa, 1), Max: words.Round(r.Tightest.HubBore.VonMisesMPa, 1)},
		ShaftMPa:    plan.Range{Min: words.Round(worst(r.Loosest), 1), Max: words.Round(worst(r.Tightest), 1)},
		HubSafety:   words.Round(r.Tightest.HubSafety, 2), ShaftSafety: words.Round(r.Tightest.ShaftSafety, 2),
		ForceN: spanRange(r.ForceN(), 0), TorqueNm: spanRange(r.TorqueNm(), 1),
		Friction: plan.Range{Min: input.Friction.Min, Max: input.Friction.Max}, HeatHubC: words.Round(heat.HubC, 0), CoolShaftC: words.Round(cold, 0), ClearanceMm: words.Round(heat.ClearanceMm, 3),
		ShopPressN: j.job.Shop.PressN.Value,
	}
	t.out.Press = p
	if drawn, on := leadIn(t); drawn != nil {
		p.LeadInMm, p.LeadInDeg, p.LeadInOn = drawn.Size.Mm, drawn.Angle.Deg, on
	} else {
		t.problem(plan.NoLeadIn, plan.Named(t.a.text()), plan.Named(t.b.text()), plan.Of(plan.Read, words.Round(lead, 1)), plan.Of(plan.Degree, press.LeadInDeg))
	}
	if lo < 0 {
		t.problem(plan.MayBeLoose, plan.Of(plan.Mm, -lo))
	}
	t.seatsOn(j.relative(t))
	j.reached(t, p)
	t.pressFigures(p, source, input)
	t.thermalFigures(p, thermal)
	j.seatFigures(t, lo, r, input)
	switch shaft := input.Shaft; {
	case p.HubSafety >= 1 && p.ShaftSafety >= 1:
	case p.HubSafety >= 1 && shaft.InsideMm != 0 && !shaft.Material.Brittle: // a bush gives, and nothing breaks
		t.problem(plan.BushYields, plan.Of(plan.Number, p.ShaftSafety), plan.Named(t.a.title()), plan.Of(plan.MPa, p.PressureMPa.Max))
	default:
		t.problem(plan.PressYields, plan.Of(plan.Number, p.HubSafety), plan.Of(plan.Number, p.ShaftSafety), plan.Of(plan.MPa, p.PressureMPa.Max))
	}
	j.pressSteps(t, p, heat, coldCautions)
	t.out.Checks = append(t.out.Checks, j.seated(t))
}

// pressInput is what a press is computed from. The error is of the friction, and a fault of the joint what keeps
// its parts or their length from being known.
func (j *making) pressInput(t *joint) (press.Input, error) {
	d := t.b.step.Size.NominalMm
	hub, okHub := t.member(t.b, d)
	shaft, okShaft := t.member(t.a, d)
	if !okHub || !okShaft {
		return press.Input{}, nil
	}
	joining := press.PressedOiled
	switch {
	case t.in.Press.Method != "press":
		joining = press.Shrunk
	case welded(t, j.all): // no oil where a weld comes
		joining = press.PressedDry
	}
	mu, err := press.FrictionFor(hub.Material, shaft.Material, joining)
	if said := t.in.Press.Friction; err == nil && said.Pos.Line != 0 {
		mu = press.Friction{Min: said.Value, Max: said.Value, Source: "as the job says"}
	}
	return press.Input{
		Hub: hub, Shaft: shaft, LengthMm: j.engagedMm(t), Friction: mu,
		HubRzUm: rzPerRa * part.RaUm(t.b.step.Finish), ShaftRzUm: rzPerRa * part.RaUm(t.a.step.Finish),
	}, err
}

// seatFigures say what the roughness of its seats takes off a press of at least loMm, and what to mind of them.
func (j *making) seatFigures(t *joint, loMm float64, r press.Limits, input press.Input) {
	if r.Loosest.LossMm > 0 || r.Tightest.LossMm > 0 {
		t.figure("flattened roughness takes", t.w.Fine(r.Tightest.LossMm*1000, r.Loosest.LossMm*1000), "DIN 7190-1:2017 and DIN 7190:2001; Rz taken as 5 Ra, common practice")
	}
	if loMm > 0 && r.Loosest.EffectiveMm == 0 {
		j.pressCautions(t, r.Loosest.Cautions) // roughness may take it all
	}
	j.pressCautions(t, r.Tightest.Cautions)
	t.boughtTube()
	if input.HubRzUm == 0 && input.ShaftRzUm == 0 {
		t.caution("No finish is drawn on the two seats: what roughness takes off the interference is left out.")
	}
}

// engagedMm is the length over which a press touches, or what the job says of it; refused where there is less.
func (j *shop) engagedMm(t *joint) float64 {
	mm, below, said := j.contactMm(t), t.in.Meet.Below, t.in.Press.Length
	switch {
	case mm <= 0 && below.Mm > 0:
		t.refuse(below.Pos, plan.PressTooDeep, plan.Named(t.a.text()), plan.Named(t.b.text()), plan.Of(plan.Mm, below.Mm))
	case mm <= 0:
		t.refuse(t.in.Pos, plan.PressNoContact, plan.Named(t.a.text()), plan.Named(t.b.text()))
	case geom.Over(said.Mm, mm):
		t.refuse(said.Pos, plan.PressLength, plan.Of(plan.Mm, mm))
	case said.Set():
		return said.Mm
	}
	return mm
}

// seatsOn looks at the shoulder that a press ends at, of the shaft or in the bore, where they lie on one another.
func (t *joint) seatsOn(at placement, ok bool) {
	for _, dir := range []float64{-1, 1} {
		if on := at.way(dir); ok && math.Abs(at.z0+at.s*end(t.a.step, dir)-end(t.b.step, on)) < nearMm {
			t.shouldered(t.a, dir, t.b, on)
			t.shouldered(t.b, on, t.a, dir)
		}
	}
}

func worst(r press.Result) float64 {
	return math.Max(r.ShaftOutside.VonMisesMPa, r.ShaftBore.VonMisesMPa)
}

func (t *joint) pressFigures(p *plan.PressPlan, source string, in press.Input) {
	t.figure("interference on diameter", t.w.Fine(p.InterferenceMm.Min*1000, p.InterferenceMm.Max*1000), source)
	t.figure("joint", t.w.Dia(t.b.step.Size.NominalMm)+" × "+t.w.Size(p.LengthMm)+" engaged, hub "+t.w.Dia(in.Hub.OutsideMm)+hollow(t.w, in.Shaft), "")
	t.figure("pressure", t.w.Stresses(p.PressureMPa.Min, p.PressureMPa.Max, 1), "Lamé; Shigley eq. 3-56, 3-57")
	t.figure("hub stress at the bore", t.w.Stresses(p.HubMPa.Min, p.HubMPa.Max, 0)+", safety "+words.Trim(p.HubSafety, 1), in.Hub.Material.Name+": "+in.Hub.Material.Source)
	t.figure("shaft stress", t.w.Stresses(p.ShaftMPa.Min, p.ShaftMPa.Max, 0)+", safety "+words.Trim(p.ShaftSafety, 1), in.Shaft.Material.Name+": "+in.Shaft.Material.Source)
	t.figure("friction assumed", words.Between(p.Friction.Min, p.Friction.Max, 2, ""), in.Friction.Source)
	t.figure("press force", t.w.Forces(p.ForceN.Min, p.ForceN.Max, 1), "at the end of travel")
	t.figure("torque held", t.w.Torques(p.TorqueNm.Min, p.TorqueNm.Max), "")
	if p.LeadInOn != "" {
		t.figure("lead-in on "+p.LeadInOn, t.w.Size(p.LeadInMm)+" at "+words.Angle(p.LeadInDeg), "the drawing")
	}
	if s := t.screw; s != nil {
		t.figure("draw screw", s.rod.Thread.Designation+", "+s.class+", proof load "+t.w.Force(s.proofN, 1)+"; plates "+t.w.Size(s.plateMm)+" thick",
			"for "+words.Trim(drawTimes, 0)+" times the greatest force (common practice, no source); plate as one that is free at its edge, from memory")
		t.nutFigure(s.pullRod)
	}
	if p.ShopPressN != 0 {
		t.figure("shop press", t.w.Force(p.ShopPressN, 0)+", used to "+words.Trim(100*p.ForceN.Max/p.ShopPressN, 0)+" %", "job file")
	}
}

func hollow(w words.Writer, m press.Member) string {
	return words.Either(m.InsideMm == 0, ", solid shaft", ", shaft bore "+w.Dia(m.InsideMm))
}

func (j *making) pressSteps(t *joint, p *plan.PressPlan, heat press.Assembly, coldCautions []press.Caution) {
	hub, shaft, weldFollows := t.b.title(), t.a.title(), welded(t, j.all)
	title, clean := "Oil and start square", "Clean both seats, oil them, "
	if weldFollows {
		title, clean = "Clean and start square", "Clean both seats to bright metal; no oil, for the weld comes here; "
	}
	j.measureFit(t, p)
	over := p.ShopPressN != 0 && p.ForceN.Max > p.ShopPressN
	switch {
	case p.Method == "heat" && p.TooHot(), p.Method == "cool" && p.TooCold():
		t.step("Stop", "It does not go together so: nothing is heated or cooled before the fit, or the way of joining, is changed.")
	case t.frame != "":
		j.drawSteps(t, p, title, clean)
	case p.Method == "press":
		if over {
			t.problem(plan.PressTooWeak, plan.Of(plan.Newton, p.ForceN.Max), plan.Of(plan.Newton, p.ShopPressN), plan.Of(plan.Celsius, p.HeatHubC))
		}
		set, on := j.startedBy(t)
		t.step(title, clean+set+" with the lead-in inside.", "Check square with a try square at two places 90° apart.", j.onSaddle(t))
		s := t.step("Press", on+" with even force, not faster than "+t.w.Near(press.MaxPressMmPerSec)+"/s, to: "+ofPlace+".",
			j.stopText(t), "Force at the end "+t.w.Forces(p.ForceN.Min, p.ForceN.Max, 1)+".", weighed(p))
		s.Caution = "Stop if the force jumps or exceeds " + t.w.Force(p.ForceN.Max, 1) + ": the parts are tilted or galling. Stand aside, guard the press."
		if !p.TooHot() {
			s.Caution += " Heated instead: both degreased and no oil, gloves, no flame."
		}
		t.rest(weldFollows)
	case p.Method == "heat":
		first, slip := "", "Slip it on in one move to: "+ofPlace+"."
		switch stops := j.stopText(t) != ""; { // what hangs hot on a shaft runs past a disc
		case stops && t.built:
			first = "Before anything is hot fasten two stops of one height to " + shaft + ", where the far face of " + hub + " comes."
			slip = "Slip it on in one move against both stops: " + ofPlace + "."
		case stops:
			p.LetDown = true
			first = "Carry TOP of " + hub + " over its rim: the " + string(t.meeting().Second) + " lies down now."
			slip = "Lay it " + string(t.meeting().Second) + " down on a flat plate, the stop disc in it; let " + shaft + " down onto the disc in one move: " + ofPlace + "."
		}
		s := t.step("Heat", first, "Degrease both. Heat "+hub+" evenly to "+t.w.Heat(p.HeatHubC)+"; check with a crayon or probe.", slip, "Hold until it grips.")
		s.Caution = "Hot metal: gloves, no flame near oil."
	case p.Method == "cool":
		s := t.step("Cool", "Degrease both. Cool "+shaft+" to "+t.w.Heat(p.CoolShaftC)+", wipe off frost, insert in one move to: "+ofPlace+".")
		s.Caution = "Cold burns and choking gas: gloves, face shield, open door."
	}
	j.pressCautions(t, map[string][]press.Caution{"heat": heat.Cautions, "cool": coldCautions}[p.Method])
}

// measureFit has the fit measured before it is made: the diameters of a round seat, and of a cone how far the hub stands off its
// place as it sits by hand.
func (j *making) measureFit(t *joint, p *plan.PressPlan) {
	hub, lowMm, highMm := t.b.title(), p.InterferenceMm.Min, p.InterferenceMm.Max
	interference := words.Either(t.b.step.Size.Press.Set(), "The largest of "+t.a.text()+" less the bore", "Interference") // bored to the largest, so that out of round it is less elsewhere
	do := []string{"Measure " + t.a.text() + " and the bore of " + hub + " at four places each, both at room temperature.",
		interference + " must be " + t.w.Fine(lowMm*1000, highMm*1000) + "."}
	ratio, _ := t.a.step.Cone()
	if in, _ := t.b.step.Cone(); ratio > 0 && in > 0 && math.Abs(1/ratio-1/in)*p.LengthMm < sameConeMm {
		do = []string{"Both at room temperature, clean and dry, put " + hub + " on " + t.a.text() +
			" by hand until it sits: marking blue shows it bearing all round. Measure at four places how far it stands off its place.",
			"It must be " + t.w.Limits(lowMm*ratio, highMm*ratio) + ": by that it goes on, on a cone of 1:" + words.Trim(ratio, 3) +
				", for an interference of " + t.w.Fine(lowMm*1000, highMm*1000) + " on diameter."}
	}
	t.step("Measure", do...).Hold = "Do not go on outside these limits."
}

// startedBy says how a press is set up by hand, and what is pressed on what, by or onto the sleeve where the shaft stands out.
func (j *making) startedBy(t *joint) (set, on string) {
	hub, shaft := t.b.title(), t.a.title()
	out, _ := j.standsOutMm(t)
	sleeve := out > 0 && !t.built
	if t.inward {
		under := words.Either(sleeve, "stands on the press sleeve, for "+shaft+" comes out "+t.w.Size(out)+" below it", "stays on the table")
		return "set " + shaft + " by hand on the mouth of the bore of " + hub + ", which " + under + ",", "Press " + shaft + " in"
	}
	return "set " + hub + " on the end of " + shaft + " by hand", "Press " + hub + " on" + words.When(sleeve, ", by the press sleeve round "+shaft+",")
}

// onSaddle says on what a tube stands under the ram whose other end is cut to a saddle.
func (j *shop) onSaddle(t *joint) string {
	for _, e := range t.a.r.Part.Ends {
		if e.Onto.Part != "" {
			return "Its saddle stands on " + j.model(e.Onto.Part).Out.Title + ", that in V-blocks, or it tilts."
		}
	}
	return ""
}

// gaugeShare is the part of its scale under which the gauge of a press is not read. Common
// practice, no source: at 2.5 % of the whole scale a reading there is a quarter off.
const gaugeShare = 0.1

// weighed says what shows a force that is small for the shop's press.
func weighed(p *plan.PressPlan) string {
	if p.ForceN.Max >= gaugeShare*p.ShopPressN {
		return ""
	}
	return "The gauge of the shop's press does not show so little: stand the work on a load cell or a scale."
}

// seated is how the place of what was pressed is measured: set back by a depth
// gauge, level by a straight edge, and against a shoulder by a feeler.
func (j *making) seated(t *joint) plan.Check {
	c := plan.Check{What: "seated", Wanted: t.out.How, Limits: "no gap at the shoulder, a " + t.w.Near(0.05) + " feeler does not enter", Gauge: "feeler", Source: lookup.NoSource}
	m := t.meeting()
	set := j.setting(t)
	below, low := math.Abs(set.outMm), " below"
	if set.outMm > 0 {
		low = " out"
	}
	switch {
	case !m.Level:
	case below > 0:
		off, err := fits.General(below, j.job.Tolerance.Value)
		if c.Source = lookup.Standard("ISO 2768-" + j.job.Tolerance.Value); err != nil {
			off, c.Source = 0.2, lookup.NoSource
		}
		c.MinMm, c.MaxMm = geom.Clean(below-off), geom.Clean(below+off)
		if lean := j.leansMm(t); set.outMm > 0 { // the stop meets the highest place
			c.MinMm = geom.Clean(c.MinMm - lean)
		} else {
			c.MaxMm = geom.Clean(c.MaxMm + lean)
		}
		c.Limits, c.Gauge = t.w.Limits(c.MinMm, c.MaxMm)+low+", at four places", "depth gauge"
	default:
		c.Limits, c.Gauge = "a "+t.w.Near(0.05)+" feeler does not enter under a straight edge", "straight edge, feeler"
	}
	return c
}

// leansMm is how much lower the one side of the faces of a level joint may lie than the other.
func (j *making) leansMm(t *joint) float64 {
	set := j.setting(t)
	return t.a.r.Square(parts.Face(set.end)) + t.b.r.Square(set.face)
}

// setting is how the first of a joint is set to the second, such as a pressed shaft in its hub: an end of it,
// and how far that stands out of a face of the other, below 0 under it. Far tells that the job names faces which
// are farther apart than the seat is long, so that no gauge reaches and nothing stops there.
type setting struct {
	end   string
	outMm float64
	face  parts.Face
	far   bool
}

// words say it of a shaft and a hub.
func (s setting) words(w words.Writer, shaft, hub string) string {
	how := " level with"
	switch {
	case s.outMm > 0:
		how = " " + w.Said(s.outMm) + " out of"
	case s.outMm < 0:
		how = " " + w.Said(-s.outMm) + " below"
	}
	return s.end + " of " + shaft + how + " the " + string(s.face) + " of " + hub
}

// leadIn is the chamfer that the joint starts on, on one of the two edges that meet
// first, and the part that has it; one that is drawn for it before any other, and nil
// where there is none. Cold, the bevel of a weld is none: the end that goes in is sharp.
func leadIn(t *joint) (drawn *parts.Chamfer, on string) {
	for _, f := range []feature{t.a, t.b} {
		for c := range seq.Refs(f.r.Part.Chamfers) {
			if of, _ := c.On(); of == f.ref.Feature && !c.Radius.Set() && (c.For != "weld" || t.in.Press.Method != "press") && (drawn == nil || c.For == "lead-in" && drawn.For != "lead-in") {
				drawn, on = c, f.title()
			}
		}
	}
	return drawn, on
}

// pieces says on the sheet of a part of several pieces which of them is bored to which end of the
// measured shaft, for each is bored to its own.
func (j *assembly) pieces(made []*joint) {
	ends := map[*plan.Ladder][]string{}
	for _, t := range ofKind(made, parts.PressKind) {
		if t.b.r.Part.Quantity < 2 {
			continue
		}
		for i := range t.b.r.Out.Ladders {
			if l := &t.b.r.Out.Ladders[i]; l.Feature == words.Spaced(t.b.step.Name) {
				ends[l] = append(ends[l], "piece "+strconv.Itoa(t.b.Instance().Copy)+" to the "+j.setting(t).end+" of "+t.a.title())
			}
		}
	}
	for l, each := range ends {
		slices.Sort(each)
		l.Note += " As measured: " + strings.Join(each, ", ") + "; stamp the numbers."
	}
}

// tools are what stands between the ram and the hub: a sleeve over a shaft
// that stands out, or a disc that stops the ram where the shaft lies under the
// hub's face. A hub that is heated needs the disc alone, which has
// no use where the shaft cannot be let down onto it.
func (pressKind) tools(j *assembly, t *joint, _ []*joint, list *tooling) {
	out, span := j.standsOutMm(t)
	hot := t.in.Press.Method != "press"
	if t.frame != "" {
		j.screwTools(t, list)
		return
	}
	switch d := t.b.step.Size.NominalMm; {
	case t.built, out < 0 && t.collared(): // against stops on the shaft, or its collar
	case out < 0:
		if tol, _, known := t.tubeLimits(); known { // the bore is turned to suit the least of them
			d = -j.w.Up(tol.PlusMinusMm-d, 0.5, 1.0/64)
		}
		list.add(t, tool{"Stop disc", " " + t.w.Dia(d-overMm) + " × " + t.w.Size(-out) + " thick, to lie on the end of " + t.a.r.Out.Title, j.disc(d-overMm, -out), nil})
	case out > 0 && !hot:
		passed := seq.Max(d, stepsAt(t.a.r, false, span), diameterMm)
		in := bounds{passed + overMm/2, passed + 3*overMm/2, passed + overMm}
		list.add(t, tool{"Press sleeve", " " + t.w.Dia(in.nominal) + " inside, " + t.w.Size(j.up(out+endMm)) + " long, ends square",
			j.sleeve(in, free(j.up(in.high+2*sleeveWallMm(d))), out+endMm), nil})
	case !hot:
		list.add(t, tool{"Flat plate", " wider than " + t.w.Dia(d), nil, nil})
	}
}
