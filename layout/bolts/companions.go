package bolts

import "strings"

// Companions are the nut and washer that go with a bolt of a class.
type Companions struct {
	Nut    string // class of the nut: "8", "10", "A2-70", "grade 5"
	Washer string // hardness class of the plain washer: "200 HV", "300 HV", or "A2", "hardened"
	// Beyond is true where no plain washer of ISO 7089 is hard enough: 12.9 asks
	// for one quenched to the hardness given, or none.
	Beyond bool
}

// CompanionsSource is where nuts and washers are from; washers of 12.9 and of inch bolts
// are common practice.
const CompanionsSource = "ISO 898-2:2012 Table 2, ISO 3506-2, SAE J995, ISO 7089:2000 clause 1 (from memory)"

// companionRows: the nut of the lowest class that the bolt's standard pairs it with, and
// the washer of ISO 7089 (200 HV to 8.8, 300 HV to 10.9).
var companionRows = map[string]Companions{
	"4.6":     {"5", "200 HV", false},
	"5.6":     {"5", "200 HV", false},
	"5.8":     {"5", "200 HV", false},
	"6.8":     {"6", "200 HV", false},
	"8.8":     {"8", "200 HV", false},
	"10.9":    {"10", "300 HV", false},
	"12.9":    {"12", "hardened, 380 HV or more", true},
	"A2-50":   {"A2-50", "A2, 200 HV", false},
	"A2-70":   {"A2-70", "A2, 200 HV", false},
	"A4-70":   {"A4-70", "A4, 200 HV", false},
	"A4-80":   {"A4-80", "A4, 200 HV", false},
	"grade 2": {"grade 2", "plain", false},
	"grade 5": {"grade 5", "plain", false},
	"grade 8": {"grade 8", "hardened (ASTM F436)", false},
	"A574":    {"grade 8", "hardened (ASTM F436)", false},
	"F835":    {"grade 8", "hardened (ASTM F436)", false},
}

// Companions returns the nut and washer for this size in a class. Errors are those
// of Grade.
func (b Bolt) Companions(class string) (Companions, error) {
	g, err := b.Grade(class)
	if err != nil {
		return Companions{}, err
	}
	return companionRows[g.Name], nil
}

// Both are the torques for one preload on dry and on oiled threads.
type Both struct {
	Dry, Oiled Torque
}

// TightenBoth returns the torque for the wanted preload with threads and faces
// clean and dry, and with both oiled: the smaller figure. A bolt tightened oiled to
// the dry figure is stretched by the ratio of the two. t.Condition is not
// read; errors as Tighten.
func (b Bolt) TightenBoth(t Tightening) (Both, error) {
	var out Both
	var err error
	t.Condition = "dry"
	if out.Dry, err = b.Tighten(t); err != nil {
		return Both{}, err
	}
	t.Condition = "lubricated"
	if out.Oiled, err = b.Tighten(t); err != nil {
		return Both{}, err
	}
	return out, nil
}

// Lubricated tells whether a condition is one with a lubricant, so that the torque
// for it is not the one for dry threads.
func Lubricated(condition string) bool {
	switch strings.ToLower(strings.TrimSpace(condition)) {
	case "lubricated", "oiled", "anti-seize", "cadmium", "special grip nut":
		return true
	}
	return false
}
