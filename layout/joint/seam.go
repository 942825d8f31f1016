package joint

import (
	"cmp"
	"math"
	"slices"
	"strconv"
	"strings"

	"centrepop/layout/bars"
	"centrepop/layout/plan"
	"centrepop/layout/weld"
	"centrepop/layout/words"
	"centrepop/parts"
	"centrepop/parts/seq"
)

// seamOverMm is how much longer than once round a weld may be said. Common practice, no source: its ends lap.
const seamOverMm = 10.0

// seamRoundMm is once round the end of a bar that is welded on, or the round that a weld runs on;
// 0 for another seam.
func (t *joint) seamRoundMm() float64 {
	if bar, _, ok := t.onBarEnd(); ok {
		section, _, _ := bar.r.Bar()
		if section.Shape == bars.Round {
			return math.Pi * section.WidthMm
		}
		return 2 * (section.WidthMm + section.DepthMm)
	}
	return math.Pi * t.weldDiameterMm()
}

// longMm is the length of a weld: as said, in its corners, or once round; 0 where nothing says it.
func (t *joint) longMm(p *plan.WeldPlan) (mm float64, err error) {
	switch {
	case t.in.Weld.Length.Set():
		return t.in.Weld.Length.Mm, nil
	case t.derived():
		return seq.Sum(p.Corners, func(c plan.Corner) float64 { return c.LengthMm }), nil
	case t.helixMm() != 0:
		return words.Round(t.helixMm(), 1), nil
	case t.b.radial != nil && p.DiameterMm != 0:
		return t.saddleMm(p.DiameterMm)
	case t.corner():
		end, _ := t.a.mitre()
		section, _, _ := t.a.r.Bar()
		return words.Round(section.SeamMm(math.Abs(t.a.r.Part.Bar.End(end).Mitre.Deg)), 0), nil
	}
	return math.Pi * p.DiameterMm, nil
}

// seam is how a straight weld is tacked, where that is not along the seam, welded and gauged.
type seam struct{ tack, weld, gauge string }

// weldedRound tells whether the end of a bar is welded round its section: all of it, or by a seam of a length
// that no two sides have. The mitre of what is not hollow is one seam (bars.Section.SeamMm).
func (t *joint) weldedRound() bool {
	bar, _, ok := t.onBarEnd()
	if section, _, _ := bar.r.Bar(); t.corner() && !section.Hollow() {
		return false
	}
	if ok && t.in.Weld.Length.Set() {
		return t.in.Weld.Sides < 2 && t.in.Weld.Length.Mm > t.seamRoundMm()/2
	}
	return ok
}

// roundSection tells whether the bar whose end is welded is round.
func (t *joint) roundSection() bool {
	bar, _, _ := t.onBarEnd()
	section, _, _ := bar.r.Bar()
	return section.Shape == bars.Round
}

// flares are the section and the length of the seams where the end of a bar stands flush over the
// round corner of a hollow section; no length where it does so on no side.
func (t *joint) flares(p *plan.WeldPlan) (mm2, mm float64) {
	bar, on, ok := t.onBarEnd()
	stands, _, _ := bar.r.Bar()
	section, _, _ := on.r.Bar()
	round, _ := section.CornersMm()
	if !ok || round == 0 {
		return 0, 0
	}
	for _, side := range p.Flush {
		switch parts.Side(side) {
		case parts.FrontSide, parts.BackSide:
			mm += stands.WidthMm
		default:
			mm += stands.DepthMm
		}
	}
	return weld.FlareArea(round, cmp.Or(stands.WallMm, round)), mm
}

// flare says what the end of a bar stands over where it is flush with a hollow section: no gap of 0,
// but the round of its corner.
func (t *joint) flare() string {
	p := t.out.Weld
	if p.FlareMm == 0 {
		return ""
	}
	_, on, _ := t.onBarEnd()
	section, _, _ := on.r.Bar()
	r, _ := section.CornersMm()
	layers := words.When(p.FlareRuns > 1, ", root first, in layers")
	return "over the round corner of " + on.title() + ", radius about " + t.w.Read(r) + ", the gap opens to a flare" + layers + ": "
}

// seam is that of the sides of a bar's section that is welded round, of both sides of a plate, or of one.
func (t *joint) seam() seam {
	barEnd := t.weldedRound()
	flush := len(t.out.Weld.Flush) > 0
	switch out := (seam{"", "From the middle outward.", "at both ends and in the middle"}); {
	case barEnd && flush:
		return seam{"the middle of each side of the section",
			"The fillets in the corners first, each from its middle outward; then the flush sides, which have no corner: " + t.flare() + "a seam filled level with both.",
			"in the middle of each fillet"}
	case barEnd && t.roundSection():
		return seam{"at four places round it, the opposite one after each", "In quarters, opposite ones in turn.", "in the middle of each quarter"}
	case barEnd:
		return seam{"the middle of two opposite sides of the section, then of the other two", "Each side of the section from its middle outward, opposite sides in turn.", "in the middle of each side"}
	case t.out.Weld.Round:
		return seam{out.tack, "From the middle of its longest side outward both ways, round the corners without a stop" +
			map[bool]string{true: ". No weld where it stands flush: there is no corner.", false: " until both meet."}[flush], out.gauge + " of each side"}
	case flush:
		return seam{out.tack, "From the middle outward, corner by corner in turn. No weld where it stands flush: there is no corner.", out.gauge + " of each fillet"}
	case t.out.Weld.Lap:
		return seam{out.tack, "Each edge from its middle outward, the opposite one after it.", "in the middle of each edge"}
	case t.in.Weld.Sides == 2 || t.helixMm() != 0 || !t.out.Weld.OneSided():
		return seam{out.tack, "From the middle outward, turn and turn about on the two sides.", out.gauge + ", on each side"}
	default:
		return out
	}
}

// tackRow is the number and length of the tacks of a straight seam, which is taken in whole 5 mm
// so that pieces alike but for a millimetre are tacked alike.
func (t *joint) tackRow(lengthMm float64) (n int, eachMm float64) {
	lengthMm = max(5*math.Floor(lengthMm/5), min(5, lengthMm))
	n, eachMm, err := weld.TackRow(lengthMm, t.out.Weld.ThinnerMm, t.out.Weld.ThickerMm)
	if err != nil {
		t.refuse(t.in.Pos, plan.WeldUnworkable, plan.Named(t.w.Refused(err)))
	}
	return n, t.tackMm(eachMm)
}

// leastTackMm is the shortest tack that holds anything: a corner too short for it is left without one where
// another is longer. Common practice, no source.
const leastTackMm = 5.0

func (t *joint) tackTooShort(seamMm float64) bool {
	_, mm := t.tackRow(seamMm)
	return mm < leastTackMm
}

// tackMm is the length of a tack to the millimetre, or to the sixteenth of an inch.
func (t *joint) tackMm(mm float64) float64 { return t.w.Even(mm, 1, 1.0/16) }

// tackSeams says how many tacks hold a straight weld, of what length and in what order. The
// sides of a section are tacked in their middles.
func (t *joint) tackSeams() string {
	p, seam := t.out.Weld, t.seam()
	long, edges := t.seamsMm()
	alike := long[0] == long[len(long)-1]
	for len(long) > 1 && t.tackTooShort(long[0]) {
		long = long[1:]
	}
	if seam.tack != "" {
		side := long[0]
		if !t.derived() {
			side /= 4
		}
		_, p.TackLengthMm = t.tackRow(side)
		return "Tack " + seam.tack + ", each tack " + t.w.Read(p.TackLengthMm) + " long."
	}
	var each []string
	tacks := 1 // of the longest seam that has more than one
	for i, mm := range slices.Backward(long) {
		n, tack := t.tackRow(mm)
		text := strconv.Itoa(n) + " × " + t.w.Read(tack) + " long"
		if on := t.w.Read(mm); !alike {
			if p.Lap || p.Round { // corners that are rounded are of both edges
				on = strings.Join(edges[mm], " and ")
			}
			text += " on " + on
		}
		each = seq.Add(each, text)
		if tacks == 1 {
			tacks = n
		}
		if i == len(long)-1 {
			p.TackLengthMm = tack
		}
	}
	of, turn := "", ""
	if len(long) > 1 || p.Sides > 1 {
		of, turn = "each seam ", "; one tack on each seam in turn, so that no side pulls"
	}
	return "Tack " + of + strings.Join(each, ", ") + ": " + tackOrder(tacks) + turn + "."
}

// seamsMm are the lengths of the seams of a straight weld, the shortest first, and on which sides those of corners lie.
func (t *joint) seamsMm() (long []float64, sides map[float64][]string) {
	if !t.derived() {
		return []float64{t.out.Weld.LengthMm}, nil
	}
	sides = map[float64][]string{}
	for _, c := range t.out.Weld.Corners {
		long, sides[c.LengthMm] = append(long, c.LengthMm), append(sides[c.LengthMm], c.Side)
	}
	slices.Sort(long)
	return long, sides
}

// tackOrder is the order of tacks along a straight seam.
func tackOrder(n int) string {
	switch n {
	case 1:
		return "in its middle"
	case 2:
		return "both ends"
	case 3:
		return "both ends, then the middle"
	}
	return "both ends, then the middle, then always into the widest gap, at equal distances"
}
