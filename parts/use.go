package parts

import (
	"cmp"
	"regexp"
	"strings"

	"centrepop/parts/seq"
)

// Use is what something is for: a part, a hole, an opening or a slot, or a thing that is bought. The file
// says it, or else its name and words do. Empty where neither does.
type Use string

// What holes, slots and openings are for, besides the bolts of joints.
const (
	Lifting Use = "lifting" // what the part hangs by
	Jacking Use = "jacking" // screws that push parts apart
	Drawing Use = "drawing" // a screw that draws something along its axis
	Grease  Use = "grease"  // a nipple
	Drain   Use = "drain"   // what is to run out, and so lies low
	Opening Use = "opening" // what is to open into the part
	Pins    Use = "pins"
)

// What parts are for.
const (
	Guarding Use = "guard"  // keeps hands off
	Leg      Use = "leg"    // the machine stands on it
	AKey     Use = "key"    // a flat part or a bar that goes into keyways
	Brace    Use = "brace"  // stands between two others, and holds one on the other
	Gasket   Use = "gasket" // lies between two others that are bolted together, and seals
)

// What things that are bought are.
const (
	AMotor  Use = "motor"
	ANut    Use = "nut"    // sets what sits on the shaft whose thread its item names
	ASpacer Use = "spacer" // fills what a retaining ring leaves
)

// What seats are for.
const (
	ABearing Use = "bearing"
	ASeal    Use = "seal"
)

// NoUse says that something is for none of them, whatever its name says.
const NoUse Use = "other"

// saidUse is a use, and the words by which it is known.
type saidUse struct {
	Use
	words *regexp.Regexp
}

func said(u Use, words string) saidUse { return saidUse{u, regexp.MustCompile(`(?i)` + words)} }

// The words of each kind of thing, the first that are found deciding.
var (
	holeUses = []saidUse{
		said(Lifting, `\b(?:lift(?:s|ing)?|shackles?|eye-?bolts?|hoist(?:ing)?|slings?)\b`),
		said(Jacking, `\b(?:jacks?|jacking|pry)\b`),
		said(Drawing, `\bdraws?\b`),
	}
	nameUses = []saidUse{
		said(Jacking, `\b(?:jack|pry|push)`),
		said(Drawing, `\b(?:draw|pull)`),
		said(Grease, `\bgrease\b`),
		said(Drain, `^(?:drain|drip|weep)`),
		said(Opening, `\b(?:drain|vent|drip|port|window|sight|inlet|outlet|inspection)\b`),
		said(Pins, `\b(?:pin|dowel)s?\b`),
	}
	partUses = []saidUse{said(Guarding, `\b(?:guard|hood)\b`), said(Leg, `\b(?:foot|feet|legs?)\b`), said(AKey, `\bkey\b`), said(Brace, `\b(?:gusset|brace|knee)s?\b`), said(Gasket, `\bgaskets?\b`)}
	seatUses = []saidUse{said(ABearing, `^ *bearings?(?: *$| .*\d)`), said(ASeal, `^ *seals?(?: |$)`)}
	itemUses = []saidUse{said(ANut, `\bnut\b`), said(ASpacer, `\b(?:spacers?|shims?|(?:distance|support) (?:rings?|pieces?|sleeves?))\b`)}
)

// use is the first of some uses whose words a text has.
func use(of []saidUse, text string) Use {
	return seq.First(of, func(s saidUse) bool { return s.words.MatchString(text) }).Use
}

// HoleUse is what holes, slots or an opening of a name and a note are for, by these.
func HoleUse(name, note string) Use { return cmp.Or(use(holeUses, name+" "+note), use(nameUses, name)) }

// PartUse is what a part of a title is for; a brace and a gasket are known by their names as well.
func PartUse(name, title string) Use { return cmp.Or(use(partUses, title), use(partUses[3:], name)) }

// SeatUse is what sits in a seat of some words.
func SeatUse(seat string) Use { return use(seatUses, seat) }

// motorItem is a thing to buy that is a motor, and forMotor what only goes with one.
var (
	motorItem = regexp.MustCompile(`(?i)^([\w-]+ )*(?:gear)?motor(,| \d|$)`)
	forMotor  = regexp.MustCompile(`(?i)\b(?:to|for|over|of|from|on)\b.*motor`)
)

// ItemUse is what a thing that is bought is, by its item; how it is put on tells a spacer as well.
func ItemUse(item, how string) Use {
	if motorItem.MatchString(item) && !forMotor.MatchString(item) {
		return AMotor
	}
	return cmp.Or(use(itemUses, item), use(itemUses[1:], how))
}

// fittedSaid is in the words beside a hole for what is fitted in it: a nipple or a plug, or a screw
// without a head or a pin with its sizes.
var fittedSaid = regexp.MustCompile(`(?i)\b(?:((?:grease )?nipple|plug)s?\b|(` + headless + `)s?\b(.*)|(dowel pin)s?\b([^,]*))`)

// headless is a screw without a head, that a thread takes whole.
const headless = `(?:set|grub|cone-point|cup-point)[ -]?screw`

var setScrew = regexp.MustCompile(`(?i)\b` + headless + `s?\b`)

// SetScrew tells whether words name a screw without a head.
func SetScrew(words string) bool { return setScrew.MatchString(words) }

// Fitted is what words beside a hole have fitted in it, of several one; empty for nothing.
func Fitted(note string) string {
	m := fittedSaid.FindStringSubmatch(note)
	return strings.Join(m[min(1, len(m)):], "")
}

// Ordered is what is fitted in a hole as it is bought: with the name of the hole's thread before its other sizes, where
// it does not name that itself; empty for nothing.
func Ordered(fitted, thread string) string {
	item, sizes, more := strings.Cut(fitted, ",")
	own, _, _ := strings.Cut(thread, " ")
	_, after, said := strings.Cut(" "+item, " "+own)
	if item != "" && thread != "" && !(said && strings.Trim(after[:min(1, len(after))], " x×") == "") {
		item += " " + thread
	}
	if more {
		item += "," + sizes
	}
	return item
}

// How a loose thing is held, where that is no matter of joints and bolts.
type Held string

// The ways to be held.
const (
	ByWeight Held = "weight" // it only lies
	ByForce  Held = "force"  // it is pressed or driven in, and larger than its hole
)

var (
	byWeight = regexp.MustCompile(`(?i)\bby its (?:own )?weight\b`)
	byForce  = regexp.MustCompile(`(?i)\b(?:(?:press(?:ed)?|driv\w+|hammer\w*|knock\w*|shr[iu]nk\w*)\b[^.,;]*?\b(?:in|into|home|through|on|onto)|tap(?:ped)? (?:in|into|home)|press fit)\b`)
	onEdge   = regexp.MustCompile(`(?i)\b(?:on edge|through|tilted|turned|slanting)\b`)
)

// HeldBy is what the words for how a thing is put on have it held by.
func HeldBy(how string) Held {
	switch {
	case byWeight.MatchString(how):
		return ByWeight
	case byForce.MatchString(how):
		return ByForce
	}
	return ""
}

// ComesTurned tells whether the words for how a thing is put on have it come by an opening turned.
func ComesTurned(how string) bool { return onEdge.MatchString(how) }

// free tells whether something is for no use.
func (u Use) free() bool { return u == "" || u == NoUse }

// Moves tells whether a screw in a thread for a use only parts, draws or lifts.
func (u Use) Moves() bool { return u == Lifting || u == Jacking || u == Drawing }

// Opens tells whether what is for a use is to open into its part.
func (u Use) Opens() bool { return u == Grease || u == Drain || u == Opening }

// Asked is work at a machine for which there is no key, as a note of the drawing asks for it.
type Asked struct {
	At     string // the machine: Drill, Mill, Lathe or Bench
	Do     string // what is done, by itself
	For    string // ", for " and for what, or nothing
	Placed bool   // Do says where something lies: "at 90°", "12 from the edge", "60 apart"
}

var (
	asked  = regexp.MustCompile(`^(DRILL|MILL|LATHE|BENCH): (.+?)(, for .*?)?\.?$`)
	placed = regexp.MustCompile(`\b(?:at|from) (?:the |its )?[\d(]|\d(?: ?mm| in)? (?:from|apart)\b`)
)

// AskedBy is the work that a note asks for; nil for a note of another kind.
func AskedBy(note string) *Asked {
	m := asked.FindStringSubmatch(note)
	if m == nil {
		return nil
	}
	return &Asked{m[1][:1] + strings.ToLower(m[1][1:]), m[2], m[3], placed.MatchString(m[2])}
}
