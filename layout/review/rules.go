package review

import (
	"cmp"
	"slices"

	"centrepop/layout"
	"centrepop/layout/words"
	"centrepop/parts"
)

// partRules are the rules about one part, in the order they are tried.
var partRules = []rule[*view]{
	{"material", "no material is named, one without data, one that breaks where it is to bend, or a gasket is as hard as what it seals", together(unknownMaterial, (*view).hardGasket)},
	{"stock", "no stock is named", stock},
	{"top", "TOP is not marked though the part can be put on wrong", top},
	{"edge", "too little metal between a hole and an edge", edge},
	{"ligament", "too little metal between two holes", ligament},
	{"depth", "a blind hole comes out at the far side", depth},
	{"engagement", "too little thread", engagement},
	{"crossing", "a hole from a face meets one from the outside", crossing},
	{"head", "no room for a bolt head, nut or spanner", head},
	{"counterbore", "a counterbore does not take its screw head", each(everyHole, (*view).counterbore)},
	{"drill-size", "no common drill has the size of a hole", each(everyDrilled, (*view).drillSize)},
	{"drill-large", "a hole is over the largest drill of the shop", each(everyDrilled, (*view).drillLarge)},
	{"chamfer", "a chamfer is larger than its wall", each(everyChamfer, (*view).chamfer)},
	{"crowned", "a crowned end is to lie flat", each(everyChamfer, (*view).crowned)},
	{"undercut", "a fine seat ends at a shoulder without undercut", each(everyStep, (*view).undercut)},
	{"pierce", "a hole is too small for the cutter", pierce},
	{"stock-left", "no metal is left for turning", stockLeft},
	{"blank", "the stock is too small for the part", blank},
	{"swing", "the part is over the lathe's swing", swing},
	{"between", "the part is too long for the lathe", between},
	{"radial-edge", "an opening in the outside breaks out of its step", radialEdge},
	{"radial-gap", "two openings in the outside meet", radialGap},
	{"seam", "an opening lies in the seam of a rolled tube", (*view).seamGap},
	{"rolled", "a tube is rolled tightly from its sheet", rolledTight},
	{"radial-depth", "an opening in the outside has the wrong depth", each(everyRadial, (*view).radialDepth)},
	{"thin", "a wall, rim or floor is thin", thin},
	{"weak", "a turned part is weak at flats, a neck or a short thread, a neck too thick for its thread, or a lead screw without a relief", weak},
	{"idle-require", "a demand asks for no more than the general tolerance", each(everyDemand, (*view).idleRequire)},
	{"unmade-require", "a demand on a face that no operation makes", each(everyDemand, (*view).unmadeRequire)},
	{"said-demand", "a note asks for what only a key can have made and inspected", each(everyText, (*view).saidDemands)},
	{"tap-reach", "a thread is deeper than a hand tap goes", each(everyStep, (*view).tapReach)},
	{"recess", "a bore widens where no tool gets in, or a thread ends at what is left for after a weld", each(everyStep, (*view).recess, (*view).leftInWay)},
	{"relief", "an undercut eats its seat", each(everyStep, (*view).relief)},
	{"contact", "a shoulder has no face left to lie against", each(everyStep, (*view).contact)},
	{"allowance", "the stock leaves nothing to machine, or is not what is drawn", allowance},
	{"keyway", "a keyway is not that of its shaft", keyway},
	{"keyway-fit", "a keyway has another class of width than its key, or its seat has no limits", each(everyKeyway, (*view).keywayFit)},
	{"drive", "nothing turns what sits on a shaft, or hardly", drive},
	{"key-screw", "a set screw stands beside the key of its hub", each(everyRadial, (*view).besideKey)},
	{"keyway-wall", "a keyway leaves little metal, or its cutter has no room", each(everyKeyway, (*view).keywayWall)},
	{"groove-edge", "a retaining ring has little metal beside its groove", each(everyGroove, (*view).grooveEdge)},
	{"groove-path", "a retaining ring cannot get to its groove", each(everyGroove, (*view).groovePath)},
	{"groove-wall", "a groove leaves little metal under it", each(everyGroove, (*view).grooveWall)},
	{"groove-seat", "a groove eats the seat it lies in", each(everyGroove, (*view).grooveSeat)},
	{"groove-clash", "a groove runs into something else", each(everyGroove, (*view).crossed)},
	{"o-ring", "an O-ring is stretched, squeezed or confined too far, or has no lead-in", each(everyGroove, (*view).oring)},
	{"seat-cut", "flats or a keyway are cut into a seat", together(each(everyFlat, (*view).flatsInSeat), each(everyKeyway, (*view).keywayInSeat))},
	{"hardness", "a step is to be harder than its metal gets", each(everyStep, (*view).hardStep)},
	{"seal-land", "a shaft seal runs on a soft land", each(everyStep, (*view).sealLand)},
	{"seal-fit", "a shaft seal has no lead-in, or its bore another class", each(everyStep, (*view).sealFit)},
	{"seal-lip", "where the lip of a shaft seal looks is not said", each(everyStep, (*view).sealLip)},
	{"flats-wall", "flats leave little metal over a bore", each(everyFlat, (*view).flatsFree, (*view).flatsWall)},
	{"centre-hole", "a centre hole leaves hardly a face", each(everyCentre, (*view).centreHole)},
	{"clamp", "the screw of a split ring has too little metal, or it or the cut runs into something else", each(everyClamp, (*view).clamped, (*view).clampFree)},
	{"motor", "a plate does not take the flange of the motor, or nearly is one", each(everyHole, (*view).motorFlange)},
	{"path", "what sits on a seat cannot get there", each(everyStep, (*view).path)},
	{"seat-of", "a seat is not that of what sits on it", each(everyStep, (*view).seatWords)},
	{"located", "nothing holds what sits on a shaft in its place along it", together(each(everyStep, (*view).located), each(everyGroove, (*view).ringKeeps))},
	{"finish", "a seat is too rough", each(everyStep, (*view).rough)},
	{"lead-in", "a press seat or a turned thread has no lead-in, or one that is steep", together(each(everyStep, (*view).leadIn), each(everyChamfer, (*view).steep))},
	{"limits", "limits lie far from their nominal size", each(everyStep, (*view).limitsOff)},
	{"opening", "an opening opens onto the wrong thing, or onto nothing", together(each(everyRadial, (*view).openRules), each(everyHole, (*view).stopsInMetal))},
	{"countersink", "a countersink does not take its screw head, or is far wider than it", each(everyHole, (*view).countersink)},
	{"lifting", "a hole to lift by is small for what hangs in it, or nothing gets through it", together(each(everyHole, (*view).eyebolts), each(everyHoleOrSlot, (*view).blindEye))},
	{"cutter", "a slot is too deep for the cutter of its width", together(each(everySlot, (*view).faceReach), each(everyRadial, (*view).radialReach))},
	{"taper", "nothing gets into a cone", each(everyStep, (*view).shutCone)},
	{"sense", "a number is possible and makes no sense", sense},
	{"said", "words of a part and its numbers differ", said},
	{"counterpart", "the turned counterpart of a light press has no limits", each(everyInside, (*view).counterpart)},
	{"unused", "a thread or a fitted hole serves nothing", unused},
	{"said-step", "words of a part name a step that is not there, or lifts nothing", each(everyText, (*view).saidSteps)},
	{"saddle", "a branch and its opening do not meet", each(everyEnd, (*view).saddle)},
	{"weld-holes", "fine holes are finished before a weld", each(everyHole, (*view).fineHoles)},
	{"thread-mate", "a screw and its nut differ", each(everyStep, (*view).nutThread)},
}

// jobRules are the rules about the whole job.
var jobRules = []rule[*reviewer]{
	{"tolerance", "no general tolerance class is named", tolerance},
	{"fit-side", "a fit is on one drawing only, or differs", each(everyJoint(parts.PressKind), (*reviewer).fitSides)},
	{"joint", "a joint cannot be worked out, or has a flaw", jointProblems},
	{"level", "a flange is on its shaft the wrong way round", each(everyJoint(parts.PressKind), (*reviewer).levelled)},
	{"taken", "two joints put their bolts into the same holes", taken},
	{"space", "the places of parts and joints do not go together", space},
	{"unlike", "metals that eat one another touch in a joint", each(anyPlan, (*reviewer).unlike)},
	{"trap", "two parts also go together the wrong way", each(anyPlan, (*reviewer).trap)},
	{"weld-first", "a fine size is finished before a weld", each(everyPlan(parts.WeldKind), (*reviewer).weldFirst)},
	{"keyway-mate", "the keyways of a shaft and its hub differ", keywayMates},
	{"bar-key", "a key goes into no keyway", of(everyPart, (*view).barKey)},
	{"loose", "what no joint holds does not go where it is to", loose},
	{"held", "what the words stand or screw on a part is not on it, or stands another way up", held},
	{"travel", "what travels strikes something, nothing stops it, or words say otherwise of it", together(each(everyLoose, (*reviewer).inUse), (*reviewer).turnStrikes)},
	{"bought", "the screws bought for a part are not those of its holes", together(bought, each(everyLoose, (*reviewer).screwedInto))},
	{"place", "a weld and its place name two sides or ends of a part", each(everyJoint(parts.WeldKind), (*reviewer).placeSides)},
	{"seal-of", "a seal stands where it cannot seal", each(everyStanding, (*reviewer).standingSeals)},
	{"lead-side", "a lead-in is at the end that nothing enters by", each(everyStanding, (*reviewer).leadSide)},
	{"guard", "a guard leaves open what turns, or a belt runs without one", together(guards, (*reviewer).beltOpen, (*reviewer).nips)},
	{"pins", "pins of one part do not go into another", together(of(everyPart, each(everyHole, (*view).pinInHole), each(everyRadial, (*view).pinAcross)),
		each(everyJoint(parts.SlideKind), (*reviewer).pins), each(everyJoint(parts.BoltKind), (*reviewer).pinsMeet),
		each(everyJoint(parts.PressKind), (*reviewer).pinnedAcross), each(everyJoint(parts.SlideKind), (*reviewer).pinnedAcross), each(everyLoose, (*reviewer).pinsBought))},
	{"lock-nut", "no locking nut fits the thread that adjusts a bearing", each(everyPlan(parts.BearingKind), (*reviewer).lockNuts)},
	{"covered", "an opening lies under a part", together(covered, copedOver)},
	{"ring", "a part or a shoulder is in a bearing's way", each(everyPlan(parts.BearingKind), (*reviewer).ringClash)},
	{"spigot", "a spigot centres nothing", spigots},
	{"bearing", "the data of a bearing disagree", bearingPair},
	{"plate", "the numbers on the motor's plate disagree", plate},
	{"guard-made", "a guard or another thing for safety is named that is neither made nor bought, or the other way round", guardsMade},
	{"anchor", "what is to be anchored is not, or its anchors are out of reach", anchored},
	{"first-run", "a number of the first run cannot be right", firstRun},
	{"belt", "the pulleys of a belt lie out of line, or it has not their groove or length",
		together((*reviewer).beltOff, each(everyBought, (*reviewer).beltFits, (*reviewer).chainFits), of(everyPart, (*view).rimOfTeeth))},
	{"upkeep", "a time of the upkeep is too long", upkeep},
	{"press-short", "a press holds on a narrow ring", each(everyPlan(parts.PressKind), (*reviewer).shortPress)},
	{"heads", "a bolt ends inside a tube", together(oneWall, each(everyJoint(parts.BoltKind), (*reviewer).hiddenHeads))},
	{"running", "a shaft turns in a bush of its own metal, or a screw in such a nut",
		together(each(everyJoint(parts.SlideKind), (*reviewer).steelOnSteel), each(everyJoint(parts.ScrewKind), (*reviewer).screwSeizes))},
	{"lone-bore", "a bore runs on no shaft of the job", of(everyPart, (*view).loneBore)},
	{"play", "a bolt is far smaller than its holes", each(everyJoint(parts.BoltKind), (*reviewer).boltPlay)},
	{"socket", "no socket goes over a head", each(everyJoint(parts.BoltKind), (*reviewer).hexInCounterbore)},
	{"stud", "a stud has no shoulder, or stands in something or before a grease nipple", together((*reviewer).boughtStuds, each(everyPlan(parts.BoltKind), (*reviewer).studShoulder))},
	{"apart", "no joint connects an assembly", separate},
	{"quantity", "more copies are made than joints use", together(spareCopies, of(everyMade, made.both))},
	{"unjoined", "parts made for each other are in no joint", together(unjoined, each(everyJoint(parts.PressKind), (*reviewer).unwelded), of(everyPart, (*view).forgotten, (*view).freeEnds))},
	{"joint-face", "a weld stands in a joint", each(everyJoint(parts.BoltKind), (*reviewer).jointFace)},
	{"weld-sense", "a weld has the wrong size, side or length", weldSense},
	{"duct", "what lies between two ends of a duct narrows it", each(everyJoint(parts.BoltKind), (*reviewer).chokes)},
	{"said-thread", "words of the job name a thread, hole, ring, clamp or flat that is not there",
		together(saidThreads, (*reviewer).saidHoles, (*reviewer).saidClamps, each(everyLoose, (*reviewer).saidPuttingOn))},
	{"weld-access", "a weld is out of reach when its turn comes", each(everyPlan(parts.WeldKind), (*reviewer).weldAccess)},
	{"weld-gap", "a fillet has no corner", each(everyPlan(parts.WeldKind), (*reviewer).weldCorner)},
}

// Review looks at every part and joint of a job. What keeps a joint from being
// worked out is a finding to stop at; everything else is reviewed all the same.
// The list is never nil; it is sorted by severity, then by place in the input,
// the job file first and the part files in the job's order. Notes of one sort are one
// finding, at their first place.
func Review(w *layout.Worked) []Finding {
	r := &reviewer{job: w.Job, pl: w.Plan, model: w.Model, machine: w.Machine, w: words.Writer{Units: w.Job.Units}, found: []Finding{}, views: map[string]*view{}}
	return r.review()
}

// review runs every rule, and sorts what they found.
func (r *reviewer) review() []Finding {
	for _, rule := range jobRules {
		r.code = rule.code
		rule.check(r)
	}
	for _, v := range r.all() {
		for _, rule := range partRules {
			r.code = rule.code
			rule.check(v)
		}
	}
	r.accept()
	r.follow()
	order := map[string]int{r.job.File: 0}
	for i, p := range r.job.Parts {
		order[p.File] = i + 1
	}
	slices.SortStableFunc(r.found, func(a, b Finding) int {
		return cmp.Or(
			cmp.Compare(rank(a.Severity), rank(b.Severity)),
			cmp.Compare(order[a.Pos.File], order[b.Pos.File]),
			cmp.Compare(a.Pos.Line, b.Pos.Line),
			cmp.Compare(a.Pos.Column, b.Pos.Column),
			cmp.Compare(a.Code, b.Code),
			cmp.Compare(a.What, b.What),
			cmp.Compare(a.Numbers, b.Numbers),
		)
	})
	return gathered(r.found)
}
