package review

import (
	"cmp"
	"iter"
	"maps"
	"math"
	"slices"

	"centrepop/layout/assembly"
	"centrepop/layout/measured"
	"centrepop/layout/words"
	"centrepop/parts"
	"centrepop/parts/geom"
	"centrepop/parts/seq"
)

// motorShaftMm is the shaft that the motor stands with, or where that is not said and it has no gear that of its frame, by the
// key or by what is bought; 0 where neither is known.
func (r *reviewer) motorShaftMm() float64 {
	motor := seq.At(r.job.Loose, func(e *parts.Loose) bool {
		return e.As == parts.AMotor && e.Stands != nil && e.Stands.Shaft.Set()
	})
	if motor != nil {
		return motor.Stands.Shaft.Mm
	}
	m := r.motor()
	if m.OutRPM.Value > 0 {
		return 0
	}
	frame := m.Frame.Value
	for e := range seq.Refs(r.job.Loose) {
		if said := frameSaid().FindStringSubmatch(e.Item.Value); e.As == parts.AMotor && said != nil {
			frame = cmp.Or(frame, said[1])
		}
	}
	end, _ := measured.FrameShaft(frame, m.Kilowatts())
	return end.DiameterMm
}

// turnedByMotor looks for what turns what the words put on the motor's shaft: a keyway, a clamp or a cone, or a set screw, where
// they speak of no key.
func (v made) turnedByMotor() {
	how := v.e.How.Value
	byScrew := slices.ContainsFunc(v.p.Radials, func(f parts.Radial) bool { return f.Size.Make == parts.TappedHole }) && !keyWord().MatchString(how)
	cone := slices.ContainsFunc(v.inside, func(c *cylinder) bool { return c.Drawn.Taper != nil })
	if !onMotor().MatchString(how) || v.e.Held == parts.ByForce || len(v.inside) == 0 || len(v.q.Keyways) > 0 || v.q.Clamp != nil || byScrew || cone {
		return
	}
	v.report(Check, "", v.p.Pos, Finding{
		What: "nothing turns " + v.p.Title.Value + " with the motor's shaft", Numbers: "no keyway, no clamp, no cone",
		Rule: "what drives is keyed, or shrunk on", Source: "common practice, no source", Fix: "a keyway in its bore",
	})
}

// onMotorShaft compares the bore of what the words put on the motor's shaft with that shaft.
func (v made) onMotorShaft() {
	shaftMm, what := v.motorShaftMm(), " is loose on the motor's shaft"
	if shaftMm == 0 || len(v.inside) == 0 || !onMotor().MatchString(v.e.How.Value) {
		return
	}
	bore := slices.MinFunc(v.inside, func(a, b *cylinder) int { return cmp.Compare(a.RadiusMm(), b.RadiusMm()) })
	if geom.Over(shaftMm, 2*bore.RadiusMm()) {
		what = " does not go on the motor's shaft"
	}
	if off := math.Abs(2*bore.RadiusMm() - shaftMm); off > faceOffMm {
		v.report(Stop, bore.Name, bore.Drawn.Pos, Finding{
			What: v.p.Title.Value + what, Numbers: v.mm(2*bore.RadiusMm()) + " on " + v.mm(shaftMm), OverMm: over(off),
			Rule: "a bore has the size of its shaft", Source: "by geometry", Fix: "the bore, or the motor's frame or shaft as measured",
		})
	}
}

// onMotorKey compares the keyway of what the words put on the motor's shaft with the key that this has as bought: that of its diameter.
func (v made) onMotorKey() {
	shaftMm := v.motorShaftMm()
	if shaftMm == 0 || !onMotor().MatchString(v.e.How.Value) {
		return
	}
	for _, k := range v.q.Keyways {
		key, err := v.keyFor(shaftMm)
		if err != nil || !k.Inside || math.Abs(k.DiameterMm-shaftMm) > faceOffMm || geom.Alike(key.WidthMm, k.WidthMm) {
			continue
		}
		v.report(Check, k.Name, entryPos(v.p, k.Name), Finding{
			What:    k.Name + " of " + v.p.Title.Value + " has another width than the key of the motor's shaft",
			Numbers: v.mm(k.WidthMm) + ", the standard has " + v.mm(key.WidthMm) + " on " + v.mm(shaftMm),
			OverMm:  over(math.Abs(key.WidthMm - k.WidthMm)), Rule: "a hub on a shaft as bought has the keyway of that shaft", Source: key.Source.String(),
			Fix: "delete key, or accept it for the key as measured",
		})
	}
}

// outOfLine is how far the grooves of two pulleys may lie out of line, as a share of the distance of their shafts: 1/10 in a
// foot, as makers of V-belts ask; and by how much at the least, mm, by which nobody sets them closer (common practice, no
// source).
const outOfLine, leastOutMm = 0.1 / 12, 0.5

// wheels are the part that the words put on the motor's shaft, and the one that a joint puts on the step which the motor
// drives through a belt or a chain, the largest of each; nil where the job tells it not.
func (r *reviewer) wheels() (motor, driven *view) {
	m := r.motor()
	if m.Through != "belt" || !m.Drives.Set() {
		return nil, nil
	}
	larger := func(a, b *view) *view {
		if a == nil || b != nil && mostMm(b.outside) > mostMm(a.outside) {
			return b
		}
		return a
	}
	for v := range everyMade(r) {
		if onMotor().MatchString(v.e.How.Value) {
			motor = larger(motor, v.view)
		}
	}
	for _, j := range r.job.Joints {
		hub, on := j.Ends()
		switch {
		case j.Press != nil:
			hub, on = j.Press.Bore, j.Press.Shaft
		case j.Slide == nil:
			continue
		}
		if on.Part == m.Drives.Part && on.Feature == m.Drives.Feature {
			driven = larger(driven, r.viewOf(hub.Part))
		}
	}
	return motor, driven
}

// pulleys are both wheels of a belt, where each has a groove, or several alike; nil else.
func (r *reviewer) pulleys() (motor, driven *view) {
	motor, driven = r.wheels()
	if motor == nil || driven == nil || motor.grooveMm() == 0 || driven.grooveMm() == 0 {
		return nil, nil
	}
	return motor, driven
}

// What shuts a hand off from a wheel: a part that stands still within the reach of an arm, in more than half of the ways
// outward from its rim, in its plane and leaning from it to either side (common practice, no source).
const roundWays, leanDeg = 24, 30.0

// beltOpen looks for a belt or a chain that runs without a guard: where the job has none at all, and where those that are made
// stand so that the rim of a wheel is open over most of its round, or where they stand across the belt.
func (r *reviewer) beltOpen() {
	if r.motor().Through != "belt" {
		return
	}
	bought := slices.ContainsFunc(r.job.Loose, func(e parts.Loose) bool { return parts.PartUse("", e.Item.Value) == parts.Guarding })
	made := slices.ContainsFunc(r.job.Parts, func(p *parts.Part) bool { return p.For == parts.Guarding })
	open := Finding{Pos: r.motor().Pos, Rule: "a guard keeps hands off the place where a belt or a chain runs onto its wheel", Source: "ISO 13857 and ISO 14120, from memory"}
	switch {
	case bought: // where it stands is not known
	case !made:
		open.What, open.Fix = "the belt or chain of the motor runs in the open: no part of the job is a guard, and none is bought", "for: guard in the part that covers it, or a guard as item under loose"
		r.add(open)
	default:
		for v, deg := range r.openWheels(r.wheels()) {
			open.What, open.Fix = "the rim of "+v.p.Title.Value+
				" is open over most of its round: no guard stands before it", "a guard that reaches over the wheels and the belt between, or deeper flanges"
			open.Part, open.Pos = v.p.Name.Value, v.p.Name.Pos
			arc := mostMm(v.outside) * deg * math.Pi / 180
			open.Numbers, open.OverMm = r.mm(words.Round(arc, 0))+" of it, "+number(deg)+"°, wanted at most 180°", over(arc)
			r.add(open)
		}
	}
	r.acrossBelt()
}

// beltStill are the made parts that stand still beside the wheels of a belt.
func (r *reviewer) beltStill(wheels ...*view) []assembly.Body {
	m, turns := r.machine(), r.turnsWith(r.motor().Drives.Instance())
	return seq.Keep(m.Bodies, func(b assembly.Body) bool {
		of, isMade := m.Of[b.ID]
		return isMade && !turns[of] && !slices.ContainsFunc(wheels, func(v *view) bool { return v != nil && v.p.Name.Value == of.Part })
	})
}

// openWheels are those of both wheels, nil ones left out, from whose rim most ways outward meet nothing that stands still
// within an arm's reach, and over how much of their round.
func (r *reviewer) openWheels(motor, driven *view) iter.Seq2[*view, float64] {
	still := r.beltStill(motor, driven)
	return func(yield func(*view, float64) bool) {
		for _, v := range []*view{motor, driven} {
			if v == nil {
				continue
			}
			b := r.bodyOf(v.p.Name.Value)
			if b == nil {
				continue
			}
			if deg := v.openDeg(b, still); deg > 180 && !yield(v, deg) {
				return
			}
		}
	}
}

// openDeg is over how much of the round of a wheel, at its groove or the middle of its rim, nothing shuts an arm off.
func (v *view) openDeg(b *assembly.Body, still []assembly.Body) (deg float64) {
	at := assembly.Vec{Z: -v.runsMm()}
	for _, clock := range geom.Evenly(roundWays) {
		out := assembly.ClockWay(clock)
		if slices.ContainsFunc([]float64{0, -leanDeg, leanDeg}, func(lean float64) bool {
			way := assembly.Vec{X: out.X, Y: out.Y, Z: math.Tan(lean * math.Pi / 180)}.Unit()
			hits := assembly.Crossings(still, b.Pose.Apply(at.Add(out.Times(mostMm(v.outside)))), b.Pose.Turn(way))
			return len(hits) == 0 || hits[0].FromMm > armMm
		}) {
			deg += 360 / roundWays
		}
	}
	return deg
}

// runsMm is where the belt or the chain runs on a wheel, from its front: at its groove, or in the middle of its largest step.
func (v *view) runsMm() float64 {
	if at := v.grooveMm(); at > 0 || len(v.outside) == 0 {
		return words.Either(at > 0, at, v.lengthMm/2)
	}
	rim := slices.MaxFunc(v.outside, func(a, b *cylinder) int { return cmp.Compare(a.RadiusMm(), b.RadiusMm()) })
	return (rim.FromMm + rim.ToMm) / 2
}

// acrossBelt looks for what stands across the belt or the chain on its straight ways from rim to rim.
func (r *reviewer) acrossBelt() {
	motor, driven := r.wheels()
	_, span, ok := r.apart(motor, driven)
	if !ok || span <= 0 {
		return
	}
	from, to := r.bodyOf(motor.p.Name.Value), r.bodyOf(driven.p.Name.Value)
	still, axis := r.beltStill(motor, driven), from.Pose.Z
	a, b := motor.runsAt(from), driven.runsAt(to)
	along := b.Sub(a)
	along = along.Sub(axis.Times(along.Dot(axis))).Unit()
	for _, side := range []float64{-1, 1} {
		out := axis.Cross(along).Times(side)
		start, end := a.Add(out.Times(mostMm(motor.outside))), b.Add(out.Times(mostMm(driven.outside)))
		hits := seq.Keep(assembly.Crossings(still, start, end.Sub(start).Unit()), func(c assembly.Crossing) bool { return c.FromMm < end.Sub(start).Len() })
		if len(hits) == 0 {
			continue
		}
		p := r.job.Part(r.machine().Of[hits[0].ID].Part)
		r.add(Finding{
			Severity: Stop, Part: p.Name.Value, Pos: p.Name.Pos, What: r.machine().Title(hits[0].ID) + " stands across the belt or chain between " + motor.p.Title.Value + " and " + driven.p.Title.Value,
			Numbers: r.mm(words.Round(hits[0].FromMm, 0)) + " from the wheel on the motor, of " + r.mm(words.Round(span, 0)),
			Rule:    "a belt runs free from wheel to wheel", Source: "by geometry", Fix: "an opening or a wider guard where it runs, or the wheels elsewhere",
		})
		return
	}
}

// runsAt is the middle of the wheel where its belt runs.
func (v *view) runsAt(b *assembly.Body) assembly.Vec {
	return b.Pose.Apply(assembly.Vec{Z: -v.runsMm()})
}

// beltGroove is where the middle of the grooves in the outside of a pulley lies, from its front, the diameters over its rim and
// of their floors, and how wide each is. All are 0 where there is none, or where they are not alike.
func (v *view) beltGroove() (g beltGroove) {
	all := v.beltGrooves()
	for _, o := range all {
		g = beltGroove{g.atMm + o.atMm/float64(len(all)), o.rimMm, o.floorMm, o.wideMm}
		if first := all[0]; !geom.Alike(o.rimMm, first.rimMm) || !geom.Alike(o.floorMm, first.floorMm) || !geom.Alike(o.wideMm, first.wideMm) {
			return beltGroove{}
		}
	}
	return g
}

// beltGrooves are steps that are lower than both beside them, as wide as flanks there are apart at the rim, and grooves that are drawn as
// such.
func (v *view) beltGrooves() (all []beltGroove) {
	for _, c := range v.outside {
		before, behind := c.neighbours()
		if before == nil || behind == nil || !geom.Some(c.outBy(before)) || !geom.Some(c.outBy(behind)) {
			continue
		}
		from := words.Either(before.Drawn.Taper != nil && before.flank(), before.FromMm, c.FromMm)
		to := words.Either(behind.Drawn.Taper != nil && behind.flank(), behind.ToMm, c.ToMm)
		all = append(all, beltGroove{(from + to) / 2, 2 * mostMm(v.outside), 2 * c.RadiusMm(), geom.Clean(to - from)})
	}
	for _, row := range v.q.Grooves {
		if row.Kind == string(parts.OtherGroove) && !row.Inside && row.Face == "" {
			all = append(all, beltGroove{(row.FromMm + row.ToMm) / 2, row.DiameterMm, row.FloorMm, row.ToMm - row.FromMm})
		}
	}
	return all
}

func (v *view) grooveMm() float64 { return v.beltGroove().atMm }

// beltGroove is the grooves of a pulley as one, mm.
type beltGroove struct{ atMm, rimMm, floorMm, wideMm float64 }

// drivenRPM is the speed at the driven shaft: that of the gear's output, of the motor through a coupling, and through a belt
// that of the motor by its pulleys, at their rims or their grooves, whichever is faster; 0 where the job does not tell.
func (r *reviewer) drivenRPM() (rpm float64, why string) {
	m := r.motor()
	if m.OutRPM.Value > 0 {
		return m.OutRPM.Value, "the motor's output"
	}
	if m.Through == "coupling" && m.Drives.Set() {
		return m.RPM.Value, "the motor"
	}
	motor, driven := r.pulleys()
	if motor == nil {
		return 0, ""
	}
	by, on := motor.beltGroove(), driven.beltGroove()
	return m.RPM.Value * math.Max(by.rimMm/on.rimMm, by.floorMm/on.floorMm), "the motor turns " + driven.p.Title.Value + " by " + motor.p.Title.Value
}

// apart is how far the grooves of two pulleys that stand lie out of line, and how far apart their shafts are; false where the
// places do not tell.
func (r *reviewer) apart(motor, driven *view) (offMm, spanMm float64, ok bool) {
	if motor == nil || driven == nil {
		return 0, 0, false
	}
	a, b := r.bodyOf(motor.p.Name.Value), r.bodyOf(driven.p.Name.Value)
	if a == nil || b == nil || !r.machine().Tied(a, b) || geom.Over(1, math.Abs(a.Pose.Z.Dot(b.Pose.Z))) {
		return 0, 0, false
	}
	between := motor.runsAt(a).Sub(driven.runsAt(b))
	offMm = math.Abs(between.Dot(b.Pose.Z))
	return offMm, math.Sqrt(math.Max(0, between.Dot(between)-offMm*offMm)), true
}

// beltOff looks for pulleys whose grooves do not lie in one plane, or wheels of a chain whose rims do not.
func (r *reviewer) beltOff() {
	motor, driven := r.wheels()
	if motor == nil || driven == nil || (motor.grooveMm() > 0) != (driven.grooveMm() > 0) {
		return
	}
	what := words.Either(motor.grooveMm() > 0, "groove", "rim")
	off, span, ok := r.apart(motor, driven)
	if most := math.Max(leastOutMm, outOfLine*span); ok && geom.Over(off, most) {
		r.add(Finding{
			Part: driven.p.Name.Value, Pos: driven.p.Pos, What: "the belt runs askew: the " + what + " of " + motor.p.Title.Value + " lies beside that of " + driven.p.Title.Value,
			Numbers: r.mm(words.Round(off, 2)) + " out of line, shafts " + r.mm(words.Round(span, 0)) + " apart, wanted at most " + r.mm(words.Round(most, 1)), OverMm: over(off),
			Rule: "the grooves of two pulleys, or the rims of two wheels of a chain, lie in one plane, to 1/10 in a foot between their shafts (8 mm in a metre)", Source: "makers of V-belts",
			Fix: "one of the two farther along its shaft, or the motor higher or lower",
		})
	}
}

// widestGroove is how much wider than the top of a belt its groove is at the most: of A and B there are grooves for both, and beyond
// them the belt sinks to the floor and slips (common practice, no source).
const widestGroove = 1.25

// beltFits compares the V-belt that is bought with the grooves of both pulleys, and its length with the way round them.
func (r *reviewer) beltFits(e *parts.Loose) {
	b, ok := measured.ParseBelt(e.Item.Value)
	motor, driven := r.pulleys()
	if !ok || !e.Belt() || motor == nil {
		return
	}
	for _, v := range []*view{motor, driven} {
		g := v.beltGroove()
		f := Finding{
			Part: v.p.Name.Value, Pos: v.p.Pos, Rule: "a V-belt bears on the flanks of its groove, level with the rim", Source: "ISO 4183, ISO 4184",
			Fix: "the belt of that groove, or the groove of that belt",
		}
		r.firstOf(f,
			flaw{geom.Over(g.wideMm, widestGroove*b.TopMm), Finding{
				What:    "the belt " + b.Name + " sinks in the groove of " + v.p.Title.Value,
				Numbers: "groove " + r.mm(g.wideMm) + " wide, the belt " + r.mm(b.TopMm) + " at its top",
			}},
			flaw{geom.Over(b.PitchWidthMm, g.wideMm), Finding{
				What:    "the belt " + b.Name + " does not go into the groove of " + v.p.Title.Value,
				Numbers: "groove " + r.mm(g.wideMm) + " wide, the belt " + r.mm(b.PitchWidthMm) + " in its middle",
			}},
			flaw{geom.Over(b.ThickMm, (g.rimMm-g.floorMm)/2), Finding{
				What:    "the belt " + b.Name + " lies on the floor of the groove of " + v.p.Title.Value,
				Numbers: "groove " + r.mm((g.rimMm-g.floorMm)/2) + " deep, the belt " + r.mm(b.ThickMm) + " thick",
				Fix:     "a groove that is deeper than its belt is thick"}},
		)
	}
	if b.MostMm > 0 {
		r.beltLong(e, b, motor, driven)
	}
}

// beltLong compares the length of a belt with the way round its pulleys, as far as slots let their shafts be shifted.
func (r *reviewer) beltLong(e *parts.Loose, b measured.Belt, motor, driven *view) {
	_, span, ok := r.apart(motor, driven)
	if !ok {
		return
	}
	shift := r.takeUpMm()
	pitch := func(v *view) float64 { return v.beltGroove().rimMm - 2*b.DeepMm }
	round := func(apartMm float64) float64 {
		return measured.RoundMm(pitch(motor), pitch(driven), math.Max(apartMm, (pitch(motor)+pitch(driven))/2))
	}
	least, most := round(span-shift), round(span+shift)
	wanted := r.mm(words.Round(round(span), 0)) + " round both pulleys"
	if shift > 0 {
		wanted = r.mm(words.Round(least, 0)) + " to " + r.mm(words.Round(most, 0)) + " as far as the slots let them be shifted"
	}
	f := Finding{
		Pos: e.Item.Pos, Rule: "a belt goes round its pulleys and is tight there", Source: "by geometry; lengths of belts: ISO 4184",
		Fix: "a belt of that length, or another distance of the shafts",
	}
	f.Numbers = r.mm(words.Round((b.LeastMm+b.MostMm)/2, 0)) + " at its pitch line, wanted " + wanted
	r.firstOf(f,
		flaw{geom.Over(least, b.MostMm), Finding{What: "the belt " + b.Name + " is too short for its pulleys"}},
		flaw{geom.Over(b.LeastMm, most) && !r.tensioned(), Finding{What: "the belt " + b.Name + " is too long for its pulleys"}},
	)
}

// takeUpMm is how far slots let the shafts of a belt be shifted, those of each part that joints set along them once.
func (r *reviewer) takeUpMm() float64 {
	by := map[string]float64{}
	for _, j := range r.planned(parts.BoltKind) {
		if !r.job.Joint(j.Name).Bolt.Adjust.Set() {
			continue
		}
		for _, s := range j.Bolt.Shifts {
			by[s.Of] = max(by[s.Of], s.Mm, s.BackMm)
		}
	}
	return seq.Sum(slices.Sorted(maps.Values(by)), func(mm float64) float64 { return mm }) // sorted, for a sum has one last digit
}

// tensioned tells whether something else than slots keeps the belt tight, by its name.
func (r *reviewer) tensioned() bool {
	return slices.ContainsFunc(r.job.Parts, func(p *parts.Part) bool { return tightens().MatchString(p.Title.Value) }) ||
		slices.ContainsFunc(r.job.Loose, func(e parts.Loose) bool { return tightens().MatchString(e.Item.Value) })
}
