package truesize

import (
	"fmt"

	"centrepop/layout/plan"
	"centrepop/layout/words"
	"centrepop/templates/draw"

	"github.com/tdewolff/canvas"
)

// The lines of a cutting file, in millimetres.
const (
	// profileRimMm is left free round the contours, so that no line lies on
	// the edge of the file.
	profileRimMm = 1.0
	// Of a part that is not released the file says so below the contours, in
	// no group, so that nothing of it is cut or marked.
	heldTextMm, heldFootMm = 6.0, 9.0
	profileLine            = 0.1
	// profileCross is the arm of a pop mark; on small holes it is less.
	profileCross = 2.0
)

// Profile draws a cutting file at true size on a page of its own, as large as
// the contours and 1 mm more all round. The contours are closed shapes of
// LayerCut in the order of cutting; pop marks, lines to scribe and the TOP
// line are in LayerMark; there is nothing else, so that whatever a cutter reads is meant.
// It returns an error if a contour cannot be read.
func Profile(p *plan.Profile) (*draw.Page, error) {
	width, height := p.MaxMm.XMm-p.MinMm.XMm+2*profileRimMm, p.MaxMm.YMm-p.MinMm.YMm+2*profileRimMm
	d := &draw.Drawing{}
	for _, c := range p.Contours {
		path, err := canvas.ParseSVGPath(string(c.Path))
		if err != nil {
			return nil, fmt.Errorf("%s, %s: %w", p.Part, c.Name, err)
		}
		if !path.Closed() {
			return nil, fmt.Errorf("%s, %s: the contour is open", p.Part, c.Name)
		}
		d.Add(draw.Shape{Path: path, Stroke: draw.Black, WidthMm: profileLine, Layer: draw.LayerCut})
	}
	for _, l := range p.Lines {
		path, err := canvas.ParseSVGPath(string(l.Path))
		if err != nil {
			return nil, fmt.Errorf("%s, %s: %w", p.Part, l.Name, err)
		}
		d.Add(draw.Shape{Path: path, Stroke: draw.Grey, WidthMm: profileLine, Layer: draw.LayerMark})
	}
	for _, m := range p.Marks {
		arm := profileCross
		if m.DrillMm > 0 {
			arm = min(arm, 0.4*m.DrillMm)
		}
		cross := &canvas.Path{}
		cross.MoveTo(m.AtMm.XMm-arm, m.AtMm.YMm)
		cross.LineTo(m.AtMm.XMm+arm, m.AtMm.YMm)
		cross.MoveTo(m.AtMm.XMm, m.AtMm.YMm-arm)
		cross.LineTo(m.AtMm.XMm, m.AtMm.YMm+arm)
		d.Add(draw.Shape{Path: cross, Stroke: draw.Grey, WidthMm: profileLine, Layer: draw.LayerMark})
	}
	if t := p.TopLine; len(t) == 2 {
		// A line with two barbs: an arrow that points to TOP.
		barb := (t[0].YMm - t[1].YMm) / 4
		line := &canvas.Path{}
		line.MoveTo(t[1].XMm, t[1].YMm)
		line.LineTo(t[0].XMm, t[0].YMm)
		line.MoveTo(t[0].XMm-barb/2, t[0].YMm-barb)
		line.LineTo(t[0].XMm, t[0].YMm)
		line.LineTo(t[0].XMm+barb/2, t[0].YMm-barb)
		d.Add(draw.Shape{Path: line, Stroke: draw.Grey, WidthMm: profileLine, Layer: draw.LayerMark})
	}
	var foot float64
	if p.Held {
		foot = heldFootMm
		width = max(width, draw.TextWidth(draw.NotReleased, heldTextMm, true)+2*profileRimMm)
	}
	height += foot
	page := &draw.Page{WidthMm: width, HeightMm: height, Label: "1", Bookmarks: []draw.Bookmark{{Title: p.Title + ", profile"}}}
	page.Drawing.Place(d, profileRimMm-p.MinMm.XMm, foot+profileRimMm-p.MinMm.YMm)
	if p.Held {
		page.Drawing.Add(draw.Text{XMm: profileRimMm, YMm: profileRimMm, SizeMm: heldTextMm, Bold: true, Content: draw.NotReleased})
	}
	return page, nil
}

// ProfileDocument is a page of Profile as a document of its own.
func ProfileDocument(p *plan.Profile, page *draw.Page, date string) *draw.Document {
	title := p.Title
	title += words.When(p.Revision != "", ", revision "+p.Revision)
	return &draw.Document{Title: title, Subject: "Profile for the cutter, 1:1, " + p.Side, Language: "en", Date: date, Pages: []draw.Page{*page}}
}
