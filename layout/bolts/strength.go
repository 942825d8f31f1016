package bolts

import (
	"fmt"
	"strings"
)

// A Grade is the strength of a bolt of one class and size.
type Grade struct {
	// Name is "8.8", "grade 5", "A2-70", ...
	Name string
	// ProofMPa is the proof stress, YieldMPa the least yield or 0.2 % stress,
	// TensileMPa the least tensile strength, in MPa. Stainless classes have
	// no proof stress in their standard; the 0.2 % stress stands in.
	ProofMPa, YieldMPa, TensileMPa float64
	// Source names the standard.
	Source string
	of     *standard
}

// Stainless tells classes of ISO 3506.
func (g Grade) Stainless() bool { return g.of == iso3506 }

// A standard is where classes come from, and what is made in them.
type standard struct {
	source string
	ksi    bool // its values; of inch bolts
	head   Head // what is made of it; empty for any
}

var (
	iso898  = &standard{"ISO 898-1:2013 Table 3", false, ""}
	iso3506 = &standard{"ISO 3506-1", false, ""} // of metric and inch bolts alike
	j429    = &standard{"SAE J429 Table 1", true, Hex}
	a574    = &standard{"ASTM A574, socket head", true, Socket}
	f835    = &standard{"ASTM F835, countersunk, proof stress of A574", true, Countersunk}
)

// A gradeRow is one class over a range of diameters.
type gradeRow struct {
	name                  string
	to                    float64 // diameter in mm, from where the row above of the class ends
	proof, yield, tensile float64 // MPa or ksi, as the standard has it
	of                    *standard
}

// ksi is one thousand pounds-force per square inch in MPa.
const ksi = 6.894757

// gradeRows: ISO 898-1:2013 Table 3 as a fastener maker prints it (nfgab.se,
// "Mechanical properties, screws and studs"), ISO 3506-1 as two print it
// (monsterbolts.com, "Stainless steel grades"; brassnutbolt.com, "Stainless steel
// data": 70 and 80, A2 and A4); M39 and the step of 8.8 as a table of proof loads has them
// (optimas.com), M24 for 70 as one of ISO 4762 (amesweb.info), and kept so for 80, in the M39 of the scope; SAE
// J429 Table 1 and ASTM A574 (as makers print them).
var gradeRows = []gradeRow{
	{"4.6", 39, 225, 240, 400, iso898},
	{"5.6", 39, 280, 300, 500, iso898},
	{"5.8", 39, 380, 420, 520, iso898},
	{"6.8", 39, 440, 480, 600, iso898},
	{"8.8", 16, 580, 640, 800, iso898},
	{"8.8", 39, 600, 660, 830, iso898},
	{"10.9", 39, 830, 940, 1040, iso898},
	{"12.9", 39, 970, 1100, 1220, iso898},
	{"A2-50", 39, 210, 210, 500, iso3506},
	{"A2-70", 24, 450, 450, 700, iso3506},
	{"A4-70", 24, 450, 450, 700, iso3506},
	{"A4-80", 24, 600, 600, 800, iso3506},
	{"grade 2", 0.75 * inch, 55, 57, 74, j429},
	{"grade 2", 1.5 * inch, 33, 36, 60, j429},
	{"grade 5", 1 * inch, 85, 92, 120, j429},
	{"grade 8", 1.5 * inch, 120, 130, 150, j429},
	{"A574", 0.5 * inch, 140, 153, 180, a574},
	{"A574", 1.5 * inch, 135, 153, 170, a574},
	{"F835", 0.5 * inch, 140, 153, 180, f835},
	{"F835", 1 * inch, 135, 153, 170, f835},
}

// Grade returns the strength of this size in a class: "4.6", "5.6", "5.8",
// "6.8", "8.8", "10.9", "12.9", "A2-50", "A2-70", "A4-70", "A4-80", or
// "grade 2", "grade 5", "grade 8" (also "2", "gr 5", "SAE 8"), "A574" of socket
// head screws, "F835" of countersunk ones; case does not matter. Metric classes go with metric bolts and SAE grades with inch bolts;
// stainless goes with both. An unknown or unfit class is an error.
func (b Bolt) Grade(class string) (Grade, error) {
	name := strings.ToLower(strings.Join(strings.Fields(class), " "))
	for _, prefix := range []string{"sae grade", "sae", "grade", "gr.", "gr"} {
		if rest, ok := strings.CutPrefix(name, prefix); ok {
			name = "grade " + strings.TrimSpace(rest)
			break
		}
	}
	name = strings.TrimPrefix(name, "astm ")
	if len(name) == 1 {
		name = "grade " + name
	}
	known := false
	for _, row := range gradeRows {
		if strings.ToLower(row.name) != name {
			continue
		}
		known = true
		if row.of.ksi == b.metric && row.of != iso3506 {
			return Grade{}, fmt.Errorf("bolts: class %s does not go with %s: metric bolts take 8.8, 10.9, 12.9, inch bolts grade 2, 5, 8, A574 and F835", row.name, b.Thread.Designation)
		}
		if b.Thread.MajorMm > row.to+1e-9 {
			continue
		}
		unit := 1.0
		if row.of.ksi {
			unit = ksi
		}
		return Grade{row.name, row.proof * unit, row.yield * unit, row.tensile * unit, row.of.source, row.of}, nil
	}
	if known {
		return Grade{}, fmt.Errorf("bolts: class %s is not made in %s", class, b.Thread.Designation)
	}
	return Grade{}, fmt.Errorf("bolts: strength class %q is not known: metric 4.6, 5.6, 5.8, 6.8, 8.8, 10.9, 12.9, A2-50, A2-70, A4-70, A4-80; inch grade 2, 5, 8, A574, F835", class)
}

// ProofLoadN returns the proof load in N: the printed ISO 898-1 value for
// coarse metric threads in 8.8, 10.9 and 12.9, else proof stress times stress
// area. Errors are those of Grade.
func (b Bolt) ProofLoadN(class string) (float64, error) {
	g, err := b.Grade(class)
	if err != nil {
		return 0, err
	}
	if b.metric && b.StressAreaMm2 == metricBolts[b.row].area {
		switch g.Name {
		case "8.8":
			return metricBolts[b.row].proof88, nil
		case "10.9":
			return metricBolts[b.row].proof109, nil
		case "12.9":
			return metricBolts[b.row].proof129, nil
		}
	}
	return g.ProofMPa * b.StressAreaMm2, nil
}

// MadeWith tells whether a head is made in a class of this size: the grades of SAE
// J429 are hexagon bolts, ASTM A574 is socket head screws, and F835 countersunk ones. True for a class that
// is not known.
func (b Bolt) MadeWith(class string, h Head) bool {
	g, err := b.Grade(class)
	return err != nil || g.of.head == "" || g.of.head == h
}
