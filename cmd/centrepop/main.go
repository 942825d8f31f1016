// Command centrepop turns part definitions in YAML into a shop packet: punch
// templates at 1:1, operation sheets and inspection records, and answers the
// small questions of the bench (fits, bolt circles, threads).
//
// Results go to standard output, messages to standard error. The exit status
// is 0 when done, 1 when a review or a comparison has findings, or anything has changed, and 2 for bad
// input or use. A file is written whole or not at all.
package main

import (
	"errors"
	"fmt"
	"io"
	"os"
	"slices"
	"strings"

	"centrepop/parts/meant"

	"github.com/spf13/pflag"
)

func main() {
	tidyOnSignal()
	os.Exit(run(os.Args[1:], os.Stdout, os.Stderr))
}

// commands are all there are; help.go has their order and their examples.
func commands() []command {
	return []command{
		{"start", "FOLDER [--kind KIND|all] [--units mm|in]", "write a small complete job to begin with", start},
		{"input", "[KIND|GROUP]", "list the keys of the input: meaning, unit, default, limits", inputCmd},
		{"schema", "", "write a JSON Schema of job and part files, for editors", schemaCmd},
		{"sheets", "JOB -o FILE", "print the whole shop packet as PDF", sheets},
		{"template", "JOB PART... -o FILE", "print the punch, wrap and sheet-metal templates of some parts", template},
		{"profile", "JOB PART -o FILE", "write the cutting file of a flat part or blank, SVG or PDF", profile},
		{"printer", "check|set|list|show|forget [NAME]", "measure a printer once, so that sheets and templates come out true", printer},
		{"preview", "JOB [--page N | --part NAME --sheet SHEET] -o FILE.png", "draw one page of the packet as a picture", preview},
		{"watch", "JOB [--port N] [--open]", "show the sheets in a browser on this machine, and again after every change", watch},
		{"review", "JOB", "find what would spoil a part, before metal is cut", reviewCmd},
		{"changes", "OLD NEW", "say what differs between two states of a job, what made parts still serve for, and what to print again", changesCmd},
		{"compare", "JOB PART DRAWING.svg", "list what differs in a cutting drawing that somebody else made", compareCmd},
		{"flange", "FILE [--job JOB --part PART --group NAME]", "work out a measured motor flange, and whether a part goes onto it", flange},
		{"explain", "JOB [PART]", "show what a part, or a whole job, expands to, with every computed number", explain},
		{"fit", "SIZE CLASS", "ISO 286 limits, such as 90 H7/p6", fit},
		{"circle", "--pcd D --count N", "bolt circle coordinates and chords", circle},
		{"thread", "NAME", "thread sizes, tap drill and clearance holes", thread},
		{"key", "DIAMETER", "key and keyways for a shaft, such as 38 or \"1-1/4 in\"", key},
		{"ring", "DIAMETER [--inside] [--units mm|in]", "retaining ring and its groove, on a shaft or in a bore", ring},
		{"oring", "INSIDExSECTION --bore D | --rod D | --face SIDE", "O-ring groove: depth, width, squeeze, fill, stretch, lead-in", oring},
		{"undercut", "DIAMETER | THREAD", "relief undercut at a shoulder, or undercut and run-out of a thread", undercut},
		{"seal", "DIAMETER [--units mm|in]", "land, lead-in and housing of a rotary shaft seal", seal},
		{"centre", "DIAMETER | --drill D", "centre hole by part diameter or centre drill", centre},
		{"flats", "--round D --across A", "flats or a polygon milled on a round: depth, width, index", flats},
		{"taper", "--large D --length L --small D | --ratio X | --angle A", "a cone: top-slide angle, gauge plane, measurement over pins", taper},
		{"mitre", "WIDTH", "saw angles and lengths for a corner of bars", mitre},
		{"bend", "--thickness T --radius R", "folded sheet: bend allowance, deduction, shortest flange, blank of a strip", bendCmd},
		{"flight", "--shaft D --outside D --pitch P", "auger flight: the flat ring for one turn, and how many make a length", flightCmd},
		{"press", "--shaft-od D --hub-od D --length L --fit F", "press fit: pressure, stress, force, torque, temperature", pressFit},
		{"completion", "bash|zsh|fish", "write completions of commands and flags for a shell", completion},
		{"man", "", "write the manual page", man},
		{"licences", "", "print the notices of everything in this program", licences},
	}
}

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

// dispatch finds the command and runs it. Without one it says what there is.
func dispatch(args []string, stdout, stderr io.Writer) int {
	asJSON := slices.Contains(args, "--json")
	if asJSON && args[0] == "--json" {
		args = append(args[1:], "--json")
	}
	word := ""
	if len(args) > 0 {
		word = args[0]
	}
	switch word {
	case "", "--json":
		if asJSON {
			report(stderr, nil, badUse("no command is given; there are %s", strings.Join(commandNames(), ", ")), true)
		} else {
			fmt.Fprint(stderr, help(commands()))
		}
		return statusBad
	case "-h", "--help":
		fmt.Fprint(stdout, help(commands()))
		return statusDone
	case "--version", "version":
		if err := writeVersion(stdout, asJSON); err != nil {
			report(stderr, nil, err, asJSON)
			return statusBad
		}
		return statusDone
	case "help":
		if len(args) == 1 || args[1] == "--json" {
			fmt.Fprint(stdout, help(commands()))
			return statusDone
		}
		word, args = args[1], []string{args[1], "--help"}
	}
	if cmd := commandNamed(commands(), word); cmd != nil {
		return cmd.start(args[1:], stdout, stderr)
	}
	known := append(commandNames(), "help", "version")
	report(stderr, nil, badUse("unknown command %q%s; centrepop help lists them", word, meant.Perhaps(word, known)), asJSON)
	return statusBad
}

func (cmd *command) start(args []string, stdout, stderr io.Writer) int {
	tell := onTerminal(stderr)
	defer tell.done()
	c := newCall(cmd.name, wiped{stdout, tell})
	c.stderr, c.tell, c.args, c.all = stderr, tell, args, commands()
	err := wordRefusal(cmd.run(c), c.w)
	switch {
	case errors.Is(err, pflag.ErrHelp):
		cmd.writeHelp(stdout, c.flags)
		return statusDone
	case err == nil:
		return statusDone
	case errors.Is(err, errFindings):
		return statusFindings
	}
	tell.done()
	report(stderr, cmd, err, *c.json || slices.Contains(args, "--json"))
	return statusBad
}
