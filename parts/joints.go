package parts

import (
	"fmt"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"sync"

	"centrepop/parts/meant"
)

// JointKind is how two parts are joined.
type JointKind string

// The kinds of joint.
const (
	PressKind   JointKind = "press"
	WeldKind    JointKind = "weld"
	BoltKind    JointKind = "bolt"
	BearingKind JointKind = "bearing"
	SlideKind   JointKind = "slide"
)

// JointRef points at a feature of one copy of a part: "part.feature", or
// "part#2.feature" for the second of several equal parts. Features are those
// of a Ref, the names of hole groups, slots and radial features, top, and
// the large-end and small-end of a cone, the mouth and round-end of a
// transition.
type JointRef struct {
	Part    string
	Copy    int // from 1
	Feature string
	Pos     Pos
}

// Set tells whether the reference was given.
func (r JointRef) Set() bool { return r.Part != "" }

// Joint is how a first part meets a second. The first is the shaft of a press
// fit, the part welded on, the part bolts go through, the one with the
// bearing's cone, or the hub of a slide; the second is what it goes to. Exactly
// one of Press, Weld, Bolt, Bearing and Slide is set.
type Joint struct {
	Pos      Pos
	Name     Text
	Kind     JointKind
	Press    *PressJoint
	Weld     *WeldJoint
	Bolt     *BoltJoint
	Bearing  *BearingJoint
	Slide    *SlideJoint
	Meet     Meeting
	Rotate   Angle // of the first part's TOP from the second's, clockwise seen from the second's front
	OtherWay bool  // the parts look opposite ways; only where Meet does not say
	InLine   []LineRule
	Place    *Place // nil if not said
	Anchored Text   // name of a part that is fixed to the floor before this step; empty if none is
	Before   []Text // names of joints that come later
	After    []Text // names of joints that come earlier
	Note     Text
}

// Ends returns the first and the second part's feature.
func (j *Joint) Ends() (first, second JointRef) {
	switch {
	case j.Press != nil:
		return j.Press.Shaft, j.Press.Bore
	case j.Weld != nil:
		return j.Weld.Part, j.Weld.To
	case j.Bolt != nil:
		return j.Bolt.Through, j.Bolt.Into
	case j.Bearing != nil:
		return j.Bearing.Cone, j.Bearing.Cup
	case j.Slide != nil:
		return j.Slide.Hub, j.Slide.On
	}
	return JointRef{}, JointRef{}
}

// Clamped are the features of the parts that lie between what the joint ends
// in: the stack of bolts, or the plate under the nut of a hub.
func (j *Joint) Clamped() []JointRef {
	switch {
	case j.Bolt != nil:
		return j.Bolt.Stack
	case j.Slide != nil && j.Slide.Plate.Set():
		return []JointRef{j.Slide.Plate}
	}
	return nil
}

// Refs are the features of the parts that a joint holds: those it ends in, and those
// that lie between.
func (j *Joint) Refs() []JointRef {
	first, second := j.Ends()
	return append([]JointRef{first, second}, j.Clamped()...)
}

// Names tells whether a joint holds a feature of a part, of whichever copy.
func (j *Joint) Names(part, feature string) bool {
	return j.Some(func(ref JointRef) bool { return ref.Part == part && ref.Feature == feature })
}

// Some tells whether f is true of one of Refs.
func (j *Joint) Some(f func(JointRef) bool) bool {
	first, second := j.Ends()
	return f(first) || f(second) || slices.ContainsFunc(j.Clamped(), f)
}

// Meeting says which faces set the axial place: First and Second touch
// ("back-on-front"), or with Level look the same way and are level
// ("front-with-front"), except that the inner part's end lies Below under the
// outer part's face. Unset if Pos is zero.
type Meeting struct {
	Pos           Pos
	First, Second Face
	Level         bool
	Below         Length
}

// Set tells whether the meeting was given.
func (m Meeting) Set() bool { return m.Pos.Line > 0 }

// Place says where the first part of a joint stands on the second where they
// share no axis. Faces are front and back and the four edges of the front view.
// Directions and distances are as seen by who looks at the second's face On.
type Place struct {
	Pos      Pos
	On, With string // faces of the second and the first part
	// At most one of each pair is set: distances from an edge of the face to the
	// nearest of the first part.
	FromLeft, FromRight, FromBottom, FromTop Length
	// At is where the first part's origin lies, from the second's; nil if the
	// distances say it.
	At *Point
	// Looks is which way the first part's TOP points, or where an edge lies on
	// the face its front looks: up, down, left or right; empty if not said.
	Looks string
	Gap   Length // between the faces, below 0 where the first part goes in
}

// Edge tells whether the first part stands on an edge of its front view.
func (p *Place) Edge() bool { return p.With != string(Front) && p.With != string(Back) }

// LineRule lists features that must lie at one clock angle of the assembly.
// Up asks besides that this is the assembly's TOP.
type LineRule struct {
	Pos  Pos
	Refs []JointRef
	Up   bool
}

// PressJoint is an interference fit.
type PressJoint struct {
	Shaft, Bore JointRef
	Fit         Text   // such as H7/p6; empty takes the limits of both features
	Friction    Number // 0.02 to 0.5; unset takes the materials' span
	Method      string // press, heat or cool
	Clearance   Length // on diameter while joining hot or cold; unset takes the usual
	Length      Length // engaged; unset takes the shorter step
}

// WeldJoint is a weld along a round or a stated length.
type WeldJoint struct {
	Part, To JointRef
	Type     string // fillet, v, bevel or square
	Size     Length // leg of a fillet; unset takes the usual
	Process  string // MAG, MIG, MMA, TIG, flux-cored, metal-cored or self-shielded
	Length   Length // unset is all round
	SquareUp Length // metal left on each face for facing afterwards; unset takes the usual
	Sides    int    // 1 or 2
	Ground   string // inside, outside or both, where it is ground flush; empty for nowhere
}

// BoltJoint is a ring of bolts through one part, perhaps others, into threads
// or nuts.
type BoltJoint struct {
	Through, Into JointRef
	Stack         []JointRef // between Through and Into
	Size          string     // M10, 1/2-13 UNC
	Class         string     // 8.8, grade 5; empty for a made stud
	Pos           Pos        // of size and class
	Head          string     // hex or socket
	Washer        bool
	Nut           bool
	Friction      Text // surface condition: dry, lubricated, ...
	Stud          Text // name of a part that serves as stud; empty for bought bolts
}

// BearingJoint is a tapered roller bearing between shaft and housing.
type BearingJoint struct {
	Bearing       Text
	Cup, Cone     JointRef
	Rotating      string // inner or outer
	Load          string // light, normal or heavy
	Bore, Outside Length
	Width         Length   // T, over both rings
	ConeWidth     Length   // B, of the cone alone; optional
	Da, Db        Length   // abutments on the shaft, as makers write da and db; optional
	CupDa, CupDb  Length   // abutments in the housing, as makers write Da and Db; optional
	EndFloat      []Length // least and most, negative is preload; empty if another bearing sets it
	Grease        Text
}

// SlideJoint is a hub that slides on a shaft with a key, up to a shoulder, and
// is kept there by a nut, a retaining ring or a plate on the shaft's end.
type SlideJoint struct {
	Hub, On JointRef // the bore, and the step of the shaft
	KeptBy  JointRef // of the shaft: the thread of a nut, the groove of a ring, or the tapped holes of an end plate
	Plate   JointRef // bore of a part under the nut; may be unset
}

var (
	jointRefRE = sync.OnceValue(func() *regexp.Regexp {
		return regexp.MustCompile(`^([a-z0-9]+(?:-[a-z0-9]+)*)(?:#([1-9][0-9]{0,3}))?\.([a-z0-9]+(?:-[a-z0-9]+)*)$`)
	})
	fitPairForm = sync.OnceValue(func() *regexp.Regexp { return regexp.MustCompile(`^[A-Z]{1,2}[0-9]{1,2}/[a-z]{1,2}[0-9]{1,2}$`) })
	boltForm    = sync.OnceValue(func() *regexp.Regexp {
		return regexp.MustCompile(`^(.+?)(?:\s+((?i:[0-9]{1,2}\.[0-9]|[AC][0-9]-[0-9]{2}|(?:ASTM )?A574|(?:SAE )?(?:grade|gr) ?[0-9])))?$`)
	})
)

// joints reads how the parts meet.
func (l *loader) joints(n *node, job *Job) {
	for _, f := range (&fields{&l.reader, n, jobGroup}).each("joints") {
		j, ok := f.joint()
		if !ok {
			continue
		}
		if i := slices.IndexFunc(job.Joints, func(o *Joint) bool { return o.Name.Value == j.Name.Value }); i >= 0 {
			l.faultf(j.Name.Pos, "a name of its own for each joint", "the joint %s is already in line %d", j.Name.Value, job.Joints[i].Pos.Line)
			continue
		}
		job.Joints = append(job.Joints, j)
	}
	for _, j := range job.Joints {
		l.jointRefs(job, j)
	}
}

func (f *fields) joint() (*Joint, bool) {
	j := &Joint{Pos: f.n.pos, Name: f.name("name")}
	kind, _ := f.oneOf()
	j.Kind = JointKind(kind)
	switch j.Kind {
	case PressKind:
		j.Press = f.sub(kind).pressJoint()
	case WeldKind:
		j.Weld = f.sub(kind).weldJoint()
	case BoltKind:
		j.Bolt = f.sub(kind).boltJoint()
	case BearingKind:
		j.Bearing = f.sub(kind).bearingJoint()
	case SlideKind:
		j.Slide = f.sub(kind).slideJoint()
		for _, key := range []string{"face", "level", "below", "rotate", "place"} {
			if f.given(key) {
				f.fault(f.n.keyPos(key), key+" beside slide", "delete "+key+"; the shoulder gives the place of the hub, and the keyways its clock angle")
			}
		}
	}
	j.Meet = f.meeting()
	j.Rotate = f.angle("rotate")
	j.OtherWay = f.yes("other-way-round")
	if f.given("other-way-round") && j.Meet.Set() {
		f.fault(f.n.keyPos("other-way-round"), "other-way-round beside face or level", "delete other-way-round; the faces say which way the parts look")
	}
	j.InLine = f.lineRules()
	if place := f.sub("place"); place != nil {
		j.Place = place.placeOnFace(place.word("on"))
	}
	j.Anchored = f.name("anchored")
	j.Before = f.names("before")
	j.After = f.names("after")
	j.Note = f.text("note")
	first, second := j.Ends()
	return j, j.Kind != "" && j.Name.Value != "" && first.Set() && second.Set()
}

func (f *fields) pressJoint() *PressJoint {
	if f == nil {
		return nil
	}
	p := &PressJoint{
		Shaft: f.jointRef(f.val("shaft")), Bore: f.jointRef(f.val("bore")), Friction: f.number("friction"),
		Method: f.word("method"), Clearance: f.length("clearance"), Length: f.length("length"),
	}
	if t := f.text("fit"); t.Value != "" {
		if fitPairForm().MatchString(t.Value) {
			p.Fit = t
		} else {
			f.faultf(t.Pos, f.g.key("fit").Example, "the fit is %s", quote(t.Value))
		}
	}
	return p
}

func (f *fields) weldJoint() *WeldJoint {
	if f == nil {
		return nil
	}
	if f.word("type") == "fillet" && f.given("ground") {
		f.fault(f.n.keyPos("ground"), "a fillet is ground flush", "delete ground; a fillet carries by what stands out of its corner")
	}
	return &WeldJoint{
		Part: f.jointRef(f.val("part")), To: f.jointRef(f.val("to")), Type: f.word("type"), Size: f.length("size"),
		Process: f.word("process"), Length: f.length("length"), SquareUp: f.length("square-up"), Sides: f.count("sides"), Ground: f.word("ground"),
	}
}

func (f *fields) boltJoint() *BoltJoint {
	if f == nil {
		return nil
	}
	b := &BoltJoint{
		Through: f.jointRef(f.val("through")), Into: f.jointRef(f.val("into")), Head: f.word("head"),
		Washer: f.yes("washer"), Nut: f.yes("nut"), Friction: f.text("friction"), Stud: f.name("stud"),
	}
	for _, item := range f.entries("stack") {
		if r := f.jointRef(item); r.Set() {
			b.Stack = append(b.Stack, r)
		}
	}
	if t := f.text("bolt"); t.Value != "" {
		m := boltForm().FindStringSubmatch(strings.TrimSpace(t.Value))
		switch {
		case m == nil || !threadForm().MatchString(m[1]):
			f.faultf(t.Pos, `a size and a class such as "M10 8.8" or "1/2-13 UNC grade 5"`, "the bolt is %s", quote(t.Value))
		case m[2] == "" && b.Stud.Value == "":
			f.faultf(t.Pos, `"M10 8.8" or "1/2-13 UNC grade 5"`, "the bolt %s lacks its strength class", quote(t.Value))
		default:
			b.Size, b.Class, b.Pos = m[1], m[2], t.Pos
		}
	}
	return b
}

func (f *fields) bearingJoint() *BearingJoint {
	if f == nil {
		return nil
	}
	b := &BearingJoint{
		Bearing: f.text("bearing"), Cup: f.jointRef(f.val("cup")), Cone: f.jointRef(f.val("cone")),
		Rotating: f.word("rotating"), Load: f.word("load"),
		Bore: f.length("bore"), Outside: f.length("outside"), Width: f.length("width"), ConeWidth: f.length("cone-width"), Grease: f.text("grease"),
		Da: f.length("da"), Db: f.length("db"), CupDa: f.length("Da"), CupDb: f.length("Db"),
	}
	if b.Bore.Set() && b.Outside.Set() && b.Bore.Mm >= b.Outside.Mm {
		f.faultf(b.Bore.Pos, "a bore smaller than the outside", "the bearing's bore %s is not smaller than its outside %s", b.Bore.Text, b.Outside.Text)
	}
	if lo, hi := f.pair("end-float"); lo.Set() && hi.Set() && lo.Mm >= hi.Mm {
		f.fault(f.n.get("end-float").pos, "the least end float is not below the most", "the smaller value first")
	} else if lo.Set() && hi.Set() {
		b.EndFloat = []Length{lo, hi}
	}
	return b
}

func (f *fields) slideJoint() *SlideJoint {
	if f == nil {
		return nil
	}
	s := &SlideJoint{
		Hub: f.jointRef(f.val("hub")), On: f.jointRef(f.val("on")),
		KeptBy: f.jointRef(f.val("kept-by")), Plate: f.jointRef(f.val("plate")),
	}
	if k := s.KeptBy; k.Set() && s.On.Set() && (k.Part != s.On.Part || k.Copy != s.On.Copy) {
		f.faultf(k.Pos, "a feature of "+s.On.Part+": the thread of a nut, the groove of a ring, or tapped holes in its end", "the hub sits on %s and is kept by %s", s.On.Part, k.Part)
	}
	return s
}

// meeting reads face (A-on-B) or level (A-with-B).
func (f *fields) meeting() Meeting {
	m := Meeting{Below: f.length("below")}
	if f.given("face") && f.given("level") {
		f.fault(f.n.keyPos("level"), "a joint has face and level", "keep one of the two")
		return Meeting{}
	}
	read := func(key, between string) {
		if w := f.word(key); w != "" {
			a, b, _ := strings.Cut(w, between)
			m.Pos, m.First, m.Second = f.n.get(key).pos, Face(a), Face(b)
		}
	}
	switch {
	case f.given("face"):
		read("face", "-on-")
		if f.given("below") {
			f.fault(f.n.keyPos("below"), "below goes with level", "delete below")
		}
	case f.given("level"):
		m.Level = true
		read("level", "-with-")
	case f.given("below"):
		f.fault(f.n.keyPos("below"), "below needs level", "level: front-with-front")
	}
	return m
}

// placeOnFace reads a place on a face of that name.
func (f *fields) placeOnFace(on string) *Place {
	p := &Place{
		Pos: f.n.pos, On: on, With: f.word("with"), Gap: f.length("gap"),
		FromLeft: f.length("from-left"), FromRight: f.length("from-right"),
		FromBottom: f.length("from-bottom"), FromTop: f.length("from-top"),
	}
	for _, pair := range [][2]string{{"from-left", "from-right"}, {"from-bottom", "from-top"}} {
		for _, key := range pair {
			if f.given("at") && f.given(key) {
				f.fault(f.n.keyPos(key), "place has at and "+key, "keep one of the two: at places the first part's origin")
			}
		}
		if f.given(pair[0]) && f.given(pair[1]) {
			f.fault(f.n.keyPos(pair[1]), "place has "+pair[0]+" and "+pair[1], "one of the two: the first part's own size gives the other")
		}
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
	if p.With != "" && f.given(wrong) {
		f.fault(f.n.keyPos(wrong), "the "+p.With+" of the first part lies on the face, and its "+wrong+" cannot point along it", right+": which way its "+right+" looks, such as "+right+": up")
	}
	return p
}

// lineRules reads one list of features, or a list of such lists.
func (f *fields) lineRules() []LineRule {
	lists := f.entries("in-line")
	if len(lists) == 0 {
		return nil
	}
	if lists[0].kind != listNode {
		lists = []*node{f.n.get("in-line")}
	}
	var out []LineRule
	for _, one := range lists {
		refs, ok := f.items(one, 2, 20, "[part.feature, part.feature] or [part.feature, up]")
		if !ok {
			continue
		}
		rule := LineRule{Pos: one.pos}
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

// names reads one name or a list of them.
func (f *fields) names(key string) []Text {
	n := f.val(key)
	if n == nil {
		return nil
	}
	if n.kind == scalarNode {
		return []Text{f.reader.name(n)}
	}
	var out []Text
	for _, item := range f.entries(key) {
		out = append(out, f.reader.name(item))
	}
	return out
}

// jointRef reads part.feature or part#2.feature.
func (r *reader) jointRef(n *node) JointRef {
	text, ok := r.scalar(n, "a reference", refExample)
	if !ok {
		return JointRef{}
	}
	m := jointRefRE().FindStringSubmatch(text)
	if m == nil {
		r.faultf(n.pos, jointRefExample, "%s is %s, which is no reference", n.label, quote(text))
		return JointRef{}
	}
	ref := JointRef{Part: m[1], Copy: 1, Feature: m[3], Pos: n.pos}
	if m[2] != "" {
		ref.Copy, _ = strconv.Atoi(m[2]) // four digits at most
	}
	return ref
}

// jointRefs checks that what a joint names is there.
func (l *loader) jointRefs(job *Job, j *Joint) {
	first, second := j.Ends()
	all := j.Refs()
	if j.Slide != nil && j.Slide.KeptBy.Set() {
		all = append(all, j.Slide.KeptBy)
	}
	for _, a := range j.InLine {
		all = append(all, a.Refs...)
	}
	for _, r := range all {
		l.jointFeature(job, r)
	}
	if first.Part == second.Part && first.Copy == second.Copy {
		l.faultf(second.Pos, "two parts", "the joint %s joins %s to itself", j.Name.Value, first.Part)
	}
	named := []Text{j.Anchored}
	if j.Bolt != nil {
		named = append(named, j.Bolt.Stud)
	}
	for _, t := range named {
		if t.Value != "" && !l.broken && job.Part(t.Value) == nil {
			l.faultf(t.Pos, "a part of the job", "there is no part %s in the job", t.Value)
		}
	}
	names := job.jointNames()
	for _, t := range slices.Concat(j.Before, j.After) {
		switch {
		case t.Value == "":
		case t.Value == j.Name.Value:
			l.faultf(t.Pos, "another joint", "the joint %s names itself", t.Value)
		case !slices.Contains(names, t.Value):
			l.faultf(t.Pos, "the joints are "+list(names), "there is no joint %s%s", t.Value, meant.Perhaps(t.Value, names))
		}
	}
}

// Part finds a part by its name, nil if there is none.
func (j *Job) Part(name string) *Part {
	for _, p := range j.Parts {
		if p.Name.Value == name {
			return p
		}
	}
	return nil
}

// Joint finds a joint by its name, nil if there is none.
func (j *Job) Joint(name string) *Joint {
	for _, o := range j.Joints {
		if o.Name.Value == name {
			return o
		}
	}
	return nil
}

// noPart says that there is no part of a name.
func (j *Job) noPart(name string) string {
	return "there is no part " + name + " in the job" + meant.Perhaps(name, j.partNames())
}

func (j *Job) partNames() (names []string) {
	for _, p := range j.Parts {
		names = append(names, p.Name.Value)
	}
	return names
}

func (j *Job) jointNames() (names []string) {
	for _, o := range j.Joints {
		names = append(names, o.Name.Value)
	}
	return names
}

func (l *loader) jointFeature(job *Job, r JointRef) {
	p := job.Part(r.Part)
	if p == nil {
		if !l.broken {
			l.fault(r.Pos, job.noPart(r.Part), "the parts are "+list(job.partNames()))
		}
		return
	}
	if len(l.doubt[p].errs) > 0 {
		return
	}
	if r.Copy > p.Quantity {
		l.faultf(r.Pos, fmt.Sprintf("#1 to #%d, or a larger quantity", p.Quantity), "%s#%d is asked for and %d is made", r.Part, r.Copy, p.Quantity)
		return
	}
	if _, ok := p.Feature(r.Feature); ok {
		return
	}
	names := p.FeatureNames()
	l.faultf(r.Pos, "the features of "+r.Part+" are "+list(names), "the part %s has no feature %s%s", r.Part, r.Feature, meant.Perhaps(r.Feature, names))
}

// Numbered splits window-2 into window and 2: the second of several equal
// radial features, in clock order from TOP.
func Numbered(feature string) (name string, n int, ok bool) {
	cut := strings.LastIndexByte(feature, '-')
	if cut < 1 {
		return "", 0, false
	}
	n, err := strconv.Atoi(feature[cut+1:])
	return feature[:cut], n, err == nil && n > 0
}
