package templates

import (
	"slices"

	"centrepop/layout"
	"centrepop/layout/review"
	"centrepop/parts"
	"centrepop/templates/draw"
	"centrepop/templates/truesize"
)

// Options choose the paper. The zero value takes the plan's paper, and A4 if
// the plan names none.
type Options struct {
	// Paper is the sheet, at least 140 mm by 200 mm and at most 2 m; it is
	// used upright, and on its side where a template then needs fewer sheets.
	Paper parts.Paper
	// Printer is the correction of the printer the sheets are for; nil draws
	// them as they are. The sheets keep the paper's margins, so a printer that
	// prints small leaves them less room.
	Printer *layout.Correction
	// Findings are those of the review, for the cover and the review's pages;
	// nil if the plan was not reviewed, empty if nothing was found.
	Findings []review.Finding
	// Held are the names of the parts that are not released, whose sheets are
	// stamped.
	Held []string
	// Press takes over the drawing of each sheet as soon as it is laid out,
	// so that the drawings need not be kept until all sheets are; nil keeps
	// them. It is called on several goroutines at once.
	Press func(*draw.Drawing) (draw.Pressed, error)
	// For leaves out what another reader of the packet needs; empty is for all.
	For Reader
	// Parts are the names of the parts whose sheets are printed, none of the
	// assembly then; all and the assembly if there are none.
	Parts []string
	// Templates says which 1:1 templates are printed.
	Templates truesize.Policy
	// TwoSided lays the packet out for both sides of the paper: each template on an
	// odd page, with nothing on its back.
	TwoSided bool
	// Since prints only what differs from an earlier state; nil prints all.
	Since *Since
	// Apart gives every template sheets of its own, where Templates draws them
	// alone.
	Apart bool
	// Kept are the sheets of the packet before; those of parts and templates that
	// are drawn from equal values stay as they were. Not together with Press.
	Kept *draw.Kept
}

// Reader is who a packet is for.
type Reader string

// The readers: who makes the parts, who joins them, who checks before either.
const (
	Machinist  Reader = "machinist"
	Fabricator Reader = "fabricator"
	Reviewer   Reader = "reviewer"
)

// wants tells whether a packet for this reader has what the other is for.
func (r Reader) wants(of ...Reader) bool { return r == "" || slices.Contains(of, r) }
