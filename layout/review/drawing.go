package review

import (
	"cmp"
	"errors"
	"math"
	"slices"
	"strings"

	"centrepop/layout/material"
	"centrepop/layout/words"
	"centrepop/parts"
	"centrepop/parts/geom"
	"centrepop/parts/seq"
)

// unknownMaterial looks for parts that name no material, or one that the table
// does not know.
func unknownMaterial(v *view) {
	const rule = "mass, speeds, thread depth and welding depend on it"
	if name := v.p.Material.Value; name != "" {
		var unknown *material.UnknownError
		m, err := material.Find(name)
		if err == nil && m.Kind == material.GreyIron && v.p.Clamp != nil {
			v.report(Check, "", v.p.Material.Pos, Finding{
				What: v.p.Title.Value + " is split, and " + m.Name + " breaks as its screw closes it", Rule: "a split ring bends a little each time", Fix: "steel, or bronze",
			})
		}
		if err != nil && v.q.Knifed {
			return // of soft sheet nothing but the mass depends on it
		}
		if n, ok := material.FindNonmetal(name); err != nil && ok {
			v.report(Check, "", v.p.Material.Pos, Finding{
				What: v.p.Title.Value + " is of " + name + ", a " + n.Kind + ", of which no strength" + words.Either(n.DensityKgM3 == 0, ", density or speed is", " and no speed are") + " kept",
				Rule: rule, Fix: "work it by what its maker says, and accept it",
			})
		} else if errors.As(err, &unknown) {
			v.report(Check, "", v.p.Material.Pos, Finding{
				What: v.p.Title.Value + " is of " + name + ", for which there are no data", Numbers: "nearest names: " + strings.Join(unknown.Nearest, ", "),
				Rule: rule, Fix: "write the grade as its standard does, or work the part out by hand",
			})
		}
		return
	}
	v.report(Check, "", v.p.Name.Pos, Finding{
		What: v.p.Title.Value + " has no material",
		Rule: rule, Fix: "add material: S235, or what it is made of",
	})
}

// hardGasket looks for a gasket of steel or cast iron, which does not give way to the faces that it is to seal; a shim may be.
func (v *view) hardGasket() {
	m, err := material.Find(v.p.Material.Value)
	if v.p.For != parts.Gasket || err != nil || !m.Kind.Ferrous() || parts.ItemUse(v.p.Title.Value, "") == parts.ASpacer {
		return
	}
	v.report(Check, "", v.p.Material.Pos, Finding{
		What: v.p.Title.Value + " is a gasket of " + m.Kind.Data().Name, Numbers: v.p.Material.Value, Rule: "a gasket is softer than the faces that it seals",
		Fix: "rubber, fibre or paper, soft copper where it is hot, or a title that calls it a shim",
	})
}

// stock looks for parts that do not say what they are made from.
func stock(v *view) {
	if v.p.Kind == parts.BarPart {
		return // its section says it
	}
	if v.p.Stock.Form != "" {
		v.formOfMetal()
		v.thinPlate()
		v.rolledTube()
		return
	}
	form := "plate: " + v.mm(v.lengthMm) + ", cut: laser"
	switch wide := v.wideMm(); {
	case v.p.Formed() != nil:
		form = "sheet: " + v.mm(v.p.Formed().Thickness.Mm) + ", cut: laser"
	case v.p.Flight != nil:
		form = "plate: " + v.mm(v.p.Flight.Thickness.Mm) + ", cut: laser"
	case v.p.Kind == parts.Tube:
		form = "tube: " + v.mm(2*wide) + ", wall: " + v.mm(wide-v.openMm()) + ", cut: saw"
	case v.turned():
		form = "round: " + v.mm(2*wide) + ", cut: saw"
	}
	v.report(Check, "", v.p.Name.Pos, Finding{
		What: v.p.Title.Value + " does not say what stock it is made from",
		Rule: "the stock list and the first operation need it", Fix: "add stock: {" + form + "}, or what it is made from",
	})
}

// formOfMetal finds stock in a form that its metal is not made in.
func (v *view) formOfMetal() {
	m, err := material.Find(v.p.Material.Value)
	if err != nil {
		return
	}
	form, cast := v.p.Stock.Form, m.Kind == material.GreyIron || m.Kind == material.DuctileIron
	pourable := cast || m.Kind == material.TinBronze || m.Kind == material.OtherBronze || m.Kind == material.AluminiumAlloy && !strings.HasPrefix(m.Name, "EN AW")
	var what string
	switch {
	case form == "casting" && !pourable:
		what = m.Name + " is rolled or drawn, and no casting is made of it"
	case cast && (form == "plate" || form == "sheet" || form == "flat"):
		what = m.Name + " is cast, and not rolled to " + form
	default:
		return
	}
	v.report(Check, "", v.p.Stock.Pos, Finding{What: what, Rule: "the stock can be bought", Source: practice, Fix: "a grade that is made in this form, or another form"})
}

// thinPlate finds plate that is rolled as sheet, or not at all: a slip of the unit.
func (v *view) thinPlate() {
	const leastMm = 3
	if s := &v.p.Stock; s.Form == "plate" {
		v.atLeast("", s.Pos, s.Size.Mm, leastMm, Finding{
			What: "the plate is thinner than plate is rolled",
			Rule: "hot-rolled plate begins at " + v.mm(leastMm), Source: "scope of EN 10029", Fix: "sheet instead of plate, or the right unit",
		})
	}
}

// rolledTube finds a tube with a profile whose stock is flat: its operations saw and turn a tube, and the stock list
// would order its outside square.
func (v *view) rolledTube() {
	s := &v.p.Stock
	if !v.p.BoughtTube() || !s.ByArea() || !geom.Over(v.lengthMm, s.Size.Mm) {
		return
	}
	v.report(Stop, "", s.Pos, Finding{
		What: v.p.Title.Value + " is a turned tube, and its stock is " + s.Form + " of " + v.mm(s.Size.Mm) + ": nobody turns what is rolled",
		Rule: "a part is cut from stock that it lies in", Source: "by geometry",
		Fix: "stock: {tube: " + v.mm(2*v.wideMm()) + ", wall: " + v.mm(v.wideMm()-v.openMm()) + "}, or in place of its profile the key tube, which is rolled from sheet",
	})
}

// top looks for parts that can be put on in a wrong turn without a mark for TOP:
// a round part whose holes do not repeat at all, and any part that some of its
// patterns let lie in a turn in which the others are out of place. A turn that
// the outline shows is no danger.
func top(v *view) {
	if v.p.Top.Value != "" || v.p.Kind == parts.Cone {
		return
	}
	sets := v.patterns()
	if len(sets) == 0 {
		return
	}
	common, wrong := rightTurns(sets)
	wrong = slices.DeleteFunc(wrong, func(turn float64) bool { return !v.outlineTurns(turn) })
	lone := len(v.outside) > 0 && len(common) == 1 && len(sets[0].places) > 1
	if len(wrong) == 0 && !lone {
		return
	}
	numbers := "its holes come together again in no other turn"
	if len(wrong) > 0 {
		list := seq.Map(wrong, func(t float64) string { return number(t) + "°" })
		numbers = "turned by " + few(list) + " some of its holes match and others do not"
	}
	v.report(Check, "", v.p.Name.Pos, Finding{
		What: v.p.Title.Value + " does not say how TOP is marked, and can be put on turned", Numbers: numbers,
		Rule: "a pattern that does not repeat all round needs TOP on the part", Fix: "add top: punch, or scribe, notch, paint or keyway",
	})
}

// rightTurns lists the turns that bring all patterns together again, and those
// that do so for some but not all; both rising, in degrees, 0 among the first.
func rightTurns(sets []*pattern) (common, wrong []float64) {
	orders := make([]int, len(sets))
	all := 0
	for i, s := range sets {
		orders[i] = s.order()
		all = geom.Common(all, orders[i])
	}
	seen := map[[2]int]bool{} // turns as reduced parts of a full one
	for _, n := range orders {
		for i := range n {
			g := geom.Common(i, n)
			if seen[[2]int{i / g, n / g}] {
				continue
			}
			seen[[2]int{i / g, n / g}] = true
			turn := math.Round(360e6*float64(i)/float64(n)) / 1e6
			if all%(n/g) == 0 {
				common = append(common, turn)
			} else {
				wrong = append(wrong, turn)
			}
		}
	}
	slices.Sort(common)
	slices.Sort(wrong)
	return common, wrong
}

// outlineTurns tells whether a part looks the same from outside in a turn.
func (v *view) outlineTurns(turn float64) bool {
	step := 360.0 // of a shape that repeats in no turn
	switch o := v.p.Outline; {
	case o == nil || o.Shape == parts.CircleOutline:
		return true
	case o.Shape == parts.SquareOutline:
		step = 90
	case o.Shape == parts.RectangleOutline || o.Shape == parts.SlotOutline:
		step = 180
	case o.Sides > 0:
		step = 360 / float64(o.Sides)
	}
	off := math.Mod(turn, step)
	return !geom.Some(off) || !geom.Some(step-off)
}

// pattern is the places of one group, as clock angles with what else places
// them.
type pattern struct{ places []place }

type place struct{ deg, radiusMm, zMm float64 }

// patterns lists the groups of holes and openings off the axis.
func (v *view) patterns() []*pattern {
	var out []*pattern
	byName := map[string]*pattern{}
	add := func(name string, at place) {
		if byName[name] == nil {
			byName[name] = &pattern{}
			out = append(out, byName[name])
		}
		byName[name].places = append(byName[name].places, at)
	}
	for h := range seq.Refs(v.holes) {
		if r := h.centreMm(); geom.Some(r) {
			add(h.name, place{geom.ClockDeg(h.middle()), r, 0})
		}
	}
	for _, o := range v.openings() {
		add(o.radial.Name.Value, place{o.clockDeg, o.outerMm, o.zMm})
	}
	return out
}

// placeSlackMm is how far off two places may be and count as one.
const placeSlackMm = 0.01

// order is the largest number n such that a turn by a n-th of a full one
// brings every place of the pattern onto one of it: 1 if it does not repeat.
// The turns that do so are a group, so that they are the multiples of this one.
// It must divide the number of places on every ring.
func (p *pattern) order() int {
	rings := p.rings()
	most := 0
	for _, ring := range rings {
		most = geom.Common(most, len(ring))
	}
	for n := most; n > 1; n-- {
		if most%n == 0 && !slices.ContainsFunc(rings, func(ring []place) bool { return !repeats(ring, n) }) {
			return n
		}
	}
	return 1
}

// rings parts the places by radius and height; each ring is sorted by clock
// angle, and places that coincide are one.
func (p *pattern) rings() [][]place {
	places := slices.Clone(p.places)
	for i := range places {
		places[i].deg = math.Mod(math.Mod(places[i].deg, 360)+360, 360)
	}
	var rings [][]place
	for _, equal := range runs(places, func(a place) float64 { return a.radiusMm }) {
		for _, ring := range runs(equal, func(a place) float64 { return a.zMm }) {
			slices.SortFunc(ring, func(a, b place) int { return cmp.Compare(a.deg, b.deg) })
			ring = slices.CompactFunc(ring, func(a, b place) bool { return onOne(a.deg-b.deg, a.radiusMm) })
			if last := len(ring) - 1; last > 0 && onOne(ring[0].deg+360-ring[last].deg, ring[0].radiusMm) {
				ring = ring[:last]
			}
			rings = append(rings, ring)
		}
	}
	return rings
}

// runs sorts the places by a length and parts them where it jumps.
func runs(places []place, by func(place) float64) [][]place {
	slices.SortStableFunc(places, func(a, b place) int { return cmp.Compare(by(a), by(b)) })
	var out [][]place
	for from, i := 0, 1; i <= len(places); i++ {
		if i == len(places) || by(places[i])-by(places[i-1]) >= placeSlackMm {
			out = append(out, places[from:i])
			from = i
		}
	}
	return out
}

// repeats tells whether a n-th of a turn brings a sorted ring onto itself.
func repeats(ring []place, n int) bool {
	step := len(ring) / n
	for i, a := range ring {
		b := ring[(i+step)%len(ring)].deg
		if i+step >= len(ring) {
			b += 360
		}
		if !onOne(b-a.deg-360/float64(n), a.radiusMm) {
			return false
		}
	}
	return true
}

// onOne tells whether an angle is no distance on a radius.
func onOne(deg, radiusMm float64) bool { return math.Abs(deg)*math.Pi/180*radiusMm < placeSlackMm }

// tolerance looks for a job without a general tolerance class.
func tolerance(r *reviewer) {
	if r.job.Tolerance.Value == "v" && len(r.job.Of(parts.BearingKind)) > 0 {
		r.add(Finding{
			Pos: r.job.Tolerance.Pos, What: "the general tolerance is the coarsest there is, on a machine with bearings", Numbers: "class v",
			Rule: "lengths between bearings are held by class m or finer", Fix: "tolerance: m",
		})
	}
	if r.job.Tolerance.Value != "" {
		return
	}
	r.add(Finding{
		Pos: parts.Pos{File: r.job.File, Line: 1, Column: 1}, What: "the job names no general tolerance class, so sizes without a fit have no limits",
		Rule: "a class f, m, c or v limits every size that has no limits of its own", Source: "ISO 2768-1:1989", Fix: "add tolerance: m to the job",
	})
}
