// Floors says where files of one package call one another in a circle.
//
// A reader goes through a package from its top file down: what a function
// calls, or a constant it uses, stands in its own file or in one further down.
// Types are not counted: those that hold one another stand where their methods are.
package main

import (
	"fmt"
	"go/ast"
	"go/types"
	"log"
	"maps"
	"os"
	"path/filepath"
	"slices"

	"golang.org/x/tools/go/packages"
)

// graph is which file uses which others, each with one use as an example.
type graph map[string]map[string]string

func main() {
	found, err := packages.Load(&packages.Config{Mode: packages.NeedName | packages.NeedSyntax | packages.NeedTypes | packages.NeedTypesInfo | packages.NeedImports | packages.NeedDeps}, "./...")
	if err != nil {
		log.Fatal(err)
	}
	circles := 0
	for _, p := range found {
		g := uses(p)
		for round := g.circle(); len(round) > 0; round = g.circle() {
			circles++
			fmt.Printf("%s: files call one another in a circle:\n", p.PkgPath)
			for i, file := range round {
				next := round[(i+1)%len(round)]
				fmt.Printf("\t%s: %s, of %s\n", file, g[file][next], next)
				delete(g[file], next)
			}
		}
	}
	if circles > 0 {
		os.Exit(1)
	}
}

// uses finds which file of a package uses functions, variables and constants of which other.
func uses(p *packages.Package) graph {
	file := func(n ast.Node) string { return filepath.Base(p.Fset.Position(n.Pos()).Filename) }
	home := map[types.Object]string{}
	for id, o := range p.TypesInfo.Defs {
		if _, isType := o.(*types.TypeName); o != nil && !isType && (o.Parent() == p.Types.Scope() || method(o)) {
			home[o] = file(id)
		}
	}
	g := graph{}
	for _, f := range p.Syntax {
		for _, d := range f.Decls {
			ast.Inspect(d, func(n ast.Node) bool {
				id, ok := n.(*ast.Ident)
				if !ok {
					_, isType := n.(*ast.TypeSpec)
					return !isType
				}
				o := p.TypesInfo.Uses[id]
				if fn, ok := o.(*types.Func); ok {
					o = fn.Origin()
				}
				if from, to := file(id), home[o]; to != "" && to != from {
					if g[from] == nil {
						g[from] = map[string]string{}
					}
					g[from][to] = fmt.Sprintf("line %d uses %s", p.Fset.Position(id.Pos()).Line, id.Name)
				}
				return true
			})
		}
	}
	return g
}

// method tells whether a function is one of a type that is no interface.
func method(o types.Object) bool {
	fn, ok := o.(*types.Func)
	if !ok {
		return false
	}
	recv := fn.Signature().Recv()
	return recv != nil && !types.IsInterface(recv.Type())
}

// circle is a shortest way from a file back to itself, none where there is no way.
func (g graph) circle() (best []string) {
	for _, start := range slices.Sorted(maps.Keys(g)) {
		before := map[string]string{}
		for queue := []string{start}; len(queue) > 0 && before[start] == ""; queue = queue[1:] {
			for _, next := range slices.Sorted(maps.Keys(g[queue[0]])) {
				if before[next] == "" {
					before[next] = queue[0]
					queue = append(queue, next)
				}
			}
		}
		if before[start] == "" {
			continue
		}
		round := []string{start}
		for at := before[start]; at != start; at = before[at] {
			round = append(round, at)
		}
		slices.Reverse(round[1:])
		if best == nil || len(round) < len(best) {
			best = round
		}
	}
	return best
}
