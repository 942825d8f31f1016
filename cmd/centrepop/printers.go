package main

import (
	"bytes"
	"encoding/json"
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
	"sync"
	"unicode/utf8"

	"centrepop/layout"
	"centrepop/parts"
	"centrepop/parts/seq"
	"centrepop/render/atomicfile"
)

// savedPrinter is what is kept of a printer: the readings as taken, so that a
// better formula needs no new ones.
type savedPrinter struct {
	Name        string  `json:"name"`
	Paper       string  `json:"paper"`
	AcrossOfMm  float64 `json:"across_of_mm"`
	AcrossMm    float64 `json:"across_mm"`
	UpOfMm      float64 `json:"up_of_mm"`
	UpMm        float64 `json:"up_mm"`
	Diagonal1Mm float64 `json:"diagonal1_mm,omitempty"`
	Diagonal2Mm float64 `json:"diagonal2_mm,omitempty"`
}

// printerName is what a printer may be called: it is typed on the command
// line and printed at the foot of every sheet.
var printerName = sync.OnceValue(func() *regexp.Regexp { return regexp.MustCompile(`^[\pL\pN][\pL\pN ._-]{0,39}$`) })

// correction is the printer's, or what is wrong with its readings.
func (p savedPrinter) correction() (*layout.Correction, error) {
	return layout.NewCorrection(p.Name, layout.PrinterReadings{
		AcrossOfMm: p.AcrossOfMm, AcrossMm: p.AcrossMm, UpOfMm: p.UpOfMm, UpMm: p.UpMm,
		DiagonalsMm: [2]float64{p.Diagonal1Mm, p.Diagonal2Mm},
	})
}

// wrong says what is wrong with an entry, or "".
func (p savedPrinter) wrong() string {
	if !printerName().MatchString(p.Name) {
		return fmt.Sprintf("the name %q: up to 40 letters, digits, spaces, dots, hyphens and underscores, the first a letter or digit", p.Name)
	}
	if _, err := p.correction(); err != nil {
		return err.Error()
	}
	return ""
}

// maxPrinters and maxPrinterFile bound what is read.
const (
	maxPrinters    = 200
	maxPrinterFile = 1 << 20
)

// printerBook is the file of the user's printers, in the order of their names.
type printerBook struct {
	path     string
	printers []savedPrinter
}

// openPrinters reads printers.json in the folder centrepop of the user's
// configuration folder. A missing file has no printers. Faults in it are
// located parts.Errors.
func openPrinters() (*printerBook, error) {
	dir, err := os.UserConfigDir()
	if err != nil {
		return nil, fmt.Errorf("the printers are kept in the user's configuration folder, and there is none: %w", err)
	}
	b := &printerBook{path: filepath.Join(dir, "centrepop", "printers.json")}
	f, err := os.Open(b.path)
	if errors.Is(err, fs.ErrNotExist) {
		return b, nil
	}
	if err != nil {
		return nil, err
	}
	defer f.Close() // only read
	data, err := io.ReadAll(io.LimitReader(f, maxPrinterFile+1))
	if err != nil {
		return nil, err
	}
	b.printers, err = readPrinters(b.path, data)
	return b, err
}

// readPrinters reads the list of printers and checks every entry.
func readPrinters(file string, data []byte) ([]savedPrinter, error) {
	in := printerFile{name: file, data: data}
	if len(data) > maxPrinterFile {
		return nil, in.fault(0, "the file is larger than 1 MB")
	}
	if !utf8.Valid(data) {
		return nil, in.fault(0, "the file is not UTF-8 text")
	}
	dec := json.NewDecoder(bytes.NewReader(data))
	dec.DisallowUnknownFields()
	out, err := in.entries(dec)
	if err != nil {
		return nil, err
	}
	if _, err := dec.Token(); err != nil {
		return nil, in.broken(err, dec.InputOffset())
	}
	if rest := bytes.TrimLeft(data[dec.InputOffset():], " \t\r\n"); len(rest) > 0 {
		return nil, in.fault(int64(len(data)-len(rest)), "the file goes on after the list")
	}
	slices.SortFunc(out, byName)
	return out, nil
}

// printerFile is a list of printers being read, with its faults.
type printerFile struct {
	name string
	data []byte
}

func (f printerFile) fault(offset int64, what string) error {
	const right = "print and measure the check page again, and use centrepop printer set; or delete the file"
	pos, line := place(f.data, offset)
	pos.File = f.name
	return parts.Errors{{Pos: pos, Excerpt: line, What: what, Right: right}}
}

// broken puts what the JSON reader says into words.
func (f printerFile) broken(err error, start int64) error {
	var syntax *json.SyntaxError
	var kind *json.UnmarshalTypeError
	switch {
	case errors.As(err, &syntax):
		return f.fault(start, strings.TrimPrefix(syntax.Error(), "json: "))
	case errors.As(err, &kind):
		return f.fault(start, fmt.Sprintf("%s is a %s", kind.Field, kind.Value))
	case errors.Is(err, io.EOF), errors.Is(err, io.ErrUnexpectedEOF):
		return f.fault(int64(len(f.data)), "the file ends too soon")
	}
	return f.fault(start, strings.TrimPrefix(err.Error(), "json: "))
}

// entries reads the list up to its closing bracket.
func (f printerFile) entries(dec *json.Decoder) ([]savedPrinter, error) {
	open, err := dec.Token()
	if err != nil {
		return nil, f.broken(err, 0)
	}
	if open != json.Delim('[') {
		return nil, f.fault(0, "the file is no list of printers")
	}
	var out []savedPrinter
	for dec.More() {
		start := dec.InputOffset()
		start += int64(len(f.data[start:]) - len(bytes.TrimLeft(f.data[start:], ", \t\r\n")))
		var p savedPrinter
		if err := dec.Decode(&p); err != nil {
			return nil, f.broken(err, start)
		}
		if wrong := p.wrong(); wrong != "" {
			return nil, f.fault(start, wrong)
		}
		if slices.ContainsFunc(out, func(q savedPrinter) bool { return q.Name == p.Name }) {
			return nil, f.fault(start, "printer "+p.Name+" stands here twice")
		}
		if out = append(out, p); len(out) > maxPrinters {
			return nil, f.fault(start, fmt.Sprintf("more than %d printers", maxPrinters))
		}
	}
	return out, nil
}

// place is the line and column of a byte, from 1, and the text of the line.
func place(data []byte, offset int64) (parts.Pos, string) {
	at := int(max(0, min(offset, int64(len(data)))))
	start := bytes.LastIndexByte(data[:at], '\n') + 1
	line := data[start:]
	if end := bytes.IndexByte(line, '\n'); end >= 0 {
		line = line[:end]
	}
	text := strings.Map(func(r rune) rune {
		if r < ' ' {
			return ' '
		}
		return r
	}, string(line))
	return parts.Pos{Line: bytes.Count(data[:at], []byte("\n")) + 1, Column: utf8.RuneCount(data[start:at]) + 1}, text
}

// find returns a printer by name, or an error that lists the known ones.
func (b *printerBook) find(name string) (savedPrinter, error) {
	p, is := seq.Find(b.printers, func(p savedPrinter) bool { return p.Name == name })
	switch {
	case is:
		return p, nil
	case len(b.printers) == 0:
		return p, badUse("no printer %q, and none is set: see centrepop printer --help", name)
	}
	known := seq.Map(b.printers, func(p savedPrinter) string { return p.Name })
	return savedPrinter{}, badUse("no printer %q; there are %s", name, strings.Join(known, ", "))
}

// put adds a printer, or replaces that of the same name.
func (b *printerBook) put(p savedPrinter) {
	b.remove(p.Name)
	b.printers = append(b.printers, p)
	slices.SortFunc(b.printers, byName)
}

func (b *printerBook) remove(name string) {
	b.printers = slices.DeleteFunc(b.printers, func(p savedPrinter) bool { return p.Name == name })
}

func byName(a, b savedPrinter) int { return strings.Compare(a.Name, b.Name) }

// save writes the file whole or not at all, one printer on a line.
func (b *printerBook) save() error {
	if len(b.printers) > maxPrinters {
		return fmt.Errorf("more than %d printers: forget some", maxPrinters)
	}
	if err := os.MkdirAll(filepath.Dir(b.path), 0o755); err != nil {
		return err
	}
	return atomicfile.Write(b.path, func(w io.Writer) error {
		var lines []string
		for _, p := range b.printers {
			line, err := json.Marshal(p)
			if err != nil {
				return err
			}
			lines = append(lines, "\n  "+string(line))
		}
		_, err := io.WriteString(w, "["+strings.Join(lines, ",")+"\n]\n")
		return err
	})
}
