package part

import (
	"math"
	"slices"

	"github.com/tdewolff/canvas"

	"centrepop/layout/cutting"
	"centrepop/layout/plan"
	"centrepop/layout/words"
	"centrepop/parts"
	"centrepop/parts/geom"
	"centrepop/parts/seq"
)

type turned struct {
	usual
	in *parts.Profile
}

func (t *turned) lengthMm() float64             { return t.in.LengthMm() }
func (t *turned) round() bool                   { return true }
func (t *turned) outline(s *Sizes) *canvas.Path { return geom.Circle(s.widest().Size.NominalMm) }
func (t *turned) developments(d *shaper)        { d.cut = t.asCut(d.Sizes, d.Part.Stock.Cut) }

func (t *turned) wallMm(s *Sizes, zMm float64) float64 {
	wall := s.outsideAt(zMm).Size.NominalMm
	if bore := s.boreAt(zMm); bore != nil {
		wall -= bore.Size.NominalMm
	}
	return wall / 2
}

func (t *turned) steps(z *sizer) []Step {
	var out []Step
	take := func(steps []parts.Step, inside bool) {
		at := 0.0
		for s := range seq.Refs(steps) {
			st := Step{
				Drawn: s, Name: s.Name.Value, Inside: inside, FromMm: at, ToMm: at + s.Length.Mm, Size: z.sizeOf(s.Size, inside),
				Undercut: z.undercutOf(s, inside), Seat: s.Seat.Value, Finish: Finish(z.W, s.Finish.Value), Lip: s.Lip, AfterWeld: s.AfterWeld, limits: s.Limits,
			}
			z.left(&st)
			st.details = details(&st)
			z.shapes(s, &st)
			out = append(out, st)
			at += s.Length.Mm
		}
	}
	take(t.in.Outside, false)
	hard := func(s Step) bool { _, ok := s.hardened(); return ok }
	if slices.ContainsFunc(out, hard) { // it moves the seats beside it
		for s := range seq.Refs(out) {
			if s.Bears() && s.Size.Limited && !hard(*s) {
				s.details = append(s.details, hardened{})
			}
		}
	}
	take(t.in.Inside, true)
	t.reach(z, out)
	return out
}

// reach checks that what is turned in one setting with a bore can be reached from one face: a bar
// does not bore what lies behind a narrower bore, and a tool does not come past a wider collar to the
// jaws. Outsides alone are turned between centres.
func (t *turned) reach(z *sizer, steps []Step) {
	together := seq.Keep(steps, func(s Step) bool {
		return slices.ContainsFunc(t.in.OneSetting, func(n parts.Text) bool { return n.Value == s.Name })
	})
	if !slices.ContainsFunc(together, func(s Step) bool { return s.Inside }) {
		return
	}
	hidden := func(s Step, front bool) bool {
		return slices.ContainsFunc(steps, func(o Step) bool {
			before := o.RadiusMm() < s.RadiusMm()-geom.CloseMm
			if !s.Inside {
				before = o.RadiusMm() > s.RadiusMm()+geom.CloseMm
			}
			return o.Inside == s.Inside && before && (o.FromMm < s.FromMm) == front
		})
	}
	for _, front := range []bool{true, false} {
		if !slices.ContainsFunc(together, func(s Step) bool { return hidden(s, front) }) {
			return
		}
	}
	z.fault(t.in.OneSetting[0].Pos, "these steps cannot be reached in one setting: from either face one lies behind a narrower bore or a wider collar",
		"steps that are open to one face; else require: [{is: run-out, within: ..., of: one, to: the other}]")
}

func (t *turned) section(s *Sizes) *plan.Section {
	out := &plan.Section{LengthMm: s.LengthMm(), MaxMm: s.widest().Size.NominalMm / 2}
	outside, inside := s.Sides()
	out.Outer, out.Inner = s.contour(outside), s.contour(inside)
	for st := range seq.Refs(s.Steps) {
		if st.Size.Thread != nil {
			out.Threads = append(out.Threads, st.threadLine())
		}
	}
	out.Seals, out.OnAxis = s.sealMarks(), s.onAxis()
	if n := len(inside); n > 0 && inside[n-1].ToMm < out.LengthMm-geom.CloseMm {
		out.Inner = append(out.Inner, plan.XY{XMm: inside[n-1].ToMm, YMm: 0})
	}
	return out
}

// contour is that of the steps of one side, with what is on them.
func (s *Sizes) contour(steps []*Step) []plan.XY {
	var out []plan.XY
	for _, st := range steps {
		line := s.edge(*st, st.RadiusMm())
		for _, d := range st.details {
			line = d.contour(s, st, line)
		}
		out = append(out, s.grooved(st, line)...)
	}
	return out
}

// Undercut is where the undercut of a step lies, from the front face in mm: at its shoulder.
func (s *Sizes) Undercut(st *Step) geom.Span {
	if s.UndercutAtBack(st) {
		return geom.Span{FromMm: st.ToMm - st.Undercut.WidthMm, ToMm: st.ToMm}
	}
	return geom.Span{FromMm: st.FromMm, ToMm: st.FromMm + st.Undercut.WidthMm}
}

// operations of a turned part are two settings: what lies in front of
// the widest outside and of the narrowest bore is turned from the front, the
// rest from the back. A long solid part is first faced and centred at both
// ends, since its ends cannot be faced against a centre. A bore that no bar in the
// tool post reaches is a setting of its own.
func (t *turned) operations(b *bench) {
	if b.Part.Stock.Bought() {
		b.finishBought()
		return
	}
	settings := b.settings()
	b.onCentres = b.betweenCentres()
	if b.shortInJaws(settings[0].steps) {
		b.moreMm = b.W.Up(math.Max(0, b.jawStockMm(settings[0].steps)-b.sawnMm()), 1, 1.0/16)
	}
	t.saw(b)
	if b.onCentres {
		b.centreOperation()
	}
	var far []*Step
	for s := range seq.Refs(settings[:]) {
		far = append(far, seq.Keep(s.steps, b.beyondBar)...)
		s.steps = slices.DeleteFunc(s.steps, b.beyondBar)
	}
	if b.onCentres {
		b.roughBoth(settings)
	}
	settings[1].before = settings[0].steps
	for _, s := range settings {
		if idle := len(s.steps) == 0 && (s.first() || len(b.rest()) == 0); !b.onlySawn(s) && !(b.onCentres && idle) {
			b.turnSetting(s)
		}
	}
	for _, s := range far {
		b.lineBore(s)
	}
}

// lineBore bores such a bore from end to end: the bar turns between centres, and the
// part lies still on the slide that feeds it (common practice, no source).
func (b *bench) lineBore(s *Step) {
	b.op(plan.Operation{
		Machine: plan.Lathe, Title: "Bar between centres: " + words.Spaced(s.Name), Refs: []int{b.ref(s)},
		Holding: "clamped on the cross slide in V blocks or on packing, " + b.inLine() + " at both ends; bar between centres, driven by a dog",
		Do: []string{b.stepWork(s, false),
			"A bar in the tool post does not reach so deep. Set the cutter out with a micrometer, a little at a pass, the last ones light; feed the carriage. Measure at both ends."},
		Tool: "boring bar with a cutter in its middle", Speed: b.speed(cutting.Bore, s.Size.NominalMm), Gauge: gauge(s),
		Limits: b.limits(words.Spaced(s.Name), s.Size),
	})
}

// betweenCentres tells whether a part is turned between centres: solid and slender, with centres in both ends or as it has no other.
func (b *bench) betweenCentres() bool {
	return len(b.Side(true)) == 0 && b.slender() && !b.centredOnce() && (len(b.centres) > 0 || anyTurned(b.Side(false)))
}

// shortInJaws tells whether stock that is sawn for the part may be too short for the jaws when its first steps are turned.
func (b *bench) shortInJaws(first []*Step) bool {
	free := !b.onCentres && b.Part.Stock.Form != "casting" && !b.Part.Stock.Length.Set() && b.cut.outline == nil && anyTurned(first)
	return free && (b.LengthMm() < 2*leastHeldMm || !slices.ContainsFunc(first, b.whole))
}

// cutFile of a turned part is that of its disc.
func (t *turned) cutFile(c *cutter) (*plan.Profile, error) {
	a := t.asCut(c.Sizes, c.out.Cut)
	if a.outline == nil {
		c.fault(c.Part.Pos, c.Part.Name.Value+" is not flat, and has no flat blank", "profiles are for flat parts, cones, square-to-rounds and what is turned from plate")
		return nil, nil
	}
	if err := c.known(); err != nil {
		return nil, err
	}
	return c.flatFile(a)
}
