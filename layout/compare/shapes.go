package compare

import (
	"math"

	"centrepop/parts/geom"
)

// shape draws a basic shape or a path; what else there is cannot be compared.
func (f *file) shape(e *element, c context) error {
	p := &pen{f: f, e: e, m: c.m, mark: c.mark}
	switch e.name {
	case "path":
		d, _ := e.attr("d")
		return p.path(d)
	case "circle", "ellipse":
		return p.ellipse(c)
	case "rect":
		return p.rect(c)
	case "line":
		v, err := p.numbers(c, "x1", "y1", "x2", "y2")
		if err != nil {
			return err
		}
		p.to(v[0], v[1])
		p.to(v[2], v[3])
		return p.lift(false)
	case "polyline", "polygon":
		return p.polygon()
	}
	f.other(e)
	return nil
}

func (f *file) other(e *element) { f.sheet.others = append(f.sheet.others, f.where(e.from)) }

// numbers reads attributes of an element in its units. Those named after y or a
// height are shares of the view's height, radii of its diagonal.
func (p *pen) numbers(c context, names ...string) (v []float64, err error) {
	for _, name := range names {
		of := c.w
		switch name {
		case "y", "y1", "y2", "cy", "ry", "height":
			of = c.h
		case "r":
			of = math.Hypot(c.w, c.h) / math.Sqrt2
		}
		one, err := p.f.coordinate(p.e, name, of, 0)
		if err != nil {
			return nil, err
		}
		v = append(v, one)
	}
	return v, nil
}

func (p *pen) ellipse(c context) error {
	radii := []string{"r", "r"}
	if p.e.name == "ellipse" {
		radii = []string{"rx", "ry"}
	}
	v, err := p.numbers(c, "cx", "cy", radii[0], radii[1])
	if err != nil {
		return err
	}
	if v[2] < 0 || v[3] < 0 {
		return p.f.fault(p.e.from, "the radius of a %s is negative", p.e.name)
	}
	if v[2] == 0 || v[3] == 0 {
		return nil
	}
	p.turn(xy(v[0], v[1]), xy(v[2], v[3]), frame{1, 0}, 0, 2*math.Pi)
	return p.lift(true)
}

func (p *pen) rect(c context) error {
	v, err := p.numbers(c, "x", "y", "width", "height", "rx", "ry")
	if err != nil {
		return err
	}
	x, y, w, h, rx, ry := v[0], v[1], v[2], v[3], v[4], v[5]
	if w < 0 || h < 0 || rx < 0 || ry < 0 {
		return p.f.fault(p.e.from, "a side or radius of a rect is negative")
	}
	if w == 0 || h == 0 {
		return nil
	}
	if _, ok := p.e.attr("rx"); !ok {
		rx = ry
	}
	if _, ok := p.e.attr("ry"); !ok {
		ry = rx
	}
	rx, ry = math.Min(rx, w/2), math.Min(ry, h/2)
	corner := func(x, y float64) { p.arc(geom.Stroke{Radii: xy(rx, ry), Sweep: true, To: xy(x, y)}) }
	p.to(x+rx, y)
	p.to(x+w-rx, y)
	corner(x+w, y+ry)
	p.to(x+w, y+h-ry)
	corner(x+w-rx, y+h)
	p.to(x+rx, y+h)
	corner(x, y+h-ry)
	p.to(x, y+ry)
	corner(x+rx, y)
	return p.lift(true)
}

func (p *pen) polygon() error {
	text, _ := p.e.attr("points")
	s := geom.Scanner{Text: text}
	for s.Comma(); s.At < len(text) && !p.tooMuch; s.Comma() {
		x, ok := s.Number()
		if !ok {
			return p.f.faultIn(p.e, "points", s.At, "a number belongs here")
		}
		s.Comma()
		y, ok := s.Number()
		if !ok {
			return p.f.faultIn(p.e, "points", s.At, "a point lacks its y")
		}
		p.to(x, y)
	}
	return p.lift(p.e.name == "polygon")
}
