package main

import (
	"fmt"
	"io"

	"centrepop/layout/threads"
	"centrepop/layout/words"
)

// leadSizes is what is known of the thread of a lead screw beyond others.
type leadSizes struct {
	AngleDeg float64  `json:"angle_deg"`
	HelixDeg float64  `json:"helix_deg"`
	Starts   int      `json:"starts"`
	LeftHand bool     `json:"left_hand"`
	LeadMm   float64  `json:"lead_mm"`
	WireMm   float64  `json:"wire_mm"`
	OverMm   *limit   `json:"over_wires_mm,omitempty"`
	Screw    leadSide `json:"screw"`
	Nut      leadSide `json:"nut"`
}

// limit is the least and the most of a size in mm; a most of 0 is none.
type limit = [2]float64

// leadSide is one side of it, in mm.
type leadSide struct {
	Class   string  `json:"class"`
	MajorMm limit   `json:"major_mm"`
	PitchMm limit   `json:"pitch_diameter_mm"`
	MinorMm limit   `json:"minor_mm"`
	FlatMm  float64 `json:"tool_flat_mm"`
	DepthMm float64 `json:"depth_mm"`
}

// leadAnswer is that of a thread, nil for one that holds.
func leadAnswer(t threads.Thread) *leadSizes {
	l := t.Lead
	if l == nil {
		return nil
	}
	rounded := func(m limit) limit { return limit{round4(m[0]), round4(m[1])} }
	side := func(s threads.LeadLimits) leadSide {
		return leadSide{s.Class, rounded(s.Major), rounded(s.Pitch), rounded(s.Minor), round4(s.FlatMm), round4(s.DepthMm)}
	}
	out := &leadSizes{AngleDeg: l.AngleDeg, HelixDeg: round4(t.HelixDeg()), Starts: l.Starts, LeftHand: l.LeftHand, LeadMm: round4(l.LeadMm), WireMm: round4(t.BestWireMm()), Screw: side(l.Screw), Nut: side(l.Nut)}
	if lo, hi, ok := t.OverWiresMm(out.WireMm); ok {
		out.OverMm = new(limit)
		*out.OverMm = rounded(limit{lo, hi})
	}
	return out
}

// lead writes them.
func (s threadSizes) lead(w io.Writer, l *leadSizes) {
	hand := words.Either(l.LeftHand, "left hand", "right hand")
	fmt.Fprintf(w, "%s, %s, %s, helix %s°, tool %s°\n", s.all("lead ", l.LeadMm), words.Counted(l.Starts, "start"), hand, words.Trim(l.HelixDeg, 2), words.Trim(l.AngleDeg, 0))
	for _, side := range []struct {
		name string
		leadSide
	}{{"screw", l.Screw}, {"nut", l.Nut}} {
		major := words.Either(side.MajorMm[1] == 0, s.all("major at least ", side.MajorMm[0]), s.all("major least , most ", side.MajorMm[0], side.MajorMm[1]))
		fmt.Fprintf(w, "%s %s: %s; %s; %s; %s\n", side.name, side.Class, major, s.all("pitch diameter least , most ", side.PitchMm[:]...), s.all("minor least , most ", side.MinorMm[:]...), s.all("tool flat , depth ", side.FlatMm, side.DepthMm))
	}
	if l.OverMm != nil {
		fmt.Fprintln(w, s.all("over three wires of , least , most ", l.WireMm, l.OverMm[0], l.OverMm[1]))
	}
}
