package joint

import (
	"cmp"
	"math"
	"slices"
	"strconv"
	"strings"

	"centrepop/layout/bars"
	"centrepop/layout/lookup"
	"centrepop/layout/part"
	"centrepop/layout/plan"
	"centrepop/layout/weld"
	"centrepop/layout/words"
	"centrepop/parts"
	"centrepop/parts/geom"
	"centrepop/parts/seq"
)

func (f feature) mitre() (end parts.Side, ok bool) {
	cut := f.r.Part.BarEnd(f.ref.Feature)
	return parts.Side(f.ref.Feature), cut != nil && cut.Mitred()
}

// leansBy is how far a bar, of which one mitred end is welded to something else, leans from square; empty for another.
func (t *joint) leansBy() string {
	if bar, _, ok := t.onBarEnd(); ok && !t.corner() {
		if _, mitred := bar.mitre(); mitred {
			return words.FineAngle(bar.r.Part.BarEnd(bar.ref.Feature).Mitre.Deg)
		}
	}
	return ""
}

// corner tells whether a weld joins two mitred ends.
func (t *joint) corner() bool {
	_, a := t.a.mitre()
	_, b := t.b.mitre()
	return t.is(parts.WeldKind) && a && b
}

// ring is a frame of bars: its corners in the order round it, and the one that is made
// last. It is mitred, or its bars stand square between two others, which leaves an opening.
type ring struct {
	corners   []*joint
	last      *joint
	frame     bars.Frame
	openingMm [2]float64 // along the bars that others stand on, and between them; 0 if mitred
}

// stands is a weld that stands the square end of a bar on the top or the bottom of another, fronts level: by its place, or,
// where that is not said, by the same depth. It gives the end, and what it stands on.
func (t *joint) stands() (end, on feature, ok bool) {
	end, on = t.a, t.b
	_, first := end.barEnd()
	if !first {
		end, on = on, end
	}
	stands, bar := end.r.Part.BarEnd(end.ref.Feature), on.r.Part.Bar
	if stands == nil || !t.is(parts.WeldKind) || bar == nil {
		return end, on, false
	}
	like := end.r.Part.Bar.Depth.Mm == bar.Depth.Mm
	onTop := on.ref.Feature == "top" || on.ref.Feature == "bottom"
	if p := t.in.Place; p == nil && !like || p != nil && !(onSide(p, end, on, first) && (like || first && frontsLevel(p, false))) {
		return end, on, false
	}
	cut := func(e *parts.BarEnd) bool { return e.Mitred() || e.Coped() }
	return end, on, onTop && !slices.ContainsFunc([]*parts.BarEnd{stands, &bar.Left, &bar.Right}, cut)
}

// onSide tells whether a place lays the end of a bar on the side of another without a gap, their fronts level and looking the
// same way. Where the bar is laid on the end instead, that is its ground.
func onSide(p *parts.Place, end, on feature, first bool) bool {
	mine, ground, looks, level := end, on, map[string]string{"top": "down", "bottom": "up"}, frontsLevel(p, true)
	if !first {
		mine, ground, looks = on, end, map[string]string{"right": "left", "left": "right"}
		level = p.At != nil && p.At.X.Mm == 0 || p.FromLeft.Set() && p.FromLeft.Mm == 0 || p.FromRight.Set() && p.FromRight.Mm == 0
	}
	return level && p.Looks == looks[ground.ref.Feature] && p.Gap.Mm == 0 && p.With == mine.ref.Feature && p.On == ground.ref.Feature
}

// frontsLevel tells whether a place on the top or the bottom of a bar lays the front of what stands there level with its own:
// of one as deep by either edge of that side, else by the edge of the front.
func frontsLevel(p *parts.Place, like bool) bool {
	low, high := p.FromBottom.Set() && p.FromBottom.Mm == 0, p.FromTop.Set() && p.FromTop.Mm == 0
	if !like {
		low, high = low && p.On == "top", high && p.On == "bottom"
	}
	return p.At != nil && p.At.Y.Mm == 0 || low || high
}

// alongMm is where on a bar the middle of one stands that is welded to its side, to the right
// of the bar's middle; ok is false where the joint does not say, or says where the bar is on the end.
func (t *joint) alongMm(end, on feature) (mm float64, ok bool) {
	p := t.in.Place
	if _, first := t.a.barEnd(); p == nil || !first {
		return 0, false
	}
	most := (on.r.Part.Bar.Length.Mm - end.r.Part.Bar.Width.Mm) / 2
	switch {
	case p.At != nil:
		return p.At.X.Mm, true
	case p.FromLeft.Set():
		return p.FromLeft.Mm - most, true
	case p.FromRight.Set():
		return most - p.FromRight.Mm, true
	}
	return 0, false
}

// openingOf is the rectangle of two equal bars that stand square between two others, of which
// a weld is a corner; nil if the welds do not close one.
func (j *making) openingOf(t *joint) *ring {
	between := map[parts.Instance][]*joint{} // the bars that stand, and their corners
	var standing []parts.Instance
	for _, o := range j.all {
		if end, _, ok := o.stands(); ok {
			if len(between[end.Instance()]) == 0 {
				standing = append(standing, end.Instance())
			}
			between[end.Instance()] = append(between[end.Instance()], o)
		}
	}
	base := func(o *joint) parts.Instance { _, on, _ := o.stands(); return on.Instance() }
	onBase := func(of []*joint, as *joint) *joint {
		return seq.First(of, func(o *joint) bool { return base(o) == base(as) })
	}
	own, _, ok := t.stands()
	first := between[own.Instance()]
	if !ok || len(first) != 2 || base(first[0]) == base(first[1]) {
		return nil
	}
	var out *ring
	for _, id := range standing {
		second := between[id]
		if id == own.Instance() || len(second) != 2 {
			continue
		}
		next, last := onBase(second, first[1]), onBase(second, first[0])
		if next == nil || last == nil {
			continue
		}
		if out != nil { // more than two stand between them
			return nil
		}
		out = &ring{corners: []*joint{first[0], first[1], next, last}}
	}
	if out == nil || !out.open() {
		return nil
	}
	out.last = slices.MaxFunc(out.corners, func(a, b *joint) int { return slices.Index(j.all, a) - slices.Index(j.all, b) })
	return out
}

// open works out the opening, from the places of both bars on one that they stand on. It is
// false where neither has both, where they disagree, and for unlike bars.
func (r *ring) open() bool {
	var widths []float64
	for _, pair := range [][2]*joint{{r.corners[0], r.corners[3]}, {r.corners[1], r.corners[2]}} {
		a, on, _ := pair[0].stands()
		b, _, _ := pair[1].stands()
		if a.ref.Part != b.ref.Part {
			return false
		}
		x, okX := pair[0].alongMm(a, on)
		y, okY := pair[1].alongMm(b, on)
		if okX && okY && pair[0].in.Place.On == pair[1].in.Place.On {
			widths = append(widths, math.Abs(x-y)-a.r.Part.Bar.Width.Mm)
		}
		r.openingMm[1] = a.r.Part.Bar.Length.Mm
	}
	if len(widths) == 0 || slices.Min(widths) <= 0 || geom.Over(slices.Max(widths), slices.Min(widths)) {
		return false
	}
	r.openingMm[0] = widths[0]
	d := math.Hypot(r.openingMm[0], r.openingMm[1])
	r.frame.DiagonalsMm = [2]float64{d, d}
	return true
}

// ringOf is the frame that a corner belongs to; nil if its bars do not close one.
func (j *making) ringOf(t *joint) *ring {
	if !t.corner() {
		return j.openingOf(t)
	}
	out := &ring{last: t}
	var links []bars.Link
	at, in := t, t.a // the corner, and the bar that is gone along from it
	for {
		end, _ := in.mitre()
		far := parts.Side(opposite[string(end)])
		_, member, _ := in.r.Bar()
		links = append(links, bars.Link{Member: member, In: end == parts.RightEnd, Out: far == parts.RightEnd})
		out.corners = append(out.corners, at)
		next, other := j.cornerAt(in.Instance(), far)
		if next == nil || next != t && slices.Contains(out.corners, next) {
			return nil
		}
		if slices.Index(j.all, next) > slices.Index(j.all, out.last) {
			out.last = next
		}
		if next == t {
			break
		}
		at, in = next, other
	}
	var ok bool
	if out.frame, ok = bars.Ring(links); !ok {
		return nil
	}
	return out
}

// cornerAt is the corner that an end of a bar is in, and what it meets there.
func (j *making) cornerAt(of parts.Instance, end parts.Side) (t *joint, other feature) {
	for _, t := range j.all {
		if own, other, ok := t.from(of); ok && t.corner() {
			if side, _ := own.mitre(); side == end {
				return t, other
			}
		}
	}
	return nil, feature{}
}

// cornerFits notes two cuts that do not cover each other, with the mitres that would.
func (j *making) cornerFits(t *joint) {
	if !t.corner() {
		return
	}
	endA, _ := t.a.mitre()
	endB, _ := t.b.mitre()
	_, a, _ := t.a.r.Bar()
	_, b, _ := t.b.r.Bar()
	meet, ok := bars.Onto(a, endA == parts.RightEnd, b, endB == parts.RightEnd)
	if !ok || meet.MissMm < cornerMissMm {
		return
	}
	inA, inB := t.a.r.Part.Bar, t.b.r.Part.Bar
	cutA, cutB := inA.End(endA).Mitre.Deg, inB.End(endB).Mitre.Deg
	turn, kind := cutA+cutB, plan.CornerSections
	if inA.Width.Mm == inB.Width.Mm {
		kind = plan.CornerUnlike
		if a, b := j.mitresOf(cutA), j.mitresOf(cutB); a != b { // the odd one is wrong
			turn = 2 * cutA
			if b > a {
				turn = 2 * cutB
			}
		}
	}
	first, second, err := bars.Mitre(180-turn, inA.Width.Mm, inB.Width.Mm)
	if err != nil {
		return
	}
	t.problem(kind, plan.Named(t.a.title()), plan.Named(t.b.title()), plan.Of(plan.Mm, meet.MissMm), plan.Of(plan.Degree, first), plan.Of(plan.Degree, second),
		plan.Of(plan.Mm, inA.Width.Mm), plan.Of(plan.Mm, inB.Width.Mm))
}

// mitresOf counts the ends of drawn bars that have a mitre.
func (j *making) mitresOf(deg float64) (n int) {
	for _, p := range j.job.Parts {
		for _, end := range p.BarEnds() {
			if end.Mitre.Deg == deg {
				n++
			}
		}
	}
	return n
}

// cornerMissMm is how much longer than the other one cut of a corner may be. Common
// practice, no source: a saw holds no better.
const cornerMissMm = 0.5

// diagonalsMm is by how much the diagonals of a frame may differ: 1 mm, and of long ones a
// thousandth. Common practice, no source.
func diagonalsMm(diagonalMm float64) float64 { return math.Max(1, diagonalMm/1000) }

// inTurn names the corners in the order in which they are welded.
func (r *ring) inTurn() string {
	var order []string
	for _, half := range []int{0, 1} { // opposite corners follow each other
		for i := half; i < len(r.corners); i += 2 {
			order = append(order, words.Spaced(r.corners[i].in.Name.Value))
		}
	}
	return strings.Join(order, ", ")
}

// builtIn tells whether joints made before its first corner hold bars of a frame to one another: between
// legs that stand already they are not laid down.
func (j *making) builtIn(r *ring) bool {
	made := j.before
	if n := slices.IndexFunc(made, func(o *joint) bool { return slices.Contains(r.corners, o) }); n >= 0 {
		made = made[:n]
	}
	var all []parts.Instance
	for _, c := range r.corners {
		all = seq.Add(seq.Add(all, c.a.Instance()), c.b.Instance())
	}
	return slices.ContainsFunc(all, func(bar parts.Instance) bool {
		with := j.members(bar, made)
		return slices.ContainsFunc(all, func(o parts.Instance) bool { return o != bar && slices.Contains(with, o) })
	})
}

// packed says what keeps the angles of a frame from tipping while they lie with their fronts up; empty
// where each bar stands by itself.
func (r *ring) packed(w words.Writer) string {
	var high []string
	for _, c := range r.corners {
		for _, e := range []feature{c.a, c.b} {
			if s, _, ok := e.r.Bar(); ok && s.PackedMm() > 0 {
				high = seq.Add(high, w.Read(s.PackedMm()))
			}
		}
	}
	return words.When(len(high) > 0, ", packing "+strings.Join(high, " or ")+" high under the front leg of each angle, clamped to it: it stands on the edge of its other leg, and tips")
}

// bothOf writes two lengths, once where they read alike.
func (t *joint) bothOf(mm [2]float64) string {
	both := t.w.Taped(mm[0])
	if other := t.w.Taped(mm[1]); other != both {
		both += " and " + other
	}
	return both
}

// diagonals names those of a frame of four by the corners at their ends, numbered as they are tacked.
func (j *making) diagonals(r *ring) []string {
	at := slices.Clone(r.corners)
	slices.SortFunc(at, func(a, b *joint) int { return slices.Index(j.all, a) - slices.Index(j.all, b) })
	var out []string
	for i := 0; len(r.corners) == 4 && i < 2; i++ {
		ends := []int{slices.Index(at, r.corners[i]) + 1, slices.Index(at, r.corners[i+2]) + 1}
		out = append(out, strconv.Itoa(min(ends[0], ends[1]))+"–"+strconv.Itoa(max(ends[0], ends[1])))
	}
	slices.Sort(out)
	return out
}

// word is one for a mitred frame, or one for a frame of bars that stand between others.
func (r *ring) word(mitred, square string) string {
	return words.Either(r.openingMm[0] != 0, square, mitred)
}

// takeOff keeps a frame to its size: its bars are drawn for cuts that touch, so that a gap
// would set every side out by the gap over the cosine of the mitre, and what the weld draws in
// takes off as much. Both are reckoned in sawing, or for a bar that has other ends too here.
func (j *making) takeOff(t *joint, r *ring, p *plan.WeldPlan) string {
	if p.GapMm == 0 {
		return ""
	}
	draws, mm := r.drawsMm(p.Symbol).mean(), p.GapMm
	sawn := "The bars are sawn for the gap: each end that stands on another " + t.w.Read(mm) + " short."
	end, _, _ := t.stands()
	bars := []feature{end}
	if t.corner() { // of both bars
		mm /= 2
		bars, sawn = []feature{t.a, t.b}, "The bars are sawn for the gap: each cut "+t.w.Read(mm)+" short of the middle of it."
		draws /= 2
	}
	if draws > 0 {
		sawn = "The bars are sawn for the gap and for what the welds draw in: until then the frame is larger."
	}
	left := ""
	for _, f := range bars {
		switch off := geom.Clean(mm - draws); {
		case j.short[f.ref.Part] || off == 0:
		case off > 0:
			left = words.Join(" ", left, f.r.Out.Title+" is sawn without the gap: take "+t.w.Read(off)+" off its cut.")
		default:
			left = words.Join(" ", left, f.r.Out.Title+" is sawn without what the weld draws in: its end comes out "+t.w.Read(-off)+" short.")
		}
	}
	return cmp.Or(left, sawn)
}

// span is a least and a greatest length, mm.
type span struct{ least, most float64 }

func (s span) mean() float64 { return (s.least + s.most) / 2 }
func (s span) half() float64 { return (s.most - s.least) / 2 }

// drawsMm is what a corner of a rectangular frame is drawn in across its weld; nothing for a
// frame of another form, and for a weld that the rule does not know.
func (r *ring) drawsMm(symbol string) span {
	if _, ok := r.frame.OutsideMm(); symbol != weld.SingleV.Symbol() || !ok && r.openingMm[0] == 0 {
		return span{}
	}
	for _, c := range r.corners {
		for _, f := range []feature{c.a, c.b} {
			if side, is := f.mitre(); is && f.r.Part.Bar.End(side).Mitre.Deg != 45 {
				return span{}
			}
		}
	}
	s, _ := weld.ButtShrinkage(1)
	return span{s.AcrossMinMm, s.AcrossMaxMm}
}

// drawnIn is what the welds of a frame take off each of its sides, mm: a mitre of 45° the
// cosine of it more; of an opening, off the side along the bars that stand between.
func (r *ring) drawnIn(symbol string) (sides [2]span) {
	s := r.drawsMm(symbol)
	if r.openingMm[0] != 0 {
		return [2]span{{}, {2 * s.least, 2 * s.most}}
	}
	s = span{s.least * math.Sqrt2, s.most * math.Sqrt2}
	return [2]span{s, s}
}

// barRow are the bolts of a joint that hold something to a bar of a frame.
type barRow struct {
	bolt    *joint
	on, bar feature
}

func (j *making) boltedTo(r *ring) (rows []barRow) {
	for _, o := range ofKind(j.all, parts.BoltKind) {
		for _, way := range o.ways() {
			if slices.ContainsFunc(r.corners, func(c *joint) bool { return c.has(way[1].Instance()) }) {
				rows = append(rows, barRow{o, way[0], way[1]})
			}
		}
	}
	return rows
}

// tried says what is laid on a frame that is welded, where bolts hold it to more than one of
// the bars: the weld may have moved their holes. What is built up by then is lifted on.
func (j *making) tried(t *joint, r *ring) (out []string) {
	var laid []feature
	on, size, bolts := map[parts.Instance][]parts.Instance{}, map[parts.Instance][]string{}, map[parts.Instance]int{}
	for _, row := range j.boltedTo(r) {
		of := row.on.Instance()
		if on[of] == nil {
			laid = append(laid, row.on)
		}
		on[of], size[of] = seq.Add(on[of], row.bar.Instance()), seq.Add(size[of], row.bolt.bolt.Thread.Designation)
		bolts[of] += len(row.on.points())
	}
	for _, f := range laid {
		if of := f.Instance(); len(on[of]) > 1 {
			out = append(out, "Lay "+f.title()+" on it, cold: all "+strconv.Itoa(bolts[of])+" bolts, "+words.Join(" and ", size[of]...)+
				", that are to hold it there enter by hand; if not, the weld moved their holes: mark the bar through "+f.title()+" and drill again.")
			j.lifts(t, f, true)
		}
	}
	return out
}

// rowsApart records, after the weld, how far the holes in one bar of a frame lie from those in
// another that bolts hold the same part to: by half of their play, the rest being that part's.
func (j *making) rowsApart(t *joint, r *ring) (found bool) {
	rows := j.boltedTo(r)
	for i, a := range rows {
		for _, b := range rows[i+1:] {
			if a.on.Instance() != b.on.Instance() || a.bar.Instance() == b.bar.Instance() || a.on.group.Face != b.on.group.Face {
				continue
			}
			nearest := func(p plan.XY) float64 {
				return seq.Least(b.on.group.Points, func(q plan.XY) float64 { return geom.Distance(p, q) })
			}
			apart := seq.Least(a.on.group.Points, nearest)
			beside := !slices.ContainsFunc(a.on.group.Points, func(p plan.XY) bool { return geom.Over(nearest(p), apart) }) // rows side by side
			pin := (a.bar.group.Size.FinishedMm + b.bar.group.Size.FinishedMm) / 2
			over, play := geom.Clean(apart+pin), math.Min(a.bolt.reachMm(), b.bolt.reachMm())
			c := plan.Check{
				What:   words.Either(beside, "holes, ", "nearest holes, ") + a.bar.title() + " to " + b.bar.title() + ", cold",
				Wanted: t.w.Read(over) + " over pins " + t.w.Dia(pin), MinMm: over - play, MaxMm: over + play, Gauge: "calipers, tape",
				Source: lookup.Told("half the play of the bolts"),
			}
			c.Limits = t.w.Limits(c.MinMm, c.MaxMm)
			if beside {
				c.Boxes = []string{"least", "most"}
			}
			t.out.Checks, found = append(t.out.Checks, c), true
		}
	}
	return found
}

// sleeved says which bars of a frame take sleeves for bolts, once the welds have moved their
// holes and these were tried.
func (j *making) sleeved(t *joint, r *ring) string {
	var in []feature
	for _, c := range r.corners {
		in = append(in, c.a, c.b)
	}
	return j.sleeves(t, seq.Keep(in, func(f feature) bool {
		_, end := f.barEnd()
		return end
	}))
}

// closes says which bars take their sleeves before a weld at the end nearer to their holes.
func (j *making) closes(t *joint) string {
	var in []feature
	for _, f := range []feature{t.a, t.b} {
		side, ok := f.barEnd()
		if ok && slices.ContainsFunc(f.r.Groups, func(g part.Group) bool { return g.BothWalls() && g.NearEnd() == side }) {
			in = append(in, f)
		}
	}
	return j.sleeves(t, in)
}

// sleeves has the sleeves for the bolts through both walls of some bars let in from outside: no
// torch reaches them inside, and through the hole of a bolt there is no rim to weld. With the copies that take them where some of a part do not.
func (j *making) sleeves(t *joint, bars []feature) string {
	copies := map[*part.Model][]string{}
	var in []*part.Model
	var under []string // what bears on the rim of a sleeve
	for _, o := range ofKind(j.all, parts.BoltKind) {
		for _, f := range []feature{o.a, o.b} {
			if !f.group.BothWalls() || !slices.ContainsFunc(bars, func(g feature) bool { return g.r == f.r }) {
				continue
			}
			o.sleeve = cmp.Or(o.sleeve, t)
			under = seq.Add(under, words.Either(f.Instance() == o.b.Instance(), o.a.title(), words.Either(o.in.Bolt.Washer, "the washer", "the head")))
			in, copies[f.r] = seq.Add(in, f.r), seq.Add(copies[f.r], strconv.Itoa(f.ref.Copy))
		}
	}
	if len(in) == 0 {
		return ""
	}
	var names []string
	for _, r := range in {
		name := r.Out.Title
		if n := copies[r]; len(n) < r.Part.Quantity {
			name += " (" + strings.Join(n, " and ") + ")"
		}
		names = append(names, name)
	}
	return "Sleeves for the bolts go into " + strings.Join(names, ", ") +
		" now. Open the hole on the side of the head, there alone, to the outside of the sleeve; let it in down to the other wall, its bolt through both; " +
		"tack its rim, take the bolt out, weld the rim round and dress it flush for " +
		words.Either(len(under) > 1, "what bears there", strings.Join(under, "")) + "."
}

func (t *joint) sizesOf(mm [2]float64) string {
	return t.w.Taped(mm[0]) + " × " + t.w.Taped(mm[1])
}

// sidesMm are the outer sides of a rectangular frame, or those of an opening, as drawn.
func (r *ring) sidesMm() (sides [2]float64, ok bool) {
	if r.openingMm[0] != 0 {
		return r.openingMm, true
	}
	return r.frame.OutsideMm()
}

// welded records what a frame has become, by the holes that bolts hold to one part or else by
// its sides: a weld draws in more or less than its mean.
func (j *making) welded(t *joint, r *ring, p *plan.WeldPlan) {
	draws, drawn := r.drawnIn(p.Symbol), plan.Check{What: r.word("outside", "opening") + " after the weld, cold", Gauge: "tape", Source: lookup.NoSource}
	sides, ok := r.sidesMm()
	if !ok || j.rowsApart(t, r) || r.drawsMm(p.Symbol).most == 0 {
		return
	}
	drawn.MaxMm = diagonalsMm(math.Hypot(sides[0], sides[1])) + math.Max(draws[0].half(), draws[1].half())
	drawn.Wanted, drawn.Limits = t.sizesOf(sides), "each within "+t.w.Read(drawn.MaxMm)
	t.out.Checks = append(t.out.Checks, drawn)
}

// dressed says on which sides of a frame the seams are ground level: where something else
// of the job lies on one of its bars, over an end of that or where nothing says how far off.
func (j *making) dressed(r *ring) []string {
	var out []string
	for _, face := range []parts.Face{parts.Front, parts.Back} {
		var on []string
		for _, o := range j.all {
			if o.corner() || slices.Contains(r.corners, o) {
				continue
			}
			for _, c := range r.corners {
				for _, bar := range []feature{c.a, c.b} {
					if title, side := o.onFace(bar.Instance()); side == face && j.overEnd(o, bar) {
						on = seq.Add(on, title)
					}
				}
			}
		}
		if len(on) > 0 {
			out = append(out, "Grind the seams level on the "+string(face)+" where "+strings.Join(on, ", ")+" lies.")
		}
	}
	return out
}

// overEnd tells whether what a joint places on a bar lies over the cut at an end of it, which is as long as the bar is wide.
func (j *making) overEnd(o *joint, bar feature) bool {
	section, _, _ := bar.r.Bar()
	own, other, _ := o.from(bar.Instance())
	switch {
	case own.group != nil && other.group != nil && other.r.Part.Flat(): // turned in any way about the middle of its holes
		return own.group.OffEndMm(bar.r.Part.Bar)-other.reachMm() < max(section.WidthMm, section.DepthMm)
	case o.in.Place == nil || o.b.Instance() != bar.Instance():
		return true
	}
	past := j.seams.PastMm(o.in)
	return max(past[0], past[1]) > -max(section.WidthMm, section.DepthMm)
}

// reachMm is how far the box round a flat part reaches from the middle of its holes of a joint.
func (f feature) reachMm() (mm float64) {
	var middle geom.Point
	for _, p := range f.group.Points {
		middle = middle.Plus(geom.Point(p).Times(1 / float64(len(f.group.Points))))
	}
	box := f.r.OutlinePath().Bounds()
	for _, x := range []float64{box.X0, box.X1} {
		for _, y := range []float64{box.Y0, box.Y1} {
			mm = max(mm, math.Hypot(x-middle.XMm, y-middle.YMm))
		}
	}
	return mm
}

// onFace is what a joint puts on a face of a part, and the face.
func (t *joint) onFace(of parts.Instance) (title string, face parts.Face) {
	first, second := t.meeting().First, t.meeting().Second
	if p := t.in.Place; p != nil {
		first, second = parts.Face(p.With), parts.Face(p.On)
	}
	own, other, ok := t.from(of)
	if !ok || own.group != nil && own.r.Part.Bar != nil && own.group.On != "" { // its top or bottom
		return "", ""
	}
	if face = second; of == t.a.Instance() {
		face = first
	}
	return other.r.Out.Title, face
}

// grindEdges prepares the edges of a corner that needs it; its bars are drawn without.
func (t *joint) grindEdges(p *plan.WeldPlan) string {
	if p.BevelDeg == 0 || !t.corner() {
		return ""
	}
	edges := "Grind one edge of each cut to "
	deg := p.BevelDeg
	if !p.OneEdge {
		edges, deg = "Grind both edges of each cut to ", deg/2
	}
	edges += words.Angle(deg) + " with a root face of " + t.w.Read(p.RootFaceMm) + "."
	edges += words.When(t.in.Weld.Sides == 1, " The groove opens to the "+t.seamSides()+".")
	return edges
}

// seamFaces are the faces, and the edges of the frame, that the seam of a mitred corner is
// welded from; none where it is welded from both sides, or the corner is not mitred.
func (t *joint) seamFaces() (faces, edges []string) {
	end, ok := t.a.mitre()
	if !ok || t.in.Weld.Sides == 2 {
		return nil, nil
	}
	section, _, _ := t.a.r.Bar()
	for _, side := range section.Outside() {
		switch {
		case side == bars.Front || side == bars.Back:
			faces = append(faces, string(side))
		case string(side) == string(t.a.r.Part.Bar.End(end).Long):
			edges = append(edges, "outer")
		default:
			edges = append([]string{"inner"}, edges...)
		}
	}
	return faces, edges
}

// seamSides names where a corner is welded from.
func (t *joint) seamSides() string {
	faces, edges := t.seamFaces()
	on := strings.Join(faces, ", ")
	switch {
	case on == "":
		return "both sides"
	case len(faces)+len(edges) == 4:
		return "outside, all round"
	case len(edges) == 2:
		on += " and both edges"
	case len(edges) == 1:
		on += " and the " + edges[0] + " edge"
	}
	return on
}

// seamOrder is the order of the seams of a corner, and how those of the other side are come by.
func (t *joint) seamOrder(over string) string {
	faces, edges := t.seamFaces()
	if len(faces) == 0 {
		return "First the seams of one side all round, then " + over + "."
	}
	out := "he seams of the " + faces[0] + " all round"
	out += words.When(len(faces) == 2, ", then "+over)
	return words.Either(len(edges) == 0, "T"+out+".", "First t"+out+"; the "+strings.Join(edges, ", then the ")+" edges last.")
}

// hollow warns of bolts that draw the walls of a tube together.
func (j *making) hollow(t *joint) {
	for _, f := range append([]feature{t.a, t.b}, j.stack(t)...) {
		if f.group.BothWalls() {
			in := words.When(t.sleeve == nil, ", let in from the side of the head down to the other wall, the hole opened there alone, its rim welded and dressed before anything is bolted,")
			t.caution("The bolts go through both walls of " + f.title() + ", which is hollow: a sleeve of pipe in the tube round each" + in +
				" takes the clamping; without sleeves tighten only until the washer lies flat, and lock the thread.")
		}
	}
}
