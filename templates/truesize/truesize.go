package truesize

import (
	"fmt"

	"centrepop/layout/plan"
	"centrepop/layout/words"
	"centrepop/parts"
	"centrepop/templates/draw"
)

// Policy is which templates are printed.
type Policy uint8

// The policies: those that the plan does not call needless, every one, none.
const (
	Useful Policy = iota
	All
	None
)

// A TooLargeError says that a drawing at 1:1 needs more than maxTiles sheets.
type TooLargeError struct {
	Part string // the part's name
	what string
}

// Error names the part, its size and the paper.
func (e *TooLargeError) Error() string { return e.what + ": choose larger paper" }

// tooLarge is the error for a template that no way fits.
func (t *template) tooLarge(paper draw.Frame) error {
	w, h := t.ends[0][1]-t.ends[0][0], t.ends[1][1]-t.ends[1][0]
	return &TooLargeError{t.part.Name, fmt.Sprintf("%s: a template of %s × %s mm needs more than %d sheets of %s",
		t.where, words.Trim(w, 1), words.Trim(h, 1), maxTiles, paper.Name)}
}

// templatesOf are the templates of a part that the policy keeps.
func templatesOf(pl *plan.Plan, part *plan.PartPlan, which Policy) ([]*template, error) {
	var out []*template
	if which == None {
		return nil, nil
	}
	for _, face := range part.Faces {
		t, err := newPunch(pl, part, face, which == All)
		if err != nil {
			return nil, err
		}
		if which == All || face.NoTemplate == "" {
			out = append(out, t)
		}
	}
	for i := range part.Developments {
		dev := &part.Developments[i]
		t, err := newPattern(pl, part, dev)
		if err != nil {
			return nil, err
		}
		if which == All || dev.NoTemplate == "" {
			out = append(out, t)
		}
	}
	return out, nil
}

// PunchName is the name of a face's template.
func PunchName(face parts.Face) string { return "Punch template, " + words.Upper(face) + " face" }
