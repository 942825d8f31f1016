package sheettest

import (
	"fmt"
	"math"
	"slices"

	"centrepop/parts/seq"
	"centrepop/templates/draw"

	"github.com/tdewolff/canvas"
)

// Crossed are the texts of a page that a line runs through: as "text": how many
// millimetres of lines lie in it. What a filled shape hides, or a clip leaves out,
// does not count, nor what only grazes a text's room.
func Crossed(page *draw.Page) []string {
	s := &scene{}
	s.add(&page.Drawing, canvas.Identity, nil)
	var out []string
	for _, t := range s.texts {
		if mm := s.through(t, 0); mm > leastThroughMm {
			out = append(out, fmt.Sprintf("%q at %.0f, %.0f: %.1f mm", t.text.Content, t.room.middle().X, t.room.middle().Y, mm))
		}
	}
	return out
}

// Broken are the texts of a page whose own patch of paper (draw.Over) breaks a straight
// line, such as a leader, an extension line or another dimension line, as Crossed says them.
func Broken(page *draw.Page) []string {
	s := &scene{}
	s.add(&page.Drawing, canvas.Identity, nil)
	var out []string
	for _, t := range s.texts {
		all := s.lines
		s.lines = seq.Keep(all, func(l sceneLine) bool { return l.single && l.n < t.n })
		if mm := s.through(t, t.n-1); t.patched && mm > leastThroughMm {
			out = append(out, fmt.Sprintf("%q at %.0f, %.0f: %.1f mm", t.text.Content, t.room.middle().X, t.room.middle().Y, mm))
		}
		s.lines = all
	}
	return out
}

// Overlaid are the texts of a page that lie over another that can be read.
func Overlaid(page *draw.Page) []string {
	s := &scene{}
	s.add(&page.Drawing, canvas.Identity, nil)
	var out []string
	for i, t := range s.texts {
		box := t.full.box()
		for _, o := range s.texts[:i] {
			if box.Meets(o.full.box()) && t.full.meets(o.full) && !s.hidden(o.room.middle(), o.n, 0) {
				out = append(out, fmt.Sprintf("%q over %q at %.0f, %.0f", t.text.Content, o.text.Content, t.room.middle().X, t.room.middle().Y))
			}
		}
	}
	return out
}

const (
	grazeMm        = 0.35 // of a text's room, at its rim, that lines may take
	touchMm        = 0.05 // and other texts
	sampleMm       = 0.15 // between the points of a line that are looked at
	leastThroughMm = 0.5
)

// scene is a page with all groups resolved, in drawing order.
type scene struct {
	lines []sceneLine
	fills []sceneFill
	texts []sceneText
	n     int // items so far
}

type sceneLine struct {
	from, to canvas.Point
	clips    []*canvas.Path
	n        int
	single   bool // all of its shape, and no dashes
}

type sceneFill struct {
	path  *canvas.Path
	box   draw.Rect
	clips []*canvas.Path
	n     int
}

type sceneText struct {
	text       draw.Text
	room, full quad
	n          int
	patched    bool // on paper of its own, the item before it
}

func (s *scene) add(d *draw.Drawing, m canvas.Matrix, clips []*canvas.Path) {
	for _, item := range d.Items {
		s.n++
		switch item := item.(type) {
		case draw.Group:
			inner := clips
			if item.Clip != nil {
				inner = append(inner[:len(inner):len(inner)], item.Clip.Copy().Transform(m))
			}
			s.add(item.Drawing, m.Mul(item.Transform), inner)
		case draw.Text:
			r, q, full := draw.TextRect(item).Grown(-grazeMm), corners(item, grazeMm), corners(item, touchMm)
			for i := range q {
				q[i], full[i] = m.Dot(q[i]), m.Dot(full[i])
			}
			if r.X1 > r.X0 && r.Y1 > r.Y0 && inside(q.middle(), clips) {
				last := len(s.fills) - 1
				s.texts = append(s.texts, sceneText{item, q, full, s.n, last >= 0 && s.fills[last].n == s.n-1})
			}
		case draw.Shape:
			s.shape(item, m, clips)
		}
	}
}

// shape adds a shape's lines, and what its fill hides. A black fill is lines too.
func (s *scene) shape(item draw.Shape, m canvas.Matrix, clips []*canvas.Path) {
	path := item.Path.Copy().Transform(m).Flatten(draw.FlatMm)
	if item.Fill == draw.White || item.Fill == draw.Pale {
		b := path.Bounds()
		s.fills = append(s.fills, sceneFill{path, draw.R(b.X0, b.Y0, b.X1, b.Y1), clips, s.n})
	}
	if item.Stroke == draw.None && item.Fill != draw.Black {
		return
	}
	for scan := path.Scanner(); scan.Scan(); {
		if scan.Cmd() != canvas.MoveToCmd {
			single := item.Fill == draw.None && len(item.DashMm) == 0 && item.Path.Len() == path.Len() && len(path.Coords()) == 2
			s.lines = append(s.lines, sceneLine{scan.Start(), scan.End(), clips, s.n, single})
		}
	}
}

func inside(p canvas.Point, clips []*canvas.Path) bool {
	return !slices.ContainsFunc(clips, func(c *canvas.Path) bool { return !c.Contains(p.X, p.Y, canvas.NonZero) })
}

// through is the length of the lines that are seen in a text, a fill left out.
func (s *scene) through(t sceneText, but int) float64 {
	var sum float64
	room := t.room.box()
	for _, l := range s.lines {
		if !draw.R(min(l.from.X, l.to.X), min(l.from.Y, l.to.Y), max(l.from.X, l.to.X), max(l.from.Y, l.to.Y)).Meets(room) {
			continue
		}
		n := int(math.Ceil(l.to.Sub(l.from).Length() / sampleMm))
		for i := range n {
			p := l.from.Interpolate(l.to, (float64(i)+0.5)/float64(n))
			if t.room.holds(p) && inside(p, l.clips) && !s.hidden(p, l.n, but) {
				sum += l.to.Sub(l.from).Length() / float64(n)
			}
		}
	}
	return sum
}

// hidden tells whether a fill, but for one, covers a point of an item that was drawn before.
func (s *scene) hidden(p canvas.Point, n, but int) bool {
	for i := len(s.fills) - 1; i >= 0 && s.fills[i].n > n; i-- {
		if f := s.fills[i]; f.n != but && f.box.HasPoint(p.X, p.Y) && inside(p, f.clips) && f.path.Contains(p.X, p.Y, canvas.NonZero) {
			return true
		}
	}
	return false
}
