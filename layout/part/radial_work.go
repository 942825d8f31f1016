package part

import (
	"math"
	"slices"
	"strings"

	"centrepop/layout/cutting"
	"centrepop/layout/lookup"
	"centrepop/layout/plan"
	"centrepop/layout/words"
	"centrepop/parts"
	"centrepop/parts/geom"
	"centrepop/parts/seq"
)

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
		Do: []string{"Clock " + clockList(m.Rows) + b.clockFrom(clocksDeg(m.Rows)...) + ", " + fromDatum(b.W, row) + " to the centre."},
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

func (radialWindow) work(b *bench, m *Radial, o *plan.Operation) {
	o.Machine = plan.Mill
	row := m.Rows[0]
	o.Do = append(o.Do, b.chain(min(row.AroundMm, row.AlongMm), max(row.AroundMm, row.AlongMm))+" inside the line, mill or file to "+row.SizeText+", "+b.radialDepth(m, row.AxialMm)+".")
}

func (radialHole) work(b *bench, m *Radial, o *plan.Operation) {
	o.Do = append(o.Do, "Spot a flat or use a long centre drill: the drill wanders.")
	wall := b.radialMm(m, m.Rows[0].AxialMm)
	way := b.holeWay(m.Size, wall, !m.In.Through || b.boreAt(m.Rows[0].AxialMm) != nil)
	o.Do = append(o.Do, b.drillLines(way, false)...)
	o.Do = append(o.Do, "Depth: "+b.radialDepth(m, m.Rows[0].AxialMm)+".")
	if t := b.threadMm(m.Size, wall); t < wall && m.BearsInBore(b.Sizes, m.Rows[0].AxialMm) {
		to := ""
		if mm, err := m.Size.Thread.ClearanceMm("medium"); err == nil { // which is wider than the shanks of ISO 529 and ASME B94.9, from memory
			to = " to " + b.W.Drill(mm)
		}
		o.Do = append(o.Do, "Open it out"+to+" so that the shank of the tap goes in: the set screw has to come through the thread to what is in the bore.")
	}
	o.Do = append(o.Do, b.finishLines(m.Size, way)...)
}

// inRow is the hole before another on one line along a round that takes a bolt of the same thread, each not something of its own, and how far
// before it, mm, where the limits of both places leave more than their pitch may be off; nil for none.
func (s *Sizes) inRow(m *Radial) (before *Radial, mm float64) {
	at := m.Rows[0]
	for o := range seq.Refs(s.Radials) {
		of := o.Rows[0]
		line := slices.ContainsFunc(o.Rows, func(q plan.RadialRow) bool {
			return slices.ContainsFunc(m.Rows, func(p plan.RadialRow) bool { return math.Abs(p.ClockDeg-q.ClockDeg) < geom.CloseMm })
		})
		if own := o.In.Fitted.Value + m.In.Fitted.Value; own == "" && line && of.AxialMm < at.AxialMm-geom.CloseMm && o.Size.Text == m.Size.Text && (before == nil || of.AxialMm > before.Rows[0].AxialMm) {
			before, mm = o, geom.Clean(at.AxialMm-of.AxialMm)
		}
	}
	if before == nil || !s.pitchLost(before.Rows[0].DatumMm, before.Rows[0].DatumMm+mm, m.Size) {
		return nil, 0
	}
	return before, mm
}

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
			c.What += ", no wider, for what reaches in"
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

// slotDrill names a slot drill with its speed, that of a drill of its diameter. Common practice, no source.
func (b *bench) slotDrill(upTo string, mm float64) string {
	return "slot drill " + upTo + b.W.Dia(mm) + b.atSpeed(cutting.Drill, mm, false)
}
