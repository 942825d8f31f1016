package changes

import (
	"cmp"
	"fmt"
	"strconv"
	"strings"

	"centrepop/layout/plan"
	"centrepop/layout/words"
	"centrepop/parts/seq"
)

// useWords are what to do with what was made to the old drawing.
var useWords = map[Use]string{
	AsIs: "may be used as it is", Measure: "measure, good within the new limits", Rework: "rework, metal to take away", WeldOn: "weld more on",
	Plug: "scrap unless plugged or filled", ByHand: "decide by hand", Scrap: "scrap",
}

// Line is a line of the report; Level 0 is a heading, 1 and 2 lie below it.
type Line struct {
	Level int
	Text  string
}

// Lines writes the report for reading, one line each.
func (r *Report) Lines() []string {
	return seq.Map(r.Outline(), func(l Line) string { return strings.Repeat("  ", l.Level) + l.Text })
}

// Before names the earlier state by what the head of the job says of it.
func (r *Report) Before() string {
	for _, what := range []string{"revision", "date"} {
		for _, c := range r.Heading {
			if c.What == what && c.OldText != "" {
				return words.Join(" ", strings.TrimPrefix(what, "date"), c.OldText)
			}
		}
	}
	return "the state before"
}

// Outline is the report for reading, in lines below headings.
func (r *Report) Outline() []Line {
	if !r.Differs() {
		return []Line{{0, "nothing has changed"}}
	}
	w := words.Writer{Units: r.Units}
	var out []Line
	section := func(title string, list []Change) {
		if len(list) > 0 {
			out = append(out, Line{0, title})
		}
		out = append(out, seq.Map(list, func(c Change) Line { return Line{1, sentence(w, c)} })...)
	}
	section("The job", r.Heading)
	out = append(out, items("Parts", w, r.Parts)...)
	out = append(out, items("Joints", w, r.Joints)...)
	section("Stock and order", r.Supply)
	if len(r.Sign) > 0 {
		out = append(out, Line{0, "Acceptances"})
	}
	out = append(out, seq.Map(r.Sign, func(s Sign) Line { return Line{1, s.line()} })...)
	for _, line := range []struct {
		title  string
		sheets []string
	}{{"Sheets to throw away", r.Discard}, {"Sheets to print again", r.Print}} {
		if len(line.sheets) > 0 {
			out = append(out, Line{0, line.title + ": " + strings.Join(line.sheets, ", ")})
		}
	}
	return append(out, Line{0, words.Counted(r.Count(), "change")})
}

// items writes parts or joints with their changes.
func items(title string, w words.Writer, list []Item) []Line {
	if len(list) == 0 {
		return nil
	}
	out := []Line{{0, title}}
	for _, it := range list {
		head := it.Name
		switch {
		case it.State == Added:
			head += ": new"
		case it.State == Removed:
			head += ": no longer in the job"
		case it.Use != NoMetal:
			head += ", already made: " + useWords[it.Use]
		}
		head += words.When(it.FromEnd, " (back faces laid together; take the length off the front)")
		out = append(out, Line{1, head})
		out = append(out, seq.Map(it.Changes, func(c Change) Line { return Line{2, sentence(w, c)} })...)
	}
	return out
}

func sentence(w words.Writer, c Change) string {
	name := c.Feature
	switch {
	case strings.HasPrefix(c.What, name):
		name = c.What
	case c.What != "":
		name += " " + c.What
	}
	was, is := value(w, c.Unit, c.Old, c.OldText), value(w, c.Unit, c.New, c.NewText)
	var text string
	switch c.Code {
	case Printed:
		return "no size of its own has changed; its sheets read otherwise"
	case Added:
		text = words.Either(is == "", "new", "new: "+is)
	case Removed:
		text = words.Either(was == "", "no longer", "no longer: "+was)
	case More:
		text = strconv.Itoa(c.Count) + " more, the others where they were"
	case Fewer:
		text = strconv.Itoa(c.Count) + " fewer, the others where they were"
	case Moved:
		name = c.Feature
		text = words.Either(c.Count != 0, fmt.Sprintf("at other places, %+d", c.Count), "moved "+w.Said(c.MovedMm))
		text += words.When(c.What != "", " ("+c.What+" "+was+" → "+is+")")
	default:
		text = arrow(was, is)
	}
	return words.Join(": ", name, text, useWords[c.Use])
}

func arrow(was, is string) string {
	if was == "" && is == "" {
		return ""
	}
	was = cmp.Or(was, "nothing")
	is = cmp.Or(is, "nothing")
	return was + " → " + is
}

func value(w words.Writer, unit plan.Unit, v float64, text string) string {
	switch {
	case text != "":
		return text
	case unit == plan.Mm:
		return w.Said(v)
	case unit == plan.Diameter:
		return w.Dia(v)
	case unit == plan.Degree:
		return words.Angle(v)
	case unit == plan.Number:
		return words.Trim(v, 2)
	}
	return ""
}

func (s Sign) line() string {
	at := s.Code + " at " + s.At
	switch s.State {
	case Added:
		return at + ": sign: " + s.Is
	case Removed:
		return at + ": falls away, nothing is accepted there now; it was: " + s.Was
	}
	return words.Either(s.Was == s.Is, at+": sign again, the entry reads otherwise: "+s.Reason, at+": sign again: "+s.Was+" → "+s.Is)
}
