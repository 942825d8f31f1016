package part

import (
	"math"
	"slices"
	"strconv"
	"strings"

	"centrepop/layout/plan"
	"centrepop/layout/words"
	"centrepop/parts"
	"centrepop/parts/geom"
	"centrepop/parts/seq"
)

func operations(n *Numbered, jigs ...Jigged) *bench {
	b := &bench{Numbered: n, jigs: jigs, faced: map[parts.Face]int{}, held: map[int]bool{}, finishes: map[int]int{}, worked: map[workedTo]bool{}}
	if n.knifed() {
		b.knife()
		return b
	}
	n.form.operations(b)
	b.markTop()
	for _, it := range n.items() {
		it.operations(b)
	}
	for _, t := range n.Part.Notes {
		if w := parts.AskedBy(t.Value); w != nil {
			machine, held := plan.Machine(w.At), ""
			if b.form.round() && (machine == plan.Drill || machine == plan.Mill) {
				held = b.heldRound(b.LengthMm()/2) + "; TOP line set with a square"
			}
			b.op(plan.Operation{Machine: machine, Title: "By the designer’s note", Holding: held, Do: []string{words.Capital(w.Do) + w.For + "."}})
		}
	}
	b.grindHardened()
	b.op(warn(plan.Operation{
		Machine: plan.Bench, Title: "Deburr and inspect",
		Do: slices.Concat([]string{"Break every edge that has no " + b.brokenBy() + ", " + b.brokenText() + "."}, b.narrowLands(), b.last,
			[]string{"Fill in the record."}),
		Tool: "file, scraper, countersink by hand",
	}, deburring))
	return b
}

// knife makes a part of soft sheet: the template on it, its holes punched while the sheet is whole, then its bore cut
// and last its outside.
func (b *bench) knife() {
	do := []string{"Lay " + b.StockText() + " on end-grain wood or a cutting board."}
	if faces, _ := b.punched(); len(faces) > 0 && slices.ContainsFunc(b.Faces, func(f *plan.Face) bool { return f.NoTemplate == "" }) {
		do = append(do, "Check the printed rules of the template. Tape the "+strings.Join(faces, " and the ")+" template on it whole; do not cut it out.")
		do = append(do, b.carriedLines()...)
	}
	for m := range seq.Refs(b.Groups) {
		by := words.Either(m.Hole != nil, "Punch ", "Punch the ends of, and cut between them, ")
		do = append(do, by+words.Spaced(m.Name.Value)+", "+strings.TrimSuffix(m.placesWords(), ".")+": "+words.CountOf(m.Group.Count)+m.Group.SizeText+".")
	}
	if bore := b.StepNamed(boreStep); bore != nil {
		do = append(do, "Cut out the bore "+b.sizeText(bore)+".")
	}
	do = append(do, "Last the outside, "+b.cut.size+": several light cuts, the knife upright; what is round with a compass cutter.", "Write TOP with a pen "+b.topPlace()+".")
	b.op(warn(plan.Operation{Machine: plan.Bench, Title: "Cut to the template", Do: do, Tool: "hollow punches and mallet, knife with a new blade, compass cutter", Gauge: "rule, calipers",
		Refs: seq.Map(b.Features, func(f plan.Feature) int { return f.N })}, blade))
	b.op(plan.Operation{Machine: plan.Bench, Title: "Inspect", Do: []string{"No cut runs past a corner, no hole is torn: else make it new.", "Fill in the record."}})
}

// markTop marks TOP with what comes before, where nothing else is marked: a hole in the middle has no clock angle.
func (b *bench) markTop() {
	set := slices.ContainsFunc(b.Groups, func(m Group) bool { return !b.central(&m) })
	if !set && !b.radialsLeft() && len(b.Keyways) == 0 {
		if top := b.Part.Top.Value; top != "" && len(b.ops) > 0 { // with what comes before
			o := &b.ops[len(b.ops)-1]
			b.top = "Mark TOP " + b.topPlace() + " (" + top + ")" + b.fromSeam() + "."
			o.Do = append(o.Do, b.top)
		}
		return
	}
	b.form.mark(b)
}

// mark marks TOP, sets the templates and punches what the cutter has not made.
func (usual) mark(b *bench) {
	faces, chords := b.punched()
	wrapped, carriers, templates := b.wrapLines()
	o := plan.Operation{Machine: plan.Bench, Title: "Mark TOP", Tool: "scriber", Do: []string{b.topLine(faces) + "."}}
	if len(faces) > 0 || b.radialsLeft() {
		o.Title, o.Tool = "Mark TOP, set out, punch", "scriber, centre punch 60° to find, 90° to open"
		o = warn(o, punching)
	}
	if len(faces) > 0 || templates {
		o.Title = "Mark TOP, set the template, punch"
		o.Do = append(o.Do, "Check the printed rules of every template.")
	}
	if face, _ := b.clocked(); slices.Contains(faces, face) {
		o.Title, o.Do = "Set the template, mark TOP, punch", o.Do[1:]
	}
	o.Do = slices.Concat(o.Do, b.templateLines(faces), b.jigLookLines(), wrapped)
	if b.radialsLeft() && len(wrapped) == 0 {
		o.Do = append(o.Do, "Mark from the TOP line by the arc lengths of the table, on the outside, and from the front face.")
	}
	o.Tool = words.Join(", ", append([]string{o.Tool}, carriers...)...)
	if chords {
		o.Do = append(o.Do, "Check one chord with dividers before drilling.")
	}
	b.op(o)
}

// topLine marks TOP, over the edge too where a template needs it on another face.
func (b *bench) topLine(faces []string) string {
	top, place := b.Part.Top.Value, b.topPlace()
	cut, whole := b.clocked()
	by := ""
	switch {
	case cut == "":
	case !slices.Contains(faces, cut) && b.cut.round:
		by = ", where the holes cut already have it: " + b.placeAtClock(whole)
	case !slices.Contains(faces, cut):
		by = ", as the outline and the holes cut already lie in the picture"
	default:
		by = " by it" + words.When(cut != b.topFace(), ", over the edge")
	}
	line := "Mark TOP " + place + " (" + top + ")" + by
	switch top {
	case "":
		line = "Scribe TOP " + place + by + ", for setting out"
	case topKeyway: // which is milled later
		if face := "on the " + b.topFace() + " face"; len(faces) > 0 && place != face {
			place = face + " and " + place
		}
		line = "First scribe TOP lightly " + place + by + ", where the keyway comes"
	}
	line += b.fromSeam()
	if i := slices.IndexFunc(faces, func(f string) bool { return f != b.topFace() && f != cut }); i >= 0 {
		line += "; carry it over the edge to the " + faces[i]
	}
	return line
}

// templateLines set the templates of faces and punch through them.
func (b *bench) templateLines(faces []string) []string {
	if len(faces) == 0 {
		return nil
	}
	set := []string{"Cut out the " + strings.Join(faces, " and the ") + " template"}
	if cut, _ := b.clocked(); slices.Contains(faces, cut) {
		set[0] += "."
		set = append(set, "Set the "+cut+" one to the "+b.setTo(cut)+" and its dashed rings of "+b.cutNames()+" over these holes, which are cut already; tape it down.", b.topLine(faces)+".")
		for _, f := range seq.Keep(faces, func(f string) bool { return f != cut }) {
			set = append(set, "Set the "+f+" one to the "+b.setTo(f)+" and to TOP; tape it down.")
		}
		set = append(set, "Punch every other centre"+b.exceptJigs()+".")
	} else {
		set[0] += ", set " + words.Either(len(faces) > 1, "each", "it") + " to the " + b.setTo(faces...) + " and to TOP, tape it down, punch every centre" + b.exceptJigs() + "."
	}
	return slices.Concat(set, b.carriedLines(), b.sharedLines(), b.steppedLines())
}

// clocked is the face whose template would show holes cut already, and the first group of them: where they lie says
// where TOP is; none without such holes beside the middle.
func (b *bench) clocked() (face string, group *Group) {
	m := seq.At(b.Groups, func(m *Group) bool {
		return b.cut.whole[m.Name.Value] && slices.ContainsFunc(m.Points, func(q plan.XY) bool { return q.LengthMm() > geom.CloseMm })
	})
	if m == nil {
		return "", nil
	}
	return string(m.drilledFrom()), m
}

// placeAtClock is the first place of a group beside the middle, by its clock angle on the face of TOP.
func (b *bench) placeAtClock(m *Group) string {
	at, _ := m.seen(parts.Face(b.topFace()))
	i := slices.IndexFunc(at, func(q plan.XY) bool { return q.LengthMm() > geom.CloseMm })
	return words.Join(" ", words.Spaced(m.Name.Value), strconv.Itoa(m.Group.First+i), "at clock", words.Angle(geom.ClockDeg(at[i])))
}

// cutNames names the groups that the cutter has made.
func (b *bench) cutNames() string {
	return b.groupNames(func(m Group) bool { return b.cut.whole[m.Name.Value] })
}

// groupNames names the groups of one sort.
func (b *bench) groupNames(of func(m Group) bool) string {
	return strings.Join(seq.Map(seq.Keep(b.Groups, of), func(m Group) string { return words.Spaced(m.Name.Value) }), ", ")
}

// setTo is what the templates of faces are set to.
func (b *bench) setTo(faces ...string) string {
	if bore := b.StepNamed(boreStep); b.BoreMm() != 0 && (b.form.round() || bore != nil && bore.Size.Fitted()) {
		return "bore" // truer than an edge as cut
	}
	return b.edgesOf(faces)
}

// fromSeam is where TOP lies from the seam of what is closed by one.
func (b *bench) fromSeam() string {
	switch f := b.Part.Formed(); {
	case f == nil:
		return ""
	case f.Seam.Deg == 180:
		return ", opposite the seam"
	default:
		return ", the seam at its clock " + words.Angle(f.Seam.Deg)
	}
}

// edgesOf are the edges that the templates of faces are set to, on each face as they are
// seen there.
func (b *bench) edgesOf(faces []string) string {
	i := slices.IndexFunc(b.Faces, func(f *plan.Face) bool { return string(f.Face) == faces[0] })
	if i < 0 || b.Faces[i].Round {
		return "edge"
	}
	datum := b.setBy(parts.Face(faces[0]))
	to := datumSides(datum) + " edge"
	if len(faces) > 1 {
		if other := b.setBy(parts.Face(faces[1])); other != datum {
			to += " (" + faces[1] + ": " + datumSides(other) + ")"
		}
	}
	return to
}

// punched are the faces that are punched by a template, and whether dividers can
// check one.
func (b *bench) punched() (faces []string, chords bool) {
	for _, f := range []parts.Face{parts.Front, parts.Back} {
		left := slices.DeleteFunc(slices.Clone(b.Groups), func(m Group) bool { return m.drilledFrom() != f || b.unpunched(&m) })
		if len(left) > 0 {
			faces = append(faces, string(f))
		}
		chords = chords || slices.ContainsFunc(left, func(m Group) bool { return len(m.Group.Chords) > 0 })
	}
	return faces, chords
}

// steppedLines say how the template of a stepped face is cut, so that each piece lies
// on its own level.
func (b *bench) steppedLines() []string {
	var out []string
	for _, f := range b.Faces {
		if b.allCentral(f.Face) {
			continue
		}
		for _, c := range f.Cuts {
			pieces := "the ring lies outside it"
			switch {
			case c.Inside && c.Outside:
				pieces = "ring and disc lie each on its own level, TOP to TOP"
			case c.Inside:
				pieces = "the disc lies inside it"
			}
			out = append(out, words.Capital(string(f.Face))+" template: cut along "+b.W.Dia(c.DiameterMm)+", where the face steps; "+pieces+".")
		}
	}
	return out
}

// carriedLines name the holes that the template of one face marks for the other.
func (b *bench) carriedLines() []string {
	var out []string
	for _, f := range b.Faces {
		var own, there []string
		other, first, count := parts.Face(""), 0, 0
		for m := range seq.Refs(b.Groups) {
			if m.Group.PunchedFrom != f.Face || b.cut.whole[m.Name.Value] {
				continue
			}
			if n := len(own) - 1; n >= 0 && m.Group.First == first+count {
				own, there = own[:n], there[:n]
			} else {
				first, count = m.Group.First, 0
			}
			count += m.Group.Count
			other, own, there = m.Face, append(own, words.Span(first, count)), append(there, words.Lettered(m.Face, first, count))
		}
		if len(own) > 0 {
			are, they := "are", "they go through and are"
			if len(own) == 1 && count == 1 {
				are, they = "is", "it goes through and is"
			}
			out = append(out, words.Join(" ", strings.Join(there, ", "), "on the", string(f.Face), "template", are, strings.Join(own, ", "), "of the", string(other)+":", they, "made from here."))
		}
	}
	return out
}

// exceptJigs names the groups that a jig places.
func (b *bench) exceptJigs() string {
	names := b.groupNames(func(m Group) bool { return b.jig(&m) != nil && !b.cut.whole[m.Name.Value] })
	return words.When(names != "", " but those that a jig places ("+names+")")
}

// wrapLines set the wrap templates, by what carries TOP to them, and tell whether there are any: what has none is
// set out by the table.
func (b *bench) wrapLines() (out, carriers []string, templates bool) {
	for _, d := range b.Developments {
		if d.Kind != plan.WrapPattern {
			continue
		}
		mark, s := "punch every centre", b.wrapped[d.Name]
		carried, by := b.topTo(&d, s)
		carriers = seq.Add(carriers, by)
		if slices.ContainsFunc(b.rows(), func(r plan.RadialRow) bool {
			return r.AroundMm != 0 && slices.ContainsFunc(d.Marks, func(m plan.PatternMark) bool { return m.N == r.N })
		}) {
			mark += " and along the outlines"
		}
		if s.Size.Thread != nil || s.Size.Fitted() || s.Seat != "" || s.fine() {
			mark = "punch only centres that are drilled away; scribe the outlines lightly, for no punch mark may stay on this " + words.Either(s.Size.Thread != nil, "thread", "finished surface")
		}
		if d.NoTemplate != "" {
			out = append(out, words.Capital(d.On)+": "+d.NoTemplate+", without a template"+words.When(carried != "", ", from TOP"+carried)+"; "+mark+".")
			continue
		}
		templates = true
		out = append(out, "Wrap the template of "+d.On+": "+d.Edge+", its TOP line on TOP"+carried+"; tape it, "+mark+".")
	}
	return out, carriers, templates
}

// bladeMm is how far along a round a square on its end face carries a line; beyond, an angle does that is laid
// on the round. Common practice, no source.
const bladeMm = 100.0

// topTo says how TOP comes along the outside from where it stands to where a wrap lies, or what is set out without
// one, and by what; nothing where it stands there.
func (b *bench) topTo(d *plan.Development, st *Step) (carried, by string) {
	face, in := b.topAt()
	end := face.FromFront(0, b.LengthMm())
	far := math.Abs(parts.At(parts.Face(d.SeatAt), st.FromMm, st.ToMm) - end)
	if d.NoTemplate != "" {
		far = seq.Max(0, b.rows(), func(r plan.RadialRow) float64 {
			return words.Either(r.N == d.Marks[0].N, math.Abs(r.AxialMm-end), 0)
		})
	}
	from := "the " + string(face) + " face"
	switch {
	case in == st.Name, in == "" && (far < geom.CloseMm || b.saddledEnd(face)):
		return "", ""
	case in != "":
		from, by = words.Spaced(in), "surface gauge"
	case !b.atFace(st, face):
		by = "surface gauge"
	case far > bladeMm:
		return ", scribed on from " + from + " along an angle laid on the outside", "angle"
	default:
		return ", scribed on from " + from + " with a square", "square"
	}
	return ", scribed on from " + from + " in vee blocks, the surface gauge at the height of the axis", by
}

// cautions are printed beside the title of a part that is made by these operations.
func (g *Shape) cautions(ops []plan.Operation) []string {
	var out []string
	if kg := g.massKg(); kg > plan.LiftKg {
		out = append(out, g.W.RoundMass(kg, 0)+": "+g.W.Carriers(kg)+".")
	}
	onLathe := slices.ContainsFunc(ops, func(o plan.Operation) bool { return o.Machine == plan.Lathe })
	if w := g.widest(); onLathe && w != nil && g.Job.Shop.SwingMm.Set() && w.Size.NominalMm > g.Job.Shop.SwingMm.Mm {
		out = append(out, g.W.Dia(w.Size.NominalMm)+" is over the lathe's swing of "+g.W.Size(g.Job.Shop.SwingMm.Mm)+".")
	}
	return out
}

// ThroughJigs works the operations of a part out again, with groups drilled through
// jigs instead of punched marks.
func (m *Model) ThroughJigs(jigs []Jigged) {
	m.Out.Operations = operations(m.Numbered, jigs...).ops
	for _, j := range jigs {
		m.placed(j.Group, j.Jig)
	}
}

// saw cuts the bar with what facing both ends needs.
func (t *turned) saw(b *bench) {
	if b.cut.outline != nil {
		t.cutDisc(b)
		return
	}
	if b.Part.Stock.Form == "casting" {
		do := []string{"Fettle gates and flash; check that every face has metal to clean up.", "Find the centre from the cored and outside surfaces and mark it."}
		if ordered := b.castText(); ordered != "" {
			do = slices.Insert(do, 0, ordered)
		}
		b.op(warn(plan.Operation{Machine: plan.Bench, Title: "Check the casting", Do: do, Gauge: "calipers, surface gauge"}, castFlash))
		return
	}
	b.op(warn(plan.Operation{
		Machine: plan.Saw, Title: "Cut the stock",
		Do: []string{"Cut " + b.W.Said(b.sawnMm()) + " long: " + b.StockText() + ". Finished " + b.W.Said(b.LengthMm()) + "; the rest is to " + b.ends() + "."},
	}, clampStock))
}
