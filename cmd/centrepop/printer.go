package main

import (
	"fmt"
	"io"
	"slices"
	"strings"

	"centrepop/layout"
	"centrepop/parts"
	"centrepop/render/pdf"
	"centrepop/templates"
)

// printerVerbs are what the printer command does, with the flags that each
// takes.
var printerVerbs = []struct {
	name  string
	names int // how many printer names it takes
	flags []string
	run   func(c *call, f *printerFlags) error
}{
	{"check", 0, []string{"output", "paper", "printer"}, printerCheck},
	{"set", 1, []string{"paper", "across", "up", "diagonal1", "diagonal2"}, printerSet},
	{"list", 0, nil, printerList},
	{"show", 1, nil, printerShow},
	{"forget", 1, nil, printerForget},
}

type printerFlags struct {
	output, paper, printer           string
	across, up, diagonal1, diagonal2 string
	name                             string // the argument, not a flag
	book                             *printerBook
}

// printer keeps what is known of the user's printers.
func printer(c *call) error {
	f := &printerFlags{}
	c.flags.StringVarP(&f.output, "output", "o", "", "check: PDF `FILE` to write")
	c.flags.StringVar(&f.paper, "paper", "A4", "check, set: the `PAPER` of the check page, A4, A3, Letter, Tabloid or WIDTHxHEIGHT")
	c.flags.StringVar(&f.printer, "printer", "", "check: correct the page for the printer `NAME`, to prove the correction")
	c.flags.StringVar(&f.across, "across", "", "set: the across rule as measured on the print, `LENGTH` in mm unless it says in (150 mm is right on A4)")
	c.flags.StringVar(&f.up, "up", "", "set: the up rule as measured, `LENGTH` (250 mm is right on A4)")
	c.flags.StringVar(&f.diagonal1, "diagonal1", "", "set: from lower left to upper right as measured, `LENGTH`; both diagonals or none")
	c.flags.StringVar(&f.diagonal2, "diagonal2", "", "set: from lower right to upper left as measured, `LENGTH`")
	if err := c.parse(1, 2); err != nil {
		return err
	}
	for _, v := range printerVerbs {
		if v.name != c.args[0] {
			continue
		}
		if len(c.args)-1 != v.names {
			return badUse("printer %s takes %s", v.name, [2]string{"no name", "one NAME"}[v.names])
		}
		for _, flag := range []string{"output", "paper", "printer", "across", "up", "diagonal1", "diagonal2"} {
			if c.flags.Changed(flag) && !slices.Contains(v.flags, flag) {
				return badUse("printer %s takes no --%s", v.name, flag)
			}
		}
		if v.names == 1 {
			f.name = c.args[1]
		}
		if v.name != "check" { // which needs none, unless it corrects for a printer
			var err error
			if f.book, err = openPrinters(); err != nil {
				return err
			}
		}
		return v.run(c, f)
	}
	return badUse("printer %s: check, set, list, show or forget", c.args[0])
}

// correction is that of the printer of a --printer flag; nil for none.
func correction(name string) (*layout.Correction, error) {
	if name == "" {
		return nil, nil
	}
	book, err := openPrinters()
	if err != nil {
		return nil, err
	}
	p, err := book.find(name)
	if err != nil {
		return nil, err
	}
	return p.correction()
}

// rules are the paper asked for and the lengths of the rules on its check page.
func (f *printerFlags) rules() (p parts.Paper, acrossMm, upMm float64, err error) {
	if p, err = parts.ParsePaper(f.paper, parts.Millimetres); err == nil {
		acrossMm, upMm, err = templates.CheckRules(p)
	}
	if err != nil {
		err = badUse("--paper %s: %s", f.paper, err)
	}
	return p, acrossMm, upMm, err
}

func printerCheck(c *call, f *printerFlags) error {
	if err := output(f.output, ".pdf"); err != nil {
		return err
	}
	p, across, up, err := f.rules()
	if err != nil {
		return err
	}
	fix, err := correction(f.printer)
	if err != nil {
		return err
	}
	doc, err := templates.CheckPage(p, fix)
	if err != nil {
		return err
	}
	if err := c.save(f.output, &parts.Job{}, func(w io.Writer) error { return pdf.Write(w, doc) }); err != nil {
		return err
	}
	return c.answer(struct {
		Output   string  `json:"output"`
		Paper    string  `json:"paper"`
		AcrossMm float64 `json:"across_mm"`
		UpMm     float64 `json:"up_mm"`
	}{f.output, p.Name, across, up}, func() {
		fmt.Fprintf(c.stdout, "wrote %s: rules %g mm across and %g mm up; print it at 100 %%, measure, then centrepop printer set NAME --paper %s --across … --up …\n", f.output, across, up, f.paper)
	})
}

func printerSet(c *call, f *printerFlags) error {
	if f.across == "" || f.up == "" {
		return badUse("--across and --up are both needed: what the two rules of the check page measure on the print")
	}
	p, across, up, err := f.rules()
	if err != nil {
		return err
	}
	sizes := []*lengthArg{{name: "--across", text: f.across, need: true}, {name: "--up", text: f.up, need: true},
		{name: "--diagonal1", text: f.diagonal1}, {name: "--diagonal2", text: f.diagonal2}}
	if err := c.read(sizes...); err != nil {
		return err
	}
	entry := savedPrinter{
		Name: f.name, Paper: p.Name, AcrossOfMm: across, UpOfMm: up,
		AcrossMm: sizes[0].mm, UpMm: sizes[1].mm, Diagonal1Mm: sizes[2].mm, Diagonal2Mm: sizes[3].mm,
	}
	if wrong := entry.wrong(); wrong != "" {
		return badUse("%s", wrong)
	}
	f.book.put(entry)
	if err := f.book.save(); err != nil {
		return err
	}
	return printPrinter(c, entry)
}

func printerList(c *call, f *printerFlags) error {
	out := []printerAnswer{}
	for _, p := range f.book.printers {
		a, err := p.answer()
		if err != nil {
			return err
		}
		out = append(out, a)
	}
	return c.answer(map[string]any{"printers": out}, func() {
		if len(out) == 0 {
			fmt.Fprintln(c.stdout, "no printers yet: print the page of centrepop printer check -o FILE.pdf and measure it")
		}
		for _, a := range out {
			fmt.Fprintln(c.stdout, strings.TrimPrefix(a.fix.Text(), "printer "))
		}
	})
}

func printerShow(c *call, f *printerFlags) error {
	p, err := f.book.find(f.name)
	if err != nil {
		return err
	}
	return printPrinter(c, p)
}

func printerForget(c *call, f *printerFlags) error {
	if _, err := f.book.find(f.name); err != nil {
		return err
	}
	f.book.remove(f.name)
	if err := f.book.save(); err != nil {
		return err
	}
	return c.answer(map[string]string{"forgotten": f.name}, func() { fmt.Fprintf(c.stdout, "forgot printer %s\n", f.name) })
}

// printerAnswer is a printer as JSON: the readings and what follows.
type printerAnswer struct {
	savedPrinter
	*correctionJSON
	fix *layout.Correction
}

type correctionJSON struct {
	AcrossFactor float64 `json:"across_factor"`
	UpFactor     float64 `json:"up_factor"`
	SkewDeg      float64 `json:"skew_deg"`
}

func (p savedPrinter) answer() (printerAnswer, error) {
	fix, err := p.correction()
	if err != nil {
		return printerAnswer{}, err
	}
	return printerAnswer{p, &correctionJSON{fix.AcrossFactor, fix.UpFactor, fix.SkewDeg}, fix}, nil
}

func printPrinter(c *call, p savedPrinter) error {
	a, err := p.answer()
	if err != nil {
		return err
	}
	return c.answer(a, func() {
		fmt.Fprintf(c.stdout, "%s\nmeasured on %s: across %g of %g mm, up %g of %g mm", a.fix.Text(), p.Paper, p.AcrossMm, p.AcrossOfMm, p.UpMm, p.UpOfMm)
		if p.Diagonal1Mm > 0 {
			fmt.Fprintf(c.stdout, ", diagonals %g and %g mm", p.Diagonal1Mm, p.Diagonal2Mm)
		}
		fmt.Fprintln(c.stdout)
	})
}
