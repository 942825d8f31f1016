package part

import (
	"cmp"
	"slices"

	"centrepop/layout/plan"
	"centrepop/layout/words"
	"centrepop/parts/geom"
	"centrepop/parts/seq"
)

// Numbered is the third stage: the features that pictures, operations and
// record speak of, with their numbers. Read-only.
type Numbered struct {
	*Shape
	Features []plan.Feature
	numbers  map[any]int // of a step or an item

	unmeasured []plan.Problem // found as the settings of the lathe were worked out
}

// number numbers from 1 the steps and what else belongs to the form, then what
// is on it.
func number(g *Shape) *Numbered {
	n := &Numbered{Shape: g, numbers: map[any]int{}}
	g.form.features(n)
	for _, it := range g.items() {
		n.numbers[it] = n.add(it.feature(n))
	}
	return n
}

func (t *turned) features(n *Numbered) {
	n.stepFeatures(plan.StepFeature, true)
	n.lengthFeature(plan.LengthFeature)
}

func (n *Numbered) add(f plan.Feature) int {
	f.N = len(n.Features) + 1
	n.Features = append(n.Features, f)
	return f.N
}

// ref is the number of a step or an item.
func (n *Numbered) ref(of any) int { return n.numbers[of] }

func (n *Numbered) refs(kinds ...plan.FeatureKind) []int {
	of := seq.Keep(n.Features, func(f plan.Feature) bool { return slices.Contains(kinds, f.Kind) })
	return seq.Map(of, func(f plan.Feature) int { return f.N })
}

// stepFeatures numbers the cylinders; where their length is the part's own it
// is not said.
func (n *Numbered) stepFeatures(kind plan.FeatureKind, withLength bool) {
	for s := range seq.Refs(n.Steps) {
		size := n.sizeText(s)
		size += words.When(withLength, " × "+n.longText(s)+" long")
		k := kind
		if !withLength && s.Inside {
			k = plan.BoreFeature
		}
		n.numbers[s] = n.add(plan.Feature{
			Kind: k, Name: words.Spaced(s.Name), Size: size, Limits: n.limitsText(s.Size), Within: s.Size.leftOut(), Note: n.detailNote(s),
			Balloon: plan.XY{XMm: geom.Clean(s.MidMm()), YMm: s.RadiusMm()},
		})
	}
}

// detailNote is what is on a step, what sits there first.
func (n *Numbered) detailNote(s *Step) string {
	note := ""
	for _, d := range s.details {
		note = words.Join("; ", d.note(n.W), note)
	}
	return note
}

// lengthFeature numbers the size along the axis.
func (n *Numbered) lengthFeature(kind plan.FeatureKind) {
	n.add(plan.Feature{
		Kind: kind, Name: string(kind), Size: n.W.Size(n.LengthMm()), Limits: n.limitsText(n.whole()),
		Balloon: plan.XY{XMm: n.LengthMm(), YMm: n.Section.MaxMm * 0.9},
	})
}

// seamFeature numbers the seam of what is rolled or folded from sheet.
func (n *Numbered) seamFeature(seamDeg, overlapMm float64) {
	size := "clock " + words.Angle(seamDeg)
	size += words.When(overlapMm > 0, ", overlap "+n.W.Size(overlapMm))
	line := n.Section.Outer
	n.add(plan.Feature{Kind: plan.SeamFeature, Name: "seam", Size: size, Balloon: plan.XY{XMm: n.LengthMm() / 2, YMm: geom.Clean((line[0].YMm + line[1].YMm) / 2)}})
}

// trueBy is what a part is set true by when it is finished after its welds, of what was made before: the
// outsides that are turned, the widest first, then the bores, else the outside as bought.
func (usual) trueBy(n *Numbered) (out []TrueBy) {
	for i, inside := range []bool{false, true} {
		of := seq.Keep(n.Side(inside), func(s *Step) bool { return !s.Size.AsBought && s.Size.Thread == nil })
		slices.SortStableFunc(of, func(p, q *Step) int { return cmp.Compare(q.Size.NominalMm, p.Size.NominalMm) })
		out = append(out, seq.Map(of, func(on *Step) TrueBy {
			return TrueBy{on.Name, words.Spaced(on.Name) + " " + n.W.Dia(on.Size.NominalMm) + [...]string{" as turned", " as bored"}[i]}
		})...)
	}
	if len(out) == 0 {
		out = []TrueBy{{Text: "its outside as bought within " + n.W.Near(boughtTrueMm)}}
	}
	return out
}
