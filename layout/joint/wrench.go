package joint

import (
	"math"
	"slices"

	"centrepop/layout/bolts"
	"centrepop/layout/plan"
	"centrepop/layout/words"
	"centrepop/parts"
	"centrepop/parts/geom"
	"centrepop/parts/seq"
)

// wrench is a torque wrench with its socket, lengths along the bolt. Common practice, no source.
type wrench struct{ socketMm, headMm, radiusMm float64 }

// smallBoltMm is the largest bolt that the smaller drive turns; crowMm is how much longer than
// its jaw a crow-foot is to its drive, and thicker than the head in it; armDias is the length
// of a spanner over the diameter of its bolt. Common practice, no source.
const (
	smallBoltMm = 10.5
	crowMm      = 12.0
	crowOverMm  = 5.0
	armDias     = 20.0
	extensionMm = 125.0 // a bar between socket and wrench
)

func wrenchFor(boltMm float64) wrench {
	if boltMm <= smallBoltMm {
		return wrench{28, 25, 17}
	}
	return wrench{38, 35, 22}
}

// reach is how heads or nuts can be tightened to a torque.
type reach int

const (
	bySocket reach = iota
	byCrowFoot
	bySpanner
)

// reachOf finds what gets at the heads or nuts of a side, and where no socket does, which part
// is in its way.
func (j *making) reachOf(t *joint, s headSide) (r reach, who string) {
	w, top := wrenchFor(t.boltMm), math.Max(0, s.headMm-s.sunkMm)
	there := j.there(t)
	socketHead := !s.isNut && t.head().Keyed()
	flats, socketTop := t.bolt.AcrossFlatsMm, w.socketMm
	if socketHead {
		flats, socketTop = t.boltMm, top+w.socketMm
	}
	around, err := bolts.ToolRadiusMm(bolts.ToolSocket, flats)
	if err != nil {
		return bySocket, ""
	}
	overMm, who := j.lowestOver(s, there, band{0, around, top})
	if overMm >= top+extensionMm+w.headMm {
		return bySocket, who
	}
	if mm, part := j.lowestOver(s, there, band{0, w.radiusMm, socketTop}); mm < overMm {
		overMm, who = mm, part
	}
	if !geom.Over(socketTop+w.headMm, overMm) {
		return bySocket, who
	}
	if socketHead {
		return bySpanner, who
	}
	for _, off := range []float64{1, -1, 0} { // outward, inward, along the circle
		if mm, _ := j.lowestOver(s, there, band{off * (flats + crowMm), w.radiusMm, top}); mm >= top+crowOverMm+w.headMm {
			return byCrowFoot, who
		}
	}
	return bySpanner, who
}

// band is what a tool takes up beside a bolt: so far outward from its axis, its radius, and
// from this height over the seat of the head.
type band struct{ outMm, radiusMm, fromMm float64 }

// lowestOver is the lowest metal in a band over heads, over their seats, of round parts that
// are there; infinite where nothing is.
func (j *making) lowestOver(s headSide, there []parts.Instance, b band) (mm float64, who string) {
	mm = math.Inf(1)
	for _, q := range j.standing(s.group, there) {
		sec := q.r.Out.Section
		round := !q.r.Part.Flat() || q.r.Part.Outline.Shape == parts.CircleOutline
		if sec == nil || !round {
			continue
		}
		for _, p := range s.all() {
			at := math.Hypot(p.XMm, p.YMm) + b.outMm
			for r := at - b.radiusMm; r <= at+b.radiusMm; r += b.radiusMm / 8 {
				for _, z := range metalAlong(sec, math.Abs(r)) {
					out := geom.Between(s.outMm(&q, z.FromMm), s.outMm(&q, z.ToMm))
					if low := math.Max(b.fromMm, out.FromMm); geom.Over(out.ToMm, b.fromMm) && geom.Over(mm, low) {
						mm, who = low, copyTitle(q.r, q.Copy)
					}
				}
			}
		}
	}
	return geom.Clean(mm), who
}

// standing are the parts of a group that are there, and those that are welded on its axis by
// their place.
func (j *making) standing(group int, there []parts.Instance) (out []placedPart) {
	out = seq.Keep(j.placed, func(q placedPart) bool { return q.group == group && slices.Contains(there, q.Instance) })
	for _, t := range j.before {
		i := slices.IndexFunc(out, func(q placedPart) bool { return q.Instance == t.b.Instance() })
		if at, on := j.onFace(t); i >= 0 && on && t.in.Place.OnAxis() {
			out = append(out, placedPart{t.a.Instance(), t.a.r, group, at.then(out[i].at)})
		}
	}
	return out
}

// metalAlong are the stretches of metal on a line parallel to the axis.
func metalAlong(s *plan.Section, radiusMm float64) (out []geom.Span) {
	closed := s.Metal()
	var cuts []float64
	for i, a := range closed {
		b := closed[(i+1)%len(closed)]
		if (a.YMm > radiusMm) != (b.YMm > radiusMm) {
			cuts = append(cuts, a.XMm+(b.XMm-a.XMm)*(radiusMm-a.YMm)/(b.YMm-a.YMm))
		}
	}
	slices.Sort(cuts)
	for i := 0; i+1 < len(cuts); i += 2 {
		out = append(out, geom.Span{FromMm: cuts[i], ToMm: cuts[i+1]})
	}
	return out
}

// tightenWith says with what the torque is brought on where no socket goes on the heads; gauge
// is what shows it.
func (j *making) tightenWith(t *joint, p *plan.BoltPlan) (text, gauge string) {
	sides := j.headSides(t)
	if len(sides) == 0 || p.TorqueNm == 0 {
		return "", "torque wrench"
	}
	heads := sides[0]
	how, who := j.reachOf(t, heads)
	what := words.Either(t.in.Stud() != "", "nuts", heads.what)
	why := who + " bars a socket on the " + what + ": "
	switch {
	case how == bySocket:
		return "", "torque wrench"
	case len(sides) > 1 && t.in.Stud() == "" && j.socketOn(t, sides[1]):
		return why + "tighten the nuts, a ring spanner on the heads.", "torque wrench"
	case how == byCrowFoot:
		return why + "a crow-foot, square to the wrench.", "torque wrench"
	}
	arm := j.up(armDias * t.boltMm)
	tool := words.Either(!heads.isNut && t.head().Keyed(), "a hexagon key in a tube", "an open spanner")
	return why + "pull " + tool + " with a spring balance, square to it. " + t.w.Force(p.TorqueNm/arm*1000, 2) + " at " + t.w.Size(arm) + " is the full torque.", "spring balance"
}

func (j *making) socketOn(t *joint, s headSide) bool {
	how, _ := j.reachOf(t, s)
	return how == bySocket
}
