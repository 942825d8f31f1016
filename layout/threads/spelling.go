package threads

import (
	"strconv"
	"strings"
)

// spellings turns the ways of writing one sign into the one used here. The
// input is lower case already.
var spellings = strings.NewReplacer(
	"×", "x", "*", "x", "½", " 1/2", "¼", " 1/4", "¾", " 3/4",
	"⅛", " 1/8", "⅜", " 3/8", "⅝", " 5/8", "⅞", " 7/8",
	"⁄", "/", "–", "-", "−", "-", "\"", " ", "″", " ", "''", " ", "\u00a0", " ",
)

// spaceless takes out what separates the pieces of a designation.
var spaceless = strings.NewReplacer(" ", "", "-", "")

// plain reduces a spelling to what counts when comparing: lower case, no
// spaces or hyphens.
func plain(s string) string { return spaceless.Replace(spellings.Replace(strings.ToLower(s))) }

// decimal reads digits with at most one point or comma; no sign, exponent,
// NaN or Inf. Values above 10000 are refused.
func decimal(s string) (float64, bool) {
	s = strings.Replace(strings.TrimSpace(s), ",", ".", 1)
	for _, r := range s {
		if (r < '0' || r > '9') && r != '.' {
			return 0, false
		}
	}
	x, err := strconv.ParseFloat(s, 64)
	return x, err == nil && x <= 10000
}

// unknown is the error of a designation with nothing to go by.
func unknown(designation, why string) *UnknownError {
	return &UnknownError{Designation: designation, Why: why}
}

// sizeAndTPI reads a size and its threads per inch, 0 where none are said: "1 3/8-6", "no. 10-24",
// "1 1/2-11 1/2". It is not ok where anything else stands there.
func sizeAndTPI(text string) (size string, tpi float64, ok bool) {
	if rest, number := strings.CutPrefix(text, "no."); number {
		text = "#" + strings.TrimSpace(rest)
	}
	fields := strings.FieldsFunc(text, func(r rune) bool { return r == ' ' || r == '-' })
	if len(fields) > 0 {
		size, fields = fields[0], fields[1:]
	}
	if len(fields) > 0 && strings.Contains(fields[0], "/") {
		size, fields = size+" "+fields[0], fields[1:]
	}
	if len(fields) > 0 {
		if tpi, ok = decimal(fields[0]); !ok || tpi == 0 {
			return "", 0, false
		}
		fields = fields[1:]
	}
	if len(fields) > 0 && fields[0] == "1/2" {
		tpi, fields = tpi+0.5, fields[1:]
	}
	return size, tpi, len(fields) == 0
}
