package parts

import (
	"math"
	"slices"
	"strconv"
	"strings"
)

// closeMm is the slack of geometric comparisons, against rounding of inches.
const closeMm = 1e-6

// geometry checks what can be seen from one part alone: that its features lie
// on it and do not contradict one another. Ligaments and walls are for the
// review.
//
// Only what was read without a fault is checked, so that one mistake is not
// reported twice.
func (r *reader) geometry(root *node, p *Part) {
	if r.full || r.units == "" || !r.fewPlaces(p) {
		return
	}
	for _, key := range []string{"units", "kind", "outline", "bore", "thickness", "stock", "profile", "tube"} {
		if !r.sound(root, key) {
			return
		}
	}
	switch {
	case p.Outline != nil:
		r.boreRoom(p)
	case p.Profile != nil:
		r.insideOutside(p.Profile)
	default:
		return
	}
	good := func(key string, pos Pos) bool {
		list := root.get(key)
		i := slices.IndexFunc(list.items, func(n *node) bool { return n.pos == pos })
		return i >= 0 && r.soundBelow(list.items[i])
	}
	r.chamferEdges(p, func(c Chamfer) bool { return good("chamfers", c.Pos) })
	for _, g := range p.Holes {
		if !good("holes", g.Pos) {
			continue
		}
		r.onFace(p, g.Pattern, g.Face, "hole")
		r.notDeeper(p, g.Depth, "hole")
		if c := g.Counterbore; c != nil {
			r.notDeeper(p, c.Depth, "counterbore")
		}
	}
	for _, s := range p.Slots {
		if good("slots", s.Pos) {
			r.onFace(p, s.Pattern, s.Face, "slot")
			r.notDeeper(p, s.Depth, "slot")
		}
	}
	for _, f := range p.Radials {
		if p.Profile != nil && good("radial", f.Pos) {
			r.radialRoom(p.Profile, f)
		}
	}
}

// boreRoom checks that the bore lies inside the outline.
func (r *reader) boreRoom(p *Part) {
	if p.Bore == nil {
		return
	}
	d, o := p.Bore.Size.Nominal, p.Outline
	room := 0.0 // diameter of the largest circle about the origin
	switch o.Shape {
	case CircleOutline, SquareOutline:
		room = o.Width.Mm
	case RectangleOutline, SlotOutline:
		room = math.Min(o.Width.Mm, o.Height.Mm)
	case PolygonOutline, PathOutline:
		if o.Sides > 0 {
			room = o.Width.Mm
			break
		}
		corners := o.corners()
		if !within(xy{}, corners) {
			r.fault(p.Bore.Pos, "the bore is at the origin, which lies outside the outline", "put the origin of the outline where the bore is")
			return
		}
		room = 2 * toEdge(xy{}, corners)
	}
	if d.Mm >= room-closeMm {
		r.faultf(d.Pos, "a bore smaller than "+formatMm(room)+" mm", "the bore of %s is as large as the outline or larger", d.Text)
	}
}

// corners returns the contour of an outline given by points or a path.
func (o *Outline) corners() []xy {
	if o.Shape == PathOutline {
		corners, _ := parsePath(o.Path.Value)
		return corners
	}
	corners := make([]xy, len(o.Points))
	for i, p := range o.Points {
		corners[i] = xy{p.X.Mm, p.Y.Mm}
	}
	return corners
}

// contains tells whether a place on the front face is inside the outline.
func (o *Outline) contains(at xy) bool {
	x, y := math.Abs(at.x), math.Abs(at.y)
	w, h := o.Width.Mm/2, o.Height.Mm/2
	switch {
	case o.Shape == CircleOutline:
		return math.Hypot(x, y) < w-closeMm
	case o.Shape == SquareOutline || o.Shape == RectangleOutline:
		if x >= w-closeMm || y >= h-closeMm {
			return false
		}
		cx, cy := x-(w-o.Corner.Mm), y-(h-o.Corner.Mm)
		return cx <= 0 || cy <= 0 || math.Hypot(cx, cy) < o.Corner.Mm-closeMm
	case o.Shape == SlotOutline:
		return math.Hypot(math.Max(0, x-(w-h)), y) < h-closeMm
	case o.Sides > 0:
		for i := range o.Sides {
			flat := (o.First.Deg + 360*(float64(i)+0.5)/float64(o.Sides)) * math.Pi / 180
			if at.x*math.Sin(flat)+at.y*math.Cos(flat) >= w-closeMm {
				return false
			}
		}
		return true
	}
	return within(at, o.corners())
}

// bounds returns the bounding box of the outline on the front face.
func (o *Outline) bounds() (low, high xy) {
	w, h := o.Width.Mm/2, o.Height.Mm/2
	corners := []xy{{-w, -h}, {w, h}}
	switch {
	case o.Shape == CircleOutline:
		corners = []xy{{-w, -w}, {w, w}}
	case o.Sides > 0:
		corners = corners[:0]
		radius := w / math.Cos(math.Pi/float64(o.Sides))
		for i := range o.Sides {
			sin, cos := math.Sincos((o.First.Deg + 360*float64(i)/float64(o.Sides)) * math.Pi / 180)
			corners = append(corners, xy{radius * sin, radius * cos})
		}
	case o.Shape == PolygonOutline || o.Shape == PathOutline:
		corners = o.corners()
	}
	low, high = corners[0], corners[0]
	for _, c := range corners {
		low = xy{math.Min(low.x, c.x), math.Min(low.y, c.y)}
		high = xy{math.Max(high.x, c.x), math.Max(high.y, c.y)}
	}
	return low, high
}

// places returns the centres of a pattern seen on its face, each with the
// place in the input to blame.
func (p *Pattern) places(o *Outline, face Face) (at []xy, pos []Pos) {
	onCircle := func(deg float64, where Pos) {
		sin, cos := math.Sincos(deg * math.Pi / 180)
		at, pos = append(at, xy{p.PCD.Mm / 2 * sin, p.PCD.Mm / 2 * cos}), append(pos, where)
	}
	switch p.Kind {
	case CirclePattern:
		for i := range p.Count {
			onCircle(p.First.Deg+360*float64(i)/float64(p.Count), p.PCD.Pos)
		}
	case ArcPattern:
		for i := range p.Count {
			onCircle(p.First.Deg+sweep(p.First.Deg, p.Last.Deg)*float64(i)/float64(p.Count-1), p.PCD.Pos)
		}
	case AnglesPattern:
		for _, a := range p.Angles {
			onCircle(a.Deg, p.PCD.Pos)
		}
	case GridPattern:
		for row := range p.Rows {
			for column := range p.Columns {
				at = append(at, xy{
					p.Centre.X.Mm + p.PitchX.Mm*(float64(column)-float64(p.Columns-1)/2),
					p.Centre.Y.Mm + p.PitchY.Mm*(float64(row)-float64(p.Rows-1)/2),
				})
				pos = append(pos, p.Pos)
			}
		}
	case PointsPattern:
		base, sx, sy := xy{}, 1.0, 1.0
		if o != nil && p.Datum != "centre" {
			low, high := o.bounds()
			if face == Back {
				low.x, high.x = -high.x, -low.x
			}
			base = low
			if strings.HasPrefix(p.Datum, "right") {
				base.x, sx = high.x, -1
			}
			if strings.HasSuffix(p.Datum, "top") {
				base.y, sy = high.y, -1
			}
		}
		for _, q := range p.Points {
			at, pos = append(at, xy{base.x + sx*q.X.Mm, base.y + sy*q.Y.Mm}), append(pos, q.Pos)
		}
	}
	return at, pos
}

// sweep is the clockwise angle from first to last, 0 to under 360 degrees.
func sweep(first, last float64) float64 {
	return math.Mod(last-first+720, 360)
}

// onFace checks that the centres of a pattern lie on the part.
func (r *reader) onFace(p *Part, pattern Pattern, face Face, what string) {
	if p.Outline == nil && pattern.Datum != "centre" {
		r.fault(pattern.Pos, "a turned part has no edge to measure from", "datum: centre, or delete datum")
		return
	}
	var outside, bore float64 // diameters
	switch {
	case p.Bore != nil:
		bore = p.Bore.Size.Nominal.Mm
	case p.Profile != nil:
		outside, bore = p.Profile.widest(), p.Profile.narrowest()
	}
	places, positions := pattern.places(p.Outline, face)
	for i, at := range places {
		radius := math.Hypot(at.x, at.y)
		front := at
		if face == Back {
			front.x = -at.x
		}
		off := p.Outline != nil && !p.Outline.contains(front) || outside > 0 && radius >= outside/2-closeMm
		switch {
		case off:
			r.faultf(positions[i], "a place inside the outline", "the %s at x %s, y %s mm is centred on the outline or outside it", what, formatMm(at.x), formatMm(at.y))
		case bore > 0 && radius < bore/2-closeMm:
			r.faultf(positions[i], "a place outside the bore", "the %s at x %s, y %s mm is centred in the bore of %s mm", what, formatMm(at.x), formatMm(at.y), formatMm(bore))
		}
	}
}

// notDeeper checks a blind depth against the part.
func (r *reader) notDeeper(p *Part, depth Length, what string) {
	if !depth.Set() {
		return
	}
	room := p.Thickness.Mm
	if p.Profile != nil {
		room = p.Profile.LengthMm()
	}
	if room > 0 && depth.Mm >= room-closeMm {
		r.faultf(depth.Pos, "a smaller depth, or depth: through", "the %s is %s deep in a part of %s mm", what, depth.Text, formatMm(room))
	}
}

// outerMm is the largest diameter a step has, 0 if only thread tables know it.
func (s *Step) outerMm() float64 {
	if s.Size.Nominal.Set() {
		return s.Size.Nominal.Mm
	}
	return threadMm(s.Size.Thread.Value)
}

// threadMm reads the major diameter out of a designation that says it: M40x1.5,
// Tr20x4, 1/2-13 UNC. It returns 0 for others, such as pipe threads.
func threadMm(designation string) float64 {
	number, factor := designation, 1.0
	switch {
	case strings.HasPrefix(designation, "Tr"):
		number = designation[2:]
	case strings.HasPrefix(designation, "M"):
		number = designation[1:]
	default:
		cut := strings.LastIndex(designation, "-")
		if cut < 0 || !strings.Contains(designation, "UN") {
			return 0
		}
		number, factor = designation[:cut], mmPerInch
	}
	number, _, _ = strings.Cut(strings.ReplaceAll(number, "×", "x"), "x")
	v, wrong := parseNumber(strings.TrimSpace(number))
	if wrong != "" || v <= 0 || v*factor > largestMm {
		return 0
	}
	return v * factor
}

// widest is the largest outside diameter, 0 if one of them is not known here.
func (p *Profile) widest() float64 {
	best := 0.0
	for i := range p.Outside {
		d := p.Outside[i].outerMm()
		if d == 0 {
			return 0
		}
		best = math.Max(best, d)
	}
	return best
}

// narrowest is the smallest inside diameter of a through bore, 0 for a blind
// one and if one of them is not known here.
func (p *Profile) narrowest() float64 {
	length, best := 0.0, math.Inf(1)
	for i := range p.Inside {
		length += p.Inside[i].Length.Mm
		best = math.Min(best, p.Inside[i].outerMm())
	}
	if len(p.Inside) == 0 || length < p.LengthMm()-closeMm {
		return 0
	}
	return best
}

// insideOutside checks the inside steps against the outside ones.
func (r *reader) insideOutside(p *Profile) {
	total, from := p.LengthMm(), 0.0
	if total > largestMm {
		r.faultf(p.Pos, "at most 10 m", "the steps add up to %s mm", formatMm(total))
	}
	for i := range p.Inside {
		in := &p.Inside[i]
		to := from + in.Length.Mm
		if to > total+closeMm {
			r.faultf(in.Length.Pos, "inside steps that end at the back face or before it",
				"the inside step %s ends %s mm from the front, and the part is %s mm long", in.Name.Value, formatMm(to), formatMm(total))
			return
		}
		start := 0.0
		for j := range p.Outside {
			out := &p.Outside[j]
			end := start + out.Length.Mm
			overlaps := math.Min(to, end)-math.Max(from, start) > closeMm
			if d, od := in.outerMm(), out.outerMm(); overlaps && d > 0 && od > 0 && d >= od-closeMm {
				r.faultf(in.Pos, "an inside diameter below the outside one",
					"the inside step %s of %s mm leaves no wall in the outside step %s of %s mm", in.Name.Value, formatMm(d), out.Name.Value, formatMm(od))
			}
			start = end
		}
		from = to
	}
}

// edges lists the edges of a part that can be bevelled, with the axial room
// there.
func (p *Part) edges() (names []string, room []float64) {
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
func (r *reader) chamferEdges(p *Part, good func(Chamfer) bool) {
	names, room := p.edges()
	seen := make(map[string]int, len(p.Chamfers))
	for _, c := range p.Chamfers {
		if !good(c) {
			continue
		}
		i := slices.Index(names, c.Edge.Value)
		if i < 0 {
			what := "the part has no edge " + c.Edge.Value
			if like := nearest(c.Edge.Value, names); like != "" {
				what += "; perhaps " + like + " is meant"
			}
			r.fault(c.Edge.Pos, what, "the edges are "+all(names))
			continue
		}
		if line, twice := seen[c.Edge.Value]; twice {
			r.faultf(c.Edge.Pos, "one chamfer for each edge", "the edge %s has a chamfer already, in line %d", c.Edge.Value, line)
			continue
		}
		seen[c.Edge.Value] = c.Edge.Pos.Line
		if room[i] > 0 && c.Size.Mm > room[i]+closeMm {
			r.faultf(c.Size.Pos, "at most "+formatMm(room[i])+" mm", "the chamfer of %s is longer than its edge is deep", c.Size.Text)
		}
	}
}

// radialRoom checks that what is cut from outside lies on the part.
func (r *reader) radialRoom(p *Profile, f Radial) {
	length, wide := p.LengthMm(), p.widest()
	if f.Axial.Mm > length+closeMm {
		r.faultf(f.Axial.Pos, "a distance within the part", "%s is centred %s from the face of a part %s mm long", f.Name.Value, f.Axial.Text, formatMm(length))
	}
	if f.Along.Set() && f.Along.Mm > length {
		r.faultf(f.Along.Pos, "a shorter opening", "%s is %s long in a part of %s mm", f.Name.Value, f.Along.Text, formatMm(length))
	}
	if wide == 0 {
		return
	}
	if f.Around.Set() && f.Around.Mm >= math.Pi*wide {
		r.faultf(f.Around.Pos, "less than the circumference", "%s goes %s round a circumference of %s mm", f.Name.Value, f.Around.Text, formatMm(math.Pi*wide))
	}
	if f.Depth.Set() && f.Depth.Mm >= wide {
		r.faultf(f.Depth.Pos, "a smaller depth, or depth: through", "%s is %s deep in a diameter of %s mm", f.Name.Value, f.Depth.Text, formatMm(wide))
	}
}

// formatMm writes millimetres for a message, to a thousandth.
func formatMm(mm float64) string {
	return strconv.FormatFloat(math.Round(mm*1000)/1000+0, 'f', -1, 64)
}
