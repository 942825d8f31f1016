package joint

import (
	"cmp"
	"slices"

	"centrepop/layout/words"
	"centrepop/parts"
	"centrepop/parts/seq"
)

// atOnce are the bolted joints of like parts, such as spacers, that each go between the same others, where one comes between
// two that hang together already: what is tight keeps it out, and so none is pulled tight before all are in. Nil for others,
// and where something else is done between.
func (j *making) atOnce(t *joint) (of []*joint, all string) {
	posts := 0
	bolted := ofKind(j.all, parts.BoltKind)
	mates := func(i parts.Instance) (out []parts.Instance) {
		for _, o := range bolted {
			if o.has(i) {
				out = seq.Add(out, words.Either(o.a.Instance() == i, o.b, o.a).Instance())
			}
		}
		slices.SortFunc(out, func(a, b parts.Instance) int { return cmp.Compare(a.ID(), b.ID()) })
		return out
	}
	for _, own := range []parts.Instance{t.a.Instance(), t.b.Instance()} {
		between := mates(own)
		with := []parts.Instance{}
		in := seq.Keep(bolted, func(o *joint) bool {
			i := words.Either(o.a.ref.Part == own.Part, o.a, o.b).Instance()
			is := i.Part == own.Part && len(between) > 1 && slices.Equal(mates(i), between)
			if is {
				with = seq.Add(with, i)
			}
			return is
		})
		if len(with) < 2 || len(with) <= posts || slices.Index(j.all, in[len(in)-1])-slices.Index(j.all, in[0]) >= len(in) {
			continue
		}
		if slices.ContainsFunc(in, func(o *joint) bool { return j.comesBetween(o, own.Part) }) {
			of, posts, all = in, len(with), "the "+words.CountOf(len(with))+j.model(own.Part).Out.Title
		}
	}
	return of, all
}

// comesBetween tells whether a bolted joint brings one of some parts, which closes there and then with another face on a second of those
// that hang together already.
func (j *making) comesBetween(t *joint, part string) bool {
	at := &making{j.assembly, j.all[:slices.Index(j.all, t)], j.all}
	if _, tied := at.side(t, at.before); tied {
		return false
	}
	face := func(o *joint) (parts.Instance, parts.Face) {
		if o.a.ref.Part == part {
			return o.a.Instance(), o.meeting().First
		}
		return o.b.Instance(), o.meeting().Second
	}
	own, on := face(t)
	return slices.ContainsFunc(at.closedBy(t), func(o *joint) bool {
		i, other := face(o)
		return i == own && other != on
	})
}

// waits tells whether the bolts of a joint stay loose until others are in, and says so.
func (j *making) waits(t *joint) bool {
	of, all := j.atOnce(t)
	if of == nil || of[len(of)-1] == t {
		return false
	}
	t.step("Leave them loose", "Finger-tight until "+all+" are in, bolted at both ends: what is tight keeps the next one out.")
	return true
}
