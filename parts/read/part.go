package read

import (
	"cmp"
	"strings"

	"centrepop/parts"
)

// parsePart returns the source with its faults, and a part that is only to be
// trusted as far as there are none; nil if the file was unreadable. Empty
// units are unknown ones.
func parsePart(file string, src []byte, units parts.Units) (*source, *parts.Part) {
	s, root := read(file, src)
	if root == nil {
		return s, nil
	}
	root.label = "the part"
	r := &reader{source: s, units: units}
	f := r.in(root, partGroup)
	if w := f.word("units"); w != "" {
		r.units = parts.Units(w)
	}
	p := &parts.Part{
		File: file, Pos: root.pos, Name: f.name("part"), Title: f.text("title"), Quantity: f.count("quantity"),
		Material: f.text("material"), Notes: f.texts("notes"), Top: f.wordText("top"),
	}
	if !f.given("title") && p.Name.Value != "" {
		p.Title = parts.Text{Value: strings.ReplaceAll(p.Name.Value, "-", " "), Pos: p.Name.Pos}
	}
	p.For = cmp.Or(parts.Use(f.word("for")), parts.PartUse(p.Name.Value, p.Title.Value))
	p.Stock = subOf(f, "stock", (*fields).stock)
	f.form(p)
	p.Chamfers = eachOf(f, "chamfers", (*fields).chamfer)
	p.Holes = eachOf(f, "holes", (*fields).holes)
	p.Slots = eachOf(f, "slots", (*fields).slots)
	p.Radials = eachOf(f, "radial", (*fields).radial)
	p.Keyways = eachOf(f, "keyways", (*fields).keyway)
	p.Grooves = eachOf(f, "grooves", (*fields).groove)
	p.Flats = eachOf(f, "flats", (*fields).flats)
	p.Centres = f.sub("centres").centres(p.Profile)
	p.Clamp = subOf(f, "clamp", (*fields).clamp)
	p.Require = r.requirements(f.each("require"), p)
	r.uniqueNames(p)
	f.geometry(p)
	return s, p
}

var formKeys = []string{"outline", "profile", "tube", "cone", "transition", "flight", "bar"}

// form reads the kind and the keys that give the part its shape, and refuses
// those that the kind has no use for.
func (f *fields) form(p *parts.Part) {
	p.Kind = parts.Kind(f.word("kind"))
	allowed := flat | turned | tubular | rolled | ruled | folded | helical | linear
	for _, k := range kinds {
		if k.kind == p.Kind {
			allowed = k.forms
		}
	}
	// The form that is given narrows what else may be.
	var givers, fits []string
	for _, key := range formKeys {
		if f.g.key(key).forms&allowed == 0 {
			continue
		}
		fits = append(fits, key)
		if f.given(key) {
			givers = append(givers, key)
		}
	}
	if p.Kind != "" {
		switch len(givers) {
		case 0:
			if !f.n.hasAny(fits) {
				f.faultf(f.n.get("kind").pos, "the key "+list(fits), "a %s needs its shape", p.Kind)
			}
		case 1:
			allowed &= f.g.key(givers[0]).forms
		default:
			f.faultf(f.n.keyPos(givers[1]), "keep one of the two", "the part has both %s and %s", givers[0], givers[1])
		}
		f.refuse(p.Kind, allowed)
	}
	p.Outline = subOf(f, "outline", (*fields).outline)
	p.Bends = subOf(f, "bends", (*fields).bends)
	f.base(p)
	p.Bore = subOf(f, "bore", (*fields).bore)
	p.Thickness = f.length("thickness")
	p.Profile = subOf(f, "profile", (*fields).profile)
	if t := f.sub("tube"); t != nil && p.Profile == nil {
		p.Profile = t.tube()
		p.Rolled = t.rolled(p)
	}
	p.Frustum = subOf(f, "cone", (*fields).cone)
	p.Transition = subOf(f, "transition", (*fields).transition)
	p.Flight = subOf(f, "flight", (*fields).flight)
	p.Bar = subOf(f, "bar", (*fields).bar)
	p.Ends = subOf(f, "ends", (*fields).ends)
	if p.Outline != nil {
		f.thickness(p)
	}
	if p.Stock.Bought() && (!f.given("profile") || p.Rolled != nil) {
		f.faultf(p.Stock.Pos, "a profile, outside and inside, with limits on what is turned here", "what is bought half finished has a profile, and this part none")
	}
}

// refuse records the keys that do not go with the part's form, and drops them.
func (f *fields) refuse(kind parts.Kind, allowed shape) {
	for _, k := range f.g.Keys {
		if k.forms != 0 && k.forms&allowed == 0 && f.given(k.Name) {
			f.faultf(f.n.keyPos(k.Name), k.Name+" is for "+k.use, "this %s takes no %s", kind, k.Name)
			f.n.drop(k.Name)
		}
	}
}

// thickness takes the plate thickness from the stock if it is not given.
func (f *fields) thickness(p *parts.Part) {
	sheet := p.Stock.ByArea()
	size := p.Stock.Size
	switch {
	case !f.given("thickness") && sheet:
		p.Thickness = size
	case !f.given("thickness"):
		if !f.n.hasAny([]string{"thickness", "stock"}) || p.Stock.Form != "" {
			f.lack(f.n.pos, f.n.label+" lacks its thickness", "thickness: 8 mm, or stock: {plate: 8 mm}")
		}
	case sheet && size.Set() && p.Thickness.Mm > size.Mm:
		f.faultf(p.Thickness.Pos, "a thicker plate", "the part is %s thick and its plate only %s", p.Thickness.Text, size.Text)
	}
}

func (f *fields) stock() parts.Stock {
	key, v := f.oneOf()
	s := parts.Stock{Pos: f.n.pos, Form: key, Length: f.length("length"), Cut: f.word("cut")}
	if key == "casting" && v != nil && v.kind == scalarNode {
		// A casting is named or sized by its largest dimension.
		if _, wrong := parts.MmOf(v.text, f.units); wrong == "" {
			s.Size = f.length(key)
		} else {
			s.Named = f.text(key)
		}
	} else if key == "bought" {
		s.Named = f.text(key)
		for _, not := range []string{"length", "cut"} {
			if f.given(not) {
				f.faultf(f.n.keyPos(not), "stock: {bought: \"Sprocket 10B-1, 17 teeth\", pilot: 16 mm}", "what is bought half finished is not sawn: it takes no %s", not)
			}
		}
	} else if key != "" {
		s.Size = f.length(key)
	}
	if s.Pilot = f.length("pilot"); s.Pilot.Set() && key != "bought" && key != "" {
		f.faultf(s.Pilot.Pos, "pilot is for bought", "%s stock takes no pilot", key)
	}
	switch wall := f.given("wall"); {
	case wall && key != "tube" && key != "flat" && key != "":
		f.faultf(f.n.keyPos("wall"), "wall is for tube and flat", "%s stock takes no wall", key)
	case wall:
		s.Second = f.length("wall")
	case key == "tube" || key == "flat":
		f.faultf(f.n.pos, "{"+key+": 60 mm, wall: 5 mm}", "%s stock lacks the key wall, its thickness", key)
	}
	if key == "tube" {
		f.not(s.Second, ">=", times(0.5, s.Size), "a wall under half the outside diameter", "the wall %s leaves no bore in a tube of %s")
	}
	return s
}
