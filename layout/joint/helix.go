package joint

import (
	"math"
	"strconv"

	"centrepop/layout/plan"
	"centrepop/layout/weld"
	"centrepop/layout/words"
	"centrepop/parts/seq"
)

// helical tells whether a feature is one of an auger flight.
func (f feature) helical() bool { return f.r.Part.Flight != nil }

// flightOf is the end of a weld that is the inside of an auger flight.
func (t *joint) flightOf() (feature, bool) {
	return seq.Find([]feature{t.a, t.b}, func(f feature) bool { return f.helical() && f.ref.Feature == "inside" })
}

// helixMm is the length of the seam along the inside of a flight, on one side;
// 0 for another weld.
func (t *joint) helixMm() (mm float64) {
	if f, ok := t.flightOf(); ok {
		mm, _ = f.r.HelixMm()
	}
	return mm
}

// flightOn is what a flight is welded on, and what that turns on to see that it runs true.
func (t *joint) flightOn() (title, centres string) {
	on := t.a
	if t.a.helical() {
		on = t.b
	}
	if _, inside := on.r.Sides(); len(inside) > 0 {
		return on.title(), "between cones in its bore"
	}
	return on.title(), "on centres"
}

// tackHelix tacks a flight at every quarter turn, common practice, no source.
func (t *joint) tackHelix() {
	f, _ := t.flightOf()
	in := f.r.Part.Flight
	_, turns := f.r.HelixMm()
	n := int(math.Ceil(4*turns-1e-6)) + 1
	on, centres := t.flightOn()
	_, t.out.Weld.TackLengthMm = t.tackRow(t.helixMm() / (4 * turns))
	sides := words.When(t.out.Weld.Sides > 1, ", on both sides")
	s := t.step("Tack", "Mark the start and, every "+t.w.Size(in.Pitch.Mm)+" along "+on+", the next turn on one line.",
		"Tack "+strconv.Itoa(n)+" × "+t.w.Read(t.out.Weld.TackLengthMm)+" long, at both ends and every quarter turn, "+t.w.Read(t.helixMm()/(4*turns))+" apart along the seam"+sides+".")
	s.Hold = "Pitch at every turn, and the outside true " + centres + "; knock straight now."
	off := weld.PlaceOff(in.Pitch.Mm)
	t.out.Checks = append(t.out.Checks, plan.Check{What: "pitch of the flight", Wanted: t.w.Size(in.Pitch.Mm), Limits: t.w.Limits(in.Pitch.Mm-off, in.Pitch.Mm+off),
		MinMm: in.Pitch.Mm - off, MaxMm: in.Pitch.Mm + off, Gauge: "rule along " + on, Source: weld.PlaceSource})
}
