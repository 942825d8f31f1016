package joint

import (
	"math"

	"centrepop/layout/bolts"
	"centrepop/layout/plan"
	"centrepop/layout/press"
	"centrepop/layout/threads"
	"centrepop/layout/words"
	"centrepop/parts"
	"centrepop/parts/geom"
	"centrepop/parts/seq"
)

// A draw bolt is made for twice the force worked out, and for no less than leastN:
// what brings the rollers home. Common practice, no source.
const (
	drawTimes   = 2.0
	leastN      = 1000.0
	drawMPa     = 235.0 // yield of S235, EN 10025-2
	engagedDias = 1.5   // of the rod's thread in the shaft
	plateRimMm  = 5.0   // of the plate outside the tube
	leastPlate  = 6.0
)

// drawBolt pulls a cone on by the end of its shaft, and takes the end play of a pair
// of bearings up without a blow: a tube on the cone, a plate across it, a rod in the
// shaft's end and a nut.
type drawBolt struct {
	pullRod
	forceN float64
	into   string // "thread draw of Auger shaft"
}

// pullRod is a threaded rod with a nut, which pulls two things together over a plate.
type pullRod struct {
	rod     bolts.Bolt
	class   string
	proofN  float64
	nutNm   float64 // on the nut, oiled, for the greatest force
	plateMm float64 // thickness
	longMm  float64
}

// rodFor is a rod with what it stands and the torque on its nut for a force, and the plate under the nut over a tube
// of a mean diameter, no thinner than the least where the washer lies on the tube; ok where it stands drawTimes that.
func (j *shop) rodFor(rod bolts.Bolt, forceN, onMm float64) (r pullRod, ok bool) {
	r = pullRod{rod: rod, class: words.Either(rod.Thread.TPI != 0, "grade 5", "8.8")}
	thick, _ := bolts.PlateMm(drawTimes*forceN, onMm, rod.WasherODMm, drawMPa)
	r.plateMm = j.up(math.Max(leastPlate, thick))
	oiled, err := bolts.FindNutFactor("oiled")
	proof, unknown := rod.ProofLoadN(r.class)
	r.proofN, r.nutNm = proof, oiled.K*forceN*rod.Thread.MajorMm/1000
	return r, err == nil && unknown == nil && proof >= drawTimes*forceN
}

// nutFigure is the torque on the nut of a rod.
func (t *joint) nutFigure(r pullRod) {
	t.figure("at the nut", "up to "+t.w.Torque(r.nutNm)+", oiled", "K 0.15, design handbook page; ±30 % or more")
}

// pull finds the thread in the end of a shaft that a rod goes into: a tapped hole in
// the middle of the face, or a thread inside; ok is false where there is none.
func pull(shaft feature, dir float64) (t threads.Thread, into string, deepMm float64, ok bool) {
	face := parts.Face(faceName(dir))
	for g := range seq.Refs(shaft.r.Groups) {
		if g.Face == face && len(g.Points) == 1 && !geom.Over(g.Points[0].LengthMm(), 0) && g.Size.Thread != nil && g.Hole != nil && g.Hole.Size.Make == parts.TappedHole {
			return *g.Size.Thread, words.Spaced(g.Group.Name), 0, true
		}
	}
	_, inside := shaft.r.Sides()
	for _, s := range inside {
		if s.Size.Thread == nil {
			continue
		}
		if deep := reachMm(feature{r: shaft.r, step: s}, dir); !ok || deep < deepMm {
			t, into, deepMm, ok = *s.Size.Thread, words.Spaced(s.Name), deep, true
		}
	}
	return t, into, deepMm, ok
}

// drawn works out the draw bolt for a cone that a nut follows; nil where it slides on
// by hand, or where the shaft's end has no thread that is strong enough.
func (j *making) drawn(t *joint, p *plan.BearingPlan, m mounting) *drawBolt {
	if !p.Adjusted || p.ConeFitUm.Max <= 0 {
		return nil
	}
	thread, into, deep, ok := pull(t.a, m.coneDir)
	if !ok {
		return nil
	}
	force, err := coneForceN(t, p)
	rod, noBolt := bolts.Find(thread.Designation)
	if err != nil || noBolt != nil {
		return nil
	}
	d := &drawBolt{forceN: math.Max(leastN, force), into: into + " of " + t.a.title()}
	if d.pullRod, ok = j.rodFor(rod, d.forceN, (p.ConeSleeveInMm+p.ConeSleeveOutMm)/2); !ok {
		return nil
	}
	// Engaged in the shaft, over what stands between its thread there and the end of the tube while the cone's
	// small end is only at the edge of its seat, through the plate, nut and its own diameter beyond.
	d.longMm = j.w.Up(j.tubeMm(t, m)+coneMm(p)-reachMm(t.a, m.coneDir)+deep+d.plateMm+(engagedDias+2)*d.rod.Thread.MajorMm, 10, 1.0/2)
	return d
}

// tubeMm is the length of the tube: from the cone, before it is on its seat, past the
// end of the shaft.
func (j *shop) tubeMm(t *joint, m mounting) float64 {
	return j.up(reachMm(t.a, m.coneDir) + t.a.step.LengthMm() + endMm/2)
}

// coneMm is the width of a cone.
func coneMm(p *plan.BearingPlan) float64 {
	if p.ConeWidthMm != 0 {
		return p.ConeWidthMm
	}
	return p.WidthMm
}

// coneForceN is the greatest force that the cone needs on its seat: pressed dry at the
// tightest of its limits.
func coneForceN(t *joint, p *plan.BearingPlan) (float64, error) {
	shaft, err := press.Lookup(t.a.r.Part.Material.Value, p.BoreMm)
	if err != nil {
		return 0, err
	}
	cone, err := press.Lookup("C45", p.BoreMm) // elastic as bearing steel is; its strength is not asked
	if err != nil {
		return 0, err
	}
	friction, err := press.FrictionFor(cone, shaft, press.PressedDry)
	if err != nil {
		return 0, err
	}
	r, err := press.Solve(press.Input{
		Hub: press.Member{OutsideMm: math.Max(p.LargeEndMinMm, p.SmallEndMaxMm), InsideMm: p.BoreMm, Material: cone}, Shaft: press.Member{OutsideMm: p.BoreMm, Material: shaft},
		InterferenceMm: p.ConeFitUm.Max / 1000, LengthMm: coneMm(p), Friction: friction,
	})
	return r.ForceN.Max, err
}

// drawFigures are the numbers of the draw bolt.
func (t *joint) drawFigures() {
	d := t.draw
	if d == nil {
		return
	}
	t.figure("to draw the cone on", "up to "+t.w.Force(d.forceN, 1), "tightest limits, dry; friction is a guess within half: feel the nut, and stop where it grows heavy before the cone is home")
	t.figure("draw bolt", d.rod.Thread.Designation+", "+d.class+", proof load "+t.w.Force(d.proofN, 1)+"; plate "+t.w.Size(d.plateMm)+" thick",
		"for "+words.Trim(drawTimes, 0)+" times that force (common practice, no source); plate as one that is free at its edge, from memory")
	t.nutFigure(d.pullRod)
}
