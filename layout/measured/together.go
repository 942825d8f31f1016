package measured

import (
	"cmp"
	"fmt"
	"math"
	"slices"
)

// DrawnHole is a clearance hole of the part that goes onto the flange. Places
// are as seen looking at the flange's face, from the centre of the bore.
type DrawnHole struct {
	N        int
	XMm, YMm float64
	MinMm    float64 // smallest diameter it may have
}

// Drawn is the part that is to go onto the flange.
type Drawn struct {
	Holes []DrawnHole
	// BoltMm is the largest diameter of the bolt's shank.
	BoltMm float64
	// Tapped tells that the bolt screws into the flange, so that only the
	// drawn hole gives play (a fixed fastener); otherwise both do (floating).
	Tapped bool
	// PlaceMm is how far a hole may be made from where it is drawn.
	PlaceMm float64
	// BoreMinMm and BoreMaxMm are the limits of the bore for the spigot; 0 if
	// there is none, and then the part may be shifted freely.
	BoreMinMm, BoreMaxMm float64
}

// Pair is a hole of the flange with the drawn hole that lies on it, when the
// part is put on as well as the spigot allows. Margin is what is left of the
// play in the worst case; the bolt does not go in where it is negative.
type Pair struct {
	Flange      int     `json:"flange_hole"`
	Drawn       int     `json:"drawn_hole"`
	OffMm       float64 `json:"off_mm"`       // centres apart, as measured and drawn
	DoubtMm     float64 `json:"doubt_mm"`     // measuring uncertainty (coverage factor 2) and making of the drawn hole
	PlayMm      float64 `json:"play_mm"`      // how far apart the bolt lets the centres be
	MarginMm    float64 `json:"margin_mm"`    // play − off − doubt
	NeedsMm     float64 `json:"needs_mm"`     // smallest drawn diameter with which this pair goes together; 0 if the flange's own hole may be too small
	DrawnMm     float64 `json:"drawn_min_mm"` // smallest diameter as drawn
	FlangeMinMm float64 `json:"flange_min_mm"`
}

// What can be said of a spigot in its bore.
const (
	SpigotClears    Code = "clears"    // it enters in the worst case
	SpigotUndecided Code = "undecided" // it may be tight or loose: a caliper cannot decide
	SpigotTight     Code = "tight"     // it is larger than the largest bore
)

// Mating is the answer to: does it go together?
type Mating struct {
	Goes     bool    `json:"goes_together"` // the bolts pass in the worst case, and the spigot is not surely tight
	MarginMm float64 `json:"margin_mm"`     // of the tightest pair
	Pairs    []Pair  `json:"pairs"`
	TurnDeg  float64 `json:"turn_deg"` // flange turned clockwise from its entered angles
	Mirrored bool    `json:"mirrored"`
	// Spigot says whether it enters its bore, empty if either is not there.
	// The clearances are diametral, the least and the most that they may be;
	// negative where it is tight.
	Spigot        Code    `json:"spigot,omitempty"`
	ClearanceMm   float64 `json:"spigot_clearance_mm"`
	ClearanceToMm float64 `json:"spigot_clearance_to_mm"`
	// Concentric tells that the spigot was taken to be in the centre of the
	// pitch circle, since no reading says where it is.
	Concentric bool `json:"spigot_taken_as_centred"`
}

// The largest values that Together takes, in mm.
const largestPlaceMm = 100.0

// Together puts the drawn part onto the measured flange: it turns and shifts
// it within the spigot's least clearance to where the tightest bolt has the
// most room, and takes every uncertainty against it. It refuses a part with
// another number of holes, and values outside their range.
func (r *Result) Together(d Drawn) (*Mating, error) {
	if err := r.checkDrawn(d); err != nil {
		return nil, err
	}
	out := &Mating{}
	shift := 0.0 // how far the part may move off centre
	for i, h := range d.Holes {
		shift = math.Max(shift, r.play(d, i, h.MinMm))
	}
	if d.BoreMinMm > 0 && r.SpigotMm > 0 {
		out.enter(r, d)
		shift = math.Max(out.ClearanceMm/2, 0)
	}
	set, mirrored := r.best(d)
	out.Mirrored = mirrored
	turn, x, y := set.improve(shift)
	out.TurnDeg = math.Remainder((set.turn+turn)*180/math.Pi, 360)
	out.MarginMm = math.Inf(1)
	for i := range r.Holes {
		p := r.pair(d, set, i, set.off(i, turn, x, y))
		out.MarginMm = math.Min(out.MarginMm, p.MarginMm)
		out.Pairs = append(out.Pairs, p)
	}
	out.Goes = out.MarginMm >= 0 && out.Spigot != SpigotTight
	return out, nil
}

func (r *Result) checkDrawn(d Drawn) error {
	if n := len(r.Holes); len(d.Holes) != n {
		return fmt.Errorf("measured: the flange has %d holes and the part %d", n, len(d.Holes))
	}
	if !usable(d.BoltMm) || !(d.PlaceMm >= 0 && d.PlaceMm <= largestPlaceMm) || !(d.BoreMinMm >= 0 && d.BoreMinMm <= d.BoreMaxMm && d.BoreMaxMm <= largestMm) {
		return fmt.Errorf("measured: bolt %v, place ±%v, bore %v to %v: out of range", d.BoltMm, d.PlaceMm, d.BoreMinMm, d.BoreMaxMm)
	}
	for _, h := range d.Holes {
		if !usable(h.MinMm) || !(math.Abs(h.XMm) <= largestMm) || !(math.Abs(h.YMm) <= largestMm) || h.XMm == 0 && h.YMm == 0 {
			return fmt.Errorf("measured: drawn hole %d at %v, %v with Ø%v is out of range", h.N, h.XMm, h.YMm, h.MinMm)
		}
	}
	return nil
}

// enter judges the spigot in the bore.
func (m *Mating) enter(r *Result, d Drawn) {
	u := CoverageFactor * r.SpigotUMm
	m.ClearanceMm, m.ClearanceToMm = d.BoreMinMm-r.SpigotMm-u, d.BoreMaxMm-r.SpigotMm+u
	m.Concentric = r.Centred == nil
	switch {
	case m.ClearanceMm >= 0:
		m.Spigot = SpigotClears
	case m.ClearanceToMm < 0:
		m.Spigot = SpigotTight
	default:
		m.Spigot = SpigotUndecided
	}
}

// best finds which drawn hole lies on which hole of the flange, and the hand: turned over
// where that goes better, the flange goes against the other face than the drawn one.
func (r *Result) best(d Drawn) (set placing, mirrored bool) {
	best := math.Inf(-1)
	for _, hand := range []bool{false, true} {
		drawn := clockwise(d.Holes, hand)
		for step := range drawn {
			p := r.place(d, slices.Concat(drawn[step:], drawn[:step]))
			// The drawn hand and the smaller turn are kept unless another is
			// really better.
			m := p.margin(0, 0, 0)
			if m > best+1e-6 || m > best-1e-6 && math.Abs(p.turn) < math.Abs(set.turn)-1e-9 && mirrored == hand {
				best, set, mirrored = math.Max(m, best), p, hand
			}
		}
	}
	return set, mirrored
}

// pair is hole i of the flange with what is drawn on it, off apart.
func (r *Result) pair(d Drawn, set placing, i int, off float64) Pair {
	drawn := set.drawn[i]
	p := Pair{
		Flange: i + 1, Drawn: drawn.N, OffMm: off, DoubtMm: set.doubt[i], PlayMm: set.play[i],
		MarginMm: set.play[i] - off - set.doubt[i], DrawnMm: drawn.MinMm, FlangeMinMm: r.holeMin(i),
	}
	p.NeedsMm = math.Max(p.DrawnMm-2*p.MarginMm, d.BoltMm)
	// Play in one hole does not help a bolt that cannot enter the other.
	if room := (p.DrawnMm - d.BoltMm) / 2; room < 0 {
		p.MarginMm = math.Min(p.MarginMm, room)
	}
	if room := (p.FlangeMinMm - d.BoltMm) / 2; !d.Tapped && room < 0 {
		p.MarginMm, p.NeedsMm = math.Min(p.MarginMm, room), 0
	}
	return p
}

func (r *Result) holeMin(i int) float64 {
	return r.Holes[i].DiameterMm - CoverageFactor*r.Holes[i].DiaUMm
}

// play is how far apart the centres of a pair may be for the bolt to pass:
// half of what both holes are larger than the bolt, or of the drawn one alone
// when the other is tapped.
func (r *Result) play(d Drawn, i int, drawnMm float64) float64 {
	if d.Tapped {
		return (drawnMm - d.BoltMm) / 2
	}
	return (drawnMm-d.BoltMm)/2 + (r.holeMin(i)-d.BoltMm)/2
}

// clockwise sorts holes by their clock angle, mirrored in x first if asked.
func clockwise(holes []DrawnHole, mirrored bool) []DrawnHole {
	out := slices.Clone(holes)
	for i := range out {
		if mirrored {
			out[i].XMm = -out[i].XMm
		}
	}
	angle := func(h DrawnHole) float64 {
		a := math.Atan2(h.XMm, h.YMm)
		if a < -1e-9 {
			a += 2 * math.Pi
		}
		return a
	}
	slices.SortStableFunc(out, func(a, b DrawnHole) int { return cmp.Compare(angle(a), angle(b)) })
	return out
}

// placing is one way of putting the part on: flange hole i under drawn hole i.
type placing struct {
	drawn []DrawnHole
	x, y  []float64 // flange holes from the spigot's centre, turned by turn
	play  []float64
	doubt []float64
	turn  float64 // radians clockwise
}

func (r *Result) place(d Drawn, drawn []DrawnHole) placing {
	p := placing{drawn: drawn}
	ex, ey, eu := 0.0, 0.0, 0.0
	if r.Centred != nil {
		ex, ey, eu = r.Centred.XMm, r.Centred.YMm, r.Centred.UMm
	}
	// The turn that lays the holes on each other on average.
	sum, first := 0.0, 0.0
	for i, h := range r.Holes {
		diff := math.Atan2(drawn[i].XMm, drawn[i].YMm) - h.AngleDeg*math.Pi/180
		if i == 0 {
			first = diff
		}
		sum += math.Remainder(diff-first, 2*math.Pi)
	}
	p.turn = math.Remainder(first+sum/float64(len(drawn)), 2*math.Pi)
	sin, cos := math.Sincos(p.turn)
	for i, h := range r.Holes {
		x, y := h.XMm-ex, h.YMm-ey
		p.x = append(p.x, x*cos+y*sin)
		p.y = append(p.y, y*cos-x*sin)
		p.play = append(p.play, r.play(d, i, drawn[i].MinMm))
		p.doubt = append(p.doubt, CoverageFactor*math.Hypot(h.PlaceUMm, eu)+d.PlaceMm)
	}
	return p
}

// off is how far the centres of pair i are apart with the flange turned and
// shifted a little more.
func (p *placing) off(i int, turn, x, y float64) float64 {
	sin, cos := math.Sincos(turn)
	return math.Hypot(p.x[i]*cos+p.y[i]*sin+x-p.drawn[i].XMm, p.y[i]*cos-p.x[i]*sin+y-p.drawn[i].YMm)
}

// margin is that of the tightest pair.
func (p *placing) margin(turn, x, y float64) float64 {
	least := math.Inf(1)
	for i := range p.drawn {
		least = math.Min(least, p.play[i]-p.off(i, turn, x, y)-p.doubt[i])
	}
	return least
}

// improve finds the turn and the shift, no longer than most, with the largest
// margin. For a given turn the margin is a concave function of the shift, and
// for the small turns in question nearly so of the turn, so that one search
// inside the other finds it.
func (p *placing) improve(most float64) (turn, x, y float64) {
	radius := math.Inf(1)
	reach := most
	for i := range p.drawn {
		radius = math.Min(radius, math.Hypot(p.drawn[i].XMm, p.drawn[i].YMm))
		reach = math.Max(reach, p.off(i, 0, 0, 0))
	}
	bestY := func(turn, x float64) float64 {
		h := math.Sqrt(math.Max(float64(most*most)-float64(x*x), 0))
		return highest(-h, h, func(y float64) float64 { return p.margin(turn, x, y) })
	}
	bestX := func(turn float64) float64 {
		return highest(-most, most, func(x float64) float64 { return p.margin(turn, x, bestY(turn, x)) })
	}
	limit := math.Min(2*reach/radius, 0.5)
	turn = highest(-limit, limit, func(t float64) float64 {
		x := bestX(t)
		return p.margin(t, x, bestY(t, x))
	})
	x = bestX(turn)
	y = bestY(turn, x)
	if p.margin(0, 0, 0) >= p.margin(turn, x, y)-1e-4 {
		return 0, 0, 0 // nothing to gain
	}
	return turn, x, y
}

// highest is where a concave function is largest between lo and hi, by
// golden-section search.
func highest(lo, hi float64, f func(float64) float64) float64 {
	const ratio = 0.6180339887498949
	a, b := hi-ratio*(hi-lo), lo+ratio*(hi-lo)
	fa, fb := f(a), f(b)
	for range 36 {
		if fa < fb {
			lo, a, fa = a, b, fb
			b = lo + ratio*(hi-lo)
			fb = f(b)
		} else {
			hi, b, fb = b, a, fa
			a = hi - ratio*(hi-lo)
			fa = f(a)
		}
		if hi-lo < 1e-7 {
			break
		}
	}
	return (lo + hi) / 2
}
