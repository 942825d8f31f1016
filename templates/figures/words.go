package figures

import (
	"strings"

	"centrepop/parts"
)

// Upper writes a face's name in capitals.
func Upper(f parts.Face) string { return strings.ToUpper(string(f)) }

// LengthWord names the unit of a table's lengths.
func LengthWord(units parts.Units) string {
	if units == parts.Inches {
		return "inches"
	}
	return "mm"
}
