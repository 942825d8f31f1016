package keys

import (
	"math"
	"sort"

	"centrepop/layout/fits"
	"centrepop/layout/lookup"
)

// Of returns a key of a given width and height in mm in a diameter in mm that
// need not be its own. An inch key is cut to the formula of ASME B17.1; of
// metric ones DIN 6885-1 has the depths only of its own sections. It errs with
// a *lookup.RangeError for a width that is not below the diameter, and with a
// *lookup.UnknownError for a section that the standard has not.
func Of(diameterMm, widthMm, heightMm float64, inch bool) (Parallel, error) {
	if err := lookup.Length("key width", widthMm, 0, lookup.Under(diameterMm)); err != nil {
		return Parallel{}, err
	}
	if inch {
		return inchKey(diameterMm/mmPerInch, widthMm/mmPerInch, heightMm/mmPerInch, lookup.Checked), nil
	}
	for _, r := range din6885 {
		if math.Abs(r.width-widthMm) > closeMm || math.Abs(r.height-heightMm) > closeMm {
			continue
		}
		p, err := For(r.upTo)
		p.ShaftAcrossMm, p.HubAcrossMm = diameterMm-p.ShaftDepthMm, diameterMm+p.HubDepthMm
		return p, err
	}
	return Parallel{}, &lookup.UnknownError{What: "key section", Value: "not of DIN 6885-1"}
}

// inchWider is how much wider than its key an inch keyway may be, by width up
// to, inches: class 1 of ASME B17.1-1967, square keys, as engineersedge.com prints it ("Design
// Fits for Parallel and Taper Keys").
var inchWider = []struct{ upTo, wider float64 }{{0.5, 0.002}, {1, 0.003}, {3.5, 0.004}}

// Keyway returns the limits of one keyway's width, usual fit: of the hub, else
// of the shaft. A metric one has the classes of Normal; an inch one is as wide
// as its key or wider by ASME B17.1 class 1, for a Woodruff key ASME B17.2. It errs with a *lookup.RangeError
// for an inch key over 3-1/2 in wide.
func (p Parallel) Keyway(hub bool) (fits.Limits, lookup.Source, error) {
	if p.Standard == inchDiscs {
		return inchSeat(p.WidthMm, hub)
	}
	if p.metric() {
		w, err := p.Widths(Normal)
		side := w.Shaft
		if hub {
			side = w.Hub
		}
		source := lookup.Source{Name: p.Standard + ", ISO 286-1 " + side.Class, State: p.Source.State}
		if p.Standard == metricDiscs {
			source.State = lookup.FromMemory
		}
		return side, source, err
	}
	if err := lookup.Length("key width", p.WidthMm, 0, 3.5*mmPerInch); err != nil {
		return fits.Limits{}, lookup.Source{}, err
	}
	i := sort.Search(len(inchWider), func(i int) bool { return p.WidthMm/mmPerInch <= inchWider[i].upTo+1e-9 })
	wider := inchWider[i].wider * mmPerInch
	return fits.Limits{NominalMm: p.WidthMm, MinMm: p.WidthMm, MaxMm: p.WidthMm + wider, UpperUm: wider * 1000, Hole: true},
		lookup.Source{Name: "ASME B17.1-1967 class 1", State: lookup.Checked}, nil
}
