package review

import (
	"math"

	"centrepop/layout/cutting"
	"centrepop/layout/material"
	"centrepop/layout/threads"
	"centrepop/parts"
	"centrepop/parts/geom"
	"centrepop/parts/seq"
)

// depth looks for blind holes whose drill comes out at the far side. A plain
// hole as deep as the metal under it is meant to go through that flange.
func depth(v *view) {
	v.barFloor()
	for _, h := range v.oneOfEach(func(h *hole) bool { return !h.through && h.metalMm > 0 }) {
		wantMm := h.depthMm
		drillMm := fullMm(h.thread, wantMm)
		if geom.Alike(wantMm, h.metalMm) && h.thread == nil {
			continue
		}
		if h.reamed() {
			drillMm += cutting.ReamBeyondMm(h.group.Size.Size.Nominal.Mm)
		}
		tipMm := drillMm + pointShare*h.drillMm
		f, deep := v.here(h.name, h.pos), v.mm(drillMm)+" deep, with the point "+v.mm(tipMm)+", in "+v.mm(h.metalMm)+" of metal"
		f.Numbers, f.OverMm = "full diameter "+deep, over(tipMm-h.metalMm)
		f.Rule, f.Source, f.Fix = "a blind hole keeps a floor", "by geometry", "make it shallower, or depth: through"
		if h.thread != nil {
			f.Numbers = "thread " + v.mm(wantMm) + ", drill " + deep
			f.Rule, f.Source = "the drill goes the run-out deeper than the full thread", "DIN 76-1 regular run-out; 118° point by geometry"
		}
		v.firstOf(f,
			flaw{geom.Short(h.metalMm - drillMm), Finding{What: h.title() + " is blind, but its drill comes out at the far side"}},
			flaw{geom.Over(tipMm, h.metalMm) && h.slot == nil, Finding{What: h.title() + " is blind, but the point of its drill comes out at the far side"}},
		)
	}
}

// reamed tells whether a hole is finished with a reamer, whose lead goes deeper.
func (h *hole) reamed() bool {
	return h.group != nil && h.group.Size.Make == parts.PlainHole && cutting.Reamable(h.group.Size.Size.Nominal.Mm, h.group.Size.Size.Fit.Class.Value)
}

// engagement looks for tapped holes with less thread than their material needs
// for the bolt to break before the thread strips.
func engagement(v *view) {
	metal, err := material.Find(v.p.Material.Value)
	if err != nil {
		return
	}
	m := metal.Kind.Data().Thread
	for _, h := range v.oneOfEach(func(h *hole) bool { return h.thread != nil && h.metalMm > 0 }) {
		haveMm := h.metalMm
		if !h.group.Through {
			haveMm = math.Min(haveMm, h.group.Depth.Mm)
		}
		if c := h.group.Counterbore; c != nil && h.group.Through {
			haveMm -= c.Depth.Mm
		}
		v.thread(threaded{h.name, h.title(), h.pos, h.thread, h.group.Through}, m, haveMm)
	}
	for f := range seq.Refs(v.p.Radials) {
		t := radialThread(f)
		if t == nil {
			continue
		}
		haveMm := v.wallAt(v.axialMm(f))
		if !f.Through {
			haveMm = math.Min(haveMm, f.Depth.Mm)
		}
		v.thread(threaded{f.Name.Value, f.Name.Value, f.Pos, t, f.Through}, m, haveMm)
	}
}

// threaded is a feature with a thread for a bolt or a fitting.
type threaded struct {
	feature, title string
	pos            parts.Pos
	thread         *threads.Thread
	through        bool
}

func (v *view) thread(t threaded, m material.Thread, haveMm float64) {
	needMm, f := m.Engagement*t.thread.MajorMm, Finding{
		What: t.title + " has little thread for a bolt in " + m.Name,
		Rule: "thread at least " + number(m.Engagement) + " times the diameter in " + m.Name,
		Fix:  "more depth or thicker metal, a smaller thread, or a nut on the far side",
	}
	switch {
	case t.thread.Taper: // it seals where it is as long as its mate goes in; a floor would stop that
		if needMm = t.thread.GaugeLengthMm; !t.through {
			needMm = max(t.thread.UsefulLengthMm, needMm+t.thread.WrenchMm)
		}
		f.What, f.Rule, f.Source, f.Fix = t.title+
			" is too short for its fitting to close", "a taper thread takes its mate by hand at least, and blind all of it", t.thread.Source.String(), "more depth or thicker metal, or a smaller thread"
	case t.thread.GaugeLengthMm > 0 || t.thread.Series == threads.PipeG:
		return // it carries a plug
	}
	if geom.Over(needMm, haveMm) {
		f.Numbers, f.LeftMm = t.thread.Designation+" with "+v.mm(haveMm)+" of thread, wanted "+v.mm(needMm), left(haveMm)
		v.report(Check, t.feature, t.pos, f)
	}
}
