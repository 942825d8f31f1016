package joint

import (
	"cmp"
	"math"
	"regexp"
	"slices"
	"strconv"
	"strings"

	"centrepop/layout/bolts"
	"centrepop/layout/fits"
	"centrepop/layout/lookup"
	"centrepop/layout/part"
	"centrepop/layout/plan"
	"centrepop/layout/threads"
	"centrepop/layout/words"
	"centrepop/parts"
	"centrepop/parts/geom"
	"centrepop/parts/seq"
)

// slideKind is a hub that slides on a shaft with a key, up to a shoulder, or a plain bush in which the shaft turns.
type slideKind struct{ plain }

func (slideKind) ends(s *shop, t *joint) {
	t.need(t.a, round(t.a, true), "the bore of the hub")
	t.need(t.b, round(t.b, false), "the step of the shaft that the hub slides on")
	if t.unkept() {
		hub, shaft := t.keyways()
		t.need(t.a, hub == nil && shaft == nil, "kept-by: what keeps the hub along the shaft; with a keyway it does not turn there")
		return
	}
	k := s.keeper(t)
	t.need(k.feature, k.ok(), "the thread of a nut, the groove of a retaining ring, or tapped holes in the shaft's end")
	if k.ok() && t.b.step != nil {
		t.dir = math.Copysign(1, k.atMm()-t.b.step.MidMm())
		if up, down := shoulder(t.b, -1) != nil, shoulder(t.b, 1) != nil; k.ring != nil && k.ring.Row.In == t.b.ref.Feature && up != down { // the hub lies between ring and shoulder
			t.dir = map[bool]float64{true: 1, false: -1}[up]
		}
		if t.shut(k) {
			t.refuse(k.ref.Pos, plan.CannotJoin, plan.Named(k.text()),
				plan.Named("a nut, a ring or tapped holes on the side of "+t.b.text()+" that the hub comes from: between them the shaft is larger than its bore"))
			return
		}
	}
	if t.a.step != nil && t.b.step != nil {
		t.between = s.ringsBefore(t)
	}
	if ref := t.in.Slide.Plate; ref.Set() {
		f := s.find(ref)
		t.need(f, f.step != nil && f.step.Inside && k.nut != nil, "the bore of a plate under a nut")
	}
}

func (slideKind) title(t *joint) string { return "Slide " + t.a.title() + " on " + t.b.title() }

// buy lists the nut that the job does not order itself; the key and the ring are listed with their keyway and groove.
func (slideKind) buy(s *shop, t *joint, list *buying) {
	if n := t.out.Slide.Nut; n != "" && t.out.Slide.MadeNut == "" && s.nutOrdered(n) == nil {
		n += words.When(t.out.Slide.Dragged, ", self-locking")
		list.use(t, "Nut "+n, 1, "")
	}
}

// keeper is the feature of a shaft that keeps a hub on it. At most one of nut,
// ring and feature.group is set.
type keeper struct {
	feature
	nut  *part.Step
	ring *part.Groove
}

func (k keeper) ok() bool {
	return k.nut != nil || k.ring != nil || k.group != nil && k.group.Size.Thread != nil
}

func (s *shop) keeper(t *joint) keeper {
	k := keeper{feature: s.find(t.in.Slide.KeptBy)}
	if k.step != nil && !k.step.Inside && k.step.Size.Thread != nil {
		k.nut = k.step
	}
	k.ring = seq.At(k.r.Grooves, func(g *part.Groove) bool {
		_, _, ring := g.Ring(s.w)
		return ring && g.Row.Name == k.ref.Feature && !g.Row.Inside
	})
	return k
}

// ringsBefore are the loose parts with a bore that the job puts over the seat of a hub before that, and that stop at its shoulder:
// they lie between the two.
func (s *shop) ringsBefore(t *joint) (rings []*part.Model) {
	stop := shoulder(t.b, -t.dir)
	for _, e := range s.job.Loose {
		if stop == nil || t.coned() || !e.First || e.Off || e.Part.Value == "" || e.After.Value != t.in.Name.Value {
			continue
		}
		r, seat := s.model(e.Part.Value), t.b.step.Size.NominalMm
		bore := seq.Least(r.Side(true), func(i *part.Step) float64 { return i.Size.NominalMm })
		if len(r.Side(true)) > 0 && !geom.Over(seat, bore) && geom.Over(stop.Size.NominalMm, bore) {
			rings = append(rings, slices.Repeat([]*part.Model{r}, r.Part.Quantity)...)
		}
	}
	return rings
}

// ringsMm is how far loose rings keep a hub off its shoulder, as drawn, and by how much less or more they may.
func (t *joint) ringsMm() (long, less, more float64) {
	for _, r := range t.between {
		l := r.LengthMm()
		long, less, more = long+l, less+lessMm(r, false, 0, l), more+moreMm(r, false, 0, l)
	}
	return long, less, more
}

// offShoulderMm is how far towards its keeper a hub stands from its shoulder, as drawn: by its cone, or by rings.
func (t *joint) offShoulderMm() float64 {
	long, _, _ := t.ringsMm()
	return t.coneOffMm() + long
}

// against is what a hub stands against: the shoulder, or rings that lie on that.
func (t *joint) against(shoulder string) string {
	if len(t.between) == 0 {
		return shoulder
	}
	var titles []string
	for _, r := range t.between {
		titles = seq.Add(titles, r.Out.Title)
	}
	return strings.Join(titles, " and ") + words.Either(len(titles) > 1, ", which lie against ", ", which lies against ") + shoulder
}

// atMm is where the keeper lies, from the front of its shaft.
func (k keeper) atMm() float64 {
	switch {
	case k.nut != nil:
		return k.nut.MidMm()
	case k.ring != nil:
		return k.ring.Row.FromMm
	case k.group.Face == parts.Back:
		return k.r.LengthMm()
	}
	return 0
}

// shut tells whether the shaft is larger than the seat between that and the keeper, or at it.
func (t *joint) shut(k keeper) bool {
	outside, _ := t.b.r.Sides()
	from, to := t.b.step.MidMm(), k.atMm()
	return slices.ContainsFunc(outside, func(s *part.Step) bool {
		at := s.MidMm()
		return (at-from)*(to-at) >= 0 && s.Size.NominalMm > t.b.step.Size.NominalMm
	})
}

// keyways are the keyways of the hub's bore and of the shaft's seat, nil where
// there is none.
func (t *joint) keyways() (hub, shaft *plan.KeywayRow) {
	in := func(f feature) *plan.KeywayRow {
		if k := seq.At(f.r.Keyways, func(k *part.Keyway) bool { return k.Row.In == f.ref.Feature }); k != nil {
			return &k.Row
		}
		return nil
	}
	return in(t.a), in(t.b)
}

// easedKey says what is eased where the slot of the hub may be narrower than its key, which is at most
// its nominal width: the slots keep their limits.
func (t *joint) easedKey() string {
	hub, shaft := t.keyways()
	tight := shaft.WidthMm - hub.Width.Min
	if !geom.Over(tight, 0) {
		return ""
	}
	return " Slot and key inside their limits may be up to " + t.w.Said(tight) + " tight: draw-file the sides of the key where the hub goes, alike, until it slides; never the slots."
}

// keyPlay is the most a hub may rock on a metric key, which is h9 (DIN 6885-1), in words; an inch key
// is not limited so.
func (t *joint) keyPlay() string {
	hub, shaft := t.keyways()
	if key, err := fits.Limit(shaft.WidthMm, "h9"); err == nil && t.w.Units != parts.Inches {
		return " and rocks no more than the limits let it, " + t.w.Said(math.Ceil(100*(hub.Width.Max-key.MinMm)-1e-6)/100) + " at the key"
	}
	return " and does not rock"
}

// place puts the hub on the shaft: against the shoulder that looks to the keeper, its keyway over
// that of the shaft.
func (slideKind) place(t *joint) (placement, bool) {
	if t.unkept() {
		return placement{}, false
	}
	s, turn := t.sense(), 0.0
	if hub, shaft := t.keyways(); hub != nil && shaft != nil {
		turn = shaft.ClockDeg - s*hub.ClockDeg
	}
	return placement{geom.Clean(end(t.b.step, -t.dir) - s*t.hubStopMm() + t.dir*t.offShoulderMm()), geom.OnClock(turn), s}, true
}

// hubStopMm is where the hub, along its own axis, ends for the shoulder that it goes up to, and hubKeptMm for what keeps it.
func (t *joint) hubStopMm() float64 {
	if stop := shoulder(t.b, -t.dir); stop != nil && !t.coned() {
		wide := stop.Size.NominalMm
		if n := len(t.between); n > 0 && len(t.between[n-1].Side(false)) > 0 {
			wide = -seq.Least(t.between[n-1].Side(false), func(s *part.Step) float64 { return -s.Size.NominalMm })
		}
		return t.hubFaceMm(-t.sense()*t.dir, wide)
	}
	return end(t.a.step, -t.sense()*t.dir)
}

func (t *joint) hubKeptMm() float64 {
	return t.hubFaceMm(t.sense()*t.dir, keptShare*t.b.step.Size.NominalMm)
}

// hubFaceMm is where a hub ends, in a direction along its own axis, for what lies against it with a diameter: past the
// steps of its bore beside the seat that are narrower than that, such as a relief and a second seat.
func (t *joint) hubFaceMm(dir, diameterMm float64) float64 {
	at := end(t.a.step, dir)
	for bore := t.a.r.Side(true); ; {
		next := seq.First(bore, func(s *part.Step) bool {
			return geom.Alike(end(s, -dir), at) && geom.Over(diameterMm, s.Size.NominalMm)
		})
		if next == nil {
			return at
		}
		at = end(next, dir)
	}
}

// coned tells whether the hub or its seat is a cone.
func (t *joint) coned() bool {
	a, _ := t.a.step.Cone()
	b, _ := t.b.step.Cone()
	return a > 0 || b > 0
}

// oneTaper tells whether the two sides are one cone, their small ends the same way.
func (t *joint) oneTaper() bool {
	a, aBack := t.a.step.Cone()
	b, bBack := t.b.step.Cone()
	return a > 0 && b > 0 && math.Abs(1/a-1/b)*t.a.step.LengthMm() < sameConeMm && (aBack == bBack) == back(t.sense())
}

// oneCone tells whether hub and seat are one cone, its small end to the keeper.
func (t *joint) oneCone() bool {
	_, smallBack := t.b.step.Cone()
	return t.oneTaper() && smallBack == back(t.dir)
}

// sameConeMm is how much two cones may differ on diameter over the hub, as 1:8 in two roundings. Common practice, no source.
const sameConeMm = 0.01

// coneOffMm is how far towards its keeper a hub on a cone stands from the large end of that: where their diameters are one.
func (t *joint) coneOffMm() float64 {
	if !t.coned() || !t.oneCone() {
		return 0
	}
	ratio, _ := t.b.step.Cone()
	return geom.Clean((t.b.step.Size.NominalMm - t.a.step.Size.NominalMm) * ratio)
}

// coneStopMm is how far a hub on a cone stays off the shoulder behind it at the least, so that it still goes
// on as the cone beds in. Common practice, no source.
const coneStopMm = 1.0

// onCone works out a hub that sits on a cone: it has no play and goes up to no shoulder.
func (j *making) onCone(t *joint) {
	if !t.oneCone() {
		t.refuse(t.in.Pos, plan.SlideTapers, plan.Named(t.a.text()), plan.Named(t.b.text()))
		return
	}
	p := &plan.SlidePlan{From: faceName(t.dir)}
	p.Cone, _ = t.b.step.Cone()
	t.out.Slide = p
	if stop, off := shoulder(t.b, -t.dir), t.coneOffMm(); stop != nil {
		named := []plan.Arg{plan.Named(t.a.title()), plan.Named(words.Spaced(stop.Name)), plan.Of(plan.Mm, max(0, off))}
		switch {
		case off < coneStopMm:
			t.problem(plan.SlideTaperStop, named...)
		case geom.Over(t.nearerMm(p), off):
			t.problem(plan.SlideTaperLimits, append(named, plan.Of(plan.Mm, t.nearerMm(p)))...)
		}
	}
	j.keyed(t, p)
	if j.kept(t, p) {
		t.slideFigures(p)
		j.slideSteps(t, p)
	}
}

// nearerMm is how much farther up its cone a hub may come than drawn, inside the limits of both diameters; 0 of one on
// a cylinder.
func (t *joint) nearerMm(p *plan.SlidePlan) float64 {
	if p.Cone == 0 {
		return 0
	}
	return words.Round(p.Cone*(t.a.made().MaxMm-t.a.step.Size.NominalMm+t.b.step.Size.NominalMm-t.b.made().MinMm), 2)
}

// made is the size of a step as it may come out, by the general tolerance where it has no limits of its own.
func (f feature) made() part.Sized {
	if s := f.step.Size; s.Limited {
		return s
	}
	return f.r.General(geom.Clean(f.step.Size.NominalMm))
}

// leadDir is the end of the hub that goes on first, in a direction along its own axis.
func (t *joint) leadDir() float64 { return -t.sense() * t.dir }

// slideNut is the nut of a hub; nil if it has none or its size is not known.
func slideNut(t *joint) *bolts.Bolt {
	if b, err := bolts.Find(t.out.Slide.Nut); err == nil {
		return &b
	}
	return nil
}

// placePlate puts what lies under the nut of a hub against the hub, looking
// and turned as the hub does.
func (j *assembly) placePlate(t *joint) {
	if t.in.Slide == nil || !t.in.Slide.Plate.Set() {
		return
	}
	f, hub, shaft := j.find(t.in.Slide.Plate), j.at(t.a.Instance()), j.at(t.b.Instance())
	toward := hub.at.way(shaft.at.way(t.dir)) // the keeper's side, on the hub's axis
	front := end(t.a.step, toward) - end(f.step, -toward)
	j.bring(f, hub.group, placement{geom.Clean(front), 0, 1}.then(hub.at))
}

// boltedInto is what a joint of the job bolts into a group of holes; nil if none
// does.
func (s *shop) boltedInto(ref parts.JointRef) *parts.JointRef {
	if in := seq.First(s.job.Of(parts.BoltKind), func(o *parts.Joint) bool {
		return o.Bolt.Into.Is(ref)
	}); in != nil {
		return &in.Bolt.Through
	}
	return nil
}

// slides is the loosest class of a shaft on which a keyed hub of H sits well enough. Common practice, no source: h, j and k
// are usual, g slides.
const slides = "g6"

// loosestKeyed is the loosest fit of such a hub. Common practice, no source.
const loosestKeyed = "H11/h11"

// looseFor tells whether a keyed hub has too much play on a shaft of a nominal size.
func looseFor(nominalMm float64, play plan.Range) bool {
	least, err := fits.Limit(nominalMm, slides)
	if err != nil {
		return false
	}
	most, err := fits.Between(nominalMm, loosestKeyed)
	return err == nil && (geom.Over(play.Min, nominalMm-least.MaxMm) || geom.Over(play.Max, most.ClearanceMaxUm/1000))
}

func (slideKind) work(j *making, t *joint) {
	if t.coned() && !t.unkept() {
		j.onCone(t)
		return
	}
	shaft := t.b.step.Size
	p := t.slides()
	if p == nil {
		return
	}
	pressed := seq.First(j.before, func(o *joint) bool { return o.is(parts.PressKind) && o.a.Instance() == t.a.Instance() })
	t.bindsHub(p, pressed)
	switch {
	case t.turns():
		j.turnSteps(t, p, pressed)
		return
	case t.unkept():
		j.gripSteps(t, p)
		return
	}
	if stop := shoulder(t.b, -t.dir); stop != nil {
		p.HeldBy = words.Spaced(stop.Name)
	} else {
		t.problem(plan.SlideNoStop, plan.Named(t.a.title()), plan.Named(t.b.text()), plan.Named(faceName(-t.dir)))
	}
	j.keyed(t, p)
	if p.Key != "" && looseFor(shaft.NominalMm, p.PlayMm) {
		t.problem(plan.SlidePlay, plan.Named(t.a.text()), plan.Named(t.b.text()), plan.Of(plan.Mm, p.PlayMm.Min), plan.Of(plan.Mm, p.PlayMm.Max))
	}
	if len(t.between) == 0 {
		t.shouldered(t.b, -t.dir, t.a, t.leadDir())
	}
	if j.kept(t, p) {
		t.slideFigures(p)
		j.slideSteps(t, p)
	}
}

// bindsHub notes a hub that may be too tight for its shaft. How a pressed bush closes that has play before, the machine asks.
func (t *joint) bindsHub(p *plan.SlidePlan, pressed *joint) {
	if known := t.turns() && pressed != nil && p.PlayMm.Max >= 0; p.PlayMm.Min < 0 && !known {
		t.problem(plan.SlideBinds, plan.Named(t.a.text()), plan.Named(t.b.text()), plan.Of(plan.Mm, -p.PlayMm.Min))
	}
}

// slides is the play of what slides, within the limits of both; nil where one of them has none or another size.
func (t *joint) slides() *plan.SlidePlan {
	hub, shaft := t.a.step.Size, t.b.step.Size
	if math.Abs(hub.NominalMm-shaft.NominalMm) > nearMm {
		t.refuse(t.in.Pos, plan.SlideSizes, plan.Named(t.a.text()), plan.Of(plan.Diameter, hub.NominalMm), plan.Named(t.b.text()), plan.Of(plan.Diameter, shaft.NominalMm))
		return nil
	}
	if t.turns() && hub.Class != "" && shaft.Class != "" && !geom.Alike(hub.NominalMm, shaft.NominalMm) {
		t.problem(plan.SlideUnlike, plan.Named(t.a.text()), plan.Of(plan.Diameter, hub.NominalMm), plan.Named(t.b.text()),
			plan.Of(plan.Diameter, shaft.NominalMm), plan.Of(plan.Mm, math.Abs(hub.NominalMm-shaft.NominalMm)))
	}
	t.out.Slide = &plan.SlidePlan{From: faceName(t.dir), PlayMm: plan.Range{Min: geom.Clean(hub.MinMm - shaft.MaxMm), Max: geom.Clean(hub.MaxMm - shaft.MinMm)}}
	for _, f := range []feature{t.a, t.b} {
		if !f.step.Size.Fitted() {
			t.refuse(f.ref.Pos, plan.NoLimits, plan.Named(f.text()), plan.Named("limits on both parts that slide, such as H7 and h6"))
			return nil
		}
	}
	return t.out.Slide
}

// keyed compares the two keyways where the hub stands.
func (j *making) keyed(t *joint, p *plan.SlidePlan) {
	hub, shaft := t.keyways()
	if hub == nil || shaft == nil {
		if hub == shaft && !j.turnsOnPin(t) && !t.gripped() {
			t.problem(plan.SlideNoKey, plan.Named(t.a.text()), plan.Named(t.b.text()))
		}
		return
	}
	key := shaft.Key()
	at, long := t.rel, key.LengthMm()
	p.Key = t.w.Size(shaft.WidthMm) + " × " + t.w.Size(shaft.HeightMm)
	p.Key += words.When(shaft.Woodruff == "", " × "+t.w.Size(long))
	p.OverMm = geom.Clean(shaft.DepthMm + hub.DepthMm - shaft.HeightMm)
	p.KeyOnMm = geom.Clean(max(0, at.span(geom.Span{FromMm: hub.FromMm, ToMm: hub.ToMm}).OnMm(key)))
	lead, open := t.leadDir(), hub.ToMm
	if back(-lead) {
		open = hub.FromMm
	}
	switch {
	case !geom.Alike(open, end(t.a.step, lead)):
		t.problem(plan.SlideClosed, plan.Named(t.a.text()), plan.Named(faceName(lead)))
	case geom.Over(long, p.KeyOnMm):
		t.problem(plan.SlideKeyOff, plan.Of(plan.Mm, p.KeyOnMm), plan.Named(t.b.title()), plan.Named(t.a.text()), plan.Of(plan.Mm, geom.Clean(long)))
	}
}

// turnsOnPin tells whether a hub without a key turns, with play, on a pin that another joint fixes and that nothing turns,
// as a lever does that a ring keeps on it.
func (j *making) turnsOnPin(t *joint) bool {
	if m := j.job.Motor; j.keeper(t).ring == nil || m != nil && m.Drives.Part == t.b.ref.Part || geom.Over(t.b.step.Size.MaxMm, t.a.step.Size.MinMm) {
		return false
	}
	fixed := false
	for _, o := range j.all {
		switch its := o.a.Instance() == t.b.Instance() || o.b.Instance() == t.b.Instance(); {
		case !its:
		case o.is(parts.BearingKind), o.turns():
			return false
		default:
			fixed = fixed || !o.is(parts.SlideKind)
		}
	}
	return fixed
}

// ringOffMm is how far a ring may be off its hub at the least, without a spacer. Common practice, no source.
const ringOffMm = 0.5

// kept works out what keeps the hub along the shaft; false if nothing does.
func (j *making) kept(t *joint, p *plan.SlidePlan) bool {
	k := j.keeper(t)
	hubEnd := j.hubEndMm(t)
	free := func(limitMm float64) { p.FreeMm = geom.Clean(t.dir * (limitMm - hubEnd)) }
	switch {
	case k.nut != nil:
		j.nutKeeps(t, k, p, hubEnd)
		free(end(k.nut, -t.dir))
	case k.ring != nil:
		item, thick, _ := k.ring.Ring(j.w)
		p.Keeper, p.Ring = words.Lower(item), true
		wall := k.ring.Row.ToMm
		if back(-t.dir) {
			wall = k.ring.Row.FromMm
		}
		if free(wall - t.dir*thick); p.FreeMm < 0 {
			t.problem(plan.SlideNoRoom, plan.Named(t.a.title()), plan.Of(plan.Mm, -p.FreeMm))
		}
		at, a := end(t.b.step, -t.dir), geom.Between(t.hubStopMm(), t.hubKeptMm())
		to := k.r.ToWallMm(k.ring, at, back(t.dir))
		off := geom.Clean(t.dir*(wall-at)) - p.FreeMm // ring, hub and what is fixed to it, as drawn
		_, less, more := t.ringsMm()
		room := plan.Range{Min: geom.Clean(to.Min - off - more - moreMm(t.a.r, true, a.FromMm, a.ToMm)), Max: geom.Clean(to.Max - off + less + lessMm(t.a.r, true, a.FromMm, a.ToMm))}
		if room.Min < room.Max {
			p.FreeAtMm = &room
		}
		t.rely(relied{what: "the room of the ring beside " + t.a.title(), mm: p.FreeMm, less: p.FreeMm - room.Min, of: t.ringChain(k.r, k.ring, at, a)})
		if room.Min > ringOffMm && !slices.ContainsFunc(j.job.Loose, func(e parts.Loose) bool {
			return e.After.Value == t.in.Name.Value && e.As == parts.ASpacer
		}) {
			t.problem(plan.SlideFar, plan.Named(t.a.title()), plan.Of(plan.Mm, room.Min))
		}
		return true
	default:
		plate := j.boltedInto(t.in.Slide.KeptBy)
		if plate == nil {
			t.problem(plan.SlideNotHeld, plan.Named(k.text()))
			return false
		}
		p.Keeper = j.find(*plate).title()
		free(faceMm(k.r, t.dir))
	}
	if p.FreeMm >= 0 {
		t.problem(plan.SlideLoose, plan.Named(words.Capital(p.Keeper)), plan.Named(t.a.title()), plan.Of(plan.Mm, p.FreeMm))
		return true
	}
	_, shorter, _ := t.ringsMm()
	from, to, hub := end(t.b.step, -t.dir), hubEnd+t.dir*p.FreeMm, geom.Between(t.hubStopMm(), t.hubKeptMm())
	t.rely(relied{what: "what " + t.a.title() + " stands past its seat", mm: -p.FreeMm, wantMm: standsOffMm, of: words.Spaced(t.a.step.Name) + " and " + words.Spaced(t.b.step.Name),
		less: shorter + lessMm(t.a.r, true, hub.FromMm, hub.ToMm) + moreMm(t.b.r, false, from, to) + t.nearerMm(p), cone: p.Cone != 0})
	return true
}

// ringChain names the lengths without limits of their own that the room of a ring beside its hub comes from: those of the bore, and of the shaft from
// the end that its groove is measured from to the shoulder.
func (t *joint) ringChain(shaft *part.Model, ring *part.Groove, atMm float64, bore geom.Span) string {
	from, to := 0.0, atMm
	if ring.In.From == parts.Back {
		from, to = atMm, shaft.LengthMm()
	}
	named := append(t.a.r.Unlimited(true, bore.FromMm, bore.ToMm), shaft.Unlimited(false, from, to)...)
	return words.Either(named == nil, words.Spaced(t.a.step.Name)+" and "+words.Spaced(t.b.step.Name), strings.Join(named, ", "))
}

// shoulderLeastMm is the least width of a shoulder that a hub stands against. Common practice, no source.
const shoulderLeastMm = 0.5

// shouldered notes a shoulder beside the step of one part, in a direction along its axis, of which the
// chamfers leave hardly anything to what goes up to it, which ends there in a direction along its own.
func (t *joint) shouldered(of feature, dir float64, on feature, onDir float64) {
	s := shoulder(of, dir)
	if s == nil || s.Size.Thread != nil {
		return
	}
	out := 1.0
	if of.step.Inside {
		out = -1
	}
	left := out*(s.Size.NominalMm-on.step.Size.NominalMm)/2 - edgeMm(of, s, -dir) - edgeMm(on, on.step, onDir)
	if left = geom.Clean(left); left < shoulderLeastMm {
		t.problem(plan.SlideShoulderLow, plan.Named(on.title()), plan.Of(plan.Mm, max(left, 0)), plan.Named(words.Spaced(s.Name)), plan.Of(plan.Mm, shoulderLeastMm))
	}
}

// keptShare is the part of its seat's radius at which a ring or a nut holds a hub, past a chamfer.
// Common practice, no source: rings of DIN 471 reach a tenth past their shaft or more.
const keptShare = 1.1

// hubEndMm is how far towards its keeper the hub reaches along the shaft, with all that is fixed to it.
func (j *making) hubEndMm(t *joint) float64 {
	at := end(t.b.step, -t.dir) + t.dir*(math.Abs(t.hubKeptMm()-t.hubStopMm())+t.offShoulderMm())
	shaft, joined := j.at(t.b.Instance()), j.members(t.a.Instance(), j.before)
	if slices.Contains(joined, t.b.Instance()) {
		return at
	}
	for _, i := range joined[1:] {
		q := j.at(i)
		if q == nil || q.group != shaft.group {
			continue
		}
		on := q.at.seenFrom(shaft.at)
		if z, _, ok := q.r.Plane(parts.Face(faceName(on.way(t.dir))), keptShare*t.b.step.Size.NominalMm/2); ok {
			at = t.dir * math.Max(t.dir*at, t.dir*(on.z0+on.s*z))
		}
	}
	return at
}

// nutBearsShare is how much of the thread's diameter stays under a nut, on both
// sides together. Common practice, no source: a washer for M36 leaves half.
const nutBearsShare = 0.25

// nutInShare is the part of a nut's height that has thread in it where an undercut lies under the rest. Common
// practice, no source: a thin nut, ISO 4035, is about half as high as its thread is thick.
const nutInShare = 0.5

// nutKeeps works out where the nut of a hub stands: against the hub or the plate
// on it, or where its thread begins.
func (j *making) nutKeeps(t *joint, k keeper, p *plan.SlidePlan, hubEndMm float64) {
	p.Nut = k.nut.Size.Thread.Designation
	p.Keeper, p.Dragged = "nut "+p.Nut, j.draggedOff(t, k.nut.Size.Thread.LeftHand)
	if made := j.nutMade(p.Nut); made != nil && slices.ContainsFunc(j.job.Loose, func(e parts.Loose) bool {
		return e.Part.Value == made.Part.Name.Value && e.After.Value == t.in.Name.Value
	}) {
		p.Keeper, p.MadeNut = made.Out.Title, made.Part.Name.Value
	}
	nut := p.Keeper
	if ref := t.in.Slide.Plate; ref.Set() {
		j.plateKeeps(t, k, p, j.find(ref))
	}
	if p.Dragged {
		left := k.nut.Size.Thread.LeftHand
		t.problem(plan.SlideDragged, plan.Named(j.dragging(t, "the load on "+t.a.title())), plan.Named(words.Spaced(k.nut.Name)),
			plan.Named(words.Either(left, "left", "right")), plan.Named(words.When(left != j.drives(t), "counter-")+"clockwise"))
	}
	at := t.dir*math.Max(t.dir*hubEndMm, t.dir*end(k.nut, -t.dir)) + t.dir*p.PlateMm
	p.NutFromMm, p.NutDir = geom.Clean(at), t.dir
	if short := geom.Clean(t.dir*(end(k.nut, -t.dir)-at) + t.b.r.FullThreadMm(k.nut, back(-t.dir))); geom.Over(short, 0) {
		t.problem(plan.SlideNutShort, plan.Named(words.Spaced(k.nut.Name)), plan.Of(plan.Mm, short), plan.Named(t.a.title()))
	}
	t.nutRoom(k, p, nut, j.nutOf(p))
}

// selfLocking are words of a nut as ordered that say that it locks itself, by its kind or its standard (DIN 980, 982, 985; ISO
// 7040, 7042, 10511).
var selfLocking = regexp.MustCompile(`(?i)self[- ]?locking|prevailing|nyl|\b(?:98[025]|704[02]|10511)\b`)

// thinNut are words of a nut as ordered that say that it is a thin one, by its kind or its standard (DIN 439, 936; ISO 4035).
var thinNut = regexp.MustCompile(`(?i)\b(?:jam|thin|439|936|4035)\b`)

// thinNutShare is the height of a thin nut over the diameter of its thread. ISO 4035, rounded, from memory; an inch one is a little higher.
const thinNutShare = 0.5

// nutAs is what is known of the nut of a hub: that it is a thin one, and that it is to lock itself.
type nutAs struct{ thin, locks bool }

func (j *making) nutOf(p *plan.SlidePlan) nutAs {
	ordered := j.nutOrdered(p.Nut)
	return nutAs{p.MadeNut == "" && ordered != nil && thinNut.MatchString(ordered.Item.Value), j.locksItself(p)}
}

// locksItself tells whether the nut of a hub is to be one that locks itself where it needs that: one that is bought and of which
// the job does not order another.
func (j *making) locksItself(p *plan.SlidePlan) bool {
	ordered := j.nutOrdered(p.Nut)
	return p.MadeNut == "" && (ordered == nil || selfLocking.MatchString(ordered.Item.Value))
}

// nutRoom judges the thread beyond where a nut begins, for its height and, of one that is to lock itself, for that, and how much of it lies over an undercut.
func (t *joint) nutRoom(k keeper, p *plan.SlidePlan, name string, of nutAs) {
	at := p.NutFromMm
	left := geom.Clean(t.dir * (end(k.nut, t.dir) - at))
	b, high := cmp.Or(slideNut(t), t.unlistedNut()), 0.0
	if b != nil {
		high = words.Either(of.thin, thinNutShare*b.Thread.MajorMm, b.NutHeightMm)
	}
	if u := k.nut.Undercut; u != nil && b != nil && t.b.r.UndercutAtBack(k.nut) == back(-t.dir) {
		in := geom.Clean(min(left, high) - max(0, t.dir*(end(k.nut, -t.dir)-at)+u.WidthMm))
		if geom.Over(nutInShare*b.NutHeightMm, in) && !geom.Over(high, left) {
			t.problem(plan.SlideNutUndercut, plan.Named(words.Spaced(k.nut.Name)), plan.Named(name), plan.Of(plan.Mm, max(0, in)), plan.Of(plan.Mm, high))
		}
	}
	switch {
	case !geom.Over(left, 0):
		t.problem(plan.SlideNoThread, plan.Named(name), plan.Of(plan.Mm, geom.Clean(-left)))
	case b != nil && geom.Over(high, left):
		t.problem(plan.SlideNutRoom, plan.Of(plan.Mm, left), plan.Named(name), plan.Of(plan.Mm, high))
	case b != nil && p.Dragged && of.locks && geom.Over(lockingNutMm(b), left):
		t.problem(plan.SlideLockRoom, plan.Of(plan.Mm, left), plan.Named(name), plan.Of(plan.Mm, lockingNutMm(b)))
	}
}

// plateKeeps puts the plate under the nut of a hub in the plan, and judges its bore.
func (j *making) plateKeeps(t *joint, k keeper, p *plan.SlidePlan, plate feature) {
	p.Keeper, p.PlateMm = plate.title()+" under "+p.Keeper, geom.Clean(plate.step.LengthMm())
	bore := []plan.Arg{plan.Named(plate.text()), plan.Of(plan.Diameter, plate.step.Size.NominalMm), plan.Named(p.Nut)}
	if major := k.nut.Size.NominalMm; plate.step.Size.MinMm < major {
		t.problem(plan.SlidePlate, bore...)
	} else if b := cmp.Or(slideNut(t), t.unlistedNut()); b != nil && plate.step.Size.MaxMm > b.NutAcrossFlatsMm-nutBearsShare*major {
		t.problem(plan.SlideWide, bore...)
	}
}

// unlistedNut is a nut of a thread that no standard has hexagon nuts of, such as M25: 1.5 of its thread across flats, as those beside it are, and half
// of that thread high, as thin ones are.
// Common practice, no source. Nil where the thread is not known.
func (t *joint) unlistedNut() *bolts.Bolt {
	thread, err := threads.Parse(t.out.Slide.Nut)
	if err != nil || thread.MajorMm == 0 || threads.LockNut(thread) != "" { // which is no hexagon
		return nil
	}
	return &bolts.Bolt{Thread: thread, NutAcrossFlatsMm: 1.5 * thread.MajorMm, NutHeightMm: 0.5 * thread.MajorMm}
}

// lockingNutMm is the thread that fills a self-locking nut: as high as its thread is thick, a
// millimetre more to M4 and half of one at M18 (DIN 985:1987, M3 to M48, greatest heights as
// fasten.it prints them), its locking ring last, and two threads past it.
func lockingNutMm(b *bolts.Bolt) float64 {
	h := b.Thread.MajorMm
	switch {
	case h <= 4:
		h++
	case h == 18:
		h = 18.5
	}
	return h + 2*b.Thread.PitchMm
}

func (t *joint) slideFigures(p *plan.SlidePlan) {
	if p.Cone != 0 {
		t.figure("sits on", "a cone 1:"+words.Trim(p.Cone, 3)+", without play", "tapers as drawn")
	} else {
		t.playFigure(p, "")
	}
	if p.Key != "" {
		t.figure("key", p.Key+", "+t.w.Size(p.KeyOnMm)+" of it in the hub, "+t.w.Size(p.OverMm)+" or more over its top", "keyways as drawn")
	}
	if p.HeldBy != "" {
		t.figure("stands against", t.against(shoulderOf(p.HeldBy)), "by geometry")
	}
	text := ", " + t.w.Size(p.FreeMm) + " free along the shaft"
	if at := p.FreeAtMm; at != nil {
		text += ", inside the limits of the lengths " + t.w.Size(at.Min) + " to " + t.w.Size(at.Max)
	} else if p.FreeMm < 0 {
		text = ", which clamps it: it stands " + t.w.Size(-p.FreeMm) + " past its seat"
	}
	t.figure("kept by", p.Keeper+text, "lengths as drawn")
}

// spannerTight is why the nut of a hub has no torque.
const spannerTight = "spanner-tight: the job does not say what pushes the hub along, and no torque is worked out."

func (j *making) slideSteps(t *joint, p *plan.SlidePlan) {
	hub, shaft, to := t.a.title(), t.b.title(), "to its place"
	if p.HeldBy != "" {
		to = "against " + t.against(shoulderOf(p.HeldBy))
		t.out.Checks = append(t.out.Checks, plan.Check{
			What: "against the shoulder", Wanted: hub + " on " + t.against(p.HeldBy), Limits: "a " + t.w.Near(0.05) + " feeler does not enter", Gauge: "feeler",
			Source: lookup.NoSource,
		})
	}
	if p.Cone != 0 {
		to = "home on its cone"
		t.step("Blue the cone", "Wipe both cones clean and dry. A thin coat of marking blue on that of "+shaft+", "+hub+
			" on by hand, an eighth of a turn"+words.When(p.Key != "", " without its key")+", and off again.").Hold = "Blue over three quarters of the bore, all round, and at its large end."
		t.out.Checks = append(t.out.Checks, plan.Check{What: "on the cone", Wanted: hub + " does not rock", Limits: "bears over three quarters, blued", Gauge: "marking blue", Source: lookup.NoSource})
	}
	over := ""
	if p.Key != "" {
		over = ", its keyway over the key,"
		t.step("Key", "Deburr both keyways. Tap the key "+p.Key+" down to the floor of its keyway in "+shaft+".",
			"Try "+hub+" over it by hand before anything is greased."+t.easedKey()).Hold = "It slides by hand" + t.keyPlay() + "."
	}
	wipe := words.Either(p.Cone != 0, "Wipe the blue off both: a cone goes on clean and dry.", "Wipe seat and bore clean and grease them thinly.")
	t.step("Slide on", words.Either(t.gripped(), t.wipedDry(), wipe),
		"Bring "+hub+" from the "+p.From+" of "+shaft+", its "+faceName(t.leadDir())+" leading"+over+" and push it "+to+".")
	k := t.in.Slide.KeptBy
	switch {
	case p.PlateMm != 0:
		j.putIn(t, putNut)
		t.step("Keep", "Put "+p.Keeper+j.pinsIn(t)+" and tighten it against "+hub+", "+spannerTight, j.held(t))
	case p.Nut != "":
		j.putIn(t, putNut)
		t.step("Keep", words.Either(p.MadeNut == "", "Run the "+p.Keeper+" up and tighten it against "+hub+", "+spannerTight,
			"Run "+p.Keeper+" up and tighten it against "+hub+", spanner-tight where its own row says no torque: none is worked out."), j.held(t))
	case p.Ring:
		j.putIn(t, putNut)
		t.ringStep(p.Keeper, words.Spaced(k.Feature)).Hold = words.When(p.Key == "" && j.turnsOnPin(t), hub+" turns on "+shaft+" by hand, no tight place.")
	default:
		t.step("Keep", p.Keeper+" keeps it once it is bolted on: hold "+hub+" until then.")
	}
	last := &t.out.Steps[len(t.out.Steps)-1]
	if t.gripped() {
		j.clampStep(t, p)
	}
	nut := j.keeper(t).nut
	if nut != nil && nut.Size.Thread.LeftHand {
		last.Do = append(last.Do, "LEFT HAND: the nut goes on and tightens counter-clockwise.")
	}
	if p.Dragged {
		last.Do = append(last.Do, "The shaft turns "+words.When(nut.Size.Thread.LeftHand != j.drives(t), "counter-")+"clockwise seen from this nut, and "+
			j.dragging(t, words.Either(j.conveys(t), "what the flight moves", "the load on "+hub))+" drags it off: "+
			words.Either(j.locksItself(p), "take a self-locking one, and a new one each time it has been off.", "lock it."))
	}
	j.setScrews(t)
}

// turnSteps put a shaft into the bush that it turns in; pressed is the joint that has pressed the bush in, nil without one.
func (j *making) turnSteps(t *joint, p *plan.SlidePlan, pressed *joint) {
	p.From = ""
	as := ""
	if pressed != nil && pressed.out.Press != nil && pressed.out.Press.BoreClosesMm > 0 {
		closes := pressed.out.Press.BoreClosesMm
		p.PlayMm.Min, as = geom.Clean(p.PlayMm.Min-closes), "; the bore has closed by up to "+t.w.Said(closes)+" where it is not finished after pressing"
	}
	t.playFigure(p, as)
	var s *plan.JointStep
	if _, tied := j.side(t, j.before); tied {
		s = t.step("See that it turns", t.b.title()+" came into "+t.a.title()+" with an earlier step: oil the two where they show.")
	} else {
		wipe := []string{t.b.text(), t.a.text()}
		for _, o := range j.later(t) { // it goes through the other bushes that are there already
			if _, now := j.side(o, j.made(t)); now && o.turns() && o.b.Instance() == t.b.Instance() {
				wipe = seq.Add(wipe, o.b.text(), o.a.text())
			}
		}
		s = t.step("Slide in", "Wipe "+strings.Join(wipe[:len(wipe)-1], ", ")+" and "+wipe[len(wipe)-1]+" clean and oil them.",
			"Bring "+t.a.title()+" and "+t.b.title()+" together along their axis: nothing is driven.")
	}
	turned := t.b
	fast := seq.Keep(j.before, func(o *joint) bool { return !o.turns() }) // what holds the shaft, not what it turns in
	if j.anchored(t, j.members(t.b.Instance(), fast)) {
		turned = t.a
	}
	s.Hold = turned.title() + " turns by hand all round, with no tight place."
	j.bushKept(t)
	t.out.Checks = append(t.out.Checks, plan.Check{What: "turns by hand", Wanted: t.b.text() + " in " + t.a.text(), Limits: "all round, with no tight place", Gauge: "hand", Source: lookup.NoSource})
}

// feelerMm is the widest gap that the leaves of a feeler gauge measure. Common practice, no source.
const feelerMm = 1.0

// bushKept puts the retaining rings of a shaft beside the bush that it turns in, and has the play measured that they leave the two
// along where the shaft has its shoulder or another ring at the other end.
func (j *making) bushKept(t *joint) {
	wide := t.a.r.LengthMm()
	if bush, shaft := j.at(t.a.Instance()), j.at(t.b.Instance()); bush == nil || shaft == nil || bush.group != shaft.group {
		return // only the machine in space knows where they stand
	}
	on := j.stands(t).span(geom.Span{ToMm: wide})
	faces := map[float64]float64{-1: on.FromMm, 1: on.ToMm}
	long := plan.Range{Min: wide - lessMm(t.a.r, true, 0, wide), Max: wide + moreMm(t.a.r, true, 0, wide)}
	for _, dir := range []float64{-1, 1} {
		ring, ok := t.ringStop(t.b, dir, faces[dir], wide)
		if !ok {
			continue
		}
		t.ringKept(t.b, ring)
		other, is := t.ringStop(t.b, -dir, faces[-dir], wide)
		if at := (ballStop{mm: end(t.b.step, -dir), dir: -dir}); shoulder(t.b, -dir) != nil && at.beside(faces[-dir], wide) {
			other, is = at, true
			t.shouldered(t.b, -dir, t.a, j.stands(t).way(-dir))
		}
		if is && (other.ring == nil || back(dir)) {
			room := t.ringRoom(t.b, other, ring, long)
			limits := t.w.ReadLimits(room.Min, room.Max)
			t.figure("play along", limits, "lengths inside their limits")
			t.out.Checks = append(t.out.Checks, plan.Check{
				What: "play along", Wanted: t.b.title() + " in " + t.a.title(), Limits: limits, Gauge: words.Either(room.Max > feelerMm, "calipers", "feeler"),
				Source: lookup.NoSource,
			})
		}
	}
}

// held says what holds a shaft that turns in its bearings while a nut is tightened on it.
func (j *making) held(t *joint) string {
	bushes := func(o *joint) bool { return o.turns() && o.b.Instance() == t.b.Instance() }
	if bearingOn(j.before, t.b.Instance()) == nil && !slices.ContainsFunc(j.before, bushes) {
		return ""
	}
	by := "a strap"
	for i := range t.b.r.Keyways {
		on := t.b.r.Keyways[i].Row.In
		if on == t.b.ref.Feature {
			continue
		}
		by = "a strap wrench on its " + words.Spaced(on)
		hub := seq.First(ofKind(j.before, parts.SlideKind), func(o *joint) bool { return o.b.Instance() == t.b.Instance() && o.b.ref.Feature == on })
		if hub != nil {
			by = hub.a.title() + ", which is keyed to it"
		}
	}
	return "Hold " + t.b.title() + " by " + by + "."
}

// setScrews tightens the set screws of a hub on what they bear on, once it is in its place.
func (j *making) setScrews(t *joint) {
	var do []string
	for m := range seq.Refs(t.a.r.Radials) {
		if !setsLater(t, t.a, m) {
			continue
		}
		keyed := slices.ContainsFunc(t.a.r.Keyways, func(k part.Keyway) bool { return apart(k.Row.ClockDeg, m.Rows[0].ClockDeg) < alignDeg })
		do = append(do, fitted(m.In.Fitted, m.Size)+" into "+words.Spaced(m.In.Name.Value)+" of "+t.a.title()+", down on "+words.Either(keyed, "the key", t.b.title())+", tight.")
	}
	if len(do) > 0 {
		t.step("Set screws", do...)
	}
}

// pinsIn says where the dowel pins of the plate under the nut go: into the holes of their name
// in the hub; empty where it has none.
func (j *making) pinsIn(t *joint) string {
	plate := j.find(t.in.Slide.Plate).r
	for i, g := range plate.Part.Holes {
		holes := slices.ContainsFunc(t.a.r.Part.Holes, func(o parts.HoleGroup) bool { return o.Name.Value == g.Name.Value })
		if holes && g.Fitted.Value != "" {
			return ", its " + strconv.Itoa(plate.Groups[i].Group.Count) + " pins in their holes in " + t.a.title() + " and flat on it before the nut goes on,"
		}
	}
	return ""
}

// conveys tells whether a flight is on the hub.
func (j *making) conveys(t *joint) bool {
	return slices.ContainsFunc(j.members(t.a.Instance(), j.before), func(i parts.Instance) bool { return j.model(i.Part).Part.Flight != nil })
}

// draggedOff tells whether the drag on the nut of a hub turns it off: a right-hand thread on a shaft that turns clockwise
// seen from the nut, or a left-hand one on one that turns the other way, as the load holds the hub back. What the
// motor drives the shaft by goes before it, and drags the other way.
func (j *making) draggedOff(t *joint, left bool) bool {
	m := j.job.Motor
	if m == nil || m.Rotation == "either" || m.Drives.Part != t.b.ref.Part {
		return false
	}
	driven := j.find(m.Drives)
	if driven.step == nil {
		return false
	}
	atBack := driven.step.FromMm+driven.step.ToMm > driven.r.LengthMm()
	return m.TurnsClockwise() == (atBack == back(t.dir)) != left != j.drives(t)
}

// drives tells whether a hub sits on the seat by which the motor drives the shaft.
func (j *making) drives(t *joint) bool {
	m := j.job.Motor
	return m != nil && m.Drives.Part == t.b.ref.Part && m.Drives.Feature == t.b.ref.Feature
}

// dragging is what drags the nut of a hub off: the load on it, as that is called, or the hub that drives its shaft.
func (j *making) dragging(t *joint, load string) string {
	return words.Either(j.drives(t), t.a.title()+", which drives "+t.b.title()+",", load)
}

// traps finds whether the hub goes on end for end: with a plain bore whose
// keyway, if it has one, is open at both ends.
func (slideKind) traps(j *making, t *joint, moved []parts.Instance) {
	if t.unkept() {
		return
	}
	hub, shaft := t.keyways()
	_, inside := t.a.r.Sides()
	if hub == nil || shaft == nil {
		j.witness(t, moved)
		return
	}
	if len(inside) > 1 || !geom.Alike(hub.FromMm, t.a.step.FromMm) || !geom.Alike(hub.ToMm, t.a.step.ToMm) {
		return
	}
	at := j.at(t.b.Instance()).at
	m := placement{turn: geom.OnClock(2 * at.clock(shaft.ClockDeg)), s: -1}
	if out, breaks := j.outOfPlace(t, moved, m); len(out) > 0 {
		t.out.Traps = append(t.out.Traps, plan.Trap{TurnDeg: m.turn, OtherWay: true, Breaks: breaks, Out: out})
		t.out.Remedies = append(t.out.Remedies, "Mark the "+faceName(t.leadDir())+" of "+t.a.title()+": it goes on first, and the key lets it go on the other way round too.")
	}
}

func (slideKind) massKg(_ *shop, t *joint) float64 {
	if t.out.Slide.MadeNut != "" { // it weighs as the part that it is
		return 0
	}
	return nutKg(slideNut(t))
}
