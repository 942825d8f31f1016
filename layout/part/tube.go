package part

import (
	"math"
	"slices"
	"strconv"

	"centrepop/layout/plan"
	"centrepop/layout/words"
	"centrepop/parts"
	"centrepop/parts/geom"
)

// tube is a turned part as bought, whose ends may be cut to sit on another
// round.
type tube struct {
	turned
	ends []parts.TubeEnd
}

func (t *tube) overall(s *Sizes) string {
	text := t.turned.overall(s)
	switch n := len(t.ends); n {
	case 0:
		return text
	case 1:
		return text + ", " + string(t.ends[0].Face) + " end saddled"
	default:
		return text + ", " + strconv.Itoa(n) + " ends saddled"
	}
}

func (t *turned) overall(s *Sizes) string {
	return s.W.Dia(s.widest().Size.NominalMm) + " × " + s.W.Size(s.LengthMm()) + " long"
}

func (t *tube) developments(d *shaper) {
	for i := range t.ends {
		d.saddle(&t.ends[i])
	}
	if len(d.saddles) > 0 {
		d.saddled()
	}
}

// alongMm is where a tube begins and ends at a clock angle, and whether that is exact.
func (g *Shape) alongMm(clockDeg float64) (fromMm, toMm float64, exact bool) {
	toMm, exact = g.LengthMm(), true
	for _, m := range g.saddles {
		drop, on := m.dropMm(clockDeg)
		if exact = exact && on; m.end.Face == parts.Front {
			fromMm += drop
		} else {
			toMm -= drop
		}
	}
	return geom.Clean(fromMm), geom.Clean(toMm), exact
}

// saddled draws the tube cut from TOP to 180°, with the edges of its ends behind the cut,
// at the side of 9 o'clock, and says how long it is where it is cut.
func (d *shaper) saddled() {
	s := d.Section
	var said []plan.Dimension
	for _, clock := range []float64{0, 180} {
		from, to, exact := d.alongMm(clock)
		loop := clipped(s.Outer, from, to)
		for _, q := range slices.Backward(clipped(s.Inner, from, to)) {
			loop = append(loop, q)
		}
		if clock == 180 {
			for i := range loop {
				loop[i].YMm = -loop[i].YMm
			}
		}
		s.Whole = append(s.Whole, loop)
		text := words.Either(clock == 0, "TOP", words.Trim(clock, 0)+"°")
		said = append(said, plan.Dimension{Kind: plan.AtDim, FromMm: from, ToMm: to, Inside: clock > 0, Text: d.W.Size(d.W.Even(to-from, 0.1, 0.001)) + " at " + text})
		if !exact || from >= to {
			said = said[:len(said)-1]
		}
	}
	if len(said) == 2 && said[0].FromMm == said[1].FromMm && said[0].ToMm == said[1].ToMm {
		said = said[:1]
		said[0].Text += " and 180°"
	}
	d.atTop = said
	var ends [2][]plan.XY
	const steps = 48
	for i := range steps + 1 {
		clock := 180 + 180*float64(i)/steps
		from, to, _ := d.alongMm(clock)
		y := geom.Clean(s.Inner[0].YMm * math.Cos(clock*math.Pi/180))
		ends[0], ends[1] = append(ends[0], plan.XY{XMm: from, YMm: y}), append(ends[1], plan.XY{XMm: to, YMm: y})
	}
	s.Seen = append(s.Seen, ends[0], ends[1])
}

// clipped is a contour between two places along the axis.
func clipped(line []plan.XY, fromMm, toMm float64) []plan.XY {
	var out []plan.XY
	for i, q := range line {
		if i > 0 && q.XMm > line[i-1].XMm {
			a := line[i-1]
			for _, z := range []float64{fromMm, toMm} {
				if a.XMm < z && z < q.XMm {
					out = append(out, plan.XY{XMm: z, YMm: a.YMm + (q.YMm-a.YMm)*(z-a.XMm)/(q.XMm-a.XMm)})
				}
			}
		}
		if q.XMm >= fromMm && q.XMm <= toMm {
			out = append(out, q)
		}
	}
	return out
}

// volumeMm3 is that of the straight tube less what the saddled ends take off.
func (t *tube) volumeMm3(g *Shape) float64 {
	volume := t.turned.volumeMm3(g)
	for _, s := range g.saddles {
		od, id := g.widest().Size.NominalMm, t.in.Inside[0].Size.Nominal.Mm
		volume -= math.Pi / 4 * (od*od - id*id) * s.meanMm
	}
	return volume
}

func (t *turned) volumeMm3(g *Shape) float64 {
	return turnedVolumeMm3(g.Section.Outer) - turnedVolumeMm3(g.Section.Inner)
}

// onlySawn tells whether an end needs no lathe: it gets a saddle and the tube
// is not turned there.
func (b *bench) onlySawn(set setting) bool {
	return b.saddledEnd(set.face) && !anyTurned(set.steps) &&
		!slices.ContainsFunc(b.bevels, func(c *chamfer) bool { return b.reached(c, set) }) &&
		!slices.ContainsFunc(b.Grooves, func(g Groove) bool { return g.at(set) })
}

// faceFront and faceBack say how the ends are faced; one that gets a saddle is
// only sawn.
func (b *bench) faceFront() string {
	return words.Either(b.saddledEnd(parts.Front), "Leave the front end as sawn: it is cut to the saddle curve", "Face the front clean")
}

func (b *bench) faceBack() string {
	if b.saddledEnd(parts.Back) {
		return "Leave the back end as sawn, at least " + b.W.Size(b.LengthMm()) + " from the front: it is cut to the saddle curve"
	}
	if b.saddledEnd(parts.Front) {
		return "Face the back clean"
	}
	return "Face the back to length " + b.W.Size(b.LengthMm())
}
