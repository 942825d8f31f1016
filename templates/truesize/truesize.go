package truesize

import (
	"centrepop/layout/plan"
	"centrepop/parts"
	"centrepop/templates/draw"
	"centrepop/templates/figures"
)

// A TooLargeError says that a drawing at 1:1 needs more than maxTiles sheets.
type TooLargeError struct {
	Part string // the part's name
	what string
}

// Error names the part, its size and the paper.
func (e *TooLargeError) Error() string { return e.what + ": choose larger paper" }

// Chapters are all 1:1 sheets of a part: its faces, then what is
// wrapped or developed.
func Chapters(pl *plan.Plan, part *plan.PartPlan, paper draw.Frame) ([]draw.Chapter, error) {
	var chapters []draw.Chapter
	for _, face := range part.Faces {
		c, err := punchChapter(pl, part, face, paper)
		if err != nil {
			return nil, err
		}
		chapters = append(chapters, c)
	}
	flat, err := patternChapters(pl, part, paper)
	return append(chapters, flat...), err
}

// PunchName is the name of a face's template.
func PunchName(face parts.Face) string { return "Punch template, " + figures.Upper(face) + " face" }
