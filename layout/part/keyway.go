package part

import (
	"math"
	"slices"
	"strings"

	"centrepop/layout/cutting"
	"centrepop/layout/keys"
	"centrepop/layout/lookup"
	"centrepop/layout/plan"
	"centrepop/layout/words"
	"centrepop/parts"
	"centrepop/parts/geom"
	"centrepop/parts/seq"
)

// Keyway is a keyway worked out, with its key: a parallel one, or a Woodruff key.
type Keyway struct {
	In     *parts.Keyway
	Row    plan.KeywayRow
	key    keys.Parallel
	step   *Step
	width  Sized
	across Sized   // floor to the far side of the round
	cutter float64 // diameter of the side-and-face or Woodruff cutter; 0 for another tool
	open   int     // how many of its ends run out of the metal
	opens  [2]bool // which, the front one first
}

// keyways works out the keyways in the order of the drawing.
func (z *sizer) keyways() {
	for i := range z.Part.Keyways {
		k := Keyway{In: &z.Part.Keyways[i]}
		if k.step = z.StepNamed(k.In.In.Value); k.step != nil && z.keyOf(&k) {
			z.place(&k)
			z.Keyways = append(z.Keyways, k)
		}
	}
}

// keyOf finds the key and what limits its keyway; false after a fault.
func (z *sizer) keyOf(k *Keyway) bool {
	in, inch := k.In, z.W.Units == parts.Inches
	k.Row.FromMm, k.Row.ToMm = in.StretchMm(k.step.Inside, k.step.FromMm, k.step.ToMm, z.LengthMm())
	dia := k.step.diameterAt((k.Row.FromMm + k.Row.ToMm) / 2)
	k.Row.DiameterMm = dia
	var err error
	switch {
	case in.Disc.Value != "":
		disc, err := keys.WoodruffNamed(in.Disc.Value)
		if err != nil {
			z.fault(in.Disc.Pos, "no Woodruff key is "+in.Disc.Value, "its size as in DIN 6888, such as 5x6.5, or its number as in ASME B17.2, such as 608; centrepop key lists those of a diameter")
			return false
		}
		k.key, k.cutter = disc.In(dia), disc.DiscMm
		return z.keywayWidth(k)
	case in.Width.Set():
		k.key, err = keys.Of(dia, in.Width.Mm, in.Height.Mm, inch)
		if err != nil && in.Depth.Set() && in.Fit.Pos.Line != 0 {
			k.key, err = keys.Parallel{WidthMm: in.Width.Mm, HeightMm: in.Height.Mm}, nil
		}
		if err != nil {
			z.fault(in.Width.Pos, "no standard key is "+z.W.Size(in.Width.Mm)+" × "+z.W.Size(in.Height.Mm), "another key, or give depth and fit of the keyway too")
		}
	case inch:
		k.key, err = keys.ForInch(dia, keys.Square)
	default:
		k.key, err = keys.For(dia)
	}
	if err != nil && !in.Width.Set() {
		z.fault(in.Pos, "no standard key is for "+z.W.Dia(dia), "key: width by height, with depth and fit of the keyway")
	}
	return err == nil && z.keywayWidth(k)
}

// keywayWidth limits the width.
func (z *sizer) keywayWidth(k *Keyway) bool {
	w := k.key.WidthMm
	if k.In.Cutter.Set() {
		k.cutter = k.In.Cutter.Mm
	}
	if k.In.Fit.Pos.Line != 0 {
		k.width = z.sizeOf(parts.Size{Nominal: parts.Length{Mm: w}, Fit: k.In.Fit}, true)
		if math.Abs(k.width.MinMm-w) > 0.1*w || math.Abs(k.width.MaxMm-w) > 0.1*w {
			z.fault(k.In.Fit.Pos, "the limits are far from the key's width of "+z.W.Size(w), "the two sizes to machine to")
			return false
		}
		return true
	}
	l, source, err := k.key.Keyway(k.step.Inside)
	if err != nil {
		z.fault(k.In.Pos, "no usual fit is known for a keyway "+z.W.Size(w)+" wide", "fit: its limits")
		return false
	}
	k.width = Sized{NominalMm: w, MinMm: l.MinMm, MaxMm: l.MaxMm, Limited: true, Class: l.Class, Source: source}
	return true
}

// place works out depth and stretch of a keyway.
func (z *sizer) place(k *Keyway) {
	st, dia, toward := k.step, k.Row.DiameterMm, -1.0
	depth, deeper := k.key.ShaftDepthMm, k.key.ShaftDeeperMm
	if st.Inside {
		depth, deeper, toward = k.key.HubDepthMm, k.key.HubDeeperMm, 1
	}
	if k.In.Depth.Set() {
		depth = k.In.Depth.Mm
	}
	across := geom.Clean(dia + toward*depth)
	if deeper > 0 {
		far := across + toward*deeper
		k.across = Sized{NominalMm: across, MinMm: math.Min(across, far), MaxMm: math.Max(across, far), Limited: true, Source: k.key.ToleranceSource}
	} else {
		k.across = z.General(across)
	}
	from, to := k.Row.FromMm, k.Row.ToMm
	if t := st.taper(); t != nil && !k.sunk() && 4*depth < k.lengthMm()/t.Ratio() {
		z.fault(k.In.Pos, "the keyway's floor, along the axis, leaves the cone before its end", "a shorter keyway, or a deeper one")
	}
	k.Row = plan.KeywayRow{
		Name: k.In.Name.Value, In: st.Name, Inside: st.Inside, ClockDeg: geom.Clean(math.Mod(k.In.Clock.Deg+360, 360)),
		FromMm: from, ToMm: to, Woodruff: k.In.Disc.Value, DiameterMm: geom.Clean(dia), WidthMm: geom.Clean(k.key.WidthMm),
		Width: plan.Range{Min: k.width.MinMm, Max: k.width.MaxMm}, HeightMm: geom.Clean(k.key.HeightMm), DepthMm: geom.Clean(depth), DeeperMm: deeper,
	}
	for i, end := range [2]bool{false, true} {
		if k.opens[i] = z.opensAt(st, end, from, to); k.opens[i] {
			k.open++
		}
	}
	if !st.Inside && !k.In.Cutter.Set() {
		k.Row.RoundEnds = 2 - k.open
	}
	if k.cutter != 0 && !st.Inside {
		run, err := keys.SledRunoutMm(k.cutter, depth)
		if err != nil {
			z.fault(k.In.Pos, "a cutter of "+z.W.Dia(k.cutter)+" does not reach "+z.W.Size(depth)+" deep", "a larger cutter")
		}
		k.Row.RunoutMm = geom.Clean(run)
	}
}

// opensAt tells whether a keyway runs out of the metal at the back, else the
// front, end of its step: at a face of the part or beside a lower step.
func (s *Sizes) opensAt(st *Step, back bool, fromMm, toMm float64) bool {
	at, end := fromMm, st.FromMm
	next, after := s.neighbours(st)
	if back {
		at, end, next = toMm, st.ToMm, after
	}
	switch {
	case math.Abs(at-end) > geom.CloseMm:
		return false
	case next == nil:
		return !back || !s.blind(st)
	}
	return st.side()*(next.RadiusMm()-st.RadiusMm()) < 0
}

// onCone is where a keyway in a cone is measured, for its floor lies along the axis
// (ISO 775 up to 220 mm, from memory); empty on a cylinder.
func (k *Keyway) onCone() string { return words.When(k.step.taper() != nil, " at its middle") }

// Opens tells at which ends, the front one first, the keyway runs out of the metal.
func (k *Keyway) Opens() [2]bool { return k.opens }

// sunk tells whether it is the pocket of a Woodruff key.
func (k *Keyway) sunk() bool { return k.Row.Woodruff != "" && !k.step.Inside }

// kind is what it is called.
func (k *Keyway) kind() string { return words.Either(k.sunk(), "Woodruff keyway", "keyway") }

// sizeText is the keyway's width by its length, or by the disc of its key.
func (k *Keyway) sizeText(w words.Writer) string {
	return words.Either(k.sunk(), k.widthText(w)+" × "+w.Dia(k.cutter), k.widthText(w)+" × "+w.Size(k.lengthMm()))
}

// floorMm is the radius of the floor at the middle of its width.
func (k *Keyway) floorMm() float64 { return geom.Clean(k.across.NominalMm - k.Row.DiameterMm/2) }

// opensAt tells whether a keyway runs out at an end face.
func (k *Keyway) opensAt(f parts.Face, lengthMm float64) bool {
	return parts.At(f, k.Row.FromMm < geom.CloseMm, k.Row.ToMm > lengthMm-geom.CloseMm)
}

// notch is the keyway as a face shows it: from the round down one side, along the
// floor and up the other.
func (k *Keyway) notch(f parts.Face) []plan.XY {
	half, r := k.Row.WidthMm/2, k.Row.DiameterMm/2
	crown, floor := math.Sqrt(math.Max(0, r*r-half*half)), k.floorMm()
	if !k.Row.Inside {
		floor = geom.Clean(r - k.Row.DepthMm)
	}
	return clocked(parts.At(f, k.Row.ClockDeg, -k.Row.ClockDeg),
		plan.XY{XMm: -half, YMm: crown}, plan.XY{XMm: -half, YMm: floor}, plan.XY{XMm: half, YMm: floor}, plan.XY{XMm: half, YMm: crown})
}

func (k *Keyway) widthText(w words.Writer) string { return k.width.worked(w) }

// Bought is the key of a shaft keyway as it is ordered, and what to note of it;
// empty for a keyway in a bore, whose key lies in the shaft.
func (k *Keyway) Bought(w words.Writer) (item, note string) {
	if k.step.Inside {
		return "", ""
	}
	if k.sunk() {
		size := words.When(!strings.Contains(k.Row.Woodruff, "x"), w.Size(k.Row.WidthMm)+" × "+w.Size(k.Row.HeightMm)) // a number, which does not say it
		return words.Join(", ", "Key Woodruff "+k.Row.Woodruff, size, k.key.Standard), ""
	}
	ends := "round ends"
	switch k.Row.RoundEnds {
	case 0:
		ends = "square ends"
	case 1:
		ends = "one end round"
	}
	sizes := w.Size(k.Row.WidthMm) + " × " + w.Size(k.Row.HeightMm) + " × " + w.Size(k.lengthMm())
	item = words.Join(", ", "Key "+sizes, ends, words.Join(" ", k.key.Standard, k.key.Material))
	long, sold := k.lengthMm(), k.key.LengthsMm()
	if slices.ContainsFunc(sold, func(l float64) bool { return math.Abs(l-long) < geom.CloseMm }) {
		return item, ""
	}
	note = words.Either(len(sold) > 0, "no stock length: cut from a longer one", "cut from bar")
	return item, note
}

func (k *Keyway) stretchText(w words.Writer) string {
	return words.Either(k.sunk(), "its middle "+w.Size(k.Row.FromMm)+" from the front face", w.Size(k.Row.FromMm)+" to "+w.Size(k.Row.ToMm)+" from the front face")
}

func (k *Keyway) feature(n *Numbered) plan.Feature {
	return plan.Feature{
		Kind: plan.KeywayFeature, Name: words.Spaced(k.Row.Name), Size: k.kind() + " " + k.sizeText(n.W) + k.long() + ", " + n.W.Size(k.Row.DepthMm) + " deep",
		Limits: n.limitsText(k.width),
		Within: k.width.leftOut(),
		Note: words.Join("; ", "clock "+words.FineAngle(k.Row.ClockDeg)+n.clockFrom(k.Row.ClockDeg)+", "+k.stretchText(n.W), n.W.Size(k.aimMm())+" floor to far side"+k.onCone(),
			"key "+n.W.Size(k.Row.WidthMm)+" × "+n.W.Size(k.Row.HeightMm)),
		Balloon: plan.XY{XMm: geom.Clean((k.Row.FromMm + k.Row.ToMm) / 2), YMm: k.floorMm()},
	}
}

// long follows the length of a keyway that has one.
func (k *Keyway) long() string { return words.When(!k.sunk(), " long") }

func (k *Keyway) operations(b *bench) {
	o := plan.Operation{
		Title: words.Spaced(k.Row.Name) + ": " + k.kind() + " " + k.sizeText(b.W),
		Gauge: "key or gauge block for the width; " + k.acrossGauge() + " for the depth", Refs: []int{b.ref(k)},
	}
	o.Do = []string{"Clock " + words.FineAngle(k.Row.ClockDeg) + b.clockFrom(k.Row.ClockDeg) + ", " + k.stretchText(b.W) + "."}
	if k.step.Inside {
		k.slotted(b, &o)
	} else {
		k.milled(b, &o)
	}
	o.Do = append(o.Do, "Measure floor to far side: "+b.W.Size(k.aimMm())+" on "+b.W.Dia(k.Row.DiameterMm)+k.onCone()+"; add what the round measures over that, or take off what it is under.")
	o.Limits = append(b.limits("width", k.width), b.limits("floor to far side", k.across)...)
	if b.Part.Top.Value == topKeyway && k == b.topKeyway() {
		o.Do = append(o.Do, "This keyway is TOP from now on.")
	}
	b.op(o)
}

// topKeyway is the mark of TOP that a keyway itself is.
const topKeyway = "keyway"

// topKeyway is the first keyway that is cut at TOP, nil if none is.
func (s *Sizes) topKeyway() *Keyway {
	return seq.At(s.Keyways, func(k *Keyway) bool { return k.Row.ClockDeg == 0 })
}

// aimMm is what is wanted from the floor to the far side: the middle of its limits, so
// that the crown's own limits and a stroke are on its side; sinkMm is how deep from the
// crown of the round that is.
func (k *Keyway) aimMm() float64  { return geom.Clean((k.across.MinMm + k.across.MaxMm) / 2) }
func (k *Keyway) sinkMm() float64 { return geom.Clean(math.Abs(k.aimMm() - k.Row.DiameterMm)) }

// milled cuts a shaft keyway.
func (k *Keyway) milled(b *bench, o *plan.Operation) {
	o.Machine, o.Holding = plan.Mill, "vee blocks, clamped; TOP line set with a square"
	if k.onCone() != "" {
		o.Holding = "vee blocks under cylinders, the axis level and not the cone's side, clamped; TOP line set with a square"
		o.Do = append(o.Do, "The floor lies along the axis: touch the crown at the keyway's middle, where the cone has "+b.W.Dia(k.Row.DiameterMm)+".")
	}
	*o = warn(*o, clampRound)
	depth := b.W.Size(k.sinkMm()) + " deep"
	if k.sunk() {
		o.Tool = "Woodruff cutter " + b.W.Dia(k.cutter) + " × " + b.W.Size(k.Row.WidthMm)
		o.Do = append(o.Do, "Set the cutter over the middle, touch the crown, sink it "+depth+" from there and nowhere along: at the crown the pocket runs to "+
			b.W.Said(b.W.Rounded(k.Row.RunoutMm, 1))+" each side of its middle.")
		return
	}
	narrow, way := k.Row.WidthMm, " with one that cut no wider in scrap"
	if c := k.In.Cutter; c.Set() {
		for _, mm := range cutterWidths(b.Job.Units) {
			if mm <= k.Row.WidthMm-leastSideMm {
				narrow, way = mm, ", then each side to the width"
			}
		}
		run, _ := keys.SledRunoutMm(c.Mm, k.sinkMm()) // place has proved it
		o.Tool = "side-and-face cutter " + b.W.Dia(c.Mm) + " × " + b.W.Size(narrow) + b.atSpeed(cutting.Drill, c.Mm, false)
		o.Do = append(o.Do, "Set the cutter over the middle, touch the crown, mill "+depth+" from there"+way+"; it runs out "+b.W.Said(b.W.Rounded(run, 1))+" beyond each end of the full depth.")
		return
	}
	if dMm, _, _ := cutting.MillReach(narrow-leastSideMm, b.drills()); dMm > 0 {
		narrow, way = dMm, ", then each side to the width"
	}
	o.Tool = b.slotDrill("", narrow)
	o.Do = append(o.Do, "Set the cutter over the middle, touch the crown, mill "+depth+" from there"+passes(k.Row.DepthMm, narrow)+way+".")
}

// cutterWidths are those of side-and-face cutters, which are up to 0.1 wider and cut no narrower (DIN 885-1,
// k11, from memory); in inches those of every sixteenth.
func cutterWidths(units parts.Units) (mm []float64) {
	if units != parts.Inches {
		return []float64{3, 4, 5, 6, 8, 10, 12, 14, 16, 18, 20, 22, 25, 28, 32, 36, 40}
	}
	for i := 2.0; i <= 16; i++ {
		mm = append(mm, i*geom.MmPerInch/16)
	}
	return mm
}

// leastSideMm is what a slot drill leaves at least of a keyway's width for its sides,
// passDias how deep one goes in a pass, in its diameters; broachWidths how
// long a keyway a push broach cuts, in its widths: its gullets hold the chips of no
// more; slotDias how far a slotting tool's bar reaches into a bore. Common practice, no
// source.
const (
	leastSideMm  = 0.5
	passDias     = 0.5
	broachWidths = 10.0
	slotDias     = 4.0
)

// passes is in how many passes a slot drill goes to a depth.
func passes(depthMm, widthMm float64) string {
	if n := math.Ceil(geom.Clean(depthMm / (passDias * widthMm))); n > 1 {
		return " in " + words.Trim(n, 0) + " passes"
	}
	return ""
}

// slotted cuts a hub keyway.
func (k *Keyway) slotted(b *bench, o *plan.Operation) {
	o.Machine, o.Holding = plan.Bench, "face flat on the table, bore square and clean; TOP line set with a square"
	depth := b.W.Size(k.sinkMm()) + " deep from the crown of the bore"
	long, round := k.lengthMm(), k.Row.DiameterMm
	if k.open == 2 && long > broachWidths*k.Row.WidthMm {
		o.Tool = "tool " + b.W.Size(k.Row.WidthMm) + " wide in a bar; slotting machine, shaper, or the lathe's carriage with the spindle locked"
		way := "Too long for a push broach, which cuts about " + b.W.Said(broachWidths*k.Row.WidthMm) + " (common practice, no source): slot " + depth + ", a little at a stroke"
		switch {
		case long > 2*slotDias*round:
			way += "; no bar reaches half of its length: have it cut by wire"
		case long > slotDias*round:
			way += ", half from each end to one TOP line"
		}
		o.Do = append(o.Do, way+".")
		return
	}
	if k.open == 2 {
		bush := words.Either(k.onCone() != "", "a bush turned to the cone, its slot along the axis,", "its bush "+b.W.Dia(k.Row.DiameterMm))
		o.Tool = "broach " + b.W.Size(k.Row.WidthMm) + " with " + bush + " and shims, or slotting machine"
		*o = warn(*o, broaching)
		o.Do = append(o.Do, "Broach with shims in turn, or slot, "+depth+".")
		return
	}
	o.Tool = "slotting machine, tool " + b.W.Size(k.Row.WidthMm) + " wide"
	o.Do = append(o.Do, "Drill or recess the closed end first, so that the tool runs out; slot "+depth+".")
}

func (k *Keyway) acrossGauge() string {
	return words.Either(k.step.Inside, "calipers inside", "micrometer or calipers over the far side")
}

func (k *Keyway) checks(r *record) {
	name := words.Spaced(k.Row.Name)
	add := func(what, wanted, gauge string, s Sized) {
		r.sized(plan.Check{Ref: r.ref(k), What: name + " " + what, Wanted: wanted, Gauge: gauge}, s)
	}
	add("width", k.widthText(r.W), "gauge blocks", k.width)
	add("floor to far side"+k.onCone(), r.W.Size(k.aimMm()), k.acrossGauge(), k.across)
	if k.open < 2 && !k.sunk() {
		long := k.lengthMm()
		add("length", r.W.Size(long), "calipers", Sized{
			NominalMm: long, MinMm: long, MaxMm: long + keys.LongerMm(long), Limited: true, Source: lookup.Source{Name: "DIN 6885-1", State: lookup.FromMemory},
		})
	}
}
