package part

import (
	"cmp"
	"math"
	"slices"
	"strconv"

	"github.com/tdewolff/canvas"

	"centrepop/layout/cutting"
	"centrepop/layout/lookup"
	"centrepop/layout/plan"
	"centrepop/layout/words"
	"centrepop/parts"
	"centrepop/parts/geom"
	"centrepop/parts/seq"
)

// flat is a part cut from plate.
type flat struct {
	usual
	*parts.Part
}

func (f *flat) lengthMm() float64 { return f.Thickness.Mm }

func (f *flat) outline(*Sizes) *canvas.Path    { return f.Outline.Contour().Path }
func (f *flat) wallMm(*Sizes, float64) float64 { return f.Thickness.Mm }

func (f *flat) developments(d *shaper) { d.cut = f.asCut(d.Sizes, f.Stock.Cut) }

func (f *flat) steps(z *sizer) []Step {
	var out []Step
	take := func(s parts.Step, inside bool, leaveMm float64) {
		s.Length = f.Thickness
		out = append(out, Step{Drawn: &s, Name: s.Name.Value, Inside: inside, ToMm: f.Thickness.Mm, AfterWeld: s.AfterWeld, Size: f.cutLimits(z.Sizes, z.sizeOf(s.Size, inside), leaveMm)})
	}
	if o := f.Outline; f.round() {
		size := o.Size
		size.Nominal = cmp.Or(size.Nominal, o.Width)
		take(parts.Step{Pos: o.Pos, Name: parts.Text{Value: outlineStep}, Size: size}, false, o.LeaveOnPart.Mm)
	}
	if b := f.Bore; b != nil {
		take(parts.Step{Pos: b.Pos, Name: parts.Text{Value: boreStep}, Size: b.Size, AfterWeld: b.AfterWeld}, true, b.Leave.Mm)
	}
	return out
}

// cutLimits are the limits of a size: where nothing is left to be machined and none
// of its own are drawn, no closer than the cutter holds.
func (f *flat) cutLimits(z *Sizes, s Sized, leaveMm float64) Sized {
	if holds, source := CutterHolds(f.Stock.Cut, s.NominalMm, z.plateMm()); s.Class == "" && s.Limited && leaveMm == 0 && s.MaxMm-s.MinMm < holds-1e-9 {
		s.AsCut, s.MinMm, s.MaxMm, s.Source = true, s.NominalMm-holds/2, s.NominalMm+holds/2, source
	}
	return s
}

func (f *flat) overall(s *Sizes) string {
	b := s.OutlinePath().Bounds()
	return words.Either(f.round(), s.W.Dia(b.W())+" × "+s.W.Size(s.LengthMm())+" thick", s.W.Size(b.W())+" × "+s.W.Size(b.H())+" × "+s.W.Size(s.LengthMm())+" thick")
}

func (f *flat) section(s *Sizes) *plan.Section {
	b := s.OutlinePath().Bounds()
	out := &plan.Section{LengthMm: s.LengthMm(), Flat: true, MaxMm: geom.Clean(b.Y1)}
	if !geom.Over(out.MaxMm, 0) { // nothing of it lies above its origin
		out.MaxMm = geom.Clean(b.H())
	}
	edge := Step{Name: outlineStep, ToMm: out.LengthMm}
	out.Outer = s.grooved(&edge, s.edge(edge, out.MaxMm))
	if bore := s.StepNamed(boreStep); bore != nil {
		out.Inner = s.grooved(bore, s.edge(*bore, bore.Size.NominalMm/2))
	}
	return out
}

func (f *flat) volumeMm3(g *Shape) float64 {
	if f.round() {
		return turnedVolumeMm3(g.Section.Outer) - turnedVolumeMm3(g.Section.Inner)
	}
	return math.Abs(geom.NewContour(g.OutlinePath()).AreaMm2())*g.LengthMm() - turnedVolumeMm3(g.Section.Inner)
}

func (f *flat) features(n *Numbered) {
	n.stepFeatures(plan.OutlineFeature, false)
	if !f.round() {
		b := n.OutlinePath().Bounds()
		edges := "edges by the job's general tolerance"
		if wide := f.fromEdge(n.Sizes, b.W()); wide.AsCut {
			edges = "edges as the " + f.Stock.Cut + " cuts"
		}
		n.add(plan.Feature{Kind: plan.EdgeFeature, Name: "outline", Size: n.W.Size(b.W()) + " × " + n.W.Size(b.H()) + f.outlineWords(n.W),
			Note: edges + f.cornersText(n.W), Balloon: plan.XY{XMm: n.LengthMm() / 2, YMm: n.Section.MaxMm}})
	}
	n.lengthFeature(plan.ThicknessFeature)
	if f.Stock.Form != "" {
		t := &n.Features[len(n.Features)-1]
		t.Limits, t.Note = "", f.thickAs(n.W, "") // as bought, which the record says
	}
}

// thickAs says how thick the plate is until it is faced, or bought where it is not.
func (f *flat) thickAs(w words.Writer, bought string) string {
	return words.Either(!f.Stock.ByArea() || f.Stock.Size.Mm <= f.Thickness.Mm+geom.CloseMm, bought, w.Size(f.Stock.Size.Mm)+" as bought, faced to "+w.Size(f.Thickness.Mm)+" later")
}

// fromEdge limits a length that is measured from the edge of the part: no closer than
// an edge is cut.
func (f *flat) fromEdge(s *Sizes, mm float64) Sized {
	return f.cutLimits(s, s.General(geom.Clean(mm)), f.Outline.LeaveOnPart.Mm)
}

// edgeCheck measures the outside of an outline that is not round, both ways, within
// what its cutter holds; the thickness is that of the plate as it is bought.
func (f *flat) check(r *record, of plan.Feature) {
	c := plan.Check{Ref: of.N, What: of.Name, Wanted: of.Size, Limits: words.OrNone(of.Limits), Gauge: "calipers", Source: r.generalSource(of.Limits)}
	switch b := r.OutlinePath().Bounds(); {
	case of.Kind == plan.EdgeFeature:
		c.Limits, c.Source = r.limitsOf(r.form.fromEdge(r.Sizes, b.W()), r.form.fromEdge(r.Sizes, b.H()))
	case f.Stock.Form != "":
		c.Limits = f.thickAs(r.W, "as bought")
	}
	r.add(c)
	if of.Kind == plan.EdgeFeature && f.listedCorners() {
		f.cutCorners(r, of.N)
	}
}

// cutCorners measure each corner of the outline's box that one straight edge cuts off.
func (f *flat) cutCorners(r *record, ref int) {
	path := f.outline(r.Sizes)
	box := path.Bounds()
	on := func(at, low, high float64, names [2]string) string {
		switch {
		case math.Abs(at-low) < geom.CloseMm:
			return names[0]
		case math.Abs(at-high) < geom.CloseMm:
			return names[1]
		}
		return ""
	}
	for s := path.Scanner(); s.Scan(); {
		if s.Cmd() != canvas.LineToCmd && s.Cmd() != canvas.CloseCmd {
			continue
		}
		a, b := s.Start(), s.End()
		wide, high := geom.Clean(math.Abs(a.X-b.X)), geom.Clean(math.Abs(a.Y-b.Y))
		for range 2 {
			side, end := on(a.X, box.X0, box.X1, [2]string{"left", "right"}), on(b.Y, box.Y0, box.Y1, [2]string{"bottom", "top"})
			if side != "" && end != "" && wide > geom.CloseMm && high > geom.CloseMm {
				c := plan.Check{Ref: ref, What: "corner cut off, " + end + " " + side, Wanted: r.W.Size(wide) + " × " + r.W.Size(high), Gauge: "calipers"}
				c.Limits, c.Source = r.limitsOf(f.fromEdge(r.Sizes, wide), f.fromEdge(r.Sizes, high))
				r.add(c)
				break
			}
			a, b = b, a
		}
	}
}

func (f *flat) outlineWords(w words.Writer) string {
	o := f.Outline
	switch {
	case o.Corner.Mm != 0:
		return ", corners R" + w.Size(o.Corner.Mm)
	case o.Shape == parts.SlotOutline:
		return ", round ends"
	case o.Shape == parts.PolygonOutline && o.Sides != 0:
		return ", " + strconv.Itoa(o.Sides) + " sides, " + w.Size(o.Width.Mm) + " across flats"
	}
	return ""
}

func (f *flat) operations(b *bench) {
	f.cutBlank(b)
	f.millOutline(b)
	bore := b.StepNamed(boreStep)
	turned := bore != nil && b.boreTurned(bore)
	switch {
	case turned:
		f.turnBore(b, bore)
	case bore != nil && !b.cut.boreCut:
		f.drillBore(b, bore)
	}
	if outline := b.StepNamed(outlineStep); f.outlineTurned(b.Sizes) {
		holding := "on the bore, expanding mandrel or soft jaws"
		if bore == nil {
			holding = "pressed by a running centre with a pad against a disc in the chuck"
		}
		b.op(plan.Operation{Machine: plan.Lathe, Title: "Turn the outside " + b.sizeText(outline), Holding: holding,
			Tool: "turning tool", Speed: b.speed(cutting.Turn, outline.Size.NominalMm), Gauge: gauge(outline),
			Limits: b.limits(outlineStep, outline.Size), Refs: []int{b.ref(outline)}})
	}
	f.groove(b)
	f.bevel(b, turned)
}

// groove turns the grooves of bore, outline and faces.
func (f *flat) groove(b *bench) {
	do, limits, refs := b.grooveLines(func(*Groove) bool { return true })
	if len(do) == 0 {
		return
	}
	b.op(plan.Operation{
		Machine: plan.Lathe, Title: "Grooves", Do: do, Tool: "grooving tool, ground to the width or narrower", Limits: limits, Refs: refs,
		Holding: "same setting where the groove can be reached, else turn round and set true",
		Speed:   b.speed(cutting.Turn, b.Bounds().Max.XMm-b.Bounds().Min.XMm), Gauge: "calipers with thin jaws, gauge blocks",
	})
}

// cutBlank cuts the outline and what the cutter makes with it.
func (f *flat) cutBlank(b *bench) {
	line := "Cut from " + b.StockText() + ": " + b.cut.size + " × " + b.W.Size(b.plateMm()) + " thick"
	if leave := f.Outline.LeaveOnPart.Mm; leave > 0 {
		line += ", " + b.W.Size(leave) + " left over its size"
	}
	o := plan.Operation{Machine: plan.Saw, Title: "Cut the blank", Do: []string{line + "."}, Gauge: "tape, calipers",
		Refs: b.refs(plan.OutlineFeature, plan.EdgeFeature, plan.ThicknessFeature)}
	switch {
	case b.byCutter(&o):
	case f.Stock.Form == "sheet":
		o = warn(o, sheetEdges)
	default:
		o = warn(o, clampStock)
	}
	if o.Machine == plan.Saw && f.Stock.Cut == "saw" {
		o.Tool = "saw; then mill or file to the outline"
	}
	if b.cut.bore != "" {
		o.Do = append(o.Do, b.cut.bore)
	}
	for m := range seq.Refs(b.Groups) {
		if b.cut.whole[m.Name.Value] {
			o.Do = append(o.Do, "Cut with it "+words.Spaced(m.Name.Value)+": "+words.CountOf(m.Group.Count)+m.kind.cutText(b.W, m)+", final.")
			o.Refs = append(o.Refs, b.ref(m))
		}
	}
	outline := b.StepNamed(outlineStep)
	switch {
	case outline == nil || f.Outline.LeaveOnPart.Mm > 0:
	case outline.Size.Class != "":
		o.Do = append(o.Do, "Leave the outside large enough for the lathe to clean it up.")
	default:
		o.Limits = b.limits(outlineStep, outline.Size)
	}
	b.op(o)
}

// millOutline takes off what is left on an outline that is not round, before anything is
// set by its edges.
func (f *flat) millOutline(b *bench) {
	leave, box := f.Outline.LeaveOnPart.Mm, b.OutlinePath().Bounds()
	if leave <= 0 || f.round() {
		return
	}
	size := b.W.Size(box.W()) + " × " + b.W.Size(box.H())
	by, how := "Mill or file ", ", alike everywhere from the edge as cut."
	if f.Outline.Shape == parts.SquareOutline || f.Outline.Shape == parts.RectangleOutline {
		by, how = "Mill ", ": one edge, those square to it from that one, then the others to size."
	}
	do := []string{by + b.W.Size(leave/2) + " off all round, to " + size + f.outlineWords(b.W) + how}
	o := plan.Operation{
		Machine: plan.Mill, Title: "Mill the outline", Do: do, Tool: "end mill", Gauge: "calipers, square",
		Holding: "clamped on parallels, clear of the edges", Refs: b.refs(plan.EdgeFeature),
	}
	if limits, source := b.limitsOf(f.fromEdge(b.Sizes, box.W()), f.fromEdge(b.Sizes, box.H())); source != (lookup.Source{}) {
		o.Limits = []string{outlineStep + " " + limits}
	}
	b.op(warn(o, clampPart))
}

// drillBore makes a bore that nothing cuts and the lathe need not finish.
func (f *flat) drillBore(b *bench, bore *Step) {
	m := Made{FinishedMm: bore.Size.NominalMm, Size: bore.Size}
	way := b.holeWay(m, b.LengthMm(), false)
	o := plan.Operation{
		Machine: plan.Drill, Title: "Bore " + b.sizeText(bore), Holding: "clamped on parallels", Gauge: gauge(bore), Refs: []int{b.ref(bore)},
		Do: slices.Concat([]string{"Centre-drill in the middle."}, b.drillLines(way, false), b.finishLines(m, way)), Limits: b.limits(boreStep, bore.Size),
	}
	b.op(warn(o, clampPart))
}

// centred says what is set true to bore a plate, and how well it can be: the bore as cut,
// which lies true to all that the cutter made, by what the cutter holds and a quarter of
// what is left at the most; else a round outside, which is turned later if at all, or what
// is scribed. Common practice, no source.
func (f *flat) centred(b *bench, bore *Step) (by string, within float64) {
	within = 0.5
	if b.cut.boreCut {
		if leave := b.Part.Bore.Leave.Mm; leave != 0 {
			within = leave / 4
		}
		if holds, _ := CutterHolds(f.Stock.Cut, bore.Size.NominalMm, b.plateMm()); holds > 0 {
			within = min(within, holds/2)
		}
		return "the bore as cut", within
	}
	if b.StepNamed(outlineStep) != nil {
		return "the outside", within
	}
	return "the middle as scribed", within
}

// trueBy is the bore of a plate as it was made before its welds.
func (f *flat) trueBy(n *Numbered) []TrueBy {
	switch bore := n.StepNamed(boreStep); {
	case n.cut.boreCut:
		by, within := f.centred(&bench{Numbered: n}, bore)
		return []TrueBy{{boreStep, by + " within " + n.W.Near(within)}}
	case bore != nil:
		return []TrueBy{{boreStep, "the bore as made before"}}
	}
	return f.usual.trueBy(n)
}

// trued says what a plate is set true by to be bored.
func (f *flat) trued(b *bench, bore *Step) string {
	by, within := f.centred(b, bore)
	return by + " true within " + b.W.Near(within) + ", face within " + b.W.Near(asRolledMm)
}

// asRolledMm is how true a face of plate as rolled can be set to an indicator: it is no
// flatter over its width. Common practice, no source.
const asRolledMm = 0.25

// boringHead is what bores on the mill.
const boringHead = "boring head"

// onMill tells a plate too large for the shop's lathe of which the bore alone would be
// turned: the mill bores it.
func (f *flat) onMill(s *Sizes) bool {
	most, bore := s.Job.Shop.SwingMm, s.StepNamed(boreStep)
	if !most.Set() || bore == nil || bore.Size.Thread != nil || !s.boreTurned(bore) || f.outlineTurned(s) || len(s.Part.Grooves) > 0 {
		return false
	}
	mm, _ := s.swungMm()
	return mm > most.Mm+geom.CloseMm
}

// outlineTurned tells an outline that is finished on the lathe.
func (f *flat) outlineTurned(s *Sizes) bool {
	outline := s.StepNamed(outlineStep)
	return outline != nil && (outline.Size.Class != "" || f.Outline.LeaveOnPart.Mm > 0)
}

func (f *flat) turnBore(b *bench, bore *Step) {
	o := plan.Operation{
		Machine: plan.Lathe, Title: "Bore " + b.sizeText(bore),
		Holding: "four-jaw chuck or faceplate; set " + f.trued(b, bore),
		Tool:    "boring bar", Speed: b.speed(cutting.Bore, bore.Size.NominalMm), Gauge: gauge(bore),
		Limits: b.limits(boreStep, bore.Size), Refs: []int{b.ref(bore)},
	}
	if bore.gauged() {
		o.Do = []string{"Rough to " + b.W.Near(0.5) + " under on diameter, let it cool, measure, finish."}
	}
	if bore.Size.Press.Set() {
		o.Do = []string{"Measure the " + words.Spaced(bore.Size.Press.Part) + " at four places across with a " + b.W.Micrometer(bore.Size.NominalMm) +
			"; take the largest. Set the bore gauge in the same micrometer.",
			"Bore to that less " +
				b.W.Size(0.02) + ", " + b.W.Size(0.01) + " to " + b.W.Said(0.03) + ": work it out on the line for it, or read the ladder at the end of the packet."}
	}
	if way, err := cutting.StartBore(bore.leastMm(), b.largestDrillMm(), b.drills()); err == nil && !b.cut.boreCut {
		o.Do = slices.Concat([]string{"Centre-drill."}, b.drillLines(way, true), o.Do)
	}
	if f.onMill(b.Sizes) {
		o.Machine, o.Tool, o.Speed, o.Bores = plan.Mill, boringHead, "", true
		o.Holding = "clamped on parallels, clear of the bore; under the spindle, " + f.trued(b, bore)
		o = warn(o, clampPart)
	} else if mm, corners := b.swungMm(); corners {
		o.Holding += "; its corners swing up to " + "Ø" + b.W.Room(mm)
		cautions := []caution{swings}
		if off := b.offCentreMm(); off > balancedShare*mm {
			cautions = append(cautions, outOfBalance)
		}
		o = warn(o, cautions...)
	}
	b.op(o)
}

// balancedShare is how far off the axis, of what it swings, the weight of a plate may lie for it
// to run without a counterweight. Common practice, no source.
const balancedShare = 0.005

// offCentreMm is how far off its axis the weight of a plate lies as its cutter leaves it.
func (b *bench) offCentreMm() float64 {
	path := b.OutlinePath()
	if b.cut.outline != nil {
		path = b.cut.outline
	}
	area, at := geom.NewContour(path).Middle()
	x, y := at.XMm*area, at.YMm*area
	for _, o := range b.cut.openings {
		mm2 := o.areaMm2()
		x, y, area = x-mm2*(o.a.XMm+o.b.XMm)/2, y-mm2*(o.a.YMm+o.b.YMm)/2, area-mm2
	}
	return math.Hypot(x, y) / area
}

// bevel cuts the chamfers: where the plate is set up for its bore, else by grinder.
func (f *flat) bevel(b *bench, onLathe bool) {
	do, refs := b.chamferLines(func(*chamfer) bool { return true })
	if len(do) == 0 {
		return
	}
	o := plan.Operation{
		Machine: plan.Lathe, Title: "Chamfers", Do: do, Tool: "chamfer tool, or top slide swung",
		Holding: "same setting where the edge can be reached, else turn round and set true", Refs: refs, Gauge: "calipers at the face",
	}
	switch {
	case onLathe && f.onMill(b.Sizes):
		o.Machine, o.Tool = plan.Mill, "chamfer tool in the "+boringHead
	case !onLathe:
		o.Machine, o.Tool, o.Holding = plan.Bench, "grinder or bevelling machine", "clamped to the bench"
		o = warn(o, grinding)
	}
	b.op(o)
}
