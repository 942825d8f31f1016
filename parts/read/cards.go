package read

import (
	"slices"
	"strconv"

	"centrepop/parts"
	"centrepop/parts/meant"
)

// cards reads what the sheets at the end of the packet need; the joints are
// read by then.
func (l *loader) cards(n *node, job *parts.Job) {
	f := &fields{&l.reader, n, jobGroup}
	c := &cardReader{l: l, job: job, whole: l.sound(n, "joints")}
	job.FirstRun = subOf(f, "first-run", c.firstRun)
	job.Upkeep = subOf(f, "upkeep", c.upkeep)
	if job.Motor = subOf(f, "motor", motor); job.Motor != nil && job.Motor.Drives.Set() {
		l.turned(job)
	}
}

// cardReader knows the joints that cards refer to; whole says that all of them
// could be read.
type cardReader struct {
	l     *loader
	job   *parts.Job
	whole bool
}

func (c *cardReader) firstRun(f *fields) *parts.FirstRun {
	r := &parts.FirstRun{Pos: f.n.pos, Checks: f.texts("checks"), AgainHours: f.numberOr("again-after")}
	if w := f.sub("warm-up"); w != nil {
		r.WarmUp, r.WarmUpHow = w.number("minutes"), w.text("how")
	}
	for _, e := range f.each("runs") {
		r.Runs = append(r.Runs, parts.Run{Pos: e.n.pos, Minutes: e.number("minutes"), Speed: e.number("speed"), Load: e.text("load")})
		if i := len(r.Runs) - 1; i > 0 && r.Runs[i].Load.Value == "" && r.Runs[i-1].Load.Value != "" && !e.given("load") {
			f.fault(e.n.pos, "an idle run comes after one under load", "the idle runs first")
		}
	}
	r.Watch = eachOf(f, "watch", func(e *fields) parts.Watch {
		w := parts.Watch{Pos: e.n.pos, MostC: e.number("most")}
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
	v, _ := parts.WholeOf(f.g.key(name).Default)
	return v
}

// place reads a bearing joint or a place in words.
func (c *cardReader) place(f *fields) (bearing, place parts.Text) {
	switch key, _ := f.oneOf(); key {
	case "bearing":
		return c.joint(f, key, parts.BearingKind), parts.Text{}
	case "place":
		return parts.Text{}, f.text(key)
	}
	return parts.Text{}, parts.Text{}
}

// joint reads the name of a joint of some kind.
func (c *cardReader) joint(f *fields, key string, kind parts.JointKind) parts.Text {
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
	return parts.Text{}
}

func (c *cardReader) upkeep(f *fields) *parts.Upkeep {
	u := &parts.Upkeep{Pos: f.n.pos}
	for _, e := range f.each("ports") {
		p := parts.Port{Pos: e.n.pos, Grease: e.text("grease"), Amount: e.text("amount"), Every: every(e)}
		p.Bearing, p.Place = c.place(e)
		if p.Place.Value != "" && (!e.given("grease") || !e.given("amount")) {
			f.fault(p.Place.Pos, "a port without a bearing needs grease and amount", "both: only at a bearing is the amount worked out")
		}
		u.Ports = append(u.Ports, p)
	}
	u.Bolts = eachOf(f, "bolts", func(e *fields) parts.Retighten {
		return parts.Retighten{Pos: e.n.pos, Joint: c.joint(e, "joint", parts.BoltKind), Every: every(e)}
	})
	u.Wear = eachOf(f, "wear", c.wear)
	return u
}

// every reads how often something is done; a number alone has no unit.
func every(f *fields) parts.Text {
	t := f.text("every")
	if _, err := strconv.ParseFloat(t.Value, 64); err == nil {
		f.fault(t.Pos, t.Value+" says how many, and not of what", "a number with its unit, such as every: "+t.Value+" h")
		return parts.Text{}
	}
	return t
}

// wear reads a part of the job, or an item in words.
func (c *cardReader) wear(f *fields) parts.Wear {
	w := parts.Wear{Pos: f.n.pos, Look: f.text("look"), Every: every(f)}
	switch key, _ := f.oneOf(); key {
	case "item":
		w.Item = f.text(key)
	case "part":
		if w.Part = f.name(key); w.Part.Value != "" && !c.l.broken && c.job.Part(w.Part.Value) == nil {
			f.fault(w.Part.Pos, noPart(c.job, w.Part.Value), "a part of the job, or item with words for what is bought")
		}
	}
	return w
}

// turned checks that what the motor turns is a step of a turned part.
func (l *loader) turned(job *parts.Job) {
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
func motor(f *fields) *parts.Motor {
	m := &parts.Motor{
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
