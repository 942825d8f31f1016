package read

import (
	"fmt"
	"math"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"sync"

	"centrepop/parts"
	"centrepop/parts/geom"
	"centrepop/parts/seq"
)

func (f *fields) profile() *parts.Profile {
	p := &parts.Profile{Pos: f.n.pos, Outside: f.steps("outside", shaft), Inside: f.steps("inside", hole), OneSetting: f.names("one-setting")}
	known := seq.Map(slices.Concat(p.Outside, p.Inside), func(s parts.Step) string { return s.Name.Value })
	for _, t := range p.OneSetting {
		f.oneOfNames(t, known)
	}
	return p
}

// steps reads outside (shaft) or inside (hole) steps.
func (f *fields) steps(key string, s side) []parts.Step {
	var out []parts.Step
	for _, one := range f.each(key) {
		step := parts.Step{
			Pos: one.n.pos, Name: one.name("name"), Length: one.length("length"), Seat: one.text("seat"), Finish: one.text("finish"),
			Hardness: one.number("hardness"), AfterWeld: one.yes("after-weld"),
		}
		if one.given("length-limits") {
			step.Limits = one.limits("length-limits", one.val("length-limits"), step.Length)
		}
		if one.given("lip") {
			step.Lip = one.face("lip")
			sealed := s == hole && parts.SeatUse(step.Seat.Value) == parts.ASeal
			one.spare("lip", !sealed, "a lip is that of a seal in a bore", "seat: seal 40x62x8, with it, or delete lip")
		}
		if !one.given("name") {
			i := slices.Index(f.n.get(key).items, one.n)
			step.Name = parts.Text{Value: fmt.Sprintf("%s-%d", key, i+1), Pos: one.n.pos}
		}
		switch given, v := one.oneOf(); given {
		case "diameter":
			step.Size = one.size("diameter", s)
		case "thread":
			step.Size.Thread = one.thread(v)
			one.spare("fit", true, "a threaded step takes no fit", "delete fit; the thread class comes with the thread")
		}
		one.undercut(&step)
		one.shaped(&step, s)
		one.spare("after-weld", step.Taper != nil || step.Knurl != nil || step.Size.Thread.Value != "", "only a plain diameter is left for after the weld",
			"delete after-weld; welding bends threads, tapers and knurls little")
		out = append(out, step)
	}
	if s == shaft && len(out) > 1 && !slices.ContainsFunc(out, func(s parts.Step) bool { return s.Limits == nil }) {
		f.fault(out[len(out)-1].Limits[0].Pos, "every step has limits of its length, and none is left to follow from the others", "delete length-limits of the step that matters least")
	}
	return out
}

// shaped reads the taper and the knurl of a step.
func (f *fields) shaped(step *parts.Step, s side) {
	if t := f.sub("taper"); t != nil {
		t.oneOf()
		step.Taper = &parts.Taper{Pos: t.n.pos, To: t.length("to"), Ratio: t.number("ratio"), Angle: t.angle("angle"), Toward: t.face("toward")}
		large := step.Size.Nominal
		if step.Size.Thread.Value != "" {
			f.fault(t.n.pos, "a threaded step takes no taper", "delete taper; a taper thread has its own")
		} else if large.Set() && step.Taper.To.Set() && step.Taper.To.Mm >= large.Mm {
			f.faultf(step.Taper.To.Pos, "the diameter of the small end", "the taper goes from %s to %s, which is not smaller", large.Text, step.Taper.To.Text)
		}
	}
	k := f.text("knurl")
	if k.Value == "" {
		return
	}
	kind, pitch, two := strings.Cut(k.Value, " ")
	mm, err := strconv.ParseFloat(pitch, 64)
	switch {
	case !two || err != nil || mm <= 0:
		f.faultf(k.Pos, knurlExample, "knurl is %s, which is no knurl", parts.Quote(k.Value))
	case s == hole || step.Size.Thread.Value != "" || step.Taper != nil:
		f.fault(k.Pos, "only a plain outside is knurled", "delete knurl")
	default:
		step.Knurl = &parts.Knurl{Pos: k.Pos, Type: kind, PitchMm: mm}
	}
}

func (f *fields) centres(p *parts.Profile) *parts.Centres {
	if f == nil {
		return nil
	}
	c := &parts.Centres{Pos: f.n.pos, Form: f.word("form"), Pilot: f.length("pilot"), Ends: f.word("ends")}
	if p == nil || len(p.Inside) == 0 {
		return c
	}
	if c.Ends != "back" || p.Through() {
		f.fault(c.Pos, "there is a bore where the centre would be", "ends: back, or delete centres")
	}
	return c
}

// undercutForm is how drawings name an undercut: DIN 509-F 0.6x0.3, DIN 76-A.
var undercutForm = sync.OnceValue(func() *regexp.Regexp {
	return regexp.MustCompile(`^DIN (?:(509)-([EF])(?: ([0-9.]+)[x×]([0-9.]+))?|(76)-([A-D]))$`)
})

// undercut reads a designation, or the width and depth.
func (f *fields) undercut(step *parts.Step) {
	n := f.val("undercut")
	if n == nil {
		return
	}
	if n.kind == mapNode {
		u := f.sub("undercut")
		step.Undercut = &parts.Undercut{Pos: u.n.pos, Width: u.length("width"), Depth: u.length("depth")}
		f.undercutRoom(*step)
		return
	}
	text, ok := f.scalar(n, "a designation or a group", undercutExample)
	if !ok {
		return
	}
	m := undercutForm().FindStringSubmatch(text)
	threaded := step.Size.Thread.Value != ""
	switch {
	case m == nil:
		f.faultf(n.pos, undercutExample, "undercut is %s, which is no undercut", parts.Quote(text))
	case threaded != (m[5] != ""):
		f.faultf(n.pos, "DIN 76-A to D behind a thread, DIN 509 at a plain step", "%s does not go with this step", text)
	case threaded:
		step.Undercut = &parts.Undercut{Pos: n.pos, Named: parts.ThreadUndercut, Form: m[6]}
	default:
		u := &parts.Undercut{Pos: n.pos, Named: parts.ReliefUndercut, Form: m[2]}
		u.Radius, _ = strconv.ParseFloat(m[3], 64)
		u.Deep, _ = strconv.ParseFloat(m[4], 64)
		step.Undercut = u
	}
}

func (r *reader) undercutRoom(step parts.Step) {
	u := step.Undercut
	r.not(u.Width, ">=", step.Length, "an undercut narrower than the step", "the undercut is %s wide and the step %s long")
	r.not(u.Depth, ">=", times(0.5, step.Size.Nominal), "the depth of the groove on one side", "the undercut is %s deep at a diameter of %s")
}

// tube reads a tube and expands it to a profile with the steps outside and
// bore.
func (f *fields) tube() *parts.Profile {
	var size parts.Size
	if od := f.val("outside"); od != nil && od.kind == mapNode {
		if own := f.sub("outside"); own != nil {
			size = own.size("diameter", shaft)
		}
	} else {
		size = f.size("outside", shaft)
	}
	wall, length := f.length("wall"), f.length("length")
	p := &parts.Profile{Pos: f.n.pos}
	if !size.Nominal.Set() || !wall.Set() || !length.Set() {
		return p
	}
	bore := parts.Length{Mm: size.Nominal.Mm - 2*wall.Mm, Pos: wall.Pos,
		Text: fmt.Sprintf("%s less twice %s", size.Nominal.Text, wall.Text)}
	if bore.Mm < parts.SmallestMm {
		f.faultf(wall.Pos, "a wall under half the outside diameter", "the wall %s leaves no bore in a tube of %s", wall.Text, size.Nominal.Text)
		return p
	}
	p.Outside = []parts.Step{{Pos: f.n.pos, Name: parts.Text{Value: "outside", Pos: f.n.pos}, Size: size, Length: length}}
	p.Inside = []parts.Step{{Pos: f.n.pos, Name: parts.Text{Value: "bore", Pos: f.n.pos}, Size: parts.Size{Nominal: bore}, Length: length}}
	return p
}

// rolled is what a tube is closed from where its stock is sheet or plate thinner than it is long, from
// which it is not cut as a ring; nil of another.
func (f *fields) rolled(p *parts.Part) *parts.Formed {
	long, wall := f.length("length"), f.length("wall")
	if k := p.Stock; !k.ByArea() || !geom.Over(long.Mm, k.Size.Mm) {
		for _, key := range []string{"seam", "overlap"} {
			if f.given(key) {
				f.faultf(f.n.keyPos(key), "stock: {sheet: "+wall.Text+", cut: laser}, or delete "+key, "the tube is not rolled from sheet: it has no %s", key)
			}
		}
		return nil
	}
	if fit := p.Profile.Outside; len(fit) > 0 && (fit[0].Size.Fit.Class.Value != "" || len(fit[0].Size.Fit.Measured) > 0) {
		f.faultf(fit[0].Size.Nominal.Pos, "no fit here; its girth is measured", "a tube rolled from sheet is not turned to a fit")
	}
	return &parts.Formed{Height: long, Thickness: wall, Seam: f.angle("seam"), Overlap: f.length("overlap")}
}

// maxPatternRadiusMm is the largest radius of a cone's flat pattern. Common
// practice, no source: over 100 m nobody can swing it, and the arc cannot be
// told from a straight line.
const maxPatternRadiusMm = 100_000.0

// patternRadiusMm is the slant distance from the large end to the apex, of a
// leaning cone at its longer side; 0 where the sizes do not give one.
func patternRadiusMm(f *parts.Frustum) float64 {
	taper := f.Large.Mm - f.Small.Mm
	if !f.Height.Set() || !f.Small.Set() || taper <= 0 {
		return 0
	}
	return math.Hypot(f.Height.Mm, taper/2+f.Offset.Mm) * f.Large.Mm / taper
}

func (f *fields) cone() *parts.Frustum {
	c := &parts.Frustum{Pos: f.n.pos, Large: f.length("large"), Small: f.length("small"), Offset: f.length("offset"), Formed: f.formed()}
	f.not(c.Small, ">=", c.Large, "a small diameter below the large one; a straight one is kind tube", "the small end of %s is not smaller than the large end of %s")
	if mm := patternRadiusMm(c); mm > maxPatternRadiusMm {
		f.faultf(c.Small.Pos, "a larger taper, or kind tube",
			"the cone is so nearly a tube that its pattern has a radius of %.0f m", mm/1000)
	}
	least := 0.0 // small inside diameter, seen from the way it is measured
	if !c.Inside {
		least = 2 * c.Thickness.Mm
	}
	if c.Small.Set() && c.Thickness.Set() && c.Small.Mm <= least {
		f.faultf(c.Thickness.Pos, "a sheet thinner than half the small diameter", "the sheet of %s leaves no opening in the small end of %s", c.Thickness.Text, c.Small.Text)
	}
	f.not(c.Offset, ">", c.Large, "at most the large diameter", "the offset %s is more than the large diameter %s")
	f.not(c.Overlap, ">", c.Small, "at most the small diameter", "the overlap %s is more than the small diameter %s")
	return c
}
