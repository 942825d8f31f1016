package golden

import (
	"encoding"
	"fmt"
	"math"
	"reflect"
	"strconv"
	"strings"
)

// lineMost is how long a line of Text gets before a value is broken over several.
const lineMost = 150

// Text writes a value so that a person can read it and compare it line by line:
// the exported fields of structs by name, without those that are zero, numbers to
// six digits and no finer than a millionth, in one line what fits in one. A struct of two or three numbers is a
// point, (x y), without names; what says itself as text is that. Pointers are followed; maps and
// functions are refused, by a panic, for they have no order or no text.
func Text(v any) []byte {
	var b strings.Builder
	write(&b, reflect.ValueOf(v), "")
	return []byte(b.String())
}

// write adds a value in lines that begin with indent.
func write(b *strings.Builder, v reflect.Value, indent string) {
	v = followed(v)
	if line := short(v); len(indent)+len(line) <= lineMost {
		fmt.Fprintf(b, "%s%s\n", indent, line)
		return
	}
	switch v.Kind() {
	case reflect.Struct:
		var line []string
		for i := range v.NumField() {
			name, field := v.Type().Field(i).Name, followed(v.Field(i))
			if !v.Type().Field(i).IsExported() || empty(field) {
				continue
			}
			if text := name + " " + short(field); len(indent)+len(text) <= lineMost || field.Kind() == reflect.String {
				line = append(line, text)
				continue
			}
			filled(b, line, ", ", indent)
			line = nil
			fmt.Fprintf(b, "%s%s:\n", indent, name)
			write(b, field, indent+"  ")
		}
		filled(b, line, ", ", indent)
	case reflect.Slice, reflect.Array:
		var items []string
		for i := range v.Len() {
			items = append(items, short(v.Index(i)))
		}
		if isPoint(v.Type().Elem()) {
			filled(b, items, " ", indent)
			return
		}
		if isTable(v) {
			table(b, v, indent)
			return
		}
		for i, item := range items {
			if v := followed(v.Index(i)); len(indent)+len(item) > lineMost && v.Kind() != reflect.String {
				fmt.Fprintf(b, "%s-\n", indent)
				write(b, v, indent+"  ")
				continue
			}
			fmt.Fprintf(b, "%s- %s\n", indent, item)
		}
	default:
		fmt.Fprintf(b, "%s%s\n", indent, short(v))
	}
}

// isTable tells whether a list is written with its names once: three structs or more,
// in which no structs are but points and what says itself as text.
func isTable(v reflect.Value) bool {
	t := v.Type().Elem()
	if v.Len() < 3 || t.Kind() != reflect.Struct {
		return false
	}
	for i := range t.NumField() {
		switch f := t.Field(i).Type; f.Kind() {
		case reflect.Struct:
			if !isPoint(f) && !f.Implements(reflect.TypeFor[encoding.TextMarshaler]()) {
				return false
			}
		case reflect.Slice, reflect.Array, reflect.Pointer, reflect.Interface:
			if f.Kind() != reflect.Slice || f.Elem().Kind() > reflect.Float64 && f.Elem().Kind() != reflect.String {
				return false
			}
		}
	}
	return true
}

// table adds a list of structs: the names of the fields that any has, then a row for
// each, with a dash for a field that is left out.
func table(b *strings.Builder, v reflect.Value, indent string) {
	t := v.Type().Elem()
	var columns []int
	head := indent + "|"
	for k := range t.NumField() {
		for i := 0; t.Field(k).IsExported() && i < v.Len(); i++ {
			if !empty(v.Index(i).Field(k)) {
				columns, head = append(columns, k), head+" "+t.Field(k).Name
				break
			}
		}
	}
	fmt.Fprintln(b, head)
	for i := range v.Len() {
		b.WriteString(indent + "-")
		for _, k := range columns {
			if field := v.Index(i).Field(k); empty(field) {
				b.WriteString(" -")
			} else {
				b.WriteString(" " + short(field))
			}
		}
		b.WriteByte('\n')
	}
}

// filled adds items, as many in a line as fit.
func filled(b *strings.Builder, items []string, between, indent string) {
	line := ""
	for _, item := range items {
		if line != "" && len(indent)+len(line)+len(between)+len(item) > lineMost {
			fmt.Fprintln(b, indent+line)
			line = ""
		}
		if line != "" {
			line += between
		}
		line += item
	}
	if line != "" {
		fmt.Fprintln(b, indent+line)
	}
}

// isPoint tells whether a type is a number or two or three of them, which need no names.
func isPoint(t reflect.Type) bool {
	if t.Kind() != reflect.Struct {
		return t.Kind() == reflect.Float64 || t.Kind() == reflect.Int
	}
	for i := range t.NumField() {
		if f := t.Field(i); f.Type.Kind() != reflect.Float64 || !f.IsExported() {
			return false
		}
	}
	return t.NumField() == 2 || t.NumField() == 3
}

// followed is what a pointer or an interface holds, or an invalid value for nil.
func followed(v reflect.Value) reflect.Value {
	for v.Kind() == reflect.Pointer || v.Kind() == reflect.Interface {
		v = v.Elem()
	}
	return v
}

// empty tells whether a value is left out of its struct.
func empty(v reflect.Value) bool {
	return !v.IsValid() || v.IsZero() || v.Kind() == reflect.Slice && v.Len() == 0
}

func short(v reflect.Value) string {
	v = followed(v)
	if v.IsValid() && v.CanInterface() {
		if m, ok := v.Interface().(encoding.TextMarshaler); ok {
			text, _ := m.MarshalText()
			return strconv.Quote(string(text))
		}
	}
	switch v.Kind() {
	case reflect.Invalid:
		return "nil"
	case reflect.Bool:
		return strconv.FormatBool(v.Bool())
	case reflect.String:
		return strconv.Quote(v.String())
	case reflect.Int, reflect.Int8, reflect.Int16, reflect.Int32, reflect.Int64:
		return strconv.FormatInt(v.Int(), 10)
	case reflect.Uint, reflect.Uint8, reflect.Uint16, reflect.Uint32, reflect.Uint64:
		return strconv.FormatUint(v.Uint(), 10)
	case reflect.Float32, reflect.Float64:
		return number(v.Float())
	case reflect.Slice, reflect.Array:
		var items []string
		for i := range v.Len() {
			items = append(items, short(v.Index(i)))
		}
		return "[" + strings.Join(items, " ") + "]"
	case reflect.Struct:
		var fields []string
		if isPoint(v.Type()) {
			for i := range v.NumField() {
				fields = append(fields, number(v.Field(i).Float()))
			}
			return "(" + strings.Join(fields, " ") + ")"
		}
		for i := range v.NumField() {
			if field := followed(v.Field(i)); v.Type().Field(i).IsExported() && !empty(field) {
				fields = append(fields, v.Type().Field(i).Name+" "+short(field))
			}
		}
		return "{" + strings.Join(fields, ", ") + "}"
	}
	panic(fmt.Sprintf("golden: no text for a %s", v.Type()))
}

// number is a number to six digits, no finer than a millionth.
func number(x float64) string {
	if x = math.Round(x*1e6) / 1e6; x == 0 {
		return "0"
	}
	return strconv.FormatFloat(x, 'g', 6, 64)
}
