package read

import (
	"math"
	"strings"

	"centrepop/parts"
	"centrepop/parts/geom"
	"centrepop/parts/seq"
)

// outerMm is the largest diameter a step has, 0 if only thread tables know it.
func outerMm(s *parts.Step) float64 {
	if s.Size.Nominal.Set() {
		return s.Size.Nominal.Mm
	}
	return threadMm(s.Size.Thread.Value)
}

// threadMm reads the major diameter out of a designation that says it: M40x1.5,
// Tr20x4, 1/2-13 UNC, 3/4-6 ACME. It returns 0 for others, such as pipe threads.
func threadMm(designation string) float64 {
	number, factor := designation, 1.0
	switch {
	case strings.HasPrefix(designation, "Tr"):
		number = designation[2:]
	case strings.HasPrefix(designation, "M"):
		number = designation[1:]
	default:
		size, _, lead := strings.Cut(strings.ToUpper(designation), "ACME")
		cut := strings.LastIndex(size, "-")
		if cut < 0 || !lead && !strings.Contains(designation, "UN") {
			return 0
		}
		number, factor = designation[:cut], geom.MmPerInch
	}
	number, _, _ = strings.Cut(strings.ReplaceAll(number, "×", "x"), "x")
	v, wrong := parts.NumberOf(strings.TrimSpace(number))
	if wrong != "" || v <= 0 || v*factor > geom.LargestMm {
		return 0
	}
	return v * factor
}

// widest is the largest outside diameter, 0 if one of them is not known here.
func widest(p *parts.Profile) float64 {
	best := 0.0
	for i := range p.Outside {
		d := outerMm(&p.Outside[i])
		if d == 0 {
			return 0
		}
		best = math.Max(best, d)
	}
	return best
}

// narrowest is the smallest inside diameter of a through bore, 0 for a blind
// one and if one of them is not known here.
func narrowest(p *parts.Profile) float64 {
	if !p.Through() {
		return 0
	}
	return seq.Least(p.Inside, func(s parts.Step) float64 { return outerMm(&s) })
}

// round is what a keyway or a groove is cut into: a step, the bore or the outline
// of a flat part, whose diameter is not given here.
type round struct {
	diameter         parts.Length
	fromMm, toMm     float64 // along the axis, from the front face
	lengthMm         float64 // of the part
	inside, threaded bool
}

// roundNamed is the step of a turned part, or the bore or outline of a flat one.
// There must be one of that name.
func roundNamed(p *parts.Part, name string) round {
	if p.Profile == nil {
		out := round{toMm: p.Thickness.Mm, lengthMm: p.Thickness.Mm, inside: name == "bore"}
		if out.inside {
			out.diameter = p.Bore.Size.Nominal
		}
		return out
	}
	step, from, inside := stepNamed(p.Profile, name)
	return round{step.Size.Nominal, from, from + step.Length.Mm, p.Profile.LengthMm(), inside, step.Size.Thread.Value != ""}
}

// stepNamed finds a step, where it starts and whether it is inside.
func stepNamed(p *parts.Profile, name string) (step *parts.Step, fromMm float64, inside bool) {
	for i, steps := range [][]parts.Step{p.Outside, p.Inside} {
		at := 0.0
		for j := range steps {
			if steps[j].Name.Value == name {
				return &steps[j], at, i == 1
			}
			at += steps[j].Length.Mm
		}
	}
	return nil, 0, false
}
