package read

import (
	"slices"

	"centrepop/parts"
)

// uniqueNames checks that no two features of a part have the same name.
func (r *reader) uniqueNames(p *parts.Part) {
	first := map[string]parts.Feature{}
	if p.Outline != nil { // a name that stands for the shape, given or not
		first["bore"] = parts.Feature{Name: "bore", Kind: parts.BoreFeature}
	}
	for _, f := range p.Features() {
		was, twice := first[f.Name]
		switch {
		case f.Name == "" || f.Kind == parts.BoreFeature:
			continue
		case !twice:
			first[f.Name] = f
		case f.N > 0: // the other is named so
			r.faultf(was.Pos, "another name", "the name %s stands for number %d of the radial feature in line %d", f.Name, f.N, f.Pos.Line)
		case slices.Contains([]parts.FeatureKind{parts.OutlineFeature, parts.BoreFeature, parts.TopFeature, parts.EndFeature}, was.Kind):
			r.faultf(f.Pos, "another name", "the name %s stands for the %s of the part", f.Name, f.Name)
		case f.Kind == parts.TopFeature:
			r.faultf(was.Pos, "another name", "the name %s stands for the %s of the part", f.Name, f.Name)
		default:
			r.faultf(f.Pos, "a name of its own for each feature", "the name %s is already used in line %d", f.Name, was.Pos.Line)
		}
	}
}
