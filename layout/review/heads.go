package review

import (
	"math"

	"centrepop/layout/bolts"
	"centrepop/layout/threads"
	"centrepop/layout/words"
	"centrepop/parts"
	"centrepop/parts/geom"
	"centrepop/parts/seq"
)

// head looks for bolt holes where neither head nor nut has room on a side, or
// no spanner reaches. Where a bolt is not yet chosen, hexagon head, plain
// washer and the tool that needs least are taken; a counterbored side takes a
// socket head.
func head(v *view) {
	worst := &worst{}
	for h := range seq.Refs(v.holes) {
		if !h.bolt() || v.joined(h.name) {
			continue
		}
		b, err := bolts.Find(h.group.Size.Thread)
		if err != nil {
			continue
		}
		neighbourMm := v.neighbourMm(h)
		for _, side := range []parts.Face{parts.Front, parts.Back} {
			if !h.through && side != h.face || side == h.face && (h.group.Counterbore != nil || h.group.Countersink != nil) {
				continue
			}
			wall, wallMm := v.hub(h, side)
			place := bolts.Place{Washer: true, Tool: bolts.ToolNone, WallMm: max(wallMm, 0), NeighbourMm: neighbourMm, HoleMm: 2 * h.radiusMm}
			r := headRoom{view: v, hole: h, bolt: b, side: side, place: place}
			if r.measure(wall) {
				r.report(worst)
			}
		}
	}
	worst.report()
}

// headRoom is what lies round a bolt's head or nut on one side of a hole.
type headRoom struct {
	*view
	hole  *hole
	bolt  bolts.Bolt
	side  parts.Face
	place bolts.Place

	near, needMm float64 // room beyond what the head needs from its nearest neighbour
	what         string  // that neighbour
}

// measure finds the nearest neighbour, and tells whether the table knows the
// head's size.
func (r *headRoom) measure(wall string) bool {
	room, err := r.bolt.HeadRoom(r.place)
	if err != nil {
		return false
	}
	r.near, r.needMm = endless, room.NeedWallMm
	if r.place.WallMm > 0 {
		r.near, r.what = r.place.WallMm-room.NeedWallMm, wall
	}
	if d := r.place.NeighbourMm; d > 0 && d-room.NeedNeighbourMm < r.near {
		r.near, r.what, r.needMm = d-room.NeedNeighbourMm, "the next bolt", room.NeedNeighbourMm
	}
	return true
}

func (r *headRoom) report(worst *worst) {
	h := r.hole
	key := words.Either(r.what == "the next bolt", h.name, h.name+string(r.side)) // the same on both sides
	if geom.Short(r.near) {
		worst.add(key, r.near, func(count int) {
			r.view.report(Check, h.name, h.pos, Finding{
				What:    h.title() + ": head or washer fouls " + r.what + " on the " + string(r.side) + same(count),
				Numbers: r.what + " is " + r.mm(r.needMm+r.near) + " from the centre, " + r.bolt.Thread.Designation + " with washer wants " + r.mm(r.needMm),
				LeftMm:  left(r.needMm + r.near), Rule: "hexagon over its corners or washer, with the bolt against the side of its hole", Source: r.bolt.Source,
				Fix: "move the holes, take a smaller bolt or none of the washer, or counterbore",
			})
		})
		return
	}
	if short := r.spannerLacks(); geom.Some(short) {
		worst.add(key, -short, func(count int) {
			r.view.report(Check, h.name, h.pos, Finding{
				What:    h.title() + ": the head fits, but no socket or ring spanner goes over it on the " + string(r.side) + same(count),
				Numbers: r.what + " is " + r.mm(r.near+r.needMm) + " from the centre; the spanner lacks " + r.mm(short), OverMm: over(short),
				Rule: "socket (1.25 s + 3)/2 or ring (1.45 s + 2)/2 round the bolt, s across flats",
				Fix:  "put the head or nut on the other side, take socket head screws, or move the holes",
			})
		})
	}
}

// spannerLacks is the room that the slimmer of socket and ring spanner lacks;
// 0 where one goes over, or neither is in the table.
func (r *headRoom) spannerLacks() float64 {
	lacks := endless
	place := r.place
	place.Washer = false
	for _, place.Tool = range []bolts.Tool{bolts.ToolSocket, bolts.ToolRing} {
		t, err := r.bolt.HeadRoom(place)
		if err != nil {
			continue
		}
		var short float64
		if place.WallMm > 0 {
			short = max(short, t.NeedWallMm-place.WallMm)
		}
		if place.NeighbourMm > 0 {
			short = max(short, t.NeedNeighbourMm-place.NeighbourMm)
		}
		lacks = min(lacks, short)
	}
	if math.IsInf(lacks, 1) {
		return 0
	}
	return lacks
}

// hub is the nearest wall that stands up beside a hole on a side of the part,
// and its distance from the hole's centre; 0 without one. A step with a fit is a
// spigot: it goes into the mate, so no head sits beside it.
func (v *view) hub(h *hole, side parts.Face) (what string, mm float64) {
	r := h.centreMm()
	near := nearest{wallMm: endless}
	for _, s := range v.m.Stretches() {
		mid := s.MidMm()
		// Over a blind hole through a flange, the far side is where it ends.
		above := mid < h.fromMm && side == parts.Front || mid > h.toMm && side == parts.Back
		if c := at(v.outside, mid); above && c != nil && !c.fitted() && c.RadiusMm() < r {
			near.take(r-c.RadiusMm(), "the side of "+c.Name)
		}
		if c := at(v.inside, mid); above && c != nil && c.RadiusMm() > r {
			near.take(c.RadiusMm()-r, "the bore "+c.Name)
		}
	}
	if !v.turned() || near.what == "" {
		return "", 0
	}
	return near.what, near.wallMm
}

// neighbourMm is the distance to the nearest other bolt hole, or 0.
func (v *view) neighbourMm(h *hole) float64 {
	var best float64
	for g := range seq.Refs(v.holes) {
		if g == h || !g.bolt() || g.group.Size.Thread != h.group.Size.Thread || geom.Over(g.fromMm, h.toMm) || geom.Over(h.fromMm, g.toMm) {
			continue // another, or in another flange
		}
		if d := apartMm(g, h); geom.Some(d) && (best == 0 || d < best) {
			best = d
		}
	}
	return best
}

// counterbore checks counterbores of bolt holes against the socket head screw of
// their size.
func (v *view) counterbore(g *parts.HoleGroup) {
	b, err := bolts.Find(g.Size.Thread)
	c := g.Counterbore
	if c == nil || g.Size.Make != parts.ClearanceHole || err != nil || b.SocketHeadDiameterMm == 0 {
		return
	}
	f := v.here(g.Name.Value, c.Diameter.Pos)
	f.Source = b.Source
	v.eachOf(f,
		flaw{geom.Over(b.SocketHeadDiameterMm, c.Diameter.Mm), Finding{
			Severity: Stop, What: g.Name.Value + ": the screw head does not go into the counterbore",
			Numbers: "counterbore " + v.mm(c.Diameter.Mm) + ", socket head " + v.mm(b.SocketHeadDiameterMm), LeftMm: left(c.Diameter.Mm),
			Rule: "a counterbore is wider than the head", Fix: "open the counterbore, or say in a note which head goes there"}},
		flaw{geom.Over(b.SocketHeadHeightMm, c.Depth.Mm), Finding{
			Pos: c.Depth.Pos, What: g.Name.Value + ": the screw head stands above the face",
			Numbers: "counterbore " + v.mm(c.Depth.Mm) + " deep, socket head " + v.mm(b.SocketHeadHeightMm) + " high", LeftMm: left(c.Depth.Mm),
			Rule: "a counterbore is as deep as the head", Fix: "make it deeper, or accept it where nothing passes over the face"}},
	)
}

// hexInCounterbore looks for joints whose hexagon heads lie in counterbores
// that no socket goes into.
func (r *reviewer) hexInCounterbore(j *parts.Joint) {
	in, v := j.Bolt, r.viewOf(j.Bolt.Through.Part)
	b, err := bolts.Find(in.Size)
	g, _ := v.groupNamed(in.Through.Feature)
	if in.Head != "hex" || err != nil || g == nil || g.Counterbore == nil {
		return
	}
	tool, err := bolts.ToolRadiusMm(bolts.ToolSocket, b.AcrossFlatsMm)
	if wide := g.Counterbore.Diameter.Mm; err == nil && geom.Over(2*tool, wide) {
		r.add(Finding{
			Part: j.Name.Value, Pos: in.Pos, What: "no socket goes over the hexagon heads in the counterbores of " + v.p.Title.Value,
			Numbers: "counterbore " + r.mm(wide) + ", socket " + r.mm(2*tool), LeftMm: left(wide),
			Rule: "a socket is about 1.25 s + " + r.mm(3) + " wide", Fix: "head: socket, or wider counterbores",
		})
	}
}

// countersink checks countersinks of screw holes against their screw's head: its angle, and
// the diameter of ISO 10642 at the least, about 1.8 times the thread.
func (v *view) countersink(g *parts.HoleGroup) {
	const least = 1.8
	const most = 2.6 // common practice, no source: heads are 1.8 to 2.25 times the screw
	b, err := bolts.Find(g.Size.Thread)
	if g.Countersink == nil || g.Size.Make != parts.ClearanceHole || err != nil {
		return
	}
	wanted, source := 90.0, "ISO 10642"
	if b.Thread.TPI > 0 {
		wanted, source = 82, "ASME B18.3"
	}
	if got := g.Countersink.Angle.Deg; math.Abs(got-wanted) > 0.5 {
		v.report(Check, g.Name.Value, g.Countersink.Angle.Pos, Finding{
			What: g.Name.Value + ": the countersink has not the angle of its screw's head", Numbers: number(got) + "° for " + number(wanted) + "°",
			Rule: "a countersunk head bears on its whole cone", Source: source, Fix: "angle: " + number(wanted),
		})
	}
	v.atLeast(g.Name.Value, g.Countersink.Diameter.Pos, g.Countersink.Diameter.Mm, least*b.Thread.MajorMm, Finding{
		What: g.Name.Value + ": the countersunk head stands above the face", Rule: "a countersink is as wide as the head, 1.8 times the screw", Fix: "a wider countersink",
	})
	v.atMost(g.Name.Value, g.Countersink.Diameter.Pos, g.Countersink.Diameter.Mm, most*b.Thread.MajorMm, Finding{
		What: g.Name.Value + ": the countersink is far wider than its head, which goes deep under the face",
		Rule: "a countersink is as wide as the head, 2.6 times the screw at the most", Fix: "countersink: the diameter of the head",
	})
}

// eyebolt is one by the major diameter of its thread, with what it carries straight and, of two, each at 45°.
type eyebolt struct{ majorMm, straightKg, slantKg float64 }

// eyeKg is what an eyebolt carries, straight and each of two at 45°, by the major diameter of its thread in mm: DIN
// 580:2003-08, table A.1; M6 from memory, as makers have it.
var eyeKg = []eyebolt{
	{6, 75, 55}, {8, 140, 100}, {10, 230, 170}, {12, 340, 240}, {16, 700, 500}, {20, 1200, 860}, {24, 1800, 1290}, {30, 3200, 2300}, {36, 4600, 3300},
}

// blindEye looks for plain holes and slots to lift by that nothing gets through.
func (v *view) blindEye(g *parts.HoleGroup) {
	if g.For == parts.Lifting && g.Size.Make != parts.TappedHole && !g.Through {
		v.report(Check, g.Name.Value, g.Pos, Finding{
			What: g.Name.Value + " is to lift by, and ends in the metal", Numbers: v.mm(g.Depth.Mm) + " deep", OverMm: over(g.Depth.Mm),
			Rule: "a shackle, a hook or a bolt goes right through what hangs in it", Source: "by geometry", Fix: "depth: through, or a tapped hole for an eyebolt",
		})
	}
}

// eyebolts compares tapped holes that a part hangs by with its mass: of two or more eyes two carry, at 45°. An inch
// thread counts as the metric one that is no larger, but for a fiftieth.
func (v *view) eyebolts(g *parts.HoleGroup) {
	t, err := threads.Parse(g.Size.Thread)
	if g.For != parts.Lifting || g.Size.Make != parts.TappedHole || err != nil || v.q.MassKg == 0 {
		return
	}
	carries := func(majorMm float64) (kg float64) {
		for _, e := range eyeKg {
			switch {
			case e.majorMm > 1.02*majorMm:
			case g.Pattern.Count > 1:
				kg = 2 * e.slantKg
			default:
				kg = e.straightKg
			}
		}
		return kg
	}
	kg := carries(t.MajorMm)
	if v.q.MassKg <= kg {
		return
	}
	has := v.w.RoundMass(kg, 0) + " at the most"
	if kg == 0 {
		has = "no eyebolt with a known load has that thread"
	}
	fix := "more than one eye, or a lug"
	if e := seq.First(eyeKg, func(e eyebolt) bool { return carries(e.majorMm) >= v.q.MassKg }); e.majorMm > 0 {
		fix = "M" + number(e.majorMm) + " or its like at the least, or a lug"
	}
	v.report(Check, g.Name.Value, g.Pos, Finding{
		What: g.Name.Value + " is small for what it lifts", Numbers: v.p.Title.Value + " weighs " + v.w.RoundMass(v.q.MassKg, 1) + "; " + t.Designation + ": " + has,
		LeftMm: left(t.MajorMm), Rule: "an eyebolt carries what its thread lets it, and of several two, at 45°; what else hangs with the part comes to that",
		Source: "DIN 580:2003-08, table A.1", Fix: fix,
	})
}

// boltPlay looks for clearance holes of a joint that are meant for a larger bolt
// than the joint's, and for slots as wide.
func (r *reviewer) boltPlay(j *parts.Joint) {
	b, err := bolts.Find(j.Bolt.Size)
	if err != nil {
		return
	}
	coarse, err := b.Thread.ClearanceMm("coarse")
	for _, ref := range j.Refs() {
		v := r.viewOf(ref.Part)
		g, slot := v.groupNamed(ref.Feature)
		_, mm := v.groupSize(ref.Feature)
		if err != nil || g != nil && g.Size.Make == parts.TappedHole || !geom.Over(mm, coarse) {
			continue
		}
		fix := words.Either(slot != nil, "the bolt that the slots are for, or narrower slots", "the bolt that the holes are for, or smaller holes")
		r.add(Finding{
			Part: j.Name.Value, Pos: j.Pos, What: "the bolts are small for " + ref.Feature + " of " + v.p.Title.Value, Numbers: j.Bolt.Size + " in " + r.mm(mm) + ", wanted at most " + r.mm(coarse),
			OverMm: over(mm), Rule: "a bolt fills its hole but for the coarse series of clearance", Source: "ISO 273, ASME B18.2.8", Fix: fix,
		})
	}
}
