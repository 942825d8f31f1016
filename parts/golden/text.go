package golden

import (
	"fmt"
	"hash/fnv"
	"math"
	"reflect"
	"strconv"
	"strings"
)

// lineMost is how long a line of Text gets before a value is broken over several.
const lineMost = 150

// Text writes a value so that a person can read it and compare it line by line:
// the exported fields of structs by name, without those that are zero, numbers to
// six digits, in one line what fits in one. A struct of two or three numbers is a
// point, (x y), without names. Of a long text the beginning is written, its length
// and a sum of its bytes. Pointers are followed; maps and
// functions are refused, by a panic, for they have no order or no text.
func Text(v any) []byte {
	var b strings.Builder
	write(&b, reflect.ValueOf(v), "")
	return []byte(b.String())
}

// write adds a value in lines that begin with indent.
func write(b *strings.Builder, v reflect.Value, indent string) {
	v = followed(v)
	line := short(v)
	if len(indent)+len(line) <= lineMost {
		fmt.Fprintf(b, "%s%s\n", indent, line)
		return
	}
	switch v.Kind() {
	case reflect.Struct:
		for i := range v.NumField() {
			name, field := v.Type().Field(i).Name, followed(v.Field(i))
			if !v.Type().Field(i).IsExported() || empty(field) {
				continue
			}
			line := short(field)
			if len(indent)+len(name)+len(line) < lineMost || field.Kind() == reflect.String {
				fmt.Fprintf(b, "%s%s %s\n", indent, name, line)
				continue
			}
			fmt.Fprintf(b, "%s%s:\n", indent, name)
			write(b, field, indent+"  ")
		}
	case reflect.Slice, reflect.Array:
		if isPoint(v.Type().Elem()) {
			filled(b, v, indent)
			return
		}
		for i := range v.Len() {
			item := followed(v.Index(i))
			if line := short(item); len(indent)+len(line) <= lineMost || item.Kind() == reflect.String {
				fmt.Fprintf(b, "%s- %s\n", indent, line)
				continue
			}
			fmt.Fprintf(b, "%s-\n", indent)
			write(b, item, indent+"  ")
		}
	default:
		fmt.Fprintf(b, "%s%s\n", indent, line)
	}
}

// filled adds numbers or points, as many in a line as fit.
func filled(b *strings.Builder, v reflect.Value, indent string) {
	line := indent
	for i := range v.Len() {
		item := short(v.Index(i))
		if len(line) > len(indent) && len(line)+1+len(item) > lineMost {
			fmt.Fprintln(b, line)
			line = indent
		}
		if len(line) > len(indent) {
			line += " "
		}
		line += item
	}
	fmt.Fprintln(b, line)
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

// short is a value in one line.
func short(v reflect.Value) string {
	v = followed(v)
	switch v.Kind() {
	case reflect.Invalid:
		return "nil"
	case reflect.Bool:
		return strconv.FormatBool(v.Bool())
	case reflect.String:
		return quoted(v.String())
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

// quoted is a text in quotes; of a long one, such as the path of a curve, the beginning.
func quoted(s string) string {
	const most = 400
	if len(s) <= most {
		return strconv.Quote(s)
	}
	sum := fnv.New32a()
	sum.Write([]byte(s))
	return fmt.Sprintf("%q… %d bytes, sum %08x", s[:most/2], len(s), sum.Sum32())
}

// number is a number to six digits; what is within rounding of 0 is 0.
func number(x float64) string {
	if math.Abs(x) < 1e-9 {
		return "0"
	}
	return strconv.FormatFloat(x, 'g', 6, 64)
}
