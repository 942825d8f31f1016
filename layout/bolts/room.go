package bolts

import (
	"fmt"
	"math"
	"strings"

	"centrepop/layout/lookup"
)

// A Tool is what tightens the bolt.
type Tool string

const (
	ToolNone   Tool = "none"        // only the head and washer need room
	ToolSocket Tool = "socket"      // hand socket on a hexagon
	ToolRing   Tool = "ring"        // ring (box-end) spanner on a hexagon
	ToolOpen   Tool = "open"        // open-end spanner on a hexagon
	ToolHexKey Tool = "hexagon-key" // key in a socket head: inside the head
)

// ToolRadiusMm returns the room a tool needs around the bolt axis in mm for
// the across-flats size in mm: socket (1.25 s + 3)/2, ring (1.45 s + 2)/2,
// open end (2.1 s + 3)/2, nothing for a hexagon key. These fit the hand tools
// seen in workshops; common practice, no source. The swing of the handle is
// not in it. It is an error for an unknown tool or, where the tool
// goes round it, a size that is not positive and finite.
func ToolRadiusMm(tool Tool, acrossFlatsMm float64) (float64, error) {
	if tool == ToolNone || tool == ToolHexKey { // number sizes have no hexagon
		return 0, nil
	}
	if !finite(acrossFlatsMm) || acrossFlatsMm <= 0 {
		return 0, fmt.Errorf("bolts: across flats must be a positive number of mm, not %v", acrossFlatsMm)
	}
	switch tool {
	case ToolSocket:
		return (1.25*acrossFlatsMm + 3) / 2, nil
	case ToolRing:
		return (1.45*acrossFlatsMm + 2) / 2, nil
	case ToolOpen:
		return (2.1*acrossFlatsMm + 3) / 2, nil
	}
	return 0, fmt.Errorf("bolts: tool %q is not known: use none, socket, ring, open or hexagon-key", string(tool))
}

// A Place is where a bolt head (or nut) sits. Lengths in mm.
type Place struct {
	Head Head // empty is Hex
	// Nut is true when a nut sits here instead of the head.
	Nut bool
	// Washer is true with a plain washer underneath.
	Washer bool
	// Tool is what must reach; empty is ToolSocket for a hexagon and ToolHexKey for
	// a socket head.
	Tool Tool
	// WallMm is from the hole centre to the nearest wall (hub, rib, tube); 0
	// when there is none.
	WallMm float64
	// FilletMm is the weld leg or radius at the foot of that wall. Head and
	// washer must stay clear of it; the tool, working above it, only of the
	// wall.
	FilletMm float64
	// NeighbourMm is from the hole centre to the nearest other bolt of the
	// same size; 0 when there is none.
	NeighbourMm float64
	// HoleMm is the hole; 0 takes ISO 273 medium. The bolt can sit against
	// its side, so half the play is added.
	HoleMm float64
}

// A Room is the result of HeadRoom. Lengths in mm.
type Room struct {
	HeadRadiusMm   float64 // largest radius of head or nut
	WasherRadiusMm float64 // 0 without washer
	ToolRadiusMm   float64 // 0 when the tool needs no room outside the head
	ShiftMm        float64 // half the play of the bolt in its hole
	// NeedWallMm and NeedNeighbourMm are the least distances from the hole
	// centre.
	NeedWallMm, NeedNeighbourMm float64
	// WallGapMm and NeighbourGapMm are what is left over, negative when it
	// does not go; 0 when there is no wall or neighbour.
	WallGapMm, NeighbourGapMm float64
	// Problems is empty when everything has room.
	Problems []Problem
}

// HeadRoom checks that head or nut, washer and tool have room beside a wall
// and beside the next bolt. It is an error when a number is negative or not
// finite, head or tool is unknown or unfit for the head, or the hole is
// smaller than the bolt.
func (b Bolt) HeadRoom(p Place) (Room, error) {
	if p.Head == "" || p.Nut {
		p.Head = Hex
	}
	if p.Tool == "" {
		p.Tool = ToolSocket
		if p.Head.Keyed() {
			p.Tool = ToolHexKey
		}
	}
	r, err := b.headAndTool(p)
	if err != nil {
		return Room{}, err
	}
	if r.ShiftMm, err = b.shiftMm(p); err != nil {
		return Room{}, err
	}
	if p.Washer {
		// The washer can also shift on the bolt.
		r.WasherRadiusMm = b.WasherODMm/2 + math.Max(0, b.WasherIDMm-b.Thread.MajorMm)/2
	}
	foot := math.Max(r.HeadRadiusMm, r.WasherRadiusMm)
	r.NeedWallMm = r.ShiftMm + math.Max(foot+p.FilletMm, r.ToolRadiusMm)
	// Both bolts may have shifted towards each other.
	r.NeedNeighbourMm = 2*r.ShiftMm + math.Max(2*foot, r.ToolRadiusMm+r.HeadRadiusMm)
	what := describe(p, r)
	if p.WallMm > 0 {
		r.WallGapMm = p.WallMm - r.NeedWallMm
		if r.WallGapMm < -1e-9 {
			r.Problems = append(r.Problems, Problem{WallNear, []float64{p.WallMm, r.NeedWallMm}, what})
		}
	}
	if p.NeighbourMm > 0 {
		r.NeighbourGapMm = p.NeighbourMm - r.NeedNeighbourMm
		if r.NeighbourGapMm < -1e-9 {
			r.Problems = append(r.Problems, Problem{NeighbourNear, []float64{p.NeighbourMm, r.NeedNeighbourMm}, what})
		}
	}
	return r, nil
}

// headAndTool is the room with the radii of head and tool.
func (b Bolt) headAndTool(p Place) (r Room, err error) {
	diameter, err := b.HeadDiameterMm(p.Head)
	if err != nil {
		return r, err
	}
	flats := b.AcrossFlatsMm
	if p.Nut {
		flats = b.NutAcrossFlatsMm
		diameter = flats * 2 / math.Sqrt(3)
	}
	if fits := p.Tool == ToolNone || (p.Tool == ToolHexKey) == p.Head.Keyed(); !fits {
		return r, fmt.Errorf("bolts: tool %s does not fit a %s head", p.Tool, p.Head)
	}
	r.HeadRadiusMm = diameter / 2
	r.ToolRadiusMm, err = ToolRadiusMm(p.Tool, flats)
	return r, err
}

// shiftMm is how far the bolt can lie off the middle of its hole.
func (b Bolt) shiftMm(p Place) (float64, error) {
	for _, n := range []struct {
		what string
		x    float64
	}{{"distance to the wall", p.WallMm}, {"fillet", p.FilletMm}, {"distance to the neighbour", p.NeighbourMm}, {"hole diameter", p.HoleMm}} {
		if err := atLeast0(n.what, n.x); err != nil {
			return 0, err
		}
	}
	hole := p.HoleMm
	if hole == 0 {
		var err error
		if hole, err = b.Thread.ClearanceMm("medium"); err != nil {
			return 0, err
		}
	}
	if hole < b.Thread.MajorMm {
		return 0, lookup.Refuse("bolts: hole %v is smaller than %s", lookup.Mm(hole), b.Thread.Designation)
	}
	return (hole - b.Thread.MajorMm) / 2, nil
}

// describe names the things that need the room.
func describe(p Place, r Room) string {
	parts := []string{string(p.Head) + " head"}
	if p.Nut {
		parts[0] = "nut"
	}
	if p.Washer {
		parts = append(parts, "washer")
	}
	if r.ToolRadiusMm > 0 {
		parts = append(parts, string(p.Tool)+" tool")
	}
	return strings.Join(parts, " with ")
}
