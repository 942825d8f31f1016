package changes

import (
	"cmp"
	"math"
	"slices"

	"centrepop/layout/part"
	"centrepop/layout/plan"
	"centrepop/layout/words"
	"centrepop/parts"
	"centrepop/parts/geom"
	"centrepop/parts/seq"
)

type model struct {
	*part.Model
	plan *plan.PartPlan
}

// pair is a part in both states.
type pair struct {
	was, is model
	shiftMm float64 // the new front face lies this far behind the old one
	out     []Change
}

// comparePart compares a part. A shorter part may be faced from either end: the
// better of the two uses counts.
func comparePart(p pair) (best []Change, fromEnd bool) {
	best = p.compare()
	shorter := p.was.LengthMm() - p.is.LengthMm()
	if p.is.Flat() || p.was.Flat() || same(shorter, 0) {
		return best, false
	}
	p.shiftMm, p.out = shorter, nil
	other := p.compare()
	if use := worst(best); worst(other) != use && worse(worst(other), use) == use {
		return other, true
	}
	return best, false
}

func (p *pair) add(c Change) { p.out = append(p.out, c) }

// compare lists what differs, as it is with the part laid shiftMm into the old.
func (p *pair) compare() []Change {
	p.head()
	both(refs(p.was.features(p.shiftMm)), refs(p.is.features(0)), func(f *feature) string { return f.name }, func(was, is *feature) {
		f, c := cmp.Or(is, was), Change{Code: Added, Use: Rework}
		switch c.Feature = f.name; {
		case was != nil && is != nil:
			p.feature(was, is)
			return
		case f.name == "outline" && !f.shape: // of another shape in the other state
			return
		case is == nil && f.opening:
			c.Code, c.Use = Removed, Plug
		case is == nil && f.empty:
			c.Code, c.Use = Removed, ByHand
		case is == nil:
			c.Code, c.Use = Removed, Scrap
		}
		if f.shape {
			c.Use = p.section()
		}
		if c.NewText = p.is.printedSize(f.name); is == nil {
			c.OldText, c.NewText = p.was.printedSize(f.name), ""
		}
		p.add(c)
	})
	p.order()
	p.outline()
	p.formed()
	p.clamp()
	p.checks()
	return p.out
}

// head compares what is said of the whole part.
func (p *pair) head() {
	old, now := p.was.plan, p.is.plan
	stock := NoMetal
	if old.Bar != nil && now.Bar != nil {
		stock = Scrap // a bar keeps the section that it was sawn from
	}
	if old.Quantity != now.Quantity {
		p.add(Change{Code: Size, What: "quantity", Unit: plan.Number, Old: float64(old.Quantity), New: float64(now.Quantity)})
	}
	for _, line := range []struct {
		what, was, is string
		use           Use
	}{
		{"material", old.Material, now.Material, Scrap}, {"kind", old.Kind, now.Kind, NoMetal}, {"title", old.Title, now.Title, NoMetal},
		{"stock", old.StockText, now.StockText, stock}, {"mark of TOP", old.Top, now.Top, ByHand},
	} {
		p.out = text(p.out, line.what, line.was, line.is, line.use)
	}
	p.out = list(p.out, "note", old.Notes, now.Notes)
}

func (p *pair) section() Use { return sectionUse(p.was.plan.Section, p.is.plan.Section, p.shiftMm) }

// printedSize is what a feature is in words, as its part's sheet prints it.
func (m model) printedSize(name string) string {
	return seq.First(m.plan.Features, func(f plan.Feature) bool { return f.Name == name }).Size
}

// feature compares one feature that both states have.
func (p *pair) feature(was, is *feature) {
	start := len(p.out)
	if was.kind != is.kind {
		p.add(Change{Code: Reworded, Feature: is.name, OldText: was.kind, NewText: is.kind, Use: Scrap})
		return
	}
	p.hole(was, is)
	p.chamfer(was, is)
	both(refs(was.sizes), refs(is.sizes), func(s *size) string { return s.what }, func(o, s *size) {
		switch {
		case o != nil && s != nil:
			p.size(was, is, *o, *s)
		case s != nil:
			p.add(Change{Code: Added, What: s.what, Unit: s.unit, New: s.number(), NewText: s.text, Use: s.needs(Rework, Scrap)})
		default:
			p.add(Change{Code: Removed, What: o.what, Unit: o.unit, Old: o.number(), OldText: o.text, Use: o.needs(Scrap, Rework)})
		}
	})
	p.place(was, is)
	for i, w := range is.words {
		if w[0] == "fit" && slices.ContainsFunc(p.out[start:], func(c Change) bool { return c.What == "diameter" }) {
			continue
		}
		use := Measure
		switch {
		case w[0] == "for", w[0] == "note":
			use = NoMetal
		case w[1] == "":
			use = AsIs
		}
		p.out = text(p.out, w[0], was.words[i][1], w[1], use)
	}
	for i := start; i < len(p.out); i++ {
		p.out[i].Feature = is.name
	}
}

func (p *pair) hole(was, is *feature) {
	if was.made == nil || is.made == nil {
		return
	}
	old, now := was.made, is.made
	c := Change{Code: Size, What: "size", OldText: old.Text, NewText: now.Text, Use: holeUse(*old, *now)}
	if same(old.FinishedMm, now.FinishedMm) && old.ThreadName() == now.ThreadName() {
		if sized(old.Size) == sized(now.Size) {
			return // the same, another drill on the way, or other words
		}
		c.Code, c.OldText, c.NewText = Limits, p.is.W.Limits(old.Size.MinMm, old.Size.MaxMm), p.is.W.Limits(now.Size.MinMm, now.Size.MaxMm)
	}
	p.add(c)
}

// chamfer compares how far a bevel reaches along the axis and across it.
func (p *pair) chamfer(was, is *feature) {
	a, b := was.chamfer, is.chamfer
	if a == nil || b == nil || same(a.Size.Mm, b.Size.Mm) && same(a.Angle.Deg, b.Angle.Deg) {
		return
	}
	across := func(c *parts.Chamfer) limits { return exactly(c.Size.Mm * math.Tan(c.Angle.Deg*math.Pi/180)) }
	bevel := func(c *parts.Chamfer) string {
		return words.Either(c.Radius.Set(), "R"+p.is.W.Size(c.Radius.Mm), p.is.W.Size(c.Size.Mm)+" × "+words.Angle(c.Angle.Deg))
	}
	p.add(Change{
		Code: Size, What: "size", Unit: plan.Mm, Old: a.Size.Mm, New: b.Size.Mm, OldText: bevel(a), NewText: bevel(b),
		Use: worse(cutUse(exactly(a.Size.Mm), exactly(b.Size.Mm)), cutUse(across(a), across(b))),
	})
}

// size compares one size of a feature, o before and s now.
func (p *pair) size(was, is *feature, o, s size) {
	c := Change{Code: Size, What: s.what, Unit: s.unit, Old: o.number(), New: s.number(), OldText: o.text, NewText: s.text}
	if same(o.value.at, s.value.at) {
		if same(o.value.min, s.value.min) && same(o.value.max, s.value.max) {
			return
		}
		c.Code, c.OldText, c.NewText = Limits, p.is.W.Limits(o.value.min, o.value.max), p.is.W.Limits(s.value.min, s.value.max)
	}
	if s.what == "diameter" {
		c.OldText, c.NewText = cmp.Or(threadOf(was), c.OldText), cmp.Or(threadOf(is), c.NewText)
	}
	switch {
	case s.what == "diameter" && is.step != nil:
		c.Use = stepUse(was.step.Size, is.step.Size, is.step.Inside)
	case s.grow == keeps:
		c.Use = metalUse(o.value, s.value)
	case s.grow == shapes:
		c.Use = p.section()
	case s.grow == decides:
		c.Use = ByHand
	default:
		c.Use = cutUse(o.value, s.value)
	}
	p.add(c)
}

func threadOf(f *feature) string {
	if f.step == nil || f.step.Size.Thread == nil {
		return ""
	}
	return f.step.Size.Thread.Designation
}

// place compares where openings lie. Those that stay where they were may be
// joined by others; one that moves needs the old one to vanish in the new.
func (p *pair) place(was, is *feature) {
	old, now := positions(was, is.roundMm), positions(is, is.roundMm)
	gone, come := farthest(old, now), farthest(now, old)
	switch {
	case len(now) == len(old) && gone <= placeMm && come <= placeMm:
		return
	case gone <= placeMm:
		p.add(Change{Code: More, Count: len(now) - len(old), Use: Rework})
		return
	case come <= placeMm:
		p.add(Change{Code: Fewer, Count: len(old) - len(now), Use: Plug})
		return
	}
	c := Change{Code: Moved, MovedMm: math.Max(gone, come), Use: Scrap}
	if len(now) != len(old) {
		c.Count = len(now) - len(old)
	}
	if was.pcdMm > 0 && is.pcdMm > 0 && !same(was.pcdMm, is.pcdMm) {
		c.What, c.Unit, c.Old, c.New = "pitch circle", plan.Diameter, was.pcdMm, is.pcdMm
	}
	if was.made != nil && is.made != nil && swallowed(was, is, gone) {
		c.Use = Rework
	}
	p.add(c)
}

// swallowed tells whether each old hole, moved at most so far, lies inside a new
// one; not for one with a wider mouth.
func swallowed(was, is *feature, movedMm float64) bool {
	cut, core := was.made.FinishedMm, is.made.FinishedMm
	if is.made.Thread != nil {
		core = is.made.DrillMm
	}
	return is.roundMm == 0 && len(was.sizes) == 1 && len(was.places) <= len(is.places) && movedMm <= (core-cut)/2+sameMm
}

// placeMm is how far places may be apart and be the same: they come out of
// angles, and a chord of them loses digits.
const placeMm = 1e-5

// positions are the places of a feature in space, those on a round laid on the
// diameter roundMm.
func positions(f *feature, roundMm float64) [][3]float64 {
	var out [][3]float64
	for _, q := range f.places {
		if f.roundMm == 0 {
			out = append(out, [3]float64{q.XMm, q.YMm, 0})
			continue
		}
		at := geom.Clock(roundMm/2, q.XMm)
		out = append(out, [3]float64{at.XMm, at.YMm, q.YMm})
	}
	return out
}

// farthest is how far the most distant of some places lies from the nearest of others.
func farthest(from, to [][3]float64) float64 {
	return seq.Max(0, from, func(a [3]float64) float64 {
		return seq.Least(to, func(b [3]float64) float64 { return math.Hypot(math.Hypot(a[0]-b[0], a[1]-b[1]), a[2]-b[2]) })
	})
}

// order compares the order of the steps along the axis.
func (p *pair) order() {
	names := func(m model) []string {
		both := seq.Keep(m.Steps, func(st part.Step) bool { return p.was.StepNamed(st.Name) != nil && p.is.StepNamed(st.Name) != nil })
		return seq.Map(both, func(st part.Step) string { return st.Name })
	}
	if !slices.Equal(names(p.was), names(p.is)) {
		p.add(Change{Code: Ordered, What: "steps along the axis", Use: p.section()})
	}
}

// outline compares the outside of a flat part that is not round.
func (p *pair) outline() {
	if p.was.Flat() != p.is.Flat() {
		p.add(Change{Code: Reworded, What: "form", OldText: p.was.plan.Overall, NewText: p.is.plan.Overall, Use: Scrap})
		return
	}
	old, now := p.was.OutlinePath(), p.is.OutlinePath()
	if !p.is.Flat() || p.was.StepNamed("outline") != nil && p.is.StepNamed("outline") != nil || old.ToSVG() == now.ToSVG() {
		return
	}
	p.add(Change{Code: Size, Feature: "outline", What: "outline", OldText: p.was.printedSize("outline"), NewText: p.is.printedSize("outline"), Use: outlineUse(old, now)})
}

// formed compares what is formed from sheet by its words: nothing is decided of
// what is bent or cut to a curve already.
func (p *pair) formed() {
	of := func(m model) []*plan.Feature {
		return refs(seq.Keep(m.plan.Features, func(f plan.Feature) bool { return formed(f.Kind) }))
	}
	key := func(f *plan.Feature) [2]string { return [2]string{string(f.Kind), f.Name} }
	both(of(p.was), of(p.is), key, func(o, f *plan.Feature) {
		switch {
		case o == nil:
			p.add(Change{Code: Added, Feature: f.Name, NewText: f.Size, Use: ByHand})
		case f == nil:
			p.add(Change{Code: Removed, Feature: o.Name, OldText: o.Size, Use: ByHand})
		case o.Size != f.Size || o.Note != f.Note:
			p.add(Change{Code: Reworded, Feature: f.Name, OldText: words.Join("; ", o.Size, o.Note), NewText: words.Join("; ", f.Size, f.Note), Use: ByHand})
		}
	})
}

func (p *pair) clamp() {
	said := func(m model) string {
		f := seq.First(m.plan.Features, func(f plan.Feature) bool { return f.Kind == plan.ClampFeature })
		return words.Join("; ", f.Size, f.Note)
	}
	was, is := said(p.was), said(p.is)
	switch {
	case was == is:
	case was == "":
		p.add(Change{Code: Added, Feature: "clamp", NewText: is, Use: Rework})
	case is == "":
		p.add(Change{Code: Removed, Feature: "clamp", OldText: was, Use: Scrap})
	default:
		p.add(Change{Code: Reworded, Feature: "clamp", OldText: was, NewText: is, Use: clampUse(p.was.plan.Clamp, p.is.plan.Clamp, p.shiftMm)})
	}
}

// checks compares the limits that are checked of features nothing else was said
// of: lengths under another general tolerance, form and place.
func (p *pair) checks() {
	said := map[string]bool{}
	for _, c := range p.out {
		said[c.Feature] = true
	}
	for _, c := range p.is.plan.Checks {
		name := ""
		if c.Ref > 0 {
			name = p.is.plan.Features[c.Ref-1].Name
		}
		i := slices.IndexFunc(p.was.plan.Checks, func(o plan.Check) bool { return o.What == c.What })
		if said[name] && name != "" || i < 0 || p.was.plan.Checks[i].Limits == c.Limits {
			continue
		}
		o := p.was.plan.Checks[i]
		if p.shiftMm != 0 && same(o.MinMm-p.shiftMm, c.MinMm) && same(o.MaxMm-p.shiftMm, c.MaxMm) {
			continue // measured from a face that is taken off
		}
		p.add(Change{Code: Limits, Feature: name, What: c.What, OldText: o.Limits, NewText: c.Limits, Use: p.checkUse(name, o, c)})
	}
}

// checkUse is the use of a part that was inspected to other limits of something, about which nothing else is known than whether
// it is the diameter of a step.
func (p *pair) checkUse(of string, o, c plan.Check) Use {
	was, is := limits{o.MinMm, o.MinMm, o.MaxMm}, limits{c.MinMm, c.MinMm, c.MaxMm}
	apart := func(off float64) bool { return was.max-off < is.min-sameMm || was.min-off > is.max+sameMm }
	switch {
	case was.max <= 0 || is.max <= 0:
	case was.min >= is.min-sameMm && was.max <= is.max+sameMm:
		return AsIs
	case apart(0) && apart(p.shiftMm): // nothing made to the old ones lies within the new
		for _, m := range []model{p.was, p.is} {
			if m.Model == nil {
				continue
			}
			if s, l := m.StepNamed(of), words.Either(m == p.is, is, was); s != nil && math.Abs(s.Size.MinMm-l.min) < roundedMm && math.Abs(s.Size.MaxMm-l.max) < roundedMm {
				return words.Either(s.Inside, cutUse, metalUse)(was, is)
			}
		}
		return ByHand
	}
	return Measure
}

// roundedMm is what limits are rounded by at the most where they are printed.
const roundedMm = 0.03
