package bend

import (
	"math"

	"centrepop/parts/geom"
)

// PanelFold is a flange on the blank. Lengths up and along are in the view of
// its own side: up from the middle of the base, along from its middle to the
// right.
type PanelFold struct {
	Flange
	Result
	OutsideMm       float64 // up: where the outside of the base ends once folded
	BeginMm         float64 // up: where the bend begins; it ends an AllowanceMm further
	EdgeMm          float64 // up: its free edge on the blank, or where the next bend begins
	NextMm          float64 // setback of the bend at its free edge, 0 if there is none
	LeftMm, RightMm float64 // along: the ends of the flange
	// LeftMitreMm and RightMitreMm are how far its ends run in at 45 degrees from the
	// end of its bend, 0 for a square end.
	LeftMitreMm, RightMitreMm float64
	LineFrom, LineTo          geom.Point
	ReliefMm                  float64 // depth of its reliefs from OutsideMm
	ThicknessMm               float64 // of the sheet
	start                     frame   // of its bend, all folded
}

// LineMm is where the punch meets the sheet, up from the middle of the base.
func (f *PanelFold) LineMm() float64 { return f.BeginMm + f.AllowanceMm/2 }

// StopMm is the distance of the fold line from the free edge, or from the outside of
// the square flange that stands there.
func (f *PanelFold) StopMm() float64 { return f.EdgeMm + f.NextMm - f.LineMm() }

// FlatMm is how much of the flange stays flat, from the end of the bend.
func (f *PanelFold) FlatMm() float64 { return f.HeightMm - f.SetbackMm - f.NextMm }

// Side is an edge of a panel's base, clockwise from the top one.
type Side int

// OnBlank is where a point of the folded flange lies on the blank: along its
// side from the middle, and up its outside from the corner.
func (f *PanelFold) OnBlank(alongMm, upMm float64) geom.Point {
	return f.Side.TurnedTo(geom.Point{XMm: alongMm, YMm: f.OutsideMm + upMm - f.DeductionMm})
}

// TurnedTo turns a point of a side's own view, in which the side lies at the
// top, into the view of the base: x right, y up, the origin in its middle.
func (s Side) TurnedTo(p geom.Point) geom.Point {
	switch s {
	case Right:
		return geom.Point{XMm: p.YMm, YMm: -p.XMm}
	case Bottom:
		return geom.Point{XMm: -p.XMm, YMm: -p.YMm}
	case Left:
		return geom.Point{XMm: -p.YMm, YMm: p.XMm}
	}
	return p
}

// inMm is how far the inside of a flange's end, folded, lies within the outside of the
// base.
func (f *PanelFold) inMm() float64 {
	sin, cos := math.Sincos(f.AngleDeg * math.Pi / 180)
	return f.SetbackMm - f.RadiusMm*sin - f.FlatMm()*cos
}

// frame is a place on the front of the sheet in the section of a side: x outward along
// the sheet, y out of its front, turned anticlockwise.
type frame struct {
	at      geom.Point
	turnRad float64
}

func (f frame) point(p geom.Point) geom.Point {
	sin, cos := math.Sincos(f.turnRad)
	return geom.Point{XMm: f.at.XMm + p.XMm*cos - p.YMm*sin, YMm: f.at.YMm + p.XMm*sin + p.YMm*cos}
}

func (f frame) of(g frame) frame { return frame{f.point(g.at), f.turnRad + g.turnRad} }

// from is a point as seen in the frame.
func (f frame) from(p geom.Point) geom.Point { return frame{turnRad: -f.turnRad}.point(p.Minus(f.at)) }

// turned is the end of a flange's bend in the frame of its beginning, and run how far
// it goes on along the flange.
func (f *PanelFold) turned(run float64) frame {
	rad := f.AngleDeg * math.Pi / 180
	sin, cos := math.Sincos(rad)
	if f.Forward {
		return frame{geom.Point{XMm: f.RadiusMm*sin + run*cos, YMm: f.RadiusMm*(1-cos) + run*sin}, rad}
	}
	out := f.RadiusMm + f.ThicknessMm
	return frame{geom.Point{XMm: out*sin + run*cos, YMm: -out*(1-cos) - run*sin}, -rad}
}

// far is the end of a flange in the frame of its bend's beginning.
func (f *PanelFold) far() frame { return f.turned(f.FlatMm()) }

// Wall is the corner that places up a flange are measured from, on the line of the
// sheet's front, in its side's section (x outward from the middle of the base, y out of
// its front), and how far the flange is turned from the base, positive to the front.
func (f *PanelFold) Wall() (foot geom.Point, turnDeg float64) {
	at := f.start.of(f.turned(-f.SetbackMm))
	return at.at, at.turnRad * 180 / math.Pi
}

// Centre is the middle of the bend, as Wall counts.
func (f *PanelFold) Centre() geom.Point {
	up := f.RadiusMm
	if !f.Forward {
		up = -(f.RadiusMm + f.ThicknessMm)
	}
	return f.start.point(geom.Point{YMm: up})
}

// Section is the cut through a flange and its bend, all folded, anticlockwise: x
// outward from the middle of the base in its side's view, y towards who looks at
// the base, 0 on its front.
func (f *PanelFold) Section() geom.Loop { return f.section(f.start) }

// section is that of a flange whose bend begins at a frame.
func (f *PanelFold) section(from frame) geom.Loop {
	sin, cos := math.Sincos(f.AngleDeg * math.Pi / 180)
	r, t, flat := f.RadiusMm, f.ThicknessMm, f.FlatMm()
	// Folded away from the viewer: the front is the outside of the bend.
	c := geom.Point{YMm: -(r + t)}
	at := func(radius, run float64) geom.Point {
		return geom.Point{XMm: c.XMm + radius*sin + run*cos, YMm: c.YMm + radius*cos - run*sin}
	}
	bulge := math.Tan(f.AngleDeg * math.Pi / 720)
	v := geom.Loop{
		{Point: geom.Point{YMm: c.YMm + r}, Bulge: -bulge}, {Point: at(r, 0)}, {Point: at(r, flat)},
		{Point: at(r+t, flat)}, {Point: at(r+t, 0), Bulge: bulge}, {},
	}
	if f.Forward {
		// Mirrored about the middle of the sheet, and so taken the other way round;
		// the two leave an arc its sense.
		away := v
		v = make(geom.Loop, len(away))
		for i := range away {
			k := len(away) - 1 - i
			v[i] = geom.Vertex{Point: geom.Point{XMm: away[k].XMm, YMm: -t - away[k].YMm}, Bulge: away[(k+len(away)-1)%len(away)].Bulge}
		}
	}
	for i := range v {
		v[i].Point = from.point(v[i].Point)
	}
	return v
}

// The sides.
const (
	Top Side = iota
	Right
	Bottom
	Left
)
