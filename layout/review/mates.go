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
	"centrepop/parts"
	"centrepop/parts/geom"
	"centrepop/parts/seq"
)

// keyway looks for keyways that are not those of their shaft's diameter, and for
// a TOP on a keyway that is not drawn.
func keyway(v *view) {
	found := slices.ContainsFunc(v.q.Keyways, func(k plan.KeywayRow) bool { return k.ClockDeg == 0 })
	for f := range seq.Refs(v.p.Radials) {
		step := at(v.outside, v.axialMm(f))
		if f.Shape != parts.RadialSlot || f.Through || step == nil || f.Along.Mm < 1.5*f.Around.Mm {
			continue
		}
		found = true
		if step.threaded() {
			v.tongueShut(f, step)
			continue // the slot of a locking washer
		}
		if washer.MatchString(f.Name.Value + " " + f.Note.Value) {
			off := math.Inf(1)
			for _, c := range v.outside {
				if z := v.axialMm(f); c.threaded() {
					off = min(off, max(c.fromMm-z, z-c.toMm))
				}
			}
			v.report(Check, f.Name.Value, f.Pos, Finding{
				What: f.Name.Value + " is not in the thread of the nut whose washer it holds", Numbers: "it lies on " + step.name + ", " + v.mm(2*step.radiusMm),
				OverMm: over(off),
				Rule:   "the tongue of a locking washer lies in the thread of its nut", Source: "by geometry", Fix: "move it along, or a longer thread",
			})
			continue
		}
		key, err := v.keyFor(2 * step.radiusMm)
		if err != nil || math.Abs(f.Around.Mm-key.WidthMm) > 0.5*key.WidthMm {
			continue
		}
		standard := "DIN 6885-1"
		if v.job.Units == parts.Inches {
			standard = "ASME B17.1"
		}
		deepest := key.ShaftDepthMm + 0.5
		if math.Abs(f.Around.Mm-key.WidthMm) > 0.05 || f.Depth.Mm < key.ShaftDepthMm-0.3 || f.Depth.Mm > deepest {
			v.report(Check, f.Name.Value, f.Pos, Finding{
				What:    f.Name.Value + " is not the keyway of " + v.mm(2*step.radiusMm),
				Numbers: v.mm(f.Around.Mm) + " wide and " + v.mm(f.Depth.Mm) + " deep; the standard has " + v.mm(key.WidthMm) + " and " + v.mm(key.ShaftDepthMm),
				OverMm:  over(math.Max(math.Abs(f.Around.Mm-key.WidthMm), math.Abs(f.Depth.Mm-key.ShaftDepthMm))), Rule: "a keyway takes the key of its diameter", Source: standard, Fix: "the width and depth of the standard, or accept it for a key that is made",
			})
		}
	}
	for _, k := range v.q.Keyways {
		v.keywayDepth(k)
		v.woodruff(k)
		v.boughtHub(k)
		v.keywayEnds(k)
	}
	if v.p.Top.Value == "keyway" && !found {
		v.report(Stop, "", v.p.Top.Pos, Finding{
			What: "TOP is to be the keyway, and no keyway is drawn there", Rule: "TOP is a mark that is there", Source: "by geometry", Fix: "draw it under keyways at clock 0, or mark TOP another way",
		})
	}
}

// tongueShut looks for the slot of a locking washer that is too shallow, or ends within its thread, at the end
// that nut and washer come from: there the outside is nowhere larger than the thread.
func (v *view) tongueShut(f *parts.Radial, thread *cylinder) {
	if !washer.MatchString(f.Name.Value + " " + f.Note.Value) {
		return
	}
	if t := thread.thread; t != nil {
		v.atLeast(f.Name.Value, f.Pos, f.Depth.Mm, (t.MajorMm-t.MinorMm)/2+washerMm, Finding{
			What: f.Name.Value + " is too shallow for the tongue of the washer under the nut", Numbers: ", wanted at least ",
			Rule: "the nut passes over the tongue, which lies under its thread", Source: "ISO 2982-2, from memory", Fix: "a deeper slot",
		})
	}
	mid, straight := v.axialMm(f), (f.Along.Mm-f.Around.Mm)/2 // its ends are round
	shut, free := math.Inf(1), [2]bool{true, true}
	for _, c := range v.outside {
		if c.radiusMm > thread.radiusMm+slackMm {
			free[0], free[1] = free[0] && c.fromMm > thread.fromMm, free[1] && c.fromMm < thread.fromMm
		}
	}
	if free[0] {
		shut = min(shut, mid-straight-thread.fromMm)
	}
	if free[1] {
		shut = min(shut, thread.toMm-mid-straight)
	}
	if shut > slackMm && !math.IsInf(shut, 1) {
		v.report(Check, f.Name.Value, f.Pos, Finding{
			What: f.Name.Value + " is shut at the end of " + thread.name + " that the washer comes from", Numbers: v.mm(shut) + " of the thread before its full width",
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

// washer is in the words for the slot of a locking washer.
var washer = regexp.MustCompile(`(?i)\bwashers?\b`)

// motorFlange compares holes and the bore in their middle with the flange of the motor that stands on them, as the job
// names it, or with one of IEC of which two of pitch circle, bore and holes are nearly theirs.
func motorFlange(v *view) {
	for h := range seq.Refs(v.p.Holes) {
		named, stands := false, false
		for e := range seq.Refs(v.job.Loose) {
			stands = stands || e.Stands != nil && e.Stands.On.Part == v.p.Name.Value && e.Stands.On.Feature == h.Name.Value
			if s := v.flangeOn(e, h); s != nil {
				v.onFace(h, *s, Stop)
				named = true
			}
		}
		if named || v.p.Bore == nil || h.Size.Make == parts.TappedHole {
			continue
		}
		pcd, bore := h.Pattern.PCD.Mm, v.p.Bore.Size.Nominal.Mm
		count, hole := v.groupSize(h.Name.Value)
		for _, s := range measured.Standards() {
			if s.Tapped || math.Abs(pcd-s.PitchMm) > 0.1*s.PitchMm || !stands && math.Abs(bore-s.SpigotMm) > 0.1*s.SpigotMm { // what stands there has a spigot, however far off the bore
				continue
			}
			is := 0
			for _, same := range []bool{math.Abs(pcd-s.PitchMm) < 0.05, math.Abs(bore-s.SpigotMm) < 0.05, count == s.Holes && math.Abs(hole-s.HoleMm) < 1.01} {
				if same {
					is++
				}
			}
			m, severity := v.motor(), Check
			if flangeNamed(m, s) {
				severity = Stop // it is the job's motor, and it does not go on
			} else if is == 3 && flangeNumber.MatchString(m.Flange.Value) {
				v.report(Check, h.Name.Value, m.Flange.Pos, Finding{
					What: v.p.Title.Value + " is for a motor flange " + s.Name + ", and the job's motor has another", Numbers: m.Flange.Value,
					Rule: "plate and motor have one flange", Source: "by the job", Fix: "the flange on the motor's plate",
				})
			}
			if is > 1 {
				v.onFace(h, s, severity)
			}
		}
	}
}

// flangeOn is the standard flange that words of the job give the motor on a group of holes; nil for none.
func (v *view) flangeOn(e *parts.Loose, h *parts.HoleGroup) *measured.Standard {
	if e.Stands == nil || e.Stands.On.Part != v.p.Name.Value || e.Stands.On.Feature != h.Name.Value {
		return nil
	}
	named := measured.Named(v.motor().Flange.Value)
	if len(named) == 0 {
		named = measured.Named(e.Item.Value)
	}
	if len(named) != 1 {
		return nil
	}
	return &named[0]
}

// onFace compares a group of holes, and the round in its middle, with a motor's flange: how bad it is that one does
// not go on.
func (v *view) onFace(h *parts.HoleGroup, s measured.Standard, stop Severity) {
	what, source := "flange ", measured.StandardSource
	if !strings.HasPrefix(s.Name, "F") {
		what, source = "face ", measured.FaceSource
	}
	say := func(severity Severity, is, numbers string, off float64) {
		v.report(severity, h.Name.Value, h.Pos, Finding{What: is + " not that of the motor's " + what + s.Name, Numbers: numbers, OverMm: over(math.Abs(off)),
			Rule: "a motor's " + what + "has its standard's sizes", Source: source, Fix: "the size of the standard, or measure the motor"})
	}
	middle, pcd := v.circleOf(h.Name.Value)
	if off := pcd - s.PitchMm; math.Abs(off) > faceOffMm {
		say(stop, "the pitch circle of "+h.Name.Value+" is", v.mm(pcd)+", the "+what+"has "+v.mm(s.PitchMm), off)
	}
	count, mm := v.groupSize(h.Name.Value)
	if count != s.Holes {
		say(stop, "the number of holes of "+h.Name.Value+" is", number(float64(count))+", the "+what+"has "+number(float64(s.Holes)), 0)
	}
	if t, err := threads.Parse(s.Thread); err == nil && (s.Tapped && h.Size.Make == parts.TappedHole || h.Size.Thread != "" && !sameThread(h.Size.Thread, s.Thread) || h.Size.Thread == "" && (mm < t.MajorMm || mm > plainShare*t.MajorMm)) {
		has := "has holes for " + s.Thread
		if s.Tapped {
			has = "is tapped " + s.Thread + ", and the plate has clearance holes"
		}
		say(stop, "the screw of "+h.Name.Value+" is", cmp.Or(h.Size.Thread, v.mm(mm))+"; the "+what+has, 0)
	}
	bore, size := v.roundAt(middle, s.SpigotMm)
	switch off := bore - s.SpigotMm; {
	case off < -slackMm:
		say(stop, "the bore round the spigot is", v.mm(bore)+", the spigot "+v.mm(s.SpigotMm), off)
	case off > faceOffMm:
		say(Check, "the bore round the spigot is", v.mm(bore)+", the spigot "+v.mm(s.SpigotMm), off)
	case size.Fit.Pos.Line > 0 && !fine(size.Fit, 8):
		v.report(Check, h.Name.Value, size.Fit.Pos, Finding{What: "the bore does not centre the spigot of a motor " + what + s.Name, Numbers: v.mm(bore) + " " + size.Fit.Class.Value,
			Rule: "the spigot of a motor is j6; its bore H7 or H8", Source: source, Fix: "fit: H7"})
	}
	v.motorTurn(h, s)
	if v.p.Bore != nil {
		v.motorSide(s)
	}
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
		near(plan.XY{}, 2*c.radiusMm, c.size)
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
	if z+low < slackMm || z+high > main.lengthMm-slackMm {
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
		f.Rule, f.Fix = "a branch opens into its tube", "the same clock and distance at both"
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
		lies, with := j.Meet.Second, v.job.Part(first.Part)
		if first.Part == v.p.Name.Value {
			lies, with = j.Meet.First, v.job.Part(second.Part)
		}
		other := lies.Other()
		if with.Kind == parts.Folded || !j.Meet.Set() || !j.Holds(v.p.Name.Value) || !lead(lies) || lead(other) { // the flange of a guard leaves the bore open
			continue
		}
		v.report(Check, "bore", v.p.Bore.Pos, Finding{
			What: "the lead-in of the bore is on the face that lies on another part, and the spigot of the motor " + s.Name + " comes from the other", Numbers: "bore-" + string(lies),
			Rule: "a spigot comes in at its lead-in", Fix: "the part the other way round, by face: at " + j.Name.Value + ", or edge: bore-" + string(other),
		})
	}
}
