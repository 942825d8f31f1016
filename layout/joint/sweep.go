package joint

import (
	"slices"
	"strings"

	"centrepop/layout/plan"
	"centrepop/layout/words"
	"centrepop/parts"
	"centrepop/parts/geom"
	"centrepop/parts/seq"
)

// swept is what carries a motor that drives by a coupling, with a bore for its spigot, and the shaft that is driven, where
// the two stand on one axis; ok is false without them.
func (j *making) swept() (carrier, shaft *placedPart, ok bool) {
	m := j.job.Motor
	motor := seq.At(j.job.Loose, func(e *parts.Loose) bool { return e.As == parts.AMotor && e.Stands != nil && j.job.OnHoles(e.Stands) })
	if m == nil || m.Through != "coupling" || motor == nil {
		return nil, nil, false
	}
	carrier, shaft = j.at(motor.Stands.On.Instance()), j.at(m.Drives.Instance())
	ok = carrier != nil && shaft != nil && carrier.group == shaft.group && len(carrier.r.Side(true)) > 0
	return carrier, shaft, ok
}

// unheld are those of some joints by which alone a part hangs on another, and which let it shift across their axis: bolts
// with play in their holes, and no spigot in a bore. None where the two do not hang together.
func (j *making) unheld(a, b parts.Instance, made []*joint) (out []*joint) {
	if !slices.Contains(j.members(a, made), b) {
		return nil
	}
	for i, o := range made {
		loose := o.is(parts.BoltKind) && o.a.group != nil && o.b.group != nil && o.bolt != nil && geom.Over(2*o.reachMm(), looseMm)
		if loose && !slices.Contains(j.members(a, without(made, o)), b) && !slices.ContainsFunc(j.spigots(o, made[:i]), spigot.centres) {
			out = append(out, o)
		}
	}
	return out
}

// sweep has the bore that the motor centres in set true to the shaft that it drives, where bolts made so far let that shift and
// none of them said so; off are the joints that are loose meanwhile.
func (j *making) sweep(t *joint, off []*joint) {
	carrier, shaft, _ := j.swept()
	on, of := copyTitle(carrier.r, carrier.Copy), copyTitle(shaft.r, shaft.Copy)
	mm := 0.0
	light := seq.Map(off, func(o *joint) string {
		mm += o.reachMm()
		both := o.in.Stud() != "" && o.b.group.Size.Thread == nil
		return words.Either(both, "the nuts at both ends, ", words.Either(o.in.Bolt.Nut || o.in.Stud() != "", "the nuts, ", "the screws, ")) + o.a.title() + " to " + o.b.title()
	})
	t.step("Sweep true", "No spigot centres "+on+" on "+of+": by the play of its holes it can stand "+t.w.Read(geom.Clean(mm))+" off the axis, and the motor with it.",
		"Light meanwhile: "+strings.Join(light, "; ")+". A dial on "+of+", its plunger in the bore of "+on+": turn "+of+" by hand and shift "+on+
			" until the bore runs true. Tighten, and sweep it again.").Hold = "Swept once more when all is tight: the dial moves by twice the offset that the coupling's maker allows at most."
	t.out.Checks = append(t.out.Checks, plan.Check{What: "bore of " + on + " true to " + of + ", tight", Limits: "dial moves by twice the coupling maker's offset at most", Gauge: "dial on " + of})
}

// sweepNow are the joints that are to be loose while the motor's bore is swept, in the step of the bolts with which it comes to
// hang on the driven shaft; none in others.
func (j *making) sweepNow(t *joint) []*joint {
	carrier, shaft, ok := j.swept()
	if !ok || slices.Contains(j.members(carrier.Instance, j.before), shaft.Instance) {
		return nil
	}
	return j.unheld(carrier.Instance, shaft.Instance, j.made(t))
}
