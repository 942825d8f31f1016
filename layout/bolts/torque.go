package bolts

import (
	"cmp"
	"fmt"
	"math"
	"strings"
)

// A NutFactor is the K of T = K·F·d for one surface condition.
type NutFactor struct {
	Name   string
	K      float64
	Source string
}

// anyOil is the lower of two values: with it a bolt is strained less than wanted, not more.
const anyOil = "any lubrication 0.15, design handbook page; Shigley gives 0.18"

// nutFactors: the sources disagree, so each name says whose value it is.
var nutFactors = []NutFactor{
	{"dry", 0.20, "clean and dry 0.20, design handbook page; Shigley gives 0.30 for a black unplated finish"},
	{"lubricated", 0.15, anyOil},
	{"oiled", 0.15, anyOil},
	{"black", 0.30, "non-plated black finish, Shigley 5th ed. ch. 8"},
	{"zinc", 0.20, "zinc-plated, Shigley 5th ed. ch. 8; Bickford and Nassar give 0.295 for dry zinc"},
	{"zinc dry", 0.295, "Bickford and Nassar, Handbook of Bolts and Bolted Joints, ch. 2 Table 1"},
	{"cadmium", 0.16, "cadmium-plated, Shigley 5th ed. ch. 8; Bickford and Nassar give 0.20 dry"},
	{"anti-seize", 0.12, "anti-seize compound, Shigley 5th ed. ch. 8"},
	{"special grip nut", 0.09, "special grip nuts, Shigley 5th ed. ch. 8"},
	{"bare steel", 0.20, "Bickford and Nassar, Handbook of Bolts and Bolted Joints, ch. 2 Table 1"},
	{"unknown", 0.20, "condition not known, Shigley 5th ed. ch. 8"},
}

// FindNutFactor returns the factor of a condition by its name;
// case does not matter and empty is "dry". Another word is an error.
func FindNutFactor(condition string) (NutFactor, error) {
	word := cmp.Or(strings.ToLower(strings.TrimSpace(condition)), "dry")
	var known []string
	for _, n := range nutFactors {
		if n.Name == word {
			return n, nil
		}
		known = append(known, n.Name)
	}
	return NutFactor{}, fmt.Errorf("bolts: no nut factor for %q: known are %s", condition, strings.Join(known, ", "))
}

// preloadShare is the preload as a share of the proof load for joints that are
// taken apart again; 0.90 is used for permanent ones. Shigley.
const preloadShare = 0.75

// scatter is how far the preload of single bolts lies from the wanted one when
// tightened by torque wrench, as a share: Bickford's word of a common
// torque wrench, as a maker of tightening tools has it (leadergt.com, preload accuracy); 0.25 oiled
// and 0.35 dry elsewhere (doi 10.1007/s11668-019-00693-z). The unlucky bolt stays below its proof load.
const scatter = 0.30

// proofN is the proof load that a tightening asks about.
func (b Bolt) proofN(t Tightening) (float64, error) {
	switch {
	case t.ProofMPa == 0:
		return b.ProofLoadN(t.Class)
	case t.ProofMPa > 0 && finite(t.ProofMPa):
		return t.ProofMPa * b.StressAreaMm2, nil
	}
	return 0, fmt.Errorf("bolts: proof stress must be above 0, not %v", t.ProofMPa)
}

// A Tightening is what Tighten asks for.
type Tightening struct {
	Head      Head    // a countersunk one carries less than its thread
	Class     string  // strength class, see Grade; must be given but for ProofMPa
	ProofMPa  float64 // proof stress of a stud that is made, used instead of Class; above 0
	Condition string  // see FindNutFactor; empty is dry
	MostN     float64 // the preload that what lies under head and nut bears, N; 0 where that is not known
}

// A Torque is a tightening torque with the preload it gives.
type Torque struct {
	PreloadN  float64 // wanted
	NutFactor NutFactor
	TorqueNm  float64 // K·F·d
	// PreloadLowN and PreloadHighN bound the preload that TorqueNm really
	// gives.
	PreloadLowN, PreloadHighN float64
	// TorqueLowNm and TorqueHighNm bound the torque that would really be
	// needed for PreloadN: the same scatter seen from the other side.
	TorqueLowNm, TorqueHighNm float64
}

// Tighten returns the torque T = K·F·d for the size, in N·m, with steel under head
// and nut. It is an error when class or condition is unknown, or the proof stress is
// not above 0.
func (b Bolt) Tighten(t Tightening) (Torque, error) {
	factor, err := FindNutFactor(t.Condition)
	if err != nil {
		return Torque{}, err
	}
	proof, err := b.proofN(t)
	if err != nil {
		return Torque{}, err
	}
	force := preloadShare * proof
	if t.Head == Countersunk {
		force *= sunkShare
	}
	if t.MostN > 0 {
		force = math.Min(force, t.MostN)
	}
	torque := factor.K * force * b.Thread.MajorMm / 1000
	return Torque{
		PreloadN: force, PreloadLowN: force * (1 - scatter), PreloadHighN: force * (1 + scatter),
		NutFactor: factor, TorqueNm: torque, TorqueLowNm: torque * (1 - scatter), TorqueHighNm: torque * (1 + scatter),
	}, nil
}
