package words

import (
	"strings"
	"testing"

	"centrepop/layout/press"
	"centrepop/parts"
)

// Every code has a sentence with its numbers, in the job's units.
func TestPressCaution(t *testing.T) {
	t.Parallel()
	mm, inch := Writer{parts.Millimetres}, Writer{parts.Inches}
	for _, c := range []struct {
		w    Writer
		c    press.Caution
		want string // the beginning
	}{
		{mm, press.Caution{Code: press.Loose, Mm: 0.023}, "No interference: 0.023 mm of play"},
		{inch, press.Caution{Code: press.Loose, Mm: 0.0254}, "No interference: 0.001 in of play"},
		{mm, press.Caution{Code: press.Flattened, Mm: 0.008, OfMm: 0.005}, "Roughness of 0.008 mm takes up the whole interference of 0.005 mm"},
		{mm, press.Caution{Code: press.Breaks, Who: press.HubMember, Material: "EN-GJL-250", Safety: 0.8}, "The hub breaks: EN-GJL-250 stands 0.8 of this stress."},
		{mm, press.Caution{Code: press.Yields, Who: press.ShaftMember, Material: "S235", Safety: 0.91}, "The shaft yields: S235 stands 0.91 of this stress elastically"},
		{mm, press.Caution{Code: press.Brittle, Who: press.HubMember, Material: "EN-GJL-250", Safety: 1.6, LeastSafety: 2}, "The hub of brittle EN-GJL-250 has a safety of 1.6 only; 2 is usual"},
		{inch, press.Caution{Code: press.BoreCloses, Mm: 0.0508}, "The inner part's bore closes by 0.002 in"},
		{mm, press.Caution{Code: press.TooHot, Material: "EN-GJL-250", C: 510.2, LimitC: 250}, "510 °C is above the 250 °C for EN-GJL-250"},
		{mm, press.Caution{Code: press.TooCold, Material: "S355", C: -556.4, LimitC: -195.8}, "-556 °C is below the -196 °C to be had for S355"},
		{mm, press.Caution{Code: press.NeedsNitrogen, C: -120}, "-120 °C is colder than dry ice"},
		{mm, press.Caution{Code: press.Frost}, "Frost forms"},
		{mm, press.Caution{Code: press.HeatSlowly}, "Cast iron: heat slowly"},
	} {
		if got := c.w.PressCaution(c.c); !strings.HasPrefix(got, c.want) || !strings.HasSuffix(got, ".") {
			t.Errorf("%s: %q, want %q …", c.c.Code, got, c.want)
		}
	}
	if got := mm.PressCaution(press.Caution{}); got != "" {
		t.Errorf("no code: %q", got)
	}
}
