package part

import (
	"math"
	"slices"
	"strconv"
	"strings"

	"centrepop/layout/develop"
	"centrepop/layout/plan"
	"centrepop/layout/words"
	"centrepop/parts"
	"centrepop/parts/geom"
	"centrepop/parts/seq"
)

// rolled is a tube that is closed from sheet by a seam along it. Nobody turns it; what a tube has
// besides, openings and saddled ends, it has too.
type rolled struct {
	tube
	in *parts.Formed
}

func (t *rolled) seamMm() float64 { return t.in.Height.Mm }

func (t *rolled) volumeMm3(g *Shape) float64 {
	return t.tube.volumeMm3(g) + t.in.Overlap.Mm*t.in.Height.Mm*t.in.Thickness.Mm
}

// flat is the blank, with the openings that are cut in it.
func (t *rolled) flat(s *Sizes) (develop.Shell, develop.Development, error) {
	outside := s.widest().Size.NominalMm
	shell := develop.Shell{OutsideDiameterMm: outside, LengthMm: t.in.Height.Mm, ThicknessMm: t.in.Thickness.Mm, OverlapMm: t.in.Overlap.Mm, SeamDeg: t.in.Seam.Deg}
	for _, row := range s.flatRows() {
		f := develop.Feature{Name: flatName(row), Kind: develop.Window, OnSurface: true, ClockDeg: row.ClockDeg, AxialMm: row.AxialMm}
		_, f.LengthMm, f.CornerMm = row.Sides()
		f.WidthMm = t.flatAroundMm(s, row)
		shell.Openings = append(shell.Openings, f)
	}
	p, err := shell.Develop()
	return shell, p, err
}

// flatAroundMm is how wide an opening is in the flat: what a tape reads outside, at the middle of the sheet. Round ends stay round.
func (t *rolled) flatAroundMm(s *Sizes, row plan.RadialRow) float64 {
	around, _, corner := row.Sides()
	return max(around*(1-t.in.Thickness.Mm/s.widest().Size.NominalMm), min(around, 2*corner))
}

func (t *rolled) developments(d *shaper) {
	t.tube.developments(d)
	shell, p, err := t.flat(d.Sizes)
	if err != nil {
		d.fault(t.tube.in.Pos, "the tube cannot be rolled: "+d.W.Refused(err), "other sizes, or stock: {tube: ...}")
		return
	}
	out := &d.pieces(plan.ShellPattern, "Shell", []develop.Development{p}, t.in.Seam.Deg)[0]
	if shell.Openings != nil {
		out.Tables = append(out.Tables, d.flatTable(shell, p))
	}
}

// flatName is what an opening is called on the flat blank.
func flatName(row plan.RadialRow) string { return row.Name + " " + strconv.Itoa(row.N) }

// flatTable is where the openings lie on the blank as it is seen with its outside up.
func (s *Sizes) flatTable(shell develop.Shell, p develop.Development) plan.PatternTable {
	out := plan.PatternTable{Title: "Openings on the flat, outside up, front edge below, to their centres", Heads: []string{"No.", "what", "from the left edge", "from the front edge", "around"}}
	for i, row := range s.flatRows() {
		centre := p.Openings[i]
		out.Rows = append(out.Rows, []string{strconv.Itoa(row.N), words.Spaced(row.Name), s.exact(centre.XMm - p.Box().Min.XMm), s.exact(centre.YMm), s.exact(shell.Openings[i].WidthMm)})
	}
	return out
}

// flatCut tells whether an opening is cut in the flat blank that a tube is rolled from: one that is plain, clear
// of the seam and of both ends, and not too small for a cutter that follows a file.
func (g *Shape) flatCut(m *Radial) bool {
	f, row, cut := g.Part.Rolled, m.Rows[0], g.Part.Stock.Cut
	if _, _, follows := LeastHoleMm(cut, g.plateMm()); f == nil || !follows || !m.In.Through {
		return false
	}
	around, along, _ := row.Sides()
	narrow, holds := min(around, along), 0.0
	if row.AroundMm == 0 {
		holds, _ = CutterHolds(cut, narrow, g.plateMm())
	}
	if z := m.Size.Size; m.Size.Thread != nil || m.Size.Reamed || z.Limited && z.MaxMm-z.MinMm < holds-1e-9 || tooSmall(g.Sizes, narrow, cut) != "" {
		return false
	}
	return !slices.ContainsFunc(m.Rows, func(r plan.RadialRow) bool {
		toEnd := min(r.AxialMm, g.LengthMm()-r.AxialMm) - along/2
		return min(toEnd, f.SeamGapMm(row.OutsideMm, r.ClockDeg, around/2)) < geom.CloseMm || g.branchOver(r.N) != nil
	})
}

// kinkShare is the share of the length that an opening takes, above which the sheet is seen to bend more sharply
// there in the rolls. Common practice, no source.
const kinkShare = 0.25

// kinks are the openings cut in the flat across which the sheet bends more sharply.
func (b *bench) kinks() string {
	var names []string
	for _, row := range b.flatRows() {
		if _, along, _ := row.Sides(); along > kinkShare*b.LengthMm() {
			names = append(names, words.Spaced(row.Name))
		}
	}
	return strings.Join(slices.Compact(names), ", ")
}

// radialsLeft tells whether an opening is made in the round.
func (s *Sizes) radialsLeft() bool {
	return slices.ContainsFunc(s.rows(), func(r plan.RadialRow) bool { return !r.InFlat })
}

// flatRows are the openings that are cut in the flat.
func (s *Sizes) flatRows() []plan.RadialRow {
	return seq.Keep(s.rows(), func(r plan.RadialRow) bool { return r.InFlat })
}

// needless is why the blank needs no paper.
func (t *rolled) needless(*shaper) string { return "a rectangle: two sides and a diagonal set it out" }

func (t *rolled) features(n *Numbered) {
	t.tube.features(n)
	n.seamFeature(t.in.Seam.Deg, t.in.Overlap.Mm)
}

func (t *rolled) operations(b *bench) {
	blanks := b.blanks()
	if len(blanks) == 0 {
		return // a fault of the part says why
	}
	long, lap := blanks[0].MaxMm.XMm-blanks[0].MinMm.XMm, t.in.Overlap.Mm
	cut := "Cut " + b.W.Read(long) + " × " + b.W.Said(t.in.Height.Mm) + " from " + b.StockText() + words.When(lap != 0, ", the lap of "+b.W.Read(lap)+" in it") +
		"; diagonals " + b.W.Taped(math.Hypot(long, t.in.Height.Mm)) + ", alike; cut edges deburred."
	o := plan.Operation{Machine: plan.Cutter, Title: "Cut the flat blank", Do: []string{cut}, Gauge: "rule, square", Refs: b.refs(plan.LengthFeature)}
	for m := range seq.Refs(b.Radials) {
		if row := m.Rows[0]; row.InFlat {
			around, _, _ := row.Sides()
			flat := t.flatAroundMm(b.Sizes, row)
			o.Do = append(o.Do, words.Join("; ", "Cut with it, outside up, "+words.Spaced(m.In.Name.Value)+": "+words.CountOf(len(m.Rows))+row.SizeText,
				words.When(geom.Over(around, flat), b.exact(flat)+" around in the flat"), m.In.Note.Value)+".")
			o.Refs = append(o.Refs, b.ref(m))
		}
	}
	b.op(warn(o, sheetEdges))
	outside := b.widest()
	do := []string{
		"Pre-bend the seam edges, roll to " + b.W.Dia(outside.Size.NominalMm) + " outside, the ends level at the seam.",
		"Tack the seam at clock " + words.Angle(t.in.Seam.Deg) + words.When(lap != 0, ", its outer edge clockwise of it") +
			", check both ends round: two diameters square to each other alike. Weld: " + b.seamText(),
	}
	if names := b.kinks(); names != "" {
		do = append(do, "The sheet bends more sharply across "+names+": hold a template of the radius there, and dress it.")
	}
	b.op(warn(plan.Operation{Machine: plan.Roll, Title: "Roll and close the seam", Do: do,
		Gauge: "tape round both ends: " + b.girth(outside), Refs: b.refs(plan.SeamFeature, plan.StepFeature)}, rolls, welding))
	if do, refs := b.chamferLines(func(*chamfer) bool { return true }); len(do) > 0 {
		b.op(plan.Operation{Machine: plan.Bench, Title: "Bevel the ends", Do: do, Tool: "hand grinder", Gauge: "bevel gauge", Refs: refs})
	}
}

// girth is what a tape reads round an outside.
func (s *Sizes) girth(st *Step) string {
	f := s.Part.Rolled
	return s.girthLimits(st.Size, f.Thickness.Mm, f.Overlap.Mm) + lapWord(f.Overlap.Mm)
}

// girthLimits are what a tape reads round an outside, over the lap if there is one, which lies lapMm higher: between
// its limits, where it has such.
func (s *Sizes) girthLimits(z Sized, lapMm, overlapMm float64) string {
	lap := develop.Shell{OutsideDiameterMm: z.NominalMm, ThicknessMm: lapMm, OverlapMm: overlapMm}.LapGirthMm()
	return words.Either(!z.Limited, s.W.Taped(math.Pi*z.NominalMm+lap), s.W.Limits(math.Pi*z.MinMm+lap, math.Pi*z.MaxMm+lap))
}

func lapWord(overlapMm float64) string {
	return words.Either(overlapMm != 0, " over the lap", " outside")
}

func (t *rolled) cutFile(k *cutter) (*plan.Profile, error) {
	shell, p, err := t.flat(k.Sizes)
	if err != nil {
		return nil, err
	}
	var cut []opening
	for i, row := range k.flatRows() {
		f := shell.Openings[i]
		o := opening{name: f.Name, shape: row.Shape, text: row.SizeText, radius: min(f.WidthMm, f.LengthMm) / 2, pos: k.Part.Pos, square: row.Shape == string(parts.RadialWindow), corner: row.CornerMm}
		half := plan.XY{XMm: f.WidthMm/2 - o.radius, YMm: f.LengthMm/2 - o.radius}
		o.a, o.b = at(p.Openings[i]).Plus(half), at(p.Openings[i]).Minus(half)
		cut = append(cut, o)
	}
	return k.blank(t.in.Thickness.Mm, cut...)
}
