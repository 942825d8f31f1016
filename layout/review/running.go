package review

import (
	"math"

	"centrepop/layout/material"
	"centrepop/parts"
)

// Steel as it is bought has about softHRC, below the scale's own beginning, and what is harderHRC harder than its
// counterpart runs on it with oil. Common practice, no source.
const (
	softHRC   = 20.0
	harderHRC = 20.0
)

// steelOnSteel looks for a shaft of steel that turns in a bush of steel no softer or harder than it: both wear, and seize
// when they are dry once. Two of stainless steel are told with the metals of their joint.
func (r *reviewer) steelOnSteel(j *parts.Joint) {
	if !r.job.Runs(j) {
		return
	}
	var hard [2]float64
	var of [2]*material.Material
	for i, ref := range []parts.JointRef{j.Slide.Hub, j.Slide.On} {
		v := r.viewOf(ref.Part)
		m, err := material.Find(v.p.Material.Value)
		if err != nil || m.Kind.Data().Family != material.Steel {
			return
		}
		of[i], hard[i] = &m, softHRC
		for c := range everyStep(v) {
			if c.Name == ref.Feature && c.Drawn.Hardness.Pos.Line > 0 {
				hard[i] = c.Drawn.Hardness.Value
			}
		}
	}
	if math.Abs(hard[0]-hard[1]) >= harderHRC || material.Galls(of[0].Kind, of[1].Kind) {
		return
	}
	r.add(Finding{
		Severity: Check, Part: j.Name.Value, Pos: j.Pos,
		What: r.job.Part(j.Slide.On.Part).Title.Value + " turns in " + r.job.Part(j.Slide.Hub.Part).Title.Value + ", and both are of steel as hard", Numbers: of[1].Name + " in " + of[0].Name,
		Rule: "a shaft runs in another metal than its own, or one of them is hard",
		Fix:  "a bush of bronze or cast iron (CuSn8, EN-GJL-250), a journal with hardness: 50, or accept it for what swings a little, slowly and greased",
	})
}
