package parts

import (
	"regexp"
	"slices"

	"centrepop/parts/seq"
)

// couplingBores is a coupling with its two bores.
var couplingBores = regexp.MustCompile(`(?i)\bcoupling\b.*\bbores? ([\d./-]+)(?: ?(?:mm|in))? (?:and|to|x|×) ([\d./-]+)`)

// Bores are the two that words give a coupling, in mm; empty without them.
func (e *Loose) Bores(units Units) (mm []float64) {
	if m := couplingBores.FindStringSubmatch(e.Item.Value); m != nil {
		for _, text := range m[1:] {
			if bore, err := ParseLength(text, units); err == nil {
				mm = append(mm, bore)
			}
		}
	}
	return mm
}

// OnHoles tells whether it is holes in a face of a plate or a turned part that a motor stands on.
func (j *Job) OnHoles(s *Stands) bool {
	p := j.Part(s.On.Part)
	return p != nil && (p.Outline != nil || p.Profile != nil) && slices.ContainsFunc(p.Holes, func(g HoleGroup) bool { return g.Name.Value == s.On.Feature })
}

// beltWord is in the words of a belt or a chain as ordered.
var beltWord = regexp.MustCompile(`(?i)belts?\b|\bchains?\b`)

// Belt tells whether it is a belt or a chain, by the words of what is bought.
func (e *Loose) Belt() bool {
	return beltWord.MatchString(e.Item.Value) || beltWord.MatchString(e.Buy.Value)
}

// chainWord is in the words of a chain as ordered.
var chainWord = regexp.MustCompile(`(?i)\bchains?\b`)

// Chain tells whether what is bought is a chain, by its words.
func (e *Loose) Chain() bool { return chainWord.MatchString(e.Item.Value + " " + e.Buy.Value) }

// Coupled is what couples the motor to what it turns, which goes by hand no more: the belt that it drives through, else
// the first motor or coupling that is put on; nil where the job has none.
func (j *Job) Coupled() *Loose {
	if m := j.Motor; m != nil && m.Through == "belt" {
		if belt := seq.At(j.Loose, (*Loose).Belt); belt != nil {
			return belt
		}
	}
	return seq.At(j.Loose, func(e *Loose) bool { return e.Stands != nil || e.As == AMotor })
}

// Loose is a part, or a thing bought, that no joint fastens: it is laid, hung or screwed on
// by hand. One of Part and Item is set.
type Loose struct {
	Pos     Pos
	Part    Text
	Item    Text     // the thing bought, as ordered
	How     Text     // what holds it, or what it is for
	After   Text     // the joint with whose step it comes
	Off     bool     // it comes off again in that step
	First   bool     // it comes before the two of that joint meet
	Buy     Text     // what it is fastened with, as ordered; empty for nothing
	Count   int      // of that, for all copies of the part; without Buy, of the item
	MassKg  float64  // of the item; 0 if not said
	As      Use      // what the item is, as the file says or its words
	Held    Held     // by its weight or by force, as the file says or how it is put on; empty for neither
	Turned  bool     // it comes turned, by an opening, as the file says or how it is put on
	Stands  *Stands  // where the item stands; nil if it is not said
	Lies    []Lying  // where each copy of the part lies; nil if it is not said
	Travels *Travels // how far the part moves when the machine is used; nil if it is not said
}

// ByHand is how a part is put on by hand; nil where the job does not say so.
func (j *Job) ByHand(part string) *Loose {
	return seq.At(j.Loose, func(e *Loose) bool { return part != "" && e.Part.Value == part })
}

// Travels is how far a part moves along its axis in use, from where it lies, and what goes with it.
type Travels struct {
	Pos   Pos
	Front Length // towards its front
	Back  Length
	With  []Text // parts
}

// Stands is where a motor or a coupling stands, and its sizes; those not given are 0.
type Stands struct {
	Pos      Pos
	On       JointRef // holes in a face of a plate or a turned part, or an outside step of a shaft
	Face     Face     // of the plate; empty for that away from what the motor drives
	Diameter Length
	Length   Length
	Flange   Length
	Shaft    Length
	ShaftEnd Length
}

// Lying is where a copy of a loose part comes to lie: on the face of another part that Place.On
// names, its origin over that part's unless distances say another place.
type Lying struct {
	Place
	Ref JointRef // that part and its face
}

// Laid is a copy of a loose part that the job gives a place: what the job says of the part
// and of its place, and the copy that it lies on.
type Laid struct {
	Loose *Loose
	At    *Lying
	Instance
	On Instance
}

// Laid are the copies of loose parts that the job gives a place, in its order.
func (j *Job) Laid() (all []Laid) {
	for e := range seq.Refs(j.Loose) {
		for k := range e.Lies {
			at := &e.Lies[k]
			all = append(all, Laid{e, at, Instance{Part: e.Part.Value, Copy: k + 1}, at.Ref.Instance()})
		}
	}
	return all
}
