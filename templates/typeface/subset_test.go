package typeface

import (
	"bytes"
	"encoding/binary"
	"slices"
	"testing"
)

// TestWithoutInstructions: glyphs made by hand lose their program and nothing else, with every form of a composed
// one's parts (OpenType 1.9, glyf table).
func TestWithoutInstructions(t *testing.T) {
	t.Parallel()
	head := []byte{0, 0, 0, 1, 0, 2, 0, 3, 0, 4}
	simple := slices.Concat([]byte{0, 2}, head[2:], []byte{0, 3, 0, 5}, []byte{0, 2, 9, 9}, []byte{1, 1, 7, 7})
	if got, want := withoutInstructions(simple), slices.Concat([]byte{0, 2}, head[2:], []byte{0, 3, 0, 5}, []byte{0, 0}, []byte{1, 1, 7, 7}); !bytes.Equal(got, want) {
		t.Errorf("simple %v, want %v", got, want)
	}
	if got := withoutInstructions(nil); len(got) != 0 {
		t.Errorf("empty %v", got)
	}
	part := func(flags uint16, place int) []byte {
		out := binary.BigEndian.AppendUint16(nil, flags)
		return append(append(out, 0, 40), bytes.Repeat([]byte{5}, place)...)
	}
	const words, one, more, two, four, program = 1, 8, 32, 64, 128, 256
	parts := func(program uint16) []byte {
		return slices.Concat([]byte{0xFF, 0xFF}, head[2:], part(words|more|program, 4), part(more|one|program, 2+2), part(words|more|two, 4+4), part(more|four|program, 2+8), part(words|program, 4))
	}
	if got := withoutInstructions(append(parts(program), 0, 2, 9, 9)); !bytes.Equal(got, parts(0)) {
		t.Errorf("composed %v, want %v", got, parts(0))
	}
}

// TestSubsetFile: the head of the file names its tables as a reader looks for them (OpenType 1.9, table directory: the
// largest power of two below the number of tables, times 16), with their checksums, and that of all is 0xB1B0AFBA.
func TestSubsetFile(t *testing.T) {
	t.Parallel()
	file, err := Subset(false, []uint16{36, 200})
	if err != nil {
		t.Fatal(err)
	}
	word := func(at int) int { return int(binary.BigEndian.Uint16(file[at:])) }
	long := func(at int) uint32 { return binary.BigEndian.Uint32(file[at:]) }
	sum := func(b []byte) (s uint32) {
		for i, v := range b {
			s += uint32(v) << (24 - 8*(i%4))
		}
		return s
	}
	if word(4) != 6 || word(6) != 64 || word(8) != 2 || word(10) != 32 || sum(file) != 0xB1B0AFBA {
		t.Errorf("%d tables, search %d %d %d, sum %X", word(4), word(6), word(8), word(10), sum(file))
	}
	whole := faceOf(false).sfnt
	for i := range 6 {
		at := 12 + 16*i
		tag, off, n := string(file[at:at+4]), long(at+8), long(at+12)
		table := slices.Clone(file[off : off+n])
		if tag == "head" {
			clear(table[8:12])
		}
		if off%4 != 0 || sum(table) != long(at+4) {
			t.Errorf("%s at %d has another sum", tag, off)
		}
		switch tag {
		case "hmtx":
			if !bytes.Equal(table[4*36:4*37], whole.Tables["hmtx"][4*36:4*37]) || !bytes.Equal(table[4*37:4*38], make([]byte, 4)) {
				t.Error("not the widths of the glyphs kept alone")
			}
		case "maxp":
			if !bytes.Equal(table[:16], whole.Tables["maxp"][:16]) || !bytes.Equal(table[16:28], make([]byte, 12)) || !bytes.Equal(table[28:], whole.Tables["maxp"][28:]) {
				t.Error("maxp asks for what programs need, or has lost more")
			}
		}
	}
}
