package picture

import (
	"slices"

	"centrepop/layout/assembly"
	"centrepop/layout/plan"
	"centrepop/layout/stand"
)

// laidPicture adds a section through the loose parts of a step that come to what stands and that no other picture
// of it shows: along the machine's axis if it cuts all of them, else through the first.
func (v *viewed) laidPicture() {
	seen := v.seenBodies()
	hidden := slices.DeleteFunc(slices.Clone(v.News[v.j.N-1]), func(b *assembly.Body) bool {
		return !slices.ContainsFunc(seen, func(o *assembly.Body) bool { return o.ID == b.ID }) || slices.ContainsFunc(v.j.Pictures, func(p plan.Picture) bool {
			return slices.ContainsFunc(p.Shapes, func(s plan.Shape) bool { return s.New && s.Title == v.Title(b.ID) })
		})
	})
	if len(hidden) == 0 {
		return
	}
	at, pose := hidden[0].Box().Centre(), hidden[0].Pose
	for _, plane := range []assembly.Pose{stand.AlongAxis, upright(at, pose.Y), upright(at, pose.X), upright(at, pose.Z)} {
		var loops [][]plan.XY
		cuts := 0
		for _, b := range hidden {
			if cut := v.cut(plane, b); len(cut) > 0 {
				loops = append(loops, cut...)
				cuts++
			}
		}
		if cuts == 0 || plane == stand.AlongAxis && cuts < len(hidden) {
			continue
		}
		all := rectOf(loops)
		long := all.longest()
		win := all.grown(0.6 * long)
		if !v.showsUnder(plane, win, hidden) {
			win = all.grown(1.5 * long)
		}
		v.byHand = true
		shapes, _ := v.shapes(plane, win)
		for _, s := range shapes { // no wider than what it shows
			all = all.join(rectOf(s.Loops))
		}
		win = win.meet(all.grown(0.02 * long))
		p := plan.Picture{Cut: plan.CutAxis, MinMm: win.Min, MaxMm: win.Max, Arrows: v.arrows(plane, win, v.News[v.j.N-1])}
		p.Shapes, p.Centres = v.shapes(plane, win)
		if plane != stand.AlongAxis {
			p.Cut = v.lieOf(plane)
		}
		v.j.Pictures, v.planesOf = append(v.j.Pictures, p), append(v.planesOf, plane)
		return
	}
}

// showsUnder tells whether a window of a plane shows more than a scrap of what one of some loose parts
// lies on.
func (v *viewed) showsUnder(plane assembly.Pose, win rect, hidden []*assembly.Body) bool {
	return slices.ContainsFunc(v.Laid(), func(l stand.Laid) bool {
		on := v.BodyOf[l.On.ID()]
		if on == nil || !slices.Contains(hidden, v.BodyOf[l.ID()]) {
			return false
		}
		return rectOf(win.clip(v.cut(plane, on))).longest() > 0.2*win.longest()
	})
}
