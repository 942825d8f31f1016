package main

import (
	"fmt"
	"io"
	"reflect"

	"centrepop/layout/threads"
	"centrepop/layout/words"
)

// leadSizes is what is known of the thread of a lead screw beyond others.
type leadSizes struct {
	AngleDeg float64            `json:"angle_deg"`
	HelixDeg float64            `json:"helix_deg"`
	Starts   int                `json:"starts"`
	LeftHand bool               `json:"left_hand"`
	LeadMm   float64            `json:"lead_mm"`
	WireMm   float64            `json:"wire_mm"`
	OverMm   *[2]float64        `json:"over_wires_mm,omitempty"`
	Screw    threads.LeadLimits `json:"screw"`
	Nut      threads.LeadLimits `json:"nut"`
}

// leadAnswer is that of a thread, nil for one that holds.
func leadAnswer(t threads.Thread) *leadSizes {
	l := t.Lead
	if l == nil {
		return nil
	}
	out := &leadSizes{AngleDeg: l.AngleDeg, HelixDeg: t.HelixDeg(), Starts: l.Starts, LeftHand: l.LeftHand, LeadMm: l.LeadMm, WireMm: t.BestWireMm(), Screw: l.Screw, Nut: l.Nut}
	tidy(reflect.ValueOf(out)) // over wires of that size
	if lo, hi, ok := t.OverWiresMm(out.WireMm); ok {
		out.OverMm = &[2]float64{lo, hi}
	}
	tidy(reflect.ValueOf(out.OverMm))
	return out
}

// lead writes them.
func (s threadSizes) lead(w io.Writer, l *leadSizes) {
	hand := words.Either(l.LeftHand, "left hand", "right hand")
	fmt.Fprintf(w, "%s, %s, %s, helix %s°, tool %s°\n", s.all("lead ", l.LeadMm), words.Counted(l.Starts, "start"), hand, words.Trim(l.HelixDeg, 2), words.Trim(l.AngleDeg, 0))
	for _, side := range []struct {
		name string
		threads.LeadLimits
	}{{"screw", l.Screw}, {"nut", l.Nut}} {
		major := words.Either(side.Major[1] == 0, s.all("major at least ", side.Major[0]), s.all("major least , most ", side.Major[0], side.Major[1]))
		fmt.Fprintf(w, "%s %s: %s; %s; %s; %s\n", side.name, side.Class, major, s.all("pitch diameter least , most ", side.Pitch[:]...),
			s.all("minor least , most ", side.Minor[:]...), s.all("tool flat , depth ", side.FlatMm, side.DepthMm))
	}
	if l.OverMm != nil {
		fmt.Fprintln(w, s.all("over three wires of , least , most ", l.WireMm, l.OverMm[0], l.OverMm[1]))
	}
}
