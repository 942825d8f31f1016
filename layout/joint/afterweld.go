package joint

import (
	"cmp"
	"math"
	"slices"
	"strconv"
	"strings"

	"centrepop/layout/bolts"
	"centrepop/layout/part"
	"centrepop/layout/plan"
	"centrepop/layout/words"
	"centrepop/parts"
	"centrepop/parts/geom"
	"centrepop/parts/seq"
)

// fineMm is the tolerance below which a size does not survive welding heat.
// Common practice, no source.
const fineMm = 0.1

// fineSteps are the steps of a part with sizes to finish after welding, the seat of the
// weld itself and bores that hold something already left out.
func fineSteps(f feature, made []*joint) []part.Step {
	return seq.Keep(f.r.Steps, func(s part.Step) bool {
		seat := f.step != nil && f.step.Name == s.Name
		return !seat && !s.AfterWeld && !(s.Inside && filled(f.Instance(), &s, made)) && s.Size.Limited && s.Size.MaxMm-s.Size.MinMm < fineMm && s.Size.Thread == nil
	})
}

// fineSizes are the sizes of those.
func fineSizes(f feature, made []*joint) []string {
	return seq.Map(fineSteps(f, made), func(s part.Step) string {
		return f.title() + " " + words.Spaced(s.Name) + " " + f.r.W.Limits(s.Size.MinMm, s.Size.MaxMm)
	})
}

// outOfSize says what is done with finished sizes that a weld has pulled out: a bore is bored, what is welded too small
// outside is not mended in the shop.
func (j *making) outOfSize(t *joint) string {
	var bores, outsides bool
	for _, f := range []feature{t.a, t.b} {
		for _, s := range fineSteps(f, j.before) {
			if !j.weldedLater(t, f.Instance()) {
				bores, outsides = bores || s.Inside, outsides || !s.Inside
			}
		}
	}
	switch {
	case !bores:
		return "force nothing onto it: ask who drew it."
	case !outsides:
		return "force nothing into it: bore it where it stands, or ask who drew it."
	}
	return "force nothing together: a bore is bored where it stands, of the rest ask who drew it."
}

// finishLater is the step after the last weld of a weldment, in which its parts get the sizes that
// they were left large for, with what is cut into them, and their rows of the record.
func (j *making) finishLater(t *joint) {
	body := j.weldment(t.a.Instance())
	if slices.ContainsFunc(body, func(i parts.Instance) bool { return j.weldedLater(t, i) }) {
		return
	}
	slices.SortFunc(body, func(a, b parts.Instance) int { return cmp.Or(strings.Compare(a.Part, b.Part), a.Copy-b.Copy) })
	var what, do, by []string
	clamped, set, ends := "", "turn or bore only now", false
	for _, i := range body {
		r := j.model(i.Part)
		title, held := copyTitle(r, i.Copy), j.heldLater(t, i, body)
		later := seq.Keep(r.Steps, func(s part.Step) bool { return s.AfterWeld })
		what = append(what, seq.Map(later, func(s part.Step) string { return title + " " + r.Finished(&s) })...)
		if most := j.job.Shop.SwingMm.Mm; len(later) > 0 {
			by = append(by, title+" true by "+j.trueBy(t, i))
			if swings := j.swingMm(t, i, body); geom.Over(swings, most) {
				held, clamped, set = nil, "clamp it on the mill's table, for it would swing "+t.w.Read(t.w.Rounded(swings, 0))+" and the lathe takes "+
					t.w.Read(most)+", ", "bore only now with the boring head"
				do = append(do, facingHead(later)...)
				for _, s := range slices.DeleteFunc(later, func(s part.Step) bool { return s.Inside }) {
					t.problem(plan.WeldedSwings, plan.Named(title+" "+words.Spaced(s.Name)), plan.Of(plan.Read, t.w.Rounded(swings, 0)), plan.Of(plan.Read, most))
				}
			} else {
				j.longLater(t, i, body)
			}
		}
		ends = ends || r.TwoEnds() != ""
		do = append(do, seq.Map(slices.Concat(held, r.LaterDo), func(text string) string { return words.Capital(title) + ": " + text })...)
		for _, c := range r.Later {
			c.What, c.Ref = title+" "+c.What, 0
			t.out.Checks = append(t.out.Checks, c)
		}
	}
	if len(what) > 0 {
		if j.anchored(t, body) {
			t.problem(plan.WeldedFixed, plan.Named(what[0]))
		}
		t.step("Finish after welding", append([]string{"When it is cold, " + clamped + "set " + strings.Join(by, " and ") + ", and " + set +
			words.When(len(what) > 1, ", without letting go between bores of one axis"+words.When(ends, " that a tool reaches from one end")) + ": " +
			strings.Join(what, "; ") + ", to the limits below."}, do...)...)
	}
}

// longLater finds what is to be turned or bored after the weld in a weldment that is longer than the lathe takes.
func (j *making) longLater(t *joint, i parts.Instance, body []parts.Instance) {
	most := j.job.Shop.BetweenMm
	if long := j.longMm(t, i, body); most.Set() && geom.Over(long, most.Mm) {
		t.problem(plan.WeldedLong, plan.Named(copyTitle(j.model(i.Part), i.Copy)), plan.Of(plan.Read, j.w.Rounded(long, 0)), plan.Of(plan.Read, most.Mm))
	}
}

// longMm is how long a weldment is along the axis of one of its parts, as it is after a weld.
func (j *making) longMm(t *joint, along parts.Instance, body []parts.Instance) float64 {
	return j.seams.LongMm(j.with(t), endOf(along), seq.Map(body, endOf))
}

// facingHead is the tool that cuts the undercuts of what is bored on the mill; empty where there are none.
func facingHead(steps []part.Step) []string {
	if !slices.ContainsFunc(steps, func(s part.Step) bool { return s.Inside && s.Undercut != nil }) {
		return nil
	}
	return []string{"An undercut takes a facing head, which feeds outward as it turns: a plain boring head does not cut it."}
}

// heldLater says how a part of a weldment is held as it is turned or bored: as before, or where something long is
// welded to its end by that.
func (j *making) heldLater(t *joint, i parts.Instance, body []parts.Instance) []string {
	r := j.model(i.Part)
	if len(r.LaterHeld) == 0 {
		return nil
	}
	long := j.longMm(t, i, body) > longOver*r.LengthMm()
	return seq.Map(r.LaterHeld, func(h part.Held) string {
		as := "as in operation " + strconv.Itoa(h.Operation) + " of its sheet"
		if long {
			return h.Step + " with the tool " + as + ", but held by what is round on the long part of the weldment: a chuck at one end of it, a steady or a centre at the other."
		}
		return "for " + h.Step + " hold it, and set the tool, " + as + ", clear of what is welded on."
	})
}

// endOf is an end of a joint that names a part alone.
func endOf(i parts.Instance) plan.JointEnd { return plan.JointEnd{Part: i.Part, Copy: i.Copy} }

// longOver its own length is a weldment whose part is no more held by the end it was roughed from. Common practice, no source.
const longOver = 2.0

// swingMm is what a weldment turns across about the axis of one of its parts, as it is after a weld; 0
// where the shop's lathe has no swing.
func (j *making) swingMm(t *joint, about parts.Instance, body []parts.Instance) float64 {
	if !j.job.Shop.SwingMm.Set() {
		return 0
	}
	return j.acrossMm(t, about, body)
}

// reachedMm is the least length of a round that an indicator is set on. Common practice, no source.
const reachedMm = 10.0

// trueBy is what a part is set true by when it is finished after its last weld: the first that nothing made covers.
func (j *making) trueBy(t *joint, i parts.Instance) string {
	by := j.model(i.Part).LaterTrue
	return cmp.Or(seq.First(by, func(b part.TrueBy) bool { return j.coveredBy(i, b.On, j.made(t)) == nil }), by[0]).Text
}

// coveredBy is the joint that covers a step of a part so that less than an indicator needs is left of it; nil where none does.
func (j *making) coveredBy(i parts.Instance, step string, made []*joint) *joint {
	return seq.First(made, func(o *joint) bool {
		own, other, ok := o.from(i)
		if !ok || own.step == nil || own.step.Name != step || other.step == nil || other.step.Inside == own.step.Inside {
			return false
		}
		on, placed := j.onOwn(o, own, other)
		return placed && own.step.LengthMm()-own.step.Span().OnMm(on) < reachedMm
	})
}

// acrossMm is the same of any shop.
func (j *making) acrossMm(t *joint, about parts.Instance, body []parts.Instance) float64 {
	return j.seams.SwingMm(j.with(t), endOf(about), seq.Map(body, endOf))
}

// boresCold are the checks of bores that are finished before the last weld on their part: their
// limits are wide enough for that, or the job says what holds them.
func (j *making) boresCold(t *joint) {
	j.emptyBores(t, j.before, func(f feature, bore *part.Step) {
		if (bore.Size.MaxMm-bore.Size.MinMm >= fineMm || t.meanwhile(j.job) != "") && !j.weldedLater(t, f.Instance()) {
			t.out.Checks = append(t.out.Checks, plan.Check{
				What: words.Spaced(bore.Name) + " of " + f.title() + ", cold, plugs out", Wanted: t.w.Dia(bore.Size.NominalMm),
				Limits: t.w.Limits(bore.Size.MinMm, bore.Size.MaxMm), MinMm: bore.Size.MinMm, MaxMm: bore.Size.MaxMm, Gauge: "bore gauge",
				Source: bore.Size.Source,
			})
		}
	})
}

// drawnBores are the bores that a weld draws in, as far as it pulls, and that the lathe waits for: what goes into them later is
// turned to them as they measure then.
func (j *making) drawnBores(t *joint) {
	for _, q := range j.placed {
		beside := seq.At(j.placed, func(o *placedPart) bool { return o.Instance != q.Instance && o.group == q.group && t.has(o.Instance) })
		if !t.has(q.Instance) || beside == nil {
			continue
		}
		joined := j.members(q.Instance, j.before)
		for _, p := range j.placed {
			if p.group != q.group || t.has(p.Instance) || slices.Contains(joined, p.Instance) {
				continue
			}
			for _, s := range inBores(p, q) {
				if s.out.Size.Measured() && Pulls(q.r, s.in, -beside.along().OnMm(p.at.span(s.out.Span()))) {
					last := &t.out.Steps[len(t.out.Steps)-1]
					last.Do = append(last.Do, words.Capital(words.Spaced(s.in.Name))+" of "+copyTitle(q.r, q.Copy)+", cold, the least of four places: ________ to the lathe, for "+
						words.Spaced(s.out.Name)+" of "+copyTitle(p.r, p.Copy)+".")
				}
			}
		}
	}
}

// meanwhile is what holds fine sizes of a part true while it is welded: the reason
// for which the job accepts that they are finished before the weld.
func (t *joint) meanwhile(job *parts.Job) string {
	for _, a := range job.Accept {
		if a.Finding.Value != "weld-first" {
			continue
		}
		o := job.Joint(a.Part)
		if o == nil || o.Kind != parts.WeldKind {
			continue
		}
		for _, f := range []feature{t.a, t.b} {
			if o.Some(func(e parts.JointRef) bool { return e.Instance() == f.Instance() }) && len(fineSizes(f, nil)) > 0 {
				return a.Reason.Value
			}
		}
	}
	return ""
}

// holdTrue is the step before the first weld on a part whose fine sizes are done.
func (j *making) holdTrue(t *joint) {
	reason := t.meanwhile(j.job)
	begun := slices.ContainsFunc(ofKind(j.before, parts.WeldKind), func(o *joint) bool { return o.meanwhile(j.job) == reason })
	if reason == "" || begun {
		return
	}
	t.step("Hold what is finished true", "Fine sizes of these parts are finished already. As the job accepts it: "+reason)
}

// weldedLater tells whether a later joint welds the same part again.
func (j *making) weldedLater(t *joint, i parts.Instance) bool {
	return slices.ContainsFunc(ofKind(j.later(t), parts.WeldKind), func(o *joint) bool { return o.has(i) })
}

// plateToFace is the flat part of a weld whose free face is to be true: something is bolted to
// it later, or the job says square-up; and the metal that its stock has over its thickness. ok
// is false where there is none, or other welds on it follow first.
func (j *making) plateToFace(t *joint) (f feature, spareMm float64, ok bool) {
	for _, f := range []feature{t.b, t.a} {
		part := f.r.Part
		if !part.Flat() || part.Bends != nil || !t.in.Weld.SquareUp.Set() && !j.facedLater(f.Instance()) || j.weldedLater(t, f.Instance()) {
			continue
		}
		return f, geom.Clean(f.spareMm()), true
	}
	return feature{}, 0, false
}

// spareMm is the metal that the stock of a plate has over its thickness.
func (f feature) spareMm() float64 {
	if st := f.r.Part.Stock; st.ByArea() {
		return max(0, st.Size.Mm-f.r.Part.Thickness.Mm)
	}
	return 0
}

// stiffShare is the thickness of a plate that keeps another flat, over that one's. Common
// practice, no source.
const stiffShare = 1.5

// keepFlat is what to do before welding a plate that nothing is left to face on.
func (j *making) keepFlat(t *joint, p *plan.WeldPlan) string {
	f, spare, ok := j.plateToFace(t)
	if !ok || spare >= p.SquareUpMm {
		return ""
	}
	p.BackingMm, p.BackingOn = j.w.Up(stiffShare*f.r.LengthMm(), 5, 1.0/4), f.r.Out.Title
	return "Bolt a plate " + t.w.Size(p.BackingMm) + " thick or more to the free face of " + f.title() +
		", its holes drilled through those of that. No tack on that face: nothing is left on it to face off."
}

// A face that is turned is flat to turnedFlatMm (common practice, no source); flatShare is how flat a
// plate that is not faced comes, over its longest side: EN 10029 class S has 3 mm in 1000 at 8 to 15
// thick (from memory).
const turnedFlatMm, flatShare = 0.1, 0.003

// squareUp faces plates whose free face is to be true where the stock is so much thicker than
// the part, in one step after the last weld of their body; else the plate is only checked.
func (j *making) squareUp(t *joint, p *plan.WeldPlan) {
	f, spare, ok := j.plateToFace(t)
	asked := t.in.Weld.SquareUp.Set()
	flat := func(mm float64) string {
		return "A " + t.w.Near(mm) + " feeler does not enter anywhere under the face."
	}
	switch {
	case asked && !ok:
		t.problem(plan.SquareUpNowhere, plan.Of(plan.Mm, p.SquareUpMm))
	case p.SquareUpMm <= 0 || !ok:
	case spare >= p.SquareUpMm:
		p.Faced = f.r.Part.Name.Value
		source := words.Either(asked, "job file", "common practice, no source")
		t.figure("leave for squaring up", t.w.Read(p.SquareUpMm)+" on the joint face", source)
	default:
		box, feel := f.r.OutlinePath().Bounds(), "Rest the joint face of "+f.title()+" on a plate and feel round it."
		if slices.ContainsFunc(ofKind(j.before, parts.WeldKind), func(o *joint) bool { return o.has(f.Instance()) }) { // it stands in a frame
			feel = "Lay a straight edge across the joint face of " + f.title() + ", along, across and from corner to corner, and feel under it."
		}
		t.step("Check that it is flat", feel, "Else press it flat over the weld; if it stays so, cut it anew, from plate with metal to face.").Hold =
			flat(min(j.flatMm(max(box.W(), box.H())), j.pulledFlatMm(t, f)))
		if asked {
			t.problem(plan.SquareUpStock, plan.Of(plan.Mm, p.SquareUpMm), plan.Named(f.title()), plan.Of(plan.Mm, spare))
		}
	}
	var do []string
	for _, o := range ofKind(j.made(t), parts.WeldKind) {
		if o.out.Weld == nil || o.out.Weld.Faced == "" {
			continue
		}
		if f, spare, _ := j.plateToFace(o); j.facedAt(o, f.Instance()) == t {
			do = append(do, "Face the joint face of "+f.title()+" true, down to its thickness of "+t.w.Size(f.r.Part.Thickness.Mm)+": "+t.w.Read(spare)+" stands over it.")
		}
	}
	if len(do) > 0 {
		t.step("Square up", do...).Hold = flat(turnedFlatMm)
	}
}

// flatMm is how far from flat a joint face may be that is so wide.
func (j *making) flatMm(wideMm float64) float64 {
	return j.w.Up(max(turnedFlatMm, flatShare*wideMm), 0.1, 0.005)
}

// pulledFlatMm is how far from flat a plate that is welded round something may be for its bolts to close the joint: by what may
// gape there, and what each of them bends a strip as wide as they stand apart down over its arm from the weld, Fa³/3EI.
func (j *making) pulledFlatMm(t *joint, f feature) float64 {
	least := math.Inf(1)
	for _, o := range ofKind(j.later(t), parts.BoltKind) {
		own, _, ok := o.from(f.Instance())
		soft := slices.ContainsFunc(append(j.stack(o), o.a, o.b), func(f feature) bool { return f.r.Soft() })
		if soft || !ok || o.bolt == nil || f.r.Material == nil || !own.seatsBolts() {
			continue
		}
		radius, thick := geom.MeanRadiusMm(own.points()), f.r.LengthMm()
		arm, wide := radius-f.roundMm()/2, 2*math.Pi*radius/float64(len(own.points()))
		of, err := o.bolt.Tighten(bolts.Tightening{Head: o.head(), Class: o.in.Bolt.Class})
		if err == nil && f.roundMm() > 0 && arm > 0 {
			least = min(least, closedMm+4*of.PreloadN*arm*arm*arm/(f.r.Material.EMPa*wide*thick*thick*thick))
		}
	}
	return j.w.Down(least, 0.1, 0.001)
}

// seatedBy is how many bolts at the least hold what asks for a flat face: with two it lies as it comes. Common practice, no
// source.
const seatedBy = 3

// widest is how far the farthest two of some places lie apart.
func widest(pts []plan.XY) float64 {
	return seq.Max(0, pts, func(p plan.XY) float64 {
		return seq.Max(0, pts, func(q plan.XY) float64 { return geom.Distance(p, q) })
	})
}

// seatsBolts tells whether it is of so many bolts in a face that this has to be flat.
func (f feature) seatsBolts() bool {
	return f.group != nil && !f.onWall() && len(f.group.Points) >= seatedBy
}

// seatsFlat has the faces of plates looked at after the last weld of their body where other parts are bolted to them, but of those
// that are faced or checked already by their own welds. What is folded from sheet follows the face.
func (j *making) seatsFlat(t *joint) {
	var hold []string
	for _, i := range j.weldment(t.a.Instance()) {
		r := j.model(i.Part)
		own := slices.ContainsFunc(ofKind(j.made(t), parts.WeldKind), func(o *joint) bool { return o.has(i) && o.out.Weld != nil && o.out.Weld.SquareUpMm > 0 })
		if !r.Part.Flat() || r.Part.Bends != nil || own || bolted(j.before, i) || j.facedAt(t, i) != t {
			continue
		}
		for _, o := range ofKind(j.later(t), parts.BoltKind) {
			f, other, ok := o.from(i)
			if ok && f.seatsBolts() && other.r.Part.Bends == nil {
				hold = seq.Add(hold, t.w.Near(j.flatMm(widest(f.points())))+", "+other.title()+" on "+copyTitle(r, i.Copy))
			}
		}
	}
	if len(hold) > 0 {
		t.step("Check that it is flat", "A straight edge along, across and from corner to corner of each face that something is bolted to, with a feeler. Else straighten it first.").
			Hold = "No feeler enters under it: " + strings.Join(hold, "; ") + "."
	}
}

// facedAt is the joint after which a plate is faced that a weld holds: the last weld of its body
// before something other is put to the plate.
func (j *making) facedAt(t *joint, plate parts.Instance) *joint {
	body, at := j.weldment(plate), t
	for _, o := range j.later(t) {
		if !o.forGood() && o.takes(plate) {
			break
		}
		if o.is(parts.WeldKind) && slices.Contains(body, o.a.Instance()) {
			at = o
		}
	}
	return at
}

// weldment are the parts that welds make one body with a part.
func (j *making) weldment(i parts.Instance) []parts.Instance {
	return j.members(i, ofKind(j.all, parts.WeldKind))
}

// thickYet warns of a plate that is thicker than it is drawn until it is faced after this weld
// or a later one.
func (j *making) thickYet(t *joint) {
	for _, o := range ofKind(j.all, parts.WeldKind) {
		f, spare, ok := j.plateToFace(o)
		if ok && spare > 0 && t.has(f.Instance()) && slices.Index(j.all, j.facedAt(o, f.Instance())) >= slices.Index(j.all, t) {
			t.caution(f.title() + " is still " + t.w.Size(f.r.Part.Stock.Size.Mm) + " thick, drawn " + t.w.Size(f.r.Part.Thickness.Mm) +
				": places and depths here are those of the drawing, and " + t.w.Read(spare) + " stands out beyond its joint face until that is faced.")
		}
	}
}

// facedLater tells whether a part is bolted to something by more than one bolt, so that its face must
// be true: what one bolt holds lies on the metal round its hole.
func (j *shop) facedLater(i parts.Instance) bool {
	return slices.ContainsFunc(j.job.Of(parts.BoltKind), func(o *parts.Joint) bool {
		return slices.ContainsFunc([]parts.JointRef{o.Bolt.Through, o.Bolt.Into}, func(end parts.JointRef) bool {
			g := j.find(end).group
			return end.Instance() == i && (g == nil || len(g.Points) > 1)
		})
	})
}
