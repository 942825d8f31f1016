package main

import (
	"bytes"
	"errors"
	"fmt"
	"io"
	"os"
	"path/filepath"
	"reflect"
	"strings"

	"centrepop/layout/review"
	"centrepop/layout/words"
	"centrepop/parts"
	"centrepop/parts/seq"
	"centrepop/render"
	"centrepop/render/atomicfile"
	"centrepop/render/pdf"
	"centrepop/templates/draw"
	"centrepop/templates/truesize"
)

// output checks the -o flag before any work is done.
func output(flag, ext string) error {
	switch {
	case flag == "":
		return badUse("-o FILE is needed")
	case flag != "-" && !strings.EqualFold(filepath.Ext(flag), ext):
		return badUse("-o %s: the file's name must end in %s", flag, ext)
	}
	return nil
}

// spare refuses an output that is one of the job's own files, under whatever
// name: replacing it would lose the drawing.
func spare(out, jobPath string, job *parts.Job) error {
	target, err := os.Stat(out)
	if err != nil {
		return nil // not there, or not to be reached: writing will tell
	}
	inputs := []string{jobPath}
	inputs = append(inputs, seq.Map(job.Parts, func(p *parts.Part) string { return filepath.Join(filepath.Dir(jobPath), p.File) })...)
	for _, input := range inputs {
		if info, err := os.Stat(input); err == nil && os.SameFile(info, target) {
			return badUse("-o %s: this is an input of the job, %s", out, input)
		}
	}
	return nil
}

// written is what a command that writes a file answers.
type written struct {
	Output string   `json:"output"`
	Pages  int      `json:"pages"`
	Paper  string   `json:"paper"`
	Parts  []string `json:"parts"`
	// Review counts the findings, where the packet holds the review.
	Review *review.Count `json:"review,omitempty"`
	// NotReleased are the parts whose sheets are stamped.
	NotReleased []string `json:"not_released,omitempty"`
	release     *release
}

// save writes a file of a job whole or not at all. An error that comes from a
// place in the input is told with that place. "-" is standard output, and what
// else there is to say then goes to standard error.
func (c *call) save(path string, job *parts.Job, write func(io.Writer) error) error {
	if path != "-" {
		return located(atomicfile.Write(path, write), job)
	}
	var b bytes.Buffer
	if err := write(&b); err != nil {
		return located(err, job)
	}
	_, err := c.stdout.Write(b.Bytes())
	c.stdout = c.stderr
	return err
}

// writePDF writes the document, whose drawings the press has taken, and saves
// it.
func (c *call) writePDF(job *parts.Job, doc *draw.Document, press *pdf.Press, path string, answer written) error {
	c.tell.stage("writing")
	if err := c.save(path, job, func(w io.Writer) error { return press.Write(w, doc) }); err != nil {
		return err
	}
	answer.Output, answer.Pages = path, len(doc.Pages)
	return c.answer(answer, func() {
		fmt.Fprintf(c.stdout, "wrote %s: %s %s, %s\n", path, words.Counted(answer.Pages, "page"), answer.Paper, words.Counted(len(answer.Parts), "part"))
	})
}

// located points at what an error of drawing comes from: the text with a
// character that cannot be set, or the shape of a part that is too large for
// the paper. Other errors of that stage come from no place in the input.
func located(err error, job *parts.Job) error {
	var lacking *render.LackingError
	var large *truesize.TooLargeError
	switch {
	case errors.As(err, &lacking):
		pos, ok := textWith(reflect.ValueOf(job), lacking.Char)
		if !ok {
			return err
		}
		return parts.Errors{job.Fault(pos, fmt.Sprintf("the typeface of the sheets has no character %q (U+%04X)", lacking.Char, lacking.Char),
			"letters of the Latin, Greek and Cyrillic alphabets, figures and the signs of the trade")}
	case errors.As(err, &large):
		what, _ := strings.CutPrefix(large.Error(), "templates: ")
		return parts.Errors{job.Fault(shapeOf(job, large.Part), what, "a smaller part, or --paper A3")}
	}
	return err
}

// textWith finds the first text of a job that holds a character.
func textWith(v reflect.Value, char rune) (parts.Pos, bool) {
	switch v.Kind() {
	case reflect.Pointer:
		if !v.IsNil() {
			return textWith(v.Elem(), char)
		}
	case reflect.Slice:
		for i := range v.Len() {
			if pos, ok := textWith(v.Index(i), char); ok {
				return pos, true
			}
		}
	case reflect.Struct:
		if text, ok := v.Interface().(parts.Text); ok {
			return text.Pos, strings.ContainsRune(text.Value, char)
		}
		for i := range v.NumField() {
			if !v.Type().Field(i).IsExported() {
				continue
			}
			if pos, ok := textWith(v.Field(i), char); ok {
				return pos, true
			}
		}
	}
	return parts.Pos{}, false
}

// shapeOf is the place of a part's shape, or of its name.
func shapeOf(job *parts.Job, name string) parts.Pos {
	switch p := job.Part(name); {
	case p == nil:
		return parts.Pos{}
	case p.Outline != nil:
		return p.Outline.Pos
	case p.Profile != nil:
		return p.Profile.Pos
	case p.Flight != nil:
		return p.Flight.Pos
	case p.Frustum != nil:
		return p.Frustum.Pos
	case p.Bar != nil:
		return p.Bar.Pos
	default:
		return p.Name.Pos
	}
}
