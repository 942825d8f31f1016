package read

import (
	"strings"

	"centrepop/parts"
	"centrepop/parts/geom"
)

// clamp reads the split of a ring. That it has room is checked with the geometry.
func (f *fields) clamp() *parts.Clamp {
	c := &parts.Clamp{Pos: f.n.pos, In: f.name("in"), Slot: f.length("slot"), At: f.length("at"), Axial: f.length("axial"), From: f.face("from"), Clock: f.angle("clock")}
	t := f.text("screw")
	if t.Value == "" {
		return c
	}
	m := boltForm().FindStringSubmatch(strings.TrimSpace(t.Value))
	if m == nil || m[2] == "" || !threadForm().MatchString(m[1]) {
		f.faultf(t.Pos, `"M6 8.8" or "1/4-20 UNC A574"`, "the screw %s is no size with a strength class", parts.Quote(t.Value))
		return c
	}
	c.Size, c.Class, c.Screw = m[1], m[2], t.Pos
	return c
}

// clampRoom checks that a split ring has a bore right through and a wall at its screw.
func (r *reader) clampRoom(p *parts.Part, c *parts.Clamp) {
	step, _, inside := stepNamed(p.Profile, c.In.Value)
	if step == nil || !inside {
		r.faultf(c.In.Pos, list(p.FeatureNames(parts.InsideFeature)), "the part has no bore %s to close", c.In.Value)
		return
	}
	long := p.Profile.LengthMm()
	if !p.Profile.Through() {
		r.faultf(c.Pos, "inside steps as long as the part", "a blind bore cannot be split: it ends %s before the back face", r.said(long-p.Profile.InsideMm()))
	}
	if !geom.Over(long, c.Axial.Mm) {
		r.faultf(c.Axial.Pos, "a distance within the part", "the screw lies %s from the face of a part %s long", c.Axial.Text, r.said(long))
	}
}
