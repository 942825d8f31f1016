package main

import (
	"fmt"
	"io"

	"centrepop/layout/plan"
	"centrepop/layout/words"
)

func explain(c *call) error {
	if err := c.parse(1, 2); err != nil {
		return err
	}
	w, err := work(c.args[0])
	if err != nil {
		return err
	}
	if *c.json && len(c.args) == 1 { // the whole plan, as it is printed
		w.Arrange()
	}
	if err := c.explained(w.Plan, c.args[1:]); err != nil {
		return err
	}
	faults := w.Faults()
	if faults == nil {
		return nil
	}
	fmt.Fprintln(c.stderr, faults)
	return errFindings
}

// explained prints the numbers of the parts named, or of all.
func (c *call) explained(pl *plan.Plan, names []string) error {
	list := pl.Parts
	if len(names) > 0 {
		q, err := partNamed(pl, names[0])
		if err != nil {
			return err
		}
		list = []*plan.PartPlan{q}
	}
	switch {
	case *c.json && len(names) > 0:
		return c.print(list[0])
	case *c.json:
		return c.print(pl)
	}
	text := explainer{c.stdout, words.Writer{Units: pl.Units}}
	for i, q := range list {
		if i > 0 {
			fmt.Fprintln(c.stdout)
		}
		text.part(pl, q)
	}
	return nil
}

// explainer writes what a part expands to, for reading in a terminal, in the
// job's units.
type explainer struct {
	io.Writer
	w words.Writer
}

func (e explainer) say(format string, args ...any) { fmt.Fprintf(e, format, args...) }

// row writes lengths, right-aligned, with the decimals of a readout.
func (e explainer) row(mm ...float64) {
	for _, v := range mm {
		e.say(" %9s", words.Readout(v, e.w.Units))
	}
}

func (e explainer) part(pl *plan.Plan, q *plan.PartPlan) {
	e.say("%s (%s), %d off, %s\n%s; stock %s", q.Title, q.Kind, q.Quantity, q.Material, q.Overall, q.StockText)
	if q.MassKg > 0 {
		e.say("; %s", e.w.RoundMass(q.MassKg, 2))
	}
	if pl.Tolerance != "" {
		e.say("; %s where nothing else is said", pl.Tolerance)
	}
	e.say("\n\nFeatures\n")
	for _, f := range q.Features {
		e.say("  %2d  %-22s %s", f.N, f.Name, f.Size)
		for _, s := range []string{f.Limits, f.Note} {
			if s != "" {
				e.say("  [%s]", s)
			}
		}
		e.say("\n")
	}
	for _, f := range q.Faces {
		e.face(f)
	}
	for _, l := range q.Ladders {
		e.say("\nLight press of %s on the %s\n%s\n", l.Feature, l.Counterpart, l.Note)
		for _, r := range l.Rungs {
			e.say("  measured %s: bore %s\n", r.Measured, r.Bore)
		}
	}
	for _, d := range q.Developments {
		e.pattern(&d)
	}
	e.say("\nOperations\n")
	for _, o := range q.Operations {
		e.say("  %2d  %-6s %s\n", o.N, o.Machine, o.Title)
		for _, d := range o.Do {
			e.say("        - %s\n", d)
		}
		if o.Speed != "" {
			e.say("        %s\n", o.Speed)
		}
	}
}

func (e explainer) face(f *plan.Face) {
	e.say("\nHoles, %s face (clock angle°, x, y from the centre; from the %s; in %s)\n", f.Face, f.Datum, words.LengthWord(e.w.Units))
	for _, h := range f.Holes {
		e.say("  %3d  %-14s %8.3f ", h.N, h.Group, h.AngleDeg)
		e.row(h.XMm, h.YMm)
		e.say("  ")
		e.row(h.FromXMm, h.FromYMm)
		e.say("\n")
	}
	for _, s := range f.Slots {
		e.say("  %3d  %-14s slot     ", s.N, s.Group)
		e.row(s.XMm, s.YMm)
		e.say("   turned %s\n", words.Angle(s.TurnDeg))
	}
	for _, g := range f.Groups {
		for _, ch := range g.Chords {
			e.say("  %s %d–%d: %s centres, %s over, %s between %s\n", g.Name, ch.From, ch.To,
				words.Readout(ch.CentreMm, e.w.Units), words.Readout(ch.OverMm, e.w.Units), words.Readout(ch.BetweenMm, e.w.Units), e.w.Dia(g.DrillMm))
		}
	}
}

func (e explainer) pattern(d *plan.Development) {
	e.say("\nFlat pattern %s: %s, %s", d.Name, d.Title, e.w.Said(d.MaxMm.XMm-d.MinMm.XMm)+" × "+e.w.Said(d.MaxMm.YMm-d.MinMm.YMm))
	if d.Copies > 1 {
		e.say(", %d pieces", d.Copies)
	}
	e.say("\n")
	if d.Edge != "" {
		e.say("  %s\n", d.Edge)
	}
	for _, v := range d.Sizes {
		e.say("  %-38s %s\n", v.Name, v.Text)
	}
}
