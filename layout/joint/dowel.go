package joint

import (
	"slices"
	"strconv"

	"centrepop/layout/part"
	"centrepop/layout/plan"
	"centrepop/layout/words"
	"centrepop/parts"
	"centrepop/parts/geom"
	"centrepop/parts/seq"
)

// dowels drills the holes for dowel pins of one part through those of the other, once the last bolts between the two are
// tight, reams them together and drives the pins.
func (j *making) dowels(t *joint) {
	again := func(o *joint) bool { return o.has(t.a.Instance()) && o.has(t.b.Instance()) }
	if slices.ContainsFunc(j.later(t), again) {
		return
	}
	for _, f := range [][2]feature{{t.a, t.b}, {t.b, t.a}} {
		for g := range seq.Refs(f[0].r.Groups) {
			if d := g.Dowel; d != nil && d.Guide && slices.Contains(d.Parts, f[1].r.Part.Name.Value) {
				j.dowel(t, g, f[0], f[1])
			}
		}
	}
}

func (j *making) dowel(t *joint, g *part.Group, guide, other feature) {
	o, size := other.r.GroupNamed(g.Dowel.Group), g.Size.Size
	pins, deep := words.CountOf(g.Group.Count), words.Either(o.Through, "through it", "so deep that "+t.w.Said(o.Depth.Mm)+" are of full size")
	pair := ""
	if guide.r.Part.Quantity > 1 || other.r.Part.Quantity > 1 {
		pair = "Stamp both alike: reamed so, they fit no others."
	}
	ends := "no end stands over a face"
	if outMm := j.pinOutMm(t, g, [2]feature{guide, other}); outMm > 0 {
		t.problem(plan.PinsLong, plan.Named(words.Spaced(g.Group.Name)), plan.Of(plan.Read, outMm))
		out := t.w.Read(outMm) + words.When(t.w.Units != parts.Inches, " mm")
		ends = words.Either(o.Through, "none stands over "+guide.title()+", and each stands "+out+" out of "+other.title(),
			"each is on the ground of its hole, and stands "+out+" out of "+guide.title())
	}
	t.step("Dowels", "Once all lies true and its bolts are tight: drill "+guide.r.DowelDrill(g)+" through the holes "+words.Spaced(g.Group.Name)+" of "+
		guide.title()+" into "+other.title()+", "+deep+". Clear the chips.",
		"Ream "+t.w.Dia(size.NominalMm)+words.When(size.Class != "", " "+size.Class)+" through both parts in one pass.",
		"Drive in "+pins+g.Pin(o, t.w)+".", pair).Hold = "All " + strconv.Itoa(g.Group.Count) + " pins are in, and " + ends + "."
	t.out.Checks = append(t.out.Checks, plan.Check{
		What: words.Spaced(g.Group.Name) + ", through both", Wanted: pins + t.w.Dia(size.NominalMm), Limits: t.w.Limits(size.MinMm, size.MaxMm),
		MinMm: size.MinMm, MaxMm: size.MaxMm, Gauge: "plug gauge", Source: size.Source,
	})
}

// pinOutMm is how much longer a dowel pin is than its holes in the part that guides the drill and in the other, and what
// lies between them: what stands out at one end. It is 0 where the words of the pin have no length.
func (j *making) pinOutMm(t *joint, g *part.Group, in [2]feature) float64 {
	o := in[1].r.GroupNamed(g.Dowel.Group)
	_, longMm := parts.PinSizes(g.Pin(o, t.w), t.w.Units)
	_, guideMm := in[0].r.DrillMm(g)
	_, otherMm := in[1].r.DrillMm(o)
	betweenMm := seq.Sum(j.stack(t), func(f feature) float64 { _, thick, _ := f.plane(parts.Front); return thick })
	return max(0, geom.Clean(longMm-guideMm-otherMm-betweenMm))
}
