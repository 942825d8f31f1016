package cutting

import (
	"fmt"
	"math"
	"slices"
	"testing"

	"centrepop/layout/material"
	"centrepop/parts/geom"
	"centrepop/parts/golden"
)

// TestEveryInchDrill holds the number and letter drills against
// drills_inch.csv, whose rows say in which chart they were found.
func TestEveryInchDrill(t *testing.T) {
	t.Parallel()
	drills := StockDrills(Inch)
	rows := golden.Table(t, "../../testdata/reference/drills_inch.csv", len(numberDrills)+len(letterDrills))
	for _, row := range rows {
		want := row.Number(t, "diameter_in") * geom.MmPerInch
		i := slices.IndexFunc(drills, func(d DrillSize) bool { return d.Name == row["name"] })
		if row["name"] == "E" { // E is sold as 1/4 in
			i = slices.IndexFunc(drills, func(d DrillSize) bool { return d.Name == "1/4 in" })
		}
		if i < 0 || math.Abs(drills[i].DiaMm-want) > 1e-9 {
			t.Errorf("%s: %d, want %.4f mm (%s)", row["name"], i, want, row["how"])
		}
	}
	// 80 numbers, 25 letters, 63 sizes from 1/32 to 1 by 1/64, 32 to 2 by 1/32.
	if len(drills) != 80+25+63+32 {
		t.Errorf("%d inch drills", len(drills))
	}
	for name, in := range map[string]float64{"1/32 in": 1.0 / 32, "1/16 in": 1.0 / 16, "1 in": 1, "1-1/32 in": 1 + 1.0/32, "2 in": 2, "63/64 in": 63.0 / 64} {
		if !slices.Contains(drills, DrillSize{in * geom.MmPerInch, name}) {
			t.Errorf("no drill %s", name)
		}
	}
}

// TestEveryMetricDrill: 0.3 to 14.0 by 0.1, the quarters from 3.25 to 32, then
// by 0.5 to 50.
func TestEveryMetricDrill(t *testing.T) {
	t.Parallel()
	var want []DrillSize
	for n := 30; n <= 5000; n++ {
		tenth, quarter, half := n%10 == 0, n%25 == 0, n%50 == 0
		if n <= 1400 && (tenth || n >= 325 && quarter) || n > 1400 && n <= 3200 && quarter || n > 3200 && half {
			text := fmt.Sprintf("%d.%02d", n/100, n%100)
			if tenth {
				text = text[:len(text)-1]
			}
			want = append(want, DrillSize{float64(n) / 100, text})
		}
	}
	if got := StockDrills(Metric); !slices.Equal(got, want) {
		t.Errorf("%v\nwant %v", got, want)
	}
}

// TestSpeedFractions: boring, reaming and threading are fractions of the
// tabulated speeds, to half a metre a minute. Common practice, no source.
func TestSpeedFractions(t *testing.T) {
	t.Parallel()
	steel, err := material.Find("S235JR")
	if err != nil {
		t.Fatal(err)
	}
	speed := func(op Op, tool Tool) Range {
		r, _, err := Speed(steel.Kind, op, tool)
		if err != nil {
			t.Fatalf("%s %s: %v", op, tool, err)
		}
		return r
	}
	for _, tool := range []Tool{HSS, Carbide} {
		turn := speed(Turn, tool)
		threadMin, threadMax := 1.0/3, 0.5
		if tool == Carbide {
			threadMin, threadMax = 0.5, 2.0/3
		}
		for op, f := range map[Op][2]float64{Bore: {0.7, 0.85}, Thread: {threadMin, threadMax}} {
			if got := speed(op, tool); math.Abs(got.MinMPerMin-f[0]*turn.MinMPerMin) > 0.26 || math.Abs(got.MaxMPerMin-f[1]*turn.MaxMPerMin) > 0.26 {
				t.Errorf("%s %s: %v of %v", op, tool, got, turn)
			}
		}
	}
	drill := speed(Drill, HSS)
	if got := speed(Ream, HSS); math.Abs(got.MinMPerMin-drill.MinMPerMin/2) > 0.26 || math.Abs(got.MaxMPerMin-drill.MaxMPerMin/2) > 0.26 {
		t.Errorf("reaming %v, drilling %v", got, drill)
	}
}
