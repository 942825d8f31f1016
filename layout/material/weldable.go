package material

// WeldClass says how a metal takes to arc welding.
type WeldClass int

// The classes, from the easiest to what must not be done.
const (
	WeldReadily   WeldClass = iota // like structural steel
	WeldPreheated                  // weldable with low hydrogen; preheat when thick or stiffly held
	WeldProcedure                  // hardens or cracks: preheat, slow cooling and a proven procedure
	WeldOwn                        // by its own process and filler, not as ordinary steel
	WeldNever                      // sulphur, lead or the metals together crack the weld
)

// Weldability is the class of a grade with what is known for it.
type Weldability struct {
	Class WeldClass
	// CEV is the carbon equivalent C + Mn/6 + (Cr+Mo+V)/5 + (Ni+Cu)/15 in percent:
	// the standard's greatest for structural steels to 30 mm, else that of the
	// middle of the analysis; 0 where it says nothing.
	CEV      float64
	PreheatC Span // degrees Celsius; zero where none is usual
}

// JoinReason is why two metals are not welded like ordinary steel.
type JoinReason int

// The reasons.
const (
	JoinPlain     JoinReason = iota // nothing speaks against it
	JoinHardens                     // the worse of the two hardens beside the weld
	JoinOwn                         // one takes its own process and filler
	JoinStainless                   // plain with stainless steel: over-alloyed austenitic filler
	JoinIron                        // cast iron: nickel filler or hot, and proven
	JoinCracks                      // the worse of the two cracks whatever is done
	JoinMetals                      // metals that do not mix: iron with aluminium or copper alloys
)

// Join is the verdict on welding two materials to each other.
type Join struct {
	Class    WeldClass
	Reason   JoinReason
	Worse    Material // the one that decides
	PreheatC Span     // of the one that asks for the hotter, degrees Celsius
}

// JoinOf judges the weld of a to b. Common practice, no source; a figure is never
// more than a start for a procedure.
func JoinOf(a, b Material) Join {
	j := Join{Class: a.Weld.Class, Worse: a, PreheatC: a.Weld.PreheatC}
	if b.Weld.Class > j.Class {
		j.Class, j.Worse = b.Weld.Class, b
	}
	if b.Weld.PreheatC.Max > j.PreheatC.Max {
		j.PreheatC = b.Weld.PreheatC
	}
	fa, fb := a.Kind.Data().Family, b.Kind.Data().Family
	stainless := func(m Material) bool { return m.Kind == AusteniticStainless }
	switch {
	case j.Class == WeldNever:
		j.Reason = JoinCracks
	case fa != fb && !(a.Kind.Ferrous() && b.Kind.Ferrous()):
		j.Class, j.Reason = WeldNever, JoinMetals
	case fa == CastIron || fb == CastIron:
		j.Class, j.Reason = WeldProcedure, JoinIron
		if j.Worse = a; fa != CastIron {
			j.Worse = b
		}
	case stainless(a) != stainless(b):
		j.Class, j.Reason = max(WeldOwn, j.Class), JoinStainless
	case j.Class == WeldOwn:
		j.Reason = JoinOwn
	case j.Class >= WeldPreheated:
		j.Reason = JoinHardens
	}
	return j
}
