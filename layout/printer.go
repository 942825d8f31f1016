package layout

import (
	"cmp"
	"errors"
	"fmt"
	"math"
	"slices"

	"centrepop/layout/part"
	"centrepop/layout/words"
	"centrepop/parts/geom"
)

// PrinterReadings are what was measured on a printed check page, in
// millimetres, and what should have been read. Across is along the first
// written side of upright paper, up along the other. The diagonals are those
// of the rectangle of both rules: the first rises to the right, the second to
// the left; both are 0 if they were not measured.
type PrinterReadings struct {
	AcrossOfMm, AcrossMm float64
	UpOfMm, UpMm         float64
	DiagonalsMm          [2]float64
}

// Correction makes a printer's sheets true: a drawing put through it and
// printed comes out at its own size. The zero value is not useful; see
// NewCorrection.
type Correction struct {
	Name         string  `json:"name"`
	AcrossFactor float64 `json:"across_factor"` // of lengths along the short side of the paper
	UpFactor     float64 `json:"up_factor"`     // of lengths along the long side
	// SkewDeg is how far the printer's upright leans to the right, −2 to 2.
	SkewDeg float64 `json:"skew_deg"`
}

// The largest errors that a printer is believed to have. A larger one comes of
// a setting such as “fit to page”, or of a slip in measuring.
const (
	maxPrinterError = 0.05 // of a length
	maxPrinterSkew  = 2.0  // degrees
	// maxDiagonalMm is how far the diagonals may disagree with the rules.
	maxDiagonalMm = 1.0
)

// NewCorrection works out the correction from the readings. It refuses
// readings that are not finite, off by more than 5 % or leaning by more than
// 2°, one diagonal without the other, and diagonals that do not fit the rules
// to within 1 mm.
//
// A parallelogram of the sides w and h, its upright leaning right by θ, has
// the diagonals d² = w² + h² ± 2 w h sin θ, so that the difference of their
// squares gives θ, and their sum tells whether all four readings fit together.
func NewCorrection(name string, r PrinterReadings) (*Correction, error) {
	if err := cmp.Or(believed("across", r.AcrossMm, r.AcrossOfMm), believed("up", r.UpMm, r.UpOfMm)); err != nil {
		return nil, err
	}
	c := &Correction{Name: name, AcrossFactor: r.AcrossOfMm / r.AcrossMm, UpFactor: r.UpOfMm / r.UpMm}
	if r.DiagonalsMm == [2]float64{} {
		return c, nil
	}
	var err error
	if c.SkewDeg, err = r.skewDeg(); err != nil {
		return nil, err
	}
	return c, nil
}

// believed refuses a reading that no printer can have made.
func believed(what string, got, of float64) error {
	if !(of > 0 && of <= part.MaxLengthMm && got > 0 && got <= part.MaxLengthMm) {
		return fmt.Errorf("%s: %v mm of %v mm is no reading", what, got, of)
	}
	if math.Abs(got-of) > maxPrinterError*of {
		return fmt.Errorf("%s: %s mm instead of %s mm is off by %s %%: more than 5 %% is a wrong print setting, another paper or a slip; print at 100 %% and measure again",
			what, words.Trim(got, 3), words.Trim(of, 3), words.Trim(100*(got/of-1), 1))
	}
	return nil
}

// skewDeg is how far the upright leans to the right by the diagonals.
func (r PrinterReadings) skewDeg() (float64, error) {
	d1, d2 := r.DiagonalsMm[0], r.DiagonalsMm[1]
	if d1 == 0 || d2 == 0 {
		return 0, errors.New("skew needs both diagonals")
	}
	of := math.Hypot(r.AcrossOfMm, r.UpOfMm)
	if err := cmp.Or(believed("diagonal 1", d1, of), believed("diagonal 2", d2, of)); err != nil {
		return 0, err
	}
	if want, got := math.Hypot(r.AcrossMm, r.UpMm), math.Sqrt((d1*d1+d2*d2)/2); math.Abs(got-want) > maxDiagonalMm {
		return 0, fmt.Errorf("the diagonals average %s mm and the rules ask for %s mm: one of the four readings is wrong", words.Trim(got, 1), words.Trim(want, 1))
	}
	// The sine of a narrow page may come out over 1, which has no angle either.
	if skew := math.Asin((d1*d1-d2*d2)/(4*r.AcrossMm*r.UpMm)) * 180 / math.Pi; math.Abs(skew) <= maxPrinterSkew {
		return skew, nil
	}
	return 0, fmt.Errorf("the diagonals differ by %s mm: a skew over %s° is a slip in measuring", words.Trim(math.Abs(d1-d2), 1), words.Trim(maxPrinterSkew, 0))
}

// Check refuses a correction that NewCorrection cannot have made: not finite,
// or beyond what a printer does.
func (c *Correction) Check() error {
	least, most := 1/(1+maxPrinterError)-1e-9, 1/(1-maxPrinterError)+1e-9
	if slices.ContainsFunc([]float64{c.AcrossFactor, c.UpFactor}, func(f float64) bool { return !(f >= least && f <= most) }) {
		return fmt.Errorf("%s: the factors must be %.4f to %.4f", c.Text(), least, most)
	}
	if !(math.Abs(c.SkewDeg) <= maxPrinterSkew) {
		return fmt.Errorf("%s: the skew must be at most %v°", c.Text(), maxPrinterSkew)
	}
	return nil
}

// Matrix is the linear map that a drawing is put through, about any point, as
// rows: x' = m[0][0] x + m[0][1] y, y' = m[1][0] x + m[1][1] y. It undoes
// what the printer does: lengths along x by 1/AcrossFactor, along y by
// 1/UpFactor, and y leaning right by the skew.
//
// A sheet that lies on its side is turned by the printer, so its y axis is the
// paper's across; the way it is turned makes no difference.
func (c *Correction) Matrix(onItsSide bool) [2][2]float64 {
	sin, cos := geom.SinCosDeg(c.SkewDeg)
	lean := -c.AcrossFactor * sin / cos
	up := c.UpFactor / cos
	if onItsSide {
		return [2][2]float64{{up, 0}, {-lean, c.AcrossFactor}}
	}
	return [2][2]float64{{c.AcrossFactor, lean}, {0, up}}
}

// Text states the correction, as it is printed on every sheet made with it.
func (c *Correction) Text() string {
	return fmt.Sprintf("printer %s: across ×%.4f, up ×%.4f, skew %s°", c.Name, c.AcrossFactor, c.UpFactor, words.Trim(c.SkewDeg, 2))
}
