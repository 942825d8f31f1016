// Command centrepop turns part definitions in YAML into a shop packet: punch
// templates at 1:1, operation sheets and inspection records, and answers the
// small questions of the bench (fits, bolt circles, threads).
//
// Results go to standard output, messages to standard error. The exit status
// is 0 when done, 1 when a review or a comparison has findings, and 2 for bad
// input or use. A file is written whole or not at all.
package main

import (
	"encoding/json"
	"errors"
	"fmt"
	"io"
	"os"
	"strings"

	"github.com/spf13/pflag"

	"centrepop/parts"
)

func main() {
	tidyOnSignal()
	os.Exit(run(os.Args[1:], os.Stdout, os.Stderr))
}

// The exit statuses.
const (
	statusDone     = 0
	statusFindings = 1
	statusBad      = 2
)

// errFindings ends a command that has printed findings and failed in nothing.
var errFindings = errors.New("findings")

// command is one word of the command line.
type command struct {
	name  string
	args  string // for the usage line
	about string
	run   func(c *call) error
}

// commands in the order of the help text.
var commands = []command{
	{"sheets", "JOB -o FILE", "print the whole shop packet as PDF", sheets},
	{"template", "JOB PART... -o FILE", "print the punch, wrap and sheet-metal templates of some parts", template},
	{"profile", "JOB PART -o FILE", "write the cutting file of a flat part or blank, SVG or PDF", profile},
	{"printer", "check|set|list|show|forget [NAME]", "measure a printer once, so that sheets and templates come out true", printer},
	{"preview", "JOB -o FILE.png", "draw one page of the packet as a picture", preview},
	{"review", "JOB", "find what would spoil a part, before metal is cut", reviewCmd},
	{"compare", "JOB PART DRAWING.svg", "list what differs in a cutting drawing that somebody else made", compareCmd},
	{"flange", "FILE [--job JOB --part PART --group NAME]", "work out a measured motor flange, and whether a part goes onto it", flange},
	{"explain", "JOB PART", "show what a part expands to, with every computed number", explain},
	{"fit", "SIZE CLASS", "ISO 286 limits, such as 90 H7/p6", fit},
	{"circle", "--pcd D --count N", "bolt circle coordinates and chords", circle},
	{"thread", "NAME", "thread sizes, tap drill and clearance holes", thread},
	{"key", "DIAMETER", "key and keyways for a shaft, such as 38 or \"1-1/4 in\"", key},
	{"ring", "DIAMETER [--inside]", "retaining ring and its groove, on a shaft or in a bore", ring},
	{"oring", "INSIDExSECTION --bore D | --rod D | --face SIDE", "O-ring groove: depth, width, squeeze, fill, stretch, lead-in", oring},
	{"undercut", "DIAMETER | THREAD", "relief undercut at a shoulder, or undercut and run-out of a thread", undercut},
	{"seal", "DIAMETER", "land, lead-in and housing of a rotary shaft seal", seal},
	{"centre", "DIAMETER | --drill D", "centre hole by part diameter or centre drill", centre},
	{"flats", "--round D --across A", "flats or a polygon milled on a round: depth, width, index", flats},
	{"taper", "--large D --length L --small D | --ratio X | --angle A", "a cone: top-slide angle, gauge plane, measurement over pins", taper},
	{"mitre", "WIDTH", "saw angles and lengths for a corner of bars", mitre},
	{"bend", "--thickness T --radius R", "folded sheet: bend allowance, deduction, shortest flange, blank of a strip", bendCmd},
	{"flight", "--shaft D --outside D --pitch P", "auger flight: the flat ring for one turn, and how many make a length", flightCmd},
	{"press", "--shaft-od D --hub-od D --length L --fit F", "press fit: pressure, stress, force, torque, temperature", pressFit},
}

// call is one run of a command: its flags and where its output goes.
type call struct {
	flags  *pflag.FlagSet
	args   []string // after the flags
	stdout io.Writer
	json   *bool
	tell   *progress
}

// useError is a mistake on the command line; the usage line is shown with it.
type useError struct{ what string }

func (e *useError) Error() string { return e.what }

func badUse(format string, args ...any) error { return &useError{fmt.Sprintf(format, args...)} }

// run is the whole program from arguments to exit status.
func run(args []string, stdout, stderr io.Writer) int {
	out := &answerWriter{w: stdout}
	status := dispatch(args, out, stderr)
	if status != statusBad && out.err != nil {
		fmt.Fprintf(stderr, "centrepop: standard output: %s\n", out.err)
		return statusBad
	}
	return status
}

// answerWriter is standard output. It keeps the first error, so that a command can
// print without asking and a lost answer still ends in a bad status.
type answerWriter struct {
	w   io.Writer
	err error
}

func (o *answerWriter) Write(p []byte) (int, error) {
	if o.err != nil {
		return 0, o.err
	}
	n, err := o.w.Write(p)
	o.err = err
	return n, err
}

// dispatch finds the command and runs it.
func dispatch(args []string, stdout, stderr io.Writer) int {
	if len(args) == 0 {
		fmt.Fprint(stderr, help())
		return statusBad
	}
	switch args[0] {
	case "help", "-h", "--help":
		fmt.Fprint(stdout, help())
		return statusDone
	}
	for _, cmd := range commands {
		if cmd.name == args[0] {
			return cmd.start(args[1:], stdout, stderr)
		}
	}
	fmt.Fprintf(stderr, "centrepop: unknown command %q\n", args[0])
	fmt.Fprint(stderr, help())
	return statusBad
}

func (cmd command) start(args []string, stdout, stderr io.Writer) int {
	tell := onTerminal(stderr)
	defer tell.done()
	c := &call{flags: pflag.NewFlagSet(cmd.name, pflag.ContinueOnError), stdout: wiped{stdout, tell}, tell: tell}
	c.flags.SetOutput(io.Discard)
	c.flags.SortFlags = false
	c.json = c.flags.Bool("json", false, "print JSON with stable field names")
	c.args = args
	err := cmd.run(c)
	if errors.Is(err, pflag.ErrHelp) {
		fmt.Fprintf(stdout, "centrepop %s %s\n  %s\n%s", cmd.name, cmd.args, cmd.about, c.flags.FlagUsages())
		return statusDone
	}
	if err == nil {
		return statusDone
	}
	if errors.Is(err, errFindings) {
		return statusFindings
	}
	tell.done()
	report(stderr, cmd, err, *c.json)
	return statusBad
}

// parse reads the flags and requires at least least arguments after them, and
// at most most (−1 for any number).
func (c *call) parse(least, most int) error {
	if err := c.flags.Parse(c.args); err != nil {
		if errors.Is(err, pflag.ErrHelp) {
			return err
		}
		return badUse("%s", err.Error())
	}
	c.args = c.flags.Args()
	switch {
	case len(c.args) < least:
		return badUse("too few arguments")
	case most >= 0 && len(c.args) > most:
		return badUse("too many arguments: %s", strings.Join(c.args[most:], " "))
	}
	return nil
}

// print writes v as one line of JSON.
func (c *call) print(v any) error {
	enc := json.NewEncoder(c.stdout)
	enc.SetEscapeHTML(false)
	return enc.Encode(v)
}

// fault is an error as JSON; file, line and column only for input faults.
type fault struct {
	File   string `json:"file,omitempty"`
	Line   int    `json:"line,omitempty"`
	Column int    `json:"column,omitempty"`
	What   string `json:"what"`
	Right  string `json:"right,omitempty"`
}

// report writes an error to standard error, as text or as JSON.
func report(stderr io.Writer, cmd command, err error, asJSON bool) {
	var located parts.Errors
	var use *useError
	if asJSON {
		faults := []fault{}
		if errors.As(err, &located) {
			for _, e := range located {
				faults = append(faults, fault{e.Pos.File, e.Pos.Line, e.Pos.Column, e.What, e.Right})
			}
		} else {
			faults = append(faults, fault{What: err.Error()})
		}
		enc := json.NewEncoder(stderr)
		enc.SetEscapeHTML(false)
		// A closed standard error leaves nobody to tell.
		_ = enc.Encode(map[string]any{"errors": faults})
		return
	}
	switch {
	case errors.As(err, &located):
		fmt.Fprintln(stderr, strings.TrimRight(err.Error(), "\n"))
	case errors.As(err, &use):
		fmt.Fprintf(stderr, "centrepop %s: %s\nuse: centrepop %s %s\n", cmd.name, err, cmd.name, cmd.args)
	default:
		fmt.Fprintf(stderr, "centrepop %s: %s\n", cmd.name, err)
	}
}

func help() string {
	var b strings.Builder
	b.WriteString("centrepop reads part drawings in YAML and prints the shop packet.\n\n")
	for _, cmd := range commands {
		fmt.Fprintf(&b, "  centrepop %-34s %s\n", cmd.name+" "+cmd.args, cmd.about)
	}
	b.WriteString("\nExample:\n  centrepop sheets testdata/pugmill/job.yaml -o packet.pdf\n  centrepop fit 90 H7/p6\n")
	b.WriteString("\nEvery command takes --json. Exit status: 0 done, 1 findings, 2 bad input or use.\n")
	return b.String()
}
