package words

import "centrepop/layout/lookup"

// NoSource marks what is only common practice.
const NoSource = "common practice, no source"

// Cited is how a row of a table gives its source: by the standard, which is named once under the
// table without what of it, or by what it has instead. Neither is what comes from the tolerance that
// the whole table names. How sure a standard's number is stands in the appendix.
func Cited(s lookup.Source, tolerance string) (standard, other string) {
	s.Of = ""
	switch {
	case s.Name == "", s.Name == tolerance:
		return "", When(s == lookup.NoSource, NoSource)
	case s.Told:
		return "", s.String()
	case s.State == lookup.FromMemory:
		return s.Name, ""
	}
	return s.String(), ""
}
