package review

import (
	"slices"
	"strings"

	"centrepop/parts"
	"centrepop/parts/geom"
	"centrepop/parts/seq"
)

// boughtStuds looks at studs that words screw into a hole that no joint fills: what stands where they do, and
// the grease nipples behind them.
func (r *reviewer) boughtStuds() {
	words := r.orderWords()
	for said, m := range saying(words, studWords) {
		o, _ := orderOf(m[0])
		name := m[len(m)-1]
		for _, v := range r.all() {
			g, _ := v.groupNamed(name)
			if g == nil || v.jointNames(name) || !sameThread(g.Size.Thread, o.thread.Designation) {
				continue
			}
			in, before := r.machine().Rods(v.p.Name.Value, name, o.thread.MajorMm, o.longMm)
			in = slices.DeleteFunc(in, func(title string) bool { // what the words take off first
				return slices.ContainsFunc(words, func(said parts.Text) bool {
					return strings.Contains(strings.ToLower(said.Value), strings.ToLower(title)+" off")
				})
			})
			f := Finding{Numbers: m[0], Source: "by geometry"}
			if len(in) > 0 {
				f.What = "the stud in " + name + " of " + v.p.Title.Value + " stands in " + strings.Join(in, ", ")
				f.Rule, f.Fix = "two parts cannot be in one place, nor one turn where the other stands", "another place for the hole, or a smaller part"
				v.report(Stop, name, said.Pos, f)
			}
			if len(before) > 0 {
				f.What = "the stud in " + name + " of " + v.p.Title.Value + " stands before " + strings.Join(before, ", ")
				f.Rule, f.Source, f.Fix = "a grease gun goes straight onto its nipple", practice, "another clock angle for one of them"
				v.report(Check, name, said.Pos, f)
			}
			r.studShort(v, name, said, o.thread.MajorMm, o.longMm)
		}
	}
}

// studShort finds a stud of the motor's words that ends under the face which they set the motor on: what is
// on the motor does not come down to it.
func (r *reviewer) studShort(v *view, name string, said parts.Text, diameterMm, longMm float64) {
	if !slices.Contains(r.motor().Notes, said) {
		return
	}
	for _, m := range saying(r.motor().Notes, downOnWords) {
		on := seq.First(r.job.Parts, func(p *parts.Part) bool {
			return strings.HasSuffix(" "+strings.ToLower(p.Title.Value), " "+strings.ToLower(m[1]))
		})
		if on == nil {
			continue
		}
		if past, ok := r.machine().RodsPast(v.p.Name.Value, name, diameterMm, longMm, on.Name.Value); ok && past < 0 {
			v.report(Check, name, said.Pos, Finding{
				What:    "the stud in " + name + " of " + v.p.Title.Value + " ends under the top of " + on.Title.Value + ", which the motor stands on",
				Numbers: studWords().FindString(said.Value) + ", " + r.mm(-past) + " under it",
				Rule:    "a stud reaches past the face that what it holds stands on", Source: "by geometry", Fix: "a longer stud",
			})
		}
	}
}

// orderWords are the words by which things are bought and put on: of the motor, of the job and of what lies loose.
func (r *reviewer) orderWords() (all []parts.Text) {
	all = slices.Concat(r.job.Notes, r.motor().Notes)
	for e := range seq.Refs(r.job.Loose) {
		all = append(all, e.Item, e.Buy, e.How)
	}
	return all
}

// recesses compares the room that a motor on pins has for the end of a part with what stands out of the face that
// the pins are in.
func (r *reviewer) recesses() {
	name, _, _ := strings.Cut(r.motor().Maker.Value, " with ")
	for note, m := range saying(r.motor().Notes, recessWords) {
		p := seq.First(r.job.Parts, func(p *parts.Part) bool { return strings.EqualFold(p.Title.Value, m[1]) })
		for _, v := range r.all() {
			for g := range seq.Refs(v.p.Holes) {
				if p == nil || name == "" || !strings.Contains(strings.ToLower(g.Note.Value), strings.ToLower(name)) {
					continue
				}
				deep := v.itemMm(m[2] + " " + m[3])
				if past, ok := r.machine().Past(p.Name.Value, v.p.Name.Value, g.Face); ok && geom.Over(past, deep) {
					v.report(Stop, g.Name.Value, note.Pos, Finding{
						What:    "the room of " + name + " for " + p.Title.Value + " is less deep than that stands out of " + v.p.Title.Value,
						Numbers: v.mm(deep) + " for " + v.mm(past), LeftMm: left(deep),
						Rule: "what is set on a face lies on it, and on nothing that stands out of it", Source: "by geometry", Fix: "a deeper room, or the face further out",
					})
				}
			}
		}
	}
}
