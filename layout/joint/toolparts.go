package joint

import (
	"math"

	"centrepop/parts"
	"centrepop/parts/geom"
	"centrepop/parts/seq"
)

// toolMaterial is what tools are made of unless the scrap box has better.
const toolMaterial = "S235"

// Proportions of shop-made tools. Common practice, no source.
const (
	squareMm  = 0.05 // between the ends of what is pressed with
	thinShare = 0.15 // of the outside: a thinner wall is made from tube
	hollowMm  = 80.0 // a plug over it is a ring
	turnedMm  = 5.0  // a disc of at least that is turned from bar
	longDias  = 3.0  // a bore longer than that takes two plugs
	plugDias  = 1.5  // long each
)

// sleeveWallMm is the wall of a press sleeve for a seat of a diameter.
func sleeveWallMm(dMm float64) float64 { return math.Max(5, 0.06*dMm) }

// bounds is a diameter with the limits that what it touches leaves it, mm; equal
// limits are none.
type bounds struct{ low, high, nominal float64 }

// pressWideMm is how much wider than asked the bore of a sleeve or a ring to press with may be, and how much narrower its
// outside. Common practice, no source.
const pressWideMm = 0.3

func atLeast(mm, more float64) bounds { return bounds{mm, mm + more, mm} }
func atMost(mm, less float64) bounds  { return bounds{mm - less, mm, mm} }
func within(mm, half float64) bounds  { return bounds{mm - half, mm + half, mm} }
func free(mm float64) bounds          { return bounds{mm, mm, mm} }

// up rounds a length of no account up: to 1 mm, or 1/16 in.
func (j *shop) up(mm float64) float64 { return j.w.Up(mm, 1, 1.0/16) }

func (j *shop) cylinder(name string, d bounds, longMm float64) parts.Step {
	return parts.Step{Name: parts.Text{Value: name}, Length: parts.Length{Mm: longMm}, Size: d.size()}
}

func (d bounds) size() parts.Size {
	s := parts.Size{Nominal: parts.Length{Mm: geom.Clean(d.nominal)}}
	if d.high > d.low {
		s.Fit.Limits = []parts.Length{{Mm: geom.Clean(d.low)}, {Mm: geom.Clean(d.high)}}
	}
	return s
}

// toolBlank is a tool before it has a form.
func toolBlank(kind parts.Kind, notes ...string) *parts.Part {
	p := &parts.Part{Kind: kind, Quantity: 1, Material: parts.Text{Value: toolMaterial}}
	p.Notes = seq.Map(notes, func(n string) parts.Text { return parts.Text{Value: n} })
	return p
}

// given is a length that a tool's drawing gives.
func given(mm float64) parts.Length { return parts.Length{Mm: mm, Pos: parts.Pos{Line: 1, Column: 1}} }

// bar is the stock of a turned tool: bar to 5 mm or 1/8 in, or tube where the wall
// is thin.
func (j *shop) bar(outMm, inMm float64) parts.Stock {
	size := j.w.Up(outMm+1, 5, 1.0/8)
	if inMm > 0 && (outMm-inMm)/2 < thinShare*outMm {
		return parts.Stock{Form: "tube", Size: given(size), Second: given(j.w.Up((size-inMm)/2+0.5, 0.5, 1.0/32))}
	}
	return parts.Stock{Form: "round", Size: given(size)}
}

// sleeve is a ring or tube that is pressed with.
func (j *shop) sleeve(in, out bounds, longMm float64) *parts.Part {
	long := j.up(longMm)
	p := toolBlank(parts.TurnedPart)
	p.Require = []parts.Requirement{{Kind: parts.Squareness, Of: parts.Text{Value: string(parts.Back)}, To: parts.Text{Value: "bore"}, Within: given(squareMm)}}
	p.Profile = &parts.Profile{Outside: []parts.Step{j.cylinder("outside", out, long)}, Inside: []parts.Step{j.cylinder("bore", in, long)}}
	p.Stock = j.bar(out.high, in.low)
	return p
}

// disc stops a ram at its thickness. A thin one has no limit of its own outside: it has no
// bore, and no chuck holds a sheet, so that it is cut and filed to the line.
func (j *shop) disc(dMm, thickMm float64) *parts.Part {
	if thickMm >= turnedMm {
		p := toolBlank(parts.TurnedPart)
		p.Profile = &parts.Profile{Outside: []parts.Step{j.cylinder("outside", within(dMm, 0.5), thickMm)}}
		p.Stock = j.bar(dMm+0.5, 0)
		return p
	}
	p := toolBlank(parts.Plate, "Its thickness is what the ram stops at: measure it.")
	p.Thickness = given(thickMm)
	p.Outline = &parts.Outline{Shape: parts.CircleOutline, Width: given(dMm), Size: parts.Size{Nominal: given(dMm)}}
	p.Stock = parts.Stock{Form: "sheet", Size: given(thickMm), Cut: "saw"}
	return p
}

// gripMm is what stands out of a bore to turn a plug by; runsMm the least that one is under the
// bore as measured when the part runs on it, twice that the most. Common practice, no source.
const (
	gripMm = 10.0
	runsMm = 0.02
)
