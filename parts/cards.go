package parts

import (
	"cmp"
	"math"
	"slices"
	"strconv"

	"centrepop/parts/meant"
)

// FirstRun is what a machine needs at its first run besides what its joints
// say.
type FirstRun struct {
	Pos        Pos
	Checks     []Text  // before it turns
	WarmUp     Number  // minutes before the start; 0 if none
	WarmUpHow  Text    // what warms, and how
	Runs       []Run   // in order; empty if the job says none
	Watch      []Watch // where the temperature is taken
	AgainHours float64 // bolts and end play are looked at again after so many hours
}

// Run is one stretch of a first run.
type Run struct {
	Pos     Pos
	Minutes Number
	Speed   Number // rev/min of what the job turns; 0 if not said
	Load    Text   // empty runs idle
}

// Watch is a place whose temperature is watched: a bearing joint or a place in
// words.
type Watch struct {
	Pos     Pos
	Bearing Text
	Place   Text
	MostC   Number // stop above, °C
}

// Upkeep is what wears, and what is greased and tightened.
type Upkeep struct {
	Pos   Pos
	Ports []Port
	Bolts []Retighten
	Wear  []Wear
}

// Port is a place to grease or oil: that of a bearing joint, or one in words.
type Port struct {
	Pos     Pos
	Bearing Text
	Place   Text
	Grease  Text // empty: as the bearing says
	Amount  Text // empty: as the bearing's size asks
	Every   Text
}

// Retighten is a bolt joint to look at.
type Retighten struct {
	Pos   Pos
	Joint Text
	Every Text
}

// Wear is a part of the job, or a bought item, that wears.
type Wear struct {
	Pos   Pos
	Part  Text
	Item  Text
	Look  Text // what to look at, and when to change it
	Every Text
}

// Motor is the maker's plate of a motor and what the electrician needs to know
// of the machine. Only which way it turns is reasoned with.
type Motor struct {
	Pos           Pos
	Maker         Text
	KW, HP        Number // one of the two, as on the plate
	Volts         Text
	Phases        int
	Hz, Amps      Number
	RPM           Number // of the motor
	OutRPM        Number // of the gear's output
	Frame         Text
	Flange        Text
	Enclosure     Text
	Rotation      string   // clockwise, counter-clockwise or either
	SeenFrom      string   // drive-end or non-drive-end
	Drives        JointRef // the step of a shaft that it turns; may be unset
	Through       string   // coupling, reversing-gear, belt or gear-pair
	Earth         Text
	EmergencyStop Text
	Guards        []Text // interlocked
	Notes         []Text
}

// WattsPerHP is a horsepower of 550 foot-pounds a second.
const WattsPerHP = 745.7

// Watts is the power on the plate, 0 where it is not given.
func (m *Motor) Watts() float64 { return 1000*m.KW.Value + WattsPerHP*m.HP.Value }

// OutputNm is the torque of that power at the output, losses left out: P / (2 π n), 0 where the
// plate gives no speed.
func (m *Motor) OutputNm() float64 {
	rpm := cmp.Or(m.OutRPM.Value, m.RPM.Value)
	if rpm == 0 {
		return 0
	}
	return 60 * m.Watts() / (2 * math.Pi * rpm)
}

// TurnsClockwise tells how the shaft turns that a motor drives, seen from beyond
// its end at the motor. Behind a motor in line one looks the same way; a belt or a
// pair of gears beside it has both shaft ends on the side that one looks from.
func (m *Motor) TurnsClockwise() bool {
	clockwise := m.Rotation == "clockwise"
	if m.InLine() != (m.SeenFrom == "non-drive-end") {
		clockwise = !clockwise
	}
	if m.Through == "reversing-gear" || m.Through == "gear-pair" {
		clockwise = !clockwise
	}
	return clockwise
}

// InLine tells whether the motor looks at the end of the shaft that it drives.
func (m *Motor) InLine() bool { return m.Through == "coupling" || m.Through == "reversing-gear" }

// cards reads what the sheets at the end of the packet need; the joints are
// read by then.
func (l *loader) cards(n *node, job *Job) {
	f := &fields{&l.reader, n, jobGroup}
	c := &cardReader{l: l, job: job, whole: l.sound(n, "joints")}
	job.FirstRun = c.firstRun(f.sub("first-run"))
	job.Upkeep = c.upkeep(f.sub("upkeep"))
	if job.Motor = motor(f.sub("motor")); job.Motor != nil && job.Motor.Drives.Set() {
		l.turned(job)
	}
}

// cardReader knows the joints that cards refer to; whole says that all of them
// could be read.
type cardReader struct {
	l     *loader
	job   *Job
	whole bool
}

func (c *cardReader) firstRun(f *fields) *FirstRun {
	if f == nil {
		return nil
	}
	r := &FirstRun{Pos: f.n.pos, Checks: f.texts("checks"), AgainHours: f.numberOr("again-after")}
	if w := f.sub("warm-up"); w != nil {
		r.WarmUp, r.WarmUpHow = w.number("minutes"), w.text("how")
	}
	for _, e := range f.each("runs") {
		r.Runs = append(r.Runs, Run{Pos: e.n.pos, Minutes: e.number("minutes"), Speed: e.number("speed"), Load: e.text("load")})
		if i := len(r.Runs) - 1; i > 0 && r.Runs[i].Load.Value == "" && r.Runs[i-1].Load.Value != "" && !e.given("load") {
			f.fault(e.n.pos, "an idle run comes after one under load", "the idle runs first")
		}
	}
	r.Watch = eachOf(f, "watch", func(e *fields) Watch {
		w := Watch{Pos: e.n.pos, MostC: e.number("most")}
		w.Bearing, w.Place = c.place(e)
		return w
	})
	return r
}

// numberOr is a number, or the key's default.
func (f *fields) numberOr(name string) float64 {
	if v := f.number(name); v.Pos.Line > 0 {
		return v.Value
	}
	v, _ := digits(f.g.key(name).Default)
	return v
}

// place reads a bearing joint or a place in words.
func (c *cardReader) place(f *fields) (bearing, place Text) {
	switch key, _ := f.oneOf(); key {
	case "bearing":
		return c.joint(f, key, BearingKind), Text{}
	case "place":
		return Text{}, f.text(key)
	}
	return Text{}, Text{}
}

// joint reads the name of a joint of some kind.
func (c *cardReader) joint(f *fields, key string, kind JointKind) Text {
	t := f.name(key)
	if t.Value == "" || !c.whole {
		return t
	}
	var names []string
	for _, j := range c.job.Joints {
		if j.Kind == kind {
			names = append(names, j.Name.Value)
		}
	}
	if slices.Contains(names, t.Value) {
		return t
	}
	right := "the " + string(kind) + " joints are " + all(names)
	if len(names) == 0 {
		right = "the job has no " + string(kind) + " joint"
	}
	f.faultf(t.Pos, right, "there is no %s joint %s%s", kind, t.Value, meant.Perhaps(t.Value, names))
	return Text{}
}

func (c *cardReader) upkeep(f *fields) *Upkeep {
	if f == nil {
		return nil
	}
	u := &Upkeep{Pos: f.n.pos}
	for _, e := range f.each("ports") {
		p := Port{Pos: e.n.pos, Grease: e.text("grease"), Amount: e.text("amount"), Every: every(e)}
		p.Bearing, p.Place = c.place(e)
		if p.Place.Value != "" && (!e.given("grease") || !e.given("amount")) {
			f.fault(p.Place.Pos, "a port without a bearing needs grease and amount", "both: only at a bearing is the amount worked out")
		}
		u.Ports = append(u.Ports, p)
	}
	u.Bolts = eachOf(f, "bolts", func(e *fields) Retighten {
		return Retighten{Pos: e.n.pos, Joint: c.joint(e, "joint", BoltKind), Every: every(e)}
	})
	u.Wear = eachOf(f, "wear", c.wear)
	return u
}

// every reads how often something is done; a number alone has no unit.
func every(f *fields) Text {
	t := f.text("every")
	if _, err := strconv.ParseFloat(t.Value, 64); err == nil {
		f.fault(t.Pos, t.Value+" says how many, and not of what", "a number with its unit, such as every: "+t.Value+" h")
		return Text{}
	}
	return t
}

// wear reads a part of the job, or an item in words.
func (c *cardReader) wear(f *fields) Wear {
	w := Wear{Pos: f.n.pos, Look: f.text("look"), Every: every(f)}
	switch key, _ := f.oneOf(); key {
	case "item":
		w.Item = f.text(key)
	case "part":
		if w.Part = f.name(key); w.Part.Value != "" && !c.l.broken && c.job.Part(w.Part.Value) == nil {
			f.fault(w.Part.Pos, c.job.noPart(w.Part.Value), "a part of the job, or item with words for what is bought")
		}
	}
	return w
}

// turned checks that what the motor turns is a step of a turned part.
func (l *loader) turned(job *Job) {
	ref := job.Motor.Drives
	n := len(l.errs)
	if l.jointFeature(job, ref); len(l.errs) > n {
		return
	}
	p := job.Part(ref.Part)
	if p == nil || len(l.doubt[p].errs) > 0 {
		return
	}
	var names []string
	if p.Profile != nil {
		for _, s := range p.Profile.Outside {
			names = append(names, s.Name.Value)
		}
	}
	if !slices.Contains(names, ref.Feature) {
		l.faultf(ref.Pos, "an outside step of a turned part", "%s.%s is no step of a shaft", ref.Part, ref.Feature)
	}
}

// motor reads the maker's plate.
func motor(f *fields) *Motor {
	if f == nil {
		return nil
	}
	m := &Motor{
		Pos: f.n.pos, Maker: f.text("maker"), Volts: f.text("volts"), Phases: f.count("phases"), Hz: f.number("hz"), Amps: f.number("amps"),
		RPM: f.number("speed"), OutRPM: f.number("output-speed"), Frame: f.text("frame"), Flange: f.text("flange"), Enclosure: f.text("enclosure"),
		Rotation: f.word("rotation"), SeenFrom: f.word("seen-from"), Earth: f.text("earth"), EmergencyStop: f.text("emergency-stop"),
		Guards: f.texts("guards"), Notes: f.texts("notes"), Through: f.word("through"),
	}
	if f.given("drives") {
		m.Drives = f.jointRef(f.val("drives"))
	}
	switch key, _ := f.oneOf(); key {
	case "kw":
		m.KW = f.number(key)
	case "hp":
		m.HP = f.number(key)
	}
	return m
}
