package parts

import (
	"slices"

	"centrepop/parts/meant"
)

// Loose is a part, or a thing bought, that no joint fastens: it is laid, hung or screwed on
// by hand. One of Part and Item is set.
type Loose struct {
	Pos    Pos
	Part   Text
	Item   Text    // the thing bought, as ordered
	How    Text    // what holds it, or what it is for
	After  Text    // the joint with whose step it comes
	Off    bool    // it comes off again in that step
	First  bool    // it comes before the two of that joint meet
	Buy    Text    // what it is fastened with, as ordered; empty for nothing
	Count  int     // of that, for all copies of the part; without Buy, of the item
	MassKg float64 // of the item; 0 if not said
}

// kgPerPound is the avoirdupois pound (NIST SP 811).
const kgPerPound = 0.45359237

// loose reads what no joint fastens; parts and joints are read by then.
func (l *loader) loose(n *node, job *Job) {
	whole := l.sound(n, "joints") && !l.broken
	for _, f := range (&fields{&l.reader, n, jobGroup}).each("loose") {
		e := Loose{
			Pos: f.n.pos, How: f.text("how"), After: f.name("after"), First: f.yes("first"), Off: f.yes("off"), Buy: f.text("buy"), Count: f.count("count"),
			MassKg: f.number("kg").Value + kgPerPound*f.number("lb").Value,
		}
		switch key, _ := f.oneOf(); key {
		case "part":
			e.Part = f.name(key)
		case "item":
			e.Item = f.text(key)
		}
		for _, k := range []struct {
			named Text
			word  string
			known []string
		}{{e.Part, "part", job.partNames()}, {e.After, "joint", job.jointNames()}} {
			if k.named.Value == "" || !whole || slices.Contains(k.known, k.named.Value) {
				continue
			}
			l.faultf(k.named.Pos, "a "+k.word+" of the job", "there is no %s %s in the job%s", k.word, k.named.Value, meant.Perhaps(k.named.Value, k.known))
		}
		for _, j := range job.Joints {
			if first, second := j.Ends(); e.Part.Value != "" && (first.Part == e.Part.Value || second.Part == e.Part.Value) {
				l.faultf(e.Part.Pos, "a part that is in no joint", "the joint %s fastens %s", j.Name.Value, e.Part.Value)
				break
			}
		}
		if n := f.n.get("count"); n != nil && f.n.get("buy") == nil && e.Item.Value == "" {
			l.fault(n.pos, "count says how many are bought, and nothing is", "buy: what it is fastened with, or no count")
		}
		if e.Part.Value != "" && slices.ContainsFunc(job.Loose, func(o Loose) bool { return o.Part.Value == e.Part.Value }) {
			l.faultf(e.Part.Pos, "each part once", "%s is loose already", e.Part.Value)
		}
		job.Loose = append(job.Loose, e)
	}
}
