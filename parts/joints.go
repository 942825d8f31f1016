package parts

import (
	"slices"
	"strconv"

	"centrepop/parts/seq"
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
	ScrewKind   JointKind = "screw"
)

// JointKinds lists them, as they are offered.
var JointKinds = []JointKind{PressKind, WeldKind, BoltKind, BearingKind, SlideKind, ScrewKind}

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

// Instance is the copy that a joint takes hold of.
func (r JointRef) Instance() Instance { return Instance{r.Part, r.Copy} }

// Set tells whether the reference was given.
func (r JointRef) Set() bool { return r.Part != "" }

// Instance is one copy of a part.
type Instance struct {
	Part string // by name
	Copy int    // from 1
}

// ID names an instance among the bodies of the machine.
func (i Instance) ID() string { return i.Part + "#" + strconv.Itoa(i.Copy) }

// Joint is how a first part meets a second. The first is the shaft of a press
// fit, the part welded on, the part bolts go through, the one with the
// bearing's cone, the hub of a slide, or the screw; the second is what it goes to. Exactly
// one of Press, Weld, Bolt, Bearing, Slide and Screw is set.
type Joint struct {
	Pos      Pos
	Name     Text
	Kind     JointKind
	Press    *PressJoint
	Weld     *WeldJoint
	Bolt     *BoltJoint
	Bearing  *BearingJoint
	Slide    *SlideJoint
	Screw    *ScrewJoint
	Meet     Meeting
	Rotate   Angle // of the first part's TOP from the second's, clockwise seen from the second's front
	OtherWay bool  // the parts look opposite ways; only where Meet does not say
	InLine   []LineRule
	Place    *Place // nil if not said
	Anchored Text   // name of a part that is fixed to the floor before this step; empty if none is
	Before   []Text // names of joints that come later
	After    []Text // names of joints that come earlier
	Do       []Text // what is done besides, once the joint is made
	Note     Text
}

// Of are the joints of a kind.
func (j *Job) Of(kind JointKind) []*Joint {
	return seq.Keep(j.Joints, func(o *Joint) bool { return o.Kind == kind })
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
	case j.Screw != nil:
		return j.Screw.Screw, j.Screw.Nut
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

// OnEdge tells whether a joint has a place that stands its first part on an edge.
func (j *Joint) OnEdge() bool { return j.Place != nil && j.Place.Edge() }

// Stud is the name of the part that serves as stud of a joint, empty for none.
func (j *Joint) Stud() string {
	if j.Bolt == nil {
		return ""
	}
	return j.Bolt.Stud.Value
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

// Key is the key that gave the meeting, face or level; empty where none did.
func (m Meeting) Key() string {
	switch {
	case !m.Set():
		return ""
	case m.Level:
		return "level"
	}
	return "face"
}

// Meeting is that of the joint, or the usual one of a bolted joint into holes of a face: that face, and of
// the first part the one that keeps both looking the same way, or the other way round, opposite ways.
func (j *Joint) Meeting(into Face) Meeting {
	m := j.Meet
	if m.Set() || j.Kind != BoltKind || into == "" {
		return m
	}
	m.Pos, m.First, m.Second = j.Pos, into.Other(), into
	if j.OtherWay {
		m.First = into
	}
	return m
}

// MeetingOf is Joint.Meeting of a joint of the job, by the holes or slots that its bolts go into.
func (j *Job) MeetingOf(in *Joint) Meeting {
	if in.Meet.Set() || in.Bolt == nil {
		return in.Meet
	}
	if g := j.faceGroup(in.Bolt.Into); g != nil {
		return in.Meeting(g.Face)
	}
	return in.Meet
}

// StudsBefore is how many copies of the stud of a joint those before it have, in the order of the job.
func (j *Job) StudsBefore(in *Joint) (n int) {
	for _, o := range j.Joints[:slices.Index(j.Joints, in)] {
		if o.Stud() != in.Stud() {
			continue
		}
		if g := j.faceGroup(o.Bolt.Through); g != nil {
			n += g.Pattern.Count
		}
	}
	return n
}

// faceGroup finds the holes or slots on a face that a reference names, nil if it names none.
func (j *Job) faceGroup(ref JointRef) *FaceGroup {
	p := j.Part(ref.Part)
	if s := seq.At(p.Slots, func(s *FaceSlot) bool { return s.Name.Value == ref.Feature }); s != nil {
		return &s.FaceGroup
	}
	if h := seq.At(p.Holes, func(h *HoleGroup) bool { return h.Name.Value == ref.Feature }); h != nil {
		return &h.FaceGroup
	}
	return nil
}

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

// OnRim tells whether the second part's face is one of its sides in the front view, of a round part its rim.
func (p *Place) OnRim() bool { return p.On != string(Front) && p.On != string(Back) }

// OnAxis tells whether it puts the origin of the first part over that of the second.
func (p *Place) OnAxis() bool { return p.At != nil && p.At.X.Mm == 0 && p.At.Y.Mm == 0 }

// TurnDeg is the clock angle, in degrees seen from the second part's front, that the first part's
// TOP looks to on its front or back; 0 where that is not said.
func (p *Place) TurnDeg() float64 {
	turn := map[string]float64{"right": 90, "down": 180, "left": 270}[p.Looks]
	if p.On == string(Back) && turn > 0 {
		return 360 - turn
	}
	return turn
}

// Sides are the faces of a part by name: those of its front view, and the two
// that the view is of.
var Sides = []string{"front", "back", "left", "right", "top", "bottom"}

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
	SquareUp Length // metal on the plate over its thickness, faced off after the weld; unset takes the usual
	Sides    int    // 1 or 2
	SidesSet bool   // Sides is said, so that a plate on its edge is welded along these alone
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
	Head          string     // hex, socket or countersunk
	Washer        bool
	Wide          bool // the washers are wide ones
	Nut           bool
	Adjust        Length // how far Through is to go each way along slots
	Friction      Text   // surface condition: dry, lubricated, ...
	Stud          Text   // name of a part that serves as stud; empty for bought bolts
}

// BearingJoint is a rolling bearing between shaft and housing: a tapered roller bearing, or a deep-groove ball bearing,
// whose seats are then Cup, for the outer ring, and Cone, for the inner one.
type BearingJoint struct {
	Bearing       Text
	Ball          bool // deep-groove ball bearing
	Cup, Cone     JointRef
	Rotating      string // inner or outer
	Load          string // light, normal or heavy
	Bore, Outside Length
	Width         Length   // T, over both rings; of a ball bearing B
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
	KeptBy  JointRef // of the shaft: the thread of a nut, the groove of a ring, or the tapped holes of an end plate; unset where it turns, or a split hub grips it
	Plate   JointRef // bore of a part under the nut; may be unset
}

// Unkept tells whether nothing on the shaft keeps the hub: it is a plain bush, in which the shaft turns, or a split
// ring that grips it.
func (s *SlideJoint) Unkept() bool { return !s.KeptBy.Set() }

// ScrewJoint is a thread outside a part in that of a bore: screwed home where faces of the two meet, else the one runs in the other.
type ScrewJoint struct {
	Screw, Nut JointRef
}

// Home tells whether a joint screws a part home, face on face.
func (j *Joint) Home() bool { return j.Screw != nil && j.Meet.Set() && !j.Meet.Level }

// Gripped tells whether a joint puts a shaft into the bore of a split ring, whose screw then holds it there.
func (j *Job) Gripped(o *Joint) bool {
	if o.Slide == nil {
		return false
	}
	hub := j.Part(o.Slide.Hub.Part)
	return hub != nil && hub.Clamp != nil && hub.Clamp.In.Value == o.Slide.Hub.Feature
}

// Runs tells whether one part of a joint turns in the other: in a bearing, in a plain bush, or as a screw in its nut.
func (j *Job) Runs(o *Joint) bool {
	return o.Kind == BearingKind || o.Slide != nil && o.Slide.Unkept() && !j.Gripped(o) || o.Screw != nil && !o.Home()
}

// Turning are a part and all that turns with it: what joints hold to it in which nothing turns.
func (j *Job) Turning(i Instance) map[Instance]bool {
	fast := seq.Keep(j.Joints, func(o *Joint) bool { return !j.Runs(o) })
	with := map[Instance]bool{}
	for _, one := range Linked(i, seq.Map(fast, (*Joint).held)) {
		with[one] = true
	}
	return with
}

// held are all parts that a joint holds: what it clamps and its two ends.
func (j *Joint) held() []Instance {
	a, b := j.Ends()
	return append(seq.Map(j.Clamped(), JointRef.Instance), a.Instance(), b.Instance())
}

// Linked are a part and all that sets of parts link to it, one through another, in order of appearance.
func Linked(i Instance, sets [][]Instance) []Instance {
	in, has := []Instance{i}, map[Instance]bool{i: true}
	for grew := true; grew; {
		grew = false
		var apart [][]Instance // none of which is linked yet
		for _, set := range sets {
			if !slices.ContainsFunc(set, func(x Instance) bool { return has[x] }) {
				apart = append(apart, set)
				continue
			}
			for _, x := range set {
				if !has[x] {
					in, has[x], grew = append(in, x), true, true
				}
			}
		}
		sets = apart
	}
	return in
}

// Part finds a part by its name, nil if there is none.
func (j *Job) Part(name string) *Part {
	return seq.First(j.Parts, func(p *Part) bool { return p.Name.Value == name })
}

// Joint finds a joint by its name, nil if there is none.
func (j *Job) Joint(name string) *Joint {
	return seq.First(j.Joints, func(o *Joint) bool { return o.Name.Value == name })
}

// Uses tells whether a joint of the job holds a feature of a part, Fastens one that holds the part, and Bolts one that puts
// bolts through the feature, of whichever copy.
func (j *Job) Uses(part, feature string) bool {
	return slices.ContainsFunc(j.Joints, func(o *Joint) bool { return o.Names(part, feature) })
}
func (j *Job) Fastens(part string) bool {
	return slices.ContainsFunc(j.Joints, func(o *Joint) bool { return o.Holds(part) })
}
func (j *Job) Bolts(part, feature string) bool {
	return slices.ContainsFunc(j.Joints, func(o *Joint) bool { return o.Kind == BoltKind && o.Names(part, feature) })
}

// IsStud tells whether a part is the stud of a joint, whose threads take its nuts, Anchors whether the step of one fixes it to
// the floor.
func (j *Job) IsStud(part string) bool {
	return slices.ContainsFunc(j.Joints, func(o *Joint) bool { return part != "" && o.Stud() == part })
}
func (j *Job) Anchors(part string) bool {
	return slices.ContainsFunc(j.Joints, func(o *Joint) bool { return part != "" && o.Anchored.Value == part })
}

// Is tells whether two references name the same feature of the same copy.
func (r JointRef) Is(o JointRef) bool { return r.Instance() == o.Instance() && r.Feature == o.Feature }

// Holds tells whether a joint holds a part, whichever copy of it.
func (j *Joint) Holds(part string) bool {
	return j.Some(func(ref JointRef) bool { return ref.Part == part })
}
