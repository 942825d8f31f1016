package read

import "centrepop/parts"

// ends reads the saddles of a tube, front before back.
func (f *fields) ends() []parts.TubeEnd {
	var out []parts.TubeEnd
	for _, face := range []parts.Face{parts.Front, parts.Back} {
		if e := f.sub(string(face)); e != nil {
			out = append(out, e.end(face))
		}
	}
	return out
}

func (f *fields) end(face parts.Face) parts.TubeEnd {
	end := parts.TubeEnd{
		Pos: f.n.pos, Face: face, Angle: f.angle("angle"), Offset: f.length("offset"),
		SetIn: f.word("joint") == "set-in", Gap: f.length("gap"), Clock: f.angle("clock"),
	}
	switch onto := f.val("onto"); {
	case onto == nil:
	case onto.kind != mapNode:
		end.Onto = f.ref(onto)
	default:
		if o := f.sub("onto"); o != nil {
			end.Diameter, end.Wall = o.length("diameter"), o.length("wall")
		}
	}
	if p := f.sub("place"); p != nil {
		end.Place = &parts.EndPlace{Pos: p.n.pos, Clock: p.angle("clock"), Axial: p.length("axial"), From: p.face("from"), Leans: p.face("leans")}
	}
	return end
}
