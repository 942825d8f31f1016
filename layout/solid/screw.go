package solid

import (
	"centrepop/layout/assembly"
	"centrepop/layout/bolts"
	"centrepop/layout/plan"
	"centrepop/parts"
)

// Screw is a bolt with its head up, seated at z = 0 on the part or its washer, countersunk in its cone under that,
// and the nut where the grip ends, if it has one: by the lengths of the joint's plan, its thread as thick
// as it is outside.
func Screw(b bolts.Bolt, in *parts.Joint, j *plan.JointPlan) (out, nut []assembly.Simple) {
	r := b.Thread.MajorMm / 2
	up := -j.Bolt.SunkMm
	if in.Bolt.Washer {
		up = b.WasherThicknessMm
		out = append(out, assembly.Tube(b.WasherODMm/2, r, 0, up))
	}
	s, sunk := b.Sunk()
	out = append(out, assembly.Cylinder(r, up-j.Bolt.LengthMm, up))
	switch head := bolts.Head(in.Bolt.Head); {
	case head == bolts.Countersunk && sunk:
		out = append(out, assembly.Turned([]assembly.ZR{{Z: up - s.HeightMm, R: r}, {Z: up, R: s.DiameterMm / 2}}, nil))
	case head == bolts.Socket:
		out = append(out, assembly.Cylinder(b.SocketHeadDiameterMm/2, up, up+b.SocketHeadHeightMm))
	default:
		out = append(out, assembly.Hexagon(b.AcrossFlatsMm, up, up+b.HeadHeightMm))
	}
	if in.Bolt.Nut {
		low := -j.Bolt.SunkMm - j.Bolt.GripMm
		if in.Bolt.Washer {
			nut = append(nut, assembly.Tube(b.WasherODMm/2, r, low-b.WasherThicknessMm, low))
			low -= b.WasherThicknessMm
		}
		nut = append(nut, assembly.Hexagon(b.NutAcrossFlatsMm, low-b.NutHeightMm, low))
	}
	return out, nut
}
