package parts

import (
	"fmt"
	"regexp"
	"slices"
	"strconv"
	"strings"
)

// JointKind is how two parts are joined.
type JointKind string

// The kinds of joint.
const (
	PressKind   JointKind = "press"
	WeldKind    JointKind = "weld"
	BoltKind    JointKind = "bolt"
	BearingKind JointKind = "bearing"
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
// fit, the part welded on, the part bolts go through, or the one with the
// bearing's cone; the second is what it goes to. Exactly one of Press, Weld,
// Bolt and Bearing is set.
type Joint struct {
	Pos     Pos
	Name    Text
	Kind    JointKind
	Press   *PressJoint
	Weld    *WeldJoint
	Bolt    *BoltJoint
	Bearing *BearingJoint
	Meet    Meeting
	Rotate  Angle // of the first part's TOP from the second's, clockwise seen from the second's front
	Flip    bool  // the parts look opposite ways; only where Meet does not say
	Align   []AlignRule
	Before  []Text // names of joints that come later
	After   []Text // names of joints that come earlier
	Note    Text
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
	}
	return JointRef{}, JointRef{}
}

// Meeting says which faces set the axial place: First and Second touch
// ("back-on-front"), or with Flush look the same way and are level
// ("front-with-front"), except that the inner part's end lies Below under the
// outer part's face. Unset if Pos is zero.
type Meeting struct {
	Pos           Pos
	First, Second Face
	Flush         bool
	Below         Length
}

// Set tells whether the meeting was given.
func (m Meeting) Set() bool { return m.Pos.Line > 0 }

// AlignRule lists features that must lie at one clock angle of the assembly.
// Up asks besides that this is the assembly's TOP.
type AlignRule struct {
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
	Width         Length
	EndFloat      []Length // least and most, negative is preload; empty if another bearing sets it
	Grease        Text
}

var (
	jointKeys   = []string{"name", "press", "weld", "bolt", "bearing", "face", "flush", "below", "rotate", "flip", "align", "before", "after", "note"}
	jointRefRE  = regexp.MustCompile(`^([a-z0-9]+(?:-[a-z0-9]+)*)(?:#([1-9][0-9]{0,3}))?\.([a-z0-9]+(?:-[a-z0-9]+)*)$`)
	fitPairForm = regexp.MustCompile(`^[A-Z]{1,2}[0-9]{1,2}/[a-z]{1,2}[0-9]{1,2}$`)
	boltForm    = regexp.MustCompile(`^(.+?)(?:\s+((?i:[0-9]{1,2}\.[0-9]|[AC][0-9]-[0-9]{2}|(?:SAE )?(?:grade|gr) ?[0-9])))?$`)
)

// joints reads how the parts meet.
func (l *loader) joints(n *node, job *Job) {
	items, _ := l.items(n, 0, maxParts, "a list of joints")
	for _, item := range items {
		if j, ok := l.joint(item); ok {
			if i := slices.IndexFunc(job.Joints, func(o *Joint) bool { return o.Name.Value == j.Name.Value }); i >= 0 {
				l.faultf(j.Name.Pos, "a name of its own for each joint", "the joint %s is already in line %d", j.Name.Value, job.Joints[i].Pos.Line)
				continue
			}
			job.Joints = append(job.Joints, j)
		}
	}
	for _, j := range job.Joints {
		l.jointRefs(job, j)
	}
}

func (l *loader) joint(n *node) (*Joint, bool) {
	if !l.group(n, jointKeys...) {
		return nil, false
	}
	j := &Joint{Pos: n.pos, Name: l.name(l.need(n, "name", "name: front-flange"))}
	kind, v := l.oneOf(n, "press", "weld", "bolt", "bearing")
	j.Kind = JointKind(kind)
	switch j.Kind {
	case PressKind:
		j.Press = l.pressJoint(v)
	case WeldKind:
		j.Weld = l.weldJoint(v)
	case BoltKind:
		j.Bolt = l.boltJoint(v)
	case BearingKind:
		j.Bearing = l.bearingJoint(v)
	}
	j.Meet = l.meeting(n)
	if r := n.get("rotate"); r != nil {
		j.Rotate = l.clock(r)
	}
	if f := n.get("flip"); f != nil {
		j.Flip = l.yes(f)
		if j.Meet.Set() {
			l.fault(n.keyPos("flip"), "flip beside face or flush", "delete flip; the faces say which way the parts look")
		}
	}
	j.Align = l.alignRules(n.get("align"))
	j.Before = l.jointNames(n.get("before"))
	j.After = l.jointNames(n.get("after"))
	j.Note = l.text(n.get("note"), maxNote)
	first, second := j.Ends()
	return j, j.Kind != "" && j.Name.Value != "" && first.Set() && second.Set()
}

func (l *loader) pressJoint(n *node) *PressJoint {
	const form = "press: {shaft: tube.outside, bore: flange.bore}"
	if !l.group(n, "shaft", "bore", "fit", "friction", "method", "clearance", "length") {
		return nil
	}
	p := &PressJoint{
		Shaft: l.jointRef(l.need(n, "shaft", form)), Bore: l.jointRef(l.need(n, "bore", form)),
		Method: "press", Clearance: l.length(n.get("clearance"), positive), Length: l.length(n.get("length"), positive),
	}
	if m := n.get("method"); m != nil {
		p.Method = l.word(m, "press", "heat", "cool")
	}
	if f := n.get("friction"); f != nil {
		p.Friction = l.number(f, 0.02, 0.5)
	}
	if t := l.text(n.get("fit"), 20); t.Value != "" {
		if fitPairForm.MatchString(t.Value) {
			p.Fit = t
		} else {
			l.faultf(t.Pos, "a hole and a shaft class such as H7/p6", "the fit is %s", quote(t.Value))
		}
	}
	return p
}

func (l *loader) weldJoint(n *node) *WeldJoint {
	const form = "weld: {part: flange.bore, to: tube.outside, type: fillet}"
	if !l.group(n, "part", "to", "type", "size", "process", "length", "square-up", "sides") {
		return nil
	}
	w := &WeldJoint{
		Part: l.jointRef(l.need(n, "part", form)), To: l.jointRef(l.need(n, "to", form)),
		Type: l.word(l.need(n, "type", form), "fillet", "v", "bevel", "square"),
		Size: l.length(n.get("size"), positive), Process: "MAG",
		Length: l.length(n.get("length"), positive), SquareUp: l.length(n.get("square-up"), fromZero), Sides: 1,
	}
	if p := n.get("process"); p != nil {
		w.Process = l.word(p, "MAG", "MIG", "MMA", "TIG", "flux-cored", "metal-cored", "self-shielded")
	}
	if s := n.get("sides"); s != nil {
		w.Sides = l.count(s, 1, 2)
	}
	return w
}

func (l *loader) boltJoint(n *node) *BoltJoint {
	const form = `bolt: {through: flange.bolts, into: housing.taps, bolt: "M10 8.8"}`
	if !l.group(n, "through", "into", "stack", "bolt", "head", "washer", "nut", "friction", "stud") {
		return nil
	}
	b := &BoltJoint{
		Through: l.jointRef(l.need(n, "through", form)), Into: l.jointRef(l.need(n, "into", form)),
		Head: "hex", Washer: l.yes(n.get("washer")), Nut: l.yes(n.get("nut")), Friction: l.text(n.get("friction"), 40),
	}
	if h := n.get("head"); h != nil {
		b.Head = l.word(h, "hex", "socket")
	}
	if stack := n.get("stack"); stack != nil {
		items, _ := l.items(stack, 0, 20, "a list of part.group")
		for _, item := range items {
			if r := l.jointRef(item); r.Set() {
				b.Stack = append(b.Stack, r)
			}
		}
	}
	b.Stud = l.name(n.get("stud"))
	spec := l.need(n, "bolt", form)
	if t := l.text(spec, 60); t.Value != "" {
		m := boltForm.FindStringSubmatch(strings.TrimSpace(t.Value))
		switch {
		case m == nil || !threadForm.MatchString(m[1]):
			l.faultf(t.Pos, `a size and a class such as "M10 8.8" or "1/2-13 UNC grade 5"`, "the bolt is %s", quote(t.Value))
		case m[2] == "" && b.Stud.Value == "":
			l.faultf(t.Pos, `"M10 8.8" or "1/2-13 UNC grade 5"`, "the bolt %s lacks its strength class", quote(t.Value))
		default:
			b.Size, b.Class, b.Pos = m[1], m[2], t.Pos
		}
	}
	return b
}

func (l *loader) bearingJoint(n *node) *BearingJoint {
	const form = `bearing: {bearing: "30210", cup: housing.front-cup, cone: shaft.seat, rotating: inner, bore: 50, outside: 90, width: 21.75}`
	if !l.group(n, "bearing", "cup", "cone", "rotating", "load", "bore", "outside", "width", "grease", "end-float") {
		return nil
	}
	b := &BearingJoint{
		Bearing: l.text(l.need(n, "bearing", form), 60),
		Cup:     l.jointRef(l.need(n, "cup", form)), Cone: l.jointRef(l.need(n, "cone", form)),
		Rotating: l.word(l.need(n, "rotating", form), "inner", "outer"), Load: "normal",
		Bore: l.length(l.need(n, "bore", form), positive), Outside: l.length(l.need(n, "outside", form), positive),
		Width: l.length(l.need(n, "width", form), positive), Grease: l.text(n.get("grease"), maxText),
	}
	if v := n.get("load"); v != nil {
		b.Load = l.word(v, "light", "normal", "heavy")
	}
	if b.Bore.Set() && b.Outside.Set() && b.Bore.Mm >= b.Outside.Mm {
		l.faultf(b.Bore.Pos, "a bore smaller than the outside", "the bearing's bore %s is not smaller than its outside %s", b.Bore.Text, b.Outside.Text)
	}
	if f := n.get("end-float"); f != nil {
		items, ok := l.items(f, 2, 2, "least and most, such as [0.02 mm, 0.06 mm]; negative is preload")
		if ok {
			lo, hi := l.length(items[0], signed), l.length(items[1], signed)
			if lo.Set() && hi.Set() && lo.Mm >= hi.Mm {
				l.fault(f.pos, "the least end float is not below the most", "the smaller value first")
			} else if lo.Set() && hi.Set() {
				b.EndFloat = []Length{lo, hi}
			}
		}
	}
	return b
}

// meeting reads face (A-on-B) or flush (A-with-B).
func (l *loader) meeting(n *node) Meeting {
	face, flush := n.get("face"), n.get("flush")
	m := Meeting{Below: l.length(n.get("below"), fromZero)}
	if face != nil && flush != nil {
		l.fault(n.keyPos("flush"), "a joint has face and flush", "keep one of the two")
		return Meeting{}
	}
	read := func(v *node, between string) {
		var words []string
		for _, a := range []Face{Front, Back} {
			for _, b := range []Face{Front, Back} {
				words = append(words, string(a)+between+string(b))
			}
		}
		if w := l.word(v, words...); w != "" {
			a, b, _ := strings.Cut(w, between)
			m.Pos, m.First, m.Second = v.pos, Face(a), Face(b)
		}
	}
	switch {
	case face != nil:
		read(face, "-on-")
		if n.get("below") != nil {
			l.fault(n.keyPos("below"), "below goes with flush", "delete below")
		}
	case flush != nil:
		m.Flush = true
		read(flush, "-with-")
	case n.get("below") != nil:
		l.fault(n.keyPos("below"), "below needs flush", "flush: front-with-front")
	}
	return m
}

// alignRules reads one list of features, or a list of such lists.
func (l *loader) alignRules(n *node) []AlignRule {
	items, ok := l.items(n, 1, 40, "[part.feature, part.feature]")
	if !ok {
		return nil
	}
	lists := items
	if items[0].kind != listNode {
		lists = []*node{n}
	}
	var out []AlignRule
	for _, one := range lists {
		refs, ok := l.items(one, 2, 20, "[part.feature, part.feature] or [part.feature, up]")
		if !ok {
			continue
		}
		rule := AlignRule{Pos: one.pos}
		for _, r := range refs {
			if r.kind == scalarNode && r.text == "up" {
				rule.Up = true
			} else if ref := l.jointRef(r); ref.Set() {
				rule.Refs = append(rule.Refs, ref)
			}
		}
		if len(rule.Refs) > 0 {
			out = append(out, rule)
		}
	}
	return out
}

func (l *loader) jointNames(n *node) []Text {
	if n == nil {
		return nil
	}
	if n.kind == scalarNode {
		return []Text{l.name(n)}
	}
	items, _ := l.items(n, 1, maxParts, "a joint's name or a list of them")
	var out []Text
	for _, item := range items {
		out = append(out, l.name(item))
	}
	return out
}

// yes reads yes or no; absent is no.
func (l *loader) yes(n *node) bool {
	w := l.word(n, "yes", "no", "true", "false")
	return w == "yes" || w == "true"
}

func (l *loader) jointRef(n *node) JointRef {
	text, ok := l.scalar(n, "a reference", "part.feature, such as barrel-tube.outside")
	if !ok {
		return JointRef{}
	}
	m := jointRefRE.FindStringSubmatch(text)
	if m == nil {
		l.faultf(n.pos, "part.feature, or part#2.feature for the second of equal parts", "%s is %s, which is no reference", n.label, quote(text))
		return JointRef{}
	}
	r := JointRef{Part: m[1], Copy: 1, Feature: m[3], Pos: n.pos}
	if m[2] != "" {
		r.Copy, _ = strconv.Atoi(m[2]) // four digits at most
	}
	return r
}

// jointRefs checks that what a joint names is there.
func (l *loader) jointRefs(job *Job, j *Joint) {
	var all []JointRef
	first, second := j.Ends()
	all = append(all, first, second)
	if j.Bolt != nil {
		all = append(all, j.Bolt.Stack...)
	}
	for _, a := range j.Align {
		all = append(all, a.Refs...)
	}
	for _, r := range all {
		l.jointFeature(job, r)
	}
	if first.Part == second.Part && first.Copy == second.Copy {
		l.faultf(second.Pos, "two parts", "the joint %s joins %s to itself", j.Name.Value, first.Part)
	}
	if j.Bolt != nil && j.Bolt.Stud.Value != "" && !l.broken && job.part(j.Bolt.Stud.Value) == nil {
		l.faultf(j.Bolt.Stud.Pos, "a part of the job", "there is no part %s in the job", j.Bolt.Stud.Value)
	}
	var names []string
	for _, o := range job.Joints {
		names = append(names, o.Name.Value)
	}
	for _, t := range slices.Concat(j.Before, j.After) {
		switch {
		case t.Value == "":
		case t.Value == j.Name.Value:
			l.faultf(t.Pos, "another joint", "the joint %s names itself", t.Value)
		case !slices.Contains(names, t.Value):
			what := "there is no joint " + t.Value
			if like := nearest(t.Value, names); like != "" {
				what += "; perhaps " + like + " is meant"
			}
			l.fault(t.Pos, what, "the joints are "+list(names))
		}
	}
}

func (j *Job) part(name string) *Part {
	for _, p := range j.Parts {
		if p.Name.Value == name {
			return p
		}
	}
	return nil
}

func (l *loader) jointFeature(job *Job, r JointRef) {
	p := job.part(r.Part)
	if p == nil {
		if l.broken {
			return
		}
		var names []string
		for _, q := range job.Parts {
			names = append(names, q.Name.Value)
		}
		what := "there is no part " + r.Part + " in the job"
		if like := nearest(r.Part, names); like != "" {
			what += "; perhaps " + like + " is meant"
		}
		l.fault(r.Pos, what, "the parts are "+list(names))
		return
	}
	if len(l.doubt[p].errs) > 0 {
		return
	}
	if r.Copy > p.Quantity {
		l.faultf(r.Pos, fmt.Sprintf("#1 to #%d, or a larger quantity", p.Quantity), "%s#%d is asked for and %d is made", r.Part, r.Copy, p.Quantity)
		return
	}
	names := p.FeatureNames()
	if slices.Contains(names, r.Feature) {
		return
	}
	if base, n, ok := Numbered(r.Feature); ok {
		for _, f := range p.Radials {
			if f.Name.Value == base && n <= len(f.Clock) {
				return
			}
		}
	}
	what := "the part " + r.Part + " has no feature " + r.Feature
	if like := nearest(r.Feature, names); like != "" {
		what += "; perhaps " + like + " is meant"
	}
	l.fault(r.Pos, what, "the features of "+r.Part+" are "+list(names))
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

// FeatureNames lists what a JointRef to the part can name.
func (p *Part) FeatureNames() []string {
	outside, inside := p.features()
	names := append(slices.Concat(outside, inside), "top")
	if p.Frustum != nil {
		names = append(names, "large-end", "small-end")
	}
	if p.Transition != nil {
		names = append(names, "mouth", "round-end")
	}
	for _, g := range p.Holes {
		names = append(names, g.Name.Value)
	}
	for _, s := range p.Slots {
		names = append(names, s.Name.Value)
	}
	for _, f := range p.Radials {
		names = append(names, f.Name.Value)
	}
	return names
}
