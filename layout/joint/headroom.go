package joint

import (
	"math"
	"slices"
	"strings"

	"centrepop/layout/bolts"
	"centrepop/layout/part"
	"centrepop/layout/plan"
	"centrepop/layout/words"
	"centrepop/parts"
	"centrepop/parts/geom"
	"centrepop/parts/seq"
)

// closedBy are the bolted joints of later steps whose faces come together at this one.
func (j *making) closedBy(t *joint) (out []*joint) {
	with := j.made(t)
	for _, o := range ofKind(j.all, parts.BoltKind) {
		if !slices.Contains(with, o) {
			_, now := j.side(o, with)
			if _, before := j.side(o, j.before); now && !before {
				out = append(out, o)
			}
		}
	}
	return out
}

// headRoom checks head and spanner against every wall near the bolts that stands there when they are tightened, and the
// head alone against those that come later.
func (j *making) headRoom(t *joint, p *plan.BoltPlan) {
	stands := j.members(t.a.Instance(), j.made(t))
	there := func(i parts.Instance) bool { return slices.Contains(stands, i) }
	for _, side := range j.headSides(t) {
		place := bolts.Place{Head: bolts.Head(p.Head), Nut: side.isNut || t.in.Stud() != "", Washer: t.in.Bolt.Washer, HoleMm: t.a.group.Size.FinishedMm, NeighbourMm: side.nearestMm()}
		if side.sunkMm > 0 {
			t.sunkHead(p)
			place.Tool = bolts.ToolNone
		}
		wall, who, of := j.wall(side, there)
		if wall > 0 {
			place.WallMm = wall
			place.FilletMm = j.filletAt(of, side.on.Instance())
		}
		after := j.closedIn(t, side, place, func(i parts.Instance) bool { return !there(i) })
		room, err := t.bolt.HeadRoom(place)
		if err != nil {
			t.refuse(t.in.Bolt.Pos, plan.NoRoomKnown, plan.Named(t.w.Refused(err)))
			return
		}
		label := "room for " + side.what
		if wall > 0 {
			t.figure(label, j.w.Read(words.Round(room.WallGapMm, 1))+" to "+who+", with tool"+after, "tool sizes common practice, no source")
			if p.WallGapMm == 0 || room.WallGapMm < p.WallGapMm {
				p.WallGapMm = words.Round(room.WallGapMm, 2)
			}
		} else if after != "" {
			t.figure(label, strings.TrimPrefix(after, "; "), "tool sizes common practice, no source")
		}
		p.NeighbourGapMm = words.Round(room.NeighbourGapMm, 2)
		t.roomless(side, room)
		j.blocked(t, side)
	}
}

// filletAt is the leg of the fillet between a wall and the part that the heads
// stand on, taken to lie on their side; 0 if there is none.
func (j *making) filletAt(wall, stand parts.Instance) float64 {
	between := seq.Keep(ofKind(j.before, parts.WeldKind), func(o *joint) bool { return wall != stand && o.has(wall) && o.has(stand) })
	return seq.Max(0, between, func(o *joint) float64 { return o.out.Weld.LegMm })
}

// wall is the least distance from a bolt to a hub or rim beside its head, of the parts asked for; 0
// if there is none.
func (j *making) wall(side headSide, asked func(parts.Instance) bool) (mm float64, who string, of parts.Instance) {
	mm = math.Inf(1)
	for q := range seq.Refs(j.placed) {
		if q.group != side.group || !asked(q.Instance) {
			continue
		}
		for s := range seq.Refs(q.r.Steps) {
			if q.Instance == side.on.Instance() && q.r.Part.Flat() {
				continue
			}
			from, to := side.outMm(q, s.FromMm), side.outMm(q, s.ToMm)
			if math.Max(from, to) < 0.5 || math.Min(from, to) > side.headMm {
				continue
			}
			for _, p := range side.all() {
				radius, name := j.standsOn(q, s)
				d := math.Hypot(p.XMm, p.YMm) - radius
				if s.Inside {
					d = -d
				}
				if d > 0 && d < mm {
					mm, who, of = d, name, q.Instance
				}
			}
		}
	}
	if math.IsInf(mm, 1) {
		return 0, "", parts.Instance{}
	}
	return geom.Clean(mm), who, of
}

// standsOn is the radius of a step and its name, or those of the made nut that was put on it
// by hand with an earlier joint, over the head of its screw.
func (j *making) standsOn(q *placedPart, s *part.Step) (mm float64, name string) {
	mm, name = s.Size.NominalMm/2, copyTitle(q.r, q.Copy)+" "+words.Spaced(s.Name)
	if s.Inside || s.Size.Thread == nil {
		return mm, name
	}
	made := j.nutMade(s.Size.Thread.Designation)
	on := func(e parts.Loose) bool {
		return e.Part.Value == made.Part.Name.Value && slices.ContainsFunc(j.before, func(o *joint) bool { return o.in.Name.Value == e.After.Value })
	}
	if made == nil || !slices.ContainsFunc(j.job.Loose, on) {
		return mm, name
	}
	mm = seq.Max(2*mm, made.Side(false), diameterMm) / 2
	if c := made.Clamp; c != nil {
		mm = max(mm, c.Row.OutsideMm/2+c.Row.ProudMm)
	}
	return mm, made.Out.Title
}

// blocked finds a part that lies right on top of heads that stand proud.
func (j *making) blocked(t *joint, side headSide) {
	for q := range seq.Refs(j.placed) {
		if q.group != side.group || q.Instance == side.on.Instance() {
			continue
		}
		if gap, over := j.over(q, side); over && geom.Over(side.headMm, gap+side.sunkMm) {
			t.problem(plan.HeadsCovered, plan.Named("the "+side.what), plan.Of(plan.Mm, geom.Clean(side.headMm)), plan.Named(copyTitle(q.r, q.Copy)), plan.Of(plan.Mm, geom.Clean(gap+side.sunkMm)))
		}
	}
}

// sunkHead finds counterbores that socket heads do not go into wherever the play of their holes lets them lie.
func (t *joint) sunkHead(p *plan.BoltPlan) {
	c := t.a.group.Hole.Counterbore
	d, err := t.bolt.HeadDiameterMm(bolts.Socket)
	if c != nil && p.Head == "socket" && err == nil && c.Diameter.Mm < d+math.Max(0, t.a.group.Size.FinishedMm-t.boltMm) {
		t.problem(plan.CounterboreTight, plan.Of(plan.Diameter, c.Diameter.Mm), plan.Of(plan.Diameter, d))
	}
}

// nearestMm is how far apart the nearest two of the heads are, 0 where there is one alone.
func (s *headSide) nearestMm() float64 {
	if len(s.pts) < 2 {
		return 0
	}
	mm := math.Inf(1)
	for i, p := range s.pts {
		mm = seq.Min(mm, s.pts[:i], func(q plan.XY) float64 { return geom.Distance(p, q) })
	}
	return mm
}

// roomless says for what of heads there is no room.
func (t *joint) roomless(side headSide, room bolts.Room) {
	for _, pr := range room.Problems {
		t.problem(plan.ProblemKind(pr.Kind), plan.Of(plan.Mm, geom.Clean(pr.Mm[0])), plan.Of(plan.Mm, geom.Clean(pr.Mm[1])), plan.Named(side.what), plan.Named(pr.Of))
	}
}

// closedIn says which wall that comes later stands so near to heads that no tool goes on them any more, and finds one that
// they lie in.
func (j *making) closedIn(t *joint, side headSide, place bolts.Place, later func(parts.Instance) bool) string {
	wall, who, _ := j.wall(side, later)
	if wall == 0 {
		return ""
	}
	place.WallMm, place.FilletMm, place.NeighbourMm = wall, 0, 0
	tooled, err := t.bolt.HeadRoom(place)
	place.Tool = bolts.ToolNone
	bare, err2 := t.bolt.HeadRoom(place)
	switch {
	case err != nil || err2 != nil || len(tooled.Problems) == 0:
		return ""
	case len(bare.Problems) > 0:
		t.roomless(side, bare)
		return ""
	}
	return "; " + who + ", which comes later, leaves no room for the tool: they are not loosened while it is there"
}
