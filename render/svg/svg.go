// Package svg writes a draw.Drawing as an SVG file at true size, for
// laser, plasma and plotter software.
//
// In comes a drawing in millimetres, y up; out goes the part of it from 0, 0
// to widthMm, heightMm, with user units of one millimetre and y down. Many
// cutting programs ignore transforms, so none stands on a path: turning y
// over, and the transforms of groups, are worked into the coordinates, which
// carry five decimals. Arcs stay arcs. Texts are text in the family of package
// typeface, and do carry a rotation; they are not for cutting.
//
// Items are gathered by layer into one <g id="..."> each, in the order the
// layers first appear; the items without a layer are in "drawing". Within a
// layer the order of the drawing is kept. What can be clicked lies over all of
// them, in "links".
//
// The format is that of SVG 1.1 (Second Edition). Errors say which number is
// out of range or not finite; nothing is written to w before the whole is
// complete.
package svg

import (
	"bytes"
	"cmp"
	"encoding/xml"
	"errors"
	"fmt"
	"io"
	"math"
	"net/url"
	"slices"
	"strings"

	"github.com/tdewolff/canvas"

	"centrepop/parts/seq"
	"centrepop/render"
	"centrepop/templates/draw"
	"centrepop/templates/typeface"
)

// Write writes the drawing to w. The sides must be above 0 and up to
// render.MaxMm. A clip upon a shape of the layers cut or mark is refused,
// since a cutter that ignores the clip would cut beyond it.
func Write(w io.Writer, d *draw.Drawing, widthMm, heightMm float64) error {
	if slices.ContainsFunc([]float64{widthMm, heightMm}, func(side float64) bool { return !(side > 0) || side > render.MaxMm }) {
		return fmt.Errorf("svg: %v x %v mm is no size", widthMm, heightMm)
	}
	s := &sheet{}
	// Turn y over: the drawing's 0, 0 becomes the lower left corner.
	flip := canvas.Identity.Translate(0, heightMm).Scale(1, -1)
	if err := s.drawing(d, flip, 0, 0); err != nil {
		return fmt.Errorf("svg: %w", err)
	}
	if _, err := w.Write(s.file(widthMm, heightMm)); err != nil {
		return fmt.Errorf("svg: %w", err)
	}
	return nil
}

// sheet collects what is written, layer by layer.
type sheet struct {
	clips  []string
	links  []string
	names  string // further namespaces
	layers []layer
}

type layer struct {
	id   string
	body bytes.Buffer
}

func (s *sheet) file(widthMm, heightMm float64) []byte {
	w, h := number(widthMm), number(heightMm)
	var b bytes.Buffer
	b.WriteString(`<?xml version="1.0" encoding="UTF-8"?>` + "\n")
	fmt.Fprintf(&b, `<svg xmlns="http://www.w3.org/2000/svg" version="1.1"%s width="%smm" height="%smm" viewBox="0 0 %s %s">`+"\n", s.names, w, h, w, h)
	if len(s.clips) > 0 {
		b.WriteString("<defs>\n" + strings.Join(s.clips, "\n") + "\n</defs>\n")
	}
	for i := range s.layers {
		fmt.Fprintf(&b, "<g id=\"%s\">\n%s</g>\n", escape(s.layers[i].id), s.layers[i].body.Bytes())
	}
	if len(s.links) > 0 {
		b.WriteString("<g id=\"links\">\n" + strings.Join(s.links, "\n") + "\n</g>\n")
	}
	b.WriteString("</svg>\n")
	return b.Bytes()
}

func (s *sheet) put(layerName, element string) {
	id := cmp.Or(layerName, "drawing")
	for i := range s.layers {
		if s.layers[i].id == id {
			s.layers[i].body.WriteString(element + "\n")
			return
		}
	}
	s.layers = append(s.layers, layer{id: id})
	s.layers[len(s.layers)-1].body.WriteString(element + "\n")
}

// drawing writes the items through m, which leads to the coordinates of the
// file; clip is the number of the clip in force, 0 for none.
func (s *sheet) drawing(d *draw.Drawing, m canvas.Matrix, clip, depth int) error {
	return render.Each(d,
		func(shape draw.Shape) error { return s.shape(shape, m, clip) },
		func(t draw.Text) error { return s.text(t, m, clip) },
		func(g draw.Group) error { return s.group(g, m, clip, depth) },
		func(l draw.Link) error { return s.link(l, m) })
}

func (s *sheet) group(g draw.Group, m canvas.Matrix, clip, depth int) error {
	if err := render.CheckGroup(g, depth); err != nil {
		return err
	}
	if g.Clip != nil {
		// A clip within a clip is clipped by the outer one.
		s.clips = append(s.clips, fmt.Sprintf(`<clipPath id="clip%d"%s><path d="%s"/></clipPath>`,
			len(s.clips)+1, clipAttribute(clip), pathData(g.Clip.Copy().Transform(m))))
		clip = len(s.clips)
	}
	return s.drawing(g.Drawing, m.Mul(g.Transform), clip, depth+1)
}

// link writes an area that leads to the fragment of its title (clause 17).
func (s *sheet) link(l draw.Link, m canvas.Matrix) error {
	if l.Path.Empty() {
		return nil
	}
	moved := l.Path.Copy().Transform(m)
	if err := render.CheckPath(moved); err != nil {
		return err
	}
	s.names = ` xmlns:xlink="http://www.w3.org/1999/xlink"`
	s.links = append(s.links, fmt.Sprintf(`<a xlink:href="#%s"><title>%s</title><path d="%s" fill="none" pointer-events="all"/></a>`,
		escape(url.PathEscape(l.To)), escape(l.To), pathData(moved)))
	return nil
}

func clipAttribute(clip int) string {
	if clip == 0 {
		return ""
	}
	return fmt.Sprintf(` clip-path="url(#clip%d)"`, clip)
}

func (s *sheet) shape(shape draw.Shape, m canvas.Matrix, clip int) error {
	if shape.Path.Empty() || shape.Fill == draw.None && shape.Stroke == draw.None {
		return nil
	}
	if err := render.CheckShape(shape); err != nil {
		return err
	}
	if clip != 0 && (shape.Layer == draw.LayerCut || shape.Layer == draw.LayerMark) {
		return errors.New("a shape to be cut or marked lies in a clipped group")
	}
	moved := shape.Path.Copy().Transform(m)
	if err := render.CheckPath(moved); err != nil {
		return err
	}
	var b strings.Builder
	fmt.Fprintf(&b, `<path d="%s" fill="%s"`, pathData(moved), colour(shape.Fill))
	if shape.Stroke != draw.None {
		scale := math.Sqrt(math.Abs(m.Det()))
		fmt.Fprintf(&b, ` stroke="%s" stroke-width="%s" stroke-miterlimit="%d"`,
			colour(shape.Stroke), number(shape.WidthMm*scale), render.MiterLimit)
		if len(shape.DashMm) > 0 {
			dashes := seq.Map(shape.DashMm, func(d float64) string { return number(d * scale) })
			fmt.Fprintf(&b, ` stroke-dasharray="%s"`, strings.Join(dashes, " "))
		}
	}
	b.WriteString(clipAttribute(clip) + "/>")
	s.put(shape.Layer, b.String())
	return nil
}

func (s *sheet) text(t draw.Text, m canvas.Matrix, clip int) error {
	if err := render.CheckText(t); err != nil {
		return err
	}
	if t.Content == "" {
		return nil
	}
	// The viewer aligns by its own widths, so it is told the anchor and the
	// place of the alignment point. Text is upright in the file's axes, which
	// takes one more turning over.
	m = m.Translate(t.XMm, t.YMm).Rotate(t.RotateDeg).Scale(1, -1)
	anchor := map[draw.Align]string{draw.Centre: ` text-anchor="middle"`, draw.Right: ` text-anchor="end"`}[t.Align]
	weight := ""
	if t.Bold {
		weight = ` font-weight="bold"`
	}
	tone := t.Tone
	if tone == draw.None {
		tone = draw.Black
	}
	size, place := t.SizeMm, fmt.Sprintf(`x="%s" y="%s"`, number(m[0][2]), number(m[1][2]))
	if scale := m[0][0]; m[0][1] == 0 && m[1][0] == 0 && m[1][1] == scale && scale > 0 {
		size *= scale
	} else {
		place = fmt.Sprintf(`transform="matrix(%s %s %s %s %s %s)"`,
			render.Decimal(m[0][0], 9), render.Decimal(m[1][0], 9), render.Decimal(m[0][1], 9), render.Decimal(m[1][1], 9), number(m[0][2]), number(m[1][2]))
	}
	s.put(t.Layer, fmt.Sprintf(`<text %s font-family="'%s', sans-serif" font-stretch="condensed" font-kerning="none" font-size="%s"%s%s fill="%s" xml:space="preserve"%s>%s</text>`,
		place, typeface.Family, number(size), weight, anchor, colour(tone), clipAttribute(clip), escape(t.Content)))
	return nil
}

// pathData writes a path with absolute commands (clause 8.3).
func pathData(p *canvas.Path) string {
	var b strings.Builder
	for s := p.Scanner(); s.Scan(); {
		end := s.End()
		switch s.Cmd() {
		case canvas.MoveToCmd:
			b.WriteString("M" + pair(end))
		case canvas.LineToCmd:
			b.WriteString("L" + pair(end))
		case canvas.QuadToCmd:
			b.WriteString("Q" + pair(s.CP1()) + " " + pair(end))
		case canvas.CubeToCmd:
			b.WriteString("C" + pair(s.CP1()) + " " + pair(s.CP2()) + " " + pair(end))
		case canvas.ArcToCmd:
			rx, ry, rotDeg, large, sweep := s.Arc()
			if number(rx) == number(ry) {
				rotDeg = 0 // a circle has no direction
			}
			fmt.Fprintf(&b, "A%s %s %s %s %s %s", number(rx), number(ry), number(rotDeg), flag(large), flag(sweep), pair(end))
		case canvas.CloseCmd:
			b.WriteString("Z")
		}
	}
	return b.String()
}

func flag(v bool) string {
	if v {
		return "1"
	}
	return "0"
}

func pair(p canvas.Point) string { return number(p.X) + " " + number(p.Y) }

func number(v float64) string { return render.Decimal(v, 5) }

func colour(t draw.Tone) string {
	if t == draw.None {
		return "none"
	}
	v := int(math.Round(255 * render.Lightness(t)))
	return fmt.Sprintf("#%02x%02x%02x", v, v, v)
}

func escape(s string) string {
	var b bytes.Buffer
	// A bytes.Buffer takes every write.
	_ = xml.EscapeText(&b, []byte(s))
	return b.String()
}
