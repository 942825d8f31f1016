package read

import "centrepop/parts"

// ParsePart reads one part file. The name file is used in places, and units
// are those of bare numbers unless the file has its own: Inches, or else
// Millimetres. It returns a part
// that is complete in itself, or Errors; references to other parts are checked
// by Load.
func ParsePart(file string, src []byte, units parts.Units) (*parts.Part, error) {
	if units != parts.Inches {
		units = parts.Millimetres
	}
	s, p := parsePart(file, src, units)
	if len(s.errs) > 0 {
		return nil, s.sorted()
	}
	return p, nil
}
