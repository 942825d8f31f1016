package bolts

import (
	"cmp"
	"errors"
	"fmt"
	"math"
	"slices"

	"centrepop/layout/material"
)

// threadIn finds what a thread needs in a named material; empty is steel.
func threadIn(name string) (material.Thread, error) {
	if name == "" {
		return material.MildSteel.Data().Thread, nil
	}
	m, err := material.Find(name)
	return m.Kind.Data().Thread, err
}

// A TappedHole is the thread a bolt screws into.
type TappedHole struct {
	// ThreadMm is the length of full thread from the face, in mm.
	ThreadMm float64
	// Through is true when the thread opens at the far side.
	Through bool
	// Shut is true where nothing may come out of a through hole: its part stands on something there.
	Shut bool
	// Material is what the thread is cut in, a name for material.Find; empty is
	// steel.
	Material string
	// TensileMPa is the tensile strength of what the thread is cut in, in MPa;
	// 0 where it is not known.
	TensileMPa float64
}

// A Joint is what one bolt holds together.
type Joint struct {
	Head Head // empty is Hex
	// GripMm is the thickness between head and nut, or between head and
	// tapped face, in mm, without washers.
	GripMm float64
	// MoreMm is how much thicker that may come by its limits: of the lengths that do, one is taken
	// that does then too, if there is one.
	MoreMm float64
	// HeadWashers and NutWashers count the plain washers on each side.
	HeadWashers, NutWashers int
	// Hole is the tapped hole; nil means a nut.
	Hole *TappedHole
	// Class is the bolt's, so that the thread of a hole holds what it does; empty
	// leaves that out.
	Class string
}

// A ProblemKind sorts the problems a length can have.
type ProblemKind string

const (
	BottomsOut      ProblemKind = "bottoms-out"      // the screw reaches the end of the thread before it clamps
	NearBottom      ProblemKind = "near-bottom"      // less than one pitch of thread left below the screw
	ShortEngagement ProblemKind = "short-engagement" // the thread would strip
	ShortProtrusion ProblemKind = "short-protrusion" // fewer than two threads past the nut
	LongPastNut     ProblemKind = "long-past-nut"    // more than one diameter sticks out, and a shorter bolt would do
	ShankJams       ProblemKind = "shank-jams"       // the plain shank reaches the thread before it clamps
	LongPastHole    ProblemKind = "long-past-hole"   // the same past a tapped through hole
	StandsOut       ProblemKind = "stands-out"       // past a hole that is shut at its far side
	ThinPart        ProblemKind = "thin-part"        // the part is thinner than the thread it needs
	ShortThread     ProblemKind = "short-thread"     // the blind thread is shorter than it needs to be
	NutNotFilled    ProblemKind = "nut-not-filled"   // the bolt ends inside the nut
	WallNear        ProblemKind = "wall-near"        // head, washer or tool meets the wall
	NeighbourNear   ProblemKind = "neighbour-near"   // or the next bolt
)

// A Problem is one thing wrong: what is there, what is wanted, and then what
// else its kind needs, in mm; Of is the material of the thread, or what needs
// the room.
type Problem struct {
	Kind ProblemKind
	Mm   []float64
	Of   string
}

// A Candidate is one stock length judged for a joint.
type Candidate struct {
	LengthMm float64
	// Name is how the bolt is ordered: "M10 x 40", "1/2-13 UNC x 2 1/4 in".
	Name string
	// EngagementMm is the length of thread in mesh: up to the nut height, or
	// up to the full thread of the hole.
	EngagementMm float64
	// ProtrusionMm is how far the end stands past the nut or past a through
	// hole, negative when it stays inside; 0 for a blind hole.
	ProtrusionMm float64
	// SpareMm is the full thread left below the screw in a blind hole,
	// negative when there is none; 0 otherwise.
	SpareMm float64
	// FullThread is true when the screw must be threaded to the head (for
	// metric hexagon heads order ISO 4017, not ISO 4014).
	FullThread bool
	// Problems is empty when the length is good.
	Problems []Problem
}

// A Choice is the result of ChooseLength.
type Choice struct {
	// Chosen is the shortest good candidate, or nil when no stock length is
	// good: then Candidates shows why.
	Chosen *Candidate
	// Candidates holds the stock lengths around the wanted range, rising.
	Candidates []Candidate
	// ClampMm is the grip with washers, in mm.
	ClampMm float64
	// MinMm and MaxMm are the range the length should lie in. Only a blind
	// hole makes MaxMm strict; elsewhere the shortest stock length above MinMm
	// is good too. MaxMm below MinMm means that no length can fit the hole.
	MinMm, MaxMm float64
	// NeedMm is the engagement asked for; Strips is true where the strength of the
	// hole's thread asks for it, and not the rule of thumb.
	NeedMm float64
	Strips bool
	// HoleProblems are about the tapped hole whatever the length.
	HoleProblems []Problem
}

// ChooseLength finds the stock length for a joint. With a nut the end must
// stand two pitches past it. In a tapped hole the engagement must reach the
// material's factor times the diameter, and in a blind one a pitch of full
// thread must be left. It is an error when a number is not finite, the grip
// is not positive, washers are negative or more than 10, the hole has no
// thread, or the bolt has no such head.
func (b Bolt) ChooseLength(j Joint) (Choice, error) {
	j.Head = cmp.Or(j.Head, Hex)
	if _, err := b.HeadDiameterMm(j.Head); err != nil {
		return Choice{}, err
	}
	if b.Thread.LeftHand {
		return Choice{}, fmt.Errorf("bolts: no %s is kept in stock lengths: a made stud has a left-hand thread", b.Thread.Designation)
	}
	if err := j.check(); err != nil {
		return Choice{}, err
	}
	c := Choice{ClampMm: j.GripMm + float64(j.HeadWashers+j.NutWashers)*b.WasherThicknessMm}
	if j.Hole == nil {
		b.nutRange(&c)
	} else if err := b.holeRange(&c, *j.Hole, j.Class); err != nil {
		return Choice{}, err
	}
	b.choose(&c, j)
	return c, nil
}

// check refuses a joint that no bolt can be chosen for.
func (j Joint) check() error {
	if err := atLeast0("grip", j.GripMm); err != nil {
		return err
	}
	switch {
	case j.GripMm == 0:
		return errors.New("bolts: grip must be above 0 mm")
	case min(j.HeadWashers, j.NutWashers) < 0 || max(j.HeadWashers, j.NutWashers) > 10:
		return fmt.Errorf("bolts: %d and %d washers: give 0 to 10 on each side", j.HeadWashers, j.NutWashers)
	case j.Hole != nil && j.NutWashers > 0:
		return errors.New("bolts: a washer under the nut, but the joint has a tapped hole and no nut")
	}
	return nil
}

// choose judges the stock lengths by the wanted range and takes the shortest good one, or the
// shortest that is long enough where the parts are thickest too.
func (b Bolt) choose(c *Choice, j Joint) {
	stock := b.StockLengths(j.Head)
	stock = append(stock, b.requestLengths(stock)...)
	best, thickest := -1, c.MinMm+j.MoreMm-tiny
	judged := make([]Candidate, len(stock))
	for i, l := range stock {
		shorterDoes := i > 0 && stock[i-1] >= c.MinMm-tiny
		judged[i] = b.judge(*c, j, l, shorterDoes)
		longer := best >= 0 && stock[best] < thickest && l >= thickest
		if len(judged[i].Problems) == 0 && (best < 0 || longer) {
			best = i
		}
	}
	around := best
	if best < 0 { // the first length that is long enough, or the last
		if around = slices.IndexFunc(stock, func(l float64) bool { return l >= c.MinMm-tiny }); around < 0 {
			around = len(stock) - 1
		}
	}
	from, to := max(around-1, 0), min(around+2, len(stock))
	c.Candidates = judged[from:to:to]
	if best >= 0 {
		c.Chosen = &c.Candidates[best-from]
	}
}

// nutRange sets the wanted range for a nut: two threads past it, at most one
// diameter (common practice, no source).
func (b Bolt) nutRange(c *Choice) {
	c.NeedMm = b.NutHeightMm
	c.MinMm = c.ClampMm + b.NutHeightMm + 2*b.pitch()
	c.MaxMm = c.ClampMm + b.NutHeightMm + b.Thread.MajorMm
}

// stripMm is the engagement at which the threads of a hole are as strong as the bolt: twice its
// stress area, by the ratio of the tensile strengths, over the shear area of the hole's thread
// for each mm, π d (1/2 + (d − D2) tan 30° / P). Machinery's Handbook, 24th edition,
// formulas for stress areas and length of engagement of screw threads (factor 2 as a forum,
// thscc.com, prints its formula 1; the rest from memory), at basic sizes. 0 where the class or the hole's
// strength is not known.
func (b Bolt) stripMm(class string, tensileMPa float64) (float64, error) {
	if class == "" || tensileMPa <= 0 {
		return 0, nil
	}
	g, err := b.Grade(class)
	if err != nil {
		return 0, err
	}
	d := b.Thread.MajorMm
	perMm := math.Pi * d * (0.5 + (d-b.Thread.PitchDiameterMm)*math.Tan(math.Pi/6)/b.pitch())
	return 2 * b.StressAreaMm2 * g.TensileMPa / (tensileMPa * perMm), nil
}

// holeRange sets the wanted range for a tapped hole and checks the hole: engagement
// by the material's diameters or the strength of the threads, at most one diameter past
// a through hole, one pitch of full thread below the screw in a blind one (common
// practice, no source).
func (b Bolt) holeRange(c *Choice, hole TappedHole, class string) error {
	if err := atLeast0("thread depth", hole.ThreadMm); err != nil {
		return err
	}
	if hole.ThreadMm == 0 {
		return errors.New("bolts: the tapped hole needs a thread depth above 0 mm")
	}
	metal, err := threadIn(hole.Material)
	if err != nil {
		return err
	}
	d, p := b.Thread.MajorMm, b.pitch()
	c.NeedMm = metal.Engagement * d
	if mm, err := b.stripMm(class, hole.TensileMPa); err != nil {
		return err
	} else if mm > c.NeedMm {
		c.NeedMm, c.Strips = math.Ceil(mm*10)/10, true
	}
	c.MinMm = c.ClampMm + c.NeedMm
	c.MaxMm = c.ClampMm + hole.ThreadMm - p
	if hole.Through {
		if c.MaxMm = c.ClampMm + hole.ThreadMm; !hole.Shut {
			c.MaxMm = c.ClampMm + math.Max(hole.ThreadMm, c.NeedMm) + d
		}
		if hole.ThreadMm < c.NeedMm-tiny {
			c.HoleProblems = append(c.HoleProblems, Problem{ThinPart, []float64{hole.ThreadMm, c.NeedMm}, metal.Name})
		}
		return nil
	}
	if need := c.NeedMm + p; hole.ThreadMm < need-tiny {
		c.HoleProblems = append(c.HoleProblems, Problem{ShortThread, []float64{hole.ThreadMm, c.NeedMm, need}, metal.Name})
	}
	return nil
}

// judge measures one stock length; shorterDoes says that the next shorter one
// is long enough too, so that sticking out far has no excuse.
func (b Bolt) judge(c Choice, j Joint, l float64, shorterDoes bool) Candidate {
	k := Candidate{LengthMm: l, Name: b.Ordered(l)}
	b.judgeEnd(&k, c, j.Hole, shorterDoes)
	if j.Hole != nil && k.EngagementMm < c.NeedMm-tiny {
		k.add(ShortEngagement, k.EngagementMm, c.NeedMm)
	}
	// Length less thread length is the distance from the head to the first
	// full thread (the largest grip of ISO 4014), which must lie in the grip.
	shank := l - b.ThreadLengthMm(j.Head, l)
	switch {
	case b.fullThreadOnly(j.Head, l):
		k.FullThread = true
	case shank > c.ClampMm+tiny:
		if b.fullThreadAvailable(j.Head, l) {
			k.FullThread = true
		} else {
			k.add(ShankJams, shank, c.ClampMm)
		}
	}
	return k
}

// tiny is less than any length that counts, in mm.
const tiny = 1e-9

func (k *Candidate) add(kind ProblemKind, mm ...float64) {
	k.Problems = append(k.Problems, Problem{Kind: kind, Mm: mm})
}

// judgeEnd looks at where a screw ends that passes the clamped face: in a nut, in a tapped hole
// that goes through, or in a blind one.
func (b Bolt) judgeEnd(k *Candidate, c Choice, hole *TappedHole, shorterDoes bool) {
	d, p, in := b.Thread.MajorMm, b.pitch(), k.LengthMm-c.ClampMm
	room := b.NutHeightMm
	if hole != nil {
		room = hole.ThreadMm
	}
	k.EngagementMm = math.Max(0, math.Min(in, room))
	if hole != nil && !hole.Through {
		k.SpareMm = room - in
		switch {
		case k.SpareMm < -tiny:
			k.add(BottomsOut, -k.SpareMm)
		case k.SpareMm < p-tiny:
			k.add(NearBottom, k.SpareMm)
		}
		return
	}
	k.ProtrusionMm = in - room
	switch {
	case hole == nil && k.ProtrusionMm < -tiny:
		k.add(NutNotFilled, k.EngagementMm, room)
	case hole == nil && k.ProtrusionMm < 2*p-tiny:
		k.add(ShortProtrusion, k.ProtrusionMm, 2*p)
	case hole == nil && shorterDoes && k.LengthMm > c.MaxMm+tiny:
		k.add(LongPastNut, k.ProtrusionMm)
	case hole != nil && hole.Shut && k.ProtrusionMm > tiny:
		k.add(StandsOut, k.ProtrusionMm)
	case hole != nil && shorterDoes && k.ProtrusionMm > d+tiny:
		k.add(LongPastHole, k.ProtrusionMm)
	}
}

// pitch is the exact pitch in mm.
func (b Bolt) pitch() float64 {
	if b.Thread.TPI > 0 {
		return inch / b.Thread.TPI
	}
	return b.Thread.PitchMm
}
