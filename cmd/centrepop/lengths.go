package main

import (
	"strings"

	"centrepop/parts"
)

// length is a length asked for on the command line, by a flag or as an argument.
type lengthArg struct {
	name, text string
	need       bool // it must be given
	mm         float64
}

// given tells whether it is on the command line.
func (l *lengthArg) given() bool { return l.text != "" }

// read reads what is given into mm; a bare number is in units.
func (l *lengthArg) read(units parts.Units) (err error) {
	switch {
	case l.given():
		if l.mm, err = parts.ParseLength(l.text, units); err != nil {
			return badUse("%s %s: %s", l.name, l.text, err)
		}
	case l.need:
		return badUse("%s is needed", l.name)
	}
	return nil
}

// read reads lengths. The answer is written in inches if one of them is, or bare numbers are.
func (c *call) read(lengths ...*lengthArg) error {
	units := c.w.Units
	if c.bare != nil {
		units = parts.Units(*c.bare)
	}
	if units != parts.Millimetres && units != parts.Inches {
		return badUse("--units %s: mm or in", units)
	}
	c.w.Units = units
	for _, l := range lengths {
		if err := l.read(units); err != nil {
			return err
		}
		if strings.HasSuffix(strings.TrimSpace(l.text), "in") {
			c.w.Units = parts.Inches
		}
	}
	return nil
}

// length makes a flag that takes a length, which parse reads.
func (c *call) length(name, usage string, need bool) *lengthArg {
	l := &lengthArg{name: "--" + name, need: need}
	c.flags.StringVar(&l.text, name, "", usage)
	c.lengths = append(c.lengths, l)
	return l
}

// first makes the first argument a length, which parse reads before the flags.
func (c *call) first(name string) *lengthArg {
	c.argument = &lengthArg{name: name}
	c.bare = c.flags.String("units", string(parts.Millimetres), "`UNIT` of bare numbers: mm or in")
	return c.argument
}
