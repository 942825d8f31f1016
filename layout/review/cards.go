package review

import (
	"cmp"
	"fmt"
	"math"
	"regexp"
	"slices"
	"strconv"
	"strings"

	"centrepop/layout/measured"
	"centrepop/layout/words"
	"centrepop/parts"
	"centrepop/parts/seq"
)

// voltNumber is one of the numbers in the words for a voltage.
var voltNumber = regexp.MustCompile(`\d+(\.\d+)?`)

// What the plate of a motor on the mains can say.
const (
	leastYield = 0.25 // of volts times amperes, turned out: common practice, no source
	mostYield  = 0.92 // the same at the most, efficiency times power factor: common practice, no source
	oneYield   = 0.7  // the same of a small motor of one phase: NEC table 430.248, from memory, has 0.28 for 1/4 hp to 0.47 for 1 hp
	smallW     = 750  // and up to what power it is small
	oneMostV   = 300  // of a single phase: common practice, no source
	mostSlip   = 0.15 // of its field: common practice, no source; over 0.1 only the smallest
)

// underHead are words that put a lug under what clamps something else.
var underHead = regexp.MustCompile(`(?i)\bunder (the|a) (head|nut|bolt|screw)\b`)

// motored is a job's motor as its rules look at it.
type motored struct {
	*reviewer
	m *parts.Motor
}

func (r motored) say(what, numbers, rule, fix string) {
	r.add(Finding{Severity: Check, Pos: r.m.Pos, Source: "by physics", What: what, Numbers: numbers, Rule: rule, Fix: fix})
}

// plate looks at the numbers on the motor's plate, and at what the job says of it elsewhere.
func plate(r *reviewer) {
	if r.job.Motor == nil {
		return
	}
	of := motored{r, r.job.Motor}
	of.power()
	of.through()
	for _, p := range r.job.Parts {
		of.earth(p)
	}
	of.speed()
	of.frame()
	of.wet()
	for e := range seq.Refs(r.job.Loose) {
		of.item(e)
	}
	of.limited()
	of.flange()
}

// power looks at what the motor turns out of what it takes, and at how many phases it has.
func (r motored) power() {
	m, watts := r.m, r.m.Watts()
	phases, low, high := 1.0, math.Inf(1), 0.0
	if m.Phases == 3 {
		phases = math.Sqrt(3)
	}
	for _, n := range voltNumber.FindAllString(m.Volts.Value, -1) {
		u, _ := strconv.ParseFloat(n, 64) // the pattern lets numbers through alone
		low, high = min(low, u), max(high, u)
	}
	most, least := phases*high*m.Amps.Value, phases*low*m.Amps.Value
	at := " VA at " + m.Volts.Value + " V and " + number(m.Amps.Value) + " A"
	const again = "read the plate again: power, voltage and current of one row"
	switch { // voltages first: what power they bring in follows from them
	case m.Phases == 1 && high > 0 && math.Abs(high/low-math.Sqrt(3)) < 0.03:
		r.say("the motor's plate gives the voltages of star and delta, which one phase has not", m.Volts.Value+" V", "two voltages in the ratio √3 are those of a three-phase winding", "phases: 3, or the voltage of the one phase")
	case m.Phases == 1 && high > oneMostV:
		r.say("the motor's plate gives one phase a voltage that only three have", m.Volts.Value+" V", "a motor of one phase runs on 100 to 277 V", "phases: 3, or the voltage of the one phase")
	case most <= 0 || watts <= 0:
	case watts > mostYield*most:
		r.say("the motor's plate gives more power than its current brings in", number(watts)+" W out of "+number(most)+at, "a motor turns out nine tenths of volts times amperes at the most, by its efficiency and power factor", again)
	case m.Phases == 1 && watts < smallW && watts > oneYield*most:
		r.say("the motor's plate gives more power than one phase gets out of its current", number(watts)+" W out of "+number(most)+at, "a small motor of one phase turns out six tenths of volts times amperes, seven at the most", "phases: 3, or the current of the one phase")
	case watts < leastYield*least:
		r.say("the motor's plate gives far more current than its power needs", number(watts)+" W out of "+number(least)+at, "a motor turns out a quarter of volts times amperes at the least", again)
	}
}

func (r motored) through() {
	if v := r.inLine(); v != nil {
		r.say("the motor drives through a "+r.m.Through+", and "+v.p.Title.Value+" holds it in line with the shaft", r.m.Drives.Part+"."+r.m.Drives.Feature, "a motor in line drives through a coupling", "through: coupling, or a plate beside the shaft")
	}
}

// earth looks for a lug under a bolt that clamps a part.
func (r motored) earth(p *parts.Part) {
	said := " " + wordsOf(r.m.Earth.Value) + " "
	holds := func(j *parts.Joint) bool { return j.Holds(p.Name.Value) }
	own := func(g parts.HoleGroup) bool {
		return strings.Contains(said, " "+g.Name.Value+" ") && !r.bolted(p.Name.Value, g.Name.Value)
	}
	if underHead.MatchString(said) && seatNames(said, p) && slices.ContainsFunc(r.job.Of(parts.BoltKind), holds) && !slices.ContainsFunc(p.Holes, own) {
		r.say("the earth lies under a bolt that clamps "+p.Title.Value, r.m.Earth.Value, "the earth has a screw of its own on bright metal: paint lies under a bolt that clamps, and the lug takes of its preload", "a tapped hole of its own")
	}
}

func (r motored) wet() {
	if wet := wetWords.FindString(r.job.Name.Value + " " + r.saidAll()); wet != "" && openMotor.MatchString(r.m.Enclosure.Value) {
		r.say("the motor's enclosure lets in the water that the words speak of", r.m.Enclosure.Value+"; "+wet, "a motor where it gets wet keeps out splashes at the least: IP54, TEFC (IEC 60034-5, from memory)", "an enclosure of IP54 or more, or read the plate again")
	}
}

// wetWords are words of a place where a motor gets wet, and openMotor an enclosure that water gets into.
var (
	wetWords  = regexp.MustCompile(`(?i)\b(?:rain|water|wet|sluice|outdoors?|weather|spray|wash(?:ed|ing)? down)\b`)
	openMotor = regexp.MustCompile(`(?i)\b(?:IP ?[0-6][0-3]|ODP|DP|open|drip[- ]?proof)\b`)
)

// itemFigure is a figure of a motor as ordered: power, speed or frequency by its unit, or a size
// by its name.
var itemFigure = regexp.MustCompile(`(?i)\b(\d+(?:\.\d+)?|\d+/\d+) ?(kW|hp|rev/min|rpm|Hz)\b|\b(flange|spigot) (\d+(?:\.\d+)?)`)

// What a motor with its gear weighs: common practice, no source.
const (
	mostKgPerKW  = 60.0
	leastKgPerKW = 3.0
	anyMotorKg   = 30.0 // beside the most per kilowatt
	sameShare    = 0.06 // of a figure: makers round theirs
)

// item compares what is ordered as the motor with its plate, and its mass with its power.
func (r motored) item(e *parts.Loose) {
	m, kw := r.m, r.m.Watts()/1000
	name, _, _ := strings.Cut(e.Item.Value, ",")
	words := strings.Fields(strings.ToLower(itemFigure.ReplaceAllString(name, "")))
	if len(words) == 0 || !strings.HasSuffix(words[len(words)-1], "motor") {
		return
	}
	named := seq.Map(measured.Named(e.Item.Value), func(s measured.Standard) float64 { return s.PitchMm })
	if of := measured.Named(m.Flange.Value); len(of) == 1 && len(named) > 0 && !slices.Contains(named, of[0].PitchMm) {
		r.say("the motor as ordered has another flange than its plate", e.Item.Value+"; "+of[0].Name, "what is bought is what is reckoned with", "the flange of the plate, in both places")
	}
	if most, least := anyMotorKg+mostKgPerKW*kw, leastKgPerKW*kw; e.MassKg > 0 && kw > 0 && (e.MassKg > most || e.MassKg < least) {
		r.say("the mass of the motor is not one for its power", r.w.RoundMass(e.MassKg, 1)+", wanted "+r.w.RoundMass(least, 1)+" to "+r.w.RoundMass(most, 0), "a motor with its gear weighs some tens of kilograms a kilowatt", "kg as on its drawing")
	}
	if end, ok := measured.FrameShaft(m.Frame.Value); ok && m.OutRPM.Value == 0 && e.Stands != nil && e.Stands.Shaft.Set() && math.Abs(e.Stands.Shaft.Mm-end.DiameterMm) > faceOffMm {
		r.say("the shaft that the motor stands with is not that of its frame", r.mm(e.Stands.Shaft.Mm)+"; frame "+m.Frame.Value+" has "+r.mm(end.DiameterMm), "a frame has one shaft", "the shaft as measured, or the frame of the plate")
	}
	for _, f := range itemFigure.FindAllStringSubmatch(e.Item.Value, -1) {
		if !onPlate(m, f) {
			r.say("the motor as ordered is not that of its plate", f[0]+" in "+e.Item.Value, "what is bought is what is reckoned with", "the figure of the plate, in both places")
		}
	}
}

// onPlate tells whether a figure of a motor as ordered is one of its plate, or that has none of its kind.
func onPlate(m *parts.Motor, f []string) bool {
	var has []float64
	switch strings.ToLower(f[2]) {
	case "kw":
		has = []float64{m.Watts() / 1000}
	case "hp":
		has = []float64{m.Watts() / parts.WattsPerHP}
	case "hz":
		has = []float64{m.Hz.Value}
	case "rev/min", "rpm":
		has = []float64{m.RPM.Value, m.OutRPM.Value}
	default:
		plate := itemFigure.FindAllStringSubmatch(m.Flange.Value, -1)
		at := slices.IndexFunc(plate, func(p []string) bool { return strings.EqualFold(p[3], f[3]) })
		return at < 0 || plate[at][4] == f[4]
	}
	got := noteMm(f[1], "mm")
	has = seq.Keep(has, func(x float64) bool { return x > 0 })
	return len(has) == 0 || slices.ContainsFunc(has, func(x float64) bool { return math.Abs(got-x) <= sameShare*x })
}

// framesOf are the frames with the most power in kW that is usual in each of 2, 4, 6 and 8
// poles, the longest of a height for all. EN 50347 and IEC 60072-1, from memory.
var framesOf = []struct {
	frame string
	kw    [4]float64
}{
	{"56", [4]float64{0.12, 0.09, 0.06, 0.04}}, {"63", [4]float64{0.25, 0.18, 0.12, 0.09}}, {"71", [4]float64{0.55, 0.37, 0.25, 0.12}}, {"80", [4]float64{1.1, 0.75, 0.55, 0.25}},
	{"90", [4]float64{2.2, 1.5, 1.1, 0.55}}, {"100", [4]float64{3, 3, 1.5, 1.1}}, {"112", [4]float64{4, 4, 2.2, 1.5}}, {"132", [4]float64{7.5, 7.5, 5.5, 3}},
	{"160", [4]float64{18.5, 15, 11, 7.5}}, {"180", [4]float64{22, 22, 15, 11}}, {"200", [4]float64{37, 30, 22, 15}}, {"225", [4]float64{45, 45, 30, 22}},
	{"250", [4]float64{55, 55, 37, 30}}, {"280", [4]float64{90, 90, 55, 45}},
}

// nemaOf are the least powers in hp of NEMA frames with a T at eight poles, and nemaName such a
// frame. NEMA MG 13, from memory, and half of that for what is special.
var (
	nemaOf = []struct {
		frames  string
		leastHP float64
	}{{"143 145", 0.25}, {"182 184", 0.5}, {"213 215", 1}, {"254 256", 2}, {"284 286", 5}, {"324 326", 10}, {"364 365", 15}, {"404 405", 20}, {"444 445", 30}}
	nemaName = regexp.MustCompile(`^(\d{3}) ?T`)
)

// frameName is a frame by its height in millimetres, with its length.
var frameName = regexp.MustCompile(`^(\d+) ?[SML]?\d?$`)

// frame compares the frame of a motor of so many kilowatts with the usual one for its
// power and poles: makers go one frame up or down, not two.
func (r motored) frame() {
	m := r.m
	if n := voltNumber.FindString(m.Frame.Value); n != "" && !slices.Contains(frames, n) {
		r.say("the motor's frame is none that is made", m.Frame.Value, "a frame is named by the height of its shaft, in millimetres or sixteenths of an inch, or is a NEMA number", "read the plate again")
	}
	if n := nemaName.FindStringSubmatch(m.Frame.Value); n != nil && m.HP.Value > 0 {
		for _, f := range nemaOf {
			if strings.Contains(f.frames, n[1]) && m.HP.Value < f.leastHP {
				r.say("the motor's frame is not one for its power", "frame "+m.Frame.Value+" for "+number(m.HP.Value)+" hp; it starts at about "+number(f.leastHP)+" hp",
					"each frame has powers that are usual, at any of the four speeds (NEMA MG 13, from memory)", "read the plate again")
			}
		}
	}
	named := frameName.FindStringSubmatch(m.Frame.Value)
	if named == nil || m.KW.Value <= 0 || m.Hz.Value <= 0 || m.RPM.Value <= 0 || 60*m.Hz.Value < m.RPM.Value {
		return
	}
	poles := int(60*m.Hz.Value/m.RPM.Value) - 1 // pairs of them, less the first
	at, usual := -1, -1
	for i, f := range framesOf {
		if f.frame == named[1] {
			at = i
		}
		if usual < 0 && poles < len(f.kw) && m.KW.Value <= f.kw[poles]*1.1 {
			usual = i
		}
	}
	if off := at - usual; at < 0 || usual < 0 || off > -2 && off < 2 {
		return
	}
	r.say("the motor's frame is not one for its power", "frame "+m.Frame.Value+" for "+number(m.KW.Value)+" kW at "+number(m.RPM.Value)+" rev/min; usual is "+framesOf[usual].frame,
		"power and poles have a usual frame (EN 50347, from memory), and makers go one up or down", "read the plate again")
}

// frames are the sizes of motors: IEC 60072-1 and NEMA MG 1, both from memory.
var frames = strings.Fields("56 63 71 80 90 100 112 132 160 180 200 225 250 280 315 355 400 450" +
	" 42 48 143 145 182 184 203 204 213 215 224 225 254 256 284 286 324 326 364 365 404 405 444 445 447 449")

// flange compares all sizes in the words for the motor's flange with the plate
// that has one of them as its pitch circle.
func (r motored) flange() {
	sizes := flangeNumber.FindAllString(r.m.Flange.Value, -1)
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
				r.say("the motor's flange has a size that "+v.p.Title.Value+" has not", r.m.Flange.Value+"; drawn: "+few(has)+" mm", "plate and motor have one flange", "the sizes on the motor's drawing, on both")
			}
		}
	}
}

// speed compares the speed with that of the field: the frequency over the
// pairs of poles, less some slip.
func (r motored) speed() {
	m := r.m
	fastest, turns := 60*m.Hz.Value, m.RPM.Value
	if fastest <= 0 || turns <= 0 {
		return
	}
	numbers := number(turns) + " rev/min at " + number(m.Hz.Value) + " Hz"
	if turns > fastest {
		r.say("the motor's plate gives more speed than its frequency", numbers, "a motor on the mains turns once in a period at the most", "read the plate again")
		return
	}
	field := fastest / math.Floor(fastest/turns)
	if turns < (1-mostSlip)*field {
		r.say("the motor's plate gives a speed that lies between those of its fields", numbers+", wanted "+number(math.Ceil((1-mostSlip)*field))+" to "+number(field)+" rev/min", "a motor on the mains runs a little slower than its field", "read the plate again: speed and frequency of one row")
	}
}

// rarest is how many of a unit pass at most between two times that something is greased or
// looked at, about five years. Common practice, no source.
var rarest = map[string]float64{"h": 10_000, "hour": 10_000, "day": 2000, "week": 260, "month": 60, "season": 10, "year": 5}

// greaseShare is how long grease stays good, as a share of that: two years. Common practice, no source.
const greaseShare = 0.4

// every is a time in the words of the upkeep.
var every = regexp.MustCompile(`^(\d+) ?(h|hour|day|week|month|season|year)s?\b`)

// howOften is a time of the upkeep, with its unit; none in other words.
func howOften(t parts.Text) (n float64, unit string) {
	m := every.FindStringSubmatch(t.Value)
	if m == nil {
		return 0, ""
	}
	n, _ = strconv.ParseFloat(m[1], 64) // the pattern lets numbers through alone
	return n, m[2]
}

// upkeep looks for times that are too long to be meant.
func upkeep(r *reviewer) {
	r.onPaint()
	if r.job.Upkeep == nil {
		return
	}
	look := func(t parts.Text, share float64) {
		n, unit := howOften(t)
		if strings.HasPrefix(unit, "h") {
			share = 1 // of running, not of standing
		}
		if unit != "" && n > share*rarest[unit] {
			r.add(Finding{
				Pos: t.Pos, What: "a place of the upkeep is looked at hardly ever", Numbers: t.Value,
				Rule: "grease ages in two years, and bolts are looked at in five at the most", Fix: "a shorter time",
			})
		}
	}
	greased := map[string]bool{}
	for _, p := range r.job.Upkeep.Ports {
		look(p.Every, greaseShare)
		greased[p.Bearing.Value] = true
		r.portGrease(p)
	}
	r.beside(greased, Finding{
		Pos: r.job.Upkeep.Pos, What: "the upkeep greases %s and not %s", Rule: "all bearings of one housing are greased", Fix: "a port for %s too, or accept it where it is sealed",
	})
	r.unevenly()
	for _, b := range r.job.Upkeep.Bolts {
		look(b.Every, 1)
	}
	for _, w := range r.job.Upkeep.Wear {
		look(w.Every, 1)
		r.wornOut(w)
		r.wearing(w)
	}
}

// wearing looks for what wears by a name that no part has: its first word begins titles of
// parts, and its second stands in none, nor in what is bought.
func (r *reviewer) wearing(w parts.Wear) {
	said := strings.Fields(strings.ToLower(w.Item.Value))
	if len(said) < 2 {
		return
	}
	var like []string
	all := " "
	for _, p := range r.job.Parts {
		title := strings.ToLower(p.Title.Value) + " "
		all += title
		if strings.HasPrefix(title, said[0]+" ") {
			like = append(like, p.Title.Value)
		}
	}
	for _, b := range r.pl.Bought {
		all += strings.ToLower(b.Item) + " "
	}
	if len(like) == 0 || strings.Contains(all, " "+strings.TrimSuffix(said[1], "s")) {
		return
	}
	r.add(Finding{
		Pos: w.Pos, What: "the upkeep looks at what no part and nothing bought is called", Numbers: w.Item.Value + "; there is " + strings.Join(like, ", "),
		Rule: "what wears is called as on its own sheet", Fix: "part: with its name",
	})
}

// greaseOf are the words that tell one grease from another: its thickener and its number.
var greaseOf = regexp.MustCompile(`(?i)\b(lithium|calcium|sodium|aluminium|aluminum|barium|polyurea|bentonite|clay|silicone|complex|nlgi ?\d+)\b`)

// portGrease compares the grease of the upkeep with that of the bearing's joint.
func (r *reviewer) portGrease(p parts.Port) {
	j := r.job.Joint(p.Bearing.Value)
	if j == nil || j.Bearing == nil {
		return
	}
	kind := func(s string) []string {
		k := greaseOf.FindAllString(strings.ToLower(strings.ReplaceAll(s, "NLGI ", "NLGI")), -1)
		slices.Sort(k)
		return slices.Compact(k)
	}
	first, again := j.Bearing.Grease.Value, p.Grease.Value
	f := Finding{Severity: Check, Part: j.Name.Value, Pos: p.Pos, Source: practice}
	switch a, b := kind(first), kind(again); {
	case first == "" && again == "":
		f.What, f.Rule, f.Fix = "the upkeep greases "+j.Name.Value+", and nothing says with what", "a bearing is greased with what it was filled with", "grease at the bearing of the joint"
	case len(a) > 0 && len(b) > 0 && !slices.Equal(a, b):
		f.What, f.Numbers = "the upkeep greases "+j.Name.Value+" with another grease than it was filled with", first+", "+again
		f.Rule, f.Fix = "greases of two thickeners soften one another", "one grease in both places; the upkeep takes that of the joint where it names none"
	default:
		return
	}
	r.add(f)
}

// The least ratio of two times for grease that is a slip and no choice: common practice, no source.
const unevenShare = 20.0

// unevenly looks for bearings of one housing, of which one is greased far less often than another.
func (r *reviewer) unevenly() {
	for _, p := range r.job.Upkeep.Ports {
		for _, o := range r.job.Upkeep.Ports {
			a, b := r.job.Joint(p.Bearing.Value), r.job.Joint(o.Bearing.Value)
			if a == nil || b == nil || a.Bearing == nil || b.Bearing == nil || a.Bearing.Cup.Part != b.Bearing.Cup.Part {
				continue
			}
			rare, unit := howOften(p.Every)
			if often, same := howOften(o.Every); unit == "" || same != unit || rare < unevenShare*often {
				continue
			}
			r.add(Finding{
				Pos: p.Every.Pos, What: "the upkeep greases " + a.Name.Value + " far less often than " + b.Name.Value, Numbers: p.Every.Value + " and " + o.Every.Value + ", both in " + a.Bearing.Cup.Part,
				Rule: "bearings of one housing are greased about as often", Fix: "one time for both, or accept it",
			})
		}
	}
}

// beside reports f for each bearing that is not in named beside one of its housing that is:
// %s stands for their names.
func (r *reviewer) beside(named map[string]bool, f Finding) {
	for _, j := range r.job.Of(parts.BearingKind) {
		o := seq.First(r.job.Of(parts.BearingKind), func(o *parts.Joint) bool { return named[o.Name.Value] && o.Bearing.Cup.Part == j.Bearing.Cup.Part })
		if o != nil && !named[j.Name.Value] {
			one := f
			one.Numbers = "both in " + j.Bearing.Cup.Part
			one.What, one.Fix = fmt.Sprintf(f.What, o.Name.Value, j.Name.Value), fmt.Sprintf(f.Fix, j.Name.Value)
			r.add(one)
		}
	}
}

// readings looks for readings of a run that do not come later than the one before, at the
// same load.
func (r *reviewer) readings(run *parts.FirstRun) {
	for i := 1; i < len(run.Runs); i++ {
		a, b := run.Runs[i-1], run.Runs[i]
		if a.Load.Value != b.Load.Value || b.Minutes.Value > a.Minutes.Value {
			continue
		}
		r.add(Finding{
			Pos: b.Pos, What: "a reading of the first run comes no later than the one before it", Numbers: number(b.Minutes.Value) + " min after " + number(a.Minutes.Value) + " min",
			Rule: "minutes count from the start of idling, or of one load", Source: "by the job", Fix: "the later time, or another load",
		})
	}
}

// hottestC is the most that a greased bearing with a rubber seal stands. Common
// practice, no source.
const hottestC = 110.0

// latestH is when all is looked at again after the first run at the latest, in hours of
// running. Common practice, no source.
const latestH = 100.0

// runSpeeds compares the speeds of the first run with that of the motor's output: none is
// above it, and one at least reaches it.
func (r *reviewer) runSpeeds(run *parts.FirstRun) {
	const same = 0.05
	out, fastest := r.motor().OutRPM.Value, 0.0
	if out <= 0 {
		return
	}
	f := Finding{Severity: Check, Pos: run.Pos, Rule: "the machine is tried at its own speed", Source: "by the job"}
	for i, s := range run.Runs {
		if fastest = max(fastest, s.Speed.Value); s.Speed.Value <= (1+same)*out {
			continue
		}
		f.Pos, f.What, f.Numbers = s.Pos, "run "+number(float64(i+1))+" of the first run is faster than the motor's output", number(s.Speed.Value)+" rev/min, the output "+number(out)
		f.Fix = "the speed that the gear gives, output-speed as on its plate, or accept it where a belt changes the speed"
		r.add(f)
	}
	if fastest > 0 && fastest < (1-same)*out {
		f.Pos, f.What, f.Numbers = run.Pos, "no run of the first run has the speed of the motor's output", "at most "+number(fastest)+" rev/min, the output "+number(out)
		f.Fix = "output-speed as on the gear's plate, or accept it where a belt changes the speed"
		r.add(f)
	}
}

// uncoupled are words that take the coupling off.
var uncoupled = regexp.MustCompile(`(?i)\b(?:uncoupled|disconnected|coupling (?:off|apart|removed)|without (?:the |its )?coupling)\b`)

// firstRun looks at the numbers of the first run: speeds the motor does not give,
// and a bearing that is let run hot.
func firstRun(r *reviewer) {
	run := r.job.FirstRun
	if run == nil {
		return
	}
	r.runSpeeds(run)
	r.runsOpen(run)
	r.staysIn(run)
	if h := run.AgainHours; h > latestH {
		r.add(Finding{
			Pos: run.Pos, What: "bolts and bearings are looked at again long after the first run", Numbers: number(h) + " h, wanted at most " + number(latestH) + " h",
			Rule: "what settles does so in the first hours", Fix: "again-after: 8, or the first shift",
		})
	}
	if r.job.Motor != nil && uncoupled.MatchString(run.WarmUpHow.Value) {
		r.add(Finding{
			Pos: run.WarmUpHow.Pos, What: "the motor is to run uncoupled after it has run coupled for its direction", Numbers: run.WarmUpHow.Value,
			Rule: "nothing is taken apart between two stages of the first run: guards come off, a loose half turns in the open, and no line puts it together again",
			Fix:  "coupled and empty; or before the step of the coupling",
		})
	}
	r.readings(run)
	r.travel(run)
	watched := map[string]bool{}
	for _, w := range run.Watch {
		if watched[w.Bearing.Value] = true; w.Bearing.Value != "" && w.MostC.Value > hottestC {
			r.add(Finding{
				Part: w.Bearing.Value, Pos: w.Pos, What: w.Bearing.Value + " may run hot before the first run is stopped", Numbers: number(w.MostC.Value) + " °C, wanted at most " + number(hottestC) + " °C",
				Rule: "grease and seals stand about 110 °C", Fix: "70 to 90 °C, or the maker's figure",
			})
		}
	}
	r.beside(watched, Finding{
		Pos: run.Pos, What: "the first run watches %s and not %s", Rule: "all bearings of one housing are watched: the one that is set too tight gets hot", Fix: "watch: %s too",
	})
}

// travelMm is a travel in words with its length, before or after it; runTravel is that of a run.
var (
	travelMm  = regexp.MustCompile(`\b(?:travels?|strokes?)\b.{0,120}?\d ?(?:mm|in|ft|m|")(?: |$)|\d ?(?:mm|in|ft|m|") (?:of )?(?:travel|stroke)\b`)
	runTravel = regexp.MustCompile(`(?i)\b(?:travel|stroke)\b,? (?:of )?` + noteLength)
)

// travelShare is how much more than what is said a travel may be. Common practice, no source:
// words round.
const travelShare = 1.05

// travel looks for a run over the whole travel or stroke, of which no words of the job say how
// long it is: nobody can tell whether the run has gone over all of it; and for one that is
// longer than words or a keyway give.
func (r *reviewer) travel(run *parts.FirstRun) {
	most, by := r.mostTravelMm()
	for _, one := range run.Runs {
		load := strings.ToLower(one.Load.Value)
		if m := runTravel.FindStringSubmatch(load); m != nil && noteMm(m[1], m[2]) > travelShare*most {
			r.add(Finding{
				Pos: one.Load.Pos, What: "a run goes over a longer travel than " + by, Numbers: m[0] + "; at most " + r.mm(most), OverMm: over(noteMm(m[1], m[2])),
				Rule: "words and numbers of one job agree", Source: "by the job", Fix: "the travel between the stops",
			})
			continue
		}
		if !strings.Contains(load, "travel") && !strings.Contains(load, "stroke") || travelMm.MatchString(load) || travelMm.MatchString(r.saidAll()) {
			continue
		}
		r.add(Finding{
			Pos: one.Load.Pos, What: "a run goes over a travel, and the job says nowhere how long that is", Numbers: one.Load.Value,
			Rule: "what is to be seen at the first run has its number", Source: "by the job", Fix: "the length of the travel between its stops, in the words of the run",
		})
	}
}

// mostTravelMm is the longest travel that words of the job give, or a key in its keyway, with
// what gives it; infinite where nothing does.
func (r *reviewer) mostTravelMm() (mm float64, by string) {
	mm = math.Inf(1)
	is := func(most float64, what string) {
		if most < mm {
			mm, by = most, what
		}
	}
	for e := range seq.Refs(r.job.Loose) {
		if e.Travels != nil {
			is(e.Travels.Front.Mm+e.Travels.Back.Mm, e.Part.Value+" travels")
		}
		if said, _ := travelSaid(e); said > 0 {
			is(said, "the words for "+cmp.Or(e.Part.Value, e.Item.Value)+" give")
		}
		v := r.viewOf(e.Part.Value)
		if v == nil || !isKey(v.p) {
			continue
		}
		thick, _, long := v.keyMm()
		for _, p := range r.job.Parts {
			for f := range seq.Refs(p.Radials) {
				if left := f.Along.Mm - long; f.Shape == parts.RadialSlot && !f.Through && math.Abs(f.Around.Mm-thick) <= slackMm && left > 0 {
					is(left, v.p.Title.Value+" has in "+f.Name.Value+" of "+p.Title.Value)
				}
			}
		}
	}
	return mm, by
}

// Words about what ends a travel: a switch that acts at or after the stops; a torque that a
// limiter is set to, and a force at the rim of a wheel.
var (
	tripsLate  = regexp.MustCompile(`(?i)\bswitch(?:es)?\b[^.;]*\b(?:trip|act|open|cut|stop)s?\b[^.;]*\b(?:after|past|beyond|when|once|as)\b[^.;]*\b(?:stops?|collars?|buffers?|ends?)\b`)
	limiterAt  = regexp.MustCompile(`(?i)\b(?:limiter|clutch)\b[^.;]*?\b(\d+(?:\.\d+)?) ?(N ?m|lbf?[ -]?ft|lbf?[ -]?in)\b`)
	rimForce   = regexp.MustCompile(`(?i)\b(\d+(?:\.\d+)?) ?(N|lbf?) at the rim\b`)
	slipForce  = regexp.MustCompile(`(?i)\bslips at (\d+(?:\.\d+)?) ?(N|lbf?)\b(?: on an? ` + bareLength + ` bar\b)?`)
	wheelWords = regexp.MustCompile(`(?i)\bwheel (?:of )?` + bareLength)
)

// limited compares what words of the motor set against overload with what they say of the hand
// wheel, and with what the motor gives; and looks for switches that act when it is too late.
func (r motored) limited() {
	hand, wheel := 0.0, ""
	for e := range seq.Refs(r.job.Loose) {
		force, size := rimForce.FindStringSubmatch(e.How.Value), wheelWords.FindStringSubmatch(e.Item.Value)
		if force != nil && size != nil {
			hand, wheel = noteMm(force[1], "mm")*r.itemMm(size[1]+" "+size[2])/2000, force[0]+" of the "+size[0] // Nm
			if force[2] != "N" {
				hand *= words.NPerPound
			}
			if set := setNm(e.Buy.Value); set > 0 && (set > limitShare*hand || hand > limitShare*set) {
				r.say("the clutch in "+words.Head(e.Item.Value)+" and the force at its rim are different torques", r.w.Torque(set)+"; "+force[0]+" is "+r.w.Torque(hand), "words and numbers of one job agree", "one torque, that of the weakest part in the drive")
			}
		}
	}
	r.slipsAt(hand)
	for _, t := range r.m.Notes {
		if tripsLate.MatchString(t.Value) {
			r.say("a limit switch acts only when the stops are met", t.Value, "a switch stops the motor before a stop does", "so far before the stops as it runs on")
		}
		set := setNm(t.Value)
		switch gives := r.m.OutputNm(); {
		case set == 0:
		case hand > 0 && (set > limitShare*hand || hand > limitShare*set):
			r.say("the torque limiter and the hand wheel are held to different torques", r.w.Torque(set)+"; "+wheel+" is "+r.w.Torque(hand), "what limits a drive limits the hand too", "one torque, that of the weakest part in both drives")
		case gives > 0 && set > gives:
			r.say("the torque limiter is set above what the motor gives", r.w.Torque(set)+"; "+r.w.Torque(gives), "a limiter slips before the motor stalls", "what the weakest part holds")
		}
	}
}

// slipsAt compares the forces at which words try what slips with the torque that it is set to: on a bar of a
// length, or at the rim of the hand wheel, which is held to handNm.
func (r *reviewer) slipsAt(handNm float64) {
	said := r.run().Checks
	if up := r.job.Upkeep; up != nil {
		said = slices.Concat(said, seq.Map(up.Wear, func(w parts.Wear) parts.Text { return w.Look }))
	}
	radius := seq.Max(0, r.job.Loose, func(e parts.Loose) float64 {
		if size := wheelWords.FindStringSubmatch(e.Item.Value); size != nil {
			return r.itemMm(size[1]+" "+size[2]) / 2
		}
		return 0
	})
	for t, m := range saying(said, slipForce) {
		lever, set := radius, handNm
		if m[3] != "" {
			lever, set = r.itemMm(m[3]+" "+m[4]), r.limiterNm()
		}
		nm := noteMm(m[1], "mm") * lever / 1000
		if m[2] != "N" {
			nm *= words.NPerPound
		}
		if set > 0 && nm > 0 && (nm > tryShare*set || set > tryShare*nm) {
			numbers := m[0] + " is " + r.w.Torque(nm) + "; set to " + r.w.Torque(set)
			r.disagree(t.Pos, "", "what slips is tried at another torque than it is set to", numbers, "one torque, that of the weakest part in the drive")
		}
	}
}

// setNm is the torque that words set a limiter to, Nm; 0 where they set none.
func setNm(text string) float64 {
	if at := limiterAt.FindStringSubmatch(text); at != nil {
		return torqueNm(at[1], at[2])
	}
	return 0
}

// limiterNm is the torque that the motor's notes set a limiter to, Nm; 0 without one.
func (r *reviewer) limiterNm() float64 {
	return setNm(seq.First(r.motor().Notes, func(t parts.Text) bool { return setNm(t.Value) > 0 }).Value)
}

// playSaid is the play of a thread at which words change it; wornShare is how much of its pitch that is at the
// most. Common practice, no source: half the pitch is metal.
var playSaid = regexp.MustCompile(`(?i)\bplay\b[^.;]*?\b(?:over|above|of|beyond) ` + bareLength)

const wornShare = 0.75

// offSaid is how far off its round a flight is worn out, in words.
var offSaid = regexp.MustCompile(`(?i)` + bareLength + ` or more off\b`)

// flightWorn looks at how far off its round words call a flight worn out: neither before it runs, nor never.
func (r *reviewer) flightWorn(w parts.Wear) {
	off := offSaid.FindStringSubmatch(w.Look.Value)
	if off == nil {
		return
	}
	in, gap := r.machine().FlightGapMm(w.Part.Value)
	if in == "" {
		return
	}
	f := Finding{
		Severity: Check, Part: w.Part.Value, Pos: w.Look.Pos, What: "by the words it is worn out when it is new", Numbers: r.mm(gap) + " off " + in + " as drawn",
		Rule: "words and numbers of one job agree", Source: "by geometry", Fix: "a larger limit",
	}
	flight := r.job.Part(w.Part.Value).Flight
	switch mm := r.itemMm(off[1] + " " + off[2]); {
	case mm >= gap+(flight.Outside.Mm-flight.Shaft.Mm)/2:
		f.What, f.Fix = "by the words it is worn out when nothing of it is left", "a smaller limit"
	case mm > gap:
		return
	}
	r.add(f)
}

// wornOut looks at a nut that words keep until the play eats its thread.
func (r *reviewer) wornOut(w parts.Wear) {
	r.flightWorn(w)
	m, v := playSaid.FindStringSubmatch(w.Look.Value), r.viewOf(w.Part.Value)
	if m == nil || v == nil {
		return
	}
	play := r.itemMm(m[1] + " " + m[2])
	for _, c := range v.inside {
		if t := c.thread; t != nil && play > wornShare*t.PitchMm {
			v.report(Check, c.name, w.Look.Pos, Finding{
				What: "by the words " + v.p.Title.Value + " runs until its thread is worn through", Numbers: r.mm(play) + " of play on a pitch of " + r.mm(t.PitchMm), OverMm: over(play),
				Rule: "a nut is changed before half its thread is worn", Source: practice, Fix: "a smaller play",
			})
		}
	}
}

// earthed are words for an earth, and painted for what puts one on paint.
var (
	earthed = regexp.MustCompile(`(?i)\b(?:earth|ground lug)\b`)
	painted = regexp.MustCompile(`(?i)\b(?:on|over|through) (?:the )?(?:finished |top )?(?:paint|primer|lacquer)\b|\bpainted\b`)
)

// onPaint looks for an earth that words put on paint.
func (r *reviewer) onPaint() {
	for e := range seq.Refs(r.job.Loose) {
		if said := e.Item.Value + "; " + e.How.Value; earthed.MatchString(said) && painted.MatchString(said) && !denied.MatchString(e.How.Value) {
			r.add(Finding{
				Severity: Check, Pos: e.How.Pos, What: "the earth is put on paint", Numbers: e.How.Value,
				Rule: "an earth lies on bright metal", Source: "IEC 60204-1, from memory", Fix: "on bright metal",
			})
		}
	}
}

// limitShare is how far two limits of one thing may differ. Common practice, no source.
const limitShare = 1.5

// tryShare is how far a limit may lie from the force that it is tried by. Common practice, no source.
const tryShare = 1.25
