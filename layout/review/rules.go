package review

// partRules are the rules about one part, in the order they are tried. The
// code is what a job names to accept a finding.
var partRules = []struct {
	code  string
	about string
	check func(v *view)
}{
	{"material", "no material is named, or one without data", unknownMaterial},
	{"stock", "no stock is named", stock},
	{"top", "TOP is not marked though the part can be put on wrong", top},
	{"edge", "too little metal between a hole and an edge", edge},
	{"ligament", "too little metal between two holes", ligament},
	{"depth", "a blind hole comes out at the far side", depth},
	{"engagement", "too little thread", engagement},
	{"crossing", "a hole from a face meets one from the outside", crossing},
	{"head", "no room for a bolt head, nut or spanner", head},
	{"counterbore", "a counterbore does not take its screw head", counterbore},
	{"drill-size", "no common drill has the size of a hole", drillSize},
	{"drill-large", "a hole is over the largest drill of the shop", drillLarge},
	{"chamfer", "a chamfer is larger than its wall", chamfer},
	{"undercut", "a fine seat ends at a shoulder without undercut", undercut},
	{"pierce", "a hole is too small for the cutter", pierce},
	{"stock-left", "no metal is left for turning", stockLeft},
	{"blank", "the stock is too small for the part", blank},
	{"swing", "the part is over the lathe's swing", swing},
	{"between", "the part is too long for the lathe", between},
	{"radial-edge", "an opening in the outside breaks out of its step", radialEdge},
	{"radial-gap", "two openings in the outside meet", radialGap},
	{"radial-depth", "an opening in the outside has the wrong depth", radialDepth},
	{"thin", "a wall, rim or floor is thin", thin},
	{"relief", "an undercut eats its seat", relief},
	{"allowance", "the stock leaves nothing to machine, or is not what is drawn", allowance},
	{"keyway", "a keyway is not that of its shaft", keyway},
	{"drive", "nothing turns what sits on a shaft, or hardly", drive},
	{"keyway-wall", "a keyway leaves little metal, or its cutter has no room", keywayWall},
	{"groove-edge", "a retaining ring has little metal beside its groove", grooveEdge},
	{"groove-path", "a retaining ring cannot get to its groove", groovePath},
	{"groove-wall", "a groove leaves little metal under it", grooveWall},
	{"groove-seat", "a groove eats the seat it lies in", grooveSeat},
	{"groove-clash", "a groove runs into something else", crossed},
	{"o-ring", "an O-ring is stretched, squeezed or confined too far, or has no lead-in", oring},
	{"seal-land", "a shaft seal runs on a soft land", sealLand},
	{"seal-fit", "a shaft seal has no lead-in, or its bore another class", sealFit},
	{"seal-lip", "where the lip of a shaft seal looks is not said", sealLip},
	{"flats-wall", "flats leave little metal over a bore", flatsWall},
	{"centre-hole", "a centre hole leaves hardly a face", centreHoles},
	{"clamp", "the screw of a split ring has too little metal", clamped},
	{"motor", "a plate is nearly a motor flange", motorFlange},
	{"path", "what sits on a seat cannot get there", path},
	{"seat-of", "a seat is not that of what sits on it", seatWords},
	{"finish", "a seat is too rough", rough},
	{"lead-in", "a press seat has no lead-in", leadIn},
	{"limits", "limits lie far from their nominal size", limitsOff},
	{"opening", "an opening in the outside opens onto the wrong thing", openRules},
	{"countersink", "a countersink does not take its screw head", countersink},
}

// jobRules are the rules about the whole job.
var jobRules = []struct {
	code  string
	about string
	check func(r *reviewer)
}{
	{"tolerance", "no general tolerance class is named", tolerance},
	{"counterpart", "the turned counterpart of a light press has no limits", counterpart},
	{"fit-side", "a fit is on one drawing only, or differs", fitSides},
	{"joint", "a joint cannot be worked out, or has a flaw", jointProblems},
	{"space", "the places of parts and joints do not go together", space},
	{"trap", "two parts also go together the wrong way", trap},
	{"weld-first", "a fine size is finished before a weld", weldFirst},
	{"weld-holes", "fine holes are finished before a weld", fineHoles},
	{"keyway-mate", "the keyways of a shaft and its hub differ", keywayMates},
	{"bar-key", "a key goes into no keyway", barKeys},
	{"pins", "pins of one part do not go into another", pins},
	{"lock-nut", "no locking nut fits the thread that adjusts a bearing", lockNuts},
	{"saddle", "a branch and its opening do not meet", saddle},
	{"thread-mate", "a screw and its nut differ", nutThread},
	{"covered", "an opening lies under a part", covered},
	{"ring", "a part or a shoulder is in a bearing's way", ringClash},
	{"spigot", "a spigot centres nothing", spigots},
	{"bearing", "the data of a bearing disagree", bearingPair},
	{"socket", "no socket goes over a head", hexInCounterbore},
	{"stud", "a stud has no shoulder", studShoulder},
	{"apart", "no joint connects an assembly", separate},
	{"unjoined", "parts made for each other are in no joint", unjoined},
	{"joint-face", "a weld stands in a joint", jointFace},
	{"weld-sense", "a weld has the wrong size, side or length", weldSense},
	{"weld-access", "a weld is out of reach when its turn comes", weldAccess},
}
