package words

import (
	"slices"
	"strings"
)

// NoSource marks what is only common practice.
const NoSource = "common practice, no source"

// Cited is how a row of a table gives its source: by the standard, which is named once under the
// table without its clause, or by what it has instead. Neither is what comes from the tolerance that
// the whole table names.
func Cited(source, tolerance string) (standard, other string) {
	source, _, _ = strings.Cut(source, ";")
	if tolerance != "" && strings.HasPrefix(source, tolerance) {
		return "", ""
	}
	if !slices.ContainsFunc([]string{"ISO ", "ASME ", "DIN ", "EN ", "BS "}, func(body string) bool { return strings.HasPrefix(source, body) }) {
		return "", source
	}
	standard, _, _ = strings.Cut(source, ", from memory") // its state stands in the appendix
	standard, _, _ = strings.Cut(standard, " (")
	return standard, ""
}
