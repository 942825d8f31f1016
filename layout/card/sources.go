package card

import (
	"errors"
	"slices"
	"strings"
	"sync"

	"centrepop/layout/grooves"
	"centrepop/layout/keys"
	"centrepop/layout/lookup"
	"centrepop/layout/material"
	"centrepop/layout/plan"
	"centrepop/layout/tapers"
	"centrepop/parts"
	"centrepop/parts/seq"
)

// sources lists every table with its state: the strengths of the job's
// materials, the other columns of the table of materials, and the tables of
// standard forms.
func sources(job *parts.Job) []plan.SourceTable {
	var strengths []plan.SourceRow
	for _, p := range job.Parts {
		m, err := material.Find(p.Material.Value)
		if err != nil || slices.ContainsFunc(strengths, func(r plan.SourceRow) bool { return r.What == m.Name }) {
			continue
		}
		if name := m.StrengthSource(); name != "" {
			name = strings.TrimSuffix(name, " ("+m.StrengthState().String()+")")
			strengths = append(strengths, plan.SourceRow{What: m.Name, Source: name, State: m.StrengthState().String()})
		}
	}
	columns := seq.Map(material.Columns(), func(c material.Column) plan.SourceRow {
		return plan.SourceRow{What: c.Name, Source: c.Source, State: c.State.String()}
	})
	all := []plan.SourceTable{{Title: "Strength of the materials of this job", Rows: strengths},
		{Title: "Other columns of the table of materials", Rows: columns},
		{Title: "Tables of standard forms (in part: the rest not checked)", Rows: slices.Concat(tableSources(), wholeTables)}}
	return slices.DeleteFunc(all, func(t plan.SourceTable) bool { return len(t.Rows) == 0 })
}

// asked are the tables of standard forms, each with the question for a diameter
// in mm that shows its sources.
var asked = []struct {
	what string
	ask  func(mm float64) []lookup.Source
}{
	{"parallel keys, sizes", func(mm float64) []lookup.Source { k, err := keys.For(mm); return given(err, k.Source) }},
	{"parallel keys, tolerances", func(mm float64) []lookup.Source { k, err := keys.For(mm); return given(err, k.ToleranceSource) }},
	{"parallel keys in inches, sizes", func(mm float64) []lookup.Source {
		k, err := keys.ForInch(mm, keys.Square)
		return given(err, k.Source)
	}},
	{"parallel keys in inches, tolerances", func(mm float64) []lookup.Source {
		k, err := keys.ForInch(mm, keys.Square)
		return given(err, k.ToleranceSource)
	}},
	{"Woodruff keys", func(mm float64) []lookup.Source { return discs(keys.WoodruffFor(mm)) }},
	{"Woodruff keys in inches", func(mm float64) []lookup.Source { return discs(keys.WoodruffForInch(mm)) }},
	{"retaining rings on shafts", func(mm float64) []lookup.Source { r, err := grooves.RingFor(mm, false); return given(err, r.Source) }},
	{"retaining rings in bores", func(mm float64) []lookup.Source { r, err := grooves.RingFor(mm, true); return given(err, r.Source) }},
	{"undercuts, form E", func(mm float64) []lookup.Source {
		r, err := grooves.ReliefFor(mm, grooves.FormE, false)
		return given(err, r.Source)
	}},
	{"undercuts, form F", func(mm float64) []lookup.Source {
		r, err := grooves.ReliefFor(mm, grooves.FormF, false)
		return given(err, r.Source)
	}},
	{"shaft seals, land", func(mm float64) []lookup.Source { s, err := grooves.SealLandFor(mm, 8); return given(err, s.Source) }},
	{"shaft seals, lead-in", func(mm float64) []lookup.Source {
		s, err := grooves.SealLandFor(mm, 8)
		return given(err, s.LeadInSource)
	}},
	{"centre holes, choice", func(mm float64) []lookup.Source { _, s, err := grooves.PilotFor(mm); return given(err, s) }},
	{"centre holes, sizes", func(mm float64) []lookup.Source {
		c, err := grooves.CentreFor(mm, grooves.CentreA)
		return given(err, c.Source)
	}},
	{"thread ends, undercuts", func(mm float64) []lookup.Source {
		e, err := grooves.ThreadEndFor(mm, 1.5, false, false)
		return given(err, e.Source)
	}},
	{"thread ends, classes and flanks", func(mm float64) []lookup.Source {
		e, err := grooves.ThreadEndFor(mm, 1.5, false, false)
		return given(err, e.RestSource)
	}},
	{"O-ring grooves", oringSources},
	{"knurls", knurlSources},
}

// wholeTables are the tables whose rows carry no state of their own; what each library
// says at its table, and in its notes.
var wholeTables = []plan.SourceRow{
	{What: "limits of fits", Source: "ISO 286", State: inPart},
	{What: "general tolerances", Source: "ISO 2768-1", State: lookup.Checked.String()},
	{What: "tubes as bought", Source: "EN 10210-2, EN 10219-2", State: inPart},
	{What: "threads, holes", Source: "ISO 965-1, ISO 273, ASME", State: inPart},
	{What: "bolts, nuts, washers", Source: "ISO, ASME, SAE", State: inPart},
	{What: "drills", Source: "ISO 235, ASME B94.11M", State: inPart},
	{What: "edges of butt welds", Source: "ISO 9692-1", State: lookup.FromMemory.String()},
	{What: "sections of bars", Source: "EN, DIN, ASTM", State: inPart},
	{What: "lifting by hand", Source: "ISO 11228-1", State: lookup.FromMemory.String()},
	{What: "abutments of tapered bearings", Source: "common practice, safe for 26 published sizes up to 32 mm bore; larger ones unchecked", State: lookup.Unchecked.String()},
	{What: "motor flanges", Source: "IEC 60072-1, NEMA MG 1", State: inPart},
}

// inPart is the state of a table that has rows of another state beside those that are checked.
const inPart = "checked in part"

// tableSources asks every table at whole millimetres and half ones: no table
// has a row narrower than that.
var tableSources = sync.OnceValue(func() (out []plan.SourceRow) {
	for _, table := range asked {
		var seen []lookup.Source
		for step := 1; step <= 1000; step++ {
			seen = seq.Add(seen, table.ask(float64(step)/2)...)
		}
		var names []string
		for _, s := range seen {
			names = seq.Add(names, s.Name+s.Of)
		}
		for _, name := range names {
			out = append(out, plan.SourceRow{What: table.what, Source: name, State: states(seen, name)})
		}
	}
	return out
})

// states are the states of a source, the most trusted first.
func states(seen []lookup.Source, name string) string {
	var text []string
	for state := lookup.Checked; state >= lookup.Unchecked; state-- {
		if slices.ContainsFunc(seen, func(s lookup.Source) bool { return s.Name+s.Of == name && s.State == state }) {
			text = append(text, state.String())
		}
	}
	if len(text) > 1 && text[0] == lookup.Checked.String() {
		return inPart
	}
	return strings.Join(text, "; some rows ")
}

func given(err error, s lookup.Source) []lookup.Source {
	if err != nil {
		return nil
	}
	return []lookup.Source{s}
}

func discs(list []keys.Woodruff, err error) (out []lookup.Source) {
	if err != nil {
		return nil
	}
	return seq.Map(list, func(k keys.Woodruff) lookup.Source { return k.Source })
}

// oringSources asks for a ring of the most usual section on a piston.
func oringSources(mm float64) []lookup.Source {
	g, err := grooves.ORing{InsideMm: mm, SectionMm: 3.53}.In(grooves.Piston, mm+7, false)
	return given(err, g.Source)
}

// knurlSources asks every type of knurl at a pitch of 1 mm.
func knurlSources(mm float64) (out []lookup.Source) {
	var known *lookup.UnknownError
	if _, err := (tapers.Knurl{}).Work(mm); !errors.As(err, &known) {
		return nil
	}
	for _, kind := range known.Known {
		k, err := tapers.Knurl{Type: kind, PitchMm: 1}.Work(mm)
		out = append(out, given(err, k.Source)...)
	}
	return out
}
