package joint

import (
	"math"
	"slices"
	"strings"

	"centrepop/layout/plan"
	"centrepop/layout/words"
	"centrepop/parts"
	"centrepop/parts/geom"
	"centrepop/parts/seq"
)

// onFlat tells whether the first part stands on the front or the back of a flat one, where it matters nothing that
// its outline is round.
func (t *joint) onFlat() bool {
	p := t.in.Place
	return p != nil && (p.On == string(parts.Front) || p.On == string(parts.Back)) && t.b.r.Part.Flat() && t.b.ref.Feature == "outline"
}

// edgeCorners are those of what stands on its edge: of one side where the job says so, or round its ends.
func (t *joint) edgeCorners(p *plan.WeldPlan) {
	switch in := t.in.Weld; {
	case in.Sides == 1 && (in.SidesSet || in.Length.Set()):
		p.Corners, p.Flush = oneSide(p.Corners), nil
	case !in.SidesSet:
		end := func(c plan.Corner) bool { return c.Side != "front" && c.Side != "back" }
		p.Round = t.a.r.Part.Flat() && !p.OneSided() && slices.ContainsFunc(p.Corners, end)
	}
}

// cornersText says along what a straight fillet lies and on which sides; nothing where it is on every side.
func (t *joint) cornersText(p *plan.WeldPlan) string {
	along := alongs(p.Corners)
	if len(along) < 2 && len(p.Flush) == 0 && !p.Round {
		return ""
	}
	each := seq.Map(along, func(title string) string {
		if own, of := t.sidesOf(p.Corners, title); of == t.a.title() {
			return " on its " + own + " along " + title
		}
		return " on the " + t.sides(p.Corners, title) + " along " + title
	})
	return "; fillet" + strings.Join(each, ",")
}

// sameRoundMm is how far the measured width of a round may be from that of its step.
const sameRoundMm = 0.6

// boreCorners finds on which faces of a plate a round that is welded in its bore makes a corner, and how long it
// is there, round the bore or a shoulder; of one side the round itself is taken before its shoulder, the front
// before the back.
func (j *making) boreCorners(t *joint, p *plan.WeldPlan, plate, round *feature) {
	wide := j.seams.BoreMm(j.with(t), plate.end(), round.end(), plate.step.Size.NominalMm)
	for _, face := range []string{string(parts.Front), string(parts.Back)} {
		outside, _ := round.r.Sides()
		for _, s := range outside {
			if math.Abs(s.Size.NominalMm-wide[face]) < sameRoundMm {
				wide[face] = s.Size.NominalMm
			}
		}
		if mm := wide[face]; mm > 0 {
			p.Corners = append(p.Corners, plan.Corner{Side: face, Of: plate.title(), Along: round.title(), LengthMm: words.Round(math.Pi*mm, 2)})
		}
	}
	switch {
	case len(p.Corners) < p.Sides || p.Sides > 1 && p.Corners[0].LengthMm == p.Corners[1].LengthMm:
		p.Corners = nil // the review says what lacks; alike, all round on both sides says it
	case p.Sides == 1:
		if back := p.Corners[len(p.Corners)-1]; back.LengthMm < p.Corners[0].LengthMm {
			p.Corners[0] = back
		}
		p.Corners = p.Corners[:1]
		p.DiameterMm = geom.Clean(wide[p.Corners[0].Side])
	}
}

// with are the joints that are made before one, and that.
func (j *making) with(t *joint) []*plan.JointPlan {
	return seq.Map(j.made(t), func(o *joint) *plan.JointPlan { return o.out })
}

// alongs are the parts that a fillet runs along, in the order found.
func alongs(corners []plan.Corner) []string {
	return seq.Add(nil, seq.Map(corners, func(c plan.Corner) string { return c.Along })...)
}

// sides names the sides on which a fillet runs along a part, each once with its lengths, and of which part.
func (t *joint) sides(corners []plan.Corner, along string) string {
	text, of := t.sidesOf(corners, along)
	return text + words.When(of != "", " of "+of)
}

// sidesOf is the same with the part whose sides they all are apart; of several each side names its own.
func (t *joint) sidesOf(corners []plan.Corner, along string) (text, of string) {
	its := seq.Keep(corners, func(c plan.Corner) bool { return c.Along == along })
	several := slices.ContainsFunc(its, func(c plan.Corner) bool { return c.Of != its[0].Of })
	long := map[string][]string{}
	names := seq.Map(its, func(c plan.Corner) string {
		name := c.Side
		name += words.When(several, " of "+c.Of)
		long[name] = append(long[name], t.w.Read(c.LengthMm))
		return name
	})
	return words.Join(" and ", seq.Map(seq.Add(nil, names...), func(name string) string {
		return name + " (" + strings.Join(long[name], " and ") + ")"
	})...), words.When(!several, its[0].Of)
}

// oneSide keeps the corners of the side that has most of them.
func oneSide(corners []plan.Corner) []plan.Corner {
	mm := map[string]float64{}
	best := ""
	for _, c := range corners {
		if mm[c.Side] += c.LengthMm; mm[c.Side] > mm[best] {
			best = c.Side
		}
	}
	return seq.Keep(corners, func(c plan.Corner) bool { return c.Side == best })
}
