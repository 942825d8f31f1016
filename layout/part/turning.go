package part

import (
	"cmp"
	"math"
	"slices"

	"centrepop/layout/cutting"
	"centrepop/layout/plan"
	"centrepop/layout/threads"
	"centrepop/layout/words"
	"centrepop/parts"
	"centrepop/parts/geom"
)

// setting is what is turned without letting the part go.
type setting struct {
	face  parts.Face
	steps []*Step // outside from the widest down, inside from the narrowest up
}

// turnOperations splits a turned part into two settings: what lies in front of
// the widest outside and of the narrowest bore is turned from the front, the
// rest from the back. A long solid part is first faced and centred at both
// ends, since its ends cannot be faced against a centre.
func (r *Model) turnOperations() {
	_, inside := r.Sides()
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
func (r *Model) settings() [2]setting {
	outside, inside := r.Sides()
	out := [2]setting{{face: parts.Front}, {face: parts.Back}}
	wide := r.widest()
	split := wide.ToMm
	if len(outside) > 1 && wide.ToMm >= r.LengthMm()-1e-9 {
		split = wide.FromMm
	}
	share := func(steps []*Step, split float64) {
		for _, s := range steps {
			i := 0
			if s.FromMm >= split-1e-9 {
				i = 1
			}
			out[i].steps = append(out[i].steps, s)
		}
	}
	slices.SortStableFunc(outside, func(a, b *Step) int { return cmp.Compare(b.Size.NominalMm, a.Size.NominalMm) })
	share(outside, split)
	if len(inside) > 0 {
		byRadius := func(a, b *Step) int { return cmp.Compare(a.drawnRadius(), b.drawnRadius()) }
		narrow := slices.MinFunc(inside, byRadius)
		slices.SortStableFunc(inside, byRadius)
		share(inside, narrow.ToMm)
	}
	return out
}

// asBought tells whether a step is the surface of its tube or bar, with no
// limits of its own, and so is not turned.
func (r *Model) asBought(s *Step) bool {
	stock := r.Part.Stock
	switch {
	case s.bought():
		return true
	case s.Size.Class != "" || s.Size.Thread != nil || !stock.Size.Set():
		return false
	}
	size := stock.Size.Mm
	if s.Inside {
		if stock.Form != "tube" || !stock.Second.Set() {
			return false
		}
		size -= 2 * stock.Second.Mm
	}
	return (stock.Form == "tube" || stock.Form == "round") && math.Abs(s.Size.NominalMm-size) < 1e-6
}

// centreOperation faces a long solid part to length and centres both ends.
func (r *Model) centreOperation() {
	o := plan.Operation{
		Machine: "Lathe", Title: "Face and centre both ends", Holding: "chuck near the end that is faced, the other end in the spindle or a steady",
		Do: []string{"Face the front clean, centre-drill.", "Turn round, face the back to length " + r.W.Size(r.LengthMm()) + ", centre-drill."}, Tool: "facing tool, centre drill",
		Speed: r.speed(cutting.Turn, r.widest().Size.NominalMm), Gauge: "calipers", Refs: r.refs("length"),
		Caution: "A long bar whips: nothing may stand out unsupported behind the spindle.",
	}
	if l := r.limitsText(r.length(r.LengthMm())); l != "" {
		o.Limits = []string{"length " + l}
	}
	r.op(o)
}

// turnSetting is the lathe work of one setting: outsides from the widest down,
// bores from the narrowest up, then chamfers, and threads last.
func (r *Model) turnSetting(first, onCentres bool, set setting) {
	_, inside := r.Sides()
	o := plan.Operation{Machine: "Lathe", Title: "Turn from the " + string(set.face) + " face", Tool: "facing and turning tool", Speed: r.settingSpeed(set.steps), Gauge: r.gauges(set.steps)}
	cut := slices.ContainsFunc(set.steps, func(s *Step) bool { return !r.asBought(s) })
	if !cut {
		o.Title = "Face the " + string(set.face) + " end"
	}
	switch {
	case onCentres:
		o.Holding, o.Tool = "between centres, driver on the end not turned; or in the chuck with a centre at the free end", "turning tool"
		if r.LengthMm() > 12*r.widest().Size.NominalMm { // common practice, no source
			o.Holding += "; travelling steady"
		}
	case first:
		o.Holding = "chuck on the back end, set true"
		if left := r.grip(set.steps); cut && left > 0 && left < 0.15*r.widest().Size.NominalMm {
			o.Holding += "; only " + r.W.Said(geom.Clean(left)) + " for the jaws: light cuts"
		}
	case !cut:
		o.Holding = "turned round, set true"
	default:
		o.Holding = "on a finished diameter, soft jaws or indicated within " + r.W.Near(0.02) + " (common practice, no source)"
	}
	if !onCentres {
		if r.slender(r.widest()) {
			o.Holding += "; support the free end with a centre or a steady"
		}
		if first {
			o.Do = append(o.Do, r.faceFront())
			if slices.ContainsFunc(inside, func(s *Step) bool { return !r.asBought(s) }) {
				o.Do = append(o.Do, r.startBore(inside)...)
			}
		} else {
			o.Do = append(o.Do, r.faceBack())
			if l := r.limitsText(r.length(r.LengthMm())); l != "" {
				o.Limits = append(o.Limits, "length "+l)
			}
		}
	}
	var cuts []string
	for _, s := range set.steps {
		o.Do = append(o.Do, r.stepWork(s, first && s.FromMm < 1e-9 && s.ToMm >= r.LengthMm()-1e-9))
		if s.Size.Thread != nil {
			cuts = append(cuts, r.threadWork(s))
		} else if l := r.limitsText(s.Size); l != "" {
			o.Limits = append(o.Limits, words.Spaced(s.Name)+" "+l)
		}
		o.Refs = append(o.Refs, s.Ref)
	}
	do, refs := r.chamferLines(func(st *Step, back bool) bool {
		switch at := st.FromMm; {
		case back && st.ToMm >= r.LengthMm()-1e-9:
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
func (r *Model) grip(steps []*Step) float64 {
	far := 0.0
	for _, s := range steps {
		if !s.Inside && !r.asBought(s) && s.ToMm-s.FromMm < r.LengthMm()-1e-9 {
			far = math.Max(far, s.ToMm)
		}
	}
	return r.LengthMm() - far + cutting.FacingAllowanceMm(r.widest().Size.NominalMm)
}

// settingSpeed is the speed at the widest outside, then those at the smallest
// where it may run half as fast again, at the widest bore and at the threads.
func (r *Model) settingSpeed(steps []*Step) string {
	var out, bore, thread, small float64
	for _, s := range steps {
		d := s.Size.NominalMm
		switch {
		case s.Size.Thread != nil:
			thread = math.Max(thread, d)
		case r.asBought(s):
		case s.Inside:
			bore = math.Max(bore, d)
		default:
			out = math.Max(out, d)
			if small == 0 || d < small {
				small = d
			}
		}
	}
	if out == 0 {
		out = r.widest().Size.NominalMm
	}
	text := r.speed(cutting.Turn, out)
	base, _, _ := r.rpm(cutting.Turn, out)
	add := func(label string, op cutting.Op, dia float64) {
		if n, _, _ := r.rpm(op, dia); n > 0 && (n != base || op == cutting.Thread) {
			text = words.Join("; ", text, label+words.Trim(n, 0)+" at "+r.W.Dia(dia))
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
func (r *Model) gauges(steps []*Step) string {
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
func (r *Model) slender(wide *Step) bool { return r.LengthMm() > 3*wide.Size.NominalMm }

// stepWork is the line for one cylinder; a whole one is turned up to the jaws.
func (r *Model) stepWork(s *Step, whole bool) string {
	if r.asBought(s) {
		return words.Capital(words.Spaced(s.Name)) + " " + r.W.Dia(s.Size.NominalMm) + ": as bought, not turned."
	}
	verb := "Turn "
	if s.Inside {
		verb = "Bore "
	}
	if words.Spaced(s.Name) == "bore" {
		verb = "Machine "
	}
	long := ", " + r.W.Size(geom.Clean(s.ToMm-s.FromMm)) + " long"
	line := verb + words.Spaced(s.Name) + " " + r.sizeText(s) + long
	if t := s.Size.Thread; t != nil {
		dia := r.threadBlankMm(s)
		if line = verb + words.Spaced(s.Name) + " to " + r.W.Dia(dia) + long + ", for the thread"; tapped(s) {
			line = words.Capital(words.Spaced(s.Name)) + ": the tap drill makes it, no bar reaches so deep" + long
		}
	}
	if whole && !s.Inside {
		line += ", as far as the jaws allow, the rest when turned round"
	}
	if u := s.Undercut; u != nil {
		line += ", undercut " + r.W.Size(u.Width.Mm) + " wide × " + r.W.Size(u.Depth.Mm) + " deep at the shoulder"
	}
	if s.Finish != "" {
		line += "; " + s.Finish
	}
	if s.Seat != "" {
		line += " (" + s.Seat + ")"
	}
	return line + "."
}

// threadBlankMm is the diameter before threading: the tap drill inside;
// outside the major diameter, less a tenth of the pitch on metric and unified
// threads, which stays inside their 6g and 2A limits (common practice, no
// source).
func (r *Model) threadBlankMm(s *Step) float64 {
	t := s.Size.Thread
	switch {
	case s.Inside && t.TapDrillMm > 0:
		return t.TapDrillMm
	case s.Inside:
		return t.MinorMm
	case t.Series == threads.PipeG || t.Series == threads.PipeR:
		return t.MajorMm
	}
	return geom.Clean(math.Round((t.MajorMm-t.PitchMm/10)*100) / 100)
}

// threadWork is the line that cuts a thread.
func (r *Model) threadWork(s *Step) string {
	t := s.Size.Thread
	line := "Cut " + words.Spaced(s.Name) + " " + t.Designation
	if tapped(s) {
		return "Tap " + words.Spaced(s.Name) + " " + t.Designation + ", " + r.W.Size(geom.Clean(s.ToMm-s.FromMm)) + " long, square, " + r.fluid() + "."
	}
	if s.Inside && t.MajorMm <= 24 { // what one taps by hand; common practice, no source
		line = "Tap or cut " + words.Spaced(s.Name) + " " + t.Designation
	}
	switch {
	case t.TPI > 0 && r.W.Units == parts.Inches:
		line += ", " + words.Trim(t.TPI, 1) + " per inch"
	case t.TPI > 0:
		line += ", " + words.Trim(t.TPI, 1) + " per inch (pitch " + words.Trim(t.PitchMm, 3) + " mm)"
	default:
		line += ", pitch " + words.Trim(t.PitchMm, 3) + " mm"
	}
	if t.Taper {
		line += ", taper 1:16"
	}
	return line + ", " + r.W.Size(geom.Clean(s.ToMm-s.FromMm)) + " long."
}

// tapped tells whether an inside thread is drilled and tapped because a boring bar
// does not reach through it.
func tapped(s *Step) bool {
	t := s.Size.Thread
	if !s.Inside || t == nil || t.TapDrillMm == 0 || t.MajorMm > 30 { // larger taps are not at hand; common practice, no source
		return false
	}
	ok, both := cutting.BarReach(t.TapDrillMm, s.ToMm-s.FromMm)
	return !ok || both
}

// startBore opens the middle before boring, as far as the shop's drills go.
func (r *Model) startBore(inside []*Step) []string {
	if r.Part.Stock.Form == "tube" || r.Part.Kind == parts.Tube {
		return nil
	}
	if r.Part.Stock.Form == "casting" {
		return []string{"Open the cored hole with the boring bar; if it is cast solid, drill it first."}
	}
	narrow, deepest := math.Inf(1), 0.0
	for _, s := range inside {
		narrow = math.Min(narrow, 2*s.drawnRadius())
		deepest = math.Max(deepest, s.ToMm)
	}
	out := []string{"Centre-drill."}
	if deepest < r.LengthMm()-1e-9 {
		out = []string{"Centre-drill. Stop every drill short of " + r.W.Said(deepest) + " from the front face."}
	}
	way, err := cutting.StartBore(narrow, r.largestDrillMm(), r.drills())
	for _, s := range inside {
		if 2*s.drawnRadius() == narrow && tapped(s) {
			way, err = cutting.WayFor(cutting.Hole{NominalMm: s.Size.Thread.MajorMm, Thread: s.Size.Thread, DepthMm: deepest, LargestMm: r.largestDrillMm(), System: r.drills()})
		}
	}
	if err != nil {
		return out
	}
	return append(out, r.drillLines(way, r.Job.Shop.LatheRPM)...)
}

// sawOperation cuts the bar with what facing both ends needs.
func (r *Model) sawOperation() {
	if r.Part.Stock.Form == "casting" {
		r.op(plan.Operation{
			Machine: "Bench", Title: "Check the casting",
			Do:      []string{"Fettle gates and flash; check that every face has metal to clean up.", "Find the centre from the cored and outside surfaces and mark it."},
			Gauge:   "calipers, surface gauge",
			Caution: "Castings are heavy and have sharp flash: gloves; mask for grinding dust.",
		})
		return
	}
	cut := geom.Clean(r.LengthMm() + 2*cutting.FacingAllowanceMm(r.widest().Size.NominalMm))
	if r.Part.Stock.Length.Set() {
		cut = r.Part.Stock.Length.Mm
	}
	r.op(plan.Operation{
		Machine: "Saw", Title: "Cut the stock",
		Do:      []string{"Cut " + r.W.Said(cut) + " long: " + r.Out.StockText + ". Finished " + r.W.Said(r.LengthMm()) + "; the rest is to face both ends."},
		Caution: "Clamp the stock, support the long end; edges are sharp and hot.",
	})
}
