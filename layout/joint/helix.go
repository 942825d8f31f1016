package joint

import (
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
