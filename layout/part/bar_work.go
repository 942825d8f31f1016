package part

import (
	"math"
	"slices"
	"strconv"
	"strings"

	"github.com/tdewolff/canvas"

	"centrepop/layout/bars"
	"centrepop/layout/cutting"
	"centrepop/layout/plan"
	"centrepop/layout/words"
	"centrepop/parts"
	"centrepop/parts/geom"
	"centrepop/parts/seq"
)

// operations saw a bar and cope its ends.
func (b *bar) operations(w *bench) {
	saw := plan.Operation{Machine: plan.Saw, Title: "Saw to length", Gauge: "tape, square, protractor", Refs: w.refs(plan.LengthFeature)}
	line := "From " + b.sectionWords(w.W) + ": " + w.W.Size(b.in.Length.Mm) + " between the outermost points"
	line += words.When(b.sides.TopMm != b.sides.BottomMm, ", top "+w.W.Taped(b.sides.TopMm)+" and bottom "+w.W.Taped(b.sides.BottomMm)+" from point to point")
	saw.Do = []string{line + "."}
	if left, right := b.sawWords(w.W, parts.LeftEnd), b.sawWords(w.W, parts.RightEnd); left == right {
		saw.Do = append(saw.Do, "Both ends"+left+".")
	} else {
		saw.Do = append(saw.Do, "Left end"+left+".", "Right end"+right+".")
	}
	if b.short != "" {
		saw.Do = append(saw.Do, b.short)
	}
	saw.Limits = w.limits("length", w.General(b.in.Length.Mm))
	w.op(warn(saw, clampStock))
	for _, side := range []parts.Side{parts.LeftEnd, parts.RightEnd} {
		if c, ok := b.copes[side]; ok {
			w.op(warn(plan.Operation{
				Machine: plan.Bench, Title: "Cope the " + string(side) + " end", Do: b.copeLines(w.W, side, c),
				Tool: "hole saw, or grinder and half-round file", Gauge: "the round itself",
			}, clampPart, grinding))
		}
	}
}

// sawWords say how an end is sawn.
func (b *bar) sawWords(w words.Writer, side parts.Side) string {
	switch e := b.endPlan(w, side); {
	case e.SawDeg != 0:
		return ": saw set " + words.Angle(e.SawDeg) + " from square, long point at the " + e.Long
	case e.Cope != "":
		return " square; it is coped afterwards"
	}
	return " square"
}

func (b *bar) mark(w *bench) {
	if len(w.Groups) == 0 {
		return
	}
	lines := map[string][]string{}
	var order []string
	for m := range seq.Refs(w.Groups) {
		at := b.gaugeText(w.W, m)
		order, lines[at] = seq.Add(order, at), append(lines[at], words.Spaced(m.Name.Value))
	}
	w.op(warn(plan.Operation{
		Machine: plan.Bench, Title: "Mark out, punch", Tool: "tape or rule hooked on the outermost point, square, centre punch",
		Do: []string{"Lines: " + strings.Join(seq.Map(order, func(at string) string { return strings.Join(lines[at], ", ") + " " + at }), "; ") + "."},
	}, punching))
}

// holeSaw opens a hole in a wall that is larger than the largest drill of the shop, each wall from its own side: a pilot drill is all that
// goes before it. Nothing where the drills make it or it is not a bar's.
func (b *bench) holeSaw(m *Group, way *cutting.Way) []string {
	wall, _ := b.form.wallsMm(b.Sizes, m)
	if _, is := b.form.(*bar); !is || !m.Through || way.Finish != cutting.Bored || m.Size.FinishedMm <= b.largestDrillMm() {
		return nil
	}
	clearance := m.Size.Clearance
	mm, err := cutting.HoleSaw(m.Size.FinishedMm, wall, clearance, b.drills())
	if err != nil {
		return nil
	}
	way.Drills = nil
	line := "Hole saw " + b.W.Dia(mm) + words.When(!clearance, " or the next smaller") + b.atSpeed(cutting.Ream, mm, false) + ", its pilot drill in the punch mark"
	line += words.When(m.BothWalls(), ", each wall from its own side: carry the marks square round the bar")
	if clearance {
		way.Finish = cutting.Drilled
	}
	return []string{line + "; draw it back often, " + b.fluid() + "."}
}

// developments are the templates of the copes.
func (b *bar) developments(d *shaper) {
	if b.err != nil || !b.wraps() {
		return
	}
	for _, side := range []parts.Side{parts.LeftEnd, parts.RightEnd} {
		if c, ok := b.copes[side]; ok {
			d.Developments = append(d.Developments, b.copePattern(d, side, c))
		}
	}
}

// copePattern is paper round the end of a bar, cut along the hollow: the front, a side
// and the back, one beside the other, to the middles of the corners beyond. The other side
// is straight.
func (b *bar) copePattern(d *shaper, side parts.Side, c bars.Cope) plan.Development {
	deep := b.in.Depth.Mm
	r, _ := b.shape.CornersMm()
	from := b.templateFromMm(d.W, c)
	long := b.in.Length.Mm - from
	at := func(v float64) float64 { // how long the paper is at a height v over the middle of the front
		return long - (math.Sqrt(math.Max(0, c.RadiusMm*c.RadiusMm-v*v)) - c.EdgeMm)
	}
	half, round := b.in.Width.Mm/2-r, math.Pi*r/2
	edge, x := &canvas.Path{}, 0.0
	const steps = 48
	along := func(mm float64, v func(t float64) float64) {
		for i := range steps + 1 {
			edge.LineTo(x+mm*float64(i)/steps, at(v(float64(i)/steps)))
		}
		x += mm
	}
	edge.MoveTo(0, 0)
	along(round/2, func(t float64) float64 { return half + r*math.Sin((1-t)*math.Pi/4) })
	along(2*half, func(t float64) float64 { return half * (2*t - 1) })
	folds := []float64{x + round/2}
	along(round, func(t float64) float64 { return half + r*math.Sin(t*math.Pi/2) })
	along(deep-2*r, func(float64) float64 { return half + r })
	folds = append(folds, x+round/2)
	along(round, func(t float64) float64 { return half + r*math.Cos(t*math.Pi/2) })
	along(2*half, func(t float64) float64 { return half * (1 - 2*t) })
	along(round/2, func(t float64) float64 { return half + r*math.Sin(t*math.Pi/4) })
	edge.LineTo(x, 0)
	edge.Close()
	out := plan.Development{
		Name: "cope-" + string(side), Kind: plan.CopePattern, Title: "Cope template: " + string(side) + " end", Copies: 1,
		On: "the outside of the bar, " + b.sectionWords(d.W), Edge: "on a line square round the bar, " + d.W.Size(from) + " from the " + string(side.OtherEnd()) + " end",
		Beyond: "to the " + string(side) + " end", MaxMm: plan.XY{XMm: geom.Clean(x), YMm: geom.Clean(long)},
		Lines: []plan.PatternLine{{Name: "edge", Role: "edge", Path: plan.Contour(edge.ToSVG())}},
		Sizes: []plan.PatternValue{{Name: "front to back", Text: d.exact(x)}, {Name: "radius of the round", Text: d.W.Size(c.RadiusMm)}, {Name: "depth of the hollow", Text: d.exact(c.DepthMm)}},
	}
	next := words.Either(side == parts.LeftEnd, "top", "bottom") // right of the front, the right end up
	for i, name := range []string{"front | " + next, next + " | back"} {
		out.Lines = append(out.Lines, plan.PatternLine{Name: name, Role: "fold", Path: lineOf(plan.XY{XMm: folds[i]}, plan.XY{XMm: folds[i], YMm: long - c.DepthMm - 1}), Text: name})
	}
	return out
}

// steps of a bar there are none; here it is refused what cannot be sawn.
func (b *bar) steps(z *sizer) []Step {
	if b.err != nil {
		z.sizeFault(b.in.Length.Pos, "the bar cannot be sawn: its ", b.err)
		return nil
	}
	for _, side := range []parts.Side{parts.LeftEnd, parts.RightEnd} {
		e := b.in.End(side)
		if !e.Coped() {
			continue
		}
		mm := e.Round.Mm
		if e.Onto.Set() {
			_, mate := z.mateOf(&z.faults, e.Onto)
			if mate == nil {
				if len(z.list) == 0 {
					z.fault(e.Onto.Pos, "there is no round "+e.Onto.Part+"."+e.Onto.Feature+" in the job", "an outside of a part, or onto: {diameter: 114.3}")
				}
				continue
			}
			mm = mate.Size.NominalMm
		}
		cope, err := bars.CopeOn(mm, b.in.Width.Mm)
		switch {
		case err != nil:
			z.sizeFault(e.Pos, "the end cannot be coped: its ", err)
		case cope.DepthMm >= b.in.Length.Mm:
			z.fault(e.Pos, "the cope is deeper than the bar is long", "a longer bar")
		default:
			b.copes[side] = cope
		}
	}
	return nil
}

// check measures the length of a bar between its outermost points.
func (b *bar) check(r *record, f plan.Feature) {
	if f.Kind == plan.LengthFeature {
		r.checkLength(f.N, f.Name, b.in.Length.Mm)
		return
	}
	b.usual.check(r, f)
}

// heldUnder is how a bar lies under the drill, the side that is drilled up.
func (b *bar) heldUnder(_ *bench, m *Group) string {
	if b.in.Section == parts.RoundBar {
		return "in V blocks, " + string(m.Side()) + " up"
	}
	return "clamped on parallels, " + string(m.Side()) + " up"
}

// checkPlace measures each place of a group along the bar from its end.
func (b *bar) checkPlace(r *record, m *Group) {
	for i := range m.Points {
		mm, end := b.fromEnd(m, i)
		r.sized(plan.Check{
			Ref: r.ref(m), What: words.Spaced(m.Name.Value) + " " + strconv.Itoa(m.Group.First+i) + " from the " + string(end) + " end", Wanted: r.W.Size(mm),
			Gauge: "rule",
		}, r.General(mm))
		if i == 0 {
			continue
		}
		if before, from := b.fromEnd(m, i-1); from == end && r.pitchLost(before, mm, m.Size) {
			pitch := m.apartMm(i-1, i)
			r.sized(plan.Check{
				Ref:    r.ref(m),
				What:   words.Spaced(m.Name.Value) + " " + strconv.Itoa(m.Group.First+i-1) + " to " + strconv.Itoa(m.Group.First+i) + ", centre to centre",
				Wanted: r.W.Size(pitch), Gauge: "calipers",
			}, r.pitch(pitch, m.Size))
		}
	}
}

// rim is the metal between a hole and one edge, and how much is wanted there.
type rim struct {
	what         string
	leftMm, want float64
}

// ends are the rims of a hole, or of an end of a slot, towards the two ends of the bar.
func (b *bar) ends(m *Group, at plan.XY, wantMm float64) []rim {
	x, y := m.inFront(at).XMm, at.YMm
	switch m.On {
	case parts.TopSide:
		y = b.in.Width.Mm / 2
	case parts.BottomSide:
		y = -b.in.Width.Mm / 2
	}
	radius := m.Size.FinishedMm / 2
	var out []rim
	for _, side := range []parts.Side{parts.LeftEnd, parts.RightEnd} {
		room := b.in.Length.Mm/2 + x
		if side == parts.RightEnd {
			room = b.in.Length.Mm/2 - x
		}
		left := room - b.in.EndMm(side, y) - radius
		if m.On == "" { // else the cut runs square across the side
			left = (room-b.in.EndMm(side, y))*math.Cos(b.in.End(side).Mitre.Deg*math.Pi/180) - radius
			if c, coped := b.copes[side]; coped {
				left = math.Hypot(room+c.EdgeMm, y) - c.RadiusMm - radius
			}
		}
		out = append(out, rim{"the " + string(side) + " end", left, wantMm})
	}
	return out
}

// across are the rims of the same over its side: to a free edge, or to the corner or the
// root of the section, which it only must not reach.
func (b *bar) across(m *Group, at plan.XY, wantMm float64) []rim {
	if b.in.Section == parts.RoundBar {
		return nil
	}
	low, high := b.shape.FlatMm(bars.Side(m.Side()))
	half, radius := b.in.SideMm(m.Side()).Max.YMm, m.Size.FinishedMm/2
	of := func(left, flat float64) rim {
		if geom.Over(half, flat) || b.shape.Hollow() {
			return rim{"the corner or root", left, 0}
		}
		return rim{"an edge", left, wantMm}
	}
	return []rim{of(at.YMm-low-radius, -low), of(high-at.YMm-radius, high)}
}

// Metal wanted beside a hole, in diameters of it: a bolt hole's centre lies 1.2 of them
// from an edge (EN 1993-1-8:2005 Table 3.3); a thread's one from an end, of another 0.75
// (common practice, no source).
const (
	boltRim  = 1.2 - 0.5
	tapRim   = 1.0 - 0.5
	plainRim = 0.75 - 0.5
)

// problems are holes too near an edge, and sizes that are not sold.
func (b *bar) problems(n *Numbered) []plan.Problem {
	if b.err != nil {
		return nil
	}
	var out []plan.Problem
	for m := range seq.Refs(n.Groups) {
		want := plainRim * m.Size.FinishedMm
		if m.Size.Clearance {
			want = boltRim * m.Size.FinishedMm
		}
		endWant := want
		if m.Size.Thread != nil {
			endWant = tapRim * m.Size.FinishedMm
		}
		worst, at := rim{leftMm: math.Inf(1)}, 0
		for i, q := range m.Points {
			for _, end := range []plan.XY{q.Plus(m.ownHalf), q.Minus(m.ownHalf)} {
				for _, r := range append(b.ends(m, end, endWant), b.across(m, end, want)...) {
					if r.leftMm-r.want < worst.leftMm-worst.want {
						worst, at = r, i
					}
				}
			}
		}
		p := plan.Problem{Pos: m.Pattern.PosOf(at), Feature: m.Name.Value, Args: []plan.Arg{plan.Named(words.Spaced(m.Name.Value))}}
		switch {
		case geom.Short(worst.leftMm):
			p.Kind = plan.BarHoleOut
			p.Args = append(p.Args, plan.Of(plan.Mm, n.W.Rounded(-worst.leftMm, 2)), plan.Named(worst.what))
			out = append(out, p)
		case geom.Over(worst.want, worst.leftMm):
			p.Kind = plan.BarHoleNear
			p.Args = append(p.Args, plan.Of(plan.Mm, n.W.Rounded(worst.leftMm, 2)), plan.Named(worst.what), plan.Of(plan.Mm, n.W.Rounded(worst.want, 2)), plan.Of(plan.Diameter, m.Size.FinishedMm))
			out = append(out, p)
		}
		if metal, _ := b.throughMm(n.Sizes, m); !m.Through && m.Depth.Mm >= metal-geom.CloseMm {
			out = append(out, plan.Problem{
				Kind: plan.BarTooDeep, Pos: m.Depth.Pos, Feature: m.Name.Value,
				Args: []plan.Arg{plan.Named(words.Spaced(m.Name.Value)), plan.Of(plan.Mm, m.Depth.Mm), plan.Of(plan.Mm, metal)},
			})
		}
	}
	return append(out, b.bought(n.Job.Units == parts.Inches, n.W)...)
}

// bought are sizes that merchants do not have.
func (b *bar) bought(inch bool, w words.Writer) []plan.Problem {
	var out []plan.Problem
	if sold, known, walls, source := bars.Listed(b.shape); known && !sold {
		list, kind := seq.Map(walls, w.Size), plan.BarNotSold
		if len(walls) > 0 && b.in.Wall.Mm < slices.Min(walls)-geom.CloseMm {
			kind = plan.BarTooThin
		}
		out = append(out, plan.Problem{Kind: kind, Pos: b.in.Wall.Pos, Args: []plan.Arg{
			plan.Named(b.sectionWords(w)), plan.Named(source.String()), plan.Named(strings.Join(list, ", ")), plan.Of(plan.Mm, b.in.Wall.Mm)}})
	}
	if most := bars.SoldMm(inch); geom.Over(b.in.Length.Mm, most) {
		out = append(out, plan.Problem{Kind: plan.BarTooLong, Pos: b.in.Length.Pos, Args: []plan.Arg{plan.Of(plan.Mm, b.in.Length.Mm), plan.Of(plan.Mm, most)}})
	}
	return out
}
