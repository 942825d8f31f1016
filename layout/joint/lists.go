package joint

import (
	"cmp"
	"math"
	"slices"
	"strconv"
	"strings"

	"centrepop/layout/bolts"
	"centrepop/layout/part"
	"centrepop/layout/plan"
	"centrepop/layout/words"
	"centrepop/parts"
	"centrepop/parts/geom"
	"centrepop/parts/seq"
)

// buying collects what the merchant delivers, one row for equal things.
type buying []*wanted

// wanted is something to buy and the joints that need it.
type wanted struct {
	plan.BoughtRow
	uses   []*joint
	others []string // what else needs it
}

// row is that of an item, made if there is none.
func (list *buying) row(item string, n int, note string) *wanted {
	for _, row := range *list {
		if row.Item == item && row.Note == note {
			row.Quantity += n
			return row
		}
	}
	*list = append(*list, &wanted{BoughtRow: plan.BoughtRow{Item: item, Quantity: n, Note: note}})
	return (*list)[len(*list)-1]
}

func (list *buying) use(t *joint, item string, n int, note string) {
	row := list.row(item, n, note)
	row.uses = seq.Add(row.uses, t)
}

// add lists what something else needs.
func (list *buying) add(item string, n int, use, note string) *wanted {
	row := list.row(item, n, note)
	row.others = seq.Add(row.others, use)
	return row
}

// steps names the steps of joints, which are in their order: "step 10", "steps 1, 18–22".
func steps(of []*joint) string {
	var spans []string
	for i := 0; i < len(of); {
		n := 1
		for i+n < len(of) && of[i+n].out.N == of[i].out.N+n {
			n++
		}
		spans, i = append(spans, words.Span(of[i].out.N, n)), i+n
	}
	switch text := strings.Join(spans, ", "); len(of) {
	case 0:
		return ""
	case 1:
		return "step " + text
	default:
		return "steps " + text
	}
}

// pipeMPa is the least yield of the pipe that sleeves are cut from: P235, EN 10217-1.
const pipeMPa = 235

// sleeveMm is the outside of a sleeve that the preload of a bolt through it does not squeeze, of a bore in mm:
// that of the hole, for the bolt to keep its play.
func (s *shop) sleeveMm(t *joint, bore float64) float64 {
	return s.up(math.Sqrt(bore*bore + 4*t.out.Bolt.PreloadN/(math.Pi*pipeMPa)))
}

// sleeveLongMm is how long a sleeve is that is let into a tube for a bolt through both its walls, down to the far one.
func sleeveLongMm(f feature) float64 {
	metal, across := f.r.DrillMm(f.group)
	return geom.Clean(across - metal/2)
}

// buy lists bolts by length, nuts and washers.
func (boltKind) buy(s *shop, t *joint, list *buying) {
	p, in := t.out.Bolt, t.in.Bolt
	nuts := p.Count * t.nuts()
	if in.Stud.Value == "" {
		item, note := p.Ordered, ""
		if item == "" {
			item, note = p.Size, "no stock length fits"
		}
		standard := "hexagon head"
		switch t.head() {
		case bolts.Socket:
			standard = "socket head"
		case bolts.Countersunk:
			standard = "countersunk head, hexagon socket"
		}
		list.use(t, "Bolt "+item+", "+p.Class+", "+standard, p.Count, note)
	}
	for _, f := range append(s.stack(t), t.a, t.b) {
		if f.group.BothWalls() {
			bore := f.group.Size.FinishedMm
			list.use(cmp.Or(t.sleeve, t), "Sleeve of pipe, "+s.w.Dia(s.sleeveMm(t, bore))+" outside or more, bore "+s.w.Dia(bore)+" or more, "+s.w.Size(sleeveLongMm(f))+" long", p.Count, "")
		}
	}
	if nuts > 0 {
		list.use(t, words.Join(", ", "Nut "+p.Size, p.NutClass), nuts, "")
	}
	if in.Washer && t.bolt.WasherODMm != 0 {
		n := max(nuts, p.Count)
		if in.Nut && in.Stud.Value == "" { // and under the head
			n *= 2
		}
		list.use(t, words.Join(", ", "Washer "+p.Size, p.WasherClass)+", "+s.w.Dia(t.bolt.WasherODMm)+" × "+s.w.Size(t.bolt.WasherThicknessMm), n, "")
	}
}

// jackScrew is the screw for a group of holes that parts are pushed apart by: the shortest
// of stock that is longer than its part by two diameters (common practice, no source). What draws
// by a thread that goes through pushes as well. It is empty for other holes.
func (j *shop) jackScrew(r *part.Model, g *part.Group) string {
	if g.Size.Thread == nil || !g.Hole.Through || g.Hole.For != parts.Jacking && g.Hole.For != parts.Drawing || j.job.Bolts(r.Part.Name.Value, g.Group.Name) {
		return ""
	}
	_, thick, ok := r.PlaneOf(g, g.Face)
	b, err := bolts.Find(g.Size.Thread.Designation)
	if !ok || err != nil {
		return ""
	}
	mm, long := seq.Find(b.StockLengths(bolts.Hex), func(mm float64) bool { return mm >= thick+2*b.Thread.MajorMm })
	if !long {
		return ""
	}
	return "Jacking screw " + b.Ordered(mm) + ", full thread"
}

// buyMotor lists the motor, unless it is among the things that are put on.
func (j *shop) buyMotor(list *buying) {
	m := j.job.Motor
	if m == nil || slices.ContainsFunc(j.job.Loose, func(e parts.Loose) bool { return e.As == parts.AMotor || e.Stands != nil && j.job.OnHoles(e.Stands) }) {
		return
	}
	item := m.Maker.Value
	if !strings.Contains(strings.ToLower(item), "motor") {
		item = words.Join(" ", "motor", item)
	}
	list.add(words.Capital(item)+", by its page", 1, "motor", "")
}

// buyGrease lists what bearings are packed with, and what the card of upkeep asks for, each once.
func (j *shop) buyGrease(made []*joint, list *buying) {
	for _, t := range made {
		if p := t.out.Bearing; p != nil && !p.Sealed && p.Grease != "" {
			list.use(t, "Grease, "+p.Grease, 0, "")
		}
	}
	if j.job.Upkeep != nil {
		for _, port := range j.job.Upkeep.Ports {
			if port.Grease.Value != "" {
				list.add(words.Capital(port.Grease.Value), 0, "upkeep", "")
			}
		}
	}
	for _, row := range *list {
		row.Quantity = max(row.Quantity, 1)
	}
}

func kindOfItem(item string) string { word, _, _ := strings.Cut(item, " "); return word }

// lifts lists what is heavier than LiftKg, single parts and what is bought before assemblies that stand
// free: first what two people may lift, then what only a hoist may.
func lifts(pl *plan.Plan, made []*joint) []string {
	w := words.Writer{Units: pl.Units}
	var light, heavy []string
	take := func(what string, kg float64) {
		switch {
		case kg > plan.HoistKg:
			heavy = append(heavy, what+": "+w.RoundMass(kg, 1))
		case kg > plan.LiftKg:
			light = append(light, what+": "+w.RoundMass(kg, 1))
		}
	}
	for _, p := range pl.Parts {
		take(p.Title, p.MassKg)
	}
	for _, t := range made {
		if l := t.out.Lift; l != nil && l.Loose {
			take(l.What, l.MassKg)
		}
	}
	for _, t := range made {
		if !t.fixed {
			take("after step "+strconv.Itoa(t.out.N), t.out.MassKg)
		}
	}
	var out []string
	if len(light) > 0 {
		out = append(out, "With a hoist or two people: "+strings.Join(light, "; ")+".")
	}
	if len(heavy) > 0 {
		out = append(out, "With a hoist only: "+strings.Join(heavy, "; ")+".")
	}
	return out
}
