package read

import (
	"cmp"
	"slices"
	"strings"

	"centrepop/parts"
	"centrepop/parts/geom"
)

// keyway reads a keyway. That its step exists and has room is checked with the
// geometry.
func (f *fields) keyway() parts.Keyway {
	k := parts.Keyway{
		Pos: f.n.pos, Name: f.name("name"), In: f.name("in"), Clock: f.angle("clock"), Depth: f.length("depth"),
		Axial: f.length("axial"), From: f.face("from"), Cutter: f.length("cutter"),
	}
	f.keySection(&k)
	k.Fit = f.fit(f.val("fit"), k.Width, hole)
	if k.Fit.LightPress.Set() {
		f.fault(k.Fit.Pos, "a keyway is not pressed on a measured outside", f.g.example(f.g.key("fit")))
	}
	k.Through, k.Length = f.depth("length")
	f.not(k.Cutter, "<=", times(2, k.Depth), "a larger cutter", "a cutter of %s does not reach %s deep")
	return k
}

// keySection reads the key: "standard", "10x8", "woodruff 5x6.5".
func (f *fields) keySection(k *parts.Keyway) {
	t := f.text("key")
	if t.Value == "" || t.Value == "standard" {
		return
	}
	if size, disc := strings.CutPrefix(t.Value, "woodruff "); disc {
		k.Disc = parts.Text{Value: strings.TrimSpace(size), Pos: t.Pos}
		return
	}
	width, height, two := f.pairBy(t)
	if !two {
		f.faultf(t.Pos, keyExample, "key is %s, which is no key", parts.Quote(t.Value))
		return
	}
	k.Width, k.Height = width, height
}

// keywayRoom checks that a keyway lies in a step of the part.
func (r *reader) keywayRoom(p *parts.Part, k *parts.Keyway) {
	names := p.FeatureNames(parts.BoreFeature, parts.OutsideFeature, parts.InsideFeature)
	if !slices.Contains(names, k.In.Value) {
		r.faultf(k.In.Pos, cmp.Or(list(names), "a bore"), "the part has no %s to cut the keyway into", k.In.Value)
		return
	}
	cut := roundNamed(p, k.In.Value)
	if cut.threaded {
		r.faultf(k.In.Pos, "a plain step", "%s is threaded and takes no key", k.In.Value)
		return
	}
	in, from, to := cut.inside, cut.fromMm, cut.toMm
	sunk := k.Disc.Value != "" && !in
	for _, idle := range []struct {
		here        bool
		key         parts.Pos
		what, right string
	}{
		{sunk, cmp.Or(k.Cutter.Pos, k.Length.Pos), "the disc of a Woodruff key gives cutter and length", "delete length and cutter"},
		{k.Through && !sunk, k.Axial.Pos, "a keyway through its step has its place already", "a length, or delete axial"},
		{in, k.Cutter.Pos, "the keyway of a bore is broached or slotted", "delete cutter"},
	} {
		if idle.here && idle.key.Line > 0 {
			r.fault(idle.key, idle.what, idle.right)
		}
	}
	r.not(k.Width, ">=", cut.diameter, "a narrower key", "the key is %s wide in a diameter of %s")
	r.not(k.Depth, ">=", times(0.5, cut.diameter), "a smaller depth", "the keyway is %s deep in a diameter of %s")
	if a, b := k.StretchMm(in, from, to, cut.lengthMm); geom.Over(from, a) || geom.Over(b, to) {
		r.faultf(cmp.Or(k.Axial.Pos, k.Length.Pos), "a keyway within its step", "%s runs from %s to %s from the front face, and %s from %s to %s",
			k.Name.Value, r.bare(a), r.said(b), k.In.Value, r.bare(from), r.said(to))
	}
	if !in {
		r.not(k.Length, "<=", k.Width, "a length above the width", "the keyway is %s long and %s wide")
	}
}
