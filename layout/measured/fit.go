package measured

import (
	"math"
	"slices"
)

// Fit works out the circle and every hole of a survey. The error is an
// *InputError for values or readings that cannot be used, and an
// *Inconsistent where readings contradict each other by more than their
// uncertainties allow.
func Fit(s Survey) (*Result, error) {
	if err := s.check(); err != nil {
		return nil, err
	}
	start := s.start()
	f, scatter, err := s.fit(start)
	if err != nil {
		return nil, &InputError{Code: Undetermined, Reading: -1, Hole: s.leastMeasured()}
	}
	if !f.agrees() {
		return nil, s.suspects(start, f)
	}
	if i, ok := f.ordered(); !ok {
		return nil, &InputError{Code: NotClockwise, Reading: -1, Hole: i + 1}
	}
	out := s.result(f)
	out.ScatterMm = scatter
	return out, s.shape(out, f, start)
}

// result writes a fit out in degrees and millimetres.
func (s Survey) result(f *fitted) *Result {
	u := f.sure()
	mean := map[int]float64{0: 1} // the radius, whatever of it is in the offsets
	for i := range f.n {
		mean[f.offAt(i)] = 1 / float64(f.n)
	}
	out := &Result{
		PCDMm: 2 * f.p[0], PCDUMm: 2 * u(mean),
		Redundancy: f.redundancy, ChiSquare: f.chi, Coverage: Coverage, Holes: s.holes(f),
	}
	for _, h := range out.Holes {
		if math.Abs(h.OffEqualMm) > math.Abs(out.EqualOffMm) || out.EqualHole == 0 {
			out.EqualHole, out.EqualOffMm = h.N, h.OffEqualMm
		}
		if math.Abs(h.OffCircleMm) > math.Abs(out.CircleOffMm) || out.CircleHole == 0 {
			out.CircleHole, out.CircleOffMm = h.N, h.OffCircleMm
		}
	}
	if s.Spigot.Mm > 0 {
		out.SpigotMm, out.SpigotUMm = f.p[f.spigotAt()], u(map[int]float64{f.spigotAt(): 1})
	}
	if at := f.centreAt(); slices.Contains(f.active, at) {
		// The offset turns with the pattern, clockwise.
		sin, cos := math.Sincos(s.turn(f))
		ex, ey := f.p[at], f.p[at+1]
		out.Centred = &Offset{XMm: ex*cos + ey*sin, YMm: -ex*sin + ey*cos,
			UMm: math.Max(u(map[int]float64{at: 1}), u(map[int]float64{at + 1: 1}))}
	}
	for k, o := range f.obs {
		if o.watch == onCircle {
			continue
		}
		r := Residual{MeasuredMm: o.mm, FittedMm: o.mm - f.residuals[k], OffMm: f.residuals[k], Entry: o.entry}
		if f.spread[k] > 0 {
			r.Normalised = f.residuals[k] / f.spread[k]
		}
		out.Residuals = append(out.Residuals, r)
	}
	return out
}

// sure gives the standard uncertainty of a sum of parameters, each times a
// factor. Readings that scatter more than they claim make all less sure.
func (f *fitted) sure() func(factors map[int]float64) float64 {
	scale := 1.0
	if f.redundancy > 0 {
		scale = math.Max(1, math.Sqrt(f.chi/float64(f.redundancy)))
	}
	return func(factors map[int]float64) float64 { return scale * math.Sqrt(f.variance(factors)) }
}

// turn carries the angles of the fit to the clock, in radians.
func (s Survey) turn(f *fitted) float64 { return s.FirstDeg*math.Pi/180 - f.angle(0) }

// holes writes out every hole.
func (s Survey) holes(f *fitted) []HoleResult {
	u := f.sure()
	off := make([]float64, f.n)
	mean := 0.0
	for i := range f.n {
		off[i] = f.angle(i) - 2*math.Pi*float64(i)/float64(f.n)
		mean += off[i] / float64(f.n)
	}
	var out []HoleResult
	for i := range f.n {
		r := f.radius(i)
		arcU := u(map[int]float64{f.angleAt(i): r / f.arc})
		radiusU := u(map[int]float64{0: 1, f.offAt(i): 1})
		angle := f.angle(i) + s.turn(f)
		sin, cos := math.Sincos(angle)
		deg := math.Mod(angle*180/math.Pi, 360)
		if deg < -1e-9 {
			deg += 360
		}
		out = append(out, HoleResult{
			N: i + 1, AngleDeg: math.Abs(deg), AngleUDeg: arcU / r * 180 / math.Pi,
			RadiusMm: r, RadiusUMm: radiusU,
			XMm: r * sin, YMm: r * cos, PlaceUMm: math.Max(arcU, radiusU),
			DiameterMm: f.p[f.diaAt(i)], DiaUMm: u(map[int]float64{f.diaAt(i): 1}),
			OffCircleMm: r - f.p[0], OffEqualMm: (off[i] - mean) * f.p[0],
		})
	}
	return out
}

// shape judges whether the holes are equally spaced and on one circle.
func (s Survey) shape(out *Result, f *fitted, start state) error {
	equal, err := equalFit(start, f.obs)
	if err != nil {
		return err
	}
	out.Equal = equal.chi-f.chi <= chiQuantile(1-shapeDoubt, f.n-1)
	circle, err := adjust(start, s.observations(noScatterMm), false)
	if err != nil {
		return err
	}
	out.OneCircle = f.n == 3 || circle.chi-f.chi <= chiQuantile(1-shapeDoubt, f.n-3)
	return nil
}
