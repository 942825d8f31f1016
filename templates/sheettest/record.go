package sheettest

import (
	"fmt"
	"strconv"
	"strings"
	"testing"

	"centrepop/templates/draw"

	"github.com/tdewolff/canvas"
)

// Record writes a document as text, a line for each item in drawing order: its kind
// (size of a text, width of a line) and, after a tab, its place to 0.1 mm with the text
// or the points a shape goes through. golden.Whole keeps the kinds apart.
func Record(t testing.TB, doc *draw.Document) string {
	return recordPages(doc, func(d *draw.Drawing) string { return RecordDrawing(t, d) })
}

// Outline writes what pages a document has, and how many texts and shapes are on each.
func Outline(t testing.TB, doc *draw.Document) string {
	return recordPages(doc, func(d *draw.Drawing) string {
		texts, shapes := 0, 0
		for _, p := range Flatten(t, d, 0, 0, nil) {
			switch p.Item.(type) {
			case draw.Text:
				texts++
			case draw.Shape:
				shapes++
			}
		}
		return fmt.Sprintf("%d texts, %d shapes\n", texts, shapes)
	})
}

func recordPages(doc *draw.Document, drawn func(*draw.Drawing) string) string {
	var b strings.Builder
	fmt.Fprintf(&b, "document %q subject %q language %s date %s\n", doc.Title, doc.Subject, doc.Language, doc.Date)
	for i := range doc.Pages {
		page := &doc.Pages[i]
		fmt.Fprintf(&b, "page %s %.1f x %.1f\n", page.Label, page.WidthMm, page.HeightMm)
		for _, m := range page.Bookmarks {
			fmt.Fprintf(&b, "bookmark %d %s\n", m.Level, m.Title)
		}
		b.WriteString(drawn(&page.Drawing))
	}
	return b.String()
}

// RecordDrawing is Record of one drawing.
func RecordDrawing(t testing.TB, d *draw.Drawing) string {
	t.Helper()
	var b strings.Builder
	record(&b, d, 0, 0, false)
	return b.String()
}

// record writes the items of a drawing that is moved on paper. What a group turns or
// scales stands in its own coordinates, between two lines that say so.
func record(b *strings.Builder, d *draw.Drawing, dx, dy float64, clipped bool) {
	for _, item := range d.Items {
		switch item := item.(type) {
		case draw.Group:
			m := item.Transform
			if draw.OnlyMoves(m) {
				record(b, item.Drawing, dx+m[0][2], dy+m[1][2], clipped || item.Clip != nil)
				continue
			}
			fmt.Fprintf(b, "by\t%.4f %.4f %.4f %.4f at %s %s\n", m[0][0], m[0][1], m[1][0], m[1][1], Tenth(m[0][2]+dx), Tenth(m[1][2]+dy))
			record(b, item.Drawing, 0, 0, clipped || item.Clip != nil)
			b.WriteString("by\tas before\n")
		case draw.Text:
			fmt.Fprintf(b, "text %s", strconv.FormatFloat(item.SizeMm, 'g', 3, 64))
			with(b, item.Bold, " bold")
			with(b, item.Align != draw.Left, " align %d", item.Align)
			with(b, item.RotateDeg != 0, " turned %.1f", item.RotateDeg)
			with(b, item.Tone != draw.None, " tone %d", item.Tone)
			with(b, item.Heading != 0, " heading %d", item.Heading)
			with(b, item.Layer != "", " on %s", item.Layer)
			fmt.Fprintf(b, "\t%s %s %q\n", Tenth(item.XMm+dx), Tenth(item.YMm+dy), item.Content)
		case draw.Shape:
			with(b, item.Stroke != draw.None, "line %.2f", item.WidthMm)
			with(b, item.Stroke == draw.None, "no line")
			with(b, item.Stroke > draw.Black, " tone %d", item.Stroke)
			with(b, item.Fill != draw.None, " fill %d", item.Fill)
			with(b, len(item.DashMm) > 0, " dash %.1f", item.DashMm)
			with(b, clipped, " clipped")
			with(b, item.Layer != "", " on %s", item.Layer)
			fmt.Fprintf(b, "\t%s\n", points(item.Path, dx, dy))
		}
	}
}

func with(b *strings.Builder, wanted bool, format string, args ...any) {
	if wanted {
		fmt.Fprintf(b, format, args...)
	}
}

// points writes a path on paper: where it begins, ends and goes to, the radii of arcs
// before their ends, the control points of curves before theirs. A rectangle (□) is
// written by two corners.
func points(path *canvas.Path, dx, dy float64) string {
	var b strings.Builder
	if c := path.Coords(); len(c) == 5 && path.Flat() && path.Closed() && c[0].X == c[3].X && c[1].X == c[2].X && c[0].Y == c[1].Y && c[2].Y == c[3].Y {
		return fmt.Sprintf("□ %s %s %s %s", Tenth(c[0].X+dx), Tenth(c[0].Y+dy), Tenth(c[2].X+dx), Tenth(c[2].Y+dy))
	}
	at := func(name string, p canvas.Point) { fmt.Fprintf(&b, "%s%s %s", name, Tenth(p.X+dx), Tenth(p.Y+dy)) }
	for scan := path.Scanner(); scan.Scan(); {
		switch scan.Cmd() {
		case canvas.MoveToCmd:
			at("M", scan.End())
		case canvas.LineToCmd:
			at("L", scan.End())
		case canvas.CloseCmd:
			b.WriteString("Z")
		case canvas.ArcToCmd:
			rx, ry, _, large, sweep := scan.Arc()
			fmt.Fprintf(&b, "A%s", Tenth(rx))
			with(&b, rx != ry, "/%s", Tenth(ry))
			with(&b, large, "+")
			with(&b, sweep, "<")
			at(" ", scan.End())
		case canvas.QuadToCmd:
			at("Q", scan.CP1())
			at(" ", scan.End())
		case canvas.CubeToCmd:
			at("C", scan.CP1())
			at(" ", scan.CP2())
			at(" ", scan.End())
		}
	}
	return b.String()
}

// Tenth writes a place to 0.1 mm.
func Tenth(mm float64) string {
	return strings.TrimSuffix(strings.Replace(fmt.Sprintf("%.1f", mm), "-0.0", "0.0", 1), ".0")
}

// RecordSheets writes sheets that are not bound yet, each under what it is.
func RecordSheets(t testing.TB, sheets []*draw.Sheet) string {
	var b strings.Builder
	for _, s := range sheets {
		fmt.Fprintf(&b, "sheet %q of %q, %s, parts %q, starts %q\n", s.Name, s.Part, s.Scale, s.Parts, s.Starts)
		b.WriteString(RecordDrawing(t, &s.Draw))
		for _, p := range s.Refers {
			fmt.Fprintf(&b, "page of size %.2f\t%.1f %.1f %q\n", p.SizeMm, p.XMm, p.YMm, p.Title)
		}
	}
	return b.String()
}

// RecordLines is RecordSheets with each sheet in one line, for golden.Whole: of many
// sheets a digest then keeps a name and a sum each.
func RecordLines(t testing.TB, sheets []*draw.Sheet) string {
	var b strings.Builder
	for _, s := range sheets {
		b.WriteString(strings.NewReplacer("\n", " | ", "\t", " ").Replace(RecordSheets(t, []*draw.Sheet{s})) + "\n")
	}
	return b.String()
}
