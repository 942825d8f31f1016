package review

import (
	"cmp"
	"math"
	"slices"
	"strings"

	"centrepop/layout/assembly"
	"centrepop/layout/plan"
	"centrepop/layout/stand"
	"centrepop/layout/threads"
	"centrepop/layout/words"
	"centrepop/parts"
	"centrepop/parts/geom"
	"centrepop/parts/seq"
)

// throughOpening looks for a part that no way of turning it lets through the opening of
// another that its words name: the least two of its three sizes do not go into the two of
// the opening.
func (v made) throughOpening(o *view) {
	wideMm := 2 * v.wideMm()
	for _, m := range comesThrough().FindAllStringSubmatch(v.e.How.Value, -1) {
		for f := range seq.Refs(o.p.Radials) {
			if wideMm == 0 || f.Shape == parts.RadialHole || !strings.HasPrefix(strings.ToLower(m[1])+" ", strings.ReplaceAll(f.Name.Value, "-", " ")+" ") {
				continue
			}
			own, open := []float64{v.lengthMm, wideMm, wideMm}, []float64{f.Around.Mm, f.Along.Mm}
			slices.Sort(own)
			slices.Sort(open)
			if !geom.Over(own[0], open[0]) && !geom.Over(own[1], open[1]) {
				continue
			}
			v.report(Stop, "", v.e.How.Pos, Finding{
				What:    v.p.Title.Value + " does not go through " + f.Name.Value + " of " + o.p.Title.Value,
				Numbers: v.mm(own[0]) + " × " + v.mm(own[1]) + " through " + v.mm(f.Around.Mm) + " × " + v.mm(f.Along.Mm),
				OverMm:  over(max(own[0]-open[0], own[1]-open[1])), Rule: "an opening lets through what comes in by it", Source: "by geometry",
				Fix: "a larger opening, or a smaller " + v.p.Title.Value,
			})
		}
	}
}

// standsOutShare is how much of its diameter a set screw may stand out. Common practice, no
// source: what stands out of a part that turns or slides catches.
const standsOutShare = 0.5

// fittedIn looks at what is fitted in a hole: for set screws in holes without a thread, and for what names a thread that is
// neither the hole's nor goes through it.
func (v *view) fittedIn(name, fitted parts.Text, size parts.HoleSize) {
	if parts.SetScrew(fitted.Value) && size.Make != parts.TappedHole {
		v.report(Check, name.Value, fitted.Pos, Finding{
			What: "the set screw of " + name.Value + " has no thread in " + v.p.Title.Value, Numbers: string(size.Make),
			Rule: "a set screw holds in the thread of its hole", Fix: "a tapped hole, or what is really fitted there",
		})
		return
	}
	other, goes := "", func(named threads.Thread) bool {
		hole, err := threads.Parse(size.Thread)
		switch {
		case size.Thread == "":
			return size.Size.Nominal.Mm >= named.MajorMm
		case size.Make == parts.ClearanceHole:
			return err != nil || hole.MajorMm >= named.MajorMm
		}
		return err != nil || ofPipe(hole) == ofPipe(named)
	}
	for _, said := range fittedThread().FindAllString(fitted.Value, -1) {
		if _, err := threads.Parse(said); err != nil { // of a screw, with its length
			said, _, _ = strings.Cut(said, "x")
		}
		named, err := threads.Parse(said)
		if err == nil && goes(named) {
			return
		} else if err == nil {
			other = named.Designation
		}
	}
	if other != "" {
		v.report(Stop, name.Value, fitted.Pos, Finding{
			What:    "what is fitted in " + name.Value + " of " + v.p.Title.Value + " has another thread than its hole",
			Numbers: other + " in " + cmp.Or(size.Thread, v.mm(size.Size.Nominal.Mm)), Rule: "what is screwed into a hole has its thread", Source: "by the job",
			Fix: "what is fitted with the thread of the hole, or a hole for it",
		})
	}
}

// ofPipe names a thread as its mates do: a taper pipe thread R goes into the parallel Rp or G of its size (ISO 7-1).
func ofPipe(t threads.Thread) string { return strings.TrimLeft(t.Designation, "RpG") }

// setScrew looks for set screws that no key comes to, that come down in a slot, or that stand out of
// a wall, where their length stands beside their hole.
func (v *view) setScrew(f *parts.Radial) {
	v.fittedIn(f.Name, f.Fitted, f.Size)
	t, m := radialThread(f), setLong().FindStringSubmatch(f.Fitted.Value)
	if t == nil || !parts.SetScrew(f.Fitted.Value) {
		return
	}
	for row := range seq.Refs(v.q.Radials) {
		if rowOf(*row, f) {
			v.landsOn(f, row, t.MajorMm)
		}
	}
	o, said := orderOf(f.Fitted.Value)
	long := o.longMm
	if m != nil {
		long = v.itemMm(m[1] + " " + m[2])
	} else if !said {
		return
	}
	deep := words.Either(!f.Through, f.Depth.Mm, v.wallAt(v.axialMm(f)))
	if out := long - deep; out > standsOutShare*t.MajorMm {
		v.report(Check, f.Name.Value, f.Fitted.Pos, Finding{
			What: "the set screw of " + f.Name.Value + " stands out of " + v.p.Title.Value, Numbers: v.mm(long) + " long in " + v.mm(deep), OverMm: over(out),
			Rule: "a set screw is no longer than its thread", Fix: "a shorter screw",
		})
	}
}

// squareDeg is how far off square to its key a set screw may stand. Common practice, no source.
const squareDeg = 15.0

// besideKey looks for a set screw in a keyed bore that comes down neither on the key, which it then holds, nor square to
// it, where it pushes the shaft on the side of the bore that is whole: between the two its thread or its seat ends
// beside the key, and the hub is pushed askew off it.
func (v *view) besideKey(f *parts.Radial) {
	t := radialThread(f)
	if t == nil || !parts.SetScrew(f.Fitted.Value) {
		return
	}
	for _, row := range v.q.Radials {
		if !rowOf(row, f) {
			continue
		}
		k := seq.At(v.q.Keyways, func(k *plan.KeywayRow) bool {
			return k.Inside && slices.ContainsFunc(v.inside, func(c *cylinder) bool {
				return c.Name == k.In && row.AxialMm > c.FromMm && row.AxialMm < c.ToMm
			})
		})
		if k == nil {
			continue
		}
		off := math.Abs(math.Remainder(row.ClockDeg-k.ClockDeg, 360))
		if off*math.Pi/360*k.DiameterMm > k.WidthMm/2 && math.Abs(off-90) > squareDeg {
			v.report(Check, f.Name.Value, f.Pos, Finding{
				What:    "the set screw of " + f.Name.Value + " comes down neither on the key in " + words.Spaced(k.In) + " nor square to it",
				Numbers: "at " + number(row.ClockDeg) + "°, the key at " + number(k.ClockDeg) + "°",
				Rule:    "a set screw of a keyed hub stands over the key, or a quarter turn from it",
				Fix:     "clock: " + number(k.ClockDeg) + ", " + number(math.Mod(k.ClockDeg+90, 360)) + " or " + number(math.Mod(k.ClockDeg+270, 360)),
			})
			return
		}
	}
}

// landsOn looks at where a set screw points in space: to no slot of the shaft that its part goes over, unless
// that is for a key under it, and from the tube round it to an opening that lets a key come. What is put in by hand slides along its shaft.
func (v *view) landsOn(f *parts.Radial, row *plan.RadialRow, screwMm float64) {
	slides := v.job.ByHand(v.p.Name.Value) != nil
	up, locked := v.lockedUp(v.p.Name.Value)
	for _, o := range v.all() {
		tube := o.p.Kind == parts.Tube && len(o.inside) > 0 && o.inside[0].RadiusMm() > v.wideMm()
		for _, p := range v.machine().On(v.p.Name.Value, assembly.Clock(1, row.ClockDeg).Add(assembly.Vec{Z: -row.AxialMm}), o.p.Name.Value) {
			if b := v.bodyOf(o.p.Name.Value); tube && b != nil {
				p.Z += up * b.Pose.Z.Dot(v.machine().Up)
			}
			at := landing{o, p, slides && !locked}
			if tube && at.shut(screwMm) {
				v.report(Check, f.Name.Value, f.Pos, Finding{
					What:    "no opening of " + o.p.Title.Value + " lets a key come to the screw of " + f.Name.Value + " in " + v.p.Title.Value,
					Numbers: "at " + at.clock() + ", " + v.mm(-at.at.Z) + " from the front, the wall is before it",
					Rule:    "what is tightened in a tube has an opening before it, twice as wide as its screw", Fix: at.opened(screwMm),
				})
				return
			}
			if slot := at.slot(v, screwMm); slot != nil && len(v.p.Keyways) == 0 {
				v.report(Check, f.Name.Value, f.Pos, Finding{
					What:    "the screw of " + f.Name.Value + " in " + v.p.Title.Value + " comes down in " + slot.Name + " of " + o.p.Title.Value,
					Numbers: "at " + at.clock() + ", the slot at " + number(slot.ClockDeg) + "°",
					Rule:    "a set screw holds on a round or flat place as wide as its point", Fix: "another clock angle for the screw",
				})
				return
			}
		}
	}
}

// landing is the place of another part that a set screw points to, in the frame of that; anywhere where it slides along.
type landing struct {
	on       *view
	at       assembly.Vec
	anywhere bool
}

func (l landing) clock() string { return number(words.Round(assembly.ClockDeg(l.at), 1)) + "°" }

// over tells whether it lies over an opening or a slot, or no farther beside it than spareMm.
func (l landing) over(s *plan.RadialRow, spareMm float64) bool {
	off := math.Abs(math.Remainder(assembly.ClockDeg(l.at)-s.ClockDeg, 360)) * math.Pi / 360 * s.OutsideMm
	return off < max(s.AroundMm, s.DiameterMm)/2+spareMm && (l.anywhere || math.Abs(-l.at.Z-s.AxialMm) < max(s.AlongMm, s.DiameterMm)/2+spareMm)
}

// shut tells whether it lies on the wall of a tube, with no opening that lets a key come to a screw.
func (l landing) shut(screwMm float64) bool {
	return -l.at.Z > 0 && -l.at.Z < l.on.lengthMm && !slices.ContainsFunc(l.on.q.Radials, func(s plan.RadialRow) bool { return l.over(&s, -screwMm) })
}

// opened is what brings an opening of a tube before it: of one on its clock angle, another place along.
func (l landing) opened(screwMm float64) string {
	along := landing{l.on, l.at, true}
	if s := seq.At(l.on.q.Radials, func(s *plan.RadialRow) bool { return along.over(s, -screwMm) }); s != nil {
		return "one place along the tube for the screw and the opening: " + s.Name + " is " + l.on.mm(s.AxialMm) + " from the front, or a longer one"
	}
	return "one clock angle for the screw and the opening, or a wider one"
}

// tipShare is the radius of a screw's point as a share of its diameter, and standsOffMm how uneven
// what it presses on may be. Common practice, no source.
const tipShare, standsOffMm = 0.35, 0.5

// slot is what it lies over, or nearly, of the slots in the round that a part goes over; nil for none.
func (l landing) slot(v *view, screwMm float64) *plan.RadialRow {
	return seq.At(l.on.slots(), func(s *plan.RadialRow) bool {
		return math.Abs(s.OutsideMm/2-v.openMm()) < faceOffMm && l.over(s, tipShare*screwMm)
	})
}

// slots are what is cut into a part from outside and not through, keyways as well.
func (v *view) slots() (out []plan.RadialRow) {
	out = seq.Keep(v.q.Radials, func(s plan.RadialRow) bool { return s.AlongMm > 0 && s.DepthMm < s.OutsideMm/2 && len(v.inside) == 0 })
	for _, k := range v.q.Keyways {
		if !k.Inside {
			out = append(out, plan.RadialRow{Name: k.Name, ClockDeg: k.ClockDeg, OutsideMm: k.DiameterMm, AroundMm: k.WidthMm, AxialMm: k.Span().MidMm(), AlongMm: k.Span().LengthMm()})
		}
	}
	return out
}

// couplingTorque looks for a coupling that is bought for less than what the motor gives.
func (r *reviewer) couplingTorque(e *parts.Loose) {
	m, motor := couplingFor().FindStringSubmatch(e.Item.Value), r.motor()
	gives := motor.OutputNm()
	if m == nil || gives == 0 || torqueNm(m[1], m[2]) >= gives {
		return
	}
	r.add(Finding{
		Pos: e.Item.Pos, What: "the coupling is bought for less torque than the motor gives",
		Numbers: m[1] + " " + m[2] + "; " + r.w.Torque(gives) + " at " + number(cmp.Or(motor.OutRPM.Value, motor.RPM.Value)) + " rev/min",
		Rule:    "a coupling takes the torque of its motor at the least", Source: "T = 60 P / (2 π n)", Fix: "a larger coupling, with the maker's factor for the service",
	})
}

// couplingBores compares the bores that words give a coupling with the shafts that it joins.
func (r *reviewer) couplingBores(e *parts.Loose) {
	bores := e.Bores(r.job.Units)
	on := func(whose string, mm float64) {
		if mm > 0 && !slices.ContainsFunc(bores, func(bore float64) bool { return math.Abs(bore-mm) < faceOffMm }) {
			r.add(Finding{
				Pos: e.Item.Pos, What: "the coupling is bored for other shafts than " + whose, Numbers: r.mm(bores[0]) + " and " + r.mm(bores[1]) + "; " + whose + " is " + r.mm(mm),
				Rule: "a coupling is bored for its two shafts", Source: "by the job", Fix: "the bores and the shafts of one order",
			})
		}
	}
	if len(bores) < 2 || e.Stands == nil {
		return
	}
	if v := r.viewOf(e.Stands.On.Part); v != nil {
		on(e.Stands.On.Feature+" of "+v.p.Title.Value, 2*seq.First(v.outside, func(c *cylinder) bool { return c.Name == e.Stands.On.Feature }).RadiusMm())
	}
	for o := range seq.Refs(r.job.Loose) {
		if o.Stands != nil && o != e && o.As == parts.AMotor {
			mm, _ := stand.MotorShaft(r.job, o.Stands)
			on("the shaft of the motor", mm)
		}
	}
}

// torqueNm is a torque in words, Nm.
func torqueNm(number, unit string) float64 {
	nm := figure(number)
	switch unit = strings.ToLower(unit); {
	case strings.HasSuffix(unit, "ft"):
		nm *= words.NmPerPoundFoot
	case strings.HasSuffix(unit, "in"):
		nm *= words.NmPerPoundFoot / 12
	}
	return nm
}
