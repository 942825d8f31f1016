package joint

import (
	"math"

	"centrepop/layout/plan"
	"centrepop/layout/weld"
	"centrepop/layout/words"
	"centrepop/parts"
	"centrepop/parts/geom"
)

// endPlate is the flat part that a weld holds on a round, by its bore or on the round's end.
func (t *joint) endPlate(round parts.Instance) (plate feature, ok bool) {
	own, plate, ok := t.from(round)
	return plate, ok && own.step != nil && !own.step.Inside && plate.r.Part.Flat() && (plate.step != nil && plate.step.Inside || t.standsRound())
}

// flangesTrue is the step after the last weld on a round with two plates that other parts are
// bolted to: their outer faces are to be parallel and square to it, which no later step mends.
// Where stock is left to face them, what they are out has to come off it. What reaches past them keeps it off the plate.
func (j *making) flangesTrue(t *joint) {
	for _, f := range []feature{t.a, t.b} {
		var plates []feature
		limit := math.Inf(1)
		for _, o := range j.made(t) {
			plate, ok := o.endPlate(f.Instance())
			if !o.is(parts.WeldKind) || !ok || !j.facedLater(plate.Instance()) {
				continue
			}
			plates = append(plates, plate)
			box := plate.r.OutlinePath().Bounds()
			limit = min(limit, weld.AlikeOff(min(box.W(), box.H())))
			if spare := plate.spareMm(); spare > 0 {
				limit = min(limit, spare)
			}
		}
		if len(plates) != 2 || j.weldedLater(t, f.Instance()) {
			continue
		}
		a, b, tube := plates[0], plates[1], f.title()
		size := a.r.OutlinePath().Bounds()
		lean := words.Round(weld.LeanOff(min(size.W(), size.H(), f.r.LengthMm())), 1)
		ends := []parts.Instance{f.Instance(), a.Instance(), b.Instance()}
		do, alike, gauge := "stand it on the outer face of "+b.title()+" on a flat plate. Measure the height of the outer face of "+a.title()+
			" at four places, then from the blade of a square", "Heights", "flat plate, height gauge"
		if geom.Over(j.longMm(t, f.Instance(), j.members(f.Instance(), j.made(t))), j.longMm(t, f.Instance(), ends)) {
			do, alike, gauge = "as it stands, for it does not stand on a flange with what is welded on. Measure over the outer faces of "+a.title()+" and "+
				b.title()+" at four places, then from the blade of a square on the outer face of "+b.title(), "Lengths", "tape, straight edges"
		}
		s := t.step("Check the flanges", "Cold, "+do+" to "+tube+" at both ends, from two sides 90° apart.")
		s.Hold = alike + " alike within " + t.w.Read(limit) + ", distances within " + t.w.Read(lean) + "; if not, nothing is bolted to them: straighten or weld anew."
		t.out.Checks = append(t.out.Checks,
			plan.Check{What: a.title() + " parallel to " + b.title(), Limits: "within " + t.w.Read(limit), MaxMm: limit, Gauge: gauge, Source: weld.AlikeSource},
			plan.Check{What: tube + " square to " + b.title(), Limits: "within " + t.w.Read(lean), MaxMm: lean, Gauge: "square, rule", Source: weld.PlaceSource})
		return
	}
}
