package main

import (
	"fmt"
	"io"
	"slices"
	"strings"

	"centrepop/layout"
	"centrepop/layout/part"
	"centrepop/layout/plan"
	"centrepop/layout/review"
	"centrepop/parts"
	"centrepop/parts/meant"
	"centrepop/parts/seq"
	"centrepop/render/pdf"
	"centrepop/render/png"
	"centrepop/templates"
	"centrepop/templates/draw"
	"centrepop/templates/truesize"
)

// draftFlag is common to the commands that write what is cut from.
func (c *call) draftFlag() *bool {
	return c.flags.Bool("draft", false, "end well although the review stops at a part; its sheets are stamped all the same")
}

// answer names the stops of the parts that were written on standard error, and
// is errFindings if there are any and nobody asked for a draft.
func (r *release) answer(c *call, draft bool, names []string) error {
	var order []review.Finding
	of := map[parts.Pos][]string{} // one line for what stops several
	for _, s := range r.stops {
		if !slices.Contains(names, s.Part) {
			continue
		}
		for _, f := range s.Findings {
			if of[f.Pos] == nil {
				order = append(order, f)
			}
			of[f.Pos] = seq.Add(of[f.Pos], s.Part)
		}
	}
	for _, f := range order {
		if !*c.json {
			fmt.Fprintf(c.stderr, "%s: %s: %s:%d:%d %s: %s\n", draw.NotReleased, strings.Join(of[f.Pos], ", "), f.Pos.File, f.Pos.Line, f.Pos.Column, f.Code, f.What)
		}
	}
	if order != nil && !draft {
		return errFindings
	}
	return nil
}

// paper is the job's paper, or the one named on the command line.
func paper(pl *plan.Plan, flag string) (parts.Paper, error) {
	if flag == "" {
		return pl.Paper, nil
	}
	p, err := parts.ParsePaper(flag, pl.Units)
	if err != nil {
		return p, badUse("--paper %s: %s", flag, err)
	}
	return p, nil
}

// paperFlag and printerFlag are common to the commands that print.
func (c *call) paperFlag() *string {
	return c.flags.String("paper", "", "A4, A3, Letter, Tabloid or WIDTHxHEIGHT instead of the job's paper")
}

func (c *call) printerFlag() *string {
	return c.flags.String("printer", "", "correct all sheets for this printer: see centrepop printer")
}

func sheets(c *call) error {
	out := c.flags.StringP("output", "o", "", "PDF file to write")
	size := c.paperFlag()
	device := c.printerFlag()
	reader := c.flags.String("for", "", "machinist, fabricator or reviewer: what this reader needs alone")
	names := c.flags.StringSlice("part", nil, "the sheets of this part alone; may be given several times")
	which := c.flags.String("templates", "useful", "useful, all or none: the plan says why a template is not useful")
	both := c.flags.Bool("two-sided", false, "for printing on both sides: each template on an odd page, with nothing on its back")
	old := c.flags.String("changed-since", "", "only the sheets that differ from this earlier `JOB`, a folder or a file, with a bar beside what changed")
	asDraft := c.draftFlag()
	if err := c.parse(1, 1); err != nil {
		return err
	}
	if err := output(*out, ".pdf"); err != nil {
		return err
	}
	press := &pdf.Press{}
	policy, ok := map[string]truesize.Policy{"useful": truesize.Useful, "all": truesize.All, "none": truesize.None}[*which]
	if !ok {
		return badUse("--templates %s: useful, all or none", *which)
	}
	switch templates.Reader(*reader) {
	case "", templates.Machinist, templates.Fabricator, templates.Reviewer:
	default:
		return badUse("--for %s: machinist, fabricator or reviewer", *reader)
	}
	job, doc, answer, err := c.packet(packetOf{c.args[0], *size, *device, *out, *old},
		templates.Options{Press: press.Take, Templates: policy, For: templates.Reader(*reader), Parts: *names, TwoSided: *both})
	if err != nil {
		return err
	}
	if doc == nil {
		fmt.Fprintf(c.stderr, "nothing has changed since %s, and nothing is written\n", *old)
		return nil
	}
	if err := c.writePDF(job, doc, press, *out, answer); err != nil {
		return err
	}
	if r := answer.Review; r.Open() > 0 && !*c.json {
		fmt.Fprintf(c.stderr, "review: %d to stop at and %d to check before metal is cut; centrepop review %s\n", r.Stop, r.Check, c.args[0])
	}
	return answer.release.answer(c, *asDraft, answer.Parts)
}

// packetOf is which packet to draw: of which job, on which paper, for which
// printer, into which file, against which earlier state of the job.
type packetOf struct{ path, size, device, out, old string }

// printed is a job worked out and reviewed, with the paper and the printer that it goes to.
type printed struct {
	*release
	job     *parts.Job
	pl      *plan.Plan
	paper   parts.Paper
	printer *layout.Correction
}

func (c *call) printed(of packetOf) (p printed, err error) {
	if p.printer, err = correction(of.device); err != nil {
		return p, err
	}
	c.tell.stage("working out the job")
	if p.job, p.pl, p.release, err = draft(of.path, of.out); err == nil {
		p.paper, err = paper(p.pl, of.size)
	}
	return p, err
}

// packet is the shop packet of a job, corrected for a printer if one is named;
// no document if it differs in nothing from an earlier state that is named.
func (c *call) packet(of packetOf, opt templates.Options) (*parts.Job, *draw.Document, written, error) {
	p, err := c.printed(of)
	if err != nil {
		return nil, nil, written{}, err
	}
	for _, name := range opt.Parts {
		if _, err := partNamed(p.pl, name); err != nil {
			return nil, nil, written{}, err
		}
	}
	if opt.Since, err = since(of.old, p.job); err != nil || opt.Since != nil && !opt.Since.Report.Differs() {
		return nil, nil, written{}, err
	}
	c.tell.stage("drawing the sheets")
	opt.Paper, opt.Printer, opt.Findings, opt.Held = p.paper, p.printer, p.findings, p.held()
	doc, err := templates.Packet(p.pl, opt)
	count := review.Summary(p.findings)
	answer := written{Paper: p.paper.Name, Review: &count, release: p.release}
	if answer.Parts = opt.Parts; len(answer.Parts) == 0 {
		for _, q := range p.pl.Parts {
			if opt.Since == nil || slices.Contains(opt.Since.Report.Print, q.Name) {
				answer.Parts = append(answer.Parts, q.Name)
			}
		}
	}
	answer.NotReleased = p.among(answer.Parts)
	return p.job, doc, answer, located(err, p.job)
}

func template(c *call) error {
	out := c.flags.StringP("output", "o", "", "PDF file to write")
	size := c.paperFlag()
	device := c.printerFlag()
	face := c.flags.String("face", "", "front or back: this face alone, with the through holes of the other face mirrored")
	apart := c.flags.Bool("apart", false, "every template on sheets of its own")
	asDraft := c.draftFlag()
	if err := c.parse(2, -1); err != nil {
		return err
	}
	if err := output(*out, ".pdf"); err != nil {
		return err
	}
	if *face != "" && *face != string(parts.Front) && *face != string(parts.Back) {
		return badUse("--face %s: front or back", *face)
	}
	p, err := c.printed(packetOf{path: c.args[0], size: *size, device: *device, out: *out})
	if err != nil {
		return err
	}
	names := c.args[1:]
	for _, name := range names {
		if err := p.shows(name, parts.Face(*face)); err != nil {
			return err
		}
	}
	press := &pdf.Press{}
	doc, err := templates.Templates(p.pl, names, templates.Options{Paper: p.paper, Printer: p.printer, Held: p.held(), Press: press.Take, Templates: truesize.All, Apart: *apart})
	if err != nil {
		return located(err, p.job)
	}
	if err := c.writePDF(p.job, doc, press, *out, written{Paper: p.paper.Name, Parts: names, NotReleased: p.among(names)}); err != nil {
		return err
	}
	return p.answer(c, *asDraft, names)
}

// shows leaves of a part the templates of one face, if one is given, and refuses one that has none.
func (p *printed) shows(name string, face parts.Face) error {
	q, err := partNamed(p.pl, name)
	if err != nil {
		return err
	}
	if face != "" {
		view, err := part.FaceView(p.job, name, face)
		if err != nil {
			return err
		}
		q.Faces, q.Developments = nil, nil
		if view != nil {
			q.Faces = []*plan.Face{view}
		}
	}
	if len(q.Faces) == 0 && len(q.Developments) == 0 {
		return badUse("%s has no holes or slots on a face, and nothing to wrap or develop", name)
	}
	return nil
}

func partNamed(pl *plan.Plan, name string) (*plan.PartPlan, error) {
	if q := pl.Part(name); q != nil {
		return q, nil
	}
	known := seq.Map(pl.Parts, func(q *plan.PartPlan) string { return q.Name })
	return nil, badUse("no part %s in the job%s; it has %s", name, meant.Perhaps(name, known), strings.Join(known, ", "))
}

func preview(c *call) error {
	out := c.flags.StringP("output", "o", "", "PNG file to write")
	size := c.paperFlag()
	page := c.flags.Int("page", 1, "page of the packet, from 1")
	partName := c.flags.String("part", "", "first page of the part `NAME` instead of a page number")
	sheet := c.flags.String("sheet", "", "first page of this `SHEET`, such as cover, operation or punch")
	dpi := c.flags.Float64("dpi", 80, "dots per inch, 20 to 600")
	if err := c.parse(1, 1); err != nil {
		return err
	}
	if err := output(*out, ".png"); err != nil {
		return err
	}
	if !(*dpi >= 20 && *dpi <= 600) {
		return badUse("--dpi %v: 20 to 600", *dpi)
	}
	job, doc, answer, err := c.packet(packetOf{path: c.args[0], size: *size, out: *out}, templates.Options{})
	if err != nil {
		return err
	}
	if *partName != "" || *sheet != "" {
		if *page, err = pageOf(job, doc, *partName, *sheet); err != nil {
			return err
		}
	}
	if *page < 1 || *page > len(doc.Pages) {
		return badUse("--page %d: the packet has pages 1 to %d", *page, len(doc.Pages))
	}
	if err := c.save(*out, job, func(w io.Writer) error { return png.Write(w, &doc.Pages[*page-1], *dpi) }); err != nil {
		return err
	}
	answer.Output, answer.Pages = *out, 1
	return c.answer(answer, func() { fmt.Fprintf(c.stdout, "wrote %s: page %d of %d\n", *out, *page, len(doc.Pages)) })
}
