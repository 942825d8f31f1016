package joint

import (
	"centrepop/layout/material"
	"centrepop/layout/plan"
	"centrepop/layout/weld"
)

// weldMetals judges the two materials of a weld. ok is false if one of them is
// not known, which the review of the part reports.
func weldMetals(t *joint) (j material.Join, ok bool) {
	a, b := t.a.r.Material, t.b.r.Material
	if a == nil || b == nil {
		return j, false
	}
	return material.JoinOf(*a, *b), true
}

// preheat is what a metal that hardens beside a weld takes before the tacks; nothing for another.
func (t *joint) preheat() string {
	j, ok := weldMetals(t)
	if !ok || j.PreheatC.Max == 0 {
		return ""
	}
	return "By the written procedure for " + t.drawnMetal(j.Worse) + ": " +
		t.w.Arg(plan.Arg{Unit: plan.Preheat, Value: j.PreheatC.Min, High: j.PreheatC.Max}) +
		"through and all round, before the tacks too; measure it, and hold it to the last run."
}

// ownFiller names the metals of a weld that takes a filler of its own; empty of another.
func (t *joint) ownFiller() string {
	switch j, _ := weldMetals(t); j.Reason {
	case material.JoinOwn:
		return t.drawnMetal(j.Worse)
	case material.JoinStainless:
		return t.a.r.Out.Material + " to " + t.b.r.Out.Material
	}
	return ""
}

// drawnMetal is the name that the drawing has for the metal of one of the two.
func (t *joint) drawnMetal(m material.Material) string {
	if t.b.r.Material != nil && t.b.r.Material.Name == m.Name {
		return t.b.r.Out.Material
	}
	return t.a.r.Out.Material
}

// weldMetalKind is the problem of each reason not to weld like ordinary steel.
var weldMetalKind = map[material.JoinReason]plan.ProblemKind{
	material.JoinHardens: plan.WeldHardens, material.JoinIron: plan.WeldIron, material.JoinOwn: plan.WeldOwnWay,
	material.JoinStainless: plan.WeldOwnWay, material.JoinCracks: plan.WeldCracks, material.JoinMetals: plan.WeldMixed,
}

// atHome tells two metals of one kind that the process of their weld suits, with a filler of their own:
// austenitic stainless steel by all but a self-shielded wire, aluminium under argon alone (ISO 4063:
// 131, 141). Common practice, no source.
func (t *joint) atHome() bool {
	kind, process := t.a.r.Material.Kind, weldProcesses[t.in.Weld.Process]
	if kind != t.b.r.Material.Kind {
		return false
	}
	return kind == material.AusteniticStainless && process != weld.SelfShielded || kind == material.AluminiumAlloy && (process == weld.MIG || process == weld.TIG)
}

// weldMetalProblem notes by name what is not welded like ordinary steel.
func weldMetalProblem(t *joint, j material.Join) {
	kind := weldMetalKind[j.Reason]
	if kind == "" || j.Reason == material.JoinHardens && j.Class == material.WeldPreheated || j.Reason == material.JoinOwn && t.atHome() {
		return
	}
	t.problem(kind, plan.Named(t.drawnMetal(j.Worse)), plan.Arg{Unit: plan.Preheat, Value: j.PreheatC.Min, High: j.PreheatC.Max})
}
