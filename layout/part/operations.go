package part

import (
	"math"
	"slices"
	"strings"

	"centrepop/layout/cutting"
	"centrepop/layout/material"
	"centrepop/layout/plan"
	"centrepop/layout/words"
	"centrepop/parts"
	"centrepop/parts/geom"
)

// operations puts the work in a shop's usual order: blank, turning from one
// side and then the other, marking out, drilling, slots, deburring,
// inspection. A flat part is bored after it is cut and before it is drilled,
// so that the template is set on a true bore.
func (r *Model) operations() {
	switch {
	case r.Part.Frustum != nil:
		r.rollOperations()
	case r.Part.Transition != nil:
		r.foldOperations()
	case r.Part.Profile != nil:
		r.turnOperations()
	default:
		r.cutBlank()
		r.boreOperations()
	}
	r.markOperation()
	r.drillOperations()
	r.radialOperations()
	r.saddleOperations()
	r.op(plan.Operation{
		Machine: "Bench", Title: "Deburr and inspect",
		Do:   []string{"Break every edge that has no chamfer, " + strings.TrimRight(r.W.Near(0.3), " inm") + " to " + r.W.Near(0.5) + ".", "Fill in the inspection record before the part leaves the bench."},
		Tool: "file, scraper, countersink by hand", Caution: "Turned and drilled edges cut: gloves off near rotating stock, on for handling.",
	})
}

// op numbers an operation from 1. A caution is printed where it first applies,
// not again in each step of the part.
func (r *Model) op(o plan.Operation) {
	if slices.ContainsFunc(r.Out.Operations, func(p plan.Operation) bool { return p.Caution == o.Caution }) {
		o.Caution = ""
	}
	o.N = len(r.Out.Operations) + 1
	r.Out.Operations = append(r.Out.Operations, o)
}

// threadRPM is the fastest a thread is cut by hand and half-nut: the tool has to
// be drawn back in time. Common practice, no source.
const threadRPM = 150.0

// rpm is the spindle speed for an operation at a diameter, from the shop's own
// list where it has one, with its remark and the tool; 0 for a material
// without data. A drill in the lathe takes the lathe's list.
func (r *Model) rpm(op cutting.Op, diaMm float64, list ...parts.Number) (rpm float64, note string, tool cutting.Tool) {
	tool = cutting.HSS
	if r.Material == nil || !(diaMm > 0) {
		return 0, "", tool
	}
	if op == cutting.Turn || op == cutting.Bore || op == cutting.Thread {
		list = r.Job.Shop.LatheRPM
		if r.Job.Shop.CarbideTool {
			tool = cutting.Carbide
		}
	}
	span, _, err := cutting.Speed(r.Material.Kind, op, tool)
	if err != nil {
		return 0, "", tool
	}
	want := cutting.SpindleRPM(span.MidMPerMin(), diaMm)
	if op == cutting.Thread {
		want = math.Min(want, threadRPM)
	}
	if limit := cutting.SpindleLimitRPM(r.swungMm()); op != cutting.Drill && limit > 0 {
		want = math.Min(want, limit)
	}
	if len(list) == 0 {
		return math.Round(want/5) * 5, "", tool
	}
	speeds := make([]float64, len(list))
	for i, n := range list {
		speeds[i] = n.Value
	}
	rpm, _ = cutting.ChooseSpeed(want, speeds)
	switch { // a quarter too fast is borne by a light cut; common practice, no source
	case rpm > 1.25*want:
		note = "slowest speed, " + words.Trim(want, 0) + " wanted: light cuts, coolant"
	case rpm > 0 && rpm < 0.6*want:
		note = "nearest below " + words.Trim(want, 0)
	}
	return rpm, note, tool
}

// swungMm is the largest diameter that a part swings in the lathe, corners and
// all, and whether it may be out of balance: anything but a round.
func (r *Model) swungMm() (mm float64, uneven bool) {
	if r.Part.Outline != nil {
		b := r.OutlinePath().Bounds()
		if r.Part.Outline.Shape == parts.CircleOutline {
			return b.W(), false
		}
		return math.Hypot(b.W(), b.H()), true
	}
	if w := r.widest(); w != nil {
		return w.Size.NominalMm, false
	}
	return 0, false
}

// speed is the speed of rpm in words.
func (r *Model) speed(op cutting.Op, diaMm float64) string {
	rpm, note, tool := r.rpm(op, diaMm, r.Job.Shop.DrillRPM...)
	if rpm <= 0 {
		return ""
	}
	v := cutting.CuttingSpeed(rpm, diaMm)
	surface := words.Trim(v, 0) + " m/min"
	if r.W.Units == parts.Inches {
		surface = words.Trim(v*1000/words.MmPerInch/12, 0) + " ft/min"
	}
	return words.Join("; ", words.Trim(rpm, 0)+" rev/min at "+r.W.Dia(diaMm)+" ("+surface+", "+string(tool)+")", note)
}

// cutBlank cuts a flat part's outline and, where the cutter leaves stock, a
// bore left small for the lathe.
func (r *Model) cutBlank() {
	o := plan.Operation{Machine: "Saw", Title: "Cut the blank", Do: []string{"Cut from " + r.Out.StockText + ": " + r.Out.Overall + "."},
		Gauge: "tape, calipers", Caution: "Hot edges and slag: gloves and eye protection; let the blank cool before measuring."}
	switch r.Part.Stock.Cut {
	case "laser", "plasma", "waterjet", "flame":
		o.Machine, o.Tool = "Cutter", r.Part.Stock.Cut
	case "":
		o.Caution = "Eye protection; clamp the stock; keep hands clear of the blade."
	case "saw":
		o.Tool = "saw; then mill or file to the outline"
		o.Caution = "Eye protection; clamp the stock; keep hands clear of the blade."
	}
	if b := r.Part.Bore; b != nil {
		asCut := b.Size.Nominal.Mm - b.Leave.Mm
		switch {
		case b.Leave.Mm > 0:
			o.Do = append(o.Do, "Bore as cut "+r.W.Dia(asCut)+": "+r.W.Size(b.Leave.Mm)+" left on diameter for the lathe.")
		case r.boreTurned():
			o.Do = append(o.Do, "Leave the bore small enough for the lathe to clean it up.")
		case o.Machine == "Cutter":
			o.Do = append(o.Do, "Bore as cut "+r.W.Dia(asCut)+": final, no lathe work.")
		}
	}
	if outline := r.StepNamed("outline"); outline != nil && outline.Size.Class != "" {
		o.Do = append(o.Do, "Leave the outside large enough for the lathe to clean it up.")
	}
	o.Refs = r.refs("outline", "thickness")
	r.op(o)
}

// refs are the numbers of the features with these names.
func (r *Model) refs(names ...string) []int {
	var out []int
	for _, f := range r.Out.Features {
		if slices.Contains(names, f.Name) {
			out = append(out, f.N)
		}
	}
	return out
}

// cutterHoldsMm is the width of limits that a cutter holds, 0 for a saw: ±0.1 mm
// by laser or water jet, ±0.3 by plasma, ±1 by flame (common practice, no source).
func cutterHoldsMm(cut string) float64 {
	switch cut {
	case "laser", "waterjet":
		return 0.2
	case "plasma":
		return 0.6
	case "flame":
		return 2
	}
	return 0
}

// boreTurned tells whether the bore of a flat part is machined after cutting:
// where stock is left for it, or its own limits are closer than the cutter's.
func (r *Model) boreTurned() bool {
	bore := r.StepNamed("bore")
	if bore == nil {
		return false
	}
	holds := cutterHoldsMm(r.Part.Stock.Cut)
	return r.Part.Bore.Leave.Mm > 0 || bore.Size.Press.Set() ||
		bore.Size.Class != "" && (holds == 0 || bore.Size.MaxMm-bore.Size.MinMm < holds-1e-9)
}

// boreOperations turns the bore, the round outline's limits and the chamfers
// of a flat part.
func (r *Model) boreOperations() {
	bore := r.StepNamed("bore")
	turnable := r.boreTurned()
	if turnable {
		o := plan.Operation{
			Machine: "Lathe", Title: "Bore " + r.sizeText(bore),
			Holding: "four-jaw chuck or faceplate; set the outside true within " + r.W.Near(0.05) + ", face within " + r.W.Near(0.02) + " (common practice, no source)",
			Tool:    "boring bar", Speed: r.speed(cutting.Bore, bore.Size.NominalMm), Gauge: gauge(bore),
			Caution: "An out-of-balance plate throws: bolt a counterweight, start at the lowest speed.", Refs: []int{bore.Ref},
		}
		if bore.Size.Press.Set() {
			o.Do = []string{"Measure the " + words.Spaced(bore.Size.Press.Part) + " at three places across; take the largest.", "Read the bore beside it on the light-press ladder, and bore to that."}
		} else {
			o.Do = []string{"Rough to " + r.W.Near(0.5) + " under on diameter, let it cool, measure, finish."}
		}
		if l := r.limitsText(bore.Size); l != "" {
			o.Limits = []string{words.Spaced(bore.Name) + " " + l}
		}
		r.op(o)
	}
	outline := r.StepNamed("outline")
	if outline != nil && outline.Size.Class != "" {
		r.op(plan.Operation{Machine: "Lathe", Title: "Turn the outside " + r.sizeText(outline), Holding: "on the bore, expanding mandrel or soft jaws",
			Tool: "turning tool", Speed: r.speed(cutting.Turn, outline.Size.NominalMm), Gauge: gauge(outline),
			Limits: []string{words.Spaced(outline.Name) + " " + r.limitsText(outline.Size)}, Refs: []int{outline.Ref}})
	}
	r.chamferOperation(turnable)
}

// chamferLines are the chamfers on the steps' edges, front or back, that are
// wanted, or all of them for nil.
func (r *Model) chamferLines(wanted func(st *Step, back bool) bool) (do []string, refs []int) {
	for _, c := range r.Part.Chamfers {
		st, dia := r.chamferDiaMm(c)
		if st != nil && wanted != nil && !wanted(st, strings.HasSuffix(c.Edge.Value, "-back")) {
			continue
		}
		line := "Chamfer " + words.Spaced(c.Edge.Value) + " " + r.W.Size(c.Size.Mm) + " × " + words.Trim(c.Angle.Deg, 1) + "°"
		if st != nil {
			line += ": to " + "Ø" + r.W.Read(dia) + " at the face"
			if c.Angle.Deg != 45 {
				line += ", top slide set " + words.Trim(c.Angle.Deg, 1) + "° from the axis"
			}
		}
		if c.For != "" {
			line += " (" + c.For + ")"
		}
		do = append(do, line+".")
		refs = append(refs, r.refs("chamfer "+words.Spaced(c.Edge.Value))...)
	}
	return do, refs
}

// chamferOperation cuts the chamfers of a flat part: on the lathe where it is
// set up there for its bore, else by grinder.
func (r *Model) chamferOperation(onLathe bool) {
	do, refs := r.chamferLines(nil)
	if len(do) == 0 {
		return
	}
	o := plan.Operation{Machine: "Lathe", Title: "Chamfers", Do: do, Tool: "chamfer tool, or top slide swung", Holding: "same setting where the edge can be reached, else turn round and set true", Refs: refs, Gauge: "calipers at the face"}
	if !onLathe {
		o.Machine, o.Tool, o.Holding = "Bench", "grinder or bevelling machine", "clamped to the bench"
		o.Caution = "Grinding sparks and disc breakage: face shield, guard on, nothing that burns near."
	}
	r.op(o)
}

// largestDrillMm is the biggest drill the shop drives; 30 mm where the job does
// not say (common practice, no source).
func (r *Model) largestDrillMm() float64 {
	if r.Job.Shop.Drills.Set() {
		return r.Job.Shop.Drills.Mm
	}
	return 30
}

// holeWay is how a hole is made with the shop's drills; a zero Way if no drill
// is small enough.
func (r *Model) holeWay(m Made, clearance bool, depthMm float64) cutting.Way {
	h := cutting.Hole{NominalMm: m.FinishedMm, Clearance: clearance, Thread: m.Thread, DepthMm: depthMm, LargestMm: r.largestDrillMm(), System: r.drills()}
	if m.Thread == nil && m.Size.Limited {
		h.Class = m.Size.Class
		if h.MinMm, h.MaxMm = m.Size.MinMm, m.Size.MaxMm; !m.Size.Fitted() {
			h.MaxMm = math.Max(h.MaxMm, h.NominalMm+cutting.OversizeMm(h.NominalMm)) // a drill of that size is meant
		}
	}
	way, err := cutting.WayFor(h)
	if err != nil {
		return cutting.Way{}
	}
	return way
}

// drillLines are the drills of a way, smallest first, with their speeds from a
// machine's list.
func (r *Model) drillLines(way cutting.Way, list []parts.Number) []string {
	unit := " mm"
	if r.W.Units == parts.Inches {
		unit = ""
	}
	var out []string
	for _, s := range way.Drills {
		name := "Ø" + words.Trim(s.Size.DiaMm, 2)
		if r.drills() == cutting.Inch {
			name = "Ø" + s.Size.Name
			if !strings.Contains(s.Size.Name, "in") {
				name = s.Size.Name + " (" + words.Trim(s.Size.DiaMm/words.MmPerInch, 3) + " in)"
			}
		}
		note := map[cutting.DrillWhy]string{cutting.Pilot: "pilot", cutting.OpenOut: "open out", cutting.Last: "finish"}[s.Why]
		if s.Why == cutting.Last && way.LeaveMm > 0.005 {
			note = "leaves " + r.W.Read(way.LeaveMm) + unit + " on diameter"
		}
		line := "Drill " + name + ", " + note
		if rpm, _, _ := r.rpm(cutting.Drill, s.Size.DiaMm, list...); rpm > 0 {
			line += ": " + words.Trim(rpm, 0) + " rev/min"
		}
		out = append(out, line+".")
	}
	if way.BothEnds && len(out) > 0 {
		out = append(out, "Deep: drill half from each end, to meet in the middle.")
	}
	return out
}

// finishLines bring a drilled hole to size.
func (r *Model) finishLines(m Made, way cutting.Way) []string {
	size := r.W.Dia(m.FinishedMm)
	if m.Thread == nil && m.Size.Fitted() {
		size += " " + m.Size.Class
	}
	switch way.Finish {
	case cutting.Reamed:
		return []string{"Ream " + size + ", at half the drilling speed."}
	case cutting.AdjustReamed:
		return []string{"Ream " + size + " with an adjustable reamer, a little at a time, measuring."}
	case cutting.Bored:
		return []string{"Bore " + size + " with a boring head on the mill or on the faceplate."}
	case cutting.BoredThenTapped:
		return []string{"Bore to " + r.W.Dia(way.BoreToMm) + " for the thread: no drill of the shop is so large.", "Tap " + m.Thread.Designation + ", square, " + r.fluid() + "."}
	case cutting.Tapped:
		return []string{"Tap " + m.Thread.Designation + " by hand, square, " + r.fluid() + "."}
	}
	return nil
}

// fluid is what to tap with: grey iron is cut dry (common practice, no source).
func (r *Model) fluid() string {
	if r.Material != nil && r.Material.Kind == material.GreyIron {
		return "dry, clearing the dust often"
	}
	return "with cutting oil"
}

// drills is the series of drills the shop keeps.
func (r *Model) drills() cutting.System {
	if r.Job.Units == parts.Inches {
		return cutting.Inch
	}
	return cutting.Metric
}

// rollOperations makes a cone from flat sheet.
func (r *Model) rollOperations() {
	f := r.Part.Frustum
	r.op(plan.Operation{Machine: "Cutter", Title: "Cut the flat blank", Do: []string{"Mark the development on " + r.Out.StockText + " and cut; cut edges deburred."},
		Caution: "Sheet edges cut: gloves.", Refs: r.refs("large end", "small end", "height")})
	r.op(plan.Operation{Machine: "Roll", Title: "Roll and close the seam",
		Do:      []string{"Pre-bend the seam edges, roll to " + r.W.Dia(f.Large.Mm) + " and " + r.W.Dia(f.Small.Mm) + ".", "Tack the seam at clock " + words.Trim(f.Seam.Deg, 2) + "°, check both ends round, weld."},
		Gauge:   "tape round both ends: " + r.W.Size(geom.Clean(math.Pi*2*r.Out.Section.Outer[0].YMm)) + " and " + r.W.Size(geom.Clean(math.Pi*2*r.Out.Section.Outer[1].YMm)) + " girth outside",
		Caution: "Rolls pull fingers in. Welding: screen, ventilation, hot parts; by a qualified welder under local rules.", Refs: r.refs("seam")})
}

// markOperation sets the template and punches.
func (r *Model) markOperation() {
	if len(r.Groups) == 0 && len(r.Radials) == 0 {
		return
	}
	o := plan.Operation{Machine: "Bench", Title: "Mark TOP, set the template, punch", Tool: "scriber, centre punch 60° to find, 90° to open",
		Caution: "Eye protection when punching; a mushroomed punch head splinters."}
	top := r.Out.Top
	if top == "" {
		top = "scribe"
	}
	o.Do = append(o.Do, "First mark TOP on the "+r.topFace()+" face ("+top+").")
	which, chords := "", false
	for _, f := range r.Out.Faces {
		which = words.Join(" and the ", which, string(f.Face))
		for _, g := range f.Groups {
			chords = chords || len(g.Chords) > 0
		}
	}
	o.Do = append(o.Do, "Check the printed rules of every template.")
	if which != "" {
		o.Do = append(o.Do, "Cut out the "+which+" template, set it to the edge or bore and to TOP, tape it down, punch every centre.")
	}
	wrapped := false
	for _, d := range r.Out.Developments {
		if d.Kind == plan.WrapPattern {
			wrapped = true
			o.Do = append(o.Do, "Wrap the template of "+d.On+": "+strings.TrimPrefix(d.Edge, "this edge ")+", its TOP line on TOP; tape it, punch every centre and along the outlines.")
		}
	}
	if len(r.Radials) > 0 && !wrapped {
		o.Do = append(o.Do, "Round work: mark from the TOP line by the arc lengths of the table, on the outside, and from the front face.")
	}
	if chords {
		o.Do = append(o.Do, "Check one chord with dividers before drilling.")
	}
	r.op(o)
}

// drillOperations drills, reams, taps and sinks the groups, face by face.
func (r *Model) drillOperations() {
	for i := range r.Groups {
		m := &r.Groups[i]
		if m.Slot != nil {
			r.op(plan.Operation{Machine: "Mill", Title: words.Spaced(m.Group.Name) + ": " + words.CountOf(m.Group.Count) + m.Group.SizeText,
				Do:      []string{"Set the long axis to clock " + words.Trim(m.Slot.Turn.Deg, 2) + "°; drill the two end holes, mill between.", "Depth: " + m.Group.DepthText + "."},
				Holding: "machine vice or clamps, part set square", Tool: "slot drill up to " + r.W.Dia(m.Slot.Width.Mm), Refs: []int{m.Ref}})
			continue
		}
		h := m.Hole
		o := plan.Operation{
			Machine: "Drill", Title: words.Spaced(m.Group.Name) + ": " + words.CountOf(m.Group.Count) + m.Group.SizeText,
			Holding: "clamped on parallels, " + string(m.Face) + " face up", Speed: r.speed(cutting.Drill, m.Group.DrillMm),
			Caution: "Clamp the part: a drill that grabs spins it.", Refs: []int{m.Ref},
		}
		o.Do = append(o.Do, "Centre-drill "+holesWords(m.Group)+".")
		way := r.holeWay(m.Size, h.Size.Make == parts.ClearanceHole, r.holeLengthMm(h))
		o.Do = append(o.Do, r.drillLines(way, r.Job.Shop.DrillRPM)...)
		o.Do = append(o.Do, "Depth: "+m.Group.DepthText+".")
		o.Do = append(o.Do, r.finishLines(m.Size, way)...)
		if m.Size.Thread != nil {
			o.Gauge = "thread gauge or new bolt"
		}
		if l := r.limitsText(m.Size.Size); l != "" && m.Size.Thread == nil {
			o.Limits = []string{words.Spaced(m.Group.Name) + " " + l}
			o.Gauge = "plug gauge or bore gauge"
		}
		if e := r.extra(h); e != "" {
			o.Do = append(o.Do, words.Capital(e)+".")
		}
		r.op(o)
	}
}

// holeLengthMm is how deep a hole from a face goes.
func (r *Model) holeLengthMm(h *parts.HoleGroup) float64 {
	if h.Through {
		return r.LengthMm()
	}
	return h.Depth.Mm
}

func holesWords(g *plan.Group) string {
	if g.Count == 1 {
		return "hole " + words.Trim(float64(g.First), 0)
	}
	return "holes " + words.Trim(float64(g.First), 0) + " to " + words.Trim(float64(g.First+g.Count-1), 0)
}

// radialOperations drills and mills what is cut from outside into a round.
func (r *Model) radialOperations() {
	for i := range r.Radials {
		m := &r.Radials[i]
		f, row := m.In, m.Rows[0]
		depth := strings.TrimSuffix(row.DepthText, "; "+f.Note.Value)
		o := plan.Operation{
			Machine: "Drill", Title: words.Spaced(row.Name) + ": " + words.CountOf(len(m.Rows)) + row.SizeText,
			Holding: "vee blocks, clamped; TOP line set with a square", Caution: "Clamp the round: it rolls and grabs.", Refs: []int{m.Ref},
		}
		o.Do = append(o.Do, "Clock "+clockList(m.Rows)+", "+r.W.Size(row.AxialMm)+" from the front face to the centre.")
		if f.Shape == parts.RadialHole {
			o.Speed = r.speed(cutting.Drill, m.Size.DrillMm)
			o.Do = append(o.Do, "Spot a flat or use a long centre drill so that the drill does not wander.")
			way := r.holeWay(m.Size, f.Size.Make == parts.ClearanceHole, f.Depth.Mm)
			o.Do = append(o.Do, r.drillLines(way, r.Job.Shop.DrillRPM)...)
			o.Do = append(o.Do, "Depth: "+depth+".")
			o.Do = append(o.Do, r.finishLines(m.Size, way)...)
		} else {
			o.Machine = "Mill"
			o.Tool, o.Do = r.outsideSlot(m, o.Do)
		}
		if note := f.Note.Value; note != "" {
			o.Do = append(o.Do, words.Capital(note)+".")
		}
		r.op(o)
	}
}

// outsideSlot is the tool and the work of a keyway, slot or window. One that
// is wider than 25 mm is chain-drilled first (common practice, no source).
func (r *Model) outsideSlot(m *Radial, do []string) (tool string, lines []string) {
	f, row := m.In, m.Rows[0]
	narrow := math.Min(row.AroundMm, row.AlongMm)
	switch {
	case f.Shape == parts.RadialSlot && !f.Through:
		tool = "slot drill " + r.W.Dia(narrow)
		do = append(do, "Mill to "+row.SizeText+".",
			"Depth "+r.W.Size(f.Depth.Mm)+" from the top of the round: "+r.W.Size(geom.Clean(row.OutsideMm-f.Depth.Mm))+" left to the far side of "+r.W.Dia(row.OutsideMm)+".")
	case f.Shape == parts.RadialSlot && narrow <= 25:
		tool = "slot drill up to " + r.W.Dia(narrow)
		do = append(do, "Drill the two ends, mill between to "+row.SizeText+", "+strings.TrimSuffix(row.DepthText, "; "+f.Note.Value)+".")
	default:
		do = append(do, "Chain-drill inside the line, mill or file to "+row.SizeText+", "+strings.TrimSuffix(row.DepthText, "; "+f.Note.Value)+".")
	}
	return tool, do
}

// cautions are printed beside the title.
func (r *Model) cautions() {
	r.Out.Cautions = append(r.Out.Cautions, "At every machine: eye protection; no gloves, sleeves or rags near what turns; take the chuck key out; let hot parts cool. Local rules come first.")
	if r.Out.MassKg > 25 {
		r.Out.Cautions = append(r.Out.Cautions, "Over 25 kg: lift with a second person or a hoist, by local lifting rules.")
	}
	if w := r.widest(); w != nil && r.Job.Shop.SwingMm.Set() && w.Size.NominalMm > r.Job.Shop.SwingMm.Mm {
		r.Out.Cautions = append(r.Out.Cautions, r.W.Dia(w.Size.NominalMm)+" is over the lathe's swing of "+r.W.Size(r.Job.Shop.SwingMm.Mm)+".")
	}
}
