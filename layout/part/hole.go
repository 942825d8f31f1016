package part

import (
	"math"
	"slices"
	"strconv"
	"strings"

	"centrepop/layout/cutting"
	"centrepop/layout/lookup"
	"centrepop/layout/material"
	"centrepop/layout/plan"
	"centrepop/layout/threads"
	"centrepop/layout/words"
	"centrepop/parts"
	"centrepop/parts/geom"
	"centrepop/parts/seq"
)

// Made is the finished size of a hole and how to get there.
type Made struct {
	Thread     *threads.Thread
	DrillMm    float64 // last drill, or tap drill, or the finished size
	FinishedMm float64
	Size       Sized
	Text       string // "M10 tap, drill Ø8.5"
	Clearance  bool   // a bolt goes through it freely
	For        string // of a clearance hole: the thread of that bolt
	Reamed     bool
}

// DrillMm is how deep a group goes: the metal, and the way of the drill, in mm.
func (s *Sizes) DrillMm(m *Group) (metal, travel float64) {
	if !m.Through {
		return m.Depth.Mm, m.Depth.Mm
	}
	return s.form.throughMm(s, m)
}

// pitchShare is how much of the play of a bolt the distance between two holes of one part may be off, either
// way: the other part takes the rest. Common practice, no source.
const pitchShare = 0.5

// playMm is how much a bolt plays in a clearance hole, or in the medium one that a thread is met by; 0 of another hole.
func (m Made) playMm() float64 {
	if m.Clearance {
		if t, err := threads.Parse(m.For); err == nil {
			return m.FinishedMm - t.MajorMm
		}
	} else if m.Thread != nil {
		if mm, err := m.Thread.ClearanceMm("medium"); err == nil {
			return mm - m.Thread.MajorMm
		}
	}
	return 0
}

// pitch limits the distance between two such holes, mm, by the general tolerance of the job, and to half their play
// where that is finer: bolts go through them into another part's.
func (s *Sizes) pitch(mm float64, m Made) Sized {
	out := s.General(mm)
	if half := pitchShare * m.playMm(); out.Limited && half > 0 && out.MaxMm-mm > half {
		out.MinMm, out.MaxMm, out.ByClass, out.Source = mm-half, mm+half, false, lookup.NoSource
	}
	return out
}

// pitchLost tells whether two places at these distances, mm, each within its own limits, may be farther apart or
// nearer than half the play of their bolts.
func (s *Sizes) pitchLost(fromMm, toMm float64, m Made) bool {
	a, b, half := s.General(fromMm), s.General(toMm), pitchShare*m.playMm()
	return half > 0 && a.MaxMm-fromMm+b.MaxMm-toMm > half+geom.CloseMm
}

// pinMm is the pin that goes into the hole as it is finished: that of the tap drill in
// a thread.
func (m Made) pinMm() float64 {
	if m.Thread != nil {
		return m.DrillMm
	}
	return m.FinishedMm
}

// ThreadName is the designation of a tapped hole's thread, or empty.
func (m Made) ThreadName() string {
	if m.Thread == nil {
		return ""
	}
	return m.Thread.Designation
}

// holeSize works out a hole: the drill, the finished size and the words.
func (z *sizer) holeSize(h parts.HoleSize) Made {
	if h.Make == parts.PlainHole {
		return z.plainHole(h)
	}
	t, err := threads.Parse(h.Thread)
	if err != nil {
		z.fault(h.Pos, "thread "+h.Thread+" is not known", z.W.Refused(err))
		return Made{}
	}
	if h.Make == parts.ClearanceHole {
		d, err := t.ClearanceMm(h.Series)
		if err != nil {
			z.fault(h.Pos, "no clearance hole for "+t.Designation, z.W.Refused(err))
			return Made{}
		}
		return Made{
			DrillMm: d, FinishedMm: d, Size: Sized{NominalMm: d, MinMm: d, MaxMm: d, Class: "", Source: lookup.Standard(words.Either(t.TPI != 0, "ASME B18.2.8", "ISO 273"))},
			Text: z.W.Drill(d) + " for " + t.Designation, Clearance: true, For: t.Designation,
		}
	}
	z.sided(h.Pos, t, true)
	if t.Lead != nil {
		z.fault(h.Pos, "thread "+t.Designation+" is that of a lead screw: no usual tap cuts it", "an inside step of a turned part, or a thread that holds, such as M20")
		return Made{}
	}
	if t.TapDrillMm == 0 {
		z.fault(h.Pos, "thread "+t.Designation+" is an outside thread and cannot be tapped", "Rc, Rp or NPT for an inside pipe thread")
		return Made{}
	}
	tap, err := cutting.TapDrill(t, z.drills())
	if err != nil {
		z.fault(h.Pos, "thread "+t.Designation+" cannot be tapped", z.W.Refused(err))
		return Made{}
	}
	return Made{
		Thread: &t, DrillMm: geom.Clean(tap.DiaMm), FinishedMm: t.MajorMm,
		Size: Sized{NominalMm: t.MajorMm, MinMm: t.MajorMm, MaxMm: t.MajorMm, Class: t.Designation, Source: t.Source, Thread: &t},
		Text: t.Designation + " tap, drill " + z.tapDrillText(tap),
	}
}

func (z *sizer) plainHole(h parts.HoleSize) Made {
	s := z.sizeOf(h.Size, true)
	m := Made{Size: s, DrillMm: s.NominalMm, FinishedMm: s.NominalMm, Text: z.W.Drill(s.NominalMm)}
	if way := z.holeWay(m, 0, false); s.Limited && s.Fitted() && len(way.Drills) > 0 {
		m.DrillMm = geom.Clean(way.Drills[len(way.Drills)-1].Size.DiaMm)
		m.Reamed = way.Finish == cutting.Reamed || way.Finish == cutting.AdjustReamed
		m.Text = "Ø" + s.worked(z.W) + ", drill " + z.W.Drill(m.DrillMm) + finishWord(way.Finish)
	}
	return m
}

// tapDrillText names a tap drill: in an inch job a number or letter drill with
// its size beside it.
func (s *Sizes) tapDrillText(tap cutting.DrillSize) string {
	switch {
	case s.drills() != cutting.Inch:
		return s.W.Drill(tap.DiaMm)
	case strings.HasSuffix(tap.Name, " in"):
		return tap.Name
	}
	return s.drillName(tap)
}

// finishWord is what follows the drill in a hole's text.
func finishWord(f cutting.Finish) string {
	return map[cutting.Finish]string{cutting.Reamed: ", ream", cutting.AdjustReamed: ", ream", cutting.Bored: ", bore"}[f]
}

// depthText is how deep to go, and for a blind hole that is tapped or reamed how deep
// to drill.
func (s *Sizes) depthText(m Made, depth parts.Length) string {
	if m.Thread != nil {
		if drill, err := m.Thread.BlindDrillMm(depth.Mm); err == nil {
			return "thread " + s.W.Size(depth.Mm) + " deep, drill " + s.W.Size(s.W.Even(drill, 0.01, 0.01)) + " deep"
		}
	}
	return words.Either(m.Reamed, s.W.Size(depth.Mm)+" deep, drilled "+s.W.Read(depth.Mm+cutting.ReamBeyondMm(m.FinishedMm)), s.W.Size(depth.Mm)+" deep")
}

// holes is the kind of group that is drilled.
type holes struct{ in *parts.HoleGroup }

func (h holes) size(z *sizer) Made { return z.holeSize(h.in.Size) }

func (h holes) describe(s *Sizes, m *Group) {
	m.Group.PCDMm, m.Group.PCDAboutMm = m.Pattern.PCD.Mm, m.Pattern.Centre
	m.Group.Chords = chords(m.Pattern.Shape, m.Points, m.Group.First, m.Size.pinMm())
	m.Group.Extra = words.Join("; ", h.mouth(s.W)...)
}

// mouth is what is done where a hole opens, and its note.
func (h holes) mouth(w words.Writer) []string {
	var bore, sink string
	if c := h.in.Counterbore; c != nil {
		bore = "counterbore " + w.Dia(c.Diameter.Mm) + " × " + w.Size(c.Depth.Mm) + " deep"
	}
	if c := h.in.Countersink; c != nil {
		sink = "countersink " + w.Dia(c.Diameter.Mm) + " × " + words.Trim(c.Angle.Deg, 1) + "°"
	}
	return []string{bore, sink, h.in.Note.Value}
}

// sunk is the mouth with what guides the cutter, and its speed: half of a drill's. Common practice, no source.
func (h holes) sunk(b *bench, m *Group) []string {
	out := h.mouth(b.W)
	if c := h.in.Counterbore; c != nil {
		out[0] += ", pilot " + b.W.Dia(m.Size.DrillMm) + b.atSpeed(cutting.Ream, c.Diameter.Mm, false)
	}
	if c := h.in.Countersink; c != nil {
		out[1] += b.atSpeed(cutting.Ream, c.Diameter.Mm, false)
	}
	return out
}

func (holes) feature() plan.FeatureKind { return plan.HolesFeature }
func (holes) cutShape() string          { return "hole" }

func (holes) cutText(w words.Writer, m *Group) string { return w.Dia(m.Group.FinishedMm) }

func (h holes) finished(m *Group) string {
	switch {
	case m.Size.Thread != nil:
		return "tapped " + m.Size.Thread.Designation
	case h.in.Size.Make == parts.PlainHole && m.Size.Size.Class != "":
		if class := m.Size.Size.classText(); class != "" {
			return "finished to " + class + " after drilling"
		}
		return "finished to its limits after drilling"
	}
	return ""
}

func (holes) mark(f *plan.Face, g plan.Group, at []plan.XY, _ plan.XY) {
	for i, q := range at {
		f.Holes = append(f.Holes, plan.Hole{
			N: g.First + i, Group: g.Name, XMm: q.XMm, YMm: q.YMm,
			AngleDeg: geom.ClockDeg(q), RadiusMm: geom.Clean(geom.Distance(q, plan.XY{})),
			FromXMm:    inward(q.XMm, f.DatumAt.XMm, f.MinMm.XMm),
			FromYMm:    inward(q.YMm, f.DatumAt.YMm, f.MinMm.YMm),
			DiameterMm: g.DrillMm,
		})
	}
}

// tallDias is how many diameters high a round stands by itself under a drill (common
// practice, no source).
const tallDias = 1.5

// heldUnder is how the part lies under the drill, or on the mill for slots.
func (usual) heldUnder(b *bench, m *Group) string {
	if m.Hole == nil {
		return "machine vice or clamps, part set square"
	}
	face := string(m.drilledFrom()) + " face up"
	if w := b.widest(); b.form.round() && w != nil && b.LengthMm() > tallDias*w.Size.NominalMm {
		return "upright in a vee on an angle plate, " + face + ", " + b.W.Said(b.LengthMm()) + " high"
	}
	return "clamped on parallels" + b.underHoles(m, face)
}

// overhangMm is the air under a flange from which it is packed up against the drill. Common practice, no source.
const overhangMm = 2.0

// underHoles is what a part lies on whose face away from the drill ends before the holes: the parallels
// are under what stands there, and packing under the flange that hangs over.
func (b *bench) underHoles(m *Group, face string) string {
	metal, outside := b.MetalAt(geom.Distance(m.Points[0], plan.XY{})), b.Side(false)
	if !b.Part.Turned() || len(metal) == 0 {
		return ", " + face
	}
	gap := metal[0].FromMm
	if m.drilledFrom() == parts.Front {
		gap = b.LengthMm() - metal[len(metal)-1].ToMm
		slices.Reverse(outside)
	}
	if gap = geom.Clean(gap); gap < geom.CloseMm {
		return ", " + face
	}
	return " under " + words.Spaced(outside[0].Name) + ", " + face + words.When(gap >= overhangMm, "; packing "+b.W.Said(gap)+" higher beside each hole")
}

// flangedMm is the air between two walls from which each is drilled as a hole of its own: less, and the drill does not
// leave the one before it is in the next. Common practice, no source.
const flangedMm = 5.0

// drilledMm is how deep a drill cuts for a group: through all that it meets, or where air lies between, the thickest
// of the walls, with what the sheet says of them.
func (b *bench) drilledMm(m *Group) (depthMm float64, apart string) {
	_, depthMm = b.DrillMm(m)
	walls, air := []geom.Span{}, 0.0
	if m.Through && b.Part.Turned() {
		walls = b.MetalAt(geom.Distance(m.Points[0], plan.XY{}))
	}
	for i := 1; i < len(walls); i++ {
		air = max(air, geom.Clean(walls[i].FromMm-walls[i-1].ToMm))
	}
	if air < flangedMm {
		return depthMm, ""
	}
	thick := seq.Max(0, walls, geom.Span.LengthMm)
	return thick, " Air of " + b.W.Said(air) +
		" lies between the walls: each is drilled through by itself, the near one first, those behind through its holes with a drill that reaches " +
		b.W.Said(depthMm) + "."
}

// largestDrillMm is the biggest drill the shop drives; 30 mm where the job does
// not say (common practice, no source).
func (s *Sizes) largestDrillMm() float64 {
	if s.Job.Shop.Drills.Set() {
		return s.Job.Shop.Drills.Mm
	}
	return 30
}

// drills is the series of drills the shop keeps.
func (s *Sizes) drills() cutting.System { return parts.By(s.W.Units, cutting.Metric, cutting.Inch) }

// holeWay is how a hole is made with the shop's drills, from one end where it is blind
// or ends in a bore; a zero Way if no drill is small enough.
func (s *Sizes) holeWay(m Made, depthMm float64, oneEnd bool) cutting.Way {
	h := cutting.Hole{NominalMm: m.FinishedMm, Clearance: m.Clearance, Thread: m.Thread, DepthMm: depthMm, OneEnd: oneEnd, LargestMm: s.largestDrillMm(), System: s.drills()}
	if m.Thread == nil && m.Size.Limited {
		h.Class = m.Size.Class
		if h.MinMm, h.MaxMm = m.Size.MinMm, m.Size.MaxMm; !m.Size.Fitted() {
			h.MaxMm = math.Max(h.MaxMm, h.NominalMm+cutting.OversizeMm(h.NominalMm)) // a drill of that size is meant
		}
	}
	way, err := cutting.WayFor(h)
	if err != nil {
		return cutting.Way{}
	}
	return way
}

// drillLines are the drills of a way, smallest first, with their speeds on the lathe, where
// the work turns, or under the drill.
func (b *bench) drillLines(way cutting.Way, onLathe bool) []string {
	unit := words.When(b.W.Units != parts.Inches, " mm")
	var out []string
	for _, d := range way.Drills {
		note := map[cutting.DrillWhy]string{cutting.Pilot: "pilot", cutting.OpenOut: "open out", cutting.Last: "finish"}[d.Why]
		if d.Why == cutting.Last && way.LeaveMm > 0.005 {
			note = "leaves " + b.W.Read(way.LeaveMm) + unit + " on diameter"
		}
		line := "Drill " + b.drillName(d.Size)
		line += words.When(len(way.Drills) > 1 || d.Why != cutting.Last || way.LeaveMm > 0.005, ", "+note)
		line += b.fluted(way, d)
		if rpm, _, _ := b.rpm(cutting.Drill, d.Size.DiaMm, onLathe); rpm != 0 {
			line += ": " + words.Trim(rpm, 0) + " rev/min"
		}
		out = append(out, line+".")
	}
	switch {
	case len(out) == 0:
	case way.BothEnds:
		out = append(out, "Deep: drill half from each end, to meet in the middle.")
	case way.Deep:
		out = append(out, "Deep: draw the drill back often, to clear the chips.")
	}
	return out
}

// fluted says what a drill does whose flutes are shorter than the hole with its point: a pilot goes in as far
// as its flutes, the last one is a long one.
func (b *bench) fluted(way cutting.Way, d cutting.DrillStep) string {
	deep := way.DepthMm
	if way.BothEnds {
		deep /= 2
	}
	deep += cutting.PointMm(d.Size.DiaMm)
	flutes := cutting.FluteMm(d.Size.DiaMm)
	switch {
	case deep <= flutes:
		return ""
	case d.Why == cutting.Last:
		return ", flutes over " + b.W.Room(deep) + words.When(b.W.Units != parts.Inches, " mm")
	}
	return ", as deep as its flutes go"
}

// drillName is a drill as the rack is marked.
func (s *Sizes) drillName(d cutting.DrillSize) string {
	switch {
	case s.drills() != cutting.Inch:
		return "Ø" + words.Trim(d.DiaMm, 2)
	case strings.Contains(d.Name, "in"):
		return "Ø" + d.Name
	}
	name := d.Name
	if _, err := strconv.ParseFloat(name, 64); err == nil {
		name += " mm" // of the metric set, where no inch drill fits
	}
	return name + " (" + words.Trim(d.DiaMm/words.MmPerInch, 3) + " in)"
}

// leastAdjustMm is the least that adjustable reamers are sold for. From memory.
const leastAdjustMm = 5.0

// finishLines bring a drilled hole to size.
func (b *bench) finishLines(m Made, way cutting.Way) []string {
	size := b.W.Dia(m.FinishedMm)
	if m.Thread == nil && m.Size.Fitted() {
		size = "Ø" + m.Size.worked(b.W)
	}
	switch way.Finish {
	case cutting.Reamed:
		return []string{"Ream " + size + ", at half the drilling speed."}
	case cutting.AdjustReamed:
		if m.FinishedMm < leastAdjustMm {
			return []string{"Finish " + size + " with a D-bit ground to it or a lap, measuring by pins: no adjustable reamer is so small."}
		}
		return []string{"Ream " + size + " with an adjustable reamer, a little at a time, measuring."}
	case cutting.Bored:
		_, long := b.form.(*bar)
		return []string{"Bore " + size + " with a boring head on the mill" + words.When(!long, " or on the faceplate") + "."}
	case cutting.BoredThenTapped:
		return []string{"Bore to " + b.W.Dia(way.BoreToMm) + " for the thread: no drill of the shop is so large.", b.tapLine(m.Thread)}
	case cutting.Tapped:
		return []string{b.tapLine(m.Thread)}
	}
	return nil
}

// tapLine taps a hole. A taper thread is deep enough where its mate, turned in by
// hand, goes in by the gauge length.
func (b *bench) tapLine(t *threads.Thread) string {
	line := "Tap " + t.Designation + words.When(t.LeftHand, ", left-hand tap,") + " by hand, square, " + b.fluid()
	line += words.When(t.Taper, ", until its fitting goes in "+b.W.Said(t.GaugeLengthMm)+" by hand")
	return line + "."
}

// fluid is what to tap with: grey iron is cut dry (common practice, no source).
func (b *bench) fluid() string {
	return words.Either(b.Material != nil && b.Material.Kind == material.GreyIron, "dry, clearing the dust often", "with cutting oil")
}
