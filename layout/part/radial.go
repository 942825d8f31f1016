package part

import (
	"cmp"
	"math"
	"regexp"
	"slices"
	"strings"

	"centrepop/layout/cutting"
	"centrepop/layout/develop"
	"centrepop/layout/lookup"
	"centrepop/layout/plan"
	"centrepop/layout/threads"
	"centrepop/layout/words"
	"centrepop/parts"
	"centrepop/parts/geom"
	"centrepop/parts/seq"
)

// Radial is one feature cut from outside into a round, at each of its clock
// angles.
type Radial struct {
	In   *parts.Radial
	Rows []plan.RadialRow
	Size Made // of holes
	kind radialKind
}

// radialKind is what differs between holes, slots and windows.
type radialKind interface {
	size(z *sizer, m *Radial, row *plan.RadialRow)
	work(b *bench, m *Radial, o *plan.Operation)                   // machine, tool and lines
	wrap(row plan.RadialRow, f *develop.Feature) (alongMm float64) // its shape on the wrap
}

var radialKinds = map[parts.RadialShape]radialKind{
	parts.RadialHole: radialHole{}, parts.RadialSlot: radialSlot{}, parts.RadialWindow: radialWindow{},
}

// radials lays out what is cut from outside, numbered on in the order of the
// drawing.
func (z *sizer) radials() {
	n := 0
	for f := range seq.Refs(z.Part.Radials) {
		m := Radial{In: f, kind: radialKinds[f.Shape]}
		axial := geom.Clean(f.From.FromFront(f.Axial.Mm, z.LengthMm()))
		row := plan.RadialRow{Name: f.Name.Value, Shape: string(f.Shape), AxialMm: axial, Datum: string(cmp.Or(f.From, parts.Front)), DatumMm: geom.Clean(f.Axial.Mm)}
		if st := z.outsideAt(axial); st != nil {
			row.OutsideMm = geom.Clean(st.Size.NominalMm)
		}
		m.kind.size(z, &m, &row)
		row.DepthMm = z.radialMm(&m, axial)
		row.DepthText = words.Join("; ", z.radialDepth(&m, axial), f.Note.Value)
		angles := seq.Map(f.Clock, func(a parts.Angle) float64 { return a.Deg })
		geom.FromTop(angles)
		for _, a := range angles {
			n++
			row.N, row.ClockDeg = n, a
			row.ArcMm = geom.Clean(math.Pi * row.OutsideMm * a / 360)
			m.Rows = append(m.Rows, row)
		}
		z.Radials = append(z.Radials, m)
	}
}

// radialDepth is how deep a radial feature goes, without its note.
func (s *Sizes) radialDepth(m *Radial, axialMm float64) string {
	if !m.In.Through {
		return s.depthText(m.Size, m.In.Depth)
	}
	least, wall := s.throughMm(m, axialMm)
	text := s.W.Size(wall) + " through the wall"
	if least < wall-geom.CloseMm {
		text = s.W.Size(least) + " to " + text
	}
	text = "into the bore, " + text
	if s.boreAt(axialMm) == nil {
		text = "through, " + s.W.Size(wall)
	}
	switch t := s.threadMm(m.Size, wall); {
	case t < wall && m.bearsInBore(s, axialMm):
		return "drilled " + text + ", opened out from outside " + s.W.Size(geom.Clean(wall-t)) + " deep, thread in the " + s.W.Size(t) + " left at the bore"
	case t < wall:
		return "thread " + s.W.Size(t) + " deep, drilled " + text
	}
	return text
}

// bearsInBore tells whether what is fitted in a radial feature is a set screw that bears on what is in the bore.
func (m *Radial) bearsInBore(s *Sizes, axialMm float64) bool {
	return m.In.Through && parts.SetScrew(m.In.Fitted.Value) && s.boreAt(axialMm) != nil
}

// radialMm is how much metal a radial feature goes through, where that is most.
func (s *Sizes) radialMm(m *Radial, axialMm float64) float64 {
	if !m.In.Through {
		return m.In.Depth.Mm
	}
	_, most := s.throughMm(m, axialMm)
	return most
}

// throughMm is the least and the most metal that a radial feature goes through from one
// of its sides along the axis to the other: more than one where it breaks out on a step.
func (s *Sizes) throughMm(m *Radial, axialMm float64) (least, most float64) {
	if s.boreAt(axialMm) == nil {
		mm := s.outsideAt(axialMm).Size.NominalMm
		return mm, mm
	}
	const edgeMm = 0.01 // inside what it touches
	least = geom.Clean(s.WallMm(axialMm))
	most = least
	for _, off := range []float64{-1, 1} {
		z := axialMm + off*(math.Max(m.In.Along.Mm, m.Size.FinishedMm)/2-edgeMm)
		if s.boreAt(z) != nil {
			wall := geom.Clean(s.WallMm(z))
			least, most = math.Min(least, wall), math.Max(most, wall)
		}
	}
	return least, most
}

// reachedByTap is how many diameters deep a hand tap cuts a thread: a screw in such a
// hole may have to come through it.
const reachedByTap = 4.0

// threadMm is how deep a thread is cut in a hole of some depth: all of it, but where no
// hand tap reaches that one diameter and a half, to a whole millimetre or sixteenth,
// which hold a screw; of a pipe thread, which a plug or a nipple only closes, half as
// much in any hole over a diameter (common practice, no source); a taper thread as long
// as that of its mate.
func (s *Sizes) threadMm(m Made, deepMm float64) float64 {
	if m.Thread == nil {
		return deepMm
	}
	full, reach := 1.5*m.Thread.MajorMm, reachedByTap*m.Thread.MajorMm
	switch {
	case m.Thread.Series == threads.PipeG:
		full, reach = full/2, m.Thread.MajorMm
	case m.Thread.Taper: // the tap widens it the farther it goes in
		full, reach = m.Thread.UsefulLengthMm, m.Thread.UsefulLengthMm
	}
	if deepMm <= reach+geom.CloseMm {
		return deepMm
	}
	whole := s.W.Step(1, 1.0/16)
	return math.Ceil(full/whole-geom.CloseMm) * whole
}

// breakOut is a change of diameter that a radial feature runs across.
type breakOut struct {
	before, after *Step
	clearMm       float64 // how far it would have to move to clear it
}

// breakOuts are the changes of diameter that a feature runs across: of the
// outside, and where it comes through of the bore.
func (s *Sizes) breakOuts(m *Radial) []breakOut {
	row := m.Rows[0]
	half := math.Max(row.AlongMm, math.Max(row.DiameterMm, m.Size.FinishedMm)) / 2
	outside, inside := s.Sides()
	if !m.In.Through {
		inside = nil
	}
	var out []breakOut
	for _, steps := range [][]*Step{outside, inside} {
		for i := 1; i < len(steps); i++ {
			off := math.Abs(row.AxialMm - steps[i].FromMm)
			if off < half-geom.CloseMm && steps[i-1].Size.NominalMm != steps[i].Size.NominalMm && !s.runsOut(m, steps[i-1], steps[i]) && !m.tongued(steps[i-1], steps[i]) {
				out = append(out, breakOut{steps[i-1], steps[i], geom.Clean(half - off)})
			}
		}
	}
	return out
}

// runsOut tells whether a blind feature ends in the air at a change of diameter: the step
// on the other side of it lies no higher than its floor.
func (s *Sizes) runsOut(m *Radial, before, after *Step) bool {
	row, beyond := m.Rows[0], before
	if row.AxialMm < after.FromMm {
		beyond = after
	}
	return !m.In.Through && beyond.Size.NominalMm < row.OutsideMm-2*m.In.Depth.Mm+geom.CloseMm
}

// tongued tells whether a change of diameter that a feature runs across is at an end of the thread which it is the slot of a washer in, and
// lower than the slot is deep: the tongue comes in there, and the mill cuts on both sides.
func (m *Radial) tongued(before, after *Step) bool {
	z := m.Rows[0].AxialMm
	in := before
	if z > after.FromMm {
		in = after
	}
	return !m.In.Through && m.In.Shape == parts.RadialSlot && in.Size.Thread != nil && math.Abs(before.Size.NominalMm-after.Size.NominalMm)/2 < m.In.Depth.Mm-geom.CloseMm
}

// problems are the break-outs, for the review.
func (m *Radial) problems(n *Numbered) []plan.Problem {
	var out []plan.Problem
	for _, b := range n.breakOuts(m) {
		out = append(out, plan.Problem{Kind: plan.BreaksOut, Pos: m.In.Pos, Feature: m.Rows[0].Name, Args: []plan.Arg{
			plan.Named(words.Spaced(m.Rows[0].Name)), plan.Named(words.Spaced(b.before.Name)), plan.Named(words.Spaced(b.after.Name)),
			plan.Of(plan.Mm, b.after.FromMm), plan.Of(plan.Mm, b.clearMm),
		}})
	}
	return out
}

func (m *Radial) feature(n *Numbered) plan.Feature {
	row := m.Rows[0]
	return plan.Feature{
		Kind: plan.RadialFeature, Name: words.Spaced(row.Name), Size: words.CountOf(len(m.Rows)) + row.SizeText + ", " + row.DepthText,
		Note: "clock " + clockList(m.Rows) + ", " + fromDatum(n.W, row), Balloon: plan.XY{XMm: row.AxialMm, YMm: row.OutsideMm / 2},
	}
}

// fromDatum is where a radial feature lies as the drawing measures it: measured from
// the other face, its limits would add to those of the length.
func fromDatum(w words.Writer, row plan.RadialRow) string {
	return w.Size(row.DatumMm) + " from the " + row.Datum + " face"
}

func clockList(rows []plan.RadialRow) string {
	var t []string
	for i, row := range rows {
		if i == 8 {
			t = append(t, "…")
			break
		}
		t = append(t, words.FineAngle(row.ClockDeg))
	}
	return strings.Join(t, ", ")
}

func (m *Radial) operations(b *bench) {
	row := m.Rows[0]
	if len(m.Rows) == 1 && b.branchOver(row.N) != nil {
		return // it is cut with the hole of that branch
	}
	if row.InFlat {
		return // it is cut with the blank
	}
	o := plan.Operation{
		Machine: plan.Drill, Title: words.Spaced(row.Name) + ": " + words.CountOf(len(m.Rows)) + row.SizeText,
		Holding: b.heldRound(row.AxialMm) + "; TOP line set with a square", Refs: []int{b.ref(m)},
		Do: []string{"Clock " + clockList(m.Rows) + ", " + fromDatum(b.W, row) + " to the centre."},
	}
	o = warn(o, clampRound)
	m.kind.work(b, m, &o)
	outside, _ := b.Sides()
	for i := 1; i < len(outside); i++ {
		if off := math.Abs(row.AxialMm - outside[i].FromMm); off < row.AlongMm/2-geom.CloseMm {
			beyond := outside[i]
			if row.AxialMm > beyond.FromMm {
				beyond = outside[i-1]
			}
			switch {
			case b.runsOut(m, outside[i-1], outside[i]):
				o.Do = append(o.Do, "It runs out over "+words.Spaced(beyond.Name)+": open at that end, "+b.W.Said(geom.Clean(row.AlongMm/2+off))+" of it in the metal.")
			case outside[i-1].Size.NominalMm == outside[i].Size.NominalMm:
				o.Do = append(o.Do, "It runs "+b.W.Said(geom.Clean(row.AlongMm/2-off))+" into "+words.Spaced(beyond.Name)+": leave no burr there.")
			}
		}
	}
	if near, mm := b.inRow(m); near != nil {
		o.Do = append(o.Do, b.W.Size(mm)+" from the centre of "+words.Spaced(near.Rows[0].Name)+", "+b.limitsText(b.pitch(mm, m.Size))+": the two take the screws of one part.")
	}
	if line := b.standOut(m); line != "" {
		o.Do = append(o.Do, line)
	}
	for _, at := range b.breakOuts(m) {
		verb, care := "starts", "begin with an end mill, fed by hand, and deburr it there."
		if at.before.Inside {
			verb, care = "breaks out", "feed by hand there, and deburr inside."
		}
		o.Do = append(o.Do, "It "+verb+" across the step from "+words.Spaced(at.before.Name)+" to "+words.Spaced(at.after.Name)+": "+care)
	}
	if note := m.In.Note.Value; note != "" {
		o.Do = append(o.Do, words.Capital(note)+".")
	}
	b.op(o)
}

// heldRound is how a round lies for what is cut into its outside at a place: in vees, but
// where wider rounds stand on both sides, on whose different diameters it would not lie level.
func (b *bench) heldRound(zMm float64) string {
	before, after := 0.0, 0.0
	here := b.outsideAt(zMm)
	for _, s := range b.Side(false) {
		switch {
		case s.ToMm <= here.FromMm+geom.CloseMm:
			before = max(before, s.Size.NominalMm)
		case s.FromMm >= here.ToMm-geom.CloseMm:
			after = max(after, s.Size.NominalMm)
		}
	}
	if least := min(before, after); least > here.Size.NominalMm && before != after {
		return "on an angle plate or a dividing head by its face, axis level"
	}
	return "vee blocks, clamped"
}

// holderMm is the least distance from a tool's axis at which its holder passes a shoulder
// (common practice, no source).
const holderMm = 20.0

// standOut says how far the tool stands out of its holder for a feature that goes through beside a
// shoulder which the holder would strike; empty where none is so near.
func (b *bench) standOut(m *Radial) string {
	row := m.Rows[0]
	half, wall := max(row.AlongMm-min(row.AlongMm, row.AroundMm), 0)/2, b.radialMm(m, row.AxialMm)
	var next *Step
	for _, s := range b.Side(false) {
		beside := max(s.FromMm-row.AxialMm, row.AxialMm-s.ToMm) - half // from the tool's axis at its nearest
		if s.Size.NominalMm > row.OutsideMm && beside > 0 && beside < holderMm && (next == nil || s.Size.NominalMm > next.Size.NominalMm) {
			next = s
		}
	}
	if next == nil || !m.In.Through {
		return ""
	}
	up := geom.Clean((next.Size.NominalMm - row.OutsideMm) / 2)
	return words.Capital(words.Spaced(next.Name)) + " stands " + b.W.Said(up) + " higher beside it: the tool " + b.W.Room(up+wall) + " or more out of its holder."
}

// inRow is the hole before another on one line along a round that takes a bolt of the same thread, and how far
// before it, mm, where the limits of both places leave more than their pitch may be off; nil for none.
func (s *Sizes) inRow(m *Radial) (before *Radial, mm float64) {
	at := m.Rows[0]
	for o := range seq.Refs(s.Radials) {
		of := o.Rows[0]
		line := slices.ContainsFunc(o.Rows, func(q plan.RadialRow) bool {
			return slices.ContainsFunc(m.Rows, func(p plan.RadialRow) bool { return math.Abs(p.ClockDeg-q.ClockDeg) < geom.CloseMm })
		})
		if line && of.AxialMm < at.AxialMm-geom.CloseMm && o.Size.Text == m.Size.Text && (before == nil || of.AxialMm > before.Rows[0].AxialMm) {
			before, mm = o, geom.Clean(at.AxialMm-of.AxialMm)
		}
	}
	if before == nil || !s.pitchLost(before.Rows[0].DatumMm, before.Rows[0].DatumMm+mm, m.Size) {
		return nil, 0
	}
	return before, mm
}

func (m *Radial) checks(r *record) {
	row := m.Rows[0]
	if len(m.Rows) == 1 && r.branchOver(row.N) != nil {
		return // that hole has its own line, and takes this one away
	}
	m.checkSize(r)
	what, at := words.Spaced(row.Name), row.DatumMm
	if in := r.inMetal(m); row.AlongMm != 0 && geom.Clean(in.Max-in.Min) < row.AlongMm {
		off := words.Either(in.Max < row.AxialMm+row.AlongMm/2-geom.CloseMm, in.Min, in.Max) - row.AxialMm // to the end that is closed
		what, at = what+", its closed end,", geom.Clean(at+parts.At(parts.Face(row.Datum), off, -off))
	}
	r.sized(plan.Check{
		Ref: r.ref(m), What: what + " at " + clockList(m.Rows), Wanted: r.W.Size(at) + " from " + strings.ToUpper(row.Datum), Gauge: "calipers",
	}, r.General(at))
	if o, mm := r.inRow(m); o != nil {
		r.sized(plan.Check{Ref: r.ref(m), What: words.Spaced(o.Rows[0].Name) + " to " + words.Spaced(row.Name) + ", centre to centre", Wanted: r.W.Size(mm), Gauge: "calipers"}, r.pitch(mm, m.Size))
	}
	for _, row := range m.Rows {
		if row.ArcMm != 0 {
			size, way := r.tapedRound(row)
			r.sized(plan.Check{
				Ref: r.ref(m), What: words.Spaced(row.Name) + " at " + words.FineAngle(row.ClockDeg) + ", round from TOP" + way, Wanted: r.W.Read(size.NominalMm),
				Gauge: "tape",
			}, size)
		}
	}
}

// tapedRound limits the shorter way round from TOP, as a tape reads it: with the room that the tape needs, what the round may
// be larger or smaller makes of it.
func (s *Sizes) tapedRound(row plan.RadialRow) (size Sized, way string) {
	arc, girth := row.ArcMm, math.Pi*row.OutsideMm
	if arc > girth/2+geom.CloseMm {
		arc, way = geom.Clean(girth-arc), ", the short way"
	}
	size = s.taped(arc)
	if st := s.outsideAt(row.AxialMm); st != nil && size.Limited {
		less, more := st.Size.NominalMm-st.Size.MinMm, st.Size.MaxMm-st.Size.NominalMm
		if st.Size.AsBought {
			less, more = s.spread(st), s.spread(st)
		}
		size.MinMm, size.MaxMm = geom.Clean(size.MinMm-less*arc/row.OutsideMm), geom.Clean(size.MaxMm+more*arc/row.OutsideMm)
	}
	return size, way
}

// inMetal is the stretch along the axis over which a blind feature has a floor: it ends where it runs out over a
// step that is no higher.
func (s *Sizes) inMetal(m *Radial) plan.Range {
	row, outside := m.Rows[0], s.Side(false)
	out := plan.Range{Min: row.AxialMm - row.AlongMm/2, Max: row.AxialMm + row.AlongMm/2}
	for i := 1; i < len(outside); i++ {
		switch at := outside[i].FromMm; {
		case at < out.Min+geom.CloseMm || at > out.Max-geom.CloseMm || !s.runsOut(m, outside[i-1], outside[i]):
		case at > row.AxialMm:
			out.Max = at
		default:
			out.Min = at
		}
	}
	return plan.Range{Min: geom.Clean(out.Min), Max: geom.Clean(out.Max)}
}

// checkSize measures one of them: a hole, or a slot or window that goes through or is so deep.
func (m *Radial) checkSize(r *record) {
	row, depth := m.Rows[0], m.In.Depth.Mm
	switch name := words.Spaced(row.Name); {
	case row.AroundMm != 0 && depth > 0:
		around := r.General(geom.Clean(row.AroundMm))
		if m.In.Shape == parts.RadialSlot && row.AroundMm < row.AlongMm {
			around.MinMm = row.AroundMm // a key of that width goes in
		}
		in := r.inMetal(m)
		r.checkSized(r.ref(m), name+" around × along × deep", around, r.General(geom.Clean(in.Max-in.Min)), r.General(geom.Clean(depth)))
	case row.AroundMm != 0:
		around, noWider := r.General(geom.Clean(row.AroundMm)), noWider.MatchString(m.In.Note.Value)
		if noWider {
			around.MaxMm = row.AroundMm
		}
		r.checkSized(r.ref(m), name+" around × along", around, r.General(geom.Clean(row.AlongMm)))
		if c := &r.list[len(r.list)-1]; c.Source != (lookup.Source{}) && !noWider && !row.InFlat && r.filed(m) {
			c.What += ", no wider: less reaches in"
			c.Limits = r.W.Limits(row.AroundMm-filedMm, row.AroundMm) + " × " + r.W.Limits(row.AlongMm-filedMm, row.AlongMm+filedMm)
			c.Source = lookup.NoSource
		}
	default:
		thread := depth
		if wall := r.radialMm(m, row.AxialMm); m.In.Through && r.threadMm(m.Size, wall) < wall {
			thread = r.threadMm(m.Size, wall)
		}
		r.checkHole(plan.Check{Ref: r.ref(m), What: name, Wanted: words.CountOf(len(m.Rows))}, m.Size, depth, thread)
	}
}

// radialHole is a hole drilled into a round.
type radialHole struct{}

func (radialHole) size(z *sizer, m *Radial, row *plan.RadialRow) {
	m.Size = z.holeSize(m.In.Size)
	row.SizeText, row.DiameterMm = m.Size.Text, geom.Clean(m.Size.DrillMm)
}

func (radialHole) work(b *bench, m *Radial, o *plan.Operation) {
	o.Do = append(o.Do, "Spot a flat or use a long centre drill: the drill wanders.")
	wall := b.radialMm(m, m.Rows[0].AxialMm)
	way := b.holeWay(m.Size, wall, !m.In.Through || b.boreAt(m.Rows[0].AxialMm) != nil)
	o.Do = append(o.Do, b.drillLines(way, false)...)
	o.Do = append(o.Do, "Depth: "+b.radialDepth(m, m.Rows[0].AxialMm)+".")
	if t := b.threadMm(m.Size, wall); t < wall && m.bearsInBore(b.Sizes, m.Rows[0].AxialMm) {
		to := ""
		if mm, err := m.Size.Thread.ClearanceMm("medium"); err == nil { // which is wider than the shanks of ISO 529 and ASME B94.9, from memory
			to = " to " + b.W.Drill(mm)
		}
		o.Do = append(o.Do, "Open it out"+to+" so that the shank of the tap goes in: the set screw has to come through the thread to what is in the bore.")
	}
	o.Do = append(o.Do, b.finishLines(m.Size, way)...)
}

func (radialHole) wrap(row plan.RadialRow, f *develop.Feature) float64 {
	f.Kind, f.DiameterMm = develop.Hole, row.DiameterMm
	return row.DiameterMm
}

// opened is what slots and windows have in common.
type opened struct{}

func (opened) size(z *sizer, m *Radial, row *plan.RadialRow) {
	f, w := m.In, z.W
	row.AroundMm, row.AlongMm, row.CornerMm = geom.Clean(f.Around.Mm), geom.Clean(f.Along.Mm), geom.Clean(f.Corner.Mm)
	row.SizeText = w.Size(f.Around.Mm) + " around × " + w.Size(f.Along.Mm) + " along"
	row.SizeText += words.When(f.Corner.Mm != 0, ", corners R"+w.Size(f.Corner.Mm))
}

// radialSlot is a slot with round ends; a blind one is a keyway.
type radialSlot struct{ opened }

// milledMm is the widest slot that is milled, not chain-drilled like a window. Common practice, no source.
const milledMm = 25.0

// work mills a slot.
func (radialSlot) work(b *bench, m *Radial, o *plan.Operation) {
	row := m.Rows[0]
	narrow := math.Min(row.AroundMm, row.AlongMm)
	if m.In.Through && narrow > milledMm {
		radialWindow{}.work(b, m, o)
		return
	}
	o.Machine = plan.Mill
	if m.In.Through {
		way := ""
		if noWider.MatchString(m.In.Note.Value) { // a cutter cuts a little wider than it is
			narrow = max(narrow-b.W.Step(narrowStepMm, narrowStepIn), narrow/2)
		}
		o.Tool, way = b.slotTool(narrow, math.Max(row.AroundMm, row.AlongMm), b.radialMm(m, row.AxialMm), b.boreAt(row.AxialMm) == nil)
		o.Do = append(o.Do, words.Capital(way)+" to "+row.SizeText+", "+b.radialDepth(m, row.AxialMm)+".")
		return
	}
	o.Tool = b.slotDrill("", narrow)
	round, from, turned := row.OutsideMm, "the top of the round", ""
	if st := b.outsideAt(row.AxialMm); st != nil && st.Size.Thread != nil {
		round, from, turned = b.threadBlankMm(st), b.W.Dia(round)+" nominal", " as turned"
	}
	floor := geom.Clean((row.OutsideMm+round)/2 - m.In.Depth.Mm)
	o.Do = append(o.Do, "Mill to "+row.SizeText+passes(m.In.Depth.Mm, narrow)+".",
		"Depth "+b.W.Size(m.In.Depth.Mm)+" from "+from+": "+b.W.Size(floor)+" left to the far side of "+b.W.Dia(round)+turned+".")
}

// noWider are words for a width that is the most that it may be.
var noWider = regexp.MustCompile(`(?i)^no wider\b`)

// filedMm is how close what is chain-drilled and filed comes out. Common practice, no source.
const filedMm = 1.0

// filed tells whether an opening through a round is chain-drilled and filed to size: a
// window, and a slot too wide to mill or that no end mill opens.
func (s *Sizes) filed(m *Radial) bool {
	row := m.Rows[0]
	narrow := min(row.AroundMm, row.AlongMm)
	return m.In.Shape == parts.RadialWindow || narrow > milledMm || !s.milled(narrow, s.radialMm(m, row.AxialMm), s.boreAt(row.AxialMm) == nil)
}

// milled tells whether an end mill opens a slot that goes through, from one side or from both.
func (s *Sizes) milled(widthMm, deepMm float64, both bool) bool {
	_, _, long := s.slotReach(widthMm)
	return deepMm <= long || both && deepMm <= 2*long
}

// End mills under those of the tables come by half millimetres, or 1/32 in, from the second on, and cut narrowReach diameters
// deep. Common practice, no source.
const narrowStepMm, narrowStepIn, narrowReach = 0.5, 1.0 / 32, 3.0

// slotReach is the end mill for a slot that goes through, and how deep it cuts, in the standard and in the long series.
func (s *Sizes) slotReach(widthMm float64) (dMm, shortMm, longMm float64) {
	if dMm, shortMm, longMm = cutting.MillReach(widthMm, s.drills()); dMm > 0 {
		return dMm, shortMm, longMm
	}
	step := s.W.Step(narrowStepMm, narrowStepIn)
	if n := math.Floor(widthMm/step + 1e-6); n >= 2 {
		dMm = geom.Clean(n * step)
	}
	return dMm, narrowReach * dMm, narrowReach * dMm
}

// slotTool is what opens a slot that goes through, and how: a slot drill, a long one,
// one from each side where both are open, or where none reaches a row of holes.
func (b *bench) slotTool(widthMm, longMm, deepMm float64, both bool) (tool, way string) {
	dMm, short, long := b.slotReach(widthMm)
	tool, way = b.slotDrill("up to ", widthMm), "drill the two ends, mill between"
	switch {
	case deepMm <= short:
		return tool, way
	case deepMm <= long:
		return tool + ", long series", way
	case b.milled(widthMm, deepMm, both):
		return tool + words.When(long > short, ", long series"), way + ", half from each side"
	case dMm == 0 && deepMm <= sheetMm:
		return "drill, piercing saw, files", "drill the two ends, saw between with a piercing saw, file"
	case dMm == 0:
		return "drills, files", "too narrow and deep for a usual end mill: " + words.Lower(b.chain(widthMm, longMm)) + " on the middle line, saw out the webs, file"
	}
	return "drills, files", "no end mill reaches: one of " + b.W.Dia(dMm) + " cuts " + b.W.Said(long) + " deep at most. " + b.chain(widthMm, longMm) + " on the middle line, saw out the webs, file"
}

// sheetMm is how thick metal is at the most that a piercing saw follows a line in. Common practice, no source.
const sheetMm = 3.0

// slotDrill names a slot drill with its speed, that of a drill of its diameter. Common practice, no source.
func (b *bench) slotDrill(upTo string, mm float64) string {
	return "slot drill " + upTo + b.W.Dia(mm) + b.atSpeed(cutting.Drill, mm, false)
}

// atSpeed is the speed of what turns in a drill or mill spindle, or of the work in the lathe; empty where
// none is known.
func (b *bench) atSpeed(op cutting.Op, mm float64, onLathe bool) string {
	if rpm, _, _ := b.rpm(op, mm, onLathe); rpm != 0 {
		return ", " + words.Trim(rpm, 0) + " rev/min"
	}
	return ""
}

// A row of holes leaves chainLeaveMm, or 1/64 in, on each side for the file, of what is narrow a tenth of the width, and webs
// of twice that; its drill is at most chainMostMm, or 3/8 in. Common practice, no source.
const chainLeaveMm, chainMostMm, chainLeavePart = 0.5, 10.0, 0.1

// chain is the row of holes that opens what is then sawn and filed out: on the middle line of what is narrow as many as its
// length holds, the ends left for the file as the sides are, else along the line.
func (b *bench) chain(widthMm, longMm float64) string {
	leave, most := min(b.W.Step(chainLeaveMm, 1.0/64), chainLeavePart*widthMm), b.W.Step(chainMostMm, 3.0/8)
	d := geom.Clean(min(widthMm-2*leave, most))
	pitch, holes := geom.Clean(d+2*leave), "holes "
	if span := longMm - 2*leave - d; widthMm-2*leave <= most {
		gaps := math.Floor(geom.Clean(span / pitch))
		if gaps < 1 {
			return "Drill " + b.W.Drill(d) + b.atSpeed(cutting.Drill, d, false) + ", one hole"
		}
		pitch, holes = b.W.Down(span/gaps, 0.1, 0.001), words.Trim(gaps+1, 0)+" holes "
	}
	return "Chain-drill " + b.W.Drill(d) + b.atSpeed(cutting.Drill, d, false) + ", " + holes + b.W.Said(pitch) + " apart,"
}

func (radialSlot) wrap(row plan.RadialRow, f *develop.Feature) float64 {
	f.Kind, f.WidthMm, f.LengthMm = develop.AxialSlot, row.AroundMm, row.AlongMm
	if row.AroundMm > row.AlongMm {
		f.Kind, f.WidthMm, f.LengthMm = develop.AroundSlot, row.AlongMm, row.AroundMm
	}
	return row.AlongMm
}

// radialWindow is a rectangular opening.
type radialWindow struct{ opened }

func (radialWindow) work(b *bench, m *Radial, o *plan.Operation) {
	o.Machine = plan.Mill
	row := m.Rows[0]
	o.Do = append(o.Do, b.chain(min(row.AroundMm, row.AlongMm), max(row.AroundMm, row.AlongMm))+" inside the line, mill or file to "+row.SizeText+", "+b.radialDepth(m, row.AxialMm)+".")
}

func (radialWindow) wrap(row plan.RadialRow, f *develop.Feature) float64 {
	f.Kind, f.OnSurface = develop.Window, true
	f.WidthMm, f.LengthMm, f.CornerMm = row.AroundMm, row.AlongMm, row.CornerMm
	return row.AlongMm
}
