// Package words writes numbers and names for people: lengths in a job's units,
// limits rounded inward, ranges, torques. It is the only place that turns a
// value into text for sheets, answers and findings.
package words

import (
	"cmp"
	"errors"
	"fmt"
	"math"
	"strconv"
	"strings"
	"unicode"
	"unicode/utf8"

	"centrepop/layout/lookup"
	"centrepop/parts"
	"centrepop/parts/geom"
	"centrepop/parts/seq"
)

// Lower writes the first letter small.
func Lower(s string) string { return first(s, unicode.ToLower) }

// Capital writes the first letter large.
func Capital(s string) string { return first(s, unicode.ToUpper) }

func first(s string, letter func(rune) rune) string {
	for i, r := range s {
		return string(letter(r)) + s[i+utf8.RuneLen(r):]
	}
	return s
}

// Head is a text up to its first comma, with a capital letter.
func Head(s string) string {
	head, _, _ := strings.Cut(s, ",")
	return Capital(head)
}

// Degrees lists angles: "30°, 90°".
func Degrees(angles []float64) string {
	return strings.Join(seq.Map(angles, func(a float64) string { return Trim(a, 2) + "°" }), ", ")
}

// CountOf is "6 × ", or nothing for one.
func CountOf(n int) string {
	if n == 1 {
		return ""
	}
	return strconv.Itoa(n) + " × "
}

// Counted is "1 page", "2 pages".
func Counted(n int, what string) string {
	return Either(n == 1, "1 "+what, strconv.Itoa(n)+" "+what+"s")
}

// Spaced turns a name into text: "bore-back" to "bore back".
func Spaced(name string) string { return strings.ReplaceAll(name, "-", " ") }

// Join joins the texts that are not empty.
func Join(sep string, texts ...string) string {
	kept := seq.Keep(texts, func(t string) bool { return t != "" })
	return strings.Join(kept, sep)
}

// Either is one text, or whatever it is, where something is so, else the other; both are worked out.
func Either[T any](is bool, yes, no T) T {
	if is {
		return yes
	}
	return no
}

// When is a text where something is so, else nothing.
func When(is bool, text string) string { return Either(is, text, "") }

// OrNone is the limits, or that there are none.
func OrNone(limits string) string { return cmp.Or(limits, "no tolerance given") }

// Between writes a range: "12 – 34 kN".
func Between(lo, hi float64, decimals int, unit string) string {
	a, b := Trim(lo, decimals), Trim(hi, decimals)
	if unit == "" {
		return a + " – " + b
	}
	return Either(a == b, a+" "+unit, a+" – "+b+" "+unit)
}

// Writer writes sizes in a job's units.
type Writer struct{ Units parts.Units }

// MmPerInch is exact by definition (international yard and pound agreement, 1959).
const MmPerInch = geom.MmPerInch

// Trim writes a value with at most n decimals and no trailing zeros.
func Trim(v float64, n int) string {
	s := strconv.FormatFloat(Round(v, n), 'f', n, 64)
	if strings.Contains(s, ".") {
		s = strings.TrimRight(strings.TrimRight(s, "0"), ".")
	}
	return Either(s == "-0", "0", s)
}

// Round rounds to n decimals, halves away from 0, forgiving what binary fractions
// take from a half.
func Round(v float64, n int) float64 {
	p := math.Pow10(n)
	return math.Round(float64(v*p)+math.Copysign(1e-7, v)) / p
}

// Short writes a length in the job's units without closing zeros.
func Short(mm float64, units parts.Units) string { return Trim(mm/units.Mm(), parts.By(units, 2, 3)) }

// Size writes a nominal length, or one that follows from drawn ones: "114.3", or
// "1.375 in"; to 0.01 mm, a play or a step of less than a millimetre to 0.001 mm.
func (w Writer) Size(mm float64) string {
	switch {
	case w.Units == parts.Inches:
		return Trim(mm/MmPerInch, 4) + " in"
	case math.Abs(mm) < 1:
		return Trim(mm, 3)
	}
	return Trim(mm, 2)
}

// Said writes a length with its unit, for sentences: "0.5 mm", "0.0197 in".
func (w Writer) Said(mm float64) string { return w.Size(mm) + parts.By(w.Units, " mm", "") }

// Read writes a length as callipers read it: to 0.01 mm or 0.001 in.
func (w Writer) Read(mm float64) string { return Short(mm, w.Units) + parts.By(w.Units, "", " in") }

// Taped writes a length no finer than a tape reads: to 0.1 mm or 0.001 in.
func (w Writer) Taped(mm float64) string { return w.Read(parts.By(w.Units, Round(mm, 1), mm)) }

// Near writes a length of advice, with one figure: "0.3 mm", "0.01 in". It is
// for what nobody measures; a limit is written by Limits.
func (w Writer) Near(mm float64) string { return w.near(mm) + w.unit() }

// About writes such a length as Size does, without its unit in a job in millimetres.
func (w Writer) About(mm float64) string { return w.near(mm) + parts.By(w.Units, "", " in") }

// NearBetween writes two of them: "0.3 to 0.5 mm".
func (w Writer) NearBetween(loMm, hiMm float64) string { return w.near(loMm) + " to " + w.Near(hiMm) }

func (w Writer) near(mm float64) string {
	if mm <= 0 {
		return "0"
	}
	own := mm / w.Units.Mm()
	return Trim(own, max(0, -int(math.Floor(math.Log10(own)))))
}

func (w Writer) unit() string { return parts.By(w.Units, " mm", " in") }

// Even rounds a length that the shop chooses, or that nothing measures finer, to a step
// of the job's unit: stepMm, in an inch job stepIn.
func (w Writer) Even(mm, stepMm, stepIn float64) float64 {
	stepMm = w.Step(stepMm, stepIn)
	return geom.Clean(Round(mm/stepMm, 0) * stepMm)
}

// Rounded rounds a length to so many decimals of a millimetre, in an inch job to two more of an inch.
func (w Writer) Rounded(mm float64, decimals int) float64 {
	step := math.Pow10(-decimals)
	return w.Even(mm, step, step/100)
}

// Up rounds a length up to such a step.
func (w Writer) Up(mm, stepMm, stepIn float64) float64 {
	stepMm = w.Step(stepMm, stepIn)
	return geom.Clean(math.Ceil(mm/stepMm-1e-6) * stepMm)
}

// Down rounds one down likewise.
func (w Writer) Down(mm, stepMm, stepIn float64) float64 {
	stepMm = w.Step(stepMm, stepIn)
	return geom.Clean(math.Floor(mm/stepMm+1e-6) * stepMm)
}

// Step is a length that the shop chooses: so many mm, or so many inches in a job in those; in mm.
func (w Writer) Step(mm, inch float64) float64 { return parts.By(w.Units, mm, inch*MmPerInch) }

// Micrometer names the one that measures a length, by its range: they come by 25 mm, or by the inch (DIN 863-1, ASME
// B89.1.13, both from memory).
func (w Writer) Micrometer(mm float64) string {
	step := w.Step(25, 1)
	from := step * math.Floor(mm/step+1e-9)
	return "micrometer " + Trim(from/w.Units.Mm(), 0) + " – " + Trim((from+step)/w.Units.Mm(), 0) + w.unit()
}

// Room writes the room that a machine takes up: whole millimetres or hundredths of an
// inch, rounded up.
func (w Writer) Room(mm float64) string {
	return parts.By(w.Units, Trim(math.Ceil(Round(mm, 6)), 0), Trim(math.Ceil(Round(mm/MmPerInch*100, 6))/100, 2)+" in")
}

// Dia writes a diameter.
func (w Writer) Dia(mm float64) string { return "Ø" + w.Size(mm) }

// Refused is what a library says that it does not take: without the library's name, its lengths in
// the writer's units.
func (w Writer) Refused(err error) string {
	says := err.Error()
	if r := (*lookup.Refusal)(nil); errors.As(err, &r) && says == r.Error() {
		says = r.In(w.Said)
	}
	return lookup.Bare(says)
}

// Drill writes a drill diameter: in an inch job with the millimetres beside
// it where it is a metric drill and no fraction of an inch, which such a shop has to look
// for.
func (w Writer) Drill(mm float64) string {
	whole := func(v float64) bool { return math.Abs(v-math.Round(v)) < 1e-6 }
	return Either(w.Units == parts.Inches && whole(mm*20) && !whole(mm/MmPerInch*64), w.Dia(mm)+" ("+Trim(mm, 2)+" mm)", w.Dia(mm))
}

// Limits writes two sizes to machine to: "90.000 – 90.035", "59.7 – 60.3". They
// are rounded inward, so that a part within the printed limits is within the
// true ones, to the fewest decimals that cost no more than a tenth of the room
// between them; never finer than 0.01 mm where there is a tenth of a millimetre,
// nor than 0.001 in (common practice, no source).
func (w Writer) Limits(minMm, maxMm float64) string {
	a, b, n, unit := w.inward(minMm, maxMm)
	return fmt.Sprintf("%.*f – %.*f%s", n, a, n, b, unit)
}

// Printed are two limits as Limits writes them, in mm: what is made keeps to those.
func (w Writer) Printed(minMm, maxMm float64) (loMm, hiMm float64) {
	a, b, _, _ := w.inward(minMm, maxMm)
	return a * w.Units.Mm(), b * w.Units.Mm()
}

// ReadLimits writes two sizes between which what is put together comes to lie, as a gauge shows them: "0.03 – 0.42". Nobody
// machines to them, so they are rounded to the nearest, where [Writer.Limits] rounds inward.
func (w Writer) ReadLimits(minMm, maxMm float64) string {
	return w.Read(minMm) + " – " + w.Read(maxMm)
}

// inward are two limits in the job's unit as they are printed, and their decimals.
func (w Writer) inward(minMm, maxMm float64) (a, b float64, n int, unit string) {
	lo, hi, most, coarse := minMm, maxMm, 3, 0.1
	if w.Units == parts.Inches {
		lo, hi, unit, most, coarse = minMm/MmPerInch, maxMm/MmPerInch, " in", 4, 0.01
	}
	for n = most - 2; ; n++ {
		a, b = up(lo, n), -up(-hi, n)
		if n == most || (hi-lo)-(b-a) <= limitLoss*(hi-lo)+1e-9 || n == most-1 && hi-lo >= coarse {
			return a + 0, b + 0, n, unit // no -0
		}
	}
}

// Aim writes a size that is wanted, of limits of which it may be one: inside them as they
// are printed.
func (w Writer) Aim(mm, minMm, maxMm float64) string {
	a, b, n, unit := w.inward(minMm, maxMm)
	if v := mm / w.Units.Mm(); v < a || v > b {
		return Trim(math.Min(math.Max(v, a), b), n) + unit
	}
	return w.Size(mm)
}

// limitLoss is the part of a tolerance that rounding may take.
const limitLoss = 0.1

// up rounds up to n decimals, forgiving what binary fractions add.
func up(v float64, n int) float64 {
	p := math.Pow10(n)
	return math.Ceil(float64(v*p)-1e-6) / p
}

// Setting writes a setting in thousandths of a millimetre, or ten-thousandths of
// an inch: "0.02 mm", "-0.0012 in".
func (w Writer) Setting(mm float64) string {
	return Trim(mm/w.Units.Mm(), parts.By(w.Units, 3, 4)) + w.unit()
}

// Exact writes a measured size with all the digits a micrometer gives.
func (w Writer) Exact(mm float64) string {
	n := parts.By(w.Units, 2, 4)
	return strconv.FormatFloat(Round(mm/w.Units.Mm(), n), 'f', n, 64)
}

// Area writes an area: "22.2 mm²", "0.0344 in²".
func (w Writer) Area(mm2 float64) string {
	return Trim(mm2/(w.Units.Mm()*w.Units.Mm()), parts.By(w.Units, 1, 4)) + w.unit() + "²"
}

// Fine writes a range of micrometres: "12 – 34 µm", in an inch job in inches.
func (w Writer) Fine(loUm, hiUm float64) string {
	return parts.By(w.Units, Between(loUm, hiUm, 1, "µm"), Between(loUm/1000/MmPerInch, hiUm/1000/MmPerInch, 4, "in"))
}

// NmPerPoundFoot is a pound-force foot in newton metres: 0.45359237 kg,
// standard gravity, 0.3048 m, exact by definition and rounded (NIST SP 811).
const NmPerPoundFoot = 1.3558179483

// NPerPound is a pound-force in newtons: 0.45359237 kg, standard gravity, exact by
// definition and rounded (NIST SP 811).
const NPerPound = 4.4482216153

// TorqueUnit is the unit of the wrench for a torque, with its newton metres: in an inch
// job pound inches under ten pound feet (common practice, no source).
func (w Writer) TorqueUnit(nm float64) (unit string, perNm float64) {
	switch {
	case w.Units != parts.Inches:
		return "N m", 1
	case nm < 10*NmPerPoundFoot:
		return "lb in", NmPerPoundFoot / 12
	}
	return "lb ft", NmPerPoundFoot
}

// Torque is a torque as the job's wrench shows it: "38 N m", in an inch job "28
// lb ft (38 N m)" or "44 lb in (5 N m)".
func (w Writer) Torque(nm float64) string { return w.Torques(nm, nm) }

// Torques is a range of torques.
func (w Writer) Torques(lo, hi float64) string { return w.torques(lo, hi, (lo+hi)/2) }

// TorqueAs is a torque in the unit in which another is read: one wrench does both.
func (w Writer) TorqueAs(nm, readNm float64) string { return w.torques(nm, nm, readNm) }

func (w Writer) torques(lo, hi, readNm float64) string {
	unit, per := w.TorqueUnit(readNm)
	return w.beside(between(lo/per, hi/per, unit), between(lo, hi, "N m"))
}

// Heat is a temperature, in an inch job in Fahrenheit first: "230 °F (110 °C)".
func (w Writer) Heat(celsius float64) string { return w.Heats(celsius, celsius) }

// Heats is a range of temperatures.
func (w Writer) Heats(lo, hi float64) string {
	return w.beside(w.HeatsRead(lo, hi), Between(lo, hi, 0, "°C"))
}

// HeatsRead is the same in the job's own unit alone, as it is read off.
func (w Writer) HeatsRead(lo, hi float64) string {
	return parts.By(w.Units, Between(lo, hi, 0, "°C"), Between(lo*9/5+32, hi*9/5+32, 0, "°F"))
}

// beside puts the metric text in brackets behind that of an inch job.
func (w Writer) beside(text, metric string) string {
	return parts.By(w.Units, metric, text+" ("+metric+")")
}

// MPaPerPsi is a pound-force per square inch in megapascals: NPerPound over a square
// inch, rounded (NIST SP 811).
const MPaPerPsi = 0.00689475729

// Stresses is a range of stresses or pressures in MPa with that many decimals, in an
// inch job to as many tens of pounds per square inch: "360 – 1100 psi".
func (w Writer) Stresses(lo, hi float64, decimals int) string {
	if w.Units == parts.Inches {
		step := 100 * math.Pow(10, -float64(decimals))
		psi := func(mpa float64) float64 { return math.Round(mpa/MPaPerPsi/step) * step }
		return Between(psi(lo), psi(hi), 0, "psi")
	}
	return Between(lo, hi, decimals, "MPa")
}

// between is a range in whole units, of small ones in tenths.
func between(lo, hi float64, unit string) string {
	const small = 3
	decimals := 0
	if hi < small {
		decimals = 1
	}
	return Between(lo, hi, decimals, unit)
}

// Force is a force in newtons to kilonewtons with that many decimals, in an inch
// job to as many tens of pounds first: "180 lbf (0.8 kN)".
func (w Writer) Force(n float64, decimals int) string { return w.Forces(n, n, decimals) }

// Forces is a range of forces.
func (w Writer) Forces(lo, hi float64, decimals int) string {
	return w.beside(w.ForcesRead(lo, hi, decimals), Between(lo/1000, hi/1000, decimals, "kN"))
}

// NarrowForces is the same for a narrow place: "12–34 kN".
func (w Writer) NarrowForces(lo, hi float64, decimals int) string {
	return strings.ReplaceAll(w.ForcesRead(lo, hi, decimals), " – ", "–")
}

// ForcesRead is the same in the job's own unit alone, as a press shows it.
func (w Writer) ForcesRead(lo, hi float64, decimals int) string {
	if w.Units == parts.Inches {
		step := 100 * math.Pow(10, -float64(decimals))
		pounds := func(n float64) float64 { return math.Round(n/NPerPound/step) * step }
		return Between(pounds(lo), pounds(hi), 0, "lbf")
	}
	return Between(lo/1000, hi/1000, decimals, "kN")
}
