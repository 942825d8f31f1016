package read

import (
	"fmt"
	"math"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"sync"

	"centrepop/parts"
	"centrepop/parts/meant"
	"centrepop/parts/seq"
)

var (
	jointRefRE = sync.OnceValue(func() *regexp.Regexp {
		return regexp.MustCompile(`^([a-z0-9]+(?:-[a-z0-9]+)*)(?:#([1-9][0-9]{0,3}))?\.([a-z0-9]+(?:-[a-z0-9]+)*)$`)
	})
	fitPairForm = sync.OnceValue(func() *regexp.Regexp { return regexp.MustCompile(`^[A-Z]{1,2}[0-9]{1,2}/[a-z]{1,2}[0-9]{1,2}$`) })
)

// joints reads how the parts meet.
func (l *loader) joints() {
	job := l.job
	for _, f := range l.each("joints") {
		j, ok := f.joint()
		if !ok {
			continue
		}
		if i := slices.IndexFunc(job.Joints, func(o *parts.Joint) bool { return o.Name.Value == j.Name.Value }); i >= 0 {
			l.faultf(j.Name.Pos, "a name of its own for each joint", "the joint %s is already in line %d", j.Name.Value, job.Joints[i].Pos.Line)
			continue
		}
		meetAsBefore(job.Joints, j)
		job.Joints = append(job.Joints, j)
	}
	l.whole = l.sound(l.n, "joints") // what a joint names in vain hides no other's fault
	for _, j := range job.Joints {
		l.jointRefs(j)
	}
}

// meetAsBefore has two parts that are bolted once more, with nothing said of their faces, meet as the first joint of the two has
// it that says so.
func meetAsBefore(before []*parts.Joint, j *parts.Joint) {
	if j.Bolt == nil || j.Meet.Set() || j.OtherWay {
		return
	}
	through, into := j.Bolt.Through.Instance(), j.Bolt.Into.Instance()
	for _, o := range before {
		if o.Bolt == nil || !o.Meet.Set() {
			continue
		}
		m := o.Meet
		switch m.Pos = j.Pos; {
		case o.Bolt.Through.Instance() == through && o.Bolt.Into.Instance() == into:
		case o.Bolt.Through.Instance() == into && o.Bolt.Into.Instance() == through && !m.Level:
			m.First, m.Second = m.Second, m.First
		default:
			continue
		}
		j.Meet = m
		return
	}
}

func (f *fields) joint() (*parts.Joint, bool) {
	j := &parts.Joint{Pos: f.n.pos, Name: f.name("name")}
	kind, _ := f.oneOf()
	j.Kind = parts.JointKind(kind)
	switch j.Kind {
	case parts.PressKind:
		j.Press = subOf(f, kind, (*fields).pressJoint)
		f.spare("place", true, "place beside press", "delete place; level: how far it goes in")
	case parts.WeldKind:
		j.Weld = subOf(f, kind, (*fields).weldJoint)
	case parts.BoltKind:
		j.Bolt = subOf(f, kind, (*fields).boltJoint)
	case parts.BearingKind:
		j.Bearing = subOf(f, kind, (*fields).bearingJoint)
		f.spare("place", true, "place beside bearing", "delete place; the rings and their shoulders say where it sits")
	case ballKey:
		j.Kind, j.Bearing = parts.BearingKind, subOf(f, kind, (*fields).ballJoint)
	case parts.SlideKind:
		j.Slide = subOf(f, kind, (*fields).slideJoint)
		for _, key := range []string{"face", "level", "below", "rotate", "place"} {
			f.spare(key, j.Slide == nil || !j.Slide.Unkept(), key+" beside slide", "delete "+key+"; the shoulder gives the place of the hub, and the keyways its clock angle")
		}
	case parts.ScrewKind:
		j.Screw = subOf(f, kind, func(f *fields) *parts.ScrewJoint {
			return &parts.ScrewJoint{Screw: f.jointRef(f.val("screw")), Nut: f.jointRef(f.val("nut"))}
		})
		f.spare("rotate", true, "rotate beside screw", "delete rotate; at what angle a thread comes home lies in where it begins, which is not drawn")
	}
	j.Meet = f.meeting()
	j.Rotate = f.angle("rotate")
	j.OtherWay = f.yes("other-way-round")
	f.spare("other-way-round", j.Meet.Set(), "other-way-round beside face or level", "delete other-way-round; the faces say which way the parts look")
	j.InLine = f.lineRules()
	if place := f.sub("place"); place != nil {
		j.Place = place.placeOnFace(place.word("on"))
		switch j.Kind {
		case parts.BoltKind:
			f.boltPlace(j, place)
		case parts.WeldKind:
			for _, key := range []string{"face", "level", "other-way-round"} {
				f.spare(key, true, key+" beside place", "keep one of the two: on, with, top and gap in place say where the part stands and how it looks")
			}
		}
	}
	j.Anchored = f.name("anchored")
	j.Before = f.names("before")
	j.After = f.names("after")
	j.Do, j.Note = f.texts("do"), f.text("note")
	first, second := j.Ends()
	return j, j.Kind != "" && j.Name.Value != "" && first.Set() && second.Set()
}

// boltPlace takes from the place of a bolted part how the two meet, and refuses what such a place
// cannot have: its holes lie on its front or back, and bolts leave no gap.
func (f *fields) boltPlace(j *parts.Joint, in *fields) {
	p := j.Place
	j.Meet = parts.Meeting{Pos: p.Pos, First: parts.Face(p.With), Second: parts.Face(p.On)}
	if j.Rotate.Deg = p.TurnDeg(); p.Looks != "" {
		j.Rotate.Pos = p.Pos
	}
	for _, key := range []string{"face", "level", "rotate", "other-way-round"} {
		f.spare(key, true, key+" beside the place of a bolted part", "delete "+key+"; on, with and top in place say how the parts look")
	}
	for _, said := range [][2]string{{"on", p.On}, {"with", p.With}} {
		key, side := said[0], said[1]
		in.spare(key, side != "" && side != string(parts.Front) && side != string(parts.Back), "a bolted part stands "+key+" the "+side,
			"front or back; holes in other sides say themselves where the part stands: delete place")
	}
	for _, key := range []string{"from-left", "from-right", "from-bottom", "from-top"} {
		in.spare(key, true, key+" in the place of a bolted part", "at: where its origin lies from that of the other, or delete place: the holes say where it stands")
	}
	in.spare("gap", true, "gap in the place of a bolted part",
		"delete gap: bolts pull the faces together; a part between them is named in stack; what stays off, as a gland over its packing, goes under loose: with lies: its gap, and its nuts as buy")
}

func (f *fields) pressJoint() *parts.PressJoint {
	p := &parts.PressJoint{
		Shaft: f.jointRef(f.val("shaft")), Bore: f.jointRef(f.val("bore")), Friction: f.number("friction"),
		Method: f.word("method"), Clearance: f.length("clearance"), Length: f.length("length"),
	}
	if t := f.text("fit"); t.Value != "" {
		if fitPairForm().MatchString(t.Value) {
			p.Fit = t
		} else {
			f.faultf(t.Pos, f.g.key("fit").Example, "the fit is %s", parts.Quote(t.Value))
		}
	}
	return p
}

func (f *fields) weldJoint() *parts.WeldJoint {
	f.spare("ground", f.word("type") == "fillet", "a fillet is ground flush", "delete ground; a fillet carries by what stands out of its corner")
	return &parts.WeldJoint{
		Part: f.jointRef(f.val("part")), To: f.jointRef(f.val("to")), Type: f.word("type"), Size: f.length("size"),
		Process: f.word("process"), Length: f.length("length"), SquareUp: f.length("square-up"), Sides: f.count("sides"), SidesSet: f.given("sides"), Ground: f.word("ground"),
	}
}

func (f *fields) boltJoint() *parts.BoltJoint {
	f.spare("washer", f.word("head") == "countersunk", "a countersunk head lies in its cone, with no washer under it", "delete washer")
	b := &parts.BoltJoint{
		Through: f.jointRef(f.val("through")), Into: f.jointRef(f.val("into")), Head: f.word("head"),
		Washer: f.yes("washer"), Wide: f.yes("wide"), Adjust: f.length("adjust"), Nut: f.yes("nut"), Friction: f.text("friction"), Stud: f.name("stud"),
		Stack: seq.Keep(seq.Map(f.entries("stack"), f.jointRef), parts.JointRef.Set),
	}
	if t := f.text("bolt"); t.Value != "" {
		m := boltForm().FindStringSubmatch(strings.TrimSpace(t.Value))
		switch {
		case m == nil || !threadForm().MatchString(m[1]):
			f.faultf(t.Pos, `a size and a class such as "M10 8.8" or "1/2-13 UNC grade 5"`, "the bolt is %s", parts.Quote(t.Value))
		case m[2] == "" && b.Stud.Value == "":
			f.faultf(t.Pos, `"M10 8.8" or "1/2-13 UNC grade 5"`, "the bolt %s lacks its strength class", parts.Quote(t.Value))
		case m[2] != "" && b.Stud.Value != "":
			f.faultf(t.Pos, parts.Quote(strings.TrimSpace(m[1]))+": the size alone", "the bolt %s has a class, and %s is as strong as its own metal", parts.Quote(t.Value), b.Stud.Value)
		default:
			b.Size, b.Class, b.Pos = m[1], m[2], t.Pos
		}
	}
	return b
}

func (f *fields) bearingJoint() *parts.BearingJoint {
	b := &parts.BearingJoint{
		Bearing: f.text("bearing"), Cup: f.jointRef(f.val("cup")), Cone: f.jointRef(f.val("cone")),
		Rotating: f.word("rotating"), Load: f.word("load"),
		Bore: f.length("bore"), Outside: f.length("outside"), Width: f.length("width"), ConeWidth: f.length("cone-width"), Grease: f.text("grease"),
		Da: f.length("da"), Db: f.length("db"), CupDa: f.length("Da"), CupDb: f.length("Db"),
	}
	f.not(b.Bore, ">=", b.Outside, "a bore smaller than the outside", "the bearing's bore %s is not smaller than its outside %s")
	if lo, hi := f.pair("end-float"); lo.Set() && hi.Set() && lo.Mm >= hi.Mm {
		f.fault(f.n.get("end-float").pos, "the least end float is not below the most", "the smaller value first")
	} else if lo.Set() && hi.Set() {
		b.EndFloat = []parts.Length{lo, hi}
	}
	return b
}

// ballJoint reads a deep-groove ball bearing: its sizes are those of its designation where a table has that, else
// the three that are given.
func (f *fields) ballJoint() *parts.BearingJoint {
	b := &parts.BearingJoint{
		Ball: true, Bearing: f.text("bearing"), Cup: f.jointRef(f.val("housing")), Cone: f.jointRef(f.val("shaft")),
		Rotating: f.word("rotating"), Load: f.word("load"), Grease: f.text("grease"),
	}
	own, known := parts.DeepGrooveOf(b.Bearing.Value)
	for _, s := range []struct {
		key string
		to  *parts.Length
		mm  float64
	}{{"bore", &b.Bore, own.BoreMm}, {"outside", &b.Outside, own.OutsideMm}, {"width", &b.Width, own.WidthMm}} {
		given := f.length(s.key)
		right := s.key + ": " + strconv.FormatFloat(s.mm, 'f', -1, 64) + " mm, or another designation"
		switch {
		case !known && !f.given(s.key) && b.Bearing.Value != "":
			f.faultf(b.Bearing.Pos, s.key+": as its maker gives it", "no table here has %s, and its %s is not given", parts.Quote(b.Bearing.Value), s.key)
		case known && given.Set() && math.Abs(given.Mm-s.mm) > sameSizeMm:
			f.faultf(given.Pos, right, "%s is given as %s, and %s has another", s.key, given.Text, b.Bearing.Value)
		case known:
			given = parts.Length{Mm: s.mm, Text: strconv.FormatFloat(s.mm, 'f', -1, 64) + " mm", Pos: b.Bearing.Pos}
		}
		*s.to = given
	}
	f.not(b.Bore, ">=", b.Outside, "a bore smaller than the outside", "the bearing's bore %s is not smaller than its outside %s")
	f.spare("grease", b.Sealed(), "grease for a bearing that is sealed on both sides", "delete grease; it comes with its own")
	return b
}

// sameSizeMm is how far a size in inches may lie off that in millimetres: a rounding. Common practice, no source.
const sameSizeMm = 0.03

func (f *fields) slideJoint() *parts.SlideJoint {
	s := &parts.SlideJoint{
		Hub: f.jointRef(f.val("hub")), On: f.jointRef(f.val("on")),
		KeptBy: f.jointRef(f.val("kept-by")), Plate: f.jointRef(f.val("plate")),
	}
	if s.Unkept() && s.Plate.Set() {
		f.fault(s.Plate.Pos, "no nut is there for the plate to lie under", "kept-by: the thread of the shaft that the nut runs on")
	}
	if k := s.KeptBy; k.Set() && s.On.Set() && (k.Part != s.On.Part || k.Copy != s.On.Copy) {
		f.faultf(k.Pos, "a feature of "+s.On.Part+": the thread of a nut, the groove of a ring, or tapped holes in its end", "the hub sits on %s and is kept by %s", s.On.Part, k.Part)
	}
	return s
}

// meeting reads face (A-on-B) or level (A-with-B).
func (f *fields) meeting() parts.Meeting {
	m := parts.Meeting{Below: f.below()}
	if f.given("face") && f.given("level") {
		f.fault(f.n.keyPos("level"), "a joint has face and level", "keep one of the two")
		return parts.Meeting{}
	}
	read := func(key, between string) {
		if w := f.word(key); w != "" {
			a, b, _ := strings.Cut(w, between)
			m.Pos, m.First, m.Second = f.n.get(key).pos, parts.Face(a), parts.Face(b)
		}
	}
	switch {
	case f.given("face"):
		read("face", "-on-")
		f.spare("below", true, "below goes with level", "delete below")
	case f.given("level"):
		m.Level = true
		read("level", "-with-")
	default:
		f.spare("below", true, "below needs level", "level: front-with-front")
	}
	return m
}

// below reads how far an end lies under a face. What is to stand out of it is said by the face that it goes in by, or by a place.
func (f *fields) below() parts.Length {
	n := f.n.get("below")
	if n == nil {
		return parts.Length{}
	}
	if mm, wrong := parts.MmOf(n.text, f.units); wrong != "" || mm >= 0 {
		return f.length("below")
	}
	f.val("below")
	f.faultf(n.pos,
		"0 or more; where it stands out, in a weld place: {on: front, with: back, at: [0, 0], gap: -20} instead, by how far it goes in; in a press a shoulder and face",
		"%s is %s; it must not be negative", n.label, parts.Quote(n.text))
	return parts.Length{}
}

func (f *fields) placeOnFace(on string) *parts.Place {
	p := &parts.Place{
		Pos: f.n.pos, On: on, With: f.word("with"), Gap: f.length("gap"),
		FromLeft: f.length("from-left"), FromRight: f.length("from-right"),
		FromBottom: f.length("from-bottom"), FromTop: f.length("from-top"),
	}
	for _, pair := range [][2]string{{"from-left", "from-right"}, {"from-bottom", "from-top"}} {
		for _, key := range pair {
			f.spare(key, f.given("at"), "place has at and "+key, "keep one of the two: at places the first part's origin")
		}
		f.spare(pair[1], f.given(pair[0]), "place has "+pair[0]+" and "+pair[1], "one of the two: the first part's own size gives the other")
	}
	if f.given("at") {
		at := f.point("at")
		p.At = &at
	}
	right, wrong := "top", "front"
	if p.Edge() {
		right, wrong = wrong, right
	}
	p.Looks = f.word(right)
	f.spare(wrong, p.With != "", "the "+p.With+" of the first part lies on the face, and its "+wrong+" cannot point along it", right+": which way its "+right+" looks, such as "+right+": up")
	return p
}

// lineRules reads one list of features, or a list of such lists.
func (f *fields) lineRules() []parts.LineRule {
	lists := f.entries("in-line")
	if len(lists) == 0 {
		return nil
	}
	if lists[0].kind != listNode {
		lists = []*node{f.n.get("in-line")}
	}
	var out []parts.LineRule
	for _, one := range lists {
		refs, ok := f.items(one, 2, 20, "[part.feature, part.feature] or [part.feature, up]")
		if !ok {
			continue
		}
		rule := parts.LineRule{Pos: one.pos}
		for _, r := range refs {
			if r.kind == scalarNode && r.text == "up" {
				rule.Up = true
			} else if ref := f.jointRef(r); ref.Set() {
				rule.Refs = append(rule.Refs, ref)
			}
		}
		if len(rule.Refs) > 0 {
			out = append(out, rule)
		}
	}
	return out
}

// jointRef reads part.feature or part#2.feature.
func (r *reader) jointRef(n *node) parts.JointRef {
	text, ok := r.scalar(n, "a reference", refExample)
	if !ok {
		return parts.JointRef{}
	}
	m := jointRefRE().FindStringSubmatch(text)
	if m == nil {
		r.faultf(n.pos, jointRefExample, "%s is %s, which is no reference", n.label, parts.Quote(text))
		return parts.JointRef{}
	}
	ref := parts.JointRef{Part: m[1], Copy: 1, Feature: m[3], Pos: n.pos}
	if m[2] != "" {
		ref.Copy, _ = strconv.Atoi(m[2]) // four digits at most
	}
	return ref
}

// jointRefs checks that what a joint names is there.
func (l *loader) jointRefs(j *parts.Joint) {
	first, second := j.Ends()
	all := j.Refs()
	if j.Slide != nil && j.Slide.KeptBy.Set() {
		all = append(all, j.Slide.KeptBy)
	}
	all = append(all, seq.Flat(j.InLine, func(a parts.LineRule) []parts.JointRef { return a.Refs })...)
	for _, r := range all {
		l.feature(r)
	}
	if first.Instance() == second.Instance() {
		l.faultf(second.Pos, "two parts", "the joint %s joins %s to itself", j.Name.Value, first.Part)
	}
	l.partThere(j.Anchored)
	if j.Bolt != nil {
		l.partThere(j.Bolt.Stud)
	}
	for _, t := range slices.Concat(j.Before, j.After) {
		if t.Value != "" && t.Value == j.Name.Value {
			l.faultf(t.Pos, "another joint", "the joint %s names itself", t.Value)
			continue
		}
		l.jointThere(t)
	}
}

// partThere refuses the name of a part that the job does not have.
func (l *loader) partThere(t parts.Text) {
	if t.Value != "" && !l.broken && l.job.Part(t.Value) == nil {
		l.fault(t.Pos, l.noPart(t.Value), "a part of the job")
	}
}

// jointThere refuses the name of a joint that the job does not have.
func (l *loader) jointThere(t parts.Text) {
	if names := l.jointNames(); t.Value != "" && !slices.Contains(names, t.Value) {
		l.faultf(t.Pos, "the joints are "+list(names), "there is no joint %s%s", t.Value, meant.Perhaps(t.Value, names))
	}
}

func (l *loader) noPart(name string) string {
	return "there is no part " + name + " in the job" + meant.Perhaps(name, l.partNames())
}

func (l *loader) partNames() (names []string) {
	return seq.Map(l.job.Parts, func(p *parts.Part) string { return p.Name.Value })
}

func (l *loader) jointNames() (names []string) {
	return seq.Map(l.job.Joints, func(o *parts.Joint) string { return o.Name.Value })
}

// copyThere checks that a copy of a part is there, and returns the part; nil where it is not or the part
// has faults.
func (l *loader) copyThere(r parts.JointRef) *parts.Part {
	switch p := l.job.Part(r.Part); {
	case p == nil && !l.broken:
		l.fault(r.Pos, l.noPart(r.Part), "the parts are "+list(l.partNames()))
	case p == nil, len(l.doubt[p].errs) > 0:
	case r.Copy > p.Quantity:
		l.faultf(r.Pos, fmt.Sprintf("#1 to #%d, or a larger quantity", p.Quantity), "%s#%d is asked for and %d is made", r.Part, r.Copy, p.Quantity)
	default:
		return p
	}
	return nil
}

// feature checks that a feature is there, and returns its part; nil where it is not or the
// part has faults.
func (l *loader) feature(r parts.JointRef) *parts.Part {
	p := l.copyThere(r)
	if p == nil {
		return nil
	}
	if _, ok := p.Feature(r.Feature); !ok {
		names := p.FeatureNames()
		right := "the features of " + r.Part + " are " + list(names)
		if slices.Contains(parts.Sides, r.Feature) && p.Outline != nil {
			right += "; what meets its " + r.Feature + " names the outline, and the face by face, or on and with of place"
		}
		l.faultf(r.Pos, right, "the part %s has no feature %s%s", r.Part, r.Feature, meant.Perhaps(r.Feature, names))
		return nil
	}
	return p
}
