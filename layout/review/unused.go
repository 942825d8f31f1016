package review

import (
	"slices"
	"strings"
	"unicode"
	"unicode/utf8"

	"centrepop/parts"
	"centrepop/parts/geom"
	"centrepop/parts/seq"
)

// unused looks for threads, and for holes that are reamed or take a pin, that serve nothing:
// no joint, note, word of the job nor other part has anything for them.
var unused = together(each(everyHole, (*view).idleHole), each(everyRadial, (*view).idleRadial), (*view).idleSteps)

func (v *view) idleHole(h *parts.HoleGroup) {
	if forOther(h.Size, h.For, h.Through) && h.Note.Value == "" && h.Fitted.Value == "" && !v.takesSpigot(h.Name.Value) && !v.jointNames(h.Name.Value) {
		v.idle(h.Name.Value, h.Pos, h.Size, h.For)
	}
}

func (v *view) idleRadial(f *parts.Radial) {
	if forOther(f.Size, f.For, false) && f.Note.Value == "" && f.Fitted.Value == "" && !v.jointNames(f.Name.Value) {
		v.idle(f.Name.Value, f.Pos, f.Size, f.For)
	}
}

// idleSteps looks at the threads of a turned part. One beside a step of a joint
// takes the nut that holds what sits there.
func (v *view) idleSteps() {
	if !v.turned() || v.job.IsStud(v.p.Name.Value) {
		return
	}
	for _, c := range v.steps() {
		named := func(o *cylinder) bool { return v.jointNames(o.Name) }
		if c.threaded() && c.Seat == "" && !slices.ContainsFunc(append(c.next(), c), named) {
			v.idle(c.Name, c.Drawn.Pos, parts.HoleSize{Thread: c.Drawn.Size.Thread.Value}, parts.HoleUse(c.Name, ""))
		}
	}
}

// forOther tells whether a hole is there for something that is to be in it: it has a thread or
// a fit, or goes not through and is for a pin.
func forOther(s parts.HoleSize, use parts.Use, through bool) bool {
	pin := !through && use == parts.Pins
	return s.Make == parts.TappedHole || s.Make == parts.PlainHole && (s.Size.Fit.Class.Value != "" || pin)
}

// serves tells whether anything beside joints and notes of its own is for a hole or thread of a
// part: a screw that pushes or is bought, words that name it, or the same size in another part.
func (r *reviewer) serves(p *parts.Part, name string, size parts.HoleSize, use parts.Use) bool {
	if use.Moves() || saysHoles(r.saidAll(), name) || size.Thread != "" && saysThread(r.saidAll(), size.Thread) {
		return true
	}
	for e := range seq.Refs(r.job.Loose) {
		bought := e.Buy.Value + " " + e.Item.Value
		if o, ok := orderOf(bought); ok && sameThread(size.Thread, o.thread.Designation) || size.Thread != "" && saysThread(bought, size.Thread) {
			return true
		}
	}
	return slices.ContainsFunc(r.job.Parts, func(o *parts.Part) bool { return o != p && r.takes(o, size) })
}

// saysThread tells whether words name a thread: M6 is not named by KM6, nor by M60.
func saysThread(words, thread string) bool {
	words, thread = strings.ToLower(words), strings.ToLower(thread)
	for at := strings.Index(words, thread); at >= 0; at = strings.Index(words, thread) {
		before, _ := utf8.DecodeLastRuneInString(words[:at])
		words = words[at+len(thread):]
		after, _ := utf8.DecodeRuneInString(words)
		if !unicode.IsLetter(before) && !unicode.IsDigit(before) && !unicode.IsDigit(after) {
			return true
		}
	}
	return false
}

// takes tells whether a part has a thread, or a hole that no joint fills, of the same size.
func (r *reviewer) takes(o *parts.Part, size parts.HoleSize) bool {
	v := r.viewOf(o.Name.Value)
	if v == nil {
		return false
	}
	if size.Thread != "" && slices.ContainsFunc(v.steps(), func(c *cylinder) bool { return sameThread(c.Drawn.Size.Thread.Value, size.Thread) }) {
		return true
	}
	if size.Thread == "" && slices.ContainsFunc(v.outside, func(c *cylinder) bool {
		return c.fitted() && geom.Alike(c.Drawn.Size.Nominal.Mm, size.Size.Nominal.Mm)
	}) {
		return true // what is pressed or pushed into it
	}
	return slices.ContainsFunc(o.Holes, func(h parts.HoleGroup) bool {
		if v.jointNames(h.Name.Value) {
			return false
		}
		return sameThread(h.Size.Thread, size.Thread) || size.Thread == "" && forOther(h.Size, h.For, h.Through) && h.Size.Size.Nominal.Mm == size.Size.Nominal.Mm
	})
}

// saidAll are all words of the job and its parts, in lower case, put together once.
func (r *reviewer) saidAll() string {
	if r.said != "" {
		return r.said
	}
	all := seq.Flat(r.all(), func(v *view) []string { return seq.Map(v.texts(), func(t parts.Text) string { return t.Value }) })
	for e := range seq.Refs(r.job.Loose) {
		all = append(all, e.Item.Value, e.How.Value, e.Buy.Value)
	}
	all = append(all, r.motor().Earth.Value)
	r.said = parts.Bare(strings.Join(all, " "))
	return r.said
}

// idle reports a hole or thread of a size that serves nothing.
func (v *view) idle(name string, pos parts.Pos, size parts.HoleSize, use parts.Use) {
	if v.serves(v.p, name, size, use) {
		return
	}
	v.report(Check, name, pos, Finding{
		What: name + " of " + v.p.Title.Value + " serves nothing in this job", Numbers: "no joint, note or bought thing is for it",
		Rule: "what is made is for something", Source: "by the job", Fix: "note: or fitted: what goes there, or leave it out",
	})
}
