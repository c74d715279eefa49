package jsontext

// A Kind is what a JSON value is.
type Kind uint8

// The kinds. The zero Kind is null.
const (
	Null Kind = iota
	Bool
	Number
	Text
	List
	Object
)

var kindNames = [...]string{"null", "true or false", "a number", "a text", "a list", "an object"}

// String says what k is in words.
func (k Kind) String() string { return kindNames[k] }

// A Value is one JSON value.
type Value struct {
	Kind    Kind
	True    bool     // of a Bool
	Text    string   // of a Text; of a Number, as it is written
	List    []Value  // of a List
	Members []Member // of an Object, in the order of the text
}

// A Member is a name and its value in an object.
type Member struct {
	Name  string
	Value Value
}

// Member returns the value of a name, or false where v has none.
func (v Value) Member(name string) (Value, bool) {
	for _, m := range v.Members {
		if m.Name == name {
			return m.Value, true
		}
	}
	return Value{}, false
}

// WithText returns a copy of v in which the member at the end of path is a
// text, or false where v has no such member.
func (v Value) WithText(text string, path ...string) (Value, bool) {
	if len(path) == 0 {
		return Value{Kind: Text, Text: text}, true
	}
	for i, m := range v.Members {
		if m.Name == path[0] {
			changed, ok := m.Value.WithText(text, path[1:]...)
			members := append([]Member{}, v.Members...)
			members[i].Value = changed
			return Value{Kind: Object, Members: members}, ok
		}
	}
	return v, false
}
