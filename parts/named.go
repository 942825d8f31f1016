package parts

import (
	"regexp"
	"slices"
	"strings"

	"centrepop/parts/seq"
)

// points are what parts a sentence.
var points = strings.NewReplacer(",", " ", ";", " ", ".", " ")

// Bare are the words of a sentence in small letters, without its points, between two blanks.
func Bare(sentence string) string {
	return " " + strings.ToLower(strings.Join(strings.Fields(points.Replace(sentence)), " ")) + " "
}

// NamedIn tells whether words name a part, by its title or its name.
func (p *Part) NamedIn(words string) bool {
	words = Bare(words)
	return strings.Contains(words, Bare(p.Title.Value)) || strings.Contains(words, Bare(p.Name.Value))
}

// Begins tells whether words begin with a part and with none of a longer title, or with the last word
// of its title where no other part of the job ends so.
func (j *Job) Begins(words string, p *Part) bool {
	words = Bare(words)
	begins := func(p *Part) bool {
		return strings.HasPrefix(words, Bare(p.Title.Value)) || strings.HasPrefix(words, Bare(p.Name.Value))
	}
	if begins(p) {
		return !slices.ContainsFunc(j.Parts, func(o *Part) bool { return len(o.Title.Value) > len(p.Title.Value) && begins(o) })
	}
	last := func(p *Part) string {
		title := strings.Fields(strings.ToLower(p.Title.Value + " " + p.Name.Value))
		return title[len(title)-2]
	}
	alike := seq.Keep(j.Parts, func(o *Part) bool { return last(o) == last(p) })
	return len(alike) == 1 && strings.HasPrefix(words, Bare(last(p)))
}

// onto stand before what something is brought onto.
var onto = regexp.MustCompile(`\b(?:on|onto|over) (?:the |its )?`)

// Onto tells whether words bring something on or over what a test knows by the words that begin with it.
func Onto(words string, begins func(words string) bool) bool {
	words = Bare(words)
	return slices.ContainsFunc(onto.FindAllStringIndex(words, -1), func(at []int) bool { return begins(words[at[1]:]) })
}

// LiesOver tells whether a loose thing lies on another or goes over it, by its place or by the words for both.
func (j *Job) LiesOver(e, on *Loose) bool {
	return slices.ContainsFunc(e.Lies, func(l Lying) bool { return l.Ref.Part == on.Part.Value }) || j.Over(e.Item.Value+" "+e.How.Value, on)
}

// Over tells whether words bring something on or over a loose thing.
func (j *Job) Over(words string, on *Loose) bool {
	p := j.Part(on.Part.Value)
	item, _, _ := strings.Cut(on.Item.Value, ",")
	return Onto(words, func(rest string) bool {
		return p != nil && j.Begins(rest, p) || p == nil && strings.HasPrefix(Bare(rest), Bare(item))
	})
}

// Guarded tells whether the guards of a motor have one of a title.
func (m *Motor) Guarded(title string) bool {
	return m != nil && slices.ContainsFunc(m.Guards, func(g Text) bool { return strings.EqualFold(g.Value, title) })
}
