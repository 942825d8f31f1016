package words

import (
	"testing"

	"centrepop/parts"
)

func TestTableFormats(t *testing.T) {
	for _, c := range []struct{ got, want string }{
		{Fixed(35, parts.Millimetres), "35.00"}, {Fixed(-0.001, parts.Millimetres), "0.00"},
		{Fixed(-12.7, parts.Inches), "-0.500"}, {Fixed(1e-9, parts.Inches), "0.000"},
		{Short(8.5, parts.Millimetres), "8.5"}, {Short(11, parts.Millimetres), "11"}, {Short(100, parts.Millimetres), "100"},
		{Short(11.1125, parts.Inches), "0.438"}, {Angle(360.0 / 7), "51.43°"}, {Angle(30), "30°"},
		{Mass(0.6551), "0.655 kg"}, {Mass(13.44), "13.4 kg"}, {Mass(2.314), "2.31 kg"}, {Mass(250.4), "250 kg"},
		{Span(1, 6), "1–6"}, {Span(7, 1), "7"},
	} {
		if c.got != c.want {
			t.Errorf("got %q, want %q", c.got, c.want)
		}
	}
}
