package review

import (
	"centrepop/layout/bolts"
	"centrepop/parts"
	"centrepop/parts/geom"
	"centrepop/parts/seq"
)

// rim is what a hole wants around it: from its centre to an edge, by whose rule.
type rim struct {
	needMm       float64
	rule, source string
}

const stripRule = "soft sheet keeps a strip between a hole and an edge, or two holes, that neither tears nor is blown out"

const steelwork = "EN 1993-1-8:2005 Table 3.3, used as guidance"

// edgeRim is the least distance from a hole's middle line to an edge; bolted, a joint has its bolts go through. A bolt
// hole has that of steelwork, one in soft sheet a strip; half a thread of metal beside a tapped hole, and
// a quarter of its diameter beside a plain one, are common practice.
func (h *hole) edgeRim(bolted bool) rim {
	const pinMm = 20.0 // the thickest pin that is pressed in; common practice, no source
	d := 2 * h.radiusMm
	switch {
	case h.stripMm > 0:
		return rim{h.radiusMm + h.stripMm, stripRule, practice}
	case h.slot != nil && bolted:
		return rim{1.5 * d, "from the middle line of a slot for bolts to an edge at least 1.5 times its width", steelwork}
	case h.slot != nil:
		return rim{1.0 * d, "from the middle of a slot to an edge at least its width", practice}
	case h.bolt():
		if e, err := bolts.EdgeDistances(d); err == nil {
			return rim{e.E1Mm, "from the centre of a bolt hole to an edge at least 1.2 times the hole", steelwork}
		}
	case h.group.Size.Make == parts.PlainHole && d <= pinMm && fine(h.group.Size.Size.Fit, 8):
		return rim{1.0 * d, "from the centre of a hole for a pin to an edge at least its diameter", practice}
	case h.thread != nil:
		return rim{1.0 * d, "from the centre of a tapped hole to an edge at least one thread diameter", practice}
	}
	return rim{0.75 * d, "metal beside a hole at least a quarter of its diameter", practice}
}

// nearest is the closest edge of a hole found so far.
type nearest struct {
	wallMm float64 // metal between, negative if the hole breaks out
	what   string  // the edge
}

func (n *nearest) take(wallMm float64, what string) {
	if wallMm < n.wallMm {
		*n = nearest{wallMm, what}
	}
}

// edge looks for too little metal between a hole and the outline, a bore, a
// shoulder, the outside or a flat on it.
func edge(v *view) {
	worst := &worst{}
	for h := range seq.Refs(v.holes) {
		if h.metalMm == 0 {
			worst.add(h.name, -endless, func(count int) {
				v.report(Stop, h.name, h.pos, Finding{
					What: h.title() + " is centred where there is no metal" + same(count), Numbers: "centre " + v.mm(h.centreMm()) + " from the axis",
					Rule: "a hole is drilled in metal", Source: "by geometry", Fix: "correct its place",
				})
			})
			continue
		}
		n := v.nearestEdge(h)
		need := h.edgeRim(v.joined(h.name))
		wantMm := need.needMm - h.radiusMm
		if headMm := n.wallMm + h.radiusMm - h.headRadiusMm(); geom.Over(headRim*h.headRadiusMm(), headMm) && h.headRadiusMm() > h.radiusMm &&
			(!geom.Over(wantMm, n.wallMm) || geom.Some(n.wallMm) && !geom.Some(headMm)) {
			worst.add(h.name, headMm, func(count int) {
				v.report(Check, h.name, h.pos, v.headEdge(h, n, headMm, count))
			})
			continue
		}
		if !geom.Over(wantMm, n.wallMm) || n.what == "the bore" && geom.Some(n.wallMm) && v.standardFace(h.group) {
			continue
		}
		worst.add(h.name, n.wallMm-wantMm, func(count int) {
			f := Finding{
				What: h.title() + " lies close to " + n.what + same(count),
				Numbers: "from its centre to " + n.what + " " + v.mm(n.wallMm+h.radiusMm) + ", wanted " + v.mm(need.needMm) + "; " + h.matter() + " left " +
					v.mm(n.wallMm) + " beside " + v.mm(2*h.radiusMm),
				LeftMm: left(n.wallMm),
				Rule:   need.rule, Source: need.source, Fix: "move the hole, or give the part more metal there",
			}
			severity := Check
			if !geom.Some(n.wallMm) {
				severity = Stop
				f.What = h.title() + " breaks out of " + n.what + same(count)
				f.Numbers = "its side lies " + v.mm(-n.wallMm) + " beyond " + n.what
				f.Rule, f.Source = "a hole keeps metal all round", "by geometry"
			}
			v.report(severity, h.name, h.pos, f)
		})
	}
	worst.report()
}

// headRim is the least metal beside a counterbore or countersink, as a part of its
// radius. Common practice, no source.
const headRim = 0.1

// headEdge is a head that breaks out of an edge, or nearly does.
func (v *view) headEdge(h *hole, n nearest, headMm float64, count int) Finding {
	f := Finding{
		What: h.title() + ": the counterbore or countersink breaks out of " + n.what + same(count), Numbers: "its rim lies " + v.mm(-headMm) + " beyond " + n.what,
		LeftMm: left(headMm), Rule: "a screw head is held all round", Source: "by geometry", Fix: "move the hole, or take a smaller head",
	}
	if geom.Some(headMm) {
		f.What = h.title() + ": the counterbore or countersink hardly leaves a rim beside " + n.what + same(count)
		f.Numbers, f.Source = v.mm(headMm)+" left, wanted "+v.mm(headRim*h.headRadiusMm()), practice
	}
	return f
}

// nearestEdge finds the edge with the least metal beside a hole.
func (v *view) nearestEdge(h *hole) nearest {
	n := nearest{wallMm: endless}
	if v.p.Flat() {
		n.take(v.toOutline(h)-h.radiusMm, "the outline")
		for _, c := range v.inside {
			n.take(h.nearMm()-h.radiusMm-c.RadiusMm(), "the bore")
		}
		return n
	}
	along := h.wideMm()
	for f := range everyFlat(v) {
		for i := range f.Sides {
			up := geom.Clock(1, f.ClockDeg+float64(i)*360/float64(f.Sides))
			if on := (geom.Span{FromMm: f.FromMm, ToMm: f.ToMm}); along.Meets(on) {
				n.take(f.DiameterMm/2-f.DepthMm-max(h.a.Dot(up), h.b.Dot(up))-h.radiusMm, "the flat "+f.Name)
			}
		}
	}
	for _, s := range v.m.Stretches() {
		mid := s.MidMm()
		out, in := at(v.outside, mid), at(v.inside, mid)
		switch {
		case out == nil:
		case h.centreMm() >= out.RadiusMm():
			// The drill passes beside a hub on its way to the face.
			before := mid < h.fromMm && h.face == parts.Front || mid > h.toMm && h.face == parts.Back
			if gap := h.nearMm() - h.radiusMm - out.RadiusMm(); before && gap < 0 {
				n.take(gap, "the side of "+out.Name)
			}
		case along.Meets(s):
			n.take(out.RadiusMm()-h.farMm()-h.radiusMm, "the outside of "+out.Name)
			if in != nil && h.centreMm() > in.RadiusMm() {
				n.take(h.nearMm()-h.radiusMm-in.RadiusMm(), "the bore "+in.Name)
			}
		}
	}
	return n
}

// wideMm is where a hole has its full diameter: beyond its thread runs a smaller drill.
func (h *hole) wideMm() geom.Span {
	on := h.span()
	switch {
	case h.thread == nil || h.through:
	case h.face == parts.Back:
		on.FromMm = max(on.FromMm, on.ToMm-h.group.Depth.Mm)
	default:
		on.ToMm = min(on.ToMm, on.FromMm+h.group.Depth.Mm)
	}
	return on
}
