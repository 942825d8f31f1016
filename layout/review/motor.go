package review

import (
	"cmp"
	"iter"
	"math"
	"slices"
	"strings"

	"centrepop/layout/measured"
	"centrepop/layout/words"
	"centrepop/parts"
	"centrepop/parts/seq"
)

// What the plate of a motor on the mains can say.
const (
	leastYield = 0.25 // of volts times amperes, turned out: common practice, no source
	mostYield  = 0.92 // the same at the most, efficiency times power factor: common practice, no source
	oneYield   = 0.7  // the same of a small motor of one phase: NEC table 430.248 has 0.28 for 1/4 hp to 0.41 for 1 hp, 2.9 and 8 A at 230 V
	smallW     = 750  // and up to what power it is small
	oneMostV   = 300  // of a single phase: common practice, no source
	mostPairs  = 6    // of poles: common practice, no source
	mostSlip   = 0.15 // of its field: common practice, no source; over 0.1 only the smallest
)

// motored is a job's motor as its rules look at it.
type motored struct {
	*reviewer
	m *parts.Motor
}

func (r motored) say(what, numbers, rule, fix string) {
	r.add(Finding{Severity: Check, Pos: r.m.Pos, Source: "by physics", What: what, Numbers: numbers, Rule: rule, Fix: fix})
}

// orders are what the words of a job lay, put on and order, sheets the parts that an earth may be on.
func (r motored) orders() iter.Seq[*parts.Loose] { return everyLoose(r.reviewer) }
func (r motored) sheets() iter.Seq[*parts.Part]  { return slices.Values(r.job.Parts) }

// plate looks at the numbers on the motor's plate, and at what the job says of it elsewhere.
var plate = of(everyMotor, together(
	motored.power, motored.through, each(motored.sheets, motored.earth), motored.speed, motored.madeFrame, motored.nemaFrame, motored.frame, motored.wet,
	each(motored.orders, motored.item, motored.clutch), motored.slipsAt, each(motored.notes, motored.limited), motored.flange,
))

// notes are the words of the job on its motor.
func (r motored) notes() iter.Seq[parts.Text] { return slices.Values(r.m.Notes) }

// volts are the lowest and the highest voltage of the plate; infinite and 0 without any.
func (r motored) volts() (low, high float64) {
	low = endless
	for _, n := range voltNumber().FindAllString(r.m.Volts.Value, -1) {
		low, high = min(low, figure(n)), max(high, figure(n))
	}
	return low, high
}

// power looks at what the motor turns out of what it takes, and at how many phases it has.
func (r motored) power() {
	m, watts := r.m, r.m.Watts()
	phases := words.Either(m.Phases == 3, math.Sqrt(3), 1.0)
	low, high := r.volts()
	most, least := phases*high*m.Amps.Value, phases*low*m.Amps.Value
	one, known, plate := m.Phases == 1, most > 0 && watts > 0, m.OnPlate()
	figures := func(va float64) string {
		return number(watts) + " W out of " + number(va) + " VA at " + plate + " and " + number(m.Amps.Value) + " A"
	}
	// Voltages first: what power they bring in follows from them.
	r.firstOf(Finding{Pos: m.Pos, Source: "by physics", Numbers: figures(most), Fix: "read the plate again: power, voltage and current of one row"},
		flaw{one && high > 0 && math.Abs(high/low-math.Sqrt(3)) < 0.03, Finding{
			What: "the motor's plate gives the voltages of star and delta, which one phase has not", Numbers: plate,
			Rule: "two voltages in the ratio √3 are those of a three-phase winding", Fix: "phases: 3, or the voltage of the one phase"}},
		flaw{one && high > oneMostV, Finding{
			What: "the motor's plate gives one phase a voltage that only three have", Numbers: plate,
			Rule: "a motor of one phase runs on 100 to 277 V", Fix: "phases: 3, or the voltage of the one phase"}},
		flaw{known && watts > mostYield*most, Finding{
			What: "the motor's plate gives more power than its current brings in",
			Rule: "a motor turns out nine tenths of volts times amperes at the most, by its efficiency and power factor"}},
		flaw{known && one && watts < smallW && watts > oneYield*most, Finding{
			What: "the motor's plate gives more power than one phase gets out of its current",
			Rule: "a small motor of one phase turns out six tenths of volts times amperes, seven at the most", Fix: "phases: 3, or the current of the one phase"}},
		flaw{known && watts < leastYield*least, Finding{
			What: "the motor's plate gives far more current than its power needs", Numbers: figures(least),
			Rule: "a motor turns out a quarter of volts times amperes at the least"}},
	)
}

// through looks for a motor in line that drives through something beside its shaft.
func (r motored) through() {
	if v := r.inLine(); v != nil {
		r.say("the motor drives through a "+r.m.Through+", and "+v.p.Title.Value+" holds it in line with the shaft", r.m.Drives.Part+"."+r.m.Drives.Feature,
			"a motor in line drives through a coupling", "through: coupling, or a plate beside the shaft")
	}
}

// earth looks for a lug under a bolt that clamps a part.
func (r motored) earth(p *parts.Part) {
	said := parts.Bare(r.m.Earth.Value)
	holds := func(j *parts.Joint) bool { return j.Holds(p.Name.Value) }
	own := func(g parts.HoleGroup) bool {
		return strings.Contains(said, " "+g.Name.Value+" ") && !r.job.Bolts(p.Name.Value, g.Name.Value)
	}
	if underHead().MatchString(said) && p.NamedIn(said) && slices.ContainsFunc(r.job.Of(parts.BoltKind), holds) && !slices.ContainsFunc(p.Holes, own) {
		r.say("the earth lies under a bolt that clamps "+p.Title.Value, r.m.Earth.Value,
			"the earth has a screw of its own on bright metal: paint lies under a bolt that clamps, and the lug takes of its preload",
			"a tapped hole of its own")
	}
}

// wet compares the enclosure with the place where the motor stands.
func (r motored) wet() {
	if wet := wetWords().FindString(r.job.Name.Value + " " + r.saidAll()); wet != "" && openMotor().MatchString(r.m.Enclosure.Value) {
		r.say("the motor's enclosure lets in the water that the words speak of", r.m.Enclosure.Value+"; "+wet,
			"a motor where it gets wet keeps out splashes at the least: IP54, TEFC (IEC 60034-5, from memory)",
			"an enclosure of IP54 or more, or read the plate again")
	}
}

// What a motor with its gear weighs: common practice, no source.
const (
	mostKgPerKW  = 60.0
	leastKgPerKW = 3.0
	anyMotorKg   = 30.0 // beside the most per kilowatt
	sameShare    = 0.06 // of a figure: makers round theirs
)

// item compares what is ordered as the motor with its plate, and its mass with its power.
func (r motored) item(e *parts.Loose) {
	name, _, _ := strings.Cut(e.Item.Value, ",")
	words := strings.Fields(strings.ToLower(itemFigure().ReplaceAllString(name, "")))
	if e.As != parts.AMotor && (len(words) == 0 || !strings.HasSuffix(words[len(words)-1], "motor")) {
		return
	}
	r.itemFlange(e)
	r.itemGear(e)
	r.itemMass(e)
	r.itemShaft(e)
	for _, f := range itemFigure().FindAllStringSubmatch(e.Item.Value, -1) {
		if !onPlate(r.m, f) {
			r.say("the motor as ordered is not that of its plate", f[0]+" in "+e.Item.Value, "what is bought is what is reckoned with", "the figure of the plate, in both places")
		}
	}
}

// itemFlange compares the flange of a motor as ordered with the one of its plate, or where that names none with the
// face of its frame.
func (r motored) itemFlange(e *parts.Loose) {
	pitch := func(s measured.Standard) float64 { return s.PitchMm }
	named := seq.Map(measured.Named(e.Item.Value), pitch)
	of := measured.Named(cmp.Or(r.m.Flange, r.m.Frame).Value)
	if len(of) == 1 && len(named) > 0 && !slices.Contains(named, of[0].PitchMm) {
		r.say("the motor as ordered has another flange than its plate", e.Item.Value+"; "+of[0].Name, "what is bought is what is reckoned with",
			"the flange of the plate, in both places; of a gear with a face of its own flange: in the motor")
	}
}

// itemGear looks for a gear in the words of a motor whose speed behind it the job does not give.
func (r motored) itemGear(e *parts.Loose) {
	if gear := gearedMotor().FindString(e.Item.Value); gear != "" && r.m.RPM.Value > 0 && r.m.OutRPM.Value == 0 {
		r.say("the motor as ordered has a gear, and the job does not say how fast it turns behind that", e.Item.Value+"; "+number(r.m.RPM.Value)+" rev/min",
			"a gear makes the torque larger by as much as the speed smaller: shaft, key and welds carry that", "output-speed: in motor")
	}
}

// itemMass compares the mass of a motor as ordered with the power of its plate.
func (r motored) itemMass(e *parts.Loose) {
	kw := r.m.Kilowatts()
	if most, least := anyMotorKg+mostKgPerKW*kw, leastKgPerKW*kw; e.MassKg > 0 && kw > 0 && (e.MassKg > most || e.MassKg < least) {
		r.say("the mass of the motor is not one for its power", r.w.RoundMass(e.MassKg, 1)+", wanted "+r.w.RoundMass(least, 1)+" to "+r.w.RoundMass(most, 0),
			"a motor with its gear weighs some tens of kilograms a kilowatt", "kg as on its drawing")
	}
}

// itemShaft compares the shaft that a motor without a gear stands with with that of its frame.
func (r motored) itemShaft(e *parts.Loose) {
	end, ok := measured.FrameShaft(r.m.Frame.Value, r.m.Kilowatts())
	if ok && r.m.OutRPM.Value == 0 && e.Stands != nil && e.Stands.Shaft.Set() && math.Abs(e.Stands.Shaft.Mm-end.DiameterMm) > faceOffMm {
		r.say("the shaft that the motor stands with is not that of its frame", r.mm(e.Stands.Shaft.Mm)+"; frame "+r.m.Frame.Value+" has "+r.mm(end.DiameterMm),
			"a frame has one shaft", "the shaft as measured, or the frame of the plate")
	}
}

// onPlate tells whether a figure of a motor as ordered is one of its plate, or that has none of its kind.
func onPlate(m *parts.Motor, f []string) bool {
	var has []float64
	switch strings.ToLower(f[2]) {
	case "kw":
		has = []float64{m.Kilowatts()}
	case "hp":
		has = []float64{m.Watts() / parts.WattsPerHP}
	case "hz":
		has = []float64{m.Hz.Value}
	case "rev/min", "rpm":
		has = []float64{m.RPM.Value, m.OutRPM.Value}
	default:
		plate := itemFigure().FindAllStringSubmatch(m.Flange.Value, -1)
		at := slices.IndexFunc(plate, func(p []string) bool { return strings.EqualFold(p[3], f[3]) })
		return at < 0 || plate[at][4] == f[4]
	}
	got := figure(f[1])
	has = seq.Keep(has, func(x float64) bool { return x > 0 })
	return len(has) == 0 || slices.ContainsFunc(has, func(x float64) bool { return math.Abs(got-x) <= sameShare*x })
}

// frameOf is a frame, and the most power in it with 2, 4, 6 and 8 poles.
type frameOf struct {
	frame string
	kw    [4]float64
}

// framesOf are the frames with the most power in kW that is usual in each of 2, 4, 6 and 8
// poles, the longest of a height for all. EN 50347, as a maker's series has them; 56 and
// 63, which it gives no 6 and 8 poles, as another's; 56 with 8 poles from memory.
var framesOf = []frameOf{
	{"56", [4]float64{0.12, 0.09, 0.06, 0.04}}, {"63", [4]float64{0.25, 0.18, 0.09, 0.06}}, {"71", [4]float64{0.55, 0.37, 0.25, 0.12}}, {"80", [4]float64{1.1, 0.75, 0.55, 0.25}},
	{"90", [4]float64{2.2, 1.5, 1.1, 0.55}}, {"100", [4]float64{3, 3, 1.5, 1.1}}, {"112", [4]float64{4, 4, 2.2, 1.5}}, {"132", [4]float64{7.5, 7.5, 5.5, 3}},
	{"160", [4]float64{18.5, 15, 11, 7.5}}, {"180", [4]float64{22, 22, 15, 11}}, {"200", [4]float64{37, 30, 22, 15}}, {"225", [4]float64{45, 45, 30, 22}},
	{"250", [4]float64{55, 55, 37, 30}}, {"280", [4]float64{90, 90, 55, 45}},
}

// nemaOf are the least powers in hp of NEMA frames with a T at eight poles. NEMA MG 13, from memory, and half of that
// for what is special.
var nemaOf = []struct {
	frames  string
	leastHP float64
}{{"143 145", 0.25}, {"182 184", 0.5}, {"213 215", 1}, {"254 256", 2}, {"284 286", 5}, {"324 326", 10}, {"364 365", 15}, {"404 405", 20}, {"444 445", 30}}

// frames are the sizes of motors: IEC 60072-1 and NEMA MG 1, both from memory.
var frames = strings.Fields("56 63 71 80 90 100 112 132 160 180 200 225 250 280 315 355 400 450" +
	" 42 48 143 145 182 184 203 204 213 215 224 225 254 256 284 286 324 326 364 365 404 405 444 445 447 449")

// madeFrame looks for a frame that no maker has.
func (r motored) madeFrame() {
	if n := voltNumber().FindString(r.m.Frame.Value); n != "" && !slices.Contains(frames, n) {
		r.say("the motor's frame is none that is made", r.m.Frame.Value,
			"a frame is named by the height of its shaft, in millimetres or sixteenths of an inch, or is a NEMA number", "read the plate again")
	}
}

// nemaFrame looks for a NEMA frame that is larger than ones for the power of the motor.
func (r motored) nemaFrame() {
	m := r.m
	if n := nemaName().FindStringSubmatch(m.Frame.Value); n != nil && m.HP.Value > 0 {
		for _, f := range nemaOf {
			if strings.Contains(f.frames, n[1]) && m.HP.Value < f.leastHP {
				r.say("the motor's frame is not one for its power", "frame "+m.Frame.Value+" for "+number(m.HP.Value)+" hp; it starts at about "+number(f.leastHP)+" hp",
					"each frame has powers that are usual, at any of the four speeds (NEMA MG 13, from memory)", "read the plate again")
			}
		}
	}
}

// frame compares the frame of a motor of so many kilowatts with the usual one for its
// power and poles: makers go one frame up or down, not two.
func (r motored) frame() {
	m := r.m
	named := frameName().FindStringSubmatch(m.Frame.Value)
	if named == nil || m.KW.Value <= 0 || m.RPM.Value <= 0 {
		return
	}
	pairs := 60 * m.Hz.Value / m.RPM.Value // of poles, and a little more for the slip
	if pairs < 1 || int(pairs) > len(framesOf[0].kw) {
		return
	}
	at := slices.IndexFunc(framesOf, func(f frameOf) bool { return f.frame == named[1] })
	usual := slices.IndexFunc(framesOf, func(f frameOf) bool { return m.KW.Value <= f.kw[int(pairs)-1]*1.1 })
	if off := at - usual; at < 0 || usual < 0 || off > -2 && off < 2 {
		return
	}
	r.say("the motor's frame is not one for its power", "frame "+m.Frame.Value+" for "+number(m.KW.Value)+" kW at "+number(m.RPM.Value)+" rev/min; usual is "+framesOf[usual].frame,
		"power and poles have a usual frame (EN 50347), and makers go one up or down", "read the plate again")
}

// flange compares all sizes in the words for the motor's flange with the plate
// that has one of them as its pitch circle.
func (r motored) flange() {
	sizes := flangeNumber().FindAllString(r.m.Flange.Value, -1)
	for _, v := range r.all() {
		if v.p.Bore == nil {
			continue
		}
		has := []string{number(v.p.Bore.Size.Nominal.Mm), number(v.p.Outline.Width.Mm)}
		circles := v.pitchCircles()
		has = append(has, seq.Map(circles, number)...)
		meant := slices.ContainsFunc(circles, func(mm float64) bool { return slices.Contains(sizes, number(mm)) })
		for _, s := range sizes {
			if meant && !slices.Contains(has, s) {
				r.say("the motor's flange has a size that "+v.p.Title.Value+" has not", r.m.Flange.Value+"; drawn: "+few(has)+" mm",
					"plate and motor have one flange", "the sizes on the motor's drawing, on both")
			}
		}
	}
}

// speed compares the speed with that of the field: the frequency over the pairs of poles, less some slip. Without
// a frequency either of the two that mains have will do, and a motor faster than both is none of the mains.
func (r motored) speed() {
	turns, mains := r.m.RPM.Value, []float64{50, 60}
	if turns <= 0 {
		return
	}
	numbers := number(turns) + " rev/min"
	if hz := r.m.Hz.Value; hz > 0 {
		mains, numbers = []float64{hz}, numbers+" at "+number(hz)+" Hz"
	}
	pairs := func(hz float64) float64 { return math.Floor(60 * hz / turns) }
	meant := slices.ContainsFunc(mains, func(hz float64) bool { return pairs(hz) > 0 && turns >= (1-mostSlip)*60*hz/pairs(hz) })
	fastest, slowest := 60*slices.Max(mains), (1-mostSlip)*60*slices.Min(mains)/mostPairs
	wanted := func(hz float64) string {
		field := 60 * hz / max(1, pairs(hz))
		return number(math.Ceil((1-mostSlip)*field)) + " to " + number(field) + " rev/min"
	}
	r.firstOf(Finding{Pos: r.m.Pos, Source: "by physics", Numbers: numbers, Fix: "read the plate again"},
		flaw{turns > fastest && r.m.Hz.Value > 0, Finding{
			What: "the motor's plate gives more speed than its frequency", Rule: "a motor on the mains turns once in a period at the most"}},
		flaw{turns < slowest, Finding{
			What: "the motor's plate gives a speed that no motor on the mains has without a gear", Numbers: numbers + ", wanted " + number(math.Ceil(slowest)) + " rev/min at the least",
			Rule: "a motor on the mains has twelve poles at the most (common practice, no source)", Fix: "read the plate again; what a gear gives is output-speed"}},
		flaw{turns <= fastest && !meant, Finding{
			What: "the motor's plate gives a speed that lies between those of its fields", Numbers: numbers + ", wanted " + strings.Join(seq.Map(mains, wanted), " or "),
			Rule: "a motor on the mains runs a little slower than its field", Fix: "read the plate again: speed and frequency of one row"}},
	)
}

// newtons is a force in words.
func newtons(number, unit string) float64 {
	return figure(number) * words.Either(unit == "N", 1, words.NPerPound)
}

// byHand is the torque of the force that words have at the rim of a hand wheel, Nm, and those words; 0 where they say none.
func (r *reviewer) byHand(e *parts.Loose) (nm float64, force, wheel string) {
	pull, size := rimForce().FindStringSubmatch(e.How.Value), wheelWords().FindStringSubmatch(e.Item.Value)
	if pull == nil || size == nil {
		return 0, "", ""
	}
	return newtons(pull[1], pull[2]) * r.itemMm(size[1]+" "+size[2]) / 2000, pull[0], size[0]
}

// handNm is the torque at the last hand wheel of the job, and its words; 0 where they say none.
func (r *reviewer) handNm() (nm float64, said string) {
	for e := range seq.Refs(r.job.Loose) {
		if own, force, wheel := r.byHand(e); force != "" {
			nm, said = own, force+" of the "+wheel
		}
	}
	return nm, said
}

// clutch compares the torque that words set the clutch in a hand wheel to with the force at its rim.
func (r motored) clutch(e *parts.Loose) {
	hand, force, _ := r.byHand(e)
	if set := setNm(e.Buy.Value); force != "" && set > 0 && unlikeBy(limitShare, set, hand) {
		r.say("the clutch in "+words.Head(e.Item.Value)+" and the force at its rim are different torques", r.w.Torque(set)+"; "+force+" is "+r.w.Torque(hand),
			"words and numbers of one job agree", "one torque, that of the weakest part in the drive")
	}
}

// limited compares what words of the motor set against overload with what they say of the hand
// wheel, and with what the motor gives; and looks for switches that act when it is too late.
func (r motored) limited(t parts.Text) {
	if tripsLate().MatchString(t.Value) {
		r.say("a limit switch acts only when the stops are met", t.Value, "a switch stops the motor before a stop does", "so far before the stops as it runs on")
	}
	set, gives := setNm(t.Value), r.m.OutputNm()
	switch hand, wheel := r.handNm(); {
	case set == 0:
	case hand > 0 && unlikeBy(limitShare, set, hand):
		r.say("the torque limiter and the hand wheel are held to different torques", r.w.Torque(set)+"; "+wheel+" is "+r.w.Torque(hand),
			"what limits a drive limits the hand too", "one torque, that of the weakest part in both drives")
	case gives > 0 && set > gives:
		r.say("the torque limiter is set above what the motor gives", r.w.Torque(set)+"; "+r.w.Torque(gives), "a limiter slips before the motor stalls", "what the weakest part holds")
	}
}

// slipsAt compares the forces at which words try what slips with the torque that it is set to: on a bar of a
// length, or at the rim of the hand wheel, which is held to its own.
func (r motored) slipsAt() {
	said := slices.Concat(r.run().Checks, seq.Map(r.upkeep().Wear, func(w parts.Wear) parts.Text { return w.Look }))
	radius := seq.Max(0, r.job.Loose, func(e parts.Loose) float64 {
		if size := wheelWords().FindStringSubmatch(e.Item.Value); size != nil {
			return r.itemMm(size[1]+" "+size[2]) / 2
		}
		return 0
	})
	for t, m := range saying(said, slipForce) {
		lever := radius
		set, _ := r.handNm()
		if m[3] != "" {
			lever, set = r.itemMm(m[3]+" "+m[4]), r.limiterNm()
		}
		if nm := newtons(m[1], m[2]) * lever / 1000; set > 0 && nm > 0 && unlikeBy(tryShare, nm, set) {
			numbers := m[0] + " is " + r.w.Torque(nm) + "; set to " + r.w.Torque(set)
			r.disagree(t.Pos, "", "what slips is tried at another torque than it is set to", numbers, "one torque, that of the weakest part in the drive")
		}
	}
}

// setNm is the torque that words set a limiter to, Nm; 0 where they set none.
func setNm(text string) float64 {
	if at := limiterAt().FindStringSubmatch(text); at != nil {
		return torqueNm(at[1], at[2])
	}
	return 0
}

// limiterNm is the torque that the motor's notes set a limiter to, Nm; 0 without one.
func (r *reviewer) limiterNm() float64 {
	return setNm(seq.First(r.motor().Notes, func(t parts.Text) bool { return setNm(t.Value) > 0 }).Value)
}

// limitShare is how far two limits of one thing may differ. Common practice, no source.
const limitShare = 1.5
