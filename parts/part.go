package parts

import (
	"slices"
	"strings"
)

// shape is which of outline, profile, tube, cone and transition gives a part its form.
type shape int

const (
	flat shape = 1 << iota
	turned
	tubular
	rolled
	folded
)

// kinds lists the kinds of part with the forms each can have.
var kinds = []struct {
	kind  Kind
	forms shape
}{
	{Flange, flat | turned},
	{Ring, flat | turned},
	{Plate, flat},
	{Tube, turned | tubular},
	{BearingHousing, turned},
	{BarrelEnd, turned},
	{Shaft, turned},
	{Cone, rolled},
	{TransitionPiece, folded},
}

// formKeys lists the keys that belong to some forms only.
var formKeys = []struct {
	key   string
	forms shape
	use   string
}{
	{"outline", flat, "flat parts"},
	{"thickness", flat, "flat parts"},
	{"bore", flat, "flat parts; turned parts have inside steps"},
	{"profile", turned, "turned parts"},
	{"tube", tubular, "kind tube"},
	{"cone", rolled, "kind cone"},
	{"transition", folded, "kind transition"},
	{"ends", tubular, "kind tube with the key tube"},
	{"chamfers", flat | turned | tubular, "flat and turned parts"},
	{"holes", flat | turned | tubular, "flat and turned parts"},
	{"slots", flat | turned | tubular, "flat and turned parts"},
	{"radial", turned | tubular, "turned parts, which have a profile or a tube"},
}

var partKeys = []string{"part", "title", "kind", "quantity", "units", "material", "top", "stock",
	"outline", "thickness", "bore", "profile", "tube", "cone", "transition", "ends", "chamfers", "holes", "slots", "radial", "notes"}

// ParsePart reads one part file. The name file is used in places, and units
// are those of bare numbers unless the file has its own: Inches, or else
// Millimetres. It returns a part
// that is complete in itself, or Errors; references to other parts are checked
// by Load.
func ParsePart(file string, src []byte, units Units) (*Part, error) {
	if units != Inches {
		units = Millimetres
	}
	s, p := parsePart(file, src, units)
	if len(s.errs) > 0 {
		return nil, s.sorted()
	}
	return p, nil
}

// parsePart returns the source with its faults, and a part that is only to be
// trusted as far as there are none; nil if the file was unreadable. Empty
// units are unknown ones.
func parsePart(file string, src []byte, units Units) (*source, *Part) {
	s, root := read(file, src)
	if root == nil {
		return s, nil
	}
	root.label = "the part"
	r := &reader{source: s, units: units}
	if w := r.word(root.get("units"), string(Millimetres), string(Inches)); w != "" {
		r.units = Units(w)
	}
	r.group(root, partKeys...)
	p := &Part{
		File:     file,
		Pos:      root.pos,
		Name:     r.name(r.need(root, "part", "a name, such as part: barrel-flange")),
		Title:    r.text(root.get("title"), maxText),
		Quantity: 1,
		Material: r.text(root.get("material"), maxText),
		Notes:    r.notes(root.get("notes")),
	}
	if t := root.get("title"); t == nil && p.Name.Value != "" {
		p.Title = Text{Value: strings.ReplaceAll(p.Name.Value, "-", " "), Pos: p.Name.Pos}
	}
	if q := root.get("quantity"); q != nil {
		p.Quantity = r.count(q, 1, 10_000)
	}
	if top := root.get("top"); top != nil {
		if w := r.word(top, "scribe", "punch", "notch", "paint", "keyway"); w != "" {
			p.Top = Text{Value: w, Pos: top.pos}
		}
	}
	p.Stock = r.stock(root.get("stock"))
	r.form(root, p)
	p.Chamfers = r.chamfers(root.get("chamfers"))
	p.Holes = r.holes(root.get("holes"))
	p.Slots = r.slots(root.get("slots"))
	p.Radials = r.radials(root.get("radial"))
	r.uniqueNames(p)
	r.geometry(root, p)
	return s, p
}

// form reads the kind and the keys that give the part its shape, and refuses
// those that the kind has no use for.
func (r *reader) form(root *node, p *Part) {
	var words []string
	for _, k := range kinds {
		words = append(words, string(k.kind))
	}
	kindNode := r.need(root, "kind", "kind: "+list(words))
	p.Kind = Kind(r.word(kindNode, words...))
	allowed := flat | turned | tubular | rolled | folded
	for _, k := range kinds {
		if k.kind == p.Kind {
			allowed = k.forms
		}
	}
	// The form that is given narrows what else may be.
	var givers, fits []string
	for _, f := range formKeys {
		if f.key != "outline" && f.key != "profile" && f.key != "tube" && f.key != "cone" && f.key != "transition" {
			continue
		}
		if f.forms&allowed != 0 {
			fits = append(fits, f.key)
			if root.get(f.key) != nil {
				givers = append(givers, f.key)
			}
		}
	}
	if p.Kind != "" {
		switch len(givers) {
		case 0:
			if !root.hasAny(fits) {
				r.faultf(kindNode.pos, "the key "+list(fits), "a %s needs its shape", p.Kind)
			}
		case 1:
			for _, f := range formKeys {
				if f.key == givers[0] {
					allowed = f.forms
				}
			}
		default:
			r.faultf(root.keyPos(givers[1]), "keep one of the two", "the part has both %s and %s", givers[0], givers[1])
		}
		r.refuse(root, p.Kind, allowed)
	}
	p.Outline = r.outline(root.get("outline"))
	p.Bore = r.bore(root.get("bore"))
	p.Thickness = r.length(root.get("thickness"), positive)
	p.Profile = r.profile(root.get("profile"))
	if t := root.get("tube"); t != nil && p.Profile == nil {
		p.Profile = r.tube(t)
	}
	p.Frustum = r.frustum(root.get("cone"))
	p.Transition = r.transition(root.get("transition"))
	p.Ends = r.ends(root.get("ends"))
	if p.Outline != nil {
		r.thickness(root, p)
	}
}

// hasAny tells whether one of the keys is there, though perhaps at fault or
// misspelt.
func (n *node) hasAny(keys []string) bool {
	return slices.ContainsFunc(keys, func(key string) bool {
		return slices.Contains(n.meant, key) || slices.ContainsFunc(n.keys, func(f field) bool { return f.key == key })
	})
}

// refuse records the keys that do not go with the part's form, and drops them.
func (r *reader) refuse(root *node, kind Kind, allowed shape) {
	for _, f := range formKeys {
		if f.forms&allowed == 0 && root.get(f.key) != nil {
			r.faultf(root.keyPos(f.key), f.key+" is for "+f.use, "this %s takes no %s", kind, f.key)
			root.drop(f.key)
		}
	}
}

// thickness takes the plate thickness from the stock if it is not given.
func (r *reader) thickness(root *node, p *Part) {
	sheet := p.Stock.Form == "plate" || p.Stock.Form == "sheet"
	size := p.Stock.Size
	switch {
	case root.get("thickness") == nil && sheet:
		p.Thickness = size
	case root.get("thickness") == nil:
		if !root.hasAny([]string{"thickness", "stock"}) || p.Stock.Form != "" {
			r.lack(root.pos, root.label+" lacks its thickness", "thickness: 8 mm, or stock: {plate: 8 mm}")
		}
	case sheet && size.Set() && p.Thickness.Mm > size.Mm:
		r.faultf(p.Thickness.Pos, "a thicker plate", "the part is %s thick and its plate only %s", p.Thickness.Text, size.Text)
	}
}

// stock reads what a part is made from.
func (r *reader) stock(n *node) Stock {
	if !r.group(n, "plate", "sheet", "round", "tube", "square", "flat", "casting", "wall", "length", "cut") {
		return Stock{}
	}
	s := Stock{Pos: n.pos}
	key, v := r.oneOf(n, "plate", "sheet", "round", "tube", "square", "flat", "casting")
	s.Form = key
	if key == "casting" && v != nil && v.kind != scalarNode || key != "" && key != "casting" {
		s.Size = r.length(v, positive)
	} else if key == "casting" && v != nil {
		// A casting is named or sized by its largest dimension.
		if _, wrong := parseLength(v.text, r.units); wrong == "" {
			s.Size = r.length(v, positive)
		} else {
			r.text(v, maxText)
		}
	}
	switch wall := n.get("wall"); {
	case wall != nil && key != "tube" && key != "flat" && key != "":
		r.faultf(n.keyPos("wall"), "wall is for tube and flat", "%s stock takes no wall", key)
	case wall != nil:
		s.Second = r.length(wall, positive)
	case key == "tube" || key == "flat":
		r.faultf(n.pos, "{"+key+": 60 mm, wall: 5 mm}", "%s stock lacks the key wall, its thickness", key)
	}
	if key == "tube" && s.Size.Set() && s.Second.Set() && 2*s.Second.Mm >= s.Size.Mm {
		r.faultf(s.Second.Pos, "a wall under half the outside diameter", "the wall %s leaves no bore in a tube of %s", s.Second.Text, s.Size.Text)
	}
	s.Length = r.length(n.get("length"), positive)
	s.Cut = r.word(n.get("cut"), "laser", "plasma", "waterjet", "flame", "saw", "none")
	return s
}

// uniqueNames checks that no two features of a part have the same name.
func (r *reader) uniqueNames(p *Part) {
	first := make(map[string]Pos)
	first["top"] = Pos{} // joints say part.top for its TOP line
	if p.Outline != nil {
		first["outline"], first["bore"] = p.Outline.Pos, p.Outline.Pos
	}
	check := func(t Text) {
		if t.Value == "" {
			return
		}
		if at, twice := first[t.Value]; twice {
			if at.Line == 0 || p.Outline != nil && at == p.Outline.Pos {
				r.faultf(t.Pos, "another name", "the name %s stands for the %s of the part", t.Value, t.Value)
				return
			}
			r.faultf(t.Pos, "a name of its own for each feature", "the name %s is already used in line %d", t.Value, at.Line)
			return
		}
		first[t.Value] = t.Pos
	}
	if p.Profile != nil {
		for _, s := range slices.Concat(p.Profile.Outside, p.Profile.Inside) {
			check(s.Name)
		}
	}
	for _, g := range p.Holes {
		check(g.Name)
	}
	for _, s := range p.Slots {
		check(s.Name)
	}
	for _, f := range p.Radials {
		check(f.Name)
	}
}

// features names what a reference to the part can point at, those with a
// measured outside first.
func (p *Part) features() (outside, inside []string) {
	switch {
	case p.Outline != nil:
		outside = []string{"outline"}
		if p.Bore != nil {
			inside = []string{"bore"}
		}
	case p.Profile != nil:
		for _, s := range p.Profile.Outside {
			outside = append(outside, s.Name.Value)
		}
		for _, s := range p.Profile.Inside {
			inside = append(inside, s.Name.Value)
		}
	}
	return outside, inside
}
