package solid

import (
	"centrepop/layout/assembly"
	"centrepop/layout/bolts"
	"centrepop/layout/plan"
	"centrepop/parts"
)

// Screw is a bolt with its head up, seated at z = 0 on the part or its washer,
// and the nut where the grip ends, if it has one: by the lengths of the joint's plan, its thread as thick
// as it is outside.
func Screw(b bolts.Bolt, in *parts.Joint, j *plan.JointPlan) (out, nut []assembly.Simple) {
	r := b.Thread.MajorMm / 2
	up := 0.0
	if in.Bolt.Washer {
		up = b.WasherThicknessMm
		out = append(out, assembly.Tube(b.WasherODMm/2, r, 0, up))
	}
	out = append(out, assembly.Cylinder(r, up-j.Bolt.LengthMm, up))
	if in.Bolt.Head == "socket" {
		out = append(out, assembly.Cylinder(b.SocketHeadDiameterMm/2, up, up+b.SocketHeadHeightMm))
	} else {
		out = append(out, assembly.Hexagon(b.AcrossFlatsMm, up, up+b.HeadHeightMm))
	}
	if in.Bolt.Nut {
		low := -j.Bolt.GripMm
		if in.Bolt.Washer {
			nut = append(nut, assembly.Tube(b.WasherODMm/2, r, low-b.WasherThicknessMm, low))
			low -= b.WasherThicknessMm
		}
		nut = append(nut, assembly.Hexagon(b.NutAcrossFlatsMm, low-b.NutHeightMm, low))
	}
	return out, nut
}
