package layout

import (
	"cmp"
	"math"
	"slices"
	"strings"

	"centrepop/layout/cutting"
	"centrepop/parts"
)

// operations puts the work in a shop's usual order: blank, turning from one
// side and then the other, marking out, drilling, slots, deburring,
// inspection. A flat part is bored after it is cut and before it is drilled,
// so that the template is set on a true bore.
func (r *resolver) operations() {
	switch {
	case r.part.Frustum != nil:
		r.rollOperations()
	case r.part.Transition != nil:
		r.foldOperations()
	case r.part.Profile != nil:
		r.turnOperations()
	default:
		r.cutBlank()
		r.boreOperations()
	}
	r.markOperation()
	r.drillOperations()
	r.radialOperations()
	r.saddleOperations()
	r.op(Operation{
		Machine: "Bench", Title: "Deburr and inspect",
		Do:   []string{"Break every edge that has no chamfer, " + r.w.Size(0.3) + " to " + r.w.Said(0.5) + ".", "Fill in the inspection record before the part leaves the bench."},
		Tool: "file, scraper, countersink by hand", Caution: "Turned and drilled edges cut: gloves off near rotating stock, on for handling.",
	})
}

// op numbers an operation from 1.
func (r *resolver) op(o Operation) {
	o.N = len(r.out.Operations) + 1
	r.out.Operations = append(r.out.Operations, o)
}

// speed is the spindle speed for an operation at a diameter, from the shop's
// own list where it has one; empty for a material without data.
func (r *resolver) speed(op cutting.Op, diaMm float64) string {
	if r.material == nil || diaMm <= 0 {
		return ""
	}
	tool, list := cutting.HSS, r.job.Shop.DrillRPM
	if op == cutting.Turn || op == cutting.Bore || op == cutting.Thread {
		list = r.job.Shop.LatheRPM
		if r.job.Shop.CarbideTool {
			tool = cutting.Carbide
		}
	}
	span, _, err := r.material.Speed(op, tool)
	if err != nil {
		return ""
	}
	want := cutting.SpindleRPM(span.MidMPerMin(), diaMm)
	rpm, note := math.Round(want/5)*5, ""
	if len(list) > 0 {
		speeds := make([]float64, len(list))
		for i, n := range list {
			speeds[i] = n.Value
		}
		rpm, note = cutting.ChooseSpeed(want, speeds)
	}
	if rpm <= 0 {
		return ""
	}
	s := trim(rpm, 0) + " rev/min at " + r.w.Dia(diaMm) + " (" + trim(cutting.CuttingSpeed(rpm, diaMm), 0) + " m/min, " + string(tool) + ")"
	return join("; ", s, note)
}

// cutBlank cuts a flat part's outline and, where the cutter leaves stock, a
// bore left small for the lathe.
func (r *resolver) cutBlank() {
	o := Operation{Machine: "Saw", Title: "Cut the blank", Do: []string{"Cut from " + r.out.StockText + ": " + r.out.Overall + "."},
		Gauge: "tape, calipers", Caution: "Hot edges and slag: gloves and eye protection; let the blank cool before measuring."}
	switch r.part.Stock.Cut {
	case "laser", "plasma", "waterjet", "flame":
		o.Machine, o.Tool = "Cutter", r.part.Stock.Cut
	case "":
		o.Caution = "Eye protection; clamp the stock; keep hands clear of the blade."
	case "saw":
		o.Tool = "saw; then mill or file to the outline"
		o.Caution = "Eye protection; clamp the stock; keep hands clear of the blade."
	}
	if b := r.part.Bore; b != nil {
		asCut := b.Size.Nominal.Mm - b.Leave.Mm
		switch {
		case b.Leave.Mm > 0:
			o.Do = append(o.Do, "Bore as cut "+r.w.Dia(asCut)+": "+r.w.Size(b.Leave.Mm)+" left on diameter for the lathe.")
		case o.Machine == "Cutter":
			o.Do = append(o.Do, "Bore as cut "+r.w.Dia(asCut)+": final, no lathe work.")
		}
	}
	o.Refs = r.refs("outline", "thickness")
	r.op(o)
}

// refs are the numbers of the features with these names.
func (r *resolver) refs(names ...string) []int {
	var out []int
	for _, f := range r.out.Features {
		if slices.Contains(names, f.Name) {
			out = append(out, f.N)
		}
	}
	return out
}

// boreOperations turns the bore, the round outline's limits and the chamfers
// of a flat part.
func (r *resolver) boreOperations() {
	bore := r.stepNamed("bore")
	turnable := bore != nil && (bore.size.class != "" || (r.part.Bore != nil && r.part.Bore.Leave.Mm > 0))
	if turnable {
		o := Operation{
			Machine: "Lathe", Title: "Bore " + r.sizeText(bore),
			Holding: "four-jaw chuck or faceplate; set the outside true within " + r.w.Said(0.05) + ", face within " + r.w.Said(0.02) + " (common practice, no source)",
			Tool:    "boring bar", Speed: r.speed(cutting.Bore, bore.size.nominalMm), Gauge: gauge(bore),
			Caution: "An out-of-balance plate throws: bolt a counterweight, start at the lowest speed.", Refs: []int{bore.ref},
		}
		if bore.size.press.Set() {
			o.Do = []string{"Measure the " + bore.size.press.Part + " at three places across; take the largest.", "Read the bore beside it on the light-press ladder, and bore to that."}
		} else {
			o.Do = []string{"Rough to " + r.w.Said(0.5) + " under on diameter, let it cool, measure, finish."}
		}
		if l := r.limitsText(bore.size); l != "" {
			o.Limits = []string{words(bore.name) + " " + l}
		}
		r.op(o)
	}
	outline := r.stepNamed("outline")
	if outline != nil && outline.size.class != "" {
		r.op(Operation{Machine: "Lathe", Title: "Turn the outside " + r.sizeText(outline), Holding: "on the bore, expanding mandrel or soft jaws",
			Tool: "turning tool", Speed: r.speed(cutting.Turn, outline.size.nominalMm), Gauge: gauge(outline),
			Limits: []string{words(outline.name) + " " + r.limitsText(outline.size)}, Refs: []int{outline.ref}})
	}
	r.chamferOperation(turnable)
}

// chamferLines are the chamfers on the named steps, or all of them for nil.
func (r *resolver) chamferLines(names []string) (do []string, refs []int) {
	for _, c := range r.part.Chamfers {
		st, dia := r.chamferDiaMm(c)
		if st != nil && names != nil && !slices.Contains(names, st.name) {
			continue
		}
		line := "Chamfer " + words(c.Edge.Value) + " " + r.w.Size(c.Size.Mm) + " × " + trim(c.Angle.Deg, 1) + "°"
		if st != nil {
			line += ": to " + r.w.Dia(dia) + " at the face"
			if c.Angle.Deg != 45 {
				line += ", top slide set " + trim(c.Angle.Deg, 1) + "° from the axis"
			}
		}
		if c.For != "" {
			line += " (" + c.For + ")"
		}
		do = append(do, line+".")
		refs = append(refs, r.refs("chamfer "+words(c.Edge.Value))...)
	}
	return do, refs
}

// chamferOperation cuts the chamfers of a flat part: on the lathe where it is
// set up there for its bore, else by grinder.
func (r *resolver) chamferOperation(onLathe bool) {
	do, refs := r.chamferLines(nil)
	if len(do) == 0 {
		return
	}
	o := Operation{Machine: "Lathe", Title: "Chamfers", Do: do, Tool: "chamfer tool, or top slide swung", Holding: "same setting where the edge can be reached, else turn round and set true", Refs: refs, Gauge: "calipers at the face"}
	if !onLathe {
		o.Machine, o.Tool, o.Holding = "Bench", "grinder or bevelling machine", "clamped to the bench"
		o.Caution = "Grinding sparks and disc breakage: face shield, guard on, nothing that burns near."
	}
	r.op(o)
}

// turnOperations splits a turned part into two settings: what lies in front of
// the widest outside and of the narrowest bore is turned from the front, the
// rest from the back.
func (r *resolver) turnOperations() {
	outside, inside := r.sides()
	wide := r.widest()
	setups := []struct {
		face  string
		steps []*step
	}{{face: "front"}, {face: "back"}}
	split := wide.toMm
	for _, s := range outside {
		i := 0
		if s.fromMm >= split-1e-9 {
			i = 1
		}
		setups[i].steps = append(setups[i].steps, s)
	}
	if n := len(inside); n > 0 {
		narrow := slices.MinFunc(inside, func(a, b *step) int { return cmp.Compare(a.drawnRadius(), b.drawnRadius()) })
		for _, s := range inside {
			i := 0
			if s.fromMm >= narrow.toMm-1e-9 {
				i = 1
			}
			setups[i].steps = append(setups[i].steps, s)
		}
	}
	r.sawOperation()
	for i, setup := range setups {
		if r.onlySawn(setup.face, setup.steps) {
			continue
		}
		o := Operation{
			Machine: "Lathe", Title: "Turn from the " + setup.face + " face", Tool: "facing and turning tool",
			Speed: r.speed(cutting.Turn, wide.size.nominalMm), Gauge: "micrometer, bore gauge, calipers",
		}
		if i == 0 {
			o.Holding = "chuck on the back end, set true"
			o.Do = append(o.Do, r.faceFront())
			if slices.ContainsFunc(inside, func(s *step) bool { return !s.bought() }) {
				o.Do = append(o.Do, r.startBore(inside)...)
			}
		} else {
			o.Holding = "on a finished diameter, soft jaws or indicated within " + r.w.Said(0.02) + " (common practice, no source)"
			o.Do = append(o.Do, r.faceBack())
			if l := r.limitsText(r.length(r.lengthMm())); l != "" {
				o.Limits = append(o.Limits, "length "+l)
			}
		}
		if r.slender(wide) {
			o.Holding += "; centre-drill the free end and support it with the tailstock or a steady"
		}
		names := []string{}
		if !slices.ContainsFunc(setup.steps, func(s *step) bool { return !s.bought() }) && r.part.Kind == parts.Tube {
			o.Title = "Face the " + setup.face + " end"
		}
		for _, s := range setup.steps {
			names = append(names, s.name)
			if s.bought() {
				o.Refs = append(o.Refs, s.ref)
				continue
			}
			o.Do = append(o.Do, r.stepWork(s))
			if l := r.limitsText(s.size); l != "" && s.size.thread == nil {
				o.Limits = append(o.Limits, words(s.name)+" "+l)
			}
			o.Refs = append(o.Refs, s.ref)
		}
		do, refs := r.chamferLines(names)
		o.Do, o.Refs = append(o.Do, do...), append(o.Refs, refs...)
		r.op(o)
	}
}

// slender tells whether the part sticks out more than three diameters, from
// where a tailstock or steady is used (common practice, no source).
func (r *resolver) slender(wide *step) bool { return r.lengthMm() > 3*wide.size.nominalMm }

// stepWork is the line for one cylinder.
func (r *resolver) stepWork(s *step) string {
	verb := "Turn "
	if s.inside {
		verb = "Bore "
	}
	line := verb + words(s.name) + " " + r.sizeText(s) + ", " + r.w.Size(clean(s.toMm-s.fromMm)) + " long"
	if s.size.thread != nil {
		line = "Cut " + words(s.name) + " " + r.sizeText(s) + ", " + r.w.Size(clean(s.toMm-s.fromMm)) + " long"
		if t := s.size.thread; !s.inside {
			line += " (turn to " + r.w.Dia(t.MajorMm) + " first, pitch " + trim(t.PitchMm, 3) + " mm"
			if t.TPI > 0 {
				line += ", " + trim(t.TPI, 1) + " per inch"
			}
			line += ")"
		}
		if t := s.size.thread; t.Taper {
			line += ", taper 1:16"
		}
	}
	if u := s.undercut; u != nil {
		line += ", undercut " + r.w.Size(u.Width.Mm) + " wide × " + r.w.Size(u.Depth.Mm) + " deep at the shoulder"
	}
	if s.seat != "" {
		line += "; seat for " + s.seat
	}
	if s.finish != "" {
		line += "; " + s.finish
	}
	return line + "."
}

// startBore opens the middle before boring, as far as the shop's drills go.
func (r *resolver) startBore(inside []*step) []string {
	if r.part.Stock.Form == "tube" || r.part.Kind == parts.Tube {
		return nil
	}
	narrow := math.Inf(1)
	for _, s := range inside {
		narrow = math.Min(narrow, 2*s.drawnRadius())
	}
	largest := 30.0
	if r.job.Shop.Drills.Set() {
		largest = r.job.Shop.Drills.Mm
	}
	return r.drillLines(math.Max(1, narrow-1), largest)
}

// drillLines are the drills for a hole, smallest first, with their speeds.
func (r *resolver) drillLines(holeMm, largestMm float64) []string {
	steps, err := cutting.DrillSteps(holeMm, largestMm, r.drills())
	if err != nil {
		return nil
	}
	var out []string
	for _, s := range steps {
		name := "Ø" + s.Size.Name
		if !strings.Contains(s.Size.Name, "in") && r.drills() == cutting.Inch {
			name = s.Size.Name + " (" + trim(s.Size.DiaMm, 2) + " mm)"
		}
		line := "Drill " + name + ", " + s.Note
		if v := r.speed(cutting.Drill, s.Size.DiaMm); v != "" {
			line += ": " + strings.SplitN(v, " at ", 2)[0]
		}
		out = append(out, line+".")
	}
	return out
}

// clearanceDrill is the drill for a hole. Clearance sizes printed to a
// thousandth of an inch lie a hair under the fraction they come from: the
// drill may be 0.1 mm over (common practice, no source).
func (r *resolver) clearanceDrill(m *madeGroup) float64 {
	d := m.group.DrillMm
	if m.hole.Size.Make != parts.ClearanceHole {
		return d
	}
	if up, err := cutting.StockDrill(d, r.drills(), cutting.Up); err == nil && up.DiaMm-d <= 0.1 {
		return up.DiaMm
	}
	return d
}

// drills is the series of drills the shop keeps.
func (r *resolver) drills() cutting.System {
	if r.job.Units == parts.Inches {
		return cutting.Inch
	}
	return cutting.Metric
}

// sawOperation cuts the bar with what facing both ends needs.
func (r *resolver) sawOperation() {
	if r.part.Stock.Form == "casting" {
		r.op(Operation{
			Machine: "Bench", Title: "Check the casting",
			Do:      []string{"Fettle gates and flash; check that every face has metal to clean up.", "Find the centre from the cored and outside surfaces and mark it."},
			Gauge:   "calipers, surface gauge",
			Caution: "Castings are heavy and have sharp flash: gloves; mask for grinding dust.",
		})
		return
	}
	cut := clean(r.lengthMm() + 2*cutting.FacingAllowanceMm(r.widest().size.nominalMm))
	if r.part.Stock.Length.Set() {
		cut = r.part.Stock.Length.Mm
	}
	r.op(Operation{
		Machine: "Saw", Title: "Cut the stock",
		Do:      []string{"Cut " + r.w.Said(cut) + " long (finished " + r.w.Said(r.lengthMm()) + ", the rest to face both ends): " + r.out.StockText + "."},
		Caution: "Clamp the stock, support the long end; edges are sharp and hot.",
	})
}

// rollOperations makes a cone from flat sheet.
func (r *resolver) rollOperations() {
	f := r.part.Frustum
	r.op(Operation{Machine: "Cutter", Title: "Cut the flat blank", Do: []string{"Mark the development on " + r.out.StockText + " and cut; cut edges deburred."},
		Caution: "Sheet edges cut: gloves.", Refs: r.refs("large end", "small end", "height")})
	r.op(Operation{Machine: "Roll", Title: "Roll and close the seam",
		Do:      []string{"Pre-bend the seam edges, roll to " + r.w.Dia(f.Large.Mm) + " and " + r.w.Dia(f.Small.Mm) + ".", "Tack the seam at clock " + trim(f.Seam.Deg, 2) + "°, check both ends round, weld."},
		Gauge:   "tape round both ends: " + r.w.Size(clean(math.Pi*2*r.out.Section.Outer[0].YMm)) + " and " + r.w.Size(clean(math.Pi*2*r.out.Section.Outer[1].YMm)) + " girth outside",
		Caution: "Rolls pull fingers in. Welding: screen, ventilation, hot parts; by a qualified welder under local rules.", Refs: r.refs("seam")})
}

// markOperation sets the template and punches.
func (r *resolver) markOperation() {
	if len(r.made) == 0 && len(r.radials) == 0 {
		return
	}
	o := Operation{Machine: "Bench", Title: "Mark TOP, set the template, punch", Tool: "scriber, centre punch 60° to find, 90° to open",
		Caution: "Eye protection when punching; a mushroomed punch head splinters."}
	top := r.out.Top
	if top == "" {
		top = "scribe"
	}
	o.Do = append(o.Do, "Mark TOP on the "+r.topFace()+" face ("+top+"), before anything else.")
	for _, f := range r.out.Faces {
		o.Do = append(o.Do, "Check the printed 100 mm rules, cut out the "+string(f.Face)+" template, set it to the edge or bore and to TOP, tape it down, punch every centre.")
	}
	wrapped := false
	for _, d := range r.out.Developments {
		if d.Kind == WrapPattern {
			wrapped = true
			o.Do = append(o.Do, "Check the printed 100 mm rules, wrap the template of "+d.On+": "+strings.TrimPrefix(d.Edge, "this edge ")+", its TOP line on TOP; tape it, punch every centre and along the outlines.")
		}
	}
	if len(r.radials) > 0 && !wrapped {
		o.Do = append(o.Do, "Round work: mark from the TOP line by the arc lengths of the table, on the outside, and from the front face.")
	}
	if len(r.made) > 0 {
		o.Do = append(o.Do, "Check one chord with dividers before drilling.")
	}
	r.op(o)
}

// drillOperations drills, reams, taps and sinks the groups, face by face.
func (r *resolver) drillOperations() {
	for i := range r.made {
		m := &r.made[i]
		if m.slot != nil {
			r.op(Operation{Machine: "Mill", Title: words(m.group.Name) + ": " + countOf(m.group.Count) + m.group.SizeText,
				Do:      []string{"Set the long axis to clock " + trim(m.slot.Turn.Deg, 2) + "°; drill the two end holes, mill between.", m.group.DepthText + "."},
				Holding: "machine vice or clamps, part set square", Tool: "slot drill under " + r.w.Size(m.slot.Width.Mm), Refs: []int{m.ref}})
			continue
		}
		h := m.hole
		o := Operation{
			Machine: "Drill", Title: words(m.group.Name) + ": " + countOf(m.group.Count) + m.group.SizeText,
			Holding: "clamped on parallels, " + string(m.face) + " face up", Speed: r.speed(cutting.Drill, m.group.DrillMm),
			Caution: "Clamp the part: a drill that grabs spins it.", Refs: []int{m.ref},
		}
		largest := 30.0
		if r.job.Shop.Drills.Set() {
			largest = r.job.Shop.Drills.Mm
		}
		o.Do = append(o.Do, "Centre-drill "+holesWords(m.group)+".")
		o.Do = append(o.Do, r.drillLines(r.clearanceDrill(m), largest)...)
		o.Do = append(o.Do, "Depth: "+m.group.DepthText+".")
		if m.size.thread != nil {
			o.Do = append(o.Do, "Tap "+m.size.thread.Designation+", square, with cutting oil.")
			o.Gauge = "thread gauge or new bolt"
		}
		if m.size.drillMm < m.size.finishedMm && m.size.thread == nil {
			o.Do = append(o.Do, "Ream "+r.w.Dia(m.size.finishedMm)+" "+m.size.size.class+", at half the drilling speed.")
		}
		if l := r.limitsText(m.size.size); l != "" && m.size.thread == nil {
			o.Limits = []string{words(m.group.Name) + " " + l}
			o.Gauge = "plug gauge or bore gauge"
		}
		if e := r.extra(h); e != "" {
			o.Do = append(o.Do, capital(e)+".")
		}
		r.op(o)
	}
}

func holesWords(g *Group) string {
	if g.Count == 1 {
		return "hole " + trim(float64(g.First), 0)
	}
	return "holes " + trim(float64(g.First), 0) + " to " + trim(float64(g.First+g.Count-1), 0)
}

func capital(s string) string {
	if s == "" {
		return s
	}
	first := []rune(s)
	return strings.ToUpper(string(first[:1])) + string(first[1:])
}

// radialOperations drills and mills what is cut from outside into a round.
func (r *resolver) radialOperations() {
	for i := range r.radials {
		m := &r.radials[i]
		f, row := m.radial, m.rows[0]
		o := Operation{
			Machine: "Drill", Title: words(row.Name) + ": " + countOf(len(m.rows)) + row.SizeText,
			Holding: "vee blocks, clamped; TOP line set with a square", Caution: "Clamp the round: it rolls and grabs.", Refs: []int{m.ref},
		}
		o.Do = append(o.Do, "Clock "+clockList(m.rows)+", "+r.w.Size(row.AxialMm)+" from the front face to the centre.")
		if f.Shape == parts.RadialHole {
			o.Speed = r.speed(cutting.Drill, m.size.drillMm)
			largest := 30.0
			if r.job.Shop.Drills.Set() {
				largest = r.job.Shop.Drills.Mm
			}
			o.Do = append(o.Do, "Spot a flat or use a long centre drill so that the drill does not wander.")
			o.Do = append(o.Do, r.drillLines(m.size.drillMm, largest)...)
			o.Do = append(o.Do, "Depth: "+row.DepthText+".")
			if m.size.thread != nil {
				o.Do = append(o.Do, "Tap "+m.size.thread.Designation+", square, with cutting oil.")
			}
		} else {
			o.Machine = "Mill"
			o.Do = append(o.Do, "Chain-drill inside the line where it is large, mill to "+row.SizeText+", "+row.DepthText+".")
		}
		r.op(o)
	}
}

// cautions are printed beside the title.
func (r *resolver) cautions() {
	r.out.Cautions = append(r.out.Cautions, "At every machine: eye protection; no gloves, sleeves or rags near what turns; take the chuck key out; let hot parts cool. Local rules come first.")
	if r.out.MassKg > 25 {
		r.out.Cautions = append(r.out.Cautions, "Over 25 kg: lift with a second person or a hoist, by local lifting rules.")
	}
	if w := r.widest(); w != nil && r.job.Shop.SwingMm.Set() && w.size.nominalMm > r.job.Shop.SwingMm.Mm {
		r.out.Cautions = append(r.out.Cautions, r.w.Dia(w.size.nominalMm)+" is over the lathe's swing of "+r.w.Size(r.job.Shop.SwingMm.Mm)+".")
	}
}
