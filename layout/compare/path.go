package compare

import "strings"

// numbersOf is how many numbers a step of a path command takes.
var numbersOf = map[byte]int{'H': 1, 'V': 1, 'L': 2, 'M': 2, 'T': 2, 'S': 4, 'Q': 4, 'C': 6, 'A': 7}

// track draws path data (SVG 1.1, chapter 8.3) with a pen.
type track struct {
	*pen
	s              scanner
	startX, startY float64 // of the contour
	ctrlX, ctrlY   float64 // last control point, for S and T
	command, last  byte
	begun          bool // the pen is down
}

func (t *track) wrong(what string) error {
	return t.f.faultIn(t.e, "d", t.s.at, "path data: %s", what)
}

func (p *pen) path(d string) error {
	t := &track{pen: p, s: scanner{text: d}}
	for !p.tooMuch && !p.notPlain {
		more, err := t.letter()
		if err != nil {
			return err
		}
		if !more {
			break
		}
		if err := t.step(); err != nil {
			return err
		}
	}
	return p.lift(false)
}

// letter reads the command of the next step, which may be the one before;
// false at the end.
func (t *track) letter() (more bool, err error) {
	if t.last != 0 && t.last&^0x20 != 'Z' {
		t.s.comma()
	} else {
		t.s.blank()
	}
	if t.s.at >= len(t.s.text) {
		return false, nil
	}
	if next := t.s.text[t.s.at]; strings.IndexByte("MmLlHhVvCcSsQqTtAaZz", next) >= 0 {
		if t.last == 0 && next&^0x20 != 'M' {
			return false, t.wrong("it must start with M")
		}
		t.command = next
		t.s.at++
	} else if t.command == 0 || t.command&^0x20 == 'Z' {
		return false, t.wrong("a command letter belongs here")
	}
	return true, nil
}

func (t *track) step() error {
	upper := t.command &^ 0x20
	var from point // what the numbers count from
	if t.command != upper {
		from = xy(t.x, t.y)
	}
	if upper == 'Z' {
		if err := t.lift(true); err != nil {
			return err
		}
		t.x, t.y, t.begun, t.last = t.startX, t.startY, false, t.command
		return nil
	}
	v, err := t.numbers(upper)
	if err != nil {
		return err
	}
	if upper == 'M' {
		if err := t.lift(false); err != nil {
			return err
		}
		t.begin(v[0]+from.XMm, v[1]+from.YMm)
		t.last = t.command
		t.command = 'L' | t.command&0x20 // further pairs are lines
		return nil
	}
	if !t.begun { // after Z a contour goes on from where the last began
		t.begin(t.x, t.y)
	}
	t.draw(upper, v, from)
	t.last = t.command
	return nil
}

// begin puts the pen down.
func (t *track) begin(x, y float64) {
	t.x, t.y, t.startX, t.startY, t.begun = x, y, x, y, true
	t.to(x, y)
}

func (t *track) numbers(upper byte) (v [7]float64, err error) {
	for i := range numbersOf[upper] {
		if i > 0 {
			t.s.comma()
		}
		ok := false
		if upper == 'A' && (i == 3 || i == 4) {
			var set bool
			if set, ok = t.s.flag(); !ok {
				return v, t.wrong("the flag of an arc must be 0 or 1")
			}
			if set {
				v[i] = 1
			}
			continue
		}
		if v[i], ok = t.s.number(); !ok {
			return v, t.wrong("a number belongs here")
		}
	}
	return v, nil
}

// draw draws a line or a curve, its numbers counted from a point.
func (t *track) draw(upper byte, v [7]float64, from point) {
	nextX, nextY := t.x, t.y // control point left behind
	switch upper {
	case 'L':
		t.to(v[0]+from.XMm, v[1]+from.YMm)
	case 'H':
		t.to(v[0]+from.XMm, t.y)
	case 'V':
		t.to(t.x, v[0]+from.YMm)
	case 'C', 'S':
		first, w := t.control("CS"), v[:]
		if upper == 'C' {
			first, w = xy(v[0]+from.XMm, v[1]+from.YMm), v[2:]
		}
		second := xy(w[0]+from.XMm, w[1]+from.YMm)
		nextX, nextY = second.XMm, second.YMm
		t.cubic(first, second, xy(w[2]+from.XMm, w[3]+from.YMm))
	case 'Q', 'T':
		first, w := t.control("QT"), v[:]
		if upper == 'Q' {
			first, w = xy(v[0]+from.XMm, v[1]+from.YMm), v[2:]
		}
		nextX, nextY = first.XMm, first.YMm
		t.quad(first, xy(w[0]+from.XMm, w[1]+from.YMm))
	case 'A':
		t.arc(arcTo{v[0], v[1], v[2], v[3] == 1, v[4] == 1, v[5] + from.XMm, v[6] + from.YMm})
	}
	t.ctrlX, t.ctrlY = nextX, nextY
}

// control is the control point that a smooth curve begins with: the last one of
// the same kind mirrored, or where the pen is.
func (t *track) control(kinds string) point {
	if strings.IndexByte(kinds, t.last&^0x20) < 0 {
		return xy(t.x, t.y)
	}
	return xy(2*t.x-t.ctrlX, 2*t.y-t.ctrlY)
}
