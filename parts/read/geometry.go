package read

import (
	"math"
	"slices"

	"centrepop/parts"
	"centrepop/parts/geom"
	"centrepop/parts/meant"
)

// geometry checks what can be seen from one part alone: that its features lie
// on it and do not contradict one another. Ligaments and walls are for the
// review.
//
// Only what was read without a fault is checked, so that one mistake is not
// reported twice.
func (f *fields) geometry(p *parts.Part) {
	if f.full || f.units == "" || !f.fewPlaces(p) {
		return
	}
	for _, key := range []string{"units", "kind", "outline", "bends", "bore", "thickness", "stock", "profile", "tube", "bar"} {
		if !f.sound(f.n, key) {
			return
		}
	}
	switch {
	case p.Outline != nil:
		f.boreRoom(p)
	case p.Profile != nil:
		f.insideOutside(p.Profile)
	case p.Bar == nil:
		return
	}
	if p.Bar != nil {
		f.barLength(p.Bar)
		eachSound(f, "holes", p.Holes, func(g *parts.HoleGroup) { f.onBar(p.Bar, *g, "hole") })
		eachSound(f, "slots", p.Slots, func(s *parts.FaceSlot) { f.onBar(p.Bar, s.AsHoles(), "slot") })
		return
	}
	f.chamferEdges(p)
	eachSound(f, "holes", p.Holes, func(g *parts.HoleGroup) { f.holesRoom(p, g) })
	eachSound(f, "slots", p.Slots, func(s *parts.FaceSlot) {
		f.onPart(p, s.On, s.Pattern, s.Face, "slot")
		f.oneWall(s.Pos, s.Walls)
		f.notDeeper(p, s.Depth, "slot")
	})
	eachSound(f, "keyways", p.Keyways, func(k *parts.Keyway) { f.keywayRoom(p, k) })
	eachSound(f, "grooves", p.Grooves, func(g *parts.Groove) { f.grooveRoom(p, g) })
	if p.Profile == nil {
		return
	}
	eachSound(f, "flats", p.Flats, func(a *parts.Flats) { f.flatsRoom(p, a) })
	if p.Clamp != nil && f.sound(f.n, "clamp") {
		f.clampRoom(p, p.Clamp)
	}
	eachSound(f, "radial", p.Radials, func(d *parts.Radial) { f.radialRoom(p.Profile, d) })
}

// eachSound checks what was read from the entries of a list, but for entries with faults.
func eachSound[T any](f *fields, key string, read []T, check func(*T)) {
	if len(read) == 0 {
		return
	}
	groups := slices.DeleteFunc(slices.Clone(f.n.get(key).items), func(n *node) bool { return n.kind != mapNode })
	for i := range read {
		if f.soundBelow(groups[i]) {
			check(&read[i])
		}
	}
}

// holesRoom checks that holes lie on the part and do not go deeper.
func (r *reader) holesRoom(p *parts.Part, g *parts.HoleGroup) {
	r.onPart(p, g.On, g.Pattern, g.Face, "hole")
	r.oneWall(g.Pos, g.Walls)
	r.notDeeper(p, g.Depth, "hole")
	if c := g.Counterbore; c != nil {
		r.notDeeper(p, c.Depth, "counterbore")
	}
}

func (r *reader) oneWall(pos parts.Pos, walls string) {
	if walls == parts.BothWalls {
		r.fault(pos, "only a bar of tube has two walls to drill", "delete walls")
	}
}

// boreRoom checks that the bore lies inside the outline.
func (r *reader) boreRoom(p *parts.Part) {
	if p.Bore == nil {
		return
	}
	d := p.Bore.Size.Nominal
	room := 2 * p.Outline.Contour().DepthMm(geom.Point{}) // diameter of the largest circle about the origin
	switch {
	case room <= 0:
		r.fault(p.Bore.Pos, "the bore is at the origin, which lies outside the outline", "put the origin of the outline where the bore is")
	case !geom.Over(room, d.Mm):
		r.faultf(d.Pos, "a bore smaller than "+r.said(room), "the bore of %s is as large as the outline or larger", d.Text)
	}
}

// onPart checks that the centres of a pattern lie on its flange, or on the part.
func (r *reader) onPart(p *parts.Part, on parts.Side, pattern parts.Pattern, face parts.Face, what string) {
	if on == "" {
		r.onFace(p, pattern, face, what)
		return
	}
	r.onFlap(p, on, pattern, face, what)
}

// onFace checks that the centres of a pattern lie on the part.
func (r *reader) onFace(p *parts.Part, pattern parts.Pattern, face parts.Face, what string) {
	if p.Outline == nil && pattern.Datum != "centre" {
		r.fault(pattern.Pos, "a turned part has no edge to measure from", "datum: centre, or delete datum")
		return
	}
	var outside, bore float64 // diameters
	switch {
	case p.Bore != nil:
		bore = p.Bore.Size.Nominal.Mm
	case p.Profile != nil:
		outside, bore = widest(p.Profile), narrowest(p.Profile)
	}
	var contour geom.Contour
	var edges geom.Box
	if p.Outline != nil {
		contour = p.Outline.Contour()
		if edges = geom.Bounds(contour.Path); face == parts.Back {
			edges = edges.Mirrored()
		}
	}
	for i, at := range pattern.Shape.Places(edges) {
		radius := math.Hypot(at.XMm, at.YMm)
		front := parts.At(face, at, at.Mirrored())
		off := p.Outline != nil && !geom.Over(contour.DepthMm(front), 0) || outside > 0 && !geom.Over(outside/2, radius)
		switch {
		case off:
			r.faultf(pattern.PosOf(i), "a place inside the outline", "the %s at x %s, y %s is centred on the outline or outside it", what, r.bare(at.XMm), r.said(at.YMm))
		case geom.Over(bore/2, radius):
			r.faultf(pattern.PosOf(i), "a place outside the bore", "the %s at x %s, y %s is centred in the bore of %s", what, r.bare(at.XMm), r.said(at.YMm), r.said(bore))
		}
	}
}

// notDeeper checks a blind depth against the part.
func (r *reader) notDeeper(p *parts.Part, depth parts.Length, what string) {
	if !depth.Set() {
		return
	}
	room := p.Thickness.Mm
	if p.Profile != nil {
		room = p.Profile.LengthMm()
	}
	if room > 0 && !geom.Over(room, depth.Mm) {
		r.faultf(depth.Pos, "a smaller depth, depth: through, or a thicker part", "the %s is %s deep in a part of %s", what, depth.Text, r.said(room))
	}
}

// insideOutside checks the inside steps against the outside ones.
func (r *reader) insideOutside(p *parts.Profile) {
	total, from := p.LengthMm(), 0.0
	if total > geom.LargestMm {
		r.faultf(p.Pos, "at most 10 m", "the steps add up to %s", r.said(total))
	}
	for i := range p.Inside {
		in := &p.Inside[i]
		to := from + in.Length.Mm
		if geom.Over(to, total) {
			r.faultf(in.Length.Pos, "inside steps that end at the back face or before it",
				"the inside step %s ends %s from the front, and the part is %s long", in.Name.Value, r.said(to), r.said(total))
			return
		}
		start := 0.0
		for j := range p.Outside {
			out := &p.Outside[j]
			end := start + out.Length.Mm
			overlaps := geom.Over(math.Min(to, end), math.Max(from, start))
			if d, od := outerMm(in), outerMm(out); overlaps && d > 0 && od > 0 && !geom.Over(od, d) {
				r.faultf(in.Pos, "an inside diameter below the outside one",
					"the inside step %s of %s leaves no wall in the outside step %s of %s", in.Name.Value, r.said(d), out.Name.Value, r.said(od))
			}
			start = end
		}
		from = to
	}
}

// edges lists the edges of a part that can be bevelled, with the axial room
// there.
func edges(p *parts.Part) (names []string, room []float64) {
	add := func(feature string, mm float64) {
		names = append(names, feature+"-front", feature+"-back")
		room = append(room, mm, mm)
	}
	switch {
	case p.Outline != nil:
		add("outline", p.Thickness.Mm)
		if p.Bore != nil {
			add("bore", p.Thickness.Mm)
		}
	case p.Profile != nil:
		for _, s := range slices.Concat(p.Profile.Outside, p.Profile.Inside) {
			add(s.Name.Value, s.Length.Mm)
		}
	}
	return names, room
}

// chamferEdges checks that bevelled edges exist and have room.
func (f *fields) chamferEdges(p *parts.Part) {
	names, room := edges(p)
	seen := make(map[string]int, len(p.Chamfers))
	eachSound(f, "chamfers", p.Chamfers, func(c *parts.Chamfer) {
		i := slices.Index(names, c.Edge.Value)
		line, twice := seen[c.Edge.Value]
		switch {
		case i < 0:
			f.faultf(c.Edge.Pos, "the edges are "+all(names), "the part has no edge %s%s", c.Edge.Value, meant.Perhaps(c.Edge.Value, names))
			return
		case twice:
			f.faultf(c.Edge.Pos, "one chamfer for each edge", "the edge %s has a chamfer already, in line %d", c.Edge.Value, line)
			return
		}
		seen[c.Edge.Value] = c.Edge.Pos.Line
		if (!c.Radius.Set() || f.rounded(p, c)) && room[i] > 0 && geom.Over(c.Size.Mm, room[i]) {
			f.faultf(c.Size.Pos, "at most "+f.said(room[i]), "the %s of %s is longer than its edge is deep", c.Word(), c.Size.Text)
		}
	})
}

// radialRoom checks that what is cut from outside lies on the part.
func (r *reader) radialRoom(p *parts.Profile, f *parts.Radial) {
	length, wide := p.LengthMm(), widest(p)
	if geom.Over(f.Axial.Mm, length) {
		r.faultf(f.Axial.Pos, "a distance within the part", "%s is centred %s from the face of a part %s long", f.Name.Value, f.Axial.Text, r.said(length))
	}
	if f.Along.Set() && f.Along.Mm > length {
		r.faultf(f.Along.Pos, "a shorter opening", "%s is %s long in a part of %s", f.Name.Value, f.Along.Text, r.said(length))
	}
	if wide == 0 {
		return
	}
	if f.Around.Set() && f.Around.Mm >= math.Pi*wide {
		r.faultf(f.Around.Pos, "less than the circumference", "%s goes %s round a circumference of %s", f.Name.Value, f.Around.Text, r.said(math.Pi*wide))
	}
	if f.Depth.Set() && f.Depth.Mm >= wide {
		r.faultf(f.Depth.Pos, "a smaller depth, depth: through, or a thicker part", "%s is %s deep in a diameter of %s", f.Name.Value, f.Depth.Text, r.said(wide))
	}
}
