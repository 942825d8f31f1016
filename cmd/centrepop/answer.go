package main

import (
	"bytes"
	"encoding/json"
	"errors"
	"fmt"
	"io"
	"math"
	"strconv"
	"strings"

	"centrepop/parts"
)

// answerVersion is the number in the schema of every answer. It rises when a
// field is taken away or changes its meaning, not when one is added.
const answerVersion = 1

// writeAnswer writes v as one line of JSON that begins with its schema. Numbers
// are rounded to 1e-6, which hides the last digits in which machines differ.
func writeAnswer(w io.Writer, name string, v any) error {
	var b bytes.Buffer
	enc := json.NewEncoder(&b)
	enc.SetEscapeHTML(false)
	if err := enc.Encode(v); err != nil {
		return err
	}
	body := rounded(b.Bytes())
	head := fmt.Sprintf(`{"schema":"centrepop %s %d"`, name, answerVersion)
	if rest, isObject := bytes.CutPrefix(body, []byte("{")); isObject && rest[0] != '}' {
		head += ","
		body = rest
	} else {
		head, body = head+`,"answer":`, append(bytes.TrimRight(body, "\n"), '}', '\n')
	}
	_, err := w.Write(append([]byte(head), body...))
	return err
}

// rounded rounds the numbers of JSON text to 1e-6.
func rounded(src []byte) []byte {
	var out []byte
	quoted := false
	for i := 0; i < len(src); {
		c := src[i]
		switch {
		case quoted && c == '\\':
			out = append(out, c, src[i+1])
			i += 2
			continue
		case c == '"':
			quoted = !quoted
		case !quoted && (c == '-' || c >= '0' && c <= '9'):
			end := i + 1
			for end < len(src) && strings.IndexByte("0123456789+-.eE", src[end]) >= 0 {
				end++
			}
			v, err := strconv.ParseFloat(string(src[i:end]), 64)
			if err == nil && math.Abs(v) < 1e9 {
				out = strconv.AppendFloat(out, math.Round(v*1e6)/1e6+0, 'f', -1, 64)
			} else {
				out = append(out, src[i:end]...)
			}
			i = end
			continue
		}
		out = append(out, c)
		i++
	}
	return out
}

// fault is an error as JSON; file, line and column only for input faults.
type fault struct {
	File   string `json:"file,omitempty"`
	Line   int    `json:"line,omitempty"`
	Column int    `json:"column,omitempty"`
	What   string `json:"what"`
	Right  string `json:"right,omitempty"`
}

// faultsOf takes an error apart: the faults of an input, or the error alone.
func faultsOf(err error) []fault {
	var located parts.Errors
	if !errors.As(err, &located) {
		return []fault{{What: err.Error()}}
	}
	faults := []fault{}
	for _, e := range located {
		faults = append(faults, fault{e.Pos.File, e.Pos.Line, e.Pos.Column, e.What, e.Right})
	}
	return faults
}

// useError is a mistake on the command line; the usage line is shown with it.
type useError struct{ what string }

func (e *useError) Error() string { return e.what }

// report writes an error to standard error, as text or as JSON. cmd is nil for
// a mistake before the command.
func report(stderr io.Writer, cmd *command, err error, asJSON bool) {
	var located parts.Errors
	var use *useError
	name := "centrepop"
	if cmd != nil {
		name += " " + cmd.name
	}
	switch {
	case asJSON:
		// A closed standard error leaves nobody to tell.
		_ = writeAnswer(stderr, "error", map[string]any{"errors": faultsOf(err)})
	case errors.As(err, &located):
		fmt.Fprintln(stderr, strings.TrimRight(err.Error(), "\n"))
	case errors.As(err, &use) && cmd != nil:
		fmt.Fprintf(stderr, "%s: %s\nuse: centrepop %s %s\n", name, err, cmd.name, cmd.args)
	default:
		fmt.Fprintf(stderr, "%s: %s\n", name, err)
	}
}

func badUse(format string, args ...any) error { return &useError{fmt.Sprintf(format, args...)} }
