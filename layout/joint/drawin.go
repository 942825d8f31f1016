package joint

import (
	"math"

	"centrepop/layout/bolts"
	"centrepop/layout/plan"
	"centrepop/layout/words"
	"centrepop/parts"
	"centrepop/parts/seq"
)

// postsMm is what goes between the posts of a shop's press, turned any way. Common practice, no source.
const postsMm = 500.0

// reached finds whether a press of a shop can take what the shaft or hub that stays stands in by then: not where
// that is too heavy to be lifted by hand and too wide; one too heavy lets no shaft down into a hot hub either. A screw draws a bush into it, or a hub on by the shaft's end, else it is a problem.
func (j *making) reached(t *joint, p *plan.PressPlan) {
	side, comes := t.a, t.b
	if t.inward {
		side, comes = t.b, t.a
	}
	body := j.members(side.Instance(), j.before)
	kg, all := j.massKg(body, j.before)
	if len(body) < 2 || kg <= plan.LiftKg {
		return
	}
	if p.Method != "press" {
		t.built = !t.inward
		return
	}
	across := t.w.Even(j.acrossMm(t, side.Instance(), body), 10, 1)
	if across <= postsMm {
		return
	}
	t.frame, p.ShopPressN = words.AtLeast(!all)+t.w.RoundMass(kg, 0)+", "+t.w.Read(across)+" across", 0
	draws := j.drawsOn
	if t.inward {
		draws = j.drawsIn
	}
	t.screw = draws(t, p.ForceN.Max)
	if t.screw != nil {
		p.DrawNm = t.screw.nutNm
		return
	}
	t.problem(plan.PressFramed, plan.Named(side.title()), plan.Of(plan.Kg, kg), plan.Of(plan.Read, across), plan.Named(comes.title()))
}

// drawScrew pulls a bush into a hub that no press takes: a rod through both, a plate on the bush, and on the
// other side of the hub a tube round the bore with a plate on it, as thick. A hub is pulled on by a rod in the end of its
// shaft, with one plate.
type drawScrew struct {
	pullRod
	into   string  // the thread in the end of a shaft that a hub comes onto; empty for a bush
	outMm  float64 // across the plates
	tube   bounds  // inside of the tube
	tubeMm float64 // its length
}

// drawsIn is the screw for a force: the thinnest that stands it and goes through the shaft and its hub; nil where
// there is none.
func (j *making) drawsIn(t *joint, forceN float64) *drawScrew {
	free, d := math.Min(t.a.r.BoreMm(), t.b.r.BoreMm()), t.b.step.Size.NominalMm
	wide := seq.Max(d, t.a.r.Side(false), diameterMm)
	tube := bounds{wide + overMm/2, wide + 3*overMm/2, wide + overMm}
	for _, rod := range bolts.Coarse(t.w.Units == parts.Inches) {
		r, strong := j.rodFor(rod, forceN, tube.nominal+sleeveWallMm(d))
		if !strong || rod.Thread.MajorMm+overMm > free {
			continue
		}
		s := &drawScrew{pullRod: r, tube: tube, outMm: j.up(tube.high + 2*sleeveWallMm(d))}
		s.tubeMm = j.up(t.a.r.LengthMm() + endMm/2) // as far as the bush could come out
		s.longMm = j.w.Up(2*t.a.r.LengthMm()+t.b.r.LengthMm()+s.tubeMm+2*s.plateMm+4*rod.Thread.MajorMm, 10, 1.0/2)
		return s
	}
	return nil
}

// drawsOn is the screw that draws a hub onto a shaft by the thread in the end that it comes from; nil where there is none,
// or that stands less than twice the force.
func (j *making) drawsOn(t *joint, forceN float64) *drawScrew {
	out, span := j.standsOutMm(t)
	dir := 1.0
	if span.FromMm == 0 {
		dir = -1
	}
	thread, into, deep, ok := pull(t.a, dir)
	rod, err := bolts.Find(thread.Designation)
	if !ok || err != nil || j.setting(t).far {
		return nil
	}
	d := t.b.step.Size.NominalMm
	r, strong := j.rodFor(rod, forceN, d)
	if !strong {
		return nil
	}
	s := &drawScrew{pullRod: r, into: into, outMm: j.up(d + 2*sleeveWallMm(d))}
	s.longMm = j.w.Up(deep+t.b.step.LengthMm()-out+s.plateMm+(engagedDias+2)*rod.Thread.MajorMm, 10, 1.0/2)
	return s
}

// drawSteps draw the shaft of a press into a hub that no press takes, or the hub onto the shaft.
func (j *making) drawSteps(t *joint, p *plan.PressPlan, title, clean string) {
	hub, shaft, s := t.b.title(), t.a.title(), t.screw
	if s == nil {
		t.step("Stop", "It does not go together so: what it is pressed with stands in "+t.frame+
			", which goes into no shop press, and no screw draws it home. The way of joining, or the order, is changed first.")
		return
	}
	if s.into != "" {
		t.step(title, clean+"set "+hub+" by hand on the end of "+shaft+", lead-in inside. "+shaft+" stands in "+t.frame+
			", which goes into no press: a screw in its end draws "+hub+" on.", "Check square with a try square at two places 90° apart.")
		j.draw(t, p, "Rod into "+s.into+" of "+shaft+" by "+t.w.Near(engagedDias*s.rod.Thread.MajorMm)+" or more; the plate on "+hub+
			"; nut, washer and rod oiled. Hold the rod and turn the nut by half turns, with a look at the square after each, to: "+ofPlace+".", "Draw on")
		return
	}
	t.step(title, clean+"set "+shaft+" by hand on the mouth of the bore of "+hub+", lead-in inside. "+hub+" stands in "+t.frame+
		", which goes into no press: a screw draws "+shaft+" in.", "Check square with a try square at two places 90° apart.")
	j.draw(t, p, "Rod through both; on "+shaft+" one plate, on the other side of "+hub+
		" the tube round its bore and on that the other plate; nuts, washers and rod oiled. Hold one nut and turn the other by half turns, with a look at the square after each, to: "+
		ofPlace+".", "Draw in")
}

// draw is the step in which a screw draws, and what follows it.
func (j *making) draw(t *joint, p *plan.PressPlan, how, title string) {
	draw := t.step(title, how, j.stopText(t), "At the nut at most "+t.w.Torque(p.DrawNm)+" for the "+t.w.Forces(p.ForceN.Min, p.ForceN.Max, 1)+" that it takes at the end.")
	draw.Caution = "Stop where the nut grows heavy before that, or past it: the parts are tilted or galling. Stand out of line with the rod."
	t.rest(welded(t, j.all))
}

// screwTools are the tube, the plates and the rod that draw a bush in.
func (j *assembly) screwTools(t *joint, list *tooling) {
	s, d := t.screw, t.b.step.Size.NominalMm
	if s == nil {
		return
	}
	clear, err := s.rod.Thread.ClearanceMm("medium")
	if err != nil {
		return
	}
	if out, _ := j.standsOutMm(t); out < 0 && !t.collared() {
		list.add(t, tool{"Stop disc", j.plateText(d-overMm, -out, clear) + ", to lie on the end of " + t.a.r.Out.Title, j.plate(d-overMm, -out, clear, 1), nil})
	}
	plates, with, nuts := 2, ", 2, with rod ", ", 2 nuts and washers"
	if s.into != "" {
		plates, with, nuts = 1, ", with rod ", ", nut and washer"
	} else {
		list.add(t, tool{"Draw tube", j.hollow(s.tube.nominal, s.tube.nominal+2*sleeveWallMm(d), s.tubeMm) + "ends square", j.sleeve(s.tube, free(j.up(s.tube.high+2*sleeveWallMm(d))), s.tubeMm), nil})
	}
	list.add(t, tool{"Draw plate",
		j.plateText(s.outMm, s.plateMm, clear) + with + s.rod.Thread.Designation + " × " + t.w.Size(s.longMm) + " long, " + s.class + nuts,
		j.plate(s.outMm, s.plateMm, clear, plates), nil})
}

// plateText are the sizes of a round plate with a hole for the list, and plate is its drawing.
func (j *shop) plateText(outMm, thickMm, holeMm float64) string {
	return " " + j.w.Dia(outMm) + " × " + j.w.Size(thickMm) + " thick, hole " + j.w.Dia(holeMm)
}

func (j *shop) plate(outMm, thickMm, holeMm float64, count int) *parts.Part {
	p := toolBlank(parts.TurnedPart)
	p.Quantity = count
	p.Profile = &parts.Profile{Outside: []parts.Step{j.cylinder("outside", free(outMm), thickMm)}, Inside: []parts.Step{j.cylinder("bore", free(holeMm), thickMm)}}
	p.Stock = j.bar(outMm, 0)
	return p
}

// drawTools are the plate and the rod of a draw bolt, whose tube is a driver.
func (j *shop) drawTools(t *joint, list *tooling) {
	d, p := t.draw, t.out.Bearing
	clear, err := d.rod.Thread.ClearanceMm("medium")
	if err != nil {
		return
	}
	out := j.up(p.ConeSleeveOutMm + 2*plateRimMm)
	list.add(t, tool{"Draw plate",
		j.plateText(out, d.plateMm, clear) + ", with rod " + d.rod.Thread.Designation + " × " + t.w.Size(d.longMm) + " long, " + d.class + ", nut and washer",
		j.plate(out, d.plateMm, clear, 1), nil})
}
