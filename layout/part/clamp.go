package part

import (
	"errors"
	"math"
	"slices"

	"centrepop/layout/bolts"
	"centrepop/layout/clamp"
	"centrepop/layout/cutting"
	"centrepop/layout/plan"
	"centrepop/layout/words"
	"centrepop/parts"
	"centrepop/parts/geom"
	"centrepop/parts/seq"
)

// Clamp is the split of a ring worked out, with its screw.
type Clamp struct {
	In   *parts.Clamp
	Row  plan.ClampRow
	work clamp.Work
	bolt bolts.Bolt
}

// narrowMm is the cut of a slitting saw. Common practice, no source.
const narrowMm = 1.6

// clamp works out the split of a ring, if it has one.
func (z *sizer) clamp() {
	in := z.Part.Clamp
	if in == nil {
		return
	}
	bore, at := z.StepNamed(in.In.Value), in.AxialMm(z.LengthMm())
	outside := z.outsideAt(at)
	b, err := bolts.Find(in.Size)
	if err != nil {
		z.fault(in.Screw, "the screw "+in.Size+" is not known", z.W.Refused(err))
		return
	}
	c := &Clamp{In: in, bolt: b}
	ring := clamp.Ring{OutsideMm: outside.Size.NominalMm, BoreMm: bore.Size.NominalMm, SlotMm: in.Slot.Mm, AtMm: in.At.Mm, Bolt: b, Class: in.Class}
	if z.drills() == cutting.Inch {
		ring.ToolMm = geom.MmPerInch / 16
	}
	narrow := ring
	narrow.SlotMm = narrowMm
	if c.work, err = ring.Work(); errors.Is(err, clamp.ErrNoRoom) {
		if _, err := narrow.Work(); err == nil && in.Slot.Mm > narrowMm {
			z.fault(in.Slot.Pos, "a cut of "+z.W.Size(in.Slot.Mm)+" leaves the screw "+in.Size+" no metal to close it", "a cut as narrow as the saw, such as "+z.W.Near(narrowMm))
			return
		}
		z.fault(in.Screw, "a screw "+in.Size+" has no room in the wall of "+z.W.Size((ring.OutsideMm-ring.BoreMm)/2), "a smaller screw, another at, a larger outside, or a smaller "+in.In.Value)
		return
	}
	if err != nil {
		z.fault(in.Screw, "the screw "+in.Size+" "+in.Class+" cannot be worked out", z.W.Refused(err))
		return
	}
	w := &c.work
	c.Row = plan.ClampRow{
		In: in.In.Value, ClockDeg: geom.Clean(math.Mod(in.Clock.Deg+360, 360)), SlotMm: geom.Clean(in.Slot.Mm), OutsideMm: geom.Clean(ring.OutsideMm), BoreMm: geom.Clean(ring.BoreMm),
		Thread: b.Thread.Designation, Class: in.Class, LongMm: w.LongMm, AtMm: w.AtMm, AxialMm: geom.Clean(at), HoleMm: w.HoleMm, HeadMm: w.HeadMm, SeatMm: w.SeatMm, DeepMm: w.DeepMm,
		GripMm: w.GripMm, HoldsMm: w.HoldsMm, InnerMm: w.InnerMm, OuterMm: w.OuterMm, ProudMm: w.ProudMm, MajorMm: b.Thread.MajorMm,
	}
	c.Row.Screw, c.Row.TorqueNm, c.Row.HoldsNm = c.screwText(), w.TorqueNm, plan.Range{Min: w.LowNm, Max: w.HighNm}
	z.Clamp = c
}

// screwText is the screw as it is ordered.
func (c *Clamp) screwText() string { return c.bolt.Ordered(c.Row.LongMm) + ", " + c.Row.Class }

// Bought is the screw as it is ordered.
func (c *Clamp) Bought() string { return "Bolt " + c.screwText() + ", socket head" }

// Tighten says to what torque its screw is tightened.
func (c *Clamp) Tighten(w words.Writer) string {
	return "screw " + c.screwText() + " to " + w.Torque(c.work.TorqueNm) + ", oiled (K " + words.Trim(c.work.NutFactor.K, 2) + ")"
}

// NutFactor is the friction of its screw that the torque counts with.
func (c *Clamp) NutFactor() bolts.NutFactor { return c.work.NutFactor }

// Grips says what torque the ring holds on its bore once the screw is tightened so.
func (c *Clamp) Grips(w words.Writer) string {
	return "it then holds " + w.Torques(c.work.LowNm, c.work.HighNm) + ", a guess: friction and the ring's stiffness are not known"
}

// clampRow is the split, nil if there is none.
func (s *Sizes) clampRow() *plan.ClampRow {
	if s.Clamp == nil {
		return nil
	}
	return &s.Clamp.Row
}

// split is the slot seen on a face, from the bore out, and hidden lines of the screw.
func (c *Clamp) split(out *plan.Face) {
	row := &c.Row
	hand := parts.At(out.Face, 1.0, -1)
	turned := func(points ...plan.XY) []plan.XY {
		return clocked(hand*row.ClockDeg, seq.Map(points, func(q plan.XY) plan.XY { return plan.XY{XMm: hand * q.XMm, YMm: q.YMm} })...)
	}
	half, in, rim := row.SlotMm/2, row.BoreMm/2, row.OutsideMm/2
	at := func(radius, x float64) plan.XY {
		return plan.XY{XMm: x, YMm: math.Sqrt(math.Max(0, radius*radius-x*x))}
	}
	out.Notches = append(out.Notches, turned(at(in, -half), at(rim, -half), at(rim, half), at(in, half)))
	low, high := row.AtMm-row.HeadMm/2, row.AtMm+row.HeadMm/2
	end := math.Sqrt(math.Max(0, rim*rim-low*low))
	hole := func(fromMm, toMm, wide float64) {
		for _, y := range []float64{row.AtMm - wide/2, row.AtMm + wide/2} {
			out.Hidden = append(out.Hidden, turned(plan.XY{XMm: fromMm, YMm: y}, plan.XY{XMm: toMm, YMm: y}))
		}
	}
	hole(half, row.SeatMm, row.HoleMm)
	hole(row.SeatMm-row.LongMm, -half, row.MajorMm)
	out.Hidden = append(out.Hidden, turned(plan.XY{XMm: end, YMm: low}, plan.XY{XMm: row.SeatMm, YMm: low}, plan.XY{XMm: row.SeatMm, YMm: math.Min(high, math.Sqrt(rim*rim-row.SeatMm*row.SeatMm))}))
}

func (c *Clamp) feature(n *Numbered) plan.Feature {
	w, proud := n.W, ""
	if c.Row.ProudMm > 0 {
		proud = "its head stands " + n.W.Read(c.Row.ProudMm) + " over the round"
	}
	return plan.Feature{
		Kind: plan.ClampFeature, Name: "clamp", Size: "split " + w.Size(c.Row.SlotMm) + " wide, screw " + c.screwText(),
		Note: words.Join("; ", "cut"+n.cutAt(c)+", head clockwise of it",
			"screw "+w.Read(c.Row.AtMm)+" from the axis, "+w.Read(c.Row.AxialMm)+" from the front face", proud),
		Balloon: plan.XY{XMm: c.Row.AxialMm, YMm: c.Row.AtMm},
	}
}

// anyClock tells whether nothing sets the clock of a split ring: it has no TOP and nothing but its clamp on one
// side, and no joint holds it.
func (s *Sizes) anyClock() bool {
	whole := *s.Part
	whole.Clamp = nil
	return s.Part.Clamp != nil && s.Part.Top.Value == "" && whole.AllRound() &&
		!slices.ContainsFunc(s.Job.Joints, func(j *parts.Joint) bool { return j.Holds(s.Part.Name.Value) })
}

// cutAt says where on the clock a ring is split, anywhere if nothing sets that.
func (s *Sizes) cutAt(c *Clamp) string {
	return words.Either(s.anyClock(), " anywhere round", " at clock "+words.FineAngle(c.Row.ClockDeg))
}

// operations drill and tap for the screw while the ring is whole, and split it last.
func (c *Clamp) operations(b *bench) {
	w, row := b.W, &c.Row
	way := b.holeWay(Made{Thread: &c.bolt.Thread, FinishedMm: row.MajorMm}, row.SeatMm+c.work.ExitMm, false)
	mill := b.toolName(row.HeadMm, false)
	o := plan.Operation{
		Machine: plan.Drill, Title: "clamp: for screw " + row.Thread + ", before the ring is split", Holding: "vice, faces between parallels, side of the head up", Refs: []int{b.ref(c)},
		Tool: "end mill " + mill + ", drills, tap", Gauge: "depth gauge, the screw",
		Do: []string{
			"Scribe the cut" + b.cutAt(c) + " and the screw square to it: " + w.Read(row.AtMm) + " from the axis, " +
				w.Read(row.AxialMm) + " from the front face, head clockwise of the cut seen from the front.",
			"Counterbore first, for a drill runs off the round: " + mill + ", " + w.Read(row.DeepMm) + " deep on its middle line, floor " +
				w.Read(row.SeatMm) + " from the middle of the cut. From there right through:",
		},
	}
	o.Do = append(o.Do, b.drillLines(way, false)...)
	o.Do = append(o.Do, "Open to "+b.toolName(row.HoleMm, true)+", "+w.Read(row.SeatMm)+" deep from the floor: to the middle of the cut. Tap the far side "+row.Thread+".")
	b.op(warn(o, clampRound))
	b.op(plan.Operation{
		Machine: plan.Saw, Title: "clamp: split the ring, last of all", Holding: "vice, on the faces, screw out", Tool: "slitting saw, or hacksaw with blades side by side", Refs: []int{b.ref(c)},
		Do: []string{
			"Bore and thread are finished before: the cut lets stresses go. Saw " + w.Size(row.SlotMm) + " wide" +
				words.Either(b.anyClock(), " along the scribed line", b.cutAt(c)) + " from the outside into " + words.Spaced(row.In) + "; deburr it.",
			"When it is mounted: " + c.Tighten(w) + "; " + c.Grips(w) + ".",
		},
	})
}

// toolName is a tool as the rack is marked, of a clearance hole the drill that makes it;
// its diameter where none is in stock.
func (b *bench) toolName(mm float64, clearance bool) string {
	if way := b.holeWay(Made{FinishedMm: mm, Clearance: clearance}, 0, false); way.Finish == cutting.Drilled && len(way.Drills) > 0 {
		return b.drillName(way.Drills[len(way.Drills)-1].Size)
	}
	return b.W.Dia(mm)
}

func (c *Clamp) checks(r *record) {
	ref, w := r.ref(c), r.W
	r.sized(plan.Check{Ref: ref, What: "clamp slot", Wanted: w.Size(c.Row.SlotMm), Gauge: "feelers"}, r.General(c.Row.SlotMm))
	r.sized(plan.Check{Ref: ref, What: "clamp, floor of the counterbore to the cut", Wanted: w.Size(c.Row.GripMm), Gauge: "calipers"}, r.General(c.Row.GripMm))
	r.add(plan.Check{Ref: ref, What: "clamp closes", Wanted: "loose it slips on, nipped up it holds", Limits: "cut still open", Gauge: "counterpart"})
}
