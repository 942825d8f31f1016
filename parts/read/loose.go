package read

import (
	"cmp"
	"slices"

	"centrepop/parts"
	"centrepop/parts/geom"
	"centrepop/parts/seq"
)

// loose reads what no joint fastens; parts and joints are read by then.
func (l *loader) loose() {
	job, whole := l.job, l.whole && !l.broken
	placed := whole && l.sound(l.n, "joints")
	var laid []func()
	for _, f := range l.each("loose") {
		e := parts.Loose{
			Pos: f.n.pos, How: f.text("how"), After: f.name("after"), First: f.yes("first"), Off: f.yes("off"), Buy: f.text("buy"), Count: f.count("count"),
			MassKg: f.number("kg").Value + geom.KgPerPound*f.number("lb").Value,
		}
		switch key, _ := f.oneOf(); key {
		case "part":
			e.Part = f.name(key)
		case "item":
			e.Item = f.text(key)
		}
		e.As = cmp.Or(parts.Use(f.word("as")), parts.ItemUse(e.Item.Value, e.How.Value))
		e.Held = cmp.Or(parts.Held(f.word("held")), parts.HeldBy(e.How.Value))
		e.Turned = f.yes("turned") || !f.given("turned") && parts.ComesTurned(e.How.Value)
		if whole {
			l.partThere(e.Part)
			l.jointThere(e.After)
		}
		l.looseOnce(e.Part)
		if n := f.n.get("count"); n != nil && f.n.get("buy") == nil && e.Item.Value == "" {
			l.fault(n.pos, "count says how many are bought, and nothing is", "buy: what it is fastened with, or no count")
		}
		if e.Stands = subOf(f, "stands", (*fields).stands); e.Stands != nil {
			l.standsThere(&e)
		}
		e.Lies = eachOf(f, "lies", (*fields).lying)
		if placed && len(e.Lies) > 0 {
			laid = append(laid, func() { l.liesThere(&e, f.n.keyPos("lies")) })
		}
		if e.Travels = subOf(f, "travels", (*fields).travels); e.Travels != nil {
			l.travelsThere(&e, whole)
		}
		job.Loose = append(job.Loose, e)
	}
	for _, check := range laid {
		check()
	}
	l.fromBelow()
}

// fromBelow brings what is loose into an order in which a part comes after those that it lies on, and else as it is written.
// What lies on one another in a circle is refused.
func (l *loader) fromBelow() {
	job, left := l.job, map[string]*parts.Loose{}
	for e := range seq.Refs(job.Loose) {
		left[e.Part.Value] = e
	}
	below := func(e *parts.Loose) *parts.Lying {
		return seq.At(e.Lies, func(at *parts.Lying) bool {
			return at.Ref.Part != "" && at.Ref.Part != e.Part.Value && left[at.Ref.Part] != nil
		})
	}
	var out []parts.Loose
	for rest := slices.Collect(seq.Refs(job.Loose)); len(rest) > 0; {
		i := slices.IndexFunc(rest, func(e *parts.Loose) bool { return below(e) == nil })
		if i < 0 {
			at, seen := rest[0], map[*parts.Loose]bool{}
			for ; !seen[at]; at = left[below(at).Ref.Part] {
				seen[at] = true
			}
			l.faultf(below(at).Ref.Pos, "one of them on a part of a joint", "%s lies on %s, and that on it in turn", at.Part.Value, below(at).Ref.Part)
			return
		}
		out = append(out, *rest[i])
		delete(left, rest[i].Part.Value)
		rest = slices.Delete(rest, i, i+1)
	}
	job.Loose = out
}

// looseOnce refuses a loose part that a joint fastens, or that is loose already.
func (l *loader) looseOnce(part parts.Text) {
	if part.Value == "" {
		return
	}
	for _, j := range l.job.Joints {
		if first, second := j.Ends(); first.Part == part.Value || second.Part == part.Value {
			l.faultf(part.Pos, "a part that is in no joint", "the joint %s fastens %s", j.Name.Value, part.Value)
			break
		}
	}
	if l.job.ByHand(part.Value) != nil {
		l.faultf(part.Pos, "each part once", "%s is loose already", part.Value)
	}
}

// stands reads where a thing bought stands; nil if it is not said.
func (f *fields) stands() *parts.Stands {
	return &parts.Stands{
		Pos: f.n.pos, On: f.jointRef(f.val("on")), Face: parts.Face(f.word("face")), Diameter: f.length("diameter"), Length: f.length("length"),
		Flange: f.length("flange"), Shaft: f.length("shaft"), ShaftEnd: f.length("shaft-length"),
	}
}

// standsThere checks that a thing that stands is bought, and has holes or a step to stand on.
func (l *loader) standsThere(e *parts.Loose) {
	s := e.Stands
	if e.Item.Value == "" {
		l.faultf(s.Pos, "item: what is bought, or no stands", "stands is for what is bought, and %s is made", e.Part.Value)
	}
	if !s.On.Set() {
		return
	}
	p := l.feature(s.On)
	if p == nil || e.Item.Value == "" {
		return
	}
	step := p.Profile != nil && slices.ContainsFunc(p.Profile.Outside, func(o parts.Step) bool { return o.Name.Value == s.On.Feature })
	if !l.job.OnHoles(s) && !step {
		l.faultf(s.On.Pos, "holes in a face, or an outside step of a turned part", "nothing stands on %s.%s", s.On.Part, s.On.Feature)
	}
}

func (f *fields) travels() *parts.Travels {
	return &parts.Travels{Pos: f.n.pos, Front: f.length("front"), Back: f.length("back"), With: f.names("with")}
}

// travelsThere checks that what moves has a place, and that what goes with it is there.
func (l *loader) travelsThere(e *parts.Loose, whole bool) {
	switch {
	case e.Part.Value == "" || len(e.Lies) == 0:
		l.fault(e.Travels.Pos, "travels is for a part that lies somewhere", "part and lies, or no travels")
	case !e.Travels.Front.Set() && !e.Travels.Back.Set():
		l.fault(e.Travels.Pos, "travels says no way", "front or back, with how far")
	}
	if whole {
		for _, with := range e.Travels.With {
			l.partThere(with)
		}
	}
}

// lying reads where one copy lies.
func (f *fields) lying() (at parts.Lying) {
	at.Ref = f.jointRef(f.val("on"))
	at.Place = *f.placeOnFace(at.Ref.Feature)
	if at.At == nil && !at.FromLeft.Set() && !at.FromRight.Set() && !at.FromBottom.Set() && !at.FromTop.Set() {
		at.At = &parts.Point{}
	}
	return at
}

// liesThere checks that the faces which a loose part lies on are there by its step, and that
// each of its copies has one.
func (l *loader) liesThere(e *parts.Loose, pos parts.Pos) {
	job := l.job
	p := job.Part(e.Part.Value)
	switch {
	case e.Part.Value == "" && e.Item.Value != "": // else that is said
		l.fault(pos, "lies says where a part lies, and "+e.Item.Value+" is bought", "part: its name, or no lies")
	case p != nil && len(l.doubt[p].errs) == 0 && len(e.Lies) != p.Quantity:
		l.faultf(pos, "an entry for each", "lies has %d of the %d copies of %s", len(e.Lies), p.Quantity, e.Part.Value)
	}
	for _, at := range e.Lies {
		there := job.Fastens(at.Ref.Part) ||
			slices.ContainsFunc(job.Loose, func(o parts.Loose) bool { return o.Part.Value == at.Ref.Part && o.Part != e.Part && len(o.Lies) > 0 })
		switch {
		case at.Ref.Part == "", l.copyThere(at.Ref) == nil:
		case !slices.Contains(parts.Sides, at.Ref.Feature):
			l.faultf(at.Ref.Pos, at.Ref.Part+"."+list(parts.Sides), "%s is no face of %s", at.Ref.Feature, at.Ref.Part)
		case !there:
			l.faultf(at.Ref.Pos, "a part of a joint, or another loose one that has lies itself", "%s has no place for %s to lie on", at.Ref.Part, e.Part.Value)
		}
	}
}
