package part

import (
	"github.com/tdewolff/canvas"

	"centrepop/layout/plan"
	"centrepop/layout/words"
	"centrepop/parts"
)

// form is what a part is made as. Each answers every stage; one that needs
// nothing there says so.
type form interface {
	lengthMm() float64                        // along the axis, front face to back
	steps(z *sizer) []Step                    // its cylinders, outside first
	outline(s *Sizes) *canvas.Path            // seen on the front face, y up
	round() bool                              // a circle outside
	roundMm(feature string) float64           // of a round of its own besides its steps, 0 if it is none
	wallMm(s *Sizes, zMm float64) float64     // metal that heat flows into: plate, wall, or half a solid bar
	overall(s *Sizes) string                  // outside size in words
	section(s *Sizes) *plan.Section           // half section
	developments(d *shaper)                   // flat patterns
	volumeMm3(g *Shape) float64               // before the holes
	features(n *Numbered)                     // its own features, in order
	operations(b *bench)                      // up to marking out
	cutFile(c *cutter) (*plan.Profile, error) // what a cutter gets of it
}

// viewed is a form that cuts of its own show, in place of the half section.
type viewed interface {
	views(s *Sizes) []plan.FoldView
}

// faced is a form whose front face is drawn without a hole too, with what it puts there.
type faced interface {
	onFace(w words.Writer, out *plan.Face)
}

// formKind is a form with how to tell it from what the drawing gives.
type formKind struct {
	name string
	of   func(*parts.Part, parts.Units) form
}

// forms are the forms there are. The first that fits a part is taken.
var forms = []formKind{
	{"folded", func(p *parts.Part, units parts.Units) form {
		if p.Bends == nil {
			return nil
		}
		return newFolded(p, units == parts.Inches)
	}},
	{"flat", func(p *parts.Part, _ parts.Units) form {
		if p.Outline == nil {
			return nil
		}
		return &flat{p}
	}},
	{"tube", func(p *parts.Part, _ parts.Units) form {
		if p.Profile == nil || p.Kind != parts.Tube {
			return nil
		}
		return &tube{turned{p.Profile}, p.Ends}
	}},
	{"turned", func(p *parts.Part, _ parts.Units) form {
		if p.Profile == nil {
			return nil
		}
		return &turned{p.Profile}
	}},
	{"cone", func(p *parts.Part, _ parts.Units) form {
		if p.Frustum == nil {
			return nil
		}
		return &cone{p.Frustum}
	}},
	{"flight", func(p *parts.Part, _ parts.Units) form {
		if p.Flight == nil {
			return nil
		}
		return newHelix(p.Flight)
	}},
	{"bar", func(p *parts.Part, units parts.Units) form {
		if p.Bar == nil {
			return nil
		}
		return newBar(p.Bar, units == parts.Inches)
	}},
	{"transition", func(p *parts.Part, _ parts.Units) form {
		if p.Transition == nil {
			return nil
		}
		return &transition{p.Transition}
	}},
}

// formOf is the form of a part; the reader lets none through without one.
func formOf(p *parts.Part, units parts.Units) form {
	for _, f := range forms {
		if found := f.of(p, units); found != nil {
			return found
		}
	}
	panic("part: " + p.Name.Value + " has no form")
}
