package read

import (
	"fmt"

	"centrepop/parts"
	"centrepop/parts/seq"
)

// Bounds on the holes, slots and openings, counted one by one. Common
// practice, no source: they are marked and drilled by hand, and a sheet with
// more cannot be read.
const (
	maxPlaces    = 5_000  // in a part
	maxJobPlaces = 10_000 // in a job
)

// places counts the holes, slots and radial openings of a part.
func places(p *parts.Part) int {
	n := seq.Sum(p.Holes, func(g parts.HoleGroup) int { return g.Pattern.Count })
	n += seq.Sum(p.Slots, func(s parts.FaceSlot) int { return s.Pattern.Count })
	n += seq.Sum(p.Radials, func(f parts.Radial) int { return len(f.Clock) })
	return n
}

// fewPlaces checks that a part has no more places than can be handled.
func (r *reader) fewPlaces(p *parts.Part) bool {
	n := places(p)
	if n > maxPlaces {
		r.faultf(p.Name.Pos, fmt.Sprintf("at most %d; the rest on a part file of its own", maxPlaces), "the part has %d holes and openings", n)
	}
	return n <= maxPlaces
}

// fewPlaces checks the same for the whole job.
func (l *loader) fewPlaces() {
	n := seq.Sum(l.job.Parts, places)
	if n > maxJobPlaces {
		l.faultf(l.n.get("parts").pos, fmt.Sprintf("at most %d; make two jobs of it", maxJobPlaces), "the parts have %d holes and openings together", n)
	}
}
