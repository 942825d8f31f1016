package main

import (
	"fmt"
	"io"
	"path/filepath"
	"strings"

	"centrepop/layout/part"
	"centrepop/layout/plan"
	"centrepop/layout/words"
	"centrepop/parts"
	"centrepop/render/pdf"
	"centrepop/render/svg"
	"centrepop/templates/truesize"
)

// profileAnswer is the report of a cutting file.
type profileAnswer struct {
	Output string `json:"output"`
	*plan.Profile
}

// profile writes what a cutter gets of a part.
func profile(c *call) error {
	out := c.flags.StringP("output", "o", "",
		"SVG or PDF `FILE` to write, true size, front face (of blanks the outside) up; contours in the group cut, pop marks, scribed lines and TOP in the group mark")
	cut := c.flags.String("cut", "", "`CUTTER` laser, plasma, waterjet or flame instead of the part's stock.cut")
	kerfText := c.flags.String("kerf", "", "`WIDTH` of the cut, such as 0.2; stated in the report, applied only with --compensate")
	compensate := c.flags.Bool("compensate", false, "move the contours by half the kerf into the waste; without it the cutter does that")
	piece := c.flags.String("piece", "", "`NAME` of the blank, of a cone or square-to-round made of several pieces")
	asDraft := c.draftFlag()
	if err := c.parse(2, 2); err != nil {
		return err
	}
	ext := strings.ToLower(filepath.Ext(*out))
	switch {
	case *out == "":
		return badUse("-o FILE is needed")
	case *out != "-" && ext != ".svg" && ext != ".pdf":
		return badUse("-o %s: the file's name must end in .svg or .pdf", *out)
	case *compensate && *kerfText == "":
		return badUse("--compensate needs --kerf WIDTH")
	}
	job, pl, rel, err := draft(c.args[0], *out)
	if err != nil {
		return err
	}
	if _, err := partNamed(pl, c.args[1]); err != nil {
		return err
	}
	opt := part.CutOptions{Cut: *cut, Compensate: *compensate, Piece: *piece}
	if opt.KerfMm, err = kerf(*kerfText, pl.Units); err != nil {
		return err
	}
	p, err := part.CutProfile(job, c.args[1], opt)
	if err != nil {
		return err
	}
	p.Held = len(rel.among(c.args[1:])) > 0
	if err := c.saveProfile(*out, job, p, pl.Date); err != nil {
		return err
	}
	if !*c.json {
		profileText(c.stdout, words.Writer{Units: pl.Units}, *out, p)
	} else if err := c.print(profileAnswer{*out, p}); err != nil {
		return err
	}
	return rel.answer(c, *asDraft, c.args[1:])
}

// saveProfile writes a profile to a file, as a page where its name ends in .pdf, else as a drawing.
func (c *call) saveProfile(out string, job *parts.Job, p *plan.Profile, date string) error {
	page, err := truesize.Profile(p)
	if err != nil {
		return err
	}
	return c.save(out, job, func(w io.Writer) error {
		if !strings.EqualFold(filepath.Ext(out), ".pdf") {
			return svg.Write(w, &page.Drawing, page.WidthMm, page.HeightMm)
		}
		return pdf.Write(w, truesize.ProfileDocument(p, page, date))
	})
}

// kerf reads --kerf; none given is 0.
func kerf(text string, units parts.Units) (float64, error) {
	if text == "" {
		return 0, nil
	}
	mm, err := parts.ParseLength(text, units)
	if err != nil {
		return 0, badUse("--kerf %s: %s", text, err)
	}
	if !(mm > 0) {
		return 0, badUse("--kerf %s: it must be over 0", text)
	}
	return mm, nil
}

// profileText writes the report for reading in a terminal and for the order.
func profileText(w io.Writer, size words.Writer, file string, p *plan.Profile) {
	fmt.Fprintf(w, "wrote %s: %s", file, p.Title)
	if p.Revision != "" {
		fmt.Fprintf(w, ", revision %s", p.Revision)
	}
	fmt.Fprintf(w, ", %d off, %s\n", p.Quantity, p.Material)
	fmt.Fprintf(w, "stock %s; %s; sizes as cut\n", p.StockText, p.Side)
	if p.Copies > 1 {
		fmt.Fprintf(w, "%d equal pieces make one part\n", p.Copies)
	}
	switch {
	case p.Compensated:
		fmt.Fprintf(w, "kerf %s is allowed for in the contours: cut on the line\n", size.Size(p.KerfMm))
	case p.KerfMm > 0:
		fmt.Fprintf(w, "kerf %s is not in the contours: the cutter allows for it\n", size.Size(p.KerfMm))
	default:
		fmt.Fprintln(w, "kerf not stated and not in the contours: the cutter allows for it")
	}
	fmt.Fprintln(w, "\nCut in this order")
	for _, c := range p.Contours {
		fmt.Fprintf(w, "  %3d  %-8s %-26s %-34s %13s\n", c.N, c.Shape, c.Name, c.SizeText, size.Said(size.Even(c.LengthMm, 0.1, 0.01)))
	}
	if len(p.Marks) > 0 {
		fmt.Fprintln(w, "\nMark only (x, y in "+words.LengthWord(size.Units)+" from the part's origin)")
		for _, m := range p.Marks {
			fmt.Fprintf(w, "       %-26s %9s %9s   %s\n", m.Name, words.Readout(m.AtMm.XMm, size.Units), words.Readout(m.AtMm.YMm, size.Units), m.Why)
		}
	}
	if len(p.Lines) > 0 {
		fmt.Fprintf(w, "\nScribe only: %d lines\n", len(p.Lines))
		for _, l := range p.Lines {
			fmt.Fprintf(w, "       %-8s %s\n", l.Role, l.Name)
		}
	}
	if len(p.TopLine) == 2 {
		fmt.Fprintln(w, "       TOP line with an arrow")
	}
	fmt.Fprintf(w, "\ncontours %d, pierces %d, cut length %s\n", len(p.Contours), p.Pierces, size.Said(size.Even(p.LengthMm, 0.1, 0.01)))
	fmt.Fprintf(w, "blank %s × %s × %s", size.Size(p.BlankXMm), size.Size(p.BlankYMm), size.Size(p.ThicknessMm))
	if p.NetKg > 0 {
		fmt.Fprintf(w, "; %s as cut, %s the rectangle", size.RoundMass(p.NetKg, 3), size.RoundMass(p.GrossKg, 3))
	}
	fmt.Fprintln(w)
	if s := p.Smallest; s != nil {
		fmt.Fprintf(w, "smallest opening %s: %s, %.2f × thickness; least %s (%s)\n", s.Name, size.Size(s.SizeMm), s.Ratio, size.Size(p.LeastMm), p.LeastSource)
	}
	if b := p.Web; b != nil {
		fmt.Fprintf(w, "least metal %s between %s, %.2f × thickness\n", size.Size(b.WidthMm), b.Between, b.Ratio)
	}
	for _, n := range p.Notes {
		fmt.Fprintln(w, "note: "+n)
	}
}
