package layout

import (
	"cmp"
	"math"
	"slices"

	"centrepop/layout/cutting"
	"centrepop/layout/plan"
	"centrepop/layout/threads"
	"centrepop/layout/words"
	"centrepop/parts"
)

// setting is what is turned without letting the part go.
type setting struct {
	face  parts.Face
	steps []*step // outside from the widest down, inside from the narrowest up
}

// turnOperations splits a turned part into two settings: what lies in front of
// the widest outside and of the narrowest bore is turned from the front, the
// rest from the back. A long solid part is first faced and centred at both
// ends, since its ends cannot be faced against a centre.
func (r *resolver) turnOperations() {
	_, inside := r.sides()
	r.sawOperation()
	onCentres := len(inside) == 0 && r.slender(r.widest())
	if onCentres {
		r.centreOperation()
	}
	for i, s := range r.settings() {
		if r.onlySawn(string(s.face), s.steps) || onCentres && len(s.steps) == 0 {
			continue
		}
		r.turnSetting(i == 0, onCentres, s)
	}
}

// settings shares out the steps. A widest outside that reaches the back face
// is turned from there, for the chuck holds it while the front is turned.
func (r *resolver) settings() [2]setting {
	outside, inside := r.sides()
	out := [2]setting{{face: parts.Front}, {face: parts.Back}}
	wide := r.widest()
	split := wide.toMm
	if len(outside) > 1 && wide.toMm >= r.lengthMm()-1e-9 {
		split = wide.fromMm
	}
	share := func(steps []*step, split float64) {
		for _, s := range steps {
			i := 0
			if s.fromMm >= split-1e-9 {
				i = 1
			}
			out[i].steps = append(out[i].steps, s)
		}
	}
	slices.SortStableFunc(outside, func(a, b *step) int { return cmp.Compare(b.size.nominalMm, a.size.nominalMm) })
	share(outside, split)
	if len(inside) > 0 {
		byRadius := func(a, b *step) int { return cmp.Compare(a.drawnRadius(), b.drawnRadius()) }
		narrow := slices.MinFunc(inside, byRadius)
		slices.SortStableFunc(inside, byRadius)
		share(inside, narrow.toMm)
	}
	return out
}

// asBought tells whether a step is the surface of its tube or bar, with no
// limits of its own, and so is not turned.
func (r *resolver) asBought(s *step) bool {
	stock := r.part.Stock
	switch {
	case s.bought():
		return true
	case s.size.class != "" || s.size.thread != nil || !stock.Size.Set():
		return false
	}
	size := stock.Size.Mm
	if s.inside {
		if stock.Form != "tube" || !stock.Second.Set() {
			return false
		}
		size -= 2 * stock.Second.Mm
	}
	return (stock.Form == "tube" || stock.Form == "round") && math.Abs(s.size.nominalMm-size) < 1e-6
}

// centreOperation faces a long solid part to length and centres both ends.
func (r *resolver) centreOperation() {
	o := plan.Operation{
		Machine: "Lathe", Title: "Face and centre both ends", Holding: "chuck near the end that is faced, the other end in the spindle or a steady",
		Do: []string{"Face the front clean, centre-drill.", "Turn round, face the back to length " + r.w.Size(r.lengthMm()) + ", centre-drill."}, Tool: "facing tool, centre drill",
		Speed: r.speed(cutting.Turn, r.widest().size.nominalMm), Gauge: "calipers", Refs: r.refs("length"),
		Caution: "A long bar whips: nothing may stand out unsupported behind the spindle.",
	}
	if l := r.limitsText(r.length(r.lengthMm())); l != "" {
		o.Limits = []string{"length " + l}
	}
	r.op(o)
}

// turnSetting is the lathe work of one setting: outsides from the widest down,
// bores from the narrowest up, then chamfers, and threads last.
func (r *resolver) turnSetting(first, onCentres bool, set setting) {
	_, inside := r.sides()
	o := plan.Operation{Machine: "Lathe", Title: "Turn from the " + string(set.face) + " face", Tool: "facing and turning tool", Speed: r.settingSpeed(set.steps), Gauge: r.gauges(set.steps)}
	cut := slices.ContainsFunc(set.steps, func(s *step) bool { return !r.asBought(s) })
	if !cut {
		o.Title = "Face the " + string(set.face) + " end"
	}
	switch {
	case onCentres:
		o.Holding, o.Tool = "between centres, driver on the end not turned; or in the chuck with a centre at the free end", "turning tool"
		if r.lengthMm() > 12*r.widest().size.nominalMm { // common practice, no source
			o.Holding += "; travelling steady"
		}
	case first:
		o.Holding = "chuck on the back end, set true"
		if left := r.grip(set.steps); cut && left > 0 && left < 0.15*r.widest().size.nominalMm {
			o.Holding += "; only " + r.w.Said(clean(left)) + " for the jaws: light cuts"
		}
	case !cut:
		o.Holding = "turned round, set true"
	default:
		o.Holding = "on a finished diameter, soft jaws or indicated within " + r.w.Near(0.02) + " (common practice, no source)"
	}
	if !onCentres {
		if r.slender(r.widest()) {
			o.Holding += "; support the free end with a centre or a steady"
		}
		if first {
			o.Do = append(o.Do, r.faceFront())
			if slices.ContainsFunc(inside, func(s *step) bool { return !r.asBought(s) }) {
				o.Do = append(o.Do, r.startBore(inside)...)
			}
		} else {
			o.Do = append(o.Do, r.faceBack())
			if l := r.limitsText(r.length(r.lengthMm())); l != "" {
				o.Limits = append(o.Limits, "length "+l)
			}
		}
	}
	var cuts []string
	for _, s := range set.steps {
		o.Do = append(o.Do, r.stepWork(s, first && s.fromMm < 1e-9 && s.toMm >= r.lengthMm()-1e-9))
		if s.size.thread != nil {
			cuts = append(cuts, r.threadWork(s))
		} else if l := r.limitsText(s.size); l != "" {
			o.Limits = append(o.Limits, words.Spaced(s.name)+" "+l)
		}
		o.Refs = append(o.Refs, s.ref)
	}
	do, refs := r.chamferLines(func(st *step, back bool) bool {
		switch at := st.fromMm; {
		case back && st.toMm >= r.lengthMm()-1e-9:
			return set.face == parts.Back
		case !back && at <= 1e-9:
			return set.face == parts.Front
		}
		return slices.Contains(set.steps, st)
	})
	o.Do, o.Refs = append(append(o.Do, do...), cuts...), append(o.Refs, refs...)
	slices.Sort(o.Refs)
	r.op(o)
}

// grip is what is left behind the turned outsides for the jaws, with the
// facing allowance of the other end.
func (r *resolver) grip(steps []*step) float64 {
	far := 0.0
	for _, s := range steps {
		if !s.inside && !r.asBought(s) && s.toMm-s.fromMm < r.lengthMm()-1e-9 {
			far = math.Max(far, s.toMm)
		}
	}
	return r.lengthMm() - far + cutting.FacingAllowanceMm(r.widest().size.nominalMm)
}

// settingSpeed is the speed at the widest outside, then those at the smallest
// where it may run half as fast again, at the widest bore and at the threads.
func (r *resolver) settingSpeed(steps []*step) string {
	var out, bore, thread, small float64
	for _, s := range steps {
		d := s.size.nominalMm
		switch {
		case s.size.thread != nil:
			thread = math.Max(thread, d)
		case r.asBought(s):
		case s.inside:
			bore = math.Max(bore, d)
		default:
			out = math.Max(out, d)
			if small == 0 || d < small {
				small = d
			}
		}
	}
	if out == 0 {
		out = r.widest().size.nominalMm
	}
	text := r.speed(cutting.Turn, out)
	base, _, _ := r.rpm(cutting.Turn, out)
	add := func(label string, op cutting.Op, dia float64) {
		if n, _, _ := r.rpm(op, dia); n > 0 && (n != base || op == cutting.Thread) {
			text = words.Join("; ", text, label+words.Trim(n, 0)+" at "+r.w.Dia(dia))
		}
	}
	if n, _, _ := r.rpm(cutting.Turn, small); small > 0 && n >= 1.5*base {
		add("", cutting.Turn, small)
	}
	add("boring ", cutting.Bore, bore)
	add("threads ", cutting.Thread, thread)
	return text
}

// gauges names what measures the steps of a setting.
func (r *resolver) gauges(steps []*step) string {
	var out []string
	for _, s := range steps {
		if g := gauge(s); g != "calipers" && !r.asBought(s) && !slices.Contains(out, g) {
			out = append(out, g)
		}
	}
	return words.Join(", ", append(out, "calipers")...)
}

// slender tells whether the part sticks out more than three diameters, from
// where a tailstock or steady is used (common practice, no source).
func (r *resolver) slender(wide *step) bool { return r.lengthMm() > 3*wide.size.nominalMm }

// stepWork is the line for one cylinder; a whole one is turned up to the jaws.
func (r *resolver) stepWork(s *step, whole bool) string {
	if r.asBought(s) {
		return words.Capital(words.Spaced(s.name)) + " " + r.w.Dia(s.size.nominalMm) + ": as bought, not turned."
	}
	verb := "Turn "
	if s.inside {
		verb = "Bore "
	}
	if words.Spaced(s.name) == "bore" {
		verb = "Machine "
	}
	long := ", " + r.w.Size(clean(s.toMm-s.fromMm)) + " long"
	line := verb + words.Spaced(s.name) + " " + r.sizeText(s) + long
	if t := s.size.thread; t != nil {
		dia := r.threadBlankMm(s)
		if line = verb + words.Spaced(s.name) + " to " + r.w.Dia(dia) + long + ", for the thread"; tapped(s) {
			line = words.Capital(words.Spaced(s.name)) + ": the tap drill makes it, no bar reaches so deep" + long
		}
	}
	if whole && !s.inside {
		line += ", as far as the jaws allow, the rest when turned round"
	}
	if u := s.undercut; u != nil {
		line += ", undercut " + r.w.Size(u.Width.Mm) + " wide × " + r.w.Size(u.Depth.Mm) + " deep at the shoulder"
	}
	if s.finish != "" {
		line += "; " + s.finish
	}
	if s.seat != "" {
		line += " (" + s.seat + ")"
	}
	return line + "."
}

// threadBlankMm is the diameter before threading: the tap drill inside;
// outside the major diameter, less a tenth of the pitch on metric and unified
// threads, which stays inside their 6g and 2A limits (common practice, no
// source).
func (r *resolver) threadBlankMm(s *step) float64 {
	t := s.size.thread
	switch {
	case s.inside && t.TapDrillMm > 0:
		return t.TapDrillMm
	case s.inside:
		return t.MinorMm
	case t.Series == threads.PipeG || t.Series == threads.PipeR:
		return t.MajorMm
	}
	return clean(math.Round((t.MajorMm-t.PitchMm/10)*100) / 100)
}

// threadWork is the line that cuts a thread.
func (r *resolver) threadWork(s *step) string {
	t := s.size.thread
	line := "Cut " + words.Spaced(s.name) + " " + t.Designation
	if tapped(s) {
		return "Tap " + words.Spaced(s.name) + " " + t.Designation + ", " + r.w.Size(clean(s.toMm-s.fromMm)) + " long, square, " + r.fluid() + "."
	}
	if s.inside && t.MajorMm <= 24 { // what one taps by hand; common practice, no source
		line = "Tap or cut " + words.Spaced(s.name) + " " + t.Designation
	}
	switch {
	case t.TPI > 0 && r.w.Units == parts.Inches:
		line += ", " + words.Trim(t.TPI, 1) + " per inch"
	case t.TPI > 0:
		line += ", " + words.Trim(t.TPI, 1) + " per inch (pitch " + words.Trim(t.PitchMm, 3) + " mm)"
	default:
		line += ", pitch " + words.Trim(t.PitchMm, 3) + " mm"
	}
	if t.Taper {
		line += ", taper 1:16"
	}
	return line + ", " + r.w.Size(clean(s.toMm-s.fromMm)) + " long."
}

// tapped tells whether an inside thread is drilled and tapped because a boring bar
// does not reach through it.
func tapped(s *step) bool {
	t := s.size.thread
	if !s.inside || t == nil || t.TapDrillMm == 0 || t.MajorMm > 30 { // larger taps are not at hand; common practice, no source
		return false
	}
	ok, both := cutting.BarReach(t.TapDrillMm, s.toMm-s.fromMm)
	return !ok || both
}

// startBore opens the middle before boring, as far as the shop's drills go.
func (r *resolver) startBore(inside []*step) []string {
	if r.part.Stock.Form == "tube" || r.part.Kind == parts.Tube {
		return nil
	}
	if r.part.Stock.Form == "casting" {
		return []string{"Open the cored hole with the boring bar; if it is cast solid, drill it first."}
	}
	narrow, deepest := math.Inf(1), 0.0
	for _, s := range inside {
		narrow = math.Min(narrow, 2*s.drawnRadius())
		deepest = math.Max(deepest, s.toMm)
	}
	out := []string{"Centre-drill."}
	if deepest < r.lengthMm()-1e-9 {
		out = []string{"Centre-drill. Stop every drill short of " + r.w.Said(deepest) + " from the front face."}
	}
	way, err := cutting.StartBore(narrow, r.largestDrillMm(), r.drills())
	for _, s := range inside {
		if 2*s.drawnRadius() == narrow && tapped(s) {
			way, err = cutting.WayFor(cutting.Hole{NominalMm: s.size.thread.MajorMm, Thread: s.size.thread, DepthMm: deepest, LargestMm: r.largestDrillMm(), System: r.drills()})
		}
	}
	if err != nil {
		return out
	}
	return append(out, r.drillLines(way, r.job.Shop.LatheRPM)...)
}

// sawOperation cuts the bar with what facing both ends needs.
func (r *resolver) sawOperation() {
	if r.part.Stock.Form == "casting" {
		r.op(plan.Operation{
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
	r.op(plan.Operation{
		Machine: "Saw", Title: "Cut the stock",
		Do:      []string{"Cut " + r.w.Said(cut) + " long: " + r.out.StockText + ". Finished " + r.w.Said(r.lengthMm()) + "; the rest is to face both ends."},
		Caution: "Clamp the stock, support the long end; edges are sharp and hot.",
	})
}
