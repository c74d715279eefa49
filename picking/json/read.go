package json

import (
	std "encoding/json"
	"reflect"
	"strconv"
	"strings"
)

// A reader fills the form from JSON known to be well formed. It is stricter
// than encoding/json, which takes names in any case and twice, null for
// anything, and no value at all for zero; and it knows the path to every fault.
type reader struct{ *std.Decoder }

// maxNumber bounds whole numbers, so that sums of a few fit into 32 bits.
const maxNumber = 1 << 29

func (r reader) value(v reflect.Value) error {
	token, err := r.Token()
	if err != nil {
		return err
	}
	return r.fill(v, token)
}

func (r reader) fill(v reflect.Value, token std.Token) error {
	switch v.Kind() {
	case reflect.Pointer:
		v.Set(reflect.New(v.Type().Elem()))
		return r.fill(v.Elem(), token)
	case reflect.Struct:
		if token == std.Delim('{') {
			return r.object(v)
		}
	case reflect.Slice:
		if token == std.Delim('[') {
			return r.list(v)
		}
	case reflect.String:
		if text, ok := token.(string); ok {
			v.SetString(text)
			return nil
		}
	case reflect.Bool:
		if b, ok := token.(bool); ok {
			v.SetBool(b)
			return nil
		}
	default:
		if n, ok := token.(std.Number); ok {
			return number(v, n.String())
		}
	}
	return refuse("", "%s where %s is wanted", nameOfToken(token), nameOfKind(v.Kind()))
}

func number(v reflect.Value, text string) error {
	if v.Kind() == reflect.Float64 {
		n, err := strconv.ParseFloat(text, 64)
		if err != nil {
			return refuse("", "%s is out of range", short(text))
		}
		v.SetFloat(n)
		return nil
	}
	n, err := strconv.ParseInt(text, 10, 64)
	switch {
	case strings.Trim(text, "-0123456789") != "":
		return refuse("", "%s where a whole number is wanted", short(text))
	case err != nil || n < -maxNumber || n > maxNumber:
		return refuse("", "%s is out of range", short(text))
	}
	v.SetInt(n)
	return nil
}

func (r reader) list(v reflect.Value) error {
	for i := 0; r.More(); i++ {
		v.Set(reflect.Append(v, reflect.Zero(v.Type().Elem())))
		if err := r.value(v.Index(i)); err != nil {
			return element("", i, err)
		}
	}
	_, err := r.Token()
	return err
}

func (r reader) object(v reflect.Value) error {
	fields := fieldsOf[v.Type()]
	seen := make([]bool, len(fields))
	for r.More() {
		token, err := r.Token()
		if err != nil {
			return err
		}
		name, _ := token.(string)
		i := indexOf(fields, name)
		switch {
		case i < 0:
			return refuse(short(name), "no such field")
		case seen[i]:
			return refuse(name, "given twice")
		}
		seen[i] = true
		if err := r.value(v.Field(i)); err != nil {
			return within(name, err)
		}
		if fields[i].optional && v.Field(i).IsZero() {
			return refuse(name, "empty; leave the field out")
		}
	}
	for i, f := range fields {
		if !seen[i] && !f.optional {
			return refuse(f.name, "missing")
		}
	}
	_, err := r.Token()
	return err
}

// A field is what the tag of a form's field says.
type field struct {
	name     string
	optional bool
}

// fieldsOf holds the fields of every object of the form.
var fieldsOf = func() map[reflect.Type][]field {
	known := map[reflect.Type][]field{}
	describe(known, reflect.TypeFor[passageForm]())
	return known
}()

func describe(known map[reflect.Type][]field, t reflect.Type) {
	switch t.Kind() {
	case reflect.Pointer, reflect.Slice:
		describe(known, t.Elem())
	case reflect.Struct:
		for i := range t.NumField() {
			name, options, _ := strings.Cut(t.Field(i).Tag.Get("json"), ",")
			known[t] = append(known[t], field{name, options == "omitempty"})
			describe(known, t.Field(i).Type)
		}
	}
}

func indexOf(fields []field, name string) int {
	for i, f := range fields {
		if f.name == name {
			return i
		}
	}
	return -1
}

// short cuts what a message shows of a name or number to a readable length.
func short(text string) string {
	if len(text) > 24 || strings.ContainsFunc(text, func(r rune) bool { return r <= ' ' || r > '~' }) {
		quoted := strconv.QuoteToASCII(text[:min(24, len(text))])
		return quoted + strings.Repeat("...", min(1, len(text)/25))
	}
	return text
}

func nameOfToken(token std.Token) string {
	switch t := token.(type) {
	case std.Delim:
		return map[std.Delim]string{'{': "an object", '[': "a list"}[t]
	case string:
		return "a text"
	case std.Number:
		return "a number"
	case bool:
		return "true or false"
	}
	return "null"
}

func nameOfKind(k reflect.Kind) string {
	switch k {
	case reflect.Struct:
		return "an object"
	case reflect.Slice:
		return "a list"
	case reflect.String:
		return "a text"
	case reflect.Bool:
		return "true or false"
	}
	return "a number"
}
