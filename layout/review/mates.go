package review

import (
	"cmp"
	"math"
	"regexp"
	"slices"
	"strings"

	"centrepop/layout/keys"
	"centrepop/layout/measured"
	"centrepop/layout/plan"
	"centrepop/layout/threads"
	"centrepop/layout/words"
	"centrepop/parts"
	"centrepop/parts/geom"
	"centrepop/parts/seq"
)

// keyway looks for keyways that are not those of their shaft's diameter, and for
// a TOP on a keyway that is not drawn.
var keyway = together(
	each(everyRadial, (*view).slotKeyway), each(everyKeyway, (*view).keywayDepth, (*view).woodruff, (*view).boughtHub, (*view).keywayEnds, (*view).keyLengths),
	(*view).topKeyway,
)

// slotSeat is the step that a slot is cut along, nil for another opening.
func (v *view) slotSeat(f *parts.Radial) *cylinder {
	if !blindSlot(f) || f.Along.Mm < 1.5*f.Around.Mm {
		return nil
	}
	return at(v.outside, v.axialMm(f))
}

// topKeyway looks for a TOP on a keyway that is not drawn.
func (v *view) topKeyway() {
	slot := func(f parts.Radial) bool { return v.slotSeat(&f) != nil }
	if v.p.Top.Value != "keyway" || slices.ContainsFunc(v.p.Radials, slot) || slices.ContainsFunc(v.q.Keyways, func(k plan.KeywayRow) bool { return k.ClockDeg == 0 }) {
		return
	}
	v.report(Stop, "", v.p.Top.Pos, Finding{
		What: "TOP is to be the keyway, and no keyway is drawn there", Rule: "TOP is a mark that is there", Source: "by geometry", Fix: "draw it under keyways at clock 0, or mark TOP another way",
	})
}

// slotKeyway compares a slot along a shaft with what it is for: the tongue of a locking washer, or a key.
func (v *view) slotKeyway(f *parts.Radial) {
	switch step := v.slotSeat(f); {
	case step == nil:
	case step.threaded():
		v.tongueShut(f, step)
	case isWasher(f):
		v.tongueBeside(f, step)
	default:
		v.slotKey(f, 2*step.RadiusMm())
	}
}

// slotKey compares a slot that is nearly a keyway with the standard one of a diameter.
func (v *view) slotKey(f *parts.Radial, diameterMm float64) {
	key, err := v.keyFor(diameterMm)
	wide, deep := math.Abs(f.Around.Mm-key.WidthMm), f.Depth.Mm-key.ShaftDepthMm
	if err != nil || wide > 0.5*key.WidthMm || wide <= 0.05 && deep >= -0.3 && deep <= 0.5 {
		return
	}
	standard := parts.By(v.job.Units, "DIN 6885-1", "ASME B17.1")
	v.report(Check, f.Name.Value, f.Pos, Finding{
		What: f.Name.Value + " is not the keyway of " + v.mm(diameterMm), OverMm: over(max(wide, math.Abs(deep))),
		Numbers: v.mm(f.Around.Mm) + " wide and " + v.mm(f.Depth.Mm) + " deep; the standard has " + v.mm(key.WidthMm) + " and " + v.mm(key.ShaftDepthMm),
		Rule:    "a keyway takes the key of its diameter", Source: standard, Fix: "the width and depth of the standard, or accept it for a key that is made",
	})
}

// tongueBeside reports a slot for the tongue of a locking washer that lies in no thread.
func (v *view) tongueBeside(f *parts.Radial, step *cylinder) {
	z := v.axialMm(f)
	threads := seq.Keep(v.outside, (*cylinder).threaded)
	v.report(Check, f.Name.Value, f.Pos, Finding{
		What: f.Name.Value + " is not in the thread of the nut whose washer it holds", Numbers: "it lies on " + step.Name + ", " + v.mm(2*step.RadiusMm()),
		OverMm: over(seq.Min(math.Inf(1), threads, func(c *cylinder) float64 { return max(c.FromMm-z, z-c.ToMm) })),
		Rule:   "the tongue of a locking washer lies in the thread of its nut", Source: "by geometry", Fix: "move it along, or a longer thread",
	})
}

// tongueShut looks for the slot of a locking washer that is too shallow, or ends within its thread, at the end
// that nut and washer come from: there the outside is nowhere larger than the thread.
func (v *view) tongueShut(f *parts.Radial, thread *cylinder) {
	if !isWasher(f) {
		return
	}
	if t := thread.Size.Thread; t != nil {
		v.atLeast(f.Name.Value, f.Pos, f.Depth.Mm, (t.MajorMm-t.MinorMm)/2+lockNutOf(*t).washerMm, Finding{
			What: f.Name.Value + " is too shallow for the tongue of the washer under the nut", Numbers: ", wanted at least ",
			Rule: "the nut passes over the tongue, which lies under its thread", Source: "ISO 2982-2", Fix: "a deeper slot",
		})
	}
	mid, straight := v.axialMm(f), (f.Along.Mm-f.Around.Mm)/2 // its ends are round
	shut, free := math.Inf(1), [2]bool{true, true}
	for _, c := range v.outside {
		if geom.Over(c.RadiusMm(), thread.RadiusMm()) {
			free[0], free[1] = free[0] && c.FromMm > thread.FromMm, free[1] && c.FromMm < thread.FromMm
		}
	}
	if free[0] {
		shut = min(shut, mid-straight-thread.FromMm)
	}
	if free[1] {
		shut = min(shut, thread.ToMm-mid-straight)
	}
	if geom.Over(shut, 0) && !math.IsInf(shut, 1) {
		v.report(Check, f.Name.Value, f.Pos, Finding{
			What: f.Name.Value + " is shut at the end of " + thread.Name + " that the washer comes from", Numbers: v.mm(shut) + " of the thread before its full width",
			OverMm: over(shut), Rule: "the tongue of a locking washer gets into its slot from the end", Source: "by geometry", Fix: "a longer slot, out at the end of the thread",
		})
	}
}

func (v *view) keyFor(shaftMm float64) (keys.Parallel, error) {
	if v.job.Units == parts.Inches {
		return keys.ForInch(shaftMm, keys.Square)
	}
	return keys.For(shaftMm)
}

// washer is in the words for the slot of a locking washer, which isWasher tells.
var washer = regexp.MustCompile(`(?i)\bwashers?\b`)

func isWasher(f *parts.Radial) bool { return washer.MatchString(f.Name.Value + " " + f.Note.Value) }

// motorFlange compares holes and the bore in their middle with the flange of the motor that stands on them, as the job
// names it, or with one of IEC of which two of pitch circle, bore and holes are nearly theirs.
func (v *view) motorFlange(h *parts.HoleGroup) {
	named, stands := false, false
	for e := range seq.Refs(v.job.Loose) {
		stands = stands || v.stoodOn(e, h.Name.Value)
		if s := v.flangeOn(e, h); s != nil {
			v.onFace(h, *s, Stop)
			named = true
		}
	}
	if named || v.p.Bore == nil || h.Size.Make == parts.TappedHole {
		return
	}
	for _, s := range measured.Standards() {
		// What stands there has a spigot, however far off the bore.
		if near := func(mm, of float64) bool { return math.Abs(mm-of) <= 0.1*of }; !s.Tapped && near(h.Pattern.PCD.Mm, s.PitchMm) && (stands || near(v.p.Bore.Size.Nominal.Mm, s.SpigotMm)) {
			v.nearFlange(h, s)
		}
	}
}

// nearFlange compares holes with a flange of IEC that is like them, where two of three sizes are its own.
func (v *view) nearFlange(h *parts.HoleGroup, s measured.Standard) {
	is := v.sizesOf(h, s)
	m, severity := v.motor(), Check
	if flangeNamed(m, s) {
		severity = Stop // it is the job's motor, and it does not go on
	} else if is == flangeSizes && flangeNumber.MatchString(m.Flange.Value) {
		v.report(Check, h.Name.Value, m.Flange.Pos, Finding{
			What: v.p.Title.Value + " is for a motor flange " + s.Name + ", and the job's motor has another", Numbers: m.Flange.Value,
			Rule: "plate and motor have one flange", Source: "by the job", Fix: "the flange on the motor's plate",
		})
	}
	if is > 1 {
		v.onFace(h, s, severity)
	}
}

// flangeSizes are those by which a plate is for a flange: its pitch circle, its bore and its holes. sizesOf counts those
// that holes and the bore in their middle have.
const flangeSizes = 3

func (v *view) sizesOf(h *parts.HoleGroup, s measured.Standard) int {
	count, hole := v.groupSize(h.Name.Value)
	same := []bool{math.Abs(h.Pattern.PCD.Mm-s.PitchMm) < 0.05, math.Abs(v.p.Bore.Size.Nominal.Mm-s.SpigotMm) < 0.05, count == s.Holes && math.Abs(hole-s.HoleMm) < 1.01}
	return len(seq.Keep(same, func(is bool) bool { return is }))
}

// standardFace tells whether holes and the bore in their middle are those of a standard flange of motors, which has less
// metal between them than rules ask.
func (v *view) standardFace(h *parts.HoleGroup) bool {
	return h != nil && v.p.Bore != nil && slices.ContainsFunc(measured.Standards(), func(s measured.Standard) bool { return v.sizesOf(h, s) == flangeSizes })
}

// flangeOn is the standard flange that words of the job give the motor on a group of holes, or without a gear its frame;
// nil for none.
func (v *view) flangeOn(e *parts.Loose, h *parts.HoleGroup) *measured.Standard {
	named := measured.Named(v.motor().Flange.Value)
	if len(named) == 0 {
		named = measured.Named(e.Item.Value)
	}
	if m := v.motor(); len(named) == 0 && m.OutRPM.Value == 0 {
		named = measured.Named(m.Frame.Value)
	}
	if len(named) != 1 || !v.stoodOn(e, h.Name.Value) {
		return nil
	}
	return &named[0]
}

// ofMotor is the word for a motor's flange, and where its sizes come from.
func ofMotor(s measured.Standard) (word, source string) {
	if strings.HasPrefix(s.Name, "F") {
		return "flange ", measured.StandardSource
	}
	return "face ", measured.FaceSource
}

// onFace compares a group of holes, and the round in its middle, with a motor's flange: how bad it is that one does
// not go on.
func (v *view) onFace(h *parts.HoleGroup, s measured.Standard, stop Severity) {
	what, source := ofMotor(s)
	f := v.here(h.Name.Value, h.Pos)
	f.Severity, f.Rule, f.Source, f.Fix = stop, "a motor's "+what+"has its standard's sizes", source, "the size of the standard, or measure the motor"
	not, has := " not that of the motor's "+what+s.Name, ", the "+what+"has "
	middle, pcd := v.circleOf(h.Name.Value)
	off := math.Abs(pcd - s.PitchMm)
	count, mm := v.groupSize(h.Name.Value)
	screws := words.Either(s.Tapped, "is tapped "+s.Thread+", and the plate has clearance holes", "has holes for "+s.Thread)
	v.eachOf(f,
		flaw{off > faceOffMm, Finding{What: "the pitch circle of " + h.Name.Value + " is" + not, Numbers: v.mm(pcd) + has + v.mm(s.PitchMm), OverMm: over(off)}},
		flaw{count != s.Holes, Finding{What: "the number of holes of " + h.Name.Value + " is" + not, Numbers: number(float64(count)) + has + number(float64(s.Holes)), OverMm: over(0)}},
		flaw{otherScrew(h, s, mm), Finding{What: "the screw of " + h.Name.Value + " is" + not, Numbers: cmp.Or(h.Size.Thread, v.mm(mm)) + "; the " + what + screws, OverMm: over(0)}},
	)
	v.spigotIn(middle, s, f, what)
	v.motorTurn(h, s)
	if v.p.Bore != nil {
		v.motorSide(s)
	}
}

// otherScrew tells whether holes of a size are none for the screws of a motor's flange.
func otherScrew(h *parts.HoleGroup, s measured.Standard, mm float64) bool {
	t, err := threads.Parse(s.Thread)
	switch {
	case err != nil:
		return false
	case s.Tapped && h.Size.Make == parts.TappedHole:
		return true
	case h.Size.Thread != "":
		return !sameThread(h.Size.Thread, s.Thread)
	}
	return mm < t.MajorMm || mm > plainShare*t.MajorMm
}

// spigotIn compares the round in the middle of a motor's holes with its spigot.
func (v *view) spigotIn(middle plan.XY, s measured.Standard, f Finding, what string) {
	bore, size := v.roundAt(middle, s.SpigotMm)
	off, severity := bore-s.SpigotMm, Check
	if off < 0 {
		severity = f.Severity
	}
	v.firstOf(f,
		flaw{geom.Over(0, off) || off > faceOffMm, Finding{
			Severity: severity, What: "the bore round the spigot is not that of the motor's " + what + s.Name, Numbers: v.mm(bore) + ", the spigot " + v.mm(s.SpigotMm), OverMm: over(math.Abs(off))}},
		flaw{size.Fit.Pos.Line > 0 && !fine(size.Fit, 8), Finding{
			Severity: Check, Pos: size.Fit.Pos, What: "the bore does not centre the spigot of a motor " + what + s.Name, Numbers: v.mm(bore) + " " + size.Fit.Class.Value,
			Rule: "the spigot of a motor is j6; its bore H7 or H8", Fix: "fit: H7"}},
	)
}

// circleOf is the middle of a group of holes, and of its circle the diameter.
func (v *view) circleOf(group string) (middle plan.XY, mm float64) {
	at := v.holesOf(group)
	for _, o := range at {
		middle = middle.Plus(plan.XY{XMm: o.a.XMm / float64(len(at)), YMm: o.a.YMm / float64(len(at))})
	}
	for _, o := range at {
		mm += 2 * geom.Distance(o.a, middle) / float64(len(at))
	}
	return middle, mm
}

// roundAt is the round opening about a place whose diameter is nearest to one, 0 without any.
func (v *view) roundAt(middle plan.XY, wantedMm float64) (mm float64, size parts.Size) {
	near := func(at plan.XY, is float64, s parts.Size) {
		if geom.Distance(at, middle) < faceOffMm && (mm == 0 || math.Abs(is-wantedMm) < math.Abs(mm-wantedMm)) {
			mm, size = is, s
		}
	}
	for _, c := range v.inside {
		near(plan.XY{}, 2*c.RadiusMm(), c.Drawn.Size)
	}
	for _, o := range v.holes {
		if o.group != nil {
			near(o.a, 2*o.radiusMm, o.group.Size.Size)
		}
	}
	return mm, size
}

// How far sizes of a plate may be off those of a motor's flange, and how much larger than its screw a plain hole
// is at the most. Common practice, no source.
const (
	faceOffMm  = 0.25
	plainShare = 1.3
)

// motorTurn looks at how the holes of a motor flange are turned.
func (v *view) motorTurn(h *parts.HoleGroup, s measured.Standard) {
	f := Finding{Rule: "the holes of a motor lie on both sides of its TOP", Source: "IEC 60072-1, from memory"}
	pitch := 360 / float64(s.Holes)
	holes := v.holesOf(h.Name.Value)
	if len(holes) == 0 {
		return
	}
	if deg := geom.ClockDeg(holes[0].a); math.Abs(math.Remainder(deg, pitch)) < pitch/2-1 {
		f.What, f.Numbers, f.Fix = h.Name.Value+" stands turned against the holes of a motor", "one at "+number(deg)+"°, wanted "+number(pitch/2)+"°", "first: "+number(pitch/2)
		v.report(Check, h.Name.Value, h.Pos, f)
	}
}

// flangeNamed tells whether the words for a motor's flange name a pitch circle.
func flangeNamed(m *parts.Motor, s measured.Standard) bool {
	return slices.Contains(flangeNumber.FindAllString(m.Flange.Value, -1), number(s.PitchMm))
}

// flangeNumber is a size in the words for a motor's flange.
var flangeNumber = regexp.MustCompile(`\d{2,4}`)

// groupSize is the number of holes in a group and their finished size.
func (v *view) groupSize(name string) (count int, mm float64) {
	for _, f := range v.q.Faces {
		for _, g := range f.Groups {
			if g.Name == name {
				return g.Count, g.FinishedMm
			}
		}
	}
	return 0, 0
}

// saddle looks for branches that run off the tube they sit on, and for ones
// whose opening in it is not under them.
func (v *view) saddle(end *parts.TubeEnd) {
	if main := v.viewOf(end.Onto.Part); end.Place != nil && main != nil && main.p.Kind == parts.Tube {
		v.roughOpening(v.p, end, main)
		v.branchOn(v.p, end, main)
	}
}

// footOf is the stretch along a main of the given radius on which a branch stands, from where
// the axes cross: the curve in which the outsides of both meet; and how deep that is along the
// branch.
func footOf(end *parts.TubeEnd, halfMm, mainMm float64) (lowMm, highMm, deepMm float64) {
	lowMm, highMm = math.Inf(1), math.Inf(-1)
	least, most := lowMm, highMm
	sin, cos := math.Sincos(end.Angle.Deg * math.Pi / 180)
	if end.Place.Leans == parts.Front {
		cos = -cos
	}
	for deg := range 360 {
		along, beside := math.Sincos(float64(deg) * math.Pi / 180)
		beside = end.Offset.Mm + halfMm*beside
		up := math.Sqrt(max(0, mainMm*mainMm-beside*beside))
		z, out := (halfMm*along+up*cos)/sin, (up+halfMm*along*cos)/sin
		lowMm, highMm, least, most = min(lowMm, z), max(highMm, z), min(least, out), max(most, out)
	}
	return lowMm, highMm, most - least
}

// branchOn looks at one branch on its main.
func (r *reviewer) branchOn(p *parts.Part, end *parts.TubeEnd, main *view) {
	z := end.Place.AxialMm(main.lengthMm)
	half := r.pl.Part(p.Name.Value).Section.MaxMm
	low, high, _ := footOf(end, half, main.wideMm())
	f := Finding{Part: p.Name.Value, Pos: end.Place.Pos, Source: "by geometry"}
	if !geom.Over(z+low, 0) || !geom.Over(main.lengthMm, z+high) {
		f.Severity, f.What = Stop, p.Title.Value+" runs off the end of "+main.p.Title.Value
		f.Numbers = "it covers " + r.mm(z+low) + " to " + r.mm(z+high) + ", the tube 0 to " + r.mm(main.lengthMm)
		f.Rule, f.Fix = "a branch stands on the tube all round", "move it along the tube"
		r.add(f)
		return
	}
	if end.Angle.Deg != 90 || end.Offset.Mm != 0 {
		return // the middle of its hole is worked out elsewhere
	}
	near := seq.Min(math.Inf(1), main.q.Radials, func(row plan.RadialRow) float64 { return offBranch(row, z, end.Place.Clock.Deg, half) })
	r.branchOpening(p, end, main, z, near)
	if near > 1 && !math.IsInf(near, 1) {
		f.OverMm = over(near)
		f.Severity, f.What = Check, "the opening in "+main.p.Title.Value+" is not under "+p.Title.Value
		f.Numbers = "its middle lies " + r.mm(near) + " off that of the branch"
		f.Rule, f.Fix = "a branch opens into its tube", r.branchCure(end, main, z)
		r.add(f)
	}
}

// offBranch is how far the middle of an opening lies from that of a branch of
// the given radius on the same tube, infinite where it does not open under it.
func offBranch(row plan.RadialRow, z, clockDeg, half float64) float64 {
	turn := math.Remainder(row.ClockDeg-clockDeg, 360) * math.Pi / 180
	off := math.Hypot(row.AxialMm-z, turn*row.OutsideMm/2)
	if reach := half + math.Max(row.AlongMm, row.AroundMm)/2; off > reach+half {
		return math.Inf(1)
	}
	return off
}

// motorSide looks for a lead-in on the face that lies on another part: the motor's spigot
// comes from the other one.
func (v *view) motorSide(s measured.Standard) {
	lead := func(face parts.Face) bool {
		return slices.ContainsFunc(v.p.Chamfers, func(c parts.Chamfer) bool { return c.Edge.Value == "bore-"+string(face) })
	}
	for _, j := range v.job.Of(parts.BoltKind) {
		first, second := j.Ends()
		meet := v.job.MeetingOf(j)
		lies, with := meet.Second, v.job.Part(first.Part)
		if first.Part == v.p.Name.Value {
			lies, with = meet.First, v.job.Part(second.Part)
		}
		other := lies.Other()
		if with.Kind == parts.Folded || !meet.Set() || !j.Holds(v.p.Name.Value) || !lead(lies) || lead(other) { // the flange of a guard leaves the bore open
			continue
		}
		v.report(Check, "bore", v.p.Bore.Pos, Finding{
			What: "the lead-in of the bore is on the face that lies on another part, and the spigot of the motor " + s.Name + " comes from the other", Numbers: "bore-" + string(lies),
			Rule: "a spigot comes in at its lead-in", Fix: "the part the other way round, by face: at " + j.Name.Value + ", or edge: bore-" + string(other),
		})
	}
}
