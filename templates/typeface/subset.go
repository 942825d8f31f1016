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
}

// MetricsOf returns the metrics of one weight.
func MetricsOf(bold bool) Metrics {
	s := faceOf(bold).sfnt
	return Metrics{
		Em: int(s.Head.UnitsPerEm), XMin: int(s.Head.XMin), YMin: int(s.Head.YMin), XMax: int(s.Head.XMax), YMax: int(s.Head.YMax),
		Ascent: int(s.Hhea.Ascender), Descent: int(s.Hhea.Descender), CapHeight: capUnits,
	}
}

// subsetTables are the tables a font needs inside a document (ISO 32000-1:2008
// table 126), in the order of their names: no names, no character map, and none
// of the programs that fit glyphs to coarse dots ("cvt ", "fpgm", "prep"). There
// are programs that compare those for every text of a page.
var subsetTables = []string{"glyf", "head", "hhea", "hmtx", "loca", "maxp"}

// Subset returns a TrueType file of one weight for use inside a document: it
// holds the outlines of the glyphs asked for and of the glyphs they are
// composed of, under their numbers in the whole font; the others are empty, and
// none has instructions.
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
			glyf = append(glyf, withoutInstructions(sfnt.Glyf.Get(uint16(g)))...)
			glyf = append(glyf, make([]byte, -len(glyf)&3)...)
		}
	}
	loca = binary.BigEndian.AppendUint32(loca, uint32(len(glyf)))
	head := slices.Clone(sfnt.Tables["head"])
	binary.BigEndian.PutUint32(head[8:], 0)  // checksum of the file, set below
	binary.BigEndian.PutUint16(head[50:], 1) // offsets of 32 bits
	maxp := slices.Clone(sfnt.Tables["maxp"])
	clear(maxp[16:28]) // what instructions need
	file := assemble(map[string][]byte{"glyf": glyf, "head": head, "loca": loca, "maxp": maxp, "hmtx": advances(sfnt.Tables["hmtx"], keep)}, sfnt.Tables)
	return file, nil
}

// withoutInstructions is the outline of a glyph without the program that fits it
// to coarse dots. An empty glyph stays empty.
func withoutInstructions(glyph []byte) []byte {
	if len(glyph) == 0 {
		return nil
	}
	const head = 10
	contours := int(int16(binary.BigEndian.Uint16(glyph)))
	if contours >= 0 { // their ends, the length of the program, the program
		at := head + 2*contours
		program := int(binary.BigEndian.Uint16(glyph[at:]))
		return slices.Concat(glyph[:at], []byte{0, 0}, glyph[at+2+program:])
	}
	out := slices.Clone(glyph)
	for at := head; ; {
		flags := binary.BigEndian.Uint16(out[at:])
		binary.BigEndian.PutUint16(out[at:], flags&^hasProgram)
		at += 4 + partBytes(flags)
		if flags&moreParts == 0 {
			return out[:at]
		}
	}
}

// The flags of a part of a composed glyph.
const (
	wordPlace  = 1 << 0
	oneScale   = 1 << 3
	moreParts  = 1 << 5
	twoScales  = 1 << 6
	fourScales = 1 << 7
	hasProgram = 1 << 8
)

// partBytes is the length of the place and the scale of a part.
func partBytes(flags uint16) int {
	n := 2
	if flags&wordPlace != 0 {
		n = 4
	}
	switch {
	case flags&oneScale != 0:
		n += 2
	case flags&twoScales != 0:
		n += 4
	case flags&fourScales != 0:
		n += 8
	}
	return n
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
	for _, v := range []uint16{uint16(len(subsetTables)), 64, 2, uint16(entry*len(subsetTables) - 64)} { // 4 is the power of two below 6 tables
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
