package parts

// TubeEnd says how an end of a tube is cut to sit on another round: a saddle.
type TubeEnd struct {
	Pos  Pos
	Face Face // the end of this tube that is cut
	// Onto is the main: an outside of another part, or, if that is not set,
	// a tube of Diameter and Wall.
	Onto           Ref
	Diameter, Wall Length
	Angle          Angle  // between the axes, 30° to 90°
	Offset         Length // of the axes; positive to the right, seen from the free end with the acute side up
	SetIn          bool   // through the main's wall; else on its outside
	Gap            Length // root gap for the weld
	Clock          Angle  // clock angle of this tube that lies on the acute side; at 90° towards the main's front
	// Place says where on the main the axes cross; nil if not said.
	Place *EndPlace
}

// EndPlace is a place on the outside of a main tube.
type EndPlace struct {
	Pos   Pos
	Clock Angle  // of the main, seen on its front face
	Axial Length // from the face From of the main
	From  Face
}

const endForm = "back: {onto: barrel-tube.outside, angle: 90, joint: set-on, gap: 1.5}"

// ends reads the saddles of a tube, front before back.
func (r *reader) ends(n *node) []TubeEnd {
	if !r.group(n, string(Front), string(Back)) {
		return nil
	}
	var out []TubeEnd
	for _, face := range []Face{Front, Back} {
		e := n.get(string(face))
		if !r.group(e, "onto", "angle", "offset", "joint", "gap", "clock", "place") {
			continue
		}
		end := TubeEnd{
			Pos: e.pos, Face: face, Angle: Angle{Deg: 90},
			Offset: r.length(e.get("offset"), signed),
			SetIn:  r.word(e.get("joint"), "set-on", "set-in") == "set-in",
			Gap:    r.length(e.get("gap"), fromZero),
		}
		switch onto := r.need(e, "onto", endForm); {
		case onto == nil:
		case onto.kind == mapNode:
			if r.group(onto, "diameter", "wall") {
				end.Diameter = r.length(r.need(onto, "diameter", "onto: {diameter: 168.3, wall: 4.5}"), positive)
				end.Wall = r.length(onto.get("wall"), positive)
			}
		default:
			end.Onto = r.ref(onto)
		}
		if a := e.get("angle"); a != nil {
			end.Angle, _ = r.angle(a, 30, 90)
		}
		if c := e.get("clock"); c != nil {
			end.Clock = r.clock(c)
		}
		if p := e.get("place"); r.group(p, "clock", "axial", "from") {
			const form = "place: {clock: 0, axial: 140, from: back}"
			end.Place = &EndPlace{Pos: p.pos, From: Front, Axial: r.length(r.need(p, "axial", form), fromZero)}
			if c := p.get("clock"); c != nil {
				end.Place.Clock = r.clock(c)
			}
			if w := r.word(p.get("from"), string(Front), string(Back)); w != "" {
				end.Place.From = Face(w)
			}
		}
		out = append(out, end)
	}
	return out
}
