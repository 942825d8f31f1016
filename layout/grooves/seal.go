package grooves

import (
	"sort"

	"centrepop/layout/fits"
	"centrepop/layout/lookup"
)

// SealLand is what a rotary shaft seal needs of its shaft and housing.
type SealLand struct {
	Shaft             fits.Limits   `json:"shaft"`     // h11
	RoundClass        string        `json:"roundness"` // tolerance grade of the shaft's roundness
	RaUm              lookup.Range  `json:"ra_um"`     // roughness of the land; smoother than its least carries no oil
	RzUm              lookup.Range  `json:"rz_um"`
	RmaxUm            float64       `json:"rmax_um"`
	HardnessHRC       float64       `json:"hardness_hrc"`                  // at least
	HardnessFastHRC   float64       `json:"hardness_fast_hrc"`             // at least from 4 m/s on, or with dirt from outside
	LeadInMm          float64       `json:"lead_in_mm"`                    // diameter at the end of the shaft's lead-in, at most
	LeadInDeg         lookup.Range  `json:"lead_in_deg"`                   // angle of the lead-in to the axis
	HousingClass      string        `json:"housing_class"`                 // of the bore the seal is pressed in
	HousingRaUm       lookup.Range  `json:"housing_ra_um"`                 // roughness of that bore for a seal with rubber outside
	HousingChamferDeg lookup.Range  `json:"-"`                             // its lead-in
	HousingStraightMm float64       `json:"housing_straight_mm,omitempty"` // cylindrical part of the bore, at least; 0 if no seal width was given
	HousingDepthMm    float64       `json:"housing_depth_mm,omitempty"`    // to the shoulder or the lead-in, at least; 0 if no seal width was given
	Source            lookup.Source `json:"source"`                        // of class, roughness, hardness, housing
	LeadInSource      lookup.Source `json:"lead_in_source"`
}

// leadInBy is by how much the lead-in is smaller than the shaft: DIN 3760 and
// ISO 6194-1, the same as tto.com.tw prints to 70 mm and GOST 8752-79, appendix 2, table 2, to 500.
var leadInBy = []struct{ upTo, by float64 }{
	{10, 1.5}, {20, 2}, {30, 2.5}, {40, 3}, {50, 3.5}, {70, 4}, {95, 4.5}, {130, 5.5}, {240, 7}, {500, 11},
}

// inchBores are how much under and over its size, in, the bore for an inch seal may be: RMA OS-4, now ARPM, as seal
// makers print it (wtk-sealing.com, Technical Info, table 3).
var inchBores = []struct{ upTo, less, more float64 }{{3, 0.001, 0.001}, {6, 0.0015, 0.0015}, {10, 0.002, 0.002}, {20, 0.004, 0.002}, {40, 0.006, 0.002}, {60, 0.010, 0.002}}

// InchSealBore is how much under and over its size the bore may be that holds an inch seal, all in mm; zero over 60 in.
func InchSealBore(boreMm float64) (lessMm, moreMm float64, source lookup.Source) {
	const inch = 25.4
	for _, b := range inchBores {
		if boreMm <= b.upTo*inch+1e-9 {
			return b.less * inch, b.more * inch, lookup.Source{Name: "RMA OS-4 as seal makers print it", State: lookup.Checked}
		}
	}
	return 0, 0, source
}

// SealLandFor returns the land for a shaft of 6 to 500 mm; widthMm is the width
// of the seal, or 0 if it is not known yet. It errs with a *lookup.RangeError.
//
// Source: mounting instructions of seal makers (scribd.com 457705924: h11, IT8,
// Ra 0.2 to 0.8, Rz 1 to 4, Rmax 6.3 µm, 45 HRC, 55 HRC from 4 m/s; yumpu.com
// 53306168: bore H8, chamfer 10 to 20°, depths 0.85 of the width and the width
// and 0.3, Ra 1.6 to 6.3 µm). The land is plunge ground, free of twist, which no
// number here can say. Angle of the lead-in: yumpu.com 34436509.
func SealLandFor(shaftMm, widthMm float64) (SealLand, error) {
	if err := lookup.Length("shaft diameter", shaftMm, 5.999, leadInBy[len(leadInBy)-1].upTo); err != nil {
		return SealLand{}, err
	}
	if err := lookup.Length("seal width", widthMm, -1e-12, 50); err != nil {
		return SealLand{}, err
	}
	shaft, err := fits.Limit(shaftMm, "h11")
	if err != nil {
		return SealLand{}, err
	}
	leadIn := leadInBy[sort.Search(len(leadInBy), func(i int) bool { return shaftMm <= leadInBy[i].upTo })]
	l := SealLand{
		Shaft: shaft, RoundClass: "IT8", RaUm: lookup.Range{Min: 0.2, Max: 0.8}, RzUm: lookup.Range{Min: 1, Max: 4}, RmaxUm: 6.3,
		HardnessHRC: 45, HardnessFastHRC: 55, LeadInMm: shaftMm - leadIn.by, LeadInDeg: lookup.Range{Min: 15, Max: 30},
		HousingClass: "H8", HousingRaUm: lookup.Range{Min: 1.6, Max: 6.3}, HousingChamferDeg: lookup.Range{Min: 10, Max: 20},
		Source:       lookup.Source{Name: "DIN 3760 as seal makers print it", State: lookup.Checked},
		LeadInSource: lookup.Source{Name: "DIN 3760", State: lookup.Checked},
	}
	if widthMm > 0 {
		l.HousingStraightMm, l.HousingDepthMm = 0.85*widthMm, widthMm+0.3
	}
	return l, nil
}
