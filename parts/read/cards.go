package read

import (
	"slices"
	"strconv"

	"centrepop/parts"
	"centrepop/parts/meant"
	"centrepop/parts/seq"
)

// cards reads what the sheets at the end of the packet need; the joints are
// read by then.
func (l *loader) cards() {
	l.job.FirstRun, l.job.Upkeep, l.job.Motor = subOf(l.fields, "first-run", l.firstRun), subOf(l.fields, "upkeep", l.upkeep), subOf(l.fields, "motor", motor)
	if l.job.Motor != nil && l.job.Motor.Drives.Set() {
		l.turned()
	}
}

func (l *loader) firstRun(f *fields) *parts.FirstRun {
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
		w.Bearing, w.Place = l.spot(e)
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

func (l *loader) spot(f *fields) (bearing, place parts.Text) {
	switch key, _ := f.oneOf(); key {
	case "bearing":
		return l.jointOf(f, key, parts.BearingKind), parts.Text{}
	case "place":
		return parts.Text{}, f.text(key)
	}
	return parts.Text{}, parts.Text{}
}

func (l *loader) jointOf(f *fields, key string, kind parts.JointKind) parts.Text {
	t := f.name(key)
	if t.Value == "" || !l.whole {
		return t
	}
	names := seq.Map(l.job.Of(kind), func(j *parts.Joint) string { return j.Name.Value })
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

func (l *loader) upkeep(f *fields) *parts.Upkeep {
	u := &parts.Upkeep{Pos: f.n.pos}
	for _, e := range f.each("ports") {
		p := parts.Port{Pos: e.n.pos, Grease: e.text("grease"), Amount: e.text("amount"), Every: every(e)}
		p.Bearing, p.Place = l.spot(e)
		if p.Place.Value != "" && (!e.given("grease") || !e.given("amount")) {
			f.fault(p.Place.Pos, "a port without a bearing needs grease and amount", "both: only at a bearing is the amount worked out")
		}
		u.Ports = append(u.Ports, p)
	}
	u.Bolts = eachOf(f, "bolts", func(e *fields) parts.Retighten {
		return parts.Retighten{Joint: l.jointOf(e, "joint", parts.BoltKind), Every: every(e)}
	})
	u.Wear = eachOf(f, "wear", l.wear)
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
func (l *loader) wear(f *fields) parts.Wear {
	w := parts.Wear{Pos: f.n.pos, Look: f.text("look"), Every: every(f)}
	switch key, _ := f.oneOf(); key {
	case "item":
		w.Item = f.text(key)
	case "part":
		if w.Part = f.name(key); w.Part.Value != "" && !l.broken && l.job.Part(w.Part.Value) == nil {
			f.fault(w.Part.Pos, l.noPart(w.Part.Value), "a part of the job, or item with words for what is bought")
		}
	}
	return w
}

// turned checks that what the motor turns is a step of a turned part.
func (l *loader) turned() {
	ref := l.job.Motor.Drives
	if p := l.feature(ref); p != nil && !slices.Contains(p.FeatureNames(parts.OutsideFeature), ref.Feature) {
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
