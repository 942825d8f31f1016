package typeface

import (
	"encoding/binary"
	"fmt"
	"slices"
)

// Metrics are what a document says about a face, in font units (y up).
type Metrics struct {
	Em                         int // font units per em
	XMin, YMin, XMax, YMax     int // box about all glyphs
	Ascent, Descent, CapHeight int
	GlyphCount                 int
}

// MetricsOf returns the metrics of one weight.
func MetricsOf(bold bool) Metrics {
	s := faceOf(bold).sfnt
	return Metrics{
		Em: int(s.Head.UnitsPerEm), XMin: int(s.Head.XMin), YMin: int(s.Head.YMin), XMax: int(s.Head.XMax), YMax: int(s.Head.YMax),
		Ascent: int(s.Hhea.Ascender), Descent: int(s.Hhea.Descender), CapHeight: capUnits, GlyphCount: int(s.NumGlyphs()),
	}
}

// subsetTables are the tables a font needs inside a document (ISO 32000-1:2008
// table 126), in the order of their names: no names, no character map.
var subsetTables = []string{"cvt ", "fpgm", "glyf", "head", "hhea", "hmtx", "loca", "maxp", "prep"}

// Subset returns a TrueType file of one weight for use inside a document: it
// holds the outlines of the glyphs asked for and of the glyphs they are
// composed of, under their numbers in the whole font; the others are empty.
// The error is that of a number the font does not have.
func Subset(bold bool, glyphs []uint16) ([]byte, error) {
	sfnt := faceOf(bold).sfnt
	keep := map[uint16]bool{0: true}
	for _, g := range glyphs {
		parts, err := sfnt.Glyf.Dependencies(g)
		if err != nil {
			return nil, fmt.Errorf("typeface: glyph %d: %w", g, err)
		}
		keep[g] = true
		for _, p := range parts {
			keep[p] = true
		}
	}
	count := int(sfnt.NumGlyphs())
	var glyf, loca []byte
	for g := range count {
		loca = binary.BigEndian.AppendUint32(loca, uint32(len(glyf)))
		if keep[uint16(g)] {
			glyf = append(glyf, sfnt.Glyf.Get(uint16(g))...)
			glyf = append(glyf, make([]byte, -len(glyf)&3)...)
		}
	}
	loca = binary.BigEndian.AppendUint32(loca, uint32(len(glyf)))
	head := slices.Clone(sfnt.Tables["head"])
	binary.BigEndian.PutUint32(head[8:], 0)  // checksum of the file, set below
	binary.BigEndian.PutUint16(head[50:], 1) // offsets of 32 bits
	file := assemble(map[string][]byte{"glyf": glyf, "head": head, "loca": loca, "hmtx": advances(sfnt.Tables["hmtx"], keep)}, sfnt.Tables)
	return file, nil
}

// advances clears the metrics of the glyphs not kept, so that they pack well.
func advances(hmtx []byte, keep map[uint16]bool) []byte {
	out := make([]byte, len(hmtx))
	for g := range keep {
		if at := 4 * int(g); at+4 <= len(hmtx) {
			copy(out[at:at+4], hmtx[at:])
		}
	}
	return out
}

// assemble writes the font file: the tables of first, and from rest those that
// first lacks.
func assemble(first, rest map[string][]byte) []byte {
	const entry, magic = 16, 0xB1B0AFBA
	start := 12 + entry*len(subsetTables)
	head := 0
	out := binary.BigEndian.AppendUint32(nil, 0x00010000)
	for _, v := range []uint16{uint16(len(subsetTables)), 128, 3, uint16(entry*len(subsetTables) - 128)} { // 8 is the power of two below 9 tables
		out = binary.BigEndian.AppendUint16(out, v)
	}
	var body []byte
	for _, tag := range subsetTables {
		table, ok := first[tag]
		if !ok {
			table = rest[tag]
		}
		if tag == "head" {
			head = start + len(body)
		}
		out = append(out, tag...)
		for _, v := range []uint32{checksum(table), uint32(start + len(body)), uint32(len(table))} {
			out = binary.BigEndian.AppendUint32(out, v)
		}
		body = append(body, table...)
		body = append(body, make([]byte, -len(body)&3)...)
	}
	out = append(out, body...)
	binary.BigEndian.PutUint32(out[head+8:], magic-checksum(out))
	return out
}

// checksum adds up a table as numbers of 32 bits, zeros behind it.
func checksum(table []byte) uint32 {
	sum := uint32(0)
	for i := range table {
		sum += uint32(table[i]) << (24 - 8*(i&3))
	}
	return sum
}
