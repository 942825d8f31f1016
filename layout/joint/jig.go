package joint

import (
	"math"
	"slices"
	"strconv"
	"strings"

	"centrepop/layout/part"
	"centrepop/layout/plan"
	"centrepop/layout/words"
	"centrepop/parts"
	"centrepop/parts/geom"
	"centrepop/parts/seq"
)

// A drill jig is worth making for jigPieces pieces, or where parts that are bolted
// together have the pattern. Its plate is jigDias drills thick and no less than
// jigLeastMm, and goes as far beyond the outermost centre; its register stands
// registerMm into a bore, with a wall of jigWallMm, and may shake by shakeMm on what
// it goes over. Without a bush of the job the plate is renewed. Common practice, no source.
const (
	jigPieces  = 4
	jigDias    = 1.5
	jigLeastMm = 10.0
	registerMm = 6.0
	jigWallMm  = 3.0
	guideMm    = 0.1 // a guide over its drill at most; no less than the drill, which has to go through
	shakeMm    = 0.3
)

// drilled is a group of holes that a jig could place, seen on the face it is drilled from.
type drilled struct {
	r     *part.Model
	m     *part.Group
	face  parts.Face
	at    []plan.XY
	place *part.Step // the bore at that face, or the spigot that stands out of it; nil without one
}

// jig is a plate on its way to a tool: its back lies on the parts with its bore, its
// front on those with its spigot.
type jig struct {
	first        drilled
	plugs, rings []drilled // that it serves
	left         []drilled // of the pattern, and not served
}

// drillings are the groups of two holes or more that are drilled from a free face of a
// flat or turned part.
func (j *shop) drillings() (out []drilled) {
	for _, r := range j.models {
		if flat := r.Part.Flat() && r.Part.Bends == nil; !flat && (!r.Part.Turned() || r.Part.Kind == parts.Tube) {
			continue
		}
		for m := range seq.Refs(r.Groups) {
			if m.Hole == nil || len(m.Points) < 2 || r.CutWhole(m) || m.Group.DrillMm == 0 {
				continue
			}
			d := drilled{r: r, m: m}
			d.face, d.at = m.DrilledFrom()
			d.place = d.register()
			out = append(out, d)
		}
	}
	return out
}

// register is what a jig may be set on at the face of the holes: the spigot inside
// them, or else the bore.
func (d *drilled) register() *part.Step {
	outside, inside := d.r.Sides()
	near, far := geom.MeanRadiusMm(d.at), 0.0
	for _, q := range d.at {
		r := geom.Distance(q, plan.XY{})
		near, far = math.Min(near, r), math.Max(far, r)
	}
	near, far = near-d.m.Group.DrillMm/2, far+d.m.Group.DrillMm/2
	if d.face == parts.Back {
		slices.Reverse(outside)
		slices.Reverse(inside)
	}
	wide := func(s *part.Step) bool { return !geom.Over(far, s.Size.NominalMm/2) }
	switch {
	case len(outside) > 1 && outside[0].Size.NominalMm/2 < near && wide(outside[1]) && (outside[0].Size.Fitted() || outside[0].Size.Measured()):
		return outside[0]
	case len(outside) > 0 && d.r.Part.Turned() && !wide(outside[0]), len(inside) == 0, !d.ends(inside[0]):
		return nil
	case inside[0].Size.NominalMm/2 < near && (inside[0].Size.Fitted() || inside[0].Size.Press.Set()):
		return inside[0]
	}
	return nil
}

// ends tells whether a step begins at the face of the holes.
func (d *drilled) ends(s *part.Step) bool {
	if d.face == parts.Back {
		return geom.Alike(s.ToMm, d.r.LengthMm())
	}
	return !geom.Over(s.FromMm, 0)
}

// samePlaces tells whether two patterns are the same set of places.
func samePlaces(a, b []plan.XY) bool {
	return len(a) == len(b) && !slices.ContainsFunc(a, func(p plan.XY) bool {
		return !slices.ContainsFunc(b, func(q plan.XY) bool { return geom.Alike(geom.Distance(p, q), 0) })
	})
}

// jigs are the drill jigs worth making, each with its sheet, and why a pattern that is
// worth one has none.
func (j *shop) jigs(made []*joint) (out []jig) {
	all := j.drillings()
	taken := map[*part.Group]bool{}
	for _, d := range all {
		if taken[d.m] {
			continue
		}
		var of []drilled
		for _, o := range all {
			same := samePlaces(o.at, d.at) || samePlaces(o.at, flipped(d.at))
			if !taken[o.m] && same && geom.Alike(o.m.Group.DrillMm, d.m.Group.DrillMm) {
				of = append(of, o)
			}
		}
		if !worth(of, made) {
			continue
		}
		for _, o := range of {
			taken[o.m] = true
		}
		out = append(out, serve(of, made))
	}
	return out
}

// worth tells whether a jig saves work on these groups.
func worth(of []drilled, made []*joint) bool {
	return pieces(of) >= jigPieces || slices.ContainsFunc(ofKind(made, parts.BoltKind), func(t *joint) bool {
		in := func(f feature) bool {
			return f.group != nil && slices.ContainsFunc(of, func(d drilled) bool { return d.m == f.group })
		}
		return in(t.a) && in(t.b)
	})
}

func pieces(of []drilled) (n int) {
	return seq.Sum(of, func(d drilled) int { return d.r.Part.Quantity })
}

// serve finds the register that serves most pieces.
func serve(of []drilled, made []*joint) (best jig) {
	best.left = of
	for _, first := range of {
		if first.place == nil {
			continue
		}
		g := jig{first: first}
		for _, d := range of {
			to := g.side(d)
			*to = append(*to, d)
		}
		served := append(slices.Clone(g.plugs), g.rings...)
		if worth(served, made) && pieces(served) > pieces(best.plugs)+pieces(best.rings) {
			best = g
		}
	}
	return best
}

// side is where a jig has some holes: its plug, its ring, or what it leaves.
func (g *jig) side(d drilled) *[]drilled {
	own, at := g.first.place, g.first.at
	switch {
	case d.place == nil || shake(d.place) > shakeMm:
	case d.place.Inside != own.Inside: // a ring on the other side of a jig with a plug, which is the larger
		fits := own.Inside && samePlaces(d.at, flipped(at)) && d.place.Size.MaxMm+2*jigWallMm < own.Size.MinMm
		if fits && (len(g.rings) == 0 || equal(d.place, g.rings[0].place)) {
			return &g.rings
		}
	case samePlaces(d.at, at) && equal(d.place, own):
		if own.Inside {
			return &g.plugs
		}
		return &g.rings
	}
	return &g.left
}

// shake is the play of a ring over a spigot at its least, mm; a bore has none here,
// for its plug is turned to its least size.
func shake(s *part.Step) float64 {
	if s.Inside && !s.Size.Fitted() {
		return 0
	}
	return geom.Clean(s.Size.MaxMm - s.Size.MinMm + 2*plugMm)
}

// equal tells whether one register fits two steps.
func equal(a, b *part.Step) bool {
	return a.Size.MinMm == b.Size.MinMm && a.Size.MaxMm == b.Size.MaxMm && a.Size.Class == b.Size.Class
}

// jigTool is the jig as a tool, and how it lies on each of its parts.
func (j *shop) jigTool(g jig) tool {
	drill := g.first.m.Group.DrillMm
	far := seq.Max(0, g.first.at, func(q plan.XY) float64 { return geom.Distance(q, plan.XY{}) })
	bush, guide := j.bush(g), atLeast(drill, guideMm).size()
	margin := jigDias * drill
	if bush != nil {
		guide = parts.Size{Nominal: bush.Outside, Fit: bush.Hole}
		if bush.Hole.Pos.Line == 0 {
			guide.Fit = parts.Fit{Class: parts.Text{Value: "H7"}}
		}
		margin = math.Max(margin, bush.Outside.Mm/2+jigWallMm)
	}
	out, thick := j.up(2*(far+margin)), j.jigMm(g)
	slides := parts.Fit{Measured: []parts.Length{{Mm: plugMm}, {Mm: 2 * plugMm}}}
	p := toolBlank(parts.TurnedPart, j.jigNotes(g, bush)...)
	p.Profile = &parts.Profile{Outside: []parts.Step{j.cylinder("plate", free(out), thick)}}
	long, register := thick, " thick"
	if len(g.plugs) > 0 {
		bore := g.plugs[0].place
		up := math.Min(registerMm, bore.LengthMm()/2)
		plug := j.cylinder("register", atMost(words.Round(bore.Size.MinMm-plugMm, 3), plugMm), j.up(up))
		if !bore.Size.Fitted() {
			plug.Size = parts.Size{Nominal: given(bore.Size.NominalMm), Fit: slides}
		}
		p.Profile.Outside, long = append(p.Profile.Outside, plug), long+plug.Length.Mm
		register = " long, of it " + j.w.Size(plug.Length.Mm) + " register into " + j.w.Dia(bore.Size.NominalMm)
	}
	sizes := " " + j.w.Dia(out) + " × " + j.w.Size(long) + register + ", " + words.CountOf(len(g.first.at)) + j.w.Dia(drill)
	if len(g.rings) > 0 {
		spigot := g.rings[0].place.Size
		ring := j.cylinder("ring", atLeast(words.Round(spigot.MaxMm+plugMm, 3), plugMm), long)
		if spigot.Measured() {
			ring.Size = parts.Size{Nominal: given(spigot.NominalMm), Fit: slides}
		}
		p.Profile.Inside = []parts.Step{ring}
		sizes += ", bored to go over " + j.w.Dia(g.rings[0].place.Size.NominalMm)
	}
	at := g.first.at
	p.Holes = []parts.HoleGroup{{
		FaceGroup: parts.FaceGroup{Name: parts.Text{Value: "guides"}, Face: parts.Front, Through: true, Pattern: parts.Pattern{Shape: geom.Listed{At: at, Datum: "centre"}, Count: len(at)}},
		Size:      parts.HoleSize{Make: parts.PlainHole, Size: guide}, ByTable: true,
	}}
	if bush != nil {
		sizes += ", with bushes " + j.w.Dia(bush.Bore.Mm) + " in " + j.w.Dia(bush.Outside.Mm)
	}
	p.Top, p.Stock = parts.Text{Value: "scribe"}, j.bar(out, 0)
	return tool{"Drill jig", sizes, p, nil}
}

// jigMm is the thickness of a jig's plate.
func (j *shop) jigMm(g jig) float64 {
	return j.up(math.Max(jigLeastMm, jigDias*g.first.m.Group.DrillMm))
}

// bush is the smallest of the job's bushes for the drill of a jig that has room in its plate
// between the guides and beside register and ring; nil if there is none.
func (j *shop) bush(g jig) (out *parts.Bush) {
	at, room := g.first.at, math.Inf(1)
	for i, q := range at {
		room = seq.Min(room, at[:i], func(o plan.XY) float64 { return geom.Distance(q, o) - jigWallMm })
		for _, of := range [][]drilled{g.plugs, g.rings} {
			if len(of) > 0 {
				room = math.Min(room, 2*(geom.Distance(q, plan.XY{})-jigWallMm)-of[0].place.Size.NominalMm)
			}
		}
	}
	for b := range seq.Refs(j.job.Shop.Bushes) {
		fits := geom.Alike(b.Bore.Mm, g.first.m.Group.DrillMm) && b.Outside.Mm <= room
		if fits && (out == nil || b.Outside.Mm < out.Outside.Mm) {
			out = b
		}
	}
	return out
}

// jigNotes say what the sheet of a jig does not show.
func (j *shop) jigNotes(g jig, bush *parts.Bush) []string {
	thick := words.Either(jigDias*g.first.m.Group.DrillMm < jigLeastMm, j.w.Size(j.jigMm(g)), words.Trim(jigDias, 1)+" drills")
	out := []string{"Scribe TOP over the edge to both faces. A plate " + thick + " thick without bushes is common practice, no source: make a new one when a guide hole is worn."}
	if bush != nil {
		out[0] = "Scribe TOP over the edge to both faces. Press the bushes in square, flush with both faces or below them; change one when its bore is worn."
	}
	if len(g.plugs) > 0 && !g.plugs[0].place.Size.Fitted() {
		out = append(out, "Measure the bores that the register goes into before it is turned: it is turned to the least of them.")
	}
	if len(g.rings) > 0 && g.rings[0].place.Size.Measured() {
		out = append(out, "Measure the spigots that the ring goes over before it is bored: it is bored to the largest of them.")
		if len(g.plugs) > 0 { // these may wait for what is drilled by the register
			d := g.rings[0]
			out = append(out, "Until "+words.Spaced(d.place.Name)+" of "+d.r.Out.Title+" is turned the ring stays unbored: "+
				"what the register goes into is drilled without it. Then bore it true to the register.")
		}
	}
	if len(g.plugs) > 0 && len(g.rings) > 0 || !samePlaces(g.first.at, flipped(g.first.at)) {
		for i, of := range [][]drilled{g.plugs, g.rings} {
			for _, d := range of {
				out = append(out, words.Capital(g.down(i == 0))+" of the jig lies on "+d.r.Out.Title+".")
			}
		}
	}
	return out
}

// down is the face of a jig that lies on a part with its bore, or its spigot. A jig
// that only goes over spigots lies on its back.
func (g *jig) down(bore bool) string {
	return words.Either(bore || len(g.plugs) == 0, "the back", "the front")
}

// lay says how jig no lies on one of its parts.
func (g *jig) lay(no string, d drilled) string {
	on := words.Either(!d.place.Inside, "its bore over the "+words.Spaced(d.place.Name), "its register in the "+words.Spaced(d.place.Name))
	return "Lay drill jig " + no + g.madeTo(d.place.Inside) + " on the " + string(d.face) + " face: " + g.down(d.place.Inside) + " of the jig down, " + on + ", TOP to TOP; clamp it."
}

// madeTo says which registers a jig waits for on a part with a bore, or with a spigot: those that it is made to there as they measure.
func (g *jig) madeTo(bore bool) string {
	var to []string
	for _, d := range words.Either(bore, g.plugs, g.rings) {
		if d.place.Size.Measured() {
			to = seq.Add(to, words.Spaced(d.place.Name)+" of "+d.r.Out.Title)
		}
	}
	return words.When(len(to) > 0, ", made to "+strings.Join(to, " and ")+" as turned,")
}

// whyNot says what keeps the groups that are left from a jig.
func (g *jig) whyNot() string {
	var out []string
	for _, d := range g.left {
		why := "its register is another"
		switch {
		case d.place == nil:
			why = "no bore or spigot with limits at the " + string(d.face) + " face to set it on"
		case shake(d.place) > shakeMm:
			why = "its " + words.Spaced(d.place.Name) + " has too wide limits to set it on"
		case len(g.plugs)+len(g.rings) == 0:
			why = "too few pieces for one that is set by its " + words.Spaced(d.place.Name)
		}
		out = seq.Add(out, d.r.Out.Title+": "+why)
	}
	return strings.Join(out, "; ")
}

// addJigs lists the drill jigs, and has the parts drilled through them.
func (j *shop) addJigs(made []*joint, rows []plan.ToolRow) []plan.ToolRow {
	through, n := map[*part.Model][]part.Jigged{}, len(rows)
	for _, g := range j.jigs(made) {
		served := append(slices.Clone(g.plugs), g.rings...)
		if len(served) == 0 {
			rows = append(rows, plan.ToolRow{Tool: "No drill jig for the " + words.Spaced(g.left[0].m.Group.Name) + " of " + g.left[0].r.Out.Title, For: g.whyNot()})
			continue
		}
		x := j.jigTool(g)
		n++
		row := x.row(n)
		for _, d := range served {
			row.For = words.Join("; ", row.For, words.Spaced(d.m.Group.Name)+" of "+d.r.Out.Title+times(d.r.Part.Quantity))
		}
		if row.Sheet = j.toolSheet(&row, x.sheet); row.Sheet == nil {
			continue
		}
		row.For = words.Join("; not ", row.For, g.whyNot())
		for _, d := range served {
			through[d.r] = append(through[d.r], part.Jigged{Group: d.m.Group.Name, Jig: row.No(), Lay: g.lay(row.No(), d), PlateMm: j.jigMm(g)})
		}
		rows = append(rows, row)
	}
	for _, r := range j.models {
		if of := through[r]; of != nil {
			r.ThroughJigs(of)
		}
	}
	return rows
}

// times is " × 2" for two pieces, nothing for one.
func times(n int) string {
	if n == 1 {
		return ""
	}
	return " × " + strconv.Itoa(n)
}
