package changes

import (
	"bytes"
	"cmp"
	"encoding/json"
	"slices"

	"centrepop/layout/plan"
	"centrepop/parts"
	"centrepop/parts/seq"
)

// Use is what a part made to the old drawing is good for under the new one.
type Use string

// The uses, best first. NoMetal is of a change that touches no metal.
const (
	NoMetal Use = ""
	AsIs    Use = "as-is"
	Measure Use = "measure"       // good where it lies within the new limits
	Rework  Use = "rework"        // only metal to take away
	WeldOn  Use = "weld-on"       // more weld on the one that is there
	Plug    Use = "plug-or-scrap" // an opening that is no longer wanted
	ByHand  Use = "by-hand"       // not decided here: formed work, other ways of holding
	Scrap   Use = "scrap"         // metal would have to be put on
)

var uses = []Use{NoMetal, AsIs, Measure, Rework, WeldOn, Plug, ByHand, Scrap}

func worse(a, b Use) Use { return uses[max(slices.Index(uses, a), slices.Index(uses, b))] }

// Code says what sort of change it is.
type Code string

// The codes.
const (
	Added    Code = "added"
	Removed  Code = "removed"
	Size     Code = "size"    // a length or an angle
	Limits   Code = "limits"  // of a size that stays
	Moved    Code = "moved"   // holes, slots, or what is cut from outside
	More     Code = "more"    // openings, the others stay where they were
	Fewer    Code = "fewer"   // openings, the rest stay where they were
	Reworded Code = "changed" // words or a choice
	Printed  Code = "printed" // only the sheets read otherwise
	Ordered  Code = "order"   // place in the order of making
)

// Change is one thing that differs.
type Change struct {
	Code    Code      `json:"code"`
	Feature string    `json:"feature,omitempty"` // of a part, in words
	What    string    `json:"what,omitempty"`    // which size or line of it: diameter, length, thread
	Unit    plan.Unit `json:"unit,omitempty"`    // of Old and New; empty for text
	Old     float64   `json:"old,omitempty"`
	New     float64   `json:"new,omitempty"`
	OldText string    `json:"old_text,omitempty"` // where no number says it
	NewText string    `json:"new_text,omitempty"`
	MovedMm float64   `json:"moved_mm,omitempty"` // the farthest
	Count   int       `json:"count,omitempty"`    // of openings that are more or fewer
	Use     Use       `json:"use,omitempty"`
}

// Item is a part or a joint that differs.
type Item struct {
	Name    string   `json:"name"`
	Title   string   `json:"title"`
	State   Code     `json:"state"`               // added, removed, or changed
	Use     Use      `json:"use,omitempty"`       // the worst of its changes
	FromEnd bool     `json:"from_back,omitempty"` // Use holds with the back faces laid together, not the front faces
	Changes []Change `json:"changes"`
}

// Sign is an acceptance that holds no more as it was signed.
type Sign struct {
	Code   string `json:"finding"`
	At     string `json:"at"`
	State  Code   `json:"state"` // added, removed or changed
	Reason string `json:"reason"`
	Was    string `json:"was,omitempty"` // what was found, in words
	Is     string `json:"is,omitempty"`
}

// Report is all that differs between two states of a job.
type Report struct {
	Job     string      `json:"job"`
	Units   parts.Units `json:"units"`
	Heading []Change    `json:"heading"`
	Parts   []Item      `json:"parts"`  // in the order of the new job, removed ones last
	Joints  []Item      `json:"joints"` // likewise
	Supply  []Change    `json:"supply"` // stock, bought, sawing
	Sign    []Sign      `json:"sign_again"`
	// Discard and Print name the sheets to throw away and to print again: cover,
	// review, the names of parts, and "step NAME" for joints.
	Discard []string `json:"throw_away"`
	Print   []string `json:"print_again"`
}

// Differs tells whether anything does.
func (r *Report) Differs() bool { return r.Count() > 0 }

// Count is the number of changes, an added or removed thing counting as one.
func (r *Report) Count() int {
	items := seq.Sum(slices.Concat(r.Parts, r.Joints), func(it Item) int { return max(1, len(it.Changes)) })
	return len(r.Heading) + len(r.Supply) + len(r.Sign) + items
}

func worst(list []Change) Use {
	use := NoMetal
	for _, c := range list {
		use = worse(use, c.Use)
	}
	return use
}

// text adds a change of words, with the use of what is made by the old ones.
func text(to []Change, what, was, is string, use Use) []Change {
	if was == is {
		return to
	}
	return append(to, Change{Code: Reworded, What: what, OldText: was, NewText: is, Use: use})
}

// list adds the lines that have come and gone.
func list(to []Change, what string, was, is []string) []Change {
	for _, line := range was {
		if !slices.Contains(is, line) {
			to = append(to, Change{Code: Removed, What: what, OldText: line})
		}
	}
	for _, line := range is {
		if !slices.Contains(was, line) {
			to = append(to, Change{Code: Added, What: what, NewText: line})
		}
	}
	return to
}

// both goes over the things that there are now, each beside what it was, and then over those that there
// were and are no more. The one of the two that is not there is nil.
func both[T any, K comparable](was, is []*T, key func(*T) K, each func(was, is *T)) {
	find := func(in []*T, one *T) *T {
		return seq.First(in, func(o *T) bool { return key(o) == key(one) })
	}
	for _, n := range is {
		each(find(was, n), n)
	}
	for _, o := range was {
		if find(is, o) == nil {
			each(o, nil)
		}
	}
}

// refs are pointers to things.
func refs[T any](xs []T) []*T { return slices.Collect(seq.Refs(xs)) }

// compared is what differs of what two states have under the same names. head names one,
// and shown is all that its sheets show; fromEnd is that of Item.
func compared[T any](was, is []*T, head func(*T) Item, shown func(*T) []byte, compare func(was, now *T) (changes []Change, fromEnd bool)) []Item {
	out := []Item{}
	both(was, is, func(of *T) string { return head(of).Name }, func(was, now *T) {
		it := head(cmp.Or(now, was))
		switch {
		case was == nil:
			it.State, it.Changes = Added, []Change{}
		case now == nil:
			it.State, it.Changes = Removed, []Change{}
		default:
			it.State = Reworded
			it.Changes, it.FromEnd = compare(was, now)
			it.Use = worst(it.Changes)
			if bytes.Equal(shown(was), shown(now)) && len(it.Changes) == 0 {
				return
			} else if len(it.Changes) == 0 {
				it.Changes = []Change{{Code: Printed}}
			}
		}
		out = append(out, it)
	})
	return out
}

// asJSON writes a part of a plan, which is plain data and cannot fail.
func asJSON(v any) []byte {
	b, err := json.Marshal(v)
	if err != nil {
		panic(err)
	}
	return b
}
