package threads

import (
	"cmp"
	"fmt"
	"math"
	"slices"
	"sort"
	"strings"

	"centrepop/parts/meant"
	"centrepop/parts/seq"
)

// An UnknownError says that a designation names no thread known here.
type UnknownError struct {
	Designation string   // as given, shortened when very long
	Why         string   // what is wrong with it; may be empty
	nearest     []string // where what was recognised of it gives them
}

// Error names the designation, the reason and the nearest known threads.
func (e *UnknownError) Error() string {
	return fmt.Sprintf("threads: %q: %s; nearest: %s", e.Designation, cmp.Or(e.Why, "not a known thread"), strings.Join(e.Nearest(), ", "))
}

// Nearest are known designations, best first, never none: where nothing else gives them,
// the three whose spelling is nearest. They are looked for when someone asks, as most of
// what is no thread is never read.
func (e *UnknownError) Nearest() []string {
	if e.nearest != nil {
		return e.nearest
	}
	nearest := meant.Sorted(plain(e.Designation), All(), func(t Thread) string { return plain(t.Designation) })
	return seq.Map(nearest[:3], func(t Thread) string { return t.Designation })
}

// maxDesignation is the longest designation that is looked at, in bytes.
const maxDesignation = 48

// Parse reads a thread designation. Case and spaces do not matter, and × or *
// may stand for x. It takes metric threads "M10", "M10x1.25" (also with the
// coarse pitch written out), pipe threads "G1/2", "G1 1/4", "G1-1/4", "R1/2",
// "Rc1/2", "Rp1/2", "1/2-14 NPT", "1/2 NPT", and Unified threads "1/2-13 UNC", "1/2 UNC", "1/2-13",
// "#10-24 UNC", "10-24 UNC", "0.500-13 UNC", "4-8 UN", "1.563-18 UNS",
// trapezoidal threads "Tr20x4", "Tr24x10P5 LH", "Tr30x6-8e" and Acme threads "3/4-6 ACME", "1-5 ACME-3G LH", "1-5 ACME 2 start". Anything else gives an
// *UnknownError naming the nearest known threads, and a zero Thread.
func Parse(designation string) (Thread, error) {
	if len(designation) > maxDesignation {
		return Thread{}, unknown(strings.ToValidUTF8(designation[:maxDesignation], "")+"...", "too long")
	}
	text := strings.ToLower(strings.TrimSpace(designation))
	text = strings.Join(strings.Fields(spellings.Replace(text)), " ")
	if text == "" {
		return Thread{}, unknown(designation, "empty")
	}
	if rest, ok := strings.CutPrefix(text, "tr"); ok {
		return parseTr(designation, rest)
	}
	if before, behind, ok := strings.Cut(text, "acme"); ok {
		return parseAcme(designation, before, behind)
	}
	if right, ok := strings.CutSuffix(text, "lh"); ok {
		return parseLeft(designation, right)
	}
	if rest, ok := strings.CutPrefix(text, "m"); ok {
		return parseMetric(designation, strings.TrimSpace(rest))
	}
	for _, series := range []string{PipeRc, PipeRp, PipeR, PipeG} { // R last of its kind: it is a prefix of the others
		if rest, ok := strings.CutPrefix(text, strings.ToLower(series)); ok {
			return parsePipe(designation, series, rest)
		}
	}
	for _, cut := range []func(s, affix string) (string, bool){strings.CutSuffix, strings.CutPrefix} {
		if rest, ok := cut(text, "npt"); ok {
			return parseNPT(designation, rest)
		}
	}
	return parseUnified(designation, text)
}

// parseLeft reads the thread that is told to be left-handed, of a kind that is known so.
func parseLeft(designation, right string) (Thread, error) {
	t, err := Parse(strings.TrimRight(right, " -"))
	if err != nil {
		return Thread{}, err
	}
	if strings.HasPrefix(t.Designation, "G") || strings.HasPrefix(t.Designation, "R") || t.Taper || t.LeftHand {
		return Thread{}, &UnknownError{Designation: designation, Why: "a left hand is known of metric, Unified and lead-screw threads alone", nearest: []string{t.Designation}}
	}
	t.Designation, t.LeftHand = handed(t.Designation, true), true
	return t, nil
}

// parseMetric reads what follows the M: diameter, or diameter x pitch.
func parseMetric(designation, text string) (Thread, error) {
	first, second, hasPitch := strings.Cut(text, "x")
	d, ok := decimal(first)
	if !ok {
		return Thread{}, unknown(designation, "the diameter is not a number")
	}
	pitch := 0.0
	if hasPitch {
		if pitch, ok = decimal(second); !ok || pitch == 0 {
			return Thread{}, unknown(designation, "the pitch is not a number above zero")
		}
	}
	for _, row := range metricRows {
		if row.d != d {
			continue
		}
		if !hasPitch && row.coarse == 0 {
			return Thread{}, &UnknownError{designation, "this diameter has no coarse pitch: write the pitch", pitchesOf(row)}
		}
		if !hasPitch || pitch == row.coarse {
			return metricThread(row, row.coarse), nil
		}
		for _, p := range row.fine {
			if p == pitch {
				return metricThread(row, p), nil
			}
		}
		return Thread{}, &UnknownError{designation, "not a pitch of this diameter in ISO 261", pitchesOf(row)}
	}
	return Thread{}, &UnknownError{designation, "not a diameter of ISO 261", metricNear(d)}
}

// pitchesOf lists all designations of one diameter, coarse first.
func pitchesOf(row metricRow) []string {
	var list []string
	if row.coarse > 0 {
		list = append(list, metricThread(row, row.coarse).Designation)
	}
	list = append(list, seq.Map(row.fine, func(p float64) string { return metricThread(row, p).Designation })...)
	return list
}

// metricNear lists the nearest diameter below and above, nearer first.
func metricNear(d float64) []string {
	i := sort.Search(len(metricRows), func(i int) bool { return metricRows[i].d >= d })
	switch {
	case i == 0:
		return pitchesOf(metricRows[0])[:1]
	case i == len(metricRows):
		return pitchesOf(metricRows[i-1])[:1]
	}
	below, above := pitchesOf(metricRows[i-1])[0], pitchesOf(metricRows[i])[0]
	if metricRows[i].d-d < d-metricRows[i-1].d {
		return []string{above, below}
	}
	return []string{below, above}
}

// parsePipe reads the size after G, R, Rc or Rp.
func parsePipe(designation, series, text string) (Thread, error) {
	size := strings.Join(strings.FieldsFunc(text, func(r rune) bool { return r == ' ' || r == '-' }), " ")
	if size == "" {
		return Thread{}, unknown(designation, "the size is missing")
	}
	for _, row := range pipeRows {
		if row.size != size {
			continue
		}
		if t, ok := pipeThread(series, row); ok {
			return t, nil
		}
		return Thread{}, unknown(series+row.size, "ISO 7-1 does not have this size")
	}
	return Thread{}, unknown(designation, "not a pipe thread size")
}

// parseNPT reads a size, with or without its threads per inch.
func parseNPT(designation, text string) (Thread, error) {
	text = strings.NewReplacer("11 1/2", "11.5", "11-1/2", "11.5").Replace(text)
	for _, row := range nptRows {
		t := nptThread(row)
		if given := plain(text); given == plain(row.size) || given+"npt" == plain(t.Designation) {
			return t, nil
		}
	}
	return Thread{}, unknown(designation, "not a size of ASME B1.20.1 from 1/16 to 4 with its threads per inch")
}

// parseUnified reads a size with threads per inch, series, or both, and a class behind them: "-2A", " 3b".
func parseUnified(designation, text string) (Thread, error) {
	text, series, class := ending(text)
	size, tpi, ok := sizeAndTPI(text)
	if !ok {
		return Thread{}, unknown(designation, "")
	}
	switch {
	case tpi == 0 && (series == UnifiedUN || series == UnifiedUNS):
		return Thread{}, &UnknownError{designation, "this series needs its threads per inch", ofSize(size, tpi)}
	case series == "" && tpi == 0:
		why := "no thread series: add UNC, UNF or threads per inch, or start with M, Tr, G, R, Rc or Rp, or end with NPT or ACME"
		if strings.Contains(size, "/") {
			return Thread{}, &UnknownError{designation, why, ofSize(size, tpi)}
		}
		return Thread{}, unknown(designation, why) // of a whole number of inches or millimetres
	}
	for _, u := range atSize(size) {
		if (series == "" || series == u.Series || series == UnifiedUN) && (tpi == 0 || tpi == u.TPI) {
			u.Class = class
			return u.Thread, nil
		}
	}
	why := "not a thread of UNC, UNF, UNEF, the UN series of 4 to 32 per inch, or bearing lock nuts"
	return Thread{}, &UnknownError{designation, why, ofSize(size, tpi)}
}

// ending is the series and the class that a Unified thread ends in, and what stands before them; empty where it has none.
func ending(text string) (rest, series, class string) {
	if n := len(text) - 2; n > 0 && strings.Contains(" -", text[n-1:n]) && classShares[strings.ToUpper(text[n:])] > 0 {
		text, class = strings.TrimRight(text[:n], " -"), strings.ToUpper(text[n:])
	}
	for _, s := range []string{UnifiedUNC, UnifiedUNF, UnifiedUNS, UnifiedUNEF, UnifiedUN} {
		if rest, ok := strings.CutSuffix(text, strings.ToLower(s)); ok {
			return rest, s, class
		}
	}
	return text, "", class
}

// atSize are the threads of a size. A bare number is inches if that exists and a numbered
// size if not: 1-8 is one inch, 10-24 is #10.
func atSize(size string) (list []sized) {
	inch, isDecimal := decimal(size)
	isDecimal = isDecimal && strings.Contains(size, ".")
	for _, is := range []func(*sized) bool{
		func(u *sized) bool { return u.size == size },
		func(u *sized) bool { return len(u.size) > 1 && u.size[0] == '#' && u.size[1:] == size },
		func(u *sized) bool { return isDecimal && math.Abs(u.inches-inch) < 0.0006 },
	} {
		for u := range seq.Refs(unified()) {
			if is(u) {
				list = append(list, *u)
			}
		}
	}
	return list
}

// ofSize are the designations of a size, at most three, nearest in threads per inch first;
// nil where there is no such size.
func ofSize(size string, tpi float64) (out []string) {
	list := atSize(size)
	if len(list) > 0 { // what is written otherwise too: 1.563 beside 1 9/16
		list = append(list, atSize(fmt.Sprintf("%.4f", list[0].inches))...)
	}
	slices.SortStableFunc(list, func(a, b sized) int { return cmp.Compare(math.Abs(a.TPI-tpi), math.Abs(b.TPI-tpi)) })
	for _, u := range list {
		if len(out) < 3 && !slices.Contains(out, u.Designation) {
			out = append(out, u.Designation)
		}
	}
	return out
}
