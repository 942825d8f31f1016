package card

import (
	"cmp"
	"maps"
	"regexp"
	"slices"
	"strconv"
	"strings"

	"centrepop/layout/plan"
	"centrepop/layout/words"
	"centrepop/parts"
	"centrepop/parts/seq"
)

// stops is what is wanted of a guard that is opened, or a stop that is pressed.
const stops = "it stops, and stays off"

// lockOff is said wherever somebody reaches into what a motor turns.
const lockOff = "Isolate the supply and lock it off before a guard comes off or a hand goes in."

// usualRuns are the runs of a job that names none: common practice, no source.
var usualRuns = []parts.Run{
	{Minutes: parts.Number{Value: 10}}, {Minutes: parts.Number{Value: 30}}, {Minutes: parts.Number{Value: 60}},
	{Minutes: parts.Number{Value: 60}, Load: parts.Text{Value: "working load"}},
}

// firstRun is the card of the first run; nil if the job asks for none.
func (c cards) firstRun() *plan.FirstRun {
	in := c.job.FirstRun
	if in == nil {
		return nil
	}
	out := &plan.FirstRun{Degrees: parts.By(c.w.Units, "°C", "°F"), Watch: c.watched(in)}
	idle, load := c.runs(in)
	var warm []plan.CardLine
	if in.WarmUp.Value > 0 {
		warm = append(warm, plan.CardLine{Do: "Warm up first: " + in.WarmUpHow.Value, Wanted: minutes(in.WarmUp.Value)})
	}
	for _, s := range []plan.RunStage{
		{Title: "Look at", Lines: c.before(in)},
		{Title: "Oil, grease", Lines: c.filled()},
		{Title: "By hand", Lines: c.free()},
		{Title: "Guards", Lines: c.guards()},
		{Title: "Direction", Lines: c.direction()},
		{Title: "Idle", Lines: warm, Runs: idle},
		{Title: "Under load", Runs: load},
		{Title: "After " + words.Trim(in.AgainHours, 1) + " h", Lines: slices.Concat(c.retorque(), c.looseBolts(), c.endPlay(true))},
	} {
		if len(s.Lines)+len(s.Runs) > 0 {
			out.Stages = append(out.Stages, s)
		}
	}
	if c.job.Motor != nil {
		out.Cautions = append(out.Cautions, "It turns without warning: nobody in reach, no loose sleeves, hair or gloves. "+lockOff)
	} else if len(c.turning()) > 0 {
		out.Cautions = append(out.Cautions, "Keep hands, sleeves and hair off what turns. Let go and wait until it stands before you reach in.")
	}
	return out
}

// before is what is done and looked at first: hands go in, so what a motor turns is locked off.
func (c cards) before(in *parts.FirstRun) (out []plan.CardLine) {
	if c.job.Motor != nil {
		out = append(out, plan.CardLine{Do: "Supply locked off, but for the electrician’s trials, until guards are on and his page is signed"})
	}
	return append(out, seq.Map(in.Checks, func(check parts.Text) plan.CardLine { return plan.CardLine{Do: check.Value} })...)
}

// guards are those that the motor's page names, and the parts that are fixed guards; they go on
// when nobody turns by hand any more what they cover.
func (c cards) guards() (out []plan.CardLine) {
	m := c.job.Motor
	if m == nil {
		return nil
	}
	out = seq.Map(m.Guards, func(g parts.Text) plan.CardLine { return plan.CardLine{Do: words.Capital(g.Value) + ": on and shut"} })
	if len(m.Guards) == 0 {
		out = append(out, plan.CardLine{Do: "The job names no guard that stops the motor: cover what turns within reach"})
	}
	for _, p := range c.job.Parts {
		if p.For != parts.Guarding || m.Guarded(p.Title.Value) {
			continue
		}
		held := words.When(slices.ContainsFunc(c.job.Of(parts.BoltKind), func(j *parts.Joint) bool { return j.Holds(p.Name.Value) }), ", all its screws tight")
		out = append(out, plan.CardLine{Do: p.Title.Value + ": on" + held})
	}
	return out
}

// filled is what each bearing and each other port takes.
func (c cards) filled() (out []plan.CardLine) {
	for _, j := range c.bearings() {
		if j.Bearing.Sealed {
			continue // with its own grease
		}
		out = append(out, plan.CardLine{Do: c.bearingText(j) + ": filled at step " + strconv.Itoa(j.N) + ", as signed there"})
	}
	if c.job.Upkeep == nil {
		return out
	}
	for _, p := range c.job.Upkeep.Ports {
		if p.Place.Value != "" {
			out = append(out, plan.CardLine{Do: words.Capital(p.Place.Value), Wanted: p.Grease.Value + ", " + p.Amount.Value})
		}
	}
	return out
}

// free is what turns by hand, and the end play of its bearings.
func (c cards) free() (out []plan.CardLine) {
	for _, part := range c.turning() {
		apart := ""
		if n := c.coupledAt(); n > 0 && c.signedAt(part) {
			out = append(out, plan.CardLine{Do: part + ": turned by hand at step " + strconv.Itoa(n) + ", before it was coupled, as signed there"})
			continue
		} else if part == c.driven() {
			apart = " parted from the motor, no hand inside,"
		} else if c.job.Motor != nil && c.driven() == "" && !c.onAxle(part) {
			apart = " before the motor is on it,"
		}
		out = append(out, plan.CardLine{Do: "Turn " + part + " by hand," + apart + " three turns each way: nothing rubs, no tight place"})
	}
	if c.coupledAt() > 0 { // no gauge gets to it any more: it is as its step left it
		return out
	}
	return append(out, c.endPlay(false)...)
}

// signedAt tells whether the step in which the motor is coupled has a part felt by hand: the one that the motor drives, or
// all that turns where the job names none.
func (c cards) signedAt(part string) bool { return c.driven() == "" || part == c.driven() }

// direction is the rotation wanted of the motor, and what stops it.
func (c cards) direction() (out []plan.CardLine) {
	m := c.job.Motor
	if m == nil {
		return nil
	}
	shaft, turns, from := c.rotation()
	start := plan.CardLine{Do: "Start for a moment, seen from " + from, Wanted: turns}
	switch {
	case m.Rotation == "either":
		start.Do = "Start for a moment each way"
		start.Wanted = "both, as switched"
	case shaft != "":
		start.Do = "Start for a moment, nobody in line with an open end: " + shaft + " seen from " + from
	}
	out = append(out, start, plan.CardLine{Do: "Emergency stop tried, and let out: " + m.EmergencyStop.Value, Wanted: stops})
	return append(out, seq.Map(m.Guards, func(g parts.Text) plan.CardLine {
		return plan.CardLine{Do: "Opened for a moment while it runs, hands away, then shut: " + g.Value, Wanted: stops}
	})...)
}

// runs are the runs, idle and under load.
func (c cards) runs(in *parts.FirstRun) (idle, load []plan.RunRow) {
	list := in.Runs
	if len(list) == 0 {
		list = usualRuns
	}
	for i, r := range list {
		row := plan.RunRow{What: r.Load.Value, After: minutes(r.Minutes.Value)}
		row.After += words.When(i > 0 && r.Load.Value == list[i-1].Load.Value, " in all")
		if r.Speed.Value > 0 {
			row.Speed = words.Trim(r.Speed.Value, 1) + " rev/min"
		}
		if row.What != "" {
			load = append(load, row)
			continue
		}
		row.What = "idle"
		idle = append(idle, row)
	}
	return idle, load
}

// watched are the places of the job, or else every bearing.
func (c cards) watched(in *parts.FirstRun) (out []plan.Watched) {
	for _, one := range in.Watch {
		row := plan.Watched{Where: one.Place.Value}
		if j := c.pl.Joint(one.Bearing.Value); j != nil {
			row.Where = words.Spaced(j.Name)
		}
		if one.MostC.Value > 0 {
			row.Most = c.w.Heat(one.MostC.Value)
		}
		if row.Where != "" {
			out = append(out, row)
		}
	}
	if len(in.Watch) == 0 {
		out = append(out, seq.Map(c.bearings(), func(j *plan.JointPlan) plan.Watched { return plan.Watched{Where: words.Spaced(j.Name)} })...)
	}
	return out
}

// retorque is a line for each bolt joint, and one for all that join equal parts by equal
// bolts.
func (c cards) retorque() (out []plan.CardLine) {
	type kind struct{ a, b, bolt, torque string }
	var kinds []kind
	same := map[kind][]*plan.JointPlan{}
	for _, j := range c.pl.Joints {
		if j.Bolt == nil {
			continue
		}
		k := kind{j.A.Part, j.B.Part, j.Bolt.Ordered + j.Bolt.Size, c.torque(j.Bolt)}
		if same[k] == nil {
			kinds = append(kinds, k)
		}
		same[k] = append(same[k], j)
	}
	for _, k := range kinds {
		out = append(out, plan.CardLine{Do: c.boltText(same[k]...), Wanted: k.torque, Source: same[k][0].Bolt.KSource})
	}
	for _, j := range c.pl.Joints {
		if j.Slide != nil && j.Slide.Gripped {
			grip := c.pl.Part(j.A.Part).Clamp
			out = append(out, plan.CardLine{Do: grip.Screw + ", " + j.A.Title + " on " + j.B.Title, Wanted: c.w.Torque(grip.TorqueNm) + ", threads oiled"})
		}
	}
	return out
}

// fastener is something that is tightened.
var fastener = regexp.MustCompile(`(?i)^(bolt|screw|stud|nut)`)

// looseBolts are a line for what fixes the machine to the floor, and one for each thing that is
// bolted on by hand, by the step where that gives a torque.
func (c cards) looseBolts() (out []plan.CardLine) {
	for _, b := range c.pl.Bought {
		if b.Anchor {
			out = append(out, plan.CardLine{Do: words.CountOf(b.Quantity) + words.Lower(b.Item) + ", " + b.For, Wanted: "by its maker"})
		}
	}
	for _, e := range c.job.Loose {
		of := e.Item.Value
		what, _, _ := strings.Cut(words.Head(e.Buy.Value), " with ")
		if e.Part.Value != "" {
			of = c.pl.Part(e.Part.Value).Title
		}
		if j := c.pl.Joint(e.After.Value); j != nil && !e.Off && fastener.MatchString(what) {
			wanted := "none turns further by hand" // the job gives none
			if strings.Contains(e.How.Value, "torque") {
				wanted = "as step " + strconv.Itoa(j.N) + " has it"
			}
			wanted += words.When(c.offForMotor(of+"; "+e.How.Value), ", where it is on")
			out = append(out, plan.CardLine{Do: words.CountOf(e.Count) + words.Lower(what) + ", " + words.Head(of), Wanted: wanted})
		}
	}
	return out
}

// comesOff are words for what comes off before the motor goes on.
var comesOff = regexp.MustCompile(`(?i)((?:[a-z-]+(?: [a-z-]+)?,? (?:and )?)+)off\b`)

// offForMotor tells whether words name or hold, by screws, a thing that the notes of the motor take off before
// it goes on.
func (c cards) offForMotor(said string) bool {
	if c.job.Motor == nil {
		return false
	}
	said = strings.ToLower(said)
	for _, note := range c.job.Motor.Notes {
		for _, m := range comesOff.FindAllStringSubmatch(note.Value, -1) {
			for _, thing := range strings.FieldsFunc(strings.ReplaceAll(m[1], " and ", ","), func(r rune) bool { return r == ',' }) {
				if thing = strings.TrimSpace(strings.ToLower(thing)); thing != "" && regexp.MustCompile(`\b`+regexp.QuoteMeta(thing)+`s? (?:is |are )?(?:screwed|bolted)\b`).MatchString(said) {
					return true
				}
			}
		}
	}
	return false
}

// coupledAt is the step in which the motor, or the coupling to it, is put on; 0 where the job does
// not say.
func (c cards) coupledAt() int {
	if e := c.job.Coupled(); e != nil {
		if j := c.pl.Joint(e.After.Value); j != nil {
			return j.N
		}
	}
	return 0
}

// withMasses adds the mass of what a hand does not lift to things that come off, with the step that props what tips
// without it, and before a coupling the motor behind it.
func (c cards) withMasses(off []plan.Off) []string {
	coupled := func(o plan.Off) bool { return o.Loose != nil && o.Loose.Stands != nil }
	if coupling, ok := seq.Find(off, coupled); ok {
		for e := range seq.Refs(c.job.Loose) {
			if e.Stands != nil && e.Stands.On.Part != coupling.Loose.Stands.On.Part {
				off = slices.Insert(slices.Clone(off), 0, plan.Off{Title: words.Head(e.Item.Value), Loose: e})
			}
		}
	}
	return seq.Map(off, func(o plan.Off) string {
		if e := o.Loose; e != nil && e.MassKg > plan.LiftKg {
			return o.Title + " (" + c.w.RoundMass(e.MassKg, 1) + ", hoist" + c.propped(o.Title) + ")"
		}
		return o.Title
	})
}

// propped is the step that props what tips whenever something is off; empty for none.
func (c cards) propped(title string) string {
	j, ok := seq.Find(c.pl.Joints, func(j *plan.JointPlan) bool { return j.Hold != nil && slices.Contains(j.Hold.Later, title) })
	if !ok {
		return ""
	}
	return ", propped as in step " + strconv.Itoa(j.N)
}

// endPlay is a line for each bearing that is set; once the machine has run, with what to do
// where it has changed.
func (c cards) endPlay(run bool) (out []plan.CardLine) {
	for _, j := range c.bearings() {
		if b := j.Bearing; b.HasEndFloat {
			do := c.bearingText(j) + ": end play of " + turns(j).Title
			if run {
				off := slices.Concat(c.over(b.ShutBy), c.withMasses(b.ShutBy))
				if n := len(b.ShutBy) - 1; len(off) > 2 { // the row of its bolts names what is over it
					off = []string{"all over " + b.ShutBy[n].Title + ", and that,"}
				}
				do += "; else " + words.Join(" off, ", strings.Join(off, ", "), "step "+strconv.Itoa(cmp.Or(c.pl.Joint(b.SetBy), j).N))
			}
			out = append(out, plan.CardLine{Do: do, Wanted: c.float(j.Bearing.EndFloatMm), Source: "job file"})
		}
	}
	return out
}

// over lists the guards over the bolts of what comes off.
func (c cards) over(off []plan.Off) (out []string) {
	for _, j := range c.pl.Joints {
		if j.Bolt != nil && slices.ContainsFunc(off, func(o plan.Off) bool { return o.Of == j.A.Instance() || o.Of == j.B.Instance() }) {
			out = seq.Add(out, j.Bolt.Under...)
		}
	}
	return out
}

// float writes an end float, of which the negative side is preload.
func (c cards) float(r plan.Range) string {
	switch {
	case r.Min >= 0:
		return c.w.Setting(r.Min) + " – " + c.w.Setting(r.Max)
	case r.Max <= 0:
		return "none: preload " + c.w.Setting(-r.Max) + " – " + c.w.Setting(-r.Min)
	}
	return "preload " + c.w.Setting(-r.Min) + " – play " + c.w.Setting(r.Max)
}

// torque is what a bolt joint is tightened to, with its condition.
func (c cards) torque(p *plan.BoltPlan) string {
	if p.Soft != nil {
		return "alike, " + p.Soft.What + " compressed as its maker says; no torque is worked out"
	}
	if p.TorqueNm == 0 {
		return "tight; no torque is worked out"
	}
	text := c.w.Torque(p.TorqueNm) + ", threads " + p.Threads
	switch off := slices.Concat(p.Under, c.withMasses(p.Behind)); {
	case len(off) == 1:
		text = c.w.Torque(p.TorqueNm) + " when " + off[0] + " is off"
	case len(off) > 1:
		last := len(off) - 1
		text = c.w.Torque(p.TorqueNm) + " when " + strings.Join(off[:last], ", ") + " and " + off[last] + " are off"
	case len(p.ComesOff) > 0:
		text += "; first off, if on: " + words.Join(", ", p.ComesOff...)
	}
	return text
}

// boltText names the bolts of a joint by number, size and place; of several alike all, by
// the parts without their numbers.
func (c cards) boltText(joints ...*plan.JointPlan) string {
	j, count := joints[0], seq.Sum(joints, func(o *plan.JointPlan) int { return o.Bolt.Count })
	size, a, b := cmp.Or(j.Bolt.Ordered, j.Bolt.Size), j.A.Title, j.B.Title
	if len(joints) > 1 {
		a, b = j.A.PartTitle, j.B.PartTitle
	}
	return words.CountOf(count) + size + ", " + a + " to " + b
}

// bearingText names a bearing by its joint and designation.
func (c cards) bearingText(j *plan.JointPlan) string {
	return words.Capital(words.Spaced(j.Name)) + " " + j.Bearing.Bearing
}

func (c cards) bearings() (out []*plan.JointPlan) {
	return seq.Keep(c.pl.Joints, func(j *plan.JointPlan) bool { return j.Bearing != nil })
}

// turns is the side of a bearing that turns.
func turns(j *plan.JointPlan) plan.JointEnd {
	if j.Bearing.Rotating == "outer" {
		return j.B
	}
	return j.A
}

// turning are the parts that turn in bearings, of those that turn as one the one that the motor drives, else the first.
func (c cards) turning() (out []string) {
	with := map[parts.Instance]bool{}
	for _, j := range c.bearings() {
		of := turns(j)
		if with[of.Instance()] {
			continue
		}
		one, title := c.job.Turning(of.Instance()), of.Title
		maps.Copy(with, one)
		if m := c.job.Motor; m != nil && one[m.Drives.Instance()] {
			title = c.driven()
		}
		out = append(out, title)
	}
	return out
}

// onAxle tells whether what turns does so on an axle that stands, by the outer rings of its bearings: no motor sits on that.
func (c cards) onAxle(title string) bool {
	return slices.ContainsFunc(c.bearings(), func(j *plan.JointPlan) bool { return turns(j).Title == title && j.Bearing.Rotating == "outer" })
}

func minutes(v float64) string { return words.Trim(v, 1) + " min" }
