package review

import (
	"iter"
	"slices"
	"strings"

	"centrepop/layout/words"
	"centrepop/parts"
	"centrepop/parts/seq"
)

// runsOpen looks at the words of the first run for a guard that is off or open while something turns.
func (r *reviewer) runsOpen() {
	run := r.run()
	for t, m := range saying(sentences(append(seq.Map(run.Runs, func(s parts.Run) parts.Text { return s.Load }), run.WarmUpHow)...), guardOff) {
		r.add(Finding{
			Severity: Check, Pos: t.Pos, What: "a guard is off or open while something turns, by the words of the first run", Numbers: m[0],
			Rule: "a guard comes off what stands", Source: "ISO 14120, from memory", Fix: "all guards on",
		})
	}
}

// staysIn looks for a thing that the words of the first run leave in under load, and for which its own words
// put in another for work.
func (r *reviewer) staysIn(e *parts.Loose) {
	m, thing := inForWork().FindStringSubmatch(e.How.Value), strings.ToLower(strings.SplitN(e.Item.Value, " ", 2)[0])
	if m == nil {
		return
	}
	for _, t := range r.run().Checks {
		if said := strings.ToLower(t.Value); strings.Contains(said, thing) && strings.Contains(said, "under load") && !strings.Contains(said, strings.ToLower(m[1])) {
			r.disagree(t.Pos, "", "the words of the first run leave the "+thing+" in under load, and its own change it for the "+m[1], t.Value, "under load the "+m[1])
		}
	}
}

// everyPut is how the words put the part on by hand.
func everyPut(v *view) iter.Seq[*parts.Loose] {
	return seq.Refs(seq.Keep(v.job.Loose, func(e parts.Loose) bool { return e.Part.Value == v.p.Name.Value }))
}

// saidOff looks for a guard that a note has off while something turns.
func (v *view) saidOff(note parts.Text) {
	for said, m := range saying(sentences(note), offRunning) {
		if v.p.For == parts.Guarding && !strings.Contains(said.Value, "stop") {
			v.report(Check, "", note.Pos, Finding{
				What: v.p.Title.Value + " is off or open while something turns, by its note", Numbers: m[0],
				Rule: "a guard comes off what stands", Source: "ISO 14120, from memory", Fix: "off only with the motor isolated",
			})
		}
	}
}

// saidStraps looks for a plate that a note hangs by straps.
func (v *view) saidStraps(note parts.Text) {
	if m := strapsIn().FindString(note.Value); m != "" && v.p.Flat() {
		v.report(Check, "", note.Pos, Finding{
			What: v.p.Title.Value + " hangs by straps that its edges cut", Numbers: m,
			Rule: "soft slings lie on rounded edges", Fix: "shackles in the holes, or edge protectors",
		})
	}
}

// saidLap looks for a seam that a note laps, of a sheet that is developed to butt.
func (v *view) saidLap(note parts.Text) {
	sheet := v.p.Formed()
	for _, m := range saying(sentences(note), lapped) {
		if sheet != nil && sheet.Overlap.Mm == 0 {
			v.unlike(note.Pos, "", "a note of "+v.p.Title.Value+" laps its seam, and its sheet is cut to butt", m[0], "overlap:, or another note")
		}
	}
}

// tryShare is how far a limit may lie from the force that it is tried by. Common practice, no source.
const tryShare = 1.25

// saidHoist looks for words that hoist all by what its note keeps for one part alone, and for a mass in its
// notes that is less than that of the part it lies on.
func (v *view) saidHoist(e *parts.Loose) {
	for t, m := range saying(v.p.Notes, shareOf) {
		if len(e.Lies) == 0 {
			break
		}
		kg, on := figure(m[1]), v.pl.Part(e.Lies[0].Ref.Part)
		if m[2] == "lb" {
			kg *= words.KgPerPound
		}
		if on.MassKg > kg*tryShare {
			v.unlike(t.Pos, "", "a note of "+v.p.Title.Value+" has it tried for less than what hangs on it", m[0]+"; "+on.Title+" is "+v.w.RoundMass(on.MassKg, 1), "the mass of what hangs on it")
		}
	}
	for _, m := range saying(sentences(e.How), hoistsMore) {
		if slices.ContainsFunc(v.p.Notes, func(t parts.Text) bool { return bareHoist().MatchString(t.Value) }) {
			v.unlike(e.How.Pos, "", "the words hoist more by "+v.p.Title.Value+" than its note lets it carry", m[0], "other words, or what carries the whole")
		}
	}
}

// unlike reports words that a joint or a feature does not bear out.
func (v *view) unlike(pos parts.Pos, feature, what, numbers, fix string) {
	v.report(Check, feature, pos, Finding{What: what, Numbers: numbers, Rule: "words and drawing of one job agree", Source: "by the job", Fix: fix})
}

// disagree reports words that numbers of the job, or other words, do not bear out.
func (r *reviewer) disagree(pos parts.Pos, part, what, numbers, fix string) {
	r.add(Finding{Part: part, Pos: pos, What: what, Numbers: numbers, Rule: "words and numbers of one job agree", Source: "by the job", Fix: fix})
}

// saidOfJoints compares a note of the part with the joints of which it is an end.
func (v *view) saidOfJoints(note parts.Text) {
	for _, j := range v.job.Joints {
		own, other := j.Ends()
		meet := v.job.MeetingOf(j)
		face, isFirst := meet.First, own.Part == v.p.Name.Value
		if !isFirst {
			own, other, face = other, own, meet.Second
		}
		if own.Part != v.p.Name.Value {
			continue
		}
		switch j.Kind {
		case parts.BoltKind:
			v.saidFaces(note, j, v.job.Part(other.Part), face)
		case parts.BearingKind:
			v.saidFloat(note, j)
		case parts.WeldKind:
			if isFirst && penetrated().MatchString(note.Value) && j.Weld.Type == "fillet" {
				v.unlike(note.Pos, "", "a note of "+v.p.Title.Value+" asks for full penetration, and "+j.Name.Value+" is a fillet", "", "a butt weld, or another note")
			}
			for said, m := range saying(sentences(note), weldedFrom) {
				v.saidGroove(said, m, j, own.Feature)
			}
		case parts.PressKind:
			v.saidBelow(note, j)
		}
	}
}

// saidFaces compares a note with the face that looks at a part by a joint.
func (v *view) saidFaces(note parts.Text, j *parts.Joint, p *parts.Part, face parts.Face) {
	if m := facesPart().FindStringSubmatch(note.Value); m != nil && face != "" && !j.Meet.Level && v.job.Begins(m[2], p) && !strings.EqualFold(m[1], string(face)) {
		v.unlike(note.Pos, "", "a note says which face of "+v.p.Title.Value+" looks at "+p.Title.Value+", and the joint "+j.Name.Value+" has the other",
			m[0]+"; the joint has the "+string(face), "the note, or face: of the joint")
	}
}

// saidBelow compares a note with how far a joint presses one end under a face.
func (v *view) saidBelow(note parts.Text, j *parts.Joint) {
	for said, m := range saying(sentences(note), standsProud) {
		if j.Meet.Below.Mm > 0 {
			v.unlike(said.Pos, "",
				"a note of "+v.p.Title.Value+" says how far "+j.Press.Shaft.Part+" goes in, and the joint "+j.Name.Value+" has it otherwise",
				m[0]+"; "+v.mm(j.Meet.Below.Mm)+" below the face by the joint", "the note, or below: of the joint")
		}
	}
}

// saidFloat compares a note with the end float that a bearing is set to.
func (v *view) saidFloat(note parts.Text, j *parts.Joint) {
	if float := j.Bearing.EndFloat; len(float) == 2 && (preloaded().MatchString(note.Value) && float[0].Mm > 0 || floating().MatchString(note.Value) && float[1].Mm < 0) {
		v.unlike(note.Pos, "", "a note of "+v.p.Title.Value+" and the joint "+j.Name.Value+" differ on how the bearing is set",
			v.mm(float[0].Mm)+" to "+v.mm(float[1].Mm)+" of end float; less than nothing is preload", "the note, or end-float: of the joint")
	}
}

// saidGroove compares a sentence on the face that a weld is made from with the groove for it at the feature of the part.
func (v *view) saidGroove(said parts.Text, m []string, j *parts.Joint, feature string) {
	grooved := func(face parts.Face) bool {
		return slices.ContainsFunc(v.p.Chamfers, func(c parts.Chamfer) bool { return c.For == "weld" && c.Edge.Value == feature+"-"+string(face) })
	}
	face := parts.Face(strings.ToLower(m[1]))
	if other := face.Other(); !grooved(face) && grooved(other) {
		v.unlike(said.Pos, feature,
			"a note of "+v.p.Title.Value+" has it welded from the "+string(face)+", and its groove for "+j.Name.Value+" is at the "+string(other),
			strings.TrimSpace(m[0]), "the note, or edge: "+feature+"-"+string(face))
	}
}

// saying are the texts in which a pattern finds something, with its groups where it does first.
func saying(texts []parts.Text, pattern phrase) iter.Seq2[parts.Text, []string] {
	return func(yield func(parts.Text, []string) bool) {
		for _, t := range texts {
			if m := pattern().FindStringSubmatch(t.Value); m != nil && !yield(t, m) {
				return
			}
		}
	}
}

// clauses are what stands in a text between the marks that end one.
func clauses(t parts.Text, ends string) []string {
	return strings.FieldsFunc(t.Value, func(c rune) bool { return strings.ContainsRune(ends, c) })
}

// sentences are those of texts that deny nothing.
func sentences(texts ...parts.Text) (out []parts.Text) {
	for _, t := range texts {
		for _, said := range clauses(t, ".;") {
			if !denied().MatchString(said) {
				out = append(out, parts.Text{Value: strings.TrimSpace(said), Pos: t.Pos})
			}
		}
	}
	return out
}

// saidClamps looks for parts that words say are clamped and that have nothing to clamp with, those that are put on by hand
// and the hubs of which something is accepted for that; and for a flat that a screw is to stand on.
func (r *reviewer) saidClamps() {
	look := func(part string, t parts.Text) {
		v, m := r.viewOf(part), clampedSaid().FindString(t.Value)
		if m != "" && v.p.Clamp == nil && !slices.ContainsFunc(v.p.Radials, func(f parts.Radial) bool { return f.Size.Make == parts.TappedHole }) {
			r.disagree(t.Pos, part, "the words say that "+v.p.Title.Value+" is clamped, and it has neither clamp nor set screw", t.Value, "clamp: or a tapped hole on its drawing, or other words")
		}
	}
	for e := range seq.Refs(r.job.Loose) {
		if e.Part.Value == "" {
			continue
		}
		look(e.Part.Value, e.How)
		flat := func(p *parts.Part) bool {
			return len(p.Flats) > 0 && (p.Name.Value == e.Part.Value || p.NamedIn(e.How.Value))
		}
		if m := flatSaid().FindString(e.How.Value); m != "" && !slices.ContainsFunc(r.job.Parts, flat) {
			r.disagree(e.How.Pos, e.Part.Value, "the words name a flat, and no part that they speak of has one", m, "flats: on its drawing, or other words")
		}
	}
	for a := range seq.Refs(r.job.Accept) {
		if j := r.job.Joint(a.Part); j != nil && j.Slide != nil {
			look(j.Slide.Hub.Part, a.Reason)
		}
	}
}

// saidOfScrews looks for the screw that words say holds a loose part, and for the threads
// of screws in its holes.
func (v *view) saidOfScrews(e *parts.Loose) {
	tapped := v.p.Clamp != nil ||
		slices.ContainsFunc(v.p.Holes, func(g parts.HoleGroup) bool { return g.Size.Make == parts.TappedHole }) ||
		slices.ContainsFunc(v.p.Radials, func(f parts.Radial) bool { return f.Size.Make == parts.TappedHole })
	if m := heldByScrew().FindString(e.How.Value); m != "" && !tapped {
		v.unlike(e.How.Pos, "", "the words say that a screw holds "+v.p.Title.Value+", and it has neither clamp nor tapped hole", m, "the hole or clamp on its drawing, or other words")
	}
	m := screwsIn().FindStringSubmatch(e.How.Value)
	for g := range seq.Refs(v.p.Holes) {
		if m != nil && strings.Contains("-"+strings.ToLower(g.Name.Value)+"-", "-"+strings.ToLower(m[1])+"-") && g.Size.Make != parts.TappedHole {
			v.unlike(g.Pos, g.Name.Value, g.Name.Value+" take screws by the words of the job, and have no thread", m[0], "a tapped hole, or other words")
		}
	}
}

// saysHoles tells whether words name a group of holes, by all the words of its name, one of
// them of four letters or more; what any hole is called says nothing.
func saysHoles(said, name string) bool {
	all := seq.Map(strings.Split(strings.ToLower(name), "-"), func(word string) string { return strings.TrimSuffix(word, "s") })
	return slices.ContainsFunc(all, func(word string) bool { return len(word) >= 4 }) && !slices.ContainsFunc(all, func(word string) bool {
		return slices.Contains([]string{"screw", "bolt", "hole", "tap"}, word) || !strings.Contains(said, " "+word)
	})
}
