package words

import (
	"math"
	"slices"
	"strconv"
	"strings"

	"centrepop/layout/plan"
	"centrepop/parts"
	"centrepop/parts/geom"
	"centrepop/parts/seq"
)

// Fixed writes a length in the job's units with the digits of a table: two
// decimals in millimetres, three in inches.
func Fixed(mm float64, units parts.Units) string {
	n := parts.By(units, 2, 3)
	return plainMinus(strconv.FormatFloat(Round(mm/units.Mm(), n), 'f', n, 64))
}

// Readout writes a length in the job's units with the digits of a readout: three
// decimals in millimetres, four in inches.
func Readout(mm float64, units parts.Units) string {
	return plainMinus(strconv.FormatFloat(mm/units.Mm(), 'f', parts.By(units, 3, 4), 64))
}

// PitchCircle writes the circle that holes lie on and its middle, in lengths by size: "PCD 140", "PCD 140 about
// x 30, y -40"; of none nothing.
func PitchCircle(pcdMm float64, about plan.XY, size func(mm float64) string) string {
	switch {
	case pcdMm == 0:
		return ""
	case about == plan.XY{}:
		return "PCD " + size(pcdMm)
	}
	return "PCD " + size(pcdMm) + " about x " + size(about.XMm) + ", y " + size(about.YMm)
}

// Sized is a length as Short has it, with its unit.
func Sized(mm float64, units parts.Units) string { return Short(mm, units) + " " + string(units) }

// Narrow writes a range of lengths as Short has them for a narrow place: "12–14 mm".
func Narrow(r plan.Range, units parts.Units) string {
	return narrow(Short(r.Min, units), Short(r.Max, units), r.Min < 0 || r.Max < 0) + " " + string(units)
}

// NarrowFine is one of hundredths of a millimetre: in micrometres, or in inches to four decimals.
func NarrowFine(r plan.Range, units parts.Units) string {
	per, decimals := parts.By(units, 1e-3, geom.MmPerInch), parts.By(units, 0, 4)
	return narrow(Trim(r.Min/per, decimals), Trim(r.Max/per, decimals), r.Min < 0 || r.Max < 0) + parts.By(units, " µm", " in")
}

// narrow joins the ends of a range, which are one where they read alike.
func narrow(a, b string, minus bool) string {
	switch {
	case a == b:
		return a
	case minus:
		return a + " to " + b
	}
	return a + "–" + b
}

// Angle writes an angle with at most two decimals.
func Angle(deg float64) string { return Trim(deg, 2) + "°" }

// FineAngle writes an angle by which a place round a circle or a mitre is set, to 0.001°.
func FineAngle(deg float64) string { return Trim(deg, 3) + "°" }

// plainMinus writes no minus before zero.
func plainMinus(s string) string {
	if strings.HasPrefix(s, "-") && strings.Trim(s, "-0.") == "" {
		return s[1:]
	}
	return s
}

// KgPerPound is the avoirdupois pound, exact by definition (NIST SP 811).
const KgPerPound = geom.KgPerPound

// mass is a mass in kg in the job's unit, and the name of that.
func (w Writer) mass(kg float64) (value float64, unit string) {
	return kg / parts.By(w.Units, 1, KgPerPound), parts.By(w.Units, " kg", " lb")
}

// Mass writes kilograms with three figures, in an inch job as pounds; 0, that of a material without data, is not known.
func (w Writer) Mass(kg float64) string {
	if kg == 0 {
		return "not known"
	}
	value, unit := w.mass(kg)
	decimals := 3
	switch a := math.Abs(value); {
	case a >= 99.95:
		decimals = 0
	case a >= 9.995:
		decimals = 1
	case a >= 0.9995:
		decimals = 2
	}
	return strconv.FormatFloat(value, 'f', decimals, 64) + unit
}

// RoundMass writes kilograms with at most so many decimals, in an inch job as pounds;
// what would be none of them in grams or ounces.
func (w Writer) RoundMass(kg float64, decimals int) string {
	value, unit := w.mass(kg)
	return Either(kg > 0 && Round(value, decimals) == 0, w.Grams(kg*1000), Trim(value, decimals)+unit)
}

// KgPerOunce is the avoirdupois ounce, a sixteenth of a pound (NIST SP 811).
const KgPerOunce = KgPerPound / 16

// Grams writes a small mass: whole grams, under two in tenths; in an inch job
// hundredths of an ounce.
func (w Writer) Grams(g float64) string {
	switch {
	case w.Units == parts.Inches:
		return Trim(g/1000/KgPerOunce, 2) + " oz"
	case g < 2:
		return Trim(g, 1) + " g"
	}
	return Trim(g, 0) + " g"
}

// Span writes a run of numbers: "7" or "1–6".
func Span(first, count int) string {
	return Either(count <= 1, strconv.Itoa(first), strconv.Itoa(first)+"–"+strconv.Itoa(first+count-1))
}

// Numbers lists numbers, three and more that follow one another as a run: "1, 2, 5–8".
func Numbers(all []int) string {
	var out []string
	for i := 0; i < len(all); {
		n := 1
		for i+n < len(all) && all[i+n] == all[i]+n {
			n++
		}
		if n < 3 {
			n = 1
		}
		out = append(out, Span(all[i], n))
		i += n
	}
	return strings.Join(out, ", ")
}

// EqualChords are chords in the order of their first, those of one length, to a
// nanometre, together.
func EqualChords(chords []plan.Chord) (out [][]plan.Chord) {
	for _, c := range chords {
		i := slices.IndexFunc(out, func(list []plan.Chord) bool { return math.Abs(list[0].CentreMm-c.CentreMm) < 1e-6 })
		if i < 0 {
			i, out = len(out), append(out, nil)
		}
		out[i] = append(out[i], c)
	}
	return out
}

// Pairs are chords by the numbers of their holes: "1–2, 2–3".
func Pairs(chords []plan.Chord) string {
	texts := seq.Map(chords, func(c plan.Chord) string { return strconv.Itoa(c.From) + "–" + strconv.Itoa(c.To) })
	return strings.Join(texts, ", ")
}

// Upper writes a face's name in capitals.
func Upper(f parts.Face) string { return strings.ToUpper(string(f)) }

// Lettered is the span with the letter of a face before each number: "B1–B6".
func Lettered(f parts.Face, first, count int) string {
	letter := Upper(f)[:1]
	return letter + strings.ReplaceAll(Span(first, count), "–", "–"+letter)
}

// LengthWord names the unit of a table's lengths.
func LengthWord(units parts.Units) string { return parts.By(units, "mm", "inches") }
