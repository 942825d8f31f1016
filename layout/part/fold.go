package part

import (
	"math"
	"strconv"

	"centrepop/layout/bend"
	"centrepop/layout/lookup"
	"centrepop/layout/plan"
	"centrepop/layout/words"
	"centrepop/parts"
	"centrepop/parts/geom"
	"centrepop/parts/seq"
)

// fold is one flange of a folded part, n in the order of folding from 0.
type fold struct {
	f    *folded
	i, n int
}

func (f *folded) items(*Shape) (out []item) {
	for n, i := range f.order {
		out = append(out, fold{f, i, n})
	}
	return out
}

func (o fold) name() string { return o.f.flapName(o.i) }

// flapName is a flange as people call it: "top flange", "top 2 flange" on its free edge.
func (f *folded) flapName(i int) string {
	return words.Spaced(string(f.in.Flanges[i].Side)) + " flange"
}

func (o fold) turn() string { return words.Trim(o.f.blank.Folds[o.i].AngleDeg, 1) + "°" }

func (o fold) feature(n *Numbered) plan.Feature {
	b := &o.f.blank.Folds[o.i]
	q := b.Side.TurnedTo(plan.XY{XMm: (b.LeftMm + b.RightMm) / 2, YMm: b.LineMm()})
	return plan.Feature{
		Kind: plan.FoldFeature, Name: o.name(), Size: n.W.Size(b.HeightMm) + " high, " + o.turn() + ", inside R" + n.W.Size(b.RadiusMm),
		Limits: n.limitsText(n.General(b.HeightMm)), Note: words.Join(", ", "to the "+string(o.f.in.Flanges[o.i].Toward), mitredText(b)), Face: parts.Front,
		Balloon: plan.XY{XMm: geom.Clean(q.XMm), YMm: geom.Clean(q.YMm)},
	}
}

// mitredText says which ends of a flange are mitred, as seen with its side at the top.
func mitredText(b *bend.PanelFold) string {
	switch left, right := b.LeftMitreMm > 0, b.RightMitreMm > 0; {
	case left && right:
		return "both ends mitred 45°"
	case left:
		return "left end mitred 45°"
	case right:
		return "right end mitred 45°"
	}
	return ""
}

func (o fold) operations(b *bench) {
	f, line := o.f, &o.f.blank.Folds[o.i]
	up := parts.Front
	if !line.Forward {
		up = parts.Back
	}
	op := plan.Operation{
		Machine: plan.Press, Title: "Fold " + strconv.Itoa(o.n+1) + ": " + o.name() + " " + o.turn(),
		Do:   []string{words.Capital(string(up)) + " face up, " + o.stop(b.W) + "; bend to " + words.Trim(f.made.Folds[o.i].AngleDeg, 1) + "° as measured: it springs back, so go past it a little."},
		Tool: "V die " + b.W.Size(f.die.OpeningMm) + ", punch R" + b.W.Size(line.RadiusMm) + " or less", Gauge: o.gauge(),
		Refs: []int{b.ref(o)},
	}
	if f.made.Folds[o.i].AngleDeg < line.AngleDeg {
		op.Do = append(op.Do, "It stays open so far: at "+o.turn()+" it would stand in the ram at a later fold.")
	}
	way := f.made.WayOf(f.order, o.i)
	for _, tool := range []struct {
		name, verb string
		mm         float64
		ends       int
	}{{"Punch", "stand", way.PunchMm, way.PunchEnds}, {"Die", "hang", way.DieMm, way.DieEnds}} {
		switch {
		case tool.ends == 1:
			op.Do = append(op.Do, tool.name+" clear of the flange that "+tool.verb+"s at one end.")
		case tool.ends > 1:
			op.Do = append(op.Do, tool.name+" no longer than "+b.W.Read(tool.mm)+": flanges "+tool.verb+" at its ends."+
				words.When(line.RightMm-line.LeftMm > tool.mm+hornsMm, " The line is "+b.W.Read(line.RightMm-line.LeftMm)+": end pieces with horns reach in under what is turned in there."))
		}
	}
	if way.RamMm != 0 {
		op.Do = append(op.Do, "They rise "+b.W.Read(way.RamMm)+" over the fold line: that must be clear under the ram on both sides of the punch, or take a taller punch.")
	}
	if way.BesideMm < bend.PunchHalfMm && !f.in.Punch.Set() {
		op.Do = append(op.Do, "A folded flange comes within "+b.W.Read(way.BesideMm)+" of the middle of the punch, "+b.W.Read(way.HighMm)+
			" over its edge: a straight punch hits it; take a gooseneck hollow enough there.")
	}
	if way.UnderMm < blockMost*f.die.OpeningMm {
		op.Do = append(op.Do, "Die block no wider than "+b.W.Read(2*way.UnderMm)+": a folded flange hangs beside it.")
	}
	for i := range f.made.Folds {
		if turn := words.Trim(f.blank.Folds[i].AngleDeg, 1) + "°"; o.n == len(f.order)-1 && f.made.Folds[i].AngleDeg < f.blank.Folds[i].AngleDeg {
			op.Do = append(op.Do, "Then close the "+f.flapName(i)+" to "+turn+" by hand, over a bar clamped along the inside of its fold.")
		}
	}
	if o.n == 0 {
		first := "Deburr the blank first."
		first += words.When(f.in.K.Value == 0, " Fold a test strip of the same sheet and give its k if the flange comes out of its limits.")
		op.Do = append([]string{first}, op.Do...)
	}
	b.op(warn(op, risingSheet, sheetEdges))
}

// hornsMm is how much longer than the tool between flanges a fold line is that is pressed over its whole length
// by no straight tool. Common practice, no source.
const hornsMm = 10.0

// stop is how the blank is laid: against a stop, or by the lines where the edge is turned
// to a slant.
func (o fold) stop(w words.Writer) string {
	line := &o.f.blank.Folds[o.i]
	next := o.f.next(o.i)
	switch {
	case next == nil:
		return "back stop " + w.Read(line.StopMm()) + " from the free edge to the fold line"
	case next.AngleDeg == 90:
		return "back stop " + w.Read(line.StopMm()) + " from the outside of the " + o.f.flapName(o.f.blank.Index(next)) + " to the fold line"
	}
	return "laid by its scribed line, for the edge is turned"
}

// next is the flange on the free edge of another, nil if there is none.
func (f *folded) next(i int) *bend.PanelFold {
	return seq.At(f.blank.Folds, func(b *bend.PanelFold) bool {
		return b.Side == f.blank.Folds[i].Side && b.Nth == f.blank.Folds[i].Nth+1
	})
}

func (o fold) gauge() string {
	return words.Either(o.f.blank.Folds[o.i].AngleDeg == 90, "square inside, calipers over the flange", "protractor, calipers over the flange")
}

// byHandPart is how far out of square what is closed by hand may end, as a part of its height:
// half a degree and a little, and over squareMm what a square reads there at all. Common
// practice, no source.
const (
	byHandPart = 0.01
	squareMm   = 50.0
)

func (o fold) checks(r *record) {
	b := &o.f.blank.Folds[o.i]
	r.checkLength(r.ref(o), o.name()+" height", b.HeightMm)
	angle := plan.Check{Ref: r.ref(o), What: o.name() + " angle", Wanted: o.turn() + " turned", Gauge: o.gauge()}
	if angle.Limits, angle.Source = r.angleLimits(o.legMm()); b.AngleDeg == 90 && (o.f.made.Folds[o.i].AngleDeg < 90 || b.HeightMm > squareMm) {
		angle.What, angle.Wanted, angle.Gauge = o.name()+", free edge out of square", "0", "square inside, rule at the edge"
		angle.Limits, angle.Source = "±"+r.W.Said(b.HeightMm*byHandPart), lookup.NoSource
	}
	r.add(angle)
	under := words.Either(b.Nth > 0, "the flange it is on", "the base")
	for m := range seq.Refs(r.Groups) {
		if m.On != o.f.in.Flanges[o.i].Side {
			continue
		}
		s := r.General(m.own[0].YMm)
		c := plan.Check{
			Ref: r.ref(m), What: words.Spaced(m.Name.Value) + ", " + holesWords(m.Group) + " from " + under, Wanted: r.W.Size(m.own[0].YMm),
			Gauge: "height over the outside of " + under + ", folded",
		}
		if m.Group.Count > 1 {
			c.What = words.Spaced(m.Name.Value) + ", hole " + strconv.Itoa(m.Group.First) + " from " + under
		}
		r.sized(c, s)
	}
	if b.RightMitreMm > 0 {
		gap := o.f.in.Gap.Mm
		r.sized(plan.Check{Ref: r.ref(o), What: o.name() + ", gap at its right mitre", Wanted: r.W.Size(gap), Gauge: "feeler, folded"},
			Sized{NominalMm: gap, MaxMm: math.Max(2*gap, o.f.Thickness.Mm/2), Limited: true, Source: lookup.NoSource})
	}
	if o.n == len(o.f.order)-1 {
		o.f.baseChecks(r)
	}
}

// baseChecks are the sizes of the base over its flanges.
func (f *folded) baseChecks(r *record) {
	r.checkLength(0, "width"+f.measuredOver(parts.LeftSide, parts.RightSide), f.Outline.Width.Mm)
	r.checkLength(0, "height"+f.measuredOver(parts.TopSide, parts.BottomSide), f.Outline.Height.Mm)
}

// measuredOver says what a size of the base is measured over: flanges that stand square on it, bends past that, or the corners in which
// the outside of a flange that leans out would meet its own; nothing where it has no flange there.
func (f *folded) measuredOver(sides ...parts.Side) string {
	over := ""
	for _, s := range sides {
		switch a := f.in.On(s); {
		case a == nil:
		case a.Angle.Deg < 90:
			return " of the base, to where straight edges along its outside and a flange's meet"
		case a.Angle.Deg > 90:
			over = " over the bends"
		case over == "":
			over = " over the flanges"
		}
	}
	return over
}

// legMm is the shorter of the two legs of a bend's angle: of its flange, and of what that stands on, across the bend.
func (o fold) legMm() float64 {
	b := &o.f.blank.Folds[o.i]
	under := o.f.Outline.Width.Mm
	if b.Side%2 == 0 {
		under = o.f.Outline.Height.Mm
	}
	for _, q := range o.f.blank.Folds {
		if q.Side == b.Side && q.Nth == b.Nth-1 {
			under = q.HeightMm
		}
	}
	return min(b.HeightMm, under)
}

// where says where the holes of a group are on their flange.
func (f *folded) where(n *Numbered, m *Group) string {
	if m.On == "" {
		return f.usual.where(n, m)
	}
	var list string
	for i, q := range m.own {
		if i == 4 {
			list += " …"
			break
		}
		list = words.Join(" ", list, "("+n.W.Size(q.XMm)+", "+n.W.Size(q.YMm)+")")
	}
	return "on the " + words.Spaced(string(m.On)) + " flange, along it from its side's middle and up from the corner: " + list
}

// blockMost is half the width of the widest block that a die is taken to have, in
// openings. Common practice, no source.
const blockMost = 1.5

// nearBendThick is how many thicknesses a hole's edge keeps off the end of a
// bend, so that it is not drawn out of round. Common practice, no source.
const nearBendThick = 2.0

// besidesRadius is the share by which the radius that a die leaves may differ
// from the one drawn before it is said. Common practice, no source.
const besidesRadius = 0.3
