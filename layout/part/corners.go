package part

import (
	"math"

	"github.com/tdewolff/canvas"

	"centrepop/layout/words"
	"centrepop/parts"
	"centrepop/parts/geom"
)

// mostCorners is how many corners of an outline are told one by one; one with more is
// left to its template. Common practice, no source.
const mostCorners = 12

// listedCorners tells whether an outline gives its corners one by one, or as a path.
func (f *flat) listedCorners() bool {
	return f.Outline.Shape == parts.PathOutline || f.Outline.Shape == parts.PolygonOutline && f.Outline.Sides == 0
}

// cornersText is where the corners of a listed outline lie, measured from its left and
// its bottom edge; empty for another.
func (f *flat) cornersText(w words.Writer) string {
	if !f.listedCorners() {
		return ""
	}
	n, text, path := 0, "", f.Outline.Contour().Path
	box := path.Bounds()
	for s := path.Scanner(); s.Scan(); {
		lead := ""
		switch s.Cmd() {
		case canvas.MoveToCmd:
			continue
		case canvas.ArcToCmd:
			rx, ry, _, _, _ := s.Arc()
			if lead = "curve to "; math.Abs(rx-ry) < geom.CloseMm {
				lead = "R" + w.Size(geom.Clean(rx)) + " to "
			}
		case canvas.QuadToCmd, canvas.CubeToCmd:
			lead = "curve to "
		default:
			if geom.Distance(geom.Point{XMm: s.Start().X, YMm: s.Start().Y}, geom.Point{XMm: s.End().X, YMm: s.End().Y}) < geom.CloseMm {
				continue
			}
		}
		n++
		text = words.Join(", ", text, lead+"("+w.Size(geom.Clean(s.End().X-box.X0))+", "+w.Size(geom.Clean(s.End().Y-box.Y0))+")")
	}
	return words.When(n <= mostCorners, "; corners from the left and the bottom edge: "+text)
}
