package joint

import (
	"centrepop/layout/bolts"
	"centrepop/layout/material"
	"centrepop/layout/part"
	"centrepop/layout/plan"
	"centrepop/layout/words"
)

// tighten works out the torque, and that for threads in the other state; none for what lies on a soft gasket or a plastic.
func (t *joint) tighten(p *plan.BoltPlan, of bolts.Tightening) bool {
	if p.Soft != nil || p.Creeps != "" {
		return true
	}
	full, err := t.bolt.Tighten(of)
	if err != nil {
		t.refuse(t.in.Bolt.Pos, plan.NoTorque, plan.Named(t.w.Refused(err)))
		return false
	}
	grade := full
	if on, mostN := t.bearsLeast(of.Head); mostN > 0 && mostN < full.PreloadN {
		of.MostN = mostN
		grade, _ = t.bolt.Tighten(of)
		p.Seat = &plan.SeatRow{What: on.title(), Metal: on.r.Out.Material, MPa: on.r.Material.PressureMPa(), Share: words.Round(mostN/full.PreloadN, 2)}
	}
	p.PreloadN, p.PreloadRangeN = words.Round(grade.PreloadN, 0), plan.Range{Min: words.Round(grade.PreloadLowN, 0), Max: words.Round(grade.PreloadHighN, 0)}
	p.TorqueNm, p.TorqueRangeNm = words.Round(grade.TorqueNm, 3), plan.Range{Min: words.Round(grade.TorqueLowNm, 3), Max: words.Round(grade.TorqueHighNm, 3)}
	p.K, p.KSource = grade.NutFactor.K, grade.NutFactor.Source
	t.companions(p, of)
	return true
}

// bearsLeast is the part under the heads or nuts whose metal bears the least preload, N, and that; 0 where that of none is kept.
func (t *joint) bearsLeast(head bolts.Head) (on feature, mostN float64) {
	bears := func(f feature, nut bool) {
		if f.group == nil || f.group.Size.Thread != nil || f.r.Material == nil {
			return
		}
		n := t.bolt.SeatMm2(head, nut, t.in.Bolt.Washer, f.group.Size.FinishedMm) * f.r.Material.PressureMPa()
		if n > 0 && (mostN == 0 || n < mostN) {
			on, mostN = f, n
		}
	}
	bears(t.a, t.in.Stud() != "")
	bears(t.b, true)
	return on, mostN
}

// studProof is the proof stress of a made stud over the yield stress of its
// material: the least ratio of the classes of ISO 898-1:2013 Table 3 (600 to 660 MPa
// of 8.8; 225 to 240 of 4.6).
const studProof = 0.9

// studTorque is the torque for a stud by the yield stress of its material as bought,
// and the nut class that is stronger.
func (t *joint) studTorque(p *plan.BoltPlan, r *part.Model) {
	var strength material.Strength
	err := error(nil)
	if r.Material != nil {
		strength, err = r.Material.Strength(r.Part.Stock.Size.Mm)
	}
	if r.Material == nil || err != nil || strength.Brittle || !t.tighten(p, bolts.Tightening{ProofMPa: studProof * strength.YieldMPa, Condition: t.friction(r.Material.Kind)}) {
		t.caution("The strength of the made stud is not known, and no torque is given: tighten alternately, spanner-tight.")
		return
	}
	p.NutClass = "8"
	if t.bolt.Thread.TPI != 0 {
		p.NutClass = "grade 5" // SAE J995, from memory: as strong as a grade 5 bolt
	}
	t.figure("proof stress of the stud", t.w.Stresses(studProof*strength.YieldMPa, studProof*strength.YieldMPa, 0)+", "+words.Trim(studProof, 1)+" of yield",
		r.Material.Name+": "+strength.Source+"; ratio of ISO 898-1 classes")
}
