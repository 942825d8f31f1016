package joint

import (
	"math"
	"regexp"
	"slices"
	"strings"

	"centrepop/layout/fits"
	"centrepop/layout/lookup"
	"centrepop/layout/part"
	"centrepop/layout/plan"
	"centrepop/layout/press"
	"centrepop/layout/threads"
	"centrepop/layout/words"
	"centrepop/parts"
	"centrepop/parts/geom"
	"centrepop/parts/seq"
)

// ringTolerance is the bore's or outside's lower deviation in µm of normal
// class metric tapered roller bearings, up to a diameter. ISO 492, normal
// tolerances for tapered roller bearings as a seller prints them (nodeshk.com,
// "Tapered roller bearings tolerances").
type ringTolerance struct {
	toMm, lowUm float64
}

var (
	coneBores = []ringTolerance{{18, -12}, {30, -12}, {50, -12}, {80, -15}, {120, -20}, {180, -25}, {250, -30}, {315, -35}}
	cupSizes  = []ringTolerance{{30, -12}, {50, -14}, {80, -16}, {120, -18}, {150, -20}, {180, -25}, {250, -30}, {315, -35}, {400, -40}}
)

// ballBores and ballSizes are the same of radial ball bearings of the normal class. ISO 492, as two makers print it.
var (
	ballBores = []ringTolerance{{10, -8}, {18, -8}, {30, -10}, {50, -12}, {80, -15}, {120, -20}, {180, -25}, {250, -30}}
	ballSizes = []ringTolerance{{18, -8}, {30, -9}, {50, -11}, {80, -13}, {120, -15}, {150, -18}, {180, -25}, {250, -30}, {315, -35}, {400, -40}}
)

// ringTables are the lower deviations of the rings of a bearing.
func ringTables(b *parts.BearingJoint) (bores, outsides []ringTolerance) {
	if b.Ball {
		return ballBores, ballSizes
	}
	return coneBores, cupSizes
}

func deviation(table []ringTolerance, mm float64) (um plan.Range, known bool) {
	r, known := seq.Find(table, func(r ringTolerance) bool { return mm <= r.toMm })
	return plan.Range{Min: r.lowUm}, known
}

// Inch tapered roller bearings of the usual classes have a bore of 0 to +13 µm
// up to 76.2 mm and an outside of 0 to +25 µm up to 304.8 mm, 0.0005 and 0.001 in
// (ABMA 19.2 classes 4 and 2, as a bearing maker's catalogue prints them in both units).
const (
	inchBoreIn, inchBoreToMm = 0.0005, 76.2
	inchCupIn, inchCupToMm   = 0.001, 304.8
)

// inchBearing tells the inch series of tapered bearings by a bore that is no whole millimetre.
func inchBearing(b *parts.BearingJoint) bool {
	return !b.Ball && (math.Abs(b.Bore.Mm-math.Round(b.Bore.Mm)) > 0.01 || math.Abs(b.Outside.Mm-math.Round(b.Outside.Mm)) > 0.01)
}

// advice is the classes a seat may have, and why.
type advice struct {
	classes []string
	why     string
}

// advised is the advice for a ring of bearings whose outer ring turns, or whose inner one does, under a load,
// any where it is empty, with a bore over and up to so much, mm.
type advised struct {
	outer          bool
	load           string
	overMm, upToMm float64
	advice
}

// coneSeats are the shaft classes for the inner ring, cupSeats the housing classes for the outer: the first row
// that fits. Bearing makers' table of fits on ISO 286 classes, roller column, as one's general catalogue prints it (
// "Fits of radial bearings with shafts", "with housings").
var (
	above, under40, under50 = math.Inf(1), lookup.Under(40), lookup.Under(50)
	coneSeats               = []advised{
		{true, "", 0, above, advice{[]string{"g6", "h6"}, "stationary inner ring: g6 if it must slide for adjustment, else h6"}},
		{false, "light", 0, under40, advice{[]string{"js6", "j6"}, "rotating inner ring, light load"}},
		{false, "light", 0, 140, advice{[]string{"k6"}, "rotating inner ring, light load"}},
		{false, "light", 140, 200, advice{[]string{"m6"}, "rotating inner ring, light load"}},
		{false, "heavy", under50, 140, advice{[]string{"n6"}, "rotating inner ring, heavy load"}},
		{false, "heavy", 140, 200, advice{[]string{"p6"}, "rotating inner ring, heavy load"}},
		{false, "heavy", 200, above, advice{[]string{"r6"}, "rotating inner ring, heavy load"}},
		{false, "", 0, under40, advice{[]string{"k5", "k6"}, "rotating inner ring, normal load"}},
		{false, "", 0, 100, advice{[]string{"m5", "m6", "k5", "k6"}, "rotating inner ring, normal load; k5 and k6 are allowed for single-row tapered roller bearings"}},
		{false, "", 0, 140, advice{[]string{"m6"}, "rotating inner ring, normal load"}},
		{false, "", 140, 200, advice{[]string{"n6"}, "rotating inner ring, normal load"}},
		{false, "", 200, above, advice{[]string{"p6"}, "rotating inner ring, normal load"}},
	}
	cupSeats = []advised{
		{true, "heavy", 0, above, advice{[]string{"P7"}, "rotating outer ring, heavy load or thin wall"}},
		{true, "light", 0, above, advice{[]string{"M7"}, "rotating outer ring, light load"}},
		{true, "", 0, above, advice{[]string{"N7"}, "rotating outer ring, normal load"}},
		{false, "", 0, above, advice{[]string{"H7", "H8", "G7", "J7", "JS7", "K7"},
			"stationary outer ring: H7 in one piece, H8 simple, G7 if heat comes through the shaft, J7, JS7 or K7 if the load's direction is not sure"}},
	}
)

// ballShafts are the classes for the inner ring of a ball bearing, ballHousings those for the outer: the ball column of
// that table, and for heavy loads, which it does not have there, those of normal ones.
var (
	under18    = lookup.Under(18)
	ballShafts = []advised{
		{true, "", 0, above, advice{[]string{"g6", "h6"}, "stationary inner ring: g6 if it must slide, else h6"}},
		{false, "light", 0, under18, advice{[]string{"js5", "h5"}, "rotating inner ring, light load"}},
		{false, "light", 0, 100, advice{[]string{"js6", "j6"}, "rotating inner ring, light load"}},
		{false, "light", 100, above, advice{[]string{"k6"}, "rotating inner ring, light load"}},
		{false, "", 0, under18, advice{[]string{"js5", "js6", "j5", "j6"}, "rotating inner ring, normal load"}},
		{false, "", 0, 100, advice{[]string{"k5", "k6"}, "rotating inner ring, normal load"}},
		{false, "", 0, 140, advice{[]string{"m5", "m6"}, "rotating inner ring, normal load"}},
		{false, "", 140, above, advice{[]string{"m6"}, "rotating inner ring, normal load"}},
	}
	ballHousings = []advised{
		{true, "light", 0, above, advice{[]string{"M7"}, "rotating outer ring, light load"}},
		{true, "", 0, above, advice{[]string{"N7"}, "rotating outer ring, normal or heavy load"}},
		{false, "", 0, above, cupSeats[len(cupSeats)-1].advice},
	}
)

// seatTables are the advice for both seats of a bearing.
func seatTables(b *parts.BearingJoint) (shafts, housings []advised) {
	if b.Ball {
		return ballShafts, ballHousings
	}
	return coneSeats, cupSeats
}

// seatOf is the advice of a table for a bearing.
func seatOf(table []advised, in *parts.BearingJoint) advice {
	return seq.First(table, func(r advised) bool {
		return r.outer == (in.Rotating == "outer") && (r.load == "" || r.load == in.Load) && in.Bore.Mm > r.overMm && in.Bore.Mm <= r.upToMm
	}).advice
}

// text is the advice in words.
func (a advice) text() string { return strings.Join(a.classes, ", ") + " (" + a.why + ")" }

// bearingKind is a tapered roller bearing on its shaft and in its housing.
type bearingKind struct{}

func (bearingKind) traps(*making, *joint, []parts.Instance) {} // it turns

func (bearingKind) ends(_ *shop, t *joint) {
	t.need(t.a, round(t.a, false), "the shaft step that takes the cone")
	t.need(t.b, round(t.b, true), "the bore that takes the cup")
}

func (bearingKind) title(t *joint) string {
	return "Bearing " + t.in.Bearing.Bearing.Value + ": " + t.a.title() + " in " + t.b.text()
}

func (bearingKind) buy(s *shop, t *joint, list *buying) {
	b := t.out.Bearing
	list.use(t, "Tapered roller bearing "+b.Bearing, 1, "cup and cone")
	if b.Adjusted && b.HeldBy != "" && s.nutMade(b.HeldBy) == nil && s.nutOrdered(b.HeldBy) == nil {
		list.use(t, "Nut "+b.HeldBy, 1, "with its lock")
	}
	own := func(e parts.Loose) bool { return e.As == parts.ASpacer && e.After.Value == b.SetBy }
	if b.SetBy != "" && !slices.ContainsFunc(s.job.Loose, own) {
		list.use(t, "Shim foil, an assortment", 1, "under the cover")
	}
}

// nutTitle names what runs on a thread.
func (s *shop) nutTitle(thread string) string {
	if made := s.nutMade(thread); made != nil {
		return made.Out.Title
	}
	return "the nut"
}

// nutOrdered is the loose thing that the job buys as the nut on a thread, by that or by the nut's name; nil if there is none.
func (s *shop) nutOrdered(thread string) *parts.Loose { return seq.At(s.job.Loose, isNut(thread)) }

// isNut tells the nuts that are bought for a thread.
func isNut(thread string) func(*parts.Loose) bool {
	plain := func(text string) string {
		return strings.NewReplacer(" ", "", "-", "", "×", "x").Replace(strings.ToLower(text))
	}
	named := regexp.QuoteMeta(plain(thread))
	if known, err := threads.Parse(thread); err == nil && threads.LockNut(known) != "" {
		named += "|" + plain(threads.LockNut(known))
	}
	on := regexp.MustCompile(`(?:^|\D)(?:` + named + `)(?:[^\dx.]|$)`)
	return func(e *parts.Loose) bool { return e.As == parts.ANut && on.MatchString(plain(e.Item.Value)) }
}

// lock says how the nut of a cone is locked: by the screw of a made one that is split, else by
// what it is bought with.
func (s *shop) lock(thread string) string {
	switch made := s.nutMade(thread); {
	case made == nil:
		return "Lock the nut by its lock: if no slot meets a tab inside these limits, change the washer or the nut, do not go past them"
	case made.Clamp != nil:
		return "Lock it by the clamp of " + made.Out.Title + ": " + made.Clamp.Tighten(s.w)
	default:
		return "Nothing on the sheet of " + made.Out.Title + " locks it: peg it, or jam it with a second nut"
	}
}

// goesOn begins the plan of a bearing; false, and the joint is refused, where a seat is of another size.
func (t *joint) goesOn() (*plan.BearingPlan, bool) {
	in := t.in.Bearing
	for i, ring := range []parts.Length{in.Bore, in.Outside} {
		of, kind := []feature{t.a, t.b}[i], []plan.ProblemKind{plan.BearingBore, plan.BearingOutside}[i]
		if seat := of.step.Size.NominalMm; math.Abs(seat-ring.Mm) > 0.5 {
			t.refuse(ring.Pos, kind, plan.Named(ring.Text), plan.Named(of.text()), plan.Of(plan.Diameter, seat))
			return nil, false
		}
	}
	t.out.Bearing = &plan.BearingPlan{Bearing: in.Bearing.Value, Rotating: in.Rotating, ConeClass: seatClass(t.w, t.a.step.Size), CupClass: seatClass(t.w, t.b.step.Size), Grease: in.Grease.Value,
		BoreMm: in.Bore.Mm, OutsideMm: in.Outside.Mm, WidthMm: in.Width.Mm, ConeWidthMm: in.ConeWidth.Mm, Ball: in.Ball, Sealed: in.Sealed()}
	return t.out.Bearing, true
}

// greaseGrams is what a bearing takes when it is greased anew, in g: 0.005 D B (bearing makers' rule for regreasing).
func greaseGrams(in *parts.BearingJoint) float64 {
	return words.Round(0.005*in.Outside.Mm*in.Width.Mm, 1)
}

// cupLoose notes the cup of an inch bearing that sits with play more often than not in a housing that stands, where a nut on the shaft
// sets the pair: only a cup that is moved to set it is let slide. A maker's fitting practice for inch bearings, stationary cup, from memory.
func (j *making) cupLoose(t *joint, p *plan.BearingPlan, m mounting) {
	nut, said := m.nut, slices.ContainsFunc(t.out.Problems, func(p plan.Problem) bool { return p.Kind == plan.SeatTightness || p.Kind == plan.BearingSize })
	if o, ok := t.partner(j.all).mount(); ok && nut == nil {
		nut = o.nut
	}
	if nut != nil && !said && inchBearing(t.in.Bearing) && t.in.Bearing.Rotating != "outer" && p.CupFitUm.Min+p.CupFitUm.Max < 0 {
		t.problem(plan.CupLoose, plan.Named(t.b.text()), plan.Of(plan.Mm, -p.CupFitUm.Min/1000), plan.Named(nut.Size.Thread.Designation))
	}
}

// A cone is heated to 110 °C, below the limit of every bearing, and slips on if
// 5 µm are then left. Common practice, no source.
const (
	coneHeatC  = 110.0
	coneSlipUm = 5.0
)

// heats puts in the plan how hot the cone or the inner ring slips on: 0 where it slides on cold, or not even hot.
func (*joint) heats(p *plan.BearingPlan) {
	hot := coneHeatC
	if p.Sealed {
		hot = press.SealedBearingC
	}
	if hi := p.ConeFitUm.Max; hi > 0 {
		if left := 1000*steelPerK*p.BoreMm*(hot-roomC) - hi; left >= coneSlipUm {
			p.HeatConeC, p.HeatLeftUm = hot, words.Round(left, 0)
		}
	}
}

// endFloat is the end float to set at a bearing: of a pair at the second, when both are on,
// at whichever of them the job says it; nil where there is none to set.
func (j *making) endFloat(t *joint) []parts.Length {
	own, o := t.in.Bearing.EndFloat, t.partner(j.all)
	switch {
	case o == nil, slices.Contains(j.before, o) && len(own) == 2:
		return own
	case slices.Contains(j.before, o):
		return o.in.Bearing.EndFloat
	}
	return nil
}

// steelPerK is the expansion of bearing steel, 1/K (bearing catalogues, from
// memory).
const steelPerK = 12e-6

func seatClass(w words.Writer, s part.Sized) string {
	switch {
	case !s.Fitted():
		return "no limits"
	case s.ByLimits() || s.Class == "":
		return w.Limits(s.MinMm, s.MaxMm)
	}
	return s.Class
}

// seats compares the drawn seats with the advice.
func (t *joint) seats(p *plan.BearingPlan) {
	in := t.in.Bearing
	shafts, housings := seatTables(in)
	cone, cup, inch := seatOf(shafts, in), seatOf(housings, in), inchBearing(in)
	p.ConeAdvice, p.CupAdvice = cone.text(), cup.text()
	if inch {
		p.ConeAdvice = "inch series: limits from the bearing maker's table"
		p.CupAdvice = p.ConeAdvice
	}
	known := t.fits(p)
	t.seat(t.a, in.Bore.Mm, inch, cone)
	t.seat(t.b, in.Outside.Mm, inch, cup)
	inner, outer := p.Names()
	t.figure(inner+" seat", p.ConeClass+"; advised "+p.ConeAdvice, "bearing fit table on ISO 286 classes")
	t.figure(outer+" seat", p.CupClass+"; advised "+p.CupAdvice, "bearing fit table on ISO 286 classes")
	source := words.Either(inch, "ABMA 19.2 classes 4 and 2", "ISO 492 normal class")
	if known {
		t.figure(inner+" on shaft", t.w.Fine(p.ConeFitUm.Min, p.ConeFitUm.Max)+" interference", source)
		t.figure(outer+" in housing", t.w.Fine(p.CupFitUm.Min, p.CupFitUm.Max)+" interference", source)
	}
}

// fits puts how tight the rings are on their seats in the plan; known is false where no
// table of rings goes so far.
func (t *joint) fits(p *plan.BearingPlan) (known bool) {
	in, cone, cup := t.in.Bearing, t.a.step.Size, t.b.step.Size
	um := func(mm float64) float64 { return mm * 1000 }
	bores, outsides := ringTables(in)
	bore, knownBore := deviation(bores, in.Bore.Mm)
	outside, knownCup := deviation(outsides, in.Outside.Mm)
	known = knownBore && knownCup
	if inchBearing(in) {
		bore, outside = plan.Range{Max: um(inchBoreIn * words.MmPerInch)}, plan.Range{Max: um(inchCupIn * words.MmPerInch)}
		known = in.Bore.Mm <= inchBoreToMm && in.Outside.Mm <= inchCupToMm
	}
	if cone.Fitted() && known {
		p.ConeFitUm = plan.Range{Min: geom.Clean(um(cone.MinMm-in.Bore.Mm) - bore.Max), Max: geom.Clean(um(cone.MaxMm-in.Bore.Mm) - bore.Min)}
	}
	if cup.Fitted() && known {
		p.CupFitUm = plan.Range{Min: geom.Clean(um(in.Outside.Mm-cup.MaxMm) + outside.Min), Max: geom.Clean(um(in.Outside.Mm-cup.MinMm) + outside.Max)}
	}
	return known
}

// An inch seat is this much tighter or looser than the ring at the most, as a
// share of the diameter. Common practice, no source: makers' tables stay inside.
const (
	inchTightest = 0.0015
	inchLoosest  = 0.0010
)

// seat judges one seat against the ring of the bearing and the advice.
func (t *joint) seat(f feature, ringMm float64, inch bool, a advice) {
	size := f.step.Size
	classes := plan.Named(strings.Join(a.classes, ", "))
	if off := math.Abs(size.NominalMm - ringMm); off > 0.01 {
		t.problem(plan.BearingSize, plan.Of(plan.Diameter, ringMm), plan.Named(f.text()), plan.Of(plan.Diameter, size.NominalMm))
		return
	}
	if sure := max(size.MinMm-ringMm, ringMm-size.MaxMm); size.Fitted() && sure > otherShare*ringMm {
		t.problem(plan.BearingSize, plan.Of(plan.Diameter, ringMm), plan.Named(f.text()), plan.Of(plan.Diameter, (size.MinMm+size.MaxMm)/2))
		return
	}
	tight, loose := size.MaxMm-ringMm, ringMm-size.MinMm
	if f.step.Inside {
		tight, loose = loose, tight
	}
	switch {
	case !size.Fitted():
		t.problem(plan.SeatWithoutFit, plan.Named(f.text()), classes, plan.Named(a.why))
	case inch:
		if tight > inchTightest*ringMm || loose > inchLoosest*ringMm {
			t.problem(plan.SeatTightness, plan.Named(f.text()), plan.Of(plan.Mm, size.MinMm), plan.Of(plan.Mm, size.MaxMm), plan.Of(plan.Mm, math.Max(tight, loose)), plan.Of(plan.Diameter, ringMm))
		}
	case size.ByLimits():
		if lo, hi, ok := envelope(ringMm, a.classes); ok && (geom.Over(lo, size.MinMm) || geom.Over(size.MaxMm, hi)) {
			t.problem(plan.SeatLimits, plan.Named(f.text()), plan.Of(plan.Mm, size.MinMm), plan.Of(plan.Mm, size.MaxMm), classes, plan.Of(plan.Mm, lo), plan.Of(plan.Mm, hi))
		}
	case !slices.Contains(a.classes, size.Class):
		t.problem(plan.SeatNotAdvised, plan.Named(f.text()), plan.Named(size.Class), classes, plan.Named(a.why))
	}
}

// otherShare is how far off its ring, as a share of the diameter, limits are of
// another size and no fit. Common practice, no source: the tightest fits of ISO 286-1
// for rings of this size, r and s, stay below half of it.
const otherShare = 0.002

// envelope is the least and the greatest limit of several classes.
func envelope(mm float64, classes []string) (loMm, hiMm float64, ok bool) {
	loMm, hiMm = math.Inf(1), math.Inf(-1)
	for _, c := range classes {
		l, err := fits.Limit(mm, c)
		if err != nil {
			continue
		}
		loMm, hiMm, ok = math.Min(loMm, l.MinMm), math.Max(hiMm, l.MaxMm), true
	}
	return loMm, hiMm, ok
}

// greaseText says when and where a bearing is greased: by hand while its rollers are open, which
// an adjusted cone's are before it goes into its cup; one that goes on hot would burn it, and gets
// it through its large end, which still looks out, when it is cold.
func greaseText(p *plan.BearingPlan) string {
	if p.Ball {
		return words.Join(": ", "Work grease in between balls and cage by hand", p.Grease) + "."
	}
	text := "Work grease in between rollers and cage by hand until all room there is full"
	if p.Adjusted && p.HeatConeC != 0 {
		text = "When the cone is cold, work grease in by hand between rollers and cage from its large end, turning the shaft, until it comes out at the small end"
	} else if p.Adjusted {
		text += ", before the cone goes on"
	}
	return words.Join(": ", text, p.Grease) + "."
}

// greasePorts are the ports of a housing, each with the holes and slots into the same length of its
// bore that stay open: what is pumped in leaves by them unless they are shut meanwhile.
func (j *making) greasePorts(f feature) (out []string) {
	for _, m := range f.r.Radials {
		if m.In.For != parts.Grease {
			continue
		}
		for _, port := range m.Rows {
			text := words.Spaced(m.In.Name.Value) + " of " + f.title() + " at " + words.Angle(port.ClockDeg) + ", " + j.w.Size(port.AxialMm) + " from its front"
			for _, o := range f.r.Radials {
				clocks := seq.Map(seq.Keep(o.Rows, func(r plan.RadialRow) bool {
					return o.In.Through && o.Size.Thread == nil && r.Name != port.Name && math.Abs(r.AxialMm-port.AxialMm) < (max(r.AlongMm, r.DiameterMm)+port.DiameterMm)/2
				}), func(r plan.RadialRow) string { return words.Angle(r.ClockDeg) })
				if len(clocks) > 0 {
					text += ", " + words.Spaced(o.In.Name.Value) + " at " + strings.Join(clocks, ", ") + " plugged with a rag meanwhile, open again after"
				}
			}
			out = append(out, text)
		}
	}
	return out
}

// asMeasured has it measured that a ring stands on the shoulder of its housing, which no feeler shows, for the ring covers the
// gap: by how deep both lie from the face that it comes from. Before it goes in something is measured, after that the rest.
func (t *joint) asMeasured(ring string, m mounting) (before, hold string) {
	face := "the " + faceName(-m.cupDir) + " of " + t.b.title()
	return "First measure how deep the shoulder lies from " + face + ", and how wide " + ring + " is.",
		"Depth micrometer from " + face + " to " + ring + ", four places round: " + t.asDeep() + "."
}

func (t *joint) asDeep() string { return "that depth less that width, within " + t.w.Near(0.05) }
