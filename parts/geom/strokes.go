package geom

import (
	"fmt"
	"math"
	"strconv"
	"strings"
)

// LargestNumber is the largest number that a Scanner reads.
const LargestNumber = 1e9

// Scanner reads the little languages inside attributes of SVG 1.1 (numbers,
// chapter 4.1), from byte At of its text on.
type Scanner struct {
	Text string
	At   int
}

// Blank passes over white space.
func (s *Scanner) Blank() {
	for s.At < len(s.Text) && strings.IndexByte(" \t\r\n\f", s.Text[s.At]) >= 0 {
		s.At++
	}
}

// Comma passes over blanks with at most one comma between.
func (s *Scanner) Comma() {
	s.Blank()
	if s.At < len(s.Text) && s.Text[s.At] == ',' {
		s.At++
		s.Blank()
	}
}

// one passes over one of some letters, if it stands here.
func (s *Scanner) one(of string) bool {
	is := s.At < len(s.Text) && strings.IndexByte(of, s.Text[s.At]) >= 0
	if is {
		s.At++
	}
	return is
}

func (s *Scanner) digits() bool {
	from := s.At
	for s.one("0123456789") {
	}
	return s.At > from
}

// Number reads the longest number that stands here, after blanks; numbers may
// touch, as in "1-2.5.5". At stays if there is none or it is out of range.
func (s *Scanner) Number() (v float64, ok bool) {
	s.Blank()
	from := s.At
	s.one("+-")
	ok = s.digits()
	if s.one(".") {
		ok = s.digits() || ok
	}
	if mark := s.At; s.one("eE") {
		s.one("+-")
		if !s.digits() {
			s.At = mark // a unit such as em
		}
	}
	v, err := strconv.ParseFloat(s.Text[from:s.At], 64)
	if ok = ok && err == nil && math.Abs(v) <= LargestNumber; !ok {
		s.At, v = from, 0
	}
	return v, ok
}

// flag reads 0 or 1, which may touch what follows.
func (s *Scanner) flag() (v float64, ok bool) {
	s.Blank()
	if s.one("0") {
		return 0, true
	}
	return 1, s.one("1")
}

// Stroke is one step of path data, all places absolute and in the units of the
// data. Its command is one of M, L, C, Q, A and Z: H and V are an L, S a C and T a Q.
type Stroke struct {
	Command byte
	Control [2]Point // both of C, the first of Q
	Radii   Point    // of A, whose ellipse is turned by TurnDeg
	TurnDeg float64
	Large   bool // of A: goes the longer way
	Sweep   bool // of A: to growing angles
	To      Point
}

// PathFault is what is wrong with path data, at a byte of them.
type PathFault struct {
	At   int
	What string
}

// Error says what is wrong.
func (f *PathFault) Error() string { return f.What }

// pathArguments gives the number of numbers after each path command.
var pathArguments = map[byte]int{'M': 2, 'L': 2, 'H': 1, 'V': 1, 'C': 6, 'S': 4, 'Q': 4, 'T': 2, 'A': 7, 'Z': 0}

// follower reads path data stroke by stroke.
type follower struct {
	Scanner
	written    byte // the letter that was read last
	command    byte // that one, or the line that comes after an M
	at, start  Point
	control    Point // the last one, for S and T
	last       Stroke
	mostNumber float64
}

// Strokes reads path data (SVG 1.1, chapter 8.3), whose numbers are within
// ±most, and visits every stroke. It ends with the visit's first error, or with
// a *PathFault.
func Strokes(data string, most float64, visit func(Stroke) error) error {
	f := &follower{Scanner: Scanner{Text: data}, mostNumber: most}
	for {
		more, err := f.letter()
		if err != nil || !more {
			return err
		}
		v, err := f.numbers(f.command &^ 0x20)
		if err != nil {
			return err
		}
		if err := visit(f.stroke(v)); err != nil {
			return err
		}
		if f.command&^0x20 == 'M' {
			f.command-- // further pairs are lines: M to L, m to l
		}
	}
}

// letter reads the command of the next stroke, which may be the one before;
// false at the end.
func (f *follower) letter() (more bool, err error) {
	closed := f.command&^0x20 == 'Z'
	if closed || f.command == 0 {
		f.Blank()
	} else {
		f.Comma()
	}
	before, at := f.command, f.At
	switch {
	case at >= len(f.Text):
		return false, nil
	case f.one("MmLlHhVvCcSsQqTtAaZz"):
		f.command, f.written = f.Text[at], f.Text[at]
		if before == 0 && f.command&^0x20 != 'M' {
			return false, &PathFault{at, "it does not start with M"}
		}
	case before == 0 || closed:
		return false, &PathFault{at, "a command letter is needed"}
	}
	return true, nil
}

func (f *follower) numbers(upper byte) (v [7]float64, err error) {
	for i := range pathArguments[upper] {
		read, what := f.Number, fmt.Sprintf("number within ±%.0f", f.mostNumber)
		if upper == 'A' && (i == 3 || i == 4) {
			read, what = f.flag, "flag, 0 or 1,"
		}
		if i > 0 {
			f.Comma()
		} else {
			f.Blank()
		}
		at := f.At
		var ok bool
		if v[i], ok = read(); !ok || math.Abs(v[i]) > f.mostNumber {
			return v, &PathFault{at, fmt.Sprintf("after %c a %s is needed", f.written, what)}
		}
	}
	return v, nil
}

// stroke is that of the command, with its numbers.
func (f *follower) stroke(v [7]float64) Stroke {
	var base Point
	if f.command >= 'a' {
		base = f.at
	}
	place := func(i int) Point { return Point{base.XMm + v[i], base.YMm + v[i+1]} }
	// The control point that a smooth curve begins with: the last one of the
	// same kind mirrored, or where the pen is.
	smooth := func(kind byte) Point {
		if f.last.Command != kind {
			return f.at
		}
		return Point{2*f.at.XMm - f.control.XMm, 2*f.at.YMm - f.control.YMm}
	}
	s := Stroke{Command: f.command &^ 0x20}
	switch s.Command {
	case 'M', 'L':
		s.To = place(0)
	case 'H':
		s.Command, s.To = 'L', Point{base.XMm + v[0], f.at.YMm}
	case 'V':
		s.Command, s.To = 'L', Point{f.at.XMm, base.YMm + v[0]}
	case 'C':
		s.Control, s.To = [2]Point{place(0), place(2)}, place(4)
	case 'S':
		s.Command, s.Control, s.To = 'C', [2]Point{smooth('C'), place(0)}, place(2)
	case 'Q':
		s.Control[0], s.To = place(0), place(2)
	case 'T':
		s.Command, s.Control[0], s.To = 'Q', smooth('Q'), place(0)
	case 'A':
		s.Radii, s.TurnDeg, s.Large, s.Sweep, s.To = Point{v[0], v[1]}, v[2], v[3] == 1, v[4] == 1, place(5)
	case 'Z':
		s.To = f.start
	}
	if s.Command == 'M' {
		f.start = s.To
	}
	if f.at, f.last, f.control = s.To, s, s.Control[1]; s.Command == 'Q' {
		f.control = s.Control[0]
	}
	return s
}
