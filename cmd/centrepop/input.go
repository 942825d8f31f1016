package main

import (
	"fmt"
	"io"
	"strings"

	"centrepop/layout/words"
	"centrepop/parts/meant"
	"centrepop/parts/read"
)

type inputKey struct {
	read.Key
	Unit   string `json:"unit,omitempty"`
	Limits string `json:"limits,omitempty"`
	Keys   string `json:"keys,omitempty"` // the group of keys that it holds
}

// inputGroup is a group of keys in an answer.
type inputGroup struct {
	Group   string     `json:"group"`
	Means   string     `json:"means"`
	Example string     `json:"example,omitempty"`
	OneOf   []string   `json:"one_of,omitempty"`
	Keys    []inputKey `json:"keys"`
}

// inputCmd lists the keys of the input: all, those of a group, or those of a
// part of some kind.
func inputCmd(c *call) error {
	if err := c.parse(0, 1); err != nil {
		return err
	}
	groups := read.Groups()
	if len(c.args) == 1 {
		var known []string
		if groups, known = read.GroupsOf(c.args[0]); groups == nil {
			return badUse("%s is no kind of part and no group of keys%s; there are %s", c.args[0], meant.Perhaps(c.args[0], known), strings.Join(known, ", "))
		}
	}
	out := make([]inputGroup, len(groups))
	for i, g := range groups {
		out[i] = inputGroup{Group: g.Name, Means: g.Means, Example: g.Example, OneOf: g.OneOf}
		for _, k := range g.Keys {
			key := inputKey{Key: k, Unit: k.UnitText(), Limits: k.Limits()}
			if k.Group != nil {
				key.Keys = k.Group.Name
			}
			out[i].Keys = append(out[i].Keys, key)
		}
	}
	if *c.json {
		return c.print(map[string]any{"groups": out})
	}
	fmt.Fprintln(c.stdout, "* must be given")
	for _, g := range out {
		fmt.Fprintln(c.stdout)
		g.write(c.stdout)
	}
	return nil
}

func (g inputGroup) write(w io.Writer) {
	fmt.Fprintf(w, "%s: %s\n", strings.ToUpper(g.Group), g.Means)
	if g.Example != "" {
		fmt.Fprintf(w, "  such as %s\n", g.Example)
	}
	if len(g.OneOf) > 0 {
		fmt.Fprintf(w, "  exactly one of %s\n", strings.Join(g.OneOf, ", "))
	}
	for _, k := range g.Keys {
		need := words.Either(k.Need, "*", " ")
		fmt.Fprintf(w, " %s%-13s %-20s %s", need, k.Name, k.Type, k.Means)
		for _, more := range []struct{ label, text string }{{"", k.Unit}, {"", k.Limits}, {"if absent ", k.Default}, {"see ", strings.ToUpper(k.Keys)}} {
			if more.text != "" {
				fmt.Fprintf(w, "; %s%s", more.label, more.text)
			}
		}
		fmt.Fprintln(w)
	}
}

func schemaCmd(c *call) error {
	if err := c.parse(0, 0); err != nil {
		return err
	}
	_, err := c.stdout.Write(read.Schema())
	return err
}
