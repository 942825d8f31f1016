package bolts

import (
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

// nutFactors: the sources disagree, so each name says whose value it is.
var nutFactors = []NutFactor{
	{"dry", 0.20, "clean and dry 0.20, design handbook page; Shigley gives 0.30 for a black unplated finish"},
	{"lubricated", 0.15, "any lubrication 0.15, design handbook page; Shigley gives 0.18"},
	{"black", 0.30, "non-plated black finish, Shigley 5th ed. ch. 8"},
	{"zinc", 0.20, "zinc-plated, Shigley 5th ed. ch. 8; Bickford and Nassar give 0.295 for dry zinc"},
	{"zinc dry", 0.295, "Bickford and Nassar, Handbook of Bolts and Bolted Joints, ch. 2 Table 1"},
	{"oiled", 0.18, "lubricated, Shigley 5th ed. ch. 8"},
	{"cadmium", 0.16, "cadmium-plated, Shigley 5th ed. ch. 8; Bickford and Nassar give 0.20 dry"},
	{"anti-seize", 0.12, "anti-seize compound, Shigley 5th ed. ch. 8"},
	{"special grip nut", 0.09, "special grip nuts, Shigley 5th ed. ch. 8"},
	{"bare steel", 0.20, "Bickford and Nassar, Handbook of Bolts and Bolted Joints, ch. 2 Table 1"},
	{"unknown", 0.20, "condition not known, Shigley 5th ed. ch. 8"},
}

// FindNutFactor returns the factor of a condition by its name;
// case does not matter and empty is "dry". Another word is an error.
func FindNutFactor(condition string) (NutFactor, error) {
	word := strings.ToLower(strings.TrimSpace(condition))
	if word == "" {
		word = "dry"
	}
	var known []string
	for _, n := range nutFactors {
		if n.Name == word {
			return n, nil
		}
		known = append(known, n.Name)
	}
	return NutFactor{}, fmt.Errorf("bolts: no nut factor for %q: known are %s", condition, strings.Join(known, ", "))
}

// DefaultPreload is the preload as a fraction of the proof load for joints
// that are taken apart again; 0.90 is used for permanent ones. Shigley.
const DefaultPreload = 0.75

// DefaultScatter is how far the preload of single bolts lies from the wanted
// one when tightened by torque wrench, as a fraction. Shigley and Bickford,
// from memory.
const DefaultScatter = 0.30

// PreloadN returns the preload in N: fraction × proof load of the class.
// Fraction 0 takes DefaultPreload; otherwise it must lie above 0 and not above
// 1. Errors are those of ProofLoadN and of the fraction.
func (b Bolt) PreloadN(class string, fraction float64) (float64, error) {
	if fraction == 0 {
		fraction = DefaultPreload
	}
	if err := checkFraction(fraction); err != nil {
		return 0, err
	}
	proof, err := b.ProofLoadN(class)
	if err != nil {
		return 0, err
	}
	return fraction * proof, nil
}

func checkFraction(fraction float64) error {
	if !finite(fraction) || fraction < 0 || fraction > 1 {
		return fmt.Errorf("bolts: preload fraction must lie above 0 and not above 1, not %v", fraction)
	}
	return nil
}

// proof is the proof load that a tightening asks about, and in words of what.
func (b Bolt) proof(t Tightening) (n float64, of string, err error) {
	switch {
	case t.ProofMPa != 0 && !(t.ProofMPa > 0 && finite(t.ProofMPa)):
		return 0, "", fmt.Errorf("bolts: proof stress must be above 0, not %v", t.ProofMPa)
	case t.ProofMPa > 0:
		return t.ProofMPa * b.StressAreaMm2, fmt.Sprintf("a proof stress of %v MPa", t.ProofMPa), nil
	}
	grade, err := b.Grade(t.Class)
	if err != nil {
		return 0, "", err
	}
	n, err = b.ProofLoadN(t.Class)
	return n, "class " + grade.Name + " (" + grade.Source + ")", err
}

// A Tightening is what Tighten asks for. Zero fields take the defaults.
type Tightening struct {
	Class     string  // strength class, see Grade; must be given but for ProofMPa
	ProofMPa  float64 // proof stress of a stud that is made, used instead of Class; above 0
	Condition string  // see FindNutFactor; empty is dry
	K         float64 // nut factor of your own, used instead of Condition; 0.05 to 0.5
	Fraction  float64 // preload over proof load; 0 is DefaultPreload
	Scatter   float64 // 0 is DefaultScatter; below 1
}

// A Torque is a tightening torque with the preload it gives.
type Torque struct {
	ProofLoadN float64
	PreloadN   float64 // wanted
	NutFactor  NutFactor
	DiameterMm float64 // d of T = K·F·d
	TorqueNm   float64 // K·F·d
	// PreloadLowN and PreloadHighN bound the preload that TorqueNm really
	// gives.
	PreloadLowN, PreloadHighN float64
	// TorqueLowNm and TorqueHighNm bound the torque that would really be
	// needed for PreloadN: the same scatter seen from the other side.
	TorqueLowNm, TorqueHighNm float64
	// OverProof is true when PreloadHighN is above the proof load: the
	// unlucky bolt may stretch for good.
	OverProof bool
	// Assumptions are for printing beside the torque.
	Assumptions []string
}

// Tighten returns the torque T = K·F·d for the size, in N·m. It is an error
// when class or condition is unknown, or a number lies outside the range that
// its field states.
func (b Bolt) Tighten(t Tightening) (Torque, error) {
	factor, err := FindNutFactor(t.Condition)
	if err != nil {
		return Torque{}, err
	}
	if t.K != 0 {
		if !finite(t.K) || t.K < 0.05 || t.K > 0.5 {
			return Torque{}, fmt.Errorf("bolts: nut factor must lie between 0.05 and 0.5, not %v", t.K)
		}
		factor = NutFactor{"given", t.K, "given by the user"}
	}
	scatter := t.Scatter
	if scatter == 0 {
		scatter = DefaultScatter
	}
	if !finite(scatter) || scatter < 0 || scatter >= 1 {
		return Torque{}, fmt.Errorf("bolts: scatter must lie above 0 and below 1, not %v", scatter)
	}
	fraction := t.Fraction
	if fraction == 0 {
		fraction = DefaultPreload
	}
	if err := checkFraction(fraction); err != nil {
		return Torque{}, err
	}
	proof, of, err := b.proof(t)
	if err != nil {
		return Torque{}, err
	}
	force := fraction * proof
	d := b.Thread.MajorMm
	r := Torque{
		ProofLoadN:   proof,
		PreloadN:     force,
		NutFactor:    factor,
		DiameterMm:   d,
		TorqueNm:     factor.K * force * d / 1000,
		PreloadLowN:  force * (1 - scatter),
		PreloadHighN: force * (1 + scatter),
	}
	r.TorqueLowNm, r.TorqueHighNm = r.TorqueNm*(1-scatter), r.TorqueNm*(1+scatter)
	r.OverProof = r.PreloadHighN > proof*(1+1e-9)
	r.Assumptions = []string{
		fmt.Sprintf("T = K F d with K %v: %s", factor.K, factor.Source),
		fmt.Sprintf("preload %v %% of the proof load of %s", math.Round(1000*force/proof)/10, of),
		fmt.Sprintf("single bolts scatter ±%v %% in preload by torque wrench (from memory, Shigley and Bickford)", math.Round(1000*scatter)/10),
		"steel under head and nut; another surface, a worn thread or a prevailing-torque nut changes K",
	}
	if t.Scatter != 0 {
		r.Assumptions[2] = fmt.Sprintf("single bolts scatter ±%v %% in preload, given by the user", math.Round(1000*scatter)/10)
	}
	return r, nil
}
