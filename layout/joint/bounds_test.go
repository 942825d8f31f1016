package joint

import (
	"strings"
	"testing"

	"centrepop/layout/part"
	"centrepop/layout/plan"
	"centrepop/layout/press"
	"centrepop/layout/threads"
	"centrepop/layout/words"
	"centrepop/parts"
)

// TestTurnOf: a pitch of 1.5 is 240° to the millimetre: 0.0125 mm is 3°, 0.021 5.04°, and
// between 0.24° and 0.84° there is no whole degree, so their middle, 0.54°, is said.
func TestTurnOf(t *testing.T) {
	t.Parallel()
	nut := &part.Step{Size: part.Sized{Thread: &threads.Thread{PitchMm: 1.5}}}
	for _, c := range []struct {
		lo, hi float64
		want   string
	}{{0.0125, 0.021, "3° to 5°"}, {0.012, 0.0208, "3° to 4°"}, {0.001, 0.0035, "0.5°"}, {0.0045, 0.008, "1.5°"}, {0.0125, 0.0125, "3° to 3°"}} {
		if got := turnOf(nut, c.lo, c.hi); got != c.want {
			t.Errorf("%v to %v: %s, want %s", c.lo, c.hi, got, c.want)
		}
	}
}

// TestHotAndCold: 0.12 of interference and 0.04 to slip with, on Ø40. Heating by
// 0.16 / (11·10⁻⁶ · 40) = 364 K and cooling by 0.16 / (8.5·10⁻⁶ · 40) = 471 K are both too
// much: with the hub at 250 °C, 230 K warmer, 0.0588 is missing, 173 K of the shaft, so
// −153 °C. Both together are only advised where neither alone will do.
func TestHotAndCold(t *testing.T) {
	t.Parallel()
	member := func(name string, in, out float64) press.Member {
		return press.Member{InsideMm: in, OutsideMm: out, Material: press.Material{Name: name, EMPa: 210000, Nu: 0.3, AlphaPerK: 11e-6, ContractPerK: 8.5e-6, StrengthMPa: 300, MaxHeatC: 250, MinColdC: -195.8}}
	}
	in := press.Joint{Hub: member("C45", 40, 80), Shaft: member("S235", 0, 40), InterferenceMm: 0.12, ClearanceMm: 0.04, RoomC: 20, ShaftC: 20}
	for _, c := range []struct {
		hub, shaft      float64
		hot, cold, both bool
	}{{384, -451, true, true, true}, {384, -150, true, false, false}, {200, -451, false, true, false}, {200, -150, false, false, false}, {250, -195.8, false, false, false}, {250.1, -195.9, true, true, true}} {
		j := &joint{w: words.Writer{Units: parts.Millimetres}, out: &plan.JointPlan{}}
		j.thermalFigures(&plan.PressPlan{HeatHubC: c.hub, CoolShaftC: c.shaft, ClearanceMm: 0.04}, in)
		all := ""
		for _, f := range j.out.Figures {
			all += f.Label + " = " + f.Value + "\n"
		}
		for text, want := range map[string]bool{"over the 250 °C that C45 stands: not by heat alone": c.hot, "under the -196 °C to be had: not by cold alone": c.cold, "or both = hub 250 °C and shaft -153 °C\n": c.both, "or both": c.both, ", clearance 0.04": true} {
			if strings.Contains(all, text) != want {
				t.Errorf("hub %v, shaft %v: %q %v in\n%s", c.hub, c.shaft, text, !want, all)
			}
		}
	}
}
