package main

import (
	"errors"
	"fmt"
	"io"
	"os"
	"slices"
	"strings"

	"centrepop/layout/words"
	"centrepop/parts"
	"centrepop/parts/meant"

	"github.com/spf13/pflag"
)

// The exit statuses.
const (
	statusDone     = 0
	statusFindings = 1
	statusBad      = 2
)

// errFindings ends a command that has printed findings and failed in nothing.
var errFindings = errors.New("findings")

// call is one run of a command: its flags and where its output goes.
type call struct {
	name   string
	flags  *pflag.FlagSet
	args   []string // after the flags
	stdin  io.Reader
	stdout io.Writer
	stderr io.Writer
	json   *bool
	tell   *progress
	all    []command // that there are, for those that write of them

	lengths  []*lengthArg // flags that parse reads
	argument *lengthArg   // the first argument, if it is one too
	bare     *string      // the unit of bare numbers, where the first argument is a length; else nil
	w        words.Writer // in the units of the lengths
}

type command struct {
	name  string
	args  string // for the usage line
	about string
	run   func(c *call) error
}

func newCall(name string, stdout io.Writer) *call {
	c := &call{name: name, flags: pflag.NewFlagSet(name, pflag.ContinueOnError), stdin: os.Stdin, stdout: stdout}
	c.w.Units = parts.Millimetres
	c.flags.SetOutput(io.Discard)
	c.flags.SortFlags = false
	c.json = c.flags.Bool("json", false, "print JSON with stable field names")
	return c
}

// parse reads the flags and requires at least least arguments after them, and
// at most most (−1 for any number).
func (c *call) parse(least, most int) error {
	if err := c.flags.Parse(c.args); err != nil {
		if errors.Is(err, pflag.ErrHelp) {
			return err
		}
		return flagFault(err, c.flags)
	}
	c.args = c.flags.Args()
	switch {
	case len(c.args) < least:
		return badUse("too few arguments")
	case most >= 0 && len(c.args) > most:
		return badUse("too many arguments: %s", strings.Join(c.args[most:], " "))
	}
	if c.argument != nil && len(c.args) > 0 {
		c.argument.text, c.argument.need = c.args[0], true
		c.lengths = append([]*lengthArg{c.argument}, c.lengths...)
	}
	return c.read(c.lengths...)
}

// flagFault words what pflag says about a flag, with the flag that is meant.
func flagFault(err error, flags *pflag.FlagSet) error {
	text := err.Error()
	if name, found := strings.CutPrefix(text, "unknown flag: --"); found {
		var names []string
		flags.VisitAll(func(f *pflag.Flag) { names = append(names, f.Name) })
		slices.Sort(names)
		if like := meant.Word(name, names); like != "" {
			text += "; perhaps --" + like + " is meant"
		}
	}
	return badUse("%s", text)
}

// print writes v as one line of JSON.
func (c *call) print(v any) error { return writeAnswer(c.stdout, c.name, v) }

// answer writes v as JSON, or has it written for reading in a terminal.
func (c *call) answer(v any, write func()) error {
	if *c.json {
		return c.print(v)
	}
	write()
	return nil
}

// judged writes v as JSON, or its text, and is errFindings if anything is open.
func (c *call) judged(v any, text string, open bool) error {
	err := c.answer(v, func() { fmt.Fprint(c.stdout, text) })
	if err == nil && open {
		return errFindings
	}
	return err
}
