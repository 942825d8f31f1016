package read

import (
	"encoding/json"
	"slices"
	"strings"

	"centrepop/parts/seq"
)

// SchemaID names the schema; its number rises when a file that was accepted is
// refused.
const SchemaID = "urn:centrepop:input:1"

// object is a piece of a JSON Schema.
type object = map[string]any

// Schema is a JSON Schema (draft 2020-12) of job files, part files and files of
// a measured flange, for editors; written from the table of keys. What only the
// program can check (sizes that contradict each other, references) it takes.
func Schema() []byte {
	defs := object{}
	for _, g := range Groups() {
		defs[defName(g)] = groupSchema(g)
	}
	part := defs[defName(partGroup)].(object)
	part["allOf"] = formSchemas()
	ref := func(g *Group) object { return object{"$ref": "#/$defs/" + defName(g)} }
	has := func(key string) object { return object{"required": []string{key}} }
	out, err := json.MarshalIndent(object{
		"$schema":     "https://json-schema.org/draft/2020-12/schema",
		"$id":         SchemaID,
		"title":       "centrepop job, part or measured flange",
		"description": "A file with the key job is a job, one with part a part, one with readings a measured flange.",
		"type":        "object",
		"if":          has("job"),
		"then":        ref(jobGroup),
		"else":        object{"if": has("readings"), "then": ref(flangeGroup), "else": ref(partGroup)},
		"$defs":       defs,
	}, "", "  ")
	if err != nil {
		panic("parts: the schema cannot be written: " + err.Error())
	}
	return append(out, '\n')
}

func defName(g *Group) string { return strings.ReplaceAll(g.Name, " ", "-") }

func groupSchema(g *Group) object {
	properties, required := object{}, []string{}
	for _, k := range g.Keys {
		s := typeSchema(k)
		text := k.Means
		if k.Default != "" {
			text += "; if absent " + k.Default
		}
		if unit := k.UnitText(); unit != "" {
			text += " (" + unit + ")"
		}
		s["description"] = text
		properties[k.Name] = s
		if k.Need {
			required = append(required, k.Name)
		}
	}
	out := object{"description": g.Means, "type": "object", "additionalProperties": false, "properties": properties, "required": required}
	if len(g.OneOf) > 0 {
		out["oneOf"] = requiredOf(g.OneOf)
	}
	return out
}

// requiredOf asks for each of the keys in turn.
func requiredOf(keys []string) (out []any) {
	return seq.Map(keys, func(key string) any { return object{"required": []string{key}} })
}

// formSchemas tie the keys of a part to its kind.
func formSchemas() (out []any) {
	for _, kind := range kinds {
		var givers []string
		others := object{}
		for _, k := range partGroup.Keys {
			switch {
			case k.forms == 0:
			case k.forms&kind.forms == 0:
				others[k.Name] = false
			case slices.Contains(formKeys, k.Name):
				givers = append(givers, k.Name)
			}
		}
		out = append(out, object{
			"if":   object{"required": []string{"kind"}, "properties": object{"kind": object{"const": kind.kind}}},
			"then": object{"oneOf": requiredOf(givers), "properties": others},
		})
	}
	return out
}

// Patterns of values that are written as text (ECMA-262 regular expressions).
const (
	amountPattern = `([0-9]+([.][0-9]*)?|[.][0-9]+|[0-9]+/[0-9]+|[0-9]+[- ][0-9]+/[0-9]+)`
	lengthEnd     = `\s*(mm|in)?\s*$`
	namePattern   = `[a-z0-9]+(-[a-z0-9]+)*`
	refPattern    = `^` + namePattern + `(#[1-9][0-9]{0,3})?[.]` + namePattern + `$`
)

func textPattern(pattern string) object { return object{"type": "string", "pattern": pattern} }

func anyOf(choices ...any) object { return object{"anyOf": choices} }

func arrayOf(items object, least, most int) object {
	return object{"type": "array", "items": items, "minItems": least, "maxItems": most}
}

// lengthSchema takes lengths over 0, from 0, or of either sign.
func lengthSchema(allowed span) object {
	number, sign := object{"type": "number", "maximum": 10_000}, `[+]?`
	switch allowed {
	case positive:
		number["exclusiveMinimum"] = 0
	case fromZero:
		number["minimum"] = 0
	default:
		number["minimum"], sign = -10_000, `[+-]?`
	}
	return anyOf(number, textPattern(`^\s*`+sign+amountPattern+lengthEnd))
}

func angleSchema(k Key) object {
	low, high := k.bounds()
	return anyOf(object{"type": "number", "minimum": low, "maximum": high}, textPattern(`^\s*[+-]?([0-9]+([.][0-9]*)?|[.][0-9]+)\s*(deg|°)?\s*$`))
}

// scalarSchema takes what YAML may make of a line of text.
func scalarSchema(k Key) object {
	return object{"type": []string{"string", "number", "boolean"}, "minLength": 1, "maxLength": k.longest()}
}

// nameSchema takes a name; YAML may have read one as a number.
var nameSchema = anyOf(textPattern("^"+namePattern+"$"), object{"type": "integer", "minimum": 0})

func pair(items object) object { return arrayOf(items, 2, 2) }

// groupRef refers to the keys of a group.
func groupRef(k Key) object { return object{"$ref": "#/$defs/" + defName(k.Group)} }

// typeSchemas makes the schema of a key's value. Types that are not here are a line
// of text: text, date, paper, bolt, path data, casting.
var typeSchemas = map[Type]func(Key) object{
	SizeType:       func(k Key) object { return lengthSchema(k.span()) },
	DistanceType:   func(k Key) object { return lengthSchema(k.span()) },
	CoordinateType: func(k Key) object { return lengthSchema(k.span()) },
	EitherType:     func(k Key) object { return anyOf(lengthSchema(positive), groupRef(k)) },
	NamedType:      func(k Key) object { return anyOf(textPattern(undercutForm().String()), groupRef(k)) },
	OntoType:       func(k Key) object { return anyOf(textPattern(refPattern), groupRef(k)) },
	DepthType:      func(k Key) object { return anyOf(object{"const": "through"}, lengthSchema(positive)) },
	SizesType: func(k Key) object {
		return anyOf(lengthSchema(positive), arrayOf(lengthSchema(positive), k.Entries[0], k.Entries[1]))
	},
	PairType:   func(k Key) object { return pair(lengthSchema(positive)) },
	FloatsType: func(k Key) object { return pair(lengthSchema(signed)) },
	PointType:  func(k Key) object { return pair(lengthSchema(signed)) },
	PointsType: func(k Key) object { return arrayOf(pair(lengthSchema(signed)), k.Entries[0], k.Entries[1]) },
	AngleType:  func(k Key) object { return angleSchema(k) },
	AnglesType: func(k Key) object { return arrayOf(angleSchema(k), k.Entries[0], k.Entries[1]) },
	ClocksType: func(k Key) object { return anyOf(angleSchema(k), arrayOf(angleSchema(k), k.Entries[0], k.Entries[1])) },
	CountType: func(k Key) object {
		return anyOf(object{"type": "integer", "minimum": k.Low, "maximum": k.High}, textPattern(`^[0-9]+$`))
	},
	HoleOrSpigot: func(k Key) object {
		return anyOf(object{"type": "integer", "minimum": k.Low, "maximum": k.High}, object{"const": "spigot"})
	},
	NumberType: func(k Key) object { return object{"type": "number", "minimum": k.Low, "maximum": k.High} },
	NumbersType: func(k Key) object {
		return arrayOf(object{"type": "number", "minimum": k.Low, "maximum": k.High}, k.Entries[0], k.Entries[1])
	},
	ForceType: func(k Key) object {
		return textPattern(`^\s*([0-9]+([.][0-9]*)?|[.][0-9]+|[0-9]+/[0-9]+)\s*(N|kN|t)\s*$`)
	},
	NameType:     func(k Key) object { return nameSchema },
	NamesType:    func(k Key) object { return anyOf(nameSchema, arrayOf(nameSchema, k.Entries[0], k.Entries[1])) },
	WordType:     func(k Key) object { return object{"enum": k.Words} },
	YesType:      func(k Key) object { return object{"enum": []any{"yes", "no", true, false}} },
	DateType:     func(k Key) object { return textPattern(`^[0-9]{4}-[0-9]{2}-[0-9]{2}$`) },
	ClassFitType: func(k Key) object { return anyOf(textPattern(classForm().String()), groupRef(k)) },
	FitPairType:  func(k Key) object { return textPattern(fitPairForm().String()) },
	RefType:      func(k Key) object { return textPattern(refPattern) },
	RefsType:     func(k Key) object { return arrayOf(textPattern(refPattern), k.Entries[0], k.Entries[1]) },
	InLineType: func(k Key) object {
		refs := arrayOf(anyOf(object{"const": "up"}, textPattern(refPattern)), 2, 20)
		return anyOf(refs, arrayOf(refs, k.Entries[0], k.Entries[1]))
	},
	PlaceType: func(k Key) object { return textPattern(`^` + namePattern + `([.]` + namePattern + `)?$`) },
	HoleType: func(k Key) object {
		return anyOf(lengthSchema(positive), textPattern(`^.+ (clearance( (fine|medium|coarse))?|tap)$`), groupRef(k))
	},
	ThreadType: func(k Key) object { return textPattern(threadForm().String()) },
	TextsType:  func(k Key) object { return arrayOf(scalarSchema(k), k.Entries[0], k.Entries[1]) },
	FilesType:  func(k Key) object { return arrayOf(scalarSchema(k), k.Entries[0], k.Entries[1]) },
	KeysType:   func(k Key) object { return groupRef(k) },
	ListType:   func(k Key) object { return arrayOf(groupRef(k), k.Entries[0], k.Entries[1]) },
}

func typeSchema(k Key) object {
	if schema, ok := typeSchemas[k.Type]; ok {
		return schema(k)
	}
	return scalarSchema(k)
}
