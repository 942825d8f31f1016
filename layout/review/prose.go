package review

import (
	"regexp"
	"sync"

	"centrepop/parts"
)

// phrase is a pattern of words that users write, with its numbers and names in groups. It is made ready when it is first asked for.
type phrase = func() *regexp.Regexp

// spoken is one in whatever case, exactly one of designations, and of words whose case tells.
func spoken(pattern string) phrase { return exactly(`(?i)` + pattern) }
func exactly(pattern string) phrase {
	return sync.OnceValue(func() *regexp.Regexp { return regexp.MustCompile(pattern) })
}

// Below are the words in free text that rules know, by what they mean. What the job says by a key of its own is asked of the model,
// and parts.Use has the words that stand for such a key where it is not given.

// What several phrases have: a length with its unit, or without where that is the job's; a thread of any kind, or of a bolt; a size as
// it is ordered; a torque; a screw with its length.
const (
	noteLength = `(\d+(?:\.\d+)?|\d+/\d+|\d+-\d+/\d+) ?(mm|in)\b`
	bareLength = parts.BareLength
	noteThread = `\b(M\d+(?:x\d+(?:\.\d+)?)?(?: LH)?|G\d+(?:[-/]\d+)*|\d+(?:[-/]\d+)*-\d+ UN[CF](?: LH)?|Tr\d+x\d+(?:\.\d+)?(?:P\d+)?(?: LH)?|\d+(?:[-/]\d+)*-\d+ ACME(?: LH)?)\b`
	boltThread = `(?:M\d+(?:x\d+(?:\.\d+)?)?|#?\d+(?:[-/]\d+)*-\d+(?: UN[CF])?)`
	itemSize   = `(\d+(?:\.\d+|-\d+/\d+|/\d+)?)`
	saidNm     = `(\d+(?:\.\d+)?) ?(N ?m|lbf?[ -]?ft|lbf?[ -]?in)`
	screwSize  = `(` + boltThread + `) ?[x×] ?` + itemSize + ` ?(mm|in)?`
)

// Of sizes and figures: a thread, a metric bearing by five figures, a frame by its height or by NEMA or in the words for a motor, a flange and a voltage by
// their numbers, a figure of a motor by its unit or name, a mass or a volume, a time between two looks, a step by its number.
var (
	namedThread  = exactly(noteThread)
	screwWords   = exactly(screwSize)
	fiveFigures  = exactly(`^3\d\d(\d\d)(?:[^\d.]|$)`)
	frameName    = exactly(`^(\d+) ?[SML]?\d?$`)
	frameSaid    = spoken(`\b(?:IEC|NEMA|frame|motor) (\d{2,3}(?:TC?|HC|[CJSML])?)\b`)
	nemaName     = exactly(`^(\d{3}) ?T`)
	flangeNumber = spoken(`\d{2,4}`)
	voltNumber   = spoken(`\d+(\.\d+)?`)
	gearedMotor  = spoken(`\b(?:geared|gear ?box|gear[- ]?motor|gear head|reducer|reduction gear|worm gear)\b`)
	itemFigure   = spoken(`\b(\d+(?:[ -]\d+/\d+|\.\d+)?|\d+/\d+) ?(kW|hp|rev/min|rpm|Hz)\b|\b(flange|spigot) (\d+(?:\.\d+)?)`)
	massOf       = spoken(`[ ,;:]*(?:\d+[ -])?\d+(?:[./]\d+)? ?(?:k?g|oz|lbs?|ml|cm3|cm³|cc)\b`)
	every        = exactly(`^(\d+) ?(h|hour|day|week|month|season|year)s?\b`)
	teethSaid    = spoken(`\b(\d{1,3})[ -](?:teeth|tooth)\b`)
	namedStep    = exactly(`([^.;]*)\bstep (\d+)\b`)
)

// Of how a thing comes to its place: into, through or over what, while nothing is under it, by how much room, from both ends,
// freely or by force, and what is only to happen later.
var (
	entering     = spoken(`(?:(\w+) )?\b(?:into|through) (?:the |its )?`)
	intoWords    = spoken(`\binto\b[^.,;]*`)
	screwedIn    = spoken(`\b(?:screwed|turned|threaded) into (each|every|both)?\b([^,;.]*?)(?: until\b| and\b|[,;.]|$)`)
	bearsOn      = spoken(`\b(?:bears?|presses|pushes|stands?|rests?) (?:on|against)\b`)
	comesThrough = spoken(`\bthrough (?:an? |the |its |one |each )?([a-z][a-z ]*)`)
	fromWay      = spoken(`\bfrom (?:above|below)\b`)
	intoThread   = spoken(`\bin(?:to)? the threads? of ([^,.;:]+)`)
	goesIn       = spoken(`\b(?:held|lies|sits?|stands?|stood|put|hung|dropped) in(?:to)? (?:the |its )?((?:a |one of the )?holes? of (?:the )?)?(.+)`)
	stillFree    = spoken(`\b(?:while|as long as) nothing is (?:under|below|behind)\b`)
	roomSaid     = spoken(`\b` + bareLength + ` free (?:there|below|under|above|over|before|behind|in front)\b`)
	bothEnds     = spoken(`\bone\b.*\bthe other\b.*\bfrom (?:the )?(below|above|front|back|left|right|other end|outside)\b`)
	slides       = spoken(`\b(slides?|by hand)\b`)
	byForce      = spoken(`\b(press\w*|heat\w*|hot|shrunk|driven|hammer\w*|mallet)\b`)
	later        = spoken(`\b(before|until|off|out|later|then)\b`)
	entersBy     = spoken(`\b(?:from|(?:screwed|bolted) (to)) (?:the|its) (front|back)\b`)
	keyWord      = spoken(`\bkeys?\b`)
	onMotor      = spoken(`\b(?:motor(?:'s)? shaft|shaft of (?:the|its) motor)\b`)
	downOnWords  = spoken(`\bmotor down on (?:the|its) ([a-z][a-z -]*)`)
)

// Of how it lies and what keeps it there: on what, over what mouth, which end up, what it stops or carries, what screws stand on,
// what in its words keeps it on a shaft.
var (
	liesOn      = spoken(`\b(?:lying|lies|resting|rests|sitting|sits|down) on (?:the |its )?(.+)`)
	onMouth     = spoken(`\b(?:on|over|across) the (?:mouth|opening) of (?:the )?(.+)`)
	wayUp       = spoken(`\b(large|wide|small|narrow|front|back|flanges|square|round)(?: (?:end|face|side))? (?:is |looks |faces |points )?(up|down)(?:wards?)?\b`)
	stopsAt     = spoken(`\b(?:under|below|above|over|against|strikes?|meets?) (?:the |its )?`)
	carriesHigh = spoken(`\b(?:carries|takes|holds|supports)\b[^.;]*?\b` + bareLength + ` high\b`)
	standOn     = spoken(`^\s*(.*)\bscrews? (?:stand|rest|bear)s? on (.+)`)
	taperPin    = spoken(`\btaper(?:ed)? pins?\b`)
	standsWords = spoken(`\b(level|flush|deep|stands? out|out of|past)\b`)
	keeps       = spoken(`\b(weight|held|holds?|kept|keeps?|clamped|locked|retain\w*|circlip|glued|wedged|tight\w*|pressed|shrunk|driven|welded|bolted|lies|lying|rests?|resting|hung|hangs?|stood|stands?|sits|by (a|its|the|one) \w*\s?(nut|screw|ring|pin)s?|screwed (up|on|onto|into)|(its|their|own) \S*\s?(screws?|pins?))\b`)
	heldByScrew = spoken(`\b(clamp|set|grub|lock|locking|cone-point|cup-point) screws?\b`)
	clampedSaid = spoken(`^(?:it is )?clamped\b|\bis (?:clamped|screwed fast)\b`)
	flatSaid    = spoken(`\bon (?:its|the|a) flat\b`)
	screwsIn    = spoken(`\bscrews? in (?:its|their|the) ([a-z-]+) holes\b`)
	inForWork   = spoken(`\bfor work (?:the |its |a )?([a-z-]+)`)
	clearOf     = spoken(noteLength + ` (?:clear|off)\b`)
)

// Of what is ordered: a screw with its class, torque and head, the thread of what is screwed into a hole, a nut, by its thread or of a series, with the washer of one, or that locks itself, a bearing or a seal by its sizes, a washer, a stud, pins, a hole, a sheet, a rim, a grille, a
// coupling, and what room they leave or need.
var (
	screwClass    = spoken(`(?:^|[^x×][ ,])(grade \d+|\d\d?\.\d\d?)(?:[ ,]|$)`)
	saidTorque    = spoken(saidNm + `( oiled)?\b`)
	headDegrees   = spoken(`\b(\d+) ?° (?:flat |countersunk )?head`)
	flatHead      = spoken(`\bhex(?:agon)?[- ]head\b|\bhex(?:agon)? bolt\b|\b(?:cap screw|socket head|pan head|cheese head)\b`)
	sunkHead      = spoken(`\bcountersunk\b|\bflat head\b|\b(?:82|90|100) ?°`)
	setLong       = spoken(bareLength + ` long\b`)
	fittedThread  = exactly(`\b(?:\d+(?:[-/]\d+)*(?:-\d+)? (?:UN[CF]|NPT)|` + boltThread + `|(?:NPT|G|Rp?) ?\d+(?:[-/]\d+)*)(?:[ -]LH)?\b`)
	nutAlone      = spoken(`\bnuts? (` + boltThread + `(?:[ -]LH)?)\b`)
	nutSeries     = exactly(`\b(?:(KM)K? ?|(A?N-))(\d+)\b`)
	washerSeries  = exactly(`\b(MB|A?W-)(\d+)\b`)
	locksItself   = spoken(`\bself-?locking\b|\bnylon\b|\b(?:set|lock|grub) screws?\b|\bpins?\b|\bglued?\b|\bthread ?lock|\bsecond nut\b|\bcounter-?nut\b`)
	leftHanded    = spoken(`\b(?:LH|left[- ]hand(?:ed)?)\b`)
	ringSized     = spoken(`\b(bearing|seal)s?\b[^;]*?\b(\d+(?:\.\d+)?) ?[x×] ?(\d+(?:\.\d+)?) ?[x×] ?\d+(?:\.\d+)?\b`)
	washerNamed   = spoken(`^washers? ` + bareLength + `, ` + bareLength + ` outside`)
	studWords     = exactly(`(?i:\bstuds?) ` + screwSize + `(?: long)? in (?:the|its) ([a-z][\w-]*) holes?\b`)
	recessWords   = spoken(`\bfor the ([a-z][a-z -]*?) ` + bareLength + ` deep`)
	pinsNamed     = spoken(`\bpins? ` + bareLength + `(?:, ` + bareLength + ` long)?(?:, ` + bareLength + ` apart)?(?:, ` + bareLength + ` off the axis)?`)
	throughBoth   = spoken(`\b(?:pin|dowel|bolt|screw|rivet)s?\b`)
	pinsIn        = spoken(`\bpins? in (?:its|the) (front|back)\b`)
	itemHoles     = spoken(`\bholes? ` + itemSize)
	itemRadius    = spoken(`\bholes? (\S+)(?: (?:mm|in))? (?:at|on) (?:an? )?(\S+)(?: (?:mm|in))? (radius|circle|pcd)\b`)
	itemSheet     = spoken(`\b(?:sheet|plate|mesh|cover|lid) ` + itemSize + ` x ` + itemSize)
	itemRim       = spoken(`\brim ` + bareLength + ` inside\b`)
	staggered     = spoken(`\bstaggered at ` + bareLength)
	grilleHoles   = spoken(`\bgr(?:ille|id|ating)\b.*\bholes (\d+(?:\.\d+)?(?: ?(?:mm|in))?)\b`)
	boredFor      = spoken(`\bbore ` + bareLength + `|` + bareLength + `(?: clear)? for the ([a-z][a-z -]*)`)
	hubLong       = spoken(`\b(?:half|hub|boss) (?:of )?` + bareLength + `(?: long)?(?: at (?:the )?most)?\b`)
	couplingFor   = spoken(`\bcoupling\b.*?\b` + saidNm + `\b`)
	comesInPieces = spoken(`\bsplit\b`)
	fastener      = spoken(`\b(?:bolts?|(?:cap)?screws?|studs?|nuts?)\b`)
)

// Of names, which tell what a part, a hole, a step or a seat is: a stop, what keeps a belt tight, a guard over one, a guard that opens by hand, what keeps
// water off, anchor holes, the hole of a tommy bar, flats for a spanner, the slot of a locking washer, an oil cup, what is driven, and
// what of a name says for what the thing is, or makes another of it.
var (
	aStop       = spoken(`\b(?:stop|buffer|bumper)\b`)
	tightens    = spoken(`\b(?:jockey|idler|tension(?:er|ing)?)\b`)
	overBelt    = spoken(`\b(?:belt|pulley|chain|sprocket)s?\b`)
	opensByHand = spoken(`\b(?:guard|grille|grid|cover|hatch|door|lid|hood|gate|flap)$`)
	keepsOff    = spoken(`\b(?:rain|weather|dust|splash|drip)\b`)
	anchors     = spoken(`\banchors?\b`)
	tommy       = spoken(`\btommy\b`)
	wrenchFlats = spoken(`spanner|wrench`)
	washer      = spoken(`\bwashers?\b`)
	oilCup      = spoken(`\boil(?:er)?[ -]?cups?\b|\boilers?\b`)
	driven      = spoken(`\b(coupling|pulley|sprocket|gear|hand ?wheel|wheel|crank)\b`)
	anyFastener = spoken(`^(?:screw|bolt|hole|tap|stud|pin|nut|washer)s?$`)
	screwNamed  = spoken(`\b(screw|bolt|hole)(?:s|ed)?\b`)
	namedHole   = spoken(`\bholes? ([a-z][\w-]{2,}) (?:of|in) (.*)|\b(earth|ground) holes? (.*)`)
	itsSlots    = spoken(`\b(?:its|the) slots\b`)
	itsHoles    = spoken(`\bits (\w+)[ -]holes\b`)
	ringOn      = spoken(`\b(?:(?:retaining|snap) rings?|circlips?) (?:on|in|of) the ([^,;.]*)`)
	ofWhat      = spoken(` (?:over|for|of|with|to|on)\b.*`)
	partOfThing = spoken(`^(?:guard|hub|hal(?:f|ves)|cover|hatch|key|screws?|bolts?|nuts?|plate|ring|spokes?|spacers?)$`)
)

// Of what a note says of a part that its drawing or a joint shows too: faces, bearings, seams and welds, tolerances, how it hangs.
var (
	facesPart   = spoken(`\b(front|back) faces the ([^.;,]+)`)
	standsProud = spoken(`\bproud\b|\babove (?:it|the face|the front|the back)\b|\b(?:flush|level) with (?:it|the face|the front|the back)\b`)
	preloaded   = spoken(`\bpreload(ed)?\b`)
	floating    = spoken(`\bend (play|float)\b`)
	paired      = spoken(`\b(?:cups?|cones?|bearings?|races?|rollers|pair)\b[^.;]*?\b(back[- ]to[- ]back|face[- ]to[- ]face|tandem)\b`)
	coneSlides  = spoken(`\bcone slides\b`)
	penetrated  = spoken(`\bfull penetration\b`)
	weldedFrom  = spoken(`\bweld(?:ed|s|ing)?\b[^.;,]*? (?:from|at|on) (?:the|its) (front|back)\b`)
	lapped      = spoken(`\bseam\b.*\b(?:lap(?:s|ped)?|overlap(?:s|ped)?)\b`)
	endsOver    = spoken(`\bsides? (?:ends?|stops?) ` + bareLength + ` (?:over|above) `)
	saidWithin  = spoken(`\b(flat(?:ness)?|square(?:ness)?|perpendicular(?:ity)?|parallel(?:ism)?|equal|same length|coaxial(?:ity)?|concentric(?:ity)?|run-?out|runs? true|true)\b[^.;]*?\bwithin\s+([0-9][0-9./-]*(?: ?(?:mm|in)\b)?)`)
	saidSetting = spoken(`\b(?:one|the same|a single) (?:setting|chucking|set-?up)\b|without (?:letting go|re-?chucking)`)
	sealing     = spoken(`\b(?:seal(?:s|ing|ed)?|gaskets?|o-rings?)\b`)
	shareOf     = spoken(`\bshare of (\d+(?:\.\d+)?) ?(kg|lb)\b`)
	strapsIn    = spoken(`(?:^|[.;,:] ?)(?:straps?|slings?|ropes?) (?:go |run |are put )?(?:through|in) (?:the |its )?(?:slots?|holes?)\b`)
	bareHoist   = spoken(`\bwith nothing (?:else )?on it\b`)
	hoistsMore  = spoken(`\b(?:hoist|lift|sling|move|carry)(?:s|ing)? (?:the |all )?(?:whole|complete|entire|finished|machine)\b`)
	ofLoad      = spoken(`\b(?:load|mass|weight|lifts?)\b`)
	denied      = spoken(`\b(?:not?|never|nor|nobody|nothing|instead of)\b`)
)

// Of what moves in use: how far and which way it travels, what ends that, where its tip, its edges and its spots are.
var (
	travelMm   = exactly(`\b(?:travels?|strokes?)\b.{0,120}?\d ?(?:mm|in|ft|m|")(?: |$)|\d ?(?:mm|in|ft|m|") (?:of )?(?:travel|stroke)\b`)
	runTravel  = spoken(`\b(?:travel|stroke)\b,? (?:of )?` + noteLength)
	mostTravel = spoken(`\b(?:travel|stroke)\b.*\bmost,? (?:about |of )?` + noteLength + `|\b` + noteLength + ` of (?:the )?(?:travel|stroke)\b`)
	lockedSaid = spoken(`\block(?:ed)? (?:at|near) the (top|bottom) of (?:the|its) travel\b`)
	tipSaid    = spoken(`\btip ` + noteLength + ` above the (\w+)`)
	turnRaises = spoken(`\b(anti-?clockwise|counter-?clockwise|clockwise) (?:seen )?from (above|below) (raises|lifts|lowers) (?:the )?(\w+)`)
	edgeSaid   = spoken(`\bits (?:lower|upper|inner|outer) edge stands (\d+(?:\.\d+)?) to ` + noteLength + ` off the axis`)
	spotsAt    = spoken(`\bspots? at (\d+(?:\.\d+)?)°, (.+?) (mm|in) from the (front|back)\b`)
	spotsSep   = spoken(`, | and `)
	withPoint  = spoken(`\b(?:cone|dog)[ -]point`)
	tripsLate  = spoken(`\bswitch(?:es)?\b[^.;]*\b(?:trip|act|open|cut|stop)s?\b[^.;]*\b(?:after|past|beyond|when|once|as)\b[^.;]*\b(?:stops?|collars?|buffers?|ends?)\b`)
	limiterAt  = spoken(`\b(?:limiter|clutch)\b[^.;]*?\b` + saidNm + `\b`)
	rimForce   = spoken(`\b(\d+(?:\.\d+)?) ?(N|lbf?) at the rim\b`)
	slipForce  = spoken(`\bslips at (\d+(?:\.\d+)?) ?(N|lbf?)\b(?: on an? ` + bareLength + ` bar\b)?`)
	wheelWords = spoken(`\bwheel (?:of )?` + bareLength)
	uncoupled  = spoken(`\b(?:uncoupled|disconnected|coupling (?:off|apart|removed)|without (?:the |its )?coupling)\b`)
)

// Of safety and upkeep: guards off, switches and hinges, the earth, water, grease, wear.
var (
	offRunning = spoken(`\b(?:off|open(?:ed)?|removed|lifted|away)\b[^.;]*\b(?:while|with|when|as)\b[^.;]*\b(?:runs?|running|turns|turning|rotates)\b`)
	guardOff   = spoken(`\b(?:guard|grille|cover|hood|hatch|lid)s? (?:is |are )?(?:left |taken )?(?:off|open(?:ed)?|removed)\b`)
	aSwitch    = spoken(`\bswitch(?:es)?\b`)
	aHinge     = spoken(`\bhinges?\b`)
	earthed    = spoken(`\b(?:earth|ground lug)\b`)
	painted    = spoken(`\b(?:on|over|through) (?:the )?(?:finished |top )?(?:paint|primer|lacquer)\b|\bpainted\b`)
	ownEarth   = spoken(`\bterminal (?:box|block|board)\b`)
	underHead  = spoken(`\bunder (the|a) (head|nut|bolt|screw)\b`)
	wetWords   = spoken(`\b(?:rain|water|wet|sluice|outdoors?|weather|spray|wash(?:ed|ing)? down)\b`)
	openMotor  = spoken(`\b(?:IP ?[0-6][0-3]|ODP|DP|open|drip[- ]?proof)\b`)
	greaseOf   = spoken(`\b(lithium|calcium|sodium|aluminium|aluminum|barium|polyurea|bentonite|clay|silicone|complex|nlgi ?\d+)\b`)
	playSaid   = spoken(`\bplay\b[^.;]*?\b(?:over|above|of|beyond) ` + bareLength)
	offSaid    = spoken(bareLength + ` or more off\b`)
)
